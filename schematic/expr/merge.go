package expr

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"flatwright/schematic/finding"
)

// vulgar are the fractions that findings print.
const vulgar = "¼½¾⅛⅜⅝⅞"

// eachNumber is s with every number in it replaced: a number as findings print it, such as 27, 13.5, 15½
// and ¼, that is a word of its own (not 2X).
func eachNumber(s string, with func(string) string) string {
	var b strings.Builder
	done := 0
	for i := 0; i < len(s); {
		end := endOfWord(s, i)
		if end == i {
			_, n := utf8.DecodeRuneInString(s[i:])
			i += n
			continue
		}
		if isNumber(s[i:end]) {
			end = endOfFraction(s, i, end)
			b.WriteString(s[done:i])
			b.WriteString(with(s[i:end]))
			done = end
		}
		i = end
	}
	if done == 0 {
		return s
	}
	return b.String() + s[done:]
}

// endOfWord is the end of the word that begins at i, which is i if there is none: letters and digits, and
// then digits behind points.
func endOfWord(s string, i int) int {
	end := run(s, i, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsNumber(r) })
	for end > i && end < len(s) && s[end] == '.' {
		next := run(s, end+1, unicode.IsNumber)
		if next == end+1 {
			break
		}
		end = next
	}
	return end
}

// endOfFraction is the end of the number from i to end with the fraction that is written behind it: 2/3, 15 2/3.
func endOfFraction(s string, i, end int) int {
	digit := func(r rune) bool { return r >= '0' && r <= '9' }
	over := func(at int) (int, bool) { // behind digits, a stroke and digits
		mid := run(s, at, digit)
		if mid == at || mid >= len(s) || s[mid] != '/' {
			return end, false
		}
		last := run(s, mid+1, digit)
		return last, last > mid+1
	}
	if last, ok := over(i); ok {
		return last
	}
	if run(s, i, digit) == end && end < len(s) && s[end] == ' ' {
		if last, ok := over(end + 1); ok {
			return last
		}
	}
	return end
}

// run is the end of the characters from i on that are of a kind.
func run(s string, i int, of func(rune) bool) int {
	n := strings.IndexFunc(s[i:], func(r rune) bool { return !of(r) })
	if n < 0 {
		return len(s)
	}
	return i + n
}

func isNumber(w string) bool {
	digit := func(r rune) bool { return r >= '0' && r <= '9' }
	end := run(w, 0, digit)
	if end > 0 && end < len(w) && w[end] == '.' {
		if next := run(w, end+1, digit); next > end+1 {
			end = next
		}
	}
	rest := w[end:]
	if rest == "" {
		return true
	}
	_, n := utf8.DecodeRuneInString(rest)
	return n == len(rest) && strings.Contains(vulgar, rest)
}

// skeleton is s without its numbers, and numbers are those.
func skeleton(s string) (text string, numbers []string) {
	text = eachNumber(s, func(n string) string {
		numbers = append(numbers, n)
		return "\x00"
	})
	return text, numbers
}

// sameThing tells findings apart that are not the same thing in another size.
type sameThing struct {
	kind, piece, section, message string
	severity                      finding.Severity
	pos                           finding.Pos
}

// Merge makes one finding of those that say the same thing, but for their
// numbers, of several sizes. Numbers that differ become the trade's line, with a dash
// for a size that is not concerned. A finding of all sizes names none.
func (sizes Sizes) Merge(all finding.List) finding.List {
	var order []sameThing
	groups := map[sameThing]finding.List{}
	for _, f := range all {
		text, _ := skeleton(f.Message)
		k := sameThing{f.Kind, f.Piece, f.Section, text, f.Severity, f.Pos}
		if groups[k] == nil {
			order = append(order, k)
		}
		groups[k] = append(groups[k], f)
	}
	var merged finding.List
	for _, k := range order {
		merged = append(merged, one(sizes, groups[k])...)
	}
	return merged
}

// one is a group of findings as one, or as they are if two of them are of the
// same size.
func one(sizes Sizes, group finding.List) finding.List {
	at := make([]int, sizes.Len()) // the finding of each size, from 1
	for n, f := range group {
		for _, s := range f.Sizes {
			i := sizes.Index(s)
			if i < 0 || at[i] > 0 && group[at[i]-1].Message != f.Message {
				return group
			}
			at[i] = n + 1
		}
	}
	f := group[0]
	if len(group) > 1 {
		for _, of := range []func(*finding.Finding) *string{
			func(f *finding.Finding) *string { return &f.Message }, func(f *finding.Finding) *string { return &f.Have },
			func(f *finding.Finding) *string { return &f.Want }, func(f *finding.Finding) *string { return &f.Fix },
		} {
			texts := make([]string, len(at)) // by size; those that are not concerned have none
			for i, n := range at {
				if n > 0 {
					texts[i] = *of(&group[n-1])
				}
			}
			*of(&f) = toCopy(sizes, *of(&group[0]), texts, at)
		}
	}
	if len(f.Sizes) > 0 {
		f.Sizes = concerned(sizes, at)
	}
	return finding.List{f}
}

// concerned are the names of the sizes that have a finding; none if all have.
func concerned(sizes Sizes, at []int) []string {
	var names []string
	for i, n := range at {
		if n > 0 {
			names = append(names, sizes.Names[i])
		}
	}
	if len(names) == sizes.Len() {
		return nil
	}
	return names
}

// toCopy is one text for the texts of several sizes; each behind its size, if a line that is set apart to be copied would have a dash, and so delete the
// sizes that are right.
func toCopy(sizes Sizes, first string, texts []string, at []int) string {
	text := together(sizes, first, texts, at)
	if _, copied, _ := strings.Cut(text, "`"); strings.Contains(strings.Split(copied, "`")[0], Dash) {
		return apart(sizes, texts, at)
	}
	return text
}

// together is one text for the texts of several sizes, those with a number in at. First is one of them.
func together(sizes Sizes, first string, texts []string, at []int) string {
	bones, numbers := skeleton(first)
	same, match := true, true
	slots := make([][]string, len(numbers)) // each number's text in every size
	for k := range slots {
		slots[k] = slices.Repeat([]string{Dash}, len(at))
	}
	for i, t := range texts {
		if at[i] == 0 || t == first {
			fillSlots(slots, numbers, i, at[i] > 0)
			continue
		}
		b, found := skeleton(t)
		same, match = false, match && b == bones
		fillSlots(slots, found, i, true)
	}
	switch {
	case same:
		return first
	case !match:
		return apart(sizes, texts, at)
	}
	k := -1
	return eachNumber(first, func(n string) string {
		k++
		for i := range at {
			if at[i] > 0 && slots[k][i] != n {
				return sizes.Line(slots[k])
			}
		}
		return n
	})
}

func fillSlots(slots [][]string, numbers []string, size int, has bool) {
	for k := range slots {
		if has && k < len(numbers) {
			slots[k][size] = numbers[k]
		}
	}
}

// apart is texts that are not alike, each behind its size.
func apart(sizes Sizes, texts []string, at []int) string {
	names := map[string]string{}
	var order []string
	for i, t := range texts {
		switch {
		case at[i] == 0 || t == "":
		case names[t] == "":
			order = append(order, t)
			names[t] = sizes.Names[i]
		default:
			names[t] += ", " + sizes.Names[i]
		}
	}
	for i, t := range order {
		order[i] = names[t] + ": " + t
	}
	return strings.Join(order, "; ")
}
