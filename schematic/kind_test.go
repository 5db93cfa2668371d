package schematic

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/expr"
)

// What a section makes is told from its numbers before anything is worked: rows, stitches taken, changes of its edges.
func TestWhatASectionMakesIsSummedByHand(t *testing.T) {
	twelve := func(Amount) int64 { return 12 }
	for name, c := range map[string]struct {
		s     Section
		rows  int64
		taken []int64
		moves int
		marks int
	}{
		"rows worked even":                  {s: &Even{}, rows: 12},
		"a band":                            {s: &Sideways{Stitches: n(9), Rows: n(80)}, rows: 80},
		"5 times every 6 rows, 2 at a time": {s: &Shape{Shapings: []Shaping{{By: n(2), Every: n(6), Times: n(5)}}}, rows: 30, taken: []int64{10}, moves: 5 + 5},
		// 3 + 2 × 4 + 6 × 2 = 23 rows; two shapings are told apart, and the longer says how many rows
		"runs behind rows of their own, and another beside them": {s: &Shape{Shapings: []Shaping{
			{By: n(1), Every: n(4), Times: n(2), Then: []Spacing{{n(2), n(6)}}, Offset: 3}, {By: n(3), Every: n(1), Times: n(1)}}}, rows: 23, taken: []int64{8, 3}, moves: 5 + 8 + 5 + 1},
		"within fewer rows than it has": {s: &Shape{Shapings: []Shaping{{By: n(1), Every: n(2), Times: n(3)}}}, rows: 12, taken: []int64{3}, moves: 8},
		"a row that repeats":            {s: &RepeatRow{Use: 8, Makes: 7}, rows: 1},
		"stitches added":                {s: &AddEdge{Stitches: n(4)}, rows: 1},
		// at both edges each step has two rows
		"bound off in 3 steps of 2 rows":  {s: &BindOff{Stitches: n(5), Every: n(2), Times: n(3)}, rows: 12, taken: []int64{15}, moves: 3},
		"bound off once":                  {s: &BindOff{Stitches: n(5)}, rows: 2, taken: []int64{5}, moves: 1},
		"a mitre":                         {s: &Mitre{By: n(2), Every: n(2), Times: n(20)}, rows: 40, taken: []int64{40}, moves: 20},
		"short rows, with 4 corners each": {s: &ShortRows{Rows: n(6), Over: n(40)}, rows: 6, moves: 24},
		"five buttonholes":                {s: &Mark{Count: n(5)}, marks: 5},
		"a mark":                          {s: &Mark{}, marks: 1},
		"what is cast on":                 {s: &CastOn{Stitches: n(100)}},
		"a fold":                          {s: &Fold{}},
	} {
		l := LoadOf(c.s, 0, twelve)
		var taken []int64
		for _, k := range l.Taken {
			taken = append(taken, k.Stitches)
		}
		assert.Equal(t, c.rows, l.Rows, name)
		assert.Equal(t, c.taken, taken, name)
		assert.Equal(t, [2]int{c.moves, c.marks}, [2]int{l.Changes, l.Marks}, name)
	}
	assert.Equal(t, 3, LoadOf(&Panels{Of: make([]Panel, 3)}, 0, twelve).Panels)
}

// A piece is made longer in its longest stretch that is worked even: no rib, and in a body none behind what is bound off for its armholes.
func TestWhereAPieceIsMadeLonger(t *testing.T) {
	rows := map[Section]int{}
	of := func(s Section, n int) Section { rows[s] = n; return s }
	rib, body, top := of(&Even{Rib: true}, 90), of(&Even{}, 60), of(&Even{}, 80)
	slope := of(&Shape{Shapings: []Shaping{{By: n(1), Every: n(6), Times: n(12)}}}, 72)
	at := func(q *Piece) Section { return Longest(q, func(s Section) int { return rows[s] }) }
	cut := &BindOff{Stitches: n(5), At: BothEdges}
	assert.Equal(t, body, at(&Piece{Sections: []Section{rib, body, cut, top}}))
	assert.Equal(t, top, at(&Piece{Sections: []Section{rib, cut, top}}), "nothing is worked even below the armholes")
	assert.Equal(t, body, at(&Piece{Sections: []Section{rib, slope, body, cut, top}}), "a slope is no place for it in a body")
	assert.Equal(t, slope, at(&Piece{Kind: KindSleeve, Sections: []Section{rib, slope, body, cut, top}}))
	assert.Equal(t, top, at(&Piece{From: FromNeck, Sections: []Section{rib, body, cut, top}}), "from the neck armholes come first")
	assert.Nil(t, at(&Piece{Sections: []Section{rib, cut}}))
	hole := of(&Even{Common: Common{RightEdge: "armhole"}}, 100)
	assert.Equal(t, body, at(&Piece{Sections: []Section{rib, body, hole, top}}), "an armhole that nothing is bound off for")
	assert.Nil(t, at(&Piece{Kind: KindBack, Sections: []Section{rib, slope, cut, top}}), "not in the armhole where the body is all slope")
	assert.Equal(t, []Section{slope, body}, Stretches(&Piece{Sections: []Section{rib, slope, body, cut, top}}))
}

