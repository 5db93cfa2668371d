package document

import (
	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// Photo is a photograph to print: a JPEG file of W by H pixels, and what it shows.
type Photo struct {
	Shows string
	W, H  int
	JPEG  []byte
}

// Photographs stand between so high and so high, in mm, and so far from each other; a row has at most three.
const (
	photoHigh, photoLow = 70.0, 45.0
	photoGap            = 6.0
	photosInRow         = 3
)

// photographs sets the photographs beside each other, as many as are not too small then, each with what it shows below it. Little
// ink has none.
func (b *builder) photographs() {
	if b.o.Little {
		return
	}
	for all := b.c.Photos; len(all) > 0; {
		n := min(photosInRow, len(all))
		for n > 1 && b.photosHigh(all[:n]) < photoLow {
			n--
		}
		b.photoRow(all[:n])
		all = all[n:]
	}
	if len(b.c.Photos) > 0 {
		b.add(atom{high: b.p.size, draw: func(*sheet.Group, float64) {}})
	}
}

// photosHigh is how high photographs stand beside each other.
func (b *builder) photosHigh(row []Photo) float64 {
	wide := 0.0 // of all of them, for each mm of height
	for _, p := range row {
		wide += float64(p.W) / float64(p.H)
	}
	return min(photoHigh, (b.wide()-photoGap*float64(len(row)-1))/wide)
}

// photoRow sets photographs beside each other, as high as each other.
func (b *builder) photoRow(row []Photo) {
	high := b.photosHigh(row)
	column := func(p Photo) float64 { return max(high*float64(p.W)/float64(p.H), b.wide()/5) } // room for words, below a narrow one too
	if len(row) == photosInRow {
		column = func(p Photo) float64 { return high * float64(p.W) / float64(p.H) }
	}
	size := b.p.size
	words := 0.0
	var says [][][]run
	for _, p := range row {
		lines := wrap([]run{{p.Shows, fonts.Regular, sheet.Black}}, size, column(p))
		says = append(says, lines)
		words = max(words, lineHigh(size)*1.12*float64(len(lines)))
	}
	b.add(atom{high: high + 1.5 + words, gap: size, draw: func(g *sheet.Group, y float64) {
		x := inset
		for i, p := range row {
			w := high * float64(p.W) / float64(p.H)
			g.Items = append(g.Items, &sheet.Group{Title: p.Shows, Items: []sheet.Item{&sheet.Picture{At: sheet.Point{X: x, Y: y}, W: w, H: high, JPEG: p.JPEG}}})
			for k, l := range says[i] {
				setLine(g, l, x, y+high+1.5+fonts.Ascent(fonts.Regular)*size+float64(k)*lineHigh(size)*1.12, size, "note")
			}
			x += column(p) + photoGap
		}
	}})
}
