package work

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// follower follows a text in one size: the counts that it comes to, under the piece or part of the pattern that is told.
type follower struct {
	r      *runner
	owners map[*ins.Section][]string
	out    map[string][]plateau
	log    map[*piece][]entry
	keys   []string // what is told now
	rows   int      // done since the count that was known last
	lost   bool     // since then something was not followed
	anew   bool     // rows are counted from here on: along an edge
	parted bool     // the row of the piece was divided
	halves bool     // two halves are worked at once

	lengths []raw
}

// entry is what one line of a text, or one stretch of rows of it, comes to.
type entry struct {
	plateau
	line int // number of the line in its section
	no   int // number of the row in its section; -1: not known
}

// likeness is up to where a piece is worked as others were.
type likeness struct {
	pieces []*piece // none: that is not known
	lines  int      // of the last of them so many lines; -1: all
	row    int      // or up to that row; -1: all
	count  int      // or up to so many stitches; 0: all
}

// textPlateaus works the text in one size and gives the counts of each piece and part, by its name.
func textPlateaus(x *ins.Text, size int, owners map[*ins.Section][]string) (map[string][]plateau, []raw) {
	t := &follower{r: newRunner(x, size), owners: owners, out: map[string][]plateau{}, log: map[*piece][]entry{}}
	for _, s := range x.Sections {
		if keys, told := owners[s]; told {
			t.keys = keys
			t.parted = t.parted && strings.Contains(keys[0], ", ")
		}
		if len(s.Lines) > 0 && !s.Prose {
			t.section(s)
		}
	}
	return t.out, t.lengths
}

func (t *follower) section(s *ins.Section) {
	t.r.begin(s)
	t.rows, t.lost, t.anew = 0, false, false
	for i, l := range s.Lines {
		t.line(l, i)
	}
	for _, f := range t.r.all {
		if f.kind == "rows/length" {
			t.lengths = append(t.lengths, f)
		}
	}
	t.r.end()
	if t.lost { // complete to match the first side
		t.put(entry{plateau: plateau{count: ins.None, said: ins.None, skips: true}, line: len(s.Lines), no: -1})
	}
}

func (t *follower) put(e entry) {
	if t.halves {
		e.both, e.count = true, e.count/2
		if e.said > 0 {
			e.said /= 2
		}
	}
	t.log[t.r.cur] = append(t.log[t.r.cur], e)
	for _, key := range t.keys {
		t.out[key] = join(t.out[key], e.plateau)
	}
}

// stand is how the work stands before a line.
type stand struct {
	fab                        *fabric
	count                      int // of stitches; -1: not known
	rows, told, waiting, split int
}

func (r *runner) stand() stand {
	s := stand{fab: r.fab, count: ins.None, rows: len(r.cur.rows), told: len(r.all) + len(r.found), waiting: len(r.lefts), split: len(r.splits)}
	if r.fab != nil && r.known() {
		s.count = r.fab.stitches()
	}
	return s
}

// line works a line, and notes what each stretch of its rows comes to.
func (t *follower) line(l *ins.Line, line int) {
	r := t.r
	was := r.stand()
	first, open, length := unmeasured(l)
	if first && was.fab != nil && r.known() {
		t.put(entry{t.grown(plateau{count: r.fab.stitches(), said: ins.None, at: l.At, gaps: 1}, length), line, -1})
	}
	turns := slices.ContainsFunc(l.Body, is[*ins.Edge])
	if turns || was.fab != nil && alongRows(l.Body) {
		t.anew, t.rows = true, 0
	}
	r.line(l)
	t.alike(l)
	if turns && len(r.cur.rows) == was.rows { // what follows begins along the edge
		return
	}
	p := plateau{at: l.At, said: ins.None, doubt: l.Short || doubtedSince(r, was.told), begins: t.parts(l, line, was)}
	p.starts(l, t.halves)
	t.doubts(p.doubt) // a row that does not add up may belong to the count before it
	t.goesOn(l, line, was)
	unread := len(l.Unread) > 0 || l.Short || l.Chart
	t.lost = t.lost || unread
	for _, d := range r.cur.rows[was.rows:] {
		if t.rows += d.count; d.after != nil && d.sure && !unread {
			p.count = d.after.stitches()
			t.put(entry{t.grown(p, nil), line, r.no})
			p.begins = false
		}
	}
	if r.fab == nil || !r.known() {
		t.doubts(p.doubt)
		return
	}
	p.count, p.said = r.fab.stitches(), t.said(l)
	if open && !first {
		p.gaps = 1
	} else {
		length = nil
	}
	t.put(entry{t.grown(p, length), line, r.no})
}

// goesOn puts the stitches on the needle where the rows of a piece go on from those of another.
func (t *follower) goesOn(l *ins.Line, line int, was stand) {
	if line > 0 || was.count < 0 || slices.ContainsFunc(l.Body, founds) || t.r.cur.anew {
		return
	}
	for _, key := range t.keys {
		if len(t.out[key]) == 0 {
			t.out[key] = []plateau{{count: was.count, said: ins.None, at: l.At, within: within{1, 1}}}
		}
	}
}

// parts notes whether the row is divided by now, and into two halves that are worked at once; it reports whether a part begins.
func (t *follower) parts(l *ins.Line, line int, was stand) bool {
	r := t.r
	known := was.fab != nil && r.fab != nil && r.known()
	t.parted = t.parted || len(r.lefts) > was.waiting || len(r.splits) > was.split
	if line == 0 && !t.parted && known && r.fab.stitches() == was.count {
		t.undivided()
	}
	inTwo := known && r.fab.stitches()%2 == 0 && secondBall(l.Body)
	t.halves = inTwo || t.halves && was.fab != nil && r.fab != nil
	return inTwo || slices.ContainsFunc(l.Body, takesUp) && (was.fab == nil || len(r.lefts) < was.waiting)
}

