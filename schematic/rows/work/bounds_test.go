package work

import (
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A number that is more than is counted is told where it stands, and nothing follows from it.
func TestNoNumberIsCutInSilence(t *testing.T) {
	list := check("Terms: US\nCast on 250000 sts.\nRow 1: Knit. (250000 sts)\nRow 2: K 249998, k2tog. (249999 sts)\nRows 3-200002: Knit.\nRow 200003: Purl.\n")
	require.Len(t, list, 5)
	for i, f := range list {
		assert.Equal(t, "rows/bounds", f.Kind, f)
		assert.Equal(t, i+2, f.Pos.Line)
		assert.Equal(t, "at most 100000", f.Want)
	}
	assert.Contains(t, list[0].Message, "250000 is more than is counted")
	assert.Empty(t, check("Cast on 100000 sts.\nRow 1: Knit. (100000 sts)\n"))
}

// Lines as large as a text may be are refused at once: what a reader takes is counted in bytes, not in time.
func TestALineOfBracketsIsRefusedBeforeItIsRead(t *testing.T) {
	for _, line := range []string{"(", "[(k1, ", "(k1) ", "*k1, ", "{"} {
		src := []byte("Row 1: " + strings.Repeat(line, (1<<20-20)/len(line)) + "\n")
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		rep := Check(Read("t.txt", src, Options{}))
		runtime.ReadMemStats(&after)
		require.Len(t, rep.Findings, 1, line)
		assert.Equal(t, "rows/bounds", rep.Findings[0].Kind)
		assert.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(32<<20), "as large as the text a few times over: %q", line)
	}
}

// A line four times as long takes about four times the work, told by what is allotted.
func TestALongLineIsReadInLinearWork(t *testing.T) {
	work := func(line string, n int) float64 {
		src := []byte("Ch 20.\nRow 1: " + strings.Repeat(line, n/len(line)) + "\n")
		return testing.AllocsPerRun(1, func() { Check(Read("t.txt", src, Options{})) })
	}
	for _, line := range []string{"At the same time ", "21 ch, ", "2 sc in first st, ", "k3 ", "Dec 8 sts over 16 rows, ", "*sc in next st; ", "(k1) twice, "} {
		assert.Less(t, work(line, 15600), 6*work(line, 3900)+1000, line)
	}
}

// Four times as many rows that all do not fit take about four times the work, told by the bytes allotted; of
// what does not fit as much is listed as a person can use, and that there is more.
func TestRowsThatDoNotFitAreToldInLinearWork(t *testing.T) {
	work := func(line string, rows int) (float64, int) {
		src := []byte("Ch 21.\n" + strings.Repeat(line+"\n", rows))
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		rep := Check(Read("t.txt", src, Options{}))
		runtime.ReadMemStats(&after)
		return float64(after.TotalAlloc - before.TotalAlloc), len(rep.Findings)
	}
	for _, line := range []string{"Decrease evenly by 8.", "Dec 1 st at neck edge on next 7 rows.", "Leave 3 sts unworked at neck edge."} {
		few, _ := work(line, 500)
		many, told := work(line, 2000)
		assert.Less(t, many, 6*few, line)
		assert.Less(t, told, 400, line)
		assert.Greater(t, told, 250, line)
	}
}
