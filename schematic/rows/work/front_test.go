package work

import (
	"flatwright/schematic/rows/grammar"
	ins "flatwright/schematic/rows/instructions"
)

// The tests read their texts, and call the rooms below by one name.

type (
	Text    = ins.Text
	Options = ins.Options
	Section = ins.Section
	Line    = ins.Line
)

var Read = grammar.Read
