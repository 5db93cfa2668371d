package serve

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/render/compare"
	"flatwright/schematic/long"
)

// running is a server with the options, until the test ends.
func running(t testing.TB, o Options) *Server {
	t.Helper()
	o.Port = -1
	if o.Unsaved == "" {
		o.Unsaved = t.TempDir()
	}
	s, err := New(context.Background(), o)
	require.NoError(t, err)
	ctx, stop := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() { done <- s.Run(ctx) }()
	t.Cleanup(func() {
		stop()
		assert.NoError(t, <-done)
	})
	return s
}

// theBrowser is one browser for all tests, each in tabs of its own.
var theBrowser struct {
	once sync.Once
	ctx  context.Context
	err  error
	end  func() error
}

func TestMain(m *testing.M) {
	code := m.Run()
	if theBrowser.end != nil {
		if err := theBrowser.end(); err != nil {
			fmt.Fprintln(os.Stderr, "the browser did not end well:", err)
		}
	}
	os.Exit(code)
}

// browserFor gives the browser, or skips the test where there is none. Tabs are made of
// the context.
func browserFor(t testing.TB) context.Context {
	t.Helper()
	long.Test(t)
	theBrowser.once.Do(start)
	if theBrowser.err != nil {
		if compare.Required() {
			require.NoError(t, theBrowser.err)
		}
		t.Skip(theBrowser.err)
	}
	return theBrowser.ctx
}

func start() {
	dir, err := os.MkdirTemp("", "flatwright-browser-")
	if err != nil {
		theBrowser.err = err
		return
	}
	ctx, end, _, err := launch(dir)
	theBrowser.ctx, theBrowser.err = ctx, err
	theBrowser.end = func() error { return errors.Join(end(), os.RemoveAll(dir)) }
}

// launch starts a browser with its profile in dir, which ends well or is killed.
func launch(dir string) (ctx context.Context, end func() error, kill func(), err error) {
	path := ""
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if p, err := exec.LookPath(name); err == nil && path == "" {
			path = p
		}
	}
	if path == "" {
		return nil, func() error { return nil }, nil, errors.New("there is no Chromium")
	}
	alloc, cancel := chromedp.NewExecAllocator(context.Background(), append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU, chromedp.UserDataDir(dir),
		chromedp.Flag("disable-background-networking", true))...)
	ctx, _ = chromedp.NewContext(alloc, chromedp.WithErrorf(func(string, ...any) {}))
	end = func() error {
		err := chromedp.Cancel(ctx) // waits for the browser to end
		cancel()
		return err
	}
	return ctx, end, cancel, chromedp.Run(ctx)
}

// drawn is a script that gives the drawing's svg elements.
const drawn = `document.querySelector("#pages")?.shadowRoot?.querySelector("svg")`

// tab is one tab on a page, with what it complained of.
type tab struct {
	t     testing.TB
	ctx   context.Context
	bad   []string
	asked []string // addresses
	pages []string // as they were, for the checker
}

// visit opens the page in a tab of its own and waits for its first drawing. Errors of
// its scripts, or of its policy, fail the test.
func visit(t testing.TB, browser context.Context, s *Server, width, height int64) *tab {
	t.Helper()
	ctx, end := chromedp.NewContext(browser)
	t.Cleanup(end)
	ctx, stop := context.WithTimeout(ctx, 30*time.Minute)
	t.Cleanup(stop)
	p := &tab{t: t, ctx: ctx}
	chromedp.ListenTarget(ctx, func(e any) {
		switch e := e.(type) {
		case *page.EventJavascriptDialogOpening: // a page that asks whether to leave what is not saved
			go func() { _ = chromedp.Run(ctx, page.HandleJavaScriptDialog(true)) }()
		case *network.EventRequestWillBeSent:
			p.asked = append(p.asked, e.Request.URL)
		case *runtime.EventExceptionThrown:
			p.bad = append(p.bad, e.ExceptionDetails.Error())
		case *runtime.EventConsoleAPICalled:
			if e.Type == runtime.APITypeError {
				p.bad = append(p.bad, string(e.Args[0].Value))
			}
		}
	})
	t.Cleanup(func() { assert.Empty(t, p.bad, "the page complained") })
	p.do(network.Enable(), chromedp.EmulateViewport(width, height), chromedp.Navigate(s.Address()),
		chromedp.WaitReady("body[data-ready]", chromedp.ByQuery))
	p.until(drawn)
	return p
}

func (p *tab) do(actions ...chromedp.Action) {
	p.t.Helper()
	require.NoError(p.t, chromedp.Run(p.ctx, actions...))
}

// js is what a script gives.
func js[T any](p *tab, script string) T {
	p.t.Helper()
	var v T
	p.do(chromedp.Evaluate(script, &v, func(e *runtime.EvaluateParams) *runtime.EvaluateParams { return e.WithAwaitPromise(true) }))
	return v
}

// until waits for a script to give true.
func (p *tab) until(script string) {
	p.t.Helper()
	for end := time.Now().Add(20 * time.Second); ; time.Sleep(20 * time.Millisecond) {
		if js[bool](p, "Boolean("+script+")") {
			return
		}
		require.True(p.t, time.Now().Before(end), "it never came true: %s", script)
	}
}

// dark shows the page as at night, or by day.
func (p *tab) dark(on bool) {
	scheme := map[bool]string{true: "dark", false: "light"}[on]
	p.do(emulation.SetEmulatedMedia().WithFeatures([]*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}))
}

// shot keeps a picture of the page, if FLATWRIGHT_SHOTS names a folder for them.
func (p *tab) shot(name string) {
	dir := os.Getenv("FLATWRIGHT_SHOTS")
	if dir == "" {
		return
	}
	var png []byte
	p.do(chromedp.CaptureScreenshot(&png))
	require.NoError(p.t, os.WriteFile(filepath.Join(dir, name+".png"), png, 0o644))
}

// copyOf is a file of its own with the text of an example.
func copyOf(t testing.TB, example string) string {
	t.Helper()
	text, err := os.ReadFile("../../../examples/" + example + ".yaml")
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), example+".yaml")
	require.NoError(t, os.WriteFile(path, text, 0o644))
	return path
}

// fill puts a value into a field as a person does who selects what is there and types.
func (p *tab) fill(selector, value string) {
	p.t.Helper()
	p.do(chromedp.Evaluate(fmt.Sprintf("(() => { const e = document.querySelector(%q); e.focus(); e.select(); })()", selector), nil), chromedp.KeyEvent(value))
}

// choose chooses an entry of a list.
func (p *tab) choose(selector, value string) {
	p.t.Helper()
	p.do(chromedp.Evaluate(fmt.Sprintf(`(() => { const e = document.querySelector(%q); e.focus(); e.value = %q; e.dispatchEvent(new Event("change", {bubbles: true})); })()`, selector, value), nil))
}

// click clicks on what is there at that moment: a form that is made anew meanwhile puts
// another element in the place of the one that was found.
func (p *tab) click(selector string) {
	p.t.Helper()
	for end := time.Now().Add(20 * time.Second); ; {
		err := chromedp.Run(p.ctx, chromedp.Click(selector, chromedp.ByQuery))
		if err == nil || !strings.Contains(err.Error(), "Could not find node") || time.Now().After(end) {
			require.NoError(p.t, err, selector)
			return
		}
	}
}
