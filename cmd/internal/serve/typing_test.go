package serve

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// typed is one of each kind of field that the form has.
const typed = `version: 1
pattern: Gorse Slipover
terms: UK
units: cm
sizes: XS (S, M, L)
bodies:
  bust: 76 (86, 97, 107)
gauges:
  fabric: 20 sts and 28 rows over 10 cm in stocking stitch
  rib: 22 sts and 30 rows over 10 cm in knit 2, purl 2 rib
yarn:
  - text: Merino, mid grey
    amount: 5 (6, 6, 7)
notes:
  - Wash by hand.
pieces:
  - piece: Back
    gauge: rib
    sections:
      - cast on: 86 (96, 108, 118)
      - even: 12 rows
        rib: yes
      - even: 30 (31, 32, 33) cm
        gauge: fabric
      - divide:
          - part: Left shoulder
            stitches: 30 (34, 38, 42)
            sections:
              - bind off: all
                edge: shoulder
          - bind off: 26 (28, 32, 34)
          - part: Right shoulder
            stitches: 30 (34, 38, 42)
            mirror of: Left shoulder
finished:
  width at hem: 39 (43.5, 49, 53.5)
`

// everyField unfolds the form and gives the labels of all inputs of values in it.
const everyField = `(async () => {
	for (let seen = -1; seen !== document.querySelectorAll("#form details").length;) {
		seen = document.querySelectorAll("#form details").length;
		for (const d of document.querySelectorAll("#form details:not([open])")) d.open = true;
		await new Promise((r) => setTimeout(r, 100));
	}
	return [...document.querySelectorAll("#form .field input")].map((i) => i.getAttribute("aria-label"));
})()`

// slowly types a text key by key at the pace of a hand, and gives what the field held, and
// whether it had the focus and its caret at the end, after each key.
func (p *tab) slowly(text string, pace time.Duration) (lost []string) {
	p.t.Helper()
	so := ""
	for _, r := range text {
		p.do(chromedp.KeyEvent(string(r)))
		so += string(r)
		time.Sleep(pace)
		now := js[string](p, `(() => { const e = document.activeElement;
			return e.isConnected && e.tagName === "INPUT" ? e === window.typedIn ? e.value.slice(0, e.selectionStart) + "|" + e.value.slice(e.selectionEnd) : "another element" : e.tagName; })()`)
		if now != so+"|" {
			lost = append(lost, fmt.Sprintf("%q became %q", so+"|", now))
		}
	}
	return lost
}

// Each field is emptied by its first key and typed anew, as a person does; half-typed
// values have fewer sizes, brackets that are open, names that nothing calls.
func TestWhatIsTypedKeyByKeyStaysInEveryField(t *testing.T) {
	path := filepath.Join(t.TempDir(), "typed.yaml")
	require.NoError(t, os.WriteFile(path, []byte(typed), 0o644))
	s := running(t, Options{File: path})
	p := visit(t, browserFor(t), s, 1280, 900)
	p.until(`document.querySelector("#form .cells")`)
	labels := js[[]string](p, everyField)
	require.Greater(t, len(labels), 40)
	for _, label := range labels {
		at := fmt.Sprintf(`#form .field input[aria-label=%q]`, label)
		p.until(fmt.Sprintf(`document.querySelector(%q)`, at))
		value := js[string](p, fmt.Sprintf(`(() => { const e = window.typedIn = document.querySelector(%q); e.focus(); e.select(); return e.value; })()`, at))
		lost := p.slowly(value, 90*time.Millisecond)
		assert.Empty(t, lost, label)
		p.do(chromedp.KeyEvent(kb.Tab))
	}
	p.until(fmt.Sprintf(`document.querySelector("#text").value === %q`, typed))
}

// A field shows what the text holds after an undo, with the focus in it or not.
func TestUndoIsSeenInTheFieldThatWasTypedIn(t *testing.T) {
	path := filepath.Join(t.TempDir(), "typed.yaml")
	require.NoError(t, os.WriteFile(path, []byte(typed), 0o644))
	s := running(t, Options{File: path})
	p := visit(t, browserFor(t), s, 1280, 900)
	cell := `#form [aria-label="Back, even, even"]`
	p.until(fmt.Sprintf(`document.querySelector('%s')`, cell))
	p.do(chromedp.Evaluate(fmt.Sprintf(`(() => { const e = window.typedIn = document.querySelector('%s'); e.focus(); e.select(); })()`, cell), nil))
	assert.Empty(t, p.slowly("14 rows", 100*time.Millisecond))
	p.until(`document.querySelector("#text").value.includes("- even: 14 rows")`)
	for js[bool](p, `!document.querySelector("#undo").disabled`) {
		p.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(2)))
	}
	assert.Equal(t, typed, p.text())
	p.until(fmt.Sprintf(`document.querySelector('%s').value === "12 rows"`, cell))
	assert.True(t, js[bool](p, `document.activeElement === window.typedIn`))
	p.do(chromedp.KeyEvent("y", chromedp.KeyModifiers(2)))
	p.until(`document.activeElement.value !== "12 rows"`)
}

