package rows

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
)

// reader takes a text line by line.
type reader struct {
	x    *Text
	o    Options
	sec  *Section
	mode string // notes, stitches, words: how the lines of a section of words are read
	last *Line
}

// Read reads a text of written rows. What can't be read stands in the lines'
// Unread, and in the findings of Check; nothing is guessed. The name is for messages.
func Read(name string, src []byte, o Options) *Text {
	x := &Text{Name: name, Sizes: o.Sizes, Terms: o.Terms, TermsSet: o.TermsSet, Gauge: o.Gauge,
		Turning: map[int]Counts{}, used: map[string]*stitch.Stitch{}, own: map[string]*stitch.Stitch{}}
	for n, c := range o.Turning {
		x.Turning[n] = c
	}
	if len(src) > maxText {
		x.add(finding.Finding{Kind: "rows/bounds", Severity: finding.Error, Message: fmt.Sprintf("the text is larger than %d bytes", maxText)}, Span{Line: 1, Col: 1, End: 2})
		return x
	}
	x.src = lines(src)
	if len(x.src) > maxLines {
		x.add(finding.Finding{Kind: "rows/bounds", Severity: finding.Error, Message: fmt.Sprintf("the text has more than %d lines", maxLines)}, Span{Line: maxLines + 1, Col: 1, End: 2})
		return x
	}
	x.bound()
	r := &reader{x: x, o: o}
	r.sec = &Section{}
	x.Sections = append(x.Sections, r.sec)
	r.head()
	for i := range x.src {
		r.line(i + 1)
	}
	if len(x.Sections) > 1 && len(x.Sections[0].Lines) == 0 {
		x.Sections = x.Sections[1:]
	}
	x.few()
	x.turningSaid()
	x.shortSizes()
	return x
}

// head finds sizes and terms first, wherever they stand, since rows are read by them.
func (r *reader) head() {
	rounds, known := 0, false
	for i, line := range r.x.src {
		key, rest, col := keyOf(line)
		switch key {
		case "sizes", "size":
			if len(r.o.Sizes.Names) > 0 {
				r.x.said.sizes, _ = expr.ParseSizes(strings.TrimSuffix(strings.TrimSpace(rest), "."))
				r.x.said.sizesAt = Span{Line: i + 1, Col: col, End: col + len([]rune(strings.TrimSpace(rest)))}
				continue
			}
			s, p := expr.ParseSizes(strings.TrimSuffix(strings.TrimSpace(rest), "."))
			if p != nil {
				r.x.Findings = append(r.x.Findings, p.Finding(finding.Pos{File: r.x.Name, Line: i + 1, Col: col, EndCol: col + 1}))
				continue
			}
			r.x.Sizes = s
			r.x.said.sizesAt = Span{Line: i + 1, Col: col, End: col + len([]rune(strings.TrimSpace(rest)))}
		case "terms":
			if r.o.TermsSet {
				r.x.said.terms, _, _ = strings.Cut(strings.ToUpper(strings.Trim(rest, " .")), " ")
				r.x.said.termsAt = Span{Line: i + 1, Col: col, End: col + len([]rune(strings.TrimSpace(rest)))}
				continue
			}
			switch strings.ToUpper(strings.Trim(rest, " .")) {
			case "US", "US TERMS", "AMERICAN":
				r.x.Terms, r.x.TermsSet = stitch.US, true
			case "UK", "UK TERMS", "BRITISH":
				r.x.Terms, r.x.TermsSet = stitch.UK, true
			}
		}
		low := strings.ToLower(line)
		if strings.Contains(low, "ring") || strings.Contains(low, "around") || strings.Contains(low, "magic") || strings.Contains(low, "circle") {
			rounds++
		}
		known = known || key != ""
	}
	r.x.roundR = rounds > 0
	if len(r.x.Sizes.Names) == 0 {
		r.x.Sizes = expr.Sizes{Names: []string{""}, Groups: []int{1}}
	}
	if !r.x.TermsSet {
		r.guessTerms()
	}
}

