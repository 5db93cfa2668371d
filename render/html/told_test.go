package html

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What only tells something has nothing to tick off.
func TestOnlyWhatIsDoneIsTickedOff(t *testing.T) {
	for line, tells := range map[string]bool{"Notes: The turning chain does not count as a stitch.": true, "Special stitches: Shell.": true, "Terms: UK": true,
		"Note the count, then turn: 40 sts.": false, "Row 1: Sc across.": false, "Sizes stay as they are. Row 3: Sc.": false, "Cast on 40 sts.": false} {
		assert.Equal(t, tells, told().MatchString(line), line)
	}
}
