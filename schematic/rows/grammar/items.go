package grammar

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// fromHeld works all stitches that were put onto a cable needle last: knit the sts from the cable needle.
func fromHeld(m *match) any {
	for i := m.from - 1; i >= 0; i-- {
		if !m.p.t[i].Is("slip", "sl", "place", "put") {
			continue
		}
		for k := i + 1; k < min(i+4, m.from); k++ {
			if n := m.p.t[k]; n.Kind == 'n' && n.Num.By == nil {
				return &ins.Stitch{Kind: value[thing](m, "k").Kind, N: n.Num}
			}
		}
		return nil
	}
	return nil
}

// stitches are the forms that make stitches, and those between them.
var stitches = []form{
	{rule: "stitch", pattern: "[$make] {k:kind} [$in] [each] [of] [$next/all/last/first/$rem] {n:num} [$st] (of/from/on/along/around) ([first/second/right/left/other/new/previous/next/{ord}] $limb [one/two/{num}]) [{tail}]", meaning: "stitches of another piece", example: "Rnd 11: Sc in each of next 12 sts of first leg, ch 3, sc in 12 sts of second leg", build: pickUpKind},
	{rule: "stitch", pattern: "[$make] [{n:num}] {k:kind} [{n:num}] in/into/on/along/across/over [each] [of] [$next/these/other/opposite/back/front] [side/sides] [of] [connecting/joining] [{n:num}] $ch", meaning: "stitches along the chain between two pieces", example: "Rnd 11: Sc in 12 sts of first leg, sc in next 2 ch, sc in 12 sts of second leg, sc in other side of 2 ch", when: tests{behindLimb}, build: pickUpKind},
	{rule: "stitch", pattern: "[$make] [{l:loop}] [another] [{n:num}] [more/extra] {k:kind} [{l2:loop} [of]] {p:places} [{t:times}]", meaning: "n of a stitch in each place", example: "2 dc in next st", build: stitchIn},
	{rule: "stitch", pattern: "[$make] {n:num} {l:loop} {k:kind} [{p:places}]", meaning: "n of a stitch in one of the loops", example: "15 BLO sc", build: func(m *match) any {
		if m.has("p") {
			return stitchIn(m)
		}
		return stitchBare(m)
	}},
	{rule: "stitch", pattern: "[$make] [{n:num}] {k:kind} ([{num} {w:row}] below/down [[in/into] $next [{u:unit}]] | in/into below {u:unit})", meaning: "the stitch in a row further down", example: "Row 3: Ch 1, sc in first sc, *sc below, sc in next 3 sc; rep from * to end", when: tests{crochet}, build: func(m *match) any {
		s := stitchOf(m)
		if s.Kind == nil || s.Kind.Craft != stitch.Crochet || s.Kind.ID == "ch" || m.num("n", 1).By != nil || m.num("n", 1).All != 1 {
			return nil
		}
		s.Places = []ins.Place{{Kind: ins.InNext, N: ins.N(1), Unit: ins.Unit{Word: "st"}, Loop: ins.LowerDown, At: m.span()}}
		return s
	}},
	{rule: "stitch", pattern: "[$make] {k:kind} {l:loop} {n:num} [more] {p:places}", meaning: "n of a stitch in one of the loops", example: "sc tbl 2 in next st", build: stitchIn},
	{rule: "stitch", pattern: "[$make] {n:num} {k:kind} (group/groups/grp/shell/shells/fan/fans/petal) {p:places}", meaning: "n of a stitch in one place", example: "5 dc group in next st", build: stitchIn},
	{rule: "stitch", pattern: "(pick/pull/draw) up loop/loops/lp/lps {p:places}", meaning: "loops of Tunisian crochet", example: "Row 1: Pick up a loop in 2nd ch from hook and in each ch to last ch, tss in last ch", build: takenLoops},
	{rule: "stitch", pattern: "insert hook {p:places} [,] [yo/yoh/yrh] [,] [and] (draw/pull) [up/through] loop/lp [up/through]", meaning: "loops of Tunisian crochet", example: "Foundation row: Insert hook in 2nd ch from hook, yo, draw up a loop, tss in each ch across", build: takenLoops},
	{rule: "neutral", pattern: "[working/work] last {k:kind} (through/under/around) {x:stretch}", meaning: "what the last one is worked into", example: "Row 1: Tss in each st across, working last Tss through outer 2 strands at the end"},
	{rule: "stitch", pattern: "[$make] {k:kind} twice {p:places}", meaning: "two of a stitch in each place", example: "hdc twice in each st around", build: func(m *match) any {
		st, ok := stitchIn(m).(*ins.Stitch)
		if !ok {
			return nil
		}
		st.N = ins.N(2)
		return st
	}},
	{rule: "stitch", pattern: "[$make] {k:kind} {n:num} [more] times {p:places}", meaning: "n of a stitch in each place", example: "dc in 4th ch from hook, dc 3 more times in same ch", build: stitchIn},
	{rule: "stitch", pattern: "[$make] [{l:loop}] {k:kind} {n:num} {p:places} [{t:times}]", meaning: "n of a stitch in each place", example: "sc 2 in next st", build: stitchIn},
	{rule: "stitch", pattern: "inc/increase/incs/increases [{num}] [$st] (by | by means of) (working/making/placing/crocheting/putting/work/make) [{n:num}] {k:kind} {p:places}", meaning: "n of a stitch in each place", example: "inc by working 2 sc in next st", build: stitchIn},
	{rule: "stitch", pattern: "inc/increase {num} {k:kind} by {j:kind} {n:num} [$st] in [one/same/each] {u:unit} [,] [{e:extent}]", meaning: "n of a stitch in each place", example: "Rnd 2: Inc 1 sc by sc 2 stitches in each sc around", build: func(m *match) any {
		s := stitchOf(m)
		kind := ins.InNext
		if m.said("each") || m.has("e") {
			kind = ins.InEach
		}
		s.Places = []ins.Place{place(kind, m)}
		s.Places[0].N = ins.N(1)
		return s
	}},
	{rule: "stitch", pattern: "inc/increase [{n:num}] [$st] [in] every/each other/alternate/second {u:unit} [{e:extent}]", meaning: "every second stitch", example: "Rnd 4: Inc in every other st", build: func(m *match) any {
		if !m.p.line.IsRow() || value[ins.Unit](m, "u").Row || !one("n")(m) {
			return nil
		}
		return &ins.Stitch{Inc: true, N: ins.N(1), Places: []ins.Place{{Kind: ins.InEach, N: ins.N(2), Unit: ins.Unit{Word: "st"}, At: m.span()}}}
	}},
	{rule: "stitch", pattern: "[$make] {n:num} {k:kind} [$st] [,] (with ($ch {c:num} | {c:num} $ch) between [each/them] [$st/{u:unit}] | separated by ($ch {c:num} | {c:num} $ch)) [,] {p:places}", meaning: "stitches with chains between two, in one place", example: "Rnd 3: *2 dc with ch 2 between in next loop, ch 2; rep from * around", when: tests{crochet}, build: chainsBetween},
	{rule: "stitch", pattern: "{n:num} $colour {k:kind} [{p:places}]", meaning: "n of a stitch in a yarn", example: "Rnd 2: 3 blue sc, 3 white sc, repeat around", build: func(m *match) any {
		s := stitchOf(m)
		if m.has("p") {
			s, _ = stitchIn(m).(*ins.Stitch)
		}
		if s == nil || s.Kind == nil || !m.p.r.crochet {
			return nil
		}
		s.Colour = strings.ToUpper(m.p.t[m.from+1].S)
		return s
	}},
	{rule: "stitch", pattern: "(knitting/purling) (last {n:num} [$st] | last $st | {n:num} [$st] at end [of] [$row])", meaning: "the stitches with which a row ends", example: "Row 2: Knit 2, over, narrow; repeat, knitting last 2 stitches", when: tests{inRow}, build: func(m *match) any {
		return &ins.Stitch{Kind: stitch.ByID(knitOr(m.p.t[m.from].Is("purling"))), N: m.num("n", 1)}
	}},
	{rule: "stitch", pattern: "[$make] {n:num} {k:kind} [in] [each] [of] $next/first/last {m:num} [{u:unit}]", meaning: "n of a stitch in each place", example: "2 hdc next 3 sts", build: func(m *match) any {
		s := stitchOf(m)
		if s.Kind == nil || s.Kind.Craft != stitch.Crochet || s.Kind.ID == "ch" || !m.p.line.IsRow() {
			return nil
		}
		kind := ins.InNext
		if m.said("last") {
			kind = ins.InLast
		}
		s.Places = []ins.Place{{Kind: kind, N: m.num("m", 1), Unit: value[ins.Unit](m, "u"), At: m.span()}}
		return s
	}},
	{rule: "stitch", pattern: "[$make] {k:kind} once {p:places}", meaning: "one of a stitch in each place", example: "inc once in each of next 2 sts", build: stitchIn},
	{rule: "stitch", pattern: "[$make] {n:num} x {k:kind} [{p:places}]", meaning: "n of a stitch in each place", example: "2 x dc3tog in next ch-2 sp", build: stitchIn},
	{rule: "stitch", pattern: "[$make] {k:kind} x {n:num} {p:places}", meaning: "n of a stitch in each place", example: "sc x 4 in last ch", build: stitchIn},
	{rule: "stitch", pattern: "[$make] [{l:loop}] [{n:num}] {k:kind} [{l2:loop}] {e:extent}", meaning: "the stitch in each place up to there", example: "sc around", build: stitchTo},
	{rule: "stitch", pattern: "[$make] [in [patt/pattern/est/established]] {k:kind} {x:ofpart}", meaning: "the stitches of a part of the row", example: "Rnd 1: K to last 3 heel sts, k2tog, k1, knit instep, k1, ssk, k to end", build: func(m *match) any {
		s := stitchOf(m)
		if s.Inc || s.Dec || !m.said(partsAlone...) && !m.said("st", "sts", "stitch", "stitches") || m.p.at(m.to).Is("and", "&", "edge", "edges", "side", "of", "in", "over", "until", "to", "for") {
			return nil
		}
		s.Places = []ins.Place{{Kind: ins.InEach, N: ins.N(1), Unit: ins.Unit{Word: "st"}, Extent: ins.Extent{Kind: ins.ToMarker, Part: true, At: m.span()}, At: m.span()}}
		return s
	}},
	{rule: "stitch", pattern: "[$make] {k:kind} [every/each/all] [$st] {e:extent}", meaning: "the stitch in each place up to there", example: "knit every stitch to end", build: stitchTo},
	{rule: "stitch", pattern: "[$make] [{l:loop}] [{n:num}] {k:kind} [{l2:loop}] [{t:times}]", meaning: "the stitch, n times", example: "sc2tog", build: stitchBare},
	{rule: "stitch", pattern: "[$make] [{l:loop}] {k:kind} [$next/last/first/$rem] {n:num} [$st] [{l2:loop}] [{t:times}]", meaning: "the stitch in n places", example: "k3", build: stitchBare},
	{rule: "stitch", pattern: "[$make] {k:kind} [$next/last/first/$center] {n:num} {u:unit} [{t:times} | all round/around]", meaning: "the stitch in n places", example: "knit next 5 sts", build: stitchBare},
	{rule: "stitch", pattern: "{k:kind} across/over [of] [$next/$center/last/first/$rem/these/those/live/instep/heel/sole] {n:num} [instep/heel/sole/back/front/toe/new/remaining/rem] $st [of/on/from {tail}]", meaning: "the stitch in n places", example: "Row 3: K20, knit across the centre 13 sts, k27", build: func(m *match) any {
		s, ok := stitchBare(m).(*ins.Stitch)
		if !ok || s.Kind == nil || s.Kind.Craft != stitch.Knitting {
			return nil
		}
		return s
	}},
	{rule: "stitch", pattern: "[$make] [{n:num}] {k:kind} $next/first/last/same {u:unit} [{l2:loop}]", meaning: "the stitch in the next place", example: "k next st", build: stitchNext},
	{rule: "stitch", pattern: "[$make] {n:num} {k:kind} every/each $st/{c:kind}", meaning: "n of a stitch in each place", example: "Rnd 2: 2 sc each st", build: func(m *match) any {
		s := stitchOf(m)
		if s.Kind == nil || s.Kind.Craft != stitch.Crochet || s.Kind.ID == "ch" || !m.p.line.IsRow() {
			return nil
		}
		s.Places = []ins.Place{{Kind: ins.InEach, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: m.span()}}
		return s
	}},
	{rule: "stitch", pattern: "[$make] {k:kind} all/every/each [of] [$rem] [$st] [{l2:loop}]", meaning: "the stitch in each place", example: "k all sts", build: stitchTo},
	{rule: "stitch", pattern: "[is/are] [and] ([worked/made/work/crocheted/knitted] [again] [once] [more] [entirely/all/wholly/only] in | consist/consists [entirely/only] of) {k:kind} [$st] [{e:extent}]", meaning: "the stitch in each place", example: "Row 2: Work entirely in sc", when: tests{inRow, either(said("is", "are", "consist", "consists", "entirely", "all", "wholly", "only"), opens), endsOr(".", ",", ";", "like", "as", "throughout", "worked")}, build: stitchTo},
	{rule: "stitch", pattern: "[$make] {k:kind} $rem [$st/{n:num}] [of] [$row]", meaning: "the stitch in each place that is left", example: "purl remaining sts", build: stitchTo},
	{rule: "stitch", pattern: "[$make] [{n:num}] {k:kind} evenly (across | spaced | around) [{e:extent}]", meaning: "the stitch in each place", example: "sc evenly around", build: stitchTo},
	{rule: "stitch", pattern: "(k/knit/p/purl/inc/increase) [{n:num}] [$st] {fab} [of] ([each/every/all] [of] $next/first/last/$rem {k:num} [$st] | each/every/all {every:unit} [{e:extent}] | [same/$next/first/last] [{u:unit}] [{e:extent}]) [{t:times}] [to/for increase/inc]", meaning: "front and back of one stitch", example: "k into front and back of next st", build: frontAndBack},
	{rule: "fab", pattern: "[in/into/through] [both] (front/back [loop/leg/strand] [and/then/&/plus/,] [then/also] [in/into/through] [front/back] [loop/leg/strand/loops] | fb | f and/& b | f / b)", meaning: "front and back", example: "p into front and then into back of next st", when: tests{either(no(said("front", "back")), all(said("front"), said("back")))}, build: yes},
	{rule: "stitch", pattern: "[(in place of | instead of) these/those/them] [(k/knit/p/purl/rib/patt/work) [across/over]] {n:num} [held] $st (of/from/on/for) [first/second/left/right/one/other] [pocket] (lining/linings) [holder]", meaning: "the stitches of a pocket lining are taken in", example: "Row 2: K5, place next 20 sts on holder, k across 20 sts of pocket lining, k to end", when: tests{inRow}, build: heldStitches},
	{rule: "stitch", pattern: "[(in place of | instead of) these/those/them] [(k/knit/p/purl/rib/patt/work) [across/over]] {n:num} ([first/second/left/right/held] [pocket] lining $st | (from/of) [first/second/left/right] [pocket] lining)", meaning: "the stitches of a pocket lining are taken in", example: "Row 2: K5, place next 20 sts on holder, k 20 pocket lining sts, k to end", when: tests{inRow}, build: heldStitches},
	{rule: "stitch", pattern: "(k/knit/p/purl/work/patt) [across/over] [held] {n:num} [held/live] [first/second/left/right] (instep/sleeve) $st [on/from holder]", meaning: "held stitches are taken in", example: "Rnd 2: K10, pick up and k 16 sts along heel flap, k32 instep sts, pick up and k 16 sts along heel flap, k to end", build: partJoined},
	{rule: "stitch", pattern: "[$make] [one/{num} [-] row] [{n:num} [-] $st] [one/{num} [-] row] buttonhole [(over $next {n:num} [$st])]", meaning: "a buttonhole in one row, with as many stitches over it as under it", example: "Row 2: K4, work 3-st buttonhole, k to end", when: tests{inRow, has("n")}, build: func(m *match) any { return &ins.Stitch{Kind: stitch.ByID("k"), N: m.num("n", 0)} }},
	{rule: "stitch", pattern: "knit/k {n:num} [$st] [,] [and] purl/p {m:num} [$st] [,] [rib/ribbing] {e:extent}", meaning: "a rib", example: "Row 1: K1, p1 to end", build: ribTo("k", "p")},
	{rule: "stitch", pattern: "(knit/k {n:num} [,] purl/p {m:num} | purl/p {n:num} [,] knit/k {m:num})", meaning: "the two stretches of a rib, repeatedly", example: "Row 1: K2, p2", when: tests{inRow, opensOr("and"), endsOrKind("g"), no(crochet)}, build: func(m *match) any {
		first, second := "k", "p"
		if m.p.t[m.from].Is("p", "purl") {
			first, second = second, first
		}
		if n, k := m.num("n", 0), m.num("m", 0); m.p.depth > 0 || n.By != nil || k.By != nil || n.All > 4 || k.All > 4 {
			return nil
		}
		return ribRow(m, first, second)
	}},
	{rule: "stitch", pattern: "purl/p {n:num} [$st] [,] [and] knit/k {m:num} [$st] [,] [rib/ribbing] {e:extent}", meaning: "a rib", example: "Row 2: P2, k2 to last 2 sts, p2", build: ribTo("p", "k")},
	{rule: "stitch", pattern: "(k/knit/p/purl) [in/into/through] {l:legs} [of] [$next/same/first/last] {u:unit}", meaning: "as many stitches in one as it is worked in front and in back", example: "Row 3: K2, k into front, back and front of next st, k to end", build: func(m *match) any {
		id := knitOr(m.p.t[m.from].Is("p", "purl"))
		r := &ins.Repeat{Times: ins.N(1), Stop: -1, Places: []ins.Place{{Kind: ins.InNext, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: m.span()}}}
		for i := m.from; i < m.to; i++ {
			if m.p.at(i).Is("front", "back") {
				r.Body = append(r.Body, &ins.Stitch{Placed: ins.Placed{At: m.p.span(i, i)}, Kind: stitch.ByID(id), N: ins.N(1)})
			}
		}
		if len(r.Body) < 3 {
			return nil
		}
		return r
	}},
	{rule: "legs", pattern: "front/back [loop/leg] [,] [and/then/&] [in/into/through] ({l:legs} | front/back [loop/leg] [again])", meaning: "the legs of a stitch one after another", example: "k into front, back and front of next st", build: yes},
	{rule: "stitch", pattern: "kf/k1f/pf/p1f &/+/and b [in/into] [$next/same] [{u:unit}] [{e:extent}] [{t:times}]", meaning: "front and back of one stitch", example: "kf&b in next st", build: frontAndBack},
	{rule: "stitch", pattern: "(knit/k/purl/p) [$next/last/first/these/those] {n:num} [$st] together/tog [{l2:loop}] [{e:extent}] [{t:times}]", meaning: "n stitches together", example: "knit next 2 sts together", build: together},
	{rule: "stitch", pattern: "[$make] [{x:num} -] [$next/first/last] {n:num} {k:kind} together/tog [dec/decrease/decs/decreases] [{p:places} | over/across [$next] {m:num} [$st]] [{t:times}]", meaning: "n stitches together", example: "work 2 dc tog", build: crochetTogether},
	{rule: "stitch", pattern: "[$make] {k:kind} [$next/first/last] {n:num} [{u:unit}] together/tog [{t:times}]", meaning: "n stitches together", example: "dc next 2 sts tog", build: crochetTogether},
	{rule: "stitch", pattern: "(knit/k/purl/p) [$next] every/each {n:num} [$st] together/tog [{e:extent}]", meaning: "n stitches together, repeated", example: "Row 2: Knit every 2 together", build: func(m *match) any {
		s, ok := together(m).(*ins.Stitch)
		if ok && len(s.Places) == 0 {
			s.Places = []ins.Place{{Kind: ins.InEach, N: ins.N(1), Unit: ins.Unit{Word: "st"}, Extent: ins.Extent{Kind: ins.ToEnd}}}
		}
		return s
	}},
	{rule: "stitch", pattern: "(knit/k/purl/p) (every/each {o:ord} and {q:ord} [$st] together/tog | together/tog every/each {o:ord} and {q:ord} [$st]) [{e:extent}]", meaning: "two together in every n stitches", example: "Row 2: Knit every 7th and 8th st together", build: func(m *match) any {
		o, q := value[int](m, "o"), value[int](m, "q")
		if q != o+1 || o < 2 {
			return nil
		}
		id := knitOr(m.p.t[m.from].Is("p", "purl"))
		body := []ins.Item{&ins.Stitch{Kind: stitch.ByID(id), N: ins.N(o - 1)}, &ins.Stitch{Kind: stitch.ByID(id + "2tog"), N: ins.N(1)}}
		return &ins.Repeat{Body: body, Until: ins.Extent{Kind: ins.ToEnd, At: m.span()}, Stop: -1, Cut: true}
	}},
	{rule: "stitch", pattern: "twist/cross/twisting/crossing/cable [over] $next [k] {n:num} [$st] [as (on/for/in/before) [{x:stretch}]]", meaning: "n stitches as they come", example: "Row 3: P2, twist next 8 sts, p to end", build: func(m *match) any { return &ins.Stitch{N: m.num("n", 1)} }},
	{rule: "stitch", pattern: "(k/knit {a:num} [,] [and] p/purl {b:num} | p/purl {a:num} [,] [and] k/knit {b:num}) [,] {t:times}", meaning: "a rib, n times", example: "Row 3: K1, p1 five times, k to end", build: func(m *match) any {
		if t := value[often](m, "t"); m.p.r.crochet || !m.p.line.IsRow() || t.more || m.from > 1 && m.p.at(m.from-1).Is(",") && m.p.at(m.from-2).Kind == 'n' {
			return nil
		}
		first, second := "k", "p"
		if m.p.t[m.from].Is("p", "purl") {
			first, second = second, first
		}
		return &ins.Repeat{Body: []ins.Item{&ins.Stitch{Kind: stitch.ByID(first), N: m.num("a", 1)}, &ins.Stitch{Kind: stitch.ByID(second), N: m.num("b", 1)}}, Times: value[often](m, "t").n, Stop: -1}
	}},
	{rule: "stitch", pattern: "yo/yfwd/yrn/yon [,] {k:kind} [,] {t:times}", meaning: "an eyelet, n times", example: "Row 3: K3, yo, k2tog 5 times, k to end", build: func(m *match) any {
		k := value[thing](m, "k").Kind
		if k == nil || k.Craft != stitch.Knitting || k.Uses != 2 || k.Makes != 1 || value[often](m, "t").more {
			return nil
		}
		return &ins.Repeat{Body: []ins.Item{&ins.Stitch{Kind: stitch.ByID("yo"), N: ins.N(1)}, &ins.Stitch{Kind: k, N: ins.N(1)}}, Times: value[often](m, "t").n, Stop: -1}
	}},
	{rule: "stitch", pattern: "drop/dropping [$next/first/last] [{n:num}] $st [off/from/down] [left/right] [hand] [needle] [and (unravel/ravel/let {x:stretch})]", meaning: "stitches dropped off the needle", example: "Row 3: K5, drop next st off needle, k to end", when: tests{inRow, no(crochet), either(has("n"), said("next", "first", "last", "st", "stitch"))}, build: func(m *match) any { return &ins.BindOff{N: m.num("n", 1), Drop: true} }},
	{rule: "stitch", pattern: "(slip/sl [1/one] [$st]) [,] (slip/sl [1/one] [$st]) [,] [and] (k/knit/p/purl) [[these/both/those] [2] [slipped] [$st] together/tog [tbl | in/through back loop/loops]]", meaning: "a decrease", example: "Row 3: K2, slip, slip, knit, k to end", build: slipSlip},
	{rule: "stitch", pattern: "[$make] (k/knit {a:num} [,] [and] p/purl {b:num} | p/purl {a:num} [,] [and] k/knit {b:num}) rib/ribbing [over/across/for/on] [$next/first/last] {n:num} $st", meaning: "n stitches as they come", example: "Row 3: K1, p1 rib 7 sts, k to end", when: tests{inRow}, build: func(m *match) any { return &ins.Stitch{N: m.num("n", 1)} }},
	{rule: "stitch", pattern: "(rib/ribbing/patt | work [across] [all] [in] [rib/ribbing/patt/pattern] ) [$st] (as set/established/before/est | in rib/patt/pattern as set/established/before/est)", meaning: "as the stitches come", example: "Row 3: Rib as set", when: tests{inRow, endsOrKind("g", ".", ";")}, build: stitchTo},
	{rule: "stitch", pattern: "(knit/k/purl/p) off {n:num} [$st] [on/from/of {tail}]", meaning: "the stitch in n places", example: "Row 2: Knit off 18 stitches on right-hand needle, knit 20", build: func(m *match) any {
		k, _ := m.p.r.thing([]byte(m.p.t[m.from].S))
		return &ins.Stitch{Kind: k.Kind, N: m.num("n", 1)}
	}},
	{rule: "stitch", pattern: "(work/knit/k/purl/p across/over/back [$next/first/last/these/those/$rem] | work $next/first/last/these/those/$rem) {n:num} [$st]", meaning: "n stitches as they come", example: "Row 2: Work across 38 sts, turn", when: tests{no(before("of", "for", "from", "on", "in", "only", "until", "row", "rows")), said("st", "sts", "stitch", "stitches")}, build: func(m *match) any {
		s := &ins.Stitch{N: m.num("n", 1)}
		if !m.p.t[m.from].Is("work") {
			k, _ := m.p.r.thing([]byte(m.p.t[m.from].S))
			s.Kind = k.Kind
		}
		return s
	}},
	{rule: "stitch", pattern: "slip/sl [1/one] [$st] , narrow [,] [and] (bind | bind off | pass [slipped] [$st] over [{tail}] | throw [slipped] [$st] over [{tail}])", meaning: "a double decrease", example: "Row 2: *Slip, narrow and bind, knit 3; rep from * to end", build: func(m *match) any { return &ins.Stitch{Kind: stitch.ByID("sk2p"), N: ins.N(1)} }},
	{rule: "stitch", pattern: "knit/k/work/make/purl/p/pick/raise [up] [and] [knit/k/purl/p] [1/one] [$st] [in/into/from/through] [back/front] [of] horizontal/running/connecting/cross/crossing [loop/bar/thread/strand/yarn] (between/before/preceding/lying [between/before]) [$next/last] [2/two] [$st/needles] [(and | just) {tail}]", meaning: "one stitch made", example: "Row 2: K1, knit a st in the horizontal loop preceding next st, k to end", build: func(m *match) any { return &ins.Stitch{Kind: stitch.ByID("m1"), N: ins.N(1)} }},
	{rule: "stitch", pattern: "[$make] row/rnd/round of {k:kind} [closely] [together] [{e:extent} | {p:places}]", meaning: "the stitch in each place", example: "Row 2: Work a row of sc", build: func(m *match) any {
		if m.has("p") {
			return stitchIn(m)
		}
		return stitchTo(m)
	}},
	{rule: "stitch", pattern: "(fasten/fastened/fastening/catch/caught/catching/secure/secured) [back/down/off] [with/by] [a] [{k:kind}] {p:places} [[to form/make | forming/making] picot/loop]", meaning: "it is caught there", example: "Rnd 2: *Ch 6, fasten in next sp; rep from * around", when: tests{crochet, no(said("off"))}, build: func(m *match) any {
		s := &ins.Stitch{Kind: stitch.ByID("slst"), N: ins.N(1), Places: value[spots](m, "p").list}
		if k, ok := m.get("k").(thing); ok && k.Kind != nil {
			s.Kind = k.Kind
		}
		return s
	}},
	{rule: "stitch", pattern: "(k/knit/p/purl) [across] [all] $st (on/of/from) [each/both/all] needle/needles [once]", meaning: "one plain round", example: "Knit across the sts on each needle once", build: func(m *match) any { return m.inAll(stitch.ByID(knitOr(m.said("p", "purl")))) }},
	{rule: "stitch", pattern: "(yb/ybk/ybd/ybwd/ytb | yarn back) [,] slip/sl/s [$next] {n:num} [$st] [purlwise/pwise/pw/p | p wise] [,] (yf/yfd/yfwd/fwd/ytf | yarn (forward/fwd/front))", meaning: "stitches slipped before the yarn", example: "Row 4: *P1, yb, sl 1 purlwise, yfwd; rep from * to end", when: tests{no(crochet)}, build: func(m *match) any { return &ins.Stitch{Kind: stitch.ByID("slwyib"), N: m.num("n", 1)} }},
	{rule: "stitch", pattern: "yf/yfwd/yfd/yft [,] slip/sl/s [$next] {n:num} [$st] [purlwise/pwise/pw/p | p wise] [,] (ybk/yb/ybd/ybwd/ytb | yarn back)", meaning: "stitches slipped behind the yarn", example: "Row 3: *K1, yfwd, sl 1 purlwise, ybk; rep from * to end", when: tests{no(crochet)}, build: func(m *match) any { return &ins.Stitch{Kind: stitch.ByID("slwyif"), N: m.num("n", 1)} }},
	{rule: "stitch", pattern: "sl {n:num} k", meaning: "stitches slipped knitwise and knitted together", example: "Row 1: K2, *sl2k, k14, k2tog; rep from * to end", when: tests{knitting, endsOr(",")}, build: func(m *match) any {
		n := m.num("n", 0)
		switch {
		case n.By != nil || n.All != 2 || !m.p.t[m.to-1].Glued:
			return nil
		case lineSays("pass", "psso", "sso", "over", "po")(m):
			return &ins.Stitch{Kind: stitch.ByID("sl"), N: n}
		}
		return &ins.Stitch{Kind: stitch.ByID("ssk"), N: ins.N(1)}
	}},
	{rule: "stitch", pattern: "(slip/sl/s) [$next] [{n:num}] [{u:unit}] [together/tog] [as [if] to purl/knit/p/k/k2tog/p2tog [{x:num}] [together/tog] | purlwise/knitwise/pwise/kwise | p/k wise | wyib/wyif | with yarn in [front/back] | one by one] [wyib/wyif] [to/onto right/left [hand] needle]", meaning: "stitches slipped", example: "sl 1 purlwise", when: tests{no(crochet), no(all(oneWord, beforeStranger))}, build: func(m *match) any {
		u, _ := m.get("u").(ins.Unit)
		if m.has("u") && !u.Any() {
			return nil
		}
		return &ins.Stitch{Kind: slipKind(m), N: m.num("n", 1)}
	}},
	{rule: "stitch", pattern: "(slip/sl/place/move/transfer/put) [the] [$next/first] ({n:num} [$st] | $st) (on to | to/on/onto) [a] [$spare/cn/c | d p] [$spare] [needle/cn/n/pin] [,] [and/&] [hold/holding/held/leave/leaving/keep/bring/drop/dropped/place/put] [at/in/to] [the] [front/back/rear/behind] [of work]", meaning: "stitches held, to be crossed later", example: "slip next 2 sts to cable needle and hold in front", when: tests{no(said("holder", "thread", "yarn")), either(said("cable", "cn", "dpn", "spare", "extra", "d", "dp"), said("hold", "drop"))}, build: func(m *match) any {
		w, where := &ins.Nothing{Front: m.said("front")}, m.said("front", "back", "rear", "behind")
		n := m.num("n", 1)
		if !where && (n.At(0) > mostCrossed && !m.said("hold") || m.p.at(m.to-1).Is("hold") && m.p.at(m.to-2).Is("on")) { // a sleeve's stitches wait
			return nil
		}
		if n.By == nil && where {
			w.Wait = n.All
		}
		return w
	}},
	{rule: "stitch", pattern: "{k:kind} {n:num} [$st] (from | off [of]) [the] [left/lh] [$spare | d p] [$spare] needle/cn/dpn/n/cable", meaning: "the held stitches", example: "k2 from cable needle", build: stitchBare},
	{rule: "whole", pattern: "(k/knit/p/purl) {n:num} [$st] (of/from) [first/second/other/left/right] (leg/arm/sleeve/thumb/ear/foot/wing/side/piece/half) [{num}]", meaning: "held stitches of another piece are taken up", example: "Joining row (WS): P6, cast on 1 st, p6 from leg 1", build: heldStitches},
	{rule: "stitch", pattern: "{k:kind} {n:num} [$st] from c n", meaning: "the held stitches", example: "k2 from c n", build: stitchBare},
	{rule: "stitch", pattern: "{k:kind} [all/both] [these/those/held/slipped] [$st/them] from [cable/spare/dpn/extra] needle/cn/dpn", meaning: "the held stitches", example: "Row 3: K2, slip next 3 sts to cable needle and hold in front, k3, knit stitches from cable needle, k to end", build: fromHeld},
	{rule: "stitch", pattern: "work/working/cont/continue/patt/pattern/pat/rib/keep/keeping/moss/seed [working] [{x:asset}] {e:extent}", meaning: "as the stitches come, up to there", example: "Row 2: K2, work in pattern to last 4 sts, k2tog, k2",
		build: func(m *match) any {
			if e := value[ins.Extent](m, "e"); !m.p.line.IsRow() && e.Kind == ins.ToEnd && !(m.p.at(m.from-1).Is("and", ",") && m.p.r.knits && slices.ContainsFunc(m.p.t[:m.from], func(t text.Token) bool { return t.Is("off", "k", "knit", "p", "purl") })) || m.p.r.crochet && !m.has("x") && !(m.p.t[m.from].Is("work") && m.p.line.IsRow() && (e.Kind == ins.ToLast || e.Kind == ins.ToMarker || e.Kind == ins.ToMiddle)) || m.p.at(m.to).Is("is", "measures", "of") {
				return nil
			}
			return stitchTo(m)
		}},
	{rule: "stitch", pattern: "work/working/cont/continue/patt/pattern/rib [working] [over/across/on] [$next/last/first/center/centre] {n:num} [$st] {x:asset}", meaning: "n stitches as they come", example: "Row 3: K6, work 26 sts in rib as set, k6", when: tests{inRow, no(before("until", "for"))}, build: func(m *match) any { return &ins.Stitch{N: m.num("n", 1)} }},
	{rule: "stitch", pattern: "work/working ribbing/rib/pattern/patt/moss/seed [st/stitch] (over/across/on/for) [$next/last/first/center/centre] {n:num} $st", meaning: "n stitches as they come", example: "Row 3: Work ribbing for 7 sts, k2tog, k to end", when: tests{inRow}, build: func(m *match) any { return &ins.Stitch{N: m.num("n", 1)} }},
	{rule: "stitch", pattern: "work/working/cont/continue [working] {x:asset} (over/across/on/for) [$next/last/first/center/centre] {n:num} $st", meaning: "n stitches as they come", example: "Row 3: K6, work in pattern over next 26 sts, k6", when: tests{inRow}, build: func(m *match) any { return &ins.Stitch{N: m.num("n", 1)} }},
	{rule: "stitch", pattern: "work/knit/cont/continue across/over/along [row/rnd/round] {x:asset} {e:extent}", meaning: "as the stitches come", example: "Row 3: K2, ssk, work across row in pattern to last 4 sts, k2tog, k2", when: tests{inRow}, build: stitchTo},
	{rule: "stitch", pattern: "work/cont/continue (across/over/along | to end of) row/rnd/round {x:asset}", meaning: "as the stitches come", example: "Row 3: K2, ssk, work across row in pattern as established", when: tests{inRow, no(opens)}, build: stitchTo},
	{rule: "stitch", pattern: "slip/sl [{num}] [,] [and] k/knit [{num}] [,] and pass", meaning: "slip, knit, pass over", example: "Row 2: K2, * k 2 tog, k 1, slip, k and pass *, k to end", when: tests{no(before("slipped", "sl", "slip", "over", "the", "it", "first", "st", "stitch")), no(beforeKind("n"))}, build: func(m *match) any { return &ins.Stitch{Kind: stitch.ByID("skpo"), N: ins.N(1)} }},
	{rule: "stitch", pattern: "[and] finish/finishing [row/rnd/round] {x:asset}", meaning: "as the stitches come, to the end", example: "Row 2: *K1, yo, k2tog; rep from * to last 10 sts, finish in seed stitch", when: tests{inRow, no(opens)}, build: stitchTo},
	{rule: "stitch", pattern: "(work/knit | cont working) [all/each/every/$rem] [$rem/other] [$st] (as | in manner/way [that/in which]) [it/they/you] (presents/present/appear/appears/face/faces/come/comes/lie/look/see/are/is) [them/it] [{e:extent}]", meaning: "each stitch as it comes", example: "Row 2: K3, work each stitch in the manner it presents, k3", when: tests{inRow, said("it", "they", "you")}, build: stitchTo},
	{rule: "stitch", pattern: "(k/knit [over/across] [all/every/each] k/knit/knits/ks/knitted [$st] [across] [,/;] [and] [then] p/purl [over/across] [all/every/each] p/purl/purls/ps/purled [$st] | p/purl [over/across] [all/every/each] p/purl/purls/ps/purled [$st] [across] [,/;] [and] [then] k/knit [over/across] [all/every/each] k/knit/knits/ks/knitted [$st] | (k/knit and p/purl | p/purl and k/knit) [all/each/every] [$st]) [as [it/they/you] (presents/present/appear/appears/face/faces/come/comes/lie/look/see/are/is/set) [you/them/it]] [{e:extent}]", meaning: "each stitch as it comes", example: "Row 2: Knit the knit sts and purl the purl sts", build: func(m *match) any {
		if !m.p.line.IsRow() || m.said("and") && !m.said("as") && m.to-m.from < 4 {
			return nil
		}
		return stitchTo(m)
	}},
	{rule: "stitch", pattern: "(k/knit [over/across] [all/every/each] [of] p/purl/purls/purled [$st] [across] [,/;] [and] [then] p/purl [over/across] [all/every/each] [of] k/knit/knits/knitted [$st] | p/purl [over/across] [all/every/each] [of] k/knit/knits/knitted [$st] [across] [,/;] [and] [then] k/knit [over/across] [all/every/each] [of] p/purl/purls/purled [$st]) [as (they/it) {x:stretch}] [{e:extent}]", meaning: "each stitch as it does not come", example: "Row 2: Knit the purl sts and purl the knit sts", when: tests{inRow, said("st", "sts", "stitch", "stitches", "knits", "purls")}, build: func(m *match) any {
		s := m.inAll(nil)
		s.Chart = true
		if e, ok := m.get("e").(ins.Extent); ok {
			s.Places[0].Extent = e
		}
		return s
	}},
	{rule: "stitch", pattern: "(k/knit/p/purl [all/every/each] [of] ({c:colour} $st | $st [worked] in {c:colour} | knit/knitted/worked/purl/purled/$rem/other/others/rest [$st]) [,/;] [and] sl/slip [all/every/each] [of] ({s:colour} $st | $st [worked] in {s:colour} | slipped/sl/slip [$st]) [purlwise/pwise] [wyif/wyib | with yarn in front/back | with yarn to the front/back] | sl/slip [all/every/each] [of] ({s:colour} $st | $st [worked] in {s:colour} | slipped/sl/slip [$st]) [purlwise/pwise] [wyif/wyib | with yarn in front/back | with yarn to the front/back] [,/;] [and] k/knit/p/purl [all/every/each] [of] ({c:colour} $st | $st [worked] in {c:colour} | knit/knitted/worked/purl/purled/$rem/other/others/rest [$st]))", meaning: "each stitch worked or slipped again", example: "Row 4: Knit all B sts, sl all A sts wyif", when: tests{inRow}, build: func(m *match) any {
		s := m.inAll(nil)
		s.Again = &ins.Again{Slip: slipKind(m), Work: stitch.ByID(map[bool]string{false: "k", true: "p"}[m.said("p", "purl")])}
		for i, slips := m.from, false; m.has("s") && i < m.to && s.Again.Yarn == ""; i++ {
			if _, to := m.p.named("colour", i); slips && to >= 0 {
				s.Again.Yarn = m.p.t[i].S
			}
			slips = slips || m.p.t[i].Is("sl", "slip")
		}
		return s
	}},
	{rule: "stitch", pattern: "(k/knit/p/purl) first [{n:num}] [$st] and last {m:num} [$st] [,] [and] (k/knit/p/purl) [all/every] $rem/rest/others/other [$st]", meaning: "the stitches at both ends, and those between them", example: "Row 2: Knit first 3 and last 3 sts, purl all remaining sts", build: endsAndRest},
	{rule: "asset", pattern: "[even/straight] [,] (as set/established/before/est/usual | in/keeping/following [pattern/patt/est/established/set/same/main/body/ribbing/rib/moss/seed/lace/cable/garter/chart/charted/colour/color/stripe/back/border] pattern/patt/pat/rib/ribbing/patterns [$st] | {y:incloth} | in {c:cloth}) [as set/established/before/est] [even/straight]", meaning: "in the pattern that the rows before set", example: "Row 2: K2, work in established pattern to last 2 sts, k2", build: yes},
	{rule: "stitch", pattern: "work/pattern/patt [$next/first/last/center/centre/middle/$rem] {n:num} [$st] [on needle] [in patt/pattern]", meaning: "n stitches as they come", example: "Next row: Work 22 sts, turn",
		build: func(m *match) any {
			bare := !m.said("st", "sts", "stitches", "pattern", "patt") && !(m.has("n") && m.p.at(m.to).Is(",") && m.p.at(m.to+1).Is("turn"))
			if patt := m.p.t[m.from].Is("patt") && m.from == 0 && m.p.at(m.to).Is(","); !m.p.line.IsRow() && !patt || bare || m.p.at(m.to).Is("in", "on", "at", "for", "even", "of") {
				return nil
			}
			return &ins.Stitch{N: m.num("n", 1)}
		}},
	{rule: "stitch", pattern: "[work/working/rib/ribbing] [in] (k/knit {a:num} [and/,] p/purl {b:num} | p/purl {a:num} [and/,] k/knit {b:num}) [rib/ribbing] (for/over/on/across) [$next/first/last] {n:num} [$st]", meaning: "n stitches as they come", example: "Row 3: Rib in k1 and p1 for 20 sts, k to end", when: tests{either(inRow, said("st", "sts", "stitches")), no(before("row", "rows", "rnd", "rnds", "inch", "inches", "in", "ins", "cm"))}, build: func(m *match) any { return &ins.Stitch{N: m.num("n", 1)} }},
	{rule: "stitch", pattern: "[work] [$rem/last/next/first] {n:num} $st [of/in] (rib/ribbing/moss/seed/garter/patt/pattern | {y:cloth}) [$st/rib]", meaning: "n stitches as they come", example: "Row 3: 25 sts of ribbing, k1, 9 sts in pattern, k to end", when: tests{inRow, endsOrKind("g", ",", ".", ";")}, build: func(m *match) any { return &ins.Stitch{N: m.num("n", 1)} }},
	{rule: "stitch", pattern: "rib/moss/patt/patts [$next] {n:num} [$st]", meaning: "n stitches as they come", example: "Row 8: Rib 17, inc in next st, rib to end",
		build: func(m *match) any {
			if t := m.p.at(m.to); !m.p.line.IsRow() || t.Is("row", "rows", "rnd", "rnds", "round", "rounds", "more", "times") || measuring[t.S] {
				return nil
			}
			return &ins.Stitch{N: m.num("n", 1)}
		}},
	{rule: "stitch", pattern: "[take/knit/work/k] {n:num} together/tog [{t:times} | {e:extent}]", meaning: "n stitches together", example: "Row 3: Knit 7, 2 together, knit 3", build: func(m *match) any {
		if last := m.p.at(m.from - 1); last.Kind == 'n' || last.Kind == 'w' && !last.Is("then", "and") {
			return nil
		}
		k, ok := m.p.r.thing(fmt.Appendf(nil, "k%dtog", m.num("n", 2).All))
		if !ok {
			return nil
		}
		s := &ins.Stitch{Kind: k.Kind, N: ins.N(1)}
		if t, ok := m.get("t").(often); ok {
			s.N = t.n
		}
		if e, ok := m.get("e").(ins.Extent); ok {
			s.Places = []ins.Place{{Kind: ins.InEach, N: ins.N(1), Unit: ins.Unit{Word: "st"}, Extent: e}}
		}
		return s
	}},
	{rule: "stitch", pattern: "put/putting/turn/turning/pass/passing/throw/throwing/take/taking/wind/winding/bring/bringing wool/yarn/thread/cotton/silk [{t:times}] over/round/around/about [right/left/hand] needle/pin [{t:times}] [to increase | to make 1 | to make one]", meaning: "a yarn over", example: "Row 1: *K1, put the wool over the needle to increase; rep from * to end", build: yarnOver},
	{rule: "stitch", pattern: "(thread/cotton/wool/silk forward | forward | bring forward) [{t:times}]", meaning: "a yarn over", example: "Row 1: Knit 2, forward, knit 2 together", build: func(m *match) any {
		if m.p.r.crochet || m.p.at(m.to).Kind == 'w' && !m.p.thingAt(m.to) || m.p.at(m.from-1).Is("yarn", "to") {
			return nil
		}
		return yarnOver(m)
	}},
	{rule: "stitch", pattern: "dec/decrease [{n:num}] [$st] over $next {m:num} {u:unit}", meaning: "stitches worked together", example: "dec over next 2 sts", build: func(m *match) any {
		return &ins.Stitch{Dec: true, N: ins.N(1), Places: []ins.Place{{Kind: ins.InNext, N: m.num("m", 2), Unit: value[ins.Unit](m, "u")}}}
	}},
	{rule: "stitch", pattern: "inc/increase {n:num} [$st] in/into first/last $st", meaning: "one increase here", example: "Row 2: Inc 1 st in first st, k to end", when: tests{inRow, no(crochet), one("n")}, build: func(*match) any { return &ins.Stitch{Inc: true, N: ins.N(1)} }},
	{rule: "stitch", pattern: "(k/knit/p/purl) and inc/increase in/into (this/that/same [$st] | it)", meaning: "an increase in a stitch that is worked", example: "Row 2: Knit and increase into this st, k to end", when: tests{no(crochet)}, build: func(*match) any { return &ins.Stitch{Inc: true, N: ins.N(1)} }},
	{rule: "stitch", pattern: "[(k/knit/p/purl) [,]] inc/increase/increasing [{n:num} [$st]] [in] each/every $st [across/around] [row/round]", meaning: "an increase in each stitch", example: "Row 2: K, inc in each st across", when: tests{no(crochet), one("n")}, build: func(m *match) any { s := m.inAll(nil); s.Inc = true; return s }},
	{rule: "stitch", pattern: "k/knit/p/purl [all/across] [,]", meaning: "the stitch between what else the row tells", example: "Row 2: Knit, kfb in every other st", when: tests{inRow, no(crochet), opens}, build: func(m *match) any {
		if next := m.p.at(m.to); !m.p.at(m.to-1).Is(",") || !next.Is("inc", "increase", "increasing", "dec", "decrease", "decreasing", "kfb", "pfb") || !m.p.at(m.to+1).Is("in") && !m.p.at(m.to+3).Is("in") && !m.p.at(m.to+2).Is("in") || !slices.ContainsFunc(m.p.t[m.to:], func(t text.Token) bool { return t.Is("each", "every") }) {
			return nil
		}
		return &ins.Nothing{}
	}},
	{rule: "stitch", pattern: "inc/increase {n:num} [$st] in/into each of [$next/first/last] {m:num} [$st]", meaning: "an increase in each of the next stitches", example: "Row 3: K5, inc 1 st in each of next 2 sts, k to end", when: tests{one("n")}, build: func(m *match) any { return &ins.Stitch{Inc: true, N: m.num("m", 1)} }},
	{rule: "stitch", pattern: "inc/increase/dec/decrease {n:num} [$st] [in/into] [$next/same] [{u:unit}]", meaning: "one increase or decrease here", example: "inc 1 in next st",
		build: func(m *match) any {
			t := m.p.at(m.to)
			if u, _ := m.get("u").(ins.Unit); u.Row || m.p.at(m.to-1).Is("in", "into") { // inc 3 sts in row
				return nil
			}
			if t.Is("at", "each", "every", "on", "evenly", "in", "across", "both", "of", "times", "x", ",") && !m.has("u") || t.Is("times") {
				return nil
			}
			inc, n := m.p.t[m.from].Is("inc", "increase"), ins.N(1)
			if !m.p.r.crochet && m.said("in", "into") && !one("n")(m) { // two more in one stitch
				return nil
			}
			if !m.has("u") && !m.said("next", "following", "foll", "same") { // sc 3, inc 2
				n = m.num("n", 1)
			}
			return &ins.Stitch{Inc: inc, Dec: !inc, N: n}
		}},

	{rule: "stitch", pattern: "inc/increase/increasing [{n:num}] [$st | {k:kind}] in last ($st | {u:unit})", meaning: "an increase in the last stitch", example: "Row 2: Sc in each sc across, increasing 1 sc in last sc", when: tests{crochet, one("n")}, build: func(m *match) any {
		return &ins.Stitch{Inc: true, N: ins.N(1), Places: []ins.Place{{Kind: ins.InLast, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: m.span()}}}
	}},
	{rule: "stitch", pattern: "inc/increase/increasing/dec/decrease/decreasing [{n:num}] [$st | {k:kind}] [in] every/each {o:ord} {u:unit} [{tail}]", meaning: "an increase or decrease in every nth stitch", example: "Rnd 2: Ch 3, work in dc, inc 1 dc in every 6th dc", when: tests{crochet}, build: func(m *match) any {
		if n := m.num("n", 1); n.By != nil || n.All != 1 {
			return nil
		}
		inc, every := m.said("inc", "increase", "increasing"), place(ins.InEach, m)
		every.N = ins.N(value[int](m, "o"))
		return &ins.Stitch{Inc: inc, Dec: !inc, N: ins.N(1), Places: []ins.Place{every}}
	}},
	{rule: "stitch", pattern: "make/made {n:num} [$st]", meaning: "n stitches made", example: "Row 3: Slip 1, knit 2, make 2, knit 2 together, k to end", when: tests{no(crochet), inRow, endsOrKind("p")}, build: func(m *match) any { return &ins.Stitch{Kind: stitch.ByID("m1"), N: m.num("n", 1)} }},
	{rule: "stitch", pattern: "inc/increase/dec/decrease [{n:num} | once] [$st] by {h:byhow}", meaning: "one increase or decrease here, and how it is made", example: "Row 3: K1, inc 1 by knitting into front and back of next st, k to end",
		build: func(m *match) any {
			inc := m.p.t[m.from].Is("inc", "increase")
			if !one("n")(m) || m.p.at(m.from+1).Is("by") && m.p.at(m.from+2).Kind == 'n' {
				return nil
			}
			if inc && value[bool](m, "h") {
				return &ins.Stitch{Kind: stitch.ByID("m1"), N: ins.N(1)}
			}
			return &ins.Stitch{Inc: inc, Dec: !inc, N: ins.N(1)}
		}},

	{rule: "chain", pattern: "[but/and/then] [$make] [{t:turning}] $ch [another/further] {n:num} [more] [$st] [{c:counting}] [{w:chainfor} | from (base/bottom/top/side) of {y:stretch}]", meaning: "n chains", example: "ch 3", build: chain},
	{rule: "chain", pattern: "[$make] $ch {n:num} [,/.] [then/and] [$make] $ch {m:num} more/extra", meaning: "n chains", example: "ch 31, ch 1 more", build: func(m *match) any { return &ins.Chain{N: m.num("n", 1).Plus(m.num("m", 1).All)} }},
	{rule: "chain", pattern: "[$make] {n:num} [turning/loose/more] $ch [$st] [{c:counting}] [{w:chainfor} | from (base/bottom/top/side) of {y:stretch} | from/at {tail}]", meaning: "n chains", example: "21 ch", build: chain},
	{rule: "chain", pattern: "[$beg/begin/commence/commencing] [at/in/from] [{x:startplace}] [,] (with/by) [$make] [foundation/starting] ($ch/chaining [of] {n:num} [$st/$ch] | {n:num} $ch [$st])", meaning: "n chains", example: "start with a chain of 20 sts", when: tests{firstWord("beg", "beginning", "start", "starting", "begin", "commence", "commencing")}, build: chain},
	{rule: "chain", pattern: "[start/begin] [by] [$make] $ch/chaining {n:num} [$st] [,] (plus/+) {m:num} [more/extra] [$ch] [(for/to/as) [the] (turn/turning/height) [$ch] | turning $ch]", meaning: "n chains", example: "Ch 20 + 1 for turning", when: tests{either(no(has("m")), noWordBut("for", "turn", "turning"))}, build: func(m *match) any { return &ins.Chain{N: m.num("n", 1).Plus(m.num("m", 1).All)} }},
	{rule: "startplace", pattern: "[$center/bottom/top/lower/back/front/side/toe/heel/upper/left/right/outer/inner/middle] [{w:edgename}] [of] [sole/heel/toe/crown/hat/back/front/body/sleeve/motif/square/cuff/yoke/neck/bag/piece/base/brim/edge/side/$center]", meaning: "where a piece begins", example: "start at the center of the sole with a chain of 16", build: yes},
	{rule: "chain", pattern: "[$make] [foundation/starting] $ch of {n:num} [$st/$ch]", meaning: "n chains", example: "make a chain of 20 sts", build: chain},
	{rule: "chain", pattern: "[$make] [{n:num}] (t ch | tch | turning ch) [of {n:num}] [ch]", meaning: "the turning chain", example: "1 tch", build: func(m *match) any {
		if !m.has("n") {
			return &ins.Nothing{}
		}
		return chain(m)
	}},
	{rule: "chain", pattern: "ch", meaning: "one chain", example: "dc, ch, dc in next st", build: chain},
	{rule: "chain", pattern: "foundation/starting $ch [:] [$ch] {n:num} [$st]", meaning: "n chains", example: "foundation chain: ch 20", build: chain},
	{rule: "neutral", pattern: "[$make] $ch of {n:num} [$st] per/to yard/inch/metre/meter {x:sentence}", meaning: "a chain of any length that fits", example: "Make a chain of 720 sts per yard, or 30 for each pattern"},
	{rule: "neutral", pattern: "[foundation/starting/beginning/base] [$make] $ch [:] [in/any] [a] multiple/multiples of {n:num} [$st/$ch] [[,] (+/plus/and/,) [an] [additional/extra] {m:num}] [extra/more/additional] [$st/$ch] [for turning [ch]]", meaning: "a chain of any length that fits", example: "Chain a multiple of 4 + 3 extra chains"},
	{rule: "chainfor", pattern: "(for/to/as) ([first] {k:kind} | turn [each/every row] | turning [ch] | height | count as [first] {k:kind} | [first] {k:kind} of [next] row | foundation [ch/row] | base | begin | start | stand for [first] {k:kind} | $beg)", meaning: "what a chain is for", example: "ch 3 for first dc",
		build: func(m *match) any {
			if k, ok := m.get("k").(thing); ok && k.Kind != nil {
				return ins.Counting{How: ins.CountsAsStitch, As: k.Kind}
			}
			return ins.Counting{}
		}},
	{rule: "turning", pattern: "turning", meaning: "the chain at a turn", example: "turning ch 3", build: yes},
	{rule: "counting", pattern: "[,] [to begin/start $row and] [here/now/this/always/which/that/to/and/we/it/i] [not/does/do/will/should/doesn't/don't/won't/never/doesnt/dont/wont/no] [not] counts/count/counted/counting/stands/stand/regard/regarded/treat/treated/consider/considered/equals/equal/= [here/now] [and throughout] [as/for/to] [your/my/the] [one/first/1st/beg/beginning] [{one:num}] [open] [mesh/space/square] [{k:kind}] [$st] [of/for/in this/each/every row/rnd/round] [here/throughout/on all rows] [(and/plus/+/,) [the] [first] [{n:num}] $ch [{s:num}] [$sp]] [throughout/here]", meaning: "what a chain counts as", example: "ch 3 counts as first dc",
		build: func(m *match) any {
			c := ins.Counting{How: ins.CountsAsStitch, Mesh: m.said("mesh", "space", "square")}
			if m.said(nots...) {
				c.How = ins.CountsNot
			}
			if k, ok := m.get("k").(thing); ok {
				c.As = k.Kind
			}
			if one, ok := m.get("one").(ins.Num); ok && one.All > 1 {
				if c.As == nil || c.As.Key != "cluster" { // counts as 2 dc, one of which is worked
					return ins.Counting{}
				}
				c.As = c.As.Of(one.All, c.As.Base)
			}
			if m.said("and", "plus", "+", ",") && (m.has("n") || m.has("s")) {
				c.Space = m.num("s", 0)
				if !m.has("s") {
					c.Space = m.num("n", 1)
				}
			}
			return c
		}},

	{rule: "skip", pattern: "sk/skip/miss [{n:num}] $ch [just] made", meaning: "the chain just made is no stitch", example: "ch 1, sk ch just made, sl st in each st across", build: func(m *match) any {
		if m.from == 0 || m.p.at(m.from-1).Is(",") && m.p.at(m.from-2).Is("more") { // ch 31, ch 1 more, sk ch just made
			return &ins.Skip{Places: []ins.Place{{Kind: ins.InFirst, N: m.num("n", 1), Unit: ins.Unit{Chain: true, Word: "made"}, At: m.span()}}}
		}
		return &ins.Nothing{}
	}},
	{rule: "skip", pattern: "sk/skip/miss (turning/beg/beginning $ch | tch | t $ch)", meaning: "the turning chain is no stitch", example: "sc in each sc across, skip turning ch, turn"},
	{rule: "skip", pattern: "($beg [with/from] | from) [in/into/at] {c:core} [onwards/on]", meaning: "the chains before it are skipped", example: "Row 1: Starting in 2nd ch from hook, sc in each ch across",
		build: func(m *match) any {
			c := value[ins.Place](m, "c")
			if c.Kind != ins.FromHook || c.N.All < 2 || !m.p.at(m.to).Is(",", ":", "work") && !m.p.thingAt(m.to) && m.p.at(m.to).Kind != 'n' {
				return nil
			}
			c.At = m.span()
			return &ins.Skip{Places: []ins.Place{c}}
		}},
	{rule: "skip", pattern: "sk/skip/miss/skipping/missing (same/base $st | $st at/in base/bottom of [$tch/same/that/this] ($ch [{num}] | {num} $ch))", meaning: "the stitch from which the chain goes up", example: "Sl st over first 4 sts, ch 3, skip st at base of ch, dc in each st to end", build: func(m *match) any {
		return &ins.Skip{Places: []ins.Place{{Kind: ins.InSame, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: m.span()}}}
	}},
	{rule: "skip", pattern: "sk/skip/miss/skipping/missing/pass/omit/s/skp [over] [$next] {u:unit} [{tail}] [{x:skipmore}]", meaning: "a stitch is skipped", example: "skip next st", build: skip(ins.InNext)},
	{rule: "skip", pattern: "sk/skip/miss/skipping/missing/pass/omit [over] [$next/$center] [{n:num}] {u:unit} [{tail}] [{x:skipmore}]", meaning: "stitches are skipped", example: "skip next 2 sts", build: skip(ins.InNext)},
	{rule: "skip", pattern: "sk/skip/miss/skipping/missing/pass/omit first [{n:num}] {u:unit} [{tail}] [{x:skipmore}]", meaning: "the first stitches are skipped", example: "skip first st", build: skip(ins.InFirst)},
	{rule: "skip", pattern: "(without working in/into/on | not working in/into/on | leaving) first [{n:num}] {u:unit} [unworked/free]", meaning: "the first stitches are skipped", example: "Row 1: Ch 3, without working into the first st, dc in each st across", build: skip(ins.InFirst)},
	{rule: "skip", pattern: "sk/skip/miss/skipping/missing/omit/omitting last [{n:num}] {u:unit} [{tail}]", meaning: "the last stitches are skipped", example: "skip last st", build: skip(ins.InLast)},
	{rule: "skip", pattern: "sk/skip/miss/skipping/missing/omit [$next] {n:num}", meaning: "stitches are skipped", example: "sk 2", build: skip(ins.InNext)},
	{rule: "skip", pattern: "sk/skip/miss/skipping/missing/pass under [the] [latter/these/them/this] {n:num} [{u:unit}] [{tail}]", meaning: "stitches are skipped", example: "Row 2: *1 sc in next st, ch 5, miss under the latter 3 stitches of the preceding row; rep from * to end", build: skip(ins.InNext)},
	{rule: "skip", pattern: "count/counting {n:num} $st over/across/along [from {x:stretch}]", meaning: "stitches are skipped", example: "Count 2 sts over from the neck and attach yarn to next st", build: skip(ins.InNext)},
	{rule: "skip", pattern: "sk/skip/miss/skipping/missing/pass [$next] {n:num} [{u:unit}] (under/beneath/below [it/them/these/this])", meaning: "stitches are skipped", example: "Row 2: *1 sc in next st, ch 2, miss 2 under them; rep from * to end", build: skip(ins.InNext)},
	{rule: "skip", pattern: "sk/skip/miss/skipping/missing none/nothing [{tail}]", meaning: "none is skipped", example: "Row 2: *1 sc in next st, ch 2, miss none; rep from * to end"},
	{rule: "skip", pattern: "sk/skip/miss [$next]", meaning: "a stitch is skipped", example: "dc in next st, sk, dc in next st", build: skip(ins.InNext)},
	{rule: "skipmore", pattern: "and/& [$next] [{n:num}] {u:unit}", meaning: "more that is skipped", example: "skip next ch-2 sp and next dc",
		build: func(m *match) any {
			if m.p.at(m.to).Is("in", "into", "over", "across", "around") || m.has("n") && value[ins.Unit](m, "u").Stitch != nil && !m.said("next") && !m.p.at(m.to).Is(",", ";") {
				return nil
			}
			return place(ins.InNext, m)
		}},

	{rule: "turn", pattern: "turn/turning [work] [around/clockwise | [at end of] each/every $row]", meaning: "the work is turned", example: "turn", when: tests{noWordBut("and", "leave", "leaving", "with", "ch", "then", "at", "here"), no(said("with"))}, build: func(m *match) any { return &ins.Turn{} }},
	{rule: "turn", pattern: "turn [work] [so] [that] ([the] rs/ws/right/wrong/purl/knit/p/k [side] [is] facing | [the] rs/ws/right/wrong/purl/knit/p/k side [is] [facing] [you])", meaning: "the work is turned", example: "Row 2: P10, sl 1, turn work so that purl side is facing", when: tests{said("facing", "side")}, build: func(m *match) any { return &ins.Turn{} }},
	{rule: "stitch", pattern: "k/knit/p/purl [$next] (ds | double/wrapped $st) [as (one/1/single) [$st] | tog with [its] wrap/wraps | and [its] wrap [tog]]", meaning: "a stitch at which the work was turned", example: "Row 3: K to DS, k DS, k3, turn", build: func(m *match) any {
		return &ins.Stitch{Kind: stitch.ByID(knitOr(m.p.t[m.from].Is("p", "purl"))), N: ins.N(1)}
	}},
	{rule: "turn", pattern: "turn/turning with {n:num} $ch", meaning: "chains, and the work is turned", example: "turn with 1 ch", build: func(m *match) any {
		return &ins.Repeat{Body: []ins.Item{&ins.Chain{N: m.num("n", 1)}, &ins.Turn{}}, Times: ins.N(1), Stop: -1}
	}},
	{rule: "turn", pattern: "(wrap [{num}] [$next] [$st] [,] [and/&] turn [work] | w and t | wt | w & t | t m)", meaning: "the work is turned within the row", example: "w and t", build: func(m *match) any {
		return &ins.Repeat{Body: []ins.Item{&ins.Leave{All: true}, &ins.Turn{}}, Times: ins.N(1), Stop: -1}
	}},

	{rule: "leave", pattern: "[then] (place/slip/put/transfer/sl/leave/move) [these/those/them/last/this] [group] [just worked/knitted] [of] [{n:num}] [$st] [just] [worked/knitted] (on/onto/to) [hold | [1st/2nd/3rd/first/second/third/another/stitch/st/spare/waste/scrap/separate/extra/a/safety] [stitch] [-] [holder/holders/thread/yarn/wool/needle/pin/length/strand] [of [waste/scrap] yarn]]", meaning: "what was just worked is put on a holder", example: "Next row: K13 and place these sts on a holder, k17", build: worked},
	{rule: "leave", pattern: "[then/and] place/slip/put/transfer/sl/leave/move [all] [of] ({x:ofpart} | $st [[up] to/until/between [$next/both] [{num}] marker/markers/m]) {onholder} [for {tail}]", meaning: "the stitches up to the next marker are put on a holder", example: "Rnd 2: K to marker, place sleeve sts on waste yarn, cast on 8 sts, k to next marker, slip sts to next marker onto scrap yarn, cast on 8 sts",
		when: tests{inRow, no(said("these", "those", "held", "live")), either(has("x"), said("marker", "markers", "m"))}, build: func(m *match) any {
			return &ins.BindOff{To: ins.Extent{Kind: ins.ToMarker, Part: true, At: m.span()}, Hold: true}
		}},
	{rule: "onholder", pattern: "(on/onto/to/over [hold on] [first/second/third/another/separate/extra/a] [stitch/st/spare/waste/scrap/safety] [-] [piece/length/strand] [of] [spare/waste/scrap] holder/holders/thread/yarn/wool/needle/pin | on hold)", meaning: "on a holder", example: "Place next 20 sts on a holder", build: yes},
	{rule: "leave", pattern: "leave/leaving [$next/first] {n:num} [{u:unit}] (on/onto/to [stitch/st/spare/waste/separate/extra/a] [-] [safety] holder/holders/thread/yarn/wool/needle/pin | on hold)", meaning: "stitches are put on a holder", example: "Next row: K20, leave next 20 on a holder, k20", when: tests{inRow, before(",", ";", "and", "then")}, build: func(m *match) any { return &ins.BindOff{N: m.num("n", 0), Hold: true} }},
	{rule: "leave", pattern: "leave/leaving [last/$next] [$rem] [{n:num}] [$rem/other] [{u:unit}] ($rem | unworked/unfinished/held/live/free/open/aside | on/to [stitch/spare/st/waste/a/safety] [-] holder/thread/needle/yarn/pin [{tail}] | {tail})", meaning: "stitches stay unworked", example: "leave remaining 4 sts unworked", build: leave},
	{rule: "leave", pattern: "leave/leaving {n:num} [{u:unit}] [unworked/live/held/on] [holder] at (each/both end/ends/side/sides | {e:edgename} [{s:edgeside}]) [{c:course}]", meaning: "stitches stay unworked at an edge", example: "Leave 3 sts unworked at neck edge",
		build: func(m *match) any {
			c, _ := m.get("c").(course)
			s := &ins.Shape{N: m.num("n", 1), Both: m.atEach(), Edge: value[string](m, "e"), Side: value[string](m, "s"), Cloth: c.cloth, Course: c.Course}
			s.HasOver = s.HasOver || !c.HasTimes
			return s
		}},
	{rule: "leave", pattern: "leave/leaving last [{n:num}] {u:unit} [un - worked | unworked | open | free]", meaning: "stitches stay unworked", example: "leave last 2 sts unworked", build: leave},
	{rule: "leave", pattern: "[there] [will/are] [be] [last] {n:num} {u:unit} [are/is/will/remain/remaining/left] [be] [left] (unworked | not worked)", meaning: "stitches stay unworked", example: "sc in next 10 sts, 4 sts are left unworked", build: leave},
	{rule: "leave", pattern: "leave/leaving [$rem] {n:num} {u:unit}", meaning: "stitches stay unworked", example: "leaving 6 sts", build: leave},
	{rule: "leave", pattern: "leave/leaving them/these/those unworked/unfinished/free/open", meaning: "stitches stay unworked", example: "sc in each sc to last 2 sc, turn, leaving them unworked", build: leave},
	{rule: "stitch", pattern: "at $beg of [$next/this/the] [$row] [,] (bind/cast off | bo) {n:num} [{u:unit}]", meaning: "bound off where the row begins", example: "Row 2: At the beg of the next row bind off 4 sts, k to end", when: tests{opensOr(":", ".", ")")}, build: func(m *match) any { return &ins.BindOff{N: m.num("n", 1)} }},
	{rule: "leave", pattern: "leave [$rem] [$st] [unworked/on [holder]]", meaning: "stitches stay unworked", example: "leave unworked", build: leave},
	{rule: "leave", pattern: "leave/leaving (rest/remainder/others/balance) [of] [$row/$st] [unworked/unfinished/free]", meaning: "stitches stay unworked", example: "sc in next 10 sts, leave rest unworked", build: func(m *match) any { return &ins.Leave{All: true} }},
	{rule: "leave", pattern: "(do not | don't) work [in/into/on/over/across] [last/$rem/rest/other] [of] [{n:num}] ($st | $rem [$st] | rest [of $row])", meaning: "stitches stay unworked", example: "sc in next 10 sts, do not work remaining sts", when: tests{said("last", "remaining", "remain", "rem", "rest", "other")}, build: func(m *match) any { return &ins.Leave{N: m.num("n", 0), All: !m.has("n")} }},

	{rule: "psso", pattern: "(p {n:num} sso | psso {n:num} | psso twice | pass/draw/lift/slip/bring/throw both/the [slipped/slip/sl] $st over [{tail}] | pass/draw/lift/bring/throw {n:num} [slipped/slip/sl/increased/made/extra/other] $st over [{tail}])", meaning: "n slipped stitches are passed over", example: "sl 2, k1, p2sso", build: passed},
	{rule: "psso", pattern: "(psso | pass/draw/lift/bring/throw/pull/slip [slipped/slip/sl/first] [knit/purl] [$st/one] over ([{tail}] | [last] [$st] knit/knitted/k/purled [$st/one]) | p s s o | sl st over | bind it over | psso {tail})", meaning: "the slipped stitch is passed over", example: "sl 1, k1, psso", build: passed},

	{rule: "fasten", pattern: "(fasten/finish/tie/end/bind [yarn] off [first/second/left/right] [leg/arm/ear/wing] [{num}] | fasten off last/final/remaining/rem $st/loop/lp | cut yarn | fo [first/second/left/right] [leg/arm/ear/wing] [{num}] | break/cut [$rem] yarn/thread/wool/cotton/off [and] [fasten off] | end off) [after last {w:row} | after last repeat/rep]", meaning: "the work ends", example: "fasten off", build: func(m *match) any {
		if m.said("bind") || m.said("cut", "break") && !m.said("fasten") {
			if m.said("bind") {
				return nil
			}
			return &ins.Nothing{}
		}
		if m.p.at(m.to).Is("mc", "color", "colour", "a", "b", "c") {
			return &ins.Nothing{}
		}
		return &ins.Fasten{}
	}},

	{rule: "marker", pattern: "(pm on/in/at/around/after {c:core} | pm | pl m | place [a] [stitch/$st] marker/m/markers/mk [in/on/at {c:core}] | place [a] [{x:markname}] [{y:markname}] marker/markers (at/on/in) [each/both/either] [$beg/end/side/edge] [of] [this/last/next/{w:row}] [{w:row}] | place [a] {x:markname} [{y:markname}] marker/markers [in/on/at {c:core}] | pmr | pml | mark [this/that] [{tail}])", meaning: "a marker is placed", example: "k2, pm, k18", build: func(m *match) any { return &ins.Marker{New: true} }},
	{rule: "marker", pattern: "(sm | slm | slip/sl [{x:markname}] marker/m/markers/mk | sl mkr | slip/pass marker)", meaning: "a marker is met", example: "k to m, sm, k to end", build: func(m *match) any { return &ins.Marker{} }},
	{rule: "marker", pattern: "(place/mark/put {n:num} marker/markers {x:sentence} | place/put marker/markers after/before/between $st {num} {x:sentence} | mark {x:stretch})", meaning: "words about markers", example: "Place 3 markers for the buttonholes, the first after 3 sts, then 4 sts apart"},
	{rule: "marker", pattern: "placing marker/markers [{x:stretch}]", meaning: "words about markers", example: "Join in the round, placing a marker on first st"},
	{rule: "marker", pattern: "(rm | remove/removing/moving/move/slipping/replace/replacing marker/m/markers [up] [[in/on/to/with/at] each/every/next/new/this $row/st/time] | place/move/slip/put markers [{tail}])", meaning: "words about markers", example: "purl, slipping markers"},
	{rule: "markname", pattern: "second/beginning/beg/new/first/locking/another/removable/end/split/ring/coloured/colored/contrasting/stitch/safety/lockable", meaning: "which marker", example: "k2, place a new marker, k2", build: yes},
}

