package alter

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/shaping"
	"flatwright/schematic/units"
)

// turns are the knit and purl stitches of a rib in words: knit 2, purl 2; k1, p1. by are both in one: 2 x 2, 1/1. parts is where words
// written as one part: k2p2.
var (
	turns = regexp.MustCompile(`(?i)\b(?:k|p|knit|purl) ?(\d+)`)
	by    = regexp.MustCompile(`(?i)\b([1-9]) ?(?:x|×|/|by|-by-) ?([1-9])\b.*\brib`)
	parts = regexp.MustCompile(`(?i)(\d)([kp])`)
)

// repeatOf is how many stitches of a rib are one repeat of it; 0 if its words do not say.
func repeatOf(stitch string) int {
	if m := by.FindStringSubmatch(stitch); m != nil {
		return int(m[1][0]-'0') + int(m[2][0]-'0')
	}
	switch name := strings.ToLower(stitch); { // common practice
	case strings.Contains(name, "single rib"):
		return 2
	case strings.Contains(name, "double rib"):
		return 4
	}
	sum, kinds := 0, map[byte]bool{}
	for _, m := range turns.FindAllStringSubmatch(parts.ReplaceAllString(stitch, "$1 $2"), -1) {
		n, err := strconv.Atoi(m[1])
		if err != nil || n > 99 {
			return 0
		}
		sum += n
		kinds[strings.ToLower(m[0])[0]] = true
	}
	if len(kinds) < 2 {
		return 0
	}
	return sum
}

// ribsKept tells of ribs whose stitches are a multiple, or so many more, in every size that is published and not as altered,
// and how to have both the rib and the fabric: so many more or fewer in the rib alone.
func ribsKept(p *schematic.Pattern, now *schematic.Garment) finding.List {
	var out finding.List
	was := map[finding.Pos][]int{}
	for i := range p.Sizes.Names {
		for _, m := range schematic.Work(p, i).Pieces {
			for _, s := range m.Steps {
				was[s.Section.Base().Pos] = append(was[s.Section.Base().Pos], s.After)
			}
		}
	}
	told := map[finding.Pos]bool{}
	for _, m := range now.Pieces {
		for i, s := range m.Steps {
			pos := s.Section.Base().Pos
			repeat, words := repeatIn(now.Pattern, s)
			over, same := alikeOver(was[pos], repeat)
			if !same || s.After%repeat == over || told[pos] {
				continue
			}
			told[pos] = true
			n, _, err := shaping.Whole(units.Int(int64(s.After)), shaping.Rule{Multiple: repeat, Plus: over, Least: 1})
			if err != nil {
				continue
			}
			out = append(out, finding.Finding{Kind: "alter/section", Severity: finding.Note, Pos: pos, Piece: m.Name,
				Message: fmt.Sprintf("%d sts of %s: in all sizes of the pattern it has a multiple of %s", s.After, words, multipleOf(repeat, over)),
				Fix:     inRibAlone(n, s.After, i == 0 || m.Steps[i-1].Rows == 0, rowOf(m))})
		}
	}
	return out
}

// repeatIn is the repeat of the rib that a section is worked in, and what it is called; 0 if it is none.
func repeatIn(p *schematic.Pattern, s schematic.Step) (int, string) {
	e, even := s.Section.(*schematic.Even)
	g := schematic.GaugeIn(p.Gauges, s.Gauge)
	if !even || !e.Rib || g == nil || s.Rows == 0 {
		return 0, ""
	}
	if e.Stitch != "" {
		return repeatOf(e.Stitch), e.Stitch
	}
	return repeatOf(g.Stitch), g.Stitch
}

// alikeOver is what is over after whole repeats, where it is as many in all counts; false if there is no repeat or it differs.
func alikeOver(counts []int, repeat int) (int, bool) {
	if repeat < 2 || len(counts) == 0 {
		return 0, false
	}
	for _, n := range counts {
		if n%repeat != counts[0]%repeat {
			return 0, false
		}
	}
	return counts[0] % repeat, true
}

func multipleOf(repeat, over int) string {
	if over == 0 {
		return strconv.Itoa(repeat)
	}
	return fmt.Sprintf("%d and %d more", repeat, over)
}

func rowOf(m *schematic.Made) string {
	if m.Round {
		return "round"
	}
	return "row"
}

// inRibAlone says how a rib of n stitches goes on from, or into, as many as the fabric has.
func inRibAlone(n, fabric int, first bool, each string) string {
	more, fewer := "increase", "decrease"
	rib := fmt.Sprintf("work the rib over %d", n)
	if first {
		rib = fmt.Sprintf("cast on %d", n)
	} else {
		more, fewer = fewer, more
	}
	change, by := more, fabric-n
	if by < 0 {
		change, by = fewer, -by
	}
	row := "its first " + each
	if first {
		row = "the last " + each + " of the rib"
	}
	return fmt.Sprintf("%s, and %s %d across %s", rib, change, by, row)
}
