package rows

import "testing"

// A rib in words: knit one, purl one.
func TestARibInWordsIsRead(t *testing.T) {
	for _, w := range []string{"Work 10 rows of knit one, purl one ribbing", "Work in knit one, purl one rib for 10 rows", "Knit 10 rows of knit one, purl one rib"} {
		comesTo(t, "Cast on 46 sts.\n%s.\nNext row: K2tog, k to end. (%d sts)\n", w, 45, true)
	}
}
