package grammar

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode"

	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// Reader reads a text line by line.
type Reader struct {
	x            *ins.Text
	o            ins.Options
	tokenCount   int // numbers and signs too, of all that was read
	before       int // lines of rows in the sections before this one
	sec          *ins.Section
	mode         string // how the lines of a section of words are read
	patterns     bool   // such a section of stitches holds more than their names
	meant        int    // the last line that was read as a part of a definition before it
	raw          string // the last line of the text as it stands
	tokens       []text.Token
	tunisian     bool // it is of Tunisian crochet
	roundR       bool // R5 means a round
	crosses      bool // a capital X is the sign from which is repeated
	around       bool // what the text calls rows are rounds: a remark says that they are joined
	crochet      bool // words of crochet prevail
	knits        bool // words of knitting do
	own          map[string]thing
	looked       map[string]called // names that were looked up
	lookedIn     inTerms
	groups       []defined
	cables       map[string]*stitch.Stitch
	legs         map[string]*stitch.Stitch // the last cluster, popcorn or such of which it was told of how many stitches, by its symbol
	macros       map[string][]ins.Item     // knitted stitches that the text tells by what is worked, by their names
	colours      map[byte]bool             // letters that name yarns
	smallYarns   bool                      // in small letters
	yarnNames    map[string]bool           // short names of yarns that the text declares
	stuckYarns   bool                      // they stand behind a number without a space: K10A
	popcorns     struct{ asked, are bool } // whether the text speaks of any
	unknown      map[string]*ins.Group     // that the text makes and does not define
	loop         ins.Loop
	began        bool
	yarn         string          // that words since the last line take up
	squares      *[2]*ins.Group  // of filet, open and solid, once they were looked for
	sole         **stitch.Stitch // of oneStitch, once it was looked for
	these        int             // rows since the last heading or rep, for 'these rows'
	starred      []ins.Item
	passed       *ins.Skip       // chains that a line said are passed, for the row that follows
	mark         string          // the sign before the label of a row, from which rows are repeated
	wraps        map[string]bool // names that the text has for a turn within the row
	patternNames map[string]bool // names of patterns whose rows the text gives
	unlike       bool
	due          bool  // the gauge is told below its heading
	bracketing   []int // how the first line of numbers is bracketed
	some         bool  // what is read is for some of the sizes only, and which is not known
	only         []int // the sizes for which alone it is; nil: all
	lately       int   // for how many sizes a stretch of the piece was told last
	inline       bool  // they are told before the row, and for it alone
	awaits       bool  // by a letter alone on the line before it
	alone        bool  // the label of the row that is gathered stands on a line of its own
	steps        int   // that stand under it in a numbered list
	telling      int   // the line of a paragraph in which the writer tells what she does
	spare        []*match
	room         *room
}

var tables = [][]form{namedForms, lettered, unitForms, cores, loops, extents, times, prepositions, stitches, heldBack, putBacks, statements, rowsets, clauses}

var once sync.Once

// ready compiles the tables when a text is first read: a program that reads none need not wait for it.
func ready() { once.Do(compileTables) }

func compileTables() {
	compileAll(map[string]func(p *parser, i int) (any, int){
		"num": number, "ord": ordinal, "nths": nths, "inthisway": inThisWay, "byhow": byHow, "kind": kind, "row": rowWord, "size": size, "sized": sized, "tail": tail, "places": places, "course": courses, "ofpanel": ofPanel,
		"edgename": edgeName, "ofpart": ofPart, "edgeside": edgeSide, "stretch": stretch, "edgewords": edgeWords, "piecename": pieceName, "fromwhere": fromWhere, "len": length, "cloth": cloth,
		"incloth": inCloth, "aside": aside, "bracketed": bracketed, "patname": patternName, "parts": parts, "shortover": shortOver, "star": star, "sentence": sentence, "rownums": rowNums, "joinwords": joinWords, "openend": openEnd, "anyend": anyEnd, "rowname": rowName, "chaincalled": chainCalled,
	}, tables...)
	for _, name := range itemRules {
		itemIDs = append(itemIDs, rules.id(name))
	}
}

// Read reads a text of written rows. What can't be read stands in the lines' Unread;
// nothing is guessed. The name is for messages.
func Read(name string, src []byte, o ins.Options) *ins.Text {
	ready()
	x := &ins.Text{Name: name, Sizes: o.Sizes, Terms: o.Terms, TermsSet: o.TermsSet, Gauge: o.Gauge,
		Turning: map[int]ins.Counts{}, TurnSpace: map[int]int{}, Used: map[string]*stitch.Stitch{}, Own: map[string]*stitch.Stitch{}}
	maps.Copy(x.Turning, o.Turning)
	if len(src) > maxText {
		x.Tell(ins.Refused("the text is larger than %d bytes", maxText), ins.Span{Line: 1, Col: 1, End: 2})
		return x
	}
	typed, columns := lines(src)
	x.Src, x.Columns = text.Steps(typed), columns
	if len(x.Src) > maxLines {
		x.Tell(ins.Refused("the text has more than %d lines", maxLines), ins.Span{Line: maxLines + 1, Col: 1, End: 2})
		return x
	}
	bound(x)
	r := &Reader{x: x, o: o, own: map[string]thing{}, cables: map[string]*stitch.Stitch{}, legs: map[string]*stitch.Stitch{}}
	r.section(&ins.Section{})
	r.patternNames = patternsOf(x.Src)
	r.head()
	most := maxWorks / max(1, len(x.Sizes.Names))
	for i := range x.Src {
		if r.one(i + 1); len(r.sec.Lines)+r.before > most { // few tells them
			break
		}
		if r.tokenCount > maxWords {
			x.Tell(ins.Refused("from here on the text has more than %d words", maxWords), ins.Span{Line: i + 1, Col: 1, End: 2})
			break
		}
	}
	r.flush()
	x.Sections = slices.DeleteFunc(x.Sections, func(s *ins.Section) bool { return s.Name == "" && len(s.Lines) == 0 })
	if len(x.Sections) == 0 {
		x.Sections = append(x.Sections, r.sec)
	}
	few(x)
	r.shortSizes()
	r.done()
	return x
}

func (r *Reader) section(s *ins.Section) {
	if r.sec != nil {
		r.before += len(r.sec.Lines)
	}
	r.sec = s
	r.x.Sections = append(r.x.Sections, s)
	r.these, r.some, r.only, r.lately, r.around, r.mark = 0, false, nil, 0, false, ""
}

// head finds sizes and terms first, wherever they stand, since rows are read by them.
func (r *Reader) head() {
	rounds, crochet, knits := 0, 0, 0
	for i, line := range r.x.Src {
		switch key, rest, col := text.KeyOf(line); text.Keys[key] {
		case "sizes":
			r.sizes(rest, i+1, col)
		case "terms":
			r.terms(rest, i+1, col)
		}
		r.tellCables(i)
		low := strings.ToLower(line)
		// few lines have such letters, and they are found much sooner than an expression
		r.tunisian = r.tunisian || containsAny(low, "tunisian", "tss", "tks", "tps") && tunisianWords().MatchString(low)
		r.x.Blocks = r.x.Blocks || containsAny(low, ", ch", ",ch", ", 2", ",2", ", 3", ",3") && cornerBlock().MatchString(low)
		if containsAny(low, "ring", "around", "magic", "circle", "rnd", "round") {
			rounds++
		}
		if t, said := text.TermsSaid(line); said {
			r.saysTerms(t, i+1, line)
		}
		for w := range strings.FieldsFuncSeq(low, func(c rune) bool { return !unicode.IsLetter(c) }) {
			switch craft, known := craftWords()[w]; {
			case !known:
			case craft == stitch.Crochet:
				crochet++
			default:
				knits++
			}
		}
	}
	r.crosses = fromCross(r.x.Src)
	r.roundR, r.crochet, r.knits = rounds > 0, crochet > knits, knits >= crochet && knits > 0
	if r.tunisian {
		r.call("endst", thing{Kind: counted()["tss"]})
	}
	if len(r.x.Sizes.Names) == 0 {
		r.guessSizes()
	}
	if !r.x.TermsSet {
		r.guessTerms()
	}
}

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

// guessSizes takes the sizes of a text that names none from what it fits, or from its longest line of numbers.
func (r *Reader) guessSizes() {
	x := r.x
	s := text.Told(x.Src)
	if len(s) == 0 {
		s = apart(text.ToFit(x.Src))
	}
	if len(s) > 1 {
		x.Sizes, r.unlike = expr.Sizes{Names: s, Groups: []int{1, len(s) - 1}}, true
		return
	}
	k := text.Sizes(x.Src)
	if k <= 1 || k >= 40 {
		x.Sizes = expr.Sizes{Names: []string{""}, Groups: []int{1}}
		return
	}
	x.Sizes, r.unlike = expr.Sizes{Groups: []int{1, k - 1}}, true
	for i := range k {
		name := fmt.Sprintf("size %d", i+1)
		if letter := string(rune('a' + i%26)); slices.ContainsFunc(x.Src, func(l string) bool { return text.Has(l, "size ("+letter+")") }) {
			name = letter
		}
		x.Sizes.Names = append(x.Sizes.Names, name)
	}
}

// apart are names of sizes, those run together with dashes each by itself: 2 (4-6-8-10). Two are a span: 2 (3-4).
func apart(names []string) []string {
	var out []string
	for _, n := range names {
		if strings.Count(n, "-") > 1 {
			out = append(out, strings.Split(n, "-")...)
			continue
		}
		out = append(out, n)
	}
	return out
}

func (r *Reader) saysTerms(t stitch.Terms, at int, line string) {
	switch {
	case r.o.TermsSet && r.x.Said.Terms == "":
		r.x.Said.Terms, r.x.Said.TermsAt = t.String(), ins.Span{Line: at, Col: 1, End: 1 + len([]rune(line))}
	case !r.o.TermsSet && !r.x.TermsSet:
		r.x.Terms, r.x.TermsSet = t, true
	}
}

func (r *Reader) sizes(rest string, line, col int) {
	if text.InTwoUnits(rest) {
		return
	}
	at := ins.Span{Line: line, Col: col, End: col + len([]rune(strings.TrimSpace(rest)))}
	if open, _, ok := strings.Cut(rest, ";"); ok && text.Open(open) { // 2-3 (4-5; 6-7)
		rest = strings.ReplaceAll(rest, ";", ",")
	}
	rest, _, _ = strings.Cut(rest, ";") // measurements stand behind it
	alone := text.Hyphened(text.SizesAlone(rest), r.x.Src)
	s, p, words := r.sizesIn(alone)
	if p == nil && slices.ContainsFunc(s.Names, func(name string) bool { return tellsSizes().MatchString(name) }) { // Size: women's 8. (Can be made to any size …)
		return
	}
	switch {
	case len(r.o.Sizes.Names) > 0:
		r.x.Said.Sizes, r.x.Said.SizesAt = s, at
	case len(r.x.Sizes.Names) > 0 || r.x.Said.SizesAt.Line > 0:
	case p != nil && len(spread(words)) > 1:
		r.x.Sizes = expr.Sizes{Names: spread(words), Groups: []int{1, len(spread(words)) - 1}}
		r.x.Said.SizesAt, r.unlike = at, true
	case p != nil && strings.ContainsAny(words, "([,") && !strings.Contains(words, ": ") && !tellsSizes().MatchString(words):
		r.x.Findings = append(r.x.Findings, p.Finding(r.x.Pos(ins.Span{Line: line, Col: col, End: col + 1})))
	case p == nil && (len(s.Names) > 1 || len(words) < 12):
		if len(s.Names) > 1 {
			r.x.Sizes, r.unlike = s, r.unlike || words != alone || !strings.ContainsAny(words, "([")
		}
		r.x.Said.SizesAt = at
	}
}

// sizesIn are the sizes that words list, and the words that do: others of them where these can't be read, or no line of numbers
// has as many.
func (r *Reader) sizesIn(words string) (expr.Sizes, *expr.Problem, string) {
	s, p := parseSizes(words)
	if p == nil && (len(s.Names) < 2 || text.InSizes(r.x.Src, len(s.Names))) {
		return s, p, words
	}
	for _, w := range text.OtherSizes(words) {
		if t, q := parseSizes(w); q == nil && text.InSizes(r.x.Src, len(t.Names)) {
			return t, nil, w
		}
	}
	return s, p, words
}

func parseSizes(words string) (expr.Sizes, *expr.Problem) {
	return expr.ParseSizes(strings.NewReplacer(": ", ", ", ":", ",").Replace(words))
}

// tellsSizes are sizes told in a sentence: Directions are for size small with changes for the others in brackets.
var tellsSizes = text.Once(`[a-z]{2,} [a-z]{2,} [a-z]{2,} [a-z]{2,}`)

// spread are the names of sizes that stand in brackets as in Europe: S (M) L.
func spread(words string) []string {
	f := strings.FieldsFunc(words, func(c rune) bool { return strings.ContainsRune("()[],/ ", c) })
	seen := map[string]bool{}
	for _, w := range f {
		if len(w) > 4 || seen[w] {
			return nil
		}
		seen[w] = true
	}
	return f
}

