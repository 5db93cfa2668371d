package serve

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"

	"flatwright/cmd/internal/files"
	"flatwright/cmd/internal/job"
)

// document is the pattern file that the page saves to.
type document struct {
	folder string

	mu      sync.Mutex
	name    string // of the file in folder, or empty
	closed  bool
	changed chan struct{} // closed and made anew when something has changed
	state   state
}

// state is what is known of the file on the disk.
type state struct {
	Name string `json:"name"`
	Path string `json:"path"`
	Mark string `json:"mark"` // of the content; two contents alike have the same
	Gone string `json:"gone,omitempty"`
}

// open reads the file called path, or begins without one.
func open(ctx context.Context, path, folder string) (*document, error) {
	d := &document{folder: folder, changed: make(chan struct{})}
	if path == "" {
		if folder == "" {
			d.folder = "."
		}
		return d, nil
	}
	if path == files.Stdio {
		return nil, errors.New("a page needs a file to save to; standard input is not one")
	}
	text, err := files.Read(ctx, path, nil)
	if err != nil {
		return nil, err
	}
	if _, err := wordsOf(path, text); err != nil {
		return nil, err
	}
	whole, err := filepath.EvalSymlinks(path) // a link stays a link: what it points at is saved
	if err != nil {
		whole = path
	}
	d.folder, d.name = filepath.Dir(whole), filepath.Base(whole)
	d.state = d.stateOf(text)
	return d, nil
}

func mark(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:])
}

func (d *document) stateOf(text []byte) state {
	path, err := filepath.Abs(filepath.Join(d.folder, d.name))
	if err != nil {
		path = filepath.Join(d.folder, d.name)
	}
	return state{Name: d.name, Path: path, Mark: mark(text)}
}

// set notes what is on the disk now, and wakes those who listen.
func (d *document) set(s state) {
	if s == d.state {
		return
	}
	d.state = s
	close(d.changed)
	d.changed = make(chan struct{})
}

// now is what is known of the file, and what is closed at the next change.
func (d *document) now() (state, <-chan struct{}) {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.state, d.changed
}

// read is the words of the file as it is on the disk, or nothing if there is none yet.
func (d *document) read(ctx context.Context) (state, string, error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.name == "" {
		return state{}, "", nil
	}
	text, err := files.Read(ctx, filepath.Join(d.folder, d.name), nil)
	words := ""
	if err == nil {
		words, err = wordsOf(d.name, text)
	}
	if err != nil {
		s := d.state
		s.Gone = err.Error()
		return s, "", err
	}
	d.set(d.stateOf(text))
	return d.state, words, nil
}

// Conflict is the error of a save over what the one who saves has not seen.
type Conflict struct {
	State state
	Text  string
}

// Error is the error's text.
func (c *Conflict) Error() string {
	return c.State.Name + " has been changed by another program or tab since it was read"
}

// save writes words into the file at path if its content still has the mark seen;
// otherwise the error is a *Conflict. With both, what is on the disk goes into a copy beside it
// first, whose name is given.
func (d *document) save(ctx context.Context, words string, path, seen string, both bool) (s state, copied string, err error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.closed {
		return d.state, "", errors.New("the program is ending; nothing was saved")
	}
	if d.name == "" {
		return state{}, "", errors.New("the pattern has no file yet; give it a name")
	}
	if path != d.state.Path {
		return d.state, "", fmt.Errorf("%s was opened in another tab; save this pattern under a new name", d.name)
	}
	there, err := files.Read(ctx, path, nil)
	text := bytesOf(there, words)
	switch {
	case errors.Is(err, os.ErrNotExist): // it is written anew
	case err != nil:
		return d.state, "", err
	case mark(there) == mark(text):
		d.set(d.stateOf(text))
		return d.state, "", nil
	case mark(there) != seen && !both:
		theirs, err := wordsOf(d.name, there)
		if err != nil {
			return d.state, "", err
		}
		return d.state, "", &Conflict{d.stateOf(there), theirs}
	case mark(there) != seen:
		copied = d.free(strings.TrimSuffix(d.name, filepath.Ext(d.name))+" (other)", filepath.Ext(d.name))
		if err := files.Write(ctx, d.folder, []files.File{{Name: copied, Body: there}}); err != nil {
			return d.state, "", err
		}
	}
	if err := files.Write(ctx, d.folder, []files.File{{Name: d.name, Body: text}}); err != nil {
		return d.state, copied, err
	}
	d.set(d.stateOf(text))
	return d.state, copied, nil
}

