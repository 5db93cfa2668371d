package job

import (
	"fmt"
	"strings"

	"flatwright/layout/chart"
	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/rows"
	"flatwright/schematic/stitch"
)

// charted draws the chart of a section of written rows in one size. Its error is an
// OptionError if there is no such section, or nothing in it that a chart can show.
func charted(p *schematic.Pattern, text, section string, size int, o chart.Options) (name string, sheets []*sheet.Sheet, err error) {
	x := rows.Read(p.File, []byte(text), rows.Options{Sizes: p.Sizes, Terms: stitch.Terms(p.Terms), TermsSet: true})
	var names []string
	for _, s := range x.Sections {
		if s.Name != "" && len(s.Lines) > 0 {
			names = append(names, s.Name)
		}
		if strings.EqualFold(s.Name, strings.TrimSpace(section)) && s.Name != "" {
			name = s.Name
		}
	}
	if name == "" {
		return "", nil, &OptionError{fmt.Sprintf("the rows have no section %q; they have %s", section, strings.Join(names, ", "))}
	}
	g, ok := rows.GraphOf(x, name, size)
	if !ok {
		return "", nil, &OptionError{fmt.Sprintf("the section %q has no rows to chart", name)}
	}
	w, ok := chart.FromGraph(g)
	if !ok {
		return "", nil, &OptionError{fmt.Sprintf("the section %q has no stitches to chart", name)}
	}
	o.Title, o.Designer = p.Title, p.Designer
	for _, part := range w.Parts() {
		drawn, err := chart.Draw(part, o)
		if err != nil {
			return "", nil, fmt.Errorf("chart of %s: %w", name, err)
		}
		sheets = append(sheets, drawn...)
	}
	return name, sheets, nil
}
