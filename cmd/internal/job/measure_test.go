package job

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"flatwright/layout/sheet"
	"flatwright/render/pdf"
	"flatwright/render/svg"
	"flatwright/schematic/bysize"
	"flatwright/schematic/check"
	"flatwright/schematic/expr"
	"flatwright/schematic/read"
)

var measure = flag.Bool("measure", false, "measure the whole way step by step, and write the table of DEVELOPERS.md anew")

// huge is a pattern of 100 pieces in 20 sizes: backs with armholes and a neck, each a
// little wider than the last.
func huge() Source {
	var b strings.Builder
	names, groups := make([]string, 20), []int{1, 4, 5, 5, 5}
	for i := range names {
		names[i] = fmt.Sprintf("S%d", i+1)
	}
	sizes := expr.Sizes{Names: names, Groups: groups}
	line := func(first, step int) string {
		values := make([]string, len(names))
		for i := range values {
			values[i] = fmt.Sprint(first + step*i)
		}
		return sizes.Line(values)
	}
	fmt.Fprintf(&b, "version: 1\npattern: Hundred Pieces\nterms: UK\nunits: cm\nsizes: %s\n", sizes.Line(names))
	b.WriteString("gauges:\n  fabric: 16 sts and 12 rows over 10 cm in htr\npieces:\n")
	for i := range 100 {
		w := 60 + 2*(i%10)
		fmt.Fprintf(&b, "  - piece: Piece %d\n    sections:\n      - cast on: %s\n      - even: %s rows\n", i+1, line(w, 4), line(30+i%7, 1))
		fmt.Fprintf(&b, "      - bind off: 4\n        at: both edges\n        edge: armhole\n      - even: %s rows\n", line(18, 1))
		fmt.Fprintf(&b, "      - divide:\n          - leave: %s\n            edge: shoulder\n", line((w-8)/4, 1))
		fmt.Fprintf(&b, "          - leave: %s\n            edge: neck\n", line(w-8-2*((w-8)/4), 2))
		fmt.Fprintf(&b, "          - leave: %s\n            edge: shoulder\n", line((w-8)/4, 1))
	}
	return Source{Name: "hundred-pieces.yaml", Text: []byte(b.String())}
}

// plotted is what a page is for a plotting script.
type plotted struct {
	W     float64    `json:"w"`
	H     float64    `json:"h"`
	Lines []plotLine `json:"lines"`
	Texts []plotText `json:"texts"`
}

type plotLine struct {
	P     [][2]float64 `json:"p"`
	Width float64      `json:"width"`
	Dash  []float64    `json:"dash"`
	Fill  bool         `json:"fill"`
}

type plotText struct {
	S      string  `json:"s"`
	X      float64 `json:"x"`
	Y      float64 `json:"y"`
	Size   float64 `json:"size"`
	Angle  float64 `json:"angle"`
	Anchor string  `json:"anchor"`
}

func forPlot(s *sheet.Sheet) plotted {
	out := plotted{W: s.W, H: s.H, Lines: []plotLine{}, Texts: []plotText{}}
	sheet.Walk(&s.Root, func(it sheet.Item) {
		switch it := it.(type) {
		case *sheet.Path:
			var ps [][2]float64
			end := func() {
				if len(ps) > 1 {
					out.Lines = append(out.Lines, plotLine{ps, max(it.Style.Width, 0.1), append([]float64{}, it.Style.Dash...), it.Style.Fill != sheet.None})
				}
				ps = nil
			}
			for i := range it.Segs {
				points := it.Segs[i].Points()
				switch it.Segs[i].Verb {
				case sheet.Move:
					end()
					fallthrough
				case sheet.Line, sheet.Cubic:
					last := points[len(points)-1]
					ps = append(ps, [2]float64{last.X, last.Y})
				case sheet.Close:
					if len(ps) > 0 {
						ps = append(ps, ps[0])
					}
				}
			}
			end()
		case *sheet.Text:
			out.Texts = append(out.Texts, plotText{it.S, it.At.X, it.At.Y, it.Size, it.Angle,
				map[sheet.Anchor]string{sheet.Start: "left", sheet.Middle: "center", sheet.End: "right"}[it.Anchor]})
		}
	})
	return out
}

// plot draws the sheets by the plotting script; ok is false if it cannot run here.
func plot(t *testing.T, sheets []*sheet.Sheet) (svgTime, pdfTime time.Duration, svgBytes, pdfBytes int, version string, ok bool) {
	var pages []plotted
	for _, s := range sheets {
		pages = append(pages, forPlot(s))
	}
	text, err := json.Marshal(pages)
	require.NoError(t, err)
	file := filepath.Join(t.TempDir(), "pages.json")
	require.NoError(t, os.WriteFile(file, text, 0o600))
	for _, python := range []string{"/usr/bin/python3", "python3"} { // Debian's own has Debian's packages
		out, err := exec.Command(python, "../../../.ci/plot.py", file).Output()
		if err != nil {
			continue
		}
		var r struct {
			SVG, PDF           float64
			SVGBytes, PDFBytes int
			Version            string
		}
		require.NoError(t, json.Unmarshal(out, &r))
		seconds := func(s float64) time.Duration { return time.Duration(s * float64(time.Second)) }
		return seconds(r.SVG), seconds(r.PDF), r.SVGBytes, r.PDFBytes, r.Version, true
	}
	return 0, 0, 0, 0, "", false
}

