package chart

import (
	"flatwright/schematic/rows"
	"fmt"
	"os"
	"testing"
)

func TestDump(t *testing.T) {
	f := os.Getenv("DUMP")
	if f == "" {
		t.Skip()
	}
	src, err := os.ReadFile("../../testdata/rows/" + f + ".txt")
	if err != nil {
		src, _ = os.ReadFile("../../testdata/chart/" + f + ".txt")
	}
	x := rows.Read(f, src, rows.Options{TermsSet: true})
	for _, ff := range rows.Check(x, rows.Options{}).Findings {
		fmt.Println(ff.Pos.Line, ff.Message)
	}
	g, ok := rows.GraphOf(x, "", 0)
	fmt.Println("==", f, ok, x.Craft)
	for i, r := range g.Rows {
		fmt.Printf(" row %d #%d rs=%v rnd=%v start=%v name=%q line=%d: ", i, r.Number, r.RS, r.Round, r.Start, r.Name, r.Line)
		for k, s := range r.Stitches {
			if k > 40 {
				fmt.Print("...")
				break
			}
			n := "-"
			if s.Stitch != nil {
				n = s.Stitch.ID
			}
			fmt.Printf("%s", n)
			if s.Chain > 0 {
				fmt.Printf("(ch%d)", s.Chain)
			}
			if s.Turning {
				fmt.Print("T")
			}
			if !s.Counts {
				fmt.Print("!")
			}
			if s.Ring {
				fmt.Print("R")
			}
			if s.Group > 0 {
				fmt.Printf("g%d", s.Group)
			}
			if s.Loop != 0 {
				fmt.Printf("L%d", s.Loop)
			}
			fmt.Print(s.Feet, " ")
		}
		fmt.Println(len(r.Stitches))
	}
}
