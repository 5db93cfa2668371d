package grammar

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// macros are words that many forms share.
var macros = map[string]string{
	"$in":     "in/into/on/onto/over/through/under/within/inside/around/round/across/between/at/to/behind/along",
	"$next":   "next/following/foll/succeeding",
	"$rem":    "remaining/rem/remain",
	"$sp":     "sp/sps/space/spaces/loop/loops/lp/lps/arch/arches/arc/underarm/underarms/picot/bar/bars/hole/holes",
	"$st":     "st/sts/stitch/stitches/stiches",
	"$ch":     "ch/chs/chain/chains/cn",
	"$row":    "row/rows/rnd/rnds/round/rounds/rd",
	"$beg":    "beg/beginning/start/starting/commencement",
	"$inc":    "inc/incr/increase/incs/increasing/increases/add/adding/widen/widening",
	"$dec":    "dec/decr/decrease/decs/decreasing/decreases/narrow/narrowing",
	"$tch":    "tch/turning/beg/beginning/starting/initial/first/start",
	"$limb":   "leg/arm/foot/ear/limb/tentacle/wing",
	"$spare":  "cable/spare/dpn/extra/double/dp/auxiliary/another/separate/empty/pointed",
	"$make":   "work/make/do/working/making/crochet/worked/with/complete/completing/create/put/putting/placing/insert",
	"$off":    "off/of",
	"$rep":    "rep/repeat/repeating/reps/rpt/repeated/repeats",
	"$meas":   "measures/measure/meas/measuring",
	"$ring":   "ring/circle/loop/lp",
	"$colour": "mc/cc/blue/white/black/red/green/yellow/pink/brown/grey/gray/orange/purple/cream/beige",
	"$center": "center/centre/middle/central",
	"$edge":   "edge/end/side/edges/ends/sides",
}

// chainSpace is the unit of spaces of so many chains.
func chainSpace(m *match) ins.Unit {
	return ins.Unit{Space: true, Size: m.num("n", 0), Word: "ch-sp"}
}

// unitForms are what is counted in a place.
var unitForms = []form{
	{rule: "unit", pattern: "corner ($st | {k:kind})", meaning: "the stitch at a corner", example: "Rnd 2: Ch 1, sc in each sc around, working 3 sc in each corner sc, join", when: tests{crochet, after("each", "every")}, build: func(m *match) any { return ins.Unit{Word: "corner"} }},
	{rule: "unit", pattern: "[corner/available/empty/unworked/held/skipped/sk/underlying/free/remaining/rem/missed/edge/new/slipped/marked/increase/decrease/live/center/centre/middle/heel/instep/gusset/toe/thumb/border/body/sleeve] ($st | posts)", meaning: "stitches of any kind", example: "sc in next 3 sts",
		build: func(m *match) any {
			switch {
			case m.said("held"):
				return ins.Unit{Word: "held"}
			case m.said("unworked"):
				return ins.Unit{Word: "unworked"}
			case m.said("skipped", "sk", "missed"):
				return ins.Unit{Word: "skipped"}
			}
			return ins.Unit{Word: "st"}
		}},
	{rule: "unit", pattern: "[corner/center/centre] $ch {n:size} [corner] [$sp]", meaning: "a chain space of n chains", example: "sc in next ch-2 sp", build: func(m *match) any { return chainSpace(m) }},
	{rule: "unit", pattern: "[corner] {n:sized} $ch [corner] [$sp]", meaning: "a chain space of n chains", example: "1 dc in next 2-ch sp", build: func(m *match) any { return chainSpace(m) }},
	{rule: "unit", pattern: "[corner/center/centre] [$ch] $sp", meaning: "a chain space of any size", example: "3 dc in next sp",
		build: func(m *match) any {
			if !m.p.r.crochet && m.to == m.from+1 && m.said("loop", "loops", "lp", "lps") {
				return ins.Unit{Word: "st"}
			}
			if m.said("corner") {
				return ins.Unit{Space: true, Word: "corner"}
			}
			return ins.Unit{Space: true, Word: "sp"}
		}},
	{rule: "unit", pattern: "buttonhole/buttonholes [$sp]", meaning: "the chain space of a buttonhole", example: "Row 3: Ch 1, sc in next 4 sts, ch 2, sk 2 sts, sc in next 14 sts. Row 4: Ch 1, sc in each sc and 2 sc in each buttonhole across", when: tests{crochet, after("each", "every", "next", "first", "last")}, build: func(m *match) any { return ins.Unit{Space: true, Word: "sp"} }},
	{rule: "unit", pattern: "corner/corners", meaning: "the corner, whatever is there", example: "3 sc in next corner", build: func(m *match) any { return ins.Unit{Word: "corner"} }},
	{rule: "unit", pattern: "$st [that] [were/was/you] skipped/missed", meaning: "stitches that were skipped", example: "*skip next 2 sts, FPdc in next 2 sts, FPdc in 2 sts just skipped; rep from * across", build: func(m *match) any { return ins.Unit{Word: "skipped"} }},
	{rule: "unit", pattern: "[$rem/unworked/unused/free] loop/loops/lp/lps of [the] foundation/starting/beg/beginning/base/original $ch", meaning: "single chains along their other side", example: "Sc in each rem loop of starting ch", build: func(m *match) any { return ins.Unit{Chain: true, Word: "ch"} }},
	{rule: "unit", pattern: "[foundation/starting/beg/beginning/base/underarm/free/added/remaining/rem/single/skipped] $ch [$st]", meaning: "single chains", example: "sc in next 4 ch", build: func(m *match) any { return ins.Unit{Chain: true, Word: "ch"} }},
	{rule: "unit", pattern: "[end/ends/side] [of] row/rows [end/ends]", meaning: "the ends of rows", example: "work 1 hdc in each row along edge", build: func(m *match) any { return ins.Unit{Row: true, Word: "row"} }},
	{rule: "unit", pattern: "[corner/unworked/held/skipped/sk/missed/underlying/free/remaining/rem/edge/slipped] {k:kind} [$st]", meaning: "stitches of one kind", example: "sc in each dc across",
		build: func(m *match) any {
			k := value[thing](m, "k")
			switch {
			case m.p.beginsNext(m, k):
				return nil
			case k.Call != nil:
				return ins.Unit{Group: k.Call, Word: k.Call.Name}
			case k.Inc || k.Dec || k.Kind == nil:
				return ins.Unit{Word: "st"}
			case k.Kind.ID == "ch":
				return ins.Unit{Chain: true, Word: "ch"}
			case k.Kind.ID == "picot":
				return ins.Unit{Stitch: k.Kind, Word: "picot"}
			case m.said("skipped", "sk", "missed"):
				return ins.Unit{Stitch: k.Kind, Word: "skipped"}
			}
			return ins.Unit{Stitch: k.Kind, Word: "kind"}
		}},
	{rule: "unit", pattern: "{w:row} {q:num} {k:kind} [$st]", meaning: "stitches of a row further down", example: "Rnd 3: Working behind petals, *sc around post of next Rnd 1 sc, ch 4; rep from * around", build: func(m *match) any {
		k := value[thing](m, "k")
		if k.Kind == nil || k.Kind.Craft != stitch.Crochet || k.Call != nil {
			return nil
		}
		return ins.Unit{Stitch: k.Kind, Word: "kind"}
	}},
	{rule: "unit", pattern: "half/partial shell/shells/fan/fans/scallop/scallops/motif/motifs/block/blocks", meaning: "a group of half as many stitches, at an edge", example: "Row 2: Ch 3, 2 dc in first sc. (3 shells, 2 half shells)", build: func(*match) any { return ins.Unit{Stretch: true, Word: "half"} }},
	{rule: "unit", pattern: "(shell/shells/fan/fans/group/groups/scallop/scallops/mesh/meshes/block/blocks/tile/tiles/petal/petals/point/points/rib/ribs/pair/pairs/v/vs [$st] [of {k:kind}] | v $st)", meaning: "a group that the text does not define",
		example: "5 dc in next shell", build: func(m *match) any {
			if g, _ := m.p.group(m.from); g != nil {
				return nil
			}
			return ins.Unit{Stretch: true, Word: m.p.t[m.from].S}
		}},
}

// beginsNext reports whether the name of a knitted stitch behind a number is the next instruction and not what is
// counted: k2 p2, k1 yo.
func (p *parser) beginsNext(m *match, k thing) bool {
	return k.Kind != nil && k.Kind.Craft == stitch.Knitting && m.from > 1 && p.at(m.from-1).Kind == 'n' && p.thingAt(m.from-2) && !m.said("st", "sts", "stitch", "stitches")
}

// size reads the number of a chain space, ch-2 or ch 2, if a space is meant.
func size(p *parser, i int) (any, int) {
	v, to := number(p, i)
	if to < 0 || p.at(i).Kind != 'n' {
		return nil, -1
	}
	space := p.at(to).Is("sp", "sps", "space", "spaces", "loop", "loops", "lp", "lps", "arch", "arches", "arc", "underarm", "underarms") ||
		p.at(i-2).Is("in", "into", "over") && (to >= len(p.t) || p.at(to).Is(",", ";", ".") || isStar(p.at(to))) // 2 dc in ch 3, ch 2
	back := i - 2
	if p.at(back).Is("the", "next") {
		back--
	}
	space = space || p.at(back).Is("sk", "skip", "miss", "skipping", "missing") && (to >= len(p.t) || p.at(to).Is(",", ";", ".", "and", "of", ")") || isStar(p.at(to))) // skip the ch 3 and sc
	if !space && (!p.at(i).Glued || p.at(to).Is("and", "times") || p.at(to).Kind == 'n' || p.at(i-2).Is("to") && (to >= len(p.t) || p.at(to).Kind == 'p')) {
		return nil, -1
	}
	return v, to
}

// sized reads the 2 of 2-ch.
func sized(p *parser, i int) (any, int) {
	t, c, k := p.at(i), p.at(i+1), i+2
	if p.at(k).Is("corner") {
		k++
	}
	if t.Kind != 'n' || !c.Is("ch", "chain") || !(c.Glued && c.Col == t.End+1) && !p.at(k).Is("sp", "sps", "space", "spaces", "lp", "lps", "loop", "loops", "arch", "arches") {
		return nil, -1
	}
	return t.Num, i + 1
}

