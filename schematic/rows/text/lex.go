// Package text cuts a document of written rows into words, brackets, labels, headings
// and lines of words, before anything of it is understood as an instruction.
package text

import (
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	ins "flatwright/schematic/rows/instructions"
)

// Bounds on what a text may nest and hold, so that no input runs away.
const (
	MaxDepth  = 12
	MaxTokens = 20000 // of one line
)

// Token is a word, a number (for all sizes or one a size), a sign, or a bracket with
// what it holds.
type Token struct {
	ins.Word
	Ord  int     // of an ordinal word or number: 2nd, second
	Cap  bool    // it begins with a capital
	List bool    // a line of numbers that stands in a bracket of its own
	Sub  []Token // what a bracket holds; Kind is 'g', S its opening sign
}

// Is reports whether the token is one of the words or signs.
func (t *Token) Is(words ...string) bool {
	if t.Kind != 'w' && t.Kind != 'p' {
		return false
	}
	for _, w := range words {
		if t.S == w {
			return true
		}
	}
	return t.Ord == 1 && slices.Contains(words, "first")
}

type lexer struct {
	r      []rune
	line   string
	ascii  bool // columns are bytes: words are cut from the line itself
	i      int
	sizes  int
	frac   bool // the group read last holds fractions
	quoted bool // it holds quotes, which may be brackets
	out    []Token
}

// Lex cuts one line into tokens. Numbers in the trade's line become one token. A hyphen
// within a word only glues what it joins.
func Lex(line string, sizes int) []Token {
	l := lexers.Get().(*lexer)
	defer l.done()
	l.line, l.sizes = line, sizes
	for _, c := range line {
		l.r = append(l.r, c)
	}
	if l.ascii = len(l.r) == len(line); !l.ascii {
		for i, c := range l.r {
			if k := strings.IndexRune(alike[0], c); k >= 0 {
				l.r[i] = rune(alike[1][utf8.RuneCountInString(alike[0][:k])])
			}
		}
	}
	if strings.Contains(line, `."`) || !l.ascii {
		l.inchesFirst()
	}
	for l.i < len(l.r) && len(l.out) <= MaxTokens {
		l.next()
	}
	if l.quoted {
		l.out = unquoted(l.out)
	}
	return append(make([]Token, 0, len(l.out)+1), l.out...)
}

// inchesFirst puts the sign for inches before the full stop of its sentence, where the printer has it behind: work for 2." Change. A quotation keeps its own.
func (l *lexer) inchesFirst() {
	quotes := func(c rune) bool { return c == '"' || c == '“' || c == '”' }
	moved := false
	for i := 1; i+1 < len(l.r); i++ {
		c := l.r[i-1]
		if quotes(l.r[i]) && unicode.IsSpace(c) || quotes(c) && i == 1 {
			break
		}
		if l.r[i] == '.' && quotes(l.r[i+1]) && (unicode.IsDigit(c) || strings.ContainsRune(fractions, c)) && (i+2 == len(l.r) || unicode.IsSpace(l.r[i+2])) {
			l.r[i], l.r[i+1], moved = l.r[i+1], l.r[i], true
		}
	}
	if moved {
		l.line = string(l.r)
	}
}

// lexers are used again, with their room for characters and tokens.
var lexers = sync.Pool{New: func() any { return &lexer{} }}

func (l *lexer) done() {
	clear(l.out)
	*l = lexer{r: l.r[:0], out: l.out[:0]}
	lexers.Put(l)
}

// quotePairs are signs that stand about instructions in place of brackets, each with the one that closes it.
var quotePairs = map[string]string{"'": "'", "‘": "’", "\"": "\"", "“": "”", "<": ">", "«": "»", "|": "|"}

// unquoted turns quotes about what is repeated into brackets, 'sc, hdc' across, and drops other single ones.
func unquoted(t []Token) []Token {
	open := -1
	for i := range t {
		if t[i].Kind != 'q' && t[i].Kind != 'p' {
			continue
		}
		switch begins := !t[i].Glued && i+1 < len(t) && t[i+1].Glued; {
		case open < 0 && begins && quotePairs[t[i].S] != "":
			open = i
		case open >= 0 && t[i].S == quotePairs[t[open].S] && t[i].Glued:
			quote(t, open, i)
			open = -1
		}
	}
	for i := range t {
		if i > 0 && t[i-1].Kind == 'q' && t[i].Kind != 'q' {
			t[i].Glued = false
		}
	}
	return slices.DeleteFunc(t, func(t Token) bool { return t.Kind == 'q' })
}

// quote makes brackets of two signs, at open and at i, that stand for them, and nothing of those about a star: repeat from '*' twice.
func quote(t []Token, open, i int) {
	switch {
	case i == open+2 && strings.Contains(stars, t[open+1].S):
		t[open].Kind, t[i].Kind = 'q', 'q'
	case i > open+1 && brackets(t, open, i):
		t[open].Kind, t[open].S, t[i].Kind, t[i].S = 'p', "(", 'p', ")"
	}
}

