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
// the order of p.Sizes): for each piece and part that the text tells, the counts that its sections come to must be met in the
// text, in their order, after as many rows, and at the height to which the text goes on. A row that picks stitches up or works
// into the foundation may be counted or not: one row is within it there. Lengths of rows that the text counts are held to the
// pattern's first gauge where the text states none.
func Against(x *ins.Text, p *schematic.Pattern, gs []*schematic.Garment) finding.List {
	if len(x.Sizes.Names) != len(gs) {
		return finding.List{{Kind: "rows/sizes", Severity: finding.Error, Pos: finding.Pos{File: x.Name, Line: 1},
			Message: fmt.Sprintf("the text has %d sizes, the pattern has %d", len(x.Sizes.Names), len(gs)),
			Want:    strings.Join(p.Sizes.Names, ", "), Fix: "write the same sizes in both"}}
	}
	a := &opposed{x: x, p: p, index: map[string]*merged{}, untold: map[string]bool{}, places: map[ins.Span]bool{}, owners: ownersOf(x, gs[0])}
	a.out = append(a.out, againstHead(x, p)...)
	own := x.Gauge != nil
	if g := p.GaugeNamed(""); !own && g != nil && g.Stitches.Sign() > 0 && g.Rows.Sign() > 0 {
		x.Gauge = &ins.Gauge{StitchWidth: g.StitchWidth(), RowHeight: g.RowHeight()}
		defer func() { x.Gauge = nil }()
	}
	for size, g := range gs {
		t, lengths := textPlateaus(x, size, a.owners)
		if own {
			lengths = nil // Check tells of them
		}
		a.list = merge(a.list, a.index, "", size, lengths)
		for _, m := range g.Pieces {
			if m.MirrorOf == "" && m.Piece != nil && m.Piece.Motifs == nil {
				a.piece(m, size, t)
			}
		}
	}
	return a.told()
}

// opposed is a text and what was found of it against its pattern.
type opposed struct {
	x      *ins.Text
	p      *schematic.Pattern
	owners map[*ins.Section][]string
	out    finding.List
	list   []*merged
	index  map[string]*merged
	untold map[string]bool   // pieces and parts whose rows the text has not: told once
	places map[ins.Span]bool // where something is told
}

// piece holds a worked piece against what the text comes to, t, in one size.
func (a *opposed) piece(m *schematic.Made, size int, t map[string][]plateau) {
	h := heightsOf(m, a.p, size)
	rest := map[string][]plateau{"": t[m.Name]} // what the text goes on with behind the division of a piece or part
	fits := map[string]bool{"": true}
	if a.tells(m.Name) {
		s := a.headed(m.Name)
		a.add(m.Name, size, append(makeFound(s, m), chainFound(s, m, size, t[m.Name])...)...)
	} else if len(h.of[""]) > 0 {
		a.missing(m.Name, "")
		fits[""] = false
	}
	open := map[string][]string{} // parts that have no heading of their own, by that which tells them
	for _, part := range h.parts {
		key := partKey(m.Name, part)
		if a.tells(key) {
			w := &meeting{heights: h, key: key, size: size, have: t[key]}
			if part != "" {
				w = h.part(key, size, t[key])
			}
			fits[part] = a.meets(w, h.of[part])
			rest[part] = w.have[w.after(h.forks[part]):]
			continue
		}
		from := h.from[part]
		for range h.parts {
			if from != "" && !a.tells(partKey(m.Name, from)) {
				from = h.from[from]
			}
		}
		if part != "" && (fits[from] || !a.tells(m.Name)) {
			open[from] = append(open[from], part)
		}
	}
	for _, from := range h.parts {
		a.unheaded(m.Name, size, h, open[from], strands(rest[from]))
	}
}

