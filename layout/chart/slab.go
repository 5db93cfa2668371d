package chart

import "flatwright/layout/sheet"

// slab gives many short stretches out of few long ones: a chart is made of tens of thousands of strokes.
// Without one each is made for itself.
type slab[T any] struct{ free []T }

const slabSize = 512

func (s *slab[T]) take(n int) []T {
	if s == nil {
		return make([]T, n)
	}
	if n > len(s.free) {
		s.free = make([]T, max(n, slabSize))
	}
	out := s.free[:n:n]
	s.free = s.free[n:]
	return out
}

// ink is what strokes are made of.
type ink struct {
	segs   slab[sheet.Seg]
	paths  slab[sheet.Path]
	lists  slab[*sheet.Path]
	groups slab[sheet.Group]
	items  slab[sheet.Item]
}

func (k *ink) path(segs []sheet.Seg, style sheet.Style, class string) *sheet.Path {
	if k == nil {
		return &sheet.Path{Segs: segs, Style: style, Class: class}
	}
	out := &k.paths.take(1)[0]
	out.Segs, out.Style, out.Class = segs, style, class
	return out
}

func (k *ink) segments(n int) []sheet.Seg {
	if k == nil {
		return make([]sheet.Seg, n)
	}
	return k.segs.take(n)
}

// list is an empty list with room for the strokes of a usual symbol.
func (k *ink) list() []*sheet.Path {
	if k == nil {
		return nil
	}
	return k.lists.take(4)[:0]
}

// solver places points on a line, in rooms that it uses again.
type solver struct {
	pools     []pool
	c, d      []float64
	t, w      []float64
	gap, rest []float64
	x         []float64
}

// pool is points that stand as near to one another as they may.
type pool struct {
	mean, weight float64
	n            int
}

// zeros is a room of n zeros.
func zeros(room *[]float64, n int) []float64 {
	if cap(*room) < n {
		*room = make([]float64, n, 2*n)
	}
	*room = (*room)[:n]
	for i := range *room {
		(*room)[i] = 0
	}
	return *room
}
