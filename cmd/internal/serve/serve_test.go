package serve

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/cmd/internal/files"
)

// client is a browser that has been let in, as far as requests go.
type client struct {
	t    testing.TB
	base string
	http *http.Client
	key  string
}

func let(t testing.TB, s *Server) *client {
	t.Helper()
	base, once, _ := strings.Cut(s.Address(), "/#open=")
	c := &client{t, base, &http.Client{}, ""}
	code, body, _ := c.ask("/api/open", openQuestion{once})
	require.Equal(t, http.StatusOK, code)
	c.key = decoded[map[string]string](t, body)["key"]
	return c
}

// ask sends a question and gives the answer's status and body.
func (c *client) ask(path string, q any, header ...string) (int, []byte, http.Header) {
	c.t.Helper()
	b, err := json.Marshal(q)
	require.NoError(c.t, err)
	r, err := http.NewRequest(http.MethodPost, c.base+path, bytes.NewReader(b))
	require.NoError(c.t, err)
	r.Header.Set("Content-Type", "application/json")
	r.Header.Set("Origin", c.base)
	for i := 0; i+1 < len(header); i += 2 {
		r.Header.Set(header[i], header[i+1])
	}
	return c.send(r)
}

func (c *client) send(r *http.Request) (int, []byte, http.Header) {
	c.t.Helper()
	if c.key != "" {
		r.Header.Set(keyHeader, c.key)
	}
	a, err := c.http.Do(r)
	require.NoError(c.t, err)
	defer a.Body.Close()
	body, err := io.ReadAll(a.Body)
	require.NoError(c.t, err)
	return a.StatusCode, body, a.Header
}

func decoded[T any](t testing.TB, b []byte) T {
	t.Helper()
	var v T
	require.NoError(t, json.Unmarshal(b, &v), "%s", b)
	return v
}

func (c *client) start() startAnswer {
	c.t.Helper()
	r, err := http.NewRequest(http.MethodGet, c.base+"/api/start", nil)
	require.NoError(c.t, err)
	code, body, _ := c.send(r)
	require.Equal(c.t, http.StatusOK, code)
	return decoded[startAnswer](c.t, body)
}

func (c *client) events() *http.Response {
	c.t.Helper()
	r, err := http.NewRequest(http.MethodGet, c.base+"/api/events", nil)
	require.NoError(c.t, err)
	r.Header.Set(keyHeader, c.key)
	a, err := c.http.Do(r)
	require.NoError(c.t, err)
	require.Equal(c.t, http.StatusOK, a.StatusCode)
	return a
}

func TestItListensOnLoopbackAlone(t *testing.T) {
	s := running(t, Options{})
	host, _, err := net.SplitHostPort(s.listener.Addr().String())
	require.NoError(t, err)
	assert.True(t, net.ParseIP(host).IsLoopback())
}

