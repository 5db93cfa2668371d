package schematic

import (
	"slices"

	"flatwright/schematic/expr"
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

func (s *Held) traits() Traits { return Traits{Words: "start", Starts: true} }

func (s *Held) with(f number) Section {
	c := *s
	c.From = slices.Clone(s.From)
	for i := range c.From {
		c.From[i].Stitches, c.From[i].Added = f(c.From[i].Stitches), f(c.From[i].Added)
	}
	return &c
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

func (s *RepeatRow) traits() Traits { return Traits{Words: "repeat row"} }

func (s *RepeatRow) with(number) Section {
	c := *s
	return &c
}

func (s *AddEdge) traits() Traits { return Traits{Words: "add"} }

func (s *AddEdge) with(f number) Section {
	c := *s
	c.Stitches = f(s.Stitches)
	return &c
}

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

func (s *JoinParts) traits() Traits { return Traits{Words: "join parts"} }

func (s *JoinParts) with(f number) Section {
	c := *s
	c.Of = slices.Clone(s.Of)
	for i := range c.Of {
		c.Of[i].Added = f(c.Of[i].Added)
	}
	return &c
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

func (s *Mitre) traits() Traits { return Traits{Words: "mitre", Free: true} }

func (s *Mitre) with(f number) Section {
	c := *s
	c.By, c.Every, c.Times = f(s.By), f(s.Every), f(s.Times)
	return &c
}

func (s *ShortRows) traits() Traits { return Traits{Words: "short rows", Free: true} }

func (s *ShortRows) with(f number) Section {
	c := *s
	c.Over, c.Rows, c.Step = f(s.Over), f(s.Rows), f(s.Step)
	return &c
}

func (s *Mark) traits() Traits { return Traits{Words: "mark"} }

func (s *Mark) with(f number) Section {
	c := *s
	c.Count, c.Inset, c.Stitch, c.First, c.Apart = f(s.Count), f(s.Inset), f(s.Stitch), f(s.First), f(s.Apart)
	return &c
}

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
