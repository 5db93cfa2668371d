package check_test

import (
	"os"
	"strings"
	"testing"

	"flatwright/schematic"
	"flatwright/schematic/check"
	"flatwright/schematic/read"
	"flatwright/schematic/units"
	"flatwright/schematic/worn"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A front and a back alike, of 100 stitches of 5 mm (50 cm) and 90 and 60 rows of 4 mm (36 and 24 cm).
const tunic = `version: 1
pattern: Own figures
terms: UK
sizes: One
units: cm
gauges:
  fabric: 20 sts and 25 rows over 10 cm in stocking stitch
pieces:
  - piece: Back
    sections:
      - {cast on: 100, edge: hem}
      - even: 90 rows
      - {even: 60 rows, left edge: armhole, right edge: armhole}
      - divide:
          - {bind off: 30, name: first shoulder, edge: shoulder}
          - {bind off: 40, name: neck, edge: neck}
          - {bind off: 30, name: second shoulder, edge: shoulder}
  - piece: Front
    sections:
      - {cast on: 100, edge: hem}
      - even: 90 rows
      - {even: 60 rows, left edge: armhole, right edge: armhole}
      - divide:
          - {bind off: 30, name: first shoulder, edge: shoulder}
          - {bind off: 40, name: neck, edge: neck}
          - {bind off: 30, name: second shoulder, edge: shoulder}
joins:
  - {sew: Back shoulder, to: Front shoulder}
  - {sew: Back side, to: Front side}
`

// dressed is the tunic with more lines, as it is worn, and its measurements by name.
func dressed(t *testing.T, more string) map[string]schematic.Measure {
	t.Helper()
	p, found := read.Pattern("own.yaml", []byte(tunic+more))
	require.NotNil(t, p, "%v", found)
	require.False(t, found.Errors(), "%v", found)
	g := schematic.Work(p, 0)
	worn.Dress(g)
	require.NotNil(t, g.Worn)
	check.Own([]*schematic.Garment{g})
	out := map[string]schematic.Measure{}
	ids := map[string]bool{}
	for _, m := range g.Worn.Measures {
		out[m.Name] = m
		assert.False(t, ids[m.ID], "%s is there twice", m.ID)
		ids[m.ID] = true
	}
	return out
}

func TestWhatIsDrawnBearsTheFigureThatTheDesignerWrote(t *testing.T) {
	in := func(m schematic.Measure, u units.Unit) string { return m.Text(u, units.Usual) }
	// Twice 50 cm; 60 cm are 23.62 in, which a quarter rounds to 23½ and she to 23⅝.
	m := dressed(t, "finished: {bust: {is: 100 cm, of: 2 x Back width at hem}, length: 60 cm / 23 5/8 in}\n")
	assert.Equal(t, "100", in(m["bust"], units.CM))
	assert.Nil(t, m["bust"].Own)
	assert.NotEqual(t, schematic.NoView, m["bust"].View)
	assert.Equal(t, "60", in(m["length"], units.CM))
	assert.Equal(t, "23⅝", in(m["length"], units.Inch))

	m = dressed(t, "finished: {length: 23 5/8 in / 60 cm}\n")
	assert.Equal(t, "60", in(m["length"], units.CM))
	assert.Equal(t, "23⅝", in(m["length"], units.Inch))

	m = dressed(t, "finished: {length: 62 cm / 24 1/2 in}\n") // which the counts do not make
	assert.Equal(t, "60", in(m["length"], units.CM))
	assert.Equal(t, "23½", in(m["length"], units.Inch))
}

// 3 cm of a band are in no line of the picture: the chest, as its designer calls it, is told under it.
func TestABustWithItsBandIsNotTheWidthThatIsDrawn(t *testing.T) {
	m := dressed(t, "finished: {chest: {is: 103 cm, of: 2 x Back width at hem + 3 cm}}\n")
	assert.Equal(t, schematic.NoView, m["chest"].View)
	assert.Equal(t, units.Int(1030), m["chest"].Length)
	assert.True(t, m["chest"].Around)
	drawn := m["width at underarm"]
	assert.Equal(t, units.Int(1000), drawn.Length)
	assert.Equal(t, "as-worn.width-at-underarm", drawn.ID)

	// Of 100 and 101 cm round the body one is not told beside the other, but how wide it lies.
	m = dressed(t, "finished: {chest: {is: 101 cm, of: 2 x Back width at hem + 1 cm}}\n")
	assert.Equal(t, units.Int(500), m["width at underarm"].Length)
	assert.False(t, m["width at underarm"].Around)

	// Half a millimetre is the line's own; more is not.
	assert.Equal(t, 0, dressed(t, "finished: {length: {is: 60 cm, of: Back length + 0.05 cm}}\n")["length"].View)
	m = dressed(t, "finished: {length: {is: 60 cm, of: Back length + 0.06 cm}}\n")
	assert.Equal(t, schematic.NoView, m["length"].View)
	assert.Equal(t, units.Int(600), m["length as drawn"].Length)
}

func TestAFinishedMeasurementThatNoLineShowsIsTherePerhaps(t *testing.T) {
	const finished = "finished: {front length: {is: 60 cm, of: Front length}}\n"
	assert.NotContains(t, dressed(t, finished), "front length")
	m := dressed(t, finished+"drawing: {show: front length}\n")
	require.Contains(t, m, "front length")
	assert.Equal(t, schematic.NoView, m["front length"].View)
	assert.Equal(t, units.Int(600), m["front length"].Length)
}

// Two and a half necks are 50 cm in size A, which is half of the bust, and 52.5 cm in size B, which is not: a bust that is no
// line's in one size is none's in any, so that it keeps one letter through all sizes.
func TestAFinishedMeasurementIsOfALineInAllSizesOrInNone(t *testing.T) {
	text := strings.NewReplacer("sizes: One", "sizes: A (B)", "bind off: 40", "bind off: 40 (42)", "bind off: 30", "bind off: 30 (29)").Replace(tunic) +
		"finished: {bust: {is: 100 (102.5) cm, of: Back width at hem + 2.5 x Back neck width}}\n"
	p, found := read.Pattern("own.yaml", []byte(text))
	require.False(t, found.Errors(), "%v", found)
	gs := []*schematic.Garment{schematic.Work(p, 0), schematic.Work(p, 1)}
	for _, g := range gs {
		worn.Dress(g)
	}
	check.Own(gs)
	for i, want := range []int64{1000, 1025} {
		byID := map[string]schematic.Measure{}
		for _, m := range gs[i].Worn.Measures {
			byID[m.ID] = m
		}
		bust := byID["as-worn.bust"]
		assert.Equal(t, schematic.NoView, bust.View, i)
		assert.True(t, units.Int(want).Eq(bust.Length), "%d: %s", i, bust.Length)
		assert.True(t, units.Int(500).Eq(byID["as-worn.width-at-underarm"].Length), i)
	}
}

// 84 + 8 + 84 + 8 = 184 stitches of 5 mm go round the body at the underarms, 92 cm; five times four more make it 102 cm at the
// hem. Its length is that of yoke, without its band, and body together: 50 rows of 100/26 mm, and 30 and 5 cm, 542.308 mm.
func TestTheBustOfABodyFromTheNeckIsAtItsUnderarmsAndItsLengthHasTheYoke(t *testing.T) {
	text, err := os.ReadFile("../../testdata/garments/worn/raglan-round.yaml")
	require.NoError(t, err)
	flared := strings.Replace(string(text), "        to: 184 (200, 216) (232)\n", "        to: 184 (200, 216) (232)\n      - {increase: 2, at: both edges, every: 10 rows, times: 5}\n", 1)
	i := strings.Index(flared, "finished:")
	if i < 0 {
		i = len(flared)
	}
	for finished, agrees := range map[string]bool{"bust: 92 (100, 108) (116) cm": true, "bust: 102 (110, 118) (126) cm": false} {
		p, found := read.Pattern("raglan.yaml", []byte(flared[:i]+"finished: {"+finished+"}\n"))
		require.False(t, found.Errors(), "%v", found)
		g := schematic.Work(p, 0)
		worn.Dress(g)
		_, ok := check.Made(g, &p.Finished[0])
		assert.Equal(t, agrees, ok, finished)
	}
	p, found := read.Pattern("raglan.yaml", []byte(string(text[:strings.Index(string(text)+"finished:", "finished:")])+"finished: {length: 54 (56.5, 59) (61) cm}\n"))
	require.False(t, found.Errors(), "%v", found)
	g := schematic.Work(p, 0)
	worn.Dress(g)
	made, ok := check.Made(g, &p.Finished[0])
	require.True(t, ok)
	assert.InDelta(t, 542.308, made.Float(), 0.001)
}
