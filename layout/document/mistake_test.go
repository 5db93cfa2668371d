package document_test

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/layout/document"
	"flatwright/layout/sheet"
	"flatwright/schematic/read"
	"flatwright/schematic/units"
)

func textsOn(sheets []*sheet.Sheet) []string {
	var out []string
	for _, s := range sheets {
		sheet.Walk(&s.Root, func(it sheet.Item) {
			if t, ok := it.(*sheet.Text); ok {
				out = append(out, t.S)
			}
		})
	}
	return out
}

var inWords = regexp.MustCompile(`^Size (\S+): (\d+) (?:stitch|row|stitches|rows) × (\S+) (?:cm|in) ÷ (\S+) = (\S+) (?:cm|in), not (\S+) (?:cm|in)\.$`)

// The answer's own sum is worked out anew here, and the sheet differs from the table in those cells alone.
func TestOneMeasurementIsWrongAndTheAnswerSaysWhichAndWhy(t *testing.T) {
	gs, c := worked(t, "../../examples/saltmarsh-cardigan.yaml")
	different := map[string]bool{}
	for seed := range uint64(12) {
		asked, err := document.FindTheMistake(gs, c, document.Options{}, seed, false)
		require.NoError(t, err)
		again, err := document.FindTheMistake(gs, c, document.Options{}, seed, false)
		require.NoError(t, err)
		assert.Equal(t, asked, again, "the same seed, the same sheet")
		answered, err := document.FindTheMistake(gs, c, document.Options{}, seed, true)
		require.NoError(t, err)
		for _, piece := range []string{"Body", "Sleeve", "Front and neck band"} {
			assert.Contains(t, textsOn(asked), piece, "each table says of which piece it is")
		}
		told := 0
		for _, line := range textsOn(answered) {
			m := inWords.FindStringSubmatch(line)
			if m == nil {
				continue
			}
			told++
			var v [4]float64
			for i := range v {
				v[i], err = strconv.ParseFloat(m[i+2], 64)
				require.NoError(t, err, line)
			}
			said, err := strconv.ParseFloat(m[6], 64)
			require.NoError(t, err, line)
			assert.InDelta(t, v[0]*v[1]/v[2], v[3], 0.25+1e-9, "half a step: %s", line)
			assert.Greater(t, math.Abs(said-v[3]), 0.5, line)
			assert.Contains(t, textsOn(asked), m[6], "it is printed: %s", line)
		}
		assert.Positive(t, told)
		assert.Less(t, told, c.Sizes.Len(), "not in all sizes")
		assert.NotContains(t, strings.Join(textsOn(answered), "\n"), "Name\n", "answers ask for no name")
		assert.Contains(t, textsOn(asked), "Name")
		assert.NotContains(t, strings.Join(textsOn(asked), " "), "in to the nearest", "it has cm alone")
		different[fmt.Sprint(textsOn(answered))] = true
		holds(t, "mistake", asked, document.Options{})
		holds(t, "mistake answers", answered, document.Options{})
	}
	assert.Greater(t, len(different), 6, "seeds make different sheets")
}

// A swatch of 10 cm is not one of 4 in: in inches, the sum goes by way of the centimetres that it makes (1 in = 2.54 cm).
func TestASheetInTheOtherUnitStatesOneLengthOfTheSwatchAndTheWayOver(t *testing.T) {
	gs, c := worked(t, "../../examples/saltmarsh-cardigan.yaml")
	sum := regexp.MustCompile(`: (\d+) \w+ × 10 cm ÷ (\S+) = (\S+) cm = (\d*)([¼½¾]?) in, not`)
	told := 0
	for seed := range uint64(6) {
		sheets, err := document.FindTheMistake(gs, c, document.Options{Units: []units.Unit{units.Inch}}, seed, true)
		require.NoError(t, err)
		all := strings.Join(textsOn(sheets), "\n")
		assert.Contains(t, all, "over 10 cm")
		assert.NotContains(t, all, "/ 4 in")
		for _, m := range sum.FindAllStringSubmatch(all, -1) {
			told++
			var v [3]float64
			for i := range v {
				v[i], err = strconv.ParseFloat(m[i+1], 64)
				require.NoError(t, err)
			}
			whole, _ := strconv.ParseFloat("0"+m[4], 64)
			inches := whole + map[string]float64{"¼": 0.25, "½": 0.5, "¾": 0.75}[m[5]]
			assert.InDelta(t, v[0]*10/v[1], v[2], 0.005+1e-9, m[0])
			assert.InDelta(t, v[2]/2.54, inches, 0.125+0.002, m[0])
		}
	}
	assert.Positive(t, told)
}

// What a pupil works out of the sheet is what the answers print: stitches or rows by the gauge.
func TestEveryCountThatIsAskedMakesTheMeasurement(t *testing.T) {
	for _, example := range []string{"saltmarsh-cardigan", "fellside-jumper", "windlass-raglan"} {
		gs, _ := worked(t, "../../examples/"+example+".yaml")
		asked := 0
		for _, g := range gs {
			for _, made := range g.Pieces {
				for _, m := range made.Measures {
					if m.Count == 0 || m.Gauge == nil {
						continue
					}
					one := m.Gauge.StitchWidth()
					if m.Of == "row" {
						one = m.Gauge.RowHeight()
					}
					asked++
					assert.True(t, one.Times(m.Count).Eq(m.Length), "%s, %s: %d %ss make %s mm, not %s", example, m.ID, m.Count, m.Of, one.Times(m.Count), m.Length)
				}
			}
		}
		assert.Greater(t, asked, 20)
	}
}

