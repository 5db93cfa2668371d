package check

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// series is one measurement through the sizes. Grain is how far a value may move
// by rounding to whole stitches or rows alone.
type series struct {
	name   string // for messages
	piece  string
	unit   units.Unit
	length bool // runs along the body or the arm
	loose  bool // of a tie, a handle or the like, which is as long as its designer likes
	pos    finding.Pos
	has    []bool
	quiet  []bool // sizes in which nothing is said of it: the piece met an error, its count is a finding, or it is missed already
	vals   []units.Num
	grain  []units.Num
	counts []int // stitches or rows, of what the counts make
}

// grading looks at every measurement through the sizes: those that the designer
// wrote, and those that the counts make.
func grading(p *schematic.Pattern, gs []*schematic.Garment) finding.List {
	if p.Sizes.Len() < 2 {
		return nil
	}
	var all finding.List
	for i := range p.Bodies {
		all = append(all, writtenGrading(p, &p.Bodies[i], "body")...)
	}
	for i := range p.Finished {
		if heldEverywhere(gs, &p.Finished[i]) {
			continue // what it is held against is looked at
		}
		all = append(all, writtenGrading(p, &p.Finished[i], "finished")...)
	}
	all = append(append(all, madeGrading(p, gs, all)...), yarns(p)...)
	for _, q := range p.Pieces {
		all = append(all, turning(p, q)...)
	}
	return all
}

// madeGrading looks at what the counts make through the sizes; authored is what was found in what the designer wrote.
func madeGrading(p *schematic.Pattern, gs []*schematic.Garment, authored finding.List) finding.List {
	var all finding.List
	made := madeSeries(p, gs)
	for k, s := range made {
		for _, f := range s.look(p) {
			if s.follows(p, f, made[:k], made) || s.chosenBy(p) != nil && slices.ContainsFunc(authored, func(o finding.Finding) bool { return o.Kind == f.Kind && slices.Equal(o.Sizes, f.Sizes) }) {
				continue
			}
			// Two views of a piece that are alike, such as its panels, say the same.
			if !slices.ContainsFunc(all, func(o finding.Finding) bool { return o.Piece == f.Piece && o.Message == f.Message && o.Have == f.Have }) {
				all = append(all, f)
			}
		}
	}
	for _, f := range unlike(p, made) {
		if !slices.ContainsFunc(all, func(o finding.Finding) bool {
			return o.Piece == f.Piece && o.Kind == "grading/backwards" && slices.Contains(f.Sizes, o.Sizes[0])
		}) {
			all = append(all, f) // what goes back is told there
		}
	}
	for _, f := range seamsUnlike(p, gs) {
		if !slices.ContainsFunc(all, func(o finding.Finding) bool { return slices.Equal(o.Sizes, f.Sizes) }) {
			all = append(all, f) // what is told already makes the seam unlike too
		}
	}
	return all
}

// follows reports whether what was found of a series is found of another of its piece too, with which it goes.
func (s *series) follows(p *schematic.Pattern, f finding.Finding, before, made []*series) bool {
	switch f.Kind {
	case "grading/jump":
		return slices.ContainsFunc(made, func(part *series) bool { return s.jumpsWith(p, part) })
	case "grading/backwards":
		return slices.ContainsFunc(before, func(o *series) bool { return s.goesWith(p, o) })
	}
	return false
}

// writtenGrading looks at a written measurement through the sizes, and at both ends of a range.
func writtenGrading(p *schematic.Pattern, w *schematic.Written, what string) finding.List {
	low := writtenSeries(p, w, what, w.Low)
	found := low.look(p)
	if w.High.IsZero() {
		return found
	}
	high := writtenSeries(p, w, what, w.High)
	high.name += ", upper end,"
	for i := range high.vals {
		if !high.has[i] {
			high.has[i], high.vals[i] = low.has[i], low.vals[i] // one number is both ends
		}
	}
	if slices.EqualFunc(low.vals, high.vals, units.Num.Eq) {
		return found
	}
	for _, f := range high.look(p) {
		if !slices.ContainsFunc(found, func(o finding.Finding) bool { return o.Kind == f.Kind && slices.Equal(o.Sizes, f.Sizes) }) {
			found = append(found, f)
		}
	}
	if len(found) == 0 {
		found = rangesUnlike(p, low, high)
	}
	return found
}

