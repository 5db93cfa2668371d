package instructions

import (
	"regexp"
	"strconv"
	"strings"
	"sync"

	"flatwright/schematic/stitch"
)

var ribWords = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\b(?:k|knit) ?(\d{1,2})(?: ,)? (?:p|purl) ?(\d{1,2})\b`)
})

// ClothOf finds the fabric that words name: htr, stocking stitch, k2, p2 rib. It
// reports false if they name none that is known.
func ClothOf(words string, t stitch.Terms) (Cloth, bool) {
	low := strings.Join(strings.Fields(strings.ReplaceAll(strings.ToLower(words), ",", " , ")), " ")
	if m := ribWords().FindStringSubmatch(low); m != nil {
		knit, _ := strconv.Atoi(m[1])
		purl, _ := strconv.Atoi(m[2])
		return Cloth{Knit: knit, Purl: purl}, knit > 0 && purl > 0
	}
	stocking := strings.Contains(low, "stockinette") || strings.Contains(low, "stocking st") || strings.Contains(" "+low, " st st") || low == "stst"
	switch {
	case stocking && (strings.Contains(low, "reverse") || strings.Contains(low, "rev ")):
		return Cloth{Purl: 1}, true
	case stocking:
		return Cloth{Knit: 1}, true
	case strings.Contains(low, "garter"):
		return Cloth{Garter: true}, true
	}
	if s, ok := stitch.Worked(low, t); ok {
		return Cloth{St: s}, true
	}
	return Cloth{}, false
}

// Crochet is the stitch of a crochet fabric over so many stitches.
func (c Cloth) Crochet(used int) *stitch.Stitch {
	if used > 1 {
		if t := stitch.ByID(c.St.Plain().ID + "2tog"); t != nil {
			return t
		}
	}
	return c.St
}

// Knitted is the stitch of a knitted fabric in the column-th place from the right edge,
// as the right side looks: of used stitches worked together, or one stitch of the
// two that are worked into one place.
func (c Cloth) Knitted(column int, rs, odd, round bool, used int, two bool) *stitch.Stitch {
	face := true // it shows a knit stitch on the right side
	switch {
	case c.Garter && round:
		face = odd
	case c.Garter:
		face = rs
	case c.Knit+c.Purl > 0:
		face = column%(c.Knit+c.Purl) < c.Knit
	}
	id := "p"
	switch knit := face == rs; {
	case used > 1 && knit:
		id = "k2tog"
	case used > 1:
		id = "p2tog"
	case two && knit:
		id = "kfb"
	case two:
		id = "pfb"
	case knit:
		id = "k"
	}
	return stitch.ByID(id)
}
