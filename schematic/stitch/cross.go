package stitch

import (
	"fmt"
	"strings"
)

// Cross is a crossing of a cable: Held stitches go onto a cable needle and Over stitches are
// worked before them. Left: the held ones wait in front and end at the left, so that what
// lies in front leans to the left; otherwise they wait behind, and what lies in front leans
// to the right. Purl: those that lie behind are purled. Twisted: the ones in front are
// worked through the back loop. Mid stitches stay between the two, behind those in front; purled if Purl: then the others are knitted.
type Cross struct {
	Held, Over    int
	Left          bool
	Purl, Twisted bool
	Mid           int
}

// Size is how many stitches it takes and leaves.
func (c Cross) Size() int { return c.Held + c.Mid + c.Over }

// Front is how many stitches lie in front, and Back how many behind.
func (c Cross) Front() int {
	if c.Left {
		return c.Held
	}
	return c.Over
}

// Back is how many lie behind.
func (c Cross) Back() int { return c.Held + c.Over - c.Front() }

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
	case c.Front() == 1 && c.Back() == 1 && !c.Purl && c.Mid == 0:
		kind = "T"
	case c.Purl:
		kind = "PC"
	}
	mid := ""
	if c.Mid > 0 {
		mid = fmt.Sprintf("/%d", c.Mid)
	}
	return fmt.Sprintf("%d%s/%d %s%s", c.Front(), mid, c.Back(), strings.ToUpper(c.side()[:1]), kind)
}

// String is the crossing in words: 3 over 3 to the left, the ones behind purled.
func (c Cross) String() string {
	s := fmt.Sprintf("%d over %d to the %s", c.Front(), c.Back(), c.side())
	if c.Twisted {
		s += ", those in front through the back loop"
	}
	switch {
	case c.Mid > 0 && c.Purl:
		s += fmt.Sprintf(", %d between them purled", c.Mid)
	case c.Mid > 0:
		s += fmt.Sprintf(", %d between them knitted", c.Mid)
	case c.Purl:
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
	if c.Mid > 0 {
		mid := "k"
		if c.Purl {
			mid = "p"
		}
		if c.Left {
			return fmt.Sprintf("hold %d in front and %d behind, k%d, %s%d from behind, then k%d from the front", c.Held, c.Mid, c.Over, mid, c.Mid, c.Held)
		}
		return fmt.Sprintf("hold %d behind, k%d, %s the last %d of them, then k%d from the cable needle", c.Held+c.Mid, c.Over, mid, c.Mid, c.Held)
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
