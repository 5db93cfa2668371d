package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"flatwright/cmd/internal/job"
	"flatwright/schematic/finding"
)

// The exit codes.
const (
	exitWell       = 0
	exitFindings   = 1 // of check, and of draw --strict
	exitUnreadable = 2 // the pattern cannot be read
	exitUsage      = 3 // wrong use, or files that cannot be read or written
)

// environment is what the commands read from and write to.
type environment struct {
	in        io.Reader
	out, err  io.Writer
	colour    bool // of err
	outColour bool // of out
	opened    bool // from a desktop, by a double click
	browse    func(address string) error
}

// say tells a person a line. Names and texts from elsewhere do nothing to her terminal.
func (e environment) say(format string, args ...any) {
	for i, a := range args {
		switch a := a.(type) {
		case string:
			args[i] = finding.Clean(a)
		case error:
			lines := strings.Split(a.Error(), "\n")
			for k, l := range lines {
				lines[k] = finding.Clean(strings.ReplaceAll(l, "\t", "  "))
			}
			args[i] = strings.TrimSpace(strings.Join(lines, "\n"))
		}
	}
	// standard error that cannot be written leaves nowhere to say so
	fmt.Fprintf(e.err, format+"\n", args...)
}

// exit is an error with its exit code. An error without text has been told
// already.
type exit struct {
	code int
	err  error
}

func (e *exit) Error() string {
	if e.err == nil {
		return ""
	}
	return e.err.Error()
}

func (e *exit) Unwrap() error { return e.err }

// run runs the command line args and gives its exit code.
func run(ctx context.Context, args []string, env environment) int {
	if env.opened && len(args) == 0 {
		args = []string{"serve"}
	}
	root := newRoot(env)
	root.SetArgs(args)
	cmd, err := root.ExecuteContextC(ctx)
	if err == nil {
		return exitWell
	}
	code := exitUsage
	var e *exit
	if errors.As(err, &e) {
		code = e.code
	}
	if err.Error() != "" {
		env.say("flatwright: %s", err)
	}
	if e == nil {
		env.say("See '%s --help'.", cmd.CommandPath())
	}
	return code
}

const usageTemplate = `{{if .HasExample}}Examples:
{{.Example}}

{{end}}{{with (or .Long .Short)}}{{. | trimTrailingWhitespaces}}

{{end}}Use:
  {{if .Runnable}}{{.UseLine}}{{else}}{{.CommandPath}} COMMAND{{end}}
{{if .HasAvailableSubCommands}}
Commands:{{range .Commands}}{{if .IsAvailableCommand}}
  {{rpad .Name .NamePadding}} {{.Short}}{{end}}{{end}}

'{{.CommandPath}} COMMAND --help' shows the details of a command.
{{end}}{{if .HasAvailableLocalFlags}}
Flags:
{{.LocalFlags.FlagUsagesWrapped 78 | trimTrailingWhitespaces}}
{{end}}`

func newRoot(env environment) *cobra.Command {
	root := &cobra.Command{
		Use:   "flatwright",
		Short: "Draw and check a garment pattern from its own numbers",
		Long: `Flatwright draws the schematics and lists the measurements of a crochet or
knitted garment from the numbers of its pattern, and checks that they agree.
A pattern is a text file; '-' in its place means standard input.

Exit codes: 0 all is well, 1 findings, 2 the pattern cannot be read, 3 wrong use,
or a file that cannot be read or written.`,
		Example: `  flatwright new cardigan cardigan.yaml      a commented pattern to begin with
  flatwright serve cardigan.yaml             a page in the browser: change it, see it drawn
  flatwright draw cardigan.yaml              every size, as SVG and PDF
  flatwright check cardigan.yaml             what does not agree
  flatwright table cardigan.yaml             the finished measurements`,
		SilenceErrors: true,
		SilenceUsage:  true,
	}
	root.SetIn(env.in)
	root.SetOut(env.out)
	root.SetErr(env.err)
	root.SetHelpTemplate(usageTemplate)
	root.SetUsageTemplate(usageTemplate)
	root.PersistentPreRunE = nothingEmpty
	root.AddCommand(newNew(env), newServe(env), newWatch(env), newDraw(env), newTable(env), newCheck(env), newChart(env), newRows(env), newWords(env), newGrade(env), newYarn(env), newAlter(env), newPage(env), newHandout(env), newSchema(env), newMan(env), newVersion(env), newLicences(env))
	completion(root)
	return root
}

// nothingEmpty refuses arguments and flags that are there and empty: a script's variable that
// was never set, mostly.
func nothingEmpty(cmd *cobra.Command, args []string) error {
	if strings.HasPrefix(cmd.Name(), cobra.ShellCompRequestCmd) {
		return nil // what is not typed yet is completed
	}
	if slices.Contains(args, "") {
		return errors.New("an argument is empty: it names no file")
	}
	var err error
	cmd.Flags().Visit(func(f *pflag.Flag) {
		many, ok := f.Value.(pflag.SliceValue)
		if ok && slices.Contains(many.GetSlice(), "") || !ok && f.Value.String() == "" {
			err = fmt.Errorf("--%s is empty: give it a value, or leave it out", f.Name)
		}
	})
	return err
}

// onePattern asks for one pattern file.
func onePattern(cmd *cobra.Command, args []string) error {
	switch len(args) {
	case 0:
		return errors.New("name a pattern file, or - for standard input")
	case 1:
		return nil
	}
	return fmt.Errorf("%s takes one pattern file, and here are %d: %s", cmd.Name(), len(args), strings.Join(args, ", "))
}

// oneText asks for one text of rows.
func oneText(cmd *cobra.Command, args []string) error {
	if len(args) != 1 {
		return fmt.Errorf("name one text of rows for %s, or - for standard input", cmd.Name())
	}
	return nil
}

// fail is the exit of a job's error.
func fail(err error) error {
	var option *job.OptionError
	switch {
	case err == nil:
		return nil
	case errors.Is(err, job.ErrUnreadable):
		return &exit{exitUnreadable, err}
	case errors.As(err, &option):
		return err
	}
	return &exit{exitUsage, err}
}

// colourful reports whether f is a terminal that takes colours (no-color.org:
// NO_COLOR, set to anything, wants none).
func colourful(f *os.File, getenv func(string) string) bool {
	if getenv("NO_COLOR") != "" || getenv("TERM") == "dumb" {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&fs.ModeCharDevice != 0
}
