package serve

import (
	"context"
	"encoding/json"
	"flag"
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

	"flatwright/schematic/long"
)

// every has each field typed in and each entry added; a run without it tries so many, taken by the seed.
var every = flag.Bool("every", false, "type in every field of the form, and add every entry")

const sample = 8

// keyed is what scripts of these tests find a field by, and wait for.
const keyed = `window.keyed = {
	inputs: () => [...document.querySelectorAll("#form [data-field]")].flatMap((e) => [...e.querySelectorAll("input, select")].filter((i) => i.read).map((i, n) => [e.dataset.field + " " + n, i])),
	all: () => keyed.inputs().map(([at, i]) => ({ at, label: i.getAttribute("aria-label"), value: i.value, words: i.options ? [...i.options].map((o) => o.value) : null })),
	find: (at) => keyed.inputs().find((f) => f[0] === at)?.[1],
	post: async (path, q) => (await fetch(path, { method: "POST", headers: { "Flatwright-Key": localStorage.getItem("flatwright-key"), "Content-Type": "application/json" }, body: JSON.stringify(q) })).json(),
	drawn: async () => {
		const text = document.querySelector("#text").value, id = (i) => document.getElementById(i);
		const a = await keyed.post("/api/look", { text, size: document.querySelector("#sizes :checked").value, units: document.querySelector("[name=units]:checked").value,
			labels: id("labels").value, paper: id("paper").value, large: id("large").checked, little: id("little").checked });
		const pages = [...id("pages").shadowRoot.querySelectorAll(".sheets > .page")].map((p) => p.svg);
		return text === document.querySelector("#text").value && (a.pages.length === 0 ? id("pages").classList.contains("old") : JSON.stringify(a.pages) === JSON.stringify(pages));
	},
};`

// field is one input or list of the form.
type field struct {
	At, Label, Value string
	Words            []string
}

// other is a value of the same kind that is not the field's.
func (f field) other(r *rand.Rand) string {
	digits := false
	value := strings.Map(func(c rune) rune {
		if c < '1' || c > '9' {
			return c
		}
		digits = true
		return '1' + (c-'1'+1+rune(r.IntN(3)))%9
	}, f.Value)
	switch in, ends := strings.CutSuffix(f.Value, ")"); {
	case f.At == "sizes 0" && ends:
		return in + " anew)"
	case !digits:
		return strings.TrimSpace(f.Value + " anew")
	}
	return value
}

// still waits until every change is taken and drawn, and gives what the fields hold.
func (p *tab) still() map[string]string {
	p.t.Helper()
	for end := time.Now().Add(20 * time.Second); !js[bool](p, `(async () => ![...document.querySelectorAll("#form :is(input, select)")].some((i) => i.waits > 0) && await keyed.drawn())()`); time.Sleep(50 * time.Millisecond) {
		if time.Now().After(end) {
			assert.Fail(p.t, "the drawing does not follow")
			break
		}
	}
	all := map[string]string{}
	for _, f := range js[[]field](p, `keyed.all()`) {
		all[f.At] = f.Value
	}
	return all
}

// patternsTyped are the patterns whose forms are tried.
func patternsTyped(t *testing.T) map[string]string {
	whole, err := os.ReadFile("../../../testdata/read/full.yaml")
	require.NoError(t, err)
	return map[string]string{"largest": string(modelText("example-saltmarsh-cardigan")), "starter": string(modelText("new-raglan")), "own": typed, "every key": string(whole)}
}

// unfolded is a tab in which every part of the form is seen.
func unfolded(t *testing.T, b context.Context, path string) *tab {
	p := visit(t, b, running(t, Options{File: path}), 1280, 900)
	p.until(`document.querySelector("#form .field")`)
	js[[]string](p, everyField)
	p.do(chromedp.Evaluate(keyed, nil))
	return p
}

func TestEveryFieldHoldsWhatIsTypedAndGivesItBack(t *testing.T) {
	b, seed := browserFor(t), long.Seed(t)
	for name, text := range patternsTyped(t) {
		t.Run(name, func(t *testing.T) {
			r := rand.New(rand.NewPCG(seed, 0))
			path := filepath.Join(t.TempDir(), "every.yaml")
			require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
			p := unfolded(t, b, path)
			fields := js[[]field](p, `keyed.all()`)
			r.Shuffle(len(fields), func(i, j int) { fields[i], fields[j] = fields[j], fields[i] })
			if !*every {
				fields = fields[:min(sample, len(fields))]
			}
			bad := 0
			for _, f := range fields {
				if !t.Run(f.Label, func(t *testing.T) { p.t = t; p.typeInto(r, f, text) }) {
					bad++
				}
			}
			p.t = t
			t.Logf("%s: %d fields, %d wrong", name, len(fields), bad)
		})
	}
}

