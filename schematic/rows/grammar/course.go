package grammar

import (
	"slices"
	"strings"

	"flatwright/schematic/expr"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
	"flatwright/schematic/units"
)

// course is over which rows, where and how often something in words is done.
type course struct {
	ins.Course
	both, marked, inner, spread bool
	halves                      bool // at the inner edge of each half
	edge, side, panel           string
	markers, on                 ins.Num
	cloth                       ins.Cloth
	where                       bool // it says where, so that it shapes
	total, once, nth            bool
}

// clause adds what one clause says.
type clause func(c *course)

// sets is a clause that puts the value of one rule.
func sets[T any](name string, put func(c *course, v T)) func(m *match) any {
	return func(m *match) any {
		v := value[T](m, name)
		return clause(func(c *course) { put(c, v) })
	}
}

// uncounted is what changes no count, asLong an end that is not counted, spreadOut that the shaping is spread over the row.
func uncounted(*match) any { return clause(func(*course) {}) }
func asLong(*match) any    { return clause(func(c *course) { c.Length = &ins.Lengths{} }) }
func spreadOut(*match) any { return clause(func(c *course) { c.spread = true }) }

var clauses = []form{
	{rule: "clause", pattern: "at/on/of [$next] each/both/either $edge/edges/ends/sides [of [the] needle/needles/work] [{p:ofpanel}]", meaning: "at both ends", example: "Dec 1 st at each end of next 5 rows", build: both},
	{rule: "clause", pattern: "[on/at] each/both/either side/end/ends/sides/edge [of [the] needle/needles/work/row]", meaning: "at both ends", example: "Dec 1 st each side every 4th row 3 times", build: both},
	{rule: "clause", pattern: "in/on every/each {o:ord} ($st | {k:kind})", meaning: "spread over the row", example: "Inc 2 sts in every 14th st 6 times", build: func(m *match) any { return clause(func(c *course) { c.spread, c.nth = true, true }) }},
	{rule: "clause", pattern: "in first and last [$st]", meaning: "at both ends", example: "Row 11: Same as Row 9, increasing in first and last st", build: both},
	{rule: "clause", pattern: "at/on beg/beginning/start and [at/on] end [of needle/needles]", meaning: "at both ends", example: "Inc 1 st at beg and end of every 6th row 3 times", build: both},
	{rule: "clause", pattern: "[on/at] each/either/both side/sides of $center [{n:num}] $st/panel/section", meaning: "on both sides of the middle", example: "Dec 1 st at each side of centre 20 sts on next 3 rows", build: both},
	{rule: "clause", pattern: "[on/at] each/either/both side/sides of [each/every] [of] [{n:num}] [marked] marker/markers/line/lines/m/{st:unit}", meaning: "on both sides of markers", example: "Inc 1 st on each side of 4 markers every 2 rnds 25 times",
		build: func(m *match) any {
			n := m.num("n", 0)
			if m.has("st") && value[ins.Unit](m, "st").Row {
				return nil
			}
			return clause(func(c *course) { c.both, c.marked, c.markers, c.where = true, true, n, true })
		}},
	{rule: "clause", pattern: "before and after [each/every] [of] [{n:num}] marker/markers/m", meaning: "on both sides of markers", example: "Inc 1 st before and after each marker every 2nd rnd", build: sets("n", func(c *course, n ins.Num) { c.both, c.marked, c.markers, c.where = true, true, n, true })},
	{rule: "clause", pattern: "(at/in $center [$st | {k:kind}] | at underarm [$st/seam])", meaning: "in the middle of the row", example: "Dec 2 sts at the middle every 2 rows 20 times", build: func(m *match) any { return clause(func(c *course) { c.inner, c.where = true, true }) }},
	{rule: "clause", pattern: "at marked edge [{p:ofpanel}]", meaning: "at a marked line", example: "Dec 1 st at marked edge of Back every 2 rows 3 times", build: sets("p", func(c *course, p string) { c.inner, c.where, c.panel = true, true, p })},
	{rule: "clause", pattern: "[at/on] each/both/either {e:edgename}", meaning: "at an edge of each side", example: "Dec 1 st at each neck edge on next 7 rows", build: func(m *match) any {
		if value[string](m, "e") != "neck" {
			return both(m)
		}
		return clause(func(c *course) { c.edge, c.halves, c.where = "neck", true, true })
	}},
	{rule: "clause", pattern: "(at/on/from/along/inside [of]) {e:edgename} [{s:edgeside}] [inside [front/neck/garter] border/band/edging]", meaning: "at one edge", example: "Dec 1 st at neck edge on next 7 rows",
		build: func(m *match) any {
			e, s := value[string](m, "e"), value[string](m, "s")
			halves := e == "neck" && m.said("edges")
			if m.said("edges") && !halves {
				return both(m)
			}
			return clause(func(c *course) { c.edge, c.side, c.where, c.halves = e, s, true, c.halves || halves })
		}},
	{rule: "clause", pattern: "(inside/within) [front/neck/centre/center/buttonhole/garter] [stitch/st] border/band", meaning: "at one edge", example: "Dec 1 st inside front border every row until 21 sts remain", build: func(m *match) any { return clause(func(c *course) { c.edge, c.where = "front", true }) }},
	{rule: "clause", pattern: "by (knitting/purling/working/taking) {n:num} [$st] together/tog", meaning: "how one is taken away", example: "Dec at each end by knitting 2 sts tog every 7th row until 40 sts remain", when: tests{func(m *match) bool { n := m.num("n", 0); return n.By == nil && n.All == 2 }}, build: uncounted},
	{rule: "clause", pattern: "at $beg/end [of]", meaning: "at one edge", example: "Dec 1 st at beg of every row 5 times", build: oneEdge},
	{rule: "clause", pattern: "at $beg/end of row/rnd/round/needle/work", meaning: "at one edge", example: "Row 3: K, dec 1 st at beg of row", when: tests{no(beforeKind("n")), no(before("and"))}, build: oneEdge},
	{rule: "clause", pattern: "[as/by] evenly [spaced] [across/around/along] [row/rnd/round/work/$next/first/last] [{w:row}]", meaning: "spread over the row", example: "Inc 6 sts evenly across", build: spreadOut},
	{rule: "clause", pattern: "(at/in) (even/equal/regular) (intervals/distances/spaces) [apart] [across/around/along/over/in] [$next/first/last/this] [{w:row}] [of {x:stretch}]", meaning: "spread over the row", example: "Inc 6 sts at even intervals across last row of ribbing", build: spreadOut},
	{rule: "clause", pattern: "across/along/around [next/last/first/same/this] [row/rnd/round]", meaning: "spread over the row", example: "Dec 8 sts across next row", build: spreadOut},
	{rule: "clause", pattern: "[at/after] [end] [in/on/over/across/of] (this/last/same/first/following) {w:row} [of (rib/ribbing/pattern/patt/welt/border)]", meaning: "in one row", example: "Work 4 rows in k1, p1 rib, inc 6 sts evenly across last row",
		build: func(m *match) any {
			last := m.said("last")
			return clause(func(c *course) { c.spread = true; c.once = last })
		}},
	{rule: "clause", pattern: "in/across/around {w:row}", meaning: "spread over the row", example: "Row 3: Sc across, inc 3 sts in row", when: tests{no(beforeKind("n"))}, build: spreadOut},
	{rule: "clause", pattern: "([on/of/in] (rs | ws | right side | wrong side) rows/rnds/rounds | on right/wrong side)", meaning: "on rows of one side", example: "Dec 1 st at each end of right-side rows every 2 rows 4 times",
		build: func(m *match) any {
			rs := m.said("rs", "right")
			return clause(func(c *course) { c.RSOnly, c.WSOnly = rs, !rs })
		}},
	{rule: "clause", pattern: "over [$next] {n:num} {w:row}", meaning: "over n rows", example: "Dec 8 sts over 16 rows",
		build: func(m *match) any {
			n, w := m.num("n", 0), value[bool](m, "w")
			return clause(func(c *course) { c.Over, c.HasOver, c.Rounds = n, true, c.Rounds || w })
		}},
	{rule: "clause", pattern: "after {n:num} {w:row}", meaning: "after n rows", example: "Inc 1 st at each end after 4 rows", build: uncounted},
	{rule: "clause", pattern: "([and] then/and | [and/;] [then] $rep [this/these/same] inc/incs/increase/increases/dec/decs/decrease/decreases) [in/on] [each $edge/end] [of] [in/on/of] every {v:every} [{t:times}]", meaning: "then another way", example: "Inc 1 st at each end of every 12th row 9 times, then every 10th row 3 times",
		build: func(m *match) any {
			v := value[every](m, "v")
			t, has := m.get("t").(often)
			return clause(func(c *course) {
				if !c.HasTimes {
					if c.First || c.Rows.Set() {
						v.put(&c.Course)
						if has {
							c.Times, c.HasTimes = t.n, true
						}
					}
					return
				}
				if !has && len(c.Then) == 0 && c.Times.By == nil && c.Times.All == 1 { // 5th row, then every 6th row until
					c.First, c.On, c.Times, c.HasTimes = true, c.Every, ins.Num{}, false
					v.put(&c.Course)
					return
				}
				k := ins.N(1)
				if has {
					k = t.n
				}
				c.Then = append(c.Then, ins.Spacing{Every: v.n, Times: k})
			})
		}},
	{rule: "clause", pattern: "([and] [then] on/of/in/at [$next] {n:num} [$next] | and [then] [$next] {n:num} $next | and [then] $next {n:num} [$next]) alt/alternate {w:row}", meaning: "on n alternate rows", example: "Inc 1 st at each end of 2nd row, then on 5 foll alt rows", build: spaced},
	{rule: "clause", pattern: "on/of/in/at {w:row} {n:rownums}", meaning: "on the rows of those numbers", example: "Rows 3-8: Inc 1 st at each end of rows 3, 5 and 7", build: func(m *match) any {
		s := value[rowset](m, "n")
		if !m.p.line.IsRow() || s.stretch || len(s.rows) == 0 {
			return nil
		}
		from := m.p.line.Label.From
		first := from.By == nil && s.rows[0].By == nil && s.rows[0].All == from.All
		every := 2
		if len(s.rows) > 1 && s.rows[0].By == nil && s.rows[1].By == nil {
			every = s.rows[1].All - s.rows[0].All
		}
		return clause(func(c *course) {
			c.Every, c.Times, c.HasTimes, c.First = ins.N(every), ins.N(len(s.rows)), true, first
			if first {
				c.Times = ins.N(len(s.rows) - 1)
			}
		})
	}},
	{rule: "clause", pattern: "[and] [then] on/of/in/at [$next] {n:num} [$next] {o:ord} {w:row}", meaning: "on n rows, evenly apart", example: "Inc 1 st at each end of 2nd row, then on 3 foll 4th rows", build: spaced},
	{rule: "clause", pattern: "[on/of/in/at] $next and [on/of/in/at] $next {n:num} [$next] [alt/alternate] [{o:ord}] {w:row}", meaning: "on the next row and n more, evenly apart", example: "Dec 1 st at each end of next and foll 2 alt rows", when: tests{either(said("alt", "alternate"), has("o"))}, build: func(m *match) any {
		add := spaced(m).(clause)
		return clause(func(c *course) { c.Every, c.Times, c.HasTimes = ins.N(1), ins.N(1), true; add(c) })
	}},
	{rule: "clause", pattern: "[and] [then] on/of/in/at [$next/following] {o:ord} row/rnd/round", meaning: "on one row, n rows later", example: "Dec 1 st at each end of 4th row, then on 9 foll alt rows", when: tests{either(no(before("and", "to", "-", ".")), before(".")), no(beforeKind("n"))}, build: spaced},
	{rule: "clause", pattern: "[and] [then] [on/of/in] [each/every/all/both of] [$next/following] {n:num} [rs/ws/alt/alternate] {w:row}", meaning: "on n rows", example: "Dec 1 st at neck edge on next 7 rows",
		build: func(m *match) any {
			n, w := m.num("n", 1), value[bool](m, "w")
			if !m.said("next", "foll", "following", "on", "of") {
				return nil
			}
			alt := m.said("alt", "alternate", "rs", "ws")
			rs, ws := m.said("rs"), m.said("ws")
			return clause(func(c *course) {
				if c.HasTimes || c.Rows.Set() { // then on next 4 rows
					k := ins.N(1)
					if alt {
						k = ins.N(2)
					}
					if !c.HasTimes {
						c.Times, c.HasTimes, c.Every, c.Rows = c.Rows, true, ins.N(1), ins.Num{}
					}
					c.Then = append(c.Then, ins.Spacing{Every: k, Times: n})
					return
				}
				c.Rows, c.Rounds, c.RSOnly, c.WSOnly = n, c.Rounds || w, rs, ws
				if alt {
					c.Times, c.HasTimes, c.Every, c.Rows = n, true, ins.N(2), ins.Num{}
				}
			})
		}},
	{rule: "clause", pattern: "[on/of/in] $next [rs/ws/right/wrong/alt] [side] {w:row} [[and/then] [on/in] [each $edge/end] [of] every/each {v:every} [{t:times}]]", meaning: "on the next row, then n times more", example: "Inc 1 st at each end of next row and every foll 6th row 3 times",
		build: func(m *match) any {
			v, has := m.get("v").(every)
			t, often := m.get("t").(often)
			rs, ws := m.said("rs", "right"), m.said("ws", "wrong")
			return clause(func(c *course) {
				if has {
					v.put(&c.Course)
				}
				c.First, c.RSOnly, c.WSOnly = true, rs && !has, ws && !has
				if often {
					c.Times, c.HasTimes = t.n, true
				}
			})
		}},
	{rule: "clause", pattern: "[on/of/in] $next [rs/ws] (and/then) [on/in] [each $edge/end] [of] every/each {v:every} [{t:times}]", meaning: "on the next row, then n times more", example: "Dec 1 st at each end of next and every foll 2nd row 3 times",
		build: func(m *match) any {
			v := value[every](m, "v")
			t, often := m.get("t").(often)
			return clause(func(c *course) {
				v.put(&c.Course)
				c.First = true
				if often {
					c.Times, c.HasTimes = t.n, true
				}
			})
		}},
	{rule: "clause", pattern: "[on/of/in/at] {o:ord} [row/rnd/round] [,] (and/then | and then) [on/in] [each $edge/end] [of] [every/each] {v:every} [{t:times}]", meaning: "on one row, n rows later, then n times more", example: "Inc 1 st at each end of 5th and every foll 6th row 4 times", when: tests{said("every", "each", "foll", "following")}, build: func(m *match) any {
		on, v := m.nth("o"), value[every](m, "v")
		t, often := m.get("t").(often)
		return clause(func(c *course) {
			v.put(&c.Course)
			c.First, c.On = true, on
			if often {
				c.Times, c.HasTimes = t.n, true
			}
		})
	}},
	{rule: "clause", pattern: "[on/of/in] $next [row/rnd/round] and [on/in] [the] $next {n:num} {w:row}", meaning: "on the next row and n more", example: "Dec 1 st at each end of next and foll 4 rows",
		build: func(m *match) any {
			n, w := m.num("n", 0).Plus(1), value[bool](m, "w")
			return clause(func(c *course) { c.Rows, c.Rounds = n, c.Rounds || w })
		}},
	{rule: "clause", pattern: "[and] [then/from/beg] [on/of/in/at/from] [and] [every/each/alternate] {v:every}", meaning: "every n rows", example: "Dec 1 st at each end of every 4th row 3 times", when: tests{said("every", "each", "alternate", "alt", "foll", "following", "other")}, build: func(m *match) any {
		v := value[every](m, "v")
		return clause(func(c *course) {
			if c.HasTimes && c.Every.Set() && !c.First && v.apart == nil { // every 4th row 3 times, every 6th row twice
				c.Then = append(c.Then, ins.Spacing{Every: v.n, Times: ins.N(1)})
				return
			}
			v.put(&c.Course)
		})
	}},
	{rule: "clause", pattern: "[then/and] [at/on] every/each {l:len} {t:times}", meaning: "n times, evenly apart", example: "Inc 1 st at each end every 4 cm 6 times", build: sets("t", func(c *course, t often) { c.Times, c.HasTimes = t.n, true })},
	{rule: "clause", pattern: "in/with/of {y:cloth} [$st/pattern/patt/rib/ribbing/crochet]", meaning: "in a fabric", example: "Work 8 rounds even in k2, p2 rib", when: tests{no(all(firstWord("with"), beforeKind("n")))}, build: sets("y", func(c *course, y ins.Cloth) { c.cloth = y })},
	{rule: "clause", pattern: "in [est/established/same/this] (pattern/patt/pat/manner/way) [as set/established] [throughout]", meaning: "in pattern", example: "Work even in pattern for 10 rows", build: uncounted},
	{rule: "clause", pattern: "( over and over [again] | even | straight | thereafter | [as] before | alternately | throughout | plain | [as] set | [as] established )", meaning: "even", example: "Rep Rows 1 and 2 alternately 5 times", build: uncounted},
	{rule: "clause", pattern: "[for] [as] (length desired/required/wanted/needed | desired/required length | long as {x:stretch} | as many {x:stretch})", meaning: "as long as the maker likes", example: "Rep rows 1-4 for length desired", build: asLong},
	{rule: "clause", pattern: "[your needle/needles] [,] and (you've | you have | having) [just] completed/finished/worked/done [a/an] [rs/ws/right/wrong] [side] [{x:rowset} | row] [of [pattern/patt/chart]]", meaning: "words about it", example: "Rep rows 1 and 2 until you have 28 sts on your needle and you've just completed row 1 of the pattern", build: func(m *match) any { return clause(func(c *course) { c.AnySide = true }) }},
	{rule: "clause", pattern: "so [that] you have {x:stretch}", meaning: "words about it", example: "Rep rows 1-2 nine more times so you have a total of 10 repeats", build: uncounted},
	{rule: "clause", pattern: "or {n:num} [pattern/patt] repeats/reps", meaning: "another end, as the maker likes", example: "Rep rows 1-4 for length desired or 49 pattern repeats", build: uncounted},
	{rule: "clause", pattern: "[,] or {l:len} [less/shorter/longer/more/short] [than/of] {x:stretch}", meaning: "another end, as the maker likes", example: "Rep Row 1 for 8 in or 1 in less than your foot", build: uncounted},
	{rule: "clause", pattern: "or (until/till/to/for/as {x:stretch})", meaning: "another end, as the maker likes", example: "Rep these 2 rows 13 times more, or until leg is desired length", build: uncounted},
	{rule: "clause", pattern: "on/over [these/those/same/all/$rem] {n:num} $st [only]", meaning: "over n stitches", example: "Work even on 20 sts for 6 rows", when: tests{after("even", "straight", "plain", "pattern", "patt", "st", "stitch", "rib", "rows", "rnds"), no(inRow)}, build: sets("n", func(c *course, n ins.Num) { c.on = n })},
	{rule: "clause", pattern: "across/over/on (all [$st] | $rem $st)", meaning: "over all stitches", example: "Knit 3 plain rounds across all sts", build: uncounted},
	{rule: "clause", pattern: "for/in [the] pattern/patt [st/stitch]", meaning: "in pattern", example: "Rep Rows 1-4 for pattern until piece is 20 cm long", build: uncounted},
	{rule: "clause", pattern: "for [the] {a:patname}", meaning: "for the pattern of which the rows are", example: "Rep Rows 1-4 for lace pattern until piece is 20 cm long", build: uncounted},
	{rule: "clause", pattern: "without [any/further] shaping/increasing/decreasing", meaning: "even", example: "Work 4 rows without shaping", build: uncounted},
	{rule: "clause", pattern: "{t:times}", meaning: "n times", example: "Rep last 2 rows 5 times more",
		build: func(m *match) any {
			t := value[often](m, "t")
			return clause(func(c *course) {
				if c.HasTimes && c.Every.Set() && len(c.Then) > 0 {
					c.Then[len(c.Then)-1].Times = t.n
					return
				}
				c.Times, c.HasTimes, c.total = t.n, true, t.total && !t.more
			})
		}},
	{rule: "clause", pattern: "[for] [a] [another/further/next/$next/total/first/last] [of] {n:num} [more] {w:row} [more]", meaning: "for n rows", example: "Work even in pattern for 10 rows",
		build: func(m *match) any {
			n, w := m.num("n", 1), value[bool](m, "w")
			switch {
			case !m.said("for"):
				return nil
			case m.said("total"): // with those that are there
				return clause(func(c *course) { c.ToRow, c.Counted, c.Rounds = n, true, c.Rounds || w })
			}
			return clause(func(c *course) { c.Rows, c.Rounds = n, c.Rounds || w })
		}},
	{rule: "clause", pattern: "(to | until | through | to end of | until end of | up to | ending with | up to and including | until [and] [end] [of]) {w:row} {n:num} [is/has] [been] [complete/completed/worked/done]", meaning: "up to a row", example: "Rep Row 2 to end of row 30", build: sets("n", func(c *course, n ins.Num) { c.ToRow = n })},
	{rule: "clause", pattern: "until/till/to {u:until}", meaning: "until there are n stitches, or to a length", example: "Dec 1 st at neck edge every row until 21 sts remain", build: func(m *match) any { return m.get("u") }},
	{rule: "clause", pattern: "until/till/til/unless/except {u:anyend}", meaning: "until an end that is not counted", example: "Rep rows 1 and 2 until you are happy with the length", build: func(m *match) any {
		if _, to := m.p.named("until", m.from+1); to >= 0 {
			return nil
		}
		return asLong(m)
	}},
	{rule: "clause", pattern: "(in round/rnds/rounds/rows | in the round | around | circularly | back and forth | flat) [in rows]", meaning: "flat or around", example: "Work even in the round for 10 rounds", build: func(m *match) any {
		rounds := m.said("round", "rounds", "rnds", "around", "circularly")
		return clause(func(c *course) { c.Rounds = c.Rounds || rounds })
	}},
	{rule: "clause", pattern: "for/to/until {l:len} [more] [{x:fromwhere}]", meaning: "for a length", example: "Work in stockinette stitch for 12 cm",
		build: func(m *match) any {
			l := value[*ins.Lengths](m, "l")
			if x, ok := m.get("x").(string); ok {
				l.From = x
			}
			return clause(func(c *course) { c.Length = l })
		}},
	{rule: "clause", pattern: "[and] end/ending/finishing [on/with/after/by] [rs/ws/right/wrong/k/knit/p/purl/last/{n:num}] [side] [of work | $row/facing] [{r:num} [or [{row}] {num}]] [facing] [for [$next] {row}] [of pattern]", meaning: "after which row it ends", example: "Work even until piece measures 20 cm, ending after a WS row",
		build: func(m *match) any {
			if m.to == m.from+1 || m.p.t[m.to-1].Is("with", "on", "after", "by") || m.has("n") && !m.said("row", "rnd", "rows", "rnds", "round", "rounds") {
				return nil
			}
			side := 0
			switch {
			case m.said("facing") && m.said("rs", "right"), !m.said("facing") && m.said("ws", "wrong", "p", "purl"):
				side = 2
			case m.said("facing") && m.said("ws", "wrong"), m.said("rs", "right", "k", "knit"):
				side = 1
			}
			if m.said("k", "knit", "p", "purl") {
				side = 0
			}
			return clause(func(c *course) { c.EndSide = side })
		}},

	{rule: "until", pattern: "[there/it/circle/round/row/piece/work] [are/is/remain/has] [only] [you] [have] [a] [total] [of] {n:num} {u:unit} [there] [are] [$rem/left/remains/in] (in/of/for raglan/raglans/armhole/armholes/top/cap/neck/shoulder/side/front/sleeve shaping/shapings/decreases | [all] [on/in] [needle/each/row/round/rnd/side/work/hook/total/all])", meaning: "until there are n stitches", example: "Dec 1 st at each end of every row until 21 sts remain",
		build: func(m *match) any {
			n := m.num("n", 0)
			switch u := value[ins.Unit](m, "u"); {
			case u.Row:
				return nil
			case u.Stretch, u.Group != nil: // 20 blocks, of any number of stitches
				return asLong(m)
			}
			return clause(func(c *course) { c.Via, c.Until = c.Until, n })
		}},
	{rule: "until", pattern: "[there] [are/is] [you] [have] {n:num} {u:unit} [$rem/left] (between/for/within/in/outside/inside/beyond {x:stretch} | on [each/both] [of] [{num}] (needle/needles/n/dpn/first/second/third/fourth) [{y:stretch}])", meaning: "until a part of the row has n stitches", example: "Rep rnds 2 and 3 until there are 15 sts between markers", build: func(m *match) any {
		if m.said("all", "total") || value[ins.Unit](m, "u").Row {
			return nil
		}
		return asLong(m)
	}},
	{rule: "until", pattern: "[there] [are] {n:num} {u:unit} [more] [in] [all] [have/has] [been] (increased/decreased/added/inc'd/dec'd/inc/dec/made/taken/lost/gained/shaped) [off/out/in] [{y:stretch}]", meaning: "until n stitches are added or taken away", example: "Increase 1 st at end of every k row until 22 sts have been increased", build: func(m *match) any {
		n := m.num("n", 0)
		if n.By == nil && saidBefore("each", "both", "either")(m) && !m.said("each", "both") { // of both ends together
			n.All /= 2
		}
		return clause(func(c *course) { c.Times, c.HasTimes = n, true })
	}},
	{rule: "until", pattern: "armhole/armholes/underarm/underarms/shoulder/shoulders/waist/hem", meaning: "until it is a given length", example: "Work in 2x2 rib until armholes", build: asLong},
	{rule: "until", pattern: "[{x:piecename}] reaches/reach {y:stretch}", meaning: "until it is a given length", example: "Work even until mitten reaches the tip of the little finger", build: func(m *match) any {
		for i := m.from; i < m.to; i++ {
			if m.p.at(i).Kind == 'n' || m.p.at(i).Kind == 'f' {
				return nil
			}
		}
		return asLong(m)
	}},
	{rule: "until", pattern: "[there] [are/is/remain] [only] {n:num} $rem/left", meaning: "until there are n stitches", example: "Dec 1 st at each end of every row until 21 remain", build: sets("n", func(c *course, n ins.Num) { c.Until = n })},
	{rule: "until", pattern: "[{x:piecename}] $meas [{l:len}] [{y:fromwhere}]", meaning: "until it measures a length", example: "Work even until sleeve measures 42 cm", build: untilLength},
	{rule: "until", pattern: "[{x:piecename}] (is | reaches | is about | matches | fits | are | has) {l:len} [long/deep/in] [length] [{y:fromwhere}]", meaning: "until it measures a length", example: "Work even until piece is 20 cm", build: untilLength},
	{rule: "until", pattern: "{l:len} [are/is] [completed/complete/worked/done/made] [{y:fromwhere}]", meaning: "until it measures a length", example: "Work even until 20 cm from beg", build: untilLength},
	{rule: "until", pattern: "[{x:piecename}] [reaching | reaches | you reach | you have reached] (desired/required/right/correct/same/long/matches/fits/as/is) [{s:stretch}]", meaning: "until it is as long as wanted", example: "Work even until desired length", when: tests{no(said("needle"))}, build: asLong},
	{rule: "until", pattern: "{x:openend}", meaning: "until it is as the maker wants it", example: "Rep Row 2 until it goes round your head with room to spare", when: tests{after("until", "till")}, build: asLong},
	{rule: "until", pattern: "[you/there/it/i] [have/are/has] [made/worked/done/completed/finished] [a] [total] [of] {n:num} {w:row} [in] [all/total/altogether/long/done/complete/completed] [{x:openend}]", meaning: "until there are n rows", example: "Rep Row 25 until you have 33 rows total", build: func(m *match) any {
		n := m.num("n", 0)
		for i := m.from; i < m.to+6; i++ {
			if m.p.at(i).Is("above", "after", "since", "past") { // 38 rows above the marker
				return asLong(m)
			}
		}
		return clause(func(c *course) { c.ToRow, c.Counted = n, true })
	}},

	{rule: "every", pattern: "[$next/following] {o:ord} {w:row}", meaning: "every nth row", example: "Dec 1 st at each end of every 4th row 3 times", build: func(m *match) any { return every{n: m.nth("o"), rounds: value[bool](m, "w")} }},
	{rule: "every", pattern: "[$next/following] {n:num} [th/st/nd/rd] {w:row}", meaning: "every n rows", example: "Dec 1 st at each end every 4 rows 3 times", build: func(m *match) any { return every{n: m.num("n", 1), rounds: value[bool](m, "w")} }},
	{rule: "every", pattern: "[$next/following] other/alt/alternate/second [rs/ws] {w:row}", meaning: "every second row", example: "Dec 1 st at each end of every other row 3 times",
		build: func(m *match) any {
			k := 2
			if m.said("rs", "ws") {
				k = 4
			}
			return every{n: ins.N(k), rounds: value[bool](m, "w")}
		}},
	{rule: "every", pattern: "[$next/following] (rs | ws | right side | wrong side | k | knit | p | purl) {w:row}", meaning: "every row of one side", example: "Dec 1 st at each end of every RS row 3 times", build: func(m *match) any {
		return every{n: ins.N(2), rs: m.said("rs", "right"), ws: m.said("ws", "wrong"), rounds: value[bool](m, "w")}
	}},
	{rule: "every", pattern: "{l:len}", meaning: "how far apart", example: "Dec 1 st at each end every 2 in 3 times", build: func(m *match) any { return every{apart: value[*ins.Lengths](m, "l")} }},
	{rule: "every", pattern: "[$next/following] {w:row}", meaning: "every row", example: "Dec 1 st at each end of every row 3 times", build: func(m *match) any { return every{n: ins.N(1), rounds: value[bool](m, "w")} }},
}

