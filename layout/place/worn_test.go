package place

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/random"
	"flatwright/schematic/read"
	"flatwright/schematic/worn"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// wornGarments are the garments of a folder, every size of each put together.
func wornGarments(t testing.TB, folder string) map[string][]*schematic.Garment {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("../../testdata/garments", folder, "*.yaml"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	all := map[string][]*schematic.Garment{}
	for _, f := range files {
		text, err := os.ReadFile(f)
		require.NoError(t, err)
		p, found := read.Pattern(f, text)
		require.NotNil(t, p, "%s: %v", f, found)
		gs := bysize.WorkAll(p)
		for _, g := range gs {
			worn.Dress(g)
		}
		all[filepath.Base(f)] = gs
	}
	return all
}

func TestNothingOverlapsOnASheetOfAGarmentAsItIsWorn(t *testing.T) {
	for name, gs := range wornGarments(t, "worn") {
		for _, labels := range []Labels{OneSize, AllSizes, Letters, Blank} {
			for _, size := range []int{0, len(gs) / 2, len(gs) - 1} {
				for _, units := range []Units{CM, Both} {
					var st Stats
					o := Options{Labels: labels, Size: size, Units: units, Paper: Paper(size % 2), Stats: &st}
					sheets, err := Schematic(gs, o)
					require.NoError(t, err, name)
					holds(t, gs, o, st, sheets)
				}
			}
		}
	}
}

// Along every dimension line drawn, its length times the scale is the value, or half of what goes around.
func TestADimensionLineOfAGarmentAsItIsWornIsTrueToScale(t *testing.T) {
	lines := 0
	for name, gs := range wornGarments(t, "worn") {
		for size := range gs {
			o := Options{Labels: OneSize, Size: size}
			p, err := newPlan(gs, o)
			require.NoError(t, err)
			for _, scale := range []float64{5, 8, 12} {
				for _, v := range p.views {
					for _, m := range v.draw(&p.o, scale).dims {
						if !v.worn || !m.ends {
							continue
						}
						want := m.it.m.Length.Float()
						if m.it.m.Around {
							want /= 2
						}
						require.InDelta(t, want, dist(m.line.a, m.line.b)*scale, 0.5, "%s of %s at 1:%g", m.it.m.Name, name, scale)
						lines++
					}
				}
			}
		}
	}
	require.Greater(t, lines, 300)
}

func TestNothingOverlapsOnASheetOfARandomBondedGarment(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := random.Bonded().Draw(t, "text")
		p, found := read.Pattern("bonded.yaml", []byte(text))
		require.NotNil(t, p, "%v", found)
		gs := bysize.WorkAll(p)
		worn.Dress(gs[0])
		var st Stats
		o := Options{Labels: rapid.SampledFrom([]Labels{OneSize, AllSizes, Letters, Blank}).Draw(t, "labels"), Units: rapid.SampledFrom([]Units{CM, Both}).Draw(t, "units"),
			Paper: Paper(rapid.IntRange(0, 1).Draw(t, "paper")), Stats: &st}
		sheets, err := Schematic(gs, o)
		require.NoError(t, err)
		holds(t, gs, o, st, sheets)
	})
}

// The ground of a designer's colour fills what lies beneath as well: a wrap's right front is 45 cm wide, and its left front fills the
// rest of the body.
func TestTheGroundFillsWhatLiesBeneath(t *testing.T) {
	gs := wornGarments(t, "worn")["wrap.yaml"]
	count := func() (n int) {
		sheets, err := Schematic(gs, Options{})
		require.NoError(t, err)
		sheet.Walk(&sheets[0].Root, func(it sheet.Item) {
			if p, ok := it.(*sheet.Path); ok && p.Class == "ground" {
				n++
				require.Equal(t, sheet.RGB(1, 2, 3), p.Style.Fill)
			}
		})
		return n
	}
	require.Equal(t, 0, count())
	gs[0].Pattern.Drawing.Colours.Fill = schematic.Colour{R: 1, G: 2, B: 3, Set: true}
	require.Equal(t, 2, count())
}

// An upper arm runs through the sleeve from its fold to its seam: it is measured there, and no leader points to it.
func TestAnUpperArmIsMeasuredWhereItIs(t *testing.T) {
	seen := 0
	for name, gs := range wornGarments(t, "worn") {
		if name != "set-in.yaml" && name != "raglan-flat.yaml" {
			continue
		}
		p, err := newPlan(gs, Options{Labels: OneSize})
		require.NoError(t, err)
		for _, v := range p.views {
			for _, m := range v.draw(&p.o, 7).dims {
				if v.worn && m.it.m.Name == "upper arm" {
					require.True(t, m.ends, "%s: it has a leader", name)
					seen++
				}
			}
		}
	}
	require.Equal(t, 2, seen)
}

// A measurement has one letter in every size and however its values are told, and a table is in the order of its letters.
func TestAMeasurementHasOneLetterOnEverySheet(t *testing.T) {
	told := map[string]int{} // how often a letter that is not the first is met again
	for name, gs := range wornGarments(t, "worn") {
		letter := map[string]string{}
		for _, labels := range []Labels{OneSize, AllSizes, Letters, Blank} {
			for size := range gs {
				sheets, err := Schematic(gs, Options{Labels: labels, Size: size})
				require.NoError(t, err)
				for _, s := range sheets {
					last := ""
					sheet.Walk(&s.Root, func(it sheet.Item) {
						switch it := it.(type) {
						case *sheet.Group:
							if l, _, ok := strings.Cut(it.Title, ": "); ok && it.Class == "measure" && l == strings.ToUpper(l) {
								if letter[it.ID] == "" {
									letter[it.ID] = l
								}
								require.Equal(t, letter[it.ID], l, "%s of %s", it.ID, name)
								told[name]++
							}
						case *sheet.Text:
							if it.Class == "table" && it.Face == fonts.Bold && len(it.S) < 3 && it.Anchor == sheet.Start {
								require.True(t, len(last) < len(it.S) || last < it.S, "%s after %s in %s", it.S, last, name)
								last = it.S
							}
						}
					})
				}
			}
		}
		of := map[string]string{}
		for id, l := range letter {
			require.Empty(t, of[l], "%s of %s and %s", l, id, name)
			of[l] = id
		}
	}
	require.Greater(t, len(told), 50)
}
