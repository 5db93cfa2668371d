package main

import (
	"github.com/spf13/cobra"

	"flatwright/cmd/internal/job"
	"flatwright/layout/place"
)

func newHandout(env environment) *cobra.Command {
	var o job.HandoutOptions
	var worksheet, life, mistake bool
	var orientation place.Orientation
	var ownFace string
	var d delivery
	cmd := &cobra.Command{
		Use:   "handout [flags] PATTERN",
		Short: "Write the pattern as pages to print",
		Long: `Handout writes a PDF to print: what the garment is and what is needed, the
measurements, the schematic, the instructions, and room for notes. With a size,
its numbers stand out, or stand alone. A worksheet leaves the measurements of
one size blank (the sample's if none is named), to be worked out from counts and
gauge, and comes with its answers. A sheet with a mistake has the counts and
measurements of all sizes, one of them wrong in some sizes; the seed says which.
Life size draws the pieces at 1:1 over as many sheets as it takes.`,
		Example: `  flatwright handout cardigan.yaml                        all sizes
  flatwright handout --size M cardigan.yaml               size M stands out
  flatwright handout --size M --alone --large cardigan.yaml
  flatwright handout --size M --worksheet --little-ink cardigan.yaml
  flatwright handout --find-the-mistake --seed 7 cardigan.yaml
  flatwright handout --size M --life-size --paper letter cardigan.yaml`,
		Args: onePattern,
		RunE: func(cmd *cobra.Command, args []string) error {
			o.Creator = "Flatwright"
			switch {
			case worksheet:
				o.Kind = job.ForClass
			case life:
				o.Kind = job.AtLifeSize
			case mistake:
				o.Kind = job.WithMistake
			}
			return d.produce(cmd, env, args[0], func(src job.Source, rows *job.Source) (job.Result, error) {
				o.Rows = rows
				var err error
				if o.Face, err = d.faceOf(args[0], ownFace, src); err != nil {
					return job.Result{}, err
				}
				if o.Kind == job.WholePattern && !o.Little {
					if o.Photos, err = d.photosBeside(cmd, args[0], src); err != nil {
						return job.Result{}, err
					}
				}
				return job.Handout(cmd.Context(), src, o)
			})
		},
	}
	f := cmd.Flags()
	f.StringVar(&o.Size, "size", "", "the `SIZE` whose numbers stand out")
	f.BoolVar(&o.Alone, "alone", false, "print the numbers of that size alone")
	f.BoolVar(&worksheet, "worksheet", false, "a worksheet for a class, and its answers")
	f.BoolVar(&mistake, "find-the-mistake", false, "a sheet for a class with one measurement wrong, and the answer")
	f.Uint64Var(&o.Seed, "seed", 1, "`NUMBER` that says which mistake: the same one makes the same sheet")
	f.BoolVar(&life, "life-size", false, "the pieces at life size, to block on")
	f.BoolVar(&o.Large, "large", false, "large print, 18 point and up")
	f.BoolVar(&o.Little, "little-ink", false, "thinner lines, fewer ribs, no grounds")
	chooseUnits(cmd, &o.Units, "units of the lengths (default both)")
	choosePaper(cmd, &o.Paper, &orientation)
	// pages of text are upright
	_ = f.MarkHidden("orientation")
	chooseFace(cmd, &ownFace)
	f.StringArrayVar(&o.Charts, "chart", nil, "`SECTION` of the rows that is charted; may be given again")
	d.flags(cmd, usageFolderOrIn, "")
	cmd.MarkFlagsMutuallyExclusive("worksheet", "life-size", "find-the-mistake")
	return cmd
}