func TestWhoHasNoKeyOrComesFromElsewhereIsRefused(t *testing.T) {
	s := running(t, Options{File: copyOf(t, "pebble-hat")})
	c := let(t, s)
	stranger := &client{t, c.base, &http.Client{}, ""}
	get := func(c *client, path string, header ...string) int {
		r, err := http.NewRequest(http.MethodGet, c.base+path, nil)
		require.NoError(t, err)
		for i := 0; i+1 < len(header); i += 2 {
			if header[i] == "Host" {
				r.Host = header[i+1]
			}
			r.Header.Set(header[i], header[i+1])
		}
		code, _, h := c.send(r)
		assert.Contains(t, h.Get("Content-Security-Policy"), "default-src 'none'", "every answer has the policy")
		return code
	}
	for _, path := range []string{"/api/start", "/api/file", "/api/events", "/api/unsaved", "/api/model/new-hat", "/api/none"} {
		assert.Equal(t, http.StatusForbidden, get(stranger, path), path)
		assert.Equal(t, http.StatusForbidden, get(stranger, path, keyHeader, "wrong"), path)
		assert.Equal(t, http.StatusForbidden, get(stranger, path, "Cookie", keyHeader+"="+c.key), "a cookie is no key")
	}
	assert.Equal(t, http.StatusOK, get(stranger, "/"), "the page itself has nothing of the pattern in it")
	assert.Equal(t, http.StatusOK, get(c, "/api/start"))
	assert.Equal(t, http.StatusMisdirectedRequest, get(c, "/api/start", "Host", "evil.example:80"), "a name that was bound anew to this address")
	assert.Equal(t, http.StatusMisdirectedRequest, get(c, "/", "Host", "evil.example"))
	assert.Equal(t, http.StatusForbidden, get(c, "/api/start", "Origin", "http://evil.example"))
	assert.Equal(t, http.StatusForbidden, get(c, "/api/start", "Sec-Fetch-Site", "cross-site"))
	assert.Equal(t, http.StatusForbidden, get(c, "/api/start", "Sec-Fetch-Site", "same-site"), "another port of this computer")
	assert.Equal(t, http.StatusForbidden, get(c, "/api/start", "Origin", "null"))
	assert.Equal(t, http.StatusNotFound, get(c, "/none"))
	assert.Equal(t, http.StatusNotFound, get(c, "/assets/..%2fserve.go"))

	q := saveQuestion{Text: "mine", Mark: c.start().State.Mark, Path: c.start().State.Path}
	for _, header := range [][]string{{"Origin", "http://evil.example"}, {"Origin", ""}, {"Content-Type", "text/plain"},
		{"Content-Type", "application/x-www-form-urlencoded"}, {"Sec-Fetch-Site", "cross-site"}} {
		code, _, _ := c.ask("/api/save", q, header...)
		assert.Equal(t, http.StatusForbidden, code, header)
	}
	code, _, _ := stranger.ask("/api/save", q)
	assert.Equal(t, http.StatusForbidden, code)
	there, err := os.ReadFile(s.doc.state.Path)
	require.NoError(t, err)
	assert.NotEqual(t, "mine", string(there))
}

func TestWhatIsTooLargeOrNoQuestionIsRefused(t *testing.T) {
	s := running(t, Options{File: copyOf(t, "pebble-hat")})
	c := let(t, s)
	code, body, _ := c.ask("/api/look", choices{Text: strings.Repeat("x", most)})
	assert.Equal(t, http.StatusRequestEntityTooLarge, code)
	assert.Contains(t, string(body), "1 MiB")
	code, _, _ = c.ask("/api/save", saveQuestion{Text: strings.Repeat("x", files.MaxRead+1), Path: s.doc.state.Path, Mark: s.doc.state.Mark})
	assert.Equal(t, http.StatusRequestEntityTooLarge, code)
	code, _, _ = c.ask("/api/look", []int{1})
	assert.Equal(t, http.StatusBadRequest, code)
	code, body, _ = c.ask("/api/look", choices{Text: strings.Repeat("x", files.MaxRead+1)})
	assert.Equal(t, http.StatusOK, code)
	assert.Equal(t, "file/size", decoded[lookAnswer](t, body).Findings[0].Kind)
}

func TestTheLookIsThatOfThePatternInTheQuestion(t *testing.T) {
	s := running(t, Options{})
	c := let(t, s)
	a := c.start()
	assert.Empty(t, a.State.Name)
	assert.NotEmpty(t, a.Model, "an example is opened at first")
	code, body, _ := c.ask("/api/look", choices{Text: a.Text, Units: "cm"})
	require.Equal(t, http.StatusOK, code)
	l := decoded[lookAnswer](t, body)
	assert.True(t, l.Readable)
	assert.Equal(t, l.Sample, l.Drawing)
	assert.Contains(t, l.Pages[0], "<svg")
	assert.Empty(t, l.Findings)
	for _, g := range l.Table {
		for _, r := range g.Rows {
			assert.Len(t, r.CM, len(l.Sizes))
			assert.Len(t, r.In, len(l.Sizes))
		}
	}
	_, body, _ = c.ask("/api/look", choices{Text: "pattern: <script>alert(1)</script>\nsizes: ["})
	l = decoded[lookAnswer](t, body)
	assert.False(t, l.Readable)
	assert.NotEmpty(t, l.Findings)
	text := strings.Replace(a.Text, "pattern: Saltmarsh Cardigan", `pattern: "<script>alert(1)</script>"`, 1)
	_, body, _ = c.ask("/api/look", choices{Text: text})
	l = decoded[lookAnswer](t, body)
	require.NotEmpty(t, l.Pages)
	assert.NotContains(t, l.Pages[0], "<script")
	assert.Contains(t, l.Pages[0], "&lt;script")
}

