package check

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// join holds the two sides of a seam against each other in the way in which it
// is made. Lengths agree within half a stitch or row of every edge.
func join(g *schematic.Garment, s *schematic.Seam) finding.List {
	if s.Join == nil || len(s.Sew) == 0 || len(s.Into) == 0 || s.Broken {
		return nil // an edge that is not there was found in the working
	}
	switch s.Join.How {
	case schematic.StitchToStitch:
		return counts(g, s)
	case schematic.RowsToStitches:
		return rate(g, s)
	case schematic.AtFold:
		return nil
	case schematic.InPlaces:
		return places(g, s)
	}
	return lengths(g, s)
}

// sewnTwice finds edges of which each is sewn, alone and along its whole length, to two others.
func sewnTwice(g *schematic.Garment) finding.List {
	var all finding.List
	first := map[string]string{} // what an edge is sewn to
	for i := range g.Seams {
		s := &g.Seams[i]
		if s.Join == nil || s.Broken || s.Join.How != schematic.AsLong || len(s.Sew) != 1 || len(s.Into) != 1 {
			continue
		}
		for _, way := range []struct {
			mine, other string
			edge        schematic.Edge
		}{{s.Join.Sew[0], s.Join.Into[0], s.Sew[0]}, {s.Join.Into[0], s.Join.Sew[0], s.Into[0]}} {
			edge := fmt.Sprint(strings.ToLower(way.mine), way.edge.Left, way.edge.Right)
			if first[edge] == "" {
				first[edge] = way.other
				continue
			}
			all = append(all, joined{g, s}.find("joins/twice", fmt.Sprintf("%s is sewn to %s and to %s", way.mine, first[edge], way.other),
				"two joins of one edge", "one join for each edge", "check whether left and right are swapped, or remove one of the joins")...)
		}
	}
	return all
}

func (j joined) find(kind, message, have, want, fix string) finding.List {
	return finding.List{{Kind: kind, Severity: finding.Warning, Pos: j.s.Join.Pos, Sizes: []string{j.g.Size},
		Message: message, Have: have, Want: want, Fix: fix}}
}

type joined struct {
	g *schematic.Garment
	s *schematic.Seam
}

// of is a side of a seam with how many pieces are counted, if any is made several times.
func of(name, pieces string) string {
	if pieces == "" {
		return name
	}
	return name + " (" + pieces + ")"
}

func names2(j *schematic.Join) (sew, into string) {
	return strings.Join(j.Sew, " + "), strings.Join(j.Into, " + ")
}

// counts holds a seam that is sewn stitch to stitch.
func counts(g *schematic.Garment, s *schematic.Seam) finding.List {
	if s.SewCount == s.IntoCount {
		return nil
	}
	sew, into := names2(s.Join)
	return joined{g, s}.find("joins/count",
		fmt.Sprintf("%s and %s are sewn stitch to stitch and differ in count", sew, into),
		fmt.Sprintf("%d along %s, %d along %s", s.SewCount, of(sew, s.SewOf), s.IntoCount, of(into, s.IntoOf)),
		"the same count along both", fmt.Sprintf("work %d along one of them, or say how they are eased", max(s.SewCount, s.IntoCount)))
}

// places holds the ends that are sewn on against the places that there are for them.
func places(g *schematic.Garment, s *schematic.Seam) finding.List {
	sew, into := names2(s.Join)
	if s.SewPieces == s.Join.Places {
		return nil
	}
	return joined{g, s}.find("joins/places",
		fmt.Sprintf("%s is sewn to %s in %d places, and there are %d ends", sew, into, s.Join.Places, s.SewPieces),
		fmt.Sprintf("%d ends: %s", s.SewPieces, of(sew, s.SewOf)), "a place for each end",
		fmt.Sprintf("write how: in %d places, or make more or fewer", s.SewPieces))
}

