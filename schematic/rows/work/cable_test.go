package work

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/finding"
)

// 2 + 6 + 2 of 10; the name is asked for once, however often it stands there.
func TestACableThatNoOneExplainsIsAskedForAndCounted(t *testing.T) {
	src := "Cast on 10 sts.\nRow 1: K2, C6B, k2. (10 sts)\nRow 2: Purl. (10 sts)\nRow 3: K2, C6B, k2. (10 sts)\n"
	list := check(src)
	require.Len(t, list, 1)
	assert.Equal(t, "rows/meaning", list[0].Kind)
	assert.Equal(t, finding.Note, list[0].Severity)
	assert.Equal(t, "the text does not say how C6B is crossed; its 6 stitches are counted", list[0].Message)
	assert.Equal(t, 2, list[0].Pos.Line)
	assert.Empty(t, check("Special stitches: C6B = slip next 3 sts to cable needle and hold in back, k3, k3 from cable needle.\n"+src))
}

// Two cables told in one line, without a heading of abbreviations: each is crossed as it says.
func TestCablesToldWithinALine(t *testing.T) {
	g, ok := GraphOf(Read("t", []byte(`Plait
Worked flat. C6B: sl 3 sts to cn, hold in back, k3, k3 from cn. C6F: sl 3 sts to cn, hold in front, k3, k3 from cn.
Cast on 9 sts.
Row 1 (RS): C6B, k3.
Row 2: Purl.
Row 3: K3, C6F.
`), Options{TermsSet: true}), "", 0)
	require.True(t, ok)
	for row, left := range map[int]bool{1: false, 3: true} {
		crossed := 0
		for _, s := range g.Rows[row].Stitches {
			if s.Cross != nil {
				crossed++
				assert.Equal(t, left, s.Cross.Left, "row %d", row)
				assert.Equal(t, [2]int{3, 3}, [2]int{s.Cross.Held, s.Cross.Over})
			}
		}
		assert.Equal(t, 6, crossed, "row %d", row)
	}
}

// Crossings told in the row itself are crossings, and no plain stitches; counted by hand: 3 and 4, twice, and 3.
func TestCablesToldInTheRowItself(t *testing.T) {
	for words, want := range map[string]Cross{
		"slip next 2 sts to cable needle and hold in front, k2, k2 from cable needle":         {Held: 2, Over: 2, Left: true},
		"slip 2 sts to CN and hold in back; k2 from LN, then k2 from CN":                      {Held: 2, Over: 2},
		"sl next 3 sts onto cn and hold in front, p1, k3 from cn":                             {Held: 3, Over: 1, Left: true, Purl: true},
		"slip next st onto cable needle and hold at back, k3, p1 from cable needle":           {Held: 1, Over: 3, Purl: true},
		"place next 2 sts on cable needle and hold to the back, k2, k2 from the cable needle": {Held: 2, Over: 2},
	} {
		g, ok := GraphOf(Read("t", []byte("Cast on 17 sts.\nRow 1 (RS): *P3, "+words+"; rep from * to last 3 sts, p3. (17 sts)\n"), Options{TermsSet: true}), "", 0)
		require.True(t, ok, words)
		crossed := 0
		for _, s := range g.Rows[1].Stitches {
			if s.Cross != nil {
				crossed++
				assert.Equal(t, want, *s.Cross, words)
			}
		}
		assert.Equal(t, 8, crossed, words)
	}
}
