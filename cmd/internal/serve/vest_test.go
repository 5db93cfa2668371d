package serve

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/read"
)

// hand does what a person does, key by key, and counts: a click, a choice and a field that is typed
// are one each. It has a mouse, or keys alone.
type hand struct {
	*tab
	acts  int
	pace  time.Duration
	keyed bool
}

func (h *hand) press(selector string) {
	h.t.Helper()
	h.acts++
	h.until(fmt.Sprintf("document.querySelector(%q)", selector))
	if !h.keyed {
		h.click(selector)
		return
	}
	h.do(chromedp.Focus(selector, chromedp.ByQuery), chromedp.KeyEvent(kb.Enter))
}

func (h *hand) pick(label, value string) {
	h.t.Helper()
	h.acts++
	at := fmt.Sprintf("#form select[aria-label=%q]", label)
	h.until(fmt.Sprintf("document.querySelector(%q)", at))
	if !h.keyed {
		h.choose(at, value)
		return
	}
	n := js[int](h.tab, fmt.Sprintf(`(() => { const s = document.querySelector(%q); s.focus(); return [...s.options].findIndex((o) => o.value === %q); })()`, at, value))
	require.Positive(h.t, n, "%s offers no %s", label, value)
	for range n {
		h.do(chromedp.KeyEvent(kb.ArrowDown))
		time.Sleep(h.pace / 4)
	}
	h.do(chromedp.KeyEvent(kb.Enter))
}

func (h *hand) keys(text string) {
	h.t.Helper()
	for _, r := range text {
		h.do(chromedp.KeyEvent(string(r)))
		time.Sleep(h.pace)
	}
}

// write types into a field, over what is in it.
func (h *hand) write(label, text string) {
	h.t.Helper()
	h.acts++
	at := fmt.Sprintf("#form .field input[aria-label=%q]", label)
	h.until(fmt.Sprintf("document.querySelector(%q)", at))
	h.do(chromedp.Evaluate(fmt.Sprintf(`(() => { const e = document.querySelector(%q); for (let d = e.closest("details"); d; d = d.parentElement.closest("details")) d.open = true; e.focus(); e.select(); })()`, at), nil))
	h.keys(text)
	assert.Equal(h.t, text, js[string](h.tab, `document.activeElement.value`), label)
	h.do(chromedp.KeyEvent(kb.Tab))
}

func (h *hand) has(text string) {
	h.t.Helper()
	defer func() {
		if h.t.Failed() {
			h.t.Log("the text is:\n" + js[string](h.tab, `document.querySelector('#text').value + "\n-- focus on " + document.activeElement.outerHTML.slice(0, 300)`))
		}
	}()
	h.until(fmt.Sprintf("document.querySelector('#text').value.includes(%q)", text))
}

// From nothing to a vest with a shaped neck in four sizes, by the form alone.
func TestAVestIsMadeFromNothingInTheForm(t *testing.T) {
	b := browserFor(t)
	for _, keyed := range []bool{false, true} {
		t.Run(map[bool]string{false: "mouse", true: "keys alone"}[keyed], func(t *testing.T) { makeVest(t, b, keyed) })
	}
}

func makeVest(t *testing.T, b context.Context, keyed bool) {
	dir := t.TempDir()
	s := running(t, Options{Folder: dir})
	h := &hand{tab: visit(t, b, s, 1280, 900), pace: 100 * time.Millisecond, keyed: keyed}
	h.press("#open")
	h.press(`[data-model="new-empty"]`)
	h.until(`document.querySelector("#title").textContent === "New pattern"`)
	h.press(`#form details[data-path="about"] > summary`)
	h.write("pattern", "Gorse Slipover")
	h.write("sizes", "S (M, L, XL)")
	h.has("sizes: S (M, L, XL)")
	h.write("Back, cast on, cast on", "88 (98, 108, 118)")
	h.write("Back, even, even", "84 rows")
	h.pick("Add a section after Back, even", "bind off")
	h.has("- bind off: 1")
	h.until(`document.activeElement.value === "1"`)
	h.acts++
	h.keys("6 (7, 8, 9)") // over what the new field began with
	h.has("- bind off: 6 (7, 8, 9)\n        at: both edges")
	h.pick("Add a section after Back, bind off", "even")
	h.has("- even: 10 rows")
	h.until(`document.activeElement.getAttribute("aria-label") === "Back, even 2, even" && document.activeElement.value === "10 rows"`) // the focus is in the new field
	h.acts++
	h.keys("52 (54, 56, 58) rows")
	h.has("- even: 52 (54, 56, 58) rows")
	h.pick("Add a section after Back, even 2", "shaped neck")
	h.has("part: First side")
	h.until(`document.querySelector('#form [aria-label="take out: Back, divide"]')`)
	h.until(`!/^ {6}- bind off: all/m.test(document.querySelector("#text").value)`) // the neck's shoulders take its place
	h.press(`#form [aria-label="copy: Back"]`)
	h.has("piece: Back 2")
	h.until(`document.querySelector('#form [aria-label="take out: Back 2"]')`)
	h.write("Back 2, piece", "Front")
	h.has("piece: Front")
	h.acts++
	cell := `#form .field input[aria-label="Front, even 2, even, S"]`
	h.until(fmt.Sprintf("document.querySelector('%s')", cell))
	h.do(chromedp.Evaluate(fmt.Sprintf("(() => { const e = document.querySelector('%s'); e.focus(); e.select(); })()", cell), nil))
	h.keys("38")
	h.has("- even: 38 (54, 56, 58) rows")
	h.pick("Add to the pattern", "joins")
	for _, name := range []string{"Back shoulder", "Front shoulder", "Back left side", "Back First side"} { // what there is to sew is offered where it is asked for
		h.until(fmt.Sprintf(`[...document.activeElement.list.options].some((o) => o.value === %q)`, name))
	}
	h.keys("Back shoulder")
	h.do(chromedp.KeyEvent(kb.Enter))
	h.acts++
	h.has("- sew: Back shoulder")
	h.shot("vest")
	h.press("#save")
	h.acts++
	h.do(chromedp.KeyEvent(kb.Enter))
	h.until(`document.querySelector("#saved").textContent === "saved"`)
	t.Logf("%d actions", h.acts)
	assert.LessOrEqual(t, h.acts, 25)
	text := content(t, filepath.Join(dir, "gorse-slipover.yaml"))
	p, found := read.Pattern("gorse-slipover.yaml", []byte(text))
	require.NotNil(t, p, "%v\n%s", found, text)
	assert.Equal(t, 4, p.Sizes.Len())
	assert.Len(t, p.Pieces, 2)
	assert.Equal(t, 4, strings.Count(text, "- part: "), "both pieces have a neck in two parts")
	assert.False(t, found.Errors(), "%v\n%s", found, text)
	for _, f := range found {
		assert.NotEqual(t, "words/left-right", f.Kind, "what the form began is not held against her")
	}
}
