package rows

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAMessageQuotesOnlySoMuchOfALongLine(t *testing.T) {
	rep := Check(Read("x", []byte("Ch 9.\nRow 1: "+strings.Repeat("purple wombats over there, ", 2000)+"\n"), Options{}), Options{})
	require.NotEmpty(t, rep.Findings)
	for _, f := range rep.Findings {
		assert.Less(t, len(f.Message+f.Have+f.Want+f.Fix), 5000)
	}
}
