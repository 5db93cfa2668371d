package files

import (
	"bytes"
	"context"
	"io/fs"
	"os"
	"time"
)

// Times of Watch. A file's times tell of most changes; as some disks keep
// them coarsely, the file is read now and then anyway.
const (
	lookEvery = 150 * time.Millisecond
	readEvery = 2 * time.Second
	settle    = 40 * time.Millisecond
	missing   = time.Second // editors that replace a file take it away for a moment
)

// Watch calls tell with the content of the file called path, now and whenever
// it has changed, until ctx ends. Content counts and not the file's time. A file is
// told when it has come to rest: half of one that is being written is not. One that
// is gone or can't be read for a second is told as an error, once; it is waited for.
func Watch(ctx context.Context, path string, tell func(text []byte, err error)) {
	w := watched{path: path, tell: tell}
	tick := time.NewTicker(lookEvery)
	defer tick.Stop()
	for ; ctx.Err() == nil; wait(ctx, tick.C) {
		w.look(ctx)
	}
}

// watched is a file and what was told of it last.
type watched struct {
	path   string
	tell   func(text []byte, err error)
	last   []byte
	seen   fs.FileInfo
	told   bool
	failed string    // the error that was told last, or ""
	read   time.Time // when it was read last
	gone   time.Time // since when it can't be read
}

func (w *watched) look(ctx context.Context) {
	info, err := os.Stat(w.path)
	if err == nil && w.told && w.failed == "" && same(info, w.seen) && time.Since(w.read) < readEvery {
		return
	}
	text, err := atRest(ctx, w.path)
	switch {
	case ctx.Err() != nil:
	case err != nil:
		w.fail(err)
	default:
		w.read, w.gone, w.seen = time.Now(), time.Time{}, info
		if !w.told || w.failed != "" || !bytes.Equal(text, w.last) {
			w.last, w.told, w.failed = text, true, ""
			w.tell(text, nil)
		}
	}
}

// fail tells an error that has lasted, or that is there from the beginning.
func (w *watched) fail(err error) {
	if w.gone.IsZero() {
		w.gone = time.Now()
	}
	if (time.Since(w.gone) >= missing || !w.told) && w.failed != err.Error() {
		w.failed, w.told = err.Error(), true
		w.tell(nil, err)
	}
}

func same(a, b fs.FileInfo) bool {
	return b != nil && a.ModTime().Equal(b.ModTime()) && a.Size() == b.Size() && os.SameFile(a, b)
}

// atRest reads a file until it is the same twice.
func atRest(ctx context.Context, path string) ([]byte, error) {
	text, err := Read(ctx, path, nil)
	for range 25 {
		rest := time.NewTimer(settle)
		wait(ctx, rest.C)
		rest.Stop()
		again, err2 := Read(ctx, path, nil)
		if ctx.Err() != nil || err2 == nil && err == nil && bytes.Equal(text, again) || err != nil && err2 != nil {
			return again, err2
		}
		text, err = again, err2
	}
	return text, err
}

func wait(ctx context.Context, c <-chan time.Time) {
	select {
	case <-ctx.Done():
	case <-c:
	}
}
