package document

import (
	"strconv"

	"flatwright/schematic"
	"flatwright/schematic/yarn"
)

// reckoned is the yarn that the fabric takes, if the pattern says what a swatch or
// the sample weighs.
func reckoned(p *schematic.Pattern, gs []*schematic.Garment) []Text {
	if len(p.Weights.Swatches) == 0 && p.Weights.Sample.Sign() == 0 {
		return nil
	}
	needs, found := yarn.Reckon(gs, p.Weights)
	if found.Errors() || len(needs) != len(gs) {
		return nil
	}
	var grams, metres, yards []string
	long := true
	for _, n := range needs {
		grams = append(grams, strconv.FormatInt(n.Grams.Ceil(), 10))
		metres = append(metres, strconv.FormatInt(n.Metres.Ceil(), 10))
		yards = append(yards, strconv.FormatInt(n.Yards.Ceil(), 10))
		long = long && n.Metres.Sign() > 0
	}
	t := Text{{S: "by the area of the fabric about "}, {Counts: grams}, {S: " g"}}
	if long {
		t = append(t, Span{S: ", "}, Span{Counts: metres}, Span{S: " m, or "}, Span{Counts: yards}, Span{S: " yd"})
	}
	return []Text{t}
}
