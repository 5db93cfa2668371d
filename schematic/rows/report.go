package rows

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"flatwright/schematic/finding"
	"flatwright/schematic/rows/instructions"
)

// Markdown writes a report to send to the designer: what does not fit in order of
// weight, each with its row, the line, the arithmetic and what would fit; then, apart, what could not
// be read, and how much of the text was read. Sources holds the bytes of the files that findings stand
// in, by name. The error is out's.
func Markdown(out io.Writer, x *Text, rep Report, sources map[string][]byte) error {
	title := x.Title
	if title == "" {
		title = x.Name
	}
	d := described{x: x, sources: map[string][]string{x.Name: x.Src}}
	for name, src := range sources {
		d.sources[name] = finding.Lines(src)
	}
	found, unread := rep.Findings.Apart()
	found = slices.Clone(found)
	slices.SortStableFunc(found, func(a, b finding.Finding) int {
		return cmp.Or(weight(a)-weight(b), cmp.Compare(a.Pos.File, b.Pos.File), a.Pos.Line-b.Pos.Line)
	})
	fmt.Fprintf(&d, "# Check of the written rows: %s\n\n", inline(title))
	if len(found) == 0 {
		d.WriteString("Every row that could be followed fits the row before it, in every size.\n\n")
	} else {
		fmt.Fprintf(&d, "%s, in order of weight.\n\n", tally(found))
	}
	for i, f := range found {
		d.one(i+1, f)
	}
	if len(unread) > 0 {
		d.WriteString("## Not read or not followed\n\nThese words were not checked; the check went on with the counts stated at their lines.\n\n")
	}
	for _, f := range unread {
		fmt.Fprintf(&d, "- %s: %s", inline(d.where(f)), codeSpan(d.meant(f.Pos)))
		if f.Unfollowed() {
			d.WriteString(", " + inline(f.Message))
		}
		d.WriteByte('\n')
	}
	if len(unread) > 0 {
		d.WriteByte('\n')
	}
	r := rep.Read
	fmt.Fprintf(&d, "## How much was read\n\n%d of %s of instructions %s read whole (%d.%d %%); %d %s a count. %s %s words.\n",
		r.Whole, many(r.Lines, "line"), verb(r.Lines, "was", "were"), int(r.Share()*1000)/10, int(r.Share()*1000)%10, r.Stated, verb(r.Stated, "states", "state"),
		many(r.Words, "further line"), verb(r.Words, "is", "are"))
	_, err := out.Write(d.Bytes())
	return err
}

// described is a report as far as it is written.
type described struct {
	bytes.Buffer
	x       *Text
	sources map[string][]string // lines
}

// one writes a finding.
func (d *described) one(no int, f finding.Finding) {
	head := fmt.Sprintf("%d. ", no)
	in := strings.Repeat(" ", len(head))
	fmt.Fprintf(d, "%s**%s**", head, inline(finding.Capital(f.Message)))
	if w := d.where(f); w != "" {
		fmt.Fprintf(d, " (%s)", inline(w))
	}
	d.WriteByte('\n')
	line, meant := d.line(f.Pos), d.meant(f.Pos)
	if line != "" { // four columns in, it is code: nothing in it is markup
		fmt.Fprintf(d, "\n%s    %s\n\n", in, line)
	}
	if meant != "" && meant != line {
		fmt.Fprintf(d, "%s- Here: %s\n", in, codeSpan(meant))
	}
	for _, p := range []struct{ name, text string }{{"Found", f.Have}, {"Expected", f.Want}, {"What would fit", f.Fix}} {
		if p.text != "" {
			fmt.Fprintf(d, "%s- %s: %s\n", in, p.name, inline(p.text))
		}
	}
	d.WriteByte('\n')
}

// where says where a finding is: the piece, the section, the row, the line of its file and the sizes.
func (d *described) where(f finding.Finding) string {
	var names, all []string
	for _, s := range []string{f.Piece, f.Section, f.Row} {
		if s != "" && !slices.Contains(names, s) {
			names = append(names, s)
		}
	}
	if len(names) > 0 {
		all = append(all, strings.Join(names, ", "))
	}
	if f.Pos.Line > 0 {
		at := fmt.Sprintf("line %d", f.Pos.Line)
		if f.Pos.File != d.x.Name || len(d.sources) > 1 {
			at += " of " + f.Pos.File
		}
		all = append(all, at)
	}
	if len(f.Sizes) > 0 {
		all = append(all, instructions.SizesOf(f.Sizes))
	}
	return strings.Join(all, "; ")
}

