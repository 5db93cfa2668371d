package job

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the goldens anew")

// What a drawing brings of its faces, which goldens leave out: a letter more in a text would
// change them from end to end.
var (
	faceStyle = regexp.MustCompile(`(?s)<style>@font-face.*?</style>\n`)
	faceOwn   = regexp.MustCompile(`(<text [^>]*?) font-family="[^"]*"`)
	faceName  = regexp.MustCompile(`&quot;fw-[0-9a-f]{10}&quot;, `)
)

func faceless(svg []byte) []byte {
	svg = faceOwn.ReplaceAll(faceStyle.ReplaceAll(svg, nil), []byte("$1"))
	return faceName.ReplaceAll(svg, nil)
}

// golden holds got to the file at path, or writes the file with -update.
func golden(t *testing.T, path string, got []byte) {
	t.Helper()
	if strings.Contains(filepath.ToSlash(path), "testdata/") {
		got = faceless(got)
	}
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, got, 0o644))
		return
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err, "run with -update, and look at the picture")
	same := strings.ReplaceAll(string(want), "\r\n", "\n") == string(got)
	assert.True(t, same, "%s is no longer as it was: run with -update, and look at the difference", path)
}
