package chart

import (
	"math"
	"slices"
)

// A motif with corners is laid along straight sides. Its corners are places of a round,
// each as twice an index into the round's nodes: an odd one lies between two nodes.

// cluster is what stands in one place of the row below, with the arches within: the
// first and the last index, the first one below 0 where the round begins within it.
type cluster struct {
	foot   *node
	lo, hi int
}

func (c cluster) size() int { return c.hi - c.lo + 1 }

// clusters are the runs of nodes that stand in one place.
func (l *line) clusters() []cluster {
	var out []cluster
	for i, n := range l.nodes {
		if len(n.feet) != 1 {
			continue
		}
		if k := len(out) - 1; k >= 0 && out[k].foot == n.feet[0] && l.within(out[k].hi, i) {
			out[k].hi = i
			continue
		}
		out = append(out, cluster{n.feet[0], i, i})
	}
	if k := len(out) - 1; k > 0 && out[0].foot == out[k].foot {
		out[0].lo = out[k].lo - len(l.nodes)
		out = out[:k]
	}
	return out
}

// within reports whether only arches and picots stand between two nodes.
func (l *line) within(i, k int) bool {
	for i++; i < k; i++ {
		if n := l.nodes[i]; !n.arch() && !n.picot() {
			return false
		}
	}
	return true
}

// corner is twice the place at which a cluster turns: of the arch within it that is nearest to its middle, or else of its middle.
func (l *line) corner(c cluster) int {
	k, mid := len(l.nodes), c.lo+c.hi
	for d := 0; d <= mostUneven; d++ {
		for _, at := range [2]int{mid - d, mid + d} {
			if at%2 == 0 && l.nodes[(at/2+k)%k].arch() {
				return l.wrap(at)
			}
		}
	}
	return l.wrap(mid)
}

// turnsIn reports whether a cluster turns at an arch.
func (l *line) turnsIn(c cluster) bool {
	at := l.corner(c)
	return c.size() > 2 && at%2 == 0 && l.nodes[at/2].arch()
}

// The corners that a motif may have, the stitches of a cluster that makes one, and how many more may stand on one side of its
// arch than on the other.
const (
	leastSides, mostSides = 3, 8
	leastCorner           = 3
	mostUneven            = 2
)

// cornerClusters are the largest clusters of a round, or those that turn at an arch and are nearly as large, if they may be its corners.
func (l *line) cornerClusters() []cluster {
	clusters := l.clusters()
	largest, all := leastCorner, 0
	for _, c := range clusters {
		largest = max(largest, c.size())
	}
	var out []cluster
	for _, c := range clusters {
		if c.size() == largest || c.size() > leastCorner && c.size() >= largest-mostUneven && l.turnsIn(c) {
			out = append(out, c)
			all += c.size()
		}
	}
	for _, n := range l.nodes {
		if n.st.Kind == behind || n.st.Turn && n.st.Kind == nil {
			all++
		}
	}
	if k := len(out); k < leastSides || k > mostSides || all == len(l.nodes) && !l.turnsIn(out[0]) {
		return nil
	}
	return out
}

// findCorners looks for the corners of rounds: clusters of several stitches, as many in
// each round from one on, each over one of the round below. Where it finds them it makes
// the chart a polygon.
func (p *plan) findCorners() {
	for r := 1; r < len(p.lines); r++ {
		if c := p.lines[r].cornerClusters(); c != nil && p.cornered(r, c) {
			return
		}
	}
	p.corneredByArches()
}

// cornered takes the clusters of round r as its corners, and follows them outwards; it
// reports false if they do not go on as corners do.
func (p *plan) cornered(r int, clusters []cluster) bool {
	at := make([][]int, len(p.lines))
	firm, arches := p.lines[r].turnsIn(clusters[0]), true
	for _, c := range clusters {
		at[r] = append(at[r], p.lines[r].corner(c))
		arches = arches && c.foot.arch()
	}
	for k := r + 1; k < len(p.lines); k++ {
		if p.lines[k].row.Unread != "" {
			at[k] = p.lines[k].spread(len(clusters))
			continue
		}
		var many bool
		if at[k], many = p.lines[k].over(p.lines[k-1], at[k-1]); many {
			firm = true
		}
	}
	first := r
	for feet := feetOf(clusters); arches && p.lines[first-1].turnsAt(feet); feet = archesUnder(feet) { // those below have corners too
		first--
		for _, f := range feet {
			at[first] = append(at[first], 2*int(f.place))
		}
		if first == 0 {
			break
		}
	}
	if !firm || !p.cornersShow(at, r) {
		return false
	}
	for k := first; k < len(p.lines); k++ {
		if !p.lines[k].balanced(at[k]) {
			return false
		}
	}
	p.turnAt(at, len(clusters))
	return true
}

// cornersShow reports whether at least half of the rounds from r on have more at those corners than beside them: a doily begins with
// as many shells as a motif has corners, and goes on alike all around.
func (p *plan) cornersShow(at [][]int, r int) bool {
	shown, all := 0, 0
	for k := r; k < len(p.lines); k++ {
		if l := p.lines[k]; l.row.Unread == "" {
			all++
			if l.showsCorners(at[k]) {
				shown++
			}
		}
	}
	return 2*shown >= all
}