// endsAndRest is a row of which the first and the last stitches are told before those between them.
func endsAndRest(m *match) any {
	other := map[string]string{"k": "p", "p": "k"}
	id := m.p.t[m.from].S[:1]
	n := m.num("n", 0)
	last := m.num("m", 1)
	if !m.has("n") {
		n = last
	}
	between := &ins.Stitch{Kind: stitch.ByID(id), N: ins.N(1)}
	if m.said(map[string][]string{"k": {"k", "knit"}, "p": {"p", "purl"}}[other[id]]...) {
		between.Kind = stitch.ByID(other[id])
	}
	between.Places = []ins.Place{{Kind: ins.InEach, N: ins.N(1), Unit: ins.Unit{Word: "st"}, Extent: ins.Extent{Kind: ins.ToLast, N: last, Unit: ins.Unit{Word: "st"}, At: m.span()}, At: m.span()}}
	body := []ins.Item{&ins.Stitch{Kind: stitch.ByID(id), N: n}, between, &ins.Stitch{Kind: stitch.ByID(id), N: last}}
	return &ins.Repeat{Body: body, Times: ins.N(1), Stop: -1}
}

// chainsBetween are stitches with chains between each two of them, all in one place.
func chainsBetween(m *match) any {
	s := stitchOf(m)
	k := s.N.All
	if s.N.By != nil || k < 2 || k > mostApart {
		return nil
	}
	s.N = ins.N(1)
	s.Put(m.span())
	r := &ins.Repeat{Body: []ins.Item{s}, Times: ins.N(1), Stop: -1, Places: value[spots](m, "p").list}
	for range k - 1 {
		c := &ins.Chain{N: m.num("c", 1)}
		c.Put(m.span())
		r.Body = append(r.Body, c, s)
	}
	return r
}

