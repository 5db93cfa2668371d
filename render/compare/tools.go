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

// Run runs a tool with the faces of package fonts and no others, and returns its
// standard output. It gives up after a minute.
func Run(t testing.TB, stdin []byte, name string, args ...string) []byte {
	t.Helper()
	tool := Tool(t, name)
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	cmd := exec.CommandContext(ctx, tool, args...)
	cmd.Env = append(os.Environ(), "FONTCONFIG_FILE="+fontconfig(t))
	cmd.Stdin = bytes.NewReader(stdin)
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	cmd.WaitDelay = 5 * time.Second
	if err := cmd.Run(); err != nil {
		t.Fatalf("%s: %v\n%s%s", name, err, errs.String(), out.String())
	}
	return out.Bytes()
}

var (
	configOnce sync.Once
	configPath string
	configErr  error
)

// fontconfig is a configuration of fontconfig that knows our faces alone. It stays
// in the machine's folder for temporary files, named by what is in it.
func fontconfig(t testing.TB) string {
	t.Helper()
	configOnce.Do(func() { configPath, configErr = writeFontconfig() })
	if configErr != nil {
		t.Fatal(configErr)
	}
	return configPath
}

func writeFontconfig() (string, error) {
	dir := filepath.Join(os.TempDir(), fmt.Sprintf("flatwright-faces-%d", os.Getuid()))
	if err := os.MkdirAll(filepath.Join(dir, "cache"), 0o700); err != nil {
		return "", err
	}
	for name, f := range map[string]fonts.Face{"regular": fonts.Regular, "bold": fonts.Bold, "italic": fonts.Italic} {
		if err := replace(filepath.Join(dir, name+".ttf"), fonts.TTF(f)); err != nil {
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
