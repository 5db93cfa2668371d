package grammar

import (
	"cmp"
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// meshes are what the squares of filet are called, and which of them are solid (common practice).
var meshes = map[string]bool{
	"space": false, "sp": false, "open mesh": false, "mesh": false, "om": false, "open square": false, "open sp": false, "open space": false, "os": false, "open block": false,
	"open": false, "empty": false, "open box": false, "empty square": false, "empty box": false, "empty mesh": false, "hole": false,
	"block": true, "bl": true, "blk": true, "solid mesh": true, "sm": true, "solid square": true, "filled square": true, "filled mesh": true, "closed mesh": true, "cm": true, "solid block": true, "filled space": true,
	"solid": true, "filled": true, "closed": true, "solid box": true, "filled box": true, "filled block": true, "closed square": true,
}

// meshOf is the square of filet that a definition of that name tells: ch 2, skip 2 sts, dc in next dc; or dc in each of
// next 3 sts. It is nil if it tells none.
func (r *Reader) meshOf(name string, list []ins.Item) *ins.Mesh {
	if _, ok := meshes[strings.ToLower(name)]; !ok || !r.crochet {
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
	case *ins.Repeat:
		return !slices.ContainsFunc(n.Body, func(b ins.Item) bool { return !m.takes(b) })
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

// openSquares and solidSquares find squares of filet that a row counts by name.
var (
	openSquares  = text.Once(`(?i)[,;.:]\s*(?:work )?(?:(?:\d+|one|two|three|four|five|six) )?(?:more )?(?:(?:(?:open|empty) )?(?:sps?|spaces?|mesh(?:es)?)|om|holes?|(?:open|empty)(?: squares?| box(?:es)?| blocks?)?)(?: ?x ?\d+)?\s*(?:[,;.(]|\band\b|\bturn\b|$)`)
	solidSquares = text.Once(`(?i)[,;.:]\s*(?:work )?(?:(?:\d+|one|two|three|four|five|six) )?(?:more )?(?:(?:solid|filled|closed)(?: mesh(?:es)?| squares?| box(?:es)?| spaces?| blocks?)?|bls?|blks?|blocks?|sm)(?: ?x ?\d+)?\s*(?:[,;.(]|\band\b|\bturn\b|$)`)
	widthTold    = text.Once(`(?i)\bch (\d),? (?:skip|sk|miss) (?:next )?(\d)`)
)

// square is the open or solid square of filet that a text counts by name without telling it: with as many chains between its
// posts as the text tells of one, or 2, and posts of the one stitch that it names, or dc (common practice). It is nil if the
// text counts not both.
func (r *Reader) square(solid bool) *ins.Group {
	if r.squares == nil {
		r.squares = &[2]*ins.Group{}
		lines := strings.Join(r.x.Src, "\n")
		if openSquares().MatchString(lines) && solidSquares().MatchString(lines) {
			wide := 2
			if m := widthTold().FindStringSubmatch(lines); m != nil && m[1] == m[2] {
				wide = int(m[1][0] - '0')
			}
			post := cmp.Or(r.oneStitch(), stitch.ByID("dc"))
			r.squares[0] = &ins.Group{Name: "space", Mesh: &ins.Mesh{Post: post, Wide: wide}}
			r.squares[1] = &ins.Group{Name: "block", Mesh: &ins.Mesh{Post: post, Wide: wide, Solid: true}}
		}
	}
	if solid {
		return r.squares[1]
	}
	return r.squares[0]
}

// filetSquares reads squares of filet by their number: 3 spaces, 2 more blocks, beginning open mesh.
func (s *sequence) filetSquares() bool {
	if !s.r.crochet || !s.line.IsRow() {
		return false
	}
	at := s.i
	begins, n, more, at := s.squaresTold(at)
	if at < 0 {
		return false
	}
	g, to := s.group(at)
	if g != nil && !begins && !more { // read as any other group
		return false
	}
	if g == nil {
		g, to = s.squareNamed(at)
	}
	switch {
	case g == nil || at > s.i:
	case s.at(to).Is("x") && s.at(to+1).Kind == 'n':
		n, to = s.at(to+1).Num, to+2
	default: // how many is not said
		return false
	}
	if g == nil || g.Mesh == nil || to < len(s.t) && !s.parts(to) && !s.at(to).Is("and", "turn", "then") {
		return false
	}
	first := !slices.ContainsFunc(s.out, func(n ins.Item) bool { return is[*ins.Stitch](n) || is[*ins.Skip](n) || is[*ins.Repeat](n) })
	switch {
	case begins && first:
		s.beginsSquares(g.Mesh)
	case more && first: // than the one that the chain makes
		n = n.Plus(1)
	}
	s.add(&ins.Stitch{Call: g, N: n}, s.i, to)
	s.i = to
	return true
}

// squaresTold is how many squares of filet words at i count, whether they are further ones or the one that a row begins with, and where
// their name stands; -1: nothing counts any.
func (s *sequence) squaresTold(at int) (begins bool, n ins.Num, more bool, name int) {
	told := 0
	if s.at(at).Is("work") {
		at++
	}
	begins, n, told = s.at(at).Is("beg", "beginning"), ins.N(1), numerals[s.at(at).S]
	switch {
	case begins:
		at++
	case s.at(at).Kind == 'n', told > 0:
		if n = s.at(at).Num; told > 0 {
			n = ins.N(told)
		}
		if at++; s.at(at).Is("more") {
			more = true
			at++
		}
	case s.at(at).Is("open", "solid", "filled", "closed", "empty"): // open mesh x 5
	default:
		return false, n, false, -1
	}
	return begins, n, more, at
}

// beginsSquares puts the chain before a first square that is named as the one a row begins with.
func (s *sequence) beginsSquares(m *ins.Mesh) {
	if slices.ContainsFunc(s.out, is[*ins.Chain]) {
		return
	}
	c := &ins.Chain{N: ins.N(m.Post.Turn), Count: ins.Counting{How: ins.CountsAsStitch, As: m.Post}}
	if !m.Solid {
		c.N, c.Count.Space = ins.N(m.Post.Turn+m.Wide), ins.N(m.Wide)
	}
	s.add(c, s.i, s.i+1)
}

// squareNamed is the square of filet that is named at i, which the text does not tell, and where its name ends.
func (s *sequence) squareNamed(i int) (*ins.Group, int) {
	name := ""
	for to := i; to < min(i+2, len(s.t)); to++ {
		name = strings.TrimSpace(name + " " + s.t[to].S)
		for _, one := range []string{name, strings.TrimSuffix(name, "s"), strings.TrimSuffix(name, "es")} {
			if solid, ok := meshes[one]; ok && !s.at(to+1).Is("mesh", "meshes", "square", "squares", "space", "spaces", "sp", "sps", "box", "boxes", "block", "blocks") {
				return s.r.square(solid), to + 1
			}
		}
	}
	return nil, -1
}
