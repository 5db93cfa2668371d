package schematic_test

import (
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/alter"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/given"
	"flatwright/schematic/read"
	"flatwright/schematic/units"
)

// pieces is a pattern of one size at 20 stitches and 40 rows over 10 cm.
func pieces(t testing.TB, text string) *schematic.Pattern {
	p := given.Text(t, "version: 1\npattern: One\nterms: US\nunits: cm\nsizes: One\ngauges:\n  fabric: 20 sts and 40 rows over 10 cm in garter stitch\npieces:\n"+text)
	for _, f := range schematic.Work(p, 0).Findings {
		require.Equal(t, finding.Note, f.Severity, f.Message)
	}
	return p
}

func altered(t testing.TB, p *schematic.Pattern, sts, rows int64) (*alter.Altered, finding.List) {
	a, found := alter.Alter(p, alter.Request{Gauges: gaugeOf(sts, rows)})
	require.NotNil(t, a)
	return a, found
}

func afters(a *alter.Altered, piece int) []int {
	var out []int
	for _, s := range a.Now.Pieces[piece].Steps {
		out = append(out, s.After)
	}
	return out
}

// sectionsTold are findings but those of measurements, which a multiple moves off what was published.
func sectionsTold(l finding.List) finding.List {
	return slices.DeleteFunc(slices.Clone(l), func(f finding.Finding) bool { return f.Kind == "alter/measure" })
}

const crowned = `  - piece: Hat
    worked: in the round, from the hem
    sections:
      - cast on: 90
      - even: 60 rows
      - repeat row: 2 together, 1 in each of 7
      - even: 1 row
      - repeat row: 2 together, 1 in each of 6
      - gather
`

// By hand: the crown takes 9 stitches to 8 and 8 to 7, so that what is cast on must be a multiple of 9. 90 stitches at 22
// instead of 20 are 99; at 23 103.5, of 9 the nearest is 99 (108 is as near: 4.5, and a tie goes up).
func TestRepeatRowsComeOutAtAnotherGauge(t *testing.T) {
	p := pieces(t, crowned)
	for _, c := range []struct{ sts, cast int64 }{{22, 99}, {23, 108}, {21, 99}, {19, 90}, {10, 45}} {
		a, found := altered(t, p, c.sts, 40)
		assert.Empty(t, sectionsTold(found), "%d", c.sts)
		n := int(c.cast)
		assert.Equal(t, []int{n, n, n / 9 * 8, n / 9 * 8, n / 9 * 7, n / 9 * 7}[:5], afters(a, 0)[:5], "%d", c.sts)
	}
}

// By hand: of 3 stitches 4 are made, and then of 8 stitches 7: 4 × j must be a multiple of 8, so that j
// is even and 3 × j a multiple of 6. The increases before it end at 60 × 1.15 = 69, which from 46 by twos is
// 66 or 72, both multiples of 6 and as near: the larger.
func TestAShapingEndsAtACountThatTheRepeatsAllow(t *testing.T) {
	p := pieces(t, `  - piece: Swatch
    sections:
      - cast on: 40
      - {increase: 1, at: both edges, every: 4 rows, times: 10}
      - repeat row: 2 in 1, 1 in each of 2
      - even: 10 rows
      - repeat row: 2 together, 1 in each of 6
      - bind off: all
`)
	a, found := altered(t, p, 23, 40)
	assert.Empty(t, sectionsTold(found))
	assert.Equal(t, []int{46, 72, 96, 96, 84}, afters(a, 0)[:5])
}

func TestARepeatThatCannotComeOutIsKeptAndNamed(t *testing.T) {
	p := pieces(t, `  - piece: Panel
    sections:
      - cast on: 64
      - divide:
          - part: Flap
            stitches: 48
            sections:
              - repeat row: 2 together, 1 in each of 6
                name: gathering row
              - bind off: all
          - hold: 16
`)
	a, found := altered(t, p, 21, 40)
	found = sectionsTold(found)
	require.Len(t, found, 1)
	assert.Equal(t, "alter/section", found[0].Kind)
	assert.Equal(t, "Panel", found[0].Piece)
	assert.Equal(t, "the gathering row repeats over 8 stitches, and there are 50: work the last 2 even (or have 48 or 56 before it)", found[0].Message)
	assert.Equal(t, 44, afters(a, 0)[1])
}

// By hand: 40 and 8 stitches are 48, a multiple of 8. At 21 instead of 20 they are 42 and 8.4: what is added makes the
// multiple, so that nothing is left over.
func TestWhatIsAddedMakesTheMultiple(t *testing.T) {
	p := pieces(t, `  - piece: Panel
    sections:
      - cast on: 40
      - add: 8
        at: left edge
      - repeat row: 2 together, 1 in each of 6
      - bind off: all
`)
	a, found := altered(t, p, 21, 40)
	assert.Empty(t, sectionsTold(found))
	assert.Zero(t, afters(a, 0)[1]%8)
	assert.InDelta(t, 50.4, afters(a, 0)[1], 4)
}

