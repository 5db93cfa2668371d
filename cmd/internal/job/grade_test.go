package job

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/examples"
)

func graded(t *testing.T) Source {
	text, err := os.ReadFile("../../../testdata/grade/tunic.yaml")
	require.NoError(t, err)
	return Source{Name: "tunic.yaml", Text: text}
}

func TestTheGradingIsToldInEveryForm(t *testing.T) {
	for format, want := range map[string]string{"": "back stitches: stitches (bust + ease) / 2, multiple of 4 + 2", "markdown": "| stitches | 78 | 90 |", "csv": "back stitches,stitches,78,90", "xlsx": "PK"} {
		r, err := Grade(t.Context(), graded(t), GradeOptions{Format: format})
		require.NoError(t, err, format)
		require.Len(t, r.Files, 1)
		assert.Contains(t, string(r.Files[0].Body), want, format)
		again, err := Grade(t.Context(), graded(t), GradeOptions{Format: format})
		require.NoError(t, err)
		assert.True(t, bytes.Equal(r.Files[0].Body, again.Files[0].Body), "the same bytes every time")
	}
	_, err := Grade(t.Context(), graded(t), GradeOptions{Format: "cards"})
	assert.Error(t, err)
}

func TestAPatternIsFilledInAndReadAgain(t *testing.T) {
	r, err := Grade(t.Context(), graded(t), GradeOptions{Fill: true})
	require.NoError(t, err)
	assert.Contains(t, string(r.Files[0].Body), "cast on: 78 (90, 98, 106) (118, 126)   # from bust and ease")
	again, err := Grade(t.Context(), Source{Name: "tunic.yaml", Text: r.Files[0].Body}, GradeOptions{Fill: true})
	require.NoError(t, err)
	assert.Equal(t, string(r.Files[0].Body), string(again.Files[0].Body))
}

func TestValuesComeFromASpreadsheet(t *testing.T) {
	sheet := Source{Name: "ease.csv", Text: []byte("what,unit,XS,S,M,L,1X,2X\nease,cm,10,10,12,12,14,14\n")}
	r, err := Grade(t.Context(), graded(t), GradeOptions{From: sheet})
	require.NoError(t, err)
	assert.Contains(t, string(r.Files[0].Body), "  ease: 10 (10, 12, 12) (14, 14) cm\n")
	_, err = Grade(t.Context(), graded(t), GradeOptions{From: Source{Name: "bad.csv", Text: []byte("nothing")}})
	assert.ErrorIs(t, err, ErrUnreadable)
}

// Sizes XS, S, ... 2X; the cuff's target is given in its line of the grading, the back's count is worked out there, and bodies
// stand elsewhere in the file. With an ease of 14 cm XS is 45 cm or 81 stitches: 82 of 4 + 2.
func TestWhatASheetChangesAndIsNotTakenIsTold(t *testing.T) {
	take := func(rows string) (string, []string) {
		r, err := Grade(t.Context(), graded(t), GradeOptions{From: Source{Name: "sheet.csv", Text: []byte("what,unit,XS,S,M,L,1X,2X\n" + rows)}})
		require.NoError(t, err)
		var told []string
		for _, f := range r.Findings {
			told = append(told, f.Message)
		}
		return string(r.Files[0].Body), told
	}
	body, told := take("\"cuff stitches, target\",cm,22,23,23,24,25,26\n")
	assert.Empty(t, told)
	assert.Contains(t, body, "{stitches: 22 (23, 23, 24) (25, 26) cm, even: yes}")
	body, told = take("ease,cm,12,12,12,12,12,12\nbust,cm,76,86,97,107,117,127\nback stitches,sts,78,90,98,106,118,126\n")
	assert.Empty(t, told, "nothing differs")
	assert.Equal(t, string(graded(t).Text), body, "and no byte")
	_, told = take("ease,cm,14,14,14,14,14,14\nback stitches,sts,82,90,98,110,118,126\n")
	assert.Empty(t, told, "what follows from a value that was taken agrees")
	_, told = take("ease,cm,12,12,12,12,12,12\nbust,cm,76,86,97,107,117,128\nback stitches,sts,78,90,98,106,118,130\ncap top,sts,1,1,1,1,1,1\n")
	assert.ElementsMatch(t, []string{`"bust" of the sheet was not taken: bodies are in the pattern`, `"back stitches" of the sheet was not taken: the pattern works it out`}, told)
}

func TestPublishedBodiesBecomeLinesOfAPatternFile(t *testing.T) {
	r, err := Grade(t.Context(), graded(t), GradeOptions{Bodies: Source{Name: "women"}})
	require.NoError(t, err)
	lines := string(r.Files[0].Body)
	assert.Contains(t, lines, "  bust: 28-30 (32-34, 36-38, 40-42) (44-46, 48-50) in\n")
	assert.Contains(t, lines, "# Craft Yarn Council")
	text := graded(t).Text
	from, to := bytes.Index(text, []byte("bodies:")), bytes.Index(text, []byte("gauges:"))
	whole := string(text[:from]) + lines + string(text[to:])
	_, err = Check(t.Context(), Source{Name: "tunic.yaml", Text: []byte(whole)})
	assert.NoError(t, err)
	_, err = Grade(t.Context(), graded(t), GradeOptions{Bodies: Source{Name: "giants"}})
	assert.ErrorContains(t, err, "women")
}

