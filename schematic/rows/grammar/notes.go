package grammar

import (
	"slices"
	"strconv"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
	"flatwright/schematic/units"
)

// words reads a line of words: notes for what turning chains count as, stitches for
// what a name stands for, a gauge.
func (r *Reader) words(kind, rest string, n int, opens bool) {
	if opens {
		r.patterns, r.due = false, kind == "gauge"
		if r.mode = kind; kind == "sizes" || kind == "gauge" || kind == "terms" {
			r.mode = "words"
		}
		if slices.ContainsFunc(r.sec.Lines, func(l *ins.Line) bool { return ownRow(l) || l.Label == nil && r.crochet }) { // what follows belongs to no piece until the next heading
			r.section(&ins.Section{})
		}
		return
	}
	switch kind {
	case "notes":
		r.note(rest, n)
	case "stitches":
		if rest = r.crossings(rest); strings.TrimSpace(rest) == "" {
			return
		}
		r.stitchesOf(rest, n)
	case "names":
		r.called(rest, n)
	case "terms":
		if t, ok := termsNamed(rest); ok {
			r.turnTerms(t, n)
		}
	case "gauge":
		r.gauge(rest, n)
	case "words":
		if r.due { // below its heading
			r.gauge(rest, n)
		}
		if r.mode != "" {
			r.alias(rest)
		}
	}
}

// stitchesOf reads a line among stitches, which may define several: Shell: 5 dc in next st. Fan: 4 dc in next sp.
func (r *Reader) stitchesOf(line string, n int) {
	if at := nextDefinition().FindStringIndex(line); at != nil && meaningAt(line) < at[0] {
		first, more := line[:at[0]+1], line[at[0]+2:]
		if len(first) == len(more) { // each is told by where it ends
			more += "."
		}
		r.stitchesOf(first, n)
		r.stitchesOf(more, n)
		return
	}
	if !r.define(line, n) {
		r.patterns = r.patterns || !r.abbreviation(line) && !remarks().MatchString(line)
		r.note(line, n)
	}
}

// nextDefinition is where another stitch is defined behind one, in the same line.
var nextDefinition = text.Once(`[.)] [A-Z][A-Za-z-]*(?: [A-Za-z-]+){0,3}(?: \([A-Za-z0-9 -]+\))?(?:: | = | [–—-] )`)

// remarks is a line among stitches that begins no rows: [Note: stitches should only be counted after row 6.]; W3: wrap the
// yarn around 3 sts.
var remarks = text.Once(`(?i)^\W*note\b|^multiples? of |^\w[\w/() ]{0,20}(?::| ?[–=] ?| - ?)\s*(?:[a-z(]\S*,? )(?:\S+ ){2,}[^:]*$`)

// called reads a line of a list of names: a crossing or a group with its stitches, or abbreviations.
func (r *Reader) called(rest string, n int) {
	rest = r.crossings(rest)
	if name, long, ok := strings.Cut(rest, ":"); ok && len(name) < 30 && !strings.ContainsAny(name, "=;,") && crosses(long) && r.define(rest, n) {
		return
	}
	if m := shortFirst().FindStringSubmatch(rest); m != nil {
		rest = m[2] + " (" + m[1] + "): " + m[3]
	}
	if r.tellsGroup(rest) && r.define(rest, n) || r.ownStitch(rest) {
		return
	}
	r.names(rest, n)
}

// crossings takes those that a line tells one after the other, and gives what is left of it: C4B = …, k2 from cn. C4F = …
func (r *Reader) crossings(list string) string {
	names := told().FindAllStringSubmatchIndex(list, -1)
	if len(names) < 2 {
		return list
	}
	for i, at := range names {
		to := len(list)
		if i+1 < len(names) {
			to = names[i+1][2]
		}
		if part := list[at[2]:to]; crosses(part) {
			r.alias(part)
			list = list[:at[2]] + strings.Repeat(" ", len(part)) + list[to:]
		}
	}
	return list
}

// shortFirst is the short name of a group, its name and its stitches: sh: shell (5 dc in same st).
var shortFirst = text.Once(`^\s*([A-Za-z-]{1,9})\s*[:=–-]\s*([A-Za-z][A-Za-z -]{2,24}?)\s*[(=:]\s*((?:\(?\d|[Ww]ork ).{6,90}?)\)?[.;]?$`)