// At the same proportion of row to stitch a square mitre stays one: 41 stitches at 30 instead of 20 are 61, and
// 2 of them go 30 times on every second row, to 1. Where rows are lower, Work says by how much its corner misses.
func TestAMitreKeepsItsAngle(t *testing.T) {
	const square = `  - piece: Square
    sections:
      - cast on: 41
      - {mitre: 90 degrees, decrease: 2, every: 2 rows, times: 20}
      - bind off: all
`
	p := pieces(t, square)
	a, found := altered(t, p, 30, 60)
	assert.Empty(t, found)
	m, ok := a.Pattern.Pieces[0].Sections[1].(*schematic.Mitre)
	require.True(t, ok)
	assert.Equal(t, []int{2, 2, 30}, []int{m.By.Int(0, 0), m.Every.Int(0, 0), m.Times.Int(0, 0)})
	assert.Equal(t, []int{61, 1}, afters(a, 0)[:2])
	// Rows twice as high as a stitch is wide need a decrease of 4 a row: 2 × 2 × tan 45°.
	a, found = altered(t, p, 20, 10)
	assert.Empty(t, found)
	m, ok = a.Pattern.Pieces[0].Sections[1].(*schematic.Mitre)
	require.True(t, ok)
	assert.Equal(t, []int{4, 1}, []int{m.By.Int(0, 0), m.Every.Int(0, 0)})
	_, found = altered(t, p, 26, 34)
	found = sectionsTold(found)
	require.Len(t, found, 1)
	assert.Equal(t, "arithmetic/mitre", found[0].Kind)
}

// By hand: 6 × 4 = 24 stitches; at 20 over 10 cm they are 12 cm around, at 16 15 cm, which is 3 cm more: 4.8 stitches, 1 round of 6.
func TestRoundsFromARingAreKeptAndWhatWouldMendThemIsTold(t *testing.T) {
	p := pieces(t, `  - piece: Crown
    worked: in the round, from the centre
    sections:
      - ring: 6
      - repeat row: 2 in 1
      - repeat row: 2 in 1, 1 in 1
      - repeat row: 2 in 1, 1 in each of 2
      - even: 10 rows
      - bind off: all
`)
	a, found := altered(t, p, 16, 40)
	found = sectionsTold(found)
	require.Len(t, found, 1)
	assert.Equal(t, "the rounds that grow from the ring are kept: their 24 stitches are 15 cm around at your gauge, not 12 cm: work about 1 fewer round like the last one", found[0].Message)
	assert.Equal(t, 24, a.Now.Pieces[0].Steps[3].After)
	_, found = altered(t, p, 20, 44)
	assert.Empty(t, found, "the rounds are as wide as published")
}

func TestMotifsAreNamedWithTheSizeToWorkThemTo(t *testing.T) {
	p := pieces(t, "  - piece: Blanket\n    motifs: {shape: square, across: 12 cm, columns: 4, rows: 3}\n")
	_, found := altered(t, p, 16, 40)
	require.Len(t, found, 1)
	assert.Equal(t, "the motifs of Blanket are measured, not counted, and kept: work yours to 12 cm / 4¾ in across", found[0].Message)
}

