package chart

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/layout/sheet"
	"flatwright/schematic/rows"
)

// text is the work of a text of rows in a test data folder.
func text(t testing.TB, path string) *Work {
	t.Helper()
	src, err := os.ReadFile(filepath.Join("../../testdata", path))
	require.NoError(t, err)
	x := rows.Read(path, src, rows.Options{TermsSet: true})
	g, ok := rows.GraphOf(x, "", 0)
	require.True(t, ok)
	w, ok := FromGraph(g)
	require.True(t, ok)
	require.NoError(t, w.Check())
	return w
}

// fromText is a work of rows written here.
func fromText(t testing.TB, lines string) *Work {
	t.Helper()
	x := rows.Read("rows", []byte(lines), rows.Options{TermsSet: true})
	g, ok := rows.GraphOf(x, "", 0)
	require.True(t, ok)
	w, ok := FromGraph(g)
	require.True(t, ok)
	return w
}

// fromTextOf is the work of rows written here, or nil.
func fromTextOf(lines string) *Work {
	x := rows.Read("rows", []byte(lines), rows.Options{TermsSet: true})
	g, _ := rows.GraphOf(x, "", 0)
	w, _ := FromGraph(g)
	return w
}

// fromPart is a work of one section of rows written here.
func fromPart(t testing.TB, section, lines string) *Work {
	t.Helper()
	x := rows.Read("rows", []byte(lines), rows.Options{TermsSet: true})
	g, ok := rows.GraphOf(x, section, 0)
	require.True(t, ok)
	w, ok := FromGraph(g)
	require.True(t, ok)
	return w
}

func counts(w *Work) []int {
	var out []int
	for i := range w.Rows {
		if !w.Rows[i].Base {
			out = append(out, w.Rows[i].counted())
		}
	}
	return out
}

// The counts are those that the texts state.
func TestAChartHasTheStitchesThatItsTextStates(t *testing.T) {
	for path, want := range map[string][]int{
		"rows/dc-swatch.txt":    {21, 21, 21},
		"rows/circle-dc-12.txt": {12, 24, 36, 48, 60},
		"rows/granny-us.txt":    {12, 24, 36},
		"rows/shells-6-2.txt":   {25, 25, 25},
		"rows/mesh-2.txt":       {11, 11, 21},
		"rows/post-rib.txt":     {26, 26, 26, 26, 26, 26},
		"rows/eyelets-knit.txt": {21, 21, 21, 21, 19, 17, 30, 25, 25},
		"chart/hexagon.txt":     {12, 24, 36},
		"chart/pineapple.txt":   {19, 19, 18, 17, 16},
		"chart/chain-mesh.txt":  {7, 8, 7},
	} {
		w := text(t, path)
		assert.Equal(t, want, counts(w), path)
		ss, err := Draw(w, Options{Whole: true})
		require.NoError(t, err, path)
		drawn := 0
		for i := range w.Rows {
			if w.craft() == 0 || !w.Rows[i].Base { // a cast-on is no row of squares
				drawn += len(w.Rows[i].St)
			}
		}
		assert.Equal(t, drawn, stitchesOn(t, ss), path)
	}
}

// What is a multiple of what is told in the texts themselves.
func TestTheRepeatIsTheOneThatTheTextIsWrittenIn(t *testing.T) {
	for path, want := range map[string]string{
		"rows/shells-6-2.txt":   "multiple of 6 + 1", // of the foundation, less the chain that turns
		"rows/horseshoe.txt":    "multiple of 10 + 1",
		"rows/feather-18.txt":   "multiple of 18",
		"chart/chain-mesh.txt":  "multiple of 4 + 1",
		"chart/lace-shells.txt": "multiple of 6 + 1",
	} {
		r, ok := text(t, path).repeat()
		require.True(t, ok, path)
		assert.Equal(t, want, r.String(), path)
	}
	_, ok := text(t, "rows/dc-swatch.txt").repeat()
	assert.False(t, ok, "one stitch again and again is no repeat")
}

// A row of flat work starts where the one before it ended; its number stands there.
func TestNumbersStandWhereRowsStart(t *testing.T) {
	side := func(left bool) map[string]float64 {
		ss, err := Draw(text(t, "rows/dc-swatch.txt"), Options{LeftHanded: left})
		require.NoError(t, err)
		at := map[string]float64{}
		sheet.Walk(&ss[0].Root, func(it sheet.Item) {
			if x, ok := it.(*sheet.Text); ok && x.Class == "number" {
				at[x.S] = x.At.X
			}
		})
		return at
	}
	right, left := side(false), side(true)
	require.Len(t, right, 3)
	assert.Greater(t, right["1"], right["2"], "right-side rows read from the right")
	assert.Greater(t, right["3"], right["2"])
	assert.Less(t, left["1"], left["2"], "left-handed work is the mirror image")
}

