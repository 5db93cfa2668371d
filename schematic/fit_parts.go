package schematic

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

func (s *AddEdge) fit(f *Fitting, old Section) {
	k := edgesAt(s.At)
	n := f.put(&s.Stitches, f.edge(old.(*AddEdge).Stitches.Int(0, 0), k))
	f.N += n * k
}

// edge is so many stitches at an edge anew, k times that many in all.
func (f *Fitting) edge(published, k int) int {
	if published == 0 {
		return 0
	}
	sts, _ := f.ratio()
	return f.Near(f.name("edge", published), sts.Times(published), f.needs().of(f.N, k), 1)
}

func edgesAt(at Side) int {
	if at == BothEdges {
		return 2
	}
	return 1
}

func (s *AddEdge) need(f *Fitting, then Need) Need { return then.beyond(edgesAt(s.At)) }

// beyond is what a count must be so that a multiple of k more or less can be as needed.
func (n Need) beyond(k int) Need {
	if n.Multiple < 2 {
		return Need{}
	}
	return Need{gcd(n.Multiple, k), n.Plus}.bounded()
}

func (s *BindOff) off() int {
	k := edgesAt(s.At)
	if !s.Times.IsZero() {
		k *= s.Times.Int(0, 0)
	}
	return k
}

func (s *BindOff) need(f *Fitting, then Need) Need {
	if s.All || s.off() == 0 {
		return Need{}
	}
	return then.beyond(s.off())
}

func (s *BindOff) sided() bool {
	return !s.All && !s.Leave && !s.Hold && (s.At == LeftEdge || s.At == RightEdge) && !s.Stitches.IsZero() && s.Stitches.Int(0, 0) > 0
}

func (s *BindOff) fit(f *Fitting, old Section) {
	if s.All {
		f.N = 0
		return
	}
	was := old.(*BindOff)
	k := was.off()
	n := was.Stitches.Int(0, 0)
	if n == 0 || k == 0 {
		return
	}
	if s.stepped(was) {
		s.fitSteps(f, was)
		return
	}
	taken := f.taken(s.At)
	sts, _ := f.ratio()
	odd := 0
	if s.At == BothEdges && f.step.Before != f.step.After && f.evenNext() {
		odd = min(1, f.Near(f.name("odd", n), units.Int(2), Need{}, 1)-2)
	}
	n = f.Near(f.name("edge", n), sts.Times(taken[0]+k*n).Sub(units.Int(int64(taken[1]))).Div(units.Int(int64(k))), f.needs().of(f.N+odd, -k), 1)
	f.odd = odd
	left := min(1, f.step.After)
	if n*k > f.N-left {
		n = max(1, (f.N-left)/k)
	}
	n = f.put(&s.Stitches, n)
	f.N -= n * k
	f.steps[s.At] = [2]int{taken[0] + k*was.Stitches.Int(0, 0), taken[1] + k*n}
}

// evenNext reports whether rows of a chosen number are worked even next, in which a stitch can be decreased.
func (f *Fitting) evenNext() bool {
	if len(f.next) == 0 {
		return false
	}
	s, even := f.next[0].(*Even)
	return even && s.Rows.From == nil && f.Steps[s].Rows > 3
}

// taken is what the steps just before took off at the same edge, as published and now: several in turn are rounded
// as one, so that what is left after them is as wide as it was.
func (f *Fitting) taken(at Side) [2]int {
	if f.follow != len(f.next)+1 || f.steps == nil {
		f.steps = map[Side][2]int{}
	}
	f.follow = len(f.next)
	return f.steps[at]
}

// stepped reports whether a bind-off of several steps is of numbers that may be chosen.
func (s *BindOff) stepped(was *BindOff) bool {
	return !was.Hold && was.Times.Int(0, 1) > 1 && s.Stitches.From == nil && s.Times.From == nil && s.Every.From == nil
}