func (r *Reader) terms(rest string, line, col int) {
	low := strings.ToUpper(strings.Trim(rest, " ."))
	if r.o.TermsSet {
		r.x.Said.Terms, _, _ = strings.Cut(low, " ")
		r.x.Said.TermsAt = ins.Span{Line: line, Col: col, End: col + len([]rune(strings.TrimSpace(rest)))}
		return
	}
	switch low {
	case "US", "US TERMS", "AMERICAN", "USA":
		r.x.Terms, r.x.TermsSet = stitch.US, true
	case "UK", "UK TERMS", "BRITISH":
		r.x.Terms, r.x.TermsSet = stitch.UK, true
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

// one takes a line of the text. A paragraph that holds the head of a pattern is several.
func (r *Reader) one(n int) {
	if r.room != nil {
		r.room.again()
	}
	raw, from := r.x.Src[n-1], 0
	for _, to := range text.Cuts(raw) {
		r.part(n, strings.Repeat(" ", len([]rune(raw[:from])))+raw[from:to])
		r.flush()
		r.raw, from = "", to
	}
	r.part(n, strings.Repeat(" ", len([]rune(raw[:from])))+raw[from:])
}

// sizeLetter is the letter of a size before what is for it alone.
var sizeLetter = text.Once(`^\(?([a-z])\)[ .:]*(.*)$`)

// mostForSizes is how many letters the words have at most that say by names for which sizes a line is.
const mostForSizes = 60

// namedSizes is where words end that say by their names alone for which sizes a line is: Teen and Adult only; Medium and Large sizes.
// 0: it says none.
func (r *Reader) namedSizes(line string) int {
	if len(r.x.Sizes.Names) < 2 {
		return 0
	}
	end := strings.IndexAny(line, ":.–—")
	if k := strings.Index(line, " -"); k > 0 && (end < 0 || k < end) {
		end = k
	}
	if end < 0 {
		end = len(line)
	}
	if end > mostForSizes {
		return 0
	}
	names := slices.Clone(r.x.Sizes.Names)
	slices.SortFunc(names, func(a, b string) int { return len(b) - len(a) })
	said := " " + strings.Join(strings.FieldsFunc(strings.ToLower(line[:end]), func(c rune) bool { return strings.ContainsRune(" ,&+/*_()[]", c) }), "  ") + " "
	bare := said
	for _, n := range names {
		said = strings.Replace(said, " "+strings.ReplaceAll(strings.ToLower(n), " ", "  ")+" ", " ", 1)
	}
	if said == bare {
		return 0
	}
	only, begun := false, r.x.Read.Lines > 0 // what stands before the rows is a table of measurements
	for _, w := range strings.Fields(said) {
		switch w {
		case "and", "the":
		case "only":
			only = true
		case "for", "size", "sizes":
			only = only || begun
		default:
			return 0
		}
	}
	if !only {
		return 0
	}
	return end
}

// sized takes the words off a line that say for which sizes it is, and ends a stretch for some sizes where it is over.
func (r *Reader) sized(raw, trimmed string, n int) (line, rest string) {
	said, rest := text.ForSizes(trimmed)
	if to := r.namedSizes(trimmed); to > 0 {
		said, rest = strings.Trim(trimmed[:to], "*_ "), strings.TrimLeft(trimmed[to:], " :*_.–—-")
	}
	if m := sizeLetter().FindStringSubmatch(trimmed); m != nil && slices.Contains(r.x.Sizes.Names, m[1]) {
		said, rest = m[1], m[2]
	}
	awaited := r.awaits
	if r.awaits = false; said != "" && len(r.x.Sizes.Names) > 1 {
		r.flush()
		r.awaits = rest == "" && len(said) == 1
		r.forSizes(said, rest != "" || r.awaits)
		return strings.Repeat(" ", len([]rune(raw))-len([]rune(rest))) + rest, rest
	}
	if r.inline && !awaited && !r.wrapped(raw, n) {
		r.flush()
		r.only, r.inline = nil, false
	}
	return raw, trimmed
}

// wrapped reports whether a line goes on with the row of some sizes that is gathered: print cut it.
func (r *Reader) wrapped(raw string, n int) bool {
	if text.GoesOn(r.raw, raw) || !r.labelled() {
		return text.GoesOn(r.raw, raw)
	}
	tokens := r.lex(raw, n)
	if len(tokens) == 0 {
		return false
	}
	label, _, _ := text.Label(tokens, r.roundR)
	return label == nil && (r.countBelow(raw) || r.unended() || r.cutRow(tokens))
}

// part takes a line, or a part of one.
func (r *Reader) part(n int, raw string) {
	trimmed := strings.TrimSpace(raw)
	if r.beside(trimmed, n) {
		return
	}
	if raw, trimmed = r.sized(raw, trimmed, n); trimmed == "" {
		r.raw = ""
		r.x.Read.Words++
		return
	}
	tokens := r.lex(intoRing().ReplaceAllString(r.rowsBetween(raw), "${1}in "), n)
	if len(tokens) == 0 {
		r.x.Read.Words++
		return
	}
	tokens, step := r.nextStep(r.dividing(tokens))
	label, k, _ := text.Label(tokens, r.roundR)
	if r.titled(trimmed, label, tokens, n) {
		return
	}
	if label == nil && r.hangs(trimmed, n) {
		r.flush()
		r.raw = ""
		r.x.Read.Words++
		return
	}
	if r.takes(raw, tokens, label, k, step, n) {
		return
	}
	r.flush()
	r.raw = withoutMark(raw)
	if r.noRows(trimmed, tokens, n) {
		return
	}
	if label == nil && (r.patternBegins(n) || r.tellsHow(trimmed, n) || r.keyed(raw, n) || r.heading(trimmed, n)) {
		return
	}
	if text.Begins(trimmed) {
		r.mode = ""
	}
	if r.mode != "" && !r.working(label, tokens) {
		r.x.Read.Words++
		r.words(r.mode, r.meaning(trimmed, n), n, false)
		return
	}
	r.mode = ""
	if label == nil && r.inlinePiece(trimmed, tokens, n) {
		return
	}
	r.tokens, r.alone, r.steps = tokens, label != nil && k == len(tokens), 0
}

// between is a line that tells how all rows of one side are worked, in other words than a row: On WS rows, work all sts as they appear;
// work yo's P.
var between = text.Once(`(?i)^\W*(?:(?:on|in|for) (?:all |the )?|(?:work|knit) all |all )?(ws|wrong[- ]side|even|even[- ]numbered)\s+rows?\s*[,:–-]?\s+(?:(as|(?:work |knit )?(?:all )?(?:the )?(?:sts|stitches) as) they (?:appear|present|face|come|lie)|(?:p|purl)(?: all)?(?: sts| stitches)? and (?:all )?(?:yo|yarn over)['’]?s)[^.]{0,40}\.?$`)

// behindRow is a row behind whose work it is said that others are worked so: Row 1: Purl all odd rows on (WS). Row 2: K2, p to end – and every
// following wrong side row.
var behindRow = text.Once(`(?i)^(\W*(?:row|rnd|round) \d+)\s*((?:\((?:rs|ws|right side|wrong side)\))?)\s*[:.–—-]?\s*((?:\((?:rs|ws)\) *)?)(?:(knit|purl|k|p)\b[,.]?|(.+?)(?: [–—-]|[.;])) ?(?:and )?(?:on |for )?(?:all|every|each) (?:following |foll\.? |subsequent |other )?(odd|even|ws|rs|wrong[- ]side|right[- ]side|alternate|alt)(?:[- ]numbered)? (?:rows?|rnds?|rounds?)((?: on)? ?\(?(?:ws|rs)\)?)?(?: thereafter| throughout)?[).]*\s*$`)

// intoRing is what a round of stitches goes into, told as a sentence before them: Round 1: Work all sts into a magic ring: ch 3, 11 dc.
var intoRing = text.Once(`(?i)(: *)(?:work|crochet|make) all (?:of )?(?:the |these )?(?:sts|stitches) (?:in|into|inside) `)

// rowsBetween is a line that tells how all rows of one side are worked, as the row that it is.
func (r *Reader) rowsBetween(raw string) string {
	if r.crochet || !text.Has(raw, "row") {
		return raw
	}
	if m := behindRow().FindStringSubmatch(raw); m != nil {
		side := strings.Trim(m[2]+m[3]+m[7], "() on")
		if side != "" {
			side = " (" + side + ")"
		}
		return m[1] + " and all " + m[6] + " rows" + side + ": " + m[4] + m[5]
	}
	m := between().FindStringSubmatch(raw)
	switch {
	case m == nil:
		return raw
	case m[2] == "":
		return "All " + m[1] + " rows: purl."
	}
	return "All " + m[1] + " rows: work sts as they appear."
}

// otherHand reports whether a line is a row once more, as it is worked in the second of a pair: Left mitten: K18 …, Right mitten: K20 …
func otherHand(row, t []text.Token) bool {
	if len(t) < 4 || !t[0].Is("left", "right") || !t[2].Is(":", "-", "--") {
		return false
	}
	for i := range row {
		if row[i].Is("left", "right") && row[i].S != t[0].S && near(row, i+1).Is(t[1].S) && near(row, i+2).Is(":", "-", "--") {
			return true
		}
	}
	return false
}

// dividing is a line that begins with what a division is for and then works it as a row, with the name of one: Divide for sleeves: K20,
// place next 30 sts on holder, cast on 6 sts, k to end.
func (r *Reader) dividing(t []text.Token) []text.Token {
	if len(t) < 4 || !t[0].Is("divide", "separate", "split", "dividing", "separating") {
		return t
	}
	k := 1
	for k < min(len(t)-2, 10) && t[k].Kind == 'w' {
		k++
	}
	last, side := t[k-1].S, k
	if near(t, k).Is("(", "[") && near(t, k+1).Is("rs", "ws") && near(t, k+2).Is(")", "]") && k+4 < len(t) { // (RS):
		k += 3
	}
	rest := t[k+1:]
	if _, row := text.RowWord(last); row || !t[k].Is(":") || !isStar(&rest[0]) && !(r.crochet && rest[0].Is("ch", "sc", "dc", "hdc", "tr")) && !rest[0].Is("k", "knit", "p", "purl", "work", "place", "slip", "sl", "put", "remove", "removing", "with") {
		return t
	}
	works := r.crochet || slices.ContainsFunc(rest, func(t text.Token) bool { return isStar(&t) || t.Is("co", "cast", "to", "across") })
	if _, row := text.RowWord(rest[min(1, len(rest)-1)].S); !works || row {
		return t
	}
	next, name := t[0], t[1]
	next.S, name.S = "dividing", "row"
	if r.inRounds() {
		name.S = "rnd"
	}
	return append([]text.Token{next, name}, t[side:]...)
}

// inRounds reports whether the last row with a name was a round.
func (r *Reader) inRounds() bool {
	for i := len(r.sec.Lines) - 1; i >= 0; i-- {
		if l := r.sec.Lines[i].Label; l != nil {
			return l.Round
		}
	}
	return r.roundR
}

// takes takes a line that goes on with what is gathered, or that is the row of it once more for the other of a pair: that is worked for
// no size.
func (r *Reader) takes(raw string, tokens []text.Token, label *ins.Label, k int, step bool, n int) bool {
	switch {
	case label == nil && r.labelled() && otherHand(r.tokens, tokens):
		r.flush()
		r.only, r.inline, r.tokens = []int{}, true, tokens
	case r.further(raw, tokens, label, k, step):
		r.tokens = r.together(tokens, n)
	default:
		return false
	}
	r.raw = raw
	return true
}

// nextStep is a line without its number, if it is the next item of a numbered list of what is done in the row whose label stands
// alone above it, and whether it is that.
func (r *Reader) nextStep(t []text.Token) ([]text.Token, bool) {
	if !r.alone || len(r.tokens) == 0 || len(t) < 3 || t[0].Kind != 'n' || t[0].Num.By != nil || t[0].Num.All != r.steps+1 || !t[1].Is(".", ")") {
		return t, false
	}
	if _, row := text.RowWord(r.tokens[0].S); !row {
		return t, false
	}
	r.steps++
	return t[2:], true
}

// titled takes a line that is the title of the text, or of a piece behind the number of its picture, or a numbered one that is no row.
func (r *Reader) titled(trimmed string, label *ins.Label, t []text.Token, n int) bool {
	if r.named(trimmed, n) {
		r.flush()
		r.raw = ""
		r.x.Title = strings.Trim(trimmed, "#*_ ")
		r.x.Read.Words++
		return true
	}
	if label == nil {
		return false
	}
	if r.proseStep(t) {
		return true
	}
	if !strings.ContainsAny(trimmed, "-–—") {
		return false
	}
	title := numberedTitle().FindStringSubmatch(trimmed)
	if title == nil || r.instruction(title[1]) {
		return false
	}
	r.flush()
	r.raw = ""
	return r.heading(title[1], n)
}

// numberedTitle is a heading behind the number of its picture, as it was printed once: 251.--Crochet Lace.
var numberedTitle = text.Once(`^(?:(?:No|Fig)\. ?)?\d{1,4}(?: (?:to|and) \d{1,4})? ?\.? ?(?:--|—|–) ?([A-Z][A-Za-z' -]+?)\.?$`)

// withoutMark is a line without the star behind its last stop, which ends rows that are repeated.
func withoutMark(raw string) string {
	if s := strings.TrimRight(raw, "* "); strings.HasSuffix(s, ".") || strings.HasSuffix(s, "]") && strings.HasSuffix(raw, "**") {
		return s
	}
	return raw
}

// forSizes takes the sizes that words say a stretch is for: those of the size line that stand in them.
func (r *Reader) forSizes(said string, inline bool) {
	r.only, r.some, r.inline, r.lately = nil, false, inline, 0
	if text.AllSizes(said) {
		return
	}
	signs := " ,:()&+/"
	if slices.ContainsFunc(r.x.Sizes.Names, func(n string) bool { return strings.Contains(n, "/") }) {
		signs = " ,:()&+"
	}
	words := " " + strings.Join(strings.FieldsFunc(strings.ToLower(said), func(c rune) bool { return strings.ContainsRune(signs, c) }), " ") + " "
	names := slices.Clone(r.x.Sizes.Names)
	slices.SortFunc(names, func(a, b string) int { return len(b) - len(a) })
	for _, name := range names {
		if k := strings.ToLower(name); k != "" && strings.Contains(words, " "+k+" ") {
			words = strings.ReplaceAll(words, " "+k+" ", " ")
			r.only = append(r.only, slices.Index(r.x.Sizes.Names, name))
		}
	}
	if len(r.only) == 0 {
		r.only = sizesByPlace(text.Lex(said, 1), len(r.x.Sizes.Names))
	}
	slices.Sort(r.only)
	if r.lately, r.some = len(r.only), len(r.only) == 0; r.some {
		r.x.Unsized = true
	}
}

// sizesByPlace are the sizes that words name by their place among all: First, Second and Last Sizes only; the last 2 sizes; the two smallest
// sizes; the second largest size. A range of places is not read.
func sizesByPlace(t []text.Token, all int) (list []int) {
	many := func(i int) int {
		if k := near(t, i); k.Kind == 'n' {
			return k.Num.All
		}
		return max(numerals[near(t, i).S], 1)
	}
	for i := range t {
		from, n := all, 0
		switch {
		case t[i].Is("to", "-", "through"):
			return nil
		case t[i].Is("last"):
			n = many(i + 1)
			from = all - n
		case t[i].Is("first"):
			from, n = 0, many(i+1)
		case t[i].Is("smallest", "largest") && near(t, i-1).Ord > 0:
			if from, n = t[i-1].Ord-1, 1; t[i].Is("largest") {
				from = all - t[i-1].Ord
			}
		case t[i].Is("smallest"):
			from, n = 0, many(i-1)
		case t[i].Is("largest"):
			n = many(i - 1)
			from = all - n
		case t[i].Ord > 0 && !near(t, i+1).Is("smallest", "largest"):
			from, n = t[i].Ord-1, 1
		}
		if n > 0 && (from < 0 || from+n > all) {
			return nil
		}
		for ; n > 0; n-- {
			list = append(list, from)
			from++
		}
	}
	return list
}

// numbers are the tokens of a line, each line of numbers with one a size: of those that a stretch is for, if it is for
// some alone.
func (r *Reader) numbers(raw string) []text.Token {
	all := len(r.x.Sizes.Names)
	if r.only == nil || len(r.only) == all {
		return text.Lex(raw, all)
	}
	if tokens := text.Lex(raw, all); slices.ContainsFunc(tokens, func(t text.Token) bool { return len(t.Num.By) == all }) && !slices.ContainsFunc(tokens, func(t text.Token) bool { return t.Short > 0 }) {
		return tokens // with a dash for a size that has none
	}
	tokens := text.Lex(raw, len(r.only))
	if slices.ContainsFunc(tokens, func(t text.Token) bool { return t.Short > 0 }) {
		return text.Lex(raw, all)
	}
	r.spread(tokens)
	return tokens
}

// spread puts the numbers of some sizes into their places among all.
func (r *Reader) spread(tokens []text.Token) {
	for i := range tokens {
		t := &tokens[i]
		r.spread(t.Sub)
		if len(t.Num.By) != len(r.only) {
			continue
		}
		by := make([]int, len(r.x.Sizes.Names))
		for k := range by {
			by[k] = ins.None
		}
		for k, size := range r.only {
			by[size] = t.Num.By[k]
		}
		t.Num.By = by
	}
}

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

// blank takes a blank line, which ends what is gathered unless a row goes on behind it.
func (r *Reader) blank(n int) {
	r.x.Read.Blank++
	if r.unended() && (r.alone || n < len(r.x.Src) && starRest().MatchString(r.x.Src[n])) || r.bracketOpen(n) || n < len(r.x.Src) && r.nextNeedle(text.Lex(r.x.Src[n], 1)) {
		return
	}
	if r.labelled() && !strings.ContainsAny(r.raw[len(r.raw)-1:], ".:)]}!?") && r.goesOn(n) || r.sizesGoOn(n) || n < len(r.x.Src) && r.countBelow(r.x.Src[n]) {
		return
	}
	r.flush()
	r.raw = ""
}

// countAlone is a count on a line of its own: 16 (18, 18) sc.
var countAlone = text.Once(`(?i)^\s*\d+(?: ?[(\[][\d, :]+[)\]])* ?(?:[sdt]c|tr|h[dt][cr]|sts?|stitches)\.?\s*$`)

// countBelow reports whether a line is the count of the row that is gathered, which states none.
func (r *Reader) countBelow(raw string) bool {
	return countAlone().MatchString(raw) && r.labelled() && strings.ContainsAny(r.raw[len(r.raw)-1:], ".") && !endsInCount().MatchString(r.raw)
}

// endsInCount is a row that states its count at its end.
var endsInCount = text.Once(`(?i)(?:\d ?(?:[sdt]c|tr|h[dt][cr]|sts?|stitches)?\.?|[\d ] ?(?:[sdt]c|tr|h[dt][cr]|sts?|stitches)? ?[)\]]\.?)\s*$`)

// bracketOpen reports whether what is gathered has a bracket that a line behind the blank one closes.
func (r *Reader) bracketOpen(n int) bool {
	if n >= len(r.x.Src) || !r.labelled() || len(r.tokens) > 400 || text.CountOpen(r.raw) {
		return false
	}
	open := 0
	for i := range r.tokens {
		switch {
		case r.tokens[i].Is("(", "["):
			open++
		case r.tokens[i].Is(")", "]"):
			open--
		}
	}
	if next := r.x.Src[n]; open > 0 && strings.ContainsAny(next, ")]") && text.Open("("+next[:strings.IndexAny(next, ")]")]) {
		r.raw += " ("
		return true
	}
	return false
}

// further reports whether a line goes on with what is gathered, as a step of it does, or tells its next needle.
func (r *Reader) further(raw string, tokens []text.Token, label *ins.Label, k int, step bool) bool {
	return step || r.tokens != nil && (r.nextNeedle(tokens) || r.goes(raw, tokens, label, k))
}

// goes reports whether a line goes on with what is gathered; its label has k tokens.
func (r *Reader) goes(raw string, tokens []text.Token, label *ins.Label, k int) bool {
	goes, trimmed := text.GoesOn(r.raw, raw) || label == nil && (r.sizesGoOn(tokens[0].Line-1) || r.countBelow(raw)), strings.TrimSpace(raw)
	if r.explains(raw, trimmed) {
		goes = false
	}
	if label == nil {
		return goes || r.mode == "" && (r.alone || r.unended() || r.stepOf(raw, tokens) || r.cutRow(tokens)) && !r.heads(trimmed)
	}
	last := near(r.tokens, len(r.tokens)-1)
	if leadsOver(r.tokens) || tokens[0].Kind == 'n' && last.Is("next", "following", "foll") || k == len(tokens) && !tokens[k-1].Is(":") && text.GoesOn(r.raw, raw) { // at beg of next / 2 rows; repeat / Row 2
		return true
	}
	small := k < 3 && text.GoesOn(r.raw, raw) && !tokens[0].Cap && tokens[0].Kind == 'w' && tokens[0].Ord == 0
	return goes && (text.Open(r.raw) && !text.CountOpen(r.raw) || label.Name != "" && unicode.IsLower([]rune(trimmed)[0]) || small)
}

// leadsOver reports whether words end in one that the name of a row follows: repeat the 4th and / 5th rows; not: until piece measures 4 in.
func leadsOver(t []text.Token) bool {
	last, n := near(t, len(t)-1), near(t, len(t)-2)
	return last.Is("and", "to", "the", "of", "from", "through", "like", "as") || last.Is("in") && n.Kind != 'n' && n.Kind != 'f'
}

// closesRow is where a row of crochet ends, closesRound where a round does: join with sl st in first sc, sl st to top of ch 3. A
// labelLine begins the next one.
var (
	closesRow   = text.Once(`(?i)\b(?:turn|join)\b`)
	closesRound = text.Once(`(?i)\bjoin(?:ed|ing)?\b[^.;*]{0,40}\b(?:first|1st|top|beg\w*|starting|\d(?:rd|th|nd)|last)\b|\b(?:sl\.? ?st|ss|slip st(?:itch)?)\b[^.;*]{0,25}\b(?:first|1st|top|beg\w*|starting|\d(?:rd|th|nd) (?:ch|of))\b|\bjoin\W*$`)
	labelLine   = text.Once(`(?i)^\W*(?:\d+(?:st|nd|rd|th) (?:row|rnd|round)|(?:next|foundation) (?:row|rnd|round)|(?:row|rnd|round)s? ?\d)`)
)

// cutRow reports whether a line without a label goes on with a row that print cut: it has not come to its end, and this line goes on with
// stitches and the end stands in it or a few lines on. A round ends where it is closed; a row is cut behind a full stop, if it runs over
// lines already or the text is in columns, and ends where it is turned.
func (r *Reader) cutRow(tokens []text.Token) bool {
	label, k, _ := text.Label(r.tokens, r.roundR)
	if label == nil || !r.crochet {
		return false
	}
	t, first, last := &tokens[0], &r.tokens[0], &r.tokens[len(r.tokens)-1]
	if label.Round && (isStar(t) || t.Is("(", "[", "rep", "repeat") || t.Kind == 'n' || verbs[t.S]) &&
		!closesRound().MatchString(strings.Join(r.x.Src[first.Line-1:t.Line-1], " ")) && r.endsAhead(t.Line, closesRound()) {
		return true
	}
	_, stitch := r.thing([]byte(t.S))
	begins := isStar(t) || stitch || t.Is("skip", "sk", "miss", "ch", "sl") || t.Kind == 'n' && near(tokens, 1).Kind == 'w'
	return begins && last.Is(".") && last.Line+1 == t.Line && (last.Line > first.Line || r.columns()) &&
		!slices.ContainsFunc(r.tokens[k:], func(t text.Token) bool { return t.Is("turn", "join", "fasten") }) && r.endsAhead(t.Line, closesRow())
}

// endsAhead reports whether a row comes to its end in the n-th line or one of the few behind it, before another begins.
func (r *Reader) endsAhead(n int, closes *text.Pattern) bool {
	const few = 8
	for k := n; k < n+few && k <= len(r.x.Src); k++ {
		line := r.x.Src[k-1]
		if strings.TrimSpace(line) == "" && strings.HasSuffix(strings.TrimSpace(r.x.Src[k-2]), ".") || labelLine().MatchString(line) {
			return false
		}
		if closes.MatchString(line) {
			return true
		}
	}
	return false
}

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

// stepOf reports whether a line is one more step of the row that is gathered: both are items of a list, or the row has no more
// than its chains so far.
func (r *Reader) stepOf(raw string, tokens []text.Token) bool {
	label, k, _ := text.Label(r.tokens, r.roundR)
	if label != nil && r.crochet && joinsAlone().MatchString(raw) {
		return true
	}
	if label == nil || !r.crochet || tokens[0].Is("fasten", "weave", "sew", "cut", "break") || !verbs[tokens[0].S] && !tokens[0].Is("in", "next", "for") {
		return false
	}
	if bulleted(raw) && bulleted(r.x.Src[r.tokens[0].Line-1]) {
		return true
	}
	return verbs[tokens[0].S] && !tokens[0].Is("rep", "repeat") && !slices.ContainsFunc(r.tokens[k:], func(t text.Token) bool {
		return t.Kind != 'n' && numerals[t.S] == 0 && !t.Is("ch", "chain", "chains", "chs", "st", "sts", "stitches", "turn", "and", ",", ".")
	})
}

// bulleted reports whether a line is an item of a list.
func bulleted(raw string) bool {
	t := strings.TrimLeft(raw, " \t")
	return strings.HasPrefix(t, "- ") || strings.HasPrefix(t, "• ") || strings.HasPrefix(t, "* ")
}

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
	if r.mode == "" && (gaugeAlone().MatchString(trimmed) || gaugeOver().MatchString(trimmed)) {
		r.x.Read.Words++
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

// firstItem begins the items of a list behind their key: Note: 1. The wrap is worked from side to side.
var firstItem = text.Once(`^\s*1[.)] ?[A-Z]`)

// howChanged tells before the rows how an increase or a decrease is made: dec: 1 sc over two stitches through the front loops only.
var howChanged = text.Once(`(?i)^(?:inc|dec|increase|decrease|inv\.? ?dec)\.? ?[:=–-] ?(?:work |make )?(?:\d |one |two )?(?:sc|hdc|dc|tr|htr|single|double|half)\b.* (?:(?:in|into) (?:one|1|the same|same) st|over |together\b|tog\b)[^.*]*\.?$`)

// gaugeAlone is a gauge on a line of its own: 11 pattern sts = 2”, 20 sts and 28 rows = 4" in stockinette st.
var gaugeAlone = text.Once(`(?i)^(?:in [\w ]{3,24}, )?\d+(?:½|¼|¾)? ?[\w ]{0,16}\b(?:sts?|stitches|rows?|rnds?|rounds?|[shd]{1,2}c)\.?(?: ?(?:=|make|measure|to) ?[\d½¼¾ ]+ ?(?:"|”|″|ins?\b|inch)[^.;]{0,12}[;.]?$| ?(?:and|&|x|/|by|,) ?\d+(?:½|¼|¾)? ?(?:rows?|rnds?|rounds?) ?(?:=|make|measure|to|over|per) ?[\d½¼¾ x]+ ?(?:"|”|″|ins?\b|inch|cm))`)

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

// ownRow reports whether a line is a row of its own, and not how all rows of one side are worked.
func ownRow(l *ins.Line) bool { return l.Label != nil && l.Label.Name != "every" }

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

// joinsRound is a row of which a remark says that it is worked in the round: Rows 1-6: (joining to knit in the round) k1, p1.
var joinsRound = text.Once(`(?i)^[^(]{0,20}\([^)]*\bjoin(?:ing)?\b[^)]*\bin the r(?:ou)?nd`)

func saysRound(line string) bool { return text.Has(line, "join") && joinsRound().MatchString(line) }

// labelled reports whether what is gathered is a row with a label.
func (r *Reader) labelled() bool {
	if len(r.tokens) == 0 || r.raw == "" {
		return false
	}
	label, _, _ := text.Label(r.tokens, r.roundR)
	return label != nil
}

// goesOn reports whether the line behind a blank one goes on with a row: texts are printed with
// a blank line after each line of the column.
func (r *Reader) goesOn(n int) bool {
	if n >= len(r.x.Src) {
		return false
	}
	next := strings.TrimSpace(r.x.Src[n])
	return next != "" && unicode.IsLower([]rune(next)[0])
}

// sizesGoOn reports whether the line behind a blank one goes on with the numbers of the other sizes: 58, and then (60, 62) sts.
func (r *Reader) sizesGoOn(n int) bool {
	if n >= len(r.x.Src) || len(r.tokens) == 0 || len(r.x.Sizes.Names) < 2 {
		return false
	}
	last := &r.tokens[len(r.tokens)-1]
	next := text.Lex(r.x.Src[n], len(r.x.Sizes.Names))
	return last.Kind == 'n' && last.Num.By == nil && len(next) > 0 && (next[0].List || next[0].Is("(", "[") && len(next) > 1 && next[1].Kind == 'n')
}

// uncut puts a word together that print has cut where the line ends: re- / peat from *.
func (r *Reader) uncut(tokens []text.Token) []text.Token {
	k := len(r.tokens) - 1
	if k < 1 || len(tokens) == 0 || !r.tokens[k].Is("-") {
		return tokens
	}
	head, rest := &r.tokens[k-1], &tokens[0]
	if head.Kind != 'w' || head.End != r.tokens[k].Col || rest.Kind != 'w' || rest.Cap || wordIDs[head.S+rest.S] == 0 {
		return tokens
	}
	head.S += rest.S
	r.tokens = r.tokens[:k]
	return tokens[1:]
}

// together are the tokens of the lines so far and of line n: a line of numbers may be cut in two.
func (r *Reader) together(tokens []text.Token, n int) []text.Token {
	tokens = r.uncut(tokens)
	if len(r.tokens) == 0 || len(r.x.Sizes.Names) < 2 || !text.Open(r.raw) && !r.sizesGoOn(n-1) {
		return append(r.tokens, tokens...)
	}
	last := r.tokens[len(r.tokens)-1].Line
	k := len(r.tokens)
	for k > 0 && r.tokens[k-1].Line == last {
		k--
	}
	first := r.x.Src[last-1]
	both := r.lex(first+" "+r.x.Src[n-1], last)
	width := len([]rune(first)) + 1
	for i := range both {
		t := &both[i]
		switch {
		case t.Col > width:
			t.Line, t.Col, t.End = n, t.Col-width, t.End-width
		case t.End > width:
			t.End = width
		}
	}
	skip := 0
	for skip < len(both) && k < len(r.tokens) && both[skip].Line == last && both[skip].Col < r.tokens[k].Col {
		skip++ // what belongs to the row before on the same line
	}
	return append(r.tokens[:k:k], both[skip:]...)
}

// withoutEchoes takes out brackets that say the word before them again: half double crochet (hdc), treble crochet (tr c), four (4);
// and brackets that say which space is meant, all but the words where groups are named: in next sp (between dc-groups).
func (r *Reader) withoutEchoes(t []text.Token) []text.Token {
	for i := len(t) - 3; i > 0; i-- {
		if t[i].Is("(") {
			t = r.withoutEcho(t, i)
		}
	}
	return t
}

// withoutEcho is t without the bracket at i, or without its signs, if it says what stands before it once more.
func (r *Reader) withoutEcho(t []text.Token, i int) []text.Token {
	to := i + 1 + slices.IndexFunc(t[i+1:], func(t text.Token) bool { return t.Is(")") })
	said := t[i+1]
	if to == i+3 && t[i+1].Kind == 'w' && t[i+2].Is("c") {
		said.S += t[i+2].S
	}
	without := func() []text.Token { return slices.Delete(slices.Clone(t), i, to+1) }
	unsigned := func() []text.Token { return slices.Delete(slices.Delete(slices.Clone(t), to, to+1), i, i+1) }
	switch {
	case to == i+2 || to == i+3 && said.S != t[i+1].S:
		names := said.Is("inc", "dec", "increase", "decrease") && t[i-1].Kind == 'p' && to+1 < len(t) && t[to+1].Is("ch", "chain") // Row 2: (INC) ch 2
		if names || r.echo(t[:i], &said) {
			return without()
		}
	case said.Is("ch", "chain") && t[max(to-1, 0)].Kind == 'n' && to <= i+4 && to+1 < len(t) && t[to+1].Is("sp", "sps", "space", "spaces", "loop", "loops", "lp", "lps", "arch", "arches"): // in next (ch 5) loop
		return unsigned()
	case to > i+2 && to <= i+6 && r.spelt(t[i-1], t[i+1:to]):
		return without()
	case !t[i-1].Is("sp", "space") || !said.Is("between") || to <= i || to > i+6:
	case t[to-1].Is("group", "groups"):
		return unsigned()
	default:
		return without()
	}
	return t
}

// spelt reports whether words in a bracket are the long name of the stitch before it: fpdc (front post double crochet).
func (r *Reader) spelt(short text.Token, long []text.Token) bool {
	name := ""
	for _, t := range long {
		if name += t.S; t.Kind != 'w' {
			return false
		}
	}
	a, ok := r.thing([]byte(short.S))
	b, ok2 := r.thing([]byte(name))
	return ok && ok2 && a.Kind != nil && a.Kind == b.Kind
}

// shortWords are the short forms of words that name no stitch.
var shortWords = map[string]string{"stitch": "st", "stitches": "sts", "space": "sp", "spaces": "sps", "round": "rnd", "rounds": "rnds", "loop": "lp", "loops": "lps", "skip": "sk", "together": "tog"}

// echo reports whether a word or a number is what the words before it say.
func (r *Reader) echo(before []text.Token, t *text.Token) bool {
	last := before[len(before)-1]
	if t.Kind == 'n' {
		return last.Kind == 'w' && numerals[last.S] > 0 && t.Num.All == numerals[last.S]
	}
	if shortWords[last.S] == t.S && t.S != "" || t.Is("inc", "increase") && r.twoOf(before) {
		return true
	}
	name := t.S
	if loop, st := r.loopAndStitch(t); loop != "" {
		name = st
	}
	short, ok := r.thing([]byte(name))
	if t.Kind != 'w' || !ok || short.Kind == nil {
		return false
	}
	if id := short.Kind.ID; (id == "kfb" || id == "pfb") && last.Is("back", "front") { // knit into the front and back (kfb)
		return slices.ContainsFunc(before[max(0, len(before)-4):], func(t text.Token) bool { return t.Is("and") })
	}
	long := ""
	for k := len(before) - 1; k >= max(0, len(before)-4) && before[k].Kind == 'w'; k-- {
		long = before[k].S + long
		if full, ok := r.thing([]byte(long)); ok && full.Kind == short.Kind && long != t.S {
			return true
		}
	}
	return false
}

// twoOf reports whether tokens end with two of a stitch of crochet, which in one place are an increase: 2 dc (inc) in next dc.
func (r *Reader) twoOf(t []text.Token) bool {
	k := len(t) - 1
	st, ok := r.thing([]byte(t[k].S))
	return ok && st.Kind != nil && st.Kind.Craft == stitch.Crochet && k > 0 && t[k-1].Kind == 'n' && t[k-1].Num.By == nil && t[k-1].Num.All == 2
}

// rowsSpelt makes numbers of words behind the word for rows, and behind a knitted stitch: Row Two: …, repeat rows four and five,
// knit one, purl one ribbing. A side has its name whole: rt sides together.
func rowsSpelt(t []text.Token) []text.Token {
	for i := 0; i+1 < len(t); i++ {
		if t[i].Is("rt") && t[i+1].Is("side", "sides") {
			t[i].S = "right"
		}
		if _, row := text.RowWord(t[i].S); !row && !t[i].Is("knit", "purl") || t[i].Kind != 'w' {
			continue
		}
		for k := i + 1; k < len(t) && numerals[t[k].S] > 0 && t[k].Kind == 'w' && !near(t, k+1).Is("time", "times", "more", "row", "rows", "st", "sts", "inch", "inches"); k += 2 {
			n := numerals[t[k].S]
			t[k].Kind, t[k].Num, t[k].S = 'n', ins.N(n), strconv.Itoa(n)
			if !near(t, k+1).Is("and", "&", "to", "-", ",") {
				break
			}
		}
	}
	return t
}

// withoutEmphasis takes out the stars round the name of a row, or round one word that its place or number follows, and the word
// before a repeat that says so once more: *Dec row (RS):* K2; *Inc* in the next 6 st; repeat *inc, sc* 4 times.
func (r *Reader) withoutEmphasis(t []text.Token) []text.Token {
	if len(t) > 4 && isStar(&t[0]) {
		k := 1 + slices.IndexFunc(t[1:], func(t text.Token) bool { return isStar(&t) })
		if l, to, _ := text.Label(t[1:], r.roundR); k > 2 && l != nil && to <= k-1 && (t[k-1].Is(":") || near(t, k+1).Is(":")) {
			t = slices.Delete(slices.Clone(t), k, k+1)[1:]
		}
	}
	for i := len(t) - 4; i >= 0; i-- {
		if _, ok := r.thing([]byte(t[i+1].S)); ok && isStar(&t[i]) && isStar(&t[i+2]) && (t[i+3].Is("in", "into") || t[i+3].Kind == 'n' && t[i+3].Line == t[i].Line && !near(t, i+4).Is("times", "x")) {
			t = slices.Delete(slices.Delete(slices.Clone(t), i+2, i+3), i, i+1)
		}
	}
	for i := 1; i+2 < len(t); i++ {
		if t[i].Is("rep", "repeat") && isStar(&t[i+1]) && !t[i+2].Is("to") && (t[i-1].Is(",", ".") || t[i-1].Kind == 'w') && timesBehind(t[i+2:]) { // sc in next 8 st, repeat *inc, sc* 4 times
			t = slices.Delete(slices.Clone(t), i, i+1)
		}
	}
	return t
}

// timesBehind reports whether a starred stretch ends in tokens with how often it is worked.
func timesBehind(t []text.Token) bool {
	k := slices.IndexFunc(t, func(t text.Token) bool { return isStar(&t) })
	return k > 0 && near(t, k+1).Kind == 'n' && near(t, k+2).Is("times", "x")
}

// withoutDoubles takes out a small word that is written twice: skip next next dc.
func withoutDoubles(t []text.Token) []text.Token {
	for i := len(t) - 1; i > 0; i-- {
		if t[i].Kind == 'w' && t[i].S == t[i-1].S && t[i].Is("next", "the", "in", "into", "to", "of", "from", "each", "last") {
			t = slices.Delete(slices.Clone(t), i, i+1)
		}
	}
	return t
}

// withoutPlurals takes out the s of a word that may be one or more: 2 dc(s).
func withoutPlurals(t []text.Token) []text.Token {
	for i := len(t) - 3; i > 0; i-- {
		if t[i].Is("(") && t[i].Glued && t[i+1].Is("s", "es") && t[i+1].Glued && t[i+2].Is(")") && t[i-1].Kind == 'w' {
			t = slices.Delete(slices.Clone(t), i, i+3)
		}
	}
	return t
}

// inTo joins the words of a place that are written apart: sl st in to next st.
func inTo(t []text.Token) []text.Token {
	for i := len(t) - 3; i >= 0; i-- {
		if t[i].Is("in") && t[i+1].Is("between") && (t[i+2].Kind == 'n' || t[i+2].Is("next", "each", "the", "first", "last")) && i > 0 && !t[i-1].Is("st", "sts", "stitches") {
			t = slices.Delete(slices.Clone(t), i, i+1)
			continue
		}
		if t[i].Is("in") && t[i+1].Is("to") && (t[i+2].Is("next", "each", "same", "the", "last", "ring", "top", "every") || t[i+2].Ord > 0) {
			one := t[i]
			one.S, one.End = "into", t[i+1].End
			t = slices.Delete(slices.Clone(t), i, i+1)
			t[i] = one
		}
	}
	return t
}

// half are the stitches that a half before them makes others.
var half = map[string]string{"dc": "hdc", "tr": "htr"}

// halves joins the two words of a half stitch: half dc.
func halves(t []text.Token) []text.Token {
	for i := len(t) - 2; i >= 0; i-- {
		if !t[i].Is("half") {
			continue
		}
		if t[i+1].Is("d") && near(t, i+2).Is("c") { // half d c
			one := t[i]
			one.S, one.End = "hdc", t[i+2].End
			t = slices.Delete(slices.Clone(t), i, i+2)
			t[i] = one
			continue
		}
		if short := half[t[i+1].S]; short != "" {
			one := t[i]
			one.S, one.End = short, t[i+1].End
			t = slices.Delete(slices.Clone(t), i, i+1)
			t[i] = one
		}
	}
	return t
}

// longs are the long stitches of old books, by their first letters, in either terms. Common practice.
var longs = map[stitch.Terms]map[string]string{stitch.US: {"": "dc", "d": "tr", "t": "dtr"}, stitch.UK: {"": "tr", "d": "dtr", "t": "trtr"}}

// spelt joins the letters of old books: c s is a chain stitch, l s a long stitch, d l s a double long one; and takes 3
// plain of them as the least stitch that makes a row.
func spelt(t []text.Token, terms stitch.Terms) []text.Token {
	for i := len(t) - 1; i > 0; i-- {
		from, name := i-1, ""
		switch {
		case t[i].Is("s") && t[i-1].Is("c"):
			name = "ch"
		case t[i].Is("s") && t[i-1].Is("l"):
			first := near(t, i-2)
			if name = longs[terms][first.S]; first.Is("d", "t") {
				from--
			} else {
				name = longs[terms][""]
			}
		case t[i].Is("long") && (t[i-1].Kind == 'n' || t[i-1].Is("more") && isNumber(near(t, i-2)) || numerals[t[i-1].S] > 0 || t[i-1].Is("double", "treble") && isNumber(near(t, i-2))) && !near(t, i+1).Is("stitch", "st", "treble", "sc", "dc", "loop", "loops"): // 5 long
			if from, name = i, longs[terms][""]; t[i-1].Is("double", "treble") {
				from, name = i-1, longs[terms][t[i-1].S[:1]]
			}
		case longLetter(t, i): // 1 l., 2 ch.
			from, name = i, longs[terms][""]
		case t[i].Is("plain") && t[i-1].Kind == 'n' && !near(t, i+1).Is("row", "rows", "rnd", "rnds", "round", "rounds", "st", "sts"):
			from, name = i, map[stitch.Terms]string{stitch.US: "sc", stitch.UK: "dc"}[terms]
		}
		if name == "" {
			continue
		}
		one := t[from]
		one.S, one.End = name, t[i].End
		t = slices.Delete(slices.Clone(t), from, i)
		t[from] = one
	}
	return t
}

// longLetter reports whether the letter at i is a long stitch of old books: 1 l., 2 ch.
func longLetter(t []text.Token, i int) bool {
	if !t[i].Is("l") || t[i].Cap || t[i-1].Kind != 'n' || t[i-1].Num.By != nil {
		return false
	}
	next := near(t, i+1)
	return next.Kind == 'p' || next.Is("in", "into", "on", "over", "of", "worked", "")
}

// loopsApart parts a stitch from the loop that it is run together with, and a chain from its space: blsc is bl sc, chsp
// is ch sp.
func (r *Reader) loopsApart(t []text.Token) []text.Token {
	for i := 0; i < len(t); i++ {
		loop, st := r.loopAndStitch(&t[i])
		if s, ok := strings.CutPrefix(t[i].S, "chs"); ok && t[i].Kind == 'w' && (s == "p" || s == "ps" || s == "pace" || s == "paces") {
			loop, st = "ch", t[i].S[2:]
		}
		if loop == "" {
			continue
		}
		first, second := t[i], t[i]
		first.S, second.S = loop, st
		first.End = first.Col + len(loop)
		second.Col, second.Glued, second.Cap = first.End, true, false
		t = slices.Insert(slices.Clone(t), i, first)
		t[i+1] = second
		i++
	}
	return t
}

// loopAndStitch are the loop and the stitch of a word in which they are run together: blsc, scblo; empty if it is none.
func (r *Reader) loopAndStitch(t *text.Token) (loop, name string) {
	if t.Kind != 'w' || len(t.S) < 4 || len(t.S) > 7 {
		return "", ""
	}
	loop, name = stitch.LoopApart(t.S, func(name string) bool {
		k, ok := r.thing([]byte(name))
		return ok && k.Kind != nil && k.Kind.Craft == stitch.Crochet
	})
	if loop != "" {
		if _, whole := r.thing([]byte(t.S)); whole {
			return "", ""
		}
	}
	return loop, name
}

// withoutBullets takes the signs of lists and bold print from the beginning of a line.
func (r *Reader) withoutBullets(tokens []text.Token) []text.Token {
	for len(tokens) > 1 && (text.Bullet(&tokens[0]) || strings.HasPrefix(tokens[0].S, "**") && tokens[0].Kind == 'p') {
		bold := tokens[0].Is("**")
		at := slices.IndexFunc(tokens[1:], func(t text.Token) bool { return t.Is("**") })
		if l, _, _ := text.Label(tokens[1:], r.roundR); bold && at < 0 && l != nil { // ** Row 1: … rep from **
			break
		}
		tokens = tokens[1:]
		if bold && at >= 0 { // **Row 1:** of a marked-up text
			tokens = slices.Delete(slices.Clone(tokens), at, at+1)
		}
	}
	return tokens
}

// lex cuts a line into tokens, without bullets and the bars of a table.
func (r *Reader) lex(raw string, n int) []text.Token {
	tokens := r.numbers(raw)
	r.crossStars(tokens)
	tokens = r.withoutEmphasis(r.withoutBullets(tokens))
	tokens = r.renamed(oneStitch(withoutPlurals(r.withoutEchoes(rowsSpelt(sizesSpelt(spelledOut(withoutDoubles(withoutItem(tokens)))))))))
	if r.crochet {
		tokens = r.loopsApart(spelt(halves(inTo(tokens)), r.x.Terms))
	}
	for i := range tokens {
		tokens[i].Line = n
	}
	if !r.crochet {
		ridges(tokens)
		tokens = endsIn(patternOver(liftedUp(tokens)))
	}
	tokens = withoutAside(tokens, !r.crochet)
	if k := len(tokens) - 1; k >= 0 && (tokens[k].Is("|") || k > 1 && strings.HasPrefix(tokens[k].S, "**") && tokens[k-1].Is(".", ")", "]")) { // 54 sts. **
		tokens = tokens[:k]
	}
	return tokens
}

// withoutItem takes the number of a list's item off a line that has a label of its own, or that ends the work:
// 2. Round 1: Ch 1, 8 sc in ring; 5. Fasten off.
func withoutItem(t []text.Token) []text.Token {
	if len(t) > 4 && t[0].Kind == 'n' && t[1].Cap && t[2].Kind == 'n' { // 3 Row 5: k to end
		if _, row := text.RowWord(t[1].S); row && (t[3].Is(":", ".", ")") || t[3].Is("(") && sideAhead(t[4:])) {
			return t[1:]
		}
	}
	if len(t) < 4 || t[0].Kind != 'n' || !t[1].Is(".", ")") || !t[2].Cap {
		return t
	}
	if _, row := text.RowWord(t[3].S); row && t[2].Is("next") { // 3. Next row, k2, yo, k2
		return t[2:]
	}
	if _, row := text.RowWord(t[2].S); row && t[3].Kind == 'n' || t[2].Is("fasten", "weave", "cut", "break") {
		return t[2:]
	}
	return t
}

// sideAhead reports whether a side of the work stands there: RS).
func sideAhead(t []text.Token) bool { return t[0].Is("rs", "ws", "right", "wrong") }

// oneStitch parts 1st where it can only be 1 st: cast on 1st, dec 1st at each end.
func oneStitch(t []text.Token) []text.Token {
	for i := len(t) - 1; i > 0; i-- {
		if t[i].S != "1st" || t[i].Ord != 1 || !t[i-1].Is("on", "off", "inc", "dec", "increase", "decrease", "add", "miss", "skip", "sk", "slip", "sl") || !near(t, i+1).Is(",", ".", ";", "at", "each", "both", "on") && i+1 < len(t) {
			continue
		}
		one, st := t[i], t[i]
		one.Kind, one.S, one.Ord, one.Num, one.End = 'n', "1", 0, ins.N(1), t[i].Col+1
		st.S, st.Ord, st.Col, st.Glued = "st", 0, one.End, true
		t = slices.Insert(slices.Clone(t), i, one)
		t[i+1] = st
	}
	return t
}

// renamed puts the name of the trade for a name that the text has for a turn within the row: WTS.
func (r *Reader) renamed(t []text.Token) []text.Token {
	if len(r.wraps) == 0 {
		return t
	}
	for i := range t {
		if t[i].Kind == 'w' && r.wraps[t[i].S] {
			t[i].S = "wt"
		}
	}
	return t
}

// wraps reports whether words say how the work is turned within the row: bring yarn to front, sl next st, turn work.
func wraps(words string) bool {
	low := strings.ToLower(words)
	return strings.Contains(low, "turn") && (strings.Contains(low, "slip") || strings.Contains(low, "sl ")) && (strings.Contains(low, "yarn") || strings.Contains(low, "wrap"))
}

// withoutAside takes out a bracket in which is told what becomes of the work, or what is meant: (the 2 purl stitches will form
// a seam), (e.g. 2 dc in 1st st, 1 dc in 2nd and so on). In crochet a chain may become a stitch: (this will be the first dc).
func withoutAside(t []text.Token, knitted bool) []text.Token {
	for i := range t {
		if !t[i].Is("(") {
			continue
		}
		to := i + 1
		for to < len(t) && !t[to].Is(")", "(") {
			to++
		}
		if near(t, to).Is(")") && (explains(t[i+1:to]) || knitted && (becomes(t[i+1:to]) || slipsAll(t[i+1:to]) || i > 1 && t[i-1].Is("cable") && slices.ContainsFunc(t[i+1:to], func(k text.Token) bool { return k.Is("cable") }))) {
			return slices.Concat(t[:i], t[to+1:])
		}
	}
	return t
}

// slipsAll reports whether words in a bracket tell how all stitches are slipped: (Slip all stitches purlwise.)
func slipsAll(t []text.Token) bool {
	return len(t) > 3 && t[0].Is("slip", "sl") && t[1].Is("all") && !slices.ContainsFunc(t, func(k text.Token) bool { return k.Kind == 'n' })
}

// becomes reports whether words in a bracket tell what becomes of the work.
func becomes(t []text.Token) bool {
	for k := range t {
		if t[k].Is("will") && near(t, k+1).Is("create", "form", "make", "look", "curl", "become", "give", "be") {
			return true
		}
	}
	return false
}

// explains reports whether words in a bracket say by example what is said before it. A count alone is one: (i.e. 12 sts).
func explains(t []text.Token) bool {
	if len(t) < 8 {
		return false
	}
	return t[0].Is("eg", "ie") || t[0].Is("e", "i") && t[1].Is(".") && t[2].Is("g", "e") || t[0].Is("for") && t[1].Is("example", "instance") || t[0].Is("that") && t[1].Is("is")
}

// endsIn takes the stitches that a row ends in as those that it ends with: rep from * across, end in k6, p2.
func endsIn(t []text.Token) []text.Token {
	for i := 0; i+3 < len(t); i++ {
		if t[i].Is("end", "ending", "ends") && t[i+1].Is("in") && t[i+2].Is("k", "p") && t[i+3].Kind == 'n' {
			t[i+1].S = "with"
		}
	}
	return t
}

// patternOver takes over behind a pattern's name as the words that it is, and no yarn over: work lace pattern over body.
func patternOver(t []text.Token) []text.Token {
	for i := 1; i+1 < len(t); i++ {
		if t[i].Is("over") && t[i-1].Is("pattern", "patt", "pat", "motif", "chart", "sequence", "rib", "ribbing") && t[i+1].Kind == 'w' && !t[i+1].Is("k", "p", "narrow", "knit", "purl") {
			t[i].S = "across"
		}
	}
	return t
}

// liftedUp takes a strand that is picked up and knitted, in the letters that some have for it, as the stitch made that it is: p/u & k1 tbl.
func liftedUp(t []text.Token) []text.Token {
	for i := 0; i+3 < len(t); i++ {
		k := i + 1
		if t[i].Is("p") && t[k].Is("/") && t[k+1].Is("u") {
			k += 2
		} else if !t[i].Is("pu") {
			continue
		}
		if !near(t, k).Is("&", "and") || !near(t, k+1).Is("k", "knit") {
			continue
		}
		for k += 2; near(t, k).Is("tbl", "it") || near(t, k).Kind == 'n' && near(t, k).Num.By == nil && near(t, k).Num.All == 1; {
			k++
		}
		one := t[i]
		one.S, one.End = "m1", t[k-1].End
		t = slices.Concat(t[:i], []text.Token{one}, t[k:])
	}
	return t
}

// ridges takes ridges of garter stitch as the two rows that each is: 5 ridges even, every 9th ridge.
func ridges(t []text.Token) {
	for i := 1; i < len(t); i++ {
		k := i - 1
		for k > 0 && t[k].Is("garter", "st", "stitch") { // 5 garter ridges
			k--
		}
		n := &t[k]
		if !t[i].Is("ridge", "ridges") || i+1 < len(t) && t[i+1].Is("row", "rows", "st", "stitch", "pattern") {
			continue
		}
		switch {
		case n.Kind == 'n' && n.Num.By == nil:
			n.Num.All *= 2
		case n.Ord > 0:
			n.Ord *= 2
		case n.Kind == 'w' && numerals[n.S] > 0:
			n.Kind, n.Num = 'n', ins.N(2*numerals[n.S])
		case n.Is("each", "every"):
			n.S, t[i].S = "alternate", "row"
			continue
		default:
			continue
		}
		t[i].S = "rows"
	}
}

// unended reports whether the line so far is a label alone, or has a stretch that is not repeated yet.
func (r *Reader) unended() bool {
	_, k, _ := text.Label(r.tokens, r.roundR)
	return k > 0 && (k == len(r.tokens) || openStar(r.tokens[k:]))
}

// openStar reports whether a star begins a stretch that nothing repeats or ends yet.
func openStar(t []text.Token) bool {
	at := slices.IndexFunc(t, func(k text.Token) bool { return isStar(&k) })
	if at < 0 || near(t, at+1).Kind == 'n' && near(t, at+2).Kind != 'w' { // (sc, dec) * 6 = 12
		return false
	}
	sign := t[at].S
	return !slices.ContainsFunc(t[at+1:], func(k text.Token) bool {
		return k.Kind == 'p' && k.S == sign || k.Is("rep", "repeat", "repeating", "rpt")
	})
}

// furniture is a line that stands at the head or the foot of every page: an address, whose it is, which page.
var furniture = text.Once(`(?i)^\W*(?:www\.|https?://)\S+|\bpage \d+ (?:of|/) \d+\b|^\W*(?:copyright )?(?:©|\(c\)) ?(?:19|20)\d\d\b|© ?(?:19|20)\d\d .{0,60}$`)

// otherStart leads to another way to work what stands before it: Alternate way to begin: ch 2, 6 sc in 2nd ch from hook. Not one of rows.
var otherStart = text.Once(`(?i)^\W*(?:alternat(?:e|ive|ively)|another (?:way|option|method)|option(?:ally)?|or|if you (?:prefer|like|wish|want|do not|don['’]t|can['’]t|cannot))\b[^:.\d]{0,40}: ?\S|^\W*optional ?: ?\S`)

func offersOther(line string) bool {
	at := otherStart().FindStringIndex(line)
	return at != nil && !slices.ContainsFunc(strings.Fields(line[:at[1]]), func(w string) bool {
		_, row := text.RowWord(strings.ToLower(strings.Trim(w, ":")))
		return row
	})
}

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

// heads reports whether a line is a heading.
func (r *Reader) heads(trimmed string) bool {
	_, marked, ok := text.Heading(trimmed)
	return ok && (marked || !r.instruction(trimmed))
}

// rowsWithin is a paragraph that holds rows behind its beginning: To begin, ch 95, turn. 1st row: 1 dc in 6th ch. 2nd row: …
var rowsWithin = text.Once(`(?i)[.;)] (?:1st|first|foundation) (?:row|rnd|round) ?[:.].*[.;)] (?:2nd|2d|second) (?:(?:and|to) [\w ]{3,10})?(?:rows?|rnds?|rounds?) ?[:.]`)

// working reports whether a line within a section of words begins the work again.
func (r *Reader) working(label *ins.Label, tokens []text.Token) bool {
	if r.noteItem(label, tokens) {
		return false
	}
	if label != nil {
		if r.mode == "stitches" && r.crochet && (label.From.All == 1 && label.From.By == nil && !label.Next || label.Name != "" && founds[label.Name]) { // the rows of a stitch pattern
			if len(r.sec.Lines) > 0 || r.sec.Name != "" {
				r.section(&ins.Section{})
			}
			return true
		}
		if r.mode == "stitches" && !r.patterns && (label.Name != "" && founds[label.Name] || label.From.All == 1 && r.behindNames(tokens[0].Line)) {
			return true
		}
		return r.mode != "stitches" && (!label.Next || founds[label.Name]) && label.Name != "every"
	}
	return r.workBegins(tokens)
}

// founds are names of rows with which work begins; a next row without a name goes on from what no row says.
var founds = map[string]bool{"foundation": true, "set up": true, "preparation": true, "base": true, "": true}

// behindNames reports whether a line stands behind a blank one or the last of a list of abbreviations.
func (r *Reader) behindNames(n int) bool {
	if n < 2 {
		return false
	}
	above := strings.TrimSpace(r.x.Src[n-2])
	return above == "" || text.Means(above) || describes(above)
}

// workBegins reports whether a line without a label begins the work: it founds a piece, or holds rows.
func (r *Reader) workBegins(tokens []text.Token) bool {
	if rowsWithin().MatchString(r.x.Src[tokens[0].Line-1]) {
		return true
	}
	if r.mode == "gauge" && !slices.ContainsFunc(tokens, func(t text.Token) bool { return t.Is("cast") }) {
		return false
	}
	return r.founds(tokens) || r.mode == "words" && r.picksUp(tokens)
}

// picksUp reports whether a line of finishing begins a band: Neckband: Sew right shoulder seam. Pick up and knit 80 sts around neck.
func (r *Reader) picksUp(t []text.Token) bool {
	if !slices.ContainsFunc(t, func(t text.Token) bool { return t.Is("pick") }) {
		return false
	}
	if name, _, ok := text.Inline(strings.TrimSpace(r.x.Src[t[0].Line-1])); ok {
		t = t[min(len(strings.Fields(name))+1, len(t)-1):]
	}
	p := r.parser(t, &ins.Line{At: ins.Span{Line: t[0].Line, Col: t[0].Col, End: t[0].End}})
	list := p.sequence()
	return len(p.line.Unread) == 0 && slices.ContainsFunc(list, func(n ins.Item) bool {
		k, ok := n.(*ins.PickUp)
		return ok && k.N.Set()
	})
}

// noteItem reports whether a line is an item of notes or materials with its number, and no row: 2. One motif is 3 dc; 1. 2 balls of DK.
func (r *Reader) noteItem(label *ins.Label, tokens []text.Token) bool {
	_, k, _ := text.Label(tokens, r.roundR)
	if r.mode != "notes" && r.mode != "words" || label == nil || tokens[0].Kind != 'n' || k >= len(tokens) {
		return false
	}
	line := &ins.Line{At: ins.Span{Line: tokens[0].Line, Col: 1, End: 2}}
	list := r.parser(tokens[k:], line).sequence()
	return len(line.Unread) > 0 || !working(list)
}

// proseStep takes a numbered line that names no stitch and counts none: 1. Flatten and smooth out the bag.
func (r *Reader) proseStep(t []text.Token) bool {
	const k = 2
	if len(t) < 6 || t[0].Kind != 'n' || t[0].Num.By != nil || !t[1].Is(".", ")") || !t[k].Cap {
		return false
	}
	p := r.parser(t, &ins.Line{})
	for i := k; i < len(t); i++ {
		_, row := text.RowWord(t[i].S)
		if row || t[i].Kind == 'n' || isStar(&t[i]) || weighty[t[i].S] || t[i].Is("turn", "join", "st", "sts", "stitch", "stitches", "cast", "bind", "fasten", "ring", "circle", "magic") || p.thingAt(i) && !loose[t[i].S] {
			return false
		}
	}
	r.flush()
	r.raw = ""
	r.x.Read.Words++
	return true
}

// founds reports whether a line within words casts on, or chains a foundation: the work begins with it.
func (r *Reader) founds(tokens []text.Token) bool {
	t := &tokens[0]
	if !t.Cap && t.Kind != 'n' || !r.mayFound(tokens) {
		return false
	}
	p := r.parser(tokens, &ins.Line{At: ins.Span{Line: t.Line, Col: t.Col, End: t.End}})
	list := slices.DeleteFunc(p.sequence(), is[*ins.Nothing])
	if len(list) == 0 || len(p.line.Unread) > 0 && r.mode != "words" && !(t.Is("cast", "co") && p.line.Unread[0].Col > list[0].Span().End) {
		return false
	}
	switch k := list[0].(type) {
	case *ins.CastOn:
		return true
	case *ins.Chain:
		return (r.mode != "stitches" || len(list) == 1 && k.N.At(0) > 8) && (k.N.By != nil || k.N.All > 3) && (t.Is("ch", "chain", "with", "using", "make", "starting") || t.Kind == 'n')
	}
	return false
}

// mayFound reports whether a line has the words of a foundation. In a list of names it defines none, and has a number.
func (r *Reader) mayFound(tokens []text.Token) bool {
	list := r.mode == "names" || r.mode == "stitches"
	if list && !slices.ContainsFunc(tokens, func(t text.Token) bool { return t.Kind == 'n' }) {
		return false
	}
	begins := false
	for i := range tokens[:len(tokens)-1] {
		begins = begins || tokens[i].Is("cast", "casting", "co", "ch", "chain")
		if begins && list && tokens[i].Is(":", "=", "-", "–") {
			return false
		}
	}
	return begins
}

func is[T ins.Item](n ins.Item) bool {
	_, ok := n.(T)
	return ok
}

// commences is a line that says no more than in which terms rows are written, or that they begin.
var commences = text.Once(`(?i)^\W*(?:written in |in )?(?:us|uk|u\.s\.|u\.k\.|american|british)(?: crochet)?(?: terms| terminology)\W*$|^\W*(?:now )?(?:commence|begin|start)(?:ing)?(?: (?:the|main|stitch))* (?:patt(?:ern)?|lace|cable|chart)\W*$`)

// cutOff are words alone on a line that only begin an instruction.
var cutOff = map[string]bool{"ch": true, "row": true, "rnd": true, "round": true, "rep": true, "sk": true, "work": true, "chain": true, "sc": true, "dc": true}

// aRing is a line that only says that the work begins with a ring that is drawn together.
var aRing = text.Once(`(?i)^\W*(?:(?:make|start with|begin with|form) )?(?:an? )?(?:magic|adjustable|sliding) (?:ring|circle|loop)\W*$`)

// multipleAlone is a line that says of what a count is a multiple, and is no title.
var multipleAlone = text.Once(`(?i)^\W*multiples? of \d`)

// heading takes a line that is a heading.
func (r *Reader) heading(trimmed string, n int) bool {
	name, marked, ok := text.Heading(trimmed)
	if ok && (r.crochet && aRing().MatchString(trimmed) || cutOff[strings.ToLower(trimmed)]) {
		return false
	}
	if ok && commences().MatchString(trimmed) {
		r.x.Read.Words++
		r.mode = ""
		return true
	}
	if !ok || !marked && r.instruction(strings.Trim(trimmed, "*")) || marked && !strings.HasPrefix(trimmed, "#") && r.sure(trimmed) {
		return false
	}
	r.x.Read.Words++
	r.mode = ""
	if multipleAlone().MatchString(trimmed) {
		return true
	}
	if kind := text.Keys[strings.ToLower(name)]; kind != "" && kind != "sizes" && kind != "terms" {
		r.words(kind, "", n, true)
		return true
	}
	if r.x.Title == "" && len(r.x.Sections) == 1 && len(r.sec.Lines) == 0 && n < 4 && n < len(r.x.Src) && strings.TrimSpace(r.x.Src[n]) == "" {
		r.x.Title = name
		return true
	}
	r.section(&ins.Section{Name: name, Make: text.MakeOf(trimmed), At: ins.Span{Line: n, Col: 1, End: len([]rune(r.x.Src[n-1])) + 1}})
	return true
}

// aboveRows takes a few words right above a first row as the heading of a piece, whatever signs and numbers they have:
// 2 Ears, Step 2 - Body, Scarf (in red).
func (r *Reader) aboveRows(trimmed string, n int) bool {
	if r.mode == "stitches" || strings.ContainsAny(trimmed, ";=*") || multipleAlone().MatchString(trimmed) {
		return false
	}
	next := n
	for next < len(r.x.Src) && next < n+2 && strings.TrimSpace(r.x.Src[next]) == "" {
		next++
	}
	if next >= len(r.x.Src) || !firstRow().MatchString(r.x.Src[next]) {
		return false
	}
	m := numbered().FindStringSubmatch(trimmed)
	if m == nil || firstRow().MatchString(trimmed) || text.KeyLine(trimmed) != "" {
		return false
	}
	name := strings.TrimSpace(m[1])
	words := strings.Fields(name)
	if len(words) == 0 || len(words) > 5 || !unicode.IsUpper([]rune(words[0])[0]) || verbs[strings.ToLower(words[0])] || starting[strings.ToLower(words[0])] {
		return false
	}
	if _, _, ok := text.Heading(trimmed); ok || r.instruction(name) || r.instruction(trimmed) {
		return false
	}
	r.x.Read.Words++
	r.mode = ""
	r.section(&ins.Section{Name: name, Make: text.MakeOf(trimmed), At: ins.Span{Line: n, Col: 1, End: len([]rune(r.x.Src[n-1])) + 1}})
	return true
}

// numbered is a heading with the number before it by which it is called, and a remark behind it.
var numbered = text.Once(`^(?:(?:(?i:part|step|section|piece) )?\d{1,2} ?(?:[.:)–—-]+ ?| )|[-•*#] ?)?([A-Z][A-Za-z&/’' -]{1,40}?(?: ?#\d{1,2})?|(?:Part|PART|Piece|PIECE) ?#?\d{1,2})(?: ?[,–—-] ?[a-z][a-z ]{1,30})?(?: ?\([^()]{1,60}\))?[ :]*$`)

// instruction reports whether a few words are an instruction and no heading: all of them
// are read, and they are more than the name of a stitch.
func (r *Reader) instruction(trimmed string) bool {
	tokens := r.lex(trimmed, 1)
	if len(tokens) == 0 {
		return false
	}
	line := &ins.Line{At: ins.Span{Line: 1, Col: 1, End: 2}}
	p := r.parser(tokens, line)
	list := p.sequence()
	if len(line.Unread) > 0 {
		return starting[tokens[0].S]
	}
	for _, n := range list {
		switch k := n.(type) {
		case *ins.Stitch:
			if len(k.Places) == 0 && len(tokens) < 4 && !strings.HasSuffix(trimmed, ".") {
				return false
			}
			return true
		case *ins.Chain:
			return k.N.Set() && len(tokens) > 1
		case *ins.Nothing:
			return starting[tokens[0].S]
		case *stated, *ins.Shape:
			return len(tokens) > 1
		default:
			return true
		}
	}
	return false
}

// sure reports whether a heading in capitals is an instruction all the same.
func (r *Reader) sure(trimmed string) bool {
	low := strings.ToLower(strings.Trim(trimmed, ".!: "))
	return low == "fasten off" || low == "turn" || low == "bind off" || low == "cast off"
}

var starting = set("fasten ch chain cast bind turn rep repeat join cut break weave sew leave next continue skip miss with do dec inc pick place finish bo co change using stuff insert attach")

// hanging is the name of a loop or string on a finished piece, before its work.
var hanging = text.Once(`(?i)^\W*(?:[a-z]+[ -]){0,2}(?:loop|hanger|tie|cord|string) ?(?::|[–—-]) ?`)

// hangs takes a loop of chains that hangs on a finished piece: it is no row.
func (r *Reader) hangs(trimmed string, n int) bool {
	m := hanging().FindString(trimmed)
	if m == "" || !r.crochet || r.x.Read.Lines == 0 && len(r.tokens) == 0 {
		return false
	}
	line := &ins.Line{At: ins.Span{Line: n, Col: 1, End: 2}}
	list := r.parser(r.lex(trimmed[len(m):], n), line).sequence()
	return working(list) && len(line.Unread) == 0 && !slices.ContainsFunc(list, beyondChains)
}

// beyondChains reports whether an instruction is more than chains that a slip stitch fastens to one place.
func beyondChains(n ins.Item) bool {
	switch n := n.(type) {
	case *ins.Chain, *ins.Skip, *ins.Nothing, *ins.Join, *ins.Turn, *ins.Fasten:
		return false
	case *ins.Stitch:
		return n.Kind == nil || n.Kind.ID != "slst"
	}
	return true
}

// founding is what a text calls the chain or the stitches that it begins with.
var founding = text.Once(`(?i)^(?:foundation|set[- ]?up|(?:foundation|starting|beginning|base|initial|set[- ]?up) (?:chain|ch|row|round|ring))$`)

// shapings are words that begin the name of a stretch of rows when a row stands behind it: Shape armholes: 1st row: …
var shapings = set("shape shaping dec decrease inc increase divide")

// inlinePiece takes a line that begins with the name of a piece.
func (r *Reader) inlinePiece(trimmed string, tokens []text.Token, n int) bool {
	name, _, ok := text.Inline(trimmed)
	return ok && r.piece(name, tokens, n)
}

// piece begins the section of a piece whose name stands before its first instruction.
func (r *Reader) piece(name string, tokens []text.Token, n int) bool {
	words := len(strings.Fields(name))
	k := words
	for k < len(tokens) && !tokens[k].Is(":", "-", "--", ".") {
		k++
	}
	for k < len(tokens) && tokens[k].Is(":", "-", "--", ".") {
		k++
	}
	if k >= len(tokens) {
		return false
	}
	first := strings.ToLower(strings.Fields(name)[0])
	rest := tokens[k:]
	label, _, _ := text.Label(rest, r.roundR)
	leads := verbs[first] || starting[first]
	if shapes := label != nil && shapings[first]; leads && !shapes || first == "rs" || first == "ws" || first == "for" || founding().MatchString(name) {
		return false
	}
	if label == nil { // what a label leads is a row
		line := &ins.Line{At: ins.Span{Line: n, Col: 1, End: 2}}
		if list := r.parser(rest, line).sequence(); !working(list) || len(line.Unread) > 2 {
			return false
		}
	}
	r.section(&ins.Section{Name: name, Make: text.MakeOf(r.x.Src[n-1]), At: ins.Span{Line: n, Col: 1, End: len([]rune(name)) + 1}})
	r.tokens = rest
	return true
}

// parser is a parser of a whole line, without what brackets do not close.
func (r *Reader) parser(tokens []text.Token, line *ins.Line) *parser {
	tree, loose, deep := text.Tree(text.Fenced(tokens))
	if deep || len(tokens) > text.MaxTokens {
		r.x.Tell(deeper(deep), line.At)
		line.Unread = append(line.Unread, line.At)
		tree = nil
	}
	for _, k := range loose {
		line.Unread = append(line.Unread, ins.Span{Line: k.Line, Col: k.Col, End: k.End})
	}
	p := &parser{t: dropFillers(tree), r: r, line: line}
	r.loop, r.began = ins.BothLoops, false
	return p.ready()
}

func deeper(deep bool) finding.Finding {
	f := ins.Refused("the line has more than %d words", text.MaxTokens)
	if deep {
		f = ins.Refused("brackets and repeats are nested more than %d deep", text.MaxDepth)
	}
	f.Fix = "write the row as several repeats"
	return f
}

// flush reads the line that is gathered: one row, or the rows and sentences of a paragraph.
func (r *Reader) flush() {
	t := r.tokens
	r.tokens = nil
	r.tokenCount += len(t)
	for len(t) > 0 {
		end := r.cut(t)
		if l, _, _ := text.Label(t, r.roundR); l == nil && end > 2 && end < len(t) && worksThe(t[:end]) {
			r.line(t[:end-2])
		} else {
			r.line(t[:end])
		}
		t = t[end:]
	}
}

// leadsRow reports whether the name of a row and its work follow: 1st row: 3 treble; 1st row as follows: 3 treble.
func (r *Reader) leadsRow(t []text.Token) bool {
	if t[0].Ord == 0 || !r.beginsRow(t) {
		return false
	}
	_, n, _ := text.Label(t, r.roundR)
	return t[n-1].Is(":", "--") || near(t, n).Is("entirely") || asFollows(t[n:]) > 0
}

// worksThe reports whether words lead to the name of a row: On the chain work the 1st row: …
func worksThe(t []text.Token) bool {
	k := len(t) - 1
	return k > 0 && t[k].Is("the") && t[k-1].Is("work", "begin", "commence", "crochet", "knit")
}

// cut is where the first row or sentence of a paragraph ends: before the label of another
// row, or, without labels, at the end of a sentence.
func (r *Reader) cut(t []text.Token) int {
	label, k, _ := text.Label(t, r.roundR)
	depth, star := 0, 0
	if k == 0 && t[0].Is("(", "[", "{") {
		depth++
	}
	for i := max(k, 1); i+1 < len(t); i++ {
		w := &t[i]
		switch {
		case w.Is("(", "[", "{"):
			depth++
		case w.Is(")", "]", "}"):
			depth--
		case isStar(w):
			star++
		}
		if depth <= 0 && r.endsBefore(t, i, label, star) {
			return i + 1
		}
		if depth <= 0 && stopsAt(t, i, label) && (r.beginsRow(t[i+1:]) || w.Is(".", ")", "]") && worksRows(t[i+1:]) || w.Is(".") && nextBare(label, t[i+1:]) || w.Is(".") && star%2 == 0 && beginsAnew(t[i+1:]) || label == nil && w.Is(".") && star%2 == 0 && r.beginsSentence(t[i+1:])) {
			return i + 1
		}
	}
	return len(t)
}

// endsBefore reports whether behind the token at i the row is repeated, or the first row begins that a sentence leads to.
func (r *Reader) endsBefore(t []text.Token, i int, label *ins.Label, stars int) bool {
	if label == nil {
		return (worksThe(t[:i+1]) || t[i].Is("and", "then") && t[i+1].Ord == 1) && r.leadsRow(t[i+1:])
	}
	return endsInSts(t, i) || (t[i].Is(";", ".") || t[i].Is(")") && near(t, i-1).Is(".")) && (repeatsNamed(t[i+1:]) || repeatsRows(t[i+1:]) || stars == 0 && r.repeatsMarked(t[i+1:])) || t[i+1].Is("(", "[") && len(t) > i+3 && repeatsRows(t[i+2:])
}

// repeatsRows reports whether words behind a row repeat it, or rows of which it is one.
func repeatsRows(t []text.Token) bool { return repeatsIt(t) || repeatsThese(t) || repeatsByNumber(t) }

// stopsAt reports whether a row or sentence may end with the token at i.
func stopsAt(t []text.Token, i int, label *ins.Label) bool {
	w, next := &t[i], &t[i+1]
	if w.Line != next.Line && w.Is("and", "to", "of", "the", "from", "&", ",", "through", "in", "rep", "repeat", "with", "like", "as", "on", "for") {
		return false
	}
	stop := w.Is(".", ";") || w.Is(":", "-", "--") && firstColon(t[i+1:]) || w.Is(":") && i > 0 && t[i-1].Is("follows", "foll", "following", "thus", "pattern", "patt", "viz", "rows", "manner", "way") || rowAhead(t[i+1:]) || label != nil && rowAfter(label, w, t[i+1:]) || w.Is(")", "]", "}") || w.Line != next.Line || label == nil && firstAhead(w, t[i+1:])
	if !stop || !next.Cap && next.Ord == 0 && next.Kind != 'n' && !isStar(next) && !rowColon(t[i+1:]) {
		return false
	}
	_, needle, _ := text.NeedleHead(t[i+1:])
	return needle == 0 || label == nil && !headsNeedle(t)
}

// endsInSts reports whether a row's count behind a sign ends there, and other work begins: K4 — 20 sts Continue in st st.
func endsInSts(t []text.Token, i int) bool {
	return i > 2 && t[i].Is("st", "sts", "stitches") && t[i-1].Kind == 'n' && t[i-2].Is("-", "--", ":", "=") && t[i+1].Cap && verbs[t[i+1].S]
}

// firstColon reports whether the name of a first or next row stands there with a colon: Shape raglan: 1st row: K2, ssk.
func firstColon(t []text.Token) bool {
	_, row := text.RowWord(near(t, 1).S)
	return row && (t[0].Ord == 1 && near(t, 2).Is(":") || t[0].Is("next") && (near(t, 2).Is(":") || near(t, 2).Is("(", "[") && len(t) > 3 && sideAhead(t[3:])))
}

// rowColon reports whether the number of a row stands there with a colon, whatever its first letter: rnd 3: ch 3.
func rowColon(t []text.Token) bool {
	_, row := text.RowWord(t[0].S)
	return row && len(t) > 3 && t[1].Kind == 'n' && t[2].Is(":")
}

// firstAhead reports whether a first row begins there behind other words without a sign: with yarn A Row 1 (RS) ch 3.
func firstAhead(before *text.Token, t []text.Token) bool {
	_, row := text.RowWord(t[0].S)
	return row && t[0].Cap && len(t) > 4 && t[1].Kind == 'n' && t[1].Num.By == nil && t[1].Num.All == 1 && t[2].Is("(") && sideAhead(t[3:]) && !leadsToRow(before)
}

// leadsToRow reports whether a row that is named behind a word is spoken of and does not begin.
func leadsToRow(t *text.Token) bool {
	return t.Is("to", "and", "of", "in", "on", "from", "as", "rep", "repeat", "work", "for", "with", "through", "until", "&", "-", "after", "end", "like", "before")
}

// nextBare reports whether the number of the row behind that of a label stands there alone: 1-5. K around. 6. K2tog around.
func nextBare(l *ins.Label, t []text.Token) bool {
	if l == nil || l.Next || len(l.Listed) > 0 || l.To.By != nil || len(t) < 4 || t[0].Kind != 'n' || t[0].Num.By != nil || t[0].Num.All != l.To.All+1 {
		return false
	}
	return t[1].Is(".", ":") || t[1].Is("-") && t[2].Kind == 'n' && t[3].Is(".", ":")
}

// beginsRow reports whether the label of another row stands there.
func (r *Reader) beginsRow(t []text.Token) bool {
	if len(t) > 2 && isStar(&t[0]) { // ** 8th row: Same as 5th row
		t = t[1:]
	}
	l, n, _ := text.Label(t, r.roundR)
	return l != nil && (!l.Next || t[0].Is("next") || n > 2) && t[0].Kind != 'n' && l.Name != "every" && !r.refers(t, n)
}

// beginsSentence reports whether a sentence that stands alone begins there: none that ends the row before it.
func (r *Reader) beginsSentence(t []text.Token) bool {
	return t[0].Kind != 'n' && !r.afterStar(t) && !r.onlyCount(t) && !(r.crochet && closesBySlip(t)) && (r.long(t) || !t[0].Is("turn", "join", "ch", "chain", "fasten"))
}

// closesBySlip reports whether a sentence only closes a round: Sl st in first sc.
func closesBySlip(t []text.Token) bool {
	if !t[0].Is("ss", "slst") && !(t[0].Is("sl", "slip") && near(t, 1).Is("st", "stitch")) {
		return false
	}
	first := false
	for i := 1; i < len(t) && t[i].Kind != 'g' && !t[i].Is("."); i++ {
		if t[i].Kind == 'p' || t[i].Kind == 'n' {
			return false
		}
		first = first || t[i].Is("first", "1st", "top", "beg", "beginning", "join")
	}
	return first
}

// repeatsIt reports whether words behind a row repeat it: repeat this row 15 times.
func repeatsIt(t []text.Token) bool {
	if len(t) < 3 || !t[0].Is("rep", "repeat") || !t[1].Is("this", "last") {
		return false
	}
	_, row := text.RowWord(t[2].S)
	return row
}

// repeatsNamed reports whether words behind a row work it again by its name: work dec row every other row 6 times.
func repeatsNamed(t []text.Token) bool {
	k := 1
	for near(t, k).Is("the", "this", "last") {
		k++
	}
	_, row := text.RowWord(near(t, k+1).S)
	return t[0].Is("rep", "repeat", "work") && row && near(t, k).Is("inc", "dec", "increase", "decrease", "raglan") && near(t, k+2).Is("every", "each", "on", "a", "once", "twice", "until", "when")
}

// repeatsThese reports whether words behind a row repeat the last rows, it among them: rep these 4 rows four times more.
func repeatsThese(t []text.Token) bool {
	if len(t) < 4 || !t[0].Is("rep", "repeat", "work") {
		return false
	}
	k := 1
	for near(t, k).Is("the", "these", "last", "above", "previous", "preceding") {
		k++
	}
	n, behind := near(t, k), near(t, k+2)
	if n.Kind != 'n' && numerals[n.S] < 2 {
		return false
	}
	_, row := text.RowWord(near(t, k+1).S)
	switch {
	case t[0].S == "work": // these 2 rows once more
		return row && near(t, 1).Is("these") && (behind.Is("once", "twice", "again") || near(t, k+3).Is("times", "more", "time"))
	case near(t, k-1).Is("rep", "repeat", "the"):
		return row && behind.Is("above", "before", "again")
	}
	return row
}

// repeatsByNumber reports whether a sentence behind a row repeats rows by their numbers: Repeat 2nd and 3rd rows once more.
func repeatsByNumber(t []text.Token) bool {
	if !t[0].Is("rep", "repeat") {
		return false
	}
	k := 1
	for near(t, k).Is("the") {
		k++
	}
	if near(t, k).Is("rows", "rnds", "rounds") && near(t, k+1).Kind == 'n' { // Repeat Rows 1 and 2 once
		return true
	}
	if !t[0].Cap {
		return false
	}
	for near(t, k).Ord > 0 || near(t, k).Ord == 0 && near(t, k).Is("and", "&", "to", "-") && near(t, k+1).Ord > 0 {
		k++
	}
	_, row := text.RowWord(near(t, k).S)
	return row && near(t, k-1).Ord > 0
}

// repeatsMarked reports whether the rows from the star before a label on are repeated.
func (r *Reader) repeatsMarked(t []text.Token) bool {
	return len(t) > 2 && r.mark != "" && t[0].Is("rep", "repeat") && t[1].Is("from") && t[2].S == r.mark
}

// worksRows reports whether a sentence behind a row works more of them: Purl 1 row. Knit 12 rows in the same way. Now work 4 rows even.
func worksRows(t []text.Token) bool {
	begins := t[0].Cap
	if t[0].Is("now", "then") {
		t = t[1:]
	}
	_, row := text.RowWord(near(t, 2).S)
	if !begins || !row || !t[0].Is("knit", "work", "purl", "k", "p") || t[1].Kind != 'n' && !t[1].Is("one", "next") {
		return false
	}
	return t[0].S != "work" && near(t, 3).Is("", ".", ",") || near(t, 3).Is("in", "more", "even", "without", "straight", "plain")
}

// beginsAnew reports whether a sentence behind a row goes on with rows of its own: Continue in stockinette st until …
func beginsAnew(t []text.Token) bool {
	if !t[0].Cap || !t[0].Is("continue", "cont", "when", "hereafter", "thereafter", "now") && !(t[0].Is("work", "keeping") && len(t) > 2) {
		return false
	}
	far := false
	for i := 1; i < len(t) && !(t[i].Is(".") && t[i-1].Kind == 'w' && (i+1 == len(t) || t[i+1].Cap)); i++ {
		if t[i].Is("loop", "loops") && t[0].Is("hereafter", "thereafter") {
			return true
		}
		if t[i-1].Is("each", "every") || far && endsSide(t, i) { // 9 sts on each round until; ending with a WS row
			continue
		}
		if t[i].Is("around", "across", "round", "rnd", "row", "end") || isStar(&t[i]) {
			return false
		}
		far = far || t[i].Is("until", "till", "inch", "inches", "ins", "cm", "even", "straight", "measures")
	}
	return far
}

// endsSide reports whether the row at i is the one after which rows end: ending with a WS row.
func endsSide(t []text.Token, i int) bool {
	k := i - 1
	for k > 0 && t[k].Is("rs", "ws", "right", "wrong", "side", "-", "p", "purl", "k", "knit", "a", "with", "after", "on", "by") {
		k--
	}
	return t[i].Is("row", "rnd", "round") && k < i-1 && t[k].Is("end", "ending", "finishing")
}

// rowAhead reports whether a row's number with a colon stands there: K Row 2: K3.
func rowAhead(t []text.Token) bool {
	_, row := text.RowWord(t[0].S)
	return row && t[0].Cap && len(t) > 2 && t[1].Kind == 'n' && t[2].Is(":")
}

// rowAfter reports whether the row behind that of a label begins there without a sign: Row 3 k2, p2 Row 4 p2, k2.
func rowAfter(l *ins.Label, before *text.Token, t []text.Token) bool {
	if l.Next || l.To.By != nil || len(t) < 3 || leadsToRow(before) {
		return false
	}
	if k := l.To.All + 1; t[0].Ord == k { // 1st row: k1, p1, 2nd row: p1, k1
		if t[1].Is("and") && t[2].Ord > k {
			t = t[2:]
		}
		_, row := text.RowWord(t[1].S)
		return row && near(t, 2).Is(":")
	}
	_, row := text.RowWord(t[0].S)
	return row && t[0].Cap && t[1].Kind == 'n' && t[1].Num.All == l.To.All+1
}

// refers reports whether a label within a sentence only names the row: Row 2 forms the pattern.
func (r *Reader) refers(t []text.Token, n int) bool {
	return n >= len(t)
}

// afterStar reports whether a sentence repeats a starred stretch, which stays with it.
func (r *Reader) afterStar(t []text.Token) bool {
	if !t[0].Is("rep", "repeat") {
		return false
	}
	for i := 1; i < min(4, len(t)); i++ {
		if isStar(&t[i]) {
			return true
		}
	}
	return false
}

// long reports whether more than a turn or a join stands in the sentence.
func (r *Reader) long(t []text.Token) bool {
	for i := range t {
		if t[i].Is(".") {
			return i > 7
		}
	}
	return len(t) > 7
}

func (r *Reader) onlyCount(t []text.Token) bool {
	for i := range t {
		if t[i].Is(".") || i == len(t)-1 {
			return i < 8 && r.parser(nil, &ins.Line{}).countsOf(t[:i]) != nil
		}
	}
	return false
}

// into is the lowest row that a line names, if it says to work behind something; else 0.
func (p *parser) into() int {
	behind, least := false, 0
	if !slices.ContainsFunc(p.line.Words, func(w ins.Word) bool { return w.S == "behind" }) {
		return 0
	}
	var look func(p *parser)
	look = func(p *parser) {
		for i := range p.t {
			behind = behind || p.t[i].Is("behind")
			if p.t[i].Kind == 'g' {
				look(p.within(p.t[i].Sub))
			}
			if v, to := p.named("rowbehind", i); to >= 0 {
				if n := v.(ins.Num); n.By == nil && (least == 0 || n.All < least) {
					least = n.All
				}
			}
		}
	}
	if look(p); !behind {
		return 0
	}
	return least
}

// ofLast is a count of rows that do not follow each other, which only the last of them has: (34 sc at end of row 16).
var ofLast = text.Once(`(?i)\bat (?:the )?end of (?:last )?(?:row|rnd|round)s?\b[\w ]{0,8}[)\]]`)

// slippedFirst says behind the work of a row that its first stitch is slipped: knit across, slipping the first st.
var slippedFirst = text.Once(`(?i)\b(?:slip(?:ping|ped)?|sl)\.? (?:the )?(?:first|1st) st|\b(?:first|1st) st(?:itch)? (?:is )?slipped`)

// slipsFirst puts the first stitch of a knitted row before its work where other words say behind it that it is slipped.
func (r *Reader) slipsFirst(l *ins.Line) {
	if r.crochet || l.Label == nil || !slippedFirst().MatchString(l.Src) {
		return
	}
	at := slices.IndexFunc(l.Body, func(n ins.Item) bool {
		st, ok := n.(*ins.Stitch)
		return (is[*ins.Nothing](n) || ok && st.Kind != nil && st.Kind.Base == "sl") && slippedFirst().MatchString(r.x.Quote(n.Span()))
	})
	if at < 0 || at == 0 && is[*ins.Stitch](l.Body[0]) || !slices.ContainsFunc(l.Body, is[*ins.Stitch]) {
		return
	}
	if at > 0 && (slices.ContainsFunc(l.Body[:at], is[*ins.Turn]) || slices.ContainsFunc(l.Body[at+1:], func(n ins.Item) bool { return !is[*ins.Nothing](n) && !is[*ins.Turn](n) })) {
		return // k10, turn, slip first st, p9: it is slipped there
	}
	sl := &ins.Stitch{Kind: stitch.ByID("sl"), N: ins.N(1)}
	sl.Put(l.Body[at].Span())
	l.Body = slices.Insert(slices.Delete(l.Body, at, at+1), 0, ins.Item(sl))
}

// withoutMultiple is a row without the words at its end that say of how many stitches its count is a multiple: it is no count.
func withoutMultiple(t []text.Token) []text.Token {
	const most = 9 // (multiple of 8 sts plus 5 sts).
	for i := len(t) - 1; i > max(len(t)-most-2, 1); i-- {
		if t[i].Is("multiple") && near(t, i+1).Is("of") && near(t, i+2).Kind == 'n' && t[i-1].Is("--", "-", "(", "[", "=", ",", ".", "a") {
			for k := i + 3; k < len(t); k++ {
				if !t[k].Is("st", "sts", "stitches", "+", "plus", ")", "]", ".") && t[k].Kind != 'n' {
					return t
				}
			}
			for i > 1 && t[i-1].Is("--", "-", "(", "[", "=", ",", "a") {
				i--
			}
			return t[:i]
		}
	}
	return t
}

// line reads the tokens of one row or sentence.
func (r *Reader) line(tokens []text.Token) {
	tokens = r.wayForth(tokens)
	first, last := &tokens[0], &tokens[len(tokens)-1]
	l := &ins.Line{At: ins.Span{Line: first.Line, Col: first.Col, End: last.End}, Src: r.x.Src[first.Line-1]}
	for k := len(tokens) - 1; k > 0 && tokens[k].Line != first.Line; k-- {
		l.At.End = tokens[k-1].End
	}
	if last.Line > first.Line {
		l.Src = strings.Join(r.x.Src[first.Line-1:last.Line], "\n")
	}
	l.Words = make([]ins.Word, len(tokens))
	for i := range tokens {
		l.Words[i] = tokens[i].Word
	}
	short := r.short(tokens, l)
	if tokens = r.marked(withoutMultiple(tokens)); first != &tokens[0] {
		l.Mark = first.S
	}
	tokens = r.withoutRows(tokens)
	label, k, count := text.Label(tokens, r.roundR)
	if label != nil {
		k = r.labels(l, label, tokens, k)
	}
	p := r.parser(tokens[k:], l)
	l.Changed = p.changed(tokens)
	l.Into = p.into()
	if len(count) > 0 {
		l.Stated = p.countsOf(count)
	}
	list := r.countWorked(unbracketed(p.wholeRow()), label)
	if l.Body, l.Stated = endCount(list, l.Stated); l.Label != nil && len(l.Label.Listed) > 0 && ofLast().MatchString(l.Src) {
		l.Stated = nil
	}
	if r.crochet {
		l.Body = standsTall(startsInGroup(r.gathered(l.Body)))
		r.lastOfLegs(l.Body, true)
		r.endsWithin(l)
	}
	r.firstLoop(l)
	r.slipsFirst(l)
	r.skipped(l)
	r.plainRow(l)
	l.Body = withoutRest(l)
	repeatedRows(l)
	countedTwice(l)
	shapedFurther(l)
	r.turnedBefore(l)
	r.slippedBefore(l)
	r.bareShaping(l)
	l.Passed = r.passedOver(l.Body, l.Words)
	l.Chart = slices.ContainsFunc(l.Body, charted)
	l.Needles = r.needleCounts(tokens)
	if l.Label == nil && !r.kept(l, tokens) && !short {
		r.yarn = cmp.Or(p.goesOnIn(), takenUp(l.Body), r.yarn)
		r.heldBefore(l)
		r.x.Read.Words++
		r.note(r.x.Src[first.Line-1], first.Line)
		return
	}
	if r.noWork(l, p) {
		r.x.Read.Words++
		return
	}
	if l.Label != nil && !working(l.Body) && len(l.Body) > 0 && len(l.Unread) == 0 && !turns(l.Body) { // a row without a word of work
		l.Unread = append(l.Unread, p.span(0, len(p.t)-1))
	}
	r.over(tokens, l)
	l.Yarn, r.yarn = cmp.Or(p.within(tokens[:k]).yarnInLabel(), p.yarnCastOn(l), r.yarn), ""
	if l.Label == nil {
		r.yarn = p.goesOnIn()
	}
	l.Sizes = r.only
	r.sec.Lines = append(r.sec.Lines, r.behindCastOn(l)...)
	r.x.Read.Lines++
	if len(l.Unread) == 0 {
		r.x.Read.Whole++
	}
	if l.Stated != nil {
		r.x.Read.Stated++
	}
	r.count(l)
}

// unbracketed is what a bracket around a whole line holds that works no stitch of its own: (repeat these 2 rows once more).
func unbracketed(list []ins.Item) []ins.Item {
	if len(list) != 1 {
		return list
	}
	q, ok := list[0].(*ins.Repeat)
	if !ok || q.Times.By != nil || q.Times.All != 1 || q.Until.Kind != ins.NoExtent || len(q.Places) > 0 || !slices.ContainsFunc(q.Body, func(n ins.Item) bool { return is[*ins.RepeatRows](n) || is[*ins.Measure](n) }) {
		return list
	}
	return q.Body
}

// withoutRows takes the words off a line that only say again how many rows its label names: R7-R14: sc around (36) 8 rounds.
func (r *Reader) withoutRows(t []text.Token) []text.Token {
	k := len(t) - 2
	if k < 2 || !t[k-1].Is(")", "]") || t[k].Kind != 'n' || !t[k+1].Is("rounds", "rnds", "rows") {
		return t
	}
	label, _, _ := text.Label(t[:k], r.roundR)
	if label == nil || label.Next || !label.To.Set() || label.To.By != nil || label.From.By != nil || len(label.Listed) > 0 {
		return t
	}
	every := slices.ContainsFunc(t[:k], func(t text.Token) bool { return t.Is("odd", "uneven", "even", "alt", "alternate", "every") })
	if n := label.To.All - label.From.All + 1; !every && (t[k].Num.By != nil || t[k].Num.All != n) {
		r.x.Tell(finding.Finding{Kind: "rows/number", Severity: finding.Warning, Message: fmt.Sprintf("these are %d %s by their numbers, not %s", n, t[k+1].S, t[k].S), Fix: "correct the number of them, or the label"}, ins.Span{Line: t[k].Line, Col: t[k].Col, End: t[k+1].End})
	}
	return t[:k]
}

// labels gives a line the label that its first k tokens are, and goes behind what leads from it to the row.
func (r *Reader) labels(l *ins.Line, label *ins.Label, t []text.Token, k int) int {
	label.At.Line = t[0].Line
	r.around = r.around || saysRound(l.Src)
	label.Round = label.Round || r.around || r.knits && !r.crochet && goesAround(t)
	label.Side = cmp.Or(label.Side, toldSide(t[k:]))
	beforeFirst(label)
	l.Label = label
	k += asFollows(t[k:])
	return k + r.yarnBefore(t, k, l)
}

// goesAround reports whether a knitted row ends with around: it is a round, whatever it is called.
func goesAround(t []text.Token) bool {
	n := len(t) - 1
	for n > 0 && t[n].Is(".", ",") {
		n--
	}
	return t[n].Is("around") && n > 2
}

// behindCastOn is a line, parted from the stitches that are cast on in its sentence: CO 80 sts, *k4, p4* to end.
func (r *Reader) behindCastOn(l *ins.Line) []*ins.Line {
	if l.Label != nil || len(r.sec.Lines) > 0 || !slices.ContainsFunc(l.Body, is[*ins.CastOn]) {
		return []*ins.Line{l}
	}
	k := slices.IndexFunc(l.Body, func(n ins.Item) bool {
		return !is[*ins.CastOn](n) && !is[*ins.Join](n) && !is[*ins.Marker](n) && !is[*ins.Nothing](n)
	})
	if k < 0 || !slices.ContainsFunc(l.Body[:k], is[*ins.CastOn]) || !is[*ins.Repeat](l.Body[k]) && !is[*ins.Even](l.Body[k]) && !is[*ins.Stitch](l.Body[k]) {
		return []*ins.Line{l}
	}
	base := *l
	base.Body, base.Stated, base.Unread, base.Chart, base.Needles = l.Body[:k:k], nil, nil, false, nil
	l.Body, l.At = l.Body[k:], l.Body[k].Span()
	return []*ins.Line{&base, l}
}

// countedTwice passes the number of rows that stands before their work though their name says it: Rows 7-9: work pattern for 3
// rows; *k3, p1; rep from * to end.
func countedTwice(l *ins.Line) {
	if l.Label == nil || l.Label.Next || l.Label.To.By != nil || l.Label.From.By != nil {
		return
	}
	for i, n := range l.Body {
		e, ok := n.(*ins.Even)
		if ok && e.Rows.By == nil && e.Rows.All > 1 && e.Rows.All == l.Label.To.All-l.Label.From.All+1 && slices.ContainsFunc(l.Body[i+1:], makes) {
			l.Body[i] = &ins.Nothing{Placed: e.Placed, Colour: e.Colour}
		}
	}
}

// toldSide is the side that words at either end of a row tell, apart from its work: (RS) K8; With WS facing, k8; K8, p3, k8 (Wrong
// side); K8. This is a wrong-side row. 0: none does.
func toldSide(t []text.Token) int {
	const most = 14 // (this is a wrong side row)
	for len(t) > 0 && t[len(t)-1].Is(".", ")", "]", ">") {
		t = t[:len(t)-1]
	}
	for i := range min(len(t), most) {
		if i > 0 && t[i].Is(")", "]", ">", ",", ".", ":", "-", "--") {
			if side := text.SideNamed(t[:i]); side > 0 {
				return side
			}
		}
	}
	for i := len(t) - 2; i >= max(len(t)-most, 0); i-- {
		if t[i].Is("(", "[", ",", ".", "-", "--", ";") {
			if side := text.SideNamed(t[i+1:]); side > 0 && (t[i].Is("(", "[") || !t[len(t)-1].Is("facing")) { // behind a row, it is that of the next
				return side
			}
		}
	}
	return 0
}

// yarnBefore is how many tokens behind the k-th name the yarn of a row: Row 1: White: knit.
func (r *Reader) yarnBefore(t []text.Token, k int, l *ins.Line) int {
	n := 1
	if !near(t, k+n).Is(":") {
		n++
	}
	if !near(t, k-1).Is(":") || !near(t, k+n).Is(":") || t[k].Kind != 'w' {
		return 0
	}
	if name, to := (&sequence{parser: r.parser(slices.Clone(t[k:k+n]), l)}).yarnAt(0); name == "" || to != n {
		return 0
	}
	return n + 1
}

// asFollows is behind the words and signs that only lead from the name of a row to its work: as follows:—; in the following
// manner:
func asFollows(t []text.Token) int {
	i := 0
	for near(t, i).Is("as", "follows", "thus", "in", "the", "following", "manner", "way", "this", "is", "are", "worked") && i < 6 {
		i++
	}
	if i == 0 || !near(t, i).Is(":", "--", "-") || !near(t, i-1).Is("follows", "thus", "manner", "way") {
		return 0
	}
	for near(t, i).Is(":", "--", "-") {
		i++
	}
	return i
}

// marked is a row without the star before its label, from which rows are repeated: * Next row: K2tog, k to end.
func (r *Reader) marked(t []text.Token) []text.Token {
	if len(t) < 3 || !isStar(&t[0]) || slices.ContainsFunc(t[1:len(t)-1], func(k text.Token) bool { return isStar(&k) && k.S == t[0].S }) {
		return t
	}
	if l, _, _ := text.Label(t[1:], r.roundR); l == nil {
		if _, rows := text.RowWord(near(t, 3).S); !rows || t[2].Kind != 'n' || !t[1].Is("k", "knit", "p", "purl", "work") { // * Knit 8 rows
			return t
		}
	}
	r.mark = t[0].S
	return t[1:]
}

// beforeFirst takes a row 0 as the foundation row, which lies before row 1.
func beforeFirst(l *ins.Label) {
	if l.From.By == nil && l.From.All == 0 && !l.Next && l.Name == "" && len(l.Listed) == 0 {
		l.Next, l.Name, l.From, l.To = true, "foundation", ins.N(1), ins.Num{}
	}
}

// onChains reports whether a sentence says what chains count as, and no more: The 3 ch at the beginning of a round counts as a tr.
func (r *Reader) onChains(t []text.Token) bool {
	counts, chains, within, always := false, false, false, false
	for i := range t {
		switch k := &t[i]; {
		case k.Is("count", "counts", "counted", "counting"):
			counts = true
		case k.Is("ch", "chain", "chains", "chs", "tch"):
			chains = true
		case k.Is("throughout"):
			always = true
		case k.Is("("):
			within = true
		case k.Kind == 'n' || k.Kind == 'p' || ofChains[k.S] || always && counts && chains: // throughout the sleeve
		default:
			if _, stitch := r.thing([]byte(k.S)); !counts || !stitch {
				return false
			}
		}
	}
	return r.crochet && counts && chains && (!within || always) // ch 3 (counts as a dc) is worked
}

// ofChains are the words in which a sentence says what chains count as, beside those that name them.
var ofChains = set("the a at beg beginning start of in each every any row rows rnd rnds round rounds turning does do not is are never doesn't don't starting initial first your this pattern all and or unless otherwise noted stated specified here note also always for st sts stitch stitches as one t s")

// noWork reports whether a row tells something and is not worked: Optional row 1 stands for row 1.
func (r *Reader) noWork(l *ins.Line, p *parser) bool {
	if l.Label == nil {
		return false
	}
	if otherWay[l.Words[0].S] {
		return true
	}
	return !working(l.Body) && l.Stated == nil && (p.prose(p.t) || len(p.t) == 0) && len(l.Unread) == 0 && !turns(l.Body) && (len(p.t) > 0 || l.Label.Next)
}

// otherWay are words before the name of a row that may be worked instead of the one before.
var otherWay = set("optional alternative alternate")

// takenUp is the last yarn that words take up; empty if they take up none.
func takenUp(list []ins.Item) string {
	name := ""
	for _, n := range list {
		if n, ok := n.(*ins.Nothing); ok {
			name = cmp.Or(n.Colour, name)
		}
	}
	return name
}

func turns(list []ins.Item) bool {
	return slices.ContainsFunc(list, is[*ins.Turn])
}

// count keeps how many rows 'these rows' would mean.
func (r *Reader) count(l *ins.Line) {
	for _, n := range l.Body {
		if _, ok := n.(*ins.RepeatRows); ok {
			r.these = 0
			return
		}
	}
	if l.Label == nil {
		return
	}
	k := 1 + len(l.Label.Listed)
	if l.Label.To.Set() && l.Label.To.By == nil && l.Label.To.All > l.Label.From.All {
		k = l.Label.To.All - l.Label.From.All + 1
	}
	r.these += k
}

// kept reports whether a line without a label is an instruction, and not words.
func (r *Reader) kept(l *ins.Line, tokens []text.Token) bool {
	p := r.parser(tokens, &ins.Line{At: l.At})
	if r.onChains(tokens) {
		return false
	}
	if announces(tokens) || r.slipsThrough(tokens) || tokens[0].Is("this") && near(tokens, 1).Is("puts", "gives", "leaves", "brings", "lets", "allows") || l.Stated == nil && tallied().MatchString(r.x.Src[l.At.Line-1]) {
		l.Unread = nil
		return false
	}
	if firm(l.Body) || verbs[tokens[0].S] && begins(l.Body) {
		return true
	}
	if tokens[0].Is("i") && len(tokens) > 4 {
		r.telling = l.At.Line
	}
	if r.telling == l.At.Line { // a paragraph of what its writer does: I mark the centre st. Then knit to within …
		l.Unread = nil
		return false
	}
	if len(l.Unread) == 0 {
		return l.Stated != nil || !p.modal(p.t) && slices.ContainsFunc(l.Body, makes)
	}
	if shapesOn(p.t) {
		return true
	}
	if p.prose(p.t) || p.opensAsTold() || supplies(tokens) {
		l.Unread = nil
		return false
	}
	if !working(l.Body) {
		return p.heavy(p.t)
	}
	return true
}

// slipsThrough reports whether a sentence tells how stitches are slipped all through, or what edge the rows behind it make: slip all stitches
// purlwise; work picot edge of brim.
func (r *Reader) slipsThrough(t []text.Token) bool {
	has := func(words ...string) bool {
		return slices.ContainsFunc(t, func(k text.Token) bool { return k.Is(words...) })
	}
	return !r.crochet && (slipsAll(t) && has("purlwise", "knitwise", "pwise", "kwise") && !has("holder", "needle", "needles") || t[0].Is("work") && near(t, 1).Is("picot") && near(t, 2).Is("edge", "edging", "hem"))
}

// tallied is a line in brackets that tells what the row before it has made: (4 groups of 5 stitches worked + sc):
var tallied = text.Once(`(?i)^\W*\(\d+ (?:groups?|sets?|clusters?|shells?) of \d[^()]*\)\W*$`)

// opensAsTold reports whether a sentence begins as one that tells something: I made …, It is …
func (p *parser) opensAsTold() bool {
	if len(p.t) > 2 && p.t[0].Is("i", "i've", "i'm", "i'd", "i'll") {
		return true
	}
	return len(p.t) > 0 && telling[p.t[0].S] && !p.t[0].Is("with", "from", "on", "for", "at", "in", "make", "using")
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

// shapesOn reports whether a sentence goes on with shaping until there are so many stitches, whatever other words it has: as prose it
// would change that number without a word.
func shapesOn(t []text.Token) bool {
	if len(t) == 0 || !t[0].Is("continue", "cont", "keep", "carry", "now", "repeat", "rep", "increase", "inc", "decrease", "dec") {
		return false
	}
	shaping := false
	for i := range t {
		shaping = shaping || strings.HasPrefix(t[i].S, "inc") || strings.HasPrefix(t[i].S, "dec") || t[i].Is("adding")
		if t[i].Is("until", "till") && shaping {
			return slices.ContainsFunc(t[i:], func(n text.Token) bool { return n.Kind == 'n' })
		}
	}
	return false
}

// makes reports whether an instruction makes or shapes something: not 'turn', and not 'sl st closed'.
func makes(n ins.Item) bool {
	switch n := n.(type) {
	case *ins.Nothing, *ins.Turn, *ins.Marker:
		return false
	case *ins.Stitch:
		return n.Kind == nil || n.Kind.ID != "slst" || len(n.Places) > 0 && !stepsOn(n)
	}
	return true
}

// firm reports whether instructions change how many stitches there are in words that only instructions have: what
// else their sentence holds makes no prose of it.
func firm(list []ins.Item) bool {
	chained := false
	return slices.ContainsFunc(list, func(n ins.Item) bool {
		switch k := n.(type) {
		case *ins.CastOn, *ins.BindEach, *ins.Shape, *ins.PickUp:
			return true
		case *ins.Chain:
			chained = true
		case *ins.Join: // ch 4, join to form a ring
			return chained && k.Name == "ring"
		case *ins.BindOff:
			return !k.All
		}
		return false
	})
}

// stepsOn reports whether a slip stitch only leads to the next stitch: Before the next round, sl st to next st.
func stepsOn(s *ins.Stitch) bool {
	return len(s.Places) == 1 && s.Places[0].Kind == ins.InNext && s.Places[0].Unit.Any() && s.N.By == nil && s.N.All == 1 && s.Places[0].N.By == nil && s.Places[0].N.All == 1
}

// begins reports whether a line begins with rows worked in words: Work in rib until you want to shape the neck.
func begins(list []ins.Item) bool {
	for _, n := range list {
		switch n.(type) {
		case *ins.Nothing:
		case *ins.Even, *ins.RepeatRows:
			return true
		default:
			return false
		}
	}
	return false
}

// heavy reports whether words without a label tell of stitches so that they may be work.
func (p *parser) heavy(t []text.Token) bool {
	k := 0
	for i := range t {
		if t[i].Kind == 'n' && (p.names(p.at(i+1).S) || p.at(i+1).Is("st", "sts", "stitches", "rows", "rnds", "rounds")) {
			k++
		}
		if t[i].Kind == 'g' && p.heavy(t[i].Sub) {
			k++
		}
		if _, ok := text.RowWord(t[i].S); ok && p.at(i+1).Kind == 'n' { // Work Round 5 of the chart
			k++
		}
	}
	return k > 0 && (verbs[t[0].S] || k > 1)
}

// endCount takes the count at the end of a line off its instructions: the last one behind
// which nothing is worked any more.
func endCount(list []ins.Item, said []ins.StitchGroup) ([]ins.Item, []ins.StitchGroup) {
	var body []ins.Item
	counts := 0
	for k := len(list) - 1; k >= 0; k-- {
		s, ok := list[k].(*stated)
		if !ok {
			continue
		}
		if counts++; counts == mostCounts+1 && len(said) == 1 && said[0].Any { // k1, p1 x 3 (6 sts), k1, p1 x 6 (12 sts), …: of stretches of the row
			said = nil
			break
		}
		if said == nil && (!working(list[k+1:]) || onlyEnds(list[k+1:])) {
			said = s.groups
		}
	}
	for _, n := range list {
		if _, ok := n.(*stated); !ok {
			body = append(body, n)
		}
	}
	return body, said
}

// countWorked is a row that says no more than how many stitches it is, as that many worked: Rnd 4: 18 sts round.
func (r *Reader) countWorked(list []ins.Item, label *ins.Label) []ins.Item {
	if !r.crochet || label == nil || len(list) == 0 || working(list) {
		return list
	}
	n, ok := list[0].(*stated)
	if !ok || len(n.groups) != 1 || !n.groups[0].Any || n.groups[0].Side || n.groups[0].At.Col != n.At.Col {
		return list
	}
	return append([]ins.Item{&ins.Stitch{Placed: n.Placed, N: n.groups[0].N}}, list[1:]...)
}

// mostCounts is how many counts of any stitches a row may state: more of them are of stretches of it.
const mostCounts = 2

// onlyEnds reports whether what follows a count only closes the row, or begins the next.
func onlyEnds(list []ins.Item) bool {
	for _, n := range list {
		switch k := n.(type) {
		case *ins.Nothing, *ins.Turn, *ins.Join, *ins.Fasten, *ins.Chain, *ins.Unread, *stated, *ins.Leave, *ins.Measure:
		case *ins.Stitch:
			if k.Kind == nil || k.Kind.ID != "slst" {
				return false
			}
		default:
			return false
		}
	}
	return true
}

// plainRow takes 'Purl.' as a whole row, and 'Row 3: Plain.'
func (r *Reader) plainRow(l *ins.Line) {
	var only *ins.Stitch
	from := 0
	for i, n := range l.Body {
		if k, ok := n.(*ins.Repeat); ok && !r.crochet && k.Until.Kind == ins.ToLast && k.Until.N.By == nil && k.Until.N.All > 1 { // rep from * to last 5 sts, k
			from = i + 1
		}
	}
	for _, n := range l.Body[from:] {
		switch k := n.(type) {
		case *ins.Stitch:
			if only != nil {
				return
			}
			only = k
		case *ins.Nothing, *ins.Turn, *ins.Marker, *ins.Join, *ins.RepeatRows, *ins.CastOn:
		default:
			return
		}
	}
	if only == nil || l.Label == nil && r.crochet || only.Kind == nil || len(only.Places) > 0 || only.N.By != nil || only.N.All != 1 || only.Kind.Uses != 1 || only.Kind.Makes != 1 {
		return
	}
	for _, w := range l.Words {
		if w.Kind == 'n' && w.Col >= only.At.Col && w.End <= only.At.End && w.Line == only.At.Line {
			return
		}
	}
	if only.Kind.Craft == stitch.Knitting || l.Label != nil {
		only.Places = []ins.Place{{Kind: ins.InEach, N: ins.N(1), Unit: ins.Unit{Word: "st"}, Extent: ins.Extent{Kind: ins.ToEnd}}}
	}
}

// withoutRest are the instructions of a line without the plain stitches behind those bound off at the beginning of a row,
// which are the rest of it: Cast off 14 sts at beg of next row, k to end.
func withoutRest(l *ins.Line) []ins.Item {
	k := len(l.Body) - 1
	if l.Label != nil || k < 1 || !is[*ins.BindEach](l.Body[k-1]) {
		return l.Body
	}
	if s, ok := l.Body[k].(*ins.Stitch); ok && s.Kind != nil && len(s.Places) == 1 && s.Places[0].Extent.Kind == ins.ToEnd && s.Kind.Uses == 1 && s.Kind.Makes == 1 {
		return l.Body[:k]
	}
	return l.Body
}

// repeatedRows takes how often a bracket is worked that only repeats rows as how often they are: Rows 4-9: [rep Rows 2 and 3] 3 times.
func repeatedRows(l *ins.Line) {
	for i, n := range l.Body {
		q, ok := n.(*ins.Repeat)
		if !ok || len(q.Body) != 1 || len(q.Places) > 0 || q.Until.Kind != ins.NoExtent {
			continue
		}
		if r, ok := q.Body[0].(*ins.RepeatRows); ok && !r.HasTimes && !r.Until.Set() && !r.ToRow.Set() {
			r.Times, r.HasTimes, r.Total = q.Times, true, true
			l.Body[i] = r
		}
	}
}

// shapedFurther gives a shaping that goes on over other rows as many stitches, and the way, of the one before it.
func shapedFurther(l *ins.Line) {
	var last *ins.Shape
	for _, n := range l.Body {
		s, ok := n.(*ins.Shape)
		switch {
		case !ok:
		case s.N.Set() || !s.Every.Set() && !s.Rows.Set() && !s.First: // dec 0 sts says how many
			last = s
		case last != nil:
			s.Inc, s.N = last.Inc, last.N
		default:
			l.Unread = append(l.Unread, s.At)
		}
	}
}

// turnedBefore puts a turn with which a knitted row begins to the end of the row before it, which it ends.
func (r *Reader) turnedBefore(l *ins.Line) {
	k := len(r.sec.Lines) - 1
	if k < 0 || l.Label == nil || len(l.Body) < 2 || !is[*ins.Turn](l.Body[0]) || !r.knits || r.crochet {
		return
	}
	before := r.sec.Lines[k]
	if n := len(before.Body); before.Label == nil || n == 0 || is[*ins.Turn](before.Body[n-1]) {
		return
	}
	before.Body, l.Body = append(before.Body, l.Body[0]), l.Body[1:]
}

// slippedBefore puts slip stitches behind the join of a round, which lead to where the next one begins, to the beginning of that: join, sl
// st in next 2 dc and in ch-2 sp. One that only repeats others has its own.
func (r *Reader) slippedBefore(l *ins.Line) {
	k := len(r.sec.Lines) - 1
	if k < 0 || !r.crochet || l.Label == nil || len(l.Body) == 0 || r.sec.Lines[k].Label == nil || len(r.sec.Lines[k].Unread) > 0 {
		return
	}
	before := r.sec.Lines[k]
	at := len(before.Body)
	for at > 0 && !worksOn(before.Body[at-1]) && !is[*ins.Join](before.Body[at-1]) && !is[*ins.Chain](before.Body[at-1]) && !is[*ins.Turn](before.Body[at-1]) {
		at--
	}
	if at == 0 || at == len(before.Body) {
		return
	}
	if st, ok := before.Body[at].(*ins.Stitch); !is[*ins.Join](before.Body[at-1]) {
		if !ok || len(st.Places) != 1 || !intoFirst[st.Places[0].Kind] || st.Places[0].Unit.Space {
			return
		}
		at++
	}
	slips := before.Body[at:]
	if !slices.ContainsFunc(slips, is[*ins.Stitch]) {
		return
	}
	before.Body = before.Body[:at:at]
	if !is[*ins.RepeatRows](l.Body[0]) {
		l.Body = slices.Concat(slips, l.Body)
	}
}

// intoFirst are the places into which a round is joined.
var intoFirst = map[ins.PlaceKind]bool{ins.InFirst: true, ins.InTop: true, ins.InCentre: true, ins.InEvery: true}

// skipped takes chains that are passed behind a foundation chain, Ch 33, sk 1, into the row that is worked into it.
func (r *Reader) skipped(l *ins.Line) {
	if l.Label == nil && r.crochet && len(l.Unread) == 0 && len(l.Body) == 2 && is[*ins.Chain](l.Body[0]) {
		if k, ok := l.Body[1].(*ins.Skip); ok && len(k.Places) == 1 && !k.Places[0].Unit.Space && k.Places[0].N.By == nil && k.Places[0].N.All < 6 {
			k.Places[0] = ins.Place{Kind: ins.InFirst, N: k.Places[0].N, Unit: ins.Unit{Chain: true, Word: "ch"}, At: k.At}
			r.passed, l.Body = k, l.Body[:1]
		}
		return
	}
	if r.passed != nil && l.Label != nil && len(l.Body) > 0 {
		l.Body = append([]ins.Item{r.passed}, l.Body...)
	}
	r.passed = nil
}

// behindEven is the last instruction alone, if rows worked even stand before it.
func behindEven(body []ins.Item) []ins.Item {
	last := len(body) - 1
	if last < 1 {
		return body
	}
	if e, ok := body[last-1].(*ins.Even); ok && (e.Rows.Set() || e.Length != nil) {
		return body[last:]
	}
	return body
}

// bareShaping takes an increase or a decrease that is all that a sentence says as one of a whole row, at some edge: When
// work measures 4 in, dec 1 st; or as one behind rows worked even: Knit 13 rounds, then decrease one stitch.
func (r *Reader) bareShaping(l *ins.Line) {
	body := behindEven(l.Body)
	if l.Label != nil || !r.knits && len(body) == len(l.Body) {
		return
	}
	at := -1
	for i, n := range body {
		switch k := n.(type) {
		case *ins.Stitch:
			if at >= 0 || !k.Inc && !k.Dec || len(k.Places) > 0 || k.Kind != nil {
				return
			}
			at = i
		case *ins.Nothing, *ins.Measure:
		default:
			return
		}
	}
	if at < 0 {
		return
	}
	at += len(l.Body) - len(body)
	k := l.Body[at].(*ins.Stitch)
	if !slices.ContainsFunc(l.Words, func(w ins.Word) bool {
		return (w.Kind == 'n' || w.S == "one") && w.Line == k.At.Line && w.Col >= k.At.Col && w.End <= k.At.End
	}) { // increase to 47
		return
	}
	s := &ins.Shape{Inc: k.Inc, N: k.N, Edge: "edge"}
	s.HasOver = true
	s.Put(k.At)
	l.Body[at] = s
}

// short tells lines of numbers that have not one a size.
func (r *Reader) short(tokens []text.Token, l *ins.Line) bool {
	part := false
	for i := range tokens {
		t := &tokens[i]
		at := ins.Span{Line: t.Line, Col: t.Col, End: t.End}
		if t.Short == 0 {
			r.bracketed(t, at)
			continue
		}
		if near(tokens, i-1).Is("-") && t.Glued || measuring[near(tokens, i+1).S] { // to fit 86-92 (97-102: 107-112) cm
			continue
		}
		if t.Short < len(r.x.Sizes.Names) && (r.some || t.Short == r.lately) { // one number for each of those
			l.Words[i].Short, part = 0, true
			l.Unread = append(l.Unread, at)
			continue
		}
		l.Short = true
		if r.x.Said.SizesAt.Line == 0 && len(r.o.Sizes.Names) == 0 { // how many sizes there are is a guess
			l.Unread = append(l.Unread, at)
			continue
		}
		r.tellShort(t.S, t.Short, at)
	}
	return l.Short || part
}

// tellShort tells a line of numbers that has not one a size.
func (r *Reader) tellShort(list string, n int, at ins.Span) {
	names := r.x.Sizes.Names
	f := finding.Finding{Kind: "rows/sizes", Severity: finding.Error,
		Message: fmt.Sprintf("%q has %d numbers for %d sizes", list, n, len(names)),
		Want:    fmt.Sprintf("one number for each of %s, or one alone", strings.Join(names, ", ")),
		Fix:     "put in the number that is missing, or a dash where a size has none"}
	if n < len(names) {
		f.Sizes = names[n:]
	} else {
		f.Fix = "take out the number that is too many"
	}
	r.x.Tell(f, at)
}

// sizesHead is a line of sizes with brackets.
var sizesHead = text.Once(`(?i)^\W*(?:\w+ ){0,3}sizes?\b.*[(\[]`)

// bracketed tells once of a line of numbers that is bracketed unlike the line of sizes; in a text without one that is read for a
// pattern, unlike the first of its numbers.
func (r *Reader) bracketed(t *text.Token, at ins.Span) {
	if r.only != nil || t.Num.By == nil || t.List || r.unlike || !strings.ContainsAny(t.S, "([") {
		return
	}
	like, than, own := r.x.Sizes, "the line of sizes", len(r.o.Sizes.Names) == 0
	switch {
	case own:
	case len(r.x.Said.Sizes.Names) > 0:
		like = r.x.Said.Sizes
	case r.bracketing == nil:
		r.bracketing = groupsOf(t.S)
		fallthrough
	default:
		like.Groups, than = r.bracketing, "the lines before it"
	}
	if slices.Equal(groupsOf(t.S), like.Groups) {
		return
	}
	r.unlike = true
	if own && !slices.ContainsFunc(r.x.Src, func(s string) bool { return sizesHead().MatchString(s) }) { // Sizes: Small, Medium, Large
		return
	}
	r.x.Tell(finding.Finding{Kind: "words/brackets", Severity: finding.Note,
		Message: fmt.Sprintf("%q is bracketed unlike %s", t.S, than),
		Want:    "brackets as in " + like.Full(like.Names), Fix: "bracket the numbers like the sizes"}, at)
}

// shortSizes tells once of a line of sizes that is too short or too long itself: most
// lines of numbers then have another length. Where there is no line of sizes, few lines of numbers that have another
// length than all others are told, or else not read.
func (r *Reader) shortSizes() {
	x := r.x
	lists, best, short := r.listsOf()
	if x.Said.SizesAt.Line == 0 {
		if len(r.o.Sizes.Names) == 0 {
			r.guessedSizes(short, lists[0])
		}
		return
	}
	if lists[best] < 3 || lists[best] <= lists[0] {
		return
	}
	x.Findings = slices.DeleteFunc(x.Findings, func(f finding.Finding) bool {
		return f.Kind == "rows/sizes" && strings.Contains(f.Message, fmt.Sprintf(" has %d numbers for ", best))
	})
	x.Tell(finding.Finding{Kind: "rows/sizes", Severity: finding.Error,
		Message: fmt.Sprintf("these are %d sizes, but %d lines of numbers have %d numbers", len(x.Sizes.Names), lists[best], best),
		Fix:     "correct the line of sizes: until then those lines are not checked"}, x.Said.SizesAt)
}

// listsOf are how many lines of numbers have so many of them, those that have one a size under 0; the length that most of the others have, and their
// lines.
func (r *Reader) listsOf() (lists map[int]int, best int, short []*ins.Line) {
	lists = map[int]int{}
	for _, s := range r.x.Sections {
		for _, l := range s.Lines {
			for _, t := range l.Words {
				switch {
				case t.Short > 0:
					short = append(short, l)
					lists[t.Short]++
					if k := lists[best]; lists[t.Short] > k || lists[t.Short] == k && t.Short < best {
						best = t.Short
					}
				case t.Num.By != nil:
					lists[0]++
				}
			}
		}
	}
	return lists, best, short
}

// fewShort is of how many lines of numbers one may have another length and be a slip, where no line tells the sizes.
const fewShort = 10

// guessedSizes tells the lines of numbers of another length than so many others, or leaves them unread.
func (r *Reader) guessedSizes(short []*ins.Line, others int) {
	slip := len(short)*fewShort <= others
	for _, l := range short {
		if !slip {
			l.Short = len(l.Body) == 0 // yarn, and what else is told before the rows
			continue
		}
		for i := range l.Words {
			if t := &l.Words[i]; t.Short > 0 {
				r.tellShort(t.S, t.Short, ins.Span{Line: t.Line, Col: t.Col, End: t.End})
			}
		}
	}
}

// groupsOf is how a line of numbers is bracketed: 1, 3 for 48 (52, 56, 60).
func groupsOf(s string) []int {
	var out []int
	n, digit := 0, false
	for _, c := range s {
		switch {
		case c >= '0' && c <= '9' || !digit && strings.ContainsRune("-–—−‑", c): // a dash alone: a size that has none
			if !digit {
				n++
			}
			digit = true
		case c == '(' || c == '[' || c == ')' || c == ']':
			if n > 0 {
				out = append(out, n)
			}
			n, digit = 0, false
		default:
			digit = false
		}
	}
	if n > 0 {
		out = append(out, n)
	}
	return out
}
