package grammar

import (
	"slices"
	"strings"
	"unicode"

	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// named reports whether the first line of a text is its title, though its words may be read as an instruction or its
// signs are those of none: A Springy, Lacy Knit Scarf.
func (r *Reader) named(trimmed string, n int) bool {
	if r.x.Title != "" || n > 3 || strings.TrimSpace(strings.Join(r.x.Src[:n-1], "")) != "" {
		return false
	}
	bare := titleAside().ReplaceAllString(trimmed, "")
	aside := bare != trimmed && bare != ""
	trimmed = bare
	if strings.ContainsAny(trimmed, ".:;=*()[]0123456789") {
		return false
	}
	if _, _, ok := text.Heading(trimmed); !aside && ok && !r.instruction(trimmed) || r.spells(trimmed) {
		return false
	}
	words := strings.Fields(trimmed)
	for _, w := range words {
		if c := []rune(w); len(c) > 3 && !unicode.IsUpper(c[0]) && !aside {
			return false
		}
	}
	return (len(words) > 2 || aside) && len(words) < 10
}

// titleAside is what a title says of its terms, its size or how it is worked: (US terms), - UK, (flat), 4 rounds.
var titleAside = text.Once(`(?i)\s*[(,–—-]+\s*(?:(?:written |worked )?(?:in )?(?:the )?(?:us|uk|u\.s\.|u\.k\.|american|british)(?: (?:crochet )?(?:terms|terminology|version|english))?|\d+ (?:rounds?|rnds?|rows|inch(?:es)?|in|cm)|(?:worked |knitted |crocheted )?(?:flat|in (?:the )?rounds?|in rows)|free pattern|written pattern|pattern)\)?$`)

// starRest is a line that repeats the stretch that a star began before a blank line.
var starRest = text.Once(`(?i)^\s*(?:rep|repeat) from \*`)

// columns reports whether the text is printed in narrow columns, in which rows end with a turn: cut behind any full stop.
func (r *Reader) columns() bool {
	const narrow, few = 48, 3
	ends := 0
	for _, l := range r.x.Src {
		l = strings.TrimSpace(l)
		if strings.HasSuffix(l, "Turn.") && len([]rune(l)) < narrow {
			ends++
		}
	}
	return ends >= few
}

// explains reports whether a line begins words that are no rows, and closes no bracket that is open: 3 (3, / 3, 4) RS rows.
func (r *Reader) explains(raw, trimmed string) bool {
	if text.Open(r.raw) && strings.ContainsAny(raw, ")]") {
		return false
	}
	key, _, _ := text.KeyOf(raw)
	return key != "" || text.Glossary(trimmed) || text.Means(trimmed)
}

// joinsAlone is a line that only joins the round above it: Sl st to top of first st.
var joinsAlone = text.Once(`(?i)^\W*(?:join with |join using )?(?:a )?(?:sl\.? ?st|ss|slip stitch) (?:to|in|into) [a-z ]{0,20}\b(?:first|1st|beginning|beg)\b[\w -]{0,20}\W*$`)

// explained is a line that tells how a stitch is made: Bobble stitch: work 3 dc, leaving the last loop of each on the hook.
var explained = text.Once(`(?i)^[^\d:=]{0,30}\b(?:stitch|st|cluster|bobble|popcorn|puff|cl|bo|pc|shell)(?: \([^)]{1,14}\))? ?[:=–-] ?.*\b(?:hook|yo|yarn over|insert)\b`)

// howToWork is a line that tells of what a stitch is: How to work a V-stitch (V): 1 dc, ch 1 and 1 dc in same st.
var howToWork = text.Once(`(?i)^\W*(?:how to|to) (?:work|make|do|crochet) (?:(?:an?|the) )?([a-z][a-z -]{1,25}(?: \([a-z-]{1,8}\))?) ?[:=–-] ?(.+)$`)

func (r *Reader) tellsHow(trimmed string, n int) bool {
	m := howToWork().FindStringSubmatch(trimmed)
	if m == nil || !r.crochet || !r.define(m[1]+": "+m[2], n) {
		return false
	}
	r.x.Read.Words++
	return true
}

// keyed takes a line that begins with a key, is one alone, or lists abbreviations.
func (r *Reader) keyed(raw string, n int) bool {
	trimmed := strings.TrimSpace(raw)
	if key, rest, _ := text.KeyOf(raw); key != "" {
		r.x.Read.Words++
		r.words(text.Keys[key], rest, n, strings.TrimSpace(rest) == "" || firstItem().MatchString(rest))
		return true
	}
	if r.gaugeUnkeyed(trimmed, n) {
		return true
	}
	if !r.crochet && (aboutPattern().MatchString(trimmed) || r.endsMeaning(n)) {
		r.x.Read.Words++
		r.note(trimmed, n)
		return true
	}
	if kind := text.KeyLine(trimmed); kind != "" {
		r.x.Read.Words++
		r.words(kind, "", n, true)
		return true
	}
	if r.mode == "" && (explained().MatchString(trimmed) || describes(trimmed) || r.tellsGroup(trimmed)) {
		r.x.Read.Words++
		r.words("stitches", trimmed, n, false)
		return true
	}
	if r.mode == "" && worksOver().MatchString(trimmed) {
		r.x.Read.Words++
		r.note(trimmed, n)
		return true
	}
	if r.mode == "" && (text.Glossary(trimmed) || r.abbreviates(trimmed) || text.Means(trimmed) || inColumns().MatchString(trimmed) || len(r.sec.Lines) == 0 && (dashMeans().MatchString(trimmed) || howChanged().MatchString(trimmed))) {
		r.x.Read.Words++
		r.words("names", trimmed, n, false)
		return true
	}
	return false
}

// gaugeUnkeyed takes a line of the gauge that no key begins.
func (r *Reader) gaugeUnkeyed(trimmed string, n int) bool {
	if r.mode != "" || !gaugeAlone().MatchString(trimmed) && !gaugeOver().MatchString(trimmed) {
		return false
	}
	if r.x.Read.Words++; r.x.Read.Lines == 0 {
		r.gaugeInParts(trimmed, n)
	}
	return true
}

// firstItem begins the items of a list behind their key: Note: 1. The wrap is worked from side to side.
var firstItem = text.Once(`^\s*1[.)] ?[A-Z]`)

// howChanged tells before the rows how an increase or a decrease is made: dec: 1 sc over two stitches through the front loops only.
var howChanged = text.Once(`(?i)^(?:inc|dec|increase|decrease|inv\.? ?dec)\.? ?[:=–-] ?(?:work |make )?(?:\d |one |two )?(?:sc|hdc|dc|tr|htr|single|double|half)\b.* (?:(?:in|into) (?:one|1|the same|same) st|over |together\b|tog\b)[^.*]*\.?$`)

// gaugeAlone is a gauge on a line of its own: 11 pattern sts = 2”, 20 sts and 28 rows = 4" in stockinette st.
var gaugeAlone = text.Once(`(?i)^(?:in [\w ]{3,24}, |(?:stitch|row|stocking stitch|st st|garter stitch|pattern|stockinette(?: stitch)?)(?: gauge| tension)?: ?)?\d+(?:½|¼|¾)? ?[\w ]{0,16}\b(?:sts?|stitches|rows?|rnds?|rounds?|[shd]{1,2}c)\.?` +
	`(?: ?(?:=|make|measure|to|over|per) ?(?:[\d½¼¾ ]+|an?|the|one|each)? ?(?:"|”|″|ins?\b|inch(?:es)?|cms?\b)\.?[^.;]{0,64}[;.]?$| ?(?:and|&|x|/|by|,) ?\d+(?:½|¼|¾)? ?(?:rows?|rnds?|rounds?) ?(?:=|make|measure|to|over|per) ?(?:[\d½¼¾ x]+|an?|the|one|each) ?(?:square )?(?:"|”|″|ins?\b|inch|cm))`)

// gaugeOver is a gauge whose length stands first: Gauge 10 cm: 16 sts/ 16 rows.
var gaugeOver = text.Once(`(?i)^(?:gauge|tension) ?(?:over |in )?[\d½¼¾]+ ?(?:x ?[\d½¼¾]+ ?)?(?:"|”|″|ins?\b|inch|cm)[^:=]{0,12}[:=] ?\d`)

// aboutPattern is a line that only tells what a chart shows, how wide a repeat is, or with what the rows begin and end.
var aboutPattern = text.Once(`(?i)^\W*(?:the )?chart shows\b|^\W*place (?:a )?(?:stitch )?mar?kers?\b.*\bevery \d+ st|^\W*(?:start|begin|commence) (?:the )?(?:mosaic|lace|cable|colou?rwork|fair isle|slip[- ]stitch|textured?) patt(?:ern)?\.?$|^\W*(?:the )?patt?(?:ern)?\.? rep(?:eat)?\.? (?:=|is)|^\W*begin with\b.*(?:\bpatt?(?:ern)?\.? rep|\brow 0\b|\bset-?up row\b)|^\W*repeat patt?(?:ern)?\.? between`)

// endsMeaning reports whether line n goes on, behind a blank line, with what a line above says that a short name stands for.
func (r *Reader) endsMeaning(n int) bool {
	if n < 3 || strings.TrimSpace(r.x.Src[n-2]) != "" || !r.goesOn(n-1) {
		return false
	}
	above := strings.TrimSpace(r.x.Src[n-3])
	return text.Means(above) && !strings.ContainsAny(above[len(above)-1:], ".!)")
}

// worksOver is a line that tells over how many stitches a pattern is worked, or that their number varies.
var worksOver = text.Once(`(?i)^\W*(?:work(?:ed)? )?(?:with |over |on )?(?:a |any )?multiples? of\s+\d+[^.;*]*\.?$|^(?:the )?number of (?:sts|stitches) (?:var|chang|differ)`)

// abbreviates reports whether a line gives a short name its long one: K: Knit.
func (r *Reader) abbreviates(line string) bool {
	short, _, ok := strings.Cut(line, ":")
	if !ok {
		return r.spells(line)
	}
	if len(short) > 8 || strings.ContainsAny(line[len(short):], "*") {
		return false
	}
	if k, ok := r.thing([]byte(squeezeWords(short))); ok && !r.crochet && k.Kind != nil && (k.Kind.Uses != 1 || k.Kind.Makes != 1) && !slices.ContainsFunc(r.sec.Lines, ownRow) { // sk2p: slip 1 stitch as if to knit …
		return true
	}
	k, named := r.thing([]byte(squeezeWords(short)))
	if named && k.Kind != nil && k.Kind.Craft == stitch.Knitting && len(short) > 1 && !r.crochet && !slices.ContainsFunc(r.sec.Lines, ownRow) && len(strings.Fields(line[len(short):])) > 3 { // brk: knit the slipped stitch together with its yarn over
		return true
	}
	return (named || stitch.Abbreviates(short)) && r.abbreviation(line)
}

// spells reports whether a line is a short name and, with nothing between them, the long one: YO Yarn Over.
func (r *Reader) spells(line string) bool {
	short, long, _ := strings.Cut(line, " ")
	if len(short) > 8 || len(long) < 4 || strings.ContainsAny(long, "*,;.()") {
		return false
	}
	for _, a := range stitch.Abbreviations {
		if strings.EqualFold(strings.TrimSuffix(short, "s"), a.Short) && strings.EqualFold(long[:3], a.US[:3]) {
			return !strings.ContainsAny(long, "123456789")
		}
	}
	a, ok := r.thing([]byte(squeezeWords(short)))
	b, same := r.thing([]byte(squeezeWords(long)))
	return ok && same && a == b && !strings.EqualFold(short, long)
}

// inColumns is a short name with what it stands for in a column of its own: ssk    slip, slip, knit.
var inColumns = text.Once(`^[A-Za-z][A-Za-z0-9/]{0,9}(?:\t+ *|  +)[A-Za-z]{2,}`)

// dashMeans is a line that says with a dash what a short name stands for: Inc- increase, stitch twice in the same stitch.
var dashMeans = text.Once(`(?i)^\W*(?:inc|dec|sc|hdc|dc|tr|htr|ch|ss|sl ?st|mr|mc|blo|flo|sts?|sk|sp|rep|beg)\.? ?[-–—] ?(?:increas|decreas|single|half|double|treble|triple|chain|slip|magic|back|front|stitch|skip|space|repeat|begin)`)

// furniture is a line that stands at the head or the foot of every page: an address, whose it is, which page.
var furniture = text.Once(`(?i)^\W*(?:www\.|https?://)\S+|\bpage \d+ (?:of|/) \d+\b|^\W*(?:copyright )?(?:©|\(c\)) ?(?:19|20)\d\d\b|© ?(?:19|20)\d\d .{0,60}$`)

// beside takes a line that is blank, was read with a definition before it, or belongs to the page.
func (r *Reader) beside(trimmed string, n int) bool {
	switch {
	case trimmed == "":
		r.blank(n)
	case n <= r.meant, furniture().MatchString(trimmed), offersOther(trimmed):
		r.x.Read.Words++
	default:
		return false
	}
	return true
}

// longestMeaning bounds a definition that goes on over several lines.
const longestMeaning = 2000

// meaning is a line among stitches that tells what a name means, with those that go on with it.
func (r *Reader) meaning(line string, n int) string {
	if r.mode != "stitches" || meaningAt(line) < 1 {
		return line
	}
	for ; n < len(r.x.Src) && len(line) < longestMeaning; n++ {
		next := strings.TrimSpace(r.x.Src[n])
		if next == "" || meaningAt(next) >= 0 || !text.GoesOn(line, next) {
			break
		}
		line += " " + next
		r.meant = n + 1
	}
	return line
}

// supplies reports whether a line tells what yarn is needed: 1.25 oz of worsted weight yarn.
func supplies(t []text.Token) bool {
	has := func(words ...string) bool {
		return slices.ContainsFunc(t, func(k text.Token) bool { return k.Kind == 'w' && k.Is(words...) })
	}
	if len(t) > 1 && isNumber(&t[0]) && t[1].Is("ball", "balls", "skein", "skeins", "spool", "spools") {
		return true
	}
	return isNumber(&t[0]) && has("yarn", "yarns", "wool", "cotton", "thread") && has("oz", "g", "grams", "gram", "weight", "skein", "skeins", "ball", "balls", "yds", "yards", "ounces", "ounce", "m") && !has("row", "rnd", "round", "in", "into")
}

// announces reports whether a sentence tells what will be done, and does nothing yet: In the next round, we'll join both legs.
func announces(t []text.Token) bool {
	if slices.ContainsFunc(t, func(k text.Token) bool { return k.Kind == 'n' }) {
		return false
	}
	for i := range t[:min(len(t), 8)] {
		if t[i].Is("we'll", "you'll") || t[i].Is("we", "you") && near(t, i+1).Is("will", "are") {
			return t[0].Is("in", "on", "for", "now", "next", "here", "at", "from", "we", "you", "we'll", "you'll")
		}
	}
	return false
}
