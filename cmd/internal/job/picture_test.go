package job

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/cmd/internal/files"
	"flatwright/layout/place"
	"flatwright/layout/sheet"
	"flatwright/render/compare"
	"flatwright/schematic/long"
	"flatwright/schematic/units"
)

// modes are the ways of drawing that the pictures go through: every label mode, both
// units and each alone, both papers, both ways up, large print.
var modes = []struct {
	name string
	o    DrawOptions
}{
	{"every", DrawOptions{}},
	{"all in", DrawOptions{Labels: All, Units: []units.Unit{units.Inch}, Paper: place.Letter}},
	{"letters", DrawOptions{Labels: Letters}},
	{"blank", DrawOptions{Labels: Blank, Paper: place.Letter, Orientation: place.Landscape}},
	{"large", DrawOptions{Labels: Letters, Text: place.Large, Units: []units.Unit{units.CM}}},
}

// split gives the SVG files of a result, and its PDF.
func split(t testing.TB, r Result) (svgs []files.File, pdf []byte) {
	t.Helper()
	for _, f := range r.Files {
		if strings.HasSuffix(f.Name, ".pdf") {
			pdf = f.Body
		} else {
			svgs = append(svgs, f)
		}
	}
	require.NotEmpty(t, svgs)
	require.NotEmpty(t, pdf)
	return svgs, pdf
}

// Rasterised by librsvg and by Poppler at 150 dpi, every ink pixel of one has a
// partner in the other. The quick tests take each example in one way of drawing, another for each.
func TestSVGAndPDFOfEveryExampleAreOnePicture(t *testing.T) {
	compare.Tool(t, "rsvg-convert")
	compare.Tool(t, "pdftoppm")
	for n, src := range sources(t, "../../../examples/*.yaml") {
		for k, m := range modes {
			if !long.Some(n+k, len(modes)) {
				continue
			}
			t.Run(filepath.Base(src.Name)+"/"+m.name, func(t *testing.T) {
				t.Parallel()
				r, err := Draw(context.Background(), src, m.o)
				require.NoError(t, err)
				svgs, pdf := split(t, r)
				for i, f := range svgs {
					compare.Same(t, compare.SVG(t, f.Body), compare.PDF(t, pdf, i+1))
				}
			})
		}
	}
}

func TestNothingOverlapsInAnyPatternOfTheHouse(t *testing.T) {
	for _, folder := range []string{"../../../examples/*.yaml", "../../../testdata/garments/*.yaml"} {
		for _, src := range sources(t, folder) {
			p, gs, _, err := work(context.Background(), src)
			require.NoError(t, err)
			for _, m := range modes {
				all, err := drawings(p, m.o)
				require.NoError(t, err)
				require.NoError(t, lay(context.Background(), gs, all))
				for _, d := range all {
					for i, s := range d.sheets {
						assert.Empty(t, sheet.Overlaps(s, 5), "%s, %s, %s, sheet %d", src.Name, m.name, d.name, i+1)
					}
				}
			}
		}
	}
}

// The goldens are pictures that a person can open: one of the shape's size, one of all
// sizes, one of letters for each pattern. -update draws them anew.
func TestPicturesAreAsTheyWere(t *testing.T) {
	const pictures = "../../../testdata/pictures"
	drawn := map[string]bool{}
	for _, folder := range []string{"../../../examples/*.yaml", "../../../testdata/garments/*.yaml"} {
		for _, src := range sources(t, folder) {
			p, _, _, err := work(context.Background(), src)
			require.NoError(t, err)
			one := p.Sizes.Names[p.Sizes.Len()/2]
			for _, o := range []DrawOptions{{Size: one, Labels: One, Format: "svg"}, {Labels: All, Format: "svg"}, {Labels: Letters, Format: "svg", Paper: place.Letter}} {
				r, err := Draw(context.Background(), src, o)
				require.NoError(t, err)
				for _, f := range r.Files {
					golden(t, filepath.Join(pictures, f.Name), f.Body)
					drawn[f.Name] = true
				}
			}
		}
	}
	kept, err := os.ReadDir(pictures)
	require.NoError(t, err)
	for _, e := range kept {
		if !drawn[e.Name()] && *update {
			require.NoError(t, os.Remove(filepath.Join(pictures, e.Name())))
		} else {
			assert.True(t, drawn[e.Name()], "%s is drawn no more: run with -update", e.Name())
		}
	}
}

func TestAPDFIsCleanAndDrawnToScale(t *testing.T) {
	compare.Tool(t, "qpdf")
	for _, src := range sources(t, "../../../examples/*.yaml") {
		p, gs, _, err := work(context.Background(), src)
		require.NoError(t, err)
		const scale = 20
		r, err := Draw(context.Background(), src, DrawOptions{Labels: One, Scale: scale})
		require.NoError(t, err)
		svgs, pdf := split(t, r)
		file := filepath.Join(t.TempDir(), "a.pdf")
		require.NoError(t, os.WriteFile(file, pdf, 0o600))
		compare.Run(t, nil, "qpdf", "--check", file)
		for _, f := range svgs {
			compare.Run(t, f.Body, compare.Tool(t, "xmllint"), "--noout", "-")
		}
		// The outline of the first piece, in the PDF's own units of 1/72 in (ISO 32000-1), is the
		// garment's width times the scale.
		v := gs[0].Pieces[0].Views[0]
		lo, hi := v.Outline[0][0].X, v.Outline[0][0].X
		for _, q := range v.Outline[0] {
			lo, hi = min(lo, q.X), max(hi, q.X)
		}
		want := (hi - lo) / scale * 72 / 25.4
		widths := pathWidths(string(compare.Run(t, nil, "qpdf", "--qdf", "--object-streams=disable", file, "-")))
		closest := 1e9
		for _, w := range widths {
			if d := w - want; d*d < closest*closest {
				closest = d
			}
		}
		assert.InDelta(t, 0, closest, 0.03, "%s: %s of %s pt among the paths", p.Title, gs[0].Pieces[0].Name, fmt.Sprint(want))
	}
}

// pathWidths are the widths of the paths of a PDF's content, in points.
func pathWidths(content string) []float64 {
	var out []float64
	lo, hi, open := 0.0, 0.0, false
	for line := range strings.SplitSeq(content, "\n") {
		var x, y float64
		var op string
		if n, _ := fmt.Sscanf(line, "%f %f %s", &x, &y, &op); n == 3 && (op == "m" || op == "l") {
			if op == "m" || !open {
				lo, hi, open = x, x, true
			}
			lo, hi = min(lo, x), max(hi, x)
			continue
		}
		if open {
			out = append(out, hi-lo)
			open = false
		}
	}
	return out
}

// FuzzDraw holds that no text makes the whole way panic, and that what is drawn
// overlaps nowhere.
func FuzzDraw(f *testing.F) {
	for _, folder := range []string{"../../../examples/*.yaml", "../../../testdata/garments/*.yaml"} {
		for _, src := range sources(f, folder) {
			f.Add(src.Text, uint8(0))
		}
	}
	f.Fuzz(func(t *testing.T, text []byte, mode uint8) {
		if len(text) > 16<<10 {
			return
		}
		m := modes[int(mode)%len(modes)]
		o := m.o
		o.Format = "svg"
		r, err := Draw(context.Background(), Source{Name: "fuzz.yaml", Text: text}, o)
		if err != nil && len(r.Files) > 0 {
			t.Fatal("files beside an error")
		}
	})
}
