package rows

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// pairs are the words besides stitches that turn with the terms, longest first:
// those of the yarn standard's list, and the knitting words that differ.
var pairs = [][2]string{
	{"stockinette stitch", "stocking stitch"}, {"stockinette st", "stocking st"}, {"binding off", "casting off"}, {"bind off", "cast off"}, {"binds off", "casts off"}, {"bound off", "cast off"},
	{"skipped", "missed"}, {"skipping", "missing"}, {"skip", "miss"}, {"sk", "miss"}, {"gauge", "tension"},
}

// Translate turns a text from one set of terms into the other. Only stitch names,
// their abbreviations and the few other words that differ change; every other byte
// stays as it stood, capitals too. Words that are the same in both stay.
func Translate(src []byte, from, to stitch.Terms) []byte {
	if from == to {
		return append([]byte(nil), src...)
	}
	out := make([]byte, 0, len(src)+len(src)/16)
	s := string(src)
	i := 0
	prev := ' '
	for i < len(s) {
		c, size := utf8.DecodeRuneInString(s[i:])
		if !unicode.IsLetter(c) || unicode.IsLetter(prev) {
			out = append(out, s[i:i+size]...)
			i += size
			prev = c
			continue
		}
		word, n, ok := nation(s[i:], s[:i])
		if !ok {
			word, n, ok = turned(s[i:], s[:i], from, to)
		}
		if ok {
			out = append(out, word...)
			i += n
			prev = 'x'
			continue
		}
		n = wordLen(s[i:])
		out = append(out, s[i:i+n]...)
		i += n
		prev = 'x'
	}
	return out
}

func wordLen(s string) int {
	for i, c := range s {
		if !unicode.IsLetter(c) && !unicode.IsDigit(c) {
			return i
		}
	}
	return len(s)
}

// turned is what the words at the beginning of s become, and how long they were. Before is what stands before them.
func turned(s, before string, from, to stitch.Terms) (string, int, bool) {
	if now, n, ok := paired(s, before, from, to); ok {
		return now, n, true
	}
	for _, read := range []func(string, stitch.Terms, stitch.Terms) (string, int, bool){dotted, inParts} {
		if now, n, ok := read(s, from, to); ok {
			return now, n, true
		}
	}
	ends := wordEnds(s)
	for _, end := range slices.Backward(ends) { // the longest phrase goes first
		if gap := glossed(s[end:]); gap > 0 { // dc in a text of US terms: tr UK
			t, n, _ := text.Nation(s[end+gap:])
			if now, ok := stitchNamed(s[:end], t, t.Other()); ok {
				return now + s[end:end+gap] + text.OtherNation(s[end+gap:end+gap+n]), end + gap + n, true
			}
		}
		if now, ok := shortened(s[:end], from, to); ok {
			return now, end, ok && meansStitch(s[:end], s[end:], before, from)
		}
		if now, ok := stitchNamed(s[:end], from, to); ok {
			return now, end, true
		}
	}
	if len(ends) == 0 {
		return "", 0, false
	}
	now, ok := runTogether(s[:ends[0]], from, to)
	return now, ends[0], ok
}

// runTogether turns a word in which a stitch is run together with what is beside the standard's list, or with its loop.
func runTogether(word string, from, to stitch.Terms) (string, bool) {
	if now, ok := beside(word, from, to); ok {
		return now, true
	}
	now, ok := looped(strings.ToLower(word), from, to)
	return cased(now, word), ok
}

// stitchNamed is a stitch by its name or its short name in other terms.
func stitchNamed(words string, from, to stitch.Terms) (string, bool) {
	low := strings.ToLower(strings.ReplaceAll(words, "-", " "))
	st, ok := stitch.Lookup(low, from)
	if !ok && lettered(words) { // s c
		low = strings.ReplaceAll(low, " ", "")
		st, ok = stitch.Lookup(low, from)
	}
	if !ok || st.Craft != stitch.Crochet {
		return "", false
	}
	now := counterpart(st, low, from, to)
	if now == low {
		return words, true
	}
	return cased(now, words), true
}

// lettered reports whether words are small letters, each by itself, as old leaflets print short names: s c, h d c.
func lettered(words string) bool {
	for i, c := range words {
		if i%2 == 1 && c != ' ' || i%2 == 0 && (c < 'a' || c > 'z') {
			return false
		}
	}
	return len(words) > 2
}

