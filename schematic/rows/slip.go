package rows

import (
	"iter"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"flatwright/schematic/finding"
	"flatwright/schematic/rows/grammar"
	"flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/work"
)

// Whoever writes a pattern gets a number wrong: one too many, two digits in each other's place. A row that does not fit, and
// that no such slip in it or in the rows before it explains, is more likely in words that are read otherwise than they are
// meant: it is told as not followed, and is no finding against the pattern.

// mostTried bounds the characters of a text that are read anew to look for slips.
const mostTried = 1 << 19

// mostBefore is how many rows before one that does not fit may hold its slip.
const mostBefore = 6

// doubt tells the findings of a report that no slip explains as not followed.
func doubt(x *Text, o Options, found finding.List) {
	left := mostTried
	for i := range found {
		f := &found[i]
		s := x.SectionAt(f.Pos.Line)
		if s == nil || f.Severity == finding.Note || f.Pos.File != x.Name || !work.Rests(f.Kind) || len(f.Sizes) > 0 || plainAt(s, f) { // the other sizes fit as it was read
			continue
		}
		t := newTrial(x, o, s, f)
		if explained := t.explained(&left); left < 0 {
			return
		} else if !explained {
			f.NotFollowed()
		}
	}
}

// plainAt reports whether a count is not that of a row of stitches alone, each over the next or all of the row below: these have
// no other meaning.
func plainAt(s *Section, f *finding.Finding) bool {
	var row *Line
	for _, l := range s.Lines {
		if l.At.Line < f.Pos.Line || l.At.Line == f.Pos.Line && l.At.Col <= f.Pos.Col {
			row = l
		}
	}
	if f.Kind != "rows/stated" || row == nil || row.Label == nil || len(row.Body) == 0 {
		return false
	}
	body := row.Body
	if _, turning := body[0].(*instructions.Chain); turning { // what it counts for was tried
		body = body[1:]
	}
	return len(body) > 0 && plain(body)
}

func plain(list []instructions.Item) bool {
	return !slices.ContainsFunc(list, func(n instructions.Item) bool {
		switch n := n.(type) {
		case *instructions.Stitch:
			return n.Call != nil || n.Chart || len(n.Also) > 0 || slices.ContainsFunc(n.Places, unusual)
		case *instructions.Repeat:
			return n.InAll || n.Cut || n.Stop >= 0 || len(n.Places)+len(n.Last) > 0 || !plain(n.Body) ||
				n.Times.All < 1 && (n.Until.Kind != instructions.ToEnd || n.Until.Part)
		case *instructions.Chain:
			return n.N.All != 1
		case *instructions.Turn, *instructions.Join:
			return false
		}
		return true
	})
}

// unusual reports whether a place is another than the next stitches or each of the row.
func unusual(p instructions.Place) bool {
	return p.Kind != instructions.InNext && p.Kind != instructions.InEach || p.Far || p.Last || !p.Unit.Any() && p.Unit.Stitch == nil
}

// trial looks for the slip that explains a finding.
type trial struct {
	o     Options
	of    *finding.Finding
	src   []string // the lines of the text
	from  int      // the first line that may hold the slip
	names map[int]instructions.Span
	whole int // how many of them are read whole
	count int // sizes of the text
	sizes []int
	stood []misfits // as the text stands, one a size
}

// misfits are how many things do not fit, and how many of them at each line.
type misfits struct {
	all int
	at  map[int]int
}

func newTrial(x *Text, o Options, s *Section, f *finding.Finding) *trial {
	t := &trial{o: o, of: f, from: f.Pos.Line, names: map[int]instructions.Span{}, sizes: slices.Compact([]int{0, len(x.Sizes.Names) - 1})}
	before := 0
	for _, l := range slices.Backward(s.Lines) {
		if l.Label != nil {
			t.names[l.At.Line] = l.Label.At
		}
		if l.At.Line >= f.Pos.Line || before == mostBefore {
			continue
		}
		t.from = min(t.from, l.At.Line)
		if before++; len(l.Stated) > 0 {
			before = mostBefore
		}
	}
	t.count = len(x.Sizes.Names)
	if !t.stand(alone(x, s)) { // it goes on from a section before
		t.stand(x.Src)
	}
	return t
}

// stand takes the lines in which the slip is looked for, as they stand. It reports false if nothing is amiss in them.
func (t *trial) stand(src []string) bool {
	y := t.text(src)
	if t.src, t.whole, t.stood = src, y.Read.Whole, nil; len(y.Sizes.Names) != t.count {
		return false
	}
	for _, size := range t.sizes {
		t.stood = append(t.stood, misfitsOf(y, size))
	}
	return t.stood[0].at[t.of.Pos.Line] > 0
}

// alone are the lines of a text without the rows of other sections.
func alone(x *Text, s *Section) []string {
	src := slices.Clone(x.Src)
	for i, other := range x.Sections {
		if other == s || other.Prose || other.Pattern || other.At.Line < 1 {
			continue
		}
		end := len(src)
		if i+1 < len(x.Sections) {
			end = min(end, x.Sections[i+1].At.Line-1)
		}
		for k := other.At.Line - 1; k < end; k++ {
			src[k] = ""
		}
	}
	return src
}