// A click counts on what was pressed, and the form is made anew after it: what unfolds stays unfolded.
func TestAClickCountsWhileTheFormIsMadeAnew(t *testing.T) {
	path := filepath.Join(t.TempDir(), "typed.yaml")
	require.NoError(t, os.WriteFile(path, []byte(typed), 0o644))
	s := running(t, Options{File: path})
	p := visit(t, browserFor(t), s, 1280, 900)
	const about = `#form details[data-path="about"]`
	p.until(`document.querySelector('` + about + `')`)
	p.do(chromedp.Evaluate(`window.pressed = document.querySelector('`+about+`'); document.querySelector('#form [aria-label="copy: Back"]').click()`, nil))
	p.until(`window.pressed !== document.querySelector('` + about + `')`) // the form of two pieces
	at := js[[]float64](p, `(() => { window.pressed = document.querySelector('`+about+`'); pressed.scrollIntoView({ block: "center" }); const r = pressed.firstElementChild.getBoundingClientRect(); return [r.x + 20, r.y + r.height / 2]; })()`)
	mouse := func(kind input.MouseType) chromedp.Action {
		return input.DispatchMouseEvent(kind, at[0], at[1]).WithButton(input.Left).WithClickCount(1)
	}
	p.do(mouse(input.MousePressed), chromedp.Evaluate(`document.querySelector("#undo").click()`, nil))
	p.until(`!document.querySelector("#text").value.includes("Back 2")`)
	time.Sleep(700 * time.Millisecond) // time enough for the form of one piece
	require.True(t, js[bool](p, `pressed.isConnected`), "it is not taken away from under the finger")
	p.do(mouse(input.MouseReleased))
	p.until(`!document.querySelector('#form [aria-label="take out: Back 2"]') && !pressed.isConnected`)
	assert.True(t, js[bool](p, `document.querySelector('`+about+`').open`))
	// and a click whose event comes after the form was made anew
	p.do(chromedp.Evaluate(`window.pressed = document.querySelector('`+about+`'); pressed.firstElementChild.click(); document.querySelector("#redo").click()`, nil))
	p.until(`!pressed.isConnected`)
	assert.False(t, js[bool](p, `document.querySelector('`+about+`').open`))
}

// What is asked for beside a list of what can be added stays while drawings come and go.
func TestWhatIsTypedForANewEntryStays(t *testing.T) {
	path := filepath.Join(t.TempDir(), "typed.yaml")
	require.NoError(t, os.WriteFile(path, []byte(typed), 0o644))
	s := running(t, Options{File: path})
	p := visit(t, browserFor(t), s, 1280, 900)
	p.until(`document.querySelector("#form .cells")`)
	p.click(`#form details[data-path="gauges"] > summary`)
	p.until(`document.querySelector('#form [aria-label="Add to gauges"]')`)
	p.choose(`#form [aria-label="Add to gauges"]`, "a further one")
	p.until(`document.activeElement.closest(".more")`)
	p.do(chromedp.Evaluate(`window.typedIn = document.activeElement`, nil))
	assert.Empty(t, p.slowly("cable", 100*time.Millisecond))
	p.do(chromedp.Evaluate(`(() => { const t = document.querySelector("#text"); t.value = t.value.replace("  - Wash by hand.", "  - Wash by hand.\n  - Dry flat."); t.dispatchEvent(new Event("input")); })()`, nil))
	time.Sleep(300 * time.Millisecond)
	assert.Equal(t, "cable", js[string](p, `window.typedIn.value`))
	p.do(chromedp.KeyEvent(kb.Tab), chromedp.Evaluate(`window.typedIn = document.activeElement`, nil))
	assert.Empty(t, p.slowly("24 sts and 30 rows over 10 cm", 80*time.Millisecond))
	p.do(chromedp.KeyEvent(kb.Enter))
	p.until(`document.querySelector("#text").value.includes("  cable: 24 sts and 30 rows over 10 cm\n")`)
}

// A person who chooses what to add types on and does not look whether its field is there.
func TestWhatIsTypedAtOnceStandsInTheNewField(t *testing.T) {
	path := filepath.Join(t.TempDir(), "typed.yaml")
	require.NoError(t, os.WriteFile(path, []byte(typed), 0o644))
	s := running(t, Options{File: path})
	h := &hand{tab: visit(t, browserFor(t), s, 1280, 900), pace: 80 * time.Millisecond}
	h.pick("Add a piece after Back", "piece")
	h.keys("Right sleeve")
	h.has("- piece: Right sleeve\n")
	h.press(`#form [aria-label="mirror: Right sleeve"]`)
	h.keys("Left sleeve")
	h.has("- piece: Left sleeve\n    mirror of: Right sleeve")
	h.press(`#form details[data-path="drawing"] > summary`)
	h.pick("Add to the drawing", "hide")
	h.keys("cross back")
	h.do(chromedp.KeyEvent(kb.Enter))
	h.has("drawing:\n  hide: cross back\n")
	h.until(`document.activeElement.getAttribute("aria-label") === "the drawing, hide"`)
	h.pick("Add to the colours of the drawing", "measure")
	h.keys("#26323f")
	h.do(chromedp.KeyEvent(kb.Enter))
	h.has("  colours:\n    measure: \"#26323f\"")
}
