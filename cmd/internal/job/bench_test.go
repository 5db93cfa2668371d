package job

import (
	"bytes"
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"flatwright/layout/sheet"
	"flatwright/render/pdf"
	"flatwright/render/svg"
)

// largest is the longest of the examples.
func largest(b *testing.B) Source {
	all := sources(b, "../../../examples/*.yaml")
	big := all[0]
	for _, s := range all {
		if len(s.Text) > len(big.Text) {
			big = s
		}
	}
	return big
}

// BenchmarkDraw is the whole way, from the bytes of the largest example to the
// bytes of every size and all sizes, SVG and PDF. BenchmarkWritersAlone is the
// writers' part of it: the whole should take at most twice as long.
func BenchmarkDraw(b *testing.B) {
	src := largest(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Draw(context.Background(), src, DrawOptions{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWritersAlone(b *testing.B) {
	p, gs, _, err := work(context.Background(), largest(b))
	require.NoError(b, err)
	all, err := drawings(p, DrawOptions{})
	require.NoError(b, err)
	require.NoError(b, lay(context.Background(), gs, all))
	var sheets []*sheet.Sheet
	for _, d := range all {
		sheets = append(sheets, d.sheets...)
	}
	b.ReportAllocs()
	for b.Loop() {
		var out bytes.Buffer
		for _, s := range sheets {
			if err := svg.Write(&out, s); err != nil {
				b.Fatal(err)
			}
		}
		if err := pdf.Write(&out, sheets, pdf.Info{}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkCheck is reading, working and checking alone.
func BenchmarkCheck(b *testing.B) {
	src := largest(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Check(context.Background(), src); err != nil {
			b.Fatal(err)
		}
	}
}
