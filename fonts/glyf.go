package fonts

import (
	"math"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// simple is a glyph's outline as TrueType has it: lines and quadratic curves, y upwards.
type simple struct {
	points []glyphPoint
	ends   []int // index of the last point of each contour
	lo, hi [2]int
}

type glyphPoint struct {
	at [2]int
	on bool // the curve goes through it
}

// quadratic turns an outline, y downwards, into one of TrueType.
func quadratic(segs sfnt.Segments) *simple {
	o := &simple{lo: [2]int{math.MaxInt16, math.MaxInt16}, hi: [2]int{math.MinInt16, math.MinInt16}}
	start := 0
	for i := range segs {
		s := &segs[i]
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			start = o.close(start)
			o.add(s.Args[0], true)
		case sfnt.SegmentOpLineTo:
			o.add(s.Args[0], true)
		case sfnt.SegmentOpQuadTo:
			o.add(s.Args[0], false)
			o.add(s.Args[1], true)
		case sfnt.SegmentOpCubeTo:
			o.cubic(s.Args)
		}
	}
	o.close(start)
	return o
}

func (o *simple) add(p fixed.Point26_6, on bool) { o.put([2]int{int(p.X), -int(p.Y)}, on) }

func (o *simple) put(at [2]int, on bool) {
	o.points = append(o.points, glyphPoint{at, on})
	for k := range at {
		o.lo[k], o.hi[k] = min(o.lo[k], at[k]), max(o.hi[k], at[k])
	}
}

// close ends the contour that began at start: its last point, if it is the first one
// again, goes. It returns where the next contour starts.
func (o *simple) close(start int) int {
	n := len(o.points)
	if n-start > 1 && o.points[n-1] == o.points[start] {
		n--
	}
	if n-start < 2 { // a contour of one point draws nothing
		o.points = o.points[:start]
		return start
	}
	o.points = o.points[:n]
	o.ends = append(o.ends, n-1)
	return n
}

// cubic adds a cubic curve from the last point, cut into so many quadratic ones that none
// is further from it than half a unit: one quadratic for a cubic is off by at most √3/36 of its
// third difference, and n of them by an n³-th of that.
func (o *simple) cubic(args [3]fixed.Point26_6) {
	from := o.points[len(o.points)-1].at
	var p [4][2]float64
	p[0] = [2]float64{float64(from[0]), float64(from[1])}
	for i, a := range args {
		p[i+1] = [2]float64{float64(a.X), -float64(a.Y)}
	}
	third := math.Hypot(p[3][0]-3*p[2][0]+3*p[1][0]-p[0][0], p[3][1]-3*p[2][1]+3*p[1][1]-p[0][1])
	n := int(min(16, max(1, math.Ceil(math.Cbrt(third*math.Sqrt(3)/36/0.5)))))
	at := func(t float64) (q, slope [2]float64) {
		u := 1 - t
		for k := range 2 {
			q[k] = u*u*u*p[0][k] + 3*u*u*t*p[1][k] + 3*u*t*t*p[2][k] + t*t*t*p[3][k]
			slope[k] = 3*u*u*(p[1][k]-p[0][k]) + 6*u*t*(p[2][k]-p[1][k]) + 3*t*t*(p[3][k]-p[2][k])
		}
		return q, slope
	}
	step := 1 / float64(n)
	a, da := at(0)
	for i := 1; i <= n; i++ {
		b, db := at(float64(i) * step)
		var mid, end [2]int
		for k := range 2 {
			// The mean of the two tangents' ends is the best single control (3(c1+c2) - a - b)/4.
			c1, c2 := a[k]+da[k]*step/3, b[k]-db[k]*step/3
			mid[k] = int(math.Round((3*(c1+c2) - a[k] - b[k]) / 4))
			end[k] = int(math.Round(b[k]))
		}
		o.put(mid, false)
		o.put(end, true)
		a, da = b, db
	}
}

// Flags of a point in a glyph (OpenType 1.9, 'glyf', simple glyph flags).
const (
	onCurve = 0x01
	xShort  = 0x02
	yShort  = 0x04
	xSame   = 0x10 // of a short one: positive
	ySame   = 0x20
)

// write appends the glyph, and gives its left side bearing.
func (o *simple) write(b *be) int {
	if len(o.points) == 0 {
		return 0
	}
	b.u16(len(o.ends), o.lo[0], o.lo[1], o.hi[0], o.hi[1])
	b.u16(o.ends...).u16(0)
	short, same := [2]byte{xShort, yShort}, [2]byte{xSame, ySame}
	var flags []byte
	var moves [2]be
	var last [2]int
	for _, p := range o.points {
		var flag byte
		if p.on {
			flag = onCurve
		}
		for k := range 2 {
			switch d := p.at[k] - last[k]; {
			case d == 0:
				flag |= same[k]
			case d > -256 && d < 256:
				flag |= short[k]
				if d > 0 {
					flag |= same[k]
				}
				moves[k].WriteByte(byte(max(d, -d)))
			default:
				moves[k].u16(d)
			}
		}
		flags = append(flags, flag)
		last = p.at
	}
	b.Write(flags)
	b.Write(moves[0].Bytes())
	b.Write(moves[1].Bytes())
	for b.Len()%4 != 0 {
		b.WriteByte(0)
	}
	return o.lo[0]
}
