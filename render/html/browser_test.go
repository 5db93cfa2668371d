package html_test

import (
	"context"
	"encoding/json"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/layout/document"
	"flatwright/layout/sheet"
	"flatwright/layout/table"
	"flatwright/render/compare"
	"flatwright/schematic/long"
	"flatwright/schematic/units"
)

// browser opens a file in Chromium; asked is every address that the page asks for.
func browser(t *testing.T, file string) (ctx context.Context, asked func() []string) {
	t.Helper()
	long.Test(t)
	path := compare.Tool(t, "chromium")
	opts := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.WindowSize(1200, 900), chromedp.Flag("disable-background-networking", true))
	ctx, end := chromedp.NewExecAllocator(context.Background(), opts...)
	ctx, _ = chromedp.NewContext(ctx, chromedp.WithErrorf(func(string, ...any) {}))
	t.Cleanup(func() {
		assert.NoError(t, chromedp.Cancel(ctx)) // waits for the browser to end
		end()
	})
	var mu sync.Mutex
	var all []string
	chromedp.ListenTarget(ctx, func(ev any) {
		if e, ok := ev.(*network.EventRequestWillBeSent); ok {
			mu.Lock()
			defer mu.Unlock()
			all = append(all, e.Request.URL)
		}
	})
	// the first action starts the browser, which must outlive its time limit
	require.NoError(t, chromedp.Run(ctx, network.Enable()))
	do(t, ctx, chromedp.Navigate((&url.URL{Scheme: "file", Path: file}).String()))
	return ctx, func() []string {
		mu.Lock()
		defer mu.Unlock()
		return append([]string(nil), all...)
	}
}

func do(t *testing.T, ctx context.Context, steps ...chromedp.Action) {
	t.Helper()
	ctx, cancel := context.WithTimeout(ctx, time.Minute)
	defer cancel()
	require.NoError(t, chromedp.Run(ctx, steps...))
}

func eval[T any](t *testing.T, ctx context.Context, expression string, opts ...chromedp.EvaluateOption) T {
	t.Helper()
	var v T
	do(t, ctx, chromedp.Evaluate(expression, &v, opts...))
	return v
}

func onDisk(t *testing.T, page []byte) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "page.html")
	require.NoError(t, os.WriteFile(file, page, 0o600))
	return file
}

// shown is what a person sees of the page.
type shown struct {
	Rows []struct {
		M, Unit string
		Letters []string
		Cells   []string
	}
	Drawn  int
	Charts []string
	Labels []struct{ M, Text string }
	Lines  []string
	Facts  []string
	State  string
}

// look reads what is visible: an element whose style is display none has no rectangle.
const look = `(() => {
	const vis = e => e.getClientRects().length > 0;
	const text = n => n.nodeType === 3 ? n.data : n.nodeType === 1 && vis(n) ? [...n.childNodes].map(text).join('') : '';
	const all = (s, r) => [...(r || document).querySelectorAll(s)].filter(vis);
	const tidy = s => s.replace(/\s+/g, ' ').trim();
	return JSON.stringify({
		Rows: all('tr[data-m]').map(r => ({M: r.dataset.m, Unit: tidy(text(r.querySelector('.fwt-unit'))),
			Letters: all('.fwt-letter', r).map(text), Cells: all('td:not(.fwt-unit)', r).map(c => tidy(text(c)))})),
		Drawn: all('section[aria-labelledby=fwt-schematic] .fwt-drawn').length,
		Charts: all('section[aria-labelledby=fwt-charts] .fwt-drawn').map(d => [...d.querySelectorAll('.fwt-figures text')].map(text).join(' ')),
		Labels: all('section[aria-labelledby=fwt-schematic] .fwt-drawn').flatMap(d => all('g[data-m]', d).map(g => ({M: g.dataset.m, Text: tidy([...g.querySelectorAll('text')].map(text).join(' '))}))),
		Lines: all('.fwt-rows p').map(p => tidy(text(p))),
		Facts: all('.fwt-fit dd, .fwt-facts dd, .fwt-list li').map(p => tidy(text(p))),
		State: tidy(text(document.querySelector('.fwt-state')))})
})()`

