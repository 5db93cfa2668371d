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
	Takes  bool   // it takes stitches out of work, or divides the row
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
	for _, s := range q.Sections {
		t := s.traits()
		if t.Takes && q.From == FromHem && best != nil {
			break
		}
		if n := rows(s); n > most && (t.Plain || t.Slopes && q.Kind == KindSleeve) {
			best, most = s, n
		}
	}
	return best
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

func (s *CastOn) traits() Traits { return Traits{Words: "cast on", Starts: true} }

func (s *CastOn) with(f number) Section {
	c := *s
	c.Stitches, c.Chain = f(s.Stitches), f(s.Chain)
	return &c
}

func (s *CastOn) firstEdge() string { return s.Edge }

func (s *Held) traits() Traits { return Traits{Words: "start", Starts: true} }

func (s *Held) with(f number) Section {
	c := *s
	c.From = slices.Clone(s.From)
	for i := range c.From {
		c.From[i].Stitches, c.From[i].Added = f(c.From[i].Stitches), f(c.From[i].Added)
	}
	return &c
}

func (s *Held) firstEdge() string { return s.Edge }

func (s *Held) named() []GivenName {
	var out []GivenName
	for _, h := range s.From {
		if h.Panel != "" {
			out = append(out, GivenName{Name: h.Panel, Panel: true})
		}
	}
	return out
}

func (s *Held) startsFrom() []string {
	var out []string
	for _, h := range s.From {
		if h.Piece != "" {
			out = append(out, h.Piece)
		}
	}
	return out
}

func (s *Ring) traits() Traits { return Traits{Words: "ring", Starts: true} }

func (s *Ring) with(f number) Section {
	c := *s
	c.Stitches = f(s.Stitches)
	return &c
}

func (s *Sideways) traits() Traits { return Traits{Words: "band", Starts: true} }

func (s *Sideways) with(f number) Section {
	c := *s
	c.Stitches, c.Rows = f(s.Stitches), f(s.Rows)
	return &c
}

func (s *Sideways) firstEdge() string { return s.Edge }

func (s *Sideways) load(i int, _ func(Amount) int64) Load {
	return Load{Rows: int64(s.Rows.Int(i, 0))}
}

func (s *PickUp) traits() Traits { return Traits{Words: "pick up"} }

func (s *PickUp) with(f number) Section {
	c := *s
	c.Stitches = f(s.Stitches)
	return &c
}

func (s *Even) traits() Traits {
	if s.Rib {
		return Traits{Words: "rib", Free: true}
	}
	return Traits{Words: "even", Free: true, Plain: true}
}

func (s *Even) with(f number) Section {
	c := *s
	c.Amount = s.Amount.with(f)
	return &c
}

func (s *Even) load(_ int, rows func(Amount) int64) Load { return Load{Rows: rows(s.Amount)} }

func (s *Shape) traits() Traits {
	if slices.ContainsFunc(s.Shapings, func(h Shaping) bool { return h.Increase }) {
		return Traits{Words: "increase", Free: true, Slopes: true}
	}
	return Traits{Words: "decrease", Free: true, Slopes: true}
}

func (s *Shape) with(f number) Section {
	c := *s
	c.Amount = s.Amount.with(f)
	c.Shapings = slices.Clone(s.Shapings)
	for i := range c.Shapings {
		h := &c.Shapings[i]
		h.By, h.Every, h.Times = f(h.By), f(h.Every), f(h.Times)
		h.Then = slices.Clone(h.Then)
		for k := range h.Then {
			h.Then[k].Every, h.Then[k].Times = f(h.Then[k].Every), f(h.Then[k].Times)
		}
	}
	return &c
}

func (s *Shape) load(i int, rows func(Amount) int64) Load {
	l := Load{Rows: rows(s.Amount)}
	for _, h := range s.Shapings {
		most, times := int64(h.Offset), int64(0)
		for _, run := range append([]Spacing{{h.Every, h.Times}}, h.Then...) {
			n := int64(run.Times.Int(i, 0))
			most, times = most+n*int64(run.Every.Int(i, 1)), times+n
		}
		l.Rows = max(l.Rows, most)
		l.Taken = append(l.Taken, Taken{h.Pos, times * int64(h.By.Int(i, 0))})
		l.Changes += 5 + int(times)
	}
	return l
}

func (s *RepeatRow) traits() Traits { return Traits{Words: "repeat row"} }

func (s *RepeatRow) with(number) Section {
	c := *s
	return &c
}

func (s *RepeatRow) load(int, func(Amount) int64) Load { return Load{Rows: 1} }

func (s *AddEdge) traits() Traits { return Traits{Words: "add"} }

func (s *AddEdge) with(f number) Section {
	c := *s
	c.Stitches = f(s.Stitches)
	return &c
}

