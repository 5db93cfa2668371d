package walls

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The recipes of the contributor's guide name the files that they touch: each is there,
// and has in it what the guide says is in it.
func TestTheFilesThatTheGuideNamesAreThere(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(root, "DEVELOPERS.md"))
	require.NoError(t, err)
	_, recipes, ok := strings.Cut(string(text), "\n## To add\n")
	require.True(t, ok)
	recipes, _, _ = strings.Cut(recipes, "\n## ")
	named := 0
	for _, m := range regexp.MustCompile("`([a-z_./]+/[a-z_./]+)`").FindAllStringSubmatch(recipes, -1) {
		_, err := os.Stat(filepath.Join(root, filepath.FromSlash(m[1])))
		assert.NoError(t, err)
		named++
	}
	assert.Greater(t, named, 12)
	for _, m := range regexp.MustCompile("`([A-Za-z]+)` (?:of|in)\\s+`([a-z_./]+\\.go)`").FindAllStringSubmatch(recipes, -1) {
		body, err := os.ReadFile(filepath.Join(root, filepath.FromSlash(m[2])))
		require.NoError(t, err)
		assert.Regexp(t, regexp.MustCompile(`(?m)^(?:func (?:\([^)]*\) )?|var |type )`+m[1]+`\b`), string(body), "%s of %s", m[1], m[2])
	}
}
