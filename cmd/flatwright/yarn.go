package main

import (
	"github.com/spf13/cobra"

	"flatwright/cmd/internal/files"
	"flatwright/cmd/internal/job"
)

func newYarn(env environment) *cobra.Command {
	var o job.YarnOptions
	var d delivery
	cmd := &cobra.Command{
		Use:   "yarn [flags] PATTERN",
		Short: "Work out the yarn for every size",
		Long: `Yarn works out grams, metres, yards and balls for each size from the area of the
pieces and what a swatch, or the finished sample, weighs. It takes the weights
from the pattern file unless they are given here, and holds the result against
the yarn that the pattern states.`,
		Example: `  flatwright yarn cardigan.yaml
  flatwright yarn --swatch '12 g over 15 x 15 cm' --swatch 'rib: 8 g over 10 x 10 cm' cardigan.yaml
  flatwright yarn --sample-weight '412 g' --ball '50 g, 120 m' --allowance '10 %' cardigan.yaml`,
		Args: onePattern,
		RunE: func(cmd *cobra.Command, args []string) error {
			r, err := d.deliver(cmd, env, args[0], func(src job.Source) (job.Result, error) {
				return job.Yarn(cmd.Context(), src, o)
			})
			if err == nil {
				brief(env, r.Findings, args[0])
			}
			return err
		},
	}
	f := cmd.Flags()
	weightFlags(cmd, &o)
	f.BoolVar(&o.Explain, "explain", false, "show the arithmetic too")
	d.flags(cmd, usageOrFolder, files.Stdio)
	return cmd
}

func weightFlags(cmd *cobra.Command, o *job.YarnOptions) {
	f := cmd.Flags()
	f.StringArrayVar(&o.Swatches, "swatch", nil, "`WEIGHT` of a swatch: '12 g over 15 x 15 cm', with a gauge's name and a colon before it if it is not the first")
	f.StringVar(&o.Sample, "sample-weight", "", "`WEIGHT` of the finished sample: '412 g'")
	f.StringVar(&o.Ball, "ball", "", "a `BALL`: '50 g, 120 m'")
	f.StringVar(&o.Allowance, "allowance", "", "how much more: '10 %'")
}
