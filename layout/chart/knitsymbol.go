package chart

import (
	"flatwright/layout/sheet"
	"flatwright/schematic/stitch"
)

// seen is the symbol of a stitch as it looks from the right side when it is worked on
// the wrong side.
var seen = map[string]string{
	"knit": "purl", "purl": "knit", "twisted knit": "twisted purl", "twisted purl": "twisted knit",
	"right-leaning decrease": "purl decrease", "purl decrease": "right-leaning decrease",
	"left-leaning decrease": "left-leaning purl decrease", "left-leaning purl decrease": "left-leaning decrease",
	"right-leaning double decrease": "purl double decrease", "purl double decrease": "right-leaning double decrease",
	"knit front and back": "purl front and back", "purl front and back": "knit front and back",
}

// shownKey is the symbol of a knitting stitch as the right side shows it.
func shownKey(k *stitch.Stitch, wrong bool) string {
	if k == nil {
		return "knit"
	}
	if o, ok := seen[k.Key]; ok && wrong {
		return o
	}
	return k.Key
}

// wrapKey is a stitch that is wrapped before a turn: the yarn goes around its leg. No published list has a symbol for it.
const wrapKey = "wrapped"

// knitStrokes are the symbols of knitting, around the middle of a square: each line through
// its points, each curve through its controls, mm across and up. A knit stitch is blank.
var knitStrokes = map[string]struct {
	lines  [][]float64
	curves [][8]float64
}{
	"knit":                          {},
	"second of two":                 {},
	"purl":                          {lines: [][]float64{{-1.1, 0, 1.1, 0}}},
	"edge":                          {lines: [][]float64{{-1.1, 0, 1.1, 0}, {0, -1.1, 0, 1.1}}},
	"twisted knit":                  {curves: [][8]float64{{-1.1, -1.4, 2.2, 2.6, -2.2, 2.6, 1.1, -1.4}}},
	"twisted purl":                  {curves: [][8]float64{{-1.1, -0.8, 2.2, 3, -2.2, 3, 1.1, -0.8}}, lines: [][]float64{{-1.1, -1.4, 1.1, -1.4}}},
	"slipped":                       {lines: [][]float64{{-1.2, 1.3, 0, -1.3, 1.2, 1.3}}},
	"make one":                      {lines: [][]float64{{-1.2, -1.3, -1.2, 1.3, 0, -0.2, 1.2, 1.3, 1.2, -1.3}}},
	"make one left":                 {lines: [][]float64{{0.9, -1.4, 0.9, 1.4, -1.2, 1.4}}},
	"make one right":                {lines: [][]float64{{-0.9, -1.4, -0.9, 1.4, 1.2, 1.4}}},
	"knit front and back":           {lines: [][]float64{{-1.3, 1.4, 0, -1.4, 1.3, 1.4}, {0, -1.4, 0, 1.4}}},
	"purl front and back":           {lines: [][]float64{{-1.3, 1.5, 0, -0.8, 1.3, 1.5}, {0, -0.8, 0, 1.5}, {-1.1, -1.5, 1.1, -1.5}}},
	"right-leaning decrease":        {lines: [][]float64{{-1.5, -1.5, 1.5, 1.5}}},
	"left-leaning decrease":         {lines: [][]float64{{1.5, -1.5, -1.5, 1.5}}},
	"purl decrease":                 {lines: [][]float64{{-1.4, -1, 1.5, 1.6}, {-1.1, -1.6, 1.1, -1.6}}},
	"left-leaning purl decrease":    {lines: [][]float64{{1.4, -1, -1.5, 1.6}, {-1.1, -1.6, 1.1, -1.6}}},
	"right-leaning double decrease": {lines: [][]float64{{-1.5, -1.5, 1.5, 1.5}, {0, 0, 0, -1.5}}},
	"left-leaning double decrease":  {lines: [][]float64{{1.5, -1.5, -1.5, 1.5}, {0, 0, 0, -1.5}}},
	"purl double decrease":          {lines: [][]float64{{-1.4, -1, 1.5, 1.6}, {0, 0.25, 0, -1}, {-1.1, -1.6, 1.1, -1.6}}},
	wrapKey:                         {lines: [][]float64{{0, -1.6, 0, 1.6}}, curves: [][8]float64{{-1.4, 0.5, -1.4, -0.9, 1.4, -0.9, 1.4, 0.5}, {1.4, 0.5, 1.4, 1, 0.7, 1, 0.5, 0.8}}},
	"centred double decrease":       {lines: [][]float64{{-1.5, -1.5, 0, 1.5, 1.5, -1.5}, {0, 1.5, 0, -1.5}}},
}

// knitSymbol draws a symbol around the middle of a square of that height.
func knitSymbol(key string, at pt, high float64) []*sheet.Path {
	q := &pen{o: at, u: pt{X: 1}, v: pt{Y: min(high/cell, 1)}}
	s, ok := knitStrokes[key]
	switch {
	case key == "yarn over":
		r := 1.25 * min(high/cell, 1)
		q.v = pt{Y: 1}
		q.oval(0, 0, r, r, false)
	case key == "bobble" || key == "cluster" || key == "popcorn" || key == "puff":
		q.oval(0, 0, 1.3, 1.3, true)
	case !ok: // a stitch that no published list names: a filled spot
		q.oval(0, 0, 0.8, 0.8, true)
	}
	for _, l := range s.lines {
		q.line(l...)
	}
	for _, c := range s.curves {
		q.curve(c[0], c[1], c[2], c[3], c[4], c[5], c[6], c[7])
	}
	return q.out
}
