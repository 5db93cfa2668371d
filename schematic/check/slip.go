package check

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// mostSteps bounds the search for one wrong number, each of whose trials works a piece, the garment, or the garment in all sizes anew: so many steps,
// edges and measurements in all, about a fifth of a second.
const mostSteps = 40_000

// mostTold is how much of what follows from a number is told with it.
const mostTold = 3

// number is a count of the pieces, by the order in which they stand in a piece.
type number struct{ piece, at int }

// slip is the search for one number from whose being wrong several findings follow, in one size or, if it holds for all of them, in all.
type slip struct {
	p    *schematic.Pattern
	in   []int // sizes
	all  finding.List
	left *int  // of mostSteps
	cost []int // of each piece in one size
}

// slipped is what is found of a pattern, with what follows from one wrong number told as one finding, at that number and with the number in whose
// place it stands. Nothing changes where no other number, or more than one, leaves as little to find.
func slipped(p *schematic.Pattern, gs []*schematic.Garment, all finding.List) finding.List {
	ofCounts := slices.DeleteFunc(slices.Clone(all), asWorn)
	if len(gs) != p.Sizes.Len() || len(ofCounts) < 2 {
		return all
	}
	s := &slip{p: p, all: ofCounts, left: new(int)}
	*s.left = mostSteps
	for _, m := range gs[0].Pieces {
		cost := 1 + len(m.Steps) + len(m.Edges) + len(m.Measures)
		for i := range m.Views {
			cost += len(m.Views[i].Lines) / 4 // each motif has some
		}
		s.cost = append(s.cost, cost)
	}
	if len(s.cost) != len(p.Pieces) {
		return all
	}
	every := make([]int, p.Sizes.Len())
	for i := range every {
		every[i], s.in = i, []int{i}
		s.all = s.explain()
	}
	if s.in = every; len(every) > 1 {
		s.all = s.explain()
	}
	for i := range every[1:] {
		s.in = every[i : i+2]
		s.all = s.exchange()
	}
	for _, f := range all {
		if asWorn(f) {
			s.all = append(s.all, f)
		}
	}
	s.all.Sort()
	return s.all
}

// asWorn reports whether a finding tells of what is drawn as worn, which is drawn by the numbers as they stand: no other number explains it.
func asWorn(f finding.Finding) bool { return strings.HasPrefix(f.Kind, "worn/") }

// exchange explains what is found in two sizes beside each other by numbers that stand in each other's place, in one line.
func (s *slip) exchange() finding.List {
	var best []answer
	for _, n := range s.candidates() {
		a, hasA := n.of(s.p).At(s.in[0])
		b, hasB := n.of(s.p).At(s.in[1])
		if *s.left < 0 || len(best) > 1 {
			return s.all
		}
		if !hasA || !hasB || a.Eq(b) {
			continue
		}
		if x, ok := s.answer(n, int(b.Floor()), int(a.Floor())); ok {
			best = append(best, x)
		}
	}
	if len(best) != 1 {
		return s.all
	}
	x, y := s.p.Sizes.Names[s.in[0]], s.p.Sizes.Names[s.in[1]]
	was := [2]int{best[0].to[1], best[0].to[0]}
	return s.tell(best[0], []string{x, y}, fmt.Sprintf("%d in %s and %d in %s are probably swapped", was[0], x, was[1], y),
		fmt.Sprintf("%d, %d", was[0], was[1]), fmt.Sprintf("%d, %d", best[0].to[0], best[0].to[1]))
}

// candidates are the numbers that may explain something, if there is something to explain.
func (s *slip) candidates() []number {
	if !slices.ContainsFunc(s.all, s.mine) {
		return nil
	}
	return numbers(s.p, s.all)
}

// mine reports whether something is found of the counts, joins or written measurements in the sizes of the slip.
func (s *slip) mine(f finding.Finding) bool {
	family, _, _ := strings.Cut(f.Kind, "/")
	if !slices.Contains([]string{"arithmetic", "joins", "drawn"}, family) || f.Kind == "arithmetic/row-side" {
		return false // on which side of the work a row begins is a matter of the order of the work
	}
	if s.two() {
		return len(f.Sizes) > 0 && !slices.ContainsFunc(f.Sizes, func(name string) bool {
			return name != s.p.Sizes.Names[s.in[0]] && name != s.p.Sizes.Names[s.in[1]]
		})
	}
	if len(s.in) > 1 {
		return len(f.Sizes) != 1
	}
	return slices.Equal(f.Sizes, []string{s.p.Sizes.Names[s.in[0]]}) || s.p.Sizes.Len() == 1 && len(f.Sizes) == 0
}

