package finding

import (
	"slices"
	"strings"
)

// PlainName is a name as it is compared: small letters, one space between words.
func PlainName(s string) string {
	return Spaced(dashes.Replace(strings.ToLower(s)))
}

// Spaced is a text with one space between its words and none around it.
func Spaced(s string) string {
	if s == "" || s[0] != ' ' && s[len(s)-1] != ' ' && !strings.Contains(s, "  ") && !strings.ContainsAny(s, "\n\t\u00a0") {
		return s
	}
	return strings.Join(strings.Fields(s), " ")
}

var dashes = strings.NewReplacer("-", " ", "_", " ")

// Nearest is the one of names that is nearest to s, or empty if none is near: at most a third of
// its letters are other ones. No number or lone letter is near to another.
func Nearest(s string, names []string) string {
	s = PlainName(s)
	if len(s) > 100 || strings.Trim(s, "0123456789") == "" && !slices.Contains(names, s) {
		return ""
	}
	best, least := "", 1000
	near := max(1, len(s)/3)
	for _, n := range names[:min(len(names), 300)] {
		p := PlainName(n)
		if len(p)-len(s) > near || len(s)-len(p) > near+1 {
			continue
		}
		d := Distance(s, p)
		if strings.ReplaceAll(s, " ", "") == strings.ReplaceAll(p, " ", "") || s+"s" == p || p+"s" == s {
			d = min(d, 1)
		}
		if d < least {
			best, least = n, d
		}
	}
	if n := len([]rune(s)); least <= max(1, n/3) && (least < n || least == 0) {
		return best
	}
	return ""
}

// Distance is how many letters must be put in, taken out, changed or swapped with
// their neighbour to make b of a (optimal string alignment).
func Distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	if len(x)-len(y) > 40 || len(y)-len(x) > 40 {
		return 1000
	}
	var before []int
	prev := make([]int, len(y)+1)
	for j := range prev {
		prev[j] = j
	}
	for i := range x {
		row := make([]int, len(y)+1)
		row[0] = i + 1
		for j := range y {
			cost := 1
			if x[i] == y[j] {
				cost = 0
			}
			row[j+1] = min(prev[j+1]+1, row[j]+1, prev[j]+cost)
			if i > 0 && j > 0 && x[i] == y[j-1] && x[i-1] == y[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, prev = prev, slices.Clone(row)
	}
	return prev[len(y)]
}
