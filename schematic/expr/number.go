package expr

import (
	"strings"
	"unicode"

	"flatwright/schematic/units"
)

func isDigit(r rune) bool  { return r >= '0' && r <= '9' }
func isVulgar(r rune) bool { return strings.ContainsRune("½¼¾⅛⅜⅝⅞⅓⅔", r) }
func isDash(r rune) bool   { return strings.ContainsRune("-–—−‑", r) }
func isSlash(r rune) bool  { return r == '/' || r == '⁄' }
func isSpace(r rune) bool  { return unicode.IsSpace(r) }

func skipSpace(t []rune, i int) int {
	for i < len(t) && isSpace(t[i]) {
		i++
	}
	return i
}

func skipDigits(t []rune, i int) int {
	for i < len(t) && isDigit(t[i]) {
		i++
	}
	return i
}

// number reads an unsigned number at i: 14, 14.5, .5, 15½, 15 1/2, 15-1/2, 1/2.
// It gives the place after it, or i if there is none. ok is false for a number
// that has too many digits or divides by 0.
func number(t []rune, i int) (v units.Num, end int, ok bool) {
	j := skipDigits(t, i)
	switch {
	case j < len(t) && t[j] == '.' && j+1 < len(t) && isDigit(t[j+1]):
		j = skipDigits(t, j+1)
		return parse(t, i, j)
	case j == i:
		if i < len(t) && isVulgar(t[i]) {
			return parse(t, i, i+1)
		}
		return v, i, false
	case j < len(t) && isSlash(t[j]) && j+1 < len(t) && isDigit(t[j+1]):
		return parse(t, i, skipDigits(t, j+1))
	case j < len(t) && isVulgar(t[j]):
		return parse(t, i, j+1)
	}
	if v, end := mixed(t, i, j); end > 0 {
		return v, end, true
	}
	if k := j + 1; k < len(t) && isSpace(t[j]) && isVulgar(t[k]) {
		return parse(t, i, k+1)
	}
	return parse(t, i, j)
}

// mixed reads a whole number that ends at j and the fraction behind it, 15 1/2, or 15-1/2 as some write
// it. It gives the place after it, or 0.
func mixed(t []rune, i, j int) (units.Num, int) {
	if j >= len(t) || !isSpace(t[j]) && t[j] != '-' {
		return units.Num{}, 0
	}
	from := j + 1
	over := skipDigits(t, from)
	if over == from || over >= len(t) || !isSlash(t[over]) {
		return units.Num{}, 0
	}
	end := skipDigits(t, over+1)
	whole, ok := units.ParseNum(string(t[i:j]))
	part, ok2 := units.ParseNum(string(t[from:end]))
	if !ok || !ok2 || !part.Less(units.Int(1)) {
		return units.Num{}, 0
	}
	return whole.Add(part), end
}

var thirds = map[rune]units.Num{'⅓': units.Frac(1, 3), '⅔': units.Frac(2, 3)}

func parse(t []rune, i, j int) (units.Num, int, bool) {
	if j-i <= 9 && skipDigits(t, i) == j {
		v := int64(0)
		for _, r := range t[i:j] {
			v = v*10 + int64(r-'0')
		}
		return units.Int(v), j, true
	}
	s := string(t[i:j])
	if f, third := thirds[t[j-1]]; third {
		rest := strings.TrimSpace(string(t[i : j-1]))
		if rest == "" {
			return f, j, true
		}
		v, ok := units.ParseNum(rest)
		return v.Add(f), j, ok
	}
	v, ok := units.ParseNum(s)
	return v, j, ok
}
