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
	src, err := os.ReadFile("../../testdata/rows/" + f + ".txt")
	if err != nil {
		src, _ = os.ReadFile("../../testdata/chart/" + f + ".txt")
	}
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
	list := []string{"horseshoe", "eyelets-knit", "old-shale-40", "feather-18", "rib-knit", "dc-swatch", "shells-5-2", "shells-6-2", "granny-us", "circle-dc-12", "circle-sc-6", "mesh-2", "post-rib", "picot-edge", "ripple-13-12", "beeton-rosette", "popcorn-row", "v-stitch-3", "square-rows", "interlocking-shells", "fan-rows"}
	if one := os.Getenv("ONE"); one != "" {
		list = []string{one}
	}
	for _, f := range list {
		w := crude(f)
		if w == nil {
			fmt.Println("no", f)
			continue
		}
		ss, err := Draw(w, Options{})
		if err != nil {
			t.Error(f, err)
			continue
		}
		for i, s := range ss {
			for k, p := range sheet.Overlaps(s, 9.5) {
				if k < 4 {
					t.Error(f, i, p.String())
				}
			}
			var b bytes.Buffer
			if err := svg.Write(&b, s); err != nil {
				t.Error(f, err)
				continue
			}
			n := fmt.Sprintf("%s/%s-%d", dir, f, i)
			os.WriteFile(n+".svg", b.Bytes(), 0o644)
			out, err := exec.Command("rsvg-convert", "-b", "white", "-d", "110", "-p", "110", "-o", n+".png", n+".svg").CombinedOutput()
			if err != nil {
				t.Error(string(out))
			}
		}
		fmt.Println(f, len(ss))
	}
}