// showsCorners reports whether each corner lies in a larger cluster than any beside the corners, or on a longer arch.
func (l *line) showsCorners(at []int) bool {
	size := map[int]int{} // of the cluster around a corner
	beside, longest := 0, 0
	for _, c := range l.clusters() {
		if i := slices.IndexFunc(at, func(a int) bool { return l.wrap(a-2*c.lo) <= 2*(c.hi-c.lo) }); i >= 0 {
			size[at[i]] = c.size()
		} else {
			beside = max(beside, c.size())
		}
	}
	for i, n := range l.nodes {
		if n.arch() && !slices.Contains(at, 2*i) {
			longest = max(longest, n.st.Chain)
		}
	}
	for _, a := range at {
		arch := a >= 0 && a%2 == 0 && l.nodes[a/2].arch() && l.nodes[a/2].st.Chain > longest
		if !arch && size[a] <= beside {
			return false
		}
	}
	return true
}

// corneredByArches takes the arches of a round that is worked into a ring for its
// corners: a motif of one round.
func (p *plan) corneredByArches() {
	last := len(p.lines) - 1
	l := p.lines[last]
	at := make([][]int, len(p.lines))
	most := 0
	for i, n := range l.nodes {
		if len(n.feet) > 0 {
			return
		}
		if n.arch() {
			at[last] = append(at[last], 2*i)
			most = max(most, n.st.Chain)
		}
	}
	k := len(at[last])
	if k < leastSides || k > 6 || most < 2 || len(l.nodes) < 3*k || !l.balanced(at[last]) {
		return
	}
	p.turnAt(at, k)
}

// turnAt makes the chart a polygon with those corners.
func (p *plan) turnAt(at [][]int, sides int) {
	p.form = polygon
	p.aim(sides)
	for r, l := range p.lines {
		if l.corners = at[r]; l.corners == nil {
			continue
		}
		for i, n := range l.nodes {
			n.side, n.corner = l.sideOf(i)
		}
	}
}

// feetOf are the places in which clusters stand.
func feetOf(clusters []cluster) []*node {
	var out []*node
	for _, c := range clusters {
		out = append(out, c.foot)
	}
	return out
}

// turnsAt reports whether a round turns at those arches of it: it has no other as long, and about as many stitches
// between each two.
func (l *line) turnsAt(arches []*node) bool {
	if len(arches) == 0 {
		return false
	}
	least := arches[0].st.Chain
	var at []int
	for _, n := range arches {
		least = min(least, n.st.Chain)
		at = append(at, 2*int(n.place))
	}
	k := 0
	for _, m := range l.nodes {
		if m.arch() && m.st.Chain >= least {
			k++
		}
	}
	return k == len(arches) && l.balanced(at)
}

// archesUnder are the arches over each of which one of those stands, between the same stitches; nil if one stands over none.
func archesUnder(arches []*node) []*node {
	var out []*node
	for _, n := range arches {
		a, b := n.before(), n.after()
		if a == nil || b == nil || len(a.feet) == 0 || len(b.feet) == 0 {
			return nil
		}
		f := a.feet[len(a.feet)-1]
		if !f.arch() {
			f = f.after()
		}
		if f == nil || !f.arch() || f.after() != b.feet[0] && f != b.feet[0] {
			return nil
		}
		out = append(out, f)
	}
	return out
}

// wrap is a corner's place within the round.
func (l *line) wrap(c int) int {
	n := 2 * len(l.nodes)
	return ((c % n) + n) % n
}

// over are the corners of a round over those of the one below: the middle of what stands
// on each, or between what stands before and after it. Many: several stitches stand on each.
func (l *line) over(below *line, at []int) (out []int, many bool) {
	k := len(below.nodes)
	many = true
	on := map[*node]cluster{}
	for _, c := range l.clusters() {
		on[c.foot] = c
	}
	for _, c := range at {
		if c%2 == 0 {
			if q, ok := on[below.nodes[c/2]]; ok {
				out = append(out, l.corner(q))
				many = many && q.size() >= leastCorner
				continue
			}
		}
		many = false
		out = append(out, l.between(k, c))
	}
	return out, many
}

// between is the middle of what stands between the last stitch before a corner of the
// round below and the first one after it.
func (l *line) between(k, c int) int {
	n := len(l.nodes)
	ahead := func(m *node) float64 { // of the corner, around
		d := float64(m.feet[0].place) - float64(c)/2
		return d - float64(k)*math.Round(d/float64(k))
	}
	for i := range n {
		a := l.nodes[i]
		if len(a.feet) == 0 || ahead(a) > 0 || ahead(a) < -float64(k)/4 {
			continue
		}
		j := i + 1
		for len(l.nodes[j%n].feet) == 0 && j < i+n {
			j++
		}
		if d := ahead(l.nodes[j%n]); d > 0 && d < float64(k)/4 {
			return l.wrap(i + j)
		}
	}
	return -1
}

// spread are the corners of a round that was not read: as many stitches on each side.
func (l *line) spread(sides int) []int {
	if len(l.nodes) < sides {
		return []int{-1}
	}
	out := make([]int, sides)
	for s := range out {
		out[s] = 2*((s+1)*len(l.nodes)/sides) - 1
	}
	return out
}

// balanced reports whether corners follow one another around, with about as many
// stitches on each side.
func (l *line) balanced(at []int) bool {
	k := len(at)
	if k == 0 {
		return false
	}
	least, most, sum := math.MaxInt, 0, 0
	for i, c := range at {
		if c < 0 {
			return false
		}
		d := l.wrap(at[(i+1)%k] - c)
		least, most, sum = min(least, d), max(most, d), sum+d
	}
	return least > 0 && sum == 2*len(l.nodes) && most <= 2*least+4
}

// sideOf is the side on which the i-th node stands, and whether it is the corner at the
// side's end.
func (l *line) sideOf(i int) (side int, corner bool) {
	best := math.MaxInt
	for s, c := range l.corners {
		if d := l.wrap(c - 2*i); d < best {
			best, side, corner = d, s, d == 0
		}
	}
	return side, corner
}
