package fonts

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"math"
	"slices"
	"strings"
	"sync"

	"golang.org/x/image/font/sfnt"
)

// Subset is the part of a face that some text needs, as a face of its own: the glyphs'
// outlines with their advances and kerning, without hints. The same text gives the same
// bytes.
type Subset struct {
	TTF  []byte // a TrueType file
	Name string // its name, which no other subset has: letters, digits and a hyphen

	once sync.Once
	woff []byte
}

// mostSubsets is how many subsets of a face are kept.
const mostSubsets = 64

// SubsetOf is the part of f that draws every text of a drawing. Subsets are made once and
// shared.
func SubsetOf(f Face, texts ...string) *Subset {
	seen := map[rune]bool{}
	for _, s := range texts {
		for _, r := range Shown(f, s) {
			seen[r] = true
		}
	}
	rs := make([]rune, 0, len(seen))
	for r := range seen {
		rs = append(rs, r)
	}
	slices.Sort(rs)
	key := string(rs)
	w := f.get()
	w.mu.Lock()
	defer w.mu.Unlock()
	if s := w.subsets[key]; s != nil {
		return s
	}
	if w.subsets == nil || len(w.subsets) >= mostSubsets {
		w.subsets = map[string]*Subset{}
	}
	ttf := cut(metricsOf(f), rs)
	sum := sha256.Sum256(ttf)
	s := &Subset{TTF: ttf, Name: "fw-" + hex.EncodeToString(sum[:5])}
	w.subsets[key] = s
	return s
}

// WOFF is the subset packed for the web (WOFF File Format 1.0, W3C, section 3).
func (s *Subset) WOFF() []byte {
	s.once.Do(func() { s.woff = packed(s.TTF) })
	return s.woff
}

// be puts big-endian numbers together.
type be struct{ bytes.Buffer }

func (b *be) u16(vs ...int) *be {
	for _, v := range vs {
		b.Write([]byte{byte(v >> 8), byte(v)})
	}
	return b
}

func (b *be) u32(vs ...int) *be {
	for _, v := range vs {
		b.u16(v>>16, v)
	}
	return b
}

// cutFace is a face while it is cut: glyph 0 is the one for what is missing, then one a rune.
type cutFace struct {
	m          *metrics
	runes      []rune
	source     []uint16 // by new glyph
	glyf, loca be
	hmtx       be
	points     int // the most that a glyph has
	contours   int
	lo, hi     [2]int
	widest     int
}

// cut writes the tables that OpenType 1.9 asks of a TrueType face ("Required Tables" and
// "Tables Related to TrueType Outlines"), and kern.
func cut(m *metrics, rs []rune) []byte {
	c := &cutFace{m: m, runes: rs, source: []uint16{0}}
	for _, r := range rs {
		c.source = append(c.source, m.of(r))
	}
	c.glyphs()
	asc, desc := int(math.Round(m.ascent*float64(m.em))), int(math.Round(m.descent*float64(m.em)))
	n := len(c.source)
	var head, hhea, maxp, os2, post be
	head.u32(0x10000, 0x10000, 0, 0x5F0F3CF5).u16(0, m.em).u32(0, 0, 0, 0).u16(c.lo[0], c.lo[1], c.hi[0], c.hi[1], 0, 8, 2, 1, 0)
	hhea.u32(0x10000).u16(asc, -desc, 0, c.widest, 0, 0, c.hi[0], 1, 0, 0, 0, 0, 0, 0, 0, n)
	maxp.u32(0x10000).u16(n, c.points, c.contours, 0, 0, 2, 0, 0, 0, 0, 0, 0, 0, 0)
	first, last := 0xFFFF, 0
	if len(rs) > 0 {
		first, last = int(rs[0]), int(rs[len(rs)-1])
	}
	os2.u16(4, m.em/2, 400, 5, 0, m.em/2, m.em/2, 0, m.em/7, m.em/2, m.em/2, 0, m.em/2, m.em/20, m.em/4, 0)
	os2.Write(make([]byte, 10)) // no PANOSE
	os2.u32(1, 0, 0, 0)
	os2.WriteString("FLAT")
	os2.u16(0x40, first, last, asc, -desc, 0, asc, desc).u32(1, 0).u16(m.em/2, m.em*7/10, 0, ' ', 0)
	post.u32(0x30000, 0).u16(-m.em/10, m.em/20).u32(0, 0, 0, 0, 0)
	tables := []table{{"OS/2", os2.Bytes()}, {"cmap", c.cmap()}, {"glyf", c.glyf.Bytes()}, {"head", head.Bytes()}, {"hhea", hhea.Bytes()},
		{"hmtx", c.hmtx.Bytes()}, {"kern", c.kern()}, {"loca", c.loca.Bytes()}, {"maxp", maxp.Bytes()}, {"name", naming()}, {"post", post.Bytes()}}
	tables = slices.DeleteFunc(tables, func(t table) bool { return t.tag == "kern" && t.body == nil })
	return assembled(tables)
}

// glyphs writes outlines and advances.
func (c *cutFace) glyphs() {
	var buf sfnt.Buffer
	c.lo, c.hi = [2]int{math.MaxInt16, math.MaxInt16}, [2]int{math.MinInt16, math.MinInt16}
	for _, g := range c.source {
		c.loca.u32(c.glyf.Len())
		o := quadratic(c.m.segments(&buf, g))
		advance := int(c.m.advance[g])
		c.hmtx.u16(advance, o.write(&c.glyf))
		c.widest = max(c.widest, advance)
		c.points, c.contours = max(c.points, len(o.points)), max(c.contours, len(o.ends))
		for k := range 2 {
			if len(o.points) > 0 {
				c.lo[k], c.hi[k] = min(c.lo[k], o.lo[k]), max(c.hi[k], o.hi[k])
			}
		}
	}
	c.loca.u32(c.glyf.Len())
	if c.lo[0] > c.hi[0] {
		c.lo, c.hi = [2]int{}, [2]int{}
	}
	if c.glyf.Len() == 0 { // a table may not be empty
		c.glyf.u16(0)
	}
}

