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
	var out finding.List
	if len(x.Sizes.Names) != len(gs) {
		return append(out, finding.Finding{Kind: "rows/sizes", Severity: finding.Error, Pos: finding.Pos{File: x.Name, Line: 1},
			Message: fmt.Sprintf("the text has %d sizes, the pattern has %d", len(x.Sizes.Names), len(gs)),
			Want:    strings.Join(p.Sizes.Names, ", "), Fix: "write the same sizes in both"})
	}
	out = append(out, againstHead(x, p)...)
	own := x.Gauge != nil
	if !own {
		if g := p.GaugeNamed(""); g != nil && g.Stitches.Sign() > 0 && g.Rows.Sign() > 0 {
			x.Gauge = &ins.Gauge{StitchWidth: g.StitchWidth(), RowHeight: g.RowHeight()}
			defer func() { x.Gauge = nil }()
		}
	}
	var list []*merged
	index := map[string]*merged{}
	seen := map[string]bool{}
	for size := range gs {
		t, lengths := textPlateaus(x, size)
		if own {
			lengths = nil // Check tells of them
		}
		list = merge(list, index, "", size, lengths)
		for _, m := range gs[size].Pieces {
			if m.MirrorOf != "" || m.Piece == nil || m.Piece.Motifs != nil {
				continue
			}
			for _, part := range partsOf(m) {
				key := m.Name
				if part != "" {
					key += ", " + part
				}
				h := find(x, m.Name, part)
				if h == "" {
					if !seen[key] {
						seen[key] = true
						out = append(out, finding.Finding{Kind: "rows/piece", Severity: finding.Note, Pos: finding.Pos{File: x.Name, Line: 1}, Piece: m.Name, Section: part,
							Message: fmt.Sprintf("nothing in the text is headed %q, so nothing was compared with that part of the pattern", key), Fix: "give its rows a heading of that name"})
					}
					continue
				}
				var found []raw
				if part == "" {
					found = append(makeFound(headed(x, h), m), chainFound(headed(x, h), m, size)...)
				}
				compare(stepPlateaus(m, part), t[h], key, func(r raw) { found = append(found, r) })
				list = merge(list, index, key, size, found)
			}
		}
	}
	for _, m := range list {
		f := m.finding(x)
		f.Piece = m.section
		out = append(out, f)
	}
	x.Place(out)
	out.Sort()
	return out
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
	var lengths []raw
	out := map[string][]plateau{}
	r := newRunner(x, size)
	key := ""
	for _, s := range x.Sections {
		k := headingKey(s.Name)
		further := strings.HasSuffix(k, " further")
		if !(strings.HasPrefix(k, "shape") || strings.HasPrefix(k, "shaping") || strings.HasPrefix(k, "divide")) || key == "" {
			key = strings.TrimSuffix(k, " further")
		}
		if len(s.Lines) == 0 {
			continue
		}
		r.begin(s)
		rows, known := 0, true
		if list := out[key]; len(list) > 0 && (further || key != k) {
			rows, known = list[len(list)-1].rows, list[len(list)-1].known
		}
		counted := 0
		for _, l := range s.Lines {
			told := len(r.all) + len(r.found)
			r.line(l)
			now := 0
			for _, d := range r.cur.rows {
				now += d.count
			}
			rows += now - counted
			counted = now
			for _, n := range l.Body {
				switch n := n.(type) {
				case *ins.Edge, *ins.Together:
					rows, known = 0, true
				case *ins.Even:
					known = known && n.Length == nil && !n.Open
				case *ins.RepeatRows:
					known = known && n.Length == nil
				}
			}
			if r.fab != nil && r.known {
				p := plateau{count: r.fab.stitches(), said: r.said(l), rows: rows, known: known, at: l.At}
				p.doubt = l.Short || len(r.all)+len(r.found) > told && slices.ContainsFunc(append(append([]raw(nil), r.all...), r.found...)[min(told, len(r.all)+len(r.found)):], func(f raw) bool { return f.kind == "rows/stated" || uses([]raw{f}) })
				if len(r.others) > 0 && p.said < 0 && r.others[0].fab != nil {
					p.said = r.others[0].fab.stitches()
				}
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
				out[key] = join(out[key], p)
			}
		}
		for _, f := range r.all {
			if f.kind == "rows/length" {
				lengths = append(lengths, f)
			}
		}
		r.end()
	}
	return out, lengths
}

// compare meets the counts of a piece in those of the text, in their order.
func compare(want, have []plateau, key string, tell func(raw)) {
	j := 0
	lastW, lastH := plateau{known: true, free: true}, plateau{known: true, free: true}
	for _, w := range want {
		k := j
		for k < len(have) && have[k].count != w.count && have[k].said != w.count {
			k++
		}
		if k == len(have) {
			at := ins.Span{Line: 1}
			count := -1
			if j < len(have) {
				at, count = have[j].at, have[j].count
			} else if len(have) > 0 {
				at, count = have[len(have)-1].at, have[len(have)-1].count
			}
			what := ""
			if w.what != "" {
				what = " (" + w.what + ")"
			}
			tell(raw{kind: "rows/against", sev: finding.Warning, at: at,
				msg: "the text of " + key + " never comes to %s stitches" + what + " | %s stitches here in the text | %s stitches by the pattern's sections",
				fix: "correct the text, or the section", a: []int{w.count, count, w.count}})
			return
		}
		h := have[k]
		if h.known && lastH.known && !h.doubt && !lastH.doubt && !w.fresh && !h.fresh {
			dw, dh := w.rows-lastW.rows, h.rows-lastH.rows
			slack := 0
			if w.free || lastW.free || h.free || lastH.free {
				slack = 1
			}
			if d := dw - dh; d > slack || -d > slack {
				tell(raw{kind: "rows/against", sev: finding.Warning, at: h.at,
					msg: "the text of " + key + " works %s rows to the end of %s stitches, the pattern %s | %s rows in the text | %s rows by the pattern's sections",
					fix: "correct the text, or the section", a: []int{dh, w.count, dw, dh, dw}})
				return
			}
		}
		lastW, lastH = w, h
		j = k + 1
	}
}
