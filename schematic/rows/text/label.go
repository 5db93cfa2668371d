package text

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	ins "flatwright/schematic/rows/instructions"
)

// RowWord reports whether a word means a row, and whether it means a round.
func RowWord(w string) (round, ok bool) {
	switch w {
	case "row", "rows":
		return false, true
	case "rnd", "rnds", "round", "rounds", "rd", "rds":
		return true, true
	}
	return false, false
}

// labeller reads how a row is called at the beginning of a line.
type labeller struct {
	t      []Token
	i      int
	roundR bool
	l      ins.Label
	count  []Token // a bracket of a count within the label
	firm   bool    // a side or a sign stands behind it
	verb   bool    // its name may be an instruction: a sign must stand behind it
}

var nothing Token

func (p *labeller) peek(k int) *Token {
	if i := p.i + k; i >= 0 && i < len(p.t) {
		return &p.t[i]
	}
	return &nothing
}

func (p *labeller) eat(words ...string) bool {
	for k, w := range words {
		if !p.peek(k).Is(w) {
			return false
		}
	}
	p.i += len(words)
	return true
}

func (p *labeller) eatAny(words ...string) bool {
	if p.peek(0).Is(words...) {
		p.i++
		return true
	}
	return false
}

// Label reads how a line's row is called: Row 3 (RS):, 1st and 2nd rows—, 6-7., Next 3 rows:,
// R5-R8:, Eyelet row (RS), 2 and all even rounds:. It gives how many tokens it takes, none
// if the line has no label, and the count that stands within it.
func Label(t []Token, roundR bool) (label *ins.Label, n int, count []Token) {
	p := labeller{t: t, roundR: roundR}
	if !p.side() || p.eatAny(":") && !p.rowAhead() || !p.rowAhead() || p.peek(0).Is("rows", "rnds", "rounds") && p.peek(1).Is(":") {
		p.i, p.l = 0, ins.Label{}
	}
	p.firm = false
	if n := told(t); n > 0 {
		p.i = 1
		p.numbered()
		if p.i == n {
			return p.called(n), n, nil
		}
		p.i, p.l = 0, ins.Label{}
	}
	if !p.numbered() && !p.bare() && !p.named() {
		return nil, 0, nil
	}
	p.behind()
	p.signs()
	if !p.firm && p.i == len(t) && p.alone() {
		p.firm = true
	}
	if !p.firm && (p.verb || !p.follows()) {
		return nil, 0, nil
	}
	return p.called(p.i), p.i, p.count
}

// called is the label, which has n tokens.
func (p *labeller) called(n int) *ins.Label {
	l := p.l // most lines have none: the labeller itself needs no memory of its own
	l.At = ins.Span{Col: p.t[0].Col, End: p.t[n-1].End}
	return &l
}

// told is behind the name of a row whose work a sentence tells: The 6th round is worked in treble; the 2nd and 3rd rows
// consist of double crochet. 0: none stands there.
func told(t []Token) int {
	if len(t) < 5 || !t[0].Is("the") || t[1].Ord == 0 {
		return 0
	}
	for i := 2; i < len(t)-1 && i < 8; i++ {
		if _, row := RowWord(t[i].S); !row || t[i].Kind != 'w' {
			continue
		}
		if v := &t[i+1]; v.Is("consist", "consists") || v.Is("is", "are") && i+2 < len(t) && t[i+2].Is("worked", "made", "crocheted", "knitted") {
			return i + 1
		}
	}
	return 0
}

// alone reports whether a label is the whole of its line, without a sign: Round 2.
func (p *labeller) alone() bool {
	_, word := RowWord(p.t[0].S)
	return word && p.t[0].Cap && !p.l.Next && p.l.Side == 0 && (len(p.t) <= 4 && p.t[len(p.t)-1].Kind == 'n' || len(p.t) > 4 && p.t[1].Kind == 'n' && p.t[2].Is("(") && p.t[len(p.t)-1].Is(")"))
}

// rowAhead reports whether a label may stand behind a side: RS Row 1.
func (p *labeller) rowAhead() bool {
	t := p.peek(0)
	if _, ok := RowWord(t.S); ok && t.Kind == 'w' {
		return true
	}
	return t.Ord > 0 || t.Is("r", "next") || t.Kind == 'n'
}

