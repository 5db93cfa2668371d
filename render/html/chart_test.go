package html_test

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/layout/chart"
	"flatwright/layout/document"
	"flatwright/render/html"
	"flatwright/schematic/rows"
)

// A chart of right-side rows is seen from its right side on, where its first row begins, however narrow the screen; one of wrong-side
// rows first from its left. What its signs mean stands in the page's own words, which wrap.
func TestAChartIsSeenFromWhereItBegins(t *testing.T) {
	for side, right := range map[string]bool{"RS": true, "WS": false} {
		x := rows.Read("t", []byte("Cast on 42 sts.\nRow 1 ("+side+"): *K3, p3; rep from * to end.\nRow 2: *K3, p3; rep from * to end.\n"), rows.Options{TermsSet: true})
		g, ok := rows.GraphOf(x, "", 0)
		require.True(t, ok)
		w, ok := chart.FromGraph(g)
		require.True(t, ok)
		sheets, err := chart.Draw(w, chart.Options{})
		require.NoError(t, err)
		page := pageOf(t, pattern(t, wren))
		page.Charts = []document.Drawing{document.Chart("Rib", -1, sheets)}
		assert.Equal(t, right, page.Charts[0].Figures[0].FromRight, side)
		var b bytes.Buffer
		require.NoError(t, html.Write(&b, page))
		assert.Equal(t, right, bytes.Contains(b.Bytes(), []byte(`-right" role="group"`)), side)
		assert.Contains(t, b.String(), "</svg> <span>k on the right side, p on the wrong side</span>")
	}
}
