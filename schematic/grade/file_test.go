package grade_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/grade"
	"flatwright/schematic/read"
	"flatwright/schematic/units"
)

// gradedTunic is a tunic of two pieces and two sleeves whose every count is a sum.
func gradedTunic(t testing.TB) string {
	text, err := os.ReadFile("../../testdata/grade/tunic.yaml")
	require.NoError(t, err)
	return string(text)
}

func TestFillingInCountsChangesOnlyTheBytesMeant(t *testing.T) {
	gradedTunic := gradedTunic(t)
	for _, src := range []string{gradedTunic, strings.ReplaceAll(gradedTunic, "\n", "\r\n")} {
		p, found := read.Pattern("tunic.yaml", []byte(src))
		require.Empty(t, found)
		out := string(grade.Fill([]byte(src), p))
		was, now := strings.Split(src, "\n"), strings.Split(out, "\n")
		require.Len(t, now, len(was))
		for i := range was {
			if strings.HasPrefix(was[i], "      - cast on: back") {
				assert.Contains(t, now[i], "cast on: 78 (90, 98, 106) (118, 126)", "as the trade writes it")
			}
			if i < strings.Count(gradedTunic[:strings.Index(gradedTunic, "pieces:")], "\n") {
				assert.Equal(t, was[i], now[i])
			}
		}
		assert.Contains(t, out, "   # from bust and ease")
		q, found := read.Pattern("tunic.yaml", []byte(out))
		require.Empty(t, found)
		assert.Empty(t, q.Calls, "no sum is left")
		for i := range p.Sizes.Names {
			a, b := schematic.Work(p, i), schematic.Work(q, i)
			for k := range a.Pieces {
				assert.Equal(t, a.Pieces[k].Measures, b.Pieces[k].Measures)
			}
		}
		assert.Equal(t, out, string(grade.Fill([]byte(out), q)), "a second time nothing is left to fill in")
	}
}

func TestValuesFromASheetChangeOnlyTheirOwnBytes(t *testing.T) {
	src := strings.Replace(gradedTunic(t), "  ease: 12 cm\n", "  ease: 12 cm   # wished\n  depth of hem: 5 (5, 6, 6) (6, 7) cm\n  pleats: \"4\"\n", 1)
	p, found := read.Pattern("tunic.yaml", []byte(src))
	require.Empty(t, found)
	mm := func(v ...int) expr.Graded { return expr.Counts(v...) }
	out, found := grade.Take([]byte(src), p, []schematic.GradedValue{
		{Name: "Depth of hem", Dim: expr.LengthOf, Vals: mm(50, 55, 60, 65, 70, 75)},
		{Name: "ease", Dim: expr.Plain, Vals: mm(11, 12, 12, 12, 13, 13)},
		{Name: "pleats", Dim: expr.Plain, Vals: mm(4, 4, 5, 5, 6, 6)},
		{Name: "back stitches", Dim: expr.Stitches, Vals: mm(1, 2, 3, 4, 5, 6)},
		{Name: "something else", Vals: mm(1, 2, 3, 4, 5, 6)},
	})
	require.Empty(t, found)
	want := strings.NewReplacer("ease: 12 cm   # wished", "ease: 11 (12, 12, 12) (13, 13) cm   # wished",
		"hem: 5 (5, 6, 6) (6, 7) cm", "hem: 5 (5.5, 6, 6.5) (7, 7.5) cm", `pleats: "4"`, "pleats: 4 (4, 5, 5) (6, 6)").Replace(src)
	assert.Equal(t, want, string(out))
	_, found = read.Pattern("tunic.yaml", out)
	assert.Empty(t, found)
	_, found = grade.Take([]byte(src), p, []schematic.GradedValue{{Name: "ease", Dim: expr.Stitches, Vals: mm(1, 2, 3, 4, 5, 6)}})
	require.Len(t, found, 1)
	assert.Equal(t, "file/unit", found[0].Kind)
	_, found = grade.Take([]byte(src), p, nil)
	assert.Contains(t, found[0].Want, "depth of hem")
}

