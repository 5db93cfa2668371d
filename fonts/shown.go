package fonts

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// StandIn is drawn in place of a character that the faces lack.
const StandIn = '□'

// Lacking are the characters of a text for which StandIn is drawn.
func Lacking(f Face, s string) []rune {
	m := metricsOf(f)
	var out []rune
	for _, r := range composed(s) {
		if m.of(r) == 0 && !isSpace(r) && !isInvisible(r) {
			out = append(out, r)
		}
	}
	return out
}

// Shown is the text as every writer draws it, on one line: composed letters (Unicode
// NFC), a line end or any unusual space as a space, and StandIn for what the face
// lacks, for control characters and for those that would turn the order of
// reading. Characters that show nothing (a soft hyphen, a joiner) are left out.
// Shown of Shown is the same text.
func Shown(f Face, s string) string {
	if f.House() && plain(s) {
		return s
	}
	m := metricsOf(f)
	s = composed(s)
	var b strings.Builder
	b.Grow(len(s))
	for _, r := range s {
		switch {
		case m.of(r) != 0:
			b.WriteRune(r)
		case isSpace(r):
			b.WriteByte(' ')
		case !isInvisible(r):
			b.WriteRune(StandIn)
		}
	}
	return b.String()
}

// plain reports whether s is printable ASCII, which every face draws as it is.
func plain(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

// composed leaves out what shows nothing before it composes, so that a joiner
// can't keep a letter and its accent apart. A carriage return and a newline are
// one line end.
func composed(s string) string {
	s = strings.ReplaceAll(s, "\r\n", "\n")
	s = strings.Map(func(r rune) rune {
		if isInvisible(r) {
			return -1
		}
		return r
	}, s)
	return norm.NFC.String(s)
}

func isSpace(r rune) bool {
	return r == '\t' || r == '\n' || r == '\r' || r == '\v' || r == '\f' || r == '\u0085' ||
		unicode.In(r, unicode.Zs, unicode.Zl, unicode.Zp)
}

// isInvisible is true of characters that show nothing and turn nothing: soft
// hyphen, combining grapheme joiner, zero-width space and joiners, word joiner
// and invisible operators, variation selectors, byte order mark.
func isInvisible(r rune) bool {
	switch {
	case r == '\u00ad', r == '\u034f', r == '\ufeff',
		r >= '\u200b' && r <= '\u200d', r >= '\u2060' && r <= '\u2064',
		r >= '\ufe00' && r <= '\ufe0f', r >= 0xE0100 && r <= 0xE01EF:
		return true
	}
	return false
}
