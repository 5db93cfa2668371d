package chart

import (
	"fmt"
	"slices"
	"strings"
)

// leastPlain is how many rows worked even, one after the other, are folded away.
const leastPlain = 3

// foldPlain leaves rows worked even out of a shaped work of more than mostTall: where
// nothing is shaped nothing needs to be seen.
func (w *Work) foldPlain() *Work {
	if len(w.Rows) <= mostTall || w.edgeAt() >= 0 || formOf(w) != flat {
		return w
	}
	out := *w
	out.Rows = nil
	gap, same := 0, "" // of the next row
	var over []int     // of the row before: its places among those of the row that is kept
	for r := 0; r < len(w.Rows); {
		n := w.plainFrom(r)
		if n < leastPlain || r == 0 {
			row := w.Rows[r]
			if same != "" {
				row.Gap, row.Same = gap, same
				gap, same = 0, ""
			}
			if over != nil {
				row.St = append([]St(nil), row.St...)
				for i := range row.St {
					row.St[i].Feet = through(row.St[i].Feet, over)
				}
				over = nil
			}
			out.Rows = append(out.Rows, row)
			r++
			continue
		}
		over = w.placesOver(r, n)
		words := w.foldedWords(r, n)
		if r += n; r < len(w.Rows) {
			next := w.Rows[r]
			next.noteGap(n, words)
			gap, same = next.Gap, next.Same
		} else {
			out.More, out.Same = n, words
		}
	}
	return &out
}

// noteGap notes rows that are left out before r.
func (r *Row) noteGap(n int, words string) {
	if r.Gap += n; r.Same != "" {
		words = r.Same + "; " + words
	}
	r.Same = words
}

// plainFrom is how many rows from r on are worked even, as the one before them looks.
func (w *Work) plainFrom(r int) int {
	n := 0
	for ; r+n < len(w.Rows) && r+n > 0; n++ {
		row, below := &w.Rows[r+n], &w.Rows[r+n-1]
		if row.Gap > 0 || row.Unread+row.Amiss != "" || len(row.Missing) > 0 || !row.evenOver(below) || !w.goesOn(r+n) || w.inTurn(r+n) != w.inTurn(r) {
			break
		}
	}
	return n
}

// goesOn reports whether a row looks like the one below it, or, as in garter stitch, like the one below that.
func (w *Work) goesOn(r int) bool {
	look := w.Rows[r].look()
	return look == w.Rows[r-1].look() || r > 1 && !w.Rows[r-2].Base && look == w.Rows[r-2].look() || w.Rows[r-1].Base
}

// foldedWords tell of n rows from r on that are folded away.
func (w *Work) foldedWords(r, n int) string {
	words := fmt.Sprintf("%s: %d sts, worked even", rowsNamed(w.Rows[r:r+n]), w.Rows[r].counted())
	if w.inTurn(r) {
		words += ", in turn as the 2 before"
	}
	return words
}

// inTurn reports whether a row looks otherwise than the one below it.
func (w *Work) inTurn(r int) bool { return !w.Rows[r-1].Base && w.Rows[r].look() != w.Rows[r-1].look() }

// look is what most stitches of a row are, as the right side shows them.
func (row *Row) look() (most string) {
	many := map[string]int{}
	for i := range row.St {
		if s := &row.St[i]; s.Kind != nil && !s.Turn {
			k := s.look(row.Wrong)
			if many[k]++; many[k] > many[most] || many[k] == many[most] && k < most {
				most = k
			}
		}
	}
	return most
}

// look is a stitch as the right side shows it.
func (s *St) look(wrong bool) string {
	if _, knitted := knitStrokes[s.Kind.Key]; knitted {
		return shownKey(s.Kind, wrong) + s.Colour
	}
	return s.Kind.ID + s.Colour
}

// evenOver reports whether a row is worked even: each stitch on one of the row below, all alike
// as the right side shows them, and like those.
func (row *Row) evenOver(below *Row) bool {
	if below.Base && !below.Held || len(row.St) != len(below.St) {
		return false
	}
	seen := map[int]bool{}
	key := ""
	for i := range row.St {
		s := &row.St[i]
		if s.Kind == nil || len(s.Feet) != 1 || seen[s.Feet[0]] || s.Kind.Makes != 1 || s.Cross != nil || s.Break || s.Idle {
			return false
		}
		seen[s.Feet[0]] = true
		k := s.look(row.Wrong)
		if i > 0 && k != key && !s.Turn && !row.St[i-1].Turn {
			return false
		}
		if !s.Turn {
			key = k
		}
	}
	return true
}

