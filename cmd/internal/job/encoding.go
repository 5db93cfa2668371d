package job

import (
	"bytes"
	"fmt"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"

	"flatwright/schematic/finding"
)

// utf8Text is a text of rows as UTF-8, and the encoding that it was in if that is another: UTF-16 says so at its
// beginning, and what is neither is Windows-1252, which every byte is a character of.
func utf8Text(b []byte) ([]byte, string) {
	var from encoding.Encoding
	name := ""
	switch {
	case bytes.HasPrefix(b, []byte{0xff, 0xfe}), bytes.HasPrefix(b, []byte{0xfe, 0xff}):
		from, name = unicode.UTF16(unicode.LittleEndian, unicode.UseBOM), "UTF-16"
	case utf8.Valid(b):
		return b, ""
	default:
		from, name = charmap.Windows1252, "Windows-1252"
	}
	out, err := from.NewDecoder().Bytes(b)
	if err != nil {
		return b, ""
	}
	return out, name
}

// decoded is a text of rows in UTF-8, with a note if it was not.
func decoded(text Source) (Source, finding.List) {
	body, from := utf8Text(text.Text)
	if from == "" {
		return text, nil
	}
	return Source{Name: text.Name, Text: body}, finding.List{{Kind: "file/encoding", Severity: finding.Note, Pos: finding.Pos{File: text.Name, Line: 1},
		Message: fmt.Sprintf("the text is not in UTF-8: it is read as %s", from), Fix: "look at its fractions and accents; save it again as UTF-8"}}
}
