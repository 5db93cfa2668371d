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
			word, n, ok = turned(s[i:], from, to)
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

// turned is what the words at the beginning of s become, and how long they were.
func turned(s string, from, to stitch.Terms) (string, int, bool) {
	if now, n, ok := paired(s, from, to); ok {
		return now, n, true
	}
	ends := wordEnds(s)
	for _, end := range slices.Backward(ends) { // the longest phrase goes first
		if gap := glossed(s[end:]); gap > 0 { // dc in a text of US terms: tr UK
			t, n, _ := text.Nation(s[end+gap:])
			if now, ok := stitchNamed(s[:end], t, t.Other()); ok {
				return now + s[end:end+gap] + text.OtherNation(s[end+gap:end+gap+n]), end + gap + n, true
			}
		}
		if now, ok := stitchNamed(s[:end], from, to); ok {
			return now, end, true
		}
	}
	if len(ends) > 0 {
		if now, ok := looped(strings.ToLower(s[:ends[0]]), from, to); ok {
			return cased(now, s[:ends[0]]), ends[0], true
		}
	}
	return "", 0, false
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

// paired is what a phrase of the pairs at the beginning of s becomes.
func paired(s string, from, to stitch.Terms) (string, int, bool) {
	for _, p := range pairs {
		a, b := p[0], p[1]
		if from == stitch.UK {
			a, b = b, a
		}
		if len(s) < len(a) || !strings.EqualFold(s[:len(a)], a) || !boundary(s, len(a)) || from == stitch.UK && p[0] == "sk" {
			continue
		}
		return cased(b, s[:len(a)]), len(a), true
	}
	return "", 0, false
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

// looped turns a stitch that is run together with its loop: blsc, dcflo.
func looped(low string, from, to stitch.Terms) (string, bool) {
	var now string
	loop, name := stitch.LoopApart(low, func(name string) bool {
		st, ok := stitch.Lookup(name, from)
		if ok && st.Craft == stitch.Crochet {
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
	if strings.Contains(low, " ") || len(low) > 5 {
		return st.Name(to)
	}
	return st.Abbr(to)
}

// cased gives now the capitals of was: all, the first, or none. FP and BP keep theirs.
func cased(now, was string) string {
	if was == strings.ToUpper(was) && len(was) > 1 && strings.ToLower(was) != was && !strings.HasPrefix(now, "FP") && !strings.HasPrefix(now, "BP") {
		return strings.ToUpper(now)
	}
	for _, p := range []string{"FP", "BP"} {
		if strings.HasPrefix(now, p) && len(was) > 2 {
			return was[:2] + strings.ToLower(now[2:])
		}
	}
	c, _ := utf8.DecodeRuneInString(was)
	if unicode.IsUpper(c) {
		d, m := utf8.DecodeRuneInString(now)
		return string(unicode.ToUpper(d)) + now[m:]
	}
	return now
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
