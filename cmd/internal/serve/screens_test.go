package serve

import (
	"testing"

	"github.com/chromedp/chromedp"
)

func TestScreens(t *testing.T) {
	b := browser(t)
	s := running(t, Options{File: copyOf(t, "saltmarsh-cardigan")})
	p := visit(t, b, s, 1440, 900)
	p.until(`document.querySelector("#form .cells")`)
	p.shot("form-light")
	p.dark(true)
	p.shot("form-dark")
	p.do(chromedp.Click("#tab-text"), chromedp.Click("#tab-table"))
	p.shot("text-dark")
	p.dark(false)
	p.shot("text-light")
	p.do(chromedp.Click("#tab-keep"))
	p.shot("keep-light")
	p.do(chromedp.Click("#open"))
	p.shot("open-light")
}