func see(t *testing.T, ctx context.Context) shown {
	t.Helper()
	var s shown
	require.NoError(t, json.Unmarshal([]byte(eval[string](t, ctx, look)), &s))
	return s
}

func choose(t *testing.T, ctx context.Context, id string) {
	t.Helper()
	do(t, ctx, chromedp.Click("label:has(#fwt-"+id+")", chromedp.ByQuery))
}

var letter = regexp.MustCompile(`^[A-Z]{1,2}$`)

// Every number of the page that depends on size is held against those of the table, in
// every size and unit, with scripts switched off.
func TestEveryNumberOfThePageFollowsSizeAndUnit(t *testing.T) {
	for path, section := range map[string]string{wren: "Body", saltmarsh: "Sleeve"} {
		page := charted(t, pattern(t, path), section)
		c := page.Content
		charts := map[string]bool{}
		ctx, asked := browser(t, onDisk(t, write(t, page)))
		do(t, ctx, emulation.SetScriptExecutionDisabled(true))
		byID := map[string]table.Row{}
		want := 0
		for _, g := range c.Table.Groups {
			if g.Name == table.Written {
				continue
			}
			for _, r := range g.Rows {
				want++
				for _, id := range append([]string{r.ID}, r.Also...) {
					byID[id] = r
				}
			}
		}
		for size := -1; size < c.Sizes.Len(); size++ {
			id := "all"
			if size >= 0 {
				id = fmt.Sprintf("s%d", size)
			}
			choose(t, ctx, id)
			for unit, us := range map[string][]units.Unit{"both": c.Units(), "cm": {units.CM}, "in": {units.Inch}} {
				choose(t, ctx, "u"+unit)
				s := see(t, ctx)
				name := fmt.Sprintf("%s, %s, %s", path, id, unit)
				require.Len(t, s.Rows, want, name)
				letters := map[string]bool{}
				for _, r := range s.Rows {
					for k, i := range columns(size, c.Sizes.Len()) {
						var cell []string
						for _, u := range c.Units() { // as they stand in the table
							if unit == "both" || u == us[0] {
								cell = append(cell, byID[r.M].Cells[i].Text(u, c.Steps))
							}
						}
						require.Greater(t, len(r.Cells), k, name)
						assert.Equal(t, strings.Join(cell, " "), r.Cells[k], "%s, %s", name, r.M)
					}
					for _, l := range r.Letters {
						letters[r.M+" "+l] = true
					}
				}
				assert.Equal(t, 1, s.Drawn, "%s: one drawing is shown", name)
				require.Len(t, s.Charts, 1, "%s: one chart is shown", name)
				assert.Equal(t, textsOf(page.Charts, size), s.Charts[0], name)
				charts[s.Charts[0]] = true
				assert.Len(t, s.Labels, measuresOf(page.Drawings, size), "%s: every measurement is labelled", name)
				require.NotEmpty(t, s.Labels, name)
				for _, l := range s.Labels {
					row, ok := byID[l.M]
					require.True(t, ok, "%s: no %s in the table", name, l.M)
					if letter.MatchString(l.Text) {
						assert.True(t, letters[row.ID+" "+l.Text], "%s: the table has no %s at %s", name, l.Text, l.M)
						continue
					}
					require.GreaterOrEqual(t, size, 0, "%s: %s has one size's value", name, l.M)
					var parts []string
					for _, u := range []units.Unit{units.CM, units.Inch} {
						if unit == "both" || u == us[0] {
							parts = append(parts, row.Cells[size].Text(u, c.Steps)+" "+u.String())
						}
					}
					got := strings.ReplaceAll(l.Text, " / ", " ")
					assert.Equal(t, strings.Join(parts, " "), strings.TrimSuffix(strings.TrimSuffix(got, " around"), ","), "%s, %s", name, l.M)
				}
				var lines []string
				for _, sec := range c.RowsFor(size) {
					for _, l := range sec.Lines {
						lines = append(lines, strings.Join(strings.Fields(l.Said(c.Sizes, size, us, c.Steps)), " "))
					}
				}
				assert.Equal(t, lines, s.Lines, name)
				for _, f := range append(c.Fit, c.Facts...) {
					for _, l := range f.Lines {
						assert.Contains(t, s.Facts, strings.Join(strings.Fields(l.Said(c.Sizes, size, us, c.Steps)), " "), name)
					}
				}
				if size >= 0 {
					assert.Equal(t, "Size "+c.Sizes.Names[size], s.State)
				}
			}
		}
		assert.Greater(t, len(charts), c.Sizes.Len()/2, "the charts of sizes differ")
		for _, a := range asked() {
			assert.True(t, strings.HasPrefix(a, "data:font/woff;base64,") || strings.HasPrefix(a, "file://") && strings.HasSuffix(a, "/page.html"), "the page asked for %s", a)
		}
	}
}