func (s *AddEdge) load(int, func(Amount) int64) Load { return Load{Rows: 1} }

func (s *BindOff) traits() Traits {
	switch {
	case s.Hold:
		return Traits{Words: "hold", Takes: true}
	case s.Leave:
		return Traits{Words: "leave", Takes: true}
	}
	return Traits{Words: "bind off", Takes: true}
}

func (s *BindOff) with(f number) Section {
	c := *s
	c.Stitches, c.Every, c.Times = f(s.Stitches), f(s.Every), f(s.Times)
	return &c
}

func (s *BindOff) load(i int, _ func(Amount) int64) Load {
	l := again(s.Pos, s.Stitches, s.Every, s.Times, i)
	l.Rows *= 2 // at both edges
	return l
}

func (s *BindOff) named() []GivenName {
	if !s.Hold || s.Name == "" {
		return nil
	}
	return []GivenName{{Name: s.Name, Live: true}}
}

func (s *Divide) traits() Traits { return Traits{Words: "divide", Takes: true} }

func (s *Divide) with(f number) Section {
	c := *s
	c.Parts = slices.Clone(s.Parts)
	for i := range c.Parts {
		c.Parts[i].Stitches = f(c.Parts[i].Stitches)
		c.Parts[i].Sections = Map(c.Parts[i].Sections, f)
	}
	return &c
}

func (s *Divide) parts() []*Part {
	out := make([]*Part, len(s.Parts))
	for i := range s.Parts {
		out[i] = &s.Parts[i]
	}
	return out
}

func (s *Divide) named() []GivenName {
	var out []GivenName
	for _, p := range s.Parts {
		if p.Name != "" {
			out = append(out, GivenName{Name: p.Name, Live: !p.Leave})
		}
	}
	return out
}

func (s *JoinParts) traits() Traits { return Traits{Words: "join parts"} }

func (s *JoinParts) with(f number) Section {
	c := *s
	c.Of = slices.Clone(s.Of)
	for i := range c.Of {
		c.Of[i].Added = f(c.Of[i].Added)
	}
	return &c
}

func (s *JoinParts) named() []GivenName {
	if s.Name == "" {
		return nil
	}
	return []GivenName{{Name: s.Name, Live: true}}
}

func (s *Panels) traits() Traits { return Traits{Words: "panels"} }

func (s *Panels) with(f number) Section {
	c := *s
	c.Of = slices.Clone(s.Of)
	for i := range c.Of {
		c.Of[i].Stitches = f(c.Of[i].Stitches)
	}
	return &c
}

func (s *Panels) load(int, func(Amount) int64) Load { return Load{Panels: len(s.Of)} }

func (s *Panels) named() []GivenName {
	var out []GivenName
	for _, p := range s.Of {
		out = append(out, GivenName{Name: p.Name, Panel: true})
	}
	return out
}

func (s *Mitre) traits() Traits { return Traits{Words: "mitre", Free: true} }

func (s *Mitre) with(f number) Section {
	c := *s
	c.By, c.Every, c.Times = f(s.By), f(s.Every), f(s.Times)
	return &c
}

func (s *Mitre) load(i int, _ func(Amount) int64) Load {
	return again(s.Pos, s.By, s.Every, s.Times, i)
}

// again is the load of so many stitches, every so many rows, so many times.
func again(pos finding.Pos, by, every, times expr.Graded, i int) Load {
	n := times.Int(i, 1)
	return Load{Rows: int64(n) * int64(every.Int(i, 1)), Taken: []Taken{{pos, int64(n) * int64(by.Int(i, 0))}}, Changes: n}
}

func (s *ShortRows) traits() Traits { return Traits{Words: "short rows", Free: true} }

func (s *ShortRows) with(f number) Section {
	c := *s
	c.Over, c.Rows, c.Step = f(s.Over), f(s.Rows), f(s.Step)
	return &c
}

func (s *ShortRows) load(i int, _ func(Amount) int64) Load {
	n := s.Rows.Int(i, 0)
	return Load{Rows: int64(n), Changes: 4 * n} // each turn is an edge of its own
}

func (s *Mark) traits() Traits { return Traits{Words: "mark"} }

func (s *Mark) with(f number) Section {
	c := *s
	c.Count, c.Inset, c.Stitch, c.First, c.Apart = f(s.Count), f(s.Inset), f(s.Stitch), f(s.First), f(s.Apart)
	return &c
}

func (s *Mark) load(i int, _ func(Amount) int64) Load { return Load{Marks: s.Count.Int(i, 1)} }

func (s *Fold) traits() Traits { return Traits{Words: "fold"} }

func (s *Fold) with(number) Section {
	c := *s
	return &c
}

func (s *Gather) traits() Traits { return Traits{Words: "gather"} }

func (s *Gather) with(number) Section {
	c := *s
	return &c
}
