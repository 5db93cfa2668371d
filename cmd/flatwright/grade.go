package main

import (
	"errors"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"flatwright/cmd/internal/files"
	"flatwright/cmd/internal/job"
)

func newGrade(env environment) *cobra.Command {
	var o job.GradeOptions
	var from, bodies string
	out := files.Stdio
	cmd := &cobra.Command{
		Use:   "grade [flags] PATTERN",
		Short: "Tell or draw the grading size by size, or fill it in",
		Long: `Grade works out the counts that a pattern gives as sums of body, ease and gauge,
and tells them size by size: body, ease, target, count, what the count makes and
how far that is from the target. A step that is unlike the others has a mark. With
--explain the arithmetic of one size follows: every sum with its numbers, what each
rounding costs and the next count would, and how shapings, armholes, caps, raglans
and yokes come about. As a workbook the sums are live formulas. With --fill it gives the pattern file with
the numbers written in; with --from, the pattern file with the values of a
spreadsheet in its grading. In both only those bytes change.`,
		Example: `  flatwright grade cardigan.yaml
  flatwright grade --explain --size M cardigan.yaml
  flatwright grade --format xlsx --out grading cardigan.yaml
  flatwright grade --from grading.xlsx cardigan.yaml > regraded.yaml
  flatwright grade --fill cardigan.yaml > counted.yaml
  flatwright grade --nested cardigan.yaml           a drawing of all sizes in each other
  flatwright grade --bodies women cardigan.yaml     lines for its bodies`,
		Args: onePattern,
		RunE: func(cmd *cobra.Command, args []string) error {
			if given := cmd.Flags().Changed; given("from") && o.Fill || given("bodies") && (o.Fill || given("from")) {
				return errors.New("choose one of --fill, --from and --bodies")
			}
			if given := cmd.Flags().Changed; given("size") && !o.Explain {
				return errors.New("--size goes with --explain")
			}
			if o.Explain && (o.Fill || from != "" || bodies != "" || o.Nested) {
				return errors.New("--explain goes with a table, not with --fill, --from, --bodies or --nested")
			}
			if from != "" {
				text, err := files.Read(cmd.Context(), from, cmd.InOrStdin())
				if err != nil {
					return &exit{exitUsage, err}
				}
				o.From = job.Source{Name: filepath.Base(from), Text: text}
			}
			if bodies != "" {
				o.Bodies.Name = bodies
				if strings.ContainsAny(bodies, "./\\") {
					text, err := files.Read(cmd.Context(), bodies, cmd.InOrStdin())
					if err != nil {
						return &exit{exitUsage, err}
					}
					o.Bodies = job.Source{Name: filepath.Base(bodies), Text: text}
				}
			}
			if o.Draw.Creator = "Flatwright"; o.Nested && out == files.Stdio && !cmd.Flags().Changed("out") {
				out = ""
			}
			return deliver(cmd, env, args[0], out, func(src job.Source) (job.Result, error) {
				return job.Grade(cmd.Context(), src, o)
			})
		},
	}
	f := cmd.Flags()
	choose(cmd, &o.Format, "format", "text", "form of the table", word[string]{"text", "text"}, word[string]{"markdown", "markdown"}, word[string]{"csv", "csv"}, word[string]{"xlsx", "xlsx"})
	f.BoolVar(&o.Explain, "explain", false, "tell the arithmetic too")
	f.StringVar(&o.Size, "size", "", "with --explain, the arithmetic of this `SIZE` (default the sample's)")
	f.BoolVar(&o.Nested, "nested", false, "draw every piece with all sizes one inside the other, as SVG and PDF")
	f.BoolVar(&o.Draw.Trim, "trim", false, "with --nested, cut the paper's height to the drawing")
	choosePaper(cmd, &o.Draw.Paper, &o.Draw.Orientation)
	f.BoolVar(&o.Fill, "fill", false, "give the pattern file with its sums filled in")
	f.StringVar(&from, "from", "", "take the values of this `SHEET` (.xlsx or .csv) into the grading")
	f.StringVar(&o.Sheet, "sheet", "", "`NAME` of the sheet in a workbook")
	f.StringVar(&bodies, "bodies", "", "give the bodies of this `TABLE` for the pattern's sizes: women, men, children, babies, heads, hands or a file")
	f.StringVarP(&out, "out", "o", out, "`FOLDER` to write into, or - for standard output")
	return cmd
}