// names reads a line of abbreviations. The words of a crossing have commas of their own.
func (r *Reader) names(list string, n int) {
	if _, long, _ := strings.Cut(list, "="); strings.Count(list, "=") == 1 && crosses(long) { // its clauses end in semicolons
		r.alias(list)
		return
	}
	if _, long, ok := strings.Cut(list, ":"); ok && strings.Count(list, ":") == 1 && wraps(long) {
		r.alias(list)
		return
	}
	for part := range strings.SplitSeq(list, ";") {
		words := []string{part}
		if _, long, _ := strings.Cut(strings.TrimSpace(part), " "); !crosses(long) {
			words = splitOutside(part)
		}
		for _, w := range words {
			if r.groupAmong(w, n) {
				continue
			}
			if len(words) > 1 && strings.Contains(w, "(") && shortFirst().MatchString(w) { // sh: shell (5 dc in same st)
				r.called(w, n)
				continue
			}
			r.alias(w)
		}
	}
}

// groupAmong takes a group of stitches that is told among abbreviations: shell – (2 dc, ch 2, 2 dc) in place stated.
func (r *Reader) groupAmong(words string, n int) bool {
	at := meaningAt(words)
	if at <= 0 {
		return false
	}
	group := strings.TrimSpace(words[:at]) + ": " + strings.TrimLeft(words[at:], " :=–—-")
	return r.tellsGroup(group) && r.define(group, n)
}

// splitOutside parts a list at its commas outside brackets.
func splitOutside(list string) []string {
	var out []string
	from, open := 0, 0
	for i, c := range list {
		switch c {
		case '(', '[':
			open++
		case ')', ']':
			open--
		case ',':
			if open <= 0 {
				out, from = append(out, list[from:i]), i+1
			}
		}
	}
	return append(out, list[from:])
}

func crosses(words string) bool {
	_, ok := crossOf(words)
	return ok
}

// addedBase is the chains that are added to a multiple for the foundation: (add 2 for base chain).
var addedBase = text.Once(`(?i)\badd (\d{1,2}) (?:sts? |chs? |chains? )?(?:for|to) (?:the )?(?:base|foundation|starting|beginning) ?ch`)

var multiple = text.Once(`(?i)\bmultiples? (?:of )?(\d{1,3})(?:(?: ?sts?| ?stitches| ?ch)?[ ,]*(?:\+|plus|and) ?(\d{1,3}))?`)

// shortStop is an abbreviation with the stop that belongs to it.
var shortStop = text.Once(`(?i)\b(chs?|sts?)\. ([a-z])`)

// note takes from a line what chains count as, and of what the count is a multiple.
func (r *Reader) note(words string, n int) {
	if m := multiple().FindStringSubmatchIndex(words); m != nil {
		of, _ := strconv.Atoi(words[m[2]:m[3]])
		plus := 0
		if m[4] >= 0 {
			plus, _ = strconv.Atoi(words[m[4]:m[5]])
		}
		r.x.Multiples = append(r.x.Multiples, ins.Multiple{Of: of, Plus: plus, At: ins.Span{Line: n, Col: 1, End: len([]rune(r.x.Src[n-1])) + 1}})
	}
	if k := len(r.x.Multiples) - 1; k >= 0 && r.x.Multiples[k].At.Line >= n-1 {
		if m := addedBase().FindStringSubmatch(words); m != nil {
			r.x.Multiples[k].Base, _ = strconv.Atoi(m[1])
		}
	}
	for _, sentence := range strings.FieldsFunc(shortStop().ReplaceAllString(words, "$1 $2"), func(c rune) bool { return c == '.' || c == ';' }) {
		for part := range strings.SplitSeq(sentence, " but ") { // 1 ch does not count as a stitch, but 3 ch counts as one
			r.countsAs(part)
		}
	}
}

