package grammar

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

// meshes are what the squares of filet are called, open and solid ones (common practice).
var meshes = map[string]bool{
	"space": true, "sp": true, "open mesh": true, "mesh": true, "om": true, "open square": true, "open sp": true, "open space": true, "os": true, "open block": true,
	"block": true, "bl": true, "blk": true, "solid mesh": true, "sm": true, "solid square": true, "filled square": true, "filled mesh": true, "closed mesh": true, "cm": true, "solid block": true, "filled space": true,
}

// meshOf is the square of filet that a definition of that name tells: ch 2, skip 2 sts, dc in next dc; or dc in each of
// next 3 sts. It is nil if it tells none.
func (r *Reader) meshOf(name string, list []ins.Item) *ins.Mesh {
	if !meshes[strings.ToLower(name)] || !r.crochet {
		return nil
	}
	var t meshTold
	if slices.ContainsFunc(list, func(n ins.Item) bool { return !t.takes(n) }) || t.Post == nil || t.Wide == 0 && t.posts < 2 {
		return nil
	}
	m := &t.Mesh
	if m.Wide > 0 {
		return m
	}
	m.Solid, m.Wide = true, t.posts-1
	for _, g := range r.x.Groups {
		if o := g.Mesh; o != nil && !o.Solid { // some count the post before it too
			m.Wide, m.First = o.Wide, o.First
		}
	}
	return m
}

// meshTold is a square of filet as its definition goes on.
type meshTold struct {
	ins.Mesh
	posts int // stitches, the post among them
}

// takes takes an instruction of a definition; it reports false for one that no mesh has.
func (m *meshTold) takes(n ins.Item) bool {
	switch n := n.(type) {
	case *ins.Chain:
		if n.N.By != nil || m.Wide > 0 {
			return false
		}
		m.Wide, m.First = n.N.All, m.Post != nil
	case *ins.Stitch:
		if n.Kind == nil || n.Kind.ID == "ch" || m.Post != nil && m.Post != n.Kind {
			return false
		}
		m.Post = n.Kind
		m.posts += n.N.At(0) * placesIn(n.Places)
	case *ins.Skip, *ins.Nothing:
	default:
		return false
	}
	return true
}

// placesIn is how many places are named.
func placesIn(list []ins.Place) int {
	n := 0
	for _, p := range list {
		n += max(p.N.At(0), 1)
	}
	return max(n, 1)
}

// groupWords are words of which one stands in the name of a group of stitches, where a line tells it outside of a list.
var groupWords = []string{"shell", "fan", "v-stitch", "v-st", "v stitch", "cluster", "picot", "puff", "bobble", "popcorn", "scallop", "space", "block", "mesh", "x-st", "y-st", "crown", "petal"}

// tellsGroup reports whether a line before the rows tells a group of stitches by its name: Shell: 5 dc in same st; V-st (V-stitch) = dc, ch 1, dc.
func (r *Reader) tellsGroup(trimmed string) bool {
	if r.mode != "" && r.mode != "names" || slices.ContainsFunc(r.sec.Lines, func(l *ins.Line) bool { return l.Label != nil }) {
		return false
	}
	at := strings.IndexAny(trimmed, ":=")
	if at <= 0 || at > 40 {
		return false
	}
	head, body := strings.ToLower(trimmed[:at]), strings.TrimLeft(trimmed[at:], ":= ")
	if len(strings.Fields(head)) > 5 || body == "" || !slices.ContainsFunc(groupWords, func(w string) bool { return strings.Contains(head, w) }) {
		return false
	}
	tokens := text.Lex(body, 1)
	l := &ins.Line{At: ins.Span{Line: 1, Col: 1, End: 2}}
	list := slices.DeleteFunc(r.parser(tokens, l).sequence(), is[*ins.Nothing])
	if r.meshOf(firstName(head), list) != nil {
		return true
	}
	list, ok := onlyStitches(list)
	if !ok || len(l.Unread) > 0 {
		return false
	}
	made := 0
	for _, n := range list {
		switch n := n.(type) {
		case *ins.Stitch:
			made += n.N.At(0)
		case *ins.Repeat:
			made += 2
		}
	}
	return made > 1
}

func firstName(head string) string {
	name, _, _ := strings.Cut(head, "(")
	return strings.TrimSpace(name)
}
