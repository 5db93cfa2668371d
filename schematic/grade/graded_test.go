package grade_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic"
	"flatwright/schematic/body"
	"flatwright/schematic/bysize"
	"flatwright/schematic/check"
	"flatwright/schematic/finding"
	"flatwright/schematic/given"
	"flatwright/schematic/grade"
	"flatwright/schematic/read"
	"flatwright/schematic/units"
)

// kind is how a graded garment is built.
type kind struct{ name, grading, pieces string }

// design is a garment in nine sizes of the published women's bodies.
type design struct {
	k              kind
	sts, rows      int // over 10 cm
	tall           bool
	ease           int // cm
	multiple, plus int
}

// String is the design in a few words, for messages.
func (d design) String() string {
	return fmt.Sprintf("%s at %d sts and %d rows, ease %d cm, multiple of %d + %d", d.k.name, d.sts, d.rows, d.ease, d.multiple, d.plus)
}

func (d design) file(t require.TestingT) string {
	b, ok := body.Named("women")
	require.True(t, ok)
	var s strings.Builder
	fmt.Fprintf(&s, "pattern: %s\nterms: US\nunits: in\nsizes: XS (S, M, L) (1X, 2X, 3X) (4X, 5X)\nbodies:\n", d.k.name)
	for _, row := range b.Rows {
		var cells []string
		for i := range row.High.Vals {
			cells = append(cells, units.Mixed(units.In(row.High.Vals[i], units.Inch)))
		}
		fmt.Fprintf(&s, "  %s: %s (%s) (%s) (%s)\n", row.Name, cells[0], strings.Join(cells[1:4], ", "), strings.Join(cells[4:7], ", "), strings.Join(cells[7:], ", "))
	}
	fmt.Fprintf(&s, "gauges:\n  fabric: %d sts and %d rows over 10 cm in st st\ngrading:\n", d.sts, d.rows)
	side, off, leave, apart := "right-side rows", "bind off", "", "2 rows"
	if d.tall {
		side, off, leave, apart = "every row", "leave", ", leave: yes", "1 row"
	}
	put := strings.NewReplacer("EASE", fmt.Sprintf("%d cm", d.ease), "REPEAT", fmt.Sprintf("%d + %d", d.multiple, d.plus), "SIDE", side, "LEAVE", leave, "OFF", off, "APART", apart)
	s.WriteString(put.Replace(d.k.grading))
	s.WriteString("pieces:\n")
	s.WriteString(put.Replace(d.k.pieces))
	return s.String()
}

const common = `  back stitches: {stitches: (bust + EASE) / 2, multiple: REPEAT}
  armhole rows: {rows: armhole depth + 4 cm, even: yes}
  body rows: {rows: back waist length - armhole depth + 8 cm, even: yes}
  upper stitches: {stitches: upper arm + 6 cm, even: yes}
  cuff stitches: {stitches: hand + 3 cm, even: yes}
  sleeve rows: {rows: arm to underarm, even: yes}
  widen: {spread: (upper stitches - cuff stitches) / 2, over: sleeve rows}
`

const sleeveToUnderarm = `  - piece: Sleeve
    make: 2
    sections:
      - cast on: cuff stitches
      - {increase: 1, at: both edges, every: widen every, times: widen times, then: [{every: widen then every, times: widen then times}], rows: sleeve rows, to: upper stitches}
`

var setIn = kind{"Set-in", common + `  cross stitches: {stitches: cross back + 2 cm, like: back stitches, round: down}
  armhole: {armhole: back stitches, to: cross stitches, over: armhole rows, on: SIDELEAVE}
  cap: {cap: upper stitches, armhole: 2 x armhole edge, first: armhole first, ease: 1.5 cmLEAVE}
`, bodyPiece("Back") + bodyPiece("Front") + sleeveToUnderarm + `      - {OFF: cap first, at: both edges, edge: cap}
      - decrease: 1
        at: both edges
        every: cap quick every
        times: cap quick times
        then: [{every: cap slow every, times: cap slow times}, {every: cap less slow every, times: cap less slow times}, {every: cap last every, times: cap last times}]
      - {OFF: cap step, at: both edges, every: APART, times: cap step times, to: cap top}
      - bind off: all
        edge: cap
joins:
  - {sew: Sleeve cap, into: [Back armhole, Front armhole], how: eased by 3 cm}
`}

