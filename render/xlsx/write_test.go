package xlsx

import (
	"archive/zip"
	"bytes"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/long"
	"flatwright/schematic/read"
)

func tunic(t testing.TB, change ...string) *schematic.Pattern {
	return pattern(t, "../../testdata/grade/tunic.yaml", change...)
}

func pattern(t testing.TB, path string, change ...string) *schematic.Pattern {
	src, err := os.ReadFile(path)
	require.NoError(t, err)
	p, found := read.Pattern(filepath.Base(path), []byte(strings.NewReplacer(change...).Replace(string(src))))
	require.Empty(t, found)
	return p
}

func written(t testing.TB, p *schematic.Pattern) []byte {
	var b bytes.Buffer
	require.NoError(t, Write(&b, p, bysize.WorkAll(p)))
	return b.Bytes()
}

// numbers are all numbers of a workbook by sheet and cell, and which of them have formulas.
func numbers(t testing.TB, data []byte) (map[string]float64, map[string]string) {
	f, err := excelize.OpenReader(bytes.NewReader(data))
	require.NoError(t, err)
	defer func() { require.NoError(t, f.Close()) }()
	vals, formulas := map[string]float64{}, map[string]string{}
	for _, s := range []string{Measurements, Grading} {
		rows, err := f.GetRows(s, excelize.Options{RawCellValue: true})
		require.NoError(t, err)
		for r, row := range rows {
			for c, text := range row {
				if c < first-1 || r < 2 {
					continue
				}
				name := at(c+1, r+1)
				if v, err := strconv.ParseFloat(text, 64); err == nil {
					vals[s+"!"+name] = v
				}
				formula, err := f.GetCellFormula(s, name)
				require.NoError(t, err)
				if formula != "" {
					formulas[s+"!"+name] = formula
				}
			}
		}
	}
	return vals, formulas
}

func TestTheSamePatternGivesTheSameWorkbook(t *testing.T) {
	p := tunic(t)
	a, b := written(t, p), written(t, tunic(t))
	assert.True(t, bytes.Equal(a, b))
	vals, formulas := numbers(t, a)
	assert.Greater(t, len(formulas), 200)
	for cell := range formulas {
		_, ok := vals[cell]
		assert.True(t, ok, "%s has a value for readers that do not reckon", cell)
	}
}

func TestATextThatLooksLikeAFormulaStaysAText(t *testing.T) {
	p := tunic(t, "Ferry Tunic", `"=HYPERLINK(1+1)"`, "piece: Back\n", "piece: \"=2+3\"\n", "Back armhole", "=2+3 armhole")
	f, err := excelize.OpenReader(bytes.NewReader(written(t, p)))
	require.NoError(t, err)
	formula, err := f.GetCellFormula(Measurements, "A1")
	require.NoError(t, err)
	assert.Empty(t, formula)
	text, err := f.GetCellValue(Measurements, "A1")
	require.NoError(t, err)
	assert.Equal(t, "=HYPERLINK(1+1)", text)
	kind, err := f.GetCellType(Measurements, "A1")
	require.NoError(t, err)
	assert.Contains(t, []excelize.CellType{excelize.CellTypeSharedString, excelize.CellTypeInlineString}, kind)
}

var cached = regexp.MustCompile(`(<f>[^<]*</f>)<v>[^<]*</v>`)

// spoilt is the workbook with a wrong value planted in every formula's cell.
func spoilt(t testing.TB, data []byte) []byte {
	in, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	require.NoError(t, err)
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	n := 0
	for _, p := range in.File {
		r, err := p.Open()
		require.NoError(t, err)
		body, err := io.ReadAll(r)
		require.NoError(t, err)
		if strings.HasPrefix(p.Name, "xl/worksheets/") {
			n += len(cached.FindAll(body, -1))
			body = cached.ReplaceAll(body, []byte("$1<v>-987654321</v>"))
		}
		to, err := w.Create(p.Name)
		require.NoError(t, err)
		_, err = to.Write(body)
		require.NoError(t, err)
	}
	require.NoError(t, w.Close())
	require.Greater(t, n, 200)
	return out.Bytes()
}

