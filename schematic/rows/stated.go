package rows

import (
	"slices"
	"strconv"
	"strings"

	"flatwright/schematic/finding"
)

// check holds a row against the count at the end of its line.
func (r *runner) check(l *Line, res *result) {
	f := res.out
	if l.Stated == nil {
		if res.total {
			r.known = false
		}
		return
	}
	if res.total || !r.known && !res.pin {
		if k := r.said(l); k >= 0 {
			if res.per > 1 && k%res.per != 0 {
				r.tell("rows/stated", finding.Warning, l.Stated[0].At, "%s stitches do not come of %s in each row", "mend the count, or say what is picked up", k, res.per)
			}
			r.fab, r.known, r.alt = r.asStated(l, f, k), true, nil
			if res.total && r.fab.main() == nil {
				r.fab = uniform(nil, k)
			}
			if res.total && r.g != nil {
				r.g.anew()
				r.g.foundation(r.fab, l.At.Line, r.round)
			}
		}
		return
	}
	if res.dropped { // follows from a row before: go on with what the text says
		if k := r.said(l); k >= 0 {
			r.fab, r.alt = r.asStated(l, f, k), nil
		}
		return
	}
	found := r.misfits(l, f)
	if len(found) == 0 {
		r.alt = nil
		return
	}
	if r.alt != nil && len(r.misfits(l, r.alt)) == 0 { // it follows from a count that has been told
		r.fab, r.alt = r.alt, nil
		return
	}
	if !uses(res.found) {
		r.all = append(r.all, found...)
	}
	r.suspect = suspectRows
	if k := r.said(l); k >= 0 && k != f.stitches() {
		r.alt = r.asStated(l, f, k)
	}
}

// misfits is what the stated count of a line and a row as worked have apart.
func (r *runner) misfits(l *Line, f *fabric) []raw {
	var out []raw
	tell := func(at Span, msg, fix string, a ...int) {
		out = append(out, raw{kind: "rows/stated", sev: finding.Warning, at: at, msg: msg, fix: fix, a: a})
	}
	grouped := false
	for i, g := range l.Stated {
		grouped = grouped || g.Unit.Group != nil
		for _, h := range l.Stated[:i] {
			if !g.Any && g.Unit.Stitch == h.Unit.Stitch && g.Unit.Chain == h.Unit.Chain && g.Unit.Space == h.Unit.Space && g.Unit.Group == h.Unit.Group &&
				g.Unit.Size.At(r.size) == h.Unit.Size.At(r.size) {
				tell(g.At, "the count names the same thing twice", "name each kind once")
				return out
			}
		}
	}
	named := 0
	for _, g := range l.Stated {
		said := g.N.At(r.size)
		if said == none {
			return nil
		}
		made, what, also := r.made1(f, g, grouped)
		if !g.Any && !g.Unit.Space && !g.Unit.Chain && g.Unit.Group == nil && (g.Unit.Stitch == nil || g.Unit.Stitch.ID != "picot") {
			named += made
		}
		if also == said || made == said {
			continue
		}
		tell(g.At, "the row makes %s "+what+", not %s | %s "+what+" made over the row below | %s "+what+" stated", "say %s, or mend the row so that it makes %s",
			made, said, made, said, made, said)
		return out // the kinds that follow are of the same cause
	}
	if !grouped && len(l.Stated) > 0 && !l.Stated[0].Any {
		if total := f.stitches(); named != total && !r.onlySpaces(l) {
			tell(l.Stated[0].At, "the row makes %s stitches, of which the count names %s | %s of other kinds made | all kinds named", "name them all, or mend the row",
				total, named, total-named)
		}
	}
	return out
}

func (r *runner) onlySpaces(l *Line) bool {
	for _, g := range l.Stated {
		if !g.Unit.Space && !(g.Unit.Stitch != nil && g.Unit.Stitch.ID == "picot") {
			return false
		}
	}
	return true
}

// asStated is the row with the stated number of stitches, all of the kind that is
// named or that it has most of.
func (r *runner) asStated(l *Line, f *fabric, k int) *fabric {
	kind := f.main()
	if len(l.Stated) == 1 && l.Stated[0].Unit.Stitch != nil {
		kind = l.Stated[0].Unit.Stitch
	}
	g := uniform(kind, k)
	g.ring = f.ring
	return g
}

// made1 counts what a stated count names: the number made, and a second number
// that is as right (stitches with their chains, for 'sts').
func (r *runner) made1(f *fabric, g StitchGroup, grouped bool) (made int, what string, also int) {
	u := g.Unit
	switch {
	case u.Space:
		size := u.Size.At(r.size)
		n := 0
		for _, q := range f.runs {
			if q.space() && (size <= 0 || q.chain == size) && !(grouped && q.of != nil) {
				n++
			}
		}
		return n, "chain spaces", n
	case u.Chain:
		c, _ := f.chains()
		return c, "chains", c
	case u.Group != nil:
		seen := map[int]bool{}
		for _, q := range f.runs {
			if q.of == u.Group {
				seen[q.group] = true
			}
		}
		return len(seen), u.Group.Name + "s", len(seen)
	case u.Stitch != nil && u.Stitch.ID == "picot":
		return f.picots, "picots", f.picots
	case u.Stitch != nil:
		n := 0
		for _, q := range f.runs {
			if !q.space() && (q.kind == nil || alike(u.Stitch, q.kind) && !(q.one && u.Stitch.ID == q.kind.Base)) && !(grouped && q.of != nil) {
				n += q.n
			}
		}
		return n, u.Stitch.Abbr(r.x.Terms), n
	}
	n := f.stitches()
	c, spaces := f.chains()
	also = n + c
	if said := g.N.At(r.size); said == n+spaces && spaces > 0 {
		also = said
	}
	return n, "stitches", also
}

// unsaidFindings asks for each chain of which nothing says whether it counts.
func unsaidFindings(x *Text, unsaid map[int]Span, counts Counts, fits, other int) finding.List {
	var out finding.List
	best := Span{}
	var sizes []int
	for n, at := range unsaid {
		sizes = append(sizes, n)
		if best.Line == 0 || at.Line < best.Line {
			best = at
		}
	}
	if len(sizes) == 0 {
		return nil
	}
	slices.Sort(sizes)
	var names []string
	for _, n := range sizes {
		names = append(names, "ch "+strconv.Itoa(n))
	}
	reading := "does not count"
	if counts == CountsAsStitch {
		reading = "counts"
	}
	out = append(out, finding.Finding{Kind: "rows/turning-chain", Severity: finding.Note,
		Pos:     finding.Pos{File: x.Name, Line: best.Line, Col: best.Col, EndCol: best.End},
		Message: "nothing says whether the chain at the beginning of a row (" + strings.Join(names, ", ") + ") counts as a stitch",
		Have:    "read as one that " + reading + ", " + strconv.Itoa(fits) + " places do not fit; the other way, " + strconv.Itoa(other),
		Want:    "a sentence in the notes, or (counts as dc) or (does not count as a st) where it stands first",
		Fix:     "say whether it counts"})
	return out
}
