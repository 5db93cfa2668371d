package fonts

import (
	"encoding/binary"
	"sync"
	"unicode"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// unitsPerEm is the grid of Liberation Sans; every sum of widths is a whole
// number of these units.
const unitsPerEm = 2048

// metrics is what measuring needs of one face, in plain arrays. It's built once
// and never changes, so that any number of goroutines may read it.
type metrics struct {
	glyph   [tableEnd]uint16 // by rune below tableEnd; 0: none
	beyond  map[rune]uint16  // the few runes from tableEnd on
	advance []int16          // by glyph
	row     []uint16         // by left glyph; row 0 kerns with nothing
	column  []uint16         // by right glyph; column 0 likewise
	kern    []int16          // row*columns + column
	columns int

	ascent, descent float64
}

// tableEnd ends the runes that have a place in an array: every letter, digit and
// sign of a pattern stands below it.
const tableEnd = 0x2700

var (
	built     [faces]*metrics
	buildOnce [faces]sync.Once
)

func metricsOf(f Face) *metrics {
	if f < 0 || f >= faces {
		f = Regular
	}
	buildOnce[f].Do(func() { built[f] = build(TTF(f)) })
	return built[f]
}

// build reads one of the embedded faces. Those are part of the program: one that
// can't be read is a broken build, so it panics.
func build(ttf []byte) *metrics {
	face, err := sfnt.Parse(ttf)
	if err != nil {
		panic("fonts: embedded face: " + err.Error())
	}
	var buf sfnt.Buffer
	em := fixed.Int26_6(unitsPerEm)
	m := &metrics{beyond: map[rune]uint16{}, advance: make([]int16, face.NumGlyphs())}
	for g := range m.advance {
		a, err := face.GlyphAdvance(&buf, sfnt.GlyphIndex(g), em, font.HintingNone)
		if err != nil {
			panic("fonts: embedded face: " + err.Error())
		}
		m.advance[g] = int16(a)
	}
	for r := rune(' '); r < tableEnd; r++ {
		m.glyph[r] = drawable(face, &buf, r)
	}
	for _, rs := range [][2]rune{{0xA700, 0xA7FF}, {0xFB00, 0xFB06}} {
		for r := rs[0]; r <= rs[1]; r++ {
			if g := drawable(face, &buf, r); g != 0 {
				m.beyond[r] = g
			}
		}
	}
	m.readKerning(ttf)
	fm, err := face.Metrics(&buf, em, font.HintingNone)
	if err != nil {
		panic("fonts: embedded face: " + err.Error())
	}
	m.ascent, m.descent = float64(fm.Ascent)/unitsPerEm, float64(fm.Descent)/unitsPerEm
	return m
}

// drawable is the rune's glyph, or 0. Marks that sit on another letter and
// letters that run from right to left need a shaper, which a PDF writer lacks:
// they count as missing, so that no two writers draw them differently.
func drawable(face *sfnt.Font, buf *sfnt.Buffer, r rune) uint16 {
	if !unicode.IsPrint(r) && !unicode.Is(unicode.Zs, r) ||
		unicode.In(r, unicode.M, unicode.Hebrew, unicode.Arabic) {
		return 0
	}
	g, err := face.GlyphIndex(buf, r)
	if err != nil {
		return 0
	}
	return uint16(g)
}

// readKerning takes the pairs of the face's kern table (OpenType 1.9, 'kern',
// version 0, format 0) into a matrix. The face also has them as GPOS classes,
// which say the same; a test holds both against HarfBuzz.
func (m *metrics) readKerning(ttf []byte) {
	u16 := func(at int) int { return int(binary.BigEndian.Uint16(ttf[at:])) }
	table := -1
	for i := range u16(4) {
		if at := 12 + 16*i; string(ttf[at:at+4]) == "kern" {
			table = int(binary.BigEndian.Uint32(ttf[at+8:]))
		}
	}
	if table < 0 || u16(table+8)>>8 != 0 {
		panic("fonts: embedded face has no kern table of format 0")
	}
	pairs, first := u16(table+10), table+18
	m.row, m.column = make([]uint16, len(m.advance)), make([]uint16, len(m.advance))
	rows := uint16(1)
	columns := uint16(1)
	for i := range pairs {
		l, r := u16(first+6*i), u16(first+6*i+2)
		if m.row[l] == 0 {
			m.row[l], rows = rows, rows+1
		}
		if m.column[r] == 0 {
			m.column[r], columns = columns, columns+1
		}
	}
	m.columns = int(columns)
	m.kern = make([]int16, int(rows)*m.columns)
	for i := range pairs {
		l, r := u16(first+6*i), u16(first+6*i+2)
		m.kern[int(m.row[l])*m.columns+int(m.column[r])] = int16(u16(first + 6*i + 4))
	}
}

func (m *metrics) of(r rune) uint16 {
	if r >= 0 && r < tableEnd {
		return m.glyph[r]
	}
	return m.beyond[r]
}

func (m *metrics) between(left, right uint16) int {
	return int(m.kern[int(m.row[left])*m.columns+int(m.column[right])])
}
