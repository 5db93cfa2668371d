package sheet

// Drawn is the style as every writer draws it: lengths on the 0.01 mm grid, a
// line never thinner than that, and no dashes that a format would refuse. What
// can't be seen has no ink.
func (s Style) Drawn() Style {
	if s.Width <= 0 || s.Stroke == None {
		s.Width, s.Stroke, s.Dash = 0, None, nil
		return s
	}
	s.Width = max(Quantise(s.Width), 0.01)
	sum := 0.0
	dash := make([]float64, len(s.Dash))
	for i, d := range s.Dash {
		if d < 0 {
			sum = 0
			break
		}
		dash[i] = Quantise(d)
		sum += dash[i]
	}
	if sum == 0 {
		dash = nil
	}
	s.Dash = dash
	return s
}

// Visible reports whether the path leaves ink on the sheet, white ink too.
func (p *Path) Visible() bool {
	return len(p.Segs) > 0 && (p.Style.Fill != None || p.Style.Stroke != None && p.Style.Width > 0)
}

// Visible reports whether the text can be drawn at all.
func (t *Text) Visible() bool { return t.S != "" && t.Size > 0 && t.Ink != None }
