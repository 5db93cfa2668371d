package job

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"flatwright/layout/sheet"
	"flatwright/render/pdf"
	"flatwright/render/svg"
	"flatwright/schematic/worn"
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

// BenchmarkDrawPieces is BenchmarkDraw without the garment as worn, which should take at most a third more.
func BenchmarkDrawPieces(b *testing.B) {
	src := largest(b)
	require.NotContains(b, string(src.Text), "\ndrawing:")
	src.Text = append(bytes.Clone(src.Text), "\ndrawing:\n  views: pieces\n"...)
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

// nineSizes is a jumper of nine sizes that is put together as it is worn.
const nineSizes = `version: 1
pattern: Nine
terms: UK
units: cm
sizes: 1 (2, 3, 4, 5) (6, 7, 8, 9)
drawing:
  views: VIEWS
gauges:
  fabric: 20 sts and 28 rows over 10 cm in stocking stitch
pieces:
  - piece: Back
    sections:
      - {cast on: 90 (96, 102, 108, 114) (120, 126, 132, 138), edge: hem}
      - even: 100 rows
      - {even: 60 rows, left edge: armhole, right edge: armhole}
      - divide:
          - {bind off: 30 (33, 36, 39, 42) (45, 48, 51, 54), name: right shoulder, edge: shoulder}
          - {bind off: 30, name: back neck, edge: neck}
          - {bind off: 30 (33, 36, 39, 42) (45, 48, 51, 54), name: left shoulder, edge: shoulder}
  - piece: Front
    sections:
      - {cast on: 90 (96, 102, 108, 114) (120, 126, 132, 138), edge: hem}
      - even: 100 rows
      - {even: 60 rows, left edge: armhole, right edge: armhole}
      - divide:
          - {bind off: 30 (33, 36, 39, 42) (45, 48, 51, 54), name: right shoulder, edge: shoulder}
          - {bind off: 30, name: front neck, edge: neck}
          - {bind off: 30 (33, 36, 39, 42) (45, 48, 51, 54), name: left shoulder, edge: shoulder}
  - piece: Sleeve
    make: 2
    left edge: sleeve seam
    right edge: sleeve seam
    sections:
      - {cast on: 44, edge: cuff}
      - {increase: 1, at: both edges, every: 5 rows, times: 20}
      - {bind off: all, edge: top}
joins:
  - {sew: Back shoulder, to: Front shoulder}
  - {sew: Sleeve top, into: [Back armhole, Front armhole], how: eased by 1 cm}
  - {sew: Back side, to: Front side}
`

// BenchmarkNineSizes is the whole way for nine sizes, SVG and PDF: the pieces alone; both views, which are twice as many sheets; and parts of both
// views: putting together, laying out, and the writers alone. Putting together and laying out the view as worn should take at most a third of the time
// of the pieces alone, and the whole at most twice as long as the writers alone.
func BenchmarkNineSizes(b *testing.B) {
	source := func(views string) Source {
		return Source{Name: "nine.yaml", Text: []byte(strings.Replace(nineSizes, "VIEWS", views, 1))}
	}
	ctx := context.Background()
	for _, v := range []string{"pieces", "as worn, pieces"} {
		b.Run(strings.ReplaceAll(v, ", ", " and "), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Draw(ctx, source(v), DrawOptions{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	p, gs, _, err := work(ctx, source("as worn, pieces"))
	require.NoError(b, err)
	require.NotNil(b, gs[0].Worn)
	all, err := drawings(p, DrawOptions{})
	require.NoError(b, err)
	require.NoError(b, lay(ctx, gs, all))
	b.Run("put together", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			for _, g := range gs {
				worn.Dress(g)
			}
		}
	})
	b.Run("laid out", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if err := lay(ctx, gs, all); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("writers alone", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := render(ctx, p, all, DrawOptions{}); err != nil {
				b.Fatal(err)
			}
		}
	})
}
