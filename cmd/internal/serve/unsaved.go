package serve

import (
	"cmp"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"time"

	"flatwright/cmd/internal/files"
)

// unsaved keeps what is typed and not saved on the disk, each tab's apart, so that
// neither a crash of the browser nor of the computer loses it.
type unsaved struct {
	folder string // empty: there is no place for it

	mu      sync.Mutex
	waiting map[string]draft // by file name
	timer   *time.Timer

	disk sync.Mutex // held while files are written, which someone who types never waits for
}

// draft is the text of a tab.
type draft struct {
	ID   string `json:"id"`   // what the tab shows: the path of a file, or the name of an example
	Tab  string `json:"tab"`  // the tab's own name
	Mark string `json:"mark"` // of the content that it began from
	When int64  `json:"when"` // ms since 1970
	Text string `json:"text"`
}

const (
	draftEvery = 400 * time.Millisecond
	mostDrafts = 60 // of all patterns; the oldest go
)

// newUnsaved keeps drafts in folder, or where the system keeps such things.
func newUnsaved(folder string) *unsaved {
	if folder == "" {
		if cache, err := os.UserCacheDir(); err == nil {
			folder = filepath.Join(cache, "flatwright", "unsaved")
		}
	}
	return &unsaved{folder: folder, waiting: map[string]draft{}}
}

var tabName = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[0-9a-f-]{8,40}$`) })

func (d draft) file() string { return mark([]byte(d.ID))[:16] + "-" + d.Tab + ".json" }

// keep writes a draft soon, or takes it away if there is nothing unsaved in it.
func (u *unsaved) keep(d draft, saved bool) {
	if u.folder == "" || d.ID == "" || !tabName().MatchString(d.Tab) {
		return
	}
	u.mu.Lock()
	defer u.mu.Unlock()
	if saved {
		d.Text = ""
	}
	u.waiting[d.file()] = d
	if u.timer == nil {
		u.timer = time.AfterFunc(draftEvery, u.write)
	}
}

// write writes what is waiting.
func (u *unsaved) write() {
	u.disk.Lock()
	defer u.disk.Unlock()
	u.mu.Lock()
	u.timer = nil
	waiting := u.waiting
	u.waiting = map[string]draft{}
	u.mu.Unlock()
	for name, d := range waiting {
		if d.Text == "" {
			_ = os.Remove(filepath.Join(u.folder, name)) // it may never have been written
			continue
		}
		b, err := json.Marshal(d)
		if err != nil {
			continue
		}
		// a disk that takes nothing leaves what the browser keeps
		_ = files.Write(context.Background(), u.folder, []files.File{{Name: name, Body: b}})
	}
	u.tidy()
}

// tidy takes the oldest drafts away if there are too many.
func (u *unsaved) tidy() {
	entries, err := os.ReadDir(u.folder)
	if err != nil || len(entries) <= mostDrafts {
		return
	}
	age := func(e os.DirEntry) int64 {
		if info, err := e.Info(); err == nil {
			return info.ModTime().UnixMilli()
		}
		return 0
	}
	slices.SortFunc(entries, func(a, b os.DirEntry) int { return cmp.Compare(age(a), age(b)) })
	for _, e := range entries[:len(entries)-mostDrafts] {
		if strings.HasSuffix(e.Name(), ".json") {
			_ = os.Remove(filepath.Join(u.folder, e.Name()))
		}
	}
}

// of gives the drafts of what is called id, the newest first.
func (u *unsaved) of(ctx context.Context, id string) []draft {
	u.write()
	out := []draft{}
	all, err := filepath.Glob(filepath.Join(u.folder, mark([]byte(id))[:16]+"-*.json"))
	if err != nil || u.folder == "" {
		return out
	}
	for _, path := range all {
		b, err := os.ReadFile(path)
		var d draft
		if err == nil && json.Unmarshal(b, &d) == nil && d.ID == id && ctx.Err() == nil {
			out = append(out, d)
		}
	}
	slices.SortFunc(out, func(a, b draft) int { return cmp.Compare(b.When, a.When) })
	return out
}
