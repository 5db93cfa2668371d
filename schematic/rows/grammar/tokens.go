package grammar

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// otherHand reports whether a line is a row once more, as it is worked in the second of a pair: Left mitten: K18 …, Right mitten: K20 …
func otherHand(row, t []text.Token) bool {
	if len(t) < 4 || !t[0].Is("left", "right") || !t[2].Is(":", "-", "--") {
		return false
	}
	for i := range row {
		if row[i].Is("left", "right") && row[i].S != t[0].S && near(row, i+1).Is(t[1].S) && near(row, i+2).Is(":", "-", "--") {
			return true
		}
	}
	return false
}

// dividing is a line that begins with what a division is for and then works it as a row, with the name of one: Divide for sleeves: K20,
// place next 30 sts on holder, cast on 6 sts, k to end.
func (r *Reader) dividing(t []text.Token) []text.Token {
	if len(t) < 4 || !t[0].Is("divide", "separate", "split", "dividing", "separating") {
		return t
	}
	k := 1
	for k < min(len(t)-2, 10) && t[k].Kind == 'w' {
		k++
	}
	last, side := t[k-1].S, k
	if near(t, k).Is("(", "[") && near(t, k+1).Is("rs", "ws") && near(t, k+2).Is(")", "]") && k+4 < len(t) { // (RS):
		k += 3
	}
	rest := t[k+1:]
	if _, row := text.RowWord(last); row || !t[k].Is(":") || !isStar(&rest[0]) && !(r.crochet && rest[0].Is("ch", "sc", "dc", "hdc", "tr")) && !rest[0].Is("k", "knit", "p", "purl", "work", "place", "slip", "sl", "put", "remove", "removing", "with") {
		return t
	}
	works := r.crochet || slices.ContainsFunc(rest, func(t text.Token) bool { return isStar(&t) || t.Is("co", "cast", "to", "across") })
	if _, row := text.RowWord(rest[min(1, len(rest)-1)].S); !works || row {
		return t
	}
	next, name := t[0], t[1]
	next.S, name.S = "dividing", "row"
	if r.inRounds() {
		name.S = "rnd"
	}
	return append([]text.Token{next, name}, t[side:]...)
}

// uncut puts a word together that print has cut where the line ends: re- / peat from *.
func (r *Reader) uncut(tokens []text.Token) []text.Token {
	k := len(r.tokens) - 1
	if k < 1 || len(tokens) == 0 || !r.tokens[k].Is("-") {
		return tokens
	}
	head, rest := &r.tokens[k-1], &tokens[0]
	if head.Kind != 'w' || head.End != r.tokens[k].Col || rest.Kind != 'w' || rest.Cap || wordIDs[head.S+rest.S] == 0 {
		return tokens
	}
	head.S += rest.S
	r.tokens = r.tokens[:k]
	return tokens[1:]
}

// together are the tokens of the lines so far and of line n: a line of numbers may be cut in two.
func (r *Reader) together(tokens []text.Token, n int) []text.Token {
	tokens = r.uncut(tokens)
	if len(r.tokens) == 0 || len(r.x.Sizes.Names) < 2 || !text.Open(r.raw) && !r.sizesGoOn(n-1) {
		return append(r.tokens, tokens...)
	}
	last := r.tokens[len(r.tokens)-1].Line
	k := len(r.tokens)
	for k > 0 && r.tokens[k-1].Line == last {
		k--
	}
	first := r.x.Src[last-1]
	both := r.lex(first+" "+r.x.Src[n-1], last)
	width := len([]rune(first)) + 1
	for i := range both {
		t := &both[i]
		switch {
		case t.Col > width:
			t.Line, t.Col, t.End = n, t.Col-width, t.End-width
		case t.End > width:
			t.End = width
		}
	}
	skip := 0
	for skip < len(both) && k < len(r.tokens) && both[skip].Line == last && both[skip].Col < r.tokens[k].Col {
		skip++ // what belongs to the row before on the same line
	}
	return append(r.tokens[:k:k], both[skip:]...)
}

// withoutEchoes takes out brackets that say the word before them again: half double crochet (hdc), treble crochet (tr c), four (4);
// and brackets that say which space is meant, all but the words where groups are named: in next sp (between dc-groups).
func (r *Reader) withoutEchoes(t []text.Token) []text.Token {
	for i := len(t) - 3; i > 0; i-- {
		if t[i].Is("(") {
			t = r.withoutEcho(t, i)
		}
	}
	return t
}