// guessTerms takes the terms from words that belong to one set alone; words of
// both are told as a finding by Check.
func (r *reader) guessTerms() {
	us, uk := 0, 0
	for _, line := range r.x.src {
		for _, w := range strings.FieldsFunc(strings.ToLower(line), func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) }) {
			if t, ok := stitch.Only(w); ok {
				if t == stitch.US {
					us++
				} else {
					uk++
				}
			}
		}
	}
	switch {
	case us > uk:
		r.x.Terms, r.x.TermsSet = stitch.US, true
	case uk > us:
		r.x.Terms, r.x.TermsSet = stitch.UK, true
	}
}

// keys are the words before a colon that begin a line of words.
var keys = map[string]string{
	"sizes": "skip", "size": "skip", "terms": "skip", "gauge": "gauge", "tension": "gauge", "materials": "words", "material": "words",
	"yarn": "words", "hook": "words", "hooks": "words", "needles": "words", "notions": "words", "tools": "words", "notes": "notes", "note": "notes",
	"pattern notes": "notes", "abbreviations": "words", "special stitches": "stitches", "special stitch": "stitches", "stitches": "stitches",
	"stitch guide": "stitches", "skill level": "words", "designer": "words", "finished measurements": "words", "measurements": "words",
	"finishing": "words", "making up": "words", "assembly": "words", "to finish": "words", "care": "words", "to fit": "words",
}

func keyOf(line string) (key, rest string, col int) {
	i := strings.IndexByte(line, ':')
	if i < 0 {
		return "", "", 0
	}
	k := strings.ToLower(strings.Trim(line[:i], " #*"))
	if keys[k] == "" {
		return "", "", 0
	}
	return k, line[i+1:], len([]rune(line[:i])) + 2 + (len(line[i+1:]) - len(strings.TrimLeft(line[i+1:], " ")))
}

func (r *reader) line(n int) {
	raw := r.x.src[n-1]
	text := strings.TrimSpace(raw)
	if text == "" {
		r.x.Read.Blank++
		r.last = nil
		return
	}
	if key, rest, _ := keyOf(raw); key != "" {
		r.x.Read.Words++
		r.last = nil
		r.words(keys[key], rest, n, strings.TrimSpace(rest) == "")
		return
	}
	if h, ok := heading(text, r.x); ok {
		r.x.Read.Words++
		r.last = nil
		r.mode = ""
		name := strings.ToLower(h)
		if kind := keys[name]; kind != "" && kind != "skip" {
			r.words(kind, "", n, true)
			return
		}
		if r.x.Title == "" && len(r.x.Sections) == 1 && len(r.sec.Lines) == 0 && n < 4 && r.blankAfter(n) {
			r.x.Title = h
			return
		}
		r.sec = &Section{Name: h, Make: makeOf(text), At: Span{Line: n, Col: 1, End: len([]rune(raw)) + 1}}
		r.x.Sections = append(r.x.Sections, r.sec)
		return
	}
	if r.mode != "" {
		r.x.Read.Words++
		r.words(r.mode, text, n, false)
		return
	}
	tokens := lex(raw, len(r.x.Sizes.Names))
	if r.last != nil && (strings.HasPrefix(raw, "  ") || strings.HasPrefix(raw, "\t")) {
		r.x.Read.Lines-- // the line goes on
		if len(r.last.Unread) == 0 {
			r.x.Read.Whole--
		}
		if r.last.Stated != nil {
			r.x.Read.Stated--
		}
		r.last.tokens = append(r.last.tokens, tokens...)
		r.last.Src += "\n" + raw
		r.parse(r.last)
		return
	}
	l := &Line{At: Span{Line: n, Col: tokens[0].col, End: tokens[len(tokens)-1].end}, Src: raw, tokens: tokens}
	r.sec.Lines = append(r.sec.Lines, l)
	r.parse(l)
	r.last = l
}