type every struct {
	n      ins.Num
	apart  *ins.Lengths
	rs, ws bool
	rounds bool
}

func (e every) put(c *ins.Course) {
	c.Every, c.RSOnly, c.WSOnly, c.Rounds, c.Apart = e.n, c.RSOnly || e.rs, c.WSOnly || e.ws, c.Rounds || e.rounds, e.apart
}

func both(m *match) any {
	p := value[string](m, "p")
	return clause(func(c *course) {
		c.both, c.where = true, true
		if p != "" {
			c.inner, c.panel = true, p
		}
	})
}

func oneEdge(m *match) any { return clause(func(c *course) { c.edge, c.where = "edge", true }) }

func untilLength(m *match) any {
	l, ok := m.get("l").(*ins.Lengths)
	if !ok {
		l = &ins.Lengths{}
	}
	if y, ok := m.get("y").(string); ok && l != nil {
		l.From = y
	}
	if l.Of = "piece"; m.get("x") != nil {
		l.Of = value[string](m, "x")
	}
	return clause(func(c *course) { c.Length = l })
}

// courses reads clauses as long as there are any.
func courses(p *parser, i int) (any, int) {
	if _, next := p.named("clause", i); next < 0 {
		return nil, -1
	}
	var c course
	to := -1
	for j := i; ; {
		if to >= 0 && p.at(j).Is(",", ";") {
			j++
		}
		if to >= 0 && p.at(j).Is("and") && p.at(j+1).Is("every", "on", "at", "then", "ending", "end", "in", "each", "following") {
			if v, next := p.named("clause", j); next >= 0 {
				v.(clause)(&c)
				to, j = next, next
				continue
			}
			j++
		}
		if to >= 0 && p.at(j).Kind == 'g' && (len(p.at(j).Sub) < 4 && p.explains(p.at(j).Sub) || p.cautions(j)) { // every 9th ridge (18th row)
			j++
		}
		v, next := p.named("clause", j)
		if next < 0 {
			break
		}
		v.(clause)(&c)
		to, j = next, next
	}
	return c, to
}

