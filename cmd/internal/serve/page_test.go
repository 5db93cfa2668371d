package serve

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// replace types a change into the text as a person would: it selects what is old,
// and types what is new.
func (p *tab) replace(old, new string) {
	p.t.Helper()
	p.click("#tab-text")
	require.True(p.t, js[bool](p, fmt.Sprintf(`(() => { const t = document.querySelector("#text"), at = t.value.indexOf(%q);
		t.focus(); t.setSelectionRange(at, at + %d); return at >= 0; })()`, old, len(old))), "%q is not in the text", old)
	p.do(chromedp.KeyEvent(new))
}

// text is the pattern on the page.
func (p *tab) text() string { return js[string](p, `document.querySelector("#text").value`) }

// drawing is all the text of the drawing.
func (p *tab) drawing() string {
	return js[string](p, `document.querySelector("#pages").shadowRoot.querySelector(".sheets").textContent`)
}

func (p *tab) settled(act func()) {
	p.t.Helper()
	before := js[string](p, `document.querySelector("#pages").dataset.drawn`)
	act()
	p.until(fmt.Sprintf(`document.querySelector("#pages").dataset.drawn !== %q`, before))
	time.Sleep(60 * time.Millisecond)
}

func TestTypingBreakingAndMending(t *testing.T) {
	s := running(t, Options{File: copyOf(t, "saltmarsh-cardigan")})
	p := visit(t, browserFor(t), s, 1280, 800)
	assert.Contains(t, p.drawing(), "Saltmarsh Cardigan")
	p.settled(func() { p.replace("Saltmarsh Cardigan\ndesigner", "Tidemark Cardigan\ndesigner") })
	p.until(`document.querySelector("#title").textContent === "Tidemark Cardigan"`)
	assert.Contains(t, p.drawing(), "Tidemark Cardigan")
	assert.Equal(t, "not saved", js[string](p, `document.querySelector("#saved").textContent`))

	p.replace("to: 18 (20, 22, 25)", "to: 18 (21, 22, 25)") // a number that does not agree
	p.until(`document.querySelector("#findings li.warning, #findings li.error")`)
	line := js[string](p, `document.querySelector("#findings .where").textContent`)
	assert.Contains(t, line, "line ")
	assert.NotEmpty(t, js[string](p, `document.querySelector("#lines .mark").textContent`), "the words are marked")

	p.replace("units: cm", "units: ells") // one that can't be read
	p.until(`!document.querySelector("#stale").hidden`)
	assert.Contains(t, p.drawing(), "Tidemark", "the drawing from before stays")
	p.replace("units: ells", "units: [") // not even well-formed
	p.until(`document.querySelector("#findings li.error")`)
	p.click("#tab-form")
	p.until(`!document.querySelector("#form-broken").hidden`)
	p.shot("broken-form")

	p.click(`#findings .finding`) // leads to its place in the text
	p.until(`document.activeElement.id === "text"`)
	p.shot("broken-text")
	p.replace("units: [", "units: cm")
	p.replace("to: 18 (21, 22, 25)", "to: 18 (20, 22, 25)")
	p.until(`document.querySelector(".findings").classList.contains("none")`)
	assert.True(t, js[bool](p, `document.querySelector("#stale").hidden`))
}

func TestFindingsLeadToTheFieldOfTheForm(t *testing.T) {
	s := running(t, Options{File: copyOf(t, "saltmarsh-cardigan")})
	p := visit(t, browserFor(t), s, 1280, 800)
	p.replace("to: 60 (64, 68, 72)", "to: 60 (64, 69, 72)")
	p.until(`document.querySelector("#findings li")`)
	p.click("#tab-form")
	p.until(`document.querySelector("#form .marked") || document.querySelectorAll("#form details").length`)
	p.click("#findings .finding")
	p.until(`document.activeElement.closest(".field.marked")`)
	assert.Contains(t, js[string](p, `document.activeElement.getAttribute("aria-label")`), "Sleeve", "the piece was unfolded")
	p.shot("finding-in-form")
}

