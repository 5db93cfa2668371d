package pdf_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/render/compare"
	"flatwright/render/pdf"
)

var faces = [3]fonts.Face{fonts.Regular, fonts.Bold, fonts.Italic}

func write(t require.TestingT, info pdf.Info, sheets ...*sheet.Sheet) []byte {
	var b bytes.Buffer
	require.NoError(t, pdf.Write(&b, sheets, info))
	return b.Bytes()
}

func onDisk(t *testing.T, file []byte) string {
	path := filepath.Join(t.TempDir(), "sheets.pdf")
	require.NoError(t, os.WriteFile(path, file, 0o600))
	return path
}

// plain is the file with its streams spelled out.
func plain(t *testing.T, file []byte) string {
	return string(compare.Run(t, nil, "qpdf", "--qdf", "--object-streams=disable", onDisk(t, file), "-"))
}

func check(t *testing.T, file []byte) {
	out := string(compare.Run(t, nil, "qpdf", "--check", onDisk(t, file)))
	assert.Contains(t, out, "No syntax or stream encoding errors found")
	assert.NotContains(t, out, "WARNING")
}

func twoSheets() []*sheet.Sheet {
	a, b := compare.Sample(1), compare.Sample(2)
	b.W, b.H, b.Title, b.Bookmark = 215.9, 279.4, "Second", "Zweite – ½ Größe"
	return []*sheet.Sheet{a, b}
}

func TestTheFileIsSound(t *testing.T) {
	check(t, write(t, pdf.Info{Creator: "Flatwright"}, twoSheets()...))
	check(t, write(t, pdf.Info{}, &sheet.Sheet{W: 50, H: 40}))
}

func TestTheSameSheetsMakeTheSameBytes(t *testing.T) {
	want := write(t, pdf.Info{}, twoSheets()...)
	for range 3 {
		assert.True(t, bytes.Equal(want, write(t, pdf.Info{}, twoSheets()...)))
	}
}

func TestTheDocumentSaysWhatItIs(t *testing.T) {
	file := write(t, pdf.Info{Title: "Łódź – ½", Author: "A. Tester", Subject: "Tests", Keywords: "k1, k2", Lang: "en-GB",
		Creator: "Flatwright 1", Date: time.Date(2021, 2, 3, 4, 5, 6, 0, time.UTC)}, twoSheets()...)
	out := string(compare.Run(t, nil, "pdfinfo", "-isodates", "-f", "1", "-l", "2", onDisk(t, file)))
	for field, value := range map[string]string{
		"Title": "Łódź – ½", "Author": "A. Tester", "Subject": "Tests", "Keywords": "k1, k2", "Creator": "Flatwright 1",
		"CreationDate": "2021-02-03T04:05:06Z", "ModDate": "2021-02-03T04:05:06Z", "Pages": "2", "JavaScript": "no",
		"Page    1 size": "595.28 x 841.89 pts (A4)", "Page    2 size": "612 x 792 pts (letter)",
	} {
		assert.Regexp(t, regexp.QuoteMeta(field)+`:\s+`+regexp.QuoteMeta(value)+"\n", out)
	}
	text := plain(t, file)
	assert.Contains(t, text, "/Lang (en-GB)")
	assert.Contains(t, text, "/PrintScaling /None")
	assert.Contains(t, text, "/DisplayDocTitle true")
}

func TestAnEmptyEntryIsTheFirstSheets(t *testing.T) {
	out := string(compare.Run(t, nil, "pdfinfo", onDisk(t, write(t, pdf.Info{}, twoSheets()...))))
	assert.Regexp(t, `Title:\s+Sample & test\n`, out)
	assert.Regexp(t, `CreationDate:\s+Sat Jan  1`, out)
	assert.NotContains(t, out, "Subject")
}

func TestEachSheetHasABookmarkAtItsTop(t *testing.T) {
	for _, sheets := range [][]*sheet.Sheet{
		twoSheets(),
		{{W: 100, H: 50, Bookmark: "Sample 1"}, {W: 50, H: 100}, {W: 40, H: 70, Bookmark: "Zweite – ½ Größe"}}, // no face at all
	} {
		var doc struct {
			Outlines []struct {
				Title string
				Page  int `json:"destpageposfrom1"`
				Dest  []any
			}
		}
		out := compare.Run(t, nil, "qpdf", "--json", "--json-key=outlines", onDisk(t, write(t, pdf.Info{}, sheets...)))
		require.NoError(t, json.Unmarshal(out, &doc))
		require.Len(t, doc.Outlines, 2)
		assert.Equal(t, "Sample 1", doc.Outlines[0].Title)
		assert.Equal(t, "Zweite – ½ Größe", doc.Outlines[1].Title)
		for i, n := range []int{1, len(sheets)} {
			assert.Equal(t, n, doc.Outlines[i].Page)
			assert.InDelta(t, sheets[n-1].H*72/25.4, doc.Outlines[i].Dest[3], 0.01)
		}
	}
}

