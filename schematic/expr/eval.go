package expr

import (
	"fmt"
	"slices"

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

// Len is how many numbers, names and signs the sum has.
func (s *Sum) Len() int {
	var count func(*Node) int
	count = func(n *Node) int {
		if n == nil {
			return 0
		}
		return 1 + count(n.Left) + count(n.Right)
	}
	return count(s.Root)
}

// WithRows is the sum with its numbers of rows replaced; the same sum if it has none.
func (s *Sum) WithRows(f func(units.Num) units.Num) *Sum {
	var walk func(*Node) *Node
	walk = func(n *Node) *Node {
		if n == nil {
			return nil
		}
		c := *n
		if c.Left, c.Right = walk(n.Left), walk(n.Right); n.Op == Number && n.Dim == Rows {
			c.N = f(n.N)
		} else if c.Left == n.Left && c.Right == n.Right {
			return n
		}
		return &c
	}
	if root := walk(s.Root); root != s.Root {
		return &Sum{s.Text, root}
	}
	return s
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
			Want: "a plain number after /, or two values of one kind"}
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
		p.Fix = "write the unit after the number, such as 15 cm"
	}
	return p
}
