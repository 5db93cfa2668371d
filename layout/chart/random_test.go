package chart

import (
	"pgregory.net/rapid"

	"flatwright/schematic/stitch"
)

// randomRow works over the places of a row below, each used once or passed.
func randomRow(t *rapid.T, below *Row, rightward, balanced bool, wild int) Row {
	row := Row{Wrong: rightward}
	n := len(below.St)
	kinds := []string{"sc", "hdc", "dc", "tr"}
	main := rapid.SampledFrom(kinds).Draw(t, "main")
	at := func(k int) int { // the k-th place as it is met
		if below.Base && rightward {
			return k
		}
		return n - 1 - k
	}
	kind := func() *stitch.Stitch {
		if rapid.IntRange(0, 9).Draw(t, "kind") < 7 {
			return stitch.ByID(main)
		}
		return stitch.ByID(rapid.SampledFrom(append(kinds, "FPdc", "BPdc", "puff", "bobble", "pc", "cl", "slst")).Draw(t, "stitch"))
	}
	put := func(k *stitch.Stitch, feet ...int) {
		row.St = append(row.St, St{Kind: k, Feet: feet, Counts: true, Loop: Loop(rapid.SampledFrom([]int{0, 0, 0, 0, 1, 2}).Draw(t, "loop"))})
	}
	k := 0
	if rapid.Bool().Draw(t, "turning chain") {
		base := stitch.ByID(main)
		row.St = append(row.St, St{Kind: base, Chain: max(base.Turn, 1), Turn: true, Counts: true, Feet: []int{at(0)}})
		k = 1
	}
	for k < n {
		switch op := rapid.IntRange(0, 11).Draw(t, "op"); {
		case op < 12-wild:
			put(kind(), at(k))
			k++
		case op == 11:
			many := rapid.IntRange(2, 5).Draw(t, "many")
			one := kind()
			mid, used := k, 1
			if balanced {
				if k+many > n {
					put(kind(), at(k))
					k++
					continue
				}
				mid, used = k+many/2, many
			}
			for range many {
				put(one, at(mid))
			}
			k += used
		case op == 10 && k+2 < n:
			legs := rapid.IntRange(2, 3).Draw(t, "legs")
			if k+legs > n {
				legs = 2
			}
			var feet []int
			for range legs {
				feet = append(feet, at(k))
				k++
			}
			put(stitch.ByID(main+map[int]string{2: "2tog", 3: "3tog"}[legs]), feet...)
		case len(row.St) > 0 && !row.St[len(row.St)-1].arch() && k+2 < n:
			chains := rapid.IntRange(1, 6).Draw(t, "chains")
			row.St = append(row.St, St{Chain: chains, Counts: true})
			if balanced {
				k += min(chains, n-1-k)
			} else {
				k += rapid.IntRange(0, 3).Draw(t, "skipped")
			}
		default:
			put(kind(), at(k))
			k++
		}
	}
	if k := len(row.St) - 1; k >= 0 && row.St[k].arch() {
		put(stitch.ByID(main), at(n-1))
	}
	return row
}

// randomFlat is a work in rows; a balanced one keeps about as many places from row to
// row, as a fabric that lies flat does.
func randomFlat(t *rapid.T, balanced bool) *Work {
	w := &Work{Title: "Random rows"}
	base := Row{Base: true}
	for range rapid.IntRange(5, 24).Draw(t, "chains") {
		base.St = append(base.St, St{Kind: stitch.ByID("ch"), Counts: true})
	}
	w.Rows = append(w.Rows, base)
	wild := rapid.IntRange(0, 6).Draw(t, "wild")
	for r := range rapid.IntRange(1, 7).Draw(t, "rows") {
		below := &w.Rows[len(w.Rows)-1]
		if len(below.St) < 3 {
			break
		}
		row := randomRow(t, below, r%2 == 1, balanced, wild)
		row.Number = r + 1
		w.Rows = append(w.Rows, row)
	}
	return w
}

// randomRound is a work in rounds from a ring, which grows as a flat one does.
func randomRound(t *rapid.T) *Work {
	w := &Work{Title: "Random rounds"}
	k := stitch.ByID(rapid.SampledFrom([]string{"sc", "hdc", "dc"}).Draw(t, "kind"))
	first := Row{Round: true, Number: 1}
	n := rapid.IntRange(6, 12).Draw(t, "first round")
	for range n {
		first.St = append(first.St, St{Kind: k, Counts: true})
	}
	w.Rows = append(w.Rows, first)
	for r := range rapid.IntRange(0, 6).Draw(t, "rounds") {
		below := &w.Rows[len(w.Rows)-1]
		row := Row{Round: true, Number: r + 2, Joined: rapid.Bool().Draw(t, "joined")}
		every := rapid.IntRange(2, r+3).Draw(t, "every")
		for i := range below.St {
			many := 1
			if i%every == 0 {
				many = 2
			}
			if below.St[i].arch() && rapid.Bool().Draw(t, "shell") {
				many = 3
			}
			for range many {
				row.St = append(row.St, St{Kind: k, Feet: []int{i}, Counts: true})
			}
			if rapid.IntRange(0, 9).Draw(t, "space") == 0 && i+1 < len(below.St) {
				row.St = append(row.St, St{Chain: rapid.IntRange(1, 3).Draw(t, "chains"), Counts: true})
			}
		}
		w.Rows = append(w.Rows, row)
	}
	return w
}
