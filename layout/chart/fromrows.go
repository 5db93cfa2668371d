package chart

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"flatwright/schematic/rows"
	"flatwright/schematic/stitch"
)

// FromGraph takes the stitches of a section from its graph. It reports false if the
// graph has no stitches.
func FromGraph(g *rows.Graph) (*Work, bool) {
	w := &Work{Title: g.Section, Terms: g.Terms, Again: g.Again, Assumed: g.Assumed}
	for i := range g.Rows {
		w.take(&g.Rows[i])
	}
	if len(w.Rows) == 0 { // which Check tells
		return w, len(w.missing) > 0
	}
	if w.craft() == stitch.Crochet {
		w.pickedUp()
	}
	w.grown(g)
	w.oneChain()
	w.hookEnd()
	w.alongChain()
	w.sides()
	if !g.Sided {
		w.rightSides()
	}
	w.turnFabrics()
	w.starts()
	w.inRing()
	w.overRing()
	for i := range w.Rows {
		w.Rows[i].Spiral = w.Rows[i].Spiral && w.Rows[i].winds()
	}
	return w, true
}

// take adds a row of the graph. Rows that nothing is known of are noted as gaps.
func (w *Work) take(r *rows.GraphRow) {
	if len(r.Stitches) == 0 {
		w.gap(r)
		return
	}
	row := Row{Number: r.Number, Line: r.Line, Name: r.Name, Wrong: !r.RS, taken: !r.RS, fabric: r.Fabric, Sided: r.Sided, Round: r.Round, Base: r.Start, Held: r.Held, Joined: r.Joined, Spiral: r.Spiral, Unread: r.Unread, Amiss: r.Amiss, Star: r.Star,
		ring: slices.ContainsFunc(r.Stitches, func(s rows.GraphStitch) bool { return s.Ring })}
	row.St = stitchesOf(r)
	row.petalSides()
	w.standOver(&row)
	if len(w.Rows) > 0 && !row.Base && !row.Round && (r.RowEnds || row.loose() && (r.Picked || !row.knitted()) && row.Unread == "" && !w.Rows[len(w.Rows)-1].Base) {
		row.alongEdge(w.Rows)
	}
	if r.Back == 0 && !w.astray {
		w.behindPetals(&row)
	}
	row.closesRing(len(w.Rows) == 0)
	if words, astray := w.leadsAstray(&row, r.Back); astray {
		w.astray = w.astray || r.Back == 0
		w.gap(&rows.GraphRow{Number: r.Number, Line: r.Line, Name: r.Name, Round: r.Round, Unread: words, Unknown: true})
		return
	}
	w.astray = false
	row.Missing, w.missing = w.missing, nil
	w.Rows = append(w.Rows, row)
}

// stitchesOf are the stitches of a row as a chart draws them.
func stitchesOf(r *rows.GraphRow) []St {
	out := make([]St, len(r.Stitches))
	for k := range r.Stitches {
		s := &r.Stitches[k]
		out[k] = St{Kind: s.Stitch, Chain: s.Chain, Feet: s.Feet, Loop: Loop(s.Loop), Turn: s.Turning, Counts: s.Counts,
			Colour: s.Colour, Cross: s.Cross, At: s.At, Gap: s.Between, Idle: s.Idle, Wrap: s.Wrapped, Travel: s.Travel, Under: s.Under, Close: s.Closed}
		if s.Stitch != nil && s.Stitch.Craft == stitch.Knitting && Loop(s.Loop) == BackLoop {
			out[k].Kind = s.Stitch.ThroughBack()
		}
		if out[k].Kind != s.Stitch {
			out[k].Loop = BothLoops
		}
		if r.Start && s.Stitch != nil {
			out[k].Chain = 0
		}
		if s.Stitch == nil && s.Chain == 0 {
			out[k].Kind = unread
		}
	}
	return out
}

// petalSides stands the chains upright that lead from a slip stitch up to tall stitches in its place, or down from them to one.
func (r *Row) petalSides() {
	for i := 0; r.Round && i < len(r.St); i++ {
		if s := &r.St[i]; s.arch() && s.Chain > 1 && s.Chain <= mostSide {
			if tall := cmp.Or(r.side(i, 1), r.side(i, -1)); tall != nil {
				s.Turn, s.Side, s.Counts, s.Kind, s.Feet = true, true, false, tall.Kind, tall.Feet
			}
		}
	}
}

