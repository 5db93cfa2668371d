package place

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// skirt is so many gores of 30 (36) stitches of 5 mm, one of them wider if odd.
func skirt(gores int, odd bool) []*schematic.Garment {
	panels := &schematic.Panels{}
	sum := [2]int{}
	for i := range gores {
		n := [2]int{30, 36}
		if odd && i == 0 {
			n = [2]int{40, 46}
		}
		panels.Of = append(panels.Of, schematic.Panel{Name: fmt.Sprintf("Gore %d", i+1), Stitches: expr.Counts(n[0], n[1])})
		sum[0], sum[1] = sum[0]+n[0], sum[1]+n[1]
	}
	one := expr.Counts(1, 1)
	return bysize.WorkAll(&schematic.Pattern{Title: "Skirt", Sizes: expr.Sizes{Names: []string{"S", "M"}, Groups: []int{1, 1}}, Steps: units.Usual,
		Gauges: []schematic.Gauge{{Name: "fabric", Stitches: units.Int(20), Rows: units.Int(25), Over: units.Int(100)}},
		Pieces: []*schematic.Piece{{Name: "Skirt", Kind: schematic.KindBody, Round: true, Sections: []schematic.Section{
			&schematic.CastOn{Stitches: expr.Counts(sum[0], sum[1])}, panels,
			&schematic.Shape{Shapings: []schematic.Shaping{{By: one, At: schematic.Lines, Every: expr.Counts(4, 4), Times: expr.Counts(5, 5)}}},
			&schematic.BindOff{All: true},
		}}}})
}

// captions are the lines under the pieces of a drawing, and how many pieces there are.
func captions(t *testing.T, gs []*schematic.Garment, o Options) (lines []string, pieces int) {
	t.Helper()
	sheets, err := Schematic(gs, o)
	require.NoError(t, err)
	for _, s := range sheets {
		sheet.Walk(&s.Root, func(it sheet.Item) {
			switch it := it.(type) {
			case *sheet.Group:
				if it.Class == "piece" {
					pieces++
				}
			case *sheet.Text:
				if it.Class == "caption" {
					lines = append(lines, it.S)
				}
			}
		})
	}
	return lines, pieces
}

// Six gores of 15 cm are 90 cm around; 10 stitches fewer at the top of each, 60 cm.
func TestAlikePanelsAreDrawnOnceWithHowManyThereAreAndTheWholeRound(t *testing.T) {
	lines, pieces := captions(t, skirt(6, false), Options{Units: CM})
	assert.Equal(t, 1, pieces)
	text := strings.Join(lines, " ")
	assert.Equal(t, "Skirt: Gore 6 alike, side by side all round at the hem: 90 cm all round at the top: 60 cm", text)

	lines, pieces = captions(t, skirt(4, true), Options{Units: CM})
	assert.Equal(t, 2, pieces)
	assert.Contains(t, strings.Join(lines, " "), "all panels together at the hem: 65 cm")
}

func TestTheWidthOfAWholeRowFollowsTheModeOfLabels(t *testing.T) {
	for _, c := range []struct {
		labels Labels
		want   string
	}{
		{OneSize, "all round at the hem: 90 cm"},
		{AllSizes, "all round at the hem: 90 (108) cm"},
		{Letters, "all round at the hem:"},
		{Blank, "all round at the hem:"},
	} {
		gs := skirt(6, false)
		lines, _ := captions(t, gs, Options{Units: CM, Labels: c.labels})
		assert.True(t, slices.Contains(lines, c.want) || strings.Contains(strings.Join(lines, " "), c.want), "%v %v", c.labels, lines)
		if c.labels == Blank {
			assert.NotContains(t, strings.Join(lines, " "), "90")
		}
	}
}

// In the drawing of letters every one stands in the table with its value.
func TestTheLetterOfAWholeRowIsInTheTable(t *testing.T) {
	sheets, err := Schematic(skirt(6, false), Options{Units: CM, Labels: Letters})
	require.NoError(t, err)
	var letter string
	table := []string{}
	sheet.Walk(&sheets[0].Root, func(it sheet.Item) {
		switch it := it.(type) {
		case *sheet.Group:
			if it.ID == "skirt.width-at-hem" {
				letter, _, _ = strings.Cut(it.Title, ": ")
			}
		case *sheet.Text:
			if it.Class == "table" {
				table = append(table, it.S)
			}
		}
	})
	i := slices.Index(table, letter)
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, []string{letter, "Skirt, width at hem around", "cm", "90", "108"}, table[i:i+5])
}
