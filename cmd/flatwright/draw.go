package main

import (
	"github.com/spf13/cobra"

	"flatwright/cmd/internal/job"
	"flatwright/layout/place"
)

// outFolder is where draw writes unless it is told otherwise; each pattern
// has a folder of its own in it.
const outFolder = "flatwright-out"

func newDraw(env environment) *cobra.Command {
	var o job.DrawOptions
	var sc scale
	var d delivery
	var strict, large bool
	var ownFace string
	cmd := &cobra.Command{
		Use:   "draw [flags] PATTERN",
		Short: "Draw the schematics of every piece",
		Long: `Draw writes the pieces of the garment with labelled measurements: an SVG file
for each size, one for all sizes, and a PDF with all of them, one page each.
They go into a folder that draw names. Draw warns of what does not agree in the
pattern, and draws what the counts make.`,
		Example: `  flatwright draw cardigan.yaml                        every size, as SVG and PDF
  flatwright draw --size M --paper letter cardigan.yaml
  flatwright draw --labels blank --large cardigan.yaml a sheet to fill in
  flatwright draw --labels letters --units in cardigan.yaml
  flatwright draw --size M --format pdf --out - cardigan.yaml > m.pdf`,
		Args: onePattern,
		RunE: func(cmd *cobra.Command, args []string) error {
			drawFlagged(&o, sc, large)
			r, err := d.deliver(cmd, env, args[0], func(src job.Source) (job.Result, error) {
				var err error
				if o.Face, err = d.faceOf(args[0], ownFace, src); err != nil {
					return job.Result{}, err
				}
				return job.Draw(cmd.Context(), src, o)
			})
			if err != nil {
				return err
			}
			brief(env, r.Findings, args[0])
			if strict && weighty(r.Findings) {
				return &exit{exitFindings, nil}
			}
			return nil
		},
	}
	drawFlags(cmd, &o, &sc, &large)
	d.flags(cmd, usageFolderOrIn, "")
	f := cmd.Flags()
	f.Var((*paperWidth)(&o.Width), "width", "a picture of this width, cut to its ink, to set into a page")
	chooseFace(cmd, &ownFace)
	choose(cmd, &o.Outlines, "text", "live", "words as live text with its glyphs, or as outlines", word[bool]{"live", false}, word[bool]{"outlines", true})
	f.StringSliceVar(&o.Show, "show", nil, "`MEASUREMENTS` to draw, and no others, with commas between them")
	f.StringSliceVar(&o.Hide, "hide", nil, "`MEASUREMENTS` not to draw")
	f.Var((*without)(&o.Without), "without", "parts to leave off, with commas between them")
	cmd.Flags().BoolVar(&strict, "strict", false, "exit with 1 if anything does not agree")
	return cmd
}

// drawFlags adds the flags that say how a pattern is drawn; drawFlagged heeds them.
func drawFlags(cmd *cobra.Command, o *job.DrawOptions, sc *scale, large *bool) {
	f := cmd.Flags()
	f.StringVar(&o.Size, "size", "", "draw this `SIZE` alone (for all sizes on one sheet: in this shape)")
	choose(cmd, &o.Labels, "labels", "", "what the measurements say: the values of one size, of all sizes, letters with a table, or blanks",
		word[job.Labels]{"one", job.One}, word[job.Labels]{"all", job.All}, word[job.Labels]{"letters", job.Letters}, word[job.Labels]{"blank", job.Blank})
	chooseUnits(cmd, &o.Units, "units of the values (default both; on the sheet of all sizes, the pattern's own)")
	choosePaper(cmd, &o.Paper, &o.Orientation)
	f.Var(sc, "scale", "scale of the drawings (default the largest usual one that suits them all)")
	f.BoolVar(&o.Trim, "trim", false, "cut the paper to the drawing all round, to set it into a page")
	f.BoolVar(large, "large", false, "large print, 18 point")
	choose(cmd, &o.Format, "format", "", "write only this (default both)", word[string]{"svg", "svg"}, word[string]{"pdf", "pdf"})
}

func drawFlagged(o *job.DrawOptions, sc scale, large bool) {
	o.Scale, o.Creator = float64(sc), "Flatwright"
	if large {
		o.Text = place.Large
	}
}
