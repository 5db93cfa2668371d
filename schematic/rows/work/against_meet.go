package work

import (
	"slices"
	"strings"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/units"
)

// meeting meets the counts of a piece or part in those that a text comes to.
type meeting struct {
	*heights
	key   string
	size  int
	have  []plateau
	next  int     // the first of have that is not met
	met   []int   // the place in have of each count that is met, in order
	at    plateau // of the text, where it differs
	slack within  // of its first rows
}

// meet meets the counts in their order; it tells the first that differs.
func (m *meeting) meet(want []plateau) (raw, bool) {
	s := stretch{plateau: plateau{tall: true}, key: m.key, slack: m.slack}
	if len(want) > 0 && want[0].rows == 0 { // a shaping follows the foundation, and the row worked into that may be none of it
		s.slack.more = 1
	}
	for i, w := range want {
		s.wants(w)
		k, late, r, differs := m.find(s)
		switch {
		case k < 0 && m.skips():
			s.vague = true
			continue
		case k < 0 && w.rows == 0 && i > 0 && i < len(want)-1: // stitches left, and the row behind them shapes on at once
			continue
		case k < 0:
			return m.unmet(w)
		case differs:
			m.at = m.have[k]
			return r, true
		}
		m.met, m.next = append(m.met, k), k+1
		slack := within{more: min(late, s.loose(m.have[k]).more)} // that row begins the work, or is one of the next
		if late > 0 {
			slack.fewer = s.loose(m.have[k]).fewer
		}
		s = stretch{plateau: w, text: m.have[k], key: m.key, have: late, slack: slack}
	}
	if rest := m.have[m.next:]; len(rest) > 0 && rest[0].skips && rest[0].count >= 0 {
		return raw{kind: "rows/against", sev: finding.Warning, at: rest[0].at, fix: "correct the text, or the section", a: []int{rest[0].count},
			msg: "the text of " + m.key + " has %s stitches here; the pattern's sections never come to that count"}, true
	}
	return raw{}, false
}

// find is the place of the next plateau of the text that has the count to which s goes on, after as many rows, and at that height, and
// how many rows of the shaping that follows are worked there already; or the first of that count, with how it differs. It is -1 if
// none has it.
func (m *meeting) find(s stretch) (at, late int, first raw, differs bool) {
	at = -1
	rest := m.have[m.next:]
	before := s.to.anew && slices.ContainsFunc(rest, func(h plateau) bool { return h.anew }) // the edge that rows are counted from
	for k, h := range rest {
		before = before && !h.anew
		if s.take(h); before || h.count != s.to.count && h.said != s.to.count {
			continue
		}
		r, off := s.tallness(m, h)
		to := s
		if !off {
			to.settle(m, h)
			r, off = to.rows(h)
		}
		if !off {
			return m.next + k, to.late(), raw{}, false
		}
		if at < 0 {
			at, first = m.next+k, r
		}
	}
	return at, 0, first, at >= 0
}

// skips reports whether the text says of anything still to come only that it is worked like something else.
func (m *meeting) skips() bool {
	return slices.ContainsFunc(m.have[m.next:], func(h plateau) bool { return h.skips })
}

// after is the place in the text behind the first n counts of the pattern.
func (m *meeting) after(n int) int {
	if n = min(n, len(m.met)); n == 0 {
		return m.next
	}
	return m.met[n-1] + 1
}

// strands are the plateaus of the parts of a divided row, one by one.
func strands(list []plateau) [][]plateau {
	var out [][]plateau
	for i, p := range list {
		if i == 0 || p.begins {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], p)
	}
	return out
}

// stretch is what lies between the counts that were met last and the next.
type stretch struct {
	plateau         // of the pattern, met last
	text    plateau // of the text, met last
	key     string
	to      plateau // of the pattern, the next
	want    int     // rows by the pattern
	have    int     // rows that the text counts
	gaps    int     // stretches of rows that it does not count
	slack   within
	vague   bool
}

// wants goes on to the next plateau of the pattern.
func (s *stretch) wants(w plateau) {
	if s.want += w.rows; w.anew {
		s.want = w.rows
	}
	s.to, s.vague = w, s.vague || w.fresh
}

// take goes on to the next plateau of the text.
func (s *stretch) take(h plateau) {
	if s.have += h.rows; h.anew {
		s.have, s.gaps = h.rows, 0
	}
	s.gaps += h.gaps
	s.vague = s.vague || h.skips || h.fresh
}

// loose is how many rows are within it where work begins.
func (s *stretch) loose(h plateau) within { return s.slack.or(s.to.within).or(h.within) }

// late is how many rows the text works over the count that may by the pattern be those of the shaping behind it.
func (s *stretch) late() int {
	if s.to.lead == 0 || s.gaps > 0 {
		return 0
	}
	return max(s.have-s.want, 0)
}

