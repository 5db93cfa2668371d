package grammar

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

// guessSizes takes the sizes of a text that names none from what it fits, or from its longest line of numbers.
func (r *Reader) guessSizes() {
	x := r.x
	s := text.Told(x.Src)
	if len(s) == 0 {
		s = apart(text.ToFit(x.Src))
	}
	if len(s) > 1 {
		x.Sizes, r.unlike = expr.Sizes{Names: s, Groups: []int{1, len(s) - 1}}, true
		return
	}
	k := text.Sizes(x.Src)
	if k <= 1 || k >= 40 {
		x.Sizes = expr.Sizes{Names: []string{""}, Groups: []int{1}}
		return
	}
	x.Sizes, r.unlike = expr.Sizes{Groups: []int{1, k - 1}}, true
	for i := range k {
		name := fmt.Sprintf("size %d", i+1)
		if letter := string(rune('a' + i%26)); slices.ContainsFunc(x.Src, func(l string) bool { return text.Has(l, "size ("+letter+")") }) {
			name = letter
		}
		x.Sizes.Names = append(x.Sizes.Names, name)
	}
}

// apart are names of sizes, those run together with dashes each by itself: 2 (4-6-8-10). Two are a span: 2 (3-4).
func apart(names []string) []string {
	var out []string
	for _, n := range names {
		if strings.Count(n, "-") > 1 {
			out = append(out, strings.Split(n, "-")...)
			continue
		}
		out = append(out, n)
	}
	return out
}

func (r *Reader) sizes(rest string, line, col int) {
	if text.InTwoUnits(rest) {
		return
	}
	at := ins.Span{Line: line, Col: col, End: col + len([]rune(strings.TrimSpace(rest)))}
	if open, _, ok := strings.Cut(rest, ";"); ok && text.Open(open) { // 2-3 (4-5; 6-7)
		rest = strings.ReplaceAll(rest, ";", ",")
	}
	rest, _, _ = strings.Cut(rest, ";") // measurements stand behind it
	alone := text.Hyphened(text.SizesAlone(rest), r.x.Src)
	s, p, words := r.sizesIn(alone)
	if p == nil && slices.ContainsFunc(s.Names, func(name string) bool { return tellsSizes().MatchString(name) }) { // Size: women's 8. (Can be made to any size …)
		return
	}
	switch {
	case len(r.o.Sizes.Names) > 0:
		r.x.Said.Sizes, r.x.Said.SizesAt = s, at
	case len(r.x.Sizes.Names) > 0 || r.x.Said.SizesAt.Line > 0:
	case p != nil && len(spread(words)) > 1:
		r.x.Sizes = expr.Sizes{Names: spread(words), Groups: []int{1, len(spread(words)) - 1}}
		r.x.Said.SizesAt, r.unlike = at, true
	case p != nil && strings.ContainsAny(words, "([,") && !strings.Contains(words, ": ") && !tellsSizes().MatchString(words):
		r.x.Findings = append(r.x.Findings, p.Finding(r.x.Pos(ins.Span{Line: line, Col: col, End: col + 1})))
	case p == nil && (len(s.Names) > 1 || len(words) < 12):
		if len(s.Names) > 1 {
			r.x.Sizes, r.unlike = s, r.unlike || words != alone || !strings.ContainsAny(words, "([")
		}
		r.x.Said.SizesAt = at
	}
}

// sizesIn are the sizes that words list, and the words that do: others of them where these can't be read, or no line of numbers
// has as many.
func (r *Reader) sizesIn(words string) (expr.Sizes, *expr.Problem, string) {
	s, p := parseSizes(words)
	if p == nil && (len(s.Names) < 2 || text.InSizes(r.x.Src, len(s.Names))) {
		return s, p, words
	}
	for _, w := range text.OtherSizes(words) {
		if t, q := parseSizes(w); q == nil && text.InSizes(r.x.Src, len(t.Names)) {
			return t, nil, w
		}
	}
	return s, p, words
}

