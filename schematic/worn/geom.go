package worn

import (
	"math"

	"flatwright/schematic"
)

type pt = schematic.Point

func add(a, b pt) pt             { return pt{X: a.X + b.X, Y: a.Y + b.Y} }
func sub(a, b pt) pt             { return pt{X: a.X - b.X, Y: a.Y - b.Y} }
func mul(a pt, k float64) pt     { return pt{X: a.X * k, Y: a.Y * k} }
func dot(a, b pt) float64        { return float64(a.X*b.X) + float64(a.Y*b.Y) }
func cross(a, b pt) float64      { return float64(a.X*b.Y) - float64(a.Y*b.X) }
func length(a pt) float64        { return math.Hypot(a.X, a.Y) }
func dist(a, b pt) float64       { return length(sub(a, b)) }
func mid(a, b pt) pt             { return mul(add(a, b), 0.5) }
func near(a, b pt) bool          { return dist(a, b) < close }
func lerp(a, b pt, t float64) pt { return add(a, mul(sub(b, a), t)) }

const close = 0.01 // mm within which two places are one

// motion is a rigid motion of the plane: a turn, then a move.
type motion struct {
	cos, sin float64
	by       pt
}

var still = motion{cos: 1}

func (m motion) turn(p pt) pt {
	return pt{X: float64(m.cos*p.X) - float64(m.sin*p.Y), Y: float64(m.sin*p.X) + float64(m.cos*p.Y)}
}

func (m motion) at(p pt) pt { return add(m.turn(p), m.by) }

// laying is the motion that turns the chord from a to b into the direction of that from x to y
// and brings hold, a place between a and b, onto the same share of the way from x to y.
func laying(a, b, x, y pt, hold float64) motion {
	u, v := sub(b, a), sub(y, x)
	n := length(u) * length(v)
	if n == 0 {
		return motion{cos: 1, by: sub(x, a)}
	}
	m := motion{cos: dot(u, v) / n, sin: cross(u, v) / n}
	m.by = sub(lerp(x, y, hold), m.turn(lerp(a, b, hold)))
	return m
}

// onSegment is how far p is along the stretch from a to b as a share of it, if it lies on it.
func onSegment(p, a, b pt) (float64, bool) {
	d := sub(b, a)
	l := dot(d, d)
	if l == 0 {
		return 0, false
	}
	t := dot(sub(p, a), d) / l
	return t, t > 0 && t < 1 && dist(p, lerp(a, b, t)) < close
}

// area is the area of a loop, positive if it runs anticlockwise.
func area(loop []pt) float64 { return schematic.PolygonArea(loop) }

// distToLoop is how far p is from the edge of a loop.
func distToLoop(loop []pt, p pt) float64 {
	return min(distTo(loop, p), distTo([]pt{loop[len(loop)-1], loop[0]}, p))
}

// distTo is how far p is from the way along path.
func distTo(path []pt, p pt) float64 {
	best := math.Inf(1)
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		d := sub(b, a)
		t := 0.0
		if l := dot(d, d); l > 0 {
			t = min(1, max(0, dot(sub(p, a), d)/l))
		}
		best = min(best, dist(p, lerp(a, b, t)))
	}
	return best
}
