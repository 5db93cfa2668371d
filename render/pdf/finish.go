package pdf

import (
	"bytes"
	"errors"
	"strconv"
	"unicode/utf16"
)

// preferences ask a viewer to print at the stated scale and to show the
// document's title (ISO 32000-1, 12.2, table 150; from PDF 1.6 on).
const preferences = "/Version /1.7\n/ViewerPreferences <</PrintScaling /None /DisplayDocTitle true>>\n"

// withPreferences adds to the catalogue what the library can't say. The catalogue
// is the file's last object, so that no place in the file moves but that of the
// cross-reference table.
func withPreferences(file []byte) ([]byte, error) {
	const catalogue, start = "/Type /Catalog\n", "\nstartxref\n"
	at, from := bytes.LastIndex(file, []byte(catalogue)), bytes.LastIndex(file, []byte(start))
	if at < 0 || from < at {
		return nil, errors.New("the PDF library wrote a file without a catalogue at its end")
	}
	at += len(catalogue)
	from += len(start)
	to := from + bytes.IndexByte(file[from:], '\n')
	table, err := strconv.Atoi(string(file[from:to]))
	if err != nil || table < at {
		return nil, errors.New("the PDF library wrote a cross-reference table in an unknown place")
	}
	out := make([]byte, 0, len(file)+len(preferences)+1)
	out = append(out, file[:at]...)
	out = append(out, preferences...)
	out = append(out, file[at:from]...)
	out = strconv.AppendInt(out, int64(table+len(preferences)), 10)
	return append(out, file[to:]...), nil
}

// utf16Text is a text string with a byte order mark (ISO 32000-1, 7.9.2.2). The
// library encodes a bookmark by itself only once a face is set.
func utf16Text(s string) string {
	b := []byte{0xFE, 0xFF}
	for _, u := range utf16.Encode([]rune(s)) {
		b = append(b, byte(u>>8), byte(u))
	}
	return string(b)
}
