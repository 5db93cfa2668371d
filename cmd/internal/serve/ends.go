package serve

import (
	"bytes"
	"fmt"
	"strings"

	"flatwright/schematic/read"
)

// A text area of a browser has line feeds alone, and text that is no UTF-8 does not come
// through at all. So the page is given a file's words, and what else is in its bytes
// (a byte-order mark, carriage returns) is put back when they are saved.

const byteOrderMark = "\ufeff"

// wordsOf are the words of a file, or an error that says where it is not UTF-8.
func wordsOf(name string, file []byte) (string, error) {
	_, found := read.Pattern(name, file)
	for _, f := range found {
		if f.Kind != "file/encoding" || f.Severity.String() != "error" {
			continue
		}
		why := f.Message
		for _, more := range []string{f.Have, f.Fix} {
			if more != "" {
				why += "; " + more
			}
		}
		return "", fmt.Errorf("%s, line %d: %s", name, f.Pos.Line, why)
	}
	return strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(strings.TrimPrefix(string(file), byteOrderMark)), nil
}

// bytesOf are the bytes of words that take the place of a file: its byte-order mark, the ends of the
// lines that stay, and behind new lines the end that most of the old ones have.
func bytesOf(file []byte, words string) []byte {
	rest, marked := bytes.CutPrefix(file, []byte(byteOrderMark))
	old := lines(string(rest))
	usual := usualEnd(old)
	now := lines(words)
	same := 0
	for same < len(old) && same < len(now) && old[same].words == now[same].words {
		same++
	}
	tail := 0
	for tail < len(old)-same && tail < len(now)-same && old[len(old)-1-tail].words == now[len(now)-1-tail].words {
		tail++
	}
	var b bytes.Buffer
	if marked {
		b.WriteString(byteOrderMark)
	}
	for i, l := range now {
		b.WriteString(l.words)
		at := -1
		switch {
		case i < same:
			at = i
		case i >= len(now)-tail:
			at = len(old) - (len(now) - i)
		}
		switch {
		case l.end == "":
		case at >= 0 && old[at].end != "":
			b.WriteString(old[at].end)
		default:
			b.WriteString(usual)
		}
	}
	return b.Bytes()
}

// usualEnd is the end that most lines have.
func usualEnd(all []textLine) string {
	usual, count := "\n", map[string]int{}
	for _, l := range all {
		if count[l.end]++; l.end != "" && count[l.end] > count[usual] {
			usual = l.end
		}
	}
	return usual
}

type textLine struct{ words, end string }

// lines are the lines of a text, each with its end.
func lines(s string) []textLine {
	var out []textLine
	for s != "" {
		at := strings.IndexAny(s, "\r\n")
		if at < 0 {
			return append(out, textLine{s, ""})
		}
		end := s[at : at+1]
		if strings.HasPrefix(s[at:], "\r\n") {
			end = "\r\n"
		}
		out = append(out, textLine{s[:at], end})
		s = s[at+len(end):]
	}
	return out
}
