package starter

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/cmd/internal/job"
)

func TestEveryStarterIsReadCheckedAndDrawnWithoutAFinding(t *testing.T) {
	for _, k := range Kinds() {
		text := Text(k.Name)
		require.NotNil(t, text, k.Name)
		r, err := job.Draw(context.Background(), job.Source{Name: k.Name, Text: text}, job.DrawOptions{})
		require.NoError(t, err, "%s: %v", k.Name, r.Findings)
		assert.Empty(t, r.Findings, k.Name)
		assert.NotEmpty(t, r.Files, k.Name)
		assert.Greater(t, strings.Count(string(text), "#"), 5, "%s is commented", k.Name)
	}
}

func TestEveryStarterFileIsAKind(t *testing.T) {
	all, err := files.ReadDir("kinds")
	require.NoError(t, err)
	assert.Len(t, all, len(Kinds()))
	assert.Nil(t, Text("../starter"))
	assert.Nil(t, Text("none"))
}
