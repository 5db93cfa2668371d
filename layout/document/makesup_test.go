package document_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/layout/document"
)

// Headings under which patterns tell the sewing: common practice.
func TestAHeadingTellsWhetherThePiecesArePutTogetherUnderIt(t *testing.T) {
	for name, want := range map[string]bool{
		"Making up": true, "MAKING UP": true, "To make up": true, "Finishing": true, "Assembly": true, "Assembling the bag": true, "Sewing up": true,
		"Back": false, "Joining round": true, "Joint cover": false, "": false, "Unfinished edge": false,
	} {
		assert.Equal(t, want, document.WrittenSection{Name: name}.MakesUp(), name)
	}
}