// fitSteps has the steps take up the width and the height that they took up: as many steps as the height holds, and
// of the stitches one more in each of the first steps where they do not divide. Stitches that are left have rows between their steps alone.
func (s *BindOff) fitSteps(f *Fitting, was *BindOff) {
	edges, times := edgesAt(s.At), was.Times.Int(0, 1)
	left, last, every := min(1, f.step.After), 0, 0
	if was.Leave {
		last = 1
	}
	if every = f.step.Rows / (times - last); every > 0 && every*(times-last) == f.step.Rows {
		was, now := f.Chooser.Gauge(f.Gauge)
		to := f.want.Add(was.RowHeight().Times(f.step.Rows))
		rows := f.Near("rows in steps"+f.rowsName(f.step.Rows)[len("rows"):], to.Sub(f.have).Div(now.RowHeight()), Need{every, 0}, every)
		times = rows/every + last
		f.rise(rows)
	}
	sts, _ := f.ratio()
	whole := was.Stitches.Int(0, 0) * was.Times.Int(0, 1)
	all := f.Near(f.name("steps", whole), sts.Times(whole), f.needs().of(f.N, -edges), times)
	all = max(min(all, (f.N-left)/edges), 1)
	times = min(times, all)
	f.N -= all * edges
	each, more := all/times, all%times
	if more > 0 {
		first := *s
		first.Common = Common{Gauge: s.Gauge, LeftEdge: s.LeftEdge, RightEdge: s.RightEdge, Stitch: s.Stitch, Pos: s.Pos}
		first.Stitches, first.Times = expr.Counts(each+1), expr.Counts(more)
		f.before = []Section{&first}
		if was.Leave && every > 0 {
			f.before = append(f.before, &Even{Common: Common{Stitch: s.Stitch, Pos: s.Pos}, Amount: Amount{Rows: expr.Counts(every)}})
		}
		f.Part(s, "%s %s at a time %s, then %s %s, so that the width comes out", Words(s), stitches(each+1), often(more), stitches(each), often(times-more))
	}
	s.Stitches, s.Times = expr.Counts(each), expr.Counts(times-more)
}

// share divides the stitches of the row anew as counts divided them: parts that were as wide as
// each other, and are called by one number in like, stay so, but for the one that has one stitch more (-1 for none), and one takes what
// rounding leaves.
func (f *Fitting) share(s Section, counts, like []int, of []units.Num, wider int) []int {
	if wider >= 0 {
		f.N--
		out := f.share(s, counts, like, of, -1)
		f.N++
		out[wider]++
		return out
	}
	out := make([]int, len(counts))
	group := map[int]int{}
	for _, n := range like {
		group[n]++
	}
	rest := f.absorber(counts, like, group)
	left := f.N
	for i, n := range counts {
		if n == 0 || rest >= 0 && like[i] == like[rest] {
			continue
		}
		what := "part"
		if like[i] != n {
			what = fmt.Sprintf("part of %d", like[i])
		}
		out[i] = f.Near(f.name(what, n), of[i].Times(n), Need{}, 1)
		left -= out[i]
	}
	if rest < 0 {
		return out
	}
	k := group[like[rest]]
	left += spare(out, k-left)
	each, over := left/k, left%k
	if left < 0 {
		each, over = 0, 0
	}
	if over != 0 {
		f.Tell(s, "%d stitches can't be divided alike: %d of %d parts that were alike have one stitch more", f.N, over, k)
	}
	for i, n := range like {
		if n == like[rest] {
			out[i] = each
			if over > 0 {
				out[i]++
				over--
			}
		}
	}
	return out
}

// spare takes a stitch at a time off the widest parts, alike, until so many are spare that no part is left without any, and gives how many.
func spare(out []int, want int) int {
	got := 0
	for got < want {
		widest := slices.Max(out)
		if widest < 2 {
			return got
		}
		for i, n := range out {
			if n == widest {
				out[i]--
				got++
			}
		}
	}
	return got
}

