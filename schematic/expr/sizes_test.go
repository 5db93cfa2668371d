package expr

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/units"
)

func TestASizeThatIsNotThereHasNoNumber(t *testing.T) {
	g := Counts(3, 5)
	g.Has[1] = false
	for i, want := range map[int]int{-1: 9, 0: 3, 1: 9, 2: 9} {
		assert.Equal(t, want, g.Int(i, 9), "size %d", i)
		_, ok := g.At(i)
		assert.Equal(t, i == 0, ok, "size %d", i)
	}
	assert.True(t, Graded{}.IsZero())
	assert.False(t, g.IsZero())
}

// The words for shares, and the signs that take away: a hyphen or a dash does behind a space or a bracket.
func TestWordsForSharesAndSignsForLess(t *testing.T) {
	for text, want := range map[string]units.Num{
		"half of 12": units.Int(6), "a half of 12": units.Int(6), "third of 12": units.Int(4), "a third of 12": units.Int(4),
		"quarter of 12": units.Int(3), "a quarter of 12": units.Int(3), "twice 12": units.Int(24), "double 12": units.Int(24),
		"12 - 2": units.Int(10), "12 – 2": units.Int(10), "12−2": units.Int(10), "(12)-2": units.Int(10), "12 - (2)": units.Int(10),
		"1 1/2 + 1": units.Frac(5, 2), "2 3/4": units.Frac(11, 4), "½ + ¼": units.Frac(3, 4), "12 / 2 x 3": units.Int(18), "2 + 3 x 4": units.Int(14),
		strings.Repeat("(1) + ", 60) + "1": units.Int(61), // brackets beside each other are not deep
	} {
		s, bad := ParseSum(text)
		if assert.Nil(t, bad, text) {
			v, bad := s.Eval(env)
			assert.Nil(t, bad, text)
			assert.True(t, want.Eq(v.N), "%s is %s, not %s", text, v.N, want)
		}
	}
	s, bad := ParseSum("bust + 2 x bust + cross-back")
	assert.Nil(t, bad)
	assert.Equal(t, []string{"bust", "cross-back"}, s.Names(), "each name once")
}
