package read

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Numbers within phrases and lists, each with the largest that format.md and the message allow, and one more. The line is counted
// in testdata/read/full.yaml, and nothing else may be told.
func TestNumbersAtTheirBounds(t *testing.T) {
	src, err := os.ReadFile("../../testdata/read/full.yaml")
	require.NoError(t, err)
	full := string(src)
	told := func(old, now string) (at int, list []string) {
		require.Equal(t, 1, strings.Count(full, old), old)
		text := strings.Replace(full, old, now, 1)
		at = strings.Count(text[:strings.Index(text, now)], "\n") + 1
		_, all := Pattern("full.yaml", []byte(text))
		for _, f := range all {
			if f.Kind == "file/bounds" {
				list = append(list, fmt.Sprintf("%d: %s | %s", f.Pos.Line, f.Message, f.Want))
			}
		}
		return at, list
	}
	for _, c := range []struct {
		old, now string // %d is the number
		least    int64
		most     int64
	}{
		{"how: 3 sts to 4 rows", "how: %d sts to 4 rows", 1, 1000},
		{"how: 3 sts to 4 rows", "how: 3 sts to %d rows", 1, 1000},
		{"how: 3 sts to 4 rows", "how: in %d places", 1, 1000},
		{"- pick up: 2 in every 3 rows", "- pick up: %d in every 3 rows", 1, 1000},
		{"- pick up: 2 in every 3 rows", "- pick up: 2 in every %d rows", 1, 1000},
		{"Body right front neck, 3 in every 4 rows", "Body right front neck, %d in every 4 rows", 1, 1000},
		{"Body right front neck, 3 in every 4 rows", "Body right front neck, 3 in every %d rows", 1, 1000},
		{"repeat row: 2 in 1, 1 in each of 2", "repeat row: 2 in 1, 1 in each of %d", 1, 1000},
		{"repeat row: 2 in 1, 1 in each of 2", "repeat row: %d in 1, 1 in each of 2", 1, 1000},
		{"repeat row: 2 in 1, 1 in each of 2", "repeat row: skip %d, 1 in each of 2", 1, 1000},
		{"repeat row: 2 in 1, 1 in each of 2", "repeat row: 2 in %d, 1 in each of 2", 1, 1},
		{"1 in each short row, 2 in each tall row, 1 at each end", "%d in each short row, 2 in each tall row, 1 at each end", 0, 100},
		{"1 in each short row, 2 in each tall row, 1 at each end", "1 in each short row, %d in each tall row, 1 at each end", 0, 100},
		{"1 in each short row, 2 in each tall row, 1 at each end", "1 in each short row, 2 in each tall row, %d at each end", 0, 100},
	} {
		for _, n := range []int64{c.least, c.most} {
			_, list := told(c.old, fmt.Sprintf(c.now, n))
			assert.Empty(t, list, c.now, n)
		}
		for _, n := range []int64{c.least - 1, c.most + 1} {
			if n < 0 {
				continue
			}
			at, list := told(c.old, fmt.Sprintf(c.now, n))
			assert.Equal(t, []string{fmt.Sprintf("%d: %d can't stand here | a whole number from %d to %d", at, n, c.least, c.most)}, list, c.now)
		}
	}
}

// mostEffort is 400,000. By hand: a join costs 12 in each size and a finished measurement 40; a piece 30 and 5 a section, and what it
// is held against the pieces before it a fifth of their number's square.
func TestTheWorkOfAPatternIsBounded(t *testing.T) {
	text := func(sizes, finished int) string {
		var b strings.Builder
		b.WriteString("version: 1\npattern: P\nterms: US\nunits: cm\nsizes: ")
		for i := range sizes {
			if i > 0 {
				b.WriteString(", ")
			}
			fmt.Fprintf(&b, "A%d", i)
		}
		b.WriteString("\ngauges:\n  fabric: 14 sts and 10 rows over 10 cm in hdc\npieces:\n  - piece: Body\n    sections:\n      - cast on: 10\n      - even: 2\nfinished:\n")
		for i := range finished {
			fmt.Fprintf(&b, "  m%d: {is: 10 cm, of: Body width}\n", i)
		}
		return b.String()
	}
	effort := func(sizes, finished int) (list []string) {
		_, all := Pattern("p.yaml", []byte(text(sizes, finished)))
		for _, f := range all {
			if f.Kind == "file/bounds" {
				list = append(list, f.Message)
			}
		}
		return list
	}
	// 50 sizes x 40 = 2,000 a measurement: 200 of them are the 400,000, and leave nothing for the piece
	assert.Equal(t, []string{"too large to work out: the first 1 of 1 pieces, each in 50 sizes, reach the limit"}, effort(50, 200))
	assert.Equal(t, []string{"too large to work out: 0 joins and 201 finished measurements, each in 50 sizes"}, effort(50, 201))
	assert.Empty(t, effort(50, 190))
}
