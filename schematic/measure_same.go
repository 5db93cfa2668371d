package schematic

import (
	"strings"

	"flatwright/schematic/units"
)

// hides reports whether another measurement of the view says what s says, between the same
// ends, and goes before it. Two that the pattern names both stay, and so do two that stand at
// different heights of the piece, unless one is a width that goes on to the other.
func (m *Made) hides(s *Measure) bool {
	if s.given {
		return false
	}
	after := false
	for i := range m.Measures {
		o := &m.Measures[i]
		if o == s {
			after = true
			continue
		}
		if m.says(o, s) && (o.given || o.rank < s.rank || o.rank == s.rank && !after) {
			return true
		}
	}
	return false
}

// says reports whether o, which is shown, says what s says between the same ends.
func (m *Made) says(o, s *Measure) bool {
	switch {
	case o.View != s.View || o.Axis != s.Axis || !o.Main || !o.Length.Eq(s.Length) || o.Around != s.Around:
	case s.Axis == Vertical && o.A.Y == s.A.Y && o.B.Y == s.B.Y:
		return o.rank == rankWhole || s.rank >= rankLevel || o.A.X == s.A.X
	case s.Axis == Horizontal && o.A.X == s.A.X && o.B.X == s.B.X:
		return o.rank == rankWhole || s.rank == rankNamed || o.A.Y == s.A.Y || m.lastsTo(s, o) || m.lastsTo(o, s)
	}
	return false
}

// lastsTo reports whether the width a goes on to the place of b.
func (m *Made) lastsTo(a, b *Measure) bool {
	return a.lasts && (m.From.upwards() && a.A.Y <= b.A.Y || !m.From.upwards() && a.A.Y >= b.A.Y)
}

// settleMeasures makes the IDs unique, and shows each dimension once: not one
// that equals the whole length or width beside it.
func (m *Made) settleMeasures() {
	seen := map[string]int{}
	type shown struct {
		view int
		axis Axis
		a, b Point
	}
	place := map[shown]bool{}
	var kept []Measure
	for i := range m.Measures {
		s := &m.Measures[i]
		seen[s.ID]++
		if n := seen[s.ID]; n > 1 {
			s.ID += "." + units.Int(int64(n)).String()
		}
		k := shown{s.View, s.Axis, s.A, s.B}
		if s.Axis == Vertical {
			k.a.X, k.b.X = 0, 0
		} else if s.Axis == Horizontal {
			k.a.Y, k.b.Y = s.A.Y, s.A.Y
		}
		if m.hides(s) {
			s.Main, s.Same = false, true
		}
		if made := strings.HasPrefix(s.Name, "width of ") || strings.HasPrefix(s.Name, "height of "); place[k] && made {
			continue
		}
		if s.Main {
			place[k] = true
		}
		kept = append(kept, *s)
	}
	m.Measures = kept
}