// rangesUnlike is one range that is wider or narrower than all others, which are alike: bust 32-34 (36-38, 40-42) (44-44, 48-50).
func rangesUnlike(p *schematic.Pattern, low, high *series) finding.List {
	const least, rounds = 5, 10 // sizes, since one of four may be meant; mm, by which ranges in whole centimetres differ that are alike in inches
	wide := map[string][]int{}
	for i := range low.vals {
		if low.has[i] && high.has[i] {
			over := high.vals[i].Sub(low.vals[i]).String()
			wide[over] = append(wide[over], i)
		}
	}
	one, others := -1, -1
	for _, at := range wide {
		if len(at) == 1 {
			one = at[0]
		} else {
			others = at[0]
		}
	}
	if len(wide) != 2 || one < 0 || others < 0 || p.Sizes.Len() < least {
		return nil
	}
	wider := func(i int) units.Num { return high.vals[i].Sub(low.vals[i]) }
	if !units.Int(rounds).Less(wider(one).Sub(wider(others)).Abs()) {
		return nil
	}
	return finding.List{low.find("grading/jump", finding.Note, []string{p.Sizes.Names[one]}, low.name+" has one range unlike the others",
		fmt.Sprintf("from %s to %s in %s", long(low.vals[one], low.unit), long(high.vals[one], low.unit), p.Sizes.Names[one]), "ranges of "+long(wider(others), low.unit)+", as in the other sizes", "look for a wrong digit")}
}

func writtenSeries(p *schematic.Pattern, w *schematic.Written, what string, of expr.Graded) *series {
	s := newSeries(p, what+" "+w.Name, w.Unit)
	s.pos = w.Pos
	s.length, s.loose = alongBody(w.Name), schematic.HangsFree(w.Name)
	for i := range s.vals {
		s.vals[i], s.has[i] = of.At(i)
	}
	return s
}

// heldEverywhere reports whether the counts make a written measurement in every size for
// which it is written.
func heldEverywhere(gs []*schematic.Garment, w *schematic.Written) bool {
	return !slices.ContainsFunc(gs, func(g *schematic.Garment) bool {
		_, ok := w.Low.At(g.Index)
		return ok && len(sum(g, orName(w))) == 0
	})
}

// orName is what a written measurement is held against.
func orName(w *schematic.Written) string {
	if w.Of != "" {
		return w.Of
	}
	return w.Name
}

func newSeries(p *schematic.Pattern, name string, u units.Unit) *series {
	n := p.Sizes.Len()
	return &series{name: name, unit: u, has: make([]bool, n), quiet: make([]bool, n), vals: make([]units.Num, n),
		grain: make([]units.Num, n), counts: make([]int, n)}
}

func alongBody(name string) bool {
	name = strings.ToLower(name)
	return strings.Contains(name, "length") || strings.Contains(name, "depth") || strings.Contains(name, "height") || strings.Contains(name, " to ")
}

// madeSeries are the main measurements of all sizes, each a series.
func madeSeries(p *schematic.Pattern, gs []*schematic.Garment) []*series {
	var order []*series
	byID := map[string]*series{}
	for _, g := range gs {
		for made, m := range g.Measured() {
			if !m.Main {
				continue
			}
			s := byID[m.ID]
			if s == nil {
				s = seriesOf(p, made, m)
				byID[m.ID] = s
				order = append(order, s)
			}
			if m.Doubt {
				s.quiet[g.Index] = true
				continue
			}
			s.has[g.Index], s.vals[g.Index], s.grain[g.Index], s.counts[g.Index] = true, m.Length, grain(p, m), m.Count
		}
	}
	named := map[string][]*series{}
	for _, s := range order {
		named[s.name] = append(named[s.name], s)
	}
	for _, g := range gs {
		quieten(g, order)
		hushShown(g, byID, named)
	}
	return order
}

// hushShown keeps quiet of a measurement that is there and is not shown, since its like at the other side, or the width of the whole, says the
// same in this size: of underarms of an odd number of stitches each side has its own.
func hushShown(g *schematic.Garment, byID map[string]*series, named map[string][]*series) {
	for _, made := range g.Pieces {
		for _, m := range made.Measures {
			if s := byID[m.ID]; !m.Main && s != nil {
				s.quiet[g.Index] = true
			}
		}
		for i := range made.Edges {
			for _, s := range named[made.Name+" width of "+made.Edges[i].Name] {
				s.quiet[g.Index] = true
			}
		}
	}
}

// seriesOf begins the series of a measurement.
func seriesOf(p *schematic.Pattern, made *schematic.Made, m *schematic.Measure) *series {
	s := newSeries(p, made.Name+" "+m.Name, p.Units)
	s.piece = made.Name
	s.loose = schematic.HangsFree(made.Name + " " + m.Part + " " + m.Name)
	s.length = s.loose || m.Axis == schematic.Vertical || alongBody(m.Name)
	if made.Piece != nil {
		s.pos = made.Piece.Pos
	}
	return s
}

