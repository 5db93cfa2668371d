package job

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"flatwright/layout/chart"
	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/rows"
)

// charted draws the chart of a section of written rows in one size; rows without headings are all of it, by whatever name.
// Its error is an OptionError if there is no such section, or nothing in it that a chart can show.
func charted(p *schematic.Pattern, text, section string, size int, o chart.Options) (name string, sheets []*sheet.Sheet, err error) {
	x := rows.Read(p.File, []byte(text), rowsOptions(p))
	name = strings.TrimSpace(section)
	heading, err := headingOf(x, name)
	if err != nil {
		return "", nil, err
	}
	name = cmp.Or(heading, name)
	var works []*chart.Work
	var of *rows.Section
	for s, g := range rows.Graphs(x, size, func(s *rows.Section) bool { return heading == "" || s.Name == heading }) {
		if of = cmp.Or(of, s); of != s {
			break
		}
		if w, ok := chart.FromGraph(g); ok {
			works = append(works, w.Parts()...)
		}
	}
	switch {
	case of == nil:
		return "", nil, &OptionError{fmt.Sprintf("there are no rows to chart as %q", name)}
	case len(works) == 0:
		return "", nil, &OptionError{fmt.Sprintf("there are no stitches to chart as %q", name)}
	}
	o.Title, o.Designer = p.Title, p.Designer
	for _, w := range works {
		drawn, err := chart.Draw(w, o)
		if err != nil {
			return "", nil, fmt.Errorf("chart of %s: %w", name, err)
		}
		sheets = append(sheets, drawn...)
	}
	return name, sheets, nil
}

// headingOf is the heading of the section of rows that is called so, empty where none of them has a heading.
func headingOf(x *rows.Text, name string) (string, error) {
	var names []string
	for _, s := range x.Sections {
		if s.Name != "" && len(s.Lines) > 0 && !s.Prose {
			names = append(names, s.Name)
		}
	}
	i := slices.IndexFunc(names, func(n string) bool { return strings.EqualFold(n, name) })
	switch {
	case len(names) == 0:
		return "", nil
	case i < 0:
		return "", &OptionError{fmt.Sprintf("the rows have no section %q; they have %s", name, strings.Join(names, ", "))}
	}
	return names[i], nil
}
