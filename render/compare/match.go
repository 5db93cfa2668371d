package compare

import (
	"fmt"
	"image"
	"testing"
)

const (
	// ink is the darkness, of 255, from which a pixel is ink that needs a
	// partner; a partner may be a little fainter, as smoothing differs.
	ink     = 96
	partner = 48
	// Share is how many of the ink pixels may be without a partner.
	Share = 0.001
	// cell is the side of a cell of the grid in which those that may be must be
	// spread, in pixels (about 5 mm), and perCell how many a cell may hold: a
	// small label in a wrong place must not hide in a page full of ink.
	cell    = 30
	perCell = 12
)

// Same fails the test unless the two pictures are one: of one size, and every ink
// pixel of each with ink within 1.5 pixels in the other, all but Share of them,
// which must not lie together.
func Same(t testing.TB, a, b *image.Gray) {
	t.Helper()
	if err := Match(a, b, Share); err != nil {
		t.Error(err)
	}
}

// Match is Same's judgement, with a share of one's own. Sizes may differ by one
// pixel, as renderers round a page differently.
func Match(a, b *image.Gray, share float64) error {
	w, h := a.Rect.Dx(), a.Rect.Dy()
	if abs(w-b.Rect.Dx()) > 1 || abs(h-b.Rect.Dy()) > 1 {
		return fmt.Errorf("pictures of %d x %d and %d x %d pixels", w, h, b.Rect.Dx(), b.Rect.Dy())
	}
	w, h = min(w, b.Rect.Dx()), min(h, b.Rect.Dy())
	for i, pair := range [2][2]*image.Gray{{a, b}, {b, a}} {
		total, alone := lonely(pair[0], pair[1], w, h)
		if total == 0 {
			return fmt.Errorf("picture %d of 2 is blank", i+1)
		}
		if float64(len(alone)) > share*float64(total) {
			return fmt.Errorf("%d of the %d ink pixels of picture %d have no partner in the other, the first at %v",
				len(alone), total, i+1, alone[0])
		}
		cells := map[image.Point]int{}
		for _, p := range alone {
			c := p.Div(cell)
			if cells[c]++; cells[c] > perCell {
				return fmt.Errorf("more than %d ink pixels of picture %d have no partner in the other about %v", perCell, i+1, p)
			}
		}
	}
	return nil
}

// around are the pixels at b's ink or next to it.
func around(b *image.Gray, w, h int) []bool {
	near := make([]bool, w*h)
	for y := range h {
		row := b.Pix[y*b.Stride:]
		for x := range w {
			if 255-row[x] < partner {
				continue
			}
			for dy := max(y-1, 0); dy <= min(y+1, h-1); dy++ {
				for dx := max(x-1, 0); dx <= min(x+1, w-1); dx++ {
					near[dy*w+dx] = true
				}
			}
		}
	}
	return near
}

// lonely counts a's ink pixels, and finds those of them with no ink in b within
// 1.5 pixels: at the pixel itself and its eight neighbours (√2 away at most).
func lonely(a, b *image.Gray, w, h int) (total int, alone []image.Point) {
	near := around(b, w, h)
	for y := range h {
		row := a.Pix[y*a.Stride:]
		for x := range w {
			if 255-row[x] < ink {
				continue
			}
			total++
			if !near[y*w+x] {
				alone = append(alone, image.Pt(x, y))
			}
		}
	}
	return total, alone
}

func abs(n int) int { return max(n, -n) }