// brackets reports whether two signs, at open and at i, stand for brackets: about what is repeated, or a count.
func brackets(t []Token, open, i int) bool {
	return repeatsBehind(t[i+1:]) || open > 0 && countBehind(t[open:], i-open)
}

// countBehind reports whether the tokens between two signs, at 0 and at to, are a count behind a row: |12|, <18 sts>.
func countBehind(t []Token, to int) bool {
	return t[0].S != "'" && countOf(t[1:to]) && (to+1 == len(t) || t[to+1].Kind == 'p')
}

// countOf reports whether tokens are a number of stitches and no more.
func countOf(t []Token) bool {
	return t[0].Kind == 'n' && (len(t) == 1 || len(t) == 2 && (t[1].Is("st", "sts", "stitches") || behindOrd[t[1].S]))
}

// repeatsBehind reports whether words say first how far, or how often, what stands before them is worked.
func repeatsBehind(t []Token) bool {
	if len(t) == 0 {
		return false
	}
	if t[0].Kind == 'n' {
		return len(t) > 1 && t[1].Is("times", "x", "time", "more")
	}
	return t[0].Is("across", "around", "to", "until", "till", "x", "*", "twice", "rep", "repeat", "repeated") || t[0].Is("all") && len(t) > 1 && t[1].Is("around", "across", "the")
}

const (
	fractions = "½¼¾⅛⅜⅝⅞⅓⅔"
	stars     = "*†★#^~§‡"
	quotes    = "'’‘`"
)

// alike are letters of other alphabets that a copy has in place of Latin ones, and those.
var alike = [2]string{"ıİаеорсхуіАВЕІКМНОРСТХ", "iIaeopcxyiABEIKMHOPCTX"}

func (l *lexer) next() {
	start := l.i
	c := l.r[l.i]
	switch {
	case unicode.IsSpace(c):
		l.i++
	case c >= '0' && c <= '9':
		l.number()
	case unicode.IsLetter(c):
		l.word()
	case dash(c) && l.dashed():
	case dash(c):
		l.dash(start)
	case (c == '(' || c == '[') && l.sizes > 1 && l.bracketed(start):
	case c == '#' && start+1 < len(l.r) && unicode.IsDigit(l.r[start+1]):
		l.i++ // #10 needles
	case strings.ContainsRune(stars, c) || c == '+' && start+1 < len(l.r) && l.r[start+1] == '+':
		for l.i < len(l.r) && l.r[l.i] == c {
			l.i++
		}
		l.put('p', l.text(start, l.i), start)
	case c == '.' && l.stop(start):
	case l.inches(start):
		l.put('p', "\"", start)
	case strings.ContainsRune(quotes, c):
		l.i++
		l.quoted = true
		l.put('q', string(c), start)
	case c == '_' || c == '\u00a0' || c == '\u200b' || c == '\ufe0f':
		l.i++ // quotes and marks of another program say nothing
	case l.sign(start):
	case strings.ContainsRune(fractions, c):
		l.i++
		l.put('f', string(c), start)
	case l.smiles(start):
		l.i += 2
	case strings.ContainsRune("→⇒", c) || c == '>' && len(l.out) > 0 && l.out[len(l.out)-1].Is("-", "--", "=") && l.out[len(l.out)-1].End == start+1:
		l.i++
		if c == '>' {
			l.out = l.out[:len(l.out)-1]
		}
		l.put('p', "=", start)
	case c == '|' && start > 0 && start+1 < len(l.r) && unicode.IsLetter(l.r[start-1]) && unicode.IsDigit(l.r[start+1]): // 21 hdc|20 ch
		l.i++
		l.put('p', ",", start)
	default:
		l.i++
		l.quoted = l.quoted || c == '"' || c == '“' || c == '<' || c == '«' || c == '|'
		l.put('p', l.text(start, l.i), start)
	}
}

// inches reads a sign that stands for inches and is not the right one: 3“, 3”.
func (l *lexer) inches(i int) bool {
	if i == 0 || !unicode.IsDigit(l.r[i-1]) && !strings.ContainsRune(fractions, l.r[i-1]) {
		return false
	}
	twice := strings.ContainsRune("'’´`", l.r[i]) && i+1 < len(l.r) && l.r[i+1] == l.r[i]
	if !twice && l.r[i] != '“' {
		return false
	}
	if l.i++; twice {
		l.i++
	}
	return true
}

// sign reads a sign that stands for a word or another: an & between spaces (k1f&b is one word), a ×, an ellipsis.
func (l *lexer) sign(i int) bool {
	kind, says := byte('w'), ""
	switch c := l.r[i]; {
	case c == '×':
		says = "x"
	case c == '&' && i > 0 && i+1 < len(l.r) && unicode.IsSpace(l.r[i-1]) && unicode.IsSpace(l.r[i+1]):
		says = "and"
	case c == '…':
		kind, says = 'p', "."
	default:
		return false
	}
	l.i++
	l.put(kind, says, i)
	return true
}

