package serve

import (
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Counts by hand: 12 chains leave 10 half trebles (2 chains turn); three increases make 13; the last
// line states 14.
const penPot = `Pen Pot Cosy
UK terms

Panel
Ch 12.
Row 1: Htr in 3rd ch from hook and in each ch across, turn. (10 htr)
Row 2: Ch 2, 2 htr in first st, htr in next 8 sts, 2 htr in last st, turn. (12 htr)
Row 3: Ch 2, htr in each st across, turn. (14 htr)

Flap
Ch 6.
Row 1: Dc in 2nd ch from hook and in each ch across, turn. (5 dc)
`

func TestRowsAreReadAlone(t *testing.T) {
	s := running(t, Options{})
	c := let(t, s)
	code, body, _ := c.ask("/api/rows", rowsQuestion{Rows: penPot, Name: "pot.txt"})
	require.Equal(t, http.StatusOK, code, "%s", body)
	a := decoded[rowsAnswer](t, body)
	assert.Equal(t, "UK", a.Terms)
	assert.Equal(t, a.Count, a.Whole)
	after := map[int]int{}
	for _, l := range a.Lines {
		after[l.Line] = l.Stitches[0]
	}
	assert.Equal(t, 10, after[6])
	assert.Equal(t, 12, after[7])
	assert.Equal(t, 5, after[12])
	assert.True(t, slices.ContainsFunc(a.Findings, func(f found) bool { return f.Line == 8 && f.Col > 1 }), "%+v", a.Findings)
	code, body, _ = c.ask("/api/words", rowsQuestion{Rows: penPot, To: "US"})
	require.Equal(t, http.StatusOK, code)
	assert.Contains(t, decoded[map[string]string](t, body)["rows"], "Hdc in 3rd ch")
	for rows, same := range map[string]bool{penPot: true, "Ch 12.\nRow 1: 1htr in 3rd ch and in each ch to end, turn.\nRow 2: 2ch, 1dc in each htr, turn.\n": true, "Ch 12.\nRow 1: 1 dc in 3rd ch.\n": false} {
		_, body, _ = c.ask("/api/words", rowsQuestion{Rows: rows, To: "UK"})
		assert.Equal(t, same, decoded[map[string]string](t, body)["rows"] == rows, "what is in UK terms stays so:\n%s", rows)
	}
	code, body, _ = c.ask("/api/chart", map[string]string{"rows": penPot, "section": "Flap", "size": "M", "text": "x"})
	require.Equal(t, http.StatusOK, code)
	assert.Len(t, decoded[chartAnswer](t, body).Pages, 1, "%s", body)
	for name, want := range map[string]bool{"pot.txt": true, "pot": true, "pot.yaml": false} {
		_, body, _ = c.ask("/api/kind", rowsQuestion{Rows: penPot, Name: name})
		assert.Equal(t, want, decoded[map[string]bool](t, body)["rows"], name)
	}
	_, body, _ = c.ask("/api/kind", rowsQuestion{Rows: "version: 1\npattern: X\n", Name: "pot"})
	assert.False(t, decoded[map[string]bool](t, body)["rows"])
}

// A text with sizes of its own, beside a pattern with others: they are chosen there, and a finding of one chooses it.
func TestTheSizesOfATextOfRowsAreChosen(t *testing.T) {
	s := running(t, Options{File: copyOf(t, "pebble-hat")})
	p := visit(t, browserFor(t), s, 1280, 900)
	p.click("#tab-rows")
	p.do(chromedp.Focus("#rows", chromedp.ByQuery), chromedp.Evaluate(fmt.Sprintf(`document.execCommand("insertText", false, %q)`,
		"Thistle Bonnet\nUS terms\nSizes: S (M, L)\n\nBrim\nCh 11 (13, 15).\nRow 1: Sc in 2nd ch from hook and in each ch to end, turn. 10 (12, 14) sc\nRow 2: Ch 1, sc in each st to end. 10 (12, 15) sc\n"), nil))
	p.until(`document.querySelector("#rows-size").options.length === 3 && !document.querySelector("#rows-sized").hidden`)
	p.until(`document.querySelector("#findings li.warning")`)
	assert.Equal(t, "S", js[string](p, `document.querySelector("#rows-size").value`))
	p.click("#tab-chart")
	title := `[...document.querySelector("#charts .chart").shadowRoot.querySelectorAll("text")].map((x) => x.textContent).join(" ")`
	p.until(`document.querySelector("#charts .chart") && ` + title + `.includes("Size S")`)
	p.do(chromedp.KeyEvent(kb.F8))
	p.until(`document.querySelector("#rows-size").value === "L"`)
	p.until(title + `.includes("Size L")`)
	assert.Contains(t, js[string](p, `document.querySelector("#here").textContent`), "size L")
}

// A text of rows is opened beside the pattern, which stays; what is typed in it is read key by key.
func TestATextOfRowsIsOpenedBesideThePattern(t *testing.T) {
	path := copyOf(t, "pebble-hat")
	s := running(t, Options{File: path})
	p := visit(t, browserFor(t), s, 1280, 900)
	pattern := p.text()
	from := filepath.Join(t.TempDir(), "pot.txt")
	require.NoError(t, os.WriteFile(from, []byte(penPot), 0o644))
	p.click("#open")
	p.do(chromedp.SetUploadFiles("#from-disk", []string{from}, chromedp.ByQuery))
	p.until(`!document.querySelector("#panel-rows").hidden && document.querySelector("#rows").value.includes("Pen Pot")`)
	assert.Equal(t, pattern, p.text(), "the pattern is as it was")
	assert.Contains(t, js[string](p, `document.querySelector("#file").textContent`), "pebble-hat.yaml")
	p.until(`document.querySelector("#rows-editor .line.warning .mark.warning")`)
	assert.Contains(t, js[string](p, `document.querySelector("#rows-said").textContent`), "in UK terms")
	p.shot("rows")

	p.click("#tab-chart")
	at := func(words string) {
		t.Helper()
		p.do(chromedp.Evaluate(fmt.Sprintf(`(() => { const e = document.querySelector("#rows"), i = e.value.indexOf(%q); e.focus(); e.setSelectionRange(i, i + %d); })()`, words, len(words)), nil))
	}
	title := `[...document.querySelector("#charts .chart").shadowRoot.querySelectorAll("text")].map((x) => x.textContent).join(" ")`
	at("Ch 6.")
	p.until(`document.querySelector("#charts .chart") && ` + title + `.includes("Flap")`)
	at("Ch 12.")
	p.until(title + `.includes("Panel")`)
	assert.Contains(t, js[string](p, `document.querySelector("#here").textContent`), "section Panel")
	p.shot("rows-chart")

	p.click("#rows-explain > summary")
	at("2 htr in last st")
	told := `document.querySelector("#rows-told").textContent`
	p.until(told + `.includes("uses 10 stitches") || ` + told + `.includes("before it there are 10 stitches")`)
	assert.Contains(t, js[string](p, told), "after it there are 12 stitches")
	p.accessible(axe(t), allRules, "a line told stitch by stitch")
	p.shot("rows-told")
	at("Pen Pot")
	p.until(told + `.includes('the heading of "Pen Pot Cosy"')`)
	at("\nPanel") // the line before it is empty
	p.until(told + `.includes("No instructions stand on this line")`)

	at("14 htr")
	for _, k := range "12 htr" {
		p.do(chromedp.KeyEvent(string(k)))
		time.Sleep(100 * time.Millisecond)
	}
	p.until(`!document.querySelector("#rows-editor .mark.warning")`)
	assert.Contains(t, js[string](p, `document.querySelector("#rows").value`), "turn. (12 htr)\n\nFlap", "every key arrived")
	p.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(2)))
	p.until(`document.querySelector("#rows").value.includes("(14 htr)")`)
	assert.Equal(t, pattern, p.text(), "undo is that of the rows")
	p.click("#rows-us")
	p.until(`document.querySelector("#rows").value.includes("Hdc in 3rd ch")`)
	p.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(2))) // the focus is on the button
	p.until(`document.querySelector("#rows").value.includes("Htr in 3rd ch")`)
	p.click("#redo")
	p.until(`document.querySelector("#rows").value.includes("Hdc in 3rd ch")`)
	assert.Equal(t, pattern, p.text(), "what is shown is undone")
	p.click("#tab-form")
	assert.True(t, js[bool](p, `document.querySelector("#undo").disabled`), "nothing of the pattern can be")
	p.click("#tab-rows")
	p.do(chromedp.Focus("#save", chromedp.ByQuery), chromedp.KeyEvent(kb.F8))
	assert.NotEmpty(t, js[string](p, `document.activeElement.id`))
	p.do(chromedp.Reload())
	p.until(`document.body.dataset.ready && document.querySelector("#rows").value.includes("Pen Pot")`)
}