// mostApart bounds them.
const mostApart = 40

// stitchOf is the stitch that a form names, without its places.
func stitchOf(m *match) *ins.Stitch {
	k := value[thing](m, "k")
	s := &ins.Stitch{Kind: k.Kind, Inc: k.Inc, Dec: k.Dec, Call: k.Call, N: m.num("n", 1)}
	if k.Kind != nil && ofLegs(k.Kind) && m.legs() { // one 5-tr cluster
		s.Kind, s.N = k.Kind.Of(s.N.All, k.Kind.Base), ins.N(1)
	}
	if k.Each > 1 {
		if s.N.By == nil {
			s.N.All *= k.Each
		}
	}
	for _, name := range []string{"l", "l2"} {
		if l, ok := m.get(name).(ins.Loop); ok && l != ins.BothLoops {
			s.Loop = l
		}
	}
	if s.Loop == ins.BothLoops {
		s.Loop = m.p.r.loop
	}
	return s
}

// ribTo is a rib whose row begins with it: K1, p1 to end.
func ribTo(first, second string) func(m *match) any {
	return func(m *match) any {
		if !m.p.line.IsRow() || m.from > 0 && (m.p.depth > 0 || !m.p.at(m.from-1).Is(".", ":") && !m.said("rib", "ribbing")) { // the whole of a row or a bracket
			return nil
		}
		return ribRow(m, first, second)
	}
}

