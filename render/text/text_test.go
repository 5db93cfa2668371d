package text

import (
	"bytes"
	"encoding/csv"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"pgregory.net/rapid"

	"flatwright/layout/table"
	"flatwright/schematic/units"
)

func cell(cm, d int64) table.Cell {
	l := units.Of(units.Frac(cm, d), units.CM)
	return table.Cell{Has: true, Low: l, High: l}
}

func small() table.Table {
	return table.Table{
		Title: "Dune Vest", Sizes: []string{"S", "2X"}, Steps: units.Usual,
		Groups: []table.Group{
			{Name: "Back", Rows: []table.Row{
				{ID: "back.hem", Name: "Width at hem", Cells: []table.Cell{cell(45, 1), cell(1055, 10)}},
				{ID: "back.waist", Name: "Waist", Cells: []table.Cell{{}, cell(100, 1)}},
			}},
			{Name: "Ärmel", Rows: []table.Row{{ID: "armel.cuff", Name: "Cuff", Cells: []table.Cell{cell(20, 1), cell(25, 1)}}}},
		},
	}
}

// 45 cm is 17.717 in, to the quarter 17¾; 105.5 is 41.535, 41½; 100 is 39.370,
// 39¼ (39.375 would go up); 20 is 7.874, 7¾ (7.875 would go up); 25 is 9.843, 9¾.
func TestAlignedColumnsStandUnderEachOther(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, Aligned(&b, small()))
	assert.Equal(t, `Dune Vest: measurements

Back                  S     2X
  Width at hem  cm   45  105.5
                in  17¾    41½
  Waist         cm    –    100
                in    –    39¼

Ärmel                 S     2X
  Cuff          cm   20     25
                in   7¾     9¾
`, b.String())
}

func TestMarkdownOfOneUnit(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, Markdown(&b, small(), units.Inch))
	assert.Equal(t, `# Dune Vest\: measurements

## Back

| Measurement | Unit | S | 2X |
|---|---|---:|---:|
| Width at hem | in | 17¾ | 41½ |
| Waist | in | – | 39¼ |

## Ärmel

| Measurement | Unit | S | 2X |
|---|---|---:|---:|
| Cuff | in | 7¾ | 9¾ |

Measurements are to the nearest ¼ in, each from the exact length at the gauge.
`, b.String())
}

func TestCSVHasDecimalsAndRFC4180LineEnds(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, CSV(&b, small()))
	assert.Equal(t, "\ufeffid,piece,measurement,unit,S,2X\r\n"+
		"back.hem,Back,Width at hem,cm,45,105.5\r\nback.hem,Back,Width at hem,in,17.75,41.5\r\n"+
		"back.waist,Back,Waist,cm,–,100\r\nback.waist,Back,Waist,in,–,39.25\r\n"+
		"armel.cuff,Ärmel,Cuff,cm,20,25\r\narmel.cuff,Ärmel,Cuff,in,7.75,9.75\r\n", b.String())
}

func TestTheAuthoredUnitStandsFirst(t *testing.T) {
	s := small()
	s.Units = units.Inch
	var b bytes.Buffer
	require.NoError(t, Aligned(&b, s))
	assert.Less(t, strings.Index(b.String(), "17¾"), strings.Index(b.String(), "105.5"))
}

// OWASP, CSV Injection: cells that begin with = + - @ (and their full-width
// forms), a tab or a carriage return may be worked as formulas.
func TestNoTextInCSVIsAFormula(t *testing.T) {
	for _, evil := range []string{"=1+1", "+1", "-1+2", "@SUM(A1)", "\t=1", "\r=1", " =1", "＝1", `=HYPERLINK("http://x","y")`} {
		s := small()
		s.Sizes[0], s.Groups[0].Name, s.Groups[0].Rows[0].Name, s.Groups[0].Rows[0].ID = evil, evil, evil, evil
		var b bytes.Buffer
		require.NoError(t, CSV(&b, s))
		rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(b.String(), "\ufeff"))).ReadAll()
		require.NoError(t, err)
		for _, row := range rows {
			for _, c := range row {
				assert.NotContains(t, "=+-@＝\t\r", firstRune(c+" "), "%q", c)
			}
		}
	}
}

// goldmark, a CommonMark and GFM reader, is the outside truth: whatever a
// pattern calls its pieces, the reader sees just those letters in one table of
// the right shape, and no markup.
func TestMarkdownIsReadBackAsTheSameTexts(t *testing.T) {
	reader := goldmark.New(goldmark.WithExtensions(extension.GFM))
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.StringMatching("[-a-z0-9 |\\\\`*_{}()<>#!~&$^=:@\"'.+/;\\[\\]%]{0,20}x[-a-z0-9|\\\\`*_<>&;.\\[\\]]{0,5}")
		s := small()
		s.Sizes[0] = "s" + name.Draw(t, "size")
		s.Groups[0].Name = "g" + name.Draw(t, "group")
		s.Groups[0].Rows[0].Name = name.Draw(t, "row")
		var md, html bytes.Buffer
		require.NoError(t, Markdown(&md, s, units.CM))
		require.NoError(t, reader.Convert(md.Bytes(), &html))
		got := cells(t, html.String())
		require.Len(t, got, 3*4+2*4, "cells in\n%s", md.String())
		assert.Equal(t, squeeze(s.Sizes[0]), got[2])
		assert.Equal(t, squeeze(s.Groups[0].Rows[0].Name), got[4])
		assert.Contains(t, headings(t, html.String()), squeeze(s.Groups[0].Name))
	})
}

func TestMarkdownLinksNothing(t *testing.T) {
	for _, evil := range []string{"www.example.com", "see http://example.com", "a@example.com", "![x](y)", "<b>bold</b>", "&amp;", "a | b", "~~x~~", "**x**"} {
		s := small()
		s.Groups[0].Rows[0].Name = evil
		var md, html bytes.Buffer
		require.NoError(t, Markdown(&md, s, units.CM))
		require.NoError(t, goldmark.New(goldmark.WithExtensions(extension.GFM)).Convert(md.Bytes(), &html))
		assert.Contains(t, cells(t, html.String()), evil)
	}
}

func squeeze(s string) string { return strings.Join(strings.Fields(s), " ") }

func cells(t require.TestingT, html string) []string { return texts(t, html, "td", "th") }

func headings(t require.TestingT, html string) []string { return texts(t, html, "h2") }

// texts are the texts of the elements of those names. An element inside them
// is markup that a pattern's text has made, and fails the test.
func texts(t require.TestingT, html string, names ...string) []string {
	d := xml.NewDecoder(strings.NewReader("<html>" + html + "</html>"))
	d.Entity = xml.HTMLEntity
	var all []string
	in := false
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return all
		}
		require.NoError(t, err, "%s", html)
		switch tok := tok.(type) {
		case xml.StartElement:
			require.False(t, in, "markup in a text: %s", html)
			for _, n := range names {
				if tok.Name.Local == n {
					in, all = true, append(all, "")
				}
			}
		case xml.EndElement:
			if in {
				in = false
				all[len(all)-1] = squeeze(all[len(all)-1])
			}
		case xml.CharData:
			if in {
				all[len(all)-1] += string(tok)
			}
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }

func TestAnErrorOfTheWriterIsPassedOn(t *testing.T) {
	require.ErrorContains(t, Aligned(full{}, small()), "no space")
	require.ErrorContains(t, Markdown(full{}, small()), "no space")
	require.ErrorContains(t, CSV(full{}, small()), "no space")
}
