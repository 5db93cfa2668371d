package grammar

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// statements are the forms about whole rows, and between them.
var statements = []form{
	{rule: "whole", pattern: "([and/then] cont/continue/keep/carry/go [on] [to] [{h:inthisway}] [,] | {h:inthisway} [,]) {d:step} [{h:inthisway}] [,] until/till {u:until} [{h:inthisway}]", meaning: "shaped as before, up to a count or a length", example: "Continue increasing 6 sts each round in this way until you have 60 sts", build: shapedOn},
	{rule: "whole", pattern: "(cont/continue/keep/carry/go [on] [to] [work/working] [{h:inthisway}] [,] | {h:inthisway} [,]) {d:step} [{h:inthisway}] [,] (for {r:num} [more/further] {w:row} | until {r:num} {w:row} [have] [been] [worked/done])", meaning: "shaped as before, over n rows", example: "Continue in this way, increasing 6 sts each round, for 7 more rounds", build: shapedOn},
	{rule: "whole", pattern: "(cont/continue/keep/carry [on] [to] [{h:inthisway}] [,] | {h:inthisway} [,]) {d:step} [{h:inthisway}]", meaning: "shaped as before in each of these rows", example: "Rnds 4-10: Continue increasing 6 sts each round (60)", build: shapedOn},
	{rule: "whole", pattern: "(cont/continue/keep/carry/go [on] [to] [work/working] | $make | $rep decreasing/increasing) {h:inthisway} [,] (until/till {u:until} | for {r:num} [more/further] {w:row}) [,] [{h:inthisway}]", meaning: "shaped as before, up to a count or a length", example: "Continue in this manner, adding 1 more sc between increases each round, until there are 60 sts", build: shapedOn},
	{rule: "whole", pattern: "cont/continue/keep/carry [on] for {r:num} [more/further] {w:row} [,] working/adding/having/with/making {h:inthisway}", meaning: "shaped as before, over n rows", example: "Continue for 7 more rounds, working 1 more st between increases each time (60)", build: shapedOn},
	{rule: "whole", pattern: "[and/then] [$make/cont/continue] [working] [back and forth] [in {y:cloth}] [,] (picking/pick/taking) up {n:num} $st at [each] ($beg/end/edge) of (each/every/{w:row}) [{w2:row}] until/till {u:until}", meaning: "stitches are picked up at the ends of rows, until there are n", example: "Work back and forth in stockinette st, picking up 2 sts at end of each row until there are 70 sts", build: func(m *match) any {
		var c course
		if u, ok := m.get("u").(clause); ok {
			u(&c)
		}
		if !c.Until.Set() {
			c.Until = m.p.unknown()
		}
		return &ins.Even{Course: ins.Course{Until: c.Until}}
	}},
	{rule: "whole", pattern: "$rep {x:rowset} [,] {h:inthisway} [,] until/till {u:until}", meaning: "shaped as before, up to a count or a length", example: "Rep Rnds 1 and 2, working 2 sts fewer between decreases each time, until 28 sts rem", when: tests{said("fewer", "less", "more"), said("between", "before", "after")}, build: shapedOn},
	{rule: "whole", pattern: "$rep [this/that/it] until/till {u:until} [or {tail}]", meaning: "worked as before, up to a count or a length", example: "Repeat until you have 45 sts", build: shapedOn},
	{rule: "whole", pattern: "$inc/$dec {h:inthisway} [,] until/till {u:until}", meaning: "shaped as before, up to a count or a length", example: "Increase in this manner until the circle has 60 sts", when: tests{said("manner", "way", "fashion", "thus", "established", "before", "set")}, build: shapedOn},
	{rule: "whole", pattern: "[$make] {r:num} [more/further] $inc/$dec {w:row} [{h:inthisway}]", meaning: "shaped as before, over n rows", example: "Work 7 more increase rounds (60)", build: shapedOn},
	{rule: "whole", pattern: "[$make] [as/same/exactly] [as/like/in] $rep [pattern [from/of]] [of] {r:rowset} [{b:bracketed} rib/ribbing | [of] {y:incloth}] [[,] {c:course}]", meaning: "rows are worked again", example: "Rep Rows 2 and 3 five times", build: repeatRows},
	{rule: "whole", pattern: "($rep | keep/cont/continue/carry [on] [to] $rep | $rep and follow/work/continue | cont/continue [to] [rep/repeat/repeating/work/working/knit/knitting] | cont/continue in pattern [of] | [work/working/worked/knit] [same] as/like [for] | as | like | alternately as/like | same as | [are/is] [the] same as | exactly like | alternate/alternating/alternately [repeat/repeating/repeats/between] | cont/continue alternating/with | work/working in pattern of | rep [pattern] [from/of] | $rep from and/to including | $rep from inclusive of | working/repeating) {r:rowset} [consecutively] [{c:course}]", meaning: "rows are worked again", example: "As 2nd row", build: repeatRows},
	{rule: "whole", pattern: "($rep | [work/working/worked] [same] as/like | same as | [work/working] in same way as) {r:rowset} [,] [but] with/having/working/leaving/making {n:num} [{u:unit}] (between | in between) [each/every/all] [increase/increases/inc/incs/decrease/decreases/dec/decs]", meaning: "a row is worked again, with more or fewer plain stitches", example: "As Round 4 but with 3 sts between increases",
		build: func(m *match) any {
			r := repeatRows(m).(*ins.RepeatRows)
			r.Between = m.num("n", 1)
			return r
		}},
	{rule: "whole", pattern: "($rep [as/like] [for] | [work/working/worked] [same] as/like [for] | same as | [work/working] in same way/manner as) {r:rowset} [,] [but/only] with/having/working/making/do/doing/work ({n:num} $ch | $ch {n:num} | $ch of {n:num}) (in/for/on each/every/all $sp | in $sp | $sp | instead of $ch {num} | instead of {num} [$ch] | between {x:stretch} | each time)", meaning: "a row is worked again, with chains of another length", example: "Same as 4th row but having 5 chs in each loop",
		build: func(m *match) any {
			r := repeatRows(m).(*ins.RepeatRows)
			r.Chains = m.num("n", 1)
			return r
		}},
	{rule: "whole", pattern: "[$make] {r:rowset} in/with/using {x:stretch}", meaning: "rows are worked again, in another colour", example: "Row 4: Work Row 3 in colour B", when: tests{inRow, opens},
		build: func(m *match) any {
			at := m.from
			for !m.p.at(at).Is("in", "with", "using") {
				at++
			}
			if _, to := (&sequence{parser: m.p}).yarnAt(at + 1); to != m.to || to == at+1 {
				return nil
			}
			return repeatRows(m)
		}},
	{rule: "whole", pattern: "$make/knit {r:rowset} {c:course}", meaning: "rows are worked again", example: "Work rows 1 and 2 three times more",
		build: func(m *match) any {
			c, s := value[course](m, "c"), value[rowset](m, "r")
			if n := c.Times; len(s.rows) > 1 && c.HasTimes && n.By == nil && n.All > 1 && !m.said("more", "again", "further", "another", "additional") && c.Course.Length == nil { // in all
				r := repeatRows(m).(*ins.RepeatRows)
				r.Times = ins.N(n.All - 1)
				r.Course.Times = r.Times
				return r
			}
			if ends := m.to >= len(m.p.t) || m.p.at(m.to).Kind == 'p'; len(s.rows) > 1 && !c.HasTimes && c.Until.Set() && m.p.r.knits || ends && (c.Course.Length != nil || c.Until.Set()) && (len(s.rows) > 0 || s.stretch) {
				return repeatRows(m)
			}
			if !c.HasTimes || !m.said("more", "again", "further", "another", "additional") && (s.name == "" || m.said("short", "plain", "even", "straight", "garter", "rib", "knit", "purl")) {
				return nil
			}
			return repeatRows(m)
		}},
	{rule: "whole", pattern: "[then] [$make/k/knit] [this/the] {x:rowname} {w:row} ([as] (above/before/given/set) | again | once [more/again] | as for {y:stretch})", meaning: "a row is worked again, by its name", example: "Work increase row as above", when: tests{alone, no(inRow)}, build: func(m *match) any { return &ins.RepeatRows{Name: value[string](m, "x"), Times: ins.N(1)} }},
	{rule: "whole", pattern: "[then] $make [this/the] {x:rowname} {w:row}", meaning: "a row is worked, by its name", example: "Work increase row", build: func(m *match) any {
		if x := value[string](m, "x"); !bounded(m) || m.p.line.IsRow() || !strings.HasPrefix(x, "inc") && !strings.HasPrefix(x, "dec") {
			return nil
		}
		return &ins.RepeatRows{Name: value[string](m, "x"), Times: ins.N(1)}
	}},
	{rule: "whole", pattern: "[then] ($make/cont/continue | $rep) {r:rowset} only/alone [every/each {w:row}] {c:course}", meaning: "a row is worked again", example: "Rep Rows 1 and 2 until 24 sts rem, then work Row 1 only until 16 sts rem", build: func(m *match) any {
		if c := value[course](m, "c"); !c.Until.Set() && !c.HasTimes && c.Length == nil {
			return nil
		}
		return repeatRows(m)
	}},
	{rule: "whole", pattern: "[then] $make [a] rs/ws {w:row} [only] once [more/again]", meaning: "the row of that side is worked again", example: "Rep last 2 rows twice more, then work RS row only once more", build: func(m *match) any {
		return &ins.RepeatRows{Last: ins.N(2), Times: ins.N(1), Course: ins.Course{Rows: ins.N(1)}}
	}},
	{rule: "whole", pattern: "$rep for [another/further/$next] {n:num} [more] {w:row}", meaning: "the row is worked again", example: "Row 3: K. Repeat for another 2 rows", build: func(m *match) any {
		return &ins.RepeatRows{Last: ins.N(1), Times: m.num("n", 1), Course: ins.Course{Times: m.num("n", 1), HasTimes: true}}
	}},
	{rule: "whole", pattern: "[then/and] {r:rowset} {c:course}", meaning: "rows are worked again", example: "Rep Rows 1 and 2 eleven times; then Row 2 twice", build: func(m *match) any {
		if !m.p.t[0].Is("rep", "repeat") || m.from == 0 || !m.p.at(m.from-1).Is(";", ",", "then") || !value[course](m, "c").HasTimes {
			return nil
		}
		return repeatRows(m)
	}},
	{rule: "whole", pattern: "$make {w:row} {n:rownums}", meaning: "rows are worked again", example: "Rep rows 1-4 five times, then work row 1", when: tests{lineBegins("rep", "repeat"), endsOrKind("p")}, build: func(m *match) any {
		s := value[rowset](m, "n")
		return &ins.RepeatRows{Rows: s.rows, Stretch: s.stretch, Times: ins.N(1)}
	}},

	{rule: "whole", pattern: "[$make/k/knit/p/purl/cont/continue] [working] [another/further/next] {n:num} [or {num}] [more] [short/rs/ws/plain/purl/purled/knit/knitted] {w:row} [{z:aside}] [even/straight/plain/more/each] [{o:shortover}] [{y:incloth}] [{c:course}]", meaning: "n rows worked even", example: "Work 10 rows even", build: evenRows},
	{rule: "whole", pattern: "[$make/knit] {r:num} {w:row} ([back/backwards and forth/forwards] | {y:incloth}) [,] (knitting {n:num} [$st] [and] purling {m:num} | k/knit {n:num} [$st] [,/and] p/purl {m:num}) [$st] [alternately] [throughout]", meaning: "rows of a rib", example: "Work 6 rows backwards and forwards, knitting 2 and purling 2 alternately", build: func(m *match) any {
		return &ins.Even{Course: ins.Course{Rows: m.num("r", 1), Rounds: value[bool](m, "w")}, Cloth: ins.Cloth{Knit: m.num("n", 1).All, Purl: m.num("m", 1).All}}
	}},
	{rule: "whole", pattern: "[work] (k/knit {n:num} | p/purl {n:num}) [$st] [,] [and] (k/knit {m:num} | p/purl {m:num}) [$st] [;/,] [$rep] [alternately] [,] {c:course}", meaning: "rows of a rib", example: "Knit 2, purl 2 for 4 in", build: func(m *match) any {
		c := value[course](m, "c")
		first, second := m.p.t[m.from], m.said("p", "purl") && m.said("k", "knit")
		if first.Is("work") {
			first = m.p.t[m.from+1]
		}
		if !second || c.where || m.p.line.IsRow() && m.said("rep", "repeat") || c.Length == nil && !c.Rows.Set() || m.num("n", 0).By != nil || m.num("m", 0).By != nil {
			return nil
		}
		rib := ins.Cloth{Knit: m.num("n", 1).All, Purl: m.num("m", 1).All}
		if first.Is("p", "purl") {
			rib = ins.Cloth{Knit: rib.Purl, Purl: rib.Knit}
		}
		return &ins.Even{Course: c.Course, Cloth: rib}
	}},
	{rule: "goon", pattern: "(cont/continue/continuing/keep/carry/go) [on] [to] (work/working/knit/knitting/purl/purling/rib/ribbing/going/on/even/straight)", meaning: "the work goes on", example: "Keep knitting until piece measures 20 cm", build: yes},
	{rule: "whole", pattern: "[work] [in ribbing/rib] [of] [,] {n:num} [$st] plain/knit [,] [and] {m:num} [$st] purl/purled/pearl/seam [alternately] [for] {r:num} {w:row}", meaning: "rows of a rib", example: "Work in ribbing, 2 stitches plain and 2 stitches purl for 4 rounds", build: func(m *match) any {
		n, k := m.num("n", 1), m.num("m", 1)
		if n.By != nil || k.By != nil {
			return nil
		}
		return &ins.Even{Course: ins.Course{Rows: m.num("r", 1), Rounds: value[bool](m, "w")}, Cloth: ins.Cloth{Knit: n.All, Purl: k.All}}
	}},
	{rule: "goon", pattern: "rib/ribbing", meaning: "the work goes on in rib", example: "Rib for 6 rows", build: yes},
	{rule: "whole", pattern: "[and/then] [$make/k/knit/p/purl/cont/continue] {n:num} [more] {w:row} [in/with/of/using] {c:colour}", meaning: "n rows in a colour", example: "Work 18 rows with yarn C, 4 rows with yarn B and 4 rows with yarn C", when: tests{noWordBut("and", "then"), no(inRow)}, build: func(m *match) any {
		return &ins.Even{Course: ins.Course{Rows: m.num("n", 1), Rounds: value[bool](m, "w")}}
	}},
	{rule: "whole", pattern: "([join/joining/close/closing] [rnd/round/work/circle] [in/into/to/for] [work/working/knitting] [in] [round/rnd/circle/rounds] by (knitting/working/k) | k/knit) ([first/last] [$st] and [first/last] $st together/tog | [these/both] 2 $st together/tog)", meaning: "the round is joined over two stitches", example: "Join in the round by knitting first and last sts together", build: func(m *match) any { return &ins.Shape{N: ins.N(1), Spread: true} }},
	{rule: "whole", pattern: "(gs/gst | g/garter st/stitch)", meaning: "rows in a fabric, by its short name", example: "Rows 1-4: Garter st", when: tests{inRow, alone, no(crochet)}, build: func(m *match) any { return m.inAll(stitch.ByID("k")) }},
	{rule: "whole", pattern: "[work] [in] st st/stitch", meaning: "rows in stocking stitch", example: "Rows 1-4: St st", when: tests{inRow, alone, no(crochet)}, build: func(m *match) any { return &ins.Even{Cloth: ins.Cloth{Knit: 1}} }},
	{rule: "whole", pattern: "patt/pattern/pat/rib", meaning: "a row in pattern", example: "Row 4: Patt", when: tests{inRow, wholeLine}, build: func(m *match) any { return m.inAll(nil) }}, // patt. 26
	{rule: "whole", pattern: "ss {n:num} [more] {w:row}", meaning: "n rows in stocking stitch", example: "P 1 row. Ss 5 rows.", when: tests{no(crochet)}, build: func(m *match) any {
		return &ins.Even{Course: ins.Course{Rows: m.num("n", 1), Rounds: value[bool](m, "w")}}
	}},
	{rule: "whole", pattern: "[$make/cont/continue] [working] [another/further] {n:num} [more] {w:row} [of/in] (k/knit/knitted/p/purl/purled)", meaning: "n plain rows", example: "1 row purl", when: tests{knitting, either(ends, before(".", ",", ";"))}, build: func(m *match) any {
		e, ok := evenRows(m).(*ins.Even)
		if !ok {
			return nil
		}
		e.Row = plainRow(knitOr(lastWord("p", "purl", "purled")(m)))
		return e
	}},
	{rule: "whole", pattern: "[$make/cont/continue] [working] {y:incloth} [another/further] {n:num} [more] {w:row}", meaning: "n rows in a fabric", example: "Stocking stitch 5 rows", build: evenRows},
	{rule: "whole", pattern: "(k/knit/p/purl) {t:times} around/round", meaning: "n plain rounds", example: "Knit 5 times around", build: func(m *match) any {
		return &ins.Even{Course: ins.Course{Rows: value[often](m, "t").n, Rounds: true}, Row: plainRow(knitOr(m.said("p", "purl")))}
	}},
	{rule: "whole", pattern: "(k/knit/p/purl) around/across {t:times}", meaning: "n plain rows", example: "Knit around 1 more time", build: func(m *match) any {
		return &ins.Even{Course: ins.Course{Rows: value[often](m, "t").n, Rounds: m.said("around")}, Row: plainRow(knitOr(m.said("p", "purl")))}
	}},
	{rule: "whole", pattern: "(k/knit/p/purl) [across/around/along] [entire/whole/$next/this/full/complete/one/a] {w:row} [without [any/further] increasing/decreasing/shaping]", meaning: "one plain row", example: "Knit the next round", when: tests{no(beforeKind("n")), noWordBut("and", "then", "even", "plain"), lastWord("row", "rnd", "round", "rd", "increasing", "decreasing", "shaping")}, build: func(m *match) any {
		id := knitOr(m.said("p", "purl"))
		if m.p.line.IsRow() {
			return m.inAll(stitch.ByID(id))
		}
		return &ins.Even{Course: ins.Course{Rows: ins.N(1), Rounds: value[bool](m, "w")}, Row: plainRow(id)}
	}},
	{rule: "whole", pattern: "k/knit {w:row} {n:num} [,] [and] p/purl {w2:row} {m:num}", meaning: "a knitted and a purled row", example: "K row 1, P row 2 and continue in this way for 4 in", when: tests{no(inRow), one("n")}, build: func(m *match) any {
		if k := m.num("m", 1); k.By != nil || k.All != 2 {
			return nil
		}
		return &ins.Even{Course: ins.Course{Rows: ins.N(2), Rounds: value[bool](m, "w")}}
	}},
	{rule: "whole", pattern: "knitted/purled/pearled/seamed [plain/across]", meaning: "one plain row", example: "Row 2: Purled", when: tests{inRow, alone}, build: func(m *match) any { return m.inAll(stitch.ByID(knitOr(!m.said("knitted")))) }},
	{rule: "whole", pattern: "knitted/purled/pearled/seamed [plain/across] [,] [and] (making/make/increasing/increase/with) [a] [{n:num}] [$st] [made/more] at [$beg/commencement/end]", meaning: "one plain row with stitches made at one end", example: "Row 2: Purled, making 1 at the beginning", build: func(m *match) any {
		id := knitOr(!m.said("knitted"))
		if !m.p.line.IsRow() || !alone(m) || !m.p.at(m.to-1).Is("beginning", "beg", "commencement", "end", "start") {
			return nil
		}
		plain := m.inAll(stitch.ByID(id))
		made := &ins.Stitch{Kind: stitch.ByID("m1"), N: m.num("n", 1)}
		body := []ins.Item{made, plain}
		if m.said("end") {
			body = []ins.Item{plain, made}
		}
		return &ins.Repeat{Body: body, Times: ins.N(1), Stop: -1}
	}},
	{rule: "whole", pattern: "(k/knit/p/purl) [across] all [$st] [for/these/the] [$next] {n:num} [more] {w:row}", meaning: "n plain rows", example: "Knit all sts for 3 rows", build: evenRows},
	{rule: "whole", pattern: "[$make] {k:kind} [[in/into] each/every/all [of] [{u:unit}] [around/across] | around/across] [for] [$next] {n:num} [more] {w:row} [even/straight/more/plain]", meaning: "n rows of one stitch", example: "Sc in each st around for 16 rnds", when: tests{crochet, no(inRow)}, build: func(m *match) any {
		k := value[thing](m, "k")
		if k.Kind == nil || m.p.at(m.to).Is("below") || k.Kind.Uses != 1 || k.Kind.Makes != 1 {
			return nil
		}
		return &ins.Even{Course: ins.Course{Rows: m.num("n", 1)}, Row: []ins.Item{m.inAll(k.Kind)}, Cloth: ins.Cloth{St: k.Kind}}
	}},
	{rule: "whole", pattern: "(k/knit/p/purl) [every/each/all] {w:row} [{c:course}]", meaning: "the rows are plain", example: "Knit every row for 6 in", build: evenRows},
	{rule: "whole", pattern: "(k/knit/p/purl) ({c:course} | even {c:course})", meaning: "plain rows", example: "Knit for 10 rows", build: evenUntil},
	{rule: "whole", pattern: "[$make/cont/continue/now/knit/proceed | {goon} | ($beg/begin/commence/change/changing/switch/switching) [to]] [this/each panel/section/piece/band/border | neckband/neckline/armband/welt/cuff/collar/band/border] [working] [even/straight/as/in/on/to] {y:incloth} [only/straight/even] [{c:course}]", meaning: "rows in a fabric", example: "Work in stockinette stitch for 6 rows", build: evenUntil},
	{rule: "whole", pattern: "[$make/cont/continue/knit/purl | {goon}] [to] [work/working] [even/straight/evenly/plain/on] [as established | as set | as before | [in] pattern/patt | in patt | in est pattern | in established pattern | in same manner | in this manner | in this way | without shaping | as for {tail} | thus] [without further shaping | without shaping | without increasing | without inc | as established | as set] {c:course}", meaning: "rows worked even", example: "Work even until piece measures 20 cm", build: evenUntil},
	{rule: "whole", pattern: "[$make/cont/continue/knit] [back and forth] [in rows] [in/on] {y:incloth} [on/over [these/those/same] {n:num} [{u:unit}] [only]] [{c:course}]", meaning: "rows in a fabric", example: "Work back and forth in stockinette stitch on the 16 heel sts for 26 rows", when: tests{either(said("forth"), has("n"))}, build: evenUntil},
	{rule: "whole", pattern: "[$make/cont/continue/knit] [working] {l:len} [{y:incloth}] [even/straight/plain] [{c:course}]", meaning: "a length worked even", example: "Work 6 in in garter stitch", when: tests{no(said("mm"))}, build: evenUntil}, // needles and hooks are in mm
	{rule: "whole", pattern: "until {c:until} [, ] [cont/continue/work/rep] [even/straight/in] [pattern/patt]", meaning: "rows worked even", example: "Until piece measures 20 cm, work even", build: evenUntil},

	{rule: "whole", pattern: "[{s:same} [,]] [at/on [each/both] {e:edgename} [,]] [$make | cont/continue/keep to] {d:shift} {c:course}", meaning: "stitches are added or taken away in words", example: "Inc 1 st at each end of every 6th row 5 times", build: shape(false)},
	{rule: "whole", pattern: "([$make/cont/continue/k/knit/p/purl] {r:num} [more/plain] {w:row} [even/plain] [{y:incloth}] [,/and] | in/on/over/for/during $next {r:num} {w:row} [,]) [{s:same} [,]] {d:shift} {c:course}", meaning: "stitches are added or taken away over n rows", example: "Work 3 rows, dec 1 st at neck edge in every row", build: shapeOver},
	{rule: "whole", pattern: "[then/and] [{n:num} $st] {c:course}", meaning: "shaped as before, over other rows", example: "Dec 1 st at each end of every alt row until 28 sts rem, then at each end of every row until 16 sts rem", build: func(m *match) any {
		c := value[course](m, "c")
		if m.from == 0 || !m.p.at(m.from-1).Is(",", ";", "then", "and") || !c.both && c.edge == "" || m.p.line.IsRow() {
			return nil
		}
		if c.spread && m.said("following") { // then at beg of following row
			c.First = true
		}
		if !c.Every.Set() && !c.Rows.Set() && !c.First {
			return nil
		}
		return &ins.Shape{N: m.num("n", 0), Both: c.both, Halves: c.halves, Edge: c.edge, Side: c.side, Course: c.Course}
	}},
	{rule: "shift", pattern: "$inc [{n:num} | once] [{u:unit}]", meaning: "n stitches are added", example: "Inc 1 st at each end of every 6th row 5 times", build: func(m *match) any { return m.shift(true) }},
	{rule: "shift", pattern: "($dec | take/taking in) [{n:num} | once] [{u:unit}]", meaning: "n stitches are taken away", example: "Dec 1 st at neck edge on next 7 rows", build: func(m *match) any { return m.shift(false) }},
	{rule: "shift", pattern: "(k/knit/knitting/p/purl/purling/work/working/take/taking) {n:num} [$st] together/tog", meaning: "n − 1 stitches are taken away", example: "K 2 tog at each end of every row until 50 sts remain", build: func(m *match) any {
		d := m.shift(false)
		if d.told = true; d.n.By != nil || d.n.All < 2 {
			return nil
		}
		d.n.All--
		return d
	}},
	{rule: "whole", pattern: "sk/skip/skipping/miss/missing/omit/omitting first and last {u:unit}", meaning: "a stitch fewer at both ends", example: "Row 3: Sc across, skipping first and last st", when: tests{inRow}, build: func(m *match) any { return &ins.Shape{N: ins.N(1), Both: true} }},
	{rule: "whole", pattern: "[$make] {n:num} {k:kind} in/into/on first and last {u:unit}", meaning: "more stitches in those at both ends", example: "Row 3: 2 sc in first and last sc, sc in each sc between", build: func(m *match) any {
		n := m.num("n", 1)
		if !m.p.line.IsRow() || n.By != nil || n.All < 2 {
			return nil
		}
		return &ins.Shape{Inc: true, N: ins.N(n.All - 1), Both: true}
	}},
	{rule: "shift", pattern: "make/making {n:num} [$st]", meaning: "n stitches are added", example: "Make 1 at each end of every other row until there are 70 sts", build: func(m *match) any {
		d := m.shift(true)
		d.told = true
		return d
	}},
	{rule: "whole", pattern: "$inc/$dec (at/on) {e:edgename} {n:num} [$st] {c:course}", meaning: "stitches are added or taken away at an edge", example: "Inc at armhole edge 1 st every other row 4 times", build: func(m *match) any { return shape(!m.said(strings.Split(macros["$dec"], "/")...))(m) }},
	{rule: "whole", pattern: "[{s:same} [,]] [$make] $inc [for] [{n:num}] {u:unit}", meaning: "stitches are added in words", example: "Increase 6 sts", when: tests{no(leadsRow)}, build: shape(true)},
	{rule: "step", pattern: "[with/working] $inc/$dec [by] [{n:num} [more] [$st] | $st]", meaning: "n stitches are added or taken away in a row", example: "Keep increasing by 6 sts each round until you have 60 sts", build: func(m *match) any {
		return step{n: m.num("n", 0), inc: !m.said(strings.Split(macros["$dec"], "/")...), has: m.has("n")}
	}},
	{rule: "whole", pattern: "[cont/continue/keep/then] [to] $dec [at/on [each/both/same/shaped] [neck/raglan/armhole/front/side/inside/outer/shaped] [edge/edges/end/ends/side] [only]] [in this/that/same manner/way | thus | so | as before/set/established] [,] {c:course}", meaning: "taken away as before, until n stitches are left", example: "Continue decreasing in this manner, every second round, until 20 sts remain", build: func(m *match) any {
		c := value[course](m, "c")
		if !c.Until.Set() || c.where || c.HasTimes {
			return nil
		}
		return &ins.Even{Course: c.Course} // how many each row takes away is not said again
	}},
	{rule: "whole", pattern: "[{s:same} [,]] [$make] $dec [for] [{n:num}] {u:unit}", meaning: "stitches are taken away in words", example: "Decrease 6 sts", when: tests{no(leadsRow)}, build: shape(false)},
	{rule: "whole", pattern: "[work] (k/knit/p/purl) [across/all] [$st/row] [to end] [of row] [,] [and] $dec [{n:num}] [$st] at [each/both/$beg] [and/&] end/ends [of row]", meaning: "a plain row shaped at its ends", example: "Row 3: Knit, dec 1 st at each end", when: tests{inRow, said("each", "both", "and")}, build: plainEnds},
	{rule: "whole", pattern: "[work] (k/knit/p/purl) [across/all] [$st/row] [to end] [of row] [,] [and] $inc [{n:num}] [$st] at [each/both/$beg] [and/&] end/ends [of row]", meaning: "a plain row shaped at its ends", example: "Row 3: Knit, inc 1 st at each end", when: tests{inRow, said("each", "both", "and")}, build: plainEnds},
	{rule: "whole", pattern: "[work] (k/knit/p/purl) [around/across/all] [$st/round/row] , [and] ($inc/$dec [by] {n:num} [$st] | pick/picking up [and knit] {n:num} [extra] [$st] | make/making {n:num} [$st]) [evenly [around/across]] [in/over/at/across/on [each/every/both/all/either/the] gap/gaps/hole/holes/corner/corners/wrap/wraps/underarm/underarms [{x:stretch}]]", meaning: "a plain row that adds or takes away n stitches", example: "Next rnd: Knit, dec 2 sts", build: plainShaped},
	{rule: "whole", pattern: "[$make] $inc evenly by {n:num} [{u:unit}] [{c:course}]", meaning: "stitches are added in words", example: "Increase evenly by 8", build: spreadOver(true)},
	{rule: "whole", pattern: "[$make] $inc by {n:num} [{u:unit}] evenly [{c:course}]", meaning: "stitches are added in words", example: "Increase by 8 evenly across row", build: spreadOver(true)},
	{rule: "whole", pattern: "[$make] $dec evenly by {n:num} [{u:unit}] [{c:course}]", meaning: "stitches are taken away in words", example: "Decrease evenly by 8", build: spreadOver(false)},
	{rule: "whole", pattern: "[$make] $dec by {n:num} [{u:unit}] evenly [{c:course}]", meaning: "stitches are taken away in words", example: "Decrease by 8 evenly across row", build: spreadOver(false)},
	{rule: "whole", pattern: "[{s:same} [,]] shape $edge/sides by $inc [{n:num}] {u:unit} {c:course}", meaning: "stitches are added in words", example: "Shape sides by increasing 1 st at each end of every 6th row", build: shape(true)},
	{rule: "whole", pattern: "[$make] $inc [{n:num}] [$st] in/into/on/at {k:nths} [$st]", meaning: "stitches are added in words", example: "Row 3: Sc across, inc in 3rd, 8th and 12th sts", build: func(m *match) any { return &ins.Shape{Inc: true, N: ins.N(value[int](m, "k")), Spread: true} }},
	{rule: "same", pattern: "at [the] same time [as {tail}]", meaning: "at the same time as the shaping before", example: "Dec 1 st at each end of next 5 rows. At the same time, dec 1 st at neck edge on next 5 rows.", build: yes},

	{rule: "whole", pattern: "(bind/cast off | bo) [$next/first] {n:num} [{u:unit}] [in patt/pattern/rib | purlwise/knitwise] [,] ([at/on] $beg of | [at/on] $beg next/foll/following) [each of | each | every | both | these] [$next] [{r:num}] [rs/ws/alt/alternate] [{w:row}] [for underarm/underarms/armhole/armholes/shoulder/shoulders/neck/sleeve/sleeves/cap [shaping]] [{x:thenoff}]", meaning: "bound off at the beginning of rows", example: "Bind off 4 sts at beg of next 2 rows", build: bindEach},
	{rule: "whole", pattern: "(bind/cast off | bo) {n:num} [$st] at $beg and $dec {s:num} [$st] at end of $next row", meaning: "bound off at one end of a row, with a decrease at the other", example: "Cast off 2 sts at beg and dec 1 st at end of next row", build: func(m *match) any {
		n, s := m.num("n", 1), m.num("s", 1)
		if s.By != nil {
			return nil
		}
		return &ins.BindEach{N: n.Plus(s.All), Rows: ins.N(1)}
	}},
	{rule: "whole", pattern: "(bind/cast off | bo) {n:num} [{u:unit}] at/on $beg of $next [row/rnd/round] and [of] [the] $next [{s:num}] [rs/ws/alt/alternate] {w:row}", meaning: "bound off at the beginning of rows", example: "Bind off 7 sts at beg of next and foll 3 rows", build: func(m *match) any {
		return &ins.BindEach{N: m.num("n", 1), Rows: m.num("s", 1).Plus(1), Alt: m.said("rs", "ws", "alt", "alternate")}
	}},
	{rule: "whole", pattern: "(bind/cast off | bo) [for shoulder/shoulders/armhole/armholes/neck] {n:num} [{u:unit}] [at $beg of | $beg] [each of] $next {r:num} {w:row}", meaning: "bound off at the beginning of rows", example: "Cast off for shoulders 3 sts next 6 rows", build: bindEach},
	{rule: "whole", pattern: "[(bind/cast off | bo)] [for armhole/armholes/shoulder/shoulders/neck/underarm/sleeve/cap] at $beg of [each/both] [of] $next {r:num} {w:row} {n:num} [$st] [each]", meaning: "bound off at the beginning of rows", example: "Bind off for armhole at the beg of the next 2 rows 3 sts, at the beg of the next 4 rows 2 sts", build: func(m *match) any {
		if m.p.line.IsRow() || m.to < len(m.p.t) && m.p.at(m.to).Kind == 'w' && !m.p.at(m.to).Is("and", "then") || !slices.ContainsFunc(m.p.t[:m.from+2], func(t text.Token) bool { return t.Is("off", "bo") }) {
			return nil
		}
		return &ins.BindEach{N: m.num("n", 1), Rows: m.num("r", 1)}
	}},
	{rule: "whole", pattern: "at $beg of [each/both] [of] $next {r:num} {w:row} [,] (bind/cast off | bo) {n:num} [{u:unit}] [each]", meaning: "bound off at the beginning of rows", example: "At beg of next 2 rows, bind off 4 sts", build: bindEach},
	{rule: "whole", pattern: "(cast on | co | add | inc) {n:num} [{u:unit}] (at $beg/end of [each of] [$next] | [at] $beg $next | in/on/over $next) [{r:num}] {w:row} [using/by/with {y:stretch}] [{x:thenoff}]", meaning: "cast on at the beginning of rows", example: "Cast on 4 sts at beg of next 2 rows", build: castEach},
	{rule: "thenoff", pattern: "[,/;] [and] [then] [bind off | cast off | bo] {n:num} [{u:unit}] [at] [$beg] [of/on] [each of] [$next] [{r:num}] [rs/ws/alt/alternate] {w:row} [{x:thenoff}]", meaning: "then more", example: "Bind off 4 sts at beg of next 2 rows, then 2 sts at beg of foll 4 rows", when: tests{said("next", "foll", "following", "beg", "beginning")}, build: bindEach},
	{rule: "thenoff", pattern: "[,/;] [and] [then] [bind off | cast off | bo] {n:num} [{u:unit}] ({t:times} [at/on same/that/this/neck/front/armhole edge/end/side] | at/on same/that/this/neck/front/armhole edge/end/side {t:times} | at $beg of $next [rs/ws/alt/alternate] {w:row} {t:times}) [{x:thenoff}]", meaning: "then more, n times", example: "Bind off 4 sts at beg of next row, then 2 sts 2 times at same edge",
		build: func(m *match) any {
			n := value[often](m, "t").n
			switch b := bindEach(m).(type) {
			case *ins.BindEach:
				b.Rows = n
				return b
			case *ins.Repeat:
				b.Body[0].(*ins.BindEach).Rows = n
				return b
			}
			return nil
		}},
	{rule: "whole", pattern: "(bind/cast off | bo) [all] [$st] between [both] markers [in/while/working {x:stretch} | {tail}]", meaning: "the stitches up to the next marker are bound off", example: "Next round: K3, bind off sts between markers, k to end", build: func(m *match) any {
		return &ins.BindOff{To: ins.Extent{Kind: ins.ToMarker, Part: true, At: m.span()}}
	}},
	{rule: "whole", pattern: "(bind/cast off | bo) [in patt/pattern/rib/purl | in pattern] [all/$rem [$rem] {n:num} [$st] | [all/$rem] [$rem] [$st]] [in patt/pattern/rib/purl/knit [as set]] [purlwise/knitwise] [working/in/following/using {w:row} {r:rownums} [of pattern/patt]] [{tail}]", meaning: "all stitches are bound off", example: "Bind off all sts",
		build: func(m *match) any {
			off := &ins.BindOff{All: true}
			if !m.said("each", "both", "either") {
				off.N = m.num("n", 0)
			}
			return off
		}},
	{rule: "whole", pattern: "[the] $rem {n:num} $st [are] (bind/cast/bound off | bo) [loosely/firmly] [for (neck/shoulder/back {x:stretch})]", meaning: "all stitches are bound off", example: "Remaining 22 sts bind off for neck", when: tests{no(inRow)}, build: func(m *match) any { return &ins.BindOff{All: true, N: m.num("n", 0)} }},
	{rule: "whole", pattern: "(bind/cast off | bo) {n:num} [{u:unit}] at [each/both] {e:edgename} [{z:edgeside}] {c:course} {x:offmore}", meaning: "bound off at an edge, n times, then another number", example: "Bind off 5 sts at neck edge once, then 2 sts every other row twice", build: offCourse},
	{rule: "whole", pattern: "(bind/cast off | bo) at/from/on/along [each/both] {e:edgename} {n:num} [{u:unit}] {c:course} [{x:offmore}]", meaning: "bound off at an edge, n times, then another number", example: "Bind off at each armhole edge 4 sts once, 2 sts twice, 1 st 3 times", build: offCourse},
	{rule: "whole", pattern: "at/from/on/along (each/both side/sides/edge/edges/end/ends [of work/row] | [each/both] {e:edgename} | $beg of [every/each/next] [rs/ws/alt/alternate/other] {w:row}) [[on] every/each {v:every}] [,] (bind/cast off | bo) {n:num} [{u:unit}] {c:course} [{x:offmore}]", meaning: "bound off at an edge or at both, repeatedly", example: "At each side, bind off 4 sts every other row twice", build: offCourse},
	{rule: "offmore", pattern: "[,/;] [and] [then] [bind off | cast off | bo | $dec] {n:num} [{u:unit}] [at [each/both] {e:edgename} [{z:edgeside}]] {c:course} [{x:offmore}]", meaning: "then more", example: "Bind off 5 sts at neck edge once, then 2 sts every other row twice", build: offCourse},
	{rule: "whole", pattern: "(bind/cast off | bo | leave) [$next/first/center/centre/middle] {n:num} [{u:unit}] [in patt/pattern/rib | purlwise/knitwise] [{t:times}] at/from/on (each/both end/ends/side/sides | [each/both] {e:edgename} [{z:edgeside}]) [{c:course}]", meaning: "bound off at an edge, repeatedly", example: "Bind off 3 sts at neck edge every 2 rows 4 times", build: offCourse},
	{rule: "whole", pattern: "(bind/cast off | bo) {n:num} [{u:unit}] [at/on/from/for] each/both/either $edge/armhole/armholes/shoulder/shoulders/underarm/underarms [edge/edges/side/end] [of (work/row/needle/{x:piecename})] [for underarm/underarms/armhole/armholes/shoulder/shoulders/neck/sleeve/sleeves]", meaning: "bound off at both ends", example: "Bind off 5 sts on each side for underarm", when: tests{noWordBut("and", "then")}, build: func(m *match) any { return &ins.BindEach{N: m.num("n", 1), Rows: ins.N(2)} }},
	{rule: "whole", pattern: "(bind/cast off | bo) [$next/first/center/centre/middle/last/following] {n:num} [{u:unit}] [in patt/pattern/rib | purlwise/knitwise/kwise/pwise] [for] [{t:edgewords}]", meaning: "stitches are bound off", example: "bind off 4 sts, k to end", build: bindOff},
	{rule: "whole", pattern: "(cast on | co | cast) {n:num} [$st] on/onto each of {k:num} needles/pins/$st [,] and {o:num} [$st] on/onto [the] ({ord} | other/last/remaining) [needle/pin/one]", meaning: "stitches are cast on", example: "Cast on 6 stitches on each of two needles and 3 on the third", build: func(m *match) any {
		n, k, o := m.num("n", 0), m.num("k", 0), m.num("o", 0)
		if n.By != nil || k.By != nil || o.By != nil || k.All > 5 {
			return nil
		}
		return &ins.CastOn{N: ins.N(n.All*k.All + o.All)}
	}},
	{rule: "whole", pattern: "(cast on | co | cast) {n:num} [$st] on/onto first [needle/pin] [,] [and] {o:num} [$st] on/onto [each of] other/remaining [{k:num}] [two/three] [needles/pins/needle/pin]", meaning: "stitches are cast on each of several needles", example: "Cast on 56 sts on the first needle, and 48 on each of the other 2", build: func(m *match) any {
		n, k, o := m.num("n", 0), m.num("k", 1), m.num("o", 0)
		switch {
		case m.said("two"):
			k = ins.N(2)
		case m.said("three"):
			k = ins.N(3)
		}
		if n.By != nil || k.By != nil || o.By != nil || k.All > 5 {
			return nil
		}
		return &ins.CastOn{N: ins.N(n.All + k.All*o.All)}
	}},
	{rule: "whole", pattern: "(cast on | co | cast) {n:num} [$st] on/onto each [of] [{k:num}] needle/needles/pin/pins/dpn/dpns [point/points/tip/tips] [,/:/--/-/=/;] [for] [a] [total] [of] [{t:num} [$st] [in] [all/total/altogether]]", meaning: "stitches are cast on each of several needles", example: "Cast on 25 sts on each needle, 50 sts in all", build: func(m *match) any {
		n, k := m.num("n", 0), m.num("k", 0)
		switch {
		case m.has("k") && k.By == nil && k.All > 0 && k.All < 6:
			all := ins.N(n.All * k.All)
			for _, v := range n.By {
				all.By = append(all.By, max(v*k.All, ins.None))
			}
			if t := m.num("t", 0); m.has("t") && !(m.said(",") && t.By == nil && all.By == nil && t.All == all.All) {
				m.to = m.from // how many there are in all is stated
				for m.to < len(m.p.t) && !m.p.at(m.to).Is("needle", "needles", "pin", "pins", "dpn", "dpns") {
					m.to++
				}
				m.to++
			}
			return &ins.CastOn{N: all}
		case m.has("t"):
			return &ins.CastOn{N: m.num("t", 0)}
		}
		return nil
	}},
	{rule: "whole", pattern: "(cast on | casting on | co | ch) {n:num} [$st] (over/above/across | in place of | to replace | where | in/at) [the] [each/every] ([{num}] those/place/space/gap/bound/cast/sts/stitches/buttonhole/buttonholes/set/group/pair) [{t:stretch}]", meaning: "stitches are cast on over those bound off", example: "Row 4: Cast on 4 sts over those bound off in last row", when: tests{no(firstWord("ch"))}, build: func(m *match) any { return &ins.CastOn{N: m.num("n", 0), Over: m.p.line.IsRow()} }},
	{rule: "whole", pattern: "[$make] [$beg by] (cast on | co | cast | casting on) [for back/front/sleeve/sleeves/collar/cuff/body/hand/wrist/foot/neck/band/border] [another/further/additional] {n:num} [more/new/extra/additional] [{u:unit}] [on/onto [to] [needle/needles] ] [{t:edgewords}]", meaning: "stitches are cast on", example: "Cast on 60 sts", when: tests{has("n"), no(said("off"))}, build: func(m *match) any { return &ins.CastOn{N: m.num("n", 0)} }},
	{rule: "whole", pattern: "[and/then/now] $make/cont/continue/proceed [on] [working/work] [in] (this/same/like [way/manner/fashion/pattern] | pattern/patt) , [always/but] (having/making/keeping/working) {x:sentence}", meaning: "rows in a way that is described, not counted", example: "Work in this manner, having 1 more st in each chain on each rnd until there are 20 ch in each", when: tests{no(inRow), said("more", "less", "fewer", "additional", "extra"), said("until", "till", "each", "every")}, build: func(m *match) any { return &ins.Even{Course: ins.Course{Until: m.p.unknown()}, Chart: true} }},
	{rule: "whole", pattern: "pick/picking/picked up [and] [k/knit/p/purl] [approx/approximately/about] {rate} [{t:edgewords}]", meaning: "stitches are picked up at a rate", example: "Pick up and knit 3 sts for every 4 rows along front edge", build: func(*match) any { return &ins.PickUp{Rate: true} }},
	{rule: "neutral", pattern: "[at] [rate/ratio] [of] [approx/approximately/about] {rate}", meaning: "at what rate stitches are picked up", example: "Pick up and knit 96 sts, at a rate of 3 sts for every 4 rows", when: tests{either(after("rate", "of", ","), said("rate", "ratio"), opens)}},
	{rule: "neutral", pattern: "{n:num} [$st] per needle/dpn", meaning: "how many each needle has", example: "Cast on 24 sts, 12 per needle"},
	{rule: "neutral", pattern: "{y:cloth} (is/are created/made/formed/worked/produced) (when/by/if {x:sentence})", meaning: "how a fabric is made", example: "Work in stockinette stitch for 12 rows. Stockinette stitch is made when you knit one row and purl the next"},
	{rule: "neutral", pattern: "beginning/starting/begin/start [first/{w:row}] [{w2:row}] with [a] k/knit/p/purl $st", meaning: "which stitch a row begins with", example: "Work 10 rows in k1, p1 rib, beginning the first row with a knit stitch"},
	{rule: "rate", pattern: "[{n:num} $st (in/for/from/per) [each/every] [cast/bound/castoff] [-] [off/on] $st [and/,]] {m:num} $st (for/per/in/from | out of) [each/every] {r:num} {w:row} [and {k:num} $st (in/for/from) each/every {x:stretch}]", meaning: "n stitches for every m rows", example: "Pick up and knit 3 sts for every 4 rows along front edge", build: yes},
	{rule: "whole", pattern: "(pick/take/knit up | pick) [and] [k/knit/p/purl/work/sc/dc/up/crochet] {n:num} [{k:unit}] [{t:edgewords}]", meaning: "stitches are picked up along an edge", example: "Pick up and knit 96 sts", build: pickUp},
	{rule: "neutral", pattern: "[with] {n:num} [$st] on/onto (each [of] [{num}] needle/needles/pins/$st | ({ord} | other/last/remaining) [needle/needles/pin/one])", meaning: "how the stitches lie on the needles", example: "Cast on 52 sts, 18 on each of two needles and 16 on the third", when: tests{no(inRow), no(opens), lineBegins("cast", "co", "with", "using")}},
	{rule: "whole", pattern: "{n:num} [more] [$st] {t:edgewords}", meaning: "stitches are picked up along one edge more", example: "Pick up and knit 10 sts along side, then 3 sts from cast-on edge", when: tests{no(inRow), after(",", "and", "then", ";"), takesUp}, build: func(m *match) any { return &ins.PickUp{N: m.num("n", 0)} }},
	{rule: "whole", pattern: "(k/knit/p/purl/work) [across/over] [held] {n:num} [held] $st (of/from/on) [first/second/other/left/right/spare] (holder/leg/sleeve/arm/thumb/waste/side/front/back/ear/{x:piecename}) [{tail}]", meaning: "held stitches are taken up", example: "Row 6: K7, then k across held 7 sts of first leg", when: tests{said("held", "holder"), takesUp}, build: func(m *match) any {
		if !m.p.line.IsRow() {
			return &ins.PickUp{N: m.num("n", 0)}
		}
		return heldStitches(m)
	}},
	{rule: "whole", pattern: "(k/knit/p/purl/work) [across/over] {n:num} ([live] held [sleeve/back/front/thumb/neck/body] [$st] | [right/left] [back/front/sleeve/thumb/neck] [neck] [$st] (from/on/off) [stitch/right/left/back/front/neck/centre/center/thumb/sleeve] [back/front/neck] [neck] (holder/pin/thread/yarn)) [{tail}]", meaning: "held stitches are taken up", example: "Pick up and k 4 sts along underarm, k52 held sts, pick up and k 4 sts", when: tests{no(inRow), takesUp}, build: func(m *match) any { return &ins.PickUp{N: m.num("n", 0)} }},
	{rule: "whole", pattern: "[and/then] [k/knit/p/purl/rib/work] [$next/first/last] {n:num} [$st] (from/of) (palm/back) [of hand] [needle/holder/$st]", meaning: "stitches of a hand are taken up for a finger", example: "Rib 5 sts from palm, cast on 7 sts, rib 8 sts from back", when: tests{no(inRow), lineSays("palm")}, build: func(m *match) any { return &ins.PickUp{N: m.num("n", 0)} }},
	{rule: "whole", pattern: "[evenly] (distribute/place/space) {n:num} {k:kind} [evenly] {t:edgewords}", meaning: "stitches along an edge", example: "Row 1: Evenly distribute 84 sc along the edge, turn", when: tests{said("along", "evenly", "edge", "edges")}, build: pickUpKind},
	{rule: "whole", pattern: "[$make] [{n:num}] {k:kind} evenly [spaced] {t:edgewords}", meaning: "stitches along an edge", example: "work 65 sc evenly along edge", build: pickUpKind},
	{rule: "whole", pattern: "[$make] {n:num} {k:kind} along/around/up/down/evenly [{t:edgewords}]", meaning: "stitches along an edge", example: "6 hdc along underarm ch", build: pickUpKind},
	{rule: "whole", pattern: "[$make] {n:num} {k:kind} across/in/into/on/over/to/along [$edge] [of] (top/lower/upper/front/side/neck/bottom/long/short/row/buttonhole/right/left/armhole/back) [neck/neckline] [edge/ends/opening/front/end] [{tail}]", meaning: "stitches along an edge", example: "20 sc across top edge", build: pickUpKind},

	{rule: "whole", pattern: "place/slip/put/return/transfer/sl/move/replace/divide/arrange/distribute/take [back] [held/live/first/$rem] {n:num} [held/live/$rem] [left/right/first/second] [sleeve/back/front/thumb/body/neck/shoulder] [held] $st [held] [from/off [first/second/other/left/right/sleeve/thumb] [stitch/waste/scrap/spare/st/safety] [-] holder/holders/yarn/thread/pin/string] [back] (on/onto/to/over/between) [to] [your/my] [set/pair of] [{num}] [smaller/larger/circular/short/long/double/working/left] [pointed/circular/hand] needle/needles/dpn/dpns/ndls/pins [and (join/rejoin/attach {y:stretch})]", meaning: "held stitches are taken up", example: "Sleeve: Return 48 held sleeve sts to dpns", build: takesUpHeld},
	{rule: "whole", pattern: "place/slip/put/return/transfer/sl first {n:num} [$st] and last {m:num} [$st] [(of/from) [$rem] [{num}] [held/$rem] [$st] [on/from] [holder/yarn/thread]] (on/onto/to/over) [{num}] [working] needle/needles/dpn/dpns/ndls", meaning: "held stitches are taken up from both ends", example: "Slip first 7 sts and last 6 sts of rem 26 held sts onto needles", when: tests{no(inRow), said("held", "holder", "yarn", "thread")}, build: func(m *match) any { return &ins.Together{Parts: []ins.Part{{N: m.num("n", 0)}, {N: m.num("m", 0)}}} }},
	{rule: "whole", pattern: "place/slip/put/transfer/sl/leave center/centre/middle/next $st (on/onto/to) [stitch/st/spare/waste/safety/a] [-] [safety] holder/thread/yarn/needle/pin", meaning: "the stitch in the middle is put on a holder", example: "Next row: K20, place center st on a safety pin, k20", when: tests{no(said("sts", "stitches")), either(no(said("next")), no(said("needle")))}, build: func(m *match) any { return &ins.BindOff{N: ins.N(1), Hold: true} }},
	{rule: "whole", pattern: "place/placing/slip/slipping/put/putting/transfer/sl/hold/leave/leaving/move/moving/set/setting [$next/first/last/$rem/other/center/centre/middle/top/bottom/these/held] [set/group of] {n:num} [{u:unit}] [worked] [of] [rnd/row/round] [for [the] [first/second/other/left/right/back/front] sleeve/sleeves/front/back/thumb/hood/body/neck/gusset/shoulder] (on hold on | on hold | on/onto/to/aside) [first/second/third/another/1/one] [stitch/st/spare/waste/separate/extra/a] [-] [holder/holders/thread/yarn/needle/pin/scrap/length/strand] [{t:edgewords}]", meaning: "stitches are put on a holder", example: "Place next 20 sts on a holder",
		build: func(m *match) any {
			if m.amongNeedles() {
				return &ins.Nothing{}
			}
			if m.said("cable", "cn", "double", "dpn") || m.p.at(m.to).Is("and", "&", ",") && m.p.at(m.to+1).Is("hold", "holding", "leave") { // a crossing
				return nil
			}
			if last := m.lastPut(); last != nil {
				return last
			}
			if m.p.line.IsRow() && m.said("remaining", "rem", "remain") && slices.ContainsFunc(m.p.t[:m.from], func(t text.Token) bool { return t.Is("turn") }) { // k22, turn, placing remaining 54 sts on a holder
				return &ins.Leave{N: m.num("n", 0)}
			}
			return &ins.BindOff{N: m.num("n", 0), Hold: true, Next: !m.p.line.IsRow() && m.said("next", "center", "centre", "middle"), Made: m.said("these") && !m.said("next") && m.from > 0 && !m.p.at(m.from-1).Is(".", ":")}
		}},
	{rule: "whole", pattern: "remove [$next/first/last] {n:num} [thumb/gusset/heel] [$st] and put/place/slip/leave [them/then/these] (on/onto) [stitch/st/spare/waste/extra] [-] holder/holders/thread/yarn/needle [{t:edgewords}]", meaning: "stitches are put on a holder", example: "Next round: Remove 15 thumb sts and put them on a stitch holder", build: func(m *match) any { return &ins.BindOff{N: m.num("n", 0), Hold: true} }},
	{rule: "whole", pattern: "place/slip/put/transfer/sl/hold all [of] [the/other] [$st] (except | but | except for) [$next/first/last/center/centre] {n:num} [thumb/gusset/heel/front/back/neck/center/centre] [$st] (on/onto/to) [stitch/st/spare/waste/extra] [-] holder/holders/thread/yarn/needle [{t:edgewords}]", meaning: "all stitches but n are put on a holder", example: "Knit 30, then place all sts except 16 thumb sts on a holder",
		build: func(m *match) any {
			if m.said("last", "first") && !m.p.line.IsRow() { // those that were worked before stay too
				return &ins.Even{Course: ins.Course{Until: m.p.unknown()}}
			}
			return &ins.Leave{N: m.num("n", 0)}
		}},
	{rule: "whole", pattern: "place/placing/slip/slipping/put/putting/transfer/sl/hold [these/all/$rem/other/live] [$st] (on/onto/to) [stitch/st/spare/waste/extra] [-] holder/holders/thread/yarn/needle [{t:edgewords}]", meaning: "stitches are put on a holder", example: "Place remaining sts on a holder",
		build: func(m *match) any {
			if last := m.lastPut(); last != nil {
				return last
			}
			if m.said("these") && m.p.line.IsRow() && m.from > 0 && !m.p.at(m.from-1).Is(".", ":") {
				return &ins.BindOff{Hold: true, Made: true}
			}
			return &ins.Leave{All: true}
		}},
	{rule: "whole", pattern: "[$make] [heel] [flap] [on/over/with/cont/continue] [back/backwards and forth/forwards] [in rows] [on/over/with] [these/first/$rem/last/center/$next/those] [last] {n:num} [left/right/heel] [back/front/sleeve/shoulder] [{u:unit}] [(of/on) (needle/n) [{k:num}]] [only | as before] [for {tail}] [{c:course}]", meaning: "work on some of the stitches", example: "Work on these 29 sts only", build: workOn},

	{rule: "whole", pattern: "[and] [$make/cont/continue] [working] on/over/with these/those [group of] $st [only] [for {tail}]", meaning: "work on some of the stitches", example: "Next row: K20, turn, work on these sts only", when: tests{inRow, no(opens)}, build: func(m *match) any { return &ins.Leave{All: true} }},
	{rule: "whole", pattern: "[$make/complete/finish/cont/continue] [rest] [the] (as/same/exactly/like) [the] [as/same/like] [way/manner] [given/directed/as] [for/as/on] {a:piecename} [{d:asforto}]", meaning: "as another piece", example: "Work as for Back to end of row 40", build: asFor},
	{rule: "whole", pattern: "[$make/complete/finish/cont/continue] (in [the] same manner/way as | exactly as) [for/on] {a:piecename} [{d:asforto}]", meaning: "as another piece", example: "Work in same manner as back until armhole measures 20 cm", build: asFor},
	{rule: "whole", pattern: "(complete/finish/work/cont/continue/shape/make) [second/other/this/remaining] [side/shoulder/half/neck/part] [to match/correspond [to/with] | to correspond to | to match | same | exactly] [as] [first/other/opposite/left/right] [side/one/shoulder] [{d:asforto}]", meaning: "as the other side", example: "Complete to match first side", build: toMatch},
	{rule: "whole", pattern: "$rep [same] [shaping/shapings/instructions/directions] (for/on) (second/other/opposite/remaining/left/right) (side/shoulder/half/front/sleeve/neck)", meaning: "as the other side", example: "Repeat shaping for other side", build: func(m *match) any { return &ins.AsFor{Name: "first side"} }},
	{rule: "whole", pattern: "[$make] {o:ord} {n:num} {w:row} (as for | as in/on/given | same as) {a:piecename}", meaning: "the first rows of another piece", example: "Work 1st 2 rnds as for first motif", build: func(m *match) any {
		if v, ok := m.get("o").(int); !ok || v != 1 {
			return nil
		}
		return &ins.AsFor{Name: value[string](m, "a"), ToRow: m.num("n", 0)}
	}},
	{rule: "whole", pattern: "[and] [$make] (foundation/first/1st/set/setup [-] [up] {w:row} | {w:row} {n:num}) (as for | as in/on/given [for] | same as | of) {a:piecename}", meaning: "the first row of another piece", example: "Ch 30 and work foundation row as for Back", when: tests{no(inRow), one("n")}, build: func(m *match) any { return &ins.AsFor{Name: value[string](m, "a"), ToRow: ins.N(1)} }},
	{rule: "whole", pattern: "[with/in/use/using/work] {c:colour}", meaning: "a row of stripes, which says its colour alone", example: "Row 3: Col C", when: tests{inRow, wholeLine}, build: func(m *match) any { return &ins.Even{} }},
	{rule: "whole", pattern: "(shape [the] raglan/raglans/armhole/armholes/top/cap/neck/shoulder/shoulders/sides [shaping] | $make/complete [the] (raglan/raglans/armhole/armholes/top/cap/neck/shoulder/shoulders) shaping/shapings/decreases) (as/same) [as] [given] for {a:piecename} [until {u:until}]", meaning: "shaped as another piece, up to a count or a length", example: "Shape raglans as given for Back until 8 sts remain", build: func(m *match) any {
		var c course
		if u, ok := m.get("u").(clause); ok {
			u(&c)
		}
		if !c.Until.Set() { // how many that takes away is not said again
			c.Until = m.p.unknown()
		}
		return &ins.Even{Course: c.Course}
	}},
	{rule: "asforto", pattern: "[,] (to | until | up to) [point] [where/when/at] [which] {u:until} [{d:asforto}]", meaning: "until there are n stitches", example: "Work as for Back until 42 sts rem in armhole shaping", build: func(m *match) any {
		var c course
		if value[clause](m, "u")(&c); !c.Until.Set() {
			return nil
		}
		a := asForTo(m).(*ins.AsFor)
		a.Count = c.Until
		return a
	}},
	{rule: "asforto", pattern: "[,] (to | until | up to | as far as) [end of] ([completion of] {w:row} {n:num} | {s:stretch}) [{d:asforto}]", meaning: "how far", example: "Work as for Back to end of row 40", build: asForTo},
	{rule: "asforto", pattern: "(to | until | up to | as far as | from {star} to) {z:star} [{d:asforto}]", meaning: "as far as a sign", example: "Work as for Back to **", build: func(m *match) any {
		a := asForTo(m).(*ins.AsFor)
		a.To = value[string](m, "z")
		return a
	}},
	{rule: "whole", pattern: "[$make/complete/rep/repeat] from {star} (to/until) {z:star} [as/same] [as] [given/directed/worked] (for/on/of) {a:piecename}", meaning: "as another piece, between two signs", example: "Work from * to ** as given for Back", build: func(m *match) any { return &ins.AsFor{Name: value[string](m, "a"), To: value[string](m, "z")} }},
	{rule: "asforto", pattern: "[,/;/but] [but] [with] reversing/reverse/reversed [all] [shaping/shapings]", meaning: "mirrored", example: "Work as for Right Front, reversing shaping", build: func(m *match) any { return &ins.AsFor{Reversed: true} }},

	{rule: "whole", pattern: "divide {x:parts}", meaning: "the row is divided", example: "Divide the row: 27 sts for Front, 29 sts for Back", build: func(m *match) any { return &ins.Divide{Parts: value[[]ins.Part](m, "x")} }},
	{rule: "whole", pattern: "(join parts | take up) {x:parts}", meaning: "one row of several parts", example: "Take up 62 held sts of Yoke, add 8 sts", build: func(m *match) any { return &ins.Together{Parts: value[[]ins.Part](m, "x")} }},
	{rule: "whole", pattern: "place markers between {x:parts}", meaning: "markers between panels", example: "Place markers between the panels: 34 sts for Back, 12 sts for Left arm", build: func(m *match) any { return &ins.Markers{Panels: value[[]ins.Part](m, "x")} }},
	{rule: "whole", pattern: "(turn/rotate/turning) [work/piece/ribbing/cuff/band/{x:piecename}] [90] [degrees] [clockwise] [,] [and/to/in order] [to] work/working [across/along/down/into] [{t:edgewords}]", meaning: "the work goes along its row ends", example: "Turn ribbing to work along its long edge",
		build: func(m *match) any {
			if m.said("edge", "side", "ends", "along", "rows") && !(m.said("opposite", "other") && m.said("ch", "chain", "chs")) {
				return &ins.Edge{}
			}
			return nil
		}},
	{rule: "whole", pattern: "{a:piecename} [should] [now] $meas {l:len} [{t:fromwhere}]", meaning: "how much the piece measures", example: "Piece measures 46 cm from beg", build: measure},
	{rule: "whole", pattern: "[$meas] {l:len} from {t:edgewords}", meaning: "how much the piece measures", example: "Measures 46 cm from beg", build: measure},

	{rule: "join", pattern: "(join/close/joining/connect/closing/unite/uniting) [it] [each/every/all [and every]] [following] [rnd/rnds/rounds/round/ring/circle/work/row/rows/time] [with/by/using/,] [{s:slip}] [{to:jointo}] [{x:joinfor}] [{to:jointo}]", meaning: "the round is joined", example: "join with sl st in top of ch-3", build: join},
	{rule: "join", pattern: "{s:slip} ([{to:jointo}] to/and join/close [rnd/round/work] [{x:joinfor}] [{to:jointo}] | {to:jointo} [and] [to] (form/join/close/make/end/finish/complete) [ring/circle/rnd/round] | join {to:jointo} | [to] join/close [rnd/round] [{to:jointo}])", meaning: "the round is joined", example: "sl st in first sc to join", build: join},
	{rule: "join", pattern: "(end/finish/ending/finishing) each/every/all $row with {s:slip} [{to:jointo}]", meaning: "the round is joined", example: "Rnd 2: Sc in each sc around, finish each round with sl st in first st", when: tests{crochet}, build: join},
	{rule: "join", pattern: "{s:slip} (to join each/every/all $row | each/every/all $row closed)", meaning: "the round is joined", example: "Rnd 2: Sc in each sc around, sl st to join every round", when: tests{crochet}, build: join},
	{rule: "join", pattern: "[{s:slip}] [and] form/make/forming [into] ring/circle", meaning: "the round is joined", example: "ch 4, form a ring", build: join},
	{rule: "join", pattern: "{s:slip} to/in/into [$tch] {n:chaincalled} [to join] [{tail}]", meaning: "the round is joined", example: "Rnd 2: Ch 1, sc in each st around, sl st to ch 1", when: tests{either(inRounds, crochet), endsOrKind("pg")}, build: func(m *match) any { return &ins.Join{} }},
	{rule: "join", pattern: "{s:slip} to/in/into {o:ord} $ch from [$tch] {n:chaincalled} [at/of/from $beg of $row]", meaning: "the round is joined", example: "Rnd 2: Ch 4, dc in same st, (dc, ch 1, dc) in each st around, sl st in 3rd ch from ch 4", build: func(m *match) any { return &ins.Join{Chain: m.num("n", 0), Nth: ins.N(value[int](m, "o"))} }},
	{rule: "join", pattern: "(join/joining/unite) last {n:chaincalled} [with {s:slip}] {to:jointo}", meaning: "the last chain is joined to the beginning", example: "Rnd 2: *ch 5, sc in next sp; rep from * around, join last ch-5 to first sc", build: join},
	{rule: "join", pattern: "insert hook in/into first $ch [and] to make/form ring/circle", meaning: "the round is joined", example: "Ch 4, insert hook into the 1st ch to make a ring", build: func(m *match) any { return &ins.Join{Name: "ring"} }},
	{rule: "join", pattern: "{s:slip} together {x:joinfor}", meaning: "the round is joined", example: "Ch 6 and sl st together to form a ring", build: join},
	{rule: "join", pattern: "{s:slip} {x:joinfor}", meaning: "the round is joined", example: "sl st to form a ring", build: join},
	{rule: "slip", pattern: "[invisible/1/one/with] (sl st | slst | ss | st st | slip st/stitch | slipstitch | sl $st | s s | invisible join | single crochet | sc | hdc | dc | htr | tr | ({num} ch/chain/chs | ch/chain {num}) [and] [{num}] (sc/hdc/dc/htr/tr) | {b:bracketed})", meaning: "a slip stitch", example: "join with a slip stitch", build: func(m *match) any {
		if t := m.p.at(m.to - 1); t.Kind == 'g' && !(saysOne(t.Sub, []string{"ch"}) && saysOne(t.Sub, []string{"sc", "hdc", "dc", "htr", "tr"})) { // with (1 ch and 1 sc)
			return nil
		}
		if m.p.at(m.to-2).Is("st") && !m.p.r.crochet {
			return nil
		}
		if (m.said("sc", "dc", "single") || m.p.at(m.to-2).Is("st")) && !m.said("with") && !m.p.at(m.from-1).Is("with", "by", "using") {
			return nil
		}
		return true
	}},
	{rule: "jointo", pattern: "(to/in/into/through/at/on/with) [{o:ord}] [$tch] ([st] [$ch] of/from [$tch/joining] {n:chaincalled} | {num} $ch of [$tch] {n:chaincalled} | {c:core} [{tail}] | top of {tail} | $beg [{tail}] | {n:chaincalled} [{tail}] | beg)", meaning: "what the round is joined to", example: "join to 3rd ch of ch-5",
		build: func(m *match) any {
			j := &ins.Join{}
			if c, ok := m.get("c").(ins.Place); ok {
				o, _ := m.get("o").(int)
				j.First = c.Unit.Stitch != nil && (c.Kind == ins.InFirst || o == 1)
				if c.Unit.Chain && !c.Unit.Space && o > 1 { // to 3rd ch
					j.Nth = ins.N(o)
				}
				if c.Kind == ins.InTop {
					j.Chain = c.Unit.Size
				}
				if c.Kind == ins.InTop && m.said("3rd", "third", "2nd", "second", "4th", "fourth", "5th", "6th", "first") {
					for i := m.from; i < m.to; i++ {
						if o := m.p.t[i].Ord; o > 0 && !m.said("stitch") {
							j.Nth = ins.N(o)
							break
						}
					}
				}
			}
			if n, ok := m.get("n").(ins.Num); ok {
				j.Chain = n
				if o, ok := m.get("o").(int); ok {
					j.Nth = ins.N(o)
				}
			}
			return j
		}},
	{rule: "jointo", pattern: "(to/in/into/through/at/on/with) {x:joinwords}", meaning: "what the round is joined to", example: "join to 6th st of ch-10 first made", build: func(m *match) any { return &ins.Join{} }},
	{rule: "joinfor", pattern: "(to/into/and/in/for) [form/make/close/work/working/knit] [in/into/a] (ring/circle/rnd/round/rounds) [{tail}]", meaning: "what is joined", example: "join to work in the round",
		build: func(m *match) any {
			if m.said("ring", "circle") {
				return "ring"
			}
			return "round"
		}},
	{rule: "joinyarn", pattern: "place/slip/put/take [first/$rem/other/last/next] {n:num} $st from [first/second/other/2nd] [st/stitch/spare/a] [-] holder/thread/needle/pin (to/on/onto/back) [to/on/left/right] [hand] [needle/needles] [and (join/rejoin/attach {y:stretch})]", meaning: "held stitches are taken up", example: "Place the 15 sts from first st-holder to needle", build: func(m *match) any { return &ins.JoinYarn{From: "yarn"} }},
	{rule: "joinyarn", pattern: "[with rs/ws facing ,] [carefully] [(remove/undo) [waste/scrap] yarn [and]] (place/slip/slide/put/return/transfer/replace/move/sl/divide/arrange/distribute/take) [back] [all] [held/live] [left/right/first/second] [sleeve/back/front/thumb/body/neck/shoulder] sts/stitches [held/waiting | on hold] [(of/for) [left/right/first/second] sleeve/back/front/thumb/body/neck/shoulder] [(from/off) [first/second/left/right/thumb/sleeve] [stitch/waste/scrap/spare/st] [-] holder/holders/yarn/thread/pin/string] [back] (on/onto/to/over/between) [to] [your/my] [{num}] [smaller/larger/set [of]] [circular/short/long/double/working/left] [-] [pointed/point/circular/hand] needle/needles/dpn/dpns/ndls/pins [and/, (join/rejoin/attach {y:stretch})]", meaning: "held stitches are taken up", example: "Place held thumb sts on needles and rejoin yarn",
		when: tests{no(inRow), no(crochet), either(said("held", "hold", "holder", "holders", "waste", "scrap", "waiting"), all(said("thumb"), said("back"))), no(said("cable"))}, build: func(m *match) any { return &ins.JoinYarn{From: "held"} }},
	{rule: "joinyarn", pattern: "(return/transfer/replace) [held] {n:num} [right/left] [back/front/sleeve/body/shoulder/neck] [held] $st [from [stitch] holder] to/on/onto [needle/needles/left/right/working] [needle/needles] [and (join/rejoin {y:stretch})]", meaning: "held stitches are taken up", example: "Return the 32 back sts to needles and join A", build: func(m *match) any {
		if m.said("held") && !m.said("join", "rejoin") && !m.p.line.IsRow() {
			return nil
		}
		return &ins.JoinYarn{From: "yarn"}
	}},
	{rule: "joinyarn", pattern: "[with {tail} ,] (join/rejoin/attach/attaching/joining/tie/add) [in/on] [your/my] [new/working/first/second/third/fourth/next/another/separate/fresh/2nd] ({c:colour} [yarn] | [next/first] (yarn/thread/wool/cotton/ball) [of yarn/wool/thread]) [with] [{s:slip}] [{to:yarnto}] [using/with/by] [{s2:slip}] [{t:edgewords}]", meaning: "yarn is joined", example: "join yarn in next st", build: joinYarn},
	{rule: "joinyarn", pattern: "(join/rejoin/attach/attaching) [with] {s:slip} {to:yarnto}", meaning: "yarn is joined", example: "rejoin with sl st in next st", when: tests{said("rejoin", "attach", "attaching")}, build: joinYarn},
	{rule: "joinyarn", pattern: "(join/rejoin/attach) {c:colour} with [a/an] [standing/starting/$beg] {k:kind} {to:yarnto}", meaning: "yarn is joined with a stitch", example: "join B with sc in next st", build: joinYarn},
	{rule: "yarnto", pattern: "(in/to/at/into/on/around/with/between | between any) {c:core} [{tail}]", meaning: "where yarn is joined", example: "join yarn in any ch-2 sp", build: func(m *match) any {
		if c := value[ins.Place](m, "c"); !m.p.at(m.from).Is("between") || c.Unit.Space || c.Unit.Between {
			return c
		}
		return gapBehindNext(m)
	}},
	{rule: "colour", pattern: "(mc/cc/a/b/c/d/e/f/white/red/blue/green/black/pink/yellow/orange/grey/gray/brown/purple/gold/cream/main/contrast/navy/natural) [{n:num}] [color/colour]", meaning: "a colour", example: "join B in any ch-2 sp", build: yes},
	{rule: "colour", pattern: "[new/next/main/contrast/second/contrasting] (color/colour/col/yarn/shade) [a/b/c/d/e/f | {n:num}] [yarn]", meaning: "a colour", example: "join color B in any ch-2 sp", build: yes},

	{rule: "neutral", pattern: "with/using {c:colour}", meaning: "a yarn that has a number", example: "Row 2: Ch 1, with C1 sc in next 10 sts, with C2 sc in each st to end", build: func(m *match) any {
		if t := m.p.at(m.to - 1); t.Kind != 'n' || !t.Glued || m.p.at(m.to).Glued {
			return nil
		}
		return &ins.Nothing{}
	}},
	{rule: "neutral", pattern: "$beg/commencing/commence/begin [with] [rs/ws/right/wrong] [side] [with] [k/knit/p/purl] [rs/ws] [{w:row} [{n:num}]] [[of] pattern/patt]", meaning: "which row it begins with", example: "Beg with a k row, work 10 rows in stockinette stitch", build: func(m *match) any {
		if t := m.p.at(m.to); !m.said("with") || m.has("n") && !t.Is(",", ".") && !(t.Kind == 'g' && m.p.neutralAll(t.Sub)) && m.to < len(m.p.t) {
			return nil
		}
		return &ins.Nothing{}
	}},
	{rule: "neutral", pattern: "([always] slipping [always] | [remembering] always to slip) first $st [(of/at/on/in) [$beg of] each/every/all [{w:row}] [except [on/in/of] first/last {w2:row}]]", meaning: "how rows begin", example: "Knit 5 rows, slipping the first st of each row"},
	{rule: "neutral", pattern: "(holding/hold/keeping/keep/pushing/push/folding/fold) [all/each] ({c:chaincalled} | {u:unit}) [to/at/in/towards] back/front [of work/you]", meaning: "what is kept out of the way", example: "Row 2: Holding ch-4 loops at back, sc in each sc across", when: tests{inRow, no(said("last"))}},
	{rule: "neutral", pattern: "([remember/remembering] [always] [to]) slip/sl first $st (of/at/on/in) [$beg of] each/every/all {w:row} [purlwise/knitwise] [throughout] [and knit last [$st] [of each/every {w2:row}]] [except [on/in/of] first/last {w3:row}]", meaning: "how rows begin", example: "Slip the first st of every row"},
	{rule: "neutral", pattern: "[always] slip/sl first [$st] and knit last $st (of/at/on/in) each/every/all {w:row} [throughout]", meaning: "how rows begin and end", example: "Slip the first and knit the last st of every row"},
	{rule: "neutral", pattern: "$beg/commencing/begin with {k:kind} {n:num}", meaning: "which stitches it begins with", example: "Starting with p2, work 4 rows in k2, p2 rib"},
	{rule: "neutral", pattern: "[and/but] end/ending/finish/finishing [off] {w:row} with/by", meaning: "what the row ends with", example: "Row 8: K 1, p across, ending row with k 1", when: tests{inRow, beforeThing}},
	{rule: "neutral", pattern: "end/ending [off] with {w:row} [which/that ends with {k:kind} {n:num}]", meaning: "which row it ends with", example: "Work 10 rows even, ending with a row that ends with p2"},
	{rule: "neutral", pattern: "end/ending [off] [on/with/after/by] ([k/knit/p/purl/rs/ws/right/wrong/same] [side] {w:row} [{n:num} [or [{row}] {num}]] | rs/ws/right/wrong [side] facing [for [$next] {w2:row}])", meaning: "which row it ends with", example: "Work 10 rows even, ending with RS facing for next row"},
	{rule: "whole", pattern: "[$make] [{n:num}] {k:kind} (in/into/on/onto/along/around/over) [any/same] [$st] [of/on] [first/second/right/left/other/new/previous/next/outer/inner/back/front/{ord}] $limb [{num}] [contour/edge/{num}] [{tail}]", meaning: "stitches of another piece", example: "Rnd 11: 12 sc in first leg, ch 3, 12 sc in second leg", when: tests{no(said("each"))}, build: pickUpKind},
	{rule: "whole", pattern: "(join/connect/attach) ([it/them] to/into/with/on (first/second/right/left/other/new/previous/next/{ord}) $limb [with/by/using] | [both/two] legs/arms/ears/feet/limbs/wings [together] with/by/using) [{n:num}] {k:kind}", meaning: "the first stitch of another piece", example: "Rnd 11: Ch 3, join to first leg with sc, 11 sc around first leg", build: func(m *match) any {
		if k := value[thing](m, "k"); k.Kind == nil || k.Kind.ID == "slst" {
			return &ins.Nothing{Part: true}
		}
		return pickUpKind(m)
	}},
	{rule: "neutral", pattern: "these/those/this/that/all $inc/$dec [row/rows/rnd/rnds/round/rounds] should/will/are/is/must/may/give/make/form/shape/create/shapes/forms/makes/creates {x:stretch}", meaning: "what the shaping is for", example: "Rnd 20: 8 sc, dec x 4, 8 sc. These decreases should lie in front"},
	{rule: "neutral", pattern: "working [your] last [{num}] {k:kind} between [the] last {k2:kind} and [$tch] {c2:chaincalled}", meaning: "what the last one is worked into", example: "Rnd 2: (Ch 4, sc between next 2 sts) 15 times, working last sc between last tr and ch-4"},
	{rule: "neutral", pattern: "[working/making/work/placing] [your/the] [final/last] [{num}] {k:kind} [of] [row/rnd/rep/repeat] in/into/on/around/over {c:core} [{tail}]", meaning: "what the last one is worked into", example: "*sc in next st; rep from * across, working last sc in top of ch-3", when: tests{said("last", "final")}, build: func(m *match) any {
		c, ok := m.get("c").(ins.Place)
		return &ins.Nothing{Tch: ok && (c.Kind == ins.InTop || c.Unit.Chain || c.Unit.Space && m.said("around", "over"))}
	}},
	{rule: "neutral", pattern: "$center {k:kind} of corner", meaning: "which stitch it is", example: "Rnd 3: *3 sc in next sc – center sc of corner, sc in each of next 2 sc; rep from * around", build: func(m *match) any {
		if !m.p.at(m.from-1).Is("-", "--") && !m.p.at(m.from).Glued {
			return nil
		}
		return &ins.Nothing{}
	}},
	{rule: "neutral", pattern: "{k:kind} made/formed/completed", meaning: "what the stitches before it make", example: "Rnd 2: *3 dc in next sp, ch 3, sl st in 3rd ch from hook - picot made, 3 dc in same sp; rep from * around", build: func(m *match) any {
		if k := m.p.at(m.from - 1); k.Kind == 'n' || k.Is("last", "next", "first", "in", "into", "each", "of", "sc") {
			return nil
		}
		return &ins.Nothing{}
	}},
	{rule: "neutral", pattern: "forming {n:num} ripple/ripples/wave/waves/chevron/chevrons/scallop/scallops/peak/peaks [{x:stretch}]", meaning: "what the row looks like", example: "Row 1: Ch 1, sc in each st, forming 4 ripples at the end of this row"},
	{rule: "neutral", pattern: "[not] counting/including/excluding [each/all] {u:unit}", meaning: "what a count takes in", example: "Row 2: Ch 1, sc in each st and sp across, counting ch-1 spaces", when: tests{opensOr(","), no(beforeKind("w"))}},
	{rule: "neutral", pattern: "(do not | don't) [work/make/crochet] {k:kind} in/into {c:core}", meaning: "what is not done", example: "Rnd 1: Sc in each st around, do not sc in sl st"},
	{rule: "neutral", pattern: "(aligning/matching/lining) [up] [{x:stretch}]", meaning: "how edges lie", example: "Aligning sts of Rows 1 and 30, sc in each st across"},
	{rule: "neutral", pattern: "[working/work/crocheting] [through/thru/in/into] (both/all/two/three/{num}) (thicknesses/layers/pieces/sides/halves/thickness) [of {u:unit}] [at same time] [to close/join [hole/opening/it/together/leg/arm/ear/limb/bottom]]", meaning: "how edges lie", example: "Working through both thicknesses, sc in each st across", build: func(m *match) any { return &ins.Nothing{Fold: m.said("both", "two")} }},
	{rule: "neutral", pattern: "(do not | don not | dont | don't) (turn/join/fasten/finish/tie/end/bind/cut/count/twist/break/close/work/slip) [{x:stretch}]", meaning: "what is not done", example: "6 sc in ring, do not join"},
	{rule: "neutral", pattern: "(change/changing/switch/drop/pick/carry/cut/fasten) [up] [back] [to/in] [to] [{x:stretch}]", meaning: "colours and needles are changed", example: "Change to larger needles", when: tests{no(said("pick")), no(said("fasten")), either(no(said("in")), said("color", "colour", "yarn", "to", "mc", "cc", "b", "a", "c"))}},
	{rule: "neutral", pattern: "leave/leaving [a/about/approximately] [long] {len} [long] (tail/tails/end/ends/length/strand/thread/yarn) [{x:stretch}]", meaning: "yarn is left to sew with", example: "Rnd 1: 6 sc in ring, join, fasten off leaving a 12 inch tail"},
	{rule: "neutral", pattern: "(thread/draw/pull/run/gather) [yarn/tail/thread/end] {x:stretch}", meaning: "yarn is drawn through", example: "Draw yarn through remaining sts"},
	{rule: "neutral", pattern: "$inc/$dec [by] {n:num} {u:unit} [in/on/with/at] [end] [of] each/every/this [row/rnd/round]", meaning: "how many groups more or fewer each row has", example: "Rows 4-9: Work as Row 3, increasing 1 block in each row", when: tests{ofGroups("u")}},
	{rule: "neutral", pattern: "$inc/$dec until [you] [are/have] [left] [with] [only] {n:num} {u:unit} [remains/remain/left]", meaning: "how many groups there are then", example: "Rows 12-19: Rep Row 11, decreasing until you are left with 1 block", when: tests{ofGroups("u")}},
	{rule: "neutral", pattern: "{n:num} [{u:unit}] (increased/decreased/inc'd/dec'd/added/incd/decd | inc d | dec d | ' d) [{t:edgewords}]", meaning: "by how many stitches the row changed", example: "Row 3: K2, m1, k to last 2 sts, m1, k2. 2 sts increased."},
	{rule: "neutral", pattern: "[an/a] inc/dec/increase/decrease of {n:num} {u:unit}", meaning: "by how many stitches the row changed", example: "Row 3: K2, m1, k to last 2 sts, m1, k2. 48 sts, an increase of 2 sts"},
	{rule: "neutral", pattern: "{n:num} $st inc/dec", meaning: "by how many stitches the row changed", example: "Row 3: K2, m1, k to last 2 sts, m1, k2. 2 sts inc", when: tests{endsOr("."), opensOr(".", ";")}},
	{rule: "neutral", pattern: "(turn/rotate/turning/rotating) [work/piece/tab] [{n:num} degrees] [again/clockwise/counterclockwise] [to [right/left/side]]", meaning: "the work is turned to its side", example: "Rotate work 90 degrees clockwise, pick up and knit 3 sts along the edge", when: tests{said("rotate", "rotating", "degrees")}},
	{rule: "neutral", pattern: "[and/work] ((purl/p/purling/knit/k/knitting) [all/any/each] (yo/yos | yarn overs/over [loops/loop]) | (yo/yos | yarn overs) p/purl/purled/k)", meaning: "how the yarn overs among stitches as they come are worked", example: "Row 2: Work each stitch as it appears, purl yo's", build: func(m *match) any {
		if m.from < 4 || !slices.ContainsFunc(m.p.t[:m.from], func(t text.Token) bool {
			return t.Is("appear", "appears", "come", "comes", "face", "lie", "established", "set", "present", "show")
		}) {
			return nil
		}
		return &ins.Nothing{}
	}},
	{rule: "neutral", pattern: "[work/working] all/every/each [other/following] rs/ws/right/wrong/even/odd/alternate/alt [side/numbered] $row as {x:sentence}", meaning: "how the rows between are worked", example: "Work all WS rows as they appear"},
	{rule: "neutral", pattern: "(end/ending/finish/finishing/stop/stopping by/with/after completing/working/finishing) {w:row} {n:num} [{x:fromwhere}]", meaning: "which row it ends with", example: "End by completing Row 4"},
	{rule: "neutral", pattern: "working/work over/around/behind/between {u:unit} {tail}", meaning: "what the next stitches are worked over", example: "*working over ch-3 sp of Rnd 3, 3 dc in ch-3 sp of Rnd 2; rep from * around", when: tests{before(",")}},
	{rule: "neutral", pattern: "or [until] [{x:piecename}] [$meas] {l:len} (less/short/shorter/before/from/longer/more/under) [than] [of] [your/total/full/finished] [desired/required/wanted] {y:stretch}", meaning: "or another length", example: "Work even until foot measures 18 cm, or 5 cm less than desired length"},
	{rule: "neutral", pattern: "proceed/proceeding [on] [directly/straight/now] to {x:sentence}", meaning: "which part comes next", example: "Do not fasten off, proceed to neckline decrease instructions", when: tests{said("instructions", "section", "part", "step", "below")}},
	{rule: "neutral", pattern: "$beg/begin/start/commence (to decrease/increase/shape/dec/inc | decreases/decreasing/increases/increasing/shaping | dec/inc (to shape | for)) [the] [crown/top/rows/rounds/rnds/toe/heel/thumb/neck/waist/waistline/sides/sleeve/armhole/armholes] [as follows]", meaning: "what begins now", example: "Knit 1 round, then begin to decrease", when: tests{endsOrKind("p")}},
	{rule: "neutral", pattern: "$inc/$dec for {x:stretch}", meaning: "what the rows after it are for", example: "Increase for the leg: *k1, kfb; rep from * to end", when: tests{opens, before(":")}},
	{rule: "neutral", pattern: "work/make/working/making [{n:num}] [more] buttonhole/buttonholes {x:stretch}", meaning: "when buttonholes are worked", example: "Make a buttonhole in this manner every 2 in 7 times more", when: tests{no(said("follows", "thus", "row")), endsOr(".", ";", ",")}},
	{rule: "neutral", pattern: "{n:num} {w:row} [rib/ribbing/moss/garter/pattern/patt] [st/stitch] [in all]", meaning: "how many rows there are now", example: "Rep Row 2 15 times = 16 rows rib", when: tests{after("=")}},
	{rule: "neutral", pattern: "$rep following {n:num} {w:row} {x:sentence}", meaning: "what the rows after it are for", example: "Repeat the following 8 rows until the scarf is as long as you like"},
	{rule: "neutral", pattern: "[each/all/every] [of] [pattern] [{w2:row}] [that follow | below | following] [are/is] [written/worked] [to] begin/begins/start/starts and end/ends/finish/finishes [on] [each/every/all] [{w:row}] with {x:sentence}", meaning: "how each row begins and ends", example: "The rows that follow are written to begin and end with k1, p1, k1", when: tests{no(inRow), no(crochet)}},
	{rule: "neutral", pattern: "needle {n:num} (holds/has) {m:num} [$st]", meaning: "what a needle holds", example: "Knit 1 round, needle 2 holds 16 sts"},
	{rule: "neutral", pattern: "working over/across [$next/first/center/centre/these/those] {n:num} [center/centre/heel/instep] $st", meaning: "over how many stitches the next ones go", example: "Row 3: K12, working over 16 centre sts, k7, k2tog, k to end", when: tests{inRow, no(opens), before(",")}},
	{rule: "neutral", pattern: "(to make | for) [a/the/it/your/this] wider/larger/longer/smaller/bigger/shorter/narrower/deeper {x:sentence}", meaning: "how another size is worked", example: "To make a wider edge, cast on 6 sts and begin with k3 instead of k1", when: tests{opens, no(inRow)}},
	{rule: "neutral", pattern: "there are/is [now] {k:num} (sets/set/groups/group) of {n:num} $st [on [the] needle/needles]", meaning: "how many stitches stand together", example: "Row 1: K. There are two sets of 20 sts on the needle"},
	{rule: "neutral", pattern: "kitchener [st/stitch] {x:sentence}", meaning: "how the last stitches are closed", example: "Row 3: K. Kitchener st the remaining 44 sts together"},
	{rule: "neutral", pattern: "noting that {x:stretch}", meaning: "a remark beside it", example: "Noting that first row is a wrong-side row, work 7 rows in garter st"},
	{rule: "neutral", pattern: "in/on $next {w:row}", meaning: "in which row", example: "Next row: Knit every 2 together in the next row", when: tests{either(no(opens), before(",")), either(opens, endsOr("."))}},
	{rule: "neutral", pattern: "(having/with number | which/that must be [able] | [$st] divisible/divided) {x:sentence}", meaning: "what a number is a multiple of", example: "Sc closely around, having number of sc divisible by 3", when: tests{said("divisible", "divided", "multiple")}},
	{rule: "neutral", pattern: "[$make] decs/incs/decreases/increases/decreasings/increasings/shapings as {x:stretch}", meaning: "where the shaping falls", example: "Working decs as set by last row, dec 1 st at each end of next 3 rows"},
	{rule: "neutral", pattern: "keeping {x:stretch}", meaning: "what stays as it is", example: "Work 10 rows even, keeping both edges straight"},
	{rule: "neutral", pattern: "divide [{st:unit} | rest of $st] [evenly] (over/on/onto/between/among/evenly) {x:stretch} [and knit/work with/using {y:stretch} | [:/;] {z:onneedles}]", meaning: "stitches are put on needles", example: "Divide sts over three needles: 20, 20, 16"},
	{rule: "onneedles", pattern: "{n:num} [,/-/--/and/&] [and] ({x:onneedles} | {m:num})", meaning: "how many stitches each needle holds", example: "Row 3: K. Divide sts over three needles: 20, 20, 16", build: yes},
	{rule: "neutral", pattern: "(arrange/rearrange/distribute/spread/divide) {x:stretch} [:] {y:sentence}", meaning: "stitches are put on needles", example: "Arrange sts as follows: 19 sts on needle 1, 9 sts each on needles 2 and 3", when: tests{said("follows")}},
	{rule: "neutral", pattern: "working {n:num} [more] buttonhole/buttonholes", meaning: "words about buttonholes", example: "Rep rows 1 and 2 until there are 40 sts, working 2 more buttonholes", when: tests{no(inRow), endsOr(",", ".")}},
	{rule: "neutral", pattern: "[and/while] [at] [same] [time] [,] (work/make/making/working) [first/another/a] [{n:num}] [more] buttonhole/buttonholes {x:stretch}", meaning: "how buttonholes are worked, described after it", example: "Cont in st st, at the same time work a buttonhole on 5th row and every foll 12th row as follows", when: tests{said("follows", "foll", "before", "these"), endsOr(":", ".", ";")}},
	{rule: "neutral", pattern: "[and/while/but] omitting [final/last] {x:sentence}", meaning: "what is left out at the end", example: "Rep last 2 rows until all side sts are worked, omitting the final p1 and k1", when: tests{no(crochet), no(inRow), no(said("join", "turn"))}},
	{rule: "neutral", pattern: "(divide/dividing/place/put/slip/arranging/distributing/arrange/distribute) [these/those/all] [{n:num}] $st [evenly/equally] (onto/over/on/between/among/across) [{k:num}] [three/four/both/double] [double] [pointed] [needles/needle/dpns/dpn/pins]", meaning: "stitches are put on needles", example: "Divide these 16 sts onto 3 needles", when: tests{said("needles", "dpns", "pins")}},
	{rule: "neutral", pattern: "(these/above/those/last) [above] {n:num} [pattern] {w:row} (constitute/constitutes/complete/completes/comprise/compose/make/makes/establish/set/are) [up] [one/first/whole] [pattern/patt/repeat/design/lace/rib/ribbing] [{x:stretch}]", meaning: "which rows are the pattern", example: "Row 4: Repeat Row 2, these above 4 rows complete pattern", when: tests{said("pattern", "patt", "repeat", "design", "lace", "rib", "ribbing")}},
	{rule: "neutral", pattern: "(pattern/patt/chart) repeat/rep outlined/marked/shown {x:sentence}", meaning: "words about a chart", example: "Next rnd: K to end. Pattern repeat outlined in red is worked twice in each round"},
	{rule: "neutral", pattern: "(knitting/working/purling) [all/each/every] [of] [$st] [on/of] [first/second/other/both/each/{x:edgename}] [needle/needles] (tbl | through/in/into back [of] [loop/loops/lps/$st])", meaning: "how the stitches are worked", example: "K 1 round, knitting all sts on second needle through back loops", when: tests{no(opens), said("all", "each", "every", "st", "sts", "stitches")}},
	{rule: "neutral", pattern: "step/steps {n:num} [and/to/- {m:num}]", meaning: "lines of a numbered list", example: "Rep these last 2 rows (steps 8 and 9) until 9 sts rem", when: tests{endsOr(")")}},
	{rule: "neutral", pattern: "[cont/continue] [to] [$make] [in/on] [this/that] [way/manner] cabling/crossing/twisting [{x:stretch}] [k/knit {n:num} $st {y:stretch}]", meaning: "where a cable is crossed", example: "Cont in patt, cabling the 8 sts every 8th row on right side, until piece measures 20 cm", when: tests{no(inRow), said("row", "rows", "rnd", "rnds", "round", "rounds")}},
	{rule: "neutral", pattern: "{n:num} buttonhole/buttonholes (made/worked/complete/completed | now made)", meaning: "how many buttonholes a row makes", example: "Row 3: Sc in next 3 sts, ch 2, sk 2 sts, sc in next 14 sts. 1 buttonhole made"},
	{rule: "neutral", pattern: "[and] making [a] buttonhole/buttonholes {x:sentence}", meaning: "when buttonholes are worked", example: "Work even until piece measures 9 in, making a buttonhole, 3 sts in from front edge, after the first inch and every 2 in thereafter", when: tests{no(inRow), said("thereafter", "apart", "every", "made", "inches", "inch", "cm"), either(no(said("until")), said("made", "buttonholes"))}},
	{rule: "neutral", pattern: "[the] [heel] (heel/flap/foot/toe/thumb) (is/are) worked [back and forth] [in rows/rounds/rnds] over [the] [first/last/next/these/half] {n:num} [heel] $st [only] [in rows]", meaning: "over how many stitches a part is worked", example: "Heel flap is worked back and forth over 28 sts; place the other 28 sts on a holder"},
	{rule: "neutral", pattern: "allowing for [the] [extra/more/fewer/increased/decreased/new/additional] {x:stretch}", meaning: "words about it", example: "Rep the last 4 rows 4 times more, allowing for extra sts on gusset after each inc"},
	{rule: "neutral", pattern: "(arrange/distribute/spread) {x:stretch} [[:/;] {z:onneedles}]", meaning: "stitches are put on needles", example: "Arrange sts on 3 needles"},
	{rule: "neutral", pattern: "[working/work] [now] (on/along/in/across/down) opposite/other/second/bottom side of ($row {n:num} | first $row)", meaning: "the round goes on along the other side of its foundation chain", example: "Rnd 1: Ch 9, sc in 2nd ch from hook, sc in next 6 ch, 3 sc in last ch, on opposite side of row 1, sc in next 6 ch, 2 sc in last ch", build: func(m *match) any {
		if !one("n")(m) || !m.p.at(m.to).Is(",", ":", "work") || m.p.line.Label == nil || m.p.line.Label.From.All > 1 {
			return nil
		}
		return &ins.Nothing{Under: true}
	}},
	{rule: "neutral", pattern: "[on/along/in] underside [of $ch]", meaning: "the round goes on along the other side of its foundation chain", example: "Rnd 1: 3 sc in last ch, underside: 2 sc, inc", when: tests{either(beforeKind("g"), before(":", ","))}, build: func(m *match) any { return &ins.Nothing{Under: true} }},
	{rule: "neutral", pattern: "working/work around $ch", meaning: "how the first chain is closed", example: "Rnd 1: Ch 2, 5 sc in 2nd ch from hook, working around ch"},
	{rule: "neutral", pattern: "(yo | yarn over) [hook] [and/,] (pull/draw) [up] [loop/lp] [up] [{x:stretch}]", meaning: "how hook and loop are handled", example: "Rnd 2: Insert hook in ch-2 sp, yo and pull up loop, ch 2, 2 dc in same sp", when: tests{crochet, said("up"), said("loop", "lp")}},
	{rule: "neutral", pattern: "[about/approx/spaced/with] {n:num} (or/to/-) {m:num} [{u:unit}] [space/distance] (apart | between [eyes/them] | in between | of distance) [from each other]", meaning: "how far apart things stand", example: "Attach eyes between rnds 6 and 7, 4 or 5 sts apart"},
	{rule: "neutral", pattern: "[turn/rotate/rotating/turning/pivot/flip/spin [work/piece] [and/to]] [you will] [now] [next] work/working/crochet/crocheting/continue/continuing [work/working] [back] around/along/across/down/up/on/in/into (other/opposite/second/bottom/under side [of {x:stretch}] | bottom/underside of [foundation/starting/beg/beginning/base/original/initial] $ch | unused/free/remaining loops/lps) [and/of {x:stretch}]", meaning: "the round goes on along the other side of its foundation chain",
		example: "Rnd 1: 6 sc in last ch, working around the other side, sc in next 5 ch", build: otherSide},
	{rule: "neutral", pattern: "(sl $st | slst | ss | sew | join/joining) [in/through/into] [both] first/last {w:row} [and] [to/with] ([foundation/starting/beginning/beg] $ch | first/last {w2:row}) [together/tog] [with/to/through/using {x:stretch}]", meaning: "a seam", example: "Sl st last row to foundation ch to form a circle"},
	{rule: "neutral", pattern: "(sl $st | slst | ss | sew | join/joining) [in/through/into] [both] [foundation/starting/beginning/beg] $ch (and | to | with) [to/with] first/last {w2:row} [together/tog] [with/to/through/using {x:stretch}]", meaning: "a seam", example: "Sl st in both the foundation ch and last row to join"},
	{rule: "neutral", pattern: "(sl $st | slst | ss | sew | whipstitch) [across/in] (through/thru/in) (both/all/two) (thicknesses/layers/pieces/sides/thickness) [across/along/over/in] [all/each/next] [{n:num}] [$st] [to join | to close | across]", meaning: "a seam", example: "Sl st through both thicknesses across 8 sts"},
	{rule: "neutral", pattern: "(sl $st | slst | ss | sc | dc | single crochet | whipstitch | sew | hold/holding) [across] ([short/both/two/long/these] ends/sides/edges/top/layers/seam/pieces | {w:row} {n:num} and {w:row} {m:num} | first/last and first/last {w:row}) together/tog [through/along/with {x:stretch}]", meaning: "a seam", example: "Fold the cuff, then sc the ends together"},
	{rule: "neutral", pattern: "[you] [should/will] [now] [have] {n:num} group/groups/cluster/clusters/set/sets of {x:sentence}", meaning: "how many there are then", example: "Rnd 1: Ch 3, dc in ring, ch 1, [2 dc in ring, ch 1] 5 times, join. 6 groups of 2-dc and ch-1 sp.", when: tests{begun, no(said("in", "into", "over", "around", "next", "each"))}},
	{rule: "neutral", pattern: "{n:num} {m:num} {k:kind} group/groups/cluster/clusters/shell/shells/set/sets/fan/fans", meaning: "how many there are then", example: "Rnd 2: Ch 3, 2 dc in same st, ch 2, *skip 1 st, 3 dc in next st, ch 2; rep from * around, join. 8 3-dc groups", when: tests{endsOrKind("pg")}},
	{rule: "neutral", pattern: "[and/which/that/this] [to] form/forms/forming/make/makes/making last/final/{o:ord} {u:unit} [of [this] $row]", meaning: "what the stitch before it makes", example: "Rnd 2: Ch 1, sc in same st, *ch 5, skip 2 dc, sc in next dc; rep from * 4 times more, ch 2, skip 2 dc, dc in first sc to form last ch-5 sp", when: tests{crochet, endsOrKind("pg"), begun}},
	{rule: "neutral", pattern: "between $row {n:num} and/& {m:num}", meaning: "where a thing is put", example: "Place them centered, between rounds 18 and 19", when: tests{endsOrKind("p"), no(inRow)}},
	{rule: "neutral", pattern: "[make/start/begin] [with] (slip/slide knot | slipknot) [on hook] [and/,/.] [then]", meaning: "the loop on the hook", example: "Rnd 1: Make a slip knot, ch 2, 6 sc in first ch", when: tests{crochet, opens, before("ch", "chain")}},
	{rule: "neutral", pattern: "([make/create/form/start/begin] [with] magic/amigurumi/sliding/adjustable ring/circle/loop | [and] loop to make [a] [magic] ring/circle | make/create/form [an] [slip] ring/circle/loop/knot | [make/create/form/start/begin] [with] mr | mc) [(// | or) [use] (ch/chain {n:num} | {n:num} ch/chain) [$st] method/start/ring]", meaning: "the ring", example: "Make a magic ring", when: tests{no(beforeKind("n")), no(before("in", "of"))}, build: func(m *match) any { return &ins.Join{Name: "ring"} }},
	{rule: "neutral", pattern: "working/work [only] in/into {u:unit} only", meaning: "which stitches are worked into", example: "Rnd 3: As Rnd 2, working into dc only"},
	{rule: "neutral", pattern: "you should/will/are/may [now] (be/see/notice/arrive/return | have returned) {x:stretch}", meaning: "where the work is then", example: "Rnd 3: Ch 3, dc in each st around, you should be back to the 3 chains you started with, sl st in top of ch-3"},
	{rule: "neutral", pattern: "working/work [in] front/back of [last/these/those/previous/skipped/just] [{n:num}] [just] [skipped] [{u:unit}] [just] [worked/made]", meaning: "in front of or behind what later stitches go", example: "Row 3: Ch 3, skip next 2 sts, dc in next 2 sts, working in front of last 2 sts, dc in 2 skipped sts, dc in each st to end", when: tests{either(has("n"), has("u"))}},
	{rule: "neutral", pattern: "(please note | note that) {x:sentence}", meaning: "a remark beside it", example: "Rnd 3: Please note that you work over the spaces when you work a dc. Ch 3, dc in each st around"},
	{rule: "neutral", pattern: "or until/till {x:stretch}", meaning: "another end, as the maker likes", example: "Rows 4-61: [Rep rows 2 and 3] 29 times, or until headband reaches desired size"},
	{rule: "join", pattern: "(join/connect/attach) last $st (to/with) first {k:kind} [with {s:slip}]", meaning: "the round is joined", example: "Rnd 2: Sc in each st around, connect last st to first sc with a sl st", build: func(m *match) any { return &ins.Join{} }},
	{rule: "join", pattern: "{s:slip} with first ({k:kind} | $ch | $st)", meaning: "the round is joined", example: "Rnd 2: Sc in each st around, sl st with first sc", build: func(m *match) any { return &ins.Join{} }},
	{rule: "join", pattern: "{s:slip} [to/in/into] top [of] $beg/first/standing {k:kind} [$st] [{tail}]", meaning: "the round is joined", example: "Rnd 2: 2 hdc in each st around, sl st top beg hdc", build: func(m *match) any { return &ins.Join{} }},
	{rule: "join", pattern: "(sc/hdc/dc) join to/into (first/1st/{o:ord}) $st/{k:kind}", meaning: "the round is joined", example: "Rnd 2: Ch 1, sc in same st, ch 3, (sc in next st, ch 3) around, sc join to 1st st", build: func(m *match) any { return &ins.Join{} }},
	{rule: "join", pattern: "[close/finish] [with] ([a] needle join | nj)", meaning: "the round is joined", example: "Rnd 2: 2 dc in each st around, NJ", build: func(m *match) any { return &ins.Join{} }},
	{rule: "neutral", pattern: "[with/at/leaving/and] [about/approx] [an/a] (interspace/distance/gap) of [about] {n:num} {u:unit} [between {x:stretch}]", meaning: "how far apart things stand", example: "Insert the eyes between rounds 11 and 12, with an interspace of 6 stitches"},
	{rule: "stitch", pattern: "[a/make/work] ($ch {n:num} | {n:num} $ch) picot [$st]", meaning: "a picot of n chains", example: "Rnd 2: *Sc in next 2 sc, ch-5 picot; rep from * around", when: tests{crochet}, build: func(m *match) any {
		n := m.num("n", 3)
		back := ins.Place{Kind: ins.FromHook, N: n, Unit: ins.Unit{Chain: true, Word: "ch"}, At: m.span()}
		return &ins.Repeat{Placed: ins.Placed{At: m.span()}, Body: []ins.Item{&ins.Chain{Placed: ins.Placed{At: m.span()}, N: n}, &ins.Stitch{Placed: ins.Placed{At: m.span()}, Kind: stitch.ByID("slst"), N: ins.N(1), Places: []ins.Place{back}}}, Times: ins.N(1), Stop: -1}
	}},
	{rule: "stitch", pattern: "([make/form/create] (mr/mc | [adjustable/magic/amigurumi/sliding/slip] ring/circle/loop) [with/of/into/in/and/:] {n:num} [{k:kind}] | {n:num} {k:kind} mr/mc)", meaning: "stitches into a ring", example: "MR 6", when: tests{crochet},
		build: func(m *match) any {
			k := stitch.ByID("sc")
			if t, ok := m.get("k").(thing); ok && t.Kind != nil {
				k = t.Kind
			}
			return &ins.Stitch{Kind: k, N: m.num("n", 6), Places: []ins.Place{{Kind: ins.InRing, N: ins.N(1)}}}
		}},
	{rule: "rowbehind", pattern: "of/from/on/in/next/each {w:row} {n:num}", meaning: "the row further down that is worked into", example: "working behind the petals, sc in next sc of rnd 2", build: func(m *match) any { return m.get("n") }},
}

