package expr

import (
	"fmt"
	"strings"

	"flatwright/schematic/finding"
)

// ParseSizes reads the line of sizes: XS (S, M, L) (1X, 2X). Names may have
// spaces and dashes (3-6 months); two sizes can't have one name.
func ParseSizes(text string) (Sizes, *Problem) {
	t := []rune(text)
	var s Sizes
	depth, opened, inGroup := 0, 0, 0
	closeGroup := func() {
		if inGroup > 0 {
			s.Groups = append(s.Groups, inGroup)
		}
		inGroup = 0
	}
	comma := true // a name may follow
	for i := skipSpace(t, 0); i < len(t); i = skipSpace(t, i) {
		switch r := t[i]; {
		case r == '(' || r == '[':
			if depth > 0 {
				return s, &Problem{Kind: "file/form", Span: Span{i, i + 1}, Message: "a bracket opens inside a bracket",
					Want: "groups side by side, such as XS (S, M, L) (1X, 2X)"}
			}
			closeGroup()
			depth, opened, comma = 1, i, true
			i++
		case r == ')' || r == ']':
			if depth == 0 {
				return s, &Problem{Kind: "file/form", Span: Span{i, i + 1}, Message: "a bracket closes that was never opened",
					Fix: "take it out, or open one before the first size of its group"}
			}
			if comma {
				return s, nameGap(i)
			}
			closeGroup()
			depth = 0
			i++
		case r == ',' || r == ';':
			if comma {
				return s, nameGap(i)
			}
			comma = true
			i++
		default:
			end := placeEnd(t, i)
			name := strings.Join(strings.Fields(string(t[i:end])), " ")
			if !comma {
				return s, &Problem{Kind: "file/form", Span: Span{i, end}, Message: fmt.Sprintf("%q stands behind a bracket without a comma or a bracket of its own", finding.Clip(name)),
					Want: "sizes in brackets, such as XS (S, M, L) (1X, 2X)"}
			}
			if strings.EqualFold(name, "none") || end == i+1 && isDash(t[i]) {
				return s, &Problem{Kind: "file/form", Span: Span{i, end}, Message: fmt.Sprintf("%q can't be the name of a size", finding.Clip(name)),
					Want: "a name; a dash and none stand for a size that has no number"}
			}
			if at := s.Index(name); at >= 0 {
				return s, &Problem{Kind: "file/duplicate-name", Span: Span{i, end}, Message: fmt.Sprintf("two sizes are called %q", finding.Clip(s.Names[at])),
					Fix: "give one of them another name"}
			}
			s.Names = append(s.Names, name)
			inGroup++
			comma = false
			i = end
		}
	}
	if depth > 0 {
		return s, &Problem{Kind: "file/form", Span: Span{opened, opened + 1}, Message: "this bracket is never closed", Fix: "add )"}
	}
	closeGroup()
	if len(s.Names) == 0 {
		return s, &Problem{Kind: "file/empty", Span: Span{0, len(t)}, Message: "there is no size here", Want: "the sizes, such as XS (S, M, L) (1X, 2X)"}
	}
	if comma {
		return s, nameGap(len(t) - 1)
	}
	return s, nil
}

func nameGap(i int) *Problem {
	return &Problem{Kind: "file/form", Span: Span{i, i + 1}, Message: "the name of a size is missing here",
		Want: "the sizes, such as XS (S, M, L) (1X, 2X)"}
}