// typeInto types another value into a field, holds the page to it, and takes it back.
func (p *tab) typeInto(r *rand.Rand, f field, text string) {
	at, err := json.Marshal(f.At)
	require.NoError(p.t, err)
	find := fmt.Sprintf("keyed.find(%s)", at)
	before := p.still()
	require.True(p.t, js[bool](p, fmt.Sprintf(`(() => { const e = window.typedIn = %s; e?.focus(); e?.select?.(); return e === document.activeElement; })()`, find)))
	value := f.other(r)
	if f.Words != nil {
		key := kb.ArrowDown
		if f.Words[len(f.Words)-1] == f.Value || f.Words[len(f.Words)-1] == "" && f.Words[len(f.Words)-2] == f.Value {
			key = kb.ArrowUp
		}
		p.do(chromedp.KeyEvent(key))
		value = js[string](p, `document.activeElement.value`)
		if value == f.Value { // a list of one word
			return
		}
	} else {
		pace := func() time.Duration { return time.Duration(80+r.IntN(71)) * time.Millisecond }
		if r.IntN(4) == 0 {
			pace = func() time.Duration { return 30 * time.Millisecond }
		}
		so := ""
		for _, c := range value {
			p.do(chromedp.KeyEvent(string(c)))
			so += string(c)
			time.Sleep(pace())
			assert.Equal(p.t, so+"|", js[string](p, `(() => { const e = document.activeElement; return e === window.typedIn ? e.value.slice(0, e.selectionStart) + "|" + e.value.slice(e.selectionEnd) : e.outerHTML; })()`))
		}
	}
	p.do(chromedp.KeyEvent(kb.Tab))
	assert.False(p.t, js[bool](p, `document.activeElement === document.body`), "the focus is on the page")
	after := p.still()
	if js[bool](p, find+`?.hasAttribute("aria-invalid")`) { // refused with a reason, and given back
		assert.Equal(p.t, value, after[f.At])
		p.t.Logf("%q is refused: %s", value, js[string](p, find+`.closest("[data-field]").textContent`))
		p.do(chromedp.Evaluate(find+`.focus()`, nil))
	} else {
		assert.NotEqual(p.t, text, p.text())
		assert.Contains(p.t, p.text(), value)
		for at, was := range before {
			if at == f.At {
				was = value
			}
			assert.Equal(p.t, was, after[at], at)
		}
		assert.Len(p.t, after, len(before))
		p.until(`(window.unlike = null, ` + shows + `.then((u) => { window.unlike = u; }), true)`)
		p.until(`window.unlike !== null`)
		assert.Empty(p.t, js[[]string](p, `window.unlike`))
	}
	for range 20 { // hands that rest, and machines that are slow, make steps
		p.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(input.ModifierCtrl)))
		if p.still(); p.text() == text {
			break
		}
	}
	assert.Equal(p.t, text, p.text(), "an undo gives back what there was")
	assert.Equal(p.t, before, p.still())
	if p.text() != text {
		p.do(chromedp.Evaluate(fmt.Sprintf(`(() => { const t = document.querySelector("#text"); t.value = %q; t.dispatchEvent(new Event("input")); })()`, text), nil))
		p.still()
	}
}

// entry is one thing that a list of the form can add.
type entry struct{ Label, Word, What string }

// answers are what is typed where a thing to be added asks for a value that is no number.
var answers = map[string]string{"at": "both edges", "worked": "flat, from the hem", "onto": "Body left edge, 1 in every 1 rows", "text": "Merino, grey", "line": "Dry flat."}

func TestEveryEntryIsAddedTypedInTakenOutAndGivenBack(t *testing.T) {
	b, seed := browserFor(t), long.Seed(t)
	r := rand.New(rand.NewPCG(seed, 1))
	text := patternsTyped(t)["every key"]
	path := filepath.Join(t.TempDir(), "every.yaml")
	require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
	p := unfolded(t, b, path)
	all := js[[]entry](p, `[...document.querySelectorAll("#form [data-adder]")].flatMap((e) => [...e.querySelector("select").options].slice(1).map((o) => ({ label: e.dataset.adder, word: o.value, what: o.title })))`)
	r.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	kinds := map[string]bool{}
	bad := 0
	for _, e := range all { // each kind once, in one of its places
		what := e.Word + e.What
		if kinds[what] || !*every && len(kinds) == sample {
			continue
		}
		kinds[what] = true
		if !t.Run(e.Label+" "+e.Word, func(t *testing.T) { p.t = t; p.add(r, e, text) }) {
			bad++
		}
	}
	p.t = t
	t.Logf("%d entries, %d wrong", len(kinds), bad)
}

