package schematic_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/given"
)

// Pieces of 20 sts and 40 rows over 10 cm, a stitch 5 mm and a row 2.5: every measurement in mm, and its stitches or rows.
func TestMeasurementsOfPiecesByHand(t *testing.T) {
	const top = "version: 1\npattern: Hand\nterms: UK\nunits: cm\nsizes: S\ngauges:\n  fabric: 20 sts and 40 rows over 10 cm\npieces:\n"
	for _, k := range []struct{ piece, want string }{
		// 80 - 2 x 5 - 2 x 5 = 60 = 18 + 24 + 18; 40 rows, 2 for the bind-offs, 5 x 2 and 40.
		{"  - piece: Back\n    sections:\n      - cast on: 80\n      - even: 40 rows\n      - {bind off: 5, at: both edges, edge: armhole}\n      - {decrease: 1, at: both edges, every: 2 rows, times: 5, edge: armhole}\n      - even: 40 rows\n      - divide:\n          - {bind off: 18, edge: shoulder}\n          - {bind off: 24, edge: neck}\n          - {bind off: 18, edge: shoulder}\n",
			"armhole depth 130 52|armhole depth 130 52|cross back 300 60|length 230 92|neck width 120 24|shoulder 90 18|shoulder 90 18|side length 100 40|side length 100 40|width at hem 400 80"},
		// 40 + 2 x 10 = 60, less 2 x 4 and 2 x 16 are 20; 10 x 4 rows, 2 and 16 x 2.
		{"  - piece: Sleeve\n    make: 2\n    sections:\n      - {cast on: 40, edge: cuff}\n      - {increase: 1, at: both edges, every: 4 rows, times: 10}\n      - {bind off: 4, at: both edges, edge: cap}\n      - {decrease: 1, at: both edges, every: 2 rows, times: 16, edge: cap}\n      - {bind off: all, edge: cap}\n",
			"cap height 85 34|cuff 200 40|side length 100 40|side length 100 40|sleeve length 185 74|upper arm 300 60|width at top 100 20"},
		// 200 - 10 = 190, and 20 more are 210, around; 12 rows, 5 x 4 and 10 x 4.
		{"  - piece: Body\n    worked: in the round, from the hem\n    sections:\n      - {cast on: 200, edge: hem}\n      - {even: 12 rows, rib: yes}\n      - {decrease: 1, at: both edges, every: 4 rows, times: 5, width: waist}\n      - {increase: 1, at: both edges, every: 4 rows, times: 10, width: bust}\n      - {bind off: all, edge: top}\n",
			"bust 1050 210|depth of rib 30 12|length 180 72|waist 950 190|width at hem 1000 200"},
		// 96 - 11 x 8 = 8; 40 rows and 11 x 2.
		{"  - piece: Hat\n    worked: in the round, from the hem\n    sections:\n      - {cast on: 96, edge: brim}\n      - {even: 40 rows}\n      - {decrease: 8, at: across, every: 2 rows, times: 11}\n      - gather\n",
			"brim 480 96|hat depth 155 62|width at crown 40 8"},
		// 44 - 4 - 4 - 12 = 24; 40 rows, 1 for the bind-off at one edge and 50, over which the neck goes.
		{"  - piece: Left front\n    left edge: front edge\n    sections:\n      - cast on: 44\n      - even: 40 rows\n      - {bind off: 4, at: right edge, edge: armhole}\n      - shape:\n          - {decrease: 1, at: right edge, every: 2 rows, times: 4, edge: armhole}\n          - {decrease: 1, at: left edge, every: 4 rows, times: 12, edge: neck}\n        rows: 50\n      - {bind off: all, edge: shoulder}\n",
			"armhole depth 127.5 51|front edge 102.5 41|front neck depth 125 50|half front neck width 60 12|length 227.5 91|shoulder 120 24|side length 100 40|width at hem 220 44|width at top 120 24"},
		// 140 + 5 x 2 x 2 = 160; 5 x 4 rows and 60.
		{"  - piece: Skirt\n    worked: in the round, from the waist\n    sections:\n      - {cast on: 140, edge: waist}\n      - {increase: 2, at: both edges, every: 4 rows, times: 5, width: hip}\n      - even: 60 rows\n      - {bind off: all, edge: hem}\n",
			"hem 800 160|hip 800 160|length 200 80|waist 700 140"},
		// 60 and 5 more are its lengths, 80 rows and 5 x 2 its width.
		{"  - piece: Strip\n    worked: flat, from the left side\n    top edge: top edge\n    bottom edge: hem\n    sections:\n      - {cast on: 60, edge: side}\n      - even: 80 rows\n      - {increase: 1, at: top edge, every: 2 rows, times: 5}\n      - {bind off: all, edge: side}\n",
			"height of top edge 25 5|length 325 65|length at left edge 300 60|side length 300 60|side length 325 65|width from side to side 225 90"},
	} {
		m := schematic.Work(given.Text(t, top+k.piece), 0).Pieces[0]
		var got []string
		for _, v := range m.Measures {
			got = append(got, fmt.Sprintf("%s %s %d", v.Name, v.Length, v.Count))
		}
		slices.Sort(got)
		assert.Equal(t, strings.Split(k.want, "|"), got)
	}
}
