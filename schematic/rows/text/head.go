package text

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Keys are the words before a colon, or alone on a line, that begin lines of words, and how these are read:
// words say nothing of rows, notes tell what chains count as, stitches define names.
var Keys = map[string]string{
	"sizes": "sizes", "size": "sizes", "terms": "terms", "gauge": "gauge", "gauges": "gauge", "tension": "gauge", "tensions": "gauge", "knitting tension": "gauge", "knitting gauge": "gauge", "materials": "words", "material": "words", "materials required": "words", "materials needed": "words", "requirements": "words", "size required": "words", "to fit": "words", "to fit bust": "words", "to fit chest": "words",
	"yarn": "words", "yarns": "words", "hook": "words", "hooks": "words", "needle": "words", "needles": "words", "notions": "words", "tools": "words", "notes": "notes", "note": "notes", "supplies": "words", "you will need": "words", "what you need": "words",
	"pattern notes": "notes", "abbreviations": "names", "abbreviation": "names", "abbreviations used": "names", "stitch abbreviations": "names", "special abbreviations": "stitches", "special abbreviation": "stitches", "special stitches": "stitches", "special technique": "stitches", "special techniques": "stitches", "special terms": "stitches", "special stitch": "stitches", "stitches": "stitches", "stitches used": "names",
	"stitch guide": "stitches", "stitch explanations": "stitches", "stitch explanation": "stitches", "stitch key": "names", "pattern key": "names", "stitch glossary": "names", "glossary": "names", "special stitches & techniques": "stitches", "special stitches and techniques": "stitches", "stitches & abbreviations": "names", "stitches/abbreviations": "names", "abbreviations & stitches": "names", "abbreviations and stitches": "names", "special stitches used": "stitches", "skill level": "words", "level": "words", "difficulty": "words", "difficulty level": "words", "designer": "words", "designed by": "words", "finished measurements": "words", "finished size": "words", "finished sizes": "words", "measurements": "words",
	"finished measurement": "words", "actual size": "words", "actual measurement": "words", "finishing": "words", "making up": "words", "assembly": "words", "to finish": "words", "care": "words", "about": "words", "construction": "notes", "colors": "words", "colours": "words", "color": "words", "colour": "words", "equipment": "words", "techniques": "words",
	"special instructions": "notes", "instructions note": "notes", "tips": "words", "key": "words", "copyright": "words", "special notes": "notes", "special stitch instruction": "stitches", "special stitch instructions": "stitches", "special stitches instructions": "stitches", "stitch instructions": "stitches", "stitch pattern used": "stitches", "pattern stitches used": "stitches", "crochet abbreviations": "names", "to make up": "words", "to assemble": "words", "dimensions": "words", "yardage": "words", "estimated yardage": "words", "yarn amounts": "words", "yarn requirements": "words", "what you'll need": "words", "things you will need": "words", "things you'll need": "words", "crochet hook": "words", "crochet hooks": "words", "wool": "words", "hook size": "words", "stitches control": "gauge", "additional materials": "words",
}

// KeyOf finds the key with which a line begins, what stands behind its colon, and its column.
func KeyOf(line string) (key, rest string, col int) {
	if blank := len(line) - len(strings.TrimLeft(line, " ")); blank > 0 {
		if key, rest, col = KeyOf(line[blank:]); key != "" {
			col += blank
		}
		return key, rest, col
	}
	if at := dashed().FindStringSubmatchIndex(line); at != nil && Keys[strings.ToLower(line[at[2]:at[3]])] != "" {
		return strings.ToLower(line[at[2]:at[3]]), line[at[1]:], len([]rune(line[:at[1]])) + 1
	}
	i := strings.IndexByte(line, ':')
	if k, n := capitalKey(line); k != "" && (i < 0 || i > n) {
		rest = strings.TrimLeft(line[n:], " ")
		return k, rest, len(line) - len(rest) + 1 // the key is ASCII: bytes are columns
	}
	at := measuredAs().FindStringSubmatchIndex(line)
	if at == nil {
		at = sizesBare().FindStringSubmatchIndex(line)
	}
	if at != nil {
		return strings.ToLower(line[at[2]:at[3]]), line[at[4]:], len([]rune(line[:at[4]])) + 1
	}
	if i < 0 || i > 40 {
		return "", "", 0
	}
	k := plainKey(line[:i])
	if Keys[k] == "" {
		return "", "", 0
	}
	rest = strings.TrimLeft(line[i+1:], "*_")
	return k, rest, len([]rune(line[:i])) + 2 + (len(line[i+1:]) - len(strings.TrimLeft(line[i+1:], " *_")))
}

// dashed is a key with a dash behind it, as it was printed once: Materials.—Four ounces of wool; Tension:-8 sts to an inch.
var dashed = Once(`^([A-Z][A-Za-z]*(?: [A-Za-z]+){0,2})(?: ?[.:] ?[-–—]+|-(?:[A-Z]\.|\d)| ?[–—]+) ?`)

