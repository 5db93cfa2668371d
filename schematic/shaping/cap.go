package shaping

import (
	"fmt"
	"math"
	"slices"

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

// Caps reckons the sleeve caps of all sizes, from the smallest to the largest, together. The edge of a cap is the
// armhole's plus the ease, to half a stitch; it begins with the armhole's own first bind-off and never decreases more
// than one stitch in a row at an edge unless stitches are bound off or left. The shape is the trade's bell (common
// practice): quick, slow, quick, and a flat top of about a quarter of the upper arm. Of the caps that fit each size they are those
// whose tops and heights go with the sizes. A size for which there is no cap has an error, and the
// others are chosen as if it were not there.
func Caps(ins []CapIn) ([]CapPlan, []error) {
	plans, errs := make([]CapPlan, len(ins)), make([]error, len(ins))
	line := capLine{}
	for i, in := range ins {
		s, err := plans[i].begin(in)
		if err != nil {
			errs[i] = err
			continue
		}
		line = append(line, capSize{at: i, search: s, caps: s.all()})
	}
	shapes := line.choose()
	if back := line.goesBack(shapes); len(back) > 0 { // with more caps to choose from than those nearest to the bell
		for _, k := range back {
			line[k].search.look(false)
			line[k].caps = line[k].search.all()
		}
		shapes = line.choose()
	}
	for k, shape := range shapes {
		at := line[k].at
		errs[at] = plans[at].fill(ins[at], shape, line[k].search.wide)
	}
	return plans, errs
}

// begin is the search for the caps of one size, if there are any.
func (p *CapPlan) begin(in CapIn) (*capSearch, error) {
	wide := in.Upper - 2*in.First
	w, h := in.Cloth.Stitch.Float(), in.Cloth.Row.Float()
	if in.Step < 1 || in.First < 0 || wide < 3 || w <= 0 || h <= 0 || in.Upper > MaxCount {
		return nil, fmt.Errorf("a cap needs a gauge and more stitches than the %d bound off at each side of %d", in.First, in.Upper)
	}
	p.Target = in.Armhole.Add(in.Ease)
	s := &capSearch{in: in, wide: wide, goal: p.Target.Float(), wish: wished(in).Float(), left: mostShapes, found: map[int]capShape{}}
	p.say("upper arm %d − 2 × %d (%s %d at each side as at the armhole) = %d", in.Upper, in.First, offWord(in.Leave), in.First, wide)
	p.say("armhole %s + ease %s = %s to fit", LongIn(in.Armhole, in.Unit), LongIn(in.Ease, in.Unit), LongIn(p.Target, in.Unit))
	if s.goal <= float64(in.Upper)*w {
		fix := "make the armhole deeper or the sleeve narrower"
		if both := in.Armhole.Times(2).Add(in.Ease); s.goal*2 > float64(in.Upper)*w {
			fix = fmt.Sprintf("the armhole goes round front and back; if this is one of the two edges, write it twice (`2 x …`, %s)", LongIn(both, in.Unit))
		}
		return nil, fmt.Errorf("the armhole with its ease is %s, shorter than the sleeve is wide (%s): %s",
			LongIn(p.Target, in.Unit), LongIn(in.Cloth.Stitch.Times(in.Upper), in.Unit), fix)
	}
	s.look(true)
	if !s.meets() {
		s.look(false)
	}
	if len(s.found) == 0 {
		return nil, fmt.Errorf("no cap of %d stitches comes within half a stitch of %s in whole rows", in.Upper, LongIn(p.Target, in.Unit))
	}
	return s, nil
}

// wished is how wide the flat top should be: a quarter of the upper arm if nothing is said.
func wished(in CapIn) units.Num {
	if in.Top.Sign() > 0 {
		return in.Top
	}
	return in.Cloth.Stitch.Times(in.Upper).Div(units.Int(4))
}

// capSearch looks for the caps of one size: for each width of the top the one nearest to the trade's bell.
type capSearch struct {
	in         CapIn
	wide       int
	goal, wish float64
	left       int // shapes that may still be tried
	found      map[int]capShape
}

// moreSteps is by how many bind-offs below the top a cap may have more than the one that has fewest.
const moreSteps = 2

// look tries shapes near the trade's bell, or all.
func (c *capSearch) look(near bool) {
	most, slack := c.wide/4, c.wish
	if near {
		most, slack = 0, c.wish/3
	}
	for n, last := 0, most; n <= last; n++ {
		for off := 2; off <= 6 && (n > 0 || off == 2); off++ {
			c.tops(off, n, slack, near)
		}
		if len(c.found) > 0 {
			last = min(last, most, n+moreSteps)
			most = last
		}
	}
}

// meets reports whether there is a cap, and one with the top that was asked for, to a stitch.
func (c *capSearch) meets() bool {
	for _, s := range c.found {
		if c.in.Top.Sign() == 0 || !c.far(s) {
			return true
		}
	}
	return false
}

// far reports whether a top is further from the wish than a stitch.
func (c *capSearch) far(s capShape) bool {
	w := c.in.Cloth.Stitch.Float()
	return math.Abs(float64(s.top)*w-c.wish) > w+1e-9
}

// tops tries every width of the top near enough to the wish, with n bind-offs of off stitches below it.
func (c *capSearch) tops(off, n int, slack float64, near bool) {
	for top := 2 - c.wide%2; top < c.wide && c.left > 0; top += 2 {
		c.left--
		k := (c.wide-top)/2 - n*off
		if math.Abs(float64(top)*c.in.Cloth.Stitch.Float()-c.wish) > slack || k < 0 || n > 0 && top < off {
			continue
		}
		for fast := c.in.Step; fast <= 2; fast++ {
			c.curves(capShape{fast: fast, off: off, n: n, top: top}, k, near)
		}
	}
}

// curves tries how k decreases may part into a quick, a slow and a quick stretch.
func (c *capSearch) curves(s capShape, k int, near bool) {
	from, to := 0, k
	if near {
		from, to = max(0, k/4-max(2, k/12)), min(k, k/4+max(2, k/12))
	}
	w := c.in.Cloth.Stitch.Float()
	for low := from; low <= to; low++ {
		for high := max(0, low-1); high <= low+1 && low+high <= k; high++ {
			if c.left--; c.left < 0 {
				return
			}
			s.low, s.high, s.slow = low, high, k-low-high
			if s.settle(c.in, c.goal) && math.Abs(s.length-c.goal) <= w/2 {
				s.judge(k, c.wish, w, c.in.Top.Sign() > 0)
				c.keep(s)
			}
		}
	}
}

// keep keeps a cap that fits, if it is the best of those with its top.
func (c *capSearch) keep(s capShape) {
	if best, there := c.found[s.top]; !there || s.worth < best.worth-1e-9 {
		c.found[s.top] = s
	}
}

// all are the caps that were found, by their tops.
func (c *capSearch) all() []capShape {
	var out []capShape
	for _, s := range c.found {
		out = append(out, s)
	}
	slices.SortFunc(out, func(a, b capShape) int { return a.top - b.top })
	return out
}

// capSize is the caps that fit one size, and capLine those of all sizes in order.
type (
	capSize struct {
		at     int
		search *capSearch
		caps   []capShape
	}
	capLine []capSize
)

// choose takes one cap of each size so that they are worth most together: the least sum of what each is from the
// trade's bell and each from the cap of the size before, by the shortest way through the line.
func (l capLine) choose() []capShape {
	cost, from := make([][]float64, len(l)), make([][]int, len(l))
	for i, size := range l {
		cost[i], from[i] = make([]float64, len(size.caps)), make([]int, len(size.caps))
		for k, s := range size.caps {
			cost[i][k] = s.worth
			if i > 0 {
				from[i][k] = least(len(cost[i-1]), func(j int) float64 { return cost[i-1][j] + l.apart(i, l[i-1].caps[j], s) })
				cost[i][k] += cost[i-1][from[i][k]] + l.apart(i, l[i-1].caps[from[i][k]], s)
			}
		}
	}
	out := make([]capShape, len(l))
	for i, at := len(l)-1, 0; i >= 0; i-- {
		if i == len(l)-1 {
			at = least(len(cost[i]), func(k int) float64 { return cost[i][k] })
		}
		out[i] = l[i].caps[at]
		at = from[i][at]
	}
	return out
}

// goesBack are the sizes of which one has a narrower top than the other although its sleeve is no narrower.
func (l capLine) goesBack(of []capShape) []int {
	var out []int
	for i := 1; i < len(of); i++ {
		if l[i-1].search.wish <= l[i].search.wish && of[i].top < of[i-1].top {
			out = append(out, i-1, i)
		}
	}
	return slices.Compact(out)
}

// least is the first of n whose cost is the least.
func least(n int, cost func(i int) float64) int {
	at, low := 0, math.Inf(1)
	for i := range n {
		if c := cost(i); c < low-1e-9 {
			at, low = i, c
		}
	}
	return at
}

// apart is what it costs that the caps of sizes i-1 and i differ: in how their tops compare with the wish, and
// where a top or a height goes back although the sleeve does not.
func (l capLine) apart(i int, a, b capShape) float64 {
	before, now := l[i-1].search, l[i].search
	w := now.in.Cloth.Stitch.Float()
	cost := 2 * math.Abs(float64(a.top)*w/before.wish-float64(b.top)*w/now.wish)
	if before.wish <= now.wish && b.top < a.top {
		cost += backCosts + float64(a.top-b.top)*w/now.wish
	}
	if back := a.height(before.in) - b.height(now.in); before.goal-float64(before.in.Upper)*w <= now.goal-float64(now.in.Upper)*w && back > 0 {
		cost += backCosts * float64(back) / 4
	}
	return cost
}

// backCosts is what a top costs that is narrower than that of the size before: more than a bell that is half a quarter off.
const backCosts = 1.0

// height is the cap's rows.
func (s *capShape) height(in CapIn) int {
	return off(in.First, 1, in.Leave).rows() + off(s.off, s.n, in.Leave).rows() + s.fast*(s.low+s.high) + s.slowRows
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

// askedCosts is how much more a top counts that the designer asked for than the quarter of the trade.
const askedCosts = 10

// judge weighs how far a shape is from the trade's bell.
func (s *capShape) judge(k int, wish, w float64, asked bool) {
	quarter := float64(k) / 4
	top := math.Abs(float64(s.top)*w-wish) / wish
	if asked {
		top *= askedCosts
	}
	s.worth = top + 0.2*float64(s.n) + math.Abs(float64(s.low)-quarter)/(quarter+1) +
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
	p.Rows = p.Edge.rows()
	p.Length = Milli(2*p.Edge.Length(in.Cloth) + float64(s.top)*in.Cloth.Stitch.Float())
	each := (wide - s.top) / 2
	p.say("found by trying caps near the trade's bell (quick, slow, quick; a top of about %s): a top of %d sts, %s",
		LongIn(wished(in), in.Unit), s.top, LongIn(in.Cloth.Stitch.Times(s.top), in.Unit))
	p.say("%d − %d at the top = %d to lose, %d at each side", wide, s.top, wide-s.top, each)
	p.say("each side: %s", p.Edge)
	p.say("the edge of one side: %s", p.Edge.sum(in.Cloth, in.Unit))
	p.say("twice that and the top are %s, %s from what is to fit (half a stitch is %s)",
		LongIn(p.Length, in.Unit), Signed(p.Length.Sub(p.Target), in.Unit), LongIn(in.Cloth.Stitch.Half(), in.Unit))
	p.say("%d rows are %s high", p.Rows, LongIn(in.Cloth.Row.Times(p.Rows), in.Unit))
	return nil
}

func (p *CapPlan) say(format string, args ...any) {
	p.Lines = append(p.Lines, fmt.Sprintf(format, args...))
}
