package finding

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestATextIsClippedToItsLength(t *testing.T) {
	for _, c := range []struct {
		text string
		most int
		want string
	}{{"abc", 3, "abc"}, {"abcd", 3, "ab…"}, {"", 3, ""}, {"äöü", 3, "äöü"}, {"äöüß", 3, "äö…"}, {"ab", 1, "…"}} {
		assert.Equal(t, c.want, ClipTo(c.text, c.most), c.text)
	}
	assert.Equal(t, strings.Repeat("x", 60), Clip(strings.Repeat("x", 60)))
	assert.Equal(t, strings.Repeat("x", 59)+"…", Clip(strings.Repeat("x", 61)))
}

// Optimal string alignment, with the distances of textbook pairs.
func TestDistances(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"a", "", 1}, {"", "ab", 2}, {"kitten", "sitting", 3}, {"ab", "ba", 1}, {"abc", "acb", 1}, {"ca", "abc", 3}, {"sleeve", "sleve", 1}, {"back", "neck", 2}, {"abcd", "badc", 2}} {
		assert.Equal(t, c.want, Distance(c.a, c.b), "%s, %s", c.a, c.b)
		assert.Equal(t, c.want, Distance(c.b, c.a), "%s, %s", c.b, c.a)
	}
	assert.Equal(t, 1000, Distance(strings.Repeat("a", 41), ""), "too far to be counted")
	assert.Equal(t, 40, Distance(strings.Repeat("a", 40), ""))
}

func TestTheNearestName(t *testing.T) {
	names := []string{"Back", "Right front", "Left sleeve", "cuff"}
	for text, want := range map[string]string{"bcak": "Back", "backs": "Back", "right-front": "Right front", "leftsleeve": "Left sleeve", "Collar": "", "c": "", "cufs": "cuff", "cuf": "cuff", "xxxx": "",
		strings.Repeat("b", 101): ""} {
		assert.Equal(t, want, Nearest(text, names), text)
	}
	assert.Empty(t, Nearest("back", nil))
}

func TestATerminalIsOnlyShownText(t *testing.T) {
	assert.Equal(t, "a·[2Jb· c·d·", Clean("a\x1b[2Jb\u202e\nc\ufeffd\u0085"))
	assert.Equal(t, "a b  c ", OneLine("a\nb\r\tc\u2028"))
	assert.Equal(t, "é ~ £", OneLine("é ~ £"))
}
