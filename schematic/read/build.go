package read

import (
	"strings"

	"gopkg.in/yaml.v3"

	"flatwright/schematic"
)

func (r *reader) pickUp(c schematic.Common, m *mapped) schematic.Section {
	s := &schematic.PickUp{Common: c, Stitches: m.counts("stitches", stitches)}
	n := m.get("pick up")
	if n == nil {
		return s
	}
	p := r.phrase(n, `"pick up"`, "1 in each row, 2 in every 3 rows, or 1 in each short row, 2 in each tall row, 1 at each end")
	if !strings.Contains(strings.ToLower(n.Value), "tall") && !strings.Contains(strings.ToLower(n.Value), "short") {
		s.Pick, s.Of, _ = p.rate()
		p.done()
		return s
	}
	s.Alternate, s.Pick, s.Of = true, 1, 1
	ends := -1
	var short, tall bool
	for !p.bad {
		k := p.whole(0, 100)
		switch {
		case p.take("in each short row", "in every short row"):
			s.Short, short = k, true
		case p.take("in each tall row", "in every tall row"):
			s.Tall, tall = k, true
		case p.take("at each end", "at both ends", "in the first and last"):
			ends = k
		default:
			p.fail()
		}
		if p.end() {
			break
		}
		p.must(",", "and")
		p.take("and")
	}
	if !p.bad && !(short && tall) {
		p.i = len(p.all)
		p.fail()
	}
	if s.Ends = ends; ends < 0 {
		s.Ends = s.Tall
	}
	return s
}

// spreadOver reads how a shaping is spread over rows, for a mapping of its keys.
func (r *reader) spreadOver(m *mapped) schematic.Shaping {
	s := schematic.Shaping{
		At: m.side(), Every: m.counts("every", every), Times: m.counts("times", times),
		On: m.onRows(), Offset: m.whole("after", rows, 0), Edge: m.text("edge"), Pos: r.pos(m.node),
	}
	for _, key := range []string{"decrease", "increase"} {
		if it := m.item(key); it != nil {
			s.Increase, s.By = key == "increase", m.counts(key, someSts)
			s.Pos = r.pos(it.at)
		}
	}
	if s.Panel = r.ref(m, "panel", toPanel); s.Panel != "" && s.At != schematic.Lines && s.At != schematic.Across {
		r.fail(r.pos(m.item("panel").at), "file/conflict", `"panel" goes with at: lines or at: across`)
	}
	if s.Every.IsZero() {
		s.Every = r.one()
	}
	if s.Times.IsZero() {
		s.Times = r.one()
	}
	for _, n := range r.list(m.get("then"), `"then"`, 100) {
		if e := r.mapping(n, spacingKeys); e != nil {
			s.Then = append(s.Then, schematic.Spacing{Every: e.counts("every", every), Times: e.counts("times", times)})
		}
	}
	if m.get("every") == nil && m.get("times") == nil && len(s.Then) > 0 {
		r.fail(r.pos(m.item("then").at), "file/missing-key", `"then" follows "every" and "times", and they are missing`)
	}
	return s
}

func (r *reader) oneShaping(c schematic.Common, m *mapped) schematic.Section {
	return &schematic.Shape{Common: c, Shapings: []schematic.Shaping{r.spreadOver(m)}, Amount: m.amount("rows")}
}

func (r *reader) shape(c schematic.Common, m *mapped) schematic.Section {
	s := &schematic.Shape{Common: c, Amount: m.amount("rows")}
	for _, n := range r.list(m.get("shape"), `"shape"`, 50) {
		e := r.mapping(n, shapingTable)
		if e == nil {
			continue
		}
		switch d, i := e.item("decrease"), e.item("increase"); {
		case d == nil && i == nil:
			r.fail(r.pos(n), "file/missing-key", `a shaping needs "decrease" or "increase"`)
		case d != nil && i != nil:
			r.fail(r.pos(i.at), "file/conflict", `"decrease" and "increase" can't both be in one shaping`).Fix = "put a dash before the second one"
		}
		s.Shapings = append(s.Shapings, r.spreadOver(e))
	}
	return s
}

