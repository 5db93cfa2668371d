package html_test

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	parser "golang.org/x/net/html"
	"pgregory.net/rapid"

	"flatwright/fonts"
	"flatwright/layout/chart"
	"flatwright/layout/document"
	"flatwright/render/html"
	"flatwright/schematic"
	"flatwright/schematic/random"
	"flatwright/schematic/read"
	"flatwright/schematic/rows"
	"flatwright/schematic/stitch"
)

const (
	wren      = "../../cmd/internal/job/testdata/wren.yaml" // says everything that a page can show
	saltmarsh = "../../examples/saltmarsh-cardigan.yaml"    // nine sizes
)

func pattern(t testing.TB, path string) *schematic.Pattern {
	t.Helper()
	src, err := os.ReadFile(filepath.FromSlash(path))
	require.NoError(t, err)
	p, found := read.Pattern(path, src)
	require.False(t, found.Errors(), "%v", found)
	return p
}

func pageOf(t require.TestingT, p *schematic.Pattern) html.Page {
	var gs []*schematic.Garment
	for i := range p.Sizes.Len() {
		gs = append(gs, schematic.Work(p, i))
	}
	text := p.Rows
	if text == "" {
		text = rows.Print(p, gs, rows.PrintOptions{Terms: stitch.Terms(p.Terms), Size: -1})
	}
	sections, short := document.Written(p, text)
	drawings, err := document.Drawings(gs, fonts.Regular, 87, 114)
	require.NoError(t, err)
	c := document.Of(gs, sections, short)
	for i := range gs {
		if p.Rows == "" && len(gs) > 1 {
			one, _ := document.Written(p, rows.Print(p, gs, rows.PrintOptions{Terms: stitch.Terms(p.Terms), Size: i}))
			c.Put(i, one)
		}
	}
	return html.Page{Content: c, Drawings: drawings, Prefix: "fwt"}
}

// charted is a page with the chart of a section, for each size and for all of them.
func charted(t require.TestingT, p *schematic.Pattern, section string) html.Page {
	page := pageOf(t, p)
	text := p.Rows
	if text == "" {
		var gs []*schematic.Garment
		for i := range p.Sizes.Len() {
			gs = append(gs, schematic.Work(p, i))
		}
		text = rows.Print(p, gs, rows.PrintOptions{Terms: stitch.Terms(p.Terms), Size: -1})
	}
	x := rows.Read("rows", []byte(text), rows.Options{Sizes: p.Sizes, Terms: stitch.Terms(p.Terms), TermsSet: true})
	for i := range p.Sizes.Len() {
		g, ok := rows.GraphOf(x, section, i)
		require.True(t, ok)
		w, ok := chart.FromGraph(g)
		require.True(t, ok)
		sheets, err := chart.Draw(w, chart.Options{Title: p.Title})
		require.NoError(t, err)
		page.Charts = append(page.Charts, document.Chart(section, i, sheets))
		if i == 0 {
			all := document.Chart(section, i, sheets)
			all.Size = -1
			page.Charts = append(page.Charts, all)
		}
	}
	return page
}

func write(t require.TestingT, p html.Page) []byte {
	var b bytes.Buffer
	require.NoError(t, html.Write(&b, p))
	return b.Bytes()
}

func TestThePageOfNineSizesIsSmall(t *testing.T) {
	for _, path := range []string{saltmarsh, "../../examples/fellside-jumper.yaml"} {
		page := write(t, pageOf(t, pattern(t, path)))
		t.Logf("%s: %d bytes", path, len(page))
		assert.Less(t, len(page), 300_000)
	}
}

func TestTheSamePatternGivesTheSameBytes(t *testing.T) {
	p := pattern(t, wren)
	assert.Equal(t, write(t, pageOf(t, p)), write(t, pageOf(t, p)))
}

// walk calls f with every element.
func walk(n *parser.Node, f func(*parser.Node)) {
	if n.Type == parser.ElementNode {
		f(n)
	}
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		walk(c, f)
	}
}

