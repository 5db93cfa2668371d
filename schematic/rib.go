package schematic

import (
	"cmp"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"sync"

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

// RibRepeat is how many stitches one repeat of a rib takes, by its words: 4 for "knit 2, purl 2 rib". It is 0 where they do not say.
func RibRepeat(stitch string) int {
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

// ribInRound tells a rib in the round whose repeat leaves stitches over: where the round closes, two columns of one kind meet (common practice).
// A flat rib may end in any stitch, and panels share their round among them.
func (w *worker) ribInRound(s *Even) {
	st := w.cur
	if !st.round || len(st.blocks) > 1 {
		return
	}
	n, repeat := st.count(), RibRepeat(cmp.Or(s.Stitch, st.gauge.Stitch))
	if repeat < 2 || n%repeat == 0 {
		return
	}
	w.findCount("arithmetic/multiple", finding.Warning, s.Pos,
		fmt.Sprintf("%d stitches in the round do not come out in a rib of %d", n, repeat),
		fmt.Sprintf("%d = %d × %d + %d", n, n/repeat, repeat, n%repeat), fmt.Sprintf("a multiple of %d", repeat),
		fmt.Sprintf("make %d or %d stitches of it", n-n%repeat, n-n%repeat+repeat))
}