// always makes LibreOffice reckon every formula when it opens a workbook.
const always = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
`

// recalculated is the workbook as LibreOffice, a calculator of formulas from outside, saves it after it
// has reckoned every formula anew. It skips the test where there is none.
func recalculated(t testing.TB, data []byte) []byte {
	soffice, err := exec.LookPath("soffice")
	if err != nil {
		if os.Getenv("FLATWRIGHT_RENDERERS") == "required" {
			t.Fatal("soffice is required: install libreoffice-calc")
		}
		t.Skip("no soffice here: install libreoffice-calc")
	}
	dir := t.TempDir()
	profile := filepath.Join(dir, "profile")
	require.NoError(t, os.MkdirAll(filepath.Join(profile, "user"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(profile, "user", "registrymodifications.xcu"), []byte(always), 0o644))
	in := filepath.Join(dir, "in.xlsx")
	require.NoError(t, os.WriteFile(in, spoilt(t, data), 0o644))
	out := filepath.Join(dir, "out")
	cmd := exec.Command(soffice, "-env:UserInstallation=file://"+filepath.ToSlash(profile), "--headless", "--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", out, in)
	text, err := cmd.CombinedOutput()
	require.NoError(t, err, string(text))
	again, err := os.ReadFile(filepath.Join(out, "in.xlsx"))
	require.NoError(t, err, string(text))
	return again
}

// A workbook with wrong values planted in it is reckoned anew: its numbers are ours to 1e-9.
func TestLibreOfficeReckonsTheSameNumbers(t *testing.T) {
	long.Test(t)
	for name, p := range map[string]*schematic.Pattern{
		"centimetres": tunic(t),
		"inches":      tunic(t, "units: cm", "units: in", "fabric: 18 sts and 24 rows over 10 cm", "fabric: 18 sts and 24 rows over 4 in"),
		"other rules": tunic(t, "multiple: 4 + 2}", "multiple: 3 + 1, odd: yes, round: up}", "like: back stitches, round: down", "like: back stitches, multiple: 3, least: 70"),
		"raglan":      pattern(t, "../../examples/windlass-raglan.yaml"),
		"shapings":    pattern(t, "testdata/shapings.yaml"),
	} {
		ours := written(t, p)
		want, formulas := numbers(t, ours)
		got, _ := numbers(t, recalculated(t, ours))
		worst := 0.0
		for cell, v := range want {
			g, ok := got[cell]
			require.True(t, ok, "%s: %s %s", name, cell, formulas[cell])
			worst = max(worst, math.Abs(g-v)/max(1, math.Abs(v)))
			require.InDelta(t, v, g, 1e-9*max(1, math.Abs(v)), "%s: %s %s", name, cell, formulas[cell])
		}
		t.Logf("%s: %d numbers, %d of them formulas, at most %.1e apart", name, len(want), len(formulas), worst)
	}
}

// Other eases, bodies and gauges are typed into the sheet: every count, spread, armhole, raglan and yoke follows, and every length of the first
// sheet, and is what the program makes of a pattern with those numbers. What a search found stays, and a length that does not follow says so.
func TestAChangedNumberGoesThroughTheWholeWorkbook(t *testing.T) {
	long.Test(t)
	windlass, tunic := "../../examples/windlass-raglan.yaml", "../../testdata/grade/tunic.yaml"
	for _, c := range []struct {
		path   string
		old    string // in the pattern
		typed  string
		row    string // in the sheet, all sizes
		value  float64
		search []string // lines whose numbers come from a search
		most   int      // lengths that do not follow
	}{
		{windlass, "ease: 4 in", "ease: 6 1/2 in", "ease", 6.5, nil, 9},
		{windlass, "upper arm: 9 3/4 (10 1/4, 11, 12) (13 1/2, 15 1/2, 17) (18 1/2, 19 1/2) in", "upper arm: 14 in", "upper arm", 14, nil, 0},
		{windlass, "fabric: 18 sts and 24 rows", "fabric: 18 sts and 26 rows", "gauge fabric, rows", 26, nil, 2},
		{windlass, "rib: 20 sts and 26 rows", "rib: 22 sts and 26 rows", "gauge rib, stitches", 22, nil, 0},
		{tunic, "ease: 12 cm", "ease: 7 cm", "ease", 7, []string{"cap"}, 18},
		{tunic, "cross back: 36 (38, 40, 43) (45, 46) cm", "cross back: 39 cm", "cross back", 39, []string{"cap"}, 18},
		{tunic, "fabric: 18 sts", "fabric: 20 sts", "gauge fabric, stitches", 20, []string{"cap"}, 18},
		{"testdata/shapings.yaml", "ease: 3 in", "ease: 2 1/4 in", "ease", 2.25, []string{"left cap"}, 0},
		{"testdata/shapings.yaml", "upper arm: 10 (11, 12, 13 1/2) in", "upper arm: 12 1/2 in", "upper arm", 12.5, []string{"left cap"}, 0},
		{"testdata/shapings.yaml", "tall: 14 sts", "tall: 15 sts", "gauge tall, stitches", 15, []string{"left cap"}, 0},
	} {
		p := pattern(t, c.path, c.old, c.typed)
		f, err := excelize.OpenReader(bytes.NewReader(written(t, pattern(t, c.path))))
		require.NoError(t, err)
		names := map[string]map[int]string{Measurements: {}, Grading: {}}
		for sheet := range names {
			rows, err := f.GetRows(sheet)
			require.NoError(t, err)
			for r, row := range rows {
				if len(row) > 0 {
					names[sheet][r+1] = row[0]
				}
			}
		}
		for r, name := range names[Grading] {
			for i := range p.Sizes.Names {
				if name == c.row && (i == 0 || !strings.HasPrefix(name, "gauge")) {
					require.NoError(t, f.SetCellFloat(Grading, at(first+i, r), c.value, -1, 64))
				}
			}
		}
		var changed bytes.Buffer
		require.NoError(t, f.Write(&changed))
		before, _ := numbers(t, changed.Bytes())
		got, formulas := numbers(t, recalculated(t, changed.Bytes()))
		want, _ := numbers(t, written(t, p))
		followed, stays := map[string]int{}, 0
		for cell, v := range want {
			sheet, name, _ := strings.Cut(cell, "!")
			_, row, err := excelize.CellNameToCoordinates(name)
			require.NoError(t, err)
			if sheet == Grading && slicesHavePrefix(c.search, names[sheet][row]) {
				continue
			}
			is, number := got[cell]
			if sheet == Measurements && !number {
				stays++
				continue
			}
			require.InDelta(t, v, is, 1e-6*max(1, math.Abs(v)), "%s: %s %s: %s", c.row, names[sheet][row], cell, formulas[cell])
			if formulas[cell] != "" && before[cell] != v {
				followed[sheet]++
			}
		}
		t.Logf("%s, %s: %v formulas followed, %d lengths do not", c.path, c.row, followed, stays)
		assert.LessOrEqual(t, stays, 2*c.most, "%s %s", c.path, c.row) // in both units
		assert.Positive(t, followed[Grading]+followed[Measurements])
	}
}

func slicesHavePrefix(all []string, name string) bool {
	return slices.ContainsFunc(all, func(s string) bool { return strings.HasPrefix(name, s) })
}

// Only a cap's own decreases and steps are numbers, and a note says so; all else that the grading works out is a formula.
func TestASearchIsSaidToBeOneAndAllElseIsAFormula(t *testing.T) {
	p := pattern(t, "testdata/shapings.yaml")
	f, err := excelize.OpenReader(bytes.NewReader(written(t, p)))
	require.NoError(t, err)
	rows, err := f.GetRows(Grading)
	require.NoError(t, err)
	found := map[string]bool{}
	notes := 0
	for r, row := range rows {
		if len(row) == 0 {
			continue
		}
		if strings.Contains(row[0], "found by trying") {
			notes++
		}
		for i := range p.Sizes.Names {
			formula, err := f.GetCellFormula(Grading, at(first+i, r+1))
			require.NoError(t, err)
			if formula != "" {
				found[expr.Key(row[0])] = true
			}
		}
	}
	assert.Equal(t, 1, notes, "one for each cap")
	var numbers []string
	for _, v := range p.Graded {
		g := p.Grading[v.Of]
		if !found[expr.Key(v.Name)] && g.Given == nil && g.Kind != schematic.GradeValue {
			numbers = append(numbers, v.Name)
		}
	}
	assert.Equal(t, []string{"left cap quick every", "left cap quick times", "left cap slow every", "left cap slow times", "left cap less slow every",
		"left cap less slow times", "left cap last every", "left cap last times", "left cap step", "left cap step times"}, numbers)
}

// A sheet of many sizes prints on pages one sheet wide that each have the sizes on top; no name is cut, and a
// size stands above its numbers.
func TestASheetIsMadeToBePrinted(t *testing.T) {
	f, err := excelize.OpenReader(bytes.NewReader(written(t, pattern(t, "../../examples/windlass-raglan.yaml"))))
	require.NoError(t, err)
	for _, s := range []string{Measurements, Grading} {
		layout, err := f.GetPageLayout(s)
		require.NoError(t, err)
		assert.Equal(t, 1, *layout.FitToWidth)
		assert.Equal(t, "landscape", *layout.Orientation)
		width, err := f.GetColWidth(s, "A")
		require.NoError(t, err)
		rows, err := f.GetRows(s)
		require.NoError(t, err)
		for _, row := range rows {
			if len(row) > 0 {
				assert.LessOrEqual(t, len([]rune(row[0])), int(width), row[0])
			}
		}
		id, err := f.GetCellStyle(s, at(first, titleRows))
		require.NoError(t, err)
		style, err := f.GetStyle(id)
		require.NoError(t, err)
		assert.Equal(t, "right", style.Alignment.Horizontal)
		assert.Equal(t, "XS", rows[titleRows-1][first-1])
	}
	titles := map[string]string{}
	for _, n := range f.GetDefinedName() {
		titles[n.Scope] = n.RefersTo
	}
	assert.Equal(t, map[string]string{Measurements: "Measurements!$1:$2", Grading: "Grading!$1:$2"}, titles)
}

// The first sheet follows the second where it is graded: it says so, and what 'anew' means, on top of every page.
func TestTheFirstSheetSaysWhereItsNumbersComeFrom(t *testing.T) {
	p := tunic(t)
	note := func() string {
		f, err := excelize.OpenReader(bytes.NewReader(written(t, p)))
		require.NoError(t, err)
		text, err := f.GetCellValue(Measurements, at(first, 1))
		require.NoError(t, err)
		return text
	}
	assert.Equal(t, exact+follows, note())
	p.Grading, p.Graded = nil, nil
	assert.Equal(t, exact, note())
}
