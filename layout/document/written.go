package document

import (
	"regexp"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/rows"
	"flatwright/schematic/stitch"
)

// makesUp are words with which headings begin that tell how pieces are put together.
var makesUp = regexp.MustCompile(`(?i)^(making up|to make up|finishing|to finish|assembly|to assemble|assembling|joining|seaming|sewing up|putting together)\b`)

// MakesUp reports whether a section tells how the pieces are put together.
func (w WrittenSection) MakesUp() bool { return makesUp.MatchString(w.Name) }

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
	var out []WrittenSection
	for i, line := range strings.Split(strings.ReplaceAll(text, "\r\n", "\n"), "\n") {
		bare := strings.TrimSpace(line)
		if bare == "" || len(out) == 0 && strings.EqualFold(strings.Trim(bare, "#*_ "), p.Title) || bare == x.Title {
			continue
		}
		if _, ok := heading[i+1]; ok || strings.HasPrefix(bare, "#") { // a heading of words is no section of rows
			out = append(out, WrittenSection{Name: strings.TrimSuffix(strings.Trim(bare, "#*_ "), ":")})
			continue
		}
		word, _, ok := strings.Cut(bare, ":")
		switch strings.ToLower(word) {
		case "sizes", "size", "terms", "gauge", "tension":
			if ok {
				continue
			}
		}
		if len(out) == 0 {
			out = append(out, WrittenSection{})
		}
		last := &out[len(out)-1]
		if n := len(last.Lines); n > 0 && (strings.HasPrefix(line, "  ") || strings.HasPrefix(line, "\t")) {
			last.Lines[n-1] += " " + bare // the line goes on
			continue
		}
		last.Lines = append(last.Lines, bare)
	}
	var short []Fact
	for _, a := range rows.Abbreviations(x) {
		short = append(short, Fact{a.Short, []Text{Words(a.Long)}})
	}
	return out, short
}
