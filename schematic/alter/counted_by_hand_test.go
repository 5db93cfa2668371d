package alter

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/given"
	"flatwright/schematic/units"
)

// By hand, for 35 stitches from 40 rows: 3 in every 4 are 30, five off, which is more than the one that is let be. 1 in each are 40; of 2, 3, 4, 5 and 6 rows the nearest whole
// numbers (2, 3, 4, 4, 5) give 40, 40, 40, 32 and 34; 6 in every 7 give 5 × 6 + 5 = 35. With 10 stitches that are one each, 45 ask the rows for the same 35; at one
// rate for all 50, 8 in every 9 give 5 × 8 + 5 = 45.
func TestTheSimplestRateThatComesNearest(t *testing.T) {
	rate := func(wish units.Num, edge schematic.Along, pick, of int, rows bool) [2]int {
		p, q := rateFor(wish, edge, pick, of, rows)
		return [2]int{p, q}
	}
	plain, mixed := schematic.Along{Rows: 40}, schematic.Along{Rows: 40, Stitches: 10}
	assert.Equal(t, [2]int{6, 7}, rate(units.Int(35), plain, 3, 4, false))
	assert.Equal(t, [2]int{6, 7}, rate(units.Int(45), mixed, 3, 4, true))
	assert.Equal(t, [2]int{8, 9}, rate(units.Int(45), mixed, 3, 4, false))
	assert.Equal(t, [2]int{3, 4}, rate(units.Int(31), plain, 3, 4, false), "one stitch off")
	assert.NotEqual(t, [2]int{3, 4}, rate(units.Frac(63, 2), plain, 3, 4, false), "one and a half")
	assert.Equal(t, [2]int{3, 4}, rate(units.Int(1), schematic.Along{Stitches: 7}, 3, 4, true), "no rows")
	assert.Equal(t, [2]int{1, 20}, rate(units.Int(1), schematic.Along{Rows: 20}, 3, 4, false), "the most rows in which a rate repeats")
}

func TestInWhatWordsARateIsTold(t *testing.T) {
	tr := &trial{piece: "Band"}
	tr.tellRate(finding.Pos{}, "Back neck", 3, 4, 3, 4)
	assert.Empty(t, tr.found, "as published")
	tr.tellRate(finding.Pos{}, "Back neck", 1, 1, 3, 4)
	tr.tellRate(finding.Pos{}, "Back neck", 3, 4, 3, 5)
	tr.tellRate(finding.Pos{}, "Back neck", 2, 4, 3, 4)
	var told []string
	for _, f := range tr.found {
		assert.Equal(t, "Band", f.Piece)
		told = append(told, f.Message)
	}
	assert.Equal(t, []string{"along Back neck pick up 1 in each instead of 3 in every 4", "along Back neck pick up 3 in every 4 instead of 3 in every 5",
		"along Back neck pick up 2 in every 4 instead of 3 in every 4"}, told)
}

const plain = "version: 1\npattern: T\nterms: US\nunits: cm\nsizes: S (M)\ngauges:\n  fabric: 20 sts and 40 rows over 10 cm in sc\n  rib: 25 sts and 50 rows over 10 cm in knit 2, purl 2 rib\npieces:\n" +
	"  - piece: Back\n    sections:\n      - cast on: 40 (48)\n      - even: 60 rows\n      - bind off: 40 (48)\n        at: left edge\n        edge: top\n" +
	"  - piece: Front\n    sections:\n      - cast on: 40 (48)\n      - even: 60 rows\n      - bind off: all\n        edge: top\n" +
	"joins:\n  - {sew: Front side, to: Back side}\n  - {sew: Front top, to: Back top, how: stitch to stitch}\n"

// fitted are the pattern in size S and a trial of it as published.
func fitted(t *testing.T) (*fitter, *trial) {
	p := given.Text(t, plain)
	f := newFitter(oneSize(p, 0, nil), p.Gauges, nil)
	return f, f.asPublished()
}

