package schematic

import (
	"reflect"
	"slices"

	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Traits are what a section is and what its row says, as plain data: all that the rest of the program asks of it.
type Traits struct {
	Words  string // what it does, in a word or two
	Starts bool   // it begins a piece
	Free   bool   // an alteration may give it another number of rows
	Plain  bool   // rows worked even that are no rib
	Ribbed bool   // rows worked even in rib
	Slopes bool   // rows with shaping
	Across bool   // of the shaping: all of it across the row, whose sides are row ends
	Takes  bool   // it takes stitches out of work, or divides the row
	Adds   bool   // it adds stitches at an edge, such as those of a sleeve

	Edge        string      // the edge with which it begins a piece
	Cast, Chain expr.Graded // stitches with which it begins, and the foundation chains for them
	Ring        bool        // round a centre
	Band, Depth expr.Graded // rows that run along an edge, over so many stitches: a band worked sideways
	From        []HeldPart  // the stitches with which it begins
	Rates       []Rate      // at which stitches are picked up along the rows of such a band
	Parts       []*Part     // into which it divides the row
	Joins       []JoinPart  // which it makes one row
	Closes      bool        // the row becomes a round
	As          string      // how stitches are called from there on
	Panels      []Panel     // into which it cuts the row
	Shapings    []Shaping   // stitches that it adds or takes out, where and how often
	All         bool        // it takes all stitches out of work
	Leaves      bool        // what it takes is left unworked
	Holds       bool        // what it takes is on hold
	Use, Makes  int         // the repeat of its row: of so many stitches so many
	RestEven    bool        // stitches that do not fill a repeat are worked even
	Short       *ShortRows  // rows over part of the stitches
	Marks       *Mark       // what is marked in it
	Fewer, More int         // rows that a text may count fewer or more: the row that begins it is counted or not
}

// Rejoins reports whether parts are made one row; otherwise a row is joined to itself.
func (t Traits) Rejoins() bool {
	return slices.ContainsFunc(t.Joins, func(j JoinPart) bool { return j.Part != "" })
}

// TakesAtBoth reports whether stitches are taken out at both edges.
func (t Traits) TakesAtBoth() bool {
	return t.Takes && slices.ContainsFunc(t.Shapings, func(h Shaping) bool { return h.At == BothEdges })
}

// Rate is so many stitches in every so many rows, of those that are short or tall if they are not alike.
type Rate struct {
	Pick, Of int
	Rows     string
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

// GivenName is stitches or a panel that a section gives a name, by which joins, measurements and other pieces call them.
type GivenName struct {
	Name  string
	Panel bool
	Live  bool // stitches go on from there
}

// NamesIn are the names that a section gives; those in its parts are not among them.
func NamesIn(s Section) []GivenName {
	var out []GivenName
	give := func(name string, g GivenName) {
		if g.Name = name; name != "" {
			out = append(out, g)
		}
	}
	t := s.Traits()
	give(t.As, GivenName{Live: true})
	for _, p := range t.Parts {
		give(p.Name, GivenName{Live: !p.Leave})
	}
	for _, p := range t.Panels {
		give(p.Name, GivenName{Panel: true})
	}
	for _, h := range t.From {
		give(h.Panel, GivenName{Panel: true})
	}
	return out
}

// What most kinds of section make: nothing.
func (c *Common) load(int, func(Amount) int64) Load { return Load{} }

// Longest is the section in which a piece is made longer or shorter where that is simplest: its longest stretch
// worked even outside armholes and rib or, in a sleeve, its slope. Nil if there is none.
func Longest(q *Piece, rows func(Section) int) Section {
	var best Section
	most := 0
	for _, s := range Stretches(q) {
		if n := rows(s); n > most && (s.Traits().Plain || q.Kind == KindSleeve) {
			best, most = s, n
		}
	}
	return best
}

// Stretches are the sections in which a piece can be made longer or shorter: rows worked even or with shaping outside armholes and rib.
func Stretches(q *Piece) []Section {
	var out []Section
	for _, s := range q.Sections {
		t, b := s.Traits(), s.Base()
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
		t := s.Traits()
		ok = ok && (t.Plain || t.Ribbed || t.Marks != nil || t.Shapings != nil)
		for _, h := range t.Shapings {
			if !t.All {
				at = append(at, h.At)
			}
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
	return s.Traits().Words
}

// Map is a copy of a list of sections with every number in them put through f.
func Map(list []Section, f func(expr.Graded) expr.Graded) []Section {
	if list == nil {
		return nil
	}
	out := make([]Section, len(list))
	for i, s := range list {
		out[i] = with(s, f)
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

// with is a copy of a section with every number that its kind declares put through f, but for the count that it states.
func with(s Section, f number) Section {
	c := reflect.New(reflect.TypeOf(s).Elem())
	c.Elem().Set(reflect.ValueOf(s).Elem())
	through(c.Elem(), f)
	return c.Interface().(Section)
}

// through puts the numbers in a value through f, those of lists in a copy of the list.
func through(v reflect.Value, f number) {
	switch v.Type() {
	case reflect.TypeFor[expr.Graded]():
		at := v.Addr().Interface().(*expr.Graded)
		*at = f(*at)
		return
	case reflect.TypeFor[[]Section]():
		at := v.Addr().Interface().(*[]Section)
		*at = Map(*at, f)
		return
	case reflect.TypeFor[Common](), reflect.TypeFor[finding.Pos](), reflect.TypeFor[units.Num]():
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			through(v.Field(i), f)
		}
	case reflect.Slice:
		was := v.Slice(0, v.Len())
		v.Set(reflect.AppendSlice(reflect.Zero(v.Type()), was))
		for i := range v.Len() {
			through(v.Index(i), f)
		}
	}
}

// again is the load of so many stitches, every so many rows, so many times.
func again(pos finding.Pos, by, every, times expr.Graded, i int) Load {
	n := times.Int(i, 1)
	return Load{Rows: int64(n) * int64(every.Int(i, 1)), Taken: []Taken{{pos, int64(n) * int64(by.Int(i, 0))}}, Changes: n}
}
