package work

import (
	ins "flatwright/schematic/rows/instructions"
	"fmt"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
	"flatwright/schematic/units"
)

// Report is what a check found, and how much of the text it could read.
type Report struct {
	Findings finding.List
	Read     ins.Reading
	Sizes    []string
	// Stitches after each line that was worked, one a size; -1 where not known.
	Stitches map[*ins.Line][]int
}

// Check works every row of the text for every size, and tells what does not fit.
// Findings of one cause are told once: after a wrong count the check goes on with
// whichever of the two numbers the next row fits.
func Check(x *ins.Text) Report { return report(x, inEachSize(x)) }

// CheckIn is what Check gives in one size alone.
func CheckIn(x *ins.Text, size int) Report {
	rs := make([]*runner, len(x.Sizes.Names))
	turningSaid(x)
	rs[size] = settled(x, size, open(x))
	return report(x, rs)
}

// report tells what the work in each size found; nil: it was not worked.
func report(x *ins.Text, rs []*runner) Report {
	rep := Report{Read: x.Read, Sizes: x.Sizes.Names, Stitches: map[*ins.Line][]int{}}
	sizes := len(x.Sizes.Names)
	for _, s := range x.Sections {
		for _, l := range s.Lines {
			v := make([]int, sizes)
			for i := range v {
				v[i] = ins.None
			}
			rep.Stitches[l] = v
		}
	}
	var list []*merged
	var asked finding.List
	index := map[string]*merged{}
	for size, r := range rs {
		if r == nil {
			continue
		}
		for _, f := range r.misfit {
			list = merge(list, index, f.section, size, f.list)
		}
		for l, n := range r.made {
			rep.Stitches[l][size] = n
		}
		if len(asked) == 0 {
			asked = r.questions()
		}
	}
	rep.Findings = append(rep.Findings, x.Findings...)
	rep.Findings = append(rep.Findings, asked...)
	judge(x, list)
	list = unlikeOften(list)
	rep.Findings = append(rep.Findings, onceEach(x, list)...)
	rep.Findings = append(rep.Findings, mixed(x)...)
	rep.Findings = append(rep.Findings, turningUnlike(x)...)
	rep.Findings = append(rep.Findings, unexplained(x)...)
	rep.Findings = dropShort(rep.Findings)
	x.Place(rep.Findings)
	rep.Findings.Sort()
	return rep
}

// unlikeOften lets what is asked of chains be where many rows take them otherwise than the text says: that is how it is meant.
func unlikeOften(list []*merged) []*merged {
	asked := func(m *merged) bool { return m.kind == "rows/turning-chain" && m.sev == finding.Note }
	lines := map[int]bool{}
	for _, m := range list {
		if asked(m) {
			lines[m.at.Line] = true
		}
	}
	if len(lines) <= mostHeld {
		return list
	}
	return slices.DeleteFunc(list, asked)
}

// onceEach are the findings of all sizes, one for what a row uses or makes.
func onceEach(x *ins.Text, list []*merged) (out finding.List) {
	at := map[int]int{} // line: the finding that tells what its row uses or makes
	for _, m := range list {
		f := m.finding(x)
		k, there := at[f.Pos.Line]
		switch {
		case m.counted() && there:
			otherSizes(&out[k], f) // the same row, otherwise in other sizes
			continue
		case m.counted():
			at[f.Pos.Line] = len(out)
		}
		out = append(out, f)
	}
	return out
}

// inEachSize is the work of a text in every size, as many at a time as there are processors. What panics, panics in the caller.
func inEachSize(x *ins.Text) []*runner {
	turningSaid(x)
	out := make([]*runner, len(x.Sizes.Names))
	leftOpen := open(x)
	var next atomic.Int32
	var failed atomic.Pointer[any]
	var workers sync.WaitGroup
	for range min(len(out), runtime.GOMAXPROCS(0)) {
		workers.Go(func() {
			defer func() {
				if e := recover(); e != nil {
					failed.Store(&e)
				}
			}()
			for size := int(next.Add(1)) - 1; size < len(out); size = int(next.Add(1)) - 1 {
				out[size] = settled(x, size, leftOpen)
			}
		})
	}
	workers.Wait()
	if e := failed.Load(); e != nil {
		panic(*e)
	}
	return out
}

// settled is the work of a text in one size: done anew, with all that it leaves open taken as a first run settled it, if it leaves
// something open.
func settled(x *ins.Text, size int, leftOpen bool) *runner {
	r := newRunner(x, size)
	r.made = map[*ins.Line]int{}
	r.run()
	if !leftOpen || !r.opened {
		return r
	}
	again := newRunner(x, size)
	again.made, again.fixed, again.asks = map[*ins.Line]int{}, r.settled, r.asks
	again.run()
	return again
}