// ofPattern is the rows that were told last, where a row or more were.
func ofPattern(m *match) any {
	if m.p.r.these == 0 || m.p.line.IsRow() || m.p.at(m.from).Is("in") && m.to == m.from+2 || m.p.at(m.to).Is("from", "between", "on", "in", "as") || m.p.at(m.from-1).Is("with") {
		return nil
	}
	return rowset{last: ins.N(m.p.r.theseRows())}
}

// rowset is the rows that a later line means.
type rowset struct {
	last    ins.Num
	name    string
	rows    []ins.Num
	stretch bool
	since   string
	onward  bool
}

var rowsets = []form{
	{rule: "rowset", pattern: "from {s:star} [to/until/through {star}] [,]", meaning: "the rows from a star on", example: "*Next row: Sc in each st. Next row: Sc in each st. Rep from * twice more", build: func(m *match) any {
		if sign := value[string](m, "s"); m.p.r.mark != "" && sign == m.p.r.mark {
			return rowset{since: sign}
		}
		return nil
	}},
	{rule: "rowset", pattern: "(last/previous/prev/preceding/above/these/both/those/foregoing | this {n:num}) [$st] [last] [{n:num}] [pattern/rib/ribbing/garter/lace/moss] {w:row}", meaning: "the rows just worked", example: "Rep last 2 rows 5 times more",
		build: func(m *match) any {
			k := 1
			if m.said("these", "both", "those", "rows", "rnds", "rounds", "foregoing") && !m.said("last", "previous", "prev") {
				k = 2
				if m.said("these", "those") && !m.has("n") {
					k = 0 // those just named
				}
			}
			return rowset{last: m.num("n", k)}
		}},
	{rule: "rowset", pattern: "[in] (this/these/above/established/same | this (two/four/six/eight | {num}) [-] row) pattern/patt/sequence/instructions", meaning: "the rows of the pattern", example: "Rep this pattern 5 times", build: ofPattern},
	{rule: "rowset", pattern: "pattern/patt", meaning: "the rows of the pattern", example: "Rep pattern twice more", build: ofPattern},
	{rule: "rowset", pattern: "from [$beg] {w:row} {n:num}", meaning: "the rows from there on", example: "Rep from Row 1 until piece measures 20 cm", build: func(m *match) any { return rowset{rows: []ins.Num{m.num("n", 1)}, onward: true} }},
	{rule: "rowset", pattern: "this [rs/ws/right/wrong] [side] {w:row} [dec/decrease/inc/increase]", meaning: "the row just worked", example: "Rep this row 3 times more", when: tests{after("rep", "repeat", "work", "knit", "repeating")}, build: func(m *match) any { return rowset{last: ins.N(1)} }},
	{rule: "rowset", pattern: "{w:row} {n:rownums}", meaning: "rows by their numbers", example: "Rep Row 2", build: func(m *match) any { return value[rowset](m, "n") }},
	{rule: "rowset", pattern: "{n:rownums} {w:row} [inclusive/incl/inclusively]", meaning: "rows by their numbers", example: "As 2nd row", build: func(m *match) any { return value[rowset](m, "n") }},
	{rule: "rowset", pattern: "{n:num} {w:row} above", meaning: "the rows just worked", example: "Rep the 2 rows above once more", build: func(m *match) any { return rowset{last: m.num("n", 2)} }},
	{rule: "rowset", pattern: "r {n:rownums}", meaning: "rows by their numbers", example: "Rep R2", build: func(m *match) any { return value[rowset](m, "n") }},
	{rule: "rowset", pattern: "{n:rownums}", meaning: "rows by their numbers", example: "Row 3: As 2nd.", build: func(m *match) any {
		if !m.p.line.IsRow() || m.to < len(m.p.t) && m.p.t[m.to].Kind == 'w' && !m.p.t[m.to].Is("twice", "once", "to", "for", "until") || m.p.t[m.from].Kind == 'n' && !m.p.at(m.from-1).Is("as", "rep", "repeat", "like") {
			return nil
		}
		return value[rowset](m, "n")
	}},
	{rule: "rowset", pattern: "[this/these] {x:rowname} {w:row} {n:rownums}", meaning: "rows by their names and numbers", example: "Rep Mesh Rnd 2 until piece measures 30 cm", build: func(m *match) any {
		s := value[rowset](m, "n")
		if s.name = value[string](m, "x"); m.said("last", "previous", "same", "first", "above", "other", "following") || m.p.at(m.to).Is("time", "times", "more", "row", "rows", "rnds", "rounds", "further") {
			return nil // last round 3 times
		}
		return s
	}},
	{rule: "rowset", pattern: "[this/these] {x:rowname} {w:row}", meaning: "a row by its name", example: "Rep dec row every 6th row 3 more times", build: func(m *match) any { return rowset{name: value[string](m, "x")} }},
}

