package print

import (
	"fmt"
	"slices"

	"flatwright/schematic"
)

// makingUp writes how the pieces are sewn together, in the order of the joins.
func (w *printer) makingUp() {
	if len(w.p.Joins) == 0 {
		return
	}
	w.say("\n# Making up")
	for i := range w.p.Joins {
		w.say("%s", w.seam(&w.p.Joins[i]))
	}
	w.say("Weave in the ends.")
}

// seam is one join as a sentence.
func (w *printer) seam(j *schematic.Join) string {
	sew, into := edges(j.Sew), edges(j.Into)
	switch j.How {
	case schematic.StitchToStitch:
		return fmt.Sprintf("Sew %s to %s, stitch for stitch.", sew, into)
	case schematic.RowsToStitches:
		return fmt.Sprintf("Sew %s to %s, %d %s to every %d %s.", sew, into, j.A, word("stitch", nums{j.A}), j.B, word("row", nums{j.B}))
	case schematic.Eased:
		return fmt.Sprintf("Ease %s into %s%s, and sew.", sew, into, w.ease(j))
	case schematic.Gathered:
		return fmt.Sprintf("Gather %s to the length of %s, and sew.", sew, into)
	case schematic.AtFold:
		return fmt.Sprintf("Fold %s in half, and sew its two halves together.", sew)
	}
	return fmt.Sprintf("Sew %s to %s.", sew, into)
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

func edges(chain []string) string {
	var all []string
	for _, e := range chain {
		all = append(all, "the "+plain(e))
	}
	return list(all)
}
