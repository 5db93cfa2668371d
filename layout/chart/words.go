package chart

import (
	"flatwright/schematic/finding"
	"fmt"
	"slices"
	"strings"
)

// plural is n and a word, in the plural unless n is 1.
func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	if strings.HasSuffix(word, "ch") {
		word += "e"
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// title is what a row is called in words.
func (r *Row) title() string {
	word := "Row"
	if r.Round {
		word = "Round"
	}
	switch {
	case r.Held:
		return "Held stitches"
	case r.Base && r.Round:
		return "Ring"
	case r.Base:
		return "Foundation"
	case r.Number > 0:
		return fmt.Sprintf("%s %d", word, r.Number)
	case r.Name != "":
		return r.Name
	}
	return word
}

// words is a row for those who hear the chart: its side, then its stitches in the
// order of working, with what they are worked into.
func (w *Work) words(r int) string {
	row := &w.Rows[r]
	var parts []string
	last, n := "", 0
	flush := func() {
		if n > 0 {
			parts = append(parts, strings.Replace(last, "#", fmt.Sprint(n), 1))
		}
		n = 0
	}
	for i := 0; i < len(row.St); {
		k := 1
		for i+k < len(row.St) && sameFeet(&row.St[i], &row.St[i+k]) && row.St[i+k].Kind == row.St[i].Kind && row.St[i+k].Loop == row.St[i].Loop {
			k++
		}
		s := w.phrase(r, i, k)
		if k > 1 || s != last {
			flush()
		}
		if s == "" { // it is told with the stitch before it
			i += k
			continue
		}
		last = s
		if k > 1 {
			last = strings.Replace(s, "#", fmt.Sprint(k), 1)
			n = 1
			flush()
			last = ""
		} else {
			n++
		}
		i += k
	}
	flush()
	side := ""
	if !row.Base && !row.Round {
		side = ", right side"
		if row.Wrong {
			side = ", wrong side"
		}
	}
	text := row.title() + side + ": " + strings.Join(repeats(parts), ", ")
	if row.Joined {
		text += ", joined with a slip stitch"
	}
	text += "; " + plural(row.counted(), "stitch")
	if row.Amiss != "" {
		text += " (" + row.Amiss + ")"
	}
	return text + "."
}

// repeats says what comes three times or more one after the other as a repeat, the shortest
// that covers most, so that a long round is told in a few words.
func repeats(parts []string) []string {
	const longest = 8
	var out []string
	for i := 0; i < len(parts); {
		period, times := 1, 1
		for p := 1; p <= longest && i+3*p <= len(parts); p++ {
			k := 1
			for i+(k+1)*p <= len(parts) && slices.Equal(parts[i:i+p], parts[i+k*p:i+(k+1)*p]) {
				k++
			}
			if k > 2 && p*k > period*times {
				period, times = p, k
			}
		}
		if times > 1 {
			out = append(out, fmt.Sprintf("(%s) %d times", strings.Join(parts[i:i+period], ", "), times))
		} else {
			out = append(out, parts[i])
		}
		i += period * times
	}
	return out
}

func sameFeet(a, b *St) bool {
	return len(a.Feet) == 1 && len(b.Feet) == 1 && a.Feet[0] == b.Feet[0] && !a.Turn && !b.Turn
}

// phrase is k stitches from the i-th on; # stands for how many in a row are alike.
func (w *Work) phrase(r, i, k int) string {
	s := &w.Rows[r].St[i]
	switch {
	case s.Break:
		return plural(w.Rows[r].Left, "stitch") + " left out of the drawing"
	case s.Side:
		return fmt.Sprintf("ch %d", s.Chain)
	case s.Turn && s.Kind != nil:
		return fmt.Sprintf("chain %d as first %s", s.Chain, s.Kind.Abbr(w.Terms))
	case s.Turn:
		return fmt.Sprintf("chain %d", s.Chain)
	case s.Kind == nil && s.Close != nil:
		return fmt.Sprintf("ch %d and %s into the first stitch", s.Chain, s.Close.Abbr(w.Terms))
	case s.Kind == nil:
		return fmt.Sprintf("ch %d", s.Chain)
	}
	if s.Cross != nil {
		if s.At > 0 {
			return ""
		}
		return s.Kind.Abbr(w.Terms) + " (" + s.Cross.Work() + ")"
	}
	if s.Kind == behind {
		return ""
	}
	if s.Kind == unread {
		return "# not read"
	}
	if s.Idle {
		return "# not worked"
	}
	text := "# " + s.Kind.Abbr(w.Terms)
	if s.Under && (i == 0 || !w.Rows[r].St[i-1].Under) {
		text = "along the other side of the chain " + text
	}
	if s.Colour != "" {
		text += " in " + s.Colour
	}
	switch s.Loop {
	case BackLoop:
		text += " in back loop"
	case FrontLoop:
		text += " in front loop"
	case LowerDown:
		text += " further down"
	}
	if r > 0 && len(s.Feet) == 1 && !w.Rows[r].Edge {
		f := &w.Rows[r-1].St[s.Feet[0]]
		if f.arch() {
			text += fmt.Sprintf(" in ch-%d space", f.Chain)
		} else if k > 1 {
			text += " in one stitch"
		}
	}
	return text
}

// describe is the whole chart in words, row by row, each in the given ones.
func (w *Work) describe(words func(r int) string) string {
	var b strings.Builder
	for r := range w.Rows {
		if r > 0 {
			b.WriteByte(' ')
		}
		if g := w.Rows[r].leftOut(); g != "" {
			b.WriteString(finding.Capital(g) + ". ")
		}
		b.WriteString(words(r))
	}
	if g := w.ending(); g != "" {
		b.WriteString(" " + finding.Capital(g) + ".")
	}
	return b.String()
}
