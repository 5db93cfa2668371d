package schematic

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

func TestAWordIsCutOffTheFrontOfAName(t *testing.T) {
	for _, c := range []struct {
		s, word, rest string
		ok            bool
	}{
		{"back", "Back", "", true}, {" Back  neck ", "back", "neck", true}, {"backs neck", "back", "backs neck", false}, {"bac", "back", "bac", false}, {"", "back", "", false},
		{"back", "", "back", false}, {"neck back", "back", "neck back", false},
	} {
		rest, ok := cutWord(c.s, c.word)
		assert.Equal(t, c.ok, ok, c.s)
		assert.Equal(t, c.rest, rest, c.s)
	}
}

// By hand: of 100 stitches a half has its middle at 25. A gap from 20 to 30 lies there, one from 30 to 50 is 15 on, one at the beginning 20 back, one from 70 to 80 lies in the middle of the other half.
func TestARoundIsFoldedSoThatItsGapIsInTheMiddle(t *testing.T) {
	for gap, want := range map[[2]int]int{{20, 30}: 0, {30, 50}: 15, {0, 10}: 80, {70, 80}: 0, {40, 60}: 25, {42, 62}: 77, {-6, 6}: 75 + 50 - 100} {
		assert.Equal(t, want, centredFold(gap, 100), "%v", gap)
	}
}

// By hand: four stitches spread over blocks of 30 and 10 are three and one, half of them at each side of its block; of a tube half at each side of the whole.
func TestAShapingAcrossIsSharedByTheBlocksOfTheRow(t *testing.T) {
	row := func(round bool, counts ...int) *worker {
		w := &worker{cur: &strand{round: round}}
		for _, n := range counts {
			w.cur.blocks = append(w.cur.blocks, block{runs: []run{{n: n}}})
		}
		return w
	}
	moved := func(w *worker, sh Shaping) (left, right []string, places int) {
		n := len(w.cur.blocks)
		m := movement{make([]profile, n), make([]profile, n)}
		places = m.shape(w, &sh, sh.At)
		for i := range n {
			of := func(p profile) string {
				if len(p) == 0 {
					return "0"
				}
				return p.last().d.String()
			}
			left, right = append(left, of(m.left[i])), append(right, of(m.right[i]))
		}
		return left, right, places
	}
	four := Shaping{Increase: true, By: expr.Counts(4), Every: expr.Counts(2), Times: expr.Counts(1), At: Across}
	left, right, _ := moved(row(false, 30, 10), four)
	assert.Equal(t, []string{"1.5", "0.5"}, left)
	assert.Equal(t, []string{"1.5", "0.5"}, right)
	left, right, _ = moved(row(true, 40), four)
	assert.Equal(t, [][]string{{"2"}, {"2"}}, [][]string{left, right})
	four.At, four.Increase = BothEdges, false
	left, right, places := moved(row(false, 30, 10), four)
	assert.Equal(t, [][]string{{"-4", "0"}, {"0", "-4"}}, [][]string{left, right})
	assert.Equal(t, 2, places)
	four.At = RightEdge
	left, right, places = moved(row(false, 30, 10), four)
	assert.Equal(t, [][]string{{"0", "0"}, {"0", "-4"}}, [][]string{left, right})
	assert.Equal(t, 1, places)
}

// By hand: a rib of 4 that goes by 4 asks that of the count before it where the piece ends after it, or one row shapes across any count; where fabric follows it does not, nor worked flat.
func TestWhatARibThatComesNextAsks(t *testing.T) {
	rib, fabric, end := &Even{Rib: true}, &Even{}, &BindOff{All: true}
	once := &Shape{Shapings: []Shaping{{At: Across, By: expr.Counts(4), Every: expr.Counts(1), Times: expr.Counts(1)}}}
	steps := map[Section]Step{rib: {Rows: 6}, fabric: {Rows: 9}, end: {Before: 40}, once: {Rows: 1, Before: 40, After: 44}}
	need := func(round bool, next ...Section) Need {
		f := &Fitting{Chooser: &nearest{ribs: map[Section]Need{rib: {4, 2}}}, Steps: steps, Round: round, next: next}
		return f.ribNext()
	}
	assert.Equal(t, Need{4, 2}, need(true, rib))
	assert.Equal(t, Need{4, 2}, need(true, rib, end))
	assert.Equal(t, Need{4, 2}, need(true, rib, once))
	assert.Equal(t, Need{4, 2}, need(true, &Fold{}, rib, end), "what is no row lies between")
	assert.Equal(t, Need{}, need(true, rib, fabric))
	assert.Equal(t, Need{}, need(true, rib, fabric, end))
	assert.Equal(t, Need{}, need(false, rib, end))
	assert.Equal(t, Need{}, need(true, fabric, rib))
	assert.Equal(t, Need{}, need(true))
}

// between is a chooser between two gauges.
type between struct {
	nearest
	was, now Gauge
}

func (c *between) Gauge(string) (was, now Gauge) { return c.was, c.now }

