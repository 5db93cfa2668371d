package alter

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/given"
	"flatwright/schematic/units"
)

// An edge of rows is kept by the join of rows, one of stitches by that of stitches, and a measurement named after an edge by that edge's.
func TestToWhichEdgeAMeasurementIsJoined(t *testing.T) {
	_, tr := fitted(t)
	for want, m := range map[string]schematic.Measure{
		"Back side": {Name: "length", Of: "row"}, "Back top": {Name: "width at hem", Of: "st"}, "Back side ": {Name: "side length", Of: "st"}, "Back top ": {Name: "width of top", Of: "row"},
	} {
		assert.Equal(t, strings.TrimSpace(want), tr.joinedTo("Front", m), m.Name)
	}
	assert.Equal(t, "Front side", tr.joinedTo("Back", schematic.Measure{Name: "length", Of: "row"}), "from the other side too")
	assert.Empty(t, tr.joinedTo("Sleeve", schematic.Measure{Name: "length", Of: "row"}))
}

// Rounds of one stitch run into a point by one, which is no step; of two, the next choice is two stitches away. A row in panels, and a start from two pieces, have their own causes.
func TestWhyAWidthIsNotNearer(t *testing.T) {
	_, tr := fitted(t)
	of := func(list ...schematic.Section) *schematic.Made {
		m := &schematic.Made{Name: "Tip", Piece: &schematic.Piece{Name: "Tip", Sections: list}}
		for _, s := range list {
			m.Steps = append(m.Steps, schematic.Step{Section: s, After: 30})
		}
		return m
	}
	round := func(by int) schematic.Section {
		return &schematic.Shape{Shapings: []schematic.Shaping{{By: expr.Counts(by), At: schematic.Across}}}
	}
	st, row := schematic.Measure{Of: "st", Count: 2, Name: "tip"}, schematic.Measure{Of: "row", Count: 2, Name: "tip"}
	const rest = "the stretches before and after it are rounded to whole stitches and rows too"
	for _, c := range []struct {
		m    *schematic.Made
		now  schematic.Measure
		why  string
		step int
	}{
		{of(round(1)), st, rest, 0},
		{of(round(2)), st, "it comes to a point, and each round of shaping takes 2 stitches", 2},
		{of(round(2)), row, rest, 0},
		{of(&schematic.Panels{Of: make([]schematic.Panel, 2)}), st, "every panel begins and ends in whole stitches", 0},
		{of(&schematic.Panels{Of: make([]schematic.Panel, 2)}), row, rest, 0},
		{of(&schematic.Held{From: []schematic.HeldPart{{Piece: "Yoke"}, {Piece: "Body"}, {Piece: "Yoke"}}}), schematic.Measure{Of: "st", Count: 30}, "it takes up the stitches of Body and Yoke, each as wide as its own rule allows", 0},
		{of(&schematic.Held{From: []schematic.HeldPart{{Piece: "Yoke"}, {Piece: "Body"}}}), schematic.Measure{Of: "st", Count: 31}, rest, 0},
		{of(&schematic.Held{From: []schematic.HeldPart{{Piece: "Yoke"}, {}}}), schematic.Measure{Of: "st", Count: 30}, rest, 0},
	} {
		why, step := tr.cause(c.m, c.now, units.Int(1))
		assert.Equal(t, c.why, why)
		assert.Equal(t, c.step, step)
	}
	tr.picks = []picked{{piece: "Tip", of: "st", n: 2, need: schematic.Need{Multiple: 4}}}
	why, step := tr.cause(of(), st, units.Int(2))
	assert.Equal(t, "its stitches are a multiple of 4, for what follows", why)
	assert.Equal(t, 4, step)
	why, _ = tr.cause(of(&schematic.Panels{Of: make([]schematic.Panel, 2)}), st, units.Frac(5, 2))
	assert.Equal(t, "every panel begins and ends in whole stitches", why, "more than half of the steps is not theirs alone")
	why, _ = tr.cause(of(), st, units.Frac(5, 2))
	assert.Equal(t, "its stitches are a multiple of 4, for what follows", why, "but if there is no other")
	tr.picks[0].n = 3
	why, step = tr.cause(of(), st, units.Int(1))
	assert.Equal(t, "the 3 stitches beside it are a multiple of 4, for what follows", why)
	assert.Zero(t, step)
	tr.picks[0].of = "row"
	why, step = tr.cause(of(), row, units.Int(1))
	assert.Contains(t, why, "rows go by 4 there")
	assert.Equal(t, 4, step)
}

