package grammar

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

func set(words string) map[string]bool {
	m := map[string]bool{}
	for w := range strings.FieldsSeq(words) {
		m[w] = true
	}
	return m
}

var (
	// fillers are words that say nothing of what is worked.
	fillers = set("the loosely tightly firmly carefully gently neatly very just simply an please also again directly immediately now only2 exactly2 approximately somewhat fairly evenly2 each2 still easily")
	// verbs begin an instruction.
	verbs = set("work knit purl k p cast bind ch chain inc dec increase decrease rep repeat join sl slip skip miss pick turn bo co fasten place cont continue divide make crochet sc dc hdc tr htr complete finish as leave next dtr ss yo rejoin attach begin cut break weave sew gather " +
		"double single treble half row rnd round add shape keep sk")
	// weighty are words that may change what is worked: a clause with one of them is not passed over.
	weighty = set("rep repeat repeating times twice thrice until till except alternate alternately alternating skip miss skipping missing unworked remain remaining rem every tog together decrease decreasing increase increasing dec inc " +
		"stitchwise less fewer dip")
	// telling are words of a sentence that tells something and is no instruction.
	telling = set("is are was were be been being you your you'll you're i i'm we our my it it's its this that that's these those they their will would can could should may might must if when while because since so has have had there here which who what how why " +
		"don't not note please remember make sure the a an of for from with but or as by on at about than to do does did let i've we'll we're we've let's because however usually always never optional either want like need ready used using")
	// loose are names of stitches that are words of plain English too.
	loose = set("over plain slip make o m s chain point points cluster shell fan group block rib spike pop narrow bob mesh bar bars n seam won double single treble pass p k wid dd e st over chains w tw plain puff")
	// measures stand behind a number that counts no stitch.
	measuring = set("mm cm in inch inches \" ” ″ yd yds yards m g oz grams needle needles hook hooks ply size sizes us no uk color colour colors balls ball skeins skein minutes pairs strands strand metres meters holders degrees buttons threads thread times2 cms ins cms. dpns dpn double")
)

// makingUp begin a clause about what is done with the piece, which works no stitch of it.
var makingUp = set("sew stuff thread weave block press steam embroider glue insert iron wash trim bring fold flip lay")

// fixing begin one if it names a thing that is put on, which things are.
var fixing, things = set("place fasten attach position add secure put pin fix install set"), set("eye eyes nose nostrils ear ears mouth button buttons wire felt stuffing arm arms leg legs tail zipper ribbon lining pompom pom beads bead wings")

// handsHook reports whether a clause is about how hook and loop are handled, and works no stitch: drop loop from hook, insert
// hook from back to front through next st.
func handsHook(t []text.Token) bool {
	if !t[0].Is("drop", "insert", "remove", "place", "put", "pull", "draw", "pick", "replace", "enlarge", "grab", "slip", "inserting", "dropping", "removing", "with") {
		return false
	}
	return slices.ContainsFunc(t, func(k text.Token) bool { return k.Is("hook") }) && slices.ContainsFunc(t, func(k text.Token) bool { return k.Is("loop", "lp", "loops", "from", "through", "back", "front") }) &&
		!slices.ContainsFunc(t, func(k text.Token) bool { return k.Kind == 'n' || k.Is("sc", "dc", "hdc", "tr", "htr") })
}

// makesUp reports whether a clause is about what is done with the piece: sew the ears on between rounds 5 and 9.
func makesUp(t []text.Token) bool {
	for len(t) > 1 && t[0].Is("we", "now", "then", "next", "you", "and", "lightly", "which", "will") {
		t = t[1:]
	}
	return makingUp[t[0].S] || fixes(t)
}

// fixes reports whether a clause is about a thing that is put on: place the eyes between rounds 9 and 10.
func fixes(t []text.Token) bool {
	return (fixing[t[0].S] || t[0].S == "insert") && slices.ContainsFunc(t, func(k text.Token) bool { return things[k.S] })
}

