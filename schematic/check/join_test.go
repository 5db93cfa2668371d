package check

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/given"
	"flatwright/schematic/units"
)

func seam(j schematic.Join, sew, into []schematic.Edge, make int) schematic.Seam {
	s := schematic.Seam{Join: &j, Sew: sew, Into: into}
	for _, e := range sew {
		s.SewLength, s.SewCount = s.SewLength.Add(e.Length.Times(make)), s.SewCount+(e.Stitches+e.Rows)*make
	}
	for _, e := range into {
		s.IntoLength, s.IntoCount = s.IntoLength.Add(e.Length), s.IntoCount+e.Stitches+e.Rows
	}
	return s
}

// At 1 cm a stitch and 0.5 cm a row (fabric): half of each is 0.5 and 0.25 cm.
func across(n int) schematic.Edge { return schematic.Edge{Stitches: n, Length: cm(int64(n), 1)} }

func along(n int) schematic.Edge { return schematic.Edge{Rows: n, Length: cm(int64(n), 2)} }

func TestTheTwoSidesOfASeam(t *testing.T) {
	edges := func(all ...schematic.Edge) []schematic.Edge { return all }
	for _, c := range []struct {
		name      string
		how       schematic.JoinHow
		a, b      int
		ease      units.Num
		seam      units.Num
		sew, into []schematic.Edge
		make      int
		want      string
	}{
		// Sleeve top 40 cm into two armholes of 20 cm: tolerance 0.5 + 2 x 0.25 = 1 cm.
		{name: "as long", sew: edges(across(40)), into: edges(along(40), along(40))},
		{name: "just within", sew: edges(across(41)), into: edges(along(40), along(40))},
		{name: "beyond", sew: edges(across(42)), into: edges(along(40), along(40)), want: "joins/length"},
		{name: "two sleeves", sew: edges(across(20)), into: edges(along(40), along(40)), make: 2},
		{name: "two sleeves beyond", sew: edges(across(22)), into: edges(along(40), along(40)), make: 2, want: "joins/length"},
		// A seam that takes 1 cm of each end: 40 - 2 = 38 against 42 - 4 = 38.
		{name: "what the seam takes", sew: edges(across(40)), into: edges(along(42), along(42)), seam: cm(1, 1)},
		{name: "without the seam it is too long", sew: edges(across(40)), into: edges(along(42), along(42)), want: "joins/length"},
		{name: "stitch to stitch", how: schematic.StitchToStitch, sew: edges(across(40)), into: edges(across(20), across(20))},
		{name: "one stitch too many", how: schematic.StitchToStitch, sew: edges(across(41)), into: edges(across(40)), want: "joins/count"},
		// Common practice, 3 stitches to 4 rows: 60 to 80; a remainder of less than a repeat is left over.
		{name: "3 to 4", how: schematic.RowsToStitches, a: 3, b: 4, sew: edges(across(60)), into: edges(along(80))},
		{name: "3 to 4, rows first", how: schematic.RowsToStitches, a: 3, b: 4, sew: edges(along(80)), into: edges(across(60))},
		{name: "3 to 4, some over", how: schematic.RowsToStitches, a: 3, b: 4, sew: edges(across(62)), into: edges(along(80))},
		{name: "3 to 4, a repeat over", how: schematic.RowsToStitches, a: 3, b: 4, sew: edges(across(63)), into: edges(along(80)), want: "joins/rate"},
		{name: "eased", how: schematic.Eased, ease: cm(2, 1), sew: edges(across(42)), into: edges(along(80))},
		{name: "not eased enough", how: schematic.Eased, ease: cm(2, 1), sew: edges(across(44)), into: edges(along(80)), want: "joins/ease"},
		{name: "gathered", how: schematic.Gathered, sew: edges(across(60)), into: edges(across(40))},
		{name: "nothing to gather", how: schematic.Gathered, sew: edges(across(38)), into: edges(across(40)), want: "joins/gather"},
		{name: "at a fold", how: schematic.AtFold, sew: edges(across(60)), into: edges(across(60))},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := pattern("S")
			g := &schematic.Garment{Pattern: p, Size: "S"}
			j := schematic.Join{Sew: []string{"Sleeve top"}, Into: []string{"Back armhole", "Front armhole"}, How: c.how, A: c.a, B: c.b, Seam: c.seam, Ease: expr.Of(c.ease)}
			g.Seams = []schematic.Seam{seam(j, c.sew, c.into, max(1, c.make))}
			got := Pattern(p, []*schematic.Garment{g})
			if c.want == "" {
				assert.Empty(t, got)
			} else {
				assert.Equal(t, []string{c.want}, kinds(got))
			}
		})
	}
}

