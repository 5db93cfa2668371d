package serve

import (
	"context"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestBytesOfAFileStayWhereItsWordsStay(t *testing.T) {
	for _, c := range []struct{ name, file, words, want string }{
		{"nothing changed", "\ufeffa\r\nb\rc\nd", "a\nb\nc\nd", "\ufeffa\r\nb\rc\nd"},
		{"a line between", "a\r\nb\r\n", "a\nnew\nb\n", "a\r\nnew\r\nb\r\n"},
		{"a line changed", "a\r\nb\nc\r\n", "a\nB\nc\n", "a\r\nB\r\nc\r\n"},
		{"a line at the end", "a\r\nb", "a\nb\nc", "a\r\nb\r\nc"},
		{"all taken out", "\ufeffa\r\n", "", "\ufeff"},
		{"a new file", "", "a\nb\n", "a\nb\n"},
		{"the first words of a file from elsewhere", "\ufeff\r\n", "a\nb\n", "\ufeffa\r\nb\r\n"},
	} {
		assert.Equal(t, c.want, string(bytesOf([]byte(c.file), c.words)), c.name)
	}
}

func TestWordsThatDoNotChangeGiveTheSameBytes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		file := strings.Join(rapid.SliceOf(rapid.SampledFrom([]string{"a", "b: 1", "\r\n", "\n", "\r", "é"})).Draw(t, "file"), "")
		if rapid.Bool().Draw(t, "marked") {
			file = byteOrderMark + file
		}
		words, err := wordsOf("x", []byte(file))
		require.NoError(t, err)
		assert.NotContains(t, words, "\r")
		assert.Equal(t, file, string(bytesOf([]byte(file), words)))
	})
}

// Windows-1252 has é as the one byte 0xE9 (Unicode's mapping table CP1252.TXT).
func TestAFileThatIsNotUTF8IsRefusedAndStaysAsItIs(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "jersey.yaml")
	foreign := "version: 1\npattern: Jers\xe9\n"
	require.NoError(t, os.WriteFile(path, []byte(foreign), 0o644))
	_, err := New(context.Background(), Options{File: path, Port: -1})
	require.Error(t, err)
	for _, want := range []string{"jersey.yaml", "line 2", "0xe9", "UTF-8"} {
		assert.Contains(t, err.Error(), want)
	}
	utf16 := "\xff\xfev\x00e\x00r\x00s\x00"
	require.NoError(t, os.WriteFile(path, []byte(utf16), 0o644))
	_, err = New(context.Background(), Options{File: path, Port: -1})
	require.ErrorContains(t, err, "UTF-16")

	// it becomes so while it is open: the page is told, and Save asks before it writes
	require.NoError(t, os.WriteFile(path, []byte("version: 1\r\n"), 0o644))
	s := running(t, Options{File: path})
	c := let(t, s)
	a := c.start()
	assert.Equal(t, "version: 1\n", a.Text)
	code, body, _ := c.ask("/api/save", saveQuestion{Text: "version: 1\npattern: X\n", Mark: a.State.Mark, Path: a.State.Path})
	require.Equal(t, http.StatusOK, code, "%s", body)
	assert.Equal(t, "version: 1\r\npattern: X\r\n", content(t, path))
	require.NoError(t, os.WriteFile(path, []byte(foreign), 0o644))
	code, body, _ = c.ask("/api/save", saveQuestion{Text: "mine", Mark: a.State.Mark, Path: a.State.Path})
	assert.Equal(t, http.StatusUnprocessableEntity, code)
	assert.Contains(t, string(body), "0xe9")
	assert.Equal(t, foreign, content(t, path), "nothing is written over")
}

// Drawings that take every turn do not keep a save waiting, nor those questions that draw nothing.
func TestSavingWaitsForNoDrawing(t *testing.T) {
	path := copyOf(t, "pebble-hat")
	s := running(t, Options{File: path})
	c := let(t, s)
	a := c.start()
	for range cap(s.jobs) {
		s.jobs <- struct{}{}
	}
	c.http.Timeout = 10 * time.Second
	code, _, _ := c.ask("/api/save", saveQuestion{Text: a.Text + "# mine\n", Mark: a.State.Mark, Path: a.State.Path})
	assert.Equal(t, http.StatusOK, code)
	code, _, _ = c.ask("/api/form", map[string]string{"text": a.Text})
	assert.Equal(t, http.StatusOK, code)
	for range cap(s.jobs) {
		<-s.jobs
	}
}

// A picture that is not there takes no turn, else those that are would wait for good.
func TestAPictureThatIsNotThereTakesNoTurn(t *testing.T) {
	a := asking(t)
	for range cap(a.jobs) {
		assert.Equal(t, http.StatusNotFound, a.ask(t, http.MethodGet, "/api/picture/nothing", "", "", true))
	}
	assert.Empty(t, a.jobs)
}