func place(kind ins.PlaceKind, m *match) ins.Place {
	u, _ := m.get("u").(ins.Unit)
	u.Between = u.Space && u.Size.By == nil && u.Size.All == 0 && m.said("between")
	if u.Space && u.Size.All == 0 && m.has("tail") && m.said("before", "after") { // the gap there, which takes no stitch
		u.Between, u.Within, u.Word = true, m.said("before"), "gap"
	}
	if m.has("tail") && (u.Word == "st" || u.Stitch != nil) && m.said("below", "down") && m.said("rows", "row") { // of a row further down
		u.Word = "unworked"
	}
	if m.has("tail") && u.Stitch != nil && m.rowBelow() {
		u.Word = "down"
	}
	pl := ins.Place{Kind: kind, N: m.num("n", 1), Unit: u}
	if e, ok := m.get("e").(ins.Extent); ok && kind == ins.InEach {
		pl.Extent = e
	}
	if m.lowerDown() || u.Word == "down" {
		pl.Loop = ins.LowerDown
	}
	if !u.Between {
		pl.Passed, _ = m.get("tail").(ins.Span)
	}
	if u.Row {
		pl.Kind = ins.RowEnds
	}
	return pl
}

// lowerDown reports whether words put a stitch into one of a row further down, over the next: in next st 2 rows below, in st below next sc.
// The row below alone is the one before.
func (m *match) lowerDown() bool {
	for i := m.from + 1; i < m.to; i++ {
		t := m.p.at(i)
		_, row := text.RowWord(m.p.at(i - 1).S)
		if t.Is("below", "down") && (row && (m.p.at(i-2).Kind == 'n' || numerals[m.p.at(i-2).S] > 0) || m.p.at(i+1).Is("next")) {
			return true
		}
	}
	return false
}

// rowBelow reports whether words name a row by its number that lies below the one before this: dc of Rnd 2, in Rnd 5.
func (m *match) rowBelow() bool {
	l := m.p.line.Label
	if l == nil || l.Next || l.From.By != nil {
		return false
	}
	for i := m.from; i < m.to-1; i++ {
		a, b := m.p.at(i), m.p.at(i+1)
		n := 0
		if _, row := text.RowWord(a.S); row && b.Kind == 'n' && b.Num.By == nil {
			n = b.Num.All
		} else if _, row := text.RowWord(b.S); row && a.Ord > 0 {
			n = a.Ord
		}
		if n > 0 {
			return n < l.From.All-1
		}
	}
	return false
}

// gapBehindNext is the gap behind the next of groups: between next 2 petals.
func gapBehindNext(m *match) any {
	return ins.Place{Kind: ins.InNext, N: ins.N(1), Unit: ins.Unit{Space: true, Between: true, Word: "sp"}, At: m.span()}
}

func at(kind ins.PlaceKind) func(m *match) any {
	return func(m *match) any { return place(kind, m) }
}

// fromHook is a chain counted from the hook.
func fromHook(m *match) any {
	return ins.Place{Kind: ins.FromHook, N: ins.N(value[int](m, "o")), Unit: ins.Unit{Chain: true, Word: "ch"}}
}

