package rows

import (
	"fmt"
	"strings"

	"flatwright/schematic/finding"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/units"
)

// What a text writes for a length in both units: 6½ in (16.5 cm); 32 (34, 36) ins [81 (86, 91) cm]; 10 cm/4"
const (
	oneLength   = `(?:\d+(?:\.\d+)?(?: ?[¼½¾⅓⅔⅛⅜⅝⅞]|[ -]\d/\d)?|[¼½¾⅓⅔⅛⅜⅝⅞]|\d/\d)`
	someLengths = oneLength + `(?:,? ?[(\[]` + oneLength + `(?:[,;:]? ?` + oneLength + `)*[)\]])*`
	inches      = `(?: ?-?(?:inches|inch|ins|in)\b\.?| ?["”″])`
	centimetres = `(?: ?-?(?:cms|cm|centimet(?:re|er)s?)\b\.?)`
	alsoWritten = ` ?(?:[/(\[{=,]|or) ?`
	bothWays    = `(?: [a-z]{3,9})?\.? ?(?:[x×*+,]|by|and)(?: [a-z]{3,9})? ?` // 28 cm x 10 cm: its width and its height
)

// lengthsIn are lengths in a unit, or those of a thing both ways.
func lengthsIn(unit string) string {
	return `(` + someLengths + `(?:` + unit + `?` + bothWays + someLengths + `){0,3})` + unit
}

var (
	inchesFirst      = text.Once(`(?i)(?:^|[^\w.,/–-])` + lengthsIn(inches) + alsoWritten + lengthsIn(centimetres))
	centimetresFirst = text.Once(`(?i)(?:^|[^\w.,/–-])` + lengthsIn(centimetres) + alsoWritten + lengthsIn(inches))
	lengthIn         = text.Once(oneLength)
)

// A length may be rounded to the whole centimetre or the quarter inch, either way, and an inch taken as 2.5 cm: common practice.
var (
	pairedWithin = units.Frac(15, 2) // mm
	pairedShare  = units.Frac(1, 40)
)

// bothUnits holds the lengths that the lines of a text write in centimetres and in inches against each other.
func bothUnits(x *Text, told finding.List) finding.List {
	var out finding.List
	lines := map[int]bool{}
	for i := range told {
		if told[i].Kind == "units/pair" {
			lines[told[i].Pos.Line] = true
		}
	}
	for i, line := range x.Src {
		if lines[i+1] || len(out) > mostHeld {
			continue
		}
		for _, m := range inchesFirst().FindAllStringSubmatchIndex(line, -1) {
			out = append(out, unlike(x, i+1, line, m, units.Inch, units.CM)...)
		}
		for _, m := range centimetresFirst().FindAllStringSubmatchIndex(line, -1) {
			out = append(out, unlike(x, i+1, line, m, units.CM, units.Inch)...)
		}
	}
	return out
}

// unlike tells in which sizes the two lengths of a match are not the same.
func unlike(x *Text, n int, line string, m []int, first, second units.Unit) finding.List {
	as, bs := lengthIn().FindAllString(line[m[2]:m[3]], -1), lengthIn().FindAllString(line[m[4]:m[5]], -1)
	if len(as) != len(bs) {
		return nil
	}
	var out finding.List
	for k := range as {
		a, ok := typedLength(as[k], first)
		b, ok2 := typedLength(bs[k], second)
		if !ok || !ok2 || !units.Max(pairedWithin, a.Mul(pairedShare)).Less(a.Sub(b).Abs()) {
			continue
		}
		f := finding.Finding{Kind: "units/pair", Severity: finding.Warning, Pos: finding.Pos{File: x.Name, Line: n, Col: len([]rune(line[:m[2]])) + 1},
			Message: fmt.Sprintf("%s %s and %s %s are not the same length", as[k], first, bs[k], second),
			Have:    fmt.Sprintf("%s %s is %s", as[k], first, units.Usual.With(a, second)),
			Fix:     fmt.Sprintf("write %s, or %s", units.Usual.With(a, second), units.Usual.With(b, first))}
		if len(as) == len(x.Sizes.Names) && len(as) > 1 {
			f.Sizes = []string{x.Sizes.Names[k]}
		}
		if s := x.SectionAt(n); s != nil {
			f.Section = strings.TrimSpace(s.Name)
		}
		out = append(out, f)
	}
	return out
}

// typedLength is a length as a text types it: 12-1/2.
func typedLength(s string, u units.Unit) (units.Num, bool) {
	n, ok := units.ParseNum(strings.Replace(s, "-", " ", 1))
	return units.Of(n, u), ok
}
