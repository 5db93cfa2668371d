package alter_test

import (
	"fmt"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/alter"
	"flatwright/schematic/check"
	"flatwright/schematic/finding"
	"flatwright/schematic/given"
	"flatwright/schematic/long"
	"flatwright/schematic/units"
)

// sweep counts what came of many alterations.
type sweep struct {
	asked, refused, contradict, unlike, untold int
	measured, off                              int
	ruled                                      int // of those off, told with the rule that stands in the way: rows or steps in twos, a multiple, panels alike
	say                                        func(format string, args ...any)
}

func (s *sweep) String() string {
	return fmt.Sprintf("%d alterations: %d refused, %d contradict themselves, %d joins unlike; %d of %d measurements off by more than half a stitch or row (%.1f %% within); %d of these told with the rule that stands in the way",
		s.asked, s.refused, s.contradict, s.unlike, s.off, s.measured, 100-100*float64(s.off)/float64(max(1, s.measured)), s.ruled)
}

// alter makes one alteration and counts. lengths says that heights change on purpose.
func (s *sweep) alter(what string, p *schematic.Pattern, r alter.Request, lengths bool) {
	s.asked++
	a, found := alter.Alter(p, r)
	if a == nil {
		s.refused++
		s.say("%s: refused: %v", what, errors(found))
		return
	}
	seen := map[string]bool{}
	for _, f := range append(slices.Clone(a.Was.Findings), check.Pattern(a.Before, []*schematic.Garment{a.Was})...) {
		seen[f.Kind+f.Piece] = true
	}
	bad := false
	for _, f := range check.Pattern(a.Pattern, []*schematic.Garment{schematic.Work(a.Pattern, 0)}) {
		if strings.HasPrefix(f.Kind, "arithmetic/") && f.Severity != finding.Note && !seen[f.Kind+f.Piece] {
			bad = true
			s.say("%s: %s: %s (%s / %s)", what, f.Piece, f.Message, f.Have, f.Want)
		}
	}
	if bad {
		s.contradict++
	}
	for _, was := range a.Was.Seams {
		for _, now := range a.Now.Seams {
			slack := units.Num{} // exactly, but to a stitch or row where rows meet stitches
			if (now.Sew[0].Rows > now.Sew[0].Stitches) != (now.Into[0].Rows > now.Into[0].Stitches) {
				slack = units.Max(a.Pattern.Gauges[0].StitchWidth(), a.Pattern.Gauges[0].RowHeight())
			}
			if was.Number == now.Number && was.SewLength.Eq(was.IntoLength) && slack.Less(now.SewLength.Sub(now.IntoLength).Abs()) {
				s.unlike++
				s.say("%s: %v and %v are %s and %s mm", what, now.Join.Sew, now.Join.Into, units.Decimal(now.SewLength, 1), units.Decimal(now.IntoLength, 1))
			}
		}
	}
	told := ""
	for _, f := range found {
		told += f.Piece + " " + f.Message + "\n"
	}
	for k, m := range a.Now.Pieces {
		asked := a.Was.Pieces[k]
		size, ok := r.Parts[m.Name]
		if other, mirrored := r.Parts[m.Piece.MirrorOf]; mirrored {
			size, ok = other, true
		}
		if ok { // asked for as it is published in that size
			asked = schematic.Work(p, size).Pieces[k]
		}
		old := map[string]schematic.Measure{}
		for _, v := range asked.Measures {
			old[v.ID] = v
		}
		for _, v := range m.Measures {
			was, ok := old[v.ID]
			if !ok || lengths && (v.Axis != schematic.Horizontal || m.Kind == schematic.KindBand) {
				continue
			}
			s.measured++
			unit := units.Max(a.Pattern.Gauges[0].StitchWidth(), a.Pattern.Gauges[0].RowHeight())
			switch {
			case v.Gauge != nil && v.Of == "st":
				unit = v.Gauge.StitchWidth()
			case v.Gauge != nil && v.Of == "row":
				unit = v.Gauge.RowHeight()
			}
			if unit.Half().Add(units.Frac(1, 1000)).Less(v.Length.Sub(was.Length).Abs()) {
				s.off++
				is, before := p.Steps.Both(v.Length, p.Units), p.Steps.Both(was.Length, p.Units)
				ruled := ""
				if text := "is " + is + ", not " + before; ruledOut(found, m.Name, text, v.Length.Sub(was.Length).Abs().Div(unit)) {
					s.ruled++
					ruled = " (by its rule)"
				}
				if !lengths && is != before && !strings.Contains(told, "is "+is+", not "+before) {
					s.untold++
					s.say("%s: %s is %s, not %s: untold in %s", what, m.Name, is, before, told)
				}
				s.say("%s: %s %s is %s, was %s: %s units%s", what, m.Name, v.Name, units.Decimal(v.Length, 1), units.Decimal(was.Length, 1), units.Decimal(v.Length.Sub(was.Length).Div(unit), 2), ruled)
			}
		}
	}
}

