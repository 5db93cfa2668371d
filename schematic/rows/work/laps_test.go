package work

import (
	"testing"

	"github.com/stretchr/testify/assert"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// A repeat over a long even row is the same row whether each time is worked out or not.
func TestTimesThatGoAlikeAreWorkedAsEachTimeIs(t *testing.T) {
	next := func(k int) []ins.Place {
		return []ins.Place{{Kind: ins.InNext, N: ins.N(k), Unit: ins.Unit{Word: "st"}}}
	}
	st := func(id string, n, in int) ins.Item {
		return &ins.Stitch{Kind: stitch.ByID(id), N: ins.N(n), Places: next(in)}
	}
	for _, c := range []struct {
		name           string
		body           []ins.Item
		below          int
		made, runs, of int // stitches, runs, and groups of the row
	}{
		{"one in each", []ins.Item{st("sc", 1, 3)}, 300, 300, 1, 0},
		{"two kinds in turn", []ins.Item{st("sc", 1, 1), st("dc", 1, 1)}, 300, 300, 300, 0},
		{"a shell of 5 over 6", []ins.Item{&ins.Skip{Places: next(2)}, st("hdc", 5, 1), &ins.Skip{Places: next(2)}, st("sc", 1, 1)}, 600, 600, 200, 100}, // 100 of 5 and 1
		{"two in every second", []ins.Item{st("sc", 1, 1), st("sc", 2, 1)}, 100, 150, 1, 0},
	} {
		f := uniform(stitch.ByID("sc"), c.below)
		w := &work{task: task{x: &ins.Text{}, from: f, pick: newPicks()}, place: place{cur: over(f), out: &fabric{}, lastPos: -1}}
		w.loop(&ins.Repeat{Body: c.body, Until: ins.Extent{Kind: ins.ToEnd}, Stop: -1}, nil, 0)
		assert.Empty(t, w.found, c.name)
		assert.Equal(t, c.made, w.out.stitches(), c.name)
		assert.Len(t, w.out.runs, c.runs, c.name)
		assert.Equal(t, c.of, w.out.groups, c.name)
		assert.Zero(t, w.cur.left, c.name)
		assert.Equal(t, c.below-1, w.lastPos, c.name)
		for i, q := range w.out.runs {
			if c.of > 0 && i%2 == 0 {
				assert.Equal(t, i/2+1, q.group, c.name)
			}
		}
	}
}

// Over a rib each time goes over two runs: whether the times are worked out or not, the row, what is left and what does not fit are the same.
func TestTimesOverARibAreWorkedAsEachTimeIs(t *testing.T) {
	st := func(id string, n int) ins.Item { return &ins.Stitch{Kind: stitch.ByID(id), N: ins.N(n)} }
	for _, c := range []struct {
		name  string
		body  []ins.Item
		below []run // again and again
		times int
		odd   int // stitches of another kind in the midst of them
	}{
		{"as it stands", []ins.Item{st("k", 2), st("p", 2)}, []run{{kind: stitch.ByID("k"), n: 2}, {kind: stitch.ByID("p"), n: 2}}, 40, 0},
		{"from within a run", []ins.Item{st("p", 1), st("k", 2), st("p", 1)}, []run{{kind: stitch.ByID("k"), n: 2}, {kind: stitch.ByID("p"), n: 2}}, 40, 0},
		{"over three runs", []ins.Item{st("k", 1), st("yo", 1), st("k2tog", 1), st("p", 1)}, []run{{kind: stitch.ByID("k"), n: 1}, {kind: stitch.ByID("ktbl"), n: 2}, {kind: stitch.ByID("p"), n: 1}}, 40, 0},
		{"with a stretch of another kind", []ins.Item{st("k", 2), st("p", 2)}, []run{{kind: stitch.ByID("k"), n: 2}, {kind: stitch.ByID("p"), n: 2}}, 40, 8},
		{"with some left over", []ins.Item{st("k", 2), st("p", 3)}, []run{{kind: stitch.ByID("k"), n: 2}, {kind: stitch.ByID("p"), n: 2}}, 41, 0},
	} {
		f := &fabric{}
		for i := range c.times {
			if f.runs = append(f.runs, c.below...); c.odd > 0 && i == c.times/2 {
				f.runs = append(f.runs, run{kind: stitch.ByID("ktbl"), n: c.odd})
			}
		}
		worked := func(trace *tracer) *work {
			w := &work{task: task{x: &ins.Text{}, from: f, pick: newPicks(), trace: trace}, place: place{cur: over(f), out: &fabric{}, lastPos: -1}}
			w.loop(&ins.Repeat{Body: c.body, Until: ins.Extent{Kind: ins.ToEnd}, Stop: -1}, nil, 0)
			return w
		}
		w, each := worked(nil), worked(&tracer{line: &ins.Line{}, steps: map[ins.Item]*traced{}})
		assert.Equal(t, each.out, w.out, c.name)
		assert.Equal(t, each.cur, w.cur, c.name)
		assert.Equal(t, each.lastPos, w.lastPos, c.name)
		assert.Equal(t, each.found, w.found, c.name)
		assert.Greater(t, w.out.stitches(), 100, c.name)
	}
}