// two reports whether the slip is one of two sizes of more.
func (s *slip) two() bool { return len(s.in) == 2 && s.p.Sizes.Len() > 2 }

// answer is a number, what may have been meant by it, and what is found then.
type answer struct {
	number
	to   []int // in each of the sizes of the slip
	pos  finding.Pos
	left finding.List
}

func (s *slip) explain() finding.List {
	var best []answer
	for _, n := range s.candidates() {
		for _, to := range guesses(n.of(s.p), s.in) {
			if *s.left < 0 || len(best) > 1 && len(best[0].left) == 0 {
				return s.all
			}
			a, ok := s.answer(n, slices.Repeat([]int{to}, len(s.in))...)
			switch {
			case !ok:
			case len(best) == 0 || len(a.left) < len(best[0].left):
				best = []answer{a}
			case len(a.left) == len(best[0].left):
				best = append(best, a)
			}
		}
	}
	if len(best) != 1 {
		return s.all
	}
	was, _ := best[0].of(s.p).At(s.in[0])
	sizes, where, to := []string(nil), "", strconv.Itoa(best[0].to[0])
	if len(s.in) == 1 && s.p.Sizes.Len() > 1 {
		sizes, where = []string{s.p.Sizes.Names[s.in[0]]}, " in "+s.p.Sizes.Names[s.in[0]]
	}
	return s.tell(best[0], sizes, fmt.Sprintf("%s%s is probably %s", was, where, to), was.String(), to)
}

// answer is what is found with another number in the place of one; false if it does not explain what is found now.
func (s *slip) answer(n number, to ...int) (answer, bool) {
	q := n.with(s.p, s.in, to)
	if !s.quiet(q, n.piece) {
		return answer{}, false
	}
	at := placeOf(s.p.Pieces[n.piece].Sections, q.Pieces[n.piece].Sections)
	if at == (finding.Pos{}) { // how often a piece is made is no slip of a count
		return answer{}, false
	}
	*s.left -= s.whole() * s.p.Sizes.Len()
	left := look(q, bysize.WorkAll(q))
	return answer{n, to, at, left}, s.explains(left)
}

// tell is what is left to find beside the slip, and the slip, in words, with the numbers that stand there and those that were meant.
func (s *slip) tell(a answer, sizes []string, message, was, to string) finding.List {
	var told []string
	kind, severity := "", finding.Note
	out := slices.Clone(a.left)
	for _, f := range s.all {
		if has(a.left, f) {
			continue
		}
		if kind == "" && s.mine(f) {
			kind = f.Kind
		}
		severity = min(severity, f.Severity)
		if !slices.Contains(told, f.Message) {
			told = append(told, f.Message)
		}
	}
	if len(told) > mostTold {
		told = append(told[:mostTold], fmt.Sprintf("and %d more", len(told)-mostTold))
	}
	out = append(out, finding.Finding{Kind: kind, Severity: severity, Pos: a.pos, Piece: s.p.Pieces[a.piece].Name, Sizes: sizes,
		Message: message + ": the rest agrees with that",
		Have:    fmt.Sprintf("%s; so %s", was, strings.Join(told, "; ")), Want: to, Fix: "write " + to})
	out.Sort()
	return out
}

// numbers are those of the pieces of which something is found, and of those that a finding of a join names.
func numbers(p *schematic.Pattern, all finding.List) []number {
	var out []number
	for k, q := range p.Pieces {
		if !slices.ContainsFunc(all, func(f finding.Finding) bool { return f.Piece == q.Name || strings.Contains(f.Message, q.Name) }) {
			continue
		}
		n := 0
		q.With(func(g expr.Graded) expr.Graded {
			if g.From == nil && !g.IsZero() && !g.Unwritten {
				out = append(out, number{k, n})
			}
			n++
			return g
		})
	}
	return out
}

// of is the number as it stands.
func (n number) of(p *schematic.Pattern) (out expr.Graded) {
	n.visit(p, func(g expr.Graded) expr.Graded { out = g; return g })
	return out
}

// visit is the piece with the number put through f.
func (n number) visit(p *schematic.Pattern, f func(expr.Graded) expr.Graded) *schematic.Piece {
	at := 0
	return p.Pieces[n.piece].With(func(g expr.Graded) expr.Graded {
		if at++; at-1 == n.at {
			return f(g)
		}
		return g
	})
}

// with is the pattern with another number in its place, in some sizes.
func (n number) with(p *schematic.Pattern, in, to []int) *schematic.Pattern {
	q := *p
	q.Pieces = slices.Clone(p.Pieces)
	q.Pieces[n.piece] = n.visit(p, func(g expr.Graded) expr.Graded {
		g.Vals = slices.Clone(g.Vals)
		for k, i := range in {
			if i < len(g.Vals) {
				g.Vals[i] = units.Int(int64(to[k]))
			}
		}
		return g
	})
	return &q
}

