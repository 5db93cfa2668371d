package alter

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// picked is a count that a trial chose among those that a rule allows.
type picked struct {
	piece string // empty for a count of the grading, which may stand in any piece
	of    string // st or row
	n     int
	need  schematic.Need
	line  string // of the grading
	steps bool   // rows over which stitches are bound off in equal steps
	rib   string // the name of the choice, of a rib's stitches
}

// note notes a choice for what is told of it; how often a shaping falls is no count of a measurement.
func (t *trial) note(name string, n int, need schematic.Need) {
	p := picked{piece: t.piece, of: "st", n: n, need: need}
	switch {
	case strings.Contains(name, "times "):
		return
	case strings.HasPrefix(name, "rib "):
		p.rib = name
	case strings.HasPrefix(name, "rows "), strings.HasPrefix(name, "band rows "):
		p.of, p.steps = "row", strings.HasPrefix(name, "rows in steps ")
	}
	t.picks = append(t.picks, p)
}

// why is what kept the count from the nearest.
func (p picked) why() string {
	switch {
	case p.line != "":
		return fmt.Sprintf("the grading has %q go by %d", p.line, p.need.Multiple)
	case p.steps:
		return fmt.Sprintf("its steps take %d rows each", p.need.Multiple)
	case p.of == "row":
		return fmt.Sprintf("rows go by %d there, so that what follows begins on the same side of the work", p.need.Multiple)
	case p.rib != "":
		return fmt.Sprintf("its rib is a multiple of %s", p.need)
	}
	return fmt.Sprintf("its stitches are a multiple of %s, for what follows", p.need)
}

// cause is why a measurement of a piece is not nearer, and by how many stitches or rows the other choice is
// away (off is how many it is off): the count itself that has a rule, or one of the same piece, a raglan, or a join.
func (t *trial) cause(m *schematic.Made, now schematic.Measure, off units.Num) (why string, step int) {
	if len(m.Piece.Onto) > 0 && now.Axis == schematic.Horizontal {
		return t.bandBy(m, now, off)
	}
	exact, near := t.ruled(m.Name, now)
	within := func(step int) bool { return !units.Frac(int64(step), 2).Add(rounded).Less(off) } // a rule is the cause of what it can cost
	if exact != nil && within(exact.need.Multiple) {
		return exact.why(), exact.need.Multiple
	}
	var rib *picked
	if now.Of == "st" {
		rib = t.besideRib(m.Name, now)
	}
	switch edge := t.joinedTo(m.Name, now); {
	case rib != nil && (rib.need.Multiple > 2 || within(rib.need.Multiple)):
		return fmt.Sprintf("the rib beside it takes its stitches, a multiple of %s", rib.need), rib.need.Multiple
	case now.Of == "st" && hasLines(m.Piece.Sections):
		return "every panel begins and ends in whole stitches", 0
	case now.Of == "st" && len(takenUp(m)) > 1 && m.Steps[0].After == now.Count:
		return fmt.Sprintf("it takes up the stitches of %s, each as wide as its own rule allows", strings.Join(takenUp(m), " and ")), 0
	case now.Of == "st" && now.Around && near == nil && within(2) && partsAlike(m.Piece.Sections):
		return "parts of it that are alike stay so, and its stitches go by 2", 2
	case now.Of == "st" && near == nil && t.twoGauges(m.Piece, now) != "":
		return t.twoGauges(m.Piece, now), 0
	case now.Of == "st" && now.Axis == schematic.Horizontal && near == nil && within(2) && edge != "" && partsAlike(m.Piece.Sections):
		return "parts of it that are alike stay so, and its stitches go by 2", 2
	case now.Of == "st" && near == nil && pointBy(m.Piece.Sections, now.Count) > 1:
		n := pointBy(m.Piece.Sections, now.Count)
		return fmt.Sprintf("it comes to a point, and each round of shaping takes %d stitches", n), n
	case exact != nil:
		return exact.why(), exact.need.Multiple
	case now.Of == "row" && now.Count > 0 && t.rowsAsPublished(m.Name, now):
		return "its rows are those of stitches bound off step by step, as many as published", 0
	case near != nil && near.of == "row":
		return near.why(), near.need.Multiple
	case near != nil:
		return strings.Replace(near.why(), "its stitches", fmt.Sprintf("the %d stitches beside it", near.n), 1), 0
	case edge != "":
		return fmt.Sprintf("its edges stay as long as those of %s that they are joined to", edge), 0
	}
	return "the stretches before and after it are rounded to whole stitches and rows too", 0
}

