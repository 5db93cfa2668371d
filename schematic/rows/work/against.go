package work

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
)

// Against holds a text against the worked sizes of its pattern (gs, one a size, in
// the order of p.Sizes): for each piece and part that the text has a heading for, the
// counts that its sections come to must be met in the text, in their order, after as
// many rows. A row that picks stitches up or works into the foundation may be counted
// or not: one row is within it there. Written lengths are held to the pattern's first
// gauge where the text states none.
func Against(x *ins.Text, p *schematic.Pattern, gs []*schematic.Garment) finding.List {
	if len(x.Sizes.Names) != len(gs) {
		return finding.List{{Kind: "rows/sizes", Severity: finding.Error, Pos: finding.Pos{File: x.Name, Line: 1},
			Message: fmt.Sprintf("the text has %d sizes, the pattern has %d", len(x.Sizes.Names), len(gs)),
			Want:    strings.Join(p.Sizes.Names, ", "), Fix: "write the same sizes in both"}}
	}
	a := &opposed{x: x, index: map[string]*merged{}, unheaded: map[string]bool{}}
	a.out = append(a.out, againstHead(x, p)...)
	own := x.Gauge != nil
	if g := p.GaugeNamed(""); !own && g != nil && g.Stitches.Sign() > 0 && g.Rows.Sign() > 0 {
		x.Gauge = &ins.Gauge{StitchWidth: g.StitchWidth(), RowHeight: g.RowHeight()}
		defer func() { x.Gauge = nil }()
	}
	for size, g := range gs {
		t, lengths := textPlateaus(x, size)
		if own {
			lengths = nil // Check tells of them
		}
		a.list = merge(a.list, a.index, "", size, lengths)
		a.garment(g, size, t)
	}
	return a.told()
}

// opposed is a text and what was found of it against its pattern.
type opposed struct {
	x        *ins.Text
	out      finding.List
	list     []*merged
	index    map[string]*merged
	unheaded map[string]bool // parts that the text has no heading for: told once
}

// garment holds the plateaus of the text's headings, t, against a worked size.
func (a *opposed) garment(g *schematic.Garment, size int, t map[string][]plateau) {
	for _, m := range g.Pieces {
		if m.MirrorOf != "" || m.Piece == nil || m.Piece.Motifs != nil {
			continue
		}
		for _, part := range partsOf(m) {
			a.part(m, part, size, t)
		}
	}
}

func (a *opposed) part(m *schematic.Made, part string, size int, t map[string][]plateau) {
	key := m.Name
	if part != "" {
		key += ", " + part
	}
	h := find(a.x, m.Name, part)
	switch {
	case h == "" && a.unheaded[key]:
		return
	case h == "":
		a.unheaded[key] = true
		a.out = append(a.out, finding.Finding{Kind: "rows/piece", Severity: finding.Note, Pos: finding.Pos{File: a.x.Name, Line: 1}, Piece: m.Name, Section: part,
			Message: fmt.Sprintf("the text has no heading %q, so that part of the pattern was not compared", key), Fix: "give its rows a heading of that name"})
		return
	}
	var found []raw
	if part == "" {
		found = append(makeFound(headed(a.x, h), m), chainFound(headed(a.x, h), m, size)...)
	}
	if r, differ := compare(stepPlateaus(m, part), t[h], key); differ {
		found = append(found, r)
	}
	a.list = merge(a.list, a.index, key, size, found)
}

// told are the findings of all sizes, in order.
func (a *opposed) told() finding.List {
	for _, m := range a.list {
		f := m.finding(a.x)
		f.Piece = m.section
		a.out = append(a.out, f)
	}
	a.x.Place(a.out)
	a.out.Sort()
	return a.out
}

// plateau is a count that a piece keeps for a while: the rows done in all at its end.
type plateau struct {
	count int
	said  int // the count that the text states there, where that is another; else -1
	rows  int
	known bool // rows are known up to here
	doubt bool // a line of it does not add up, which Check tells: its rows are not compared
	free  bool // a start or a pick-up: a row more or less is within it
	fresh bool // rows begin anew here
	at    ins.Span
	what  string
}

