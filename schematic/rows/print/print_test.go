package print_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic"
	"flatwright/schematic/random"
	"flatwright/schematic/rows"
	"flatwright/schematic/rows/print"
	"flatwright/schematic/stitch"
)

// works works a pattern in every size; it reports false where a size has a finding.
func works(p *schematic.Pattern) ([]*schematic.Garment, bool) {
	var out []*schematic.Garment
	for i := range p.Sizes.Names {
		g := schematic.Work(p, i)
		if len(g.Findings) > 0 {
			return nil, false
		}
		out = append(out, g)
	}
	return out, true
}

// What is printed from a pattern reads back with no finding, every line of it, in
// either terms, in all sizes and in one.
func TestPrintedRowsReadBackWithNoFinding(t *testing.T) {
	gen := random.Pattern(random.Options{Sizes: 5, Pieces: 6})
	texts, lines := 0, 0
	rapid.Check(t, func(r *rapid.T) {
		p := gen.Draw(r, "pattern")
		gs, ok := works(p)
		if !ok {
			r.Skip("a finding of the working")
		}
		o := print.Options{Terms: stitch.Terms(rapid.IntRange(0, 1).Draw(r, "terms")), Size: rapid.IntRange(-1, len(gs)-1).Draw(r, "size")}
		text := print.Rows(p, gs, o)
		x := rows.Read("printed", []byte(text), rows.Options{})
		rep := rows.Check(x, rows.Options{})
		for _, f := range rep.Findings {
			r.Fatalf("line %d: %s %s %s | %s | %s\n%s", f.Pos.Line, f.Kind, f.Message, f.Sizes, f.Have, f.Want, text)
		}
		require.Equal(r, rep.Read.Lines, rep.Read.Whole, text)
		texts++
		lines += rep.Read.Lines
	})
	t.Logf("%d texts, %d lines", texts, lines)
}

// The counts and rows of a printed text are those of the pattern.
func TestPrintedRowsAgreeWithTheirPattern(t *testing.T) {
	gen := random.Pattern(random.Options{Sizes: 4, Pieces: 6})
	rapid.Check(t, func(r *rapid.T) {
		p := gen.Draw(r, "pattern")
		gs, ok := works(p)
		if !ok {
			r.Skip("a finding of the working")
		}
		text := print.Rows(p, gs, print.Options{Size: -1})
		for _, f := range rows.Against(rows.Read("printed", []byte(text), rows.Options{}), p, gs) {
			if f.Kind != "rows/piece" {
				r.Fatalf("line %d: %s %s %s | %s | %s\n%s", f.Pos.Line, f.Kind, f.Message, f.Sizes, f.Have, f.Want, text)
			}
		}
	})
}