// What a sheet's values do to the file: a target is given in the pattern's unit or with its own, a hundredth of a millimetre is no
// change, and what the pattern works out is not the sheet's to say.
func TestWhatIsTakenOfASheet(t *testing.T) {
	src := strings.Replace(gradedTunic(t), "  ease: 12 cm\n", "  ease: 12 cm\n  tucks: {stitches: 8 sts}\n", 1)
	p, found := read.Pattern("tunic.yaml", []byte(src))
	require.Empty(t, found)
	all := func(text string) expr.Graded { // one number for every size, or six of them
		var g expr.Graded
		for _, f := range strings.Fields(strings.Repeat(text+" ", 6/len(strings.Fields(text)))) {
			n, ok := units.ParseNum(f)
			require.True(t, ok)
			g.Vals, g.Has = append(g.Vals, n), append(g.Has, true)
		}
		return g
	}
	const none = "no row of the sheet has the name of a value that the grading gives"
	for _, c := range []struct {
		name string
		dim  expr.Dim
		vals string
		to   string // of "ease: 12 cm" and the like; nothing: unchanged
		told string
	}{
		{"cuff stitches, target", expr.Plain, "22 22 23 24 25 27", `cuff stitches: {stitches: 22 (22, 23, 24) (25, 27) cm`, ""},
		{"Cuff Stitches", expr.LengthOf, "220 220 230 240 250 270", `cuff stitches: {stitches: 22 (22, 23, 24) (25, 27) cm`, ""},
		{"cuff stitches", expr.LengthOf, "220 220 230 240 250 260", "", ""},
		{"cuff stitches", expr.Stitches, "40", "", none},
		{"back stitches", expr.LengthOf, "500", "", none},
		{"back stitches, target", expr.LengthOf, "500", "", none},
		{"tucks, target", expr.Plain, "9", "tucks: {stitches: 9 sts", ""},
		{"tucks, target", expr.Stitches, "8", "", ""},
		{"tucks, target", expr.LengthOf, "44", "", ""},
		{"tucks", expr.Stitches, "9", "", none},
		{"ease", expr.Plain, "12", "", ""},
		{"ease", expr.Plain, "12.0009", "", ""},
		{"ease", expr.Plain, "12.001", "ease: 12.001 cm", ""},
		{"ease", expr.LengthOf, "120.0101", "ease: 12.001 cm", ""},
		{"ease", expr.LengthOf, "110 120 120 120 120 120", "ease: 11 (12, 12, 12) (12, 12) cm", ""},
		{"ease", expr.Rows, "12", "", `"ease" is a length in the pattern and a number of rows in the sheet`},
		{"else", expr.Plain, "12", "", none},
	} {
		out, found := grade.Take([]byte(src), p, []schematic.GradedValue{{Name: c.name, Dim: c.dim, Vals: all(c.vals)}})
		var told []string
		for _, f := range found {
			told = append(told, f.Message)
		}
		assert.Equal(t, c.told, strings.Join(told, "; "), "%s %s", c.name, c.vals)
		if c.to == "" {
			assert.Equal(t, src, string(out), "%s %s", c.name, c.vals)
			continue
		}
		assert.NotEqual(t, src, string(out))
		assert.Contains(t, string(out), c.to)
	}
	for _, c := range []struct {
		name string
		dim  expr.Dim
		vals string
		told string
	}{
		{"bust", expr.LengthOf, "760 860 970 1070 1170 1270", ""},
		{"bust", expr.Plain, "76 86 97 107 117 127", ""},
		{"bust", expr.Plain, "76 86 97 107 117 128", `"bust" of the sheet was not taken: bodies are in the pattern: 76 (86, 97, 107) (117, 128) cm in the sheet, 76 (86, 97, 107) (117, 127) cm`},
		{"back stitches", expr.Stitches, "78 90 98 106 118 126", ""},
		{"back stitches", expr.Plain, "78 90 98 106 118 130", `"back stitches" of the sheet was not taken: the pattern works it out: 78 (90, 98, 106) (118, 130) sts in the sheet, 78 (90, 98, 106) (118, 126) sts`},
		{"back stitches", expr.Rows, "78 90 98 106 118 130", ""},
		{"cuff stitches, target", expr.Plain, "1", ""},
		{"cap", expr.Plain, "1", ""},
		{"ease", expr.Plain, "1", ""},
		{"else", expr.Plain, "1", ""},
	} {
		var told []string
		for _, f := range grade.NotTaken(p, []schematic.GradedValue{{Name: c.name, Dim: c.dim, Vals: all(c.vals)}}) {
			told = append(told, f.Message+": "+f.Have+", "+f.Want)
		}
		assert.Equal(t, c.told, strings.Join(told, "; "), "%s %s", c.name, c.vals)
	}
}

// A body with too few numbers is one error: nothing is said of what is worked out of it.
func TestABodyThatCannotBeReadIsToldOnce(t *testing.T) {
	text, err := os.ReadFile("../../testdata/altered/graded.yaml")
	require.NoError(t, err)
	for line, short := range map[string]string{
		"bust: 76 (84, 92) (102, 112) cm":     "bust: 76 (84, 92) (102) cm",
		"upper arm: 25 (26, 28) (31, 34) cm":  "upper arm: 25 (26, 28) (31) cm",
		"cross back: 36 (37, 39) (42, 44) cm": "cross back: 36 (37, 39) (42) cm",
	} {
		broken := strings.Replace(string(text), line, short, 1)
		require.NotEqual(t, string(text), broken)
		_, found := read.Pattern("p.yaml", []byte(broken))
		require.Len(t, found, 1, line)
		assert.Equal(t, "file/list-length", found[0].Kind)
	}
}
