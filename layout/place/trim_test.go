package place

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/gofont/gomono"
)

func TestATrimmedSheetIsAsLargeAsItsInk(t *testing.T) {
	gs := pullover(3)
	for name, draw := range map[string]func(o Options) ([]*sheet.Sheet, error){
		"one size":  func(o Options) ([]*sheet.Sheet, error) { return Schematic(gs, o) },
		"all sizes": func(o Options) ([]*sheet.Sheet, error) { o.Labels = AllSizes; return Schematic(gs, o) },
		"nested":    func(o Options) ([]*sheet.Sheet, error) { return Nested(gs, o) },
	} {
		full, err := draw(Options{Units: Both})
		require.NoError(t, err, name)
		cut, err := draw(Options{Units: Both, Trim: true})
		require.NoError(t, err, name)
		require.Len(t, cut, len(full), name)
		if name != "all sizes" { // those fill their page
			assert.Less(t, cut[0].H, full[0].H, name)
		}
		for i := range cut {
			assert.LessOrEqual(t, cut[i].W, full[i].W, name)
			assert.LessOrEqual(t, cut[i].H, full[i].H, name)
			assert.Empty(t, sheet.Overlaps(cut[i], 0), name)
			lo, hi, _ := sheet.Bounds(&cut[i].Root)
			for _, gap := range []float64{lo.X, lo.Y, cut[i].W - hi.X, cut[i].H - hi.Y} {
				assert.InDelta(t, 0.3, gap, 0.02, "%s: the ink ends where the paper does", name)
			}
		}
	}
}

func TestAPictureIsAsWideAsAskedAndItsScaleIsTrue(t *testing.T) {
	gs := pullover(3)
	for _, width := range []float64{85, 160, 300} {
		for _, labels := range []Labels{OneSize, Letters} {
			sheets, err := Schematic(gs, Options{Width: width, Labels: labels})
			require.NoError(t, err)
			for _, s := range sheets {
				assert.Equal(t, width, s.W)
				lo, hi, _ := sheet.Bounds(&s.Root)
				assert.GreaterOrEqual(t, hi.X-lo.X, 0.55*width, "the picture fills its width")
				assert.Less(t, s.H, 2*width+60)
			}
		}
	}
}

func TestWhatIsLeftOffIsNotThere(t *testing.T) {
	gs := pullover(1)
	ids := func(without schematic.DrawnPart) map[string]bool {
		gs[0].Pattern.Drawing.Without = without
		sheets, err := Schematic(gs, Options{Without: without})
		require.NoError(t, err)
		out := map[string]bool{}
		sheet.Walk(&sheets[0].Root, func(it sheet.Item) {
			switch it := it.(type) {
			case *sheet.Group:
				out[it.ID] = true
			case *sheet.Path:
				out[it.Class] = true
			}
		})
		return out
	}
	all := ids(0)
	for part, id := range map[schematic.DrawnPart]string{schematic.Heading: "heading", schematic.Key: "key", schematic.ScaleBar: "scalebar",
		schematic.Arrows: "work", schematic.JoinMarks: "notch"} {
		if !all[id] {
			continue // the test garment has none
		}
		assert.False(t, ids(part)[id], id)
	}
	assert.True(t, all["heading"] && all["key"] && all["scalebar"] && all["work"])
}

func TestTheDesignersChoiceOfMeasurements(t *testing.T) {
	gs := pullover(3)
	measures := func() map[string]string {
		sheets, err := Schematic(gs, Options{Labels: Letters})
		require.NoError(t, err)
		out := map[string]string{}
		for _, s := range sheets {
			sheet.Walk(&s.Root, func(it sheet.Item) {
				if g, ok := it.(*sheet.Group); ok && g.Class == "measure" {
					letter, title, _ := strings.Cut(g.Title, ": ")
					name := strings.Split(title, ":")[0]
					if out[name] == "" || letter < out[name] { // of front and back alike
						out[name] = letter
					}
				}
			})
		}
		return out
	}
	all := measures()
	require.Greater(t, len(all), 2)
	var names []string
	for n := range all {
		names = append(names, n)
	}
	slices.Sort(names)
	one, two := names[0], names[1]
	d := &gs[0].Pattern.Drawing
	d.Hide = []schematic.Called{{Name: strings.ToUpper(one)}}
	assert.NotContains(t, measures(), one)
	d.Hide, d.Show = nil, []schematic.Called{{Name: one}}
	assert.Equal(t, []string{one}, slices.Collect(maps.Keys(measures())))
	d.Show, d.Order, d.Letters = nil, []schematic.Called{{Name: two}}, 10
	first := func(name string) {
		for other, letter := range measures() {
			if mine := measures()[name]; other != name {
				assert.True(t, len(mine) < len(letter) || len(mine) == len(letter) && mine < letter, "%s %s, %s %s", name, mine, other, letter)
				assert.GreaterOrEqual(t, mine, "K")
			}
		}
	}
	first(two)
	d.Names = []schematic.Renamed{{Called: schematic.Called{Name: two}, To: "Chest"}}
	first("Chest")
}

// Go Mono is wider than the house's face by far.
func TestADrawingInAFaceOfOnesOwnOverlapsNothing(t *testing.T) {
	mono, err := fonts.Parse(gomono.TTF)
	require.NoError(t, err)
	gs := pullover(3)
	for _, o := range []Options{{Units: Both}, {Labels: Letters}, {Labels: AllSizes}, {Labels: Blank}, {Width: 160}} {
		o.Face = mono
		sheets, err := Schematic(gs, o)
		require.NoError(t, err)
		for _, s := range sheets {
			edge := 9.5
			if o.cut() {
				edge = 0
			}
			assert.Empty(t, sheet.Overlaps(s, edge))
			sheet.Walk(&s.Root, func(it sheet.Item) {
				if text, ok := it.(*sheet.Text); ok {
					assert.Equal(t, mono, text.Face)
					if text.Class == "label" {
						assert.Equal(t, 3.2, text.Size)
					}
				}
			})
		}
	}
}
