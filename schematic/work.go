package schematic

import (
	"fmt"
	"slices"
	"unicode"
	"unicode/utf8"

	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Work works the pattern in size i (an index into its sizes): every section of every
// piece at its gauge. What does not add up is told in Findings and worked on
// with what there is, so that there is always something to look at. The pattern
// must have come through the reader or keep to its bounds.
func Work(p *Pattern, i int) *Garment {
	g := &Garment{Pattern: p, Size: p.Sizes.Names[i], Index: i, named: &namedEdges{of: map[string]edgesOfPiece{}}}
	b := &builder{p: p, i: i, g: g, made: map[string]*Made{}, busy: map[string]bool{}}
	for _, q := range p.Pieces {
		b.piece(q)
	}
	for _, q := range p.Pieces {
		m := b.made[q.Name]
		switch {
		case m == nil:
		case m.nothing: // it was told, and a guess is no measurement to draw
			g.Without = append(g.Without, m.Name)
		case m.rowless():
			b.leaveOut(m)
		default:
			g.Pieces = append(g.Pieces, m)
		}
	}
	b.seams()
	g.Findings.Sort()
	return g
}

// rowless reports whether a piece has no row in its size: stitches cast on and bound off again.
func (m *Made) rowless() bool {
	return !m.Broken && m.Area.Sign() == 0 && !slices.ContainsFunc(m.Views, func(v View) bool {
		return slices.ContainsFunc(v.Outline, func(l []Point) bool { return PolygonArea(l) != 0 })
	})
}

// leaveOut leaves a piece out of its size, where it would be drawn as a line.
func (b *builder) leaveOut(m *Made) {
	b.g.Without = append(b.g.Without, m.Name)
	if m.MirrorOf != "" || b.takenUp(m.Piece) {
		return // told of what it mirrors; or it is but a beginning for another piece
	}
	b.find(finding.Finding{Kind: "arithmetic/no-rows", Severity: finding.Note, Pos: m.Piece.Pos, Piece: m.Name,
		Message: fmt.Sprintf("%s has no rows and is left out", m.Name), Have: "0 rows", Want: "rows, or no such piece",
		Fix: "say `make: none` for the size (a dash in the line of `make`), or give it rows"})
}

// takenUp reports whether another piece begins from stitches of q.
func (b *builder) takenUp(q *Piece) bool {
	return slices.ContainsFunc(b.p.Pieces, func(o *Piece) bool {
		return slices.ContainsFunc(o.Sections, func(s Section) bool {
			return slices.ContainsFunc(s.Traits().From, func(p HeldPart) bool { return p.Piece == q.Name })
		})
	})
}

// builder works the pieces of one size, each once, those that others start from
// first.
type builder struct {
	p    *Pattern
	i    int
	g    *Garment
	made map[string]*Made
	busy map[string]bool
}

func (b *builder) piece(q *Piece) *Made {
	if m, ok := b.made[q.Name]; ok {
		return m
	}
	if b.busy[q.Name] {
		b.find(finding.Finding{Kind: "arithmetic/cycle", Severity: finding.Error, Pos: q.Pos, Piece: q.Name,
			Message: fmt.Sprintf("%s begins, by way of other pieces, from itself", q.Name),
			Fix:     "let one of the pieces begin with a cast on"})
		return nil
	}
	b.busy[q.Name] = true
	defer delete(b.busy, q.Name)
	if !q.Make.IsZero() {
		if v, ok := q.Make.At(b.i); !ok || v.Sign() <= 0 {
			b.made[q.Name] = nil
			return nil
		}
	}
	var m *Made
	if q.MirrorOf != "" {
		if src := b.p.PieceNamed(q.MirrorOf); src != nil && src != q {
			if of := b.piece(src); of != nil {
				m = of.mirrored(q, b.i)
			}
		}
	} else {
		m = b.work(q)
	}
	b.made[q.Name] = m
	return m
}

func (b *builder) find(f finding.Finding) {
	f.Sizes = []string{b.g.Size}
	b.g.Findings = append(b.g.Findings, f)
}

// worker works one piece in one size.
type worker struct {
	b        *builder
	piece    *Piece
	i        int
	made     *Made
	cur      *strand
	parts    map[string]*strand // parts whose sections are done and that are not ended
	views    []*canvas
	areas    map[string]units.Num
	section  Section
	next     Section   // the one after it in its list
	slit     *slit     // the parts in work are those of a slit
	lastName string    // the last section that has a name
	wholes   []Measure // widths of a whole row that is drawn in panels
	lines    bool      // a later shaping falls on marked lines
	told     map[told]bool
	erred    bool  // the section in work met an error
	taken    []int // see Step
	places   []int
	guessed  bool      // the count with which the next strand begins is in doubt
	unfit    Section   // a shaping that does not fit its rows
	over     units.Num // stitches beyond those stated, after the last section that states them
}

// ID is a name in lower case with hyphens, for ids that last.
func ID(name string) string {
	b := make([]byte, 0, len(name)+4)
	gap := false
	for _, r := range name {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) {
			gap = len(b) > 0
			continue
		}
		if gap {
			b, gap = append(b, '-'), false
		}
		b = utf8.AppendRune(b, unicode.ToLower(r))
	}
	if len(b) == 0 {
		return "x"
	}
	return string(b)
}

