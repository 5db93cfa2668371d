package document

import (
	"regexp"
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"flatwright/layout/table"
	"flatwright/schematic/expr"
)

// RowsFor are the rows that a person of one size works, or those of all sizes if size is below
// 0. What that size does not do is left out.
func (c *Content) RowsFor(size int) []Section {
	if size < 0 {
		return c.Rows
	}
	all, ok := c.RowsOf[size]
	if !ok {
		all = c.Rows
	}
	var out []Section
	for _, s := range all {
		one := Section{Name: s.Name}
		for _, l := range s.Lines {
			if t := l.forSize(size); len(t) > 0 {
				one.Lines = append(one.Lines, t)
			}
		}
		out = append(out, one)
	}
	return out
}

// forSize is the text as one size is told it: its numbers alone, 'row' behind a 1, and without
// the clauses whose numbers it has none of. A text of which nothing is left is nil.
func (t Text) forSize(size int) Text {
	var out Text
	for _, sentence := range split(t, sentenceEnd()) {
		if !without(sentence.text, size) {
			out = append(append(out, kept(sentence.text, size)...), Span{S: sentence.end})
		}
	}
	out = plainJoined(out)
	one := false // the number before is 1
	for i, s := range out {
		switch {
		case len(s.Counts) > 0:
			out[i] = Span{S: s.Counts[size], Strong: true}
			one = s.Counts[size] == "1"
		case len(s.Lengths) > 0:
			out[i].Lengths, out[i].Strong = slices.Repeat([]table.Cell{s.Lengths[size]}, len(s.Lengths)), true
			one = false
		default:
			out[i].S = singular(s.S, one)
			one = false
		}
	}
	return out
}

// without reports whether all numbers of a clause that depend on size are dashes for this one.
func without(t Text, size int) bool {
	graded := false
	for _, s := range t {
		switch {
		case len(s.Counts) > 0 && s.Counts[size] != expr.Dash, len(s.Lengths) > 0 && s.Lengths[size].Has:
			return false
		case s.Graded():
			graded = true
		}
	}
	return graded
}

// kept is a sentence without the steps of a shaping that this size does not take: what is
// done stays, as the verb of the first step.
func kept(sentence Text, size int) Text {
	var out Text
	steps := split(sentence, stepEnd())
	for i, step := range steps {
		text := step.text
		if without(text, size) && len(steps) > 1 {
			if i > 0 || text[0].Graded() {
				continue
			}
			at := strings.LastIndex(text[0].S, "every ")
			if at < 0 {
				return sentence
			}
			text = Text{{S: text[0].S[:at], Strong: text[0].Strong}}
		} else if len(out) > 0 && i > 0 && !strings.HasSuffix(out[len(out)-1].S, " ") {
			out = append(out, Span{S: steps[i-1].end})
		}
		out = append(out, text...)
	}
	return out
}

// plainJoined puts neighbouring words together.
func plainJoined(t Text) Text {
	var out Text
	for _, s := range t {
		if n := len(out); n > 0 && !s.Graded() && !out[n-1].Graded() && out[n-1].Strong == s.Strong {
			out[n-1].S += s.S
		} else if s.Graded() || s.S != "" {
			out = append(out, s)
		}
	}
	return out
}

// A sentence of a written row ends, and so does a step of a shaping in it.
var (
	sentenceEnd = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`[.;](?:\s+|$)`) })
	stepEnd     = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`, then `) })
)

// stretch is a part of a text with the end that cuts it from the next.
type stretch struct {
	text Text
	end  string
}

// split cuts a text where its words match end. Numbers stay in their part.
func split(t Text, end *regexp.Regexp) []stretch {
	var out []stretch
	var now Text
	for _, s := range t {
		if s.Graded() {
			now = append(now, s)
			continue
		}
		rest := s.S
		for at := end.FindStringIndex(rest); at != nil; at = end.FindStringIndex(rest) {
			if at[0] > 0 {
				now = append(now, Span{S: rest[:at[0]], Strong: s.Strong})
			}
			out, now = append(out, stretch{now, rest[at[0]:at[1]]}), nil
			rest = rest[at[1]:]
		}
		if rest != "" {
			now = append(now, Span{S: rest, Strong: s.Strong})
		}
	}
	if len(now) > 0 {
		out = append(out, stretch{text: now})
	}
	return out
}

// many are words of which there is one behind a 1.
var many = map[string]string{"rows": "row", "rounds": "round", "rnds": "rnd", "times": "time", "sts": "st", "stitches": "stitch",
	"repeats": "repeat", "chains": "chain", "loops": "loop", "increases": "increase", "decreases": "decrease", "balls": "ball", "skeins": "skein"}

var onlyOne = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(^|[^\d.,/–-])1 (?:more )?(\pL+)`) })

// singular puts words behind a 1 into the singular; with one, a 1 stands before s.
func singular(s string, one bool) string {
	if one {
		lead := s[:len(s)-len(strings.TrimLeft(s, " \u00a0"))]
		if lead != "" {
			body := s[len(lead):]
			if rest, ok := strings.CutPrefix(body, "more "); ok {
				lead, body = lead+"more ", rest
			}
			s = lead + oneWord(body)
		}
	}
	return onlyOne().ReplaceAllStringFunc(s, func(m string) string {
		at := strings.LastIndexByte(m, ' ') + 1
		return m[:at] + oneWord(m[at:])
	})
}

// oneWord puts the first word of s into the singular.
func oneWord(s string) string {
	end := strings.IndexFunc(s, func(r rune) bool { return !unicode.IsLetter(r) })
	if end < 0 {
		end = len(s)
	}
	if r, _ := utf8.DecodeRuneInString(s); r == utf8.RuneError {
		return s
	}
	if w, ok := many[s[:end]]; ok {
		return w + s[end:]
	}
	return s
}
