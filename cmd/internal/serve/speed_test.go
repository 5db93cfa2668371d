package serve

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"flatwright/examples"
)

// largest is the name of the longest example.
func largest() string {
	return slices.MaxFunc(examples.Names(), func(a, b string) int { return len(examples.Text(a)) - len(examples.Text(b)) })
}

// timed notes when a key goes down (the event's own time, before any script runs) and when a
// drawing of what it typed has been painted, or of what a later key typed: the digit that the drawn
// text has in the place where the text before had another tells which key that was.
const timed = `(() => {
	window.keyed = []; window.took = [];
	let now = "", before = "";
	const ask = window.fetch;
	window.fetch = async (path, o) => {
		const a = await ask(path, o);
		if (path === "/api/look") now = JSON.parse(o.body).text;
		if (path === "/api/edit") now = (await a.clone().json()).text; // its drawing comes with it
		return a;
	};
	document.addEventListener("keydown", (e) => keyed.push({ at: e.timeStamp, key: e.key }), true);
	new MutationObserver(() => {
		const at = [...now].findIndex((c, i) => c !== before[i]);
		const which = before && at >= 0 ? keyed.findLastIndex((k) => k.key === now[at]) : -1;
		before = now;
		const these = keyed.splice(0, which + 1).map((k) => k.at);
		requestAnimationFrame(() => {
			const { port1, port2 } = new MessageChannel();
			port1.onmessage = () => { for (const at of these) took.push(performance.now() - at); };
			port2.postMessage(null); // after the frame
		});
	}).observe(document.querySelector("#pages"), { attributes: true, attributeFilter: ["data-drawn"] });
})()`

// BenchmarkKeyToDrawing types into the largest example in a browser, at the pace of a hand, and
// tells how long it takes from a key to the picture of a drawing that came after it: the median and
// the 95th percentile, in ms.
func BenchmarkKeyToDrawing(b *testing.B) {
	places := map[string]string{
		"text": `(() => { document.querySelector("#tab-text").click(); const t = document.querySelector("#text"); t.focus();
			const at = /even: \d/.exec(t.value); t.setSelectionRange(at.index + 6, at.index + 7); })()`,
		"form": `(() => { const f = [...document.querySelectorAll('#form [aria-label*=", even, even"]')].find((i) => /\d$/.test(i.value)); f.focus(); f.setSelectionRange(f.value.length - 1, f.value.length); })()`,
	}
	const again = `(() => { const t = document.activeElement; t.setSelectionRange(t.selectionStart - 1, t.selectionStart); })()`
	for _, where := range []string{"text", "form"} {
		for _, pace := range []time.Duration{80, 120, 150} {
			b.Run(fmt.Sprintf("%s/%dms", where, pace), func(b *testing.B) {
				s := running(b, Options{File: copyOf(b, largest())})
				p := visit(b, browserFor(b), s, 1440, 900)
				p.until(`document.querySelector('#form [aria-label*=", even, even"]')`)
				p.do(chromedp.Evaluate(timed, nil), chromedp.Evaluate(places[where], nil))
				time.Sleep(time.Second)
				b.ReportAllocs()
				n := 0
				for b.Loop() {
					end := time.Now().Add(pace * time.Millisecond)
					p.do(chromedp.KeyEvent(fmt.Sprint(1+n%8)), chromedp.Evaluate(again, nil))
					n++
					time.Sleep(time.Until(end))
				}
				p.until("keyed.length === 0")
				time.Sleep(300 * time.Millisecond)
				ms := js[[]float64](p, "took")
				require.NotEmpty(b, ms)
				slices.Sort(ms)
				b.ReportMetric(ms[len(ms)/2], "ms-median")
				b.ReportMetric(ms[len(ms)*95/100], "ms-p95")
			})
		}
	}
}

// A key is drawn while everything is still being worked, and what was worked comes after it without taking the
// drawing back; then everything is asked for once more.
func TestADrawingDoesNotWaitForTheFindings(t *testing.T) {
	s := running(t, Options{File: copyOf(t, largest())})
	p := visit(t, browserFor(t), s, 1440, 900)
	p.until(`document.querySelector('#form [aria-label*=", even, even"]')`)
	p.do(chromedp.Evaluate(`(() => {
		window.wholes = [];
		window.glances = 0;
		const ask = window.fetch;
		window.fetch = async (path, o) => {
			const a = await ask(path, o);
			if (path !== "/api/look") return a;
			if (JSON.parse(o.body).glance) glances++;
			else await new Promise((go) => wholes.push(go));
			return a;
		};
		document.querySelector("#tab-text").click();
		const t = document.querySelector("#text");
		t.focus();
		const at = /even: \d/.exec(t.value);
		t.setSelectionRange(at.index + 6, at.index + 7);
	})()`, nil))
	again := func() {
		p.do(chromedp.Evaluate(`(() => { const t = document.activeElement; t.setSelectionRange(t.selectionStart - 1, t.selectionStart); })()`, nil))
	}
	p.do(chromedp.KeyEvent("3"))
	p.until("glances === 1 && wholes.length === 1") // the hand rested, and everything is asked for
	time.Sleep(2600 * time.Millisecond)             // so far behind that it is not given up for a key
	again()
	drawnTimes := js[int](p, `Number(document.querySelector("#pages").dataset.drawn)`)
	p.do(chromedp.KeyEvent("4"))
	p.until(fmt.Sprintf(`Number(document.querySelector("#pages").dataset.drawn) === %d && glances === 2 && wholes.length === 1`, drawnTimes+1))
	page := js[string](p, drawn+`.outerHTML`)
	p.do(chromedp.Evaluate("wholes[0]()", nil))
	p.until("wholes.length === 2") // of the text with the last key
	require.Equal(t, page, js[string](p, drawn+`.outerHTML`), "it is the drawing of the last key")
	require.Equal(t, drawnTimes+1, js[int](p, `Number(document.querySelector("#pages").dataset.drawn)`))
	p.do(chromedp.Evaluate("wholes[1]()", nil))
	p.until(fmt.Sprintf(`Number(document.querySelector("#pages").dataset.drawn) === %d`, drawnTimes+2))
}
