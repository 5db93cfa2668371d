package serve

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/render/compare"
)

// axe gives the script of axe-core, which testdata/browser takes from the npm
// registry, or skips the test where it has not been fetched.
func axe(t testing.TB) string {
	t.Helper()
	b, err := os.ReadFile(filepath.FromSlash("../../../testdata/browser/node_modules/axe-core/axe.min.js"))
	if err != nil {
		if compare.Required() {
			require.NoError(t, err, "run npm ci in testdata/browser")
		}
		t.Skip("axe-core is not there: run npm ci in testdata/browser")
	}
	return string(b)
}

// runAxe gives what breaks the rules: %s says which are asked. What is half scrolled below a heading that stays is no small
// target, unless it has the focus (WCAG 2.2, 2.4.11).
const runAxe = `axe.run(document, {runOnly: %s, resultTypes: ["violations"]})
	.then((r) => r.violations.flatMap((v) => v.nodes.filter((n) => !n.failureSummary.includes("obscured") || document.querySelector(n.target[0]) === document.activeElement).map((n) => v.id + ": " + n.target.join(" ") + " — " + n.failureSummary)))`

const (
	allRules    = `["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]`
	colourRules = `{type: "rule", values: ["color-contrast", "link-in-text-block"]}` // what night changes
)

// accessible holds the page as it is now to WCAG 2.2 AA, or to those of its rules that are asked, and keeps it for the checker.
func (p *tab) accessible(script, rules, what string) {
	p.t.Helper()
	if rules == allRules {
		p.pages = append(p.pages, "<!DOCTYPE html>\n<!-- "+what+" -->\n"+js[string](p, `document.documentElement.outerHTML`))
	}
	if !js[bool](p, "Boolean(window.axe)") {
		p.do(chromedp.Evaluate(script, nil))
	}
	assert.Empty(p.t, js[[]string](p, fmt.Sprintf(runAxe, rules)), what)
}

// wellMade holds the pages that were kept to the Nu Html Checker (W3C).
func (p *tab) wellMade() {
	p.t.Helper()
	jar := filepath.FromSlash("../../../testdata/browser/node_modules/vnu-jar/build/dist/vnu.jar")
	args := []string{"-jar", jar, "--stdout", "--exit-zero-always", "--format", "gnu"}
	dir := p.t.TempDir()
	for i, page := range p.pages {
		file := filepath.Join(dir, fmt.Sprintf("%d.html", i))
		require.NoError(p.t, os.WriteFile(file, []byte(page), 0o600))
		args = append(args, file)
	}
	require.NotEmpty(p.t, p.pages)
	for line := range strings.Lines(string(compare.Run(p.t, nil, "java", args...))) {
		name, said, _ := strings.Cut(line, ".html\":")
		i, err := strconv.Atoi(filepath.Base(name))
		require.NoError(p.t, err, line)
		_, what, _ := strings.Cut(p.pages[i], "<!-- ")
		what, _, _ = strings.Cut(what, " -->")
		assert.Fail(p.t, "the checker says", "%s: %s", what, said)
	}
}

