package schematic

import (
	"fmt"
	"slices"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// Need is what a count must be: Plus more than a multiple of Multiple. A Multiple of 0 or 1 allows any.
type Need struct{ Multiple, Plus int }

// holds reports whether n is as needed.
func (n Need) holds(count int) bool { return n.Multiple < 2 || mod(count-n.Plus, n.Multiple) == 0 }

// and is what fulfils both; n alone if nothing does.
func (n Need) and(o Need) Need {
	if o.Multiple < 2 {
		return n
	}
	if n.Multiple < 2 {
		return o
	}
	for k := range o.Multiple {
		if c := n.Plus + k*n.Multiple; o.holds(c) {
			return Need{n.Multiple / gcd(n.Multiple, o.Multiple) * o.Multiple, c}.bounded()
		}
	}
	return n
}

// of is what x must be so that from + k·x is as needed; anything if no x does that.
func (n Need) of(from, k int) Need {
	if n.Multiple < 2 || k == 0 {
		return Need{}
	}
	for x := range n.Multiple {
		if n.holds(from + k*x) {
			return Need{n.Multiple / gcd(n.Multiple, k), x}.bounded()
		}
	}
	return Need{}
}

// bounded is n, or nothing where its multiple is beyond all counts.
func (n Need) bounded() Need {
	const most = 20_000
	if n.Multiple < 2 || n.Multiple > most {
		return Need{}
	}
	n.Plus = mod(n.Plus, n.Multiple)
	return n
}

func mod(a, m int) int { return (a%m + m) % m }

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, -a)
}

// Chooser makes the choices of an alteration.
type Chooser interface {
	// Near is the count nearest to exact that need allows, and not less than least. Choices of one
	// name are made alike in the whole garment.
	Near(name string, exact units.Num, need Need, least int) int
	// Spread spreads n shapings over rows, each on every step-th row at most; nothing if they do not fit.
	Spread(n, rows, step int) []Spacing
	// Gauge is a gauge as published and as it is now.
	Gauge(name string) (was, now Gauge)
	// Live is how many stitches of another piece a start takes up now.
	Live(of HeldPart) int
	// Tell says what of a section can't be altered as it should.
	Tell(s Section, format string, args ...any)
	// Part says in words how shapings that were alike are parted into two kinds now.
	Part(s Section, format string, args ...any)
	// Rule is what the line of the grading asks of a count that it gave.
	Rule(g expr.Graded) Need
	// Rib is the multiple that the stitches of a rib are in all sizes as published.
	Rib(s Section) Need
	// Pair notes that the rows of this name go in twos, and Paired reports whether some do: rows of one name
	// are alike in the whole garment.
	Pair(name string)
	Paired(name string) bool
	// Odd says what is not alike any more so that a count comes out, which costs something.
	Odd(s Section, format string, args ...any)
	// TellRate says that stitches are picked up along an edge at another rate.
	TellRate(s Section, edge string, pick, of, wasPick, wasOf int)
}

// Fitting is one piece whose numbers are chosen anew for other gauges, or for another height:
// each width and each height is rounded once, from the edge where the piece begins, so that
// what is rounded away in one section is made up for in the next. Sections as published and as
// they are now stand side by side.
type Fitting struct {
	Chooser
	Steps map[Section]Step      // as published, by the sections as published
	Extra map[Section]units.Num // mm by which a section is to be higher
	Made  map[Section]int       // rows that a section with Extra came to
	Twos  map[Section]bool      // whether they go in twos
	N     int                   // stitches of the row in work
	Gauge string
	Round bool
	RS    bool // the next row is a right-side row

	want, have units.Num // height to here as it should be, and as it is
	step       Step      // of the section at hand, as published
	next       []Section // that follow it, as published
	moved      bool      // the section at hand has told its height
	ends       map[string]partEnd
	divided    [2]int          // stitches of the row that was divided, as published and now
	before     []Section       // come before the section at hand
	after      []Section       // come after it
	cast       *CastOn         // the section before, if it began the piece
	last       *Even           // or if it has rows enough, worked even, to change the count in one of them
	owed, back int             // stitches of the row in work beyond the fabric's, for the repeat of a rib, and of the rib at hand beyond the row after it
	steps      map[Side][2]int // stitches taken off there so far by steps that follow each other, as published and now
	follow     int             // sections from there, where steps may follow
	odd        int             // stitches that the next section decreases, or increases, once, beside its own
	band       *Sideways
	panels     []fitPanel // of the row in work, as a right-side row meets them
	shifted    bool       // what follows needs another remainder than as published
	more       int        // stitches of every row beyond those published, in a piece worked from side to side that is to be longer
}

