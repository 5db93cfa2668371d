package grade

import (
	"fmt"
	"math"
	"slices"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// multipleFor is what the stitches before list must be a multiple of, so that the repeat
// rows that follow come out, one after the other; 1 if there are none before the count is
// chosen anew. The published count has to be such a multiple itself.
func multipleFor(list []schematic.Section, published int) int {
	m := needed(list)
	if m < 2 || published%m != 0 {
		return 1
	}
	return m
}

func needed(list []schematic.Section) int {
	for i, s := range list {
		switch s := s.(type) {
		case *schematic.Even, *schematic.Mark, *schematic.Fold, *schematic.ShortRows, *schematic.PickUp:
			continue // the count stays
		case *schematic.RepeatRow:
			if s.RestEven || s.Use < 1 || s.Makes < 1 {
				return 1
			}
			// Of Use × j stitches Makes × j come, which the rest of the list has its own wish of.
			m := needed(list[i+1:])
			m = s.Use * (m / gcd(m, s.Makes))
			if m > maxCount {
				return 1
			}
			return m
		}
		break
	}
	return 1
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// repeating is the rule for a count before list: even or odd as published, and a multiple that
// the repeats allow. In the round, and where the multiple is odd, evenness gives way to the repeat.
func (r *regauger) repeating(list []schematic.Section, published int) Rule {
	rule := Rule{Parity: Like(published), Least: 1}
	if m := multipleFor(list, published); m > 1 {
		rule.Multiple, rule.Least = m, m
		if r.round || m%2 == 1 {
			rule.Parity = AnyParity
		}
	}
	return rule
}

// toRepeat is the count nearest to wish that the repeats after a shaping allow and that its places reach from before.
func toRepeat(wish units.Num, before, places, m int) units.Num {
	near := int(wish.Round())
	for d := 0; d <= near+m; d++ {
		for _, n := range []int{near + d, near - d} {
			if n > 0 && n%m == 0 && (n-before)%max(places, 1) == 0 {
				return units.Int(int64(n))
			}
		}
		if d > 4*m*max(places, 1) {
			break
		}
	}
	return wish
}

// repeatRow works a repeat row over the stitches that there are. Those that do not
// come out are worked even, which is told.
func (r *regauger) repeatRow(s *schematic.RepeatRow, step schematic.Step, st *row) {
	use := max(s.Use, 1)
	rest := st.n % use
	if rest != 0 && !s.RestEven && step.Before%use == 0 {
		s.RestEven = true
		r.warn(s, "the %s repeats over %d stitches, and there are %d: it is kept, with the last %d worked even (or have %d or %d stitches before it)",
			sectionWords(s), use, st.n, rest, st.n-rest, st.n-rest+use)
	}
	st.n = st.n/use*s.Makes + rest
}

// ringed tells of a piece from a centre ring whose rounds grow by repeats: how many rounds there are is
// the pattern's, so that its width follows the gauge.
func (r *regauger) ringed(list []schematic.Section) {
	if _, ring := list[0].(*schematic.Ring); !ring {
		return
	}
	var last *schematic.RepeatRow
	for _, s := range list[1:] {
		if q, ok := s.(*schematic.RepeatRow); ok {
			last = q
			continue
		}
		break
	}
	if last == nil {
		return
	}
	was, now := r.cloth(r.steps[last].Gauge)
	n := r.steps[last].After
	a, b := was.Stitch.Times(n), now.Stitch.Times(n)
	if a.Eq(b) {
		return
	}
	more, grow := "fewer", n-r.steps[last].Before
	if b.Less(a) {
		more = "more"
	}
	tail := ""
	if grow > 0 {
		if rounds := a.Sub(b).Abs().Div(now.Stitch.Times(grow)).Round(); rounds > 0 {
			tail = fmt.Sprintf(": work about %s %s like the last one", countedIn(units.Int(rounds), expr.Plain)+" "+more, plural(rounds, "round", "rounds"))
		}
	}
	r.warn(last, "the rounds that grow from the ring are kept: their %d stitches are %s around at your gauge, not %s%s", n,
		longIn(b, r.p.Units), longIn(a, r.p.Units), tail)
}

func plural(n int64, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// mitre reckons a corner anew: its stitches keep their width and its rows their height, and so many
// stitches are shaped so often that it bends by its angle, to half a stitch. Work tells where it cannot.
func (r *regauger) mitre(s *schematic.Mitre, step schematic.Step, st *row) {
	by, every := s.By.Int(0, 0), max(1, s.Every.Int(0, 2))
	half := s.Angle.Float() * math.Pi / 360
	was, now := r.cloth(st.gauge)
	if by < 1 || s.Times.Int(0, 0) < 1 || half <= 0 || half > 1.5 {
		r.warn(s, "the mitre is kept as it is: work its corner at your own gauge and see that it lies flat")
		st.n += step.After - step.Before
		return
	}
	height := was.Row.Times(step.Rows).Float()
	rate := 2 * now.Row.Float() / now.Stitch.Float() * math.Tan(half) // stitches a row
	point := step.After <= by                                         // it runs into its point
	best := math.Inf(1)
	newBy, newEvery, newTimes := by, every, s.Times.Int(0, 0)
	for b := 2 - by%2; b <= by+2; b += 2 {
		for e := 1; e <= 12; e++ {
			times := int(math.Round(height / now.Row.Float() / float64(e)))
			switch {
			case s.Increase:
			case point:
				times = (st.n - max(1, step.After)) / b
			default:
				times = min(times, (st.n-1)/b)
			}
			if times < 1 {
				continue
			}
			rows := times * e
			bend := math.Abs(float64(b)/float64(e)-rate) * float64(rows) / 2 // stitches off the angle, at one arm
			off := bend + math.Abs(float64(rows)*now.Row.Float()-height)/now.Row.Float()/8
			if b != by {
				off += 0.25
			}
			if off < best-1e-9 {
				best, newBy, newEvery, newTimes = off, b, e, times
			}
		}
	}
	s.By, s.Every, s.Times = expr.Counts(newBy), expr.Counts(newEvery), expr.Counts(newTimes)
	d := newBy * newTimes
	if !s.Increase {
		d = -d
	}
	st.n += d
}

// rulesKept tells of counts that the pattern's grading holds to a rule (a multiple, even or odd), cast
// on or stated after a section, and that are otherwise now. i is the size in p, and now has it alone.
func rulesKept(p *schematic.Pattern, i int, now *schematic.Pattern) finding.List {
	var out finding.List
	for k, q := range now.Pieces {
		was, is := flat(p.Pieces[k].Sections), flat(q.Sections)
		for j, s := range is {
			old, n := stated(was[j], i), stated(s, 0)
			if old < 1 || n < 1 || old == n {
				continue
			}
			from, to := was[j].Base().Pos, finding.Pos{}
			if j+1 < len(was) {
				to = was[j+1].Base().Pos
			}
			g := ruled(p, i, old, from, to)
			if g == nil {
				continue
			}
			rule := Rule{Multiple: g.Multiple, Plus: g.Plus, Round: AtMost}
			if g.Even {
				rule.Parity = Even
			}
			if g.Odd {
				rule.Parity = Odd
			}
			low, step, err := Whole(units.Int(int64(n)), rule)
			if err != nil || low == n {
				continue
			}
			rule.Round = Nearest
			words := rule.String()
			if rule.Multiple > 1 {
				words = "a " + words
			}
			out = append(out, finding.Finding{Kind: "alter/section", Severity: finding.Note, Pos: from, Piece: q.Name,
				Message: fmt.Sprintf("%d stitches of the %s are not %s, as %s is in the pattern: %d or %d are", n, sectionWords(s), words, g.Name, low, low+step),
				Fix:     "take one of these if the stitch pattern or the other half needs it"})
		}
	}
	return out
}

// ruled is the line of the grading that gives the count old of size i in a call between two places of the file, if it has a rule.
func ruled(p *schematic.Pattern, i, old int, from, to finding.Pos) *schematic.Grading {
	before := func(a, b finding.Pos) bool { return a.Line < b.Line || a.Line == b.Line && a.Col < b.Col }
	for _, c := range p.Calls {
		if c.Sum.Root.Op != expr.Name || before(c.Pos, from) || to.Line > 0 && !before(c.Pos, to) || c.Vals.Int(i, 0) != old {
			continue
		}
		k := slices.IndexFunc(p.Grading, func(g schematic.Grading) bool { return key(g.Name) == key(c.Sum.Root.Name) })
		if k >= 0 && (p.Grading[k].Multiple > 1 || p.Grading[k].Even || p.Grading[k].Odd) {
			return &p.Grading[k]
		}
	}
	return nil
}

// flat are sections and those of their parts, in the order of the file.
func flat(list []schematic.Section) []schematic.Section {
	var out []schematic.Section
	for _, s := range list {
		out = append(out, s)
		if d, ok := s.(*schematic.Divide); ok {
			for i := range d.Parts {
				out = append(out, flat(d.Parts[i].Sections)...)
			}
		}
	}
	return out
}

// stated is the count that a section states: what it casts on, or how many there are after it.
func stated(s schematic.Section, i int) int {
	if c, ok := s.(*schematic.CastOn); ok {
		return c.Stitches.Int(i, 0)
	}
	return s.Base().To.Int(i, 0)
}
