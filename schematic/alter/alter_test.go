package alter_test

import (
	"flag"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic"
	"flatwright/schematic/alter"
	"flatwright/schematic/finding"
	"flatwright/schematic/given"
	"flatwright/schematic/grade"
	"flatwright/schematic/long"
	"flatwright/schematic/random"
	"flatwright/schematic/read"
	"flatwright/schematic/units"
)

func tunic(t testing.TB) *schematic.Pattern { return given.File(t, "../../testdata/grade/tunic.yaml") }

// wrong are the findings of the families that an altered pattern may not have.
func wrong(l finding.List) finding.List {
	return slices.DeleteFunc(slices.Clone(l), func(f finding.Finding) bool {
		family, _, _ := strings.Cut(f.Kind, "/")
		return f.Severity != finding.Error && !slices.Contains([]string{"file", "arithmetic", "drawn", "units", "joins"}, family)
	})
}

func own(sts, rows int64) []schematic.Gauge {
	return []schematic.Gauge{{Name: "fabric", Stitches: units.Int(sts), Rows: units.Int(rows), Over: units.Int(100)}}
}

func measure(t testing.TB, g *schematic.Garment, id string) float64 {
	for _, m := range g.Pieces {
		for _, s := range m.Measures {
			if s.ID == id {
				return s.Length.Float()
			}
		}
	}
	require.Fail(t, "no measurement "+id)
	return 0
}

// By hand, size M at 20 stitches and 30 rows instead of 18 and 24: the back's 98
// stitches made 544.4 mm, which are 108.9; the grading asks for a multiple of 4 + 2: 110. Its 92 rows of 38 cm become
// exactly 115, which keep the length better than an even number would.
func TestAnOwnGaugeIsAppliedToStitchesAndRowsAnew(t *testing.T) {
	p := tunic(t)
	a, found := alter.Alter(p, alter.Request{Size: 2, Gauges: own(20, 30)})
	require.NotNil(t, a)
	assert.Empty(t, wrong(found))
	back := a.Pattern.Pieces[0]
	assert.Equal(t, 110, back.Sections[0].(*schematic.CastOn).Stitches.Int(0, 0))
	assert.Equal(t, 115, back.Sections[1].(*schematic.Even).Rows.Int(0, 0))
	for _, id := range []string{"back.width-at-hem", "back.cross-back", "sleeve.upper-arm", "sleeve.cuff"} {
		assert.InDelta(t, measure(t, a.Was, id), measure(t, a.Now, id), 10.001, id) // two stitches, of a multiple of four
	}
	assert.InDelta(t, measure(t, a.Was, "back.length"), measure(t, a.Now, "back.length"), 10)
	require.NotEmpty(t, a.Changes)
}

func TestTheSameGaugeChangesNothing(t *testing.T) {
	for _, path := range patterns(t) {
		p := given.File(t, path)
		for i := range p.Sizes.Names {
			a, found := alter.Alter(p, alter.Request{Size: i, Gauges: []schematic.Gauge{p.Gauges[0]}})
			require.NotNil(t, a, path)
			assert.Empty(t, errors(found), path)
			for k, m := range a.Now.Pieces {
				require.Equal(t, len(a.Was.Pieces[k].Measures), len(m.Measures), "%s %s", path, m.Name)
				for j, s := range m.Measures {
					assert.True(t, a.Was.Pieces[k].Measures[j].Length.Eq(s.Length), "%s %s %s %s: %v %v", path, m.Name, p.Sizes.Names[i], s.ID, a.Was.Pieces[k].Measures[j].Length, s.Length)
				}
			}
		}
	}
}

func errors(l finding.List) finding.List {
	var out finding.List
	for _, f := range l {
		if f.Severity == finding.Error {
			out = append(out, f)
		}
	}
	return out
}

// patterns are the tunic and all examples.
func patterns(t testing.TB) []string {
	all, err := filepath.Glob("../../examples/*.yaml")
	require.NoError(t, err)
	return append(all, "../../testdata/grade/tunic.yaml")
}

