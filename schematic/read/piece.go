package read

import (
	"strings"

	"gopkg.in/yaml.v3"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
)

func (r *reader) readPiece(n *yaml.Node) *schematic.Piece {
	r.piece, r.section, r.from, r.count = "", "", schematic.FromHem, 0
	defer func() { r.piece, r.section = "", "" }()
	m := r.mapping(n, pieceKeys)
	if m == nil {
		return nil
	}
	q := &schematic.Piece{Name: m.text("piece"), Pos: r.pos(n), Make: m.counts("make", copies)}
	r.piece = q.Name
	if at := m.get("piece"); at != nil {
		q.Pos = r.pos(at)
	}
	if q.Make.IsZero() {
		q.Make = r.one()
	}
	q.Kind = kindFrom(q.Name)
	if k := m.choice("kind"); k >= 0 {
		q.Kind = schematic.Kind(k)
	}
	if w := m.get("worked"); w != nil {
		q.Round, q.From, q.Begins = r.worked(w, q.Kind)
	}
	if q.Kind == schematic.KindHood && q.From == schematic.FromNeck && q.Begins == "" { // which stands on it
		q.From, q.Begins = schematic.FromHem, "neck"
	}
	r.from = q.From
	q.FirstWS = m.choice("first row") == 1
	q.LeftEdge, q.RightEdge = r.edges(m)
	switch m.choice("centre") {
	case 0:
		q.Centre = true
	case 1:
		q.Centre, q.FoldAt = true, true
	}
	q.Gauge = r.ref(m, "gauge", toGauge)
	q.MirrorOf = r.ref(m, "mirror of", toPiece)
	q.Onto = r.onto(m.get("onto"))
	if g := m.get("motifs"); g != nil {
		q.Motifs = r.motifGrid(g)
	}
	r.own(m)
	q.Sections = r.sections(m.get("sections"), starting(m.get("onto") != nil))
	if len(q.Sections) > 0 {
		q.BeginEdge = q.Sections[0].Traits().Edge
		if q.Kind == schematic.KindSock && q.From == schematic.FromHem && fromCuff(q) {
			q.From = schematic.FromNeck
		}
	}
	return q
}

// fromCuff reports whether a sock begins at its cuff, or ends at its toe: whoever says hem means the cuff.
func fromCuff(q *schematic.Piece) bool {
	end := q.Sections[len(q.Sections)-1].Traits().Shapings
	return strings.EqualFold(q.BeginEdge, "cuff") || len(end) > 0 && strings.EqualFold(end[0].Edge, "toe")
}

// own sees to it that a piece has one of sections, mirror of and motifs.
func (r *reader) own(m *mapped) {
	var has []string
	for _, k := range []string{"sections", "mirror of", "motifs"} {
		if m.item(k) != nil {
			has = append(has, k)
		}
	}
	switch {
	case len(has) > 1:
		r.fail(r.pos(m.item(has[1]).at), "file/conflict", "%q and %q can't both be there", has[0], has[1]).
			Fix = "take one of them out"
	case len(has) == 0:
		f := r.fail(r.pos(m.node), "file/missing-key", "this piece has nothing that is worked")
		f.Want = "sections, or mirror of another piece, or motifs"
	case m.item("motifs") != nil && m.item("onto") != nil:
		r.fail(r.pos(m.item("onto").at), "file/conflict", `"onto" and "motifs" can't both be there`)
	}
}

// kindFrom is what a piece is by the last word of its name that says so.
func kindFrom(name string) schematic.Kind {
	words := strings.Fields(strings.ToLower(name))
	for i := len(words) - 1; i >= 0; i-- {
		w := strings.TrimSuffix(words[i], "s")
		if k, ok := otherNames[w]; ok {
			return k
		}
		for _, k := range schematic.Kinds()[1:] {
			if w == k.String() {
				return k
			}
		}
		if strings.HasSuffix(w, "band") {
			return schematic.KindBand
		}
	}
	return schematic.KindPiece
}

// otherNames are what else the trade calls a piece of a kind.
var otherNames = map[string]schematic.Kind{
	"mitt": schematic.KindMitten, "tote": schematic.KindBag, "basket": schematic.KindBag, "purse": schematic.KindBag, "beanie": schematic.KindHat,
}

