package finding

import (
	_ "embed"
	"encoding/json"
	"io"
)

// Schema is the JSON Schema (draft 2020-12) of what JSON writes.
//
//go:embed finding.schema.json
var Schema []byte

type jsonReport struct {
	Version  int           `json:"version"`
	Errors   int           `json:"errors"`
	Warnings int           `json:"warnings"`
	Notes    int           `json:"notes"`
	Findings []jsonFinding `json:"findings"`
	Unread   []jsonFinding `json:"unread"`
}

type jsonFinding struct {
	Kind      string   `json:"kind"`
	Severity  string   `json:"severity"`
	File      string   `json:"file,omitempty"`
	Line      int      `json:"line,omitempty"`
	Column    int      `json:"column,omitempty"`
	EndColumn int      `json:"endColumn,omitempty"`
	Piece     string   `json:"piece,omitempty"`
	Section   string   `json:"section,omitempty"`
	Row       string   `json:"row,omitempty"`
	Sizes     []string `json:"sizes,omitempty"`
	Message   string   `json:"message"`
	Found     string   `json:"found,omitempty"`
	Expected  string   `json:"expected,omitempty"`
	Fix       string   `json:"fix,omitempty"`
}

// JSON writes findings as one JSON object: version 1, the number of errors,
// warnings and notes, the findings in their order, and apart from them what was not read (see Schema). Lines and
// columns count from 1 and are left out where there is no place; sizes are left out
// where all are concerned. The error is w's.
func JSON(w io.Writer, list List) error {
	found, unread := list.Apart()
	r := jsonReport{Version: 1, Findings: jsonList(found), Unread: jsonList(unread)}
	for _, f := range found {
		*[...]*int{&r.Errors, &r.Warnings, &r.Notes}[f.Severity]++
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(r)
}

func jsonList(list List) []jsonFinding {
	out := []jsonFinding{}
	for _, f := range list {
		out = append(out, jsonFinding{
			Kind: f.Kind, Severity: f.Severity.String(),
			File: f.Pos.File, Line: f.Pos.Line, Column: f.Pos.Col, EndColumn: f.Pos.EndCol,
			Piece: f.Piece, Section: f.Section, Row: f.Row, Sizes: f.Sizes,
			Message: f.Message, Found: f.Have, Expected: f.Want, Fix: f.Fix,
		})
	}
	return out
}
