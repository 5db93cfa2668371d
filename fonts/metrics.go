package fonts

import (
	"encoding/binary"
	"fmt"
	"sync"
	"unicode"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// metrics is what measuring needs of one face, in plain arrays. It's built once;
// beyond that only the kerning of a face without a kern table is looked up and kept,
// so that any number of goroutines may read it.
type metrics struct {
	em      int              // units to the em; every sum of widths is a whole number of them
	glyph   [tableEnd]uint16 // by rune below tableEnd; 0: none
	beyond  map[rune]uint16  // runes from tableEnd on
	advance []int16          // by glyph
	row     []uint16         // by left glyph; row 0 kerns with nothing
	column  []uint16         // by right glyph; column 0 likewise
	kern    []int16          // row*columns + column
	columns int
	standIn uint16 // the glyph of StandIn if the face has none: one behind its own
	pairs   *pairs // instead of kern

	ascent, descent float64

	source *sfnt.Font
}

// tableEnd ends the runes that have a place in an array: every letter, digit and
// sign of a pattern stands below it.
const tableEnd = 0x2700

// beyondTable are the runes from tableEnd on that are looked for in a face of the house:
// a few letters and ligatures.
var beyondTable = [][2]rune{{0xA700, 0xA7FF}, {0xFB00, 0xFB06}}

// beyondOwn are those looked for in any other face: all of the basic plane but private
// use and surrogates.
var beyondOwn = [][2]rune{{tableEnd, 0xD7FF}, {0xF900, 0xFFEF}}

// metricsOf are the metrics of a face. Those of the house are part of the program: one
// that can't be read is a broken build, so it panics.
func metricsOf(f Face) *metrics {
	w := f.get()
	w.once.Do(func() {
		var err error
		if w.m, err = build(w.ttf, beyondTable); err != nil {
			panic("fonts: face of the house: " + err.Error())
		}
	})
	return w.m
}

// build reads a face.
func build(ttf []byte, further [][2]rune) (*metrics, error) {
	src, err := sfnt.Parse(ttf)
	if err != nil {
		return nil, err
	}
	var buf sfnt.Buffer
	m := &metrics{em: int(src.UnitsPerEm()), beyond: map[rune]uint16{}, advance: make([]int16, src.NumGlyphs()), source: src}
	em := fixed.Int26_6(m.em)
	for g := range m.advance {
		a, err := src.GlyphAdvance(&buf, sfnt.GlyphIndex(g), em, font.HintingNone)
		if err != nil {
			return nil, err
		}
		m.advance[g] = int16(a)
	}
	for r := rune(' '); r < tableEnd; r++ {
		m.glyph[r] = drawable(src, &buf, r)
	}
	for _, rs := range further {
		for r := rs[0]; r <= rs[1]; r++ {
			if g := drawable(src, &buf, r); g != 0 {
				m.beyond[r] = g
			}
		}
	}
	if m.glyph[StandIn] == 0 {
		m.standIn = uint16(len(m.advance))
		m.glyph[StandIn] = m.standIn
		m.advance = append(m.advance, int16(m.em*6/10))
	}
	if !m.readKerning(ttf) {
		m.pairs = &pairs{src: src, em: em, known: map[[2]uint16]int16{}}
	}
	fm, err := src.Metrics(&buf, em, font.HintingNone)
	if err != nil {
		return nil, err
	}
	m.ascent, m.descent = float64(fm.Ascent)/float64(m.em), float64(fm.Descent)/float64(m.em)
	return m, nil
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
// version 0, format 0) into a matrix, and reports whether there is such a table. The
// faces of the house also have them as GPOS classes, which say the same; a test holds
// both against HarfBuzz.
func (m *metrics) readKerning(ttf []byte) bool {
	table := tableOf(ttf, "kern")
	if len(table) < 18 || binary.BigEndian.Uint16(table) != 0 || table[8] != 0 {
		return false
	}
	u16 := func(at int) int { return int(binary.BigEndian.Uint16(table[at:])) }
	n := min(u16(10), (len(table)-18)/6)
	m.row, m.column = make([]uint16, len(m.advance)), make([]uint16, len(m.advance))
	rows := uint16(1)
	columns := uint16(1)
	known := func(l, r int) bool { return l < len(m.advance) && r < len(m.advance) }
	for i := range n {
		l, r := u16(18+6*i), u16(18+6*i+2)
		if !known(l, r) {
			continue
		}
		if m.row[l] == 0 {
			m.row[l], rows = rows, rows+1
		}
		if m.column[r] == 0 {
			m.column[r], columns = columns, columns+1
		}
	}
	m.columns = int(columns)
	m.kern = make([]int16, int(rows)*m.columns)
	for i := range n {
		if l, r := u16(18+6*i), u16(18+6*i+2); known(l, r) {
			m.kern[int(m.row[l])*m.columns+int(m.column[r])] = int16(u16(18 + 6*i + 4))
		}
	}
	return true
}

// tableOf is a table of a TrueType or OpenType file, or nil.
func tableOf(ttf []byte, tag string) []byte {
	if len(ttf) < 12 {
		return nil
	}
	for i := range int(binary.BigEndian.Uint16(ttf[4:])) {
		at := 12 + 16*i
		if at+16 > len(ttf) {
			return nil
		}
		if string(ttf[at:at+4]) != tag {
			continue
		}
		from, long := int64(binary.BigEndian.Uint32(ttf[at+8:])), int64(binary.BigEndian.Uint32(ttf[at+12:]))
		if from+long > int64(len(ttf)) {
			return nil
		}
		return ttf[from : from+long]
	}
	return nil
}

// pairs is the kerning of a face whose pairs stand in GPOS alone, looked up one by one.
type pairs struct {
	src *sfnt.Font
	em  fixed.Int26_6

	mu    sync.Mutex
	buf   sfnt.Buffer
	known map[[2]uint16]int16
}

func (p *pairs) between(left, right uint16) int {
	p.mu.Lock()
	defer p.mu.Unlock()
	k, ok := p.known[[2]uint16{left, right}]
	if !ok {
		if v, err := p.src.Kern(&p.buf, sfnt.GlyphIndex(left), sfnt.GlyphIndex(right), p.em, font.HintingNone); err == nil {
			k = int16(v)
		}
		p.known[[2]uint16{left, right}] = k
	}
	return int(k)
}

func (m *metrics) of(r rune) uint16 {
	if r >= 0 && r < tableEnd {
		return m.glyph[r]
	}
	return m.beyond[r]
}

func (m *metrics) between(left, right uint16) int {
	switch {
	case left == 0 || right == 0 || m.standIn != 0 && (left == m.standIn || right == m.standIn):
		return 0
	case m.pairs != nil:
		return m.pairs.between(left, right)
	}
	return int(m.kern[int(m.row[left])*m.columns+int(m.column[right])])
}

// largestFace is the most bytes that a face of one's own may have: the faces of all the
// world's writing are smaller.
const largestFace = 32 << 20

// Bits of fsType (OpenType 1.9, 'OS/2'): what the face's licence forbids.
const (
	noEmbedding  = 0x0002
	noSubsetting = 0x0100
	bitmapsOnly  = 0x0200
)

// Parse makes a face of a TrueType or OpenType file. Its error says, in a sentence
// without the file's name, what the file is instead, or what its licence forbids.
func Parse(ttf []byte) (Face, error) {
	switch {
	case len(ttf) > largestFace:
		return Face{}, fmt.Errorf("the face is %d MB; the most that can be read is %d MB", len(ttf)>>20, largestFace>>20)
	case len(ttf) >= 4 && (string(ttf[:4]) == "wOFF" || string(ttf[:4]) == "wOF2"):
		return Face{}, fmt.Errorf("a web font is packed; use the face's TTF or OTF file")
	case len(ttf) >= 4 && string(ttf[:4]) == "ttcf":
		return Face{}, fmt.Errorf("a collection holds several faces; use the TTF or OTF file of one")
	}
	if os2 := tableOf(ttf, "OS/2"); len(os2) >= 10 {
		kind := binary.BigEndian.Uint16(os2[8:])
		if kind&0x000F == noEmbedding || kind&(noSubsetting|bitmapsOnly) != 0 {
			return Face{}, fmt.Errorf("the face's licence does not allow it to be embedded in part (fsType %d); ask its maker, or use another face", kind)
		}
	}
	m, err := build(ttf, beyondOwn)
	if err != nil {
		return Face{}, fmt.Errorf("the file is not a TrueType or OpenType face")
	}
	if m.glyph['0'] == 0 {
		return Face{}, fmt.Errorf("the face has no digits, so no measurement can be written in it")
	}
	f := &face{ttf: ttf, m: m}
	f.once.Do(func() {})
	return Face{f}, nil
}
