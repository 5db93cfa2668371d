package main

import (
	"errors"
	"fmt"
	"runtime/debug"

	"github.com/spf13/cobra"

	"flatwright/cmd/internal/job"
	"flatwright/schematic/finding"
)

func newCheck(env environment) *cobra.Command {
	var format, rows string
	var strict bool
	cmd := &cobra.Command{
		Use:   "check [flags] [PATTERN|TEXT...]",
		Short: "Find what does not agree",
		Long: `Check works the rows of every size and holds the numbers of the pattern against
each other: divisions, pick-ups and shaping; written measurements against the
counts at the gauge; centimetres against inches; size against size; and the
edges that are sewn together. Written rows are read and worked for every size:
those in the pattern or in the file that it names, or a text named with --rows.
A text may also stand alone. Check never changes a file. It exits with 1 if
anything does not agree; notes, which are worth a look, do not count.`,
		Example: `  flatwright check cardigan.yaml
  flatwright check cardigan.yaml --rows cardigan.txt
  flatwright check somebodys-pattern.txt
  flatwright check cardigan.txt --format markdown > report.md
  flatwright check --format json *.yaml
  flatwright check --strict cardigan.yaml      notes count as well`,
		Args: func(_ *cobra.Command, args []string) error {
			switch {
			case len(args) == 0 && rows == "":
				return errors.New("name a pattern file or a text of rows, or - for standard input")
			case len(args) > 1 && (rows != "" || format == "markdown"):
				return errors.New("a text of rows is held against one pattern")
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			var all finding.List
			sources := map[string][]byte{}
			unreadable := 0
			var report job.RowsResult
			if len(args) == 0 {
				args = []string{""}
			}
			for _, path := range args {
				r, err := checkOne(cmd, path, rows, sources)
				all = append(all, r.Findings...)
				report = r
				switch {
				case errors.Is(err, job.ErrUnreadable):
					unreadable++
				case err != nil:
					return fail(err)
				}
			}
			if format == "markdown" && unreadable == 0 {
				text, err := report.Markdown()
				if err = errors.Join(report.NeedsText(), err); err != nil {
					return &exit{exitUsage, err}
				}
				if _, err := env.out.Write(text); err != nil {
					return &exit{exitUsage, err}
				}
			} else if err := printFindings(env, format, all, sources); err != nil {
				return &exit{exitUsage, err}
			}
			switch {
			case unreadable > 0:
				return &exit{exitUnreadable, job.ErrUnreadable}
			case weighty(all) || strict && len(all) > 0:
				fmt.Fprintf(env.err, "found %s\n", tally(all))
				reading(env, report)
				return &exit{exitFindings, nil}
			case len(all) > 0:
				fmt.Fprintf(env.err, "found %s\n", tally(all))
			default:
				fmt.Fprintln(env.err, nothing)
			}
			reading(env, report)
			return nil
		},
	}
	choose(cmd, &format, "format", "text", "form of the findings", word[string]{"text", "text"}, word[string]{"json", "json"},
		word[string]{"sarif", "sarif"}, word[string]{"markdown", "markdown"})
	cmd.Flags().StringVar(&rows, "rows", "", "the `TEXT` of the written rows")
	cmd.Flags().BoolVar(&strict, "strict", false, "exit with 1 for notes too")
	return cmd
}

// checkOne checks a pattern (none if path is empty) with its rows.
func checkOne(cmd *cobra.Command, path, rows string, sources map[string][]byte) (job.RowsResult, error) {
	src, text, err := patternAndText(cmd, path, rows)
	if err != nil {
		return job.RowsResult{}, &exit{exitUsage, err}
	}
	for _, s := range []*job.Source{src, text} {
		if s != nil {
			sources[s.Name] = s.Text
		}
	}
	return job.CheckRows(cmd.Context(), src, text)
}

// reading says how much of a text of rows was read.
func reading(env environment, r job.RowsResult) {
	if r.NeedsText() != nil || r.Read.Lines == 0 {
		return
	}
	fmt.Fprintf(env.err, "read %d of %s of rows whole\n", r.Read.Whole, count(r.Read.Lines, "line"))
}

func printFindings(env environment, format string, all finding.List, sources map[string][]byte) error {
	switch format {
	case "json":
		return finding.JSON(env.out, all)
	case "sarif":
		info, _ := debug.ReadBuildInfo()
		return finding.SARIF(env.out, all, version(info))
	}
	return finding.Printer{Colour: env.outColour}.Print(env.out, all, sources)
}