// What a person comes upon beside the plain screens, each with how it comes about.
func TestEveryStateKeepsTheRulesOfAccess(t *testing.T) {
	script := axe(t)
	b := browserFor(t)
	raglan := copyOf(t, "windlass-raglan")
	p := visit(t, b, running(t, Options{File: raglan}), 1280, 900)
	p.until(`document.querySelector("#form .field")`)
	kept := func(name, text string) string {
		path := filepath.Join(t.TempDir(), name)
		require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
		return path
	}
	states := []struct {
		name string
		act  func()
		is   string
	}{
		{"a piece copied", func() { p.click(`#form [aria-label="copy: Back"]`) }, `document.querySelector('#form [aria-label="take out: Back 2"]')`},
		{"a piece mirrored", func() { p.click(`#form [aria-label="mirror: Back"]`) }, `document.querySelectorAll('#form details[data-path^="pieces/"]').length === 6`},
		{"a section added", func() { p.choose(`#form [aria-label^="Add a section after Back"]`, "even") }, `document.activeElement.matches("#form input")`},
		{"a name and a value asked for", func() {
			p.do(chromedp.Evaluate(`document.querySelector('#form details[data-path="gauges"]').open = true`, nil))
			p.until(`document.querySelector('#form [aria-label="Add to gauges"]')`)
			p.choose(`#form [aria-label="Add to gauges"]`, "a further one")
		}, `document.activeElement.closest(".more")`},
		{"a value chosen from a list", func() {
			p.do(chromedp.Evaluate(`document.querySelector('#form details[data-path="drawing"]').open = true`, nil))
			p.until(`document.querySelector('#form [aria-label="Add to the drawing"]')`)
			p.choose(`#form [aria-label="Add to the drawing"]`, "hide")
		}, `document.activeElement.closest(".more")`},
		{"a size added", func() {
			p.do(chromedp.Evaluate(`document.querySelector('#form details[data-path="about"]').open = true`, nil))
			p.until(`document.querySelector('#form [aria-label="Add a size after"]')`)
			p.choose(`#form [aria-label="Add a size after"]`, "M")
		}, `document.activeElement.closest(".more")`},
		{"a value refused", func() {
			p.do(chromedp.Evaluate(`document.querySelector('#form details[data-path="bodies"]').open = true`, nil))
			p.until(`document.querySelector("#form .cells input")`)
			p.fill("#form .cells input", "57-42")
		}, `document.querySelector("#form [aria-invalid]")`},
		{"sizes compared", func() {
			p.do(chromedp.Evaluate(fmt.Sprintf(`(() => { const t = document.querySelector("#text"); t.value = %q; t.dispatchEvent(new Event("input")); })()`, content(t, raglan)), nil))
			p.choose("#labels", "nested")
		}, `document.querySelector("#pages").shadowRoot.textContent.includes("one inside the other")`},
		{"left-handed", func() { p.click("#tab-chart"); p.click("#left-handed") }, `document.querySelector("#charts .chart, #chart-why:not(:empty)")`},
		{"measurements in inches", func() { p.click("#tab-table"); p.click("#units label:nth-child(2)") }, `document.querySelector("#table td")`},
		{"an own body", func() { p.click("#tab-alter"); p.fill("#alter-own-0", "98 cm") }, `document.querySelector("#alter-changes td")`},
		{"what can't be altered", func() { p.fill("#alter-own-0", "wide") }, `document.querySelector("#alter-why.wrong")`},
		{"rows pasted", func() {
			p.click("#tab-rows")
			p.do(chromedp.Focus("#rows", chromedp.ByQuery), chromedp.Evaluate(fmt.Sprintf(`document.execCommand("insertText", false, %q)`, penPot), nil))
		}, `document.querySelector("#rows-editor .mark.warning")`},
		{"a line told", func() { p.click("#rows-explain > summary") }, `document.querySelector("#rows-told li")`},
		{"a finding of the rows", func() { p.do(chromedp.KeyEvent(kb.F8)) }, `document.querySelector("#here").textContent`},
		{"everything unfolded", func() { p.click("#tab-form"); js[[]string](p, everyField) }, `document.querySelectorAll("#form details:not([open])").length === 0`},
		{"a conflict", func() {
			p.replace("pullover", "jumper")
			require.NoError(t, os.WriteFile(raglan, []byte(strings.Replace(content(t, raglan), "Windlass", "Capstan", 1)), 0o644))
		}, `document.querySelector('[data-name="conflict"]')`},
		{"a file that is not there", func() { require.NoError(t, os.Remove(raglan)) }, `document.querySelector('[data-name="missing"]')`},
		{"a file refused", func() {
			p.do(chromedp.SetUploadFiles("#from-disk", []string{kept("latin.yaml", "pattern: Bruy\xe8re\n")}, chromedp.ByQuery))
		}, `document.querySelector('[data-name="encoding"]')`},
		{"a file that can't be read", func() {
			p.do(chromedp.SetUploadFiles("#from-disk", []string{kept("broken.yaml", strings.Replace(typed, "units", "\tunits", 1))}, chromedp.ByQuery))
			p.until(`document.querySelector("#text").value.includes("\tunits")`) // the notice above the tabs is gone, and they no longer move
			p.click("#tab-form")
		}, `!document.querySelector("#form-broken").hidden`},
		{"the program gone", func() {
			p.do(chromedp.Evaluate(`new BroadcastChannel("flatwright-events").postMessage({ silent: true })`, nil))
		}, `document.querySelector('[data-name="gone"]')`},
		{"what there is to begin with", func() { p.click("#open") }, `document.querySelector("#open-dialog [data-of]")?.shadowRoot`},
		{"a name that is taken", func() {
			p.click(`#open-dialog [data-model="new-hat"]`)
			p.until(`document.querySelector("#title").textContent === "My Hat"`)
			require.NoError(t, os.WriteFile(filepath.Join(filepath.Dir(raglan), "my-hat.yaml"), nil, 0o644))
			p.click("#save")
			p.until(`document.querySelector("#name-dialog").open`)
			p.do(chromedp.KeyEvent(kb.Enter))
		}, `!document.querySelector("#name-over").hidden`},
	}
	for _, s := range states {
		s.act()
		p.until(s.is)
		for _, at := range []struct {
			width int64
			dark  bool
			rules string
		}{{1280, false, allRules}, {390, true, colourRules}} {
			p.do(chromedp.EmulateViewport(at.width, 900))
			p.dark(at.dark)
			p.shot(fmt.Sprintf("state-%s-%d-%t", strings.ReplaceAll(s.name, " ", "-"), at.width, at.dark))
			p.accessible(script, at.rules, fmt.Sprintf("%s, %d px", s.name, at.width))
		}
		p.do(chromedp.EmulateViewport(1280, 900))
	}
	p.wellMade()
}

