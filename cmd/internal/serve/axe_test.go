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

const runAxe = `axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]})
	.then((r) => r.violations.flatMap((v) => v.nodes.map((n) => v.id + ": " + n.target.join(" ") + " — " + n.failureSummary)))`

// accessible holds the page as it is now to WCAG 2.2 AA.
func (p *tab) accessible(script, what string) {
	p.t.Helper()
	p.do(chromedp.Evaluate(script, nil))
	assert.Empty(p.t, js[[]string](p, runAxe), what)
}

func TestEveryScreenKeepsTheRulesOfAccess(t *testing.T) {
	script := axe(t)
	s := running(t, Options{File: copyOf(t, "saltmarsh-cardigan")})
	p := visit(t, browserFor(t), s, 1280, 800)
	p.until(`document.querySelector("#form .cells")`)
	screens := func(name string) {
		p.click("#tab-form")
		p.until(`!document.querySelector("#panel-form").hidden`)
		p.shot(name + "-form")
		p.choose(`#form [aria-label="Add a piece after Body"]`, "band")
		p.accessible(script, name+" form")
		p.click("#tab-text")
		p.shot(name + "-text")
		p.accessible(script, name+" text")
	}
	screens("day")
	p.dark(true)
	screens("night")
	p.dark(false)

	p.replace("stitches: 62 (68", "stitches: 63 (68")
	p.replace("sample: M", "sample: Q")
	p.until(`document.querySelector("#findings li.error")`)
	p.dark(true)
	screens("errors-night")
	p.dark(false)
	p.shot("errors-text")
	p.do(chromedp.Click("#undo", chromedp.ByQuery), chromedp.Click("#undo", chromedp.ByQuery))
	for _, id := range []string{"table", "chart", "keep"} {
		p.click("#tab-" + id)
		p.shot("day-" + id)
		p.accessible(script, id)
	}
	p.click("#tab-alter")
	p.fill("#alter-body", "3 cm")
	p.until(`document.querySelector("#alter-both .chart")`)
	for _, dark := range []bool{false, true} {
		p.dark(dark)
		p.shot(fmt.Sprintf("alter-%t", dark))
		p.accessible(script, "alter")
	}
	p.dark(false)
	p.click("#open")
	p.shot("day-open")
	p.accessible(script, "open")
	p.click(`[data-model="new-hat"]`)
	p.until(`document.querySelector("#file").textContent === "a new pattern"`)
	p.click("#save")
	p.until(`document.querySelector("#name-dialog").open`)
	p.shot("day-name")
	p.accessible(script, "name")
}