// By hand: the fabric becomes 1.1 times as dense, the rib as it was: 100 stitches of both are 10 stitches apart, 4 are 0.4, less than a half.
func TestTwoGaugesThatShareStitches(t *testing.T) {
	f, tr := fitted(t)
	f.gauges = append([]schematic.Gauge{}, f.gauges...)
	f.gauges[0].Stitches = units.Int(22)
	rib := &schematic.Even{}
	f.steps[rib] = schematic.Step{Gauge: "rib", Rows: 6}
	q := &schematic.Piece{Gauge: "fabric", Sections: []schematic.Section{&schematic.Even{}, rib}}
	assert.Equal(t, "fabric and rib share its stitches, and your two gauges are 10 % further apart than those published", tr.twoGauges(q, schematic.Measure{Count: 100}))
	assert.Empty(t, tr.twoGauges(q, schematic.Measure{Count: 4}))
	assert.Equal(t, "rib and fabric share its stitches, and your two gauges are 9.1 % further apart than those published", func() string {
		f.steps[rib] = schematic.Step{Gauge: "fabric", Rows: 6}
		return tr.twoGauges(q, schematic.Measure{Count: 100, Gauge: &f.gauges[1]})
	}())
	f.steps[rib] = schematic.Step{Gauge: "rib"}
	assert.Empty(t, tr.twoGauges(q, schematic.Measure{Count: 100}), "no rows")
	f.steps[rib] = schematic.Step{Gauge: "fabric", Rows: 6}
	assert.Empty(t, tr.twoGauges(q, schematic.Measure{Count: 100}), "one gauge")
}

// A rule of the piece beside a count is that of the piece or its mirror, not of a rib, a line of the grading or another piece, and the one with the largest steps.
func TestWhichRuleIsBeside(t *testing.T) {
	rib := &schematic.Gauge{Name: "rib"}
	tr := &trial{p: &schematic.Pattern{}, picks: []picked{
		{piece: "Back", of: "st", n: 44, need: schematic.Need{Multiple: 4}}, {piece: "Back", of: "st", n: 50, need: schematic.Need{Multiple: 3}},
		{of: "st", n: 51, need: schematic.Need{Multiple: 20}, line: "half"}, {piece: "Back", of: "st", n: 52, need: schematic.Need{Multiple: 30}, rib: "rib 52, rib, row 1"},
	}}
	exact, near := tr.ruled("Back", schematic.Measure{Count: 60, Of: "st", Gauge: rib})
	assert.Nil(t, exact)
	assert.Equal(t, 4, near.need.Multiple)
	exact, _ = tr.ruled("Back", schematic.Measure{Count: 52, Of: "st", Gauge: rib})
	assert.Equal(t, 30, exact.need.Multiple)
	exact, _ = tr.ruled("Back", schematic.Measure{Count: 52, Of: "st"})
	assert.Nil(t, exact, "the fabric beside the rib")
	assert.Equal(t, 52, tr.besideRib("Back", schematic.Measure{Count: 52}).n)
	assert.Nil(t, tr.besideRib("Back", schematic.Measure{Count: 44}))
	assert.Nil(t, tr.besideRib("Front", schematic.Measure{Count: 52}))
}

// By hand: half of 90 cm is 90 stitches; even, they lie between 90 and 92 as 91 does. A line without a rule asks nothing.
func TestARuleThatIsEvenOrOddAloneIsKept(t *testing.T) {
	for rule, want := range map[string]string{", even: yes": "91 stitches of the cast on are not even, as half in the grading asks: 90 or 92 are", ", multiple: 6": "91 stitches of the cast on are not a multiple of 6, as half in the grading asks: 90 or 96 are", "": ""} {
		p := given.Text(t, strings.Replace(strings.Replace(graded, "cast on: neck", "cast on: half", 1), ", multiple: 6", rule, 1))
		now := oneSize(p, 0, nil)
		now.Pieces[0].Sections[0].(*schematic.CastOn).Stitches = expr.Counts(91)
		told := ""
		for _, f := range rulesKept(p, 0, now) {
			told += f.Message
		}
		assert.Equal(t, want, told, rule)
	}
}

func TestSectionsThatStandForOne(t *testing.T) {
	at := func(line int) schematic.Section {
		return &schematic.Even{Common: schematic.Common{Pos: finding.Pos{Line: line}}}
	}
	assert.True(t, sameInFile(at(3), at(3)))
	assert.False(t, sameInFile(at(3), at(4)))
	assert.False(t, sameInFile(at(0), at(0)), "in no file")
	assert.True(t, hasAt(expr.Counts(5), 0))
	assert.False(t, hasAt(expr.Counts(5), 1), "one number for all sizes is not that of one")
	assert.False(t, hasAt(expr.Graded{}, 0))
}

