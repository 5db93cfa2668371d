package svg_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/render/compare"
	"flatwright/render/svg"
)

func write(t require.TestingT, s *sheet.Sheet) string {
	var b bytes.Buffer
	require.NoError(t, svg.Write(&b, s))
	return b.String()
}

// element is what a parser from outside makes of the file.
type element struct {
	XMLName  xml.Name
	Attrs    []xml.Attr `xml:",any,attr"`
	Text     string     `xml:",chardata"`
	Children []element  `xml:",any"`
}

func (e *element) attr(name string) string {
	for _, a := range e.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func (e *element) walk(f func(*element)) {
	f(e)
	for i := range e.Children {
		e.Children[i].walk(f)
	}
}

func parse(t require.TestingT, file string) *element {
	var e element
	d := xml.NewDecoder(strings.NewReader(file))
	d.Strict = true
	require.NoError(t, d.Decode(&e))
	return &e
}

var hostile = []string{
	`<script>alert(1)</script>`, `"><script>alert(1)</script>`, `" onload="alert(1)`, `' onclick='alert(1)`,
	`onload=alert(1)`, `fill=red`, `]]><x/>`, `<!--`, `--><x/>`, `<?xml?>`, `&lt;&amp;&#60;script&#62;`, `&unknown;`,
	"a\x00b\x01\x0b\uffff\ufffe", "\xff\xfe\xc0", "\u202e\u2066", `</text></svg>`, "%s%d%!v(MISSING)", `url(javascript:1)`,
	"a=b style=\"x\"", "\r\n\t ", "𝒳🧶",
}

// everywhere puts one string wherever a sheet takes a string.
func everywhere(s string) *sheet.Sheet {
	return &sheet.Sheet{
		W: 50, H: 40, Title: s, Desc: s, Author: s, Lang: s, Prefix: s, Bookmark: s,
		Root: sheet.Group{ID: s, Class: s, Title: s, Desc: s, Link: s, Items: []sheet.Item{
			&sheet.Group{ID: s + "2", Class: s, Link: "https://example.org/?q=" + s, Items: []sheet.Item{
				&sheet.Text{S: s, At: sheet.Point{X: 5, Y: 5}, Size: 3, Ink: sheet.Black, Class: s, Angle: 30},
				&sheet.Path{Class: s, Style: sheet.Style{Width: 0.3, Stroke: sheet.Black},
					Segs: []sheet.Seg{{Verb: sheet.Move}, {Verb: sheet.Line, P: [3]sheet.Point{{X: 9, Y: 9}}}}},
			}},
			&sheet.Group{Link: "#" + s}, &sheet.Group{Link: "javascript:" + s}, &sheet.Group{Link: "data:text/html," + s},
		}},
	}
}

// What a file may hold at all.
var (
	elements = map[string]bool{"svg": true, "g": true, "a": true, "title": true, "desc": true, "rect": true, "path": true, "text": true, "style": true}
	handler  = regexp.MustCompile(`(?i)^on`)
	link     = regexp.MustCompile(`^(https?://|mailto:|#)`)
	faceRule = regexp.MustCompile(`^(@font-face\{font-family:"fw-[0-9a-f]{10}"(;font-(weight:700|style:italic))?;src:url\(data:font/woff;base64,[A-Za-z0-9+/=]+\) format\("woff"\)\})+$`)
	nameLike = regexp.MustCompile(`^[A-Za-z_][A-Za-z0-9._-]*$`)
)

func assertHarmless(t assert.TestingT, root *element) {
	ids := map[string]bool{}
	root.walk(func(e *element) {
		assert.True(t, elements[e.XMLName.Local], "element %s", e.XMLName.Local)
		if e.XMLName.Local == "style" {
			assert.Regexp(t, faceRule, e.Text, "a style brings a face and reaches nothing")
		}
		for _, a := range e.Attrs {
			assert.False(t, handler.MatchString(a.Name.Local), "attribute %s", a.Name.Local)
			switch a.Name.Local {
			case "href":
				assert.Regexp(t, link, a.Value)
			case "id":
				assert.Regexp(t, nameLike, a.Value)
				assert.False(t, ids[a.Value], "id %s twice", a.Value)
				ids[a.Value] = true
			case "style":
				assert.NotContains(t, a.Value, "url")
			}
		}
	})
}

func TestNoTextBecomesMarkup(t *testing.T) {
	for _, s := range hostile {
		root := parse(t, write(t, everywhere(s)))
		assertHarmless(t, root)
		texts := 0
		root.walk(func(e *element) {
			if e.XMLName.Local == "text" {
				texts++
				assert.Equal(t, fonts.Shown(fonts.Regular, s), e.Text)
			}
		})
		if strings.TrimSpace(s) != "" {
			assert.Equal(t, 1, texts, "%q", s)
		}
	}
}

func TestAnyStringAnywhereMakesAWellFormedFile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.OneOf(rapid.String(), rapid.SampledFrom(hostile), rapid.StringMatching(`[<>&"'=;:#a-c\x00-\x1f ]{0,12}`)).Draw(t, "s")
		assertHarmless(t, parse(t, write(t, everywhere(s))))
	})
}

func TestXmllintTakesTheFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "sheet.svg")
	for _, s := range []*sheet.Sheet{compare.Sample(1), everywhere(strings.Join(hostile, " ")), {W: 10, H: 10}} {
		require.NoError(t, os.WriteFile(path, []byte(write(t, s)), 0o600))
		compare.Run(t, nil, "xmllint", "--noout", "--nonet", path)
	}
}

func TestTheFileSaysItsSizeNameAndLanguage(t *testing.T) {
	s := compare.Sample(1)
	s.W, s.H = 215.9, 279.4
	root := parse(t, write(t, s))
	assert.Equal(t, "215.90mm", root.attr("width"))
	assert.Equal(t, "279.40mm", root.attr("height"))
	assert.Equal(t, "0 0 215.9 279.4", root.attr("viewBox"))
	assert.Equal(t, "img", root.attr("role"))
	assert.Equal(t, "en", root.attr("lang"))
	byID := map[string]*element{}
	root.walk(func(e *element) { byID[e.attr("id")] = e })
	names := strings.Fields(root.attr("aria-labelledby"))
	require.Len(t, names, 2)
	assert.Equal(t, "Sample & test", byID[names[0]].Text)
	assert.Equal(t, "Every kind of mark.", byID[names[1]].Text)
	require.Contains(t, byID, "t1-curves")
	assert.Equal(t, "part curves", byID["t1-curves"].attr("class"))
	assert.Equal(t, "curves", byID["t1-curves"].Children[0].Text, "a group's title comes first")
	assert.Equal(t, "paper", root.Children[2].attr("class"))
}

func TestALinkWithinTheSheetTakesThePrefix(t *testing.T) {
	var links []string
	parse(t, write(t, compare.Sample(1))).walk(func(e *element) {
		if e.XMLName.Local == "a" {
			links = append(links, e.attr("href"))
		}
	})
	assert.Equal(t, []string{"https://example.org/?a=1&b=2", "#t1-curves"}, links)
}

// The element is that of the file, without the faces, which its page has.
func TestInlineIsTheElementAlone(t *testing.T) {
	s := compare.Sample(1)
	var b bytes.Buffer
	require.NoError(t, svg.Inline(&b, s))
	assert.True(t, strings.HasPrefix(b.String(), "<svg "))
	assert.NotContains(t, b.String(), "fw-")
	faceless := regexp.MustCompile(`(?s)<style>.*?</style>\n| font-family="[^"]*"`)
	assert.True(t, strings.HasSuffix(faceless.ReplaceAllString(write(t, s), ""), faceless.ReplaceAllString(b.String(), "")))
}

func TestOutlinedTextKeepsItsWords(t *testing.T) {
	s := compare.Sample(1)
	var b bytes.Buffer
	require.NoError(t, svg.WriteOutlined(&b, s))
	root := parse(t, b.String())
	assertHarmless(t, root)
	assert.Equal(t, "graphics-document document", root.attr("role"))
	var told []string
	root.walk(func(e *element) {
		assert.NotContains(t, []string{"text", "style"}, e.XMLName.Local)
		if label := e.attr("aria-label"); label != "" {
			told = append(told, label)
			assert.Equal(t, "path", e.XMLName.Local)
			assert.Equal(t, "img", e.attr("role"))
		}
	})
	var want []string
	sheet.Walk(&s.Root, func(it sheet.Item) {
		if text, ok := it.(*sheet.Text); ok && text.Visible() {
			want = append(want, fonts.Shown(text.Face, text.S))
		}
	})
	assert.Equal(t, len(want), len(told))
	assert.Contains(t, told, "103 (111, 119) (127, –, 135)")
}

func TestPositionsStandOnTheGrid(t *testing.T) {
	at := func(x, y float64) [3]sheet.Point { return [3]sheet.Point{{X: x, Y: y}} }
	s := &sheet.Sheet{W: 50, H: 40, Root: sheet.Group{Items: []sheet.Item{&sheet.Path{
		Segs: []sheet.Seg{{Verb: sheet.Move, P: at(1.0/3, -0.001)}, {Verb: sheet.Line, P: at(12.345678, 7)},
			{Verb: sheet.Cubic, P: [3]sheet.Point{{X: 1, Y: 2}, {X: 3.005, Y: 4}, {X: 5.5, Y: 6}}}, {Verb: sheet.Close}},
		Style: sheet.Style{Width: 0.354, Dash: []float64{2, 1.004}, Stroke: sheet.Grey, Fill: sheet.Tint}}}}}
	var path *element
	parse(t, write(t, s)).walk(func(e *element) {
		if e.XMLName.Local == "path" {
			path = e
		}
	})
	require.NotNil(t, path)
	assert.Equal(t, "M0.33 0L12.35 7C1 2 3.01 4 5.5 6Z", path.attr("d"))
	assert.Equal(t, "0.35", path.attr("stroke-width"))
	assert.Equal(t, "2 1", path.attr("stroke-dasharray"))
	assert.Equal(t, "#6b6b6b", path.attr("stroke"))
	assert.Equal(t, "#ececec", path.attr("fill"))
}