// smiles reports whether a colon and a bracket that closes nothing stand at i: they say nothing.
func (l *lexer) smiles(i int) bool {
	if l.r[i] != ':' && l.r[i] != ';' || i == 0 || l.r[i-1] != ' ' || i+1 >= len(l.r) || !strings.ContainsRune("()D", l.r[i+1]) || i+2 < len(l.r) && unicode.IsLetter(l.r[i+2]) {
		return false
	}
	open := 0
	for _, c := range l.r[:i] {
		switch c {
		case '(':
			open++
		case ')':
			open--
		}
	}
	return open <= 0
}

// dash reads a hyphen: between letters and numbers it only glues; else it is a sign, '--' if it is long.
func (l *lexer) dash(start int) {
	for l.i < len(l.r) && dash(l.r[l.i]) {
		if l.i++; l.i > start+1 && l.lineAt(l.i-1) {
			l.i--
			break
		}
	}
	if l.i == start+1 && start > 0 && l.i < len(l.r) && l.r[start] != '—' {
		a, b := l.r[start-1], l.r[l.i]
		joins := unicode.IsLetter(a) && (unicode.IsLetter(b) || unicode.IsDigit(b)) || unicode.IsDigit(a) && unicode.IsLetter(b)
		if joins && !(unicode.IsDigit(b) && l.parts(l.r[start])) && !(unicode.IsDigit(a) && (b == 'R' || b == 'r') && l.i+1 < len(l.r) && unicode.IsDigit(l.r[l.i+1])) { // R5-R8
			return
		}
	}
	if l.i-start > 1 || l.r[start] == '—' || l.leadsCount(start) {
		l.put('p', "--", start)
	} else {
		l.put('p', "-", start)
	}
}

// leadsCount reports whether a dash run together with the word before it leads to a count.
func (l *lexer) leadsCount(at int) bool {
	return at > 0 && unicode.IsLetter(l.r[at-1]) && !l.behindOrdinal() && l.parts(l.r[at])
}

// parts reports whether a dash between a word and a number parts them: behind an ordinal, and before a count, at end of row–72 (80, 88) sts.
func (l *lexer) parts(dash rune) bool {
	k := len(l.out) - 1
	if l.behindOrdinal() || k < 0 || !l.countAt(l.i) {
		return l.behindOrdinal()
	}
	long := dash == '–'
	return len(l.out[k].S) > 2 && l.i+1 < len(l.r) && unicode.IsDigit(l.r[l.i+1]) || long && len(l.out[k].S) > 1
}

// behindOrd are words that are run together with an ordinal before them: 2ndch from hook.
var behindOrd = set("ch chs chain st stitch sc dc tr hdc htr dtr sp")

// behindOrdinal reports whether the token read last is an ordinal: 5th-7th rows.
func (l *lexer) behindOrdinal() bool { return len(l.out) > 0 && l.out[len(l.out)-1].Ord > 0 }

func dash(c rune) bool { return c == '-' || c == '–' || c == '—' || c == '−' || c == '‑' }

func (l *lexer) put(kind byte, s string, start int) {
	glued := len(l.out) > 0 && l.out[len(l.out)-1].End >= start && start > 0 && l.r[start-1] != ' '
	l.out = append(l.out, Token{Word: ins.Word{Kind: kind, S: s, Glued: glued, Col: start + 1, End: l.i + 1}})
}

func (l *lexer) word() {
	start := l.i
	for l.i < len(l.r) && (unicode.IsLetter(l.r[l.i]) && unicode.Is(unicode.Cyrillic, l.r[l.i]) == unicode.Is(unicode.Cyrillic, l.r[start]) || strings.ContainsRune("'’", l.r[l.i]) && l.i+1 < len(l.r) && unicode.IsLetter(l.r[l.i+1])) {
		l.i++
	}
	w := strings.ReplaceAll(l.lower(start, l.i), "’", "'")
	if one := l.initials(start); one != "" {
		w = one
	}
	if full := shortRow[w]; full != "" {
		w = full
	} else if one, ok := strings.CutSuffix(w, "'s"); ok && !contracted[one] { // 2 dc's in next st
		w = one
	}
	if w == "fr" && len(l.out) > 0 && l.out[len(l.out)-1].Is("rep", "repeat") {
		w = "from"
	}
	if w == "s" && l.slipped() {
		w = "ss"
	}
	l.put('w', w, start)
	t := &l.out[len(l.out)-1]
	t.Cap = unicode.IsUpper(l.r[start])
	if v := ordinals[w]; v > 0 {
		t.Ord = v
	}
}

