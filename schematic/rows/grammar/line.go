package grammar

import (
	"cmp"
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// ofLast is a count of rows that do not follow each other, which only the last of them has: (34 sc at end of row 16).
var ofLast = text.Once(`(?i)\bat (?:the )?end of (?:last )?(?:row|rnd|round)s?\b[\w ]{0,8}[)\]]`)

// slippedFirst says behind the work of a row that its first stitch is slipped: knit across, slipping the first st.
var slippedFirst = text.Once(`(?i)\b(?:slip(?:ping|ped)?|sl)\.? (?:the )?(?:first|1st) st|\b(?:first|1st) st(?:itch)? (?:is )?slipped`)

// slipsFirst puts the first stitch of a knitted row before its work where other words say behind it that it is slipped.
func (r *Reader) slipsFirst(l *ins.Line) {
	if r.crochet || l.Label == nil || !slippedFirst().MatchString(l.Src) {
		return
	}
	at := slices.IndexFunc(l.Body, func(n ins.Item) bool {
		st, ok := n.(*ins.Stitch)
		return (is[*ins.Nothing](n) || ok && st.Kind != nil && st.Kind.Base == "sl") && slippedFirst().MatchString(r.x.Quote(n.Span()))
	})
	if at < 0 || at == 0 && is[*ins.Stitch](l.Body[0]) || !slices.ContainsFunc(l.Body, is[*ins.Stitch]) {
		return
	}
	if at > 0 && (slices.ContainsFunc(l.Body[:at], is[*ins.Turn]) || slices.ContainsFunc(l.Body[at+1:], func(n ins.Item) bool { return !is[*ins.Nothing](n) && !is[*ins.Turn](n) })) {
		return // k10, turn, slip first st, p9: it is slipped there
	}
	sl := &ins.Stitch{Kind: stitch.ByID("sl"), N: ins.N(1)}
	sl.Put(l.Body[at].Span())
	l.Body = slices.Insert(slices.Delete(l.Body, at, at+1), 0, ins.Item(sl))
}

// line reads the tokens of one row or sentence.
func (r *Reader) line(tokens []text.Token) {
	tokens = r.wayForth(tokens)
	first, last := &tokens[0], &tokens[len(tokens)-1]
	l := &ins.Line{At: ins.Span{Line: first.Line, Col: first.Col, End: last.End}, Src: r.x.Src[first.Line-1]}
	for k := len(tokens) - 1; k > 0 && tokens[k].Line != first.Line; k-- {
		l.At.End = tokens[k-1].End
	}
	if last.Line > first.Line {
		l.Src = strings.Join(r.x.Src[first.Line-1:last.Line], "\n")
	}
	l.Words = make([]ins.Word, len(tokens))
	for i := range tokens {
		l.Words[i] = tokens[i].Word
	}
	short := r.short(tokens, l)
	if tokens = r.marked(withoutMultiple(tokens)); first != &tokens[0] {
		l.Mark = first.S
	}
	tokens = r.withoutRows(tokens)
	label, k, count := text.Label(tokens, r.roundR)
	if label != nil {
		k = r.labels(l, label, tokens, k)
	}
	p := r.parser(tokens[k:], l)
	l.Changed = p.changed(tokens)
	l.Into = p.into()
	if len(count) > 0 {
		l.Stated = p.countsOf(count)
	}
	list := r.countWorked(unbracketed(p.wholeRow()), label)
	if l.Body, l.Stated = endCount(list, l.Stated); l.Label != nil && len(l.Label.Listed) > 0 && ofLast().MatchString(l.Src) {
		l.Stated = nil
	}
	if r.crochet {
		l.Body = standsTall(startsInGroup(r.gathered(l.Body)))
		r.lastOfLegs(l.Body, true)
		r.endsWithin(l)
	}
	r.firstLoop(l)
	r.slipsFirst(l)
	r.skipped(l)
	r.plainRow(l)
	l.Body = withoutRest(l)
	repeatedRows(l)
	countedTwice(l)
	shapedFurther(l)
	r.turnedBefore(l)
	r.slippedBefore(l)
	r.bareShaping(l)
	l.Passed = r.passedOver(l.Body, l.Words)
	l.Chart = slices.ContainsFunc(l.Body, charted)
	l.Needles = r.needleCounts(tokens)
	if l.Label == nil && !r.kept(l, tokens) && !short {
		r.yarn = cmp.Or(p.goesOnIn(), takenUp(l.Body), r.yarn)
		r.heldBefore(l)
		r.x.Read.Words++
		r.note(r.x.Src[first.Line-1], first.Line)
		return
	}
	if r.noWork(l, p) {
		r.x.Read.Words++
		return
	}
	if l.Label != nil && !working(l.Body) && len(l.Body) > 0 && len(l.Unread) == 0 && !turns(l.Body) { // a row without a word of work
		l.Unread = append(l.Unread, p.span(0, len(p.t)-1))
	}
	r.over(tokens, l)
	l.Yarn, r.yarn = cmp.Or(p.within(tokens[:k]).yarnInLabel(), p.yarnCastOn(l), r.yarn), ""
	if l.Label == nil {
		r.yarn = p.goesOnIn()
	}
	l.Sizes = r.only
	r.joinedBefore(l)
	r.sec.Lines = append(r.sec.Lines, r.behindCastOn(l)...)
	r.x.Read.Lines++
	if len(l.Unread) == 0 {
		r.x.Read.Whole++
	}
	if l.Stated != nil {
		r.x.Read.Stated++
	}
	r.count(l)
}

// joinedBefore takes the space in which yarn is joined behind the round before, or on a line of its own, into the round that begins there:
// Join B in any ch-2 sp. Rnd 3: Ch 3, dc in same sp.
func (r *Reader) joinedBefore(l *ins.Line) {
	worked := slices.ContainsFunc(r.sec.Lines, func(l *ins.Line) bool { return l.Label != nil })
	if !r.crochet || !worked || l.Label == nil || !l.Label.Round || !chainFirst(l.Body) {
		return
	}
	before := r.sec.Lines[len(r.sec.Lines)-1]
	k := len(before.Body) - 1
	for k >= 0 && is[*ins.Nothing](before.Body[k]) {
		k--
	}
	if k < 0 {
		return
	}
	j, ok := before.Body[k].(*ins.JoinYarn)
	if !ok || len(j.Place) != 1 || !j.Place[0].Unit.Space && j.Place[0].Unit.Word != "corner" || k > 0 && !is[*ins.Fasten](before.Body[k-1]) && !is[*ins.Nothing](before.Body[k-1]) {
		return
	}
	nothing := &ins.Nothing{}
	nothing.Put(j.At)
	before.Body[k] = nothing
	l.Body = append([]ins.Item{j}, l.Body...)
}

// chainFirst reports whether instructions begin with a chain, by itself or in a bracket.
func chainFirst(list []ins.Item) bool {
	if len(list) == 0 {
		return false
	}
	if q, ok := list[0].(*ins.Repeat); ok {
		return chainFirst(q.Body)
	}
	return is[*ins.Chain](list[0])
}

// labels gives a line the label that its first k tokens are, and goes behind what leads from it to the row.
func (r *Reader) labels(l *ins.Line, label *ins.Label, t []text.Token, k int) int {
	label.At.Line = t[0].Line
	r.around = r.around || saysRound(l.Src)
	label.Round = label.Round || r.around || r.knits && !r.crochet && goesAround(t)
	label.Side = cmp.Or(label.Side, toldSide(t[k:]))
	beforeFirst(label)
	l.Label = label
	k += asFollows(t[k:])
	return k + r.yarnBefore(t, k, l)
}

// goesAround reports whether a knitted row ends with around: it is a round, whatever it is called.
func goesAround(t []text.Token) bool {
	n := len(t) - 1
	for n > 0 && t[n].Is(".", ",") {
		n--
	}
	return t[n].Is("around") && n > 2
}

// behindCastOn is a line, parted from the stitches that are cast on in its sentence: CO 80 sts, *k4, p4* to end.
func (r *Reader) behindCastOn(l *ins.Line) []*ins.Line {
	if l.Label != nil || len(r.sec.Lines) > 0 || !slices.ContainsFunc(l.Body, is[*ins.CastOn]) {
		return []*ins.Line{l}
	}
	k := slices.IndexFunc(l.Body, func(n ins.Item) bool {
		return !is[*ins.CastOn](n) && !is[*ins.Join](n) && !is[*ins.Marker](n) && !is[*ins.Nothing](n)
	})
	if k < 0 || !slices.ContainsFunc(l.Body[:k], is[*ins.CastOn]) || !is[*ins.Repeat](l.Body[k]) && !is[*ins.Even](l.Body[k]) && !is[*ins.Stitch](l.Body[k]) {
		return []*ins.Line{l}
	}
	base := *l
	base.Body, base.Stated, base.Unread, base.Chart, base.Needles = l.Body[:k:k], nil, nil, false, nil
	l.Body, l.At = l.Body[k:], l.Body[k].Span()
	return []*ins.Line{&base, l}
}

// toldSide is the side that words at either end of a row tell, apart from its work: (RS) K8; With WS facing, k8; K8, p3, k8 (Wrong
// side); K8. This is a wrong-side row. 0: none does.
func toldSide(t []text.Token) int {
	const most = 14 // (this is a wrong side row)
	for len(t) > 0 && t[len(t)-1].Is(".", ")", "]", ">") {
		t = t[:len(t)-1]
	}
	for i := range min(len(t), most) {
		if i > 0 && t[i].Is(")", "]", ">", ",", ".", ":", "-", "--") {
			if side := text.SideNamed(t[:i]); side > 0 {
				return side
			}
		}
	}
	for i := len(t) - 2; i >= max(len(t)-most, 0); i-- {
		if t[i].Is("(", "[", ",", ".", "-", "--", ";") {
			if side := text.SideNamed(t[i+1:]); side > 0 && (t[i].Is("(", "[") || !t[len(t)-1].Is("facing")) { // behind a row, it is that of the next
				return side
			}
		}
	}
	return 0
}

// yarnBefore is how many tokens behind the k-th name the yarn of a row: Row 1: White: knit.
func (r *Reader) yarnBefore(t []text.Token, k int, l *ins.Line) int {
	n := 1
	if !near(t, k+n).Is(":") {
		n++
	}
	if !near(t, k-1).Is(":") || !near(t, k+n).Is(":") || t[k].Kind != 'w' {
		return 0
	}
	if name, to := (&sequence{parser: r.parser(slices.Clone(t[k:k+n]), l)}).yarnAt(0); name == "" || to != n {
		return 0
	}
	return n + 1
}

// asFollows is behind the words and signs that only lead from the name of a row to its work: as follows:—; in the following
// manner:
func asFollows(t []text.Token) int {
	i := 0
	for near(t, i).Is("as", "follows", "thus", "in", "the", "following", "manner", "way", "this", "is", "are", "worked") && i < 6 {
		i++
	}
	if i == 0 || !near(t, i).Is(":", "--", "-") || !near(t, i-1).Is("follows", "thus", "manner", "way") {
		return 0
	}
	for near(t, i).Is(":", "--", "-") {
		i++
	}
	return i
}

// beforeFirst takes a row 0 as the foundation row, which lies before row 1.
func beforeFirst(l *ins.Label) {
	if l.From.By == nil && l.From.All == 0 && !l.Next && l.Name == "" && len(l.Listed) == 0 {
		l.Next, l.Name, l.From, l.To = true, "foundation", ins.N(1), ins.Num{}
	}
}

// onChains reports whether a sentence says what chains count as, and no more: The 3 ch at the beginning of a round counts as a tr.
func (r *Reader) onChains(t []text.Token) bool {
	counts, chains, within, always := false, false, false, false
	for i := range t {
		switch k := &t[i]; {
		case k.Is("count", "counts", "counted", "counting"):
			counts = true
		case k.Is("ch", "chain", "chains", "chs", "tch"):
			chains = true
		case k.Is("throughout"):
			always = true
		case k.Is("("):
			within = true
		case k.Kind == 'n' || k.Kind == 'p' || ofChains[k.S] || always && counts && chains: // throughout the sleeve
		default:
			if _, stitch := r.thing([]byte(k.S)); !counts || !stitch {
				return false
			}
		}
	}
	return r.crochet && counts && chains && (!within || always) // ch 3 (counts as a dc) is worked
}

// ofChains are the words in which a sentence says what chains count as, beside those that name them.
var ofChains = set("the a at beg beginning start of in each every any row rows rnd rnds round rounds turning does do not is are never doesn't don't starting initial first your this pattern all and or unless otherwise noted stated specified here note also always for st sts stitch stitches as one t s")

// noWork reports whether a row tells something and is not worked: Optional row 1 stands for row 1.
func (r *Reader) noWork(l *ins.Line, p *parser) bool {
	if l.Label == nil {
		return false
	}
	if otherWay[l.Words[0].S] {
		return true
	}
	return !working(l.Body) && l.Stated == nil && (p.prose(p.t) || len(p.t) == 0) && len(l.Unread) == 0 && !turns(l.Body) && (len(p.t) > 0 || l.Label.Next)
}

// otherWay are words before the name of a row that may be worked instead of the one before.
var otherWay = set("optional alternative alternate")

// takenUp is the last yarn that words take up; empty if they take up none.
func takenUp(list []ins.Item) string {
	name := ""
	for _, n := range list {
		if n, ok := n.(*ins.Nothing); ok {
			name = cmp.Or(n.Colour, name)
		}
	}
	return name
}

func turns(list []ins.Item) bool {
	return slices.ContainsFunc(list, is[*ins.Turn])
}

// kept reports whether a line without a label is an instruction, and not words.
func (r *Reader) kept(l *ins.Line, tokens []text.Token) bool {
	p := r.parser(tokens, &ins.Line{At: l.At})
	if r.onChains(tokens) {
		return false
	}
	if announces(tokens) || r.slipsThrough(tokens) || tokens[0].Is("this") && near(tokens, 1).Is("puts", "gives", "leaves", "brings", "lets", "allows") || l.Stated == nil && tallied().MatchString(r.x.Src[l.At.Line-1]) {
		l.Unread = nil
		return false
	}
	if firm(l.Body) || verbs[tokens[0].S] && begins(l.Body) {
		return true
	}
	if tokens[0].Is("i") && len(tokens) > 4 {
		r.telling = l.At.Line
	}
	if r.telling == l.At.Line { // a paragraph of what its writer does: I mark the centre st. Then knit to within …
		l.Unread = nil
		return false
	}
	if len(l.Unread) == 0 {
		return l.Stated != nil || !p.modal(p.t) && slices.ContainsFunc(l.Body, makes)
	}
	if shapesOn(p.t) {
		return true
	}
	if p.prose(p.t) || p.opensAsTold() || supplies(tokens) {
		l.Unread = nil
		return false
	}
	if !working(l.Body) {
		return p.heavy(p.t)
	}
	return true
}

// slipsThrough reports whether a sentence tells how stitches are slipped all through, or what edge the rows behind it make: slip all stitches
// purlwise; work picot edge of brim.
func (r *Reader) slipsThrough(t []text.Token) bool {
	has := func(words ...string) bool {
		return slices.ContainsFunc(t, func(k text.Token) bool { return k.Is(words...) })
	}
	return !r.crochet && (slipsAll(t) && has("purlwise", "knitwise", "pwise", "kwise") && !has("holder", "needle", "needles") || t[0].Is("work") && near(t, 1).Is("picot") && near(t, 2).Is("edge", "edging", "hem"))
}

// opensAsTold reports whether a sentence begins as one that tells something: I made …, It is …
func (p *parser) opensAsTold() bool {
	if len(p.t) > 2 && p.t[0].Is("i", "i've", "i'm", "i'd", "i'll") {
		return true
	}
	return len(p.t) > 0 && telling[p.t[0].S] && !p.t[0].Is("with", "from", "on", "for", "at", "in", "make", "using")
}

// shapesOn reports whether a sentence goes on with shaping until there are so many stitches, whatever other words it has: as prose it
// would change that number without a word.
func shapesOn(t []text.Token) bool {
	if len(t) == 0 || !t[0].Is("continue", "cont", "keep", "carry", "now", "repeat", "rep", "increase", "inc", "decrease", "dec") {
		return false
	}
	shaping := false
	for i := range t {
		shaping = shaping || strings.HasPrefix(t[i].S, "inc") || strings.HasPrefix(t[i].S, "dec") || t[i].Is("adding")
		if t[i].Is("until", "till") && shaping {
			return slices.ContainsFunc(t[i:], func(n text.Token) bool { return n.Kind == 'n' })
		}
	}
	return false
}

// makes reports whether an instruction makes or shapes something: not 'turn', and not 'sl st closed'.
func makes(n ins.Item) bool {
	switch n := n.(type) {
	case *ins.Nothing, *ins.Turn, *ins.Marker:
		return false
	case *ins.Stitch:
		return n.Kind == nil || n.Kind.ID != "slst" || len(n.Places) > 0 && !stepsOn(n)
	}
	return true
}

// firm reports whether instructions change how many stitches there are in words that only instructions have: what
// else their sentence holds makes no prose of it.
func firm(list []ins.Item) bool {
	chained := false
	return slices.ContainsFunc(list, func(n ins.Item) bool {
		switch k := n.(type) {
		case *ins.CastOn, *ins.BindEach, *ins.Shape, *ins.PickUp:
			return true
		case *ins.Chain:
			chained = true
		case *ins.Join: // ch 4, join to form a ring
			return chained && k.Name == "ring"
		case *ins.BindOff:
			return !k.All
		}
		return false
	})
}

// stepsOn reports whether a slip stitch only leads to the next stitch: Before the next round, sl st to next st.
func stepsOn(s *ins.Stitch) bool {
	return len(s.Places) == 1 && s.Places[0].Kind == ins.InNext && s.Places[0].Unit.Any() && s.N.By == nil && s.N.All == 1 && s.Places[0].N.By == nil && s.Places[0].N.All == 1
}

// begins reports whether a line begins with rows worked in words: Work in rib until you want to shape the neck.
func begins(list []ins.Item) bool {
	for _, n := range list {
		switch n.(type) {
		case *ins.Nothing:
		case *ins.Even, *ins.RepeatRows:
			return true
		default:
			return false
		}
	}
	return false
}

// heavy reports whether words without a label tell of stitches so that they may be work.
func (p *parser) heavy(t []text.Token) bool {
	k := 0
	for i := range t {
		if t[i].Kind == 'n' && (p.names(p.at(i+1).S) || p.at(i+1).Is("st", "sts", "stitches", "rows", "rnds", "rounds")) {
			k++
		}
		if t[i].Kind == 'g' && p.heavy(t[i].Sub) {
			k++
		}
		if _, ok := text.RowWord(t[i].S); ok && p.at(i+1).Kind == 'n' { // Work Round 5 of the chart
			k++
		}
	}
	return k > 0 && (verbs[t[0].S] || k > 1)
}

// plainRow takes 'Purl.' as a whole row, and 'Row 3: Plain.'
func (r *Reader) plainRow(l *ins.Line) {
	var only *ins.Stitch
	from := 0
	for i, n := range l.Body {
		if k, ok := n.(*ins.Repeat); ok && !r.crochet && k.Until.Kind == ins.ToLast && k.Until.N.By == nil && k.Until.N.All > 1 { // rep from * to last 5 sts, k
			from = i + 1
		}
	}
	for _, n := range l.Body[from:] {
		switch k := n.(type) {
		case *ins.Stitch:
			if only != nil {
				return
			}
			only = k
		case *ins.Nothing, *ins.Turn, *ins.Marker, *ins.Join, *ins.RepeatRows, *ins.CastOn:
		default:
			return
		}
	}
	if only == nil || l.Label == nil && r.crochet || only.Kind == nil || len(only.Places) > 0 || only.N.By != nil || only.N.All != 1 || only.Kind.Uses != 1 || only.Kind.Makes != 1 {
		return
	}
	for _, w := range l.Words {
		if w.Kind == 'n' && w.Col >= only.At.Col && w.End <= only.At.End && w.Line == only.At.Line {
			return
		}
	}
	if only.Kind.Craft == stitch.Knitting || l.Label != nil {
		only.Places = []ins.Place{{Kind: ins.InEach, N: ins.N(1), Unit: ins.Unit{Word: "st"}, Extent: ins.Extent{Kind: ins.ToEnd}}}
	}
}

// withoutRest are the instructions of a line without the plain stitches behind those bound off at the beginning of a row,
// which are the rest of it: Cast off 14 sts at beg of next row, k to end.
func withoutRest(l *ins.Line) []ins.Item {
	k := len(l.Body) - 1
	if l.Label != nil || k < 1 || !is[*ins.BindEach](l.Body[k-1]) {
		return l.Body
	}
	if s, ok := l.Body[k].(*ins.Stitch); ok && s.Kind != nil && len(s.Places) == 1 && s.Places[0].Extent.Kind == ins.ToEnd && s.Kind.Uses == 1 && s.Kind.Makes == 1 {
		return l.Body[:k]
	}
	return l.Body
}

// repeatedRows takes how often a bracket is worked that only repeats rows as how often they are: Rows 4-9: [rep Rows 2 and 3] 3 times.
func repeatedRows(l *ins.Line) {
	for i, n := range l.Body {
		q, ok := n.(*ins.Repeat)
		if !ok || len(q.Body) != 1 || len(q.Places) > 0 || q.Until.Kind != ins.NoExtent {
			continue
		}
		if r, ok := q.Body[0].(*ins.RepeatRows); ok && !r.HasTimes && !r.Until.Set() && !r.ToRow.Set() {
			r.Times, r.HasTimes, r.Total = q.Times, true, true
			l.Body[i] = r
		}
	}
}

// shapedFurther gives a shaping that goes on over other rows as many stitches, and the way, of the one before it.
func shapedFurther(l *ins.Line) {
	var last *ins.Shape
	for _, n := range l.Body {
		s, ok := n.(*ins.Shape)
		switch {
		case !ok:
		case s.N.Set() || !s.Every.Set() && !s.Rows.Set() && !s.First: // dec 0 sts says how many
			last = s
		case last != nil:
			s.Inc, s.N = last.Inc, last.N
		default:
			l.Unread = append(l.Unread, s.At)
		}
	}
}

// turnedBefore puts a turn with which a knitted row begins to the end of the row before it, which it ends.
func (r *Reader) turnedBefore(l *ins.Line) {
	k := len(r.sec.Lines) - 1
	if k < 0 || l.Label == nil || len(l.Body) < 2 || !is[*ins.Turn](l.Body[0]) || !r.knits || r.crochet {
		return
	}
	before := r.sec.Lines[k]
	if n := len(before.Body); before.Label == nil || n == 0 || is[*ins.Turn](before.Body[n-1]) {
		return
	}
	before.Body, l.Body = append(before.Body, l.Body[0]), l.Body[1:]
}

// slippedBefore puts slip stitches behind the join of a round, which lead to where the next one begins, to the beginning of that: join, sl
// st in next 2 dc and in ch-2 sp. One that only repeats others has its own.
func (r *Reader) slippedBefore(l *ins.Line) {
	k := len(r.sec.Lines) - 1
	if k < 0 || !r.crochet || l.Label == nil || len(l.Body) == 0 || r.sec.Lines[k].Label == nil || len(r.sec.Lines[k].Unread) > 0 {
		return
	}
	before := r.sec.Lines[k]
	at := len(before.Body)
	for at > 0 && !worksOn(before.Body[at-1]) && !is[*ins.Join](before.Body[at-1]) && !is[*ins.Chain](before.Body[at-1]) && !is[*ins.Turn](before.Body[at-1]) {
		at--
	}
	if at == 0 || at == len(before.Body) {
		return
	}
	if st, ok := before.Body[at].(*ins.Stitch); !is[*ins.Join](before.Body[at-1]) {
		if !ok || len(st.Places) != 1 || !intoFirst[st.Places[0].Kind] || st.Places[0].Unit.Space {
			return
		}
		at++
	}
	slips := before.Body[at:]
	if !slices.ContainsFunc(slips, is[*ins.Stitch]) {
		return
	}
	before.Body = before.Body[:at:at]
	if !is[*ins.RepeatRows](l.Body[0]) {
		l.Body = slices.Concat(slips, l.Body)
	}
}

// intoFirst are the places into which a round is joined.
var intoFirst = map[ins.PlaceKind]bool{ins.InFirst: true, ins.InTop: true, ins.InCentre: true, ins.InEvery: true}

// skipped takes chains that are passed behind a foundation chain, Ch 33, sk 1, into the row that is worked into it.
func (r *Reader) skipped(l *ins.Line) {
	if l.Label == nil && r.crochet && len(l.Unread) == 0 && len(l.Body) == 2 && is[*ins.Chain](l.Body[0]) {
		if k, ok := l.Body[1].(*ins.Skip); ok && len(k.Places) == 1 && !k.Places[0].Unit.Space && k.Places[0].N.By == nil && k.Places[0].N.All < 6 {
			k.Places[0] = ins.Place{Kind: ins.InFirst, N: k.Places[0].N, Unit: ins.Unit{Chain: true, Word: "ch"}, At: k.At}
			r.passed, l.Body = k, l.Body[:1]
		}
		return
	}
	if r.passed != nil && l.Label != nil && len(l.Body) > 0 {
		l.Body = append([]ins.Item{r.passed}, l.Body...)
	}
	r.passed = nil
}

// bareShaping takes an increase or a decrease that is all that a sentence says as one of a whole row, at some edge: When
// work measures 4 in, dec 1 st; or as one behind rows worked even: Knit 13 rounds, then decrease one stitch.
func (r *Reader) bareShaping(l *ins.Line) {
	body := behindEven(l.Body)
	if l.Label != nil || !r.knits && len(body) == len(l.Body) {
		return
	}
	at := -1
	for i, n := range body {
		switch k := n.(type) {
		case *ins.Stitch:
			if at >= 0 || !k.Inc && !k.Dec || len(k.Places) > 0 || k.Kind != nil {
				return
			}
			at = i
		case *ins.Nothing, *ins.Measure:
		default:
			return
		}
	}
	if at < 0 {
		return
	}
	at += len(l.Body) - len(body)
	k := l.Body[at].(*ins.Stitch)
	if !slices.ContainsFunc(l.Words, func(w ins.Word) bool {
		return (w.Kind == 'n' || w.S == "one") && w.Line == k.At.Line && w.Col >= k.At.Col && w.End <= k.At.End
	}) { // increase to 47
		return
	}
	s := &ins.Shape{Inc: k.Inc, N: k.N, Edge: "edge"}
	s.HasOver = true
	s.Put(k.At)
	l.Body[at] = s
}
