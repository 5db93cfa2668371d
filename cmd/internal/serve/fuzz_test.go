package serve

import (
	"context"
	"encoding/json"
	"mime"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"flatwright/cmd/internal/files"
)

// FuzzRequest asks the page's handler anything. No request makes it panic; one without
// the key changes nothing and hears nothing; and none writes a file but by a save, and
// then only beside the one that is open.
func FuzzRequest(f *testing.F) {
	body := func(v any) string {
		b, err := json.Marshal(v)
		require.NoError(f, err)
		return string(b)
	}
	text := string(modelText("example-pebble-hat"))
	cell := 1
	for _, g := range downloadGroups() {
		for _, d := range g.All {
			f.Add("POST", "/api/download", body(map[string]string{"text": text, "what": d.Name, "units": "cm"}), "", true)
		}
	}
	f.Add("POST", "/api/look", body(choices{Text: text, Units: "in", Paper: "letter", Labels: "letters"}), "", true)
	f.Add("POST", "/api/look", `{"text":"pattern: \u202e<script>\nsizes: ["}`, "", true)
	f.Add("POST", "/api/form", body(map[string]string{"text": text}), "", true)
	f.Add("POST", "/api/edit", body(editQuestion{Text: text, Act: "set", Path: "sizes", Value: "S (M)", Cell: &cell}), "", true)
	f.Add("POST", "/api/edit", body(editQuestion{Text: text, Act: "insert", Path: "pieces[0].sections", Key: "even"}), "", true)
	f.Add("POST", "/api/save", body(saveQuestion{Text: "x", Name: "../../up"}), "", true)
	f.Add("POST", "/api/save", body(saveQuestion{Text: "x", Name: "C:\\CON.yaml", Both: true}), "", true)
	f.Add("POST", "/api/save", `{"text":"x","path":"/etc/passwd","mark":"","both":true}`, "http://evil.example", true)
	f.Add("GET", "/api/start", "", "", true)
	f.Add("GET", "/api/file", "", "", false)
	f.Add("GET", "/assets/../../serve.go", "", "", true)
	f.Add("GET", "/api/model/example-%2e%2e%2f", "", "null", true)
	f.Add("POST", "/api/open", `{"once":"x"}`, "", false)
	f.Add("PUT", "/", "[[[[[[[[", "", true)

	a := asking(f)
	f.Fuzz(func(t *testing.T, method, path, body, origin string, key bool) {
		if len(body) <= 64<<10 {
			a.ask(t, method, path, body, origin, key)
		}
	})
}

// asked is a handler beside one pattern on the disk, which it alone may write, and only when it is told to.
type asked struct {
	*Server
	top, dir, hat, text string
}

func asking(t testing.TB) *asked {
	top := t.TempDir()
	a := &asked{top: top, dir: filepath.Join(top, "mine"), hat: filepath.Join(top, "mine", "hat.yaml"), text: string(modelText("example-pebble-hat"))}
	require.NoError(t, os.Mkdir(a.dir, 0o755))
	require.NoError(t, os.WriteFile(a.hat, []byte(a.text), 0o644))
	s, err := New(context.Background(), Options{File: a.hat, Port: -1})
	require.NoError(t, err)
	t.Cleanup(func() { _ = s.listener.Close() })
	a.Server = s
	return a
}

// ask asks once, as if the program had just been started, and holds the answer to what every answer must be.
func (a *asked) ask(t *testing.T, method, path, body, origin string, key bool) int {
	if path == "/api/events" {
		return 0 // it does not end
	}
	require.NoError(t, os.RemoveAll(a.dir))
	require.NoError(t, os.Mkdir(a.dir, 0o755))
	require.NoError(t, os.WriteFile(a.hat, []byte(a.text), 0o644))
	var err error
	a.doc, err = open(t.Context(), a.hat, "")
	require.NoError(t, err)
	host := a.listener.Addr().String()
	r := httptest.NewRequest(http.MethodGet, "/", strings.NewReader(body))
	r.Method, r.Host, r.URL, r.RequestURI = method, host, &url.URL{Path: path}, path
	if origin == "" {
		origin = "http://" + host
	}
	r.Header.Set("Origin", origin)
	r.Header.Set("Content-Type", "application/json")
	if key {
		r.Header.Set(keyHeader, a.keys.key)
	}
	w := httptest.NewRecorder()
	a.http.Handler.ServeHTTP(w, r)

	got := w.Result()
	require.Equal(t, policy, got.Header.Get("Content-Security-Policy"))
	kind, _, _ := mime.ParseMediaType(got.Header.Get("Content-Type"))
	if !key {
		require.True(t, w.Code >= 300 || !strings.HasPrefix(path, "/api/"), path)
		require.NotContains(t, w.Body.String(), a.keys.key)
	}
	require.NotEqual(t, http.StatusInternalServerError, w.Code, "%s", w.Body)
	if kind == "application/json" {
		require.True(t, json.Valid(w.Body.Bytes()))
	}
	if kind == "text/html" && path != "/" && got.Header.Get("Content-Disposition") == "" {
		require.Equal(t, 3, w.Code/100, "no page of this origin is made of what was asked")
	}
	onlyBeside(t, a.top, a.dir)
	if path != "/api/save" || w.Code != http.StatusOK {
		there, err := os.ReadFile(a.hat)
		require.NoError(t, err)
		require.Equal(t, a.text, string(there))
	}
	return w.Code
}

// onlyBeside holds that top has nothing but dir, and dir only files with names for
// every system.
func onlyBeside(t *testing.T, top, dir string) {
	t.Helper()
	all, err := os.ReadDir(top)
	require.NoError(t, err)
	require.Len(t, all, 1)
	all, err = os.ReadDir(dir)
	require.NoError(t, err)
	for _, e := range all {
		require.True(t, e.Type().IsRegular())
		require.NoError(t, files.CheckName(e.Name()))
	}
}
