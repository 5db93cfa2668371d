package grammar

import (
	"slices"
	"strings"
	"sync"
	"unicode"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// cornerBlock is a block of work that goes from corner to corner: sl st in next ch-3 sp, ch 3, 3 dc in same sp.
var cornerBlock = text.Once(`(?:sl ?st|slip st(?:itch)?|\bss)\b[^.;]{0,40}, ?(?:ch[ -]?[23]|[23] ?ch),? ?3 ?(?:dc|tr|hdc|htr)\b`)

// fromCross reports whether a text repeats from a capital X, as some did that had no star: X 1 d.c., 2 ch., miss 1, X 8 times.
func fromCross(src []string) bool {
	seen := 0
	for _, line := range src {
		if strings.Contains(line, "*") {
			return false
		}
		seen += len(crossSign().FindAllString(line, -1))
	}
	return seen > 1
}

var crossSign = text.Once(`(?:^|[:;,.] )X (?:\d|[a-z])`)

// crossStars makes stars of the capital X that a text repeats from.
func (r *Reader) crossStars(t []text.Token) {
	for i := range t {
		if k := &t[i]; r.crosses && k.Kind == 'w' && k.S == "x" && k.Cap && !k.Glued && (i == 0 || t[i-1].Kind == 'p') {
			k.Kind, k.S = 'p', "*"
		}
	}
}

// craftWords are words that tell of what craft a text is.
var craftWords = sync.OnceValue(func() map[string]stitch.Craft {
	m := map[string]stitch.Craft{}
	for w := range strings.FieldsSeq("ch sc dc hdc htr tr crochet chain hook dtr inc treble crocheted mr") {
		m[w] = stitch.Crochet
	}
	for w := range strings.FieldsSeq("k p knit purl needles tog ssk yo needle stockinette psso rib kfb pm") {
		m[w] = stitch.Knitting
	}
	return m
})

func containsAny(s string, words ...string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(s, w) })
}

func (r *Reader) saysTerms(t stitch.Terms, at int, line string) {
	switch {
	case r.o.TermsSet && r.x.Said.Terms == "":
		r.x.Said.Terms, r.x.Said.TermsAt = t.String(), ins.Span{Line: at, Col: 1, End: 1 + len([]rune(line))}
	case !r.o.TermsSet && !r.x.TermsSet:
		r.x.Terms, r.x.TermsSet = t, true
	}
}

func (r *Reader) terms(rest string, line, col int) {
	if r.o.TermsSet {
		r.x.Said.Terms, _, _ = strings.Cut(strings.ToUpper(strings.Trim(rest, " .")), " ")
		r.x.Said.TermsAt = ins.Span{Line: line, Col: col, End: col + len([]rune(strings.TrimSpace(rest)))}
		return
	}
	if t, ok := termsNamed(rest); ok && !r.keyTold {
		r.x.Terms, r.x.TermsSet, r.keyTold = t, true, true
	}
}

// termsNamed are the terms that stand behind a key: US; British terms.
func termsNamed(rest string) (stitch.Terms, bool) {
	switch strings.ToUpper(strings.Trim(rest, " .")) {
	case "US", "US TERMS", "AMERICAN", "USA":
		return stitch.US, true
	case "UK", "UK TERMS", "BRITISH":
		return stitch.UK, true
	}
	return text.TermsSaid(rest)
}

// turnTerms goes on in the terms that a line says, from there on.
func (r *Reader) turnTerms(t stitch.Terms, line int) {
	if r.o.TermsSet || t == r.x.Terms {
		return
	}
	if r.x.Terms = t; r.x.Read.Lines > 0 {
		r.x.Turns = append(r.x.Turns, ins.Terms{Line: line, In: t})
	} else {
		r.begunIn = t
	}
}

// guessTerms takes the terms from words that belong to one set alone; words of
// both are told as a finding by the check.
func (r *Reader) guessTerms() {
	var own termWords
	single, long, dotted := false, false, false
	for _, line := range r.x.Src {
		dotted = dotted || dottedSingle().MatchString(line)
		single = single || containsAny(strings.ToLower(line), "single crochet") && !text.Means(line)
		long = long || longStitch().MatchString(line)
		own.count(line)
	}
	switch {
	case own.us > own.uk:
		r.x.Terms, r.x.TermsSet, r.x.Old = stitch.US, true, dotted && own.missed
	case own.uk == own.us && single && !long: // single crochet is American, but for books so old that they have long stitches
		r.x.Terms, r.x.TermsSet, r.x.Old = stitch.US, true, true
	case own.uk > own.us, own.uk == own.us && own.missed:
		r.x.Terms, r.x.TermsSet, r.x.Old = stitch.UK, true, long
	}
}

// termWords are how many words of a text belong to one set of terms alone.
type termWords struct {
	us, uk int
	missed bool // it says miss, as American texts did too, once
}

func (c *termWords) count(line string) {
	line = dottedSingle().ReplaceAllString(strings.ToLower(line), "sc")
	for _, m := range otherName().FindAllStringSubmatch(line, -1) {
		if m[1] == "us" {
			c.uk += 2
		} else {
			c.us += 2
		}
	}
	line = otherName().ReplaceAllString(line, " ")
	for _, w := range strings.FieldsFunc(line, func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) }) {
		switch t, ok := stitch.Only(w); {
		case !ok || w == "tension" || w == "double": // double crochet is of both
		case w == "miss" || w == "missed":
			c.missed = true
		case t == stitch.US:
			c.us++
		default:
			c.uk++
		}
	}
	if strings.Contains(line, "half treble") {
		c.uk++
	}
}

// otherName is what a stitch is called in the other terms: tr treble crochet (US dc).
var otherName = text.Once(`\((us|uk) (?:sc|dc|hdc|htr|tr|dtr|single|double|half|treble|triple)\b[^)]*\)`)

// dottedSingle is single crochet with full stops or a space.
var dottedSingle = text.Once(`(?i)\bs(?:\. ?| )c\b`)

// longStitch is what books before 1900 call a treble.
var longStitch = text.Once(`(?i)\b(?:\d+|one|two|three|four|five|double) long\b`)
