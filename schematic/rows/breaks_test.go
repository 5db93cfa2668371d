package rows

import (
	"fmt"
	"os"
	"slices"
	"sort"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/long"
	"flatwright/schematic/rows/instructions"

	"flatwright/schematic/stitch"
)

// broken is a correct text with one thing broken.
type broken struct {
	kind string
	line int
	was  string
	now  string
	src  string
}

// The kinds of break that keep every count, which a reader of the text alone can't
// find: told apart, with how many are found all the same.
var keeping = map[string]bool{
	"stitch for another alike": true, "turning chain": true, "spacing of shaping": true, "rows at the end": true, "side said once": true, "rows worked even": true,
}

// breaks gives every way to break a text in one place, of each kind.
func breaks(c corpusText) []broken {
	x := Read(c.name, c.src, c.options)
	lines := strings.Split(string(c.src), "\n")
	var out []broken
	put := func(kind string, l *Line, from, to int, now string) {
		n := l.At.Line - 1
		r := []rune(lines[n])
		if from < 1 || to-1 > len(r) {
			return
		}
		mended := string(r[:from-1]) + now + string(r[to-1:])
		all := append(append(append([]string(nil), lines[:n]...), mended), lines[n+1:]...)
		out = append(out, broken{kind: kind, line: l.At.Line, was: lines[n], now: mended, src: strings.Join(all, "\n")})
	}
	for _, s := range x.Sections {
		for li, l := range s.Lines {
			lastLine := li == len(s.Lines)-1
			for _, m := range s.Lines[li+1:] {
				lastLine = lastLine || m.Label == nil || m.Label.Next
			}
			measured, shaped := false, false
			for _, n := range l.Body {
				switch n := n.(type) {
				case *instructions.Measure:
					measured = true
				case *instructions.Even:
					measured = measured || n.Length != nil
				case *instructions.RepeatRows:
					measured, shaped = measured || n.Length != nil, shaped || n.Every.All > 0
				case *instructions.Shape:
					measured, shaped = measured || n.Length != nil, true
				}
			}
			if measured {
				continue
			}
			inStated := func(t instructions.Word) bool {
				for _, g := range l.Stated {
					if t.Col >= g.At.Col && t.End <= g.At.End {
						return true
					}
				}
				return false
			}
			inLabel := func(t instructions.Word) bool { return l.Label != nil && t.End <= l.Label.At.End }
			if l.Label != nil && !l.Label.Next && !lastLine && li > 0 {
				n := l.At.Line - 1
				all := append(append([]string(nil), lines[:n]...), lines[n+1:]...)
				out = append(out, broken{kind: "row dropped", line: l.At.Line, was: lines[n], now: "(no line)", src: strings.Join(all, "\n")})
			}
			for i, t := range l.Words {
				prev, next := instructions.Word{}, instructions.Word{}
				if i > 0 {
					prev = l.Words[i-1]
				}
				if i+1 < len(l.Words) {
					next = l.Words[i+1]
				}
				switch {
				case t.Kind == 'n':
					kind := "number in a row"
					spaceSize := prev.S == "-" && t.Glued && i > 1 && l.Words[i-2].S == "ch" || next.S == "-" && next.Glued
					switch {
					case spaceSize:
						kind = "chain space"
						if !inStated(t) && (next.S == "," || next.S == ")" || next.S == ".") || i+2 < len(l.Words) && l.Words[i+1].S == "-" && (i+3 >= len(l.Words) || l.Words[i+3].S != "sp" && l.Words[i+3].S != "sps") {
							kind = "turning chain" // top of ch-3
						}
					case inStated(t):
						kind = "stated count"
					case inLabel(t) && l.Label.Next:
						kind = "rows worked even"
						if shaped {
							kind = "rows worked"
						}
					case inLabel(t):
						kind = "row number"
						if prev.S == "-" && lastLine {
							kind = "rows at the end"
						}
					case next.S == "times" || next.S == "more" || next.S == "x" || prev.S == "last" || next.S == "rows" && !shaped && l.Label == nil && prev.S != "next":
						kind = "repeat"
						if next.S == "rows" {
							kind = "rows worked even"
						}
					case prev.S == "every":
						kind = "spacing of shaping"
					case prev.S == "row" || prev.S == "rows" || prev.S == "rnd" || i > 1 && prev.S == "and" && l.Words[i-2].Kind == 'n':
						kind = "reference to a row"
					case prev.S == "ch" || next.S == "ch" && (prev.S == ":" || prev.S == "," || prev.S == "("):
						kind = "chain"
						atStart := i > 1 && (l.Words[i-2].S == ":" || prev.S == ":" || strings.Contains(")-", l.Words[i-2].S) && l.Label != nil && l.Words[i-2].Col <= l.Label.At.End+1)
						first := instructions.Word{}
						for _, q := range l.Words[i+1:] {
							if q.S != "ch" && q.S != "," {
								first = q
								break
							}
						}
						switch {
						case l.Label == nil && strings.Contains(l.Src, "ring") && !strings.Contains(l.Src, "twist") || strings.HasSuffix(strings.TrimSpace(l.Src), "join."):
							kind = "turning chain" // a ring of any chains
						case atStart, first.S == "turn", strings.Contains(prevWords(l.Words, i), "( 3 ch"):
							kind = "turning chain"
						}
					}
					if kind == "number in a row" && (prev.S == "counts" || prev.S == "as") {
						continue
					}
					put(kind, l, t.Col, t.End, bump(t))
					if t.Num.By != nil && kind != "turning chain" {
						put("size dropped", l, t.Col, t.End, dropOne(t.S))
					}
				case t.Kind == 'w' && t.Num.All > 0 && next.S == "ch":
					put("place", l, t.Col, t.End, ordinal(t.Num.All+1))
				case t.Kind == 'w' && (t.S == "rs" || t.S == "ws") && inLabel(t) && li > 0:
					put(sideKind(s, l), l, t.Col, t.End, map[string]string{"rs": "WS", "ws": "RS"}[t.S])
				case t.Kind == 'w' && !inLabel(t) && !inStated(t):
					st, ok := stitch.Lookup(t.S, x.Terms)
					if !ok || st.Uses != 1 || st.Makes != 1 || st.ID == "sl" || next.S == "sp" || prev.S == "sp" || prev.S == "-" || st.ID == "slst" {
						continue
					}
					if prev.S == "as" || prev.S == "first" && next.S == ")" || prev.S == "to" || prev.S == "each" || prev.S == "next" || prev.S == "of" || i > 1 && l.Words[i-2].S == "as" ||
						prev.Kind == 'n' && i > 1 && (l.Words[i-2].S == "next" || l.Words[i-2].S == "last" || l.Words[i-2].S == "first" || l.Words[i-2].S == "skip" || l.Words[i-2].S == "sk" || l.Words[i-2].S == "of") ||
						prev.S == "last" || prev.S == "first" || prev.S == "skip" || prev.S == "sk" || prev.S == "same" || prev.S == "and" && i > 1 && l.Words[i-2].S == "knit" {
						continue // it names a place
					}
					other := map[string]string{"sc": "hdc", "hdc": "dc", "dc": "hdc", "tr": "dc", "k": "p", "p": "k"}[st.ID]
					if other != "" {
						put("stitch for another alike", l, t.Col, t.End, stitch.ByID(other).Abbr(x.Terms))
					}
					switch st.ID {
					case "sc", "hdc", "dc", "tr":
						put("stitch for one that takes more", l, t.Col, t.End, stitch.ByID(st.ID+"2tog").Abbr(x.Terms))
					case "k", "p":
						if next.Kind != 'n' && t.S != "knit" && t.S != "purl" {
							put("stitch for one that takes more", l, t.Col, t.End, st.ID+"2tog")
						}
					}
				case t.Kind == 'w' && !inLabel(t) && strings.HasSuffix(t.S, "2tog"):
					put("stitch for one that takes more", l, t.Col, t.End, strings.TrimSuffix(t.S, "2tog")+"3tog")
				}
			}
		}
	}
	return out
}

