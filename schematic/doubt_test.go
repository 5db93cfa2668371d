package schematic

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic/finding"
)

// at is a place in a file, so that findings can be told apart.
func at(line int) finding.Pos { return finding.Pos{Line: line, Col: 1} }

func toldAt(g *Garment) []string {
	all := []string{}
	for _, f := range g.Findings {
		all = append(all, fmt.Sprintf("%d %s", f.Pos.Line, f.Kind))
	}
	return all
}

func on(line int) Common { return Common{Pos: at(line)} }

func until(line, to int) Common { return Common{Pos: at(line), To: n(to)} }

func decrease(c Common, times int, side RowSide) *Shape {
	return &Shape{Common: c, Shapings: []Shaping{{By: n(1), At: BothEdges, Every: n(2), Times: n(times), On: side, Pos: c.Pos, Offset: 1}}}
}

// 40 stitches; 30 decreases at both edges would take 60.
func TestWhatFollowsFromAnErrorIsNotToldAndWhatDoesNotIs(t *testing.T) {
	part := func(sections ...Section) Part {
		return Part{Name: "Left", Stitches: n(15), Sections: sections, Pos: at(50)}
	}
	for _, c := range []struct {
		name     string
		sections []Section
		want     []string
	}{
		{"a count in doubt is not held against what is taken from it", []Section{
			decrease(on(2), 30, AnyRow),
			&BindOff{Common: on(3), Stitches: n(70), At: BothEdges},
			&RepeatRow{Common: on(4), Use: 7, Makes: 8},
			decrease(on(5), 40, AnyRow),
		}, []string{"2 arithmetic/impossible"}},
		{"the count stated holds from there on", []Section{
			decrease(until(2, 30), 30, AnyRow),
			decrease(on(3), 16, AnyRow),
		}, []string{"2 arithmetic/impossible", "3 arithmetic/impossible"}},
		{"the count stated later holds from there on", []Section{
			decrease(on(2), 30, AnyRow),
			&Even{Common: until(3, 30), Amount: Amount{Rows: n(2)}},
			decrease(until(4, 20), 3, AnyRow),
		}, []string{"2 arithmetic/impossible", "4 arithmetic/count"}},
		{"a side of the work does not depend on counts", []Section{
			&BindOff{Common: on(2), Stitches: n(21), At: BothEdges},
			&Shape{Common: on(3), Shapings: []Shaping{{By: n(1), At: BothEdges, Every: n(3), Times: n(2), On: RightSide, Pos: on(3).Pos}}},
		}, []string{"2 arithmetic/impossible", "3 arithmetic/row-side"}},
		{"rows do not depend on counts", []Section{
			decrease(on(2), 30, AnyRow),
			&Shape{Common: on(3), Shapings: decrease(on(3), 9, AnyRow).Shapings, Amount: Amount{Rows: n(4)}},
		}, []string{"2 arithmetic/impossible", "3 arithmetic/shaping-rows"}},
		{"a division states the counts of its parts", []Section{
			decrease(on(2), 30, AnyRow),
			&Divide{Common: on(3), Parts: []Part{part(decrease(on(4), 20, AnyRow)), {Name: "Right", Stitches: n(15), MirrorOf: "Left"}}},
		}, []string{"2 arithmetic/impossible", "4 arithmetic/impossible"}},
		{"panels state the counts of the row", []Section{
			decrease(on(2), 30, AnyRow),
			&Panels{Common: on(3), Of: []Panel{{Name: "a", Stitches: n(10)}, {Name: "b", Stitches: n(20)}}},
			&BindOff{Common: on(4), Stitches: n(31), At: LeftEdge, Leave: true},
		}, []string{"2 arithmetic/impossible", "4 arithmetic/impossible"}},
		{"rows after the last one are looked at all the same", []Section{
			&BindOff{Common: on(2), All: true},
			&Even{Common: on(3), Amount: Amount{Rows: n(3)}},
			decrease(on(4), 30, RightSide),
			&Shape{Common: on(5), Shapings: decrease(on(5), 9, AnyRow).Shapings, Amount: Amount{Rows: n(4)}},
			&Divide{Common: on(6), Parts: []Part{part(decrease(on(7), 20, AnyRow))}},
		}, []string{"3 arithmetic/start", "5 arithmetic/shaping-rows", "7 arithmetic/impossible"}},
		{"parts that can't be joined", []Section{
			&Divide{Common: on(2), Parts: []Part{
				part(&BindOff{Common: on(3), All: true}),
				{Name: "Right", Stitches: n(25), Sections: []Section{&Even{Common: on(4), Amount: Amount{Rows: n(2)}}}},
			}},
			&JoinParts{Common: on(5), Of: []JoinPart{{Part: "Left", Pos: at(6)}, {Part: "Right", Pos: at(7)}}},
			&RepeatRow{Common: on(8), Use: 7, Makes: 8},
			&Even{Common: until(9, 40), Amount: Amount{Rows: n(2)}},
			&RepeatRow{Common: on(10), Use: 7, Makes: 8},
		}, []string{"6 arithmetic/join", "10 arithmetic/multiple"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := Work(plain(&Piece{Name: "Back", Sections: append([]Section{&CastOn{Stitches: n(40), Common: on(1)}}, c.sections...)}), 0)
			assert.Equal(t, c.want, toldAt(g))
		})
	}
}

