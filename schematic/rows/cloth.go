package rows

import (
	"regexp"
	"strconv"
	"strings"

	"flatwright/schematic/stitch"
)

// cloth is the fabric in which rows are worked that name no stitch: a crochet stitch,
// or a plain knitted fabric as its right side looks. The zero value is not known.
type cloth struct {
	st         *stitch.Stitch // of crochet
	knit, purl int            // a rib; stockinette has no purl, its reverse no knit
	garter     bool
	unknown    bool // not even the craft is
}

var ribWords = regexp.MustCompile(`\b(?:k|knit) ?(\d{1,2})(?: ,)? (?:p|purl) ?(\d{1,2})\b`)

// clothOf finds the fabric that words name: htr, stocking stitch, k2, p2 rib. It
// reports false if they name none that is known.
func clothOf(words string, t stitch.Terms) (cloth, bool) {
	low := strings.Join(strings.Fields(strings.ReplaceAll(strings.ToLower(words), ",", " , ")), " ")
	if m := ribWords.FindStringSubmatch(low); m != nil {
		knit, _ := strconv.Atoi(m[1])
		purl, _ := strconv.Atoi(m[2])
		return cloth{knit: knit, purl: purl}, knit > 0 && purl > 0
	}
	stocking := strings.Contains(low, "stockinette") || strings.Contains(low, "stocking st") || strings.Contains(low, "st st")
	switch {
	case stocking && (strings.Contains(low, "reverse") || strings.Contains(low, "rev ")):
		return cloth{purl: 1}, true
	case stocking:
		return cloth{knit: 1}, true
	case strings.Contains(low, "garter"):
		return cloth{garter: true}, true
	}
	if s, ok := stitch.Worked(low, t); ok {
		return cloth{st: s}, true
	}
	return cloth{}, false
}

// words name the fabric, so that clothOf finds it.
func (c cloth) words(t stitch.Terms) string {
	stocking := "stockinette stitch"
	if t == stitch.UK {
		stocking = "stocking stitch"
	}
	switch {
	case c.st != nil:
		return c.st.Abbr(t)
	case c.garter:
		return "garter stitch"
	case c.knit > 0 && c.purl > 0:
		return "k" + strconv.Itoa(c.knit) + ", p" + strconv.Itoa(c.purl) + " rib"
	case c.purl > 0:
		return "reverse " + stocking
	case c.knit > 0:
		return stocking
	}
	return ""
}

// crochet is the stitch of a crochet fabric over so many stitches.
func (c cloth) crochet(used int) *stitch.Stitch {
	if used > 1 {
		if t := stitch.ByID(c.st.Plain().ID + "2tog"); t != nil {
			return t
		}
	}
	return c.st
}

// knitted is the stitch of a knitted fabric in the column-th place from the right edge,
// as the right side looks: of used stitches worked together, or one stitch of the
// two that are worked into one place.
func (c cloth) knitted(column int, rs, odd, round bool, used int, two bool) *stitch.Stitch {
	face := true // it shows a knit stitch on the right side
	switch {
	case c.garter && round:
		face = odd
	case c.garter:
		face = rs
	case c.knit+c.purl > 0:
		face = column%(c.knit+c.purl) < c.knit
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

// stuff is what rows are worked in that name no stitch: what words said last, or
// what the row below has most of; rows over chains alone are of the least stitch
// that makes a row.
func (r *runner) stuff(f *fabric) *stitch.Stitch {
	if r.cloth.st != nil {
		return r.cloth.st
	}
	k := f.main()
	if k == chainStitch {
		return stitch.ByID("sc")
	}
	return k
}

// in takes the fabric that an instruction names, and that it calls its rows rounds.
func (r *runner) in(n *Node) {
	if c := n.where().cloth; c != (cloth{}) {
		r.cloth = c
	}
	r.round = r.round || n.where().rounds
}

// cloth is the fabric that the words from a token on to here name.
func (p *parser) cloth(from int) cloth {
	var words []string
	for _, t := range p.t[from:p.i] {
		words = append(words, t.s)
	}
	c, _ := clothOf(strings.Join(words, " "), p.x.Terms)
	return c
}

// inCloth reads the words that name a fabric; it reports false if they name none.
func (p *parser) inCloth(n *Node) bool {
	const longest = 6
	from, best := p.i, 0
	for k := 0; k < longest && !p.done() && !p.is(".") && !p.is(";"); k++ {
		p.i++
		if c := p.cloth(from); c != n.where().cloth && c != (cloth{}) {
			n.told().cloth, best = c, p.i
		}
	}
	if p.i = max(best, from); best > 0 {
		p.eatAny("st", "stitch", "crochet", "rib", "ribbing")
	}
	return best > 0
}