// lowerEnds is what else the trade calls the hem of a piece of a kind.
var lowerEnds = map[schematic.Kind]string{schematic.KindSock: "toe", schematic.KindSleeve: "cuff", schematic.KindMitten: "cuff", schematic.KindHat: "brim"}

// worked reads flat or in the round, and where the piece begins: at its upper end as well where that is the waist or the armhole.
func (r *reader) worked(n *yaml.Node, kind schematic.Kind) (round bool, from schematic.Direction, begins string) {
	p := r.phrase(n, `"worked"`, "flat or in the round, a comma, and from the hem, from the neck, from the waist, from the armhole, from the left side, from the right side or from the centre")
	first := true
	for !p.bad && (first || !p.end()) {
		if !first && !p.must(",") {
			break
		}
		first = false
		switch {
		case p.take("flat"):
		case p.take("in the round", "in rounds"):
			round = true
		case p.take("from the hem"), lowerEnds[kind] != "" && p.take("from the "+lowerEnds[kind]):
		case p.take("from the neck"), kind == schematic.KindSock && p.take("from the cuff"):
			from = schematic.FromNeck
		case p.take("from the waist"):
			from, begins = schematic.FromNeck, "waist"
		case p.take("from the armhole", "from the underarm"):
			from, begins = schematic.FromNeck, "armhole"
		case p.take("from the left side", "from the left"):
			from = schematic.FromLeft
		case p.take("from the right side", "from the right"):
			from = schematic.FromRight
		case p.take("from the centre", "from the center"):
			from = schematic.FromCentre
		case p.wrong("write from the neck; or from the centre, for a hat from its crown", "from the top", "from the top down", "top down"):
		case p.wrong("write from the hem: the end that is the lower one as worn", "from the bottom", "from the bottom up", "bottom up", "from the cuff", "from the brim"):
		case p.wrong("write in the round", "round", "rounds", "in round", "circular"):
		case p.wrong("write from the left side, or from the right side: where the first row lies as drawn", "sideways", "side to side", "from side to side"):
		default:
			p.fail()
		}
	}
	return round, from, begins
}

// sideTo reports whether the piece is worked from side to side.
func (r *reader) sideTo() bool { return r.from == schematic.FromLeft || r.from == schematic.FromRight }

// asDrawn tells the four edges of a piece apart: left and right if it goes up
// or down, top and bottom if it goes from side to side. The side is that of Side.
func (r *reader) asDrawn(pos finding.Pos, word string) (schematic.Side, bool) {
	word = plainKey(word)
	across := word == "top edge" || word == "bottom edge"
	if across != r.sideTo() {
		f := r.fail(pos, "file/choice", "%q can't be said of a piece worked %s", word, r.from)
		if r.sideTo() {
			f.Want = "top edge or bottom edge, as drawn"
		} else {
			f.Want = "left edge or right edge, as drawn"
		}
		return schematic.LeftEdge, false
	}
	left := word == "left edge" || word == "top edge" && r.from == schematic.FromLeft || word == "bottom edge" && r.from == schematic.FromRight
	if left {
		return schematic.LeftEdge, true
	}
	return schematic.RightEdge, true
}

// edges are the names of the edges on the left and on the right.
func (r *reader) edges(m *mapped) (left, right string) {
	for _, k := range []string{"left edge", "right edge"} {
		it := m.item(k)
		if it == nil {
			continue
		}
		name := m.text(k)
		if s, ok := r.asDrawn(r.pos(it.at), it.at.Value); ok && s == schematic.LeftEdge {
			left = name
		} else if ok {
			right = name
		}
	}
	return left, right
}

