package expr

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Line is a trade's line as read: 103 (111, 119) (127, –) cm. Low and High may
// share their numbers: copy before changing one.
type Line struct {
	Low, High Graded // High differs from Low where a range was written
	Ranged    bool   // a range was written somewhere
	Words     string // what stands behind the numbers: a unit, or rows
	WordsAt   Span
	Groups    []int  // the brackets as written; nil for one number alone
	Spans     []Span // each number as written
}

// entry is one place of a line.
type entry struct {
	low, high units.Num
	has       bool
	ranged    bool
	words     string
	wordsAt   Span
	span      Span
}

// ParseLine reads a number for each size from the trade's line: one number
// alone is for all sizes, otherwise there is one for each, in brackets or not, and
// a dash or 'none' where a size has none. A word may follow every number or the
// whole line. Numbers may be negative; it is the caller's affair to refuse that.
func ParseLine(text string, sizes Sizes) (Line, *Problem) {
	t := []rune(text)
	entries, groups, p := split(t)
	if p != nil {
		return Line{}, p
	}
	l := Line{Spans: make([]Span, 0, len(entries))}
	list := entries[:0]
	for _, e := range entries {
		if p := l.say(e); p != nil {
			return l, p
		}
		if e.span.Start >= 0 {
			list = append(list, e)
			l.Spans = append(l.Spans, e.span)
			l.Ranged = l.Ranged || e.ranged
		}
	}
	alone := len(list) == 1 && len(groups) == 1
	if !alone {
		l.Groups = groups
	}
	if len(list) != sizes.Len() && !alone {
		return l, lengthProblem(t, list, groups, sizes)
	}
	l.fill(list, sizes.Len())
	return l, nil
}

// say takes the words behind a number, or behind them all; a line has one unit.
func (l *Line) say(e entry) *Problem {
	if e.words == "" {
		return nil
	}
	if l.Words != "" && !sameWord(l.Words, e.words) {
		return mixedWords(l.Words, e)
	}
	l.Words, l.WordsAt = e.words, e.wordsAt
	return nil
}

// fill gives every one of n sizes its number, or the one that is for all.
func (l *Line) fill(list []entry, n int) {
	l.Low = Graded{Vals: make([]units.Num, n), Has: make([]bool, n)}
	l.High = l.Low
	if l.Ranged {
		l.High = Graded{Vals: make([]units.Num, n), Has: l.Low.Has}
	}
	for i := range n {
		e := list[min(i, len(list)-1)]
		l.Low.Vals[i], l.High.Vals[i], l.Low.Has[i] = e.low, e.high, e.has
	}
}

func sameWord(a, b string) bool {
	if strings.EqualFold(a, b) {
		return true
	}
	u, ok := ParseUnit(a)
	v, ok2 := ParseUnit(b)
	return ok && ok2 && u == v
}

func mixedWords(first string, e entry) *Problem {
	return &Problem{Kind: "file/unit", Span: e.wordsAt,
		Message: fmt.Sprintf("%q and %q are on one line", finding.Clip(first), finding.Clip(e.words)),
		Want:    "one unit for all the numbers of a line",
		Fix:     "write the unit once, after the last number"}
}

// split cuts a line into its places and notes how they are bracketed.
func split(t []rune) ([]entry, []int, *Problem) {
	if skipSpace(t, 0) == len(t) {
		return nil, nil, &Problem{Kind: "file/empty", Span: Span{0, len(t)}, Message: "a number is missing here",
			Want: "a number, or one for each size"}
	}
	b := brackets{t: t, loose: true, opened: -1, comma: -1, example: "103 (111, 119) (127, 135)", missing: gap}
	out := make([]entry, 0, 1+strings.Count(string(t), ",")+2*strings.Count(string(t), "("))
	for {
		more, p := b.next()
		if p != nil || !more {
			return out, b.groups, p
		}
		if !b.due() {
			return nil, nil, sideBySide(Span{b.i, wordEnd(t, b.i)})
		}
		e, end, p := place(t, b.i, len(out) > 0 && b.opened < 0)
		if p != nil {
			return nil, nil, p
		}
		out = append(out, e)
		if b.i = end; e.span.Start >= 0 {
			b.take(end)
		}
	}
}

func sideBySide(at Span) *Problem {
	return &Problem{Kind: "file/form", Span: at, Message: "two numbers with no comma between them",
		Want: "a comma between the sizes of one bracket", Fix: "put a comma before it"}
}

func gap(i int) *Problem {
	return &Problem{Kind: "file/form", Span: Span{i, i + 1}, Message: "a number is missing here",
		Want: "a number, or a dash (–) or none where a size has none", Fix: "put in the number, or take the comma out"}
}