// withoutEcho is t without the bracket at i, or without its signs, if it says what stands before it once more.
func (r *Reader) withoutEcho(t []text.Token, i int) []text.Token {
	to := i + 1 + slices.IndexFunc(t[i+1:], func(t text.Token) bool { return t.Is(")") })
	said := t[i+1]
	if to == i+3 && t[i+1].Kind == 'w' && t[i+2].Is("c") {
		said.S += t[i+2].S
	}
	without := func() []text.Token { return slices.Delete(slices.Clone(t), i, to+1) }
	unsigned := func() []text.Token { return slices.Delete(slices.Delete(slices.Clone(t), to, to+1), i, i+1) }
	switch {
	case !r.crochet && to > i && bareTimes(t, i, to):
		return unsigned()
	case to == i+2 || to == i+3 && said.S != t[i+1].S:
		names := said.Is("inc", "dec", "increase", "decrease") && t[i-1].Kind == 'p' && to+1 < len(t) && t[to+1].Is("ch", "chain") // Row 2: (INC) ch 2
		if names || r.echo(t[:i], &said) {
			return without()
		}
	case said.Is("ch", "chain") && t[max(to-1, 0)].Kind == 'n' && to <= i+4 && to+1 < len(t) && t[to+1].Is("sp", "sps", "space", "spaces", "loop", "loops", "lp", "lps", "arch", "arches"): // in next (ch 5) loop
		return unsigned()
	case to > i+2 && to <= i+6 && r.spelt(t[i-1], t[i+1:to]):
		return without()
	case !t[i-1].Is("sp", "space") || !said.Is("between") || to <= i || to > i+6:
	case t[to-1].Is("group", "groups"):
		return unsigned()
	default:
		return without()
	}
	return t
}

// spelt reports whether words in a bracket are the long name of the stitch before it: fpdc (front post double crochet).
func (r *Reader) spelt(short text.Token, long []text.Token) bool {
	name := ""
	for _, t := range long {
		if name += t.S; t.Kind != 'w' {
			return false
		}
	}
	a, ok := r.thing([]byte(short.S))
	b, ok2 := r.thing([]byte(name))
	return ok && ok2 && a.Kind != nil && a.Kind == b.Kind
}

// shortWords are the short forms of words that name no stitch.
var shortWords = map[string]string{"stitch": "st", "stitches": "sts", "space": "sp", "spaces": "sps", "round": "rnd", "rounds": "rnds", "loop": "lp", "loops": "lps", "skip": "sk", "together": "tog"}

// echo reports whether a word or a number is what the words before it say.
func (r *Reader) echo(before []text.Token, t *text.Token) bool {
	last := before[len(before)-1]
	if t.Kind == 'n' {
		return last.Kind == 'w' && numerals[last.S] > 0 && t.Num.All == numerals[last.S]
	}
	if shortWords[last.S] == t.S && t.S != "" || t.Is("inc", "increase") && r.twoOf(before) {
		return true
	}
	name := t.S
	if loop, st := r.loopAndStitch(t); loop != "" {
		name = st
	}
	short, ok := r.thing([]byte(name))
	if t.Kind != 'w' || !ok || short.Kind == nil {
		return false
	}
	if id := short.Kind.ID; (id == "kfb" || id == "pfb") && last.Is("back", "front") { // knit into the front and back (kfb)
		return slices.ContainsFunc(before[max(0, len(before)-4):], func(t text.Token) bool { return t.Is("and") })
	}
	long := ""
	for k := len(before) - 1; k >= max(0, len(before)-4) && before[k].Kind == 'w'; k-- {
		long = before[k].S + long
		if full, ok := r.thing([]byte(long)); ok && full.Kind == short.Kind && long != t.S {
			return true
		}
	}
	return false
}

// twoOf reports whether tokens end with two of a stitch of crochet, which in one place are an increase: 2 dc (inc) in next dc.
func (r *Reader) twoOf(t []text.Token) bool {
	k := len(t) - 1
	st, ok := r.thing([]byte(t[k].S))
	return ok && st.Kind != nil && st.Kind.Craft == stitch.Crochet && k > 0 && t[k-1].Kind == 'n' && t[k-1].Num.By == nil && t[k-1].Num.All == 2
}

// rowsSpelt makes numbers of words behind the word for rows, and behind a knitted stitch: Row Two: …, repeat rows four and five,
// knit one, purl one ribbing. A side has its name whole: rt sides together.
func rowsSpelt(t []text.Token) []text.Token {
	for i := 0; i+1 < len(t); i++ {
		if t[i].Is("rt") && t[i+1].Is("side", "sides") {
			t[i].S = "right"
		}
		if _, row := text.RowWord(t[i].S); !row && !t[i].Is("knit", "purl") || t[i].Kind != 'w' {
			continue
		}
		for k := i + 1; k < len(t) && numerals[t[k].S] > 0 && t[k].Kind == 'w' && !near(t, k+1).Is("time", "times", "more", "row", "rows", "st", "sts", "inch", "inches"); k += 2 {
			n := numerals[t[k].S]
			t[k].Kind, t[k].Num, t[k].S = 'n', ins.N(n), strconv.Itoa(n)
			if !near(t, k+1).Is("and", "&", "to", "-", ",") {
				break
			}
		}
	}
	return t
}

