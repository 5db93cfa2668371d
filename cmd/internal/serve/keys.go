package serve

import (
	"crypto/rand"
	"crypto/subtle"
	"fmt"
	"html"
	"net/http"
	"os"
	"path/filepath"
	"sync"

	"flatwright/cmd/internal/files"
)

// keyHeader is the header in which the page shows its key. A page of another origin can't send it, and unlike
// a cookie it goes to no other port.
const keyHeader = "Flatwright-Key"

// keys let the person's browser in, and no one else who is on this computer: one to open the page with, which serves
// once, and one that the page gets for it and keeps in the storage of its own origin.
type keys struct {
	mu    sync.Mutex
	once  string // "" after it was used
	key   string
	paper string // the file that hands the address over, or ""
}

func newKeys() *keys { return &keys{once: rand.Text(), key: rand.Text()} }

func (k *keys) knows(given string) bool { return same(given, k.key) }

func same(a, b string) bool {
	return b != "" && subtle.ConstantTimeCompare([]byte(a), []byte(b)) == 1
}

// open is the key for the one that opens, which is good no more.
func (k *keys) open(once string) (string, bool) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if !same(once, k.once) {
		return "", false
	}
	k.once = ""
	k.tear()
	return k.key, true
}

// tear takes the file away that handed the address over.
func (k *keys) tear() {
	if k.paper != "" {
		_ = os.Remove(k.paper) // what is in it opens nothing any more
		k.paper = ""
	}
}

type openQuestion struct {
	Once string `json:"once"`
}

func (s *Server) open(w http.ResponseWriter, _ *http.Request, q openQuestion) any {
	key, ok := s.keys.open(q.Once)
	if !ok {
		fail(w, http.StatusForbidden, closed)
		return nil
	}
	return map[string]string{"key": key}
}

const handed = `<!DOCTYPE html>
<html lang="en"><meta charset="utf-8"><meta name="referrer" content="no-referrer"><title>Flatwright</title>
<meta http-equiv="refresh" content="0; url=%[1]s">
<p><a href="%[1]s">Open the page</a></p>
</html>
`

// Hand writes a page that leads to the address, in a file that only this person can read, and gives its path: what is
// in the command line of a browser every user of the computer can read.
func (s *Server) Hand() (string, error) {
	page := fmt.Appendf(nil, handed, html.EscapeString(s.Address()))
	folder := os.TempDir()
	if cache, err := os.UserCacheDir(); err == nil {
		folder = cache
	}
	path, err := files.CreatePrivate(filepath.Join(folder, "flatwright", "open"), rand.Text()+".html", page)
	if err != nil {
		return "", err
	}
	s.keys.mu.Lock()
	defer s.keys.mu.Unlock()
	s.keys.tear()
	s.keys.paper = path
	return path, nil
}
