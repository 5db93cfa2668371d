package rows

import (
	"fmt"
	"strings"

	"flatwright/schematic"
)

// taken is how many stitches of the k-th run, or part, a start or a join takes up.
func (w *printer) taken(s schematic.Section, k int) nums {
	return w.each(func(i int) int {
		if st := w.step(i, s, w.part); st != nil && k < len(st.Taken) {
			return st.Taken[k]
		}
		return -1
	})
}

// counted is a list of so many stitches of this and that; the sum alone if they are not
// what the row has.
func (w *printer) counted(of int, one func(k int) (n nums, words string), after nums, sum string) string {
	var all []string
	have := w.zero()
	for k := range of {
		n, words := one(k)
		for i := range have {
			have[i] += max(n[i], 0)
		}
		if anyAbove(n, 0) {
			all = append(all, fmt.Sprintf(words, w.some(n)))
		}
	}
	for i := range have {
		if after[i] >= 0 && have[i] != after[i] {
			return fmt.Sprintf(sum, w.line(after))
		}
	}
	return strings.Join(all, ", ")
}

// heldWords names what a start from live stitches takes up.
func (w *printer) heldWords(s *schematic.Held, after nums) string {
	return w.counted(len(s.From), func(k int) (nums, string) {
		n, p := w.taken(s, k), s.From[k]
		of := part(p.Piece)
		if p.Part != "" {
			of += ", " + part(p.Part)
		}
		switch {
		case p.Piece == "":
			return n, "add %s sts"
		case of == "" || sized(of):
			return n, "%s held sts"
		}
		return n, "%s held sts of " + of
	}, after, "%s held sts")
}

// joined names the parts that a join takes up.
func (w *printer) joined(s *schematic.JoinParts, after nums) string {
	return w.counted(len(s.Of), func(k int) (nums, string) {
		n, of := w.taken(s, k), part(s.Of[k].Part)
		switch {
		case s.Of[k].Part == "":
			return n, "add %s sts"
		case of == "" || sized(of):
			return n, "%s sts"
		}
		return n, "%s sts of " + of
	}, after, "%s sts")
}

// sized reports whether a name has a number in words in it, which would be read as one.
func sized(name string) bool {
	for _, word := range strings.Fields(strings.ToLower(name)) {
		if _, ok := numerals[word]; ok {
			return true
		}
	}
	return false
}

// panels marks the lines between the panels of a row.
func (w *printer) panels(s *schematic.Panels) {
	names, counts := make([]string, len(s.Of)), make([]nums, len(s.Of))
	for k, p := range s.Of {
		names[k], counts[k] = p.Name, w.clean(w.at(p.Stitches))
	}
	w.markers(names, counts)
}

// heldPanels marks the lines between the panels that a start makes of its runs. Stitches
// of no panel belong to the one that is listed after them, or at the end of the list to the last.
func (w *printer) heldPanels(s *schematic.Held) {
	var names []string
	var counts []nums
	more := w.zero()
	for k, p := range s.From {
		n := w.clean(w.taken(s, k))
		for i := range n {
			n[i] += more[i]
		}
		if more = n; p.Panel != "" {
			names, counts, more = append(names, p.Panel), append(counts, n), w.zero()
		}
	}
	if len(names) == 0 {
		return
	}
	for i := range more {
		counts[len(counts)-1][i] += more[i]
	}
	w.markers(names, counts)
}

// markers prints the placing of markers between panels, if they make up the row.
func (w *printer) markers(names []string, counts []nums) {
	var all []string
	sum := w.zero()
	for k, n := range counts {
		for i := range n {
			sum[i] += max(n[i], 0)
		}
		if !anyAbove(n, 0) {
			continue
		}
		text := w.some(n) + " " + word("st", n)
		if name := part(names[k]); name != "" && !sized(name) {
			text += " for " + name
		}
		all = append(all, text)
	}
	for i := range sum {
		if sum[i] >= 0 && sum[i] != w.count[i] {
			return
		}
	}
	w.say("Place markers between the panels: %s.", strings.Join(all, ", "))
}

// shortRows says over how many stitches short rows are worked, and how much sooner
// each pair of them turns.
func (w *printer) shortRows(s *schematic.ShortRows, rows, after nums) {
	if !anyAbove(rows, 0) {
		return
	}
	w.base()
	text := fmt.Sprintf("Work %s short rows", w.some(rows))
	over := w.each(func(i int) int {
		if rows[i] <= 0 {
			return 0
		}
		return min(s.Over.Int(w.size(i), after[i]), after[i])
	})
	switch s.At {
	case schematic.LeftEdge, schematic.RightEdge:
		text += fmt.Sprintf(" over %s sts %s", w.some(over), w.edge(s.At, ""))
	default:
		text += fmt.Sprintf(" over the middle %s sts", w.some(over))
	}
	step := w.each(func(i int) int {
		if rows[i] < 3 {
			return 0
		}
		return s.Step.Int(w.size(i), 0)
	})
	if anyAbove(step, 0) {
		text += fmt.Sprintf(", turning %s sts sooner each time", w.some(step))
	}
	if c := w.changed(); c != "" {
		text += "," + c
	}
	w.say("%s. (%s sts)", text, w.line(after))
	w.worked(rows, after)
}

// mitre says what is taken from the middle of the row, or put there.
func (w *printer) mitre(s *schematic.Mitre, rows, before, after nums) {
	w.base()
	sh := schematic.Shaping{Increase: s.Increase, By: s.By, At: schematic.Across, Every: s.Every, Times: s.Times}
	by, times := w.clean(w.at(s.By)), w.times(&sh)
	for i, n := range minus(after, before) {
		if after[i] >= 0 && n != sign(&sh)*by[i]*times[i] {
			w.change("over "+w.some(rows)+" "+w.rowWord(rows), rows, before, after)
			return
		}
	}
	runs := w.runs(&sh)
	if len(runs) == 0 {
		w.even(rows, after)
		return
	}
	w.say("%s %s %s at the middle %s, over %s %s%s. (%s sts)", title(verb(&sh)), w.line(by), word("st", by), strings.Join(runs, ", then "),
		w.some(rows), w.rowWord(rows), w.changed(), w.line(after))
	w.worked(rows, after)
}

// pickRate is how many stitches are picked up in how many rows.
func pickRate(s *schematic.PickUp) string {
	switch {
	case s.Alternate:
		return fmt.Sprintf(" at the rate of %d in each short row and %d in each tall row", s.Short, s.Tall)
	case s.Of <= 1:
		return fmt.Sprintf(" at the rate of %d in each row", max(s.Pick, 1))
	}
	return fmt.Sprintf(" at the rate of %d in every %d rows", s.Pick, s.Of)
}

// along names the edges onto which a band is worked, each with its rate where it is not
// one for one.
func along(edges []schematic.EdgeRate) string {
	var all []string
	for _, e := range edges {
		text := "along " + part(e.Edge)
		if e.Of > 1 {
			text += fmt.Sprintf(" at the rate of %d in every %d", e.Pick, e.Of)
		}
		all = append(all, text)
	}
	return strings.Join(all, " and ")
}
