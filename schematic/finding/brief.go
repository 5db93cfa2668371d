package finding

import (
	"fmt"
	"strings"
)

// String is the finding in one line: file:line:col: severity: message, and the
// sizes concerned, fit for a terminal.
func (f Finding) String() string {
	var b strings.Builder
	if f.Pos.File != "" {
		b.WriteString(f.Pos.File)
		if f.Pos.Line > 0 {
			fmt.Fprintf(&b, ":%d", f.Pos.Line)
			if f.Pos.Col > 0 {
				fmt.Fprintf(&b, ":%d", f.Pos.Col)
			}
		}
		b.WriteString(": ")
	}
	fmt.Fprintf(&b, "%s: %s", f.Severity, f.Message)
	var in []string
	for _, s := range []string{f.in(), strings.Join(f.Sizes, ", ")} {
		if s != "" {
			in = append(in, s)
		}
	}
	if len(in) > 0 {
		fmt.Fprintf(&b, " (%s)", strings.Join(in, "; "))
	}
	return Clean(b.String())
}
