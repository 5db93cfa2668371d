package shaping

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic/units"
)

// YokeIn is what a round yoke is reckoned from.
type YokeIn struct {
	Start    int // stitches of body and sleeves on one round
	Neck     int // stitches wished at the neck
	Rows     int // rounds from the joining to the neck
	Rounds   int // rounds with decreases; 0 takes the fewest that lose no more than a third at once, and at least three
	First    int // the first of them, counted from the joining; 0 spreads all of them evenly
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

// Yoke reckons a round yoke, in rounds of decreases of which the last one is at the neck. Spread evenly over the rows,
// its way round falls in a straight line with depth, as that of a cone does. With a first round higher up, as where
// the yoke is plain up to half its depth so that it has room for the shoulders (common practice), each round loses as
// many stitches as the next, to the multiple. Within a round the decreases are spread evenly. A decrease takes two
// stitches, so that a round loses half its stitches at most. It fails if the rows
// or stitches do not hold that.
func Yoke(in YokeIn) (YokePlan, error) {
	p := YokePlan{Rows: in.Rows}
	m := max(in.Multiple, 1)
	if in.Start < 2 || in.Start > MaxCount || in.Rows < 1 || in.Rows > MaxCount || in.Rounds < 0 || in.First < 0 || in.First > in.Rows || in.Neck < 1 || in.Neck > in.Start {
		return p, fmt.Errorf("a yoke needs rows and more stitches below (%d) than at the neck (%d)", in.Start, in.Neck)
	}
	neck, _, err := Whole(units.Int(int64(in.Neck)), Rule{Multiple: m, Least: 1})
	if err != nil {
		return p, err
	}
	p.Neck = min(neck, in.Start)
	if p.Neck != in.Neck {
		p.say("a neck of %d is not a multiple of %d: %d", in.Neck, m, p.Neck)
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
		rounds, worst, err := in.rounds(p.Neck, n, m)
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
		if in.First > 0 {
			p.say("the first round with decreases is round %d of %d, the others are spread over those above it, each loses as many stitches", in.First, in.Rows)
		} else if plan, err := Spread(n, in.Rows, 1, SlowFirst); err == nil && n == len(rounds) {
			p.say("rounds with decreases: %s", SpreadWords(n, in.Rows, 1, plan))
		}
		break
	}
	for _, r := range p.Rounds {
		p.say("round %d: %d − %d = %d, %s", r.Row, r.Before, r.Before-r.After, r.After, around(r.Gaps))
	}
	return p, nil
}

// around says a round of decreases in words: as a repeat where it is one, and else how many stitches stand between them.
func around(gaps []int) string {
	if text := along(gaps, "decrease"); strings.Count(text, "(") <= 1 && strings.Count(text, ",") <= 6 {
		return text
	}
	least, more := slices.Min(gaps[:len(gaps)-1]), 0
	for _, g := range gaps[:len(gaps)-1] {
		if g > least {
			more++
		}
	}
	return fmt.Sprintf("decreases spread evenly, %d times with %d between and %d times with %d", more, least+1, len(gaps)-1-more, least)
}

// on are the n rows with decreases, and how far down the line from start to neck each of them is.
func (in YokeIn) on(n int) (rows []int, share []units.Num, err error) {
	plan, err := Spread(n, in.Rows, 1, SlowFirst)
	if in.First > 0 && err == nil {
		plan, err = Spread(n-1, in.Rows-in.First, 1, SlowFirst)
		rows = []int{in.First}
	}
	for _, row := range plan.on() {
		rows = append(rows, row+in.First)
	}
	for i, row := range rows {
		s := units.Frac(int64(row), int64(in.Rows))
		if in.First > 0 {
			s = units.Frac(int64(i+1), int64(n))
		}
		share = append(share, s)
	}
	return rows, share, err
}

// rounds sets n rounds of decreases; worst is the largest share lost in one,
// in ten thousandths.
func (in YokeIn) rounds(neck, n, m int) ([]YokeRound, int, error) {
	on, share, err := in.on(n)
	if err != nil {
		return nil, 0, err
	}
	start := in.Start
	var out []YokeRound
	worst, before := 0, start
	for i, row := range on {
		exact := units.Int(int64(start)).Sub(share[i].Times(start - neck))
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
