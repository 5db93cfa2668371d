package shaping

import (
	"testing"

	"flatwright/schematic/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A worked example by hand (common practice): a back of 51 cm at 18 stitches over
// 10 cm is 91.8 stitches. A rib of 4 + 2 allows 90 and 94; 90 is 50 cm and 1 cm short.
func TestABackIsCountedByHand(t *testing.T) {
	each := units.Frac(100, 18)
	for _, c := range []struct {
		name string
		rule Rule
		want int
	}{
		{"plain", Rule{}, 92},
		{"rib of 4 + 2", Rule{Multiple: 4, Plus: 2}, 90},
		{"rib of 4 + 2, not less", Rule{Multiple: 4, Plus: 2, Round: AtLeast}, 94},
		{"even partner", Rule{Parity: Like(90)}, 92},
		{"odd partner", Rule{Parity: Like(7)}, 91},
		{"multiple of 3 + 1, even", Rule{Multiple: 3, Plus: 1, Parity: Even}, 94},
		{"multiple of 3 + 1, odd", Rule{Multiple: 3, Plus: 1, Parity: Odd}, 91},
		{"multiple of 4 − 1", Rule{Multiple: 4, Plus: -1}, 91},
		{"at least 100", Rule{Multiple: 6, Least: 100}, 102},
	} {
		got, err := Count(units.Int(510), each, c.rule)
		require.NoError(t, err, c.name)
		assert.Equal(t, c.want, got.Count, c.name)
		assert.Equal(t, units.Frac(459, 5), got.Exact)
	}
	got, _ := Count(units.Int(510), each, Rule{Multiple: 4, Plus: 2})
	assert.Equal(t, units.Int(500), got.Makes)
	assert.Equal(t, units.Int(-10), got.Cost)
	_, err := Count(units.Int(510), each, Rule{Multiple: 4, Plus: 2, Parity: Odd})
	assert.ErrorContains(t, err, "multiple of 4 + 2, odd")
	_, err = Count(units.Int(510), units.Int(0), Rule{})
	assert.Error(t, err)
	_, err = Count(units.Int(1<<40), units.Int(1), Rule{})
	assert.Error(t, err)
}

// Held against a search of every count from 0 that fulfils the rule.
func TestCountIsTheNearestOfAllThatTheRuleAllows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Rule{
			Multiple: rapid.IntRange(0, 16).Draw(t, "multiple"), Plus: rapid.IntRange(-5, 15).Draw(t, "plus"),
			Parity: Parity(rapid.IntRange(0, 2).Draw(t, "parity")), Round: Nearness(rapid.IntRange(0, 2).Draw(t, "round")),
		}
		exact := units.Frac(rapid.Int64Range(20*60, 300*60).Draw(t, "exact"), 60)
		best, found := 0, false
		m := max(r.Multiple, 1)
		for n := range 400 {
			if ((n-r.Plus)%m+m)%m != 0 || r.Parity == Even && n%2 != 0 || r.Parity == Odd && n%2 == 0 {
				continue
			}
			d := units.Int(int64(n)).Sub(exact)
			if r.Round == AtLeast && d.Sign() < 0 || r.Round == AtMost && d.Sign() > 0 {
				continue
			}
			if !found || !units.Int(int64(best)).Sub(exact).Abs().Less(d.Abs()) {
				best, found = n, true
			}
		}
		n, step, err := Whole(exact, r)
		if err != nil {
			if found {
				t.Fatalf("%v though %d fits", err, best)
			}
			return
		}
		if n != best && !(r.Round == AtMost && !found) {
			t.Fatalf("got %d, want %d for %s by %s", n, best, exact, r)
		}
		if r.Round == Nearest && units.Frac(int64(step), 2).Less(units.Int(int64(n)).Sub(exact).Abs()) {
			t.Fatalf("off by more than half of %d", step)
		}
	})
}