// By hand: a stitch of the fabric is 5 mm wide, a row 2.5 mm high; of the rib 4 and 2 mm.
func TestOfWhatAMeasurementIsMade(t *testing.T) {
	f, tr := fitted(t)
	fabric, rib := &f.gauges[0], &f.gauges[1]
	for _, c := range []struct {
		m    schematic.Measure
		want units.Num
	}{
		{schematic.Measure{Gauge: fabric, Of: "st"}, units.Int(5)}, {schematic.Measure{Gauge: fabric, Of: "row"}, units.Frac(5, 2)},
		{schematic.Measure{Gauge: rib, Of: "st"}, units.Int(4)}, {schematic.Measure{Gauge: rib, Of: "row"}, units.Int(2)},
		{schematic.Measure{Of: "row"}, units.Frac(5, 2)}, {schematic.Measure{Gauge: rib}, units.Int(4)}, {schematic.Measure{}, units.Int(5)},
	} {
		assert.True(t, c.want.Eq(tr.unit(c.m)), "%v of %v", tr.unit(c.m), c.m.Of)
	}
}

// By hand: 210 mm instead of 200 are two stitches of 5 mm, but for a thousandth of a millimetre that rounding may take; what there was not before is not compared.
func TestByHowManyStitchesAMeasurementIsOff(t *testing.T) {
	f, tr := fitted(t)
	was := &schematic.Made{Measures: []schematic.Measure{{ID: "a", Length: units.Int(200)}, {ID: "b", Length: units.Int(50)}}}
	now := &schematic.Made{Measures: []schematic.Measure{{ID: "b", Length: units.Int(45), Gauge: &f.gauges[0], Of: "row"}, {ID: "a", Length: units.Int(210), Gauge: &f.gauges[0], Of: "st"}, {ID: "c"}}}
	offs := map[string]float64{}
	tr.compare(was, now, func(_, now schematic.Measure, off units.Num) { offs[now.ID] = off.Float() })
	assert.Len(t, offs, 2)
	assert.InDelta(t, (10-0.001)/5, offs["a"], 1e-9)
	assert.InDelta(t, (5-0.001)/2.5, offs["b"], 1e-9)
	assert.InDelta(t, 0, tr.worst().Float(), 0)
}

// By hand: 40 stitches at 5 mm are 200 mm on both sides. 41 against 40 are unlike; 60 rows at 2.5 mm against 150 mm of 30 stitches may be a stitch of 5 mm apart, and no more.
func TestWhichEdgesArePartedNow(t *testing.T) {
	_, tr := fitted(t)
	edge := func(stitches, rows int) schematic.Edge { return schematic.Edge{Stitches: stitches, Rows: rows} }
	seam := func(a, b int64, sew, into schematic.Edge) schematic.Seam {
		return schematic.Seam{SewLength: units.Int(a), IntoLength: units.Int(b), Sew: []schematic.Edge{sew}, Into: []schematic.Edge{into}}
	}
	sts, rows := edge(40, 0), edge(0, 60)
	was := seam(200, 200, sts, sts)
	assert.False(t, tr.parted(was, seam(205, 205, sts, sts)))
	assert.True(t, tr.parted(was, seam(201, 200, sts, sts)))
	assert.True(t, tr.parted(was, seam(200, 201, rows, rows)))
	assert.False(t, tr.parted(was, seam(205, 200, rows, sts)), "to a stitch")
	assert.True(t, tr.parted(was, seam(206, 200, rows, sts)))
	assert.True(t, tr.parted(was, seam(200, 206, sts, rows)))
	assert.False(t, tr.parted(seam(203, 200, sts, sts), seam(209, 200, sts, sts)), "unlike before")
	assert.True(t, ofRows([]schematic.Edge{rows}))
	assert.False(t, ofRows([]schematic.Edge{sts}))
	assert.False(t, ofRows([]schematic.Edge{edge(30, 30)}))
	assert.False(t, ofRows(nil))
}

