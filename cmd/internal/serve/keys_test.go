package serve

import (
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTheOpeningKeyServesOnceAndIsInNoAnswer(t *testing.T) {
	s := running(t, Options{File: copyOf(t, "pebble-hat")})
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	file, err := s.Hand()
	require.NoError(t, err)
	again, err := s.Hand()
	require.NoError(t, err)
	assert.NoFileExists(t, file, "one file at a time")
	base, once, _ := strings.Cut(s.Address(), "/#open=")
	stranger := &client{t, base, &http.Client{}, ""}
	for _, wrong := range []string{"", "x", once[1:], strings.ToLower(once)} {
		code, _, _ := stranger.ask("/api/open", openQuestion{wrong})
		assert.Equal(t, http.StatusForbidden, code, wrong)
	}
	code, _, _ := stranger.ask("/api/open", openQuestion{once}, "Origin", "http://evil.example")
	assert.Equal(t, http.StatusForbidden, code)
	code, _, _ = stranger.ask("/api/open", openQuestion{once}, "Sec-Fetch-Site", "same-site")
	assert.Equal(t, http.StatusForbidden, code, "another port")
	c := let(t, s)
	c.start()
	assert.NoFileExists(t, again)
	code, body, _ := stranger.ask("/api/open", openQuestion{once})
	assert.Equal(t, http.StatusForbidden, code, "it was used")
	assert.NotContains(t, string(body), c.key)
	code, _, _ = stranger.ask("/api/open", openQuestion{""})
	assert.Equal(t, http.StatusForbidden, code, "nothing is no key")
	assert.NotContains(t, s.Address(), c.key)
}

// The child of the test below: another user of the computer, who has a shell and no rights.
func TestStranger(t *testing.T) {
	file, base := os.Getenv("FLATWRIGHT_TEST_HANDED"), os.Getenv("FLATWRIGHT_TEST_BASE")
	if file == "" {
		t.Skip("it is run by another test")
	}
	_, err := os.ReadFile(file)
	assert.ErrorIs(t, err, os.ErrPermission)
	_, err = os.ReadDir(filepath.Dir(file))
	assert.ErrorIs(t, err, os.ErrPermission)
	all, err := filepath.Glob("/proc/[0-9]*/cmdline")
	require.NoError(t, err)
	require.NotEmpty(t, all)
	for _, p := range all {
		b, _ := os.ReadFile(p) // some have ended
		assert.NotContains(t, string(b), "#open=", "a key in a command line")
	}
	c := &client{t, base, &http.Client{}, ""}
	for _, path := range []string{"/api/start", "/api/file", "/api/events"} {
		r, err := http.NewRequest(http.MethodGet, base+path, nil)
		require.NoError(t, err)
		code, _, _ := c.send(r)
		assert.Equal(t, http.StatusForbidden, code)
	}
	code, _, _ := c.ask("/api/save", saveQuestion{Text: "mine"})
	assert.Equal(t, http.StatusForbidden, code)
}

func TestAnotherUserOfTheComputerIsNotLetIn(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("the test knows how to be another user on Linux")
	}
	s := running(t, Options{File: copyOf(t, "pebble-hat")})
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	file, err := s.Hand()
	require.NoError(t, err)
	info, err := os.Stat(file)
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o600), info.Mode().Perm())
	info, err = os.Stat(filepath.Dir(file))
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o700), info.Mode().Perm())
	if os.Getuid() != 0 {
		t.Skip("only root can run a program as someone else")
	}
	base, _, _ := strings.Cut(s.Address(), "/#open=")
	program := filepath.Join("/tmp", filepath.Base(t.TempDir())+"-stranger.test")
	body, err := os.ReadFile(os.Args[0])
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(program, body, 0o755))
	t.Cleanup(func() { _ = os.Remove(program) })
	child := exec.Command(program, "-test.run=^TestStranger$", "-test.v")
	child.Dir = "/"
	child.Env = []string{"FLATWRIGHT_TEST_HANDED=" + file, "FLATWRIGHT_TEST_BASE=" + base}
	asNobody(child)
	out, err := child.CombinedOutput()
	require.NoError(t, err, "%s", out)
	assert.Contains(t, string(out), "--- PASS: TestStranger")
}
