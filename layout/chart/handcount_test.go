package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Motifs of the public domain, their rows in words of our own. Stitches and spaces of each
// round are counted by hand, and corners: 0 where there are none.
var handCounted = []struct {
	source   string
	sides    int
	stitches []int
	spaces   []int
	rows     string
}{
	{"Crochet square, T. de Dillmont, Encyclopedia of Needlework, fig. 441 (Project Gutenberg)", 4, []int{12, 20, 28, 36}, []int{0, 0, 0, 0}, `Terms: US
Notes: Ch 1 does not count as a st.
Ch 4, join with sl st to form a ring.
Rnd 1: Ch 1, 12 sc in ring, join with sl st in first sc. (12 sc)
Rnd 2: Ch 1, 3 sc in first sc, sc in next 2 sc, *3 sc in next sc, sc in next 2 sc; rep from * 2 more times, join with sl st in first sc. (20 sc)
Rnd 3: Ch 1, sc in first sc, 3 sc in next sc, *sc in next 4 sc, 3 sc in next sc; rep from * 2 more times, sc in last 3 sc, join with sl st in first sc. (28 sc)
Rnd 4: Ch 1, sc in first 2 sc, 3 sc in next sc, *sc in next 6 sc, 3 sc in next sc; rep from * 2 more times, sc in last 4 sc, join with sl st in first sc. (36 sc)
`},
	{"Crochet hexagon, its rounds turned, T. de Dillmont, Encyclopedia of Needlework, fig. 442 (Project Gutenberg)", 6, []int{12, 24, 36}, []int{0, 0, 0}, `Terms: US
Notes: Ch 1 does not count as a st.
Ch 4, join with sl st to form a ring.
Rnd 1: Ch 1, 12 sc in ring, join with sl st in first sc, turn. (12 sc)
Rnd 2: Ch 1, *sc in next sc, 3 sc in next sc; rep from * 5 more times, join with sl st in first sc, turn. (24 sc)
Rnd 3: Ch 1, sc in first sc, *3 sc in next sc, sc in next 3 sc; rep from * 4 more times, 3 sc in next sc, sc in last 2 sc, join with sl st in first sc, turn. (36 sc)
`},
	{"Hexagon of trebles, its rounds turned, traditional", 6, []int{12, 24, 36}, []int{0, 0, 0}, `Terms: US
Ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring, join with sl st in top of ch-3, turn. (12 dc)
Rnd 2: Ch 3 (counts as dc), 3 dc in next dc, *dc in next dc, 3 dc in next dc; rep from * 4 more times, join with sl st in top of ch-3, turn. (24 dc)
Rnd 3: Ch 3 (counts as dc), dc in next dc, 3 dc in next dc, *dc in next 3 dc, 3 dc in next dc; rep from * 4 more times, dc in next dc, join with sl st in top of ch-3, turn. (36 dc)
`},
	{"Solid hexagon that begins in its corners, its rounds turned, traditional", 6, []int{12, 24, 48}, []int{6, 6, 6}, `Terms: US
Ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), dc in ring, ch 2, (2 dc in ring, ch 2) 5 times, join with sl st in top of ch-3, turn. (12 dc, 6 ch-2 sps)
Rnd 2: Sl st in ch-2 sp, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, *(2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * 4 more times, join with sl st in top of ch-3, turn. (24 dc, 6 ch-2 sps)
Rnd 3: Sl st in next 2 dc, sl st in ch-2 sp, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, *dc in next 4 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * 4 more times, dc in next 4 dc, join with sl st in top of ch-3, turn. (48 dc, 6 ch-2 sps)
`},
	{"Granny square without chains between its groups, traditional", 4, []int{12, 24, 36, 48}, []int{4, 4, 4, 4}, `Terms: US
Granny square without chains between
Ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join with sl st in top of ch-3. (12 dc, 4 ch-2 sps)
Rnd 2: Sl st in next 2 dc, sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, join with sl st in top of ch-3. (24 dc, 4 ch-2 sps)
Rnd 3: Sl st in next 2 dc, sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, 3 dc in next space between groups, *(3 dc, ch 2, 3 dc) in next ch-2 sp, 3 dc in next space between groups; rep from * 2 more times, join with sl st in top of ch-3. (36 dc, 4 ch-2 sps)
Rnd 4: Sl st in next 2 dc, sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *3 dc in next space between groups, 3 dc in next space between groups, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, (3 dc in next space between groups) twice, join with sl st in top of ch-3. (48 dc, 4 ch-2 sps)
`},
	{"Granny hexagon, traditional", 6, []int{12, 24, 54}, []int{6, 6, 6}, `Terms: US
Granny hexagon
Ch 5, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), dc in ring, ch 1, *2 dc in ring, ch 1; rep from * 4 more times, join with sl st in top of ch-3. (12 dc, 6 ch-1 sps)
Rnd 2: Sl st in next dc, sl st in next ch-1 sp, ch 3 (counts as dc), (dc, ch 1, 2 dc) in same sp, *(2 dc, ch 1, 2 dc) in next ch-1 sp; rep from * 4 more times, join with sl st in top of ch-3. (24 dc, 6 ch-1 sps)
Rnd 3: Sl st in next dc, sl st in next ch-1 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, 3 dc in next sp between groups, *(3 dc, ch 2, 3 dc) in next ch-1 sp, 3 dc in next sp between groups; rep from * 4 more times, join with sl st in top of ch-3. (54 dc, 6 ch-2 sps)
`},
	{"Solid square, traditional", 4, []int{12, 28, 44}, []int{4, 4, 4}, `Terms: US
Ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join with sl st in top of ch-3. (12 dc, 4 ch-2 sps)
Rnd 2: Ch 3 (counts as dc), dc in next 2 dc, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next 3 dc; rep from * 2 more times, (2 dc, ch 2, 2 dc) in last ch-2 sp, join with sl st in top of ch-3. (28 dc, 4 ch-2 sps)
Rnd 3: Ch 3 (counts as dc), dc in next 4 dc, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next 7 dc; rep from * 2 more times, (2 dc, ch 2, 2 dc) in last ch-2 sp, dc in last 2 dc, join with sl st in top of ch-3. (44 dc, 4 ch-2 sps)
`},
	{"Triangle, traditional", 3, []int{12, 30}, []int{3, 3}, `Terms: US
Ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 3 dc in ring, ch 3, (4 dc in ring, ch 3) 2 times, join with sl st in top of ch-3. (12 dc, 3 ch-3 sps)
Rnd 2: Ch 3 (counts as dc), dc in next 3 dc, *(3 dc, ch 3, 3 dc) in next ch-3 sp, dc in next 4 dc; rep from * once more, (3 dc, ch 3, 3 dc) in last ch-3 sp, join with sl st in top of ch-3. (30 dc, 3 ch-3 sps)
`},
	{"Solid square begun in its corners, traditional", 4, []int{12, 28, 44, 56}, []int{4, 4, 4, 0}, `Terms: US
Notes: Ch 1 does not count as a st.
Ch 4, sl st in first ch to form ring.
Rnd 1: Ch 5 (counts as dc and ch 2), [3 dc in ring, ch 2] 3 times, 2 dc in ring, join with sl st in 3rd ch of beginning ch-5. (12 dc, 4 ch-2 sps)
Rnd 2: Sl st in first ch-2 sp, ch 5 (counts as dc and ch 2), 2 dc in same sp, *dc in each of next 3 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; repeat from * 2 times more, dc in each of next 3 sts, dc in same sp as beginning ch-5, join with sl st in 3rd ch of beginning ch-5. (28 dc)
Rnd 3: Sl st in first ch-2 sp, ch 5 (counts as dc and ch 2), 2 dc in same sp, *dc in each of next 7 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; repeat from * 2 times more, dc in each of next 7 sts, dc in same sp as beginning ch-5, join with sl st in 3rd ch of beginning ch-5. (44 dc)
Rnd 4: Ch 1, sc in same st, 3 sc in ch-2 sp, *sc in each of next 11 dc, 3 sc in next ch-2 sp; repeat from * 2 times more, sc in last 10 sts, join with sl st in first sc. (56 sc)
`},
	{"Hexagon with a chain in each corner from the first round on, traditional", 6, []int{12, 18, 24, 36, 54}, []int{6, 6, 6, 6, 0}, `Terms: US
Notes: Ch 1 does not count as a st.
Begin with a magic ring.
Rnd 1: Ch 3 (counts as dc), 1 dc in ring, ch 1, *2 dc in ring, ch 1*; repeat from * to * 4 more times, sl st to top of ch-3. (12 dc)
Rnd 2: Ch 3, 2 dc in next dc, ch 1, *dc in next dc, 2 dc in next dc, ch 1*; repeat from * to * 4 more times, sl st to top of ch-3. (18 dc)
Rnd 3: Ch 3, dc in next dc, 2 dc in next dc, ch 2, *dc in next 2 dc, 2 dc in next dc, ch 2*; repeat from * to * 4 more times, sl st to top of ch-3. (24 dc)
Rnd 4: Ch 3, dc in next 3 dc, (dc, ch 2, dc) in corner sp, *dc in next 4 dc, (dc, ch 2, dc) in corner sp*; repeat from * to * 4 more times, sl st to top of ch-3. (36 dc)
Rnd 5: Ch 1, sc in each dc around, working 3 sc in each corner sp; join with sl st in first sc. (54 sc)
`},
	{"Irish rose, three layers, traditional", 0, []int{6, 42, 6, 54, 6, 66}, []int{6, 0, 6, 0, 6, 0}, `Terms: US
Ch 6, join with sl st to form ring.
Rnd 1: Ch 6 (counts as dc and ch 3), (dc in ring, ch 3) 5 times, join with sl st in 3rd ch of ch-6. (6 ch-3 sps)
Rnd 2: In each ch-3 sp around work (sc, hdc, 3 dc, hdc, sc). (6 petals)
Rnd 3: Working behind petals, *ch 5, sl st around post of next dc of rnd 1; rep from * around. (6 ch-5 loops)
Rnd 4: In each ch-5 loop work (sc, hdc, 5 dc, hdc, sc). (6 petals)
Rnd 5: Working behind petals, *ch 7, sl st between next 2 petals; rep from * around. (6 ch-7 loops)
Rnd 6: In each ch-7 loop work (sc, hdc, 7 dc, hdc, sc); join with sl st in first sc.
`},
	{"Small doily, the last loop of a round closed by a tall stitch, traditional", 0, []int{24, 12, 36, 12, 12}, []int{0, 12, 12, 12, 12}, `Terms: US
Notes: Ch 1 does not count as a st.
Ch 8, join with sl st to form a ring.
Rnd 1: Ch 3, 23 dc in ring, sl st in top of ch-3. (24 dc)
Rnd 2: Ch 5, *skip next dc, dc in next dc, ch 2; repeat from * around, join with sl st in 3rd ch of ch-5. (12 sps)
Rnd 3: Sl st in next sp, ch 3, 2 dc in same sp, ch 1, *3 dc in next sp, ch 1; repeat from * around, join. (36 dc)
Rnd 4: Sl st in next 2 dc, sl st in ch-1 sp, ch 1, sc in same sp, *ch 5, sc in next ch-1 sp; repeat from * around, ending with ch 2, dc in first sc. (12 loops)
Rnd 5: Ch 1, sc in same loop, *ch 6, sc in next loop; repeat from * around, ending ch 6, join with sl st in first sc. (12 loops)
`},
	{"Solid square with numbers before its chains, its first round closed into the top of its chain, traditional", 4, []int{12, 28, 44, 56}, []int{4, 4, 4, 0}, `Terms: US
Notes: Ch 1 does not count as a st.
Foundation ring: 4 ch, sl st into first ch.
Rnd 1: 3 ch (count as 1 dc), 2 dc into ring, 2 ch, [3 dc into ring, 2 ch] 3 times, sl st to top of 3 ch.
Rnd 2: 3 ch, 1 dc into each of next 2 dc, *(2 dc, 2 ch, 2 dc) into next 2-ch sp, 1 dc into each of next 3 dc; rep from * twice more, (2 dc, 2 ch, 2 dc) into next 2-ch sp, sl st to top of 3 ch.
Rnd 3: 3 ch, 1 dc into each of next 4 dc, *(2 dc, 2 ch, 2 dc) into next 2-ch sp, 1 dc into each of next 7 dc; rep from * twice more, (2 dc, 2 ch, 2 dc) into next 2-ch sp, 1 dc into each of last 2 dc, sl st to top of 3 ch.
Rnd 4: 1 ch, 1 sc into each dc all round, working 3 sc into each corner sp, sl st to first sc.
`},
	{"Wheel, traditional beginning of a doily", 0, []int{16, 16, 32, 8, 56}, []int{0, 16, 0, 8, 0}, `Terms: US
Notes: Ch 1 does not count as a st.
Ch 6, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 15 dc in ring, join with sl st in top of ch-3. (16 dc)
Rnd 2: Ch 4 (counts as dc and ch 1), *dc in next dc, ch 1; rep from * around, join with sl st in 3rd ch of ch-4. (16 dc, 16 ch-1 sps)
Rnd 3: Ch 1, 2 sc in each ch-1 sp around, join with sl st in first sc. (32 sc)
Rnd 4: Ch 1, sc in first sc, *ch 5, skip 3 sc, sc in next sc; rep from * 6 more times, ch 5, join with sl st in first sc. (8 sc, 8 ch-5 sps)
Rnd 5: Ch 1, *(sc, hdc, 3 dc, hdc, sc) in next ch-5 sp; rep from * around, join with sl st in first sc. (16 sc, 16 hdc, 24 dc)
`},
	{"Filet square, traditional", 0, []int{11, 17}, []int{10, 4}, `Terms: US
Ch 24.
Row 1 (RS): Dc in 6th ch from hook (5 skipped ch count as dc and ch 1), *ch 1, skip next ch, dc in next ch; rep from * 8 more times, turn. (11 dc, 10 ch-1 sps)
Row 2: Ch 4 (counts as dc and ch 1), skip ch-1 sp, dc in next dc, ch 1, skip ch-1 sp, dc in next dc, *dc in next ch-1 sp, dc in next dc; rep from * 5 more times, ch 1, skip ch-1 sp, dc in next dc, ch 1, skip ch-1 sp, dc in last dc, turn. (17 dc, 4 ch-1 sps)
`},
	{"Irish rose, its first petals, traditional", 0, []int{6, 30}, []int{6, 0}, `Terms: US
Notes: Ch 1 does not count as a st.
Ch 6, join with sl st to form a ring.
Rnd 1: Ch 5 (counts as dc and ch 2), (dc in ring, ch 2) 5 times, join with sl st in 3rd ch of ch-5. (6 dc, 6 ch-2 sps)
Rnd 2: Ch 1, (sc, hdc, dc, hdc, sc) in each ch-2 sp around, join with sl st in first sc. (12 sc, 12 hdc, 6 dc)
`},
	{"Solid square that ends in the space in which it began, traditional", 4, []int{12, 28, 44}, []int{4, 4, 4}, `Terms: US
Ch 4, sl st in first ch to form a ring.
Rnd 1: Ch 5 (counts as dc, ch 2), [3 dc in ring, ch 2] 3 times, 2 dc in ring, sl st in 3rd ch of beginning ch-5. (12 dc)
Rnd 2: Sl st in first ch-2 sp, ch 5 (counts as dc, ch 2), 2 dc in same sp, *dc in next 3 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; repeat from * 2 more times, dc in next 3 dc, dc in first ch-2 sp, sl st in 3rd ch of beginning ch-5. (28 dc)
Rnd 3: Sl st in first ch-2 sp, ch 5 (counts as dc, ch 2), 2 dc in same sp, *dc in next 7 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; repeat from * 2 more times, dc in next 7 dc, dc in first ch-2 sp, sl st in 3rd ch of beginning ch-5. (44 dc)
`},
	{"Coaster of pairs, traditional", 0, []int{12, 12, 24}, []int{0, 12, 12}, `Terms: US
Ch 5, sl st in first ch to form a ring.
Rnd 1: Ch 3 (= first dc), 11 dc in ring, sl st in first dc.
Rnd 2: Ch 4 (= first dc + ch 1), [dc in next st, ch 1] x repeat around, sl st in first dc.
Rnd 3: Sl st in next sp, ch 3 (= first dc), dc in same sp, ch 1, [2 dc in next sp, ch 1] x repeat around, sl st in first dc.
`},
	{"Ring of spaces, traditional", 0, []int{8}, []int{8}, `Terms: US
Ch 4, join with a sl st to the first ch to form a ring.
Rnd 1: Ch 4 to count as the first dc and the first ch 1, (dc in ring, ch 1) 7 times; join with a sl st to the 3rd ch of the beginning ch 4.
`},
}