// withoutEmphasis takes out the stars round the name of a row, or round one word that its place or number follows, and the word
// before a repeat that says so once more: *Dec row (RS):* K2; *Inc* in the next 6 st; repeat *inc, sc* 4 times.
func (r *Reader) withoutEmphasis(t []text.Token) []text.Token {
	if len(t) > 4 && isStar(&t[0]) {
		k := 1 + slices.IndexFunc(t[1:], func(t text.Token) bool { return isStar(&t) })
		if l, to, _ := text.Label(t[1:], r.roundR); k > 2 && l != nil && to <= k-1 && (t[k-1].Is(":") || near(t, k+1).Is(":")) {
			t = slices.Delete(slices.Clone(t), k, k+1)[1:]
		}
	}
	for i := len(t) - 4; i >= 0; i-- {
		if _, ok := r.thing([]byte(t[i+1].S)); ok && isStar(&t[i]) && isStar(&t[i+2]) && (t[i+3].Is("in", "into") || t[i+3].Kind == 'n' && t[i+3].Line == t[i].Line && !near(t, i+4).Is("times", "x")) {
			t = slices.Delete(slices.Delete(slices.Clone(t), i+2, i+3), i, i+1)
		}
	}
	for i := 1; i+2 < len(t); i++ {
		if t[i].Is("rep", "repeat") && isStar(&t[i+1]) && !t[i+2].Is("to") && (t[i-1].Is(",", ".") || t[i-1].Kind == 'w') && timesBehind(t[i+2:]) { // sc in next 8 st, repeat *inc, sc* 4 times
			t = slices.Delete(slices.Clone(t), i, i+1)
		}
	}
	return t
}

// bareTimes reports whether the bracket from i to to holds only how often what stands before it is worked: K1, P1 (4x); x (4).
func bareTimes(t []text.Token, i, to int) bool {
	if isStar(&t[i-1]) || near(t, to+1).Is("times", "x", "more", "time") || t[i-1].Kind == 'w' && !t[i-1].Is("x") && t[i-1].Is("times", "time", "more", "again", "row", "rows", "rnd", "rnds", "once", "twice", "sts", "stitches", "remaining") {
		return false
	}
	in := t[i+1 : to]
	switch len(in) {
	case 1:
		return in[0].Is("twice", "thrice") || in[0].Kind == 'n' && t[i-1].Is("x")
	case 2:
		return in[0].Kind == 'n' && in[1].Is("times", "x", "time") || in[1].Kind == 'n' && in[0].Is("x", "times")
	}
	return false
}

// timesBehind reports whether a starred stretch ends in tokens with how often it is worked.
func timesBehind(t []text.Token) bool {
	k := slices.IndexFunc(t, func(t text.Token) bool { return isStar(&t) })
	return k > 0 && near(t, k+1).Kind == 'n' && near(t, k+2).Is("times", "x")
}

// withoutDoubles takes out a small word that is written twice, and the full stop of what shortens a row's name: skip next next dc; Inc. Row: K2.
func withoutDoubles(t []text.Token) []text.Token {
	for i := len(t) - 1; i > 0; i-- {
		if shortensName(t, i) || t[i].Kind == 'w' && t[i].S == t[i-1].S && t[i].Is("next", "the", "in", "into", "to", "of", "from", "each", "last") {
			t = slices.Delete(slices.Clone(t), i, i+1)
		}
	}
	return t
}

// shortensName reports whether the full stop at i is that of a row's name: Inc. Row:
func shortensName(t []text.Token, i int) bool {
	_, row := text.RowWord(near(t, i+1).S)
	return row && t[i].Is(".", "-") && t[i-1].Cap && t[i-1].Is("inc", "dec", "incr", "decr") && (near(t, i+2).Is(":", "(", "--", "-", "") || near(t, i+2).Kind == 'n' && near(t, i+3).Is(":"))
}

// withoutNamed takes out what a row is called within its name: Next (inc.) row: k2, kfb.
func withoutNamed(t []text.Token) []text.Token {
	for i := 1; i+3 < len(t) && i < 3; i++ {
		to := i + 2
		if near(t, to).Is(".") {
			to++
		}
		_, row := text.RowWord(near(t, to+1).S)
		if row && t[i].Is("(") && t[i-1].Is("next", "foll", "following") && t[i+1].Is("inc", "dec", "incr", "decr", "increase", "decrease", "eyelet", "buttonhole") && near(t, to).Is(")") {
			return slices.Delete(slices.Clone(t), i, to+1)
		}
	}
	return t
}

