package serve

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
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

// shows gives the fields of the form that show other than the file has, but for the one that has the focus.
const shows = `(async () => {
	const a = await (await fetch("/api/form", { method: "POST", headers: { "Flatwright-Key": localStorage.getItem("flatwright-key"), "Content-Type": "application/json" },
		body: JSON.stringify({ text: document.querySelector("#text").value }) })).json();
	const fields = new Map();
	const walk = (g) => { for (const f of g.fields ?? []) fields.set(f.path, f); (g.groups ?? []).forEach(walk); };
	walk(a.form);
	return [...document.querySelectorAll("#form [data-field]")].flatMap((e) => [...e.querySelectorAll("input, select")]
		.filter((i) => i.read && i !== document.activeElement && (!fields.has(e.dataset.field) || i.value !== i.read(fields.get(e.dataset.field)))).map((i) => i.getAttribute("aria-label")));
})()`

// Of the fields of a pattern that has every key, every fifth is typed in the middle, from one on that is another at each run.
func TestKeysInTheMiddleOfAFieldStayWhereTheCaretIs(t *testing.T) {
	text, err := os.ReadFile("../../../testdata/read/full.yaml")
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "full.yaml")
	require.NoError(t, os.WriteFile(path, text, 0o644))
	p := visit(t, browserFor(t), running(t, Options{File: path}), 1280, 900)
	p.until(`document.querySelector("#form .cells")`)
	labels := js[[]string](p, everyField)
	require.Greater(t, len(labels), 200)
	for i := rand.IntN(5); i < len(labels); i += 5 {
		label, err := json.Marshal(labels[i])
		require.NoError(t, err)
		at := fmt.Sprintf(`[...document.querySelectorAll("#form .field input")].find((e) => e.getAttribute("aria-label") === %s)`, label)
		p.until(at)
		value := js[string](p, fmt.Sprintf(`(() => { const e = window.typedIn = %s; e.focus(); const m = e.value.length >> 1; e.setSelectionRange(m, m); return e.value; })()`, at))
		half := []rune(value)
		before, after := string(half[:len(half)/2]), string(half[len(half)/2:])
		for _, typed := range []struct{ key, is string }{{"1", "1"}, {"2", "12"}, {kb.Backspace, "1"}, {kb.Backspace, ""}} {
			p.do(chromedp.KeyEvent(typed.key))
			time.Sleep(80 * time.Millisecond)
			assert.Equal(t, before+typed.is+"|"+after, js[string](p, `(() => { const e = document.activeElement; return e === window.typedIn ? e.value.slice(0, e.selectionStart) + "|" + e.value.slice(e.selectionEnd) : e.outerHTML; })()`), labels[i])
		}
		p.do(chromedp.KeyEvent(kb.Tab))
		assert.False(t, js[bool](p, `document.activeElement === document.body`), "%s: the focus is on the page", labels[i])
	}
	p.until(fmt.Sprintf(`document.querySelector("#text").value === %q`, text))
	p.until(`(window.unlike = null, ` + shows + `.then((u) => { window.unlike = u; }), true)`)
	p.until(`window.unlike?.length === 0`)
}

// An undo is of what was typed before it, though the change is still under way.
func TestAnUndoWaitsForTheKeysBeforeIt(t *testing.T) {
	path := filepath.Join(t.TempDir(), "typed.yaml")
	require.NoError(t, os.WriteFile(path, []byte(typed), 0o644))
	p := visit(t, browserFor(t), running(t, Options{File: path}), 1280, 900)
	cell := `document.querySelector('#form [aria-label="Back, even, even"]')`
	p.until(cell)
	p.do(chromedp.Evaluate(`(() => { const ask = window.fetch; window.edits = 0;
		window.fetch = async (path, o) => { const a = await ask(path, o); if (path === "/api/edit") { await new Promise((go) => setTimeout(go, 400)); edits++; } return a; };
		const e = `+cell+`; e.focus(); e.setSelectionRange(0, 2); })()`, nil),
		chromedp.KeyEvent("3"), chromedp.KeyEvent("z", chromedp.KeyModifiers(2)))
	p.until(`edits > 0`)
	p.until(cell + `.value === "12 rows"`)
	time.Sleep(300 * time.Millisecond)
	assert.Equal(t, typed, p.text())
	assert.Equal(t, "12 rows", js[string](p, cell+`.value`))
	p.do(chromedp.KeyEvent("y", chromedp.KeyModifiers(2)))
	p.until(cell + `.value === "3 rows"`)

	// what could not be taken is taken back alone
	cell = `document.querySelector('#form [aria-label="Back, cast on, cast on, XS"]')`
	p.do(chromedp.Evaluate(`(() => { const e = `+cell+`; e.focus(); e.select(); })()`, nil), chromedp.KeyEvent("8"))
	p.until(`document.querySelector("#text").value.includes("cast on: 8 (")`)
	p.do(chromedp.KeyEvent(" 6"))
	p.until(cell + `.hasAttribute("aria-invalid")`)
	p.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(2)))
	p.until(cell + `.value === "8"`)
	assert.Contains(t, p.text(), "cast on: 8 (")
}