// By hand: bodies of 80, 90 and 100. 85 stands half way between the first two, 90 at the second; 79 is less than the first, 101 more than the last.
func TestWhereABodyStandsAmongTheSizes(t *testing.T) {
	of := func(mm ...int64) *schematic.Pattern {
		p := &schematic.Pattern{Sizes: expr.Sizes{Names: []string{"S", "M", "L"}, Groups: []int{3}}}
		var g expr.Graded
		for _, n := range mm {
			g.Vals, g.Has = append(g.Vals, units.Int(n)), append(g.Has, true)
		}
		p.Bodies = []schematic.Written{{Name: "bust", Low: g}}
		return p
	}
	for mine, want := range map[int64]between{
		85: {part: units.Frac(1, 2)}, 80: {}, 90: {low: 1}, 97: {low: 1, part: units.Frac(7, 10)}, 100: {low: 2},
		79: {out: "is less than that of the smallest size"}, 101: {low: 2, out: "is more than that of the largest size"},
	} {
		w, ok := placed(of(80, 90, 100), []Own{{Name: "hip", Length: units.Int(1)}, {Name: "Bust", Length: units.Int(mine)}})
		assert.True(t, ok)
		assert.Equal(t, want.low, w.low, "%d", mine)
		assert.True(t, want.part.Eq(w.part), "%d", mine)
		assert.Equal(t, want.out, w.out, "%d", mine)
	}
	for _, p := range []*schematic.Pattern{of(80, 80, 100), of(80, 90, 85), {}, of(80, 90)} {
		_, ok := placed(p, []Own{{Name: "bust", Length: units.Int(85)}})
		assert.False(t, ok)
	}
	_, ok := placed(of(80, 90, 100), []Own{{Name: "hip", Length: units.Int(85)}})
	assert.False(t, ok)
}

// By hand: a neck of 40 bound-off stitches and a side of 40 rows of 2.5 mm; at four fifths of the rows the 32 rows ask for as many stitches, and what is told is what is done.
func TestTheRateThatIsToldIsTheRateOfTheBand(t *testing.T) {
	p := given.Text(t, "version: 1\npattern: T\nterms: US\nunits: cm\nsizes: S\ngauges: {fabric: 20 sts and 40 rows over 10 cm in sc}\npieces:\n  - piece: Back\n    sections:\n      - cast on: 40\n      - even: 43 rows\n      - bind off: all\n"+
		"  - piece: Band\n    kind: band\n    onto: [\"Back left side, 1 in every 2 rows\"]\n    sections:\n      - even: 4 rows\n      - bind off: all\n")
	changed := 0
	for rows := int64(70); rows < 131; rows += 5 {
		a, found := Alter(p, Request{Gauges: at(p, 100, rows)})
		require.NotNil(t, a, "%v", found)
		e := a.Pattern.Pieces[1].Onto[0]
		for _, f := range found {
			if f.Kind == "alter/rate" {
				changed++
				assert.Equal(t, "along Back left side pick up "+inEvery(e.Pick, e.Of)+" instead of 1 in every 2", f.Message)
			}
		}
		picked := a.Now.Pieces[1].Steps[0].After
		assert.InDelta(t, 22, picked, 1, "%d: 22 stitches are picked up along 43 rows, and the side stays as long", rows)
	}
	assert.Positive(t, changed)
}

// By hand: of 81 live stitches a half is 40; a piece that is not there gives what the file says.
func TestLiveStitchesOfAHalf(t *testing.T) {
	p := given.Text(t, "version: 1\npattern: T\nterms: US\nunits: cm\nsizes: S\ngauges: {fabric: 20 sts and 40 rows over 10 cm in sc}\npieces:\n  - piece: Body\n    sections:\n      - cast on: 81\n      - even: 10 rows\n      - hold: all\n")
	f := newFitter(oneSize(p, 0, nil), p.Gauges, nil)
	tr := &trial{f: f, p: f.was, done: map[string]bool{"Body": true}}
	assert.Equal(t, 81, tr.Live(schematic.HeldPart{Piece: "Body"}))
	assert.Equal(t, 40, tr.Live(schematic.HeldPart{Piece: "Body", Half: true}))
	assert.Equal(t, 21, tr.Live(schematic.HeldPart{Piece: "Yoke", Stitches: expr.Counts(21)}))
}

// Sleeves choose together on which side of the work they begin, and all other pieces that are cast on and worked flat.
func TestWhichPiecesChooseTheirFirstRow(t *testing.T) {
	cast := []schematic.Section{&schematic.CastOn{}}
	for want, q := range map[string]*schematic.Piece{
		firstRow: {Sections: cast, Kind: schematic.KindBack}, firstRow + " of a sleeve": {Sections: cast, Kind: schematic.KindSleeve},
	} {
		assert.Equal(t, want, firstRowOf(q))
	}
	for _, q := range []*schematic.Piece{{Sections: cast, Round: true}, {Sections: cast, Onto: make([]schematic.EdgeRate, 1)}, {}, {Sections: []schematic.Section{&schematic.Even{}}}} {
		assert.Empty(t, firstRowOf(q))
	}
}

