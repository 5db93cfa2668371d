package expr

import (
	"fmt"
	"strings"

	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Length is a line of lengths as read. Low, High and Other are in mm.
type Length struct {
	Low, High Graded
	Ranged    bool
	Unit      units.Unit // as authored
	Other     Graded     // the same in the other unit, if both were written
	OtherUnit units.Unit
	Lines     []Line // as written: one, or two if both units were
}

// ParseUnit reads a unit of length as people write it behind a number: cm, in,
// inches, ", ″, mm.
func ParseUnit(s string) (units.Unit, bool) {
	s = strings.TrimSpace(s)
	if s == "”" || s == "''" || s == "’’" {
		return units.Inch, true
	}
	return units.ParseUnit(s)
}

// ParseLength reads a line of lengths: 86 (95, 104) cm, or both units with the
// authored one first: 86 (95, 104) cm / 34 (37½, 41) in. A line without a unit is
// in the unit plain.
func ParseLength(text string, sizes Sizes, plain units.Unit) (Length, *Problem) {
	t := []rune(text)
	cut := pairSlash(t)
	if cut < 0 {
		cut = len(t)
	}
	line, unit, p := lengthLine(t[:cut], sizes, plain)
	if p != nil {
		return Length{}, p
	}
	l := Length{Low: inMM(line.Low, unit), High: inMM(line.High, unit), Ranged: line.Ranged, Unit: unit, Lines: []Line{line}}
	if cut == len(t) {
		return l, nil
	}
	other := units.Inch
	if unit == units.Inch {
		other = units.CM
	}
	line, u, p := lengthLine(t[cut+1:], sizes, other)
	if p != nil {
		return Length{}, p.shifted(cut + 1)
	}
	if u == unit {
		return Length{}, &Problem{Kind: "file/unit", Span: Span{cut, cut + 1}, Message: fmt.Sprintf("both lines are in %s", u),
			Want: "the same length in another unit after the slash, such as 86 cm / 34 in"}
	}
	l.Other, l.OtherUnit = inMM(line.Low, u), u
	l.Lines = append(l.Lines, line)
	return l, nil
}

// pairSlash is the place of the stroke between two units, or -1: a stroke that
// does not stand between two digits.
func pairSlash(t []rune) int {
	for i, r := range t {
		if r != '/' {
			continue
		}
		j := i - 1
		for j >= 0 && isSpace(t[j]) {
			j--
		}
		if j >= 0 && !isDigit(t[j]) {
			return i
		}
	}
	return -1
}

func lengthLine(t []rune, sizes Sizes, plain units.Unit) (Line, units.Unit, *Problem) {
	line, p := ParseLine(string(t), sizes)
	if p != nil {
		return line, plain, p
	}
	if line.Words == "" {
		return line, plain, nil
	}
	u, ok := ParseUnit(line.Words)
	if !ok {
		return line, plain, &Problem{Kind: "file/unit", Span: line.WordsAt, Message: fmt.Sprintf("%q is not a unit of length", finding.Clip(line.Words)),
			Want: "cm, in or mm"}
	}
	return line, u, nil
}

func inMM(g Graded, u units.Unit) Graded {
	out := Const(units.Num{}, len(g.Vals))
	for i, v := range g.Vals {
		out.Vals[i], out.Has[i] = units.Of(v, u), g.Has[i]
	}
	return out
}
