package compare_test

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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
