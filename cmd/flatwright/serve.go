package main

import (
	"fmt"
	"runtime/debug"

	"github.com/spf13/cobra"

	"flatwright/cmd/internal/serve"
)

func newServe(env environment) *cobra.Command {
	var port int
	var show bool
	cmd := &cobra.Command{
		Use:   "serve [flags] [PATTERN]",
		Short: "Show a pattern as a page in the browser, to change and draw it there",
		Long: `Serve opens a page on this computer: a form and the text of the pattern on the
left, the drawing as you type on the right, with what does not agree and
everything to download. It saves to PATTERN; without one it opens an example,
and asks for a name when you save. Nothing leaves this computer, and no one
else can open the page: its address lets in one browser, once. An interrupt
(Ctrl+C) ends it.`,
		Example: `  flatwright serve cardigan.yaml
  flatwright serve                       an example to look at
  flatwright serve --open=false cardigan.yaml`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			o := serve.Options{Port: port}
			if len(args) == 1 {
				o.File = args[0]
			}
			info, _ := debug.ReadBuildInfo()
			o.Version = version(info)
			return page(cmd, env, o, show)
		},
	}
	cmd.Flags().IntVar(&port, "port", 0, fmt.Sprintf("`PORT` to listen on (default %d, or the next that is free)", serve.Port))
	cmd.Flags().BoolVar(&show, "open", true, "open the browser")
	return cmd
}

// page serves until it is interrupted.
func page(cmd *cobra.Command, env environment, o serve.Options, show bool) error {
	s, err := serve.New(cmd.Context(), o)
	if err != nil {
		return &exit{exitUsage, err}
	}
	env.say("open %s in a browser; Ctrl+C ends it", s.Address())
	if show && env.browse != nil {
		file, err := s.Hand()
		if err == nil {
			err = env.browse(file)
		}
		if err != nil {
			env.say("no browser could be opened from here: open the address by hand")
		}
	}
	if err := s.Run(cmd.Context()); err != nil {
		return &exit{exitUsage, err}
	}
	env.say("ended")
	return nil
}
