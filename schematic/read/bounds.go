package read

import (
	"fmt"
	"math"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// measure bounds the rows and stitches that the numbers of a piece make together, so
// that no pattern without errors can run away when it is worked.
func (r *reader) measure(p *schematic.Pattern) {
	if r.sizes.Len() == 0 || len(p.Gauges) == 0 {
		return
	}
	gauges := map[string]*schematic.Gauge{"": &p.Gauges[0]}
	for i := range p.Gauges {
		gauges[p.Gauges[i].Name] = &p.Gauges[i]
	}
	for _, q := range p.Pieces {
		r.piece = q.Name
		for i := range r.sizes.Len() {
			b := bounds{r: r, gauges: gauges, size: i, gauge: q.Gauge}
			b.walk(q.Sections)
			if b.told {
				break
			}
			if b.rows > mostPieceRow {
				f := r.fail(q.Pos, "file/bounds", "this piece has %d rows", b.rows)
				f.Want, f.Sizes = fmt.Sprintf("at most %d", mostPieceRow), []string{r.sizes.Names[i]}
				break
			}
		}
	}
	r.piece = ""
}

type bounds struct {
	r      *reader
	gauges map[string]*schematic.Gauge
	size   int
	gauge  string
	rows   int64
	told   bool
}

func (b *bounds) add(pos finding.Pos, rows int64) {
	if rows > mostRows && !b.told {
		b.told = true
		f := b.r.fail(pos, "file/bounds", "this section has %d rows", rows)
		f.Want, f.Sizes = fmt.Sprintf("at most %d", mostRows), []string{b.r.sizes.Names[b.size]}
	}
	b.rows += min(rows, math.MaxInt32)
}

func (b *bounds) stitches(pos finding.Pos, sts int64) {
	if sts > mostStitches && !b.told {
		b.told = true
		f := b.r.fail(pos, "file/bounds", "this section changes %d stitches", sts)
		f.Want, f.Sizes = fmt.Sprintf("at most %d", mostStitches), []string{b.r.sizes.Names[b.size]}
	}
}

func (b *bounds) amount(a schematic.Amount) int64 {
	if v, ok := a.Length.At(b.size); ok {
		g := b.gauges[b.gauge]
		if g == nil || g.Rows.Sign() <= 0 || g.Over.Sign() <= 0 {
			return 0
		}
		return v.Div(g.RowHeight()).Add(units.Int(1)).Floor()
	}
	return int64(a.Rows.Int(b.size, 0))
}

func (b *bounds) walk(sections []schematic.Section) {
	for _, s := range sections {
		c := s.Base()
		if c.Gauge != "" {
			b.gauge = c.Gauge
		}
		l := schematic.LoadOf(s, b.size, b.amount)
		for _, t := range l.Taken {
			b.stitches(t.Pos, t.Stitches)
		}
		b.add(c.Pos, l.Rows)
		gauge := b.gauge
		for _, p := range s.Traits().Parts {
			b.walk(p.Sections)
			b.gauge = gauge
		}
	}
}