// explains reports whether a bracket says a row in other words: (18th row), (36 rows).
func (p *parser) explains(t []text.Token) bool {
	for i := range t {
		if _, ok := text.RowWord(t[i].S); ok && i > 0 && (t[i-1].Ord > 0 || t[i-1].Kind == 'n') {
			return true
		}
	}
	return false
}

// cautions reports whether a bracket within a course says what is not to be done: [do not inc directly over previous incs].
func (p *parser) cautions(i int) bool {
	sub := p.at(i).Sub
	if len(sub) < 3 || !(sub[0].Is("do") && sub[1].Is("not") || sub[0].Is("don't", "never", "avoid", "taking", "being")) {
		return false
	}
	_, to := p.named("clause", i+1)
	return to >= 0
}

// ofPanel reads of which panel an end is: of Left arm. An end of the next row, or of every
// row, is one of the whole row.
func ofPanel(p *parser, i int) (any, int) {
	t := p.at(i + 1)
	if !p.at(i).Is("of") || t.Kind != 'w' || t.Is("next", "every", "each", "foll", "following", "this", "these", "needle", "row", "rnd", "rows", "rnds", "round", "rounds", "work", "alternate", "alt", "rs", "ws", "right", "wrong", "same", "last", "all", "other") || t.Ord > 0 {
		return nil, -1
	}
	j := i + 1
	var words []string
	for ; p.at(j).Kind == 'w' && !p.at(j).Is("every", "on", "each", "next", "in"); j++ {
		words = append(words, p.at(j).S)
	}
	return strings.Join(words, " "), j
}

