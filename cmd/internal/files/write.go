package files

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"time"
)

// Write puts all files into the folder dir, which it makes if it is not there.
// Every file is written whole under a temporary name first; only when all of them
// are there does each take its name, so that a reader finds each file whole, old or
// new. On an error, or if ctx ends before that, nothing is changed and no temporary
// file or new folder stays. An error in the taking of names says which
// files are new already.
func Write(ctx context.Context, dir string, all []File) error {
	return write(ctx, dir, all, nil)
}

// claim looks at a folder before files are written into it: its error lets none be written, its
// file goes before them.
type claim func(root *os.Root, all []File) (File, error)

func write(ctx context.Context, dir string, all []File, c claim) error {
	if err := checkNames(all); err != nil {
		return err
	}
	made, err := makeFolder(dir)
	if err != nil {
		return fmt.Errorf("cannot make the folder %s: %w", dir, plain(err))
	}
	done, err := writeInto(ctx, dir, all, c)
	if err != nil && done == 0 {
		for _, d := range made {
			_ = os.Remove(d) // only what is empty goes
		}
	}
	return err
}

// writeInto is write for a folder that is there; done counts the files that
// have taken their names.
func writeInto(ctx context.Context, dir string, all []File, c claim) (done int, err error) {
	root, err := os.OpenRoot(dir)
	if err != nil {
		return 0, fmt.Errorf("cannot write into %s: %w", dir, plain(err))
	}
	defer root.Close()

	sweep(root)
	if c != nil {
		first, err := c(root, all)
		if err != nil {
			return 0, err
		}
		all = append([]File{first}, all...)
	}
	temps := make([]string, 0, len(all))
	defer func() {
		for _, t := range temps[done:] {
			_ = root.Remove(t)
		}
	}()
	for _, f := range all {
		if err := ctx.Err(); err != nil {
			return 0, fmt.Errorf("stopped before anything was written: %w", context.Cause(ctx))
		}
		mode, err := replaceable(root, f.Name)
		if err != nil {
			return 0, fmt.Errorf("cannot write %s: %w", filepath.Join(dir, f.Name), err)
		}
		temp := tempName()
		temps = append(temps, temp)
		if err := writeTemp(root, temp, f.Body, mode); err != nil {
			return 0, fmt.Errorf("cannot write %s: %w", filepath.Join(dir, f.Name), plain(err))
		}
	}
	if err := ctx.Err(); err != nil {
		return 0, fmt.Errorf("stopped before anything was written: %w", context.Cause(ctx))
	}
	for _, f := range all {
		if err := root.Rename(temps[done], f.Name); err != nil {
			err = fmt.Errorf("cannot write %s: %w", filepath.Join(dir, f.Name), plain(err))
			if done > 0 {
				err = fmt.Errorf("%w (%d of %d files are new already, the last of them %s)", err, done, len(all), all[done-1].Name)
			}
			return done, err
		}
		done++
	}
	return done, nil
}

// Temporary files. One that is older than stale was left by a program that was killed.
const (
	tempStart = ".flatwright-"
	tempEnd   = ".tmp"
	stale     = time.Hour
)

func tempName() string { return tempStart + rand.Text() + tempEnd }

// sweep takes stale temporary files out of a folder. What can't be taken out stays.
func sweep(root *os.Root) {
	all, err := fs.ReadDir(root.FS(), ".")
	if err != nil {
		return
	}
	for _, e := range all {
		if !strings.HasPrefix(e.Name(), tempStart) || !strings.HasSuffix(e.Name(), tempEnd) || len(e.Name()) != len(tempName()) {
			continue
		}
		if info, err := e.Info(); err == nil && info.Mode().IsRegular() && time.Since(info.ModTime()) > stale {
			_ = root.Remove(e.Name())
		}
	}
}

// replaceable says whether a file called name may be put there, and with
// what rights: those of the file that it replaces.
func replaceable(root *os.Root, name string) (fs.FileMode, error) {
	info, err := root.Lstat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return 0, nil
	case err != nil:
		return 0, plain(err)
	case info.IsDir():
		return 0, errors.New("there is a folder of that name")
	case !info.Mode().IsRegular():
		return 0, nil
	}
	f, err := root.OpenFile(name, os.O_WRONLY, 0)
	if err != nil {
		if runtime.GOOS == "windows" {
			return 0, fmt.Errorf("%w; is it open in another program?", plain(err))
		}
		return 0, plain(err)
	}
	return info.Mode().Perm(), f.Close()
}

func writeTemp(root *os.Root, name string, body []byte, mode fs.FileMode) (err error) {
	f, err := root.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	if _, err := f.Write(body); err != nil {
		return err
	}
	if mode != 0 && runtime.GOOS != "windows" {
		if err := f.Chmod(mode); err != nil {
			return err
		}
	}
	return f.Sync()
}

// makeFolder makes dir and what leads to it, and gives the folders that it
// made, the innermost first.
func makeFolder(dir string) (made []string, err error) {
	var missing []string
	for d := filepath.Clean(dir); ; d = filepath.Dir(d) {
		if _, err := os.Stat(d); err == nil || !errors.Is(err, fs.ErrNotExist) {
			break
		}
		missing = append(missing, d)
		if d == filepath.Dir(d) {
			break
		}
	}
	err = os.MkdirAll(dir, 0o777)
	if err != nil {
		for _, d := range missing {
			_ = os.Remove(d)
		}
		return nil, err
	}
	return missing, nil
}
