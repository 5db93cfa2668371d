package schematic

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// edgedBack is a back with an armhole at either side and a shoulder of each of two parts.
func edgedBack() *Made {
	return &Made{ID: "back", Name: "Back", Kind: KindBack, Make: 1, Views: []View{{}}, Edges: []Edge{
		{Name: "armhole", Right: true, Path: []Point{{10, 0}, {8, 20}}}, {Name: "shoulder", Right: true, Parts: []string{"Right shoulder"}, Path: []Point{{8, 20}, {3, 22}}}, {Name: "neck", Parts: []string{"Right shoulder"}, Path: []Point{{3, 22}, {-3, 22}}},
		{Name: "shoulder", Left: true, Parts: []string{"Top", "Left shoulder"}, Path: []Point{{-3, 22}, {-8, 20}}}, {Name: "armhole", Left: true, Path: []Point{{-8, 20}, {-10, 0}}}, {Path: []Point{{-10, 0}, {10, 0}}}}}
}

func TestHowAJoinCanCallAnEdge(t *testing.T) {
	m := edgedBack()
	assert.Equal(t, []string{"Back armhole", "Back right armhole", "Back shoulder", "Back right shoulder", "Back Right shoulder", "Back neck", "Back Right shoulder neck", "Back left shoulder", "Back Left shoulder", "Back left armhole"},
		(&Garment{Pieces: []*Made{m}}).EdgeNames())
	for text, want := range map[string]string{
		"armhole": "0 4", "left armhole": "4", "Right Armhole": "0", "shoulder": "1 3", "left shoulder": "3", "right shoulder": "1", "right shoulder neck": "2", "neck": "2", "Top": "3", "Top shoulder": "3", "Top left shoulder": "3", "Top right shoulder": "", "hem": "", "": "",
	} {
		got := ""
		for _, e := range m.edgesNamed(text) {
			for i := range m.Edges {
				if m.Edges[i].Path[0] == e.Path[0] {
					got += fmt.Sprint(i, " ")
				}
			}
		}
		if got != "" {
			got = got[:len(got)-1]
		}
		assert.Equal(t, want, got, text)
	}
	for ref, want := range map[string]string{"Back left armhole": "left", "Right front left edge": "right", "back neck": "", "Leftover": ""} {
		assert.Equal(t, want, sideIn(ref))
	}
}

func TestWhatIsMeantWhereThereIsNoSuchEdge(t *testing.T) {
	q, gone := &Piece{Name: "Back"}, &Piece{Name: "Hood"}
	b := &builder{p: &Pattern{Pieces: []*Piece{q, gone}}, g: &Garment{}, made: map[string]*Made{"Back": edgedBack(), "Hood": nil}}
	for ref, want := range map[string]string{
		"Bag": "begin with the name of a piece: Back, Hood", "Hood edge": "this piece is not made in this size", "Back armholl": `did you mean "Back armhole"?`, "Back left sholder": `did you mean "Back left shoulder"?`,
		"Back bottom": "the edges of Back are: armhole, shoulder, neck; name one with `edge`, `left edge` or `right edge`",
	} {
		assert.Equal(t, want, b.edgeHint(ref))
	}
	assert.Nil(t, b.edges("Hood edge", q))
	m := edgedBack()
	for kind, want := range map[string]bool{"arithmetic/division": true, "arithmetic/panels": true, "arithmetic/join-rows": true, "arithmetic/multiple": false} {
		g := &Garment{Findings: finding.List{{Kind: kind, Piece: "Back"}, {Kind: kind, Piece: "Front"}}}
		assert.Equal(t, want, g.Uneven(m), kind)
		assert.False(t, g.Uneven(&Made{Name: "Hood"}))
		assert.True(t, g.Uneven(&Made{Name: "Hood", Broken: true}))
	}
}

// A back is drawn as seen from behind: what is sewn to its left armhole lies at the left, x below the middle.
func TestWhatIsSewnToOneSideOfABack(t *testing.T) {
	back := edgedBack()
	chain := []ofPiece{{back, back.Edges[1]}, {back, back.Edges[3]}}
	front := []ofPiece{{&Made{Kind: KindFront}, Edge{}}}
	at := func(c []ofPiece) (out []float64) {
		for _, e := range c {
			out = append(out, e.edge.Path[0].X)
		}
		return out
	}
	assert.Equal(t, []float64{-3}, at(onOneSide(chain, front, "left")))
	assert.Equal(t, []float64{8}, at(onOneSide(chain, front, "right")))
	assert.Equal(t, []float64{8, -3}, at(onOneSide(chain, front, "")))
	assert.Equal(t, []float64{8, -3}, at(onOneSide(chain, nil, "left")))
	assert.Equal(t, []float64{8, -3}, at(onOneSide(chain, []ofPiece{{&Made{Kind: KindSleeve}, Edge{}}}, "left")))
	assert.Equal(t, []float64{8, -3, 3}, at(onOneSide(append(chain[:2:2], ofPiece{back, back.Edges[2]}), front, "left")), "one goes across")
	other := edgedBack()
	other.Kind = KindFront
	assert.Equal(t, []float64{8, -3}, at(onOneSide([]ofPiece{chain[0], {other, chain[1].edge}}, front, "left")))
	other.Kind, other.Make = KindBack, 2
	assert.Equal(t, []float64{8, -3}, at(onOneSide([]ofPiece{chain[0], {other, chain[1].edge}}, front, "left")))
	behind := chain[1]
	behind.edge.View = 1
	assert.Equal(t, []float64{8, -3}, at(onOneSide([]ofPiece{chain[0], behind}, front, "left")))
}