func TestALongRowIsShortenedAtItsRepeat(t *testing.T) {
	w := text(t, "chart/lace-shells.txt")
	short, what := w.lower(mostTall).shorten(mostWide)
	require.NotNil(t, what)
	assert.Equal(t, 6, what.Of)
	assert.Less(t, len(short.Rows), len(w.Rows))
	require.NoError(t, short.Check())
	for i := range short.Rows {
		r := &short.Rows[i]
		breaks := 0
		for _, s := range r.St {
			if s.Break {
				breaks++
			}
		}
		assert.Equal(t, 1, breaks, r.title())
		assert.LessOrEqual(t, len(r.St), mostWide+6)
		for k := range w.Rows { // no row's count is lost
			if o := &w.Rows[k]; o.Number == r.Number && !o.Base {
				assert.Equal(t, o.counted(), r.counted(), r.title())
			}
		}
	}
	ss, err := Draw(w, Options{})
	require.NoError(t, err)
	assert.Len(t, ss, 1)
	assert.Contains(t, ss[0].Desc, "Row 31", "the words leave nothing out")
}

func TestARowAlongRowEndsHasAFootInEveryRow(t *testing.T) {
	w := text(t, "chart/side-rib.txt")
	r := w.edgeAt()
	require.Equal(t, 16, r)
	seen := map[int]bool{}
	for _, s := range w.Rows[r].St {
		for _, f := range s.Feet {
			seen[f] = true
		}
	}
	assert.Len(t, seen, 15)
	p := newPlan(w, false)
	p.lay()
	require.NotNil(t, p.below)
	for _, n := range p.lines[1].nodes {
		for _, f := range n.feet {
			assert.Less(t, math.Abs(n.q-f.q), 4.0, "each stitch stands over its row's end")
		}
	}
	ss, err := Draw(w, Options{})
	require.NoError(t, err)
	assert.Equal(t, made(w), stitchesOn(t, ss))
}

// Published descriptions of the symbols (the international crochet symbols): the key names
// each that is drawn, in both terms, and none else.
func TestTheKeyListsWhatIsDrawnAndNothingElse(t *testing.T) {
	key := func(w *Work) string {
		ss, err := Draw(w, Options{})
		require.NoError(t, err)
		var all []string
		sheet.Walk(&ss[0].Root, func(it sheet.Item) {
			if x, ok := it.(*sheet.Text); ok && x.Class == "key" {
				all = append(all, x.S)
			}
		})
		return strings.Join(all, "\n")
	}
	swatch := key(text(t, "rows/dc-swatch.txt"))
	assert.Contains(t, swatch, "dc: double crochet (UK treble crochet)")
	assert.NotContains(t, swatch, "single crochet")
	assert.NotContains(t, swatch, "loop")
	rib := key(text(t, "chart/side-rib.txt"))
	assert.Contains(t, rib, "in back loop only")
	assert.Contains(t, rib, "in front loop only", "a back loop of a wrong-side row looks like a front loop")
	assert.Contains(t, key(text(t, "rows/post-rib.txt")), "FPdc: front post double crochet")
	assert.Contains(t, key(text(t, "rows/horseshoe.txt")), "k on the right side, p on the wrong side")
}

func TestTheWordsSayEveryRowInTheOrderOfWorking(t *testing.T) {
	w := text(t, "rows/shells-6-2.txt")
	assert.Equal(t, "Row 2, wrong side: chain 3 as first dc, 2 dc in one stitch, (1 sc, 5 dc in one stitch) 3 times, 1 sc, 3 dc in one stitch; 25 stitches.", w.words(2))
	w = text(t, "rows/granny-us.txt")
	d := w.describe(w.words)
	assert.Contains(t, d, "Round 2: chain 3 as first dc, 2 dc in ch-2 space, (ch 2, 3 dc in ch-2 space, ch 1, 3 dc in ch-2 space) 3 times,")
	assert.Contains(t, d, "joined with a slip stitch; 24 stitches.")
}

func TestWorkThatCannotBeDrawnIsAnError(t *testing.T) {
	w := &Work{Rows: []Row{{St: []St{{Feet: []int{2}}}}}}
	_, err := Draw(w, Options{})
	require.Error(t, err)
	_, err = Draw(&Work{}, Options{})
	require.Error(t, err)
	_, err = Draw(text(t, "rows/dc-swatch.txt"), Options{Scale: 99})
	require.ErrorContains(t, err, "0.3 to 4")
}