func wordEnd(t []rune, i int) int {
	for i < len(t) && !isSpace(t[i]) && !strings.ContainsRune(",;()[]", t[i]) {
		i++
	}
	return i
}

// place reads one place: a number, a range, a dash or none, and a word behind
// it. Outside brackets, behind them, a word alone is the unit of the whole line.
func place(t []rune, i int, behind bool) (entry, int, *Problem) {
	end := placeEnd(t, i)
	e := entry{span: Span{i, end}}
	if n := noneEnd(t[:end], i); n > 0 {
		e.span.End = n
		e.word(t, n, end)
		return e, end, nil
	}
	v, next, ok := signed(t, i)
	if next == i && behind {
		e.span = Span{-1, -1}
		e.word(t, i, end)
		return e, end, nil
	}
	if !ok || next > end {
		return e, end, notNumber(t, i, end)
	}
	e.low, e.high, e.has = v, v, true
	if from := rangeStart(t[:end], next); from > 0 {
		var p *Problem
		if next, p = e.upTo(t, from, end); p != nil {
			return e, end, p
		}
	}
	e.span.End = next
	e.word(t, next, end)
	return e, end, e.onlyWords(t, next, end)
}

// signed is number with a minus before it. end is i if there is neither.
func signed(t []rune, i int) (v units.Num, end int, ok bool) {
	if !isDash(t[i]) {
		return number(t, i)
	}
	v, end, ok = number(t, skipSpace(t, i+1))
	return v.Neg(), end, ok
}

// rangeStart is where the higher number of a range begins, 8-10 or 8 to 10, or 0.
func rangeStart(t []rune, i int) int {
	switch j := skipSpace(t, i); {
	case j < len(t) && isDash(t[j]):
		return skipSpace(t, j+1)
	case j+2 < len(t) && strings.EqualFold(string(t[j:j+2]), "to") && (isSpace(t[j+2]) || isDigit(t[j+2])):
		return skipSpace(t, j+2)
	}
	return 0
}

// upTo reads the higher number of a range, and gives the place behind it.
func (e *entry) upTo(t []rune, from, end int) (int, *Problem) {
	high, after, ok := number(t, from)
	next := skipSpace(t, after)
	if !ok || next < end && isDash(t[next]) {
		return after, notNumber(t, e.span.Start, end)
	}
	if high.Less(e.low) {
		at := Span{e.span.Start, after}
		return after, &Problem{Kind: "file/number", Span: at, Message: fmt.Sprintf("the range %s goes backwards", string(t[at.Start:at.End])),
			Want: "the smaller number first, such as 76-80"}
	}
	e.high, e.ranged = high, true
	return after, nil
}

// word takes what stands between the number and the end of its place.
func (e *entry) word(t []rune, from, end int) {
	if j := skipSpace(t, from); j < end {
		e.words, e.wordsAt = string(t[j:end]), Span{j, end}
	}
}

// onlyWords refuses what stands behind a number that ends at next if it is not a word.
func (e *entry) onlyWords(t []rune, next, end int) *Problem {
	j := e.wordsAt.Start
	if e.words == "" || wordStart(t[j]) && !strings.ContainsAny(e.words, "0123456789½¼¾") {
		return nil
	}
	if _, _, two := number(t, j); two && j > next {
		return sideBySide(Span{j, end})
	}
	return notNumber(t, e.span.Start, end)
}

// noneEnd is the place after a dash or the word none, if a unit or nothing follows it, or 0.
func noneEnd(t []rune, i int) int {
	n := i + 1
	if !isDash(t[i]) {
		n = i + len("none")
		if n > len(t) || !strings.EqualFold(string(t[i:n]), "none") {
			return 0
		}
	}
	if n == len(t) {
		return n
	}
	if j := skipSpace(t, n); j > n && wordStart(t[j]) && !strings.ContainsAny(string(t[j:]), "0123456789") {
		return n
	}
	return 0
}

func wordStart(r rune) bool {
	return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || strings.ContainsRune("\"″”%°'’", r) || r > 0x2ff
}

