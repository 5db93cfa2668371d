package schematic

import (
	"slices"

	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
)

// Traits say what kind of step a section is.
type Traits struct {
	Words  string // what it does, in a word or two
	Starts bool   // it begins a piece
	Free   bool   // an alteration may give it another number of rows
	Plain  bool   // rows worked even that are no rib
	Slopes bool   // rows with shaping
	Across bool   // of the shaping: all of it across the row, whose sides are row ends
	Takes  bool   // it takes stitches out of work, or divides the row
	Adds   bool   // it adds stitches at an edge, such as those of a sleeve
}

// Load is what a section makes in one size at most, its parts not counted: told from its numbers before
// anything is worked, so that no pattern runs away.
type Load struct {
	Rows    int64
	Taken   []Taken // the stitches that its shapings add or take out
	Changes int     // of its edges, one at a time
	Panels  int
	Marks   int
}

// Taken is the stitches that one shaping adds or takes out in all.
type Taken struct {
	Pos      finding.Pos
	Stitches int64
}

// LoadOf is the load of a section; rows says how many rows an amount is.
func LoadOf(s Section, size int, rows func(Amount) int64) Load { return s.load(size, rows) }

// PartsOf are the parts into which a section divides the row.
func PartsOf(s Section) []*Part { return s.parts() }

// GivenName is stitches or a panel that a section gives a name, by which joins, measurements and other pieces call them.
type GivenName struct {
	Name  string
	Panel bool
	Live  bool // stitches go on from there
}

// NamesIn are the names that a section gives; those in its parts are not among them.
func NamesIn(s Section) []GivenName { return s.named() }

// StartsFrom are the pieces whose stitches a section starts from.
func StartsFrom(s Section) []string { return s.startsFrom() }

// Starts reports whether a section begins a piece.
func Starts(s Section) bool { return s.traits().Starts }

// FirstEdge is the name of the edge with which a section begins a piece, or nothing.
func FirstEdge(s Section) string { return s.firstEdge() }

// What most kinds of section make, name and start from: nothing.
func (c *Common) load(int, func(Amount) int64) Load { return Load{} }
func (c *Common) parts() []*Part                    { return nil }
func (c *Common) named() []GivenName                { return nil }
func (c *Common) startsFrom() []string              { return nil }
func (c *Common) firstEdge() string                 { return "" }

// Longest is the section in which a piece is made longer or shorter where that is simplest: its longest stretch
// worked even outside armholes and rib or, in a sleeve, its slope. Nil if there is none.
func Longest(q *Piece, rows func(Section) int) Section {
	var best Section
	most := 0
	for _, s := range Stretches(q) {
		if n := rows(s); n > most && (s.traits().Plain || q.Kind == KindSleeve) {
			best, most = s, n
		}
	}
	return best
}

// Stretches are the sections in which a piece can be made longer or shorter: rows worked even or with shaping outside armholes and rib.
func Stretches(q *Piece) []Section {
	var out []Section
	for _, s := range q.Sections {
		t, b := s.traits(), s.Base()
		if q.From == FromHem && len(out) > 0 && (t.Takes || t.Adds || b.LeftEdge == "armhole" || b.RightEdge == "armhole") {
			break
		}
		if t.Plain || t.Slopes {
			out = append(out, s)
		}
	}
	return out
}

// SideToSide reports whether a piece is worked from side to side: its length lies in its stitches.
func SideToSide(q *Piece) bool { return q.From.sideways() }

// StitchesAlong is the section whose stitches make a piece worked from side to side longer or shorter: those that it begins with, as long as
// everything else lies along one of its long edges. Nil if there is none.
func StitchesAlong(q *Piece) Section {
	if !SideToSide(q) || len(q.Sections) == 0 {
		return nil
	}
	first, ok := q.Sections[0].(*CastOn)
	var at []Side
	for _, s := range q.Sections[1:] {
		switch s := s.(type) {
		case *Even, *Mark, *Fold:
		case *AddEdge:
			at = append(at, s.At)
		case *BindOff:
			if !s.All {
				at = append(at, s.At)
			}
		case *Shape:
			for _, h := range s.Shapings {
				at = append(at, h.At)
			}
		default:
			ok = false
		}
	}
	slices.Sort(at)
	at = slices.Compact(at)
	if !ok || len(at) > 1 || len(at) == 1 && at[0] != LeftEdge && at[0] != RightEdge {
		return nil
	}
	return first
}

// Words is what a section does, in a word or two: its name, if it has one.
func Words(s Section) string {
	if n := s.Base().Name; n != "" {
		return n
	}
	return s.traits().Words
}

// Map is a copy of a list of sections with every number in them put through f.
func Map(list []Section, f func(expr.Graded) expr.Graded) []Section {
	if list == nil {
		return nil
	}
	out := make([]Section, len(list))
	for i, s := range list {
		out[i] = s.with(f)
		b := out[i].Base()
		b.To = f(b.To)
	}
	return out
}

// With is the piece with every number that is graded put through f.
func (q *Piece) With(f func(expr.Graded) expr.Graded) *Piece {
	c := *q
	c.Make = f(q.Make)
	if q.Motifs != nil {
		m := *q.Motifs
		m.Across, m.Joining, m.Columns, m.Rows, m.Side = f(m.Across), f(m.Joining), f(m.Columns), f(m.Rows), f(m.Side)
		c.Motifs = &m
	}
	c.Sections = Map(q.Sections, f)
	return &c
}

// number is what the numbers of a section are put through.
type number = func(expr.Graded) expr.Graded

func (a Amount) with(f number) Amount {
	a.Rows, a.Length = f(a.Rows), f(a.Length)
	return a
}

// again is the load of so many stitches, every so many rows, so many times.
func again(pos finding.Pos, by, every, times expr.Graded, i int) Load {
	n := times.Int(i, 1)
	return Load{Rows: int64(n) * int64(every.Int(i, 1)), Taken: []Taken{{pos, int64(n) * int64(by.Int(i, 0))}}, Changes: n}
}
