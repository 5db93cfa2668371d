package job

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/layout/place"
	"flatwright/render/compare"
	"flatwright/schematic/long"
)

// chartTexts are texts of rows of each sort of chart: rows, rounds, a polygon, lace, post
// and loop stitches, a rib with picked-up rows, knitting.
var chartTexts = []string{"rows/dc-swatch", "rows/shells-6-2", "rows/granny-us", "rows/circle-dc-12", "rows/post-rib", "rows/horseshoe",
	"rows/rib-knit", "rows/popcorn-row", "chart/hexagon", "chart/pineapple", "chart/chain-mesh", "chart/side-rib", "chart/lace-shells"}

func chartText(t testing.TB, name string) Source {
	t.Helper()
	path := filepath.Join("../../../testdata", name+".txt")
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	return Source{Name: filepath.Base(path), Text: b}
}

// Rasterised by librsvg and by Poppler at 150 dpi, every ink pixel of one has a partner
// in the other.
func TestSVGAndPDFOfEveryChartAreOnePicture(t *testing.T) {
	long.Test(t)
	compare.Tool(t, "rsvg-convert")
	compare.Tool(t, "pdftoppm")
	for _, name := range chartTexts {
		t.Run(name, func(t *testing.T) {
			text := chartText(t, name)
			r, err := Chart(context.Background(), nil, &text, ChartOptions{LeftHanded: name == "rows/horseshoe", Paper: place.Letter})
			require.NoError(t, err)
			svgs, pdf := split(t, r)
			for i, f := range svgs {
				compare.Same(t, compare.SVG(t, f.Body), compare.PDF(t, pdf, i+1))
			}
		})
	}
}

func TestChartsAreAsTheyWereLookedAt(t *testing.T) {
	for _, name := range chartTexts {
		text := chartText(t, name)
		r, err := Chart(context.Background(), nil, &text, ChartOptions{Format: "svg"})
		require.NoError(t, err)
		for _, f := range r.Files {
			golden(t, filepath.Join("testdata", "chart", f.Name), f.Body)
		}
	}
}

func TestAPatternIsChartedBySectionAndSize(t *testing.T) {
	for _, src := range sources(t, "../../../examples/*.yaml") {
		r, err := Chart(context.Background(), &src, nil, ChartOptions{})
		require.NoError(t, err, src.Name)
		assert.GreaterOrEqual(t, len(r.Files), 2, src.Name)
		again, err := Chart(context.Background(), &src, nil, ChartOptions{})
		require.NoError(t, err)
		assert.Equal(t, r.Files, again.Files, "the same input gives the same bytes")
	}
	src := sources(t, "../../../examples/saltmarsh*.yaml")[0]
	r, err := Chart(context.Background(), &src, nil, ChartOptions{Section: "sleeve", Size: "S", Format: "svg"})
	require.NoError(t, err)
	require.Len(t, r.Files, 1)
	assert.True(t, strings.HasSuffix(r.Files[0].Name, "-chart-sleeve-s.svg"), r.Files[0].Name)
	var option *OptionError
	_, err = Chart(context.Background(), &src, nil, ChartOptions{Section: "collar"})
	require.ErrorAs(t, err, &option)
	assert.Contains(t, err.Error(), "Body")
	_, err = Chart(context.Background(), &src, nil, ChartOptions{Size: "XXS"})
	require.ErrorAs(t, err, &option)
	text := Source{Name: "a.txt", Text: []byte("Only words here.\n")}
	_, err = Chart(context.Background(), nil, &text, ChartOptions{})
	require.Error(t, err)
}

// Blocks from corner to corner that are told by their yarns alone are refused with what would make a chart of them.
func TestBlocksFromCornerToCornerAreRefusedWithAWayOut(t *testing.T) {
	text := Source{Name: "t.txt", Text: []byte("Square, corner to corner\nRow 1 [RS]: 1W (1 block)\nRow 2 [WS]: 1W, 1R (2 blocks)\nRow 3 [RS]: 1W (1 block)\n")}
	_, err := Chart(context.Background(), nil, &text, ChartOptions{})
	assert.ErrorContains(t, err, "write each as it is worked")
	text.Text = []byte("Row 1: 1W zorb\n")
	_, err = Chart(context.Background(), nil, &text, ChartOptions{})
	assert.Error(t, err)
	assert.NotContains(t, err.Error(), "corner")
}

// Common practice: entrelac has no rows; in intarsia each block has yarn of its own, and nothing is carried.
func TestEntrelacIsRefusedAndIntarsiaHasNoFloats(t *testing.T) {
	_, err := Chart(context.Background(), nil, &Source{Name: "e.txt", Text: []byte("Entrelac scarf\nCast on 12 sts.\nRow 1: K2, turn, p2, turn, k3, turn, p3.\n")}, ChartOptions{})
	require.ErrorIs(t, err, errEntrelac)
	rows := "Cast on 19 sts in A.\nRow 1 (RS): K5A, K9B, K5A.\nRow 2: P5A, P1B, P7A, P1B, P5A.\n"
	for title, floats := range map[string]int{"Heart\n": 2, "Heart, worked in intarsia\n": 0} {
		r, err := Chart(context.Background(), nil, &Source{Name: "i.txt", Text: []byte(title + rows)}, ChartOptions{})
		require.NoError(t, err)
		n := 0
		for _, f := range r.Findings {
			if f.Kind == "chart/float" {
				n++
			}
		}
		assert.Equal(t, floats, n, title)
	}
}

// The repeat does not fit, and no slip explains it: the row is told and not drawn.
func TestARowThatWasNotFollowedIsNotDrawn(t *testing.T) {
	r, err := Chart(context.Background(), nil, &Source{Name: "r.txt", Text: []byte("Cast on 40 sts.\nRow 1 (RS): Knit.\nRow 2: K5, *k7, p4, k6, p5, k3; rep from * to last 5 sts, k5.\nRow 3: Knit.\n")}, ChartOptions{})
	require.NoError(t, err)
	assert.True(t, HasGap(r.Findings))
}

// A list of the stitches that a pattern uses is no rows.
func TestAListOfStitchesIsNotCharted(t *testing.T) {
	text := "Ball\nStitches used are:\nMagic ring\nSingle crochet (sc)\nIncreases (inc)\nDecreases (dec)\nPattern\nRound 1: 6 sc in a magic ring\nRound 2: 6 inc (12)\n"
	r, err := Chart(context.Background(), nil, &Source{Name: "ball.txt", Text: []byte(text)}, ChartOptions{Format: "svg"})
	require.NoError(t, err)
	require.Len(t, r.Files, 1)
	assert.NotContains(t, r.Files[0].Name, "used")
}
