package schematic_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// gaugeOf is the gauge of a maker who has so many stitches and rows over 10 cm.
func gaugeOf(sts, rows int64) []schematic.Gauge {
	return []schematic.Gauge{{Name: "fabric", Stitches: units.Int(sts), Rows: units.Int(rows), Over: units.Int(100)}}
}

// wrong are the findings of the families that an altered pattern may not have.
func wrong(l finding.List) finding.List {
	return slices.DeleteFunc(slices.Clone(l), func(f finding.Finding) bool {
		family, _, _ := strings.Cut(f.Kind, "/")
		return f.Severity != finding.Error && !slices.Contains([]string{"file", "arithmetic", "drawn", "units", "joins"}, family)
	})
}

// numbersOf are the numbers of a section of one size, as a maker would note them.
func numbersOf(s schematic.Section) string {
	switch s := s.(type) {
	case *schematic.CastOn:
		return fmt.Sprintf("cast on %d", s.Stitches.Int(0, 0))
	case *schematic.Sideways:
		return fmt.Sprintf("band %d of %d", s.Stitches.Int(0, 0), s.Rows.Int(0, 0))
	case *schematic.PickUp:
		return fmt.Sprintf("pick up %d in %d", s.Pick, s.Of)
	case *schematic.Even:
		return fmt.Sprintf("even %d", s.Rows.Int(0, 0))
	case *schematic.Shape:
		var all []string
		for _, h := range s.Shapings {
			runs := fmt.Sprintf("%d/%dx%d", h.By.Int(0, 0), h.Every.Int(0, 1), h.Times.Int(0, 1))
			for _, r := range h.Then {
				runs += fmt.Sprintf(" %dx%d", r.Every.Int(0, 1), r.Times.Int(0, 1))
			}
			if h.Offset > 0 {
				runs += fmt.Sprintf(" after %d", h.Offset)
			}
			all = append(all, runs)
		}
		return strings.Join(all, " and ")
	case *schematic.AddEdge:
		return fmt.Sprintf("add %d", s.Stitches.Int(0, 0))
	case *schematic.BindOff:
		if s.All {
			return "all"
		}
		return fmt.Sprintf("off %dx%d", s.Stitches.Int(0, 0), s.Times.Int(0, 1))
	case *schematic.Mitre:
		return fmt.Sprintf("mitre %d/%dx%d", s.By.Int(0, 0), s.Every.Int(0, 0), s.Times.Int(0, 0))
	case *schematic.ShortRows:
		return fmt.Sprintf("short %d over %d by %d", s.Rows.Int(0, 0), s.Over.Int(0, 0), s.Step.Int(0, 0))
	case *schematic.Mark:
		return fmt.Sprintf("mark %d, first %d, apart %d", s.Inset.Int(0, 0), s.First.Int(0, 0), s.Apart.Int(0, 0))
	case *schematic.Divide:
		var all []string
		for _, p := range s.Parts {
			all = append(all, fmt.Sprint(p.Stitches.Int(0, 0)))
		}
		return "divide " + strings.Join(all, " ")
	case *schematic.Panels:
		var all []string
		for _, p := range s.Of {
			all = append(all, fmt.Sprint(p.Stitches.Int(0, 0)))
		}
		return "panels " + strings.Join(all, " ")
	case *schematic.JoinParts:
		var all []string
		for _, p := range s.Of {
			if !p.Added.IsZero() {
				all = append(all, fmt.Sprint(p.Added.Int(0, 0)))
			}
		}
		return strings.TrimSpace("join " + strings.Join(all, " "))
	}
	return "?"
}