// Common practice: a foundation chain is drawn alike whether the text makes it in a line of its own or in that of the first row,
// and the chains that the row skips stand up at its beginning.
func TestAFoundationInTheFirstRowsLineIsDrawnAlike(t *testing.T) {
	const row = "in 2nd ch from hook and in each ch across. (13 sc)\nRow 2: Ch 3 (counts as dc), turn, dc in next sc and in each sc across. (13 dc)\n"
	apart, within := fromText(t, "Terms: US\nCh 14.\nRow 1: Sc "+row), fromText(t, "Terms: US\nRow 1: Ch 14, sc "+row)
	require.Len(t, within.Rows, 3)
	require.Len(t, within.Rows[0].St, 13, "13 of 14 chains are worked into")
	assert.True(t, within.Rows[1].St[0].Turn, "the other stands up")
	for r := range apart.Rows {
		assert.Equal(t, apart.Rows[r].sign(), within.Rows[r].sign(), "row %d", r)
	}
}

// Common practice: the rows of a ripple are drawn as waves, its foundation too: the peaks over the stitches that several are worked
// into, the valleys over those worked together, and every stitch upright on its row.
func TestARippleLiesInWaves(t *testing.T) {
	const row = "dc in each of next 4 dc, dc3tog over next 3 dc, dc in each of next 4 dc"
	w := fromText(t, "Terms: US\nCh 39.\nRow 1: Dc in 3rd ch from hook (skipped ch count as dc), *dc in each of next 4 ch, dc3tog over next 3 ch, dc in each of next 4 ch, 3 dc in next ch; rep from * to last 12 ch, "+
		"dc in each of next 4 ch, dc3tog over next 3 ch, dc in each of next 4 ch, 2 dc in last ch, turn.\n"+
		"Row 2: Ch 3 (counts as dc), dc in first dc, *"+row+", 3 dc in next dc; rep from * to last 12 sts, "+row+", 2 dc in top of turning ch, turn.\n")
	require.Empty(t, w.Gaps())
	p, f := laid(w)
	require.NotNil(t, p.wave)
	assert.Empty(t, touching(p, f, 0.02))
	for _, l := range p.lines[1:] {
		low, high, upright, alone := math.Inf(-1), math.Inf(1), 0, 0
		for _, n := range l.nodes {
			if len(n.feet) == 0 {
				continue
			}
			switch y := p.point(n, n.v).Y; {
			case n.st.Kind.Together:
				low = max(low, y)
			case len(n.group) == 3:
				high = min(high, y)
			case n.group == nil:
				alone++
				if lean, _, _ := stance(p, n); lean < 20 {
					upright++
				}
			}
		}
		assert.Less(t, low+2, high, "valleys lie under peaks by more than 2 mm")
		assert.Greater(t, upright, alone*8/10, "of %d", alone)
	}
	plain := fromText(t, "Terms: US\nCh 14.\nRow 1: Sc in 2nd ch from hook and in each ch across. (13 sc)\nRow 2: Ch 1, 2 sc in first sc, sc in each sc across, turn. (14 sc)\n")
	p, _ = laid(plain)
	assert.Nil(t, p.wave, "a row with increases lies straight")
}

// Common practice: of the chains skipped at the hook before a shell or a V-stitch, as many lie passed over as before the stitch
// in the last chain, and only the rest, as tall as that stitch (dc: 3, tr: 4), stand up. The chains by the sums of the texts: a
// place for each stitch, those passed over, and what stands up, are all that were made.
func TestChainsPassedOverAtTheHookLieInTheFoundation(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		kind := rapid.SampledFrom([]string{"dc", "tr"}).Draw(rt, "kind")
		up := map[string]int{"dc": 3, "tr": 4}[kind]
		passed, times := rapid.IntRange(1, 2).Draw(rt, "passed"), rapid.IntRange(2, 6).Draw(rt, "times")
		group := rapid.SampledFrom([]string{"(%[1]s, ch 1, %[1]s)", "5 %s"}).Draw(rt, "group")
		group = fmt.Sprintf(group, kind)
		each := 2*passed + 1
		made := up + passed + 1 + (times-1)*each + passed + 1
		w := fromText(t, fmt.Sprintf("Terms: US\nCh %d.\nRow 1: %s in %dth ch from hook, *skip next %d ch, %[2]s in next ch; repeat from * to last %[5]d ch, skip next %d ch, %[7]s in last ch, turn.\n"+
			"Row 2: Ch %[8]d, skip first %[7]s, %[7]s in each %[7]s across, %[7]s in top of turning ch.\n", made, group, up+passed+1, each-1, passed+1, passed, kind, up))
		require.Len(rt, w.Rows[0].St, made-up, "so many chains lie")
		first := w.Rows[1].St[0]
		require.True(rt, first.Turn)
		require.Equal(rt, up, first.Chain, "so many stand up")
		require.False(rt, w.Rows[1].St[1].arch(), "what is passed over is no space")
	})
}
