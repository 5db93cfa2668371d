package place

import (
	"math"
	"strings"
	"testing"

	"flatwright/fonts"
	"flatwright/layout/sheet"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Held against github.com/paulmach/orb: whether a point lies in a polygon.
func TestHatchLinesLieInTheirPolygonAndCoverIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 12).Draw(t, "corners")
		var poly []pt
		var ring orb.Ring
		for i := range n {
			r := rapid.Float64Range(10, 40).Draw(t, "r")
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			poly = append(poly, pt{X: 50 + r*cos, Y: 50 + r*sin})
			ring = append(ring, orb.Point{50 + r*cos, 50 + r*sin})
		}
		ring = append(ring, ring[0])
		sin, cos := math.Sincos(rapid.Float64Range(0, 3.2).Draw(t, "dir"))
		gap := rapid.Float64Range(0.8, 4).Draw(t, "gap")
		lines := hatch(poly, pt{X: cos, Y: sin}, gap)
		require.NotEmpty(t, lines)
		long := 0.0
		for _, l := range lines {
			long += dist(l.a, l.b)
			for _, k := range []float64{0.02, 0.5, 0.98} {
				p := add(l.a, mul(sub(l.b, l.a), k))
				require.True(t, planar.RingContains(ring, orb.Point{p.X, p.Y}), "%v", p)
			}
		}
		// lines a gap apart stand for the area (a sum of strips)
		require.InEpsilon(t, math.Abs(planar.Area(orb.Polygon{ring})), long*gap, 0.25)
	})
}

func TestHatchIsNeverDenserThanTheEyeTells(t *testing.T) {
	sheets, err := Schematic(pullover(1), Options{Scale: 50})
	require.NoError(t, err)
	found := false
	sheet.Walk(&sheets[0].Root, func(it sheet.Item) {
		p, ok := it.(*sheet.Path)
		if !ok || p.Class != "hatch" || len(p.Segs) < 4 || p.Segs[0].P[0].X == p.Segs[1].P[0].X && p.Segs[0].P[0].X == p.Segs[2].P[0].X {
			return
		}
		for i := 2; i+1 < len(p.Segs); i += 2 {
			require.GreaterOrEqual(t, math.Abs(p.Segs[i].P[0].X-p.Segs[i-2].P[0].X), 0.7)
			found = true
		}
	})
	require.True(t, found)
}

func TestLettersLeaveOutWhatLooksLikeAFigure(t *testing.T) {
	a := newLettering(nil, 'A')
	require.Equal(t, "A", a.name(0))
	require.Equal(t, "Z", a.name(23))
	require.Equal(t, "AA", a.name(24))
	require.Equal(t, "AB", a.name(25))
	seen := map[string]bool{}
	for n := range 2000 {
		name := a.name(n)
		require.False(t, seen[name])
		require.False(t, strings.ContainsAny(name, "IO"), name)
		require.LessOrEqual(t, fonts.Width(fonts.Regular, 3, name), a.form(2000, 3).w)
		seen[name] = true
	}
}

func TestNoLetterIsTakenForASize(t *testing.T) {
	a := newLettering([]string{"XS", "S", "M", "L", "2X"}, 'A')
	var all []string
	for n := range 22 {
		all = append(all, a.name(n))
	}
	require.Equal(t, "A B C D E F G H J K N P Q R T U V W X Y Z AA", strings.Join(all, " "))
}

func TestLettersBeginWithTheOneThatWasAskedFor(t *testing.T) {
	for _, first := range "ABHKNPZ" { // behind I, and behind O
		require.Equal(t, string(first), newLettering(nil, byte(first)).name(0))
	}
	require.Equal(t, "N", newLettering([]string{"S", "M", "L"}, 'L').name(0), "the next that is no size")
	require.Equal(t, "AA", newLettering(nil, 'Z').name(1))
}

func TestTextReadsFromTheBottomOrTheRight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sin, cos := math.Sincos(rapid.Float64Range(-4, 4).Draw(t, "turn"))
		_, angle := reading(pt{X: cos, Y: sin})
		require.Greater(t, angle, -70.001)
		require.LessOrEqual(t, angle, 110.001)
	})
	_, angle := reading(pt{Y: 1})
	require.Equal(t, 90.0, angle, "a vertical one reads from the right (ISO 129-1)")
	_, angle = reading(pt{X: -1})
	require.Equal(t, 0.0, angle)
}

func TestWrappedTextKeepsItsWordsAndItsWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`[a-z]{1,40}( [a-z]{1,12}){0,8}`).Draw(t, "text")
		limit := rapid.Float64Range(6, 60).Draw(t, "limit")
		lines := sheet.Wrap(s, limit, 3.2, fonts.Regular)
		require.Equal(t, strings.ReplaceAll(s, " ", ""), strings.ReplaceAll(strings.Join(lines, ""), " ", ""))
		for _, l := range lines {
			require.LessOrEqual(t, fonts.Width(fonts.Regular, 3.2, l), limit)
		}
	})
}

// A4 is 210 x 297 mm (ISO 216); Letter is 8.5 x 11 in (ANSI/ASME Y14.1, size A), and an
// inch 25.4 mm.
func TestPapersHaveTheSizesOfTheirStandards(t *testing.T) {
	want := map[string][2]float64{"A4": {210, 297}, "Letter": {8.5 * 25.4, 11 * 25.4}}
	for _, p := range Papers() {
		short, long := p.Size()
		require.InDelta(t, want[p.String()][0], short, 1e-9, p)
		require.InDelta(t, want[p.String()][1], long, 1e-9, p)
	}
	require.Len(t, Papers(), len(want))
}
