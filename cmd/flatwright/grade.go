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
	var from, bodies, ownFace string
	var d delivery
	cmd := &cobra.Command{
		Use:   "grade [flags] PATTERN",
		Short: "List or draw the grading size by size, or fill it in",
		Long: `Grade works out the counts that a pattern gives as sums of body, ease and gauge,
and lists them size by size: body, ease, target, count, what the count makes and
how far that is from the target. A step that is unlike the others has a mark. With
--explain the arithmetic of one size follows: every sum with its numbers, what each
rounding costs and the next count would, and how shapings, armholes, caps, raglans
and yokes are worked out. In a workbook the sums and the lengths that follow from
them are live formulas, and --from reads it back; text, Markdown and CSV are to
read only. With --fill it gives the pattern file with the numbers written in; with
--from, the pattern file with the values of a spreadsheet in its grading. In both
only those bytes change.`,
		Example: `  flatwright grade cardigan.yaml
  flatwright grade --explain --size M cardigan.yaml
  flatwright grade --format xlsx --out grading cardigan.yaml
  flatwright grade --from grading.xlsx cardigan.yaml > regraded.yaml
  flatwright grade --fill cardigan.yaml > counted.yaml
  flatwright grade --nested cardigan.yaml           a drawing of all sizes in each other
  flatwright grade --bodies women cardigan.yaml     lines for its bodies`,
		Args: onePattern,
		RunE: func(cmd *cobra.Command, args []string) error {
			o.Draw.Creator = "Flatwright"
			if err := gradeConflict(cmd); err != nil {
				return err
			}
			var err error
			if from != "" {
				if o.From, err = d.named(cmd, from); err != nil {
					return err
				}
			}
			if o.Bodies.Name = bodies; strings.ContainsAny(bodies, "./\\") {
				if o.Bodies, err = d.named(cmd, bodies); err != nil {
					return err
				}
			}
			if o.Nested && !cmd.Flags().Changed("out") {
				d.out = ""
			}
			return d.agreed(cmd, env, args[0], func(src job.Source) (job.Result, error) {
				return d.graded(cmd, args[0], ownFace, src, o)
			})
		},
	}
	f := cmd.Flags()
	choose(cmd, &o.Format, "format", "text", "form of the table", word[string]{"text", "text"}, word[string]{"markdown", "markdown"}, word[string]{"csv", "csv"}, word[string]{"xlsx", "xlsx"})
	f.BoolVar(&o.Explain, "explain", false, "show the arithmetic too")
	f.StringVar(&o.Size, "size", "", "with --explain, the arithmetic of this `SIZE` (default the sample's)")
	f.BoolVar(&o.Nested, "nested", false, "draw every piece with all sizes one inside the other, as SVG and PDF")
	f.BoolVar(&o.Draw.Trim, "trim", false, "with --nested, cut the paper to the drawing all round")
	chooseFace(cmd, &ownFace)
	choosePaper(cmd, &o.Draw.Paper, &o.Draw.Orientation)
	f.BoolVar(&o.Fill, "fill", false, "give the pattern file with its sums filled in")
	f.StringVar(&from, "from", "", "take the values of this `SHEET` (.xlsx or .csv) into the grading")
	f.StringVar(&o.Sheet, "sheet", "", "`NAME` of the sheet in a workbook")
	f.StringVar(&bodies, "bodies", "", "give the bodies of this `TABLE` for the pattern's sizes: women, men, children, babies, heads, hands or a file")
	d.flags(cmd, usageOrFolder, files.Stdio)
	return cmd
}

// gradeConflict is the error of flags that do not go together.
func gradeConflict(cmd *cobra.Command) error {
	given := cmd.Flags().Changed
	ways := 0
	for _, flag := range []string{"fill", "from", "bodies", "nested"} {
		if given(flag) {
			ways++
		}
	}
	switch {
	case ways > 1:
		return errors.New("choose one of --fill, --from, --bodies and --nested")
	case given("size") && !given("explain"):
		return errors.New("--size goes with --explain")
	case given("explain") && ways > 0:
		return errors.New("--explain goes with a table, not with --fill, --from, --bodies or --nested")
	}
	return nil
}

// named reads a file, under its name without its folder.
func (d *delivery) named(cmd *cobra.Command, path string) (job.Source, error) {
	src, err := d.readMost(cmd, path, job.MostSheet)
	src.Name = filepath.Base(src.Name)
	return src, err
}

// graded is what grade makes of a pattern; a drawing of it is in the face at path own, or the one that the pattern names.
func (d *delivery) graded(cmd *cobra.Command, pattern, own string, src job.Source, o job.GradeOptions) (job.Result, error) {
	if o.Nested {
		var err error
		if o.Draw.Face, err = d.faceOf(pattern, own, src); err != nil {
			return job.Result{}, err
		}
	}
	return job.Grade(cmd.Context(), src, o)
}
