package place

import (
	"bytes"
	"fmt"
	"os"
	"testing"

	"flatwright/layout/sheet"
	"flatwright/render/svg"
	"flatwright/schematic"
	"flatwright/schematic/read"

	"github.com/stretchr/testify/require"
)

func TestLook(t *testing.T) {
	dir := os.Getenv("LOOK")
	if dir == "" {
		t.Skip()
	}
	for _, ex := range []string{"fellside-jumper", "pebble-hat", "saltmarsh-cardigan"} {
		src, err := os.ReadFile("../../examples/" + ex + ".yaml")
		require.NoError(t, err)
		p, fs := read.Pattern(ex, src)
		require.NotNil(t, p, "%v", fs)
		gs := schematic.WorkAll(p)
		mid := len(gs) / 2
		for name, o := range map[string]Options{
			"one": {}, "both": {Units: Both}, "all": {Labels: AllSizes}, "allboth": {Labels: AllSizes, Units: Both, Paper: Letter}, "letters": {Labels: Letters, Units: Both},
			"blank": {Labels: Blank}, "large": {Text: Large}, "inches": {Units: Inches, Orientation: Landscape}} {
			var st Stats
			o.Stats = &st
			o.Size = mid
			sheets, err := Schematic(gs, o)
			require.NoError(t, err)
			t.Logf("%s %s: %d pages %+v", ex, name, len(sheets), st)
			for i, s := range sheets {
				for _, p := range sheet.Overlaps(s, 9.7) {
					t.Errorf("%s %d: %s", name, i, p)
				}
				var b bytes.Buffer
				require.NoError(t, svg.Write(&b, s))
				require.NoError(t, os.WriteFile(fmt.Sprintf("%s/%s-%s-%d.svg", dir, ex, name, i), b.Bytes(), 0o644))
			}
		}
	}
}
