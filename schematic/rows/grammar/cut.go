package grammar

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

// leadsOver reports whether words end in one that the name of a row follows: repeat the 4th and / 5th rows; not: until piece measures 4 in.
func leadsOver(t []text.Token) bool {
	last, n := near(t, len(t)-1), near(t, len(t)-2)
	return last.Is("and", "to", "the", "of", "from", "through", "like", "as") || last.Is("in") && n.Kind != 'n' && n.Kind != 'f'
}

// cutRow reports whether a line without a label goes on with a row that print cut: it has not come to its end, and this line goes on with
// stitches and the end stands in it or a few lines on. A round ends where it is closed; a row is cut behind a full stop, if it runs over
// lines already or the text is in columns, and ends where it is turned.
func (r *Reader) cutRow(tokens []text.Token) bool {
	label, k, _ := text.Label(r.tokens, r.roundR)
	if label == nil || !r.crochet {
		return false
	}
	t, first, last := &tokens[0], &r.tokens[0], &r.tokens[len(r.tokens)-1]
	if label.Round && (isStar(t) || t.Is("(", "[", "rep", "repeat", "then", "now", "in", "next", "for") || t.Kind == 'n' || verbs[t.S]) &&
		!closesRound().MatchString(strings.Join(r.x.Src[first.Line-1:t.Line-1], " ")) && r.endsAhead(t.Line, closesRound(), r.justBegun(k)) {
		return true
	}
	_, stitch := r.thing([]byte(t.S))
	begins := isStar(t) || stitch || t.Is("skip", "sk", "miss", "ch", "sl") || t.Kind == 'n' && near(tokens, 1).Kind == 'w'
	return begins && last.Is(".") && last.Line+1 == t.Line && (last.Line > first.Line || r.columns()) &&
		!slices.ContainsFunc(r.tokens[k:], func(t text.Token) bool { return t.Is("turn", "join", "fasten") }) && r.endsAhead(t.Line, closesRow(), false)
}

// justBegun reports whether the row that is gathered is at its beginning: nothing in it goes on to the end. Its label has k tokens.
func (r *Reader) justBegun(k int) bool {
	return !slices.ContainsFunc(r.tokens[k:], func(t text.Token) bool {
		return t.Is("around", "round", "rnd", "each", "every", "all", "end", "rep", "repeat", "across", "remaining", "rest", "times") || isStar(&t)
	}) && !endsInCount().MatchString(r.raw)
}

// leadsRow reports whether the name of a row and its work follow: 1st row: 3 treble; 1st row as follows: 3 treble.
func (r *Reader) leadsRow(t []text.Token) bool {
	if t[0].Ord == 0 || !r.beginsRow(t) {
		return false
	}
	_, n, _ := text.Label(t, r.roundR)
	return t[n-1].Is(":", "--") || near(t, n).Is("entirely") || asFollows(t[n:]) > 0
}

// worksThe reports whether words lead to the name of a row: On the chain work the 1st row: …
func worksThe(t []text.Token) bool {
	k := len(t) - 1
	return k > 0 && t[k].Is("the") && t[k-1].Is("work", "begin", "commence", "crochet", "knit")
}

// cut is where the first row or sentence of a paragraph ends: before the label of another
// row, or, without labels, at the end of a sentence.
func (r *Reader) cut(t []text.Token) int {
	label, k, _ := text.Label(t, r.roundR)
	depth, star := 0, 0
	if k == 0 && t[0].Is("(", "[", "{") {
		depth++
	}
	for i := max(k, 1); i+1 < len(t); i++ {
		w := &t[i]
		switch {
		case w.Is("(", "[", "{"):
			depth++
		case w.Is(")", "]", "}"):
			depth--
		case isStar(w):
			star++
		}
		if depth <= 0 && r.endsBefore(t, i, label, star) {
			return i + 1
		}
		if depth <= 0 && stopsAt(t, i, label) && (r.beginsRow(t[i+1:]) || w.Is(".", ")", "]") && worksRows(t[i+1:]) || w.Is(".") && nextBare(label, t[i+1:]) || w.Is(".") && star%2 == 0 && beginsAnew(t[i+1:]) || label == nil && w.Is(".") && star%2 == 0 && r.beginsSentence(t[:i], t[i+1:])) {
			return i + 1
		}
	}
	return len(t)
}

