package grade

import (
	"fmt"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// respread spreads shapings over other rows and stitches, each run by itself, so
// that a curve stays a curve.
type respread struct {
	found *finding.List
	piece string
}

// shape alters a section of shapings in place: its stitches by the ratio sts, its
// rows by the ratio rows to total rows. It goes from before stitches to as near
// after as its places allow, and gives the stitches that there are then.
func (t *respread) shape(s *schematic.Shape, step schematic.Step, sts, rows units.Num, total, before int, after units.Num) int {
	places := make([]int, len(s.Shapings)) // stitches that one shaping changes, both edges together
	was, change := 0, 0
	for i := range s.Shapings {
		h := &s.Shapings[i]
		places[i] = max(1, h.By.Int(0, 1)) * t.placesOf(s, h, step)
		was += shapingTimes(h) * places[i]
	}
	for i := range s.Shapings {
		h := &s.Shapings[i]
		n := shapingTimes(h)
		sign := -1
		if h.Increase {
			sign = 1
		}
		want := sts.Times(n)
		if len(s.Shapings) == 1 {
			want = after.Sub(units.Int(int64(before))).Times(sign).Div(units.Int(int64(places[i]))) // meet the stitches that follow
		}
		m := max(0, int(want.Round()))
		if n == 0 {
			m = 0
		}
		t.spacings(s, h, n, m, rows, total)
		change += sign * m * places[i]
	}
	if !s.Rows.IsZero() || !s.Length.IsZero() {
		s.Amount = schematic.Amount{Rows: expr.Counts(total)}
	}
	return before + change
}

// placesOf is at how many places of a row a shaping falls.
func (t *respread) placesOf(s *schematic.Shape, h *schematic.Shaping, step schematic.Step) int {
	switch h.At {
	case schematic.BothEdges:
		return 2
	case schematic.Lines:
		n := shapingTimes(h) * max(1, h.By.Int(0, 1))
		d := step.After - step.Before
		for i := range s.Shapings { // the rest of the change is that of the lines
			if o := &s.Shapings[i]; o != h {
				if o.At == schematic.Lines {
					return 2
				}
				by := shapingTimes(o) * max(1, o.By.Int(0, 1)) * t.placesOf(s, o, step)
				if o.Increase {
					by = -by
				}
				d += by
			}
		}
		if n > 0 && d != 0 {
			return max(d, -d) / n
		}
		return 2
	}
	return 1
}

func shapingTimes(h *schematic.Shaping) int {
	n := 1
	if !h.Times.IsZero() {
		n = h.Times.Int(0, 0)
	}
	for _, r := range h.Then {
		n += r.Times.Int(0, 0)
	}
	return n
}

// spacings gives a shaping m times instead of n, each of its runs over its own share of the rows.
func (t *respread) spacings(s *schematic.Shape, h *schematic.Shaping, n, m int, rows units.Num, total int) {
	runs := []Run{{max(1, h.Every.Int(0, 1)), 1}}
	if !h.Times.IsZero() {
		runs[0].Times = h.Times.Int(0, 0)
	}
	for _, r := range h.Then {
		runs = append(runs, Run{max(1, r.Every.Int(0, 1)), r.Times.Int(0, 0)})
	}
	step := RowStep(h.On)
	if step == 1 {
		step = 2
		for _, r := range runs {
			if r.Times > 0 && r.Every%2 == 1 {
				step = 1
			}
		}
	}
	h.Offset = int(rows.Times(h.Offset).Round())
	room := total - h.Offset
	if m > room/step && step == 2 {
		step = 1
	}
	if m > room {
		*t.found = append(*t.found, finding.Finding{Kind: "alter/shape", Severity: finding.Warning, Pos: h.Pos, Piece: t.piece,
			Message: fmt.Sprintf("%d shapings are needed and there are %d rows for them", m, room), Fix: "shape two stitches in some rows, or alter the length"})
		m = max(0, room)
	}
	var out []Run
	doneT, doneR, sumT, sumR := 0, 0, 0, 0
	for _, r := range runs {
		if r.Times == 0 {
			continue
		}
		sumT += r.Times
		sumR += r.Every * r.Times
		toT := int(units.Frac(int64(sumT)*int64(m), int64(n)).Round())
		toR := min(room, int(rows.Times(sumR).Round()))
		if step == 2 {
			toR -= (toR - doneR) % 2
		}
		// Every shaping needs a row: take it from the runs that follow.
		toR = min(room, max(toR, doneR+(toT-doneT)*step))
		for toT > doneT && (toT-doneT)*step > toR-doneR {
			toT--
		}
		plan, err := Spread(toT-doneT, toR-doneR, step, SlowFirst)
		if err == nil {
			out = append(out, plan.Runs...)
			doneT, doneR = toT, doneR+plan.Rows()-plan.Rest
		}
	}
	if doneT < m { // what rounding left over goes where rows are left
		if plan, err := Spread(m-doneT, room-doneR, 1, SlowFirst); err == nil {
			out = append(out, plan.Runs...)
		} else if plan, err := Spread(m, room, 1, SlowFirst); err == nil {
			out = plan.Runs
		}
	}
	if len(out) == 0 {
		out = []Run{{1, 0}}
	}
	h.Every, h.Times, h.Then = expr.Counts(out[0].Every), expr.Counts(out[0].Times), nil
	for _, r := range out[1:] {
		h.Then = append(h.Then, schematic.Spacing{Every: expr.Counts(r.Every), Times: expr.Counts(r.Times)})
	}
}