// side reads (RS), RS, right side, (wrong side of work), (RS - inc row).
func (p *labeller) side() bool {
	save := p.i
	bracket := p.eatAny("(", "[", "{")
	side := sideOf(p.peek(0), p.peek(1))
	if side == 0 {
		p.i = save
		return false
	}
	if p.i++; p.peek(0).Is("side") {
		p.i++
	}
	p.eatAny("facing")
	p.eat("of", "work")
	if bracket {
		if !p.toClose() {
			p.i = save
			return false
		}
	}
	p.l.Side = side
	p.firm = true
	return true
}

func sideOf(a, b *Token) int {
	switch {
	case a.Is("rs", "rsf") || a.Is("right") && b.Is("side"):
		return 1
	case a.Is("ws", "wsf") || a.Is("wrong", "reverse", "back") && b.Is("side"):
		return 2
	}
	return 0
}

// SideNamed is the side that words say a row is of, and nothing else: rs; wrong side facing; this is a right side row; this is the wrong
// side of the scarf. 0: they say none, or more.
func SideNamed(t []Token) (side int) {
	for i := range t {
		a, b := &t[i], &nothing
		if i+1 < len(t) {
			b = &t[i+1]
		}
		switch {
		case sideOf(a, b) > 0:
			side = sideOf(a, b)
		case side > 0 && a.Is("of") && b.Is("the", "your") && i+3 == len(t):
			return side
		case !a.Is("(", "[", "<", "=", "side", "facing", "of", "work", "worked", "the", "this", "is", "a", "row", "you", "with", "on", "fabric", "-", "--", ","):
			return 0
		}
	}
	return side
}

// toClose goes behind the bracket that is open, and takes the name that it says.
func (p *labeller) toClose() bool {
	for p.i < len(p.t) {
		t := p.peek(0)
		p.i++
		switch {
		case t.Is(")", "]", "}"):
			return true
		case t.Is("(", "[", "{"):
			return false
		case t.Is("dec", "inc", "decrease", "increase", "buttonhole") && p.l.Name == "":
			p.l.Name = RowName(t.S)
		case sideOf(t, p.peek(0)) > 0:
			p.l.Side = sideOf(t, p.peek(0))
		}
	}
	return false
}

// RowName is the name of a row as later lines call it: inc for increase.
func RowName(s string) string {
	s = strings.ReplaceAll(strings.ReplaceAll(s, "increase", "inc"), "decrease", "dec")
	return strings.TrimSpace(s)
}

// number reads one number of a row, 5, R5 or fifth.
func (p *labeller) number() (ins.Num, bool) {
	t := p.peek(0)
	switch {
	case t.Kind == 'n':
		p.i++
		return t.Num, true
	case t.Ord > 0:
		p.i++
		return ins.N(t.Ord), true
	case t.Is("r", "row", "rnd", "round", "rd") && p.peek(1).Kind == 'n':
		p.i += 2
		return p.peek(-1).Num, true
	}
	return ins.Num{}, false
}

// numbered reads Row 3, Rows 4-20, 1st row, 7th and 8th rows, R5.
func (p *labeller) numbered() bool {
	start := p.i
	t := p.peek(0)
	if _, row := RowWord(p.peek(1).S); row && p.peek(2).Kind == 'n' && t.Is("pattern", "patt", "pat", "lace", "cable") { // Pattern row 1
		p.i++
		t = p.peek(0)
	}
	round, word := RowWord(t.S)
	word = word || t.Is("turn", "pass") && t.Cap && p.peek(1).Kind == 'n' && p.peek(2).Is(":") // Turn 1: Sl 1, p14, p2tog
	switch {
	case word && t.Kind == 'w':
		p.i++
		p.eatAny("no", "number", "nos")
		if !t.Is("rows", "rounds") || p.peek(0).Is("#") { // on next 4 RS rows. 34 (36) sts
			p.eatAny(".", "#")
		}
		p.nameBefore()
	case t.Is("r") && p.peek(1).Kind == 'n':
		p.i++
		round = p.roundR
	case t.Ord > 0:
	default:
		return false
	}
	if !p.numbers() {
		p.i = start
		return false
	}
	if !word && t.Ord > 0 {
		if round, word = p.wordBehind(); !word {
			p.i = start
			return false
		}
	}
	p.l.Round = round
	return true
}