// By hand: edges of 40 stitches of 5 mm may be half a stitch each, 5 mm together, apart; stitch to stitch they have as many.
func TestWhichEdgesAgree(t *testing.T) {
	f, tr := fitted(t)
	of := func(a, b int64, how schematic.JoinHow, ease int64) schematic.Seam {
		e := func(mm int64) []schematic.Edge {
			return []schematic.Edge{{Length: units.Int(mm), Stitches: 40, Grain: units.Int(5)}}
		}
		return schematic.Seam{Join: &schematic.Join{How: how, Ease: expr.Of(units.Int(ease))}, Sew: e(a), Into: e(b), SewLength: units.Int(a), IntoLength: units.Int(b), SewCount: int(a / 5), IntoCount: int(b / 5)}
	}
	assert.True(t, agrees(f.was, of(205, 200, schematic.AsLong, 0)))
	assert.False(t, agrees(f.was, of(206, 200, schematic.AsLong, 0)))
	assert.False(t, agrees(f.was, of(200, 206, schematic.AsLong, 0)))
	assert.True(t, agrees(f.was, of(225, 200, schematic.Eased, 20)))
	assert.False(t, agrees(f.was, of(200, 220, schematic.Eased, 20)))
	assert.False(t, agrees(f.was, of(200, 200, schematic.Eased, 20)))
	assert.True(t, agrees(f.was, of(200, 200, schematic.StitchToStitch, 0)))
	assert.False(t, agrees(f.was, of(205, 200, schematic.StitchToStitch, 0)))
	assert.True(t, agrees(f.was, of(300, 200, schematic.Gathered, 0)), "gathered to any length")
	assert.True(t, tr.loosened(of(200, 200, schematic.AsLong, 0), of(206, 200, schematic.AsLong, 0)))
	assert.False(t, tr.loosened(of(206, 200, schematic.AsLong, 0), of(206, 200, schematic.AsLong, 0)))
	assert.False(t, tr.loosened(of(200, 200, schematic.AsLong, 0), of(205, 200, schematic.AsLong, 0)))
}

// Of the choices those of pieces with something to better are open, and of their mirrors; ribs never are, the grading only where the garment does not go together.
func TestWhichChoicesAreOpen(t *testing.T) {
	tr := &trial{p: &schematic.Pattern{Pieces: []*schematic.Piece{{Name: "Left"}, {Name: "Right", MirrorOf: "Left"}, {Name: "Back"}}},
		choices: []choice{{"rows 4", 1}, {"rib 4", 4}, {"rows 9", 1}, {"grading half", 2}},
		uses:    map[string]map[string]bool{"Left": {"rows 4": true, "rib 4": true}, "Back": {"rows 9": true}}, bad: map[string]bool{"Right": true}}
	assert.Equal(t, []choice{{"rows 4", 1}}, tr.open())
	tr.score.broken = 1
	assert.Equal(t, []choice{{"rows 4", 1}, {"grading half", 2}}, tr.open())
	tr.score = score{unlike: 1, far: 3}
	assert.Len(t, tr.open(), 2)
	tr.score = score{far: 3}
	tr.bad = map[string]bool{"Back": true}
	assert.Equal(t, []choice{{"rows 9", 1}}, tr.open())
}

func TestWhatContradicts(t *testing.T) {
	for kind, want := range map[string]bool{"arithmetic/count": true, "arithmetic/division": true, "arithmetic/mitre": false, "arithmetic/flat": false, "joins/length": false} {
		assert.Equal(t, want, contradicts(finding.Finding{Kind: kind, Severity: finding.Warning}), kind)
		assert.False(t, contradicts(finding.Finding{Kind: kind, Severity: finding.Note}), kind)
	}
	l := finding.List{{Kind: "a", Pos: finding.Pos{Line: 3}}}
	assert.True(t, had(l, finding.Finding{Kind: "a", Pos: finding.Pos{Line: 3}, Message: "other"}))
	assert.False(t, had(l, finding.Finding{Kind: "a", Pos: finding.Pos{Line: 4}}))
	assert.False(t, had(l, finding.Finding{Kind: "b", Pos: finding.Pos{Line: 3}}))
}

