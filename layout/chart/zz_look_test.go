package chart

import (
	"bytes"
	"flatwright/layout/sheet"
	"flatwright/render/svg"
	"flatwright/schematic/rows"
	"fmt"
	"os"
	"os/exec"
	"testing"
)

func crude(f string) *Work {
	src, _ := os.ReadFile("../../testdata/rows/" + f + ".txt")
	x := rows.Read(f, src, rows.Options{TermsSet: true})
	g, ok := rows.GraphOf(x, "", 0)
	if !ok {
		return nil
	}
	w, _ := FromGraph(g, x)
	return w
}
func TestLook(t *testing.T) {
	dir := os.Getenv("LOOK")
	if dir == "" {
		t.Skip()
	}
	for _, f := range []string{"dc-swatch", "shells-5-2", "shells-6-2", "granny-us", "circle-dc-12", "circle-sc-6", "mesh-2", "post-rib", "picot-edge", "ripple-13-12", "beeton-rosette", "popcorn-row", "v-stitch-3", "square-rows", "interlocking-shells", "fan-rows"} {
		w := crude(f)
		if w == nil {
			fmt.Println("no", f)
			continue
		}
		p := newPlan(w, false)
		p.lay()
		syms := p.symbols()
		s := &sheet.Sheet{W: 10, H: 10}
		var all []*sheet.Path
		for _, y := range syms {
			all = append(all, y.paths...)
		}
		lo, hi := bounds(all)
		s.W, s.H = hi.X-lo.X+10, hi.Y-lo.Y+10
		for _, q := range all {
			for i := range q.Segs {
				for k := range q.Segs[i].P {
					pp := &q.Segs[i].P[k]
					pp.X = pp.X - lo.X + 5
					pp.Y = hi.Y - pp.Y + 5
				}
			}
			s.Root.Items = append(s.Root.Items, q)
		}
		var b bytes.Buffer
		if err := svg.Write(&b, s); err != nil {
			t.Error(f, err)
			continue
		}
		os.WriteFile(dir+"/"+f+".svg", b.Bytes(), 0o644)
		out, err := exec.Command("rsvg-convert", "-b", "white", "-d", "140", "-p", "140", "-o", dir+"/"+f+".png", dir+"/"+f+".svg").CombinedOutput()
		if err != nil {
			t.Error(string(out))
		}
	}
}
