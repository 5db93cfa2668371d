package document

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// What a maker of one size is told of lines that are written for three. Expected by hand.
func TestOneSizeIsToldWhatItDoes(t *testing.T) {
	r := newReader(expr.Sizes{Names: []string{"S", "M", "L"}, Groups: []int{1, 2}})
	for _, c := range []struct {
		line string
		want [3]string
	}{
		{"Work 1 (2, 3) rows even.", [3]string{"Work 1 row even.", "Work 2 rows even.", "Work 3 rows even."}},
		{"Rep the last 2 rows 2 (1, 0) more times, turn.", [3]string{"Rep the last 2 rows 2 more times, turn.", "Rep the last 2 rows 1 more time, turn.", "Rep the last 2 rows 0 more times, turn."}},
		{"Inc every 3 (–, 3) rows 4 (–, 2) times, then every 2 (2, –) rows 6 (9, –) times.",
			[3]string{"Inc every 3 rows 4 times, then every 2 rows 6 times.", "Inc every 2 rows 9 times.", "Inc every 3 rows 2 times."}},
		{"Row 7: Work – (4, 6) sts. Turn.", [3]string{"Turn.", "Row 7: Work 4 sts. Turn.", "Row 7: Work 6 sts. Turn."}},
		{"Work – (4, 6) rows even.", [3]string{"", "Work 4 rows even.", "Work 6 rows even."}},
		{"Work 11 (1, 21) sts, 1 rows.", [3]string{"Work 11 sts, 1 row.", "Work 1 st, 1 row.", "Work 21 sts, 1 row."}},
		{"Rows 1 (1, 3) and 11 rows.", [3]string{"Rows 1 and 11 rows.", "Rows 1 and 11 rows.", "Rows 3 and 11 rows."}},
		{"Every 2 rows.", [3]string{"Every 2 rows.", "Every 2 rows.", "Every 2 rows."}},
	} {
		for size, want := range c.want {
			got := r.text(c.line).forSize(size)
			assert.Equal(t, want, got.Said(r.sizes, size, []units.Unit{units.CM}, units.Steps{}), "%s, size %d", c.line, size)
		}
	}
}

func TestRowsOfOneSizeGoBeforeThoseOfAll(t *testing.T) {
	c := &Content{Sizes: expr.Sizes{Names: []string{"S", "M"}, Groups: []int{2}}, Rows: []Section{{Name: "Body", Lines: []Text{Words("All.")}}}}
	assert.Equal(t, c.Rows, c.RowsFor(-1))
	assert.Equal(t, c.Rows, c.RowsFor(1))
	c.Put(1, []WrittenSection{{Name: "Body", Lines: []string{"M alone."}}})
	assert.Equal(t, []Section{{Name: "Body", Lines: []Text{Words("M alone.")}}}, c.RowsFor(1))
	assert.Equal(t, c.Rows, c.RowsFor(0))
}