// sideKind tells a side that stands alone in its section apart: nothing speaks
// against another one.
func sideKind(s *Section, l *Line) string {
	at := slices.Index(s.Lines, l)
	for i, m := range s.Lines {
		if m == l || m.Label == nil || m.Label.Side == 0 {
			continue
		}
		anew := false // between them the work begins along an edge
		for _, k := range s.Lines[min(at, i)+1 : max(at, i)+1] {
			anew = anew || worksAnew(k.Body)
		}
		if !anew {
			return "right and wrong side"
		}
	}
	return "side said once"
}

func prevWords(t []instructions.Word, i int) string {
	var b strings.Builder
	for k := max(0, i-3); k < min(len(t), i+2); k++ {
		b.WriteString(t[k].S + " ")
	}
	return b.String()
}

func ordinal(n int) string {
	return fmt.Sprint(n) + map[int]string{1: "st", 2: "nd", 3: "rd"}[n] + map[bool]string{true: "th"}[n > 3]
}

// bump makes the last number of a line of numbers one greater.
func bump(t instructions.Word) string {
	r := []rune(t.S)
	end := len(r)
	for end > 0 && (r[end-1] < '0' || r[end-1] > '9') {
		end--
	}
	from := end
	for from > 0 && r[from-1] >= '0' && r[from-1] <= '9' {
		from--
	}
	return string(r[:from]) + fmt.Sprint(number(string(r[from:end]))+1) + string(r[end:])
}