// namesLast puts the name that a bracket gives to stitches behind the place that they go into: 5 dc (shell) in next sp.
func namesLast(t []text.Token) []text.Token {
	for i := 1; i < len(t)-2; i++ {
		if t[i].Kind != 'g' || !t[i+1].Is("in", "into", "over") {
			continue
		}
		if name, _ := nameMade(t[i].Sub); name == "" {
			continue
		}
		to := i + 1
		for to+1 < len(t) && t[to+1].Kind != 'p' && t[to+1].Kind != 'g' && !t[to+1].Is("and") && !isStar(&t[to+1]) {
			to++
		}
		from := i
		if i > 7 && t[i-6].Is(",") && t[i-5].Is("ch", "chain") && t[i-3].Is(",") && t[i-8].Kind == 'n' && t[i-7].S == t[i-1].S && t[i-8].S == t[i-2].S { // 3 dc, ch 3, 3 dc (shell) in next dc
			from = i - 8
		}
		whole := t[from:i]
		if from < i {
			all := t[i]
			all.Sub, all.Line, all.Col, all.End = whole, t[from].Line, t[from].Col, t[i-1].End
			whole = []text.Token{all}
		}
		t = slices.Concat(t[:from], whole, t[i+1:to+1], []text.Token{t[i]}, t[to+1:])
		i = to
	}
	return t
}

func dropFillers(t []text.Token) []text.Token {
	t = namesLast(t)
	var out []text.Token // nil: none was dropped so far
	for i := range t {
		switch gone := dropped(t, i); {
		case gone && out == nil:
			out = append(make([]text.Token, 0, len(t)-1), t[:i]...)
		case !gone && out != nil:
			out = append(out, t[i])
		}
	}
	if out == nil {
		return t
	}
	return out
}

func dropped(t []text.Token, i int) bool {
	k := &t[i]
	if k.Kind == 'g' {
		return droppedGroup(t, i)
	}
	if k.Kind != 'w' { // k to marker 2, sm
		next := near(t, i+1)
		return k.Kind == 'n' && k.Num.By == nil && near(t, i-1).Is("marker") && (i+1 == len(t) || next.Is(",", ".", ";", ":", "and"))
	}
	return fillers[k.S] || fills(t, i) || mannerAt(t, i) || besideWork(t, i)
}

// fills reports whether the word at i says nothing beside those next to it: purl wise, of of, into the top of your cluster.
func fills(t []text.Token, i int) bool {
	k, last, next := &t[i], near(t, i-1), near(t, i+1)
	return k.Is("k", "p") && next.Is("wise") || k.Is("wise") && last.Is("k", "p") || k.Is("make") && last.Is("you") || typedTwice(last, k) ||
		k.Is("to") && last.Is("in") && k.Kind == 'w' && next.Is("the", "next", "each", "same", "first", "last", "ring", "center", "centre") || // dc in to the next st
		k.Is("your", "my") && last.Is("of", "in", "into") || k.Is("cluster") && strings.HasSuffix(last.S, "tog") || // into the top of your dc5tog cluster
		anyOne(t, i) || k.Is("plain") && knitsPlain(t, i) || namesMarker(t, i)
}

// anyOne reports whether the word at i is the article, and no yarn A.
func anyOne(t []text.Token, i int) bool {
	next := near(t, i+1)
	return t[i].S == "a" && !(t[i].Cap && (i > 0 || next.Is("x"))) && next.Kind == 'w'
}

// typedTwice reports whether a small word stands there that the one before it is too: sc in in next st.
func typedTwice(last, k *text.Token) bool {
	return k.Is("to", "and", "from", "in", "of", "until") && last.Kind == 'w' && last.S == k.S
}

// namesMarker reports whether the word at i only says which marker is met next: k to 1 st before thumb marker.
func namesMarker(t []text.Token, i int) bool {
	k, last := &t[i], near(t, i-1)
	return near(t, i+1).Is("marker", "markers") && k.Ord == 0 && !k.Is("the", "a", "next", "last", "center", "centre", "marked", "side", "end", "each", "every", "both", "all", "beg", "beginning", "and", "or", "place", "placing", "slip", "slipping", "sl", "remove", "removing", "moving") && numerals[k.S] == 0 &&
		(last.Ord > 0 || last.Is("before", "to", "past", "until", "till", "from", "of", "the", "first", "second", "next", "last", "sl", "slip", "between"))
}

