package schematic_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/given"
)

// squared works pieces of one size at 10 stitches and 10 rows over 10 cm: a stitch is 1 cm wide and a row 1 cm high, so
// that every number of a drawing is a count of the text.
func squared(t *testing.T, text string) *schematic.Garment {
	t.Helper()
	return bysize.WorkAll(given.Text(t, "version: 1\npattern: Squares\nterms: US\nunits: cm\nsizes: One\ngauges:\n  fabric: 10 sts and 10 rows over 10 cm in hdc\n  wide: 5 sts and 10 rows over 10 cm in bobbles\n"+text))[0]
}

// cm is a length in mm as centimetres, to a hundredth of a millimetre.
func cm(mm float64) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.3f", math.Round(mm*100)/1000+0), "0"), ".")
}

func at(p schematic.Point) string { return cm(p.X) + "," + cm(p.Y) }

func path(ps []schematic.Point) string {
	all := make([]string, len(ps))
	for i, p := range ps {
		all[i] = at(p)
	}
	return strings.Join(all, " ")
}

var (
	lineWords = map[schematic.LineKind]string{schematic.LineChange: "change", schematic.LineFold: "fold", schematic.LineCentre: "centre", schematic.LinePanel: "panel",
		schematic.LineCell: "cell", schematic.LineMark: "mark", schematic.LineSlit: "slit", schematic.LineBehind: "behind"}
	axisWords = map[schematic.Axis]string{schematic.Horizontal: "across", schematic.Vertical: "up", schematic.Slanted: "along"}
)

// told is a piece as text: of each drawing its outline, lines, ribs, marks and parts; its edges with what makes them, and
// every measurement.
func told(m *schematic.Made) string {
	var out []string
	add := func(format string, args ...any) {
		out = append(out, strings.TrimRight(fmt.Sprintf(format, args...), " "))
	}
	for _, v := range m.Views {
		for _, l := range v.Outline {
			if v.Disc { // a circle through its points
				add("circle %s", cm(l[0].X))
				continue
			}
			add("%s: %s", strings.TrimSpace("outline "+v.Name), path(l))
		}
		for _, l := range v.Lines {
			add("  %s %s to %s %s", lineWords[l.Kind], at(l.A), at(l.B), l.Name)
		}
		for _, r := range v.Ribs {
			add("  rib %s", path(r.Poly))
		}
		for _, k := range v.Marks {
			add("  %s %s", k.What, at(k.At))
		}
		for _, k := range v.Notches {
			add("  joined %d %s", k.Number, at(k.At))
		}
		if v.Raised.Sign() > 0 {
			add("  raised %s", cm(v.Raised.Float()))
		}
	}
	for _, e := range m.Edges {
		side := ""
		if e.Left {
			side = " left"
		}
		if e.Right {
			side += " right"
		}
		of := ""
		if e.Stitches > 0 {
			of += fmt.Sprintf(" %d sts", e.Stitches)
		}
		if e.Rows > 0 {
			of += fmt.Sprintf(" %d rows", e.Rows)
		}
		add("%s%s: %s cm%s", e.Name, side, cm(e.Length.Float()), of)
	}
	for _, s := range m.Measures {
		of := ""
		if s.Count > 0 {
			of = fmt.Sprintf(" %d %ss", s.Count, s.Of)
		}
		shown := ""
		if !s.Main {
			shown = " hidden"
		}
		where := " " + axisWords[s.Axis] + " " + at(s.A) + " to " + at(s.B)
		if s.View == schematic.NoView {
			where = ""
		}
		around := ""
		if s.Around {
			around = " around"
		}
		add("= %s %s%s%s%s%s", strings.TrimPrefix(s.ID, m.ID+"."), cm(s.Length.Float()), around, of, where, shown)
	}
	for _, a := range m.Areas {
		add("%s %s cm²", a.Gauge, cm(a.Area.Float()/10))
	}
	return strings.Join(out, "\n")
}