// mostSide is how many chains the side of a petal has at most: longer ones are arches of their own.
const mostSide = 6

// side is the tall stitch beside the i-th, on the given side, if the chains between it and a slip stitch in its place are the side of
// a petal; nil if they are not.
func (r *Row) side(i, d int) *St {
	k, slip := i+d, i-d
	if k < 0 || k >= len(r.St) {
		return nil
	}
	tall := &r.St[k]
	if tall.Kind == nil || tall.Turn || tall.Kind.Craft != stitch.Crochet || tall.Kind.Height < 2 || len(tall.Feet) != 1 {
		return nil
	}
	if slip < 0 && slices.ContainsFunc(r.St[:len(r.St)-1], func(s St) bool { return s.Kind != nil && s.Kind.ID == "slst" }) { // the first petal of several
		return tall
	}
	if slip < 0 || slip >= len(r.St) || r.St[slip].Kind == nil || r.St[slip].Kind.ID != "slst" || !slices.Equal(r.St[slip].Feet, tall.Feet) {
		return nil
	}
	return tall
}

// closesRing makes a foundation of a first round that only closes a chain to a ring.
func (r *Row) closesRing(first bool) {
	if !first || !r.Joined || len(r.St) != 1 || r.St[0].Kind != nil || r.St[0].Chain < 2 {
		return
	}
	st := make([]St, r.St[0].Chain)
	for i := range st {
		st[i] = St{Kind: stitch.ByID("ch"), Counts: true, Colour: r.St[0].Colour}
	}
	r.Base, r.Number, r.St = true, 0, st
}

// leadsAstray reports whether a row can't be drawn, and why: words are empty for one that stands on such a row.
func (w *Work) leadsAstray(row *Row, back int) (words string, astray bool) {
	switch {
	case row.Base:
		return "", false
	case w.astray:
		return "", true
	case row.onlyChains():
		return "nothing is worked into the row below", true
	case back > 0:
		return "it is worked into a round further down", !w.passBehind(row, back)
	case row.Edge:
		return "", false
	case row.outside(w.Rows), row.hangs(), row.adrift(w.Rows):
		return "what it is worked into is not known", true
	case len(w.Rows) > 0 && row.twisted(&w.Rows[len(w.Rows)-1]):
		return "it does not go around the round below", true
	}
	return "", false
}

// onlyChains reports whether a row is chains alone that stand on nothing.
func (r *Row) onlyChains() bool {
	for i := range r.St {
		if s := &r.St[i]; s.Kind != nil && !s.Turn || len(s.Feet) > 0 {
			return false
		}
	}
	return true
}

// mostTwist is how far the stitches of a round stand on average from their feet once both rounds share the whole circle, in
// radians: 0.26 is the most among the texts of the test data, 0.65 the least of rounds that were read wrong.
const mostTwist = 0.45

// twisted reports whether the stitches of a round lie around otherwise than what they are worked into.
func (r *Row) twisted(below *Row) bool {
	if !r.Round || !below.Round || r.Unread != "" || below.Unread != "" {
		return false
	}
	at, from := r.around(), below.around()
	kids := make([][2]float64, len(from)) // of each place: the sum of the directions in which its stitches stand from it
	for i := range r.St {
		for _, f := range r.St[i].Feet {
			sin, cos := math.Sincos(at[i] - from[f])
			kids[f][0] += sin
			kids[f][1] += cos
		}
	}
	sum, most, n := [2]float64{}, 0.0, 0.0
	for _, k := range kids {
		if l := math.Hypot(k[0], k[1]); l > 0 {
			sum[0] += k[0] / l
			sum[1] += k[1] / l
		}
	}
	turned := math.Atan2(sum[0], sum[1])
	for _, k := range kids {
		if k != [2]float64{} {
			d := math.Atan2(k[0], k[1]) - turned
			most += math.Abs(d - around*math.Round(d/around))
			n++
		}
	}
	return n > 0 && most/n > mostTwist
}

// around is where the stitches of a round stand on the whole circle by the room that each takes.
func (r *Row) around() []float64 {
	out, x := make([]float64, len(r.St)), 0.0
	for i := range r.St {
		n := node{st: &r.St[i]}
		n.measure()
		out[i] = x + n.half
		x += 2 * n.half
	}
	for i := range out {
		if out[i] *= around / x; r.Wrong {
			out[i] = -out[i]
		}
	}
	return out
}

