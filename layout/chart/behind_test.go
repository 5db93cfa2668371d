package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Counted by hand: 6 sc of round 1, six petals of 6 stitches, 6 post stitches around the sc of round 1, not of round 2, and six
// petals of 8.
func TestPetalsBehindPetalsAreOpenedOut(t *testing.T) {
	w := fromText(t, `Terms: US
Notes: Ch 1 does not count as a st.
Ch 6, join with sl st to form a ring.
Rnd 1: Ch 1, *sc in ring, ch 3; rep from * 5 more times, join with sl st in first sc. (6 sc, 6 ch-3 sps)
Rnd 2: Ch 1, (sc, hdc, 2 dc, hdc, sc) in each ch-3 sp around, join with sl st in first sc. (12 sc, 12 hdc, 12 dc)
Rnd 3: Ch 1, working behind petals, *BPsc around next sc of rnd 1, ch 4; rep from * 5 more times, join with sl st in first BPsc. (6 sc, 6 ch-4 sps)
Rnd 4: Ch 1, (sc, hdc, 4 dc, hdc, sc) in each ch-4 sp around, join with sl st in first sc. (12 sc, 12 hdc, 24 dc)
`)
	require.Len(t, w.Rows, 5)
	assert.Empty(t, w.Gaps())
	for r, want := range []int{6, 6, 36, 6, 48} {
		assert.Equal(t, want, w.Rows[r].counted(), "round %d", r)
	}
	p, f := laid(w)
	require.Equal(t, circle, p.form)
	assert.Empty(t, touching(p, f, 0.02))
	lines := 0
	for i, n := range p.lines[3].nodes {
		if len(n.feet) == 0 {
			continue
		}
		through := n.feet[0]
		require.Equal(t, behind, through.st.Kind, "stitch %d stands on the line through the petals", i)
		assert.Equal(t, "sc", through.feet[0].st.Kind.ID, "which leads to round 1")
		lines++
	}
	assert.Equal(t, 6, lines)
	assert.NotContains(t, w.words(2), "behind", "the lines are no stitches of the petals")
	assert.Contains(t, w.behindNotes()[0], "Round 3 is worked behind")
}
