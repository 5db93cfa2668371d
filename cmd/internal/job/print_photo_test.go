package job

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/examples"
)

// turnedJPEG is a JPEG of w by h whose left half is red and whose right half is blue, with the tag Orientation in it (Exif 2.3).
func turnedJPEG(t testing.TB, w, h, turn int, order string) []byte {
	im := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			c := color.RGBA{200, 20, 20, 255}
			if x >= w/2 {
				c = color.RGBA{20, 20, 200, 255}
			}
			im.SetRGBA(x, y, c)
		}
	}
	var b bytes.Buffer
	require.NoError(t, jpeg.Encode(&b, im, &jpeg.Options{Quality: 95}))
	tiff := "MM\x00\x2a\x00\x00\x00\x08" + "\x00\x02" + "\x01\x0f\x00\x02\x00\x00\x00\x04Cam\x00" + "\x01\x12\x00\x03\x00\x00\x00\x01\x00" + string(rune(turn)) + "\x00\x00" + "\x00\x00\x00\x00"
	if order == "II" {
		tiff = "II\x2a\x00\x08\x00\x00\x00" + "\x02\x00" + "\x0f\x01\x02\x00\x04\x00\x00\x00Cam\x00" + "\x12\x01\x03\x00\x01\x00\x00\x00" + string(rune(turn)) + "\x00\x00\x00" + "\x00\x00\x00\x00"
	}
	body := "Exif\x00\x00" + tiff
	n := len(body) + 2
	return append([]byte{0xff, 0xd8, 0xff, 0xe1, byte(n >> 8), byte(n)}, append([]byte(body), b.Bytes()[2:]...)...)
}

func isRed(c color.Color) bool {
	r, _, b, _ := c.RGBA()
	return r > b
}

// The side that is red once the photograph stands upright, as the standard tells of each number: row 0 is the visual top, left, and so on.
func TestAPrintedPhotographStandsUpright(t *testing.T) {
	for turn, red := range map[int]string{0: "left", 1: "left", 2: "right", 3: "right", 4: "left", 5: "top", 6: "top", 7: "bottom", 8: "bottom", 9: "left"} {
		for _, order := range []string{"MM", "II"} {
			data := turnedJPEG(t, 40, 20, turn, order)
			im, err := jpeg.Decode(bytes.NewReader(data))
			require.NoError(t, err)
			up := upright(im, turnOf(data))
			size := up.Bounds().Size()
			at := map[string]image.Point{"left": {2, size.Y / 2}, "right": {size.X - 3, size.Y / 2}, "top": {size.X / 2, 2}, "bottom": {size.X / 2, size.Y - 3}}
			assert.True(t, isRed(up.At(at[red].X, at[red].Y)), "%d %s", turn, order)
			assert.Equal(t, red == "top" || red == "bottom", size.Y > size.X, "%d", turn)
		}
	}
	for _, broken := range []string{"", "\xff\xd8", "\xff\xd8\xff\xe1\x00\x02", "\xff\xd8\xff\xe1\x00\x10Exif\x00\x00MM\x00\x2a\xff\xff\xff\xff", "\xff\xd8\xff\xe1\x00\x12Exif\x00\x00II\x2a\x00\x08\x00\x00\x00\xff\xff"} {
		assert.Equal(t, 1, turnOf([]byte(broken)), "%q", broken)
	}
}

func TestAPrintedPhotographIsNoLargerThanPaperShows(t *testing.T) {
	im := image.NewNRGBA(image.Rect(0, 0, 3300, 300)) // clear: white on paper
	im.Set(3, 3, color.NRGBA{0, 0, 0, 255})
	up := upright(im, 1)
	assert.Equal(t, image.Pt(1100, 100), up.Bounds().Size()) // a third: 3300 / 1600 is more than 2
	assert.Equal(t, color.RGBA{255, 255, 255, 255}, up.RGBAAt(0, 0))
	assert.Equal(t, color.RGBA{227, 227, 227, 255}, up.RGBAAt(1, 1)) // 8 of 9 white: 8 × 255 / 9 = 226.7
}

func TestAHandoutHasThePhotographs(t *testing.T) {
	var back bytes.Buffer
	require.NoError(t, png.Encode(&back, image.NewNRGBA(image.Rect(0, 0, 80, 100))))
	front := turnedJPEG(t, 60, 40, 6, "MM")
	text := strings.Replace(string(examples.Text("pebble-hat")), "\npieces:", "\nphotographs:\n  front.jpg: the hat worn\n  back.png: the hat from behind\npieces:", 1)
	src := Source{Name: "hat.yaml", Text: []byte(text)}
	photos := []Source{{Name: "front.jpg", Text: front}, {Name: "back.png", Text: back.Bytes()}}
	r, err := Handout(context.Background(), src, HandoutOptions{Photos: photos})
	require.NoError(t, err)
	require.Len(t, r.Files, 1)
	pdf := r.Files[0].Body
	assert.Equal(t, 2, bytes.Count(pdf, []byte("/Subtype /Image")))
	assert.NotContains(t, string(pdf), "Exif")
	again, err := Handout(context.Background(), src, HandoutOptions{Photos: photos})
	require.NoError(t, err)
	assert.Equal(t, pdf, again.Files[0].Body)
	r, err = Handout(context.Background(), src, HandoutOptions{Photos: photos, Little: true})
	require.NoError(t, err)
	assert.NotContains(t, string(r.Files[0].Body), "/Subtype /Image")
	_, err = Handout(context.Background(), src, HandoutOptions{Photos: photos[:1]})
	require.ErrorContains(t, err, "hat.yaml:")
	require.ErrorContains(t, err, "back.png cannot be read")
	_, err = Handout(context.Background(), src, HandoutOptions{Photos: []Source{photos[1], {Name: "front.jpg", Text: front[:len(front)-200]}}})
	require.ErrorContains(t, err, "is damaged")
	_, err = Handout(context.Background(), src, HandoutOptions{Kind: ForClass})
	require.NoError(t, err) // which has none
}