// winds reports whether a round that is not joined rises into the next: one of stitches beside each other does, arches and
// petals close by themselves.
func (r *Row) winds() bool {
	same := 0
	for i := range r.St {
		s := &r.St[i]
		if s.arch() {
			return false
		}
		if i == 0 || len(s.Feet) != 1 || len(r.St[i-1].Feet) != 1 || s.Feet[0] != r.St[i-1].Feet[0] {
			same = 0
		}
		if same++; same > 3 && r.Round && !r.Base {
			return false
		}
	}
	return true
}

// outside reports whether a stitch of a row is worked into a place that the row below does not have.
func (r *Row) outside(below []Row) bool {
	places := 0
	if n := len(below); n > 0 {
		places = len(below[n-1].St)
	}
	return r.lastUsed() >= places
}

// hangs reports whether a row stands on the one below, and a stitch of it on nothing.
func (r *Row) hangs() bool {
	if r.Round || r.Unread != "" || r.lastUsed() < 0 {
		return false
	}
	for i := range r.St {
		if s := &r.St[i]; len(s.Feet) == 0 && s.Kind != nil && s.Kind.Craft == stitch.Crochet && !s.Turn && s.Kind.Key != "picot" && s.Kind.Uses > 0 {
			return true
		}
	}
	return false
}

// adrift reports whether knitted stitches stand on nothing behind a row that was worked.
func (r *Row) adrift(below []Row) bool {
	n := len(below)
	return n > 0 && !below[n-1].Base && r.Unread == "" && r.loose() && r.knitted()
}

// knitted reports whether a row begins with a stitch of knitting.
func (r *Row) knitted() bool {
	return len(r.St) > 0 && r.St[0].Kind != nil && r.St[0].Kind.Craft == stitch.Knitting
}

// standOver puts the stitches of a row that was not read over those of the row below, if
// they use as many; and those of a round that is known to use them all, one after another.
func (w *Work) standOver(row *Row) {
	k := len(w.Rows)
	if k == 0 || row.Unread == "" && (!row.Round || row.ring || w.Rows[k-1].Base || !row.loose()) {
		return
	}
	places := w.Rows[k-1].countedPlaces()
	if uses, ok := row.uses(); !ok || uses != len(places) {
		return
	}
	if !row.Round {
		slices.Reverse(places)
	}
	for i := range row.St {
		s := &row.St[i]
		if s.Kind == nil {
			continue
		}
		s.Feet, places = places[:s.Kind.Uses:s.Kind.Uses], places[s.Kind.Uses:]
	}
}

// countedPlaces are the stitches of a row that count, arches left out.
func (row *Row) countedPlaces() (places []int) {
	for i, s := range row.St {
		if s.Counts && !s.arch() {
			places = append(places, i)
		}
	}
	return places
}

// uses is how many stitches of the row below a row takes, if all but its turning chains are of a kind.
func (row *Row) uses() (n int, ok bool) {
	for i := range row.St {
		switch s := &row.St[i]; {
		case s.Kind != nil:
			n += s.Kind.Uses
		case !s.Turn:
			return 0, false
		}
	}
	return n, true
}

// gap notes a row without a stitch to draw: one that was not read, or that stands on one.
func (w *Work) gap(r *rows.GraphRow) {
	if r.Unread == "" && !r.Unknown {
		return
	}
	w.astray = w.astray || r.Number > 0
	m := Missing{Number: r.Number, Name: r.Name, Words: r.Unread, Round: r.Round, Line: r.Line}
	if k := len(w.missing); k > 0 && m.Words == w.missing[k-1].Words {
		w.missing[k-1].To = max(w.missing[k-1].To, r.Number)
		return
	}
	w.missing = append(w.missing, m)
}

// unread stands for a stitch of a row that was not read.
var unread = &stitch.Stitch{ID: "unread", US: "not read", UK: "not read", Uses: 1, Makes: 1, Key: "unread", Base: "unread"}

