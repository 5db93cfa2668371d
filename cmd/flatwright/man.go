package main

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

func newMan(env environment) *cobra.Command {
	return &cobra.Command{
		Use:   "man",
		Short: "Print the manual page",
		Long: `Man prints the manual page of all commands, in the form that man reads
(the man macros of roff).`,
		Example: `  flatwright man | man -l -
  flatwright man > ~/.local/share/man/man1/flatwright.1`,
		Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			_, err := env.out.Write(manual(cmd.Root()))
			return err
		},
	}
}

// manual is the manual page, made of the same texts as the help.
func manual(root *cobra.Command) []byte {
	m := &roff{}
	m.line(`.TH FLATWRIGHT 1 "" "Flatwright" "User Commands"`)
	m.line(".SH NAME")
	m.text("flatwright - " + strings.ToLower(root.Short[:1]) + root.Short[1:])
	m.line(".SH SYNOPSIS")
	m.line(".B flatwright")
	m.text("COMMAND [flags] [PATTERN]")
	m.line(".SH DESCRIPTION")
	m.paragraphs(root.Long)
	m.line(".SH COMMANDS")
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() {
			m.command(c)
		}
	}
	m.line(".SH EXAMPLES")
	m.verbatim(root.Example)
	m.line(".SH EXIT STATUS")
	for _, e := range []struct {
		code int
		what string
	}{{exitWell, "All is well."}, {exitFindings, "Something in the pattern does not agree."},
		{exitUnreadable, "The pattern cannot be read."}, {exitUsage, "Wrong use, or a file that cannot be read or written."}} {
		m.line(".TP")
		m.line(fmt.Sprintf(".B %d", e.code))
		m.text(e.what)
	}
	m.line(".SH ENVIRONMENT")
	m.line(".TP")
	m.line(".B NO_COLOR")
	m.text("If it is set to anything, nothing is printed in colour.")
	return m.Bytes()
}

// roff writes a page with the man macros.
type roff struct{ bytes.Buffer }

func (m *roff) line(s string) { m.WriteString(s + "\n") }

// text writes lines of text, none of which is taken for a request.
func (m *roff) text(s string) {
	for l := range strings.SplitSeq(strings.TrimRight(s, "\n"), "\n") {
		l = escaped(l)
		if l != "" && (l[0] == '.' || l[0] == '\'') {
			l = `\&` + l
		}
		m.line(l)
	}
}

func escaped(s string) string {
	return strings.NewReplacer(`\`, `\e`, "-", `\-`, "…", `\[u2026]`, "“", `\(lq`, "”", `\(rq`).Replace(s)
}

func (m *roff) paragraphs(s string) {
	for i, p := range strings.Split(strings.TrimSpace(s), "\n\n") {
		if i > 0 {
			m.line(".PP")
		}
		if strings.HasPrefix(p, "  ") || strings.Contains(p, "\n  ") {
			m.verbatim(p)
			continue
		}
		m.text(p)
	}
}

func (m *roff) verbatim(s string) {
	m.line(".PP")
	m.line(".nf")
	m.text(s)
	m.line(".fi")
}

func (m *roff) command(c *cobra.Command) {
	m.line(`.SS "` + strings.ReplaceAll(escaped(strings.TrimPrefix(c.UseLine(), "flatwright ")), `"`, `\(dq`) + `"`)
	long := c.Long
	if long == "" {
		long = c.Short + "."
	}
	m.paragraphs(long)
	c.LocalFlags().VisitAll(func(f *pflag.Flag) {
		if f.Hidden || f.Name == "help" {
			return
		}
		m.line(".TP")
		kind, usage := pflag.UnquoteUsage(f)
		name := "--" + f.Name
		if f.Shorthand != "" {
			name = "-" + f.Shorthand + ", " + name
		}
		if kind != "" {
			name += " " + kind
		}
		m.line(`\fB` + escaped(name) + `\fR`)
		m.text(usage)
	})
	if c.HasExample() {
		m.verbatim(c.Example)
	}
}