// rowNums reads rows by their numbers: 3, 2 and 4, 5 to 8.
func rowNums(p *parser, i int) (any, int) {
	r := rowsRead{p: p, i: i}
	if !r.one() {
		return nil, -1
	}
	for {
		save := r.i
		if p.at(r.i).Is("row", "rnd", "round") && p.at(r.i+1).Is("and", "to") {
			r.i++
		}
		ok := false
		switch t := p.at(r.i); {
		case t.Is("-", "--", "to", "through", "thru"):
			ok = r.upTo()
		case t.Is("and", ",", "&", "then", "+"):
			ok = r.further(save)
		}
		if !ok {
			return r.rowset, save
		}
	}
}

// rowsRead are rows as they are read, up to the word at i.
type rowsRead struct {
	rowset
	p *parser
	i int
}

// one reads a number; it reports false where there is none.
func (r *rowsRead) one() bool {
	t := r.p.at(r.i)
	if _, ok := text.RowWord(t.S); ok && t.Kind == 'w' && len(r.rows) > 0 {
		r.i++
		t = r.p.at(r.i)
	}
	if t.Is("r") {
		r.i++
		t = r.p.at(r.i)
	}
	switch {
	case t.Ord > 0:
		r.rows = append(r.rows, ins.N(t.Ord))
	case t.Kind == 'n' && !t.List:
		r.rows = append(r.rows, t.Num)
	default:
		return false
	}
	r.i++
	return true
}

