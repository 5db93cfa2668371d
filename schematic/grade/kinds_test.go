package grade_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/body"
	"flatwright/schematic/bysize"
	"flatwright/schematic/check"
	"flatwright/schematic/given"
	"flatwright/schematic/units"
)

// The bodies are those of the yarn standard (Craft Yarn Council, Standards and Guidelines, 2018 edition, yarnstandards.com: women, heads and hands); what a garment
// has more or less is common practice. Every count is worked through by hand for the first and the last size, and in all sizes a
// width is within half its multiple of body and ease.
func TestSkirtsHatsAndMittensAreGradedFromPublishedTables(t *testing.T) {
	for _, k := range []struct {
		title, table, sizes, gauge string
		grading, piece             string
		ease                       map[string]int64 // of the count named: quarters of an inch
		of                         map[string]string
		multiple                   map[string]int
		first, last                map[string]int
	}{
		{
			// 5 sts and 7 rounds to the inch. XS: waist 24 + 1 = 25 in are 125, hips 34 + 3 = 37 in are 185: 128 and 184 by eights, 56 more in
			// 7 rounds of 8 over 56 rounds. 5X: 51 in are 255, 65 in are 325: 256 and 328, 72 more in 9 rounds of 8.
			title: "Skirt", table: "women", sizes: "XS (S, M, L) (1X, 2X, 3X) (4X, 5X)", gauge: "20 sts and 28 rounds over 4 in",
			grading: "  top: {stitches: waist + 1 in, multiple: 8}\n  low: {stitches: hips + 3 in, multiple: 8}\n  hip rows: {rows: 8 in}\n  flare: {spread: (low - top) / 8, over: hip rows}\n",
			piece:   "    worked: in the round, from the waist\n    sections:\n      - cast on: top\n      - {increase: 8, at: across, every: flare every, times: flare times, then: [{every: flare then every, times: flare then times}], rows: hip rows, to: low}\n      - even: 12 in\n      - bind off: all\n",
			ease:    map[string]int64{"top": 4, "low": 12}, of: map[string]string{"top": "waist", "low": "hips"}, multiple: map[string]int{"top": 8, "low": 8},
			first: map[string]int{"top": 128, "low": 184, "hip rows": 56, "flare times": 7}, last: map[string]int{"top": 256, "low": 328, "flare every": 7, "flare times": 2, "flare then times": 7},
		},
		{
			// 5 1/2 sts and 8 rounds to the inch, 2 in less than the head. Premature: 12 - 2 = 10 in are 55: 56 by eights, a man: 22 in are 121: 120.
			// To 8 sts they go down by 8 in 6 and in 14 rounds, every other round.
			title: "Hat", table: "heads", sizes: "premature (baby, toddler, child) (tween, woman, man)", gauge: "22 sts and 32 rounds over 4 in",
			grading: "  around: {stitches: head - 2 in, multiple: 8}\n  wedges: (around - 8 sts) / 8\n",
			piece:   "    worked: in the round, from the hem\n    sections:\n      - cast on: around\n      - even: 4 in\n      - {decrease: 8, at: across, every: 2 rows, times: wedges, to: 8}\n      - gather\n",
			ease:    map[string]int64{"around": -8}, of: map[string]string{"around": "head"}, multiple: map[string]int{"around": 8},
			first: map[string]int{"around": 56, "wedges": 6}, last: map[string]int{"around": 120, "wedges": 14},
		},
		{
			// 6 sts and 8 rounds to the inch, a quarter of an inch more than the hand: 5 1/4 in are 31.5, 32 by fours; 9 1/4 in are 55.5, 56. To the tip
			// of the finger 4 in are 32 rounds and 8 1/2 in 68; 7 and 13 rounds of 4 go down to 4 sts.
			title: "Mitten", table: "hands", sizes: "child 2-4 years (child 4-6 years, child 6-8 years) (woman S, woman M, woman L) (man S, man M, man L)", gauge: "24 sts and 32 rounds over 4 in",
			grading: "  around: {stitches: hand + 1/4 in, multiple: 4}\n  long: {rows: hand length}\n  tip: (around - 4 sts) / 4\n",
			piece:   "    worked: in the round, from the hem\n    sections:\n      - cast on: around\n      - even: long\n      - {decrease: 4, at: across, every: 1 row, times: tip, to: 4}\n      - gather\n",
			ease:    map[string]int64{"around": 1}, of: map[string]string{"around": "hand"}, multiple: map[string]int{"around": 4},
			first: map[string]int{"around": 32, "long": 32, "tip": 7}, last: map[string]int{"around": 56, "long": 68, "tip": 13},
		},
	} {
		table, ok := body.Named(k.table)
		require.True(t, ok)
		names := strings.FieldsFunc(strings.NewReplacer("(", ",", ")", ",").Replace(k.sizes), func(r rune) bool { return r == ',' })
		for i := range names {
			names[i] = strings.TrimSpace(names[i])
		}
		var bodies strings.Builder
		p := given.Text(t, fmt.Sprintf("version: 1\npattern: %s\nterms: US\nunits: in\nsizes: %s\ngauges: {fabric: %s}\npieces:\n  - {piece: x, sections: [{cast on: 9}, {even: 2 rows}]}\n", k.title, k.sizes, k.gauge))
		rows, missing := table.For(p.Sizes)
		require.Empty(t, missing)
		high := map[string][]units.Num{}
		for _, row := range rows {
			texts := make([]string, p.Sizes.Len())
			for i := range texts {
				v, _ := row.High.At(i)
				high[row.Name] = append(high[row.Name], v)
				texts[i] = units.Decimal(units.In(v, units.Inch), 3)
			}
			fmt.Fprintf(&bodies, "  %s: %s in\n", row.Name, p.Sizes.Line(texts))
		}
		p = given.Text(t, fmt.Sprintf("version: 1\npattern: %s\nterms: US\nunits: in\nsizes: %s\nbodies:\n%sgauges: {fabric: %s}\ngrading:\n%spieces:\n  - piece: %s\n%s", k.title, k.sizes, bodies.String(), k.gauge, k.grading, k.title, k.piece))
		value := map[string]func(i int) int{}
		for _, v := range p.Graded {
			value[v.Name] = func(i int) int { return v.Vals.Int(i, -1) }
		}
		for i, want := range map[int]map[string]int{0: k.first, p.Sizes.Len() - 1: k.last} {
			for name, n := range want {
				require.Contains(t, value, name)
				assert.Equal(t, n, value[name](i), "%s, %s of %s", k.title, name, p.Sizes.Names[i])
			}
		}
		for name, of := range k.of {
			width := p.Gauges[0].StitchWidth()
			for i := range p.Sizes.Names {
				wish := high[of][i].Add(units.Of(units.Frac(k.ease[name], 4), units.Inch))
				off := width.Times(value[name](i)).Sub(wish).Abs()
				assert.False(t, width.Times(k.multiple[name]).Half().Less(off), "%s, %s of %s", k.title, name, p.Sizes.Names[i])
			}
		}
		for _, f := range check.Pattern(p, bysize.WorkAll(p)) {
			assert.False(t, strings.HasPrefix(f.Kind, "arithmetic/"), "%s: %s", k.title, f.Message)
		}
	}
}

