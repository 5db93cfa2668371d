package main

import (
	"os"
	"path/filepath"
	"runtime"

	"github.com/inconshreveable/mousetrap"
	"golang.org/x/term"
)

// start is how the program was started, as far as it can tell.
type start struct {
	system       string // GOOS
	name         string // as it was called
	folder, home string
	explorer     bool // by the desktop of Windows
	terminal     bool // standard input, output or error is one
	display      bool // there is a screen to open a browser on
}

// started looks at this process.
func started() start {
	s := start{system: runtime.GOOS, name: os.Args[0], explorer: mousetrap.StartedByExplorer()}
	// a folder that cannot be told is no sign of a double click
	s.folder, _ = os.Getwd()
	s.home, _ = os.UserHomeDir()
	for _, f := range []*os.File{os.Stdin, os.Stdout, os.Stderr} {
		s.terminal = s.terminal || term.IsTerminal(int(f.Fd()))
	}
	s.display = os.Getenv("DISPLAY") != "" || os.Getenv("WAYLAND_DISPLAY") != ""
	return s
}

// opened reports whether the program was opened from a desktop, by a double click,
// rather than called by name. macOS opens a program in a terminal of its own, by its
// whole path, in the person's home.
func (s start) opened() bool {
	switch s.system {
	case "windows":
		return s.explorer
	case "darwin":
		return filepath.IsAbs(s.name) && s.home != "" && s.folder == s.home
	}
	return !s.terminal && s.display
}