func join(list []plateau, p plateau) []plateau {
	if k := len(list); k > 0 && list[k-1].count == p.count && !p.fresh {
		if p.said < 0 {
			p.said = list[k-1].said
		}
		p.fresh = list[k-1].fresh
		if p.at.Line == 0 {
			p.at = list[k-1].at
		}
		p.free, p.doubt = p.free || list[k-1].free, p.doubt || list[k-1].doubt
		p.what = list[k-1].what
		list[k-1] = p
		return list
	}
	return append(list, p)
}

// stepPlateaus are the counts that the sections of a part come to.
func stepPlateaus(m *schematic.Made, part string) []plateau {
	var out []plateau
	rows := 0
	for _, s := range m.Steps {
		if s.Part != part {
			continue
		}
		switch s.Section.(type) {
		case *schematic.Divide, *schematic.Sideways:
			if _, ok := s.Section.(*schematic.Sideways); ok {
				rows = 0
			}
			continue
		case *schematic.BindOff, *schematic.Gather:
			if s.After == 0 {
				continue
			}
		}
		free, fresh := false, false
		switch q := s.Section.(type) {
		case *schematic.JoinParts:
			// A row that is joined into a round goes on as it was; parts made one begin anew.
			if s.Before == 0 || slices.ContainsFunc(q.Of, func(j schematic.JoinPart) bool { return j.Part != "" }) {
				free, fresh = true, true
				rows = -s.Rows
			}
		case *schematic.CastOn, *schematic.PickUp, *schematic.Held, *schematic.Ring:
			free = true
		}
		rows += s.Rows
		name := s.Section.Base().Name
		out = join(out, plateau{count: s.After, said: ins.None, rows: rows, known: true, free: free, fresh: fresh, what: name})
	}
	return out
}

func partsOf(m *schematic.Made) []string {
	var out []string
	seen := map[string]bool{}
	for _, s := range m.Steps {
		if !seen[s.Part] {
			seen[s.Part] = true
			out = append(out, s.Part)
		}
	}
	return out
}

// heading is a name as headings are compared: without case, plural and signs.
func headingKey(s string) string {
	f := strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	for i, w := range f {
		if len(w) > 3 {
			f[i] = strings.TrimSuffix(w, "s")
		}
	}
	return strings.Join(f, " ")
}

// find is the key of the heading that a piece or part has in the text, or nothing.
func find(x *ins.Text, piece, part string) string {
	want := []string{headingKey(piece)}
	if part != "" {
		want = []string{headingKey(piece + " " + part), headingKey(part)}
	}
	for _, w := range want {
		if headed(x, w) != nil {
			return w
		}
	}
	return ""
}

// textPlateaus works the text in one size and gives the counts of each heading.
// Sub-headings (shape ..., divide ...), and headings 'further', go on with the piece before.
func textPlateaus(x *ins.Text, size int) (map[string][]plateau, []raw) {
	t := &follower{r: newRunner(x, size), out: map[string][]plateau{}}
	for _, s := range x.Sections {
		t.section(s)
	}
	return t.out, t.lengths
}

// follower follows a text in one size: the counts that it comes to, heading by heading.
type follower struct {
	r       *runner
	out     map[string][]plateau
	lengths []raw
	key     string // the heading that the work belongs to
	rows    int    // done in all under it
	known   bool   // rows are known up to here
	counted int    // rows of this section that the runner has counted
}

func (t *follower) section(s *ins.Section) {
	k := headingKey(s.Name)
	own := strings.TrimSuffix(k, " further")
	goesOn := own != k
	if part := slices.ContainsFunc([]string{"shape", "shaping", "divide"}, func(w string) bool { return strings.HasPrefix(k, w) }); !part || t.key == "" {
		t.key = own
	}
	if len(s.Lines) == 0 {
		return
	}
	t.r.begin(s)
	t.rows, t.known, t.counted = 0, true, 0
	if list := t.out[t.key]; len(list) > 0 && (goesOn || t.key != k) {
		t.rows, t.known = list[len(list)-1].rows, list[len(list)-1].known
	}
	for _, l := range s.Lines {
		t.line(l)
	}
	for _, f := range t.r.all {
		if f.kind == "rows/length" {
			t.lengths = append(t.lengths, f)
		}
	}
	t.r.end()
}

