package read

import (
	"slices"
	"strings"
)

// like is the key that someone who wrote name most likely meant, or empty.
func (t *table) like(name string) string {
	n := plainKey(name)
	if h, ok := t.hints[n]; ok && t.find(h) != nil {
		return h
	}
	all := make([]string, 0, len(t.keys))
	for _, k := range t.keys {
		all = append(append(all, k.name), k.also...)
	}
	if k := t.find(nearest(n, all)); k != nil {
		return k.name
	}
	return ""
}

func plainKey(s string) string { return spaced(dashes.Replace(strings.ToLower(s))) }

var dashes = strings.NewReplacer("-", " ", "_", " ")

// nearest is the name nearest to s, or empty if none is near: at most a third of
// its letters are other ones.
func nearest(s string, names []string) string {
	s = plainKey(s)
	if len(s) > 100 {
		return ""
	}
	best, least := "", 1000
	near := max(1, len(s)/3)
	for _, n := range names[:min(len(names), 300)] {
		p := plainKey(n)
		if len(p)-len(s) > near || len(s)-len(p) > near+1 {
			continue
		}
		d := distance(s, p)
		if strings.ReplaceAll(s, " ", "") == strings.ReplaceAll(p, " ", "") || s+"s" == p || p+"s" == s {
			d = min(d, 1)
		}
		if d < least {
			best, least = n, d
		}
	}
	if n := len([]rune(s)); least <= max(1, n/3) && least < max(n, 2) {
		return best
	}
	return ""
}

// distance is how many letters must be put in, taken out, changed or swapped with
// their neighbour to make b of a (optimal string alignment).
func distance(a, b string) int {
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
