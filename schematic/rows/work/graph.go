package work

import (
	"cmp"
	"fmt"
	"iter"
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// Graph is the stitches of one section of a text in one size, row by row, with
// the stitches and spaces that each is worked into: what a chart is drawn from.
type Graph struct {
	Section string
	Size    string
	Terms   stitch.Terms
	Rows    []GraphRow
	Again   [2]int  // the first and the last of the rows that are repeated at its end, nothing says how often; 0: none
	Sided   bool    // the text tells right-side rows from wrong-side ones
	Cut     bool    // more than maxGraph stitches: the rest is left out
	From    *Origin // the divided row that it is a part of; nil: none
	Earlier *Graph  // what the section worked before it began anew; nil: nothing
	Assumed int     // stitches on which a stitch pattern is shown that says no number; 0: it says one

	cur       GraphRow
	flip      int    // elements of the row below, if it is met from its other end; 0: not
	firstSame bool   // the doubt is of the first place of the row alone
	under     int    // places of the foundation, if the row goes on along its other side; 0: it does not
	end       int    // of the foundation: the place from which that side is gone along
	doubt     string // why it is not sure where the row that is worked stands; empty: it is
	said      int    // the stitches that the row that is worked states; -1: none
	rolled    int    // places of the row below, if a round begins in the last of them; 0: it does not
	first     int    // 1: of a round met so, its first element comes first
	total     int
	places    []int // of the row before: the index of each counted place
	size      int
	lost      bool   // what the next row stands on is not known
	yarn      string // that was taken up last; empty: the text names none
	before    string // the same, before the row that is worked
	period    int    // how many rows the pattern has that is worked on; 0: nothing says
	oneYarn   bool   // the line that is worked names a yarn for all of its rows
	slips     string // words that say that the rows which are worked begin with a slipped stitch; empty: none do
	whole     bool   // the next row does not
	wrong     bool   // the row that is worked is told to be a wrong-side row
	oneChain  bool   // the row that is worked begins with one chain that stands for a stitch, though nothing says so
}

// GraphRow is one row as worked, in the order of working. Number is 0 for a
// foundation, and -1 for a row without a number.
type GraphRow struct {
	Number   int
	RS       bool // a right-side row; rounds are, unless the work is turned
	Sided    bool // the text tells which side
	Fabric   bool // a row of stocking stitch or of its reverse, whose stitches follow from its side
	Round    bool
	Start    bool   // a foundation: chains, cast-on stitches, a ring
	Held     bool   // a foundation of stitches that a row before left
	Unknown  bool   // an unread row that states no count: what stands on it is not known
	Joined   bool   // a round that a slip stitch closes
	Spiral   bool   // a round that goes on into the next
	RowEnds  bool   // worked along the ends of the rows before
	Picked   bool   // some of it is picked up
	told     bool   // it has a label
	Unread   string // the words that were not read; its stitches, if any, are of no known kind
	Amiss    string // what its words and it as worked have apart; empty: nothing
	Back     int    // rows between it and the one that its feet are of, such as 1 for one worked behind petals
	Star     int    // the first stitch of what is repeated across it, counted from 1; 0: nothing is
	Line     int    // line of the text
	Name     string
	Stitches []GraphStitch
}

// GraphStitch is one symbol: a stitch, an arch of Chain chains, a turning chain of
// Chain chains, or a picot. Feet are the places below it, as indices into the
// Stitches of the row before; none for a chain, or for a stitch in a ring or over a
// row end. Several stitches of one row that name the same foot share it.
type GraphStitch struct {
	Stitch  *stitch.Stitch // nil for an arch, a turning chain that does not count, or what was not read
	Chain   int
	Feet    []int
	Loop    ins.Loop
	Closed  *stitch.Stitch // of an arch: what closes it and its round, worked into the round's first stitch; nil: nothing does
	Turning bool           // the chain at the beginning of a row
	Counts  bool           // it stands in the count of its row
	Ring    bool           // worked into the ring
	Travel  bool           // a slip stitch that goes on to where a round begins
	Between bool           // worked into the gap behind its foot, between two groups
	Under   bool           // worked into the other side of its foundation chain
	Wrapped bool           // idle, and the yarn is taken around it before the work is turned
	Idle    bool           // not worked in this row, such as beyond the turn of a short row: it waits for a later one
	RowEnd  int            // worked into the end of that row of a band worked before, from 1; 0: not
	Colour  string         // the yarn's name, such as MC or B; empty: the text names none
	Cross   *Cross         // the crossing of which it is a part: its stitches share one
	At      int            // of a crossing: which of its stitches it is, as worked, from 0
	apart   bool           // a turning chain whose chains are a place of their own too
}

// Cross is a crossing of a cable: the first Held stitches change places with the next Over.
type Cross = stitch.Cross

// Origin says out of which stitches of a divided row a part is worked: those from First
// to Last of all, counted as a right-side row meets them.
type Origin struct {
	Section          string
	Row              int // 0: without a number
	First, Last, All int
}

// maxGraph bounds the stitches of a graph.
const maxGraph = 200000

// Joined is a text in which headings part no rows of crochet that are numbered on and turned on.
func Joined(x *ins.Text) *ins.Text {
	out := *x
	out.Sections = nil
	for _, s := range x.Sections {
		if k := len(out.Sections) - 1; k >= 0 && goesOnFrom(out.Sections[k], s) {
			both := *out.Sections[k]
			both.Name = both.Name + ", " + s.Name
			both.Lines = slices.Concat(both.Lines, s.Lines)
			out.Sections[k] = &both
			continue
		}
		out.Sections = append(out.Sections, s)
	}
	return &out
}

// goesOnFrom reports whether the first row under a heading is the one that follows the last under the heading before, in the same stitches.
func goesOnFrom(a, b *ins.Section) bool {
	if len(a.Lines) == 0 || len(b.Lines) == 0 || a.Name == "" || a.Prose || b.Prose || a.Pattern || b.Pattern || a.Make > 0 || b.Make > 0 {
		return false
	}
	last, first := a.Lines[len(a.Lines)-1].Label, b.Lines[0].Label
	if last == nil || first == nil || last.Round || first.Round || last.Next || first.Next || last.From.By != nil || first.From.By != nil {
		return false
	}
	no := max(last.From.All, last.To.All)
	for _, n := range last.Listed {
		no = max(no, n.All)
	}
	body := b.Lines[0].Body
	if slices.ContainsFunc(a.Lines, func(l *ins.Line) bool { return knitted(l.Body) }) {
		return false
	}
	return first.From.All > 1 && first.From.All == no+1 && !knitted(body) && foundationOf(body) == nil && !usesNothing(body) && !slices.ContainsFunc(body, is[*ins.JoinYarn])
}

// Graphs works a text in one size and gives the stitches of each wanted section that has rows, in the
// text's order. What stands before a section is worked for what it leaves.
func Graphs(x *ins.Text, size int, want func(*ins.Section) bool) iter.Seq2[*ins.Section, *Graph] {
	return func(yield func(*ins.Section, *Graph) bool) {
		if size < 0 || size >= len(x.Sizes.Names) {
			return
		}
		turningSaid(x)
		first := newRunner(x, size)
		first.run()
		r := newRunner(x, size)
		r.fixed = first.settled
		for _, s := range x.Sections {
			if len(s.Lines) == 0 {
				continue
			}
			// a recorded row is worked more strictly: those that follow go on from the row as it is worked else
			if want(s) && !r.fork().recorded(s).each(func(g *Graph) bool { return yield(s, g) }) {
				return
			}
			r.begin(s)
			for _, l := range s.Lines {
				r.line(l)
			}
			r.end()
		}
	}
}

// each yields what a section worked each time that it began anew, in order, and last the graph itself.
func (g *Graph) each(yield func(*Graph) bool) bool {
	var list []*Graph
	for ; g != nil; g = g.Earlier {
		list = append(list, g)
	}
	for k := range list {
		g := list[len(list)-1-k]
		if k > 0 {
			g.Section += fmt.Sprintf(", part %d", k+1)
		}
		if !yield(g) {
			return false
		}
	}
	return true
}

// Len is the number of stitches and chains that the graph holds.
func (g *Graph) Len() int { return g.total }

// GraphOf gives the stitches of the named section (empty: the first that has rows). It reports false if there is
// no such section.
func GraphOf(x *ins.Text, section string, size int) (*Graph, bool) {
	for _, g := range Graphs(x, size, func(s *ins.Section) bool { return section == "" || s.Name == section }) {
		return g, true
	}
	return nil, false
}

// recorded works a section and keeps its stitches.
func (r *runner) recorded(s *ins.Section) *Graph {
	g := &Graph{Size: r.x.Sizes.Names[r.size], Terms: termsOf(r.x, s), size: r.size, Section: s.Name}
	if s.Name == "" {
		g.Section = r.x.Title
	}
	r.g = g
	r.begin(s)
	if r.fab != nil && r.known() {
		g.foundation(r.fab, 0, r.round) // what it goes on from
		g.held()
	}
	note := slipNote(r.x)
	for i, l := range s.Lines {
		g.edgesOf(r.x, l, note)
		g.Sided = g.Sided || l.Label != nil && l.Label.Side != 0
		ends := !slices.ContainsFunc(s.Lines[i+1:], func(l *ins.Line) bool { return l.Label != nil })
		if ends && l.Label == nil {
			r.fillRest(l)
		}
		if ends && g.repeats(r, l) {
			rest := *l
			if rest.Body = l.Body[1:]; len(rest.Body) == 0 {
				break
			}
			l = &rest
		}
		if len(r.cur.rows) == 0 && g.founded(r, s.Lines[i:]) {
			continue
		}
		r.line(l)
	}
	r.end()
	return g
}

// repeats reports whether a line only says that rows worked before are repeated, and not how often: they stand in the
// graph once, and it tells which they are.
func (g *Graph) repeats(r *runner, l *ins.Line) bool {
	if l.Label != nil || len(l.Unread) > 0 || len(l.Body) == 0 {
		return false
	}
	n, ok := l.Body[0].(*ins.RepeatRows)
	if !ok || n.HasTimes || n.Until.Set() || n.ToRow.Set() || n.Course.Rows.Set() || n.Every.Set() || len(n.Then) > 0 {
		return false
	}
	list, ok := r.bodies(l, n)
	if !ok || len(list) < 2 {
		return false
	}
	from, to := list[0].no, list[len(list)-1].no
	if from <= 0 || to-from != len(list)-1 {
		return false
	}
	g.Again = [2]int{from, to}
	return true
}

// begin starts the record of one row over below; before it lie so many stitches that the row
// before, turned short, has not come to.
func (g *Graph) begin(w *work, below *fabric, flipped bool, beyond *fabric, l *ins.Line, body []ins.Item, r *runner) {
	g.cur = GraphRow{Number: -1, Round: r.round, Line: l.At.Line, RowEnds: alongEnds(l.Body)}
	if r.round {
		g.cur.Joined = joined(l.Body)
		g.cur.Spiral = !g.cur.Joined
	} else if len(g.Rows) == 0 && ringAlone(l.Body) {
		g.cur.Joined = true
	}
	if r.no >= 0 {
		g.cur.Number = r.no + 1
	}
	g.into(l.Into)
	g.cur.told = l.Label != nil
	g.flip, g.under, g.yarn, g.doubt, g.said, g.oneChain = 0, 0, g.before, "", -1, false
	if l.Stated != nil {
		g.said = r.said(l)
	}
	if l.Doubted {
		g.doubt = misfits
	}
	if g.Terms == stitch.US && saysTriple(l.Words) {
		g.doubt = "triple treble has no symbol here"
	}
	if name := untold(l.Body); name != "" {
		g.doubt = "of what stitches a " + name + " is"
	}
	if flipped {
		for _, q := range below.runs {
			g.flip += q.elements()
		}
	}
	g.first, g.rolled = 0, 0
	if r.round && r.fab != nil && beginsAtLast(r.fab, flipped, body) {
		switch {
		case flipped:
			g.first = 1
		case l.Into == 0:
			g.rolled = len(g.places)
		}
	}
	if beyond != nil && flipped {
		for i := beyond.stitches(); i > 0; i-- {
			g.idle(-i)
		}
	}
	w.g = g
	w.rec = g.record
}

// record puts in n stitches, or an arch or a turning chain of so many chains, worked into feet as nd says.
func (g *Graph) record(kind *stitch.Stitch, n, chain int, feet []int, nd ins.Item) {
	g.cur.closePicot(kind, nd)
	if st, ok := nd.(*ins.Stitch); ok && n == 1 && st.Kind == nil && !st.Inc && !st.Dec && st.Call == nil {
		kind = g.asItComes(kind, feet, st.Again)
	}
	s := GraphStitch{Stitch: kind, Chain: chain, Feet: make([]int, len(feet)), Counts: true}
	for i, f := range feet {
		s.Feet[i] = g.index(g.below(f))
		s.Under = s.Under || g.under > 0 && f >= g.under
	}
	g.afar(nd)
	g.adrift(nd, kind, feet)
	at := s.Feet
	s.Colour = g.colourOf(nd, kind, at)
	s.placed(nd, feet)
	s.Between = s.Between && len(at) == 1 && at[0] < len(g.Rows[len(g.Rows)-1].Stitches) && g.Rows[len(g.Rows)-1].Stitches[at[0]].Stitch != nil
	switch {
	case kind != nil && kind.Cross != nil:
		g.crossing(s)
		return
	case chain > 0:
		s.Turning = kind != nil
		s.Counts = s.Turning || !g.cur.behindPicot()
		g.put(s)
		return
	}
	s.Counts = kind == nil || kind.ID != "picot" && kind != boundOff
	for range min(n, maxGraph-g.total+1) {
		g.put(s)
	}
}

// adrift notes that a knitted stitch is worked into more places than the row below has.
func (g *Graph) adrift(nd ins.Item, kind *stitch.Stitch, feet []int) {
	g.cur.Picked = g.cur.Picked || is[*ins.PickUp](nd)
	if kind == nil || kind.Craft != stitch.Knitting {
		return
	}
	st, ok := nd.(*ins.Stitch)
	if ok && st.Kind == kind && len(feet) < kind.Uses || slices.ContainsFunc(feet, func(f int) bool { at := g.below(f); return at < 0 || at >= len(g.places) }) {
		g.unfounded()
	}
}

// asItComes is the knit or purl stitch that a stitch of the row below looks like from the side that is worked: after a turn a
// knit stitch looks like a purl one.
func (g *Graph) asItComes(kind *stitch.Stitch, feet []int, again *ins.Again) *stitch.Stitch {
	k := len(g.Rows) - 1
	if kind == nil || kind.Craft != stitch.Knitting || len(feet) != 1 || k < 0 {
		return kind
	}
	at := g.index(g.below(feet[0]))
	if at >= len(g.Rows[k].Stitches) || g.Rows[k].Stitches[at].Stitch == nil {
		return kind
	}
	if again != nil {
		return g.again(&g.Rows[k].Stitches[at], again)
	}
	switch s := g.Rows[k].Stitches[at].Stitch; {
	case s.ID == "edge":
		return s
	case g.Rows[k].Start && s.ID == "k": // cast on, it looks like nothing yet
		return stitch.ByID(map[bool]string{false: "k", true: "p"}[g.wrong && !g.cur.Round])
	case (s.Base == "p" || s.ID == "p") != (g.flip > 0):
		return stitch.ByID("p")
	}
	return stitch.ByID("k")
}

// again is the stitch of a mosaic over one of the row below.
func (g *Graph) again(below *GraphStitch, n *ins.Again) *stitch.Stitch {
	if n.Yarn != "" && below.Colour == "" {
		g.unfounded()
	}
	if n.Yarn != "" && strings.EqualFold(below.Colour, n.Yarn) || n.Yarn == "" && (below.Stitch.ID == "sl" || below.Stitch.Base == "sl") {
		return n.Slip
	}
	return n.Work
}

// placed notes where the words of an instruction put a stitch: a loop, a gap, the ring, the end of a row.
func (s *GraphStitch) placed(nd ins.Item, feet []int) {
	if st, ok := nd.(*ins.Stitch); ok {
		s.Loop = st.Loop
	}
	for _, p := range placesOf(nd) {
		if p.Loop != ins.BothLoops {
			s.Loop = p.Loop
		}
		s.Between = s.Between || p.Unit.Between
		s.Ring = s.Ring || p.Kind == ins.InRing
		if p.Kind == ins.RowEnds && len(feet) == 1 {
			s.RowEnd, s.Feet = feet[0]+1, nil
		}
	}
}

// colourOf is the yarn of a stitch: the one that it names; of a slipped one that of the stitch
// slipped; else the one that was taken up last.
func (g *Graph) colourOf(n ins.Item, kind *stitch.Stitch, feet []int) string {
	st, ok := n.(*ins.Stitch)
	again := ok && st.Again != nil
	if ok && st.Colour != "" && !again {
		return st.Colour
	}
	if k := len(g.Rows) - 1; k >= 0 && kind != nil && (kind.Base == "sl" || again && kind.ID == "sl") && len(feet) == 1 && feet[0] < len(g.Rows[k].Stitches) {
		return g.Rows[k].Stitches[feet[0]].Colour
	}
	return g.yarn
}

// takeUp takes the yarn that words before a line name, or the line itself if it is no row.
func (g *Graph) takeUp(l *ins.Line) {
	g.oneYarn = false
	g.take(l.Yarn)
	for _, n := range l.Body {
		if n, ok := n.(*ins.Nothing); ok && l.Label == nil {
			g.take(n.Colour)
		}
	}
}

// take takes up a yarn, if there is one.
func (g *Graph) take(yarn string) {
	if g != nil && yarn != "" {
		g.before, g.oneYarn = yarn, true
	}
}

// below is the number in its row of the f-th element below, as the row that is worked meets it.
func (g *Graph) below(f int) int {
	if g.under > 0 && f >= g.under {
		return max(g.end-(f-g.under), 0)
	}
	if k := len(g.places); g.cur.Round && k > 0 && f >= k { // a round that came to where it began
		f -= k
	}
	switch {
	case g.rolled > 0 && f == 0:
		return g.rolled - 1
	case g.rolled > 0:
		return f - 1
	case g.flip == 0:
		return f
	case g.first > 0 && f == 0:
		return 0
	}
	return g.flip - 1 + g.first - f
}

// into works the row that was begun into the row of that number, behind those that follow it; 0: into the last.
func (g *Graph) into(number int) {
	for i := len(g.Rows) - 2; number > 0 && i >= 0; i-- {
		if g.Rows[i].Number == number {
			g.cur.Back = len(g.Rows) - 1 - i
			g.places = g.Rows[i].places(g.places[:0])
			return
		}
	}
}

// closeArch closes the round that is worked with a stitch into its first one, which stands for the last chains of its last arch.
func (g *Graph) closeArch(kind *stitch.Stitch) {
	if k := len(g.cur.Stitches) - 1; k >= 0 && g.cur.Stitches[k].Stitch == nil {
		g.cur.Stitches[k].Closed = kind
		g.cur.Spiral = false
	}
}

// turnAt goes on along the other side of a foundation of so many places, from the given one back.
func (g *Graph) turnAt(places, from int) { g.under, g.end = places, from }

// chained adds k chains at the end of the row before.
func (g *Graph) chained(k int) {
	at := len(g.Rows) - 1
	if at < 0 || g.Rows[at].Unknown {
		return
	}
	row := &g.Rows[at]
	for range k {
		if g.total++; g.total > maxGraph {
			g.Cut = true
			return
		}
		g.places = append(g.places, len(row.Stitches))
		row.Stitches = append(row.Stitches, GraphStitch{Stitch: chainStitch(), Counts: true, Colour: g.before})
	}
}

// idle records that the row does not work the i-th place below: it waits on the needle.
func (g *Graph) idle(i int) {
	i = g.below(i)
	at := g.index(i)
	below := g.Rows[len(g.Rows)-1].Stitches
	if i < 0 || at >= len(below) {
		return
	}
	g.put(GraphStitch{Stitch: below[at].Stitch, Feet: []int{at}, Idle: true, Colour: below[at].Colour})
}

// waits records that the next k places from the given one on are not worked; the first may be wrapped before the turn.
func (g *Graph) waits(from, k int, wrapped bool) {
	at := len(g.cur.Stitches)
	for i := range k {
		g.idle(from + i)
	}
	if wrapped && at < len(g.cur.Stitches) {
		g.cur.Stitches[at].Wrapped = true
	}
}

// index turns the number of a counted place of the row before into its index.
func (g *Graph) index(element int) int {
	if element >= 0 && element < len(g.places) {
		return g.places[element]
	}
	if len(g.places) == 0 {
		return max(element, 0)
	}
	return g.places[len(g.places)-1]
}

// onStitch reports whether the f-th element below is a stitch, and no space.
func (g *Graph) onStitch(f int) bool {
	if g == nil || f < 0 || len(g.Rows) == 0 || len(g.places) == 0 {
		return false
	}
	at, row := g.index(g.below(f)), &g.Rows[len(g.Rows)-1-g.cur.Back]
	return at < len(row.Stitches) && row.Stitches[at].Stitch != nil && !row.Stitches[at].apart
}

// keep adds a row, and notes where its counted places are.
func (g *Graph) keep(row GraphRow) {
	g.slip(&row)
	g.onlyLastJoined(&row)
	g.Rows = append(g.Rows, row)
	g.places = row.places(g.places[:0])
}

// onlyLastJoined leaves the round before open where both are of one line, the work goes on in a spiral above it, and no chain raises them: Rnds 4-6: Sc in
// each st. Sl st in next st.
func (g *Graph) onlyLastJoined(row *GraphRow) {
	k := len(g.Rows) - 1
	if k < 1 || !row.Joined || !g.Rows[k].Joined || !row.Round || g.Rows[k].Line != row.Line || !g.Rows[k-1].Spiral || len(row.Stitches) > 0 && row.Stitches[0].Turning {
		return
	}
	g.Rows[k].Joined, g.Rows[k].Spiral = false, true
}

// places are the indices of what can be worked into.
func (row *GraphRow) places(out []int) []int {
	for i, s := range row.Stitches {
		if s.Counts || s.Idle {
			out = append(out, i)
		}
		if s.apart { // its chains are a space beside the stitch that they count as
			out = append(out, i)
		}
	}
	return out
}

func (g *Graph) put(s GraphStitch) {
	if g.total++; g.total > maxGraph {
		g.Cut = true
		return
	}
	g.cur.Stitches = append(g.cur.Stitches, s)
}

// lastInTurning puts the stitch worked last into the turning chain at the end of a flat row, and not into the space beside it.
func (g *Graph) lastInTurning() {
	if g == nil || g.cur.Round || g.flip == 0 || len(g.cur.Stitches) == 0 || len(g.Rows) == 0 {
		return
	}
	last, below := &g.cur.Stitches[len(g.cur.Stitches)-1], g.Rows[len(g.Rows)-1].Stitches
	if last.Stitch == nil { // a stitch behind this chain is not told elsewhere
		g.unfounded()
	}
	if len(below) > 1 && below[0].Turning && below[0].Counts && len(last.Feet) == 1 && last.Feet[0] == 1 && below[1].Stitch == nil {
		last.Feet = []int{0}
	}
}

// uncounted records a turning chain that does not count as a stitch.
func (g *Graph) uncounted(k int) {
	g.put(GraphStitch{Chain: k, Turning: true})
}

// psso joins the slipped stitch to the one that it is passed over.
func (g *Graph) psso() {
	k := len(g.cur.Stitches)
	if k < 2 {
		return
	}
	a, b := g.cur.Stitches[k-2], g.cur.Stitches[k-1]
	if a.Stitch == nil || a.Stitch.Base != "sl" || b.Stitch == nil || b.Stitch.Base == "sl" { // sl 1, k2, psso: over both
		g.doubt = "what the slipped stitch is passed over"
		g.cur.Stitches = g.cur.Stitches[:k-1]
		return
	}
	b.Feet = append(append([]int(nil), a.Feet...), b.Feet...)
	id := "skpo"
	switch {
	case len(b.Feet) >= 3 && b.Stitch != nil && b.Stitch.ID == "skpo": // two slipped, one knitted
		id = "s2kp"
	case len(b.Feet) >= 3:
		id = "sk2p"
	}
	b.Stitch = stitch.ByID(id)
	g.cur.Stitches = append(g.cur.Stitches[:k-2], b)
}

// commit keeps the row that was begun last.
func (g *Graph) commit(side int, name string) {
	g.cur.RS = side != 2
	if side == 0 && g.flip > 0 {
		g.cur.RS = g.next()
	}
	g.cur.Name = name
	if g.doubt != "" {
		g.cur.guessed(g.doubt, g.said)
		g.lost = g.lost || g.said < 0 && !countKnown[g.doubt] // what stands on it would be a guess
	}
	g.before = g.yarn
	if k := len(g.cur.Stitches) - 1; k > 0 && g.cur.Stitches[k].Stitch != nil && g.cur.Stitches[k].Stitch.ID == "slst" { // *5 dc in ch sp, sl st in next sc; rep from * around
		g.cur.Spiral = false
	}
	g.cur.travel()
	g.setUp()
	if len(g.cur.Stitches) == 0 && len(g.places) == 0 && g.cur.Unread == "" && !g.lost && g.cur.told {
		g.cur.Unread, g.lost = "what it is worked into is not known", true
	}
	if g.lost {
		g.cur.Stitches, g.cur.Unknown = nil, true
	}
	if !g.Cut {
		g.keep(g.cur)
	}
	g.lost = g.lost || g.cur.Round && g.cur.Amiss != "" // it is not what is meant
	g.cur = GraphRow{}
}

// countKnown are reasons why it is not sure where a row stands that leave no doubt of what it makes.
var countKnown = map[string]bool{"it is not clear which space is meant": true, "stitches go into some that an earlier row skipped": true, "stitches go into a row further down": true, "stitches go into a chain within it": true, aloneClosed: true}

// setUp takes their numbers from knitted rows told without one, once row 1 follows them.
func (g *Graph) setUp() {
	if !g.cur.told || g.cur.Number != 1 {
		return
	}
	for i := range g.Rows {
		if row := &g.Rows[i]; !row.Start && (!row.told || row.Name != "") && len(row.Stitches) > 0 && (row.Name != "" || row.Stitches[0].Stitch != nil && row.Stitches[0].Stitch.Craft == stitch.Knitting) {
			row.Number, row.Name = -1, cmp.Or(row.Name, "set-up")
		}
	}
}

// guessed keeps of a row no more than how many stitches and arches it makes, or says that it makes.
func (row *GraphRow) guessed(words string, said int) {
	row.Unread = words
	kept := row.Stitches[:0]
	for _, s := range row.Stitches {
		switch {
		case s.Stitch == nil:
			kept = append(kept, s)
		case s.Counts:
			kept = append(kept, GraphStitch{Counts: true})
		}
	}
	row.Stitches = kept
	if row.arches() == 0 && said > 0 && said <= maxGraph {
		row.Stitches = make([]GraphStitch, said)
		for i := range row.Stitches {
			row.Stitches[i].Counts = true
		}
	}
}

// counted is how many stitches of a row stand in its count.
func (row *GraphRow) counted() (n int) {
	for _, s := range row.Stitches {
		if s.Counts && s.Stitch != nil && s.Stitch.ID != "slst" {
			n++
		}
	}
	return n
}

// chains is how many chains the arches of a row have.
func (row *GraphRow) chains() (n int) {
	for _, s := range row.Stitches {
		if s.Stitch == nil && !s.Turning {
			n += s.Chain
		}
	}
	return n
}

// arches is how many chain arches a row has.
func (row *GraphRow) arches() int {
	n := 0
	for _, s := range row.Stitches {
		if s.Stitch == nil && s.Chain > 0 && !s.Turning {
			n++
		}
	}
	return n
}

// anew parts what was recorded from what the section begins next with stitches of its own; rows told before are a graph by themselves.
func (g *Graph) anew() {
	if slices.ContainsFunc(g.Rows, func(row GraphRow) bool { return row.told && !row.Start && len(row.Stitches) > 0 }) {
		before := *g
		before.places = nil
		g.Earlier, g.From, g.Again, g.Cut = &before, nil, [2]int{}, false
	}
	g.Rows, g.places, g.total, g.lost = nil, g.places[:0], 0, false
}

// held marks the row that was recorded last as one that stood before.
func (g *Graph) held() {
	if k := len(g.Rows) - 1; k >= 0 {
		g.Rows[k].Held = true
	}
}

// foundation records the row that a section begins from: chains, cast-on stitches, or
// stitches that a row before left.
func (g *Graph) foundation(f *fabric, line int, round bool) {
	row := GraphRow{Start: true, Line: line, Round: round, RS: true}
	for _, q := range f.runs {
		if q.space() {
			row.Stitches = append(row.Stitches, GraphStitch{Chain: q.chain, Counts: true})
			continue
		}
		for range q.n {
			if g.total++; g.total > maxGraph {
				g.Cut = true
				break
			}
			s := GraphStitch{Stitch: q.kind, Counts: true, Colour: g.before}
			row.Joined = round && q.kind != nil && q.kind.ID == "ch"
			row.Stitches = append(row.Stitches, s)
		}
	}
	g.keep(row)
}

// next reports whether the next row is a right-side row if nothing says so and the work
// is turned: the first one is.
func (g *Graph) next() bool {
	k := len(g.Rows) - 1
	return k < 0 || g.Rows[k].Start || !g.Rows[k].RS
}

// even records rows worked even over what r has.
func (g *Graph) even(r *runner, rows int) {
	g.planned(r, make([]edges, min(rows, maxGraph)), 0)
}

// closePicot takes, where a picot is made by a stitch, the chain made last for that of a picot, but for the chains that lead up to it.
func (row *GraphRow) closePicot(kind *stitch.Stitch, nd ins.Item) {
	k := len(row.Stitches) - 1
	if k < 0 || kind == nil || kind.ID != "picot" || !closesPicot(nd) || row.Stitches[k].Stitch != nil {
		return
	}
	if last := &row.Stitches[k]; beyondPicot(nd, last.Chain) > 0 {
		last.Chain = beyondPicot(nd, last.Chain)
	} else {
		row.Stitches = row.Stitches[:k]
	}
}

// behindPicot reports whether what is made next goes on with the chain before a picot: they are one space.
func (row *GraphRow) behindPicot() bool {
	k := len(row.Stitches)
	for k > 0 && row.Stitches[k-1].Stitch != nil && row.Stitches[k-1].Stitch.ID == "picot" {
		k--
	}
	return k > 0 && k < len(row.Stitches) && row.Stitches[k-1].Stitch == nil && row.Stitches[k-1].Chain > 0
}

// closesPicot reports whether a stitch closes the chain before it to a picot.
func closesPicot(n ins.Item) bool {
	st, ok := n.(*ins.Stitch)
	return ok && st.Kind != nil && (st.Kind.ID == "slst" || st.Kind.ID == "sc")
}

// vague records rows of which the text does not say where they are shaped: nothing is drawn by a guess.
func (g *Graph) vague(r *runner, l *ins.Line, rows int) {
	g.lost = true
	for k := range min(rows, maxGraph) {
		row := GraphRow{Number: -1, Round: r.round, Line: l.At.Line, Unread: "the text does not say where these stitches fall", Unknown: true, RS: true}
		if r.no >= 0 {
			row.Number = r.no + 1 + k
		}
		if !r.round {
			row.RS = g.next()
		}
		g.keep(row)
	}
}

// termsOf are the terms that a piece is written in.
func termsOf(x *ins.Text, s *ins.Section) stitch.Terms {
	if len(s.Lines) == 0 {
		return x.Terms
	}
	return x.TermsAt(s.Lines[0].At.Line)
}
