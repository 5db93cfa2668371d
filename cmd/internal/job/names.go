package job

import (
	"fmt"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"flatwright/cmd/internal/files"
)

const maxSlug = 60 // letters; leaves room for size, page and ending

// plainLetters are letters that do not come apart into a plain one and a mark.
var plainLetters = strings.NewReplacer("ß", "ss", "æ", "ae", "œ", "oe", "ø", "o", "đ", "d", "ð", "d", "þ", "th", "ł", "l", "ı", "i",
	"½", "-1-2", "¼", "-1-4", "¾", "-3-4")

// Slug is a name in lower-case letters, digits and hyphens, for file names on
// every system: accents fall away. A name without such letters is 'pattern'.
func Slug(name string) string {
	var b strings.Builder
	gap := false
	for _, r := range norm.NFKD.String(plainLetters.Replace(strings.ToLower(name))) {
		switch {
		case unicode.Is(unicode.Mn, r) || r == '\'' || r == '’':
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			if gap && b.Len() > 0 {
				b.WriteByte('-')
			}
			gap = false
			b.WriteRune(r)
		default:
			gap = true
		}
		if b.Len() >= maxSlug {
			break
		}
	}
	s := strings.Trim(b.String(), "-")
	switch {
	case s == "":
		return "pattern"
	case files.Reserved(s):
		return s + "-pattern"
	}
	return s
}

// namer gives file names, each once.
type namer map[string]bool

// name is the parts' slugs with hyphens between them and the ending; a name that
// is taken gets a number. A part without letters that a slug can hold is left
// out but for the first.
func (n namer) name(ending string, parts ...string) string {
	var slugs []string
	for i, p := range parts {
		s := Slug(p)
		if i > 0 && s == "pattern" && !strings.EqualFold(strings.TrimSpace(p), "pattern") {
			s = "size"
		}
		slugs = append(slugs, s)
	}
	stem := strings.Join(slugs, "-")
	name := stem + ending
	for k := 2; n[name]; k++ {
		name = fmt.Sprintf("%s-%d%s", stem, k, ending)
	}
	n[name] = true
	return name
}