func parseSizes(words string) (expr.Sizes, *expr.Problem) {
	return expr.ParseSizes(strings.NewReplacer(": ", ", ", ":", ",").Replace(words))
}

// tellsSizes are sizes told in a sentence: Directions are for size small with changes for the others in brackets.
var tellsSizes = text.Once(`[a-z]{2,} [a-z]{2,} [a-z]{2,} [a-z]{2,}`)

// spread are the names of sizes that stand in brackets as in Europe: S (M) L.
func spread(words string) []string {
	f := strings.FieldsFunc(words, func(c rune) bool { return strings.ContainsRune("()[],/ ", c) })
	seen := map[string]bool{}
	for _, w := range f {
		if len(w) > 4 || seen[w] {
			return nil
		}
		seen[w] = true
	}
	return f
}

// one takes a line of the text. A paragraph that holds the head of a pattern is several.
func (r *Reader) one(n int) {
	if r.room != nil {
		r.room.again()
	}
	raw, from := r.x.Src[n-1], 0
	for _, to := range text.Cuts(raw) {
		r.part(n, strings.Repeat(" ", len([]rune(raw[:from])))+raw[from:to])
		r.flush()
		r.raw, from = "", to
	}
	r.part(n, strings.Repeat(" ", len([]rune(raw[:from])))+raw[from:])
}

// sizeLetter is the letter of a size before what is for it alone.
var sizeLetter = text.Once(`^\(?([a-z])\)[ .:]*(.*)$`)

// sizeWords are the words for which letters stand as names of sizes.
var sizeWords = [][2]string{{"extra large", "xl"}, {"x-large", "xl"}, {"extra small", "xs"}, {"x-small", "xs"}, {"small", "s"}, {"medium", "m"}, {"large", "l"}}

// sizeNames are words in small letters, with the text's own letters for its sizes: S where they say small.
func (r *Reader) sizeNames(words string) string {
	words = strings.ToLower(words)
	own := func(name string) bool {
		return slices.ContainsFunc(r.x.Sizes.Names, func(n string) bool { return strings.EqualFold(n, name) })
	}
	for _, w := range sizeWords {
		if own(w[1]) && !own(w[0]) {
			words = strings.ReplaceAll(words, w[0], w[1])
		}
	}
	return words
}

// namedSizes is where words end that say by their names alone for which sizes a line is: Teen and Adult only; Medium and Large sizes.
// 0: it says none.
func (r *Reader) namedSizes(line string) int {
	if len(r.x.Sizes.Names) < 2 {
		return 0
	}
	end := strings.IndexAny(line, ":.–—")
	if k := strings.Index(line, " -"); k > 0 && (end < 0 || k < end) {
		end = k
	}
	if end < 0 {
		end = len(line)
	}
	if end > mostForSizes {
		return 0
	}
	names := slices.Clone(r.x.Sizes.Names)
	slices.SortFunc(names, func(a, b string) int { return len(b) - len(a) })
	said := " " + strings.Join(strings.FieldsFunc(r.sizeNames(line[:end]), func(c rune) bool { return strings.ContainsRune(" ,&+/*_()[]", c) }), "  ") + " "
	bare := said
	for _, n := range names {
		said = strings.Replace(said, " "+strings.ReplaceAll(strings.ToLower(n), " ", "  ")+" ", " ", 1)
	}
	if said == bare {
		return 0
	}
	only, begun := false, r.x.Read.Lines > 0 // what stands before the rows is a table of measurements
	for _, w := range strings.Fields(said) {
		switch w {
		case "and", "the":
		case "only":
			only = true
		case "for", "size", "sizes":
			only = only || begun
		default:
			return 0
		}
	}
	if !only {
		return 0
	}
	return end
}

