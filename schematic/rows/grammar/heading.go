package grammar

import (
	"slices"
	"strings"
	"unicode"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

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

// between is a line that tells how all rows of one side are worked, in other words than a row: On WS rows, work all sts as they appear;
// work yo's P.
var between = text.Once(`(?i)^\W*(?:(?:on|in|for) (?:all |the )?|(?:work|knit) all |all )?(ws|wrong[- ]side|even|even[- ]numbered)\s+rows?\s*[,:–-]?\s+(?:(as|(?:work |knit )?(?:all )?(?:the )?(?:sts|stitches) as) they (?:appear|present|face|come|lie)|(?:p|purl)(?: all)?(?: sts| stitches)? and (?:all )?(?:yo|yarn over)['’]?s)[^.]{0,40}\.?$`)

// plainBetween is a sentence of its own that tells that all rows of one side are plain: Purl all WS rows.
var plainBetween = text.Once(`(?i)^\W*(?:(row|rnd|round) (\d+)\W+(?:knit|purl|k|p)\b(?: across)?[.;,] )?(?:then )?(knit|purl|k|p)(?: across)? (?:all|every|each|the) (?:other |following )?(odd|even|ws|rs|wrong[- ]side|right[- ]side|alternate)(?:[- ]number(?:ed)?)? (?:rows?|rnds?|rounds?)(?: throughout)?\.?\s*$`)

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
	if m := plainBetween().FindStringSubmatch(raw); m != nil {
		if m[1] != "" {
			return m[1] + " " + m[2] + " and all " + m[4] + " rows: " + m[3]
		}
		return "All " + m[4] + " rows: " + m[3]
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

// inRounds reports whether the last row with a name was a round.
func (r *Reader) inRounds() bool {
	for i := len(r.sec.Lines) - 1; i >= 0; i-- {
		if l := r.sec.Lines[i].Label; l != nil {
			return l.Round
		}
	}
	return r.roundR
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

// commences is a line that says no more than in which terms rows are written, or that they begin.
var commences = text.Once(`(?i)^\W*(?:written in |in )?(?:us|uk|u\.s\.|u\.k\.|american|british)(?: crochet)?(?: terms| terminology)\W*$|^\W*(?:now )?(?:commence|begin|start)(?:ing)?(?: (?:the|main|stitch))* (?:patt(?:ern)?|lace|cable|chart)\W*$`)

// cutOff are words alone on a line that only begin an instruction.
var cutOff = map[string]bool{"ch": true, "row": true, "rnd": true, "round": true, "rep": true, "sk": true, "work": true, "chain": true, "sc": true, "dc": true}

// aRing is a line that only says that the work begins with a ring that is drawn together.
var aRing = text.Once(`(?i)^\W*(?:(?:make|create|start with|begin with|form) )?(?:an? )?(?:(?:magic|adjustable|sliding) (?:ring|circle|loop)|mr)\W*$|^(?:make|create) an? mc\W*$`)

// heading takes a line that is a heading.
func (r *Reader) heading(trimmed string, n int) bool {
	name, marked, ok := text.Heading(trimmed)
	if ok && (r.crochet && aRing().MatchString(trimmed) || cutOff[strings.ToLower(trimmed)]) {
		return false
	}
	if t, said := text.TermsSaid(trimmed); (ok || said) && commences().MatchString(trimmed) {
		if r.x.Read.Words++; said && r.x.Read.Lines > 0 {
			r.turnTerms(t, n)
		}
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