func TestSizeUnitAndLabelsAreFollowedByDrawingTableAndForm(t *testing.T) {
	s := running(t, Options{File: copyOf(t, "saltmarsh-cardigan")})
	p := visit(t, browserFor(t), s, 1280, 800)
	for _, size := range []string{"XS", "5X"} {
		p.settled(func() { p.click(fmt.Sprintf(`#sizes input[value="%s"]`, size)) })
		assert.Contains(t, p.drawing(), "Size "+size)
	}
	p.until(`document.querySelector("#form .cell-of.chosen")`)
	assert.Equal(t, "5X", js[string](p, `document.querySelector("#form .cell-of.chosen").dataset.size`))
	p.click("#tab-table")
	assert.Equal(t, "5X", js[string](p, `document.querySelector("thead .chosen").textContent`))
	assert.Equal(t, 2, js[int](p, `document.querySelector("tbody td").children.length`))
	p.settled(func() { p.click(`#units input[value="in"]`) })
	assert.Equal(t, 1, js[int](p, `document.querySelector("tbody td").children.length`))
	assert.NotContains(t, p.drawing(), " cm /")
	p.settled(func() { p.choose("#labels", "blank") })
	assert.Contains(t, strings.ToLower(p.drawing()), "saltmarsh")
}

func TestTheChartFollowsTheSize(t *testing.T) {
	s := running(t, Options{File: copyOf(t, "pebble-hat")})
	p := visit(t, browserFor(t), s, 1280, 800)
	p.click("#tab-chart")
	const text = `document.querySelector("#charts .chart").shadowRoot.textContent`
	p.until(`document.querySelector("#charts .chart")`)
	first := js[string](p, text)
	assert.Contains(t, first, "Pebble Hat")
	p.shot("chart")
	p.click(`#sizes input[value="Youth"]`)
	p.until(fmt.Sprintf("%s !== %q", text, first))
}

func TestTheFormChangesTheFileAndKeepsItsComments(t *testing.T) {
	path := copyOf(t, "saltmarsh-cardigan")
	before := content(t, path)
	s := running(t, Options{File: path})
	p := visit(t, browserFor(t), s, 1280, 800)
	cell := `#form [aria-label="Body, sideways (hem rib), rows, M"]`
	p.until(fmt.Sprintf("document.querySelector('%s')", cell))
	p.fill(cell, "170")
	p.until(`document.querySelector("#findings li")`) // the pick-up does not agree any more
	p.shot("form-warning")
	p.do(chromedp.Focus(cell, chromedp.ByQuery), chromedp.SendKeys(cell, kb.ArrowUp, chromedp.ByQuery))
	p.until(`document.querySelector("#text").value.includes("(148, 171, 180)")`)
	p.do(chromedp.KeyEvent("s", chromedp.KeyModifiers(2)))
	p.until(`document.querySelector("#saved").textContent === "saved"`)
	want := strings.Replace(before, "rows: 132 (148, 164, 180)", "rows: 132 (148, 171, 180)", 1)
	assert.Equal(t, want, content(t, path), "nothing else has changed")

	add := `#form [aria-label="Add a section after Body, even"]`
	p.choose(add, "fold")
	p.until(`document.querySelector("#text").value.includes("- fold:")`)
	p.until(`document.querySelector('#form [aria-label="take out: Body, fold"]')`)
	p.click(`#form [aria-label="take out: Body, fold"]`)
	p.until(`!document.querySelector("#text").value.includes("- fold:")`)
	assert.Equal(t, want, p.text())
	for range 4 { // keys that come slowly are steps of their own
		p.do(chromedp.Evaluate(`document.querySelector("#undo").click()`, nil))
	}
	p.until(`document.querySelector("#text").value.includes("(148, 164, 180)")`)
	assert.Equal(t, before, p.text())
	p.until(fmt.Sprintf(`document.querySelector('%s').value === "164"`, cell))
}