// ribRow is the two stretches of a rib, as far as the words say.
func ribRow(m *match, first, second string) any {
	body := []ins.Item{&ins.Stitch{Kind: stitch.ByID(first), N: m.num("n", 1)}, &ins.Stitch{Kind: stitch.ByID(second), N: m.num("m", 1)}}
	e, ok := m.get("e").(ins.Extent)
	if !ok {
		e = ins.Extent{Kind: ins.ToEnd, At: m.span()}
	}
	return &ins.Repeat{Body: body, Until: e, Stop: -1, Cut: true}
}

// frontAndBack is one stitch worked in front and in back.
func frontAndBack(m *match) any {
	id := "kfb"
	if m.p.t[m.from].Is("p", "purl", "pf", "p1f") {
		id = "pfb"
	}
	s := &ins.Stitch{Kind: stitch.ByID(id), N: ins.N(1)}
	if t, ok := m.get("t").(often); ok {
		s.N = t.n
	}
	if m.has("k") { // of next 5 sts
		s.N = m.num("k", 1)
	}
	if e, ok := m.get("e").(ins.Extent); ok || m.has("every") {
		s.Places = []ins.Place{{Kind: ins.InEach, Unit: ins.Unit{Word: "st"}, Extent: e, N: ins.N(1)}}
	}
	return s
}