// wordBehind reads the word for rows behind their numbers: 2nd and all even rounds, 1st wrong-side row.
func (p *labeller) wordBehind() (round, word bool) {
	if round, word = RowWord(p.peek(-1).S); !word {
		firm := p.firm
		p.side()
		p.firm = firm
		round, word = RowWord(p.peek(0).S)
		p.i++
	}
	return round, word && p.peek(-1).Kind == 'w'
}

// nameBefore passes the name of a row in a bracket before its number: Round (left hand) 15:
func (p *labeller) nameBefore() {
	if k := 1; p.peek(0).Is("(", "[") {
		for ; k < 5 && p.peek(k).Kind == 'w'; k++ {
		}
		if k > 1 && p.peek(k).Is(")", "]") && p.peek(k+1).Kind == 'n' && p.peek(k+2).Is(":", ".") {
			p.i += k + 1
		}
	}
}

// numbers reads 3; 4-20; 3, 5 and 7; 2 and all even; 5 to 8 inclusive.
func (p *labeller) numbers() bool {
	var ok bool
	if p.l.From, ok = p.number(); !ok {
		return false
	}
	p.l.To = p.l.From
	if t := p.peek(0); t.Kind == 'w' && t.Glued && len(t.S) == 1 && p.peek(-1).Kind == 'n' && !(t.Is("k", "p") && p.peek(1).Kind == 'n' && p.peek(1).Glued) { // row 2a
		if t.Is("n") { // row 4n - 2
			return false
		}
		p.i++
	}
	for {
		save := p.i
		if p.peek(0).Is("row", "rnd", "round") && (p.peek(1).Is("to", "and", "-", ",")) { // 1st row to 4th row
			p.i++
		}
		if p.behindDash() || !p.further() {
			p.i = save
			return true
		}
	}
}

// further reads what one more sign or word adds to the numbers of a label; false if nothing is added.
func (p *labeller) further() bool {
	if p.peek(0).Is(".") && p.peek(1).Is("-", "--") && p.peek(2).Kind == 'n' && (p.peek(3).Is(".") || p.peek(1).Glued && p.peek(2).Glued && p.peek(-1).Glued == (p.i > 1)) { // 4. - 5. and 5.-11
		p.i++
	}
	switch {
	case p.eatAny(rangeWords...):
		to, ok := p.number()
		if !ok {
			return false
		}
		if p.l.To.All > p.l.From.All && p.peek(-2).Is("-") { // rows 3-5-7
			p.l.Listed, p.l.To = append(p.l.Listed, p.l.To), p.l.From
		}
		if len(p.l.Listed) > 0 {
			p.l.Listed = append(p.l.Listed, to)
			return true
		}
		p.l.To = to
		p.eatAny("inclusive", "incl")
	case p.every():
	case p.peek(0).Is("(") && p.everyBracketed():
	case p.peek(0).Is("+") && p.peek(0).Glued && p.peek(1).Kind != 'n': // Rounds 15+ sc around
		p.i++
	case p.eat(",", "and") || p.eat(",", "&") || p.eatAny(",", "and", "&", "+", "or"):
		n, ok := p.number()
		if !ok {
			return false
		}
		p.l.Listed = append(p.l.Listed, n)
		p.listedTo(n)
	default:
		return false
	}
	return true
}

var rangeWords = []string{"-", "~", "--", "to", "through", "thru", "till"}

// listedTo reads on to the end of a range in a list: rows 1-4 and 9-12.
func (p *labeller) listedTo(n ins.Num) {
	for p.eatAny(rangeWords...) {
		to, ok := p.number()
		if !ok {
			return
		}
		for k := n.All + 1; k <= to.All && to.By == nil && len(p.l.Listed) < 400; k++ {
			p.l.Listed = append(p.l.Listed, ins.N(k))
		}
	}
}

