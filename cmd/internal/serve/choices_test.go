package serve

import (
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What the commands can do beside a plain drawing comes of the page's choices too.
func TestSizesAreComparedAlteredAndChartedFromTheLeft(t *testing.T) {
	s := running(t, Options{})
	c := let(t, s)
	text := c.start().Text
	_, body, _ := c.ask("/api/look", choices{Text: text, Labels: "nested"})
	l := decoded[lookAnswer](t, body)
	assert.Equal(t, "nested", l.Drawing)
	assert.Contains(t, strings.Join(l.Pages, ""), "one inside the other")

	plain := choices{Text: text, Size: "M"}
	_, right, _ := c.ask("/api/chart", plain)
	plain.LeftHanded = true
	_, left, _ := c.ask("/api/chart", plain)
	require.NotEmpty(t, decoded[chartAnswer](t, left).Pages)
	assert.NotEqual(t, decoded[chartAnswer](t, right).Pages, decoded[chartAnswer](t, left).Pages)

	ask := map[string]string{"text": text, "what": "altered", "size": "M", "sleeve": "4 cm"}
	code, body, h := c.ask("/api/download", ask)
	require.Equal(t, http.StatusOK, code, string(body))
	assert.Contains(t, h.Get("Content-Disposition"), "altered")
	ask["sleeve"] = "a hand"
	code, body, _ = c.ask("/api/download", ask)
	assert.Equal(t, http.StatusUnprocessableEntity, code)
	assert.NotContains(t, string(body), "cannot be read")
	assert.Contains(t, string(body), "a hand")
}

// What comes with a change of the form is what a question for it would give.
func TestAChangeOfTheFormBringsItsDrawing(t *testing.T) {
	s := running(t, Options{})
	c := let(t, s)
	text := c.start().Text
	_, body, _ := c.ask("/api/look", choices{Text: text, Size: "L", Labels: "one"})
	whole := decoded[lookAnswer](t, body)
	require.Positive(t, whole.Scale.Pieces)
	look := choices{Size: "L", Labels: "one", Glance: whole.Scale}
	code, body, _ := c.ask("/api/edit", editQuestion{Text: text, Act: "set", Path: "designer", Value: "Ada Quill", Look: &look})
	require.Equal(t, http.StatusOK, code, string(body))
	a := decoded[editAnswer](t, body)
	require.NotNil(t, a.Look)
	_, body, _ = c.ask("/api/look", choices{Text: a.Text, Size: "L", Labels: "one"})
	assert.Equal(t, decoded[lookAnswer](t, body).Pages, a.Look.Pages)
	assert.True(t, a.Look.Glance)

	code, body, _ = c.ask("/api/edit", editQuestion{Text: text, Act: "set", Path: "sizes", Value: "XS", Look: &look}) // its lists are too long now
	require.Equal(t, http.StatusOK, code, string(body))
	a = decoded[editAnswer](t, body)
	require.NotNil(t, a.Look)
	assert.False(t, a.Look.Readable)
	assert.NotEmpty(t, a.Look.Findings)
}
