package grade

import (
	"flatwright/schematic/units"
)

// Fit is an ease by name: how much larger round the bust or chest a garment is
// than the body. From and To are in mm and are negative for a garment that is
// smaller than the body.
type Fit struct {
	Name     string
	From, To units.Num
	Open     bool // no upper end
}

func inches(n int64) units.Num { return units.Of(units.Int(n), units.Inch) }

// Fits are the eases that the yarn standard names. From memory of the Craft
// Yarn Council's Standards and Guidelines (fit charts), in inches: very close 0
// or less (its later edition says 2 to 4 less), close 1 to 2 (later edition: 0),
// standard, later called classic, 2 to 4, loose 4 to 6, oversized 6 and more.
func Fits() []Fit {
	return []Fit{
		{Name: "very close", From: inches(-4), To: inches(0)},
		{Name: "close", From: inches(0), To: inches(2)},
		{Name: "standard", From: inches(2), To: inches(4)},
		{Name: "loose", From: inches(4), To: inches(6)},
		{Name: "oversized", From: inches(6), Open: true},
	}
}

// FitOf is the name of the ease (mm) between a garment and a body: the first
// one that holds it. Less than four inches of negative ease is very close too.
func FitOf(ease units.Num) Fit {
	fits := Fits()
	for _, f := range fits {
		if f.Open || !f.To.Less(ease) {
			return f
		}
	}
	return fits[len(fits)-1]
}

// Middle is the middle of the ease's range; an open one is taken at its lower end.
func (f Fit) Middle() units.Num {
	if f.Open {
		return f.From
	}
	return f.From.Add(f.To).Half()
}