// rate holds a seam of A stitches to B rows, whichever of the two edges has the
// rows. Less than one whole repeat may be left over.
func rate(g *schematic.Garment, s *schematic.Seam) finding.List {
	a, b := s.Join.A, s.Join.B
	if a <= 0 || b <= 0 {
		return nil
	}
	ofStitches, ofRows := names2(s.Join)
	ofStitches, ofRows = of(ofStitches, s.SewOf), of(ofRows, s.IntoOf)
	sts, rows := s.SewCount, s.IntoCount
	if alongRows(s.Sew) && !alongRows(s.Into) {
		ofStitches, ofRows, sts, rows = ofRows, ofStitches, rows, sts
	}
	over := sts*b - rows*a
	if max(over, -over) < a*b {
		return nil
	}
	want := units.Frac(int64(rows)*int64(a), int64(b)).Round()
	return joined{g, s}.find("joins/rate",
		fmt.Sprintf("%s and %s do not come out at %d stitches to %d rows", ofStitches, ofRows, a, b),
		fmt.Sprintf("%d stitches along %s, %d rows along %s", sts, ofStitches, rows, ofRows),
		fmt.Sprintf("about %d stitches to %d rows", want, rows), "change one of the counts, or the rate of the seam")
}

func alongRows(edges []schematic.Edge) bool {
	n := 0
	for _, e := range edges {
		n += e.Rows - e.Stitches
	}
	return n > 0
}

// lengths holds a seam of two edges as long as each other, eased or gathered.
func lengths(g *schematic.Garment, s *schematic.Seam) finding.List {
	u := g.Pattern.Units
	sewn, into, slack := s.Lengths(g.Pattern)
	over := sewn.Sub(into)
	nameA, nameB := names2(s.Join)
	have := fmt.Sprintf("%s is %s, %s is %s", of(nameA, s.SewOf), long(sewn, u), of(nameB, s.IntoOf), long(into, u))
	tolerance := fmt.Sprintf(", give or take %s: half a stitch or row of each edge", long(slack, u))
	j := joined{g, s}
	switch s.Join.How {
	case schematic.Gathered:
		if into.Sub(slack).Less(sewn) {
			return nil
		}
		return j.find("joins/gather", fmt.Sprintf("%s is gathered onto %s and must be longer", nameA, nameB), have,
			nameA+" longer than "+nameB, "widen it, or sew it without gathers")
	case schematic.Eased:
		ease, _ := s.Join.Ease.At(g.Index)
		if !slack.Less(over.Sub(ease).Abs()) {
			return nil
		}
		fix := fmt.Sprintf("state an ease of %s, or change a count", long(over, u))
		switch {
		case !slack.Less(over.Abs()):
			fix = "write `how: as long`, or change a count"
		case over.Sign() < 0:
			fix = fmt.Sprintf("lengthen %s by %s: the edge that is eased in must be the longer one", nameA, long(ease.Sub(over), u))
		}
		return j.find("joins/ease", fmt.Sprintf("%s is not %s longer than %s, as its ease says", nameA, long(ease, u), nameB), have,
			fmt.Sprintf("%s longer by %s%s", nameA, long(ease, u), tolerance), fix)
	}
	if !slack.Less(over.Abs()) || alongRows(s.Sew) && alongRows(s.Into) && slices.ContainsFunc(slices.Concat(s.Join.Sew, s.Join.Into), func(edge string) bool {
		m, _ := g.EdgesOf(edge)
		return m != nil && shapedOff(g, m.Name)
	}) {
		return nil // its rows are a finding already
	}
	shorter := nameB
	if over.Sign() < 0 {
		shorter = nameA
	}
	return j.find("joins/length", fmt.Sprintf("%s and %s are sewn together and differ in length", nameA, nameB), have,
		"the same length"+tolerance,
		fmt.Sprintf("lengthen %s by %s, or say how the seam is made (`eased by`, `gathered`)", shorter, long(over.Abs(), u)))
}
