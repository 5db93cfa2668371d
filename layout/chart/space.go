package chart

// spread places n points on a line in order: it moves x as little as it can (least
// squares, each with its weight w) from the wishes t, so that each point is at least
// gap[i] behind the one before. lo and hi bound the first and the last point; hi must
// leave room for the gaps. It pools neighbours that would be too near to each other
// (pool adjacent violators), and takes time in proportion to n.
func (s *solver) spread(x, t, w, gap []float64, lo, hi float64) {
	pools := s.pools[:0]
	off := 0.0
	for i := range t {
		if i > 0 {
			off += gap[i]
		}
		p := pool{t[i] - off, w[i], 1}
		for k := len(pools) - 1; k >= 0 && pools[k].mean >= p.mean; k-- {
			q := pools[k]
			sum := q.weight + p.weight
			p = pool{(q.mean*q.weight + p.mean*p.weight) / sum, sum, q.n + p.n}
			pools = pools[:k]
		}
		pools = append(pools, p)
	}
	s.pools = pools
	hi -= off
	i := 0
	off = 0
	for _, p := range pools {
		at := min(max(p.mean, lo), max(hi, lo))
		for range p.n {
			if i > 0 {
				off += gap[i]
			}
			x[i] = at + off
			i++
		}
	}
}

// springs finds the points that keep as near to their wishes t, with the weights w, as,
// with the weight stiff, to the distances rest from one to the next, and to the ends if
// there are any: least squares, by elimination from the first to the last (Thomas). x may be t.
func (s *solver) springs(x, t, w, rest []float64, stiff float64, ends *window) {
	k := len(x)
	c, d := zeros(&s.c, k), zeros(&s.d, k)
	for i := range k {
		diag, rhs := w[i]+1e-9, (w[i]+1e-9)*t[i]
		if i > 0 || ends != nil {
			diag, rhs = diag+stiff, rhs+stiff*rest[i]
		}
		if i < k-1 || ends != nil {
			diag, rhs = diag+stiff, rhs-stiff*rest[i+1]
		}
		if i == 0 && ends != nil {
			rhs += stiff * ends.lo
		}
		if i == k-1 && ends != nil {
			rhs += stiff * ends.hi
		}
		if i > 0 {
			diag -= stiff * c[i-1]
			rhs += stiff * d[i-1]
		}
		c[i], d[i] = stiff/diag, rhs/diag
	}
	for i := k - 1; i >= 0; i-- {
		if x[i] = d[i]; i < k-1 {
			x[i] += c[i] * x[i+1]
		}
	}
}
