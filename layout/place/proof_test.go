package place

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"sync"
	"testing"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/random"
	"flatwright/schematic/units"
	"flatwright/schematic/worn"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// randomGarments draws any set of sizes: shapes that no one would wear, edges that
// cross nothing, names of thirty letters, measurements from anywhere to anywhere.
func randomGarments(t *rapid.T) []*schematic.Garment {
	n := rapid.IntRange(1, 20).Draw(t, "sizes")
	pat := &schematic.Pattern{Title: words(t, "title"), Designer: words(t, "designer"), Note: words(t, "note"),
		Steps: rapid.SampledFrom([]units.Steps{units.Usual, {CM: units.Frac(1, 10), Inch: units.Frac(1, 8)}}).Draw(t, "steps")}
	left := n
	for left > 0 {
		g := rapid.IntRange(1, left).Draw(t, "group")
		pat.Sizes.Groups = append(pat.Sizes.Groups, g)
		left -= g
	}
	for i := range n {
		pat.Sizes.Names = append(pat.Sizes.Names, rapid.SampledFrom([]string{"XS", "S", "2X", "14/16", "3–4 yrs"}).Draw(t, "size")+fmt.Sprint(i))
	}
	shape := &schematic.Garment{Pattern: pat}
	for i := range rapid.IntRange(0, 12).Draw(t, "pieces") {
		shape.Pieces = append(shape.Pieces, randomPiece(t, i))
	}
	var gs []*schematic.Garment
	for i := range n {
		g := &schematic.Garment{Pattern: pat, Size: pat.Sizes.Names[i], Index: i}
		for _, m := range shape.Pieces {
			made := *m
			made.Measures = nil
			for k, ms := range m.Measures {
				if i > 0 && (i+k)%11 == 3 {
					continue // this size has no such measurement
				}
				ms.Length = ms.Length.Mul(units.Frac(int64(100+7*i), 100))
				made.Measures = append(made.Measures, ms)
			}
			g.Pieces = append(g.Pieces, &made)
		}
		gs = append(gs, g)
	}
	return gs
}

var alphabet = []rune("abcdefghijklm nopqrstuvwxyz ABCDEFGHIJKLMNOPQRSTUVWXYZ 0123456789-éß½✂\u202e'&<")

func words(t *rapid.T, label string) string {
	return rapid.StringOfN(rapid.SampledFrom(alphabet), 0, 30, -1).Draw(t, label)
}

func randomPiece(t *rapid.T, i int) *schematic.Made {
	name := words(t, "piece")
	m := &schematic.Made{ID: fmt.Sprintf("piece-%d", i), Name: name, Kind: schematic.Kind(rapid.IntRange(0, 7).Draw(t, "kind")),
		Make: rapid.IntRange(1, 3).Draw(t, "make"), Mirrored: rapid.Bool().Draw(t, "mirrored"), Round: rapid.Bool().Draw(t, "round"),
		Piece: &schematic.Piece{Name: name}}
	for v := range rapid.IntRange(1, 2).Draw(t, "views") {
		view := randomView(t)
		m.Views = append(m.Views, view)
		for k := range rapid.IntRange(0, 14).Draw(t, "measures") {
			a, b := somewhere(t, view), somewhere(t, view)
			axis := schematic.Axis(rapid.IntRange(0, 2).Draw(t, "axis"))
			l := math.Hypot(a.X-b.X, a.Y-b.Y)
			switch axis {
			case schematic.Horizontal:
				l = math.Abs(a.X - b.X)
			case schematic.Vertical:
				l = math.Abs(a.Y - b.Y)
			}
			m.Measures = append(m.Measures, schematic.Measure{ID: fmt.Sprintf("piece-%d.%d.%d", i, v, k), Name: words(t, "measure"), View: v,
				A: a, B: b, Axis: axis, Length: units.Frac(int64(l*100), 100), Around: rapid.Bool().Draw(t, "around"),
				Main: k%5 != 4, Stretched: rapid.IntRange(0, 5).Draw(t, "stretched") == 0})
		}
	}
	return m
}

func somewhere(t *rapid.T, v schematic.View) schematic.Point {
	loop := v.Outline[0]
	i := rapid.IntRange(0, len(loop)-1).Draw(t, "corner")
	a, b := loop[i], loop[(i+1)%len(loop)]
	k := rapid.SampledFrom([]float64{0, 0, 0, 0.5, 0.13}).Draw(t, "along")
	return schematic.Point{X: a.X + k*(b.X-a.X), Y: a.Y + k*(b.Y-a.Y)}
}

