package chart

import (
	"bytes"
	"flatwright/render/svg"
	"fmt"
	"math"
	"os"
	"os/exec"
	"pgregory.net/rapid"
	"testing"
)

func dumpTo(w *Work, name string) {
	ss, _ := Draw(w, Options{Whole: true})
	var b bytes.Buffer
	svg.Write(&b, ss[0])
	os.WriteFile(name+".svg", b.Bytes(), 0o644)
	exec.Command("rsvg-convert", "-b", "white", "-d", "150", "-p", "150", "-o", name+".png", name+".svg").Run()
	exec.Command("convert", name+".png", "-trim", "+repage", name+".png").Run()
}
func TestWorst(t *testing.T) {
	if os.Getenv("LOOK") == "" {
		t.Skip()
	}
	worst := 0.0
	var ww *Work
	n := 0
	rapid.Check(t, func(rt *rapid.T) {
		w := randomFlat(rt, true)
		p, f := laid(w)
		m := 0.0
		for _, l := range p.lines {
			for _, n := range l.nodes {
				if len(n.feet) == 0 || n.st.Turn {
					continue
				}
				head := p.point(n, n.v)
				foot := (&shape{feet: p.footPoints(n)}).foot()
				m = max(m, math.Hypot(head.X-foot.X, head.Y-foot.Y)/n.h)
			}
		}
		if m > worst {
			worst = m
			ww = w
		}
		if h := touching(p, f, 0.05); len(h) > 0 && n < 4 {
			n++
			dumpTo(w, fmt.Sprintf("/tmp/w/chartlook/touch%d", n))
			var ns []*node
			for _, l := range p.lines {
				for i := range l.row.St {
					ns = append(ns, l.at(i))
				}
			}
			for _, x := range h {
				fmt.Println(n, word(ns[x[0]]), ns[x[0]].line.n, word(ns[x[1]]), ns[x[1]].line.n, ns[x[0]].q, ns[x[1]].q)
			}
		}
	})
	fmt.Println(worst)
	dumpTo(ww, "/tmp/w/chartlook/worst")
}