var (
	// within is a key in the midst of a paragraph.
	within = Once(`[.;)”"] *([A-Z][A-Za-z]*(?: [A-Za-z]+)?)(?: ?[.:] ?[-–—]+|-(?:[A-Z]\.|\d)| ?[–—]+)`)
	// leaves is where a paragraph goes from words to the work: BACK.—Cast on; Begin at lower edge.
	leaves = Once(`[.;)”"] *((?:THE )?[A-Z]{3,}(?: [A-Z]+){0,3} ?(?:\([^()]{1,30}\) ?)?[.:]? ?(?:[-–—]+ ?)?[A-Z][a-z]|[A-Z][a-z]+(?: [A-Z]?[a-z]+)? ?[.:] ?[-–—]+ ?[A-Z]|(?:Cast on|Begin|Commence|Make|Work) |Ch(?:ain)? \d\d|` + firstRow + `|\d+(?:st|nd|rd|th)? (?:row|round)\b)`)
	// defines is a stitch that is told, and where the work follows it: Picot: ch 3, sl st in 3rd ch from hook. HAT Rnd 1: …
	defines = Once(`(?i:^\W*(?:special stitch(?:es)?\W+)?(?:[\w-]+ ){0,2}(?:picot|shell|cluster|cl|bobble|popcorn|pc|puff|fan|v-?st|stitch|st)(?: \(\w+\))? ?[:=] ?).*?[.)] +((?:[A-Z][A-Za-z]*:? (?:\([^()]{1,20}\):? ?)?)?` + firstRow + `)`)
)

// firstRow is the label of the first row.
const firstRow = `(?:Row|Rnd|Round|ROW|RND|ROUND) 1(?: \((?:RS|WS)\))? ?:`

// Cuts is where a paragraph that holds the head of a pattern goes on to its next part: Materials.—… Tension.—… BACK.—Cast
// on. Other lines have none.
func Cuts(line string) []int {
	at := 0
	var out []int
	if key, _, _ := KeyOf(line); key == "" {
		first := within().FindStringSubmatchIndex(line)
		if first == nil || Keys[strings.ToLower(line[first[2]:first[3]])] == "" {
			if m := defines().FindStringSubmatchIndex(line); m != nil {
				return m[2:3]
			}
			return nil
		}
		at = first[2]
		out = append(out, at)
	}
	for {
		rest := line[at:]
		more := nextKey(rest)
		m := leaves().FindStringSubmatchIndex(rest)
		switch {
		case m != nil && (more < 0 || m[2] < more) && Keys[strings.ToLower(strings.TrimRight(rest[m[2]:m[3]], " .:-–—ABCDEFGHIJKLMNOPQRSTUVWXYZ"))] == "":
			return append(out, at+m[2])
		case more < 0:
			return out
		}
		at += more
		out = append(out, at)
	}
}

// nextKey is where the next key of the head stands within a line, -1 if none does.
func nextKey(line string) int {
	for _, m := range within().FindAllStringSubmatchIndex(line, -1) {
		if Keys[strings.ToLower(line[m[2]:m[3]])] != "" {
			return m[2]
		}
	}
	return -1
}

// measuredAs is a line of the gauge without a colon: Tension 22 sts and 30 rows to 10 cm.
var measuredAs = Once(`(?i)^\W{0,3}(?:check (?:your )?)?(tension|gauge)!?(?:\s+is)?\s*[-–—]?\s+(\d{1,3} ?(?:st|dc|tr|htr|hdc|sc)\w*\b)`)

// sizesBare is a line of sizes without a colon: SIZES XS (S, M, 1X).
var sizesBare = Once(`(?i)^(sizes?) +([\w/-]{1,6}(?: [a-z]+)? ?[(\[](?:[^.:=*]|:[ ]?(?:\d|[SML]\b|X))*[)\]])\s*$`)

// capitalKey is a key in capitals with which a line begins that has more words, and where it ends: TENSION 30 sts and
// 38 rows to 10 cm.
func capitalKey(line string) (key string, end int) {
	k := 0
	for k < len(line) && (line[k] >= 'A' && line[k] <= 'Z' || line[k] == ' ') {
		k++
	}
	if k < len(line) && line[k] >= 'a' && line[k] <= 'z' || k > 40 { // of the next word
		k = strings.LastIndexByte(line[:k], ' ')
	}
	if k < 5 || k >= len(line) || line[k] != ' ' && (k == 0 || line[k-1] != ' ') {
		return "", 0
	}
	name := strings.TrimSpace(line[:k])
	if kind := Keys[strings.ToLower(name)]; kind == "" || name == "SIZE" || name == "LEVEL" || name == "COLOR" || name == "COLOUR" {
		return "", 0
	}
	return strings.ToLower(name), k
}

// begins are the words before a colon that lead from words to the work.
var begins = Once(`(?i)^\W*(?:directions?|instructions?|pattern|method|to make|to begin)\b[\w ]{0,20}?(?::|[-–—]{1,2} )`)

// Begins reports whether a line leads from words, such as abbreviations, to the work: Directions: Cast on 60 sts.
func Begins(line string) bool { return begins().MatchString(line) }

// meant are the words of a list that says what short names stand for: sc = single crochet.
var meant = Once(`(?:^|[\s,;.])[*A-Za-z][A-Za-z0-9/ ]{0,12} ?= ?[A-Za-z]{2}`)

// means is a line that says what one short name stands for: C4B = slip next 2 sts to cable needle.
var means = Once(`^[*•A-Za-z][A-Za-z0-9/()]{0,11} ?= ?[A-Za-z][a-z]`)