var edgeNames = map[string]bool{"neck": true, "armhole": true, "front": true, "side": true, "left": true, "right": true, "center": true, "centre": true, "outer": true, "inner": true, "shoulder": true, "back": true,
	"this": true, "that": true, "one": true, "same": true, "lower": true, "upper": true, "shaped": true, "straight": true, "raglan": true, "sleeve": true, "underarm": true, "seam": true, "first": true, "other": true, "opposite": true, "arm": true, "toe": true, "heel": true, "long": true}

// edgeName reads neck edge, left side, one end.
func edgeName(p *parser, i int) (any, int) {
	t := p.at(i)
	if t.Kind == 'w' && edgeNames[t.S] && p.at(i+1).Is("edge", "end", "side", "edges") {
		to := i + 2
		if p.at(to).Is("only") {
			to++
		}
		if p.at(to).Is("of") {
			to++
		}
		return t.S, to
	}
	if t.Kind == 'w' && edgeNames[t.S] && edgeNames[p.at(i+1).S] && p.at(i+2).Is("edge", "end", "side", "edges") {
		return t.S, i + 3
	}
	if t.Is("armhole", "armholes") && p.at(i-1).Is("at", "on") && (p.at(i+1).Kind == 'n' || p.at(i+1).Is("every", "each")) {
		return "armhole", i + 1
	}
	if t.Kind == 'w' && t.Is("edge", "side") {
		return "edge", i + 1
	}
	if t.Kind == 'w' && p.at(i+1).Is("edge") && !t.Is("each", "both", "next", "of", "every", "marked") { // an edge with a name of the text's own
		return t.S, i + 2
	}
	return nil, -1
}