func TestDownloadsArriveAsFiles(t *testing.T) {
	s := running(t, Options{File: copyOf(t, "pebble-hat")})
	p := visit(t, browserFor(t), s, 1280, 800)
	dir := t.TempDir()
	p.do(browser.SetDownloadBehavior(browser.SetDownloadBehaviorBehaviorAllow).WithDownloadPath(dir), chromedp.Click("#tab-keep", chromedp.ByQuery))
	for _, what := range []string{"drawing-pdf", "page", "table-csv"} {
		p.click(`[data-what="` + what + `"]`)
		p.until(`document.querySelector('[data-what="` + what + `"]').parentElement.querySelector(".said").textContent.includes("downloaded")`)
	}
	assert.Eventually(t, func() bool {
		entries, err := os.ReadDir(dir)
		return err == nil && len(entries) == 3 && !slices.ContainsFunc(entries, func(e os.DirEntry) bool { return strings.HasSuffix(e.Name(), ".crdownload") })
	}, 10*time.Second, 50*time.Millisecond)
	all, err := filepath.Glob(filepath.Join(dir, "*.pdf"))
	require.NoError(t, err)
	require.Len(t, all, 1)
	assert.True(t, strings.HasPrefix(content(t, all[0]), "%PDF"))
}

func TestEverythingCanBeDoneByKeyboard(t *testing.T) {
	path := copyOf(t, "pebble-hat")
	s := running(t, Options{File: path})
	p := visit(t, browserFor(t), s, 1280, 800)
	seen := map[string]bool{}
	var order []string
	for range 400 {
		p.do(chromedp.KeyEvent(kb.Tab))
		id := js[string](p, `(() => { const e = document.activeElement; if (e === document.body) return "";
			if (!e.matches(":focus-visible") && e.type !== "radio") return "unseen " + e.outerHTML.slice(0, 80);
			return e.id || e.name || e.getAttribute("aria-label") || e.textContent.trim().slice(0, 30); })()`)
		if id == "" {
			break
		}
		assert.NotContains(t, id, "unseen", "the focus is seen")
		if !seen[id] {
			order = append(order, id)
		}
		seen[id] = true
	}
	for _, id := range []string{"open", "save", "tab-form", "size", "units", "labels", "tab-drawing", "zoom-in", "panel-drawing"} {
		assert.True(t, seen[id], "the Tab key never comes to %s: %v", id, order)
	}
	p.do(chromedp.Focus("#tab-form", chromedp.ByQuery), chromedp.KeyEvent(kb.ArrowRight))
	assert.False(t, js[bool](p, `document.querySelector("#panel-text").hidden`), "arrows go from tab to tab")
	p.do(chromedp.KeyEvent(kb.Tab))
	assert.Equal(t, "text", js[string](p, `document.activeElement.id`))
	p.do(chromedp.KeyEvent(kb.End, chromedp.KeyModifiers(2)), chromedp.KeyEvent("# by hand"))
	p.until(`document.querySelector("#saved").textContent === "not saved"`)
	p.do(chromedp.KeyEvent("s", chromedp.KeyModifiers(2)))
	p.until(`document.querySelector("#saved").textContent === "saved"`)
	assert.True(t, strings.HasSuffix(content(t, path), "# by hand"))
	p.do(chromedp.KeyEvent(kb.Tab))
	assert.NotEqual(t, "text", js[string](p, `document.activeElement.id`), "the text is no trap")
	p.replace("sample: Baby", "sample: Boby")
	p.until(`document.querySelector("#findings li.error")?.textContent.includes("Boby")`)
	p.do(chromedp.Focus("#save", chromedp.ByQuery), chromedp.KeyEvent(kb.F8))
	assert.Equal(t, "Boby", js[string](p, `(() => { const t = document.activeElement; return t.value.slice(t.selectionStart, t.selectionEnd); })()`))
	assert.Contains(t, js[string](p, `document.querySelector("#here").textContent`), "Boby")
}

