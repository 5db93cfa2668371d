package work

import (
	"maps"

	ins "flatwright/schematic/rows/instructions"
)

// Where the trade's words allow several readings, each is worked, and those that fit the
// counts of their row and of the next are kept.

// key names a thing that the text leaves open: whether a chain of so many counts.
type key struct {
	chain int
	hook  bool // chains skipped from the hook
	inAll bool // a number of repeats is meant in all
	over  bool // a chain behind slip stitches stands over the next stitch
	turns bool // the last chain of a foundation is one to turn with
	both  ins.Span
	skips bool // chains that are skipped count otherwise than a row says of such chains
	leads bool // slip stitches at the beginning only lead to where the row begins
	loose bool // a kind that is named for each of them stands for all
	stays bool // the stitch that is on the needle behind stitches bound off is not told again
	made  bool // an increase of knitting is a stitch made between two, and none worked twice into
}

// picks is what one reading takes of what the text leaves open.
type picks struct {
	taken map[key]bool
	open  []key // met, and not taken yet
	asked map[key]ins.Span
}

func newPicks() *picks { return &picks{taken: map[key]bool{}, asked: map[key]ins.Span{}} }

// anew is the picks of another piece, so far as a first run settled them.
func (p *picks) anew(fixed map[key]bool) *picks {
	q := &picks{taken: map[key]bool{}, asked: p.asked}
	maps.Copy(q.taken, fixed)
	return q
}

// with is the picks with one more.
func (p *picks) with(k key, v bool) *picks {
	q := &picks{taken: maps.Clone(p.taken), asked: p.asked}
	q.taken[k] = v
	return q
}

func (p *picks) take(k key, at ins.Span, usual bool) bool {
	if v, ok := p.taken[k]; ok {
		return v
	}
	if _, ok := p.asked[k]; !ok {
		p.asked[k] = at
	}
	p.open = append(p.open, k)
	return usual
}

// chain is what a chain of k counts as in this reading.
func (p *picks) chain(k int, hook bool, at ins.Span) ins.Counts {
	if p.take(key{chain: k, hook: hook}, at, k >= 3) {
		return ins.CountsAsStitch
	}
	return ins.CountsNot
}

// inAll reports whether a number of repeats is meant in all.
func (p *picks) inAll() bool { return p.take(key{inAll: true}, ins.Span{}, false) }

// unlike reports whether the chains that a foundation's row skips, and those that begin rows before it, count otherwise than a row
// further on says of a chain as long.
func (p *picks) unlike() bool { return p.take(key{skips: true}, ins.Span{}, false) }

// raised reports whether an increase in a row of knitting is made between two stitches.
func (p *picks) raised() bool { return p != nil && p.take(key{made: true}, ins.Span{}, false) }

// stays reports whether the stitch that is on the needle behind stitches bound off is none of those told behind them.
func (p *picks) stays() bool { return p != nil && p.take(key{stays: true}, ins.Span{}, false) }

// loosely reports whether the kind that a row names for each stitch stands for those of other kinds too.
func (p *picks) loosely() bool { return p != nil && p.take(key{loose: true}, ins.Span{}, false) }

// turns reports whether a row over a foundation leaves its first chain to turn.
func (p *picks) turns() bool { return p.take(key{turns: true}, ins.Span{}, false) }

// leads reports whether slip stitches at the beginning of a row, of which usual ones do, only lead to where it begins.
func (p *picks) leads(usual bool) bool {
	return p != nil && p.take(key{leads: true}, ins.Span{}, usual)
}

// overNext reports whether a chain behind slip stitches stands over the next stitch.
func (p *picks) overNext() bool { return p.take(key{over: true}, ins.Span{}, false) }

// unusual is how unlikely a reading is, if nothing else tells them apart: a chain of 1
// counts seldom, one of 3 mostly.
func (p *picks) unusual() int {
	n := 0
	for k, v := range p.taken {
		switch {
		case v && k.seldom():
			n += 2
		case k.chain == 1 && v, k.chain >= 3 && !v:
			n += 3
		case k.chain == 2 && v:
			n++
		}
		if k.hook { // skipped chains are mostly taken like those of the next rows
			if o, ok := p.taken[key{chain: k.chain}]; ok && o != v {
				n++
			}
		}
	}
	return n
}

// seldom reports whether a reading in which it is so is the less likely one.
func (k key) seldom() bool {
	return k.inAll || k.turns || k.skips || k.made || k.stays || k.over || k.leads || k.loose || k.both.Line > 0
}

// reading is the state of the work in one way of reading the text.
type reading struct {
	fab       *fabric // the row below; nil: none
	certainty         // of its stitches
	carry     *ins.Chain
	behind    *fabric // stitches beyond the beginning of a short row
	ahead     *fabric // stitches that a short row has not come to
	pick      *picks
	cost      int   // things that do not fit
	found     []raw // these things
	res       *result
	line      *ins.Line // that was worked last
}

// mostReadings bounds the readings that are kept.
const mostReadings = 8

// prune keeps the readings that fit best, each fabric once.
func prune(list []reading) []reading {
	if len(list) == 1 {
		return list
	}
	least := list[0].cost
	for _, rd := range list {
		least = min(least, rd.cost)
	}
	var out []reading
	for _, rd := range list {
		if rd.cost > least {
			continue
		}
		at := -1
		for i := range out {
			if out[i].known() == rd.known() && same(out[i].fab, rd.fab) && same(out[i].behind, rd.behind) && same(out[i].ahead, rd.ahead) && out[i].carry == rd.carry {
				at = i
			}
		}
		switch {
		case at < 0:
			out = append(out, rd)
		case rd.rank() < out[at].rank():
			out[at] = rd
		}
	}
	for i := 1; i < len(out); i++ { // the likeliest first
		for k := i; k > 0 && out[k].rank() < out[k-1].rank(); k-- {
			out[k], out[k-1] = out[k-1], out[k]
		}
	}
	return out[:min(len(out), mostReadings)]
}

func (rd *reading) rank() int {
	n := 2 * rd.pick.unusual()
	if rd.guess {
		n++
	}
	return n
}

func same(a, b *fabric) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a == b || a.same(b)
}