func attribute(n *parser.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

// allowed are the elements that a page is made of: none of them fetches anything, and none runs but the
// page's own script, the same in every page.
var allowed = regexp.MustCompile(`^(html|head|meta|title|style|body|main|section|header|h[1-4]|p|div|span|strong|b|fieldset|legend|label|input|dl|dt|dd|` +
	`figure|svg|g|path|text|tspan|table|thead|tbody|tr|th|td|ul|li|details|summary|figcaption|script)$`)

var ownScript = sync.OnceValue(func() string {
	b, err := os.ReadFile("page.js")
	if err != nil {
		panic(err)
	}
	return regexp.MustCompile(`(?m)^\s+`).ReplaceAllString(strings.ReplaceAll(string(b), "@", "fwt"), "")
})

// face is a rule that brings a part of a face, and asks for nothing.
var face = regexp.MustCompile(`@font-face\{font-family:fwt-face(;font-(weight:700|style:italic))?;src:url\(data:font/woff;base64,[A-Za-z0-9+/=]+\) format\("woff"\)\}`)

func holds(t require.TestingT, page []byte) {
	root, err := parser.Parse(bytes.NewReader(page))
	require.NoError(t, err)
	ids := map[string]bool{}
	walk(root, func(n *parser.Node) {
		require.Regexp(t, allowed, n.Data)
		if n.Data == "script" {
			runs := regexp.MustCompile(`fwt-[0-9a-f]{8}`).ReplaceAllString(n.FirstChild.Data, "fwtticks")
			require.Equal(t, ownScript(), strings.TrimPrefix(runs, "\n"), "no text of the pattern is in what runs")
		}
		for _, a := range n.Attr {
			require.NotRegexp(t, `^(on|src|href|action|style|background|data$|poster)`, a.Key, n.Data)
		}
		if id := attribute(n, "id"); id != "" {
			require.False(t, ids[id], "id %q twice", id)
			require.True(t, strings.HasPrefix(id, "fwt"), "id %q without its prefix", id)
			ids[id] = true
		}
		for _, class := range strings.Fields(attribute(n, "class")) {
			require.True(t, strings.HasPrefix(class, "fwt"), "class %q without its prefix", class)
		}
		if ref := attribute(n, "aria-labelledby"); ref != "" {
			defer func() { require.True(t, ids[ref] || bytes.Contains(page, []byte(`id="`+ref+`"`)), "no %q", ref) }()
		}
	})
	require.NotContains(t, face.ReplaceAllString(string(page), ""), "url(")
	require.NotContains(t, string(page), "@import")
}

func TestNoTextOfAPatternBecomesMarkup(t *testing.T) {
	for _, evil := range []string{`<script>alert(1)</script>`, `"><img src=x onerror=alert(1)>`, `</style><script>`, `&lt;b&gt; & <b>`, "\x00\x01\u0085\ufffe", `{{.P}}`, "'\"`", `--><svg onload=x>`, `</title><base href=//e>`} {
		p := pattern(t, wren)
		p.Title, p.Designer, p.Note, p.Edition = evil, evil, evil, evil
		for _, list := range []*[]string{&p.Notes, &p.Special, &p.Making, &p.Care, &p.Mended} {
			*list = []string{evil}
		}
		p.Yarn[0].Text, p.Gauges[0].Stitch, p.Pieces[0].Name = evil, evil, evil
		p.Bodies[0].Name, p.Finished[0].Name = evil, evil
		p.Sizes.Names[1] = evil
		p.Rows = strings.ReplaceAll(p.Rows, "Htr", evil)
		page := pageOf(t, p)
		for _, snippet := range []bool{false, true} {
			page.Snippet = snippet
			holds(t, write(t, page))
		}
	}
}

func TestPagesOfRandomGarmentsAreWellMade(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := random.Pattern(random.Options{Sizes: 9, Pieces: 4}).Draw(t, "pattern")
		page := pageOf(t, p)
		page.Snippet = rapid.Bool().Draw(t, "snippet")
		holds(t, write(t, page))
	})
}

func TestTheStyleOfASnippetReachesNothingElse(t *testing.T) {
	page := pageOf(t, pattern(t, wren))
	page.Snippet = true
	css := regexp.MustCompile(`(?s)<style>(.*)</style>`).FindSubmatch(write(t, page))
	require.NotNil(t, css)
	text := regexp.MustCompile(`@media[^{]*\{`).ReplaceAllString(string(css[1]), "")
	text = face.ReplaceAllString(text, "")
	rules := regexp.MustCompile(`([^{}]+)\{[^{}]*\}`).FindAllStringSubmatch(text, -1)
	require.Greater(t, len(rules), 40)
	for _, r := range rules {
		depth, from := 0, 0
		var selectors []string
		for i, c := range r[1] + "," {
			switch {
			case c == '(':
				depth++
			case c == ')':
				depth--
			case c == ',' && depth == 0:
				selectors = append(selectors, strings.TrimSpace((r[1] + ",")[from:i]))
				from = i + 1
			}
		}
		for _, s := range selectors {
			assert.Regexp(t, `^\.fwt[-:\s.]?`, s, "a rule of the whole page")
		}
	}
}

func TestAPrefixThatNamesNoClassIsRefused(t *testing.T) {
	page := pageOf(t, pattern(t, wren))
	for _, bad := range []string{"1a", "-a", "a b", "a{", `a"`, "é", strings.Repeat("a", 81)} {
		page.Prefix = bad
		assert.ErrorIs(t, html.Write(&bytes.Buffer{}, page), html.ErrPrefix, bad)
	}
}

func BenchmarkWriteNineSizes(b *testing.B) {
	page := pageOf(b, pattern(b, saltmarsh))
	var out bytes.Buffer
	b.ReportAllocs()
	for b.Loop() {
		out.Reset()
		if err := html.Write(&out, page); err != nil {
			b.Fatal(err)
		}
	}
}

// The designer's colours hold on the page, on a white ground.
func TestAPageHasTheDesignersColours(t *testing.T) {
	p := pattern(t, wren)
	p.Drawing.Colours.Line = schematic.Colour{R: 0x26, G: 0x32, B: 0x3f, Set: true}
	page := string(write(t, pageOf(t, p)))
	assert.Contains(t, page, "stroke:#26323f")
	assert.Contains(t, page, ";background:#fff;color:#000")
	assert.NotContains(t, string(write(t, pageOf(t, pattern(t, wren)))), "background:#fff;color:#000")
}
