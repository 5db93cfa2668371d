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

func TestWhatAKilledProgramLeftIsSweptAway(t *testing.T) {
	dir := t.TempDir()
	old := time.Now().Add(-2 * stale)
	left, fresh, hers := tempName(), tempName(), tempStart+"notes"+tempEnd
	for _, name := range []string{left, fresh, hers} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte("half"), 0o644))
		if name != fresh {
			require.NoError(t, os.Chtimes(filepath.Join(dir, name), old, old))
		}
	}
	require.NoError(t, Write(context.Background(), dir, []File{{"a", []byte("x")}}))
	assert.Equal(t, map[string]string{"a": "x", fresh: "half", hers: "half"}, listing(t, dir), "another program may be writing the fresh one")
}

func TestCreateWritesAWholeFileOrNone(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "new.yaml")
	require.NoError(t, Create(context.Background(), path, []byte("mine")))
	require.ErrorContains(t, Create(context.Background(), path, []byte("other")), "that file already exists")
	require.ErrorContains(t, Create(context.Background(), filepath.Join(dir, "no", "new.yaml"), nil), "there is no such file or folder")
	require.ErrorIs(t, Create(context.Background(), filepath.Join(dir, "CON"), nil), errName)
	ended, stop := context.WithCancel(context.Background())
	stop()
	require.Error(t, Create(ended, filepath.Join(dir, "late"), nil))
	if os.Symlink("elsewhere", filepath.Join(dir, "link")) == nil {
		require.ErrorContains(t, Create(context.Background(), filepath.Join(dir, "link"), nil), "already", "a link that leads nowhere is not written through")
		require.NoError(t, os.Remove(filepath.Join(dir, "link")))
	}
	assert.Equal(t, map[string]string{"new.yaml": "mine"}, listing(t, dir))
}