// glossed is how far behind a stitch the country stands by whose terms it is called: tr UK, tr (UK), tr in UK. 0: none does.
func glossed(s string) int {
	for _, gap := range []string{" in ", " (", " ["} {
		if strings.HasPrefix(s, gap) {
			if _, n, _ := text.Nation(s[len(gap):]); n > 0 && (gap == " in " || strings.ContainsRune(")]", rune((s + " ")[len(gap)+n]))) {
				return len(gap)
			}
		}
	}
	if strings.HasPrefix(s, " ") {
		if _, n, said := text.Nation(s[1:]); n > 0 && !said {
			return 1
		}
	}
	return 0
}

// nation is the name of a country at the beginning of s as it stands in the other terms, if it is that of terms or of a stitch
// behind it: US terms, (UK dc). Before is what stands before it.
func nation(s, before string) (string, int, bool) {
	t, n, said := text.Nation(s)
	if n == 0 {
		return "", 0, false
	}
	now := text.OtherNation(s[:n])
	if said || named(before) || inTitle(before, s) {
		return now, n, true
	}
	at := n + len(s[n:]) - len(strings.TrimLeft(s[n:], " :="))
	for _, end := range slices.Backward(wordEnds(s[at:])) {
		if word, ok := stitchNamed(s[at:at+end], t, t.Other()); ok {
			return now + s[n:at] + word, at + end, true
		}
	}
	return "", 0, false
}

// longestTitle bounds the line that may be a title.
const longestTitle = 80

// inTitle reports whether the line that before ends with and s begins with is a title that says the terms.
func inTitle(before, s string) bool {
	start := before[max(0, len(before)-longestTitle):]
	if k := strings.LastIndexByte(start, '\n'); k >= 0 || len(start) == len(before) {
		line, _, _ := strings.Cut(start[k+1:]+s[:min(len(s), longestTitle)], "\n")
		return text.TitleTerms(line)
	}
	return false
}

// named reports whether words end with those that name the terms: Terms:, terminology used:
func named(before string) bool {
	w := strings.TrimRight(strings.ToLower(before[max(0, len(before)-24):]), " :")
	return strings.ContainsAny(before[max(0, len(before)-1):], " :") && slices.ContainsFunc([]string{"terms", "terminology", "terms used", "terminology used"}, func(end string) bool { return strings.HasSuffix(w, end) })
}

// paired is what a phrase of the pairs at the beginning of s becomes, unless both words of a pair stand there (gauge/tension), or the
// word has its plain meaning: an even tension, Miss Smith.
func paired(s, before string, from, to stitch.Terms) (string, int, bool) {
	for _, p := range pairs {
		a, b := p[0], p[1]
		if from == stitch.UK {
			a, b = b, a
		}
		if len(s) < len(a) || !strings.EqualFold(s[:len(a)], a) || !boundary(s, len(a)) || from == stitch.UK && p[0] == "sk" {
			continue
		}
		return cased(b, s[:len(a)]), len(a), !bothWords(s[len(a):], before, b) && !plainEnglish(s[:len(a)], s[len(a):], before)
	}
	return "", 0, false
}

// bothWords reports whether the other word of a pair stands beside one: gauge/tension, gauge (tension), skip or miss.
func bothWords(after, before, other string) bool {
	for _, sign := range []string{"/", " / ", " or ", " (", "(", " [", " = "} {
		ahead, behind := sign+other, other+sign
		if len(after) >= len(ahead) && strings.EqualFold(after[:len(ahead)], ahead) || len(before) >= len(behind) && strings.EqualFold(before[len(before)-len(behind):], behind) {
			return true
		}
	}
	return false
}

var (
	sortsOfTension = wordSet("even yarn thread tight loose firm consistent good same more less slight constant own under")
	goTo           = wordSet("to ahead straight down over")
	partsOfText    = wordSet("step steps part section instruction instructions paragraph")
)

