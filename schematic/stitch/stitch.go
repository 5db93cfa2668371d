// Package stitch is the one list of stitches: what each is called in US and UK
// words, what it uses and makes, how tall it is and which symbol it has on a
// chart. It knows nothing of rows or of drawing.
//
// Names and abbreviations are those of the yarn standard's published lists
// (Craft Yarn Council, crochet and knitting abbreviations; US to UK conversion
// chart), read from memory; heights and turning chains are common practice.
package stitch

import (
	"fmt"
	"sync"
)

// Terms are the words in which crochet stitches are named. Knitting words are
// the same in both, save casting off.
type Terms int

// The two sets of crochet terms.
const (
	US Terms = iota
	UK
)

// String is US or UK.
func (t Terms) String() string { return [...]string{"US", "UK"}[t] }

// Other is the other set of terms.
func (t Terms) Other() Terms { return 1 - t }

// Craft is what a stitch belongs to.
type Craft int

// The crafts.
const (
	Crochet Craft = iota
	Knitting
)

// Post says around which side of the post of the stitch below it is worked.
type Post int

// The ways to work around a post.
const (
	NoPost Post = iota
	FrontPost
	BackPost
)

// Stitch is one kind of stitch. Uses is how many stitches of the row before it
// takes, Makes how many it leaves for the next row. Height is in single crochets
// (US). Turn is the usual turning chain. Base is the ID of the plain stitch that
// it is made of (its own for a plain one); Legs is how many of those share its
// foot or its head. Key is its chart symbol: the base's symbol with the legs and
// post drawn from the other fields, or a symbol of its own.
type Stitch struct {
	ID       string
	US, UK   string // names
	USAbbr   string
	UKAbbr   string
	Also     []string // further words, the same in both terms
	Craft    Craft
	Uses     int
	Makes    int
	Height   float64
	Turn     int
	Base     string
	Legs     int
	Post     Post
	Key      string
	Together bool   // several legs finished as one
	Cross    *Cross // of a cable: which stitches change places; nil for all else
}

// Name is the full name in the terms t.
func (s *Stitch) Name(t Terms) string {
	if t == UK {
		return s.UK
	}
	return s.US
}

// Abbr is the abbreviation in the terms t.
func (s *Stitch) Abbr(t Terms) string {
	if t == UK {
		return s.UKAbbr
	}
	return s.USAbbr
}

// Plain is the base stitch of s, or s itself if it has none.
func (s *Stitch) Plain() *Stitch {
	if b := ByID(s.Base); b != nil {
		return b
	}
	return s
}

// Of is a cluster, a bobble, a popcorn or a puff of so many legs of a plain stitch: a 2-dc cluster.
func (s *Stitch) Of(legs int, base string) *Stitch {
	b := ByID(base)
	if legs == s.Legs && base == s.Base || b == nil || legs < 2 {
		return s
	}
	for _, one := range []string{"cl", "pc", "bobble", "puff"} { // whatever this one is of
		if k := ByID(one); k.Key == s.Key {
			s = k
		}
	}
	o := *s
	o.Legs, o.Base, o.Height, o.Also = legs, base, b.Height, nil
	o.ID = fmt.Sprint(legs, base, s.ID)
	o.US, o.USAbbr = fmt.Sprintf("%d-%s %s", legs, b.USAbbr, s.US), fmt.Sprintf("%d-%s %s", legs, b.USAbbr, s.USAbbr)
	o.UK, o.UKAbbr = fmt.Sprintf("%d-%s %s", legs, b.UKAbbr, s.UK), fmt.Sprintf("%d-%s %s", legs, b.UKAbbr, s.UKAbbr)
	return &o
}