// slipped goes over the rest of s/s, a slip stitch; it reports false if no such thing stands there.
func (l *lexer) slipped() bool {
	if l.i+1 >= len(l.r) || l.r[l.i] != '/' || l.r[l.i+1]|0x20 != 's' || l.i+2 < len(l.r) && unicode.IsLetter(l.r[l.i+2]) {
		return false
	}
	l.i += 2
	return true
}

// byInitials are abbreviations that are written letter by letter: b.l.o., F.O., B.O., R.S.
var byInitials = set("blo flo fo mr mc bo co rs ws")

// initials goes over the letters with full stops that the word at start begins, and gives their abbreviation; nothing if it is none.
func (l *lexer) initials(start int) string {
	w, i := "", start
	for i+1 < len(l.r) && unicode.IsLetter(l.r[i]) && l.r[i+1] == '.' {
		w += string(unicode.ToLower(l.r[i]))
		i += 2
	}
	if i < len(l.r) && i > start && unicode.IsLetter(l.r[i]) && (i+1 == len(l.r) || !unicode.IsLetter(l.r[i+1])) { // b.l.o
		w += string(unicode.ToLower(l.r[i]))
		i++
	}
	if i == start || i-start < 3 || !byInitials[w] {
		return ""
	}
	l.i = i
	return w
}

// Bullet reports whether a token is a sign before the lines of a list.
func Bullet(t *Token) bool {
	if t.Kind != 'p' || t.S == "" {
		return false
	}
	c, _ := utf8.DecodeRuneInString(t.S)
	return strings.ContainsRune("-–—•·|▪‣¶§", c) || unicode.In(c, unicode.So, unicode.Sc)
}

// shortRow are rarer abbreviations of a row, and of next, each, stitches and evenly.
var shortRow = map[string]string{"jn": "join", "hk": "hook", "ndl": "needle", "ndle": "needle", "ndls": "needles", "decr": "dec", "incr": "inc", "inc'ing": "increasing", "dec'ing": "decreasing", "inc'g": "increasing", "dec'g": "decreasing", "rw": "row", "rws": "rows", "nxt": "next", "ea": "each", "st's": "sts", "equally": "evenly", "thru": "through", "tchs": "tch", "lst": "last", "dose": "does", "в": "in"}

// contracted are the words whose 's is a verb.
var contracted = set("it that there here let what who he she how where")

var ordinals = map[string]int{"first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8, "ninth": 9, "tenth": 10,
	"eleventh": 11, "twelfth": 12, "thirteenth": 13, "fourteenth": 14, "fifteenth": 15, "sixteenth": 16, "seventeenth": 17, "eighteenth": 18, "nineteenth": 19, "twentieth": 20}

// short are the abbreviations whose full stop ends no sentence; beforeNumber those that a
// number may follow too.
var short, beforeNumber = set("decr incr incs decs st sts ch chs sp sps k p sl s c d t h tr dtr hdc htr dc sc rep beg inc dec rnd rnds tog lp lps rem foll cont alt patt pat approx wl fwd bk kn nar wid blk blks sq sqs ndl ndls dbl dble sgl lg " +
	"cl pc sk yo incl ins mm cm rs ws m mc cc no nos bet prev tch skpo yds g n o w h r tbl st of and the next each into psso ss bl fl blo flo lh rh opp cn ea r rr"), set("k p ch sl s m sk no nos rep inc dec decr incr incs decs n foll kn patt pat")

func set(words string) map[string]bool {
	m := map[string]bool{}
	for w := range strings.FieldsSeq(words) {
		m[w] = true
	}
	return m
}

// stop goes over a full stop that ends no sentence: that of an abbreviation, or where a comma is meant: k1.p1 rib.
func (l *lexer) stop(i int) bool {
	comma := i > 1 && i+2 < len(l.r) && unicode.IsDigit(l.r[i-1]) && strings.ContainsRune("kKpP", l.r[i-2]) && strings.ContainsRune("kKpP", l.r[i+1]) && unicode.IsDigit(l.r[i+2])
	named := i > 1 && i+1 < len(l.r) && unicode.IsUpper(l.r[i-1]) && l.r[i-2] == ' ' && unicode.IsDigit(l.r[i+1]) && !strings.ContainsRune("KP", l.r[i-1]) // diagram A.1
	if !comma && !named && !l.abbreviates(i) && !l.dotted(i) {
		return false
	}
	if l.i++; comma {
		l.put('p', ",", i)
	}
	return true
}

