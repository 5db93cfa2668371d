// Package random makes valid patterns at random for property tests: garments of
// every kind of section, up to twelve pieces, four hundred stitches, twenty sizes
// and names of thirty letters. What it makes is worked without a finding; a test
// holds it to that.
package random

import (
	"fmt"
	"math"
	"strings"

	"pgregory.net/rapid"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// Options bound the patterns.
type Options struct {
	Sizes  int // at most; 0 is 20
	Pieces int // at most; 0 is 12
}

// Pattern is a generator of valid patterns.
func Pattern(o Options) *rapid.Generator[*schematic.Pattern] {
	if o.Sizes == 0 {
		o.Sizes = 20
	}
	if o.Pieces == 0 {
		o.Pieces = 12
	}
	return rapid.Custom(func(t *rapid.T) *schematic.Pattern { return pattern(t, o) })
}

// g makes one pattern.
type g struct {
	t     *rapid.T
	k     int // sizes
	p     *schematic.Pattern
	most  int
	names map[string]bool
}

func pattern(t *rapid.T, o Options) *schematic.Pattern {
	m := &g{t: t, k: rapid.IntRange(1, o.Sizes).Draw(t, "sizes"), most: o.Pieces, names: map[string]bool{}}
	m.p = &schematic.Pattern{Title: m.name("Pattern"), Terms: schematic.Terms(m.int("terms", 0, 1)), Units: units.Unit(m.int("units", 0, 1)),
		Steps: units.Usual, Sample: -1}
	m.sizes()
	m.gauge("fabric")
	m.gauge("rib")
	m.gauge("cable")
	kinds := []func(){m.back, m.oneBody, m.sleeve, m.tee, m.tube, m.raglan, m.bottomUp, m.front, m.shortRows, m.banded,
		m.panelled, m.raglanFlat, m.closed, m.mitre, m.motifs, m.crown, m.brim, m.sideways, m.fromNeck, m.joined, m.gored}
	for n := m.int("pieces", 1, 5); n > 0 && len(m.p.Pieces) < m.most; n-- {
		before := len(m.p.Pieces)
		kinds[m.int("kind", 0, len(kinds)-1)]()
		if len(m.p.Pieces) > m.most {
			m.p.Pieces = m.p.Pieces[:before]
			if before == 0 {
				m.back()
			}
			break
		}
	}
	return m.p
}

func (m *g) int(label string, lo, hi int) int { return rapid.IntRange(lo, hi).Draw(m.t, label) }
func (m *g) yes(label string) bool            { return rapid.Bool().Draw(m.t, label) }

// name is a name of its own that begins with word, sometimes of thirty letters.
func (m *g) name(word string) string {
	n := word
	if m.int("long name", 0, 4) == 0 {
		pad := []string{" überweites", " with saddle", " (ärmel) & <b>", " longitudinally", " éà ñø"}[m.int("pad", 0, 4)]
		for len([]rune(n)) < 30 {
			n += pad
		}
		n = strings.TrimSpace(string([]rune(n)[:30]))
	}
	for i := 2; m.names[n]; i++ {
		n = fmt.Sprintf("%s %d", word, i)
	}
	m.names[n] = true
	return n
}

func (m *g) sizes() {
	left := m.k
	for left > 0 {
		n := min(left, m.int("group", 1, 5))
		if len(m.p.Sizes.Groups) == 0 {
			n = 1
		}
		m.p.Sizes.Groups = append(m.p.Sizes.Groups, n)
		left -= n
	}
	for i := range m.k {
		m.p.Sizes.Names = append(m.p.Sizes.Names, fmt.Sprintf("S%d", i+1))
	}
}

func (m *g) gauge(name string) {
	over, unit := units.Int(100), units.CM
	if m.p.Units == units.Inch {
		over, unit = units.Of(units.Int(4), units.Inch), units.Inch
	}
	m.p.Gauges = append(m.p.Gauges, schematic.Gauge{Name: name, Stitches: units.Frac(int64(m.int("gauge", 16, 60)), 2),
		Rows: units.Int(int64(m.int("row gauge", 8, 40))), Over: over, OverUnit: unit, Stitch: "hdc", Stretched: name == "rib" && m.yes("stretched")})
}

// grade is one count a size, never going backwards.
func (m *g) grade(label string, lo, hi int) []int {
	v := m.int(label, lo, hi)
	step := m.int(label+" step", 0, 4)
	out := make([]int, m.k)
	for i := range out {
		out[i] = v + step*i
	}
	return out
}

func (m *g) each(f func(i int) int) []int {
	out := make([]int, m.k)
	for i := range out {
		out[i] = f(i)
	}
	return out
}

func gr(v []int) expr.Graded { return expr.Counts(v...) }

func (m *g) same(v int) []int { return m.each(func(int) int { return v }) }

func (m *g) one(v int) expr.Graded { return gr(m.each(func(int) int { return v })) }

func rows(v []int) schematic.Amount { return schematic.Amount{Rows: gr(v)} }

func (m *g) add(p *schematic.Piece) *schematic.Piece {
	m.p.Pieces = append(m.p.Pieces, p)
	return p
}

// rib is a few rows worked even, sometimes in a gauge of their own.
func (m *g) rib(back string) []schematic.Section {
	switch m.int("hem", 0, 2) {
	case 0:
		return nil
	case 1:
		return []schematic.Section{&schematic.Even{Amount: rows(m.grade("rib rows", 2, 8)), Rib: true}}
	}
	return []schematic.Section{
		&schematic.Even{Amount: rows(m.grade("rib rows", 2, 8)), Rib: true, Common: schematic.Common{Gauge: "rib"}},
		&schematic.Even{Amount: rows(m.same(2)), Common: schematic.Common{Gauge: back}},
	}
}

func (m *g) castOn(n []int) *schematic.CastOn {
	c := &schematic.CastOn{Stitches: gr(n)}
	if m.yes("chain") {
		c.Chain = gr(m.each(func(i int) int { return n[i] + 1 }))
	}
	return c
}

// upper is what follows at the top of a back: armholes and neck.
func (m *g) upper(n []int) []schematic.Section {
	off := m.int("bind off", 1, 4)
	times := m.int("armhole decreases", 1, 4)
	left := m.each(func(i int) int { return n[i] - 2*off - 2*times })
	neck := m.each(func(i int) int { return left[i]/3 + left[i]%2 })
	// Equal shoulders: what is not neck must be even.
	for i := range neck {
		if (left[i]-neck[i])%2 != 0 {
			neck[i]++
		}
	}
	side := m.each(func(i int) int { return (left[i] - neck[i]) / 2 })
	drop := m.int("neck decreases", 0, 3)
	end := []schematic.Section{}
	if drop > 0 {
		end = append(end, &schematic.Shape{Shapings: []schematic.Shaping{{By: m.one(1), At: schematic.RightEdge, Every: m.one(m.int("every", 1, 3)), Times: m.one(drop)}}})
	}
	if m.yes("stepped shoulder") && side[0]-drop > 6 {
		end = append(end, &schematic.BindOff{Leave: true, Stitches: m.one(2), At: schematic.LeftEdge, Every: m.one(2), Times: m.one(2), Edge: "shoulder"})
	}
	end = append(end, &schematic.Even{Amount: rows(m.same(m.int("top", 1, 4)))}, &schematic.BindOff{All: true, Edge: "shoulder"})
	return []schematic.Section{
		&schematic.BindOff{Stitches: m.one(off), At: schematic.BothEdges, Edge: "armhole"},
		&schematic.Shape{Shapings: []schematic.Shaping{{By: m.one(1), At: schematic.BothEdges, Every: m.one(2), Times: m.one(times)}}},
		&schematic.Even{Amount: rows(m.grade("armhole", 6, 40))},
		&schematic.Divide{Parts: []schematic.Part{
			{Name: "Right shoulder", Stitches: gr(side), MirrorOf: "Left shoulder"},
			{Name: "neck", Stitches: gr(neck), Leave: true, Edge: "neck"},
			{Name: "Left shoulder", Stitches: gr(side), Sections: end},
		}},
	}
}

func (m *g) back() {
	n := m.grade("back", 40, 300)
	s := append([]schematic.Section{m.castOn(n)}, m.rib("fabric")...)
	s = append(s, &schematic.Even{Amount: rows(m.grade("side", 2, 80))})
	if m.yes("waist") {
		d := m.int("waist decreases", 1, 3)
		s = append(s, &schematic.Shape{Shapings: []schematic.Shaping{{By: m.one(1), At: schematic.BothEdges, Every: m.one(4), Times: m.one(d)}}, Common: schematic.Common{Width: "waist"}},
			&schematic.Mark{What: "waist"},
			&schematic.Shape{Shapings: []schematic.Shaping{{Increase: true, By: m.one(1), At: schematic.BothEdges, Every: m.one(6), Times: m.one(d)}}})
	}
	s = append(s, m.upper(n)...)
	m.add(&schematic.Piece{Name: m.name("Back"), Kind: schematic.KindBack, Centre: m.yes("centre"), Sections: s})
}

// front is a front with a slanted neck, and its mirror.
func (m *g) front() {
	n := m.grade("front", 20, 150)
	d := m.int("neck decreases", 1, 8)
	count := m.int("buttonholes", 1, 6)
	s := []schematic.Section{m.castOn(n),
		&schematic.Mark{What: "buttonhole", Count: m.one(count), Along: true, At: schematic.LeftEdge, Inset: m.one(2), First: m.one(2), Apart: m.one(5)},
		&schematic.Even{Amount: rows(m.grade("side", 30, 60))},
		&schematic.Shape{Shapings: []schematic.Shaping{
			{By: m.one(1), At: schematic.LeftEdge, Every: m.one(2), Times: m.one(d), Edge: "neck", Then: []schematic.Spacing{{Every: m.one(4), Times: m.one(2)}}},
			{By: m.one(1), At: schematic.RightEdge, Every: m.one(1), Times: m.one(3), Edge: "armhole", Offset: m.int("offset", 0, 3)},
		}, Amount: rows(m.grade("armhole", 30, 50))},
		&schematic.BindOff{All: true, Edge: "shoulder"},
	}
	p := m.add(&schematic.Piece{Name: m.name("Right front"), Kind: schematic.KindFront, LeftEdge: "front edge", Sections: s})
	if len(m.p.Pieces) < m.most && m.yes("mirror") {
		m.add(&schematic.Piece{Name: m.name("Left front"), Kind: schematic.KindFront, MirrorOf: p.Name})
	}
}

// oneBody is a body in one piece with two fronts.
func (m *g) oneBody() {
	front := m.grade("front", 14, 60)
	back := m.each(func(i int) int { return 2*front[i] + 4 })
	under := m.int("underarm", 1, 6)
	n := m.each(func(i int) int { return 2*front[i] + back[i] + 2*under })
	var s []schematic.Section
	if m.yes("sideways hem") {
		s = append(s, &schematic.Sideways{Stitches: m.one(m.int("depth", 3, 12)), Rows: gr(n), Rib: true, Common: schematic.Common{Gauge: "rib"}},
			&schematic.PickUp{Pick: 1, Of: 1, Stitches: gr(n), Common: schematic.Common{Gauge: "fabric"}})
	} else {
		s = append(s, m.castOn(n))
	}
	deep := m.grade("armhole", 20, 60)
	d := m.int("neck decreases", 0, 8)
	right := []schematic.Section{
		&schematic.Shape{Shapings: []schematic.Shaping{{By: m.one(1), At: schematic.RightEdge, Every: m.one(2), Times: m.one(d), Edge: "neck"}}, Amount: rows(deep)},
		&schematic.BindOff{All: true, Edge: "shoulder"},
	}
	s = append(s, &schematic.Even{Amount: rows(m.grade("side", 2, 80))},
		&schematic.Divide{Parts: []schematic.Part{
			{Name: "Right front", Stitches: gr(front), LeftEdge: "armhole", Sections: right},
			{Name: "right underarm", Stitches: m.one(under), Leave: true, Edge: "underarm"},
			{Name: "Back", Stitches: gr(back), LeftEdge: "armhole", RightEdge: "armhole", Sections: []schematic.Section{
				&schematic.Even{Amount: rows(deep)},
				&schematic.Divide{Parts: []schematic.Part{
					{Name: "right shoulder", Stitches: gr(m.each(func(i int) int { return front[i] - d })), Leave: true, Edge: "shoulder"},
					{Name: "neck", Stitches: gr(m.each(func(i int) int { return back[i] - 2*(front[i]-d) })), Leave: true, Edge: "neck"},
					{Name: "left shoulder", Stitches: gr(m.each(func(i int) int { return front[i] - d })), Leave: true, Edge: "shoulder"},
				}},
			}},
			{Name: "left underarm", Stitches: m.one(under), Leave: true, Edge: "underarm"},
			{Name: "Left front", Stitches: gr(front), RightEdge: "armhole", MirrorOf: "Right front"},
		}})
	p := m.add(&schematic.Piece{Name: m.name("Body"), Kind: schematic.KindBody, LeftEdge: "front edge", RightEdge: "front edge", Sections: s})
	m.p.Joins = append(m.p.Joins, schematic.Join{Sew: []string{p.Name + " Right front shoulder"}, Into: []string{p.Name + " Left front shoulder"}, How: schematic.StitchToStitch})
}

// joined is a piece with an opening: it divides, and its parts are joined again.
func (m *g) joined() {
	side := m.grade("side part", 10, 80)
	gap := m.int("gap", 2, 20)
	n := m.each(func(i int) int { return 2*side[i] + gap })
	deep := m.grade("opening", 4, 30)
	m.add(&schematic.Piece{Name: m.name("Panel"), Sections: []schematic.Section{
		m.castOn(n),
		&schematic.Even{Amount: rows(m.grade("below", 2, 20))},
		&schematic.Divide{Parts: []schematic.Part{
			{Name: "First half", Stitches: gr(side), Sections: []schematic.Section{&schematic.Even{Amount: rows(deep)}}},
			{Name: "gap", Stitches: m.one(gap), Leave: true, Edge: "opening edge"},
			{Name: "Second half", Stitches: gr(side), Sections: []schematic.Section{&schematic.Even{Amount: rows(deep)}}},
		}},
		&schematic.JoinParts{Of: []schematic.JoinPart{{Part: "First half"}, {Added: m.one(gap)}, {Part: "Second half"}}},
		&schematic.Fold{},
		&schematic.Even{Amount: rows(m.grade("above", 2, 20)), Common: schematic.Common{To: gr(n)}},
	}})
}

func (m *g) sleeve() {
	r := m.grade("cuff rows", 15, 40)
	var pick *schematic.PickUp
	var n []int
	if m.yes("tall rows") {
		r = m.each(func(i int) int { return r[i] | 1 })
		pick = &schematic.PickUp{Alternate: true, Short: 1, Tall: 2, Ends: 1}
		n = m.each(func(i int) int { return r[i]/2 + 2*((r[i]+1)/2) - 2 })
	} else {
		pick = &schematic.PickUp{Pick: 2, Of: 3}
		n = m.each(func(i int) int { return r[i]/3*2 + min(r[i]%3, 2) })
	}
	pick.Stitches, pick.Gauge = gr(n), "fabric"
	times := m.int("increases", 1, 15)
	s := []schematic.Section{
		&schematic.Sideways{Stitches: m.one(m.int("depth", 3, 12)), Rows: gr(r), Rib: true, Common: schematic.Common{Gauge: "rib"}, Edge: "cuff"},
		pick,
		&schematic.RepeatRow{Text: "2 in 1, 1 in each of 2", Use: 3, Makes: 4, RestEven: true},
		&schematic.Shape{Shapings: []schematic.Shaping{{Increase: true, By: m.one(1), At: schematic.BothEdges, Every: gr(m.grade("every", 2, 6)), Times: m.one(times)}}},
	}
	if m.yes("cap") {
		s = append(s, &schematic.BindOff{Stitches: m.one(2), At: schematic.BothEdges, Edge: "cap"},
			&schematic.Shape{Shapings: []schematic.Shaping{{By: m.one(1), At: schematic.BothEdges, Every: m.one(2), Times: m.one(3)}}},
			&schematic.BindOff{All: true, Edge: "cap"})
	}
	m.add(&schematic.Piece{Name: m.name("Sleeve"), Kind: schematic.KindSleeve, Make: m.one(2), Round: false, Sections: s})
}

// tee has sleeves that are stitches added at both ends.
func (m *g) tee() {
	n := m.grade("tee", 40, 120)
	arm := m.grade("sleeve", 5, 60)
	total := m.each(func(i int) int { return n[i] + 2*arm[i] })
	shoulder := m.each(func(i int) int { return (total[i] - total[i]/4) / 2 })
	neck := m.each(func(i int) int { return total[i] - 2*shoulder[i] })
	m.add(&schematic.Piece{Name: m.name("Back"), Kind: schematic.KindBack, Make: m.one(2), FoldAt: m.yes("fold"), Sections: []schematic.Section{
		m.castOn(n),
		&schematic.Even{Amount: rows(m.grade("side", 10, 80))},
		&schematic.AddEdge{Stitches: gr(arm), At: schematic.BothEdges, Edge: "underarm", Common: schematic.Common{LeftEdge: "sleeve end", RightEdge: "sleeve end"}},
		&schematic.Even{Amount: rows(m.grade("deep", 10, 40))},
		&schematic.Divide{Parts: []schematic.Part{
			{Name: "r", Stitches: gr(shoulder), Leave: true, Edge: "shoulder"},
			{Name: "neck", Stitches: gr(neck), Leave: true, Edge: "neck"},
			{Name: "l", Stitches: gr(shoulder), Leave: true, Edge: "shoulder"},
		}},
	}})
}

// tube is a body in the round that divides into front and back.
func (m *g) tube() {
	half := m.grade("half", 30, 180)
	n := m.each(func(i int) int { return 2 * half[i] })
	under := m.int("underarm", 1, 4)
	part := m.each(func(i int) int { return half[i] - 2*under })
	s := append([]schematic.Section{m.castOn(n)}, m.rib("fabric")...)
	s = append(s, &schematic.Even{Amount: rows(m.grade("side", 4, 80))})
	side := []schematic.Section{&schematic.Even{Amount: rows(m.grade("armhole", 6, 40))}, &schematic.BindOff{All: true, Edge: "top edge"}}
	s = append(s, &schematic.Divide{Parts: []schematic.Part{
		{Name: "u1", Stitches: m.one(under), Leave: true, Edge: "underarm"},
		{Name: "Front", Stitches: gr(part), LeftEdge: "armhole", RightEdge: "armhole", Sections: side},
		{Name: "u2", Stitches: m.one(2 * under), Leave: true, Edge: "underarm"},
		{Name: "Back", Stitches: gr(part), LeftEdge: "armhole", RightEdge: "armhole", Sections: side},
		{Name: "u3", Stitches: m.one(under), Leave: true, Edge: "underarm"},
	}})
	m.add(&schematic.Piece{Name: m.name("Body"), Kind: schematic.KindBody, Round: true, Sections: s})
}

// raglan is a yoke from the neck, cut on its lines, and body and sleeves from its
// held stitches.
func (m *g) raglan() {
	if len(m.p.Pieces)+3 > m.most {
		m.back()
		return
	}
	front, arm := m.grade("front", 16, 50), m.grade("arm", 4, 24)
	n := m.each(func(i int) int { return 2*front[i] + 2*arm[i] })
	times := m.grade("raglan", 4, 24)
	wide := m.each(func(i int) int { return front[i] + 2*times[i] })
	upper := m.each(func(i int) int { return arm[i] + 2*times[i] })
	yoke := m.add(&schematic.Piece{Name: m.name("Yoke"), Kind: schematic.KindYoke, Round: true, From: schematic.FromNeck, Sections: []schematic.Section{
		m.castOn(n),
		&schematic.Even{Amount: rows(m.same(m.int("neckband", 0, 4))), Rib: true},
		&schematic.Panels{Of: []schematic.Panel{{Name: "Back", Stitches: gr(front)}, {Name: "Right arm", Stitches: gr(arm)}, {Name: "Front", Stitches: gr(front)}, {Name: "Left arm", Stitches: gr(arm)}}},
		&schematic.Shape{Shapings: []schematic.Shaping{{Increase: true, By: m.one(1), At: schematic.Lines, Every: m.one(2), Times: gr(times), Edge: "raglan"}}},
		&schematic.BindOff{All: true, Hold: true},
	}})
	under := m.int("underarm", 2, 10)
	m.add(&schematic.Piece{Name: m.name("Body"), Kind: schematic.KindBody, Round: true, From: schematic.FromNeck, Sections: []schematic.Section{
		&schematic.Held{From: []schematic.HeldPart{{Piece: yoke.Name, Part: "Back", Stitches: gr(wide)}, {Added: m.one(under)}, {Piece: yoke.Name, Part: "Front", Stitches: gr(wide)}, {Added: m.one(under)}}},
		&schematic.Even{Amount: rows(m.grade("body", 10, 60))},
		&schematic.Shape{Shapings: []schematic.Shaping{{By: m.one(1), At: schematic.BothEdges, Every: m.one(5), Times: m.one(2)}}},
		&schematic.BindOff{All: true, Edge: "hem"},
	}})
	m.add(&schematic.Piece{Name: m.name("Sleeve"), Kind: schematic.KindSleeve, Make: m.one(2), Round: true, From: schematic.FromNeck, Sections: []schematic.Section{
		&schematic.Held{From: []schematic.HeldPart{{Piece: yoke.Name, Part: "Left arm", Stitches: gr(upper)}, {Added: m.one(under)}}},
		&schematic.Shape{Shapings: []schematic.Shaping{{By: m.one(1), At: schematic.BothEdges, Every: m.one(6), Times: m.one(min(3, (arm[0]+8)/4))}}},
		&schematic.BindOff{All: true, Edge: "cuff edge"},
	}})
}

// raglanFlat begins flat at the neck, in five panels, and is joined into a round at the
// front.
func (m *g) raglanFlat() {
	if len(m.p.Pieces)+2 > m.most {
		m.back()
		return
	}
	back, arm := m.grade("back", 16, 40), m.grade("arm", 4, 16)
	n := m.each(func(i int) int { return 2 + back[i] + 2*arm[i] })
	slope := m.int("neck increases", 1, 5)
	add := m.each(func(i int) int { return back[i] - 2 - 2*slope })
	more := m.grade("raglan", 2, 16)
	yoke := m.add(&schematic.Piece{Name: m.name("Yoke"), Kind: schematic.KindYoke, From: schematic.FromNeck, LeftEdge: "neck", RightEdge: "neck", Sections: []schematic.Section{
		m.castOn(n),
		&schematic.Panels{Of: []schematic.Panel{{Name: "Right front", Stitches: m.one(1)}, {Name: "Right arm", Stitches: gr(arm)}, {Name: "Back", Stitches: gr(back)}, {Name: "Left arm", Stitches: gr(arm)}, {Name: "Left front", Stitches: m.one(1)}}},
		&schematic.Shape{Shapings: []schematic.Shaping{
			{Increase: true, By: m.one(1), At: schematic.Lines, Every: m.one(2), Times: m.one(2 * slope), Edge: "raglan"},
			{Increase: true, By: m.one(1), At: schematic.BothEdges, Every: m.one(4), Times: m.one(slope)},
		}},
		&schematic.JoinParts{Of: []schematic.JoinPart{{Added: gr(add)}}, Round: true, Name: "Front"},
		&schematic.Shape{Shapings: []schematic.Shaping{{Increase: true, By: m.one(1), At: schematic.Lines, Every: m.one(2), Times: gr(more)}}},
		&schematic.BindOff{All: true, Hold: true},
	}})
	wide := m.each(func(i int) int { return 2 + 2*2*slope + 2*slope + add[i] + 2*more[i] })
	m.add(&schematic.Piece{Name: m.name("Body"), Kind: schematic.KindBody, Round: true, From: schematic.FromNeck, Sections: []schematic.Section{
		&schematic.Held{From: []schematic.HeldPart{{Piece: yoke.Name, Part: "Back"}, {Piece: yoke.Name, Part: "Front", Stitches: gr(wide)}, {Added: m.one(6)}}},
		&schematic.Even{Amount: rows(m.grade("body", 10, 60))},
		&schematic.BindOff{All: true, Edge: "hem"},
	}})
}

// closed begins flat and is joined into a round.
func (m *g) closed() {
	n := m.grade("cowl", 30, 120)
	m.add(&schematic.Piece{Name: m.name("Cowl"), Sections: []schematic.Section{
		m.castOn(n), &schematic.Even{Amount: rows(m.same(m.int("flat rows", 1, 12)))},
		&schematic.JoinParts{Of: []schematic.JoinPart{{Added: m.one(m.int("added", 0, 8))}}, Round: true},
		&schematic.Even{Amount: rows(m.grade("rounds", 4, 40))},
		&schematic.Shape{Shapings: []schematic.Shaping{{By: m.one(1), At: schematic.BothEdges, Every: m.one(4), Times: m.one(3)}}},
	}})
}

// bottomUp is a round yoke over a body and sleeves.
func (m *g) bottomUp() {
	if len(m.p.Pieces)+3 > m.most {
		m.sleeve()
		return
	}
	half, arm := m.grade("half", 30, 60), m.grade("arm", 20, 30)
	under := 2 * m.int("underarm", 1, 3)
	part := m.each(func(i int) int { return half[i] - under })
	body := m.add(&schematic.Piece{Name: m.name("Body"), Kind: schematic.KindBody, Round: true, Sections: []schematic.Section{
		m.castOn(m.each(func(i int) int { return 2 * half[i] })),
		&schematic.Even{Amount: rows(m.grade("body", 10, 60))},
		&schematic.Divide{Parts: []schematic.Part{
			{Name: "u1", Stitches: m.one(under / 2), Leave: true, Edge: "underarm"},
			{Name: "Front", Stitches: gr(part), Hold: true},
			{Name: "u2", Stitches: m.one(under), Leave: true, Edge: "underarm"},
			{Name: "Back", Stitches: gr(part), Hold: true},
			{Name: "u3", Stitches: m.one(under / 2), Leave: true, Edge: "underarm"},
		}},
	}})
	sleeve := m.add(&schematic.Piece{Name: m.name("Sleeve"), Kind: schematic.KindSleeve, Make: m.one(2), Round: true, Sections: []schematic.Section{
		m.castOn(arm), &schematic.Even{Amount: rows(m.grade("sleeve", 10, 60))},
	}})
	total := m.each(func(i int) int { return 2*part[i] + 2*arm[i] })
	less := m.each(func(i int) int { return total[i] / 8 })
	m.add(&schematic.Piece{Name: m.name("Yoke"), Kind: schematic.KindYoke, Round: true, Sections: []schematic.Section{
		&schematic.Held{From: []schematic.HeldPart{{Piece: body.Name, Part: "Front"}, {Piece: sleeve.Name, Stitches: gr(arm)}, {Piece: body.Name, Part: "Back"}, {Piece: sleeve.Name}}, Common: schematic.Common{To: gr(total)}},
		&schematic.Even{Amount: rows(m.grade("yoke", 2, 10))},
		&schematic.Shape{Shapings: []schematic.Shaping{{By: gr(less), At: schematic.Across, Every: m.one(6), Times: m.one(3)}}},
		&schematic.BindOff{All: true, Edge: "neck"},
	}})
}

func (m *g) shortRows() {
	n := m.grade("dart", 30, 120)
	step := m.int("step", 1, 4)
	s := []schematic.Section{m.castOn(n), &schematic.Even{Amount: rows(m.grade("below", 4, 40))}}
	if m.yes("dart") {
		s = append(s, &schematic.ShortRows{Over: gr(m.each(func(i int) int { return n[i] - 4 })), At: schematic.Side(m.int("at", 0, 2)), Rows: m.one(6), Step: m.one(step)},
			&schematic.Even{Amount: rows(m.grade("above", 4, 20))})
	}
	s = append(s, &schematic.ShortRows{Over: gr(n), At: schematic.Side(m.int("at", 0, 2)), Rows: m.one(8), Step: m.one(step)},
		&schematic.BindOff{All: true, Edge: "shoulder"})
	m.add(&schematic.Piece{Name: m.name("Front"), Kind: schematic.KindFront, Sections: s})
}

// banded is a front with a band worked onto a chain of its edges.
func (m *g) banded() {
	if len(m.p.Pieces)+2 > m.most {
		m.shortRows()
		return
	}
	n := m.grade("half front", 20, 80)
	p := m.add(&schematic.Piece{Name: m.name("Half front"), Kind: schematic.KindFront, LeftEdge: "front edge", Sections: []schematic.Section{
		m.castOn(n), &schematic.Even{Amount: rows(m.grade("front edge", 20, 60))},
		&schematic.Shape{Shapings: []schematic.Shaping{{By: m.one(1), At: schematic.LeftEdge, Every: m.one(2), Times: m.one(6), Edge: "neck"}}},
		&schematic.BindOff{All: true, Edge: "shoulder"},
	}})
	m.add(&schematic.Piece{Name: m.name("Band"), Kind: schematic.KindBand, Gauge: "rib",
		Onto:     []schematic.EdgeRate{{Edge: p.Name + " front edge", Pick: 3, Of: 4}, {Edge: p.Name + " neck", Pick: 1, Of: 1}},
		Sections: []schematic.Section{&schematic.Even{Amount: rows(m.same(m.int("band", 3, 10))), Rib: true}, &schematic.Mark{What: "buttonhole", Count: m.one(3), First: m.one(3), Apart: m.one(4)}, &schematic.Even{Amount: rows(m.same(3)), Rib: true}, &schematic.BindOff{All: true}},
	})
}

func (m *g) panelled() {
	a, b := m.grade("plain", 10, 60), m.grade("cable", 6, 30)
	n := m.each(func(i int) int { return 2*a[i] + b[i] })
	m.add(&schematic.Piece{Name: m.name("Scarf"), Sections: []schematic.Section{
		m.castOn(n), &schematic.Even{Amount: rows(m.grade("border", 2, 8))},
		&schematic.Panels{Of: []schematic.Panel{{Name: "left", Stitches: gr(a)}, {Name: "cable", Stitches: gr(b), Gauge: "cable"}, {Name: "right", Stitches: gr(a)}}},
		&schematic.Even{Amount: rows(m.grade("long", 20, 200))},
		&schematic.Shape{Shapings: []schematic.Shaping{{By: m.one(1), At: schematic.BothEdges, Every: m.one(2), Times: m.one(4)}}},
		&schematic.BindOff{All: true},
	}})
}

func (m *g) mitre() {
	gauge := m.p.Gauges[0]
	times := m.int("mitre", 4, 30)
	// The angle that the counts make at the gauge, to a tenth of a degree.
	angle := mitreAngle(gauge, 2)
	n := m.each(func(i int) int { return 2*times + 3 + 2*i })
	m.add(&schematic.Piece{Name: m.name("Corner"), Sections: []schematic.Section{
		m.castOn(n), &schematic.Mitre{Angle: angle, By: m.one(2), Every: m.one(2), Times: m.one(times)}, &schematic.BindOff{All: true},
	}})
}

func (m *g) motifs() {
	shape := schematic.MotifShape(m.int("shape", 0, 4))
	cols, rows := m.int("columns", 1, 6), m.int("motif rows", 1, 5)
	mo := &schematic.Motifs{Shape: shape, Across: expr.Const(units.Int(int64(m.int("across", 40, 150))), m.k), Joining: expr.Const(units.Int(int64(m.int("joining", 0, 6))), m.k)}
	if m.yes("filled") {
		for range rows {
			mo.Filled = append(mo.Filled, strings.Repeat("x", cols))
		}
		mo.Filled[0] = "x" + mo.Filled[0][1:]
		if cols > 2 {
			mo.Filled[rows-1] = mo.Filled[rows-1][:cols-1] + "."
		}
	} else {
		mo.Columns, mo.Rows = m.one(cols), m.one(rows)
	}
	m.add(&schematic.Piece{Name: m.name("Motif panel"), Motifs: mo})
}

func (m *g) crown() {
	first := m.int("ring", 5, 8)
	times := m.grade("crown", 5, 14)
	m.add(&schematic.Piece{Name: m.name("Hat"), Kind: schematic.KindHat, Round: true, From: schematic.FromCentre, Sections: []schematic.Section{
		&schematic.Ring{Stitches: m.one(first)},
		&schematic.Shape{Shapings: []schematic.Shaping{{Increase: true, By: m.one(m.growth()), At: schematic.Across, Every: m.one(1), Times: gr(times)}}},
		&schematic.Even{Amount: rows(m.grade("sides", 4, 40))},
		&schematic.BindOff{All: true, Edge: "brim"},
	}})
}

// growth is how much each round of a crown grows: from a point to a flat circle.
func (m *g) growth() int {
	f := m.p.Gauges[0]
	flat := 2 * math.Pi * f.RowHeight().Float() / f.StitchWidth().Float()
	return max(1, int(flat*float64(m.int("of flat", 30, 125))/100))
}

func (m *g) brim() {
	n := m.grade("brim", 48, 120)
	m.add(&schematic.Piece{Name: m.name("Hat"), Kind: schematic.KindHat, Round: true, Sections: []schematic.Section{
		m.castOn(n),
		&schematic.Even{Amount: rows(m.grade("ribbing", 3, 12)), Rib: true},
		&schematic.Even{Amount: rows(m.grade("plain", 6, 40))},
		&schematic.Shape{Shapings: []schematic.Shaping{{By: m.one(8), At: schematic.Across, Every: m.one(2), Times: m.one(4)}}},
		&schematic.Gather{},
	}})
}

func (m *g) sideways() {
	n := m.grade("side", 30, 90)
	from := schematic.FromLeft
	if m.yes("from right") {
		from = schematic.FromRight
	}
	m.add(&schematic.Piece{Name: m.name("Shrug"), From: from, LeftEdge: "upper edge", RightEdge: "lower edge", FirstWS: m.yes("wrong side first"), Sections: []schematic.Section{
		m.castOn(n),
		&schematic.Even{Amount: rows(m.grade("first", 4, 30)), Rib: true},
		&schematic.AddEdge{Stitches: m.one(m.int("added", 2, 20)), At: schematic.RightEdge, Edge: "underarm"},
		&schematic.Even{Amount: rows(m.grade("middle", 10, 60))},
		&schematic.BindOff{Leave: true, Stitches: m.one(2), At: schematic.RightEdge},
		&schematic.Even{Amount: rows(m.grade("second", 4, 30))},
	}})
}

func (m *g) fromNeck() {
	n := m.grade("neck", 20, 60)
	length := m.each(func(int) int { return 0 })
	l := expr.Const(units.Int(int64(m.int("mm", 100, 400))), len(length))
	m.add(&schematic.Piece{Name: m.name("Cape"), From: schematic.FromNeck, Sections: []schematic.Section{
		m.castOn(n),
		&schematic.Shape{Shapings: []schematic.Shaping{{Increase: true, By: m.one(m.int("by", 2, 8)), At: schematic.Across, Every: m.one(2), Times: gr(m.grade("increases", 3, 15))}},
			Common: schematic.Common{Width: "shoulder round"}},
		&schematic.Even{Amount: schematic.Amount{Length: l, End: schematic.RowSide(m.int("end after", 0, 2))}},
		&schematic.Shape{Shapings: []schematic.Shaping{
			{Increase: true, By: m.one(1), At: schematic.LeftEdge, Every: m.one(2), Times: m.one(4)},
			{By: m.one(1), At: schematic.RightEdge, Every: m.one(3), Times: m.one(3)}}},
	}})
}
