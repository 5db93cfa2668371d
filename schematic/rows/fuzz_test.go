package rows

import (
	"testing"

	"flatwright/schematic/stitch"
)

// No text makes the reader or the worker fail or run away.
func FuzzReadAndWork(f *testing.F) {
	for _, c := range corpus(f) {
		f.Add(string(c.src), c.options.Terms == stitch.UK)
	}
	f.Add("Ch 99999.\nRow 1: Sc in each ch, (((((((((((((sc))) 9999 times) 9999 times) 9999 times.\n", false)
	f.Add("Rnd 1: *ch 1; rep from * 99999 times.\nRows 2-99999: Rep Row 1 99999 times.\n", false)
	f.Add("Sizes: A (B, C)\nRow 1 (–, 2): k1 (–, 3), *; rep from * to last – (1, 2) sts", true)
	f.Fuzz(func(t *testing.T, src string, uk bool) {
		if len(src) > 1<<14 {
			return
		}
		o := Options{TermsSet: true}
		if uk {
			o.Terms = stitch.UK
		}
		x := Read("fuzz", []byte(src), o)
		Check(x, o)
		for _, s := range x.Sections {
			GraphOf(x, s.Name, 0)
			break
		}
		Abbreviations(x)
		Translate([]byte(src), o.Terms, o.Terms.Other())
	})
}
