package main

import (
	"github.com/spf13/cobra"

	"flatwright/schematic/finding"
	"flatwright/schematic/read"
)

func newSchema(env environment) *cobra.Command {
	return &cobra.Command{
		Use:   "schema [pattern|findings]",
		Short: "Print the JSON Schema of a pattern file, or of findings",
		Long: `Schema prints the JSON Schema of a pattern file, with which an editor completes
and checks while you type; or that of the findings that 'check --format json' prints.`,
		Example: `  flatwright schema > flatwright.schema.json
  flatwright schema findings > findings.schema.json

With an editor that knows the YAML language server, this first line does it:
  # yaml-language-server: $schema=flatwright.schema.json`,
		Args:      cobra.MatchAll(cobra.MaximumNArgs(1), cobra.OnlyValidArgs),
		ValidArgs: []string{"pattern", "findings"},
		RunE: func(_ *cobra.Command, args []string) error {
			schema := read.Schema
			if len(args) == 1 && args[0] == "findings" {
				schema = finding.Schema
			}
			if _, err := env.out.Write(schema); err != nil {
				return &exit{exitUsage, err}
			}
			return nil
		},
	}
}
