package main

import (
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"flatwright/cmd/internal/files"
	"flatwright/cmd/internal/starter"
)

func newNew(env environment) *cobra.Command {
	var names, list []string
	for _, k := range starter.Kinds() {
		names = append(names, k.Name)
		list = append(list, fmt.Sprintf("  %-10s %s", k.Name, k.What))
	}
	cmd := &cobra.Command{
		Use:   "new KIND FILE",
		Short: "Write a commented pattern file to begin with",
		Long: `New writes a whole pattern of a kind of garment, with comments that say what
each line does. It is read and drawn as it stands: change its numbers to your
own. A file that is there already is never written over. The kinds are

` + strings.Join(list, "\n"),
		Example: `  flatwright new cardigan cardigan.yaml
  flatwright new hat - | flatwright draw -`,
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) == 0 {
				return names, cobra.ShellCompDirectiveNoFileComp
			}
			return nil, cobra.ShellCompDirectiveDefault
		},
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 2 {
				return fmt.Errorf("name a kind and a file; the kinds are %s", strings.Join(names, ", "))
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			text := starter.Text(args[0])
			if text == nil {
				return fmt.Errorf("there is no kind %q; the kinds are %s", args[0], strings.Join(names, ", "))
			}
			if args[1] == files.Stdio {
				_, err := env.out.Write(text)
				return err
			}
			if err := files.Create(cmd.Context(), args[1], text); err != nil {
				return &exit{exitUsage, err}
			}
			env.say("wrote %s\n'flatwright serve %s' shows it as a page, 'flatwright draw %s' draws it", args[1], shown(args[1]), shown(args[1]))
			return nil
		},
	}
	return cmd
}

// shown is a path as it is typed.
func shown(path string) string {
	if strings.ContainsAny(path, " '\"()&;") {
		return `"` + path + `"`
	}
	return filepath.Clean(path)
}
