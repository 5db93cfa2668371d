package grammar

import (
	"slices"
	"strconv"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// drawnThrough is a single crochet decrease told by each of its movements, in words and signs with a blank between them: draw up a loop
// in each of next 2 sts, yo and draw through all 3 loops on hook; [insert hook in next st and draw up a loop] twice, yo, draw through.
var drawnThrough = text.Once(`(?:` +
	`(?:draw|drawing|pull|pulling|pick|bring) (?:up )?(?:a )?(?:loops?|lps?) (?:up )?(?:in|into|through|from|on|of) (?:each (?:of )?)?(?:the )?((next|first|last|following|foll) (\d) \pL+)` +
	`|[(\[] (?:insert (?:the |your )?hook (?:in|into|through) (?:the )?(?:next|each) \pL+(?: s[pt])?(?: ,| and| then)* )?(?:(?:yo|yrh|yarn over|thread over)(?: hook)?(?: ,| and)* )?(?:draw|pull|pick|bring) (?:up |through |out )?(?:a )?(?:loop|lp)(?: (?:up|through))?(?: in (?:the )?next \pL+)? [)\]] (?:(\d) (?:times|x)|(twice)|x (\d))` +
	`)(?: ,| and| then| ;)* (?:yo|yrh|yoh|yarn over|thread over|wool over|yarn round)(?: hook)?(?: ,| and| then)*(?: (?:draw|drawing|pull|pulling|bring|work))?(?: (?:yarn|thread|wool|it|off|a (?:loop|lp)))? (?:through|thru)(?: all)?(?: of)?(?: the)?(?: (\d)| three| four)?(?: (?:loops|lps))?(?: on (?:the |your )?hook| at once| on)*`)

// drawnUp puts a decrease by its name where it is told by its movements. What stands in a bracket behind a name says how that is worked.
func drawnUp(t []text.Token, terms stitch.Terms) []text.Token {
	if !slices.ContainsFunc(t, func(k text.Token) bool { return k.Is("through", "thru") }) {
		return t
	}
	all, starts := withBlanks(t)
	token := func(at int) int {
		i, _ := slices.BinarySearch(starts, at)
		return i
	}
	at := drawnThrough().FindStringSubmatchIndex(all)
	if at == nil {
		return t
	}
	from, to := token(at[0]), token(at[1]+1)
	number := func(k int) int {
		if at[k] < 0 {
			return 0
		}
		n, _ := strconv.Atoi(all[at[k]:at[k+1]])
		return n
	}
	n := max(2, number(4), number(6), number(10))
	name, loops := stitch.ByID("sc"+strconv.Itoa(n)+"tog"), number(12)
	behind := from - 1
	if near(t, behind).Is(",") {
		behind--
	}
	taller := near(t, behind).Is("yo", "yrh", "over") || loops > 0 && loops != n+1 // yo, draw up a loop: an hdc; or others are on the hook already
	if name == nil || starts[from] != at[0] || taller || near(t, from-1).Is("(", "[", "=", ":", "-", "to") {
		return t
	}
	if near(t, from-1).Is("by") && near(t, from-2).Is("dec", "decrease") {
		from -= 2
	}
	one := t[from]
	one.Word = ins.Word{Kind: 'w', S: strings.ToLower(name.Abbr(terms)), Line: one.Line, Col: one.Col, End: one.End}
	if last := t[to-1]; last.Line == one.Line {
		one.End = last.End
	}
	put := []text.Token{one}
	if at[2] >= 0 {
		over := one
		over.S = "over"
		put = append(append(put, over), t[token(at[2]):token(at[3]+1)]...)
	}
	return slices.Concat(t[:from], put, drawnUp(t[to:], terms))
}

// withBlanks are words, numbers and signs with a blank behind each, and where each begins.
func withBlanks(t []text.Token) (all string, starts []int) {
	var b strings.Builder
	for i := range t {
		starts = append(starts, b.Len())
		if t[i].Kind == 'n' && t[i].Num.By == nil {
			b.WriteString(strconv.Itoa(t[i].Num.All))
		} else {
			b.WriteString(t[i].S)
		}
		b.WriteByte(' ')
	}
	return b.String(), starts
}
