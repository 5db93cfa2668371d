package grade

import (
	"fmt"
	"math"

	"flatwright/schematic/units"
)

// CapIn is what a set-in sleeve cap is reckoned from. Lengths are in mm.
type CapIn struct {
	Upper   int       // stitches at the upper arm
	First   int       // stitches bound off first at each side, as at the armhole
	Armhole units.Num // front and back armhole edges together, their first bind-offs among them
	Ease    units.Num // how much longer the cap is; negative for shorter
	Cloth   Cloth
	Step    int        // 1: decreases on any row, 2: on right-side rows alone
	Leave   bool       // stitches are left at both edges of a row (crochet), not bound off at the beginning of two
	Top     units.Num  // wished width of the flat top; 0 chooses
	Unit    units.Unit // in which the arithmetic is told
}

// CapPlan is a cap that fits its armhole.
type CapPlan struct {
	Edge   Edge   // one side, its first move the first bind-off
	Slots  [4]Run // the same decreases by their place: quick, slow, less slow, quick; none has Times 0
	Steps  Move   // the bind-offs of several stitches below the top, Times 0 for none
	Top    int    // stitches bound off last
	Rows   int    // from the first bind-off to the top
	Length units.Num
	Target units.Num // armhole and ease; Length is within half a stitch of it
	Lines  []string
}

// capShape is a cap in numbers: a fast stretch, a slow one, a fast one and
// steps of several stitches, in this order from the underarm.
type capShape struct {
	fast      int // rows between two decreases of the fast stretches
	low, high int // decreases of the two fast stretches
	slow      int // decreases of the slow stretch
	slowRows  int
	off, n    int // stitches of a step, and how many
	top       int
	length    float64
	worth     float64 // the less the better
}

// Bounds of the search: no armhole is deeper than a metre, and no numbers make it run
// away. A sleeve of 100 stitches has about as many shapes in all, and any that is worn finds its
// cap among the first.
const (
	mostCap    = 1000.0 // mm
	mostShapes = 100_000
)

// Cap reckons a sleeve cap whose edge is the armhole's plus the ease, to half a
// stitch, that begins with the armhole's own first bind-off and never decreases
// more than one stitch in a row at an edge unless stitches are bound off or
// left. The shape is the trade's bell (common practice): quick, slow, quick, and
// a flat top of about a quarter of the upper arm. It fails if no such cap exists.
func Cap(in CapIn) (CapPlan, error) {
	var p CapPlan
	wide := in.Upper - 2*in.First
	w, h := in.Cloth.Stitch.Float(), in.Cloth.Row.Float()
	if in.Step < 1 || in.First < 0 || wide < 3 || w <= 0 || h <= 0 || in.Upper > maxCount {
		return p, fmt.Errorf("a cap needs a gauge and more stitches than the %d bound off at each side of %d", in.First, in.Upper)
	}
	p.Target = in.Armhole.Add(in.Ease)
	goal, wish := p.Target.Float(), wished(in).Float()
	p.say("upper arm %d − 2 × %d (%s %d at each side as at the armhole) = %d", in.Upper, in.First, offWord(in.Leave), in.First, wide)
	p.say("armhole %s + ease %s = %s to fit", longIn(in.Armhole, in.Unit), longIn(in.Ease, in.Unit), longIn(p.Target, in.Unit))
	if goal <= float64(in.Upper)*w {
		return p, fmt.Errorf("the armhole with its ease is %s, shorter than the sleeve is wide (%s): make the armhole deeper or the sleeve narrower",
			longIn(p.Target, in.Unit), longIn(in.Cloth.Stitch.Times(in.Upper), in.Unit))
	}
	best, ok := capSearch(in, wide, goal, wish)
	if !ok {
		return p, fmt.Errorf("no cap of %d stitches comes within half a stitch of %s in whole rows", in.Upper, longIn(p.Target, in.Unit))
	}
	return p, p.fill(in, best, wide)
}

// wished is how wide the flat top should be: a quarter of the upper arm if nothing is said.
func wished(in CapIn) units.Num {
	if in.Top.Sign() > 0 {
		return in.Top
	}
	return in.Cloth.Stitch.Times(in.Upper).Div(units.Int(4))
}

// capSearch tries shapes near the trade's bell first, then all others.
func capSearch(in CapIn, wide int, goal, wish float64) (capShape, bool) {
	left := mostShapes
	if s, ok := capNear(in, wide, goal, wish, true, &left); ok {
		return s, true
	}
	return capNear(in, wide, goal, wish, false, &left)
}

func capNear(in CapIn, wide int, goal, wish float64, near bool, left *int) (best capShape, ok bool) {
	w := in.Cloth.Stitch.Float()
	tolerance := w / 2
	most, slack := wide/4, wish // bind-offs of several stitches, distance from the top wished
	if near {
		most, slack = 0, wish/3
	}
	// Steps cost shape: take the fewest with which a cap exists.
	for n := 0; n <= most && !ok; n++ {
		for off := 2; off <= 6 && (n > 0 || off == 2); off++ {
			for top := 2 - wide%2; top < wide; top += 2 {
				k := (wide-top)/2 - n*off
				if *left--; *left < 0 {
					return best, ok
				}
				if math.Abs(float64(top)*w-wish) > slack || k < 0 || n > 0 && top < off {
					continue
				}
				from, to := 0, k
				if near {
					from, to = max(0, k/4-max(2, k/12)), min(k, k/4+max(2, k/12))
				}
				for fast := in.Step; fast <= 2; fast++ {
					for low := from; low <= to; low++ {
						for high := max(0, low-1); high <= low+1 && low+high <= k; high++ {
							if *left--; *left < 0 {
								return best, ok
							}
							s := capShape{fast: fast, low: low, high: high, slow: k - low - high, off: off, n: n, top: top}
							if !s.settle(in, goal) || math.Abs(s.length-goal) > tolerance {
								continue
							}
							s.judge(k, wish, w)
							if !ok || s.worth < best.worth-1e-9 {
								best, ok = s, true
							}
						}
					}
				}
			}
		}
	}
	return best, ok
}