// edgeSide reads (left) behind an edge that has a name of its own.
func edgeSide(p *parser, i int) (any, int) {
	if t := p.at(i); t.Kind == 'g' && len(t.Sub) == 1 && t.Sub[0].Is("left", "right") {
		return t.Sub[0].S, i + 1
	}
	return nil, -1
}

// stretch reads words to the end of the clause.
func stretch(p *parser, i int) (any, int) {
	var words []string
	j := i
	for ; j < len(p.t); j++ {
		t := p.at(j)
		if t.Kind == 'p' && !t.Is("-", "/", "\"") || t.Kind == 'g' || t.Is("reversing", "then") || t.Is("and") && (p.thingAt(j+1) || verbs[p.at(j+1).S]) {
			break
		}
		if j > i && t.Kind == 'w' && t.Cap && p.at(j-1).Kind != 'w' {
			break
		}
		words = append(words, t.S)
	}
	if j == i {
		return nil, -1
	}
	return strings.Join(words, " "), j
}

// sentence reads words to the end of the sentence.
func sentence(p *parser, i int) (any, int) {
	j := i
	for j < len(p.t) && !p.at(j).Is(".", ";") {
		j++
	}
	if j == i {
		return nil, -1
	}
	return true, j
}

// openEnd reads an end that is not counted: any words up to a sign, without a number of stitches or rows.
func openEnd(p *parser, i int) (any, int) {
	j := i
	for ; j < len(p.t); j++ {
		t := p.at(j)
		if t.Kind == 'g' && !p.neutralAll(t.Sub) || t.Is("rep", "repeat", "then", "turn", "ending", "end", "fasten", "bind", "cast", "join") ||
			(t.Kind == 'n' || numerals[t.S] > 0) && !freeNumber(p.at(j-1), t, p.at(j+1), p.at(j+2)) {
			return nil, -1
		}
		if t.Kind == 'p' && !t.Is("-", "/", "\"") {
			break
		}
	}
	if j == i {
		return nil, -1
	}
	return true, j
}

// anyEnd reads words up to the end of their clause, numbers and all, behind which the work goes on: until you have done it 10 times.
func anyEnd(p *parser, i int) (any, int) {
	if k := p.at(i - 2); p.line.IsRow() && p.thingAt(i-2) && !k.Is("rep", "repeat") || p.at(i).Is("end", "last", "marker", "next") {
		return nil, -1
	}
	j := i
	for ; j < len(p.t); j++ {
		t := p.at(j)
		if t.Is(".", ";", "then", "ending", "finishing", "--") || t.Kind == 'g' && p.countsIn(t.Sub) != nil || t.Is(",", "and") && p.worksOn(j+1) || isStar(t) {
			break
		}
	}
	if j == i {
		return nil, -1
	}
	return true, j
}

// worksOn reports whether an instruction stands at i, behind words of another.
func (p *parser) worksOn(i int) bool {
	t := p.at(i)
	return t.Is("then", "ending", "end", "finishing", "inc", "dec") || verbs[t.S] || p.thingAt(i)
}

// edgeWords reads along which edge, how or for what: words to the end of the clause that
// move no stitch.
func edgeWords(p *parser, i int) (any, int) {
	t := p.at(i)
	if t.Kind == 'g' { // (right side of work)
		if p.neutralAll(t.Sub) {
			return "", i + 1
		}
		return nil, -1
	}
	if t.Kind != 'w' || t.Is("turn", "then", "join") || t.Is("and") && !p.at(i+1).Is("in") || t.Is("k", "knit", "p", "purl") && p.at(i+1).Is("across", "to", "all") {
		return nil, -1
	}
	j := i
	var words []string
	for ; j < len(p.t); j++ {
		if p.at(j).Is(",") && p.edgeFollows(j+1) { // of a name with a comma in it
			continue
		}
		if p.edgeEnds(j, j == i) {
			break
		}
		words = append(words, p.at(j).S)
	}
	if j == i {
		return nil, -1
	}
	return strings.Join(words, " "), j
}