// plain are the plain crochet stitches by rising height.
var plain = []Stitch{
	{ID: "ch", US: "chain", UK: "chain", USAbbr: "ch", UKAbbr: "ch", Also: []string{"chains", "chs"}, Makes: 0, Height: 0.4, Key: "chain"},
	{ID: "slst", US: "slip stitch", UK: "slip stitch", USAbbr: "sl st", UKAbbr: "ss", Also: []string{"slst", "sl-st", "slip st", "slip stitches", "sl sts", "sl stitch"}, Uses: 1, Makes: 1, Height: 0.3, Key: "slip"},
	{ID: "sc", US: "single crochet", UK: "double crochet", USAbbr: "sc", UKAbbr: "dc", Uses: 1, Makes: 1, Height: 1, Turn: 1, Key: "sc"},
	{ID: "hdc", US: "half double crochet", UK: "half treble crochet", USAbbr: "hdc", UKAbbr: "htr", Uses: 1, Makes: 1, Height: 1.5, Turn: 2, Key: "hdc"},
	{ID: "dc", US: "double crochet", UK: "treble crochet", USAbbr: "dc", UKAbbr: "tr", Uses: 1, Makes: 1, Height: 2, Turn: 3, Key: "dc"},
	{ID: "tr", US: "treble crochet", UK: "double treble crochet", USAbbr: "tr", UKAbbr: "dtr", Uses: 1, Makes: 1, Height: 3, Turn: 4, Key: "tr"},
	{ID: "dtr", US: "double treble crochet", UK: "triple treble crochet", USAbbr: "dtr", UKAbbr: "trtr", Uses: 1, Makes: 1, Height: 4, Turn: 5, Key: "dtr"},
	{ID: "trtr", US: "triple treble crochet", UK: "quadruple treble crochet", USAbbr: "trtr", UKAbbr: "qtr", Uses: 1, Makes: 1, Height: 5, Turn: 6, Key: "trtr"},
}

// single are crochet stitches that count as one, of several legs in one place.
var single = []Stitch{
	{ID: "cl", US: "cluster", UK: "cluster", USAbbr: "cl", UKAbbr: "cl", Also: []string{"clusters", "cls"}, Uses: 1, Makes: 1, Height: 2, Base: "dc", Legs: 3, Key: "cluster"},
	{ID: "bobble", US: "bobble", UK: "bobble", USAbbr: "bo", UKAbbr: "bo", Also: []string{"bobbles", "mb"}, Uses: 1, Makes: 1, Height: 2, Base: "dc", Legs: 5, Key: "bobble"},
	{ID: "pc", US: "popcorn", UK: "popcorn", USAbbr: "pc", UKAbbr: "pc", Also: []string{"popcorns", "popcorn st"}, Uses: 1, Makes: 1, Height: 2, Base: "dc", Legs: 5, Key: "popcorn"},
	{ID: "puff", US: "puff stitch", UK: "puff stitch", USAbbr: "puff", UKAbbr: "puff", Also: []string{"puff st", "puffs", "puff sts", "puff stitches"}, Uses: 1, Makes: 1, Height: 1.5, Base: "hdc", Legs: 3, Key: "puff"},
	{ID: "picot", US: "picot", UK: "picot", USAbbr: "picot", UKAbbr: "picot", Also: []string{"picots", "purl picot"}, Height: 0.5, Key: "picot"},
}

