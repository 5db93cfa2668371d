package read

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"flatwright/schematic/finding"
)

// Bounds of a file.
const (
	mostBytes  = 1 << 20
	mostDeep   = 64
	mostKeys   = 40_000  // a hundred pieces in twenty sizes have two thousand
	mostCommas = 100_000 // commas and dashes that may part entries
)

// parse turns the bytes into a tree of nodes, or notes why it can't and gives nil.
func (r *reader) parse(src []byte) *yaml.Node {
	pos := finding.Pos{File: r.file}
	if len(src) > mostBytes {
		f := r.fail(pos, "file/size", "the file has %d bytes", len(src))
		f.Want = fmt.Sprintf("at most %d (1 MiB)", mostBytes)
		return nil
	}
	if !r.encoding(src) {
		return nil
	}
	src = bytes.TrimPrefix(src, []byte("\uFEFF"))
	if bytes.IndexByte(src, '\r') >= 0 {
		src = bytes.ReplaceAll(bytes.ReplaceAll(src, []byte("\r\n"), []byte("\n")), []byte("\r"), []byte("\n"))
	}
	text := string(src)
	if !r.few(text) {
		return nil
	}
	r.setLines(text)
	root, err := decode(text)
	if err != nil && !errors.Is(err, errSecond) && !errors.Is(err, io.EOF) {
		s := scan(r.file, text)
		r.findings = append(r.findings, s.findings...)
		fatal := s.fatal
		if fatal == nil && s.text != text {
			r.setLines(s.text)
			r.shift, r.spoiled = s.shift, s.spoiled
			root, err = decode(s.text)
		}
		if err != nil && !errors.Is(err, errSecond) && !errors.Is(err, io.EOF) {
			switch {
			case fatal != nil:
				r.findings = append(r.findings, *fatal)
			case len(s.findings) == 0:
				r.findings = append(r.findings, r.reword(err))
			}
			return nil
		}
	}
	if errors.Is(err, errSecond) {
		f := r.fail(finding.Pos{File: r.file, Line: secondLine(r.lines), Col: 1, EndCol: 4}, "file/syntax", "a second file begins here")
		f.Want, f.Fix = "one pattern in a file", "take the line --- out"
	}
	if root == nil || len(root.Content) == 0 || empty(root.Content[0]) {
		f := r.fail(finding.Pos{File: r.file, Line: 1, Col: 1, EndCol: 2}, "file/empty", "there is no pattern in this file")
		f.Want = "keys with values, such as pattern: and sizes:"
		return nil
	}
	if !r.allowed(root.Content[0], 1) {
		return nil
	}
	return root.Content[0]
}

// few reports whether a text has few enough keys and entries to be taken apart. Words that look like
// some count as well.
func (r *reader) few(text string) bool {
	for _, c := range []struct {
		what  string
		signs []string
		most  int
	}{{"keys", []string{": ", ":\n"}, mostKeys}, {"entries", []string{",", "- ", "[", "{"}, mostCommas}} {
		n := 0
		for _, s := range c.signs {
			n += strings.Count(text, s)
		}
		if n > c.most {
			f := r.fail(finding.Pos{File: r.file, Line: 1, Col: 1, EndCol: 2}, "file/bounds", "the file has about %d %s", n, c.what)
			f.Want, f.Fix = fmt.Sprintf("at most %d", c.most), "put some of the pieces into a file of their own, and written rows into a text beside it"
			return false
		}
	}
	return true
}

func (r *reader) setLines(text string) {
	split := strings.Split(text, "\n")
	r.lines = make([][]rune, len(split))
	for i, l := range split {
		r.lines[i] = []rune(l)
	}
}

var errSecond = errors.New("a second document")

func decode(text string) (*yaml.Node, error) {
	d := yaml.NewDecoder(strings.NewReader(text))
	var root, second yaml.Node
	if err := d.Decode(&root); err != nil {
		return nil, err
	}
	err := d.Decode(&second)
	switch {
	case errors.Is(err, io.EOF):
		return &root, nil
	case err != nil:
		return &root, err
	case len(second.Content) > 0 && empty(second.Content[0]):
		return &root, nil
	}
	return &root, errSecond
}

func secondLine(lines [][]rune) int {
	found := false
	for i, l := range lines {
		s := strings.TrimSpace(string(l))
		if found && strings.HasPrefix(s, "---") {
			return i + 1
		}
		found = found || s != "" && s[0] != '#' && !strings.HasPrefix(s, "---") && s[0] != '%'
	}
	return 1
}

