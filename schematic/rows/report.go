package rows

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"

	"flatwright/schematic/finding"
)

// Markdown writes a report to send to the designer: what does not fit in order of
// weight, each with its line, the words meant, the arithmetic and what would fit,
// and at the end how much of the text was read. The error is out's.
func Markdown(out io.Writer, x *Text, rep Report) error {
	var b bytes.Buffer
	title := x.Title
	if title == "" {
		title = x.Name
	}
	fmt.Fprintf(&b, "# Check of the written rows: %s\n\n", finding.Markdown(title))
	list := slices.Clone(rep.Findings)
	slices.SortStableFunc(list, func(a, c finding.Finding) int {
		if w := weight(a) - weight(c); w != 0 {
			return w
		}
		return a.Pos.Line - c.Pos.Line
	})
	counts := [3]int{}
	for _, f := range list {
		counts[f.Severity]++
	}
	switch len(list) {
	case 0:
		b.WriteString("Every row that was read fits the row before it, in every size.\n\n")
	default:
		fmt.Fprintf(&b, "%s, in order of weight.\n\n", tally(counts))
	}
	for i, f := range list {
		fmt.Fprintf(&b, "%d. **%s** ", i+1, finding.Markdown(capital(f.Message)))
		var where []string
		if f.Piece != "" {
			where = append(where, f.Piece)
		}
		if f.Section != "" && f.Section != f.Piece {
			where = append(where, f.Section)
		}
		if f.Pos.Line > 0 {
			where = append(where, fmt.Sprintf("line %d", f.Pos.Line))
		}
		if len(f.Sizes) > 0 {
			where = append(where, map[bool]string{true: "size ", false: "sizes "}[len(f.Sizes) == 1]+strings.Join(f.Sizes, ", "))
		}
		if len(where) > 0 {
			fmt.Fprintf(&b, "(%s)", finding.Markdown(strings.Join(where, "; ")))
		}
		b.WriteString("\n")
		if quote := quote(x, f.Pos); quote != "" {
			fmt.Fprintf(&b, "   > %s\n", quote)
		}
		for _, p := range []struct{ name, text string }{{"Found", f.Have}, {"Expected", f.Want}, {"What would fit", f.Fix}} {
			if p.text != "" {
				fmt.Fprintf(&b, "   - %s: %s\n", p.name, finding.Markdown(p.text))
			}
		}
		b.WriteString("\n")
	}
	r := rep.Read
	fmt.Fprintf(&b, "## How much was read\n\n%d of %d lines of instructions were read whole (%d.%d %%); %d state a count. %d further lines are words.\n",
		r.Whole, r.Lines, int(r.Share()*1000)/10, int(r.Share()*1000)%10, r.Stated, r.Words)
	if r.Whole < r.Lines {
		b.WriteString("Lines that could not be read whole were not checked; the check went on with their stated counts.\n")
	}
	_, err := out.Write(b.Bytes())
	return err
}

// weight orders findings: what can't be worked, then counts, then order, then words.
func weight(f finding.Finding) int {
	w := int(f.Severity) * 10
	switch f.Kind {
	case "rows/over-use", "rows/repeat", "rows/under-use", "rows/division", "rows/against":
		return w
	case "rows/stated", "rows/sizes":
		return w + 1
	case "rows/number", "rows/side", "rows/unworked", "rows/reference", "rows/as-for", "rows/length":
		return w + 2
	case "rows/not-read":
		return w + 4
	case "words/terms":
		return w + 5
	}
	return w + 3
}

func tally(counts [3]int) string {
	var parts []string
	for i, name := range []string{"error", "thing that does not fit", "note"} {
		switch n := counts[i]; {
		case n == 1:
			parts = append(parts, "1 "+name)
		case n > 1 && i == 1:
			parts = append(parts, fmt.Sprintf("%d things that do not fit", n))
		case n > 1:
			parts = append(parts, fmt.Sprintf("%d %ss", n, name))
		}
	}
	return strings.Join(parts, ", ")
}

// quote is the line of a finding with the words meant in bold.
func quote(x *Text, p finding.Pos) string {
	if p.Line < 1 || p.Line > len(x.Src) {
		return ""
	}
	r := []rune(x.Src[p.Line-1])
	if p.Col < 1 || p.EndCol <= p.Col || p.EndCol-1 > len(r) {
		return finding.Markdown(strings.TrimSpace(string(r)))
	}
	return strings.TrimSpace(finding.Markdown(string(r[:p.Col-1])) + "**" + finding.Markdown(string(r[p.Col-1:p.EndCol-1])) + "**" + finding.Markdown(string(r[p.EndCol-1:])))
}

func capital(s string) string {
	r := []rune(s)
	if len(r) == 0 {
		return s
	}
	return strings.ToUpper(string(r[0])) + string(r[1:])
}