// Pieces of every kind of section, counted by hand: each number below is one of the text above it, or a sum of them that
// stands before the pieces.
func TestWhatIsDrawnIsWhatIsCounted(t *testing.T) {
	for _, c := range squares() {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, m := range squared(t, c.pieces).Pieces {
				got = append(got, "-- "+m.Name, told(m))
			}
			assert.Equal(t, c.want, strings.Join(got, "\n"))
		})
	}
}

type square struct{ name, pieces, want string }

func squares() []square {
	return []square{
		// 24 × 40, 37 + 34 as the armholes are bound off, 4 rows of 32 on the mean, 10 × 30, 2 × (4 × 9 + 4 + 4) = 1547 cm²
		{"a back with armholes, a neck and shoulders in steps", `pieces:
  - piece: Back
    sections:
      - cast on: 40
      - {even: 4 rows, rib: yes}
      - even: 20 rows
      - {bind off: 3, at: both edges}
      - {decrease: 1, at: both edges, every: 2 rows, times: 2}
      - even: 10 rows
      - divide:
          - {part: R, stitches: 10, sections: [{decrease: 1, at: left edge, every: 2 rows, times: 2}, {bind off: 4, at: right edge, every: 2 rows, times: 2, edge: shoulder}]}
          - {bind off: 10, edge: neck}
          - {part: L, stitches: 10, mirror of: R}
`, `-- Back
outline: -20,0 20,0 20,24 17,24 17,26 15,30 15,44 11,44 11,46 7,46 7,44 5,40 -5,40 -7,44 -7,46 -11,46 -11,44 -15,44 -15,30 -17,26 -17,25 -20,25
  rib -20,0 20,0 20,4 -20,4
cast-on edge: 40 cm 40 sts
side right: 47.472 cm 3 sts 44 rows
shoulder right: 10 cm 8 sts 2 rows
neck left: 6.472 cm 6 rows
neck: 10 cm 10 sts
neck right: 6.472 cm 6 rows
shoulder left: 10 cm 8 sts 2 rows
side left: 47.472 cm 3 sts 44 rows
= width-at-hem 40 40 sts across -20,0 to 20,0
= cross-back 30 30 sts across -15,30 to 15,30
= length 46 46 rows up -20,0 to 11,46
= depth-of-rib 4 4 rows up -20,0 to -20,4
= side-length.right 44 44 rows up 20,0 to 15,44
= r.shoulder-slope.right 2 2 rows up 15,44 to 11,46
= r.shoulder.right 8 8 sts across 7,46 to 15,44
= back-neck-depth 6 6 rows up 5,40 to 7,46
= neck-width 14 14 sts across -7,44 to 7,46
= l.shoulder-slope.left 2 2 rows up -11,44 to -7,46 hidden
= l.shoulder.left 8 8 sts across -15,44 to -7,46 hidden
= side-length.left 44 44 rows up -20,0 to -15,44 hidden
fabric 1547 cm²`},
		// 16 × 20 + 51 − 32, 10 × 25, 3 × 35, 2 × 43, 33 + 31 + 29 + 27 + 25 + 23 = 948 cm²; the row after 31 begins at the left
		{"two slopes of unlike rows, a curve and a start behind rows of its own", `pieces:
  - piece: Slope
    kind: piece
    sections:
      - cast on: 20
      - shape:
          - {increase: 1, at: left edge, every: 2 rows, times: 3, then: [{every: 4 rows, times: 2}]}
          - {decrease: 2, at: right edge, every: 3 rows, times: 2, after: 5 rows}
        rows: 16
      - {increase: 4, at: across, every: 5 rows, times: 2}
      - {add: 6, at: right edge, edge: sleeve}
      - even: 3 rows
      - {add: 4, at: both edges}
      - even: 2 rows
      - {leave: 5, at: left edge}
      - {hold: 3, at: right edge, name: Held}
      - {bind off: 2, at: both edges, every: 2 rows, times: 3, edge: shoulder}
      - bind off: all
`, `-- Slope
outline: -10,0 10,0 10,5 6,11 6,16 10,26 16,26 16,29 20,29 20,31 17,31 17,32 15,32 15,34 13,34 13,36 11,36 11,37 -12,37 -12,35 -14,35 -14,33 -16,33 -16,31 -23,31 -23,29 -19,29 -19,26 -15,16 -15,14 -13,6
cast-on edge: 20 cm 20 sts
side right: 27.981 cm 26 rows
sleeve right: 6 cm 6 sts
side right: 3 cm 3 rows
added edge right: 4 cm 4 sts
side right: 5 cm 3 sts 2 rows
shoulder right: 10 cm 6 sts 4 rows
top: 23 cm 23 sts
shoulder left: 10 cm 6 sts 4 rows
side left: 7 cm 5 sts 2 rows
added edge left: 4 cm 4 sts
side left: 30.725 cm 29 rows
= width-at-lower-edge 20 20 sts across -10,0 to 10,0
= width 43 43 sts across -23,29 to 20,29
= width-after-held 35 35 sts across -18,31 to 17,31 hidden
= width-at-upper-edge 23 23 sts across -12,37 to 11,37
= length 37 37 rows up -10,0 to 11,37
= side-length-1.right 26 26 rows up 10,0 to 10,26
= width-of-sleeve.right 6 6 sts across 10,26 to 16,26
= side-length-2.right 3 3 rows up 16,26 to 16,29
= side-length-3.right 2 2 rows up 20,29 to 20,31
= shoulder-slope.right 6 6 rows up 17,31 to 11,37
= shoulder.right 6 6 sts across 11,36 to 17,31
= shoulder-slope.left 6 6 rows up -16,31 to -12,37 hidden
= shoulder.left 6 6 sts across -18,31 to -12,37 hidden
= upper-side-length.left 2 2 rows up -23,29 to -18,31
= lower-side-length.left 29 29 rows up -10,0 to -19,29
fabric 948 cm²`},
		// 3 × 40, 4 × 48, 6 × 28, 4 × 28 + 22 + 16 = 630 cm²
		{"a round from the neck that divides", `pieces:
  - piece: Body
    worked: in the round, from the neck
    sections:
      - cast on: 40
      - even: 3 rows
      - {increase: 8, at: across, every: 2 rows, times: 2}
      - divide:
          - {part: Front, stitches: 28, sections: [{even: 6 rows}, {bind off: all}]}
          - {part: Back, stitches: 28, sections: [{even: 4 rows}, {bind off: 6, at: both edges, edge: shoulder}, {bind off: all, edge: neck}]}
`, `-- Body
outline Front: 10,0 -10,0 -10,-3 -14,-7 -14,-13 14,-13 14,-7 10,-3
outline Back: 10,0 -10,0 -10,-3 -14,-7 -14,-11 -8,-11 -8,-13 8,-13 8,-12 14,-12 14,-7 10,-3
cast-on edge: 40 cm 40 sts
side left: 6 cm 6 rows
top: 28 cm 28 sts
side right: 6 cm 6 rows
cast-on edge: 40 cm 40 sts
side left: 4 cm 4 rows
shoulder left: 6 cm 6 sts
neck: 16 cm 16 sts
shoulder right: 6 cm 6 sts
side right: 4 cm 4 rows
= front.width-at-top 40 around 40 sts across -10,0 to 10,0
= front.width-at-underarm 56 around 56 sts across -14,-7 to 14,-7
= front.length 13 13 rows up -14,-13 to 10,0
= front.side-length.left 6 6 rows up -14,-13 to -14,-7
= front.side-length.right 6 6 rows up 14,-13 to 14,-7 hidden
= back.length 13 13 rows up -8,-13 to 10,0
= back.side-length.left 4 4 rows up -14,-11 to -14,-7
= back.shoulder-slope.left 2 2 rows up -8,-13 to -14,-11
= back.shoulder.left 6 6 sts across -14,-11 to -8,-11
= back.neck-width 16 16 sts across -8,-13 to 8,-13
= back.shoulder-slope.right 2 2 rows up 8,-13 to 14,-11 hidden
= back.shoulder.right 6 6 sts across 8,-13 to 14,-12 hidden
= back.side-length.right 4 4 rows up 14,-11 to 14,-7 hidden
fabric 630 cm²`},
		// turns of 3 stitches: 12, 9, 6 stitches for two rows each; 6 × 9, 5 × 13 and 4 × 13 and three times 2 × 20 = 291 cm²
		{"short rows at either end and in the middle of a flat piece", `pieces:
  - piece: P
    kind: piece
    sections:
      - cast on: 20
      - even: 2 rows
      - {short rows: 6, over: 12, at: left edge, step: 3}
      - even: 2 rows
      - {short rows: 5, over: 15, at: right edge, step: 2}
      - even: 2 rows
      - {short rows: 4, over: 16, at: middle, step: 3}
      - bind off: all
`, `-- P
outline: -10,0 10,0 10,2 2,2 -4,8 10,8 10,17 8,17 5,21 -5,21 -8,17 -10,17 -10,15 -1,15 -5,10 -10,10
cast-on edge: 20 cm 20 sts
side right: 2 cm 2 rows
short-row turn: 30.485 cm 14 sts
side right: 9 cm 9 rows
top: 24 cm 20 sts
side left: 2 cm 2 rows
short-row turn left: 20.403 cm 9 sts
side left: 10 cm 10 rows
= width-at-lower-edge 20 20 sts across -10,0 to 10,0
= width-at-upper-edge 10 10 sts across -5,21 to 5,21
= length 21 21 rows up -10,0 to 5,21
= short-rows 6 6 rows up -10,2 to -10,8
= short-rows.2 5 5 rows up -1,10 to -1,15
= short-rows.3 4 4 rows up -5,17 to -5,21
= lower-side-length.right 2 2 rows up 10,0 to 10,2
= upper-side-length.right 9 9 rows up 10,8 to 10,17
= upper-side-length.left 2 2 rows up -10,15 to -10,17
= lower-side-length.left 10 10 rows up -10,0 to -10,10
fabric 291 cm²`},
		// 18 of 24 rows; the neck has 10 rows, the sides 21 + 31 and twice 3 stitches: 10 + 26 + 6 = 42
		{"a band picked up along rows, from the left and from the right", `pieces:
  - piece: Front
    kind: piece
    sections:
      - {sideways: rib, stitches: 3, rows: 24}
      - {pick up: 3 in every 4 rows}
      - even: 20 rows
      - {decrease: 1, at: right edge, every: 2 rows, times: 5, edge: neck}
      - bind off: all
  - piece: Band
    kind: band
    onto: ["Front neck, 1 in each row", "Front side, 2 in every 4 rows"]
    sections:
      - even: 4 rows
      - bind off: all
  - piece: Sleeves
    kind: piece
    worked: flat, from the left side
    sections:
      - cast on: 12
      - even: 5 rows
      - {add: 4, at: both edges}
      - even: 6 rows
      - {mark: button, count: 3, at: bottom edge, inset: 2, first: 1 row, apart: 2 rows, along: yes}
      - even: 6 rows
      - {bind off: 4, at: both edges}
      - even: 5 rows
      - bind off: all
  - piece: Other
    kind: piece
    worked: flat, from the right side
    sections:
      - cast on: 12
      - even: 5 rows
      - {add: 4, at: bottom edge}
      - fold
      - even: 6 rows
      - {mark: pocket, stitch: 6}
      - even: 4 rows
      - bind off: all
joins:
  - {sew: Front side, to: Front side}
`, `-- Front
outline: -12,0 12,0 12,3 9,3 9,24 4,34 -9,34 -9,3 -12,3
  change -9,3 to 9,3
  rib -12,0 12,0 12,3 -12,3
  joined 1 9,10.5
  joined 1 -9,15.5
  joined 1 9,10.5
  joined 1 -9,15.5
hem: 24 cm 24 rows
side right: 24 cm 3 sts 21 rows
neck right: 11.18 cm 10 rows
top: 13 cm 13 sts
side left: 34 cm 3 sts 31 rows
= width-at-lower-edge 24 24 rows across -12,0 to 12,0
= width-at-upper-edge 13 13 sts across -9,34 to 4,34
= length 34 up -12,0 to 4,34
= depth-of-rib 3 3 sts up -12,0 to -12,3
= side-length.right 24 up 12,0 to 9,24
= neck-depth.right 10 10 rows up 9,24 to 4,34
= neck-width.right 5 5 sts across 4,34 to 9,24
= side-length.left 34 up -12,0 to -9,34 hidden
fabric 605 cm²
-- Band
outline: -21,0 21,0 21,5 -21,5
picked-up edge: 42 cm 42 sts
side right: 5 cm 5 rows
top: 42 cm 42 sts
side left: 5 cm 5 rows
= length-of-band 42 42 sts across -21,0 to 21,0
= depth-of-band 5 5 rows up -21,0 to 21,5
fabric 210 cm²
-- Sleeves
outline: 0,6 0,-6 5,-6 5,-10 18,-10 18,-6 24,-6 24,6 17,6 17,10 5,10 5,6
  button 12,-8
  button 14,-8
  button 16,-8
cast-on edge left: 12 cm 12 sts
side right: 5 cm 5 rows
added edge right: 4 cm 4 sts
side right: 23 cm 4 sts 19 rows
top right: 12 cm 12 sts
side left: 23 cm 4 sts 19 rows
added edge left: 4 cm 4 sts
side left: 5 cm 5 rows
= length-at-left-edge 12 12 sts up 0,-6 to 0,6
= length 20 20 sts up 5,-10 to 5,10
= width-from-side-to-side 24 24 rows across 0,6 to 24,-6
= lower-side-length.right 4 4 sts up 5,-10 to 18,-6
= upper-side-length.right 4 4 sts up 24,6 to 17,10
fabric 388 cm²
-- Other
outline: 0,-6 0,6 -15,6 -15,-10 -5,-10 -5,-6
  fold -5,-10 to -5,6
  pocket -11,0
cast-on edge right: 12 cm 12 sts
side right: 15 cm 15 rows
top left: 16 cm 16 sts
side left: 10 cm 10 rows
added edge left: 4 cm 4 sts
side left: 5 cm 5 rows
= length-at-right-edge 12 12 sts up 0,-6 to 0,6
= length 16 16 sts up -5,-10 to -5,6
= width-from-side-to-side 15 15 rows across -15,6 to 0,-6
fabric 220 cm²`},
		// a stitch of the second gauge is 2 cm wide
		{"panels of two gauges, shaped at their lines and drawn apart or together", `pieces:
  - piece: Together
    kind: piece
    sections:
      - cast on: 20
      - panels: [{panel: A, stitches: 8}, {panel: B, stitches: 12, gauge: wide}]
      - even: 4 rows
      - {decrease: 1, at: both edges, every: 2 rows, times: 3}
      - bind off: all
  - piece: Apart
    kind: piece
    sections:
      - cast on: 30
      - even: 2 rows
      - panels: [{panel: A, stitches: 10}, {panel: B, stitches: 12}, {panel: C, stitches: 8}]
      - {decrease: 1, at: lines, every: 2 rows, times: 3}
      - {decrease: 1, at: lines, panel: B, every: 1 row, times: 1}
      - divide:
          - {part: AB, stitches: 11, sections: [{even: 3 rows}, {bind off: all}]}
          - {leave: 5}
`, `-- Together
outline: 16,0 16,4 13,10 -10,10 -16,4 -16,0
  change -10,0 to 10,0
  panel 8,0 to 8,10
cast-on edge: 20 cm 20 sts
side right: 10.708 cm 10 rows
top: 23 cm 14 sts
side left: 12.485 cm 10 rows
= width-at-lower-edge 20 20 sts across -10,0 to 10,0
= width 32 20 sts across -16,0 to 16,0
= width-at-upper-edge 23 14 sts across -10,10 to 13,10
= length 10 10 rows up -10,0 to 13,10
= side-length.right 10 10 rows up 10,0 to 13,10 hidden
= side-length.left 10 10 rows up -16,0 to -10,10 hidden
fabric 71 cm²
wide 222 cm²
-- Apart
outline first rows: -15,0 15,0 15,2 -15,2
outline A: -5,2 5,2 5,12 -2,12 -2,8
outline B: -6,2 6,2 3,8 2,9 2,12 -2,12 -2,9 -3,8
outline C: -4,2 4,2 1,8 1,9 -4,9
cast-on edge: 30 cm 30 sts
side right: 2 cm 2 rows
base of the panels: 30 cm 30 sts
side left: 2 cm 2 rows
base: 10 cm 10 sts
side right: 10 cm 10 rows
top: 7 cm 7 sts
line left: 10.708 cm 10 rows
base: 12 cm 12 sts
line right: 11.122 cm 10 rows
top: 4 cm 4 sts
line left: 11.122 cm 10 rows
base: 8 cm 8 sts
line right: 7.708 cm 7 rows
held edge: 5 cm 5 sts
side left: 7 cm 7 rows
= first-rows.width-at-lower-edge 30 30 sts across -15,0 to 15,0
= first-rows.length 2 2 rows up -15,0 to 15,2
= first-rows.side-length.right 2 2 rows up 15,0 to 15,2 hidden
= first-rows.side-length.left 2 2 rows up -15,0 to -15,2 hidden
= a.width-at-lower-edge 10 10 sts across -5,2 to 5,2
= a.narrowest-width 7 7 sts across -2,8 to 5,8
= a.length 10 10 rows up -5,2 to 5,12
= a.side-length.right 10 10 rows up 5,2 to 5,12 hidden
= b.width-at-lower-edge 12 12 sts across -6,2 to 6,2
= b.narrowest-width 4 4 sts across -2,9 to 2,9
= b.length 10 10 rows up -6,2 to 2,12
= c.width-at-lower-edge 8 8 sts across -4,2 to 4,2
= c.width-at-upper-edge 5 5 sts across -4,8 to 1,8
= c.length 7 7 rows up -4,2 to 1,9
= c.side-length.left 7 7 rows up -4,2 to -4,9 hidden
fabric 254 cm²`},
		// 6 + 12 + 18 + 24 + 30 = 90 cm²; 10 + 5 + 10 stitches, 5 × 6 = 30, 7 × 3 + 2 = 23
		{"from a ring, an edge that is gathered, and from the neck of two pieces joined", `pieces:
  - piece: Disc
    kind: piece
    worked: in the round, from the centre
    sections:
      - ring: 6
      - {increase: 6, at: across, every: 1 row, times: 4}
      - bind off: all
  - piece: Hat
    kind: hat
    worked: in the round, from the hem
    sections:
      - cast on: 32
      - even: 10 rows
      - {decrease: 8, at: across, every: 2 rows, times: 3}
      - gather
  - piece: L
    kind: piece
    sections:
      - cast on: 12
      - even: 6 rows
      - {hold: 2, at: right edge, name: Arm}
      - {hold: all, name: Top}
  - piece: Yoke
    kind: yoke
    sections:
      - start from: [{piece: L, part: Top}, {add: 5}, {piece: L, part: Top}]
      - even: 4 rows
      - {repeat row: "2 in 1, 1 in each of 4", rest: worked even}
      - even: 2 rows
      - {repeat row: "1 in each of 2, 2 together", rest: worked even}
      - even: 1 row
      - bind off: all
`, `-- Disc
circle 5
edge of the crown: 31.411 cm
= diameter 10 5 rows across -5,0 to 5,0
fabric 90 cm²
-- Hat
outline: -8,0 8,0 8,10 2,16 -2,16 -8,10
cast-on edge: 32 cm 32 sts
gathered edge: 8 cm 8 sts
= brim 32 around 32 sts across -8,0 to 8,0
= width-at-crown 8 around 8 sts across -2,16 to 2,16 hidden
= hat-depth 16 16 rows up -8,0 to 2,16
fabric 440 cm²
-- L
outline: -6,0 6,0 6,6 -6,6
cast-on edge: 12 cm 12 sts
side right: 8 cm 2 sts 6 rows
top: 10 cm 10 sts
side left: 6 cm 6 rows
= width-at-lower-edge 12 12 sts across -6,0 to 6,0
= width-at-upper-edge 10 10 sts across -6,6 to 4,6
= length 6 6 rows up -6,0 to 6,6
= side-length.right 6 6 rows up 6,0 to 6,6 hidden
= side-length.left 6 6 rows up -6,0 to -6,6 hidden
fabric 72 cm²
-- Yoke
outline: -12.5,0 12.5,0 12.5,4 15,5 15,7 11.5,8 11.5,9 -11.5,9 -11.5,8 -15,7 -15,5 -12.5,4
live edge: 25 cm 25 sts
side right: 9 cm 9 rows
top: 23 cm 23 sts
side left: 9 cm 9 rows
= base-of-yoke 25 25 sts across -12.5,0 to 12.5,0
= width 30 30 sts across -15,5 to 15,5
= width-at-top 23 23 sts across -11.5,8 to 11.5,8
= yoke-depth 9 9 rows up -12.5,0 to 11.5,9
= side-length.right 9 9 rows up 12.5,0 to 11.5,9 hidden
= side-length.left 9 9 rows up -12.5,0 to -11.5,9 hidden
fabric 237 cm²`},
		// 4 × 30, 6 × 22, 4 × 30; the second has 7 + 5 + 12 stitches above its gap
		{"parts that are joined again, with a gap and over a slit", `pieces:
  - piece: P
    kind: piece
    sections:
      - cast on: 30
      - even: 4 rows
      - divide:
          - {part: R, stitches: 10, sections: [{even: 6 rows}]}
          - {bind off: 8, edge: underarm}
          - {part: L, stitches: 12, sections: [{even: 6 rows}]}
      - join parts: [{part: R}, {add: 8}, {part: L}]
        as: Top
      - even: 4 rows
      - bind off: all
  - piece: Q
    kind: piece
    sections:
      - cast on: 30
      - even: 4 rows
      - divide:
          - {part: R, stitches: 10, sections: [{decrease: 1, at: left edge, every: 2 rows, times: 3}]}
          - {leave: 8}
          - {part: L, stitches: 12, sections: [{even: 6 rows}]}
      - join parts: [{part: R}, {add: 5}, {part: L}]
      - even: 4 rows
      - bind off: all
`, `-- P
outline: -15,0 15,0 15,14 -15,14
outline: 5,4 -3,4 -3,10 5,10
cast-on edge: 30 cm 30 sts
side right: 14 cm 14 rows
top: 30 cm 30 sts
side left: 14 cm 14 rows
underarm: 8 cm 8 sts
underarm right: 6 cm 6 rows
added edge: 8 cm 8 sts
underarm left: 6 cm 6 rows
= width-at-lower-edge 30 30 sts across -15,0 to 15,0
= length 14 14 rows up -15,0 to 15,14
= side-length.right 14 14 rows up 15,0 to 15,14 hidden
= side-length.left 14 14 rows up -15,0 to -15,14 hidden
= underarm.right 8 8 sts across -3,4 to 5,10
fabric 372 cm²
-- Q
outline: -15,0 15,0 15,10 8,10 5,4 -3,4 -3,10 -15,10
outline: -12,10 12,10 12,14 -12,14
cast-on edge: 30 cm 30 sts
side right: 10 cm 10 rows
joined edge right: 7 cm 7 sts
gap left: 6.708 cm 6 rows
gap: 8 cm 8 sts
gap right: 6 cm 6 rows
joined edge left: 12 cm 12 sts
side left: 10 cm 10 rows
joined edge: 24 cm 24 sts
side right: 4 cm 4 rows
top: 24 cm 24 sts
side left: 4 cm 4 rows
= width-at-lower-edge 30 30 sts across -15,0 to 15,0
= r.width-of-r 7 7 sts across 8,10 to 15,10
= width-at-upper-edge 24 24 sts across -12,10 to 12,10
= length 14 14 rows up -15,0 to 12,14
= lower-side-length.right 10 10 rows up 15,0 to 15,10
= lower-side-length.left 10 10 rows up -15,0 to -15,10 hidden
= upper-side-length.right 4 4 rows up 12,10 to 12,14
= upper-side-length.left 4 4 rows up -12,10 to -12,14 hidden
fabric 339 cm²`},
		// 10 and 5 cm at 45 degrees; a hexagon 10 across its flats has sides of 10 / √3, a triangle is 5 √3 high
		{"a mitre, and motifs", `pieces:
  - piece: M
    kind: piece
    sections:
      - cast on: 20
      - {mitre: 90 degrees, decrease: 2, every: 1 row, times: 5}
      - bind off: all
  - piece: Squares
    kind: piece
    motifs: {shape: square, across: 10 cm, joining: 1, columns: 3, rows: 2, filled: [x.x, xxx]}
  - piece: Hexagons
    kind: piece
    motifs: {shape: hexagon, across: 10 cm, columns: 2, rows: 2}
  - piece: Triangles
    kind: piece
    motifs: {shape: triangle, across: 10 cm, columns: 3, rows: 1}
`, `-- M
outline: 7.071,7.071 3.536,10.607 0,7.071 -3.536,10.607 -7.071,7.071 0,0
  panel 0,0 to 0,7.071 mitre line
side right: 5 cm 5 rows
top: 10 cm 10 sts
side left: 5 cm 5 rows
cast-on edge: 20 cm 20 sts
= arm-of-the-mitre 10 10 sts along 0,0 to 7.071,7.071
= depth-of-the-mitre 5 5 rows along 7.071,7.071 to 3.536,10.607
fabric 75 cm²
-- Squares
outline: 11,22 0,22 0,11 0,0 11,0 22,0 33,0 33,11 33,22 22,22 22,11 11,11
  cell 0,11 to 11,11
  cell 22,11 to 33,11
  cell 11,0 to 11,11
  cell 22,0 to 22,11
top edge left: 11 cm
side left: 22 cm
bottom edge: 33 cm
side right: 22 cm
top edge right: 11 cm
neck: 33 cm
= width 32 3 motifs across 0,0 to 33,0
= length 21 2 motifs up 33,0 to 33,22
= motif 10 1 motifs across 0.5,0 to 10.5,0
= neck-width 11 across 11,22 to 22,22
= neck-depth 11 up 22,11 to 22,22
fabric 605 cm²
-- Hexagons
outline: 10,20.207 5,17.321 5,11.547 0,8.66 0,2.887 5,0 10,2.887 15,0 20,2.887 20,8.66 25,11.547 25,17.321 20,20.207 15,17.321
  cell 10,8.66 to 15,11.547
  cell 15,11.547 to 15,17.321
  cell 5,11.547 to 10,8.66
  cell 15,11.547 to 20,8.66
  cell 10,2.887 to 10,8.66
top edge left: 5.774 cm
side left: 5.774 cm
top edge left: 5.774 cm
side left: 5.774 cm
bottom edge: 23.094 cm
side right: 5.774 cm
bottom edge right: 5.774 cm
side right: 5.774 cm
top edge right: 5.774 cm
neck: 11.547 cm
= width 25 2 motifs across 0,0 to 25,0
= length 20.207 2 motifs up 25,0 to 25,20.207
= neck-width 10 across 10,20.207 to 20,20.207
= neck-depth 2.887 up 20,17.321 to 20,20.207
fabric 346.41 cm²
-- Triangles
outline: 0,0 10,0 20,0 15,8.66 5,8.66
  cell 10,0 to 15,8.66
  cell 5,8.66 to 10,0
bottom edge: 20 cm
top edge: 30 cm
= width 20 3 motifs across 0,0 to 20,0
= length 8.66 1 motifs up 20,0 to 20,8.66
fabric 129.9 cm²`},
	}
}
