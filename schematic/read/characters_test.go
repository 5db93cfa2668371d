package read

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What a file may not hold it may not hold behind a backslash either: a title with an escape
// sequence would steer the terminal that prints it.
func TestCharactersThatCannotBeSeenAreRefusedHoweverTheyAreWritten(t *testing.T) {
	src := string(full(t))
	for _, c := range []string{`\x1b[2J`, `\0`, `\a`, `\x7f`, `\x9b`, `\N`, `\L`, `\P`, `\uFEFF`, `\uFFFE`, `\r`} {
		_, list := Pattern("f.yaml", []byte(strings.Replace(src, "note: A file", `note: "A `+c+` file"`+"\ncare: A file", 1)))
		require.True(t, list.Errors(), c)
		assert.Equal(t, "file/characters", list[0].Kind, c)
		assert.Equal(t, 6, list[0].Pos.Line, c)
	}
	for _, c := range []string{`\t`, `\n`, `\u202b`, `\xbd`, `\U0001F9F6`, `\_`} {
		_, list := Pattern("f.yaml", []byte(strings.Replace(src, "designer: A. Example", `designer: "A`+c+`Example"`, 1)))
		assert.Empty(t, list, c)
	}
}