// onto reads the edges onto which a band is worked: EDGE, A in every B rows.
func (r *reader) onto(n *yaml.Node) []schematic.EdgeRate {
	if n == nil {
		return nil
	}
	all := []*yaml.Node{n}
	if n.Kind != yaml.ScalarNode {
		all = r.list(n, `"onto"`, mostEntries)
	}
	var out []schematic.EdgeRate
	for _, c := range all {
		const form = "an edge, a comma and its rate: Right front front edge, 3 in every 4 rows"
		p := r.phrase(c, `an entry of "onto"`, form)
		comma := -1
		for i, w := range p.all {
			if w.s == "," {
				comma = i
			}
		}
		if p.bad {
			continue
		}
		if comma < 1 {
			p.i = len(p.all)
			p.fail()
			continue
		}
		t := []rune(c.Value)
		e := schematic.EdgeRate{Edge: strings.Join(strings.Fields(string(t[:p.all[comma].span.Start])), " "), Pos: r.pos(c)}
		p.i = comma + 1
		e.Pick, e.Of, e.Rows = p.rate()
		if p.done() {
			out = append(out, e)
			r.lookUp(reference{to: toEdge, name: e.Edge, pos: r.spanPos(c, expr.Span{Start: 0, End: p.all[comma].span.Start})})
		}
	}
	return out
}

// rate reads A in every B rows, A in each row, A in every B sts.
func (p *phraseOf) rate() (pick, of int, rows bool) {
	pick, of = p.whole(1, 1000), 1
	p.must("in every", "in each", "to every", "for every", "per")
	if !p.bad && !in(p.peek(), rowWords) && !in(p.peek(), stitchWords) {
		of = p.whole(1, 1000)
	}
	rows = in(p.peek(), rowWords)
	p.must("rows", "row", "rounds", "rnds", "round", "rnd", "sts", "st", "stitches", "stitch", "chains", "chain", "chs", "ch")
	return pick, of, rows
}

func (r *reader) motifGrid(n *yaml.Node) *schematic.Motifs {
	m := r.mapping(n, motifKeys)
	if m == nil {
		return nil
	}
	g := &schematic.Motifs{
		Shape: schematic.MotifShape(max(0, m.choice("shape"))), Across: m.lengths("across"), Joining: m.lengths("joining"),
		Columns: m.counts("columns", motifs), Rows: m.counts("rows", motifs), Side: m.counts("stitches", someSts), Armhole: m.counts("armhole", motifs), Pos: r.pos(n),
	}
	for i := range g.Across.Vals {
		if g.Across.Has[i] && g.Across.Vals[i].Sign() <= 0 {
			r.fail(r.pos(m.get("across")), "file/bounds", `"across" must be more than 0`).Want = "the width of a motif, such as 12 cm"
			break
		}
	}
	f := m.get("filled")
	if f == nil {
		return g
	}
	g.Filled = r.texts(f, "filled", mostMotifs)
	all := []*yaml.Node{f}
	if f.Kind == yaml.SequenceNode {
		all = elements(f, r)
	}
	for i, line := range g.Filled {
		bad := strings.IndexFunc(line, func(c rune) bool { return !strings.ContainsRune(motifLetters(g.Shape), c) })
		if bad >= 0 && i < len(all) {
			r.fail(r.pos(all[i]), "file/form", "a line of motifs of this shape has %s in it, and this has %q", motifWords(g.Shape), string([]rune(line[bad:])[0])).
				Want = "one line a row: x for a motif, . for none, such as xx.xx"
		}
		g.Filled[i] = strings.ToLower(line)
	}
	r.filledFits(f, g)
	return g
}

