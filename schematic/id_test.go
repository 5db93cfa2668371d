package schematic

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAnIDIsANameInLowerCaseWithHyphens(t *testing.T) {
	for name, want := range map[string]string{
		"Back": "back", "Left front, upper": "left-front-upper", "  to the wrist ": "to-the-wrist", "Ärmel 2": "ärmel-2", "½ way": "way", "--": "x", "": "x",
		"İz": "iz", "a\xffb": "a-b", "neck": "neck",
	} {
		assert.Equal(t, want, ID(name), "%q", name)
	}
	assert.LessOrEqual(t, testing.AllocsPerRun(100, func() { ID("Left front, upper") }), 2.0)
}
