package sheet_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"flatwright/fonts"
	"flatwright/layout/sheet"
)

func TestOnlyAddressesThatRunNothingAreLinks(t *testing.T) {
	for in, want := range map[string]string{
		"https://example.org/a?b=1#c": "https://example.org/a?b=1#c",
		"HTTP://example.org":          "http://example.org",
		"mailto:a@example.org":        "mailto:a@example.org",
		"#piece-1":                    "#piece-1",
	} {
		got, ok := sheet.SafeLink(in)
		assert.True(t, ok, in)
		assert.Equal(t, want, got)
	}
	for _, in := range []string{"", "#", "javascript:alert(1)", "JaVaScRiPt:alert(1)", " javascript:alert(1)", "java\nscript:x", "data:text/html,x",
		"//example.org", "file.svg#x", "/etc/passwd", "http:", "https:opaque", "mailto:", "vbscript:x", "ftp://example.org", "\x00#a", "?a#b", "?#a"} {
		_, ok := sheet.SafeLink(in)
		assert.False(t, ok, "%q", in)
	}
}

func TestAnyLinkThatPassesIsSafeAndStaysTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := rapid.StringMatching(`(https?://|mailto:|#|javascript:|[a-z]{0,3}:)[!-~]{0,20}`).Draw(t, "in")
		if once, ok := sheet.SafeLink(in); ok {
			assert.Regexp(t, `^(https?://|mailto:|#)[^"<>\s]+$`, once)
			twice, ok := sheet.SafeLink(once)
			assert.True(t, ok)
			assert.Equal(t, once, twice)
		}
	})
}

func TestWalkGoesInDrawingOrder(t *testing.T) {
	a, b, c := &sheet.Text{S: "a"}, &sheet.Path{}, &sheet.Text{S: "c"}
	inner := &sheet.Group{ID: "inner", Items: []sheet.Item{b}}
	root := &sheet.Group{ID: "root", Items: []sheet.Item{a, inner, c}}
	var got []sheet.Item
	sheet.Walk(root, func(it sheet.Item) { got = append(got, it) })
	assert.Equal(t, []sheet.Item{root, a, inner, b, c}, got)
}

func TestATurnedTextsCornersTurnWithIt(t *testing.T) {
	text := &sheet.Text{S: "110", At: sheet.Point{X: 50, Y: 60}, Size: 4, Angle: 90}
	w := fonts.Width(fonts.Regular, 4, "110")
	lo, hi, ok := sheet.Bounds(text)
	assert.True(t, ok)
	// Read from the right: it climbs from its point, letters standing to the left.
	assert.InDelta(t, 60-w, lo.Y, 1e-9)
	assert.InDelta(t, 60, hi.Y, 1e-9)
	assert.InDelta(t, 50-4*fonts.Ascent(fonts.Regular), lo.X, 1e-9)
	assert.InDelta(t, 50+4*fonts.Descent(fonts.Regular), hi.X, 1e-9)
}

func TestTheAnchorSaysWhereTheBoxLies(t *testing.T) {
	w := fonts.Width(fonts.Bold, 3, "Sleeve")
	for anchor, left := range map[sheet.Anchor]float64{sheet.Start: 0, sheet.Middle: -w / 2, sheet.End: -w} {
		c := (&sheet.Text{S: "Sleeve", Size: 3, Face: fonts.Bold, Anchor: anchor}).Corners()
		assert.InDelta(t, left, c[0].X, 1e-9)
		assert.InDelta(t, left+w, c[1].X, 1e-9)
		assert.Greater(t, c[0].Y, c[3].Y, "from the descent to the ascent")
	}
}