// placesOver are the places of the last of n rows from r on, which are worked even, among those of
// the row before them.
func (w *Work) placesOver(r, n int) []int {
	out := make([]int, len(w.Rows[r+n-1].St))
	for i := range out {
		at := i
		for k := r + n - 1; k >= r; k-- {
			at = w.Rows[k].St[at].Feet[0]
		}
		out[i] = at
	}
	return out
}

func through(feet, over []int) []int {
	out := make([]int, len(feet))
	for i, f := range feet {
		out[i] = over[f]
	}
	return out
}

// wedge is one repeat of a work that is repeats alone, such as a hat's crown in rounds, or in rows that narrow between their edges.
// It gives nil if the work is none.
func (w *Work) wedge() (*Work, *shortText) {
	from, to := w.block()
	rounds := w.allRounds()
	if from > 0 || !rounds && !w.narrows() {
		return nil, nil
	}
	st, ok := w.strips(from, to)
	if !ok {
		return nil, nil
	}
	a, of, times, ok := st.ofRing()
	edges := 0
	one := func(place int) bool { return place >= a && place < a+of }
	if !ok && !rounds {
		if a, of, times, ok = st.ofRow(); ok {
			edges = len(w.Rows[0].St) - times*of
			one = func(place int) bool { return place < a+of || place >= a+times*of }
		}
	}
	if !ok {
		return nil, nil
	}
	all := w.spans(from, to)
	out := *w
	out.kept, out.unrolled = &Repeat{}, true
	out.Rows = make([]Row, len(w.Rows))
	var below []int
	for r := range w.Rows {
		out.Rows[r], below = keepRow(&w.Rows[r], all[r], one, below)
		if n := len(out.Rows[r].St) - edges; n <= 0 || n*times != len(w.Rows[r].St)-edges {
			return nil, nil
		}
	}
	return &out, &shortText{Times: times, Of: of, Wedge: true, Edges: edges, Rows: !rounds}
}

// narrows reports whether flat rows lose stitches, down to half of them at least, and none gains any.
func (w *Work) narrows() bool {
	for r := 1; r < len(w.Rows); r++ {
		if row := &w.Rows[r]; row.Round || row.Unread != "" || row.Edge || len(row.St) > len(w.Rows[r-1].St) {
			return false
		}
	}
	return 2*len(w.Rows[len(w.Rows)-1].St) <= len(w.Rows[0].St)
}

// mostEdge is how many stitches an edge beside repeats may have.
const mostEdge = 4

// ofRow is where the first of the repeats begins of which a row is made between its edges, of how many places it is, and how often
// it comes.
func (st *strips) ofRow() (from, of, times int, ok bool) {
	first, p, k, ok := st.repeat()
	if !ok {
		return 0, 0, 0, false
	}
	from, of = st.at[first], st.at[first+p]-st.at[first]
	right := st.at[len(st.at)-1] - from - k*of
	return from, of, k, of > 1 && from <= mostEdge && right >= 0 && right <= mostEdge
}

// ofRing is where a repeat begins that a whole round is made of, of how many places it is, and how often it comes. The first
// strip and the last may be one of them together, where the round begins within it.
func (st *strips) ofRing() (from, of, times int, ok bool) {
	all := st.at[len(st.at)-1]
	for cut := range 2 {
		n := len(st.sign) - cut
		if n < 3 {
			break
		}
		sub := strips{at: st.at[cut : n+1], sign: st.sign[cut:n]}
		first, p, k, ok := sub.repeat()
		if !ok {
			continue
		}
		of := sub.at[first+p] - sub.at[first]
		if of < 2 || all%of != 0 || all/of < 3 || (k+cut)*of != all {
			continue
		}
		return sub.at[first], of, all / of, true
	}
	return 0, 0, 0, false
}

