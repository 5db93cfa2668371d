package shaping

import (
	"fmt"

	"flatwright/schematic/units"
)

// ArmholeIn is what an armhole is reckoned from: the stitches of a front or back
// at the underarm and across the shoulders, the rows from the underarm to the shoulder.
type ArmholeIn struct {
	Body, Cross int
	Rows        int
	First       int  // stitches bound off first at each side; 0 chooses
	Step        int  // 1: decreases on any row, 2: on right-side rows
	Leave       bool // stitches are left (crochet), not bound off
	Cloth       Cloth
	Unit        units.Unit // in which the arithmetic is told
}

// ArmholePlan is a shaped armhole edge, the same on both sides of the piece.
type ArmholePlan struct {
	First int // stitches bound off at the underarm
	Edge  Edge
	Lines []string // the arithmetic
}

// Armhole reckons an armhole. By common practice about a third of the
// stitches to lose, and not less than 2.5 cm, are bound off at the underarm,
// the others are decreased one a row, in at most two thirds of the depth, and the rest is even.
// Where the rows do not hold the decreases more is bound off. It fails if the
// stitches to lose are not alike for two sides or nothing is left.
func Armhole(in ArmholeIn) (ArmholePlan, error) {
	var p ArmholePlan
	lose := in.Body - in.Cross
	if in.Step < 1 || in.Rows < 1 || in.Cross < 1 || in.Cloth.Stitch.Sign() <= 0 || in.Cloth.Row.Sign() <= 0 {
		return p, fmt.Errorf("an armhole needs rows, stitches and a gauge")
	}
	if lose < 0 || lose%2 != 0 {
		return p, fmt.Errorf("%d stitches to %d are %d to lose, which two sides cannot share", in.Body, in.Cross, lose)
	}
	each := lose / 2
	p.say("%d − %d = %d stitches to lose, %d at each side", in.Body, in.Cross, lose, each)
	begin := off(1, 1, in.Leave).rows() // rows of the first bind-off
	slots := (in.Rows*2/3 - begin) / in.Step
	if slots < 0 {
		return p, fmt.Errorf("%d rows are too few for an armhole", in.Rows)
	}
	first := in.First
	if first <= 0 {
		inch, _, _ := Whole(units.Int(25).Div(in.Cloth.Stitch), Rule{Least: 1})
		first = min(each, max(inch, (each+2)/3))
		p.say("%s about a third of %d, and at least %s (%d), at the underarm: %d", offWord(in.Leave), each, LongIn(units.Int(25), in.Unit), inch, first)
	}
	if first > each {
		return p, fmt.Errorf("%d stitches cannot be bound off where %d are to be lost at each side", first, each)
	}
	if each-first > slots {
		p.say("two thirds of the %d rows hold %d decreases: %s %d instead of %d", in.Rows, slots, offWord(in.Leave), each-slots, first)
		first = each - slots
	}
	n := each - first
	p.First = first
	p.Edge = Edge{off(first, 1, in.Leave)}
	if n > 0 {
		p.Edge = append(p.Edge, Move{Every: in.Step, Times: n})
	}
	even := in.Rows - p.Edge.rows()
	if even > 0 {
		p.Edge = append(p.Edge, Move{Even: even})
	}
	p.say("each side: %s", p.Edge)
	p.say("%d rows there + %d × %d for the decreases + %d even = %d rows", p.Edge[0].rows(), n, in.Step, even, in.Rows)
	p.say("the edge: %s", p.Edge.sum(in.Cloth, in.Unit))
	return p, nil
}

func (a *ArmholePlan) say(format string, args ...any) {
	a.Lines = append(a.Lines, fmt.Sprintf(format, args...))
}