func bodyPiece(name string) string {
	return `  - piece: ` + name + `
    sections:
      - cast on: back stitches
      - {even: body rows, width: bust}
      - {OFF: armhole first, at: both edges, edge: armhole}
      - {decrease: 1, at: both edges, every: armhole every, times: armhole times, to: cross stitches}
      - even: armhole rest
      - bind off: all
`
}

var raglan = kind{"Raglan", common + `  raglan rows wished: {rows: armhole depth + 6 cm, even: yes}
  raglan: {raglan: back stitches, sleeve: upper stitches, neck: neck stitches, sleeve neck: sleeve top, underarm: under stitches, over: raglan rows wished, on: SIDE}
  neck stitches: {stitches: 17 cm}
  sleeve top: {stitches: 3 cm, least: 2}
  under stitches: {stitches: 2.5 cm, least: 1}
`, raglanPiece("Back", "back") + raglanPiece("Front", "front") + sleeveToUnderarm + raglanTop("sleeve") + `joins:
  - sew: [Sleeve left raglan, Sleeve right raglan]
    to: [Front left raglan, Front right raglan, Back left raglan, Back right raglan]
    how: stitch to stitch
`}

func raglanPiece(name, line string) string {
	return `  - piece: ` + name + `
    sections:
      - cast on: back stitches
      - {even: body rows, width: bust}
` + raglanTop(line)
}

func raglanTop(line string) string {
	return strings.ReplaceAll(`      - {leave: raglan underarm, at: both edges, edge: underarm}
      - decrease: 1
        at: both edges
        edge: raglan
        every: raglan LINE every
        times: raglan LINE times
        then: [{every: raglan LINE then every, times: raglan LINE then times}]
        rows: raglan rows
        to: raglan LINE neck
      - {bind off: all, edge: neck}
`, "LINE", line)
}

var yoke = kind{"Yoke", common + `  under stitches: {stitches: 5 cm, even: yes, least: 2}
  yoke start: 2 x back stitches + 2 x upper stitches - 4 x under stitches
  yoke: {yoke: yoke start, neck: neck stitches, over: yoke rows, rounds: 5}
  yoke rows: {rows: armhole depth + 4 cm}
  neck stitches: {stitches: 56 cm, multiple: 2}
`, `  - piece: Yoke
    worked: in the round, from the hem
    sections:
      - cast on: yoke start
` + yokeRound(1) + yokeRound(2) + yokeRound(3) + yokeRound(4) + yokeRound(5) + `      - {bind off: all, edge: neck}
`}

func yokeRound(n int) string {
	return strings.ReplaceAll(`      - {even: yoke rows N - 1 row}
      - {decrease: yoke decreases N, at: across, to: yoke left N}
`, " N", fmt.Sprint(" ", n))
}

var kinds = []kind{setIn, raglan, yoke}

// gauges are fine, medium and bulky, with short rows and with tall ones.
var gauges = []struct {
	name      string
	sts, rows int
	tall      bool
}{{"fine knit", 28, 38, false}, {"medium knit", 19, 26, false}, {"bulky knit", 11, 16, false}, {"fine crochet", 22, 13, true}, {"medium crochet", 14, 9, true}, {"bulky crochet", 9, 6, true}}

// wrong are the families of finding that a graded pattern may not have.
func wrong(l finding.List) finding.List {
	var out finding.List
	for _, f := range l {
		family, _, _ := strings.Cut(f.Kind, "/")
		if family == "file" || family == "arithmetic" || family == "drawn" || family == "units" || family == "joins" || f.Severity == finding.Error {
			out = append(out, f)
		}
	}
	return out
}

