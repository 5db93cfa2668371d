package read

import (
	"errors"
)

// doubled puts a copy of an entry behind it. A piece or part gets a name that nothing has.
func (e *editor) doubled(c Change) ([]byte, error) {
	if len(e.trail) == 0 {
		return nil, errors.New("the pattern can't be copied into itself")
	}
	s := e.trail[len(e.trail)-1]
	first, _, ok := e.dash(&s)
	if !ok {
		return nil, errors.New("this entry has no line of its own; copy it in the text")
	}
	lines := make([]string, 0, 8)
	for _, l := range e.r.lines[first-1 : e.lastLine()] {
		lines = append(lines, string(l))
	}
	for _, p := range e.pairsOf(s.item().val) {
		if key := spaced(p.at.Value); key != "piece" && key != "part" && key != "panel" {
			continue
		}
		from, to, ok := e.r.span(p.val)
		if !ok {
			return nil, errors.New("its name spans several lines; copy it in the text")
		}
		line := []rune(lines[p.val.Line-first])
		name := e.begins(c).name(p.val.Value)
		lines[p.val.Line-first] = string(line[:from]) + name + string(line[to:])
	}
	before := flat(e.root, e.r)
	out := e.insertLines(e.lastLine(), 0, lines...)
	if after := tokens(out); len(after) <= len(before) || !added(before, after) {
		return nil, errors.New("it can't be copied here; copy it in the text")
	}
	return out, nil
}