func TestEveryDownloadIsThereForEveryExample(t *testing.T) {
	s := running(t, Options{})
	c := let(t, s)
	for _, m := range c.start().Examples {
		r, err := http.NewRequest(http.MethodGet, c.base+"/api/model/"+m.Name, nil)
		require.NoError(t, err)
		_, body, _ := c.send(r)
		text := decoded[map[string]string](t, body)["text"]
		_, body, _ = c.ask("/api/look", choices{Text: text})
		size := decoded[lookAnswer](t, body).Drawing
		for _, g := range downloadGroups() {
			for _, d := range g.All {
				code, body, h := c.ask("/api/download", map[string]string{"text": text, "what": d.Name, "size": size, "units": "cm", "labels": "one", "paper": "letter"})
				if d.Name == "yarn" && code == http.StatusUnprocessableEntity {
					assert.Contains(t, string(body), "weigh a swatch", "an example without a swatch says what is needed")
					continue
				}
				assert.Equal(t, http.StatusOK, code, "%s %s: %s", m.Name, d.Name, body)
				assert.Contains(t, h.Get("Content-Disposition"), "attachment", d.Name)
				assert.NotEmpty(t, body)
				switch h.Get("Content-Type") {
				case "application/pdf":
					assert.True(t, bytes.HasPrefix(body, []byte("%PDF")))
				case "application/zip":
					assert.True(t, bytes.HasPrefix(body, []byte("PK")))
				}
			}
		}
	}
	code, body, _ := c.ask("/api/download", map[string]string{"text": "sizes: [", "what": "all-pdf"})
	assert.Equal(t, http.StatusUnprocessableEntity, code)
	assert.Contains(t, string(body), "cannot be read")
	code, _, h := c.ask("/api/download", map[string]string{"text": "sizes: [", "what": "pattern"})
	assert.Equal(t, http.StatusOK, code, "her own text is hers, broken or not")
	assert.Contains(t, h.Get("Content-Disposition"), "pattern.yaml")
	code, _, _ = c.ask("/api/download", map[string]string{"what": "none"})
	assert.Equal(t, http.StatusNotFound, code)
}

func TestSavingKeepsWhatAnotherProgramWrote(t *testing.T) {
	path := copyOf(t, "pebble-hat")
	s := running(t, Options{File: path})
	c := let(t, s)
	a := c.start()
	code, body, _ := c.ask("/api/save", saveQuestion{Text: a.Text + "# one\n", Mark: a.State.Mark, Path: a.State.Path})
	require.Equal(t, http.StatusOK, code, "%s", body)
	first := decoded[struct{ State state }](t, body).State
	assert.Equal(t, a.Text+"# one\n", content(t, path))

	require.NoError(t, os.WriteFile(path, []byte("theirs"), 0o644))
	code, body, _ = c.ask("/api/save", saveQuestion{Text: "mine", Mark: first.Mark, Path: a.State.Path})
	require.Equal(t, http.StatusConflict, code)
	assert.Equal(t, "theirs", decoded[struct{ Text string }](t, body).Text)
	assert.Equal(t, "theirs", content(t, path), "nothing was written over")

	code, body, _ = c.ask("/api/save", saveQuestion{Text: "mine", Mark: first.Mark, Path: a.State.Path, Both: true})
	require.Equal(t, http.StatusOK, code)
	copied := decoded[struct{ Copied string }](t, body).Copied
	assert.Equal(t, "pebble-hat (other).yaml", copied)
	assert.Equal(t, "mine", content(t, path))
	assert.Equal(t, "theirs", content(t, filepath.Join(filepath.Dir(path), copied)))

	require.NoError(t, os.Remove(path))
	code, _, _ = c.ask("/api/save", saveQuestion{Text: "again", Mark: "whatever", Path: a.State.Path})
	assert.Equal(t, http.StatusOK, code, "a file that is gone is written anew")
	assert.Equal(t, "again", content(t, path))
}