// knit are the knitting stitches.
var knit = []Stitch{
	{ID: "k", US: "knit", UK: "knit", USAbbr: "k", UKAbbr: "k", Also: []string{"knits"}, Uses: 1, Makes: 1, Key: "knit"},
	{ID: "p", US: "purl", UK: "purl", USAbbr: "p", UKAbbr: "p", Also: []string{"purls"}, Uses: 1, Makes: 1, Key: "purl"},
	{ID: "edge", US: "edge stitch", UK: "edge stitch", USAbbr: "edge st", UKAbbr: "edge st", Also: []string{"selvedge st", "selvedge stitch"}, Uses: 1, Makes: 1, Key: "edge"},
	{ID: "ktbl", US: "knit through back loop", UK: "knit through back loop", USAbbr: "k tbl", UKAbbr: "k tbl", Also: []string{"k1tbl", "ktbl"}, Uses: 1, Makes: 1, Base: "k", Key: "twisted knit"},
	{ID: "ptbl", US: "purl through back loop", UK: "purl through back loop", USAbbr: "p tbl", UKAbbr: "p tbl", Also: []string{"p1tbl", "ptbl"}, Uses: 1, Makes: 1, Base: "p", Key: "twisted purl"},
	{ID: "sl", US: "slip", UK: "slip", USAbbr: "sl", UKAbbr: "sl", Also: []string{"slips"}, Uses: 1, Makes: 1, Key: "slipped"},
	{ID: "slwyif", US: "slip with yarn in front", UK: "slip with yarn in front", USAbbr: "sl wyif", UKAbbr: "sl wyif", Uses: 1, Makes: 1, Base: "sl", Key: "slipped, yarn in front"},
	{ID: "slwyib", US: "slip with yarn in back", UK: "slip with yarn in back", USAbbr: "sl wyib", UKAbbr: "sl wyib", Uses: 1, Makes: 1, Base: "sl", Key: "slipped, yarn in back"},
	{ID: "yo", US: "yarn over", UK: "yarn over", USAbbr: "yo", UKAbbr: "yo", Also: []string{"yarn forward", "yf", "yfwd", "yrn", "yon", "yarn overs"}, Makes: 1, Key: "yarn over"},
	{ID: "m1", US: "make one", UK: "make one", USAbbr: "m1", UKAbbr: "m1", Also: []string{"make 1"}, Makes: 1, Key: "make one"},
	{ID: "m1p", US: "make one purlwise", UK: "make one purlwise", USAbbr: "m1p", UKAbbr: "m1p", Makes: 1, Base: "m1", Key: "make one purl"},
	{ID: "m1l", US: "make one left", UK: "make one left", USAbbr: "m1l", UKAbbr: "m1l", Makes: 1, Key: "make one left"},
	{ID: "m1r", US: "make one right", UK: "make one right", USAbbr: "m1r", UKAbbr: "m1r", Makes: 1, Key: "make one right"},
	{ID: "kfb", US: "knit front and back", UK: "knit front and back", USAbbr: "kfb", UKAbbr: "kfb", Also: []string{"k1fb", "k1f&b"}, Uses: 1, Makes: 2, Base: "k", Key: "knit front and back"},
	{ID: "pfb", US: "purl front and back", UK: "purl front and back", USAbbr: "pfb", UKAbbr: "pfb", Also: []string{"p1fb"}, Uses: 1, Makes: 2, Base: "p", Key: "purl front and back"},
	{ID: "k2tog", US: "knit two together", UK: "knit two together", USAbbr: "k2tog", UKAbbr: "k2tog", Uses: 2, Makes: 1, Base: "k", Legs: 2, Together: true, Key: "right-leaning decrease"},
	{ID: "p2tog", US: "purl two together", UK: "purl two together", USAbbr: "p2tog", UKAbbr: "p2tog", Uses: 2, Makes: 1, Base: "p", Legs: 2, Together: true, Key: "purl decrease"},
	{ID: "k3tog", US: "knit three together", UK: "knit three together", USAbbr: "k3tog", UKAbbr: "k3tog", Uses: 3, Makes: 1, Base: "k", Legs: 3, Together: true, Key: "right-leaning double decrease"},
	{ID: "p3tog", US: "purl three together", UK: "purl three together", USAbbr: "p3tog", UKAbbr: "p3tog", Uses: 3, Makes: 1, Base: "p", Legs: 3, Together: true, Key: "purl double decrease"},
	{ID: "k2togtbl", US: "knit two together through back loops", UK: "knit two together through back loops", USAbbr: "k2tog tbl", UKAbbr: "k2tog tbl", Uses: 2, Makes: 1, Base: "k", Legs: 2, Together: true, Key: "left-leaning decrease tbl"},
	{ID: "p2togtbl", US: "purl two together through back loops", UK: "purl two together through back loops", USAbbr: "p2tog tbl", UKAbbr: "p2tog tbl", Uses: 2, Makes: 1, Base: "p", Legs: 2, Together: true, Key: "left-leaning purl decrease tbl"},
	{ID: "k3togtbl", US: "knit three together through back loops", UK: "knit three together through back loops", USAbbr: "k3tog tbl", UKAbbr: "k3tog tbl", Uses: 3, Makes: 1, Base: "k", Legs: 3, Together: true, Key: "left-leaning double decrease tbl"},
	{ID: "p3togtbl", US: "purl three together through back loops", UK: "purl three together through back loops", USAbbr: "p3tog tbl", UKAbbr: "p3tog tbl", Uses: 3, Makes: 1, Base: "p", Legs: 3, Together: true, Key: "left-leaning purl double decrease tbl"},
	{ID: "ssk", US: "slip, slip, knit", UK: "slip, slip, knit", USAbbr: "ssk", UKAbbr: "ssk", Uses: 2, Makes: 1, Base: "k", Legs: 2, Together: true, Key: "left-leaning decrease"},
	{ID: "ssp", US: "slip, slip, purl", UK: "slip, slip, purl", USAbbr: "ssp", UKAbbr: "ssp", Uses: 2, Makes: 1, Base: "p", Legs: 2, Together: true, Key: "left-leaning purl decrease"},
	{ID: "skpo", US: "slip, knit, pass slipped stitch over", UK: "slip, knit, pass slipped stitch over", USAbbr: "skpo", UKAbbr: "skpo", Also: []string{"skp"}, Uses: 2, Makes: 1, Base: "k", Legs: 2, Together: true, Key: "left-leaning decrease"},
	{ID: "sk2p", US: "slip, knit two together, pass over", UK: "slip, knit two together, pass over", USAbbr: "sk2p", UKAbbr: "sk2p", Also: []string{"sk2po"}, Uses: 3, Makes: 1, Base: "k", Legs: 3, Together: true, Key: "left-leaning double decrease"},
	{ID: "s2kp", US: "slip two, knit, pass over", UK: "slip two, knit, pass over", USAbbr: "s2kp", UKAbbr: "s2kp", Also: []string{"s2kpo", "cdd"}, Uses: 3, Makes: 1, Base: "k", Legs: 3, Together: true, Key: "centred double decrease"},
}

