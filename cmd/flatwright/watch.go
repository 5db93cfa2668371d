package main

import (
	"errors"

	"github.com/spf13/cobra"

	"flatwright/cmd/internal/files"
	"flatwright/cmd/internal/job"
)

func newWatch(env environment) *cobra.Command {
	var o job.DrawOptions
	var sc scale
	var d delivery
	var large bool
	cmd := &cobra.Command{
		Use:   "watch [flags] PATTERN",
		Short: "Draw again whenever the pattern file changes",
		Long: `Watch draws as 'draw' does, and again whenever PATTERN has changed. If it can't
be read, watch names the line, and the drawings stay as they were until that is
put right. An interrupt (Ctrl+C) ends it, and leaves every file whole.`,
		Example: `  flatwright watch cardigan.yaml
  flatwright watch --size M --format svg cardigan.yaml
  flatwright watch --out drawings cardigan.yaml`,
		Args: onePattern,
		RunE: func(cmd *cobra.Command, args []string) error {
			drawFlagged(&o, sc, large)
			if args[0] == files.Stdio || d.out == files.Stdio {
				return errors.New("watch needs a file to watch and a folder to write into")
			}
			if _, err := files.Read(cmd.Context(), args[0], nil); err != nil {
				return &exit{exitUsage, err}
			}
			files.Watch(cmd.Context(), args[0], func(text []byte, err error) {
				if err != nil {
					env.say("%s; waiting for it", err)
					return
				}
				again(cmd, env, &d, job.Source{Name: args[0], Text: text}, o)
			})
			env.say("ended")
			return nil
		},
	}
	drawFlags(cmd, &o, &sc, &large)
	d.flags(cmd, usageFolder, "")
	d.by = "draw" // the same drawings
	return cmd
}

// again draws one state of the file, and tells what there is to tell.
func again(cmd *cobra.Command, env environment, d *delivery, src job.Source, o job.DrawOptions) {
	r, err := job.Draw(cmd.Context(), src, o)
	if cmd.Context().Err() != nil {
		return
	}
	if err != nil {
		tell(env, r.Findings, src)
		env.say("%s; the drawings are as they were", err)
		return
	}
	d.inputs = []string{src.Name}
	if err := d.put(cmd, env, src.Name, r); err != nil {
		env.say("%s", err)
		return
	}
	brief(env, r.Findings, src.Name)
}
