package expr

import (
	"fmt"
	"strings"

	"flatwright/schematic/finding"
)

// mostSizes is the most sizes that a pattern has.
const mostSizes = 60

const exampleSizes = "XS (S, M, L) (1X, 2X)"

// ParseSizes reads the line of sizes: XS (S, M, L) (1X, 2X). Names may have
// spaces and dashes (3-6 months); two sizes can't have one name. There are at most MostSizes.
func ParseSizes(text string) (Sizes, *Problem) {
	t := []rune(text)
	var s Sizes
	b := brackets{t: t, opened: -1, comma: -1, example: exampleSizes, missing: nameGap}
	for {
		more, p := b.next()
		switch {
		case p != nil:
			return s, p
		case !more && len(s.Names) == 0:
			return s, &Problem{Kind: "file/empty", Span: Span{0, len(t)}, Message: "there is no size here", Want: "the sizes, such as " + exampleSizes}
		case !more:
			s.Groups = b.groups
			return s, nil
		}
		end := placeEnd(t, b.i)
		name := strings.Join(strings.Fields(string(t[b.i:end])), " ")
		if p := s.refuse(name, b.due(), Span{b.i, end}); p != nil {
			return s, p
		}
		s.Names = append(s.Names, name)
		b.take(end)
	}
}

// sizedIn are words in which sizes are told, behind all of them.
var sizedIn = map[string]bool{"in": true, "inch": true, "inches": true, "cm": true, "months": true, "mths": true, "mos": true, "years": true, "yrs": true, "bust": true, "chest": true, "\"": true}

// refuse says why name can't be that of the next size, or gives nil.
func (s Sizes) refuse(name string, due bool, at Span) *Problem {
	bad := func(kind, message, want string) *Problem {
		return &Problem{Kind: kind, Span: at, Message: message, Want: want}
	}
	switch {
	case !due && sizedIn[name]:
		p := bad("file/form", fmt.Sprintf("%q comes after the sizes", name), "the sizes alone, such as "+exampleSizes)
		p.Fix = fmt.Sprintf("remove %q, or write it with each size", name)
		return p
	case !due:
		return bad("file/form", fmt.Sprintf("%q comes after a bracket, with no comma and no bracket of its own", finding.Clip(name)),
			"sizes in brackets, such as "+exampleSizes)
	case strings.EqualFold(name, "none") || len([]rune(name)) == 1 && isDash([]rune(name)[0]):
		return bad("file/form", fmt.Sprintf("%q can't be the name of a size", finding.Clip(name)),
			"a name; a dash or none means a size that has no number")
	case len(s.Names) == mostSizes:
		return bad("file/bounds", fmt.Sprintf("there are more than %d sizes", mostSizes), fmt.Sprintf("at most %d", mostSizes))
	}
	if i := s.Index(name); i >= 0 {
		p := bad("file/duplicate-name", fmt.Sprintf("two sizes are called %q", finding.Clip(s.Names[i])), "")
		p.Fix = "give one of them another name"
		return p
	}
	return nil
}

func nameGap(i int) *Problem {
	return &Problem{Kind: "file/form", Span: Span{i, i + 1}, Message: "the name of a size is missing here", Want: "the sizes, such as " + exampleSizes}
}

// Key is a name as names are compared: without case, its words one space apart.
func Key(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }
