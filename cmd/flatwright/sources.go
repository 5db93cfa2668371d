package main

import (
	"bytes"
	"path/filepath"
	"strings"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"flatwright/cmd/internal/files"
	"flatwright/cmd/internal/job"
)

// patternAndText are the pattern at path (nil if path is empty, or a text of rows) and
// the text of its rows: that at rows, or else the one that the pattern names.
func patternAndText(cmd *cobra.Command, path, rows string) (src, text *job.Source, err error) {
	get := func(path string) (*job.Source, error) {
		b, err := files.Read(cmd.Context(), path, cmd.InOrStdin())
		if err != nil {
			return nil, err
		}
		s := source(path, b)
		return &s, nil
	}
	if path != "" {
		if src, err = get(path); err != nil {
			return nil, nil, err
		}
		if rows == "" && !isPattern(path, src.Text) {
			return nil, src, nil
		}
		if file := job.RowsFile(*src); file != "" && rows == "" {
			rows = filepath.Join(filepath.Dir(path), filepath.FromSlash(file))
		}
	}
	if rows != "" {
		if text, err = get(rows); err != nil {
			return nil, nil, err
		}
	}
	return src, text, nil
}

// isPattern tells a pattern file from a text of rows: by its ending, or by one of
// the keys that every pattern has.
func isPattern(path string, text []byte) bool {
	switch strings.ToLower(filepath.Ext(path)) {
	case ".yaml", ".yml":
		return true
	case ".txt":
		return false
	}
	if len(bytes.TrimSpace(text)) == 0 || !utf8.Valid(text) {
		return true // the reader of patterns says what is amiss
	}
	for line := range strings.Lines(string(text)) {
		switch key, _, _ := strings.Cut(line, ":"); key {
		case "version", "pattern", "gauges", "pieces":
			return true
		}
	}
	return false
}