// sized takes the words off a line that say for which sizes it is, and ends a stretch for some sizes where it is over.
func (r *Reader) sized(raw, trimmed string, n int) (line, rest string) {
	said, rest := text.ForSizes(trimmed)
	if to := r.namedSizes(trimmed); to > 0 {
		said, rest = strings.Trim(trimmed[:to], "*_ "), strings.TrimLeft(trimmed[to:], " :*_.–—-")
	}
	if m := sizeLetter().FindStringSubmatch(trimmed); m != nil && slices.Contains(r.x.Sizes.Names, m[1]) {
		said, rest = m[1], m[2]
	}
	awaited := r.awaits
	if r.awaits = false; said != "" && len(r.x.Sizes.Names) > 1 {
		r.flush()
		r.awaits = rest == "" && len(said) == 1
		r.forSizes(said, rest != "" || r.awaits)
		return strings.Repeat(" ", len([]rune(raw))-len([]rune(rest))) + rest, rest
	}
	if r.inline && !awaited && !r.wrapped(raw, n) {
		r.flush()
		r.only, r.inline = nil, false
	}
	return raw, trimmed
}

// forSizes takes the sizes that words say a stretch is for: those of the size line that stand in them.
func (r *Reader) forSizes(said string, inline bool) {
	r.only, r.some, r.inline, r.lately = nil, false, inline, 0
	if text.AllSizes(said) {
		return
	}
	signs := " ,:()&+/"
	if slices.ContainsFunc(r.x.Sizes.Names, func(n string) bool { return strings.Contains(n, "/") }) {
		signs = " ,:()&+"
	}
	words := " " + strings.Join(strings.FieldsFunc(r.sizeNames(said), func(c rune) bool { return strings.ContainsRune(signs, c) }), " ") + " "
	names := slices.Clone(r.x.Sizes.Names)
	slices.SortFunc(names, func(a, b string) int { return len(b) - len(a) })
	for _, name := range names {
		if k := strings.ToLower(name); k != "" && strings.Contains(words, " "+k+" ") {
			words = strings.ReplaceAll(words, " "+k+" ", " ")
			r.only = append(r.only, slices.Index(r.x.Sizes.Names, name))
		}
	}
	if len(r.only) == 0 {
		r.only = sizesByPlace(text.Lex(said, 1), len(r.x.Sizes.Names))
	}
	slices.Sort(r.only)
	if r.lately, r.some = len(r.only), len(r.only) == 0; r.some {
		r.x.Unsized = true
	}
}

// sizesByPlace are the sizes that words name by their place among all: First, Second and Last Sizes only; the last 2 sizes; the two smallest
// sizes; the second largest size. A range of places is not read.
func sizesByPlace(t []text.Token, all int) (list []int) {
	many := func(i int) int {
		if k := near(t, i); k.Kind == 'n' {
			return k.Num.All
		}
		return max(numerals[near(t, i).S], 1)
	}
	for i := range t {
		from, n := all, 0
		switch {
		case t[i].Is("to", "-", "through"):
			return nil
		case t[i].Is("last"):
			n = many(i + 1)
			from = all - n
		case t[i].Is("first"):
			from, n = 0, many(i+1)
		case t[i].Is("smallest", "largest") && near(t, i-1).Ord > 0:
			if from, n = t[i-1].Ord-1, 1; t[i].Is("largest") {
				from = all - t[i-1].Ord
			}
		case t[i].Is("smallest"):
			from, n = 0, many(i-1)
		case t[i].Is("largest"):
			n = many(i - 1)
			from = all - n
		case t[i].Ord > 0 && !near(t, i+1).Is("smallest", "largest"):
			from, n = t[i].Ord-1, 1
		}
		if n > 0 && (from < 0 || from+n > all) {
			return nil
		}
		for ; n > 0; n-- {
			list = append(list, from)
			from++
		}
	}
	return list
}

// numbers are the tokens of a line, each line of numbers with one a size: of those that a stretch is for, if it is for
// some alone.
func (r *Reader) numbers(raw string) []text.Token {
	all := len(r.x.Sizes.Names)
	if r.only == nil || len(r.only) == all {
		return text.Lex(raw, all)
	}
	if tokens := text.Lex(raw, all); slices.ContainsFunc(tokens, func(t text.Token) bool { return len(t.Num.By) == all }) && !slices.ContainsFunc(tokens, func(t text.Token) bool { return t.Short > 0 }) {
		return tokens // with a dash for a size that has none
	}
	tokens := text.Lex(raw, len(r.only))
	if slices.ContainsFunc(tokens, func(t text.Token) bool { return t.Short > 0 }) {
		return text.Lex(raw, all)
	}
	r.spread(tokens)
	return tokens
}

