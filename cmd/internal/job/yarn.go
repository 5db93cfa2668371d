package job

import (
	"bytes"
	"context"
	"fmt"
	"strings"
	"text/tabwriter"

	"flatwright/cmd/internal/files"
	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
	"flatwright/schematic/yarn"
)

// YarnOptions are what the yarn is reckoned from, in the words of the pattern
// file; what is given here goes before what the file says. Swatches begin with
// the gauge's name and a colon, or are of the first gauge.
type YarnOptions struct {
	Swatches  []string
	Sample    string // weight of the sample
	Ball      string
	Allowance string
	Explain   bool // show the arithmetic too
}

// Yarn reckons the yarn of every size. Its error is ErrUnreadable, an OptionError, or of an ended ctx.
func Yarn(ctx context.Context, src Source, o YarnOptions) (Result, error) {
	p, gs, r, err := work(ctx, src)
	if err != nil {
		return r, err
	}
	w, err := weights(p, o)
	if err != nil {
		return r, err
	}
	needs, found := yarn.Reckon(gs, w)
	if found.Errors() {
		return r, &OptionError{found[0].Message + "; expected " + found[0].Want + " (" + found[0].Fix + ")"}
	}
	r.Findings = append(append(r.Findings, found...), yarn.Compare(p, needs, w.Ball)...)
	var b bytes.Buffer
	fmt.Fprintf(&b, "%s: yarn\n", p.Title)
	tab := tabwriter.NewWriter(&b, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintf(tab, "size\tfabric, %s²\tg\tm\tyd\tballs\t\n", p.Units)
	for _, n := range needs {
		fmt.Fprintf(tab, "%s\t%s\t%s\t%s\t%s\t%s\t\n", n.Size, units.Decimal(yarn.SquareIn(n.Area, p.Units), 0), units.Decimal(n.Grams, 0),
			orDash(n.Metres), orDash(n.Yards), orDash(units.Int(int64(n.Balls))))
	}
	if err := tab.Flush(); err != nil {
		return r, err
	}
	if w.Allowance.Sign() > 0 {
		fmt.Fprintf(&b, "with %s %% more than the fabric takes\n", units.Decimal(w.Allowance.Times(100), 1))
	} else {
		fmt.Fprintln(&b, "what the fabric takes, without an allowance for swatch, seams and ends")
	}
	if o.Explain {
		for _, n := range needs {
			fmt.Fprintf(&b, "\n%s\n  %s\n", n.Size, strings.Join(n.Lines, "\n  "))
		}
	}
	r.Files = []files.File{{Name: namer{}.name(".txt", p.Title, "yarn"), Body: b.Bytes()}}
	return r, nil
}

func orDash(v units.Num) string {
	if v.Sign() == 0 {
		return expr.Dash
	}
	return units.Decimal(v, 0)
}

// weights are those of the pattern, with those of o before them.
func weights(p *schematic.Pattern, o YarnOptions) (schematic.Weights, error) {
	w := p.Weights
	own, err := swatches(o.Swatches)
	if err != nil {
		return w, err
	}
	w.Swatches = append(append([]schematic.Swatch(nil), w.Swatches...), own...)
	for _, given := range []struct {
		what, text string
		read       func(string) *expr.Problem
	}{
		{"the weight", o.Sample, func(t string) (bad *expr.Problem) { w.Sample, bad = yarn.ParseWeight(t); return bad }},
		{"the ball", o.Ball, func(t string) (bad *expr.Problem) { w.Ball, bad = yarn.ParseBall(t); return bad }},
		{"the allowance", o.Allowance, func(t string) (bad *expr.Problem) { w.Allowance, bad = yarn.ParseAllowance(t); return bad }},
	} {
		if given.text == "" {
			continue
		}
		if err := asOption(given.what, given.text, given.read(given.text)); err != nil {
			return w, err
		}
	}
	if w.Ball.Grams.Sign() == 0 && w.Ball.Length.Sign() == 0 {
		w.Ball = ballOf(p, w.Ball)
	}
	return w, nil
}

// asOption is a problem in the text of an option, as an error.
func asOption(what, text string, bad *expr.Problem) error {
	if bad == nil {
		return nil
	}
	return &OptionError{fmt.Sprintf("%s %q: %s; expected %s", what, text, bad.Message, bad.Want)}
}

func swatches(texts []string) ([]schematic.Swatch, error) {
	var all []schematic.Swatch
	for _, text := range texts {
		gauge, rest, named := strings.Cut(text, ":")
		if !named {
			gauge, rest = "", text
		}
		s, bad := yarn.ParseSwatch(rest)
		if err := asOption("the swatch", text, bad); err != nil {
			return nil, err
		}
		s.Gauge = strings.TrimSpace(gauge)
		all = append(all, s)
	}
	return all, nil
}

// ballOf is the first ball that a line of the pattern's yarn tells of, or otherwise.
func ballOf(p *schematic.Pattern, otherwise schematic.Ball) schematic.Ball {
	for _, m := range p.Yarn {
		if b, ok := yarn.FindBall(m.Text); ok && b.Grams.Sign() > 0 {
			return b
		}
	}
	return otherwise
}