func randomView(t *rapid.T) schematic.View {
	var v schematic.View
	w, h := rapid.Float64Range(4, 2000).Draw(t, "w"), rapid.Float64Range(4, 1200).Draw(t, "h")
	n := rapid.IntRange(3, 24).Draw(t, "corners")
	var loop []schematic.Point
	switch rapid.IntRange(0, 2).Draw(t, "shape") {
	case 0: // a star around a centre
		for i := range n {
			r := rapid.Float64Range(0.3, 1).Draw(t, "r")
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			loop = append(loop, schematic.Point{X: w / 2 * (1 + r*cos), Y: h / 2 * (1 + r*sin)})
		}
	case 1: // steps over a straight hem
		loop = points(w, 0, 0, 0)
		for i := range n {
			y := h * rapid.Float64Range(0.1, 1).Draw(t, "y")
			loop = append(loop, schematic.Point{X: w * float64(i) / float64(n), Y: y}, schematic.Point{X: w * float64(i+1) / float64(n), Y: y})
		}
	default:
		loop = points(0, 0, w, 0, w*rapid.Float64Range(0.5, 1).Draw(t, "top"), h, 0, h)
		v.Disc = rapid.IntRange(0, 4).Draw(t, "disc") == 0
	}
	v.Outline = [][]schematic.Point{loop}
	for range rapid.IntRange(0, 4).Draw(t, "lines") {
		v.Lines = append(v.Lines, schematic.Line{Kind: schematic.LineKind(rapid.IntRange(0, 5).Draw(t, "line")),
			A: somewhere(t, v), B: somewhere(t, v), Name: rapid.SampledFrom([]string{"", "", "waist", "a line with a long name here"}).Draw(t, "name")})
	}
	if rapid.Bool().Draw(t, "rib") {
		dir := rapid.Float64Range(0, 6).Draw(t, "dir")
		v.Ribs = []schematic.Hatch{{Poly: loop[:len(loop)/2+2-len(loop)%2], Dir: schematic.Point{X: math.Cos(dir), Y: math.Sin(dir)}, Gap: 6}}
	}
	for range rapid.IntRange(0, 6).Draw(t, "notches") {
		turn := rapid.Float64Range(0, 6).Draw(t, "out")
		v.Notches = append(v.Notches, schematic.Notch{Number: rapid.IntRange(1, 30).Draw(t, "number"), At: somewhere(t, v), Out: schematic.Point{X: math.Cos(turn), Y: math.Sin(turn)}})
	}
	for range rapid.IntRange(0, 5).Draw(t, "marks") {
		v.Marks = append(v.Marks, schematic.Marked{What: rapid.SampledFrom([]string{"buttonhole", "pocket", "waist", "marker", "a sign of one's own"}).Draw(t, "what"),
			At: somewhere(t, v), Name: rapid.SampledFrom([]string{"", "buttonhole", "first of seven, evenly apart"}).Draw(t, "mark")})
	}
	v.Arrow, v.ArrowAt = schematic.Point{X: 0, Y: 1}, schematic.Point{X: w * 0.5, Y: h * 0.4}
	return v
}

func randomOptions(t *rapid.T, sizes int) Options {
	return Options{
		Paper: rapid.SampledFrom(Papers()).Draw(t, "paper"), Orientation: Orientation(rapid.IntRange(0, 2).Draw(t, "orientation")),
		Scale:  rapid.SampledFrom([]float64{0, 0, 0, 8, 10, 12.5, 50}).Draw(t, "scale"),
		Size:   rapid.IntRange(0, sizes-1).Draw(t, "index"),
		Trim:   rapid.Bool().Draw(t, "trim"),
		Width:  rapid.SampledFrom([]float64{0, 0, 0, 160, 85}).Draw(t, "width"),
		Labels: Labels(rapid.IntRange(0, 3).Draw(t, "labels")), Units: Units(rapid.IntRange(0, 2).Draw(t, "units")),
		Text:    rapid.SampledFrom([]float64{0, 0, 2.5, Large, 9}).Draw(t, "text"),
		Caution: rapid.SampledFrom([]string{"", "Cords and buttons can hurt a small child: follow the safety rules of the country where it is worn."}).Draw(t, "caution"),
	}
}

// tally adds up what the random garments reached, for the log.
type tally struct {
	sync.Mutex
	Stats
	drawings, pieces, most, large int
	modes                         [4]int
}

