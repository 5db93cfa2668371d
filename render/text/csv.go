package text

import (
	"encoding/csv"
	"io"
	"strings"

	"flatwright/layout/table"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// CSV writes the table as RFC 4180 has it, one row for each measurement and
// unit, inches with decimals. A byte order mark stands in front, because the common
// spreadsheets take a file without one for a local code page. A text that a
// spreadsheet would take for a formula gets an apostrophe in front (OWASP, CSV
// Injection). The units are those in only, or both.
func CSV(w io.Writer, t table.Table, only ...units.Unit) error {
	if _, err := io.WriteString(w, "\ufeff"); err != nil {
		return err
	}
	out := csv.NewWriter(w)
	out.UseCRLF = true
	head := []string{"id", "piece", "measurement", "unit"}
	for _, s := range t.Sizes {
		head = append(head, Harmless(s))
	}
	_ = out.Write(head) // errors stay in the writer until Flush
	for _, g := range t.Groups {
		for _, r := range g.Rows {
			for _, u := range printed(t, only) {
				row := []string{Harmless(r.ID), Harmless(g.Name), Harmless(r.Name), u.String()}
				for _, c := range r.Cells {
					row = append(row, c.Decimal(u, t.Steps))
				}
				_ = out.Write(row)
			}
		}
	}
	out.Flush()
	return out.Error()
}

// Harmless is s so that no spreadsheet works it as a formula.
func Harmless(s string) string {
	s = finding.OneLine(s)
	if strings.ContainsAny(firstRune(strings.TrimLeft(s, " \u00a0")), "=+-@＝＋－＠|%") {
		return "'" + s
	}
	return s
}

func firstRune(s string) string {
	for _, r := range s {
		return string(r)
	}
	return ""
}
