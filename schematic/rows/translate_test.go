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
