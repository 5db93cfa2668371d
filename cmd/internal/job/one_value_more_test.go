package job

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"flatwright/layout/place"
	"flatwright/render/compare"
	"flatwright/schematic"
	"flatwright/schematic/units"
)

// What the labels, the other tables, the answers and the workbook print.
var (
	svgTitle   = regexp.MustCompile(`(?s)<g id="([^"]*)" class="measure">\s*<title>([^<]*)</title>(.*?)</g>`)
	lineIn     = regexp.MustCompile(`([0-9–][^a-z:]*?) (cm|in)\b`)
	tag        = regexp.MustCompile(`<[^>]*>`)
	figureIn   = regexp.MustCompile(`[0-9.¼½¾⅛⅜⅝⅞]+|–`)
	worked     = regexp.MustCompile(`(?m)^\s*(\S.*?) [0-9]+ (?:stitches|rows) .*?\s([0-9.¼½¾]+)\s+([0-9.¼½¾]+)$`)
	inMarkdown = regexp.MustCompile(`^\|([^|]*)\| (cm|in) \|(.*)\|$`)
	inText     = regexp.MustCompile(`\b(cm|in)((?: +[0-9.¼½¾–]+)+)$`)
)

// line takes the figures of all sizes in the trade's line, or of one for all.
func (p *printed) line(where, id, text string, sizes []string) {
	for _, l := range lineIn.FindAllStringSubmatch(text, -1) {
		of := figureIn.FindAllString(l[1], -1)
		for i, size := range sizes {
			switch len(of) {
			case 1:
				p.put(where, id, size, l[2], of[0])
			case len(sizes):
				p.put(where, id, size, l[2], of[i])
			}
		}
	}
}

// lines takes the labels of drawings with the values of all sizes, and what they say of themselves.
func (p *printed) lines(t *testing.T, src Source, sizes []string) {
	for _, labels := range []Labels{All, Letters} {
		for _, in := range [][]units.Unit{{units.CM, units.Inch}, {units.CM}, {units.Inch}} {
			drawn, err := Draw(t.Context(), src, DrawOptions{Labels: labels, Units: in, Format: "svg", Paper: place.A4})
			require.NoError(t, err)
			for _, f := range drawn.Files {
				for _, m := range svgTitle.FindAllStringSubmatch(string(f.Body), -1) {
					p.line("title", m[1], m[2], sizes)
					p.line("label of all sizes", m[1], tag.ReplaceAllString(m[3], " "), sizes)
				}
			}
		}
	}
}

// tables takes the other formats of the table, whose rows are those of csv.
func (p *printed) tables(t *testing.T, src Source, csv [][]string) {
	for _, format := range []string{"text", "markdown"} {
		table, err := Table(t.Context(), src, TableOptions{Format: format})
		require.NoError(t, err)
		k := 0
		for _, l := range strings.Split(string(table.Files[0].Body), "\n") {
			var unit string
			var figures []string
			if m := inMarkdown.FindStringSubmatch(l); m != nil {
				unit, figures = m[2], strings.Split(m[3], "|")
			} else if m := inText.FindStringSubmatch(strings.TrimRight(l, " ")); m != nil {
				unit, figures = m[1], strings.Fields(m[2])
			} else {
				continue
			}
			require.Less(t, k, len(csv)-1, "%s: a row more: %s", format, l)
			row := csv[k+1]
			k++
			require.Equal(t, row[3], unit, "%s: %s", format, l)
			require.Len(t, figures, len(row)-4, "%s: %s", format, l)
			for i, v := range figures {
				p.put(format, row[0], csv[0][4+i], unit, v)
			}
		}
		require.Equal(t, len(csv)-1, k, format)
	}
}

// answers takes the answers of a worksheet: a pair that stands for no measurement of its size is wrong.
func (p *printed) answers(t *testing.T, src Source, size string, known map[string]bool, first units.Unit) {
	r, err := Handout(t.Context(), src, HandoutOptions{Size: size, Kind: ForClass})
	require.NoError(t, err)
	for _, f := range r.Files {
		if !strings.Contains(f.Name, "answers") {
			continue
		}
		file := filepath.Join(t.TempDir(), f.Name)
		require.NoError(t, os.WriteFile(file, f.Body, 0o600))
		for _, m := range worked.FindAllStringSubmatch(string(compare.Run(t, nil, "pdftotext", "-layout", file, "-")), -1) {
			a, ok := units.ParseNum(m[2])
			b, ok2 := units.ParseNum(m[3])
			require.True(t, ok && ok2, m[0])
			if first == units.Inch {
				a, b = b, a
			}
			p.steps["answers"]++
			assert.True(t, known[units.Decimal(a, 3)+" / "+units.Decimal(b, 3)], "%s, size %s: the answers print %s", src.Name, size, m[0])
		}
	}
}

// workbook takes the first sheet, which is exact: rounded once it prints the same. Its rows are those of csv, a range two.
func (p *printed) workbook(t *testing.T, src Source, q *schematic.Pattern, csv [][]string) {
	r, err := Grade(t.Context(), src, GradeOptions{Format: "xlsx"})
	require.NoError(t, err)
	f, err := excelize.OpenReader(bytes.NewReader(r.Files[0].Body))
	require.NoError(t, err)
	defer f.Close() //nolint:errcheck // nothing of it is on disk
	rows, err := f.GetRows("Measurements", excelize.Options{RawCellValue: true})
	require.NoError(t, err)
	k := 0
	for _, row := range rows[2:] {
		if len(row) < 3 || strings.HasSuffix(row[0], ", from") || strings.HasSuffix(row[0], ", to") {
			continue
		}
		for k+1 < len(csv) && (csv[k+1][2] != row[0] || csv[k+1][3] != row[1]) {
			k++ // ranges
		}
		require.Less(t, k+1, len(csv), "%v", row)
		unit, ok := units.ParseUnit(row[1])
		require.True(t, ok)
		for i, v := range row[2:] {
			exact, err := strconv.ParseFloat(v, 64)
			if err != nil {
				continue // a dash
			}
			n, ok := units.ParseNum(strconv.FormatFloat(exact, 'f', 6, 64))
			require.True(t, ok, v)
			p.put("workbook", csv[k+1][0], csv[0][4+i], row[1], q.Steps.Format(units.Of(n, unit), unit))
		}
		k++
	}
}

func hasPDFText(t *testing.T) bool {
	_, err := exec.LookPath("pdftotext")
	require.False(t, err != nil && compare.Required(), "this test needs pdftotext")
	return err == nil
}
