package rows

import (
	"strings"
	"unicode"
)

// token is a word, a number (for all sizes or one a size) or a sign, with its
// place in the line: columns count characters from 1, end is the one after it.
type token struct {
	kind     byte   // w word, n number, p sign, f a number that is no whole one
	s        string // a word in lower case; a sign; a number as written
	num      Num
	glued    bool // nothing stands between it and the token before
	col, end int
	short    int // a line of numbers that has so many of them, not one a size (0: fits)
}

// maxNumber bounds every count that a text may give.
const maxNumber = 100000

type lexer struct {
	r     []rune
	line  string
	ascii bool // columns are bytes: words are cut from the line itself
	i     int
	sizes int
	frac  bool // the group read last holds fractions
	out   []token
}

// lex cuts one line into tokens. Numbers in the trade's line become one token.
func lex(line string, sizes int) []token {
	l := &lexer{r: []rune(line), line: line, sizes: sizes}
	l.ascii = len(l.r) == len(line)
	l.out = make([]token, 0, len(l.r)/3+4)
	for l.i < len(l.r) {
		start := l.i
		c := l.r[l.i]
		switch {
		case unicode.IsSpace(c):
			l.i++
		case c >= '0' && c <= '9':
			l.number()
		case unicode.IsLetter(c) || c == '\'' || c == '’':
			l.word()
		case dash(c) && l.dashed():
		case dash(c):
			for l.i < len(l.r) && dash(l.r[l.i]) {
				if l.i++; l.i > start+1 && l.lineAt(l.i-1) {
					l.i--
					break
				}
			}
			if l.i-start > 1 || c == '—' {
				l.put('p', "--", start)
			} else {
				l.put('p', "-", start)
			}
		case c == '*' || c == '†' || c == '★':
			for l.i < len(l.r) && l.r[l.i] == c {
				l.i++
			}
			l.put('p', l.text(start, l.i), start)
		default:
			l.i++
			if strings.ContainsRune("½¼¾⅛⅜⅝⅞⅓⅔", c) {
				l.put('f', string(c), start)
			} else {
				l.put('p', l.text(start, l.i), start)
			}
		}
	}
	return l.out
}

func dash(c rune) bool { return c == '-' || c == '–' || c == '—' || c == '−' || c == '‑' }

func (l *lexer) put(kind byte, s string, start int) {
	glued := start > 0 && len(l.out) > 0 && l.out[len(l.out)-1].end == start+1
	l.out = append(l.out, token{kind: kind, s: s, glued: glued, col: start + 1, end: l.i + 1})
}

func (l *lexer) word() {
	start := l.i
	for l.i < len(l.r) {
		c := l.r[l.i]
		if unicode.IsLetter(c) || unicode.IsDigit(c) || c == '\'' || c == '’' {
			l.i++
			continue
		}
		if dash(c) && l.i+1 < len(l.r) && unicode.IsLetter(l.r[l.i+1]) && l.i > start && unicode.IsLetter(l.r[l.i-1]) {
			l.i++
			continue
		}
		break
	}
	if l.sizes > 1 && unicode.IsDigit(l.r[l.i-1]) { // k4 (3, 5)
		from := l.i
		for from > start && unicode.IsDigit(l.r[from-1]) {
			from--
		}
		if more, _, ok := l.group(l.i); ok && len(more) > 0 && from > start && allLetters(l.r[start:from]) {
			l.i = from
			l.put('w', l.lower(start, from), start)
			l.number()
			return
		}
	}
	w := l.lower(start, l.i)
	if len(w) > 1 && w[0] == 'x' && allDigits(w[1:]) { // x6
		end := l.i
		l.i = start + 1
		l.put('w', "x", start)
		l.i = end
		l.put('n', w[1:], start+1)
		l.out[len(l.out)-1].num = Num{All: min(atoi(w[1:]), maxNumber)}
		return
	}
	l.put('w', w, start)
	if v := ordinals[w]; v > 0 {
		l.out[len(l.out)-1].num = Num{All: v}
	}
}

