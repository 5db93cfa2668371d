package read

import (
	"gopkg.in/yaml.v3"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/yarn"
)

// weights reads what the yarn is reckoned from.
func (r *reader) weights(m *mapped) schematic.Weights {
	var w schematic.Weights
	r.named(m, "swatches", func(name string, at, v *yaml.Node) {
		if s, ok := phraseAt(r, v, quoted(name), yarn.ParseSwatch); ok {
			s.Gauge, s.Pos = name, r.pos(at)
			w.Swatches = append(w.Swatches, s)
		}
	})
	if n := m.get("sample weight"); n != nil {
		w.Sample, _ = phraseAt(r, n, quoted("sample weight"), yarn.ParseWeight)
		w.SamplePos = r.pos(n)
	}
	if n := m.get("ball"); n != nil {
		w.Ball, _ = phraseAt(r, n, quoted("ball"), yarn.ParseBall)
	}
	if n := m.get("allowance"); n != nil {
		w.Allowance, _ = phraseAt(r, n, quoted("allowance"), yarn.ParseAllowance)
	}
	return w
}

// phraseAt reads the text of a node by a grammar of its own.
func phraseAt[T any](r *reader, n *yaml.Node, what string, parse func(string) (T, *expr.Problem)) (T, bool) {
	var none T
	text, ok := r.scalar(n, what)
	if !ok {
		return none, false
	}
	v, bad := parse(text)
	if bad != nil {
		r.problem(n, bad)
		return none, false
	}
	return v, true
}
