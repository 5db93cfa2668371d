package read

import (
	"slices"

	"gopkg.in/yaml.v3"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

func (r *reader) one() expr.Graded {
	g := expr.Const(units.Int(1), r.sizes.Len())
	g.Unwritten = true
	return g
}

func (r *reader) divide(c schematic.Common, m *mapped) schematic.Section {
	s := &schematic.Divide{Common: c}
	for _, n := range r.list(m.get("divide"), `"divide"`, mostParts) {
		if p, ok := r.part(n); ok {
			s.Parts = append(s.Parts, p)
		}
	}
	for i, p := range s.Parts { // a mirror has the stitches of its part, if it does not say them
		if of := slices.IndexFunc(s.Parts, func(o schematic.Part) bool { return o.Name == p.MirrorOf }); p.MirrorOf != "" && p.Stitches.Vals == nil && of >= 0 {
			s.Parts[i].Stitches = s.Parts[of].Stitches
		}
	}
	return s
}

func (r *reader) part(n *yaml.Node) (schematic.Part, bool) {
	m := r.mapping(n, partKeys)
	if m == nil {
		return schematic.Part{}, false
	}
	p := schematic.Part{Name: m.text("part"), Stitches: m.counts("stitches", stitches), Edge: m.text("edge"), Pos: r.pos(n)}
	var off []*item
	for _, k := range []string{"part", "bind off", "leave", "hold"} {
		if it := m.item(k); it != nil {
			off = append(off, it)
		}
	}
	if len(off) == 0 {
		r.fail(r.pos(n), "file/missing-key", "a part of a division needs one of: part, bind off, leave, hold").
			Fix = "write part: and its name, or leave: and a number of stitches"
		return p, true
	}
	if len(off) > 1 {
		r.fail(r.pos(off[1].at), "file/conflict", "%q and %q are two parts", off[0].key.name, off[1].key.name).
			Fix = "put a dash and a space before the second one"
	}
	lead := off[0]
	p.Pos = r.pos(lead.at)
	p.LeftEdge, p.RightEdge = r.edges(m)
	if lead.key.name != "part" {
		p.Leave, p.Hold, p.Off = lead.key.name != "hold", lead.key.name == "hold", lead.key.name == "bind off"
		p.Name, p.Stitches = m.text("name"), m.counts(lead.key.name, stitches)
		for _, k := range []string{"stitches", "sections", "mirror of", "left edge", "right edge"} {
			if it := m.item(k); it != nil {
				f := r.fail(r.pos(it.at), "file/conflict", "%q can't be said of stitches that are not worked on", k)
				f.Fix = "write part: and a name instead of " + lead.key.name
			}
		}
		return p, true
	}
	if it := m.item("name"); it != nil {
		r.fail(r.pos(it.at), "file/conflict", `"name" is for stitches left or held; a part is called by "part"`).Fix = "take it out"
	}
	if m.item("stitches") == nil && m.item("mirror of") == nil {
		r.fail(p.Pos, "file/missing-key", `the part %q needs "stitches"`, p.Name).Fix = "add a line stitches: …"
	}
	if p.MirrorOf = r.ref(m, "mirror of", toPart); p.MirrorOf != "" && m.item("sections") != nil {
		r.fail(r.pos(m.item("sections").at), "file/conflict", `"mirror of" and "sections" can't both be there`).Fix = "take one of them out"
	}
	p.Sections = r.sections(m.get("sections"), inPart)
	return p, true
}

func (r *reader) joinParts(c schematic.Common, m *mapped) schematic.Section {
	s := &schematic.JoinParts{Common: c, Name: m.text("as"), Round: m.yes("round")}
	for _, n := range r.list(m.get("join parts"), `"join parts"`, mostParts) {
		e := r.mapping(n, joinPartKeys)
		if e == nil {
			continue
		}
		j := schematic.JoinPart{Part: r.ref(e, "part", toPart), Added: e.counts("add", stitches), Edge: e.text("edge"), Pos: r.pos(n)}
		if (e.item("part") == nil) == (e.item("add") == nil) {
			r.fail(r.pos(n), "file/conflict", "an entry is either the name of a part or add: with a number of stitches")
			continue
		}
		s.Of = append(s.Of, j)
	}
	return s
}

func (r *reader) startFrom(c schematic.Common, m *mapped) schematic.Section {
	s := &schematic.Held{Common: c, Edge: m.text("edge")}
	for _, n := range r.list(m.get("start from"), `"start from"`, mostParts) {
		e := r.mapping(n, heldKeys)
		if e == nil {
			continue
		}
		h := schematic.HeldPart{Piece: r.ref(e, "piece", toPiece), Stitches: e.counts("stitches", stitches), Added: e.counts("add", stitches),
			Half: e.yes("half"), Panel: e.text("panel"), Pos: r.pos(n)}
		if (e.item("piece") == nil) == (e.item("add") == nil) {
			r.fail(r.pos(n), "file/conflict", "an entry is either piece: with a name or add: with a number of stitches")
			continue
		}
		if e.item("add") != nil {
			for _, k := range []string{"part", "stitches", "half"} {
				if it := e.item(k); it != nil {
					r.fail(r.pos(it.at), "file/conflict", "%q can't be said of stitches that are added", k)
				}
			}
		} else if pn := e.get("part"); pn != nil {
			if h.Part = e.text("part"); h.Part != "" && h.Piece != "" {
				r.lookUp(reference{to: toPart, of: h.Piece, name: h.Part, pos: r.pos(pn)})
			}
		}
		s.From = append(s.From, h)
	}
	return s
}

func (r *reader) panels(c schematic.Common, m *mapped) schematic.Section {
	s := &schematic.Panels{Common: c}
	for _, n := range r.list(m.get("panels"), `"panels"`, mostParts) {
		if e := r.mapping(n, panelKeys); e != nil {
			s.Of = append(s.Of, schematic.Panel{Name: e.text("panel"), Stitches: e.counts("stitches", stitches), Gauge: r.ref(e, "gauge", toGauge), Pos: r.pos(n)})
		}
	}
	return s
}