func (r *reader) blankAfter(n int) bool {
	return n < len(r.x.src) && strings.TrimSpace(r.x.src[n]) == ""
}

// parse reads the tokens of a line.
func (r *reader) parse(l *Line) {
	l.Unread, l.Stated, l.Label, l.Body = nil, nil, nil, nil
	p := &parser{t: l.tokens, x: r.x, line: l}
	p.shortLists()
	l.Label = p.label()
	from := p.i
	l.Stated = p.stated()
	p.i = from
	l.Body = p.seq()
	for !p.done() { // a bracket that closes and was never opened
		p.unread(p.span(p.i, p.i))
		p.i++
		l.Body = append(l.Body, p.seq()...)
	}
	if p.deep {
		r.x.add(finding.Finding{Kind: "rows/bounds", Severity: finding.Error,
			Message: fmt.Sprintf("brackets and repeats are nested more than %d deep", maxDepth), Fix: "write the row as several repeats"}, l.At)
		l.Unread = append(l.Unread, l.At)
	}
	if len(l.Body) == 1 { // 'K.' alone is a whole row
		if n := l.Body[0]; n.Op == OpStitch && l.Label != nil && n.Stitch != nil && n.Stitch.Craft == stitch.Knitting &&
			len(n.Places) == 0 && (n.Stitch.ID == "k" || n.Stitch.ID == "p") && n.N.By == nil && n.N.All == 1 && n.At.End-n.At.Col <= 5 && !strings.ContainsAny(l.Src[max(0, n.At.Col-1):min(len(l.Src), n.At.End-1)], "0123456789") {
			n.Places = []Place{{Kind: InEach, Unit: Unit{Word: "st"}, Extent: Extent{Kind: ToEnd}}}
		}
	}
	r.x.Read.Lines++
	if len(l.Unread) == 0 {
		r.x.Read.Whole++
	}
	if l.Stated != nil {
		r.x.Read.Stated++
	}
}

// shortLists tells lines of numbers that have not one a size.
func (p *parser) shortLists() {
	for i := range p.t {
		t := &p.t[i]
		if t.short == 0 {
			if t.num.By != nil && !p.x.unlike && !slices.Equal(groupsOf(t.s), p.x.Sizes.Groups) {
				p.x.unlike = true // once is enough
				p.x.add(finding.Finding{Kind: "words/brackets", Severity: finding.Note,
					Message: fmt.Sprintf("%q is bracketed unlike the line of sizes", t.s),
					Want:    "brackets as in " + p.x.Sizes.Full(p.x.Sizes.Names), Fix: "bracket the numbers like the sizes"},
					Span{Line: p.line.At.Line, Col: t.col, End: t.end})
			}
			continue
		}
		p.line.Short = true
		names := p.x.Sizes.Names
		f := finding.Finding{Kind: "rows/sizes", Severity: finding.Error,
			Message: fmt.Sprintf("%q has %d numbers for %d sizes", t.s, t.short, len(names)),
			Want:    fmt.Sprintf("one number for each of %s, or one alone", strings.Join(names, ", ")),
			Fix:     "put in the number that is missing, or a dash where a size has none"}
		if t.short < len(names) {
			f.Sizes = names[t.short:]
		} else {
			f.Fix = "take out the number that is too many"
		}
		p.x.add(f, Span{Line: p.line.At.Line, Col: t.col, End: t.end})
	}
}