// abbreviates reports whether the full stop at i belongs to the word before it.
func (l *lexer) abbreviates(i int) bool {
	if len(l.out) == 0 {
		return false
	}
	t := &l.out[len(l.out)-1]
	if t.Kind != 'w' || t.End != i+1 || !short[t.S] && !l.ofInches(t) {
		return false
	}
	j := i + 1
	for j < len(l.r) && l.r[j] == ' ' {
		j++
	}
	if j >= len(l.r) {
		return false
	}
	switch c := l.r[j]; {
	case unicode.IsUpper(c): // D. C., S.C.
		single := len([]rune(t.S)) == 1 && (j+1 >= len(l.r) || !unicode.IsLetter(l.r[j+1]))
		return single && j+1 < len(l.r) && l.r[j+1] == '.'
	case unicode.IsLetter(c):
		return t.S != "each" || strings.HasPrefix(string(l.r[j:min(j+4, len(l.r))]), "of")
	case strings.ContainsRune(",;:)]", c):
		return true
	case unicode.IsDigit(c):
		return l.numberFollows(t, j) || j == i+1 && t.S == "st" // sl.st.1
	}
	return false
}

// ofInches reports whether a word is the unit of the number before it, and no place: every ½ in. 8 times.
func (l *lexer) ofInches(t *Token) bool {
	k := len(l.out) - 2
	return t.S == "in" && k >= 0 && (l.out[k].Kind == 'n' || strings.ContainsAny(l.out[k].S, "½¼¾⅓⅔⅛⅜⅝⅞"))
}

// timesAt reports whether the number at j says how often.
func (l *lexer) timesAt(j int) bool {
	for j < len(l.r) && (unicode.IsDigit(l.r[j]) || strings.ContainsRune(" ()[],-", l.r[j])) {
		j++
	}
	return strings.HasPrefix(string(l.r[j:min(j+5, len(l.r))]), "time")
}

// numberFollows reports whether the number at j goes on with what an abbreviation begins: ch. 3, and not: in top of 3 ch. 48 sts.
func (l *lexer) numberFollows(t *Token, j int) bool {
	switch {
	case t.S == "ch":
		k := len(l.out) - 2
		return !l.counted() && (k < 0 || l.out[k].Is(".") || !l.countAt(j))
	case t.Is("in", "ins", "cm", "mm"):
		return l.timesAt(j)
	case t.S == "rem":
		return len(l.out) > 1 && l.out[len(l.out)-2].Is("leave", "leaving", "off", "the", "on", "over", "across", "slip", "place", "work", ",", ";")
	}
	return beforeNumber[t.S] && !((len(t.S) == 1 || t.Is("patt", "pat")) && l.rowAt(j))
}

// counted reports whether the word last read has its number before it, or is the chain that a row began with or works into.
func (l *lexer) counted() bool {
	k := len(l.out) - 2
	return k >= 0 && (l.out[k].Kind == 'n' || l.out[k].Ord > 0 || l.out[k].Is("turning", "starting", "beginning", "beg", "foundation", "t",
		"each", "every", "next", "last", "first", "same", "rem", "remaining", "in", "into", "of", "the"))
}

// countAt reports whether a number of stitches stands at j.
func (l *lexer) countAt(j int) bool {
	for j < len(l.r) && (unicode.IsDigit(l.r[j]) || strings.ContainsRune(" ()[],", l.r[j])) {
		j++
	}
	from := j
	for j < len(l.r) && unicode.IsLetter(l.r[j]) {
		j++
	}
	w := l.lower(from, j)
	return !unicode.IsDigit(l.r[from-1]) && (w == "sts" || w == "st" || w == "stitches")
}

// rowAt reports whether the ordinal of a row begins at j: 2nd row.
func (l *lexer) rowAt(j int) bool {
	for j < len(l.r) && (unicode.IsLetter(l.r[j]) || unicode.IsDigit(l.r[j])) {
		j++
	}
	if j == 0 || j >= len(l.r) || !unicode.IsLetter(l.r[j-1]) || l.r[j] != ' ' {
		return false
	}
	from := j + 1
	for j++; j < len(l.r) && unicode.IsLetter(l.r[j]); j++ {
	}
	_, row := RowWord(l.lower(from, j))
	return row
}

// dotted reports whether the full stop at i stands behind the number of a stitch: 1. s.c. in next 3. s.c.
func (l *lexer) dotted(i int) bool {
	k := len(l.out) - 1
	if k < 0 || l.out[k].Kind != 'n' || l.out[k].End != i+1 || i+3 >= len(l.r) {
		return false
	}
	at := i + 1
	if l.r[at] == ' ' {
		at++
	} else if k == 0 { // 1.d.c. at the beginning
		return strings.ContainsRune("sdthkp", l.r[at]) && l.r[at+1] == '.'
	}
	if k < 1 || at+1 >= len(l.r) || l.r[at+1] != '.' || !strings.ContainsRune("sdthkp", l.r[at]) {
		return false
	}
	before := l.out[k-1]
	_, row := RowWord(before.S)
	return !row && before.S != "of"
}