// spread puts the numbers of some sizes into their places among all.
func (r *Reader) spread(tokens []text.Token) {
	for i := range tokens {
		t := &tokens[i]
		r.spread(t.Sub)
		if len(t.Num.By) != len(r.only) {
			continue
		}
		by := make([]int, len(r.x.Sizes.Names))
		for k := range by {
			by[k] = ins.None
		}
		for k, size := range r.only {
			by[size] = t.Num.By[k]
		}
		t.Num.By = by
	}
}

// sizesGoOn reports whether the line behind a blank one goes on with the numbers of the other sizes: 58, and then (60, 62) sts.
func (r *Reader) sizesGoOn(n int) bool {
	if n >= len(r.x.Src) || len(r.tokens) == 0 || len(r.x.Sizes.Names) < 2 {
		return false
	}
	last := &r.tokens[len(r.tokens)-1]
	next := text.Lex(r.x.Src[n], len(r.x.Sizes.Names))
	return last.Kind == 'n' && last.Num.By == nil && len(next) > 0 && (next[0].List || next[0].Is("(", "[") && len(next) > 1 && next[1].Kind == 'n')
}

// short tells lines of numbers that have not one a size.
func (r *Reader) short(tokens []text.Token, l *ins.Line) bool {
	part := false
	for i := range tokens {
		t := &tokens[i]
		at := ins.Span{Line: t.Line, Col: t.Col, End: t.End}
		if t.Short == 0 {
			r.bracketed(t, at)
			if c := near(tokens, i+1); !r.crochet && t.Num.By != nil && c.Glued && c.Cap && len(c.S) == 1 { // 2 (1, 0)M: of which yarn, and whether it is a count, is not sure
				l.Unread = append(l.Unread, at)
			}
			continue
		}
		if near(tokens, i-1).Is("-") && t.Glued || measuring[near(tokens, i+1).S] { // to fit 86-92 (97-102: 107-112) cm
			continue
		}
		if t.Short < len(r.x.Sizes.Names) && (r.some || t.Short == r.lately) { // one number for each of those
			l.Words[i].Short, part = 0, true
			l.Unread = append(l.Unread, at)
			continue
		}
		l.Short = true
		if r.x.Said.SizesAt.Line == 0 && len(r.o.Sizes.Names) == 0 { // how many sizes there are is a guess
			l.Unread = append(l.Unread, at)
			continue
		}
		r.tellShort(t.S, t.Short, at)
	}
	return l.Short || part
}

// tellShort tells a line of numbers that has not one a size.
func (r *Reader) tellShort(list string, n int, at ins.Span) {
	names := r.x.Sizes.Names
	f := finding.Finding{Kind: "rows/sizes", Severity: finding.Error,
		Message: fmt.Sprintf("%q has %d numbers for %d sizes", list, n, len(names)),
		Want:    fmt.Sprintf("one number for each of %s, or one alone", strings.Join(names, ", ")),
		Fix:     "put in the number that is missing, or a dash where a size has none"}
	if n < len(names) {
		f.Sizes = names[n:]
	} else {
		f.Fix = "take out the number that is too many"
	}
	r.x.Tell(f, at)
}

// sizesHead is a line of sizes with brackets.
var sizesHead = text.Once(`(?i)^\W*(?:\w+ ){0,3}sizes?\b.*[(\[]`)

