package grammar

import (
	"html"
	"strings"
	"unicode"
	"unicode/utf8"

	"flatwright/schematic/rows/text"
)

// typeset are marks that a page or a typesetter puts into a text, and what a hand types: spaces of many widths, letters cast in one, stars of
// other shapes, and what only says where a word may break.
var typeset = strings.NewReplacer("\u00a0", " ", "\u2002", " ", "\u2003", " ", "\u2007", " ", "\u2008", " ", "\u2009", " ", "\u200a", " ", "\u202f", " ", "\u3000", " ",
	"\u00ad", "", "\u200b", "", "\u200c", "", "\u200d", "", "\u2060", "", "ﬀ", "ff", "ﬁ", "fi", "ﬂ", "fl", "ﬃ", "ffi", "ﬄ", "ffl",
	"∗", "*", "⁎", "*", "✱", "*", "✲", "*", "✳", "*", "✶", "*", "✻", "*", "✽", "*", "❋", "*", "＊", "*", "﹡", "*", "٭", "*", "☆", "★", "⭐", "★")

var (
	markup = text.Once(`(?i)</(?:p|li|div|span|strong|b|em|td|h[1-6])>|<br ?/?>`)
	tag    = text.Once(`(?i)^</?(?:p|br|div|span|b|strong|i|em|u|a|li|ul|ol|h[1-6]|table|tbody|tr|td|font|blockquote)(?:\s[^<>]*)?/?>`)
	entity = text.Once(`^&(?:#\d{2,5}|#[xX][0-9a-fA-F]{2,5}|[a-zA-Z]{2,8}\d{0,2});`)
	reply  = text.Once(`^\s*(?:(?:> ?)+|[•·‣▪▸►➤] ?)`)
)

// longestMark is how many bytes a mark of a page has at most.
const longestMark = 400

// clipping is how a text was copied: with the marks of a page; quoted in an answer or made a list of, each line behind a mark; or all of it set in by some characters.
type clipping struct {
	marked, quoted bool
	in             int
}

func clippingOf(lines []string) (c clipping) {
	quoted, all := 0, 0
	for _, l := range lines {
		c.marked = c.marked || markup().MatchString(l)
		if strings.TrimSpace(l) == "" {
			continue
		}
		if in := len(l) - len(strings.TrimLeft(l, " \t")); all == 0 || in < c.in {
			c.in = in
		}
		if all++; reply().MatchString(l) {
			quoted++
		}
	}
	c.quoted = quoted > 2 && 4*quoted >= 3*all
	return c
}

// lines are the lines of a text as a hand types them, and the columns that the characters of those that were typeset have in the file.
func lines(src []byte) (out []string, columns map[int][]int) {
	s := strings.TrimPrefix(strings.ReplaceAll(string(src), "\r\n", "\n"), "\ufeff")
	out = strings.Split(strings.ReplaceAll(s, "\r", "\n"), "\n")
	columns = map[int][]int{}
	c := clippingOf(out)
	for i, l := range out {
		typed := l
		if c.quoted || c.in > 0 || strings.ContainsAny(l, "<&") || strings.ContainsFunc(l, func(r rune) bool { return r > unicode.MaxASCII }) {
			var at []int
			if typed, at = c.typed(l); typed != l {
				columns[i+1] = at
			}
		}
		out[i] = text.Pasted(typed)
	}
	if small(out) {
		capitals(out)
	}
	return out, columns
}

// small reports whether a text was typed without capitals.
func small(lines []string) bool {
	words := 0
	for _, l := range lines {
		if strings.ContainsFunc(l, unicode.IsUpper) {
			return false
		}
		words += len(strings.Fields(l))
	}
	return words > 60
}

// beginsRow is what begins a line of a row.
var beginsRow = text.Once(`^(?:(?:row|rnd|round)s? ?\d|next (?:row|rnd|round))`)

// capitals gives the lines of a text without any their capitals, each that begins something: a small letter goes on with the line before it.
func capitals(lines []string) {
	last := ""
	for i, l := range lines {
		t := strings.TrimSpace(l)
		k := len(l) - len(strings.TrimLeft(l, " \t*•-"))
		_, size := utf8.DecodeRuneInString(l[k:])
		begun := l[:k] + strings.ToUpper(l[k:k+size]) + l[k+size:]
		begins := last == "" || strings.ContainsAny(last[len(last)-1:], ".:!?)]") || text.NamesPiece(last) || text.NamesPiece(t)
		if t != "" && (begins || beginsRow().MatchString(t) && !text.GoesOn(last, begun)) {
			lines[i] = begun
		}
		last = t
	}
}

// typed is a line as a hand types it, and the columns, from 1, in which its characters stand in the file.
func (c clipping) typed(line string) (string, []int) {
	var out []rune
	var at []int
	col := 1
	skip := func(re *text.Pattern, when bool) (string, bool) {
		m := ""
		if when {
			m = re.FindString(line[:min(len(line), longestMark)])
		}
		line = line[len(m):]
		return m, m != ""
	}
	put := func(s string) {
		for _, r := range typeset.Replace(s) {
			out, at = append(out, r), append(at, col)
		}
	}
	if m, ok := skip(reply(), c.quoted); ok {
		col += len([]rune(m))
	} else if in := min(c.in, len(line)-len(strings.TrimLeft(line, " \t"))); in > 0 {
		line, col = line[in:], 1+in
	}
	for len(line) > 0 {
		if m, ok := skip(tag(), c.marked && line[0] == '<'); ok {
			col += len([]rune(m))
			continue
		}
		if m, ok := skip(entity(), line[0] == '&'); ok {
			put(html.UnescapeString(m))
			col += len([]rune(m))
			continue
		}
		_, size := utf8.DecodeRuneInString(line)
		put(line[:size])
		line = line[size:]
		col++
	}
	return string(out), at
}
