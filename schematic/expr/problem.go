package expr

import "flatwright/schematic/finding"

// Span is a stretch of a text in characters (not bytes), from 0, End exclusive.
type Span struct{ Start, End int }

// Problem is what is wrong in a text, and where in it. Kind is one of the kinds
// of package finding.
type Problem struct {
	Kind    string
	Span    Span
	Message string
	Want    string
	Fix     string
	Sizes   []string
}

// Error is the message.
func (p *Problem) Error() string { return p.Message }

// Finding is the problem as an error of a file, with the text's first character at pos.
func (p *Problem) Finding(pos finding.Pos) finding.Finding {
	at := pos
	if pos.Col > 0 {
		at.Col, at.EndCol = pos.Col+p.Span.Start, pos.Col+p.Span.End
	}
	return finding.Finding{
		Kind: p.Kind, Severity: finding.Error, Pos: at,
		Message: p.Message, Want: p.Want, Fix: p.Fix, Sizes: p.Sizes,
	}
}

func (p *Problem) shifted(by int) *Problem {
	q := *p
	q.Span.Start += by
	q.Span.End += by
	return &q
}