// rowsAsPublished reports whether a measurement is made by as many rows as before although they are of another height: those of steps.
func (t *trial) rowsAsPublished(piece string, now schematic.Measure) bool {
	was := madeIn(t.f.base, piece)
	return was != nil && slices.ContainsFunc(was.Measures, func(old schematic.Measure) bool {
		return old.ID == now.ID && old.Count == now.Count && !old.Length.Eq(now.Length)
	})
}

// takenUp are the pieces whose stitches a piece begins from, each once.
func takenUp(m *schematic.Made) []string {
	from := schematic.BeginsFrom(m.Piece)
	slices.Sort(from)
	return slices.Compact(from)
}

// ruled are the choice with a rule that made the count of a measurement, and another of its piece, not of a rib: those that go by the most.
func (t *trial) ruled(piece string, now schematic.Measure) (exact, near *picked) {
	for i := range t.picks {
		p := &t.picks[i]
		if p.line != "" && now.Around && 2*p.n == now.Count { // half of the round
			p = &picked{of: p.of, n: now.Count, need: schematic.Need{Multiple: 2 * p.need.Multiple}, line: p.line}
		}
		mine := p.piece == piece || p.piece != "" && p.piece == t.mirrored(piece)
		switch {
		case p.need.Multiple < 2 || p.of != now.Of || !mine && p.piece != "":
		case p.rib != "" && (now.Gauge == nil || !strings.Contains(p.rib, ", "+now.Gauge.Name+",")): // the fabric beside it
		case p.n == now.Count:
			if exact == nil || p.need.Multiple > exact.need.Multiple {
				exact = p
			}
		case mine && p.rib == "" && (near == nil || p.need.Multiple > near.need.Multiple):
			near = p
		}
	}
	return exact, near
}

// besideRib is the choice of a rib whose stitches a width of the fabric beside it has; nil if there is none.
func (t *trial) besideRib(piece string, now schematic.Measure) *picked {
	i := slices.IndexFunc(t.picks, func(p picked) bool { return p.rib != "" && p.piece == piece && p.n == now.Count && p.need.Multiple > 1 })
	if i < 0 {
		return nil
	}
	return &t.picks[i]
}

// bandBy is why the length of a band is not nearer: its edges are longer or shorter themselves, those that are alike keep one rate, or
// rates do not come nearer.
func (t *trial) bandBy(m *schematic.Made, now schematic.Measure, off units.Num) (why string, step int) {
	was, is := ontoOf(madeIn(t.f.base, m.Name)), ontoOf(m)
	a, b, alike, kept := units.Num{}, units.Num{}, map[string]int{}, true
	for k := range min(len(was.Onto), len(is.Onto)) {
		a, b = a.Add(was.Onto[k].Length), b.Add(is.Onto[k].Length)
		alike[fmt.Sprint(is.Onto[k].Length, is.Onto[k].Picked)]++
		published := t.f.was.PieceNamed(m.Name).Onto[k]
		kept = kept && m.Piece.Onto[k].Pick == published.Pick && m.Piece.Onto[k].Of == published.Of
	}
	most := 1
	for _, n := range alike {
		most = max(most, n)
	}
	switch {
	case half.Less(b.Sub(a).Abs().Div(t.unit(now))):
		return fmt.Sprintf("it goes by its edges, which are %s and not %s", both(t.p, b), both(t.p, a)), 0
	case most > 1:
		return fmt.Sprintf("edges that are alike keep one rate, and its stitches go by %d", most), most
	}
	if kept {
		return "it keeps its rates, which come within a stitch along each edge", max(1, int(off.Round()))
	}
	return fmt.Sprintf("it is picked up at rates that repeat within %d rows or stitches", rateRows), max(1, int(off.Round()))
}

// twoGauges is said of a width whose stitches are shared with rows of another gauge, where the maker's gauges are not to each other as
// those of the pattern are: what one width gains the other loses. Empty where that is not so.
func (t *trial) twoGauges(q *schematic.Piece, now schematic.Measure) string {
	name := q.Gauge
	if now.Gauge != nil {
		name = now.Gauge.Name
	}
	narrower := func(name string) units.Num {
		was, is := t.Gauge(name)
		return is.StitchWidth().Div(was.StitchWidth())
	}
	mine := narrower(name)
	for _, s := range q.Sections {
		step, ok := t.f.steps[s]
		if !ok || step.Gauge == name || step.Rows == 0 {
			continue
		}
		apart := narrower(step.Gauge).Div(mine).Sub(units.Int(1)).Abs()
		if half.Less(apart.Times(now.Count)) {
			return fmt.Sprintf("%s and %s share its stitches, and your two gauges are %s %% further apart than those published", name, step.Gauge,
				units.Decimal(apart.Times(100), 1))
		}
	}
	return ""
}