// withoutPlurals takes out the s of a word that may be one or more: 2 dc(s).
func withoutPlurals(t []text.Token) []text.Token {
	for i := len(t) - 3; i > 0; i-- {
		if t[i].Is("(") && t[i].Glued && t[i+1].Is("s", "es") && t[i+1].Glued && t[i+2].Is(")") && t[i-1].Kind == 'w' {
			t = slices.Delete(slices.Clone(t), i, i+3)
		}
	}
	return t
}

// inTo joins the words of a place that are written apart: sl st in to next st.
func inTo(t []text.Token) []text.Token {
	for i := len(t) - 3; i >= 0; i-- {
		if t[i].Is("in") && t[i+1].Is("between") && (t[i+2].Kind == 'n' || t[i+2].Is("next", "each", "the", "first", "last")) && i > 0 && !t[i-1].Is("st", "sts", "stitches") {
			t = slices.Delete(slices.Clone(t), i, i+1)
			continue
		}
		if t[i].Is("in") && t[i+1].Is("to") && (t[i+2].Is("next", "each", "same", "the", "last", "ring", "top", "every") || t[i+2].Ord > 0) {
			one := t[i]
			one.S, one.End = "into", t[i+1].End
			t = slices.Delete(slices.Clone(t), i, i+1)
			t[i] = one
		}
	}
	return t
}

// half are the stitches that a half before them makes others.
var half = map[string]string{"dc": "hdc", "tr": "htr"}

// halves joins the two words of a half stitch: half dc.
func halves(t []text.Token) []text.Token {
	for i := len(t) - 2; i >= 0; i-- {
		if !t[i].Is("half") {
			continue
		}
		if t[i+1].Is("d") && near(t, i+2).Is("c") { // half d c
			one := t[i]
			one.S, one.End = "hdc", t[i+2].End
			t = slices.Delete(slices.Clone(t), i, i+2)
			t[i] = one
			continue
		}
		if short := half[t[i+1].S]; short != "" {
			one := t[i]
			one.S, one.End = short, t[i+1].End
			t = slices.Delete(slices.Clone(t), i, i+1)
			t[i] = one
		}
	}
	return t
}

// longs are the long stitches of old books, by their first letters, in either terms. Common practice.
var longs = map[stitch.Terms]map[string]string{stitch.US: {"": "dc", "d": "tr", "t": "dtr"}, stitch.UK: {"": "tr", "d": "dtr", "t": "trtr"}}

// spelt joins the letters of old books: c s is a chain stitch, l s a long stitch, d l s a double long one; and takes 3
// plain of them as the least stitch that makes a row.
func spelt(t []text.Token, terms stitch.Terms) []text.Token {
	for i := len(t) - 1; i > 0; i-- {
		from, name := i-1, ""
		switch {
		case t[i].Is("s") && t[i-1].Is("c"):
			name = "ch"
		case t[i].Is("s") && t[i-1].Is("l"):
			first := near(t, i-2)
			if name = longs[terms][first.S]; first.Is("d", "t") {
				from--
			} else {
				name = longs[terms][""]
			}
		case t[i].Is("long") && (t[i-1].Kind == 'n' || t[i-1].Is("more") && isNumber(near(t, i-2)) || numerals[t[i-1].S] > 0 || t[i-1].Is("double", "treble") && isNumber(near(t, i-2))) && !near(t, i+1).Is("stitch", "st", "treble", "sc", "dc", "loop", "loops"): // 5 long
			if from, name = i, longs[terms][""]; t[i-1].Is("double", "treble") {
				from, name = i-1, longs[terms][t[i-1].S[:1]]
			}
		case longLetter(t, i): // 1 l., 2 ch.
			from, name = i, longs[terms][""]
		case t[i].Is("plain") && t[i-1].Kind == 'n' && !near(t, i+1).Is("row", "rows", "rnd", "rnds", "round", "rounds", "st", "sts"):
			from, name = i, map[stitch.Terms]string{stitch.US: "sc", stitch.UK: "dc"}[terms]
		}
		if name == "" {
			continue
		}
		one := t[from]
		one.S, one.End = name, t[i].End
		t = slices.Delete(slices.Clone(t), from, i)
		t[from] = one
	}
	return t
}

// longLetter reports whether the letter at i is a long stitch of old books: 1 l., 2 ch.
func longLetter(t []text.Token, i int) bool {
	if !t[i].Is("l") || t[i].Cap || t[i-1].Kind != 'n' || t[i-1].Num.By != nil {
		return false
	}
	next := near(t, i+1)
	return next.Kind == 'p' || next.Is("in", "into", "on", "over", "of", "worked", "")
}