func (t *follower) line(l *ins.Line) {
	r := t.r
	told := len(r.all) + len(r.found)
	r.line(l)
	t.count(l)
	if r.fab == nil || !r.known() {
		return
	}
	p := plateau{count: r.fab.stitches(), said: r.said(l), rows: t.rows, known: t.known, at: l.At}
	p.doubt = l.Short || doubtedSince(r, told)
	if len(r.others) > 0 && p.said < 0 && r.others[0].fab != nil {
		p.said = r.others[0].fab.stitches()
	}
	p.starts(l)
	t.out[t.key] = join(t.out[t.key], p)
}

// count takes the rows that a line has added; where they begin anew, or none are known, it says so.
func (t *follower) count(l *ins.Line) {
	now := 0
	for _, d := range t.r.cur.rows {
		now += d.count
	}
	t.rows += now - t.counted
	t.counted = now
	for _, n := range l.Body {
		switch n := n.(type) {
		case *ins.Edge, *ins.Together:
			t.rows, t.known = 0, true
		case *ins.Even:
			t.known = t.known && n.Length == nil && !n.Open
		case *ins.RepeatRows:
			t.known = t.known && n.Length == nil
		}
	}
}

// doubtedSince reports whether of the findings behind the first told ones any says that a row does not add up.
func doubtedSince(r *runner, told int) bool {
	all := slices.Concat(r.all, r.found)
	return slices.ContainsFunc(all[min(told, len(all)):], func(f raw) bool { return f.kind == "rows/stated" || uses([]raw{f}) })
}

// starts says of a plateau whether its line begins work: a row more or less is within it there.
func (p *plateau) starts(l *ins.Line) {
	foundation := l.Label == nil || foundationOf(l.Body) != nil // other chains turn the work
	for _, n := range l.Body {
		switch n.(type) {
		case *ins.Together:
			p.fresh, p.free = true, true
		case *ins.Chain:
			p.free = p.free || foundation
		case *ins.CastOn, *ins.PickUp:
			p.free = true
		}
	}
}

// compare meets the counts of a piece in those of the text, in their order; it tells the first that differs.
func compare(want, have []plateau, key string) (raw, bool) {
	j := 0
	lastW, lastH := plateau{known: true, free: true}, plateau{known: true, free: true}
	for _, w := range want {
		k := slices.IndexFunc(have[j:], func(h plateau) bool { return h.count == w.count || h.said == w.count })
		if k < 0 {
			return w.unmet(have, j, key), true
		}
		h := have[j+k]
		dw, dh := w.rows-lastW.rows, h.rows-lastH.rows
		slack := 0
		if w.free || lastW.free || h.free || lastH.free {
			slack = 1
		}
		certain := h.known && lastH.known && !h.doubt && !lastH.doubt && !w.fresh && !h.fresh
		if certain && max(dw-dh, dh-dw) > slack {
			return raw{kind: "rows/against", sev: finding.Warning, at: h.at,
				msg: "the text of " + key + " works %s rows to the end of %s stitches, the pattern %s | %s rows in the text | %s rows by the pattern's sections",
				fix: "correct the text, or the section", a: []int{dh, w.count, dw, dh, dw}}, true
		}
		lastW, lastH = w, h
		j += k + 1
	}
	return raw{}, false
}

// unmet says that the text, which has come to have[:j], never comes to the count w.
func (w plateau) unmet(have []plateau, j int, key string) raw {
	at, count := ins.Span{Line: 1}, -1
	if len(have) > 0 {
		h := have[min(j, len(have)-1)]
		at, count = h.at, h.count
	}
	what := ""
	if w.what != "" {
		what = " (" + w.what + ")"
	}
	return raw{kind: "rows/against", sev: finding.Warning, at: at,
		msg: "the text of " + key + " never comes to %s stitches" + what + " | %s stitches here in the text | %s stitches by the pattern's sections",
		fix: "correct the text, or the section", a: []int{w.count, count, w.count}}
}
