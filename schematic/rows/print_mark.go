package rows

import (
	"strings"
	"unicode"

	"flatwright/schematic"
	"flatwright/schematic/stitch"
)

// mark says what is marked, how often and where, as far as the pattern says it.
func (w *printer) mark(s *schematic.Mark) {
	what, count := plainWords(s.What), w.at(s.Count)
	switch {
	case what == "" || what == "marker":
		w.say("Place a marker here.")
		return
	case s.Count.IsZero() || !anyAbove(count, 1):
		w.say("Place a marker for the %s.", what)
		return
	}
	unit, text := "sts", "Place %s markers for the "+what+"s"
	args := []any{w.some(count)}
	if s.Along {
		unit = "rows"
	}
	if !s.Inset.IsZero() {
		text, args = text+", %s sts in from the edge", append(args, w.line(w.at(s.Inset)))
	}
	if !s.First.IsZero() {
		text, args = text+", the first after %s "+unit, append(args, w.line(w.at(s.First)))
	}
	if !s.Apart.IsZero() {
		text, args = text+", then %s "+unit+" apart", append(args, w.line(w.at(s.Apart)))
	}
	w.say(text+".", args...)
}

// plainWords is a name as it can stand in a row: up to three words of letters that mean
// nothing else there; else nothing.
func plainWords(s string) string {
	all := strings.Fields(strings.ToLower(s))
	for _, word := range all {
		if _, only := stitch.Only(word); only || strings.ContainsFunc(word, func(r rune) bool { return !unicode.IsLetter(r) }) {
			return ""
		}
	}
	if len(all) > 3 {
		return ""
	}
	return strings.Join(all, " ")
}

// end is how the last row ends: crochet is fastened off, knitting bound off.
func (w *printer) end() string {
	if !w.knit {
		return "Fasten off"
	}
	return w.offWord() + " all sts"
}
