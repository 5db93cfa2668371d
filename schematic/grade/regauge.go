package grade

import (
	"fmt"
	"slices"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// regauge works every count of a pattern of one size out anew for other gauges.
func regauge(p *schematic.Pattern, gauges []schematic.Gauge, found *finding.List) {
	was := schematic.Work(p, 0)
	r := &regauger{was: was, old: p.Gauges, now: gauges, found: found, steps: map[schematic.Section]schematic.Step{}, p: p}
	for _, m := range was.Pieces {
		for _, s := range m.Steps {
			if _, twice := r.steps[s.Section]; !twice { // a mirrored part works its sections twice, alike
				r.steps[s.Section] = s
			}
		}
	}
	p.Gauges = gauges
	all := p.Pieces
	for i, q := range all {
		r.before = all[:i]
		r.piece(q)
	}
}

type regauger struct {
	p      *schematic.Pattern
	was    *schematic.Garment
	old    []schematic.Gauge
	now    []schematic.Gauge
	steps  map[schematic.Section]schematic.Step
	found  *finding.List
	before []*schematic.Piece // those that are done
	name   string             // of the piece at hand
	ends   map[string]int     // stitches of parts at their end
	round  bool
}

// row is the row in work: its stitches at the new gauge.
type row struct {
	n     int
	gauge string
}

func (r *regauger) warn(s schematic.Section, format string, args ...any) {
	*r.found = append(*r.found, finding.Finding{Kind: "alter/section", Severity: finding.Warning, Pos: s.Base().Pos, Piece: r.name, Message: fmt.Sprintf(format, args...)})
}

func (r *regauger) cloth(name string) (was, now Cloth) {
	for i := range r.old {
		if name == "" || r.old[i].Name == name {
			return ClothOf(r.old[i]), ClothOf(r.now[i])
		}
	}
	return ClothOf(r.old[0]), ClothOf(r.now[0])
}

// ratio is how many new stitches and rows one old one is, in width and in height.
func (r *regauger) ratio(gauge string) (sts, rows units.Num) {
	was, now := r.cloth(gauge)
	return was.Stitch.Div(now.Stitch), was.Row.Div(now.Row)
}

// stitches is a count at the new gauge: the nearest to the width that it made.
func (r *regauger) stitches(n int, gauge string, rule Rule) int {
	sts, _ := r.ratio(gauge)
	m, _, err := Whole(sts.Times(n), rule)
	if err != nil || n == 0 {
		return n
	}
	return m
}

// rows is a count of rows at the new gauge, even or odd as before: sides of the work stay.
func (r *regauger) rows(n int, gauge string) int {
	if n == 0 {
		return 0
	}
	_, rows := r.ratio(gauge)
	rule := Rule{Parity: Like(n), Least: 1}
	if r.round {
		rule.Parity = AnyParity
	}
	m, _, err := Whole(rows.Times(n), rule)
	if err != nil {
		return n
	}
	return m
}

func (r *regauger) piece(q *schematic.Piece) {
	r.name, r.round, r.ends = q.Name, q.Round, map[string]int{}
	if q.Motifs != nil {
		*r.found = append(*r.found, finding.Finding{Kind: "alter/section", Severity: finding.Note, Pos: q.Pos, Piece: q.Name,
			Message: fmt.Sprintf("the motifs of %s are measured, not counted, and kept: work yours to %s across", q.Name, r.p.Steps.Both(first(q.Motifs.Across)))})
		return
	}
	r.rates(q)
	st := &row{gauge: q.Gauge}
	r.sections(q.Sections, st)
	if len(q.Sections) > 0 {
		r.ringed(q.Sections)
	}
}

func first(g expr.Graded) units.Num {
	v, _ := g.At(0)
	return v
}

func (r *regauger) sections(list []schematic.Section, st *row) {
	for i, s := range list {
		if g := s.Base().Gauge; g != "" {
			if st.n > 0 && g != st.gauge {
				// The same stitches go on in another stitch; they keep their number.
				st.gauge = g
			}
			st.gauge = g
		}
		step := r.steps[s]
		if st.n == 0 && step.Before > 0 {
			st.n = r.stitches(step.Before, st.gauge, Rule{Parity: Like(step.Before)})
		}
		r.section(s, list[i+1:], step, st)
		if b := s.Base(); !b.To.IsZero() {
			b.To = expr.Counts(st.n)
		}
	}
}

func (r *regauger) section(s schematic.Section, next []schematic.Section, step schematic.Step, st *row) {
	switch s := s.(type) {
	case *schematic.CastOn:
		n := s.Stitches.Int(0, 0)
		st.n = r.stitches(n, r.governing(next, st.gauge), r.repeating(next, n))
		if chain := s.Chain.Int(0, 0); chain > 0 {
			s.Chain = expr.Counts(chain - n + st.n)
		}
		s.Stitches = expr.Counts(st.n)
	case *schematic.Held:
		st.n = r.held(s)
	case *schematic.Ring:
		st.n = s.Stitches.Int(0, 0)
	case *schematic.Sideways:
		r.sideways(s, next, st)
	case *schematic.PickUp:
		st.n = r.picked(s, st)
	case *schematic.Even:
		if n, ok := s.Rows.At(0); ok {
			s.Rows = expr.Counts(r.rows(int(n.Floor()), st.gauge))
		}
	case *schematic.Shape:
		r.shape(s, next, step, st)
	case *schematic.RepeatRow:
		r.repeatRow(s, step, st)
	case *schematic.AddEdge:
		n := r.stitches(s.Stitches.Int(0, 0), st.gauge, Rule{Least: 1})
		s.Stitches = expr.Counts(n)
		st.n += n * edgesOf(s.At)
	case *schematic.BindOff:
		if s.All {
			st.n = 0
			return
		}
		n := s.Stitches.Int(0, 0)
		if n == 0 {
			return
		}
		n = r.stitches(n, st.gauge, Rule{Least: 1})
		times := 1
		if !s.Times.IsZero() {
			times = s.Times.Int(0, 0)
		}
		s.Stitches = expr.Counts(n)
		st.n -= n * times * edgesOf(s.At)
	case *schematic.Divide:
		r.divide(s, st)
	case *schematic.JoinParts:
		sum := 0
		for i := range s.Of {
			if a := s.Of[i].Added.Int(0, 0); a > 0 {
				a = r.stitches(a, st.gauge, Rule{Least: 1})
				s.Of[i].Added = expr.Counts(a)
				sum += a
			}
			sum += r.ends[s.Of[i].Part]
		}
		if !slices.ContainsFunc(s.Of, func(j schematic.JoinPart) bool { return j.Part != "" }) {
			sum += st.n // the row in work is joined to itself
		}
		st.n = sum
		r.round = r.round || s.Round
	case *schematic.Panels:
		var counts []int
		for i := range s.Of {
			counts = append(counts, s.Of[i].Stitches.Int(0, 0))
		}
		for i, n := range r.share(counts, st, s) {
			s.Of[i].Stitches = expr.Counts(n)
		}
	case *schematic.Mitre:
		r.mitre(s, step, st)
	case *schematic.ShortRows:
		round := r.round
		r.round = false // they go to and fro, in the round too
		s.Rows = expr.Counts(r.rows(s.Rows.Int(0, 0), st.gauge))
		r.round = round
		s.Over = expr.Counts(min(st.n, r.stitches(s.Over.Int(0, 0), st.gauge, Rule{Least: 1})))
		if n := s.Step.Int(0, 0); n > 0 {
			s.Step = expr.Counts(r.stitches(n, st.gauge, Rule{Least: 1}))
		}
	case *schematic.Mark:
		sts := func(g expr.Graded) expr.Graded {
			if v, ok := g.At(0); ok && v.Sign() > 0 {
				return expr.Counts(r.stitches(int(v.Floor()), st.gauge, Rule{}))
			}
			return g
		}
		along := sts
		if s.Along {
			along = func(g expr.Graded) expr.Graded {
				if v, ok := g.At(0); ok && v.Sign() > 0 {
					return expr.Counts(r.rows(int(v.Floor()), st.gauge))
				}
				return g
			}
		}
		s.Inset, s.Stitch, s.First, s.Apart = sts(s.Inset), sts(s.Stitch), along(s.First), along(s.Apart)
	}
}

// governing is the gauge that says how wide the stitches of a start are to be: the one in
// which most rows are worked until the count changes, not that of a rib which draws them in.
func (r *regauger) governing(next []schematic.Section, gauge string) string {
	rows, now := map[string]int{}, gauge
	best := gauge
	for _, s := range next {
		if g := s.Base().Gauge; g != "" {
			now = g
		}
		step := r.steps[s]
		if rows[now] += step.Rows; rows[now] > rows[best] {
			best = now
		}
		if step.After != step.Before {
			break
		}
	}
	return best
}

func edgesOf(at schematic.Side) int {
	if at == schematic.BothEdges {
		return 2
	}
	return 1
}

// held is how many stitches a start from other pieces has, at the new gauge.
func (r *regauger) held(s *schematic.Held) int {
	q := *r.p
	q.Pieces = r.before
	q.Joins = nil
	work := schematic.Work(&q, 0)
	sum := 0
	for i := range s.From {
		h := &s.From[i]
		if a := h.Added.Int(0, 0); a > 0 {
			a = r.stitches(a, "", Rule{Least: 1, Parity: Like(a)})
			h.Added = expr.Counts(a)
			sum += a
		}
		for _, m := range work.Pieces {
			if m.Name != h.Piece {
				continue
			}
			n := m.Live[h.Part]
			if h.Half {
				n /= 2
			}
			if !h.Stitches.IsZero() {
				h.Stitches = expr.Counts(n)
			}
			sum += n
		}
	}
	return sum
}

// sideways works a band worked sideways out: its rows are as many as the stitches
// that are picked up along it need.
func (r *regauger) sideways(s *schematic.Sideways, next []schematic.Section, st *row) {
	depth, rows := s.Stitches.Int(0, 0), s.Rows.Int(0, 0)
	s.Stitches = expr.Counts(r.stitches(depth, st.gauge, Rule{Least: 1}))
	var up *schematic.PickUp
	ok := false
	if len(next) > 0 {
		up, ok = next[0].(*schematic.PickUp)
	}
	if !ok || up.Alternate || up.Pick < 1 || up.Of < 1 {
		s.Rows = expr.Counts(r.rows(rows, st.gauge))
		return
	}
	gauge := st.gauge
	if g := up.Gauge; g != "" {
		gauge = g
	}
	old := r.steps[up].After
	rule := r.repeating(next, old)
	st.n = r.stitches(old, gauge, rule)
	if n := r.rerated(up, st.n, r.rows(rows, st.gauge), rule); n > 0 {
		s.Rows = expr.Counts(n)
		st.n = n / up.Of * up.Pick
		return
	}
	if st.n != old {
		n := int(units.Frac(int64(st.n)*int64(up.Of), int64(up.Pick)).Round())
		s.Rows = expr.Counts(n)
		st.n = n/up.Of*up.Pick + min(n%up.Of, up.Pick) // rows that are over give what they can
	}
}

func (r *regauger) picked(s *schematic.PickUp, st *row) int {
	old := r.steps[s].After
	n := st.n
	if s.Alternate || n == 0 {
		n = r.stitches(old, st.gauge, Rule{Parity: Like(old)})
		r.warn(s, "the rows of this band are of two heights: see that %d stitches come out of them", n)
	}
	if !s.Stitches.IsZero() {
		s.Stitches = expr.Counts(n)
	}
	return n
}

// share divides the row anew as counts divided it; a division that was the same
// from both sides stays so.
func (r *regauger) share(counts []int, st *row, s schematic.Section) []int {
	out := make([]int, len(counts))
	same, total := true, 0
	for i, n := range counts {
		total += n
		same = same && n == counts[len(counts)-1-i]
	}
	if total == 0 {
		return out
	}
	if !same {
		last, sum := 0, 0
		for i, n := range counts {
			sum += n
			upTo := int(units.Frac(int64(sum)*int64(st.n), int64(total)).Round())
			out[i], last = upTo-last, upTo
		}
		return out
	}
	left := st.n
	half := len(counts) / 2
	for i := range half {
		n := int(units.Frac(int64(counts[i])*int64(st.n), int64(total)).Round())
		if len(counts)%2 == 0 && i == half-1 {
			n = left / 2
		}
		out[i], out[len(counts)-1-i] = n, n
		left -= 2 * n
	}
	if len(counts)%2 == 1 {
		out[half] = left
		left = 0
	}
	if left != 0 || out[half] < 0 {
		r.warn(s, "%d stitches can't be divided alike from both sides", st.n)
	}
	return out
}

func (r *regauger) divide(s *schematic.Divide, st *row) {
	var counts []int
	for i := range s.Parts {
		counts = append(counts, s.Parts[i].Stitches.Int(0, 0))
	}
	mirrors := map[string]int{}
	for i, n := range r.share(counts, st, s) {
		part := &s.Parts[i]
		part.Stitches = expr.Counts(n)
		if part.MirrorOf != "" {
			continue
		}
		inner := &row{n: n, gauge: st.gauge}
		round := r.round
		r.round = false
		r.sections(part.Sections, inner)
		r.round = round
		r.ends[part.Name] = inner.n
		mirrors[part.Name] = inner.n
	}
	for i := range s.Parts {
		if of := s.Parts[i].MirrorOf; of != "" {
			r.ends[s.Parts[i].Name] = mirrors[of]
		}
	}
	st.n = 0
}

func (r *regauger) shape(s *schematic.Shape, next []schematic.Section, step schematic.Step, st *row) {
	sts, rows := r.ratio(st.gauge)
	total := r.rows(step.Rows, st.gauge)
	if v, ok := s.Length.At(0); ok {
		_, now := r.cloth(st.gauge)
		total = int(v.Div(now.Row).Round())
	}
	t := &respread{found: r.found, piece: r.name}
	after := sts.Times(step.After)
	if m := multipleFor(next, step.After); m > 1 && len(s.Shapings) == 1 {
		h := &s.Shapings[0]
		after = toRepeat(after, st.n, max(1, h.By.Int(0, 1))*t.placesOf(s, h, step), m)
	}
	st.n = t.shape(s, step, sts, rows, total, st.n, after)
}
