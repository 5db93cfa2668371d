package instructions

import (
	"slices"
	"strings"

	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
)

// And is a list in words: S, M and 2X.
func And(list []string) string {
	k := len(list) - 1
	if k < 1 {
		return strings.Join(list, "")
	}
	return strings.Join(list[:k], ", ") + " and " + list[k]
}

// SizesOf names sizes in words: size M, sizes M and 2X.
func SizesOf(names []string) string {
	if len(names) == 1 {
		return "size " + names[0]
	}
	return "sizes " + And(names)
}

// Place names the row, and the heading where that is not said, of each finding that stands in the text.
func (x *Text) Place(list finding.List) {
	if len(list) == 0 {
		return
	}
	type place struct {
		row, section string
	}
	at := map[int]place{}
	for _, s := range x.Sections {
		for _, l := range s.Lines {
			for k := l.At.Line; k <= l.Last(); k++ {
				if _, there := at[k]; !there {
					at[k] = place{x.RowName(l), s.Name}
				}
			}
		}
	}
	for i := range list {
		f := &list[i]
		p, ok := at[f.Pos.Line]
		if !ok || f.Pos.File != x.Name {
			continue
		}
		f.Row = p.row
		if f.Section == "" && f.Piece == "" {
			f.Section = p.section
		}
	}
}

// Last is the last line of the text that the instruction line goes on to.
func (l *Line) Last() int {
	k := l.At.Line
	for _, w := range l.Words {
		k = max(k, w.Line)
	}
	return k
}

// RowName is how a line is called, as it is written; empty if it is called nothing.
func (x *Text) RowName(l *Line) string {
	if l.Label == nil {
		return ""
	}
	return finding.Clip(strings.TrimRight(x.Quote(l.Label.At), " :.–—-"))
}

// Quote is what stands in a place of the text.
func (x *Text) Quote(at Span) string {
	if at.Line < 1 || at.Line > len(x.Src) {
		return ""
	}
	r := []rune(x.Src[at.Line-1])
	if at.Col < 1 || at.End <= at.Col || at.End-1 > len(r) {
		return ""
	}
	return string(r[at.Col-1 : at.End-1])
}

// Pair reports whether two instructions are unlike stitches over one each, of which only the second has a place, and but one: sc and dc in
// next st. The second may be such a pair itself.
func Pair(n, m Item) bool {
	if q, ok := m.(*Repeat); ok && q.Apart {
		last := *q.Body[len(q.Body)-1].(*Stitch)
		last.Places = q.Places
		return Pair(n, &last)
	}
	a, ok := n.(*Stitch)
	b, both := m.(*Stitch)
	if !ok || !both || len(a.Places) > 0 || len(b.Places) != 1 || len(b.Also) > 0 || a.Kind == nil || b.Kind == nil || a.Kind == b.Kind {
		return false
	}
	plain := func(st *Stitch) bool {
		return st.Kind.Craft == stitch.Crochet && st.Kind.Uses == 1 && st.Kind.Makes == 1 && st.N.By == nil && st.N.All < 6
	}
	p := b.Places[0]
	one := (p.Kind == InNext || p.Kind == InFirst || p.Kind == InLast) && p.N.By == nil && p.N.All == 1
	return plain(a) && plain(b) && a.Kind.ID != "slst" && (one || p.Kind == InSame || p.Kind == FromHook || p.Kind == InEach)
}

// InOnePlace works instructions into the place of the last of them.
func InOnePlace(list ...Item) *Repeat {
	k := len(list) - 1
	q := &Repeat{Body: slices.Clone(list[:k]), Times: N(1), Stop: -1}
	switch last := list[k].(type) {
	case *Stitch:
		bare := *last
		bare.Places = nil
		q.Body, q.Places = append(q.Body, &bare), last.Places
	case *Repeat:
		q.Body, q.Places = append(q.Body, last.Body...), last.Places
	}
	at := list[0].Span()
	if end := list[k].Span(); end.Line == at.Line {
		at.End = end.End
	}
	q.Put(at)
	return q
}
