// Package read reads a pattern file (see format.md) and says everything that is
// wrong with it at once, each with its place, what was expected and the likely
// fix. It is the only package that knows YAML. It holds a file to its form, its
// references and its bounds; whether the numbers fit each other is for those who
// work the pattern.
package read

import (
	"fmt"
	"slices"

	"gopkg.in/yaml.v3"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Pattern reads a pattern file. Name is what findings call it, src its bytes. The
// list holds all that is wrong with it, in the order of the file. If the list has
// errors the pattern must not be worked: it is nil if the file could not be read at all
// (its encoding or its syntax), and otherwise holds what could be read. Without
// errors it is whole. It never panics, and its time and memory are bounded by
// those of the file, which may have at most 1 MiB.
func Pattern(name string, src []byte) (*schematic.Pattern, finding.List) {
	r := &reader{file: name}
	root := r.parse(src)
	if root == nil {
		return nil, r.done()
	}
	p := r.pattern(root)
	r.refer(p)
	r.measure(p)
	r.effort(p)
	return p, r.done()
}

// reader reads one file.
type reader struct {
	below bool // lengths may be less than nothing

	file     string
	lines    [][]rune
	shift    map[int]int  // columns after this one stand one too far to the right, by line
	spoiled  map[int]bool // lines whose values are not what was meant, which has been told
	findings finding.List
	full     bool        // no more findings are taken
	sizesAt  finding.Pos // of the line of sizes

	sizes   expr.Sizes
	unit    units.Unit
	of      *schematic.Pattern // whose grading may be called
	ill     []string           // lines of the grading that could not be worked out
	piece   string             // where we are, for messages
	section string
	from    schematic.Direction
	count   int // sections of the piece

	refs []reference
	seen func(table, key string) // for tests: told of every key that was read
}

const (
	mostFindings = 200
	mostWords    = 400 // characters of a text in a message
)

// fail notes an error and gives it to be completed.
func (r *reader) fail(pos finding.Pos, kind, format string, args ...any) *finding.Finding {
	return r.note(finding.Error, pos, kind, format, args...)
}

func (r *reader) note(s finding.Severity, pos finding.Pos, kind, format string, args ...any) *finding.Finding {
	for i, a := range args { // a name is as long as someone writes it
		if text, ok := a.(string); ok {
			args[i] = finding.ClipTo(text, mostWords)
		}
	}
	f := finding.Finding{Kind: kind, Severity: s, Pos: pos, Piece: r.piece, Section: r.section, Message: fmt.Sprintf(format, args...)}
	if r.full || r.spoiled[pos.Line] {
		return &f
	}
	r.findings = append(r.findings, f)
	if len(r.findings) == mostFindings {
		r.full = true
	}
	return &r.findings[len(r.findings)-1]
}

func (r *reader) done() finding.List {
	r.findings.Sort()
	r.findings = slices.CompactFunc(r.findings, func(a, b finding.Finding) bool {
		return a.Pos == b.Pos && a.Kind == b.Kind && a.Message == b.Message
	})
	r.sizesOff()
	if r.full {
		r.full = false
		r.piece, r.section = "", ""
		r.fail(finding.Pos{File: r.file}, "file/many", "there are more errors than these %d", len(r.findings)).
			Fix = "fix these first, then run the command again"
	}
	return r.findings
}

// alikeOff is in how many lists the same count of numbers is no slip any more: it is the line of sizes that has one too many or too few. A choice
// of this project.
const alikeOff = 4

// sizesOff tells once of a line of sizes that no list goes by: every list with a wrong count has the same.
func (r *reader) sizesOff() {
	first, lists := finding.Finding{}, 0
	for _, f := range r.findings {
		if f.Kind != "file/list-length" {
			continue
		}
		if lists == 0 {
			first = f
		}
		if f.Message != first.Message {
			return
		}
		lists++
	}
	if lists < alikeOff {
		return
	}
	r.findings = slices.DeleteFunc(r.findings, func(f finding.Finding) bool { return f.Kind == first.Kind })
	r.piece, r.section = "", ""
	f := r.fail(r.sizesAt, first.Kind, "%d lists alike: %s", lists, first.Message)
	f.Want = first.Want
	f.Fix = fmt.Sprintf("see whether `sizes` lacks one or has one too many; otherwise correct each list, the first of them in line %d", first.Pos.Line)
	r.findings.Sort()
}

// problem notes what is wrong inside the text of a node.
func (r *reader) problem(n *yaml.Node, p *expr.Problem) {
	f := p.Finding(r.textPos(n))
	if f.Pos.Col == 0 || n.Line != f.Pos.Line || r.folded(n) {
		f.Pos = r.pos(n)
	}
	g := r.fail(f.Pos, f.Kind, "%s", f.Message)
	g.Want, g.Fix, g.Sizes = f.Want, f.Fix, f.Sizes
}