var rule = regexp.MustCompile(`(?: go by| take|a multiple of|in steps of) (\d+)`)

// ruledOut reports whether a measurement that gives is told with a rule as its cause, and is the nearest that the rule allows, or as near: by off
// stitches or rows.
func ruledOut(found finding.List, piece, text string, off units.Num) bool {
	return slices.ContainsFunc(found, func(f finding.Finding) bool {
		if f.Piece != piece || !strings.Contains(f.Message, text) {
			return false
		}
		if strings.Contains(f.Message, "every panel begins") {
			return true
		}
		m := rule.FindStringSubmatch(f.Message)
		if m == nil {
			return false
		}
		step, err := strconv.Atoi(m[1])
		return err == nil && !units.Int(int64(step)).Half().Add(units.Frac(1, 1000)).Less(off)
	})
}

// ratios are the gauges of a sweep: stitches and rows by so many hundredths.
var ratios = [][2]int64{{95, 95}, {110, 110}, {90, 100}, {100, 115}, {80, 85}, {130, 120}}

// all sweeps one pattern, the nth of its set: six gauges in up to six sizes, lengths, another size for one part.
// A search works the garment hundreds of times: only the long tests ask for every gauge in every size, the others
// for one size a pattern, and there for each pattern another gauge and another length.
func (s *sweep) all(p *schematic.Pattern, nth int) {
	for i := range p.Sizes.Names[:min(6, p.Sizes.Len())] {
		what := p.Title + " " + p.Sizes.Names[i]
		for k, by := range ratios {
			if !long.Some(nth+k+len(ratios)*i, len(ratios)*2) {
				continue
			}
			var mine []schematic.Gauge
			for _, g := range p.Gauges {
				g.Stitches, g.Rows = g.Stitches.Mul(units.Frac(by[0], 100)), g.Rows.Mul(units.Frac(by[1], 100))
				mine = append(mine, g)
			}
			s.alter(fmt.Sprintf("%s %v", what, by), p, alter.Request{Size: i, Gauges: mine}, false)
		}
		for k, mm := range []int64{25, -30, 54} {
			if !long.Some(nth+k+3*i, 6) {
				continue
			}
			s.alter(fmt.Sprintf("%s %+d mm", what, mm), p, alter.Request{Size: i, Body: units.Int(mm), Sleeve: units.Int(mm)}, true)
		}
	}
	if q := p.PieceNamed("Sleeve"); q != nil && p.Sizes.Len() > 1 {
		s.alter(p.Title+" with another sleeve", p, alter.Request{Size: 0, Parts: map[string]int{"Sleeve": 1}}, true)
	}
}

func TestAnAlteredGarmentGoesTogether(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/altered/*.yaml")
	require.NoError(t, err)
	for _, set := range [][]string{paths, patterns(t)} {
		total := &sweep{say: t.Logf}
		for n, path := range set {
			if !long.Some(n, 2) { // every other garment quickly, all in the long tests
				continue
			}
			s := &sweep{say: func(string, ...any) {}}
			if testing.Verbose() {
				s.say = t.Logf
			}
			s.all(given.File(t, path), n)
			t.Logf("%s: %s", filepath.Base(path), s)
			total.asked += s.asked
			total.refused += s.refused
			total.contradict += s.contradict
			total.unlike += s.unlike
			total.measured += s.measured
			total.off += s.off
			total.untold += s.untold
			total.ruled += s.ruled
		}
		t.Log(total)
		assert.Zero(t, total.contradict)
		assert.Zero(t, total.unlike)
		assert.Zero(t, total.untold)
		assert.Less(t, float64(total.off), 0.10*float64(total.measured))
		// What is off is told as the nearest that a rule allows: steps of 2 rows, sides of the work, multiples, parts alike. All else stays rare.
		assert.Less(t, float64(total.off-total.ruled), 0.05*float64(total.measured))
	}
}
