package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"flatwright/cmd/internal/files"
	"flatwright/cmd/internal/job"
	"flatwright/schematic/finding"
)

// summary says what was written.
func summary(env environment, folder string, r job.Result) {
	about := r.Title
	switch n := len(r.Sizes); {
	case n == 1 && r.Sizes[0] != "":
		about += ": size " + r.Sizes[0]
	case n > 1:
		about += fmt.Sprintf(": %d sizes, %s to %s", n, first(r.Sizes), last(r.Sizes))
	}
	if r.Pieces > 0 { // a text of rows has none
		about += ", " + count(r.Pieces, "piece")
	}
	env.say("%s", about)
	env.say("wrote %s into %s%c:", count(len(r.Files), "file"), folder, filepath.Separator)
	for _, f := range r.Files {
		env.say("  %s", f.Name)
	}
}

func first(s []string) string { return s[0] }

func last(s []string) string { return s[len(s)-1] }

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// nothing is what is said where all is well.
const nothing = "no problems found"

// tell prints findings in full on standard error.
func tell(env environment, list finding.List, src job.Source) {
	// standard error that cannot be written leaves nowhere to say so
	_ = finding.Printer{Colour: env.colour}.Print(env.err, list, map[string][]byte{src.Name: src.Text})
}

// brief tells findings in a line each, and how to hear more.
func brief(env environment, list finding.List, path string) {
	list, unread := list.Apart()
	if len(unread) > 0 {
		env.say("%s of written rows not read", count(len(unread), "line"))
	}
	if len(list) == 0 {
		env.say("%s", nothing)
		return
	}
	env.say("found %s:", tally(list))
	checked := false // what is told of the drawing, check does not tell
	for _, f := range list {
		if job.OfTheDrawing(f) {
			env.say("  %s; %s", f, f.Fix)
			continue
		}
		checked = true
		env.say("  %s", f)
	}
	if checked && path != files.Stdio {
		env.say("'flatwright check %s' shows the details", path)
	}
}

// tally counts findings by severity: 1 error, 2 warnings.
func tally(list finding.List) string {
	var n [3]int
	for _, f := range list {
		n[f.Severity]++
	}
	var parts []string
	for s, k := range n {
		if k > 0 {
			parts = append(parts, count(k, finding.Severity(s).String()))
		}
	}
	return strings.Join(parts, ", ")
}

// weighty reports whether any finding is more than a note.
func weighty(list finding.List) bool {
	return slices.ContainsFunc(list, func(f finding.Finding) bool { return f.Severity != finding.Note })
}