func TestAFindingOfASeamTellsBothLengths(t *testing.T) {
	p := pattern("S", "M")
	var gs []*schematic.Garment
	for i, n := range []int{40, 44} {
		g := &schematic.Garment{Pattern: p, Size: p.Sizes.Names[i], Index: i}
		j := schematic.Join{Sew: []string{"Sleeve top"}, Into: []string{"Body armhole"}}
		g.Seams = []schematic.Seam{seam(j, []schematic.Edge{across(n)}, []schematic.Edge{along(80)}, 1)}
		gs = append(gs, g)
	}
	got := Pattern(p, gs)
	assert.Len(t, got, 1)
	assert.Equal(t, []string{"M"}, got[0].Sizes)
	assert.Equal(t, "Sleeve top is 44 cm, Body armhole is 40 cm", got[0].Have)
	assert.Equal(t, "the same length, give or take 0.75 cm: half a stitch or row of each edge", got[0].Want)
	assert.Equal(t, "lengthen Body armhole by 4 cm, or say how the seam is made (`eased by`, `gathered`)", got[0].Fix)
}

// A cap of 36 cm into 40 cm of armhole, with 2 cm to ease in: it lacks 6 cm, and no ease is less than none.
func TestAnEdgeShorterThanThatItIsEasedIntoIsToBeLengthened(t *testing.T) {
	p := pattern("S")
	g := &schematic.Garment{Pattern: p, Size: "S"}
	for n, fix := range map[int]string{36: "lengthen Sleeve cap by 6 cm: the edge that is eased in must be the longer one", 48: "state an ease of 8 cm, or change a count"} {
		j := schematic.Join{Sew: []string{"Sleeve cap"}, Into: []string{"Armhole"}, How: schematic.Eased, Ease: expr.Of(cm(2, 1))}
		g.Seams = []schematic.Seam{seam(j, []schematic.Edge{across(n)}, []schematic.Edge{across(40)}, 1)}
		got := Pattern(p, []*schematic.Garment{g})
		assert.Len(t, got, 1)
		assert.Equal(t, fix, got[0].Fix)
	}
}

func TestAFindingOfASeamTellsHowManyPiecesAreCounted(t *testing.T) {
	p := pattern("S")
	for _, how := range []schematic.JoinHow{schematic.AsLong, schematic.StitchToStitch} {
		g := &schematic.Garment{Pattern: p, Size: "S"}
		s := seam(schematic.Join{Sew: []string{"Sleeve top"}, Into: []string{"Body slot"}, How: how}, []schematic.Edge{across(20)}, []schematic.Edge{across(20)}, 2)
		s.SewOf = "all 2 to make"
		g.Seams = []schematic.Seam{s}
		got := Pattern(p, []*schematic.Garment{g})
		assert.Len(t, got, 1)
		assert.Contains(t, got[0].Have, "Sleeve top (all 2 to make)")
		assert.NotContains(t, got[0].Have, "Body slot (")
	}
}

func TestEndsAreAsManyAsTheirPlaces(t *testing.T) {
	g := &schematic.Garment{Size: "M", Pattern: &schematic.Pattern{}}
	s := seam(schematic.Join{How: schematic.InPlaces, Places: 4, Sew: []string{"Handle end"}, Into: []string{"Bag rim"}}, []schematic.Edge{across(6), across(6)}, []schematic.Edge{across(60)}, 2)
	s.SewPieces = 4
	assert.Empty(t, join(g, &s), "two handles have four ends")
	s.SewPieces = 2
	found := join(g, &s)
	assert.Len(t, found, 1)
	assert.Equal(t, "joins/places", found[0].Kind)
	assert.Equal(t, "2 ends: Handle end", found[0].Have)
}

const halves = `
version: 1
pattern: Waistcoat
terms: US
units: cm
sizes: M
gauges:
  fabric: 20 sts and 25 rows over 10 cm in hdc
  rib: 20 sts and 40 rows over 10 cm in sc
pieces:
  - piece: Back
    sections:
      - {cast on: 80, gauge: rib}
      - {even: 20 rows}
      - {even: 50 rows, gauge: fabric}
      - {bind off: 5, at: both edges, edge: armhole}
      - {even: 40 rows}
      - divide:
          - part: Right shoulder
            stitches: 20
            sections:
              - {bind off: all, edge: shoulder}
          - {bind off: 30, edge: neck}
          - part: Left shoulder
            stitches: 20
            sections:
              - {bind off: all, edge: shoulder}
  - piece: Right front
    right edge: front edge
    sections:
      - {cast on: 40, gauge: rib}
      - {even: 20 rows}
      - {even: 51 rows, gauge: fabric}
      - {bind off: 5, at: left edge, edge: armhole}
      - {even: 20 rows}
      - {decrease: 1, at: right edge, times: 15, edge: neck}
      - {even: 6 rows}
      - {bind off: all, edge: shoulder}
  - piece: Left front
    mirror of: Right front
joins:
  - {sew: Right front side, to: Back side}
  - {sew: Left front side, to: Back side}
  - {sew: Right front shoulder, to: Back right shoulder}
  - {sew: Back shoulder, to: Left front shoulder}
`

