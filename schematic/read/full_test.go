package read

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

func full(t testing.TB) []byte {
	src, err := os.ReadFile(filepath.Join(testdata, "full.yaml"))
	require.NoError(t, err)
	return src
}

// readAll reads a file and notes every key that was read.
func readAll(name string, src []byte) (*schematic.Pattern, finding.List, map[string]bool) {
	seen := map[string]bool{}
	r := &reader{file: name, seen: func(table, key string) { seen[table+": "+key] = true }}
	root := r.parse(src)
	if root == nil {
		return nil, r.done(), seen
	}
	p := r.pattern(root)
	r.refer(p)
	r.measure(p)
	return p, r.done(), seen
}

func TestTheFullFileUsesEveryKey(t *testing.T) {
	_, list, seen := readAll("full.yaml", full(t))
	require.Empty(t, list)
	for _, tab := range allTables() {
		for _, k := range tab.keys {
			if tab == gradingKeys || k.name == "rows file" {
				continue // grading has tests of its own; rows stand in the file here
			}
			if isSection(tab) && isCommon(k.name) && len(tab.keys) > len(common) && k.form == text {
				continue // seen once, in the first section
			}
			if tab.find(k.name).need || !isSection(tab) || k.name != "to" {
				assert.True(t, seen[tab.title+"/"+tab.name+": "+k.name] || optional(tab, k.name), "%s: %s", tab.title, k.name)
			}
		}
	}
}

func isCommon(name string) bool {
	for _, c := range common {
		if c.name == name {
			return true
		}
	}
	return false
}

// optional are keys that stand in the file in a sister of the table.
func optional(tab *table, name string) bool {
	switch {
	case tab.name == "increase" || tab.name == "shaping":
		return sectionTable("decrease").find(name) != nil
	case tab.name == "decrease":
		return name == "panel" || name == "end after"
	case tab.name == "shape":
		return name == "end after"
	case tab.name == "leave" || tab.name == "hold":
		return sectionTable("bind off").find(name) != nil
	}
	return false
}

func sectionTable(name string) *table {
	for _, t := range sectionKinds() {
		if t.name == name {
			return t.table
		}
	}
	return nil
}

func TestEveryKeyIsInTheDocument(t *testing.T) {
	doc, err := os.ReadFile("format.md")
	require.NoError(t, err)
	for _, tab := range allTables() {
		for _, k := range tab.keys {
			said := strings.Contains(string(doc), "`"+k.name+"`") || strings.Contains(string(doc), "`"+k.name+":") ||
				strings.Contains(string(doc), "{"+k.name+":") || strings.Contains(string(doc), ", "+k.name+":")
			assert.True(t, said, "format.md does not tell of %q of %s", k.name, tab.title)
			for _, p := range k.pick {
				assert.Contains(t, string(doc), p, "format.md does not tell of %s: %s", k.name, p)
			}
		}
	}
}

func TestTheFullFileIsReadAsItStands(t *testing.T) {
	p, list := Pattern("full.yaml", full(t))
	require.Empty(t, list)
	assert.Equal(t, "Fennel Row", p.Title)
	assert.Equal(t, []int{1, 2, 2}, p.Sizes.Groups)
	assert.Equal(t, 2, p.Sample)
	assert.True(t, p.Children)
	assert.Equal(t, units.Frac(1, 2), p.Steps.Inch)

	bust := p.Bodies[0]
	assert.Equal(t, units.Inch, bust.Unit)
	assert.Equal(t, units.Of(units.Int(28), units.Inch), bust.Low.Vals[0])
	assert.Equal(t, units.Of(units.Int(46), units.Inch), bust.High.Vals[4])
	head := p.Bodies[1]
	assert.Equal(t, units.Int(540), head.Low.Vals[0])
	assert.Equal(t, units.Of(units.Frac(85, 4), units.Inch), head.Other.Vals[0])

	rib := p.GaugeNamed("rib")
	require.NotNil(t, rib)
	assert.True(t, rib.Rounds)
	assert.True(t, rib.Stretched)
	assert.Equal(t, units.Int(100), rib.Over, "4 in / 10 cm: the pattern's own unit governs")
	assert.Equal(t, "back-loop sc and sl st", rib.Stitch)

	body := p.PieceNamed("Body")
	assert.Equal(t, schematic.KindBody, body.Kind)
	assert.True(t, body.FirstWS)
	assert.True(t, body.FoldAt)
	assert.Equal(t, "hem", body.BeginEdge)
	pick := body.Sections[1].(*schematic.PickUp)
	assert.Equal(t, []int{1, 2, 1}, []int{pick.Short, pick.Tall, pick.Ends})
	even := body.Sections[3].(*schematic.Even)
	assert.Equal(t, units.Int(240), even.Length.Vals[4])
	assert.Equal(t, schematic.WrongSide, even.End)
	dec := body.Sections[4].(*schematic.Shape)
	assert.False(t, dec.Shapings[0].Times.Has[4])
	assert.Equal(t, 3, dec.Shapings[0].Offset)
	assert.Equal(t, expr.Counts(60, 60, 60, 60, 60), dec.Rows)
	rep := body.Sections[7].(*schematic.RepeatRow)
	assert.Equal(t, []int{3, 4}, []int{rep.Use, rep.Makes}, "2 in 1, 1 in each of 2 uses 3 and makes 4")
	panels := body.Sections[8].(*schematic.Panels)
	assert.Equal(t, expr.Counts(40, 42, 44, 46, 48), panels.Of[1].Stitches, "a line inside braces is put together again")
	div := body.Sections[10].(*schematic.Divide)
	require.Len(t, div.Parts, 6)
	assert.Equal(t, "Right front", div.Parts[5].MirrorOf)
	assert.True(t, div.Parts[3].Hold)

	panel := p.PieceNamed("Panel")
	assert.Equal(t, schematic.FromLeft, panel.From)
	assert.Equal(t, "shoulder", panel.LeftEdge, "the top is on the left of someone who works to the right")
	assert.Equal(t, schematic.KindBand, p.PieceNamed("Button band").Kind)
	assert.Equal(t, schematic.EdgeRate{Edge: "Body right front neck", Pick: 3, Of: 4, Rows: true, Pos: p.PieceNamed("Button band").Onto[0].Pos}, p.PieceNamed("Button band").Onto[0])
	assert.Equal(t, []string{"xx.", ".xx"}, p.PieceNamed("Lap").Motifs.Filled)
	assert.Equal(t, schematic.AtFold, p.Joins[2].How)
	assert.Equal(t, []int{3, 4}, []int{p.Joins[1].A, p.Joins[1].B})
	assert.Equal(t, "2 x Back panel width + 3 cm", p.Finished[1].Of)

	lines := finding.Lines(full(t))
	assert.Equal(t, "  Row 1 (RS): hdc across.", lines[p.RowsPos.Line-1])
	assert.Equal(t, 3, p.RowsPos.Col)
}