// plainEnglish reports whether a word of a pair has its plain meaning.
func plainEnglish(word, after, before string) bool {
	next, rest := nextWord(after)
	last := lastWord(before)
	switch low := strings.ToLower(word); {
	case low == "tension":
		return sortsOfTension[last]
	case low == "gauge":
		return last != "" && unicode.IsDigit(rune(last[0])) && next != "" // 12 gauge wire
	case low == "miss":
		at := strings.TrimLeft(after, " ")
		_, st := stitch.Lookup(next, stitch.UK)
		return word == "Miss" && !st && len(next) > 2 && unicode.IsUpper(rune(at[0])) && at[:len(next)] != strings.ToUpper(next) // Miss Marsh
	case strings.HasPrefix(low, "skip"):
		then, _ := nextWord(rest)
		return goTo[next] || partsOfText[then]
	}
	return false
}

// lastWord is the word that s ends with before a blank, in small letters; none if a sign stands there.
func lastWord(s string) string {
	s = strings.TrimRight(s, " ")
	return strings.ToLower(s[strings.LastIndexFunc(s, func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) })+1:])
}

// wordEnds is where the first five words of s end, as far as they are joined by a space or a hyphen each.
func wordEnds(s string) []int {
	var ends []int
	at := 0
	for range 5 {
		n := wordLen(s[at:])
		if n == 0 {
			break
		}
		at += n
		ends = append(ends, at)
		if at+1 >= len(s) || s[at] != ' ' && s[at] != '-' {
			break
		}
		if c, _ := utf8.DecodeRuneInString(s[at+1:]); !unicode.IsLetter(c) {
			break
		}
		at++
	}
	return ends
}

// looped turns a stitch that is run together with its loop: blsc, dcflo; floss is a thread.
func looped(low string, from, to stitch.Terms) (string, bool) {
	var now string
	loop, name := stitch.LoopApart(low, func(name string) bool {
		st, ok := stitch.Lookup(name, from)
		if ok && st.Craft == stitch.Crochet && low != "floss" {
			now = counterpart(st, name, from, to)
			return true
		}
		return false
	})
	return strings.Replace(low, name, now, 1), loop != ""
}

func boundary(s string, n int) bool {
	if n >= len(s) {
		return true
	}
	c, _ := utf8.DecodeRuneInString(s[n:])
	return !unicode.IsLetter(c) && !unicode.IsDigit(c)
}

// plainName is the name of a plain stitch without its last word, and whether the stitch is one that has such a name.
func plainName(st *stitch.Stitch, t stitch.Terms) (string, bool) {
	name, ok := strings.CutSuffix(st.Name(t), " crochet")
	return name, ok && st.Base == st.ID
}

// shortened turns the names of plain stitches as old leaflets have them, without their last word: 1 double in next st.
func shortened(words string, from, to stitch.Terms) (string, bool) {
	low := strings.ReplaceAll(strings.ToLower(words), "-", " ")
	one, many := strings.CutSuffix(low, "s")
	for _, st := range stitch.All() {
		if name, ok := plainName(st, from); ok && name == one {
			now, _ := plainName(st, to)
			if many {
				now += "s"
			}
			return cased(now, words), true
		}
	}
	return "", false
}

// Words behind a single, a double or a treble that is a stitch, those behind them that say it is none, and those before one.
var (
	intoPlace = wordSet("in into on onto over between around across through round worked from")
	ofSize    = wordSet("size length width half thickness number")
	doubled   = wordSet("held hold holding fold folded folding yarn thread wool used using use taken wound cast sewn")
	stitchEnd = wordSet("and then to turn along at with for rep repeat cluster clusters group groups st sts stitch stitches all only more times crochets crochet tog together ch chain")
	ordinals  = wordSet("each next last first every previous same second third fourth one two three four five six seven eight nine ten twelve of in")
)

func wordSet(words string) map[string]bool {
	m := map[string]bool{}
	for w := range strings.FieldsSeq(words) {
		m[w] = true
	}
	return m
}