// Socks as published ones are worked out. A foot of 8 1/2 in at 9 1/2 sts over 2 in is 40.375 sts, a tenth less for negative ease 36.34, and 36 by fours
// (blog.knittingboard.com, archives 883). 7 in, ease taken, at 8 sts to the inch are 56 (slippedstitches.wordpress.com, tutorial). A heel begins over half
// of the foot ('Inside Crochet' 46, issuu.com/tailormadepublishing, p. 39).
func TestSocksComeToThePublishedCounts(t *testing.T) {
	for _, k := range []struct {
		gauge, foot, around string
		cast, heel          int
	}{
		{"9 1/2 sts and 21 rounds over 2 in", "8 1/2", "foot x 9 / 10", 36, 18},
		{"8 sts and 11 rounds over 1 in", "7", "foot", 56, 28},
	} {
		p := given.Text(t, "version: 1\npattern: Sock\nterms: US\nunits: in\nsizes: M\nbodies: {foot: "+k.foot+" in}\ngauges: {fabric: "+k.gauge+" in stockinette stitch}\n"+
			"grading:\n  around: {stitches: "+k.around+", multiple: 4}\n  heel: around / 2\n"+
			"pieces:\n  - piece: Sock\n    kind: sock\n    worked: in the round, from the neck\n    sections:\n      - cast on: around\n      - even: 20 rows\n      - divide:\n          - {hold: heel, name: heel}\n          - {hold: heel, name: instep}\n")
		assert.Empty(t, check.Pattern(p, bysize.WorkAll(p)))
		steps := schematic.Work(p, 0).Pieces[0].Steps
		assert.Equal(t, k.cast, steps[0].After)
		assert.Equal(t, k.heel, schematic.Work(p, 0).Pieces[0].LiveIn("heel"))
	}
}