func TestMotifsOfThePublicDomainAreCountedByHand(t *testing.T) {
	for _, c := range handCounted {
		p, f := laid(fromText(t, c.rows))
		holdCounts(t, p, c.source, c.sides, c.stitches, c.spaces)
		if p.form != flat { // a filet is drawn as a mesh of squares
			assert.Empty(t, touching(p, f, 0.02), c.source)
		}
	}
	// Granny square, traditional; hexagon, traditional; rosette, I. Beeton, Book of Needlework,
	// 1870 (Project Gutenberg 15147): 8 trebles, 8 spaces of 6 chain, 8 double and 3 purls in each
	// (purls are no stitches of the count).
	holdCounts(t, laidText(t, "rows/granny-us.txt"), "granny square", 4, []int{12, 24, 36}, []int{4, 8, 12})
	holdCounts(t, laidText(t, "chart/hexagon.txt"), "hexagon", 6, []int{12, 24, 36}, []int{6, 6, 6})
	holdCounts(t, laidText(t, "rows/beeton-rosette.txt"), "rosette", 0, []int{8, 8, 64}, []int{8, 8, 0})
}

func TestRoundsThatAreTurnedSayWhichWayTheyGo(t *testing.T) {
	for _, left := range []bool{false, true} {
		p := newPlan(fromText(t, handCounted[2].rows), left)
		p.lay()
		want := "Rounds are read anticlockwise from the centre, wrong-side rounds clockwise"
		if left {
			want = "Rounds are read clockwise from the centre, wrong-side rounds anticlockwise"
		}
		assert.Contains(t, p.notes(), want)
	}
	p, _ := laid(fromText(t, handCounted[0].rows))
	assert.Contains(t, p.notes(), "Rounds are read anticlockwise from the centre")
}

func laidText(t *testing.T, path string) *plan {
	p, _ := laid(text(t, path))
	return p
}

// holdCounts holds a chart to the stitches and spaces of its rounds and to its corners.
func holdCounts(t *testing.T, p *plan, source string, sides int, stitches, spaces []int) {
	t.Helper()
	assert.Equal(t, sides, p.sides, source)
	var made, arches []int
	for _, l := range p.lines {
		if l.row.Base {
			continue
		}
		n, k := 0, 0
		for _, m := range l.nodes {
			switch {
			case m.arch():
				k++
			case m.st.Kind != nil && m.st.Counts:
				n++
			}
		}
		made, arches = append(made, n), append(arches, k)
		if l.corners != nil {
			assert.Len(t, l.corners, sides, source)
		}
	}
	assert.Equal(t, stitches, made, source)
	assert.Equal(t, spaces, arches, source)
}
