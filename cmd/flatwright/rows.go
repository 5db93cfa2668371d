package main

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"flatwright/cmd/internal/files"
	"flatwright/cmd/internal/job"
)

func newRows(env environment) *cobra.Command {
	var o job.RowsOptions
	var d delivery
	cmd := &cobra.Command{
		Use:   "rows [flags] PATTERN",
		Short: "Print the rows of every section",
		Long: `Rows prints written rows for every section of a pattern, with the counts of all
sizes in the trade's line or of one size, and how the pieces are made up: a text
to start from that fits the drawing.`,
		Example: `  flatwright rows cardigan.yaml
  flatwright rows --size M --spell-out cardigan.yaml
  flatwright rows --terms uk cardigan.yaml > cardigan-rows.txt`,
		Args: onePattern,
		RunE: func(cmd *cobra.Command, args []string) error {
			return d.agreed(cmd, env, args[0], func(src job.Source) (job.Result, error) {
				return job.Rows(cmd.Context(), src, o)
			})
		},
	}
	f := cmd.Flags()
	f.StringVar(&o.Size, "size", "", "this `SIZE` alone")
	choose(cmd, &o.Terms, "terms", "", "names of the stitches (default the pattern's)", word[string]{"us", "US"}, word[string]{"uk", "UK"})
	f.BoolVar(&o.Evenly, "spell-out", false, "say where each stitch of an even increase or decrease falls")
	d.flags(cmd, usageOrFolder, files.Stdio)
	return cmd
}

func newWords(env environment) *cobra.Command {
	var from, to string
	var list bool
	cmd := &cobra.Command{
		Use:   "words [flags] TEXT",
		Short: "Turn a text from US into UK terms, or back",
		Long: `Words turns the names of stitches in a text of rows from one set of terms into
the other and leaves everything else as it stood. With --abbreviations it
lists the abbreviations that the text uses instead.`,
		Example: `  flatwright words --to uk rows.txt > rows-uk.txt
  flatwright words --from uk --to us rows.txt
  flatwright words --abbreviations rows.txt`,
		Args: oneText,
		RunE: func(cmd *cobra.Command, args []string) error {
			src, err := new(delivery).read(cmd, args[0])
			if err != nil {
				return err
			}
			out, err := words(src, from, to, list)
			if err != nil {
				return fail(err)
			}
			if _, err := env.out.Write(out); err != nil {
				return &exit{exitUsage, err}
			}
			if !list && !job.SaysTerms(out) {
				env.say("the text does not say its terms: write '%s terms' at its top", strings.ToUpper(to))
			}
			return nil
		},
	}
	choose(cmd, &from, "from", "", "the terms it is in (default as the text says)", word[string]{"us", "US"}, word[string]{"uk", "UK"})
	choose(cmd, &to, "to", "", "the terms wanted", word[string]{"us", "US"}, word[string]{"uk", "UK"})
	cmd.Flags().BoolVar(&list, "abbreviations", false, "list the abbreviations that the text uses")
	return cmd
}

// words is a text in other terms, or the list of its abbreviations.
func words(src job.Source, from, to string, list bool) ([]byte, error) {
	if !list {
		if to == "" {
			return nil, &job.OptionError{Text: "say --to us or --to uk"}
		}
		return job.Words(src, from, to)
	}
	var b bytes.Buffer
	for _, a := range job.Abbreviations(src) {
		fmt.Fprintf(&b, "%s\t%s\n", a.Short, a.Long)
	}
	return b.Bytes(), nil
}
