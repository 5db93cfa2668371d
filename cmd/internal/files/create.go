package files

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// Create writes a new file at path, whole or not at all. The error says so if there is one of
// that name already; that one stays as it is.
func Create(ctx context.Context, path string, body []byte) error {
	dir, name := filepath.Dir(path), filepath.Base(path)
	if err := CheckName(name); err != nil {
		return err
	}
	if err := ctx.Err(); err != nil {
		return fmt.Errorf("stopped before anything was written: %w", context.Cause(ctx))
	}
	failed := func(err error) error {
		if errors.Is(err, fs.ErrExist) {
			return fmt.Errorf("cannot write %s: that file already exists", path)
		}
		return fmt.Errorf("cannot write %s: %w", path, plain(err))
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return failed(err)
	}
	defer root.Close()
	if _, err := root.Lstat(name); err == nil {
		return failed(fs.ErrExist)
	}
	temp := tempName()
	defer root.Remove(temp) //nolint:errcheck // it is not there if it was not written
	if err := writeTemp(root, temp, body, 0); err != nil {
		return failed(err)
	}
	// a link never takes the place of a file; some disks have none
	if err = root.Link(temp, name); err == nil || errors.Is(err, fs.ErrExist) {
		if err != nil {
			return failed(err)
		}
		return nil
	}
	if err := writeTemp(root, name, body, 0); err != nil {
		if !errors.Is(err, fs.ErrExist) {
			_ = root.Remove(name) // no half of a file stays
		}
		return failed(err)
	}
	return nil
}

// CreatePrivate writes a new file that only this person can read, in a folder that is hers alone, which it
// makes if it is not there, and gives its path.
func CreatePrivate(dir, name string, body []byte) (string, error) {
	failed := func(err error) (string, error) {
		return "", fmt.Errorf("cannot write into %s: %w", dir, plain(err))
	}
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return failed(err)
	}
	if err := os.Chmod(dir, 0o700); err != nil { // it may have been there
		return failed(err)
	}
	path := filepath.Join(dir, name)
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return failed(err)
	}
	_, err = f.Write(body)
	if err = errors.Join(err, f.Close()); err != nil {
		_ = os.Remove(path) // no half of a file stays
		return failed(err)
	}
	return path, nil
}
