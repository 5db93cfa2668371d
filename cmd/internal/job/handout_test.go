package job_test

import (
	"bytes"
	"context"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/cmd/internal/job"
	"flatwright/layout/place"
	"flatwright/render/compare"
)

func wren(t testing.TB) job.Source {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", "wren.yaml"))
	require.NoError(t, err)
	return job.Source{Name: "wren.yaml", Text: text}
}

func handout(t testing.TB, o job.HandoutOptions) []string {
	t.Helper()
	r, err := job.Handout(context.Background(), wren(t), o)
	require.NoError(t, err)
	var files []string
	for _, f := range r.Files {
		file := filepath.Join(t.TempDir(), f.Name)
		require.NoError(t, os.WriteFile(file, f.Body, 0o600))
		files = append(files, file)
	}
	return files
}

// plain is a PDF with its streams unpacked (qpdf).
func plain(t *testing.T, file string) string {
	t.Helper()
	return string(compare.Run(t, nil, "qpdf", "--qdf", "--object-streams=disable", file, "-"))
}

var closed = regexp.MustCompile(`(?m)^([\d.]+) ([\d.]+) m\n([\d.]+) ([\d.]+) l\n([\d.]+) ([\d.]+) l\n([\d.]+) ([\d.]+) l\nh\n`)

// PDF's unit is 1/72 in (ISO 32000-1, 8.3.2.3).
func TestTheTestSquareIs50MMToAHundredthInThePDF(t *testing.T) {
	for _, o := range []job.HandoutOptions{{}, {Paper: place.Letter}, {Large: true}, {Little: true}} {
		o.Kind, o.Size = job.AtLifeSize, "4 yrs"
		text := plain(t, handout(t, o)[0])
		squares := 0
		for _, m := range closed.FindAllStringSubmatch(text, -1) {
			var v [8]float64
			for i := range v {
				v[i], _ = strconv.ParseFloat(m[i+1], 64)
				v[i] *= 25.4 / 72
			}
			side := func(a, b int) float64 { return math.Hypot(v[2*a]-v[2*b], v[2*a+1]-v[2*b+1]) }
			if math.Abs(side(0, 1)-50) > 1 || math.Abs(side(1, 2)-50) > 1 {
				continue
			}
			squares++
			for i := range 4 {
				assert.InDelta(t, 50, side(i, (i+1)%4), 0.01)
			}
			assert.InDelta(t, 50*math.Sqrt2, side(0, 2), 0.01, "its corners are square")
		}
		assert.Equal(t, 1, squares)
		assert.Contains(t, text, "/PrintScaling /None")
	}
}

func TestHandoutsAreSoundAndHavePagesHeadsAndBookmarks(t *testing.T) {
	for name, o := range map[string]job.HandoutOptions{
		"all": {}, "size": {Size: "4 yrs"}, "large": {Size: "4 yrs", Alone: true, Large: true}, "letter": {Paper: place.Letter, Little: true},
		"worksheet": {Size: "4 yrs", Kind: job.ForClass}, "life": {Size: "4 yrs", Kind: job.AtLifeSize},
	} {
		for _, file := range handout(t, o) {
			compare.Run(t, nil, "qpdf", "--check", file)
			out := string(compare.Run(t, nil, "pdftotext", "-layout", file, "-"))
			pages := strings.Split(strings.TrimSuffix(out, "\f"), "\f")
			for i, p := range pages {
				assert.Regexp(t, `page `+strconv.Itoa(i+1)+` of `+strconv.Itoa(len(pages))+`\b`, p, name)
				assert.Contains(t, p, "Wren Waistcoat", name)
			}
			text := plain(t, file)
			assert.Contains(t, text, "/Outlines", name)
			assert.GreaterOrEqual(t, strings.Count(text, "/XYZ"), 3, name)
		}
	}
}

func TestAHandoutSaysAllThatAPatternPageMust(t *testing.T) {
	out := string(compare.Run(t, nil, "pdftotext", "-layout", handout(t, job.HandoutOptions{Size: "4 yrs"})[0], "-"))
	for _, want := range []string{"To fit", "Finished size", "Ease", "Sample", "size 4 yrs", "16 sts and 12 rows over 10 cm / 4 in in htr (half treble crochet)", "hook of 4 mm",
		"blocked fabric", "buttons of 15 mm: 4 (4, 5)", "Special stitches", "Moss stitch", "Finishing", "Care", "Wash by hand", "Edition 2, 14 March 2026",
		"row 26 had 34 stitches", "EN 14682", "EN 71-1", "under three", "iron", "safety rules of the country", "Abbreviations, in UK terms", "Room for notes",
		"yours is 4 yrs", "Instructions"} {
		assert.Contains(t, out, want)
	}
}

func TestAHandoutOfOneSizeHasNoOtherNumbers(t *testing.T) {
	out := string(compare.Run(t, nil, "pdftotext", "-layout", handout(t, job.HandoutOptions{Size: "4 yrs", Alone: true})[0], "-"))
	for _, other := range []string{"94", "110", "57.5", "67.5", "2 yrs", "33.5"} {
		assert.NotRegexp(t, `\b`+regexp.QuoteMeta(other)+`\b`, out)
	}
	assert.Contains(t, out, "Ch 102.")
}

