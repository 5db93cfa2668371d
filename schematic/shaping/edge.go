package shaping

import (
	"fmt"
	"math"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// Cloth is the size of a stitch and of a row, in mm.
type Cloth struct{ Stitch, Row units.Num }

// ClothOf is the cloth that the gauge g makes.
func ClothOf(g schematic.Gauge) Cloth { return Cloth{g.StitchWidth(), g.RowHeight()} }

// Move is one stretch of a shaped edge, the same at both edges of a piece:
// stitches bound off or left (Off, Times times, Every rows apart), one stitch
// decreased on every Every-th row (Times times), or Even rows worked even.
type Move struct {
	Off   int  // stitches taken off at once, 0 for none
	Leave bool // they are left at both edges of one row, not bound off at the beginning of two
	Every int
	Times int
	Even  int // rows worked even
}

// off is Move of stitches taken off: bound off, each edge at the beginning of
// its own row, they take two rows; left, they take none and a row lies between two.
func off(stitches, times int, leave bool) Move {
	if stitches == 0 {
		times = 0
	}
	m := Move{Off: stitches, Times: times, Leave: leave, Every: 2}
	if leave {
		m.Every = 1
	}
	return m
}

// in is how many stitches the edge moves in.
func (m Move) in() int {
	if m.Off > 0 {
		return m.Off * m.Times
	}
	return m.Times
}

// rows is how many rows the stretch takes.
func (m Move) rows() int {
	if m.Leave && m.Times > 0 {
		return m.Even + m.Every*(m.Times-1)
	}
	return m.Even + m.Every*m.Times
}

// Edge is a shaped edge of a piece from the underarm up.
type Edge []Move

// rows is how many rows the edge takes.
func (e Edge) rows() int {
	n := 0
	for _, m := range e {
		n += m.rows()
	}
	return n
}

// Length is how long the edge is along its outline, in mm: a run of regular
// shaping is one slant, stitches bound off are level steps.
func (e Edge) Length(c Cloth) float64 {
	w, h := c.Stitch.Float(), c.Row.Float()
	sum := 0.0
	for _, m := range e {
		if m.Off > 0 {
			sum += float64(m.in())*w + float64(m.rows())*h
			continue
		}
		sum += math.Hypot(float64(m.in())*w, float64(m.Every*m.Times)*h) + float64(m.Even)*h
	}
	return sum
}

// sum is the arithmetic of Length in the unit u.
func (e Edge) sum(c Cloth, u units.Unit) string {
	var parts []string
	for _, m := range e {
		side, up := c.Stitch.Times(m.in()), c.Row.Times(m.rows()-m.Even)
		switch {
		case m.Times == 0:
		case m.Off > 0 && up.Sign() == 0:
			parts = append(parts, LongIn(side, u)+" level")
		case m.Off > 0:
			parts = append(parts, LongIn(side, u)+" level + "+LongIn(up, u)+" up")
		default:
			slant := Milli(math.Hypot(side.Float(), up.Float()))
			parts = append(parts, fmt.Sprintf("√(%s² + %s²) = %s aslant", Long(side, u), Long(up, u), LongIn(slant, u)))
		}
		if m.Even > 0 {
			parts = append(parts, LongIn(c.Row.Times(m.Even), u)+" up")
		}
	}
	return fmt.Sprintf("%s; in all %s", strings.Join(parts, " + "), LongIn(Milli(e.Length(c)), u))
}

func offWord(leave bool) string {
	if leave {
		return "leave"
	}
	return "bind off"
}

// String is the edge in the trade's words.
func (e Edge) String() string {
	var parts []string
	for _, m := range e {
		switch {
		case m.Times == 0:
		case m.Off > 0:
			part := fmt.Sprintf("%s %d", offWord(m.Leave), m.Off)
			if m.Times > 1 {
				part += ", " + times(m.Times)
			}
			parts = append(parts, part)
		default:
			parts = append(parts, fmt.Sprintf("decrease 1 %s %s", everyRow(m.Every), times(m.Times)))
		}
		if m.Even > 0 {
			parts = append(parts, fmt.Sprintf("work %s even", CountedIn(units.Int(int64(m.Even)), expr.Rows)))
		}
	}
	if len(parts) == 0 {
		return "work even"
	}
	return strings.Join(parts, "; ")
}

// Milli is a length in mm rounded to 0.001 mm.
func Milli(mm float64) units.Num { return units.Frac(int64(math.Round(mm*1000)), 1000) }
