package shaping

import (
	"testing"

	"flatwright/schematic/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestARaglanMeetsRowToRowInEverySizeAndGauge(t *testing.T) {
	bust, depth, arm := bodyOf(t, "bust"), bodyOf(t, "armhole depth"), bodyOf(t, "upper arm")
	for name, c := range cloths {
		for i := range bust {
			step := 2
			if c.Tall {
				step = 1
			}
			w := c.Cloth.Stitch
			in := RaglanIn{
				Back: sts(t, bust[i].Add(inches(4)).Half(), w, Rule{}), Front: sts(t, bust[i].Add(inches(4)).Half(), w, Rule{Parity: Even}),
				Sleeve:   sts(t, arm[i].Add(inches(3)), w, Rule{}),
				NeckBack: sts(t, inches(7), w, Rule{}), NeckFront: sts(t, inches(6), w, Rule{}), NeckSleeve: sts(t, inches(1), w, Rule{Least: 2}),
				Underarm: sts(t, inches(1), w, Rule{Least: 1}), Rows: sts(t, depth[i].Add(inches(2)), c.Cloth.Row, Rule{Parity: Even}), Step: step,
			}
			p, err := Raglan(in)
			require.NoError(t, err, "%s size %d", name, i)
			checkRaglan(t, in, p)
		}
	}
}

func checkRaglan(t require.TestingT, in RaglanIn, p RaglanPlan) {
	before := [3]int{in.Back, in.Front, in.Sleeve}
	wish := [3]int{in.NeckBack, in.NeckFront, in.NeckSleeve}
	for i, l := range p.Pieces {
		require.Equal(t, p.Underarm, l.Underarm, "the underarms match")
		require.Equal(t, in.Rows, l.Plan.rows(), "every edge takes the same rows")
		require.Equal(t, before[i]-2*(l.Underarm+l.Plan.count()), l.Neck)
		require.Contains(t, []int{0, 1}, l.Neck-wish[i])
		last := 0
		for _, r := range l.Plan.on() {
			require.Greater(t, r, last, "no more than one decrease in a row at an edge")
			last = r
		}
	}
	require.GreaterOrEqual(t, p.Underarm, in.Underarm)
}

// By hand: 90 stitches, 4 at each underarm, 36 at the neck: 46 to lose, 23 at
// each edge; 52 rows have 26 right-side rows, so 3 spacings of 4 rows and 20 of 2: 12 + 40 = 52.
// The sleeve's 70 − 8 − 10 = 52 are 26: every second row.
func TestARaglanByHand(t *testing.T) {
	p, err := Raglan(RaglanIn{Back: 90, Front: 90, Sleeve: 70, NeckBack: 36, NeckFront: 36, NeckSleeve: 10, Underarm: 4, Rows: 52, Step: 2})
	require.NoError(t, err)
	assert.Equal(t, "every 4th row 3 times, then every 2nd row 20 times", p.Pieces[0].Plan.String())
	assert.Equal(t, "every 2nd row 26 times", p.Pieces[2].Plan.String())
	_, err = Raglan(RaglanIn{Back: 90, Front: 90, Sleeve: 40, NeckBack: 20, NeckFront: 20, NeckSleeve: 20, Underarm: 4, Rows: 10, Step: 1})
	assert.ErrorContains(t, err, "rows deep")
}

func TestRandomRaglansFitOrSayWhy(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, lo, hi int) int { return rapid.IntRange(lo, hi).Draw(t, name) }
		in := RaglanIn{
			Back: draw("back", 1, 200), Front: draw("front", 1, 200), Sleeve: draw("sleeve", 1, 150),
			NeckBack: draw("nb", 0, 60), NeckFront: draw("nf", 0, 60), NeckSleeve: draw("ns", 0, 30),
			Underarm: draw("u", 0, 20), Rows: draw("rows", 1, 120), Step: draw("step", 1, 2),
		}
		p, err := Raglan(in)
		if err == nil {
			checkRaglan(t, in, p)
		}
	})
}