// One that is longer than what is left in any number of runs stands on the next page, whole: the cardigan's 60 lines.
func TestALongTableOfOneSizeStandsWholeOnTheNextPage(t *testing.T) {
	gs, c := worked(t, "../../examples/saltmarsh-cardigan.yaml")
	size := document.Options{Size: 2, Alone: true}
	pages, err := document.Handout(gs, c, size)
	require.NoError(t, err)
	holds(t, "next", pages, size)
	heads := func(s *sheet.Sheet) (n int) {
		for _, text := range textsOn([]*sheet.Sheet{s}) {
			if text == "Measurement" {
				n++
			}
		}
		return n
	}
	assert.Equal(t, 0, heads(pages[0]))
	assert.Equal(t, 2, heads(pages[1]), "two runs")
	assert.Contains(t, textsOn(pages[1:2]), "Finished measurements", "its heading goes with it")
	assert.Equal(t, 0, heads(pages[2]))
}

// A table that is narrow and longer than what is left of its page stands in runs beside each other.
func TestANarrowTableStandsBesideItselfRatherThanOverTwoPages(t *testing.T) {
	gs, c := worked(t, "../../examples/windlass-raglan.yaml")
	size := document.Options{Size: 2, Alone: true}
	pages, err := document.Handout(gs, c, size)
	require.NoError(t, err)
	holds(t, "beside", pages, size)
	var at []float64
	sheet.Walk(&pages[0].Root, func(it sheet.Item) {
		if tx, ok := it.(*sheet.Text); ok && tx.S == "Measurement" {
			at = append(at, tx.At.X)
		}
	})
	require.Len(t, at, 3, "a head for each run")
	assert.Greater(t, at[1], at[0]+40)
	rest := strings.Join(textsOn(pages[1:]), "\n")
	assert.NotContains(t, rest, "Measurement")
}

// A width that the pattern gives its drawings holds in a handout too: no outline on its pages is wider.
func TestADrawingOfAHandoutIsNoWiderThanThePatternSays(t *testing.T) {
	gs, c := worked(t, "../../examples/windlass-raglan.yaml")
	widest := func(o document.Options) float64 {
		pages, err := document.Handout(gs, c, o)
		require.NoError(t, err)
		w := 0.0
		var look func(g *sheet.Group)
		look = func(g *sheet.Group) {
			for _, it := range g.Items {
				if p, ok := it.(*sheet.Path); ok && p.Class == "outline" {
					lo, hi, _ := sheet.Bounds(p)
					w = max(w, hi.X-lo.X)
				}
				if sub, ok := it.(*sheet.Group); ok {
					look(sub)
				}
			}
		}
		for _, s := range pages {
			look(&s.Root)
		}
		return w
	}
	for _, o := range []document.Options{{Size: 2, Alone: true}, {Size: -1}} {
		gs[0].Pattern.Drawing.Width = 0
		require.Greater(t, widest(o), 45.0)
		gs[0].Pattern.Drawing.Width = 40
		assert.LessOrEqual(t, widest(o), 40.0)
		assert.Greater(t, widest(o), 30.0, "and not much narrower")
	}
}

const twoGauges = `version: 1
pattern: Teasel Jacket
terms: US
units: in
sizes: S (M, L)
gauges:
  fabric: 16 sts and 24 rows over 4 in in stockinette
  rib: 18 sts and 28 rows over 4 in in k1, p1 rib
pieces:
  - piece: Left front
    gauge: rib
    sections:
      - cast on: 40 (44, 48)
      - even: 14 rows
        rib: yes
      - even: 60 rows
        gauge: fabric
      - bind off: 16 (17, 18)
        at: right edge
        edge: armhole
      - even: 48 rows
      - bind off: all
        edge: shoulder
  - piece: Right front
    mirror of: Left front
`

// 24 stitches at 4 a inch are 6 in, as are 27 of the rib with which the piece begins: no one works those.
func TestAnEdgeIsAskedInTheGaugeOfItsRows(t *testing.T) {
	p, found := read.Pattern("teasel.yaml", []byte(twoGauges))
	require.False(t, found.Errors(), "%v", found)
	gs, c := of(p)
	sheets, err := document.FindTheMistake(gs, c, document.Options{}, 1, false)
	require.NoError(t, err)
	text := strings.Join(textsOn(sheets), " ")
	assert.Contains(t, text, "Shoulder sts fabric 24 27 30")
	assert.NotContains(t, text, "Right front", "a mirror asks for the same again")
	sheets, err = document.Worksheet(gs, c, document.Options{Size: 0}, true)
	require.NoError(t, err)
	text = strings.Join(textsOn(sheets), " ")
	assert.Contains(t, text, "Shoulder 24 stitches fabric 6 15")
	assert.Equal(t, 1, strings.Count(text, "Width at hem 40 stitches"))
}

func TestOnePatternSizeHasNoWrongSizes(t *testing.T) {
	p, found := read.Pattern("teasel.yaml", []byte(oneSize))
	require.False(t, found.Errors(), "%v", found)
	gs, c := of(p)
	sheets, err := document.FindTheMistake(gs, c, document.Options{}, 1, true)
	require.NoError(t, err)
	text := strings.Join(textsOn(sheets), " ")
	assert.Contains(t, text, " is wrong. ")
	assert.NotContains(t, text, "gauge Only", "one gauge needs no names")
}

const oneSize = `version: 1
pattern: Teasel Stole
terms: US
units: in
sizes: Only
gauges: {fabric: 16 sts and 24 rows over 4 in in garter stitch}
pieces:
  - piece: Stole
    sections: [cast on: 64, even: 300 rows, bind off: all]
`
