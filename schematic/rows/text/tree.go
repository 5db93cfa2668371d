package text

import (
	"slices"
	"strings"
)

var shuts = map[string]string{"(": ")", "[": "]", "{": "}"}

// Tree folds tokens into brackets. Loose are the tokens of brackets that do not close, or
// close and were never opened; deep tells that they nest too deeply to be read.
func Tree(t []Token) (tree []Token, loose []Token, deep bool) {
	if !slices.ContainsFunc(t, func(k Token) bool { return k.Kind == 'p' && strings.Contains("()[]{}", k.S) }) {
		return t, nil, false
	}
	type level struct {
		open Token
		list []Token
	}
	stack := []level{{list: make([]Token, 0, len(t))}}
	top := func() *level { return &stack[len(stack)-1] }
	for i, k := range t {
		if k.Kind != 'p' {
			top().list = append(top().list, k)
			continue
		}
		switch k.S {
		case "(", "[", "{":
			if len(stack) > MaxDepth {
				return nil, nil, true
			}
			stack = append(stack, level{open: k})
		case ")", "]", "}":
			if len(stack) < 2 || shuts[top().open.S] != k.S && slices.ContainsFunc(stack[1:], func(l level) bool { return shuts[l.open.S] == k.S }) {
				loose = append(loose, stray(t, i, len(stack) > 1)...)
				continue
			} // (3 ch, 1 tr] is closed by the wrong sign
			g := top().open
			g.Kind, g.Sub, g.End = 'g', top().list, k.End
			stack = stack[:len(stack)-1]
			top().list = append(top().list, g)
		default:
			top().list = append(top().list, k)
		}
	}
	for len(stack) > 1 { // what never closes is as if it were not open
		l := *top()
		stack = stack[:len(stack)-1]
		if len(stack) == 1 && len(l.list) > 0 && countOf(l.list) { // (34 at the end of a row
			g := l.open
			g.Kind, g.Sub, g.End = 'g', l.list, l.list[len(l.list)-1].End
			top().list = append(top().list, g)
			continue
		}
		loose = append(loose, l.open)
		top().list = append(top().list, l.list...)
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