// number reads 12, 2nd, 15½, 4.5, or a line of numbers, one a size.
func (l *lexer) number() {
	start := l.i
	if l.sizes > 2 && l.run(start, ':') || l.sizes > 1 && l.inBracket() && l.run(start, ',') {
		return
	}
	v := l.digits()
	if l.ordinal(start, v) {
		return
	}
	if l.fraction(start) {
		return
	}
	l.put('n', l.text(start, l.i), start)
	t := &l.out[len(l.out)-1]
	t.Num = ins.N(v)
	if l.sizes < 2 {
		return
	}
	l.frac = false
	others, end := l.groups(l.i)
	vals := append([]int{v}, others...)
	if len(vals) == 1 {
		vals, end = l.behindComma(v)
	}
	if len(vals) == 1 {
		vals, end = l.chain(v)
	} else if len(vals) < l.sizes {
		vals, end = l.alternating(vals, end)
	}
	if len(vals) > 1 {
		l.list(start, end, vals)
	}
}

// inBracket reports whether the token read last opens a bracket.
func (l *lexer) inBracket() bool { return len(l.out) > 0 && l.out[len(l.out)-1].Is("(", "[", "{") }

// run reads the numbers of all sizes with a sign between them: 62:66:70 sts, and in a bracket with what they count {62, 66, 70 sts}.
func (l *lexer) run(start int, sign rune) bool {
	n, j := 0, start
	var vals []int
	for l.frac = false; ; j = l.blank(j + 1) {
		v, end, ok := l.size(j)
		if !ok {
			return false
		}
		vals, j = append(vals, v), end
		if n++; j >= len(l.r) || l.r[j] != sign {
			break
		}
	}
	k := l.blank(j)
	if n != l.sizes || sign == ',' && (k >= len(l.r) || !unicode.IsLetter(l.r[k])) {
		return false
	}
	for n == 2 && k < len(l.r) && unicode.IsLetter(l.r[k]) { // (33, 37 sts)
		k++
	}
	if n == 2 && (k >= len(l.r) || !strings.ContainsRune(")]}", l.r[k])) {
		return false
	}
	l.i = j
	l.put('n', "", start)
	l.list(start, j, vals)
	return true
}

// list makes the number read last a line of numbers.
func (l *lexer) list(start, end int, vals []int) {
	t := &l.out[len(l.out)-1]
	l.i = end
	t.End = end + 1
	t.S = l.text(start, end)
	if l.frac {
		t.Kind, t.Num = 'f', ins.Num{}
		return
	}
	if len(vals) != l.sizes {
		t.Short = len(vals)
	}
	for len(vals) < l.sizes {
		vals = append(vals, ins.None)
	}
	t.Num = ins.Num{By: vals[:l.sizes]}
}

// chain reads 62-66-70, of three sizes or more, 62/66/70, and 62-66 (70-74).
func (l *lexer) chain(v int) ([]int, int) {
	vals, end := []int{v}, l.i
	if k := len(l.out); l.sizes < 3 || k > 1 && l.out[k-2].Is("rows", "rounds", "rnds") { // rows 3-5-7
		return vals, end
	}
	save := l.i
	defer func() { l.i = save }()
	for l.i+1 < len(l.r) && strings.ContainsRune("-/–", l.r[l.i]) && unicode.IsDigit(l.r[l.i+1]) {
		l.i++
		vals = append(vals, l.digits())
		end = l.i
	}
	if more, to := l.groups(end); len(vals) > 1 && len(more) > 0 {
		vals, end = append(vals, more...), to
	}
	if len(vals) != l.sizes {
		return vals[:1], save
	}
	return vals, end
}

// behindComma reads 14, (18, 20): the numbers of the other sizes behind a comma.
func (l *lexer) behindComma(v int) ([]int, int) {
	if l.i+1 < len(l.r) && l.r[l.i] == ',' {
		if more, end, ok := l.group(l.i + 1); ok && len(more) == l.sizes-1 {
			return append([]int{v}, more...), end
		}
	}
	return []int{v}, l.i
}

// bracketed reads (62, 66, 70), all sizes in one bracket.
func (l *lexer) bracketed(start int) bool {
	l.frac = false
	first, _, _ := l.group(start)
	if len(first) < 2 || l.frac {
		return false
	}
	vals, end := l.groups(start)
	if len(vals) != l.sizes && (len(vals) < 3 || l.sizes < 3) {
		return false
	}
	l.i = end
	l.put('n', "", start)
	l.list(start, end, vals)
	l.out[len(l.out)-1].List = true
	return true
}

func (l *lexer) ordinal(start, v int) bool {
	from := l.i
	for l.i < len(l.r) && unicode.IsLetter(l.r[l.i]) {
		l.i++
	}
	ok := false
	if l.i > from+2 && behindOrd[l.lower(from+2, l.i)] { // 2ndch
		l.i = from + 2
	}
	switch l.lower(from, l.i) {
	case "st":
		ok = v%10 == 1 && v%100 != 11
	case "nd":
		ok = v%10 == 2 && v%100 != 12
	case "rd":
		ok = v%10 == 3 && v%100 != 13
	case "d":
		ok = v%10 == 2 || v%10 == 3
	case "th":
		ok = true
	}
	if !ok {
		l.i = from
		return false
	}
	l.put('w', l.lower(start, l.i), start)
	t := &l.out[len(l.out)-1]
	t.Ord = v
	if vals, end := l.groups(l.i); l.sizes > 1 && len(vals)+1 == l.sizes && !l.frac { // 12th (10th, 8th) (6th)
		t.Num = ins.Num{By: append([]int{v}, vals...)}
		l.i = end
		t.End = end + 1
	}
	return true
}

