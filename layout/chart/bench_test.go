package chart

import (
	"testing"

	"github.com/stretchr/testify/require"

	"flatwright/schematic/stitch"
)

// lacy is a work of so many rows and stitches: a fan and a stitch by turns.
func lacy(rows, repeats int) *Work {
	w := &Work{Title: "Shells"}
	base := Row{Base: true}
	for range 6*repeats + 1 {
		base.St = append(base.St, St{Kind: stitch.ByID("ch"), Counts: true})
	}
	w.Rows = append(w.Rows, base)
	sc, dc := stitch.ByID("sc"), stitch.ByID("dc")
	for r := range rows {
		row := Row{Number: r + 1, Wrong: r%2 == 1}
		n := 6*repeats + 1
		for k := 0; k < n; k++ {
			foot := n - 1 - k
			switch {
			case k%6 == 0:
				row.St = append(row.St, St{Kind: sc, Feet: []int{foot}, Counts: true})
			case k%6 == 3:
				for range 5 {
					row.St = append(row.St, St{Kind: dc, Feet: []int{foot}, Counts: true})
				}
			}
		}
		w.Rows = append(w.Rows, row)
	}
	return w
}

func benchmarkRows(b *testing.B, rows, repeats int) {
	w := lacy(rows, repeats)
	b.ReportAllocs()
	for b.Loop() {
		_, err := Draw(w, Options{Whole: true, Scale: 1})
		require.NoError(b, err)
	}
	b.ReportMetric(float64(made(w)), "stitches")
}

func BenchmarkRowsOf2500Stitches(b *testing.B)  { benchmarkRows(b, 25, 16) }
func BenchmarkRowsOf5000Stitches(b *testing.B)  { benchmarkRows(b, 50, 16) }
func BenchmarkRowsOf10000Stitches(b *testing.B) { benchmarkRows(b, 100, 16) }
func BenchmarkWideRowsOf10000Stitches(b *testing.B) {
	benchmarkRows(b, 10, 166)
}

func BenchmarkRoundsOf10000Stitches(b *testing.B) {
	w := flatCircle(stitch.ByID("dc"), 12, 40)
	b.ReportAllocs()
	for b.Loop() {
		_, err := Draw(w, Options{Whole: true, Scale: 0.5})
		require.NoError(b, err)
	}
	b.ReportMetric(float64(made(w)), "stitches")
}

// flatCircle grows by n stitches a round, spread over the round.
func flatCircle(k *stitch.Stitch, n, rounds int) *Work {
	w := &Work{Title: "Circle"}
	first := Row{Round: true, Number: 1}
	for range n {
		first.St = append(first.St, St{Kind: k, Counts: true})
	}
	w.Rows = append(w.Rows, first)
	for r := 2; r <= rounds; r++ {
		row := Row{Round: true, Number: r}
		for i := range (r - 1) * n {
			row.St = append(row.St, St{Kind: k, Feet: []int{i}, Counts: true})
			if i%(r-1) == r-2 {
				row.St = append(row.St, St{Kind: k, Feet: []int{i}, Counts: true})
			}
		}
		w.Rows = append(w.Rows, row)
	}
	return w
}

func BenchmarkAMotifOf40Rounds(b *testing.B) {
	w := grannyOf(40)
	require.Len(b, w.Rows, 41)
	b.ReportAllocs()
	for b.Loop() {
		_, err := Draw(w, Options{Whole: true, Scale: 0.4})
		require.NoError(b, err)
	}
	b.ReportMetric(float64(made(w)), "stitches")
}
