package chart

import (
	"fmt"
	"strings"

	"flatwright/layout/sheet"
	"flatwright/schematic/stitch"
)

// seen is the symbol of a stitch as it looks from the right side when it is worked on the wrong side.
var seen = bothWays(map[string]string{
	"knit": "purl", "twisted knit": "twisted purl", "knit front and back": "purl front and back", "brioche knit": "brioche purl",
	"right-leaning decrease": "purl decrease", "right-leaning double decrease": "purl double decrease",
	"left-leaning decrease": "left-leaning purl decrease", "left-leaning double decrease": "left-leaning purl double decrease",
	"left-leaning decrease tbl": "left-leaning purl decrease tbl", "left-leaning double decrease tbl": "left-leaning purl double decrease tbl",
	"make one": "make one purl", "slipped": "slipped", "slipped, yarn in front": "slipped, yarn in back",
})

func bothWays(m map[string]string) map[string]string {
	for k, v := range m {
		m[v] = k
	}
	return m
}

// shownKey is the symbol of a knitting stitch as the right side shows it. A stitch that takes or makes more than its
// symbol tells has the number in it.
func shownKey(k *stitch.Stitch, wrong bool) string {
	if k == nil {
		return "knit"
	}
	key := k.Key
	if o, ok := seen[key]; ok && wrong {
		key = o
	}
	switch {
	case key == "slipped, yarn in back": // where it mostly lies
		key = "slipped"
	case strings.HasSuffix(key, "front and back") && k.Makes > 2:
		key += fmt.Sprint(" ", k.Makes)
	case strings.Contains(key, "double decrease") && k.Uses > 3:
		key += fmt.Sprint(" ", k.Uses)
	}
	return key
}

// The symbols that are of no kind of stitch: one that is wrapped before a turn, the yarn around its leg, for which no published
// list has one; and a square that is made by an increase beside it.
const (
	wrapKey = "wrapped"
	partKey = "second of two"
)

// knitStrokes are the symbols of knitting, around the middle of a square: each line through
// its points, each curve through its controls, mm across and up. A knit stitch is blank. Those of brioche, and the bar under
// what is slipped behind its yarn or made purlwise, are common practice.
var knitStrokes = map[string]struct {
	lines  [][]float64
	curves [][8]float64
}{
	"knit":                              {},
	partKey:                             {},
	"purl":                              {lines: [][]float64{{-1.1, 0, 1.1, 0}}},
	"bound off":                         {curves: [][8]float64{{-1.4, -0.5, -0.9, 0.9, 0.9, 0.9, 1.4, -0.5}}},
	"edge":                              {lines: [][]float64{{-1.1, 0, 1.1, 0}, {0, -1.1, 0, 1.1}}},
	"twisted knit":                      {curves: [][8]float64{{-1.1, -1.4, 2.2, 2.6, -2.2, 2.6, 1.1, -1.4}}},
	"twisted purl":                      {curves: [][8]float64{{-1.1, -0.8, 2.2, 3, -2.2, 3, 1.1, -0.8}}, lines: [][]float64{{-1.1, -1.4, 1.1, -1.4}}},
	"slipped":                           {lines: [][]float64{{-1.2, 1.3, 0, -1.3, 1.2, 1.3}}},
	"slipped, yarn in front":            {lines: [][]float64{{-1.2, 1.5, 0, -0.9, 1.2, 1.5}, {-1.2, -1.5, 1.2, -1.5}}},
	"make one":                          {lines: [][]float64{{-1.2, -1.3, -1.2, 1.3, 0, -0.2, 1.2, 1.3, 1.2, -1.3}}},
	"make one purl":                     {lines: [][]float64{{-1.1, -0.9, -1.1, 1.5, 0, 0.2, 1.1, 1.5, 1.1, -0.9}, {-1.1, -1.5, 1.1, -1.5}}},
	"make one left":                     {lines: [][]float64{{0.9, -1.4, 0.9, 1.4, -1.2, 1.4}}},
	"make one right":                    {lines: [][]float64{{-0.9, -1.4, -0.9, 1.4, 1.2, 1.4}}},
	"knit front and back":               {lines: [][]float64{{-1.3, 1.4, 0, -1.4, 1.3, 1.4}, {0, -1.4, 0, 1.4}}},
	"purl front and back":               {lines: [][]float64{{-1.3, 1.5, 0, -0.8, 1.3, 1.5}, {0, -0.8, 0, 1.5}, {-1.1, -1.5, 1.1, -1.5}}},
	"right-leaning decrease":            {lines: [][]float64{{-1.5, -1.5, 1.5, 1.5}}},
	"left-leaning decrease":             {lines: [][]float64{{1.5, -1.5, -1.5, 1.5}}},
	"purl decrease":                     {lines: [][]float64{{-1.4, -1, 1.5, 1.6}, {-1.1, -1.6, 1.1, -1.6}}},
	"left-leaning purl decrease":        {lines: [][]float64{{1.4, -1, -1.5, 1.6}, {-1.1, -1.6, 1.1, -1.6}}},
	"right-leaning double decrease":     {lines: [][]float64{{-1.5, -1.5, 1.5, 1.5}, {0, 0, 0, -1.5}}},
	"left-leaning double decrease":      {lines: [][]float64{{1.5, -1.5, -1.5, 1.5}, {0, 0, 0, -1.5}}},
	"purl double decrease":              {lines: [][]float64{{-1.4, -1, 1.5, 1.6}, {0, 0.25, 0, -1}, {-1.1, -1.6, 1.1, -1.6}}},
	"left-leaning purl double decrease": {lines: [][]float64{{1.4, -1, -1.5, 1.6}, {0, 0.25, 0, -1}, {-1.1, -1.6, 1.1, -1.6}}},
	"centred double decrease":           {lines: [][]float64{{-1.5, -1.5, 0, 1.5, 1.5, -1.5}, {0, 1.5, 0, -1.5}}},
	"brioche knit":                      {curves: [][8]float64{{-1.1, -1.3, -1.1, 2.2, 1.1, 2.2, 1.1, -1.3}}},
	"brioche purl":                      {curves: [][8]float64{{-1.1, -0.7, -1.1, 2.4, 1.1, 2.4, 1.1, -0.7}}, lines: [][]float64{{-1.1, -1.4, 1.1, -1.4}}},
	"brioche slip":                      {curves: [][8]float64{{-1.2, 0.9, -1, 2, 1, 2, 1.2, 0.9}}, lines: [][]float64{{-1.1, 0.5, 0, -1.5, 1.1, 0.5}}},
	wrapKey:                             {lines: [][]float64{{0, -1.6, 0, 1.6}}, curves: [][8]float64{{-1.4, 0.5, -1.4, -0.9, 1.4, -0.9, 1.4, 0.5}, {1.4, 0.5, 1.4, 1, 0.7, 1, 0.5, 0.8}}},
}

