package job

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"runtime"
	"runtime/metrics"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	renderer "github.com/yuin/goldmark/renderer/html"
	parser "golang.org/x/net/html"

	"flatwright/cmd/internal/files"
	"flatwright/examples"
	"flatwright/render/compare"
	"flatwright/schematic/finding"
	"flatwright/schematic/long"
)

// The bounds that no step of any input may go beyond, but for what is written: a counter of work, which is
// what is allotted in all, a second of a processor's at the most; and what is on the heap at once.
const (
	mostWork = 700 << 20
	mostHeap = 200 << 20
	perByte  = 160 // of what is written, by both writers of a drawing: work; of the heap a twentieth of it
)

const hostileFolder = "../../../testdata/hostile"

// The inputs lie in testdata for people to look at and to try on other programs; -update
// writes them anew. Those of many kilobytes are made when they are needed.
func TestTheHostileInputsAreThoseThatAreKept(t *testing.T) {
	kept := map[string]bool{"outcomes.txt": true}
	for _, in := range hostileInputs(t) {
		require.False(t, kept[in.name], "%s twice", in.name)
		require.NoError(t, files.CheckName(in.name))
		if len(in.body) > mostKept {
			continue
		}
		kept[in.name] = true
		file := filepath.Join(hostileFolder, in.name)
		if *update {
			require.NoError(t, os.WriteFile(file, in.body, 0o644))
		}
		there, err := os.ReadFile(file)
		require.NoError(t, err)
		assert.True(t, bytes.Equal(in.body, there), in.name)
	}
	assert.GreaterOrEqual(t, len(kept), 200)
	all, err := os.ReadDir(hostileFolder)
	require.NoError(t, err)
	for _, e := range all {
		assert.True(t, kept[e.Name()], "%s is no input any more", e.Name())
	}
}

// Every hostile input goes the whole way to everything that can be made of it. None makes it
// panic, or takes more time or memory than the bounds; each is refused with its place, or
// what is made of it is sound and runs nothing. What becomes of each is told in outcomes.txt.
func TestHostileInputsAreRefusedOrHarmless(t *testing.T) {
	long.Test(t)
	var outcomes strings.Builder
	var most heaviest
	_, err := exec.LookPath("qpdf")
	require.True(t, err == nil || !compare.Required(), "this test needs qpdf")
	all := hostileInputs(t)
	began := time.Now()
	for _, in := range all {
		h := &hostileRun{t: t, in: in, qpdf: err == nil, most: &most}
		h.within(func() { h.outcome = h.run() })
		fmt.Fprintf(&outcomes, "%s: %s\n", in.name, h.outcome)
	}
	t.Logf("%d inputs in %.0f s; %s", len(all), time.Since(began).Seconds(), &most)
	golden(t, filepath.Join(hostileFolder, "outcomes.txt"), []byte(outcomes.String()))
}

// heaviest are the steps that took most.
type heaviest struct {
	time              time.Duration
	work, heap        uint64
	slow, worked, big string
}

func (m *heaviest) String() string {
	return fmt.Sprintf("slowest %s, %.1f s; most work %s, %d MiB; largest %s, %d MiB", m.slow, m.time.Seconds(), m.worked, m.work>>20, m.big, m.heap>>20)
}

func (m *heaviest) note(what string, took time.Duration, work, heap uint64) {
	if took > m.time {
		m.time, m.slow = took, what
	}
	if work > m.work {
		m.work, m.worked = work, what
	}
	if heap > m.heap {
		m.heap, m.big = heap, what
	}
}

type hostileRun struct {
	t       *testing.T
	in      hostileInput
	qpdf    bool
	most    *heaviest
	outcome string
}

// within runs f, which may not panic.
func (h *hostileRun) within(f func()) {
	defer func() { require.Nil(h.t, recover(), h.in.name) }()
	f()
}

// heapNow is what is on the heap, and what was ever put there.
func heapNow() (now, ever uint64) {
	s := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}, {Name: "/gc/heap/allocs:bytes"}}
	metrics.Read(s)
	return s[0].Value.Uint64(), s[1].Value.Uint64()
}

