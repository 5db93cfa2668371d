package chart

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"flatwright/layout/sheet"
	"flatwright/schematic/stitch"
)

// entry is one line of the key: a symbol, and what it is.
type entry struct {
	id    string
	paths []*sheet.Path // in the plane
	what  string
}

// keyName is what a stitch is called: its abbreviation and name in the pattern's
// terms, and its name in the other terms where that differs.
func keyName(k *stitch.Stitch, t stitch.Terms) string {
	s := k.Abbr(t) + ": " + k.Name(t)
	if k.Name(t) == k.Abbr(t) && k.Key != "" && k.Craft == stitch.Knitting && !strings.HasPrefix(k.Abbr(t), "(") { // a short name alone: what it is
		s = k.Abbr(t) + ": " + k.Key
		if k.Key == "cable" {
			s += " of " + plural(k.Uses, "stitch") + ", not described"
		}
	}
	if o := t.Other(); k.Name(o) != k.Name(t) {
		s += fmt.Sprintf(" (%s %s)", o, k.Name(o))
	}
	return s
}

// sample draws a kind by itself, upright.
func sample(u used) []*sheet.Path {
	k := u.k
	if k.Key == "chain" {
		q := pen{u: pt{X: 1}, v: pt{Y: 1}}
		q.oval(0, 0, ovalLong/2, ovalWide/2, false)
		return q.out
	}
	kind := *k
	kind.Post = u.post
	s := shape{kind: &kind, head: pt{Y: height(k)}, feet: []pt{{}}}
	if k.Together && !u.bunch {
		s.feet = nil
		for i := range k.Legs {
			s.feet = append(s.feet, pt{X: (float64(i) - float64(k.Legs-1)/2) * 1.6})
		}
	}
	return s.paths()
}

// used is a kind as it is seen: from the other side a post stitch is the other one.
type used struct {
	k     *stitch.Stitch
	post  stitch.Post
	bunch bool // its legs stand in one place
}

// legend is what a chart in symbols uses.
type legend struct {
	kinds                                         map[used]bool
	loops                                         [4]bool
	turn, arch, joined, broken, gap, right, wrong bool
	behind, ring                                  bool
	longest                                       int // turning chain
}

// keyOf lists the symbols that the plan draws, each once, in the order of the list
// of stitches.
func (p *plan) keyOf() []entry {
	g := &legend{kinds: map[used]bool{}}
	lines := p.lines
	if p.below != nil {
		lines = append(append([]*line(nil), p.below.p.lines...), p.lines...)
	}
	for _, l := range lines {
		g.row(l)
	}
	out := g.stitches(p.work.Terms)
	if g.ring || p.form != flat && !p.lines[0].row.Base {
		q := pen{u: pt{X: 1}, v: pt{Y: 1}}
		words := "ring to work into"
		if p.work.hooked > 0 {
			words = "chain to work into"
			q.oval(0, 0, ovalLong/2, ovalWide/2, false)
		} else {
			q.oval(0, 0, ringMin-0.2, ringMin-0.2, false)
		}
		out = append(out, entry{"ring", q.out, words})
	}
	if p.form == flat {
		out = append(out, p.work.arrows(p.left)...)
	}
	if g.behind {
		q := path("stitch", quiet, pt{}, pt{Y: 3})
		q.Style.Stroke = sheet.Grey
		out = append(out, entry{"behind", []*sheet.Path{q}, "goes behind the round before, into the one below it"})
	}
	if g.gap {
		out = append(out, entry{"unread", unreadStitch(&pen{u: pt{X: 1}, v: pt{Y: 1}}), "a stitch of a row that was not read"})
	}
	if g.broken {
		out = append(out, entry{"break", []*sheet.Path{path("break", quiet, pt{X: -1}, pt{X: -0.2, Y: 1.5}, pt{X: -1, Y: 3}),
			path("break", quiet, pt{X: 0.2}, pt{X: 1, Y: 1.5}, pt{X: 0.2, Y: 3})}, "stitches left out here"})
	}
	return out
}

// row notes what a row uses.
func (g *legend) row(l *line) {
	if !l.row.Base {
		g.joined = g.joined || l.row.Joined
		g.right, g.wrong = g.right || !l.row.Wrong, g.wrong || l.row.Wrong
	}
	for _, n := range l.nodes {
		switch {
		case n.st.Kind == behind:
			g.behind = true
		case n.st.Kind == ring:
			g.ring = true
		case n.st.Kind == rowEnd || n.st.Idle:
		case n.mark:
			g.broken = true
		case n.st.Kind == unread:
			g.gap = true
		case n.st.Side:
			g.arch = true
		case n.st.Turn:
			g.turn = true
			g.longest = max(g.longest, n.st.Chain)
		case n.arch():
			g.arch = true
			if k := n.st.Close; k != nil {
				g.kinds[used{k: k}] = true
			}
		default:
			s := shape{kind: n.st.Kind, loop: n.st.Loop, flip: l.row.Wrong}
			k := shownKind(n.st.Kind, s.post())
			g.kinds[used{k, k.Post, s.bunchedOn(len(n.feet))}] = true
			g.loops[s.shownLoop()] = true
		}
	}
}