// behindDash reports whether the dash ahead closes the label, and what stands behind it is the
// row: Round 1 - 6sc into ring, Row 2 - 2 sc in each st; rounds 6 - 10 are a range.
func (p *labeller) behindDash() bool {
	dash, n, next := p.peek(0), p.peek(1), p.peek(2)
	if !dash.Is("-", "--") || n.Kind != 'n' {
		return false
	}
	if n.Glued { // Round 4–1 sc in each of next 2 sc
		_, again := RowWord(next.S)
		return p.peek(-2).Is("row", "round", "rnd") && next.Kind == 'w' && !again && p.l.From.By == nil && !n.List && n.Num.All < p.l.From.All
	}
	if dash.Glued && p.l.From.By == nil && !n.List { // Row 7- 1 sc in each st, Row 45- 5-dc shell
		one := p.peek(-2).Is("row", "round", "rnd", "rd", "r")
		return one && (next.Kind == 'w' && next.S != "row" && n.Num.All <= p.l.To.All || next.Is("-") && next.Glued && p.peek(3).Kind == 'w' && p.peek(3).Glued)
	}
	if !dash.Glued && p.runsBack(n, next) {
		return n.Num.All < p.l.From.All
	}
	if dash.Glued || next.Kind != 'w' || next.Is("knit", "purl", "k", "p", "plain") && n.Num.All > p.l.From.All { // Row 5 – 7 knit
		return false
	}
	if _, again := RowWord(next.S); again && p.peek(3).Is(":", ".", "-", "--", ")") { // 1 row - 4 rows:
		return false
	}
	return next.Glued || !next.Cap && (p.peek(-2).Is("row", "round", "rnd", "rd", "r") || p.peek(-1).Is("row", "round", "rnd", "rd"))
}

// runsBack reports whether a number behind a dash may be that of a range or of stitches: Row 11 - 1, dec, 9, dec; ROUND 6 - 1 CH. The smaller one
// is of stitches.
func (p *labeller) runsBack(n, next *Token) bool {
	return p.l.From.By == nil && !n.List && (next.Is(",") || next.Cap && p.peek(-2).Is("row", "round", "rnd"))
}

// every reads 'and all even rounds', 'and every following wrong-side row'.
func (p *labeller) every() bool {
	save := p.i
	p.eatAny("row", "rnd", "round")
	p.eatAny(",")
	and := p.eatAny("and", "&", "then")
	if !and && p.i == save {
		return false
	}
	p.eatAny("on", "then")
	found := p.eatAny("all", "every", "each")
	for p.eatAny("following", "foll", "other", "subsequent", "remaining", "rem") {
		found = true
	}
	a, b := p.peek(0), p.peek(1)
	switch {
	case !and && !found && sideOf(a, b) > 0: // Row 3, RS: the side of that row
		p.i = save
		return false
	case a.Is("odd", "uneven") || sideOf(a, b) == 1:
		p.l.Odd = true
	case a.Is("even", "alt", "alternate", "alternative", "alternating", "return") || sideOf(a, b) == 2 || found && a.Ord == 2:
		p.l.Even = true
	case found && (a.Is("row", "rows", "rnd", "rnds", "round", "rounds")) && p.peek(-1).Is("other"):
		p.l.Even = true
		p.i--
	default:
		p.i = save
		return false
	}
	if p.l.From.All%2 == 1 && p.l.Even { // counted from an odd row
		p.l.Even, p.l.Odd = false, true
	}
	if side := sideOf(a, b); side != 0 && p.l.Side == 0 && p.l.From.Set() {
		p.l.Side = side
	}
	if p.i++; p.peek(-1).Is("right", "wrong") {
		p.i++
	}
	p.eatAny("numbered", "number")
	for p.eatAny("following", "foll", "alt", "alternate") {
	}
	if _, ok := RowWord(p.peek(0).S); ok && !(p.peek(-1).Ord > 0) {
		p.i++
	}
	if _, ok := RowWord(p.peek(1).S); ok && p.peek(0).Is("through", "thru", "to") && p.peek(2).Kind == 'n' {
		p.i += 3
	}
	return true
}

// everyBracketed reads (and all odd rounds) behind the number of a label.
func (p *labeller) everyBracketed() bool {
	save, l := p.i, p.l
	p.i++
	if p.every() && p.eatAny(")", "]") {
		return true
	}
	p.i, p.l = save, l
	return false
}