// grown says out of what stitches a work grows that begins with held ones. A foundation
// that nothing is worked into, such as what another piece left, is none.
func (w *Work) grown(g *rows.Graph) {
	base := &w.Rows[0]
	if base.Base && base.Held && len(w.Rows) > 1 && !w.Rows[1].Edge && w.Rows[1].loose() {
		w.Rows = w.Rows[1:]
		return
	}
	if !base.Held {
		return
	}
	n := base.counted()
	w.From = plural(n, "held stitch")
	if o := g.From; o != nil && o.Last-o.First+1 == n {
		w.From = fmt.Sprintf("stitches %d to %d of the %d of ", o.First, o.Last, o.All)
		if o.Row > 0 {
			w.From += fmt.Sprintf("row %d of ", o.Row)
		}
		w.From += o.Section + ", counted from the right-hand edge"
	}
}

// loose reports whether no stitch of the row stands on the row before it.
func (r *Row) loose() bool {
	for i := range r.St {
		if len(r.St[i].Feet) > 0 {
			return false
		}
	}
	return len(r.St) > 0
}

// pickedUp draws stitches that are picked up in a crochet work, which the text gives no
// kind, as the least stitch that makes a row, and those of a crossing of which nothing is said as not read.
func (w *Work) pickedUp() {
	for r := range w.Rows {
		row, of := &w.Rows[r], 0
		for i := range row.St {
			s := &row.St[i]
			switch {
			case s.Kind == nil || s.Kind.Craft != stitch.Knitting:
				of = 0
			case s.Kind.Uses > 1: // each stands on one of its places
				row.Unread = "how " + s.Kind.USAbbr + " is crossed"
				if k := of % s.Kind.Uses; k < len(s.Feet) {
					s.Feet = s.Feet[k : k+1]
				}
				of++
				s.Kind = unread
			default:
				s.Kind = stitch.ByID("sc")
			}
		}
	}
}

// alongEdge shares the stitches of a row among the ends of the rows worked so far, the
// last one first.
func (r *Row) alongEdge(below []Row) {
	var ends []int
	for i := len(below) - 1; i >= 0; i-- {
		if below[i].Edge {
			return // an edge on an edge is drawn as a row on a row
		}
		if !below[i].Base {
			ends = append(ends, i)
		}
	}
	n := 0
	for i := range r.St {
		if s := &r.St[i]; s.Kind != nil && !s.Turn && s.Kind.Key != "picot" {
			n++
		}
	}
	if n == 0 || len(ends) == 0 {
		return
	}
	r.Edge, r.Wrong = true, below[len(below)-1].Wrong
	k := 0
	for i := range r.St {
		s := &r.St[i]
		s.Feet = nil
		if s.Kind != nil && !s.Turn && s.Kind.Key != "picot" {
			s.Feet = []int{ends[k*len(ends)/n]}
			k++
		}
	}
}

// sides tells right from wrong side where the text does not: rows that meet the row
// below from its end are worked from the other side, and those before the first row of which the text tells it go by that.
func (w *Work) sides() {
	from, told := 0, false
	for r := range w.Rows {
		row := &w.Rows[r]
		if r == 0 || row.Round || w.Rows[r-1].Base || row.Unread != "" {
			from, told = r, row.Sided
			continue
		}
		below, wrong := &w.Rows[r-1], row.Wrong
		row.Wrong = below.Wrong
		if !row.Edge && (row.backwards() || row.inOnePlace()) {
			row.Wrong = !below.Wrong
		}
		if row.Sided && !told && row.Wrong != wrong {
			w.turn(from, r+1)
		}
		told = told || row.Sided
	}
}

// turnFabrics gives rows of a knitted fabric that is named, and not its stitches, those of the side on which they turn out to be.
func (w *Work) turnFabrics() {
	for r := range w.Rows {
		row := &w.Rows[r]
		if !row.fabric || row.Round || row.Wrong == row.taken {
			continue
		}
		for i := range row.St {
			if k := row.St[i].Kind; k != nil && k.ID == "k" {
				row.St[i].Kind = stitch.ByID("p")
			} else if k != nil && k.ID == "p" {
				row.St[i].Kind = stitch.ByID("k")
			}
		}
	}
}

// turn shows the rows of a stretch from their other side.
func (w *Work) turn(from, to int) {
	for r := from; r < to; r++ {
		if row := &w.Rows[r]; !row.Base && !row.Round {
			row.Wrong = !row.Wrong
		}
	}
}