// By hand, at 20 stitches and 20 rows over 10 cm: a corner of 90 degrees takes two stitches a row, 2 × tan 45°. One row is one decrease of two; two rows are two of them; at 40 rows for 20 stitches a row is half
// as high and takes one stitch: two stitches every second row.
func TestACornerIsShapedByItsAngle(t *testing.T) {
	of := func(rows, wasSts, wasRows, sts, nowRows int64) mitring {
		g := func(s, r int64) Gauge { return Gauge{Stitches: units.Int(s), Rows: units.Int(r), Over: units.Int(100)} }
		f := &Fitting{Chooser: &between{was: g(wasSts, wasRows), now: g(sts, nowRows)}, N: 60, step: Step{Rows: int(rows), After: 30}}
		return f.mitred(&Mitre{Increase: true}, mitring{2, 7, 9}, math.Pi/4)
	}
	assert.Equal(t, mitring{2, 1, 1}, of(1, 20, 20, 20, 20))
	assert.Equal(t, mitring{2, 1, 2}, of(2, 20, 20, 20, 20))
	assert.Equal(t, mitring{2, 2, 10}, of(20, 20, 40, 20, 40))
	assert.Equal(t, mitring{2, 1, 20}, of(10, 20, 20, 40, 40))
}

// By hand: of 30 stitches parts of 12, 1 and 17. A right-side row meets the first at the right, a mirror's row at the left; a part that a size has not takes none.
func TestWhereThePartsOfARowLie(t *testing.T) {
	s := &Divide{Parts: []Part{{Name: "a", Stitches: expr.Counts(12)}, {Name: "none", Stitches: expr.Counts(0)}, {Name: "b", Stitches: expr.Counts(1)}, {Name: "c", Stitches: expr.Counts(17)}}}
	of := func(mirror bool) (out []string) {
		for _, p := range s.places(0, 30, mirror) {
			out = append(out, fmt.Sprint(p.part.Name, " ", p.from, "-", p.to))
		}
		return out
	}
	assert.Equal(t, []string{"a 0-12", "b 12-13", "c 13-30"}, of(true))
	assert.Equal(t, []string{"c 0-17", "b 17-18", "a 18-30"}, of(false))
}

func TestWhichSizesHaveAPiece(t *testing.T) {
	none := expr.Graded{Vals: []units.Num{units.Int(2), {}, units.Int(1)}, Has: []bool{true, true, false}}
	for i, want := range []bool{true, false, false} {
		assert.Equal(t, want, (&builder{i: i}).madeIn(&Piece{Make: none}), "%d", i)
		assert.True(t, (&builder{i: i}).madeIn(&Piece{}), "made once, if nothing is said")
	}
}

// By hand: 4 and 6 of 10 added stitches are 2 and 3 of 5, and 3 and 4 of 7: 2.8 and 7.
func TestAddedStitchesArePartedAsTheyWere(t *testing.T) {
	for n, want := range map[int][2]int{10: {4, 6}, 5: {2, 3}, 7: {3, 4}, 1: {0, 1}} {
		was := &JoinParts{Of: []JoinPart{{Added: expr.Counts(4)}, {}, {Added: expr.Counts(6)}}}
		now := &JoinParts{Of: []JoinPart{{Added: expr.Counts(4)}, {}, {Added: expr.Counts(6)}}}
		(&Fitting{}).add(now, was, n, 10)
		assert.Equal(t, want, [2]int{now.Of[0].Added.Int(0, 0), now.Of[2].Added.Int(0, 0)}, "%d", n)
		assert.True(t, now.Of[1].Added.IsZero())
	}
}

// By hand: five stitches once stay five once; a third fewer or more often, and two at the least, is near enough.
func TestAShapingThatFallsOnceStaysSo(t *testing.T) {
	for _, c := range [][6]int{{5, 5, 1, 40, 5, 1}, {6, 6, 1, 1, 6, 1}, {4, 2, 2, 40, 2, 2}, {7, 1, 7, 7, 1, 7}} {
		b, m := times(c[0], c[1], c[2], c[3])
		assert.Equal(t, [2]int{c[4], c[5]}, [2]int{b, m}, "%v", c)
	}
}

// By hand, at three quarters of the stitches: panels of 28, 12, 28 and 12 are 21, 9, 21 and 9, and 72 and 56 after 22 increases at each line are 54 and 42. 16 times two are 53 and 41; 17 times
// two are 55 and 43, a stitch past both.
func TestPanelsAreNotShapedPastTheirWidth(t *testing.T) {
	f := &Fitting{Chooser: &nearest{}, Round: true, N: 60, step: Step{Before: 80, After: 256, Rows: 30}}
	for _, n := range []int{28, 12, 28, 12} {
		f.panels = append(f.panels, fitPanel{fmt.Sprint("panel ", n), n, n * 3 / 4})
	}
	line := Shaping{Increase: true, At: Lines, By: expr.Counts(1), Every: expr.Counts(1), Times: expr.Counts(22)}
	was, now := &Shape{Shapings: []Shaping{line}}, &Shape{Shapings: []Shaping{line}}
	s := &spreading{f: f, s: now}
	assert.False(t, s.overPanels(was, 16))
	assert.True(t, s.overPanels(was, 17))
	now.Shapings[0].Panel = "panel 28"
	assert.False(t, s.overPanels(was, 17), "one panel alone is shaped by its own count")
	now.Shapings[0].Panel, now.Shapings[0].At = "", BothEdges
	assert.False(t, s.overPanels(was, 17))
	for k, want := range []int{2, 2, 2, 2} {
		assert.Equal(t, want, f.edges(k))
	}
	f.Round = false
	for k, want := range []int{1, 2, 2, 1} {
		assert.Equal(t, want, f.edges(k))
	}
}

