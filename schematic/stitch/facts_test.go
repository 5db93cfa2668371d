package stitch

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// How many stitches each takes and leaves follows from its name in the yarn standard's lists of abbreviations
// (Craft Yarn Council, from memory): two together takes two and leaves one, front and back takes one and leaves two.
func TestEveryStitchTakesAndLeavesWhatItsNameSays(t *testing.T) {
	for ids, want := range map[string][2]int{
		"slst sc hdc dc tr dtr": {1, 1}, "cl bobble pc puff": {1, 1}, "ch picot": {0, 0},
		"k p ktbl ptbl sl": {1, 1}, "yo m1 m1l m1r": {0, 1}, "kfb pfb": {1, 2},
		"k2tog p2tog ssk ssp skpo": {2, 1}, "k3tog p3tog sk2p s2kp": {3, 1},
		"FPsc BPsc FPhdc BPhdc FPdc BPdc FPtr BPtr FPdtr BPdtr": {1, 1},
		"sc2tog dc2tog dtr2tog":                                 {2, 1}, "hdc3tog tr3tog": {3, 1}, "dc4tog": {4, 1}, "sc5tog": {5, 1}, "dc9tog": {9, 1},
	} {
		for id := range strings.FieldsSeq(ids) {
			s := ByID(id)
			require.NotNil(t, s, id)
			assert.Equal(t, want, [2]int{s.Uses, s.Makes}, id)
		}
	}
}

// Heights in single crochets and turning chains, common practice: ch 1 for sc, 2 for hdc, 3 for dc, 4 for tr, 5 for dtr.
// A stitch of several legs is as tall as the legs, and a post stitch as the stitch it is.
func TestHeightsAndTurningChains(t *testing.T) {
	for id, want := range map[string]struct {
		high float64
		turn int
	}{
		"sc": {1, 1}, "hdc": {1.5, 2}, "dc": {2, 3}, "tr": {3, 4}, "dtr": {4, 5}, "trtr": {5, 6}, "slst": {0.3, 0}, "ch": {0.4, 0}, "picot": {0.5, 0},
		"dc3tog": {2, 3}, "hdc2tog": {1.5, 2}, "FPtr": {3, 4}, "BPdc": {2, 3}, "cl": {2, 0}, "bobble": {2, 0}, "pc": {2, 0}, "puff": {1.5, 0},
		"k": {1, 0}, "yo": {1, 0}, "k2tog": {1, 0},
	} {
		s := ByID(id)
		require.NotNil(t, s, id)
		assert.InDelta(t, want.high, s.Height, 0, id)
		assert.Equal(t, want.turn, s.Turn, id)
	}
}

func TestStitchesAreMadeOfPlainOnes(t *testing.T) {
	for id, want := range map[string]struct {
		base string
		legs int
		post Post
		tog  bool
	}{
		"dc": {"dc", 1, NoPost, false}, "k": {"k", 1, NoPost, false}, "dc4tog": {"dc", 4, NoPost, true}, "k3tog": {"k", 3, NoPost, true},
		"p2tog": {"p", 2, NoPost, true}, "ssk": {"k", 2, NoPost, true}, "ssp": {"p", 2, NoPost, true}, "skpo": {"k", 2, NoPost, true},
		"sk2p": {"k", 3, NoPost, true}, "s2kp": {"k", 3, NoPost, true}, "k2tog": {"k", 2, NoPost, true}, "p3tog": {"p", 3, NoPost, true},
		"cl": {"dc", 3, NoPost, false}, "bobble": {"dc", 5, NoPost, false}, "pc": {"dc", 5, NoPost, false}, "puff": {"hdc", 3, NoPost, false},
		"FPdc": {"dc", 1, FrontPost, false}, "BPtr": {"tr", 1, BackPost, false}, "ktbl": {"k", 1, NoPost, false}, "kfb": {"k", 1, NoPost, false}, "pfb": {"p", 1, NoPost, false},
	} {
		s := ByID(id)
		require.NotNil(t, s, id)
		assert.Equal(t, want.base, s.Base, id)
		assert.Equal(t, want.legs, s.Legs, id)
		assert.Equal(t, want.post, s.Post, id)
		assert.Equal(t, want.tog, s.Together, id)
		assert.Same(t, ByID(want.base), s.Plain(), id)
	}
	made := &Stitch{ID: "one of a designer's own"}
	assert.Same(t, made, made.Plain(), "what has no base is its own")
}

