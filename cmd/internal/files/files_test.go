package files

import (
	"bytes"
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func listing(t *testing.T, dir string) map[string]string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	got := map[string]string{}
	for _, e := range entries {
		body, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			body = []byte("(folder)")
		}
		got[e.Name()] = string(body)
	}
	return got
}

func TestWriteMakesTheFolderAndReplacesWhatIsThere(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new", "deeper")
	require.NoError(t, Write(context.Background(), dir, []File{{"a.svg", []byte("one")}, {"b.pdf", []byte("two")}}))
	require.NoError(t, Write(context.Background(), dir, []File{{"a.svg", []byte("three")}}))
	assert.Equal(t, map[string]string{"a.svg": "three", "b.pdf": "two"}, listing(t, dir))
}

func TestWriteKeepsTheRightsOfTheFileItReplaces(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows has no such rights")
	}
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "a"), []byte("old"), 0o600))
	require.NoError(t, Write(context.Background(), dir, []File{{"a", []byte("new")}}))
	info, err := os.Stat(filepath.Join(dir, "a"))
	require.NoError(t, err)
	assert.Equal(t, fs.FileMode(0o600), info.Mode().Perm())
}

func TestWriteChangesNothingWhenOneFileCannotBeWritten(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "a"), []byte("old"), 0o644))
	require.NoError(t, os.Mkdir(filepath.Join(dir, "b"), 0o755))
	err := Write(context.Background(), dir, []File{{"a", []byte("new")}, {"b", []byte("new")}})
	require.ErrorContains(t, err, "there is a folder of that name")
	assert.ErrorContains(t, err, filepath.Join(dir, "b"), "the error names the whole path")
	assert.Equal(t, map[string]string{"a": "old", "b": "(folder)"}, listing(t, dir))
}

// deadAfter is a context that ends when Err has been asked n times: an
// interrupt in the middle of the writing.
type deadAfter struct {
	context.Context
	n *int
}

func (d deadAfter) Err() error {
	if *d.n--; *d.n < 0 {
		return context.Canceled
	}
	return nil
}

func TestWriteInterruptedAtAnyMomentLeavesOldFilesAndNoTraces(t *testing.T) {
	all := []File{{"a", []byte("new a")}, {"b", []byte("new b")}, {"c", []byte("new c")}}
	for n := range len(all) + 1 {
		dir := t.TempDir()
		require.NoError(t, os.WriteFile(filepath.Join(dir, "a"), []byte("old a"), 0o644))
		left := n
		err := Write(deadAfter{context.Background(), &left}, dir, all)
		require.Error(t, err, "ended at moment %d", n)
		assert.Equal(t, map[string]string{"a": "old a"}, listing(t, dir), "ended at moment %d", n)
	}
	dir := t.TempDir()
	left := len(all) + 1
	require.NoError(t, Write(deadAfter{context.Background(), &left}, dir, all), "after the last moment all is written")
	assert.Len(t, listing(t, dir), len(all))
}

func TestWriteInterruptedLeavesNoNewFolder(t *testing.T) {
	top := t.TempDir()
	ctx, stop := context.WithCancelCause(context.Background())
	stop(errors.New("interrupted"))
	err := Write(ctx, filepath.Join(top, "x", "y"), []File{{"a", nil}})
	require.ErrorContains(t, err, "interrupted")
	assert.Empty(t, listing(t, top))
}

func TestWriteIntoAFolderThatIsAFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "out")
	require.NoError(t, os.WriteFile(path, []byte("mine"), 0o644))
	for _, dir := range []string{path, filepath.Join(path, "below")} {
		require.ErrorContains(t, Write(context.Background(), dir, []File{{"a", nil}}), dir)
	}
	body, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "mine", string(body))
}

func TestWriteIntoAReadOnlyFolder(t *testing.T) {
	dir := "/proc/self" // read-only even for root
	if runtime.GOOS != "linux" || os.Getuid() != 0 {
		if runtime.GOOS == "windows" {
			t.Skip("Windows has no read-only folders")
		}
		dir = t.TempDir()
		require.NoError(t, os.Chmod(dir, 0o555))
		t.Cleanup(func() { _ = os.Chmod(dir, 0o755) })
	}
	err := Write(context.Background(), dir, []File{{"a.svg", []byte("x")}})
	require.ErrorContains(t, err, "cannot write "+filepath.Join(dir, "a.svg"))
	err = Write(context.Background(), filepath.Join(dir, "below"), []File{{"a.svg", []byte("x")}})
	require.ErrorContains(t, err, "cannot make the folder "+filepath.Join(dir, "below"))
}

func TestWriteIntoAFolderThatVanishes(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "gone")
	_, err := writeInto(context.Background(), dir, []File{{"a", nil}}, nil)
	require.ErrorContains(t, err, dir)
	require.ErrorIs(t, err, fs.ErrNotExist)
}