// By hand: a triangle's corners of 60 degrees reach √3 as far as its sides do, half a hexagon's and a hexagon's of 120 degrees 2/√3.
func TestHowFarAGridReachesBeyondItsMotifs(t *testing.T) {
	for s, want := range map[MotifShape][2]float64{Square: {1, 1}, Triangle: {1.7320508, 1}, Hexagon: {1, 1.1547005}, HalfHexagon: {1, 1.1547005}} {
		x, y := s.beyond()
		assert.InDelta(t, want[0], x, 1e-6)
		assert.InDelta(t, want[1], y, 1e-6)
	}
	assert.InDelta(t, 1.7320508, Triangle.apart(), 1e-6)
	assert.InDelta(t, 1, Square.apart(), 0)
}

// By hand, at three quarters of the stitches: 50 are 37.5, to the next 38, and to a multiple of 4 for the rib that follows 40; where fabric follows the rib the count is its own.
func TestAShapingBeforeARibMeetsItsRepeat(t *testing.T) {
	rib, end, fabric := &Even{Rib: true}, &BindOff{All: true}, &Even{}
	for want, next := range map[int][]Section{40: {rib, end}, 38: {rib, fabric}} {
		across := func() *Shape {
			return &Shape{Shapings: []Shaping{{Increase: true, By: expr.Counts(10), At: Across, Every: expr.Counts(1), Times: expr.Counts(1)}}}
		}
		f := &Fitting{Chooser: &nearest{ribs: map[Section]Need{rib: {4, 0}}}, Steps: map[Section]Step{rib: {Rows: 6}, fabric: {Rows: 6}, end: {Before: 50}}, Round: true, next: next,
			N: 30, step: Step{Before: 40, After: 50, Rows: 1}}
		(&spreading{f: f, s: across(), total: 1}).one(across())
		assert.Equal(t, want, f.N)
	}
}

// A width goes on to the end where a later level of its part ends as wide and in its place.
func TestWhichWidthsGoOnToTheEnd(t *testing.T) {
	at := func(l, r int64, part string, end bool) level {
		return level{l: units.Int(l), r: units.Int(r), part: part, end: end}
	}
	for _, c := range []struct {
		last level
		want bool
	}{
		{at(0, 100, "", true), true}, {at(0, 100, "", false), false}, {at(0, 90, "", true), false}, {at(10, 100, "", true), false}, {at(0, 100, "Back", true), false},
	} {
		assert.Equal(t, c.want, endsAt([]level{at(0, 100, "", true), at(5, 80, "", false), c.last}, 0), "%+v", c.last)
	}
	assert.False(t, endsAt([]level{at(0, 100, "", true)}, 0), "not itself")
}

// By hand: 9 in every 5 of 14 rows are twice 9 and, in the 4 that are left, 2 in each; 3 in every 4 of 14 are three times 3 and 2. One in each of 6 short rows, two in each of 5 tall ones between the ends and one at either
// end are 6 + 10 + 2, of 13 rows; of 12 there is one end: 6 + 10 + 1.
func TestStitchesPickedUpAlongABand(t *testing.T) {
	for _, c := range []struct {
		s          PickUp
		rows, want int
		how        string
	}{
		{PickUp{Pick: 9, Of: 5}, 14, 26, "14 rows, 9 in every 5, 4 rows over"}, {PickUp{Pick: 3, Of: 4}, 14, 11, "14 rows, 3 in every 4, 2 rows over"}, {PickUp{Pick: 2, Of: 1}, 14, 28, "14 rows × 2"},
		{PickUp{Alternate: true, Short: 1, Tall: 2, Ends: 1}, 13, 18, "6 short rows × 1 + 5 tall rows × 2 + 2 at an end × 1"},
		{PickUp{Alternate: true, Short: 1, Tall: 2, Ends: 1}, 12, 17, "6 short rows × 1 + 5 tall rows × 2 + 1 at an end × 1"},
		{PickUp{Alternate: true, Short: 1, Tall: 2, Ends: 3}, 1, 3, "0 short rows × 1 + 0 tall rows × 2 + 1 at an end × 3"},
	} {
		n, how := c.s.picked(c.rows)
		assert.Equal(t, c.want, n, "%+v", c.s)
		assert.Equal(t, c.how, how)
	}
}
