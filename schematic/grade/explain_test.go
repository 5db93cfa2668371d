package grade_test

import (
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/given"
	"flatwright/schematic/grade"
	"flatwright/schematic/read"
)

func tunic(t testing.TB) *schematic.Pattern { return given.File(t, "../../testdata/grade/tunic.yaml") }

func lines(t testing.TB, all []grade.Working, name string) []string {
	for _, w := range all {
		if w.Name == name {
			return w.Lines
		}
	}
	require.Fail(t, "nothing is told of "+name)
	return nil
}

// By hand, size S of the raglan: bust 34 in and 4 in of ease are 38 in, half of it 19 in, at 18
// stitches over 4 in 85.5 stitches. Of 4 + 2 there are 82 (82 × 4 / 18 = 18.222 in) and 86 (19.111 in). The
// back goes from 86 by 2 × 5 to 38: 38 stitches at two edges are 19 decreases; 54 rows have 27 right-side
// ones: 27 = 19 + 8, so that 8 wait for the fourth row and 11 for the second.
func TestTheArithmeticOfARaglanIsToldByHand(t *testing.T) {
	all := grade.Explain(given.File(t, "../../examples/windlass-raglan.yaml"), 1)
	assert.Equal(t, []string{
		"(bust + ease) / 2 = (34 in + 4 in) / 2 = 19 in",
		"19 in at 18 sts over 4 in: 85.5 sts",
		"multiple of 4 + 2: 82 sts make 18.222 in (−0.778 in), 86 sts make 19.111 in (+0.111 in)",
		"taken: 86 sts, the nearest",
	}, lines(t, all, "back stitches"))
	raglan := lines(t, all, "raglan")
	assert.Contains(t, raglan, "back: 86 − 2 × 5 at the underarms − 38 at the neck = 38, so 19 decreases at each edge over 54 rows")
	assert.Contains(t, raglan, "back: 54 rows have 27 of one side; 27 / 19 = 1 and 8 over: every 4th row 8 times, then every 2nd row 11 times")
	assert.Contains(t, lines(t, all, "widen"), "90 rows have 45 of one side; 45 / 9 = 5: every 10th row 9 times")
	assert.Contains(t, lines(t, all, "sleeve top"), "taken: 10 sts, as near as the other, and a tie goes up")
	assert.Contains(t, lines(t, all, "side rows"), "even: 78 rows, nothing to round")
}

// By hand, size XS of the tunic: 78 stitches to 64 are 7 at each side; of 46 rows 2 are the bind-off and 4 the
// decreases. 5 stitches of 100/18 mm are 2.78 cm and 2 rows of 100/24 mm 0.83 cm; 2 stitches
// and 4 rows are √(1.11² + 1.67²) = 2.00 cm; 40 rows 16.67 cm.
func TestTheArithmeticOfAnArmholeAndItsCapIsToldByHand(t *testing.T) {
	all := grade.Explain(tunic(t), 0)
	armhole := lines(t, all, "armhole")
	assert.Contains(t, armhole, "78 − 64 = 14 stitches to lose, 7 at each side")
	assert.Contains(t, armhole, "2 rows there + 2 × 2 for the decreases + 40 even = 46 rows")
	assert.Contains(t, armhole, "the edge: 2.78 cm level + 0.83 cm up + √(1.11² + 1.67²) = 2 cm aslant + 16.67 cm up; in all 22.28 cm")
	cap := strings.Join(lines(t, all, "cap"), "\n")
	assert.Contains(t, cap, "armhole 44.56 cm + ease 1 cm = 45.56 cm to fit")
	assert.Contains(t, cap, "44 − 14 at the top = 30 to lose, 15 at each side") // 14 are 7.8 cm, a quarter of 54 is 7.5
	assert.Contains(t, cap, "(half a stitch is 0.28 cm)")
	assert.Contains(t, lines(t, all, "cross stitches"), "taken: 64 sts, not more than wished")
}

// By hand: 240 to 90 at the neck, 150 to lose over 40 rounds in 4 rounds: every 10th. A quarter of 150 is 37.5: 240 − 37.5
// = 202.5, of the multiples of 5 the nearest is 205 (a tie goes up).
func TestTheArithmeticOfAYokeAndOfSumsInThePiecesIsToldByHand(t *testing.T) {
	p, found := read.Pattern("yoke.yaml", []byte(`version: 1
pattern: Yoke
terms: US
units: cm
sizes: S (M)
gauges:
  fabric: 20 sts and 28 rows over 10 cm in st st
grading:
  base: 240 (260) sts
  yoke: {yoke: base, neck: 90 sts, over: 40 rows, rounds: 4, multiple: 5}
pieces:
  - piece: Yoke
    worked: in the round, from the hem
    sections:
      - cast on: base + 2 sts - 2 sts
      - even: 4 rows
      - bind off: all
`))
	require.False(t, found.Errors(), "%v", found)
	all := grade.Explain(p, 0)
	told := lines(t, all, "yoke")
	assert.Contains(t, told, "240 − 90 at the neck = 150 stitches to lose over 40 rounds")
	assert.Contains(t, told, "rounds with decreases: 40 / 4 = 10: every 10th row 4 times")
	assert.Contains(t, strings.Join(told, "\n"), "round 10: 240 − 35 = 205, ")
	assert.Equal(t, []string{"line 15: base + 2 sts - 2 sts = 240 sts + 2 sts - 2 sts = 240 sts"}, lines(t, all, "sums in the pieces"))
}

// In every example, size and line: what is told to be taken is what the grading gave, and
// every line that gave something has its arithmetic.
func TestWhatIsToldIsWhatTheGradingGave(t *testing.T) {
	told := 0
	examples, err := filepath.Glob("../../examples/*.yaml")
	require.NoError(t, err)
	for _, path := range append(examples, "../../testdata/grade/tunic.yaml") {
		p := given.File(t, path)
		for size := range p.Sizes.Names {
			all := grade.Explain(p, size)
			for _, v := range p.Graded {
				g := p.Grading[v.Of]
				n, has := v.Vals.At(size)
				if !has {
					continue
				}
				of := lines(t, all, g.Name)
				require.NotEmpty(t, of)
				if v.Name != g.Name || g.Kind != schematic.GradeStitches && g.Kind != schematic.GradeRows {
					continue
				}
				told++
				last := of[len(of)-1]
				count := strconv.FormatInt(n.Floor(), 10)
				require.True(t, strings.HasPrefix(last, "taken: "+count+" ") || strings.Contains(last, count+" sts, nothing") || strings.Contains(last, count+" rows, nothing") ||
					strings.Contains(last, count+" sts make") || strings.Contains(last, count+" rows make"), "%s %s: %s", path, g.Name, last)
			}
		}
	}
	assert.Greater(t, told, 80)
	assert.Empty(t, grade.Explain(tunic(t), 99))
	assert.Empty(t, grade.Explain(tunic(t), -1))
}
