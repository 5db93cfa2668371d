package expr

import (
	"regexp"
	"slices"
	"strings"

	"flatwright/schematic/finding"
)

// anyWord is a run of letters and digits; anyNumber is one that is a number as
// findings print it: 27, 13.5, 15½, ¼, but not 2X.
var (
	anyWord   = regexp.MustCompile(`[\pL\pN]+(?:\.\pN+)*`)
	anyNumber = regexp.MustCompile(`^(?:\d+(?:\.\d+)?[¼½¾⅛⅜⅝⅞]?|[¼½¾⅛⅜⅝⅞])$`)
)

// eachNumber is s with every number in it replaced.
func eachNumber(s string, with func(string) string) string {
	return anyWord.ReplaceAllStringFunc(s, func(w string) string {
		if anyNumber.MatchString(w) {
			return with(w)
		}
		return w
	})
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
		line := func(text func(finding.Finding) string) string { return together(sizes, group, at, text) }
		f.Message = line(func(f finding.Finding) string { return f.Message })
		f.Have = line(func(f finding.Finding) string { return f.Have })
		f.Want = line(func(f finding.Finding) string { return f.Want })
		f.Fix = line(func(f finding.Finding) string { return f.Fix })
	}
	if len(f.Sizes) > 0 {
		f.Sizes = nil
		for i, n := range at {
			if n > 0 {
				f.Sizes = append(f.Sizes, sizes.Names[i])
			}
		}
		if len(f.Sizes) == sizes.Len() {
			f.Sizes = nil
		}
	}
	return finding.List{f}
}

// together is one text for the texts of several sizes.
func together(sizes Sizes, group finding.List, at []int, text func(finding.Finding) string) string {
	first := text(group[0])
	bones, numbers := skeleton(first)
	same, match := true, true
	slots := make([][]string, len(numbers)) // each number's text in every size
	for k := range slots {
		slots[k] = slices.Repeat([]string{Dash}, len(at))
	}
	for i, n := range at {
		if n == 0 {
			continue
		}
		t := text(group[n-1])
		b, found := skeleton(t)
		same, match = same && t == first, match && b == bones
		for k := range min(len(slots), len(found)) {
			slots[k][i] = found[k]
		}
	}
	if same {
		return first
	}
	if !match {
		var parts []string
		for i, n := range at {
			if n > 0 && text(group[n-1]) != "" {
				parts = append(parts, sizes.Names[i]+": "+text(group[n-1]))
			}
		}
		return strings.Join(parts, "; ")
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
