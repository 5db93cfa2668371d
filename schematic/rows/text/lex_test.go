package text

import (
	"testing"

	"github.com/stretchr/testify/assert"

	ins "flatwright/schematic/rows/instructions"
)

// A dash stands for a size wherever it is in the line, the first one too; a dash before brackets that
// are no line of numbers stays one.
func TestALineOfNumbersMayBeginWithADash(t *testing.T) {
	for text, want := range map[string][]int{
		"– (3, 4)":     {ins.None, 3, 4},
		"- (3) (4)":    {ins.None, 3, 4},
		"– (–, 4)":     {ins.None, ins.None, 4},
		"– (3, 4, 5)":  nil,
		"– (3)":        nil,
		"– (1 dc)":     nil,
		"– (3.5, 4.5)": nil,
	} {
		l := lexer{line: text, r: []rune(text), sizes: 3}
		got, _ := l.afterDash(0)
		assert.Equal(t, want, got, text)
	}
}