// cores are the places themselves, behind their preposition.
var cores = []form{
	{rule: "core", pattern: "[$center] {u:unit} of/at/in each/every {w:unit} [{tail}] [{e:extent}]", meaning: "a place in each group", example: "V-st in ch-1 sp of each V-st across", build: func(m *match) any {
		u := value[ins.Unit](m, "u")
		if !u.Space {
			return nil
		}
		return place(ins.InEach, m)
	}},
	{rule: "core", pattern: "each/both {u:unit} (of/in/at $next) {w:unit}", meaning: "each space of the next group", example: "2 dc in each ch-2 sp of next double V-st", build: func(m *match) any {
		u, w := value[ins.Unit](m, "u"), value[ins.Unit](m, "w")
		if !u.Space || w.Group == nil {
			return nil
		}
		n := 0
		for _, b := range w.Group.Body {
			if c, ok := b.(*ins.Chain); ok && (!u.Size.Set() || c.N.At(0) == u.Size.At(0)) {
				n++
			}
		}
		if n == 0 {
			return nil
		}
		pl := place(ins.InNext, m)
		pl.N, pl.Unit.Within = ins.N(n), true
		return pl
	}},
	{rule: "core", pattern: "[$next] {u:unit} (of/in/at $next) {w:unit} [{tail}]", meaning: "the space of the next group", example: "V-st in ch-1 sp of next V-st", build: func(m *match) any {
		u, w := value[ins.Unit](m, "u"), value[ins.Unit](m, "w")
		if !u.Space || w.Group == nil && !w.Stretch || m.p.at(m.to).Kind == 'w' && m.p.at(m.to).Is("across", "around", "to") {
			return nil
		}
		pl := place(ins.InNext, m)
		pl.Unit.Within = true
		return pl
	}},
	{rule: "core", pattern: "$next {u:unit} [{tail}] [{e:extent}]", meaning: "the next stitch or space", example: "2 dc in next ch-2 sp", when: tests{either(no(has("e")), has("tail"))}, build: eachIfExtent}, // the next st across
	{rule: "core", pattern: "$next {u:unit} but {n:num} [{tail}]", meaning: "a stitch after n others", example: "Row 2: *1 dc in next st but 2, ch 2; rep from * to end", build: func(m *match) any {
		n := m.num("n", 1)
		if n.By != nil {
			return nil
		}
		pl := place(ins.InEvery, m)
		pl.N = ins.N(n.All + 1)
		return pl
	}},
	{rule: "core", pattern: "$next {n:num} {u:unit} [{tail}]", meaning: "each of the next stitches", example: "sc in next 5 sts", build: func(m *match) any {
		pl := place(ins.InNext, m)
		switch {
		case !m.p.at(m.from-1).Is("between") || pl.N.By != nil || pl.N.All != 2 || pl.Unit.Space:
		case pl.Unit.Stretch || pl.Unit.Group != nil:
			return gapBehindNext(m)
		default:
			pl.Kind, pl.Unit.Between = ins.InEvery, true
		}
		return pl
	}},
	{rule: "core", pattern: "join/joining [at/in/on/of] [top] [of] [$tch] [{n:chaincalled}] [{tail}]", meaning: "the top of the turning chain", example: "dc in join at top of ch-3", build: func(m *match) any {
		if firstPlace(m) && m.p.at(m.from-1).Is("in", "into") && !m.p.at(m.from-2).Is("st", "slst", "ss") { // s c in joining, where the round begins
			return whereBegun(m)
		}
		pl := top(m).(ins.Place)
		pl.Start = m.p.line.IsRow()
		return pl
	}},
	{rule: "core", pattern: "[$sp between] ([$tch] {n:chaincalled} | {j:kind} | same $st) and [$next/first] ({k:kind} | $st) [{tail}]", meaning: "the gap between the first two stitches", example: "sc between starting chain and next tr", when: tests{either(after("between"), said("between"))}, build: func(m *match) any {
		return ins.Place{Kind: ins.InEvery, N: ins.N(2), Unit: ins.Unit{Word: "tch", Between: true}}
	}},
	{rule: "core", pattern: "(last and (second/next | {ord}) [-] to [-] last | first and second | second and first | {o:ord} and {q:ord}) {u:unit} [{tail}]", meaning: "the gap between the first two stitches", example: "Row 2: Ch 3, 2 dc between the last and 2nd to last dc of previous row", build: func(m *match) any {
		if !m.p.at(m.from-1).Is("between") || m.has("o") && value[int](m, "o")+value[int](m, "q") != 3 {
			return nil
		}
		if u := value[ins.Unit](m, "u"); u.Stretch || u.Group != nil {
			return gapBehindNext(m)
		}
		return ins.Place{Kind: ins.InEvery, N: ins.N(2), Unit: ins.Unit{Word: "st", Between: true}}
	}},
	{rule: "core", pattern: "{k:kind} [{tail}]", meaning: "the gap after the last stitch worked", example: "Rnd 2: Ch 3, *dc in dc, dc between dc; rep from * around", when: tests{crochet, after("between"), endsOrKind("pg")}, build: func(m *match) any {
		return ins.Place{Kind: ins.InNext, N: ins.N(1), Unit: ins.Unit{Word: "gap", Space: true, Between: true}}
	}},
	{rule: "core", pattern: "{n:num} $next {u:unit} [{tail}]", meaning: "each of the next stitches", example: "sc in the 3 following sts", build: at(ins.InNext)},
	{rule: "core", pattern: "$next {n:num}", meaning: "each of the next stitches", example: "sc in next 5", build: at(ins.InNext)},
	{rule: "core", pattern: "$next [one]", meaning: "the next stitch", example: "2 sc in next", build: at(ins.InNext)},
	{rule: "core", pattern: "$next {u:unit} {e:extent}", meaning: "each stitch up to there", example: "sc in next st across", build: eachIfExtent},
	{rule: "core", pattern: "each/every/all [of/in] [$next/beginning/starting/original] {n:num} {u:unit} [{tail}]", meaning: "each of n stitches", example: "dc in each of next 4 ch", when: tests{either(said("of", "next", "following", "foll"), no(said("ch", "chain")), no(said("sp", "space", "loop", "lp", "arch")))}, build: func(m *match) any { // each 2-ch sp
		pl := place(ins.InNext, m)
		pl.Of = true
		return pl
	}},
	{rule: "core", pattern: "each/every/all [of] [$next] (unworked/held/free/skipped/missed/sk) {n:num} {u:unit} [{tail}]", meaning: "each of n stitches", example: "sl st in each of next unworked 7 sts",
		build: func(m *match) any {
			pl := place(ins.InNext, m)
			pl.Of = true
			for _, w := range []string{"unworked", "held", "skipped"} {
				if m.said(w) {
					pl.Unit.Word = w
				}
			}
			return pl
		}},
	{rule: "core", pattern: "each of $next {u:unit}", meaning: "each stitch that is left", example: "Row 1: Dc in 4th ch from hook, 2 dc in each of next st", when: tests{endsOr(".")}, build: func(m *match) any { return place(ins.InEach, m) }},
	{rule: "core", pattern: "each/every $ch/$st of/in [$next] [the] ($ch [-] {n:num} | {n:num} [-] $ch) [sp/space/loop/lp/arch]", meaning: "each chain of the next space", example: "1 sc in each st of ch 5, sc in next tr", build: func(m *match) any {
		pl := place(ins.InNext, m)
		pl.Of, pl.Unit = true, ins.Unit{Chain: true, Word: "ch"}
		return pl
	}},
	{rule: "core", pattern: "each/every $ch/$st of/in [the] $next [$ch] sp/space/loop/lp/arch", meaning: "each chain of the next space, however long", example: "1 sc in each ch of next loop, sc in next tr", build: func(*match) any {
		return ins.Place{Kind: ins.InNext, N: ins.N(0), Of: true, Unit: ins.Unit{Chain: true, Word: "ch"}}
	}},
	{rule: "core", pattern: "each/every [of] [$next] {n:num}", meaning: "each of n stitches", example: "dc in each of next 4", build: func(m *match) any { pl := place(ins.InNext, m); pl.Of = true; return pl }},
	{rule: "core", pattern: "every/each other/alternate/alt {u:unit} [{tail}] [{e:extent}]", meaning: "every second stitch", example: "2 sc in every other st around", build: func(m *match) any { pl := place(ins.InEach, m); pl.N = ins.N(2); return pl }},
	{rule: "core", pattern: "each/every/all [of] [$rem/other/single/following] {u:unit} [{tail}] [$next] [{e:extent}]", meaning: "each stitch that is left", example: "sc in each st across", build: at(ins.InEach)},
	{rule: "core", pattern: "each/every [of] $next {u:unit} [{tail}] {e:extent}", meaning: "each stitch that is left", example: "2 hdc in first st and in each of next st around", build: at(ins.InEach)},
	{rule: "core", pattern: "$rem {u:unit} [{tail}] [{e:extent}]", meaning: "each stitch that is left", example: "sc in remaining sts", build: at(ins.InEach)},
	{rule: "core", pattern: "rest/remainder/balance of {u:unit} [{tail}] [{e:extent}]", meaning: "each stitch that is left", example: "dc in rest of chs across", build: at(ins.InEach)},
	{rule: "core", pattern: "([top of] last/prev/previous {u:unit} [just] made/worked/completed | top of last/prev/previous {u:unit})", meaning: "the place worked into last", example: "sc in next 4 sts, ch 3, sl st in last sc made", build: same},
	{rule: "core", pattern: "[top of] {u:unit} [just] made/worked/completed", meaning: "the place worked into last", example: "Rnd 2: *5 sc in next ch-3 sp, ch 3, sl st in sc just made; rep from * around", when: tests{endsOrKind("pg", "then", "and")}, build: same},
	{rule: "core", pattern: "top of first {u:unit}", meaning: "the first stitch", example: "Rnd 2: 8 dc in ring, sl st in top of first dc", build: at(ins.InFirst)},
	{rule: "core", pattern: "end of last {u:unit}", meaning: "the last stitch", example: "dc in each sc to last sc, 7 dc in end of last sc", build: lastOf},
	{rule: "core", pattern: "last/final/end {u:unit} [{tail}]", meaning: "the last stitch", example: "2 sc in last st", build: lastOf},
	{rule: "core", pattern: "[each] [of] last/final/$rem {n:num} {u:unit} [{tail}] [to/until/till end [of] [$row]]", meaning: "the last stitches", example: "hdc in last 14 sts", build: lastOf},
	{rule: "core", pattern: "[each] [of] first {n:num} {u:unit} [{tail}]", meaning: "the first stitches", example: "1 dc in each of first 5 dc", build: at(ins.InFirst)},
	{rule: "core", pattern: "first [one]", meaning: "the first stitch", example: "2 sc in first, sc in each st across", when: tests{endsOrKind("pg", "then"), crochet}, build: func(m *match) any { return ins.Place{Kind: ins.InFirst, N: ins.N(1), Unit: ins.Unit{Word: "st"}} }},
	{rule: "core", pattern: "{n:num} first {u:unit} [{tail}]", meaning: "the first stitches", example: "sc in the 3 first sts", build: at(ins.InFirst)},
	{rule: "core", pattern: "every/each {o:ord} {u:unit} [{tail}] [{e:extent}]", meaning: "every nth stitch", example: "2 sc in every 3rd st around", build: func(m *match) any { pl := place(ins.InEach, m); pl.N = ins.N(value[int](m, "o")); return pl }},
	{rule: "core", pattern: "(same/that/this/joined/joining [first/beg/beginning/starting] {u:unit} | first same {u:unit}) [{tail}]", meaning: "the place worked into last", example: "dc in same st", build: same},
	{rule: "core", pattern: "[same] {u:unit} [as/from/that/where/in] [which/where] (you/yarn [were/was/have] joined/began/started/slipped/attached [in/into/to/at] | {n:chaincalled} comes/goes/starts/begins/is/was/sits/stands/rises [up] [from/in/on/out] [of])", meaning: "the place in which the round begins", example: "Rnd 2: Ch 3, dc in st where you joined, 2 dc in each st around", when: tests{crochet, inRow}, build: whereBegun},
	{rule: "core", pattern: "{u:unit} below/under/underneath {n:chaincalled}", meaning: "the place in which the round begins", example: "Rnd 2: Ch 3, dc in st below ch 3, 2 dc in each st around", when: tests{crochet, inRow}, build: whereBegun},
	{rule: "core", pattern: "(base of same {u:unit} | sl/slip {u:unit} of join/joining)", meaning: "the place in which the round begins", example: "Rnd 2: Ch 3, dc in base of same st, 2 dc in each st around", when: tests{crochet, inRow}, build: whereBegun},
	{rule: "core", pattern: "(that/this same {u:unit} | that/this/same {b:bracketed} $sp) [{tail}]", meaning: "the place worked into last", example: "9 dc in that same ch-4 sp", build: same},
	{rule: "core", pattern: "same place/position [{tail}]", meaning: "the place worked into last", example: "dc in same place", build: same},
	{rule: "core", pattern: "same [{tail}]", meaning: "the place worked into last", example: "dc in same", build: same},
	{rule: "core", pattern: "(base/bottom of [$tch/same/that/this] ($ch [{n:num}] | {m:num} $ch) | joining [{tail}] | $st at base/bottom of [$tch/same/that/this] $ch [{q:num}] | $st at base/bottom of {tail} | $st where joined | joined $st | {k:kind} at base)", meaning: "the place worked into last", example: "dc in base of ch-3", build: same},
	{rule: "core", pattern: "{u:unit} (indicated | [or $sp] indicated | just made | below same)", meaning: "the place worked into last", example: "(sc, ch 3, 4 dc) in st indicated", build: same},
	{rule: "core", pattern: "$sp below", meaning: "the place in which the round begins", example: "Rnd 2: Ch 3, 2 dc in sp below, ch 3, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 3] around", when: tests{crochet, inRow, firstPlace}, build: same},
	{rule: "core", pattern: "(loop/lp/ch/sp/space/st [{n:num}] [$sp] [just] made/worked/formed/created/completed)", meaning: "the place worked into last", example: "5 sc in loop just made", build: same},
	{rule: "core", pattern: "([$center] [of] [adjustable/magic/amigurumi/first/foundation/same] $ring | mr/mc | [adjustable/magic/amigurumi] [ring/circle/loop] | $center of [$ch] $ring | magic)", meaning: "the ring", example: "6 sc in ring",
		build: func(m *match) any {
			if m.to == m.from || m.said("mc") && m.p.r.mainYarn() || m.said("first") && m.said("loop", "lp") && m.p.line.Label != nil && m.p.line.Label.From.All > 1 || m.said("loop", "lp") && m.p.r.began && !m.said("magic", "adjustable", "center", "centre", "middle") {
				return nil
			}
			return ins.Place{Kind: ins.InRing, N: ins.N(1)}
		}},
	{rule: "core", pattern: "ring/circle of {n:num} $ch [$st]", meaning: "the ring", example: "Into a ring of 6 ch work 12 dc", build: func(m *match) any { return ins.Place{Kind: ins.InRing, N: ins.N(1)} }},
	{rule: "core", pattern: "{o:ord} from/of [loop/lp] hook/hk", meaning: "a chain counted from the hook", example: "sc in 2nd from hook", build: fromHook},
	{rule: "core", pattern: "{o:ord} $ch [$st] (from/of hook/hk/end/needle | from hook of [foundation] $ch)", meaning: "a chain counted from the hook", example: "sc in 2nd ch from hook", build: fromHook},
	{rule: "core", pattern: "{o:ord} and/& {q:ord} $ch from/of hook/hk", meaning: "two chains counted from the hook, worked together", example: "dc2tog in 3rd and 4th ch from hook", build: func(m *match) any {
		o := value[int](m, "o")
		if value[int](m, "q") != o+1 {
			return nil
		}
		return ins.Place{Kind: ins.FromHook, N: ins.N(o), Of: true, Unit: ins.Unit{Chain: true, Word: "ch"}}
	}},
	{rule: "core", pattern: "{o:ord} $st/loop/lp from/of hook/hk", meaning: "a chain counted from the hook", example: "8 sc in 2nd st from hook", build: fromHook},
	{rule: "core", pattern: "[center/centre] $ch {n:num} of last/previous/preceding {w:row}", meaning: "a chain space of n chains", example: "3 dc in ch 2 of last row", build: func(m *match) any {
		return ins.Place{Kind: ins.InNext, N: ins.N(1), Unit: chainSpace(m)}
	}},
	{rule: "core", pattern: "{n:num} $ch from hook/hk", meaning: "a chain counted from the hook", example: "Ch 5. Dc in the 5 ch from hook", build: func(m *match) any {
		n := m.num("n", 0)
		if n.By != nil || n.All < 2 || m.p.r.began {
			return nil
		}
		return ins.Place{Kind: ins.FromHook, N: n, Unit: ins.Unit{Chain: true, Word: "ch"}}
	}},
	{rule: "core", pattern: "{o:ord} [one | $ch]", meaning: "a chain counted from the hook", example: "Row 1: Sc in 2nd, sc in each ch across", when: tests{after("in", "into", "from", "with", "starting", "beginning"), either(no(begun), behindChain), either(endsOrKind("pg"), before("and"))}, build: func(m *match) any {
		if o := value[int](m, "o"); o < 2 || o > 12 {
			return nil
		}
		return fromHook(m)
	}},
	{rule: "core", pattern: "top [$st] [$ch] [of] [$tch/joined] [{n:chaincalled}]", meaning: "the top of the turning chain", example: "dc in top of ch-3", build: top},
	{rule: "core", pattern: "(last/$tch $ch | last/turning [{n:chaincalled}] | beg/beginning/starting {n:chaincalled} | tch | t $ch | turning $ch)", meaning: "the top of the turning chain", example: "dc in turning ch", build: top},
	{rule: "core", pattern: "{o:ord} ($ch/$st | [of] [$tch] [ch]) [of/on/in] $tch {n:chaincalled}", meaning: "the top of the turning chain", example: "sl st in 3rd ch first ch 3", when: tests{crochet}, build: top},
	{rule: "core", pattern: "{o:ord} ($ch/$st | [of] [$tch] [ch]) of/on/in [$tch/last] ({n:chaincalled} | {ord} ch) [{tail}]", meaning: "the top of the turning chain", example: "dc in 3rd ch of ch-3", build: top},
	{rule: "core", pattern: "$center of [$tch/this/that] {n:chaincalled} [$ring]", meaning: "the ring", example: "Rnd 1: Ch 4, join with sl st. Into the middle of ch 4: ch 3, 11 dc", when: tests{crochet, behindRing}, build: func(*match) any { return ins.Place{Kind: ins.InRing, N: ins.N(1)} }},
	{rule: "core", pattern: "$center of [$next/same/first/each/last/this/that] {u:unit} [{tail}]", meaning: "the middle of a chain space", example: "sl st to center of next ch-5 loop",
		build: func(m *match) any {
			u := value[ins.Unit](m, "u")
			if u.Chain {
				u = ins.Unit{Space: true, Word: "sp"}
			}
			if u.Stitch != nil && ofLegs(u.Stitch) { // center of next 4-dc cluster
				return ins.Place{Kind: ins.InCentre, N: ins.N(0), Unit: ins.Unit{Stretch: true, Word: "group"}}
			}
			if !u.Space {
				return nil
			}
			return m.nextOrFirst(u)
		}},
	{rule: "core", pattern: "$center of [$next/first] {n:num} [$next] {u:unit} [{tail}]", meaning: "the middle of a group", example: "3 sc in the middle of the next 3 picots", build: func(m *match) any {
		if u := value[ins.Unit](m, "u"); u.Space || u.Chain { // of next 5 chain
			return m.nextOrFirst(chainSpace(m))
		}
		return ins.Place{Kind: ins.InCentre, N: ins.N(1), Unit: ins.Unit{Stretch: true, Word: "group"}}
	}},
	{rule: "core", pattern: "$center [of] {u:unit} [of] [each/$next/corner/same/first/last] [{n:num}] [{w:unit}] [group/shell/fan/of] [{tail}]", meaning: "the middle stitch of a group", example: "sc in centre dc of next shell", build: centre},
	{rule: "core", pattern: "{o:ord} [{u:unit}] of [each/every] $next/following {n:num} {w:unit} [{tail}]", meaning: "one of the next stitches; those before it are skipped", example: "sc in 2nd of next 3 dc", build: func(m *match) any {
		o, n := value[int](m, "o"), m.num("n", 1)
		if w := value[ins.Unit](m, "w"); n.By != nil || n.All < o || w.Space || w.Chain || w.Group != nil || w.Stretch {
			return nil
		}
		return ins.Place{Kind: ins.InEvery, N: ins.N(o), Of: true, Unit: value[ins.Unit](m, "w")}
	}},
	{rule: "core", pattern: "{o:ord} {u:unit} of [each/$next/same/first/last/corner] [{n:num}] {w:unit} [group/shell/fan] [{tail}]", meaning: "a stitch of the next group", example: "sc in 3rd dc of next shell", build: centre},
	{rule: "core", pattern: "{k:nths} {u:unit} [{tail}]", meaning: "each of the first stitches", example: "Rnd 2: *Sc in 1st, 2nd and 3rd sts, 2 sc in 4th st; rep from * around", build: func(m *match) any {
		if m.p.t[m.from].Ord != 1 {
			return nil
		}
		pl := place(ins.InFirst, m)
		pl.N = ins.N(value[int](m, "k"))
		return pl
	}},
	{rule: "core", pattern: "{o:ord} {u:unit} [{tail}]", meaning: "the first stitch", example: "2 sc in first st",
		build: func(m *match) any {
			if value[int](m, "o") == 1 {
				return place(ins.InFirst, m)
			}
			pl := place(ins.InCentre, m)
			pl.N = ins.N(value[int](m, "o"))
			if !m.has("tail") {
				pl.Kind, pl.N = ins.InNext, ins.N(1)
				if o := value[int](m, "o"); pl.Unit.Any() || pl.Unit.Stitch != nil || pl.Unit.Chain { // in 3rd st: two are passed
					pl.Kind, pl.N = ins.InEvery, ins.N(o)
				}
			}
			return pl
		}},
	{rule: "core", pattern: "{n:num} {u:unit} [{tail}]", meaning: "n stitches", example: "sc in 21 sts", build: func(m *match) any {
		if ch := m.p.at(m.from + 1); ch.Is("ch") && ch.Glued && value[ins.Unit](m, "u").Space { // in 3ch-sp
			return nil
		}
		if m.p.at(m.from-1).Is("to", "until", "till") && m.said("marker", "markers", "m", "mk", "mkr", "marked") { // up to there, and not in so many
			return nil
		}
		return place(ins.InNext, m)
	}},
	{rule: "core", pattern: "[$next] {n:num} more [$st]", meaning: "each of the next stitches", example: "Ch 1, hdc in same st and 8 more, 2 hdc in next st", build: at(ins.InNext)},
	{rule: "core", pattern: "{n:num}", meaning: "n stitches", example: "Ch 1, 2 hdc in first st, *hdc in 3, 2 hdc in next; rep from * around", build: func(m *match) any {
		if m.p.t[m.from].Kind != 'n' || !m.p.at(m.from-1).Is("in", "into") || m.to < len(m.p.t) && m.p.at(m.to).Kind != 'p' && m.p.at(m.to).Kind != 'g' {
			return nil
		}
		return place(ins.InNext, m)
	}},
	{rule: "core", pattern: "alternate/alt {u:unit} [{tail}] [{e:extent}]", meaning: "every second stitch", example: "2 sc in alternate sts around", build: func(m *match) any { pl := place(ins.InEach, m); pl.N = ins.N(2); return pl }},
	{rule: "core", pattern: "end/side of each/every row [{tail}]", meaning: "the ends of rows", example: "1 sc in end of each row", build: func(m *match) any { return ins.Place{Kind: ins.RowEnds, N: ins.N(1), Unit: ins.Unit{Row: true}} }},
	{rule: "core", pattern: "(second/next - to - last | second to last | next to last | last but one | penultimate) {u:unit} [{tail}]", meaning: "the stitch before the last", example: "Ch 1, sc in each st to last 2 sts, 2 sc in second to last st, sc in last st", build: at(ins.InNext)},
	{rule: "core", pattern: "(underside | (other/opposite/bottom/under side | bottom/unused/free/$rem loop/loops/lp/lps) of) [of] [each/every] [of] [foundation/starting/beg/beginning/base/initial/original] chain/ch/chs/chains [{e:extent}]", meaning: "each chain along its other side", example: "Chain 33. Rnd 1: Dc in 3rd ch from hook, dc in each ch to end, 4 dc in end ch, then dc in the underside of the chain", when: tests{no(beforeKind("n"))}, build: func(m *match) any {
		return ins.Place{Kind: ins.InEach, N: ins.N(1), Unit: ins.Unit{Chain: true, Word: "ch"}}
	}},
	{rule: "core", pattern: "[any/one/another/opposite/corresponding/beg/beginning/end/edge/adjacent] {u:unit} [{tail}]", meaning: "one stitch or space", example: "3 dc in ch-1 sp", build: func(m *match) any {
		pl, _ := eachIfExtent(m).(ins.Place)
		if pl.Unit.Space && pl.Kind == ins.InNext && (m.whereJoined() || m.whereSlipped()) {
			return same(m)
		}
		if u := pl.Unit; m.said("beg", "beginning") && m.p.r.began && pl.Kind == ins.InNext && u.Stitch != nil { // htr into beginning dc
			pl.Kind = ins.InFirst
		}
		return pl
	}},
	{rule: "core", pattern: "{u:unit} {e:extent}", meaning: "each stitch up to there", example: "sc in sts across", build: eachIfExtent},
	{rule: "core", pattern: "($row {num} [below] | {num} $row below | ridge | front/back)", meaning: "a stitch lower down", example: "1 dc in ridge", build: func(m *match) any { return ins.Place{Kind: ins.InNext, N: ins.N(1), Far: true} }},
	{rule: "core", pattern: "each/every/all {e:extent}", meaning: "each stitch up to there", example: "hdc in each to end", build: at(ins.InEach)},
	{rule: "core", pattern: "[each/every] across/around", meaning: "each stitch that is left", example: "sc in each around", build: at(ins.InEach)},
	{rule: "core", pattern: "each/every/all", meaning: "each stitch that is left", example: "sc in each", build: func(m *match) any {
		if _, row := text.RowWord(m.p.at(m.to).S); row { // increase in this way on every round
			return nil
		}
		return at(ins.InEach)(m)
	}},
	{rule: "core", pattern: "(both/$edge [$edge] of row/rows [{tail}] | row/rows [{tail}] | row end/ends [{tail}])", meaning: "the ends of rows", example: "1 sc in rows along edge", build: func(m *match) any { return ins.Place{Kind: ins.RowEnds, N: ins.N(1), Unit: ins.Unit{Row: true}} }},
}