// Keys walk through a list of what can be added, and change nothing until Enter or the
// button beside it says so (WCAG 2.2, 3.2.2).
func TestASectionIsAddedByKeyboard(t *testing.T) {
	s := running(t, Options{File: copyOf(t, "pebble-hat")})
	p := visit(t, browserFor(t), s, 1280, 800)
	add := `#form [aria-label="Add a section after Hat, even"]`
	p.until(fmt.Sprintf("document.querySelector('%s')", add))
	before := p.text()
	sections := js[int](p, `document.querySelectorAll('#form [aria-label^="take out: Hat, "]').length`)
	p.do(chromedp.Focus(add, chromedp.ByQuery), chromedp.KeyEvent(kb.ArrowDown), chromedp.KeyEvent(kb.ArrowDown), chromedp.KeyEvent(kb.ArrowDown))
	p.until(fmt.Sprintf(`document.querySelector('%s').value === "increase"`, add))
	time.Sleep(100 * time.Millisecond)
	assert.Equal(t, before, p.text(), "nothing is added yet")
	p.do(chromedp.KeyEvent(kb.ArrowUp), chromedp.KeyEvent(kb.Enter))
	p.until(`document.querySelector("#text").value.includes("- decrease: 1\n        at: both edges")`)
	p.until(`document.activeElement.getAttribute("aria-label") === "Hat, decrease, decrease"`)
	p.click("#undo")
	p.until(fmt.Sprintf(`document.querySelectorAll('#form [aria-label^="take out: Hat, "]').length === %d`, sections)) // the form is that of before
	p.do(chromedp.Focus(add, chromedp.ByQuery), chromedp.KeyEvent("fo"), chromedp.KeyEvent(kb.Tab))
	assert.Equal(t, "Add a section after Hat, even: fold", js[string](p, `document.activeElement.getAttribute("aria-label")`))
	p.do(chromedp.KeyEvent(kb.Enter))
	p.until(`document.querySelector("#text").value.includes("- fold:")`)
}

func TestNarrowAndZoomedNothingIsCutOff(t *testing.T) {
	script := axe(t)
	s := running(t, Options{File: copyOf(t, "saltmarsh-cardigan")})
	b := browserFor(t)
	for _, c := range []struct {
		name string
		w, h int64
	}{{"narrow", 360, 740}, {"zoomed", 640, 400}, {"reflow", 320, 256}} { // 200 % of 1280 x 800; 400 % (WCAG 1.4.10)
		p := visit(t, b, s, c.w, c.h)
		fits := func(what string) {
			t.Helper()
			assert.LessOrEqual(t, js[int](p, `document.documentElement.scrollWidth`), int(c.w), "%s %s", c.name, what)
			p.shot(c.name + "-" + what)
			if c.name == "narrow" && what != "text" && what != "open" {
				p.accessible(script, allRules, c.name+" "+what)
			}
		}
		p.until(`document.querySelector("#form .cells")`)
		fits("form")
		p.choose(`#form [aria-label="Add a piece after Body"]`, "band")
		p.choose(`#form [aria-label="Add to Body"]`, "kind")
		fits("added")
		p.click("#tab-text")
		fits("text")
		p.click("#tab-rows")
		p.click("#rows-printed")
		p.until(`document.querySelector("#rows").value.includes("Row 1")`)
		fits("rows")
		p.do(chromedp.Evaluate(`scrollTo({ top: 300, behavior: "instant" })`, nil))
		at := js[[]float64](p, `[scrollY, (document.querySelector("#show-drawing").click(), scrollY), (document.querySelector("#show-pattern").click(), scrollY)]`)
		assert.Zero(t, at[1], "what is shown is seen from its top")
		assert.Equal(t, at[0], at[2], "and what was left from where it was")
		p.click("#show-drawing")
		fits("drawing")
		p.click("#tab-table")
		fits("table")
		p.click("#tab-chart")
		p.until(`document.querySelector("#charts .chart, #chart-why:not(:empty)")`)
		fits("chart")
		p.click("#tab-alter")
		p.fill("#alter-sleeve", "-3 cm")
		p.until(`document.querySelector("#alter-both .chart")`)
		fits("alter")
		p.click("#tab-keep")
		fits("keep")
		p.click("#open")
		fits("open")
	}
}