// undivided says that what is told goes on with the whole piece, though its heading is the name of a part: a hand before its thumb.
func (t *follower) undivided() {
	if len(t.keys) == 0 {
		return
	}
	if piece, part, _ := strings.Cut(t.keys[0], ", "); part != "" {
		t.keys = []string{piece}
		t.owners[t.r.section] = t.keys
	}
}

// said is the count that a line states, or what another reading of it comes to; -1 if there is none.
func (t *follower) said(l *ins.Line) int {
	r := t.r
	if k := r.said(l); k >= 0 || len(r.others) == 0 || r.others[0].fab == nil {
		return k
	}
	return r.others[0].fab.stitches()
}

// doubts says of what is told now whether something in it does not add up.
func (t *follower) doubts(doubt bool) {
	for _, key := range t.keys {
		if k := len(t.out[key]) - 1; k >= 0 {
			t.out[key][k].doubt = t.out[key][k].doubt || doubt
		}
	}
}

// grown is a plateau with the rows done since the one before, and the length to which it goes on.
func (t *follower) grown(p plateau, length *ins.Lengths) plateau {
	p.rows, p.skips, p.anew = t.rows, t.lost, t.anew
	if length != nil {
		p.lengths = []measured{{Lengths: length}}
	}
	t.rows, t.lost, t.anew = 0, false, false
	return p
}

// alike notes what another piece came to, up to where this one is worked as that.
func (t *follower) alike(l *ins.Line) {
	like := t.r.cur.like
	if t.r.cur.like = nil; like == nil {
		return
	}
	if len(like.pieces) == 0 {
		t.lost = true
		return
	}
	was := 0
	for i, p := range like.pieces {
		for _, e := range t.log[p] {
			last := i == len(like.pieces)-1
			if last && like.lines >= 0 && e.line >= like.lines {
				break
			}
			own := e
			own.at, own.like = l.At, e.at
			t.put(own)
			if last && (like.row > 0 && e.no >= like.row || like.count > 0 && e.count == like.count && was != e.count) {
				break
			}
			was = e.count
		}
	}
}

// unmeasured is the stretch of a line whose rows are not counted: whether it stands before others, whether there is one at all, and
// the length to which it goes on, if it does.
func unmeasured(l *ins.Line) (first, open bool, length *ins.Lengths) {
	rows, vague := 0, false
	for _, n := range l.Body {
		var c *ins.Course
		switch n := n.(type) {
		case *ins.Nothing, *ins.Measure:
			continue
		case *ins.Even:
			if c = &n.Course; n.Open && l.Label == nil && c.Length == nil { // what follows may say how far: cont in dc, inc 8 sts every 4th rnd 5 times
				vague = true
				continue
			}
			open = open || n.Until.Set()
		case *ins.RepeatRows:
			c = &n.Course
		case *ins.Shape:
			open = open || n.Apart != nil
		}
		if c != nil && c.Length != nil {
			open, length = true, c.Length
			first = rows == 0
			continue
		}
		rows, vague = rows+1, false
	}
	return first && rows > 0, open || vague, length
}

// alongRows reports whether a row of crochet goes along the ends of the rows before it.
func alongRows(body []ins.Item) bool {
	return slices.ContainsFunc(body, func(n ins.Item) bool {
		switch n := n.(type) {
		case *ins.PickUp:
			return n.Kind != nil && n.Kind.Craft == stitch.Crochet && !n.Held
		case *ins.Stitch:
			return intoEachRow(n)
		}
		return false
	})
}

// secondBall reports whether a knitted row is worked in two halves from here on: another ball is joined in its middle.
func secondBall(body []ins.Item) bool {
	worked, joined := false, false
	for _, n := range body {
		switch n := n.(type) {
		case *ins.JoinYarn:
			joined = worked
		case *ins.Stitch:
			if worked = n.Kind != nil && n.Kind.Craft == stitch.Knitting; worked && joined {
				return true
			}
		}
	}
	return false
}

// takesUp reports whether an instruction may take up stitches of another part.
func takesUp(n ins.Item) bool {
	return is[*ins.JoinYarn](n) || is[*ins.PickUp](n) || is[*ins.CastOn](n)
}

// doubtedSince reports whether of the findings behind the first told ones any says that a row does not add up.
func doubtedSince(r *runner, told int) bool {
	all := slices.Concat(r.all, r.found)
	return slices.ContainsFunc(all[min(told, len(all)):], func(f raw) bool {
		return slices.Contains([]string{"rows/stated", "rows/unworked", "rows/number"}, f.kind) || uses([]raw{f})
	})
}

// starts says of a plateau whether its line begins work, and how many rows fewer or more are within it there.
func (p *plateau) starts(l *ins.Line, halves bool) {
	if strings.HasPrefix(nameOf(l), "set") || nameOf(l) == "foundation" { // such a row is counted or not
		p.more = 1
	}
	for _, n := range l.Body {
		switch n := n.(type) {
		case *ins.Together:
			p.fresh, p.within = true, within{1, 1}
		case *ins.Chain:
			if l.Label == nil && slices.ContainsFunc(l.Body, is[*ins.Stitch]) {
				p.within = within{1, 1}
			}
		case *ins.PickUp:
			p.fewer = 1
			if l.Label != nil && (n.Kind == nil || n.Kind.Craft == stitch.Knitting) { // in crochet it is a row
				p.more = 1
			}
		case *ins.JoinYarn:
			p.within = within{1, 1}
		case *ins.BindEach:
			if halves { // the other is bound off a row later
				p.more = 1
			}
		}
	}
}