func eachIfExtent(m *match) any {
	pl := place(ins.InNext, m)
	if e, ok := m.get("e").(ins.Extent); ok {
		pl.Kind, pl.Extent = ins.InEach, e
	}
	return pl
}

func lastOf(m *match) any {
	pl := place(ins.InLast, m)
	if pl.Unit.Chain && m.said("turning", "tch") {
		pl = ins.Place{Kind: ins.InTop, N: ins.N(1)}
	}
	return pl
}

func same(m *match) any {
	return ins.Place{Kind: ins.InSame, N: ins.N(1), Unit: value[ins.Unit](m, "u"), Start: m.saysStart()}
}

// whereBegun is the place in which the round began.
func whereBegun(m *match) any {
	pl := same(m).(ins.Place)
	pl.Start = true
	return pl
}

// whereJoined reports whether the place that is read is the first that is named behind the one in which yarn is joined: join red in
// any ch-5 sp, ch 1, 5 sc in ch-5 sp.
func (m *match) whereJoined() bool {
	at, named := -1, 0
	for i, t := range m.p.t[:m.from] {
		switch {
		case t.Is("join", "attach") && at < 0 && i < 3:
			at = i
		case isStar(&t), t.Is("next", "each", "same", "skip", "sk", "miss"):
			return false
		case t.Is("in", "into", "to", "around"):
			named++
		}
	}
	return at >= 0 && named == 2
}

// whereSlipped reports whether the place that is read is the space into which slip stitches led, the only ones before it: sl st in next
// 2 dc and in next ch-3 loop, beg shell in loop.
func (m *match) whereSlipped() bool {
	end := m.from - 1
	for end > 0 && !m.p.at(end).Is(",", ".", ";") {
		end--
	}
	space := false
	for i := range m.p.t[:end] {
		t := m.p.at(i)
		space = space || t.Is("sp", "space", "loop", "lp", "arch")
		if i == 0 && !t.Is("sl", "slst", "ss", "slip") || t.Kind != 'n' && !t.Is("sl", "slst", "ss", "slip", "st", "sts", "in", "into", "to", "next", "first", "and", "ch", "sp", "space", "loop", "lp", "arch", "dc", "sc", "hdc", "tr", "the", "center", "centre", "of", ",", "-") {
			return false
		}
	}
	return space
}

