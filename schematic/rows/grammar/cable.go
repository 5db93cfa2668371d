package grammar

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// The words that describe a crossing: slip next 3 sts onto a cable needle and hold at back, k3, k3 from
// cable needle; or a twist without a needle: knit the second st, then the first.
var (
	crossed = text.Once(`\b(?:slip|sl|slide|place|put|take|move|drop|transfer)\s+(?:off\s+)?(?:the\s+)?(?:next|first|following)?\s*(\w+)\s.*?\b(front|back|behind)\b.*?\b(k|p|knit|purl)(?:\s+the)?(?:\s+next|\s+following)?\s*(\d+|one|two|three|four|five|six)\b(.*?)\b(k|p|knit|purl)(?:\b|\d)(.*)$`)
	twisted = text.Once(`\b(k|knit|p|purl)\b.*?\b(?:2nd|second|next)\b(.*?)(?:\bthen\b|\band\b|,)(.*?)\b(?:1st|first|skipped|missed|k2tog)\b`)
)

// knittedAgain is a twist whose stitches are first knitted together, and one of them again.
var knittedAgain = text.Once(`\b(k2tog|ssk|k(?:nit)? (?:2|two)(?: sts?| stitches)? tog\w*|k(?:nit)? tog(?:ether)? (?:the )?next (?:2|two))\b(.*?)\b(?:leave|leaving|do not|don't|without)\b.*?\b(?:k|knit)\b.*\b(?:1st|first|right)\b`)

// workedOver are the stitches that are worked in a crossing, one kind after the other.
var workedOver = text.Once(`\b(k|p|knit|purl)(?:\s+the)?(?:\s+next|\s+following)?\s*(\d+|one|two|three|four|five|six)\b`)

// stuck is a number to which its stitches are stuck, or that is to its verb: 2sts, sl1.
var stuck = text.Once(`([02-9])(st)|\b(sl)(\d)`)

// nextTold is the next short name of a list in one line: k2 from holder; dec: decrease
var nextTold = text.Once(`;\s*[\w/()]{1,8}(?:\s*[:=]|\s*[-–—]\s)`)

// passedBehind is a twist whose first stitch is slipped, passed over the second, and knitted then.
var passedBehind = text.Once(`\b(?:slip|sl)\b.*?\bk(?:nit)? ?(?:1|one|next)\b.*?\bpass\b.*?\bover\b.*?\b(?:k|knit)\b.*?\bback\b`)

// told is a name of a cable before the words that describe it, wherever they stand on a line: C6B: sl 3 sts to cn …
var told = text.Once(`(?:^|[\s.;,(•])((?:\d(?:/\d)+ ?|\d[LR]P?C\b|[CcTt][A-Za-z]{0,4} ?\d)[A-Za-z0-9]{0,4}|[RL][Tt])\)?(?:\s*\([^)]{1,40}\)|,?\s+(?i:cross|twist|cable|means)\b[\w ]{0,24}?)?(?:\s*[:=]|\s+[-–—]\s|\s+(?:[Ss]lip|[Pp]lace)\b)`)

// heldFirst is stitches that wait before any verb says so: 2 sts to cn, hold back; hold 2 sts on cn in back.
var heldFirst = text.Once(`^\W*(?:hold(?:ing)?\s+)?((?:\d+|two|three|four)\s+(?:sts?|stitches)\s+(?:to|on|onto)\s)`)

// namedBy is a short name of any letters, at the beginning of a line, before the words that describe it: MC (mock cable): knit the second stitch …
var namedBy = text.Once(`^[\s•*-]*([A-Z][A-Za-z]{1,5})(?:\s*\([^)]{1,40}\))?(?:\s*[:=]|\s+[-–—])\s(.*\b(?:2nd|second|k2tog|cn|cable needle)\b.*)`)

// tellCables notes the cables that a line describes by their usual names, with or without a heading of abbreviations.
// The words of the last may go on over the lines behind it.
func (r *Reader) tellCables(n int) {
	line := r.x.Src[n]
	if text.Has(line, "make") {
		if m := madeSo().FindStringSubmatch(line); m != nil {
			if c, ok := crossOf(m[1]); ok {
				r.crossing("make cable", c)
			}
		}
	}
	if !mayTell(line) {
		return
	}
	names := told().FindAllStringSubmatchIndex(line, -1)
	if m := namedBy().FindStringSubmatch(line); m != nil && len(names) == 0 {
		if c, ok := crossOf(r.cutWords(m[2], n)); ok {
			r.crossing(m[1], c)
		}
	}
	for i, at := range names {
		to := len(line)
		if i+1 < len(names) {
			to = names[i+1][0]
		}
		name, words := strings.TrimSpace(line[at[2]:at[3]]), line[at[3]:to]
		if i+1 == len(names) {
			words = r.cutWords(words, n)
		}
		if c, ok := crossOf(words); ok && c.Size() == cableStitches(squeezeWords(name)) {
			r.crossing(name, c)
		}
	}
}

