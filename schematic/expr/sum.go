package expr

import (
	"fmt"
	"strings"

	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Dim is what a value counts. Values of unlike kind can't be added.
type Dim int

// The dimensions.
const (
	Plain    Dim = iota // a number without a unit
	LengthOf            // mm
	Stitches
	Rows
)

// String is the dimension in words.
func (d Dim) String() string {
	return [...]string{"a plain number", "a length", "a number of stitches", "a number of rows"}[d]
}

// Value is a number with its dimension; a length is in mm. Has is false where
// the size has none.
type Value struct {
	N   units.Num
	Dim Dim
	Has bool
}

// Env gives the value of a name, or says that there is none of that name.
type Env func(name string) (Value, bool)

// Op is what a node of a sum does.
type Op int

// The operations.
const (
	Number Op = iota // N and Dim
	Name             // Name
	Add
	Subtract
	Multiply
	Divide
	Negate // of Left
)

// Node is one node of a sum. Span is what it spans in the text, At its sign.
type Node struct {
	Op          Op
	N           units.Num
	Dim         Dim
	Name        string
	Left, Right *Node
	Span, At    Span
}

// Sum is arithmetic with the names of measurements, units and whole numbers of
// stitches and rows, as people write it: bust + 15 cm, half of Back bust,
// 2 x (Back bust + 3 sts). Names may have several words; x, × and * multiply, / and
// ÷ divide, a minus has a space on both sides, so that cross-back is a name.
type Sum struct {
	Text string
	Root *Node
}

// mostNodes bounds a sum: no pattern needs more, and deep ones can't run away.
const (
	mostNodes = 200
	mostDeep  = 32
)

type parser struct {
	t     []rune
	i     int
	nodes int
	deep  int
}

// ParseSum reads a sum.
func ParseSum(text string) (*Sum, *Problem) {
	p := &parser{t: []rune(text)}
	root, bad := p.sum()
	if bad != nil {
		return nil, bad
	}
	if p.space(); p.i < len(p.t) {
		return nil, p.unexpected()
	}
	return &Sum{Text: text, Root: root}, nil
}

func (p *parser) space() { p.i = skipSpace(p.t, p.i) }

func (p *parser) unexpected() *Problem {
	if p.i >= len(p.t) {
		return &Problem{Kind: "file/sum", Span: Span{max(0, len(p.t)-1), len(p.t)}, Message: "the sum ends where a number or a name is missing",
			Want: "a sum such as bust + 15 cm or 2 x Back bust"}
	}
	end := max(p.i+1, wordEnd(p.t, p.i))
	word := string(p.t[p.i:end])
	pr := &Problem{Kind: "file/sum", Span: Span{p.i, end}, Message: fmt.Sprintf("%q can't stand here in a sum", finding.Clip(word)),
		Want: "+, −, x or / between two values"}
	if isNameStart(p.t[p.i]) || isDigit(p.t[p.i]) {
		pr.Fix = "put +, −, x or / before it"
	}
	return pr
}

func (p *parser) node(n Node) (*Node, *Problem) {
	if p.nodes++; p.nodes > mostNodes {
		return nil, &Problem{Kind: "file/sum", Span: n.Span, Message: "this sum is too long", Want: fmt.Sprintf("at most %d numbers, names and signs", mostNodes)}
	}
	return &n, nil
}

// sign reads one of the operators at the place, with its width.
func (p *parser) sign(set string) (rune, Span) {
	p.space()
	if p.i >= len(p.t) {
		return 0, Span{}
	}
	r := p.t[p.i]
	at := Span{p.i, p.i + 1}
	switch {
	case r == '+':
	case r == '−', (r == '-' || r == '–') && p.i > 0 && (isSpace(p.t[p.i-1]) || p.t[p.i-1] == ')'):
		r = '-'
	case r == '*' || r == '×' || (r == 'x' || r == 'X') && p.alone():
		r = '*'
	case r == '/' || r == '÷':
		r = '/'
	default:
		return 0, at
	}
	if !strings.ContainsRune(set, r) {
		return 0, at
	}
	p.i++
	return r, at
}

// alone reports whether the x here is a sign and not the beginning of a name.
func (p *parser) alone() bool {
	return p.i+1 >= len(p.t) || !isNameRune(p.t[p.i+1]) || isDigit(p.t[p.i+1])
}

func (p *parser) chain(next func() (*Node, *Problem), signs string, ops map[rune]Op) (*Node, *Problem) {
	left, bad := next()
	for bad == nil {
		r, at := p.sign(signs)
		if r == 0 {
			return left, nil
		}
		var right *Node
		if right, bad = next(); bad == nil {
			left, bad = p.node(Node{Op: ops[r], Left: left, Right: right, Span: Span{left.Span.Start, right.Span.End}, At: at})
		}
	}
	return nil, bad
}

var (
	adding      = map[rune]Op{'+': Add, '-': Subtract}
	multiplying = map[rune]Op{'*': Multiply, '/': Divide}
)

func (p *parser) sum() (*Node, *Problem) {
	if p.deep++; p.deep > mostDeep {
		return nil, &Problem{Kind: "file/sum", Span: Span{p.i, min(p.i+1, len(p.t))}, Message: "brackets are nested too deeply"}
	}
	defer func() { p.deep-- }()
	return p.chain(p.product, "+-", adding)
}

func (p *parser) product() (*Node, *Problem) { return p.chain(p.factor, "*/", multiplying) }

var shares = map[string]units.Num{
	"half": units.Frac(1, 2), "a half": units.Frac(1, 2), "a third": units.Frac(1, 3), "a quarter": units.Frac(1, 4),
	"third": units.Frac(1, 3), "quarter": units.Frac(1, 4), "twice": units.Int(2), "double": units.Int(2),
}

func (p *parser) factor() (*Node, *Problem) {
	p.space()
	if p.i >= len(p.t) {
		return nil, p.unexpected()
	}
	start := p.i
	r := p.t[p.i]
	switch {
	case r == '(':
		p.i++
		n, bad := p.sum()
		if bad != nil {
			return nil, bad
		}
		if p.space(); p.i >= len(p.t) || p.t[p.i] != ')' {
			return nil, &Problem{Kind: "file/sum", Span: Span{start, start + 1}, Message: "this bracket is never closed", Fix: "add )"}
		}
		p.i++
		n.Span = Span{start, p.i}
		return n, nil
	case r == '-' || r == '−' || r == '–':
		if p.deep++; p.deep > mostDeep {
			return nil, p.unexpected()
		}
		defer func() { p.deep-- }()
		p.i++
		n, bad := p.factor()
		if bad != nil {
			return nil, bad
		}
		return p.node(Node{Op: Negate, Left: n, Span: Span{start, n.Span.End}, At: Span{start, start + 1}})
	case isDigit(r) || isVulgar(r) || r == '.':
		return p.number()
	case isNameStart(r):
		return p.name()
	}
	return nil, p.unexpected()
}

// number reads a number and its unit; 1/2 of X is a number times X.
func (p *parser) number() (*Node, *Problem) {
	start := p.i
	v, end, ok := number(p.t, p.i)
	if !ok {
		return nil, notNumber(p.t, start, wordEnd(p.t, start))
	}
	p.i = end
	n := Node{Op: Number, N: v, Span: Span{start, end}}
	at := skipSpace(p.t, end)
	after := at
	for after < len(p.t) && (isNameRune(p.t[after]) && !isDigit(p.t[after]) || strings.ContainsRune("\"″”", p.t[after])) {
		after++
	}
	word := string(p.t[at:after])
	if strings.EqualFold(word, "of") {
		p.i = after
		return p.share(v, n.Span)
	}
	switch u, unit := ParseUnit(word); {
	case word == "":
	case unit:
		n.N, n.Dim, n.Span.End, p.i = units.Of(v, u), LengthOf, after, after
	case isStitches(word):
		n.Dim, n.Span.End, p.i = Stitches, after, after
	case isRows(word):
		n.Dim, n.Span.End, p.i = Rows, after, after
	}
	return p.node(n)
}

func (p *parser) share(v units.Num, span Span) (*Node, *Problem) {
	if p.deep++; p.deep > mostDeep {
		return nil, p.unexpected()
	}
	defer func() { p.deep-- }()
	of, bad := p.factor()
	if bad != nil {
		return nil, bad
	}
	left, bad := p.node(Node{Op: Number, N: v, Span: span})
	if bad != nil {
		return nil, bad
	}
	return p.node(Node{Op: Multiply, Left: left, Right: of, Span: Span{span.Start, of.Span.End}, At: span})
}

// name reads the words of a name up to the next sign or bracket.
func (p *parser) name() (*Node, *Problem) {
	start, end := p.i, p.i
	for p.i < len(p.t) {
		if r, _ := p.peek(); r != 0 && p.i > start {
			break
		}
		w := p.i
		for w < len(p.t) && isNameRune(p.t[w]) {
			w++
		}
		if w == p.i {
			break
		}
		if part, after := p.shareAt(start, w); after > 0 {
			p.i = after
			return p.share(part, Span{start, w})
		}
		end = w
		p.i = skipSpace(p.t, w)
	}
	p.i = end
	name := strings.Join(strings.Fields(string(p.t[start:end])), " ")
	return p.node(Node{Op: Name, Name: name, Span: Span{start, end}})
}

// shareAt is the share that the words from start to end stand for, half of or twice, and where what it
// is a share of begins; 0 if they are no such words.
func (p *parser) shareAt(start, end int) (units.Num, int) {
	word := strings.ToLower(string(p.t[start:end]))
	part, ok := shares[word]
	if !ok {
		return part, 0
	}
	next := skipSpace(p.t, end)
	of := next+2 <= len(p.t) && strings.EqualFold(string(p.t[next:next+2]), "of") && (next+2 == len(p.t) || !isNameRune(p.t[next+2]))
	switch {
	case of:
		return part, next + 2
	case word == "twice" || word == "double":
		return part, next
	}
	return part, 0
}

func (p *parser) peek() (rune, Span) {
	i := p.i
	r, at := p.sign("+-*/")
	p.i = i
	return r, at
}

func isNameStart(r rune) bool {
	return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r > 0xbf && !strings.ContainsRune("×÷−–—″”“⁄‘", r) && !isVulgar(r)
}

func isNameRune(r rune) bool {
	return isNameStart(r) || isDigit(r) || r == '-' || r == '\'' || r == '.' || r == '&'
}

func isStitches(w string) bool {
	switch strings.ToLower(strings.TrimSuffix(w, ".")) {
	case "st", "sts", "stitch", "stitches":
		return true
	}
	return false
}

func isRows(w string) bool {
	switch strings.ToLower(strings.TrimSuffix(w, ".")) {
	case "row", "rows", "rnd", "rnds", "round", "rounds":
		return true
	}
	return false
}