func TestTheOtherTerms(t *testing.T) {
	assert.Equal(t, UK, US.Other())
	assert.Equal(t, US, UK.Other())
	assert.Equal(t, "US", US.String())
	assert.Equal(t, "UK", UK.String())
}

// Names are those of the conversion chart (from memory); around the post is raised in UK words.
func TestNamesInBothTerms(t *testing.T) {
	for id, want := range map[string][4]string{
		"hdc":    {"half double crochet", "half treble crochet", "hdc", "htr"},
		"dc":     {"double crochet", "treble crochet", "dc", "tr"},
		"FPdc":   {"front post double crochet", "raised front treble crochet", "FPdc", "FPtr"},
		"BPsc":   {"back post single crochet", "raised back double crochet", "BPsc", "BPdc"},
		"dc2tog": {"double crochet two together", "treble crochet two together", "dc2tog", "tr2tog"},
		"tr9tog": {"treble crochet nine together", "double treble crochet nine together", "tr9tog", "dtr9tog"},
		"k2tog":  {"knit two together", "knit two together", "k2tog", "k2tog"},
	} {
		s := ByID(id)
		require.NotNil(t, s, id)
		assert.Equal(t, want, [4]string{s.Name(US), s.Name(UK), s.Abbr(US), s.Abbr(UK)}, id)
	}
}

// Words that designers use for a stitch (common practice).
func TestWordsFindTheirStitch(t *testing.T) {
	for _, c := range []struct {
		words string
		terms Terms
		id    string
	}{
		{"triple crochet", US, "tr"}, {"trc", US, "tr"}, {"sc dec", US, "sc2tog"}, {"hdc dec", US, "hdc2tog"}, {"dc dec", US, "dc2tog"},
		{"half treble", UK, "hdc"}, {"ttr", UK, "dtr"}, {"sl st", UK, "slst"}, {"ss", US, "slst"}, {"treble", UK, "dc"}, {"trebles", UK, "dc"},
		{"double", US, "dc"}, {"scs", US, "sc"}, {"front post dc", US, "FPdc"}, {"raised front tr", UK, "FPdc"}, {"rbtr", UK, "BPdc"}, {"rftr", UK, "FPdc"},
	} {
		s, ok := Lookup(c.words, c.terms)
		require.True(t, ok, c.words)
		assert.Equal(t, c.id, s.ID, "%s in %s", c.words, c.terms)
		b, ok := LookupBytes([]byte(c.words), c.terms)
		require.True(t, ok)
		assert.Same(t, s, b)
	}
	for id, abbr := range map[string]string{"sc": "dc", "tr": "dtr", "k2tog": "k2tog"} {
		assert.Equal(t, abbr, byIDIn(UK, id))
	}
}

func TestTheStitchThatAFabricIsWorkedIn(t *testing.T) {
	for text, want := range map[string][2]string{ // in US, in UK
		"double crochet":                      {"dc", "sc"},
		"Half Double Crochet, blocked":        {"hdc", "sc"},
		"pattern (dc and ch 1)":               {"dc", "sc"},
		"in tr":                               {"tr", "dc"},
		"FPdc rib":                            {"", ""},
		"sl st":                               {"", ""},
		"dc2tog":                              {"", ""},
		"clusters of 3":                       {"", ""},
		"stocking stitch":                     {"", ""},
		"mesh in the half treble crochet row": {"tr", "hdc"},
	} {
		for terms, id := range want {
			s, ok := Worked(text, Terms(terms))
			require.Equal(t, id != "", ok, "%s %v", text, s)
			if ok {
				assert.Equal(t, id, s.ID, "%s in %s", text, Terms(terms))
			}
		}
	}
}

