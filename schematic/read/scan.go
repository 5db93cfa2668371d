package read

import (
	"fmt"
	"strings"
	"sync"

	"flatwright/schematic/finding"
)

// scanned is a file that YAML refuses, looked through line by line. Where what
// was meant is plain (a dash for a size that has none) the text is mended; where it is
// an error it is told and made harmless, so that the rest can still be read. Fatal
// is what can't be gone round.
type scanned struct {
	text     string
	shift    map[int]int  // lines that have one character more, and after which column
	spoiled  map[int]bool // lines whose values are not what was meant
	findings finding.List
	fatal    *finding.Finding
}

// level is an open group of keys or list, by the column at which its lines begin.
type level struct {
	col  int
	list bool
}

type scanner struct {
	scanned
	file   string
	lines  [][]rune
	levels []level
	open   bool // the last key or dash has no value yet
	plain  bool // the last value is a text that may go on in the next line
	col    int  // where the last key or dash stands
	block  int  // indentation above a block of text, or -1
	tabs   int
}

// scan looks through a text that YAML refuses.
func scan(file, text string) scanned {
	s := &scanner{file: file, block: -1}
	for l := range strings.SplitSeq(text, "\n") {
		s.lines = append(s.lines, []rune(l))
	}
	s.shift, s.spoiled = map[int]int{}, map[int]bool{}
	for i := 0; i < len(s.lines) && s.fatal == nil && len(s.findings) < mostFindings; {
		i = s.line(i)
	}
	out := make([]string, len(s.lines))
	for i, l := range s.lines {
		out[i] = string(l)
	}
	s.text = strings.Join(out, "\n")
	return s.scanned
}

func (s *scanner) tell(i, from, to int, kind, message string) *finding.Finding {
	if at, ok := s.shift[i+1]; ok && from >= at {
		from, to = from-1, to-1
	}
	s.findings = append(s.findings, finding.Finding{Kind: kind, Severity: finding.Error, Message: message,
		Pos: finding.Pos{File: s.file, Line: i + 1, Col: from + 1, EndCol: to + 1}})
	return &s.findings[len(s.findings)-1]
}

// stop tells what can't be gone round.
func (s *scanner) stop(i, from, to int, message, want, fix string) {
	if s.fatal != nil {
		return
	}
	f := *s.tell(i, from, to, "file/syntax", message)
	s.findings = s.findings[:len(s.findings)-1]
	f.Want, f.Fix = want, fix
	s.fatal = &f
}

// line looks through a line and gives the number of the next one to look at.
func (s *scanner) line(i int) int {
	p := 0
	for p < len(s.lines[i]) && s.lines[i][p] == ' ' {
		p++
	}
	if s.noPart(i, p) {
		return i + 1
	}
	at, dashed := s.dashes(i, p)
	if ended(s.lines[i], at) {
		return i + 1
	}
	colon := keyEnd(s.lines[i], at)
	if colon < 0 {
		colon = s.noSpace(i, at)
	}
	t := s.lines[i]
	switch {
	case colon >= 0:
		s.enter(i, at, false)
		s.col, s.plain, s.open = at, false, false
		v := skip(t, colon+1)
		if s.open = ended(t, v); s.open {
			return i + 1
		}
		return s.value(i, v)
	case dashed || s.open:
		return s.value(i, at)
	case !s.plain || at <= s.col:
		s.stop(i, at, len(t), "this line has no key and is not part of the text above it",
			"a key, a colon, a space and a value; or a dash and a space", "indent it further than the key whose text it goes on with, or put quotes around the whole text")
	}
	return s.words(i, at)
}

// noPart reports whether a line that begins at p has no part in the levels: blank, a comment, in a block
// of text, or behind tabs.
func (s *scanner) noPart(i, p int) bool {
	t := s.lines[i]
	if strings.TrimSpace(string(t)) == "" || s.block >= 0 && p > s.block {
		return true
	}
	s.block = -1
	if t[p] == '\t' {
		if s.tabs++; s.tabs <= 10 {
			f := s.tell(i, p, skip(t, p), "file/tab", "a tab indents this line")
			f.Want, f.Fix = "spaces", "put two spaces for each step instead, and set the editor to do so"
		}
	}
	return s.tabs > 0 || // the levels can't be told any more
		t[p] == '#' || p == 0 && (strings.HasPrefix(string(t), "---") || strings.HasPrefix(string(t), "...") || t[0] == '%')
}

