package document

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// tableOf is a table of so many rows on pages of A4, too wide for two of them side by side.
func tableOf(rows int) *builder {
	b := &builder{o: Options{Size: -1}, c: &Content{}, p: &pages{w: 210, h: 297, size: UsualText}}
	g := grid{title: []string{"Measurement", "S", "M", "L", "XL"}, mark: -1, least: 30}
	for range rows {
		g.rows = append(g.rows, gridRow{cells: []gridCell{{s: "Length"}, {s: "10"}, {s: "11"}, {s: "12"}, {s: "13"}}})
	}
	b.table(g)
	return b
}

func TestATableStandsCloserRatherThanGoOnWithAFewRows(t *testing.T) {
	usual := tableOf(3).atoms[1].high
	var closer, never int
	for rows := 40; rows < 140; rows++ {
		b := tableOf(rows)
		pages, full := b.pagesWith(nil)
		if b.atoms[1].high < usual {
			closer++
			assert.Greater(t, full, 0.5, "%d rows", rows)
		}
		if pages > 1 && full < 0.05 {
			never++
		}
	}
	assert.Greater(t, closer, 5)
	assert.Zero(t, never, "tables that end with a row or two on a page of their own")
}