// edgeEnds reports whether the words of an edge end before j: there another instruction, or a count, begins.
func (p *parser) edgeEnds(j int, first bool) bool {
	t, next := p.at(j), p.at(j+1)
	switch {
	case t.Is("-"): // a count: - 52 sts
		return next.Kind == 'n' && !t.Glued
	case t.Kind == 'p':
		return !t.Is("/", "\"", "&", "<", ">")
	case t.Is("turn", "then", "rep", "repeat", "join", "joining", "until", "till"):
		return true
	case t.Kind == 'g':
		return !p.neutralAll(t.Sub) && !(len(t.Sub) > 0 && t.Sub[0].Is("and"))
	case first:
		return false
	case t.Is("and"):
		return p.thingAt(j+1) || next.Kind == 'n' && (p.thingAt(j+2) || p.at(j+2).Is("st", "sts", "stitches")) || next.Is("work", "join", "turn", "in", "ch", "bind", "cast", "bo", "slip", "place", "put", "leave", "with")
	}
	return p.thingAt(j) && (p.at(j-1).Kind == 'n' || next.Kind == 'n')
}

// edgeFollows reports whether the clause from i on still names an edge, and nothing that is worked.
func (p *parser) edgeFollows(i int) bool {
	for k := i; k < i+8; k++ {
		t := p.at(k)
		if t.Is("edge", "rate") {
			return true
		}
		if t.Kind != 'w' || t.Is("turn", "join", "and", "work", "ch", "then") || p.thingAt(k) {
			return false
		}
	}
	return false
}

// pieceName reads the name of a piece: a few words without a number.
func pieceName(p *parser, i int) (any, int) {
	var words []string
	j := i
	for ; j < len(p.t) && len(words) < 7; j++ {
		t := p.at(j)
		if t.Kind != 'w' || t.Is("to", "until", "up", "but", "reversing", "measures", "measure", "meas", "measuring", "is", "should", "reaches", "and", "as", "now", "with", "are", "except", "has", "fits", "matches", "starting", "beginning", "desired", "required") || p.thingAt(j) && len(words) == 0 {
			break
		}
		words = append(words, t.S)
	}
	if len(words) == 0 {
		return nil, -1
	}
	return strings.Join(words, " "), j
}

// fromWhere reads from beg, from cast-on edge, ending ... stops it.
func fromWhere(p *parser, i int) (any, int) {
	if !p.at(i).Is("from", "above", "below", "long", "in", "at", "along", "when", "measured", "across", "of", "high", "deep", "slightly", "or", "total", "overall", "including", "past", "after", "wide", "less", "before", "unstretched", "square", "all") {
		return nil, -1
	}
	j := i
	var words []string
	for ; j < len(p.t); j++ {
		t := p.at(j)
		if t.Kind == 'p' && !t.Is("-", "/", "\"") || t.Is("ending", "end") && j > i && !p.at(j-1).Is("cast", "co", "lower") || t.Is("inc", "dec", "then") || j > i+1 && p.shapesAt(j) {
			break
		}
		words = append(words, t.S)
	}
	return strings.Join(words, " "), j
}

// works are words that change the stitches, or begin a row, where no word before them has them be where something is.
var works = set("bind cast bo co decrease increase decreasing increasing work change divide place put slip k p knit purl")

// shapesAt reports whether work begins at i, and no place is named by it: 24 cm from beg bind off, but 3 cm from last bind-off.
func (p *parser) shapesAt(i int) bool {
	return works[p.at(i).S] && !p.at(i-1).Is("from", "of", "at", "last", "first", "above", "and", "to", "after", "before", "with", "next", "this", "all", "when", "your", "on", "neck", "armhole", "final", "previous") && !p.at(i+1).Is("on", "-", "edge", "edging", "row", "side")
}

var unitWords = map[string]bool{"mm": true, "cm": true, "in": true, "ins": true, "inch": true, "inches": true, "cms": true, "\"": true, "”": true, "″": true, "centimetres": true, "centimeters": true, "yd": true}

// length reads a length in one or both units, as the text has it.
func length(p *parser, i int) (any, int) {
	for p.at(i).Is("approx", "approximately", "about", "approx.", "a", "total", "of", "only") {
		i++
	}
	t := p.at(i)
	if t.Is("inch", "half") && p.at(i-1).Is("every", "each") {
		return eachInch(p, i)
	}
	if t.Kind == 'n' && t.Num.By == nil && p.at(i+1).Is("more", "further", "additional") && unitWords[p.at(i+2).S] && !p.at(i+2).Is("in") {
		u, _ := units.ParseUnit(p.at(i + 2).S)
		return p.sameLength(units.Of(units.Int(int64(t.Num.All)), u), u), i + 3
	}
	if t.Kind == 'w' && numerals[t.S] > 0 && unitWords[p.at(i+1).S] && !p.at(i+1).Is("in") {
		u, _ := units.ParseUnit(p.at(i + 1).S)
		return p.sameLength(units.Of(units.Int(int64(numerals[t.S])), u), u), i + 2
	}
	if !isNumber(t) {
		return nil, -1
	}
	to := p.lengthEnd(i)
	if to < 0 {
		return nil, -1
	}
	end := to
	if p.at(to+1).Is(".") && p.at(to).Is("in", "ins") && p.at(to+2).Kind == 'w' && !p.at(to+2).Cap {
		end = to + 1
	}
	return p.parseLength(i, to), end + 1
}

// eachInch reads what follows every: inch, half inch.
func eachInch(p *parser, i int) (any, int) {
	l := units.Int(1)
	if p.at(i).Is("half") {
		if l, i = units.Frac(1, 2), i+1; !p.at(i).Is("inch") {
			return nil, -1
		}
	}
	return p.sameLength(units.Of(l, units.Inch), units.Inch), i + 1
}

// lengthEnd is the last word of the length that begins at i, a unit or a bracket that has one; -1: there is none.
func (p *parser) lengthEnd(i int) int {
	to := -1
	for k := i; k < len(p.t); k++ {
		switch t := p.at(k); {
		case unitWords[t.S] && t.Kind != 'n':
			if p.noInches(k) {
				return to
			}
			if to = k; !p.otherUnit(k + 1) {
				return to
			}
		case t.Kind == 'g':
			if !lengthGroup(t.Sub) {
				return to
			}
			if hasUnit(t.Sub) {
				to = k
			}
		case !isNumber(t) && !t.Is("/", "-", ",", "or", "[", "]"):
			return to
		}
	}
	return to
}

// noInches reports whether the word at k, which may be a unit, is 'in' before what is worked into: 20 in each st.
func (p *parser) noInches(k int) bool {
	next := p.at(k + 1)
	if p.at(k).S != "in" || next.Kind != 'w' || next.Is("from", "above", "long", "until", "till", "ending", "end", "or", "and", "in", "deep", "wide", "for", "then", "measured", "at", "of", "when", "below", "total", "high", "less", "shorter", "before", "longer", "more") {
		return false
	}
	return p.at(k-1).Kind != 'f' && !next.Is("stockinette", "garter", "st", "rib", "ribbing")
}

// otherUnit reports whether the same length in another unit follows at k: / 20 cm, or 8 in, (20 cm).
func (p *parser) otherUnit(k int) bool {
	t := p.at(k)
	return t.Is("/", "or", "-") && isNumber(p.at(k+1)) || t.Kind == 'g' && len(t.Sub) < 8 && hasUnit(t.Sub)
}

func hasUnit(t []text.Token) bool {
	for i := range t {
		if unitWords[t[i].S] {
			return true
		}
	}
	return false
}

