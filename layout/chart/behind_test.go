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

// By hand: arches worked between petals hang from the stitches that the petals stand between, in the round below them; the next
// petals stand on those arches, and neither makes a motif with corners.
func TestArchesBetweenPetalsLieBehindThem(t *testing.T) {
	w := fromText(t, `Terms: US
Ch 5, join with sl st to form a ring.
Rnd 1: Ch 6 (counts as dc and ch 3), (dc in ring, ch 3) 5 times, join with sl st in 3rd ch of ch-6.
Rnd 2: Ch 1, (sc, hdc, 3 dc, hdc, sc) in each ch-3 sp around, join with sl st in first sc.
Rnd 3: Ch 4, sl st between 1st and 2nd petals, *ch 4, sl st between next two petals; rep from * 4 more times.
Rnd 4: (sc, hdc, 5 dc, hdc, sc) in each ch-4 sp around, join with sl st in first sc.
`)
	require.Len(t, w.Rows, 5)
	assert.Empty(t, w.Gaps())
	p, f := laid(w)
	require.Equal(t, circle, p.form)
	assert.Empty(t, touching(p, f, 0.02))
	lines := 0
	for _, n := range p.lines[3].nodes {
		if len(n.feet) == 0 {
			continue
		}
		lines++
		require.Equal(t, behind, n.feet[0].st.Kind)
		assert.Equal(t, "dc", n.feet[0].feet[0].st.Kind.ID, "which leads to round 1")
	}
	assert.Equal(t, 6, lines)
}

// The post of which stitch is not said: the round is told, and drawn into none.
func TestAPostOfNoStitchIsNotGuessed(t *testing.T) {
	w := fromText(t, `Terms: US
Ch 5, join with sl st to form a ring.
Rnd 1: Ch 1, 12 sc in ring, join with sl st in first sc.
Rnd 2: Ch 1, *sc in next sc, 3 dc in next sc; rep from * around, join with sl st in first sc.
Rnd 3: Working in back of flower, *sc around the post, ch 3; rep from * around, join with sl st in first sc.
`)
	require.NotEmpty(t, w.Gaps())
	assert.Contains(t, w.Gaps()[0].Words, "what it is worked into is not known")
}

// A round that closes a chain is the ring of the next.
func TestARoundThatClosesAChainIsTheRing(t *testing.T) {
	w := fromText(t, `Terms: US
Rnd 1: Ch 5. Join with a sl st to form a ring.
Rnd 2: Ch 3 (counts as dc), 11 dc into ring. Join with a sl st to top of ch-3.
`)
	require.Len(t, w.Rows, 2)
	assert.True(t, w.Rows[0].Base)
	assert.Len(t, w.Rows[0].St, 5)
	assert.Equal(t, 2, w.Rows[1].Number)
}
