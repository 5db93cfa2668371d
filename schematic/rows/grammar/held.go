package grammar

import (
	"slices"
	"strconv"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// heldBack are the forms of a cluster in words: the last loop of each stitch stays on the hook until one loop is drawn through all.
var heldBack = []form{
	{rule: "stitch", pattern: "{h:lastloops} [,] [$make] [{n:num}] [more] {k:kind} {p:places} [,/;/.] [{h2:lastloops}] [,/;/.] {drawnthrough}", meaning: "stitches closed together", example: "holding back on hook last loop of each dc, work 3 dc in next sp, yo and draw through all loops on hook", build: closedTogether},
	{rule: "stitch", pattern: "[$make] [{n:num}] [more] {k:kind} {p:places} [,] {h:lastloops} [,/;/.] {drawnthrough}", meaning: "stitches closed together", example: "3 tr in next sp keeping last loop of each on hook, yo and draw through all loops", build: closedTogether},
	{rule: "stitch", pattern: "[$make] {n:num} {k:kind} closed/joined together {p:places}", meaning: "stitches closed together", example: "Rnd 2: Sl st in next sp, ch 3, 2 dc closed together in same sp", build: closedTogether},
	{rule: "stitch", pattern: "[$make] cluster/cl/popcorn/puff/bobble of {n:num} {k:kind} {p:places}", meaning: "a cluster and its stitches", example: "*Ch 5, cluster of 3 dc in next sp; rep from * around", build: closedTogether},
	{rule: "stitch", pattern: "[$make] shell/fan/group/scallop/petal of {n:num} {k:kind} {p:places}", meaning: "n of a stitch in one place", example: "*Ch 2, shell of 5 dc in next sp; rep from * around", build: stitchIn},
	{rule: "stitch", pattern: "{k:kind} [(around/across | each/every $st)] [,] (increasing/inc/increase) [1/one/once] [$st] (in every/each | every/each) ([{o:ord} | other/alternate/alt] [of] $st/loop/loops)  [{e:extent}]", meaning: "an increase in every nth stitch", example: "Rnd 8: Sc around, increasing in every 4th st", build: widened},
	{rule: "neutral", pattern: "(yo | yarn/thread/wool over) [,] [and] draw/pull [up] [loop] [and] [draw/pull] [through] [{num}] $sp on hook", meaning: "yarn that is joined with its loop on the hook", example: "Rnd 2: Begin with a slipknot on hook, insert hook in any sp, yo and pull through loop on hook, 3 dc in same sp", build: func(m *match) any {
		for _, t := range m.p.t[:m.from] {
			if t.Is("slipknot", "knot") {
				return &ins.Nothing{}
			}
		}
		return nil
	}},
	{rule: "lastloops", pattern: "(holding/keeping/leaving/retaining/withholding/hold/keep/leave/retain) [back] [on hook] (last/top/final/one/1) $sp [of] [each/every/all/these/both] [{k:kind}] [$st] [back] [on hook]", meaning: "the last loop of each stays on the hook", example: "holding back last loop of each tr on hook, 2 tr in next sp, thread over and draw through all loops", build: yes},
	{rule: "drawnthrough", pattern: "[(yo | y o h | thread/yarn/wool/cotton/silk/loop over/round/around/on | draw/pull [a] loop/thread/yarn/wool/cotton) [hook]] [,] [and] [then] [(draw/pull/take/work/drawing/pulling/slip/bring/catch/close/crochet) [a/it] [loop/thread/yarn/wool/cotton] [up]] (through/off/thru/thro) [all/both] [$rem] [{num}] [of] [these/remaining] $sp [left] [on hook] [at/as] [once/one] [time] [together/tog]", meaning: "one loop through all", example: "3 dc in next sp leaving last loop of each on hook, wool over and draw through all 4 loops", build: yes},
}

// closedTogether is a cluster where the stitches stand in one place, and so many stitches together where each stands in its own.
func closedTogether(m *match) any {
	k, v, n := value[thing](m, "k").Kind, value[spots](m, "p"), m.num("n", 1)
	if k == nil || k.Craft != stitch.Crochet || k.Uses != 1 || len(v.list) != 1 || len(v.also) > 0 || n.By != nil {
		return nil
	}
	p := v.list[0]
	s := &ins.Stitch{Kind: stitch.ByID("cl").Of(n.All, k.ID), N: ins.N(1), Places: v.list}
	if over := p.N; p.Kind == ins.InNext && (over.By != nil || over.All > 1) { // 1 tr in each of next 3 sts
		if s.Kind = stitch.ByID(k.ID + strconv.Itoa(over.All) + "tog"); over.By != nil || n.All > 1 || s.Kind == nil {
			return nil
		}
	}
	m.p.r.x.Used[s.Kind.ID] = s.Kind
	return s
}

// widened is a row of one stitch with two of them in every so many stitches.
func widened(m *match) any {
	k, o := value[thing](m, "k").Kind, value[int](m, "o")
	switch {
	case m.said("other", "alternate", "alt"):
		o = 2
	case o == 0:
		o = 1
	}
	if k == nil || k.Uses != 1 || k.Makes != 1 || k.Craft != stitch.Crochet || !m.p.line.IsRow() {
		return nil
	}
	two := &ins.Stitch{Kind: k, N: ins.N(2), Places: []ins.Place{{Kind: ins.InNext, N: ins.N(1), Unit: ins.Unit{Word: "st"}}}}
	body := []ins.Item{two}
	if o > 1 {
		body = []ins.Item{&ins.Stitch{Kind: k, N: ins.N(o - 1)}, two}
	}
	return &ins.Repeat{Body: body, Until: ins.Extent{Kind: ins.ToEnd, At: m.span()}, Stop: -1, Cut: o > 1}
}

// lastOfLegs gives a cluster without a word about its stitches those of the one that was told before it: 3 tr in next loop, ... (cluster
// made), ch 3, cluster in same loop. One behind the chain that begins a row has that for one more stitch.
func (r *Reader) lastOfLegs(list []ins.Item, begins bool) {
	for i, n := range list {
		switch n := n.(type) {
		case *ins.Repeat:
			r.lastOfLegs(n.Body, false)
		case *ins.Stitch:
			k := n.Kind
			switch {
			case k == nil || !ofLegs(k):
			case stitch.ByID(k.ID) == nil:
				if begins && i > 0 && is[*ins.Chain](list[i-1]) && !slices.ContainsFunc(list[:i-1], worksOn) {
					k = k.Of(k.Legs+1, k.Base)
				}
				r.legs[k.Key] = k
			case r.legs[k.Key] != nil:
				n.Kind = r.legs[k.Key]
				r.x.Used[n.Kind.ID] = n.Kind
			}
		}
	}
}

// worksOn reports whether an instruction works more than the slip stitches that lead to where a round begins.
func worksOn(n ins.Item) bool {
	st, ok := n.(*ins.Stitch)
	return is[*ins.Repeat](n) || ok && (st.Kind == nil || st.Kind.ID != "slst")
}
