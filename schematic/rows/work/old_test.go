package work_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/rows"
)

// Short texts in the manner of books and papers from before 1960, made up for this test, counts by hand (common practice):
// each line is read whole, nothing is found, and a count that is one more is.
var oldTexts = []struct{ name, text, wrong string }{
	{"rows repeated behind a row that is as another", "Cast on 20 sts.\n1st row: K. 1, p. 1 to end. 2nd row: P.\n3rd row: K. 4th row: Like 2nd. Rep. these 4 rows four times more.\n21st row: Like 1st. 22nd row: P. 2 tog., p. to end. (%s sts)", "19|20"},
	{"a star before the label within a paragraph", "Ch 25. 1st row: S c in 2nd ch from hook, s c in each ch across (24 s c). Ch 1, turn. ** 2nd row: S c in each s c across. Ch 1, turn. 3rd row: Same as 2nd row. 4th and 5th rows: Repeat from ** once more. 6th row: S c in each s c (%s s c).", "24|25"},
	{"the stitch that closed the last loop of the round before", "Ch 8. Join with sl st to form ring.\n1st rnd: Ch 3 (counts as dc), 23 dc in ring. Join.\n2nd rnd: Ch 1, sc in same place as sl st, * ch 5, skip next dc, sc in next dc. Repeat from * around, ending with ch 2, dc in 1st sc made.\n3rd rnd: * Ch 5, sc in next loop. Repeat from * around, ending with ch 2, dc in dc of 2nd rnd.\n4th rnd: 2 sc in each loop. (%s sc)", "24|25"},
	{"a head in one paragraph", "MATERIALS.-6oz. of 4-ply wool; 1 pair of No. 9 needles. Measurements.-Length, 18ins.; width all round under the arms, 30ins. Tension.-7 sts. to 1in. Abbreviations-K. = knit; P. = purl; rep. = repeat or repeating; dec. = decrease or decreasing. BACK.-Cast on 80 sts. 1st row.-K. 2, * p. 1, k. 1; rep. from * to end. 2nd row.-K. 2 tog., p. to end. (%s sts.)", "79|80"},
	{"single crochet with full stops in a text that says miss", "Make a chain of 6; close it into a round, on which do 8 s.c.\n2nd round: 2 s.c. in every s.c. (16 s.c.)\n3rd round: * 1 s.c. in next s.c., miss 1; repeat from * all round. (%s s.c.)", "8|9"},
	{"a capital X for a star", "Make a chain of 6; close it into a round.\n1st round: 8 s.c. in the ring.\n2nd round: X 1 s.c. in next stitch, 2 ch., miss none, X 8 times.\n3rd round: X 2 s.c. in the next space, X 8 times. (%s s.c.)", "16|17"},
	{"the first row told behind its chain", "12.--Crochet Edging.\nOn a foundation chain of 40 stitches work the 1st row as follows:--1 double in each chain stitch.\n2nd row: Alternately 1 double, 3 chain, miss under the latter 3 stitches of the preceding row.\nThe 3rd row is worked in double stitch. (%s double)", "10|11"},
	{"stitches behind others", "Make 41 chain.\n1st row: 1 double in each chain.\n2nd row: * 1 double in the next stitch but 2, 1 double in the next stitch but 1; repeat from *.\n3rd row: 1 double in each double. (%s double)", "16|17"},
	{"work and a star behind a row with a star", "Ch 4, join with sl st to form ring.\n1st rnd: 12 sc in ring.\n2nd rnd: * 2 sc in next sc; rep from * around. (24 sc)\n3rd rnd: Working over wire, work * 1 sc in each of 2 sts, 2 sc in next st; rep from * around. (%s sc)", "32|33"},
	{"a chain skipped on the line of the foundation", "Terms: US\nCh 33, sk 1.\n1ST ROW: 32 Sc, ch 1, turn.\n2ND ROW: Sc. (%s sc)", "32|31"},
	{"cast on unlike on several needles", "Cast on six stitches on each of two needles and three on the third.\n1st round: Knit fourteen, make one, knit one. (%s sts)", "16|7"},
	{"rows that are knitted on and on", "Cast on 20 sts.\n1st row: K. 2nd row: P. Continue to knit these two rows until work measures 3in.\nNext row: K. 2 tog., k. to end. (%s sts)", "19|20"},
	{"a length with its unit behind words", "Cast on 20 sts. Work in rib of k. 1, p. 1 for 2in., then in green to complete the 3in.\nNext row: K. 2 tog., k. to end. (%s sts)", "19|20"},
	{"rows in the paragraph behind the materials", "Materials:\n2 balls of cotton, size 20.\nTo begin, ch 25, turn. 1st row: 1 s c in 2nd ch from hook, s c in each ch across. Ch 1, turn. 2nd row: S c in each s c. (%s s c)", "24|25"},
	{"a repeat with its last stitches told as being knitted", "Cast on 22 stitches.\n1st row: Knit 2, over, narrow; repeat, knitting last 2 stitches.\n2nd row: Purl. (%s sts)", "22|23"},
	{"pictures by two numbers and a gauge alone", "258 to 260.--Crochet Edgings.\n11 pattern sts = 2”\nMake 20 chain.\n1st row: 1 double in each of 20 chain. 2nd row: 1 double in each double. (%s double)", "20|21"},
	{"clusters told in words", "Terms: US\nCh 6, join with sl st to form ring.\n1st rnd: Ch 3, 15 dc in ring (16 dc). Join.\n2nd rnd: Ch 1, * sc in next dc, ch 3; repeat from * around. Join. (16 sc)\n3rd rnd: * Holding back on hook the last loop of each tr, make 3 tr in next sp, thread over and draw through all loops on hook (a 3-tr cluster made), ch 5; repeat from * around. Join.\n4th rnd: 2 sc in each loop. (%s sc)", "32|33"},
	{"stitches held back behind their place", "Terms: US\nCh 6, join with sl st to form ring.\n1st rnd: Ch 3, 15 dc in ring (16 dc). Join.\n2nd rnd: * Make 2 dc in next dc, keeping last loop of each dc on hook, yo and work off all loops at one time; repeat from * around. (%s sts)", "16|32"},
	{"stitches closed together over their own", "Terms: US\nCh 26.\n1st row: Sc in 2nd ch from hook, sc in each ch across (25 sc). Ch 3, turn.\n2nd row: Skip first sc, * holding back last loop of each dc, dc in each of next 3 sc, thread over and draw through all loops on hook; repeat from * across. (%s sts)", "9|25"},
	{"increases in every so many stitches", "Make a chain of 6, and unite.\n1st round: 12 double crochet in the circle.\n2nd round: Double crochet, increasing in every loop.\n3rd round: Double crochet, increasing in every third stitch.\n4th round: Double crochet, increasing in every other stitch. (%s double crochet)", "48|47"},
	{"l for a long stitch, and a group worked in every stitch", "Terms: UK\nMake a chain of 6, and unite.\n1st round: 12 d.c. in the circle.\n2nd round: 1 l, 1 ch worked in every stitch of previous round.\n3rd round: 2 d.c. in every space. (%s d.c.)", "24|25"},
	{"stitches as they come with a full stop", "Cast on 46 sts.\n1st row: Patt. 26, K. 20.\n2nd row: P. 20, patt. 26.\n3rd row: Patt. 26 sts., k. 2 tog., k. to end. (%s sts)", "45|46"},
	{"a repeat that ends within itself, and rows told behind it", "Ch 3.\n1st Round: 8 half dc in 3rd ch from hook. Join to top of ch 3. Hereafter pick up back loop only.\n2nd Round: 2 sc in same place as sl st, 2 sc in each half dc around (18 sc). Join.\n3rd Round: Ch 2, half dc in same place as sl st, * half dc in next sc, 2 half dc in next sc. Repeat from * around (27 half dc). Join.\n4th Round: 2 sc in same place as sl st, * sc in next 2 half dc, 2 sc in next half dc. Repeat from * around (%s sc). Join. Continue in pattern, increasing 9 sts evenly on each round until 25 rounds have been made.", "36|37"},
	{"a chain told with a gauge", "With Blue ch 62 (10 ch sts to 1 inch). 1st row: D c in 4th ch from hook, d c in each ch across (%s d c). Ch 3 (to count as d c), turn. 2nd row: D c in each d c across.", "60|61"},
	{"needles told behind the cast-on", "Cast on 52 stitches, 18 on each of two needles and 16 on a third. Work in rib of K2 and P2 for 3 inches.\n1st round: K. 2 tog., k. to end. (%s sts)", "51|52"},
	{"the other edges of what is picked up", "Pick up and k. 10 sts. along side of front, then 6 sts. from the cast-on edge, 10 sts. along other side.\n1st row: K. 2 tog., k. to end. (%s sts)", "25|26"},
	{"the stitch on the needle behind stitches bound off", "Cast on 12 sts.\nRow 1: Bind off 3 sts, k 2, yo, k2tog, k 4.\nRow 2: Knit. (%s sts)", "9|10"},
	{"increases told with a remark between", "Ch 4. Join.\n1st rnd: Ch 3, 14 dc in ring [15 dc]. Join.\n2nd rnd: Ch 3, dc in same place as sl st, 2 dc in each st around [30 sts]. Join.\nCont inc 15 sts each rnd [do not inc directly over prev incs] for 2 more rnds [%s sts]. Join.", "60|61"},
	{"rows told from a marker, and a row that slips away at a shoulder", "Ch 21.\n1ST ROW: Sc in 2nd ch from hook, sc in each ch. (20 sc)\n2ND ROW: Ch 1, turn, sc in each sc.\nWork even until there are 64 rows. Mark for underarm.\nWork even until there are 38 rows above underarm marker.\n1ST ROW: Ch 1, turn, sl st in each of first 4 sc, ch 1, sc in each sc to within 4 sc of end, sl st in next sc. (%s sc)", "12|13"},
	{"stitches twisted over a cable", "Cast on 30 sts.\n1st row: K. 6, p. 2, twist the next 8 sts., p. 2, k. 12. (%s sts)", "30|31"},
}

func TestOldBooksAreReadWhole(t *testing.T) {
	for _, c := range oldTexts {
		t.Run(c.name, func(t *testing.T) {
			right, wrong := oldText(c.text, c.wrong)
			rep := rows.Check(rows.Read("t", []byte(right), rows.Options{}), rows.Options{})
			assert.Equal(t, rep.Read.Lines, rep.Read.Whole)
			for _, f := range rep.Findings {
				assert.Equal(t, "words/terms", f.Kind, f.Message)
			}
			found := false
			for _, f := range rows.Check(rows.Read("t", []byte(wrong), rows.Options{}), rows.Options{}).Findings {
				found = found || f.Kind != "words/terms"
			}
			assert.True(t, found, wrong)
		})
	}
}

// oldText is a text with the count that is right, and with the one that is not.
func oldText(text, counts string) (right, wrong string) {
	a, b, _ := strings.Cut(counts, "|")
	return strings.Replace(text, "%s", a, 1), strings.Replace(text, "%s", b, 1)
}
