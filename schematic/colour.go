package schematic

import (
	"fmt"
	"math"
)

// String is the colour as #26323f.
func (c Colour) String() string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// Contrast is the ratio of two colours' brightness, from 1 to 21 (WCAG 2.2, 'contrast ratio').
func (c Colour) Contrast(o Colour) float64 {
	a, b := c.luminance(), o.luminance()
	return (max(a, b) + 0.05) / (min(a, b) + 0.05)
}

// luminance is relative luminance as WCAG 2.2 defines it, for sRGB.
func (c Colour) luminance() float64 {
	part := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*part(c.R) + 0.7152*part(c.G) + 0.0722*part(c.B)
}

// Darker is the lightest colour of the same hue, no lighter than c, that has a contrast of at
// least least with every ground; false if black has not.
func (c Colour) Darker(least float64, grounds ...Colour) (Colour, bool) {
	for k := 255; k >= 0; k-- {
		shade := func(v uint8) uint8 { return uint8(int(v) * k / 255) }
		dark, good := Colour{shade(c.R), shade(c.G), shade(c.B), true}, true
		for _, g := range grounds {
			good = good && dark.Contrast(g) >= least
		}
		if good {
			return dark, true
		}
	}
	return Colour{}, false
}