// upTo reads the end of a stretch of rows: to 8 inclusive. A count is none: Rows 2 and 3 - 8 sts.
func (r *rowsRead) upTo() bool {
	p := r.p
	sign := p.at(r.i).Kind == 'p'
	r.i++
	if t := p.at(r.i); t.Num.By != nil && !ownRange().MatchString(t.S) || sign && p.at(r.i+1).Is("st", "sts", "stitch", "stitches") || !r.one() {
		return false
	}
	r.stretch = true
	if p.at(r.i).Is("inclusive", "incl") {
		r.i++
	}
	return true
}

// further reads one more number: and 6. What turns out to be another count is given back.
func (r *rowsRead) further(save int) bool {
	p := r.p
	r.i++
	if p.at(r.i).Is("and") {
		r.i++
	}
	if r.one() && !p.at(r.i).Is("times", "more", "sts", "st") {
		return true
	}
	if len(r.rows) > 1 && r.i > save+1 {
		r.rows = r.rows[:len(r.rows)-1]
	}
	return false
}

func rowName(p *parser, i int) (any, int) {
	var words []string
	for k := range 4 {
		t := p.at(i + k)
		if _, ok := text.RowWord(t.S); ok && t.Kind == 'w' && k > 0 {
			return text.RowName(strings.Join(words, " ")), i + k
		}
		if t.Kind != 'w' || t.Ord > 0 || t.Is("every", "each", "next", "on", "in", "at", "of", "to", "this", "these", "those", "until", "rs", "ws", "more", "and", "or") {
			return nil, -1
		}
		words = append(words, t.S)
	}
	return nil, -1
}

