package svg

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// id is the id in the file: the caller's prefix, then the sheet's id, of letters,
// digits, '-', '_' and '.' alone. Any other character becomes its number, so that
// two ids stay two.
func (d *drawing) id(id string) string {
	var b strings.Builder
	for _, r := range d.prefix + id {
		switch {
		case isNameRune(r) || r == '.':
			b.WriteRune(r)
		default:
			fmt.Fprintf(&b, "_%x.", r)
		}
	}
	s := b.String()
	if s == "" || s[0] == '-' || s[0] == '.' || s[0] >= '0' && s[0] <= '9' {
		return "_" + s
	}
	return s
}

// classOf keeps the class names of a list and drops every character that has no
// place in one.
func classOf(class string) string {
	return strings.TrimSpace(keep(class, func(r rune) bool { return isNameRune(r) || r == ' ' }))
}

func isNameRune(r rune) bool {
	return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_'
}

func keep(s string, ok func(rune) bool) string {
	return strings.Map(func(r rune) rune {
		if ok(r) {
			return r
		}
		return -1
	}, s)
}

var markup = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;")

// escaped is text as it may stand in an element or between quotation marks,
// without what XML 1.0 can't hold (section 2.2, Char).
func escaped(s string) string {
	s = keep(s, func(r rune) bool {
		return r == '\t' || r == '\n' || r == '\r' || r >= ' ' && r <= 0xD7FF ||
			r >= 0xE000 && r <= 0xFFFD && r != utf8.RuneError || r >= 0x10000
	})
	return markup.Replace(s)
}
