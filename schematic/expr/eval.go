package expr

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Names are the names in the sum, each once, in the order in which they stand.
func (s *Sum) Names() []string {
	var out []string
	var walk func(*Node)
	walk = func(n *Node) {
		if n == nil {
			return
		}
		if n.Op == Name && !slices.Contains(out, n.Name) {
			out = append(out, n.Name)
		}
		walk(n.Left)
		walk(n.Right)
	}
	walk(s.Root)
	return out
}

// Eval works the sum out. A value that the size does not have makes the whole
// sum one that it does not have. It gives a Problem for a name that env does not
// know, for values that can't go together and for a division by 0.
func (s *Sum) Eval(env Env) (Value, *Problem) { return s.eval(s.Root, env) }

func (s *Sum) eval(n *Node, env Env) (Value, *Problem) {
	switch n.Op {
	case Number:
		return Value{n.N, n.Dim, true}, nil
	case Name:
		v, ok := env(n.Name)
		if !ok {
			return v, &Problem{Kind: "file/reference", Span: n.Span, Message: fmt.Sprintf("nothing is called %q", finding.Clip(n.Name)),
				Want: "the name of a measurement"}
		}
		return v, nil
	}
	a, bad := s.eval(n.Left, env)
	if bad != nil {
		return a, bad
	}
	if n.Op == Negate {
		a.N = a.N.Neg()
		return a, nil
	}
	b, bad := s.eval(n.Right, env)
	if bad != nil {
		return b, bad
	}
	has := a.Has && b.Has
	switch n.Op {
	case Add, Subtract:
		if a.Dim != b.Dim {
			return a, s.unlike(n, a.Dim, b.Dim)
		}
		if n.Op == Subtract {
			b.N = b.N.Neg()
		}
		return Value{a.N.Add(b.N), a.Dim, has}, nil
	case Multiply:
		if a.Dim != Plain && b.Dim != Plain {
			return a, &Problem{Kind: "file/sum", Span: n.Span, Message: fmt.Sprintf("%s times %s has no meaning", a.Dim, b.Dim),
				Want: "a plain number on one side of x"}
		}
		return Value{a.N.Mul(b.N), a.Dim + b.Dim, has}, nil
	}
	dim := a.Dim
	switch {
	case b.Dim == a.Dim:
		dim = Plain
	case b.Dim != Plain:
		return a, &Problem{Kind: "file/sum", Span: n.Span, Message: fmt.Sprintf("%s divided by %s has no meaning here", a.Dim, b.Dim),
			Want: "a plain number behind /, or two values of one kind"}
	}
	if has && b.N.Sign() == 0 {
		return a, &Problem{Kind: "file/sum", Span: n.Right.Span, Message: fmt.Sprintf("%q is 0: nothing can be divided by it", s.words(n.Right))}
	}
	if !has {
		return Value{units.Num{}, dim, false}, nil
	}
	return Value{a.N.Div(b.N), dim, true}, nil
}

func (s *Sum) words(n *Node) string {
	return finding.Clip(string([]rune(s.Text)[n.Span.Start:n.Span.End]))
}

func (s *Sum) unlike(n *Node, a, b Dim) *Problem {
	sign := "added to"
	if n.Op == Subtract {
		sign = "taken from"
	}
	first, second := n.Left, n.Right
	if n.Op == Subtract {
		first, second, a, b = second, first, b, a
	}
	p := &Problem{Kind: "file/sum", Span: n.Span,
		Message: fmt.Sprintf("%q is %s and can't be %s %q, which is %s", s.words(first), a, sign, s.words(second), b),
		Want:    "values of one kind on both sides of + and −"}
	if a == Plain || b == Plain {
		p.Fix = "write the unit behind the number, such as 15 cm"
	}
	return p
}

// Order is an order in which sums that name each other can be worked out: each
// one after those that it names. Names that are no sums are given. A circle is a Problem
// that names its members; its Span is of the name that closes it, in the sum
// called by the string returned. Names are the same whatever their case.
func Order(sums map[string]*Sum) ([]string, string, *Problem) {
	names := make([]string, 0, len(sums))
	key := map[string]string{}
	for n := range sums {
		names = append(names, n)
		key[strings.ToLower(n)] = n
	}
	slices.Sort(names)
	var out, path []string
	state := map[string]int{} // 1: on the path, 2: done
	var visit func(string) (string, *Problem)
	visit = func(n string) (string, *Problem) {
		state[n] = 1
		path = append(path, n)
		for _, m := range sums[n].Names() {
			k, ok := key[strings.ToLower(m)]
			if !ok {
				continue
			}
			switch state[k] {
			case 0:
				if at, bad := visit(k); bad != nil {
					return at, bad
				}
			case 1:
				circle := append(slices.Clone(path[slices.Index(path, k):]), k)
				return n, &Problem{Kind: "file/cycle", Span: sums[n].spanOf(m),
					Message: "these sums need each other in a circle: " + strings.Join(circle, " → "),
					Fix:     "give one of them a number of its own"}
			}
		}
		state[n] = 2
		path = path[:len(path)-1]
		out = append(out, n)
		return "", nil
	}
	for _, n := range names {
		if state[n] == 0 {
			if at, bad := visit(n); bad != nil {
				return nil, at, bad
			}
		}
	}
	return out, "", nil
}

func (s *Sum) spanOf(name string) Span {
	var find func(*Node) (Span, bool)
	find = func(n *Node) (Span, bool) {
		if n == nil {
			return Span{}, false
		}
		if n.Op == Name && n.Name == name {
			return n.Span, true
		}
		if sp, ok := find(n.Left); ok {
			return sp, true
		}
		return find(n.Right)
	}
	sp, _ := find(s.Root)
	return sp
}