// By hand: two edges of 30 and 50 mm with 6 stitches and 20 rows, made twice, are 160 mm and 52; of one piece 80 mm and 26.
func TestOneSideOfASeam(t *testing.T) {
	two := &Made{ID: "sleeve", Make: 2}
	chain := []ofPiece{{two, Edge{Length: units.Int(30), Stitches: 6}}, {two, Edge{Length: units.Int(50), Rows: 20}}}
	edges, length, count := side(chain, false)
	assert.Equal(t, units.Int(160), length)
	assert.Equal(t, 52, count)
	assert.Equal(t, []string{"sleeve", "sleeve"}, []string{edges[0].Piece, edges[1].Piece})
	_, length, count = side(chain, true)
	assert.Equal(t, units.Int(80), length)
	assert.Equal(t, 26, count)
	assert.Equal(t, []string{"", "one of the 2 to make", "all 2 to make"}, []string{counted([]ofPiece{{&Made{Make: 1}, Edge{}}}, true), counted(chain, true), counted(chain, false)})
	one := []ofPiece{{&Made{Make: 1}, Edge{}}}
	for _, c := range []struct {
		into []string
		of   []ofPiece
		want bool
	}{
		{[]string{"Front left armhole", "Back left armhole"}, one, true}, {[]string{"Front left armhole", "Back right armhole"}, one, false}, {[]string{"Front armhole"}, one, false}, {[]string{"Front left armhole"}, chain, false}, {nil, one, false},
		{[]string{"Front left armhole", "Back armhole"}, one, false},
	} {
		assert.Equal(t, c.want, oneOfEach(&Join{Into: c.into}, c.of), "%v", c.into)
	}
}

// By hand, at a stitch of 5 mm and a row of 4: edges of 100 mm in 20 stitches and 60 mm in 15 rows, both made twice, are 320 mm; half of 5 and of 4 twice is 9 of slack, and 3 mm of each of four ends, twice, are 24.
// An edge of no count is taken to half of the coarsest, 6 mm of a row.
func TestHowLongASideOfASeamIs(t *testing.T) {
	p := &Pattern{Gauges: []Gauge{{Stitches: units.Int(20), Rows: units.Int(25), Over: units.Int(100)}, {Stitches: units.Int(25), Rows: units.Frac(50, 3), Over: units.Int(100)}}}
	edges := []Edge{{Length: units.Int(100), Stitches: 20}, {Length: units.Int(60), Rows: 15}}
	j := &Join{Seam: units.Int(3)}
	length, slack := j.sewn(p, edges, units.Int(320))
	assert.Equal(t, []units.Num{units.Int(320 - 24), units.Int(9)}, []units.Num{length, slack})
	length, slack = j.sewn(p, edges, units.Int(160))
	assert.Equal(t, []string{"148", "4.5"}, []string{length.String(), slack.String()})
	edges[0].Grain = units.Int(8)
	_, slack = j.sewn(p, edges, units.Int(160))
	assert.Equal(t, "6", slack.String())
	_, slack = j.sewn(p, []Edge{{Length: units.Int(50)}}, units.Int(50))
	assert.Equal(t, "3", slack.String())
	length, slack = j.sewn(p, []Edge{{Stitches: 4}}, units.Int(0))
	assert.Equal(t, []string{"-6", "0"}, []string{length.String(), slack.String()})
	s := &Seam{Join: j, Sew: edges, SewLength: units.Int(320), Into: []Edge{{Length: units.Int(310), Rows: 10}}, IntoLength: units.Int(310)}
	sewn, into, both := s.Lengths(p)
	assert.Equal(t, []string{"296", "304", "27.5"}, []string{sewn.String(), into.String(), both.String()}, "12 and 15.5 of slack")
}