func TestLittleInkTakesLess(t *testing.T) {
	text, err := os.ReadFile("../../../examples/saltmarsh-cardigan.yaml") // with ribs
	require.NoError(t, err)
	ink := func(o job.HandoutOptions) float64 {
		r, err := job.Handout(context.Background(), job.Source{Name: "x.yaml", Text: text}, o)
		require.NoError(t, err)
		file := filepath.Join(t.TempDir(), "x.pdf")
		require.NoError(t, os.WriteFile(file, r.Files[0].Body, 0o600))
		img := compare.Run(t, nil, "pdftoppm", "-r", "200", "-gray", file)
		dark := 0.0
		for len(img) > 0 { // PGM: a head of three lines, then a byte a pixel
			head := strings.SplitN(string(img[:min(len(img), 64)]), "\n", 4)
			require.Len(t, head, 4)
			var w, h int
			for i, f := range strings.Fields(head[1]) {
				*[]*int{&w, &h}[i], _ = strconv.Atoi(f)
			}
			from := len(head[0]) + len(head[1]) + len(head[2]) + 3
			for _, v := range img[from : from+w*h] {
				dark += float64(255-v) / 255
			}
			img = img[from+w*h:]
		}
		return dark
	}
	usual, little := ink(job.HandoutOptions{Size: "M"}), ink(job.HandoutOptions{Size: "M", Little: true})
	assert.Less(t, little, 0.95*usual)
	t.Logf("%.0f and %.0f black pixels at 200 dpi", usual, little)
}

func TestWhatAHandoutCannotBeIsTold(t *testing.T) {
	var option *job.OptionError
	for _, o := range []job.HandoutOptions{{Kind: job.AtLifeSize}, {Alone: true}, {Size: "9 yrs"}, {Kind: "poster", Size: "4 yrs"}} {
		_, err := job.Handout(context.Background(), wren(t), o)
		assert.ErrorAs(t, err, &option, "%+v", o)
	}
	_, err := job.Handout(context.Background(), job.Source{Name: "x.yaml", Text: []byte("pattern: [")}, job.HandoutOptions{})
	assert.ErrorIs(t, err, job.ErrUnreadable)
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	_, err = job.Handout(ended, wren(t), job.HandoutOptions{})
	assert.ErrorIs(t, err, context.Canceled)
	_, err = job.Page(ended, wren(t), job.PageOptions{})
	assert.ErrorIs(t, err, context.Canceled)
}

func TestPageAndHandoutGiveTheSameBytesEachTime(t *testing.T) {
	for range 2 {
		a, err := job.Page(context.Background(), wren(t), job.PageOptions{})
		require.NoError(t, err)
		b, err := job.Page(context.Background(), wren(t), job.PageOptions{})
		require.NoError(t, err)
		assert.Equal(t, a.Files, b.Files)
		assert.Equal(t, "wren-waistcoat-page.html", a.Files[0].Name)
	}
	a, err := job.Handout(context.Background(), wren(t), job.HandoutOptions{})
	require.NoError(t, err)
	b, err := job.Handout(context.Background(), wren(t), job.HandoutOptions{})
	require.NoError(t, err)
	assert.Equal(t, a.Files, b.Files)
}

func TestAChartFollowsTheSize(t *testing.T) {
	r, err := job.Page(context.Background(), wren(t), job.PageOptions{Charts: []string{"body"}})
	require.NoError(t, err)
	page := string(r.Files[0].Body)
	// 92, 100 and 108 stitches, of which a chart shows as many in each size and leaves out the others
	assert.Equal(t, 4, strings.Count(page, `role="img" aria-label="Body, `)-4, "a chart for each size and one for all, beside their schematics")
	for _, n := range []string{"61", "69", "77"} {
		assert.Contains(t, page, "shortened at the break by "+n+" stitches")
	}
	out := string(compare.Run(t, nil, "pdftotext", "-layout", handout(t, job.HandoutOptions{Size: "6 yrs", Charts: []string{"Body"}})[0], "-"))
	assert.Contains(t, out, "Chart: Body, size 6 yrs")
	assert.Contains(t, out, "by 77 stitches")
	var option *job.OptionError
	_, err = job.Page(context.Background(), wren(t), job.PageOptions{Charts: []string{"Sleeve"}})
	require.ErrorAs(t, err, &option)
	assert.Contains(t, err.Error(), "they have Body")
}

func TestRowsWithoutHeadingsAreChartedByAnyName(t *testing.T) {
	src := wren(t)
	at := bytes.Index(src.Text, []byte("\nrows: |"))
	src.Text = append(src.Text[:at:at], "\nrows: |\n  Row 1: Ch 11. Sc in 2nd ch from hook and in each ch across. (10 sc)\n"...)
	r, err := job.Page(context.Background(), src, job.PageOptions{Charts: []string{"Coaster"}})
	require.NoError(t, err)
	assert.Contains(t, string(r.Files[0].Body), `role="img" aria-label="Coaster, `)
}

func BenchmarkPageOfNineSizes(b *testing.B) {
	text, err := os.ReadFile("../../../examples/saltmarsh-cardigan.yaml")
	require.NoError(b, err)
	src := job.Source{Name: "saltmarsh-cardigan.yaml", Text: text}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := job.Page(context.Background(), src, job.PageOptions{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkHandoutOfNineSizes(b *testing.B) {
	text, err := os.ReadFile("../../../examples/saltmarsh-cardigan.yaml")
	require.NoError(b, err)
	src := job.Source{Name: "saltmarsh-cardigan.yaml", Text: text}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := job.Handout(context.Background(), src, job.HandoutOptions{Size: "M"}); err != nil {
			b.Fatal(err)
		}
	}
}
