//go:build linux

package main

import (
	"bytes"
	"fmt"
	"net/http"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ran is what the program did: its exit code and messages.
func ran(t *testing.T, cmd *exec.Cmd) (code int, messages string) {
	t.Helper()
	var out bytes.Buffer
	cmd.Stderr = &out
	err := cmd.Run()
	if cmd.ProcessState == nil {
		require.NoError(t, err)
	}
	return cmd.ProcessState.ExitCode(), out.String()
}

// small is a folder on a disk of 64 KiB, or the test is skipped where none can be made.
func small(t *testing.T) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "disk")
	require.NoError(t, os.Mkdir(dir, 0o755))
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, "size=64k"); err != nil {
		t.Skip("no disk can be made here:", err)
	}
	t.Cleanup(func() { assert.NoError(t, syscall.Unmount(dir, syscall.MNT_DETACH)) })
	return dir
}

func refusedBy(t *testing.T, code int, messages, why string) {
	t.Helper()
	assert.Equal(t, exitUsage, code, messages)
	assert.Contains(t, messages, why)
	assert.NotContains(t, messages, "goroutine", "a person reads it")
}

func TestAFullDiskKeepsWhatIsThereAndIsTold(t *testing.T) {
	program := compiled(t)
	dir := small(t)
	old := strings.Repeat("old ", 10_000)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "tern-slipover-m.svg"), []byte(old), 0o644))
	for range 3 {
		code, messages := ran(t, exec.Command(program, "draw", "--overwrite", "-o", dir, tern))
		refusedBy(t, code, messages, "no space left on device")
		assert.Equal(t, []string{"tern-slipover-m.svg"}, names(t, dir), "no half of a file, and nothing that takes up room")
		assert.Equal(t, old, contents(t, filepath.Join(dir, "tern-slipover-m.svg")))
	}
	code, messages := ran(t, exec.Command(program, "new", "cardigan", filepath.Join(dir, "mine.yaml")))
	assert.Equal(t, exitWell, code, messages)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "rest"), make([]byte, 16<<10), 0o644))
	code, messages = ran(t, exec.Command(program, "new", "cardigan", filepath.Join(dir, "other.yaml")))
	refusedBy(t, code, messages, "no space left on device")
	assert.NoFileExists(t, filepath.Join(dir, "other.yaml"))
}

func TestAFullDiskUnderThePageKeepsTheFile(t *testing.T) {
	program := compiled(t)
	dir := small(t)
	file := filepath.Join(dir, "hat.yaml")
	require.NoError(t, os.WriteFile(file, []byte(contents(t, tern)), 0o644))
	s := serving(t, program, file)
	defer func() {
		require.NoError(t, s.child.Process.Signal(os.Interrupt))
		require.NoError(t, s.child.Wait())
	}()
	text := contents(t, tern)
	var now stateOfFile
	code, err := s.ask("/api/save", map[string]any{"text": text, "path": file}, &now)
	require.NoError(t, err)
	require.Equal(t, http.StatusOK, code)
	var no struct{ Error string }
	code, err = s.ask("/api/save", map[string]any{"text": text + strings.Repeat("# more\n", 10_000), "path": file, "mark": now.State.Mark}, &no)
	require.NoError(t, err)
	assert.Equal(t, http.StatusUnprocessableEntity, code)
	assert.Contains(t, no.Error, "no space left on device")
	assert.Equal(t, text, contents(t, file))
	code, err = s.ask("/api/save", map[string]any{"text": text + "# less\n", "path": file, "mark": now.State.Mark}, &now)
	require.NoError(t, err)
	assert.Equal(t, http.StatusOK, code, "there is room for it again")
	assert.Equal(t, text+"# less\n", contents(t, file))
}

func TestAFullStandardOutputIsTold(t *testing.T) {
	program := compiled(t)
	for _, args := range []string{"draw --size M --format svg -o -", "table", "rows", "check --format json", "grade --fill", "page -o -", "schema"} {
		full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
		require.NoError(t, err)
		words := strings.Fields(args)
		if args != "schema" {
			words = append(words, tern)
		}
		cmd := exec.Command(program, words...)
		cmd.Stdout = full
		code, messages := ran(t, cmd)
		require.NoError(t, full.Close())
		refusedBy(t, code, messages, "no space left on device")
	}
}