// legs reports whether the number of stitches is glued to their name by a hyphen, so that it tells the legs of one.
func (m *match) legs() bool {
	for i := m.from; i < m.to; i++ {
		if t := m.p.at(i); t.Kind == 'n' {
			next := m.p.at(i + 1)
			return next.Glued && (next.Col == t.End+1 || next.Is("dc", "tr", "hdc", "htr", "dtr"))
		}
	}
	return false
}

// clusterOver makes a cluster that goes over several stitches one of as many legs: cluster over next 3 sts.
func (m *match) clusterOver(s *ins.Stitch) {
	k := s.Kind
	if k == nil || !ofLegs(k) || len(s.Places) != 1 || s.N.By != nil || s.N.All != 1 || !m.said("over", "across") {
		return
	}
	p := s.Places[0]
	if p.Kind != ins.InNext && p.Kind != ins.InLast || p.N.By != nil {
		return
	}
	if d := stitch.ByID("dc" + strconv.Itoa(p.N.All) + "tog"); d != nil {
		s.Kind = d
		m.p.r.x.Used[d.ID] = d
	}
}

func stitchIn(m *match) any {
	s := stitchOf(m)
	v := value[spots](m, "p")
	s.Places, s.Count = v.list, v.count
	if m.said("another") && len(s.Places) == 1 && s.Places[0].Kind == ins.InLast && s.Places[0].N.By == nil && s.Places[0].N.All == 1 { // beside the one that is there
		s.Places[0].Kind = ins.InSame
	}
	for _, a := range v.also {
		if a.Kind == nil && a.Call == nil && !a.Inc && !a.Dec {
			b := *s
			b.Places, b.Also = a.Places, nil
			*a = b
		}
		a.Put(m.span())
		s.Also = append(s.Also, a)
	}
	if k := s.Kind; k != nil && k.ID == "ch" {
		return nil
	}
	m.clusterOver(s)
	if t, ok := m.get("t").(often); ok {
		return m.repeated(s, t.n)
	}
	if m.onlyThese(s) {
		return &ins.Repeat{Body: []ins.Item{s, &ins.Leave{All: true}}, Times: ins.N(1), Stop: -1}
	}
	return m.closes(s)
}