// partEnd is where a part of a division ends.
type partEnd struct {
	n          int
	want, have units.Num
	rs         bool
	on         bool // it is worked on
}

// Fit chooses the numbers of sections anew; was are the same as published. Steps that no longer come out alike
// go on in a section of their own.
func (f *Fitting) Fit(now, was []Section) []Section {
	if f.ends == nil {
		f.ends = map[string]partEnd{}
	}
	var out []Section
	for i, s := range now {
		old := was[i]
		f.step, f.next, f.moved = f.Steps[old], was[i+1:], false
		if f.step.Before, f.step.After = f.step.Before+f.more, f.step.After+f.more; f.step.After == f.more && f.more != 0 {
			f.step.After = 0
		}
		if g := s.Base().Gauge; g != "" {
			f.Gauge = g
		}
		if f.N == 0 && f.step.Before > 0 && !s.Traits().Starts && len(f.ends) == 0 {
			f.N = f.count("row", f.step.Before, Need{})
		}
		if _, longer := f.Extra[old]; longer { // its numbers are its own now
			s = with(s, func(g expr.Graded) expr.Graded { g.From = nil; return g })
		}
		f.before, f.after, f.back = nil, nil, 0
		s.fit(f, old)
		f.beforeRib(s)
		if !f.moved {
			f.rise(f.step.Rows)
		}
		if b := s.Base(); !b.To.IsZero() {
			f.put(&b.To, f.N+f.back)
		}
		out = append(append(append(out, f.before...), s), f.after...)
	}
	return out
}

// put sets a number, unless it was worked out of the grading, and gives what it is then.
func (f *Fitting) put(at *expr.Graded, n int) int {
	if at.From != nil {
		return at.Int(0, 0)
	}
	*at = expr.Counts(n)
	return n
}

// ratio is how many stitches, and rows, now are as wide, and as high, as one was.
func (f *Fitting) ratio() (sts, rows units.Num) {
	was, now := f.Chooser.Gauge(f.Gauge)
	return was.StitchWidth().Div(now.StitchWidth()), was.RowHeight().Div(now.RowHeight())
}

// name is that of a choice: alike wherever the same was published at the same place.
func (f *Fitting) name(what string, published int) string {
	return fmt.Sprintf("%s %d, %s, row %d, %d to %d", what, published, f.Gauge, f.step.FirstRow, f.step.Before, f.step.After)
}

// count is so many stitches anew: the nearest to as wide.
func (f *Fitting) count(what string, published int, need Need) int {
	if published == 0 {
		return 0
	}
	sts, _ := f.ratio()
	if !f.shifted && !need.holds(published) {
		need = Need{}
	}
	return f.Near(f.name(what, published), sts.Times(published), need, 1)
}

// needs is what the count after the section at hand must be for what follows.
func (f *Fitting) needs() Need {
	f.shifted = false
	n := f.needFrom(f.next)
	if !f.shifted && !n.holds(f.step.After) {
		return Need{}
	}
	return n
}

func (f *Fitting) needFrom(list []Section) Need {
	if len(list) == 0 {
		return Need{}
	}
	return list[0].need(f, f.needFrom(list[1:]))
}