// At a gauge of one's own every width comes out as published, within a stitch at
// each place that was rounded, and nothing that fitted no longer fits: with all gauges
// told, and with the first alone, which the others follow.
func TestAtAnotherGaugeTheGarmentMeasuresTheSame(t *testing.T) {
	for n, path := range patterns(t) {
		p := given.File(t, path)
		for k, by := range []units.Num{units.Frac(9, 10), units.Frac(11, 10), units.Frac(5, 4), units.Frac(9, 10), units.Frac(11, 10), units.Frac(5, 4), units.Frac(6, 5), units.Frac(9, 10)} {
			for i := range p.Sizes.Names {
				if !long.Some(n+k+8*i, 24) {
					continue
				}
				var mine []schematic.Gauge
				for _, g := range p.Gauges {
					g.Stitches, g.Rows = g.Stitches.Mul(by), g.Rows.Mul(by)
					mine = append(mine, g)
				}
				if k > 5 { // rows of another height, stitches as wide as published
					mine[0].Stitches = p.Gauges[0].Stitches
				}
				if k > 2 {
					mine = mine[:1]
				}
				a, found := alter.Alter(p, alter.Request{Size: i, Gauges: mine})
				require.NotNil(t, a, path)
				for _, f := range found {
					if f.Severity == finding.Error {
						t.Errorf("%s %s × %v: %s %s %s", path, p.Sizes.Names[i], by, f.Kind, f.Piece, f.Message)
					}
				}
				worst, which := 0.0, ""
				for k, m := range a.Now.Pieces {
					for j, s := range m.Measures {
						if j >= len(a.Was.Pieces[k].Measures) || !s.Main {
							continue
						}
						was := a.Was.Pieces[k].Measures[j]
						if was.ID == s.ID && was.Length.Sign() > 0 {
							d := math.Abs(s.Length.Float() - was.Length.Float())
							if m.Kind == schematic.KindBand {
								d /= 2 // its length is that of many edges, each rounded by itself
							}
							if d > worst {
								worst, which = d, s.ID
							}
						}
					}
				}
				stitch := max(mine[0].StitchWidth().Float(), mine[0].RowHeight().Float())
				if worst > 4*stitch {
					t.Errorf("%s %s × %v: %s is %.1f mm off, %.1f stitches", path, p.Sizes.Names[i], by, which, worst, worst/stitch)
				}
			}
		}
	}
}

// A count that a rib and the fabric share makes the width of the fabric: by hand, size M of
// the raglan at 22 stitches instead of 18, its 94 stitches (20.89 in) are 114.9, even 114.
func TestTheFabricSaysHowManyStitchesARibBeginsWith(t *testing.T) {
	p := given.File(t, "../../examples/windlass-raglan.yaml")
	fabric, rib := p.Gauges[0], p.Gauges[1]
	fabric.Stitches, fabric.Rows = units.Int(22), units.Int(30)
	for _, mine := range [][]schematic.Gauge{{fabric}, {fabric, rib}} {
		a, found := alter.Alter(p, alter.Request{Size: 2, Gauges: mine})
		require.NotNil(t, a)
		assert.Equal(t, 114, a.Pattern.Pieces[0].Sections[0].(*schematic.CastOn).Stitches.Int(0, 0))
		assert.InDelta(t, measure(t, a.Was, "back.bust"), measure(t, a.Now, "back.bust"), 25.4*4/22)
		var kinds []string
		for _, f := range found {
			kinds = append(kinds, f.Kind)
		}
		if len(mine) == 1 {
			assert.Contains(t, kinds, "alter/gauge")
			assert.Equal(t, "24.5", units.Decimal(a.Pattern.Gauges[1].Stitches, 2)) // 20 × 22/18 = 24.44, to a quarter
		} else {
			assert.NotContains(t, kinds, "alter/gauge")
		}
	}
}

func TestALongerBodyAndSleeveKeepTheirOtherMeasurements(t *testing.T) {
	p := tunic(t)
	a, found := alter.Alter(p, alter.Request{Size: 2, Body: units.Int(50), Sleeve: units.Int(-30)})
	require.NotNil(t, a)
	assert.Empty(t, found)
	row := p.Gauges[0].RowHeight().Float()
	assert.InDelta(t, 50, measure(t, a.Now, "back.length")-measure(t, a.Was, "back.length"), row+0.01)
	assert.InDelta(t, 50, measure(t, a.Now, "front.length")-measure(t, a.Was, "front.length"), row+0.01)
	assert.Equal(t, measure(t, a.Was, "back.width-at-hem"), measure(t, a.Now, "back.width-at-hem"))
	assert.Equal(t, measure(t, a.Was, "sleeve.upper-arm"), measure(t, a.Now, "sleeve.upper-arm"))
	assert.InDelta(t, -30, measure(t, a.Now, "sleeve.sleeve-length")-measure(t, a.Was, "sleeve.sleeve-length"), row+0.01)
	_, found = alter.Alter(p, alter.Request{Size: 2, Body: units.Int(-2000)})
	require.NotEmpty(t, found)
	assert.Equal(t, "alter/length", found[0].Kind)
}

