package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPageGoesToStandardOutputOrIntoAFolder(t *testing.T) {
	r := flatwright(t, "", "page", tern)
	require.Equal(t, exitWell, r.code, r.err)
	assert.Contains(t, r.out, "<!DOCTYPE html>")
	assert.Contains(t, r.out, "Ch ", "the rows that the pieces make")
	r = flatwright(t, "", "page", "--snippet", tern)
	require.Equal(t, exitWell, r.code, r.err)
	assert.NotContains(t, r.out, "<html")
	dir := filepath.Join(t.TempDir(), "site")
	r = flatwright(t, "", "page", "--out", dir, tern)
	require.Equal(t, exitWell, r.code, r.err)
	assert.Equal(t, []string{"tern-slipover-page.html"}, names(t, dir))
	assert.Empty(t, r.out)
}

func TestHandoutWritesWhatItIsAskedFor(t *testing.T) {
	for _, c := range []struct {
		args []string
		want []string
	}{
		{nil, []string{"tern-slipover-handout.pdf"}},
		{[]string{"--size", "M", "--alone", "--large"}, []string{"tern-slipover-handout-m-alone.pdf"}},
		{[]string{"--size", "m", "--worksheet"}, []string{"tern-slipover-answers-m.pdf", "tern-slipover-worksheet-m.pdf"}},
		{[]string{"--worksheet"}, []string{"tern-slipover-answers-m.pdf", "tern-slipover-worksheet-m.pdf"}}, // a class works on one size
		{[]string{"--find-the-mistake", "--seed", "7"}, []string{"tern-slipover-find-the-mistake-7.pdf", "tern-slipover-mistake-answer-7.pdf"}},
		{[]string{"--size", "M", "--life-size", "--paper", "letter"}, []string{"tern-slipover-life-size-m.pdf"}},
	} {
		dir := t.TempDir()
		r := flatwright(t, "", append([]string{"handout", tern, "--out", dir}, c.args...)...)
		require.Equal(t, exitWell, r.code, r.err)
		assert.Equal(t, c.want, names(t, dir))
	}
	for _, args := range [][]string{{"--worksheet", "--find-the-mistake"}, {"--alone"}, {"--size", "Q"}, {"--worksheet", "--life-size", "--size", "M"}, {"--chart", "nothing"}} {
		r := flatwright(t, "", append([]string{"handout", tern, "--out", t.TempDir()}, args...)...)
		assert.Equal(t, exitUsage, r.code, "%v", args)
		assert.NotEmpty(t, r.err)
	}
}

func TestRowsThatStandBesideAPatternAreOnItsPage(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "tern.yaml"), []byte(contents(t, tern)+"rows file: tern-rows.txt\n"), 0o600))
	r := flatwright(t, "", "page", filepath.Join(dir, "tern.yaml"))
	assert.Equal(t, exitUsage, r.code, "the rows are not there")
	require.NoError(t, os.WriteFile(filepath.Join(dir, "tern-rows.txt"), []byte("Back\nCh 78 (86, 94).\n"), 0o600))
	r = flatwright(t, "", "page", filepath.Join(dir, "tern.yaml"))
	require.Equal(t, exitWell, r.code, r.err)
	assert.Regexp(t, `Ch <span class="fw\w+-0">78</span>`, r.out)
}
