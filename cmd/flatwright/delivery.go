package main

import (
	"fmt"
	"path/filepath"

	"github.com/spf13/cobra"

	"flatwright/cmd/internal/files"
	"flatwright/cmd/internal/job"
)

// delivery is what a command reads, and where it writes what it makes of it.
type delivery struct {
	out       string // a folder, "" for the usual one, or files.Stdio
	overwrite bool
	by        string // the command that the files are of
	inputs    []string
}

// flags adds the flags that say where the files go; usual is where they go otherwise.
func (d *delivery) flags(cmd *cobra.Command, usage, usual string) {
	d.out, d.by = usual, cmd.Name()
	cmd.Flags().StringVarP(&d.out, "out", "o", usual, usage)
	cmd.Flags().BoolVar(&d.overwrite, "overwrite", false, "replace files that this command did not write, or that were changed since")
}

// How the flag --out is told.
const (
	usageFolder     = "`FOLDER` to write into (default " + outFolder + "/ and the pattern's name)"
	usageFolderOrIn = "`FOLDER` to write into, or - for one file to standard output (default " + outFolder + "/ and the pattern's name)"
	usageOrFolder   = "`FOLDER` to write into, or - for standard output"
)

// read reads a file, which is then never written over.
func (d *delivery) read(cmd *cobra.Command, path string) (job.Source, error) {
	return d.readMost(cmd, path, files.MaxRead)
}

func (d *delivery) readMost(cmd *cobra.Command, path string, most int64) (job.Source, error) {
	text, err := files.ReadMost(cmd.Context(), path, cmd.InOrStdin(), most)
	if err != nil {
		return job.Source{}, &exit{exitUsage, err}
	}
	d.inputs = append(d.inputs, path)
	if path == files.Stdio {
		path = "standard input"
	}
	return job.Source{Name: path, Text: text}, nil
}

// deliver reads the pattern at path, lets make do its work and puts its files where they
// go. If anything fails it tells what is wrong with the pattern.
func (d *delivery) deliver(cmd *cobra.Command, env environment, path string, make func(src job.Source) (job.Result, error)) (job.Result, error) {
	src, err := d.read(cmd, path)
	if err != nil {
		return job.Result{}, err
	}
	r, err := make(src)
	if err != nil {
		tell(env, r.Findings, src)
		return r, fail(err)
	}
	return r, d.put(cmd, env, path, r)
}

// agreed is deliver for a command that tells briefly what does not agree, and nothing if all is well.
func (d *delivery) agreed(cmd *cobra.Command, env environment, path string, make func(src job.Source) (job.Result, error)) error {
	r, err := d.deliver(cmd, env, path, make)
	if err == nil && weighty(r.Findings) {
		brief(env, r.Findings, path)
	}
	return err
}

// put writes the files of r, made of the file from, into the folder or its one file to standard
// output, and says so.
func (d *delivery) put(cmd *cobra.Command, env environment, from string, r job.Result) error {
	if d.out == files.Stdio {
		if len(r.Files) != 1 {
			return &exit{exitUsage, fmt.Errorf("%d files cannot go to standard output: choose one with --size or --labels, and --format pdf, which holds all pages", len(r.Files))}
		}
		if _, err := env.out.Write(r.Files[0].Body); err != nil {
			return &exit{exitUsage, err}
		}
		return nil
	}
	dir := d.out
	if dir == "" {
		dir = filepath.Join(outFolder, r.Slug)
	}
	o := files.Output{Dir: dir, By: d.by, From: from, Inputs: d.inputs, Overwrite: d.overwrite}
	if err := o.Write(cmd.Context(), r.Files); err != nil {
		return &exit{exitUsage, err}
	}
	summary(env, dir, r)
	return nil
}

// rowsBeside is the file of written rows that a pattern names, or nil if it names none.
func (d *delivery) rowsBeside(cmd *cobra.Command, path string, src job.Source) (*job.Source, error) {
	name := job.RowsFile(src)
	if name == "" {
		return nil, nil
	}
	if path != files.Stdio {
		name = filepath.Join(filepath.Dir(path), filepath.FromSlash(name))
	}
	text, err := d.read(cmd, name)
	if err != nil {
		return nil, err
	}
	return &text, nil
}

// photosBeside are the photographs that a pattern names, under the names that it gives them.
func (d *delivery) photosBeside(cmd *cobra.Command, path string, src job.Source) ([]job.Source, error) {
	var out []job.Source
	for _, name := range job.PhotoFiles(src) {
		at := filepath.FromSlash(name)
		if path != files.Stdio {
			at = filepath.Join(filepath.Dir(path), at)
		}
		f, err := d.readMost(cmd, at, job.MostPhoto)
		if err != nil {
			return nil, err
		}
		out = append(out, job.Source{Name: name, Text: f.Text})
	}
	return out, nil
}

// patternAndText are the pattern at path (nil if path is empty, or a text of rows) and
// the text of its rows: that at rows, or else the one that the pattern names.
func (d *delivery) patternAndText(cmd *cobra.Command, path, rows string) (src, text *job.Source, err error) {
	if path != "" {
		s, err := d.read(cmd, path)
		switch {
		case err != nil:
			return nil, nil, err
		case rows == "" && !job.IsPattern(job.Source{Name: path, Text: s.Text}):
			return nil, &s, nil
		}
		src = &s
		if rows == "" {
			text, err = d.rowsBeside(cmd, path, s)
			return src, text, err
		}
	}
	if rows == "" {
		return nil, nil, nil
	}
	t, err := d.read(cmd, rows)
	return src, &t, err
}
