package bysize

import (
	"slices"

	"flatwright/schematic/units"
)

// OddSteps marks the steps from size to size that are unlike the others, three steps or more: one of more than
// three times the middle one of the others; and a first or last one of two and a half times the largest of the others,
// which only one neighbour tells from a group of sizes that begins. Floor is the least that a middle one is taken for (a step of up to three of them is never odd), and grain, one a step, how far
// rounding to whole stitches and rows may move a step. Sizes may go up in pairs or threes: where another step goes the same
// way, one from a size to its like is no measure of the others. All are in one unit.
func OddSteps(steps, grain []units.Num, floor units.Num) []OddStep {
	if len(steps) < 3 {
		return nil
	}
	var out []OddStep
	for i, step := range steps {
		others := beside(steps, grain, i)
		middle, largest := others[len(others)/2], others[len(others)-1]
		size := step.Abs()
		least := floor.Times(3).Add(grain[i])
		far := units.Max(middle.Times(3).Add(grain[i]), least).Less(size)
		end := i == 0 || i == len(steps)-1
		if far || end && least.Less(size) && !size.Less(largest.Times(5).Half()) {
			out = append(out, OddStep{At: i, Middle: middle})
		}
	}
	return out
}

// beside are the other steps without their signs, the least first; without those from a size to its like, if one of the rest goes the
// way of step i.
func beside(steps, grain []units.Num, i int) []units.Num {
	var all, moved []units.Num
	same := false
	for k, s := range steps {
		if k == i {
			continue
		}
		all = append(all, s.Abs())
		if grain[k].Half().Less(s.Abs()) || s.Sign() != 0 && grain[k].Sign() == 0 {
			moved = append(moved, s.Abs())
			same = same || s.Sign() == steps[i].Sign()
		}
	}
	if same {
		all = moved
	}
	slices.SortFunc(all, units.Num.Cmp)
	return all
}

// OddStep is a step unlike the others: its place among the steps, and the middle one of the others.
type OddStep struct {
	At     int
	Middle units.Num
}
