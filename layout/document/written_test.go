package document_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/layout/document"
	"flatwright/schematic"
)

// A heading begins a section of its own, of rows or of words, and its mark is not printed.
func TestWrittenRowsAreCutAtTheirHeadings(t *testing.T) {
	sections, _ := document.Written(&schematic.Pattern{Title: "Bag"}, "# Bag\n\nTerms: US\n\n# Front\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nFasten off.\n\n# Making up\nSew the Front top to the Back top.\nWeave in the ends.\n")
	require.Len(t, sections, 2)
	assert.Equal(t, "Front", sections[0].Name)
	assert.Len(t, sections[0].Lines, 3)
	assert.Equal(t, "Making up", sections[1].Name)
	require.Len(t, sections[1].Lines, 2)
	assert.Equal(t, "Weave in the ends.", sections[1].Lines[1])
}
