package print

import "fmt"

// even prints rows worked even.
func (w *printer) even(rows, after nums) {
	if !rows.above(0) {
		return
	}
	if w.found != nil && rows.least(1) {
		one := rows.with(rows, func(n, _ int) int { return min(n, 1) })
		w.first(one, after)
		if rows = rows.minus(one); !rows.above(0) {
			return
		}
	}
	w.base()
	if body := w.evenRow(after); body != "" && after.least(1) && w.together() && (rows.least(2) || rows.least(1) && !rows.above(1)) { // not Rows 7-7 (8, 9)
		w.say("%s: %s%s%s. (%s)", w.label(rows), w.chains(), body, w.endOf(), w.ofStitch(after))
	} else {
		w.say("Work %s even%s. (%s)", w.rowsOf(rows), w.inFabric(), w.sts(after))
	}
	w.worked(rows, after)
}

// evenRow is a row of crochet worked even; nothing where one row can't tell all of them:
// in knitting, and over an odd number of raised stitches, which change places in turning.
func (w *printer) evenRow(after nums) string {
	if w.fab.st == nil {
		return ""
	}
	over := "across"
	if w.round {
		over = "around"
	}
	if !w.fab.raised {
		return fmt.Sprintf("%s%s in each st %s", w.abbr(), w.fab.loop, over)
	}
	for _, n := range after {
		if n > 0 && n%2 != 0 {
			return ""
		}
	}
	return fmt.Sprintf("*%s around next st, %s around next st; rep from * %s", w.post("FP"), w.post("BP"), over)
}
