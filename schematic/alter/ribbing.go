package alter

import (
	"cmp"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"flatwright/schematic"
	"flatwright/schematic/finding"
)

// turns are the knit and purl stitches of a rib in words: knit 2, purl 2; k1, p1. by are both in one: 2 x 2, 1/1. parts is where words
// written as one part: k2p2.
var (
	turns = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(?i)\b(?:k|p|knit|purl) ?(\d+)`) })
	by    = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`(?i)\b([1-9]) ?(?:x|×|/|by|-by-) ?([1-9])\b.*\brib`)
	})
	parts = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(?i)(\d)([kp])`) })
)

// repeatOf is how many stitches of a rib are one repeat of it; 0 if its words do not say.
func repeatOf(stitch string) int {
	if m := by().FindStringSubmatch(stitch); m != nil {
		return int(m[1][0]-'0') + int(m[2][0]-'0')
	}
	switch name := strings.ToLower(stitch); { // common practice
	case strings.Contains(name, "single rib"):
		return 2
	case strings.Contains(name, "double rib"):
		return 4
	}
	sum, kinds := 0, map[byte]bool{}
	for _, m := range turns().FindAllStringSubmatch(parts().ReplaceAllString(stitch, "$1 $2"), -1) {
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

// ribsOf are the multiples that the stitches of ribs, by their place in the file, are of their repeat, or so many more, in all sizes.
func ribsOf(p *schematic.Pattern) map[finding.Pos]schematic.Need {
	out := map[finding.Pos]schematic.Need{}
	for i := range p.Sizes.Names {
		for _, m := range schematic.Work(p, i).Pieces {
			for _, s := range m.Steps {
				pos, repeat := s.Section.Base().Pos, repeatIn(p, s)
				need := schematic.Need{Multiple: repeat, Plus: s.After % max(1, repeat)}
				if had, twice := out[pos]; twice && had != need {
					need = schematic.Need{}
				}
				out[pos] = need
			}
		}
	}
	return out
}

// repeatIn is the repeat of the rib that a section is worked in; 0 if it is none.
func repeatIn(p *schematic.Pattern, s schematic.Step) int {
	g := schematic.GaugeIn(p.Gauges, s.Gauge)
	switch {
	case !s.Section.Traits().Ribbed || g == nil || s.Rows == 0:
		return 0
	}
	return repeatOf(cmp.Or(s.Section.Base().Stitch, g.Stitch))
}
