package finding

import "strings"

// OneLine is a text of a file without line breaks and other control characters.
func OneLine(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r >= 0x7f && r < 0xa0 || r == '\u2028' || r == '\u2029' {
			return ' '
		}
		return r
	}, s)
}

var www = strings.NewReplacer("www.", `www\.`, "WWW.", `WWW\.`) // GFM 6.9 would link it

// Markdown is a text of a file as words in Markdown: every character that it or HTML could take
// for markup stands for itself. CommonMark 2.4 lets a backslash stand before any ASCII punctuation.
func Markdown(s string) string {
	var b strings.Builder
	for _, r := range OneLine(s) {
		if strings.ContainsRune("\\`*_{}[]()<>#!|~&$^=:@\"'", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return www.Replace(b.String())
}
