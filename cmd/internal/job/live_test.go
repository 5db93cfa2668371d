package job

import (
	"context"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestLiveGivesTheDrawingThatDrawWrites(t *testing.T) {
	for _, src := range sources(t, "../../../examples/*.yaml") {
		look, err := Live(context.Background(), src, DrawOptions{}, nil)
		require.NoError(t, err)
		require.NotEmpty(t, look.Pages)
		assert.Equal(t, look.Sizes.Names[look.Sample], look.Drawing, "the sample is drawn first")
		assert.NotEmpty(t, look.Table.Groups)
		for _, size := range look.Sizes.Names {
			one, err := Live(context.Background(), src, DrawOptions{Size: size}, nil)
			require.NoError(t, err)
			file, err := Draw(context.Background(), src, DrawOptions{Size: size, Labels: One, Format: "svg"})
			require.NoError(t, err)
			require.Len(t, one.Pages, len(file.Files))
			faces := regexp.MustCompile(`(?s)<style>.*?</style>`)
			assert.InDelta(t, len(faces.ReplaceAll(file.Files[0].Body, nil)), len(one.Pages[0]), 3000, "but for declaration, prefixes and faces")
		}
	}
}

func TestLiveChecksTheWrittenRowsOfTheFileBeside(t *testing.T) {
	src := sources(t, "../../../examples/pebble-hat.yaml")[0]
	src.Text = append(src.Text, "\nrows file: rows.txt\n"...)
	asked := ""
	look, err := Live(context.Background(), src, DrawOptions{}, func(name string) *Source {
		asked = name
		return &Source{Name: name, Text: []byte("Row 1: ch 5, sc in 2nd ch from hook and in each ch across. (9 sc)\n")}
	})
	require.NoError(t, err)
	assert.Equal(t, "rows.txt", asked)
	require.NotEmpty(t, look.Findings, "five chains do not make nine stitches")
	assert.Equal(t, "rows.txt", look.Findings[0].Pos.File)
}

// Every name of an edge that is offered is one that a join takes, in every size.
func TestWhatIsOfferedByNameIsThere(t *testing.T) {
	for _, src := range sources(t, "../../../examples/*.yaml") {
		look, err := Live(context.Background(), src, DrawOptions{}, nil)
		require.NoError(t, err)
		_, gs, _, err := work(context.Background(), src)
		require.NoError(t, err)
		require.NotEmpty(t, look.Names["edge"])
		for _, name := range look.Names["edge"] {
			for _, g := range gs {
				m, edges := g.EdgesOf(name)
				require.NotNil(t, m, name)
				assert.NotEmpty(t, edges, "%s: %s", src.Name, name)
			}
		}
		if strings.Contains(src.Name, "saltmarsh") {
			assert.Subset(t, look.Names["edge"], []string{"Sleeve sleeve top", "Body armhole", "Body Right front shoulder", "Body right front edge", "Body underarm"})
			assert.Equal(t, []string{"fabric", "rib", "band"}, look.Names["gauge"])
			assert.Equal(t, []string{"Body", "Sleeve", "Front and neck band"}, look.Names["piece"])
			assert.Subset(t, look.Names["measurement"], []string{"bust", "upper arm", "length"})
		}
	}
}

func BenchmarkLive(b *testing.B) {
	src := largest(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Live(context.Background(), src, DrawOptions{}, nil); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkGlance is what a person waits for who types: the drawing alone, of one size.
func BenchmarkGlance(b *testing.B) {
	src := largest(b)
	all, err := Live(context.Background(), src, DrawOptions{}, nil)
	require.NoError(b, err)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Glance(context.Background(), src, DrawOptions{Size: all.Drawing}, all.Scales, all.Letters); err != nil {
			b.Fatal(err)
		}
	}
}