// dropOne leaves one size out of a line of numbers.
func dropOne(s string) string {
	if i := strings.LastIndexAny(s, ",:"); i >= 0 {
		j := strings.IndexAny(s[i+1:], ")]")
		return s[:i] + s[i+1+j:]
	}
	return s[:strings.IndexAny(s, "([")-1]
}

// How many breaks are found: at least 95 in a hundred over all, 90 of each kind.
func TestBreaksOfCorrectTextsAreFound(t *testing.T) {
	type tally struct{ made, found int }
	one, near, nth := 0, 0, 0
	kinds := map[string]*tally{}
	var missed []string
	for _, c := range corpus(t) {
		for _, b := range breaks(c) {
			if nth++; !long.Some(nth, 5) {
				continue
			}
			k := kinds[b.kind]
			if k == nil {
				k = &tally{}
				kinds[b.kind] = k
			}
			k.made++
			rep := Check(Read(c.name, []byte(b.src), c.options), c.options)
			if len(rep.Findings) > 0 {
				k.found++
				if !keeping[b.kind] {
					if len(rep.Findings) == 1 {
						one++
					} else if os.Getenv("MANY") != "" {
						t.Logf("MANY %s %s:%d\n  %s\n  %s\n  %v", b.kind, c.name, b.line, b.was, b.now, rep.Findings)
					}
					if d := rep.Findings[0].Pos.Line - b.line; d >= 0 && d <= 2 {
						near++
					}
				}
			} else if !keeping[b.kind] {
				missed = append(missed, fmt.Sprintf("%s:%d %s\n      was %s\n      now %s", c.name, b.line, b.kind, b.was, b.now))
			}
		}
	}
	var names []string
	for k := range kinds {
		names = append(names, k)
	}
	sort.Strings(names)
	made, found := 0, 0
	for _, k := range names {
		v := kinds[k]
		if keeping[k] {
			continue
		}
		made, found = made+v.made, found+v.found
		t.Logf("%-34s %4d of %4d found (%.1f %%)", k, v.found, v.made, 100*float64(v.found)/float64(v.made))
		least := 0.9 * float64(v.made)
		if !long.Some(1, 2) { // of a sample, which falls otherwise with every line that is read otherwise
			least -= 2
		}
		assert.GreaterOrEqual(t, float64(v.found), least, k)
	}
	t.Logf("%-34s %4d of %4d found (%.1f %%)", "over all", found, made, 100*float64(found)/float64(made))
	t.Logf("of these, told as one finding: %d (%.1f %%); told on the broken line or the two after it: %d (%.1f %%)", one, 100*float64(one)/float64(found), near, 100*float64(near)/float64(found))
	assert.GreaterOrEqual(t, float64(found), 0.95*float64(made))
	assert.GreaterOrEqual(t, float64(one), 0.85*float64(found))
	for _, k := range names {
		if v := kinds[k]; keeping[k] {
			t.Logf("keeps every count: %-34s %4d of %4d found all the same", k, v.found, v.made)
		}
	}
	if os.Getenv("MISSED") != "" {
		for _, m := range missed {
			t.Log(m)
		}
	}
}

func number(s string) int {
	v, _ := strconv.Atoi(s)
	return v
}

// worksAnew reports whether a row is worked along an edge, into a ring or into held stitches.
func worksAnew(body []instructions.Item) bool {
	for _, n := range body {
		var places []instructions.Place
		switch n := n.(type) {
		case *instructions.PickUp, *instructions.CastOn:
			return true
		case *instructions.Stitch:
			places = n.Places
		case *instructions.Repeat:
			places = n.Places
		}
		for _, p := range places {
			if p.Kind == instructions.InRing || p.Kind == instructions.RowEnds || p.Unit.Word == "held" {
				return true
			}
		}
	}
	return false
}
