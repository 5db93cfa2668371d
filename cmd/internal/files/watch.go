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
	var last []byte
	var seen fs.FileInfo
	told, failed := false, ""
	var read, gone time.Time
	tick := time.NewTicker(lookEvery)
	defer tick.Stop()
	for ; ; wait(ctx, tick.C) {
		if ctx.Err() != nil {
			return
		}
		info, err := os.Stat(path)
		if err == nil && seen != nil && told && failed == "" && same(info, seen) && time.Since(read) < readEvery {
			continue
		}
		text, err := atRest(ctx, path)
		if ctx.Err() != nil {
			return
		}
		if err != nil {
			if gone.IsZero() {
				gone = time.Now()
			}
			if (time.Since(gone) >= missing || !told) && failed != err.Error() {
				failed, told = err.Error(), true
				tell(nil, err)
			}
			continue
		}
		read, gone, seen = time.Now(), time.Time{}, info
		if told && failed == "" && bytes.Equal(text, last) {
			continue
		}
		last, told, failed = text, true, ""
		tell(text, nil)
	}
}

func same(a, b fs.FileInfo) bool {
	return a.ModTime().Equal(b.ModTime()) && a.Size() == b.Size() && os.SameFile(a, b)
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