// Sections of a piece at 20 stitches and 40 rows over 10 cm, and what they are at other gauges, reckoned by hand.
func TestSectionsAreReckonedAnewByHand(t *testing.T) {
	for _, c := range []struct {
		name, sections string
		sts, rows      int64
		want           string
	}{
		// Two rows for the stitches bound off at both edges stay two: (20 + 32 + 16 + 2 + 24) / 2 = 47 rows, less 10 + 16 + 8 + 2,
		// leave 11, which hold 3 decreases on every other row: every 4, 4 and 2.
		{"half as many of both", `
      - cast on: 40
      - even: 20 rows
      - {increase: 1, at: both edges, every: 8 rows, times: 4}
      - even: 16 rows
      - {bind off: 4, at: both edges}
      - {decrease: 1, at: both edges, every: 4 rows, times: 6}
      - even: 12 rows
      - bind off: all
`, 10, 20, "cast on 20; even 10; 1/8x2; even 8; off 2x1; 1/4x2 2x1; even 6; all"},
		// 48 × ¾ = 36 stitches: 3 increases at each edge; 28 × ¾ = 21: 30 less 4 at each edge, and 1 more. 94 × ¾ = 70.5 rows less 53
		// are 18, 9 slots for 4. 106 × ¾ = 79.5 less 71 are 9.
		{"three quarters as many of both", `
      - cast on: 40
      - even: 20 rows
      - {increase: 1, at: both edges, every: 8 rows, times: 4}
      - even: 16 rows
      - {bind off: 4, at: both edges}
      - {decrease: 1, at: both edges, every: 4 rows, times: 6}
      - even: 12 rows
      - bind off: all
`, 15, 30, "cast on 30; even 15; 1/8x3; even 12; off 3x1; 1/6x1 4x3 and 1/1x1; even 9; all"},
		// 4 × 5 = 20 stitches are 10 in as many steps: 3 twice, then 2 twice; of 6 that are added 3.
		{"half as many stitches, as many rows: bind-offs in steps", `
      - cast on: 60
      - even: 20 rows
      - {bind off: 5, at: right edge, every: 2 rows, times: 4}
      - even: 8 rows
      - {add: 6, at: left edge}
      - even: 8 rows
      - bind off: all
`, 10, 40, "cast on 30; even 20; off 3x2; off 2x2; even 8; add 3; even 8; all"},
		// 12 decreases are 18: 9, 6 and 3 of each run, over 12, 16 and 12 rows made half as many again. 48 × 1½ = 72: 30 stitches fewer,
		// 6 at a time, in 22 slots of 45 rows: 4 rows each and 2 slots over.
		{"one and a half times as many: a curve in three runs, a slope across the row", `
      - cast on: 80
      - even: 10 rows
      - {decrease: 1, at: right edge, every: 2 rows, times: 6, then: [{every: 4 rows, times: 4}, {every: 6 rows, times: 2}]}
      - {decrease: 4, at: across, every: 6 rows, times: 5}
      - bind off: all
`, 30, 60, "cast on 120; even 15; 1/2x9 4x6 6x3; 6/10x2 8x3; all"},
		// 3 increases are 1½, a tie goes up: 2 over 6 rows; 53 / 2 = 26.5 = 30 + 2 − 5.5, so 6 decreases.
		{"two shapings side by side", `
      - cast on: 60
      - even: 10 rows
      - shape:
          - {decrease: 1, at: left edge, every: 2 rows, times: 10}
          - {increase: 1, at: right edge, every: 4 rows, times: 3}
        rows: 24
      - bind off: all
`, 10, 20, "cast on 30; even 5; 1/2x6 and 1/4x1 2x1; all"},
		// 70 × 13/20 = 45.5 up to 46, 26 × 13/20 = 16.9: 46 − 17 − 17 = 12.
		{"a divided front, as many left in its middle as its width asks", `
      - cast on: 70
      - even: 40 rows
      - divide:
          - {part: L, stitches: 26, sections: [{decrease: 1, at: right edge, every: 2 rows, times: 6}, {bind off: all}]}
          - leave: 18
          - {part: R, stitches: 26, mirror of: L}
`, 13, 27, "cast on 46; even 27; divide 17 12 17"},
		// 61 × ¾ = 45.75, 20 × ¾ = 15: 46 − 15 − 15 = 16.
		{"panels, of which the middle one takes what is left", `
      - cast on: 61
      - panels: [{panel: A, stitches: 20}, {panel: B, stitches: 21}, {panel: C, stitches: 20}]
      - even: 10 rows
      - bind off: all
`, 15, 40, "cast on 46; panels 15 16 15; even 10; all"},
		// 8 short rows turn three times by 10, 30 sts; 4 turn once, by 15.
		{"short rows and a mark", `
      - cast on: 60
      - even: 10 rows
      - {short rows: 8, over: 48, at: left edge, step: 10 sts}
      - {mark: button, count: 5, at: right edge, inset: 4, first: 6 rows, apart: 10 rows, along: yes}
      - even: 60 rows
      - bind off: all
`, 10, 20, "cast on 30; even 5; short 4 over 24 by 15; mark 2, first 3, apart 5; even 30; all"},
		// 40, 16 and 8 halved; where 8 went 8 come back: 4.
		{"a gap that is closed again", `
      - cast on: 40
      - even: 20 rows
      - divide: [{part: A, stitches: 16, sections: [{even: 2 rows}]}, {hold: 8, name: thumb}, {part: B, stitches: 16, sections: [{even: 2 rows}]}]
      - join parts: [A, {add: 8}, B]
      - even: 20 rows
      - bind off: all
`, 10, 20, "cast on 20; even 10; divide 8 4 8; join 4; even 10; all"},
		// 60 × ¾ = 45 and 40 × ¾ = 30: 15 fewer are 7 at each edge and 1 more; 7 are seven times 1 over 20 rows, by twos as published: 10 slots,
		// of which 3 are left for the first three.
		{"two at a time at both edges", `
      - cast on: 60
      - even: 10 rows
      - {decrease: 2, at: both edges, every: 4 rows, times: 5}
      - bind off: all
`, 15, 40, "cast on 45; even 10; 1/4x3 2x4 and 1/1x1; all"},
		// 50 × 1.1 = 55, 42 × 1.1 = 46.2: 9 fewer, three times 3 in 4 slots of 2 rows.
		{"two at a time at one edge", `
      - cast on: 50
      - even: 10 rows
      - {decrease: 2, at: right edge, every: 2 rows, times: 4}
      - bind off: all
`, 22, 40, "cast on 55; even 10; 3/4x1 2x2; all"},
		// The edge of three shapings of 2 beside ten of 1: 6 × 1½ = 9, 3 at a time; 64 × 1½ = 96 = 120 − 9 − 15.
		// 15 over the 20 rows of the ten are more than every other row holds: 5 over 2 rows each and 10 over one.
		{"two shapings, one of them of two stitches", `
      - cast on: 80
      - even: 10 rows
      - shape:
          - {decrease: 1, at: left edge, every: 2 rows, times: 10}
          - {decrease: 2, at: right edge, every: 4 rows, times: 3}
        rows: 24
      - bind off: all
`, 30, 40, "cast on 120; even 10; 1/2x5 1x10 and 3/4x3; all"},
		// Along 80 rows 3 in every 4 are 60 stitches; along 40 rows 30.
		{"a band along its long edge", `
      - {sideways: rib, stitches: 10, rows: 80}
      - {pick up: 3 in every 4 rows}
      - even: 10 rows
      - bind off: all
`, 10, 20, "band 5 of 40; pick up 3 in 4; even 5; all"},
	} {
		t.Run(c.name, func(t *testing.T) {
			a, found := altered(t, pieces(t, "  - piece: P\n    sections:"+c.sections), c.sts, c.rows)
			var got []string
			for _, s := range a.Pattern.Pieces[0].Sections {
				got = append(got, numbersOf(s))
			}
			assert.Equal(t, c.want, strings.Join(got, "; "), "%v", found)
		})
	}
}