// saysStart reports whether words tell a place as the one in which the row began: same sp as beginning ch-5.
func (m *match) saysStart() bool {
	for i := m.from; i+1 < m.to; i++ {
		if m.p.at(i).Is("as", "with", "of") {
			return m.p.at(i+1).Is("beg", "beginning", "first", "start", "starting", "join", "joining", "initial")
		}
	}
	return false
}

func top(m *match) any {
	n := m.num("n", 0)
	nth, _ := m.get("o").(int)
	return ins.Place{Kind: ins.InTop, N: ins.N(1), Unit: ins.Unit{Word: "tch", Size: n}, Nth: nth}
}

// nextOrFirst is the next place of that kind, or the first one if the words say so.
func (m *match) nextOrFirst(u ins.Unit) ins.Place {
	kind := ins.InNext
	if m.said("first") && m.p.r.began {
		kind = ins.InFirst
	}
	return ins.Place{Kind: kind, N: ins.N(1), Unit: u}
}

func centre(m *match) any {
	u, w := value[ins.Unit](m, "u"), value[ins.Unit](m, "w")
	pl := ins.Place{Kind: ins.InCentre, N: ins.N(value[int](m, "o")), Unit: ins.Unit{Stitch: u.Stitch, Group: w.Group, Stretch: true, Word: "group"}, Last: m.said("last")}
	if u.Chain || u.Space {
		if !m.has("w") && !m.said("group", "shell", "fan") { // the middle chain of the loop
			return m.nextOrFirst(ins.Unit{Space: true})
		}
		if w.Space {
			return m.nextOrFirst(w)
		}
		if w.Chain && m.has("n") { // 2nd ch of next 3 chs
			return m.nextOrFirst(chainSpace(m))
		}
	}
	if w.Space {
		return m.nextOrFirst(w)
	}
	if w.Stitch != nil && m.has("n") && m.said("group", "shell", "fan") { // first dc of 8-dc group
		return pl
	}
	if w.Any() && w.Word != "" || !m.has("w") && !m.said("group", "shell", "fan", "of") {
		return ins.Place{Kind: ins.InNext, N: ins.N(1), Unit: u}
	}
	return pl
}

// chainCalled reads ch-3, 3-ch or ch, and gives its size, 0 if none is named.
func chainCalled(p *parser, i int) (any, int) {
	t := p.at(i)
	if t.Kind == 'n' && p.at(i+1).Is("ch", "chain", "chs", "chains") {
		return t.Num, i + 2
	}
	if t.Is("tch") || t.Is("turning") && !p.at(i+1).Is("ch", "chain") {
		return ins.Num{}, i + 1
	}
	if !t.Is("ch", "chain", "chs") {
		return nil, -1
	}
	if p.at(i+1).Kind == 'n' && !(!p.at(i+1).Glued && p.at(i+1).Num.By == nil && p.thingAt(i+2)) { // but: to last ch. 3 sc in it
		to := i + 2
		if p.at(to).Is("sp", "loop") {
			return nil, -1
		}
		if p.at(to).Is("first", "just") && p.at(to+1).Is("made", "worked") { // of ch-6 first made
			to += 2
		}
		return p.at(i + 1).Num, to
	}
	if p.at(i+1).Is("sp", "sps", "loop") {
		return nil, -1
	}
	if k := numerals[p.at(i+1).S]; k > 1 && !p.thingAt(i+2) { // chain three
		return ins.N(k), i + 2
	}
	return ins.Num{}, i + 1
}

var tailWords = map[string]bool{"of": true, "on": true, "at": true, "from": true, "made": true, "below": true, "formed": true, "left": true, "as": true, "along": true, "where": true, "before": true,
	"after": true, "with": true, "worked": true, "marked": true, "behind": true, "only": true, "in": true, "used": true, "skipped": true, "down": true, "up": true, "above": true, "between": true, "below2": true}

// leadsTo reads up to which space counted stitches go: sl st in next 2 sts to next ch-3 loop.
func (p *parser) leadsTo(i int) int {
	if p.at(i-2).Kind == 'n' {
		if v, to := p.named("extent", i); to >= 0 && v.(ins.Extent).Kind == ins.ToUnit && v.(ins.Extent).Unit.Space {
			return to
		}
	}
	return -1
}

// tail reads words that tell a place nearer: of previous row, on body, from previous round. Its value is where those stand that
// name another place, which nothing of the reading follows; nil: none do.
func tail(p *parser, i int) (any, int) {
	to := p.tailEnd(i)
	if to < 0 {
		return nil, -1
	}
	if p.namesPlace(i, to) {
		return p.span(i, to-1), to
	}
	return ins.Span{}, to
}

// namesPlace reports whether a tail names a place of its own, and not a row, the beginning of one or that of chains.
func (p *parser) namesPlace(i, to int) bool {
	names, which := false, p.at(i).Is("between", "behind")
	for k := i; k < to; k++ {
		t := p.at(k)
		if _, row := text.RowWord(t.S); row || t.Is("beg", "beginning", "starting", "turning", "tch", "ring", "joining", "hook", "chain", "color", "colour", "loop", "lp") {
			return false
		}
		names = names || stretches[t.S] || p.thingAt(k)
		which = which || t.Is("next", "each", "every", "first", "last", "middle", "center", "centre")
	}
	return names && which
}

func (p *parser) tailEnd(i int) int {
	t := p.at(i)
	if t.Is("that", "where", "which") && p.at(i+1).Is("you") { // in same st that you worked into last
		j := i + 2
		for j < len(p.t) && p.at(j).Kind != 'p' && p.at(j).Kind != 'g' {
			j++
		}
		return j
	}
	if to := p.beside(i); to >= 0 {
		return to
	}
	if t.Kind != 'w' || !tailWords[t.S] && !t.Is("to") || t.Is("at") && p.at(i+1).Is("same") {
		return -1
	}
	if t.Is("to") {
		return p.leadsTo(i)
	}
	if t.Is("in", "along", "before", "after", "from", "with") && !p.tailOf(i+1) {
		return -1
	}
	j := i + 1
	for j < len(p.t) && !p.endsTail(j) && (j == i+1 || p.at(j-1).Kind != 'n' || p.at(j).Kind != 'n') {
		j++
	}
	if j == i+1 && !t.Is("below", "only", "above", "used", "left", "made") {
		return -1
	}
	return j
}

// beside is where words end that tell a place by another: in next st 2 rows below, in the space before next dc. -1: they
// do not stand at i.
func (p *parser) beside(i int) int {
	t := p.at(i)
	if _, row := text.RowWord(p.at(i + 1).S); row && (t.Kind == 'n' || numerals[t.S] > 0) && p.at(i+2).Is("below", "down", "under", "before") {
		return i + 3
	}
	if t.Is("before", "after") && p.at(i+1).Is("next", "last", "first") {
		_, to := p.named("unit", i+2)
		return to
	}
	return -1
}

// endsTail reports whether a tail ends before the word at j: with a sign or bracket, or where something new is told.
func (p *parser) endsTail(j int) bool {
	k := p.at(j)
	if k.Kind == 'p' || k.Kind == 'g' || k.Is("join") && !p.at(j-1).Is("as", "of", "at", "before", "after", "with", "from", "last") || k.Is("and", "across", "around", "to", "until", "till", "twice", "once", "turn", "then", "ending", "times", "rep", "repeat", "with", "work", "make") {
		return true
	}
	v, to := number(p, j)
	return v != nil && (p.at(to).Is("times", "more", "x") || p.thingAt(to)) && !p.at(j-1).Is("row", "rnd", "round", "of", "ch", "next", "last", "first", "any", "beg", "beginning", "starting", "between")
}

// tailOf reports whether the words from i on name a row or a piece.
func (p *parser) tailOf(i int) bool {
	for k := i; k < i+4; k++ {
		if p.at(k).Is("row", "rnd", "round", "rows", "body", "edge", "hook", "ribbing", "cuff", "previous", "prev", "foundation", "base", "join", "color", "colour", "marker", "round2", "rnds", "side", "needle", "needles") {
			return !p.at(k).Is("side") || !p.at(i).Is("rs", "ws", "right", "wrong")
		}
		if t := p.at(k); t.Kind == 'p' || t.Kind == 'g' || t.Is("and", "next", "each", "last", "same") {
			return false
		}
	}
	return false
}

func (p *parser) thingAt(i int) bool {
	_, to := p.named("kind", i)
	return to >= 0
}

// loops reads BLO, back loop only, through both loops of.
var loops = []form{
	{rule: "loop", pattern: "[in/into/through/working/work/by/inserting] [hook] [in/into/through] (blo/bl/blos/blp [only] | tbl [only] | [unworked/unused/free/remaining/rem/skipped] back loop/loops/lp/lps/thread/half [only] | back only)", meaning: "the back loop", example: "BLO hdc in each st",
		build: func(m *match) any {
			if g, _ := m.p.group(m.to - 1); g != nil { // the text calls something else so
				return nil
			}
			return ins.BackLoop
		}},
	{rule: "loop", pattern: "[in/into/through/working/work/by/inserting] [hook] [in/into/through] (flo/fl/flos/flp [only] | [unworked/unused/free/remaining/rem/skipped] front loop/loops/lp/lps/thread/half [only] | front only)", meaning: "the front loop", example: "sc in FLO of each st around", build: func(m *match) any { return ins.FrontLoop }},
	{rule: "loop", pattern: "unworked/unused/free/remaining/rem loop/loops/lp/lps", meaning: "the loop of a chain that is still free", example: "Row 1: Ch 2, esc in rem lp of each ch across", when: tests{before("of")}, build: func(m *match) any { return ins.BothLoops }},
	{rule: "loop", pattern: "[in/into/through/working/work/by/inserting] [hook] [in/into/through] (back/bottom/third/top/horizontal) (bar/bars/bump/bumps/hump/humps/ridge/ridges) [[created/formed/made/found] below/behind/under [$st/loops] [in/of/on/from] [previous/prev/last] [row/rnd/round]]", meaning: "the back bump of a chain", example: "sl st in back bar of each ch across", build: func(m *match) any { return ins.BothLoops }},
	{rule: "loop", pattern: "[in/into/through/working/work/by/inserting] [hook] [in/into/through] [the] ({o:ord} | back {o:ord}) loop/loops/lp/lps [only]", meaning: "the loop below the front and the back one", example: "hdc in 3rd loop of each st around",
		build: func(m *match) any {
			if value[int](m, "o") != 3 || m.p.at(m.to).Is("from", "made") {
				return nil
			}
			return ins.BothLoops
		}},
	{rule: "loop", pattern: "[in/into/through/working/work/by/inserting] [hook] [in/into/through] (bottom/free/unused loop/loops/lp/lps)", meaning: "the loops along the other side of a chain", example: "2 sc in bottom loop of last ch", build: func(m *match) any { return ins.BothLoops }},
	{rule: "neutral", pattern: "working/work/crochet/crocheting [only] [in/into/through] (blo/bl/flo/fl | back/front loop/loops/lp/lps [only]) of [each/every/all] [of] {u:unit} [{tail}]", meaning: "which loops are worked into", example: "Rnd 3: Working in back loops of sts of Rnd 2, sc in each st around", when: tests{either(has("tail"), before(","))}, build: func(m *match) any {
		m.p.r.loop = ins.BackLoop
		if m.said("flo", "fl", "front") {
			m.p.r.loop = ins.FrontLoop
		}
		return &ins.Nothing{}
	}},
	{rule: "neutral", pattern: "[hereafter/thereafter] picking/pick up [only] back/front loop/loops/lp/lps [only] [of] [each/every] {u:unit} [throughout]", meaning: "which loops are worked into", example: "Row 2: Picking up only the back loop of each sc, sc in each sc across", build: func(m *match) any {
		m.p.r.loop = ins.BackLoop
		if m.said("front") {
			m.p.r.loop = ins.FrontLoop
		}
		return &ins.Nothing{}
	}},
	{rule: "loop", pattern: "[in/into/through/working/taking/under/inserting] [hook] [in/into/through/up/under] both loops/lps/threads", meaning: "both loops", example: "sc in both loops of each st around", build: func(m *match) any { return ins.BothLoops }},
}

