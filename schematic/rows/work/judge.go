package work

import (
	"regexp"
	"slices"
	"strings"
	"sync"

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

// resting are the findings that rest on how many stitches a row below has.
var resting = map[string]bool{"rows/over-use": true, "rows/under-use": true, "rows/repeat": true, "rows/no-space": true, "rows/no-ring": true,
	"rows/no-chain": true, "rows/stated": true, "rows/unworked": true, "rows/division": true, "rows/as-for": true, "rows/kind": true}

// Rests reports whether a kind of finding rests on how many stitches a row below has.
func Rests(kind string) bool { return resting[kind] }

// judge turns findings of which the reading is in doubt into notes.
func judge(x *ins.Text, list []*merged) {
	fits, all := map[int]bool{}, map[int]bool{} // lines
	for _, m := range list {
		if !m.counted() {
			continue
		}
		if all[m.at.Line] = true; m.why == held {
			fits[m.at.Line] = true
		}
	}
	crossed := crossedLines(x)
	often := len(all) > 3 && 4*len(all) > worked(x) || forSome(x)
	for _, m := range list {
		switch {
		case !resting[m.kind]:
		case m.why > held, m.why == held && len(fits) > mostHeld, m.counted() && (often || crossed[m.at.Line]):
			m.kind, m.sev = "rows/not-read", finding.Note
			m.msg = "not followed: " + m.msg
		}
	}
}

var some = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(?i)\bfor [\w-]{1,6} size only\b`) })

// forSome reports whether rows of a text are for some of its sizes only: then no size is sure of
// all its rows.
func forSome(x *ins.Text) bool {
	return x.Unsized || len(x.Sizes.Names) > 1 && slices.ContainsFunc(x.Src, func(l string) bool {
		return strings.Contains(strings.ToLower(l), "only") && !text.SomeSizes(l) && some().MatchString(l)
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
		places := placesOf(n)
		for i := range places {
			p := &places[i]
			if !sure[p.Kind] || p.Unit.Space || p.Unit.Group != nil || p.Unit.Stretch {
				return true
			}
		}
	}
	return false
}

func firstIn(list []ins.Item) bool {
	for _, n := range list {
		places := placesOf(n)
		for i := range places {
			p := &places[i]
			if p.Kind == ins.InFirst {
				return true
			}
		}
	}
	return false
}