// knitsPlain reports whether the word at i only says again that stitches are knitted: knit 23 plain, knit all round plain.
func knitsPlain(t []text.Token, i int) bool {
	if next := near(t, i+1); next.Kind == 'n' || next.Is("row", "rows", "rnd", "rnds", "round", "rounds", "and", "st", "sts", "knitting") {
		return false
	}
	k := i - 1
	for k > 0 && i-k < 4 && (near(t, k).Kind == 'n' || numerals[near(t, k).S] > 0 || near(t, k).Is("st", "sts", "stitch", "stitches", "all", "round", "around", "across", "the", "next", "remaining")) {
		k--
	}
	return k >= 0 && k < i-1 && t[k].Is("knit", "k")
}

// besideWork reports whether the word at i belongs to words for the back of the work before a place: in back of work between
// next 2 petals.
func besideWork(t []text.Token, i int) bool {
	if !t[i].Is("in", "at", "on", "back", "of", "work") {
		return false
	}
	for from := max(i-3, 0); from <= i; from++ {
		if near(t, from).Is("in", "at", "on") && near(t, from+1).Is("back") && near(t, from+2).Is("of") && near(t, from+3).Is("work") && near(t, from+4).Is("between", "in", "into", "over", "around") {
			return true
		}
	}
	return false
}

// droppedGroup reports whether the bracket at i says nothing of what is worked.
func droppedGroup(t []text.Token, i int) bool {
	sub, last, next := t[i].Sub, near(t, i-1), near(t, i+1)
	switch {
	case len(sub) == 0:
		return false
	case len(sub) == 1: // form (1) ring, at (1) time
		return sub[0].Kind == 'n' && sub[0].Num.By == nil && sub[0].Num.All == 1 && last.Is("form", "at", "make", "work", "working", "a") && next.Kind == 'w'
	case last.Is("purl", "purls", "picot", "picots"): // 1 purl (4 chain, 1 slip stitch in the first)
		return slices.ContainsFunc(sub, func(t text.Token) bool { return t.Is("ch", "chain") })
	case sub[0].Is("or"):
		if last.Kind == 'n' && sub[1].Kind == 'n' && (len(sub) == 2 || len(sub) == 3 && sub[2].Kind == 'w') { // 10 (or 12)
			return true
		}
	case sub[0].Kind == 'n' && len(sub) < 9 && sub[len(sub)-1].Is("inch", "inches", "\"", "”"): // ch 122 (10 ch sts to 1 inch)
		return slices.ContainsFunc(sub, func(t text.Token) bool { return t.Is("to", "per", "=", "make", "makes") })
	case sub[0].Is("do") && near(sub, 1).Is("not") && !slices.ContainsFunc(sub, func(t text.Token) bool { return t.Kind == 'n' || t.Is("count", "counts", "counted", "turn", "join") }): // inc 15 sts (do not inc over those before)
		return true
	case len(sub) == 2 && sub[0].Is("a", "an", "one"): // 5 dc (a group) in next sp
		return next.Is("in", "into", "over") && sub[1].Is("group", "cluster")
	case sub[0].Is("this", "these") && slices.ContainsFunc(sub, func(t text.Token) bool { return t.Is("called") }): // this is called cable 8
		return true
	case len(sub) == 3 && sub[0].Is("a", "the") && sub[1].Is("knit", "purl", "k", "p") && sub[2].Is("st", "stitch"): // sl 1 (a knit st)
		return true
	case sub[0].Is("by") && !weightyBefore(last): // dec 1 st at armhole edge (by working to last 3 sts, k2tog, k1)
		return true
	case sub[0].Is("see") && sub[len(sub)-1].Kind == 'w', len(sub) > 3 && sub[0].Is("notice", "note", "remember", "you"):
		return true
	}
	// how a stitch is made, before where: 15 tr (thread twice around hook) in ring
	return last.Kind == 'w' && next.Is("in", "into") && slices.ContainsFunc(sub, func(t text.Token) bool { return t.Is("hook") })
}

// weightyBefore reports whether what stands before a bracket needs it to be said how many.
func weightyBefore(t *text.Token) bool { return t.Is("inc", "dec", "increase", "decrease", "made") }