func TestABrowserThatIsKilledLosesNothing(t *testing.T) {
	browserFor(t)
	path := copyOf(t, "pebble-hat")
	s := running(t, Options{File: path})
	dir := t.TempDir()
	b, _, kill, err := launch(dir)
	require.NoError(t, err)
	p := visit(t, b, s, 1280, 800)
	p.replace("Pebble Hat\ndesigner", "Shingle Hat\ndesigner")
	p.until(`document.querySelector("#title").textContent === "Shingle Hat"`)
	time.Sleep(2 * draftEvery)
	kill()
	chromedp.FromContext(b).Allocator.Wait()

	s.keys.mu.Lock()
	s.keys.once = "anotherwayin" // the first was used up by a profile that is gone
	s.keys.mu.Unlock()
	q := visit(t, browserFor(t), s, 1280, 800) // another profile: what was kept is the program's
	q.until(`document.querySelector("#notices").textContent.includes("are back")`)
	assert.Contains(t, q.text(), "Shingle Hat")
	assert.Contains(t, content(t, path), "Pebble Hat", "the file is as it was")
	q.shot("restored")
	q.click("#save")
	q.until(`document.querySelector("#saved").textContent === "saved"`)
	assert.Contains(t, content(t, path), "Shingle Hat")
	q.do(chromedp.Reload())
	q.until("document.body.dataset.ready && " + drawn)
	assert.NotContains(t, js[string](q, `document.querySelector("#notices").textContent`), "are back")
}

func TestATabThatIsReloadedLosesNothing(t *testing.T) {
	path := copyOf(t, "pebble-hat")
	s := running(t, Options{File: path})
	p := visit(t, browserFor(t), s, 1280, 800)
	p.replace("Pebble Hat\ndesigner", "Shingle Hat\ndesigner")
	p.do(chromedp.Reload())
	p.until(`document.body.dataset.ready && document.querySelector("#notices").textContent.includes("are back")`)
	assert.Contains(t, p.text(), "Shingle Hat")
	require.NoError(t, os.WriteFile(path, []byte(strings.Replace(content(t, path), "Pebble", "Cobble", 1)), 0o644))
	p.until(`document.querySelector('[data-name="conflict"]')`)
	p.do(chromedp.Reload())
	p.until(`document.body.dataset.ready && document.querySelector("#notices").textContent.includes("has changed since")`)
	assert.Contains(t, p.text(), "Cobble Hat", "the file is shown")
	p.click(`[data-name="unsaved"] button`)
	p.until(`document.querySelector("#text").value.includes("Shingle Hat")`)
}

func TestTwoTabsAndAnotherProgramAreTold(t *testing.T) {
	path := copyOf(t, "pebble-hat")
	s := running(t, Options{File: path})
	b := browserFor(t)
	p := visit(t, b, s, 1280, 800)
	q := visit(t, b, s, 1280, 800)
	p.until(`document.querySelector("#notices").textContent.includes("another tab")`)
	q.until(`document.querySelector("#notices").textContent.includes("another tab")`)
	q.replace("Pebble Hat\ndesigner", "Second Hat\ndesigner")
	p.replace("Pebble Hat\ndesigner", "First Hat\ndesigner")
	p.click("#save")
	p.until(`document.querySelector("#saved").textContent === "saved"`)
	q.until(`document.querySelector('[data-name="conflict"]')`)
	q.shot("conflict")
	q.click(`[data-name="conflict"] button`)
	q.until(`document.querySelector("#saved").textContent === "saved"`)
	assert.Contains(t, content(t, path), "Second Hat")
	assert.Contains(t, content(t, filepath.Join(filepath.Dir(path), "pebble-hat (other).yaml")), "First Hat", "both are kept")
	p.until(`document.querySelector("#text").value.includes("Second Hat")`) // it had nothing unsaved

	text := strings.Replace(content(t, path), "Second Hat", "Third Hat", 1)
	require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
	q.until(`document.querySelector("#text").value.includes("Third Hat")`)
	assert.Contains(t, js[string](q, `document.querySelector("#notices").textContent`), "changed by another program or tab")
	q.click("#undo")
	assert.Contains(t, q.text(), "Second Hat")
}