// step holds one thing that is made of the input to the bounds.
func (h *hostileRun) step(what string, f func() (Result, error)) (Result, error) {
	runtime.GC()
	before, ever := heapNow()
	stop, peaked := make(chan bool), make(chan uint64)
	go func() {
		peak := before
		tick := time.NewTicker(3 * time.Millisecond)
		defer tick.Stop()
		for {
			select {
			case <-stop:
				peaked <- peak
				return
			case <-tick.C:
				now, _ := heapNow()
				peak = max(peak, now)
			}
		}
	}()
	began := time.Now()
	r, err := f()
	took := time.Since(began)
	stop <- true
	peak := <-peaked - before
	_, after := heapNow()
	written := uint64(0)
	for _, f := range r.Files {
		written += uint64(len(f.Body))
	}
	what = h.in.name + ": " + what
	work := after - ever
	h.most.note(what, took, work, peak)
	if work > mostWork+perByte*written {
		assert.Failf(h.t, "too much work", "%s: %d MiB in %.1f s for %d bytes", what, work>>20, took.Seconds(), written)
	}
	if peak > mostHeap+perByte/20*written {
		assert.Failf(h.t, "too much memory", "%s: %d MiB at once for %d bytes", what, peak>>20, written)
	}
	return r, err
}

// run makes all that can be made of the input, and says in a line what became of it.
func (h *hostileRun) run() string {
	ctx := context.Background()
	src := Source{h.in.name, h.in.body}
	switch {
	case strings.HasSuffix(h.in.name, ".yaml"):
		return h.pattern(ctx, src)
	case strings.HasSuffix(h.in.name, ".rows.txt"):
		return h.rows(ctx, src)
	}
	base := Source{"plain.yaml", []byte(strings.Replace(plainPattern("back", "      - even: 10 rows\n", ""), "pieces:", "grading:\n  ease: 3 cm\n  back: 60 (66, 74) sts\npieces:", 1))}
	o := GradeOptions{From: src}
	if strings.HasSuffix(h.in.name, ".bodies.csv") {
		o = GradeOptions{Bodies: src}
	}
	r, err := h.step("sheet", func() (Result, error) { return Grade(ctx, base, o) })
	if refused := h.told(r.Findings, err, src); refused != "" {
		return refused
	}
	if err != nil {
		h.harmlessText(err.Error(), true)
		return "refused"
	}
	h.sound(r.Files)
	text := string(r.Files[0].Body)
	if strings.HasSuffix(h.in.name, ".bodies.csv") {
		text = strings.Replace(string(base.Text), "grading:", text+"grading:", 1)
	}
	again, err := Check(ctx, Source{"again.yaml", []byte(text)})
	require.NoError(h.t, err, "%s: what is written can be read again: %v\n%s", h.in.name, again.Findings, text)
	return "read"
}

func (h *hostileRun) pattern(ctx context.Context, src Source) string {
	r, err := h.step("check", func() (Result, error) { return Check(ctx, src) })
	if refused := h.told(r.Findings, err, src); refused != "" {
		h.refusedBy(ctx, src)
		return refused
	}
	var says []string
	for _, m := range []struct {
		what string
		make func() (Result, error)
	}{
		{"drawings", func() (Result, error) { return Draw(ctx, src, DrawOptions{Creator: "Flatwright"}) }},
		{"letters", func() (Result, error) { return Draw(ctx, src, DrawOptions{Labels: Letters}) }},
		{"nested", func() (Result, error) {
			return Grade(ctx, src, GradeOptions{Nested: true, Draw: DrawOptions{Format: "svg"}})
		}},
		{"table", func() (Result, error) { return Table(ctx, src, TableOptions{}) }},
		{"table in Markdown", func() (Result, error) { return Table(ctx, src, TableOptions{Format: "markdown"}) }},
		{"table in CSV", func() (Result, error) { return Table(ctx, src, TableOptions{Format: "csv"}) }},
		{"page", func() (Result, error) { return Page(ctx, src, PageOptions{}) }},
		{"snippet", func() (Result, error) { return Page(ctx, src, PageOptions{Snippet: true}) }},
		{"handout", func() (Result, error) { return Handout(ctx, src, HandoutOptions{}) }},
		{"rows", func() (Result, error) { return Rows(ctx, src, RowsOptions{}) }},
		{"charts", func() (Result, error) { return Chart(ctx, &src, nil, ChartOptions{}) }},
		{"grading", func() (Result, error) { return Grade(ctx, src, GradeOptions{}) }},
		{"grading in Markdown", func() (Result, error) { return Grade(ctx, src, GradeOptions{Format: "markdown"}) }},
		{"grading in CSV", func() (Result, error) { return Grade(ctx, src, GradeOptions{Format: "csv"}) }},
		{"workbook", func() (Result, error) { return Grade(ctx, src, GradeOptions{Format: "xlsx"}) }},
		{"filled", func() (Result, error) { return Grade(ctx, src, GradeOptions{Fill: true}) }},
		{"yarn", func() (Result, error) { return Yarn(ctx, src, YarnOptions{Explain: true}) }},
	} {
		r, err := h.step(m.what, m.make)
		require.NotEmpty(h.t, r.Sizes)
		if err != nil {
			require.Empty(h.t, r.Files, "%s: %s beside an error", h.in.name, m.what)
			h.harmlessText(err.Error(), true)
			says = append(says, "no "+m.what)
			continue
		}
		require.NotEmpty(h.t, r.Files, "%s: %s", h.in.name, m.what)
		h.sound(r.Files)
	}
	l, err := Live(ctx, src, DrawOptions{}, func(string) *Source { return nil })
	if err == nil {
		for _, page := range l.Pages {
			h.picture(page)
		}
	}
	h.checkRows(ctx, &src, nil)
	return strings.Join(append([]string{"made"}, says...), ", ")
}