func lengthGroup(t []text.Token) bool {
	for i := range t {
		if k := &t[i]; k.Kind != 'n' && k.Kind != 'f' && !k.Is(",", "-", "--", "/", ";", ":", "or") && !unitWords[k.S] {
			return false
		}
	}
	return len(t) > 0
}

func (p *parser) sameLength(l units.Num, u units.Unit) *ins.Lengths {
	out := &ins.Lengths{Unit: u, At: p.line.At}
	for range p.r.x.Sizes.Names {
		out.MM = append(out.MM, l)
	}
	return out
}

// parseLength takes a length as the text has it; a length that can't be reckoned is one
// of which nothing is known.
func (p *parser) parseLength(from, to int) *ins.Lengths {
	at := p.span(from, to)
	if at.Line < 1 || at.Line > len(p.r.x.Src) {
		return &ins.Lengths{}
	}
	src := []rune(p.r.x.Src[at.Line-1])
	a, b := at.Col-1, at.End-1
	if a < 0 || b > len(src) || a >= b {
		return &ins.Lengths{}
	}
	words := strings.NewReplacer("inches", "in", "inch", "in", "ins", "in", "″", "in", "”", "in", "\"", "in", "cms", "cm", "centimeters", "cm", "centimetres", "cm", " or ", " / ").Replace(string(src[a:b]))
	if p.at(from).List {
		words = strings.Replace(strings.Replace(words, "(", "", 1), ")", "", 1)
	}
	l, prob := expr.ParseLength(words, p.r.x.Sizes, units.CM)
	if prob != nil {
		return &ins.Lengths{}
	}
	out := &ins.Lengths{MM: l.Low.Vals, Unit: l.Unit, At: at}
	if !l.Other.IsZero() {
		out.Other = l.Other.Vals
	}
	for _, v := range out.MM {
		if v.Sign() < 0 {
			return &ins.Lengths{}
		}
	}
	return out
}

// longestCloth is how many words the name of a fabric may have.
const longestCloth = 8

// cloth reads the words of a fabric: stockinette stitch, k2, p2 rib, hdc.
func cloth(p *parser, i int) (any, int) {
	if g := p.at(i); g.Kind == 'g' && p.at(i+1).Is("rib", "ribbing") { // (K2. P2) ribbing
		said := ""
		for _, t := range g.Sub {
			said += " " + t.S
		}
		if c, ok := ins.ClothOf(strings.ReplaceAll(said, ".", ",")+" rib", p.r.x.Terms); ok {
			return c, i + 2
		}
	}
	if !p.clothBegins(i) {
		return nil, -1
	}
	if p.at(i).Kind == 'n' {
		if k, to := number(p, i); to >= 0 {
			return p.numberedRib(k.(ins.Num), to)
		}
	}
	best, to := p.longestClothAt(i)
	if k, next := p.named("kind", i); to < 0 && next > 0 && k.(thing).Kind != nil { // of a list beside the standard's: esc
		best, to = ins.Cloth{St: k.(thing).Kind}, next
	}
	if to < 0 {
		return nil, -1
	}
	for p.at(to).Is("st", "sts", "stitch", "rib", "ribbing", "crochet", "pattern", "patt", "pat") {
		to++
	}
	return best, to
}

// numberedRib reads 2x2 rib, from behind its first number.
func (p *parser) numberedRib(k ins.Num, to int) (any, int) {
	q, next := number(p, to+1)
	if next >= 0 && p.at(next).Is("twisted", "offset", "garter", "broken") {
		next++
	}
	if next < 0 || !p.at(to).Is("x", "/") || !p.at(next).Is("rib", "ribbing") {
		return nil, -1
	}
	return ins.Cloth{Knit: k.All, Purl: q.(ins.Num).All}, next + 1
}

// longestClothAt is the fabric of the longest name at i, with a remark in brackets behind it, and where that ends.
func (p *parser) longestClothAt(i int) (best ins.Cloth, to int) {
	var words []string
	to = -1
	for k := i; k < i+longestCloth && k < len(p.t); k++ {
		t := p.at(k)
		if t.Kind == 'g' && to >= 0 {
			return best, k + 1 // (knit every rnd)
		}
		if t.Kind == 'g' || t.Kind == 'p' && !t.Is(",", "/", "-", "x") {
			break
		}
		if t.Is("and") && p.at(k-1).Kind == 'n' && k > i { // rib of k2 and p2
			words = append(words, ",")
			continue
		}
		words = append(words, t.S)
		if c, ok := ins.ClothOf(strings.Join(words, " "), p.r.x.Terms); ok && (c != best || to < 0) {
			best, to = c, k+1
		}
	}
	return best, to
}

// clothBegins reports whether the word at i may begin the name of a fabric.
func (p *parser) clothBegins(i int) bool {
	t := p.at(i)
	if t.Is("st", "stst", "stockinette", "stocking", "garter", "reverse", "rev", "k", "knit", "p", "purl", "stockingette") || t.Kind == 'n' {
		return true
	}
	if t.Is("single", "half", "double", "treble") {
		return true
	}
	k, to := p.named("kind", i)
	if to < 0 {
		return false
	}
	v := k.(thing)
	return v.Kind != nil && v.Kind.Craft == stitch.Crochet && v.Kind.Uses == 1 && v.Kind.Legs == 1 && v.Kind.ID != "slst" && v.Kind.ID != "ch"
}

// inCloth reads in stockinette stitch; the word before it may be left out: Work 2 rows St st.
func inCloth(p *parser, i int) (any, int) {
	j := i
	if p.at(j).Is("in", "of", "with") {
		j++
	} else if !clothWords(p.at(i)) && !p.ribAhead(i) { // most words of most rows
		return p.bareCloth(i)
	}
	v, to := p.named("cloth", j)
	if to < 0 {
		return p.patternCloth(i)
	}
	if c := v.(ins.Cloth); j == i && (c.St != nil || !clothWords(p.at(i)) && !p.at(to-1).Is("rib", "ribbing")) {
		return nil, -1
	}
	if t := p.at(to); t.Kind == 'g' && (p.neutralAll(t.Sub) || ofRib(t.Sub)) {
		to++
	}
	return v, p.bordered(to)
}

// aside reads words in a bracket that move no stitch: work 7 rows (or 5 cm) in rib.
func aside(p *parser, i int) (any, int) {
	if t := p.at(i); t.Kind == 'g' && p.neutralAll(t.Sub) {
		return true, i + 1
	}
	return nil, -1
}

// bracketed reads a bracket, whatever it holds.
func bracketed(p *parser, i int) (any, int) {
	if p.at(i).Kind == 'g' {
		return true, i + 1
	}
	return nil, -1
}

// ofRib reports whether a bracket behind a fabric says its stitches or rows over again: (k2, p1).
func ofRib(t []text.Token) bool {
	return !slices.ContainsFunc(t, func(t text.Token) bool {
		return t.Kind != 'n' && !t.Is("k", "knit", "p", "purl", ",", "row", "rows", "every", "and", "on", "rs", "ws")
	})
}

// borders are words for the stitches along the sides of a piece that are worked otherwise.
var borders = set("border borders edge edges edging edgings band bands")

// bordered goes behind words that say how the sides of a piece are worked: with garter st borders as set.
func (p *parser) bordered(i int) int {
	if !p.at(i).Is("with", "and", "keeping") {
		return i
	}
	for k := i + 1; k < i+8; k++ {
		t := p.at(k)
		if borders[t.S] {
			for k++; p.at(k).Is("as", "set", "established", "before", "each", "end", "side", "at", "on", "both", "sides", "ends", "correct"); k++ {
			}
			return k
		}
		if t.Kind != 'w' && !t.Is("-") && !(t.Kind == 'n' && t.Num.By == nil) || text.IsStop(t.S) && !t.Is("k") || t.Is("row", "rows") {
			break
		}
	}
	return i
}

// clothWords reports whether a fabric may begin with t without a word before it.
func clothWords(t *text.Token) bool {
	return t.Is("st", "stst", "stockinette", "stocking", "garter", "reverse", "rev")
}