// grading, then drawing, then measuring the drawing gives the targets.
func holds(t require.TestingT, d design) {
	src := d.file(t)
	p, found := read.Pattern(d.k.name+".yaml", []byte(src))
	if found.Errors() {
		require.Empty(t, found, "%s\n%s", d, src)
	}
	gs := bysize.WorkAll(p)
	require.Empty(t, wrong(check.Pattern(p, gs)), "%s", d)
	for i, g := range gs {
		require.Empty(t, wrong(g.Findings), "%s", d)
		env := grade.Env(p, i)
		for _, m := range g.Pieces {
			if m.Name != "Back" && m.Name != "Front" {
				continue
			}
			bust, _ := env("bust")
			target := bust.N.Add(units.Of(units.Int(int64(d.ease)), units.CM)).Half()
			// The width drawn, measured on the outline: at its widest.
			low, high := math.Inf(1), math.Inf(-1)
			for _, q := range m.Views[0].Outline[0] {
				low, high = min(low, q.X), max(high, q.X)
			}
			half := float64(d.multiple) * 100 / float64(d.sts) / 2
			require.LessOrEqual(t, math.Abs(high-low-target.Float()), half+0.01, "%s size %s", d, g.Size)
		}
		for _, s := range g.Seams {
			stitch := p.Gauges[0].StitchWidth().Float()
			over := s.SewLength.Sub(s.IntoLength).Float()
			if d.k.name == "Set-in" { // two sleeves of two are sewn into two armholes: 1.5 cm each
				require.InDelta(t, 30, over, stitch+0.01, "%s size %s: the cap fits to half a stitch", d, g.Size)
			} else {
				require.NotEmpty(t, s.Sew)
			}
		}
	}
}

func TestEveryKindOfSleeveIsGradedInNineSizesAtEveryGauge(t *testing.T) {
	for _, k := range kinds {
		for _, g := range gauges {
			holds(t, design{k: k, sts: g.sts, rows: g.rows, tall: g.tall, ease: 10, multiple: 2, plus: 0})
		}
	}
}

func TestRandomGradedPatternsDrawWhatWasAimedAt(t *testing.T) {
	seen := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		g := gauges[rapid.IntRange(0, len(gauges)-1).Draw(t, "gauge")]
		d := design{
			k: rapid.SampledFrom(kinds).Draw(t, "kind"), tall: g.tall,
			sts: g.sts + rapid.IntRange(-1, 1).Draw(t, "sts"), rows: g.rows + rapid.IntRange(-1, 1).Draw(t, "rows"),
			ease: rapid.IntRange(5, 18).Draw(t, "ease"), multiple: 2 * rapid.IntRange(1, 4).Draw(t, "multiple"),
		}
		d.plus = 2 * rapid.IntRange(0, d.multiple/2-1).Draw(t, "plus")
		holds(t, d)
		seen[d.k.name]++
	})
	t.Log("reached:", seen)
}

// By hand, the raglan in M: its back and front have 94 stitches each, 188 at 18 over 4 in are 41 7/9 in; the body's bust is 38 in.
func TestTheEaseOfABackAndAFrontIsThatOfTheWholeBody(t *testing.T) {
	p := given.File(t, "../../examples/windlass-raglan.yaml")
	var gs []*schematic.Garment
	for i := range p.Sizes.Names {
		gs = append(gs, schematic.Work(p, i))
	}
	found := false
	for _, part := range grade.TableOf(p, gs).Parts {
		if part.Name != "Back and Front: bust" {
			continue
		}
		found = true
		for _, row := range part.Rows {
			if v, ok := row.Vals.At(2); ok && row.Kind == grade.RowEase {
				assert.Equal(t, "3.778", units.Decimal(units.In(v, units.Inch), 3))
			}
		}
	}
	assert.True(t, found)
}
