package main

import (
	"bytes"
	"path/filepath"
	"strings"
	"unicode/utf8"
)

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
