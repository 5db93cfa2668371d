package sheet

import "strings"

// LanguageTag is a language tag (BCP 47) without any character that has no place
// in one; empty if nothing is left.
func LanguageTag(lang string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' {
			return r
		}
		return -1
	}, lang)
}