// rowsName is the name of the choice of rows: alike in pieces that are worked side by side, such as front and back.
func (f *Fitting) rowsName(published int) string {
	return fmt.Sprintf("rows %d, %s, row %d", published, f.Gauge, f.step.FirstRow)
}

// rise works so many rows where so many were published, and tells the height.
func (f *Fitting) rise(n int) {
	was, now := f.Chooser.Gauge(f.Gauge)
	f.want = f.want.Add(was.RowHeight().Times(f.step.Rows))
	f.have = f.have.Add(now.RowHeight().Times(n))
	f.moved = true
	if !f.Round && n%2 == 1 {
		f.RS = !f.RS
	}
}

// rows are those of the section at hand anew, so that it ends at the height at which it ended.
func (f *Fitting) rows(s Section, need Need) int {
	published := f.step.Rows
	if published == 0 {
		f.moved = true
		return 0
	}
	was, now := f.Chooser.Gauge(f.Gauge)
	extra, longer := f.Extra[s]
	to := f.want.Add(was.RowHeight().Times(published)).Add(extra)
	name := f.rowsName(published)
	side := f.side(longer)
	if side.Multiple > 1 {
		f.Pair(name)
	} else if f.Paired(name) {
		side = f.sameSide()
	}
	n := f.Near(name, to.Sub(f.have).Div(now.RowHeight()), need.and(side), 1)
	if longer {
		f.Made[s] = n
		f.Twos[s] = side.Multiple == 2
	}
	switch {
	case longer && slices.ContainsFunc(f.next, func(s Section) bool { _, more := f.Extra[s]; return more }):
		f.want = f.want.Add(extra) // what is rounded away here is made up for there
	case longer:
		f.want = f.have.Add(now.RowHeight().Times(n)).Sub(was.RowHeight().Times(published)) // what follows is as high as it was
	}
	f.rise(n)
	return n
}

// side is what a number of rows must be so that what follows begins on the side of the work on
// which it began; with far, also what begins after rows that could make up for it.
func (f *Fitting) side(far bool) Need {
	if f.Round {
		return Need{}
	}
	for _, s := range f.next {
		step, there := f.Steps[s]
		if !there {
			continue
		}
		if s.sided() {
			return f.sameSide()
		}
		if s.Traits().Free && step.Rows > 0 && !far {
			break
		}
	}
	return Need{}
}

// sameSide is what a number of rows must be to end on the side of the work on which it ended.
func (f *Fitting) sameSide() Need {
	if f.Round {
		return Need{}
	}
	if after := f.step.FirstRS != (f.step.Rows%2 == 1); f.RS != after {
		return Need{2, 1}
	}
	return Need{2, 0}
}

// Sided reports why the rows of a section go in twos when it is altered: the words of the section
// after it that must begin on one side of the work.
func (f *Fitting) Sided(list []Section, s Section) (string, bool) {
	for i := range list {
		if list[i] != s {
			continue
		}
		for _, next := range list[i+1:] {
			if next.sided() {
				return Words(next), true
			}
		}
	}
	return "", false
}

// Sided reports whether something in a list of sections must begin on one side of the work.
func Sided(list []Section) bool {
	return slices.ContainsFunc(list, func(s Section) bool { return s.sided() })
}

// Beginning is a band as published, where its stitches are picked up along edges, and how many they are now.
type Beginning struct {
	Step Step
	N    int
}

// Begin begins a band that is worked onto edges.
func (f *Fitting) Begin(b Beginning) {
	f.step = b.Step
	if b.Step.Gauge != "" {
		f.Gauge = b.Step.Gauge
	}
	f.rise(b.Step.Rows)
	f.N = b.N
}

// BeginsFrom are the pieces from whose stitches or onto whose edges a piece is worked, as far as its text
// says them.
func BeginsFrom(q *Piece) []string {
	var out []string
	for _, s := range q.Sections {
		for _, p := range s.Traits().From {
			if p.Piece != "" {
				out = append(out, p.Piece)
			}
		}
	}
	return out
}