// The largest form and what is altered are those of a cardigan, the other screens those of a hat, whose elements are a few.
func TestEveryScreenKeepsTheRulesOfAccess(t *testing.T) {
	script := axe(t)
	b := browserFor(t)
	p := visit(t, b, running(t, Options{File: copyOf(t, "saltmarsh-cardigan")}), 1280, 800)
	p.until(`document.querySelector("#form .cells")`)
	p.shot("day-form")
	p.accessible(script, allRules, "form")
	p.click("#tab-alter")
	p.fill("#alter-body", "3 cm")
	p.until(`document.querySelector("#alter-both .chart")`)
	p.shot("alter-day")
	p.accessible(script, allRules, "alter")
	p.dark(true)
	p.shot("alter-night")
	p.accessible(script, colourRules, "alter by night")

	p = visit(t, b, running(t, Options{File: copyOf(t, "pebble-hat")}), 1280, 800)
	p.until(`document.querySelector("#form .cells")`)
	screens := func(name, rules string) {
		p.click("#tab-form")
		p.until(`!document.querySelector("#panel-form").hidden`)
		p.shot(name + "-form")
		p.choose(`#form [aria-label="Add a piece after Hat"]`, "band")
		p.accessible(script, rules, name+" form")
		p.click("#tab-text")
		p.shot(name + "-text")
		p.accessible(script, rules, name+" text")
	}
	screens("day", allRules)
	p.dark(true)
	screens("night", colourRules)
	p.replace("sample: Baby", "sample: Boby")
	p.until(`document.querySelector("#findings li.error")`)
	screens("errors-night", colourRules)
	p.dark(false)
	p.shot("errors-text")
	p.accessible(script, allRules, "errors")
	p.do(chromedp.Click("#undo", chromedp.ByQuery))
	for _, id := range []string{"table", "chart", "keep"} {
		p.click("#tab-" + id)
		p.shot("day-" + id)
		p.accessible(script, allRules, id)
	}
	p.click("#open")
	p.shot("day-open")
	p.accessible(script, allRules, "open")
	p.click(`[data-model="new-scarf"]`)
	p.until(`document.querySelector("#file").textContent === "a new pattern"`)
	p.click("#save")
	p.until(`document.querySelector("#name-dialog").open`)
	p.shot("day-name")
	p.accessible(script, allRules, "name")
	p.wellMade()
}