// textsOf is all that stands in the drawings of a size, or of all sizes.
func textsOf(all []document.Drawing, size int) string {
	var out []string
	for _, d := range all {
		for _, f := range d.Figures {
			if d.Size == size {
				sheet.Walk(&f.Sheet.Root, func(it sheet.Item) {
					if tx, ok := it.(*sheet.Text); ok && tx.S != "" {
						out = append(out, strings.Join(strings.Fields(tx.S), " "))
					}
				})
			}
		}
	}
	return strings.Join(out, " ")
}

// measuresOf is how many measurements the drawings of a size have.
func measuresOf(all []document.Drawing, size int) int {
	n := 0
	for _, d := range all {
		for _, f := range d.Figures {
			if d.Size == size {
				sheet.Walk(&f.Sheet.Root, func(it sheet.Item) {
					if g, ok := it.(*sheet.Group); ok && g.Class == "measure" {
						n++
					}
				})
			}
		}
	}
	return n
}

// A link names a size and a unit, which last over a reload; so do ticks, each size's of its own.
func TestALinkOpensASizeAndTicksStay(t *testing.T) {
	file := onDisk(t, write(t, pageOf(t, pattern(t, saltmarsh))))
	ctx, _ := browser(t, file)
	open := func(fragment string) {
		t.Helper()
		do(t, ctx, chromedp.Navigate("about:blank"), chromedp.Navigate((&url.URL{Scheme: "file", Path: file, Fragment: fragment}).String()))
	}
	state := func() string {
		return eval[string](t, ctx, `document.querySelector("[name=fwt-size]:checked").value + "/" + document.querySelector("[name=fwt-unit]:checked").value`)
	}
	ticked := func() int { return eval[int](t, ctx, `document.querySelectorAll(".fwt-rows :checked").length`) }
	open("size=M&unit=cm")
	assert.Equal(t, "M/cm", state())
	choose(t, ctx, "s1")
	assert.Equal(t, "size=S&unit=cm", eval[string](t, ctx, `location.hash.slice(1)`), "the address follows")
	do(t, ctx, chromedp.Click(".fwt-rows .fwt-1 p:nth-of-type(3) label", chromedp.ByQuery), chromedp.Reload())
	assert.Equal(t, "S/cm", state())
	assert.Equal(t, 1, ticked())
	open("elsewhere")
	assert.Equal(t, "/", state(), "another fragment chooses nothing")
	assert.Equal(t, 1, ticked())
	choose(t, ctx, "s2")
	assert.Equal(t, "elsewhere", eval[string](t, ctx, `location.hash.slice(1)`), "and stays")
}

