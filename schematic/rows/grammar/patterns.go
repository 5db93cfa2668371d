package grammar

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

// named is what a line calls a stitch pattern or a chart.
type named struct {
	chart bool // a chart, or a pattern whose rows are told by its name
	even  bool // a pattern whose rows the text gives: as many stitches stay as there are, if it is worked as a whole
	plain bool // it is called no more than the pattern
	width ins.Num
}

// namedForms are the rows of a pattern or a chart that is told by its name. What such rows make is not known where they
// are worked: only that they are.
var namedForms = []form{
	{rule: "whole", pattern: "[and/then/now] [$make/$rep/knit/cont/continue/follow/following/starting/beginning] [working] [from/with/on/in] [all/both] {r:rowset} (of/from/in/on/for) {a:patname} [{c:course}]", meaning: "rows of a chart or a pattern by its name", example: "Work Rows 1-12 of Chart A twice", build: patternRows},
	{rule: "whole", pattern: "[and/then/now] [$make/$rep/knit/cont/continue/follow/following/use/using] [to] [work/working/knitting/following] [in/from/on/with/through] {a:patname} [,] {r:rowset} [{c:course}]", meaning: "rows of a chart or a pattern by its name", example: "Work Chart A Rows 1 to 12", build: patternRows},
	{rule: "whole", pattern: "[and/then/now] ($make/knit/cont/continue/follow/following/use | $beg [working] | commence/commencing | change/changing/switch) [to] [work/working/knitting/following] [in/from/on/with/through] {a:patname} [{c:course}]", meaning: "a chart or a pattern is worked by its name", example: "Work Chart A", build: patternRows},
	{rule: "whole", pattern: "[and/then/now] ($make/knit/$rep/cont/continue | complete) {n:num} [more/full/complete/whole/vertical/further] (repeats/repeat/reps/rep/repetitions) [in all | in total] of {a:patname} [{c:course}]", meaning: "a chart or a pattern is repeated", example: "Work 3 repeats of Chart A", build: patternRows},
	{rule: "whole", pattern: "[and/then/now] $make/knit/follow/complete first/last {n:num} {w:row} (of/from/in) {a:patname} [{t:times}]", meaning: "rows of a chart or a pattern by its name", example: "Work the first 10 rows of Chart A", build: patternRows},
	{rule: "stitch", pattern: "work/working/k/knit/patt/pattern/follow [across] [$next/first/last/center/centre] {n:num} $st (of/from/in/on/following/as/per/using) [{r:rowset} (of/from/on/in/for)] {a:patname} [{r:rowset}] [{t:times} [around/across]]", meaning: "n stitches of a chart or a pattern", example: "Row 3: K5, work next 20 sts from Chart A, k to end", build: patternStitches},
	{rule: "stitch", pattern: "[$rem/last/next/first] {n:num} $st (of/from/in) {a:patname} [{t:times}]", meaning: "n stitches of a chart or a pattern", example: "Row 3: K5, 6 sts of Chart A, 9 sts of Chart B twice, k to end", build: patternStitches},
	{rule: "stitch", pattern: "work/working/k/knit/cont/continue/follow/following [across/in/from/on/with/working] [$next {w:row} of] [{r:rowset} (of/from/on/in/for)] [$next] {a:patname} [,] [{r:rowset}] (over/on/across/for) [the] [$next/first/last/$center] {n:num} [$st]", meaning: "n stitches of a chart or a pattern", example: "Row 3: K3, work Row 1 of Chart A over next 12 sts, k3", build: patternStitches},
	{rule: "stitch", pattern: "work/working/k/knit/cont/continue/follow/following [across/in/from/on/with/working] [$next {w:row} of] [{r:rowset} (of/from/on/in/for)] [$next] {a:patname} [,] [{r:rowset}] [over/across [all] $st] [{e:extent}]", meaning: "the stitches of a chart or a pattern, up to there", example: "Row 3: K3, work Chart A to last 3 sts, k3", build: patternStitches},
}

// lettered are stitches of a pattern that a letter names, and no verb: pat A Row 1 over next 12 sts.
var lettered = []form{
	{rule: "stitch", pattern: "[work] pat/patt/pattern/panel/chart/cable/motif [pat/pattern] {x:stretch}", meaning: "n stitches of a pattern by its letter", example: "Row 3: K5, pat A Row 1 over next 12 sts, k to end", build: func(m *match) any {
		for i := m.from; i < m.to-1; i++ {
			if t := m.p.at(i); t.Kind == 'n' && m.p.at(i+1).Is("st", "sts", "stitches") && m.p.at(i-1).Is("over", "next", "across", "on") && m.p.line.IsRow() {
				return &ins.Stitch{N: t.Num, Chart: true}
			}
		}
		return nil
	}},
}