// A round has no edge: its stitches are added and taken all the same, and the count is known.
func TestStitchesGivenToAnEdgeThatARoundHasNotAreCounted(t *testing.T) {
	tube := func(parts ...Part) *Garment {
		return Work(plain(&Piece{Name: "Cowl", Round: true, Sections: []Section{
			&CastOn{Stitches: n(40)}, &Even{Amount: Amount{Rows: n(2)}},
			&AddEdge{Common: on(3), Stitches: n(10), At: RightEdge},
			&BindOff{Common: on(4), Stitches: n(4), At: LeftEdge},
			&Divide{Common: on(5), Parts: parts},
		}}), 0)
	}
	want := []string{"3 arithmetic/round", "4 arithmetic/round"}
	assert.Equal(t, want, toldAt(tube(Part{Name: "a", Stitches: n(20)}, Part{Name: "b", Stitches: n(26)})))
	assert.Equal(t, append(want, "5 arithmetic/division"), toldAt(tube(Part{Name: "a", Stitches: n(20)}, Part{Name: "b", Stitches: n(20)})))
}

// The yoke takes stitches of two parts: those of one follow from an error, those of the other do not.
func TestWhatStartsFromACountInDoubtDoesNotTellItAgain(t *testing.T) {
	body := &Piece{Name: "Body", Sections: []Section{
		&CastOn{Stitches: n(40)},
		&Divide{Parts: []Part{
			{Name: "Left", Stitches: n(20), Sections: []Section{decrease(on(3), 15, AnyRow)}},
			{Name: "Right", Stitches: n(20), Sections: []Section{&Even{Amount: Amount{Rows: n(2)}}}},
		}},
	}}
	from := func(part string, stated int) *Piece {
		p := HeldPart{Piece: "Body", Part: part, Pos: at(9)}
		if stated > 0 {
			p.Stitches = n(stated)
		}
		return &Piece{Name: "On " + part, Sections: []Section{
			&Held{Common: on(8), From: []HeldPart{p}},
			&RepeatRow{Common: on(10), Use: 7, Makes: 8},
		}}
	}
	for _, c := range []struct {
		part   string
		stated int
		want   []string
	}{
		{"Left", 0, []string{"3 arithmetic/impossible"}},
		{"Left", 14, []string{"3 arithmetic/impossible"}},
		{"Left", 15, []string{"3 arithmetic/impossible", "10 arithmetic/multiple"}},
		{"Right", 0, []string{"3 arithmetic/impossible", "10 arithmetic/multiple"}},
		{"Right", 21, []string{"3 arithmetic/impossible", "9 arithmetic/held"}},
	} {
		t.Run(fmt.Sprint(c.part, c.stated), func(t *testing.T) {
			assert.Equal(t, c.want, toldAt(Work(plain(body, from(c.part, c.stated)), 0)))
		})
	}
}