// Taken is the error of a name that a file in the folder has.
type Taken struct{ Name string }

// Error is the error's text.
func (t *Taken) Error() string { return "there is a file " + t.Name + " in the folder already" }

// saveAs writes words into a file called name, which the page saves to from then on. The error is
// *Taken if there is one; with over, that one goes into a copy beside it, whose name is given. like is
// the content of the file that the words came from, if its line ends are to stay.
func (d *document) saveAs(ctx context.Context, words, name string, over bool, like []byte) (s state, copied string, err error) {
	name = strings.TrimSpace(name)
	if low := strings.ToLower(filepath.Ext(name)); low != ".yaml" && low != ".yml" {
		name += ".yaml"
	}
	if err := files.CheckName(name); err != nil {
		return state{}, "", err
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.closed {
		return d.state, "", errors.New("the program is ending; nothing was saved")
	}
	there, err := files.Read(ctx, filepath.Join(d.folder, name), nil)
	switch {
	case errors.Is(err, os.ErrNotExist):
	case err != nil:
		return d.state, "", err
	case !over:
		return d.state, "", &Taken{name}
	default:
		like = there
		ext := filepath.Ext(name)
		copied = d.free(strings.TrimSuffix(name, ext)+" (before)", ext)
		if err := files.Write(ctx, d.folder, []files.File{{Name: copied, Body: there}}); err != nil {
			return d.state, "", err
		}
	}
	text := bytesOf(like, words)
	if err := files.Write(ctx, d.folder, []files.File{{Name: name, Body: text}}); err != nil {
		return d.state, copied, err
	}
	d.name = name
	d.set(d.stateOf(text))
	return d.state, copied, nil
}

// free is a name that no file in the folder has.
func (d *document) free(stem, ext string) string {
	name := stem + ext
	for k := 2; ; k++ {
		if _, err := os.Lstat(filepath.Join(d.folder, name)); errors.Is(err, os.ErrNotExist) || k > 999 {
			return name
		}
		name = fmt.Sprintf("%s %d%s", stem, k, ext)
	}
}

// source is a text as a job takes it, under the name of the file.
func (d *document) source(text string) job.Source {
	s, _ := d.now()
	if s.Name == "" {
		s.Name = "pattern.yaml"
	}
	return job.Source{Name: s.Name, Text: []byte(text)}
}

// watch keeps an eye on the file until ctx ends.
func (d *document) watch(ctx context.Context) {
	for ctx.Err() == nil {
		s, change := d.now()
		if s.Name == "" {
			select {
			case <-ctx.Done():
			case <-change:
			}
			continue
		}
		of, stop := context.WithCancel(ctx)
		go d.until(of, s.Path, stop)
		files.Watch(of, s.Path, func([]byte, error) {
			d.mu.Lock()
			defer d.mu.Unlock()
			if d.state.Path != s.Path {
				return
			}
			// read again under the lock: a save may have come in between
			text, err := files.Read(of, s.Path, nil)
			if err != nil {
				gone := d.state
				gone.Gone = err.Error()
				d.set(gone)
				return
			}
			d.set(d.stateOf(text))
		})
		stop()
	}
}

// until calls stop when the page saves to another file than path.
func (d *document) until(ctx context.Context, path string, stop func()) {
	for {
		s, change := d.now()
		if s.Path != path {
			stop()
			return
		}
		select {
		case <-ctx.Done():
			return
		case <-change:
		}
	}
}

// where is the folder in full.
func (d *document) where() string {
	d.mu.Lock()
	defer d.mu.Unlock()
	if whole, err := filepath.Abs(d.folder); err == nil {
		return whole
	}
	return d.folder
}

// beside is the file of written rows that the pattern names, which lies beside it or
// below it, or nil if it can't be read.
func (d *document) beside(ctx context.Context, name string) *job.Source {
	return d.besideMost(ctx, name, files.MaxRead)
}

// besideMost is beside with another bound, in bytes.
func (d *document) besideMost(ctx context.Context, name string, most int64) *job.Source {
	s, _ := d.now()
	if s.Path == "" {
		return nil
	}
	text, err := files.ReadMost(ctx, filepath.Join(filepath.Dir(s.Path), filepath.FromSlash(name)), nil, most)
	if err != nil {
		return nil
	}
	return &job.Source{Name: name, Text: text}
}
