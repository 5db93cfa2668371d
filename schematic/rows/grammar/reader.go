package grammar

import (
	"maps"
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

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
	doubleStars  bool // two stars are
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
	lastNo       int             // the number of the last of them; 0: none
	alternate    int             // 1: all odd rows among them are told by one line, 2: all even ones
	starred      []ins.Item
	passed       *ins.Skip       // chains that a line said are passed, for the row that follows
	mark         string          // the sign before the label of a row, from which rows are repeated
	wraps        map[string]bool // names that the text has for a turn within the row
	patternNames map[string]bool // names of patterns whose rows the text gives
	unlike       bool
	half         partGauge
	begunIn      stitch.Terms // the terms that the rows begin in
	keyTold      bool         // a key has told them
	due          bool         // the gauge is told below its heading
	bracketing   []int        // how the first line of numbers is bracketed
	some         bool         // what is read is for some of the sizes only, and which is not known
	only         []int        // the sizes for which alone it is; nil: all
	lately       int          // for how many sizes a stretch of the piece was told last
	inline       bool         // they are told before the row, and for it alone
	awaits       bool         // by a letter alone on the line before it
	alone        bool         // the label of the row that is gathered stands on a line of its own
	steps        int          // that stand under it in a numbered list
	telling      int          // the line of a paragraph in which the writer tells what she does
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
	r.begunIn = x.Terms
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
	x.Terms = r.begunIn
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
	r.lastNo, r.alternate = 0, 0
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
		if saysRounds(low) {
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
	r.doubleStars = slices.ContainsFunc(r.x.Src, fromDoubleStars().MatchString)
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

// inTheRound are words of work in the round; turnedAround is where the work or the yarn goes around, and no row does.
var (
	inTheRound   = text.Once(`\b(?:rings?|magic|circles?|rnds?|rounds?|around)(?:\b|\d)`)
	turnedAround = text.Once(`\b(?:turn|wrap|yarn|wind|bring|go|loop)(?:s|ed|ing|ped|ping)?\b[^.;]{0,25} around\b`)
)

// saysRounds reports whether a line, in small letters, is of work in the round.
func saysRounds(low string) bool {
	return containsAny(low, "ring", "magic", "circle", "rnd", "round") && inTheRound().MatchString(turnedAround().ReplaceAllString(low, ""))
}

// mostForSizes is how many letters the words have at most that say by names for which sizes a line is.
const mostForSizes = 60

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
	if at := aboutRows().FindStringIndex(raw); at != nil {
		raw = raw[:at[0]] + strings.Repeat(" ", utf8.RuneCountInString(raw[at[0]:at[1]])) + raw[at[1]:]
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

// behindRow is a row behind whose work it is said that others are worked so: Row 1: Purl all odd rows on (WS). Row 2: K2, p to end – and every
// following wrong side row.
var behindRow = text.Once(`(?i)^(\W*(?:row|rnd|round) \d+)\s*((?:\((?:rs|ws|right side|wrong side)\))?)\s*[:.–—-]?\s*((?:\((?:rs|ws)\) *)?)(?:(knit|purl|k|p)\b[,.]?|(.+?)(?: [–—-]|[.;])) ?(?:and )?(?:on |for )?(?:all|every|each) (?:following |foll\.? |subsequent |other )?(odd|even|ws|rs|wrong[- ]side|right[- ]side|alternate|alt)(?:[- ]numbered)? (?:rows?|rnds?|rounds?)((?: on)? ?\(?(?:ws|rs)\)?)?(?: thereafter| throughout)?[).]*\s*$`)

// aboutRows is a sentence that says what rows are together, and works none: Two rows of single crochet form one ridge.
var aboutRows = text.Once(`(?i)(?:^|\. )\s*(?:(?:the|my|this|each|every|first|last|\d+|one|two|three|four|five|six|eight) ){0,3}(?:(?:rows?|rounds?|rnds?)\b[^.:;,*()]{0,60}? (?:forms?|makes? (?:up )?(?:one|1|the) (?:pattern|patt|repeat|ridge|block|square|row|inch)|equals?|looks?|gives?|(?:is|are) (?:as|equal|made|one|1)\b)|(?:cloth|sample|square|scarf|swatch|piece|blanket|single crochet|double crochet) (?:has|is|are|took) (?:\d+ rows?|worked) )[^.:;*()]{0,60}(?:\.|$)`)

// intoRing is what a round of stitches goes into, told as a sentence before them: Round 1: Work all sts into a magic ring: ch 3, 11 dc.
var intoRing = text.Once(`(?i)(: *)(?:work|crochet|make) all (?:of )?(?:the |these )?(?:sts|stitches) (?:in|into|inside) `)

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

// blank takes a blank line, which ends what is gathered unless a row goes on behind it.
func (r *Reader) blank(n int) {
	if r.unended() && (r.alone || n < len(r.x.Src) && starRest().MatchString(r.x.Src[n])) || r.bracketOpen(n) || n < len(r.x.Src) && r.nextNeedle(text.Lex(r.x.Src[n], 1)) {
		return
	}
	if r.labelled() && !strings.ContainsAny(r.raw[len(r.raw)-1:], ".:)]}!?") && r.goesOn(n) || r.sizesGoOn(n) || n < len(r.x.Src) && r.countBelow(r.x.Src[n]) || r.roundGoesOn(n) {
		return
	}
	r.flush()
	r.raw = ""
}

// roundGoesOn reports whether a round of crochet that has hardly begun goes on in the paragraph behind the n-th line, or is only joined there.
func (r *Reader) roundGoesOn(n int) bool {
	label, k, _ := text.Label(r.tokens, r.roundR)
	if label == nil || !label.Round || !r.crochet || n >= len(r.x.Src) {
		return false
	}
	tokens := r.lex(r.x.Src[n], n+1)
	if len(tokens) == 0 || !r.justBegun(k) && !closesBySlip(tokens) {
		return false
	}
	next, _, _ := text.Label(tokens, r.roundR)
	return next == nil && r.cutRow(tokens) && !r.heads(strings.TrimSpace(r.x.Src[n]))
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
		return goes || r.mode == "" && (r.alone || r.unended() || r.stepOf(raw, tokens) || r.cutRow(tokens)) && !r.headsBelow(trimmed)
	}
	last := near(r.tokens, len(r.tokens)-1)
	if leadsOver(r.tokens) || tokens[0].Kind == 'n' && last.Is("next", "following", "foll") || k == len(tokens) && !tokens[k-1].Is(":") && text.GoesOn(r.raw, raw) { // at beg of next / 2 rows; repeat / Row 2
		return true
	}
	small := k < 3 && text.GoesOn(r.raw, raw) && !tokens[0].Cap && tokens[0].Kind == 'w' && tokens[0].Ord == 0
	return goes && (text.Open(r.raw) && !text.CountOpen(r.raw) || label.Name != "" && unicode.IsLower([]rune(trimmed)[0]) || small)
}

// yarnLine is a line below the label of a row that says in which yarn it is worked: Second colour.
var yarnLine = text.Once(`(?i)^\W*(?:[a-z]+ ){1,3}(?:colou?r|yarn|shade|wool|thread)(?: #?\w{1,2})?\W*$`)

// headsBelow reports whether a line is a heading and not the yarn of the row whose label stands alone above it.
func (r *Reader) headsBelow(trimmed string) bool {
	return !(r.alone && yarnLine().MatchString(trimmed)) && r.heads(trimmed)
}

// closesRow is where a row of crochet ends, closesRound where a round does: join with sl st in first sc, sl st to top of ch 3. A
// labelLine begins the next one.
var (
	closesRow   = text.Once(`(?i)\b(?:turn|join)\b`)
	closesRound = text.Once(`(?i)\bjoin(?:ed|ing)?\b[^.;*]{0,40}\b(?:first|1st|top|beg\w*|starting|\d(?:rd|th|nd)|last)\b|\b(?:sl\.? ?st|ss|slip st(?:itch)?)\b[^.;*]{0,25}\b(?:first|1st|top|beg\w*|starting|(?:\d(?:rd|th|nd)|second|third|fourth) (?:ch|of))\b|\bjoin(?:ed|ing)?(?: (?:with|by) (?:an? )?(?:sl\.? ?st|ss|slip stitch))?\W*(?:\d+ ?\w*\W*)?$|\bclose (?:the )?(?:rnd|round)\b`)
	labelLine   = text.Once(`(?i)^\W*(?:\d+(?:st|nd|rd|th) (?:row|rnd|round)|(?:next|foundation) (?:row|rnd|round)|(?:row|rnd|round)s? ?\d)`)
)

// endsAhead reports whether a row comes to its end in the n-th line or one of the few behind it, before another begins; also behind a
// paragraph, if it has hardly begun.
func (r *Reader) endsAhead(n int, closes *text.Pattern, begun bool) bool {
	const few = 8
	for k := n; k < n+few && k <= len(r.x.Src); k++ {
		line := r.x.Src[k-1]
		if !begun && strings.TrimSpace(line) == "" && strings.HasSuffix(strings.TrimSpace(r.x.Src[k-2]), ".") || labelLine().MatchString(line) {
			return false
		}
		if closes.MatchString(line) {
			return true
		}
	}
	return false
}

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

// ownRow reports whether a line is a row of its own, and not how all rows of one side are worked.
func ownRow(l *ins.Line) bool { return l.Label != nil && l.Label.Name != "every" }

// goesOn reports whether the line behind a blank one goes on with a row: texts are printed with
// a blank line after each line of the column.
func (r *Reader) goesOn(n int) bool {
	if n >= len(r.x.Src) {
		return false
	}
	next := strings.TrimSpace(r.x.Src[n])
	return next != "" && unicode.IsLower([]rune(next)[0])
}

// otherStart leads to another way to work what stands before it: Alternate way to begin: ch 2, 6 sc in 2nd ch from hook. Not one of rows.
var otherStart = text.Once(`(?i)^\W*(?:alternat(?:e|ive|ively)|another (?:way|option|method)|option(?:ally)?|or|if you (?:prefer|like|wish|want|do not|don['’]t|can['’]t|cannot))\b[^:.\d]{0,40}: ?\S|^\W*optional ?: ?\S`)

func offersOther(line string) bool {
	at := otherStart().FindStringIndex(line)
	return at != nil && !slices.ContainsFunc(strings.Fields(line[:at[1]]), func(w string) bool {
		_, row := text.RowWord(strings.ToLower(strings.Trim(w, ":")))
		return row
	})
}

func is[T ins.Item](n ins.Item) bool {
	_, ok := n.(T)
	return ok
}

// multipleAlone is a line that says of what a count is a multiple, and is no title.
var multipleAlone = text.Once(`(?i)^\W*multiples? of \d`)

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

// parser is a parser of a whole line, without what brackets do not close.
func (r *Reader) parser(tokens []text.Token, line *ins.Line) *parser {
	tree, loose, deep := text.Tree(text.Fenced(drawnUp(tokens, r.x.Terms)))
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

// endsInSts reports whether a row's count behind a sign ends there, and other work begins: K4 — 20 sts Continue in st st; in knitting
// also as a sentence: K2tog across; 20 sts remain. Purl 1 row.
func (r *Reader) endsInSts(t []text.Token, i int) bool {
	if !t[i+1].Cap || !verbs[t[i+1].S] {
		return false
	}
	if i > 2 && t[i].Is("st", "sts", "stitches") && t[i-1].Kind == 'n' && t[i-2].Is("-", "--", ":", "=") {
		return true
	}
	if r.crochet || !t[i].Is(".") || !goesAcross(t[i+1:]) || slices.ContainsFunc(t[:i], func(t text.Token) bool { return t.Is("needle", "needles", "turn") }) {
		return false
	}
	k := i - 1
	for k > 2 && t[k].Is(")", "]", "remain", "remaining", "rem", "remains", "left", "in", "all", "total", "on") {
		k--
	}
	return k > 2 && t[k].Is("st", "sts", "stitches") && t[k-1].Kind == 'n' && t[k-2].Is("-", "--", ":", "=", ";", ",", ".", "(", "[", "having")
}

// goesAcross reports whether a sentence of knitting begins there that works a row or more: Purl 1 row; Purl, increasing 10 sts evenly; P2tog across.
func goesAcross(t []text.Token) bool {
	if !t[0].Is("k", "knit", "p", "purl", "work", "cast", "bind", "bo", "co", "inc", "dec", "increase", "decrease", "cont", "continue") {
		return false
	}
	across := false
	for i := range t {
		_, row := text.RowWord(t[i].S)
		switch {
		case t[i].Is("these", "those", "needle", "needles", "holder", "only"):
			return false
		case t[i].Is("."):
			return across
		}
		across = across || row || t[i].Is("across", "evenly", "end", "back", "even")
	}
	return across
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
