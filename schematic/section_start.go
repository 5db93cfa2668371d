package schematic

import (
	"fmt"
	"slices"

	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// CastOn starts a piece, or a part of none, with stitches cast on or chained.
// Chain is the number of foundation chains, if the designer wrote it.
type CastOn struct {
	Common
	Stitches expr.Graded
	Chain    expr.Graded
	Edge     string // name of the edge that it makes
}

func (s *CastOn) Traits() Traits {
	return Traits{Words: "cast on", Starts: true, Cast: s.Stitches, Chain: s.Chain, Edge: s.Edge}
}

func (s *CastOn) work(w *worker) {
	n := w.counted(s.Stitches, s.Pos, "cast on")
	g := w.gauge(orElse(s.Gauge, orElse(w.firstGauge(), w.piece.Gauge)))
	w.begin([]run{{n: n, gauge: g}}, g, orElse(s.Edge, orElse(w.piece.BeginEdge, "cast-on edge")), s.Pos)
	if ch, ok := s.Chain.At(w.i); ok && ch.Less(units.Int(int64(n))) {
		w.find("arithmetic/foundation", finding.Warning, s.Pos,
			fmt.Sprintf("a chain of %s can't carry %d stitches", ch, n), ch.String()+" chains", fmt.Sprintf("%d stitches", n),
			"chain the stitches and the turning chain on top of them")
	}
}

// firstGauge is the gauge that the rows worked at once into what is cast on say: the edge is as wide as they are.
func (w *worker) firstGauge() string {
	if e, ok := w.next.(*Even); ok {
		return e.Gauge
	}
	return ""
}

// counted is a count that must be at least 1.
func (w *worker) counted(g interface{ Int(i, otherwise int) int }, pos finding.Pos, what string) int {
	n := g.Int(w.i, 0)
	if n < 1 {
		w.find("arithmetic/impossible", finding.Error, pos, "there is nothing to "+what+" in this size",
			fmt.Sprint(n), "at least 1", "give this size a number, or say `make: none` for it")
		w.guessed, w.made.nothing = true, true
		return 1
	}
	return n
}

func orElse(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// Ring starts a piece at a centre ring with so many stitches; the piece is
// worked in the round outwards.
type Ring struct {
	Common
	Stitches expr.Graded
}

func (s *Ring) Traits() Traits {
	return Traits{Words: "ring", Starts: true, Cast: s.Stitches, Ring: true, Fewer: 1, More: 1}
}

func (s *Ring) work(w *worker) {
	g := w.gauge(orElse(s.Gauge, w.piece.Gauge))
	n := w.counted(s.Stitches, s.Pos, "work into the ring")
	w.piece.mustRound(w, s.Pos)
	w.begin([]run{{n: n, gauge: g}}, g, "centre", s.Pos)
	w.cur.round = true
	w.canvas(&w.cur.blocks[0]).free = &freeform{disc: true}
	if !g.Crochet(w.b.p.Terms) {
		w.canvas(&w.cur.blocks[0]).free.note(0, n)
		return
	}
	w.canvas(&w.cur.blocks[0]).free.note(0, 0)
	w.advance(1, nil, nil)
}

func (p *Piece) mustRound(w *worker, pos finding.Pos) {
	if !p.Round {
		w.find("arithmetic/round", finding.Warning, pos, "a centre ring is worked in the round, the piece says flat", "", "",
			"say `worked: in the round, from the centre`")
	}
}

// Sideways is a band worked sideways: Stitches are its depth, Rows run along
// the edge. It starts a piece, before a PickUp.
type Sideways struct {
	Common
	Stitches expr.Graded
	Rows     expr.Graded
	Rib      bool // hatched
	Edge     string
}

func (s *Sideways) Traits() Traits {
	return Traits{Words: "band", Starts: true, Band: s.Rows, Depth: s.Stitches, Edge: s.Edge}
}

func (s *Sideways) load(i int, _ func(Amount) int64) Load {
	return Load{Rows: int64(s.Rows.Int(i, 0))}
}

func (s *Sideways) work(w *worker) {
	g := w.gauge(orElse(s.Gauge, w.piece.Gauge))
	deep := w.counted(s.Stitches, s.Pos, "work in this band")
	rows := w.counted(s.Rows, s.Pos, "work along this band")
	w.begin([]run{{n: 0, gauge: g}}, g, "", s.Pos)
	st := w.cur
	st.band = rows
	b := &st.blocks[0]
	w.place(b)
	c := w.canvas(b)
	c.segs = c.segs[:0]
	edge := orElse(s.Edge, orElse(w.piece.BeginEdge, "hem"))
	h := g.StitchWidth().Times(deep)
	l, r := b.x, st.right(b)
	fold := st.round
	c.segs = append(c.segs,
		seg{a: pt{l, units.Num{}}, b: pt{r, units.Num{}}, name: edge, both: fold, rows: rows, pos: s.Pos},
		seg{a: pt{l, h}, b: pt{l, units.Num{}}, name: b.left, side: segLeft, fold: fold, sts: deep, pos: s.Pos, gauge: g},
		seg{a: pt{r, units.Num{}}, b: pt{r, h}, name: b.right, side: segRight, fold: fold, sts: deep, pos: s.Pos, gauge: g})
	w.levelOf(b, "", "", true, false)
	if s.Rib {
		c.ribs = append(c.ribs, area{y0: units.Num{}, y1: h, l0: l, r0: r, l1: l, r1: r, gap: g.RowHeight().Times(2)})
	}
	c.depths = append(c.depths, depth{name: bandName(s.Rib), y1: h, x: l, count: deep, of: "st", stretched: g.Stretched, gauge: g})
	a := g.RowHeight().Times(rows).Mul(h)
	w.areas[g.Name] = w.areas[g.Name].Add(a)
	st.y = h
}

func bandName(rib bool) string {
	if rib {
		return "depth of rib"
	}
	return "depth of band"
}

// PickUp picks stitches up along the long edge of the Sideways band before it.
// With Tall and Short, rows alternate and begin and end with a tall one if
// FirstTall; EndsTall is what the first and the last tall row give.
type PickUp struct {
	Common
	Pick, Of  int // Pick stitches in every Of rows (1 in each row: 1, 1)
	Short     int // stitches in each short row, if rows alternate in height
	Tall      int // stitches in each tall row
	Ends      int // stitches in the first and the last tall row
	Alternate bool
	Stitches  expr.Graded // the number stated
}

func (s *PickUp) Traits() Traits {
	t := Traits{Words: "pick up", Rates: []Rate{{s.Pick, s.Of, ""}}, Fewer: 1}
	if s.Alternate {
		t.Rates = []Rate{{s.Short, 1, "short "}, {s.Tall, 1, "tall "}}
	}
	return t
}

func (s *PickUp) work(w *worker) {
	st := w.cur
	if st.band == 0 {
		w.find("arithmetic/pick-up", finding.Error, s.Pos, "stitches are picked up along a band worked sideways, and there is none before this", "", "",
			"put `sideways: rib` (or band) before it, or say `onto` to work onto an edge of another piece")
		w.doubtful()
		if n, ok := s.Stitches.At(w.i); ok {
			w.state(int(n.Floor()))
		}
		return
	}
	n, how := s.picked(st.band)
	if want, ok := s.Stitches.At(w.i); ok {
		if !want.Eq(units.Int(int64(n))) {
			w.findCount("arithmetic/pick-up", finding.Warning, s.Pos,
				fmt.Sprintf("the pick-up gives %d stitches, not %s", n, want), how, want.String()+" stated",
				s.fixFor(st.band, int(want.Floor()), n))
		}
	}
	if want, ok := s.Stitches.At(w.i); ok && st.doubt {
		n, st.doubt = int(want.Floor()), false
	}
	if n < 1 {
		n = 1
	}
	g := w.gauge(orElse(s.Gauge, w.piece.Gauge))
	b := &st.blocks[0]
	next := *b
	next.runs = []run{{n: n, gauge: g}}
	w.restep(b, next)
	st.band, st.gauge, st.row = 0, g, 0
	st.rs = !w.piece.FirstWS
	if g.Crochet(w.b.p.Terms) {
		w.advance(1, nil, nil)
	}
}

// picked is the number of stitches along rows rows, and its arithmetic.
func (s *PickUp) picked(rows int) (int, string) {
	if !s.Alternate {
		n := Along{Rows: rows}.Pick(s.Pick, s.Of, true)
		if s.Of == 1 {
			return n, fmt.Sprintf("%d rows × %d", rows, s.Pick)
		}
		return n, fmt.Sprintf("%d rows, %d in every %d, %d rows over", rows, s.Pick, s.Of, rows%s.Of)
	}
	tall, short := (rows+1)/2, rows/2
	ends := 1
	if rows%2 == 1 && tall > 1 {
		ends = 2
	}
	n := short*s.Short + (tall-ends)*s.Tall + ends*s.Ends
	return n, fmt.Sprintf("%d short rows × %d + %d tall rows × %d + %d at an end × %d", short, s.Short, tall-ends, s.Tall, ends, s.Ends)
}

func (s *PickUp) fixFor(rows, want, n int) string {
	if s.Alternate || s.Pick == 0 {
		return fmt.Sprintf("state %d, or work another number of rows", n)
	}
	need := want * s.Of / s.Pick
	return fmt.Sprintf("state %d, or work %d rows instead of %d", n, need, rows)
}

// Held starts a piece from live or held stitches of other pieces, in the order
// in which a right-side row meets them, with stitches added or picked up between.
type Held struct {
	Common
	From []HeldPart
	Edge string // name of the edge that it makes
}

func (s *Held) Traits() Traits {
	return Traits{Words: "start", Starts: true, From: s.From, Edge: s.Edge, Fewer: 1, More: 1}
}

// Held begins from live stitches of other pieces.
func (s *Held) work(w *worker) {
	g := w.gauge(orElse(s.Gauge, w.piece.Gauge))
	var runs []run
	panels := false
	for _, p := range s.From {
		n := 0
		if p.Piece == "" {
			n = p.Added.Int(w.i, 0)
		} else {
			n = w.liveOf(p)
		}
		w.taken = append(w.taken, n)
		panels = panels || p.Panel != ""
		runs = append(runs, run{name: p.Panel, n: n, gauge: g})
	}
	// A right-side row meets them from the right.
	reverse(runs)
	if !panels {
		n := 0
		for _, r := range runs {
			n += r.n
		}
		runs = []run{{n: n, gauge: g}}
	} else {
		runs = mergePanels(runs)
	}
	total := 0
	for _, r := range runs {
		total += r.n
	}
	if total < 1 && w.guessed {
		runs = []run{{n: 1, gauge: g}}
	} else if total < 1 {
		w.guessed = true
		w.find("arithmetic/held", finding.Error, s.Pos, "there are no live stitches to start from", "", "",
			"let the other piece end with `hold: all`, or name the part whose stitches are live")
		runs = []run{{n: 1, gauge: g}}
	}
	w.begin(runs, g, orElse(w.piece.BeginEdge, "live edge"), s.Pos)
	if panels && w.lines {
		w.cutApart()
	}
}

// mergePanels lets stitches without a panel of their own (added between) join the
// panel before them in the list.
func mergePanels(runs []run) []run {
	var out []run
	carry := 0
	for _, r := range runs {
		if r.n == 0 {
			continue
		}
		switch {
		case r.name == "" && len(out) > 0:
			out[len(out)-1].n += r.n
		case r.name == "":
			carry += r.n
		default:
			r.n += carry
			carry = 0
			out = append(out, r)
		}
	}
	if len(out) == 0 && carry > 0 && len(runs) > 0 {
		return []run{{n: carry, gauge: runs[0].gauge}}
	}
	return out
}

func reverse[T any](s []T) {
	for i, j := 0, len(s)-1; i < j; i, j = i+1, j-1 {
		s[i], s[j] = s[j], s[i]
	}
}

func (w *worker) liveOf(p HeldPart) int {
	src := w.b.p.PieceNamed(p.Piece)
	if src == nil || src == w.piece {
		return 0
	}
	circle := w.b.busy[src.Name]
	m := w.b.piece(src)
	if m == nil {
		if v, ok := p.Stitches.At(w.i); ok {
			return int(v.Floor())
		}
		w.guessed = w.guessed || circle
		return 0
	}
	if m.doubts(p.Part) {
		if v, ok := p.Stitches.At(w.i); ok {
			return int(v.Floor())
		}
		w.guessed = true
	}
	n := m.LiveIn(p.Part)
	if p.Half {
		n /= 2
	}
	if want, ok := p.Stitches.At(w.i); ok && int(want.Floor()) != n {
		what := p.Piece
		if p.Part != "" {
			what += " " + p.Part
		}
		w.find("arithmetic/held", finding.Warning, p.Pos,
			fmt.Sprintf("%s has %d live stitches, not %s", what, n, want), fmt.Sprintf("%d live at the end of %s", n, what), want.String()+" stated",
			fmt.Sprintf("state %d, or end %s with %s stitches", n, what, want))
		return int(want.Floor())
	}
	return n
}

// LiveIn is how many stitches of a part are live; of no part, everything that is live, whatever it is
// called: parts, but not the panels in them.
func (m *Made) LiveIn(part string) int {
	n := m.Live[part]
	if n == 0 && part == "" {
		for _, st := range m.liveParts {
			n += st
		}
	}
	return n
}

// doubts reports whether the live stitches of a part, or of all of the piece, follow from
// an error.
func (m *Made) doubts(part string) bool {
	return m.Cut || m.doubtLive[part] || part == "" && len(m.doubtLive) > 0 || m.Broken && m.Live[part] == 0
}

// onto begins a band along edges of other pieces.
func (w *worker) onto() {
	if len(w.piece.Sections) > 0 && w.piece.Sections[0].Traits().Starts {
		return
	}
	n := 0
	var onto []Along
	g := w.gauge(w.piece.Gauge)
	if len(w.piece.Sections) > 0 {
		g = w.gauge(orElse(w.piece.Sections[0].Base().Gauge, w.piece.Gauge))
	}
	for _, e := range w.piece.Onto {
		edges := w.b.edges(e.Edge, w.piece)
		q, _ := w.b.pieceIn(e.Edge)
		broken := q != nil && w.b.made[q.Name] != nil && w.b.made[q.Name].Broken
		if len(edges) == 0 {
			if !broken {
				w.find(finding.NoEdge, finding.Error, e.Pos, fmt.Sprintf("there is no edge called %q to work onto", e.Edge), "", "",
					w.b.edgeHint(e.Edge))
			}
			w.guessed = true
			continue
		}
		w.guessed = w.guessed || broken && slices.ContainsFunc(edges, func(ed Edge) bool { return ed.Doubt })
		var along Along
		for _, ed := range edges {
			along.Rows += ed.Rows
			along.Stitches += ed.Stitches
			along.Length = along.Length.Add(ed.Length)
		}
		along.Picked = along.Pick(e.Pick, e.Of, e.Rows)
		n += along.Picked
		onto = append(onto, along)
	}
	n = max(n, 1)
	pos := w.piece.Pos
	w.section = &CastOn{Common: Common{Pos: pos}}
	w.begin([]run{{n: n, gauge: g}}, g, orElse(w.piece.BeginEdge, "picked-up edge"), pos)
	w.levelOf(&w.cur.blocks[0], "", "", true, false)
	step := Step{Section: w.section, After: n, FirstRow: 1, FirstRS: w.cur.rs, Gauge: g.Name, Onto: onto}
	if g.Crochet(w.b.p.Terms) {
		w.advance(1, nil, nil)
		step.Rows = 1
	}
	w.made.Steps = append(w.made.Steps, step)
}