func TestWhatARequestMayNotAsk(t *testing.T) {
	p := given.Text(t, plain)
	one := units.Int(1)
	gauge := func(name string, sts, rows, over units.Num) Request {
		return Request{Gauges: []schematic.Gauge{{Name: name, Stitches: sts, Rows: rows, Over: over}}}
	}
	for want, r := range map[string]Request{
		"there is no such size":                                {Size: 2},
		"there is no such size ":                               {Size: -1},
		`no piece called "Cuff" that could be in another size`: {Parts: map[string]int{"Cuff": 1}},
		`there is no such size for "Back"`:                     {Parts: map[string]int{"Back": 2}},
		`there is no gauge called "cable" in the pattern`:      gauge("cable", one, one, one),
		"a gauge has stitches and rows over a length":          gauge("rib", units.Num{}, one, one),
		"a gauge has stitches and rows over a length ":         gauge("rib", one, units.Num{}, one),
		"a gauge has stitches and rows over a length  ":        gauge("rib", one, one, units.Int(-1)),
	} {
		_, found := r.read(p)
		require.Len(t, found, 1, want)
		assert.Equal(t, finding.Error, found[0].Severity)
		assert.Contains(t, want, found[0].Message)
	}
	for _, r := range []Request{{Size: 1, Parts: map[string]int{"Back": 1}}, {Parts: map[string]int{"Back": 0}}, gauge("RIB", one, one, one)} {
		gauges, found := r.read(p)
		assert.Empty(t, found)
		assert.Len(t, gauges, 2)
	}
	gauges, _ := gauge("", one, one, units.Int(100)).read(p)
	assert.True(t, gauges[0].Stitches.Eq(one), "without a name the first")
	assert.True(t, gauges[1].Stitches.Eq(units.Frac(5, 4)), "and the rib in proportion: a twentieth of 25")
}

func TestWhichGaugesAreTheSame(t *testing.T) {
	p := given.Text(t, plain)
	other := func(k int, sts, rows int64) []schematic.Gauge {
		out := append([]schematic.Gauge{}, p.Gauges...)
		out[k].Stitches, out[k].Rows = units.Int(sts), units.Int(rows)
		return out
	}
	assert.True(t, sameGauges(p.Gauges, other(0, 20, 40)))
	assert.False(t, sameGauges(p.Gauges, other(0, 21, 40)))
	assert.False(t, sameGauges(p.Gauges, other(0, 20, 41)))
	assert.False(t, sameGauges(p.Gauges, other(1, 25, 51)))
	twice := other(0, 40, 80)
	twice[0].Over = twice[0].Over.Times(2)
	assert.True(t, sameGauges(p.Gauges, twice), "the same over twice the length")
}

// A count's note says what kept it: what a line of the grading, the sides of the work, steps, a rib or what follows ask.
func TestWhatIsNotedOfACount(t *testing.T) {
	tr := &trial{piece: "Back"}
	for _, name := range []string{"times 4, row 3", "rib 40, rib", "rows 9, row 1", "band rows 9", "rows in steps 6", "cast on 40"} {
		tr.note(name, 40, schematic.Need{Multiple: 2, Plus: 1})
	}
	var whys []string
	for _, p := range tr.picks {
		assert.Equal(t, 40, p.n)
		whys = append(whys, p.of+": "+p.why())
	}
	assert.Equal(t, []string{"st: its rib is a multiple of 2 + 1", "row: rows go by 2 there, so that what follows begins on the same side of the work",
		"row: rows go by 2 there, so that what follows begins on the same side of the work", "row: its steps take 2 rows each", "st: its stitches are a multiple of 2 + 1, for what follows"}, whys)
	assert.Equal(t, `the grading has "half" go by 6`, picked{line: "half", need: schematic.Need{Multiple: 6}}.why())
}

