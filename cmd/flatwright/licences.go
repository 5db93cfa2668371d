package main

import (
	_ "embed"
	"io"

	"github.com/spf13/cobra"
)

// licences is the licence of this program and of everything that is built into
// it. A test holds it to the modules of the build and writes it anew.
//
//go:embed licences.txt
var licences string

func newLicences(env environment) *cobra.Command {
	return &cobra.Command{
		Use:     "licences",
		Aliases: []string{"licenses"},
		Short:   "Print the licences of this program and of what is in it",
		Example: "  flatwright licences | less",
		Args:    cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			if _, err := io.WriteString(env.out, licences); err != nil {
				return &exit{exitUsage, err}
			}
			return nil
		},
	}
}
