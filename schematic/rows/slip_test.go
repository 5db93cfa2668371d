package rows

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/finding"
)

// A row that does not fit is told if a number one off, ten off or with its digits in each other's place explains it; else
// its words are told as not followed.
func TestWhatNoSlipExplainsIsToldAsNotFollowed(t *testing.T) {
	const rounds = "Terms: US\nMake a magic ring.\nRnd 1: 6 sc in ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)\nRnd 4: Sc in first st, 2 sc in next st, *sc in next 2 sts, 2 sc in next st; rep from * to last st, sc in last st. (24)\n"
	assert.Empty(t, check(rounds))
	for _, c := range []struct {
		is, not string
		told    bool
	}{
		{"(18)", "(19)", true},
		{"(24)", "(34)", true},
		{"(24)", "(42)", true},
		{"(24)", "(39)", false},
		{"next 2 sts", "next 3 sts", true},
		{"next 2 sts", "next 5 sts", false},
		{"(24)", "(24)\nRnd 5: (6 sc, inc) x 3. (21)", true}, // dec was meant
	} {
		list := check(strings.Replace(rounds, c.is, c.not, 1))
		if !assert.NotEmpty(t, list, c) {
			continue
		}
		found, unread := list.Apart()
		assert.Equal(t, c.told, len(found) > 0, "%v: %v", c, list)
		assert.Equal(t, !c.told, len(unread) > 0, "%v: %v", c, list)
	}
}

// In one size of several the words are sure, since the others fit; so are stitches over the next or all of a row.
func TestWhatTheOtherSizesBearOutIsTold(t *testing.T) {
	for _, text := range []string{
		"Terms: US\nSizes: S (M, L)\nCh 25 (33, 47).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. 24 (32, 46) sc\nRow 2: Ch 1, *sc in next 2 sts, ch 2, skip 2 sts; rep from * across, turn.\n",
		"Terms: US\nCast on 72 sts.\nRow 1: K5, (k2tog, k10) 5 times, k2tog, k5. (60 sts)\n",
		"Terms: US\nMake a magic ring.\nRnd 1: 6 sc in ring. (6)\nRnd 2: 2 sc in each st around. (20)\n",
		"Terms: UK\nCh 14.\nRow 1: Htr in 3rd ch from hook and in each ch across, turn. (12 htr)\nRow 2: Ch 2, htr in each st across, turn. (17 htr)\n", // a turning chain counts or not
	} {
		list := check(text)
		if assert.Len(t, list, 1, text) {
			assert.Equal(t, finding.Warning, list[0].Severity)
		}
	}
}
