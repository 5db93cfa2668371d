package files

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

type told struct {
	text string
	err  error
}

func watching(t *testing.T, path string) <-chan told {
	t.Helper()
	ctx, stop := context.WithCancel(context.Background())
	c, done := make(chan told, 10), make(chan struct{})
	go func() {
		defer close(done)
		Watch(ctx, path, func(text []byte, err error) { c <- told{string(text), err} })
	}()
	t.Cleanup(func() { stop(); <-done })
	return c
}

func next(t *testing.T, c <-chan told) told {
	t.Helper()
	select {
	case w := <-c:
		return w
	case <-time.After(15 * time.Second):
		require.FailNow(t, "nothing was told")
		return told{}
	}
}

func TestWatchTellsWhatIsInTheFileNowAndAfterEachChange(t *testing.T) {
	path := filepath.Join(t.TempDir(), "p.yaml")
	require.NoError(t, os.WriteFile(path, []byte("one"), 0o644))
	c := watching(t, path)
	assert.Equal(t, told{"one", nil}, next(t, c))
	require.NoError(t, os.WriteFile(path, []byte("two"), 0o644))
	assert.Equal(t, told{"two", nil}, next(t, c))

	// as editors do that write a new file and rename it
	require.NoError(t, os.WriteFile(path+"~", []byte("three"), 0o644))
	require.NoError(t, os.Rename(path+"~", path))
	assert.Equal(t, told{"three", nil}, next(t, c))

	require.NoError(t, os.Remove(path))
	assert.ErrorContains(t, next(t, c).err, "there is no such file")
	require.NoError(t, os.WriteFile(path, []byte("three"), 0o644))
	assert.Equal(t, told{"three", nil}, next(t, c), "it is told that the file is back")
}

func TestWatchTellsOnlyAWholeFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "p.yaml")
	require.NoError(t, os.WriteFile(path, []byte("whole"), 0o644))
	c := watching(t, path)
	next(t, c)
	f, err := os.Create(path)
	require.NoError(t, err)
	for range 30 {
		_, err := f.WriteString("0123456789")
		require.NoError(t, err)
		time.Sleep(10 * time.Millisecond)
	}
	require.NoError(t, f.Close())
	assert.Len(t, next(t, c).text, 300)
}

func TestWatchDoesNotTellOfAFileThatWasOnlyTouched(t *testing.T) {
	path := filepath.Join(t.TempDir(), "p.yaml")
	require.NoError(t, os.WriteFile(path, []byte("same"), 0o644))
	c := watching(t, path)
	next(t, c)
	require.NoError(t, os.Chtimes(path, time.Time{}, time.Now().Add(time.Hour)))
	time.Sleep(3 * lookEvery)
	require.NoError(t, os.WriteFile(path, []byte("other"), 0o644))
	assert.Equal(t, told{"other", nil}, next(t, c))
}
