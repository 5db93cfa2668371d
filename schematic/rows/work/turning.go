package work

import (
	ins "flatwright/schematic/rows/instructions"
	"fmt"

	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
)

// saying is what a row says of a chain: whether it counts.
type saying struct {
	counts  ins.Counts
	before  *stitch.Stitch // the stitch that follows it
	at      ins.Span
	section *ins.Section
}

// sayings are those of all rows, by the length of the chain.
func sayings(x *ins.Text) map[int][]saying {
	out := map[int][]saying{}
	for _, s := range x.Sections {
		var turned *ins.Chain // with which the line before ended
		for _, l := range s.Lines {
			if n := standsForFirst(l.Body, turned); n != nil {
				out[n.N.All] = append(out[n.N.All], saying{ins.CountsAsStitch, firstKind(l.Body), n.At, s})
			}
			turned = turningEnd(l.Body)
			for i, item := range l.Body {
				if n, ok := item.(*ins.Chain); ok && n.Count.How != ins.Unsaid && n.N.By == nil && n.N.All > 0 {
					out[n.N.All] = append(out[n.N.All], saying{n.Count.How, firstKind(l.Body[i:]), n.At, s})
				}
			}
		}
	}
	return out
}

// standsForFirst is the chain, before a row or at its beginning, behind which the row goes on in the 2nd stitch: it stands for the
// first one. Nil: there is none.
func standsForFirst(body []ins.Item, turned *ins.Chain) *ins.Chain {
	for _, item := range body {
		switch n := item.(type) {
		case *ins.Chain:
			turned = n
		case *ins.Turn, *ins.Nothing:
		case *ins.Stitch:
			if turned == nil || turned.Count.How != ins.Unsaid || turned.N.By != nil || turned.N.All < 2 || len(n.Places) == 0 {
				return nil
			}
			if p := n.Places[0]; p.Kind != ins.InEvery || p.N.By != nil || p.N.All != 2 || p.Unit.Chain || p.Unit.Space || n.Kind == nil || n.Kind.Height < 1 {
				return nil
			}
			return turned
		default:
			return nil
		}
	}
	return nil
}

// turningEnd is the chain with which a row ends before it is turned; nil if it ends otherwise.
func turningEnd(body []ins.Item) *ins.Chain {
	for i := len(body) - 1; i >= 0; i-- {
		switch n := body[i].(type) {
		case *ins.Chain:
			return n
		case *ins.Turn, *ins.Nothing:
		default:
			return nil
		}
	}
	return nil
}

// firstKind is the kind of the first stitch of a row behind its chain; nil if it has none.
func firstKind(body []ins.Item) *stitch.Stitch {
	for _, n := range body {
		if st, ok := n.(*ins.Stitch); ok {
			return st.Kind
		}
	}
	return nil
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
				x.ByRow = map[int]int{}
			}
			x.ByRow[n] = list[0].at.Line
		}
	}
}

// turningUnlike tells a chain that counts as a stitch in one row and not in another of
// the same piece before the same stitch, or otherwise than the notes say. Pieces may differ, as long as each
// says so.
func turningUnlike(x *ins.Text) finding.List {
	var out finding.List
	words := map[ins.Counts]string{ins.CountsNot: "does not count as a stitch", ins.CountsAsStitch: "counts as a stitch"}
	for n, list := range sayings(x) {
		first := map[*ins.Section]saying{}
		for _, s := range list {
			where := ""
			noted, ok := x.Turning[n]
			if prev, there := first[s.section]; there && prev.counts != s.counts && prev.before == s.before {
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
