package worn

import (
	"strings"
	"testing"

	"flatwright/schematic"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A stitch is 100/28 mm wide and a round 100/36 mm high. The leg is 40 rounds, 111.111 mm, and half of 56 stitches, 100 mm, wide; the heel 26 + 6
// rows, 88.889 mm, below its back half. The foot goes on from half of the flap, 14 stitches, 50 mm before the back of the heel, at a right angle:
// 14 rounds with a gusset, 30 even, 18 of the toe, 172.222 mm. It is 100 mm high: at the front of the leg its top is 100 mm above the sole.
func TestASockLiesOnItsSide(t *testing.T) {
	g := schematic.Work(pattern(t, "sock.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	require.Len(t, g.Worn.Views[0].Outline, 1)
	loop := g.Worn.Views[0].Outline[0]
	lo, hi := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, 222.222, hi.X-lo.X, 0.01)
	hasCorner(t, loop, lo.X, 0)
	hasCorner(t, loop, lo.X, 200)
	hasCorner(t, loop, lo.X+100, 200)
	hasCorner(t, loop, lo.X+100, 100)
	want := map[string]float64{"cuff": 200, "leg": 40 * 100.0 / 36, "heel": 32 * 100.0 / 36, "foot": 200, "foot length": 50 + (7*2+30+9*2)*100.0/36}
	for _, m := range g.Worn.Measures {
		assert.InDelta(t, want[m.Name], m.Length.Float(), 0.01, m.Name)
		delete(want, m.Name)
	}
	assert.Empty(t, want)
}

// The heel of this one is 24 short rows of 100/36 mm, 66.667 mm: half of it lies below the leg and half before the foot, which has 40 rounds and 16 of
// its toe. Its stitches are 100/26 mm: the foot is 100 mm high.
func TestTheShortRowsOfASockAreItsHeel(t *testing.T) {
	for _, f := range []string{"sock-toe-up.yaml", "sock-short-rows.yaml"} {
		g := schematic.Work(pattern(t, f), 0)
		Dress(g)
		require.NotNil(t, g.Worn, f)
		require.Len(t, g.Worn.Views[0].Outline, 1)
		lo, _ := bounds(g.Worn.Views[0].Outline)
		hasCorner(t, g.Worn.Views[0].Outline[0], lo.X, 0)
		hasCorner(t, g.Worn.Views[0].Outline[0], lo.X+100, 100)
		assert.InDelta(t, 100/3.0, measured(t, g, "heel").Length.Float(), 0.01, f)
		assert.InDelta(t, (12+40+16)*100.0/36, measured(t, g, "foot length").Length.Float(), 0.01, f)
		for _, m := range g.Pieces[0].Measures {
			assert.NotEqual(t, "front length", m.Name, "a heel raises no neck")
		}
	}
}

// A heel that is narrowed and widened again: 14 rows of 100/42 mm each way, 33.333 mm below and above the middle of the heel, over 73.333 mm,
// half of 44 stitches of 100/30 mm: the first run is below the leg, the second before the 42 rounds of the foot.
func TestAHeelThereAndBackIsOfTheLegAndOfTheFoot(t *testing.T) {
	text := `version: 1
pattern: Sock
terms: UK
units: cm
sizes: one
gauges: {fabric: 30 sts and 42 rounds over 10 cm in stocking stitch}
pieces:
  - piece: Sock
    worked: in the round, from the neck
    sections:
      - {cast on: 44, edge: cuff}
      - {even: 42 rows}
      - {short rows: 14 rows, over: 22, at: left edge, step: 1}
      - {short rows: 14 rows, over: 22, at: left edge, step: 1}
      - {even: 42 rows}
      - {bind off: all, edge: toe}
`
	g := schematic.Work(written(t, text), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	require.Len(t, g.Worn.Views[0].Outline, 1)
	assert.InDelta(t, 100/3.0, measured(t, g, "heel").Length.Float(), 0.01)
	assert.InDelta(t, 100+100/3.0, measured(t, g, "foot length").Length.Float(), 0.01)

	apart := strings.Replace(text, "step: 1}\n      - {short", "step: 1}\n      - {even: 2 rows}\n      - {short", 1)
	g = schematic.Work(written(t, apart), 0)
	Dress(g)
	assert.Nil(t, g.Worn, "of two at two places nobody says which is the heel")

	rows := "      - {short rows: 14 rows, over: 22, at: left edge, step: 1}\n"
	for _, foot := range []string{"{decrease: 2, at: across, every: 2 rows, times: 16}", "{even: 2 rows}"} {
		g = schematic.Work(written(t, strings.NewReplacer(rows+rows, rows, "{even: 42 rows}\n      - {bind", foot+"\n      - {bind").Replace(text)), 0)
		Dress(g)
		assert.Nil(t, g.Worn, "a foot that is nowhere even, or is shorter than the leg is deep, lies at no right angle")
	}
}

// From the toe 56 rounds, 42 to 10 cm, then 16 of the heel before the leg: 171.429 mm of foot, as high as half of 48 stitches, 30 to 10 cm, are wide. The
// heel's other 16 rows lie below the leg of 56 rounds, of which 16 of rib are 44 to 10 cm. From the cuff the same sock has the same picture.
func TestAHeelThatIsNarrowedAndWidenedAgainIsOfTheFootAndOfTheLeg(t *testing.T) {
	up := pattern(t, "sock-wedge.yaml")
	down := written(t, `
version: 1
pattern: Down
terms: US
units: cm
sizes: one
gauges:
  fabric: 30 sts and 42 rounds over 10 cm in stockinette stitch
pieces:
  - piece: Sock
    worked: in the round, from the neck
    sections:
      - {cast on: 48, edge: cuff}
      - {even: 56 rows}
      - divide:
          - part: Heel
            stitches: 24
            sections:
              - {decrease: 1, at: both edges, every: 2 rows, times: 8}
              - {increase: 1, at: both edges, every: 2 rows, times: 8}
          - {hold: 24, name: instep}
      - {join parts: [Heel, instep], round: yes, as: Foot, to: 48}
      - {even: 42 rows}
      - {decrease: 4, at: across, every: 2 rows, times: 7}
      - {bind off: all}
`)
	for _, p := range []*schematic.Pattern{up, down} {
		g := schematic.Work(p, 0)
		Dress(g)
		require.NotNil(t, g.Worn, p.Title)
		require.Len(t, g.Worn.Views[0].Outline, 1)
		lo, hi := bounds(g.Worn.Views[0].Outline)
		assert.InDelta(t, 72/4.2*10, hi.X-lo.X, 0.01, p.Title)
		hasCorner(t, g.Worn.Views[0].Outline[0], lo.X+80, lo.Y+80)
		assert.InDelta(t, 16/4.2*10, measured(t, g, "heel").Length.Float(), 0.01)
		assert.InDelta(t, 160, measured(t, g, "foot").Length.Float(), 0.01)
	}
}

// A sock whose first edge is its cuff, or whose last is its toe, stands upright on its foot, though its cuff is called a hem.
func TestASockFromItsCuffHasItsFootBelow(t *testing.T) {
	const sock = `version: 1
pattern: Sock
terms: UK
units: cm
sizes: one
gauges: {fabric: 20 sts and 20 rounds over 10 cm in stocking stitch}
pieces:
  - piece: Sock
    worked: in the round, FROM
    sections:
      - {cast on: 40, edge: FIRST}
      - {even: 30 rows}
      - divide:
          - {hold: 20, name: Instep}
          - part: Heel
            stitches: 20
            sections:
              - {decrease: 1, at: both edges, every: 2 rows, times: 6, edge: heel edge}
              - {increase: 1, at: both edges, every: 2 rows, times: 6, edge: heel edge}
      - join parts: [Instep, Heel]
        round: yes
      - {even: 36 rows}
      - {bind off: all, edge: LAST}
`
	for _, c := range []struct {
		from, first, last string
		leg               float64 // straight rows of it, 5 mm each
	}{{"from the neck", "start", "end", 150}, {"from the cuff", "start", "end", 150}, {"from the hem", "cuff", "end", 150}, {"from the hem", "start", "toe", 150},
		{"from the hem", "start", "end", 180}, {"from the toe", "toe", "cuff", 180}} {
		g := schematic.Work(written(t, strings.NewReplacer("FROM", c.from, "FIRST", c.first, "LAST", c.last).Replace(sock)), 0)
		Dress(g)
		require.NotNil(t, g.Worn, c)
		assert.InDelta(t, c.leg, lengths(g.Worn)["leg"], 0.01, c)
	}
}