// bare reads 3. and 6-7. and 11, 12, 13.: numbers alone, if a sign stands behind them.
func (p *labeller) bare() bool {
	start := p.i
	ordinal := p.peek(0).Ord > 0
	if p.peek(0).Kind != 'n' && !ordinal || p.peek(0).List || !p.numbers() {
		return false
	}
	if ordinal && !p.peek(0).Is("--") && !(p.peek(0).Is(".") && p.peek(1).Is("--", "-")) { // 4th.--
		p.i, p.l = start, ins.Label{Side: p.l.Side}
		return false
	}
	round, word := p.rowWord()
	if _, again := RowWord(p.peek(2).S); word && again && p.peek(0).Is("/") && p.peek(1).Kind == 'n' && p.peek(3).Is("/") { // 7-12 rows / 6 rows /
		p.i += 4
	}
	t := p.peek(0)
	if c := p.peek(1); !word && t.Is("ch") && t.Glued && t.Col == p.peek(-1).End+1 && c.Kind == 'n' && c.Glued && p.peek(2).Is(",") { // 2-ch1, sc in each st
		p.l.Round, p.firm = round, true
		return true
	}
	if !p.ends(word) && !p.l.Odd && !p.l.Even || p.i+1 >= len(p.t) || !word && t.Is("-", "--") && p.peek(1).Kind == 'n' {
		p.i, p.l = start, ins.Label{Side: p.l.Side}
		return false
	}
	if t.Is(".") && p.peek(1).Is(")") || t.Is("-") && p.peek(1).Glued { // 1.) and 2-ch1,
		p.i++
	}
	p.eatAny(")")
	p.l.Round = round
	p.firm = true
	return true
}

// rowWord reads the word for rows behind a number, if it stands there: 3 row:, 1.row:
func (p *labeller) rowWord() (round, word bool) {
	if _, row := RowWord(p.peek(1).S); row && p.peek(0).Is(".") && p.peek(2).Is(":", "-", "--", "=") {
		p.i++
	}
	if round, word = RowWord(p.peek(0).S); !word {
		return p.roundR, false
	}
	p.i++
	return round, true
}

// ends reports whether a sign stands there that ends a label without a word for rows before it, or with one.
func (p *labeller) ends(word bool) bool {
	t := p.peek(0)
	return t.Is(":", ".", ")", "--", "|") || t.Is("-") && (!t.Glued || p.peek(1).Kind == 'w' && (!p.peek(1).Glued || p.peek(1).Is("ch") && p.peek(2).Kind == 'n' && p.peek(3).Is(","))) ||
		word && t.Is("=") && !p.peek(2).Is("inch", "inches", "in", "ins", "\"", "”", "″", "cm", "cms", "mm") // 9 rows = 1 inch is of a gauge
}

// names are words that begin the name of a row; starts are words that begin an
// instruction instead.
var names = set("next foundation set setup eyelet dividing raglan increase decrease inc dec final joining edging buttonhole base beginning ridge pattern shaping cable lace " +
	"starting picot chain short decreasing increasing turning division marker plain mesh border hem last fold folding bind cast neck yoke gather")

var starts = set("work knit k purl p rep repeat cont continue at to for in with ch sc dc tr hdc htr these this each every of from end ending after when until by make do skip " +
	"on beg turn join complete divide the arrange distribute a finish place sl slip fasten all as over bo co count both between during if and then follow using change before while is are tip tips hint insert attach sew stuff embroider glue")

// named reads Next row, Next 3 rows, Foundation row, Dividing row, Set-up round 2, RS rows, every WS row.
func (p *labeller) named() bool {
	start := p.i
	if p.everyRow() {
		return true
	}
	switch lead := p.peek(0); {
	case !lead.Is("for", "over", "on") || !p.nextAhead():
	case lead.Is("on"): // On the next round, k12, pm
		start = p.i
		defer func() { p.firm, p.verb = p.l.Next && p.peek(0).Is(","), !p.peek(0).Is(",") }()
	default: // For the next 2 rows:
		defer func() { p.verb = true }()
	}
	if p.peek(0).Ord > 0 && p.peek(1).Is("inc", "dec", "increase", "decrease", "short", "buttonhole", "eyelet") { // 2nd inc row
		p.i++
		start, p.l.From = p.i, ins.Num{}
		defer func() { p.verb = false }()
	}
	first := p.peek(0)
	several := first.Is("first") && p.peek(1).Kind == 'n' // First 2 rows
	if first.Kind != 'w' || starts[first.S] || p.t[start].Ord > 0 && p.t[start].S != "second" && !several {
		return false
	}
	if p.setUp() {
		return true
	}
	words, k := p.nameWords()
	round, ok := RowWord(p.peek(k).S)
	if !ok || k == 0 || len(words) == 0 {
		p.l.From = ins.Num{}
		return false
	}
	p.i += k + 1
	p.l.Next, p.l.Round = true, round
	if !p.l.From.Set() {
		p.l.From = ins.N(1)
	}
	if words[0] == "next" || several || words[0] == "last" && len(words) == 1 {
		words = words[1:]
	}
	p.l.Name = RowName(strings.Join(words, " "))
	p.namedNumbers(first)
	p.verb = !names[first.S] || first.Is("inc", "dec", "increase", "decrease", "bind", "cast", "set", "place", "marker", "joining", "last", "chain", "lace", "picot", "gather", "short") && !p.peek(0).Cap && !(first.Is("last") && p.peek(0).Is(",")) // Last row, ch 1
	return true
}