// shortSizes tells once of a line of sizes that is too short or too long itself: most
// lines of numbers then have another length.
func (x *Text) shortSizes() {
	lists, best := map[int]int{}, 0
	for _, s := range x.Sections {
		for _, l := range s.Lines {
			for _, t := range l.tokens {
				switch {
				case t.short > 0:
					lists[t.short]++
					if k := lists[best]; lists[t.short] > k || lists[t.short] == k && t.short < best {
						best = t.short
					}
				case t.num.By != nil:
					lists[0]++
				}
			}
		}
	}
	if lists[best] < 3 || lists[best] <= lists[0] || x.said.sizesAt.Line == 0 {
		return
	}
	x.Findings = slices.DeleteFunc(x.Findings, func(f finding.Finding) bool {
		return f.Kind == "rows/sizes" && strings.Contains(f.Message, fmt.Sprintf(" has %d numbers for ", best))
	})
	x.add(finding.Finding{Kind: "rows/sizes", Severity: finding.Error,
		Message: fmt.Sprintf("these are %d sizes, but %d lines of numbers have %d numbers", len(x.Sizes.Names), lists[best], best),
		Fix:     "mend the line of sizes: until then those lines are not checked"}, x.said.sizesAt)
}

// heading reports whether a line is a heading: marked with #, or a few words
// without a number or a full stop that are no instruction.
func heading(text string, x *Text) (string, bool) {
	if strings.HasPrefix(text, "#") {
		name := strings.TrimSpace(strings.Trim(text, "# "))
		if i := strings.LastIndex(name, " (make "); i > 0 {
			name = name[:i]
		}
		return name, true
	}
	bare := strings.Trim(text, "*_")
	name := bare
	if i := strings.IndexByte(bare, '('); i > 0 {
		inside := strings.ToLower(strings.Trim(bare[i:], "() "))
		if !strings.HasPrefix(inside, "make") && !strings.HasPrefix(inside, "work") && !strings.HasPrefix(inside, "both") && !strings.HasPrefix(inside, "knit") {
			return "", false
		}
		name = strings.TrimSpace(bare[:i])
	}
	name = strings.TrimSuffix(name, ":")
	words := strings.Fields(name)
	if len(words) == 0 || len(words) > 6 {
		return "", false
	}
	for _, c := range name {
		if unicode.IsDigit(c) || strings.ContainsRune(".,;:*[](){}=", c) {
			return "", false
		}
	}
	if c := []rune(words[0])[0]; !unicode.IsUpper(c) {
		return "", false
	}
	first := strings.ToLower(words[0])
	switch first {
	case "fasten", "ch", "chain", "cast", "bind", "row", "rnd", "round", "rows", "rnds", "turn", "work", "rep", "repeat", "join", "cut", "break",
		"weave", "sew", "knit", "purl", "leave", "next", "continue", "skip", "miss", "with", "do", "dec", "inc", "pick", "place", "finish", "bo", "co":
		return "", false
	}
	if _, ok := stitch.Lookup(first, x.Terms); ok {
		return "", false
	}
	return name, true
}

// makeOf is how many a heading says to make: (make 2).
func makeOf(text string) int {
	_, inside, ok := strings.Cut(strings.ToLower(text), "(")
	word := strings.FieldsFunc(inside, func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) })
	if !ok || len(word) < 2 || word[0] != "make" && word[0] != "work" && word[0] != "knit" {
		return 0
	}
	for i, w := range []string{"one", "two", "three", "four"} {
		if word[1] == w {
			return i + 1
		}
	}
	if !allDigits(word[1]) || len(word[1]) > 3 {
		return 0
	}
	return atoi(word[1])
}

func (x *Text) add(f finding.Finding, at Span) {
	f.Pos = finding.Pos{File: x.Name, Line: at.Line, Col: at.Col, EndCol: at.End}
	x.Findings = append(x.Findings, clipped(f))
}

// clipped is f with no more of the text in it than a person reads.
func clipped(f finding.Finding) finding.Finding {
	const most = 1000
	for _, s := range []*string{&f.Message, &f.Have, &f.Want, &f.Fix} {
		*s = finding.ClipTo(*s, most)
	}
	return f
}

// groupsOf is how a line of numbers is bracketed: 1, 3 for 48 (52, 56, 60).
func groupsOf(s string) []int {
	var out []int
	n, digit := 0, false
	for _, c := range s {
		switch {
		case c >= '0' && c <= '9' || dash(c):
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
