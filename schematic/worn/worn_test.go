package worn

import (
	"cmp"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/finding"
	"flatwright/schematic/random"
	"flatwright/schematic/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

const garments = "../../testdata/garments/worn/"

func pattern(t testing.TB, file string) *schematic.Pattern {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(garments, file))
	require.NoError(t, err)
	p, found := read.Pattern(file, text)
	require.NotNil(t, p, "%v", found)
	return p
}

func files(t testing.TB) []string {
	t.Helper()
	list, err := filepath.Glob(garments + "*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, list)
	for i := range list {
		list[i] = filepath.Base(list[i])
	}
	return list
}

func assembled(g *schematic.Garment) *assembly {
	return newAssembly(g, false)
}

// placedAt is the placed panel of a piece that lies farthest to the right.
func (a *assembly) placedAt(t *testing.T, piece string) *panel {
	t.Helper()
	var best *panel
	for _, p := range a.placed {
		if lo, _ := box(p.drawn); p.made.Name == piece && p.hung {
			if best == nil || lo.X > -1e9 && p.where.at(pt{}).X > best.where.at(pt{}).X {
				best = p
			}
		}
	}
	require.NotNil(t, best, "no panel of %s is placed", piece)
	return best
}

func degrees(m motion) float64 { return math.Atan2(m.sin, m.cos) * 180 / math.Pi }

func hasCorner(t *testing.T, loop []pt, x, y float64) {
	t.Helper()
	for _, p := range loop {
		if math.Hypot(p.X-x, p.Y-y) < 0.05 {
			return
		}
	}
	assert.Fail(t, "no such corner", "(%.2f, %.2f) in %.2f", x, y, loop)
}

// A stitch is 5 mm wide and a row 100/28 = 3.5714 mm high; a row of rib is 100/30 = 3.3333 mm.
func TestADroppedShoulderSticksOutSquare(t *testing.T) {
	g := schematic.Work(pattern(t, "drop-shoulder.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	// Half of 100 stitches is 250 mm. The armhole begins at 18 × 3.3333 + 84 × 3.5714 = 360 mm, and its 56 rows end at
	// 360 + 200 = 560 mm. Half of the sleeve's top, 80 stitches, is 200 mm as well: end lies on end, and the sleeve is
	// turned by 90°. It is 18 × 3.3333 + 96 × 3.5714 = 402.857 mm long; half of its cuff, 44 stitches, is 110 mm.
	hasCorner(t, g.Worn.Views[0].Outline[0], 250+402.857, 560)
	hasCorner(t, g.Worn.Views[0].Outline[0], 250+402.857, 560-110)
	hasCorner(t, g.Worn.Views[0].Outline[0], -250-402.857, 560)
	hasCorner(t, g.Worn.Views[0].Outline[0], 250, 360)
	hasCorner(t, g.Worn.Views[0].Outline[0], -250, 0)
	assert.InDelta(t, 90, degrees(assembled(g).placedAt(t, "Sleeve").where), 1e-6)
}

func TestASetInSleeveHangsByTheAngleBetweenTheChordsOfArmholeAndCap(t *testing.T) {
	p := assembled(schematic.Work(pattern(t, "set-in.yaml"), 0)).placedAt(t, "Sleeve")
	// Front: the armhole goes from (240, 18 × 3.3333 + 90 × 3.5714 = 381.429) inwards by 5 and 6 stitches, 55 mm, and up
	// 2 + 12 + 40 rows, 192.857 mm: its chord rises at 90° + atan(55 / 192.857) = 105.917°.
	// Sleeve: half of 68 stitches is 170 mm, and the cap is 2 + 40 rows, 150 mm high, over it: its chord, from the left
	// half's underarm to the middle of the cap, rises at atan(150 / 170) = 41.424°.
	assert.InDelta(t, 105.917-41.424, degrees(p.where), 0.002)
	// The underarm is held fast: the left half's corner, (-170, its underarm), lies at (240, 381.429).
	under := p.where.at(p.own[0])
	assert.InDelta(t, 240, under.X, 0.01)
	assert.InDelta(t, 381.429, under.Y, 0.01)
}

func TestARaglanSleeveTurnsByTheSlopesOfBothEdges(t *testing.T) {
	p := assembled(schematic.Work(pattern(t, "raglan-flat.yaml"), 0)).placedAt(t, "Sleeve")
	// The raglan of front and sleeve alike goes in by 28 stitches, 140 mm, over 56 rows, 200 mm: either edge leans by
	// atan(140 / 200) = 34.992°, together 69.984°. The underarm, which is not of the raglan, has no part in it.
	assert.InDelta(t, 2*34.992, degrees(p.where), 0.002)
	// The raglan ends on the front's neck, at half of 34 stitches, 85 mm, and 16 × 3.3333 + 90 × 3.5714 + 207.143 = 581.905 mm.
	end := p.where.at(p.own[1])
	assert.InDelta(t, 85, end.X, 0.01)
	assert.InDelta(t, 581.905, end.Y, 0.01)
}

func TestTheWingsOfATriangularShawlTurnUntilTheSpineIsUpright(t *testing.T) {
	g := schematic.Work(pattern(t, "shawl-triangle.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	lo, hi := bounds(g.Worn.Views[0].Outline)
	// 50 stitches of 100/18 mm and 100 rows of 100/36 mm are 277.778 mm each: spine and upper edge of a wing slope by 45°
	// to its rows, and are 392.837 mm long; turned by 45°, the spine is upright and the upper edge level. Three stitches cast
	// on, 16.667 mm, lie between them at 45°: 11.785 mm to the side and up.
	assert.InDelta(t, 2*(392.837+11.785), hi.X-lo.X, 0.01)
	assert.InDelta(t, 392.837+11.785, hi.Y-lo.Y, 0.01)
	hasCorner(t, g.Worn.Views[0].Outline[0], (lo.X+hi.X)/2, lo.Y)
	assert.InDelta(t, hi.Y-11.785, g.Worn.Views[0].Lines[0].A.Y+g.Worn.Views[0].Lines[0].B.Y-lo.Y, 0.01, "the spine is one line, from the cast-on to the point")
}

// procrustes is the rigid motion that brings the points a onto b by weighted least squares: from the singular value decomposition
// of their covariance (Kabsch, 1976), by gonum.
func procrustes(a, b []pt, w []float64) motion {
	var ca, cb pt
	sum := 0.0
	for i := range a {
		ca, cb, sum = add(ca, mul(a[i], w[i])), add(cb, mul(b[i], w[i])), sum+w[i]
	}
	ca, cb = mul(ca, 1/sum), mul(cb, 1/sum)
	h := mat.NewDense(2, 2, nil)
	for i := range a {
		p, q := sub(a[i], ca), sub(b[i], cb)
		h.Set(0, 0, h.At(0, 0)+w[i]*p.X*q.X)
		h.Set(0, 1, h.At(0, 1)+w[i]*p.X*q.Y)
		h.Set(1, 0, h.At(1, 0)+w[i]*p.Y*q.X)
		h.Set(1, 1, h.At(1, 1)+w[i]*p.Y*q.Y)
	}
	var svd mat.SVD
	svd.Factorize(h, mat.SVDFull)
	var u, v, r mat.Dense
	svd.UTo(&u)
	svd.VTo(&v)
	r.Mul(&v, u.T())
	if mat.Det(&r) < 0 { // a turn, not a mirror
		v.Set(0, 1, -v.At(0, 1))
		v.Set(1, 1, -v.At(1, 1))
		r.Mul(&v, u.T())
	}
	m := motion{cos: r.At(0, 0), sin: r.At(1, 0)}
	m.by = sub(cb, m.turn(ca))
	return m
}

// placedByLeastSquares holds where every panel lies against a general library's least squares, and says of how many.
func placedByLeastSquares(t require.TestingT, a *assembly, name string) int {
	checked := 0
	if len(a.placed) == 0 {
		return 0
	}
	root := a.placed[0]
	stood := root.face == either && root.made.Views[root.view].Panel // all is turned once more, to stand upright
	for _, q := range a.placed {
		if !q.hung || stood || q.laid == (chord{}) {
			continue
		}
		w := []float64{1, 1}
		if q.laid.hold != 0.5 {
			w[int(q.laid.hold)] = 1e12 // held fast
		}
		m := procrustes(q.laid.own[:], q.laid.on[:], w)
		for _, s := range q.loop {
			require.Less(t, dist(m.at(s.a), q.where.at(s.a)), 0.1, "%s, %s", name, q.name)
		}
		checked++
	}
	return checked
}

func TestLeastSquaresOfAGeneralLibraryPlacesEveryPanelAlike(t *testing.T) {
	checked := 0
	for _, f := range files(t) {
		p := pattern(t, f)
		for i := range p.Sizes.Names {
			checked += placedByLeastSquares(t, assembled(schematic.Work(p, i)), f)
		}
	}
	require.Greater(t, checked, 100)
	checked = 0
	rapid.Check(t, func(t *rapid.T) {
		checked += placedByLeastSquares(t, assembled(bonded(t)), "random")
	})
	require.Positive(t, checked, "the random garments must have seams")
}

// bondedEnds are the ends of the longest run of a panel's sides with one of the keys, and those of the runs of its hosts with one, each as
// it goes from host to host.
func bondedEnds(q *panel, keys map[string]bool) (own [2]pt, runs [][2]pt) {
	run := longestRun(q.loop, keys)
	if len(run) == 0 {
		return own, nil
	}
	own = [2]pt{q.loop[run[0]].a, q.loop[(run[len(run)-1]+1)%len(q.loop)].a}
	var apart []pt // where the run of another of the same piece begins
	for _, h := range q.hosts {
		n := len(h.loop)
		at := func(i int) bool { return !h.loop[i%n].fold && h.loop[i%n].has(keys) }
		for i := range n {
			if !at(i) || at(i+n-1) {
				continue
			}
			k := i
			for at(k) && k < i+n {
				if h.loop[k%n].parted(&h.loop[i]) { // the next takes another of the same piece
					runs = append(runs, [2]pt{h.where.at(h.loop[i].a), h.where.at(h.loop[k%n].a)})
					apart = append(apart, h.where.at(h.loop[k%n].a))
					i = k
				}
				k++
			}
			runs = append(runs, [2]pt{h.where.at(h.loop[i].a), h.where.at(h.loop[k%n].a)})
		}
	}
	for again := true; again; { // from one host to the next
		again = false
		for i := range runs {
			for j := range runs {
				if i != j && !again && dist(runs[i][1], runs[j][0]) < 1 && !slices.Contains(apart, runs[j][0]) {
					runs[i][1], again = runs[j][1], true
					runs = slices.Delete(runs, j, j+1)
				}
			}
			if again {
				break
			}
		}
	}
	return own, runs
}

// anew is where a general library's damped least squares lay a panel that hangs from others, from starts of its own, by the bonds alone: the ends of the
// longest run of its sides that share one bond with its hosts onto the ends of theirs, the lower end held fast if they slope. False where the bonds alone don't say which ends meet.
func anew(q *panel) (motion, bool) {
	shared, mine := map[string]bool{}, keysOf(q.loop)
	for _, h := range q.hosts {
		for k := range keysOf(h.loop) {
			if mine[k] {
				shared[k] = true
			}
		}
	}
	own, runs := bondedEnds(q, shared)
	long := 0.0
	for _, k := range slices.Sorted(maps.Keys(shared)) {
		switch o, r := bondedEnds(q, map[string]bool{k: true}); {
		case len(r) > 0 && dist(o[0], o[1]) > long+close:
			own, runs, long = o, r, dist(o[0], o[1])
		case len(r) > 0 && dist(o[0], o[1]) > long-close: // of the other side
			runs = append(runs, r...)
		}
	}
	if len(runs) == 0 {
		return motion{}, false
	}
	// A front has two armholes alike: which of the two sleeves it is, is told by the side of the body.
	lo, hi := box(q.drawn)
	side := mid(lo, hi)
	ends := slices.MinFunc(runs, func(x, y [2]pt) int {
		return cmp.Compare(dist(mid(x[0], x[1]), side), dist(mid(y[0], y[1]), side))
	})
	w := [2]float64{1, 1}
	if d := sub(ends[1], ends[0]); math.Abs(d.Y) > level*length(d) {
		if w[0] = 1e6; d.Y < 0 {
			w = [2]float64{1, 1e6}
		}
		if q.made.Kind == schematic.KindSleeve && q.halved && math.Abs(own[0].Y-own[1].Y) < close && dist(own[0], own[1]) > length(d) {
			w[0], w[1] = w[1], w[0] // it hangs from the shoulder
		}
	} else { // two legs meet at the crotch
		for _, r := range runs {
			switch {
			case dist(r[0], ends[1]) < 1:
				w = [2]float64{1, 1e6}
			case dist(r[1], ends[0]) < 1:
				w = [2]float64{1e6, 1}
			}
		}
	}
	best, least := motion{}, math.Inf(1)
	for _, o := range [][2]pt{own, {own[1], own[0]}} {
		way, off := motion{}, math.Inf(1)
		for _, turn := range []float64{0.3, 1.8, 3.4, 5} {
			if m, miss := descended(o, ends, w, turn); miss < off {
				way, off = m, miss
			}
		}
		// Of the two ways round it is the one in which the panel lies outside its hosts.
		there := moved(q.points(), way)
		for _, h := range q.hosts {
			off += common(there, moved(h.points(), h.where))
		}
		if off < least {
			best, least = way, off
		}
	}
	return best, true
}

func moved(loop []pt, m motion) []pt {
	out := make([]pt, len(loop))
	for i, p := range loop {
		out[i] = m.at(p)
	}
	return out
}

// descended is the motion, and how far it misses, at which damped least squares (Levenberg, 1944; Marquardt, 1963) come to rest that
// begin with a turn, away from where anything lies; the equations are solved by gonum.
func descended(own, on [2]pt, w [2]float64, turn float64) (motion, float64) {
	at := func(x [3]float64) motion {
		sin, cos := math.Sincos(x[0])
		return motion{cos: cos, sin: sin, by: pt{X: x[1], Y: x[2]}}
	}
	miss := func(x [3]float64) float64 {
		m := at(x)
		return w[0]*math.Pow(dist(m.at(own[0]), on[0]), 2) + w[1]*math.Pow(dist(m.at(own[1]), on[1]), 2)
	}
	x, damp := [3]float64{turn, 1234, -567}, 1.0
	for range 200 {
		m := at(x)
		jac, res := mat.NewDense(7, 3, nil), mat.NewVecDense(7, nil)
		for i, p := range own {
			k, r, q := math.Sqrt(w[i]), sub(m.at(p), on[i]), m.turn(p)
			jac.SetRow(2*i, []float64{-k * q.Y, k, 0})
			jac.SetRow(2*i+1, []float64{k * q.X, 0, k})
			res.SetVec(2*i, -k*r.X)
			res.SetVec(2*i+1, -k*r.Y)
		}
		for i, scale := range []float64{100, 1, 1} { // mm for a radian
			jac.Set(4+i, i, math.Sqrt(damp)*scale)
		}
		var step mat.VecDense
		if err := step.SolveVec(jac, res); err != nil {
			break
		}
		next := [3]float64{x[0] + step.AtVec(0), x[1] + step.AtVec(1), x[2] + step.AtVec(2)}
		if miss(next) < miss(x) {
			x, damp = next, damp/5
		} else {
			damp *= 4
		}
	}
	return at(x), miss(x)
}

// A placing that knows the bonds, and nothing of the chords that were laid, finds every panel within 0.1 mm where it lies.
func TestDampedLeastSquaresFromStartsOfTheirOwnPlaceEveryPanelAlike(t *testing.T) {
	checked, n := map[string]bool{}, 0
	for _, f := range files(t) {
		p := pattern(t, f)
		for i := range p.Sizes.Names {
			a := assembled(schematic.Work(p, i))
			if len(a.placed) == 0 || a.placed[0].face == either && a.placed[0].made.Views[a.placed[0].view].Panel {
				continue // all is turned once more, to stand upright
			}
			for _, q := range a.placed {
				if !q.hung || len(q.hosts) == 0 || q.over != nil {
					continue
				}
				m, ok := anew(q)
				require.True(t, ok, "%s, %s", f, q.name)
				for _, s := range q.loop {
					require.Less(t, dist(m.at(s.a), q.where.at(s.a)), 0.1, "%s, %s", f, q.name)
				}
				checked[f] = true
				n++
			}
		}
	}
	t.Logf("%d panels, of %d garments", n, len(checked))
	require.GreaterOrEqual(t, n, 150)
	require.GreaterOrEqual(t, len(checked), 15)
}

func TestPanelsArePlacedWithoutBeingBent(t *testing.T) {
	for _, f := range files(t) {
		p := pattern(t, f)
		for i := range p.Sizes.Names {
			before, after := 0.0, 0.0
			for _, q := range assembled(schematic.Work(p, i)).placed {
				if q.strip {
					continue
				}
				var there []pt
				for _, a := range q.points() {
					there = append(there, q.where.at(a))
				}
				before, after = before+area(q.points()), after+area(there)
			}
			require.InEpsilon(t, before+1, after+1, 1e-9, f)
		}
	}
}

// trueToScale holds every measurement of what is worn against the drawing of it.
func trueToScale(t require.TestingT, g *schematic.Garment) int {
	if g.Worn == nil {
		return 0
	}
	seen := map[string]bool{}
	require.LessOrEqual(t, len(g.Worn.Measures), most)
	for _, m := range g.Worn.Measures {
		require.False(t, seen[m.Name], "%s twice", m.Name)
		seen[m.Name] = true
		if m.View == schematic.NoView {
			continue // it has no line
		}
		l := math.Hypot(m.A.X-m.B.X, m.A.Y-m.B.Y)
		switch m.Axis {
		case schematic.Horizontal:
			l = math.Abs(m.A.X - m.B.X)
		case schematic.Vertical:
			l = math.Abs(m.A.Y - m.B.Y)
		}
		if m.Around {
			l *= 2
		}
		require.InDelta(t, m.Length.Float(), l, 0.5, "%s of %s", m.Name, g.Pattern.Title)
	}
	return len(g.Worn.Measures)
}

func TestEveryMeasurementIsTrueToScale(t *testing.T) {
	for _, f := range files(t) {
		p := pattern(t, f)
		for i := range p.Sizes.Names {
			g := schematic.Work(p, i)
			Dress(g)
			trueToScale(t, g)
		}
	}
	n := 0
	rapid.Check(t, func(t *rapid.T) {
		for _, g := range bysize.WorkAll(random.Pattern(random.Options{}).Draw(t, "pattern")) {
			Dress(g)
			n += trueToScale(t, g)
		}
	})
	require.Greater(t, n, 100, "the patterns must reach measurements")
}

// No garment is drawn from a template: without a bond, what hangs from it is left out and noted, or another bond of
// the same pieces still holds it.
func TestWithoutABondItsPieceIsLeftOutAndNamed(t *testing.T) {
	tried, lost := 0, 0
	for _, f := range files(t) {
		p := pattern(t, f)
		whole := schematic.Work(p, 0)
		Dress(whole)
		for j, gone := range p.Joins { // each bond is taken away alone
			q := *p
			q.Joins = slices.Delete(slices.Clone(p.Joins), j, j+1)
			without := schematic.Work(&q, 0)
			Dress(without)
			a := assembled(without)
			pieces := piecesOf(whole, gone)
			if len(pieces) < 2 {
				continue
			}
			for name := range loose(whole, q.Joins, pieces) {
				if name == a.placed[0].made.Name {
					continue // what the others would hang from
				}
				tried++
				// A handle that nothing joins is a tie, which is no gap in the drawing.
				assert.Equal(t, !schematic.HangsFree(name), notes(without, map[string]bool{name: true}), "%s without join %d: %s", f, j+1, name)
				assert.False(t, slices.ContainsFunc(a.placed, func(p *panel) bool { return p.made.Name == name }), "%s: %s is placed by nothing", f, name)
			}
			// Whatever else the picture has lost is told, too, or the whole view is refused with its reason.
			refused := slices.ContainsFunc(without.Findings, func(f finding.Finding) bool {
				return strings.Contains(f.Message, "not drawn as worn: ")
			})
			still := names(a)
			for name := range names(assembled(whole)) {
				if !still[name] && !schematic.HangsFree(name) {
					lost++
					assert.True(t, refused || notes(without, map[string]bool{name: true}), "%s without join %d: %s is gone, and nothing says so", f, j+1, name)
				}
			}
		}
	}
	require.Greater(t, tried, 10)
	require.Greater(t, lost, 10)
}

func names(a *assembly) map[string]bool {
	out := map[string]bool{}
	for _, p := range a.placed {
		out[p.made.Name] = true
	}
	return out
}

func TestWithoutHeldStitchesOrABandsEdgeThePieceIsLeftOutAndNamed(t *testing.T) {
	for f, name := range map[string]string{"raglan-round.yaml": "Sleeve", "yoke-neck.yaml": "Sleeve", "yoke-hem.yaml": "Yoke", "cardigan.yaml": "Right band"} {
		p := pattern(t, f)
		q := p.PieceNamed(name)
		if h, ok := q.Sections[0].(*schematic.Held); ok {
			q.Sections[0] = &schematic.CastOn{Common: h.Common, Stitches: h.To}
		}
		q.Onto = nil
		if q.Kind == schematic.KindBand {
			q.Sections = append([]schematic.Section{&schematic.CastOn{Stitches: p.PieceNamed("Body").Sections[0].(*schematic.CastOn).Stitches}}, q.Sections...)
		}
		g := schematic.Work(p, 0)
		Dress(g)
		assert.True(t, notes(g, map[string]bool{name: true}), "%s without the bond of %s: %v", f, name, g.Findings)
	}
}

func piecesOf(g *schematic.Garment, j schematic.Join) map[string]bool {
	out := map[string]bool{}
	for _, ref := range slices.Concat(j.Sew, j.Into) {
		if m, _ := g.EdgesOf(ref); m != nil {
			out[m.Name] = true
		}
	}
	return out
}

// loose are the pieces that no join, no live stitches and nothing worked along them bind to another piece.
func loose(g *schematic.Garment, joins []schematic.Join, pieces map[string]bool) map[string]bool {
	out := map[string]bool{}
	for name := range pieces {
		binds := func(j schematic.Join) bool {
			of := piecesOf(g, j)
			return of[name] && len(of) > 1
		}
		along := func(m *schematic.Made) bool { // what is worked along edges of several pieces holds them together
			var j schematic.Join
			for _, o := range m.Piece.Onto {
				j.Sew = append(j.Sew, o.Edge)
			}
			return binds(j)
		}
		live := func(m *schematic.Made) bool {
			return slices.ContainsFunc(m.Piece.Sections, func(s schematic.Section) bool {
				return slices.ContainsFunc(s.Traits().From, func(h schematic.HeldPart) bool {
					return h.Piece != "" && (h.Piece == name) != (m.Name == name)
				})
			})
		}
		out[name] = !slices.ContainsFunc(joins, binds) && !slices.ContainsFunc(g.Pieces, along) && !slices.ContainsFunc(g.Pieces, live)
		if !out[name] {
			delete(out, name)
		}
	}
	return out
}

func notes(g *schematic.Garment, pieces map[string]bool) bool {
	return slices.ContainsFunc(g.Findings, func(f finding.Finding) bool {
		return f.Kind == "worn/left-over" && pieces[f.Piece] && strings.Contains(f.Message, f.Piece)
	})
}

func BenchmarkDress(b *testing.B) {
	for _, f := range []string{"set-in.yaml", "raglan-round.yaml", "cardigan.yaml", "yoke-neck.yaml"} {
		p := pattern(b, f)
		g := schematic.Work(p, 0)
		b.Run(strings.TrimSuffix(f, ".yaml"), func(b *testing.B) {
			b.ReportAllocs()
			for range b.N {
				g.Findings = nil
				Dress(g)
			}
		})
	}
}

// bonded is a random garment whose pieces are bound together.
func bonded(t *rapid.T) *schematic.Garment {
	text := random.Bonded().Draw(t, "text")
	p, found := read.Pattern("bonded.yaml", []byte(text))
	require.NotNil(t, p, "%v\n%s", found, text)
	return schematic.Work(p, 0)
}

func TestARandomBondedGarmentIsTrueToScaleAndNotBent(t *testing.T) {
	dressed, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		g := bonded(t)
		all++
		Dress(g)
		if trueToScale(t, g) > 0 {
			dressed++
		}
		for _, p := range assembled(g).placed {
			for _, q := range p.points() {
				require.InDelta(t, dist(q, p.loop[0].a), dist(p.where.at(q), p.where.at(p.loop[0].a)), 1e-6, p.name)
			}
			if !p.strip {
				var there []pt
				for _, q := range p.points() {
					there = append(there, p.where.at(q))
				}
				require.InEpsilon(t, area(p.points())+1, area(there)+1, 1e-9, p.name)
			}
		}
	})
	require.Greater(t, 2*dressed, all, "%d of %d garments are put together", dressed, all)
}