// nthSize is a size by its place among the others.
const nthSize = `(?:(?:first|last)(?: (?:\d|two|three|four|five|six))?|(?:second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|\d{1,2}(?:st|nd|rd|th))(?: (?:smallest|largest))?|(?:(?:\d|two|three|four|five|six) )?(?:smallest|largest))`

var (
	someSizes = Once(`(?i)^\W*(?:for )?(?:the )?(?:sizes? .{1,60} only\b|[\w-]{1,6} size only\b|` + nthSize + `(?:(?:, ?| ?& ?|,? and )` + nthSize + `)* sizes?(?: only\b| ?:))`)
	allSizes  = Once(`(?i)^\W*(?:for )?all (?:the )?sizes\b`)
)

// Has reports whether a line has these letters, small or capital; it spares most lines the patterns.
func Has(line, letters string) bool {
	for i := 0; i+len(letters) <= len(line); i++ {
		if line[i]|0x20 == letters[0] && strings.EqualFold(line[i:i+len(letters)], letters) {
			return true
		}
	}
	return false
}

// SomeSizes reports whether a line says that what follows is for some of the sizes only.
func SomeSizes(line string) bool { return Has(line, "size") && someSizes().MatchString(line) }

// AllSizes reports whether a line says that what follows is for all sizes again.
func AllSizes(line string) bool { return Has(line, "size") && allSizes().MatchString(line) }

// ForSizes parts the words that say for which sizes a stretch is from what stands behind them: Sizes S and M only: Row 1.
// Without such words said is empty.
func ForSizes(line string) (said, rest string) {
	if !Has(line, "size") {
		return "", line
	}
	at := someSizes().FindStringIndex(line)
	if at == nil {
		at = allSizes().FindStringIndex(line)
	}
	if at == nil {
		return "", line
	}
	said, rest = line[:at[1]], line[at[1]:]
	if k := strings.TrimLeft(rest, " :.-–—"); k == "" || !strings.HasPrefix(strings.TrimLeft(rest, " "), ":") {
		return said, "" // All sizes continue here
	}
	return said, strings.TrimLeft(rest, " :")
}

// Means reports whether a line says what one short name stands for.
func Means(line string) bool { return strings.Count(line, "=") == 1 && means().MatchString(line) }

// Glossary reports whether a line without a label says what several short names stand for.
func Glossary(line string) bool {
	if strings.Count(line, "=") > 1 {
		return len(meant().FindAllStringIndex(line, 2)) > 1
	}
	if !strings.ContainsAny(line, "-–—") {
		return false
	}
	parts, short := strings.FieldsFunc(line, func(c rune) bool { return c == ';' || c == ',' }), 0
	for _, p := range parts {
		if m := shortDash().FindStringSubmatch(p); m != nil && strings.EqualFold(m[1], m[2]) {
			short++
		}
	}
	return short > 1 && 2*short > len(parts)
}

// shortDash is a short name and, behind a dash, a long one; their first letters are those that are the same: dec – decrease.
var shortDash = Once(`^\W*([A-Za-z])[A-Za-z0-9()]{0,7}\.? ?[-–—] ?([A-Za-z])[a-z]`)

// KeyLine is the kind of words that a line begins that is a key alone: Notes, ABBREVIATIONS.
func KeyLine(line string) string {
	k := plainKey(line)
	if Keys[k] == "" && strings.Contains(k, "abbreviations") && len(strings.Fields(k)) < 5 && !strings.ContainsAny(k, ".:=") { // Stitches/Abbreviations used
		return "names"
	}
	return Keys[k]
}

// plainKey is a key without signs about it, and without the bracket behind it: Abbreviations (US terms).
func plainKey(words string) string {
	k := strings.ToLower(strings.Trim(words, " #*_:.\t-–—"))
	if i := strings.Index(k, " ("); i > 0 && strings.HasSuffix(k, ")") {
		k = k[:i]
	}
	if Keys[k] == "" {
		if m := inTerms().FindStringSubmatch(k); m != nil && (Keys[m[1]] == "names" || Keys[m[1]] == "stitches") {
			return m[1]
		}
	}
	return k
}

// inTerms is a key with words about it that say in whose terms, or for what: US abbreviations; stitches used in this pattern.
var inTerms = Once(`^(?:(?:us|uk|crochet) )?([a-z/& ]+?)(?:[ ,–-]+(?:(?:used )?in |for |you )?(?:us|uk|american|british|this|the|need|needed)\b.{0,20})?$`)

// list is a line of numbers, one a size: 62 (66, 70), 90[98, 106].
var list = Once(`\d+(?:-\d+)* ?[(\[{] ?\d+(?: ?[,;:/–-] ?\d+)*[,]? ?[)\]}](?: ?[(\[] ?\d+(?: ?[,;:/–-] ?\d+)*[)\]])*`)

// unlike is a line of numbers without one bracket about all but the first: 62:66:70, 64 (64) 70 (70) 70.
var unlike = Once(`(?:^|[^\[(:\d]|[^\d\s] ?[\[(])\d+(?::\d+){2,}\b|\b\d+ \(\d+\) \d+(?: \(\d+\) \d+)+`)

