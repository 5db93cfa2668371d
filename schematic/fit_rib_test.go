package schematic

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/expr"
)

// ribbing is a piece as published: cast on, a rib of 13 rows, 26 rows of fabric, or what else is between, a rib again, and its end.
func ribbing(n int, between, end Section) (list []Section, steps map[Section]Step) {
	on := func(line int) Common { c := Common{}; c.Pos.Line = line; return c }
	rib := func(line int) *Even {
		return &Even{Common: on(line), Amount: Amount{Rows: expr.Counts(13)}, Rib: true}
	}
	list = []Section{&CastOn{Common: on(1), Stitches: expr.Counts(n), Chain: expr.Counts(n + 2)}, rib(2), between, rib(4), end}
	steps, row := map[Section]Step{}, 1
	for i, s := range list {
		step := Step{Section: s, Before: n, After: n, FirstRow: row, FirstRS: true}
		switch i {
		case 0:
			step.Before = 0
		case 1, 3:
			step.Rows = 13
		case 2:
			step.Rows = 26
		case 4:
			step.After = 0
		}
		row += step.Rows
		steps[s] = step
	}
	return list, steps
}

// fitted are the sections of a piece in the round at three quarters of the stitches and ten thirteenths of the rows, in words.
func fitted(c *nearest, n, multiple, plus int, between, end func() Section) []string {
	was, steps := ribbing(n, between(), end())
	now, _ := ribbing(n, between(), end())
	c.ribs = map[Section]Need{was[1]: {multiple, plus}, was[3]: {multiple, plus}}
	f := &Fitting{Chooser: c, Steps: steps, Round: true, Made: map[Section]int{}, Twos: map[Section]bool{}}
	var out []string
	for _, s := range f.Fit(now, was) {
		switch q := s.(type) {
		case *CastOn:
			out = append(out, fmt.Sprintf("cast on %d of %d", q.Stitches.Int(0, 0), q.Chain.Int(0, 0)))
		case *Even:
			out = append(out, fmt.Sprintf("%d rows", q.Rows.Int(0, 0)))
		case *Shape:
			by := q.Shapings[0].By.Int(0, 0) * q.Shapings[0].sign()
			out = append(out, fmt.Sprintf("%+d", by))
		default:
			out = append(out, fmt.Sprintf("end of %d", f.N))
		}
	}
	return out
}

// By hand: 44 sts are 33, by fours 32: one fewer in the rib. 13, 26 and 13 rows are 10, 20 and 10: the first round of the fabric has the change to 33, and its
// last that back. Held stitches go on in another piece: they are the fabric's again. 32 sts are 24, as
// the rib has them.
func TestARibIsFittedByHand(t *testing.T) {
	even := func() Section { return &Even{Common: Common{}, Amount: Amount{Rows: expr.Counts(26)}} }
	bindOff := func() Section { return &BindOff{All: true} }
	hold := func() Section { return &BindOff{All: true, Hold: true} }
	c := &nearest{moved: map[string]int{}}
	assert.Equal(t, []string{"cast on 32 of 34", "10 rows", "+1", "18 rows", "-1", "10 rows", "end of 0"}, fitted(c, 44, 4, 0, even, bindOff))
	assert.Equal(t, []string{"the rib keeps its multiple of 4: cast on 32, and increase 1 across the first round after it",
		"the rib keeps its multiple of 4: decrease 1 across the last round before it"}, c.told)
	assert.Equal(t, []string{"cast on 32 of 34", "10 rows", "+1", "18 rows", "-1", "10 rows", "+1", "end of 0"}, fitted(&nearest{}, 44, 4, 0, even, hold))
	assert.Equal(t, []string{"cast on 24 of 26", "10 rows", "20 rows", "10 rows", "end of 0"}, fitted(&nearest{}, 32, 4, 0, even, bindOff))
	assert.Equal(t, []string{"cast on 33 of 35", "10 rows", "20 rows", "10 rows", "end of 0"}, fitted(&nearest{}, 44, 1, 0, even, bindOff), "no repeat")
}

// By hand: a rib between whose neighbours are ribs too, of the same repeat, goes on as it is: 32 sts throughout.
func TestRibsThatFollowEachOtherKeepOneCount(t *testing.T) {
	c := &nearest{}
	was, steps := ribbing(44, &Fold{}, &BindOff{All: true})
	now, _ := ribbing(44, &Fold{}, &BindOff{All: true})
	s := steps[was[2]]
	s.Rows = 0
	steps[was[2]] = s
	c.ribs = map[Section]Need{was[1]: {4, 0}, was[3]: {4, 0}}
	f := &Fitting{Chooser: c, Steps: steps, Round: true}
	out := f.Fit(now, was)
	assert.Len(t, out, 5)
	assert.Equal(t, 32, out[0].(*CastOn).Stitches.Int(0, 0))
	assert.Equal(t, []string{"the rib keeps its multiple of 4: cast on 32"}, c.told)
}

// By hand: short ribs are too few rows to change in, so that 33 stay.
func TestARibOfThreeRowsStaysAsItIs(t *testing.T) {
	s := &Even{Rib: true}
	c := &nearest{ribs: map[Section]Need{s: {4, 0}}}
	f := &Fitting{Chooser: c, N: 33, Round: true}
	assert.Equal(t, 3, f.ribbed(s, s, 3))
	assert.Equal(t, 33, f.N)
	f.step = Step{Before: 44, After: 44}
	assert.Equal(t, 3, f.ribbed(s, s, 4), "its first row takes the change, where there is none before it")
	assert.Equal(t, 32, f.N)
	f.N, f.Round, c.told = 35, false, nil
	assert.Equal(t, 4, f.ribbed(s, s, 4))
	assert.Equal(t, 35, f.N, "flat, its edges take what is over")
	assert.Equal(t, []string{"the rib has 35 sts, 3 over its multiple of 4: share that between its two edges; 32 or 36 sts have none over"}, c.told)
	f.N = 36
	f.ribbed(s, s, 4)
	assert.Len(t, c.told, 1)
	assert.Equal(t, "4 + 2", Need{4, 2}.String())
	assert.Equal(t, "4", Need{4, 0}.String())
}
