package grade

import (
	"fmt"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Request is what a maker wants otherwise than one published size. Lengths are in mm.
type Request struct {
	Size   int               // index of the size
	Gauges []schematic.Gauge // the maker's own, by the names of the pattern's; others follow the first, if it is among them, and else stay
	Body   units.Num         // how much longer the body is; negative for shorter
	Sleeve units.Num
	Parts  map[string]int // pieces that are taken in another size, by name
}

// Altered is the answer: the pattern in one size as published and as altered,
// both worked, and what differs.
type Altered struct {
	Pattern  *schematic.Pattern // one size, its counts altered
	Was, Now *schematic.Garment
	Changes  []Change
}

// Change is one number that an alteration changed.
type Change struct {
	Piece    string
	What     string
	Dim      expr.Dim
	Was, Now units.Num // counts, or mm
}

// Alter answers a request. Every count is worked out anew for the maker's gauge:
// stitches from the width that they made, rows from the height, shaping spread
// anew over the new rows. What it cannot keep is a finding: a shaping that does not fit, a join whose
// two edges no longer differ as they did, a kind of section that it cannot alter.
func Alter(p *schematic.Pattern, r Request) (*Altered, finding.List) {
	var found finding.List
	fail := func(format string, args ...any) {
		found = append(found, finding.Finding{Kind: "alter/request", Severity: finding.Error, Pos: p.SizesPos, Message: fmt.Sprintf(format, args...)})
	}
	if r.Size < 0 || r.Size >= p.Sizes.Len() {
		fail("there is no such size")
		return nil, found
	}
	for name, j := range r.Parts {
		if p.PieceNamed(name) == nil {
			fail("there is no piece called %q that could be of another size", name)
		} else if j < 0 || j >= p.Sizes.Len() {
			fail("there is no such size for %q", name)
		}
	}
	gauges := append([]schematic.Gauge(nil), p.Gauges...)
	given := make([]bool, len(gauges))
	for _, g := range r.Gauges {
		at := -1
		for i := range gauges {
			if strings.EqualFold(gauges[i].Name, g.Name) || g.Name == "" && i == 0 {
				at = i
				break
			}
		}
		if at < 0 {
			fail("there is no gauge called %q in the pattern", g.Name)
			continue
		}
		if g.Stitches.Sign() <= 0 || g.Rows.Sign() <= 0 || g.Over.Sign() <= 0 {
			fail("a gauge has stitches and rows over a length")
			continue
		}
		given[at] = true
		gauges[at].Stitches, gauges[at].Rows, gauges[at].Over, gauges[at].OverUnit = g.Stitches, g.Rows, g.Over, g.OverUnit
	}
	if found.Errors() {
		return nil, found
	}
	if len(given) > 0 && given[0] {
		inProportion(p, gauges, given, &found)
	}
	a := &Altered{Was: schematic.Work(oneSize(p, r.Size, nil), 0)}
	next := oneSize(p, r.Size, r.Parts)
	a.Pattern = next
	if len(r.Gauges) > 0 {
		regauge(next, gauges, &found)
		found = append(found, rulesKept(p, r.Size, next)...)
	}
	l := &lengthener{found: &found}
	l.longer(next, r)   // at the maker's own gauge, so that a row is rounded once
	next.Finished = nil // written for the published size
	a.Now = schematic.Work(next, 0)
	for _, f := range a.Now.Findings {
		if !had(a.Was.Findings, f) {
			found = append(found, f)
		}
	}
	found = append(found, joinsKept(a)...)
	a.Changes = changes(a)
	found.Sort()
	return a, found
}

// inProportion reckons the gauges that the maker does not tell from the first: who makes
// the fabric denser makes the ribs denser (common practice). It says so of each.
func inProportion(p *schematic.Pattern, gauges []schematic.Gauge, given []bool, found *finding.List) {
	was, now := p.Gauges[0], gauges[0]
	sts, rows := was.StitchWidth().Div(now.StitchWidth()), was.RowHeight().Div(now.RowHeight())
	if sts.Eq(units.Int(1)) && rows.Eq(units.Int(1)) {
		return
	}
	quarter := units.Frac(1, 4)
	for i := range gauges {
		g := &gauges[i]
		if given[i] {
			continue
		}
		g.Stitches = units.Max(quarter, g.Stitches.Mul(sts).RoundTo(quarter))
		g.Rows = units.Max(quarter, g.Rows.Mul(rows).RoundTo(quarter))
		*found = append(*found, finding.Finding{Kind: "alter/gauge", Severity: finding.Note, Pos: g.Pos,
			Message: fmt.Sprintf("the gauge %s is reckoned in proportion to %s: %s sts and %s rows over %s %s", g.Name, now.Name,
				units.Decimal(g.Stitches, 2), units.Decimal(g.Rows, 2), units.Mixed(units.In(g.Over, g.OverUnit)), g.OverUnit),
			Fix: "give that of your own swatch, if it differs"})
	}
}

func had(l finding.List, f finding.Finding) bool {
	for _, g := range l {
		if g.Kind == f.Kind && g.Pos == f.Pos {
			return true
		}
	}
	return false
}

// lengthener adds rows to a body or a sleeve.
type lengthener struct{ found *finding.List }

func (l *lengthener) longer(p *schematic.Pattern, r Request) {
	work := schematic.Work(p, 0)
	rows := map[schematic.Section]schematic.Step{}
	for _, m := range work.Pieces {
		for _, s := range m.Steps {
			rows[s.Section] = s
		}
	}
	body, sleeve := 0, 0
	for _, q := range p.Pieces {
		switch q.Kind {
		case schematic.KindBody, schematic.KindBack, schematic.KindFront:
			if r.Body.Sign() != 0 && q.MirrorOf == "" {
				l.add(p, q, rows, r.Body)
				body++
			}
		case schematic.KindSleeve:
			if r.Sleeve.Sign() != 0 && q.MirrorOf == "" {
				l.add(p, q, rows, r.Sleeve)
				sleeve++
			}
		}
	}
	for _, miss := range []struct {
		by units.Num
		n  int
		of string
	}{{r.Body, body, "body, back or front"}, {r.Sleeve, sleeve, "sleeve"}} {
		if miss.by.Sign() != 0 && miss.n == 0 {
			l.warn(finding.Pos{}, "", fmt.Sprintf("no piece of the pattern is a %s, so nothing was made longer or shorter", miss.of))
		}
	}
}

func (l *lengthener) warn(pos finding.Pos, piece, message string) {
	*l.found = append(*l.found, finding.Finding{Kind: "alter/length", Severity: finding.Warning, Pos: pos, Piece: piece, Message: message})
}

// add makes a piece longer where it is simplest: in its longest stretch worked
// even outside armholes and rib, or in the slope of a sleeve.
func (l *lengthener) add(p *schematic.Pattern, q *schematic.Piece, steps map[schematic.Section]schematic.Step, by units.Num) {
	var best schematic.Section
	most := 0
	for _, s := range q.Sections {
		switch s := s.(type) {
		case *schematic.Even:
			if n := steps[s].Rows; !s.Rib && n > most {
				best, most = s, n
			}
		case *schematic.Shape:
			if n := steps[s].Rows; q.Kind == schematic.KindSleeve && n > most {
				best, most = s, n
			}
		case *schematic.BindOff, *schematic.Divide:
			if q.From == schematic.FromHem && best != nil {
				goto chosen
			}
		}
	}
chosen:
	if best == nil {
		l.warn(q.Pos, q.Name, fmt.Sprintf("%s has no stretch worked even that could be longer or shorter", q.Name))
		return
	}
	step := steps[best]
	gauge := p.GaugeNamed(step.Gauge)
	if gauge == nil {
		return
	}
	add, _, err := Whole(by.Abs().Div(gauge.RowHeight()), Rule{Parity: Even})
	if err != nil {
		return
	}
	if by.Sign() < 0 {
		add = -add
	}
	rows := step.Rows + add
	if rows < 1 || step.Rows > 0 && rows < step.Rows/4 {
		l.warn(best.Base().Pos, q.Name, fmt.Sprintf("%s can't become %s cm shorter: its longest stretch has %d rows", q.Name, units.Decimal(units.In(by.Abs(), units.CM), 1), step.Rows))
		return
	}
	switch s := best.(type) {
	case *schematic.Even:
		s.Amount = schematic.Amount{Rows: expr.Counts(rows)}
	case *schematic.Shape:
		t := &respread{found: l.found, piece: q.Name}
		t.shape(s, step, units.Int(1), units.Frac(int64(rows), int64(step.Rows)), rows, step.Before, units.Int(int64(step.After)))
	}
}

// joinsKept tells of joins whose two edges differ in another way than before, by
// more than a stitch and a row.
func joinsKept(a *Altered) finding.List {
	var out finding.List
	for _, now := range a.Now.Seams {
		for _, was := range a.Was.Seams {
			if was.Number != now.Number {
				continue
			}
			g := a.Pattern.GaugeNamed("")
			slack := units.Max(g.StitchWidth(), g.RowHeight()).Times(2)
			before, after := was.SewLength.Sub(was.IntoLength), now.SewLength.Sub(now.IntoLength)
			if !slack.Less(after.Sub(before).Abs()) {
				continue
			}
			out = append(out, finding.Finding{Kind: "alter/join", Severity: finding.Warning, Pos: now.Join.Pos,
				Message: fmt.Sprintf("the join of %s and %s is not kept", strings.Join(now.Join.Sew, ", "), strings.Join(now.Join.Into, ", ")),
				Have:    fmt.Sprintf("%s and %s cm", cm(now.SewLength), cm(now.IntoLength)), Want: fmt.Sprintf("%s and %s cm, as published", cm(was.SewLength), cm(was.IntoLength)),
				Fix: "alter the other piece alike, or ease the difference in"})
		}
	}
	return out
}

func cm(mm units.Num) string { return units.Decimal(units.In(mm, units.CM), 1) }

// changes are the measurements and counts that differ, piece by piece.
func changes(a *Altered) []Change {
	var out []Change
	was := map[string]*schematic.Made{}
	for _, m := range a.Was.Pieces {
		was[m.Name] = m
	}
	for _, m := range a.Now.Pieces {
		old := was[m.Name]
		if old == nil {
			continue
		}
		if len(old.Steps) == len(m.Steps) {
			for i := range m.Steps {
				what := sectionWords(m.Steps[i].Section)
				if m.Steps[i].Part != "" {
					what = m.Steps[i].Part + ": " + what
				}
				if x, y := old.Steps[i].After, m.Steps[i].After; x != y {
					out = append(out, Change{m.Name, what, expr.Stitches, units.Int(int64(x)), units.Int(int64(y))})
				}
				if x, y := old.Steps[i].Rows, m.Steps[i].Rows; x != y {
					out = append(out, Change{m.Name, what, expr.Rows, units.Int(int64(x)), units.Int(int64(y))})
				}
			}
		}
		lengths := map[string]units.Num{}
		for _, s := range old.Measures {
			lengths[s.ID] = s.Length
		}
		for _, s := range m.Measures {
			if before, ok := lengths[s.ID]; ok && s.Main && !before.Eq(s.Length) {
				name := s.Name
				if len(m.Views) > 1 && s.View < len(m.Views) && m.Views[s.View].Name != "" {
					name = m.Views[s.View].Name + ": " + name
				}
				out = append(out, Change{m.Name, name, expr.LengthOf, before, s.Length})
			}
		}
	}
	return out
}

// sectionWords is what a section does, in a word or two.
func sectionWords(s schematic.Section) string {
	if n := s.Base().Name; n != "" {
		return n
	}
	switch s := s.(type) {
	case *schematic.CastOn:
		return "cast on"
	case *schematic.Held:
		return "start"
	case *schematic.Ring:
		return "ring"
	case *schematic.Sideways:
		return "band"
	case *schematic.PickUp:
		return "pick up"
	case *schematic.Even:
		if s.Rib {
			return "rib"
		}
		return "even"
	case *schematic.Shape:
		up := false
		for _, h := range s.Shapings {
			up = up || h.Increase
		}
		if up {
			return "increase"
		}
		return "decrease"
	case *schematic.AddEdge:
		return "add"
	case *schematic.BindOff:
		switch {
		case s.Hold:
			return "hold"
		case s.Leave:
			return "leave"
		}
		return "bind off"
	case *schematic.Divide:
		return "divide"
	case *schematic.JoinParts:
		return "join parts"
	case *schematic.Panels:
		return "panels"
	case *schematic.RepeatRow:
		return "repeat row"
	case *schematic.ShortRows:
		return "short rows"
	}
	return "section"
}
