package rows

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestATitleThatNamesAStitchAndItsTermsIsNoRow(t *testing.T) {
	for _, title := range []string{"Bobble edged mat (US terms)", "Popcorn Flower Square - UK terms", "Cluster Round, US terms", "Treble Circle (flat)", "Double Crochet Disc, 4 rounds"} {
		x := Read("t.txt", []byte(title+"\n\nMagic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join with sl st to top of ch-3. (12 dc)\n"), Options{})
		assert.Len(t, x.Sections, 1, title)
		assert.Len(t, x.Sections[0].Lines, 2, title)
		assert.NotEmpty(t, x.Title, title)
	}
	x := Read("t.txt", []byte("Ch 20, in rows\nRow 1: Sc in 2nd ch from hook and in each ch across. (19 sc)\n"), Options{})
	assert.Len(t, x.Sections[0].Lines, 2, "the chain is one")
}