// madeSo is a cable that is told where it is made first: make a cable (to make a cable, slip off next 3 sts …).
var madeSo = text.Once(`(?i)\bmake (?:a |1 |one )?cable ?\(([^()]*\bcable\b[^()]*)\)`)

// mostCut is over how many lines the words of a crossing may go on that print has cut.
const mostCut = 3

// cutWords are the words of a crossing with which line n ends, with as much of the lines behind it as they need.
func (r *Reader) cutWords(words string, n int) string {
	all := words
	for k := n + 1; k <= min(n+mostCut, len(r.x.Src)-1); k++ {
		if _, ok := crossOf(all); ok {
			return all
		}
		if strings.TrimSpace(r.x.Src[k]) == "" && !r.goesOn(k+1) || told().MatchString(r.x.Src[k]) {
			break
		}
		all += " " + r.x.Src[k]
	}
	if _, ok := crossOf(all); ok {
		return all
	}
	return words
}

// mayTell reports whether a line has a sign with a short name before it that a cable could have: 2/2 LC, C6B or t3f; or begins with
// such a name and tells of work. It spares most lines the pattern.
func mayTell(line string) bool {
	if t := strings.TrimLeft(line, " •*-"); t != "" && strings.IndexByte("CcTtRL123456789", t[0]) >= 0 && containsAny(t, "lip ", "lace ", " needle") {
		return true
	}
	if namedBy().MatchString(line) {
		return true
	}
	for i := range len(line) {
		if c := line[i]; c != ':' && c != '=' && (i == 0 || line[i-1] != ' ' || c != '-' && !strings.HasPrefix(line[i:], "–") && !strings.HasPrefix(line[i:], "—")) {
			continue
		}
		name := strings.TrimRight(line[:i], " \t")
		if k := strings.LastIndex(name, " ("); k > 0 && strings.HasSuffix(name, ")") { // Rt (right twist): …
			if name = strings.TrimRight(name[:k], " "); strings.ContainsAny(line[k:i], "123456789") { // Cable 4 Back (C4B): …
				return true
			}
		}
		name = name[strings.LastIndexAny(name, "\t.;,(")+1:]
		if len(name) == 2 && strings.HasSuffix(strings.ToUpper(name), "T") && strings.ContainsAny(name[:1], "RL") || strings.ContainsAny(name, "123456789") && strings.ContainsAny(name, "/CcTt") {
			return true
		}
	}
	return false
}

// describes reports whether a line begins with the name of a cable and tells how it is crossed.
func describes(line string) bool {
	if !mayTell(line) {
		return false
	}
	if m := namedBy().FindStringSubmatch(line); m != nil && crosses(m[2]) {
		return true
	}
	at := told().FindStringIndex(line)
	if at == nil || at[0] > 0 {
		return false
	}
	words := strings.ToLower(line[at[1]:])
	_, ok := crossOf(words)
	return ok || strings.Contains(words, "cable needle") && cableStitches(squeezeWords(strings.TrimRight(line[:at[1]], " :=-–—"))) > 0 // not how it is crossed
}

