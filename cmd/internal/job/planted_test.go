package job

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/finding"
)

// Each fault is planted in an example that has none, and must be found at its line
// under its kind, in the sizes that it concerns. Others may follow from it.
func TestPlantedFaultsAreFound(t *testing.T) {
	examples := map[string]string{}
	for _, s := range sources(t, "../../../examples/*.yaml") {
		examples[s.Name] = string(s.Text)
	}
	for _, c := range []struct {
		name, in, old, new, kind string
		sizes                    []string
	}{
		{"a part of the division is a stitch short", "saltmarsh-cardigan.yaml",
			"stitches: 62 (68, 74, 80)", "stitches: 62 (68, 73, 80)", "arithmetic/division", []string{"M"}},
		{"a shaping does not end where it says", "saltmarsh-cardigan.yaml",
			"to: 18 (20, 22, 25) (27", "to: 18 (20, 22, 25) (28", "arithmetic/count", []string{"1X"}},
		{"a pick-up that the rows do not give", "saltmarsh-cardigan.yaml",
			"stitches: 30 (30, 33, 33)", "stitches: 30 (31, 33, 33)", "arithmetic/pick-up", []string{"S"}},
		{"a written length that the rows do not make", "saltmarsh-cardigan.yaml",
			"length: 58 (59, 60, 62)", "length: 58 (59, 60, 64)", "drawn/written", []string{"L"}},
		{"a written bust with two digits changed", "saltmarsh-cardigan.yaml",
			"is: 85.5 (95.5, 105.5", "is: 85.5 (95.5, 150.5", "drawn/written", []string{"M"}},
		{"a size that is not written", "saltmarsh-cardigan.yaml",
			"length: 58 (59, 60, 62)", "length: 58 (59, -, 62)", "grading/missing", []string{"M"}},
		{"inches that are not those centimetres", "saltmarsh-cardigan.yaml",
			"(46.5, 49, 49) (51.5, 54) cm", "(46.5, 49, 49) (51.5, 54) cm / 14¾ (15¾, 16¾, 17¾) (18¼, 19¼, 19¼) (20¼, 22¼)", "units/pair", []string{"5X"}},
		{"a sleeve top that does not fit the armhole", "saltmarsh-cardigan.yaml",
			"- even: 17 (18, 19, 20)", "- even: 17 (18, 19, 30)", "joins/length", []string{"L"}},
		{"a shoulder sewn to fewer stitches", "saltmarsh-cardigan.yaml",
			"- bind off: 18 (20, 22, 25) (27, 30, 32) (35, 37)\n                    name: right shoulder\n                    edge: shoulder\n                  - bind off: 26",
			"- bind off: 17 (20, 22, 25) (27, 30, 32) (35, 37)\n                    name: right shoulder\n                    edge: shoulder\n                  - bind off: 27",
			"joins/count", []string{"XS"}},
		{"a finished bust below the body's", "saltmarsh-cardigan.yaml",
			"bust: 28-30 (32-34", "bust: 34-36 (36-38", "grading/ease", []string{"XS"}},
		{"a measurement that nothing is called", "saltmarsh-cardigan.yaml",
			"upper arm: 37.5", "elbow: 37.5", "drawn/unknown", nil},
		{"a sum with a name that nothing has", "saltmarsh-cardigan.yaml",
			"of: Body width at underarm + 3 cm", "of: Body width at elbow + 3 cm", "drawn/unknown", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := examples[c.in]
			require.Contains(t, text, c.old)
			text = strings.Replace(text, c.old, c.new, 1)
			r, err := Check(context.Background(), Source{c.in, []byte(text)})
			require.NoError(t, err, "%v", r.Findings)
			i := slices.IndexFunc(r.Findings, func(f finding.Finding) bool { return f.Kind == c.kind })
			require.GreaterOrEqual(t, i, 0, "not found among %v", r.Findings)
			f := r.Findings[i]
			assert.Equal(t, c.sizes, f.Sizes, "%s", f)
			assert.Positive(t, f.Pos.Line, "%s", f)
			assert.NotEmpty(t, f.Message)
			assert.NotEmpty(t, f.Fix, "%s", f)
			for _, f := range r.Findings {
				assert.True(t, finding.Known(f.Kind), f.Kind)
			}
		})
	}
}
