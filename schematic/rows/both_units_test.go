package rows

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// An inch is 25.4 mm (international yard, 1959). The lengths of the right ones are rounded as leaflets round them.
func TestALengthInBothUnitsIsOneLength(t *testing.T) {
	for _, line := range []string{
		"Work even until piece measures 6 ins [15 cm] from beg.",
		"Work even until piece measures 6½ in (16.5 cm), then 2 1/2\"/6 cm more.",
		"Use a 16 in (40 cm) or 60\" (150 cm) circular needle.",
		"Tension: 22 sts and 30 rows = 4 in./10 cm.",
		"To fit bust 32 (34, 36) ins [81 (86, 91) cm].",
		"Cont until back measures 11[14:17] cm (4¼[5½:6½] in).",
		"To fit 30-32 ins (76-81 cm), or 76 cm (30 ins).",
		"*K1, p1; rep from * in (5 cm).",
		"Work 5 in (12 cm).",
		"Make a strip of 28 cm x 10 cm (11 inches x 4 inches).",
		"The base is 11\" x 4\" x 2\" (28 x 10 x 5 cm).",
		"It is 28 cm wide by 10 cm (11 in wide by 4 in high).",
		"Its height is 28 cm, width 10 cm (11 in, 4 in).",
	} {
		assert.Empty(t, Check(Read("t", []byte("Sizes: S (M, L)\nCast on 30 sts.\nKnit 10 rows.\n"+line+"\n"), Options{}), Options{}).Findings, line)
	}
	for line, told := range map[string]string{
		"Work even until piece measures 6 ins [16 cm] from beg.": "6 in is 15 cm",
		"Cont until armhole measures 20 cm (9 in).":              "20 cm is 7¾ in",
		"Work until piece measures about 14 in. (23 cm).":        "14 in is 35.5 cm",
		"Make a strip of 28 cm x 10 cm (11 inches x 5 inches).":  "10 cm is 4 in",
		"Work to 12-1/2 in (39 cm).":                             "12-1/2 in is 32 cm",
		"Cont until back measures 11[14:17] cm (4¼[6½:6½] in).":  "14 cm is 5½ in",
	} {
		rep := Check(Read("t", []byte("Sizes: S (M, L)\nCast on 30 sts.\nKnit 10 rows.\n"+line+"\n"), Options{}), Options{})
		require.Len(t, rep.Findings, 1, line)
		f := rep.Findings[0]
		assert.Equal(t, "units/pair", f.Kind)
		assert.Equal(t, told, f.Have)
		assert.Equal(t, 4, f.Pos.Line)
		if strings.Contains(line, "[14") {
			assert.Equal(t, []string{"M"}, f.Sizes)
		}
	}
}