// behind is a word right behind a line of two numbers: a bracket at the end of a row is its count.
var behind = Once(`^ ?[A-Za-z]`)

// pair is two sizes without a space: 28[34].
var pair = Once(`^\d+\[\d+\]$`)

// castOn is a cast-on in two sizes: cast on 40 (44) sts. A count of its own stands behind the stitches, and not before them.
var castOn = Once(`(?i)\b(?:cast on|co) \d+ ?[(\[]\d+[)\]] ?st`)

var digits = Once(`\d+`)

// lists are the lines of numbers of a text, one a size.
type lists struct {
	seen         map[int]int // how many have so many numbers
	total, glued int
	named        bool // the text speaks of sizes
	told         bool // it says that those of other sizes stand in brackets
	cast         bool // it casts on in two sizes
}

func (n *lists) add(l string) {
	low := strings.ToLower(l)
	n.named = n.named || strings.Contains(low, "size") || strings.Contains(low, "to fit")
	n.told = n.told || (strings.Contains(low, "in parenthes") || strings.Contains(low, "in brackets")) && strings.Contains(low, "siz")
	if !numbersListed(l) {
		return
	}
	n.cast = n.cast || castOn().MatchString(l)
	for _, m := range unlike().FindAllString(l, -1) {
		n.seen[len(digits().FindAllString(m, -1))]++
		n.total++
	}
	l = unlike().ReplaceAllString(l, "")
	for _, at := range list().FindAllStringIndex(l, -1) {
		m := l[at[0]:at[1]]
		k := len(digits().FindAllString(m, -1))
		two := k == 2 && pair().MatchString(m)
		if two {
			n.glued++
		}
		if k > 2 || two || k == 2 && (n.told || behind().MatchString(l[at[1]:])) {
			n.seen[k]++
			n.total++
		}
	}
}

// numbersListed reports whether a bracket or a colon stands right behind a number, as in every line of numbers.
func numbersListed(l string) bool {
	for i := 1; i < len(l); i++ {
		switch l[i] {
		case '(', '[', '{', ':':
			before := l[i-1]
			if before == ' ' && i > 1 {
				before = l[i-2]
			}
			if before >= '0' && before <= '9' {
				return true
			}
		}
	}
	return false
}

// Sizes guesses in how many sizes a text is written that has no line of sizes: what most
// of its lines of numbers have, if they are more than two; 0 if there are none.
func Sizes(lines []string) int {
	n := lists{seen: map[int]int{}}
	for _, l := range joined(lines) {
		n.add(l)
	}
	best := most(n.seen)
	cast := best == 2 && n.cast
	few := n.seen[best] < 3 && !(n.named && best > 2 && n.seen[best] == 2)
	if best < 2 || few && !cast || 2*n.seen[best] < n.total || best == 2 && !n.named && !n.told && !cast && n.glued < 3 {
		return 0
	}
	return best
}

// InSizes reports whether some line of numbers of a text has one for each of so many sizes.
func InSizes(lines []string, sizes int) bool {
	n := lists{seen: map[int]int{}}
	return slices.ContainsFunc(joined(lines), func(l string) bool {
		n.add(l)
		return sizes > 1 && n.seen[sizes] > 0
	})
}

// joined are lines without the breaks within their brackets.
func joined(lines []string) []string {
	var out []string
	for i, l := range lines {
		if k := len(out) - 1; i > 0 && len(l) < 120 && Open(out[k]) && len(out[k]) < 400 {
			out[k] += " " + l
			continue
		}
		out = append(out, l)
	}
	return out
}

// most is what was seen most often, the smallest of several.
func most(seen map[int]int) int {
	best := 0
	for k, n := range seen {
		if n > seen[best] || n == seen[best] && k < best {
			best = k
		}
	}
	return best
}

// Heading is the name that a line has as a heading: marked with #, or a few words
// without a number or a full stop. Whether they are an instruction is for others to say.
func Heading(text string) (name string, marked, ok bool) {
	if strings.HasPrefix(text, "#") {
		name := strings.TrimSpace(strings.Trim(text, "# "))
		if i := strings.LastIndex(name, " (make "); i > 0 {
			name = name[:i]
		}
		return name, true, name != ""
	}
	if name, ok = beforeBracket(withoutMakes(strings.Trim(text, "*_~=- "))); !ok {
		return "", false, false
	}
	name = strings.TrimSpace(strings.TrimRight(name, ":–—- "))
	words := strings.Fields(strings.Replace(name, ", ", " ", 1))
	if len(words) == 0 || len(words) > 7 || len(name) > 60 || headsNothing(text, name, words) {
		return "", false, false
	}
	if rowsFor().MatchString(name) {
		return name, true, true
	}
	name, plain := plainName(name, words)
	sign := func(c rune) bool { return unicode.IsDigit(c) || strings.ContainsRune(".,;:*[](){}=", c) }
	if strings.ContainsFunc(plain, sign) || !unicode.IsUpper([]rune(words[0])[0]) || len(words) > 2 && (words[0] == "This" || words[0] == "These") {
		return "", false, false
	}
	return name, strings.HasPrefix(text, "**") && strings.HasSuffix(text, "**") || name == strings.ToUpper(name) && len(name) > 3, true
}