// Words in drawings are at least 12 px high on a telephone, and the chosen size stays in sight.
func TestOnATelephoneWordsAreReadableAndTheSizeIsInSight(t *testing.T) {
	for _, path := range []string{wren, saltmarsh, "../../examples/windlass-raglan.yaml", "../../examples/fellside-jumper.yaml"} {
		page := pageOf(t, pattern(t, path))
		ctx, _ := browser(t, onDisk(t, write(t, page)))
		do(t, ctx, chromedp.EmulateViewport(360, 740))
		for _, id := range []string{"all", "s1"} {
			choose(t, ctx, id)
			small := eval[[]string](t, ctx, `[...document.querySelectorAll(".fwt-drawn svg text")].filter((x) => x.getClientRects().length).map((x) => [x.textContent,
				parseFloat(getComputedStyle(x).fontSize) * x.ownerSVGElement.getBoundingClientRect().width / x.ownerSVGElement.viewBox.baseVal.width]).filter(([, h]) => h < 11.99).map(String)`)
			assert.Empty(t, small, "%s, %s", path, id)
			do(t, ctx, chromedp.Evaluate(`[...document.querySelectorAll(".fwt-rows p")].filter((x) => x.getClientRects().length).at(-1).scrollIntoView({block: "end"})`, nil))
			now := eval[string](t, ctx, `(() => { const e = document.querySelector(".fwt-now"), r = e.getBoundingClientRect(); return r.top >= 0 && r.bottom < 100 ? e.innerText : "out of sight at " + r.top; })()`)
			assert.Equal(t, map[string]string{"all": "All sizes", "s1": "Size " + page.Content.Sizes.Names[1]}[id], now, path)
		}
	}
}

// A finger on a telephone of 390 px, also zoomed to twice the size: it ticks rows and chooses a size and a unit, which all last.
func TestAFingerTicksRowsAndChoosesASize(t *testing.T) {
	for _, path := range []string{wren, saltmarsh} {
		page := pageOf(t, pattern(t, path))
		file := onDisk(t, write(t, page))
		ctx, _ := browser(t, file)
		for _, zoom := range []float64{1, 2} {
			do(t, ctx, emulation.SetDeviceMetricsOverride(int64(390/zoom), int64(844/zoom), 3*zoom, true), emulation.SetTouchEmulationEnabled(true))
			tap := func(what string) {
				t.Helper()
				at := eval[[]float64](t, ctx, `(() => { const e = `+what+`; e.scrollIntoView({block: "center"}); const r = e.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()`)
				do(t, ctx, input.DispatchTouchEvent(input.TouchStart, []*input.TouchPoint{{X: at[0], Y: at[1]}}), input.DispatchTouchEvent(input.TouchEnd, []*input.TouchPoint{}))
			}
			tap(`document.querySelector("label:has(#fwt-s1)")`)
			tap(`document.querySelector("label:has(#fwt-uin)")`)
			name := page.Content.Sizes.Names[1]
			assert.Equal(t, "Size "+name, see(t, ctx).State, path)
			const rows = `[...document.querySelectorAll(".fwt-rows input")].filter((e) => e.getClientRects().length)`
			for _, i := range []string{"0", "2", "1", "2"} { // the last takes a tick away
				tap(rows + "[" + i + "].labels[0]")
			}
			ticks := func() []int {
				return eval[[]int](t, ctx, rows+`.flatMap((e, i) => e.checked ? [i] : [])`)
			}
			assert.Equal(t, []int{0, 1}, ticks(), path)
			do(t, ctx, chromedp.Reload())
			assert.Equal(t, "Size "+name, see(t, ctx).State)
			assert.Equal(t, []int{0, 1}, ticks(), "%s, after a reload", path)
			for _, r := range see(t, ctx).Rows {
				assert.Equal(t, "in", r.Unit)
			}
			assert.LessOrEqual(t, eval[float64](t, ctx, `document.documentElement.scrollWidth`), 390/zoom)
			tap(rows + "[0].labels[0]")
			tap(rows + "[1].labels[0]")
			tap(`document.querySelector("label:has(#fwt-all)")`)
			tap(`document.querySelector("label:has(#fwt-uboth)")`)
		}
	}
}