// line is the line of a place; nothing for a whole file.
func (d *described) line(p finding.Pos) string {
	lines := d.sources[p.File]
	if p.Col < 1 || p.Line < 1 || p.Line > len(lines) {
		return ""
	}
	return strings.TrimSpace(finding.OneLine(lines[p.Line-1]))
}

// meant are the words of a place.
func (d *described) meant(p finding.Pos) string {
	lines := d.sources[p.File]
	if p.Line < 1 || p.Line > len(lines) {
		return ""
	}
	r := []rune(lines[p.Line-1])
	if p.Col < 1 || p.EndCol <= p.Col || p.EndCol-1 > len(r) {
		return ""
	}
	return strings.TrimSpace(finding.OneLine(string(r[p.Col-1 : p.EndCol-1])))
}

// codeSpan is a text as code in Markdown: nothing in it is markup (CommonMark 6.1: the fence is longer
// than any run of backticks within).
func codeSpan(s string) string {
	if s == "" {
		return s
	}
	longest, run := 0, 0
	for _, r := range s {
		if run++; r != '`' {
			run = 0
		}
		longest = max(longest, run)
	}
	fence := strings.Repeat("`", longest+1)
	if s[0] == '`' || s[len(s)-1] == '`' {
		s = " " + s + " "
	}
	return fence + s + fence
}

// inline is a text as words in Markdown. What Markdown could take for markup stands as code, so that
// nothing strange stands in it when it is pasted into a letter.
func inline(s string) string {
	s = finding.OneLine(s)
	first, last := -1, -1
	for _, sign := range []string{"*", "_", "<", "\\", "~", "&", "@", "](", "][", "]:", "[^", "://", "www.", "WWW."} {
		if k := strings.Index(s, sign); k >= 0 && (first < 0 || k < first) {
			first = k
		}
		last = max(last, strings.LastIndex(s, sign)+len(sign)-1)
	}
	ticks := strings.Count(s, "`")
	if first < 0 && ticks%2 == 0 && !strings.Contains(s, "``") {
		return s // nothing, or code already
	}
	if ticks > 0 {
		k := strings.Index(s, "`")
		if first < 0 || k < first {
			first = k
		}
		last = max(last, strings.LastIndex(s, "`"))
	}
	first = strings.LastIndex(s[:first], " ") + 1
	if k := strings.Index(s[last:], " "); k >= 0 {
		last += k
	} else {
		last = len(s)
	}
	return s[:first] + codeSpan(s[first:last]) + s[last:]
}

// What a finding is about, in the order in which they are told: numbers that can't be worked, counts,
// order, questions, style.
const (
	amiss = iota
	miscounted
	disordered
	asked
	styled
)

var weights = map[string]int{
	"rows/over-use": amiss, "rows/under-use": amiss, "rows/repeat": amiss, "rows/division": amiss, "rows/against": amiss, "rows/sizes": amiss, "rows/bounds": amiss,
	"rows/stated": miscounted, "rows/length": miscounted, "rows/unworked": miscounted, "rows/as-for": miscounted, "units/pair": miscounted,
	"rows/where": asked, "rows/piece": styled,
	"words/terms": styled, "words/brackets": styled,
}

// weight orders findings.
func weight(f finding.Finding) int {
	w, ok := weights[f.Kind]
	switch {
	case !ok && f.Severity == finding.Error:
		return amiss
	case !ok && f.Severity == finding.Note, w < asked && f.Severity == finding.Note:
		return asked
	case !ok && strings.HasPrefix(f.Kind, "rows/"):
		return disordered
	case !ok:
		return miscounted
	}
	return w
}

func tally(list finding.List) string {
	var counts [3]int
	for _, f := range list {
		counts[f.Severity]++
	}
	var parts []string
	if n := counts[finding.Error]; n > 0 {
		parts = append(parts, many(n, "error"))
	}
	if n := counts[finding.Warning]; n > 0 {
		parts = append(parts, many(n, "thing")+" that "+verb(n, "does", "do")+" not fit")
	}
	if n := counts[finding.Note]; n > 0 {
		parts = append(parts, many(n, "note"))
	}
	return strings.Join(parts, ", ")
}

func many(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

func verb(n int, one, more string) string {
	if n == 1 {
		return one
	}
	return more
}