func TestWhatCannotBeSeenIsNotWritten(t *testing.T) {
	segs := []sheet.Seg{{Verb: sheet.Move}, {Verb: sheet.Line, P: [3]sheet.Point{{X: 9, Y: 9}}}}
	s := &sheet.Sheet{W: 50, H: 40, Root: sheet.Group{Items: []sheet.Item{
		&sheet.Path{Segs: segs}, &sheet.Path{Style: sheet.Style{Width: 1, Stroke: sheet.Black}},
		&sheet.Path{Segs: segs, Style: sheet.Style{Stroke: sheet.Black}},
		&sheet.Text{S: "x", Ink: sheet.Black}, &sheet.Text{S: "\u00ad", Size: 3, Ink: sheet.Black}, &sheet.Text{S: "x", Size: 3},
	}}}
	parse(t, write(t, s)).walk(func(e *element) {
		assert.NotContains(t, []string{"path", "text"}, e.XMLName.Local)
	})
}

func TestAPositionThatIsNoNumberIsRefused(t *testing.T) {
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		s := &sheet.Sheet{W: 50, H: 40, Root: sheet.Group{Items: []sheet.Item{
			&sheet.Text{S: "x", Size: 3, Ink: sheet.Black, At: sheet.Point{X: bad}}}}}
		var b bytes.Buffer
		assert.ErrorIs(t, svg.Write(&b, s), sheet.ErrNotFinite)
		assert.Zero(t, b.Len())
	}
}

type full struct{ left int }

var errFull = errors.New("disk full")

func (f *full) Write(p []byte) (int, error) {
	if f.left -= len(p); f.left < 0 {
		return 0, errFull
	}
	return len(p), nil
}

func TestAnErrorOfTheWriterComesBack(t *testing.T) {
	s := compare.Sample(1)
	whole := len(write(t, s))
	for _, left := range []int{0, 100, whole - 1} {
		assert.ErrorIs(t, svg.Write(&full{left}, s), errFull)
		assert.ErrorIs(t, svg.Inline(&full{left: left / 5}, s), errFull)
	}
	assert.NoError(t, svg.Write(&full{whole}, s))
}

func TestTheSameSheetMakesTheSameBytes(t *testing.T) {
	assert.Equal(t, write(t, compare.Sample(5)), write(t, compare.Sample(5)))
}

func BenchmarkWrite400(b *testing.B) {
	s := compare.Busy(400)
	b.ReportAllocs()
	for b.Loop() {
		if err := svg.Write(io.Discard, s); err != nil {
			b.Fatal(err)
		}
	}
}

func ExampleWrite() {
	s := &sheet.Sheet{W: 30, H: 20, Title: "A line", Lang: "en", Root: sheet.Group{Items: []sheet.Item{
		&sheet.Text{S: "10 cm", At: sheet.Point{X: 15, Y: 9}, Anchor: sheet.Middle, Size: 3, Ink: sheet.Black}}}}
	var b strings.Builder
	if err := svg.Write(&b, s); err != nil {
		fmt.Println(err)
	}
	fmt.Println(b.String()[strings.Index(b.String(), "<text"):])
	// Output:
	// <text x="15.00" y="9.00" font-size="3" text-anchor="middle" textLength="8.17" lengthAdjust="spacingAndGlyphs" fill="#000000" >10 cm</text>
	// </g>
	// </svg>
}

func TestAPhotographIsWithinTheFile(t *testing.T) {
	s := &sheet.Sheet{W: 100, H: 80, Root: sheet.Group{Items: []sheet.Item{&sheet.Picture{At: sheet.Point{X: 10.004, Y: 20}, W: 30, H: 40.5, JPEG: []byte("a<b")}}}}
	var b bytes.Buffer
	require.NoError(t, svg.Write(&b, s))
	assert.Contains(t, b.String(), `<image x="10" y="20" width="30" height="40.5" preserveAspectRatio="none" xlink:href="data:image/jpeg;base64,YTxi"/>`)
	lo, hi, ok := sheet.Bounds(&s.Root)
	require.True(t, ok)
	assert.Equal(t, [2]sheet.Point{{X: 10.004, Y: 20}, {X: 40.004, Y: 60.5}}, [2]sheet.Point{lo, hi})
	s.Root.Items[0].(*sheet.Picture).W = math.NaN()
	require.ErrorIs(t, svg.Write(&b, s), sheet.ErrNotFinite)
}