// Common practice: a right front is sewn to the right side of a back. It is bound off at the beginning of a wrong-side row, one row (4 mm) after the
// back: half a row of each edge, though the rows of its rib are lower.
func TestAFrontIsSewnToItsSideOfTheBack(t *testing.T) {
	p := given.Text(t, halves)
	gs := bysize.WorkAll(p)
	assert.Empty(t, Pattern(p, gs))
	for i, want := range []int{250, 250, 100, 100} { // 20 rows of 2.5 mm and 50 of 4 mm; 20 sts of 5 mm
		s := gs[0].Seams[i]
		back := s.IntoLength
		if i == 3 {
			back = s.SewLength
		}
		assert.Equal(t, int64(want), back.Round(), "%v", s.Join.Sew)
	}
}

// 15 sts of 5 mm at each side are 75 mm, as are the 15 of each half of the front: the two rows in which a back binds its shoulders off lie between
// shoulder and neck, and are sewn to nothing (common practice).
func TestShouldersBoundOffAtBothEdgesAreAsLongAsTheirStitches(t *testing.T) {
	p := given.Text(t, `
version: 1
pattern: Slipover
terms: US
units: cm
sizes: M
gauges:
  fabric: 20 sts and 20 rows over 10 cm in hdc
pieces:
  - piece: Back
    sections:
      - {cast on: 60}
      - {even: 100 rows}
      - {bind off: 15, at: both edges, edge: shoulder}
      - {bind off: all, edge: neck}
  - piece: Front
    sections:
      - {cast on: 60}
      - {even: 100 rows}
      - divide:
          - part: Left half
            stitches: 15
            sections: [{bind off: all, edge: shoulder}]
          - {bind off: 30, edge: neck}
          - part: Right half
            stitches: 15
            sections: [{bind off: all, edge: shoulder}]
joins:
  - {sew: Front shoulder, to: Back shoulder}
`)
	gs := bysize.WorkAll(p)
	assert.Empty(t, Pattern(p, gs))
	assert.Equal(t, int64(150), gs[0].Seams[0].IntoLength.Round())
}

// Two sleeves have four raglans, a back and a front two each: told in two joins, a raglan of each sleeve goes to the back and one to the front. 20 rows of
// 0.5 cm against 24: 2 raglans of 10 cm are 20 cm, and of 12 cm 24.
func TestOneEdgeOfEachSleeveIsSewnToTheBackAndOneToTheFront(t *testing.T) {
	const raglan = `version: 1
pattern: Raglan
terms: UK
units: cm
sizes: S
gauges:
  fabric: 10 sts and 20 rows over 10 cm
pieces:
  - {piece: Back, sections: [{cast on: 60}, {even: 20 rows}, {even: 20 rows, left edge: raglan, right edge: raglan}, {bind off: all}]}
  - {piece: Front, sections: [{cast on: 60}, {even: 20 rows}, {even: 20 rows, left edge: raglan, right edge: raglan}, {bind off: all}]}
  - {piece: Sleeve, make: 2, sections: [{cast on: 40}, {even: 20 rows}, {even: 20 rows, left edge: raglan, right edge: raglan}, {bind off: all}]}
joins:
  - {sew: Sleeve raglan, to: Back raglan}
  - {sew: Front raglan, to: Sleeve raglan}
`
	lengths := func(from, to string) []string {
		p := given.Text(t, strings.Replace(raglan, from, to, 1))
		var out []string
		for _, f := range Pattern(p, bysize.WorkAll(p)) {
			if f.Kind == "joins/length" {
				out = append(out, f.Message)
			}
		}
		return out
	}
	assert.Empty(t, lengths("", ""))
	assert.Equal(t, []string{"Front raglan and Sleeve raglan are sewn together and differ in length"}, lengths("{piece: Front, sections: [{cast on: 60}, {even: 20 rows}, {even: 20 rows", "{piece: Front, sections: [{cast on: 60}, {even: 20 rows}, {even: 24 rows"))
}