func (b *builder) work(q *Piece) *Made {
	m := &Made{Piece: q, ID: ID(q.Name), Name: q.Name, Kind: q.Kind, Make: max(1, q.Make.Int(b.i, 1)),
		Round: q.Round, From: q.From, Live: map[string]int{}}
	w := &worker{b: b, piece: q, i: b.i, made: m, parts: map[string]*strand{}, areas: map[string]units.Num{}}
	if q.Motifs != nil {
		w.motifs(q.Motifs)
	} else {
		w.lines = shapesLines(q.Sections)
		if len(q.Onto) > 0 {
			w.onto()
		}
		w.sections(q.Sections)
		w.close()
	}
	w.finish()
	return m
}

// shapesLines reports whether any shaping falls on marked lines.
func shapesLines(list []Section) bool {
	return slices.ContainsFunc(list, func(s Section) bool {
		shape, ok := s.(*Shape)
		return ok && slices.ContainsFunc(shape.Shapings, func(h Shaping) bool { return h.At == Lines }) ||
			slices.ContainsFunc(s.Traits().Parts, func(p *Part) bool { return shapesLines(p.Sections) })
	})
}

// sections works a list of sections on the strand in work.
func (w *worker) sections(list []Section) {
	for k, s := range list {
		w.section, w.next = s, nil
		if k+1 < len(list) {
			w.next = list[k+1]
		}
		w.taken, w.places = nil, nil
		w.marked()
		step := w.before(s)
		s.work(w)
		step.Taken, step.Places = w.taken, w.places
		w.section = s
		w.blame()
		if w.cur != nil {
			w.after(step)
		}
	}
}

// before sees to it that there is something to work a section on, and begins the record of it.
func (w *worker) before(s Section) Step {
	c := s.Base()
	step := Step{Section: s, FirstRS: true}
	t := s.Traits()
	needs := !t.Starts && t.Joins == nil && !t.Closes
	if w.cur == nil {
		if needs {
			w.find("arithmetic/start", finding.Error, c.Pos, "there are no stitches to work here", "", "",
				"begin the piece with `cast on`, `chain`, `sideways`, `start from` or `ring`; nothing can follow a row that is all bound off")
			w.unseen(1)
		}
	} else if w.cur.ended && needs {
		w.find("arithmetic/start", finding.Error, c.Pos, "there are no stitches left to work here", "", "",
			"take this section out, or bind off fewer stitches before it")
		w.unseen(w.cur.count())
	}
	if w.cur == nil {
		return step
	}
	step.Before, step.FirstRow, step.FirstRS, step.Doubt = w.cur.count(), w.cur.row+1, w.cur.rs, w.cur.doubt
	w.edgeNames(c)
	if c.Gauge != "" && !t.Starts && t.Rates == nil {
		w.toGauge(w.gauge(c.Gauge))
	}
	return step
}