// onlyThese reports whether a stitch goes into so many places only, at the end of its row: sc in first 10 sts only.
func (m *match) onlyThese(s *ins.Stitch) bool {
	if !m.p.t[m.to-1].Is("only") || !m.p.at(m.to-2).Is("st", "sts", "stitch", "stitches", "sc", "dc", "hdc", "tr", "htr") || len(s.Places) != 1 || m.p.depth > 0 {
		return false
	}
	p := s.Places[0]
	return (p.Kind == ins.InNext || p.Kind == ins.InFirst) && (p.N.By != nil || p.N.All > 1) && (m.to >= len(m.p.t) || m.p.at(m.to).Is(",", ".", ";") && m.p.at(m.to+1).Is("turn", ""))
}

// repeated is a stitch with its places, so many times.
func (m *match) repeated(s *ins.Stitch, n ins.Num) any {
	s.Put(m.span())
	return &ins.Repeat{Body: []ins.Item{s}, Times: n, Stop: -1}
}

// joinAt is the join that a slip stitch makes, by the word that says so.
func joinAt(t *text.Token, s *ins.Stitch) *ins.Join {
	j := &ins.Join{}
	if t.Is("ring", "circle") {
		j.Name = "ring"
	}
	for _, q := range s.Places {
		j.Chain = q.Unit.Size
	}
	return j
}

