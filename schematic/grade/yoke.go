package grade

import (
	"fmt"

	"flatwright/schematic/units"
)

// YokeIn is what a round yoke is reckoned from.
type YokeIn struct {
	Start    int // stitches of body and sleeves on one round
	Neck     int // stitches wished at the neck
	Rows     int // rounds from the joining to the neck
	Rounds   int // rounds with decreases; 0 takes the fewest that lose no more than a third at once, and at least three
	Multiple int // of every count between (a stitch pattern's repeat); 0 is 1
}

// YokeRound is one round of decreases.
type YokeRound struct {
	Row           int // counted from the joining
	Before, After int
	Gaps          []int // stitches before each decrease, in the round
}

// YokePlan is a round yoke: its rounds of decreases, and how many stitches the
// neck has (the wish, at the nearest multiple).
type YokePlan struct {
	Rounds []YokeRound
	Neck   int
	Rows   int
	Lines  []string // the arithmetic
}

// Yoke reckons a round yoke. Its way round falls in a straight line with depth,
// as that of a cone does, in rounds of decreases spread evenly over the rows, the last one
// at the neck; within a round the decreases are spread evenly. A decrease takes two
// stitches, so that a round loses half its stitches at most. It fails if the rows
// or stitches do not hold that.
func Yoke(in YokeIn) (YokePlan, error) {
	p := YokePlan{Rows: in.Rows}
	m := max(in.Multiple, 1)
	if in.Start < 2 || in.Start > maxCount || in.Rows < 1 || in.Rows > maxCount || in.Rounds < 0 || in.Neck < 1 || in.Neck > in.Start {
		return p, fmt.Errorf("a yoke needs rows and more stitches below (%d) than at the neck (%d)", in.Start, in.Neck)
	}
	neck, _, err := Whole(units.Int(int64(in.Neck)), Rule{Multiple: m, Least: 1})
	if err != nil {
		return p, err
	}
	p.Neck = min(neck, in.Start)
	if p.Neck != in.Neck {
		p.say("a neck of %d is no multiple of %d: %d", in.Neck, m, p.Neck)
	}
	p.say("%d − %d at the neck = %d stitches to lose over %d rounds", in.Start, p.Neck, in.Start-p.Neck, in.Rows)
	if in.Start == p.Neck {
		return p, nil
	}
	first, last := in.Rounds, in.Rounds
	if in.Rounds == 0 {
		first, last = min(3, in.Rows), in.Rows
	}
	for n := first; n <= last; n++ {
		rounds, worst, err := yokeRounds(in.Start, p.Neck, in.Rows, n, m)
		if err != nil {
			return p, err
		}
		if in.Rounds == 0 && worst > 3333 && n < last {
			continue
		}
		if worst > 5000 {
			return p, fmt.Errorf("%d rounds of decreases from %d stitches to %d would lose more than every second stitch: take more rounds, or a wider neck", n, in.Start, p.Neck)
		}
		p.Rounds = rounds
		if plan, err := Spread(n, in.Rows, 1, SlowFirst); err == nil && n == len(rounds) {
			p.say("rounds with decreases: %s", spreadWords(n, in.Rows, 1, plan))
		}
		break
	}
	for _, r := range p.Rounds {
		p.say("round %d: %d − %d = %d, %s", r.Row, r.Before, r.Before-r.After, r.After, Along(r.Gaps, "decrease"))
	}
	return p, nil
}

// yokeRounds sets n rounds of decreases; worst is the largest share lost in one,
// in ten thousandths.
func yokeRounds(start, neck, rows, n, m int) ([]YokeRound, int, error) {
	plan, err := Spread(n, rows, 1, SlowFirst)
	if err != nil {
		return nil, 0, err
	}
	var out []YokeRound
	worst, before := 0, start
	on := plan.On()
	for i, row := range on {
		// The way round at this row, on a line from start to neck.
		exact := units.Int(int64(start)).Sub(units.Frac(int64(start-neck)*int64(row), int64(on[len(on)-1])))
		after, _, err := Whole(exact, Rule{Multiple: m, Least: neck})
		if err != nil {
			return nil, 0, err
		}
		if i == len(on)-1 {
			after = neck
		}
		if after >= before {
			continue
		}
		lose := before - after
		worst = max(worst, lose*10_000/before)
		// Each decrease is worked over two stitches; the others stand between.
		if 2*lose > before {
			return nil, 10_000, nil
		}
		gaps, err := Evenly(lose, before-2*lose, InRound)
		if err != nil {
			return nil, 0, err
		}
		out = append(out, YokeRound{Row: row, Before: before, After: after, Gaps: gaps})
		before = after
	}
	return out, worst, nil
}

func (p *YokePlan) say(format string, args ...any) {
	p.Lines = append(p.Lines, fmt.Sprintf(format, args...))
}