// Without any style sheet the page is in order: one drawing with its lines, the rows of all sizes once.
func TestWithoutItsStyleThePageIsInOrder(t *testing.T) {
	page := pageOf(t, pattern(t, saltmarsh))
	body := regexp.MustCompile(`(?s)<style>.*?</style>`).ReplaceAll(write(t, page), nil)
	ctx, _ := browser(t, onDisk(t, body))
	s := see(t, ctx)
	assert.Equal(t, 1, s.Drawn)
	want := 0
	for _, sec := range page.Content.Rows {
		want += len(sec.Lines)
	}
	assert.Len(t, s.Lines, want)
	assert.False(t, eval[bool](t, ctx, `document.querySelector('.fwt-choose').getClientRects().length > 0`), "nothing to choose that would do nothing")
	assert.Equal(t, "none", eval[string](t, ctx, `getComputedStyle([...document.querySelectorAll(".fwt-drawn path")].find((e) => e.getClientRects().length)).fill`), "outlines are no black shapes")
}

// columns are the sizes that the table shows.
func columns(size, n int) []int {
	if size >= 0 {
		return []int{size}
	}
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

func TestTheKeyboardAloneChoosesSizeAndUnit(t *testing.T) {
	ctx, _ := browser(t, onDisk(t, write(t, pageOf(t, pattern(t, wren)))))
	press := func(key string) {
		t.Helper()
		do(t, ctx, chromedp.KeyEvent(key))
	}
	focus := func() (id, outline string) {
		t.Helper()
		return eval[string](t, ctx, `document.activeElement.id`),
			eval[string](t, ctx, `document.activeElement.nextElementSibling ? getComputedStyle(document.activeElement.nextElementSibling).outlineWidth + ' ' + getComputedStyle(document.activeElement.nextElementSibling).outlineStyle : ''`)
	}
	press(kb.Tab)
	id, outline := focus()
	assert.Equal(t, "fwt-all", id)
	assert.Equal(t, "3px solid", outline, "what has the focus is seen")
	press(kb.ArrowRight)
	press(kb.ArrowRight)
	assert.Equal(t, "Size 4 yrs", see(t, ctx).State)
	press(kb.Tab)
	press(kb.ArrowRight)
	id, _ = focus()
	assert.Equal(t, "fwt-ucm", id)
	for _, r := range see(t, ctx).Rows {
		assert.Equal(t, "cm", r.Unit)
	}
	for range 10 { // drawings that a narrow screen scrolls are met before the table
		press(kb.Tab)
		if eval[string](t, ctx, `document.activeElement.tagName`) != "FIGURE" {
			break
		}
		assert.NotEmpty(t, eval[string](t, ctx, `document.activeElement.getAttribute("aria-label")`), "a drawing that takes the focus has a name")
	}
	assert.Equal(t, "fwt-wide", eval[string](t, ctx, `document.activeElement.className`), "a table that is wider than the screen is scrolled by keys")
}

// WCAG 2.2, 1.4.10 (reflow): no sideways scrolling at 320 CSS px, which is also 1280 px at 400 %.
func TestNarrowScreensAndZoomNeedNoSidewaysScrolling(t *testing.T) {
	for _, path := range []string{wren, saltmarsh} {
		ctx, _ := browser(t, onDisk(t, write(t, pageOf(t, pattern(t, path)))))
		for _, width := range []int64{320, 360, 600} {
			for _, id := range []string{"all", "s1"} {
				do(t, ctx, chromedp.EmulateViewport(width, 800))
				choose(t, ctx, id)
				assert.LessOrEqual(t, eval[int64](t, ctx, `document.documentElement.scrollWidth`), width, "%s at %d px", path, width)
				small := eval[int](t, ctx, `[...document.querySelectorAll('.fwt-pills label')].filter(l => l.offsetHeight < 24 || l.offsetWidth < 24).length`)
				assert.Zero(t, small, "a target smaller than 24 px (WCAG 2.2, 2.5.8)")
			}
		}
	}
}

// Words that something goes on to the right stand where something does, and nowhere else.
func TestWhatGoesOnIsToldWhereItDoes(t *testing.T) {
	for _, path := range []string{wren, saltmarsh} {
		ctx, _ := browser(t, onDisk(t, write(t, pageOf(t, pattern(t, path)))))
		for _, width := range []int64{320, 390, 470, 1000} {
			do(t, ctx, chromedp.EmulateViewport(width, 800))
			for _, id := range []string{"all", "s1"} {
				choose(t, ctx, id)
				for said, of := range map[string]string{".fwt-on": "figure", ".fwt-more": "section.fwt-wide"} {
					there := eval[bool](t, ctx, `[...document.querySelectorAll("`+said+`")].some((e) => e.getClientRects().length > 0)`)
					wide := eval[bool](t, ctx, `[...document.querySelectorAll("`+of+`")].some((e) => e.scrollWidth > e.clientWidth + 1)`)
					assert.False(t, there && !wide, "%s at %d px, %s: %s though nothing goes on", path, width, id, said)
				}
			}
		}
	}
}

func TestAPrintedPageHasTheNumbersAndNoControls(t *testing.T) {
	ctx, _ := browser(t, onDisk(t, write(t, pageOf(t, pattern(t, wren)))))
	choose(t, ctx, "s2")
	do(t, ctx, emulation.SetEmulatedMedia().WithMedia("print"))
	assert.False(t, eval[bool](t, ctx, `document.querySelector('.fwt-choose').getClientRects().length > 0`))
	s := see(t, ctx)
	assert.Equal(t, "Size 6 yrs", s.State)
	assert.NotEmpty(t, s.Rows)
	assert.Equal(t, 1, s.Drawn)
}

const host = `<!DOCTYPE html><html lang="en"><head><title>A blog</title><style>body{font:20px Georgia;color:#222}h2{color:#800}table{border:2px solid red}td{padding:9px}b{color:green}</style></head>
<body><h1>A blog</h1><h2>News</h2><p>Some <b>words</b> <span>here</span>.</p><table><tr><th>a</th><td>1</td></tr></table><form><fieldset><legend>l</legend><label>x <input type="radio" checked></label></fieldset></form>
%s<footer><p>End</p><svg width="9" height="9"><path d="M0 0l5 5"/><text>t</text></svg></footer></body></html>`

// hostStyle is every computed property of all that isn't the snippet's.
const hostStyle = `JSON.stringify([...document.querySelectorAll('*')].filter(e => !e.closest('.fwt') && e !== document.documentElement && e !== document.body).map(e => {
	const s = getComputedStyle(e); return e.tagName + [...s].filter(k => !/^(perspective-origin|transform-origin)$/.test(k)).map(k => k + ':' + s.getPropertyValue(k)).join(';') }))`

func TestASnippetLeavesThePageAroundAsItIs(t *testing.T) {
	page := pageOf(t, pattern(t, wren))
	page.Snippet = true
	ctx, _ := browser(t, onDisk(t, fmt.Appendf(nil, host, write(t, page))))
	with := eval[string](t, ctx, hostStyle)
	choose(t, ctx, "s1")
	assert.Equal(t, "Size 4 yrs", see(t, ctx).State, "and it works there")
	ctx, _ = browser(t, onDisk(t, fmt.Appendf(nil, host, "")))
	without := eval[string](t, ctx, hostStyle)
	require.Greater(t, len(without), 1000)
	assert.Equal(t, without, with)
}

// modules is the folder of npm's packages for tests: axe-core and the W3C's own checker,
// which npm ci in testdata/browser fetches.
func modules(t *testing.T) string {
	t.Helper()
	long.Test(t)
	dir := filepath.FromSlash("../../testdata/browser/node_modules")
	if _, err := os.Stat(filepath.Join(dir, "vnu-jar")); err != nil {
		if compare.Required() {
			require.NoError(t, err, "run npm ci in testdata/browser")
		}
		t.Skip("axe-core and vnu-jar are not there: run npm ci in testdata/browser")
	}
	return dir
}

// Axe's rules for WCAG 2.0 to 2.2, levels A and AA, and its best practices.
func TestAxeFindsNothing(t *testing.T) {
	axe, err := os.ReadFile(filepath.Join(modules(t), "axe-core", "axe.min.js"))
	require.NoError(t, err)
	for _, path := range []string{wren, saltmarsh} {
		ctx, _ := browser(t, onDisk(t, write(t, pageOf(t, pattern(t, path)))))
		eval[int](t, ctx, string(axe)+";0")
		for _, c := range []struct {
			scheme, id string
			width      int64
		}{{"light", "all", 360}, {"dark", "s1", 360}, {"dark", "all", 1200}, {"light", "s1", 1200}} {
			do(t, ctx, chromedp.EmulateViewport(c.width, 900),
				emulation.SetEmulatedMedia().WithFeatures([]*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: c.scheme}}))
			choose(t, ctx, c.id)
			found := eval[string](t, ctx,
				`axe.run().then(r => JSON.stringify(r.violations.map(v => v.id + ': ' + v.nodes.slice(0, 3).map(n => n.target + ' ' + n.failureSummary).join(' | '))) + r.passes.length)`,
				awaited)
			assert.Regexp(t, `^\[\]\d\d`, found, "%s, %+v", path, c)
		}
	}
}