// stitches are the entries of stitches, chains and loops.
func (g *legend) stitches(t stitch.Terms) []entry {
	var out []entry
	plain := func(id string, in bool) {
		if k := stitch.ByID(id); in && !g.kinds[used{k: k}] {
			out = append(out, entry{id, sample(used{k: k}), keyName(k, t)})
		}
	}
	plain("ch", g.turn || g.arch)
	for _, u := range g.alike(t) {
		id, words := fmt.Sprint(u.k.ID, u.post), keyName(shownKind(u.k, u.post), t)
		if own := u.own; own != nil {
			words = strings.Replace(words, u.k.Abbr(t), own.Abbr(t), 1)
		}
		if u.bunch {
			id, words = id+" in one", words+", all in one place"
		}
		out = append(out, entry{id, sample(u.used), words})
		if e, ok := opened(cmp.Or(u.own, u.k), t); ok {
			out = append(out, e)
		}
	}
	plain("slst", g.joined)
	if g.turn {
		n := min(g.longest, 3)
		s := shape{turn: true, chain: n, feet: []pt{{}}, head: pt{Y: turnHeight(n)}}
		out = append(out, entry{"turn", s.paths(), "chains at the beginning of a row or round"})
	}
	for _, lo := range [3]Loop{BackLoop, FrontLoop, LowerDown} {
		if g.loops[lo] {
			q := pen{u: pt{X: 1}, v: pt{Y: 1}}
			arc(&q, lo)
			out = append(out, entry{fmt.Sprint("loop", lo), q.out, "under a stitch: in " + loopWords[lo]})
		}
	}
	return out
}

// named is a kind as the key tells it: own is another of the same legs by the short name that the text gave it, nil if there is none.
type named struct {
	used
	own *stitch.Stitch
}

// alike are the kinds in order, those of several legs that are drawn alike as one: 2dc-cl as the text names it, and ch 3, dc that stands for it.
func (g *legend) alike(t stitch.Terms) []named {
	var out []named
	for _, u := range g.inOrder() {
		i := slices.IndexFunc(out, func(o named) bool { return o.post == u.post && o.bunch == u.bunch && sameLegs(o.k, u.k, t) })
		switch {
		case i < 0:
			out = append(out, named{used: u})
		case u.k.Abbr(t) != out[i].k.Abbr(t) && u.k.Name(t) == u.k.Abbr(t):
			out[i].own = u.k
		case u.k.Abbr(t) != out[i].k.Abbr(t):
			out[i].own, out[i].k = out[i].k, u.k
		}
	}
	return out
}

// sameLegs reports whether two kinds are as many legs of one stitch, closed alike, and at most one of them has a name of its own.
func sameLegs(a, b *stitch.Stitch, t stitch.Terms) bool {
	return a.Legs > 1 && a.Legs == b.Legs && a.Key == b.Key && a.Together == b.Together && a.Plain() == b.Plain() && a.Plain() != nil &&
		(a.Name(t) == b.Name(t) || a.Name(t) == a.Abbr(t) || b.Name(t) == b.Abbr(t))
}

var loopWords = map[Loop]string{BackLoop: "back loop only", FrontLoop: "front loop only", LowerDown: "a stitch further down, as its row says"}

// inOrder are the kinds in the order of the list of stitches.
func (g *legend) inOrder() []used {
	order := map[string]int{}
	for i, k := range stitch.All() {
		order[k.ID] = i
	}
	place := func(u used) int {
		if i, ok := order[u.k.ID]; ok {
			return i
		}
		return len(stitch.All())
	}
	var list []used
	for u := range g.kinds {
		list = append(list, u)
	}
	slices.SortFunc(list, func(a, b used) int {
		return cmp.Or(cmp.Compare(place(a), place(b)), cmp.Compare(a.k.ID, b.k.ID), cmp.Compare(a.post, b.post), compareBool(a.bunch, b.bunch))
	})
	return list
}

// compareBool puts what is not before what is.
func compareBool(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

// opened is a stitch of several legs opened out: its legs side by side from the place that
// they share, and how they are closed.
func opened(k *stitch.Stitch, t stitch.Terms) (entry, bool) {
	base := k.Plain()
	if k.Together || k.Legs < 2 || base == nil || base == k {
		return entry{}, false
	}
	const apart, close = 1.9, 1.6
	h := height(base)
	var out []*sheet.Path
	for i := range k.Legs {
		x := (float64(i) - float64(k.Legs-1)/2) * apart
		s := shape{kind: base, feet: []pt{{X: x * 0.35}}, head: pt{X: x, Y: h}}
		out = append(out, s.paths()...)
		q := pen{u: pt{X: 1}, v: pt{Y: 1}}
		q.line(x, h, 0, h+close)
		out = append(out, q.out...)
	}
	how := "closed together"
	if k.Key == "popcorn" {
		how = "the first and the last closed together"
	}
	return entry{"opened " + k.ID, out, fmt.Sprintf("%s opened out: %d %s in one place, %s", k.Abbr(t), k.Legs, base.Abbr(t), how)}, true
}

// arrows are the key's entries for the sides of rows.
func (w *Work) arrows(left bool) []entry {
	right, wrong := w.sidesSeen()
	from, to := pt{X: arrowLong}, pt{}
	if left {
		from, to = to, from
	}
	var out []entry
	if right {
		words := "right-side row"
		if w.roundsAlone() {
			words = "round"
		}
		out = append(out, entry{"right", arrow(from, to, false, 1), words + ", read this way"})
	}
	if wrong {
		words := "wrong-side row"
		if w.roundsAlone() {
			words = "wrong-side round"
		}
		out = append(out, entry{"wrong", arrow(to, from, true, 1), words + ", read this way"})
	}
	return out
}

// roundsAlone reports whether all that is worked are rounds.
func (w *Work) roundsAlone() bool {
	return !slices.ContainsFunc(w.Rows, func(r Row) bool { return !r.Base && !r.Round })
}

// shownKind is the stitch that has the name of the post shown.
func shownKind(k *stitch.Stitch, post stitch.Post) *stitch.Stitch {
	if post == k.Post {
		return k
	}
	id := "FP"
	if post == stitch.BackPost {
		id = "BP"
	}
	if o := stitch.ByID(id + k.Base); o != nil {
		return o
	}
	return k
}