// setUp reads the words that set up a pattern, with the side of their row: Set-Up Body Patterns (RS).
func (p *labeller) setUp() bool {
	k := 1
	if !p.peek(0).Is("set", "setup") || p.peek(0).Is("set") && !p.peek(1).Is("up") {
		return false
	}
	for k < 5 && p.peek(k).Kind == 'w' && !p.peek(k).Is("row", "rows", "rnd", "round") {
		k++
	}
	if !p.peek(k).Is("(", "[") || sideOf(p.peek(k+1), p.peek(k+2)) == 0 {
		return false
	}
	p.i += k
	p.l.Next, p.l.From, p.l.Name = true, ins.N(1), "set up"
	return true
}

// nextAhead goes behind a preposition to 'next', if that stands behind it.
func (p *labeller) nextAhead() bool {
	k := 1
	for p.peek(k).Is("the") {
		k++
	}
	if !p.peek(k).Is("next", "following") {
		return false
	}
	p.i += k
	return true
}

// nameWords are the words before the word for rows, which is the k-th ahead; none if another word ends the name.
func (p *labeller) nameWords() (words []string, k int) {
	for ; k < 5; k++ {
		t := p.peek(k)
		if t.Kind == 'n' && k == 1 && p.peek(0).Is("next", "first", "last", "following") { // Next 3 rows
			p.l.From = t.Num
			continue
		}
		if t.Kind != 'w' || t.Is("of", "to", "in", "every", "each", "at", "and", "on", "with") {
			return nil, 0
		}
		if _, ok := RowWord(t.S); ok {
			break
		}
		if len(words) > 0 && t.Is("last", "next") { // fold last row in half
			return nil, 0
		}
		words = append(words, t.S)
	}
	return words, k
}

// namedNumbers passes the number behind a name, Set-up round 2, and takes a range for how many rows there are:
// Brim rounds 1-12.
func (p *labeller) namedNumbers(first *Token) {
	from := p.peek(0)
	if from.Kind != 'n' || from.List || first.Is("next") {
		return
	}
	p.i++
	last := p.peek(1)
	if k := p.listed(from.Num.All); k > 0 {
		p.l.From = ins.N(k + 1)
		p.i += 2 * k
		return
	}
	if last.Kind == 'n' && last.Num.All >= from.Num.All && (p.peek(0).Is("-") && (last.Glued || p.peek(2).Is(":")) || p.peek(0).Is("to", "through", "thru", "and") && !last.List) {
		p.l.From = ins.N(last.Num.All - from.Num.All + 1)
		p.i += 2
		return
	}
	if p.l.Name != "" && from.Num.By == nil {
		p.l.Name += " " + strconv.Itoa(from.Num.All)
	}
}

// listed is how many numbers stand behind that of the first row of a name, one behind the other up to a colon: Thumb rows 2, 3 and 4:
func (p *labeller) listed(n int) (k int) {
	for p.peek(2*k).Is(",", "and", "&") && p.peek(2*k+1).Kind == 'n' && p.peek(2*k+1).Num.All == n+k+1 {
		k++
	}
	if k > 1 && p.peek(2*k).Is(":") {
		return k
	}
	return 0
}

