package text

import (
	"fmt"
	"io"
	"strings"

	"flatwright/layout/table"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Markdown writes the table as GitHub Flavored Markdown (its specification,
// section 4.10, Tables), one table a group. The units are those in only, or both. No text
// of the pattern becomes markup.
func Markdown(w io.Writer, t table.Table, only ...units.Unit) error {
	us := printed(t, only)
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n", finding.Markdown(heading(t)))
	for _, g := range t.Groups {
		fmt.Fprintf(&b, "\n## %s\n\n| Measurement | Unit |", finding.Markdown(g.Name))
		for _, s := range t.Sizes {
			b.WriteString(" " + finding.Markdown(s) + " |")
		}
		b.WriteString("\n|---|---|" + strings.Repeat("---:|", len(t.Sizes)) + "\n")
		for _, r := range g.Rows {
			for _, u := range us {
				fmt.Fprintf(&b, "| %s | %s |", finding.Markdown(r.Name), u)
				for _, c := range r.Cells {
					b.WriteString(" " + c.Text(u, t.Steps) + " |")
				}
				b.WriteByte('\n')
			}
		}
	}
	if len(t.Groups) > 0 {
		fmt.Fprintf(&b, "\n%s\n", rounding(t.Steps, us))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func rounding(s units.Steps, us []units.Unit) string {
	var parts []string
	for _, u := range us {
		step := units.Decimal(s.Step(u), 3)
		if u == units.Inch {
			step = units.Mixed(s.Step(u))
		}
		parts = append(parts, "the nearest "+step+" "+u.String())
	}
	return "Measurements are to " + strings.Join(parts, " and ") + ", each from the exact length at the gauge."
}
