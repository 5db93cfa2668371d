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

	top := f.TempDir()
	dir := filepath.Join(top, "mine")
	require.NoError(f, os.Mkdir(dir, 0o755))
	hat := filepath.Join(dir, "hat.yaml")
	require.NoError(f, os.WriteFile(hat, []byte(text), 0o644))
	s, err := New(context.Background(), Options{File: hat, Port: -1})
	require.NoError(f, err)
	f.Cleanup(func() { _ = s.listener.Close() })
	host := s.listener.Addr().String()

	f.Fuzz(func(t *testing.T, method, path, body, origin string, key bool) {
		if len(body) > 64<<10 || path == "/api/events" {
			return
		}
		require.NoError(t, os.RemoveAll(dir))
		require.NoError(t, os.Mkdir(dir, 0o755))
		require.NoError(t, os.WriteFile(hat, []byte(text), 0o644))
		var err error
		s.doc, err = open(t.Context(), hat, "") // as if it had just been started
		require.NoError(t, err)
		r := httptest.NewRequest(http.MethodGet, "/", strings.NewReader(body))
		r.Method, r.Host, r.URL, r.RequestURI = method, host, &url.URL{Path: path}, path
		if origin == "" {
			origin = "http://" + host
		}
		r.Header.Set("Origin", origin)
		r.Header.Set("Content-Type", "application/json")
		if key {
			r.Header.Set(keyHeader, s.keys.key)
		}
		w := httptest.NewRecorder()
		s.http.Handler.ServeHTTP(w, r)

		a := w.Result()
		require.Equal(t, policy, a.Header.Get("Content-Security-Policy"))
		kind, _, _ := mime.ParseMediaType(a.Header.Get("Content-Type"))
		if !key {
			require.True(t, w.Code >= 300 || !strings.HasPrefix(path, "/api/"), path)
			require.NotContains(t, w.Body.String(), s.keys.key)
		}
		require.NotEqual(t, http.StatusInternalServerError, w.Code, "%s", w.Body)
		if kind == "application/json" {
			require.True(t, json.Valid(w.Body.Bytes()))
		}
		if kind == "text/html" && path != "/" && a.Header.Get("Content-Disposition") == "" {
			require.Equal(t, 3, w.Code/100, "no page of this origin is made of what was asked")
		}
		onlyBeside(t, top, dir)
		if path != "/api/save" || w.Code != http.StatusOK {
			there, err := os.ReadFile(hat)
			require.NoError(t, err)
			require.Equal(t, text, string(there))
		}
	})
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