func TestWordsOfOneSetAreNotOfTheOther(t *testing.T) {
	for w, want := range map[string]Terms{"Miss": UK, "missed": UK, "qtr": UK, "single crochet": US, "sc2tog": US, "htr2tog": UK} {
		got, ok := Only(w)
		require.True(t, ok, w)
		assert.Equal(t, want, got, w)
	}
	for _, w := range []string{"ss", "sl st", "bobble", "k2tog", "chain", "marzipan", "trtr"} {
		_, ok := Only(w)
		assert.False(t, ok, w)
	}
}

// A cross, worked by hand: of 3/1 LC three stitches wait in front while one is knitted; of 2/1 RPC the one behind waits
// behind while two are knitted over it, and is purled (the trade's abbreviations, from memory).
func TestCrossesAsTheTradeWritesThem(t *testing.T) {
	for _, c := range []struct {
		x                Cross
		front, back      int
		abbr, told, work string
	}{
		{Cross{Held: 3, Over: 3, Left: true}, 3, 3, "3/3 LC", "3 over 3 to the left", "hold 3 in front, k3, then k3 from the cable needle"},
		{Cross{Held: 3, Over: 2}, 2, 3, "2/3 RC", "2 over 3 to the right", "hold 3 behind, k2, then k3 from the cable needle"},
		{Cross{Held: 2, Over: 1, Left: true, Purl: true}, 2, 1, "2/1 LPC", "2 over 1 to the left, those behind purled", "hold 2 in front, p1, then k2 from the cable needle"},
		{Cross{Held: 1, Over: 2, Purl: true}, 2, 1, "2/1 RPC", "2 over 1 to the right, those behind purled", "hold 1 behind, k2, then p1 from the cable needle"},
		{Cross{Held: 1, Over: 1, Left: true}, 1, 1, "1/1 LT", "1 over 1 to the left", "hold 1 in front, k1, then k1 from the cable needle"},
		{Cross{Held: 1, Over: 1}, 1, 1, "1/1 RT", "1 over 1 to the right", "hold 1 behind, k1, then k1 from the cable needle"},
		{Cross{Held: 1, Over: 1, Purl: true}, 1, 1, "1/1 RPC", "1 over 1 to the right, those behind purled", "hold 1 behind, k1, then p1 from the cable needle"},
		{Cross{Held: 1, Over: 2, Left: true}, 1, 2, "1/2 LC", "1 over 2 to the left", "hold 1 in front, k2, then k1 from the cable needle"},
		{Cross{Held: 2, Over: 1}, 1, 2, "1/2 RC", "1 over 2 to the right", "hold 2 behind, k1, then k2 from the cable needle"},
		{Cross{Held: 2, Over: 2, Left: true, Twisted: true}, 2, 2, "2/2 LC", "2 over 2 to the left, those in front through the back loop", "hold 2 in front, k2, then k2 tbl from the cable needle"},
		{Cross{Held: 1, Over: 1, Twisted: true, Purl: true}, 1, 1, "1/1 RPC", "1 over 1 to the right, those in front through the back loop, those behind purled", "hold 1 behind, k1 tbl, then p1 from the cable needle"},
	} {
		assert.Equal(t, c.front, c.x.Front(), c.abbr)
		assert.Equal(t, c.back, c.x.Back(), c.abbr)
		assert.Equal(t, c.abbr, c.x.Abbr())
		assert.Equal(t, c.told, c.x.String())
		assert.Equal(t, c.work, c.x.Work())
		s := c.x.Stitch()
		assert.Equal(t, []int{c.front + c.back, c.front + c.back, 1}, []int{s.Uses, s.Makes, s.Legs}, c.abbr)
		assert.InDelta(t, 1, s.Height, 0)
		assert.Equal(t, Knitting, s.Craft)
	}
	plain, twisted := Cross{Held: 2, Over: 2}, Cross{Held: 2, Over: 2, Twisted: true}
	assert.NotEqual(t, plain.Stitch().ID, twisted.Stitch().ID)
}
