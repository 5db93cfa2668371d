package place

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"flatwright/layout/sheet"

	"github.com/stretchr/testify/require"
)

func dump(s *sheet.Sheet) string {
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%gmm" height="%gmm" viewBox="0 0 %g %g"><rect width="100%%" height="100%%" fill="white"/>`, s.W, s.H, s.W, s.H)
	hex := func(k sheet.Ink) string {
		if k == sheet.None {
			return "none"
		}
		r, g, bb := k.RGB()
		return fmt.Sprintf("#%02x%02x%02x", r, g, bb)
	}
	sheet.Walk(&s.Root, func(it sheet.Item) {
		switch it := it.(type) {
		case *sheet.Path:
			d := ""
			for _, sg := range it.Segs {
				d += [...]string{"M", "L", "C", "Z"}[sg.Verb]
				for _, p := range sg.Points() {
					d += fmt.Sprintf("%g %g ", p.X, p.Y)
				}
			}
			dash := ""
			if len(it.Style.Dash) > 0 {
				dash = fmt.Sprintf(` stroke-dasharray="%s"`, strings.Trim(fmt.Sprint(it.Style.Dash), "[]"))
			}
			fmt.Fprintf(&b, `<path d="%s" fill="%s" stroke="%s" stroke-width="%g" stroke-linejoin="round" stroke-linecap="round"%s/>`, d, hex(it.Style.Fill), hex(it.Style.Stroke), it.Style.Width, dash)
		case *sheet.Text:
			fmt.Fprintf(&b, `<text x="%g" y="%g" font-size="%g" font-family="Liberation Sans" font-weight="%s" font-style="%s" text-anchor="%s" transform="rotate(%g %g %g)">%s</text>`,
				it.At.X, it.At.Y, it.Size, [...]string{"normal", "bold", "normal"}[it.Face], [...]string{"normal", "normal", "italic"}[it.Face], [...]string{"start", "middle", "end"}[it.Anchor], -it.Angle, it.At.X, it.At.Y, strings.ReplaceAll(it.S, "&", "&amp;"))
		}
	})
	return b.String() + "</svg>"
}

func TestLook(t *testing.T) {
	dir := os.Getenv("LOOK")
	if dir == "" {
		t.Skip()
	}
	for name, o := range map[string]Options{
		"one": {Size: 4}, "both": {Size: 4, Units: Both}, "all": {Size: 4, Labels: AllSizes}, "allboth": {Size: 4, Labels: AllSizes, Units: Both, Paper: Letter}, "letters": {Size: 4, Labels: Letters, Units: Both},
		"blank": {Size: 4, Labels: Blank}, "large": {Size: 4, Text: Large}, "inches": {Size: 0, Units: Inches, Orientation: Landscape}} {
		var st Stats
		o.Stats = &st
		sheets, err := Schematic(pullover(9), o)
		require.NoError(t, err)
		t.Logf("%s: %d pages %+v", name, len(sheets), st)
		for i, s := range sheets {
			for _, p := range sheet.Overlaps(s, 9) {
				t.Errorf("%s %d: %s", name, i, p)
			}
			require.NoError(t, os.WriteFile(fmt.Sprintf("%s/%s-%d.svg", dir, name, i), []byte(dump(s)), 0o644))
		}
	}
}
