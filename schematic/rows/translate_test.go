package rows

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/stitch"
)

// The pairs are those of the yarn standard's conversion chart, from memory.
func TestAWordIsTurnedAndAllElseStays(t *testing.T) {
	for us, uk := range map[string]string{
		"Row 2: Ch 1, sc in first st,  skip next 2 sts — 5 dc in next st.": "Row 2: Ch 1, dc in first st,  miss next 2 sts — 5 tr in next st.",
		"Hdc2tog over next 2 sts; SC in each st.":                          "Htr2tog over next 2 sts; DC in each st.",
		"FPdc around next dc, BPhdc around next hdc":                       "FPtr around next tr, BPhtr around next htr",
		"Join with sl st to first sc. (48 sc)":                             "Join with ss to first dc. (48 dc)",
		"1 single crochet, 2 half double crochets, treble crochet":         "1 double crochet, 2 half treble crochets, double treble crochet",
		"Gauge: 14 sts in hdc\nBind off 4 sts in Stockinette stitch":       "Tension: 14 sts in htr\nCast off 4 sts in Stocking stitch",
		"discover the scarf: desk, tree, dcx":                              "discover the scarf: desk, tree, dcx",
		"This pattern is written in US crochet terms.":                     "This pattern is written in UK crochet terms.",
		"American terminology (U.S. terms); Terminology used: US":          "British terminology (U.K. terms); Terminology used: UK",
		"sc = single crochet (UK dc), dc (tr in UK), hdc (UK: htr)":        "dc = double crochet (US sc), tr (dc in US), htr (US: hdc)",
		"hdc (half treble crochet UK), 5 mm (US H-8) hook, tell us":        "htr (half double crochet US), 5 mm (US H-8) hook, tell us",
		"Terms: US\r\n\tdtr, tr\r\n":                                       "Terms: UK\r\n\ttrtr, dtr\r\n",
	} {
		assert.Equal(t, uk, string(Translate([]byte(us), stitch.US, stitch.UK)))
		assert.Equal(t, us, string(Translate([]byte(uk), stitch.UK, stitch.US)))
	}
	assert.Equal(t, "ss in next 2 ss", string(Translate([]byte("sl st in next 2 sl sts"), stitch.US, stitch.UK)), "one ss, two ss")
}

func TestATurnedTextStillFits(t *testing.T) {
	for _, c := range corpus(t) {
		from := c.options.Terms
		o := c.options
		o.Terms = from.Other()
		turned := Translate(c.src, from, from.Other())
		rep := Check(Read(c.name, turned, o), o)
		require.Empty(t, rep.Findings, "%s\n%s", c.name, turned)
		again := Translate(Translate(turned, from.Other(), from), from, from.Other())
		require.Equal(t, string(turned), string(again), c.name)
	}
}

func TestMixedTermsAreAFinding(t *testing.T) {
	src := "Terms: US\nNotes: Ch 1 does not count as a st.\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, htr in each st across, turn. (10 sts)\n"
	rep := Check(Read("t", []byte(src), Options{}), Options{})
	var kinds []string
	for _, f := range rep.Findings {
		kinds = append(kinds, f.Kind)
	}
	assert.Contains(t, kinds, "words/terms")
}

func TestTheAbbreviationListHoldsWhatTheTextUses(t *testing.T) {
	src := "Terms: UK\nNotes: 1 ch does not count as a st.\n11 ch.\nRow 1 (RS): Dc in 2nd ch from hook and in each ch to end, turn. (10 dc)\nRow 2: 1 ch, dc2tog, 1 htr in each st to end. (9 sts)\n"
	list := Abbreviations(Read("t", []byte(src), Options{}))
	got := map[string]string{}
	for _, a := range list {
		got[a.Short] = a.Long
	}
	knitted := map[string]string{}
	for _, a := range Abbreviations(Read("t", []byte("Terms: US\nCast on 20 sts in MC.\nRow 1 (RS): K3, sm, k to last 3 sts, sl 1 kwise wyif, k2.\nWork in St st.\nBO 4 sts, k to end.\n"), Options{})) {
		knitted[a.Short] = a.Long
	}
	for short, long := range map[string]string{"BO": "bind off", "MC": "main color", "sm": "slip marker", "kwise": "knitwise", "wyif": "with yarn in front", "St st": "stockinette stitch"} {
		assert.Equal(t, long, knitted[short], short)
	}
	assert.NotContains(t, knitted, "bo", "no bobble")
	assert.Equal(t, "double crochet", got["dc"])
	assert.Equal(t, "double crochet two together", got["dc2tog"])
	assert.Equal(t, "half treble crochet", got["htr"])
	assert.Equal(t, "right side", got["RS"])
	assert.Equal(t, "stitch", got["st"])
	assert.NotContains(t, got, "sc")
}

func TestTheStitchesOfAFabricAreAmongTheAbbreviations(t *testing.T) {
	x := Read("t.txt", []byte("Terms: US\n\nHat\nCast on 96 sts, join to work in the round.\nWork 8 rnds even in k2, p2 rib. (96 sts)\n"), Options{})
	require.Empty(t, Check(x, Options{}).Findings)
	var all []string
	for _, a := range Abbreviations(x) {
		all = append(all, a.Short+": "+a.Long)
	}
	assert.Equal(t, []string{"k: knit", "p: purl", "rnd: round", "st: stitch"}, all)
}

