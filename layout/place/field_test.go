package place

import (
	"testing"

	"flatwright/layout/sheet"

	"github.com/stretchr/testify/assert"
)

// A line of 4.5 mm has no arrowheads but strokes, each of 0.55 mm along it and as much across it: 0.55 beyond its end, where a label that
// ends 0.6 mm from it is in the way although the line itself is clear of it.
func TestTheStrokesOfAShortDimensionLineKeepClearOfLabels(t *testing.T) {
	line := seg{pt{X: 10, Y: 10}, pt{X: 14.5, Y: 10}}
	f := field{labels: []sheet.Box{boxOf(pt{X: 14.5 + 0.6 + 2, Y: 10 + 0.6}, 0, 4, 1)}}
	assert.False(t, f.labelled(line))
	assert.False(t, f.measurable(line))
	assert.True(t, f.measurable(seg{pt{X: 8, Y: 10}, pt{X: 14.5, Y: 10}}), "it has arrowheads")

	d := &drawn{v: &viewPlan{}}
	assert.True(t, d.take(&sided{it: &item{}}, dim{line: line, ends: true, form: form{w: 2, h: 3}, at: pt{X: 12, Y: 8}}))
	assert.False(t, d.field.free(boxOf(pt{X: 14.5 + 0.55 + 0.7 + 2, Y: 10.55}, 0, 4, 0.1), -1), "a label comes too near to the stroke")
	assert.True(t, d.field.free(boxOf(pt{X: 14.5 + 0.55 + 0.8 + 2, Y: 10.55}, 0, 4, 0.1), -1))
}