func repeatRows(m *match) any {
	s := value[rowset](m, "r")
	r := &ins.RepeatRows{Last: s.last, Name: s.name, Rows: s.rows, Stretch: s.stretch, Since: s.since, Onward: s.onward, Times: ins.N(1)}
	if len(s.rows) == 0 && s.name == "" && s.since == "" && !s.last.Set() {
		r.Last = ins.N(2)
		if n := m.p.r.theseRows(); n > 0 {
			r.Last = ins.N(n)
		}
	}
	if c, ok := m.get("c").(course); ok {
		r.Course, r.Total, r.InAll = c.Course, c.total, c.total && m.said("total", "all", "altogether")
		if c.HasTimes {
			r.Times = c.Times
		}
		if c.where || c.cloth != (ins.Cloth{}) && c.cloth.Knit*c.cloth.Purl == 0 { // a rib only says what the rows are
			return nil
		}
	}
	return r
}

func evenRows(m *match) any {
	e := &ins.Even{}
	if m.p.at(m.from-1).Is("foll", "following", "every", "each") { // on the 7th and foll 6th row
		return nil
	}
	rounds, _ := m.get("w").(bool)
	e.Rounds = rounds
	if c, ok := m.get("c").(course); ok {
		if c.where {
			return nil
		}
		e.Course, e.Cloth = c.Course, c.cloth
		e.Rounds = e.Rounds || rounds
	}
	if m.has("n") {
		e.Rows = m.num("n", 1)
	} else if !e.Rows.Set() && e.Length == nil && !e.ToRow.Set() {
		return nil
	}
	if y, ok := m.get("y").(ins.Cloth); ok {
		e.Cloth = y
	}
	if o, ok := m.get("o").(ins.Num); ok {
		e.Part = o
	}
	e.Begins = m.p.begins(m.from, e.Cloth)
	k := m.p.t[m.from]
	switch {
	case m.said("k", "knit") && m.said("p", "purl") && e.Cloth == (ins.Cloth{}) && k.Is("k", "knit", "p", "purl"):
	case k.Is("k", "knit") && !m.said("every", "each"):
		e.Row = plainRow("k")
	case k.Is("p", "purl") && !m.said("every", "each"):
		e.Row = plainRow("p")
	case k.Is("k", "knit") && e.Cloth == (ins.Cloth{}) && !rounds:
		e.Cloth = ins.Cloth{Garter: true}
	}
	if t := m.p.t[m.to-1]; !m.has("c") && !m.has("y") && !m.said("even", "straight", "plain", "more", "another", "further", "short") && !k.Is("work", "make", "do", "k", "knit", "p", "purl", "cont", "continue", "crochet", "working") && t.Is("row", "rnd", "round", "rows", "rnds", "rounds") && m.p.at(m.to).Kind == 'w' {
		return nil // 4 rows something else
	}
	return e
}

