package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"flatwright/cmd/internal/files"
	"flatwright/cmd/internal/job"
	"flatwright/schematic/finding"
)

func newCheck(env environment) *cobra.Command {
	var format string
	var strict bool
	cmd := &cobra.Command{
		Use:   "check [flags] PATTERN...",
		Short: "Find what does not agree",
		Long: `Check works the rows of every size and holds the numbers of the pattern against
each other: divisions, pick-ups and shaping; written measurements against the
counts at the gauge; centimetres against inches; size against size; and the
edges that are sewn together. It never changes a pattern. It exits with 1 if
anything does not agree; notes, which are worth a look, do not count.`,
		Example: `  flatwright check cardigan.yaml
  flatwright check --format json *.yaml
  flatwright check --strict cardigan.yaml      notes count as well`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return errors.New("name a pattern file, or - for standard input")
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			var all finding.List
			sources := map[string][]byte{}
			unreadable := 0
			for _, path := range args {
				text, err := files.Read(cmd.Context(), path, cmd.InOrStdin())
				if err != nil {
					return &exit{exitUsage, err}
				}
				src := source(path, text)
				sources[src.Name] = text
				r, err := job.Check(cmd.Context(), src)
				all = append(all, r.Findings...)
				switch {
				case errors.Is(err, job.ErrUnreadable):
					unreadable++
				case err != nil:
					return fail(err)
				}
			}
			if err := printFindings(env, format, all, sources); err != nil {
				return &exit{exitUsage, err}
			}
			switch {
			case unreadable > 0:
				return &exit{exitUnreadable, job.ErrUnreadable}
			case weighty(all) || strict && len(all) > 0:
				fmt.Fprintf(env.err, "found %s\n", tally(all))
				return &exit{exitFindings, nil}
			case len(all) > 0:
				fmt.Fprintf(env.err, "found %s\n", tally(all))
			}
			return nil
		},
	}
	choose(cmd, &format, "format", "text", "form of the findings", word[string]{"text", "text"}, word[string]{"json", "json"})
	cmd.Flags().BoolVar(&strict, "strict", false, "exit with 1 for notes too")
	return cmd
}

func printFindings(env environment, format string, all finding.List, sources map[string][]byte) error {
	if format == "json" {
		return finding.JSON(env.out, all)
	}
	return finding.Printer{Colour: env.outColour}.Print(env.out, all, sources)
}