// gluedRow is a row behind its number and a full stop without a space: 11.8 sc, inc.
var gluedRow = Once(`^\d+ ?(?:sc|dc|hdc|htr|tr|inc|dec)\b`)

// threeGroups is the cable whose name tells of three groups, behind its first number: 2/1/2 RPC.
var threeGroups = Once(`(?i)^/\d/\d ?[LR]P?C\b`)

func (l *lexer) fraction(start int) bool {
	j := l.i
	switch {
	case len(l.out) == 0 && j < len(l.r) && l.r[j] == '.' && gluedRow().MatchString(l.text(j+1, len(l.r))):
		return false
	case j+1 < len(l.r) && l.r[j] == '.' && unicode.IsDigit(l.r[j+1]):
		l.i++
		l.digits()
	case j < len(l.r) && strings.ContainsRune(fractions, l.r[j]):
		l.i++
	case j+1 < len(l.r) && (l.r[j] == '/' || l.r[j] == '⁄') && unicode.IsDigit(l.r[j+1]):
		l.i++
		l.digits()
		if l.i < len(l.r) && l.r[l.i] == '/' { // 62/66/70
			if !threeGroups().MatchString(l.text(j, min(j+8, len(l.r)))) {
				l.i = j
				return false
			}
			l.i = j + len("/1/2")
		}
	case j+3 < len(l.r) && l.r[j] == ' ' && unicode.IsDigit(l.r[j+1]) && l.r[j+2] == '/' && unicode.IsDigit(l.r[j+3]):
		l.i++
		l.digits()
		l.i++
		l.digits()
	default:
		return false
	}
	if l.sizes > 1 {
		l.fractions()
	}
	l.put('f', l.text(start, l.i), start)
	return true
}

// fractions takes what the other sizes have behind the first one: 7.5 (8, 8, 8).
func (l *lexer) fractions() {
	n, end := 1, l.i
	for {
		more, next, ok := l.group(end)
		if !ok {
			break
		}
		n, end = n+len(more), next
	}
	if n == l.sizes {
		l.i = end
	}
}

// dashed reads a line of numbers that begins with a dash, – (3, 4): the first size has none.
func (l *lexer) dashed() bool {
	vals, end := l.afterDash(l.i)
	if vals == nil {
		return false
	}
	start := l.i
	l.i = end
	l.put('n', l.text(start, end), start)
	l.out[len(l.out)-1].Num = ins.Num{By: vals}
	return true
}

// lineAt reports whether a line of numbers begins with the dash at i.
func (l *lexer) lineAt(i int) bool {
	vals, _ := l.afterDash(i)
	return vals != nil
}

// afterDash is a line of numbers that begins with the dash at i, one for each size, and where
// it ends; nil if there is none.
func (l *lexer) afterDash(i int) ([]int, int) {
	if l.sizes < 2 || i > 0 && l.r[i-1] != ' ' && !dash(l.r[i-1]) && unicode.IsLetter(l.r[i-1]) {
		return nil, 0
	}
	vals, end := []int{ins.None}, i+1
	l.frac = false
	for len(vals) < l.sizes {
		more, next, ok := l.group(end)
		if !ok {
			return nil, 0
		}
		vals, end = append(vals, more...), next
	}
	if len(vals) != l.sizes || l.frac {
		return nil, 0
	}
	return vals, end
}

// digits reads a number; one that is more than a text may give is one more than the most.
func (l *lexer) digits() int {
	v := 0
	for l.i < len(l.r) && l.r[l.i] >= '0' && l.r[l.i] <= '9' {
		if v <= ins.Most {
			v = v*10 + int(l.r[l.i]-'0')
		}
		l.i++
	}
	return min(v, ins.Most+1)
}

// group reads ' (3, 4, –)' at i: the next sizes of a line of numbers.
func (l *lexer) group(i int) ([]int, int, bool) {
	j := l.blank(i)
	if j >= len(l.r) || !strings.ContainsRune("([{", l.r[j]) {
		return nil, 0, false
	}
	shut := rune(shuts[string(l.r[j])][0])
	var vals []int
	for j++; ; j++ {
		v, end, ok := l.size(l.blank(j))
		if !ok {
			return nil, 0, false
		}
		vals = append(vals, v)
		switch j = l.blank(end); {
		case j < len(l.r) && l.r[j] == shut:
			return vals, j + 1, true
		case j >= len(l.r) || !strings.ContainsRune(",;:/-–", l.r[j]):
			return nil, 0, false
		}
	}
}

