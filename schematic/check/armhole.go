package check

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// unevenRows and unevenBy are the rows, and the mm, by which the armholes of a front and a back may differ: the shoulder seam may lie to the front
// (common practice). The figures are choices of this project.
const unevenRows, unevenBy = 2, 10

// armholes finds fronts whose armhole is not as deep as that of the back, where the two are separate pieces. Where a sleeve is sewn into both, the
// check of that seam finds it.
func armholes(p *schematic.Pattern, g *schematic.Garment) finding.List {
	back := onlyOf(p, schematic.KindBack)
	if back == nil || inJoin(g, "armhole") {
		return nil
	}
	var all finding.List
	of, has := armholeOf(g, func(m *schematic.Made) bool { return m.Name == back.Name })
	for _, m := range g.Pieces {
		v, ok := armholeOf(g, func(o *schematic.Made) bool { return o == m })
		if m.Kind != schematic.KindFront || m.Piece == nil || m.Piece.MirrorOf != "" || !ok || !has || shapedOff(g, m.Name) || shapedOff(g, back.Name) {
			continue
		}
		apart := v.Length.Sub(of.Length)
		if !units.Max(unit(p, &v).Times(unevenRows), units.Int(unevenBy)).Less(apart.Abs()) {
			continue
		}
		way := "deeper"
		if apart.Sign() < 0 {
			way = "shallower"
		}
		u := p.Units
		all = append(all, finding.Finding{Kind: "joins/armhole", Severity: finding.Note, Pos: m.Piece.Pos, Piece: m.Name, Sizes: []string{g.Size},
			Message: fmt.Sprintf("the armhole of %s is %s %s than that of %s", m.Name, long(apart.Abs(), u), way, back.Name),
			Have:    fmt.Sprintf("%s of %s, %s of %s", long(v.Length, u), m.Name, long(of.Length, u), back.Name),
			Want:    "the same depth, unless the shoulder seam lies to the front or the back", Fix: "count the rows of both armholes"})
	}
	return all
}

// armholeOf is the depth of the armhole of a piece.
func armholeOf(g *schematic.Garment, is func(*schematic.Made) bool) (schematic.Measure, bool) {
	for m, v := range g.Measured() {
		if v.Name == "armhole depth" && !v.Doubt && is(m) {
			return *v, true
		}
	}
	return schematic.Measure{}, false
}

// inJoin reports whether an edge of that name is sewn.
func inJoin(g *schematic.Garment, edge string) bool {
	named := func(ref string) bool { return strings.HasSuffix(ref, edge) }
	return slices.ContainsFunc(g.Seams, func(s schematic.Seam) bool {
		return s.Join != nil && (slices.ContainsFunc(s.Join.Sew, named) || slices.ContainsFunc(s.Join.Into, named))
	})
}