// endsBefore reports whether behind the token at i the row is repeated, or the first row begins that a sentence leads to.
func (r *Reader) endsBefore(t []text.Token, i int, label *ins.Label, stars int) bool {
	if label == nil {
		return (worksThe(t[:i+1]) || t[i].Is("and", "then") && t[i+1].Ord == 1) && r.leadsRow(t[i+1:])
	}
	return r.endsInSts(t, i) || (t[i].Is(";", ".") || t[i].Is(")") && near(t, i-1).Is(".")) && (repeatsNamed(t[i+1:]) || repeatsRows(t[i+1:]) || stars == 0 && r.repeatsMarked(t[i+1:])) || t[i+1].Is("(", "[") && len(t) > i+3 && repeatsRows(t[i+2:])
}

// repeatsRows reports whether words behind a row repeat it, or rows of which it is one.
func repeatsRows(t []text.Token) bool { return repeatsIt(t) || repeatsThese(t) || repeatsByNumber(t) }

// stopsAt reports whether a row or sentence may end with the token at i.
func stopsAt(t []text.Token, i int, label *ins.Label) bool {
	w, next := &t[i], &t[i+1]
	if w.Line != next.Line && w.Is("and", "to", "of", "the", "from", "&", ",", "through", "in", "rep", "repeat", "with", "like", "as", "on", "for") {
		return false
	}
	stop := w.Is(".", ";") || w.Is(":", "-", "--") && firstColon(t[i+1:]) || w.Is(":") && i > 0 && t[i-1].Is("follows", "foll", "following", "thus", "pattern", "patt", "viz", "rows", "manner", "way") || rowAhead(t[i+1:]) || label != nil && rowAfter(label, w, t[i+1:]) || w.Is(")", "]", "}") || w.Line != next.Line || label == nil && firstAhead(w, t[i+1:])
	if !stop || !next.Cap && next.Ord == 0 && next.Kind != 'n' && !isStar(next) && !rowColon(t[i+1:]) {
		return false
	}
	_, needle, _ := text.NeedleHead(t[i+1:])
	return needle == 0 || label == nil && !headsNeedle(t)
}

// firstColon reports whether the name of a first or next row stands there with a colon: Shape raglan: 1st row: K2, ssk.
func firstColon(t []text.Token) bool {
	_, row := text.RowWord(near(t, 1).S)
	return row && (t[0].Ord == 1 && near(t, 2).Is(":") || t[0].Is("next") && (near(t, 2).Is(":") || near(t, 2).Is("(", "[") && len(t) > 3 && sideAhead(t[3:])))
}

// rowColon reports whether the number of a row stands there with a colon, whatever its first letter: rnd 3: ch 3.
func rowColon(t []text.Token) bool {
	_, row := text.RowWord(t[0].S)
	return row && len(t) > 3 && t[1].Kind == 'n' && t[2].Is(":")
}

// firstAhead reports whether a first row begins there behind other words without a sign: with yarn A Row 1 (RS) ch 3.
func firstAhead(before *text.Token, t []text.Token) bool {
	_, row := text.RowWord(t[0].S)
	return row && t[0].Cap && len(t) > 4 && t[1].Kind == 'n' && t[1].Num.By == nil && t[1].Num.All == 1 && t[2].Is("(") && sideAhead(t[3:]) && !leadsToRow(before)
}

// leadsToRow reports whether a row that is named behind a word is spoken of and does not begin.
func leadsToRow(t *text.Token) bool {
	return t.Is("to", "and", "of", "in", "on", "from", "as", "rep", "repeat", "work", "for", "with", "through", "until", "&", "-", "after", "end", "like", "before")
}

// nextBare reports whether the number of the row behind that of a label stands there alone: 1-5. K around. 6. K2tog around.
func nextBare(l *ins.Label, t []text.Token) bool {
	if l == nil || l.Next || len(l.Listed) > 0 || l.To.By != nil || len(t) < 4 || t[0].Kind != 'n' || t[0].Num.By != nil || t[0].Num.All != l.To.All+1 {
		return false
	}
	return t[1].Is(".", ":") || t[1].Is("-") && t[2].Kind == 'n' && t[3].Is(".", ":")
}

// beginsRow reports whether the label of another row stands there.
func (r *Reader) beginsRow(t []text.Token) bool {
	if len(t) > 2 && isStar(&t[0]) { // ** 8th row: Same as 5th row
		t = t[1:]
	}
	l, n, _ := text.Label(t, r.roundR)
	return l != nil && (!l.Next || t[0].Is("next") || n > 2) && t[0].Kind != 'n' && l.Name != "every" && !r.refers(t, n)
}

