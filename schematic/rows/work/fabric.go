package work

import (
	"slices"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// run is a stretch of equal places in a row: n stitches of one kind, or one chain
// space of so many chains. Runs keep long even rows short.
type run struct {
	kind  *stitch.Stitch // nil: not known
	of    *ins.Group     // the named group
	n     int
	chain int    // > 0: a chain space
	arms  uint64 // of a space with picots in it: the chains beside these, by which it is called too, each a bit; 0: it has none
	group int    // which shell or group it belongs to, 0: none
	tall  int    // of a turning chain: its chains
	tch   bool   // a turning chain that counts
	one   bool   // legs in one place, finished together: a cluster
	base  bool   // chains of a foundation
	hook  bool   // a turning chain that was skipped from the hook
}

// base reports whether a row is a foundation chain.
func (f *fabric) base() bool { return len(f.runs) > 0 && f.runs[0].base }

func (r run) space() bool { return r.chain > 0 }

// called reports whether a space may be called one of so many chains.
func (r run) called(size int) bool { return r.chain == size || size > 0 && r.arms&arm(size) > 0 }

func arm(chain int) uint64 { return 1 << min(chain, 63) }

// elements is how many places of the row the run is.
func (r run) elements() int {
	if r.space() {
		return 1
	}
	return r.n
}

// fabric is a row as worked: what the next row is worked into.
type fabric struct {
	runs    []run
	picots  int
	picoted bool // a picot was made last
	groups  int
	plain   bool  // only its count is known
	ring    bool  // closed to a ring that can be worked into
	midArch bool  // a round that ends in the middle of its last space, with a tall stitch
	marks   []int // markers: so many stitches from the beginning
	needles []int // stitches on each of several needles; nil: not known
	waited  bool  // taken up from a holder, and not worked since
	untold  bool  // of these it is not told how many they are
}

// foundation reports whether it is a chain that a piece begins with.
func (f *fabric) foundation() bool { return len(f.runs) > 0 && f.runs[0].base }

// covered is a row that another one is worked into, of which nothing is known: no ring is left to work into.
func (f *fabric) covered() *fabric {
	if f == nil || !f.ring {
		return f
	}
	g := *f
	g.ring = false
	return &g
}

// stitches is the number of stitches, without chain spaces.
func (f *fabric) stitches() int {
	n := 0
	for i := range f.runs {
		if r := &f.runs[i]; r.chain <= 0 {
			n += r.n
		}
	}
	return n
}

func (f *fabric) chains() (chains, spaces int) {
	for _, r := range f.runs {
		if r.space() {
			chains += r.chain
			spaces++
		}
	}
	return chains, spaces
}

// add appends a run, joined to the last one if they are alike.
func (f *fabric) add(r run) {
	if r.n == 0 && r.chain == 0 {
		return
	}
	k, picoted := len(f.runs)-1, f.picoted
	f.picoted = false
	if k >= 0 && picoted && r.space() && f.runs[k].space() && f.runs[k].group == r.group { // it goes on behind the picot
		l := &f.runs[k]
		if l.arms == 0 {
			l.arms = arm(l.chain)
		}
		l.arms, l.chain = l.arms|arm(r.chain), l.chain+r.chain
		return
	}
	if k >= 0 && !r.space() {
		if l := &f.runs[k]; l.kind == r.kind && !l.space() && l.group == r.group && l.of == r.of && l.tch == r.tch && l.base == r.base && l.one == r.one && !r.tch {
			l.n += r.n
			return
		}
	}
	f.runs = append(f.runs, r)
}

// reversed is the row as the next one meets it when the work is turned.
func (f *fabric) reversed() *fabric { return f.reversedInto(&fabric{}) }

// reversedInto is reversed in the room of g.
func (f *fabric) reversedInto(g *fabric) *fabric {
	if len(f.runs) < 2 && len(f.marks) == 0 {
		return f
	}
	*g = fabric{runs: slices.Grow(g.runs[:0], len(f.runs))[:len(f.runs)], picots: f.picots, groups: f.groups, ring: f.ring, midArch: f.midArch}
	for i := range f.runs {
		g.runs[len(f.runs)-1-i] = f.runs[i]
	}
	n := f.stitches()
	for i := len(f.marks) - 1; i >= 0; i-- {
		g.marks = append(g.marks, n-f.marks[i])
	}
	return g
}

// fromLast is the row begun from its last place.
func (f *fabric) fromLast() *fabric {
	k := len(f.runs) - 1
	if k < 1 {
		return f
	}
	last := f.runs[k]
	g := &fabric{picots: f.picots, groups: f.groups, ring: f.ring, marks: f.marks, midArch: f.midArch}
	if last.n > 1 && !last.space() {
		last.n = 1
	}
	g.runs = append(g.runs, last)
	for i, q := range f.runs {
		if i == k {
			if q.space() || q.n == 1 {
				break
			}
			q.n--
		}
		g.runs = append(g.runs, q)
	}
	return g
}

// same reports whether two rows are alike for whatever is worked into them.
func (f *fabric) same(g *fabric) bool {
	if len(f.runs) != len(g.runs) || f.picots != g.picots || !slices.Equal(f.marks, g.marks) {
		return false
	}
	for i := range f.runs {
		r, q := &f.runs[i], &g.runs[i]
		if r.kind != q.kind || r.n != q.n || r.chain != q.chain || r.of != q.of || r.tch != q.tch || r.base != q.base || r.one != q.one || (r.group == 0) != (q.group == 0) {
			return false
		}
	}
	return true
}

// uniform is a row of n stitches of one kind.
func uniform(kind *stitch.Stitch, n int) *fabric {
	f := &fabric{}
	f.add(run{kind: kind, n: n})
	return f
}

// main is the kind of which the row has most; of a long mixed row, its beginning.
func (f *fabric) main() *stitch.Stitch {
	type tally struct {
		kind *stitch.Stitch
		n    int
	}
	var room [8]tally
	all, best := room[:0], tally{}
	for _, r := range f.runs[:min(len(f.runs), 64)] {
		if r.space() || r.kind == nil {
			continue
		}
		k := slices.IndexFunc(all, func(t tally) bool { return t.kind == r.kind })
		if k < 0 {
			k, all = len(all), append(all, tally{kind: r.kind})
		}
		all[k].n += r.n
	}
	for _, t := range all {
		if t.n > best.n {
			best = t
		}
	}
	return best.kind
}

// cursor walks over the row that is worked into.
type cursor struct {
	f    *fabric
	i    int // run
	off  int // places of it already used
	pos  int // elements used, for the graph
	left int // stitches not yet used
}

func over(f *fabric) cursor { return cursor{f: f, left: f.stitches()} }

// widest is how many chains the widest space has; 0 if there is none.
func (f *fabric) widest() int {
	most := 0
	for i := range f.runs {
		if r := &f.runs[i]; r.space() {
			most = max(most, r.chain)
		}
	}
	return most
}

func (c *cursor) atStart() bool { return c.i == 0 && c.off == 0 }

// run is the run at the cursor, or nil at the end.
func (c *cursor) run() *run {
	if c.i >= len(c.f.runs) {
		return nil
	}
	return &c.f.runs[c.i]
}

// step uses k places of the run at the cursor.
func (c *cursor) step(k int) {
	r := &c.f.runs[c.i]
	if r.space() {
		c.off += k
		if c.off >= r.chain {
			c.i, c.off = c.i+1, 0
			c.pos++
		}
		return
	}
	c.off += k
	c.pos += k
	c.left -= k
	if c.off >= r.n {
		c.i, c.off = c.i+1, 0
	}
}

// passSpaces goes over chain spaces, which need not be worked into.
func (c *cursor) passSpaces() {
	for c.i < len(c.f.runs) && c.f.runs[c.i].space() {
		c.i, c.off = c.i+1, 0
		c.pos++
	}
}

// anchor reports whether the cursor stands before a stitch that holds chains alone: one between two spaces, or between a
// space and the end.
func (c *cursor) anchor() bool {
	r := c.run()
	if r == nil || r.space() || r.n != 1 || r.group > 0 || c.i == 0 || !c.f.runs[c.i-1].space() {
		return false
	}
	return c.i+1 == len(c.f.runs) || c.f.runs[c.i+1].space()
}

// toEnd uses all that is left.
func (c *cursor) toEnd() {
	for c.i < len(c.f.runs) {
		r := c.run()
		if r.space() {
			c.passSpaces()
			continue
		}
		c.step(r.n - c.off)
	}
}

// alike reports whether a stitch that is called u in a place may be k in the row.
func alike(u, k *stitch.Stitch) bool {
	if u == nil || k == nil || u == k {
		return true
	}
	if k.Base == u.ID && (k.Together || k.Post != stitch.NoPost || k.ID == "ktbl" || k.ID == "ptbl" || k.ID == "kfb" || k.ID == "pfb") {
		return true
	}
	if u.Legs > 1 && !u.Together && u.Key == k.Key || u.Key == "cluster" && k.Together && k.Legs >= 3 {
		return true
	}
	return u.Craft == stitch.Knitting && k.Craft == stitch.Knitting
}