// rightSides turns the sides of knitted rows of which the text does not tell them, if all that shapes them stands in
// what would be wrong-side rows, and the others are purled, or all are knitted: lace and cables are worked on the right side.
func (w *Work) rightSides() {
	if w.craft() != stitch.Knitting {
		return
	}
	from := 0
	for r := range w.Rows {
		switch row := &w.Rows[r]; {
		case row.Round:
			return
		case row.Unread != "" || len(row.Missing) > 0: // how many rows it is, who knows: those behind it turn by themselves
			w.rightSide(from, r)
			from = r
		}
	}
	w.rightSide(from, len(w.Rows))
}

// rightSide turns the rows of a stretch in which nothing is unknown.
func (w *Work) rightSide(from, to int) {
	shaped, purled, garter := 0, 0, true
	for r := from; r < to; r++ {
		row := &w.Rows[r]
		if row.Base || row.Unread != "" {
			continue
		}
		knit, purl, other := row.worked()
		garter = garter && purl == 0
		switch {
		case other > 0 && !row.Wrong:
			return
		case other > 0:
			shaped++
		case !row.Wrong && purl > knit:
			purled++
		}
	}
	if shaped == 0 || purled == 0 && !garter {
		return
	}
	w.turn(from, to)
	w.Faced = true
}

// worked is how many stitches of a row are knitted, purled, and anything else.
func (r *Row) worked() (knit, purl, other int) {
	for i := range r.St {
		switch s := &r.St[i]; {
		case s.Idle || s.Break || s.Kind == nil || s.off():
		case s.Kind.ID == "k" && s.Cross == nil:
			knit++
		case s.Kind.ID == "p" && s.Cross == nil:
			purl++
		default:
			other++
		}
	}
	return knit, purl, other
}

// backwards reports whether the row goes over the row below from its end.
func (r *Row) backwards() bool { return r.course() < 0 }

// inOnePlace reports whether all of the row stands in one place, which tells no way.
func (r *Row) inOnePlace() bool {
	at := r.lastUsed()
	return at >= 0 && !slices.ContainsFunc(r.St, func(s St) bool { return slices.ContainsFunc(s.Feet, func(f int) bool { return f != at }) })
}

// forwards reports whether the row goes over the row below from its beginning.
func (r *Row) forwards() bool { return r.course() > 0 }

// course is more than 0 for a row that goes over the row below from its beginning, less
// for one that goes from its end: by where it begins and ends, as stitches within may cross.
func (r *Row) course() int {
	first, last := -1, -1
	for i := range r.St {
		if s := &r.St[i]; len(s.Feet) > 0 {
			if last = s.Feet[0]; first < 0 {
				first = last
			}
		}
	}
	return last - first
}

// starts puts the chain at the beginning of a row over the place that it stands for:
// the first one of the row below, or the space that the row begins in.
func (w *Work) starts() {
	for r := 1; r < len(w.Rows); r++ {
		row, below := &w.Rows[r], &w.Rows[r-1]
		if len(row.St) < 2 || row.Edge || !row.St[0].Turn || len(row.St[0].Feet) > 0 || row.St[0].Kind == nil {
			continue
		}
		if below.Base && !row.Round { // it stands at the end of the foundation
			continue
		}
		if first := row.startsOn(below); first >= 0 {
			row.St[0].Feet = []int{first}
		}
	}
}

// startsOn is the place of the row below over which the chain at the beginning stands; -1 if
// nothing tells.
func (row *Row) startsOn(below *Row) int {
	next := -1
	for i := 1; i < len(row.St) && next < 0; i++ {
		if len(row.St[i].Feet) > 0 {
			next = row.St[i].Feet[0]
		}
	}
	if next < 0 {
		return -1
	}
	first, step := 0, 1
	if row.backwards() && !row.Round {
		first, step = len(below.St)-1, -1
	}
	if first > next {
		step = -1
	}
	for first != next && below.St[first].Kind == nil { // a chain that does not count, or an arch
		first += step
	}
	if row.Round && next > first+1 && below.St[next].arch() {
		return next
	}
	return first
}

// hookEnd stands the chains at the end of a foundation, or of what was added to a row, up that no stitch is worked
// into: they are the first row's turning chain, and drawn once.
func (w *Work) hookEnd() {
	for r := 0; r+1 < len(w.Rows); r++ {
		base, row := &w.Rows[r], &w.Rows[r+1]
		if row.Round || len(row.St) == 0 || row.Edge || !base.Base && !row.St[0].Turn {
			continue
		}
		used := row.lastUsed()
		left := len(base.St) - 1 - used
		if used < 0 || left <= 0 || base.St[used].Kind == nil || base.St[used].Kind.ID != "ch" {
			continue
		}
		if row.St[0].Turn {
			w.passAtHook(r+1, left)
			base.St = base.St[:len(base.St)-min(left, row.chainsAtHook())]
			continue
		}
		up, keep := row.standUp(left)
		if up == nil {
			continue
		}
		base.St = base.St[:used+1+keep]
		row.St = append(up, row.St...)
		if r+2 < len(w.Rows) && !w.Rows[r+2].Edge {
			w.Rows[r+2].moveFeet(len(up), 0)
		}
	}
}