// unheaded holds the parts of a piece that have no heading of their own against the strands that follow the division in the
// text: each strand is a part, and each part is told in one of them, or worked to match.
func (a *opposed) unheaded(piece string, size int, h *heights, parts []string, strands [][]plateau) {
	if len(parts) == 0 || h.joined {
		return
	}
	as := func(part string, strand []plateau) *meeting {
		return h.part(partKey(piece, part), size, strand)
	}
	var other [][]plateau // strands that are no part
	left := slices.Clone(parts)
	matched := false
	for i, s := range strands {
		k := slices.IndexFunc(s, func(p plateau) bool { return p.skips })
		if i == 0 && k > 0 && k == len(s)-1 && s[k].count < 0 { // the first side: the second is worked to match it
			s, k, matched = s[:k], -1, true
		}
		if k >= 0 {
			a.matches(piece, size, h, slices.Concat(strands[:i]...), s[:k])
			matched = true
			continue
		}
		matched = matched || s[0].both
		fits := func(part string) bool { _, differs := as(part, s).meet(h.of[part]); return !differs }
		if !slices.ContainsFunc(parts, fits) {
			other = append(other, s)
		}
		left = slices.DeleteFunc(left, fits)
	}
	for i, s := range other {
		part := append(left, parts...)[min(i, len(parts)-1)]
		a.meets(as(part, s), h.of[part])
	}
	for i, part := range left {
		if i >= len(other) && !matched && a.tells(piece) {
			a.missing(partKey(piece, part), part)
		}
	}
}

// matches holds the counts that a second side is told with, s, before it is completed to match the first, against those of the first.
func (a *opposed) matches(piece string, size int, h *heights, first, s []plateau) {
	for i, p := range s {
		has := func(q plateau) bool { return q.count == p.count || q.doubt }
		if len(first) == 0 || p.doubt || slices.Contains(h.starts, p.count) || slices.ContainsFunc(first, has) {
			continue
		}
		a.add(piece, size, raw{kind: "rows/against", sev: finding.Warning, at: s[i].at, fix: "correct the text of one side", a: []int{p.count, p.count, first[0].count},
			msg: "the second side of " + piece + " has %s stitches here, and is worked to match a first that never has | %s stitches here in the text | %s stitches where the first side begins"})
		return
	}
}

func (a *opposed) add(key string, size int, found ...raw) {
	a.list = merge(a.list, a.index, key, size, found)
}

// meets reports whether a piece or part meets the text, and tells what differs: not again where it is worked as one of which that
// is told.
func (a *opposed) meets(m *meeting, want []plateau) bool {
	r, differs := m.meet(want)
	if like := m.at.like; differs && !(like.Line > 0 && a.places[like]) {
		a.places[m.at.at] = true
		a.add(m.key, m.size, r)
	}
	return !differs
}

// part is the meeting of a part in those rows of a text: the first, in which the row of the piece is divided, may be one of the piece.
func (h *heights) part(key string, size int, have []plateau) *meeting {
	m := &meeting{heights: h, key: key, size: size, have: have}
	if len(have) > 0 && slices.Contains(h.starts, have[0].count) {
		m.slack.more = 1
	}
	return m
}