func TestARoundYokeFitsItsNeckInEverySizeAndGauge(t *testing.T) {
	bust, depth, arm := bodyOf(t, "bust"), bodyOf(t, "armhole depth"), bodyOf(t, "upper arm")
	for name, c := range cloths {
		for i := range bust {
			w := c.Cloth.Stitch
			under := sts(t, inches(2), w, Rule{Parity: Even, Least: 2})
			for _, multiple := range []int{1, 4} {
				start := sts(t, bust[i].Add(inches(4)).Add(arm[i].Add(inches(2)).Times(2)).Sub(w.Times(4*under)), w, Rule{Multiple: multiple})
				in := YokeIn{Start: start, Neck: sts(t, inches(22), w, Rule{}), Rows: sts(t, depth[i].Add(inches(1)), c.Cloth.Row, Rule{}), Multiple: multiple}
				p, err := Yoke(in)
				require.NoError(t, err, "%s size %d", name, i)
				checkYoke(t, in, p)
			}
		}
	}
}

func checkYoke(t require.TestingT, in YokeIn, p YokePlan) {
	m := max(in.Multiple, 1)
	require.Zero(t, p.Neck%m, "the neck is a whole repeat")
	require.LessOrEqual(t, abs(p.Neck-in.Neck)*2, m, "within half a repeat of the wish")
	before, row := in.Start, 0
	for _, r := range p.Rounds {
		require.Equal(t, before, r.Before)
		require.Greater(t, r.Row, row)
		require.Zero(t, r.After%m)
		sum := 0
		least, most := r.Gaps[0], r.Gaps[0]
		for _, g := range r.Gaps[:len(r.Gaps)-1] {
			sum += g
			least, most = min(least, g), max(most, g)
		}
		require.LessOrEqual(t, most-least, 1, "spread evenly round")
		n := len(r.Gaps) - 1
		require.Equal(t, r.Before, sum+2*n, "the round uses all its stitches")
		require.Equal(t, r.After, sum+n, "each decrease leaves one")
		// A cone: the way round is on the line from the start to the neck, to half a repeat.
		line := units.Int(int64(in.Start)).Sub(units.Frac(int64(in.Start-p.Neck)*int64(r.Row), int64(in.Rows)))
		require.False(t, units.Frac(int64(m), 2).Less(line.Sub(units.Int(int64(r.After))).Abs()))
		before, row = r.After, r.Row
	}
	require.Equal(t, p.Neck, before)
	if len(p.Rounds) > 0 {
		require.Equal(t, in.Rows, row, "the last round of decreases is at the neck")
	}
}

// left is how many stitches each round of decreases leaves, and where it is.
func left(t *testing.T, in YokeIn) (rows, counts []int) {
	p, err := Yoke(in)
	require.NoError(t, err)
	for _, r := range p.Rounds {
		rows, counts = append(rows, r.Row), append(counts, r.After)
	}
	return rows, counts
}

// Plymouth Yarn, a child's yoke from the neck (plymouthyarn.com, pattern list, 'Yoke', four sizes): 60 (64, 72, 76)
// stitches, 26 (28, 30, 34) increased to 86 (92, 102, 110), five rows, and as many again to 112 (120, 132, 144). From the base to
// the neck the same counts come out.
func TestAYokeLosesWhatAPublishedOneDoes(t *testing.T) {
	for _, size := range [][3]int{{60, 86, 112}, {64, 92, 120}, {72, 102, 132}, {76, 110, 144}} {
		for _, first := range []int{0, 6} {
			rows, counts := left(t, YokeIn{Start: size[2], Neck: size[0], Rows: 12, Rounds: 2, First: first})
			assert.Equal(t, []int{6, 12}, rows)
			assert.Equal(t, size[1], counts[0])
		}
	}
}

