package job

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/layout/place"
	"flatwright/render/compare"
	"flatwright/schematic/check"
	"flatwright/schematic/read"
	"flatwright/schematic/units"
	"flatwright/schematic/worn"

	"flatwright/schematic"
)

// printed gathers what is printed of each measurement, in each size and unit: the figures, and where each of them stands.
type printed struct {
	at    map[string]map[string]string
	steps map[string]int // how many figures each kind of output brought
}

func (p *printed) put(where, id, size, unit, figure string) {
	n, ok := units.ParseNum(strings.TrimSpace(figure))
	if !ok {
		return // a range, or what a size has not
	}
	key := strings.Join([]string{id, size, unit}, " | ")
	if p.at[key] == nil {
		p.at[key] = map[string]string{}
	}
	p.at[key][units.Decimal(n, 3)] = where
	p.steps[where]++
}

var (
	svgPiece   = regexp.MustCompile(`(?s)<g id="([^"]*)" class="piece">\s*<title>[^<]*</title>\s*<desc>([^<]*)</desc>`)
	svgMeasure = regexp.MustCompile(`(?s)<g id="([^"]*)" class="measure">(.*?)</g>`)
	described  = regexp.MustCompile(`([^;.:]+): ([0-9.¼½¾ ]+) (cm|in) / ([0-9.¼½¾ ]+) (cm|in)`)
	inUnit     = regexp.MustCompile(`([0-9.¼½¾]+(?: ?[¼½¾])?) (cm|in)\b`)
	pageRow    = regexp.MustCompile(`(?s)<tr data-m="([^"]*)">(.*?)</tr>`)
	pageCell   = regexp.MustCompile(`(?s)<td class="[a-z0-9]+-([0-9]+)">(.*?)</td>`)
	pageUnit   = regexp.MustCompile(`<div class="[a-z0-9]+-(cm|in)">([^<]*)<`)
	pageDrawn  = regexp.MustCompile(`<div class="[a-z0-9]+-drawn [a-z0-9]+-one [a-z0-9]+-([0-9]+)"`)
	pageLabel  = regexp.MustCompile(`(?s)<g data-m="([^"]*)">(.*?)</g>`)
)

// svg takes the labels of a drawing, and the sentences that describe it to who does not see it.
func (p *printed) svg(size, text string) {
	for _, m := range svgMeasure.FindAllStringSubmatch(text, -1) {
		for _, v := range inUnit.FindAllStringSubmatch(m[2], -1) {
			p.put("drawing", m[1], size, v[2], v[1])
		}
	}
	for _, m := range svgPiece.FindAllStringSubmatch(text, -1) {
		for _, v := range described.FindAllStringSubmatch(m[2], -1) {
			id := m[1] + "." + Slug(strings.TrimSpace(v[1]))
			p.put("description", id, size, v[3], v[2])
			p.put("description", id, size, v[5], v[4])
		}
	}
}

// page takes the table of a page and the labels of its drawings, one set a size.
func (p *printed) page(sizes []string, text string) {
	for _, m := range pageRow.FindAllStringSubmatch(text, -1) {
		for _, v := range pageCell.FindAllStringSubmatch(m[2], -1) {
			var i int
			_, _ = fmt.Sscan(v[1], &i)
			for _, u := range pageUnit.FindAllStringSubmatch(v[2], -1) {
				p.put("page", m[1], sizes[i], u[1], u[2])
			}
		}
	}
	at := pageDrawn.FindAllStringSubmatchIndex(text, -1)
	for k, m := range at {
		end := len(text)
		if k+1 < len(at) {
			end = at[k+1][0]
		}
		var i int
		_, _ = fmt.Sscan(text[m[2]:m[3]], &i)
		for _, l := range pageLabel.FindAllStringSubmatch(text[m[0]:end], -1) {
			for _, v := range inUnit.FindAllStringSubmatch(l[2], -1) {
				p.put("drawing of a page", l[1], sizes[i], v[2], v[1])
			}
		}
	}
}

