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
}

// note notes a choice for what is told of it; how often a shaping falls is no count of a measurement.
func (t *trial) note(name string, n int, need schematic.Need) {
	p := picked{piece: t.piece, of: "st", n: n, need: need}
	switch {
	case strings.Contains(name, "times "):
		return
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
	case p.need.Plus > 0:
		return fmt.Sprintf("its stitches are a multiple of %d and %d more, for what follows", p.need.Multiple, p.need.Plus)
	}
	return fmt.Sprintf("its stitches are a multiple of %d, for what follows", p.need.Multiple)
}

// cause is why a measurement of a piece is not nearer, and by how many stitches or rows the other choice is
// away: the count itself that has a rule, or one of the same piece, a raglan, or a join.
func (t *trial) cause(m *schematic.Made, now schematic.Measure) (why string, step int) {
	var near *picked
	for i := range t.picks {
		p := &t.picks[i]
		mine := p.piece == m.Name || p.piece != "" && p.piece == t.mirrored(m.Name)
		switch {
		case p.need.Multiple < 2 || p.of != now.Of || !mine && p.piece != "":
		case p.n == now.Count:
			return p.why(), p.need.Multiple
		case mine && (near == nil || p.need.Multiple > near.need.Multiple):
			near = p
		}
	}
	switch edge := t.joinedTo(m.Name); {
	case now.Of == "st" && hasLines(m.Piece.Sections):
		return "every panel is shaped alike at its lines, and begins and ends in whole stitches", 0
	case now.Of == "st" && now.Around && near == nil && partsAlike(m.Piece.Sections):
		return "parts of it that are alike stay so, and its stitches go by 2", 2
	case now.Of == "st" && near == nil && pointBy(m.Piece.Sections, now.Count) > 1:
		n := pointBy(m.Piece.Sections, now.Count)
		return fmt.Sprintf("it comes to a point, and each round of shaping takes %d stitches", n), n
	case near != nil && near.of == "row":
		return near.why(), near.need.Multiple
	case near != nil:
		return strings.Replace(near.why(), "its stitches", fmt.Sprintf("the %d stitches beside it", near.n), 1), 0
	case edge != "":
		return fmt.Sprintf("its edges stay as long as those of %s that they are joined to", edge), 0
	}
	return "the stretches before and after it are rounded to whole stitches and rows too", 0
}

func hasLines(list []schematic.Section) bool {
	for _, s := range list {
		if _, ok := s.(*schematic.Panels); ok {
			return true
		}
	}
	return false
}

// partsAlike reports whether a row is divided into parts, or begins from parts, of which two are alike.
func partsAlike(list []schematic.Section) bool {
	return slices.ContainsFunc(list, func(s schematic.Section) bool {
		var of []string
		switch q := s.(type) {
		case *schematic.Held:
			for _, h := range q.From {
				of = append(of, fmt.Sprint(h.Stitches.Vals, h.Added.Vals, h.Piece))
			}
			if slices.ContainsFunc(q.From, func(h schematic.HeldPart) bool { return h.Half }) {
				return true // twice the half of a row
			}
		case *schematic.Divide:
			for i := range q.Parts {
				of = append(of, fmt.Sprint(q.Parts[i].Stitches.Vals))
			}
		}
		slices.Sort(of)
		return len(slices.Compact(slices.Clone(of))) < len(of)
	})
}

// pointBy is how many stitches a round of shapings, spread across it, takes where so few are left in the end that the rounds run into a
// point, and stay alike; 0 elsewhere.
func pointBy(list []schematic.Section, left int) int {
	for _, s := range list {
		if q, ok := s.(*schematic.Shape); ok && len(q.Shapings) == 1 && q.Shapings[0].At == schematic.Across {
			if by := q.Shapings[0].By.Int(0, 1); !q.Shapings[0].Increase && left <= 2*by {
				return by
			}
		}
	}
	return 0
}

// joinedTo is the edge that one of the piece is sewn to as long as itself; empty if there is none.
func (t *trial) joinedTo(piece string) string {
	for _, s := range t.f.base.Seams {
		if !s.SewLength.Eq(s.IntoLength) {
			continue
		}
		for _, side := range [][2][]string{{s.Join.Sew, s.Join.Into}, {s.Join.Into, s.Join.Sew}} {
			if len(side[0]) > 0 && len(side[1]) > 0 && strings.HasPrefix(side[0][0], piece) {
				return side[1][0]
			}
		}
	}
	return ""
}

// gives tells which measurements give, by how much, why, and what the other choice is.
func (t *trial) gives() finding.List {
	var out finding.List
	if t.f.extra != nil {
		return nil
	}
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
			is, before := t.p.Steps.Both(now.Length), t.p.Steps.Both(was.Length)
			text := fmt.Sprintf("%s is %s, not %s as %s", measureName(m, now), is, before, held)
			if !half.Less(off) || is == before || told[text] {
				return
			}
			told[text] = true
			why, step := t.cause(m, now)
			f := finding.Finding{Kind: "alter/measure", Severity: finding.Note, Pos: m.Piece.Pos, Piece: m.Name,
				Message: fmt.Sprintf("%s, %s off: %s", text, offBy(off, now.Of), why)}
			if step > 0 && now.Gauge != nil {
				if was.Length.Less(now.Length) {
					step = -step
				}
				layers := now.Length.Div(t.unit(now).Times(now.Count)) // half of a round lies flat
				f.Fix = fmt.Sprintf("%+d %s would make it %s", step, now.Of+"s", t.p.Steps.Both(now.Length.Add(t.unit(now).Times(step).Mul(layers))))
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