// The Nu Html Checker (W3C) on a whole page, and on a snippet in a page. A style element in
// the body is the one thing that it doesn't take: a snippet must bring its style along.
func TestTheCheckerOfTheW3CFindsNothing(t *testing.T) {
	jar := filepath.Join(modules(t), "vnu-jar", "build", "dist", "vnu.jar")
	dir := t.TempDir()
	var args []string
	for i, path := range []string{wren, saltmarsh, "../../examples/pebble-hat.yaml"} {
		page := pageOf(t, pattern(t, path))
		for _, snippet := range []bool{false, true} {
			page.Snippet = snippet
			body := write(t, page)
			if snippet {
				style := regexp.MustCompile(`(?s)<style>.*?</style>\n`).Find(body)
				require.NotEmpty(t, style)
				body = []byte(strings.Replace(strings.Replace(fmt.Sprintf(host, body), string(style), "", 1), "</head>", string(style)+"</head>", 1))
			}
			file := filepath.Join(dir, fmt.Sprintf("%d-%t.html", i, snippet))
			require.NoError(t, os.WriteFile(file, body, 0o600))
			args = append(args, file)
		}
	}
	out := compare.Run(t, nil, "java", append([]string{"-jar", jar, "--stdout", "--exit-zero-always", "--format", "gnu"}, args...)...)
	for line := range strings.Lines(string(out)) {
		if strings.Contains(line, "Inline style violates Content Security Policy") || strings.Contains(line, "Inline script violates Content Security Policy") {
			continue // the checker reckons no hashes; the browser does, and shows the page in its style and runs its script
		}
		assert.Fail(t, "the checker says", line)
	}
	bad := filepath.Join(dir, "bad.html")
	require.NoError(t, os.WriteFile(bad, []byte("<!DOCTYPE html><title>x</title><p><div></p>"), 0o600))
	assert.NotEmpty(t, compare.Run(t, nil, "java", "-jar", jar, "--stdout", "--exit-zero-always", "--format", "gnu", bad), "the checker works")
}

// awaited waits for a promise.
func awaited(p *runtime.EvaluateParams) *runtime.EvaluateParams { return p.WithAwaitPromise(true) }
