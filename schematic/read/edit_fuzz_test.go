package read

import (
	"os"
	"path/filepath"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
)

// FuzzEdit holds that a form can be asked for any change of any text: it is made, and the text
// stays text, or it is refused with a reason.
func FuzzEdit(f *testing.F) {
	files, _ := filepath.Glob("../../examples/*.yaml")
	for _, name := range append(files, filepath.Join(testdata, "full.yaml")) {
		src, err := os.ReadFile(name)
		require.NoError(f, err)
		fields, groups := allFields(f, src)
		for i := 0; i < len(fields); i += 31 {
			f.Add(src, uint8(Set), fields[i].Path, "", "7 (8, 9)", -1)
		}
		for i := 0; i < len(groups); i += 29 {
			f.Add(src, uint8(Put), groups[i].Path, "note", "a: \"b\" # c", 0)
			f.Add(src, uint8(Take), groups[i].Path, "", "", 2)
			f.Add(src, uint8(Insert), groups[i].Path, "even", "", 1)
		}
	}
	f.Add([]byte("sizes: ["), uint8(0), "sizes/-1/99999999999999999999", "", "\x00\u202e", 99)
	f.Fuzz(func(t *testing.T, src []byte, act uint8, path, key, value string, cell int) {
		if len(src) > 16<<10 {
			return
		}
		Fields(src)
		out, err := Edit(src, Change{Act: Act(act % 4), Path: path, Key: key, Value: value, Cell: cell})
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		if utf8.Valid(src) && utf8.ValidString(value) {
			require.True(t, utf8.Valid(out))
		}
		Fields(out)
	})
}

// A file of one text has no keys, and asking for a change of it as a whole is refused; so is a key in
// braces that are empty.
func TestTheWholeFileIsNoValueToTakeOut(t *testing.T) {
	for _, src := range []string{"hello", "a: 1\n", "[a]", ""} {
		_, err := Edit([]byte(src), Change{Act: Set, Cell: -1})
		require.Error(t, err, src)
	}
	for src, path := range map[string]string{"{}": "", "a: {}\n": "a"} {
		_, err := Edit([]byte(src), Change{Act: Put, Path: path, Key: "note", Value: "x"})
		require.ErrorContains(t, err, "no key", src)
	}
}