// after records what a section came to, and holds it to what the designer states.
func (w *worker) after(step Step) {
	st, c := w.cur, step.Section.Base()
	if c.Name != "" {
		w.lastName = c.Name
	}
	if step.After = st.count(); st.ended {
		step.After = 0
	}
	step.Part, step.Gauge, step.Doubt = st.name, st.gauge.Name, step.Doubt || st.doubt
	step.Rows, step.FirstRow = st.row-max(0, step.FirstRow-1), max(1, step.FirstRow)
	if !st.unseen {
		w.made.Steps = append(w.made.Steps, step)
	}
	if to, ok := c.To.At(w.i); ok && st.doubt {
		w.state(int(to.Floor()))
	} else if ok {
		w.holdTo(c, step, to)
	}
	w.level(c)
}

// holdTo holds the count after a section to what is stated. As many too many, or too few, as after the section before that states a count are told
// there.
func (w *worker) holdTo(c *Common, step Step, to units.Num) {
	carried := w.over
	if w.over = units.Int(int64(step.After)).Sub(to); w.over.Sign() == 0 || w.over.Eq(carried) || w.unfit == step.Section {
		return
	}
	w.find("arithmetic/count", finding.Warning, c.Pos,
		fmt.Sprintf("after this section there are %d stitches, not %s", step.After, to),
		fmt.Sprintf("%d stitches before it, %d after it", step.Before, step.After), to.String()+" stated",
		fmt.Sprintf("state `to: %d`, or change what the section works", step.After))
}

func (w *worker) gauge(name string) *Gauge {
	if g := w.b.p.GaugeNamed(name); g != nil {
		return g
	}
	return w.b.p.GaugeNamed("")
}

// flipped reports whether left and right as drawn are right and left of the working.
func (w *worker) flipped() bool {
	f := !w.piece.From.upwards()
	if w.cur != nil && w.cur.flip {
		f = !f
	}
	return f
}

func (w *worker) side(s Side) Side {
	if w.flipped() {
		switch s {
		case LeftEdge:
			return RightEdge
		case RightEdge:
			return LeftEdge
		}
	}
	return s
}

// edgeNames takes over the names that a section gives to the edges.
func (w *worker) edgeNames(c *Common) {
	l, r := c.LeftEdge, c.RightEdge
	if w.flipped() {
		l, r = r, l
	}
	w.nameEdges(l, r)
}

func (w *worker) nameEdges(l, r string) {
	if len(w.cur.blocks) == 0 {
		return
	}
	if l != "" {
		w.cur.blocks[0].left = l
	}
	if r != "" {
		w.cur.blocks[len(w.cur.blocks)-1].right = r
	}
}

// outerEdges are the names of the piece's outer edges in the working's own left
// and right.
func (w *worker) outerEdges() (string, string) {
	l, r := w.piece.LeftEdge, w.piece.RightEdge
	if l == "" {
		l = "side"
	}
	if r == "" {
		r = "side"
	}
	if !w.piece.From.upwards() {
		l, r = r, l
	}
	return l, r
}

func (w *worker) canvas(b *block) *canvas { return w.views[b.view] }

func (w *worker) newView(name string) int {
	w.views = append(w.views, &canvas{name: name})
	return len(w.views) - 1
}

// begin starts a strand of the given runs at y = 0.
func (w *worker) begin(runs []run, g *Gauge, edge string, pos finding.Pos) {
	l, r := w.outerEdges()
	s := &strand{gauge: g, round: w.piece.Round, rs: !w.piece.FirstWS, doubt: w.guessed}
	w.guessed = false
	b := block{view: w.newView(""), runs: runs, left: l, right: r}
	s.blocks = []block{b}
	w.cur = s
	if w.section != nil {
		w.edgeNames(w.section.Base())
	}
	w.place(&s.blocks[0])
	w.bottom(edge, pos)
	w.views[s.blocks[0].view].first = s
}