// asides are words that lead to what follows, and head nothing.
var asides = set("so then now next also again finally note tip ok and or yes thus hence therefore")

// rowsFor is a heading that counts the rows below it: 5 Decrease Rows For Neck.
var rowsFor = Once(`^\d{1,2} [A-Z][a-z]+ (?:Rows|Rounds|Rnds) [Ff]or(?: [A-Z]\w+){1,3}$`)

// headsNothing reports whether words lead to what follows, or are those of a line cut at the end of its column.
func headsNothing(text, name string, words []string) bool {
	return len(words) == 1 && asides[strings.ToLower(name)] || len(words) > 1 && places[words[0]] && places[strings.ToLower(words[1])] || len(words) > 2 && (lastWord(text) || words[0] == "Then")
}

// places are words with which a place begins that a line of a list leads to: In each space work.
var places = set("In Into At Between Around each every the next first last same all")

// plainName is a heading as it is printed, and without what makes no difference to whether it is one: a number behind a
// piece, a comma between two, a colon in capitals.
func plainName(name string, words []string) (printed, plain string) {
	printed, plain = name, name
	if k := len(words) - 1; k > 0 && len(words[k]) < 3 && strings.Trim(words[k], "0123456789") == "" && OfPiece(strings.Join(words[:k], " ")) { // Leg 1
		plain = strings.Join(words[:k], " ")
	}
	if before, after, ok := strings.Cut(name, ", "); ok && OfPiece(before) && OfPiece(after) {
		plain = before + after
	}
	if before, after, ok := strings.Cut(name, ":"); ok && name == strings.ToUpper(name) && !strings.HasPrefix(name, ":") { // COAT: BACK
		printed, plain = strings.TrimSpace(before)+": "+strings.TrimSpace(after), before+after
	}
	return printed, plain
}

// withoutMakes is a heading without the words behind it that say how many are made.
func withoutMakes(bare string) string {
	end := strings.TrimRight(strings.TrimSuffix(strings.TrimRight(bare, " \t\f"), ":"), " \t\f")
	end = strings.TrimSuffix(end, ")")
	if last, _ := utf8.DecodeLastRuneInString(end); !strings.ContainsRune("oOeErRhHxX×23456789", last) { // most lines end otherwise
		return bare
	}
	if at := makes().FindStringIndex(bare); at != nil && at[0] > 0 {
		return bare[:at[0]]
	}
	return bare
}

// makes are words behind a heading that say how many are made: Arms x2, Ears - make 2.
var makes = Once(`(?i)(?:\s*[,:–—-]\s*|\s+)(?:make|work|knit|crochet)\s+(?:two|three|four|both|[2-9])(?:\s+alike)?\s*:?$|\s*[,:–—-]?\s*\(?[x×]\s?[2-9]\)?\s*:?$|\s*[,:–—-]?\s+\(?[2-9]\s?[x×]\)?\s*:?$`)

// beforeBracket is a heading without the bracket behind it, which may only say how many are made and the like.
func beforeBracket(bare string) (name string, ok bool) {
	i := strings.IndexByte(bare, '(')
	if i <= 0 {
		return bare, true
	}
	inside := strings.ToLower(strings.Trim(bare[i:], "() :"))
	for _, w := range []string{"make", "work", "both", "knit", "optional", "crochet", "alike", "two", "2", "x2", "x 2", "all sizes", "worn", "left", "right", "front", "back"} {
		ok = ok || strings.HasPrefix(inside, w)
	}
	return strings.TrimSpace(bare[:i]), ok && len(inside) <= 30
}

var pieces = Once(`(?i)\b(back|front|sleeve|panel|leg|arm|head|body|ear|foot|feet|tail|wing|top|bottom|side|half|neck|collar|cuff|border|edging|yoke|crown|brim|base|strap|handle|thumb|hand|toe|heel|leaf|petal|square|motif)s?$`)

// OfPiece reports whether a few words end with what pieces are called: first leg.
func OfPiece(words string) bool { return len(strings.Fields(words)) < 4 && pieces().MatchString(words) }

// inline is the name of a piece before its first instruction: Back: With 5 mm needles; SLEEVES-Commence.
var inline = Once(`^([A-Z][A-Za-z’' ]{1,30}?)(?: \((?:make|MAKE|Make|work|both) [^)]{1,30}\))?(?: ?: |:? ?[.]? ?[-–—]+ ?| ?\. ?[-–—] ?|\. +)(.+)$`)

// Inline cuts a line into the name of a piece and its first instruction, if it begins with one.
func Inline(text string) (name, rest string, ok bool) {
	m := inline().FindStringSubmatch(text)
	if m == nil || len(strings.Fields(m[1])) > 4 || asides[strings.ToLower(m[1])] {
		return "", "", false
	}
	colon := strings.HasPrefix(strings.TrimLeft(text[len(m[1]):], " "), ":") || strings.HasPrefix(strings.TrimSpace(text[len(m[1]):]), "(")
	sentence := strings.HasPrefix(text[len(m[1]):], ". ") // Back. With white, cast on 60 sts
	if !colon && (m[1] != strings.ToUpper(m[1]) || sentence) && !NamesPiece(m[1]) {
		return "", "", false
	}
	return strings.TrimSpace(m[1]), m[2], true
}