func TestAnotherSizeForOnePartWarnsOfTheJoinThatItBreaks(t *testing.T) {
	p := tunic(t)
	a, found := alter.Alter(p, alter.Request{Size: 1, Parts: map[string]int{"Sleeve": 5}})
	require.NotNil(t, a)
	require.NotEmpty(t, found)
	hit := false
	for _, f := range found {
		hit = hit || f.Kind == "alter/join"
	}
	assert.True(t, hit, "%v", found)
	assert.Equal(t, measure(t, schematic.Work(p, 5), "sleeve.upper-arm"), measure(t, a.Now, "sleeve.upper-arm"))
}

func TestABadRequestSaysWhy(t *testing.T) {
	p := tunic(t)
	for _, r := range []alter.Request{{Size: 99}, {Size: -1}, {Parts: map[string]int{"Hood": 1}}, {Parts: map[string]int{"Sleeve": 77}}, {Gauges: []schematic.Gauge{{Name: "lace"}}}, {Gauges: []schematic.Gauge{{Name: "fabric"}}}} {
		a, found := alter.Alter(p, r)
		assert.Nil(t, a)
		assert.True(t, found.Errors())
	}
}

func TestAlterNeverPanicsAndTheSameGaugeKeepsRandomGarments(t *testing.T) {
	same, all := 0, 0
	if !long.Some(1, 2) { // each works the garment hundreds of times
		checks := flag.Lookup("rapid.checks").Value
		was := checks.String()
		require.NoError(t, checks.Set("12"))
		defer func() { require.NoError(t, checks.Set(was)) }()
	}
	rapid.Check(t, func(t *rapid.T) {
		p := random.Pattern(random.Options{}).Draw(t, "pattern")
		size := rapid.IntRange(0, p.Sizes.Len()-1).Draw(t, "size")
		a, found := alter.Alter(p, alter.Request{Size: size, Gauges: []schematic.Gauge{p.Gauges[0]}})
		if a == nil {
			t.Fatal(found)
			return
		}
		all++
		kept := true
		for k, m := range a.Now.Pieces {
			if k >= len(a.Was.Pieces) || len(a.Was.Pieces[k].Measures) != len(m.Measures) {
				kept = false
				continue
			}
			for j, s := range m.Measures {
				kept = kept && a.Was.Pieces[k].Measures[j].Length.Eq(s.Length)
			}
		}
		if kept {
			same++
		} else if len(found) == 0 {
			t.Fatalf("changed and nothing told: %v", a.Changes)
		}
		var mine []schematic.Gauge
		for _, g := range p.Gauges {
			g.Stitches, g.Rows = g.Stitches.Mul(units.Frac(rapid.Int64Range(50, 200).Draw(t, "sts"), 100)), g.Rows.Mul(units.Frac(rapid.Int64Range(50, 200).Draw(t, "rows"), 100))
			mine = append(mine, g)
		}
		length := units.Int(rapid.Int64Range(-300, 300).Draw(t, "mm"))
		mine = mine[:rapid.IntRange(1, len(mine)).Draw(t, "told")]
		alter.Alter(p, alter.Request{Size: size, Gauges: mine, Body: length, Sleeve: length.Neg()})
	})
	t.Logf("%d of %d kept to the millimetre", same, all)
}

// The yarn standard's close ease is 1.5 in, the middle of 1 to 2; a designer's own of that name is hers.
func TestADesignersOwnEaseIsInsteadOfTheStandards(t *testing.T) {
	for own, want := range map[string]string{"": "1.5", "  close ease: 2 in\n": "2"} {
		p, found := read.Pattern("ease.yaml", []byte("version: 1\npattern: T\nterms: US\nunits: in\nsizes: S\ngauges: {fabric: 20 sts and 28 rows over 4 in in st st}\ngrading:\n"+own+
			"  wide: close ease\npieces:\n  - piece: Back\n    sections: [{cast on: 20}, {even: 4 rows}, {bind off: all}]\n"))
		require.False(t, found.Errors(), "%v", found)
		v, ok := grade.Env(p, 0)("wide")
		require.True(t, ok)
		assert.Equal(t, want, units.Decimal(units.In(v.N, units.Inch), 2))
	}
}

