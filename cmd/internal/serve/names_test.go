package serve

import (
	"fmt"
	"mime"
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is saved into one folder must not push something else out of it: every download, of
// two sizes and in every way of labelling, has a name of its own. The pattern is a small one: names do not
// hang on how much there is to draw.
func TestDownloadsOfDifferentThingsHaveDifferentNames(t *testing.T) {
	s := running(t, Options{})
	c := let(t, s)
	of := map[string]string{}
	for _, size := range []string{"S", "M"} {
		for _, labels := range []string{"one", "all", "letters", "blank"} {
			for _, g := range downloadGroups() {
				for _, d := range g.All {
					code, body, h := c.ask("/api/download", map[string]any{"text": typed, "what": d.Name, "size": size, "labels": labels})
					if d.Name == "yarn" && code == http.StatusUnprocessableEntity {
						continue // an example without a swatch
					}
					require.Equal(t, http.StatusOK, code, "%s: %s", d.Name, body)
					_, params, err := mime.ParseMediaType(h.Get("Content-Disposition"))
					require.NoError(t, err)
					if was, ok := of[params["filename"]]; ok {
						assert.Equal(t, was, d.Name+string(body), "two things are called %s", params["filename"])
					}
					of[params["filename"]] = d.Name + string(body)
				}
			}
		}
	}
}

func TestASheetHasTheMistakeThatIsAskedFor(t *testing.T) {
	c := let(t, running(t, Options{}))
	seen := map[string]bool{}
	for n := range 4 {
		_, body, h := c.ask("/api/download", map[string]any{"text": typed, "what": "mistake", "mistake": n})
		_, params, err := mime.ParseMediaType(h.Get("Content-Disposition"))
		require.NoError(t, err)
		assert.Contains(t, params["filename"], fmt.Sprintf("-mistake-%d.zip", max(1, n)), "none asked for is the first")
		seen[string(body)] = true
	}
	assert.Len(t, seen, 3)
}