// everyRow reads RS rows, all wrong-side rows, every even row.
func (p *labeller) everyRow() bool {
	save := p.i
	all := p.eatAny("all", "every", "each")
	p.eatAny("other", "following")
	a, b := p.peek(0), p.peek(1)
	l := ins.Label{Name: "every"}
	switch {
	case a.Is("odd", "uneven") || sideOf(a, b) == 1:
		l.Odd = true
	case a.Is("even", "alternate", "alt") || sideOf(a, b) == 2:
		l.Even = true
	default:
		p.i = save
		return false
	}
	if p.i++; p.peek(-1).Is("right", "wrong") {
		p.i++
	}
	if p.peek(1).Is("numbered") {
		p.eatAny("-")
	}
	p.eatAny("numbered")
	round, ok := RowWord(p.peek(0).S)
	plural := strings.HasSuffix(p.peek(0).S, "s")
	if !ok || !all && !plural {
		if ok && !a.Is("odd", "uneven", "even", "alt", "alternate") && p.peek(0).Kind == 'w' { // RS row:
			p.i++
			p.l.Next, p.l.From, p.l.Round, p.l.Side, p.verb = true, ins.N(1), round, sideOf(a, b), true
			return true
		}
		p.i = save
		return false
	}
	p.i++
	if p.peek(0).Kind == 'n' && p.numbers() { // even-numbered rounds 2-8
		l.From, l.To = p.l.From, p.l.To
	}
	l.Round, l.Side = round, sideOf(a, b)
	p.l, p.verb = l, true
	return true
}

// behind reads what may stand behind a label: sides, names and counts in brackets.
func (p *labeller) behind() {
	for {
		save := p.i
		switch {
		case p.every():
			continue
		case p.peek(0).Is(":") && p.peek(1).Is("and") && p.peek(2).Is("every", "all", "each"): // Row 4: And every other row knit
			if p.i++; p.every() {
				continue
			}
		case p.peek(0).Is(",", "-", "--", ":") && sideOf(p.peek(1), p.peek(2)) != 0 && p.sideEnds(1):
			p.i++
			p.side()
			continue
		case sideOf(p.peek(0), p.peek(1)) != 0 && p.side():
			continue
		case p.peek(0).Is("is") && p.saysSide():
			continue
		case p.eat("for", "all", "sizes") || p.eat("all", "sizes") || p.overAll() || p.ofPattern():
			continue
		case p.peek(0).Is("(", "[", "{"):
			if p.bracket() {
				continue
			}
		}
		p.i = save
		return
	}
}

// overAll reads that a row goes over all stitches, up to a sign: 3rd row across all sts:
func (p *labeller) overAll() bool {
	k := 2
	for p.peek(k).Is("the", "of", "these") {
		k++
	}
	if !p.peek(0).Is("across", "over", "on") || !p.peek(1).Is("all") || !p.peek(k).Is("sts", "stitches") || !p.peek(k+1).Is(":", ".", "-", "--") {
		return false
	}
	p.i += k + 1
	return true
}

// saysSide reads that a row is one of a side, up to a colon: Row 1 is a wrong-side row:
func (p *labeller) saysSide() bool {
	k := slices.IndexFunc(p.t[p.i:], func(t Token) bool { return t.Is(":") })
	if k < 0 || SideNamed(p.t[p.i:p.i+k]) == 0 {
		return false
	}
	p.l.Side = SideNamed(p.t[p.i : p.i+k])
	p.i += k
	return true
}

// ofPattern reads of what a row is one, up to a colon: 1st row of lace pattern:
func (p *labeller) ofPattern() bool {
	k := 1
	for ; k < 5 && p.peek(k).Kind == 'w'; k++ {
	}
	if !p.peek(0).Is("of") || k < 2 || !p.peek(k).Is(":") || !p.peek(k-1).Is("pattern", "patt", "border", "edging", "lace", "yoke", "skirt", "trim", "trimming", "ribbing", "rib") {
		return false
	}
	p.i += k
	return true
}

// sideEnds reports whether a side that stands k tokens on is the whole of its clause.
func (p *labeller) sideEnds(k int) bool {
	n := k + 1
	if p.peek(k).Is("right", "wrong") {
		n++
	}
	return p.peek(n).Is(":", ".", ",", "-", "--") || p.peek(n).Cap
}

// bracket reads (RS), (inc row), (12 sts) behind a label; other brackets are instructions.
func (p *labeller) bracket() bool {
	open := p.i
	if p.side() {
		return true
	}
	p.i++
	from := p.i
	plain, number, name := true, false, ""
	for p.i < len(p.t) && !p.peek(0).Is(")", "]", "}") {
		t := p.peek(0)
		number = number || t.Kind == 'n'
		if t.Is("(", "[", "{", "*") {
			plain = false
		}
		if t.Is("dec", "inc", "decrease", "increase", "buttonhole", "eyelet") {
			name = RowName(t.S)
		}
		p.i++
	}
	k := p.i - from
	closed := p.i < len(p.t)
	p.i++
	signed := p.peek(0).Is(":", ".", "--", "-") || p.i >= len(p.t)
	switch {
	case !closed || !plain || k == 0 || k > 8:
	case number && signed && (k == 1 || p.t[from].Kind == 'n' && p.t[from+1].Kind == 'w'):
		p.count = p.t[from : p.i-1]
		return true
	case !number && signed:
		if name != "" {
			p.l.Name = name
		}
		p.l.Side = cmp.Or(SideNamed(p.t[from:p.i-1]), p.l.Side)
		return true
	case !number && name != "" && k <= 2 && p.t[from+k-1].Is("row", "rnd", "round"):
		p.l.Name, p.firm = name, true
		return true
	}
	p.i = open
	return false
}