func hasLines(list []schematic.Section) bool {
	return slices.ContainsFunc(list, func(s schematic.Section) bool { return s.Traits().Panels != nil })
}

// partsAlike reports whether a row is divided into parts, or begins from parts, of which two are alike.
func partsAlike(list []schematic.Section) bool {
	return slices.ContainsFunc(list, func(s schematic.Section) bool {
		var of []string
		for _, h := range s.Traits().From {
			if h.Half {
				return true // twice the half of a row
			}
			of = append(of, fmt.Sprint(h.Stitches.Vals, h.Added.Vals, h.Piece))
		}
		for _, p := range s.Traits().Parts {
			of = append(of, fmt.Sprint(p.Stitches.Vals))
		}
		slices.Sort(of)
		return len(slices.Compact(slices.Clone(of))) < len(of)
	})
}

// pointBy is how many stitches a round of shapings, spread across it, takes where so few are left in the end that the rounds run into a
// point, and stay alike; 0 elsewhere.
func pointBy(list []schematic.Section, left int) int {
	for _, s := range list {
		if of := s.Traits().Shapings; len(of) == 1 && of[0].At == schematic.Across {
			if by := of[0].By.Int(0, 1); !of[0].Increase && left <= 2*by {
				return by
			}
		}
	}
	return 0
}

// joinedTo is the edge that one of the piece is sewn to as long as itself: the one that the measurement is named after, or else one of rows
// for rows and of stitches for stitches. Empty if there is none.
func (t *trial) joinedTo(piece string, now schematic.Measure) string {
	best := ""
	for _, s := range t.f.base.Seams {
		if !agrees(t.f.was, s) {
			continue
		}
		for _, side := range []struct {
			mine, other []string
			edges       []schematic.Edge
		}{{s.Join.Sew, s.Join.Into, s.Sew}, {s.Join.Into, s.Join.Sew, s.Into}} {
			for _, mine := range side.mine {
				_, edge, ok := strings.Cut(mine, piece+" ")
				switch {
				case !ok || len(side.other) == 0:
				case strings.Contains(now.Name, edge):
					return side.other[0]
				case best == "" && ofRows(side.edges) == (now.Of == "row"):
					best = side.other[0]
				}
			}
		}
	}
	return best
}

// gives tells which measurements give, by how much, why, and what the other choice is.
func (t *trial) gives() finding.List {
	var out finding.List
	held := "published"
	if t.f.graded != nil && t.f.graded.own {
		held = "worked out for your body at the pattern's gauge"
	}
	for k, m := range t.g.Pieces {
		if k >= len(t.f.base.Pieces) {
			break
		}
		told := map[string]bool{}
		t.compare(t.f.base.Pieces[k], m, func(was, now schematic.Measure, off units.Num) {
			is, before := both(t.p, now.Length), both(t.p, was.Length)
			text := fmt.Sprintf("%s is %s, not %s as %s", measureName(m, now), is, before, held)
			if is == before {
				text = fmt.Sprintf("%s is %s, as %s once rounded", measureName(m, now), is, held)
			}
			if !half.Less(off) || told[text] {
				return
			}
			told[text] = true
			why, step := t.cause(m, now, off)
			f := finding.Finding{Kind: "alter/measure", Severity: finding.Note, Pos: m.Piece.Pos, Piece: m.Name,
				Message: fmt.Sprintf("%s, %s off: %s", text, offBy(off, now.Of), why)}
			if step > 0 && now.Gauge != nil {
				if was.Length.Less(now.Length) {
					step = -step
				}
				layers := now.Length.Div(t.unit(now).Times(now.Count)) // half of a round lies flat
				f.Fix = fmt.Sprintf("%+d %s would make it %s", step, now.Of+"s", both(t.p, now.Length.Add(t.unit(now).Times(step).Mul(layers))))
			}
			out = append(out, f)
		})
	}
	return out
}

// offBy is a distance in stitches or rows in words: 0.6 of a stitch, 1 row, 2.2 stitches.
func offBy(off units.Num, of string) string {
	one, many := "stitch or row", "stitches or rows"
	switch of {
	case "st":
		one, many = "stitch", "stitches"
	case "row":
		one, many = "row", "rows"
	}
	switch n := units.Decimal(off, 1); {
	case n == "1":
		return "1 " + one
	case off.Less(units.Int(1)):
		return n + " of a " + one
	default:
		return n + " " + many
	}
}

func measureName(m *schematic.Made, s schematic.Measure) string {
	if len(m.Views) > 1 && s.View >= 0 && s.View < len(m.Views) && m.Views[s.View].Name != "" {
		return m.Views[s.View].Name + ": " + s.Name
	}
	if s.Part != "" {
		return s.Part + ": " + s.Name
	}
	return s.Name
}
