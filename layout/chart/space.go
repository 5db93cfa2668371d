package chart

// spread places n points on a line in order: it moves x as little as it can (least
// squares, each with its weight w) from the wishes t, so that each point is at least
// gap[i] behind the one before. lo and hi bound the first and the last point; hi must
// leave room for the gaps. It pools neighbours that would be too near to each other
// (pool adjacent violators), and takes time in proportion to n.
func spread(x, t, w, gap []float64, lo, hi float64) {
	type pool struct {
		mean, weight float64
		n            int
	}
	pools := make([]pool, 0, len(t))
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
