package finding

import (
	"unicode"
	"unicode/utf8"
)

// Clip is a text of a file as a message quotes it: at most 60 characters of it, so that no file
// makes a message long.
func Clip(s string) string { return ClipTo(s, 60) }

// ClipTo is at most so many characters of s.
func ClipTo(s string, most int) string {
	if len(s) <= most {
		return s
	}
	if t := []rune(s); len(t) > most {
		return string(t[:most-1]) + "…"
	}
	return s
}

// Capital is a text with a capital at its beginning, as a sentence or a line of a table has it.
func Capital(s string) string {
	c, n := utf8.DecodeRuneInString(s)
	if c == utf8.RuneError {
		return s
	}
	return string(unicode.ToUpper(c)) + s[n:]
}
