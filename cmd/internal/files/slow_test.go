//go:build unix

package files

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestReadOfAPipeToWhichNoOneWritesCanBeStopped(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "p.yaml")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	ctx, stop := context.WithCancelCause(context.Background())
	done := make(chan error, 1)
	go func() {
		_, err := Read(ctx, pipe, nil)
		done <- err
	}()
	stop(errors.New("interrupt"))
	select {
	case err := <-done:
		require.ErrorContains(t, err, "interrupt")
	case <-time.After(20 * time.Second):
		require.Fail(t, "it waits on")
	}
}

func TestReadTakesWhatComesSlowly(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "p.yaml")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	go func() {
		out, err := os.OpenFile(pipe, os.O_WRONLY, 0)
		if !assert.NoError(t, err) {
			return
		}
		defer out.Close()
		for _, part := range []string{"pat", "tern: ", "Slow\n"} {
			_, err := out.WriteString(part)
			assert.NoError(t, err)
			time.Sleep(20 * time.Millisecond)
		}
	}()
	text, err := Read(t.Context(), pipe, nil)
	require.NoError(t, err)
	assert.Equal(t, "pattern: Slow\n", string(text))
}