// knitOr is the id of the knit stitch, or of the purl stitch where that is meant.
func knitOr(purl bool) string {
	if purl {
		return "p"
	}
	return "k"
}

// inAll is a stitch in each of the row below; the row's own, if kind is nil.
func (m *match) inAll(kind *stitch.Stitch) *ins.Stitch {
	return &ins.Stitch{Kind: kind, N: ins.N(1), Places: []ins.Place{{Kind: ins.InEach, N: ins.N(1), Unit: ins.Unit{Word: "st"}, Extent: ins.Extent{Kind: ins.ToEnd, At: m.span()}}}}
}

// plainRow is a whole row of one knitting stitch.
func plainRow(id string) []ins.Item {
	return []ins.Item{&ins.Stitch{Kind: stitch.ByID(id), N: ins.N(1), Places: []ins.Place{{Kind: ins.InEach, N: ins.N(1), Unit: ins.Unit{Word: "st"}, Extent: ins.Extent{Kind: ins.ToEnd}}}}}
}

func evenUntil(m *match) any {
	e := &ins.Even{}
	c, _ := m.get("c").(course)
	if c.where || m.p.at(m.from+1).Is("with") && m.has("y") || m.has("l") && (m.p.t[m.from].Is("with") || m.p.at(m.to).Is("needle", "needles", "hook")) { // with 4 mm straight needles
		return nil
	}
	e.Course, e.Cloth, e.Part = c.Course, c.cloth, c.on
	if y, ok := m.get("y").(ins.Cloth); ok {
		e.Cloth = y
	}
	if l, ok := m.get("l").(*ins.Lengths); ok {
		e.Length = l
	}
	if m.p.t[m.from].Is("k", "knit", "p", "purl") && !m.said("even") && e.Length == nil && !e.Rows.Set() && !e.ToRow.Set() {
		return nil
	}
	e.Begins = m.p.begins(m.from, e.Cloth)
	if e.Rows.Set() || e.Length != nil || e.ToRow.Set() || e.Until.Set() {
		return e
	}
	if !m.saysEven(e) {
		return nil
	}
	e.Vague()
	return e
}