var (
	pieceWords  = set("pocket pockets hood belt mitten mitt sock bootee bonnet cap hat bag skirt waistband neckband gusset bib beret")
	pieceBefore = set("left right first second other upper lower the and half main of")
)

// NamesPiece reports whether all words are those of the name of a piece: Left Front, Second Sleeve.
func NamesPiece(s string) bool {
	piece := false
	for w := range strings.FieldsSeq(strings.ToLower(s)) {
		if pieceWords[w] || pieces().MatchString(w) {
			piece = true
		} else if !pieceBefore[w] {
			return false
		}
	}
	return piece
}

// MakeOf is how many a heading says to make: (make 2).
func MakeOf(text string) int {
	_, inside, ok := strings.Cut(strings.ToLower(text), "(")
	if at := makes().FindString(text); at != "" {
		if k := strings.Trim(at, " ,:–—-()xX×"); len(k) == 1 && k[0] >= '2' && k[0] <= '9' {
			return int(k[0] - '0')
		}
		inside, ok = strings.TrimLeft(strings.ToLower(at), " ,:–—-("), true
	}
	word := strings.FieldsFunc(inside, func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) })
	if !ok || len(word) < 2 || word[0] != "make" && word[0] != "work" && word[0] != "knit" {
		return 0
	}
	for i, w := range []string{"one", "two", "three", "four"} {
		if word[1] == w {
			return i + 1
		}
	}
	v := 0
	for _, r := range word[1] {
		if r < '0' || r > '9' || v > 1000 {
			return 0
		}
		v = v*10 + int(r-'0')
	}
	return v
}

// CountOpen reports whether a row ends in a count whose bracket does not close: 19 sc (34
func CountOpen(row string) bool { return countOpen().MatchString(row) }

var countOpen = Once(`[(\[{] ?\d+ ?[A-Za-z]{0,8}\.?\s*$`)

// GoesOn reports whether a line goes on with the one before it: print wraps rows where the
// column ends.
func GoesOn(last, line string) bool {
	indented := strings.HasPrefix(line, "  ") || strings.HasPrefix(line, "\t")
	last, line = strings.TrimSpace(last), strings.TrimSpace(line)
	if line != "" && indented && !(last != "" && strings.ContainsAny(last[len(last)-1:], ")]}") && unicode.IsUpper([]rune(line)[0])) {
		return true
	}
	if last == "" || line == "" {
		return false
	}
	if breaksLabel(last, line) {
		return true
	}
	if Open(last) && !(CountOpen(last) && labelled().MatchString(line)) {
		return true
	}
	if ofRows().MatchString(line) {
		return false
	}
	end, _ := utf8.DecodeLastRuneInString(last)
	first, _ := utf8.DecodeRuneInString(line)
	if end == ';' && labelled().MatchString(line) { // each row ends so
		return false
	}
	if strings.ContainsRune(",;&-–", end) || lastWord(last) || strings.ContainsRune(")]", end) && timesOn().MatchString(line) {
		return true
	}
	if strings.ContainsRune(".:!?", end) || countsOut(last, line) {
		return false
	}
	return unicode.IsLower(first) || strings.ContainsRune("*†(", first) && !strings.ContainsRune(")]}", end) && !countBehindStop().MatchString(last)
}

// breaksLabel reports whether a column ends within the name of a row, between it and the row, or between a verb and its number.
func breaksLabel(last, line string) bool {
	_, row := RowWord(strings.ToLower(last)) // a copy with a word a line
	digit := line[0] >= '0' && line[0] <= '9'
	return row || rowAtEnd().MatchString(last) && numberAt().MatchString(line) || nameAtEnd().MatchString(last) && !labelled().MatchString(line) || digit && verbAtEnd().MatchString(last) && !numberAt().MatchString(line)
}

var (
	rowAtEnd  = Once(`(?i)[.:;)] (?:row|rnd|round)s?$`)
	nameAtEnd = Once(`(?i)[.:;)] (?:row|rnd|round)s? \d{1,3}:$`)
	numberAt  = Once(`^\d{1,3}(?:[-–]\d{1,3})? ?[:.)]`)
	verbAtEnd = Once(`\b(?:[kp]|then (?:inc|dec|bo|co))$`)
)

// countBehindStop is a line that ends with its count behind a stop: join. 96 (100, 105) sc
var countBehindStop = Once(`(?i)[.;:!] ?\d+(?: ?[(\[][\d, :-]+[)\]])* ?(?:sts?|stitches|[sdt]c|hdc|htr|tr)$`)

// countsOut reports whether a line ends with its count, so that the next one begins anew.
func countsOut(last, line string) bool {
	return countedAtEnd().MatchString(last) || (countBehindStop().MatchString(last) || rowsTold().MatchString(last)) && sentenceOf().MatchString(line)
}

// rowsTold is a line that tells its rows, and no more: Knit 2 rounds
var rowsTold = Once(`(?i)^(?:knit|purl|k|p|work) \d+ (?:more )?(?:rows?|rnds?|rounds?)(?: even)?$`)

