package work

import (
	"regexp"
	"slices"
	"strings"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

// A pattern that someone published was made by many, and is wrong by little and seldom. What
// does not fit by far, or again and again, is more likely a form that is read otherwise than it
// is meant: it is told as not followed, and is no finding against the pattern.

// mostHeld is how many rows of a text may use other stitches than there are and still make what
// they state before their form is doubted.
const mostHeld = 2

// counted reports whether a finding is one about stitches used or made.
func (m *merged) counted() bool { return uses([]raw{m.raw}) || m.kind == "rows/stated" }

// gross reports whether it does not fit by more than half of the stitches.
func (m *merged) gross() bool { return m.of > 0 && (2*m.gap > m.of || -2*m.gap > m.of) && m.of > 4 }

// fewest is how many stitches a row below has at most for something to be missing before it:
// a ring that is begun in words of its own, stitches taken up from another piece.
const fewest = 2

// doubtful reports whether what a finding rests on is not sure by itself: a row below that is not known,
// a row that fits once and not again, or stitches that are off by half.
func (m *merged) doubtful() bool { return m.again || m.bare || m.gross() }

// judge turns findings of which the reading is in doubt into notes.
func judge(x *ins.Text, list []*merged) {
	held, all := map[int]bool{}, map[int]bool{} // lines
	for _, m := range list {
		if !m.counted() {
			continue
		}
		if all[m.at.Line] = true; m.held {
			held[m.at.Line] = true
		}
	}
	crossed := crossedLines(x)
	often := len(all) > 3 && 4*len(all) > worked(x) || forSome(x)
	for _, m := range list {
		if m.counted() && (often || m.doubtful() || m.held && len(held) > mostHeld || crossed[m.at.Line]) {
			m.kind, m.sev = "rows/not-read", finding.Note
			m.msg = "not followed: " + m.msg
		}
	}
}

var some = regexp.MustCompile(`(?i)\bfor [\w-]{1,6} size only\b`)

// forSome reports whether rows of a text are for some of its sizes only: then no size is sure of
// all its rows.
func forSome(x *ins.Text) bool {
	return len(x.Sizes.Names) > 1 && slices.ContainsFunc(x.Src, func(l string) bool {
		return strings.Contains(strings.ToLower(l), "only") && (text.SomeSizes(l) || some.MatchString(l))
	})
}

// worked is how many lines of a text are instructions that were read.
func worked(x *ins.Text) int {
	n := 0
	for _, s := range x.Sections {
		for _, l := range s.Lines {
			if len(l.Body) > 0 && len(l.Unread) == 0 {
				n++
			}
		}
	}
	return n
}

// sure are the places of which the reading is sure.
var sure = map[ins.PlaceKind]bool{ins.InNext: true, ins.InEach: true, ins.InLast: true, ins.FromHook: true, ins.InFirst: true, ins.InTop: true}

// loose reports whether a row says where in words that texts use freely: the same place, spaces,
// groups, and within a repeat the first stitch.
func loose(list []ins.Item) bool {
	for _, n := range list {
		if q, ok := n.(*ins.Repeat); ok && (loose(q.Body) || firstIn(q.Body)) {
			return true
		}
		for _, p := range placesOf(n) {
			if !sure[p.Kind] || p.Unit.Space || p.Unit.Group != nil || p.Unit.Stretch {
				return true
			}
		}
	}
	return false
}

func firstIn(list []ins.Item) bool {
	for _, n := range list {
		for _, p := range placesOf(n) {
			if p.Kind == ins.InFirst {
				return true
			}
		}
	}
	return false
}
