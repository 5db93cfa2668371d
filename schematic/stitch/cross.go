package stitch

import (
	"fmt"
	"strings"
)

// Cross is a crossing of a cable: Held stitches go onto a cable needle and Over stitches are
// worked before them. Left: the held ones wait in front and end at the left, so that what
// lies in front leans to the left; otherwise they wait behind, and what lies in front leans
// to the right. Purl: those that lie behind are purled. Twisted: the ones in front are
// worked through the back loop.
type Cross struct {
	Held, Over    int
	Left          bool
	Purl, Twisted bool
}

// Size is how many stitches it takes and leaves.
func (c Cross) Size() int { return c.Held + c.Over }

// Front is how many stitches lie in front, and Back how many behind.
func (c Cross) Front() int {
	if c.Left {
		return c.Held
	}
	return c.Over
}

// Back is how many lie behind.
func (c Cross) Back() int { return c.Size() - c.Front() }

// side is the word for the direction.
func (c Cross) side() string {
	if c.Left {
		return "left"
	}
	return "right"
}

// Abbr is so many over so many, left or right, cross or purl cross, as the trade's lists
// abbreviate it (from memory): 3/3 LC, 2/1 RPC; one over one is a twist, 1/1 LT.
func (c Cross) Abbr() string {
	kind := "C"
	switch {
	case c.Front() == 1 && c.Back() == 1 && !c.Purl:
		kind = "T"
	case c.Purl:
		kind = "PC"
	}
	return fmt.Sprintf("%d/%d %s%s", c.Front(), c.Back(), strings.ToUpper(c.side()[:1]), kind)
}

// String is the crossing in words: 3 over 3 to the left, the ones behind purled.
func (c Cross) String() string {
	s := fmt.Sprintf("%d over %d to the %s", c.Front(), c.Back(), c.side())
	if c.Twisted {
		s += ", those in front through the back loop"
	}
	if c.Purl {
		s += ", those behind purled"
	}
	return s
}

// Work is how it is worked: hold 3 in front, k3, k3 from the cable needle.
func (c Cross) Work() string {
	where, first, held := "behind", "k", "k"
	if c.Left {
		where = "in front"
	}
	if c.Purl && c.Left {
		first = "p"
	} else if c.Purl {
		held = "p"
	}
	loop := [2]string{}
	if c.Twisted && c.Left {
		loop[1] = " tbl"
	} else if c.Twisted {
		loop[0] = " tbl"
	}
	return fmt.Sprintf("hold %d %s, %s%d%s, then %s%d%s from the cable needle", c.Held, where, first, c.Over, loop[0], held, c.Held, loop[1])
}

// NamedCross is the symbol of a crossing that is known by its name alone: how it is worked is not said.
const NamedCross = "named cross"

// Stitch is the crossing as one kind of stitch, which takes and leaves its stitches.
func (c Cross) Stitch() *Stitch {
	name := "cable " + c.String()
	return &Stitch{ID: "cross " + c.Abbr() + fmt.Sprint(c.Twisted), US: name, UK: name, USAbbr: c.Abbr(), UKAbbr: c.Abbr(), Craft: Knitting,
		Uses: c.Size(), Makes: c.Size(), Height: 1, Base: "k", Legs: 1, Key: "cross", Cross: &c}
}
