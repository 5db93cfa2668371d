package work

import (
	ins "flatwright/schematic/rows/instructions"
	"fmt"

	"flatwright/schematic/finding"
)

// saying is what a row says of a chain: whether it counts.
type saying struct {
	counts  ins.Counts
	at      ins.Span
	section *ins.Section
}

// sayings are those of all rows, by the length of the chain.
func sayings(x *ins.Text) map[int][]saying {
	out := map[int][]saying{}
	for _, s := range x.Sections {
		for _, l := range s.Lines {
			for _, item := range l.Body {
				if n, ok := item.(*ins.Chain); ok && n.Count.How != ins.Unsaid && n.N.By == nil && n.N.All > 0 {
					out[n.N.All] = append(out[n.N.All], saying{n.Count.How, n.At, s})
				}
			}
		}
	}
	return out
}

// turningSaid takes what a chain counts as from where it stands first, for the rows that
// say nothing: unless the notes speak of that length, or pieces begin unlike each other.
func turningSaid(x *ins.Text) {
	for n, list := range sayings(x) {
		if _, ok := x.Turning[n]; ok {
			continue
		}
		one, seen := true, map[*ins.Section]bool{}
		for _, s := range list {
			one = one && (seen[s.section] || s.counts == list[0].counts)
			seen[s.section] = true
		}
		if one {
			x.Turning[n] = list[0].counts
			if x.ByRow == nil {
				x.ByRow = map[int]bool{}
			}
			x.ByRow[n] = true
		}
	}
}

// turningUnlike tells a chain that counts as a stitch in one row and not in another of
// the same piece, or otherwise than the notes say. Pieces may differ, as long as each
// says so.
func turningUnlike(x *ins.Text) finding.List {
	var out finding.List
	words := map[ins.Counts]string{ins.CountsNot: "does not count as a stitch", ins.CountsAsStitch: "counts as a stitch"}
	for n, list := range sayings(x) {
		first := map[*ins.Section]saying{}
		for _, s := range list {
			where := ""
			noted, ok := x.Turning[n]
			if prev, there := first[s.section]; there && prev.counts != s.counts {
				where = fmt.Sprintf("in line %d", prev.at.Line)
			} else if !there && ok && noted != s.counts {
				where = "by the notes"
			}
			if _, there := first[s.section]; !there {
				first[s.section] = s
			}
			if where == "" {
				continue
			}
			out = append(out, finding.Finding{Kind: "rows/turning-chain", Severity: finding.Warning, Section: s.section.Name,
				Pos:     x.Pos(s.at),
				Message: fmt.Sprintf("ch %d %s here, but %s it %s", n, words[s.counts], where, words[3-s.counts]),
				Fix:     "say the same in both, or give the chain that counts another length"})
			break // once is enough
		}
	}
	return out
}
