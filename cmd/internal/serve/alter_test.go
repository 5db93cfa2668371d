package serve

import (
	"fmt"
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/examples"
)

// The page is told what the command writes: the numbers of a body that was asked for, out of the grading.
func TestAnAlterationIsToldAndDrawn(t *testing.T) {
	s := running(t, Options{})
	c := let(t, s)
	text := string(examples.Text("windlass-raglan"))
	_, body, _ := c.ask("/api/look", choices{Text: text, Size: "S", Labels: "one"})
	assert.Equal(t, []string{"bust", "upper arm", "armhole depth", "head"}, decoded[lookAnswer](t, body).Names["body"])

	_, body, _ = c.ask("/api/alter", choices{Text: text, Size: "S", Labels: "one", Own: map[string]string{"bust": "98 cm"}})
	a := decoded[alterAnswer](t, body)
	require.Empty(t, a.Why)
	require.Len(t, a.Both, 1)
	assert.Contains(t, a.Both[0], "as published")
	require.NotEmpty(t, a.Now)
	require.NotEmpty(t, a.Changes)
	assert.Equal(t, changed{"Back", "cast on", "86", "94", "sts"}, a.Changes[0])
	require.Len(t, a.Told, 1)
	assert.Contains(t, a.Told[0].Message, "follow your bust, which lies between M and L")

	for _, q := range []choices{{Own: map[string]string{"bust": "a lot"}}, {Own: map[string]string{"wing": "40 cm"}}, {Parts: map[string]string{"Sleeve": "Q"}}, {Gauge: "often"}, {Body: "-3 m"}} {
		q.Text, q.Size = text, "S"
		_, body, _ = c.ask("/api/alter", q)
		a = decoded[alterAnswer](t, body)
		assert.NotEmpty(t, a.Why, "%+v", q)
		assert.NotContains(t, a.Why, "cannot be read")
		assert.Empty(t, a.Both)
	}
	_, body, _ = c.ask("/api/alter", choices{Text: "version: 2", Size: "S", Body: "1 cm"})
	assert.Contains(t, decoded[alterAnswer](t, body).Why, "cannot be read")
}

// An alteration of a pattern with an error is told to be of one, on the page and beside the download.
func TestAnAlteredPatternTellsItsOwnErrors(t *testing.T) {
	s := running(t, Options{File: copyOf(t, "windlass-raglan")})
	c := let(t, s)
	text := strings.Replace(c.start().Text, "joins:", "joins:\n  - sew: Sleeve elbow\n    to: Back raglan", 1)
	q := choices{Text: text, Size: "S", Body: "2 cm"}
	_, body, _ := c.ask("/api/alter", q)
	a := decoded[alterAnswer](t, body)
	require.Empty(t, a.Why)
	told := fmt.Sprint(a.Told)
	assert.Contains(t, told, `there is no edge called "Sleeve elbow"`)
	code, _, head := c.ask("/api/download", struct {
		choices
		What string `json:"what"`
	}{q, "altered"})
	require.Equal(t, http.StatusOK, code)
	assert.Equal(t, "1", head.Get(errorsHeader))
}

// A person types what is to be otherwise, key by key, and sees both.
func TestAnAlterationIsSeenAsItIsTyped(t *testing.T) {
	s := running(t, Options{File: copyOf(t, "windlass-raglan")})
	h := &hand{tab: visit(t, browserFor(t), s, 1280, 900), pace: 100 * time.Millisecond}
	h.click("#tab-alter")
	h.until(`document.querySelector("#alter-own-0")`)
	before := h.text()
	for _, one := range []struct{ field, text, seen string }{
		{"#alter-own-0", "98 cm", "follow your bust"},
		{"#alter-own-1", "30 cm", "Sleeve"},
		{"#alter-body", "4 cm", "length"},
		{"#alter-sleeve", "-3 cm", "sleeve length"},
		{"#alter-gauge", "20 sts and 26 rows over 10 cm", "bind off"},
	} {
		h.do(chromedp.Evaluate(fmt.Sprintf(`document.querySelector(%q).focus()`, one.field), nil))
		h.keys(one.text)
		assert.Equal(t, one.text, js[string](h.tab, `document.activeElement.value`), one.field)
		h.until(`document.querySelector("#alter-why").textContent === ""`)
		h.until(fmt.Sprintf(`document.querySelector("#altered").textContent.includes(%q)`, one.seen))
		h.until(`document.querySelector("#alter-both .chart").shadowRoot.querySelector("svg") && document.querySelector("#alter-now .chart").shadowRoot.querySelector("svg")`)
		assert.Empty(t, js[string](h.tab, `document.querySelector("#alter-why").textContent`), one.field)
	}
	h.until(`!/cast on\s*86\s*94/.test(document.querySelector("#alter-changes tbody").textContent)`) // 94 at the pattern's own gauge
	h.do(chromedp.Evaluate(`document.querySelector("#alter-parts").closest("details").open = true`, nil))
	h.choose(`#alter-parts label:nth-of-type(3) select`, "L")
	h.until(`document.querySelector("#alter-why").textContent || document.querySelector("#altered").textContent.includes("Sleeve")`)
	shown := js[string](h.tab, `document.querySelector("#alter-both .chart").shadowRoot.innerHTML`)
	h.do(chromedp.Evaluate(`(() => { const e = document.querySelector("#alter-own-0"); e.focus(); e.select(); })()`, nil))
	h.keys("wide")
	h.until(`document.querySelector("#alter-why.wrong")?.textContent.includes("not a body measurement")`)
	assert.Contains(t, shown, "as published", "what was drawn stays")
	h.click("#alter-clear")
	h.until(`document.querySelector("#altered").hidden && document.querySelector("#alter-why").textContent === "Nothing is altered yet."`)
	assert.Equal(t, before, h.text())
	assert.False(t, strings.Contains(js[string](h.tab, `document.querySelector("#alter-why").className`), "wrong"))
}
