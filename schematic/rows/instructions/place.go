package instructions

import (
	"strings"

	"flatwright/schematic/finding"
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