// meansStitch reports whether a name without its last word is a stitch, and not a plain English word: double knitting, folded double.
func meansStitch(words, after, before string, from stitch.Terms) bool {
	if strings.ContainsAny(words, " -") || strings.HasSuffix(words, "s") {
		return true
	}
	if len(after) > 1 && strings.ContainsRune("-/", rune(after[0])) && unicode.IsLetter(rune(after[1])) {
		return false
	}
	next, rest := nextWord(after)
	then, _ := nextWord(rest)
	last := lastWord(before)
	if _, short := stitch.Lookup(lastWord(strings.TrimRight(before, " =(–—-:")), from); short && last == "" && next == "" { // tr = treble
		return true
	}
	if intoPlace[next] {
		return !ofSize[then] && !doubled[last]
	}
	counted := ordinals[last] || last != "" && unicode.IsDigit(rune(last[0]))
	return counted && (next == "" || stitchEnd[next])
}

// nextWord is the word that s begins with behind a blank, in small letters, and what follows it; none if a sign comes first.
func nextWord(s string) (word, rest string) {
	s = strings.TrimLeft(s, " ")
	n := wordLen(s)
	return strings.ToLower(s[:n]), s[n:]
}

// dotted turns short names with a full stop behind each letter, as old leaflets print them: s.c., h. d. c.
func dotted(s string, from, to stitch.Terms) (string, int, bool) {
	name := ""
	for n := 0; n+1 < len(s) && unicode.IsLetter(rune(s[n])) && s[n+1] == '.'; {
		name += s[n : n+1]
		n += 2
		if now, ok := stitchNamed(name, from, to); ok && len(name) > 1 {
			if len(now) == 2 && now[1] == 'c' {
				now = now[:1] + ".c"
			}
			return now + ".", n, true
		}
		if n < len(s) && s[n] == ' ' {
			n++
		}
	}
	return "", 0, false
}

// sizesOf are the words that tell the sizes of half, double, triple and quadruple stitches, as short names begin with them.
var sizesOf = map[string]string{"half": "h", "h": "h", "double": "d", "dble": "d", "dbl": "d", "d": "d", "triple": "t", "trip": "t", "tr": "t", "t": "t", "quad": "q", "q": "q"}

// inParts turns short names of which the size stands apart: dbl tr, h.tr., half dc.
func inParts(s string, from, to stitch.Terms) (string, int, bool) {
	n := wordLen(s)
	size, ok := sizesOf[strings.ToLower(s[:n])]
	at := n + len(s[n:]) - len(strings.TrimLeft(s[n:], "."))
	dot := at > n
	at += len(s[at:]) - len(strings.TrimLeft(s[at:], " "))
	base := strings.ToLower(s[at : at+wordLen(s[at:])])
	if !ok || at == n || at > n+2 || base != "tr" && base != "dc" {
		return "", 0, false
	}
	st, ok := stitch.Lookup(size+base, from)
	if !ok {
		return "", 0, false
	}
	end, now := at+len(base), st.Abbr(to)
	if dot && strings.HasPrefix(s[end:], ".") {
		end, now = end+1, now+"."
	}
	return cased(now, s[:n]), end, true
}

// besideThem are what short names beside the standard's list put before a stitch: extended, foundation, linked, reverse.
var besideThem = []string{"ex", "e", "f", "l", "rev"}

// beside turns a short name that is put before a stitch: esc, fdc.
func beside(word string, from, to stitch.Terms) (string, bool) {
	low := strings.ToLower(word)
	for _, b := range besideThem {
		st, ok := stitch.Lookup(strings.TrimPrefix(low, b), from)
		if ok && strings.HasPrefix(low, b) && st.Craft == stitch.Crochet && st.Height >= 1 && st.Post == stitch.NoPost && strings.HasPrefix(low[len(b):], strings.ToLower(st.Abbr(from))) {
			return cased(b+counterpart(st, low[len(b):], from, to), word), true
		}
	}
	return "", false
}