func content(t testing.TB, path string) string {
	t.Helper()
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(b)
}

func TestSavingUnderANameWritesNothingOver(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "hat.yaml"), []byte("older"), 0o644))
	s := running(t, Options{Folder: dir})
	c := let(t, s)
	code, body, _ := c.ask("/api/save", saveQuestion{Text: "mine", Path: "", Mark: ""})
	assert.Equal(t, http.StatusUnprocessableEntity, code)
	assert.Contains(t, string(body), "give it a name")
	for _, name := range []string{"../out", "a/b", "con", `x\y`, "a:b"} {
		code, _, _ = c.ask("/api/save", saveQuestion{Text: "mine", Name: name})
		assert.Equal(t, http.StatusUnprocessableEntity, code, name)
	}
	code, body, _ = c.ask("/api/save", saveQuestion{Text: "mine", Name: "hat"})
	require.Equal(t, http.StatusConflict, code, "%s", body)
	assert.Equal(t, "hat.yaml", decoded[struct{ Taken string }](t, body).Taken, "a person decides whether it is written over")
	assert.Equal(t, "older", content(t, filepath.Join(dir, "hat.yaml")))
	code, body, _ = c.ask("/api/save", saveQuestion{Text: "mine", Name: "hat", Over: true})
	require.Equal(t, http.StatusOK, code, "%s", body)
	saved := decoded[struct {
		State  state
		Copied string
	}](t, body)
	st := saved.State
	assert.Equal(t, "hat.yaml", st.Name)
	assert.Equal(t, "mine", content(t, filepath.Join(dir, "hat.yaml")))
	assert.Equal(t, "older", content(t, filepath.Join(dir, saved.Copied)), "what was there is kept")
	code, _, _ = c.ask("/api/save", saveQuestion{Text: "more", Path: st.Path, Mark: st.Mark})
	assert.Equal(t, http.StatusOK, code)
	assert.Equal(t, "more", content(t, filepath.Join(dir, "hat.yaml")))

	code, _, _ = c.ask("/api/save", saveQuestion{Text: "third", Name: "other"})
	require.Equal(t, http.StatusOK, code)
	code, body, _ = c.ask("/api/save", saveQuestion{Text: "lost?", Path: st.Path, Mark: st.Mark})
	assert.Equal(t, http.StatusUnprocessableEntity, code, "a tab that still has the first file is told")
	assert.Contains(t, string(body), "other.yaml was opened in another tab")
}

func TestALinkStaysALink(t *testing.T) {
	path := copyOf(t, "pebble-hat")
	link := filepath.Join(t.TempDir(), "link.yaml")
	if err := os.Symlink(path, link); err != nil {
		t.Skip("no links here:", err)
	}
	s := running(t, Options{File: link})
	c := let(t, s)
	a := c.start()
	code, _, _ := c.ask("/api/save", saveQuestion{Text: "through", Mark: a.State.Mark, Path: a.State.Path})
	require.Equal(t, http.StatusOK, code)
	assert.Equal(t, "through", content(t, path))
	info, err := os.Lstat(link)
	require.NoError(t, err)
	assert.NotZero(t, info.Mode()&os.ModeSymlink)
}

