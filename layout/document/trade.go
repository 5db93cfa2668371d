package document

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"flatwright/layout/table"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// reader finds the numbers of a written text that depend on size or unit.
type reader struct {
	sizes expr.Sizes
	line  *regexp.Regexp // the trade's line of these sizes, then perhaps a unit, then perhaps the other unit
	steps units.Steps
}

const (
	number = `(?:\d+(?:\.\d+)?[ \x{a0}]?[½¼¾⅛⅜⅝⅞]|\d+ \d+/\d+|\d+(?:\.\d+)?|[½¼¾⅛⅜⅝⅞]|[–-])`
	unit   = `[ \x{a0}]?(cm|in|inches)\b`
)

// newReader makes a reader for lines bracketed as those of sizes.
func newReader(sizes expr.Sizes, steps units.Steps) *reader {
	var b strings.Builder
	for g, n := range sizes.Groups {
		if g > 0 {
			b.WriteString(` ?`)
		}
		part := strings.TrimSuffix(strings.Repeat(number+`, ?`, n), `, ?`)
		if g == 0 && n == 1 {
			b.WriteString(part)
		} else {
			b.WriteString(`\(` + part + `\)`)
		}
	}
	whole := b.String()
	if sizes.Len() > 1 {
		whole = `(?:` + whole + `|` + number + `)`
	}
	length := `(` + whole + `)` + unit
	graded := `(` + b.String() + `)`
	return &reader{sizes: sizes, steps: steps,
		line: regexp.MustCompile(length + `(?: ?[/(] ?` + length + `\)?)?|` + graded)}
}

// text reads one line of written words: every line of numbers bracketed as the
// sizes are becomes a number for each size, and a number or line with a unit a length.
func (r *reader) text(s string) Text {
	var out Text
	for s != "" {
		m := r.line.FindStringSubmatchIndex(s)
		if m == nil {
			break
		}
		span, end, ok := r.span(s, m)
		if !ok {
			// no number of its own: a part of a word, or of a longer number
			out = out.and(s[:m[1]])
			s = s[m[1]:]
			continue
		}
		out = out.and(s[:m[0]])
		out = append(out, span)
		s = s[end:]
	}
	return out.and(s)
}

func (t Text) and(s string) Text {
	if s == "" {
		return t
	}
	if n := len(t); n > 0 && !t[n-1].Graded() {
		t[n-1].S += s
		return t
	}
	return append(t, Span{S: s})
}

// span is the number that was found, and where it ends.
func (r *reader) span(s string, m []int) (Span, int, bool) {
	before, _ := utf8.DecodeLastRuneInString(s[:m[0]])
	if m[2] < 0 {
		if partOfWord(before) {
			return Span{}, 0, false
		}
		each := r.each(s[m[10]:m[11]])
		if r.sizes.Len() < 2 || each == nil {
			return Span{}, 0, false
		}
		return Span{Counts: each}, m[1], true
	}
	if partOfWord(before) || before == '-' || before == '–' { // 14–16 cm is no 16 cm
		return Span{}, 0, false
	}
	first, u := r.lengths(s[m[2]:m[3]], s[m[4]:m[5]])
	if first == nil || m[6] < 0 && s[m[4]:m[5]] == "in" && !inches(s[m[2]:m[3]], s[m[5]:]) {
		if line := s[m[2]:m[3]]; strings.Contains(line, "(") && r.sizes.Len() > 1 {
			return Span{Counts: r.each(line)}, m[3], true
		}
		return Span{}, 0, false
	}
	end := m[5]
	if m[6] >= 0 {
		second, v := r.lengths(s[m[6]:m[7]], s[m[8]:m[9]])
		if second != nil && v != u && len(second) == len(first) {
			end = m[1]
			if s[end-1] == ')' && strings.Count(s[m[0]:end], "(") < strings.Count(s[m[0]:end], ")") {
				end-- // it closes a bracket that opened before the number
			}
			for i := range first {
				first[i].HasOther, first[i].Other = second[i].Has, second[i].Low
			}
		}
	}
	return Span{Lengths: first}, end, true
}

// afterInches is what may follow inches: 'in' is more often a word of the trade.
var afterInches = regexp.MustCompile(`^\s*(?:$|[.,;:)/]|(?:from|above|below|beyond|past|long|wide|deep|high|tall|or)\b)`)

// inches reports whether 'in' behind a number is a unit and not, as in '2 in each
// stitch', a word: after a fraction, or before what follows a measurement.
func inches(number, rest string) bool {
	return strings.ContainsAny(number, "½¼¾⅛⅜⅝⅞./") || afterInches.MatchString(rest)
}

func partOfWord(r rune) bool {
	return r != utf8.RuneError && (unicode.IsLetter(r) || unicode.IsNumber(r) || r == '.' || r == '/')
}

// each are the numbers of a line as written, one a size.
func (r *reader) each(line string) []string {
	all := strings.FieldsFunc(line, func(c rune) bool { return c == '(' || c == ')' || c == ',' })
	var out []string
	for _, a := range all {
		if a = strings.TrimSpace(a); a == "-" {
			out = append(out, expr.Dash)
		} else if a != "" {
			out = append(out, a)
		}
	}
	if len(out) == 1 {
		for len(out) < r.sizes.Len() {
			out = append(out, out[0])
		}
	}
	if len(out) != r.sizes.Len() {
		return nil
	}
	return out
}

func (r *reader) lengths(line, unit string) ([]table.Cell, units.Unit) {
	u, ok := units.ParseUnit(unit)
	each := r.each(line)
	if !ok || each == nil {
		return nil, u
	}
	out := make([]table.Cell, len(each))
	for i, t := range each {
		if t == expr.Dash {
			continue
		}
		n, ok := units.ParseNum(strings.ReplaceAll(t, "\u00a0", " "))
		if !ok {
			return nil, u
		}
		mm := units.Of(n, u)
		out[i] = table.Cell{Has: true, Low: mm, High: mm, Written: true, Unit: u}
	}
	return out, u
}
