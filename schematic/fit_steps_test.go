package schematic_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/alter"
	"flatwright/schematic/expr"
	"flatwright/schematic/given"
)

// backAt is a back of these sections, 20 stitches and 26 rows over 10 cm, at another gauge.
func backAt(t testing.TB, sections string, sts, rows int64, tells ...string) *alter.Altered {
	path := filepath.Join(t.TempDir(), "p.yaml")
	require.NoError(t, os.WriteFile(path, []byte("version: 1\npattern: P\nterms: US\nunits: cm\nsizes: one\ngauges:\n  fabric: 20 sts and 26 rows over 10 cm in moss stitch\npieces:\n  - piece: Back\n    sections:\n"+sections), 0o600))
	a, found := alter.Alter(given.File(t, path), alter.Request{Gauges: gaugeOf(sts, rows)})
	require.NotNil(t, a, "%v", found)
	for _, text := range tells {
		assert.Contains(t, fmt.Sprint(found), text)
	}
	return a
}

// stepsOf are the stitches and the times of each bind-off of a piece but the last.
func stepsOf(a *alter.Altered) (out [][2]int) {
	for _, s := range a.Pattern.Pieces[0].Sections {
		if b, ok := s.(*schematic.BindOff); ok && !b.All {
			out = append(out, [2]int{b.Stitches.Int(0, 0), b.Times.Int(0, 1)})
		}
	}
	return out
}

func TestStepsOfAShoulderTakeUpItsWidthAndItsHeight(t *testing.T) {
	const back = `
      - cast on: 80
      - even: 40 rows
      - {bind off: 6, at: both edges, every: 2 rows, times: 3, edge: shoulder}
      - {bind off: all, edge: neck}
`
	// By hand: 80 × 19/20 = 76; a shoulder of 18 × 19/20 = 17.1, so 17, in three steps of 6, 6 and 5; the neck
	// 76 − 34 = 42, where 44 × 19/20 = 41.8.
	a := backAt(t, back, 19, 26, "bind off 6 sts at a time 2 times, then 5 sts once")
	assert.Equal(t, [][2]int{{6, 2}, {5, 1}}, stepsOf(a))
	done := a.Now.Pieces[0].Steps
	assert.Equal(t, 42, done[len(done)-1].Before)
	assert.Equal(t, 47, done[len(done)-1].FirstRow) // after 40 + 3 × 2
	var told []string
	for _, c := range a.Changes {
		if c.Dim == expr.Stitches {
			told = append(told, c.Was.String()+" "+c.Now.String())
		}
	}
	assert.Equal(t, []string{"80 76", "80 76", "44 42"}, told) // the two that came of one stand as one
	// 6 rows × 35/26 = 8.08: four steps of 2 rows. 18 stitches in four steps are 5, 5, 4 and 4.
	assert.Equal(t, [][2]int{{5, 2}, {4, 2}}, stepsOf(backAt(t, back, 20, 35)))
	assert.Equal(t, [][2]int{{6, 3}}, stepsOf(backAt(t, back, 20, 26)))
}

func TestStitchesLeftInTurnAreRoundedAsOne(t *testing.T) {
	// By hand: 4 × 18/20 = 3.6, so 4; 8 × 18/20 − 4 = 3.2, so 3; 12 × 18/20 − 7 = 3.8, so 4: 11 in all, and not three times 4.
	a := backAt(t, `
      - cast on: 80
      - even: 40 rows
      - {leave: 4, at: both edges}
      - {leave: 4, at: both edges}
      - {leave: 4, at: both edges}
      - {bind off: all, edge: neck}
`, 18, 26)
	assert.Equal(t, [][2]int{{4, 1}, {3, 1}, {4, 1}}, stepsOf(a))
}

