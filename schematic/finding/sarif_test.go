package finding

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/owenrumney/go-sarif/v3/pkg/report/v210/sarif"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Held against the schema of the standard, as a general SARIF library carries it.
func TestSARIFKeepsToItsSchema(t *testing.T) {
	list := List{
		{Kind: "rows/stated", Severity: Warning, Pos: Pos{File: "rows/my pattern.txt", Line: 3, Col: 5, EndCol: 9}, Piece: "Body", Section: "Rib",
			Sizes: []string{"S", "M"}, Message: "the row makes 48 sts, not 49", Have: "48", Want: "49", Fix: "say 48"},
		{Kind: "rows/stated", Severity: Error, Pos: Pos{File: "/tmp/a.txt", Line: 1}, Message: "x <&> y"},
		{Kind: "file/size", Severity: Note, Message: "no place"},
	}
	var b bytes.Buffer
	require.NoError(t, SARIF(&b, list, "1.0"))
	log, err := sarif.FromBytes(b.Bytes())
	require.NoError(t, err)
	require.NoError(t, log.Validate())
	strict := json.NewDecoder(bytes.NewReader(b.Bytes()))
	strict.DisallowUnknownFields()
	require.NoError(t, strict.Decode(&sarif.Report{}))
	require.Len(t, log.Runs, 1)
	require.Len(t, log.Runs[0].Results, 3)
	require.Len(t, log.Runs[0].Tool.Driver.Rules, 2)
	region := log.Runs[0].Results[0].Locations[0].PhysicalLocation.Region
	assert.Equal(t, 3, *region.StartLine)
	assert.Equal(t, 5, *region.StartColumn)
	assert.Equal(t, 9, *region.EndColumn)
	assert.Equal(t, "rows/my%20pattern.txt", *log.Runs[0].Results[0].Locations[0].PhysicalLocation.ArtifactLocation.URI)
	assert.Contains(t, b.String(), "x <&> y")
}

func TestSARIFOfNothingKeepsToItsSchema(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, SARIF(&b, nil, ""))
	log, err := sarif.FromBytes(b.Bytes())
	require.NoError(t, err)
	require.NoError(t, log.Validate())
	require.Empty(t, log.Runs[0].Results)
}
