package check

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/bysize"
	"flatwright/schematic/finding"
	"flatwright/schematic/given"
)

// found are the findings of a pattern text of sizes S to XL.
func foundIn(t *testing.T, pieces string) finding.List {
	t.Helper()
	p := given.Text(t, "version: 1\npattern: T\nterms: US\nunits: cm\nsizes: S (M, L, XL)\nbodies: {bust: 80 (90, 100, 110) cm}\ngauges: {fabric: 20 sts and 20 rows over 10 cm in sc}\npieces:\n"+pieces)
	return Pattern(p, bysize.WorkAll(p))
}

// A row of 36 stitches that is divided into parts of 63 (figures that changed places) is told once: that a shoulder beyond it has no edge follows.
func TestAnEdgeThatADivisionHasNoStitchesForIsNotAskedFor(t *testing.T) {
	back := func(of string) string {
		return "  - piece: Back\n    sections:\n      - cast on: 55 (59, 63, 67)\n      - divide:\n          - part: Middle\n            stitches: " + of + "\n            sections:\n              - even: 10 rows\n              - divide:\n" +
			"                  - {bind off: 17 (19, 21, 22), name: right shoulder, edge: shoulder}\n                  - {bind off: 21 (21, 21, 23), edge: neck}\n                  - {bind off: 17 (19, 21, 22), name: left shoulder, edge: shoulder}\n"
	}
	joins := "joins:\n  - {sew: Back Middle left shoulder, to: Back Middle right shoulder}\n"
	assert.Empty(t, foundIn(t, back("55 (59, 63, 67)")+joins))
	found := foundIn(t, back("55 (59, 36, 67)")+joins)
	require.NotEmpty(t, found)
	for _, f := range found {
		assert.NotEqual(t, finding.NoEdge, f.Kind, f.Message)
		assert.NotEqual(t, "grading/hole", f.Kind, f.Message)
	}
}

// By hand: 20 sts over 10 cm make 170 cm of 2 x 170 stitches, 90 cm more than a bust of 80: more than three fifths of it. 128 cm are three fifths more, and
// a question begins beyond.
func TestABustMuchWiderThanItsBodyIsAskedFor(t *testing.T) {
	for sts, want := range map[string]int{"170 (180, 190, 200)": 4, "128 (144, 160, 176)": 0, "129 (144, 160, 176)": 1} {
		n := 0
		for _, f := range foundIn(t, "  - piece: Body\n    worked: in the round\n    sections:\n      - cast on: "+double(sts)+"\n      - {even: 10 rows, width: bust}\n      - bind off: all\n") {
			if strings.Contains(f.Message, "more than the body's") {
				if n += len(f.Sizes); len(f.Sizes) == 0 { // all four
					n += 4
				}
				assert.Equal(t, finding.Note, f.Severity)
			}
		}
		assert.Equal(t, want, n, sts)
	}
}

func double(s string) string {
	r := strings.NewReplacer("170", "340", "180", "360", "190", "380", "200", "400", "128", "256", "129", "258", "144", "288", "160", "320", "176", "352")
	return r.Replace(s)
}

// Two panels that are alike say once that they go back.
func TestWhatTwoPanelsHaveAlikeIsToldOnce(t *testing.T) {
	var all []string
	for _, f := range foundIn(t, "  - piece: Yoke\n    worked: in the round, from the neck\n    sections:\n      - cast on: 80 (88, 80, 96)\n      - panels:\n"+
		"          - {panel: Back, stitches: 20 (22, 20, 24)}\n          - {panel: Right side, stitches: 20 (22, 20, 24)}\n          - {panel: Front, stitches: 20 (22, 20, 24)}\n          - {panel: Left side, stitches: 20 (22, 20, 24)}\n"+
		"      - {increase: 1, at: lines, every: 2 rows, times: 6}\n      - bind off: all\n") {
		all = append(all, f.Message+f.Have)
	}
	require.NotEmpty(t, all)
	for i, m := range all {
		assert.NotContains(t, all[i+1:], m)
	}
}

// Edges that are as long as each other need no ease, and the fix does not ask for centimetres more.
func TestAnEaseThatIsNotThereIsNotMadeUpFor(t *testing.T) {
	for _, f := range foundIn(t, "  - piece: A\n    sections: [{cast on: 40}, {even: 10 rows}, {bind off: all, edge: top}]\n  - piece: B\n    sections: [{cast on: 40}, {even: 10 rows}, {bind off: all, edge: top}]\n"+
		"joins:\n  - {sew: A top, to: B top, how: eased by 10 cm}\n") {
		if f.Kind == "joins/ease" {
			assert.Equal(t, "write `how: as long`, or change a count", f.Fix)
			return
		}
	}
	t.Fatal("nothing found")
}
