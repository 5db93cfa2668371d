package xlsx

import (
	"archive/zip"
	"bytes"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"flatwright/schematic/finding"
)

// heldSheet holds what is so of every sheet: it is refused with a reason, or each of its
// values has a name and a place for each size.
func heldSheet(t *testing.T, data []byte) {
	vals, found := Read("x", data, "", three)
	for _, f := range found {
		require.True(t, finding.Known(f.Kind), f.Kind)
		require.NotEmpty(t, f.Message)
	}
	if found.Errors() {
		return
	}
	for _, v := range vals {
		require.Len(t, v.Vals.Vals, 3)
		require.NotEmpty(t, strings.TrimSpace(v.Name))
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte("x,S,M,L\na,1,2,3\n"))
	f.Add([]byte("\ufeffwhat;L;S;unit;M\r\nneck;19;18;cm;18.5\r\ncast on;110;-;sts;102\r\n"))
	f.Add([]byte("x\tS\tM\tL\n\"=cmd|' /C calc'!A0\"\t=1+1\t1e999\tNaN\n"))
	f.Add([]byte("PK\x03\x04"))
	f.Add(workbook(f, "", ""))
	f.Fuzz(func(t *testing.T, data []byte) { heldSheet(t, data) })
}

// FuzzWorkbook changes what is in a workbook's parts, which a change of its packed bytes
// seldom reaches.
func FuzzWorkbook(f *testing.F) {
	f.Add("", "")
	head := `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>`
	f.Add(head+`<row r="1"><c r="A1" t="inlineStr"><is><t>x</t></is></c><c r="B1" t="s"><v>1</v></c></row></sheetData></worksheet>`, "")
	f.Add(head+`<row r="9999999"><c r="XFD1048576"><f>WEBSERVICE("http://x.example")</f><v>1e999</v></c></row></sheetData></worksheet>`, "")
	f.Add(head+`<row><c t="s"><v>99999999999</v></c><c r="-1"><v>NaN</v></c></row></sheetData></worksheet>`, `<sst count="-1"><si/></sst>`)
	f.Add(`<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><worksheet>&b;</worksheet>`, "")
	f.Fuzz(func(t *testing.T, sheet, words string) {
		if len(sheet)+len(words) < 64<<10 {
			heldSheet(t, workbook(t, sheet, words))
		}
	})
}

// workbook is a small workbook with its sheet or its table of texts replaced.
func workbook(t testing.TB, sheet, words string) []byte {
	t.Helper()
	f := excelize.NewFile()
	for cell, v := range map[string]any{"A1": "what", "B1": "S", "C1": "M", "D1": "L", "A2": "neck, cm", "B2": 5.5, "C2": 6.0, "D2": "7½"} {
		require.NoError(t, f.SetCellValue("Sheet1", cell, v))
	}
	whole, err := f.WriteToBuffer()
	require.NoError(t, err)
	in, err := zip.NewReader(bytes.NewReader(whole.Bytes()), int64(whole.Len()))
	require.NoError(t, err)
	var b bytes.Buffer
	out := zip.NewWriter(&b)
	for _, part := range in.File {
		r, err := part.Open()
		require.NoError(t, err)
		w, err := out.Create(part.Name)
		require.NoError(t, err)
		instead := map[string]string{"xl/worksheets/sheet1.xml": sheet, "xl/sharedStrings.xml": words}[part.Name]
		if instead != "" {
			_, err = io.WriteString(w, instead)
		} else {
			_, err = io.Copy(w, r)
		}
		require.NoError(t, err)
	}
	require.NoError(t, out.Close())
	return b.Bytes()
}