// patternRows builds rows of a pattern that is told by its name.
func patternRows(m *match) any {
	if m.p.line.IsRow() && !m.has("r") && !m.has("n") || m.has("r") && m.said("for") && m.said("rep", "repeat", "repeating") { // repeat rows 1-8 for lace pattern: those above
		return nil
	}
	a := value[named](m, "a")
	c, _ := m.get("c").(course)
	if !a.chart || c.where || m.to < len(m.p.t) && m.p.at(m.to).Kind != 'p' && !m.p.at(m.to).Is("and", "then", "while", "at") {
		return nil
	}
	if a.even && !m.has("r") && !m.has("n") {
		return evenUntil(m)
	}
	e := &ins.Even{Course: c.Course, Chart: true}
	if !e.Until.Set() {
		e.Until = m.p.unknown()
	}
	return e
}

// unknown is a count that the text does not tell, for each size.
func (p *parser) unknown() ins.Num {
	by := make([]int, max(len(p.r.x.Sizes.Names), 1))
	for i := range by {
		by[i] = ins.None
	}
	return ins.Num{By: by}
}

// patternStitches builds the stitches within a row that are worked from a chart or in a pattern.
func patternStitches(m *match) any {
	if !m.p.line.IsRow() {
		return nil
	}
	a := value[named](m, "a")
	var s *ins.Stitch
	switch {
	case m.has("n"):
		s = &ins.Stitch{N: m.num("n", 1)}
	case a.width.Set() && !m.has("e"):
		s = &ins.Stitch{N: a.width}
	case a.chart || m.has("e"):
		s, _ = stitchTo(m).(*ins.Stitch)
	}
	if s == nil {
		return nil
	}
	s.Chart = a.chart && !a.plain
	if t, ok := m.get("t").(often); ok {
		s.Put(m.span())
		return &ins.Repeat{Body: []ins.Item{s}, Times: t.n, Stop: -1}
	}
	return s
}

// longestPattern is how many words the name of a pattern may have.
const longestPattern = 6

// patternName reads what a pattern or a chart is called: Chart A, the lace chart, Broken Rib Pattern.
func patternName(p *parser, i int) (any, int) {
	j := i
	if p.at(j).Is("the", "this", "your") {
		j++
	}
	a, to := p.knownName(j)
	if to < 0 {
		a, to = p.chartName(j)
	}
	if to < 0 {
		a, to = p.openName(j)
	}
	if to < 0 {
		return nil, -1
	}
	if g := p.at(to); g.Kind == 'g' {
		if n, after := within(p, to); after == len(g.Sub) {
			a.width = n
			to++
		} else if p.neutralAll(g.Sub) {
			to++
		}
	}
	return a, to
}

// within is the number of stitches that the bracket at i holds, and how many of its words say so: (14 sts).
func within(p *parser, i int) (ins.Num, int) {
	t := p.at(i).Sub
	k := 0
	for k < len(t) && t[k].Is("over", "worked", "across", "of") {
		k++
	}
	if k+1 < len(t) && t[k].Kind == 'n' && t[k+1].Is("st", "sts", "stitches") {
		return t[k].Num, k + 2
	}
	return ins.Num{}, -1
}

// nameEnds are words behind the name of a pattern that say what it is.
func nameEnds(t *text.Token) bool {
	return t.Is("pattern", "patt", "pat", "patterns", "stitch", "st", "sts", "repeat", "rep", "panel", "chart", "sequence")
}

// knownName reads a name that stands above rows of the text.
func (p *parser) knownName(i int) (named, int) {
	if len(p.r.patternNames) == 0 {
		return named{}, -1
	}
	to := -1
	var b strings.Builder
	for k := i; k < i+longestPattern && p.at(k).Kind != 'g' && p.at(k).Kind != 0; k++ {
		b.WriteString(p.at(k).S)
		if p.r.patternNames[b.String()] {
			to = k + 1
		}
		b.WriteByte(' ')
	}
	for to > 0 && nameEnds(p.at(to)) {
		to++
	}
	return named{chart: true, even: true, plain: to == i+1 && p.at(i).Is("pattern", "patt")}, to
}

// chartName reads Chart A, charts 1 and 2, the lace chart.
func (p *parser) chartName(i int) (named, int) {
	k := i
	for ; k < i+4 && !p.at(k).Is("chart", "charts"); k++ {
		if t := p.at(k); t.Kind != 'w' || text.IsStop(t.S) || t.Is("of", "in", "from", "and", "on", "to", "next", "each") || p.thingAt(k) && !t.Cap {
			return named{}, -1
		}
	}
	if !p.at(k).Is("chart", "charts") {
		return named{}, -1
	}
	k = p.letter(k + 1)
	for p.at(k).Is("and", "&", ",", "or") && (p.at(k+1).Is("chart") || p.letter(k+1) > k+1) {
		if k++; p.at(k).Is("chart") {
			k++
		}
		k = p.letter(k)
	}
	if p.at(k).Is("pattern", "patt", "pat") {
		k++
	}
	return named{chart: true}, k
}