// listed reports whether a symbol has strokes of its own.
func listed(key string) bool {
	switch key {
	case "yarn over", "bobble", "cluster", "popcorn", "puff":
		return true
	}
	_, ok := knitStrokes[key]
	return ok
}

// spotKey is the symbol of a stitch that no published list names: a filled spot, from the second such stitch of a chart on with
// its number.
const spotKey = "spot"

// figures are the numbers in symbols, from 2 on: lines through points of a field one wide and two tall.
var figures = [...][][]float64{
	{{0, 2, 1, 2, 1, 1, 0, 1, 0, 0, 1, 0}},
	{{0, 2, 1, 2, 1, 0, 0, 0}, {0.2, 1, 1, 1}},
	{{0, 2, 0, 1, 1, 1}, {1, 2, 1, 0}},
	{{1, 2, 0, 2, 0, 1, 1, 1, 1, 0, 0, 0}},
	{{1, 2, 0, 2, 0, 0, 1, 0, 1, 1, 0, 1}},
	{{0, 2, 1, 2, 0.3, 0}},
	{{0, 1, 0, 2, 1, 2, 1, 0, 0, 0, 0, 1, 1, 1}},
	{{1, 1, 0, 1, 0, 2, 1, 2, 1, 0, 0, 0}},
}

// figure draws a number from 2 to 9 in the corner of a square that the symbol leaves free.
func (q *pen) figure(n int, key string) {
	at := pt{X: 1.15, Y: -1.9}
	switch {
	case strings.HasPrefix(key, "purl decrease"), strings.HasPrefix(key, "purl double"):
		at = pt{X: -1.9, Y: 0.7}
	case strings.HasPrefix(key, "left"), strings.HasPrefix(key, "centred"):
		at.Y = 0.7
	}
	for _, l := range figures[n-2] {
		var ps []float64
		for i := 0; i < len(l); i += 2 {
			ps = append(ps, at.X+0.7*l[i], at.Y+0.6*l[i+1])
		}
		q.line(ps...)
	}
}

// knitSymbol draws a symbol around the middle of a square of that height: one of the list, with a ring at the foot if it is worked
// through the back loops, and with a number.
func knitSymbol(key string, at pt, high float64) []*sheet.Path {
	q := &pen{o: at, u: pt{X: 1}, v: pt{Y: min(high/cell, 1)}}
	if k := len(key) - 1; k > 1 && key[k-1] == ' ' && key[k] >= '2' && key[k] <= '9' {
		q.figure(int(key[k]-'0'), key)
		key = key[:k-1]
	}
	key, back := strings.CutSuffix(key, " tbl")
	s := knitStrokes[key]
	switch {
	case key == "yarn over":
		r := 1.25 * min(high/cell, 1)
		q.v = pt{Y: 1}
		q.oval(0, 0, r, r, false)
	case key == "bobble" || key == "cluster" || key == "popcorn" || key == "puff":
		q.oval(0, 0, 1.3, 1.3, true)
	case !listed(key):
		q.oval(0, 0, 0.8, 0.8, true)
	case back && strings.Contains(key, "purl"):
		q.oval(-1, -0.6, 0.45, 0.45, false)
	case back:
		q.oval(-1, -1, 0.45, 0.45, false)
	}
	for _, l := range s.lines {
		q.line(l...)
	}
	for _, c := range s.curves {
		q.curve(c[0], c[1], c[2], c[3], c[4], c[5], c[6], c[7])
	}
	return q.out
}
