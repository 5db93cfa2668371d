package body

import (
	"flatwright/schematic/units"
)

// Fit is an ease by name: how much larger round the bust or chest a garment is
// than the body. From and To are in mm and are negative for a garment that is
// smaller than the body. A range that is open has one end: the other is the same.
type Fit struct {
	Name     string
	From, To units.Num
}

func inches(n int64) units.Num { return units.Of(units.Int(n), units.Inch) }

// Fits are the eases that the yarn standard names, from the closest to the widest: Craft Yarn Council, Standards
// and Guidelines, 2018 edition, from memory, in inches: very close 0 or less, close 1 to 2, standard
// 2 to 4, loose 4 to 6, oversized 6 and more.
func Fits() []Fit {
	return []Fit{
		{Name: "very close"},
		{Name: "close", From: inches(1), To: inches(2)},
		{Name: "standard", From: inches(2), To: inches(4)},
		{Name: "loose", From: inches(4), To: inches(6)},
		{Name: "oversized", From: inches(6), To: inches(6)},
	}
}

// FitOf is the name of the ease (mm) between a garment and a body: the closest fit that holds it, and between two
// ranges the nearer one.
func FitOf(ease units.Num) Fit {
	fits := Fits()
	for i, f := range fits[:len(fits)-1] {
		if ease.Less(units.Max(f.To, f.To.Add(fits[i+1].From).Half())) || !f.To.Less(ease) {
			return f
		}
	}
	return fits[len(fits)-1]
}

// Middle is the middle of the ease's range; an open one is taken at its end.
func (f Fit) Middle() units.Num { return f.From.Add(f.To).Half() }
