package main

import (
	"bytes"
	"context"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/cmd/internal/starter"
)

// said is an output that is read while it is written.
type said struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (s *said) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.b.Write(p)
}

func (s *said) String() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.b.String()
}

// beside runs a command beside the test until stop is called, which gives its exit code.
func beside(t *testing.T, args ...string) (errs *said, stop func() int) {
	t.Helper()
	errs = &said{}
	ctx, cancel := context.WithCancelCause(context.Background())
	done := make(chan int, 1)
	go func() { done <- run(ctx, args, environment{in: strings.NewReader(""), out: &said{}, err: errs}) }()
	var once sync.Once
	code := 0
	stop = func() int {
		once.Do(func() {
			cancel(errors.New("interrupt"))
			code = <-done
		})
		return code
	}
	t.Cleanup(func() { stop() })
	return errs, stop
}

func eventually(t *testing.T, errs *said, text string, times int) {
	t.Helper()
	require.Eventually(t, func() bool { return strings.Count(errs.String(), text) >= times }, 20*time.Second, 20*time.Millisecond, "%q, %d times", text, times)
}

func TestWatchDrawsAgainAndLeavesDrawingsOfABrokenFileAsTheyWere(t *testing.T) {
	dir := t.TempDir()
	path, out := filepath.Join(dir, "p.yaml"), filepath.Join(dir, "out")
	text := contents(t, tern)
	require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
	errs, stop := beside(t, "watch", "--size", "M", "--format", "svg", "--out", out, path)
	eventually(t, errs, "wrote 1 file", 1)
	drawn := names(t, out)
	require.Len(t, drawn, 1)
	first := contents(t, filepath.Join(out, drawn[0]))

	require.NoError(t, os.WriteFile(path, []byte("sizes: ["), 0o644))
	eventually(t, errs, "the drawings are as they were", 1)
	assert.Equal(t, first, contents(t, filepath.Join(out, drawn[0])))

	other := strings.Replace(text, "pattern: ", "pattern: Other ", 1)
	require.NoError(t, os.WriteFile(path+".new", []byte(other), 0o644))
	require.NoError(t, os.Rename(path+".new", path))
	eventually(t, errs, "wrote 1 file", 2)
	assert.Len(t, names(t, out), 2, "another title, another file")

	require.NoError(t, os.Remove(path))
	eventually(t, errs, "waiting for it", 1)
	assert.Equal(t, exitWell, stop())
	for _, n := range names(t, out) {
		assert.True(t, strings.HasSuffix(contents(t, filepath.Join(out, n)), "</svg>\n"), "%s is whole", n)
	}
}

func TestWatchNeedsAFile(t *testing.T) {
	assert.Equal(t, exitUsage, flatwright(t, "", "watch", "-").code)
	r := flatwright(t, "", "watch", filepath.Join(t.TempDir(), "none.yaml"))
	assert.Equal(t, exitUsage, r.code)
	assert.Contains(t, r.err, "no such file")
}

func TestServePrintsWhereItIsAndEndsWell(t *testing.T) {
	errs, stop := beside(t, "serve", "--open=false", tern)
	eventually(t, errs, "http://127.0.0.1:", 1)
	assert.Equal(t, exitWell, stop())
	assert.Contains(t, errs.String(), "ended")
	r := flatwright(t, "", "serve", "--open=false", filepath.Join(t.TempDir(), "none.yaml"))
	assert.Equal(t, exitUsage, r.code)
	assert.Contains(t, r.err, "no such file")
}

func TestNewWritesAFileThatChecksAndNeverWritesOver(t *testing.T) {
	dir := t.TempDir()
	for _, k := range starter.Kinds() {
		path := filepath.Join(dir, k.Name+".yaml")
		r := flatwright(t, "", "new", k.Name, path)
		require.Equal(t, exitWell, r.code, r.err)
		assert.Contains(t, r.err, "flatwright serve "+path)
		r = flatwright(t, "", "check", "--strict", path)
		assert.Equal(t, exitWell, r.code, r.out)
	}
	path := filepath.Join(dir, "hat.yaml")
	require.NoError(t, os.WriteFile(path, []byte("mine"), 0o644))
	r := flatwright(t, "", "new", "hat", path)
	assert.Equal(t, exitUsage, r.code)
	assert.Contains(t, r.err, "already")
	assert.Equal(t, "mine", contents(t, path))

	r = flatwright(t, "", "new", "tent", filepath.Join(dir, "tent.yaml"))
	assert.Equal(t, exitUsage, r.code)
	assert.Contains(t, r.err, "the kinds are cardigan, jumper")
	assert.Equal(t, string(starter.Text("top")), flatwright(t, "", "new", "top", "-").out)
	assert.Equal(t, exitUsage, flatwright(t, "", "new", "hat").code)
}

func TestTheManualTellsOfEveryCommandAndFlagAndIsWellFormed(t *testing.T) {
	r := flatwright(t, "", "man")
	require.Equal(t, exitWell, r.code)
	for _, c := range newRoot(environment{}).Commands() {
		if c.IsAvailableCommand() {
			assert.Contains(t, r.out, `.SS "`+c.Name(), c.Name())
		}
	}
	assert.Contains(t, r.out, `\fB\-\-paper a4|letter\fR`)
	assert.Equal(t, r.out, flatwright(t, "", "man").out)
	groff, err := exec.LookPath("groff")
	if err != nil {
		t.Skip("there is no groff")
	}
	cmd := exec.Command(groff, "-man", "-ww", "-Tutf8", "-K", "utf8", "-z")
	cmd.Stdin = strings.NewReader(r.out)
	warned, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", warned)
	assert.Empty(t, string(warned))
}

func TestCompletionIsShownAndWorksForEveryShell(t *testing.T) {
	assert.Contains(t, flatwright(t, "", "--help").out, "completion")
	help := flatwright(t, "", "completion", "--help").out
	for _, shell := range []string{"bash", "zsh", "fish", "powershell"} {
		assert.Contains(t, help, "flatwright completion "+shell)
		r := flatwright(t, "", "completion", shell)
		require.Equal(t, exitWell, r.code, shell)
		assert.Contains(t, r.out, "flatwright", shell)
	}
	assert.Equal(t, exitUsage, flatwright(t, "", "completion", "csh").code)
	assert.Contains(t, flatwright(t, "", "__complete", "new", "").out, "cardigan")
	assert.Contains(t, flatwright(t, "", "__complete", "ser").out, "serve")
}
