package rows

import (
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
	"flatwright/schematic/units"
)

// words reads a line of words: notes for what turning chains count as, stitches for
// what a name stands for, a gauge.
func (r *reader) words(kind, rest string, n int, opens bool) {
	if opens {
		r.mode = kind
		if kind == "skip" || kind == "gauge" {
			r.mode = "words"
		}
		if len(r.sec.Lines) > 0 { // what follows belongs to no piece until the next heading
			r.sec = &Section{}
			r.x.Sections = append(r.x.Sections, r.sec)
		}
		return
	}
	switch kind {
	case "notes":
		r.notes(rest)
	case "stitches":
		r.define(rest, n)
	case "gauge":
		r.gauge(rest, n)
	}
}

// notes takes from a line what chains count as.
func (r *reader) notes(text string) {
	for _, clause := range strings.FieldsFunc(text, func(c rune) bool { return c == '.' || c == ';' }) {
		t := lex(clause, 1)
		counts, not, about := false, false, false
		var sizes []int
		for i := range t {
			switch t[i].s {
			case "count", "counts", "counted", "counting":
				counts = true
			case "not", "never":
				not = true
			case "chain", "ch", "chains", "chs", "tch":
				about = true
				for k := i + 1; k <= i+2 && k < len(t); k++ {
					if t[k].kind == 'n' {
						sizes = append(sizes, t[k].num.All)
						break
					}
					if t[k].s != "-" {
						break
					}
				}
				if i > 0 && t[i-1].kind == 'n' {
					sizes = append(sizes, t[i-1].num.All)
				} else if i > 1 && t[i-1].s == "-" && t[i-2].kind == 'n' {
					sizes = append(sizes, t[i-2].num.All)
				}
			}
		}
		if !counts || !about {
			continue
		}
		c := CountsAsStitch
		if not {
			c = CountsNot
		}
		if len(sizes) == 0 {
			sizes = []int{0}
		}
		for _, s := range sizes {
			r.x.Turning[s] = c
		}
	}
}

// gauge reads '14 sts and 10 rows = 10 cm'. A gauge of stitches alone measures no rows
// and is let be.
func (r *reader) gauge(text string, n int) {
	if r.o.Gauge != nil {
		return
	}
	tell := func(kind, message string) {
		r.x.add(finding.Finding{Kind: kind, Severity: finding.Warning, Message: message,
			Want: schematic.GaugeBounds, Fix: "write it as 20 sts and 28 rows = 10 cm"}, Span{Line: n, Col: 1, End: 1})
	}
	t := lex(text, 1)
	var nums []units.Num
	for i, k := range t {
		if k.kind != 'n' && k.kind != 'f' {
			continue
		}
		v, ok := units.ParseNum(k.s)
		if !ok {
			tell("rows/not-read", "not read: "+finding.Clip(k.s)+", which is no number of a gauge")
			return
		}
		nums = append(nums, v)
		if len(nums) < 3 || i+1 == len(t) {
			continue
		}
		u, ok := units.ParseUnit(t[i+1].s)
		if !ok {
			return
		}
		g := schematic.Gauge{Stitches: nums[0], Rows: nums[1], Over: units.Of(v, u)}
		if bad := g.Impossible(); bad != "" {
			tell("rows/bounds", bad)
			return
		}
		r.x.Gauge = &Gauge{StitchWidth: g.StitchWidth(), RowHeight: g.RowHeight()}
		r.x.said.gaugeAt = Span{Line: n, Col: 1, End: len([]rune(r.x.src[n-1])) + 1}
		return
	}
}

// define reads 'Shell = (sc, ch 3, 4 dc) in st indicated'.
func (r *reader) define(text string, n int) {
	text = strings.TrimSpace(text)
	i := strings.IndexAny(text, ":=")
	if i <= 0 {
		return
	}
	name := strings.ToLower(strings.TrimSpace(text[:i]))
	if j := strings.IndexByte(name, '('); j > 0 {
		name = strings.TrimSpace(name[:j])
	}
	if len(strings.Fields(name)) > 2 || name == "" {
		return
	}
	if _, ok := stitch.Lookup(name, r.x.Terms); ok {
		return
	}
	if c, ok := crossOf(text[i+1:]); ok {
		s := c.Stitch()
		short := strings.TrimSpace(text[:i])
		s.ID, s.US, s.UK, s.USAbbr, s.UKAbbr = name, short, short, short, short
		r.x.own[name] = s
		return
	}
	l := &Line{At: Span{Line: n, Col: 1, End: len([]rune(text))}, Src: text, tokens: lex(text[i+1:], 1)}
	p := &parser{t: l.tokens, x: r.x, line: l}
	body := p.seq()
	ok := len(l.Unread) == 0 && len(body) > 0
	for _, b := range body {
		ok = ok && (b.Op == OpGroup || b.Op == OpStitch || b.Op == OpChain)
	}
	if ok {
		if len(body) == 1 && body[0].Op == OpGroup {
			body = body[0].Body
		}
		for _, b := range body {
			b.Places = nil
		}
		r.x.Groups = append(r.x.Groups, &Group{Name: strings.TrimSuffix(name, "s"), Body: body, At: l.At})
		return
	}
	low := strings.ToLower(text)
	if strings.Contains(low, "one stitch") || strings.Contains(low, "1 st") || strings.Contains(low, "tog") || strings.Contains(low, "one st") {
		s := &stitch.Stitch{ID: name, US: name, UK: name, USAbbr: name, UKAbbr: name, Uses: 1, Makes: 1, Height: 2, Base: "dc", Legs: 3, Key: "cluster"}
		r.x.own[name] = s
		r.x.own[name+"s"] = s
	}
}

// length reads a length in one or both units, as the text has it.
func (p *parser) length() *Lengths {
	p.eatAny("approx", "approximately", "about")
	from := p.i
	to := -1
	for k := from; k < len(p.t); k++ {
		t := p.t[k]
		if t.kind == 'w' {
			if _, ok := units.ParseUnit(t.s); !ok {
				break
			}
			to = k
			continue
		}
		if t.kind == 'p' && !strings.Contains("(),/[]-\"″”", t.s) {
			break
		}
		if t.kind == 'p' && strings.Contains("\"″”", t.s) {
			to = k
		}
	}
	if to < 0 {
		return nil
	}
	src := []rune(strings.SplitN(p.line.Src, "\n", 2)[0])
	a, b := p.t[from].col-1, p.t[to].end-1
	if a < 0 || b > len(src) || a >= b {
		return nil
	}
	l, prob := expr.ParseLength(string(src[a:b]), p.x.Sizes, units.CM)
	if prob != nil {
		return nil
	}
	p.i = to + 1
	out := &Lengths{MM: l.Low.Vals, Unit: l.Unit, At: p.span(from, to)}
	if !l.Other.IsZero() {
		out.Other = l.Other.Vals
	}
	return out
}
