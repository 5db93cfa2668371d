package print

import (
	"slices"
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
	case s.Count.IsZero() || !count.above(1):
		w.say("Place a marker for the %s.", what)
		return
	}
	unit := "st"
	if s.Along {
		unit = "row"
	}
	text := "Place " + w.some(count) + " markers for the " + what + "s"
	if n := w.at(s.Inset); !s.Inset.IsZero() {
		text += ", " + w.sts(n) + " in from the edge"
	}
	if n := w.at(s.First); !s.First.IsZero() {
		text += ", the first after " + w.line(n) + " " + word(unit, n)
	}
	if n := w.at(s.Apart); !s.Apart.IsZero() {
		text += ", then " + w.line(n) + " " + word(unit, n) + " apart"
	}
	w.say("%s.", text)
}

// plainWords is a name as it can stand in a row: up to three words of letters that mean
// nothing else there; else nothing.
func plainWords(s string) string {
	all := strings.Fields(strings.ToLower(s))
	means := func(word string) bool {
		_, only := stitch.Only(word)
		return only || strings.ContainsFunc(word, func(r rune) bool { return !unicode.IsLetter(r) })
	}
	if len(all) > 3 || slices.ContainsFunc(all, means) {
		return ""
	}
	return strings.Join(all, " ")
}