func (r *Reader) countsAs(sentence string) {
	t := text.Lex(sentence, 1)
	counts, not, about := false, false, false
	var sizes []int
	before := 0 // of the sizes, those named before what they count as
	for i := range t {
		switch t[i].S {
		case "count", "counts", "counted", "counting":
			counts, before = true, len(sizes)
		case "not", "never", "doesn't", "don't":
			not = true
		case "chain", "ch", "chains", "chs", "tch":
			about = true
			if i+1 < len(t) && t[i+1].Kind == 'n' {
				sizes = append(sizes, t[i+1].Num.All)
			}
			if i > 0 && t[i-1].Kind == 'n' {
				sizes = append(sizes, t[i-1].Num.All)
			}
		case "t":
			about = about || i+1 < len(t) && t[i+1].Is("ch")
		}
	}
	if !counts || !about {
		return
	}
	c := ins.CountsAsStitch
	if not {
		c = ins.CountsNot
	}
	r.turning(c, sizes, before)
}

// turning notes what chains of those lengths count as; the one behind the first so many is the space beside them: ch 4 counts as a dc
// and ch-1.
func (r *Reader) turning(c ins.Counts, sizes []int, first int) {
	space := 0
	if first > 0 && len(sizes) == first+1 {
		space, sizes = sizes[first], sizes[:first]
	}
	if len(sizes) == 0 {
		sizes = []int{0}
	}
	for _, s := range sizes {
		if _, ok := r.o.Turning[s]; ok {
			continue
		}
		if r.x.Turning[s] = c; space > 0 && space < s {
			r.x.TurnSpace[s] = space
		}
	}
}

// ofRows tells of a gauge that is one of rows too: 7½ sts to 1 inch, waist 24 inches is not.
func ofRows(words string, tell func()) {
	if text.Has(words, "row") || text.Has(words, "rnd") || text.Has(words, "round") {
		tell()
	}
}

// gaugePart is a gauge of stitches alone or of rows alone: 20 sts = 4 inches.
var gaugePart = text.Once(`(?i)^\W*(\d+(?:\.\d+)?) ?(?:(sts?|stitches|[sdt]c|hdc|h?tr)|rows?|rnds?|rounds?)\.? ?(?:=|to|over|make|measure|per) ?(\d+(?:\.\d+)?) ?(inch(?:es)?|ins?|"|”|″|cms?)\b?\.?\s*(in [\w ]+)?[;.]?$`)

// partGauge is a gauge told in two: 20 sts = 4 inches, and 28 rows = 4 inches on the next line.
type partGauge struct {
	line     int
	stitches schematic.Gauge
	in       string
}

// gaugeInParts takes a gauge of stitches alone, or one of rows alone right behind it, and reports whether the words are one.
func (r *Reader) gaugeInParts(words string, n int) bool {
	m := gaugePart().FindStringSubmatch(words)
	if m == nil {
		return false
	}
	k, ok := units.ParseNum(m[1])
	v, sure := units.ParseNum(m[3])
	u, known := units.ParseUnit(inchWord.Replace(strings.TrimSuffix(strings.ToLower(m[4]), "s")))
	if !ok || !sure || !known {
		return false
	}
	g := schematic.Gauge{Stitches: k, Rows: k, Over: units.Of(v, u)}
	switch {
	case g.Impossible() != "":
	case m[2] != "":
		r.half = partGauge{line: n, stitches: g, in: m[5]}
	case r.half.line > 0 && n == r.half.line+1 && (m[5] == "" || r.half.in == "" || m[5] == r.half.in):
		r.x.Gauge = &ins.Gauge{StitchWidth: r.half.stitches.StitchWidth(), RowHeight: g.RowHeight()}
		r.x.Said.GaugeAt = ins.Span{Line: n, Col: 1, End: len([]rune(r.x.Src[n-1])) + 1}
	}
	return true
}

// inchWord gives the signs and words for inches that one name.
var inchWord = strings.NewReplacer("”", "in", "\"", "in", "″", "in", "inches", "in", "inche", "in", "inch", "in")

