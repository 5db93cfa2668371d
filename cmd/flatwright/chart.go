package main

import (
	"github.com/spf13/cobra"

	"flatwright/cmd/internal/job"
	"flatwright/layout/place"
	"flatwright/schematic"
)

func newChart(env environment) *cobra.Command {
	var o job.ChartOptions
	var d delivery
	var text, ownFace string
	var large bool
	cmd := &cobra.Command{
		Use:   "chart [flags] PATTERN|TEXT",
		Short: "Draw stitch charts of the rows",
		Long: `Chart draws the stitch chart of each named stretch of rows in standard symbols,
with a key of those that it uses: crochet in rows and in rounds, knitting on a
grid. It takes a pattern (the rows written in it or beside it, or else those
that its counts make) or a text of rows alone. Long rows and many alike rows
are shortened at a marked break.`,
		Example: `  flatwright chart cardigan.yaml
  flatwright chart --heading Body --size M cardigan.yaml
  flatwright chart --left-handed --large lace.txt
  flatwright chart --format svg --heading Motif --out - motif.txt > motif.svg`,
		Args: onePattern,
		RunE: func(cmd *cobra.Command, args []string) error {
			o.Creator = "Flatwright"
			if large {
				o.Text = place.Large
				if o.Least = 1.6; o.Scale > 0 {
					o.Scale = max(o.Scale, o.Least)
				}
			}
			src, rows, err := d.patternAndText(cmd, args[0], text)
			if err != nil {
				return err
			}
			if o.Face, err = d.chartFace(args[0], ownFace, src); err != nil {
				return err
			}
			r, err := job.Chart(cmd.Context(), src, rows, o)
			if err != nil {
				if src != nil {
					tell(env, r.Findings, *src)
				}
				return fail(err)
			}
			if err := d.put(cmd, env, args[0], r); err != nil {
				return err
			}
			brief(env, r.Findings, args[0])
			if job.HasGap(r.Findings) {
				return &exit{exitFindings, nil}
			}
			return nil
		},
	}
	f := cmd.Flags()
	f.StringVar(&o.Size, "size", "", "chart the counts of this `SIZE` (default the sample's)")
	f.StringVar(&o.Section, "heading", "", "chart the rows under the heading `NAME` alone")
	f.StringVar(&text, "rows", "", "the `TEXT` of the pattern's written rows")
	choose(cmd, &o.Terms, "terms", "", "names of the stitches in the key (default the text's)", word[string]{"us", "US"}, word[string]{"uk", "UK"})
	choosePaper(cmd, &o.Paper, &o.Orientation)
	f.Float64Var(&o.Scale, "symbols", 0, "size of the symbols, 1 for the usual (default the largest that fits a page)")
	f.BoolVar(&o.Trim, "trim", false, "cut the paper to the chart and its key all round, to set it into a page")
	choose(cmd, &o.Outlines, "text", "live", "words of SVG as live text with its glyphs, or as outlines", word[bool]{"live", false}, word[bool]{"outlines", true})
	choose(cmd, &o.Without, "without", "", "a part to leave off", word[schematic.DrawnPart]{"heading", schematic.Heading}, word[schematic.DrawnPart]{"key", schematic.Key}, word[schematic.DrawnPart]{"both", schematic.Heading | schematic.Key})
	chooseFace(cmd, &ownFace)
	f.BoolVar(&large, "large", false, "large print, 18 point")
	f.BoolVar(&o.LeftHanded, "left-handed", false, "the mirror image, for left-handed work")
	f.BoolVar(&o.Gauge, "gauge", false, "squares of a grid as wide and tall as the gauge makes a stitch and a row")
	f.IntVar(&o.Floats, "floats", 0, "list floats over more than this many `STITCHES` (default 5)")
	f.BoolVar(&o.Whole, "whole", false, "leave nothing out of long rows and many rows")
	choose(cmd, &o.Format, "format", "", "write only this (default both)", word[string]{"svg", "svg"}, word[string]{"pdf", "pdf"})
	d.flags(cmd, usageFolderOrIn, "")
	return cmd
}

// chartFace is the face of a chart's words: that at path own, or the one that the pattern names; nil for the house's.
func (d *delivery) chartFace(pattern, own string, src *job.Source) (*job.Source, error) {
	switch {
	case src != nil:
		return d.faceOf(pattern, own, *src)
	case own != "":
		return d.faceOf(pattern, own, job.Source{})
	}
	return nil, nil
}
