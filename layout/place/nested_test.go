package place

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/gofont/gomono"
	"pgregory.net/rapid"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/random"
	"flatwright/schematic/units"
)

// texts are all texts of a sheet by class.
func textsOf(s *sheet.Sheet, class string) []string {
	var out []string
	sheet.Walk(&s.Root, func(it sheet.Item) {
		if t, ok := it.(*sheet.Text); ok && t.Class == class {
			out = append(out, t.S)
		}
	})
	return out
}

func TestNothingOverlapsOnNestedDrawingsOfRandomGarments(t *testing.T) {
	pages, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		var gs []*schematic.Garment
		if rapid.Bool().Draw(t, "worked") {
			gs = bysize.WorkAll(random.Pattern(random.Options{}).Draw(t, "pattern"))
		} else {
			gs = randomGarments(t)
		}
		o := Options{Paper: rapid.SampledFrom(Papers()).Draw(t, "paper"), Orientation: Orientation(rapid.IntRange(0, 2).Draw(t, "way"))}
		sheets, err := Nested(gs, o)
		if err != nil {
			var large *TooLarge
			require.ErrorAs(t, err, &large)
			refused++
			return
		}
		for _, s := range sheets {
			pages++
			if bad := sheet.Overlaps(s, 5); len(bad) > 0 {
				t.Fatalf("%v", bad[0])
			}
		}
	})
	t.Logf("%d pages, %d that the paper does not hold", pages, refused)
	assert.Less(t, refused, 20)
}

// squares are garments of one square piece, each so many mm wide.
func squares(wide ...float64) []*schematic.Garment {
	pat := &schematic.Pattern{Title: "Squares", Steps: units.Usual}
	var gs []*schematic.Garment
	for i, w := range wide {
		name := string(rune('A' + i))
		pat.Sizes.Names = append(pat.Sizes.Names, name)
		h := 300.0
		gs = append(gs, &schematic.Garment{Pattern: pat, Size: name, Index: i, Pieces: []*schematic.Made{{ID: "p", Name: "Back", Views: []schematic.View{{
			Outline: [][]schematic.Point{{{X: -w / 2, Y: 0}, {X: w / 2, Y: 0}, {X: w / 2, Y: h}, {X: -w / 2, Y: h}}}}}}}})
	}
	pat.Sizes.Groups = []int{len(wide)}
	return gs
}

func TestEverySizeIsNamedAtItsCornerAndInTheKey(t *testing.T) {
	sheets, err := Nested(squares(400, 420, 440, 440, 500), Options{})
	require.NoError(t, err)
	require.Len(t, sheets, 1)
	assert.Equal(t, []string{"A", "B", "C, D", "E"}, textsOf(sheets[0], "size"))
	assert.Equal(t, []string{"A", "B", "C", "D", "E"}, textsOf(sheets[0], "key"))
	same, err := Nested(squares(400, 400, 400), Options{})
	require.NoError(t, err)
	assert.Equal(t, []string{"all sizes"}, textsOf(same[0], "size"))
}

// What is altered lies in a broken line over what was published; what stays alike is both.
func TestAnAlterationIsComparedWithItsSize(t *testing.T) {
	gs := squares(400, 420)
	was, now := gs[0], gs[1]
	now.Size = was.Size
	sheets, err := Compared(was, now, Options{})
	require.NoError(t, err)
	assert.Equal(t, []string{"as published", "altered"}, textsOf(sheets[0], "size"))
	assert.Contains(t, textsOf(sheets[0], "heading"), "Size A as published, and altered in a broken line")
	assert.Equal(t, "A", was.Size, "the garments stay as they are")
	sheets, err = Compared(was, was, Options{})
	require.NoError(t, err)
	assert.Equal(t, []string{"both"}, textsOf(sheets[0], "size"))
}

func TestKindsOfLineTakeTurns(t *testing.T) {
	sheets, err := Nested(squares(400, 420, 440, 460), Options{})
	require.NoError(t, err)
	var dashes []int
	var widths []float64
	sheet.Walk(&sheets[0].Root, func(it sheet.Item) {
		if p, ok := it.(*sheet.Path); ok && p.Class == "outline" && len(p.Segs) > 2 {
			dashes = append(dashes, len(p.Style.Dash))
			widths = append(widths, p.Segs[1].P[0].X-p.Segs[0].P[0].X)
		}
	})
	assert.Equal(t, []int{0, 2, 4, 2}, dashes)
	for i, w := range widths { // drawn to the scale that the heading states
		assert.InDelta(t, (400+20*float64(i))*widths[0]/400, w, 0.011)
	}
}

func TestANestedDrawingIsTheSameEveryTime(t *testing.T) {
	a, err := Nested(squares(400, 420), Options{})
	require.NoError(t, err)
	b, err := Nested(squares(400, 420), Options{})
	require.NoError(t, err)
	assert.Equal(t, a, b)
	_, err = Nested(nil, Options{})
	assert.Error(t, err)
	_, err = Nested(squares(40000), Options{Scale: 2})
	assert.Error(t, err)
}

func TestTwelveSizesHaveTwelveLines(t *testing.T) {
	seen := map[string]bool{}
	for i := range 12 {
		s := nestStyle(i)
		seen[fmt.Sprint(s.Width, s.Dash)] = true
		next := nestStyle(i + 1)
		assert.NotEqual(t, s.Width, next.Width, "neighbours differ in weight")
		assert.NotEqual(t, s.Dash, next.Dash, "and in kind")
		assert.Equal(t, sheet.Black, s.Stroke, "and not by colour")
	}
	assert.Len(t, seen, 12)
}

// Go Mono is wider than the house's face by far.
func TestTheSizesInsideEachOtherTakeAFaceOfOnesOwn(t *testing.T) {
	mono, err := fonts.Parse(gomono.TTF)
	require.NoError(t, err)
	sheets, err := Nested(pullover(3), Options{Face: mono})
	require.NoError(t, err)
	texts := 0
	for _, s := range sheets {
		assert.Empty(t, sheet.Overlaps(s, 9.5))
		sheet.Walk(&s.Root, func(it sheet.Item) {
			if text, ok := it.(*sheet.Text); ok {
				assert.Equal(t, mono, text.Face)
				texts++
			}
		})
	}
	assert.Positive(t, texts)
}