// counterpart is the word in the other terms, in the same form: short for short,
// full for full, one for one, many for many.
func counterpart(st *stitch.Stitch, low string, from, to stitch.Terms) string {
	for _, w := range st.Also {
		if low == strings.ToLower(w) && !(st.ID == "slst") {
			return low
		}
	}
	switch low {
	case strings.ToLower(st.Abbr(from)):
		return st.Abbr(to)
	case strings.ToLower(st.Abbr(from)) + "s":
		return strings.TrimSuffix(st.Abbr(to), "s") + "s" // one ss, two ss
	case st.Name(from):
		return st.Name(to)
	case st.Name(from) + "s":
		return st.Name(to) + "s"
	}
	if name, ok := strings.CutSuffix(low, " dec"); ok {
		return st.Plain().Abbr(to) + low[len(name):]
	}
	if st.ID == "slst" {
		switch {
		case to == stitch.US:
			return "sl st"
		case strings.HasPrefix(low, "slip stitch"):
			return low
		}
		return "ss"
	}
	if strings.HasSuffix(low, "s") && strings.HasPrefix(low, strings.TrimSuffix(st.Name(from), " crochet")) {
		return st.Name(to) + "s"
	}
	if strings.Contains(low, " ") && len(low) > len("quad tr") || len(low) > 7 {
		return st.Name(to)
	}
	return st.Abbr(to)
}

// cased gives now the capitals of was: all, that of each word, the first, or none. FP and BP keep theirs.
func cased(now, was string) string {
	if was == strings.ToUpper(was) && len(was) > 1 && strings.ToLower(was) != was && !strings.HasPrefix(now, "FP") && !strings.HasPrefix(now, "BP") {
		return strings.ToUpper(now)
	}
	for _, p := range []string{"FP", "BP"} {
		if strings.HasPrefix(now, p) && len(was) > 2 && strings.EqualFold(was[:2], p) {
			return was[:2] + strings.ToLower(now[2:])
		}
	}
	c, _ := utf8.DecodeRuneInString(was)
	if !unicode.IsUpper(c) {
		return now
	}
	if words := strings.Fields(was); len(words) > 1 && unicode.IsUpper(rune(words[len(words)-1][0])) { // Single Crochet
		words = strings.Fields(now)
		for i, w := range words {
			words[i] = capital(w)
		}
		return strings.Join(words, " ")
	}
	return capital(now)
}

// capital is a word with a capital letter.
func capital(w string) string {
	c, n := utf8.DecodeRuneInString(w)
	return string(unicode.ToUpper(c)) + w[n:]
}

// Abbreviated is one line of an abbreviation list.
type Abbreviated struct{ Short, Long string }

// Abbreviations lists what a text uses, in its terms: stitches and the other short
// words of the published lists, by alphabet.
func Abbreviations(x *Text) []Abbreviated {
	words := wordsOf(x)
	seen := map[string]string{}
	for _, st := range x.Used {
		if st.Abbr(x.Terms) != st.Name(x.Terms) && (!stitch.Abbreviates(st.Abbr(x.Terms)) || words[st.Name(x.Terms)]) {
			seen[st.Abbr(x.Terms)] = st.Name(x.Terms)
		}
	}
	for word := range words { // those of a fabric, such as k2, p2 rib
		short := strings.TrimRight(word, "0123456789")
		if st, ok := stitch.Lookup(short, x.Terms); ok && st.Abbr(x.Terms) == short && short != st.Name(x.Terms) && !stitch.Abbreviates(short) {
			seen[short] = st.Name(x.Terms)
		}
	}
	for _, a := range stitch.Abbreviations {
		low := strings.ToLower(a.Short)
		if _, there := seen[a.Short]; there || !words[low] && !words[low+"s"] {
			continue
		}
		seen[a.Short] = a.US
		if x.Terms == stitch.UK {
			seen[a.Short] = a.UK
		}
	}
	for _, g := range x.Groups {
		seen[g.Name] = "see special stitches"
	}
	var out []Abbreviated
	for k, v := range seen {
		out = append(out, Abbreviated{k, v})
	}
	slices.SortFunc(out, func(a, b Abbreviated) int {
		return cmp.Or(cmp.Compare(strings.ToLower(a.Short), strings.ToLower(b.Short)), cmp.Compare(a.Short, b.Short))
	})
	return out
}

// wordsOf are all words of a text's lines, and those of two and three that stand behind each other: st st.
func wordsOf(x *Text) map[string]bool {
	words := map[string]bool{}
	for _, s := range x.Sections {
		for _, l := range s.Lines {
			last, both := "", ""
			for _, t := range l.Words {
				if t.Kind != 'w' {
					last, both = "", ""
					continue
				}
				words[t.S], words[last+" "+t.S], words[both+" "+t.S] = true, true, true
				last, both = t.S, last+" "+t.S
			}
		}
	}
	return words
}
