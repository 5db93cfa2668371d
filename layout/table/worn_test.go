package table

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestRowsStandInTheOrderOfTheirLetters(t *testing.T) {
	g := Group{Rows: []Row{{ID: "none"}, {ID: "b"}, {ID: "aa", Also: []string{"twin"}}, {ID: "a"}, {ID: "last"}}}
	var order []string
	for _, r := range g.InLetters(map[string]string{"a": "A", "b": "B", "twin": "AA"}).Rows {
		order = append(order, r.ID)
	}
	assert.Equal(t, []string{"a", "b", "aa", "none", "last"}, order)
	assert.Equal(t, "none", g.Rows[0].ID, "the group itself stays as it is")
}