// By hand, Rowan Hill Yoke S at 16 stitches instead of 18: its neck of 88 stitches made 48.9 cm, which are 78.2. The repeat row of '2 in 1, 1 in
// each of 3' uses 4: 78 are 19 repeats and 2 more, which are worked even.
func TestARepeatRowLeavesWhatItsRepeatDoesNotUse(t *testing.T) {
	p := given.File(t, "../../testdata/altered/yoke.yaml")
	a, found := alter.Alter(p, alter.Request{Gauges: own(16, 27)})
	require.NotNil(t, a)
	assert.Equal(t, 78, a.Pattern.Pieces[0].Sections[0].(*schematic.CastOn).Stitches.Int(0, 0))
	assert.Contains(t, fmt.Sprint(found), "repeats over 4 stitches, and there are 78: work the last 2 even (or have 76 or 80 before it)")
}

// By hand: 40 stitches at 20 over 10 cm are 20 cm, 37 at 18.5. Two halves alike are 38, 20.5 cm, or 36; a tie goes up.
func TestACompromiseIsToldWithItsCauseAndTheOtherChoice(t *testing.T) {
	p := given.Text(t, "version: 1\npattern: P\nterms: US\nunits: cm\nsizes: one\ngauges:\n  fabric: 20 sts and 28 rows over 10 cm in stockinette stitch\npieces:\n"+
		"  - piece: Back\n    sections:\n      - cast on: 40\n      - even: 20 rows\n      - divide: [{hold: 20, name: first}, {hold: 20, name: second}]\n")
	g := p.Gauges[0]
	g.Stitches = units.Frac(185, 10)
	a, found := alter.Alter(p, alter.Request{Gauges: []schematic.Gauge{g}})
	require.NotNil(t, a)
	told := false
	for _, f := range found {
		if f.Kind == "alter/measure" {
			told = true
			assert.Equal(t, "width at hem is 20.5 cm / 8 in, not 20 cm / 7¾ in as published, 1 stitch off: its stitches are a multiple of 2, for what follows", f.Message)
			assert.Equal(t, "-2 sts would make it 19.5 cm / 7¾ in", f.Fix)
		}
	}
	assert.True(t, told, "%v", found)
}

// Where the grading has a body go by 6 and 1 more, that is the cause.
func TestACountOfTheGradingIsNamedAsTheCause(t *testing.T) {
	p := given.File(t, "../../testdata/altered/drop.yaml")
	_, found := alter.Alter(p, alter.Request{Gauges: []schematic.Gauge{{Name: "fabric", Stitches: units.Int(15), Rows: units.Int(25), Over: inch4, OverUnit: units.Inch}}})
	var fixes []string
	for _, f := range found {
		if f.Kind == "alter/measure" && f.Piece == "Back" {
			fixes = append(fixes, f.Message+" "+f.Fix)
		}
	}
	assert.Contains(t, fixes[0], `the grading has "body" go by 6 +6 sts would make it`)
}

var inch4 = units.Of(units.Int(4), units.Inch)

// What keeps a width from being nearer is told with its rule: parts that stay alike, or rounds of shaping of several stitches.
func TestAWidthThatGivesIsToldWithItsRule(t *testing.T) {
	const head = "version: 1\npattern: P\nterms: US\nunits: cm\nsizes: one\ngauges:\n  fabric: 20 sts and 28 rounds over 10 cm in stockinette stitch\npieces:\n"
	for text, want := range map[string]string{
		"  - piece: Mitten\n    worked: in the round, from the hem\n    sections:\n      - cast on: 40\n      - even: 20 rows\n      - {decrease: 4, at: across, every: 2 rows, times: 8}\n      - gather: yes\n": "it comes to a point, and each round of shaping takes 4 stitches",
		"  - piece: Yoke\n    worked: in the round, from the neck\n    sections:\n      - cast on: 92\n      - even: 20 rows\n      - divide:\n          - {hold: 31, name: back}\n          - {hold: 15, name: left}\n          - {hold: 31, name: front}\n          - {hold: 15, name: right}\n" +
			"  - piece: Body\n    worked: in the round, from the neck\n    sections:\n      - start from: [{piece: Yoke, part: back}, {add: 4}, {piece: Yoke, part: front}, {add: 4}]\n      - {decrease: 1, at: both edges, every: 9 rows, times: 3}\n      - bind off: all\n": "parts of it that are alike stay so, and its stitches go by 2",
	} {
		p := given.Text(t, head+text)
		told := ""
		for n := int64(170); n < 230; n += 7 {
			g := p.Gauges[0]
			g.Stitches = units.Frac(n, 10)
			a, found := alter.Alter(p, alter.Request{Gauges: []schematic.Gauge{g}})
			require.NotNil(t, a, "%v", found)
			told += fmt.Sprint(found)
		}
		assert.Contains(t, told, want)
	}
}