func (t *trial) text(src []string) *Text {
	return grammar.Read(t.of.Pos.File, []byte(strings.Join(src, "\n")), t.o)
}

func misfitsOf(x *Text, size int) misfits {
	m := misfits{at: map[int]int{}}
	for _, f := range work.CheckIn(x, size).Findings {
		if f.Severity != finding.Note {
			m.all++
		}
		if work.Rests(f.Kind) || f.NotRead() {
			m.at[f.Pos.Line]++
		}
	}
	return m
}

// explained reports whether a slip explains the finding, in every size that is tried; left are the characters that may still be read.
func (t *trial) explained(left *int) bool {
	if len(t.stood) == 0 { // read anew the text is another one
		return true
	}
	open := slices.Compact([]int{0, len(t.sizes) - 1})
	cost := len(strings.Join(t.src, "\n"))
	for line := min(t.of.Pos.Line, len(t.src)); line >= t.from && line > 0; line-- {
		for _, s := range t.slips(line) {
			if *left -= cost; *left < 0 {
				return false
			}
			y := t.text(s.in(t.src))
			if y.Read.Whole < t.whole || len(y.Sizes.Names) != t.count {
				continue
			}
			open = slices.DeleteFunc(open, func(i int) bool { return t.fits(misfitsOf(y, t.sizes[i]), t.stood[i], t.stated(s)) })
			if len(open) == 0 {
				return true
			}
		}
	}
	return false
}

// fits reports whether nothing is amiss at the finding any more, and no more elsewhere. A count that was stated wrong is one that
// the next rows do not have either.
func (t *trial) fits(got, stood misfits, own bool) bool {
	for line := t.from; line < t.of.Pos.Line; line++ {
		if got.at[line] > stood.at[line] {
			return false
		}
	}
	return got.at[t.of.Pos.Line] < max(1, stood.at[t.of.Pos.Line]) && (got.all < stood.all || got.all == stood.all && !own)
}

// slip is a number that may be meant for another one, by its columns from 0.
type slip struct {
	line, from, to int
	with           string
}

// in is the lines of a text without the slip.
func (s slip) in(src []string) []string {
	out := slices.Clone(src)
	line := []rune(src[s.line-1])
	out[s.line-1] = string(line[:s.from]) + s.with + string(line[s.to:])
	return out
}

// slips are all in a line that may explain the finding.
func (t *trial) slips(line int) (out []slip) {
	r, name := []rune(t.src[line-1]), t.names[line]
	for from, to := range runs(r) {
		if from+1 < name.Col || from+1 >= name.End {
			for _, with := range near(string(r[from:to])) {
				out = append(out, slip{line, from, to, with})
			}
		}
	}
	return out
}

// runs are the columns of the numbers and words of a line.
func runs(r []rune) iter.Seq2[int, int] {
	return func(yield func(int, int) bool) {
		for i := 0; i < len(r); {
			from, class := i, classOf(r[i])
			for i < len(r) && classOf(r[i]) == class {
				i++
			}
			if class != other && !yield(from, i) {
				return
			}
		}
	}
}

// stated reports whether a slip is in the count that does not fit what its row makes.
func (t *trial) stated(s slip) bool {
	return t.of.Kind == "rows/stated" && s.line == t.of.Pos.Line && s.from+1 >= t.of.Pos.Col && s.to < t.of.Pos.EndCol
}

type class uint8

const (
	other class = iota
	digit
	letter
)

func classOf(r rune) class {
	switch {
	case r >= '0' && r <= '9':
		return digit
	case unicode.IsLetter(r):
		return letter
	}
	return other
}

// spelt are the numbers that stand in words, each between its neighbours.
var spelt = []string{"once", "twice", "three", "four", "five", "six", "seven", "eight", "nine", "ten"}

// contrary are words of which one is written for the other by a slip.
var contrary = map[string]string{"inc": "dec", "dec": "inc", "increase": "decrease", "decrease": "increase"}

// near are the numbers for which one is written by a slip: one off, ten off, two digits in each other's place; or the contrary word.
func near(s string) (out []string) {
	if with := contrary[strings.ToLower(s)]; with != "" {
		return []string{with}
	}
	n, err := strconv.Atoi(s)
	if err != nil || len(s) > 5 {
		k := slices.Index(spelt, strings.ToLower(s))
		if k > 0 {
			out = append(out, spelt[k-1])
		}
		if k >= 0 && k+1 < len(spelt) {
			out = append(out, spelt[k+1])
		}
		return out
	}
	for _, d := range []int{1, -1, 10, -10} {
		if n+d > 0 && (d*d == 1 || n >= 20) {
			out = append(out, strconv.Itoa(n+d))
		}
	}
	for i := range len(s) - 1 {
		if s[i] != s[i+1] && (i > 0 || s[1] != '0') {
			out = append(out, s[:i]+s[i+1:i+2]+s[i:i+1]+s[i+2:])
		}
	}
	return out
}