// refusedBy holds that a pattern that can't be read is refused by all alike.
func (h *hostileRun) refusedBy(ctx context.Context, src Source) {
	r, err := Draw(ctx, src, DrawOptions{})
	require.ErrorIs(h.t, err, ErrUnreadable)
	require.Empty(h.t, r.Files)
	_, err = Live(ctx, src, DrawOptions{}, nil)
	require.ErrorIs(h.t, err, ErrUnreadable)
}

func (h *hostileRun) rows(ctx context.Context, src Source) string {
	said := h.checkRows(ctx, nil, &src)
	for _, to := range []string{"US", "UK"} {
		b, err := Words(src, map[string]string{"US": "UK", "UK": "US"}[to], to)
		require.NoError(h.t, err)
		require.True(h.t, utf8.Valid(b), "a text in another encoding comes back in UTF-8")
	}
	Abbreviations(src)
	r, err := h.step("charts", func() (Result, error) { return Chart(ctx, nil, &src, ChartOptions{}) })
	if err != nil {
		require.Empty(h.t, r.Files)
		return said + ", no charts"
	}
	h.sound(r.Files)
	return said + ", charts"
}

func (h *hostileRun) checkRows(ctx context.Context, src, text *Source) string {
	var r RowsResult
	_, err := h.step("rows checked", func() (Result, error) {
		var err error
		r, err = CheckRows(ctx, src, text)
		return r.Result, err
	})
	require.NoError(h.t, err)
	of := text
	if of == nil {
		of = src
	}
	h.placed(r.Findings, *of)
	report, err := r.Markdown()
	require.NoError(h.t, err)
	h.markdown(report)
	said := "read"
	if len(r.Findings) > 0 {
		f := r.Findings[0]
		said = fmt.Sprintf("read with findings, the first %d:%d %s", f.Pos.Line, f.Pos.Col, f.Kind)
	}
	return said
}

// told is the first error of a refused input; "" if it was not refused.
func (h *hostileRun) told(list finding.List, err error, src Source) string {
	h.placed(list, src)
	if !errors.Is(err, ErrUnreadable) {
		return ""
	}
	require.True(h.t, list.Errors(), "%s is refused and no error says why", h.in.name)
	i := slices.IndexFunc(list, func(f finding.Finding) bool { return f.Severity == finding.Error })
	return fmt.Sprintf("refused, %d:%d %s", list[i].Pos.Line, list[i].Pos.Col, list[i].Kind)
}