// encoding sees to it that the file is UTF-8 text without characters that do
// not belong in one.
func (r *reader) encoding(src []byte) bool {
	if isUTF16(src) {
		r.fail(finding.Pos{File: r.file, Line: 1}, "file/encoding", "the file is UTF-16, and a pattern must be UTF-8").
			Fix = "save it again and choose UTF-8 as the encoding"
		return false
	}
	ok := true
	told := 0
	line, col := 1, 1
	for i := 0; i < len(src) && told < 10; {
		c, n := utf8.DecodeRune(src[i:])
		pos := finding.Pos{File: r.file, Line: line, Col: col, EndCol: col + 1}
		switch {
		case c == utf8.RuneError && n <= 1:
			f := r.fail(pos, "file/encoding", "the file is not UTF-8 here: the byte %#x means nothing", src[i])
			f.Fix = "save it again and choose UTF-8 as the encoding"
			if s, known := windows1252[src[i]]; known {
				f.Have = "it is " + s + " in the encoding Windows-1252"
			}
			return false
		case c == '\n', c == '\r':
			if c == '\n' || i+1 >= len(src) || src[i+1] != '\n' {
				line, col = line+1, 0
			}
		case c == '\uFEFF' && i == 0:
			col = 0
		case unseen(c):
			r.fail(pos, "file/characters", "an invisible character (U+%04X) is here", c).Fix = "take it out"
			ok = false
			told++
		}
		i += n
		col++
	}
	return ok
}

// unseen reports whether a character has no place in a text: it would steer a terminal, end a
// line where no one sees it, or not be a character at all.
func unseen(c rune) bool {
	return unicode.IsControl(c) && c != '\t' && c != '\n' || c == '\u2028' || c == '\u2029' || c == '\uFEFF' || c == '\uFFFE' || c == '\uFFFF'
}

// windows1252 are the characters that patterns most often have in that encoding.
var windows1252 = map[byte]string{
	0xbc: "¼", 0xbd: "½", 0xbe: "¾", 0x96: "–", 0x97: "—", 0x93: "“", 0x94: "”", 0x92: "’", 0xd7: "×", 0xe9: "é", 0xfc: "ü", 0xf6: "ö", 0xe4: "ä", 0xb0: "°",
}

// allowed refuses what a pattern does not need and a file could run away with:
// anchors, aliases, tags and great depth; and what a text may not hold, written with a backslash.
func (r *reader) allowed(n *yaml.Node, deep int) bool {
	if deep > mostDeep {
		f := r.fail(r.pos(n), "file/depth", "things are nested %d deep", deep)
		f.Want = fmt.Sprintf("at most %d", mostDeep)
		return false
	}
	ok := true
	switch {
	case n.Kind == yaml.AliasNode:
		f := r.fail(r.pos(n), "file/anchor", "%q repeats another part of the file, and a pattern can't do that", "*"+n.Value)
		f.Fix = "write it out; or put quotes around a text that begins with *"
		ok = false
	case n.Anchor != "":
		f := r.fail(r.pos(n), "file/anchor", "%q names a part of the file, and a pattern can't do that", "&"+n.Anchor)
		f.Fix = "take it out; or put quotes around a text that begins with &"
		ok = false
	case n.Style&yaml.TaggedStyle != 0:
		f := r.fail(r.pos(n), "file/tag", "%q gives a type, and a pattern can't do that", n.Tag)
		f.Fix = "take it out; or put quotes around a text that begins with !"
		ok = false
	}
	if i := strings.IndexFunc(n.Value, unseen); n.Kind == yaml.ScalarNode && i >= 0 {
		c, _ := utf8.DecodeRuneInString(n.Value[i:])
		r.fail(r.pos(n), "file/characters", "this text has a character in it that can't be seen (U+%04X)", c).Fix = "take it out"
		ok = false
	}
	for _, c := range n.Content {
		ok = r.allowed(c, deep+1) && ok
	}
	return ok
}

// isUTF16 reports whether a file begins with the mark of UTF-16, or as Latin letters do in it.
func isUTF16(src []byte) bool {
	return bytes.HasPrefix(src, []byte{0xff, 0xfe}) || bytes.HasPrefix(src, []byte{0xfe, 0xff}) ||
		len(src) >= 8 && bytes.Count(src[:8], []byte{0}) >= 3
}
