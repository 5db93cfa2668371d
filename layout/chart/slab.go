package chart

import "flatwright/layout/sheet"

// slab gives many short stretches out of few long ones: a chart is made of tens of thousands of strokes.
// Without one each is made for itself.
type slab[T any] struct {
	all  []T
	used int
}

const slabSize = 512

func (s *slab[T]) take(n int) []T {
	if s == nil {
		return make([]T, n)
	}
	if s.used+n > len(s.all) {
		s.all, s.used = make([]T, max(n, slabSize)), 0
	}
	s.used += n
	return s.all[s.used-n : s.used : s.used]
}

// longer is a stretch with n more: the same, if it was given last.
func (s *slab[T]) longer(of []T, n int) []T {
	if s != nil {
		if from := s.used - len(of); len(of) > 0 && from >= 0 && s.used+n <= len(s.all) && &s.all[from] == &of[0] {
			s.used += n
			return s.all[from:s.used:s.used]
		}
	}
	out := s.take(len(of) + n)
	copy(out, of)
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

// segments is room for n more segments behind those of.
func (k *ink) segments(of []sheet.Seg, n int) []sheet.Seg {
	if k == nil {
		return append(of, make([]sheet.Seg, n)...)
	}
	return k.segs.longer(of, n)
}

// list is an empty list with room for what a symbol is mostly drawn as: one path.
func (k *ink) list() []*sheet.Path {
	if k == nil {
		return nil
	}
	return k.lists.take(1)[:0]
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