// rows holds the rows of the text to those of the pattern.
func (s *stretch) rows(h plateau) (raw, bool) {
	loose := s.loose(h)
	if s.vague || h.doubt || s.text.doubt || s.gaps > 0 || s.want-s.have <= loose.fewer && s.have-s.want <= s.to.lead+loose.more {
		return raw{}, false
	}
	return raw{kind: "rows/against", sev: finding.Warning, at: h.at,
		msg: "the text of " + s.key + " works %s rows to the end of %s stitches, the pattern %s | %s rows in the text | %s rows by the pattern's sections",
		fix: "correct the text, or the section", a: []int{s.have, s.to.count, s.want, s.have, s.want}}, true
}

// settle counts the rows of a rib that is as long as that of the pattern, if no other rows of the text are not counted.
func (s *stretch) settle(m *meeting, h plateau) {
	if s.gaps != 1 || len(h.lengths) != 1 {
		return
	}
	if _, what, ok := m.height(h.lengths[0], units.Num{}, true); ok && what == ofRib {
		s.have, s.gaps = m.ribRows+h.lengths[0].rows, 0
	}
}

// ofRib is what is said of the length of a rib.
const ofRib = " of rib"

// tallness holds the lengths to which the text goes on to the heights of the pattern: two rows and half a printed step are
// within it, since the text ends after a row of one side.
func (s *stretch) tallness(m *meeting, h plateau) (raw, bool) {
	if s.vague || !s.tall || !s.to.tall || s.want == 0 {
		return raw{}, false
	}
	row := s.to.top.Sub(s.top).Div(units.Int(int64(s.want)))
	for i, l := range h.lengths {
		if m.size >= len(l.MM) || l.MM[m.size].Sign() <= 0 {
			continue
		}
		said := l.MM[m.size]
		is, what, ok := m.height(l, s.to.top.Sub(row.Times(l.rows)), i == len(h.lengths)-1)
		if l.Of == "" && l.From == "" && s.gaps == 1 && len(h.lengths) == 1 { // for 10 cm
			is, what, ok = s.to.top.Sub(s.top).Sub(row.Times(s.have)), "", true
		}
		if tol := row.Times(2).Add(units.Of(units.Usual.Step(l.Unit), l.Unit).Half()); !ok || !tol.Less(said.Sub(is).Abs()) {
			continue
		}
		u := " " + l.Unit.String()
		a, b := hundredths(said, l.Unit), 10*int(units.In(is, l.Unit).Times(10).Round())
		return raw{kind: "rows/against", sev: finding.Warning, at: l.At,
			msg: "the text of " + s.key + " goes on to %h" + u + what + "; the pattern's rows measure %h" + u + " there | %h" + u + " in the text | %h" + u + " by the pattern's sections",
			fix: "correct the length, or the section", a: []int{a, b, a, b}}, true
	}
	return raw{}, false
}

// height is what a length of the text is by the pattern's rows, of which top are worked where the text ends: it is measured from
// the beginning, above the rib, or from the armhole on, or it is that of the rib.
func (m *meeting) height(l measured, top units.Num, last bool) (is units.Num, what string, ok bool) {
	rib, armhole := m.rib.Sign() > 0, m.armhole.Sign() > 0
	switch {
	case names(l.From, "above rib", "of rib", "from rib", "ribbing", "border", "above hem", "above cuff"):
		return top.Sub(m.rib), " above the rib", rib && last
	case names(l.Of, "armhole"), names(l.From, "armhole", "underarm"):
		return top.Sub(m.armhole), " from the armhole", armhole && last && m.armhole.Less(top)
	case names(l.Of, "rib", "border", "cuff", "hem", "welt", "brim"):
		return m.rib, ofRib, rib
	case l.Of == "" && l.From == "", names(l.From, "shap", "divi", "mark", "neck", "join", "last", "leg", "waist", "crown", "short"):
		return units.Num{}, "", false
	case l.From == "" || names(l.From, "beg", "start", "cast", "co edge", "lower", "bottom", "foundation", "edge", "all", "long"):
		whole := names("piece work it total "+strings.ToLower(m.key), strings.ToLower(l.Of)) || l.Of == ""
		return top, "", whole && last
	}
	return units.Num{}, "", false
}

// names reports whether words hold one of those.
func names(words string, any ...string) bool {
	return slices.ContainsFunc(any, func(w string) bool { return strings.Contains(words, w) })
}

// unmet says that the text never comes to the count w; nothing, if it contradicts itself, which Check tells.
func (m *meeting) unmet(w plateau) (raw, bool) {
	if len(m.have) == 0 {
		return raw{kind: "rows/piece", sev: finding.Note, at: ins.Span{Line: 1}, fix: "write its rows in the words of the trade's lists",
			msg: "no row of " + m.key + " could be followed, so it was not compared"}, true
	}
	if slices.ContainsFunc(m.have, func(h plateau) bool { return h.doubt }) {
		return raw{}, false
	}
	m.at = m.have[min(m.next, len(m.have)-1)]
	what := ""
	if w.what != "" {
		what = " (" + w.what + ")"
	}
	return raw{kind: "rows/against", sev: finding.Warning, at: m.at.at, fix: "correct the text, or the section", a: []int{w.count, m.at.count, w.count},
		msg: "the text of " + m.key + " never comes to %s stitches" + what + " | %s stitches here in the text | %s stitches by the pattern's sections"}, true
}