func TestYarnIsToldForEverySize(t *testing.T) {
	o := YarnOptions{Swatches: []string{"12 g over 15 x 15 cm"}, Ball: "50 g, 120 m", Allowance: "10 %", Explain: true}
	r, err := Yarn(t.Context(), graded(t), o)
	require.NoError(t, err)
	text := string(r.Files[0].Body)
	assert.Equal(t, 6, strings.Count(text, "10 % allowance"))
	assert.Contains(t, text, "fabric, cm²")
	inches := graded(t)
	inches.Text = bytes.Replace(inches.Text, []byte("units: cm"), []byte("units: in"), 1)
	in, err := Yarn(t.Context(), inches, o)
	require.NoError(t, err)
	assert.Contains(t, string(in.Files[0].Body), "fabric, in²")
	assert.Equal(t, grams(t, text), grams(t, string(in.Files[0].Body)), "the unit of the area changes no weight")
	for _, bad := range []YarnOptions{{}, {Swatches: []string{"heavy"}}, {Swatches: []string{"lace: 12 g over 15 x 15 cm"}}, {Sample: "much"}, {Ball: "round"}, {Allowance: "-3"}} {
		_, err := Yarn(t.Context(), graded(t), bad)
		var option *OptionError
		assert.ErrorAs(t, err, &option)
	}
}

// grams are the weights of a yarn table, in order.
func grams(t *testing.T, text string) []string {
	var out []string
	for _, l := range strings.Split(text, "\n")[2:8] {
		f := strings.Fields(l)
		require.Len(t, f, 6)
		out = append(out, f[2])
	}
	return out
}

func TestAnAlterationGivesDrawingAndCounts(t *testing.T) {
	r, err := Alter(t.Context(), graded(t), AlterOptions{Size: "M", Gauges: []string{"20 sts and 28 rows over 10 cm"}, Body: "+5 cm", Sleeve: "-1 in",
		Yarn: YarnOptions{Swatches: []string{"12 g over 15 x 15 cm"}, Ball: "50 g"}})
	require.NoError(t, err)
	require.Len(t, r.Files, 3)
	text := string(r.Files[2].Body)
	assert.Regexp(t, `cast on +98 +110 +sts`, text)
	assert.Contains(t, text, "balls")
	for _, bad := range []AlterOptions{{}, {Size: "9X"}, {Size: "M", Gauges: []string{"tight"}}, {Size: "M", Body: "longer"}, {Size: "M", Body: "+90 m"}, {Size: "M", Parts: []string{"Sleeve"}}, {Size: "M", Parts: []string{"Sleeve: 9X"}}} {
		_, err := Alter(t.Context(), graded(t), bad)
		var option *OptionError
		assert.ErrorAs(t, err, &option, "%+v", bad)
	}
	_, err = Alter(t.Context(), graded(t), AlterOptions{Size: "M", Parts: []string{"Hood: L"}})
	assert.ErrorIs(t, err, ErrUnreadable)
}

func TestTheArithmeticStandsUnderTheTable(t *testing.T) {
	table, err := Grade(t.Context(), graded(t), GradeOptions{})
	require.NoError(t, err)
	for format, want := range map[string]string{
		"":         "\nHow the counts of size M are worked out\n\nease: as given\n  12 cm\n\nback stitches: stitches (bust + ease) / 2, multiple of 4 + 2\n  (bust + ease) / 2 = (97 cm + 12 cm) / 2 = 54.5 cm\n  54.5 cm at 18 sts over 10 cm: 98.1 sts\n",
		"markdown": "\n- 54.5 cm at 18 sts over 10 cm\\: 98.1 sts\n",
	} {
		r, err := Grade(t.Context(), graded(t), GradeOptions{Format: format, Explain: true, Size: "m"})
		require.NoError(t, err)
		assert.Contains(t, string(r.Files[0].Body), want)
		if format == "" {
			assert.True(t, bytes.HasPrefix(r.Files[0].Body, table.Files[0].Body), "the table is as without it")
		}
	}
	written := Source{Name: "hat.yaml", Text: examples.Text("pebble-hat")}
	r, err := Grade(t.Context(), written, GradeOptions{Explain: true})
	require.NoError(t, err)
	assert.Contains(t, string(r.Files[0].Body), "The pattern has no grading: its counts of size")
	var option *OptionError
	for _, bad := range []GradeOptions{{Size: "M"}, {Explain: true, Size: "9X"}, {Explain: true, Format: "xlsx"}, {Explain: true, Format: "csv"}} {
		_, err := Grade(t.Context(), graded(t), bad)
		assert.ErrorAs(t, err, &option, "%+v", bad)
	}
}