func TestTextCanBeTakenOutAgain(t *testing.T) {
	sheets := []*sheet.Sheet{{W: 210, H: 297}}
	for i, s := range compare.Texts {
		sheets[0].Root.Items = append(sheets[0].Root.Items, &sheet.Text{S: s, At: sheet.Point{X: 10, Y: 10 + float64(i)*8},
			Size: 3, Ink: sheet.Black, Face: faces[i%3]})
	}
	out := string(compare.Run(t, nil, "pdftotext", "-layout", onDisk(t, write(t, pdf.Info{}, sheets...)), "-"))
	got := strings.Fields(out)
	for i, s := range compare.Texts {
		for _, word := range strings.Fields(fonts.Shown(faces[i%3], s)) {
			assert.Contains(t, got, word)
		}
	}
}

func TestEveryFaceIsEmbedded(t *testing.T) {
	file := write(t, pdf.Info{}, twoSheets()...)
	lines := strings.Split(strings.TrimSpace(string(compare.Run(t, nil, "pdffonts", onDisk(t, file)))), "\n")[2:]
	require.Len(t, lines, 3)
	for _, line := range lines {
		assert.Regexp(t, `CID TrueType\s+Identity-H\s+yes`, line)
	}
	assert.Less(t, len(file), 120_000, "three whole faces would take 700 kB")
}

// An end-to-end measure: lines of known length, read from the page's content and
// brought from points (1/72 in, ISO 32000-1) back to millimetres.
func TestALineIsAsLongOnPaperAsItSays(t *testing.T) {
	s := &sheet.Sheet{W: 420, H: 297}
	lengths := []float64{10, 100, 123.45, 254, 400}
	for i, l := range lengths {
		y := 10 + float64(i)*10.33
		s.Root.Items = append(s.Root.Items, &sheet.Path{Style: sheet.Style{Width: 0.5, Stroke: sheet.Black}, Segs: []sheet.Seg{
			{Verb: sheet.Move, P: [3]sheet.Point{{X: 7.77, Y: y}}}, {Verb: sheet.Line, P: [3]sheet.Point{{X: 7.77 + l, Y: y}}}}})
	}
	found := regexp.MustCompile(`(?m)^([\d.]+) ([\d.]+) m\n([\d.]+) ([\d.]+) l\n?`).FindAllStringSubmatch(plain(t, write(t, pdf.Info{}, s)), -1)
	require.Len(t, found, len(lengths))
	for i, f := range found {
		var v [4]float64
		for j := range v {
			v[j], _ = strconv.ParseFloat(f[j+1], 64)
		}
		assert.InDelta(t, lengths[i], math.Hypot(v[2]-v[0], v[3]-v[1])*25.4/72, 0.01)
		assert.InDelta(t, 7.77, v[0]*25.4/72, 0.01)
		assert.InDelta(t, 10+float64(i)*10.33, 297-v[1]*25.4/72, 0.01)
	}
	assert.Regexp(t, `\n1 J\n`, plain(t, write(t, pdf.Info{}, s)), "round caps")
	assert.Regexp(t, `\n1 j\n`, plain(t, write(t, pdf.Info{}, s)), "round joins")
}

// Poppler's own measure of where a text stands: box of each word in points.
func TestTextIsAsWideOnPaperAsItWasMeasured(t *testing.T) {
	for f, text := range map[fonts.Face]string{fonts.Regular: "AVATAR1111", fonts.Bold: "ToLTYo17", fonts.Italic: "ffiWAVE71"} {
		s := &sheet.Sheet{W: 210, H: 100, Root: sheet.Group{Items: []sheet.Item{
			&sheet.Text{S: text, At: sheet.Point{X: 20, Y: 50}, Size: 20, Ink: sheet.Black, Face: f}}}}
		out := string(compare.Run(t, nil, "pdftotext", "-bbox", onDisk(t, write(t, pdf.Info{}, s)), "-"))
		box := regexp.MustCompile(`<word xMin="([\d.]+)" yMin="[\d.]+" xMax="([\d.]+)" yMax="[\d.]+">` + text + `<`).FindStringSubmatch(out)
		require.NotNil(t, box, out)
		x0, _ := strconv.ParseFloat(box[1], 64)
		x1, _ := strconv.ParseFloat(box[2], 64)
		assert.InDelta(t, 20, x0*25.4/72, 0.01)
		assert.InDelta(t, fonts.Width(f, 20, text), (x1-x0)*25.4/72, 0.03)
	}
}