// dashes goes through the dashes with which a line begins, and gives the place behind them.
func (s *scanner) dashes(i, p int) (at int, some bool) {
	t := s.lines[i]
	for p < len(t) && t[p] == '-' && (p+1 == len(t) || t[p+1] == ' ') {
		s.enter(i, p, true)
		s.col, s.open, s.plain, some = p, true, false, true
		p = skip(t, p+1)
	}
	return p, some
}

func skip(t []rune, i int) int {
	for i < len(t) && (t[i] == ' ' || t[i] == '\t') {
		i++
	}
	return i
}

// ended reports whether nothing but a comment follows.
func ended(t []rune, i int) bool {
	return i >= len(t) || t[i] == '#' && (i == 0 || t[i-1] == ' ' || t[i-1] == '\t')
}

// keyEnd is the place of the colon that ends a key, or -1.
func keyEnd(t []rune, p int) int {
	if p < len(t) && (t[p] == '"' || t[p] == '\'') {
		q := skip(t, quoteEnd(t, p))
		if q < len(t) && t[q] == ':' && (q+1 == len(t) || t[q+1] == ' ') {
			return q
		}
		return -1
	}
	if p < len(t) && strings.ContainsRune("[{", t[p]) {
		return -1
	}
	return colonAt(t, p)
}

// colonAt is the first colon of a text that YAML takes for the end of a key, or -1.
func colonAt(t []rune, p int) int {
	for i := p; i < len(t); i++ {
		switch {
		case t[i] == '#' && i > 0 && (t[i-1] == ' ' || t[i-1] == '\t'):
			return -1
		case t[i] == ':' && (i+1 == len(t) || t[i+1] == ' ' || t[i+1] == '\t'):
			return i
		}
	}
	return -1
}

// noSpace finds a key whose colon has no space behind it, and puts one there.
func (s *scanner) noSpace(i, p int) int {
	t := s.lines[i]
	for c := p; c < len(t) && c < p+40; c++ {
		if t[c] != ':' {
			continue
		}
		name := strings.TrimSpace(string(t[p:c]))
		if !isKey(name) || c+1 >= len(t) {
			return -1
		}
		f := s.tell(i, p, c+1, "file/syntax", "the colon needs a space after it")
		f.Fix = "write " + name + ": " + finding.Clip(string(t[c+1:]))
		s.lines[i] = append(append(append([]rune{}, t[:c+1]...), ' '), t[c+1:]...)
		s.shift[i+1] = c + 1
		return c
	}
	return -1
}

// isKey reports whether some table has a key of that name.
func isKey(name string) bool { return allKeys()[name] }

var allKeys = sync.OnceValue(func() map[string]bool {
	all := map[string]bool{}
	for _, t := range allTables() {
		for _, k := range t.keys {
			all[k.name] = true
			for _, a := range k.also {
				all[a] = true
			}
		}
	}
	return all
})

// leave leaves the groups and lists that stand further in than a line, reports whether there are any, and gives the column of the
// outermost of them that is of the line's kind; -1: none is.
func (s *scanner) leave(p int, list bool) (popped bool, like int) {
	like = -1
	for len(s.levels) > 0 && s.levels[len(s.levels)-1].col > p {
		if at := s.levels[len(s.levels)-1]; at.list == list {
			like = at.col
		}
		s.levels, popped = s.levels[:len(s.levels)-1], true
	}
	return popped, like
}