// quieten keeps quiet of a size that lacks a piece or could not work it: of a missing piece its first measurement tells.
func quieten(g *schematic.Garment, order []*series) {
	missed := map[string]bool{}
	for _, s := range order {
		i := slices.IndexFunc(g.Pieces, func(m *schematic.Made) bool { return m.Name == s.piece })
		s.quiet[g.Index] = s.quiet[g.Index] || i < 0 && (missed[s.piece] || slices.Contains(g.Without, s.piece))
		missed[s.piece] = missed[s.piece] || i < 0
		if i >= 0 && g.Uneven(g.Pieces[i]) || s.length && shapedOff(g, s.piece) {
			s.has[g.Index], s.quiet[g.Index] = false, true // its count, or its rows, are a finding already
		}
	}
}

// shapedOff reports whether a shaping of a piece does not fit its rows, or does not end with the count that is stated: its rows may be wrong too.
func shapedOff(g *schematic.Garment, piece string) bool {
	return slices.ContainsFunc(g.Findings, func(f finding.Finding) bool {
		return f.Piece == piece && (f.Kind == "arithmetic/shaping-rows" || f.Kind == "arithmetic/count")
	})
}

func (s *series) find(kind string, severity finding.Severity, sizes []string, message, have, want, fix string) finding.Finding {
	return finding.Finding{Kind: kind, Severity: severity, Pos: s.pos, Piece: s.piece, Sizes: sizes, Message: message, Have: have, Want: want, Fix: fix}
}

func (s *series) look(p *schematic.Pattern) finding.List {
	all := s.holes(p)
	if !s.length {
		if back := s.backwards(p); len(back) > 0 {
			return append(all, back...) // a value that goes back jumps as well: once is enough
		}
	}
	return append(all, s.jumps(p)...)
}

// holes are sizes without the measurement between sizes that have it.
func (s *series) holes(p *schematic.Pattern) finding.List {
	first, last := slices.Index(s.has, true), len(s.has)-1
	for last > first && !s.has[last] {
		last--
	}
	var missing []string
	for i := first + 1; first >= 0 && i < last; i++ {
		if !s.has[i] && !s.quiet[i] {
			missing = append(missing, p.Sizes.Names[i])
		}
	}
	if len(missing) == 0 {
		return nil
	}
	return finding.List{s.find("grading/hole", finding.Note, missing,
		fmt.Sprintf("smaller and larger sizes have %s, and %s does not", s.name, strings.Join(missing, ", ")),
		s.line(p), "a value in each size between the first and the last that has one", "add it, or check that the dash is meant")}
}

// backwards are widths that are smaller than those of the size before, all of a series told as one.
// Lengths may well be: a sleeve grows shorter as the body grows wider (common practice).
func (s *series) backwards(p *schematic.Pattern) finding.List {
	var sizes, ways, haves []string
	s.steps(func(a, b int) {
		if !s.vals[b].Add(units.Max(s.grain[a], s.grain[b])).Less(s.vals[a]) && !(s.grain[a].Sign() == 0 && s.vals[b].Less(s.vals[a])) {
			return
		}
		from, to := p.Sizes.Names[a], p.Sizes.Names[b]
		sizes = append(sizes, to)
		ways = append(ways, fmt.Sprintf("from size %s to %s", from, to))
		haves = append(haves, fmt.Sprintf("%s in %s, %s in %s", long(s.vals[a], s.unit), from, long(s.vals[b], s.unit), to))
	})
	if len(sizes) == 0 {
		return nil
	}
	return finding.List{s.find("grading/backwards", finding.Warning, sizes,
		fmt.Sprintf("%s goes back %s", s.name, listed(ways)), strings.Join(haves, "; "),
		"at least as much as in the size before", s.blame(p, "two swapped values, or a wrong digit"))}
}

// listed are words in a row: a, b and c.
func listed(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " and " + words[last]
}

// jumps are steps from size to size, up or down, unlike the others, and more than three centimetres: worth a
// look. One wrong value makes two, so that those of a series are told as one.
func (s *series) jumps(p *schematic.Pattern) finding.List {
	const floor = 10 // mm
	var steps, grain []units.Num
	var ends [][2]int
	s.steps(func(a, b int) {
		steps = append(steps, s.vals[b].Sub(s.vals[a]))
		grain = append(grain, s.grain[a].Add(s.grain[b]))
		ends = append(ends, [2]int{a, b})
	})
	var sizes, ways, haves, wants []string
	for _, odd := range bysize.OddSteps(steps, grain, units.Int(floor)) {
		step, from, to := steps[odd.At], ends[odd.At][0], ends[odd.At][1]
		if s.loose && !units.Min(s.vals[from], s.vals[to]).Half().Less(step.Abs()) {
			continue
		}
		a, b := p.Sizes.Names[from], p.Sizes.Names[to]
		way := "more"
		if step.Sign() < 0 {
			way = "less"
		}
		sizes = append(sizes, b)
		ways = append(ways, fmt.Sprintf("from size %s to %s", a, b))
		haves = append(haves, fmt.Sprintf("%s %s in %s than in %s", long(step.Abs(), s.unit), way, b, a))
		if want := fmt.Sprintf("about %s", long(odd.Middle, s.unit)); !slices.Contains(wants, want) {
			wants = append(wants, want)
		}
	}
	switch len(sizes) {
	case 0:
		return s.peak(p, steps, grain, ends)
	case 1:
		ways[0] = "a step " + ways[0]
	default:
		ways[0] = "steps " + ways[0]
	}
	return finding.List{s.find("grading/jump", finding.Note, sizes,
		fmt.Sprintf("%s makes %s unlike the others", s.name, listed(ways)), strings.Join(haves, "; "),
		strings.Join(wants, ", or ")+", as between the other sizes", s.blame(p, "a wrong digit"))}
}