// begins is the side of the row with which, so the sentence at i says, rows of a fabric begin: 1 the right one, 2 the wrong one,
// 0 if it does not say. In stocking stitch a purl row is a wrong-side row.
func (p *parser) begins(i int, c ins.Cloth) int {
	i, side := p.startingWith(i), 0
	switch t := p.at(i + 1); {
	case t.Is("rs", "right"):
		side = 1
	case t.Is("ws", "wrong"):
		side = 2
	case t.Is("k", "knit") && c.Knit == 1 && c.Purl == 0, t.Is("p", "purl") && c.Purl == 1 && c.Knit == 0:
		side = 1
	case t.Is("p", "purl") && c.Knit == 1 && c.Purl == 0, t.Is("k", "knit") && c.Purl == 1 && c.Knit == 0:
		side = 2
	}
	for k := 2; k < 4; k++ {
		if _, row := text.RowWord(p.at(i + k).S); row || p.at(i+k).Is("side") {
			return side
		}
	}
	return 0
}

// startingWith is where the sentence around i says with what it begins, or its end.
func (p *parser) startingWith(i int) int {
	for i > 0 && !p.at(i-1).Is(".", ";") {
		i--
	}
	for ; i < len(p.t) && !p.at(i).Is(".", ";"); i++ {
		if p.at(i).Is("with", "on") && p.at(i-1).Is("beg", "beginning", "begin", "starting", "start", "commencing", "commence") {
			break
		}
	}
	return i
}

// saysEven reports whether words say that the work goes on as it is, though not how far.
func (m *match) saysEven(e *ins.Even) bool {
	if m.said("even", "straight", "pattern", "patt") {
		return true
	}
	return e.Cloth != (ins.Cloth{}) && (m.p.line.IsRow() || m.said("cont", "continue", "work", "working"))
}

// plainEnds builds a plain row of which one stitch is worked together with the next at each end, or worked twice into.
func plainEnds(m *match) any {
	if n := m.num("n", 1); n.By != nil || n.All != 1 {
		return nil
	}
	base, end, rest := "k", "k2tog", 2
	if m.said("p", "purl") {
		base, end = "p", "p2tog"
	}
	if !m.said(strings.Split(macros["$dec"], "/")...) {
		end, rest = base+"fb", 1
	}
	middle := &ins.Stitch{Kind: stitch.ByID(base), N: ins.N(1), Places: []ins.Place{{Kind: ins.InEach, N: ins.N(1), Unit: ins.Unit{Word: "st"}, Extent: ins.Extent{Kind: ins.ToLast, N: ins.N(rest), Unit: ins.Unit{Word: "st"}}}}}
	return &ins.Repeat{Body: []ins.Item{&ins.Stitch{Kind: stitch.ByID(end), N: ins.N(1)}, middle, &ins.Stitch{Kind: stitch.ByID(end), N: ins.N(1)}}, Times: ins.N(1), Stop: -1}
}

// plainShaped builds a plain row that is shaped somewhere: knit, dec 2 sts. How many a number at each gap makes only the text's count tells.
func plainShaped(m *match) any {
	if !m.p.line.IsRow() || m.to < len(m.p.t) && !m.p.at(m.to).Is(".", ";", ",", "-") && m.p.at(m.to).Kind != 'g' {
		return nil
	}
	if m.said("each", "every", "either", "both", "all", "gaps", "holes", "corners", "wraps", "underarms") {
		return &ins.Even{Course: ins.Course{Until: m.p.unknown()}}
	}
	return &ins.Shape{Inc: !m.said(strings.Split(macros["$dec"], "/")...), N: m.num("n", 1), Spread: true}
}

// step is how many stitches a row adds or takes away, if that is said.
type step struct {
	n        ins.Num
	inc, has bool
}

// shapedOn builds shaping that goes on as before until it is as told, or over so many rows. Where nothing says by
// how many, how many there are then is known only by what is stated.
func shapedOn(m *match) any {
	var c course
	if u, ok := m.get("u").(clause); ok {
		u(&c)
	}
	d := value[step](m, "d")
	c.Rows = m.num("r", 0)
	ends := m.to == len(m.p.t) || m.p.at(m.to).Kind != 'w' && m.p.at(m.to).Kind != 'n'
	switch {
	case !ends, !m.has("d") && !c.Until.Set() && !m.said("more", "less", "fewer", "adding") && !m.said(strings.Split(macros["$inc"]+"/"+macros["$dec"], "/")...):
		return nil // other rows, or shaping at a place
	case m.has("d") && d.has:
		c.Every = ins.N(1)
		if m.said("other", "alternate", "alt", "second", "2nd") {
			c.Every = ins.N(2)
		}
		return &ins.Shape{Inc: d.inc, N: d.n, Spread: !m.p.line.IsRow(), Course: c.Course} // in each of the rows that a label tells
	case m.has("u") || m.has("r"):
		if !c.Until.Set() {
			c.Until = m.p.unknown()
		}
		return &ins.Even{Course: c.Course}
	}
	return nil
}

// besides are the words that place something by what it stands beside.
var besides = []string{"between", "bet", "btw", "before", "after"}

// waysOn are words of how the work goes on, behind which nothing else is asked for.
var waysOn = set("in on this that same like above pattern patt manner way ways fashion thus so as before bet set established each every per round rnd row rounds rnds rows evenly spaced always still working work making make having with adding add " +
	"more less fewer between before after time times around other 2nd second alternate alt last previous")

// inThisWay reads how the work goes on: in this manner, with 1 more sc between increases each round.
func inThisWay(p *parser, i int) (any, int) {
	j := i
	for j < len(p.t) {
		switch t := p.at(j); {
		case waysOn[t.S] && t.Kind == 'w', t.Ord > 0 && j > i && p.at(j-1).Is("every", "each", "following", "foll"), t.Is(",") && j > i && j+1 < len(p.t) && waysOn[p.at(j+1).S], p.shapingNamed(j):
			j++
		case (t.Kind == 'n' || numerals[t.S] > 0) && j > 0 && p.at(j-1).Is("working", "adding", "having", "with", "making", "work", "add"):
			if j = p.behindMany(j + 1); !p.at(j).Is(besides...) {
				return nil, -1
			}
		default:
			return reached(i, j)
		}
	}
	return reached(i, j)
}

// behindMany is behind what is counted from i on: more sc, plain sts, sts fewer.
func (p *parser) behindMany(i int) int {
	for p.at(i).Is("more", "less", "fewer", "plain") {
		i++
	}
	if _, to := kind(p, i); to > 0 {
		i = to
	} else if p.at(i).Is("st", "sts", "stitch", "stitches") {
		i++
	}
	for p.at(i).Is("more", "less", "fewer") {
		i++
	}
	return i
}

// shapingNamed reports whether a shaping is named there, and not told to be worked: between increases, increase rounds.
func (p *parser) shapingNamed(i int) bool {
	_, row := text.RowWord(p.at(i + 1).S)
	if p.at(i).Is("increasing", "decreasing") {
		return row
	}
	if !p.at(i).Is("increases", "increase", "incs", "inc", "increasings", "decreases", "decrease", "decs", "dec", "decreasings") {
		return false
	}
	return row || i > 0 && (p.at(i-1).Is(besides...) || p.at(i-1).Is("each", "every", "with"))
}

// reached is what was read up to j, if anything was.
func reached(i, j int) (any, int) {
	if j == i {
		return nil, -1
	}
	return true, j
}

