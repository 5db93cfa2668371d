package rows

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"flatwright/schematic/finding"
	"flatwright/schematic/long"
	"flatwright/schematic/stitch"
)

// No text makes the reader or the worker fail or run away.
func FuzzReadAndWork(f *testing.F) {
	for _, c := range corpus(f) {
		f.Add(string(c.src), c.options.Terms == stitch.UK)
	}
	f.Add("Ch 99999.\nRow 1: Sc in each ch, (((((((((((((sc))) 9999 times) 9999 times) 9999 times.\n", false)
	f.Add("Ch 9.\nRow 1: Sc in each ch.\nWork as for 9%s%h% to end of row 99.\n", false)
	f.Add("Rnd 1: *ch 1; rep from * 99999 times.\nRows 2-99999: Rep Row 1 99999 times.\n", false)
	f.Add("Sizes: A (B, C)\nRow 1 (–, 2): k1 (–, 3), *; rep from * to last – (1, 2) sts", true)
	f.Fuzz(func(t *testing.T, src string, uk bool) {
		if len(src) > 1<<14 {
			return
		}
		o := Options{TermsSet: true}
		if uk {
			o.Terms = stitch.UK
		}
		x := Read("fuzz", []byte(src), o)
		Check(x, o)
		for _, s := range x.Sections {
			GraphOf(x, s.Name, 0)
			break
		}
		Abbreviations(x)
		Translate([]byte(src), o.Terms, o.Terms.Other())
	})
}

// Correct texts, damaged at random places: whatever comes of it is told as findings with
// places that the text has, and never fails or runs away.
func TestDamagedTextsAreToldAndNeverFail(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	pool := corpus(t)
	shards := []string{"99999", "times", "*", "(", ")", "rep from *", " across", "Rows 2-99999: ", "ch 1, ", "sc in each st, ", "until 3 sts rem", "Rep Row 1",
		"\n", ", ", "0", " (3, 4)", "every 9999th row ", "evenly ", "in ring", "k2tog ", "twice", "Work as for ", "psso, ", "picot", "in each row along edge", "BLO",
		"ending last rep at **", "**", "at the same time ", "Divide the row: 3 sts, 4 sts. "}
	for i := range 3000 {
		if !long.Some(i, 8) {
			continue
		}
		c := pool[rng.IntN(len(pool))]
		b := string(c.src)
		for range 1 + rng.IntN(12) {
			i := rng.IntN(len(b) + 1)
			switch rng.IntN(3) {
			case 0:
				b = b[:i] + shards[rng.IntN(len(shards))] + b[i:]
			case 1:
				b = b[:i] + b[min(len(b), i+rng.IntN(12)):]
			case 2:
				o := string(pool[rng.IntN(len(pool))].src)
				k := rng.IntN(len(o))
				b = b[:i] + o[k:min(len(o), k+rng.IntN(80))] + b[i:]
			}
		}
		x := Read("damaged", []byte(b), c.options)
		rep := Check(x, c.options)
		lines := strings.Count(b, "\n") + 1
		for _, f := range rep.Findings {
			require.True(t, finding.Known(f.Kind), f.Kind)
			require.LessOrEqual(t, f.Pos.Line, lines, "%s\n%s", f.Message, b)
			require.NotEmpty(t, f.Message)
		}
		GraphOf(x, "", 0)
		var out strings.Builder
		require.NoError(t, Markdown(&out, x, rep, nil))
	}
}

// What no yarn makes is no gauge to measure rows with.
func TestAGaugeThatNoYarnMakesIsTold(t *testing.T) {
	for gauge, kind := range map[string]string{"20 sts and 99999 rows = 10 cm": "rows/bounds", "20 sts and 28 rows = 0 cm": "rows/bounds",
		"0 sts and 28 rows = 10 cm": "rows/bounds", "20 sts and 9000000000000 rows = 10 cm": "rows/not-read"} {
		x := Read("gauge", []byte("Gauge: "+gauge+"\n\nBack\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sts)\n"), Options{TermsSet: true})
		rep := Check(x, Options{TermsSet: true})
		require.Len(t, rep.Findings, 1, gauge)
		require.Equal(t, kind, rep.Findings[0].Kind)
		require.Equal(t, 1, rep.Findings[0].Pos.Line)
		require.Nil(t, x.Gauge)
	}
}
