package sheet

import (
	"math"
	"strings"

	"flatwright/fonts"
)

// NewText is a black text with its measured width.
func NewText(s string, face fonts.Face, size float64, at Point, a Anchor, class string) *Text {
	return &Text{S: s, At: at, Anchor: a, Face: face, Size: size,
		Width: fonts.Width(face, size, s), Ink: Black, Class: class}
}

// Elsewhere is by how much text may be wider where the face that a drawing carries is not used, as by programs that read no faces
// in an SVG: DejaVu Sans is 1.2 times as wide as the house's. Words that stand beside others, or reach to the edge, keep that room.
const Elsewhere = 1.2

// LineHeight is the height of a line of text in mm: ascent and descent.
func LineHeight(f fonts.Face, size float64) float64 {
	return (fonts.Ascent(f) + fonts.Descent(f)) * size
}

// Wrap breaks text into lines no wider than limit mm, at spaces; a word that is
// wider than that is cut.
func Wrap(text string, limit, size float64, face fonts.Face) []string {
	words := strings.Fields(text)
	if len(words) == 0 {
		return nil
	}
	if line := strings.Join(words, " "); fonts.Width(face, size, line) <= limit {
		return []string{line}
	}
	var parts []string
	for _, word := range words {
		parts = append(parts, cut(word, limit, size, face)...)
	}
	return WrapWords(parts, limit, size, face)
}

// WrapWords breaks words into lines no wider than limit mm, none of them cut.
func WrapWords(words []string, limit, size float64, face fonts.Face) []string {
	var lines []string
	line := ""
	for _, w := range words {
		next := w
		if line != "" {
			next = line + " " + w
		}
		if line != "" && fonts.Width(face, size, next) > limit {
			lines = append(lines, line)
			next = w
		}
		line = next
	}
	return append(lines, line)
}

// cut cuts a word into parts no wider than limit; a single character is never cut.
func cut(word string, limit, size float64, face fonts.Face) []string {
	if fonts.Width(face, size, word) <= limit {
		return []string{word}
	}
	var parts []string
	part := ""
	for _, r := range word {
		if part != "" && fonts.Width(face, size, part+string(r)) > limit {
			parts = append(parts, part)
			part = ""
		}
		part += string(r)
	}
	return append(parts, part)
}

// Snap brings everything on the sheet to the grid of 0.01 mm, so that every machine
// draws the same.
func (s *Sheet) Snap() {
	Walk(&s.Root, func(it Item) {
		switch it := it.(type) {
		case *Path:
			for i := range it.Segs {
				points := it.Segs[i].Points()
				for k := range points {
					p := &points[k]
					p.X, p.Y = zero(Quantise(p.X)), zero(Quantise(p.Y))
				}
			}
		case *Text:
			it.At.X, it.At.Y = zero(Quantise(it.At.X)), zero(Quantise(it.At.Y))
			it.Width = Quantise(it.Width)
			it.Size = Quantise(it.Size)
			it.Angle = zero(math.Round(it.Angle*1000) / 1000)
		}
	})
}

// zero is v, but never a negative zero.
func zero(v float64) float64 {
	if v == 0 {
		return 0
	}
	return v
}