// A browser opens six connections to one program (Chromium's limit for HTTP/1.1, from memory).
func TestTenTabsAreOpenAndHearOfTheDisk(t *testing.T) {
	path := copyOf(t, "pebble-hat")
	s := running(t, Options{File: path})
	b := browserFor(t)
	var all []*tab
	for range 10 {
		all = append(all, visit(t, b, s, 800, 600))
	}
	require.NoError(t, os.WriteFile(path, []byte(strings.Replace(content(t, path), "Pebble Hat\ndesigner", "Cobble Hat\ndesigner", 1)), 0o644))
	for _, p := range all {
		p.until(`document.querySelector("#text").value.includes("Cobble Hat")`)
	}
	all[9].replace("Cobble Hat\ndesigner", "Shingle Hat\ndesigner")
	all[9].click("#save")
	all[9].until(`document.querySelector("#saved").textContent === "saved"`)
	all[0].until(`document.querySelector("#text").value.includes("Shingle Hat")`)
}

func TestAFileFromElsewhereKeepsItsBytesOrIsRefused(t *testing.T) {
	dir := t.TempDir()
	s := running(t, Options{Folder: dir})
	p := visit(t, browserFor(t), s, 1280, 800)
	put := func(name, text string) {
		t.Helper()
		from := filepath.Join(t.TempDir(), name)
		require.NoError(t, os.WriteFile(from, []byte(text), 0o644))
		p.click("#open")
		p.do(chromedp.SetUploadFiles("#from-disk", []string{from}, chromedp.ByQuery))
		p.until(`!document.querySelector("#open-dialog").open`)
	}
	before := p.text()
	put("latin.yaml", "version: 1\npattern: Jers\xe9\n")
	p.until(`document.querySelector('[data-name="encoding"]')`)
	assert.Equal(t, before, p.text(), "what was open stays")
	hat := "\ufeff" + strings.ReplaceAll(content(t, copyOf(t, "pebble-hat")), "\n", "\r\n")
	put("crlf.yaml", hat)
	p.until(`document.querySelector("#text").value.includes("Pebble Hat")`)
	p.click("#save")
	p.until(`document.querySelector("#name-dialog").open`)
	p.do(chromedp.KeyEvent(kb.Enter))
	p.until(`document.querySelector("#saved").textContent === "saved"`)
	assert.Equal(t, hat, content(t, filepath.Join(dir, "crlf.yaml")))

	put("crlf.yaml", strings.Replace(hat, "Pebble", "Cobble", 1))
	p.until(`document.querySelector("#text").value.includes("Cobble Hat")`)
	p.click("#save")
	p.until(`document.querySelector("#name-dialog").open`)
	p.do(chromedp.KeyEvent(kb.Enter))
	p.until(`!document.querySelector("#name-over").hidden`)
	assert.Equal(t, hat, content(t, filepath.Join(dir, "crlf.yaml")), "not before it is asked")
	p.click("#name-over")
	p.until(`document.querySelector("#saved").textContent === "saved"`)
	assert.Contains(t, content(t, filepath.Join(dir, "crlf.yaml")), "Cobble")
	assert.Equal(t, hat, content(t, filepath.Join(dir, "crlf (before).yaml")))
}