// gauge reads '14 sts and 10 rows = 10 cm'. A gauge of stitches alone measures no rows
// and is let be.
func (r *Reader) gauge(words string, n int) {
	if r.o.Gauge != nil || r.x.Gauge != nil || r.gaugeInParts(words, n) {
		return
	}
	tell := func(kind, message string) {
		r.x.Tell(finding.Finding{Kind: kind, Severity: finding.Warning, Message: message,
			Want: schematic.GaugeBounds, Fix: "write it as 20 sts and 28 rows = 10 cm"}, ins.Span{Line: n, Col: 1, End: 1})
	}
	t := text.Lex(words, 1)
	var nums []units.Num
	for i, k := range t {
		if k.Kind != 'n' && k.Kind != 'f' || noGauge(t[i+1:], len(nums)) {
			continue
		}
		v, ok := units.ParseNum(k.S)
		if !ok {
			if len(nums) == 0 {
				return
			}
			tell("rows/not-read", "not read: "+finding.Clip(k.S)+", which is not a number of a gauge")
			return
		}
		nums = withNext(nums, v, t[:i+1])
		if len(nums) < 3 || i+1 == len(t) {
			continue
		}
		u, ok := units.ParseUnit(inchWord.Replace(t[i+1].S))
		if !ok {
			return
		}
		g := schematic.Gauge{Stitches: nums[0], Rows: nums[1], Over: units.Of(v, u)}
		if bad := g.Impossible(); bad != "" {
			ofRows(words, func() { tell("rows/bounds", bad) })
			return
		}
		r.x.Gauge = &ins.Gauge{StitchWidth: g.StitchWidth(), RowHeight: g.RowHeight()}
		r.x.Said.GaugeAt = ins.Span{Line: n, Col: 1, End: len([]rune(r.x.Src[n-1])) + 1}
		return
	}
}

// noGauge reports whether a number with n of a gauge before it and those tokens behind it is none of these: of needles; 10 x 10 cm.
func noGauge(t []text.Token, n int) bool {
	return len(t) > 0 && (t[0].Is("mm") || n > 1 && t[0].Is("x", "×", "by"))
}

// withNext is numbers with one more; a fraction right behind a whole number belongs to it: 13 ½.
func withNext(nums []units.Num, v units.Num, t []text.Token) []units.Num {
	i := len(t) - 1
	if k := len(nums) - 1; k >= 0 && t[i].Kind == 'f' && t[i-1].Kind == 'n' && v.Less(units.Int(1)) {
		nums[k] = nums[k].Add(v)
		return nums
	}
	return append(nums, v)
}

// alias takes 'sc = single crochet' from a list of abbreviations: a name of the text's own
// for a stitch.
func (r *Reader) alias(line string) {
	i := meaningAt(line)
	if i <= 0 || i > 30 { // C4B slip next 2 sts onto cable needle
		if name, long, ok := strings.Cut(strings.TrimSpace(line), " "); ok && cableStitches(strings.ToLower(name)) > 1 {
			if c, ok := crossOf(long); ok {
				r.crossing(name, c)
			}
		}
		return
	}
	short := squeezeWords(line[:i])
	long := strings.TrimLeft(line[i:], "=:-–— ")
	if c, ok := crossOf(long); ok {
		r.crossing(strings.TrimSpace(line[:i]), c)
		return
	}
	if wraps(long) && short != "" && len(short) < 7 {
		if r.wraps == nil {
			r.wraps = map[string]bool{}
		}
		r.wraps[short] = true
		return
	}
	long, _, _ = strings.Cut(long, "(")
	if len(short) == 0 || len(short) > 12 {
		return
	}
	if _, ok := r.thing([]byte(short)); ok {
		return
	}
	if k, ok := r.thing([]byte(squeezeWords(long))); ok {
		r.call(short, k)
	}
}

// inner is the word for stitches within the long name of one: knit 2 stitches together.
var inner = text.Once(`(?:next|first)?(?:stitches|sts)`)

// meaningAt is where a line goes on from a name to what it means; -1: nowhere.
func meaningAt(line string) int {
	if at := meaning().FindStringIndex(line); at != nil {
		return at[0]
	}
	return -1
}

var meaning = text.Once(`[:=]| [-–—] `)

// abbreviation reports whether a line gives a short name of a stitch of the trade its long one, or tells what a name stands for, and
// no more.
func (r *Reader) abbreviation(line string) bool {
	line = strings.TrimLeft(strings.TrimSpace(line), "•*-– ")
	i := strings.IndexAny(line, ":=-–")
	if i <= 0 {
		return false
	}
	long, _, _ := strings.Cut(strings.TrimLeft(line[i:], "=:-– "), "(")
	switch long = squeezeWords(long); long {
	case "chain", "chains", "stitch", "stitches", "space", "repeat", "round", "row", "skip", "beginning", "together", "slipstitch", "lefttwist", "righttwist":
		return true
	}
	_, ok := r.thing([]byte(long))
	if !ok {
		_, ok = r.thing([]byte(inner().ReplaceAllString(long, "")))
	}
	return ok || text.Means(line) || describes(line)
}