// groups reads the brackets of numbers at i, as many as there are: (62, 66) (70, 74); end is i if there is none.
func (l *lexer) groups(i int) (vals []int, end int) {
	for end = i; ; {
		more, next, ok := l.group(end)
		if !ok {
			return vals, end
		}
		vals, end = append(vals, more...), next
	}
}

// size reads the number of one size at j, or the dash of a size that has none.
func (l *lexer) size(j int) (v, end int, ok bool) {
	switch {
	case j >= len(l.r):
		return 0, 0, false
	case dash(l.r[j]):
		return ins.None, j + 1, true
	case l.r[j] < '0' || l.r[j] > '9':
		return 0, 0, false
	}
	save := l.i
	l.i = j
	v = l.digits()
	j, l.i = l.i, save
	for j < len(l.r) && (strings.ContainsRune(fractions, l.r[j]) || l.r[j] == '.' && j+1 < len(l.r) && unicode.IsDigit(l.r[j+1])) {
		l.frac = true
		for j++; j < len(l.r) && unicode.IsDigit(l.r[j]); j++ {
		}
	}
	if k := l.halves(j); k > j {
		l.frac, j = true, k
	}
	if j+1 < len(l.r) && strings.Contains("st nd rd th", l.lower(j, j+2)) {
		j += 2
	}
	return v, l.behindWearer(j), true
}

// wearers are words for whom a size is: 27 (29 women's, 35 men's).
var wearers = set("women's womens women men's mens men ladies lady's lady gents adult adults adult's child child's children's children kids toddler baby")

// behindWearer is behind the word at j for whom a size is, or j.
func (l *lexer) behindWearer(j int) int {
	k := l.blank(j)
	from := k
	for k < len(l.r) && (unicode.IsLetter(l.r[k]) || strings.ContainsRune("'’", l.r[k])) {
		k++
	}
	if k > from && wearers[strings.ReplaceAll(l.lower(from, k), "’", "'")] {
		return k
	}
	return j
}

// halves is behind -1/2 or ' 1/2' of a mixed number at i, or i.
func (l *lexer) halves(i int) int {
	j := i
	if j < len(l.r) && (dash(l.r[j]) || l.r[j] == ' ') {
		j++
	}
	if j+2 < len(l.r) && j > i && unicode.IsDigit(l.r[j]) && l.r[j+1] == '/' && unicode.IsDigit(l.r[j+2]) {
		return j + 3
	}
	return i
}

// alternating takes the sizes behind those of the first bracket, each second one without brackets: 83 (89) 95 (101) 107.
// They are meant if they are as many as the sizes.
func (l *lexer) alternating(vals []int, end int) ([]int, int) {
	more, at := slices.Clone(vals), end
	for len(more) < l.sizes {
		v, to, ok := l.behind(at)
		if !ok && len(more) < l.sizes-1 || !ok && len(vals) < l.sizes-1 && l.ends(l.blank(at)) {
			v, to, ok = l.bare(at)
		}
		if !ok {
			return vals, end
		}
		more, at = append(more, v), to
		if len(more) == l.sizes {
			break
		}
		group, to, ok := l.group(at)
		if !ok {
			return vals, end
		}
		more, at = append(more, group...), to
	}
	if len(more) != l.sizes {
		return vals, end
	}
	return more, at
}

// bare reads a number that stands at i without a bracket.
func (l *lexer) bare(i int) (v, end int, ok bool) {
	j := l.blank(i)
	if j == i || j >= len(l.r) || !unicode.IsDigit(l.r[j]) {
		return 0, i, false
	}
	return l.size(j)
}

// ends reports whether nothing but a number stands between i and the end of the line or a sign.
func (l *lexer) ends(i int) bool {
	for i < len(l.r) && unicode.IsDigit(l.r[i]) {
		i++
	}
	return i >= len(l.r) || strings.ContainsRune(".,;", l.r[i])
}

// behind reads the last number of 83 (89) 95.
func (l *lexer) behind(i int) (v, end int, ok bool) {
	j := l.blank(i)
	if j == i || j >= len(l.r) || !unicode.IsDigit(l.r[j]) {
		return 0, i, false
	}
	save := l.i
	l.i = j
	v = l.digits()
	end, l.i = l.i, save
	k := l.blank(end)
	if k >= len(l.r) || !unicode.IsLetter(l.r[k]) || l.r[k] == 'x' {
		return 0, i, false
	}
	return v, end, true
}

func (l *lexer) blank(i int) int {
	for i < len(l.r) && l.r[i] == ' ' {
		i++
	}
	return i
}

// text is the characters from a to b.
func (l *lexer) text(a, b int) string {
	if l.ascii {
		return l.line[a:b]
	}
	return string(l.r[a:b])
}

// lower is the characters from a to b without capitals.
func (l *lexer) lower(a, b int) string { return strings.ToLower(l.text(a, b)) }