// placed holds that findings have a place in the file and that no way of telling them
// does anything to a terminal.
func (h *hostileRun) placed(list finding.List, src Source) {
	lines := finding.Lines(src.Text)
	for _, f := range list {
		require.True(h.t, finding.Known(f.Kind), f.Kind)
		require.NotEmpty(h.t, f.Message, f.Kind)
		require.LessOrEqual(h.t, len(f.Message), 3000, h.in.name)
		if f.Pos.File == src.Name && !strings.HasSuffix(src.Name, ".xlsx") {
			require.LessOrEqual(h.t, f.Pos.Line, len(lines)+1, "%s: %v", h.in.name, f)
		}
		whole := map[string]bool{"file/size": true, "file/encoding": true, "file/empty": true, "file/many": true, "file/sheet": true, "file/bodies": true}
		if f.Severity == finding.Error && !whole[f.Kind] {
			require.Positive(h.t, f.Pos.Line, "%s: no line: %v", h.in.name, f)
			require.Positive(h.t, f.Pos.Col, "%s: no column: %v", h.in.name, f)
		}
	}
	var b bytes.Buffer
	require.NoError(h.t, finding.Printer{}.Print(&b, list, map[string][]byte{src.Name: src.Text}))
	h.harmlessText(b.String(), true)
	b.Reset()
	require.NoError(h.t, finding.JSON(&b, list))
	require.True(h.t, utf8.Valid(b.Bytes()))
}

// harmlessText holds that a terminal only shows a text. A designer's own words keep the
// marks with which scripts that run from the right are written; messages do not.
func (h *hostileRun) harmlessText(s string, message bool) {
	i := strings.IndexFunc(s, func(r rune) bool {
		return r != '\n' && unicode.IsControl(r) || message && unicode.Is(unicode.Bidi_Control, r)
	})
	if i >= 0 {
		require.Fail(h.t, h.in.name, "a character that does something to a terminal: %+q", s[max(0, i-40):min(len(s), i+20)])
	}
}

// sound holds that files have names for every system and do nothing but show.
func (h *hostileRun) sound(all []files.File) {
	seen := map[string]bool{}
	for _, f := range all {
		require.NoError(h.t, files.CheckName(f.Name), h.in.name)
		require.Regexp(h.t, `^[a-z0-9][a-z0-9-]*\.[a-z]+$`, f.Name)
		require.False(h.t, seen[f.Name], "%s: %s twice", h.in.name, f.Name)
		seen[f.Name] = true
		switch path.Ext(f.Name) {
		case ".svg":
			h.picture(f.Body)
		case ".html":
			h.page(f.Body)
		case ".pdf":
			h.pdf(f.Body)
		case ".csv":
			h.csv(f.Body)
		case ".xlsx":
			h.workbook(f.Body)
		case ".md":
			h.markdown(f.Body)
		case ".txt":
			h.harmlessText(string(f.Body), false)
		}
	}
}

// drawnOf are the elements of SVG that a drawing is made of: none of them runs or fetches.
var drawnOf = regexp.MustCompile(`^(svg|g|path|text|tspan|title|desc|a|rect|style)$`)

// faces is all that a drawing's style may say: faces that stand in it.
var faces = regexp.MustCompile(`^(@font-face\{font-family:"fw-[0-9a-f]+";(font-[a-z]+:[a-z0-9]+;)*src:url\(data:font/woff;base64,[A-Za-z0-9+/=]+\)( format\("woff"\))?;?\}\s*)*$`)

func (h *hostileRun) picture(b []byte) {
	d := xml.NewDecoder(bytes.NewReader(b))
	within := ""
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		require.NoError(h.t, err, "%s is no XML", h.in.name)
		switch e := token.(type) {
		case xml.StartElement:
			require.Regexp(h.t, drawnOf, e.Name.Local, h.in.name)
			within = e.Name.Local
			for _, a := range e.Attr {
				require.NotRegexp(h.t, `(?i)^(on|href$|src$)`, a.Name.Local, h.in.name)
				require.NotContains(h.t, a.Value, "url(", h.in.name)
			}
		case xml.EndElement:
			within = ""
		case xml.CharData:
			if within == "style" && !faces.Match(bytes.TrimSpace(e)) {
				require.Fail(h.t, "a style of more than faces", "%s: %.200s", h.in.name, e)
			}
		case xml.Directive:
			require.Fail(h.t, "a directive", "%s: %s", h.in.name, e)
		}
	}
}

// shownOf are the elements that a page or a Markdown text is made of.
var shownOf = regexp.MustCompile(`^(html|head|meta|title|style|body|main|section|header|h[1-6]|p|div|span|strong|em|b|code|blockquote|fieldset|legend|label|input|dl|dt|dd|` +
	`figure|svg|g|path|text|tspan|table|thead|tbody|tr|th|td|ul|ol|li|details|summary|figcaption|hr|br|pre|script)$`)