// sentenceOf is a line that begins a sentence of its own, though in small letters.
var sentenceOf = Once(`^(?:change|cont|continue|work|next|inc|dec|increase|decrease|cast|bind|knit|purl|k|p|rep|repeat|break|shape|using|with|\w+ (?:row|round|rnd):) |^[*(\[]`)

// countedAtEnd is a line that ends with its count: = 20 sts; . [20]
var countedAtEnd = Once(`(?:=|[–—-]) ?\d+(?: ?[(\[][\d, :-]+[)\]])? ?(?:sts?|stitches)$|[.!?] ?[(\[]\d+ ?(?:sts?|stitches)?[)\]]$`)

// timesOn is a line that begins with how often the bracket before it is worked: (p2, k2) / 6 (7, 8) times.
var timesOn = Once(`^(?:\d+ ?(?:[(\[][\d, :-]+[)\]])? ?times|twice)\b`)

// labelled is a line that begins with the name of a row: 4th row: or Rnd 5:
var labelled = Once(`(?i)^(\d+(st|nd|rd|th|d)?([-–]\d+(st|nd|rd|th)?)? +)?(row|round|rnd|rd|part|piece)s?( +\d+([-–]\d+)?)? *:`)

// ofRows is a sentence about the rows above it, without a capital: these 4 rows form the pattern.
var ofRows = Once(`^(?:these|those) (?:\w+ )?(?:rows|rnds|rounds)\b`)

// Open reports whether a bracket of the line is still open at its end.
func Open(line string) bool {
	open := 0
	for _, c := range line {
		switch c {
		case '(', '[':
			open++
		case ')', ']': // one that was opened on a line before closes nothing here
			open = max(open-1, 0)
		}
	}
	return open > 0
}

// lastWord reports whether a line ends with a word that can't end one.
func lastWord(s string) bool {
	switch strings.ToLower(strings.TrimLeftFunc(s[max(strings.LastIndexFunc(s, unicode.IsSpace), 0):], unicode.IsSpace)) {
	case "in":
		return !inches().MatchString(s)
	case "into", "the", "of", "to", "from", "and", "with", "next", "each", "last", "first", "over", "rep", "repeat", "ch", "skip", "miss", "sk", "until", "every", "at", "for", "a", "then", "on", "meas", "measures", "are", "these", "than", "or":
		return true
	}
	return false
}

// inches is a line that ends with a length: To fit bust 32 (34, 36) in
var inches = Once(`[\d½¼¾)\]] ?(?i:in)$`)

var toFit = Once(`(?i)^\W*(?:to fit|ages?|finished sizes?)\b[^\d(]{0,24}([\w.½¼¾-]{1,6}) ?\(([^()]{1,60})\)`)

// ToFit are the sizes that a text without a line of sizes tells by whom they fit: To fit age 2-4
// (5-7, 8-10); none if it has no such line.
func ToFit(lines []string) []string {
	for _, l := range lines {
		m := toFit().FindStringSubmatch(l)
		if m == nil {
			continue
		}
		names := []string{m[1]}
		for _, f := range strings.FieldsFunc(m[2], func(c rune) bool { return c == ',' || c == ':' || c == ';' }) {
			names = append(names, strings.TrimSpace(f))
		}
		for _, n := range names {
			if len(n) == 0 || len(n) > 8 || strings.Contains(n, " ") || !strings.ContainsAny(n, "0123456789") {
				return nil
			}
		}
		return names
	}
	return nil
}

// forFirst is a sentence that tells the sizes: Directions are for Small; changes for Medium and Large are in parentheses.
var forFirst = Once(`(?i)\b(?:directions|instructions|patterns?|numbers|figures)\b[^.;]{0,30}?\b(?:for|in) (?:the )?(?:sizes? )?([\w'/-]{1,12})[;,.]? (?:with )?(?:the )?changes for (?:sizes? )?([\w'/-]{1,12}(?:(?:,? (?:and|&) |, ?)[\w'/-]{1,12})*)(?: sizes?)? (?:are|is|in|being|given|shown)\b[^.]{0,30}(?:parenthes|bracket)`)

// Told are the sizes that a sentence of a text tells, if lines of numbers have as many; none otherwise.
func Told(lines []string) []string {
	for i, l := range lines {
		if !strings.Contains(strings.ToLower(l), "changes for") && !Has(l, "directions") && !Has(l, "instructions") {
			continue
		}
		if i+1 < len(lines) {
			l += " " + lines[i+1]
		}
		m := forFirst().FindStringSubmatch(l)
		if m == nil {
			continue
		}
		names := append([]string{m[1]}, strings.FieldsFunc(lastAnd().ReplaceAllString(m[2], ","), func(c rune) bool { return c == ',' || c == ' ' })...)
		if InSizes(lines, len(names)) {
			return names
		}
	}
	return nil
}

// What stands about the sizes in their line: To fit age 0-3 (3-6) months.
var (
	beforeSizes = Once(`(?i)^(?:to fit|fits?|ages?|aged?|approx\w*|[:\s])+([\d(½¼¾])`)
	behindSizes = Once(`(?i)([\d)½¼¾\]])\s*(?:months?|mths?|mos?|years?|yrs?|olds?|cms?|inches|ins?|[\s."″-])+$`)
)

// shownIn tells the size of a picture.
var shownIn = Once(`(?i) ?[(\[](?:shown|sample|model|pictured|photo)[^)\]]*[)\]]`)

