package document

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"flatwright/schematic"
	"flatwright/schematic/rows"
	"flatwright/schematic/stitch"
)

// makesUp are words with which headings begin that tell how pieces are put together.
var makesUp = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)^(making up|to make up|finishing|to finish|assembly|to assemble|assembling|joining|seaming|sewing up|putting together)\b`)
})

// MakesUp reports whether a section tells how the pieces are put together.
func (w WrittenSection) MakesUp() bool { return makesUp().MatchString(w.Name) }

// Written cuts a text of written rows into sections, and lists the abbreviations
// that it uses. Lines that repeat what the pattern says of itself (sizes, terms, gauge)
// are left out.
func Written(p *schematic.Pattern, text string) ([]WrittenSection, []Fact) {
	if strings.TrimSpace(text) == "" {
		return nil, nil
	}
	x := rows.Read(p.File, []byte(text), rows.Options{Sizes: p.Sizes, Terms: stitch.Terms(p.Terms), TermsSet: true})
	heading := map[int]string{}
	for _, s := range x.Sections {
		if s.Name != "" {
			heading[s.At.Line] = s.Name
		}
	}
	w := writtenText{title: p.Title, own: x.Title}
	for i, line := range strings.Split(strings.ReplaceAll(text, "\r\n", "\n"), "\n") {
		_, heads := heading[i+1]
		w.line(line, heads)
	}
	var short []Fact
	for _, a := range rows.Abbreviations(x) {
		short = append(short, Fact{a.Short, []Text{Words(a.Long)}})
	}
	return w.out, short
}

// writtenText is a text of rows that is cut into sections line by line.
type writtenText struct {
	title, own string // of the pattern, and of the text
	out        []WrittenSection
}

func (w *writtenText) line(line string, heads bool) {
	bare := strings.TrimSpace(line)
	name := strings.Trim(bare, "#*_ ")
	switch {
	case bare == "" || bare == w.own || len(w.out) == 0 && strings.EqualFold(name, w.title):
		return
	case heads || strings.HasPrefix(bare, "#"): // a heading of words is no section of rows
		w.out = append(w.out, WrittenSection{Name: strings.TrimSuffix(name, ":")})
		return
	case saysOfItself(bare):
		return
	}
	if len(w.out) == 0 {
		w.out = append(w.out, WrittenSection{})
	}
	last := &w.out[len(w.out)-1]
	if n := len(last.Lines); n > 0 && (strings.HasPrefix(line, "  ") || strings.HasPrefix(line, "\t")) {
		last.Lines[n-1] += " " + bare // the line goes on
		return
	}
	last.Lines = append(last.Lines, bare)
}

// saysOfItself reports whether a line repeats what the pattern says of itself.
func saysOfItself(line string) bool {
	word, _, ok := strings.Cut(line, ":")
	return ok && slices.Contains([]string{"sizes", "size", "terms", "gauge", "tension"}, strings.ToLower(word))
}