func squeezeWords(s string) string {
	return strings.Map(func(c rune) rune {
		if strings.ContainsRune(" -.,:;*•\t‑–", c) {
			return -1
		}
		return c
	}, strings.ToLower(s))
}

func (r *Reader) crossing(short string, c stitch.Cross) {
	s := c.Stitch()
	name := strings.ToLower(short)
	s.ID, s.US, s.UK, s.USAbbr, s.UKAbbr = name, short, short, short, short
	r.x.Own[name] = s
	r.call(squeezeWords(short), thing{Kind: s})
}

// define reads 'Shell = (sc, ch 3, 4 dc) in st indicated', 'V-stitch (V-st): (dc, ch 1, dc) in same st'.
func (r *Reader) define(line string, n int) bool {
	line = strings.TrimLeft(strings.TrimSpace(line), "•*-– ")
	i := meaningAt(line)
	if i <= 0 || i > 60 {
		return false
	}
	head, body := line[:i], strings.TrimLeft(line[i:], ":=-–— ")
	var names []string
	main, inside, has := strings.Cut(head, "(")
	names = append(names, strings.TrimSpace(main))
	if has {
		names = append(names, strings.Trim(inside, " )"))
	} else if strings.EqualFold(strings.TrimSpace(main), "shell") { // as everyone shortens it
		names = append(names, "sh")
	}
	if c, ok := crossOf(body); ok {
		for _, w := range names {
			r.crossing(w, c)
		}
		return true
	}
	if r.ownStitch(line) {
		return true
	}
	r.alias(line)
	known := false
	for _, w := range names {
		w = strings.ToLower(w)
		if w == "" || len(strings.Fields(w)) > 3 {
			continue
		}
		if _, ok := stitch.Lookup(w, r.x.Terms); ok && !opened(w, body) {
			known = true
			continue
		}
		known = cableStitches(squeezeWords(w)) > 0 || r.defined(w, line, body, n) || known
	}
	return known
}

// opened reports whether an increase is defined with a chain between its stitches: Increase (inc): (dc, ch 1, dc) in next st.
func opened(name, body string) bool {
	inside, _, shut := strings.Cut(strings.TrimLeft(body, "[("), ")")
	if i := strings.IndexByte(inside, ']'); i >= 0 {
		inside, shut = inside[:i], true
	}
	return (name == "inc" || name == "increase") && shut && strings.ContainsAny(body[:1], "([") && strings.Contains(strings.ToLower(inside), "ch")
}

// defined takes one name of a definition: a group of stitches, or a stitch that counts as one.
func (r *Reader) defined(name, line, body string, n int) bool {
	low := strings.ToLower(body)
	one := containsAny(low, "one stitch", "tog", "one st", "counts as one", "as 1 st", "as one") || allLoops().MatchString(low)
	l := &ins.Line{At: ins.Span{Line: n, Col: 1, End: len([]rune(line)) + 1}, Src: line}
	tokens := text.Lex(body, 1)
	for i := range tokens {
		tokens[i].Line = n
	}
	if len(tokens) == 0 || len(tokens) > 200 {
		return false
	}
	list := r.parser(tokens, l).sequence()
	if m := r.meshOf(name, list); m != nil && r.definesGroup(name, list, l.At) {
		r.x.Groups[len(r.x.Groups)-1].Mesh = m
		return true
	}
	items, ok := onlyStitches(list)
	switch {
	case ok && len(l.Unread) == 0 && !one:
		over := goesOver(list)
		if !r.definesGroup(name, items, l.At) {
			return false
		}
		r.x.Groups[len(r.x.Groups)-1].Over = over
		return true
	case one && r.crochet:
		s := &stitch.Stitch{ID: name, US: name, UK: name, USAbbr: name, UKAbbr: name, Uses: stitchesTaken(low), Makes: 1, Height: 2, Base: "dc", Legs: legsIn(name), Key: "cluster"}
		r.x.Own[name], r.x.Own[name+"s"] = s, s
		r.call(squeezeWords(name), thing{Kind: s})
		r.call(squeezeWords(name)+"s", thing{Kind: s})
		return true
	}
	return false
}