func TestWhatAcrossTheRowDoesNotDivideIsPartedBetweenTwoKindsOfRow(t *testing.T) {
	// By hand: 100 × 19/20 = 95, 60 × 19/20 = 57; 38 stitches in 10 rows are 8 rows of 4 and 2 of 3, every 6 rows as published.
	a := backAt(t, `
      - cast on: 100
      - even: 10 rows
      - {decrease: 4, at: across, every: 6 rows, times: 10}
      - bind off: all
`, 19, 26, "decrease 4 sts across the row 8 times, then 3 sts 2 times")
	s, ok := a.Pattern.Pieces[0].Sections[2].(*schematic.Shape)
	require.True(t, ok)
	var got [][4]int
	for _, h := range s.Shapings {
		got = append(got, [4]int{h.By.Int(0, 0), h.Every.Int(0, 0), h.Times.Int(0, 0), h.Offset})
	}
	assert.Equal(t, [][4]int{{4, 6, 8, 0}, {3, 6, 2, 48}}, got)
	assert.Equal(t, 57, a.Now.Pieces[0].Steps[2].After)
}

func TestWhatComesAfterStepsStandsOnThem(t *testing.T) {
	const back = `
      - cast on: 80
      - even: 40 rows
      - {bind off: 6, at: both edges, every: 2 rows, times: 3}
      - even: 20 rows
      - {decrease: 2, at: across, every: 5 rows, times: 4}
      - bind off: all
`
	// By hand: 42 stitches after the steps (above); 36 × 19/20 = 34.2, so 34: 8 fewer, 2 at a time, 4 times.
	n := backAt(t, back, 19, 26).Pattern.Pieces[0].Sections
	s, ok := n[len(n)-2].(*schematic.Shape)
	require.True(t, ok)
	assert.Equal(t, [2]int{2, 4}, [2]int{s.Shapings[0].By.Int(0, 0), s.Shapings[0].Times.Int(0, 0)})
	// 40 rows × 35/26 = 53.8, so 54; steps of 8 rows, so 62; 66 × 35/26 = 88.8, less 62: 27.
	n = backAt(t, back, 20, 35).Pattern.Pieces[0].Sections
	e, ok := n[len(n)-3].(*schematic.Even)
	require.True(t, ok)
	assert.Equal(t, 27, e.Rows.Int(0, 0))
}

func TestStitchesLeftInStepsTakeUpTheirWidth(t *testing.T) {
	// Three fours at each edge are 12, × 18/20 = 10.8, so 11: 4, 4 and 3, with 2 rows between each two of them, 4 in all.
	a := backAt(t, `
      - cast on: 80
      - even: 40 rows
      - {leave: 4, at: both edges, every: 2 rows, times: 3}
      - {bind off: all, edge: neck}
`, 18, 26, "leave 4 sts at a time 2 times, then 3 sts once")
	assert.Equal(t, [][2]int{{4, 2}, {3, 1}}, stepsOf(a))
	rows := 0
	for _, s := range a.Now.Pieces[0].Steps[2:] {
		rows += s.Rows
	}
	assert.Equal(t, 4, rows)
}

func TestAnOddRoundGoesToTheFrontOrTheBack(t *testing.T) {
	// By hand: 104 × 21/20 = 109.2, of it 44 × 21/20 = 46.2 to each half and 8 × 21/20 = 8.4 under each arm. Alike, the round is 108 or 110;
	// with one stitch more in one half it is 109 = 47 + 8 + 46 + 8.
	a := backAt(t, `
      - cast on: 104
      - even: 20 rows
      - divide:
          - {part: Front, stitches: 44, sections: [{even: 8 rows}, {bind off: all}]}
          - bind off: 8
          - {part: Back, stitches: 44, sections: [{even: 8 rows}, {bind off: all}]}
          - bind off: 8
`, 21, 26, "Front has one stitch more than its other half, so that the count comes out")
	d, ok := a.Pattern.Pieces[0].Sections[2].(*schematic.Divide)
	require.True(t, ok)
	var got []int
	for _, p := range d.Parts {
		got = append(got, p.Stitches.Int(0, 0))
	}
	assert.Equal(t, []int{47, 8, 46, 8}, got)
	assert.Equal(t, 109, a.Now.Pieces[0].Steps[0].After)
}
