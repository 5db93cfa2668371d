package serve

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/render/compare"
)

// running is a server with the options, until the test ends.
func running(t testing.TB, o Options) *Server {
	t.Helper()
	o.Port = -1
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

// browser starts a browser, or skips the test where there is none. Its tabs are
// made of the context.
func browser(t testing.TB) context.Context {
	t.Helper()
	path := ""
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if p, err := exec.LookPath(name); err == nil && path == "" {
			path = p
		}
	}
	if path == "" {
		if compare.Required() {
			require.FailNow(t, "there is no Chromium")
		}
		t.Skip("there is no Chromium")
	}
	alloc, end := chromedp.NewExecAllocator(context.Background(), append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU, chromedp.UserDataDir(t.TempDir()),
		chromedp.Flag("disable-background-networking", true))...)
	ctx, _ := chromedp.NewContext(alloc, chromedp.WithErrorf(func(string, ...any) {}))
	t.Cleanup(func() {
		assert.NoError(t, chromedp.Cancel(ctx)) // waits for the browser to end
		end()
	})
	require.NoError(t, chromedp.Run(ctx))
	return ctx
}

// drawn is a script that gives the drawing's svg elements.
const drawn = `document.querySelector("#pages")?.shadowRoot?.querySelector("svg")`

// tab is one tab on a page, with what it complained of.
type tab struct {
	t   testing.TB
	ctx context.Context
	bad []string
}

// visit opens the page in a tab of its own and waits for its first drawing. Errors of
// its scripts, or of its policy, fail the test.
func visit(t testing.TB, browser context.Context, s *Server, width, height int64) *tab {
	t.Helper()
	ctx, end := chromedp.NewContext(browser)
	t.Cleanup(end)
	ctx, stop := context.WithTimeout(ctx, 2*time.Minute)
	t.Cleanup(stop)
	p := &tab{t: t, ctx: ctx}
	chromedp.ListenTarget(ctx, func(e any) {
		switch e := e.(type) {
		case *runtime.EventExceptionThrown:
			p.bad = append(p.bad, e.ExceptionDetails.Error())
		case *runtime.EventConsoleAPICalled:
			if e.Type == runtime.APITypeError {
				p.bad = append(p.bad, string(e.Args[0].Value))
			}
		}
	})
	t.Cleanup(func() { assert.Empty(t, p.bad, "the page complained") })
	p.do(chromedp.EmulateViewport(width, height), chromedp.Navigate(s.Address()),
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
