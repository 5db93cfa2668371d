package schematic_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/given"
)

const back = `version: 1
pattern: Back
terms: UK
units: cm
sizes: S
gauges:
  fabric: 20 sts and 40 rows over 10 cm
pieces:
  - piece: Back
    sections:
`

// What is wrong in a piece, what is found and how to mend it, each number by hand.
func TestWhatIsWrongIsToldInNumbers(t *testing.T) {
	for name, k := range map[string]struct {
		sections, message, have, fix string
		after                        int // stitches of the section that is told of, or -1
	}{
		// 30 + 20 + 20 are 70, ten too few.
		"parts too few": {`
      - cast on: 80
      - even: 10 rows
      - divide:
          - {bind off: 30, name: right shoulder, edge: shoulder}
          - {bind off: 20, name: back neck, edge: neck}
          - {bind off: 20, name: left shoulder, edge: shoulder}
`, "the parts have 70 stitches and the row has 80", "30 + 20 + 20 = 70", "make the parts 10 sts more in all, or the row before it 10 sts fewer", -1},
		"parts too many": {`
      - cast on: 69
      - even: 10 rows
      - divide:
          - {bind off: 30, name: right shoulder, edge: shoulder}
          - {bind off: 40, name: rest, edge: neck}
`, "the parts have 70 stitches and the row has 69", "30 + 40 = 70", "make the parts 1 st fewer in all, or the row before it 1 st more", -1},
		// 30 at each edge twice are 120; once they are 60, and 20 stay.
		"bound off too often": {`
      - cast on: 80
      - even: 10 rows
      - {bind off: 30, at: both edges, every: 2 rows, times: 2, edge: shoulder}
      - even: 4 rows
      - bind off: all
`, "120 stitches are taken off, and there are 80", "30 × 2 times at each of both edges", "take off fewer, or say `bind off: all`", 20},
		"bound off at one edge": {`
      - cast on: 80
      - even: 10 rows
      - {bind off: 81, at: right edge, edge: shoulder}
      - bind off: all
`, "81 stitches are taken off, and there are 80", "81", "take off fewer, or say `bind off: all`", 80},
		"every third row on one side": {`
      - cast on: 80
      - even: 10 rows
      - {decrease: 1, at: both edges, every: 3 rows, times: 4, on: right-side rows}
      - bind off: all
`, "", "every 3 rows falls on right-side and wrong-side rows in turn", "shape every 2 or every 4 rows", 72},
		"every row on one side": {`
      - cast on: 80
      - even: 10 rows
      - {decrease: 1, at: both edges, every: 1 row, times: 4, on: right-side rows}
      - bind off: all
`, "", "every 1 rows falls on right-side and wrong-side rows in turn", "shape every 2 rows", 72},
		// 6 × 5 rows are 30.
		"rows too few": {`
      - cast on: 80
      - {decrease: 1, at: both edges, every: 5 rows, times: 6, rows: 28}
      - bind off: all
`, "the shaping needs 30 rows and there are 28", "", "", 68},
	} {
		t.Run(name, func(t *testing.T) {
			p := given.Text(t, back+k.sections[1:])
			g := schematic.Work(p, 0)
			if !assert.Len(t, g.Findings, 1, "%v", g.Findings) {
				return
			}
			f := g.Findings[0]
			if k.message != "" {
				assert.Equal(t, k.message, f.Message)
			}
			if k.have != "" {
				assert.Equal(t, k.have, f.Have)
			}
			if k.fix != "" {
				assert.Equal(t, k.fix, f.Fix)
			}
			if k.after >= 0 {
				for _, s := range g.Pieces[0].Steps {
					if s.Section.Base().Pos.Line <= f.Pos.Line && f.Pos.Line < s.Section.Base().Pos.Line+1 {
						assert.Equal(t, k.after, s.After)
					}
				}
			}
		})
	}
}

// 20 sts and 40 rows over 10 cm: a stitch is 5 mm, a row 2.5. A mark of so many from the right edge, and one without a number in the middle: 40 of 80
// sts are 200 mm from each edge, and x is 0 there.
func TestWhereMarksStand(t *testing.T) {
	for name, k := range map[string]struct {
		mark string
		x, y float64
	}{
		"in the middle":     {"{mark: pocket}", 0, 50},
		"at a stitch":       {"{mark: pocket, stitch: 10}", 150, 50},
		"at the left edge":  {"{mark: pocket, at: left edge, inset: 0}", -200, 50},
		"at the right edge": {"{mark: pocket, at: right edge, inset: 0}", 200, 50},
		"in from the left":  {"{mark: pocket, at: left edge, inset: 4}", -180, 50},
		"in from the right": {"{mark: pocket, at: right edge, inset: 4}", 180, 50},
	} {
		p := given.Text(t, back+"      - cast on: 80\n      - even: 20 rows\n      - "+k.mark+"\n      - even: 20 rows\n      - bind off: all\n")
		v := schematic.Work(p, 0).Pieces[0].Views[0]
		if assert.Len(t, v.Marks, 1, name) {
			assert.InDelta(t, k.x, v.Marks[0].At.X, 1e-9, name)
			assert.InDelta(t, k.y, v.Marks[0].At.Y, 1e-9, name)
		}
	}
}

// Rows as a length that end on a side: 5 cm at 40 rows over 10 cm are 20, from a right-side row, and end after a wrong-side one; 19 or 21 end after
// a right-side one; 5.1 cm are 20.4, nearer to 21.
func TestRowsOfALengthEndOnTheirSide(t *testing.T) {
	for _, k := range []struct {
		even string
		rows int
	}{
		{"even: 5 cm", 20}, {"{even: 5 cm, end after: wrong-side row}", 20}, {"{even: 5.1 cm, end after: right-side row}", 21}, {"{even: 4.9 cm, end after: right-side row}", 19},
		{"{even: 5.2 cm, end after: wrong-side row}", 20}, {"{even: 5.3 cm, end after: wrong-side row}", 22}, {"even: 5.3 cm", 21},
	} {
		p := given.Text(t, back+"      - cast on: 80\n      - "+k.even+"\n      - bind off: all\n")
		assert.Equal(t, k.rows, schematic.Work(p, 0).Pieces[0].Steps[1].Rows, k.even)
	}
}
