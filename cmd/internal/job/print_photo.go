package job

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"

	"flatwright/layout/document"
	"flatwright/render/html"
)

// mostPrinted is how many pixels the longer side of a printed photograph has at most: 300 an inch at 13 cm.
const mostPrinted = 1600

// onPaper are photographs as pages to print carry them: JPEG, upright, no larger than paper shows, and without
// what the camera wrote into them.
func onPaper(all []html.Photo) ([]document.Photo, error) {
	var out []document.Photo
	for _, p := range all {
		im, _, err := image.Decode(bytes.NewReader(p.Data))
		if err != nil {
			return nil, &OptionError{"the photograph of “" + p.Shows + "” is damaged: " + err.Error()}
		}
		small := upright(im, turnOf(p.Data))
		var b bytes.Buffer
		if err := jpeg.Encode(&b, small, &jpeg.Options{Quality: 88}); err != nil {
			return nil, err
		}
		size := small.Bounds().Size()
		out = append(out, document.Photo{Shows: p.Shows, W: size.X, H: size.Y, JPEG: b.Bytes()})
	}
	return out, nil
}

// upright is a photograph on white, turned as its camera says (see turnOf), each pixel the mean of a square of the
// camera's: whole numbers alone, so that every machine makes the same bytes.
func upright(im image.Image, turn int) *image.RGBA {
	r := im.Bounds()
	flat := image.NewRGBA(image.Rect(0, 0, r.Dx(), r.Dy()))
	draw.Draw(flat, flat.Bounds(), image.White, image.Point{}, draw.Src)
	draw.Draw(flat, flat.Bounds(), im, r.Min, draw.Over)
	by := max(1, (max(r.Dx(), r.Dy())+mostPrinted-1)/mostPrinted)
	w, h := max(1, r.Dx()/by), max(1, r.Dy()/by)
	size := image.Pt(w, h)
	if turn >= 5 {
		size = image.Pt(h, w)
	}
	out := image.NewRGBA(image.Rectangle{Max: size})
	for y := range h {
		for x := range w {
			to := turned(x, y, w, h, turn)
			out.SetRGBA(to.X, to.Y, mean(flat, x*by, y*by, by))
		}
	}
	return out
}

// turned is where a pixel of a photograph of w by h comes to lie, by the numbers of the tag Orientation of TIFF 6.0.
func turned(x, y, w, h, turn int) image.Point {
	right, down := w-1-x, h-1-y
	places := [...]image.Point{{x, y}, {right, y}, {right, down}, {x, down}, {y, x}, {down, x}, {down, right}, {y, right}}
	if turn < 1 || turn > len(places) {
		turn = 1
	}
	return places[turn-1]
}

func mean(im *image.RGBA, x, y, by int) color.RGBA {
	var sum [3]int
	n := 0
	for j := y; j < min(y+by, im.Rect.Max.Y); j++ {
		for i := x; i < min(x+by, im.Rect.Max.X); i++ {
			at := im.PixOffset(i, j)
			for k := range sum {
				sum[k] += int(im.Pix[at+k])
			}
			n++
		}
	}
	part := func(k int) uint8 { return uint8((sum[k] + n/2) / n) }
	return color.RGBA{part(0), part(1), part(2), 0xff}
}

// turnOf is the tag Orientation, 1 to 8, that a camera wrote into a JPEG file (Exif 2.3, section 4.6.4; TIFF 6.0, section 8); 1 if
// there is none.
func turnOf(data []byte) int {
	for at := 2; at+4 <= len(data) && data[at] == 0xff; {
		size := int(binary.BigEndian.Uint16(data[at+2:]))
		end := at + 2 + size
		if size < 2 || end > len(data) || data[at+1] == 0xda { // the picture begins
			return 1
		}
		if body, ok := bytes.CutPrefix(data[at+4:end], []byte("Exif\x00\x00")); ok && data[at+1] == 0xe1 {
			return orientation(body)
		}
		at = end
	}
	return 1
}

// orientation is that tag in the first directory of a TIFF file.
func orientation(tiff []byte) int {
	if len(tiff) < 8 {
		return 1
	}
	var order binary.ByteOrder = binary.BigEndian
	if tiff[0] == 'I' {
		order = binary.LittleEndian
	}
	at := int(order.Uint32(tiff[4:]))
	if at < 8 || at+2 > len(tiff) {
		return 1
	}
	const entry, tag = 12, 0x0112
	for i := range int(order.Uint16(tiff[at:])) {
		e := at + 2 + i*entry
		if e+entry > len(tiff) {
			return 1
		}
		if order.Uint16(tiff[e:]) == tag {
			if turn := int(order.Uint16(tiff[e+8:])); turn >= 1 && turn <= 8 {
				return turn
			}
		}
	}
	return 1
}
