package text

import (
	"slices"
	"strings"
)

var shuts = map[string]string{"(": ")", "[": "]", "{": "}"}

// level is a bracket that is open: its tokens stand as they are in the line, unless another bracket does among them.
type level struct {
	open Token
	from int
	list []Token // nil: those of the line
}

func (l *level) held(t []Token, to int) []Token {
	if l.list == nil && to > l.from {
		return t[l.from:to:to]
	}
	return l.list
}

// part takes the tokens up to one that is not among them.
func (l *level) part(t []Token, to int) {
	if l.list == nil {
		l.list = append(make([]Token, 0, to-l.from+4), t[l.from:to]...)
	}
}

func (l *level) add(k Token) {
	if l.list != nil {
		l.list = append(l.list, k)
	}
}

// Fenced puts brackets where two dashes stand for them: round what a chain counts as, and round a count at the end of a line. ch 3
// - counts as dc - 11 dc in ring, join. - 12 dc -
func Fenced(t []Token) []Token {
	for i := 1; i+1 < len(t); i++ {
		if !t[i].Is("-", "--") {
			continue
		}
		to := i + 1
		for to < len(t) && !t[to].Is("-", "--", ";", ".", "(", ")", "[", "]", "*") {
			to++
		}
		if to == len(t) || !t[to].Is("-", "--") || to < i+2 || !fences(t[i+1:to], to+1 == len(t) || to+2 == len(t) && t[to+1].Is(".")) {
			continue
		}
		t = slices.Clone(t)
		t[i].S, t[to].S = "(", ")"
		i = to
	}
	return t
}

// fences reports whether what stands between two dashes is said beside the work, there or at the end of a line.
func fences(t []Token, ends bool) bool {
	if t[0].Kind == 'n' {
		return ends && len(t) > 1 && !slices.ContainsFunc(t, func(k Token) bool { return k.Is("in", "into", "each", "next", "to", "from") })
	}
	says := func(k Token) bool {
		return k.Is("counts", "count", "counted", "regard", "regarded", "treated", "considered", "stands", "equals")
	}
	return slices.ContainsFunc(t[:min(len(t), 3)], says) && !slices.ContainsFunc(t, func(k Token) bool { return k.Is(",") })
}

// Tree folds tokens into brackets. Loose are the tokens of brackets that do not close, or
// close and were never opened; deep tells that they nest too deeply to be read.
func Tree(t []Token) (tree []Token, loose []Token, deep bool) {
	if !slices.ContainsFunc(t, func(k Token) bool { return k.Kind == 'p' && strings.Contains("()[]{}", k.S) }) {
		return t, nil, false
	}
	stack := []level{{list: make([]Token, 0, len(t))}}
	top := func() *level { return &stack[len(stack)-1] }
	for i, k := range t {
		if k.Kind != 'p' {
			top().add(k)
			continue
		}
		switch k.S {
		case "(", "[", "{":
			if len(stack) > MaxDepth {
				return nil, nil, true
			}
			top().part(t, i)
			stack = append(stack, level{open: k, from: i + 1})
		case ")", "]", "}":
			if len(stack) < 2 || shuts[top().open.S] != k.S && slices.ContainsFunc(stack[1:], func(l level) bool { return shuts[l.open.S] == k.S }) {
				top().part(t, i)
				loose = append(loose, stray(t, i, len(stack) > 1)...)
				continue
			} // (3 ch, 1 tr] is closed by the wrong sign
			g := top().open
			g.Kind, g.Sub, g.End = 'g', top().held(t, i), k.End
			stack = stack[:len(stack)-1]
			top().add(g)
		default:
			top().add(k)
		}
	}
	for len(stack) > 1 { // what never closes is as if it were not open
		l, list := *top(), top().held(t, len(t))
		stack = stack[:len(stack)-1]
		if len(stack) == 1 && len(list) > 0 && countOf(list) { // (34 at the end of a row
			g := l.open
			g.Kind, g.Sub, g.End = 'g', list, list[len(list)-1].End
			top().list = append(top().list, g)
			continue
		}
		loose = append(loose, l.open)
		top().list = append(top().list, list...)
	}
	return stack[0].list, loose, false
}

// stray is the i-th token, a bracket that closes nothing; none at the end of a clause where none is open: it says nothing there.
func stray(t []Token, i int, open bool) []Token {
	if !open && (i+1 == len(t) || t[i+1].Is(",", ".", ";", ":")) {
		return nil
	}
	return t[i : i+1]
}