// loopsApart parts a stitch from the loop that it is run together with, and a chain from its space: blsc is bl sc, chsp
// is ch sp.
func (r *Reader) loopsApart(t []text.Token) []text.Token {
	for i := 0; i < len(t); i++ {
		loop, st := r.loopAndStitch(&t[i])
		if s, ok := strings.CutPrefix(t[i].S, "chs"); ok && t[i].Kind == 'w' && (s == "p" || s == "ps" || s == "pace" || s == "paces") {
			loop, st = "ch", t[i].S[2:]
		}
		if loop == "" {
			continue
		}
		first, second := t[i], t[i]
		first.S, second.S = loop, st
		first.End = first.Col + len(loop)
		second.Col, second.Glued, second.Cap = first.End, true, false
		t = slices.Insert(slices.Clone(t), i, first)
		t[i+1] = second
		i++
	}
	return t
}

// loopAndStitch are the loop and the stitch of a word in which they are run together: blsc, scblo; empty if it is none.
func (r *Reader) loopAndStitch(t *text.Token) (loop, name string) {
	if t.Kind != 'w' || len(t.S) < 4 || len(t.S) > 7 {
		return "", ""
	}
	loop, name = stitch.LoopApart(t.S, func(name string) bool {
		k, ok := r.thing([]byte(name))
		return ok && k.Kind != nil && k.Kind.Craft == stitch.Crochet
	})
	if loop != "" {
		if _, whole := r.thing([]byte(t.S)); whole {
			return "", ""
		}
	}
	return loop, name
}

var fromDoubleStars = text.Once(`(?i)\b(?:from|between|to) \*\*`)

// withoutBullets takes the signs of lists and bold print from the beginning of a line.
func (r *Reader) withoutBullets(tokens []text.Token) []text.Token {
	for len(tokens) > 1 && (text.Bullet(&tokens[0]) || strings.HasPrefix(tokens[0].S, "**") && tokens[0].Kind == 'p') {
		bold := tokens[0].Is("**")
		at := slices.IndexFunc(tokens[1:], func(t text.Token) bool { return t.Is("**") })
		if l, _, _ := text.Label(tokens[1:], r.roundR); bold && at < 0 && l != nil || l == nil && r.doubleStars && len(r.tokens) > 0 { // ** Row 1: … rep from **
			break
		}
		tokens = tokens[1:]
		if bold && at >= 0 { // **Row 1:** of a marked-up text
			tokens = slices.Delete(slices.Clone(tokens), at, at+1)
		}
	}
	return tokens
}

// lex cuts a line into tokens, without bullets and the bars of a table.
func (r *Reader) lex(raw string, n int) []text.Token {
	tokens := rangesBySize(r.numbers(raw), len(r.x.Sizes.Names))
	r.crossStars(tokens)
	tokens = r.withoutEmphasis(r.withoutBullets(tokens))
	tokens = r.renamed(oneStitch(withoutPlurals(r.withoutEchoes(rowsSpelt(sizesSpelt(spelledOut(withoutNamed(withoutDoubles(withoutItem(tokens))))))))))
	if r.crochet {
		tokens = r.loopsApart(spelt(halves(inTo(tokens)), r.x.Terms))
	}
	for i := range tokens {
		tokens[i].Line = n
	}
	if !r.crochet {
		ridges(tokens)
		tokens = endsIn(patternOver(liftedUp(tokens)))
	}
	tokens = withoutAside(tokens, !r.crochet)
	if k := len(tokens) - 1; k >= 0 && (tokens[k].Is("|") || k > 1 && strings.HasPrefix(tokens[k].S, "**") && tokens[k-1].Is(".", ")", "]")) { // 54 sts. **
		tokens = tokens[:k]
	}
	return tokens
}

var ownRange = text.Once(`(\d+) ?[-–—] ?(\d+)`)

// rangesBySize gives each size its own rows, which stand in brackets behind the first: Rows 6-19 (6-25, 8-31), rows 4 and 5 (6 and 7).
func rangesBySize(t []text.Token, sizes int) []text.Token {
	for i := 3; i < len(t) && sizes > 1; i++ {
		_, row := text.RowWord(t[i-3].S)
		if !row || t[i].Kind != 'n' || t[i-2].Kind != 'n' || t[i-2].Num.By != nil || !t[i-1].Is(betweenRows...) {
			continue
		}
		pairs, to := bracketedPairs(&t[i]), i+1
		if t[i].Num.By == nil && t[i].Short == 0 {
			pairs, to = pairsAfter(t, i+1)
		}
		if len(pairs) != sizes-1 {
			continue
		}
		from, last := []int{t[i-2].Num.All}, []int{firstNumber(t[i].S)}
		t[i].S = strconv.Itoa(last[0]) // without brackets, which need not be as in the line of sizes
		for _, p := range pairs {
			from, last = append(from, p[0]), append(last, p[1])
			t[i].S += fmt.Sprintf(" %d-%d", p[0], p[1])
		}
		t[i].Num, t[i].Short, t[i].End = ins.Num{By: last}, 0, t[to-1].End
		if len(slices.Compact(slices.Clone(from))) > 1 {
			t[i-2].Num = ins.Num{By: from}
		}
		t = slices.Delete(t, i+1, to)
	}
	return t
}