// draws draws one set of sizes with any options and checks the sheets.
func (sum *tally) draws(t *rapid.T, gs []*schematic.Garment) {
	o := randomOptions(t, len(gs))
	var st Stats
	o.Stats = &st
	sheets, err := Schematic(gs, o)
	sum.Lock()
	defer sum.Unlock()
	if err != nil {
		var large *TooLarge
		require.ErrorAs(t, err, &large)
		short, long := o.sides()
		require.True(t, min(large.W, large.H) > short || max(large.W, large.H) > long ||
			(o.Orientation != Auto || o.Width > 0) && (large.W > short || large.H > short), "a drawing that fits was refused: %v", err)
		sum.large++
		return
	}
	sum.drawings++
	sum.pieces += len(gs[0].Pieces)
	sum.most = max(sum.most, len(gs[0].Pieces))
	sum.modes[o.Labels]++
	sum.add(st)
	holds(t, gs, o, st, sheets)
}

func (sum *tally) log(t *testing.T) {
	t.Logf("%d drawings of %d pieces, at most %d; %d refused as too large; one size %d, all sizes %d, letters %d, blank %d",
		sum.drawings, sum.pieces, sum.most, sum.large, sum.modes[0], sum.modes[1], sum.modes[2], sum.modes[3])
	t.Logf("on the line %d, beside %d, next track %d, inside %d, slanted %d, fell to a letter %d, letters by choice %d; names left to the key %d; pages %d, of tables alone %d",
		sum.OnLine, sum.Beside, sum.NextTrack, sum.Inside, sum.Slanted, sum.Letter, sum.Chosen, sum.Dropped, sum.Pages, sum.Tables)
	t.Logf("under a piece %d", sum.Under)
	require.True(t, sum.everyWay(), "the garments must reach every way of placing a label")
}

func (sum *tally) everyWay() bool {
	return min(sum.OnLine, sum.Beside, sum.NextTrack, sum.Inside, sum.Slanted, sum.Letter, sum.Chosen, sum.Tables) > 0
}

// checks draws at random until all is reached that is to be: what is rare is not among
// the first hundred each time.
func checks(t *testing.T, reached func() bool, f func(*rapid.T)) {
	for range 10 {
		if rapid.Check(t, f); reached() {
			return
		}
	}
}

func TestNothingOverlapsOnAnySheetOfRandomShapes(t *testing.T) {
	var sum tally
	checks(t, sum.everyWay, func(t *rapid.T) { sum.draws(t, randomGarments(t)) })
	sum.log(t)
}

// Every kind of section, worked: what the patterns are is held in the generator's own
// test.
func TestNothingOverlapsOnAnySheetOfWorkedPatterns(t *testing.T) {
	var sum tally
	alike, dressed := 0, 0
	checks(t, func() bool { return alike > 0 && sum.Under > 0 && sum.everyWay() }, func(t *rapid.T) {
		gs := bysize.WorkAll(random.Pattern(random.Options{}).Draw(t, "pattern"))
		for _, g := range gs {
			worn.Dress(g)
			if g.Worn != nil {
				dressed++
			}
		}
		for _, m := range gs[0].Pieces {
			for _, v := range m.Views {
				alike += max(0, v.Alike-1)
			}
		}
		sum.draws(t, gs)
	})
	t.Logf("%d garments were put together", dressed)
	require.Positive(t, alike, "the patterns must reach panels that are alike")
	sum.log(t)
	require.Positive(t, sum.Under, "the patterns must reach rows that are drawn in panels")
}

func (t *tally) add(s Stats) {
	sum, one := reflect.ValueOf(&t.Stats).Elem(), reflect.ValueOf(s)
	for i := range one.NumField() {
		sum.Field(i).SetInt(sum.Field(i).Int() + one.Field(i).Int())
	}
}

