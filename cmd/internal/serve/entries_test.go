package serve

import (
	"math/rand/v2"
	"net/http"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/long"
	"flatwright/schematic/read"
)

// Whatever a list of the form can add anywhere is added or refused with a reason, and what comes of it is worked and drawn.
func TestWhatCanBeAddedIsWorkedAndDrawn(t *testing.T) {
	path := "../../../testdata/read/full.yaml"
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	c := let(t, running(t, Options{File: path}))
	look := choices{Text: string(text), Size: "M", Labels: "one", Units: "both", Paper: "a4"}
	_, body, _ := c.ask("/api/look", look)
	look.Glance = decoded[lookAnswer](t, body).Scale
	var all []editQuestion
	add := func(g read.Group, act string, keys []read.Key) {
		for _, k := range keys {
			all = append(all, editQuestion{Act: act, Path: g.Path, Key: k.Name, Value: "2", Name: "anew"})
		}
	}
	var walk func(g read.Group, list string)
	walk = func(g read.Group, list string) {
		add(g, "put", g.Can)
		if g.Entry {
			add(g, "insert", read.Entries()[list])
		}
		for _, h := range g.Groups {
			walk(h, g.List)
		}
	}
	form, _, ok := read.Fields(text)
	require.True(t, ok)
	walk(form, "")
	require.Greater(t, len(all), 1000)
	r := rand.New(rand.NewPCG(long.Seed(t), 2))
	r.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	added := 0
	for i, q := range all {
		if !long.Some(i, 40) {
			continue
		}
		q.Text, q.Look = string(text), &look
		code, body, _ := c.ask("/api/edit", q)
		if code == http.StatusOK {
			added++
			continue
		}
		assert.Equal(t, http.StatusUnprocessableEntity, code, "%s", body)
		assert.Greater(t, len(decoded[map[string]string](t, body)["error"]), 10)
	}
	t.Logf("%d of %d tried were added", added, len(all))
	assert.Positive(t, added)
}