// closes turns a slip stitch that forms a ring or closes a round into a join.
func (m *match) closes(s *ins.Stitch) any {
	if s.Kind == nil || s.Kind.ID != "slst" {
		return s
	}
	if len(s.Places) == 1 && s.Places[0].Unit.Chain && m.said("beginning", "beg", "start") && m.said("round", "rnd") { // sl st to ch at beginning of round
		return &ins.Join{}
	}
	t := m.p.at(m.to)
	from := m.to
	if next := m.p.at(m.to + 1); t.Is(",") && next.Is("forming") { // sl st to first ch, forming a circle
		t, from = next, m.to+1
	}
	if !t.Is("to", "and", "forming") {
		return s
	}
	for k := from; k < from+5; k++ {
		switch {
		case m.p.at(k).Is("join", "close") && m.p.at(k+1).Is("ring", "circle", "round", "rnd"):
		case m.p.at(k).Is("ring", "circle", "round", "rnd", "join", "close"):
			m.to = k + 1
			return joinAt(m.p.at(k), s)
		case m.p.at(k).Kind == 'p':
			return s
		}
	}
	return s
}

func stitchTo(m *match) any {
	s := stitchOf(m)
	e, ok := m.get("e").(ins.Extent)
	if !ok {
		e = ins.Extent{Kind: ins.ToEnd, At: m.span()}
	}
	if last := m.p.t[m.to-1]; s.Kind == nil && s.Call == nil && !m.p.line.IsRow() && last.Is("round", "rnd") && m.p.at(m.to-2).Is("inc", "dec", "increase", "decrease") { // a row by its name
		return nil
	}
	if s.Kind != nil && (s.Kind.ID == "ch" || s.Kind.ID == "slst" && e.Unit.Word == "tch") { // sl st to beg ch joins
		return nil
	}
	if s.Kind != nil && s.Kind.Craft == stitch.Crochet && (s.N.By != nil || s.N.All > 4) { // 26 sc across to marker: so many in all
		return s
	}
	s.Places = []ins.Place{{Kind: ins.InEach, N: ins.N(1), Unit: ins.Unit{Word: "st"}, Extent: e, At: m.span()}}
	if !m.has("e") && m.said("evenly") {
		return nil
	}
	return s
}

