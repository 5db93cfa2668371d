package document

import (
	"regexp"
	"strings"
	"sync"
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
}

const (
	number = `(?:\d+(?:\.\d+)?[ \x{a0}]?[½¼¾⅛⅜⅝⅞]|\d+ \d+/\d+|\d+(?:\.\d+)?|[½¼¾⅛⅜⅝⅞]|[–-])`
	unit   = `[ \x{a0}]?(cm|in|inches)\b`
)

// newReader makes a reader for lines bracketed as those of sizes.
func newReader(sizes expr.Sizes) *reader {
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
	return &reader{sizes: sizes,
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
		span, end, ok := r.span(found{s, m})
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

// found is a place in s where numbers stand, as the reader's expression finds them: a line with its unit, perhaps the same in
// the other unit, or a line without one.
type found struct {
	s  string
	at []int
}

const ( // of the expression's groups
	firstLine, firstUnit   = 1, 2
	secondLine, secondUnit = 3, 4
	bareLine               = 5
)

func (f found) has(group int) bool { return f.at[2*group] >= 0 }

func (f found) text(group int) string { return f.s[f.at[2*group]:f.at[2*group+1]] }

func (f found) end(group int) int { return f.at[2*group+1] }

// span is the number that was found, and where it ends.
func (r *reader) span(f found) (Span, int, bool) {
	before, _ := utf8.DecodeLastRuneInString(f.s[:f.at[0]])
	switch {
	case partOfWord(before):
		return Span{}, 0, false
	case !f.has(firstLine):
		each := r.each(f.text(bareLine))
		return Span{Counts: each}, f.end(0), r.sizes.Len() > 1 && each != nil
	case before == '-' || before == '–': // 14–16 cm is no 16 cm
		return Span{}, 0, false
	}
	line, unit := f.text(firstLine), f.text(firstUnit)
	lengths, u := r.lengths(line, unit)
	if lengths == nil || !f.has(secondLine) && unit == "in" && !inches(line, f.s[f.end(firstUnit):]) {
		return Span{Counts: r.each(line)}, f.end(firstLine), strings.Contains(line, "(") && r.sizes.Len() > 1
	}
	end := f.end(firstUnit)
	if f.has(secondLine) && r.other(lengths, u, f) {
		end = f.end(0)
		if f.s[end-1] == ')' && strings.Count(f.text(0), "(") < strings.Count(f.text(0), ")") {
			end-- // it closes a bracket that opened before the number
		}
	}
	return Span{Lengths: lengths}, end, true
}

// other notes what stands in the other unit beside lengths, if it is that.
func (r *reader) other(lengths []table.Cell, u units.Unit, f found) bool {
	second, v := r.lengths(f.text(secondLine), f.text(secondUnit))
	if second == nil || v == u || len(second) != len(lengths) {
		return false
	}
	for i := range lengths {
		lengths[i].HasOther, lengths[i].Other = second[i].Has, second[i].Low
	}
	return true
}

// afterInches is what may follow inches: 'in' is more often a word of the trade.
var afterInches = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^\s*(?:$|[.,;:)/]|(?:from|above|below|beyond|past|long|wide|deep|high|tall|or)\b)`)
})

// inches reports whether 'in' behind a number is a unit and not, as in '2 in each
// stitch', a word: after a fraction, or before what follows a measurement.
func inches(number, rest string) bool {
	return strings.ContainsAny(number, "½¼¾⅛⅜⅝⅞./") || afterInches().MatchString(rest)
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
