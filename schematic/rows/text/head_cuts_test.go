package text

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Where a paragraph of definitions goes on to the work; own lines in forms of common practice.
func TestAParagraphOfDefinitionsGoesOnToTheWork(t *testing.T) {
	for line, work := range map[string]string{
		"SPECIAL ABBREVIATION: Shell = 5 dc in next st. FRONT (Make 2): Ch 21. Row 1: Sc in 2nd ch from hook.": "FRONT (Make 2): Ch 21.",
		"Special stitch: Shell = 5 dc in next st. Ch 21. Row 1: Sc in 2nd ch from hook.":                       "Ch 21.",
	} {
		cuts := Cuts(line)
		if assert.Len(t, cuts, 1, line) {
			assert.Contains(t, line[cuts[0]:cuts[0]+len(work)], work)
		}
	}
	assert.Empty(t, Cuts("Special stitch: Beginning shell = ch 3, 4 dc in same st. Ch 3 counts as dc."))
}

// A key may say in whose terms, or for what, its names are; own lines.
func TestAKeyMaySayInWhoseTerms(t *testing.T) {
	for _, line := range []string{"Stitches used in US terms: sc", "US abbreviations: sc", "Abbreviations, US terms: sc", "Abbreviations used in this pattern: sc", "Stitches needed: sc"} {
		key, _, _ := KeyOf(line)
		assert.NotEmpty(t, Keys[key], line)
	}
	key, _, _ := KeyOf("Row 1 in this colour: sc")
	assert.Empty(t, Keys[key])
}