// turnsBehind reports whether the work is turned at i, or behind a stitch that is slipped there: the yarn is only brought forward.
func (p *parser) turnsBehind(i int) bool {
	for ; p.at(i).Is(",", ".", "sl", "slip", "sl1p", "sl1", "p", "purlwise", "pwise") || p.at(i).Kind == 'n'; i++ {
	}
	return p.at(i).Is("turn")
}

func stitchBare(m *match) any {
	s := stitchOf(m)
	switch k := s.Kind; {
	case k == nil:
	case k.ID == "ch":
		return nil
	case k.ID == "yo" && m.p.turnsBehind(m.to):
		return &ins.Nothing{}
	}
	if t, ok := m.get("t").(often); ok {
		if m.has("n") && !(s.N.By == nil && s.N.All == 1) {
			return m.repeated(s, t.n)
		}
		s.N = t.n
		if k := value[thing](m, "k"); k.Each > 1 {
			s.N = ins.N(k.Each)
			return m.repeated(s, t.n)
		}
	}
	if k := value[thing](m, "k"); k.Each > 1 && !m.has("t") {
		n := m.num("n", 1)
		s.N = ins.N(k.Each)
		s.Places = []ins.Place{{Kind: ins.InNext, N: n, Unit: ins.Unit{Word: "st"}, At: m.span()}}
	}
	if m.has("u") {
		u := value[ins.Unit](m, "u")
		if u.Row || u.Chain || u.Space {
			return nil
		}
		if u.Word == "held" && !m.p.line.IsRow() { // beside what is picked up
			s.Places, s.N = []ins.Place{{Kind: ins.InNext, N: s.N, Unit: u, At: m.span()}}, ins.N(1)
		}
	}
	return s
}

func stitchNext(m *match) any {
	s := stitchOf(m)
	u := value[ins.Unit](m, "u")
	kind := ins.InNext
	switch {
	case m.said("same"):
		kind = ins.InSame
	case m.said("last"):
		kind = ins.InLast
	}
	s.Places = []ins.Place{{Kind: kind, N: ins.N(1), Unit: u, At: m.span()}}
	if s.Kind != nil && s.Kind.Craft == stitch.Knitting {
		s.Places = nil
	}
	return s
}

func together(m *match) any {
	n := m.num("n", 2)
	id := knitOr(m.p.t[m.from].Is("p", "purl"))
	k, ok := m.p.r.thing([]byte(id + string(rune('0'+n.All%10)) + "tog"))
	if !ok || n.By != nil || n.All > 9 {
		return nil
	}
	if m.get("l2") == ins.BackLoop {
		k.Kind = k.Kind.ThroughBack()
	}
	s := &ins.Stitch{Kind: k.Kind, N: ins.N(1)}
	if t, ok := m.get("t").(often); ok {
		s.N = t.n
	}
	if e, ok := m.get("e").(ins.Extent); ok {
		s.Places = []ins.Place{{Kind: ins.InEach, N: ins.N(1), Unit: ins.Unit{Word: "st"}, Extent: e}}
	}
	m.p.r.x.Used[k.Kind.ID] = k.Kind
	return s
}

func crochetTogether(m *match) any {
	n := m.num("n", 2)
	k := value[thing](m, "k")
	if k.Kind == nil || n.By != nil || n.All < 2 || n.All > 9 {
		return nil
	}
	d := stitch.ByID(k.Kind.ID + string(rune('0'+n.All)) + "tog")
	if d == nil {
		return nil
	}
	m.p.r.x.Used[d.ID] = d
	s := &ins.Stitch{Kind: d, N: ins.N(1)}
	if v, ok := m.get("p").(spots); ok {
		s.Places = v.list
	}
	if x, ok := m.get("x").(ins.Num); ok { // two 2 hdc tog
		s.N = x
	}
	if t, ok := m.get("t").(often); ok {
		s.N = t.n
	}
	return s
}

func chain(m *match) any {
	c := &ins.Chain{N: m.num("n", 1)}
	if v, ok := m.get("c").(ins.Counting); ok {
		c.Count = v
	}
	if v, ok := m.get("w").(ins.Counting); ok && v.How != ins.Unsaid {
		c.Count = v
	}
	if t := m.p.at(m.to); t.Is("\"", "”", "″", "inch", "inches", "ins", "cm") || t.Is("in") && m.p.at(m.to+1).Is("long") { // a chain so long
		return nil
	}
	if t := m.p.at(m.to); t.Is("in", "into") && !m.said("for") && !m.p.yarnNamed(m.to+1) {
		return nil
	}
	return c
}

// yarnNamed reports whether the clause that goes on at i names a yarn: color B, white wool.
func (p *parser) yarnNamed(i int) bool {
	for ; i < len(p.t) && p.t[i].Kind == 'w'; i++ {
		if p.t[i].Is("color", "colour", "mc", "cc", "b", "a", "yarn", "wool", "cotton", "thread", "silk", "shade") {
			return true
		}
	}
	return false
}

func skip(kind ins.PlaceKind) func(m *match) any {
	return func(m *match) any {
		u, ok := m.get("u").(ins.Unit)
		if !ok {
			u = ins.Unit{Word: "sts"}
			if t := m.p.at(m.to); t.Kind == 'w' && !t.Is("and", "then", "turn") && !m.p.thingAt(m.to) {
				return nil
			}
		}
		if m.p.t[m.from].Is("pass", "s", "skp") && (!m.has("u") || m.p.r.knits) {
			return nil
		}
		pl := ins.Place{Kind: kind, N: m.num("n", 1), Unit: u, At: m.span()}
		s := &ins.Skip{Places: []ins.Place{pl}}
		if x, ok := m.get("x").(ins.Place); ok {
			s.Places = append(s.Places, x)
		}
		return s
	}
}

// mostCrossed is how many stitches a cable needle takes at most.
const mostCrossed = 16

// worked are the stitches just worked, put on a holder.
func worked(m *match) any {
	before := m.p.at(m.from - 1)
	if m.from == 0 || before.Is(".", ":") || !m.said("hold", "holder", "holders", "thread", "yarn", "wool", "pin", "needle") || m.said("cable") || m.p.at(m.to).Is("and", "&", ",") && m.p.at(m.to+1).Is("hold", "holding", "leave") {
		return nil
	}
	if m.has("n") && !m.said("these", "those", "worked", "knitted") || m.said("needle") && !m.said("spare", "separate", "extra", "another") {
		return nil
	}
	if last := m.lastPut(); last != nil {
		return last
	}
	return &ins.BindOff{N: m.num("n", 0), Hold: true, Made: true}
}

// lastPut is the last stitches that wait on a holder, up to which the row is worked: k to last 6 sts, place these on a holder. Nil if others do.
func (m *match) lastPut() ins.Item {
	i := m.from - 1
	for m.p.at(i).Is(",", ";", "and", "then") || m.p.at(i).Is("st", "sts", "stitches", "stitch") {
		i--
	}
	if n := m.p.at(i); m.said("these", "those") && n.Kind == 'n' && m.p.at(i-1).Is("last") && m.p.at(i-2).Is("to") {
		return &ins.BindOff{N: n.Num, Hold: true}
	}
	return nil
}

func leave(m *match) any {
	l := &ins.Leave{N: m.num("n", 0), All: !m.has("n")}
	if m.said("tail", "end", "ends", "long") || !m.has("n") && !m.has("u") && !m.said("unworked", "holder", "rem", "remaining") && !m.has("e") {
		return &ins.Nothing{}
	}
	return l
}

// passed passes slipped stitches over: one, or as many as the words say. Both are two, and so are those of which no number is told
// behind two that were slipped together, or before the one stitch over which they are passed: sl 2, k1, psso (common practice).
func passed(m *match) any {
	n := m.num("n", 1)
	two := m.said("both", "twice")
	two = two || !m.has("n") && m.p.slippedTwo(m.from-1, m.said("sts", "stitches"))
	if two {
		n = ins.N(2)
	}
	if n.By != nil || n.All < 1 || n.All > 8 {
		return nil
	}
	if n.All == 1 {
		return &ins.Psso{}
	}
	body := make([]ins.Item, n.All)
	for i := range body {
		body[i] = &ins.Psso{}
	}
	return &ins.Repeat{Body: body, Times: ins.N(1), Stop: -1}
}

// slippedTwo reports whether two stitches were slipped last before the token at i: together, or more than one is meant.
func (p *parser) slippedTwo(i int, several bool) bool {
	for i >= 0 && !p.at(i).Is("sl", "slip") {
		i--
	}
	if i < 0 || p.at(i+1).Kind != 'n' || p.at(i+1).Num.All != 2 {
		return false
	}
	over := i + 2
	for over < i+8 && p.at(over).Kind == 'w' && p.at(over+1).Kind != 'n' {
		over++
	}
	for p.at(over).Is(",", "-") {
		over++
	}
	if p.at(over).Is("k", "knit", "p", "purl") && p.at(over+1).Kind == 'n' && p.at(over+1).Num.All == 1 && p.at(over+1).Num.By == nil && !p.at(over+2).Is("tog", "together") {
		return true
	}
	for k := i + 2; k < len(p.t) && p.at(k).Kind != 'p' && !several; k++ {
		several = p.at(k).Is("tog", "together") || p.at(k).Is("k") && p.at(k+2).Is("tog") || p.at(k).Is("k2tog")
	}
	return several
}

// yarnOver is so many yarns over.
func yarnOver(m *match) any {
	s := &ins.Stitch{Kind: stitch.ByID("yo"), N: ins.N(1)}
	if t, ok := m.get("t").(often); ok {
		s.N = t.n
	}
	return s
}

// byHow reads how an increase or a decrease is made, up to the end of its clause; its value tells whether the stitch is made
// between two.
func byHow(p *parser, i int) (any, int) {
	if !p.at(i).Is("k", "knit", "knitting", "p", "purl", "purling", "working", "making", "picking", "raising", "lifting", "taking", "putting", "slipping") {
		return nil, -1
	}
	j := i
	for j < len(p.t) && !p.at(j).Is(",", ".", ";", "then") && p.at(j).Kind != 'g' && !isStar(p.at(j)) {
		j++
	}
	return p.at(i).Is("picking", "raising", "lifting"), j
}

// slipKind is a slipped stitch on the side on which the words hold the yarn.
func slipKind(m *match) *stitch.Stitch {
	switch {
	case m.said("wyif"), m.said("yarn") && m.said("front"):
		return stitch.ByID("slwyif")
	case m.said("wyib"), m.said("yarn") && m.said("back"):
		return stitch.ByID("slwyib")
	}
	return stitch.ByID("sl")
}

// slipSlip is the decrease whose name is told in words: slip, slip, knit, or slip, slip, purl.
func slipSlip(m *match) any {
	if t := m.p.at(m.to); m.p.r.crochet || !m.said("tog", "together") && (t.Kind == 'n' || t.Is("to", "across", "the", "next", "all")) {
		return nil
	}
	return &ins.Stitch{Kind: stitch.ByID("ss" + knitOr(m.said("p", "purl"))), N: ins.N(1)}
}

// partJoined are stitches of a sleeve that are joined to a body, and those of an instep beside what is picked up along a heel.
func partJoined(m *match) any {
	sleeve := m.said("sleeve")
	l := m.p.line.Label
	if l != nil && sleeve && l.Name != "joining" || (l == nil || !sleeve) && !slices.ContainsFunc(m.p.t[:m.from], func(t text.Token) bool { return t.Is("pick") }) {
		return nil
	}
	return &ins.PickUp{N: m.num("n", 0), Kind: stitch.ByID(knitOr(m.said("p", "purl"))), Held: l != nil && !sleeve}
}