// A title says the terms as a sentence does, and old leaflets space the letters of short names.
func TestTitlesAndSpacedNamesTurnToo(t *testing.T) {
	for us, uk := range map[string]string{
		"Little Flower (US)\n\nRnd 1: 6 sc in ring.\n": "Little Flower (UK)\n\nRnd 1: 6 dc in ring.\n",
		"Made for US only (US size 7)\n":               "Made for US only (US size 7)\n",
	} {
		assert.Equal(t, uk, string(Translate([]byte(us), stitch.US, stitch.UK)))
		assert.Equal(t, us, string(Translate([]byte(uk), stitch.UK, stitch.US)))
	}
	assert.Equal(t, "Row 1: 1 dc in 2nd ch, tr in each dc, 2 htr in next. 45 dc.", string(Translate([]byte("Row 1: 1 s c in 2nd ch, d c in each s c, 2 h d c in next. 45 s c."), stitch.US, stitch.UK)))
}

// What old and new leaflets call the plain stitches beside the standard's short names, and the words beside it that tell the stitch they
// are made of; common practice in both countries.
func TestNamesBesideTheStandardTurnToo(t *testing.T) {
	for us, uk := range map[string]string{
		"1 single in 2nd ch, 1 double in each of next 3 singles, 2 half doubles": "1 double in 2nd ch, 1 treble in each of next 3 doubles, 2 half trebles",
		"work in doubles, 3 rows of double. Double in each st":                   "work in trebles, 3 rows of treble. Treble in each st",
		"Abbreviations: sc = single; dc = double; tr = treble":                   "Abbreviations: dc = double; tr = treble; dtr = double treble",
		"Sc = Single Crochet, Hdc = Half Double Crochet":                         "Dc = Double Crochet, Htr = Half Treble Crochet",
		"esc, ehdc, edc, exsc, fsc, fhdc, fdc, revsc":                            "edc, ehtr, etr, exdc, fdc, fhtr, ftr, revdc",
		"dc dec, (1 sc dec), hdc inc":                                            "tr dec, (1 dc dec), htr inc",
		"dtr in next, trtr in next":                                              "trtr in next, qtr in next",
		"front post double crochet, Back Post Double Crochet":                    "raised front treble crochet, Raised Back Treble Crochet",
		"1 s.c. in ring": "1 d.c. in ring",
	} {
		assert.Equal(t, uk, string(Translate([]byte(us), stitch.US, stitch.UK)))
		assert.Equal(t, us, string(Translate([]byte(uk), stitch.UK, stitch.US)))
	}
	for uk, us := range map[string]string{
		"1 h.tr., 1 d.tr., 1 t.tr., 1 dbl tr, 1 half tr": "1 hdc., 1 tr., 1 dtr., 1 tr, 1 hdc",
		"rtrf, rtrb, raised treble front":                "FPdc, BPdc, front post double crochet",
		"1 tr. into next tr., 1 d.c. in sp.":             "1 dc. into next dc., 1 s.c. in sp.",
	} {
		assert.Equal(t, us, string(Translate([]byte(uk), stitch.UK, stitch.US)))
	}
}

// Plain English, needles and yarns are no stitches.
func TestPlainWordsStay(t *testing.T) {
	for _, same := range []string{
		"double knitting yarn, double-pointed needles, a double strand of floss", "Hold the yarn double in this part; fold the hem double.",
		"Double the length, treble the amount, a single stitch, single rib and double rib", "It will double in size. Size: Double. Half the stitches",
		"You may skip to the edging; don't skip this step.", "Gauge/Tension: 16 sts", "skip (miss) the next one", "Keep an even tension. 12 gauge wire",
	} {
		assert.Equal(t, same, string(Translate([]byte(same), stitch.US, stitch.UK)), "to UK")
		assert.Equal(t, same, string(Translate([]byte(same), stitch.UK, stitch.US)), "to US")
	}
	assert.Equal(t, "Miss Marsh made it; skip 2 sts", string(Translate([]byte("Miss Marsh made it; miss 2 sts"), stitch.UK, stitch.US)))
}

func TestUKNamesBesideTheStandardAreRead(t *testing.T) {
	for _, name := range []string{"edc", "exdc", "etr", "ehtr", "extended treble", "extended double crochet", "reverse dc", "revdc", "spike dc",
		"raised treble front", "raised double crochet back", "dbl tr", "tr tr", "qtr", "quadruple treble"} {
		src := "Terms: UK\nNotes: 1 ch at the beginning does not count as a st.\n21 ch.\nRow 1: Dc in 2nd ch from hook and in each ch to end, turn. (20 dc)\nRow 2: 1 ch, 1 " + name +
			" in each st to end, turn. (20 sts)\nRow 3: 1 ch, dc2tog, dc to end. (18 sts)\n"
		rep := Check(Read("t", []byte(src), Options{}), Options{})
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, name)
		if assert.Len(t, rep.Findings, 1, name) {
			assert.Equal(t, "the row makes 19 stitches, not 18", rep.Findings[0].Message, name)
		}
	}
}