var hyphens = Once(`([\d½¼¾]) ?[-–] ?(\d)`)

// Hyphened are the words of a line of sizes with commas for the hyphens between numbers, if that gives as many
// sizes as the lines of numbers of the text have: 38 (40 - 42) and 136 (144-152) sts.
func Hyphened(words string, lines []string) string {
	commas := hyphens().ReplaceAllString(words, "$1, $2")
	if i := strings.IndexByte(words, '('); i < 0 || commas == words || hyphens().MatchString(words[:i]) {
		return words
	}
	if strings.Count(commas, ",")+2 != Sizes(lines) {
		return words
	}
	return commas
}

// inTwo is one measure told in two units: 12 cm (4.5 in), when made with the yarn told.
var inTwo = Once(`(?i)^\W*(?:about|approx\w*\.?|around)?\s*[\d.,½¼¾/x× -]+ ?(?:(?:cms?|mm)\b[^()\[\]\d]{0,24}[(\[][^)\]]*(?:in|ins|inch|inches|["”″])\s*[)\]]|(?:in|ins|inch|inches|["”″])[^()\[\]\d]{0,24}[(\[][^)\]]*(?:cms?|mm)\s*[)\]])`)

// InTwoUnits reports whether a line of the size tells one measure, in two units.
func InTwoUnits(rest string) bool { return inTwo().MatchString(rest) }

// lastAnd is the word before the last of a list: small, medium and large.
var lastAnd = Once(`,?\s+(?:and|&)\s+`)

// firstSizes is the first list of sizes in a line that tells more: S (M, L) to fit bust 81 (86, 91) cm.
var firstSizes = Once(`[^\s()\[\],;:]+ ?(?:[(\[][^()\[\]]+[)\]] ?)+`)

// partedSizes stands between sizes without brackets or commas: S/M/L, S – M – L.
var partedSizes = Once(`\s*/\s*|\s+[-–—]\s+`)

// inTurn are sizes of which each second one stands in a bracket: 32-34 (36-38) 40-42 (44-46) 48-50.
var inTurn = Once(`^[^\s()\[\],]+(?: ?\([^\s()\[\],]+\) ?[^\s()\[\],]+)+(?: ?\([^\s()\[\],]+\))?$`)

// OtherSizes are other ways to take a line of sizes: its first list alone, or parted at its slashes and dashes, within brackets too,
// or at brackets in turn.
func OtherSizes(words string) []string {
	var out []string
	if m := firstSizes().FindString(words); m != "" {
		out = append(out, strings.TrimSpace(m))
	}
	switch {
	case inTurn().MatchString(words):
		list := strings.FieldsFunc(words, func(c rune) bool { return c == ' ' || c == '(' || c == ')' })
		out = append(out, list[0]+" ("+strings.Join(list[1:], ", ")+")")
	case !strings.ContainsAny(words, "()[],"):
		out = append(out, partedSizes().ReplaceAllString(words, ", "))
	case !strings.Contains(words, ","): // XS (S-M-L), 1/3 – 6/9 (12/18)
		out = append(out, strings.NewReplacer(" - ", ", ", " – ", ", ", " — ", ", ").Replace(words), strings.ReplaceAll(words, "-", ", "))
	}
	return out
}

// ofEach is what one size measures, in a bracket of its own: XS (32 inch bust), S (34 inch bust).
var ofEach = Once(`(?i)\s*\((?:to )?[^(),]*\d[^(),]*(?:inch|inches|in|cm|"|”|bust|chest)\)`)

// SizesAlone are the words of a line of sizes without whom they fit and in what they are told.
func SizesAlone(rest string) string {
	rest = strings.TrimSuffix(strings.TrimSpace(shownIn().ReplaceAllString(rest, "")), ".")
	if len(ofEach().FindAllStringIndex(rest, 2)) == 2 {
		rest = ofEach().ReplaceAllString(rest, "")
	}
	if strings.Contains(rest, ",") && !strings.ContainsAny(rest, "([") {
		rest = lastAnd().ReplaceAllString(rest, ", ")
	}
	return behindSizes().ReplaceAllString(beforeSizes().ReplaceAllString(rest, "$1"), "$1")
}

// leftWords are the words of a line that says no more than that stitches are not worked.
var leftWords = set("note leave leaving left the last remaining remain rem other rest of there will be are is do not work worked unworked into in on next row rnd round at end this and turn sts st stitches sc dc hdc tr htr")

// LeftAlone is how many stitches a line says stay unworked that says nothing else, 0 if all that are left: 4 stitches will be left unworked.
func LeftAlone(line string) (n int, ok bool) {
	if len(line) > 90 || !strings.Contains(strings.ToLower(line), "work") {
		return 0, false
	}
	said := map[string]bool{}
	for _, w := range strings.FieldsFunc(strings.ToLower(line), func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) }) {
		if v, err := strconv.Atoi(w); err == nil && n == 0 && v > 0 {
			n = v
		} else if !leftWords[w] {
			return 0, false
		}
		said[w] = true
	}
	return n, (said["unworked"] || said["not"] && (said["work"] || said["worked"])) && (n > 0 || said["rem"] || said["remaining"] || said["rest"] || said["other"])
}
