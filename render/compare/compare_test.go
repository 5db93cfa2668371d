package compare_test

import (
	"bytes"
	"image"
	"regexp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/render/compare"
	"flatwright/render/pdf"
	"flatwright/render/svg"
)

func svgOf(t *testing.T, s *sheet.Sheet) []byte {
	var b bytes.Buffer
	require.NoError(t, svg.Write(&b, s))
	return b.Bytes()
}

func pdfOf(t *testing.T, sheets ...*sheet.Sheet) []byte {
	var b bytes.Buffer
	require.NoError(t, pdf.Write(&b, sheets, pdf.Info{}))
	return b.Bytes()
}

func TestSVGAndPDFAreOnePicture(t *testing.T) {
	sheets := []*sheet.Sheet{compare.Sample(1), compare.Sample(2)}
	sheets[1].W, sheets[1].H = 215.9, 300
	file := pdfOf(t, sheets...)
	for i, s := range sheets {
		compare.Same(t, compare.SVG(t, svgOf(t, s)), compare.PDF(t, file, i+1))
	}
}

func TestAShiftOfOneMillimetreIsFound(t *testing.T) {
	sheets := []*sheet.Sheet{compare.Sample(3)}
	whole := compare.PDF(t, pdfOf(t, sheets...), 1)
	moved := 0
	sheet.Walk(&sheets[0].Root, func(it sheet.Item) {
		if text, ok := it.(*sheet.Text); ok && text.S == "a link" {
			text.At.X++
			moved++
		}
	})
	require.Equal(t, 1, moved)
	picture := compare.SVG(t, svgOf(t, sheets[0]))
	assert.Error(t, compare.Match(picture, whole, compare.Share))
	assert.Error(t, compare.Match(whole, picture, compare.Share))
}

func TestAMarkThatOnePictureLacksIsFound(t *testing.T) {
	s := compare.Sample(3)
	whole := compare.SVG(t, svgOf(t, s))
	for _, it := range s.Root.Items {
		if g, ok := it.(*sheet.Group); ok && g.ID == "curves" {
			g.Items = g.Items[1:]
		}
	}
	less := compare.PDF(t, pdfOf(t, s), 1)
	assert.Error(t, compare.Match(whole, less, 1), "the larger picture first")
	assert.Error(t, compare.Match(less, whole, 1), "the smaller picture first")
}

func TestABlankPictureMatchesNothing(t *testing.T) {
	s := &sheet.Sheet{W: 40, H: 30}
	blank := compare.SVG(t, svgOf(t, s))
	assert.Error(t, compare.Match(blank, blank, 1))
}

func TestChromiumDrawsWhatLibrsvgDraws(t *testing.T) {
	s := compare.Sample(4)
	file := svgOf(t, s)
	// Smoothing differs, and so does the place of a glyph by a part of a pixel.
	assert.NoError(t, compare.Match(compare.SVG(t, file), compare.House.Chromium(t, file, s.W, s.H), 0.003))
}

// Where the only face is another and wider one, the embedded faces and the outlines give
// the picture that the PDF gives.
func TestADeviceWithoutTheFacesShowsTheSamePicture(t *testing.T) {
	s := compare.Sample(5)
	live := svgOf(t, s)
	var b bytes.Buffer
	require.NoError(t, svg.WriteOutlined(&b, s))
	outlines := b.Bytes()
	page := compare.PDF(t, pdfOf(t, s), 1)
	compare.Same(t, compare.Foreign.SVG(t, outlines), page)
	compare.Same(t, compare.House.SVG(t, outlines), page)
	for name, file := range map[string][]byte{"faces": live, "outlines": outlines} {
		assert.NoError(t, compare.Match(compare.Foreign.Chromium(t, file, s.W, s.H), page, 0.003), name)
	}
	// librsvg knows no face within a file: what the test holds is not for free.
	assert.Error(t, compare.Match(compare.Foreign.SVG(t, live), page, 0.01))
}

// Words side by side, as in a key, do not run into each other on a device that has but another and wider face and takes none from a file.
func TestWordsKeepToTheirBoxesInAnyFace(t *testing.T) {
	s := &sheet.Sheet{W: 150, H: 60}
	var boxes []sheet.Box
	add := func(words string, at sheet.Point, face fonts.Face, a sheet.Anchor, angle float64) {
		x := sheet.NewText(words, face, 3.5, at, a, "")
		x.Angle, x.Ink = angle, sheet.Black
		s.Root.Items = append(s.Root.Items, x)
		boxes = append(boxes, x.Box())
	}
	for i, face := range []fonts.Face{fonts.Regular, fonts.Bold, fonts.Italic} {
		x := 20.0
		for _, w := range []string{"direction of work", "edges with the same number are joined", "rib, along its ribs"} {
			add(w, sheet.Point{X: x, Y: 10 + 8*float64(i)}, face, sheet.Start, 0)
			x += fonts.Width(face, 3.5, w) + 1
		}
	}
	add("96 cm / 37¾ in around", sheet.Point{X: 8, Y: 30}, fonts.Regular, sheet.Middle, 90)
	add("103 (111, 119) (127, 135) cm", sheet.Point{X: 140, Y: 50}, fonts.Regular, sheet.End, 0)
	bare := regexp.MustCompile(`(?s)<style.*?</style>`).ReplaceAll(svgOf(t, s), nil)
	assert.Zero(t, stray(compare.Foreign.Chromium(t, bare, s.W, s.H), boxes))
	loose := regexp.MustCompile(` textLength="[^"]*"`).ReplaceAll(bare, nil)
	require.Less(t, len(loose), len(bare))
	assert.Greater(t, stray(compare.Foreign.Chromium(t, loose, s.W, s.H), boxes), 20, "what the test holds is not for free")
}

// stray counts the pixels with ink that lie in no box, or more than 0.3 mm beside one.
func stray(picture *image.Gray, boxes []sheet.Box) int {
	n := 0
	for y := range picture.Rect.Dy() {
		for x := range picture.Rect.Dx() {
			at := sheet.Point{X: (float64(x) + 0.5) * 25.4 / compare.DPI, Y: (float64(y) + 0.5) * 25.4 / compare.DPI}
			in := func(b sheet.Box) bool { return b.Grown(0.3).Touches(at, at) }
			if picture.GrayAt(x, y).Y < 128 && !slices.ContainsFunc(boxes, in) {
				n++
			}
		}
	}
	return n
}
