package read

import (
	"gopkg.in/yaml.v3"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// Gauge reads a gauge as it stands in a pattern file, from elsewhere: 20 sts and
// 28 rows over 10 cm. u is the unit that governs where two are given.
func Gauge(text string, u units.Unit) (schematic.Gauge, *expr.Problem) {
	r := &reader{unit: u, lines: [][]rune{[]rune(text)}}
	n := &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: text, Line: 1, Column: 1}
	g, ok := r.gauge("gauge", n)
	if ok && !r.findings.Errors() {
		return g, nil
	}
	bad := &expr.Problem{Kind: "file/form", Span: expr.Span{End: len([]rune(text))}, Message: "this is not a gauge", Want: "such as 20 sts and 28 rows over 10 cm"}
	if len(r.findings) > 0 {
		bad.Message = r.findings[0].Message
	}
	return g, bad
}