// By hand, in rows of 2.5 mm: 14 rows are 35 mm of 40; 15 would be 37.5, and in twos 16 would be 40. 18 rows fewer are 45 mm, of which 17 would be 42.5.
func TestWholeRowsThatDoNotComeToALength(t *testing.T) {
	told := func(mm int64, n int, twos bool) (out []string) {
		f, _ := fitted(t)
		var found finding.List
		q := f.was.Pieces[1]
		(&lengthener{f: f, found: &found}).came(q, q.Sections[1], units.Int(mm), n, twos)
		for _, g := range found {
			out = append(out, g.Message, g.Have, g.Fix)
		}
		return out
	}
	assert.Empty(t, told(40, 16, false))
	assert.Empty(t, told(26, 10, false), "both are printed as 2.5 cm")
	assert.Equal(t, []string{"Front becomes 3.5 cm longer, not 4 cm: a row is 0.25 cm high", "+14 rows", "+15 rows would make it 3.75 cm longer"}, told(40, 14, false))
	assert.Equal(t, []string{"Front becomes 3.5 cm longer, not 4 cm: rows go in twos there, since the piece beside it must begin on the same side of the work, and two rows are 0.5 cm high",
		"+14 rows", "+16 rows would make it 4 cm longer"}, told(40, 14, true))
	assert.Equal(t, []string{"Front becomes 4.5 cm longer, not 4 cm: a row is 0.25 cm high", "+18 rows", "+17 rows would make it 4.25 cm longer"}, told(40, 18, false))
	assert.Equal(t, []string{"Front becomes 4.5 cm shorter, not 4 cm: a row is 0.25 cm high", "-18 rows", "-17 rows would make it 4.25 cm shorter"}, told(-40, -18, false))
	assert.Equal(t, []string{"stitches", "rows"}, []string{many("stitch"), many("row")})
}

func TestWhatASectionStatesAndRepeats(t *testing.T) {
	assert.Equal(t, 40, stated(&schematic.CastOn{Stitches: expr.Counts(40)}, 0))
	assert.Equal(t, 0, stated(&schematic.CastOn{}, 0))
	assert.Equal(t, 0, stated(&schematic.Even{}, 0))
	assert.Equal(t, 44, stated(&schematic.Even{Common: schematic.Common{To: expr.Counts(44)}}, 0))
	p := &schematic.Pattern{Gauges: []schematic.Gauge{{Name: "fabric", Stitch: "stockinette"}, {Name: "rib", Stitch: "knit 2, purl 2 rib"}}}
	in := func(e schematic.Section, gauge string, rows int) int {
		return repeatIn(p, schematic.Step{Section: e, Gauge: gauge, Rows: rows})
	}
	assert.Equal(t, 4, in(&schematic.Even{Rib: true}, "rib", 1))
	assert.Equal(t, 0, in(&schematic.Even{Rib: true}, "rib", 0))
	assert.Equal(t, 0, in(&schematic.Even{}, "rib", 6))
	assert.Equal(t, 0, in(&schematic.Even{Rib: true}, "fabric", 6))
	assert.Equal(t, 2, in(&schematic.Even{Rib: true, Common: schematic.Common{Stitch: "k1, p1"}}, "rib", 6), "its own stitch goes before that of its gauge")
	assert.Equal(t, 0, in(&schematic.Shape{}, "rib", 6))
}

// By hand: the back in M is cast on with 48 stitches, the front in S with 40; their tops are joined stitch to stitch, and the sides are alike.
func TestAJoinOfTwoSizesHasItsFix(t *testing.T) {
	p := given.Text(t, plain)
	fix := func(parts map[string]int) string {
		r := Request{Parts: parts}
		g := schematic.Work(oneSize(p, 0, parts), 0)
		return r.besides(p, g, g.Seams[1].Join.Pos)
	}
	assert.Equal(t, "choose size M for Front too, or ease in 4 cm / 1½ in", fix(map[string]int{"Back": 1}))
	assert.Equal(t, "choose size M for Back too, or ease in 4 cm / 1½ in", fix(map[string]int{"Front": 1}))
	assert.Empty(t, fix(nil))
	assert.Empty(t, fix(map[string]int{"Front": 1, "Back": 1}))
	assert.Empty(t, Request{Parts: map[string]int{"Back": 1}}.besides(p, schematic.Work(p, 0), finding.Pos{Line: 999}))
}