func TestAnExampleIsSavedUnderAName(t *testing.T) {
	dir := t.TempDir()
	s := running(t, Options{Folder: dir})
	p := visit(t, browserFor(t), s, 1280, 800)
	assert.Equal(t, "not in a file yet", js[string](p, `document.querySelector("#saved").textContent`))
	p.do(chromedp.Click("#open", chromedp.ByQuery), chromedp.Click(`[data-model="new-cardigan"]`, chromedp.ByQuery))
	p.until(`document.querySelector("#title").textContent === "My Cardigan"`)
	p.click("#save")
	p.until(`document.querySelector("#name-dialog").open`)
	assert.Equal(t, "my-cardigan.yaml", js[string](p, `document.querySelector("#name").value`))
	p.do(chromedp.KeyEvent(kb.Enter))
	p.until(`document.querySelector("#saved").textContent === "saved"`)
	assert.Contains(t, content(t, filepath.Join(dir, "my-cardigan.yaml")), "pattern: My Cardigan")
}

func TestThePageAsksNoOneElse(t *testing.T) {
	s := running(t, Options{File: copyOf(t, "pebble-hat")})
	p := visit(t, browserFor(t), s, 1280, 800)
	p.click("#tab-table")
	p.until(`document.querySelector("#table td")`)
	require.Greater(t, len(p.asked), 10)
	for _, u := range p.asked {
		assert.True(t, strings.HasPrefix(u, "http://"+s.listener.Addr().String()+"/"), u)
	}
}

func TestAProgramThatHasEndedIsSaid(t *testing.T) {
	path := copyOf(t, "pebble-hat")
	s, err := New(context.Background(), Options{File: path, Port: -1})
	require.NoError(t, err)
	ctx, stop := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() { done <- s.Run(ctx) }()
	b := browserFor(t)
	p := visit(t, b, s, 1280, 800)
	stop()
	require.NoError(t, <-done)
	p.until(`document.querySelector('[data-name="gone"]')`)
	p.replace("Pebble Hat\ndesigner", "Orphan Hat\ndesigner")
	p.shot("gone")
	p.click("#save")
	p.until(`document.querySelector("#notices").textContent.includes("kept in this browser")`)
}

// A file that can't be read is shown as it is: nothing of the pattern before is taken for it.
func TestABrokenFileShowsNothingOfThePatternBefore(t *testing.T) {
	p := visit(t, browserFor(t), running(t, Options{File: copyOf(t, "pebble-hat")}), 1280, 900)
	p.until(`document.querySelector("#form .field")`)
	open := func(name, text string) {
		path := filepath.Join(t.TempDir(), name)
		require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
		p.do(chromedp.SetUploadFiles("#from-disk", []string{path}, chromedp.ByQuery))
	}
	open("latin.yaml", "pattern: Bruy\xe8re\n")
	p.until(`document.querySelector("#notices").textContent.includes("latin.yaml is not UTF-8")`)
	assert.Contains(t, p.drawing(), "Pebble Hat", "what was not opened takes nothing away")
	open("broken.yaml", strings.NewReplacer("Gorse Slipover", "Whin Tam # to be worked out", "units", "\tunits").Replace(typed))
	p.until(`document.querySelector("#findings li.error")`)
	p.until(`!document.querySelector("#form-broken").hidden`)
	assert.Equal(t, "Whin Tam", js[string](p, `document.querySelector("#title").textContent`))
	for _, of := range []string{"#form", "#sizes", "#table", "#notices"} {
		assert.Empty(t, js[string](p, fmt.Sprintf(`document.querySelector(%q).textContent`, of)), of)
	}
	assert.Empty(t, p.drawing())
	assert.NotContains(t, js[string](p, `document.querySelector("#stale").textContent`), "last drawing")
	p.replace("\tu", "u")
	p.click("#tab-form")
	p.until(`document.querySelector("#form-broken").hidden && document.querySelector("#form .field")`)
}
