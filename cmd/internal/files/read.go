package files

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// MaxRead is the most bytes that Read takes: 1 MiB.
const MaxRead = 1 << 20

// errTooLarge is in the error of a file of more bytes than may be.
var errTooLarge = errors.New("it is too large to read")

// Read is the whole of the file called path, or of stdin if path is Stdio. It
// fails, naming the file, if there is none, if it is a folder, if it may not be read
// or if it has more than MaxRead bytes. It stops waiting if ctx ends: for a person who
// types, a pipe to which no one writes, or a disk that is far away.
func Read(ctx context.Context, path string, stdin io.Reader) ([]byte, error) {
	return ReadMost(ctx, path, stdin, MaxRead)
}

// ReadMost is Read with another bound than MaxRead, in bytes.
func ReadMost(ctx context.Context, path string, stdin io.Reader, most int64) ([]byte, error) {
	type result struct {
		text []byte
		err  error
	}
	done := make(chan result, 1)
	go func() {
		var r result
		if path == Stdio {
			r.text, r.err = bounded(stdin, "standard input", most)
		} else {
			r.text, r.err = opened(path, most)
		}
		done <- r
	}()
	select {
	case r := <-done:
		return r.text, r.err
	case <-ctx.Done():
		return nil, fmt.Errorf("stopped: %w", context.Cause(ctx))
	}
}

func opened(path string, most int64) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", path, plain(err))
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, fmt.Errorf("cannot read %s: it is a folder; name the pattern file in it", path)
	}
	return bounded(f, path, most)
}

func bounded(r io.Reader, name string, most int64) ([]byte, error) {
	if r == nil {
		return nil, fmt.Errorf("cannot read %s: there is none", name)
	}
	text, err := io.ReadAll(io.LimitReader(r, most+1))
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", name, plain(err))
	}
	if int64(len(text)) > most {
		return nil, fmt.Errorf("cannot read %s: %w: at most %d MiB", name, errTooLarge, most>>20)
	}
	return text, nil
}

// plain is err in a person's words, without the system call and the path that
// the caller names already.
func plain(err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("there is no such file or folder%w", silent{err})
	case errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("it is write-protected, or belongs to someone else%w", silent{err})
	}
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	var link *os.LinkError
	if errors.As(err, &link) {
		return link.Err
	}
	return err
}

// silent keeps an error for errors.Is and prints nothing.
type silent struct{ error }

func (silent) Error() string   { return "" }
func (s silent) Unwrap() error { return s.error }