// passAtHook lays those of the chains skipped at the hook before row r down that it passes over there: as many as before the
// stitch in its last chain, which is as tall as the others. They are no space.
func (w *Work) passAtHook(r, left int) {
	row := &w.Rows[r]
	if len(row.St) < 4 {
		return
	}
	before, last := &row.St[len(row.St)-2], &row.St[len(row.St)-1]
	if last.Kind == nil || len(last.Feet) != 1 || len(before.Feet) != 1 || last.Feet[0] != 0 {
		return
	}
	if passed := before.Feet[0] - 1; passed <= 0 || left-last.Kind.Turn != passed {
		return
	}
	kind := last.Kind
	if space := &row.St[1]; space.arch() && len(space.Feet) == 0 {
		if r+1 < len(w.Rows) {
			if slices.ContainsFunc(w.Rows[r+1].St, func(s St) bool { return slices.Contains(s.Feet, 1) }) { // it is worked into
				return
			}
			w.Rows[r+1].moveFeet(-1, 1)
		}
		row.St = slices.Delete(row.St, 1, 2)
	}
	if row.St[0].Chain = kind.Turn; row.St[0].Kind != nil {
		row.St[0].Kind = kind
	}
}

// chainsAtHook is how many chains of its foundation a row stands up: its turning chain, and the arch of a first mesh behind it.
func (row *Row) chainsAtHook() int {
	n := row.St[0].Chain
	if len(row.St) > 1 && row.St[1].arch() && len(row.St[1].Feet) == 0 {
		n += row.St[1].Chain
	}
	return n
}

// oneChain makes of a foundation the chain alone into which a whole first round is worked: it is drawn for the ring. Chains
// skipped at the hook stand up.
func (w *Work) oneChain() {
	w.closedFirst()
	w.chainByChain()
	if len(w.Rows) < 2 || !w.Rows[0].Base || w.Rows[0].Round || !w.Rows[1].Round || len(w.Rows[1].St) < 2 || w.Rows[1].Edge || w.Rows[1].Unread != "" {
		return
	}
	base, row := &w.Rows[0], &w.Rows[1]
	at := row.lastUsed()
	if at < 0 || base.St[at].Kind == nil || base.St[at].Kind.ID != "ch" {
		return
	}
	for i := range row.St {
		s := &row.St[i]
		if len(s.Feet) == 0 && s.Kind != nil && !s.Turn && s.Kind.Key != "picot" { // it goes elsewhere
			return
		}
		for _, f := range s.Feet {
			if f != at {
				return
			}
		}
	}
	for i := range row.St {
		row.St[i].Feet = nil
	}
	skipped := at // a round meets its chain from the hook
	if skipped > 1 && !row.St[0].Turn {
		row.St = append([]St{{Chain: skipped, Turn: true}}, row.St...)
		if len(w.Rows) > 2 && !w.Rows[2].Edge {
			w.Rows[2].moveFeet(1, 0)
		}
	}
	w.hooked, w.chains = skipped+1, len(base.St)
	w.Rows = w.Rows[1:]
}

// mostStoodOn is how many chains a ring has at most on which a first round stands stitch by stitch, and that lies in the middle: of more it
// is the edge of a tube.
const mostStoodOn = 16

// chainByChain lets a first round that is worked into each chain of a small ring stand around it as one worked into the ring: over them,
// since it goes once around.
func (w *Work) chainByChain() {
	if len(w.Rows) < 2 || !w.Rows[0].Base || !w.Rows[0].Round || !w.Rows[1].Round || w.Rows[1].Edge || w.Rows[1].Unread != "" || len(w.Rows[0].St) == 0 || len(w.Rows[0].St) > mostStoodOn || w.Rows[1].loose() {
		return
	}
	if k := w.Rows[0].St[0].Kind; k == nil || k.ID != "ch" {
		return
	}
	at := 0
	for i := range w.Rows[1].St {
		for _, f := range w.Rows[1].St[i].Feet {
			if f < at-1 && f > 0 || f > at+1 { // back, or past a chain
				return
			}
			at = f
		}
	}
	for i := range w.Rows[1].St {
		w.Rows[1].St[i].Feet = nil
	}
	w.stoodOn = true
}