// nextTaken are the next stitches that a hook goes into, and the words after a bracket or a star that do so again.
var nextTaken, bracketAgain = text.Once(`\bin(?:to)? (?:each of )?(?:the )?(?:next|foll|following) (?:(\d|two|three|four) )?(?:sts?|stitch|stitches|sc|dc|hdc|htr|tr)\b`),
	text.Once(`[(\[]([^()\[\]]*)[)\]] ?(twice|[2-5] times|[2-5]x)`)

// stitchesTaken is how many stitches of the row below one stitch takes whose working is told: draw up a lp in next st, rep from *
// in next st. It is 1 where the words name no more.
func stitchesTaken(how string) int {
	if m := bracketAgain().FindStringSubmatch(how); m != nil && nextTaken().MatchString(m[1]) {
		times := 2
		if m[2] != "twice" {
			times = int(m[2][0] - '0')
		}
		how = strings.Replace(how, m[0], strings.Repeat(m[1]+", ", times), 1)
	}
	sum := 0
	for _, m := range nextTaken().FindAllStringSubmatch(how, -1) {
		switch n := numerals[m[1]]; {
		case m[1] == "":
			sum++
		case n > 0:
			sum += n
		default:
			sum += int(m[1][0] - '0')
		}
	}
	return max(sum, 1)
}

// legsIn is of how many stitches a cluster is, by the number with which its name begins: 2dc-cl; 3 if it has none (common practice).
func legsIn(name string) int {
	if n := int(name[0] - '0'); n > 1 && n < 10 {
		return n
	}
	return 3
}

// allLoops are the loops through which a stitch is closed in the end: through all 4 loops on hook.
var allLoops = text.Once(`\ball (?:of )?(?:the )?(?:\d+ |\w+ )?(?:loops|lps)\b`)

// goesOver are instructions that go over several stitches of the row below, with their places: skip next 2 sts, FPtr in next 2
// sts, FPtr in 2 skipped sts. Nil: they are worked into one place.
func goesOver(list []ins.Item) []ins.Item {
	over := false
	for i, n := range list {
		switch n := n.(type) {
		case *ins.Skip:
			over = true
		case *ins.Repeat:
			over = over || len(n.Places) == 1 && n.Places[0].Kind == ins.InNext && n.Places[0].Unit.Space && n.Places[0].Unit.Size.Set()
		case *ins.Stitch:
			over = over || len(n.Places) == 1 && (n.Places[0].Kind == ins.InNext && n.Places[0].N.All > 1 || n.Places[0].Kind == ins.FromHook)
			one := *n
			one.Places = slices.Clone(n.Places)
			list[i] = &one
		}
	}
	if !over {
		return nil
	}
	return slices.Clone(list)
}

// onlyStitches are the stitches, chains and repeats among instructions; false if any is of another kind that works.
func onlyStitches(items []ins.Item) ([]ins.Item, bool) {
	var out []ins.Item
	for _, b := range items {
		switch b.(type) {
		case *ins.Repeat, *ins.Stitch, *ins.Chain:
			out = append(out, b)
		case *ins.Nothing, *stated, *ins.Skip:
		default:
			return nil, false
		}
	}
	return out, len(out) > 0
}

// definesGroup gives a group of stitches its name; another name on the same line is one more of the same group.
func (r *Reader) definesGroup(name string, items []ins.Item, at ins.Span) bool {
	var words []string
	for _, w := range text.Lex(strings.TrimSuffix(name, "s"), 1) {
		words = append(words, w.S)
	}
	if len(words) == 0 || len(r.groups) == maxNames {
		return false
	}
	if g, single := items[0].(*ins.Repeat); single && len(items) == 1 {
		items = g.Body
	}
	for _, b := range items {
		if s, ok := b.(*ins.Stitch); ok {
			s.Places = nil
		}
	}
	g := &ins.Group{Name: strings.TrimSuffix(name, "s"), Body: items, At: at}
	if k := len(r.x.Groups); k > 0 && r.x.Groups[k-1].At == at {
		g = r.x.Groups[k-1]
	} else {
		r.x.Groups = append(r.x.Groups, g)
	}
	r.groups = append(r.groups, defined{words, g})
	return true
}