// guesses are what may have been meant by a number: one or two or ten more or less, its figures the other way round, and what the sizes beside
// it say; of a number for all sizes the same in all.
func guesses(g expr.Graded, in []int) []int {
	at := func(i int) (int, bool) {
		v, ok := g.At(i)
		return int(v.Floor()), ok && i >= 0 && i < len(g.Vals) && v.IsInt()
	}
	n, ok := at(in[0])
	apart := 0
	for i := range g.Vals {
		if m, has := at(i); !has || m != n {
			apart++
		}
	}
	if !ok || (apart > 0) == (len(in) == len(g.Vals)) && len(g.Vals) > 1 {
		return nil // one number for all sizes is not wrong in one of them, and of several not all are
	}
	turned := []byte(strconv.Itoa(n))
	slices.Reverse(turned)
	back, _ := strconv.Atoi(string(turned))
	out := []int{n - 10, n - 2, n - 1, n + 1, n + 2, n + 10, back}
	if len(in) == 1 {
		i := in[0]
		a, before := at(i - 1)
		b, after := at(i + 1)
		c, far := at(i - 2)
		d, farther := at(i + 2)
		for _, guess := range []struct {
			n  int
			ok bool
		}{{a, before}, {b, after}, {(a + b) / 2, before && after}, {2*a - c, before && far}, {2*b - d, after && farther}} {
			if guess.ok {
				out = append(out, guess.n)
			}
		}
	}
	slices.Sort(out)
	return slices.DeleteFunc(slices.Compact(out), func(m int) bool { return m < 1 || m == n })
}

// quiet reports whether nothing that the slip must explain is found by working one piece, and then the garment, in one size: a quick look before a
// whole one.
func (s *slip) quiet(q *schematic.Pattern, piece int) bool {
	if len(schematic.BeginsFrom(q.Pieces[piece])) == 0 && len(q.Pieces[piece].Onto) == 0 {
		alone := *q
		alone.Pieces, alone.Joins = q.Pieces[piece:piece+1], nil
		*s.left -= s.cost[piece]
		if s.finds(schematic.Work(&alone, s.in[0]).Findings) {
			return false
		}
	}
	*s.left -= s.whole()
	g := schematic.Work(q, s.in[0])
	found := append(slices.Clone(g.Findings), armholes(q, g)...)
	for k := range g.Seams {
		found = append(found, join(g, &g.Seams[k])...)
	}
	return !s.finds(found)
}

// finds reports whether something is found that is new or that the slip must explain.
func (s *slip) finds(found finding.List) bool {
	return slices.ContainsFunc(found, func(f finding.Finding) bool {
		return !slices.ContainsFunc(s.all, func(o finding.Finding) bool { return o.Kind == f.Kind && o.Pos == f.Pos && !s.mine(o) })
	})
}

// whole is what the garment costs in one size.
func (s *slip) whole() int {
	sum := 3 * (len(s.p.Finished) + len(s.p.Grading) + len(s.p.Joins))
	for _, c := range s.cost {
		sum += c
	}
	return sum
}

// explains reports whether nothing new is found and, of what was, two or more not any more, among these all that the slip must explain.
func (s *slip) explains(left finding.List) bool {
	return len(left)+1 < len(s.all) && !slices.ContainsFunc(left, func(f finding.Finding) bool { return s.mine(f) || !has(s.all, f) })
}

// has reports whether a finding is among others, with the same words and numbers.
func has(l finding.List, f finding.Finding) bool {
	return slices.ContainsFunc(l, func(o finding.Finding) bool {
		return o.Kind == f.Kind && o.Pos == f.Pos && o.Message == f.Message && o.Have == f.Have
	})
}

// placeOf is where the innermost section stands of which two lists, alike but for one number, differ.
func placeOf(a, b []schematic.Section) finding.Pos {
	var pos finding.Pos
	for i := range a {
		if same(a[i], b[i]) {
			continue
		}
		pos = a[i].Base().Pos
		with := b[i].Traits().Parts
		for k, p := range a[i].Traits().Parts {
			if inner := placeOf(p.Sections, with[k].Sections); inner.Line > 0 {
				pos = inner
			}
		}
	}
	return pos
}

// same reports whether two sections have the same numbers.
func same(a, b schematic.Section) bool {
	of := func(s schematic.Section) (out []string) {
		schematic.Map([]schematic.Section{s}, func(g expr.Graded) expr.Graded {
			out = append(out, fmt.Sprint(g.Vals))
			return g
		})
		return out
	}
	return slices.Equal(of(a), of(b))
}