// figures are the small numbers that people write as words.
var figures = []string{"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}

func notNumber(t []rune, i, end int) *Problem {
	word := strings.ToLower(string(t[i:end]))
	first, rest, _ := strings.Cut(word, " ") // three rows
	many := strings.HasPrefix(rest, "hundred") || strings.HasPrefix(rest, "and ")
	if n := slices.Index(figures, first); n >= 0 && !many {
		return &Problem{Kind: "file/number", Span: Span{i, i + len(first)}, Message: fmt.Sprintf("%q is not a number", string(t[i:i+len(first)])),
			Want: "a number in figures", Fix: fmt.Sprintf("write %d", n)}
	}
	if skipDigits(t, i) == end && end > i {
		return &Problem{Kind: "file/bounds", Span: Span{i, end}, Message: fmt.Sprintf("%s is larger than any number in a pattern", finding.Clip(word)),
			Fix: "look for figures that were typed twice"}
	}
	return &Problem{Kind: "file/number", Span: Span{i, max(end, i+1)}, Message: fmt.Sprintf("%q is not a number", finding.Clip(string(t[i:end]))),
		Want: "a number such as 14, 14.5, 15½ or 15 1/2; a dash (–) or none where a size has none"}
}

// lengthProblem says which sizes have no number, or which number is too many.
func lengthProblem(t []rune, list []entry, groups []int, sizes Sizes) *Problem {
	p := &Problem{Kind: "file/list-length", Span: Span{list[0].span.Start, list[len(list)-1].span.End},
		Message: fmt.Sprintf("%s for %s", count(len(list), "number"), count(sizes.Len(), "size")),
		Want:    "one number for all sizes, or one for each of " + sizes.Full(sizes.Names)}
	if len(list) > sizes.Len() {
		at := len(list) - 1
		if g := firstUnlike(groups, sizes.Groups); len(groups) == len(sizes.Groups) && groups[g] > sizes.Groups[g] {
			at = sum(groups[:g+1]) - 1
		}
		p.Span = list[at].span
		if c := decimalComma(t); c >= 0 {
			from, to := c, skipDigits(t, c+1)
			for from > 0 && isDigit(t[from-1]) {
				from--
			}
			p.Span = Span{from, to}
			p.Fix = fmt.Sprintf("a comma separates the sizes: write a decimal with a point, %s.%s", string(t[from:c]), string(t[c+1:to]))
			return p
		}
		p.Fix = fmt.Sprintf("take out %s; %s may be one too many", count(len(list)-sizes.Len(), "number"), string(t[list[at].span.Start:list[at].span.End]))
		if g := firstUnlike(groups, sizes.Groups); sizes.Len() > 1 && len(groups) == len(sizes.Groups) && groups[g] > sizes.Groups[g] {
			of := sizes.Names[sum(sizes.Groups[:g]):sum(sizes.Groups[:g+1])]
			p.Fix = fmt.Sprintf("take out the extra ones for %s: %s", strings.Join(of, ", "), count(groups[g], "number"))
		}
		return p
	}
	p.Sizes = missing(len(list), groups, sizes)
	p.Fix = fmt.Sprintf("add a number for %s, or a dash (–) where a size has none", strings.Join(p.Sizes, ", "))
	if len(list) == 2 && strings.ContainsRune(string(t), ',') && !strings.ContainsAny(string(t), "([ ") {
		p.Fix = "write a decimal with a point: " + strings.Replace(string(t), ",", ".", 1)
	}
	return p
}

// decimalComma is the place of a comma between two figures that seems to be a decimal
// point: outside brackets, or where other commas have a space behind them. Else it is -1.
func decimalComma(t []rune) int {
	depth, spaced := 0, strings.Contains(string(t), ", ")
	for i, r := range t {
		switch r {
		case '(', '[':
			depth++
		case ')', ']':
			depth--
		case ',':
			if i > 0 && i+1 < len(t) && isDigit(t[i-1]) && isDigit(t[i+1]) && (depth == 0 || spaced) {
				return i
			}
		}
	}
	return -1
}

// missing names the sizes that have no number: the last of each bracket that is
// short if the brackets are otherwise alike, else the last of all.
func missing(n int, groups []int, sizes Sizes) []string {
	if len(groups) == len(sizes.Groups) {
		var names []string
		at := 0
		for g, have := range groups {
			full := sizes.Groups[g]
			if have > full {
				names = nil
				break
			}
			names = append(names, sizes.Names[at+have:at+full]...)
			at += full
		}
		if len(names) > 0 {
			return names
		}
	}
	return append([]string(nil), sizes.Names[n:]...)
}

func firstUnlike(a, b []int) int {
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			return i
		}
	}
	return 0
}

func sum(a []int) int {
	s := 0
	for _, v := range a {
		s += v
	}
	return s
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// Alike reports whether a line is bracketed like the sizes; one number alone
// always is.
func (l Line) Alike(s Sizes) bool {
	if l.Groups == nil {
		return true
	}
	if len(l.Groups) != len(s.Groups) {
		return false
	}
	for i, g := range l.Groups {
		if g != s.Groups[i] {
			return false
		}
	}
	return true
}

// Write is g in the trade's line, each number as text writes it, a dash where a
// size has none. ParseLine reads it back.
func (s Sizes) Write(g Graded, text func(units.Num) string) string {
	texts := make([]string, len(g.Vals))
	for i, v := range g.Vals {
		texts[i] = Dash
		if g.Has[i] {
			texts[i] = text(v)
		}
	}
	return s.Line(texts)
}
