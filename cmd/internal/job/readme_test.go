package job

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/layout/document"
	"flatwright/render/svg"
)

const (
	readme   = "../../../README.md"
	pictures = "examples/pictures/"
)

func source(t *testing.T, name string) Source {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("../../../examples", name))
	require.NoError(t, err)
	return Source{Name: name, Text: text}
}

// firstSVG is the first SVG file of a job.
func firstSVG(t *testing.T, r Result, err error) []byte {
	t.Helper()
	require.NoError(t, err)
	for _, f := range r.Files {
		if strings.HasSuffix(f.Name, ".svg") {
			return f.Body
		}
	}
	t.Fatal("there is no SVG")
	return nil
}

// The pictures of the README and of the guides come from the examples; -update draws
// them anew. Their words are outlines, since some programs that show a README read no face.
func TestThePicturesOfTheReadmeAreCurrent(t *testing.T) {
	ctx := context.Background()
	cardigan, jumper := source(t, "saltmarsh-cardigan.yaml"), source(t, "fellside-jumper.yaml")
	text := source(t, "tideline-shells.txt")
	got := map[string][]byte{}

	r, err := Draw(ctx, cardigan, DrawOptions{Size: "M", Labels: One, Format: "svg", Trim: true, Outlines: true})
	got["schematic.svg"] = firstSVG(t, r, err)
	r, err = Grade(ctx, jumper, GradeOptions{Nested: true, Draw: DrawOptions{Trim: true, Outlines: true}})
	got["nested.svg"] = firstSVG(t, r, err)
	r, err = Chart(ctx, nil, &text, ChartOptions{Format: "svg", Trim: true, Outlines: true})
	got["chart.svg"] = firstSVG(t, r, err)

	p, gs, _, err := work(ctx, cardigan)
	require.NoError(t, err)
	size, err := sizeNamed(p, "M")
	require.NoError(t, err)
	sheets, err := document.Handout(gs, content(p, gs, nil), document.Options{Size: size})
	require.NoError(t, err)
	var page bytes.Buffer
	require.NoError(t, svg.WriteOutlined(&page, sheets[0]))
	got["handout.svg"] = bytes.Clone(page.Bytes())
	sheets, err = document.Worksheet(gs, content(p, gs, nil), document.Options{Size: size}, false)
	require.NoError(t, err)
	page.Reset()
	require.NoError(t, svg.WriteOutlined(&page, sheets[0]))
	got["worksheet.svg"] = bytes.Clone(page.Bytes())

	told, err := os.ReadFile(readme)
	require.NoError(t, err)
	assert.Equal(t, 4, strings.Count(string(told), "("+pictures), "the README has four pictures")
	for name, body := range got {
		golden(t, filepath.Join("../../..", pictures, name), body)
	}
	kept, err := filepath.Glob(filepath.Join("../../..", pictures, "*"))
	require.NoError(t, err)
	assert.Len(t, kept, len(got), "every picture is drawn by this test")
}
