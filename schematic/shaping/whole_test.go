package shaping

// Cap is the cap of one size alone.
func Cap(in CapIn) (CapPlan, error) {
	plans, errs := Caps([]CapIn{in})
	return plans[0], errs[0]
}

// in is how many stitches the edge moves in, in all.
func (e Edge) in() int {
	n := 0
	for _, m := range e {
		n += m.in()
	}
	return n
}

// count is how many shapings there are.
func (p Plan) count() int {
	n := 0
	for _, r := range p.Runs {
		n += r.Times
	}
	return n
}

// rows is how many rows the plan takes with those worked even at its end.
func (p Plan) rows() int {
	n := p.Rest
	for _, r := range p.Runs {
		n += r.Every * r.Times
	}
	return n
}
