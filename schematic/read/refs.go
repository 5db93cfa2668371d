package read

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
)

// target is what a name refers to.
type target int

const (
	toGauge target = iota
	toPiece
	toPart
	toPanel
	toEdge
	toJoined // an edge that a join calls
)

// reference is a name that something in the pattern must have; it is looked up
// when the whole file has been read.
type reference struct {
	to             target
	of             string // the piece of a part or panel
	name           string
	pos            finding.Pos
	piece, section string
}

// ref is the name at a key, to be looked up later.
func (r *reader) ref(m *mapped, key string, to target) string {
	n := m.get(key)
	if n == nil {
		return ""
	}
	name := m.text(key)
	if name != "" {
		r.lookUp(reference{to: to, of: r.piece, name: name, pos: r.pos(n)})
	}
	return name
}

// lookUp keeps a reference to be looked up when the whole file has been read.
func (r *reader) lookUp(f reference) {
	f.piece, f.section = r.piece, r.section
	r.refs = append(r.refs, f)
}

// parts are the names of a piece's parts; the value says that stitches go on from there.
type parts struct {
	names  []string
	live   map[string]bool
	panels []string
	all    []*schematic.Part
}

func partsOf(q *schematic.Piece) *parts {
	p := &parts{live: map[string]bool{}}
	p.walk(q.Sections)
	return p
}

func (p *parts) walk(sections []schematic.Section) {
	for _, s := range sections {
		for _, n := range schematic.NamesIn(s) {
			if n.Panel {
				p.panels = append(p.panels, n.Name)
				continue
			}
			p.names = append(p.names, n.Name)
			p.live[n.Name] = n.Live
		}
		for _, t := range s.Traits().Parts {
			p.all = append(p.all, t)
			p.walk(t.Sections)
		}
	}
}

// refer looks up every name that refers to something, and finds names that two
// things have and things that refer to each other in a circle.
func (r *reader) refer(p *schematic.Pattern) {
	var gauges, pieces []string
	for _, g := range p.Gauges {
		gauges = append(gauges, g.Name)
	}
	byName := map[string]*schematic.Piece{}
	lower := map[string]*schematic.Piece{}
	of := map[string]*parts{}
	for _, q := range p.Pieces {
		if q.Name == "" {
			continue
		}
		if old := lower[strings.ToLower(q.Name)]; old != nil {
			f := r.fail(q.Pos, "file/duplicate-name", "two pieces are called %q; the first is in line %d", q.Name, old.Pos.Line)
			f.Fix = "give one of them another name; several alike are one piece with make: 2"
			continue
		}
		byName[q.Name], lower[strings.ToLower(q.Name)] = q, q
		pieces = append(pieces, q.Name)
		of[q.Name] = partsOf(q)
		r.partNames(q, of[q.Name])
	}
	for _, f := range r.refs {
		if r.full {
			break
		}
		r.piece, r.section = f.piece, f.section
		switch f.to {
		case toGauge:
			if p.GaugeNamed(f.name) == nil {
				r.unknownAt(f.pos, "file/reference", fmt.Sprintf("no gauge is called %q", finding.Clip(f.name)), f.name, gauges)
			}
		case toPiece:
			if byName[f.name] == nil {
				r.unknownAt(f.pos, "file/reference", fmt.Sprintf("no piece is called %q", finding.Clip(f.name)), f.name, pieces)
			}
		case toPart, toPanel:
			r.within(f, byName, of)
		case toEdge:
			r.edgeRef(f, "file/reference", pieces, lower)
		case toJoined:
			r.edgeRef(f, finding.NoEdge, pieces, lower)
		}
	}
	r.piece, r.section = "", ""
	r.circles(p, byName)
}

// within looks up a part or panel of a piece, or of the piece that it mirrors.
func (r *reader) within(f reference, byName map[string]*schematic.Piece, of map[string]*parts) {
	q := byName[f.of]
	for range len(byName) {
		if q == nil || q.MirrorOf == "" {
			break
		}
		q = byName[q.MirrorOf]
	}
	if q == nil {
		return // the piece is not there: that has been told
	}
	p := of[q.Name]
	what, names := "part", p.names
	if f.to == toPanel {
		what, names = "panel", p.panels
	} else if live, ok := p.live[f.name]; ok && !live {
		r.fail(f.pos, "file/reference", "the stitches %q are bound off or left, so nothing goes on from them", f.name).
			Fix = "write hold: instead of leave:, if they are to be worked on"
		return
	} else if f.of != f.piece {
		names = append(append([]string{}, names...), p.panels...)
	}
	if !slices.Contains(names, f.name) {
		r.unknownAt(f.pos, "file/reference", fmt.Sprintf("the piece %q has no %s called %q", f.of, what, finding.Clip(f.name)), f.name, names)
	}
}

