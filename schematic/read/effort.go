package read

import (
	"fmt"

	"flatwright/schematic"
)

// mostEffort bounds the work that a whole pattern makes: all pieces, those that mirror another
// one too, in all sizes. A unit is about a microsecond; a hundred pieces of eight sections in twenty sizes are
// about 150,000.
const mostEffort = 400_000

// What the parts of a pattern cost in one size, in units.
const (
	pieceCosts   = 30
	sectionCosts = 5
	panelCosts   = 3
	motifCosts   = 20
	joinCosts    = 12
	writtenCosts = 40
	changesFor1  = 8  // so many changes of a regular shaping cost one unit
	pairsFor1    = 20 // so many pairs of sections: every width is held against those near it
	piecesFor1   = 5  // so many pairs of pieces: each is held against those of its name and likeness
)

// effort bounds what the pieces, joins and measurements of a pattern make together in all its
// sizes. It is told once, at the piece that goes beyond.
func (r *reader) effort(p *schematic.Pattern) {
	sizes := r.sizes.Len()
	total := sizes * (joinCosts*len(p.Joins) + writtenCosts*len(p.Finished))
	if total > mostEffort {
		f := r.fail(p.SizesPos, "file/bounds", "too large to work out: %d joins and %d finished measurements, each in %d sizes", len(p.Joins), len(p.Finished), sizes)
		f.Fix = "put some of the sizes into a file of their own"
		return
	}
	made := map[string]int{}
	for i, q := range p.Pieces {
		e := made[q.MirrorOf]
		if q.MirrorOf == "" {
			for size := range sizes {
				e += pieceEffort(q, size)
			}
			made[q.Name] = e
		}
		total += e
		if total+sizes*i*i/piecesFor1 > mostEffort {
			r.piece = ""
			f := r.fail(q.Pos, "file/bounds", "too large to work out: the first %d of %d pieces, each in %d sizes, reach the limit", i+1, len(p.Pieces), sizes)
			f.Want = fmt.Sprintf("about %d short pieces, each size counted, or fewer long ones", mostEffort/pieceCosts/2)
			f.Fix = "put some of the pieces or sizes into a file of their own"
			return
		}
	}
}

// pieceEffort is the work of a piece in a size.
func pieceEffort(q *schematic.Piece, size int) int {
	if m := q.Motifs; m != nil {
		return pieceCosts + motifCosts*m.Columns.Int(size, 0)*m.Rows.Int(size, 0)
	}
	c := changes{size: size}
	c.walk(q.Sections)
	// every mark is held against every edge
	return pieceCosts + sectionCosts*c.sections + c.sections*c.sections/pairsFor1 + panelCosts*c.panels + c.changes/changesFor1 + c.marks*(sectionCosts+c.sections/4)
}

// changes counts what a piece's sections do.
type changes struct {
	size                             int
	sections, panels, changes, marks int
}

func (c *changes) walk(sections []schematic.Section) {
	for _, s := range sections {
		c.sections++
		l := schematic.LoadOf(s, c.size, func(schematic.Amount) int64 { return 0 })
		c.changes, c.panels, c.marks = c.changes+l.Changes, c.panels+l.Panels, c.marks+l.Marks
		for _, p := range s.Traits().Parts {
			c.sections++
			c.walk(p.Sections)
		}
	}
}