// repeatRow reads 2 in 1, 1 in each of 2; also 2 together and skip 1.
func (r *reader) repeatRow(c schematic.Common, m *mapped) schematic.Section {
	s := &schematic.RepeatRow{Common: c, RestEven: m.choice("rest") == 0}
	n := m.get("repeat row")
	if n == nil {
		return s
	}
	s.Text = r.text(n, `"repeat row"`, longestName)
	p := r.phrase(n, `"repeat row"`, "steps such as 2 in 1, 1 in each of 2; also 2 together, and skip 1")
	for !p.bad {
		use, makes := p.step()
		s.Use, s.Makes = s.Use+use, s.Makes+makes
		p.take(stitchList...)
		if p.bad || p.end() {
			break
		}
		p.must(",", "and")
		p.take("and", "then")
	}
	if s.Use > mostStitches || s.Makes > mostStitches {
		r.fail(r.pos(n), "file/bounds", "this repeat has more than %d stitches", mostStitches)
	}
	return s
}

// step reads one step of a repeat, the stitches that it uses and those that it makes.
func (p *phraseOf) step() (use, makes int) {
	if p.take("skip", "miss") {
		return p.whole(1, 1000), 0
	}
	n := p.whole(1, 1000)
	switch {
	case p.take("together", "tog"):
		return n, 1
	case p.take("in each of the next", "in each of next", "in each of", "in each"):
		k := 1
		if !p.end() && p.peek() != "," {
			k = p.whole(1, 1000)
		}
		return k, n * k
	case p.take("in the next", "in next", "in"):
		p.whole(1, 1)
		return 1, n
	}
	p.fail()
	return 0, 0
}

func (r *reader) takeOff(c schematic.Common, m *mapped) schematic.Section {
	name := m.table.name
	s := &schematic.BindOff{Common: c, Leave: name == "leave", Hold: name == "hold", At: m.side(),
		Every: m.counts("every", every), Times: m.counts("times", times), Edge: m.text("edge")}
	n := m.get(name)
	switch {
	case n == nil:
	case n.Kind == yaml.ScalarNode && strings.EqualFold(strings.TrimSpace(n.Value), "all"):
		s.All = true
		for _, k := range []string{"at", "every", "times"} {
			if it := m.item(k); it != nil {
				r.fail(r.pos(it.at), "file/conflict", "%s: all takes all stitches, so it can't have %q", name, k).Fix = "take it out"
			}
		}
	default:
		s.Stitches = m.counts(name, stitches)
		if m.item("at") == nil {
			f := r.fail(c.Pos, "file/missing-key", "%q needs to say at which edge", name)
			f.Fix = "add at: left edge, right edge or both edges; or write all"
		}
	}
	if s.Times.IsZero() {
		s.Times = r.one()
	}
	if s.Every.IsZero() {
		if s.Every = r.one(); m.item("times") != nil {
			r.fail(r.pos(m.item("times").at), "file/missing-key", `"times" needs "every": every how many rows`).Fix = "add every: 2 rows"
		}
	}
	return s
}

func (r *reader) mitre(c schematic.Common, m *mapped) schematic.Section {
	s := &schematic.Mitre{Common: c, Every: m.counts("every", every), Times: m.counts("times", times)}
	if n := m.get("mitre"); n != nil {
		s.Angle = r.degrees(n)
	}
	d, i := m.item("decrease"), m.item("increase")
	switch {
	case d != nil && i != nil:
		r.fail(r.pos(i.at), "file/conflict", `"decrease" and "increase" can't both be in one mitre`)
	case d != nil:
		s.By = m.counts("decrease", stitches)
	case i != nil:
		s.Increase, s.By = true, m.counts("increase", stitches)
	default:
		r.fail(c.Pos, "file/missing-key", `a mitre needs "decrease" or "increase": stitches in a row`)
	}
	if s.Every.IsZero() {
		s.Every = r.one()
	}
	if s.Times.IsZero() {
		s.Times = r.one()
	}
	return s
}

func (r *reader) mark(c schematic.Common, m *mapped) schematic.Section {
	s := &schematic.Mark{Common: c, What: m.text("mark"), Count: m.counts("count", limit{least: 0, most: 200}), At: m.side(),
		Along: m.yes("along"), Inset: m.counts("inset", stitches), Stitch: m.counts("stitch", stitches), Line: m.yes("line")}
	either := limit{least: 0, most: mostRows, words: append(append([]string{}, rowWords...), stitchWords...)}
	s.First, s.Apart = m.counts("first", either), m.counts("apart", either)
	if s.Count.IsZero() {
		s.Count = r.one()
	}
	return s
}