// The garments that the project draws by hand come out of an alteration to their own gauge as they went in.
func TestTheSameGaugeKeepsEveryGarment(t *testing.T) {
	all, err := filepath.Glob("../testdata/garments/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, all)
	for _, path := range all {
		p := given.File(t, path)
		for i := range p.Sizes.Names {
			a, found := alter.Alter(p, alter.Request{Size: i, Gauges: p.Gauges})
			require.NotNil(t, a, path)
			assert.Empty(t, wrong(found), path)
			assert.Empty(t, a.Changes, "%s %s", path, p.Sizes.Names[i])
			for _, f := range found {
				assert.Equal(t, finding.Note, f.Severity, "%s: %s", path, f.Message)
			}
		}
	}
}

// Whatever the gauge, no repeat row is left with stitches over that nobody was told of.
func TestNoRepeatIsLeftOverUntold(t *testing.T) {
	p := pieces(t, crowned)
	for sts := int64(5); sts < 60; sts++ {
		a, found := altered(t, p, sts, 40)
		assert.Empty(t, sectionsTold(found), "%d", sts)
		n := a.Now.Pieces[0].Steps[0].After
		assert.Zero(t, n%9, "%d", sts)
		if wish := units.Frac(90*sts, 20); n > 9 {
			assert.False(t, units.Frac(9, 2).Less(units.Int(int64(n)).Sub(wish).Abs()), "%d: %d", sts, n)
		}
	}
}

// The tunic's 98 stitches are of 4 + 2; at 20 stitches instead of 18 they are 108.9, and of 4 + 2 the nearest are 110:
// the grading's own rule is kept, and what it costs is told.
func TestACountKeepsItsStitchPattern(t *testing.T) {
	p := given.File(t, "../testdata/grade/tunic.yaml")
	a, found := alter.Alter(p, alter.Request{Size: 2, Gauges: gaugeOf(20, 30)})
	assert.Equal(t, 110, a.Pattern.Pieces[0].Sections[0].(*schematic.CastOn).Stitches.Int(0, 0))
	told := ""
	for _, f := range found {
		assert.NotContains(t, f.Message, "are not a multiple")
		told += f.Piece + ": " + f.Message + "\n"
	}
	assert.Contains(t, told, "Back: width at hem is 55 cm / 21¾ in, not 54.5 cm / 21½ in as published, 1.1 stitches off: its stitches are a multiple of 4 + 2")
}

const shortRound = `  - piece: Yoke
    worked: in the round, from the neck
    sections:
      - cast on: 100
      - short rows: 8 rows
        over: 60
        at: middle
        step: 5
      - even: 40 rows
      - bind off: all
  - piece: Body
    sections:
      - cast on: 80
      - even: 101 rows
      - bind off: all
`

// 8 rows at 28 instead of 40 are 5.6: 6, since short rows go to and fro even where the piece is round (40 rows are 28).
func TestShortRowsStayPairsInTheRound(t *testing.T) {
	a, _ := altered(t, pieces(t, shortRound), 20, 28)
	assert.Equal(t, 6, a.Now.Pieces[0].Steps[1].Rows)
	assert.Equal(t, 28, a.Now.Pieces[0].Steps[2].Rows)
}

// By hand: 101 rows at 30 instead of 40 are 75.75. 5 cm are 15 rows more, 90.75; 3 cm are 9: 84.75 or 66.75. No section
// after them asks for a side of the work, so that any whole number will do: 91, 85 and 67.
func TestALengthIsRoundedOnceAtTheMakersGauge(t *testing.T) {
	for _, c := range []struct{ mm, rows int64 }{{50, 91}, {30, 85}, {-30, 67}} {
		a, found := alter.Alter(pieces(t, shortRound), alter.Request{Gauges: gaugeOf(20, 30), Body: units.Int(c.mm)})
		require.NotNil(t, a)
		for _, f := range found {
			assert.Equal(t, finding.Note, f.Severity, f.Message)
		}
		assert.Equal(t, int(c.rows), a.Now.Pieces[1].Steps[1].Rows, "%d mm", c.mm)
	}
}

func TestWhatChangesInAPanelIsNamed(t *testing.T) {
	p := given.File(t, "../testdata/garments/raglan-with-neckline.yaml")
	a, _ := alter.Alter(p, alter.Request{Size: 1, Gauges: gaugeOf(20, 28)})
	require.NotNil(t, a)
	seen := map[string]int{}
	for _, c := range a.Changes {
		if c.Dim == expr.LengthOf {
			seen[c.Piece+" "+c.What]++
		}
	}
	assert.Contains(t, seen, "Yoke Back: width at base")
	assert.NotContains(t, seen, "Yoke width at base")
}

// A sleeve goes on from stitches that were chosen elsewhere, and its decreases go by twos: whether half of the yoke is even or
// odd, its cuff ends on the even number that the grading asks for.
func TestACuffKeepsItsEvenness(t *testing.T) {
	p, found := read.Pattern("one.yaml", []byte(`version: 1
pattern: One
terms: US
units: cm
sizes: S (M)
gauges:
  fabric: 20 sts and 40 rows over 10 cm in garter stitch
grading:
  cuff: {stitches: 9 (10) cm, even: yes}
pieces:
  - piece: Yoke
    worked: in the round, from the neck
    sections:
      - cast on: 60
      - even: 10 rows
      - hold: all
  - piece: Sleeve
    worked: in the round, from the neck
    sections:
      - start from:
          - {piece: Yoke, half: yes}
      - decrease: 1
        at: both edges
        every: 4 rows
        times: 6 (5)
        to: cuff
      - bind off: all
`))
	require.False(t, found.Errors(), "%v", found)
	a, found := alter.Alter(p, alter.Request{Size: 1, Gauges: gaugeOf(31, 40)})
	require.NotNil(t, a)
	var told []string
	for _, f := range found {
		told = append(told, f.Message)
	}
	n := a.Now.Pieces[1].Steps[1].After
	assert.Zero(t, n%2, "%d: %v", n, told)
}
