package place

import (
	"slices"
	"strings"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// form is one way of writing a label: its lines, and the room that they take.
type form struct {
	lines  []string
	w, h   float64
	rule   float64 // length of the rule to write on before each line, mm
	line   float64 // height of a line
	letter bool    // the letter that the item gets in the end
}

const (
	leastRule = 25.0 // a rule that a number can be written on, mm: one in a child’s hand (common practice)
	ruleGap   = 1.0
	ruleRoom  = 6.5 // height to write in
)

func newForm(size float64, lines ...string) form {
	f := form{lines: lines, line: lineHeight(fonts.Regular, size)}
	for _, l := range lines {
		f.w = max(f.w, fonts.Width(fonts.Regular, size, l))
	}
	f.h = f.line * float64(len(lines))
	return f
}

func blankForm(size float64, lines ...string) form {
	f := newForm(size, lines...)
	f.rule = max(leastRule, 4*size)
	f.w += f.rule + ruleGap
	f.line = max(ruleRoom, f.line)
	f.h = f.line * float64(len(lines))
	return f
}

// value is one measurement in all sizes, nil where a size lacks it.
type value []*schematic.Measure

// in is the value of a size in a unit, without the unit.
func (v value) in(size int, u units.Unit, steps units.Steps) string {
	if v[size] == nil {
		return expr.Dash
	}
	return v[size].Text(u, steps)
}

// scheme writes values as the options ask.
type scheme struct {
	o     Options
	steps units.Steps
	first units.Unit // of both: the pattern's own
	sizes expr.Sizes // of the garments given
	size  float64
}

func (s *scheme) units() []units.Unit {
	switch s.o.Units {
	case Inches:
		return []units.Unit{units.Inch}
	case Both:
		return s.first.AndOther()
	}
	return []units.Unit{units.CM}
}

// texts are the value in one unit for each size, without the unit.
func (s *scheme) texts(v value, u units.Unit) []string {
	t := make([]string, len(v))
	for i := range t {
		t[i] = v.in(i, u, s.steps)
	}
	return t
}

// line is the value in one unit, with the unit: of the drawn size, or of all.
func (s *scheme) line(v value, u units.Unit, all bool) string {
	if !all {
		if v[s.o.Size] == nil {
			return expr.Dash
		}
		return v.in(s.o.Size, u, s.steps) + " " + u.String()
	}
	return s.sizes.Line(s.texts(v, u)) + " " + u.String()
}

// words is the value in words, for people who hear the drawing.
func (s *scheme) words(v value, suffix string) string {
	var parts []string
	for _, u := range s.units() {
		parts = append(parts, s.line(v, u, s.o.Labels != OneSize))
	}
	return strings.Join(parts, " / ") + suffix
}

// forms are the ways of writing the value, the best one first.
func (s *scheme) forms(v value, suffix string) []form {
	us := s.units()
	lines := make([]string, len(us))
	switch s.o.Labels {
	case Letters:
		return nil
	case Blank:
		for i, u := range us {
			lines[i] = u.String()
		}
		lines[len(lines)-1] += suffix
		return []form{blankForm(s.size, lines...)}
	}
	all := s.o.Labels == AllSizes
	for i, u := range us {
		lines[i] = s.line(v, u, all)
	}
	short := !all || !strings.Contains(lines[0], "(")
	last := len(lines) - 1
	switch {
	case short && last == 0:
		fs := []form{newForm(s.size, lines[0]+suffix)}
		if suffix != "" {
			fs = append(fs, newForm(s.size, lines[0], strings.TrimSpace(suffix)))
		}
		return fs
	case short:
		one := newForm(s.size, lines[0]+" / "+lines[last]+suffix)
		if suffix == "" {
			return []form{one, newForm(s.size, lines...)}
		}
		return []form{one, newForm(s.size, lines[0]+" /", lines[last]+suffix),
			newForm(s.size, lines[0], lines[last], strings.TrimSpace(suffix))}
	}
	lines[last] += suffix
	fs := []form{newForm(s.size, lines...)}
	most := 4 // lines for a unit
	if len(us) > 1 {
		most = 2
	}
	for n := 2; n <= most; n++ {
		var wrapped []string
		for _, l := range lines {
			wrapped = append(wrapped, balance(l, n, s.size)...)
		}
		if len(wrapped) == n*len(lines) {
			fs = append(fs, newForm(s.size, wrapped...))
		}
	}
	return fs
}

// balance breaks a line into n lines as alike in width as may be: between the groups of
// the trade's line, unless that makes the widest much wider than breaking inside them.
func balance(text string, n int, size float64) []string {
	lines := balanceAt(strings.Split(text, " "), n, size)
	whole := balanceAt(strings.Split(strings.ReplaceAll(text, " (", "\n("), "\n"), n, size)
	const wider = 1.25
	if len(whole) == n && widest(whole, size) <= wider*widest(lines, size) {
		return whole
	}
	return lines
}

func widest(lines []string, size float64) float64 {
	w := 0.0
	for _, l := range lines {
		w = max(w, fonts.Width(fonts.Regular, size, l))
	}
	return w
}

// balanceAt sets words into n lines, or fewer.
func balanceAt(words []string, n int, size float64) []string {
	text := strings.Join(words, " ")
	for i := len(words) - 1; i > 0; i-- { // the unit stays with the last number
		if !strings.ContainsAny(words[i], "0123456789"+expr.Dash) {
			words[i-1] += " " + words[i]
			words = append(words[:i], words[i+1:]...)
		}
	}
	total := fonts.Width(fonts.Regular, size, text)
	for limit := total / float64(n); limit <= total; limit += total / 24 {
		if lines := sheet.WrapWords(words, limit, size, fonts.Regular); len(lines) <= n {
			return lines
		}
	}
	return []string{text}
}

// lettering is the letters that name measurements. I and O look like figures and are left out, and so is
// a letter that is the name of a size.
type lettering struct {
	letters string
	first   int // of them, to begin with
}

func newLettering(sizes []string, first byte) lettering {
	var a lettering
	for c := byte('A'); c <= 'Z'; c++ {
		name := string(c)
		if strings.Contains("IO", name) || slices.Contains(sizes, name) {
			continue
		}
		if c < first {
			a.first++
		}
		a.letters += name
	}
	return a
}

// name is the n-th letter from the first one: A … Z, AA, AB …
func (a lettering) name(n int) string {
	name := ""
	for n += a.first; n >= 0; n = n/len(a.letters) - 1 {
		name = string(a.letters[n%len(a.letters)]) + name
	}
	return name
}

// form has room for any letter among n.
func (a lettering) form(n int, size float64) form {
	f := newForm(size, strings.Repeat("W", len(a.name(n))))
	f.letter = true
	return f
}
