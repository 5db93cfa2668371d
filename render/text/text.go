// Package text writes a table as plain text: Markdown, comma-separated values
// or aligned columns. It decides nothing about what stands in the table.
package text

import (
	"io"
	"strings"

	"github.com/rivo/uniseg"

	"flatwright/layout/table"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// printed is the table's units in the order in which they are printed: the
// authored one first, or only those in only.
func printed(t table.Table, only []units.Unit) []units.Unit {
	if len(only) > 0 {
		return only
	}
	return t.Units.AndOther()
}

func heading(t table.Table) string {
	if t.Title == "" {
		return "Measurements"
	}
	return t.Title + ": measurements"
}

// Aligned writes the table in columns for a screen of one width of letter. The
// units are those in only, or both.
func Aligned(w io.Writer, t table.Table, only ...units.Unit) error {
	us := printed(t, only)
	first, columns := widths(t, us)
	var b strings.Builder
	b.WriteString(finding.OneLine(heading(t)) + "\n")
	for _, g := range t.Groups {
		b.WriteByte('\n')
		line(&b, finding.OneLine(g.Name), "", t.Sizes, first, columns)
		for _, r := range g.Rows {
			name := "  " + finding.OneLine(r.Name)
			for _, u := range us {
				texts := make([]string, len(r.Cells))
				for i, c := range r.Cells {
					texts[i] = c.Text(u, t.Steps)
				}
				line(&b, name, u.String(), texts, first, columns)
				name = ""
			}
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// widths are those of the first column and of each size's.
func widths(t table.Table, us []units.Unit) (first int, columns []int) {
	columns = make([]int, len(t.Sizes))
	for i, s := range t.Sizes {
		columns[i] = uniseg.StringWidth(finding.OneLine(s))
	}
	for _, g := range t.Groups {
		first = max(first, uniseg.StringWidth(finding.OneLine(g.Name)))
		for _, r := range g.Rows {
			first = max(first, uniseg.StringWidth(finding.OneLine(r.Name))+2)
			for i, c := range r.Cells {
				for _, u := range us {
					columns[i] = max(columns[i], uniseg.StringWidth(c.Text(u, t.Steps)))
				}
			}
		}
	}
	return first, columns
}

func line(b *strings.Builder, name, unit string, cells []string, first int, columns []int) {
	var l strings.Builder
	l.WriteString(name + pad(first-uniseg.StringWidth(name)) + "  " + unit + pad(2-len(unit)))
	for i, c := range cells {
		c = finding.OneLine(c)
		l.WriteString("  " + pad(columns[i]-uniseg.StringWidth(c)) + c)
	}
	b.WriteString(strings.TrimRight(l.String(), " ") + "\n")
}

func pad(n int) string { return strings.Repeat(" ", max(0, n)) }
