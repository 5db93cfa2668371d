package serve

import (
	"embed"
	"io/fs"
	"mime"
	"net"
	"net/http"
	"path"
	"strings"

	"flatwright/fonts"
)

// The page takes nothing from elsewhere and runs no script but its own files.
// The drawings carry style attributes (whether a text is kerned), which is
// all that is let through.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; style-src-attr 'unsafe-inline'; img-src 'self' data: blob:; " +
	"font-src 'self'; connect-src 'self'; form-action 'none'; base-uri 'none'; frame-ancestors 'none'"

// guard answers only on this computer's own names and to no page of another origin. What has anything
// of the pattern in it, which is all below /api/, it gives only to who has the key.
func (s *Server) guard(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cache-Control", "no-store")
		if code, why := s.refused(r); code != 0 {
			refuse(w, code, why)
			return
		}
		if r.Method == http.MethodPost {
			r.Body = http.MaxBytesReader(w, r.Body, most)
		}
		next.ServeHTTP(w, r)
	})
}

// What those hear who are not let in.
const (
	elsewhere = "Another page may not ask this."
	closed    = "Open the address that Flatwright printed when it was started: it lets you in. It does so once: after that, stay in the same browser."
)

// refused is why a request is refused, with its code, or 0.
func (s *Server) refused(r *http.Request) (int, string) {
	own := "http://" + r.Host
	origin, site := r.Header.Get("Origin"), r.Header.Get("Sec-Fetch-Site")
	inside := strings.HasPrefix(r.URL.Path, "/api/")
	kind, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type"))
	switch {
	case !s.ownHost(r.Host):
		return http.StatusMisdirectedRequest, "This program answers only at its own address."
	case origin != "" && origin != own:
		return http.StatusForbidden, elsewhere
	case (site == "cross-site" || site == "same-site") && (inside || r.Method != http.MethodGet || r.Header.Get("Sec-Fetch-Mode") != "navigate"):
		return http.StatusForbidden, elsewhere // a link on another page may open the page and do nothing else
	case inside && r.URL.Path != "/api/open" && !s.keys.knows(r.Header.Get(keyHeader)):
		return http.StatusForbidden, closed
	case r.Method == http.MethodPost && (kind != "application/json" || origin == "" && site != "same-origin"):
		return http.StatusForbidden, "Only the page itself may ask for this."
	}
	return 0, ""
}

func (s *Server) ownHost(host string) bool {
	_, port, _ := net.SplitHostPort(s.listener.Addr().String())
	return host == "127.0.0.1:"+port || host == "localhost:"+port
}

func refuse(w http.ResponseWriter, code int, why string) {
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	w.WriteHeader(code)
	_, _ = w.Write([]byte(why + "\n")) // who is refused may not hear it
}

//go:embed assets
var embedded embed.FS

var types = map[string]string{".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8",
	".js": "text/javascript; charset=utf-8", ".svg": "image/svg+xml"}

// asset serves the files of the page.
func asset(name string) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		file := name
		if file == "" {
			file = r.PathValue("file")
		}
		b, err := fs.ReadFile(embedded, path.Join("assets", path.Clean("/"+file)))
		kind := types[path.Ext(file)]
		if err != nil || kind == "" {
			refuse(w, http.StatusNotFound, "There is no such page.")
			return
		}
		w.Header().Set("Content-Type", kind)
		_, _ = w.Write(b)
	}
}

var faces = map[string]fonts.Face{"regular": fonts.Regular, "bold": fonts.Bold, "italic": fonts.Italic}

// face serves the faces that drawings are measured with.
func face(w http.ResponseWriter, r *http.Request) {
	f, ok := faces[r.PathValue("face")]
	if !ok {
		refuse(w, http.StatusNotFound, "There is no such face.")
		return
	}
	w.Header().Set("Content-Type", "font/ttf")
	w.Header().Set("Cache-Control", "private, max-age=86400")
	_, _ = w.Write(fonts.TTF(f))
}
