// Package compare holds two pictures of one sheet against each other: it is for
// tests, which render what they wrote with renderers from outside (librsvg,
// Poppler, Chromium). It's no part of the program.
package compare

import (
	"bytes"
	"context"
	"encoding/xml"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"golang.org/x/image/font/gofont/gomono"

	"flatwright/fonts"
)

// Required is true where a missing tool fails a test: with FLATWRIGHT_RENDERERS
// set to required. Elsewhere such a test is skipped.
func Required() bool { return os.Getenv("FLATWRIGHT_RENDERERS") == "required" }

// Tool is the path of an outside program, or the test fails or is skipped.
func Tool(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		if Required() {
			t.Fatalf("this test needs %s: %v", name, err)
		}
		t.Skipf("no %s on this machine", name)
	}
	return path
}

// Device is a machine with its faces.
type Device int

// The devices: one with the faces of package fonts and no others, and one whose only
// face is another and wider one, as on a telephone.
const (
	House Device = iota
	Foreign
	devices
)

// Run runs a tool on a House device, and returns its standard output. It gives up
// after a minute.
func Run(t testing.TB, stdin []byte, name string, args ...string) []byte {
	t.Helper()
	return House.run(t, stdin, name, args...)
}

func (d Device) run(t testing.TB, stdin []byte, name string, args ...string) []byte {
	t.Helper()
	tool := Tool(t, name)
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	cmd := exec.CommandContext(ctx, tool, args...)
	cmd.Env = append(os.Environ(), "FONTCONFIG_FILE="+d.fontconfig(t))
	cmd.Stdin = bytes.NewReader(stdin)
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	cmd.WaitDelay = 5 * time.Second
	if err := cmd.Run(); err != nil {
		t.Fatalf("%s: %v\n%s%s", name, err, errs.String(), out.String())
	}
	return out.Bytes()
}

// configs are the configurations of fontconfig, each written once.
var configs [devices]struct {
	once sync.Once
	path string
	err  error
}

// faces are the faces of a device. Go Mono's letters are all 0.6 em wide, those of
// Liberation Sans about half an em on average.
func (d Device) faces() map[string][]byte {
	if d == Foreign {
		return map[string][]byte{"mono": gomono.TTF}
	}
	return map[string][]byte{"regular": fonts.TTF(fonts.Regular), "bold": fonts.TTF(fonts.Bold), "italic": fonts.TTF(fonts.Italic)}
}

// fontconfig is a configuration of fontconfig that knows the device's faces alone. It
// stays in the machine's folder for temporary files, named by what is in it.
func (d Device) fontconfig(t testing.TB) string {
	t.Helper()
	c := &configs[d]
	c.once.Do(func() { c.path, c.err = d.writeFontconfig() })
	if c.err != nil {
		t.Fatal(c.err)
	}
	return c.path
}

func (d Device) writeFontconfig() (string, error) {
	dir := filepath.Join(os.TempDir(), fmt.Sprintf("flatwright-faces-%d-%d", os.Getuid(), d))
	if err := os.MkdirAll(filepath.Join(dir, "cache"), 0o700); err != nil {
		return "", err
	}
	for name, ttf := range d.faces() {
		if err := replace(filepath.Join(dir, name+".ttf"), ttf); err != nil {
			return "", err
		}
	}
	var escaped bytes.Buffer
	if err := xml.EscapeText(&escaped, []byte(dir)); err != nil {
		return "", err
	}
	config := "<?xml version=\"1.0\"?>\n<!DOCTYPE fontconfig SYSTEM \"urn:fontconfig:fonts.dtd\">\n<fontconfig>" +
		"<dir>" + escaped.String() + "</dir><cachedir>" + escaped.String() + "/cache</cachedir></fontconfig>\n"
	path := filepath.Join(dir, "fonts.conf")
	return path, replace(path, []byte(config))
}

// replace writes a file that other tests may be reading, unless it's there.
func replace(path string, data []byte) error {
	if old, err := os.ReadFile(path); err == nil && bytes.Equal(old, data) {
		return nil
	}
	f, err := os.CreateTemp(filepath.Dir(path), "new-")
	if err != nil {
		return err
	}
	if _, err := f.Write(data); err != nil {
		f.Close()
		return err
	}
	if err := f.Close(); err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}