// mannerAt reports whether the word at i belongs to how a stitch is made, before where: 2 tr in the same way into next ch.
func mannerAt(t []text.Token, i int) bool {
	switch t[i].S {
	case "in", "the", "this", "that", "like", "same", "similar", "usual", "a", "way", "manner":
	default: // most words
		return false
	}
	for from := max(i-3, 0); from <= i; from++ {
		to := from
		for ; near(t, to).Is("in", "the", "this", "that", "like", "same", "similar", "usual", "a"); to++ {
		}
		if to > from && near(t, to).Is("way", "manner") && to >= i && near(t, to+1).Is("in", "into", "over", "on") {
			_, row := text.RowWord(near(t, to+3).S) // increase in this way on every round
			return !row
		}
	}
	return false
}

// neutralAll is neutral for what a bracket holds.
func (p *parser) neutralAll(t []text.Token) bool {
	return p.within(t).neutral(t)
}

// neutral reports whether words move no stitch: none of them names a stitch, counts or may
// change what is worked.
func (p *parser) neutral(t []text.Token) bool { return p.neutralFrom(t, 0) }

// neutralFrom is neutral of words whose first ones are known to be.
func (p *parser) neutralFrom(t []text.Token, from int) bool {
	for i := max(from, 0); i < len(t); i++ {
		if !p.passes(t, i) {
			return false
		}
	}
	return true
}

// neutralReach is how many words behind one say whether it is neutral.
const neutralReach = 2

// passes reports whether a word moves no stitch, beside those around it.
func (p *parser) passes(t []text.Token, i int) bool {
	switch k := &t[i]; k.Kind {
	case 'n', 'f':
		return numbersYarn(t, i) || freeNumber(near(t, i-1), k, near(t, i+1), near(t, i+2))
	case 'g':
		return p.neutralAll(k.Sub)
	case 'p':
		return !isStar(k)
	case 'w':
		if k.Is("into") && slices.ContainsFunc(t[i:min(len(t), i+5)], func(t text.Token) bool { return t.Is("sp", "sps", "space", "spaces") }) { // a place
			return false
		}
		return p.freeWord(k, near(t, i+1))
	}
	return true
}

// nowhere is what stands before the first word and behind the last.
var nowhere = text.Token{}

func near(t []text.Token, i int) *text.Token {
	if i < 0 || i >= len(t) {
		return &nowhere
	}
	return &t[i]
}

// isNumber reports whether a token is a whole number or a fraction.
func isNumber(t *text.Token) bool { return t.Kind == 'n' || t.Kind == 'f' }

// freeNumber reports whether a number counts no stitches or rows: it stands before a measure, behind the name
// of a thing that has numbers, or is a part of a fraction or a range.
func freeNumber(last, k, next, second *text.Token) bool {
	if last.Is("on") && !measuring[next.S] && !next.Is("needles", "needle", "dpns") {
		return false
	}
	return measuring[next.S] && !second.Is("crochet", "crochets") || second.Is("apart") || k.Kind == 'f' || next.Kind == 'f' ||
		last.Is("size", "no", "us", "colour", "color", "mc", "cc", "number", "page", "fig", "chart", "/", "-", "needles", "needle", "on", "figure", "uk", "over", "photo", "part", "step", "than", ".") ||
		next.Is("/", "-", ".") && isNumber(second) || next.Is("x") && second.Kind == 'n'
}

// numbersYarn reports whether a number belongs to a yarn that words take up or put down: with C1, drop B2.
func numbersYarn(t []text.Token, i int) bool {
	letter := near(t, i-1)
	return t[i].Glued && letter.Kind == 'w' && letter.Cap && !letter.Glued && len(letter.S) == 1 && letter.S[0] <= 'h' &&
		near(t, i-2).Is("with", "using", "in", "to", "and", "yarn", "yarns", "colour", "color", "off", "join", "attach", "drop", "change", "cut")
}

// freeWord reports whether a word is none that counts, names a place of the row, or a stitch.
func (p *parser) freeWord(k, next *text.Token) bool {
	switch {
	case weighty[k.S], k.Is("v", "vs") && next.Is("-", "st", "sts", "stitch"), k.Is("each", "all", "next", "last", "first") && next.Is("st", "sts", "stitch", "stitches", "sc", "dc", "row", "rnd", "round", "tr", "hdc", "htr", "ch"):
		return false
	case k.Is("double", "single", "treble") && next.Is("crochet", "crochets"):
		return false
	case loose[k.S]:
		return next.Kind != 'n' || measuring[k.S] || !p.names(k.S)
	}
	return fillers[k.S] || !p.names(k.S)
}