// extents are how far something goes.
var extents = []form{
	{rule: "extent", pattern: "across/around/along/evenly [across/around] [row/rnd/round/piece/$edge]", meaning: "to the end of the row", example: "sc around", build: toEnd},
	{rule: "extent", pattern: "throughout [row/rnd/round]", meaning: "to the end of the row", example: "Row 3: Sc throughout", when: tests{inRow}, build: toEnd},
	{rule: "extent", pattern: "alternately/alternating [{e:extent}]", meaning: "to the end of the row", example: "(k1, p1) alternately across",
		build: func(m *match) any {
			if e, ok := m.get("e").(ins.Extent); ok {
				return e
			}
			return toEnd(m)
		}},
	{rule: "extent", pattern: "all around/across/along/over/way/round [around/across/round] [row/rnd/round/edge]", meaning: "to the end of the row", example: "*k2, p2; rep from * all around", build: toEnd},
	{rule: "extent", pattern: "all", meaning: "to the end of the row", example: "Rnd 2: *K2, p2; rep from * all, ending with k2", when: tests{before("ending", "end")}, build: toEnd},
	{rule: "extent", pattern: "all [of/the] but/except [$next/last/final] {n:num} [{u:unit}]", meaning: "to the last n stitches", example: "k all but the last 3 sts", build: toLast},
	{rule: "extent", pattern: "[across/around/along/over/back [row/rnd/round]] {upto} end/ends [of [$row/ch/chain/$st/needle/piece]]", meaning: "to the end of the row", example: "k to end", build: toEnd},
	{rule: "extent", pattern: "[across/around/along] ({upto} | $rem) end", meaning: "to the end of the row", example: "k to end", build: toEnd},
	{rule: "extent", pattern: "[across/around/along/over/for] entire/whole/full/complete [$row/piece/$edge/way/length/work/motif/circle/square/blanket/hat/ring/shawl/bag]", meaning: "to the end of the row", example: "sc across entire row", build: toEnd},
	{rule: "extent", pattern: "across/over/on both/each side/sides", meaning: "to the end of the row", example: "Row 2: P across both sides", when: tests{inRow, no(crochet), endsOr(".")}, build: toEnd},
	{rule: "extent", pattern: "over/on/for/in all [$st]", meaning: "to the end of the row", example: "*k1, p1; rep from * over all sts", build: toEnd},
	{rule: "extent", pattern: "for (rest/remainder/length of row/rnd/round)", meaning: "to the end of the row", example: "*k1, p1; rep from * for rest of row", build: toEnd},
	{rule: "extent", pattern: "until [end] [of] [$row]", meaning: "to the end of the row", example: "Row 3: P1, k2tog until the end of the round", when: tests{said("end")}, build: toEnd},
	{rule: "extent", pattern: "down/along/up/across [other/opposite/second/bottom] [side] [of] [foundation/starting/beginning/beg] $ch [$st]", meaning: "to the end of the row", example: "Row 1: 2 sc in 2nd ch from hook, sc down the chain", when: tests{crochet, endsOrKind("pg")}, build: toEnd},
	{rule: "extent", pattern: "down/along/up/back other/opposite/second side", meaning: "to the end of the row", example: "Rnd 1: Sc in 2nd ch from hook, sc in next 7 ch. 3 sc in last ch. Sc down other side", when: tests{crochet, endsOrKind("pg"), saidBefore("hook")}, build: toEnd},
	{rule: "extent", pattern: "for/on/along each/every/all side/sides/edge/edges/corner/corners", meaning: "to the end of the row", example: "(3 dc in next st, dc in next st) for each side", build: toEnd},
	{rule: "extent", pattern: "without inc/dec/increasing/decreasing/increases/decreases/shaping", meaning: "to the end of the row", example: "Rnd 2: Sc without increasing", build: toEnd},
	{rule: "extent", pattern: "rest/remainder/balance [of] [$row/$st/way]", meaning: "to the end of the row", example: "k rest of row", build: toEnd},
	{rule: "extent", pattern: "[across/around/along/over/back [row/rnd/round]] {upto} [within] last/final/$rem [{n:num}] {u:unit} [$rem/on/of] [$row/needle/left]", meaning: "to the last n stitches", example: "k to last 3 sts", build: toLast},
	{rule: "extent", pattern: "[across/around/along/over/back [row/rnd/round]] {upto} (second/next [-] to [-] last | last but one | penultimate) [$st/{k:kind}]", meaning: "to the last two stitches", example: "Ch 1, sc in each st to the second to last st, 2 sc in next st, sc in last st", build: func(m *match) any {
		return ins.Extent{Kind: ins.ToLast, N: ins.N(2), Unit: ins.Unit{Word: "second"}, At: m.span()}
	}},
	{rule: "extent", pattern: "round/rnd", meaning: "to the end of the row", example: "sc in each st round", when: tests{endsOrKind("pg"), no(after("next", "each", "every", "last", "previous", "prev", "of", "this", "first", "same", "join", "close", "rep", "repeat"))}, build: toEnd},
	{rule: "extent", pattern: "[across/around/along/over/back [row/rnd/round]] {upto} [within] last/final [{n:num}] [$rem]", meaning: "to the last n stitches", example: "k to last 3", build: toLast},
	{rule: "extent", pattern: "[across/around/along/over/back [row/rnd/round]] {upto} [there] [within/are] {n:num} [{u:unit}] [to] [are/is] ($rem/left/remains [on/at] [needle/end] | before/from/of [end/last] [of] [each] [$row/needle/ndl/dpn] | to end)", meaning: "to the last n stitches", example: "sc across until 3 sts rem", build: toLast},
	{rule: "extent", pattern: "[across/around/along/over/back [row/rnd/round]] {upto} within {n:num} {u:unit} [of] [end] [of] [$row]", meaning: "to the last n stitches", example: "k to within 4 sts of end", build: toLast},
	{rule: "extent", pattern: "[across/around/along/over/back [row/rnd/round]] {upto} [only] (last/turning/beg/beginning {n:chaincalled} | tch | t $ch | turning)", meaning: "to the turning chain", example: "dc in each st to turning ch", build: func(m *match) any {
		return ins.Extent{Kind: ins.ToLast, N: ins.N(1), Unit: ins.Unit{Word: "tch"}, At: m.span()}
	}},
	{rule: "extent", pattern: "{upto} [[within] {n:num} $st before/of/from] $center", meaning: "to the middle of the row", example: "Row 2: K to centre, p1, k to end", when: tests{endsOrKind("p"), no(crochet)}, build: func(m *match) any {
		return ins.Extent{Kind: ins.ToMiddle, N: m.num("n", 0), Unit: ins.Unit{Word: "middle"}}
	}},
	{rule: "extent", pattern: "{upto} [[within] {n:num} $st before/of/from] $center ([$st | {k:kind}] of {m:num} {j:kind} [group/grp/corner/increase/inc] | $st)", meaning: "to the stitch in the middle of the row", example: "Row 3: K2, yo, k to centre st, yo, k1, yo, k to last 2 sts, yo, k2", build: func(m *match) any { return ins.Extent{Kind: ins.ToMiddle, N: m.num("n", 0)} }},
	{rule: "extent", pattern: "[across/around/along/over/back [row/rnd/round]] {upto} [there] [are/is] [last] [{n:num}] {u:unit} [$rem/left/remains] (before | from | of | away from) [$next/first/last/$center/marked/each] (marker/m/mk/mkr/markers/marked [$st] | {ord} marker/m)", meaning: "to n stitches before a marker", example: "k to 1 st before marker", build: toMarker},
	{rule: "extent", pattern: "[across/around/along/over/back [row/rnd/round]] {upto} [within] [$next/first/last/$center/marked/end] (marker/m/mk/mkr/markers/marked [$st] | {ord} marker/m)", meaning: "to the next marker", example: "k to marker", build: toMarker},
	{rule: "extent", pattern: "[across/around/along/over/back [row/rnd/round]] {upto} within {n:num} {u:unit} of/from [$next/first/last/$center] (marker/m/markers | [$next] marked $st)", meaning: "to n stitches before a marker", example: "k to within 2 sts of marker", build: toMarker},
	{rule: "extent", pattern: "{upto} [within] [{n:num} {u:unit} before/past/beyond/after/from/of] [last/previous/$next/first] (ds/dss | double/wrapped $st | wrap/wraps | turning point)", meaning: "to where the work was turned", example: "Row 3: K to DS, k DS, k3, turn", when: tests{no(crochet)}, build: func(m *match) any {
		return ins.Extent{Kind: ins.ToUnit, Unit: ins.Unit{Stretch: true, Word: "turn"}, At: m.span()}
	}},
	{rule: "extent", pattern: "across/along side of square/motif/hexagon/block/triangle", meaning: "to the space at the next corner", example: "Rnd 2: Sl st in next sp, ch 5, *2 dc in same sp, dc in each dc across side of square, 2 dc in next sp, ch 2; rep from * 3 times", build: func(m *match) any {
		return ins.Extent{Kind: ins.ToUnit, Unit: ins.Unit{Space: true, Word: "sp"}, At: m.span()}
	}},
	{rule: "extent", pattern: "[across/around/along/over/back [row/rnd/round]] {upto} [$next/first/corner/$center/slipped/marked] {u:unit}", meaning: "to the next such place", example: "dc in each dc to next ch-1 sp",
		build: func(m *match) any {
			u := value[ins.Unit](m, "u")
			if !m.said("next", "following", "first", "corner", "slipped", "center", "centre", "reach", "reaches", "get", "come") && !(u.Space && u.Size.Set()) || u.Any() && u.Word != "corner" {
				return nil
			}
			return ins.Extent{Kind: ins.ToUnit, Unit: u, At: m.span()}
		}},
	{rule: "extent", pattern: "[across/around/along/over/back [row/rnd/round]] {upto} [within] [[last] {n:num} [{u:unit}] before/from/of] {x:ofpart} [needle]", meaning: "to n stitches before a part of the row", example: "Rnd 1: K to 3 sts before instep, k2tog, k1, k across instep, k1, ssk, k to end",
		build: func(m *match) any {
			e := toMarker(m).(ins.Extent)
			if e.Kind = ins.ToMarker; m.said("last") && m.said("of") { // to last 3 sts of instep: where it is, if no marker says
				e.Unit.Word = "part"
			}
			return e
		}},
	{rule: "extent", pattern: "until/till/til [there/you] [are/is/have] {n:num} {u:unit} [are/left/remain/rem] on [right/rh/r] [-] [hand] needle/needles/n/pin [[right] after/following/including/since [last/first] cast/bind/castoff/casting/binding/bo [-] [off] [st]]", meaning: "until n stitches are on the right needle", example: "Row 3: Cast off 6 sts, k until there are 10 sts on right-hand needle, turn",
		build: func(m *match) any {
			part := m.p.line.IsRow() || slices.ContainsFunc(m.p.t, func(t text.Token) bool { return t.Is("off", "turn", "leave", "leaving") }) // of a row
			if !part || m.p.r.crochet || !value[ins.Unit](m, "u").Any() {
				return nil
			}
			return ins.Extent{Kind: ins.ToMade, N: m.num("n", 1), At: m.span()}
		}},
	{rule: "upto", pattern: "to/until/till/unto/til", meaning: "up to", example: "k until last 3 sts", build: yes},
	{rule: "upto", pattern: "(up | all way | right | as far as | down) [to]", meaning: "up to", example: "k up to last 3 sts", build: yes},
	{rule: "upto", pattern: "until/till/til you/one/we/it/needle [have] (reach/reaches/get/gets/come/comes/arrive/arrives/are/meet/hit/encounter/reached/see) [to/at/up] [to]", meaning: "up to", example: "k until you come to the last 3 sts", build: yes},
	{rule: "upto", pattern: "until/till/til (reaching | coming to | there are/is [only/just] | you/we have [only/just] | only/just)", meaning: "up to", example: "p until you have 3 sts left, k3", build: yes},
}

