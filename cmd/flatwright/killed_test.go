package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/cmd/internal/files"
	"flatwright/schematic/long"
)

var building sync.Once
var builtAt string

// compiled is the program itself, built once for all tests.
func compiled(t *testing.T) string {
	t.Helper()
	long.Test(t)
	building.Do(func() {
		dir, err := os.MkdirTemp("", "flatwright-test-")
		require.NoError(t, err)
		builtAt = filepath.Join(dir, "flatwright")
		if runtime.GOOS == "windows" {
			builtAt += ".exe"
		}
		out, err := exec.Command("go", "build", "-o", builtAt, ".").CombinedOutput()
		require.NoError(t, err, "%s", out)
	})
	return builtAt
}

func TestMain(m *testing.M) {
	code := m.Run()
	if builtAt != "" {
		_ = os.RemoveAll(filepath.Dir(builtAt))
	}
	os.Exit(code)
}

// drawnBy are the files that the program draws of a pattern.
func drawnBy(t *testing.T, program, pattern, dir string) map[string]string {
	t.Helper()
	out, err := exec.Command(program, "draw", "-o", dir, pattern).CombinedOutput()
	require.NoError(t, err, "%s", out)
	all := map[string]string{}
	for _, name := range names(t, dir) {
		all[name] = contents(t, filepath.Join(dir, name))
	}
	return all
}

func isTemporary(name string) bool {
	return strings.HasPrefix(name, ".flatwright-") && strings.HasSuffix(name, ".tmp")
}

// The program draws two states of a pattern over each other and is killed at random
// moments: every file is of one state or the other, and whole.
func TestAKilledProgramLeavesEveryDrawingWhole(t *testing.T) {
	program := compiled(t)
	top := t.TempDir()
	var patterns []string
	var states []map[string]string
	for i, designer := range []string{"One", "Another"} {
		path := filepath.Join(top, fmt.Sprintf("%d.yaml", i))
		require.NoError(t, os.WriteFile(path, []byte(strings.Replace(contents(t, tern), "designer: ", "designer: "+designer+" ", 1)), 0o644))
		patterns = append(patterns, path)
		states = append(states, drawnBy(t, program, path, filepath.Join(top, designer)))
	}
	require.NotEqual(t, states[0], states[1])
	began := time.Now()
	drawnBy(t, program, patterns[0], filepath.Join(top, "timed"))
	whole := time.Since(began)

	dir := filepath.Join(top, "out")
	one := filepath.Join(top, "one.yaml") // the same file in two states: what is drawn of it is the program's to replace
	rng := rand.New(rand.NewPCG(3, 4))
	runs, killed, during := 0, 0, 0
	for end := time.Now().Add(15 * time.Second); runs < 300 && time.Now().Before(end); runs++ {
		require.NoError(t, os.WriteFile(one, []byte(contents(t, patterns[runs%2])), 0o644))
		child := exec.Command(program, "draw", "-o", dir, one)
		require.NoError(t, child.Start())
		// mostly in the second half of its life, when it writes
		time.Sleep(whole/3 + time.Duration(rng.Int64N(int64(whole))))
		_ = child.Process.Kill() // it may have ended
		if child.Wait() != nil {
			killed++
		}
		entries, err := os.ReadDir(dir)
		if os.IsNotExist(err) {
			continue
		}
		require.NoError(t, err)
		for _, e := range entries {
			path := filepath.Join(dir, e.Name())
			if e.Name() == files.Record {
				continue
			}
			if isTemporary(e.Name()) {
				during++
				require.NoError(t, os.Remove(path))
				continue
			}
			body := contents(t, path)
			require.True(t, body == states[0][e.Name()] || body == states[1][e.Name()], "%s is neither old nor new", e.Name())
		}
	}
	out, err := exec.Command(program, "draw", "-o", dir, one).CombinedOutput()
	require.NoError(t, err, "what a killed program left is still its own: %s", out)
	t.Logf("killed in %d of %d runs; %d files were being written", killed, runs, during)
	require.Positive(t, killed)
}

var openAt = regexp.MustCompile(`http://[0-9.:]+/#open=\S+`)