// cmap maps runes to glyphs: format 4, of the basic plane, one segment for each run of
// runes, since their glyphs stand in the same order.
func (c *cutFace) cmap() []byte {
	var ends, starts, deltas []int
	for i, r := range c.runes {
		if i > 0 && c.runes[i-1] == r-1 {
			ends[len(ends)-1]++
			continue
		}
		starts, ends, deltas = append(starts, int(r)), append(ends, int(r)), append(deltas, i+1-int(r))
	}
	starts, ends, deltas = append(starts, 0xFFFF), append(ends, 0xFFFF), append(deltas, 1)
	n := len(ends)
	power := 1
	log := 0
	for power*2 <= n {
		power, log = power*2, log+1
	}
	var b be
	b.u16(0, 1, 3, 1).u32(12)
	b.u16(4, 16+8*n, 0, 2*n, 2*power, log, 2*(n-power))
	b.u16(ends...).u16(0).u16(starts...).u16(deltas...).u16(make([]int, n)...)
	return b.Bytes()
}

// kern are the pairs of glyphs that kern, sorted as the format wants them; nil for none.
func (c *cutFace) kern() []byte {
	var pairs [][3]int
	for l, a := range c.source {
		for r, b := range c.source {
			if k := c.m.between(a, b); l > 0 && r > 0 && k != 0 {
				pairs = append(pairs, [3]int{l, r, k})
			}
		}
	}
	n := min(len(pairs), 10_000) // its length is 16 bits
	if n == 0 {
		return nil
	}
	power, log := 1, 0
	for power*2 <= n {
		power, log = power*2, log+1
	}
	var b be
	b.u16(0, 1, 0, 14+6*n, 1, n, 6*power, log, 6*(n-power))
	for _, p := range pairs[:n] {
		b.u16(p[0], p[1], p[2])
	}
	return b.Bytes()
}

// naming is a name table with the family alone.
func naming() []byte {
	const family = "Flatwright subset"
	wide := func(s string) []byte {
		var b be
		for _, r := range s {
			b.u16(int(r))
		}
		return b.Bytes()
	}
	records := []struct {
		id   int
		text string
	}{{1, family}, {2, "Regular"}, {4, family}, {6, strings.ReplaceAll(family, " ", "-")}}
	var b, strs be
	b.u16(0, len(records), 6+12*len(records))
	for _, r := range records {
		text := wide(r.text)
		b.u16(3, 1, 0x409, r.id, len(text), strs.Len())
		strs.Write(text)
	}
	b.Write(strs.Bytes())
	return b.Bytes()
}

// table is one table of a face.
type table struct {
	tag  string
	body []byte
}

func padded(b []byte) []byte { return append(b[:len(b):len(b)], make([]byte, -len(b)&3)...) }

// sum is a table's checksum: its words added up.
func sum(b []byte) uint32 {
	var n uint32
	for b = padded(b); len(b) > 0; b = b[4:] {
		n += binary.BigEndian.Uint32(b)
	}
	return n
}

// assembled puts tables, sorted by tag, into a file.
func assembled(tables []table) []byte {
	n := len(tables)
	power, log := 1, 0
	for power*2 <= n {
		power, log = power*2, log+1
	}
	var b, body be
	b.u32(0x10000).u16(n, 16*power, log, 16*(n-power))
	at, head := 12+16*n, 0
	for _, t := range tables {
		if t.tag == "head" {
			head = at + body.Len()
		}
		b.WriteString(t.tag)
		b.u32(int(sum(t.body)), at+body.Len(), len(t.body))
		body.Write(padded(t.body))
	}
	b.Write(body.Bytes())
	whole := b.Bytes()
	binary.BigEndian.PutUint32(whole[head+8:], 0xB1B0AFBA-sum(whole))
	return whole
}

// writers compress: making one takes longer than most tables do.
var writers = sync.Pool{New: func() any {
	w, _ := zlib.NewWriterLevel(nil, zlib.BestCompression)
	return w
}}

// packed is a face as WOFF, each table compressed if that makes it smaller.
func packed(ttf []byte) []byte {
	n := int(binary.BigEndian.Uint16(ttf[4:]))
	var dir, body be
	at := 44 + 20*n
	w := writers.Get().(*zlib.Writer)
	defer writers.Put(w)
	for i := range n {
		e := ttf[12+16*i:]
		from, long := int(binary.BigEndian.Uint32(e[8:])), int(binary.BigEndian.Uint32(e[12:]))
		data := ttf[from : from+long]
		var z bytes.Buffer
		w.Reset(&z)
		w.Write(data) //nolint:errcheck // into memory
		w.Close()     //nolint:errcheck // into memory
		out := data
		if z.Len() < long {
			out = z.Bytes()
		}
		dir.Write(e[:4])
		dir.u32(at+body.Len(), len(out), long)
		dir.Write(e[4:8])
		body.Write(padded(out))
	}
	var b be
	b.WriteString("wOFF")
	b.u32(0x10000, at+body.Len()).u16(n, 0).u32(len(ttf)).u16(1, 0).u32(0, 0, 0, 0, 0)
	b.Write(dir.Bytes())
	b.Write(body.Bytes())
	return b.Bytes()
}