// settle finds the rows of the slow stretch that bring the edge nearest to goal;
// false if its rows can't hold its decreases.
func (s *capShape) settle(in CapIn, goal float64) bool {
	w, h := in.Cloth.Stitch.Float(), in.Cloth.Row.Float()
	level := off(in.First, 1, in.Leave).rows() + off(s.off, s.n, in.Leave).rows()
	fixed := float64(s.top)*w + 2*(math.Hypot(float64(s.low)*w, float64(s.low*s.fast)*h)+
		math.Hypot(float64(s.high)*w, float64(s.high*s.fast)*h)+
		float64(in.First+s.n*s.off)*w+float64(level)*h)
	rest := (goal - fixed) / 2 // of one side, for the slow stretch
	if rest < 0 {
		return false
	}
	if s.slow == 0 {
		s.slowRows = max(0, int(math.Round(rest/h)))
		if s.slowRows > 0 {
			return false // a cap has no upright sides
		}
		s.length = fixed
		return true
	}
	run := float64(s.slow) * w
	if rest < run || rest > mostCap {
		return false
	}
	rows := int(math.Round(math.Sqrt(rest*rest-run*run) / h))
	least := s.slow * max(in.Step, s.fast)
	if s.low+s.high > 0 {
		least++ // slower than the fast stretches
	}
	if rows < least {
		return false
	}
	if in.Step == 2 {
		rows -= rows % 2
	}
	s.length, s.slowRows = 0, 0
	for _, r := range []int{rows - in.Step, rows, rows + in.Step} {
		if r < least {
			continue
		}
		length := fixed + 2*s.slowLength(in, r, w, h)
		if s.length == 0 || math.Abs(length-goal) < math.Abs(s.length-goal) {
			s.length, s.slowRows = length, r
		}
	}
	return s.length > 0
}

// slowLength is the slow stretch as it will be drawn: each of its two spacings one slant.
func (s *capShape) slowLength(in CapIn, rows int, w, h float64) float64 {
	short, more := rows/in.Step/s.slow, rows/in.Step%s.slow
	a := math.Hypot(float64(more)*w, float64(more*(short+1)*in.Step)*h)
	n := s.slow - more
	return a + math.Hypot(float64(n)*w, float64(n*short*in.Step)*h)
}

// judge weighs how far a shape is from the trade's bell.
func (s *capShape) judge(k int, wish, w float64) {
	quarter := float64(k) / 4
	s.worth = math.Abs(float64(s.top)*w-wish)/wish + math.Abs(float64(s.low)-quarter)/(quarter+1) +
		math.Abs(float64(s.high)-quarter)/(quarter+1) + 0.2*float64(s.off)
	if s.slow > 0 && s.slowRows/s.slow > 4 {
		s.worth += float64(s.slowRows/s.slow - 4) // nearly upright
	}
}

func (p *CapPlan) fill(in CapIn, s capShape, wide int) error {
	p.Edge = Edge{off(in.First, 1, in.Leave)}
	slow, err := Spread(s.slow, s.slowRows, in.Step, SlowFirst)
	if err != nil {
		return err
	}
	p.Slots = [4]Run{{s.fast, s.low}, {s.fast, 0}, {s.fast, 0}, {s.fast, s.high}}
	copy(p.Slots[1:3], slow.Runs)
	for _, r := range p.Slots {
		last := &p.Edge[len(p.Edge)-1]
		switch {
		case r.Times == 0:
		case len(p.Edge) > 1 && last.Every == r.Every:
			last.Times += r.Times
		default:
			p.Edge = append(p.Edge, Move{Every: r.Every, Times: r.Times})
		}
	}
	if s.n > 0 {
		p.Steps = off(s.off, s.n, in.Leave)
		p.Edge = append(p.Edge, p.Steps)
	}
	p.Top = s.top
	p.Rows = p.Edge.Rows()
	p.Length = milli(2*p.Edge.Length(in.Cloth) + float64(s.top)*in.Cloth.Stitch.Float())
	each := (wide - s.top) / 2
	p.say("found by trying caps near the trade's bell (quick, slow, quick; a top of about %s): a top of %d sts, %s",
		longIn(wished(in), in.Unit), s.top, longIn(in.Cloth.Stitch.Times(s.top), in.Unit))
	p.say("%d − %d at the top = %d to lose, %d at each side", wide, s.top, wide-s.top, each)
	p.say("each side: %s", p.Edge)
	p.say("the edge of one side: %s", p.Edge.sum(in.Cloth, in.Unit))
	p.say("twice that and the top are %s, %s from what is to fit (half a stitch is %s)",
		longIn(p.Length, in.Unit), signed(p.Length.Sub(p.Target), in.Unit), longIn(in.Cloth.Stitch.Half(), in.Unit))
	p.say("%d rows are %s high", p.Rows, longIn(in.Cloth.Row.Times(p.Rows), in.Unit))
	return nil
}

func (p *CapPlan) say(format string, args ...any) {
	p.Lines = append(p.Lines, fmt.Sprintf(format, args...))
}
