package schematic

import (
	"fmt"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// leastRib is the fewest rows of a rib in which its count is changed: a choice of this project.
const leastRib = 4

// ribbed fits a rib in the round to the nearest count that keeps its repeat: that many are cast on, or reached in the round before it, and the round
// after it comes back to the fabric's count (common practice). A flat rib has any count: its edges take what its repeat leaves over, as edge stitches do
// (common practice). It gives the rows of the rib that are left.
func (f *Fitting) ribbed(s *Even, old Section, rows int) int {
	need := f.Rib(old)
	if need.Multiple < 2 || rows < leastRib {
		return rows
	}
	if over := mod(f.N-need.Plus, need.Multiple); !f.Round {
		if over > 0 {
			f.Part(s, "the rib has %d sts, %d over its multiple of %s: share that between its two edges; %d or %d sts have none over",
				f.N, over, need, f.N-over, f.N-over+need.Multiple)
		}
		return rows
	}
	was, how := f.N, ""
	fabric := was - f.owed
	sts, _ := f.ratio()
	n := units.Int(int64(was))
	exact := units.Max(n.Sub(units.Frac(1, 2)), units.Min(n.Add(units.Frac(1, 2)), sts.Times(f.step.After)))
	f.N = f.Near(f.name("rib", f.step.After), exact, need, 1)
	switch d := f.N - was; {
	case d == 0:
	case f.cast != nil:
		how = fmt.Sprintf("cast on %d", f.N)
		f.cast.Stitches = expr.Counts(f.N)
		if chain := f.cast.Chain.Int(0, 0); chain > 0 {
			f.cast.Chain = expr.Counts(chain + d)
		}
	case f.last != nil:
		how = fmt.Sprintf("%s across the last round before it", changed(d))
		f.last.Amount = Amount{Rows: expr.Counts(f.last.Rows.Int(0, 0) - 1)}
		f.before = append(f.before, once(&Even{Common: Common{Pos: s.Pos}}, d))
	default:
		how = fmt.Sprintf("%s across its first round", changed(d))
		f.before = append(f.before, once(s, d))
		rows--
	}
	f.owed = f.N - fabric
	if next := f.working(f.next); f.owed != 0 && len(next) > 0 && !unbound(next[0]) && f.Rib(next[0]).Multiple < 2 {
		if how != "" {
			how += ", and "
		}
		how += fmt.Sprintf("%s across the first round after it", changed(-f.owed))
		b := next[0].Base()
		f.after = []Section{once(&Even{Common: Common{Gauge: b.Gauge, Stitch: b.Stitch, Pos: f.next[0].Base().Pos}}, -f.owed)}
		_, now := f.Chooser.Gauge(orElse(b.Gauge, f.Gauge))
		f.have = f.have.Add(now.RowHeight()) // what follows is a row less
		f.N, f.owed, f.back = fabric, 0, f.owed
	}
	if how != "" {
		f.Part(s, "the rib keeps its multiple of %s: %s", need, how)
	}
	return rows
}

// beforeRib notes what a rib after a section can change.
func (f *Fitting) beforeRib(s Section) {
	f.cast, _ = s.(*CastOn)
	f.last, _ = s.(*Even)
	if f.last != nil && (f.last.Rows.From != nil || f.last.Rows.Int(0, 0) < leastRib) {
		f.last = nil
	}
}

// ribNext is what a rib that comes next in the round asks of the count before it, where no fabric follows the rib.
func (f *Fitting) ribNext() Need {
	next := f.working(f.next)
	if len(next) == 0 || !f.Round {
		return Need{}
	}
	need := f.Rib(next[0])
	if after := f.working(next[1:]); len(after) > 0 && !unbound(after[0]) {
		return Need{}
	}
	return need
}

// working are sections from the first on in which rows are worked or the count changes.
func (f *Fitting) working(list []Section) []Section {
	for len(list) > 0 {
		if s := f.Steps[list[0]]; s.Rows > 0 || s.Before != s.After {
			break
		}
		list = list[1:]
	}
	return list
}

// unbound reports whether a section takes any count: it spreads its shaping across the row, or ends the piece.
func unbound(s Section) bool {
	switch q := s.(type) {
	case *Shape:
		return len(q.Shapings) == 1 && q.Shapings[0].At == Across && !q.called() && q.Shapings[0].total() == 1
	case *BindOff:
		return q.All && !q.Hold
	}
	return false
}

func changed(d int) string {
	if d < 0 {
		return fmt.Sprintf("decrease %d", -d)
	}
	return fmt.Sprintf("increase %d", d)
}

// String is a need as patterns write it: 4 + 2.
func (n Need) String() string {
	if n.Plus == 0 {
		return fmt.Sprint(n.Multiple)
	}
	return fmt.Sprintf("%d + %d", n.Multiple, n.Plus)
}