// Parts are the charts that a work is drawn in: a hat too wide to be drawn whole in two, as far as its count stays and its crown,
// if each is one wedge of its repeats and that of the crown has fewer stitches.
func (w *Work) Parts() []*Work {
	at := w.crownAt()
	if at < 0 || w.widest() <= mostWide || !w.gridded() {
		return []*Work{w}
	}
	body, crown := *w, *w
	body.Rows, crown.Rows = w.Rows[:at:at], slices.Clone(w.Rows[at-1:])
	body.missing = nil
	base := &crown.Rows[0]
	crown.From = fmt.Sprintf("the %d stitches of %s", base.counted(), lowerFirst(base.title()))
	base.Base, base.Held, base.Gap, base.Same, base.Missing = true, true, 0, "", nil
	base.St = slices.Clone(base.St)
	for i := range base.St {
		base.St[i].Feet = nil
	}
	crown.Title = strings.TrimPrefix(w.Title+", crown", ", ")
	_, ofBody := body.foldPlain().wedge()
	_, ofCrown := crown.foldPlain().wedge()
	if ofBody == nil || ofCrown == nil {
		return []*Work{w}
	}
	if _, whole := w.foldPlain().wedge(); whole != nil && whole.Of == ofCrown.Of {
		return []*Work{w}
	}
	return []*Work{&body, &crown}
}

// crownAt is the first of the rounds at a work's end of which none has more stitches than the one before, behind rounds that
// all have as many; -1 for none.
func (w *Work) crownAt() int {
	at := -1
	for r := 1; r < len(w.Rows); r++ {
		row, n, before := &w.Rows[r], len(w.Rows[r].St), len(w.Rows[r-1].St)
		if !row.Round || row.Unread != "" || row.Edge || n > before {
			return -1
		}
		if n < before && at < 0 {
			at = r
		}
	}
	if at < 3 {
		return -1
	}
	return at
}

// allRounds reports whether every row but a foundation is a round.
func (w *Work) allRounds() bool {
	for r := range w.Rows {
		if !w.Rows[r].Round && !w.Rows[r].Base {
			return false
		}
	}
	return true
}

// keepFeet are the feet of a stitch as they are numbered in what is kept of the row below, without those that are not.
func keepFeet(feet, below []int) []int {
	var out []int
	for _, f := range feet {
		if below[f] >= 0 {
			out = append(out, below[f])
		}
	}
	return out
}

// keepRow is what stands on those places of the first row; below maps the places of
// the row below to where they are now, -1 for those that are gone.
func keepRow(row *Row, s []span, kept func(place int) bool, below []int) (Row, []int) {
	out := *row
	out.St = nil
	now := make([]int, len(row.St))
	for i := range row.St {
		if now[i] = -1; !kept(s[i].hi) {
			if row.St[i].Counts && row.St[i].Kind != nil {
				out.Left++
			}
			continue
		}
		st := row.St[i]
		if below != nil {
			st.Feet = keepFeet(st.Feet, below)
		}
		now[i] = len(out.St)
		out.St = append(out.St, st)
	}
	return out, now
}

// short is the work with what goes on alike left out, so that it finds room on a page.
func (w *Work) short() (*Work, *shortText) {
	if w.filet() != nil {
		return w, nil
	}
	w = w.foldPlain().lower(mostTall)
	if formOf(w) != flat {
		return w, nil
	}
	if w.widest() > mostWide && w.gridded() {
		if one, s := w.wedge(); one != nil {
			return one, s
		}
	}
	wide := mostWide
	if w.widest() > 2*fewPlain && w.gridded() && w.middlePlain() {
		wide = fewPlain
	}
	w, s := w.shorten(wide)
	return w.shortenEdge(mostTall), s
}

// fewPlain is how many stitches across are drawn of a shaped piece whose middle is plain.
const fewPlain = 16

// middlePlain reports whether nothing is shaped beyond the edges of any row.
func (w *Work) middlePlain() bool {
	const edge = 5
	for r := range w.Rows {
		row := &w.Rows[r]
		for i := edge; i < len(row.St)-edge; i++ {
			s := &row.St[i]
			if s.Kind == nil || s.Kind.Uses != 1 || s.Kind.Makes != 1 || s.Cross != nil || s.Colour != "" || shownKey(s.Kind, row.Wrong) != "knit" {
				return false
			}
		}
	}
	return true
}