// absorber is the part that takes what rounding leaves: one that has no equal, nearest to the
// middle; otherwise the widest. None if nothing is divided.
func (f *Fitting) absorber(counts, like []int, group map[int]int) int {
	best, least := -1, 0
	for i, n := range counts {
		if n == 0 {
			continue
		}
		far := 1000*group[like[i]] + abs(2*i-len(counts)+1)*10
		if group[like[i]] > 1 {
			far -= min(n, 999)
		}
		if best < 0 || far < least {
			best, least = i, far
		}
	}
	return best
}

// alike is what a row must be to be divided: a multiple of how often the parts that take
// what is left are there, where none stands alone.
func alike(like []int) Need {
	group := map[int]int{}
	for _, n := range like {
		if n != 0 {
			group[n]++
		}
	}
	m := 0
	for _, k := range group {
		m = gcd(m, k)
	}
	return Need{m, 0}.bounded()
}

func (s *Divide) counts() []int {
	var out []int
	for i := range s.Parts {
		out = append(out, s.Parts[i].Stitches.Int(0, 0))
	}
	return out
}

func (s *Divide) need(f *Fitting, _ Need) Need {
	n := alike(s.like())
	if n.Multiple == 2 && f.wider(s) >= 0 {
		n.Plus, f.shifted = 1, true
	}
	return n
}

// like are the parts by numbers, alike for those that are alike: as many stitches, and the same edge made of them. A neck that has
// as many as a shoulder in one size is not.
func (s *Divide) like() []int {
	counts := s.counts()
	out := slices.Clone(counts)
	for i, n := range counts {
		if n == 0 || !slices.Contains(counts[:i], n) {
			continue
		}
		out[i] = -i
		for k := range i {
			if counts[k] == n && s.Parts[k].Edge == s.Parts[i].Edge {
				out[i] = out[k]
			}
		}
	}
	return out
}

// halves are a front and a back that a row is divided into alike, each with work of its own or held; ok is false if there are none.
func (s *Divide) halves() (front, back int, ok bool) {
	front, back = -1, -1
	for i, p := range s.Parts {
		isFront, isBack := strings.Contains(strings.ToLower(p.Name), "front"), strings.Contains(strings.ToLower(p.Name), "back")
		if p.Leave || p.MirrorOf != "" || isFront == isBack {
			continue
		}
		at := &front
		if isBack {
			at = &back
		}
		if *at >= 0 {
			return 0, 0, false // a left and a right one
		}
		*at = i
	}
	if front < 0 || back < 0 {
		return 0, 0, false
	}
	n := s.Parts[front].Stitches
	return front, back, n.From == nil && !n.IsZero() && n.Int(0, 0) == s.Parts[back].Stitches.Int(0, 0)
}

// wider is the part that has a stitch more than the one that was as wide: the front or the back, where an odd number is divided between them
// (common practice); -1 if they are alike.
func (f *Fitting) wider(s *Divide) int {
	front, back, ok := s.halves()
	if !ok {
		return -1
	}
	const back1, same, front1 = 0, 1, 2
	switch f.Near(fmt.Sprintf("one half wider, row %d", f.Steps[s].FirstRow), units.Int(same), Need{}, back1) {
	case same:
		return -1
	case back1:
		return back
	}
	return front
}

func (s *Divide) sided() bool {
	return slices.ContainsFunc(s.Parts, func(p Part) bool { return len(p.Sections) > 0 && p.Sections[0].sided() })
}