// closedFirst makes a round of the first row if several stitches of it stand in one chain and no other, and all rows that follow
// are rounds.
func (w *Work) closedFirst() {
	if len(w.Rows) < 3 || !w.Rows[0].Base || w.Rows[1].Edge {
		return
	}
	for r := range w.Rows[2:] {
		if !w.Rows[r+2].Round {
			return
		}
	}
	row, many := &w.Rows[1], 0
	for i := range row.St {
		if f := row.St[i].Feet; len(f) > 0 {
			if len(f) > 1 || f[0] != row.lastUsed() {
				return
			}
			many++
		}
	}
	if many > 3 {
		row.Round, row.Wrong = true, false
	}
}

// inRing frees the chain that begins a first round, and the slip stitch that closes it, from the chains of its ring where all
// that stands between them is worked into the ring.
func (w *Work) inRing() {
	if len(w.Rows) < 2 || !w.Rows[0].Base || !w.Rows[1].Round || w.Rows[1].Edge {
		return
	}
	standing := 0
	for _, s := range w.Rows[1].St {
		switch {
		case s.Turn, s.arch(), s.Kind != nil && s.Kind.ID == "slst":
		case len(s.Feet) > 0:
			return
		default:
			standing++
		}
	}
	for i := range w.Rows[1].St {
		if standing > 1 {
			w.Rows[1].St[i].Feet = nil
		}
	}
}

// ring is what a row that is worked into a ring, and turned, stands on.
var ring = &stitch.Stitch{ID: "ring", US: "ring", UK: "ring", Uses: 1, Makes: 1, Key: "ring", Base: "ring"}

// overRing gives rows that begin in a ring and are turned that ring as the one place of their foundation: half a round, a shawl.
func (w *Work) overRing() {
	at := 0
	if len(w.Rows) > 0 && w.Rows[0].Base {
		at = 1
	}
	if len(w.Rows) <= at || !w.Rows[at].ring && (at == 0 || !w.Rows[0].Joined) || !slices.ContainsFunc(w.Rows[at:], func(r Row) bool { return !r.Round }) {
		return
	}
	row := &w.Rows[at]
	if row.lastUsed() >= 0 {
		return
	}
	if len(w.Rows) > at+1 && !w.Rows[at+1].Round { // it was the ring that was joined
		row.Round, row.Joined, row.Spiral = false, false, false
	}
	for i := range row.St {
		if s := &row.St[i]; !s.arch() {
			s.Feet = []int{0}
		}
	}
	base := Row{Base: true, Line: row.Line, St: []St{{Kind: ring}}}
	w.Rows = append([]Row{base}, w.Rows[at:]...)
}

// lastUsed is the last place of the row below into which anything is worked; -1 for none.
func (row *Row) lastUsed() int {
	used := -1
	for i := range row.St {
		for _, f := range row.St[i].Feet {
			used = max(used, f)
		}
	}
	return used
}

// standUp is what chains skipped at the hook make of a row's beginning, and how many of them lie
// on under it: a turning chain; or one with the arch of a first mesh, as wide as the others.
func (row *Row) standUp(left int) (up []St, keep int) {
	first := row.St[0].Kind
	for i := range row.St {
		if s := &row.St[i]; first != nil && s.arch() {
			if first.Turn > 0 && left == first.Turn+2*s.Chain {
				return []St{{Chain: first.Turn, Turn: true}, {Chain: s.Chain}}, s.Chain
			}
			break
		}
	}
	if left > mostTurn {
		return nil, 0
	}
	return []St{{Chain: left, Turn: true}}, 0
}

// moveFeet moves all feet of a row from a place on by so many places.
func (row *Row) moveFeet(by, from int) {
	for i := range row.St {
		feet := make([]int, len(row.St[i].Feet))
		for k, f := range row.St[i].Feet {
			if feet[k] = f; f >= from {
				feet[k] += by
			}
		}
		row.St[i].Feet = feet
	}
}

// mostTurn is the longest chain that is taken for a turning chain.
const mostTurn = 6