// enter finds the group or list that a line belongs to by its column.
func (s *scanner) enter(i, p int, list bool) {
	popped, like := s.leave(p, list)
	top := func() level {
		if len(s.levels) == 0 {
			return level{-1, false}
		}
		return s.levels[len(s.levels)-1]
	}
	at := top()
	if at.col == p && at.list && !list && len(s.levels) > 1 && s.levels[len(s.levels)-2] == (level{p, false}) {
		s.levels = s.levels[:len(s.levels)-1]
		at = top()
	}
	end := len(s.lines[i])
	switch {
	case at == level{p, list}:
	case at.col == p && list && s.open && !popped:
		s.levels = append(s.levels, level{p, true})
	case at.col == p && list:
		s.stop(i, p, p+1, "a list entry where a key is needed", "a key and a colon, like the lines above", "indent the dash further than the key of its list")
	case at.col == p:
		s.stop(i, p, end, "a key where the next entry of a list is needed", "a dash and a space, like the entries above",
			"put a dash before it if it is an entry, or indent it further if it belongs to the entry above")
	case len(s.levels) > 0 && popped:
		if at.list == list || like < 0 {
			like = at.col
		}
		s.stop(i, p, end, fmt.Sprintf("this line is indented by %s, and no line above it has that indent", plural(p, "space", "spaces")),
			"lines that belong together at one indent", fmt.Sprintf("indent it by %d, like the line it belongs with", like))
	case len(s.levels) > 0 && !s.open:
		s.stop(i, p, end, "this line is indented further than the one above it, which has its value already",
			"lines that belong together at one indent", fmt.Sprintf("indent it by %d", s.levels[len(s.levels)-1].col))
	default:
		s.levels = append(s.levels, level{p, list})
	}
}

// value looks through the value that begins at v.
func (s *scanner) value(i, v int) int {
	t := s.lines[i]
	s.open, s.plain = false, false
	switch c := t[v]; {
	case c == '|' || c == '>':
		head := strings.TrimLeft(string(t[v+1:]), "+-0123456789")
		if head = strings.TrimSpace(head); head == "" || head[0] == '#' {
			s.block = s.col
			return i + 1
		}
		s.begins(i, v)
	case c == '"' || c == '\'':
		return s.quote(i, v)
	case c == '[' || c == '{':
		return s.flow(i, v)
	case c == '-' && (v+1 == len(t) || t[v+1] == ' '):
		t[v] = '–' // the trade's dash: this size has none
	case strings.ContainsRune("*&!%@`]},|>", c), c == '?' && (v+1 == len(t) || t[v+1] == ' '):
		s.begins(i, v)
	}
	s.plain = true
	return s.words(i, v)
}

// begins tells that a text can't begin as this one does, and makes it harmless.
func (s *scanner) begins(i, v int) {
	t := s.lines[i]
	end := len([]rune(strings.TrimRight(string(t), " ")))
	f := s.tell(i, v, v+1, "file/syntax", fmt.Sprintf("a text that begins with %c needs quotes", t[v]))
	f.Fix = `put it in double quotes: "` + finding.Clip(string(t[v:end])) + `"`
	t[v] = '·'
	s.spoiled[i+1] = true
}

// words looks through a line of a text without quotes. The first colon that makes
// a key of it is told; all are made harmless.
func (s *scanner) words(i, v int) int {
	t := s.lines[i]
	first := colonAt(t, v)
	if first < 0 {
		return i + 1
	}
	for c := first; c >= 0; c = colonAt(t, c+1) {
		t[c] = '·'
	}
	s.spoiled[i+1] = true
	from := first
	for from > v && t[from-1] != ' ' {
		from--
	}
	f := s.tell(i, from, first+1, "file/syntax", "a colon and a space make a key, and this line already has one")
	f.Fix = "put quotes around a text that has a colon in it"
	if end := len([]rune(strings.TrimRight(string(t), " "))); end-v <= 60 && !strings.ContainsRune(string(t[v:end]), '"') {
		f.Fix = `put the text in double quotes: "` + strings.ReplaceAll(string(t[v:end]), "·", ":") + `"`
	}
	for k := max(v, first-20); k < first; k++ { // several words may make a key
		if (k == v || t[k-1] == ' ') && isKey(string(t[k:first])) {
			f.Fix = fmt.Sprintf("put %q on a line of its own, or quotes around a text that has a colon in it", string(t[k:first])+":")
			break
		}
	}
	return i + 1
}

