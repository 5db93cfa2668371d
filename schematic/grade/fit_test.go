package grade

import (
	"math"
	"testing"

	"flatwright/schematic/units"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// cloths are three gauges, each with knitting's short rows and crochet's tall
// ones (stitches and rows over 10 cm; realistic for fine, medium and bulky yarn, common practice).
var cloths = map[string]struct {
	cloth Cloth
	tall  bool
}{
	"fine knit":      {Cloth{units.Frac(100, 28), units.Frac(100, 38)}, false},
	"medium knit":    {Cloth{units.Frac(100, 19), units.Frac(100, 26)}, false},
	"bulky knit":     {Cloth{units.Frac(100, 11), units.Frac(100, 16)}, false},
	"fine crochet":   {Cloth{units.Frac(100, 22), units.Frac(100, 13)}, true},
	"medium crochet": {Cloth{units.Frac(100, 14), units.Frac(100, 9)}, true},
	"bulky crochet":  {Cloth{units.Frac(100, 9), units.Frac(100, 6)}, true},
}

// body gives one measurement of the nine women's sizes, upper ends of ranges.
func body(t *testing.T, name string) []units.Num {
	b, ok := PublishedBodies("women")
	require.True(t, ok)
	return b.Row(name).High.Vals
}

func sts(t *testing.T, mm units.Num, each units.Num, r Rule) int {
	c, err := Count(mm, each, r)
	require.NoError(t, err)
	return c.Count
}

func TestACapFitsItsArmholeInEverySizeAndGauge(t *testing.T) {
	bust, cross, depth, arm := body(t, "bust"), body(t, "cross back"), body(t, "armhole depth"), body(t, "upper arm")
	for name, c := range cloths {
		for _, ease := range []units.Num{units.Int(0), units.Int(15)} {
			for i := range bust {
				step := 2
				if c.tall {
					step = 1
				}
				back := sts(t, bust[i].Add(inches(3)).Half(), c.cloth.Stitch, Rule{Parity: Even})
				over := sts(t, cross[i], c.cloth.Stitch, Rule{Parity: Like(back), Round: AtMost})
				if over > back {
					over = back
				}
				rows := sts(t, depth[i].Add(inches(1)), c.cloth.Row, Rule{Parity: Even})
				a, err := Armhole(ArmholeIn{Body: back, Cross: over, Rows: rows, Step: step, Leave: c.tall, Cloth: c.cloth})
				require.NoError(t, err, "%s size %d", name, i)
				assert.Equal(t, (back-over)/2, a.Edge.In())
				assert.Equal(t, rows, a.Edge.Rows())
				upper := sts(t, arm[i].Add(inches(2)), c.cloth.Stitch, Rule{Parity: Even})
				p, err := Cap(CapIn{Upper: upper, First: a.First, Armhole: milli(2 * a.Edge.Length(c.cloth)), Ease: ease, Cloth: c.cloth, Step: 1, Leave: c.tall})
				require.NoError(t, err, "%s size %d: armhole %v, first %d of %d", name, i, a.Edge.Length(c.cloth), a.First, upper)
				checkCap(t, name, p, CapIn{Upper: upper, First: a.First, Cloth: c.cloth, Leave: c.tall}, milli(2*a.Edge.Length(c.cloth)).Add(ease))
				if ease.Sign() == 0 {
					t.Log(name, i, upper, a.Edge, "|", p.Edge, p.Top, "height", units.Decimal(c.cloth.Row.Times(p.Rows), 0))
				}
			}
		}
	}
}

// checkCap walks the cap row by row with arithmetic of its own.
func checkCap(t *testing.T, name string, p CapPlan, in CapIn, target units.Num) {
	t.Helper()
	require.Equal(t, in.First, p.Edge[0].Off, "first bind-offs match")
	count, length := in.Upper, 0.0
	w, h := in.Cloth.Stitch.Float(), in.Cloth.Row.Float()
	for _, m := range p.Edge {
		if m.Off == 0 {
			require.GreaterOrEqual(t, m.Every*m.Times+m.Even, m.Times, "no more than one stitch a row")
		}
		count -= 2 * m.in()
		if m.Off > 0 {
			rows := 2 * m.Times // each edge at the beginning of its own row
			if in.Leave {
				rows = max(m.Times-1, 0) // a row between two, none behind the last
			}
			length += 2 * (float64(m.Off*m.Times)*w + float64(rows)*h)
		} else {
			x, y := float64(m.Times)*w, float64(m.Every*m.Times)*h
			length += 2 * (math.Sqrt(x*x+y*y) + float64(m.Even)*h)
		}
	}
	require.Equal(t, p.Top, count, "what is left is the top")
	length += float64(p.Top) * w
	assert.InDelta(t, length, p.Length.Float(), 0.001)
	assert.LessOrEqual(t, math.Abs(length-target.Float()), w/2+0.001, "%s: within half a stitch", name)
	assert.NotEmpty(t, p.Lines)
}