func TestBoundsHoldEverythingInAGroup(t *testing.T) {
	at := func(x, y float64) [3]sheet.Point { return [3]sheet.Point{{X: x, Y: y}} }
	g := &sheet.Group{Items: []sheet.Item{
		&sheet.Path{Segs: []sheet.Seg{{Verb: sheet.Move, P: at(3, 4)}, {Verb: sheet.Close, P: at(-99, -99)}}},
		&sheet.Group{Items: []sheet.Item{&sheet.Path{Segs: []sheet.Seg{{Verb: sheet.Line, P: at(-1, 9)}}}}}}}
	lo, hi, ok := sheet.Bounds(g)
	assert.True(t, ok)
	assert.Equal(t, [2]sheet.Point{{X: -1, Y: 4}, {X: 3, Y: 9}}, [2]sheet.Point{lo, hi})
	_, _, ok = sheet.Bounds(&sheet.Group{})
	assert.False(t, ok)
}

func TestDrawnIsAStyleThatEveryFormatTakes(t *testing.T) {
	for _, c := range []struct{ in, want sheet.Style }{
		{sheet.Style{Width: 0.354, Stroke: sheet.Black, Dash: []float64{2, 1.004}}, sheet.Style{Width: 0.35, Stroke: sheet.Black, Dash: []float64{2, 1}}},
		{sheet.Style{Width: 0.001, Stroke: sheet.Black}, sheet.Style{Width: 0.01, Stroke: sheet.Black}},
		{sheet.Style{Width: 0, Stroke: sheet.Black, Fill: sheet.Tint}, sheet.Style{Fill: sheet.Tint}},
		{sheet.Style{Width: 1, Fill: sheet.Tint, Dash: []float64{1}}, sheet.Style{Fill: sheet.Tint}},
		{sheet.Style{Width: 1, Stroke: sheet.Grey, Dash: []float64{0, 0.001}}, sheet.Style{Width: 1, Stroke: sheet.Grey}},
		{sheet.Style{Width: 1, Stroke: sheet.Grey, Dash: []float64{3, -1}}, sheet.Style{Width: 1, Stroke: sheet.Grey}},
		{sheet.Style{Width: -1, Stroke: sheet.Grey}, sheet.Style{}},
	} {
		got := c.in.Drawn()
		assert.ElementsMatch(t, c.want.Dash, got.Dash)
		got.Dash, c.want.Dash = nil, nil
		assert.Equal(t, c.want, got)
	}
}

func TestNumbersThatAreNoneAreFound(t *testing.T) {
	nan := math.NaN()
	bad := []sheet.Item{
		&sheet.Path{Segs: []sheet.Seg{{Verb: sheet.Cubic, P: [3]sheet.Point{{}, {}, {Y: nan}}}}},
		&sheet.Path{Style: sheet.Style{Width: nan}}, &sheet.Path{Style: sheet.Style{Dash: []float64{1, math.Inf(1)}}},
		&sheet.Text{Size: nan}, &sheet.Text{Angle: nan}, &sheet.Text{At: sheet.Point{Y: math.Inf(-1)}},
	}
	for _, it := range bad {
		s := &sheet.Sheet{W: 10, H: 10, Root: sheet.Group{Items: []sheet.Item{&sheet.Group{Items: []sheet.Item{it}}}}}
		assert.ErrorIs(t, s.Finite(), sheet.ErrNotFinite)
	}
	assert.ErrorIs(t, (&sheet.Sheet{W: nan, H: 1}).Finite(), sheet.ErrNotFinite)
	unused := &sheet.Path{Segs: []sheet.Seg{{Verb: sheet.Line, P: [3]sheet.Point{{}, {X: nan}, {}}}}}
	assert.NoError(t, (&sheet.Sheet{W: 1, H: 1, Root: sheet.Group{Items: []sheet.Item{unused}}}).Finite())
}

func TestALanguageTagHoldsNothingElse(t *testing.T) {
	assert.Equal(t, "en-GB", sheet.LanguageTag("en-GB"))
	assert.Equal(t, "enOpenAction", sheet.LanguageTag("en) /OpenAction \n("))
	assert.Empty(t, sheet.LanguageTag("日本語"))
}