// A slow hand and a slow machine make no more steps than there are words; a word that is taken away again is a step of its own.
func TestAnUndoTakesBackWholeWordsHoweverSlowlyTheyCome(t *testing.T) {
	path := filepath.Join(t.TempDir(), "typed.yaml")
	require.NoError(t, os.WriteFile(path, []byte(typed), 0o644))
	h := &hand{tab: visit(t, browserFor(t), running(t, Options{File: path}), 1280, 900)}
	back := func() { h.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(input.ModifierCtrl))) }
	shows := func(value string) {
		t.Helper()
		h.until(fmt.Sprintf(`document.activeElement.value === %q && document.querySelector("#text").value.includes("- even: %[1]s\n")`, value))
	}
	const cell = "Back, even, even"
	again := func(text string, pace time.Duration) {
		h.pace = pace
		h.do(chromedp.Evaluate(`(() => { const e = document.querySelector('#form [aria-label="`+cell+`"]'); e.blur(); e.focus(); e.select(); })()`, nil))
		h.keys(text)
		shows(text)
	}
	again("142 rows", 750*time.Millisecond) // longer than a hand rests
	back()
	shows("142")
	back()
	shows("12 rows")
	h.do(chromedp.Evaluate(`(() => { const ask = window.fetch; window.fetch = async (path, o) => { const a = await ask(path, o); if (path === "/api/edit") await new Promise((go) => setTimeout(go, 800)); return a; }; })()`, nil))
	again("16 rows", 100*time.Millisecond)
	back()
	shows("12 rows")
	again("18 rows", 100*time.Millisecond)
	again("20 rows", 100*time.Millisecond) // left, and come back to
	back()
	shows("18 rows")
	back()
	shows("12 rows")

	h.click("#tab-text")
	at := strings.Index(typed, "Slipover")
	h.do(chromedp.Evaluate(fmt.Sprintf(`(() => { const t = document.querySelector("#text"); t.focus(); t.setSelectionRange(%d, %[1]d); })()`, at), nil))
	h.pace = 750 * time.Millisecond
	h.keys("Low ")
	time.Sleep(h.pace)
	h.keys(kb.Backspace + kb.Backspace)
	h.has("Gorse LoSlipover")
	for _, want := range []string{"Gorse Low Slipover", "Gorse Slipover"} {
		back()
		h.has(want)
	}
	assert.Equal(t, typed, h.text())
}

// A half-typed number is shown in another way than a whole one: the field that is left shows what was typed all the same.
func TestAFieldThatIsLeftShowsWhatWasTypedAndNotHalfOfIt(t *testing.T) {
	path := filepath.Join(t.TempDir(), "full.yaml")
	text, err := os.ReadFile("../../../testdata/read/full.yaml")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, text, 0o644))
	p := visit(t, browserFor(t), running(t, Options{File: path}), 1280, 900)
	p.until(`document.querySelector("#form .cells")`)
	js[[]string](p, everyField)
	cell := `document.querySelector('#form [aria-label="Lap, joining"]')`
	p.do(chromedp.Evaluate(`(() => { const ask = window.fetch; window.seen = new Set();
		window.fetch = async (path, o) => { const a = await ask(path, o); if (path === "/api/edit") await new Promise((go) => setTimeout(go, 300)); return a; };
		const e = `+cell+`; e.focus(); e.select(); })()`, nil), chromedp.KeyEvent("0"), chromedp.KeyEvent("."))
	p.until(`document.querySelector("#text").value.includes("joining: 0.\n")`)
	p.until(cell + `.closest(".field").kept`)
	p.do(chromedp.KeyEvent("8"), chromedp.Evaluate(`setInterval(() => seen.add(`+cell+`.value), 5)`, nil), chromedp.KeyEvent(kb.Tab))
	p.until(`document.querySelector("#text").value.includes("joining: 0.8\n")`)
	p.until(`!` + cell + `.closest(".field").kept`)
	time.Sleep(500 * time.Millisecond)
	assert.Equal(t, []string{"0.8"}, js[[]string](p, `[...seen]`))
}

