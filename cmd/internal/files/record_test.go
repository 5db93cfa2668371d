package files

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAnOutputKeepsWhatItsCommandDidNotWrite(t *testing.T) {
	dir := t.TempDir()
	put := func(name, text string) {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644))
	}
	o := Output{Dir: dir, By: "draw", From: filepath.Join(dir, "a.yaml"), Inputs: []string{filepath.Join(dir, "a.yaml")}}
	put("a.yaml", "pattern")
	one, two := []File{{"a.svg", []byte("one")}}, []File{{"a.svg", []byte("two")}, {"b.svg", []byte("b")}}
	require.NoError(t, o.Write(context.Background(), one))
	require.NoError(t, o.Write(context.Background(), two), "its own, unchanged")
	for name, other := range map[string]Output{
		"another command": {Dir: dir, By: "chart", From: o.From}, "another pattern": {Dir: dir, By: "draw", From: filepath.Join(dir, "b.yaml")},
		"standard input": {Dir: dir, By: "draw", From: Stdio},
	} {
		var kept *kept
		require.ErrorAs(t, other.Write(context.Background(), one), &kept, name)
		assert.Equal(t, []string{"a.svg"}, kept.Others)
		require.NoError(t, other.Write(context.Background(), two), "%s would write the same bytes", name)
		require.NoError(t, o.Write(context.Background(), two))
	}
	put("a.svg", "two, retouched")
	put("c.svg", "mine")
	err := o.Write(context.Background(), append(one, File{"b.svg", []byte("new")}, File{"c.svg", []byte("c")}))
	assert.EqualError(t, err, "kept "+filepath.Join(dir, "a.svg")+" and 1 more, which this command did not write or which were changed since; --overwrite replaces them")
	assert.Equal(t, "b", listing(t, dir)["b.svg"], "all or nothing")
	err = o.Write(context.Background(), []File{{"a.yaml", []byte("x")}})
	assert.ErrorContains(t, err, "none writes over what it reads")
	o.Overwrite = true
	assert.ErrorContains(t, o.Write(context.Background(), []File{{"a.yaml", []byte("x")}}), "none writes over what it reads")
	require.NoError(t, o.Write(context.Background(), one))
	assert.Equal(t, "one", listing(t, dir)["a.svg"])
}

// A program that is killed after its record and before the names leaves the old files: they are
// its own still.
func TestARecordIsRightAtEveryMoment(t *testing.T) {
	dir := t.TempDir()
	o := Output{Dir: dir, By: "draw", From: Stdio}
	require.NoError(t, o.Write(context.Background(), []File{{"a", []byte("old")}}))
	root, err := os.OpenRoot(dir)
	require.NoError(t, err)
	defer root.Close()
	r, err := o.claim(root, []File{{"a", []byte("new")}})
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(dir, Record), r.Body, 0o644))
	require.NoError(t, o.Write(context.Background(), []File{{"a", []byte("newer")}}))
	_, err = o.claim(root, []File{{"a", []byte("newest")}})
	require.NoError(t, err)
	require.NoError(t, os.Remove(filepath.Join(dir, "a")))
	require.NoError(t, o.Write(context.Background(), []File{{"b", []byte("b")}}))
	assert.NotContains(t, listing(t, dir)[Record], `"a"`, "a file that is gone is forgotten")
}

func TestALinkOrAnUnreadRecordIsKept(t *testing.T) {
	dir := t.TempDir()
	far := filepath.Join(t.TempDir(), "far")
	require.NoError(t, os.WriteFile(far, []byte("far"), 0o644))
	if os.Symlink(far, filepath.Join(dir, "a")) != nil {
		t.Skip("no links here")
	}
	o := Output{Dir: dir, By: "draw", From: Stdio}
	assert.ErrorContains(t, o.Write(context.Background(), []File{{"a", []byte("x")}}), "kept")
	require.NoError(t, os.WriteFile(filepath.Join(dir, Record), []byte("not ours"), 0o644))
	assert.ErrorContains(t, o.Write(context.Background(), []File{{"b", []byte("x")}}), "kept "+filepath.Join(dir, Record))
}