// add adds an entry by mouse or by keys, answers what it asks for, types into what is there then, takes it out and gives it back.
func (p *tab) add(r *rand.Rand, e entry, text string) {
	before := p.still()
	at := fmt.Sprintf(`#form [data-adder=%q]`, e.Label)
	if r.IntN(2) == 0 {
		p.choose(at+" select", e.Word)
	} else {
		n := js[int](p, fmt.Sprintf(`(() => { const s = document.querySelector(%q); s.focus(); return [...s.options].findIndex((o) => o.value === %q); })()`, at+" select", e.Word))
		for range n {
			p.do(chromedp.KeyEvent(kb.ArrowDown))
		}
		p.do(chromedp.KeyEvent(kb.Enter))
	}
	p.until(fmt.Sprintf(`document.querySelector("#text").value !== %q || document.activeElement.closest(".more .field") || [...document.querySelectorAll("#form [role=alert]")].some((e) => e.textContent)`, text))
	for range 3 {
		if !js[bool](p, `Boolean(document.activeElement.closest(".more .field"))`) {
			break
		}
		value := js[string](p, `document.activeElement.previousElementSibling, document.activeElement.closest(".field").querySelector("label").textContent`)
		if offered := js[string](p, `document.activeElement.list?.options[0]?.value ?? ""`); offered != "" {
			value = offered
		} else if a, ok := answers[value]; ok {
			value = a
		} else if value == "name" {
			value = "anew"
		} else {
			value = "2"
		}
		if js[bool](p, `document.activeElement.tagName === "SELECT"`) {
			p.do(chromedp.KeyEvent(kb.ArrowDown), chromedp.KeyEvent(kb.Enter))
			p.until(fmt.Sprintf(`document.querySelector("#text").value !== %q`, text))
		} else {
			for _, c := range value {
				p.do(chromedp.KeyEvent(string(c)))
				time.Sleep(time.Duration(80+r.IntN(71)) * time.Millisecond)
			}
			p.do(chromedp.KeyEvent(kb.Enter))
		}
		p.still()
	}
	said := js[string](p, `[...document.querySelectorAll("#form [role=alert]")].map((e) => e.textContent).join("")`)
	if p.text() == text {
		assert.Regexp(p.t, "the text$|there already$", said, "nothing was added: it is said where it can be, or why not")
		p.do(chromedp.Evaluate(`document.querySelectorAll("#form .more .field, #form [role=alert]").forEach((e) => { e.matches("p") ? e.textContent = "" : e.remove(); })`, nil))
		return
	}
	js[[]string](p, everyField)
	p.still()
	added, ways := p.text(), js[[]string](p, waysOut)
	now := js[field](p, `(() => { const f = keyed.inputs().find((f) => f[1] === document.activeElement); return f ? keyed.all().find((g) => g.at === f[0]) : { at: "" }; })()`)
	assert.False(p.t, js[bool](p, `document.activeElement === document.body`), "the focus is on the page")
	if now.At != "" {
		p.typeInto(r, now, added)
	} else {
		p.t.Logf("no field: focus on %s", js[string](p, `document.activeElement.outerHTML.slice(0, 120)`))
	}
	if !strings.HasPrefix(e.Label, "Begin ") && !strings.HasPrefix(e.Word, "shaped ") && !strings.Contains(e.Label, " a size") { // these change or add more than one thing
		p.takeOut(ways, added, text)
	}
	for i := 0; p.text() != text && i < 6; i++ {
		p.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(input.ModifierCtrl)))
		p.still()
	}
	assert.Equal(p.t, text, p.text(), "an undo gives back what there was")
	p.do(chromedp.Evaluate(`document.activeElement.blur()`, nil)) // what has the focus stays as it is
	js[[]string](p, everyField)
	assert.Equal(p.t, before, p.still())
}

// waysOut are the selectors of what can take out what has the focus, or what that stands in: the nearest first.
const waysOut = `(() => { const all = [];
	for (let e = document.activeElement; e && e.id !== "form"; e = e.parentElement) if (e.dataset.path || e.dataset.field)
		all.push(...e.querySelectorAll(":scope > .tools > button, :scope > .section-head > .tools > button, :scope > .value > button, :scope > .value input, :scope > .value > select"));
	return all.filter((e) => e.read || e.getAttribute("aria-label")?.startsWith("take out")).map((e) => e.tagName.toLowerCase() + "[aria-label=" + JSON.stringify(e.getAttribute("aria-label")) + "]"); })()`

// takeOut takes what was added out by what it has for that, its own button or the field emptied, and gives it back.
func (p *tab) takeOut(ways []string, added, text string) {
	for _, way := range ways {
		at := fmt.Sprintf("#form %s", way)
		p.do(chromedp.Evaluate(fmt.Sprintf(`(() => { const e = document.querySelector(%q); e.focus(); if (e.matches("button")) e.click(); else if (e.select) e.select(); else { e.value = ""; e.dispatchEvent(new Event("change", {bubbles: true})); } })()`, at), nil))
		if strings.HasPrefix(way, "input") {
			p.do(chromedp.KeyEvent(kb.Delete), chromedp.KeyEvent(kb.Tab))
		}
		p.still()
		out := p.text() == text
		for i := 0; p.text() != added && i < 6; i++ {
			p.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(input.ModifierCtrl)))
			p.still()
		}
		assert.Equal(p.t, added, p.text(), "an undo gives back what was taken out: %s", way)
		if out {
			return
		}
	}
	assert.Fail(p.t, "what was added can't be taken out", "by %s; said %s", strings.Join(ways, ", "),
		js[string](p, `[...document.querySelectorAll("#form [role=alert]")].map((e) => e.textContent).join("")`))
}
