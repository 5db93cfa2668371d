package main

import (
	"github.com/spf13/cobra"

	"flatwright/cmd/internal/files"
	"flatwright/cmd/internal/job"
)

func newPage(env environment) *cobra.Command {
	var o job.PageOptions
	var ownFace string
	var d delivery
	cmd := &cobra.Command{
		Use:   "page [flags] PATTERN",
		Short: "Write a web page on which a person chooses her size",
		Long: `Page writes one HTML file with the schematic, the measurements, what is needed and
the instructions. A person chooses her size and unit, and every number and
drawing follows; no script is needed, and nothing is fetched from anywhere. A
snippet is the same as a part to put into any other page, which it leaves as
it is. It goes to standard output, or into a folder.`,
		Example: `  flatwright page cardigan.yaml > cardigan.html
  flatwright page --snippet cardigan.yaml > part-of-my-page.html
  flatwright page --out site cardigan.yaml`,
		Args: onePattern,
		RunE: func(cmd *cobra.Command, args []string) error {
			return d.produce(cmd, env, args[0], func(src job.Source, rows *job.Source) (job.Result, error) {
				o.Rows = rows
				var err error
				if o.Photos, err = d.photosBeside(cmd, args[0], src); err != nil {
					return job.Result{}, err
				}
				if o.Face, err = d.faceOf(args[0], ownFace, src); err != nil {
					return job.Result{}, err
				}
				return job.Page(cmd.Context(), src, o)
			})
		},
	}
	f := cmd.Flags()
	f.BoolVar(&o.Snippet, "snippet", false, "a part for another page instead of a whole page")
	chooseFace(cmd, &ownFace)
	f.StringArrayVar(&o.Charts, "chart", nil, "`SECTION` of the rows that is charted; may be given again")
	d.flags(cmd, usageOrFolder, files.Stdio)
	return cmd
}

// produce is agreed for what needs the rows beside the pattern too.
func (d *delivery) produce(cmd *cobra.Command, env environment, path string, make func(src job.Source, rows *job.Source) (job.Result, error)) error {
	return d.agreed(cmd, env, path, func(src job.Source) (job.Result, error) {
		rows, err := d.rowsBeside(cmd, path, src)
		if err != nil {
			return job.Result{}, err
		}
		return make(src, rows)
	})
}