// ticksOf is all in a page's own script that its pattern decides: sums of its title and its rows.
var ticksOf = regexp.MustCompile(`\bfw[a-z0-9]{1,7}\b|-[0-9a-f]{8}\b`)

// ownScript is the script of a page of which nothing is hostile.
var ownScript = sync.OnceValue(func() string {
	r, err := Page(context.Background(), Source{"hat.yaml", examples.Text("pebble-hat")}, PageOptions{})
	if err != nil {
		panic(err)
	}
	_, script, _ := strings.Cut(string(r.Files[0].Body), "<script>")
	script, _, _ = strings.Cut(script, "</script>")
	return ticksOf.ReplaceAllString(script, "")
})

func (h *hostileRun) page(b []byte) {
	root, err := parser.Parse(bytes.NewReader(b))
	require.NoError(h.t, err)
	styles := 0
	for n := range root.Descendants() {
		if n.Type != parser.ElementNode {
			continue
		}
		require.Regexp(h.t, shownOf, n.Data, h.in.name)
		switch n.Data {
		case "style":
			styles++
		case "script":
			require.Equal(h.t, ownScript(), ticksOf.ReplaceAllString(n.FirstChild.Data, ""), h.in.name)
		}
		for _, a := range n.Attr {
			require.NotRegexp(h.t, `^(on|src|href|action|background|poster)`, a.Key, "%s: %s", h.in.name, n.Data)
		}
	}
	require.LessOrEqual(h.t, styles, 1, h.in.name)
}

// scripts are the names with which a PDF runs or fetches something (ISO 32000-1, 12.6.4).
var scripts = regexp.MustCompile(`/(JavaScript|JS|Launch|OpenAction|SubmitForm|ImportData|RichMedia|EmbeddedFile|AA)\b`)

// streams are packed: what looks like a name in them is none.
var streams = regexp.MustCompile(`(?s)\bstream\r?\n.*?endstream`)

func (h *hostileRun) pdf(b []byte) {
	require.True(h.t, bytes.HasPrefix(b, []byte("%PDF-")))
	require.NotRegexp(h.t, scripts, string(streams.ReplaceAll(b, nil)), h.in.name)
	if h.qpdf && len(h.in.body) < mostKept {
		file := filepath.Join(h.t.TempDir(), "a.pdf")
		require.NoError(h.t, os.WriteFile(file, b, 0o600))
		compare.Run(h.t, nil, "qpdf", "--check", file)
	}
}

// number is a cell that is only a number.
var number = regexp.MustCompile(`^[-+]?[0-9.]+$`)

func (h *hostileRun) csv(b []byte) {
	r := csv.NewReader(strings.NewReader(strings.TrimPrefix(string(b), "\ufeff")))
	all, err := r.ReadAll()
	require.NoError(h.t, err, h.in.name)
	for _, row := range all {
		for _, c := range row {
			if !number.MatchString(c) {
				require.NotRegexp(h.t, "^[ \u00a0]*[=+@\t\r\n＝＋－＠-]", strings.TrimPrefix(c, "–"), "%s: a formula in a cell", h.in.name)
			}
			h.harmlessText(c, false)
		}
	}
}

func (h *hostileRun) workbook(b []byte) {
	f, err := excelize.OpenReader(bytes.NewReader(b))
	require.NoError(h.t, err, h.in.name)
	defer f.Close()
	for _, name := range f.GetSheetList() {
		rows, err := f.GetRows(name)
		require.NoError(h.t, err)
		for i, row := range rows {
			for k := range min(len(row), 2) { // names and units: never a formula
				cell, err := excelize.CoordinatesToCellName(k+1, i+1)
				require.NoError(h.t, err)
				formula, err := f.GetCellFormula(name, cell)
				require.NoError(h.t, err)
				require.Empty(h.t, formula, "%s: %s", h.in.name, cell)
			}
		}
	}
}

// markdown holds that a text in Markdown, by a reader of it from outside that lets markup
// through, shows words alone.
func (h *hostileRun) markdown(b []byte) {
	h.harmlessText(string(b), false)
	var out bytes.Buffer
	m := goldmark.New(goldmark.WithExtensions(extension.GFM), goldmark.WithRendererOptions(renderer.WithUnsafe()))
	require.NoError(h.t, m.Convert(b, &out))
	h.page(out.Bytes())
}