// edgeRef sees to it that the name of an edge begins with the name of a piece.
func (r *reader) edgeRef(f reference, kind string, pieces []string, lower map[string]*schematic.Piece) {
	if len(pieces) == 0 {
		return
	}
	name := strings.ToLower(f.name)
	for i := range name {
		if name[i] == ' ' && lower[name[:i]] != nil {
			return
		}
	}
	if lower[name] != nil {
		r.fail(f.pos, kind, "%q is a piece, and an edge is needed", f.name).Want = "the piece and then the name of its edge, such as " + quoted(f.name+" side")
		return
	}
	g := r.fail(f.pos, kind, "%q does not begin with the name of a piece", finding.Clip(f.name))
	g.Want = "a piece, then a part if it matters, then left or right if one side is meant, then the name of the edge"
	words := strings.Fields(f.name)
	if edge, piece, of := strings.Cut(f.name, " of "); of && lower[strings.ToLower(piece)] != nil { // left edge of Back
		g.Fix = "did you mean " + quoted(lower[strings.ToLower(piece)].Name+" "+edge) + "?"
		return
	}
	for _, q := range pieces {
		n := min(len(strings.Fields(q)), len(words))
		if finding.Nearest(strings.Join(words[:n], " "), []string{q}) != "" {
			g.Fix = "did you mean " + quoted(strings.Join(append([]string{q}, words[n:]...), " ")) + "?"
			return
		}
	}
}

// partNames finds parts of one piece that have one name, and parts that mirror each other in a circle.
func (r *reader) partNames(q *schematic.Piece, p *parts) {
	r.piece = q.Name
	defer func() { r.piece = "" }()
	byName := map[string]*schematic.Part{}
	for _, t := range p.all {
		if t.Name == "" {
			continue
		}
		if old := byName[t.Name]; old != nil {
			r.fail(t.Pos, "file/duplicate-name", "two parts of this piece are called %q; the first is in line %d", t.Name, old.Pos.Line).
				Fix = "give one of them another name"
			continue
		}
		byName[t.Name] = t
	}
	done := map[*schematic.Part]bool{}
	for _, t := range p.all {
		var path []string
		on := map[*schematic.Part]bool{}
		for u := t; u != nil && !done[u]; u = byName[u.MirrorOf] {
			if on[u] {
				r.fail(t.Pos, "file/cycle", "these parts mirror each other in a circle: %s", circle(path, u.Name)).
					Fix = "give one of them sections of its own"
				break
			}
			on[u] = true
			path = append(path, u.Name)
		}
		for u := range on {
			done[u] = true
		}
	}
}

// circle is the names from the first that stands twice on.
func circle(path []string, back string) string {
	for i, n := range path {
		if n == back {
			path = path[i:]
			break
		}
	}
	return finding.Clip(strings.Join(append(path, back), " → "))
}

// circles finds pieces that mirror each other, or start from each other, in a circle.
func (r *reader) circles(p *schematic.Pattern, byName map[string]*schematic.Piece) {
	const onPath, done = 1, 2
	state := map[*schematic.Piece]int{}
	var path []string
	var visit func(q *schematic.Piece)
	visit = func(q *schematic.Piece) {
		state[q] = onPath
		path = append(path, q.Name)
		for _, n := range needs(q) {
			next := byName[n]
			switch {
			case next == nil:
			case state[next] == onPath:
				r.piece = q.Name
				f := r.fail(q.Pos, "file/cycle", "these pieces need each other in a circle: %s", circle(append([]string{}, path...), n))
				f.Want = "a piece that mirrors another, or starts from its stitches, comes after it"
				f.Fix = "give one of them sections of its own"
				r.piece = ""
			case state[next] == 0:
				visit(next)
			}
		}
		state[q] = done
		path = path[:len(path)-1]
	}
	for _, q := range p.Pieces {
		if q.Name != "" && state[q] == 0 && byName[q.Name] == q {
			visit(q)
		}
	}
}

// needs are the pieces that must have been worked before this one.
func needs(q *schematic.Piece) []string {
	var out []string
	if q.MirrorOf != "" {
		out = append(out, q.MirrorOf)
	}
	return append(out, schematic.BeginsFrom(q)...)
}
