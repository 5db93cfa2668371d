package print

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
)

// MakingUp is how the pieces are sewn together, a sentence for each join in their order; nothing
// if nothing is joined. Of o it takes the size alone.
func MakingUp(p *schematic.Pattern, gs []*schematic.Garment, o Options) []string {
	return newPrinter(p, gs, o).makingUp()
}

func (w *printer) makingUp() []string {
	if len(w.p.Joins) == 0 {
		return nil
	}
	var out []string
	for i := range w.p.Joins {
		out = append(out, w.seam(&w.p.Joins[i]))
	}
	return append(out, "Weave in the ends.")
}

// seam is one join as a sentence.
func (w *printer) seam(j *schematic.Join) string {
	sew, into := w.seamEdges(j.Sew), w.seamEdges(j.Into)
	if len(j.Sew) == 1 && len(j.Into) == 1 {
		if q := w.pieceOf(j.Into[0]); q != nil && q == w.pieceOf(j.Sew[0]) {
			into = "its " + strings.Join(w.edgeWords(j.Into[0], q)[len(strings.Fields(plain(q.Name))):], " ")
		}
	}
	switch j.How {
	case schematic.StitchToStitch:
		return fmt.Sprintf("Sew %s to %s, stitch for stitch.", sew, into)
	case schematic.RowsToStitches:
		return fmt.Sprintf("Sew %s to %s, %d %s to every %d %s.", sew, into, j.A, word("st", nums{j.A}), j.B, word("row", nums{j.B}))
	case schematic.Eased:
		return fmt.Sprintf("Ease %s into %s%s, and sew.", sew, into, w.ease(j))
	case schematic.Gathered:
		return fmt.Sprintf("Gather %s to the length of %s, and sew.", sew, into)
	case schematic.InPlaces:
		return fmt.Sprintf("Sew %s to %s in %d places, evenly spread.", sew, into, j.Places)
	case schematic.AtFold:
		return fmt.Sprintf("Fold %s in half, and sew its two halves together.", sew)
	}
	return fmt.Sprintf("Sew %s to %s.", sew, into)
}

// motifs says how many are made, and how they are joined.
func (w *printer) motifs(m *schematic.Motifs) {
	whole := w.each(func(i int) int { n, _ := m.Count(w.size(i)); return n })
	half := w.each(func(i int) int { _, n := m.Count(w.size(i)); return n })
	var all []string
	if whole.above(0) {
		all = append(all, w.line(whole)+" "+word("motif", whole))
	}
	if half.above(0) {
		all = append(all, w.line(half)+" half "+word("motif", half))
	}
	w.say("Make %s, and sew them together as the drawing shows.", list(all))
}

// ease is by how much the sewn edge is longer, in the pattern's unit; one length if all
// sizes print the same.
func (w *printer) ease(j *schematic.Join) string {
	var all []string
	for i := range w.gs {
		l, ok := j.Ease.At(w.size(i))
		if !ok {
			return ""
		}
		all = append(all, w.p.Steps.Format(l, w.p.Units))
	}
	if len(all) == 0 {
		return ""
	}
	line := all[0]
	if len(slices.Compact(slices.Clone(all))) > 1 {
		line = w.p.Sizes.Line(all)
	}
	return fmt.Sprintf(" over %s %s", line, w.p.Units)
}

func (w *printer) seamEdges(chain []string) string {
	var all []string
	for _, e := range chain {
		all = append(all, w.seamEdge(e))
	}
	return list(all)
}

// seamEdge is an edge of one piece, or of each if several are made.
func (w *printer) seamEdge(ref string) string {
	q := w.pieceOf(ref)
	if q != nil && w.several(q) {
		return "each " + strings.Join(w.edgeWords(ref, q), " ")
	}
	return "the " + strings.Join(w.edgeWords(ref, q), " ")
}

// pieceOf is the piece whose edge is called so, if there is one: that with the longest name, Front band before Front.
func (w *printer) pieceOf(ref string) (best *schematic.Piece) {
	words := strings.Fields(plain(ref))
	for _, q := range w.p.Pieces {
		name := strings.Fields(plain(q.Name))
		if len(words) > len(name) && strings.EqualFold(strings.Join(words[:len(name)], " "), strings.Join(name, " ")) && (best == nil || len(q.Name) > len(best.Name)) {
			best = q
		}
	}
	return best
}

// edgeWords are the words for an edge of a piece. One that its edge names again (Sleeve sleeve top) is named once.
func (w *printer) edgeWords(ref string, q *schematic.Piece) []string {
	words := strings.Fields(plain(ref))
	if q == nil {
		return words
	}
	name := strings.Fields(plain(q.Name))
	if rest := words[len(name):]; len(rest) > 1 && strings.EqualFold(rest[0], name[len(name)-1]) {
		words = append(slices.Clone(name), rest[1:]...)
	}
	return words
}

// several reports whether a piece is made more than once in every size that is printed.
func (w *printer) several(q *schematic.Piece) bool {
	for i := range w.gs {
		if q.Make.Int(w.size(i), 1) < 2 {
			return false
		}
	}
	return true
}
