package chart

import (
	"fmt"
	"sort"

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
	if o := t.Other(); k.Name(o) != k.Name(t) {
		s += fmt.Sprintf(" (%s %s)", o, k.Name(o))
	}
	return s
}

// sample draws a kind by itself, upright.
func sample(k *stitch.Stitch, post stitch.Post) []*sheet.Path {
	if k.Key == "chain" {
		q := pen{u: pt{X: 1}, v: pt{Y: 1}}
		q.oval(0, 0, ovalLong/2, ovalWide/2, false)
		return q.out
	}
	kind := *k
	kind.Post = post
	s := shape{kind: &kind, head: pt{Y: Height(k)}, feet: []pt{{}}}
	if k.Together {
		s.feet = nil
		for i := range k.Legs {
			s.feet = append(s.feet, pt{X: (float64(i) - float64(k.Legs-1)/2) * 1.6})
		}
	}
	return s.paths()
}

// keyOf lists the symbols that the plan draws, each once, in the order of the list
// of stitches.
func (p *plan) keyOf() []entry {
	t := p.work.Terms
	type used struct {
		k    *stitch.Stitch
		post stitch.Post
	}
	seen := map[used]bool{}
	loops := [3]bool{}
	turn, arch, joined, brk, ring := false, false, false, false, p.form != flat && !p.lines[0].row.Base
	longest, gap := 0, false
	lines := p.lines
	if p.below != nil {
		lines = append(append([]*line(nil), p.below.p.lines...), p.lines...)
	}
	for _, l := range lines {
		joined = joined || l.row.Joined && !l.row.Base
		for _, n := range l.nodes {
			switch {
			case n.st.Kind == rowEnd:
			case n.mark:
				brk = true
			case n.st.Kind == unread:
				gap = true
			case n.st.Turn:
				turn = true
				longest = max(longest, n.st.Chain)
			case n.arch():
				arch = true
			default:
				s := shape{kind: n.st.Kind, loop: n.st.Loop, flip: l.row.Wrong}
				k := shownKind(n.st.Kind, s.post())
				seen[used{k, k.Post}] = true
				loops[s.shownLoop()] = true
			}
		}
	}
	order := map[string]int{}
	for i, k := range stitch.All {
		order[k.ID] = i
	}
	var list []used
	for u := range seen {
		list = append(list, u)
	}
	sort.Slice(list, func(i, j int) bool {
		a, b := list[i], list[j]
		ai, aok := order[a.k.ID]
		bi, bok := order[b.k.ID]
		if aok != bok {
			return aok
		}
		if ai != bi {
			return ai < bi
		}
		if a.k.ID != b.k.ID {
			return a.k.ID < b.k.ID
		}
		return a.post < b.post
	})
	var out []entry
	chain := stitch.ByID("ch")
	if (turn || arch) && !seen[used{chain, stitch.NoPost}] {
		out = append(out, entry{"ch", sample(chain, 0), keyName(chain, t)})
	}
	for _, u := range list {
		k := shownKind(u.k, u.post)
		out = append(out, entry{fmt.Sprint(u.k.ID, u.post), sample(u.k, u.post), keyName(k, t)})
	}
	if joined && !seen[used{stitch.ByID("slst"), stitch.NoPost}] {
		slip := stitch.ByID("slst")
		out = append(out, entry{"slst", sample(slip, 0), keyName(slip, t)})
	}
	if turn {
		s := shape{turn: true, chain: min(longest, 3), feet: []pt{{}}, head: pt{Y: turnHeight(min(longest, 3))}}
		out = append(out, entry{"turn", s.paths(), "chains at the beginning of a row or round"})
	}
	for lo, name := range map[Loop]string{BackLoop: "under a stitch: in back loop only", FrontLoop: "under a stitch: in front loop only"} {
		if loops[lo] {
			q := pen{u: pt{X: 1}, v: pt{Y: 1}}
			arc(&q, lo)
			out = append(out, entry{fmt.Sprint("loop", lo), q.out, name})
		}
	}
	sort.SliceStable(out, func(i, j int) bool { // the loops last, back before front
		a, b := out[i].id, out[j].id
		al, bl := len(a) > 4 && a[:4] == "loop", len(b) > 4 && b[:4] == "loop"
		if al && bl {
			return a < b
		}
		return !al && bl
	})
	if ring {
		q := pen{u: pt{X: 1}, v: pt{Y: 1}}
		q.oval(0, 0, ringMin-0.2, ringMin-0.2, false)
		out = append(out, entry{"ring", q.out, "ring to work into"})
	}
	right, wrong := false, false
	for _, l := range lines {
		if !l.row.Base && p.form == flat {
			right = right || !l.row.Wrong
			wrong = wrong || l.row.Wrong
		}
	}
	out = append(out, arrows(right, wrong, p.left)...)
	if gap {
		out = append(out, entry{"unread", unreadStitch(&pen{u: pt{X: 1}, v: pt{Y: 1}}), "a stitch of a row that was not read"})
	}
	if brk {
		out = append(out, entry{"break", []*sheet.Path{path("break", quiet, pt{X: -1}, pt{X: -0.2, Y: 1.5}, pt{X: -1, Y: 3}),
			path("break", quiet, pt{X: 0.2}, pt{X: 1, Y: 1.5}, pt{X: 0.2, Y: 3})}, "stitches left out here"})
	}
	return out
}

// arrows are the key's entries for the sides of rows.
func arrows(right, wrong, left bool) []entry {
	from, to := pt{X: arrowLong}, pt{}
	if left {
		from, to = to, from
	}
	var out []entry
	if right {
		out = append(out, entry{"right", arrow(from, to, false, 1), "right-side row, read this way"})
	}
	if wrong {
		out = append(out, entry{"wrong", arrow(to, from, true, 1), "wrong-side row, read this way"})
	}
	return out
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