func TestFiftyRequestsAtOnceLoseNothing(t *testing.T) {
	path := copyOf(t, "saltmarsh-cardigan")
	s := running(t, Options{File: path})
	c := let(t, s)
	a := c.start()
	var saved sync.Map
	var all sync.WaitGroup
	for i := range 50 {
		all.Go(func() {
			switch i % 2 {
			case 0:
				size := []string{"XS", "M", "5X"}[i%3]
				code, body, _ := c.ask("/api/look", choices{Text: a.Text, Size: size})
				assert.Equal(t, http.StatusOK, code)
				l := decoded[lookAnswer](t, body)
				assert.Equal(t, size, l.Drawing)
				assert.NotEmpty(t, l.Pages)
			default:
				text := fmt.Sprintf("%s# %d\n", a.Text, i)
				code, body, _ := c.ask("/api/save", saveQuestion{Text: text, Mark: a.State.Mark, Path: a.State.Path, Both: true})
				if assert.Equal(t, http.StatusOK, code, "%s", body) {
					saved.Store(text, true)
				}
			}
		})
	}
	all.Wait()
	entries, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	there := map[string]bool{}
	for _, e := range entries {
		assert.NotContains(t, e.Name(), ".tmp")
		there[content(t, filepath.Join(filepath.Dir(path), e.Name()))] = true
	}
	n := 0
	saved.Range(func(text, _ any) bool {
		n++
		assert.True(t, there[text.(string)], "a text that was saved is in no file")
		return true
	})
	assert.Equal(t, 25, n)
}

func TestEventsTellOfAChangeOnTheDisk(t *testing.T) {
	path := copyOf(t, "pebble-hat")
	s := running(t, Options{File: path})
	c := let(t, s)
	r := c.events()
	defer r.Body.Close()
	lines := make(chan string, 10)
	go func() {
		var b [4096]byte
		for {
			n, err := r.Body.Read(b[:])
			if err != nil {
				return
			}
			lines <- string(b[:n])
		}
	}()
	wait := func(want string) {
		t.Helper()
		for {
			select {
			case l := <-lines:
				if strings.Contains(l, want) {
					return
				}
			case <-time.After(10 * time.Second):
				require.FailNow(t, "no event", want)
			}
		}
	}
	wait(s.doc.stateOf([]byte(content(t, path))).Mark)
	require.NoError(t, os.WriteFile(path, []byte("other"), 0o644))
	wait(mark([]byte("other")))
	require.NoError(t, os.Remove(path))
	wait("no such file")
}

func TestTheEndWaitsForASaveAndClosesTheStreams(t *testing.T) {
	path := copyOf(t, "pebble-hat")
	s, err := New(context.Background(), Options{File: path, Port: -1})
	require.NoError(t, err)
	ctx, stop := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() { done <- s.Run(ctx) }()
	c := let(t, s)
	r := c.events()
	defer r.Body.Close()
	stop()
	select {
	case err := <-done:
		require.NoError(t, err)
	case <-time.After(8 * time.Second):
		require.FailNow(t, "it does not end")
	}
	_, _, err = s.doc.save(context.Background(), "late", s.doc.state.Path, s.doc.state.Mark, false)
	require.ErrorContains(t, err, "ending")
}

func TestAFileThatIsNotThereIsSaidAtOnce(t *testing.T) {
	_, err := New(context.Background(), Options{File: filepath.Join(t.TempDir(), "none.yaml"), Port: -1})
	require.ErrorContains(t, err, "no such file")
	_, err = New(context.Background(), Options{File: "-", Port: -1})
	require.ErrorContains(t, err, "needs a file")
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	defer l.Close()
	_, err = New(context.Background(), Options{Port: l.Addr().(*net.TCPAddr).Port})
	require.ErrorContains(t, err, "another program")
}

func BenchmarkLook(b *testing.B) {
	s := running(b, Options{File: copyOf(b, "saltmarsh-cardigan")})
	c := let(b, s)
	text := c.start().Text
	b.ReportAllocs()
	for b.Loop() {
		if code, _, _ := c.ask("/api/look", choices{Text: text, Units: "both"}); code != http.StatusOK {
			b.Fatal(code)
		}
	}
}