var ordinals = map[string]int{"second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6}

func allLetters(r []rune) bool {
	for _, c := range r {
		if !unicode.IsLetter(c) {
			return false
		}
	}
	return true
}

// number reads 12, 2nd, 1st, 15½, 4.5, or a line of numbers, one a size.
func (l *lexer) number() {
	start := l.i
	v := l.digits()
	if l.i < len(l.r) && (l.r[l.i] == '.' || l.r[l.i] == ',') && l.i+1 < len(l.r) && unicode.IsDigit(l.r[l.i+1]) && l.r[l.i] == '.' {
		l.i++
		l.digits()
		l.put('f', string(l.r[start:l.i]), start)
		return
	}
	if l.i < len(l.r) && strings.ContainsRune("½¼¾⅛⅜⅝⅞⅓⅔", l.r[l.i]) {
		l.i++
		l.put('f', string(l.r[start:l.i]), start)
		return
	}
	if l.i+1 < len(l.r) && (l.r[l.i] == '/' || l.r[l.i] == '⁄') && unicode.IsDigit(l.r[l.i+1]) {
		l.i++
		l.digits()
		l.put('f', string(l.r[start:l.i]), start)
		return
	}
	if l.i < len(l.r) && unicode.IsLetter(l.r[l.i]) {
		from := l.i
		for l.i < len(l.r) && unicode.IsLetter(l.r[l.i]) {
			l.i++
		}
		switch l.lower(from, l.i) {
		case "st", "nd", "rd", "th", "d":
			l.put('w', l.lower(start, l.i), start)
			l.out[len(l.out)-1].num = Num{All: v}
			return
		}
		l.i = from
	}
	l.put('n', l.text(start, l.i), start)
	t := &l.out[len(l.out)-1]
	t.num = Num{All: v}
	if l.sizes < 2 {
		return
	}
	vals := []int{v}
	end := l.i
	l.frac = false
	for {
		more, next, ok := l.group(end)
		if !ok || len(vals)+len(more) > l.sizes+len(more) {
			break
		}
		vals = append(vals, more...)
		end = next
	}
	if len(vals) == 1 {
		return
	}
	l.i = end
	t.end = end + 1
	t.s = l.text(start, end)
	if l.frac {
		t.kind, t.num = 'f', Num{}
		return
	}
	if len(vals) != l.sizes {
		t.short = len(vals)
	}
	for len(vals) < l.sizes {
		vals = append(vals, none)
	}
	t.num = Num{By: vals[:l.sizes]}
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
	l.out[len(l.out)-1].num = Num{By: vals}
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
	if l.sizes < 2 {
		return nil, 0
	}
	vals, end := []int{none}, i+1
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

func (l *lexer) digits() int {
	v := 0
	for l.i < len(l.r) && l.r[l.i] >= '0' && l.r[l.i] <= '9' {
		if v < maxNumber {
			v = v*10 + int(l.r[l.i]-'0')
		}
		l.i++
	}
	return min(v, maxNumber)
}

// group reads ' (3, 4, –)' at i: the next sizes of a line of numbers.
func (l *lexer) group(i int) ([]int, int, bool) {
	j := i
	for j < len(l.r) && l.r[j] == ' ' {
		j++
	}
	if j >= len(l.r) || (l.r[j] != '(' && l.r[j] != '[') {
		return nil, 0, false
	}
	open := l.r[j]
	j++
	var vals []int
	for {
		for j < len(l.r) && l.r[j] == ' ' {
			j++
		}
		if j >= len(l.r) {
			return nil, 0, false
		}
		switch {
		case l.r[j] >= '0' && l.r[j] <= '9':
			save := l.i
			l.i = j
			vals = append(vals, l.digits())
			j, l.i = l.i, save
			for j < len(l.r) && (strings.ContainsRune("½¼¾⅛⅜⅝⅞⅓⅔", l.r[j]) || l.r[j] == '.' && j+1 < len(l.r) && unicode.IsDigit(l.r[j+1])) {
				l.frac = true
				for j++; j < len(l.r) && unicode.IsDigit(l.r[j]); j++ {
				}
			}
		case dash(l.r[j]):
			vals = append(vals, none)
			j++
		default:
			return nil, 0, false
		}
		for j < len(l.r) && l.r[j] == ' ' {
			j++
		}
		if j >= len(l.r) {
			return nil, 0, false
		}
		if l.r[j] == ',' || l.r[j] == ';' || l.r[j] == ':' {
			j++
			continue
		}
		if (l.r[j] == ')' && open == '(') || (l.r[j] == ']' && open == '[') {
			return vals, j + 1, true
		}
		return nil, 0, false
	}
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
