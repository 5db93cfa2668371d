package place

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/expr"
)

func TestASizeThatSaysSizeIsNotCalledSizeTwice(t *testing.T) {
	for name, want := range map[string]string{"M": "Size M", "One size": "One size", "2 years": "Size 2 years"} {
		p := &plan{g: &schematic.Garment{Size: name}, s: scheme{sizes: expr.Sizes{Names: []string{name}, Groups: []int{1}}}}
		assert.Equal(t, want, p.sizeText())
	}
}