// open reports whether a text may leave something open, so that it is worked twice: once to settle it.
func open(x *ins.Text) bool {
	for _, s := range x.Sections {
		for _, l := range s.Lines {
			if slices.ContainsFunc(l.Body, func(n ins.Item) bool { return leavesOpen(x, n) }) {
				return true
			}
		}
	}
	return false
}

// leavesOpen reports whether an instruction may be meant in more than one way.
func leavesOpen(x *ins.Text, n ins.Item) bool {
	switch n := n.(type) {
	case *ins.Chain:
		_, all := x.Turning[0]
		_, said := x.Turning[n.N.All]
		return n.Count.How == ins.Unsaid && !all && (!said || n.N.By != nil)
	case *ins.Repeat:
		return n.InAll
	case *ins.Shape:
		return n.Vague
	}
	return false
}

// dropShort leaves out what follows from a line of numbers that is too short:
// it has been told itself.
func dropShort(list finding.List) finding.List {
	short := map[int][]string{}
	for _, f := range list {
		if f.Kind == "rows/sizes" {
			short[f.Pos.Line] = append(short[f.Pos.Line], f.Sizes...)
		}
	}
	return slices.DeleteFunc(list, func(f finding.Finding) bool {
		if f.Kind == "rows/sizes" || len(short) == 0 {
			return false
		}
		_, ok := short[f.Pos.Line]
		return ok
	})
}

// translates reports whether a line says what a word is in the other terms: hdc (half treble crochet UK).
func translates(words []ins.Word) bool {
	return slices.ContainsFunc(words, func(w ins.Word) bool {
		return w.Kind == 'w' && (w.S == "uk" || w.S == "us" || w.S == "british" || w.S == "american")
	})
}

// otherWords are the words of the other terms that a text has, each told once.
type otherWords struct {
	x    *ins.Text
	seen map[string]bool
	list finding.List
}

// look looks at the i-th word of a line, and gives how many words more belong to it.
func (o *otherWords) look(section string, words []ins.Word, i int) int {
	t, more := words[i], 0
	if t.Kind == 'w' && t.S == "double" && (i+1 == len(words) || words[i+1].S != "crochet") { // a double is of both
		return 0
	}
	if t.Kind != 'w' || o.x.Own[t.S] != nil || t.S == "tension" && i > 0 { // that of the yarn is of both
		return 0
	}
	if name, k := phrase(words[i:]); k > 1 { // half treble, double crochet
		t.S, t.End, more = name, words[i+k-1].End, k-1
	}
	w := strings.TrimRight(t.S, "0123456789")
	terms, ok := stitch.Only(w)
	if !ok {
		if terms, ok = stitch.Only(t.S); !ok {
			return more
		}
		w = t.S
	}
	in := o.x.TermsAt(t.Line)
	if !o.x.TermsSet || terms == in || w == "missed" || strings.HasSuffix(w, "trtr") || // 3 missed ch, as anybody says; in US terms a stitch taller than dtr
		o.seen[w] || o.x.Old && (strings.HasPrefix(w, "single") || strings.HasPrefix(w, "miss")) {
		return more
	}
	o.seen[w] = true
	f := finding.Finding{Kind: "words/terms", Severity: finding.Warning, Section: section,
		Pos:     o.x.Pos(ins.Span{Line: t.Line, Col: t.Col, End: t.End}),
		Message: fmt.Sprintf("%q is a %s word in a text in %s terms", t.S, terms, in)}
	if st, ok := stitch.Lookup(w, terms); ok {
		f.Fix = fmt.Sprintf("in %s terms it is %s", in, st.Abbr(in))
	} else if w == "miss" { // yarn makers in Canada write so
		f.Fix, f.Severity = "in US terms it is skip", finding.Note
	}
	o.list = append(o.list, f)
	return more
}

// mixed tells words of the other terms than those of the text.
func mixed(x *ins.Text) finding.List {
	o := otherWords{x: x, seen: map[string]bool{}}
	for _, s := range x.Sections {
		for _, l := range s.Lines {
			if translates(l.Words) {
				continue
			}
			for i := 0; i < len(l.Words); i++ {
				i += o.look(s.Name, l.Words, i)
			}
		}
	}
	out := o.list
	if !x.TermsSet {
		if at, ok := ambiguous(x); ok {
			out = append(out, finding.Finding{Kind: "words/terms", Severity: finding.Note,
				Pos:     x.Pos(at),
				Message: "the text does not say whether it is in US or UK terms", Fix: "write 'Terms: US' or 'Terms: UK' at the top"})
		}
	}
	return out
}

