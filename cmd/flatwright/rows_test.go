package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const spiral = `Terms: US
Row 1: Ch 21, sc in 2nd ch from hook and in each ch across, turn. (20 sc)
Row 2: Ch 1 (does not count as a st), sc in each st across, turn. (20 sc)
Row 3: Ch 1, *sc in next 3 sts, 2 sc in next st; rep from * across, turn. (25 sc)
`

func write(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	return path
}

func TestATextOfRowsIsCheckedByItself(t *testing.T) {
	r := flatwright(t, "", "check", "--rows", write(t, "rows.txt", spiral))
	assert.Equal(t, exitWell, r.code, r.out+r.err)
	assert.Contains(t, r.err, "read 3 of 3 lines of rows whole")

	r = flatwright(t, "", "check", "--rows", write(t, "rows.txt", strings.Replace(spiral, "(25 sc)", "(26 sc)", 1)))
	assert.Equal(t, exitFindings, r.code)
	assert.Contains(t, r.out, "rows.txt:4:")
	assert.Contains(t, r.out, "25")
}

func TestTheReportForADesignerShowsTheArithmetic(t *testing.T) {
	text := write(t, "rows.txt", strings.Replace(spiral, "(25 sc)", "(26 sc)", 1))
	r := flatwright(t, "", "check", "--rows", text, "--format", "markdown")
	assert.Equal(t, exitFindings, r.code)
	assert.True(t, strings.HasPrefix(r.out, "# "), r.out)
	assert.Contains(t, r.out, "26")
	r = flatwright(t, "", "check", "--format", "sarif", "--rows", text)
	assert.Contains(t, r.out, `"version": "2.1.0"`)
	r = flatwright(t, contents(t, tern), "check", "--format", "markdown", "-")
	assert.Equal(t, exitUsage, r.code, "a pattern without rows has no report on rows")
}

func TestThePatternsOwnRowsAreReadWithTheirPlaceInTheFile(t *testing.T) {
	text := contents(t, tern) + "rows: |\n  Back\n  Row 1: Ch 21, sc in 2nd ch from hook and in each ch across, turn. (19 sc)\n"
	r := flatwright(t, text, "check", "-")
	assert.Equal(t, exitFindings, r.code)
	line := strings.Count(text, "\n")
	assert.Contains(t, r.out, fmt.Sprintf("standard input:%d:", line), "%s", r.out)
}

func TestPrintedRowsAreReadBackWithoutAFinding(t *testing.T) {
	for _, example := range []string{"saltmarsh-cardigan", "fellside-jumper", "pebble-hat"} {
		pattern := filepath.Join("..", "..", "examples", example+".yaml")
		for _, args := range [][]string{{}, {"--terms", "uk"}} {
			printed := flatwright(t, "", append([]string{"rows", pattern}, args...)...)
			require.Equal(t, exitWell, printed.code, printed.err)
			r := flatwright(t, "", "check", "--rows", write(t, "rows.txt", printed.out))
			assert.Equal(t, exitWell, r.code, "%s %v\n%s", example, args, r.out)
		}
	}
}

func TestWordsGoFromUSToUKAndBack(t *testing.T) {
	text := write(t, "rows.txt", spiral)
	uk := flatwright(t, "", "words", "--to", "uk", text)
	require.Equal(t, exitWell, uk.code, uk.err)
	assert.Contains(t, uk.out, "dc in next 3 sts, 2 dc in next st")
	back := flatwright(t, uk.out, "words", "--from", "uk", "--to", "us", "-")
	assert.Equal(t, spiral, back.out)
	assert.Empty(t, uk.err, "it says its terms")
	silent := flatwright(t, "Row 1: Hdc in each st.\n", "words", "--from", "us", "--to", "uk", "-")
	assert.Equal(t, "Row 1: Htr in each st.\n", silent.out)
	assert.Contains(t, silent.err, "write 'UK terms' at its top")
	list := flatwright(t, "", "words", "--abbreviations", text)
	assert.Contains(t, list.out, "sc\t")
	assert.Equal(t, exitUsage, flatwright(t, "", "words", text).code)
}

// é is the byte 0xE9 in Windows-1252 (Unicode's mapping table CP1252.TXT); the line under a finding shows what was read.
func TestTheLineOfAFindingIsShownInTheEncodingThatItWasReadIn(t *testing.T) {
	r := flatwright(t, "", "check", write(t, "rows.txt", "Terms: US\nCh 6.\nRow 1: Sc in each caf\xe9 stitch. (9 sc)\n"))
	assert.Contains(t, r.out, "it is read as Windows-1252")
	assert.Contains(t, r.out, "café")
	assert.NotContains(t, r.out, "\xe9")
}