// By hand: an edge goes 30 to the right and 40 up: the middle of its 70 is 5 up; its start faces down, its end to the right.
func TestWhereAnEdgeIsMarked(t *testing.T) {
	m := &Made{Make: 2, Views: []View{{}, {}}}
	e := Edge{View: 1, Path: []Point{{0, 0}, {0, 0}, {30, 0}, {30, 40}}}
	for _, share := range []units.Num{units.Int(0), units.Frac(1, 7), units.Frac(1, 2), units.Int(1)} {
		m.notch(e, 3, share)
	}
	assert.Empty(t, m.Views[0].Notches)
	assert.Equal(t, []Notch{{3, Point{0, 0}, Point{0, -1}}, {3, Point{10, 0}, Point{0, -1}}, {3, Point{30, 5}, Point{1, 0}}, {3, Point{30, 40}, Point{1, 0}}}, m.Views[1].Notches)
	marks := func(j Join, sew, into []ofPiece) (int, []Point) {
		m.Views[1].Notches = nil
		s := &Seam{Join: &j, Number: 1}
		(&builder{}).notches(s, sew, into)
		var at []Point
		for _, n := range m.Views[1].Notches {
			at = append(at, n.At)
		}
		return s.SewPieces, at
	}
	one := []ofPiece{{m, e}}
	_, at := marks(Join{}, one, one)
	assert.Equal(t, []Point{{30, 5}, {30, 5}}, at)
	_, at = marks(Join{How: AtFold}, one, one)
	assert.Equal(t, []Point{{17.5, 0}, {30, 22.5}}, at)
	_, at = marks(Join{How: AtFold}, append(one, one...), nil)
	assert.Equal(t, []Point{{30, 5}, {30, 5}}, at)
	ends, at := marks(Join{How: InPlaces, Places: 2}, append(one, one...), one)
	assert.Equal(t, []Point{{30, 5}, {30, 5}, {17.5, 0}, {30, 22.5}}, at)
	assert.Equal(t, 4, ends, "two of each")
}

// By hand: 3 places stand at 1/6, 1/2 and 5/6; 4 on two edges are two on each; of a round half shows.
func TestWhereEndsAreSewnOn(t *testing.T) {
	m := &Made{Views: []View{{}, {Half: true}}}
	for _, c := range []struct {
		n, edges, view int
		twelfths       []string
	}{{3, 1, 0, []string{"2", "6", "10"}}, {4, 2, 0, []string{"3", "9"}}, {3, 2, 0, []string{"2", "6", "10"}}, {2, 1, 1, []string{"0", "12"}}, {4, 1, 1, []string{"3", "9"}}, {5, 1, 1, []string{"2", "6", "10"}}, {4, 2, 1, []string{"0", "12"}}, {2, 1, 0, []string{"3", "9"}}} {
		var got []string
		for _, s := range (&Join{Places: c.n}).Spots(m, &Edge{View: c.view}, c.edges) {
			got = append(got, s.Times(12).String())
		}
		assert.Equal(t, c.twelfths, got, "%+v", c)
	}
}

// By hand: a left front of 40 by 64 mm, its points by the names of the two edges that meet there.
func TestOneLoopHasItsEdgesAndPoints(t *testing.T) {
	of := func(name string, a, b Point, change ...func(*drawn)) drawn {
		d := drawn{a: a, b: b, seg: seg{name: name}}
		for _, f := range change {
			f(&d)
		}
		return d
	}
	loop := []drawn{of("hem", Point{0, 0}, Point{40, 0}), of("side", Point{40, 0}, Point{40, 30}), of("armhole", Point{40, 30}, Point{30, 60}), of("shoulder", Point{30, 60}, Point{20, 64}), of("neck", Point{20, 64}, Point{0, 50}), of("front edge", Point{0, 50}, Point{0, 0})}
	var got []string
	for _, p := range pointsOf(loop) {
		got = append(got, fmt.Sprint(p.Name, " ", p.At.X, " ", p.At.Y))
	}
	assert.Equal(t, []string{"hem corner 0 0", "hem corner 40 0", "underarm 40 30", "shoulder point 30 60", "neck point 20 64", "front neck point 0 50"}, got)
	for _, c := range []struct {
		path        []Point
		left, right bool
	}{{[]Point{{0, 0}, {20, 0}}, true, false}, {[]Point{{20, 0}, {40, 0}}, false, true}, {[]Point{{0, 0}, {21, 0}}, false, false}, {[]Point{{20, 0}, {20, 9}}, false, false}} {
		left, right := sideOf(c.path, loop)
		assert.Equal(t, [2]bool{c.left, c.right}, [2]bool{left, right}, "%v", c.path)
	}
	level, upright, slant := drawnFrom("", 5, 5, 35, 5), drawnFrom("", 5, 5, 5, 45), drawnFrom("", 0, 0, 30, -40)
	slant.b = Point{30, -40}
	assert.Equal(t, []units.Num{units.Int(30), units.Int(40), units.Int(50)}, []units.Num{lengthOf(level), lengthOf(upright), lengthOf(slant)})
	var e Edge
	level.seg.sts, level.seg.both, level.seg.part, level.seg.also = 6, true, "a", "b"
	upright.seg.rows, upright.seg.part, upright.seg.doubt = 20, "a", true
	e.extend(level)
	assert.Equal(t, units.Int(10), e.Grain, "60 of both layers in 6")
	e.extend(upright)
	assert.Equal(t, []any{units.Int(100), 6, 20, units.Int(10), []string{"a", "b"}, true}, []any{e.Length, e.Stitches, e.Rows, e.Grain, e.Parts, e.Doubt})
	slant.seg.step, slant.seg.rows = true, 9
	e.extend(slant)
	assert.Equal(t, []any{units.Int(100), 20, 3}, []any{e.Length, e.Rows, len(e.Path)}, "a step is drawn, and is no edge")
	assert.Equal(t, "1.235", micrometres(1.2346).String())
}
