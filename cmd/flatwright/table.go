package main

import (
	"github.com/spf13/cobra"

	"flatwright/cmd/internal/files"
	"flatwright/cmd/internal/job"
)

func newTable(env environment) *cobra.Command {
	var o job.TableOptions
	var d delivery
	cmd := &cobra.Command{
		Use:   "table [flags] PATTERN",
		Short: "List the finished measurements of all sizes",
		Long: `Table lists the measurements that the counts make at the gauge, piece by piece,
in every size, with the bodies that the sizes fit and the measurements that
the designer wrote. It goes to standard output, or into a folder.`,
		Example: `  flatwright table cardigan.yaml
  flatwright table --format markdown cardigan.yaml > measurements.md
  flatwright table --format csv --out tables cardigan.yaml
  flatwright table --size M --units in cardigan.yaml`,
		Args: onePattern,
		RunE: func(cmd *cobra.Command, args []string) error {
			return d.agreed(cmd, env, args[0], func(src job.Source) (job.Result, error) {
				return job.Table(cmd.Context(), src, o)
			})
		},
	}
	f := cmd.Flags()
	choose(cmd, &o.Format, "format", "text", "form of the table", word[string]{"text", "text"}, word[string]{"markdown", "markdown"}, word[string]{"csv", "csv"})
	f.StringVar(&o.Size, "size", "", "this `SIZE` alone")
	chooseUnits(cmd, &o.Units, "units of the values (default both)")
	d.flags(cmd, usageOrFolder, files.Stdio)
	return cmd
}
