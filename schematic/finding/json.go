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
	Sizes     []string `json:"sizes,omitempty"`
	Message   string   `json:"message"`
	Found     string   `json:"found,omitempty"`
	Expected  string   `json:"expected,omitempty"`
	Fix       string   `json:"fix,omitempty"`
}

// JSON writes findings as one JSON object: version 1, the number of errors,
// warnings and notes, and the findings in their order (see Schema). Lines and
// columns count from 1 and are left out where there is no place; sizes are left out
// where all are concerned. The error is w's.
func JSON(w io.Writer, list List) error {
	r := jsonReport{Version: 1, Findings: []jsonFinding{}}
	for _, f := range list {
		switch f.Severity {
		case Error:
			r.Errors++
		case Warning:
			r.Warnings++
		default:
			r.Notes++
		}
		r.Findings = append(r.Findings, jsonFinding{
			Kind: f.Kind, Severity: f.Severity.String(),
			File: f.Pos.File, Line: f.Pos.Line, Column: f.Pos.Col, EndColumn: f.Pos.EndCol,
			Piece: f.Piece, Section: f.Section, Sizes: f.Sizes,
			Message: f.Message, Found: f.Have, Expected: f.Want, Fix: f.Fix,
		})
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(r)
}