// signs takes the colon, full stop or dash behind a label.
func (p *labeller) signs() {
	for {
		switch t := p.peek(0); {
		case t.Is(":", "--", ";", "=", ">", "|"), t.Is(")", "~") && !p.firm, t.Is(".") && !(p.i+1 < len(p.t) && p.peek(1).Kind == 'n' && p.peek(1).Glued && p.peek(-1).Kind == 'n' && p.i > 1),
			t.Is("-") && (!t.Glued || !p.peek(1).Glued || !p.peek(1).Is("n")):
			p.i++
			p.firm = true
		case t.Is(","):
			p.i++
		default:
			return
		}
	}
}

var follow = set("is was has have had are should will form forms set sets establish establishes complete completes completed makes make of only shows show again were being been can " +
	"may must counts count ends form")

// follows reports whether what stands behind a label without a sign may be its row.
func (p *labeller) follows() bool {
	t := p.peek(0)
	return p.i < len(p.t) && !(t.Kind == 'w' && follow[t.S] && !(t.Cap && t.Is("make"))) && !t.Is("and", "of", ",", "to") && t.Kind != 'f'
}

// IsStop reports whether a word can't stand within a name.
func IsStop(w string) bool {
	switch w {
	case "and", "to", "until", "then", "for", "turn", "with", "from", "at", "sc", "dc", "hdc", "tr", "k", "p", "knit", "purl":
		return true
	}
	return false
}

// step is a line that is numbered as a step, and works stitches or not; numbered is a row or round by its number.
var (
	step     = Once(`(?i)^(\s*)(step )(\d{1,3})(:)(\s*\S.*)$`)
	stitched = Once(`(?i)\b(?:\d ?)?(?:sc|hdc|htr|dc|tr|inc|dec|k\d+|p\d+)\b.*\d|\d.*\b(?:\d ?)?(?:sc|hdc|htr|dc|tr|inc|dec)\b`)
	numbered = Once(`(?i)^\s*(?:row|rnd|round|r)s?\.? ?\d`)
)

// Steps are the lines of a text whose rows are told as steps, with their numbers alone: Step 2: 6 sc in ring. Every word stays in
// its column. A text that has rows, or whose steps work no stitches, stays as it is.
func Steps(lines []string) []string {
	lines = withoutItems(lines)
	work := 0
	for _, l := range lines {
		if numbered().MatchString(l) {
			return lines
		}
		if m := step().FindStringSubmatch(l); m != nil && stitched().MatchString(m[5]) {
			work++
		}
	}
	if work < 3 {
		return lines
	}
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = step().ReplaceAllString(l, "${1}${3}.     ${5}")
	}
	return out
}

// listed is a line that begins with the number of an item, and no sign behind it: 3 Next row: K10, work in rib to end.
var listed = Once(`^(\s*)(\d{1,2})( +[A-Z][a-z])`)

// withoutItems are the lines of a text without the numbers of what is done in order, where at least three of them run on from 1.
// Every word stays in its column.
func withoutItems(lines []string) []string {
	var run []int
	out := lines
	end := func() {
		if len(run) > 2 {
			out = append([]string(nil), out...)
			for _, i := range run {
				m := listed().FindStringSubmatchIndex(out[i])
				out[i] = strings.Repeat(" ", m[5]) + out[i][m[5]:]
			}
		}
		run = nil
	}
	for i, l := range lines {
		m := listed().FindStringSubmatch(l)
		if m == nil {
			continue
		}
		n, _ := strconv.Atoi(m[2])
		if n != len(run)+1 {
			end()
		}
		if n == len(run)+1 {
			run = append(run, i)
		}
	}
	end()
	return out
}