// A new pattern that has no file yet is there again when the page is, and a sample is called as its size is.
func TestANewPatternIsThereWhenThePageIsLoadedAgain(t *testing.T) {
	h := &hand{tab: visit(t, browserFor(t), running(t, Options{Folder: t.TempDir()}), 1280, 900), pace: 80 * time.Millisecond}
	h.press("#open")
	h.press(`[data-model="new-shawl"]`)
	h.until(`document.querySelector("#title").textContent === "My Shawl"`)
	h.press(`#form details[data-path="about"] > summary`)
	h.write("sizes", "One (Two, Three)")
	h.has("sample: Two ")
	h.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(2)))
	h.until(`!document.querySelector("#text").value.includes("sample: Two ")`) // names and sample are taken back together
	assert.NotContains(t, h.text(), "Three)", "the names are typed in one go, and taken back so")
	h.do(chromedp.KeyEvent("y", chromedp.KeyModifiers(2)))
	h.has("sample: Two ")
	h.write("pattern", "Gorse Shawl")
	h.has("pattern: Gorse Shawl\n")
	text := h.text()
	h.do(chromedp.Reload(), chromedp.WaitReady("body[data-ready]", chromedp.ByQuery))
	h.until(`document.querySelector("#title").textContent === "Gorse Shawl"`)
	assert.Equal(t, text, h.text())
	assert.Equal(t, "a new pattern", js[string](h.tab, `document.querySelector("#file").textContent`))
}

// The focus goes from the names of the sizes into the list of them: it offers the new ones.
func TestASizeIsAddedBehindOneThatWasJustRenamed(t *testing.T) {
	path := filepath.Join(t.TempDir(), "typed.yaml")
	require.NoError(t, os.WriteFile(path, []byte(typed), 0o644))
	h := &hand{tab: visit(t, browserFor(t), running(t, Options{File: path}), 1280, 900), pace: 90 * time.Millisecond}
	h.press(`#form details[data-path="about"] > summary`)
	h.write("sizes", "XS (S, M, XL)")
	h.until(`[...document.activeElement.options].at(-1).value === "XL"`)
	for range 4 {
		h.do(chromedp.KeyEvent(kb.ArrowDown))
	}
	h.do(chromedp.KeyEvent(kb.Enter))
	h.until(`document.activeElement.tagName === "INPUT"`)
	h.keys("2X")
	h.do(chromedp.KeyEvent(kb.Enter))
	h.has("sizes: XS (S, M, XL, 2X)")
	h.has("cast on: 86 (96, 108, 118, 118)")
	h.until(`document.activeElement.getAttribute("aria-label") === "Add a size after" && !document.querySelector("#form .more .field")`) // nothing is asked any more
}

// Numbers in a mapping by size are those of the size that has another name now.
func TestNumbersBySizeFollowTheNamesOfTheSizes(t *testing.T) {
	path := filepath.Join(t.TempDir(), "named.yaml")
	named := strings.Replace(typed, "5 (6, 6, 7)", "{XS: 5, S: 6, M: 6, L: 7}", 1)
	require.NoError(t, os.WriteFile(path, []byte(named), 0o644))
	h := &hand{tab: visit(t, browserFor(t), running(t, Options{File: path}), 1280, 900), pace: 90 * time.Millisecond}
	h.press(`#form details[data-path="about"] > summary`)
	h.write("sizes", "1 (2, 3, 4)")
	h.has("amount: {1: 5, 2: 6, 3: 6, 4: 7}")
	h.until(`document.querySelectorAll("#findings .error").length === 0`)
	h.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(2)))
	h.until(fmt.Sprintf("document.querySelector('#text').value === %q", named))
}

// What asks for a name and a value is typed with Enter between them: neither is lost, and neither is asked for in silence.
func TestEnterGoesFromANameToItsValue(t *testing.T) {
	path := filepath.Join(t.TempDir(), "typed.yaml")
	require.NoError(t, os.WriteFile(path, []byte(typed), 0o644))
	h := &hand{tab: visit(t, browserFor(t), running(t, Options{File: path}), 1280, 900), pace: 90 * time.Millisecond}
	h.press(`#form details[data-path="gauges"] > summary`)
	h.pick("Add to gauges", "a further one")
	h.until(`document.activeElement.tagName === "INPUT"`)
	h.keys("lace")
	h.do(chromedp.KeyEvent(kb.Enter))
	h.until(`document.activeElement.tagName === "INPUT" && document.activeElement.value === ""`)
	h.keys("18 sts and 24 rows over 10 cm in lace")
	h.do(chromedp.KeyEvent(kb.Enter))
	h.has("  lace: 18 sts and 24 rows over 10 cm in lace\n")
}