// bracketed tells once of a line of numbers that is bracketed unlike the line of sizes; in a text without one that is read for a
// pattern, unlike the first of its numbers.
func (r *Reader) bracketed(t *text.Token, at ins.Span) {
	if r.only != nil || t.Num.By == nil || t.List || r.unlike || !strings.ContainsAny(t.S, "([") {
		return
	}
	like, than, own := r.x.Sizes, "the line of sizes", len(r.o.Sizes.Names) == 0
	switch {
	case own:
	case len(r.x.Said.Sizes.Names) > 0:
		like = r.x.Said.Sizes
	case r.bracketing == nil:
		r.bracketing = groupsOf(t.S)
		fallthrough
	default:
		like.Groups, than = r.bracketing, "the lines before it"
	}
	if slices.Equal(groupsOf(t.S), like.Groups) {
		return
	}
	r.unlike = true
	if own && !slices.ContainsFunc(r.x.Src, func(s string) bool { return sizesHead().MatchString(s) }) { // Sizes: Small, Medium, Large
		return
	}
	r.x.Tell(finding.Finding{Kind: "words/brackets", Severity: finding.Note,
		Message: fmt.Sprintf("%q is bracketed unlike %s", t.S, than),
		Want:    "brackets as in " + like.Full(like.Names), Fix: "bracket the numbers like the sizes"}, at)
}

// shortSizes tells once of a line of sizes that is too short or too long itself: most
// lines of numbers then have another length. Where there is no line of sizes, few lines of numbers that have another
// length than all others are told, or else not read.
func (r *Reader) shortSizes() {
	x := r.x
	lists, best, short := r.listsOf()
	if x.Said.SizesAt.Line == 0 {
		if len(r.o.Sizes.Names) == 0 {
			r.guessedSizes(short, lists[0])
		}
		return
	}
	if lists[best] < 3 || lists[best] <= lists[0] {
		return
	}
	x.Findings = slices.DeleteFunc(x.Findings, func(f finding.Finding) bool {
		return f.Kind == "rows/sizes" && strings.Contains(f.Message, fmt.Sprintf(" has %d numbers for ", best))
	})
	x.Tell(finding.Finding{Kind: "rows/sizes", Severity: finding.Error,
		Message: fmt.Sprintf("these are %d sizes, but %d lines of numbers have %d numbers", len(x.Sizes.Names), lists[best], best),
		Fix:     "correct the line of sizes: until then those lines are not checked"}, x.Said.SizesAt)
}

// listsOf are how many lines of numbers have so many of them, those that have one a size under 0; the length that most of the others have, and their
// lines.
func (r *Reader) listsOf() (lists map[int]int, best int, short []*ins.Line) {
	lists = map[int]int{}
	for _, s := range r.x.Sections {
		for _, l := range s.Lines {
			for _, t := range l.Words {
				switch {
				case t.Short > 0:
					short = append(short, l)
					lists[t.Short]++
					if k := lists[best]; lists[t.Short] > k || lists[t.Short] == k && t.Short < best {
						best = t.Short
					}
				case t.Num.By != nil:
					lists[0]++
				}
			}
		}
	}
	return lists, best, short
}

// fewShort is of how many lines of numbers one may have another length and be a slip, where no line tells the sizes.
const fewShort = 10

// guessedSizes tells the lines of numbers of another length than so many others, or leaves them unread.
func (r *Reader) guessedSizes(short []*ins.Line, others int) {
	slip := len(short)*fewShort <= others
	for _, l := range short {
		if !slip {
			l.Short = len(l.Body) == 0 // yarn, and what else is told before the rows
			continue
		}
		for i := range l.Words {
			if t := &l.Words[i]; t.Short > 0 {
				r.tellShort(t.S, t.Short, ins.Span{Line: t.Line, Col: t.Col, End: t.End})
			}
		}
	}
}

// groupsOf is how a line of numbers is bracketed: 1, 3 for 48 (52, 56, 60).
func groupsOf(s string) []int {
	var out []int
	n, digit := 0, false
	for _, c := range s {
		switch {
		case c >= '0' && c <= '9' || !digit && strings.ContainsRune("-–—−‑", c): // a dash alone: a size that has none
			if !digit {
				n++
			}
			digit = true
		case c == '(' || c == '[' || c == ')' || c == ']':
			if n > 0 {
				out = append(out, n)
			}
			n, digit = 0, false
		default:
			digit = false
		}
	}
	if n > 0 {
		out = append(out, n)
	}
	return out
}
