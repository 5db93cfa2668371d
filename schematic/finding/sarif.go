package finding

import (
	"encoding/json"
	"fmt"
	"io"
	"net/url"
	"path/filepath"
	"strings"
)

// The parts of SARIF 2.1.0 (OASIS Standard, 2020) that findings need.
type (
	sarifLog struct {
		Schema  string     `json:"$schema"`
		Version string     `json:"version"`
		Runs    []sarifRun `json:"runs"`
	}
	sarifRun struct {
		Tool       sarifTool     `json:"tool"`
		Calls      []sarifCall   `json:"invocations,omitempty"`
		Language   string        `json:"language"`
		Newlines   []string      `json:"newlineSequences"`
		ColumnKind string        `json:"columnKind"`
		Results    []sarifResult `json:"results"`
	}
	// sarifCall carries what the standard calls notifications: conditions of the run, no results.
	sarifCall struct {
		OK    bool         `json:"executionSuccessful"`
		Notes []sarifNotes `json:"toolExecutionNotifications"`
	}
	sarifNotes struct {
		Level     string          `json:"level"`
		Message   sarifText       `json:"message"`
		Locations []sarifLocation `json:"locations,omitempty"`
	}
	sarifTool struct {
		Driver sarifDriver `json:"driver"`
	}
	sarifDriver struct {
		Name     string      `json:"name"`
		Language string      `json:"language"`
		Version  string      `json:"version,omitempty"`
		Rules    []sarifRule `json:"rules,omitempty"`
	}
	sarifRule struct {
		ID    string    `json:"id"`
		Short sarifText `json:"shortDescription"`
	}
	sarifText struct {
		Text string `json:"text"`
	}
	sarifResult struct {
		RuleID     string          `json:"ruleId"`
		RuleIndex  *int            `json:"ruleIndex,omitempty"`
		Level      string          `json:"level"`
		Message    sarifText       `json:"message"`
		Locations  []sarifLocation `json:"locations,omitempty"`
		Properties map[string]any  `json:"properties,omitempty"`
	}
	sarifLocation struct {
		Physical *sarifPhysical `json:"physicalLocation,omitempty"`
		Logical  []sarifLogical `json:"logicalLocations,omitempty"`
	}
	sarifPhysical struct {
		Artifact struct {
			URI string `json:"uri"`
		} `json:"artifactLocation"`
		Region *sarifRegion `json:"region,omitempty"`
	}
	sarifRegion struct {
		StartLine   int `json:"startLine"`
		StartColumn int `json:"startColumn,omitempty"`
		EndColumn   int `json:"endColumn,omitempty"`
	}
	sarifLogical struct {
		Name string `json:"name"`
	}
)

// SARIF writes findings as a SARIF 2.1.0 log, which editors and code hosts show; what was not read is
// a notification of the run and no result.
// Version is the program's, or empty. Columns are counted in characters (unicode
// code points), as Pos counts them. The error is w's.
func SARIF(w io.Writer, list List, version string) error {
	run := sarifRun{Language: "en-GB", Newlines: []string{"\r\n", "\n"}, ColumnKind: "unicodeCodePoints", Results: []sarifResult{}}
	run.Tool.Driver = sarifDriver{Name: "flatwright", Language: "en-GB", Version: version}
	rules := map[string]int{}
	list, unread := list.Apart()
	if len(unread) > 0 {
		run.Calls = []sarifCall{{OK: true}}
	}
	for _, f := range unread {
		run.Calls[0].Notes = append(run.Calls[0].Notes, sarifNotes{Level: "note", Message: sarifText{whole(f)}, Locations: locations(f)})
	}
	for _, f := range list {
		at, there := rules[f.Kind]
		if !there {
			at = len(run.Tool.Driver.Rules)
			rules[f.Kind] = at
			run.Tool.Driver.Rules = append(run.Tool.Driver.Rules, sarifRule{ID: f.Kind, Short: sarifText{about(f.Kind)}})
		}
		r := sarifResult{RuleID: f.Kind, RuleIndex: &at, Level: f.Severity.String(), Message: sarifText{whole(f)}, Locations: locations(f)}
		if len(f.Sizes) > 0 {
			r.Properties = map[string]any{"sizes": f.Sizes}
		}
		run.Results = append(run.Results, r)
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(sarifLog{Schema: "https://json.schemastore.org/sarif-2.1.0.json", Version: "2.1.0", Runs: []sarifRun{run}})
}

// locations are where a finding is: in the file, and in the pattern.
func locations(f Finding) []sarifLocation {
	var loc sarifLocation
	if f.Pos.File != "" {
		loc.Physical = &sarifPhysical{Region: region(f.Pos)}
		loc.Physical.Artifact.URI = fileURI(f.Pos.File)
	}
	for _, name := range []string{f.Piece, f.Section, f.Row} {
		if name != "" {
			loc.Logical = append(loc.Logical, sarifLogical{name})
		}
	}
	if loc.Physical == nil && len(loc.Logical) == 0 {
		return nil
	}
	return []sarifLocation{loc}
}

// region is a place in a file, or nil if no line is known.
func region(p Pos) *sarifRegion {
	if p.Line == 0 {
		return nil
	}
	g := &sarifRegion{StartLine: p.Line}
	if p.Col > 0 {
		g.StartColumn = p.Col
		if p.EndCol > p.Col {
			g.EndColumn = p.EndCol
		}
	}
	return g
}

func about(kind string) string {
	for _, a := range Kinds {
		if a.Kind == kind {
			return a.What
		}
	}
	return kind
}

// whole is a finding in one paragraph.
func whole(f Finding) string {
	var b strings.Builder
	b.WriteString(f.Message)
	for _, p := range []struct{ name, text string }{{"found", f.Have}, {"expected", f.Want}, {"fix", f.Fix}} {
		if p.text != "" {
			fmt.Fprintf(&b, "; %s: %s", p.name, p.text)
		}
	}
	if len(f.Sizes) > 0 {
		fmt.Fprintf(&b, " (%s %s)", sizeWord(f.Sizes), strings.Join(f.Sizes, ", "))
	}
	return b.String()
}

// fileURI is a path as a relative or absolute reference.
func fileURI(path string) string {
	path = filepath.ToSlash(path)
	u := url.URL{Path: path}
	if strings.HasPrefix(path, "/") {
		u.Scheme = "file"
	} else if len(path) > 2 && path[1] == ':' && path[2] == '/' {
		u.Scheme, u.Path = "file", "/"+path
	}
	return u.String()
}
