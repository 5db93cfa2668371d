package yarn

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// Compare holds what the pattern says of yarn against the needs: for a pattern
// of one yarn with an amount in each size, that many balls (or grams, metres or yards, if the
// line begins with that word) must be enough, and not more than a quarter and one
// ball too much. Several lines with amounts are several yarns, of which the areas say nothing.
func Compare(p *schematic.Pattern, needs []Need, ball schematic.Ball) finding.List {
	lines := slices.DeleteFunc(slices.Clone(p.Yarn), func(m schematic.Material) bool { return m.Amount.IsZero() })
	if len(lines) != 1 {
		return nil
	}
	line := lines[0]
	if b, ok := FindBall(line.Text); ok && ball.Grams.Sign() == 0 {
		ball = b
	}
	var found finding.List
	for _, n := range needs {
		i := p.Sizes.Index(n.Size)
		stated, ok := line.Amount.At(i)
		if !ok {
			continue
		}
		have, unit, ok := stateGrams(line.Text, stated, ball)
		if !ok {
			return nil
		}
		f := finding.Finding{Kind: "materials/yarn", Pos: line.Pos, Sizes: []string{n.Size},
			Have: fmt.Sprintf("%s %s, %s g", stated, unit, units.Decimal(have, 0)), Want: fmt.Sprintf("%s g", units.Decimal(n.Grams, 0))}
		slack := n.Grams.Mul(units.Frac(5, 4)).Add(ball.Grams)
		switch {
		case have.Less(n.Net):
			f.Severity, f.Message = finding.Warning, "there is not enough yarn for this size, even without an allowance"
		case have.Less(n.Grams):
			f.Severity, f.Message = finding.Note, "there is enough yarn for this size, but not with the allowance"
		case slack.Less(have):
			f.Severity, f.Message = finding.Note, "much more yarn is stated than this size takes"
		default:
			continue
		}
		if n.Balls > 0 {
			f.Fix = fmt.Sprintf("say %d balls", n.Balls)
		}
		found = merge(found, f)
	}
	return found
}

// merge tells the same of several sizes once where also the numbers are alike.
func merge(l finding.List, f finding.Finding) finding.List {
	for i := range l {
		if l[i].Message == f.Message && l[i].Have == f.Have && l[i].Want == f.Want {
			l[i].Sizes = append(l[i].Sizes, f.Sizes...)
			return l
		}
	}
	return append(l, f)
}

// stateGrams is what a stated amount weighs.
func stateGrams(text string, amount units.Num, ball schematic.Ball) (g units.Num, unit string, ok bool) {
	first, _, _ := strings.Cut(strings.ToLower(strings.TrimSpace(text)), " ")
	q := quantity{n: amount, word: strings.TrimRight(first, ".,;:")}
	if w, is := grams(q); is {
		return w, q.word, true
	}
	if l, is := runLength(q); is {
		if ball.Grams.Sign() == 0 || ball.Length.Sign() == 0 {
			return units.Num{}, "", false
		}
		return l.Mul(ball.Grams).Div(ball.Length), q.word, true
	}
	if ball.Grams.Sign() == 0 {
		return units.Num{}, "", false
	}
	return amount.Mul(ball.Grams), "balls", true
}
