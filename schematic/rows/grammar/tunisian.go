package grammar

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

// A row of Tunisian crochet takes up a loop in each stitch on the way forth, and a return pass works them off, which makes no
// stitch. The loop that is left is the first stitch of the next row (common practice).

// tunisianWords tell that a text is of it.
var tunisianWords = text.Once(`\btunisian\b|(?:^|[^a-z])(?:tss|tks|tps)(?:2tog)?\b`)

// tunisianStitches are those that are worked on the way forth.
var tunisianStitches = set("tss tks tps trs tss2tog")

// wayForth leaves of a line the way forth and its count; nothing of one that only works the loops off.
func (r *Reader) wayForth(t []text.Token) []text.Token {
	if !r.tunisian {
		return t
	}
	t = loopsCounted(forth(t))
	at := slices.IndexFunc(t, func(k text.Token) bool {
		return k.Is("return", "retp", "rp", "reverse", "rev", "work", "working", "close")
	})
	for ; at >= 0 && at < len(t) && !worksOff(t, at); at++ {
	}
	if at < 0 || at == len(t) {
		return t
	}
	if onlyLabel(t[:at]) { // no row of its own
		return nil
	}
	out := slices.Clone(t[:at])
	for k := at + 1; k < len(t); k++ {
		if t[k].Kind == 'n' && k+1 < len(t) && t[k+1].Is("st", "sts", "stitches") { // (20 sts)
			return append(out, t[k:k+2]...)
		}
	}
	return out
}

// onlyReturns passes a line that only works the loops off; it reports false of any other.
func (r *Reader) onlyReturns(t []text.Token) bool {
	if !r.tunisian || len(t) == 0 || len(r.wayForth(t)) > 0 {
		return false
	}
	r.x.Read.Words++
	return true
}

// noRows reports whether a line holds no row: it stands above those of a pattern, or works loops off.
func (r *Reader) noRows(trimmed string, t []text.Token, n int) bool {
	if _, left := text.LeftAlone(trimmed); left && r.mode == "" && !strings.Contains(trimmed, ":") { // said beside a row
		r.x.Read.Words++
		return true
	}
	return r.aboveRows(trimmed, n) || r.onlyReturns(t)
}

// worksOff reports whether the words from i on begin a return pass: Return:, RetP., Return pass as usual, work lps off hook.
func worksOff(t []text.Token, i int) bool {
	if i > 0 && t[i-1].Kind != 'p' && t[i-1].Kind != 'n' {
		return false
	}
	next := near(t, i+1)
	if t[i].Is("work", "working", "close") {
		return slices.ContainsFunc(t[i:min(len(t), i+4)], func(k text.Token) bool { return k.Is("off") }) && slices.ContainsFunc(t[i:min(len(t), i+4)], func(k text.Token) bool { return k.Is("loops", "lps") })
	}
	return t[i].Is("return", "retp", "rp", "reverse", "rev") && (i+1 == len(t) || next.Kind == 'p' || next.Is("pass", "row", "as", "normally"))
}

// onlyLabel reports whether words only call a row: Row 1 (, B.
func onlyLabel(t []text.Token) bool {
	return !slices.ContainsFunc(t, func(k text.Token) bool {
		_, row := text.RowWord(k.S)
		return !row && k.Kind != 'n' && k.Kind != 'p' && k.Ord == 0 && len(k.S) > 1
	})
}

// forth drops words for the way forth: FwdP:, Forward pass:, (Forward).
func forth(t []text.Token) []text.Token {
	for i := range t {
		if !t[i].Is("fwdp", "forward", "fwd", "fp") {
			continue
		}
		from, to := i, i+1
		if near(t, to).Is("pass", "row") {
			to++
		}
		switch end := near(t, to); {
		case i > 0 && t[i-1].Is("(") && end.Is(")"):
			from, to = i-1, to+1
		case end.Is(":") && i > 0:
			to++
		default:
			continue
		}
		return slices.Concat(t[:from:from], t[to:])
	}
	return t
}

// loopsCounted takes loops on the hook as stitches, and a row that is told once and 'repeated in each ch' as worked there.
func loopsCounted(t []text.Token) []text.Token {
	out := make([]text.Token, 0, len(t))
	for i := 0; i < len(t); i++ {
		k := t[i]
		switch {
		case k.Is("loops", "lps") && i > 0 && t[i-1].Kind == 'n' && (near(t, i+1).Is("on") && near(t, i+2).Is("hook") || near(t, i+1).Is(")")):
			if k.S = "sts"; near(t, i+1).Is("on") {
				i += 2
			}
		case k.Is("repeat", "rep") && near(t, i+1).Is("in") && near(t, i+2).Is("each"):
			k.S = "tss"
		}
		out = append(out, k)
	}
	return out
}

// firstLoop puts the loop that is on the hook before the stitches of a row.
func (r *Reader) firstLoop(l *ins.Line) {
	if !r.tunisian || !l.IsRow() {
		return
	}
	st := firstWorked(l.Body)
	if st == nil || st.Kind == nil || !tunisianStitches[st.Kind.ID] || len(st.Places) > 0 && (st.Places[0].Kind == ins.FromHook || st.Places[0].Kind == ins.InFirst) {
		return
	}
	loop := &ins.Chain{N: ins.N(1), Count: ins.Counting{How: ins.CountsAsStitch, As: st.Kind}}
	loop.Put(st.Span())
	l.Body = append([]ins.Item{loop}, l.Body...)
}

// firstWorked is the stitch with which a row begins, nil if it begins otherwise.
func firstWorked(list []ins.Item) *ins.Stitch {
	for _, n := range list {
		switch n := n.(type) {
		case *ins.Nothing, *ins.Skip:
			continue
		case *ins.Stitch:
			return n
		case *ins.Repeat:
			return firstWorked(n.Body)
		}
		return nil
	}
	return nil
}

// takenLoops are stitches of a row that takes up a loop in each chain.
func takenLoops(m *match) any {
	if !m.p.r.tunisian {
		return nil
	}
	v := value[spots](m, "p")
	s := &ins.Stitch{Kind: counted()["tss"], N: ins.N(1), Places: v.list, Count: v.count}
	if v.list[0].Kind == ins.FromHook && s.Count.How == ins.Unsaid {
		s.Count.How = ins.CountsAsStitch
	}
	return s
}