// Counts that fulfil two rules, by trial of every count to 400.
func TestRulesOfCountsAgreeWithTrial(t *testing.T) {
	for m := 0; m <= 12; m++ {
		for plus := range max(1, m) {
			a := Need{m, plus}
			for k := 0; k <= 9; k++ {
				for p := range max(1, k) {
					b := Need{k, p}
					both, some := a.and(b), false
					for c := range 400 {
						some = some || a.holds(c) && b.holds(c)
					}
					for c := range 400 {
						if some {
							assert.Equal(t, a.holds(c) && b.holds(c), both.holds(c), "%v and %v at %d", a, b, c)
						}
					}
					if !some {
						assert.Equal(t, a, both)
					}
				}
			}
			for from := range 5 {
				for k := -3; k <= 4; k++ {
					of, can := a.of(from, k), false
					for x := range 60 {
						can = can || a.holds(from+k*x)
					}
					for x := range 60 {
						assert.Equal(t, !can || k == 0 || a.holds(from+k*x), of.holds(x), "%v from %d by %d at %d", a, from, k, x)
					}
				}
			}
		}
	}
	assert.Equal(t, Need{}, Need{20_001, 0}.bounded())
	assert.Equal(t, Need{20_000, 1}, Need{20_000, 20_001}.bounded())
}

func TestEveryNumberOfASectionGoesThroughMap(t *testing.T) {
	plus := func(g expr.Graded) expr.Graded {
		if g.IsZero() {
			return g
		}
		return n(g.Int(0, 0) + 1)
	}
	in := []Section{
		&CastOn{Stitches: n(1), Chain: n(2)}, &Ring{Stitches: n(3)}, &Sideways{Stitches: n(4), Rows: n(5)}, &PickUp{Stitches: n(6)},
		&Held{From: []HeldPart{{Stitches: n(7), Added: n(8)}}}, &Even{Amount: Amount{Rows: n(9)}},
		&Shape{Amount: Amount{Rows: n(10)}, Shapings: []Shaping{{By: n(11), Every: n(12), Times: n(13), Then: []Spacing{{n(14), n(15)}}}}},
		&AddEdge{Stitches: n(16)}, &BindOff{Stitches: n(17), Every: n(18), Times: n(19)}, &Mitre{By: n(20), Every: n(21), Times: n(22)},
		&Divide{Parts: []Part{{Stitches: n(23), Sections: []Section{&CastOn{Stitches: n(24)}}}}}, &JoinParts{Of: []JoinPart{{Added: n(25)}}},
		&Panels{Of: []Panel{{Stitches: n(26)}}}, &ShortRows{Over: n(27), Rows: n(28), Step: n(29)},
		&Mark{Count: n(30), Inset: n(31), Stitch: n(32), First: n(33), Apart: n(34)},
	}
	seen := map[int]bool{}
	note := func(g expr.Graded) expr.Graded {
		if !g.IsZero() {
			seen[g.Int(0, 0)] = true
		}
		return g
	}
	Map(in, note)
	for k := 1; k <= 34; k++ {
		assert.True(t, seen[k], "number %d", k)
	}
	clear(seen)
	Map(Map(in, plus), note)
	for k := 2; k <= 35; k++ {
		assert.True(t, seen[k], "number %d is one more", k)
	}
	clear(seen)
	Map(in, note)
	assert.True(t, seen[1] && !seen[35], "what went in stays")
}

func TestAShawlWhoseSidesAreItsUpperEdgeBends(t *testing.T) {
	piece := func(from Direction, left, right string) *Made {
		return Work(plain(&Piece{Name: "Shawl", Kind: KindShawl, From: from, LeftEdge: left, RightEdge: right, Sections: []Section{
			&CastOn{Stitches: n(9)}, &Even{Amount: Amount{Rows: n(10)}}, &BindOff{All: true}}}), 0).Pieces[0]
	}
	assert.True(t, piece(FromNeck, "upper edge", "upper edge").Bends())
	assert.False(t, piece(FromHem, "upper edge", "upper edge").Bends(), "it widens the other way")
	assert.False(t, piece(FromNeck, "upper edge", "").Bends(), "it is a triangle from a tip")
	assert.False(t, piece(FromNeck, "side", "side").Bends(), "it is a stole")
}
