package stitch

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The conversion chart of the yarn standard (Craft Yarn Council), from memory.
func TestUSAndUKNamesAreThoseOfTheConversionChart(t *testing.T) {
	for us, uk := range map[string]string{"sl st": "ss", "sc": "dc", "hdc": "htr", "dc": "tr", "tr": "dtr", "dtr": "trtr", "trtr": "qtr"} {
		s, ok := Lookup(us, US)
		require.True(t, ok, us)
		assert.Equal(t, uk, s.Abbr(UK))
		back, ok := Lookup(uk, UK)
		require.True(t, ok, uk)
		assert.Same(t, s, back)
	}
}

func TestTheSameWordMeansAnotherStitchInTheOtherTerms(t *testing.T) {
	us, _ := Lookup("dc", US)
	uk, _ := Lookup("dc", UK)
	assert.Equal(t, "dc", us.ID)
	assert.Equal(t, "sc", uk.ID)
	fp, ok := Lookup("fptr", UK)
	require.True(t, ok)
	assert.Equal(t, "FPdc", fp.ID)
}

func TestDecreasesUseWhatTheirNameSays(t *testing.T) {
	for word, uses := range map[string]int{"sc2tog": 2, "hdc3tog": 3, "dc5tog": 5, "k2tog": 2, "k3tog": 3, "ssk": 2, "skpo": 2, "s2kp": 3} {
		s, ok := Lookup(word, US)
		require.True(t, ok, word)
		assert.Equal(t, uses, s.Uses, word)
		assert.Equal(t, 1, s.Makes, word)
	}
}

func TestWordsOfOneSetOfTermsAreKnown(t *testing.T) {
	for w, want := range map[string]Terms{"hdc": US, "sc": US, "htr": UK, "miss": UK, "tension": UK} {
		got, ok := Only(w)
		assert.True(t, ok, w)
		assert.Equal(t, want, got, w)
	}
	for _, w := range []string{"dc", "tr", "dtr", "ch", "k", "cl"} {
		_, ok := Only(w)
		assert.False(t, ok, w)
	}
}

func TestIDsAreUniqueAndBasesExist(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range All() {
		assert.False(t, seen[s.ID], s.ID)
		seen[s.ID] = true
		require.NotNil(t, s.Plain(), s.ID)
		assert.NotEmpty(t, s.Key, s.ID)
		assert.LessOrEqual(t, s.Plain().Height, s.Height, s.ID)
	}
}

func TestALoopRunTogetherWithItsStitchIsParted(t *testing.T) {
	known := func(name string) bool { _, ok := Lookup(name, US); return ok }
	for word, want := range map[string][2]string{"blsc": {"bl", "sc"}, "dcflo": {"flo", "dc"}, "blohdc": {"blo", "hdc"}, "sc": {}, "blo": {}, "blxx": {}, "blk": {}} {
		loop, name := LoopApart(word, known)
		assert.Equal(t, want, [2]string{loop, name}, word)
	}
}