// ribAhead reports whether one of the words that may belong to a fabric is a rib.
func (p *parser) ribAhead(i int) bool {
	for k := i; k < i+longestCloth && k < len(p.t); k++ {
		if p.at(k).Is("rib", "ribbing") {
			return true
		}
	}
	return false
}

// patternCloth reads in pattern, in moss stitch: a fabric that says nothing of the count.
func (p *parser) patternCloth(i int) (any, int) {
	if !p.at(i).Is("in", "of") {
		return p.bareCloth(i)
	}
	j := i + 1
	if _, to := p.knownName(j); to > 0 {
		return ins.Cloth{}, to
	}
	for k := 0; k < 6; k++ {
		t := p.at(j + k)
		if t.Is("pattern", "patt", "pat", "rib", "ribbing", "rows", "stripes") {
			if to := j + k + 1; t.Is("rib", "ribbing") && p.at(to).Is("pattern", "patt", "pat", "stitch", "st") {
				k++
			}
			return ins.Cloth{}, j + k + 1
		}
		if k > 0 && t.Is("st", "stitch", "sts") {
			to := j + k + 1
			if p.at(to).Is("pattern", "patt", "rib") {
				to++
			}
			return ins.Cloth{}, to
		}
		if p.ribSize(j + k) {
			continue
		}
		if t.Kind != 'w' || t.Is("next", "each", "every", "last", "first", "same", "back", "front", "top") || t.Ord > 0 || text.IsStop(t.S) {
			return nil, -1
		}
	}
	return nil, -1
}

// ribSize reports whether a part of the size of a rib stands at i: in offset 2x2 rib.
func (p *parser) ribSize(i int) bool {
	t := p.at(i)
	return t.Is("x") && p.at(i-1).Kind == 'n' || t.Kind == 'n' && t.Num.By == nil && (p.at(i+1).Is("x") || p.at(i-1).Is("x"))
}

// bareCloth reads the name of a fabric behind the word that works it: work seed stitch, work ribbing.
func (p *parser) bareCloth(i int) (any, int) {
	if !p.at(i-1).Is("work", "working", "cont", "continue", "knit") || p.line.IsRow() {
		return nil, -1
	}
	for k := i; k < i+4; k++ {
		switch t := p.at(k); {
		case t.Is("rib", "ribbing"), k > i && t.Is("pattern", "patt"):
			return ins.Cloth{}, k + 1
		case k > i && t.Is("st", "stitch") && !p.at(k-1).Is("next", "each", "last", "first", "this", "every", "same"):
			if p.at(k+1).Is("pattern", "patt") {
				k++
			}
			return ins.Cloth{}, k + 1
		case t.Kind != 'w' || t.Ord > 0 || text.IsStop(t.S) || p.thingAt(k) || t.Is("in", "to", "as", "even", "until", "for", "these", "this", "next", "each"):
			return nil, -1
		}
	}
	return nil, -1
}

// parts reads the parts of a row: the numbers of a clause, each with its words.
func parts(p *parser, i int) (any, int) {
	var out []ins.Part
	j := i
	if p.at(j).Is("evenly", "between", "among", "over", "on", "onto") {
		return nil, -1
	}
	told := false // words behind the name of a part
	for ; j < len(p.t) && (!p.at(j).Is(".", ";") || p.nextPart(j)); j++ {
		if p.noParts(j) {
			return nil, -1
		}
		if v, to := number(p, j); v != nil {
			told = false
			out = append(out, ins.Part{N: v.(ins.Num)})
			if _, next := p.named("unit", to); next >= 0 && p.at(to).Is("st", "sts", "stitch", "stitches", "held") {
				to = next
			}
			j = to - 1
			continue
		}
		told = told || p.partTold(j)
		if k := len(out); k > 0 && !told && !p.at(j).Is(",") && p.at(j).Kind == 'w' {
			out[k-1].Name = strings.TrimSpace(out[k-1].Name + " " + p.at(j).S)
		}
	}
	if len(out) == 0 {
		return nil, -1
	}
	return out, j
}

// noParts reports whether the word at i tells that no parts of a row are meant: a row begins there, or they are put on needles.
func (p *parser) noParts(i int) bool {
	if _, row := text.RowWord(p.at(i + 1).S); row && p.at(i).Is("next") { // Divide for neck: Next row: K20, turn
		return true
	}
	return p.at(i).Is("needle", "needles", "dpn", "dpns") // Divide the stitches onto 3 needles
}

// partTold reports whether the words from i on say no more what a part is called.
func (p *parser) partTold(i int) bool {
	return p.at(i).Is(";") || p.at(i).Is("and") && p.at(i+1).Is("place", "slip", "put", "leave")
}

// nextPart reports whether a sentence at the sign at i tells a further part of a row: ; work next 34 sts for first sleeve.
func (p *parser) nextPart(i int) bool {
	if !p.at(i).Is(";") || !p.at(i+1).Is("work", "k", "knit", "place", "slip", "next", "then", "p", "purl") {
		return false
	}
	for k := i + 2; k < i+6; k++ {
		if p.at(k).Kind == 'n' {
			return p.at(k+1).Is("st", "sts", "stitches")
		}
	}
	return false
}

// shortOver reads over the middle 66 sts, turning 4 sts sooner each time.
func shortOver(p *parser, i int) (any, int) {
	n := ins.Num{}
	j := i
	if p.at(j).Is("over") {
		k := j + 1
		if p.at(k).Is("middle", "centre", "center", "first", "last") {
			k++
		}
		v, to := number(p, k)
		if to < 0 || !p.at(to).Is("sts", "st", "stitches") {
			return nil, -1
		}
		n, j = v.(ins.Num), to+1
		if p.at(j).Is("at") && p.at(j+2).Is("edge", "end") {
			j += 3
		}
	}
	k := j
	if p.at(k).Is(",") {
		k++
	}
	if !p.at(k).Is("turning") {
		if j == i {
			return nil, -1
		}
		return n, j
	}
	for k++; k < len(p.t) && p.at(k).Kind != 'p' && !p.at(k).Is("in"); k++ {
	}
	if p.at(k).Is(",") && p.at(k+1).Is("in") {
		k++
	}
	return n, k
}

// star reads the sign of a starred stretch.
func star(p *parser, i int) (any, int) {
	for _, w := range []string{"first", "second", "last"} {
		if p.at(i).Is(w) && isStar(p.at(i+1)) {
			i++
		}
	}
	if isStar(p.at(i)) {
		return p.at(i).S, i + 1
	}
	return nil, -1
}

func isStar(t *text.Token) bool {
	return t.Kind == 'p' && t.S != "" && strings.ContainsRune("*†★#^~§‡+", []rune(t.S)[0])
}

// spaced adds rows that are so far apart: 5 foll alt rows, the foll 4th row.
func spaced(m *match) any {
	k := ins.Spacing{Every: ins.N(2), Times: m.num("n", 1)}
	if o, ok := m.get("o").(int); ok {
		k.Every = ins.N(o)
	}
	return clause(func(c *course) {
		switch {
		case c.HasTimes:
			c.Then = append(c.Then, k)
		case c.Rows.Set():
			c.Times, c.HasTimes, c.Every, c.Rows = c.Rows, true, ins.N(1), ins.Num{}
			c.Then = append(c.Then, k)
		default:
			c.Every, c.Times, c.HasTimes = k.Every, k.Times, true
		}
	})
}

// nth is the number of the first ordinal in what was matched, for each size if it is told so: 7th (5th, 3rd).
func (m *match) nth(name string) ins.Num {
	for i := m.from; i < m.to; i++ {
		if t := &m.p.t[i]; t.Ord > 0 && t.Num.By != nil {
			return t.Num
		} else if t.Ord > 0 {
			break
		}
	}
	return ins.N(value[int](m, name))
}