// letter passes the letter or the number by which a chart or a pattern is told from others.
func (p *parser) letter(k int) int {
	t := p.at(k)
	if t.Is("no", "#", "number") {
		t, k = p.at(k+1), k+1
	}
	switch {
	case t.Kind == 'n' && t.Num.By == nil && !p.at(k+1).Is("time", "times", "row", "rows", "more", "st", "sts", "stitches", "inches", "in", "cm", "rounds", "rnds"),
		t.Kind == 'w' && t.Cap && (len(t.S) == 1 || strings.Trim(t.S, "iv") == "" || len(t.S) == 2 && t.S[1] >= '0' && t.S[1] <= '9'):
		return k + 1
	}
	return k
}

// openName reads a name that stands nowhere else: Diamond Pattern, lace panel.
func (p *parser) openName(i int) (named, int) {
	for k := i; k < i+longestPattern-1; k++ {
		t := p.at(k)
		if k > i && t.Is("pattern", "patt", "pat", "panel") {
			return named{chart: k > i+1 || !p.at(i).Is("main", "stitch", "st", "same", "this", "above", "established", "est", "body", "set", "back", "front", "whole", "entire", "complete")}, p.letter(k + 1)
		}
		if t.Kind != 'w' || text.IsStop(t.S) || t.Is("of", "in", "from", "on", "to", "next", "each", "every", "last", "first", "for", "with", "and", "until", "as", "even", "st", "sts") || !p.at(i).Cap && p.thingAt(k) && !(loose[t.S] && len(t.S) > 2) {
			break
		}
	}
	return named{}, -1
}

// patternsOf are the names that stand above rows, in lower case, without the words that say that they are patterns.
func patternsOf(src []string) map[string]bool {
	out := map[string]bool{}
	for i, line := range src {
		name := patternAbove(line)
		if name == "" {
			continue
		}
		for k := i + 1; k < len(src) && k < i+4; k++ {
			if firstRow().MatchString(src[k]) {
				out[name] = true
			}
			if strings.TrimSpace(src[k]) != "" && !multiple().MatchString(src[k]) {
				break
			}
		}
	}
	return out
}

// patternBegins takes a line above rows that tells of which pattern they are: before the work, where nothing is cast on.
func (r *Reader) patternBegins(n int) bool {
	line := r.x.Src[n-1]
	if len(r.patternNames) == 0 || len(r.sec.Lines) > 0 && !r.sec.Pattern || !r.patternNames[patternAbove(line)] || text.KeyLine(line) != "" {
		return false
	}
	r.x.Read.Words++
	r.mode = ""
	r.note(line, n)
	name, _, _ := strings.Cut(strings.Trim(line, "*#_•:. "), "(")
	if multipleAlone().MatchString(line) {
		name = ""
	}
	r.section(&ins.Section{Name: strings.TrimRight(name, " :,-–"), Pattern: true, At: ins.Span{Line: n, Col: 1, End: len([]rune(line)) + 1}})
	return true
}

// firstRow is a line that begins with the name of a first row: Row 1 (RS): or 1st rnd.
var firstRow = text.Once(`(?i)^\W*(?:(?:row|rnd|round|rows|rnds|rounds|r)\.? ?1\b|(?:1st|first|foundation|set-?up) (?:row|rnd|round)\b)`)

// aPattern is a line that names a pattern: Broken Rib Pattern (multiple of 6 sts).
var aPattern = text.Once(`(?i)\b(?:pattern|patt|pat|stitch|st|rib|ribbing|lace|panel|cable|edging|border|mesh|chart|stripes?|basketweave|motif)\b|\bmultiple of\b|\bover (?:a|an|\d+)\b`)

// noPattern are words that no name of a pattern has.
var noPattern = text.Once(`(?i)\b(?:to|into|join|cast|ch|chain|sl|slip|make|begin|beg|commence|start|next|each|from|until|repeat|turn|skip)\b`)

// patternAbove is what a line above rows calls a pattern, as its rows are told by; empty if it calls none.
func patternAbove(line string) string {
	line = strings.Trim(strings.TrimSpace(line), "*#_•:. ")
	if len(line) > 90 || strings.Contains(line, ". ") || strings.ContainsAny(line, ";=") || !aPattern().MatchString(line) || noPattern().MatchString(line) {
		return ""
	}
	if i := strings.IndexAny(line, "([,:"); i > 0 {
		line = line[:i]
	}
	var words []string
	tokens := text.Lex(line, 0)
	for k := range tokens {
		words = append(words, tokens[k].S)
	}
	for len(words) > 1 {
		t := text.Token{Word: ins.Word{Kind: 'w', S: words[len(words)-1]}}
		if !nameEnds(&t) {
			break
		}
		words = words[:len(words)-1]
	}
	if len(words) == 0 || len(words) > longestPattern {
		return ""
	}
	return strings.Join(words, " ")
}

// charted reports whether an instruction is worked from a chart, or one within it.
func charted(n ins.Item) bool {
	switch k := n.(type) {
	case *ins.Stitch:
		return k.Chart
	case *ins.Repeat:
		return slices.ContainsFunc(k.Body, charted)
	}
	return false
}
