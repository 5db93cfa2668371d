package job

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/layout/chart"
	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
)

// stitchOf is the stitch in which a step is worked: its section's own, that of its
// gauge, or that of the step before.
func stitchOf(p *schematic.Pattern, s *schematic.Step, before *stitch.Stitch) *stitch.Stitch {
	text := s.Section.Base().Stitch
	if text == "" && s.Section.Base().Gauge != "" {
		text = p.GaugeNamed(s.Section.Base().Gauge).Stitch
	}
	if text == "" {
		return before
	}
	k, _ := stitch.Worked(text, stitch.Terms(p.Terms))
	return k
}

// The rows of each stitch on the charts of a crochet piece are as many as its sections
// work in that stitch, shaped rows among them.
func TestEveryRowOfAChartIsOfItsSectionsStitch(t *testing.T) {
	checked := 0
	for _, src := range append(sources(t, "../../../examples/*.yaml"), sources(t, "../../../testdata/garments/*.yaml")...) {
		p, gs, _, err := work(context.Background(), src)
		require.NoError(t, err, src.Name)
		if p.Rows != "" {
			continue
		}
		x := patternRows(p, gs, nil, src.Name)
		for size, g := range gs {
			works, err := chartWorks(x, ChartOptions{}, size, &finding.List{})
			if err != nil {
				continue
			}
			for _, m := range g.Pieces {
				want, have := map[string]int{}, map[string]int{}
				kind := (*stitch.Stitch)(nil)
				if q := p.GaugeNamed(m.Piece.Gauge); q != nil {
					kind, _ = stitch.Worked(q.Stitch, stitch.Terms(p.Terms))
				}
				crochet, turned := true, 0
				for k := range m.Steps {
					s := &m.Steps[k]
					kind = stitchOf(p, s, kind)
					crochet = crochet && (kind != nil || s.Rows == 0)
					if kind != nil && s.Rows > 0 {
						want[kind.ID] += s.Rows
					}
					switch s.Section.(type) {
					case *schematic.Sideways, *schematic.PickUp, *schematic.Ring, *schematic.ShortRows:
						turned++ // the steps do not count its rows as the words do
					}
				}
				if !crochet || turned > 0 || m.Piece.MirrorOf != "" || len(m.Piece.Onto) > 0 {
					continue
				}
				for _, w := range works {
					if w.Title != m.Piece.Name && !strings.HasPrefix(w.Title, m.Piece.Name+",") {
						continue
					}
					for i := range w.Rows {
						kinds := map[string]bool{}
						for _, s := range w.Rows[i].St {
							if s.Kind != nil && !s.Turn && (s.Kind.ID != "ch" || w.Rows[i].Base) { // chains are added at an edge
								kinds[s.Kind.Plain().ID] = true
							}
						}
						require.Len(t, kinds, 1, "%s, %s, %s: one stitch a row", src.Name, w.Title, g.Size)
						for id := range kinds {
							if !w.Rows[i].Base {
								have[id]++
							}
						}
					}
				}
				for id, n := range want {
					if n == 0 {
						delete(want, id)
					}
				}
				assert.Equal(t, want, have, "%s, %s, %s", src.Name, m.Piece.Name, g.Size)
				checked++
			}
		}
	}
	require.Greater(t, checked, 20)
}

// Stockinette stitch shows no purl on the right side; a rib of k2, p2 shows its columns
// (both common practice).
func TestKnittedFabricsAreChartedAsTheRightSideShowsThem(t *testing.T) {
	src := sources(t, "../../../examples/windlass*.yaml")[0]
	p, gs, _, err := work(context.Background(), src)
	require.NoError(t, err)
	x := patternRows(p, gs, nil, src.Name)
	for size := range gs {
		works, err := chartWorks(x, ChartOptions{}, size, &finding.List{})
		require.NoError(t, err)
		require.Len(t, works, 4)
		for _, w := range works[:3] {
			for i := range w.Rows {
				r := &w.Rows[i]
				if r.Base {
					continue
				}
				var b strings.Builder
				for k := range r.St {
					at := k
					if r.Wrong { // from the right edge, as it is seen
						at = len(r.St) - 1 - k
					}
					b.WriteString(face(t, &r.St[at], r.Wrong))
				}
				if r.Number <= 14 {
					n := len(r.St)
					assert.Equal(t, strings.Repeat("kkpp", n/4)+"kk", b.String(), "%s row %d", w.Title, r.Number)
				} else {
					assert.NotContains(t, b.String(), "p", "%s row %d", w.Title, r.Number)
				}
			}
		}
	}
}

// face is k or p, as the right side shows a stitch.
func face(t *testing.T, s *chart.St, wrong bool) string {
	require.NotNil(t, s.Kind)
	first := s.Kind.ID[:1]
	if wrong {
		return map[string]string{"k": "p", "p": "k"}[first]
	}
	return first
}
