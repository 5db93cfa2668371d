package main

import (
	"github.com/spf13/cobra"

	"flatwright/cmd/internal/job"
)

func newAlter(env environment) *cobra.Command {
	var o job.AlterOptions
	var d delivery
	cmd := &cobra.Command{
		Use:   "alter [flags] PATTERN",
		Short: "Alter one size for one person",
		Long: `Alter works one size out anew for a maker's own gauge, for a longer or shorter
body or sleeve, or with another size for one piece. It writes the drawing and a
text of what changes against the published size and of the rows as they are worked
now, with the yarn where a swatch is known, into a folder that it names, and warns
of what it can't keep. With a gauge of the fabric alone, ribs and bands are scaled
in proportion, which it says. A pattern with a grading is graded anew for
measurements of your own.`,
		Example: `  flatwright alter --size M --gauge '20 sts and 28 rows over 10 cm' cardigan.yaml
  flatwright alter --size M --gauge 'rib: 24 sts and 30 rows over 10 cm' --body '+5 cm' cardigan.yaml
  flatwright alter --size S --piece 'Sleeve: M' --sleeve '-2 in' cardigan.yaml
  flatwright alter --size M --measure 'bust: 98 cm' --measure 'upper arm: 33 cm' jumper.yaml`,
		Args: onePattern,
		RunE: func(cmd *cobra.Command, args []string) error {
			o.Draw.Creator = "Flatwright"
			var pattern job.Source
			r, err := d.deliver(cmd, env, args[0], func(src job.Source) (job.Result, error) {
				pattern = src
				r, err := job.Alter(cmd.Context(), src, o)
				r.Slug += "-altered"
				return r, err
			})
			if err == nil && len(r.Findings) > 0 {
				tell(env, r.Findings, pattern)
			}
			return err
		},
	}
	f := cmd.Flags()
	f.StringVar(&o.Size, "size", "", "the `SIZE` that is altered")
	f.StringArrayVar(&o.Gauges, "gauge", nil, "your own `GAUGE`, stitches and rows, with the name of the pattern's gauge and a colon before it if it is not the first")
	f.StringArrayVar(&o.Gauges, "tension", nil, "the same as --gauge")
	if err := f.MarkHidden("tension"); err != nil {
		panic(err)
	}
	f.StringVar(&o.Body, "body", "", "`LENGTH` by which the body is longer, or with a minus shorter; without a body, a skirt, hat, mitten or sock's leg")
	f.StringVar(&o.Sleeve, "sleeve", "", "`LENGTH` by which the sleeve is longer, or with a minus shorter")
	f.StringArrayVar(&o.Own, "measure", nil, "`BODY: LENGTH`: your own body measurement, in a pattern that is graded from the body")
	f.StringArrayVar(&o.Parts, "piece", nil, "`PIECE: SIZE`: that piece in another size")
	weightFlags(cmd, &o.Yarn)
	chooseUnits(cmd, &o.Draw.Units, "units of the values (default both)")
	choosePaper(cmd, &o.Draw.Paper, &o.Draw.Orientation)
	choose(cmd, &o.Draw.Format, "format", "", "write only this drawing (default both)", word[string]{"svg", "svg"}, word[string]{"pdf", "pdf"})
	d.flags(cmd, usageFolder, "")
	return cmd
}
