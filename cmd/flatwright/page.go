package main

import (
	"path/filepath"

	"github.com/spf13/cobra"

	"flatwright/cmd/internal/files"
	"flatwright/cmd/internal/job"
)

func newPage(env environment) *cobra.Command {
	var o job.PageOptions
	out := files.Stdio
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
			return produce(cmd, env, args[0], out, func(src job.Source, rows *job.Source) (job.Result, error) {
				o.Rows = rows
				return job.Page(cmd.Context(), src, o)
			})
		},
	}
	f := cmd.Flags()
	f.BoolVar(&o.Snippet, "snippet", false, "a part for another page instead of a whole page")
	f.StringArrayVar(&o.Charts, "chart", nil, "`SECTION` of the rows that is charted; may be given again")
	f.StringVarP(&out, "out", "o", out, "`FOLDER` to write into, or - for standard output")
	return cmd
}

// produce reads a pattern and the rows beside it, lets make do its work, puts the files where
// out says, and tells what does not agree.
func produce(cmd *cobra.Command, env environment, path, out string, make func(src job.Source, rows *job.Source) (job.Result, error)) error {
	return deliver(cmd, env, path, out, func(src job.Source) (job.Result, error) {
		rows, err := rowsBeside(cmd, path, src)
		if err != nil {
			return job.Result{}, err
		}
		return make(src, rows)
	})
}

// deliver is produce for what needs the pattern alone.
func deliver(cmd *cobra.Command, env environment, path, out string, make func(src job.Source) (job.Result, error)) error {
	text, err := files.Read(cmd.Context(), path, cmd.InOrStdin())
	if err != nil {
		return &exit{exitUsage, err}
	}
	src := source(path, text)
	r, err := make(src)
	if err != nil {
		tell(env, r.Findings, src)
		return fail(err)
	}
	if err := put(cmd, env, out, r); err != nil {
		return &exit{exitUsage, err}
	}
	if weighty(r.Findings) {
		brief(env, r.Findings, path)
	}
	return nil
}

// rowsBeside is the file of written rows that a pattern names, or nil if it names none.
func rowsBeside(cmd *cobra.Command, path string, src job.Source) (*job.Source, error) {
	name := job.RowsFile(src)
	if name == "" {
		return nil, nil
	}
	if path != files.Stdio {
		name = filepath.Join(filepath.Dir(path), filepath.FromSlash(name))
	}
	text, err := files.Read(cmd.Context(), name, cmd.InOrStdin())
	if err != nil {
		return nil, err
	}
	return &job.Source{Name: name, Text: text}, nil
}