// beginsSentence reports whether a sentence that stands alone begins behind the words before: none that ends their row.
func (r *Reader) beginsSentence(before, t []text.Token) bool {
	return intoOneChain(before) && goesInEach(t) || t[0].Kind != 'n' && !r.afterStar(t) && !r.onlyCount(t) && !(r.crochet && closesBySlip(t)) && (r.long(t) || !t[0].Is("turn", "join", "ch", "chain", "fasten"))
}

// intoOneChain reports whether words end in the chain that a first round goes into: 6 sc in 2nd ch from hook; 6 sc into the first chain.
func intoOneChain(t []text.Token) bool {
	k := len(t) - 1
	if near(t, k).Is("hook") && near(t, k-1).Is("from") {
		k -= 2
	}
	return near(t, k).Is("ch", "chain") && near(t, k-1).Ord > 0
}

// goesInEach reports whether a sentence begins with stitches into each of those below: 2 sc in each sc.
func goesInEach(t []text.Token) bool {
	return len(t) > 3 && t[0].Kind == 'n' && t[1].Kind == 'w' && t[2].Is("in", "into") && t[3].Is("each", "every")
}

// closesBySlip reports whether a sentence only closes a round: Sl st in first sc.
func closesBySlip(t []text.Token) bool {
	if !t[0].Is("ss", "slst") && !(t[0].Is("sl", "slip") && near(t, 1).Is("st", "stitch")) {
		return false
	}
	first := false
	for i := 1; i < len(t) && t[i].Kind != 'g' && !t[i].Is("."); i++ {
		if t[i].Kind == 'p' || t[i].Kind == 'n' {
			return false
		}
		first = first || t[i].Is("first", "1st", "top", "beg", "beginning", "join")
	}
	return first
}

// repeatsIt reports whether words behind a row repeat it: repeat this row 15 times.
func repeatsIt(t []text.Token) bool {
	if len(t) < 3 || !t[0].Is("rep", "repeat") || !t[1].Is("this", "last") {
		return false
	}
	_, row := text.RowWord(t[2].S)
	return row
}

// repeatsNamed reports whether words behind a row work it again by its name: work dec row every other row 6 times.
func repeatsNamed(t []text.Token) bool {
	k := 1
	for near(t, k).Is("the", "this", "last") {
		k++
	}
	_, row := text.RowWord(near(t, k+1).S)
	return t[0].Is("rep", "repeat", "work") && row && near(t, k).Is("inc", "dec", "increase", "decrease", "raglan") && near(t, k+2).Is("every", "each", "on", "a", "once", "twice", "until", "when")
}

// repeatsThese reports whether words behind a row repeat the last rows, it among them: rep these 4 rows four times more.
func repeatsThese(t []text.Token) bool {
	if len(t) < 4 || !t[0].Is("rep", "repeat", "work") {
		return false
	}
	k := 1
	for near(t, k).Is("the", "these", "last", "above", "previous", "preceding") {
		k++
	}
	n, behind := near(t, k), near(t, k+2)
	if n.Kind != 'n' && numerals[n.S] < 2 {
		return false
	}
	_, row := text.RowWord(near(t, k+1).S)
	switch {
	case t[0].S == "work": // these 2 rows once more
		return row && near(t, 1).Is("these") && (behind.Is("once", "twice", "again") || near(t, k+3).Is("times", "more", "time"))
	case near(t, k-1).Is("rep", "repeat", "the"):
		return row && behind.Is("above", "before", "again")
	}
	return row
}

// repeatsByNumber reports whether a sentence behind a row repeats rows by their numbers: Repeat 2nd and 3rd rows once more.
func repeatsByNumber(t []text.Token) bool {
	if !t[0].Is("rep", "repeat") {
		return false
	}
	k := 1
	for near(t, k).Is("the") {
		k++
	}
	if near(t, k).Is("rows", "rnds", "rounds") && near(t, k+1).Kind == 'n' { // Repeat Rows 1 and 2 once
		return true
	}
	if !t[0].Cap {
		return false
	}
	for near(t, k).Ord > 0 || near(t, k).Ord == 0 && near(t, k).Is("and", "&", "to", "-") && near(t, k+1).Ord > 0 {
		k++
	}
	_, row := text.RowWord(near(t, k).S)
	return row && near(t, k-1).Ord > 0
}

