// Package rows reads written rows as the trade writes them, works every row for
// every size, and says where the text, its counts and the pattern do not agree.
// It also turns a text from US into UK words and back, prints the rows of a
// pattern, and yields the graph of stitches from which charts are drawn. It knows
// nothing of paper. Its rooms stand on one line: text cuts a document into words, grammar
// reads them by a declared table, instructions are what comes of it, work works them.
package rows

import (
	"iter"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/rows/grammar"
	"flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/work"
)

// What the rooms give, by the names that callers use.
type (
	// Text is a text of rows as read.
	Text = instructions.Text
	// Section is a stretch of a text under one heading.
	Section = instructions.Section
	// Line is one instruction line.
	Line = instructions.Line
	// Options says what the text does not say itself.
	Options = instructions.Options
	// Reading is how much of a text was read.
	Reading = instructions.Reading
	// Report is what a check found, and how much of the text it could read.
	Report = work.Report
	// Graph is the stitches of one section in one size, row by row.
	Graph = work.Graph
	// GraphRow is one row of a graph.
	GraphRow = work.GraphRow
	// GraphStitch is one symbol of a graph.
	GraphStitch = work.GraphStitch
)

// Read reads a text of written rows. What can't be read stands in the lines'
// Unread, and in the findings of Check; nothing is guessed. The name is for messages.
func Read(name string, src []byte, o Options) *Text { return grammar.Read(name, src, o) }

// Check works every row of the text for every size, and tells what does not fit.
func Check(x *Text, o Options) Report {
	rep := work.Check(x)
	doubt(x, o, rep.Findings)
	rep.Findings = append(rep.Findings, bothUnits(x, rep.Findings)...)
	rep.Findings.Sort()
	rep.Findings = First(x, rep.Findings)
	return rep
}

// Explain tells in plain words how the instructions on a line of the text were read, stitch by stitch; empty
// if none stands there.
func Explain(x *Text, line int) []string { return work.Explain(x, line) }

// Against holds a text against the worked sizes of its pattern, gs, one a size.
func Against(x *Text, p *schematic.Pattern, gs []*schematic.Garment) finding.List {
	return work.Against(x, p, gs)
}

// Graphs gives the stitches of each wanted section that has rows, in the text's order, in one size.
func Graphs(x *Text, size int, want func(*Section) bool) iter.Seq2[*Section, *Graph] {
	return work.Graphs(x, size, want)
}

// GraphOf gives the stitches of a section (empty: the first that has rows) of a text in one
// size. It reports false if there is no such section.
func GraphOf(x *Text, section string, size int) (*Graph, bool) {
	return work.GraphOf(x, section, size)
}

// Joined is a text in which headings part no rows that are numbered on and turned on: Increase, rows 1 to 5; Decrease, rows 6 to 9.
func Joined(x *Text) *Text { return work.Joined(x) }
