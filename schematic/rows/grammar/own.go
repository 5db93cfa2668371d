package grammar

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

// plainNames begin names of patterns and rows: what stands behind them is no stitch.
var plainNames = set("rib ribbing seed moss garter border edging pattern patt note notes row rows rnd round rounds stitch heel toe cuff body next repeat cable")

// stitchWords may stand behind the name of a stitch, and are no part of it.
var stitchWords = set("st sts stitch stitches")

// longestOwn is how many letters the name of a knitted stitch of the text's own has at most.
const longestOwn = 12

// ownStitch takes a knitted stitch that a text tells by what is worked: DDX = sl 2, k1, pass 2 slipped sts over. It is worked so
// wherever it is named.
func (r *Reader) ownStitch(line string) bool {
	line = strings.TrimLeft(strings.TrimSpace(line), "•*-– ")
	i := meaningAt(line)
	if r.crochet || i <= 0 || i > 40 {
		return false
	}
	body := strings.TrimLeft(line[i:], "=:-–— ")
	if k := strings.LastIndex(body, ": "); k > 0 { // cddr = centred double decrease: sl 1, …
		body = body[k+1:]
	}
	main, inside, _ := strings.Cut(line[:i], "(")
	items := r.brioche(line[i:])
	if items == nil {
		items = r.ownItems(body)
	}
	took := false
	for _, name := range []string{main, strings.Trim(inside, " )")} {
		words := strings.Fields(strings.ToLower(name))
		if k := len(words) - 1; k > 0 && stitchWords[words[k]] {
			words = words[:k]
		}
		short := squeezeWords(strings.Join(words, " "))
		if short == "" || len(short) > longestOwn || len(words) > 3 || slices.ContainsFunc(words, func(w string) bool { return plainNames[w] || stitchWords[w] }) {
			continue
		}
		if _, known := r.thing([]byte(short)); known || items == nil {
			continue
		}
		if r.macros == nil {
			r.macros = map[string][]ins.Item{}
		}
		r.macros[short], took = items, true
	}
	return took
}

// withYarnOver is how a stitch of brioche is told: k2tog the slipped stitch and its yarn over.
var withYarnOver = text.Once(`(?i)^\W*(?:brioche (?:knit|purl)\W+)?(k|p)(?:nit|url|1|2 ?tog)?[ (]+(?:(?:the|next|slipped|knit|purl|sl|slip|sts?|stitch|and|tog|together|with|that|was|in|below|row)[ )]+)+(?:(?:its|their|the|corresponding|paired|accompanying) +)*(?:yo|yarn ?over)s?\b(?:\W+(?:the|and|sl|slipped|st|stitch|tog|together|as|one|of|from|in|last|previous|row|round|rnd|below|shawl))*\W*$|^\W*(k|p)(?:nit|url|1)? (?:the )?sl1yo (?:tog|together)\b[^,]*$`)

// brioche is the stitch of brioche that words tell; nil if they tell another.
func (r *Reader) brioche(body string) []ins.Item {
	m := withYarnOver().FindStringSubmatch(body)
	if m == nil || !text.Has(body, "tog") || !text.Has(body, "st") && !text.Has(body, "sl") && !text.Has(body, "with") { // k2tog and yo is lace
		return nil
	}
	kind, _ := r.thing([]byte("br" + strings.ToLower(m[1]+m[2])))
	return []ins.Item{&ins.Stitch{N: ins.N(1), Kind: kind.Kind}}
}

// ownItems are the instructions of a knitted stitch; nil if they are not all read, or no more than plain stitches.
func (r *Reader) ownItems(body string) []ins.Item {
	tokens := text.Lex(strings.TrimRight(body, " .;"), 1)
	if len(tokens) < 3 || len(tokens) > 60 {
		return nil
	}
	l := &ins.Line{Label: &ins.Label{}, At: ins.Span{Line: 1, Col: 1, End: 2}}
	for i := range tokens {
		tokens[i].Line = 1
	}
	list := r.parser(tokens, l).sequence()
	if len(l.Unread) > 0 {
		return nil
	}
	var out []ins.Item
	odd := false
	for _, n := range list {
		switch n := n.(type) {
		case *ins.Nothing:
			continue
		case *ins.Stitch:
			if n.Kind == nil || slices.ContainsFunc(n.Places, func(p ins.Place) bool { return p.Kind == ins.InEach }) {
				return nil
			}
			odd = odd || n.Kind.Uses != 1 || n.Kind.Makes != 1
		case *ins.Psso, *ins.BindOff:
			odd = true
		case *ins.Repeat:
			if n.Until.Kind != ins.NoExtent || slices.ContainsFunc(n.Body, is[*ins.Turn]) {
				return nil
			}
			odd = odd || len(n.Places) > 0 || slices.ContainsFunc(n.Body, is[*ins.Psso])
		default:
			return nil
		}
		out = append(out, n)
	}
	if !odd {
		return nil
	}
	return out
}

// ownNamed reads a knitted stitch of the text's own by its name, and how often it is worked.
func (s *sequence) ownNamed() bool {
	if len(s.r.macros) == 0 || s.line == nil {
		return false
	}
	i, times := s.i, ins.N(1)
	for i == s.i && s.at(i).Is("work", "make", "do") {
		i++
	}
	lead := i
	if s.at(i).Kind == 'n' && s.at(i+1).Kind == 'w' {
		times = s.at(i).Num
		i++
	}
	items, to := s.ownAt(i)
	if to < 0 {
		return false
	}
	body := make([]ins.Item, len(items))
	for k, n := range items {
		body[k] = copied(n, s.span(i, to-1))
	}
	q := &ins.Repeat{Body: body, Times: times, Stop: -1}
	if i == lead {
		to = s.spec(q, to, false)
	}
	s.add(q, s.i, to)
	s.i = to
	return true
}

// namesOwn reports whether a stitch of the text's own is named first in a bracket.
func (s *sequence) namesOwn(sub []text.Token) bool {
	if len(s.r.macros) == 0 {
		return false
	}
	_, to := (&sequence{parser: s.within(sub)}).ownAt(0)
	return to > 0
}

// ownAt is what the name of a stitch of the text's own at i stands for, and where it ends; -1: none stands there.
func (s *sequence) ownAt(i int) (items []ins.Item, to int) {
	to = -1
	var b strings.Builder
	for k := i; k < i+4 && k < len(s.t) && (s.at(k).Kind == 'w' || s.at(k).Kind == 'n' && s.at(k).Num.By == nil); k++ {
		b.WriteString(s.at(k).S)
		if list, ok := s.r.macros[b.String()]; ok {
			items, to = list, k+1
		}
	}
	if to > 0 && stitchWords[s.at(to).S] {
		to++
	}
	return items, to
}

// copied is an instruction once more, at another place of the text, with instructions of its own within it.
func copied(n ins.Item, at ins.Span) ins.Item {
	out := n
	switch n := n.(type) {
	case *ins.Stitch:
		one := *n
		out = &one
	case *ins.BindOff:
		one := *n
		out = &one
	case *ins.Repeat:
		one := *n
		one.Body = make([]ins.Item, len(n.Body))
		for i := range n.Body {
			one.Body[i] = copied(n.Body[i], at)
		}
		out = &one
	case *ins.Psso:
		out = &ins.Psso{}
	}
	out.Put(at)
	return out
}
