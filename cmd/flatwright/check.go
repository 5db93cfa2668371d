package main

import (
	"errors"
	"fmt"
	"maps"
	"runtime/debug"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"flatwright/cmd/internal/job"
	"flatwright/schematic/finding"
)

func newCheck(env environment) *cobra.Command {
	var format, rows string
	var strict bool
	var explain int
	cmd := &cobra.Command{
		Use:   "check [flags] [PATTERN|TEXT...]",
		Short: "Find the numbers that do not agree",
		Long: `Check works the rows of every size and holds the numbers of the pattern against
each other: divisions, pick-ups and shaping; written measurements against the
counts at the gauge; centimetres against inches; size against size; and the
edges that are sewn together. Written rows are read and worked for every size:
those in the pattern or in the file that it names, or a text named with --rows.
A text may also stand alone. A row that does not fit, where no slip in one
number explains it, is likely worded otherwise than it was read: it is listed
as not followed, not as a finding. Check never changes a file. It exits with 1
if anything does not agree; notes, which are worth a look, do not count.`,
		Example: `  flatwright check cardigan.yaml
  flatwright check cardigan.yaml --rows cardigan.txt
  flatwright check somebodys-pattern.txt
  flatwright check cardigan.txt --format markdown > report.md
  flatwright check --explain 12 somebodys-pattern.txt
  flatwright check --format json *.yaml
  flatwright check --strict cardigan.yaml      notes count as well`,
		Args: func(_ *cobra.Command, args []string) error {
			return toCheck(len(args), rows, format, explain)
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if explain > 0 {
				return explainLine(cmd, env, args, rows, explain)
			}
			if len(args) == 0 {
				args = []string{""} // the text of rows alone
			}
			var c checked
			for _, path := range args {
				if err := c.check(cmd, path, rows); err != nil {
					return err
				}
			}
			if err := c.print(env, format); err != nil {
				return &exit{exitUsage, err}
			}
			return c.exit(env, strict)
		},
	}
	choose(cmd, &format, "format", "text", "form of the findings", word[string]{"text", "text"}, word[string]{"json", "json"},
		word[string]{"sarif", "sarif"}, word[string]{"markdown", "markdown"})
	cmd.Flags().StringVar(&rows, "rows", "", "the `TEXT` of the written rows")
	cmd.Flags().IntVar(&explain, "explain", 0, "show how the instructions on `LINE` of the text were read, stitch by stitch")
	cmd.Flags().BoolVar(&strict, "strict", false, "exit with 1 for notes too")
	return cmd
}

// toCheck says what is wrong with the files and flags of a check.
func toCheck(files int, rows, format string, explain int) error {
	switch {
	case files == 0 && rows == "":
		return errors.New("name a pattern file or a text of rows, or - for standard input")
	case explain < 0:
		return errors.New("--explain takes a line number, from 1")
	case files > 1 && explain > 0:
		return errors.New("--explain takes one text")
	case files > 1 && (rows != "" || format == "markdown"):
		return errors.New("one text of rows goes with one pattern")
	}
	return nil
}

// explainLine tells how a line of a text of rows was read.
func explainLine(cmd *cobra.Command, env environment, args []string, rows string, line int) error {
	path := ""
	if len(args) > 0 {
		path = args[0]
	}
	src, text, err := new(delivery).patternAndText(cmd, path, rows)
	if err != nil {
		return err
	}
	if text == nil {
		return &exit{exitUsage, errors.New("--explain needs a text of rows: name it, or say --rows")}
	}
	told, err := job.ExplainRows(cmd.Context(), src, *text, line)
	if err != nil {
		return fail(err)
	}
	_, err = fmt.Fprintln(env.out, strings.Join(told, "\n"))
	return err
}

// checked is what was found in all that was checked.
type checked struct {
	findings   finding.List
	sources    map[string][]byte
	unreadable bool
	last       job.RowsResult
}

// check checks a pattern (none if path is empty) with its rows.
func (c *checked) check(cmd *cobra.Command, path, rows string) error {
	src, text, err := new(delivery).patternAndText(cmd, path, rows)
	if err != nil {
		return err
	}
	if c.sources == nil {
		c.sources = map[string][]byte{}
	}
	c.last, err = job.CheckRows(cmd.Context(), src, text)
	maps.Copy(c.sources, c.last.Sources)
	c.findings = append(c.findings, c.last.Findings...)
	if errors.Is(err, job.ErrUnreadable) {
		c.unreadable = true
		return nil
	}
	return fail(err)
}

// print prints what was found; the report in Markdown is of a text of rows.
func (c *checked) print(env environment, format string) error {
	if format != "markdown" || c.unreadable {
		return printFindings(env, format, c.findings, c.sources)
	}
	text, err := c.last.Markdown()
	if err = errors.Join(c.last.NeedsText(), err); err != nil {
		return err
	}
	_, err = env.out.Write(text)
	return err
}

// exit tells how much was found, and is the exit for it.
func (c *checked) exit(env environment, strict bool) error {
	if c.unreadable {
		return &exit{exitUnreadable, job.ErrUnreadable}
	}
	found, unread := c.findings.Apart()
	what := nothing
	if len(found) > 0 {
		what = "found " + tally(found)
	}
	if n := len(slices.DeleteFunc(unread, func(f finding.Finding) bool { return !f.Unfollowed() })); n > 0 {
		what += "; " + count(n, "row") + " not followed"
	}
	env.say("%s", what)
	reading(env, c.last)
	if weighty(found) || strict && len(found) > 0 {
		return &exit{exitFindings, nil}
	}
	return nil
}

// reading says how much of a text of rows was read.
func reading(env environment, r job.RowsResult) {
	if r.NeedsText() != nil {
		return
	}
	if r.Read.Lines == 0 {
		env.say("found no rows to read: begin each with its number, such as Row 1: or Rnd 1:")
		return
	}
	env.say("read %d of %s of rows whole", r.Read.Whole, count(r.Read.Lines, "line"))
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
