package print

import (
	"fmt"
	"regexp"
	"strings"
	"sync"

	"flatwright/schematic/stitch"
)

// fabric is what rows are worked in: a stitch of crochet, which of the loops below it
// takes, and whether it is raised to the front and the back by turns; or a plain knitted
// fabric in US words. The zero value is knitting of no known fabric.
type fabric struct {
	st     *stitch.Stitch
	loop   string // " blo" or " flo"
	raised bool
	knit   string
}

var (
	ribWords = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`\b(?:k|knit) ?([1-9]\d?)(?: ,)? (?:p|purl) ?([1-9]\d?)\b`)
	})
	namedStitch = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`^(?:(?:double|half|irish|open) )?(?:moss|seed|linen|brioche|basketweave|trinity|rice|waffle|box|andalusian|daisy|star) stitch$`)
	}) // whose names differ from land to land
	raisedWords = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\b(?:raised|post|fp|bp|(?:fp|bp)[a-z]+)\b`) })
)

// fabricOf is the fabric of a section's own words, or of the gauge by that name.
func (w *printer) fabricOf(gauge, own string) fabric {
	if own == "" {
		if g := w.p.GaugeNamed(gauge); g != nil {
			own = g.Stitch
		}
	}
	low := strings.Join(strings.Fields(strings.ReplaceAll(strings.ToLower(own), ",", " , ")), " ")
	if s, ok := stitch.Worked(low, w.from); ok {
		return crocheted(s, low)
	}
	f := fabric{knit: knitted(low)}
	if f.knit == "" && w.from == w.o.Terms && namedStitch().MatchString(low) {
		f.knit = low
	}
	return f
}

func crocheted(s *stitch.Stitch, low string) fabric {
	f := fabric{st: s, raised: raisedWords().MatchString(low) && stitch.ByID("FP"+s.ID) != nil}
	switch {
	case strings.Contains(low, "back loop"), strings.Contains(low, "back-loop"):
		f.loop = " blo"
	case strings.Contains(low, "front loop"), strings.Contains(low, "front-loop"):
		f.loop = " flo"
	}
	return f
}

func knitted(low string) string {
	stocking := strings.Contains(low, "stockinette") || strings.Contains(low, "stocking st") || strings.Contains(low, "st st")
	switch m := ribWords().FindStringSubmatch(low); {
	case m != nil:
		return fmt.Sprintf("k%s, p%s rib", m[1], m[2])
	case stocking && (strings.Contains(low, "reverse") || strings.Contains(low, "rev ")):
		return "reverse stockinette stitch"
	case stocking:
		return "stockinette stitch"
	case strings.Contains(low, "garter"):
		return "garter stitch"
	}
	return ""
}

// words name the fabric; nothing if it is not known.
func (f fabric) words(t stitch.Terms) string {
	switch {
	case f.st != nil:
		return f.st.Abbr(t) + f.loop
	case t == stitch.UK:
		return strings.ReplaceAll(f.knit, "stockinette", "stocking")
	}
	return f.knit
}

// changed says in which fabric the next rows are worked, if the rows before them are
// worked in another one.
func (w *printer) changed() string {
	if words := w.fab.words(w.o.Terms); w.fab != w.said && words != "" {
		return " in " + words
	}
	return ""
}

// inFabric says in which fabric rows are worked even: in crochet always.
func (w *printer) inFabric() string {
	if w.fab.st != nil {
		return " in " + w.fab.words(w.o.Terms)
	}
	return w.changed()
}

// chains are the turning chain that begins a row of crochet; nothing in knitting.
func (w *printer) chains() string {
	switch {
	case w.fab.st == nil:
		return ""
	case w.o.Terms == stitch.UK:
		return fmt.Sprintf("%d ch, ", w.fab.st.Turn)
	}
	return fmt.Sprintf("Ch %d, ", w.fab.st.Turn)
}

// endOf is how a row of crochet ends.
func (w *printer) endOf() string {
	switch {
	case w.fab.st == nil:
		return ""
	case w.round:
		return ", join"
	}
	return ", turn"
}

// post is the stitch in work around the post below.
func (w *printer) post(side string) string { return stitch.ByID(side + w.fab.st.ID).Abbr(w.o.Terms) }

// offWord is what taking stitches off is called, and what has been done to them.
func (w *printer) offWord() (do, done string) {
	if w.o.Terms == stitch.UK {
		return "Cast off", "cast off"
	}
	return "Bind off", "bound off"
}