// All is the whole list, in a fixed order.
var All = sync.OnceValue(func() []*Stitch {
	var out []*Stitch
	add := func(s Stitch) {
		if s.Base == "" {
			s.Base = s.ID
		}
		if s.Legs == 0 {
			s.Legs = 1
		}
		out = append(out, &s)
	}
	for _, s := range plain {
		if s.ID == "dc" {
			s.Also = nil
		}
		add(s)
	}
	for _, s := range plain[2:] {
		for n := 2; n <= 9; n++ {
			add(together(s, n))
		}
		add(post(s, FrontPost))
		add(post(s, BackPost))
	}
	for _, s := range single {
		add(s)
	}
	for _, s := range knit {
		s.Craft = Knitting
		s.Height = 1
		add(s)
	}
	return out
})

var numerals = [...]string{2: "two", 3: "three", 4: "four", 5: "five", 6: "six", 7: "seven", 8: "eight", 9: "nine"}

func together(s Stitch, n int) Stitch {
	d := string(rune('0' + n))
	return Stitch{ID: s.ID + d + "tog", US: s.US + " " + numerals[n] + " together", UK: s.UK + " " + numerals[n] + " together",
		USAbbr: s.USAbbr + d + "tog", UKAbbr: s.UKAbbr + d + "tog", Uses: n, Makes: 1, Height: s.Height, Turn: s.Turn,
		Base: s.ID, Legs: n, Together: true, Key: s.Key}
}

func post(s Stitch, p Post) Stitch {
	short, long := "FP", "front post "
	if p == BackPost {
		short, long = "BP", "back post "
	}
	return Stitch{ID: short + s.ID, US: long + s.US, UK: "raised " + long[:len(long)-6] + " " + s.UK,
		USAbbr: short + s.USAbbr, UKAbbr: short + s.UKAbbr,
		Uses: 1, Makes: 1, Height: s.Height, Turn: s.Turn, Base: s.ID, Post: p, Key: s.Key}
}

var byID = sync.OnceValue(func() map[string]*Stitch {
	m := map[string]*Stitch{}
	for _, s := range All() {
		m[s.ID] = s
	}
	return m
})

// ThroughBack is s worked through the back loop, where that is a stitch of its own; else s itself.
func (s *Stitch) ThroughBack() *Stitch {
	if t := byID()[s.ID+"tbl"]; t != nil {
		return t
	}
	return s
}

// ByID is the stitch of that ID, or nil.
func ByID(id string) *Stitch { return byID()[id] }