// backslash looks at one between double quotes.
func (s *scanner) backslash(line, at int) {
	t := s.lines[line]
	if at+1 >= len(t) || strings.ContainsRune("0abtnvfre \"/\\N_LPxuU\t", t[at+1]) {
		return
	}
	f := s.tell(line, at, at+2, "file/syntax", "a backslash between double quotes begins a special character")
	f.Fix = `write \\ for a backslash, or use single quotes`
	t[at] = '/'
	s.spoiled[line+1] = true
}

// quote looks through a text in quotes that begins at v.
func (s *scanner) quote(i, v int) int {
	q := s.lines[i][v]
	for j, p := i, v+1; j < len(s.lines); j, p = j+1, 0 {
		t := s.lines[j]
		if j > i && s.outside(j) {
			break
		}
		for ; p < len(t); p++ {
			switch {
			case t[p] == '\\' && q == '"':
				s.backslash(j, p)
				p++
			case t[p] == q && q == '\'' && p+1 < len(t) && t[p+1] == q:
				p++
			case t[p] == q:
				return s.behind(j, p+1, "the quotes end here and the text goes on", "put quotes around the whole text; double ones if it has an apostrophe")
			}
		}
	}
	s.stop(i, v, v+1, "this quote is never closed", "the same quote at the end of the text", "add "+string(q)+", or use no quotes")
	return len(s.lines)
}

// outside reports whether a line begins at or before the last key, so that a text
// or a bracket that began there can't go on in it.
func (s *scanner) outside(j int) bool {
	t := s.lines[j]
	p := skip(t, 0)
	if p == len(t) {
		return false
	}
	return p <= s.col && (keyEnd(t, p) >= 0 || t[p] == '-' && p+1 < len(t) && t[p+1] == ' ')
}

// behind sees to it that nothing follows a closed value.
func (s *scanner) behind(i, p int, message, fix string) int {
	t := s.lines[i]
	p = skip(t, p)
	if ended(t, p) {
		return i + 1
	}
	f := s.tell(i, p, len([]rune(strings.TrimRight(string(t), " "))), "file/syntax", message)
	f.Fix = fix
	s.lines[i] = t[:p]
	s.spoiled[i+1] = true
	return i + 1
}

// bracket is one that is open, with its place and what closes it.
type bracket struct {
	line, col int
	closer    rune
}

// flow looks through a list or a group in brackets that begins at v.
func (s *scanner) flow(i, v int) int {
	var open []bracket
	begin := true // an entry begins here
	for j, p := i, v; j < len(s.lines) && (j == i || !s.outside(j)); j, p = j+1, 0 {
		t := s.lines[j]
		for p = skip(t, p); p < len(t); p = skip(t, p+1) {
			switch c := t[p]; {
			case c == '#' && p > 0 && t[p-1] == ' ':
				p = len(t)
				continue
			case begin && (c == '[' || c == '{'):
				open = append(open, bracket{j, p, c + 2}) // ] and } are two behind [ and {
				continue
			case c == ']' || c == '}':
				last := open[len(open)-1]
				if c != last.closer {
					s.stop(j, p, p+1, fmt.Sprintf("%c closes a bracket that was opened with another one", c), string(last.closer), "")
					return len(s.lines)
				}
				if open = open[:len(open)-1]; len(open) == 0 {
					return s.behind(j, p+1, "the bracket is closed here and the text goes on", "put quotes around a text that begins with a bracket")
				}
			case begin:
				p = s.entry(j, p)
			}
			begin = separates(t, min(p, len(t)-1))
		}
	}
	last := open[len(open)-1]
	s.stop(last.line, last.col, last.col+1, "this bracket is never closed", string(last.closer)+" at its end", "add it; or put quotes around a text that begins with a bracket")
	return len(s.lines)
}

// entry looks at how an entry in brackets begins, and gives the last place looked at.
func (s *scanner) entry(j, p int) int {
	switch c := s.lines[j][p]; {
	case c == '"' || c == '\'':
		return quoteEnd(s.lines[j], p) - 1
	case strings.ContainsRune("*&!%@`", c):
		s.begins(j, p)
	}
	return p
}

// separates reports whether an entry begins behind the character at p.
func separates(t []rune, p int) bool {
	return t[p] == ',' || t[p] == ':' && (p+1 >= len(t) || t[p+1] == ' ')
}
