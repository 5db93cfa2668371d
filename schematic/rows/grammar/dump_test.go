package grammar

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	ins "flatwright/schematic/rows/instructions"
)

func show(n ins.Item) string {
	switch k := n.(type) {
	case *ins.Repeat:
		var b []string
		for _, i := range k.Body {
			b = append(b, show(i))
		}
		return fmt.Sprintf("R{%s t=%v u=%v p=%v last=%d stop=%d}", strings.Join(b, "; "), k.Times, k.Until.Kind, len(k.Places), len(k.Last), k.Stop)
	case *ins.Stitch:
		id := "?"
		if k.Kind != nil {
			id = k.Kind.ID
		}
		if k.Inc {
			id = "inc"
		}
		if k.Dec {
			id = "dec"
		}
		if k.Call != nil {
			id = k.Call.Name
		}
		s := fmt.Sprintf("%s*%v", id, k.N.All)
		for _, p := range k.Places {
			s += fmt.Sprintf(" @%d/%d(%s)", p.Kind, p.N.All, p.Unit.Word)
		}
		if len(k.Also) > 0 {
			s += " also"
		}
		return s
	case *ins.Unread:
		return "UNREAD"
	case *ins.Nothing:
		return "-"
	}
	return strings.TrimPrefix(fmt.Sprintf("%T", n), "*instructions.")
}

func TestDump(t *testing.T) {
	files, _ := filepath.Glob(os.Getenv("DUMP"))
	bad := 0
	for _, f := range files {
		src, _ := os.ReadFile(f)
		x := Read(filepath.Base(f), src, ins.Options{})
		for _, s := range x.Sections {
			for _, l := range s.Lines {
				var b []string
				for _, n := range l.Body {
					b = append(b, show(n))
				}
				if len(l.Unread) > 0 {
					bad++
				}
				if os.Getenv("BAD") == "" || len(l.Unread) > 0 {
					fmt.Printf("%s [%s] %s\n    %v | %s | stated %d\n", filepath.Base(f), s.Name, l.Src, l.Label != nil, strings.Join(b, " | "), len(l.Stated))
				}
			}
		}
		if os.Getenv("BAD") == "" {
			fmt.Printf("%+v\n", x.Read)
		}
	}
	fmt.Println("BAD", bad)
}