var betweenRows = []string{"-", "--", "to", "through", "and", "&"}

// firstNumber is the number that s begins with.
func firstNumber(s string) int {
	n, _ := strconv.Atoi(s[:len(s)-len(strings.TrimLeft(s, "0123456789"))])
	return n
}

// bracketedPairs are the ranges in the brackets of a line of numbers.
func bracketedPairs(t *text.Token) (out [][2]int) {
	for _, at := range ownRange().FindAllStringSubmatchIndex(t.S, -1) {
		a, _ := strconv.Atoi(t.S[at[2]:at[3]])
		b, _ := strconv.Atoi(t.S[at[4]:at[5]])
		out = append(out, [2]int{a, b})
	}
	return out
}

// pairsAfter are pairs of numbers in brackets from i on, a word between both, and where they end.
func pairsAfter(t []text.Token, i int) (out [][2]int, to int) {
	for near(t, i).Is("(", "[") || len(out) > 0 && near(t, i).Is(",") && near(t, i-1).Kind == 'n' {
		a, b := near(t, i+1), near(t, i+3)
		if a.Kind != 'n' || a.Num.By != nil || !near(t, i+2).Is(betweenRows...) || b.Kind != 'n' || b.Num.By != nil {
			return nil, 0
		}
		out = append(out, [2]int{a.Num.All, b.Num.All})
		if i += 4; near(t, i).Is(")", "]") {
			i++
		}
	}
	return out, i
}

// withoutItem takes the number of a list's item off a line that has a label of its own, or that ends the work:
// 2. Round 1: Ch 1, 8 sc in ring; 5. Fasten off.
func withoutItem(t []text.Token) []text.Token {
	if len(t) > 4 && t[0].Kind == 'n' && t[1].Cap && t[2].Kind == 'n' { // 3 Row 5: k to end
		if _, row := text.RowWord(t[1].S); row && (t[3].Is(":", ".", ")") || t[3].Is("(") && sideAhead(t[4:])) {
			return t[1:]
		}
	}
	if len(t) < 4 || t[0].Kind != 'n' || !t[1].Is(".", ")") || !t[2].Cap {
		return t
	}
	if _, row := text.RowWord(t[3].S); row && t[2].Is("next") { // 3. Next row, k2, yo, k2
		return t[2:]
	}
	if _, row := text.RowWord(t[2].S); row && t[3].Kind == 'n' || t[2].Is("fasten", "weave", "cut", "break") {
		return t[2:]
	}
	return t
}

// sideAhead reports whether a side of the work stands there: RS).
func sideAhead(t []text.Token) bool { return t[0].Is("rs", "ws", "right", "wrong") }

// oneStitch parts 1st where it can only be 1 st: cast on 1st, dec 1st at each end.
func oneStitch(t []text.Token) []text.Token {
	for i := len(t) - 1; i > 0; i-- {
		if t[i].S != "1st" || t[i].Ord != 1 || !t[i-1].Is("on", "off", "inc", "dec", "increase", "decrease", "add", "miss", "skip", "sk", "slip", "sl") || !near(t, i+1).Is(",", ".", ";", "at", "each", "both", "on") && i+1 < len(t) {
			continue
		}
		one, st := t[i], t[i]
		one.Kind, one.S, one.Ord, one.Num, one.End = 'n', "1", 0, ins.N(1), t[i].Col+1
		st.S, st.Ord, st.Col, st.Glued = "st", 0, one.End, true
		t = slices.Insert(slices.Clone(t), i, one)
		t[i+1] = st
	}
	return t
}

// renamed puts the name of the trade for a name that the text has for a turn within the row: WTS.
func (r *Reader) renamed(t []text.Token) []text.Token {
	if len(r.wraps) == 0 {
		return t
	}
	for i := range t {
		if t[i].Kind == 'w' && r.wraps[t[i].S] {
			t[i].S = "wt"
		}
	}
	return t
}

// wraps reports whether words say how the work is turned within the row: bring yarn to front, sl next st, turn work.
func wraps(words string) bool {
	low := strings.ToLower(words)
	return strings.Contains(low, "turn") && (strings.Contains(low, "slip") || strings.Contains(low, "sl ")) && (strings.Contains(low, "yarn") || strings.Contains(low, "wrap"))
}

// withoutAside takes out a bracket in which is told what becomes of the work, or what is meant: (the 2 purl stitches will form
// a seam), (e.g. 2 dc in 1st st, 1 dc in 2nd and so on). In crochet a chain may become a stitch: (this will be the first dc).
func withoutAside(t []text.Token, knitted bool) []text.Token {
	for i := range t {
		if !t[i].Is("(") {
			continue
		}
		to := i + 1
		for to < len(t) && !t[to].Is(")", "(") {
			to++
		}
		if near(t, to).Is(")") && (explains(t[i+1:to]) || knitted && (becomes(t[i+1:to]) || slipsAll(t[i+1:to]) || i > 1 && t[i-1].Is("cable") && slices.ContainsFunc(t[i+1:to], func(k text.Token) bool { return k.Is("cable") }))) {
			return slices.Concat(t[:i], t[to+1:])
		}
	}
	return t
}

// slipsAll reports whether words in a bracket tell how all stitches are slipped: (Slip all stitches purlwise.)
func slipsAll(t []text.Token) bool {
	return len(t) > 3 && t[0].Is("slip", "sl") && t[1].Is("all") && !slices.ContainsFunc(t, func(k text.Token) bool { return k.Kind == 'n' })
}

// becomes reports whether words in a bracket tell what becomes of the work.
func becomes(t []text.Token) bool {
	for k := range t {
		if t[k].Is("will") && near(t, k+1).Is("create", "form", "make", "look", "curl", "become", "give", "be") {
			return true
		}
	}
	return false
}

// explains reports whether words in a bracket say by example what is said before it. A count alone is one: (i.e. 12 sts).
func explains(t []text.Token) bool {
	if len(t) < 8 {
		return false
	}
	return t[0].Is("eg", "ie") || t[0].Is("e", "i") && t[1].Is(".") && t[2].Is("g", "e") || t[0].Is("for") && t[1].Is("example", "instance") || t[0].Is("that") && t[1].Is("is")
}

// endsIn takes the stitches that a row ends in as those that it ends with: rep from * across, end in k6, p2.
func endsIn(t []text.Token) []text.Token {
	for i := 0; i+3 < len(t); i++ {
		if t[i].Is("end", "ending", "ends") && t[i+1].Is("in") && t[i+2].Is("k", "p") && t[i+3].Kind == 'n' {
			t[i+1].S = "with"
		}
	}
	return t
}

// patternOver takes over behind a pattern's name as the words that it is, and no yarn over: work lace pattern over body.
func patternOver(t []text.Token) []text.Token {
	for i := 1; i+1 < len(t); i++ {
		if t[i].Is("over") && t[i-1].Is("pattern", "patt", "pat", "motif", "chart", "sequence", "rib", "ribbing") && t[i+1].Kind == 'w' && !t[i+1].Is("k", "p", "narrow", "knit", "purl") {
			t[i].S = "across"
		}
	}
	return t
}

// liftedUp takes a strand that is picked up and knitted, in the letters that some have for it, as the stitch made that it is: p/u & k1 tbl.
func liftedUp(t []text.Token) []text.Token {
	for i := 0; i+3 < len(t); i++ {
		k := i + 1
		if t[i].Is("p") && t[k].Is("/") && t[k+1].Is("u") {
			k += 2
		} else if !t[i].Is("pu") {
			continue
		}
		if !near(t, k).Is("&", "and") || !near(t, k+1).Is("k", "knit") {
			continue
		}
		for k += 2; near(t, k).Is("tbl", "it") || near(t, k).Kind == 'n' && near(t, k).Num.By == nil && near(t, k).Num.All == 1; {
			k++
		}
		one := t[i]
		one.S, one.End = "m1", t[k-1].End
		t = slices.Concat(t[:i], []text.Token{one}, t[k:])
	}
	return t
}

// ridges takes ridges of garter stitch as the two rows that each is: 5 ridges even, every 9th ridge.
func ridges(t []text.Token) {
	for i := 1; i < len(t); i++ {
		k := i - 1
		for k > 0 && t[k].Is("garter", "st", "stitch") { // 5 garter ridges
			k--
		}
		n := &t[k]
		if !t[i].Is("ridge", "ridges") || i+1 < len(t) && t[i+1].Is("row", "rows", "st", "stitch", "pattern") {
			continue
		}
		switch {
		case n.Kind == 'n' && n.Num.By == nil:
			n.Num.All *= 2
		case n.Ord > 0:
			n.Ord *= 2
		case n.Kind == 'w' && numerals[n.S] > 0:
			n.Kind, n.Num = 'n', ins.N(2*numerals[n.S])
		case n.Is("each", "every"):
			n.S, t[i].S = "alternate", "row"
			continue
		default:
			continue
		}
		t[i].S = "rows"
	}
}