// shape builds an increase or a decrease at the places and times of its course.
func shape(inc bool) func(m *match) any {
	return func(m *match) any {
		c := m.courseAt()
		d, ok := m.get("d").(shift)
		if !ok {
			d = m.shift(inc)
		}
		if c.spread && c.HasTimes && !d.has && !c.Every.Set() && !c.Rows.Set() && m.p.line.IsRow() { // increasing 12 times, evenly spaced
			d.n, d.has, c.HasTimes, c.Times = c.Times, true, false, ins.Num{}
		}
		often := c.HasTimes || c.Every.Set() || c.Rows.Set() || c.First
		s := &ins.Shape{Inc: d.inc, N: d.n, Same: m.has("s"), Both: c.both, Edge: c.edge, Side: c.side, Marked: c.marked, Markers: c.markers, Inner: c.inner, Halves: c.halves, Panel: c.panel, Spread: c.spread, Cloth: c.cloth, Course: c.Course}
		if m.p.t[0].Is("rep", "repeat") && m.p.at(m.from-1).Is(",") && !c.where && !c.HasTimes && c.Every.Set() && c.Every.By == nil && c.Every.All == 1 { // how many the repeated row takes away
			return &ins.Nothing{}
		}
		adds := m.said("add", "adding")
		if (adds || c.nth) && !d.has || !d.fits(c) || d.told && !c.both && !often && !alone(m) {
			return nil
		}
		s.HasOver = s.HasOver || adds || c.once
		s.Spread = s.Spread || m.spread(c, often)
		s.Vague = !s.Both && s.Edge == "" && !s.Marked && !s.Inner && !s.Spread && often && !s.HasOver && !c.Rounds
		return s
	}
}

// courseAt is the course of a shaping, with the edge that stands before it: at neck edge dec 1 st every row.
func (m *match) courseAt() course {
	c, _ := m.get("c").(course)
	if e, ok := m.get("e").(string); ok {
		c.edge, c.where, c.halves = e, true, c.halves || e == "neck" && m.p.at(m.from+1).Is("each", "both")
	}
	return c
}

// spread reports whether a shaping, often or once, goes across its row.
func (m *match) spread(c course, often bool) bool {
	if m.p.line.IsRow() {
		return !m.has("c") || c.spread && !often
	}
	return !m.has("c") && !m.said("evenly", "add")
}

// shift is how many stitches are added or taken away.
type shift struct {
	n         ins.Num
	of        ins.Unit
	inc       bool
	has, unit bool // the number, and what is counted, are said
	told      bool // it is told by its stitches: knit 2 together
}

func (m *match) shift(inc bool) shift {
	d := shift{n: m.num("n", 1), inc: inc, has: m.has("n")}
	d.of, d.unit = m.get("u").(ins.Unit)
	return d
}

// fits reports whether words of a course can say where or how often it is done.
func (d shift) fits(c course) bool {
	switch {
	case d.unit && (d.of.Space || d.of.Row || d.of.Chain || d.of.Stretch || d.of.Group != nil):
		return false
	case d.told:
		return c.where
	}
	return d.has || d.unit || c.where || c.spread || c.HasTimes || c.Rows.Set()
}

// shapeOver is a shaping in each of so many rows, or in each second one and so on.
func shapeOver(m *match) any {
	c, rows := value[course](m, "c"), m.num("r", 0)
	s, ok := shape(false)(m).(*ins.Shape)
	if !ok || c.HasTimes || c.Rows.Set() || !c.where || !c.Every.Set() || c.Every.By != nil {
		return nil
	}
	if c.Every.All == 1 {
		s.Rows, s.Every = rows, ins.Num{}
		return s
	}
	if rows.By != nil || rows.All%c.Every.All != 0 {
		return nil
	}
	s.Times, s.HasTimes = ins.N(rows.All/c.Every.All), true
	return s
}

// spreadOver is a change spread over one row.
func spreadOver(inc bool) func(m *match) any {
	of := shape(inc)
	return func(m *match) any {
		s, ok := of(m).(*ins.Shape)
		if !ok {
			return nil
		}
		s.Spread, s.Vague = true, false
		return s
	}
}

func bindEach(m *match) any {
	if m.said("each", "every", "both", "these") && !m.said("next", "following", "foll") && !m.has("r") && (!several(m.p.line.Label) || m.p.at(m.to).Is(",")) {
		return nil
	}
	b := &ins.BindEach{N: m.num("n", 1), Rows: m.num("r", 1)}
	list := []ins.Item{b}
	b.Put(m.span())
	switch x := m.get("x").(type) {
	case *ins.BindEach:
		list = append(list, x)
	case *ins.Repeat:
		list = append(list, x.Body...)
	}
	if len(list) == 1 {
		return b
	}
	return &ins.Repeat{Body: list, Times: ins.N(1), Stop: -1}
}

// several reports whether a row is called by the numbers of several: Next 2 rows; Rows 5-6.
func several(b *ins.Label) bool {
	return b != nil && (len(b.Listed) > 0 || b.Next && (b.From.By != nil || b.From.All > 1) || !b.Next && (b.To.By != nil || b.To.All > b.From.All))
}

func castEach(m *match) any {
	v := bindEach(m)
	switch b := v.(type) {
	case *ins.BindEach:
		b.Add = true
		if m.said("end") && !m.said("next", "following", "foll", "each") {
			if inRow(m) && alone(m) && m.p.at(m.from).Is("inc") { // the whole row: inc 1 st at end of row
				return nil
			}
			return &ins.CastOn{N: b.N}
		}
	case *ins.Repeat:
		for _, n := range b.Body {
			n.(*ins.BindEach).Add = true
		}
	}
	return v
}

func offCourse(m *match) any {
	c, _ := m.get("c").(course)
	if t, ok := m.get("t").(often); ok {
		c.Times, c.HasTimes = t.n, true
	}
	if !c.HasTimes && !c.Over.Set() && !c.Rows.Set() && !c.Every.Set() {
		return nil
	}
	s := &ins.Shape{N: m.num("n", 1), Both: c.both || m.atEach(), Edge: value[string](m, "e"), Side: c.side, Course: c.Course, Cloth: c.cloth}
	if s.Edge == "" {
		s.Edge = "edge"
	}
	if z := value[string](m, "z"); z != "" {
		s.Side = z
	}
	s.HasOver = s.HasOver || !c.HasTimes && !c.Rows.Set()
	s.Put(m.span())
	if !m.has("x") {
		return s
	}
	list := []ins.Item{s}
	switch x := m.get("x").(type) {
	case *ins.Shape:
		list = append(list, x)
	case *ins.Repeat:
		list = append(list, x.Body...)
	}
	for _, n := range list[1:] {
		more := n.(*ins.Shape)
		more.Both, more.Edge, more.Side = s.Both, s.Edge, s.Side
	}
	return &ins.Repeat{Body: list, Times: ins.N(1), Stop: -1}
}

// atEach reports whether the words say 'at each' or 'at both' edges.
func (m *match) atEach() bool {
	for i := m.from + 1; i < m.to; i++ {
		if m.p.t[i].Is("each", "both") && m.p.t[i-1].Is("at") {
			return true
		}
	}
	return false
}

func bindOff(m *match) any {
	if !m.has("n") {
		return nil
	}
	if m.p.t[m.from].Is("leave") {
		s := &ins.Shape{N: m.num("n", 1), Edge: "edge"}
		s.HasOver = true
		return s
	}
	return &ins.BindOff{N: m.num("n", 1)}
}

// heldStitches are so many stitches that waited and are knitted, or purled.
func heldStitches(m *match) any {
	return &ins.PickUp{N: m.num("n", 0), Kind: stitch.ByID(knitOr(m.said("p", "purl")))}
}

func pickUp(m *match) any {
	u, ok := m.get("k").(ins.Unit)
	p := &ins.PickUp{N: m.num("n", 0)}
	if ok {
		if u.Row || u.Space {
			return nil
		}
		p.Kind = u.Stitch
	}
	if !m.said("pick") && !m.said("up") || m.p.t[m.from].Is("take") && !m.said("along", "side", "edge", "down", "loops", "from") {
		return nil
	}
	return p
}

// alongEach reports whether words tell of each edge: 107 sc along each edge.
func (m *match) alongEach() bool {
	for i := m.from; i+1 < m.to; i++ {
		if m.p.at(i).Is("each", "every") && m.p.at(i+1).Is("edge", "side") {
			return true
		}
	}
	return false
}

func pickUpKind(m *match) any {
	k := value[thing](m, "k")
	if k.Kind == nil || !m.has("n") && !m.said("in", "into", "join", "connect", "attach") || k.Kind.ID == "ch" || m.p.t[m.to-1].Is("row") && m.said("each") && !m.said("evenly") {
		return nil
	}
	if m.said("top") && m.said("ch", "chs", "chain", "tch", "turning") && !m.said("edge", "across", "along") { // 1 tr in top of 3 ch: the last stitch of the row
		return nil
	}
	if m.alongEach() { // how many edges there are is not said
		return &ins.Stitch{Kind: k.Kind, N: ins.N(1), Places: []ins.Place{{Kind: ins.RowEnds, N: ins.N(1), Unit: ins.Unit{Row: true}, At: m.span()}}}
	}
	return &ins.PickUp{N: m.num("n", 1), Kind: k.Kind}
}

func workOn(m *match) any {
	if !m.has("u") || !m.said("these", "first", "remaining", "rem", "last", "those", "only", "center", "next", "forth", "forwards") || !m.said("on", "over", "these", "those", "only") {
		return nil
	}
	if m.p.t[m.from].Is("over") && m.said("next") && m.p.line.IsRow() && m.p.at(m.from-1).Is(",") { // k. 7, p. 1, k. 1, over the next 7 sts.
		return nil
	}
	if u := value[ins.Unit](m, "u"); !u.Any() || m.said("next") && !m.said("on", "over") {
		return nil
	}
	return &ins.Leave{N: m.num("n", 0), All: m.p.line.IsRow() && m.said("these", "those")}
}

func asFor(m *match) any {
	a := &ins.AsFor{Name: value[string](m, "a")}
	if m.from > 0 && m.p.at(m.from-1).Kind != 'p' && !m.p.at(m.from-1).Is("work", "and", "then") {
		return &ins.Nothing{}
	}
	if t := m.p.t[m.from]; t.Is("as") && !m.said("for", "given", "directed") && !m.p.at(m.from-1).Is("work") {
		return nil
	}
	if !m.said("as", "same", "like") || !m.said("for", "given", "directed", "on", "work", "same", "like", "as") {
		return nil
	}
	name := strings.Fields(a.Name)
	if len(name) == 0 {
		return nil
	}
	switch name[0] {
	case "row", "rnd", "round", "rows", "high", "deep", "wide", "big", "tall", "established", "set", "before", "follows", "desired", "needed", "usual", "many", "long", "you", "indicated", "instructed", "far", "possible", "last":
		return nil
	}
	if d, ok := m.get("d").(*ins.AsFor); ok {
		a.ToRow, a.Count, a.To, a.Done, a.Reversed = d.ToRow, d.Count, d.To, d.Done, d.Reversed
	}
	return a
}

func toMatch(m *match) any {
	if !m.said("match", "correspond", "same", "as", "exactly") || !m.said("first", "other", "opposite", "left", "right", "second", "one", "side") {
		return nil
	}
	return &ins.AsFor{Name: "first side"}
}

func asForTo(m *match) any {
	a := &ins.AsFor{}
	if m.has("n") {
		a.ToRow = m.num("n", 0)
	} else if m.has("s") {
		a.To = value[string](m, "s")
		a.Done = m.said("end", "complete", "completed", "completion", "finished", "done", "worked", "bound")
	}
	if d, ok := m.get("d").(*ins.AsFor); ok {
		a.Reversed = d.Reversed
	}
	return a
}

func measure(m *match) any {
	l := value[*ins.Lengths](m, "l")
	l.When = m.said("when", "once") || m.p.at(m.from-1).Is("when", "once")
	return &ins.Measure{Length: l}
}

func join(m *match) any {
	if st := m.closesArch(); st != nil {
		return st
	}
	if m.p.at(m.to-1).Is("with", "by", "using") && m.p.at(m.to).Is("ch", "chain") { // join with ch 2, dc in first sc
		return &ins.Nothing{}
	}
	if y := m.joinsAny(); y != nil {
		return y
	}
	j := &ins.Join{}
	if t, ok := m.get("to").(*ins.Join); ok {
		j.Chain, j.Nth, j.First = t.Chain, t.Nth, t.First
	}
	if x, ok := m.get("x").(string); ok {
		j.Name = x
	}
	if m.said("ring", "circle") {
		j.Name = "ring"
	}
	if m.said("form", "forming", "make") && j.Name == "" && !m.has("x") {
		if !m.said("ring", "circle") {
			return nil
		}
	}
	return j
}

// joinsAny is yarn joined in any place at a row's beginning, where nothing is to be closed: Join in any ch-2 sp, ch 3.
func (m *match) joinsAny() ins.Item {
	with := m.p.at(0).Is("with", "using") && m.from > 0 && m.from < 6 && m.p.at(m.from-1).Is(",")
	if !m.p.line.IsRow() || !with && m.from > 0 {
		return nil
	}
	for i := m.from; i < m.to; i++ {
		v, to := m.p.named("places", i)
		if to <= i || to > m.to || !m.p.at(i).Is("in", "into", "to") {
			continue
		}
		if with || m.said("any") || v.(spots).list[0].Unit.Space && v.(spots).list[0].Kind == ins.InNext { // join in ch-1 sp
			return &ins.JoinYarn{From: "yarn", Place: v.(spots).list[:1]}
		}
	}
	return nil
}

// closesArch is the tall stitch with which a round is joined behind chains, instead of the last of these: ch 2, join with dc in first sc.
func (m *match) closesArch() ins.Item {
	i := m.from - 1
	for k := i; k > 0 && k > i-8; k-- { // ch 2, skip 2 dc, join with dc in first sc
		if m.p.at(k).Is("skip", "sk", "miss") {
			i = k - 1
			break
		}
	}
	for m.p.at(i).Is(",", ";", "and", "then") {
		i--
	}
	if m.p.at(i).Kind != 'n' || !m.p.at(i-1).Is("ch", "chain") || !m.has("to") {
		return nil
	}
	with := m.from - 1
	for with < m.to && !m.p.at(with).Is("with", "by", "using") {
		with++
	}
	for with++; m.p.at(with).Is("a", "an", "one") || m.p.at(with).Kind == 'n'; {
		with++
	}
	for _, name := range []string{"hdc", "dc", "htr", "tr"} { // and not what it is joined to: join in first dc
		if k, ok := m.p.r.thing([]byte(name)); ok && with < m.to && m.p.at(with).Is(name) && k.Kind != nil && k.Kind.Height > 1 {
			return &ins.Stitch{Kind: k.Kind, N: ins.N(1), Places: []ins.Place{{Kind: ins.InFirst, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: m.span()}}}
		}
	}
	return nil
}

func joinYarn(m *match) any {
	j := &ins.JoinYarn{From: "yarn"}
	k, ok := m.get("k").(thing)
	for _, name := range []string{"sc", "dc"} {
		if !ok && m.said(name) && m.has("s") {
			k, ok = m.p.r.thing([]byte(name))
		}
	}
	if ok && k.Kind != nil && k.Kind.Uses == 1 && k.Kind.ID != "slst" && m.p.line.IsRow() && m.has("to") && m.p.r.crochet {
		if to := value[ins.Place](m, "to"); !to.Unit.Space && !to.Unit.Row && to.Unit.Group == nil && to.Kind != ins.InEach {
			st := &ins.Stitch{Kind: k.Kind, N: ins.N(1), Places: []ins.Place{{Kind: ins.InNext, N: ins.N(1), Unit: ins.Unit{Word: "st"}, At: m.span()}}}
			return &ins.Repeat{Body: []ins.Item{st}, Times: ins.N(1), Stop: -1}
		}
	}
	if to := value[ins.Place](m, "to"); ok && to.Unit.Space && k.Kind != nil && k.Kind.Uses == 1 && k.Kind.ID != "slst" && m.p.line.IsRow() && m.p.r.crochet {
		same := ins.Place{Kind: ins.InSame, N: ins.N(1), Unit: ins.Unit{Space: true}, At: m.span()}
		j.Place = []ins.Place{to}
		return &ins.Repeat{Body: []ins.Item{j, &ins.Stitch{Kind: k.Kind, N: ins.N(1), Places: []ins.Place{same}}}, Times: ins.N(1), Stop: -1}
	}
	for i := m.from; i < m.to; i++ {
		if t := m.p.t[i]; t.Kind == 'n' && m.p.at(i-1).Is("to", "rem", "remaining", "held") && slices.ContainsFunc(m.p.t[i:m.to], func(t text.Token) bool { return t.Is("sts", "stitches") }) {
			j.N = t.Num
		}
		switch w := m.p.t[i].S; w {
		case "next", "foundation", "edge", "underarm", "held", "holder", "lower", "first", "remaining", "rem", "unworked", "skipped":
			j.From = w
		}
	}
	if pl, ok := m.get("to").(ins.Place); ok {
		j.Place = []ins.Place{pl}
	}
	return j
}

// joinWords reads to what a round is joined, in any words: the 3rd st of ch 6, top of the first st made.
func joinWords(p *parser, i int) (any, int) {
	j, named := i, false
	for ; j < len(p.t); j++ {
		t := p.at(j)
		if t.Kind == 'p' && (!t.Is("-") || !t.Glued && p.at(j+1).Kind == 'n' && !p.at(j+1).Glued) || t.Kind == 'g' || t.Is("and", "then", "turn", "rep", "repeat", "cut", "fasten", "do", "form", "ring", "work", "yarn") {
			break
		}
		chain := t.Is("ch", "chain", "chs")
		if chain && p.at(j+1).Kind == 'n' && j > i && !p.at(j-1).Is("of", "to", "in", "into", "first", "beg", "beginning", "starting", "initial", "st", "top", "turning") {
			break // the chain of the next round
		}
		named = named || t.Ord > 0 || chain || t.Is("tch", "top", "st", "stitch")
	}
	if !named || p.at(j-1).Is("in", "of", "to", "with", "into") {
		return nil, -1
	}
	return true, j
}

// otherSide reads that a round goes on along the other side of its chain: free loops of one, and no stitches, are meant
// by words that name no side.
func otherSide(m *match) any {
	if !m.said("side", "sides", "edge", "bottom", "underside", "otherside", "loop", "loops", "lp", "lps") {
		return nil
	}
	return &ins.Nothing{Under: true}
}

// takesUpHeld is a row of stitches that waited on a holder.
func takesUpHeld(m *match) any {
	if m.p.line.IsRow() || m.said("cable", "cn") || !m.said("held", "return", "back", "holder", "holders", "yarn", "thread", "pin", "string", "sleeve", "thumb") {
		return nil
	}
	return &ins.Together{Parts: []ins.Part{{N: m.num("n", 0)}}}
}