// The percentage system of the seamless yoke (E. Zimmermann, as told at jenjoycedesign.com, 16 August 2012, after
// her 'Knitting Around'): plain to half the depth, then a quarter is lost ('k2, k2tog'), at three quarters of it a third ('k1, k2tog'), and at the neck
// two fifths (from memory). A body of 200, sleeves of 35 % and underarms of 8 % (from memory) make 200 + 140 − 4 × 16 = 276: 207, 138, 83.
// The rounds are the same ones. The counts are apart by a twentieth of a body at most, since the last of its
// rounds loses 55 where the others lose 69, and here all lose as many.
func TestAYokePlainToHalfItsDepthComesNearThePercentageSystem(t *testing.T) {
	rows, counts := left(t, YokeIn{Start: 276, Neck: 83, Rows: 56, Rounds: 3, First: 28})
	assert.Equal(t, []int{28, 42, 56}, rows)
	assert.Equal(t, []int{212, 147, 83}, counts) // 276 − 193/3 = 211.7, 276 − 2 × 193/3 = 147.3
	for i, published := range []int{207, 138, 83} {
		assert.LessOrEqual(t, abs(counts[i]-published), 10)
	}
	_, counts = left(t, YokeIn{Start: 276, Neck: 83, Rows: 56, Rounds: 3, First: 28, Multiple: 6})
	assert.Equal(t, []int{210, 150, 84}, counts) // of a motif of 6: 211.9 and 147.9 at a neck of 84
	_, err := Yoke(YokeIn{Start: 276, Neck: 83, Rows: 56, Rounds: 3, First: 57})
	assert.Error(t, err)
	_, err = Yoke(YokeIn{Start: 276, Neck: 83, Rows: 56, Rounds: 3, First: 55})
	assert.ErrorContains(t, err, "do not fit")
}

// The same author's two yokes of a body of 200, 268 stitches and 80 at the neck over 66 to 75 rounds, as told at handmadestitchbystitch.wordpress.com
// ('Yoke Cheat Sheet'): after 'Knitting Without Tears' 179, 120, 80 (a third each time), after 'Knitting Around' 201, 134, 80, the first round at half the depth
// ('at 33', of 66), the second at three quarters (50). Equal losses, 205 and 143, keep the yoke wider for longer, as the later of the two does:
// they are within a twentieth of a body of it, and never narrower than either.
func TestAYokePlainToHalfItsDepthIsAsWideAsThePublishedOnes(t *testing.T) {
	rows, counts := left(t, YokeIn{Start: 268, Neck: 80, Rows: 66, Rounds: 3, First: 33})
	assert.Equal(t, []int{33, 50, 66}, rows)
	assert.Equal(t, []int{205, 143, 80}, counts) // 268 − 188/3 = 205.3, 268 − 2 × 188/3 = 142.7
	for i, published := range [][2]int{{179, 201}, {120, 134}, {80, 80}} {
		assert.LessOrEqual(t, counts[i]-published[1], 10)
		assert.GreaterOrEqual(t, counts[i], published[0])
		assert.GreaterOrEqual(t, counts[i], published[1])
	}
}

// By hand: 240 − 35 = 205, 35 decreases take 70 and leave 170 between: 30 gaps of 5 and 5 of 4.
func TestARoundThatIsNoRepeatIsSaidInOneSentence(t *testing.T) {
	gaps, err := Evenly(35, 170, InRound)
	require.NoError(t, err)
	assert.Equal(t, "work 4, (decrease, work 4) 5 times, decrease", around([]int{4, 4, 4, 4, 4, 4, 0}))
	assert.Equal(t, "decreases spread evenly, 30 times with 5 between and 5 times with 4", around(gaps))
}

func abs(n int) int { return max(n, -n) }

func TestAYokeThatCannotBeSaysWhy(t *testing.T) {
	_, err := Yoke(YokeIn{Start: 200, Neck: 20, Rows: 40, Rounds: 1})
	assert.ErrorContains(t, err, "every second stitch")
	_, err = Yoke(YokeIn{Start: 10, Neck: 20, Rows: 40})
	assert.Error(t, err)
	_, err = Yoke(YokeIn{Start: 200, Neck: 100, Rows: 2, Rounds: 3})
	assert.ErrorContains(t, err, "do not fit")
}
