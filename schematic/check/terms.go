package check

import (
	"fmt"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
)

// terms tells stitches of gauges and sections that are words of the other terms alone: htr in
// a pattern in US terms.
func terms(p *schematic.Pattern) finding.List {
	var all finding.List
	seen := map[string]bool{}
	look := func(text string, pos finding.Pos, piece string) {
		word, ok := foreign(text, stitch.Terms(p.Terms))
		if !ok || seen[word] {
			return
		}
		seen[word] = true
		f := finding.Finding{Kind: "words/terms", Severity: finding.Warning, Pos: pos, Piece: piece,
			Message: fmt.Sprintf("%q is a %s word in a pattern in %s terms", word, 1-p.Terms, p.Terms)}
		if st, ok := stitch.Lookup(word, stitch.Terms(1-p.Terms)); ok {
			f.Fix = fmt.Sprintf("in %s terms it is %s", p.Terms, st.Abbr(stitch.Terms(p.Terms)))
		}
		all = append(all, f)
	}
	for _, g := range p.Gauges {
		look(g.Stitch, g.Pos, "")
	}
	for _, q := range p.Pieces {
		eachSection(q.Sections, func(s schematic.Section) { look(s.Base().Stitch, s.Base().Pos, q.Name) })
	}
	return all
}

// foreign is the first phrase of a text that has a meaning in the other terms alone. A longer
// phrase goes before the words in it.
func foreign(text string, own stitch.Terms) (string, bool) {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return strings.ContainsRune(" ,;/()", r) })
	for i := 0; i < len(words); {
		k := min(stitch.Longest, len(words)-i)
		for ; k > 0; k-- {
			phrase := strings.Join(words[i:i+k], " ")
			if t, ok := stitch.Only(phrase); ok {
				if t != own {
					return phrase, true
				}
				break
			}
			if _, ok := stitch.Lookup(phrase, own); ok {
				break
			}
		}
		i += max(k, 1)
	}
	return "", false
}

func eachSection(list []schematic.Section, f func(schematic.Section)) {
	for _, s := range list {
		f(s)
		for _, part := range s.Traits().Parts {
			eachSection(part.Sections, f)
		}
	}
}