func yes(*match) any { return true }

// partWords are the words that name a part of a garment's stitches.
const partWords = "front back sleeve sleeves body yoke thumb hand palm instep sole heel gusset foot leg hood collar shoulder half side fronts backs pocket strap flap"

var partNames = set(partWords)

// partsAlone are those that stand for their stitches where no stitch is said: knit instep.
var partsAlone = []string{"instep", "heel", "sole", "thumb", "gusset", "palm", "sleeve", "sleeves"}

// ofPart reads the words for the stitches of a part of the row: front, the left sleeve sts, sts of back, all held sts.
func ofPart(p *parser, i int) (any, int) {
	named, j := false, i
	for ; p.at(j).Is("all", "the", "of", "one", "each", "left", "right", "first", "second", "other", "these", "those", "held", "live", "st", "sts", "stitch", "stitches", "upper", "from", "for", "on", "holder", "holders") || partNames[p.at(j).S]; j++ {
		named = named || partNames[p.at(j).S] || p.at(j).Is("held", "live", "holder", "holders")
	}
	if !named || p.at(j-1).Is("the", "of", "from", "for", "on", "all") {
		return nil, -1
	}
	return true, j
}

func toEnd(m *match) any { return ins.Extent{Kind: ins.ToEnd, At: m.span()} }

func toLast(m *match) any {
	u, _ := m.get("u").(ins.Unit)
	if m.p.r.x.Blocks && m.said("block", "blocks", "tile", "tiles", "square", "squares") { // from corner to corner each has one space
		u = ins.Unit{Space: true}
	}
	e := ins.Extent{Kind: ins.ToLast, N: m.num("n", 1), Unit: u, At: m.span()}
	for i := m.from; u.Space && i < m.to; i++ {
		if n, to := sized(m.p, i); to > 0 && !m.said("sps", "spaces", "lps", "loops", "arches") { // to last 2ch sp
			e.N, e.Unit.Size = ins.N(1), n.(ins.Num)
		}
	}
	return e
}

func toMarker(m *match) any {
	e := ins.Extent{Kind: ins.ToMarker, N: m.num("n", 0), At: m.span()}
	if m.p.at(m.to-2).Is("last") || m.p.at(m.to-3).Is("last") && m.p.at(m.to-2).Is("marked") {
		e.Kind = ins.ToLastMarker
	}
	if m.has("u") && !m.has("n") { // to the last st before marker
		e.N = ins.N(1)
	}
	return e
}

// often is how often something is done.
type often struct {
	n     ins.Num
	more  bool // beyond the first time
	total bool // in all
}

var times = []form{
	{rule: "times", pattern: "[for] [a] [total/another] [of] [further] {n:num} [more/further/additional/other] times/time/x/repeats/reps/sets/set [more/further] [in/altogether] [all/total/succession]", meaning: "n times", example: "(sc, inc) 6 times", build: func(m *match) any {
		return often{n: m.num("n", 1), more: m.said("more", "further", "additional", "another"), total: m.said("total", "all", "altogether")}
	}},
	{rule: "times", pattern: "complete/work/do [this/these] {n:num} times", meaning: "n times", example: "Rnd 2: *Ch 2, skip 1 sc, sc in next st* Complete four times", build: func(m *match) any { return often{n: m.num("n", 1)} }},
	{rule: "times", pattern: "x/*/times {n:num} [times]", meaning: "n times", example: "(sc, inc) x 6",
		build: func(m *match) any {
			if star := m.p.at(m.from); star.Is("*") && (!star.Glued && m.p.at(m.to).Kind == 'w' && !m.said("times") || star.Glued && !m.p.at(m.from+1).Glued && m.p.at(m.from+1).Col > star.End) {
				return nil // a star begins, or ends
			}
			return often{n: m.num("n", 1), total: true}
		}},
	{rule: "times", pattern: "once [more/again]", meaning: "once", example: "*k2, p2; rep from * once more", build: func(m *match) any { return often{n: ins.N(1), more: m.said("more")} }},
	{rule: "times", pattern: "twice [more/again]", meaning: "twice", example: "*k2, p2; rep from * twice more", build: func(m *match) any { return often{n: ins.N(2), more: m.said("more")} }},
	{rule: "times", pattern: "thrice [more]", meaning: "three times", example: "*k2, p2; rep from * thrice", build: func(m *match) any { return often{n: ins.N(3), more: m.said("more")} }},
	{rule: "times", pattern: "{n:num} more", meaning: "n times more", example: "*k2, p2; rep from * 3 more", build: func(m *match) any { return often{n: m.num("n", 1), more: true} }},
	{rule: "times", pattern: "[once] [more] on/for/over/across/along ({o:ord} needle/half/side | other/next/opposite needle/half/side | needle/n {n:num} | instep/sole [$st/needle])", meaning: "once more, over the other half of the round", example: "Row 2: *K1, m1, k to last st on needle, m1, k1; rep from * on 2nd needle", when: tests{saidBefore("rep", "repeat")}, build: func(*match) any { return often{n: ins.N(1), more: true} }},
}

// prepositions are the places with the word before them.
var prepositions = []form{
	{rule: "place", pattern: "$center $st", meaning: "the stitch in the middle of the row", example: "Row 3: K to centre st, yo, k centre st, yo, k to end", when: tests{no(crochet)}, build: func(m *match) any {
		if m.from == 0 || !m.p.at(m.from-1).Is("k", "knit", "p", "purl", "sl", "slip", "work", "the") { // k 9 centre sts
			return nil
		}
		return ins.Place{Kind: ins.InNext, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: m.span()}
	}},
	{rule: "place", pattern: "across/over/along {x:ofpart} [{e:extent}]", meaning: "the stitches of a part of the row", example: "k across front sts to next marker",
		build: func(m *match) any {
			e := ins.Extent{Kind: ins.ToMarker}
			if to, ok := m.get("e").(ins.Extent); ok {
				e = to
			}
			e.Part, e.At = true, m.span()
			return ins.Place{Kind: ins.InEach, Extent: e, At: m.span()}
		}},
	{rule: "place", pattern: "[over/along/back] [all/worked/made/placed/done/working/both/each] $in [post/posts/body/stem/back] [of] [{l:loop}] [of] [post] [of] {c:core} [{l:loop}] [only] [for [first/$next/each/a] corner/corners/shell/fan/point]", meaning: "where a stitch is worked", example: "fpdc around post of next dc", build: placed},
	{rule: "place", pattern: "$in top/tops [of] {c:core}", meaning: "where a stitch is worked", example: "dc in top of next dc", build: func(m *match) any {
		if c := value[ins.Place](m, "c"); c.Unit.Chain || c.Unit.Space && c.Kind != ins.InNext || c.Kind == ins.InTop {
			return nil
		}
		return placed(m)
	}},
	{rule: "place", pattern: "[$in] {l:loop} [of] {c:core}", meaning: "where a stitch is worked", example: "sc in BLO of each st across", build: placed},
	{rule: "place", pattern: "each/every/all [of] [$rem] {u:unit} [{tail}] {e:extent}", meaning: "each stitch up to there", example: "sc each st across", build: at(ins.InEach)},
	{rule: "place", pattern: "around [$tch] {n:chaincalled}", meaning: "round the chain with which the round below began", example: "Rnd 2: Ch 3, (fpdc around next st, dc in same st) 11 times, fpdc around ch 3, join", when: tests{crochet, inRow, endsOrKind("pg"), func(m *match) bool {
		return strings.HasPrefix(m.p.at(m.from-1).S, "fp") || strings.HasPrefix(m.p.at(m.from-1).S, "bp")
	}}, build: func(m *match) any {
		pl := top(m).(ins.Place)
		pl.Start = true
		return pl
	}},
	{rule: "place", pattern: "around post [of same]", meaning: "round the post of a stitch further down", example: "Rnd 3: Working in back of flower, *sc around the post, ch 3; rep from * around", when: tests{endsOrKind("p")}, build: func(m *match) any {
		return ins.Place{Kind: ins.InNext, N: ins.N(1), Unit: ins.Unit{Word: "st"}, Far: true, At: m.span()}
	}},
}