// phrase is the longest name of a stitch, in either terms, that the tokens begin with, and
// how many words it has: ins.None for one word alone.
func phrase(t []ins.Word) (name string, words int) {
	var buf [96]byte
	b := buf[:0]
	for k := 0; k < len(t) && k < stitch.Longest && (t[k].Kind == 'w' || k > 0 && t[k].Kind == 'n' && t[k].Glued) && len(b) < 80; k++ {
		if k > 0 && !t[k].Glued {
			b = append(b, ' ')
		}
		b = append(b, t[k].S...)
		if k == 0 {
			continue
		}
		_, us := stitch.LookupBytes(b, stitch.US)
		_, uk := stitch.LookupBytes(b, stitch.UK)
		if us || uk {
			name, words = string(b), k+1
		}
	}
	return name, words
}

// ambiguous finds a word that is a stitch in both terms, and another one in each.
func ambiguous(x *ins.Text) (ins.Span, bool) {
	for _, s := range x.Sections {
		for _, l := range s.Lines {
			for _, t := range l.Words {
				if t.Kind != 'w' {
					continue
				}
				a, ok := stitch.Lookup(t.S, stitch.US)
				b, ok2 := stitch.Lookup(t.S, stitch.UK)
				if ok && ok2 && a != b {
					return ins.Span{Line: t.Line, Col: t.Col, End: t.End}, true
				}
			}
		}
	}
	return ins.Span{}, false
}

// measure holds a written length against the rows worked so far at the gauge: half
// a row and half a printed step are within it. The other unit must round from the
// same length.
func (r *runner) measure(m *ins.Lengths) {
	i := r.size
	if i >= len(m.MM) {
		return
	}
	if m.Other != nil && i < len(m.Other) {
		cm, in := m.MM[i], m.Other[i]
		if m.Unit == units.Inch {
			cm, in = in, cm
		}
		tol := units.Of(units.Usual.CM, units.CM).Half().Add(units.Of(units.Usual.Inch, units.Inch).Half())
		if tol.Less(cm.Sub(in).Abs()) {
			r.tell("units/pair", finding.Warning, m.At, "the centimetres and the inches are not the same length: they are %h "+m.Unit.String()+" apart",
				"correct one of the two", hundredths(cm.Sub(in).Abs(), m.Unit))
		}
	}
	h, ok := r.height(r.no)
	if !ok || r.no <= 0 || len(m.MM) == 0 || strings.Contains(m.From, "beg") && r.cur != nil && !r.cur.anew {
		return
	}
	if m.When && h.Less(m.MM[i]) {
		r.no, r.side = -1, 0
		return
	}
	step := units.Usual.Step(m.Unit)
	tol := r.x.Gauge.RowHeight.Half().Add(units.Of(step, m.Unit).Half())
	if other, ok := r.height(r.altNo - 1); ok && r.altNo > 1 && !tol.Less(m.MM[i].Sub(other).Abs()) {
		return // the row numbers are wrong, which is told
	}
	if d := m.MM[i].Sub(h).Abs(); tol.Less(d) {
		u := m.Unit.String()
		rows := int(m.MM[i].Div(r.x.Gauge.RowHeight).Round())
		r.tell("rows/length", finding.Warning, m.At, "%s rows at this gauge measure %h "+u+", not %h "+u+" | %s rows worked | %s rows would measure that",
			"work %s rows, or correct the length", r.no, hundredths(h, m.Unit), hundredths(m.MM[i], m.Unit), r.no, rows, rows)
	}
}

// hundredths is a length in hundredths of a unit.
func hundredths(l units.Num, u units.Unit) int { return int(units.In(l, u).Times(100).Round()) }

// otherSizes adds to a finding what the same row has in other sizes.
func otherSizes(f *finding.Finding, g finding.Finding) {
	if len(f.Sizes) == 0 || len(g.Sizes) == 0 || slices.ContainsFunc(g.Sizes, func(s string) bool { return slices.Contains(f.Sizes, s) }) {
		return
	}
	if f.Have != "" {
		f.Have += "; "
	}
	f.Have += "in " + ins.SizesOf(g.Sizes) + " " + g.Message
	f.Sizes = append(slices.Clone(f.Sizes), g.Sizes...)
}
