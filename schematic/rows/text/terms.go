package text

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"flatwright/schematic/stitch"
)

// nation is a name of a country by which terms are called, and termed what says that it is one of terms: US crochet terms.
const (
	nation = `(u\.s\.a\.|u\.s\.a|u\.s\.|u\.s|usa|us|u\.k\.|u\.k|uk|american|british)`
	termed = `((?:[ -](?:standard|crochet|knitting|stitch|pattern))*[ -](?:terms?|terminology|abbreviations|notation|names|instructions)\b)`
)

var (
	saysTerms  = Once(`(?i)\b` + nation + termed)
	ukFormat   = Once(`(?i)^\W*(?:uk|british)\b[^.:]{0,16}(?:etc\.)? (?:format|version|pattern)\W*$`) // UK - Aus etc. Format
	titleTerms = Once(`^\W*[A-Z][A-Za-z' -]{2,50} \((US|UK|U\.S\.|U\.K\.)\)\W*$`)                     // Little Flower (UK)
	atNation   = Once(`^(?i:` + nation + `)` + `(?i:` + termed + `)?`)
)

// longestNation bounds what may name terms, with the words that say so.
const longestNation = 120

// TermsSaid is which terms a line says that a text is in: written in US crochet terms.
func TermsSaid(line string) (t stitch.Terms, ok bool) {
	m := saysTerms().FindStringSubmatch(line)
	if m == nil {
		m = titleTerms().FindStringSubmatch(line)
	}
	if m == nil {
		return stitch.UK, ukFormat().MatchString(line)
	}
	return termsOf(m[1]), true
}

// TitleTerms reports whether a line is a title that says the terms: Little Flower (UK).
func TitleTerms(line string) bool { return titleTerms().MatchString(line) }

// Nation is the name of a country at the beginning of s by which terms are called; said is whether the words behind it are of
// terms. Length is 0 if there is none: us is one only in capitals, or with such words.
func Nation(s string) (t stitch.Terms, length int, said bool) {
	if s == "" || !strings.ContainsRune("uUaAbB", rune(s[0])) {
		return 0, 0, false
	}
	m := atNation().FindStringSubmatchIndex(s[:min(len(s), longestNation)]) // all that is left of a text takes as long as it is
	if m == nil {
		return 0, 0, false
	}
	name, said := s[:m[3]], m[4] >= 0
	if c, _ := utf8.DecodeRuneInString(s[m[3]:]); unicode.IsLetter(c) || !said && strings.ToLower(name) == name && len(name) < len("british") {
		return 0, 0, false
	}
	return termsOf(name), len(name), said
}

// OtherNation is the name of the other country, written alike.
func OtherNation(name string) string {
	low := strings.ToLower(name)
	other := map[string]string{"u.s.a.": "u.k.", "u.s.a": "u.k", "u.s.": "u.k.", "u.s": "u.k", "usa": "uk", "us": "uk", "u.k.": "u.s.", "u.k": "u.s", "uk": "us", "american": "british", "british": "american"}[low]
	switch {
	case name == low:
		return other
	case len(low) == len("american") || len(low) == len("british"):
		return strings.ToUpper(other[:1]) + other[1:]
	}
	return strings.ToUpper(other)
}

func termsOf(name string) stitch.Terms {
	if low := strings.ToLower(name); strings.HasPrefix(low, "b") || strings.Contains(low, "k") {
		return stitch.UK
	}
	return stitch.US
}