// missing tells once that the text has no rows of a piece, or of a part of one.
func (a *opposed) missing(key, part string) {
	if a.untold[key] {
		return
	}
	a.untold[key] = true
	piece, _, _ := strings.Cut(key, ", ")
	a.out = append(a.out, finding.Finding{Kind: "rows/piece", Severity: finding.Note, Pos: finding.Pos{File: a.x.Name, Line: 1}, Piece: piece, Section: part,
		Message: fmt.Sprintf("the text has no heading %q, so that part of the pattern was not compared", key), Fix: "give its rows a heading of that name"})
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

// tells reports whether a heading of the text is of a piece or part.
func (a *opposed) tells(key string) bool { return a.headed(key) != nil }

// headed is the first section with rows that a piece or part has; nil if it has none.
func (a *opposed) headed(key string) *ins.Section {
	var keys []string
	for _, s := range a.x.Sections {
		if own, there := a.owners[s]; there {
			keys = own
		}
		if len(s.Lines) > 0 && !s.Prose && slices.Contains(keys, key) {
			return s
		}
	}
	return nil
}

func partKey(piece, part string) string {
	if part == "" {
		return piece
	}
	return piece + ", " + part
}

// ownersOf finds the pieces and parts that headings of a text name; what stands under any other heading belongs to the piece
// before it. A text without such a heading is that of the only piece.
func ownersOf(x *ins.Text, g *schematic.Garment) map[*ins.Section][]string {
	names := pieceNames{}
	for _, m := range g.Pieces {
		names = append(names, pieceName{piece: m.Name, words: headingKey(m.Name)})
		for _, s := range m.Steps {
			n := pieceName{m.Name, s.Part, headingKey(s.Part)}
			if s.Part != "" && !slices.Contains(names, n) {
				names = append(names, n)
			}
		}
	}
	out := map[*ins.Section][]string{}
	piece := ""
	for _, s := range x.Sections {
		if keys := names.of(headingKey(s.Name), piece); len(keys) > 0 {
			out[s] = keys
			piece, _, _ = strings.Cut(keys[0], ", ")
		}
	}
	if first, ok := beginning(x, g, out); ok {
		out[x.Sections[0]] = []string{first}
	}
	return out
}

// beginning is the piece that the rows before the first heading of a piece or part are of: that whose part it is, or the first one of
// the pattern, if no heading names that.
func beginning(x *ins.Text, g *schematic.Garment, owners map[*ins.Section][]string) (string, bool) {
	if len(g.Pieces) == 0 {
		return "", false
	}
	first := g.Pieces[0].Name
	rows := false
	for _, s := range x.Sections {
		if keys, named := owners[s]; named {
			if own, part, _ := strings.Cut(keys[0], ", "); part != "" {
				first = own
			}
			break
		}
		rows = rows || ofNoOther(s)
	}
	for s, keys := range owners {
		if slices.Contains(keys, first) && (len(s.Lines) == 0 || s.Prose || slices.ContainsFunc(s.Lines[0].Body, is[*ins.Join]) || slices.ContainsFunc(s.Lines[0].Body, founds)) {
			return "", false
		}
	}
	return first, rows
}

// founds reports whether a piece may begin with an instruction.
func founds(n ins.Item) bool {
	return takesUp(n) || is[*ins.Chain](n) || is[*ins.Together](n) || is[*ins.AsFor](n)
}

// ofNoOther reports whether rows stand under a heading that is not the usual one of a kind of piece.
func ofNoOther(s *ins.Section) bool {
	return len(s.Lines) > 0 && !s.Prose && !slices.ContainsFunc(schematic.Kinds(), func(k schematic.Kind) bool { return headingKey(k.String()) == headingKey(s.Name) })
}

// pieceName is a name of a piece, or of a part of it, as headings have it.
type pieceName struct{ piece, part, words string }

type pieceNames []pieceName

// of are the pieces or parts that a heading names, of which a part is mostly one of the piece before it.
func (names pieceNames) of(heading, piece string) []string {
	heading = strings.TrimSuffix(heading, " further")
	if heading == "" {
		return nil
	}
	for _, exact := range []func(n pieceName) bool{
		func(n pieceName) bool { return n.part == "" && n.words == heading },
		func(n pieceName) bool { return n.part != "" && headingKey(n.piece+" "+n.part) == heading },
		func(n pieceName) bool { return n.part != "" && n.words == heading && n.piece == piece },
		func(n pieceName) bool { return n.part != "" && n.words == heading },
	} {
		if k := slices.IndexFunc(names, exact); k >= 0 {
			return []string{partKey(names[k].piece, names[k].part)}
		}
	}
	return names.together(strings.Fields(heading))
}

// together are the pieces that a heading names side by side: back and front.
func (names pieceNames) together(words []string) (keys []string) {
	rest := slices.Clone(words)
	for _, n := range names {
		own := strings.Fields(n.words)
		if n.part == "" && !slices.ContainsFunc(own, func(w string) bool { return !slices.Contains(words, w) }) {
			keys = append(keys, n.piece)
			rest = slices.DeleteFunc(rest, func(w string) bool { return slices.Contains(own, w) })
		}
	}
	if slices.ContainsFunc(rest, func(w string) bool {
		return !slices.Contains([]string{"and", "both", "alike", "the", "work", "make", "two", "2"}, w)
	}) {
		return nil
	}
	return keys
}

// headingKey is a name as headings are compared: without case, plural and signs.
func headingKey(s string) string {
	f := strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	for i, w := range f {
		if len(w) > 3 {
			f[i] = strings.TrimSuffix(w, "s")
		}
	}
	return strings.Join(f, " ")
}
