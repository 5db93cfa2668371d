package shaping

import (
	"fmt"
)

// RaglanIn is what a raglan is reckoned from: the stitches of each piece at the
// underarm and at the neck, the rows from the underarm to the neck.
type RaglanIn struct {
	Back, Front, Sleeve             int
	NeckBack, NeckFront, NeckSleeve int
	Underarm                        int // stitches bound off or held at each side of each piece
	Rows                            int
	Step                            int // 1: decreases on any row, 2: on right-side rows alone
}

// RaglanLine is one raglan edge: of the stitches at the underarm, Decreases at
// each of the piece's two edges, spread by Plan, leave Neck.
type RaglanLine struct {
	Name             string
	Underarm, Neck   int
	Decreases        int
	Plan             Plan
	neckMoved        bool
	stitches, wished int
}

// RaglanPlan is a raglan whose edges all take the same rows, so that body and
// sleeve meet row to row; body and sleeve may decrease at rates of their own.
type RaglanPlan struct {
	Underarm int // as wished, or more where the rows do not hold the decreases
	Rows     int
	Step     int
	Pieces   [3]RaglanLine // back, front, sleeve
	Lines    []string      // the arithmetic
}

// Raglan reckons a raglan. A neck that would leave an odd stitch to two edges
// becomes one stitch wider. Where the rows of one side do not hold the decreases,
// every row is used; where those do not either, more stitches are bound off or held at the underarm, the
// same number on every piece. It fails if a sleeve or body has no stitches left for that.
func Raglan(in RaglanIn) (RaglanPlan, error) {
	p := RaglanPlan{Underarm: in.Underarm, Rows: in.Rows, Step: in.Step}
	p.Pieces = [3]RaglanLine{
		{Name: "back", stitches: in.Back, wished: in.NeckBack},
		{Name: "front", stitches: in.Front, wished: in.NeckFront},
		{Name: "sleeve", stitches: in.Sleeve, wished: in.NeckSleeve},
	}
	if in.Rows < 1 || in.Step < 1 || in.Underarm < 0 || in.Rows > MaxCount {
		return p, fmt.Errorf("a raglan needs rows, and an underarm of no less than 0 stitches")
	}
	most := 0 // decreases that the busiest edge needs without any underarm
	for i := range p.Pieces {
		l := &p.Pieces[i]
		l.Neck = l.wished
		if (l.stitches-l.Neck)%2 != 0 {
			l.Neck++
			l.neckMoved = true
		}
		if l.Neck < 0 || l.stitches < l.Neck+2*in.Underarm {
			return p, fmt.Errorf("the %s has %d stitches: %d at each underarm and %d at the neck do not come out of them", l.Name, l.stitches, in.Underarm, l.wished)
		}
		most = max(most, (l.stitches-l.Neck)/2)
	}
	if most-p.Underarm > in.Rows/p.Step && p.Step > 1 {
		p.say("%d decreases do not fit into the %d right-side rows of %d: every row may have one", most-p.Underarm, in.Rows/p.Step, in.Rows)
		p.Step = 1
	}
	if over := most - p.Underarm - in.Rows; over > 0 {
		p.say("%d decreases do not fit into %d rows: %d more stitches are bound off or held at each underarm", most-p.Underarm, in.Rows, over)
		p.Underarm += over
	}
	for i := range p.Pieces {
		l := &p.Pieces[i]
		l.Underarm = p.Underarm
		l.Decreases = (l.stitches-l.Neck)/2 - p.Underarm
		if l.Decreases < 0 {
			return p, fmt.Errorf("the raglan is %d rows deep, the busiest edge has %d stitches to lose and the %s only %d at each side: make it %d rows deep, or its neck narrower",
				in.Rows, most, l.Name, (l.stitches-l.Neck)/2, most-(l.stitches-l.Neck)/2)
		}
		step := p.Step
		if l.Decreases <= in.Rows/in.Step {
			step = in.Step
		}
		plan, err := Spread(l.Decreases, in.Rows, step, SlowFirst)
		if err != nil {
			return p, err
		}
		l.Plan = plan
		if l.neckMoved {
			p.say("%s: a neck of %d leaves an odd stitch, so it is %d", l.Name, l.wished, l.Neck)
		}
		p.say("%s: %d − 2 × %d at the underarms − %d at the neck = %d, so %d decreases at each edge over %d rows",
			l.Name, l.stitches, p.Underarm, l.Neck, 2*l.Decreases, l.Decreases, in.Rows)
		p.say("%s: %s", l.Name, SpreadWords(l.Decreases, in.Rows, step, plan))
	}
	return p, nil
}

func (p *RaglanPlan) say(format string, args ...any) {
	p.Lines = append(p.Lines, fmt.Sprintf(format, args...))
}
