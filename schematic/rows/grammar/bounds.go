package grammar

import (
	"fmt"
	"slices"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

// Bounds of a text, so that no reading runs away.
const (
	maxText  = 1 << 20 // bytes
	maxLines = 20000
	maxLine  = 20000 // bytes: a long row in sixty sizes has a few thousand
	maxWords = 60000 // a long pattern has 10,000
	maxNames = 300   // groups of stitches that a text defines: each word is held against them
	maxWorks = 6000  // lines of rows, each worked in every size
)

// bound takes out the lines that are too long to read, and tells them.
func bound(x *ins.Text) {
	told := 0
	for i, l := range x.Src {
		if len(l) <= maxLine {
			continue
		}
		x.Src[i] = ""
		if told++; told <= 20 {
			x.Tell(finding.Finding{Kind: "rows/bounds", Severity: finding.Error, Message: fmt.Sprintf("this line has %d characters, too many to read", len([]rune(l))),
				Want: fmt.Sprintf("at most about %d", maxLine), Fix: "put each row on a line of its own"}, ins.Span{Line: i + 1, Col: 1, End: 2})
		}
	}
}

// over tells of the numbers of a line that are more than are counted: the line is not checked.
func (r *Reader) over(tokens []text.Token, l *ins.Line) {
	for i := range tokens {
		t := &tokens[i]
		if t.Kind != 'n' || t.Num.All <= ins.Most && (len(t.Num.By) == 0 || slices.Max(t.Num.By) <= ins.Most) {
			continue
		}
		l.Short, l.Stated = true, nil
		r.x.Tell(finding.Finding{Kind: "rows/bounds", Severity: finding.Error, Message: finding.Clip(t.S) + " is more than is counted, so that this row is not checked",
			Want: fmt.Sprintf("at most %d", ins.Most), Fix: "correct the number"}, ins.Span{Line: t.Line, Col: t.Col, End: t.End})
		return // once a line is enough
	}
}

// few takes out the rows that are too many to be worked in every size, and tells from where.
func few(x *ins.Text) {
	left := maxWorks / max(1, len(x.Sizes.Names))
	for i, s := range x.Sections {
		if s.Prose {
			continue
		}
		if left -= len(s.Lines); left >= 0 {
			continue
		}
		at := s.Lines[len(s.Lines)+left].At
		x.Tell(finding.Finding{Kind: "rows/bounds", Severity: finding.Error, Message: fmt.Sprintf("from here on the rows are too many to be worked in %d sizes", len(x.Sizes.Names)),
			Want: fmt.Sprintf("at most %d lines of rows in all sizes together", maxWorks), Fix: "put some of the sizes or sections into a text of their own"}, at)
		s.Lines = s.Lines[:len(s.Lines)+left]
		x.Sections = x.Sections[:i+1]
		return
	}
}
