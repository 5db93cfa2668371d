package serve

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/long"
)

const plain = `version: 1
pattern: Plain Back
terms: UK
units: cm
sizes: S (M, L)
gauges:
  fabric: 20 sts and 20 rows over 10 cm in dc
pieces:
  - piece: Back
    sections:
      - cast on: 80 (88, 96)
      # the body of it
      - even: 40 rows
      - bind off: all
`

// A designer who never opens the text begins with a rib, divides the back at the neck,
// adds a sleeve, a gauge and a join: all in the form, and the file keeps its comment.
func TestAGarmentIsMadeInTheFormAlone(t *testing.T) {
	path := filepath.Join(t.TempDir(), "plain.yaml")
	require.NoError(t, os.WriteFile(path, []byte(plain), 0o644))
	s := running(t, Options{File: path})
	p := visit(t, browserFor(t), s, 1280, 900)
	pick := func(label, value string) {
		t.Helper()
		at := fmt.Sprintf(`#form select[aria-label=%q]`, label)
		p.until(fmt.Sprintf("document.querySelector(%q)", at))
		p.choose(at, value)
	}
	has := func(text string) {
		t.Helper()
		p.until(fmt.Sprintf(`document.querySelector("#text").value.includes(%q)`, text))
	}
	focused := func(label string) {
		t.Helper()
		p.until(fmt.Sprintf(`document.activeElement.getAttribute("aria-label") === %q`, label))
	}
	shown := func(label string) {
		t.Helper()
		p.until(fmt.Sprintf(`document.querySelector(%q)`, fmt.Sprintf(`#form [aria-label=%q]`, label)))
	}
	pick("Begin Back otherwise than with cast on", "sideways")
	has("- sideways: rib\n        stitches: 8\n        rows: 80 (88, 96)\n      - pick up: 1 in each row\n      # the body of it")
	pick("Add a section after Back, even", "divide")
	has("- part: First part\n            stitches: 40 (44, 48)\n")
	focused("Back, divide, part First part, part")
	pick("Add an entry after Back, divide, part First part", "bind off")
	has("- bind off: 1\n          - part: Second part")
	focused("Back, divide, bind off, bind off")
	p.fill(`#form [aria-label="Back, divide, bind off, bind off"]`, "2")
	has("- bind off: 2\n")
	pick("Add a section after Back, divide, part Second part, even", "shape")
	has("              - shape:\n                  - decrease: 1\n                    at: left edge\n")
	pick("Add a section after Back, divide", "join parts")
	has("- join parts:\n          - First part\n          - Second part\n")
	shown("take out: Back, join parts")
	pick("Add a piece after Back", "band")
	p.until(`document.activeElement.closest(".more")`)
	p.do(chromedp.KeyEvent("Back side"), chromedp.KeyEvent(kb.Enter))
	has("  - piece: New band\n    kind: band\n    onto:\n      - Back side, 1 in every 1 rows\n")
	shown("take out: New band")
	p.click(`#form details[data-path="gauges"] > summary`)
	pick("Add to gauges", "a further one")
	p.until(`document.activeElement.closest(".more")`)
	p.do(chromedp.KeyEvent("rib"), chromedp.KeyEvent(kb.Tab), chromedp.KeyEvent("22 sts and 30 rows over 10 cm"), chromedp.KeyEvent(kb.Enter))
	has("  rib: 22 sts and 30 rows over 10 cm\n")
	shown("gauges, rib")
	p.click(`#form details[data-path="about"] > summary`)
	pick("Add to the pattern", "joins")
	p.do(chromedp.KeyEvent("Back side"), chromedp.KeyEvent(kb.Enter))
	has("joins:\n  - sew: Back side\n    to: New band side\n")
	p.shot("form-made")
	assert.Contains(t, p.text(), "      # the body of it\n")

	p.click(`#form [aria-label="take out: Back, divide, bind off"]`) // leads back to the part before it
	p.until(`!document.querySelector("#text").value.includes("- bind off: 2")`)
	focused("Back, divide, part First part, part")
	for range 30 {
		p.do(chromedp.Evaluate(`document.querySelector("#undo").click()`, nil))
	}
	p.until(`document.querySelector("#undo").disabled`)
	assert.Equal(t, plain, p.text(), "all of it can be undone")
}

// Ten things taken out one after the other, whatever they are, are back after ten undos, and out again after ten redos.
func TestTenThingsTakenOutComeBackByTenUndos(t *testing.T) {
	r := rand.New(rand.NewPCG(long.Seed(t), 3))
	path := filepath.Join(t.TempDir(), "full.yaml")
	text, err := os.ReadFile("../../../testdata/read/full.yaml")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, text, 0o644))
	p := unfolded(t, browserFor(t), path)
	for taken := 0; taken < 10; {
		js[[]string](p, everyField)
		before := p.text()
		labels := js[[]string](p, `[...document.querySelectorAll('#form [aria-label^="take out"]')].map((e) => e.getAttribute("aria-label"))`)
		label := labels[r.IntN(len(labels))]
		p.do(chromedp.Evaluate(fmt.Sprintf(`document.querySelectorAll("#form [role=alert]").forEach((e) => { e.textContent = ""; }); window.pressed = [...document.querySelectorAll("#form button")].find((e) => e.getAttribute("aria-label") === %q); if (%t) pressed.focus(); pressed.click()`, label, r.IntN(2) == 0), nil)) // not every browser gives a button the focus
		p.until(fmt.Sprintf(`document.querySelector("#text").value !== %q || [...document.querySelectorAll("#form [role=alert]")].some((e) => e.textContent)`, before))
		if p.text() == before {
			t.Logf("%s: %s", label, js[string](p, `[...document.querySelectorAll("#form [role=alert]")].map((e) => e.textContent).join("")`))
			continue
		}
		taken++
		p.until(`!pressed.isConnected && document.activeElement !== document.body`) // the form is made anew behind the text, and something in it has the focus
	}
	after := p.text()
	keys := func(key string) {
		for range 10 {
			p.do(chromedp.KeyEvent(key, chromedp.KeyModifiers(2)))
			time.Sleep(100 * time.Millisecond)
		}
	}
	keys("z")
	p.until(fmt.Sprintf(`document.querySelector("#text").value === %q`, text))
	assert.True(t, js[bool](p, `document.querySelector("#undo").disabled`))
	keys("y")
	p.until(fmt.Sprintf(`document.querySelector("#text").value === %q`, after))
	keys("z")
	p.until(fmt.Sprintf(`document.querySelector("#text").value === %q`, text))
	js[[]string](p, everyField)
	p.until(`(window.unlike = null, ` + shows + `.then((u) => { window.unlike = u; }), true)`)
	p.until(`window.unlike?.length === 0`)
}