func (w *worker) place(b *block) { b.x = w.cur.width(b).Half().Neg() }

// bottom draws the edge with which the strand begins.
func (w *worker) bottom(edge string, pos finding.Pos) {
	s := w.cur
	for k := range s.blocks {
		b := &s.blocks[k]
		c := w.canvas(b)
		c.segs = append(c.segs, seg{a: pt{b.x, s.y}, b: pt{s.right(b), s.y}, name: edge, part: s.name,
			both: s.round && len(s.blocks) == 1, sts: b.count(), pos: pos, doubt: w.inDoubt(s)})
	}
}

// close ends what is still live at the end of the piece.
func (w *worker) close() {
	if w.cur != nil && !w.cur.ended {
		w.end("top", finding.Pos{}, true)
	}
	for _, name := range sortedKeys(w.parts) {
		s := w.parts[name]
		if s.ended {
			continue
		}
		w.cur = s
		w.end("top", finding.Pos{}, true)
	}
}

// end closes the strand in work along its top. Live stitches stay live for
// other pieces.
func (w *worker) end(edge string, pos finding.Pos, live bool) {
	s := w.cur
	if live {
		w.keepLive(s)
	}
	if len(s.blocks) > 1 && s.name == "" {
		w.acrossPanels(w.panelsName(false))
	}
	for k := range s.blocks {
		b := &s.blocks[k]
		c := w.canvas(b)
		l, r, n := b.x, s.right(b), b.count()
		if s.dirty && k == 0 {
			for _, i := range s.top {
				c.segs[i].name = edge
			}
			l, r, n = s.topL, s.topR, s.topCount(c)
		}
		c.segs = append(c.segs, seg{a: pt{r, s.y}, b: pt{l, s.y}, name: edge, part: s.name,
			both: s.round && len(s.blocks) == 1, sts: n, pos: pos, doubt: w.inDoubt(s)})
		if n := len(c.levels); n > 0 && !s.dirty && c.levels[n-1].y.Eq(s.y) && c.levels[n-1].part == s.name {
			c.levels[n-1].end = true
		} else if n > 0 {
			w.levelOf(b, "", "", false, true)
		}
	}
	s.ended = true
}

// topCount is how many stitches the last of the short rows that lie uppermost works: those that it leaves are on the slopes.
func (s *strand) topCount(c *canvas) int {
	n := s.blocks[0].count()
	for _, i := range s.top {
		n -= c.segs[i].sts
	}
	return n
}

// keepLive holds the stitches of a strand, and of its named runs, for other pieces.
func (w *worker) keepLive(s *strand) {
	w.hold(s.name, s.count())
	if s.doubt {
		w.made.doubtful(s.name)
	}
	for _, b := range s.blocks {
		for _, r := range b.runs {
			if r.name != "" && r.name != s.name { // a part called as the panel in it is held once
				w.made.Live[r.name] += r.n
			}
		}
	}
}

// alsoLive holds the stitches of the strand under names beside its own.
func (w *worker) alsoLive(names []GivenName) {
	for _, k := range names {
		if k.Name != w.cur.name {
			w.made.Live[k.Name] += w.cur.count()
		}
	}
}

// settle levels the top after short rows, leaving the notch where no stitch
// was worked.
func (w *worker) settle() {
	s := w.cur
	if !s.dirty {
		return
	}
	b := &s.blocks[0]
	c := w.canvas(b)
	if b.x.Less(s.topL) {
		c.segs = append(c.segs, seg{a: pt{b.x, s.y}, b: pt{s.topL, s.y}, part: s.name, name: "short-row turn"})
	}
	if r := s.right(b); s.topR.Less(r) {
		c.segs = append(c.segs, seg{a: pt{s.topR, s.y}, b: pt{r, s.y}, part: s.name, name: "short-row turn"})
	}
	s.dirty, s.top = false, nil
}

func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	sortStrings(keys)
	return keys
}
