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
	s := compare.Sample(3)
	file := pdfOf(t, s)
	whole := compare.PDF(t, file, 1)
	sheet.Walk(&s.Root, func(it sheet.Item) {
		if text, ok := it.(*sheet.Text); ok && text.S == compare.Texts[2] {
			text.At.X++
		}
	})
	assert.Error(t, compare.Match(compare.SVG(t, svgOf(t, s)), whole, compare.Share))
	for i := range s.Root.Items {
		if g, ok := s.Root.Items[i].(*sheet.Group); ok && g.ID == "curves" {
			g.Items = g.Items[1:]
		}
	}
	assert.Error(t, compare.Match(whole, compare.SVG(t, svgOf(t, s)), compare.Share))
}

func TestChromiumDrawsWhatLibrsvgDraws(t *testing.T) {
	s := compare.Sample(4)
	file := svgOf(t, s)
	// Smoothing differs, and so does the place of a glyph by a part of a pixel.
	assert.NoError(t, compare.Match(compare.SVG(t, file), compare.Chromium(t, file, s.W, s.H), 0.003))
}