// Every figure that the table, the drawings, their descriptions, the page and its drawings print of a measurement in one size and unit is
// the same, and it is the exact length of the worked garment, rounded once: centimetres to the half and inches to
// the quarter, or as the pattern says.
func TestAMeasurementHasOneFigureWhereverItIsPrinted(t *testing.T) {
	inLabels := 0
	for _, src := range sources(t, "../../../examples/*.yaml") {
		all := printed{at: map[string]map[string]string{}, steps: map[string]int{}}
		p, found := read.Pattern(src.Name, src.Text)
		require.False(t, found.Errors())
		sizes := p.Sizes.Names
		gs := make([]*schematic.Garment, len(sizes))
		for i := range sizes {
			gs[i] = schematic.Work(p, i)
			worn.Dress(gs[i])
		}
		check.Own(gs)
		for i, size := range sizes {
			g := gs[i]
			made := slices.Clone(g.Pieces)
			if g.Worn != nil {
				made = append(made, g.Worn)
			}
			for _, m := range made {
				for _, s := range m.Measures {
					all.put("exact", s.ID, size, "cm", p.Steps.Format(s.Length, units.CM))
					all.put("exact", s.ID, size, "in", p.Steps.Format(s.Length, units.Inch))
				}
			}
		}
		table, err := Table(t.Context(), src, TableOptions{Format: "csv"})
		require.NoError(t, err)
		rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(string(table.Files[0].Body), "\ufeff"))).ReadAll()
		require.NoError(t, err)
		for _, row := range rows[1:] {
			for i, v := range row[4:] {
				all.put("table", row[0], sizes[i], row[3], v)
			}
		}
		some := []string{sizes[0], sizes[len(sizes)-1]}
		for _, size := range some {
			drawn, err := Draw(t.Context(), src, DrawOptions{Labels: One, Size: size, Format: "svg", Paper: place.A4})
			require.NoError(t, err)
			for _, f := range drawn.Files {
				all.svg(size, string(f.Body))
			}
		}
		page, err := Page(t.Context(), src, PageOptions{})
		require.NoError(t, err)
		all.page(sizes, string(page.Files[0].Body))
		all.lines(t, src, sizes)
		all.tables(t, src, rows)
		all.workbook(t, src, p, rows)
		if hasPDFText(t) {
			all.handout(t, src, some[1])
			for _, size := range some {
				all.answers(t, src, size, all.known(size), p.Units)
			}
			assert.Greater(t, all.steps["answers"], 3, src.Name)
		}
		for key, figures := range all.at {
			assert.Len(t, figures, 1, "%s: %s", src.Name, key)
		}
		for _, where := range []string{"exact", "table", "drawing", "description", "page", "drawing of a page", "title", "text", "markdown", "workbook"} {
			assert.Greater(t, all.steps[where], 10, "%s: %s", src.Name, where)
		}
		t.Log(src.Name, all.steps)
		inLabels += all.steps["label of all sizes"]
	}
	assert.Greater(t, inLabels, 100, "labels with the values of all sizes")
}

var ease = regexp.MustCompile(`(?s)\nEase.*?\nSample`) // of no measurement, but between two

var pair = regexp.MustCompile(`([0-9.½]+) cm / ([0-9]*[¼½¾]?) in|([0-9]*[¼½¾]?) in / ([0-9.½]+) cm`)

// known are the pairs of figures in both units that are printed of measurements in one size.
func (p *printed) known(size string) map[string]bool {
	known := map[string]bool{"10 / 4": true}
	for key, cm := range p.at {
		if id, of, _ := strings.Cut(key, " | "); strings.HasPrefix(of, size+" | cm") {
			for a := range cm {
				for b := range p.at[id+" | "+size+" | in"] {
					known[a+" / "+b] = true
				}
			}
		}
	}
	return known
}

// handout holds every pair of figures that the handout of one size prints against the pairs that are printed elsewhere
// for that size: a pair that stands nowhere else is of no measurement. (The gauge's own 10 cm / 4 in is nominal.)
func (p *printed) handout(t *testing.T, src Source, size string) {
	r, err := Handout(t.Context(), src, HandoutOptions{Size: size, Alone: true})
	require.NoError(t, err)
	file := filepath.Join(t.TempDir(), "handout.pdf")
	require.NoError(t, os.WriteFile(file, r.Files[0].Body, 0o600))
	known := p.known(size)
	seen := 0
	text := ease.ReplaceAllString(string(compare.Run(t, nil, "pdftotext", "-layout", file, "-")), "")
	for _, m := range pair.FindAllStringSubmatch(text, -1) {
		a, ok := units.ParseNum(m[1] + m[3])
		b, ok2 := units.ParseNum(m[2] + m[4])
		if m[3] != "" { // inches first
			a, b = b, a
		}
		typed := strings.TrimSpace(strings.NewReplacer("½", " 1/2", "¼", " 1/4", "¾", " 3/4").Replace(m[3]))
		if written := m[3] != "" && strings.Contains(string(src.Text), typed+" in"); ok && ok2 && !written { // such as in its notes
			seen++
			assert.True(t, known[units.Decimal(a, 3)+" / "+units.Decimal(b, 3)], "%s, size %s: the handout prints %s", src.Name, size, m[0])
		}
	}
	assert.Positive(t, seen, "%s: the handout", src.Name)
	p.steps["handout"] = seen
}

// What stands under a garment follows the choice of a unit as what stands beside it does.
func TestAWidthUnderAGarmentHasItsUnitsApart(t *testing.T) {
	text, err := os.ReadFile("../../../examples/saltmarsh-cardigan.yaml")
	require.NoError(t, err)
	r, err := Page(t.Context(), Source{Name: "saltmarsh-cardigan.yaml", Text: text}, PageOptions{})
	require.NoError(t, err)
	page := string(r.Files[0].Body)
	assert.Regexp(t, `>bust around: <tspan class="fw[^"]*-cm">[\d.]+ cm</tspan><tspan class="fw[^"]*-both"> / </tspan><tspan class="fw[^"]*-in">[^<]+ in</tspan></text>`, page)
	assert.NotContains(t, page, ">bust around: 1", "no unit that is not chosen")
}