// peak is a middle one of three sizes whose length is well over, or under, that of both others: of two steps neither is the measure of the other.
func (s *series) peak(p *schematic.Pattern, steps, grain []units.Num, ends [][2]int) finding.List {
	const least = 20 // mm, a choice of this project
	if len(steps) != 2 || s.loose || steps[0].Sign()*steps[1].Sign() >= 0 {
		return nil
	}
	for i := range steps {
		if !grain[i].Add(units.Int(least)).Less(steps[i].Abs()) {
			return nil
		}
	}
	way := "longer"
	if steps[0].Sign() < 0 {
		way = "shorter"
	}
	name := p.Sizes.Names[ends[0][1]]
	return finding.List{s.find("grading/jump", finding.Note, []string{name}, fmt.Sprintf("%s is %s in %s than in both sizes beside it", s.name, way, name),
		s.line(p), "a value between theirs", s.blame(p, "a wrong digit"))}
}

// blame is where to look for what is wrong: among numbers that the grading chose, the line that chose them.
func (s *series) blame(p *schematic.Pattern, what string) string {
	if g := s.chosenBy(p); g != nil {
		return fmt.Sprintf("the grading chose these: change what %q is worked out from (line %d)", g.Name, g.Pos.Line)
	}
	return "look for " + what + ": " + s.line(p)
}

// chosenBy is the line of the grading that chose all the counts of s, or nil.
func (s *series) chosenBy(p *schematic.Pattern) *schematic.Grading {
	for _, v := range p.Graded {
		if v.Of < 0 || v.Of >= len(p.Grading) || v.Dim == expr.LengthOf || p.Grading[v.Of].Given != nil {
			continue
		}
		same, any := true, false
		for i, has := range s.has {
			if !has {
				continue
			}
			n, ok := v.Vals.At(i)
			same = same && ok && s.counts[i] > 0 && n.Eq(units.Int(int64(s.counts[i])))
			any = true
		}
		if same && any {
			return &p.Grading[v.Of]
		}
	}
	return nil
}

// jumpsWith reports whether a length jumps only because part does, a shorter one of its piece, which is a finding of its own.
func (s *series) jumpsWith(p *schematic.Pattern, part *series) bool {
	if s == part || !s.length || !part.length || s.piece != part.piece || len(part.jumps(p)) == 0 {
		return false
	}
	rest := *s
	rest.vals = slices.Clone(s.vals)
	for i := range rest.vals {
		if s.has[i] && (!part.has[i] || !part.vals[i].Less(s.vals[i])) {
			return false
		}
		rest.vals[i] = s.vals[i].Sub(part.vals[i])
	}
	return len(rest.jumps(p)) == 0
}

// goesWith reports whether a width goes back only because another of its piece does, of which it has as many stitches more or fewer in every size.
func (s *series) goesWith(p *schematic.Pattern, o *series) bool {
	if s.length || o.length || s.piece != o.piece || len(o.backwards(p)) == 0 {
		return false
	}
	first := slices.Index(s.has, true)
	for i, has := range s.has {
		if has != o.has[i] || has && (s.counts[i] == 0 || o.counts[i] == 0 || s.counts[i]-o.counts[i] != s.counts[first]-o.counts[first]) {
			return false
		}
	}
	return true
}

// steps calls f with each size that has a value and the next one that has, where no quiet size lies between them.
func (s *series) steps(f func(a, b int)) {
	last := -1
	for i, ok := range s.has {
		if !ok {
			if s.quiet[i] {
				last = -1
			}
			continue
		}
		if last >= 0 {
			f(last, i)
		}
		last = i
	}
}

func (s *series) line(p *schematic.Pattern) string {
	texts := make([]string, len(s.vals))
	for i := range texts {
		texts[i] = "–"
		if s.has[i] {
			texts[i] = units.Decimal(units.In(s.vals[i], s.unit), 2)
		}
	}
	return p.Sizes.Line(texts) + " " + s.unit.String()
}

func grain(p *schematic.Pattern, m *schematic.Measure) units.Num {
	if m.Around {
		return unit(p, m).Times(2)
	}
	return unit(p, m)
}
