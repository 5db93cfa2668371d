package document_test

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/layout/document"
	"flatwright/layout/sheet"
)

func textsOn(sheets []*sheet.Sheet) []string {
	var out []string
	for _, s := range sheets {
		sheet.Walk(&s.Root, func(it sheet.Item) {
			if t, ok := it.(*sheet.Text); ok {
				out = append(out, t.S)
			}
		})
	}
	return out
}

var inWords = regexp.MustCompile(`^Size (\S+): (\d+) (?:stitch|row|stitches|rows) × (\S+) (?:cm|in) ÷ (\S+) = (\S+) (?:cm|in), not (\S+) (?:cm|in)\.$`)

// The answer's own sum is worked out anew here, and the sheet differs from the table in those cells alone.
func TestOneMeasurementIsWrongAndTheAnswerSaysWhichAndWhy(t *testing.T) {
	gs, c := worked(t, "../../examples/saltmarsh-cardigan.yaml")
	different := map[string]bool{}
	for seed := range uint64(12) {
		asked, err := document.FindTheMistake(gs, c, document.Options{}, seed, false)
		require.NoError(t, err)
		again, err := document.FindTheMistake(gs, c, document.Options{}, seed, false)
		require.NoError(t, err)
		assert.Equal(t, asked, again, "the same seed, the same sheet")
		answered, err := document.FindTheMistake(gs, c, document.Options{}, seed, true)
		require.NoError(t, err)
		told := 0
		for _, line := range textsOn(answered) {
			m := inWords.FindStringSubmatch(line)
			if m == nil {
				continue
			}
			told++
			var v [4]float64
			for i := range v {
				v[i], err = strconv.ParseFloat(m[i+2], 64)
				require.NoError(t, err, line)
			}
			said, err := strconv.ParseFloat(m[6], 64)
			require.NoError(t, err, line)
			assert.InDelta(t, v[0]*v[1]/v[2], v[3], 0.25+1e-9, "half a step: %s", line)
			assert.Greater(t, math.Abs(said-v[3]), 0.5, line)
			assert.Contains(t, textsOn(asked), m[6], "it is printed: %s", line)
		}
		assert.Positive(t, told)
		assert.Less(t, told, c.Sizes.Len(), "not in all sizes")
		assert.NotContains(t, strings.Join(textsOn(answered), "\n"), "Name\n", "answers ask for no name")
		assert.Contains(t, textsOn(asked), "Name")
		different[fmt.Sprint(textsOn(answered))] = true
		holds(t, "mistake", asked, document.Options{})
		holds(t, "mistake answers", answered, document.Options{})
	}
	assert.Greater(t, len(different), 6, "seeds make different sheets")
}