func (s *Divide) fit(f *Fitting, old Section) {
	was := old.(*Divide)
	sts, _ := f.ratio()
	of := make([]units.Num, len(s.Parts))
	for i := range of {
		of[i] = sts
	}
	at, on, last := *f, 0, ""
	f.divided = [2]int{f.step.Before, f.N}
	wider := f.wider(was)
	if wider >= 0 {
		f.Odd(s, "%s has one stitch more than its other half, so that the count comes out", was.Parts[wider].Name)
	}
	for i, n := range f.share(s, was.counts(), was.like(), of, wider) {
		part := &s.Parts[i]
		n = f.put(&part.Stitches, n)
		f.ends[part.Name] = partEnd{n: n, want: at.want, have: at.have, rs: at.RS}
		if part.Leave || part.Hold || n == 0 {
			continue
		}
		on++
		last = part.Name
		if part.MirrorOf != "" {
			continue
		}
		in := at
		in.N, in.Round, in.ends = n, false, f.ends
		if at.Round {
			in.RS = true
		}
		part.Sections = in.Fit(part.Sections, was.Parts[i].Sections)
		f.ends[part.Name] = partEnd{in.N, in.want, in.have, in.RS, true}
	}
	for i := range s.Parts {
		if p := &s.Parts[i]; p.MirrorOf != "" {
			f.ends[p.Name] = f.ends[p.MirrorOf]
		}
	}
	f.N, f.moved = 0, true
	if on == 1 {
		f.goOn(f.ends[last])
	}
}

func (f *Fitting) goOn(e partEnd) { f.N, f.want, f.have, f.RS = e.n, e.want, e.have, e.rs }

func (s *JoinParts) need(*Fitting, Need) Need { return Need{} }

func (s *JoinParts) fit(f *Fitting, old Section) {
	was := old.(*JoinParts)
	parts, wasParts, added, first := 0, 0, 0, ""
	for i, j := range s.Of {
		if j.Part == "" {
			added += was.Of[i].Added.Int(0, 0)
			continue
		}
		parts += f.ends[j.Part].n
		if i < len(f.step.Taken) {
			wasParts += f.step.Taken[i]
		}
		if first == "" && f.ends[j.Part].on {
			first = j.Part
		}
	}
	sts, _ := f.ratio()
	exact := sts.Times(added)
	switch {
	case first == "": // the row in work is joined to itself
		parts = f.N
		exact = sts.Times(f.step.After).Sub(units.Int(int64(parts)))
	case f.divided[0] > 0: // as many are added as went
		d := wasParts + added - f.divided[0]
		exact = sts.Times(d).Add(units.Int(int64(f.divided[1] - parts)))
	}
	if added > 0 {
		f.add(s, was, f.Near(f.name("gap", added), exact, f.needs().of(parts, 1), 1), added)
	}
	f.N = parts
	for i := range s.Of {
		f.N += s.Of[i].Added.Int(0, 0)
	}
	if first != "" {
		n := f.N
		f.goOn(f.ends[first])
		f.N, f.moved = n, true // its rows are those of its parts
	}
	f.Round = f.Round || s.Round
}

// add parts so many stitches among the gaps as they were parted.
func (f *Fitting) add(s, was *JoinParts, n, published int) {
	done, sum := 0, 0
	for i := range s.Of {
		if k := was.Of[i].Added.Int(0, 0); k > 0 {
			sum += k
			to := int(units.Frac(int64(sum)*int64(n), int64(published)).Round())
			f.put(&s.Of[i].Added, to-done)
			done = to
		}
	}
}

// need keeps the point of a mitre that runs into one.
func (s *Mitre) need(f *Fitting, _ Need) Need {
	by := s.By.Int(0, 0)
	if after := f.Steps[s].After; by > 1 && !s.Increase && after <= by {
		return Need{by, after}.bounded()
	}
	return Need{}
}

func (s *Mitre) fit(f *Fitting, old Section) {
	was := old.(*Mitre)
	by, every, times := was.By.Int(0, 0), max(1, was.Every.Int(0, 2)), was.Times.Int(0, 0)
	half := s.Angle.Float() * math.Pi / 360
	if by < 1 || times < 1 || half <= 0 || half > 1.5 {
		f.Tell(s, "the mitre is kept as it is: work its corner at your own gauge and see that it lies flat")
		f.N += f.step.After - f.step.Before
		return
	}
	m := f.mitred(s, mitring{by, every, times}, half)
	s.By, s.Every, s.Times = expr.Counts(m.by), expr.Counts(m.every), expr.Counts(m.times)
	d := m.by * m.times
	if !s.Increase {
		d = -d
	}
	f.N += d
	f.rise(m.every * m.times)
}
