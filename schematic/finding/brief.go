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
	if len(f.Sizes) > 0 {
		fmt.Fprintf(&b, " (%s)", strings.Join(f.Sizes, ", "))
	}
	return Clean(b.String())
}
