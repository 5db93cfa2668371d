package serve

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
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

// runAxe gives what breaks the rules: %s says which are asked.
const runAxe = `axe.run(document, {runOnly: %s, resultTypes: ["violations"]})
	.then((r) => r.violations.flatMap((v) => v.nodes.map((n) => v.id + ": " + n.target.join(" ") + " — " + n.failureSummary)))`

const (
	allRules    = `["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]`
	colourRules = `{type: "rule", values: ["color-contrast", "link-in-text-block"]}` // what night changes
)

// accessible holds the page as it is now to WCAG 2.2 AA, or to those of its rules that are asked.
func (p *tab) accessible(script, rules, what string) {
	p.t.Helper()
	if !js[bool](p, "Boolean(window.axe)") {
		p.do(chromedp.Evaluate(script, nil))
	}
	assert.Empty(p.t, js[[]string](p, fmt.Sprintf(runAxe, rules)), what)
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
}