// holds checks everything that a drawing promises, on its primitives alone.
func holds(t require.TestingT, gs []*schematic.Garment, o Options, st Stats, sheets []*sheet.Sheet) {
	seen := map[string]int{}
	rows := map[string]int{}
	for i, s := range sheets {
		require.NoError(t, s.Finite())
		edge := margin - 0.3
		if o.cut() {
			edge = 0 // the paper ends where the ink does
		}
		require.Empty(t, sheet.Overlaps(s, edge), "page %d", i+1)
		if o.Width > 0 {
			require.Equal(t, o.Width, s.W, "page %d", i+1)
		}
		require.Empty(t, blanksTouched(s), "page %d", i+1)
		ids := map[string]bool{}
		var pieces []*sheet.Group
		sheet.Walk(&s.Root, func(it sheet.Item) {
			switch it := it.(type) {
			case *sheet.Group:
				if it.ID != "" {
					require.False(t, ids[it.ID], "id %q twice", it.ID)
					ids[it.ID] = true
				}
				switch it.Class {
				case "piece":
					pieces = append(pieces, it)
				case "measure":
					seen[it.ID]++
				}
			case *sheet.Text:
				if it.Class == "table" && it.Face == fonts.Bold {
					rows[it.S]++
				}
			}
		})
		apartOnPaper(t, pieces)
		if ids["letters"] && len(pieces) == 0 {
			require.False(t, ids["scalebar"] || ids["key"], "nothing is drawn that has a scale or signs")
		}
	}
	expected := 0
	for _, made := range append(gs[o.Size].AsWorn(), gs[o.Size].Pieces...) {
		for _, m := range made.Measures {
			if m.Main || m.View == schematic.NoView && !m.Same {
				expected++
				require.LessOrEqual(t, seen[m.ID], 1, m.ID)
			}
		}
	}
	require.LessOrEqual(t, len(seen), expected)
	require.Equal(t, len(seen), st.OnLine+st.Beside+st.NextTrack+st.Inside+st.Slanted+st.Outermost+st.Under, "each measurement has one label")
	a := newLettering(gs[0].Pattern.Sizes.Names, 'A')
	letters := 0
	for n := range 1000 {
		if rows[a.name(n)] > 0 {
			letters++
		}
	}
	require.GreaterOrEqual(t, letters, st.Letter+st.Chosen, "each letter is in a table")
}

// apartOnPaper checks that no two pieces share room: neither lines nor labels of one
// lie on another.
func apartOnPaper(t require.TestingT, pieces []*sheet.Group) {
	for i, a := range pieces {
		alo, ahi, ok := sheet.Bounds(a)
		for _, b := range pieces[:i] {
			blo, bhi, ok2 := sheet.Bounds(b)
			if ok && ok2 {
				require.True(t, alo.X >= bhi.X || blo.X >= ahi.X || alo.Y >= bhi.Y || blo.Y >= ahi.Y, "%s and %s", a.ID, b.ID)
			}
		}
	}
}

// blanksTouched are the rules to write on whose room is not free.
func blanksTouched(s *sheet.Sheet) []string {
	var rules []*sheet.Path
	var strokes []*sheet.Path
	var texts []*sheet.Text
	sheet.Walk(&s.Root, func(it sheet.Item) {
		switch it := it.(type) {
		case *sheet.Path:
			if it.Class == "blank" {
				rules = append(rules, it)
			} else if it.Style.Stroke != sheet.None {
				strokes = append(strokes, it)
			}
		case *sheet.Text:
			texts = append(texts, it)
		}
	})
	var bad []string
	for _, r := range rules {
		a, b := r.Segs[0].P[0], r.Segs[1].P[0]
		l := dist(a, b)
		u := mul(sub(b, a), 1/l)
		const high = 4.5 // room to write in
		box := sheet.Box{C: add(mid(a, b), mul(pt{X: u.Y, Y: -u.X}, high/2)), U: u, HalfW: l/2 - 0.1, HalfH: high / 2}
		for _, p := range strokes {
			for _, run := range p.Polyline() {
				for i := 1; i < len(run); i++ {
					if box.Touches(run[i-1], run[i]) {
						bad = append(bad, p.Class)
					}
				}
			}
		}
		for _, x := range texts {
			if box.Overlaps(x.Box()) {
				bad = append(bad, x.S)
			}
		}
	}
	return bad
}

func TestTheSameInputGivesTheSameSheets(t *testing.T) {
	for _, l := range []Labels{OneSize, AllSizes, Letters, Blank} {
		o := Options{Labels: l, Units: Both, Size: 3}
		a, err := Schematic(pullover(9), o)
		require.NoError(t, err)
		b, err := Schematic(pullover(9), o)
		require.NoError(t, err)
		require.Equal(t, a, b)
	}
}

