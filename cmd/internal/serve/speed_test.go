package serve

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// BenchmarkKeyToDrawing types into the largest example in a browser and tells how
// long it takes from a key to the new drawing on the screen: the median and the
// 95th percentile, in ms.
func BenchmarkKeyToDrawing(b *testing.B) {
	all, err := filepath.Glob("../../../examples/*.yaml")
	require.NoError(b, err)
	largest, size := "", int64(0)
	for _, f := range all {
		info, err := os.Stat(f)
		require.NoError(b, err)
		if info.Size() > size {
			largest, size = filepath.Base(f), info.Size()
		}
	}
	s := running(b, Options{File: copyOf(b, largest[:len(largest)-len(".yaml")])})
	p := visit(b, browserFor(b), s, 1440, 900)
	p.click("#tab-text")
	p.do(chromedp.Evaluate(`(() => { const t = document.querySelector("#text"); t.focus();
		const at = t.value.search(/even: \d/) + 6; t.setSelectionRange(at, at + 1); performance.clearMeasures(); })()`, nil))
	const count = `performance.getEntriesByName("key to drawing").length`
	n := 0
	b.ReportAllocs()
	for b.Loop() {
		p.do(chromedp.KeyEvent(fmt.Sprint(1 + n%8)))
		n++
		p.until(fmt.Sprintf("%s >= %d", count, n))
		p.do(chromedp.Evaluate(`(() => { const t = document.querySelector("#text"); t.setSelectionRange(t.selectionStart - 1, t.selectionStart); })()`, nil))
		time.Sleep(30 * time.Millisecond) // a quick typist
	}
	ms := js[[]float64](p, `performance.getEntriesByName("key to drawing").map((m) => m.duration)`)
	slices.Sort(ms)
	b.ReportMetric(ms[len(ms)/2], "ms-median")
	b.ReportMetric(ms[len(ms)*95/100], "ms-p95")
}
