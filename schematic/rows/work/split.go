package work

import "strings"

// split is the division of a row: its parts, as a right-side row meets them.
type split struct {
	section string
	row     int
	parts   []splitPart
}

type splitPart struct {
	name string // in small letters
	n    int
}

// origin is the place of a section in a row that was divided: of the part that its name
// ends with, in the latest row that has one; nil if none has.
func (r *runner) origin(section string) *Origin {
	low := strings.ToLower(section)
	for k := len(r.splits) - 1; k >= 0; k-- {
		s := &r.splits[k]
		o := &Origin{Section: s.section, Row: s.row}
		for _, p := range s.parts {
			if p.name != "" && p.n > 0 && strings.HasSuffix(low, ", "+p.name) {
				o.First, o.Last = o.All+1, o.All+p.n
			}
			o.All += p.n
		}
		if o.First > 0 {
			return o
		}
	}
	return nil
}