func TestMeasurementsBeforeAnErrorAreNotInDoubt(t *testing.T) {
	m := Work(plain(&Piece{Name: "Back", Kind: KindBack, Sections: []Section{
		&CastOn{Stitches: n(40)}, &Even{Amount: Amount{Rows: n(20)}},
		&Shape{Common: on(2), Shapings: []Shaping{{By: n(1), At: BothEdges, Every: n(1), Times: n(30), Edge: "armhole"}}},
		&Even{Amount: Amount{Rows: n(10)}},
		&BindOff{All: true},
	}}), 0).Pieces[0]
	require.True(t, m.Broken)
	require.False(t, m.Cut)
	assert.False(t, find(t, m, "back.width-at-hem").Doubt)
	assert.False(t, find(t, m, "back.side-length.left").Doubt)
	assert.False(t, find(t, m, "back.length").Doubt, "its rows are as stated")
	assert.True(t, find(t, m, "back.armhole-depth.left").Doubt)
	for _, e := range m.Edges {
		assert.Equal(t, e.Name == "top" || e.Name == "armhole", e.Doubt, e.Name)
	}
	cut := Work(plain(&Piece{Name: "Back", Sections: []Section{
		&CastOn{Stitches: n(40)}, &Even{Amount: Amount{Rows: n(20)}}, &BindOff{All: true}, &Even{Amount: Amount{Rows: n(2)}},
	}}), 0).Pieces[0]
	require.True(t, cut.Cut)
	assert.True(t, find(t, cut, "back.length").Doubt)
	assert.Len(t, cut.Views, 1, "what can't be there is not drawn")
}

// Two faults in two places, of two parts that have nothing to do with each other: whatever the one is,
// the other is told in the same run.
func TestOfTwoFaultsApartBothAreTold(t *testing.T) {
	faults := map[string]func(line int) Section{
		"taken":    func(l int) Section { return &BindOff{Common: on(l), Stitches: n(50), At: BothEdges} },
		"shaped":   func(l int) Section { return decrease(on(l), 30, AnyRow) },
		"multiple": func(l int) Section { return &RepeatRow{Common: on(l), Use: 7, Makes: 8} },
		"nothing":  func(l int) Section { return &RepeatRow{Common: on(l), Use: 1, Makes: 0} },
		"lines": func(l int) Section {
			return &Shape{Common: on(l), Shapings: []Shaping{{By: n(1), At: Lines, Every: n(2), Times: n(2), Pos: at(l)}}}
		},
		"joined": func(l int) Section { return &JoinParts{Common: on(l), Of: []JoinPart{{Part: "none", Pos: at(l)}}} },
		"picked": func(l int) Section { return &PickUp{Common: on(l), Pick: 1, Of: 1} },
		"mitre":  func(l int) Section { return &Mitre{Common: on(l)} },
		"rows": func(l int) Section {
			return &Shape{Common: on(l), Shapings: decrease(on(l), 3, AnyRow).Shapings, Amount: Amount{Rows: n(2)}}
		},
	}
	rapid.Check(t, func(t *rapid.T) {
		names := sortedKeys(faults)
		a, b := rapid.SampledFrom(names).Draw(t, "first"), rapid.SampledFrom(names).Draw(t, "second")
		even := &Even{Amount: Amount{Rows: n(2)}}
		// Of one part and another, or one after the other with the count stated between them.
		sections := []Section{&CastOn{Stitches: n(40)}, &Divide{Parts: []Part{
			{Name: "Left", Stitches: n(20), Sections: []Section{even, faults[a](3), even}},
			{Name: "Right", Stitches: n(20), Sections: []Section{even, faults[b](7), even}},
		}}}
		if rapid.Bool().Draw(t, "in turn") {
			sections = []Section{&CastOn{Stitches: n(20)}, even, faults[a](3),
				&Divide{Parts: []Part{{Name: "Left", Stitches: n(20), Sections: []Section{even, faults[b](7)}}, {Name: "Right", Stitches: n(4), Leave: true}}}}
			if a == "multiple" || a == "rows" {
				t.Skip("no error: the division is held against it")
			}
		}
		lines := map[int]int{}
		for _, f := range Work(plain(&Piece{Name: "Back", Sections: sections}), 0).Findings {
			lines[f.Pos.Line]++
		}
		assert.Equal(t, map[int]int{3: 1, 7: 1}, lines)
	})
}
