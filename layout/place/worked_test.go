package place

import (
	"testing"

	"flatwright/schematic"
	"flatwright/schematic/random"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestNothingOverlapsOnAnySheetOfWorkedPatterns(t *testing.T) {
	var sum tally
	most := 0
	rapid.Check(t, func(t *rapid.T) {
		p := random.Pattern(random.Options{}).Draw(t, "pattern")
		gs := schematic.WorkAll(p)
		o := randomOptions(t, len(gs))
		var st Stats
		o.Stats = &st
		sheets, err := Schematic(gs, o)
		sum.Lock()
		defer sum.Unlock()
		if err != nil {
			var large *TooLarge
			require.ErrorAs(t, err, &large)
			sum.large++
			return
		}
		sum.drawings++
		sum.pieces += len(gs[0].Pieces)
		most = max(most, len(gs[0].Pieces))
		sum.modes[o.Labels]++
		sum.add(st)
		holds(t, gs, o, st, sheets)
	})
	t.Logf("%d drawings of %d pieces, at most %d; %d refused as too large; one size %d, all sizes %d, letters %d, blank %d",
		sum.drawings, sum.pieces, most, sum.large, sum.modes[0], sum.modes[1], sum.modes[2], sum.modes[3])
	t.Logf("on the line %d, beside %d, next track %d, inside %d, slanted %d, fell to a letter %d, letters by choice %d; names left to the key %d; pages %d, of tables alone %d",
		sum.OnLine, sum.Beside, sum.NextTrack, sum.Inside, sum.Slanted, sum.Letter, sum.Chosen, sum.Dropped, sum.Pages, sum.Tables)
}
