package schematic

import (
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// An error does not end the working of a piece. It goes on with the count that is stated, or with
// the nearest that is possible; that one is in doubt until the pattern states a count
// again (`to`, the parts of a division, the panels of a row). What follows from a count in
// doubt is not told: it has the same cause.

// told is a finding as far as the mirror of a part would tell it again.
type told struct {
	kind, message string
	pos           finding.Pos
	section       Section
}

// find tells what does not add up, and of a part and its mirror once.
func (w *worker) find(kind string, sev finding.Severity, pos finding.Pos, message, have, want, fix string) {
	if sev == finding.Error {
		w.made.Broken, w.erred = true, true
	}
	t := told{kind, message, pos, w.section}
	if w.told[t] {
		return
	}
	if w.told == nil {
		w.told = map[told]bool{}
	}
	w.told[t] = true
	f := finding.Finding{Kind: kind, Severity: sev, Pos: pos, Piece: w.piece.Name, Message: message, Have: have, Want: want, Fix: fix}
	if w.cur != nil && w.cur.name != "" {
		f.Section = w.cur.name
	}
	w.b.find(f)
}

// findCount tells what follows from the count in work, unless that is in doubt.
func (w *worker) findCount(kind string, sev finding.Severity, pos finding.Pos, message, have, want, fix string) {
	if w.cur == nil || !w.cur.doubt {
		w.find(kind, sev, pos, message, have, want, fix)
		return
	}
	if sev == finding.Error {
		w.made.Broken, w.erred = true, true
	}
}

// findSide tells what follows from the side of the work on which the next row falls.
func (w *worker) findSide(kind string, sev finding.Severity, pos finding.Pos, message, have, want, fix string) {
	if w.cur == nil || !w.cur.unseen {
		w.find(kind, sev, pos, message, have, want, fix)
	}
}

// doubtful says that the count in work is not what the designer meant.
func (w *worker) doubtful() { w.cur.doubt = true }

// doubtful says that the live stitches of a part are not as many as the designer meant.
func (m *Made) doubtful(part string) {
	if m.doubtLive == nil {
		m.doubtLive = map[string]bool{}
	}
	m.doubtLive[part] = true
}

// unseen goes on where the piece can't: on a strand that is not drawn, so that later
// sections are looked at too. n is the count that it has, as far as anyone can tell.
func (w *worker) unseen(n int) {
	s := &strand{gauge: w.gauge(w.piece.Gauge), round: w.piece.Round, rs: !w.piece.FirstWS, doubt: true, unseen: true}
	if old := w.cur; old != nil {
		s.name, s.gauge, s.round, s.flip, s.y, s.row, s.rs = old.name, old.gauge, old.round, old.flip, old.y, old.row, old.rs
	}
	l, r := w.outerEdges()
	b := block{view: w.newView(""), runs: []run{{n: max(1, n), gauge: s.gauge}}, left: l, right: r}
	w.views[b.view].dead, w.views[b.view].first = true, s
	s.blocks = []block{b}
	w.cur = s
	w.place(&s.blocks[0])
	w.made.Cut, w.made.Broken = true, true
}

// inDoubt reports whether what a strand is drawn with follows from an error, or from a count that is not the stated one.
func (w *worker) inDoubt(s *strand) bool { return s.doubt || w.over.Sign() != 0 }

// carried goes on with the stated count where the section before made another, which is a finding already, and what follows fits the stated one.
func (w *worker) carried(fits func(n int) bool) {
	if w.over.Sign() == 0 {
		return
	}
	n := w.cur.count() - int(w.over.Floor())
	if n < 1 || !fits(n) {
		return
	}
	w.over = units.Num{}
	w.doubtful()
	w.state(n)
}

// state takes n, which the pattern states, for the count in work if that is in doubt.
func (w *worker) state(n int) {
	s := w.cur
	have := s.count()
	if !s.doubt || n < 1 || s.ended || s.band > 0 {
		return
	}
	s.doubt = false
	if n == have {
		return
	}
	w.settle()
	s.shared = len(s.blocks) > 1
	at, done := 0, 0
	for i := range s.blocks {
		b := &s.blocks[i]
		at += b.count()
		upTo := int(units.Frac(int64(n)*int64(at), int64(max(1, have))).Round())
		next := *b
		next.runs = []run{{name: b.runs[0].name, n: max(1, upTo-done), gauge: b.runs[0].gauge}}
		done = upTo
		w.restep(b, next)
	}
}

// marked remembers what every drawing has before a section.
func (w *worker) marked() {
	w.erred = false
	for _, c := range w.views {
		c.mark = len(c.segs)
	}
}

// blame puts the outline that a section with an error made in doubt.
func (w *worker) blame() {
	if !w.erred {
		return
	}
	w.erred = false
	for _, c := range w.views {
		for i := c.mark; i < len(c.segs); i++ {
			c.segs[i].doubt = true
		}
	}
}