func TestNoTextBecomesPDF(t *testing.T) {
	for _, s := range []string{`) >> endobj`, `\)`, `(((`, "en) /OpenAction << /S /JavaScript /JS (1) >> (", "\r\n\x00\x01", "𝒳🧶\xff\xc3", "\xe0", "\U0010ffff",
		"\u202e", "endstream endobj", "%PDF"} {
		file := write(t, pdf.Info{Title: s, Author: s, Subject: s, Keywords: s, Lang: s, Creator: s}, &sheet.Sheet{
			W: 50, H: 40, Title: s, Bookmark: s, Root: sheet.Group{Link: "https://example.org/" + s, Items: []sheet.Item{
				&sheet.Text{S: s, At: sheet.Point{X: 5, Y: 5}, Size: 3, Ink: sheet.Black, Angle: 45}}}})
		check(t, file)
		assert.NotContains(t, plain(t, file), "/S /JavaScript", "%q", s)
	}
}

func TestAnyTextMakesADocument(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.OneOf(rapid.String(), rapid.Map(rapid.SliceOfN(rapid.Byte(), 0, 12), func(b []byte) string { return string(b) })).Draw(t, "s")
		write(t, pdf.Info{Title: s, Author: s, Subject: s, Keywords: s, Lang: s, Creator: s}, &sheet.Sheet{
			W: 50, H: 40, Bookmark: s, Root: sheet.Group{ID: s, Link: "#" + s, Items: []sheet.Item{
				&sheet.Text{S: s, At: sheet.Point{X: 5, Y: 5}, Size: 3, Ink: sheet.Black}}}})
	})
}

func TestLinksLeadWhereTheySay(t *testing.T) {
	text := plain(t, write(t, pdf.Info{}, compare.Sample(1)))
	assert.Equal(t, 2, strings.Count(text, "/Subtype /Link"))
	assert.Contains(t, text, "/URI (https://example.org/?a=1&b=2)")
	assert.Regexp(t, `/Dest \[\s*\d+ 0 R\s*/XYZ\s+0\s`, text)
	bad := &sheet.Sheet{W: 50, H: 40, Root: sheet.Group{Link: "javascript:alert(1)", Items: []sheet.Item{
		&sheet.Text{S: "x", At: sheet.Point{X: 5, Y: 5}, Size: 3, Ink: sheet.Black}}}}
	assert.NotContains(t, plain(t, write(t, pdf.Info{}, bad)), "/Link")
}

func TestWhatCannotBeWrittenIsRefused(t *testing.T) {
	assert.ErrorIs(t, pdf.Write(io.Discard, nil, pdf.Info{}), pdf.ErrNoSheets)
	nan := &sheet.Sheet{W: 50, H: 40, Root: sheet.Group{Items: []sheet.Item{&sheet.Path{
		Segs: []sheet.Seg{{Verb: sheet.Move, P: [3]sheet.Point{{X: math.NaN()}}}}}}}}
	assert.ErrorIs(t, pdf.Write(io.Discard, []*sheet.Sheet{nan}, pdf.Info{}), sheet.ErrNotFinite)
}

var errFull = errors.New("disk full")

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestAnErrorOfTheWriterComesBack(t *testing.T) {
	assert.ErrorIs(t, pdf.Write(full{}, []*sheet.Sheet{{W: 50, H: 40}}, pdf.Info{}), errFull)
}

func BenchmarkWriteTenPagesOf400(b *testing.B) {
	var sheets []*sheet.Sheet
	for range 10 {
		sheets = append(sheets, compare.Busy(400))
	}
	b.ReportAllocs()
	for b.Loop() {
		if err := pdf.Write(io.Discard, sheets, pdf.Info{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWriteOneWord(b *testing.B) {
	s := []*sheet.Sheet{{W: 50, H: 40, Root: sheet.Group{Items: []sheet.Item{&sheet.Text{S: "x", Size: 3, Ink: sheet.Black}}}}}
	b.ReportAllocs()
	for b.Loop() {
		if err := pdf.Write(io.Discard, s, pdf.Info{}); err != nil {
			b.Fatal(err)
		}
	}
}

func TestManyMayWriteAtOnce(t *testing.T) {
	want := write(t, pdf.Info{}, twoSheets()...)
	var wg sync.WaitGroup
	for range 4 {
		wg.Go(func() {
			assert.True(t, bytes.Equal(want, write(t, pdf.Info{}, twoSheets()...)))
		})
	}
	wg.Wait()
}

func TestOutlinedWordsNeedNoFace(t *testing.T) {
	s := &sheet.Sheet{W: 60, H: 20}
	s.Root.Items = []sheet.Item{&sheet.Text{S: "Hob 12½", At: sheet.Point{X: 5, Y: 10}, Size: 4, Ink: sheet.Black, Width: 20}}
	for outlined, faces := range map[bool]int{false: 1, true: 0} {
		var b bytes.Buffer
		require.NoError(t, pdf.Write(&b, []*sheet.Sheet{s}, pdf.Info{Outlined: outlined}))
		assert.Equal(t, faces, bytes.Count(b.Bytes(), []byte("/FontFile2")))
	}
}