func TestWriteThroughAFolderThatIsALink(t *testing.T) {
	top := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(top, "real"), 0o755))
	link := filepath.Join(top, "link")
	if err := os.Symlink("real", link); err != nil {
		t.Skip("no links here:", err)
	}
	require.NoError(t, Write(context.Background(), link, []File{{"a", []byte("x")}}))
	assert.Equal(t, map[string]string{"a": "x"}, listing(t, filepath.Join(top, "real")))
}

func TestWriteReplacesALinkAndNotWhatItPointsAt(t *testing.T) {
	top := t.TempDir()
	secret := filepath.Join(top, "secret")
	require.NoError(t, os.WriteFile(secret, []byte("kept"), 0o644))
	dir := filepath.Join(top, "out")
	require.NoError(t, os.Mkdir(dir, 0o755))
	if err := os.Symlink(secret, filepath.Join(dir, "a")); err != nil {
		t.Skip("no links here:", err)
	}
	require.NoError(t, Write(context.Background(), dir, []File{{"a", []byte("new")}}))
	body, err := os.ReadFile(secret)
	require.NoError(t, err)
	assert.Equal(t, "kept", string(body))
	assert.Equal(t, map[string]string{"a": "new"}, listing(t, dir))
}

func TestWriteRefusesNamesThatAreNoPlainFileOnEverySystem(t *testing.T) {
	for _, name := range []string{
		"", ".", "..", "../a", `..\a`, "a/b", "/etc/a", `C:\a`, "c:a", "a\x00b", "a\nb", "what?", "a*", `"a"`, "a|b", "<a>",
		"con", "CON.svg", "nul .txt", "Lpt9.pdf", "a.", "a ", strings.Repeat("n", 201),
	} {
		top := t.TempDir()
		dir := filepath.Join(top, "out")
		err := Write(context.Background(), dir, []File{{"fine", nil}, {name, []byte("x")}})
		assert.ErrorIs(t, err, errName, "%q", name)
		assert.Empty(t, listing(t, top), "%q", name)
	}
	for _, name := range []string{"a.svg", "saltmarsh-2x.svg", "console.txt", "größe.svg", "..a"} {
		assert.NoError(t, CheckName(name), "%q", name)
	}
}

func TestWriteRefusesTwoNamesThatAreOneOnSomeSystems(t *testing.T) {
	err := Write(context.Background(), t.TempDir(), []File{{"A.svg", nil}, {"a.svg", nil}})
	require.ErrorContains(t, err, "one on some systems")
}

func TestReadGivesTheWholeFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "p.yaml")
	body := bytes.Repeat([]byte("x"), MaxRead)
	require.NoError(t, os.WriteFile(path, body, 0o644))
	got, err := Read(context.Background(), path, nil)
	require.NoError(t, err)
	assert.Equal(t, body, got, "a file of just the bound is read")
	got, err = Read(context.Background(), Stdio, strings.NewReader("version: 1"))
	require.NoError(t, err)
	assert.Equal(t, "version: 1", string(got))
}

func TestReadSaysWhatIsWrong(t *testing.T) {
	dir := t.TempDir()
	big := filepath.Join(dir, "big")
	require.NoError(t, os.WriteFile(big, make([]byte, MaxRead+1), 0o644))
	for _, c := range []struct {
		path, want string
		stdin      io.Reader
	}{
		{path: filepath.Join(dir, "none.yaml"), want: "there is no such file"},
		{path: dir, want: "it is a folder"},
		{path: big, want: "at most 1 MiB"},
		{path: Stdio, stdin: bytes.NewReader(make([]byte, MaxRead+1)), want: "standard input: it is too large to read: at most 1 MiB"},
		{path: Stdio, want: "there is none"},
		{path: Stdio, stdin: iotest.ErrReader(errors.New("the pipe broke")), want: "the pipe broke"},
	} {
		_, err := Read(context.Background(), c.path, c.stdin)
		if assert.ErrorContains(t, err, c.want) && c.path != Stdio {
			assert.ErrorContains(t, err, c.path)
			assert.NotContains(t, err.Error(), "open ", "no system calls in a message")
		}
	}
}

func TestReadStopsWaitingForStandardInput(t *testing.T) {
	in, out := io.Pipe()
	defer out.Close()
	ctx, stop := context.WithCancelCause(context.Background())
	stop(errors.New("interrupt"))
	_, err := Read(ctx, Stdio, in)
	require.ErrorContains(t, err, "interrupt")
}

func TestReadOfAnEndlessFileStopsAtTheBound(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("/dev/zero is needed")
	}
	_, err := Read(context.Background(), "/dev/zero", nil)
	require.ErrorIs(t, err, errTooLarge)
}

func BenchmarkWrite(b *testing.B) {
	var all []File
	for _, n := range []string{"a", "b", "c", "d", "e", "f", "g", "h", "i", "j", "k"} {
		all = append(all, File{n, make([]byte, 30_000)})
	}
	dir := b.TempDir()
	b.ReportAllocs()
	for b.Loop() {
		if err := Write(context.Background(), dir, all); err != nil {
			b.Fatal(err)
		}
	}
}
