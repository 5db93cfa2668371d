package files

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// Create writes a new file at path. The error says so if there is one of that
// name already; that one stays as it is.
func Create(ctx context.Context, path string, body []byte) error {
	if err := CheckName(filepath.Base(path)); err != nil {
		return err
	}
	if err := ctx.Err(); err != nil {
		return fmt.Errorf("stopped before anything was written: %w", context.Cause(ctx))
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("cannot write %s: there is such a file already", path)
	}
	if err != nil {
		return fmt.Errorf("cannot write %s: %w", path, plain(err))
	}
	_, err = f.Write(body)
	if err = errors.Join(err, f.Sync(), f.Close()); err != nil {
		_ = os.Remove(path) // no half of a file stays
		return fmt.Errorf("cannot write %s: %w", path, plain(err))
	}
	return nil
}