func TestAFileLargerThanItMayBeIsTold(t *testing.T) {
	program := compiled(t)
	dir := t.TempDir()
	cmd := exec.Command("sh", "-c", `ulimit -f 8; exec "$0" draw -o "$1" "$2"`, program, dir, tern)
	code, messages := ran(t, cmd)
	refusedBy(t, code, messages, "file too large")
	assert.Empty(t, names(t, dir))
}

func TestAFolderOnAReadOnlyDiskIsTold(t *testing.T) {
	program := compiled(t)
	dir := small(t)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "hat.yaml"), []byte(contents(t, tern)), 0o644))
	require.NoError(t, syscall.Mount("tmpfs", dir, "tmpfs", syscall.MS_REMOUNT|syscall.MS_RDONLY, "size=64k"))
	for _, args := range [][]string{{"draw", "-o", dir, tern}, {"draw", "-o", filepath.Join(dir, "new"), tern}, {"new", "hat", filepath.Join(dir, "mine.yaml")}} {
		code, messages := ran(t, exec.Command(program, args...))
		refusedBy(t, code, messages, "read-only file system")
	}
	s := serving(t, program, filepath.Join(dir, "hat.yaml"))
	var no struct{ Error string }
	code, err := s.ask("/api/save", map[string]any{"text": "x", "path": filepath.Join(dir, "hat.yaml"), "both": true}, &no)
	require.NoError(t, err)
	assert.Equal(t, http.StatusUnprocessableEntity, code)
	assert.Contains(t, no.Error, "read-only file system")
	require.NoError(t, s.child.Process.Signal(os.Interrupt))
	require.NoError(t, s.child.Wait())
	assert.Equal(t, contents(t, tern), contents(t, filepath.Join(dir, "hat.yaml")))
}

func TestAnInterruptEndsAWaitForASlowFile(t *testing.T) {
	program := compiled(t)
	pipe := filepath.Join(t.TempDir(), "slow.yaml")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	for i, command := range []string{"check", "draw", "table", "watch", "serve", "rows", "chart"} {
		sent, told := os.Signal(os.Interrupt), "interrupt"
		if i > 4 {
			sent, told = syscall.SIGHUP, "hangup"
			if signal.Ignored(syscall.SIGHUP) { // the tests run under nohup, and so does the program
				continue
			}
		}
		cmd := exec.Command(program, command, pipe)
		var messages bytes.Buffer
		cmd.Stderr = &messages
		require.NoError(t, cmd.Start())
		time.Sleep(300 * time.Millisecond) // it waits for someone who writes
		require.NoError(t, cmd.Process.Signal(sent))
		ended := make(chan error, 1)
		go func() { ended <- cmd.Wait() }()
		select {
		case <-ended:
			assert.Equal(t, exitUsage, cmd.ProcessState.ExitCode(), "%s: %s", command, messages.String())
			assert.Contains(t, messages.String(), told, command)
		case <-time.After(20 * time.Second):
			_ = cmd.Process.Kill()
			assert.Fail(t, fmt.Sprintf("%s waits on", command))
		}
	}
}

func TestAFileThatVanishesIsTold(t *testing.T) {
	program := compiled(t)
	top := t.TempDir()
	dir := filepath.Join(top, "patterns")
	require.NoError(t, os.Mkdir(dir, 0o755))
	file := filepath.Join(dir, "hat.yaml")
	require.NoError(t, os.WriteFile(file, []byte(contents(t, tern)), 0o644))
	s := serving(t, program, file)
	require.NoError(t, os.RemoveAll(dir))
	a, err := s.get("/api/file")
	require.NoError(t, err)
	require.NoError(t, a.Body.Close())
	assert.Equal(t, http.StatusNotFound, a.StatusCode)
	var now stateOfFile
	code, err := s.ask("/api/save", map[string]any{"text": "pattern: Back again\n", "path": file}, &now)
	require.NoError(t, err)
	assert.Equal(t, http.StatusOK, code, "what she has typed is not lost with the folder")
	assert.Equal(t, "pattern: Back again\n", contents(t, file))
	require.NoError(t, s.child.Process.Signal(os.Interrupt))
	require.NoError(t, s.child.Wait())
	code, messages := ran(t, exec.Command(program, "draw", filepath.Join(dir, "none.yaml")))
	refusedBy(t, code, messages, "there is no such file")
}
