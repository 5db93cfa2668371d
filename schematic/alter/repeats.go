package alter

import (
	"fmt"
	"slices"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/shaping"
	"flatwright/schematic/units"
)

// ringed tells of a piece from a centre ring whose rounds grow by repeats: how many rounds there are is
// the pattern's, so that its width follows the gauge.
func (t *trial) ringed(list []schematic.Section) {
	if len(list) == 0 || !list[0].Traits().Ring {
		return
	}
	var last schematic.Section
	for _, s := range list[1:] {
		if s.Traits().Use == 0 {
			break
		}
		last = s
	}
	if last == nil {
		return
	}
	wasGauge, nowGauge := t.Gauge(t.f.steps[last].Gauge)
	was, now := shaping.ClothOf(wasGauge), shaping.ClothOf(nowGauge)
	n := t.f.steps[last].After
	a, b := was.Stitch.Times(n), now.Stitch.Times(n)
	if a.Eq(b) {
		return
	}
	more, grow := "fewer", n-t.f.steps[last].Before
	if b.Less(a) {
		more = "more"
	}
	tail := ""
	if grow > 0 {
		if rounds := a.Sub(b).Abs().Div(now.Stitch.Times(grow)).Round(); rounds > 0 {
			tail = fmt.Sprintf(": work about %s %s like the last one", shaping.CountedIn(units.Int(rounds), expr.Plain)+" "+more, plural(rounds, "round", "rounds"))
		}
	}
	t.Tell(last, "the rounds that grow from the ring are kept: their %d stitches are %s around at your gauge, not %s%s", n,
		shaping.LongIn(b, t.p.Units), shaping.LongIn(a, t.p.Units), tail)
}

func plural(n int64, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// rulesKept tells of counts that the pattern's grading holds to a rule (a multiple, even or odd), cast
// on or stated after a section, and that are otherwise now. i is the size in p, and now has it alone.
func rulesKept(p *schematic.Pattern, i int, now *schematic.Pattern) finding.List {
	var out finding.List
	for k, q := range now.Pieces {
		was, is := flat(p.Pieces[k].Sections), flat(q.Sections)
		if len(was) != len(is) {
			continue // steps that an alteration has parted, in a pattern that is in no file
		}
		for j, s := range is {
			old, n := stated(was[j], i), stated(s, 0)
			if old < 1 || n < 1 || old == n {
				continue
			}
			from, to := was[j].Base().Pos, finding.Pos{}
			if j+1 < len(was) {
				to = was[j+1].Base().Pos
			}
			g, times := ruled(p, i, old, from, to)
			if g == nil {
				continue
			}
			if words, low, high, broken := breaks(g, times, n); broken {
				out = append(out, finding.Finding{Kind: "alter/section", Severity: finding.Note, Pos: from, Piece: q.Name,
					Message: fmt.Sprintf("%d stitches of the %s are not %s, as %s in the grading asks: %d or %d are", n, schematic.Words(s), words, g.Name, low, high),
					Fix:     "take one of these if the stitch pattern or the other half needs it"})
			}
		}
	}
	return out
}

// breaks reports whether a count is otherwise than so many times what a line of the grading asks, that in words, and the counts below and above it that are not.
func breaks(g *schematic.Grading, times, n int) (words string, low, high int, broken bool) {
	rule := shaping.Rule{Multiple: g.Multiple * times, Plus: g.Plus * times, Round: shaping.AtMost}
	switch {
	case g.Even && times == 1:
		rule.Parity = shaping.Even
	case g.Odd && times == 1:
		rule.Parity = shaping.Odd
	}
	low, step, err := shaping.Whole(units.Int(int64(n)), rule)
	if err != nil || low == n {
		return "", 0, 0, false
	}
	rule.Round = shaping.Nearest
	words = rule.String()
	if rule.Multiple > 1 {
		words = "a " + words
	}
	return words, low, low + step, true
}

// ruled is the line of the grading that gives the count old of size i, as it is or so many times, in a call between two places of the file, if it has a rule.
func ruled(p *schematic.Pattern, i, old int, from, to finding.Pos) (of *schematic.Grading, times int) {
	before := func(a, b finding.Pos) bool { return a.Line < b.Line || a.Line == b.Line && a.Col < b.Col }
	for _, c := range p.Calls {
		name, times := named(c.Sum)
		if times == 0 || before(c.Pos, from) || to.Line > 0 && !before(c.Pos, to) || c.Vals.Int(i, 0) != old {
			continue
		}
		k := slices.IndexFunc(p.Grading, func(g schematic.Grading) bool { return expr.Key(g.Name) == expr.Key(name) })
		if k >= 0 && (p.Grading[k].Multiple > 1 || p.Grading[k].Even || p.Grading[k].Odd) {
			return &p.Grading[k], times
		}
	}
	return nil, 0
}

// named is the name that a sum is, and how many times; 0 for any other sum.
func named(s *expr.Sum) (name string, times int) {
	n := s.Root
	if times = 1; n.Op == expr.Multiply && n.Left.Op == expr.Number && n.Left.N.IsInt() && n.Left.N.Sign() > 0 {
		n, times = n.Right, int(n.Left.N.Floor())
	}
	if n.Op != expr.Name {
		return "", 0
	}
	return n.Name, times
}

// flat are sections and those of their parts, in the order of the file, and of those that stand for one in the file the last.
func flat(list []schematic.Section) []schematic.Section {
	var out []schematic.Section
	for i, s := range list {
		if i+1 < len(list) && sameInFile(s, list[i+1]) {
			continue
		}
		out = append(out, s)
		for _, p := range s.Traits().Parts {
			out = append(out, flat(p.Sections)...)
		}
	}
	return out
}

// sameInFile reports whether two sections stand for one in the file: steps that an alteration has parted.
func sameInFile(a, b schematic.Section) bool {
	return a.Base().Pos.Line > 0 && a.Base().Pos == b.Base().Pos
}

// stated is the count that a section states: what it casts on, or how many there are after it.
func stated(s schematic.Section, i int) int {
	return s.Traits().Cast.Int(i, s.Base().To.Int(i, 0))
}