func placed(m *match) any {
	pl := value[ins.Place](m, "c")
	if pl.Unit.Chain && m.p.t[m.from].Is("around", "across") && m.p.at(m.to).Kind == 'n' { // sc around ch 1, turn
		return nil
	}
	if m.acrossRow(&pl) {
		if n := m.p.at(m.from - 2); m.p.r.crochet && n.Kind == 'n' && (n.Num.By != nil || n.Num.All > 4) { // 18 dc along the row: so many in all
			return nil
		}
		return ins.Place{Kind: ins.InEach, N: ins.N(1), Extent: ins.Extent{Kind: ins.ToEnd, At: m.span()}, At: m.span()}
	}
	if l, ok := m.get("l").(ins.Loop); ok {
		pl.Loop = l
	} else if (pl.Unit.Space || pl.Kind == ins.InRing) && m.ofStitch() {
		return nil
	}
	pl.At = m.span()
	if m.p.t[m.from].Is("to", "at", "along", "behind") {
		switch {
		case m.p.t[m.from].Is("to") && m.said("before", "from", "of", "within") && m.said("end", "last", "marker", "m", "markers"): // k to 2 sts before end of round
			return nil
		case m.p.t[m.from].Is("to") && pl.Unit.Any() && m.said("center", "centre", "middle", "central"): // k to centre st
			return nil
		case pl.Kind == ins.InEach, pl.Kind == ins.RowEnds, m.p.t[m.from].Is("along") && !(pl.Kind == ins.InNext && pl.Unit.Word == "st" && m.p.at(m.from+1).Kind == 'n'), pl.Kind == ins.InLast && m.p.t[m.from].Is("to"):
			return nil
		case m.p.t[m.from].Is("at") && pl.Unit.Any() && pl.Kind == ins.InLast:
			return nil
		}
	}
	return pl
}

// acrossRow reports whether a place along the ends of rows is the row itself, all of it: p across row, k over next row; of
// knitting each row too.
func (m *match) acrossRow(pl *ins.Place) bool {
	if pl.Kind != ins.RowEnds || !m.p.t[m.from].Is("across", "over", "along", "around") || !m.p.t[m.to-1].Is("row", "rnd", "round") {
		return false
	}
	return !m.said("end", "ends", "edge", "edges", "side", "sides", "of") && (m.p.r.knits || !m.said("each", "every", "all"))
}

// ofStitch reports whether the loops named are those of a stitch, and no loop of chains: in back loops only.
func (m *match) ofStitch() bool {
	for i := m.from; i+1 < m.to; i++ {
		if m.p.t[i].Is("back", "front") && m.p.t[i+1].Is("loop", "loops", "lp", "lps") {
			return true
		}
	}
	return false
}

// spots are the places of one stitch, in their order.
type spots struct {
	list  []ins.Place
	also  []*ins.Stitch
	count ins.Counting
}

// places reads into what a stitch is worked: in next 3 sts and in each st across.
func places(p *parser, i int) (any, int) {
	v, to := p.named("place", i)
	if to < 0 {
		v, to = p.shortPlace(i)
	}
	if to < 0 {
		return nil, -1
	}
	s := spots{list: []ins.Place{v.(ins.Place)}}
	for {
		to = s.remarked(p, to)
		j := to
		comma := p.at(j).Is(",")
		if comma {
			j++
		}
		if !p.at(j).Is("and", "then", "plus") && !(p.at(j).Is("/") && s.last().Kind == ins.InEach) { // each st/ch-sp
			return s, to
		}
		j++
		if next := s.chainsToo(p, j); next >= 0 {
			return s, next
		}
		pl, next := s.further(p, j)
		if next < 0 || pl.Kind == ins.InNext && p.at(j).Kind == 'n' && p.at(next).Is("in", "into") {
			return p.alsoOver(s, j, to)
		}
		if comma && p.at(j).Kind == 'n' {
			return s, to
		}
		pl.At = p.span(j, next-1)
		s.add(pl)
		to = next
	}
}

// shortPlace reads a place whose first word is left out: 2 hdc next st, sc 2nd ch from hook, 2 dc each of next 2.
func (p *parser) shortPlace(i int) (any, int) {
	t := p.at(i)
	if !p.r.crochet || !p.line.IsRow() || !t.Is("next", "last", "first", "same", "each") && t.Ord == 0 {
		return nil, -1
	}
	v, to := p.named("core", i)
	if to < 0 || t.Ord > 1 && v.(ins.Place).Kind != ins.FromHook {
		return nil, -1
	}
	pl := v.(ins.Place)
	if next := p.at(to); to < len(p.t) && next.Kind != 'p' && next.Kind != 'g' && !isStar(next) && !next.Is("then") && !(next.Is("and") && !p.at(to+1).Is("last", "in", "into")) || pl.Kind == ins.InEach {
		return nil, -1
	}
	pl.At = p.span(i, to-1)
	return pl, to
}

// remarked takes a remark on the chains that are missed, behind a place from the hook.
func (s *spots) remarked(p *parser, to int) int {
	if s.last().Kind == ins.FromHook && p.at(to).Kind == 'g' {
		if c, ok := p.remark(p.at(to)); ok {
			s.count = c
			return to + 1
		}
	}
	return to
}

func (s *spots) last() *ins.Place { return &s.list[len(s.list)-1] }

// further reads a place at j, behind 'and': its first word may be left out, as in 'in next st and last st'.
func (s *spots) further(p *parser, j int) (ins.Place, int) {
	if w, next := p.named("place", j); next >= 0 {
		return w.(ins.Place), next
	}
	if pl, next := s.spaceToo(p, j); next >= 0 {
		return pl, next
	}
	t := p.at(j)
	if !(t.Kind == 'n' && p.kindOrUnit(j+1)) && (t.Ord > 0 || t.Kind == 'n' || t.Is("each", "every", "next", "last", "first", "same", "all", "remaining", "rem", "following", "foll", "final", "top", "turning", "tch") || s.last().Kind == ins.FromHook && t.Is("across", "around")) { // in 2nd ch from hook and across
		if w, next := p.named("core", j); next >= 0 {
			return w.(ins.Place), next
		}
	}
	if t.Is("to", "till", "until", "across", "around", "along") && s.last().Kind != ins.InEach { // in first st and to end
		if e, next := p.named("extent", j); next >= 0 {
			return ins.Place{Kind: ins.InEach, N: ins.N(1), Unit: ins.Unit{Word: "st"}, Extent: e.(ins.Extent)}, next
		}
	}
	return ins.Place{}, -1
}

// spaceToo reads a space or chains behind the stitches that are told before it, or stitches behind spaces: in each dc and ch-1 sp
// around; in next 2 dc and ch-2 sp; in each sp and dc to end.
func (s *spots) spaceToo(p *parser, j int) (ins.Place, int) {
	each := s.last().Kind == ins.InEach && s.last().Extent.Kind == ins.NoExtent
	next := s.last().Kind == ins.InNext && !s.last().Unit.Space && p.at(j).Is("ch", "chain")
	w, to := p.named("core", j)
	if to < 0 || !each && !next {
		return ins.Place{}, -1
	}
	pl := w.(ins.Place)
	switch {
	case each && (eachToo(pl, p, j, to) || s.last().Unit.Space && stitchToo(pl, p, j, to)):
		pl.Kind = ins.InEach
		return pl, to
	case next && pl.Unit.Space:
		return pl, to
	}
	return ins.Place{}, -1
}

// eachToo reports whether a place behind 'in each st and', from j to next, is one more kind of which each is meant: a space
// or a chain.
func eachToo(pl ins.Place, p *parser, j, next int) bool {
	if pl.Kind == ins.InEach {
		return pl.Unit.Space || pl.Unit.Chain
	}
	return pl.Kind == ins.InNext && (pl.Unit.Chain && next == j+1 || pl.Unit.Space && pl.N.By == nil && pl.N.All == 1) &&
		(next == len(p.t) || p.at(next).Kind == 'p' || p.at(next).Is("join", "turn", "and"))
}

// stitchToo reports whether a stitch behind 'in each space and', from j to next, is one more kind of which each is meant: in each ch-1
// sp and dc to corner.
func stitchToo(pl ins.Place, p *parser, j, next int) bool {
	if pl.Unit.Stitch == nil && !pl.Unit.Any() {
		return false
	}
	return pl.Kind == ins.InEach && pl.Extent.Kind != ins.NoExtent || pl.Kind == ins.InNext && next == j+1 && (next == len(p.t) || p.at(next).Kind == 'p')
}

// chainsToo takes the stitches behind 'every ch and': 1 dc in every ch and tr is one in each of both. It gives where
// they end, -1 if there are none.
func (s *spots) chainsToo(p *parser, j int) int {
	last := s.last()
	if last.Kind != ins.InEach || !last.Unit.Chain || last.Extent.Kind != ins.NoExtent {
		return -1
	}
	w, next := p.named("core", j)
	if next < 0 || next < len(p.t) && p.at(next).Kind != 'p' {
		return -1
	}
	if pl := w.(ins.Place); pl.Kind != ins.InNext || pl.Unit.Stitch == nil || pl.N.All != 1 {
		return -1
	}
	last.Unit = ins.Unit{Word: "st"}
	return next
}

// add puts a place behind the others; one more kind of place over the same stretch goes beside the last.
func (s *spots) add(pl ins.Place) {
	last := s.last()
	if pl.Kind == ins.InEach && last.Kind == ins.InEach && last.Extent.Kind == ins.NoExtent && !last.Of && !sameUnit(last.Unit, pl.Unit) {
		last.Extent = pl.Extent
		s.also = append(s.also, &ins.Stitch{Places: []ins.Place{pl}}) // the stitch itself, by the builder
		return
	}
	s.list = append(s.list, pl)
}

func sameUnit(a, b ins.Unit) bool {
	return a.Stitch == b.Stitch && a.Chain == b.Chain && a.Space == b.Space && a.Group == b.Group
}

// kindOrUnit reports whether a stitch stands at i, so that a number before it begins an instruction.
func (p *parser) kindOrUnit(i int) bool {
	k, to := p.named("kind", i)
	if to < 0 {
		return false
	}
	if t := k.(thing); t.Kind != nil && t.Kind.ID == "ch" {
		return false
	}
	return p.at(to).Is("in", "into", "over", "across", "around")
}

// alsoOver reads 'each st and 2 sc in each ch-2 sp': other stitches over the same stretch.
func (p *parser) alsoOver(s spots, j, to int) (any, int) {
	last := &s.list[len(s.list)-1]
	if last.Kind != ins.InEach || last.Extent.Kind != ins.NoExtent {
		return s, to
	}
	v, next := p.named("stitch", j)
	m, ok := v.(*ins.Stitch)
	if next < 0 || !ok || len(m.Places) != 1 || m.Places[0].Kind != ins.InEach {
		return s, to
	}
	s.also = append(s.also, m)
	last.Extent = m.Places[0].Extent
	return s, next
}
