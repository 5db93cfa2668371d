package text

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The standard library's own matcher is the truth.
func TestAPatternFindsWhatItsExpressionFinds(t *testing.T) {
	exprs := []string{`(?i)^\W*(?:rep|repeat) from \*`, `(\d)st`, `[.;)”"] *([A-Z][a-z]*)[-–—]+`, `(?i)\b(?:turn|join)\b`, `(?i)x ?[2-9]|[2-9] ?x$`, `a?b*`, `(?i)sk`, `\b(?:k|knit) ?(\d{1,2}),? (?:p|purl)`, `[^a-c]d{2,}`, `é|(?i)É[sk]`, `\b\d+ \(\d+\) \d+(?: \(\d+\) \d+)+`, `(?:ab|cd){1,3}e`, `(?i)[.:;)] (?:row|rnd|round)s? \d{1,3}:$`, `[^|]+[a-z)]x`, `(?:=|[–—-]) ?\d+ ?sts?$`}
	for _, expr := range exprs {
		p, re := Once(expr)(), regexp.MustCompile(expr)
		rapid.Check(t, func(t *rapid.T) {
			s := rapid.OneOf(rapid.StringOfN(rapid.SampledFrom([]rune("Rrepeatfom*turnjoKkS \u017f\u212a12x5k,p–é.”bd")), 0, 24, -1), rapid.StringMatching(expr)).Draw(t, "line")
			require.Equal(t, re.FindAllStringSubmatchIndex(s, -1), p.FindAllStringSubmatchIndex(s, -1), expr)
			require.Equal(t, re.ReplaceAllString(s, "<$0>"), p.ReplaceAllString(s, "<$0>"), expr)
			require.Equal(t, re.MatchString(s), p.MatchString(s), expr)
		})
	}
}

func TestAPatternTellsBeforeItLooksForGroups(t *testing.T) {
	p := Once(`(?i)\bjoin(?:ed|ing)? with\b|\bturn\b`)()
	require.False(t, p.may("Row 3: Ch 1, sc in each st across. (30 sc)"))
	require.False(t, p.may("Join the yarn."))
	require.True(t, p.may("Row 3: Ch 1, sc across, TURN."))
	require.True(t, p.may("Joined with a slip stitch"))
}
