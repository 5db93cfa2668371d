package schematic

import "math"

// mitring is a mitre's shaping: by stitches on every row of so many, so often.
type mitring struct{ by, every, times int }

// mitred reckons a corner anew: its stitches keep their width and its rows their height, and so many
// stitches are shaped so often that it bends by its angle, to half a stitch. Work tells where it cannot.
func (f *Fitting) mitred(s *Mitre, was mitring, half float64) mitring {
	a, b := f.Chooser.Gauge(f.Gauge)
	height, row := a.RowHeight().Times(f.step.Rows).Float(), b.RowHeight().Float()
	rate := 2 * row / b.StitchWidth().Float() * math.Tan(half) // stitches a row
	best, off := was, math.Inf(1)
	for by := 2 - was.by%2; by <= was.by+2; by += 2 {
		for every := 1; every <= 12; every++ {
			m := mitring{by, every, int(math.Round(height / row / float64(every)))}
			switch {
			case s.Increase:
			case f.step.After <= was.by: // it runs into its point
				m.times = (f.N - max(1, f.step.After)) / by
			default:
				m.times = min(m.times, (f.N-1)/by)
			}
			if m.times < 1 {
				continue
			}
			rows := float64(m.times * every)
			d := math.Abs(float64(by)/float64(every)-rate)*rows/2 + // stitches off the angle, at one arm
				math.Abs(rows*row-height)/row/8
			if by != was.by {
				d += 0.25
			}
			if d < off-1e-9 {
				best, off = m, d
			}
		}
	}
	return best
}