func (p *parser) names(w string) bool {
	_, ok := p.r.thing([]byte(w))
	return ok && len(w) > 0
}

// modal are words of a sentence about what may be done.
var modal = set("can could may might would if i we you'll i'll want like prefer")

// modal reports whether a sentence tells what may be done, so that it is no instruction.
func (p *parser) modal(t []text.Token) bool {
	if len(t) > 4 && t[0].Is("i", "we", "you", "your", "you'll", "i'll", "don't", "remember", "it") {
		return true
	}
	return p.tells(t) && slices.ContainsFunc(t, func(t text.Token) bool { return modal[t.S] && t.Kind == 'w' })
}

// tells reports whether many words of a sentence are those of plain English.
func (p *parser) tells(t []text.Token) bool {
	words, tells := 0, 0
	for i := range t {
		if t[i].Kind == 'w' {
			words++
			if telling[t[i].S] {
				tells++
			}
		}
	}
	return words >= 6 && tells >= 3 && tells*5 >= words
}

// prose reports whether tokens are a sentence that tells something, and no instruction.
func (p *parser) prose(t []text.Token) bool {
	words, tells := 0, 0
	for i := range t {
		if t[i].Kind == 'n' && i+1 < len(t) && p.names(t[i+1].S) {
			return false
		}
		if t[i].Kind != 'w' {
			continue
		}
		words++
		if telling[t[i].S] {
			tells++
		}
		if t[i].Is("rep", "repeat") && i < 2 {
			return false
		}
	}
	return words >= 4 && tells >= 2 && tells*4 >= words
}

var (
	// stretches are what stitches are worked into and is not named by a stitch.
	stretches = set("petal petals shell shells fan fans group groups cluster clusters corner corners scallop scallops point points loop loops lp lps sp sps space spaces arch arches v bobble bobbles popcorn popcorns picot picots pair pairs st sts stitch stitches")
	// leading are words that lead to a place, ranking which of several it is.
	leading, ranking = set("in into over between around"), set("next each every last first same middle center centre previous it a the complete of on at from to work working make")
)

// passedOver is where words stand that name a place or a stitch and that the reading of a row does not follow: those that tell a
// place nearer, and those that are read as nothing though they are no sentence. Empty: there are none.
func (r *Reader) passedOver(body []ins.Item, words []ins.Word) ins.Span {
	if !r.crochet {
		return ins.Span{}
	}
	for _, n := range body {
		var places []ins.Place
		switch n := n.(type) {
		case *ins.Nothing:
			if r.namesOnly(n.Span(), words) {
				return n.Span()
			}
		case *ins.Stitch:
			places = n.Places
		case *ins.Skip:
			places = n.Places
		case *ins.Repeat:
			if s := r.passedOver(n.Body, words); s != (ins.Span{}) {
				return s
			}
			places = n.Places
		}
		for _, p := range places {
			if p.Passed != (ins.Span{}) {
				return p.Passed
			}
		}
	}
	return ins.Span{}
}

// namesOnly reports whether the words at a place do nothing but name stitches and where they are worked: in next loop, shell over
// shell. In brackets they only say more of what stands before, unless they begin with a place: in next sp (between groups).
func (r *Reader) namesOnly(at ins.Span, words []ins.Word) bool {
	n, named, leads := 0, false, false
	for i := range words {
		w := &words[i]
		if w.Line != at.Line || w.Col < at.Col || w.Col >= at.End || w.S == ")" || w.S == "]" {
			continue
		}
		s := strings.ToLower(w.S)
		names, leads1 := r.namesWork(s), leading[s]
		bracket := s == "(" || s == "["
		switch {
		case bracket && n == 0, leads1:
		case n == 1 && i > 0 && (words[i-1].S == "(" || words[i-1].S == "["), !names && !ranking[s]:
			return false
		}
		n++
		named, leads = named || names, leads || leads1
	}
	return named && leads
}

// namesWork reports whether a word names a stitch or what stitches are worked into.
func (r *Reader) namesWork(s string) bool {
	_, stitch := r.thing([]byte(s))
	return (stitch || stretches[s]) && !leading[s] && !ranking[s]
}