func TestAnOutlineIsDrawnToItsScale(t *testing.T) {
	for _, scale := range []float64{0, 5, 12.5} {
		gs := pullover(3)
		sheets, err := Schematic(gs, Options{Scale: scale, Size: 2})
		require.NoError(t, err)
		said := scale
		sheet.Walk(&sheets[0].Root, func(it sheet.Item) {
			if x, ok := it.(*sheet.Text); ok && strings.HasPrefix(x.S, "Scale 1:") && scale == 0 {
				_, err := fmt.Sscanf(x.S, "Scale 1:%g", &said)
				require.NoError(t, err)
			}
		})
		found := false
		for _, s := range sheets {
			sheet.Walk(&s.Root, func(it sheet.Item) {
				g, ok := it.(*sheet.Group)
				if !ok || g.ID != "back" {
					return
				}
				for _, part := range g.Items {
					if p, ok := part.(*sheet.Path); ok && p.Class == "outline" {
						lo, hi, _ := sheet.Bounds(p)
						require.InDelta(t, 550/said, hi.X-lo.X, 0.011)
						require.InDelta(t, 604/said, hi.Y-lo.Y, 0.011)
						found = true
					}
				}
			})
		}
		require.True(t, found)
	}
}

func TestASizeThatLacksAMeasurementPrintsADash(t *testing.T) {
	gs := pullover(3)
	gs[1].Pieces[0].Measures = gs[1].Pieces[0].Measures[1:] // S has no width at hem
	sheets, err := Schematic(gs, Options{Labels: AllSizes})
	require.NoError(t, err)
	want := "46 (" + expr.Dash + ") (55) cm"
	found := false
	for _, s := range sheets {
		sheet.Walk(&s.Root, func(it sheet.Item) {
			if x, ok := it.(*sheet.Text); ok && x.S == want {
				found = true
			}
		})
	}
	require.True(t, found, want)
}

func TestAMirroredPairIsMeasuredOnce(t *testing.T) {
	gs := pullover(2)
	for _, g := range gs {
		left, right := sleeve(200, 320, 450, 120), sleeve(200, 320, 450, 120)
		left.ID, left.Name, right.ID, right.Name, right.MirrorOf = "left", "Left sleeve", "right", "Right sleeve", "Left sleeve"
		for k := range left.Measures {
			left.Measures[k].ID = "left." + left.Measures[k].Name
			right.Measures[k].ID = "right." + right.Measures[k].Name
		}
		right.Measures[0].Length = mm(210 + float64(g.Index)) // but for what differs
		g.Pieces = []*schematic.Made{left, right}
	}
	sheets, err := Schematic(gs, Options{})
	require.NoError(t, err)
	var ids []string
	sheet.Walk(&sheets[0].Root, func(it sheet.Item) {
		if g, ok := it.(*sheet.Group); ok && g.Class == "measure" && strings.HasPrefix(g.ID, "right.") {
			ids = append(ids, g.ID)
		}
	})
	require.Equal(t, []string{"right.cuff"}, ids)
}

func TestAPieceTooLargeForThePaperNamesThePaperItNeeds(t *testing.T) {
	_, err := Schematic(pullover(1), Options{Scale: 2})
	var large *TooLarge
	require.ErrorAs(t, err, &large)
	require.ErrorContains(t, err, "at least")
	require.Greater(t, large.W, 210.0)
	require.False(t, errors.Is(err, nil))
}

func TestOneScaleServesAllSizes(t *testing.T) {
	gs := pullover(9)
	var drafts []*Draft
	var scale Scales
	for i := range gs {
		d, err := NewDraft(gs, Options{Size: i})
		require.NoError(t, err)
		drafts, scale = append(drafts, d), scale.Or(d.Scales())
	}
	require.Less(t, drafts[0].Scales().Pieces, scale.Pieces, "the sizes take scales of their own")
	for i, d := range drafts {
		got, err := d.Sheets(scale)
		require.NoError(t, err)
		want, err := Schematic(gs, Options{Size: i, Scale: scale.Pieces})
		require.NoError(t, err)
		require.Equal(t, want, got, "as if it had been laid out at that scale at once")
	}
}

func TestOptionsOutOfRangeAreRefused(t *testing.T) {
	for _, o := range []Options{{Size: 3}, {Size: -1}, {Scale: -2}, {Scale: math.NaN()}, {Text: 100}} {
		_, err := Schematic(pullover(2), o)
		require.Error(t, err)
	}
	_, err := Schematic(nil, Options{})
	require.Error(t, err)
}

func BenchmarkGarmentOfSixPieces(b *testing.B) {
	gs := many(6)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Schematic(gs, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPieces(b *testing.B) {
	for _, n := range []int{10, 100, 1000} {
		gs := many(n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Schematic(gs, Options{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