// repeatsMarked reports whether the rows from the star before a label on are repeated.
func (r *Reader) repeatsMarked(t []text.Token) bool {
	return len(t) > 2 && r.mark != "" && t[0].Is("rep", "repeat") && t[1].Is("from") && t[2].S == r.mark
}

// worksRows reports whether a sentence behind a row works more of them: Purl 1 row. Knit 12 rows in the same way. Now work 4 rows even.
func worksRows(t []text.Token) bool {
	begins := t[0].Cap
	if t[0].Is("now", "then") {
		t = t[1:]
	}
	_, row := text.RowWord(near(t, 2).S)
	if !begins || !row || !t[0].Is("knit", "work", "purl", "k", "p") || t[1].Kind != 'n' && !t[1].Is("one", "next") {
		return false
	}
	return t[0].S != "work" && near(t, 3).Is("", ".", ",") || near(t, 3).Is("in", "more", "even", "without", "straight", "plain")
}

// beginsAnew reports whether a sentence behind a row goes on with rows of its own: Continue in stockinette st until …
func beginsAnew(t []text.Token) bool {
	if !t[0].Cap || !t[0].Is("continue", "cont", "when", "hereafter", "thereafter", "now") && !(t[0].Is("work", "keeping") && len(t) > 2) {
		return false
	}
	far := false
	for i := 1; i < len(t) && !(t[i].Is(".") && t[i-1].Kind == 'w' && (i+1 == len(t) || t[i+1].Cap)); i++ {
		if t[i].Is("loop", "loops") && t[0].Is("hereafter", "thereafter") {
			return true
		}
		if t[i-1].Is("each", "every") || far && endsSide(t, i) { // 9 sts on each round until; ending with a WS row
			continue
		}
		if t[i].Is("around", "across", "round", "rnd", "row", "end") || isStar(&t[i]) {
			return false
		}
		far = far || t[i].Is("until", "till", "inch", "inches", "ins", "cm", "even", "straight", "measures")
	}
	return far
}

// endsSide reports whether the row at i is the one after which rows end: ending with a WS row.
func endsSide(t []text.Token, i int) bool {
	k := i - 1
	for k > 0 && t[k].Is("rs", "ws", "right", "wrong", "side", "-", "p", "purl", "k", "knit", "a", "with", "after", "on", "by") {
		k--
	}
	return t[i].Is("row", "rnd", "round") && k < i-1 && t[k].Is("end", "ending", "finishing")
}

// rowAhead reports whether a row's number with a colon stands there: K Row 2: K3.
func rowAhead(t []text.Token) bool {
	_, row := text.RowWord(t[0].S)
	return row && t[0].Cap && len(t) > 2 && t[1].Kind == 'n' && t[2].Is(":")
}

// rowAfter reports whether the row behind that of a label begins there without a sign: Row 3 k2, p2 Row 4 p2, k2.
func rowAfter(l *ins.Label, before *text.Token, t []text.Token) bool {
	if l.Next || l.To.By != nil || len(t) < 3 || leadsToRow(before) {
		return false
	}
	if k := l.To.All + 1; t[0].Ord == k { // 1st row: k1, p1, 2nd row: p1, k1
		if t[1].Is("and") && t[2].Ord > k {
			t = t[2:]
		}
		_, row := text.RowWord(t[1].S)
		return row && near(t, 2).Is(":")
	}
	_, row := text.RowWord(t[0].S)
	return row && t[0].Cap && t[1].Kind == 'n' && t[1].Num.All == l.To.All+1
}

// refers reports whether a label within a sentence only names the row: Row 2 forms the pattern.
func (r *Reader) refers(t []text.Token, n int) bool {
	return n >= len(t)
}

// afterStar reports whether a sentence repeats a starred stretch, which stays with it.
func (r *Reader) afterStar(t []text.Token) bool {
	if !t[0].Is("rep", "repeat") {
		return false
	}
	for i := 1; i < min(4, len(t)); i++ {
		if isStar(&t[i]) {
			return true
		}
	}
	return false
}

// long reports whether more than a turn or a join stands in the sentence.
func (r *Reader) long(t []text.Token) bool {
	for i := range t {
		if t[i].Is(".") {
			return i > 7
		}
	}
	return len(t) > 7
}

func (r *Reader) onlyCount(t []text.Token) bool {
	for i := range t {
		if t[i].Is(".") || i == len(t)-1 {
			return i < 8 && r.parser(nil, &ins.Line{}).countsOf(t[:i]) != nil
		}
	}
	return false
}
