package files

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// Record is the name of the file in which a folder's Output keeps what it has written there.
const Record = ".flatwright-files.json"

const recordNote = "Which files in this folder Flatwright wrote, and their SHA-256 sums: it never replaces a file that is yours or that you have changed."

// Output is a folder that a command writes into. It replaces only what the same command wrote
// there from the same file and no one has changed since.
type Output struct {
	Dir       string
	By        string   // name of the command
	From      string   // path of the file that the command works on, or Stdio
	Inputs    []string // paths of all that it read: never replaced
	Overwrite bool     // replace other files too
}

// written is a file that a command has written.
type written struct {
	By   string   `json:"by"`
	From string   `json:"from"` // seen from the folder
	Sums []string `json:"sums"` // of what it may hold: a program that is killed leaves the old or the new
}

type record struct {
	Note  string              `json:"note"`
	Files map[string]*written `json:"files"`
}

// kept is the error of an Output that would replace files that are not its own. Nothing
// was written.
type kept struct {
	Dir    string
	Input  string   // a file that the command reads
	Others []string // files that this command did not write, or that were changed since
}

// Error says in one line what was kept, and how to have it otherwise.
func (k *kept) Error() string {
	if k.Input != "" {
		return fmt.Sprintf("kept %s: this command reads it, and none writes over what it reads; choose another folder with --out", filepath.Join(k.Dir, k.Input))
	}
	name, it, was := filepath.Join(k.Dir, k.Others[0]), "it", "was"
	if more := len(k.Others) - 1; more > 0 {
		name, it, was = fmt.Sprintf("%s and %d more", name, more), "them", "were"
	}
	return fmt.Sprintf("kept %s, which this command did not write or which %s changed since; --overwrite replaces %s", name, was, it)
}

// Write puts all files into the folder as the function Write does, and notes them in
// its record. The error is a Kept if one that is there already must stay.
func (o Output) Write(ctx context.Context, all []File) error {
	return write(ctx, o.Dir, all, o.claim)
}

// claim is the record that goes before the files: with the sums of what is there and of what
// is to come, it is right at every moment of the writing.
func (o Output) claim(root *os.Root, all []File) (File, error) {
	old, err := o.recorded(root)
	if err != nil {
		return File{}, err
	}
	from := o.from()
	kept := &kept{Dir: o.Dir}
	for _, f := range all {
		if o.reads(f.Name) {
			kept.Input = f.Name
			return File{}, kept
		}
		there, err := sumOf(root, f.Name)
		if err != nil {
			return File{}, fmt.Errorf("cannot read %s: %w", filepath.Join(o.Dir, f.Name), plain(err))
		}
		now := sum(f.Body)
		w := old.Files[f.Name]
		own := w != nil && w.By == o.By && w.From == from && slices.Contains(w.Sums, there)
		if there != "" && there != now && !own && !o.Overwrite {
			kept.Others = append(kept.Others, f.Name)
			continue
		}
		w = &written{By: o.By, From: from, Sums: []string{now}}
		if there != "" && there != now {
			w.Sums = append(w.Sums, there)
		}
		old.Files[f.Name] = w
	}
	if len(kept.Others) > 0 {
		return File{}, kept
	}
	for name := range old.Files {
		if _, err := root.Lstat(name); err != nil && !slices.ContainsFunc(all, func(f File) bool { return f.Name == name }) {
			delete(old.Files, name)
		}
	}
	body, err := json.MarshalIndent(old, "", "  ")
	return File{Name: Record, Body: append(body, '\n')}, err
}

// recorded is the folder's record, an empty one if there is none.
func (o Output) recorded(root *os.Root) (record, error) {
	r := record{Files: map[string]*written{}}
	b, err := root.ReadFile(Record)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return r, fmt.Errorf("cannot read %s: %w", filepath.Join(o.Dir, Record), plain(err))
	}
	if err == nil && (json.Unmarshal(b, &r) != nil || r.Note != recordNote) && !o.Overwrite {
		return r, &kept{Dir: o.Dir, Others: []string{Record}}
	}
	r.Note = recordNote
	if r.Files == nil {
		r.Files = map[string]*written{}
	}
	return r, nil
}

// from is the way from the folder to the file that the command works on.
func (o Output) from() string {
	if o.From == Stdio || o.From == "" {
		return Stdio
	}
	dir, err := filepath.Abs(o.Dir)
	file, err2 := filepath.Abs(o.From)
	if err == nil && err2 == nil {
		if way, err := filepath.Rel(dir, file); err == nil {
			return filepath.ToSlash(way)
		}
	}
	return filepath.ToSlash(filepath.Clean(o.From)) // on another drive
}

// reads reports whether the file called name is one that the command reads, by whatever path.
func (o Output) reads(name string) bool {
	info, err := os.Stat(filepath.Join(o.Dir, name))
	if err != nil {
		return false
	}
	return slices.ContainsFunc(o.Inputs, func(path string) bool {
		in, err := os.Stat(path)
		return err == nil && os.SameFile(in, info)
	})
}

// sumOf is the sum of a file, "" if there is none. What is no plain file has a sum that
// no file has.
func sumOf(root *os.Root, name string) (string, error) {
	info, err := root.Lstat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "", nil
	case err != nil:
		return "", err
	case !info.Mode().IsRegular():
		return "not a file", nil
	}
	f, err := root.Open(name)
	if err != nil {
		return "", err
	}
	defer f.Close()
	h := sha256.New()
	_, err = io.Copy(h, f)
	return hex.EncodeToString(h.Sum(nil)), err
}

func sum(body []byte) string {
	h := sha256.Sum256(body)
	return hex.EncodeToString(h[:])
}
