package work

import (
	"fmt"
	"strings"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/units"
)

// raw is one thing that does not fit, in one size.
type raw struct {
	kind string
	at   ins.Span
	sev  finding.Severity
	msg  string // with %s where the sizes' numbers stand, %h where they are hundredths
	fix  string
	a    []int  // the numbers of msg, then those of fix
	in   string // the section, if it is not the one that is worked
	gap  int    // by how many stitches it does not fit
	of   int    // of so many; 0: not told
	held bool   // the row makes what it states all the same
}

// merged is raw over several sizes.
type merged struct {
	raw
	section string
	sizes   []int
	vals    [][]int
}

// merge adds what size found in section to the list; the same thing in several
// sizes becomes one finding.
func merge(list []*merged, index map[string]*merged, section string, size int, found []raw) []*merged {
	for _, r := range found {
		section := section
		if r.in != "" {
			section = r.in
		}
		key := fmt.Sprintf("%d:%d:%s:%s", r.at.Line, r.at.Col, r.kind, r.msg)
		m := index[key]
		if m == nil {
			m = &merged{raw: r, section: section}
			index[key] = m
			list = append(list, m)
		}
		m.sizes = append(m.sizes, size)
		m.vals = append(m.vals, r.a)
	}
	return list
}

// finding is the merged thing as told.
func (m *merged) finding(x *ins.Text) finding.Finding {
	all := len(m.sizes) == len(x.Sizes.Names)
	var names []string
	if !all {
		for _, i := range m.sizes {
			names = append(names, x.Sizes.Names[i])
		}
	}
	k := 0
	fill := func(text string) string {
		parts := strings.Split(text, "%")
		out := parts[0]
		for _, part := range parts[1:] {
			if k == len(m.a) || !strings.HasPrefix(part, "s") && !strings.HasPrefix(part, "h") {
				out += "%" + part // of a name in the text
				continue
			}
			vals := make([]string, len(m.vals))
			for i := range m.vals {
				switch v := m.vals[i][k]; {
				case v == ins.None:
					vals[i] = "–"
				case part[0] == 'h':
					vals[i] = units.Decimal(units.Frac(int64(v), 100), 2)
				default:
					vals[i] = fmt.Sprint(v)
				}
			}
			k++
			out += m.line(x, vals, all) + part[1:]
		}
		return out
	}
	f := finding.Finding{Kind: m.kind, Severity: m.sev, Section: m.section, Sizes: names,
		Pos: finding.Pos{File: x.Name, Line: m.at.Line, Col: m.at.Col, EndCol: m.at.End}}
	f.Message = fill(m.msg)
	f.Fix = fill(m.fix)
	if parts := strings.SplitN(f.Message, " | ", 3); len(parts) == 3 {
		f.Message, f.Have, f.Want = parts[0], parts[1], parts[2]
	}
	return ins.Clipped(f)
}

func (m *merged) line(x *ins.Text, vals []string, all bool) string {
	if all {
		return x.Sizes.Line(vals)
	}
	same := true
	for _, v := range vals {
		same = same && v == vals[0]
	}
	if same {
		return vals[0]
	}
	return strings.Join(vals, ", ")
}

// tell notes something that does not fit. Message parts are cut at ' | ': what is
// wrong, what was found, what was expected.
func (w *work) tell(kind string, sev finding.Severity, at ins.Span, msg, fix string, a ...int) {
	if w.quiet > 0 {
		w.missed++
		return
	}
	if uses(w.found) && (kind == "rows/kind" || kind == "rows/place" || uses([]raw{{kind: kind}})) {
		return // of the same cause as what was told
	}
	w.found = append(w.found, raw{kind: kind, sev: sev, at: at, msg: msg, fix: fix, a: a})
}

// tellGap is tell with by how many of how many stitches it does not fit.
func (w *work) tellGap(gap, of int, kind string, at ins.Span, msg, fix string, a ...int) {
	k := len(w.found)
	w.tell(kind, finding.Warning, at, msg, fix, a...)
	if len(w.found) > k {
		w.found[k].gap, w.found[k].of = gap, of
	}
}