// figure is a number in three digits at most, with its unit.
func figure(n float64, units ...string) string {
	i := 0
	for n >= 999.5 && i+1 < len(units) {
		n, i = n/1000, i+1
	}
	if n < 9.95 && n != float64(int(n)) {
		return fmt.Sprintf("%.1f %s", n, units[i])
	}
	return fmt.Sprintf("%.0f %s", n, units[i])
}

func took(d time.Duration) string { return figure(float64(d.Nanoseconds())/1e3, "µs", "ms", "s") }

// TestMeasured is no test unless asked: it prints what each step takes, and puts the
// table into DEVELOPERS.md. Steps run on one goroutine but for the whole.
func TestMeasured(t *testing.T) {
	if !*measure {
		t.Skip("-measure was not given")
	}
	ctx := context.Background()
	var table strings.Builder
	table.WriteString("| garment | step | time | memory | allocations | written |\n|---|---|--:|--:|--:|--:|\n")
	version := ""
	for _, g := range []struct {
		name string
		src  Source
	}{
		{"small", source(t, "pebble-hat.yaml")}, {"large", source(t, "saltmarsh-cardigan.yaml")},
		{"large, graded", source(t, "windlass-raglan.yaml")}, {"huge", huge()},
	} {
		p, gs, r, err := work(ctx, g.src)
		require.NoError(t, err, "%v", r.Findings)
		draws, err := drawings(p, DrawOptions{})
		require.NoError(t, err)
		require.NoError(t, lay(ctx, gs, draws))
		var sheets []*sheet.Sheet
		for _, d := range draws {
			sheets = append(sheets, d.sheets...)
		}
		told := fmt.Sprintf("**%s**: %s, %d × %d, %d pages", g.name, p.Title, len(p.Pieces), p.Sizes.Len(), len(sheets))
		row := func(step string, f func() int) {
			written := 0
			b := testing.Benchmark(func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					written = f()
				}
			})
			size := ""
			if written > 0 {
				size = figure(float64(written), "B", "kB", "MB")
			}
			fmt.Fprintf(&table, "| %s | %s | %s | %s | %s | %s |\n", told, step, took(time.Duration(b.NsPerOp())),
				figure(float64(b.AllocedBytesPerOp()), "B", "kB", "MB"), figure(float64(b.AllocsPerOp()), "", "k", "M"), size)
			told = ""
		}
		row("read", func() int { _, _ = read.Pattern(g.src.Name, g.src.Text); return 0 })
		row("work", func() int { bysize.WorkAll(p); return 0 })
		row("check", func() int { check.Pattern(p, gs); return 0 })
		row("lay out", func() int { require.NoError(t, lay(ctx, gs, draws)); return 0 })
		var out bytes.Buffer
		svgs := func() int {
			out.Reset()
			for _, s := range sheets {
				require.NoError(t, svg.Write(&out, s))
			}
			return out.Len()
		}
		pdfs := func() int {
			out.Reset()
			require.NoError(t, pdf.Write(&out, sheets, pdf.Info{}))
			return out.Len()
		}
		row("write SVG", svgs)
		row("write PDF", pdfs)
		row("both writers alone", func() int { return svgs() + pdfs() })
		row("the whole way", func() int {
			r, err := Draw(ctx, g.src, DrawOptions{})
			require.NoError(t, err)
			n := 0
			for _, f := range r.Files {
				n += len(f.Body)
			}
			return n
		})
		if s, d, sb, db, v, ok := plot(t, sheets); ok {
			version = ", Matplotlib " + v
			fmt.Fprintf(&table, "| | plotting script, SVG | %s | – | – | %s |\n", took(s), figure(float64(sb), "B", "kB", "MB"))
			fmt.Fprintf(&table, "| | plotting script, PDF | %s | – | – | %s |\n", took(d), figure(float64(db), "B", "kB", "MB"))
		} else {
			table.WriteString("| | plotting script, SVG and PDF | – | – | – | – |\n")
		}
	}
	fmt.Fprintf(&table, "\nOn %s/%s with %d processors, %s%s.\n", runtime.GOOS, runtime.GOARCH, runtime.GOMAXPROCS(0), runtime.Version(), version)
	fmt.Print(table.String())

	const file, begin, end = "../../../DEVELOPERS.md", "<!-- measured -->\n", "<!-- end of measured -->\n"
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	before, rest, ok := strings.Cut(string(text), begin)
	_, after, ok2 := strings.Cut(rest, end)
	require.True(t, ok && ok2, "DEVELOPERS.md has the place for the table")
	require.NoError(t, os.WriteFile(file, []byte(before+begin+table.String()+end+after), 0o644))
}