// By hand: a half of 45 stitches, of the grading in a multiple of 6, is 90 around, which go by 12. Of two rules for one count that with the larger steps is the cause; one of the fabric
// beside is only near.
func TestWhichRuleMadeACount(t *testing.T) {
	p := &schematic.Pattern{Pieces: []*schematic.Piece{{Name: "Back"}, {Name: "Other", MirrorOf: "Back"}}}
	tr := &trial{p: p, picks: []picked{
		{of: "st", n: 45, need: schematic.Need{Multiple: 6}, line: "half"},
		{piece: "Back", of: "st", n: 90, need: schematic.Need{Multiple: 2}},
		{piece: "Back", of: "row", n: 90, need: schematic.Need{Multiple: 8}},
		{piece: "Back", of: "st", n: 44, need: schematic.Need{Multiple: 4}},
		{piece: "Back", of: "st", n: 50, need: schematic.Need{Multiple: 3}},
		{piece: "Sleeve", of: "st", n: 90, need: schematic.Need{Multiple: 9}},
		{piece: "Back", of: "st", n: 60, need: schematic.Need{Multiple: 1}},
	}}
	exact, near := tr.ruled("Back", schematic.Measure{Count: 90, Of: "st", Around: true})
	assert.Equal(t, 12, exact.need.Multiple)
	assert.Equal(t, 4, near.need.Multiple)
	exact, _ = tr.ruled("Back", schematic.Measure{Count: 90, Of: "st"})
	assert.Equal(t, 2, exact.need.Multiple)
	exact, _ = tr.ruled("Other", schematic.Measure{Count: 44, Of: "st"})
	assert.Equal(t, 4, exact.need.Multiple, "of its mirror")
	exact, near = tr.ruled("Back", schematic.Measure{Count: 60, Of: "row"})
	assert.Nil(t, exact)
	assert.Equal(t, 8, near.need.Multiple)
}

// By hand: back 40 cm and front 38 in one size.
func TestLengthsOfASeamInWords(t *testing.T) {
	s := schematic.Seam{SewLength: units.Int(400), IntoLength: units.Int(380), SewOf: "2 pieces"}
	assert.Equal(t, "40 cm (2 pieces) and 38 cm", sewn(s, units.CM))
}

// A count of the file is told as it was and is, section by section; two steps that stand for one section are one, and what is alike is not told.
func TestWhichCountsChanged(t *testing.T) {
	pos := finding.Pos{Line: 7}
	even := &schematic.Even{Common: schematic.Common{Pos: pos, Name: "leg"}}
	old := &schematic.Made{Name: "Sock", Steps: []schematic.Step{{Section: even, Before: 40, After: 40, Rows: 30}, {Section: &schematic.Even{}, After: 40, Rows: 2}}}
	now := &schematic.Made{Name: "Sock", Steps: []schematic.Step{{Section: even, Before: 44, After: 42, Rows: 1}, {Section: even, Before: 42, After: 44, Rows: 32}, {Section: &schematic.Even{}, After: 40, Rows: 2}}}
	got := countsChanged(old, now)
	require.Len(t, got, 2)
	assert.Equal(t, Change{"Sock", "leg", expr.Stitches, units.Int(40), units.Int(44)}, got[0])
	assert.Equal(t, Change{"Sock", "leg", expr.Rows, units.Int(30), units.Int(33)}, got[1])
	assert.Nil(t, countsChanged(old, &schematic.Made{}))
	assert.Equal(t, 44, stepsInFile(now)[0].Before)
}