// served is a running server and a browser that it has let in.
type served struct {
	child *exec.Cmd
	base  string
	key   string
	http  *http.Client
}

func serving(t *testing.T, program, file string) *served {
	t.Helper()
	s := &served{child: exec.Command(program, "serve", "--open=false", file)}
	messages, err := s.child.StderrPipe()
	require.NoError(t, err)
	require.NoError(t, s.child.Start())
	line, err := bufio.NewReader(messages).ReadString('\n')
	require.NoError(t, err, line)
	go func() { _, _ = io.Copy(io.Discard, messages) }()
	address := openAt.FindString(line)
	require.NotEmpty(t, address, line)
	base, once, _ := strings.Cut(address, "/#open=")
	s.base, s.http = base, &http.Client{Timeout: 20 * time.Second}
	var a struct{ Key string }
	code, err := s.ask("/api/open", map[string]string{"once": once}, &a)
	require.NoError(t, err)
	require.Equal(t, http.StatusOK, code)
	s.key = a.Key
	return s
}

func (s *served) do(r *http.Request) (*http.Response, error) {
	r.Header.Set("Flatwright-Key", s.key)
	return s.http.Do(r)
}

func (s *served) get(path string) (*http.Response, error) {
	r, err := http.NewRequest(http.MethodGet, s.base+path, nil)
	if err != nil {
		return nil, err
	}
	return s.do(r)
}

// ask posts a question. The error is that of a server that is gone.
func (s *served) ask(path string, q, answer any) (int, error) {
	b, err := json.Marshal(q)
	if err != nil {
		return 0, err
	}
	r, err := http.NewRequest(http.MethodPost, s.base+path, bytes.NewReader(b))
	if err != nil {
		return 0, err
	}
	r.Header.Set("Content-Type", "application/json")
	r.Header.Set("Origin", s.base)
	a, err := s.do(r)
	if err != nil {
		return 0, err
	}
	defer a.Body.Close()
	return a.StatusCode, json.NewDecoder(a.Body).Decode(answer)
}

type stateOfFile struct {
	State struct{ Mark, Path string }
}

// The page saves a thousand times, and its server is killed at random moments. The file is
// always whole: what was saved last, or what was being saved.
func TestAKilledServerLeavesTheFileAsItWasSavedLast(t *testing.T) {
	program := compiled(t)
	dir := t.TempDir()
	file := filepath.Join(dir, "hat.yaml")
	text := contents(t, tern)
	require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
	rng := rand.New(rand.NewPCG(5, 6))
	last := text
	saves, kills, middle := 0, 0, 0
	for end := time.Now().Add(90 * time.Second); saves < 1000 && time.Now().Before(end); kills++ {
		s := serving(t, program, file)
		a, err := s.get("/api/file")
		require.NoError(t, err)
		var now stateOfFile
		require.NoError(t, json.NewDecoder(a.Body).Decode(&now))
		require.NoError(t, a.Body.Close())
		kill := time.AfterFunc(time.Duration(5_000+rng.IntN(95_000))*time.Microsecond, func() { _ = s.child.Process.Kill() })
		asked := last
		for k := 0; ; k++ {
			asked = fmt.Sprintf("%s# save %d of run %d\n%s", text, k, kills, strings.Repeat("# filling\n", rng.IntN(20_000)))
			code, err := s.ask("/api/save", map[string]any{"text": asked, "mark": now.State.Mark, "path": now.State.Path}, &now)
			if err != nil {
				break
			}
			require.Equal(t, http.StatusOK, code)
			last = asked
			saves++
		}
		kill.Stop()
		_ = s.child.Process.Kill()
		require.Error(t, s.child.Wait())
		there := contents(t, file)
		require.True(t, there == last || there == asked, "the file is neither what was saved last nor what was being saved")
		if there != last {
			last, middle = there, middle+1
		}
		for _, name := range names(t, dir) {
			if name != "hat.yaml" {
				require.True(t, isTemporary(name), name)
				require.NoError(t, os.Remove(filepath.Join(dir, name)))
			}
		}
	}
	t.Logf("killed %d times in %d saves; %d times a save was done and not yet answered", kills, saves, middle)
	assert.Greater(t, kills, 10)
}