var numberWords = map[string]int{"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "a": 1, "st": 1, "stitch": 1, "1st": 1, "1sts": 1}

func smallNumber(s string) int {
	if n, ok := numberWords[s]; ok {
		return n
	}
	n := 0
	for _, c := range s {
		if c < '0' || c > '9' || n > 40 {
			return 0
		}
		n = 10*n + int(c-'0')
	}
	return n
}

// crossOf is the crossing that words describe; false if they describe none, or not how
// many stitches it takes.
func crossOf(words string) (stitch.Cross, bool) {
	if at := nextTold().FindStringIndex(words); at != nil {
		words = words[:at[0]]
	}
	words = stuck().ReplaceAllString(strings.ToLower(words), "$1$3 $2$4")
	words = heldFirst().ReplaceAllString(words, "slip $1")
	through := func(s string) bool { return strings.Contains(s, "tbl") || strings.Contains(s, "back loop") }
	if m := crossed().FindStringSubmatch(words); m != nil && containsAny(words, "cable", " cn", "cn,", "extra needle", "spare needle", "dpn", "dp needle", "double-pointed", "double pointed", "holder") {
		c := stitch.Cross{Held: smallNumber(m[1]), Over: smallNumber(m[4]), Left: m[2] == "front"}
		held := words[strings.Index(words, m[2]):]
		if moved().MatchString(held) {
			return ofThree(c, held)
		}
		c.Over = overHeld(c, held)
		c.Purl = (m[3][0] == 'p') == c.Left && (m[6][0] == 'p') != c.Left
		c.Twisted = c.Left && through(m[7]) || !c.Left && through(m[5])
		return c, c.Held > 0 && c.Over > 0 && c.Size() <= 40
	}
	if c, ok := twistOf(words); ok {
		return c, true
	}
	if m := knittedAgain().FindStringSubmatch(words); m != nil {
		return stitch.Cross{Held: 1, Over: 1, Left: m[1] == "ssk" || through(m[2])}, true
	}
	if passedBehind().MatchString(words) {
		return stitch.Cross{Held: 1, Over: 1, Left: true}, true
	}
	return stitch.Cross{}, false
}

// leavesFirst tells that a twist leaves its first stitch for later, and glued the number of a stitch to which what is worked is stuck.
var (
	leavesFirst = text.Once(`\b(?:skip|miss|2nd|second)\b`)
	glued       = text.Once(`\b([kp])(1st|2nd)\b`)
)

// twistOf is a twist that is told without a needle: the second stitch is worked before the first, behind it if it leans left.
func twistOf(words string) (c stitch.Cross, ok bool) {
	words = glued().ReplaceAllString(words, "$1 $2")
	m := twisted().FindStringSubmatch(words)
	if m == nil || !leavesFirst().MatchString(words) {
		return c, false
	}
	second := words[:strings.Index(words, m[0])] + m[0][:len(m[0])-len(m[3])]
	c = stitch.Cross{Held: 1, Over: 1, Left: containsAny(second, "behind", "back of", "from the back", "tbl", "back loop")}
	purl, first := m[1][0] == 'p', m[1][0] == 'p'
	for _, w := range strings.Fields(m[3]) {
		if w == "k" || w == "knit" || w == "p" || w == "purl" {
			first = w[0] == 'p'
		}
	}
	c.Purl = purl != first && purl == c.Left
	return c, purl == first && !purl || c.Purl
}

// moved tells that some of the stitches that wait go on before the others: slip 1 st from cable needle back to left needle; or that
// there are two cable needles.
var moved = text.Once(`\b(?:slip|sl|return|place|move|transfer|put|pass)\b[^,;]*\b(?:to|onto|on|back)\b[^,;]*\b(?:left|lh)\b|\b(?:second|2nd|another|other)\s+(?:cable needle|cn|dpn)`)

// overHeld is how many stitches are worked over the held ones: k3, p1, then k3 from cable needle.
func overHeld(c stitch.Cross, words string) (sum int) {
	groups := workedOver().FindAllStringSubmatch(words, -1)
	last := len(groups) - 1
	if last < 2 || smallNumber(groups[last][2]) != c.Held {
		return c.Over
	}
	for _, k := range groups[:last] {
		sum += smallNumber(k[2])
	}
	return sum
}

// ofThree is a crossing of three groups: the second stays between the others, behind those in front. It reports false if the words
// do not tell three.
func ofThree(c stitch.Cross, words string) (stitch.Cross, bool) {
	groups := workedOver().FindAllStringSubmatch(words, -1)
	if len(groups) != 3 || groups[0][1][0] != 'k' || groups[2][1][0] != 'k' {
		return c, false
	}
	in := c.Held
	c.Over, c.Mid, c.Held, c.Purl = smallNumber(groups[0][2]), smallNumber(groups[1][2]), smallNumber(groups[2][2]), groups[1][1][0] == 'p'
	return c, c.Over > 0 && c.Mid > 0 && c.Held > 0 && (in == c.Held || in == c.Held+c.Mid) && c.Size() <= 40
}

// waiting is instructions in which stitches that wait on a cable needle, those worked before them, and they themselves, are one
// crossing: slip next 2 sts to cable needle and hold in front, k2, k2 from cable needle.
func waiting(list []ins.Item) []ins.Item {
	for _, n := range list {
		if q, ok := n.(*ins.Repeat); ok {
			q.Body = waiting(q.Body)
		}
	}
	for i, n := range list {
		if w, ok := n.(*ins.Nothing); ok && w.Wait > 0 {
			if st, to := crossedFrom(w, list[i+1:]); st != nil {
				return append(append(slices.Clip(list[:i]), st), waiting(list[i+1+to:])...)
			}
		}
	}
	return list
}

// crossedFrom is the crossing of the stitches that wait with those behind them in a list, and how many instructions it takes of it.
func crossedFrom(w *ins.Nothing, list []ins.Item) (*ins.Stitch, int) {
	var legs []*ins.Stitch
	for i, n := range list {
		switch n := n.(type) {
		case *ins.Nothing:
			continue
		case *ins.Stitch:
			if n.Kind == nil || n.Kind.ID != "k" && n.Kind.ID != "p" || n.N.By != nil || len(n.Places)+len(n.Also) > 0 {
				return nil, 0
			}
			legs = append(legs, n)
		default:
			return nil, 0
		}
		if len(legs) < 2 {
			continue
		}
		over, held := legs[0], legs[1]
		c := stitch.Cross{Held: w.Wait, Over: over.N.All, Left: w.Front}
		c.Purl = (over.Kind.ID == "p") == c.Left && (held.Kind.ID == "p") != c.Left
		if held.N.All != w.Wait || c.Over < 1 || c.Size() > 40 {
			return nil, 0
		}
		st := &ins.Stitch{Kind: c.Stitch(), N: ins.N(1)}
		at := w.Span()
		at.End = max(at.End, held.Span().End)
		st.Put(at)
		return st, i + 1
	}
	return nil, 0
}