// motifLetters are what a line of "filled" may have in it: halves stand at the
// edges of a grid of hexagons or of squares.
func motifLetters(shape schematic.MotifShape) string {
	switch shape {
	case schematic.Hexagon:
		return "xX.lLrR"
	case schematic.Square:
		return `xX./\`
	}
	return "xX."
}

func motifWords(shape schematic.MotifShape) string {
	switch shape {
	case schematic.Hexagon:
		return "x, ., l and r"
	case schematic.Square:
		return `x, ., / and \`
	}
	return "x and ."
}

// filledFits holds the drawn grid to the numbers of columns and rows.
func (r *reader) filledFits(n *yaml.Node, g *schematic.Motifs) {
	for i := range r.sizes.Len() {
		rows, ok1 := g.Rows.At(i)
		cols, ok2 := g.Columns.At(i)
		if !ok1 || !ok2 {
			continue
		}
		if int64(len(g.Filled)) != rows.Floor() {
			f := r.fail(r.pos(n), "file/bounds", `"filled" has %s, and there are %s rows of motifs`, plural(len(g.Filled), "line", "lines"), rows)
			f.Sizes, f.Fix = []string{r.sizes.Names[i]}, "write a line for each row of motifs"
			return
		}
		for _, line := range g.Filled {
			if int64(len(line)) != cols.Floor() {
				f := r.fail(r.pos(n), "file/bounds", `the line %q of "filled" has %d places, and there are %s columns`, finding.Clip(line), len(line), cols)
				f.Sizes, f.Fix = []string{r.sizes.Names[i]}, "write x or . for each column"
				return
			}
		}
	}
}

// join reads what is sewn to what, and how.
func (r *reader) join(n *yaml.Node) (schematic.Join, bool) {
	m := r.mapping(n, joinKeys)
	if m == nil {
		return schematic.Join{}, false
	}
	j := schematic.Join{Pos: r.pos(n), A: 1, B: 1}
	if h := m.get("how"); h != nil {
		r.how(h, &j)
	}
	j.Sew, j.SewPos = r.chain(m, "sew")
	j.Into, j.IntoPos = r.chain(m, "into")
	switch {
	case m.item("into") == nil && j.How != schematic.AtFold:
		f := r.fail(r.pos(n), "file/missing-key", `a join needs "into" or "to": the edge that it is sewn to`)
		f.Fix = "add into: and an edge, or how: at a fold for an edge that is sewn to itself"
	case m.item("into") != nil && j.How == schematic.AtFold && strings.Join(j.Into, "\n") != strings.Join(j.Sew, "\n"):
		r.fail(j.IntoPos, "file/conflict", "an edge that is folded is sewn to itself, not to another one").Fix = `take out "into"`
	}
	if s := m.lengths("seam"); !s.IsZero() {
		v, has := s.At(0)
		for i := range s.Vals {
			if !has || !s.Has[i] || !s.Vals[i].Eq(v) {
				r.fail(r.pos(m.get("seam")), "file/number", `"seam" must be one length for all sizes`)
				break
			}
		}
		j.Seam = v
	}
	return j, true
}

// chain is an edge, or a chain of edges.
func (r *reader) chain(m *mapped, key string) ([]string, finding.Pos) {
	n := m.get(key)
	if n == nil {
		return nil, r.pos(m.node)
	}
	edges := r.texts(n, key, longestName)
	all := []*yaml.Node{n}
	if n.Kind == yaml.SequenceNode {
		all = elements(n, r)
	}
	for _, c := range all {
		if c.Kind == yaml.ScalarNode && c.Value != "" {
			r.lookUp(reference{to: toJoined, name: strings.Join(strings.Fields(c.Value), " "), pos: r.pos(c)})
		}
	}
	return edges, r.pos(n)
}

func (r *reader) how(n *yaml.Node, j *schematic.Join) {
	const form = "as long, stitch to stitch, 3 sts to 4 rows, eased by 2 cm, gathered, at a fold, or in 4 places"
	p := r.phrase(n, `"how"`, form)
	switch {
	case p.bad:
		return
	case p.take("as long"):
		j.How = schematic.AsLong
	case p.take("stitch to stitch"):
		j.How = schematic.StitchToStitch
	case p.take("gathered"):
		j.How = schematic.Gathered
	case p.take("at a fold", "at the fold"):
		j.How = schematic.AtFold
	case p.take("in"):
		j.How = schematic.InPlaces
		j.Places = p.whole(1, 1000)
		p.must("places", "place")
	case p.take("eased by"):
		j.How = schematic.Eased
		at := p.i
		if p.end() {
			p.fail()
			return
		}
		t := []rune(n.Value)
		l, bad := expr.ParseLength(string(t[p.all[at].span.Start:]), r.sizes, r.unit)
		if r.sizes.Len() == 0 {
			return
		}
		if bad != nil {
			q := *bad
			q.Span.Start += p.all[at].span.Start
			q.Span.End += p.all[at].span.Start
			r.problem(n, &q)
			return
		}
		j.Ease = l.Low
		p.i = len(p.all)
	default:
		j.How = schematic.RowsToStitches
		j.A = p.whole(1, 1000)
		p.must(stitchList...)
		p.must("to", "for every", "in every", "for")
		j.B = p.whole(1, 1000)
		p.must("rows", "row", "rounds", "rnds")
	}
	p.done()
}