// unended reports whether the line so far is a label alone, or has a stretch that is not repeated yet.
func (r *Reader) unended() bool {
	_, k, _ := text.Label(r.tokens, r.roundR)
	return k > 0 && (k == len(r.tokens) || openStar(r.tokens[k:]) || notesRow(r.tokens[k:]))
}

// notesRow reports whether a bracket alone stands behind a label, which tells of the row: Row 5: (Note: shaping begins on this row.)
func notesRow(t []text.Token) bool {
	if len(t) > 0 && t[len(t)-1].Is(".") {
		t = t[:len(t)-1]
	}
	if len(t) == 3 && t[0].Is("(", "[") && sideAhead(t[1:]) { // Row 1: (RS)
		return true
	}
	if len(t) < 4 || !t[0].Is("(", "[") || !t[len(t)-1].Is(")", "]") || slices.IndexFunc(t, func(k text.Token) bool { return k.Is(")", "]") }) < len(t)-1 {
		return false
	}
	return t[1].Is("note", "remember", "nb") || slices.ContainsFunc(t[:len(t)-1], func(k text.Token) bool { return k.Is("this") }) && t[1].Cap
}

// openStar reports whether a star begins a stretch that nothing repeats or ends yet.
func openStar(t []text.Token) bool {
	at := slices.IndexFunc(t, func(k text.Token) bool { return isStar(&k) })
	if at < 0 || near(t, at+1).Kind == 'n' && near(t, at+2).Kind != 'w' { // (sc, dec) * 6 = 12
		return false
	}
	sign := t[at].S
	return !slices.ContainsFunc(t[at+1:], func(k text.Token) bool {
		return k.Kind == 'p' && k.S == sign || k.Is("rep", "repeat", "repeating", "rpt")
	})
}

// withoutMultiple is a row without the words at its end that say of how many stitches its count is a multiple: it is no count.
func withoutMultiple(t []text.Token) []text.Token {
	const most = 9 // (multiple of 8 sts plus 5 sts).
	for i := len(t) - 1; i > max(len(t)-most-2, 1); i-- {
		if t[i].Is("multiple") && near(t, i+1).Is("of") && near(t, i+2).Kind == 'n' && t[i-1].Is("--", "-", "(", "[", "=", ",", ".", "a") {
			for k := i + 3; k < len(t); k++ {
				if !t[k].Is("st", "sts", "stitches", "+", "plus", ")", "]", ".") && t[k].Kind != 'n' {
					return t
				}
			}
			for i > 1 && t[i-1].Is("--", "-", "(", "[", "=", ",", "a") {
				i--
			}
			return t[:i]
		}
	}
	return t
}

// withoutRows takes the words off a line that only say again how many rows its label names: R7-R14: sc around (36) 8 rounds.
func (r *Reader) withoutRows(t []text.Token) []text.Token {
	k := len(t) - 2
	if k < 2 || !t[k-1].Is(")", "]") || t[k].Kind != 'n' || !t[k+1].Is("rounds", "rnds", "rows") {
		return t
	}
	label, _, _ := text.Label(t[:k], r.roundR)
	if label == nil || label.Next || !label.To.Set() || label.To.By != nil || label.From.By != nil || len(label.Listed) > 0 {
		return t
	}
	every := slices.ContainsFunc(t[:k], func(t text.Token) bool { return t.Is("odd", "uneven", "even", "alt", "alternate", "every") })
	if n := label.To.All - label.From.All + 1; !every && (t[k].Num.By != nil || t[k].Num.All != n) {
		r.x.Tell(finding.Finding{Kind: "rows/number", Severity: finding.Warning, Message: fmt.Sprintf("these are %d %s by their numbers, not %s", n, t[k+1].S, t[k].S), Fix: "correct the number of them, or the label"}, ins.Span{Line: t[k].Line, Col: t[k].Col, End: t[k+1].End})
	}
	return t[:k]
}

// marked is a row without the star before its label, from which rows are repeated: * Next row: K2tog, k to end.
func (r *Reader) marked(t []text.Token) []text.Token {
	if len(t) < 3 || !isStar(&t[0]) || slices.ContainsFunc(t[1:len(t)-1], func(k text.Token) bool { return isStar(&k) && k.S == t[0].S }) {
		return t
	}
	if l, _, _ := text.Label(t[1:], r.roundR); l == nil {
		if _, rows := text.RowWord(near(t, 3).S); !rows || t[2].Kind != 'n' || !t[1].Is("k", "knit", "p", "purl", "work") { // * Knit 8 rows
			return t
		}
	}
	r.mark = t[0].S
	return t[1:]
}
