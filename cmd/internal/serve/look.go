package serve

import (
	"bytes"
	"context"
	"errors"
	"net/http"

	"flatwright/cmd/internal/job"
	"flatwright/layout/place"
	"flatwright/layout/table"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// choices are what a person chose beside the pattern.
type choices struct {
	Text    string `json:"text"`
	Size    string `json:"size"`
	Labels  string `json:"labels"` // one, all, letters or blank
	Units   string `json:"units"`  // cm, in or both
	Paper   string `json:"paper"`  // its word
	Large   bool   `json:"large"`
	Little  bool   `json:"little"`  // little ink
	Mistake uint64 `json:"mistake"` // which one, on the sheet that has one
	Glance  scales `json:"glance"`  // the size alone is wanted, at these scales, and soon

	LeftHanded bool `json:"leftHanded"` // charts
	Squares    bool `json:"squares"`    // of charts in the gauge's proportions
	Whole      bool `json:"whole"`      // nothing is left out of charts

	Body   string            `json:"body"` // alterations
	Sleeve string            `json:"sleeve"`
	Gauge  string            `json:"gauge"`
	Own    map[string]string `json:"own"`   // lengths by measurement of the body
	Parts  map[string]string `json:"parts"` // other sizes by piece

	Rows    string `json:"rows"`    // a text of rows that is charted in place of the pattern's
	Section string `json:"section"` // of it; empty: all

	photos []job.Source // that lie beside the pattern
	face   *job.Source  // of the words on drawings, beside it

	Draft *draft `json:"draft,omitempty"` // whose text this is, if it is to be kept
	Saved bool   `json:"saved"`
}

// mistake is the number of the mistake: 1, if none is asked for.
func (c choices) mistake() uint64 { return max(1, c.Mistake) }

// keep keeps what is not saved.
func (s *Server) keep(c choices) {
	if c.Draft != nil {
		d := *c.Draft
		d.Text = c.Text
		s.unsaved.keep(d, c.Saved)
	}
}

var unitsOf = map[string][]units.Unit{"cm": {units.CM}, "in": {units.Inch}, "both": {units.CM, units.Inch}}

func (c choices) draw() job.DrawOptions {
	o := job.DrawOptions{Size: c.Size, Labels: job.Labels(c.Labels), Units: unitsOf[c.Units], Face: c.face, Creator: "Flatwright"}
	for _, p := range place.Papers() {
		if c.Paper == p.Word() {
			o.Paper = p
		}
	}
	if c.Large {
		o.Text = place.Large
	}
	return o
}

// scales are those of a drawing, 0 for what it doesn't show, and its letters.
type scales struct {
	Worn   float64 `json:"worn"`
	Pieces float64 `json:"pieces"`

	Letters []string `json:"letters"` // the measurements in their order
}

// told reports whether a drawing had them.
func (s scales) told() bool { return s.Worn > 0 || s.Pieces > 0 }

type lookAnswer struct {
	Title    string       `json:"title"`
	Readable bool         `json:"readable"`
	Why      string       `json:"why,omitempty"` // there is no drawing
	Drawing  string       `json:"drawing"`
	Glance   bool         `json:"glance"` // only the drawing is told; measurements and findings come when all are asked for
	Scale    scales       `json:"scale"`
	Sizes    []string     `json:"sizes"`
	Groups   []int        `json:"groups"`
	Sample   string       `json:"sample"`
	Units    string       `json:"units"`
	Pages    []string     `json:"pages"`
	Table    []tableGroup `json:"table"`
	Findings []found      `json:"findings"`

	Names map[string][]string `json:"names,omitempty"` // of what there is in the pattern, to choose from
}

type found struct {
	Kind     string   `json:"kind"`
	File     string   `json:"file,omitempty"` // another than the pattern's
	Severity string   `json:"severity"`
	Line     int      `json:"line"`
	Col      int      `json:"col"`
	EndCol   int      `json:"endCol"`
	Piece    string   `json:"piece,omitempty"`
	Section  string   `json:"section,omitempty"`
	Sizes    []string `json:"sizes,omitempty"`
	Message  string   `json:"message"`
	Have     string   `json:"have,omitempty"`
	Want     string   `json:"want,omitempty"`
	Fix      string   `json:"fix,omitempty"`
}

type tableGroup struct {
	Name string     `json:"name"`
	Rows []tableRow `json:"rows"`
}

type tableRow struct {
	Name string   `json:"name"`
	CM   []string `json:"cm"`
	In   []string `json:"in"`
}

// look draws what a person types. A glance waits behind nothing; what is worked for everything waits for its turn.
func (s *Server) look(w http.ResponseWriter, r *http.Request, q choices) any {
	s.keep(q)
	if q.Glance.told() {
		if a, ok := s.glance(r.Context(), q); ok {
			return a
		}
	}
	release, ok := s.turn(w, r)
	if !ok {
		return nil
	}
	defer release()
	src := s.source(q.Text)
	q.face = s.faceOf(r.Context(), src)
	l, err := job.Live(r.Context(), src, q.draw(), func(name string) *job.Source { return s.doc.beside(r.Context(), name) })
	return answerOf(l, err, src.Name)
}

// glance is the drawing of one size at the scales that it had; not ok if all has to be looked at. A
// pattern that can't be read has been looked at with that.
func (s *Server) glance(ctx context.Context, q choices) (a lookAnswer, ok bool) {
	src := s.source(q.Text)
	q.face = s.faceOf(ctx, src)
	l, err := job.Glance(ctx, src, q.draw(), place.Scales{Worn: q.Glance.Worn, Pieces: q.Glance.Pieces}, q.Glance.Letters)
	if err != nil && !errors.Is(err, job.ErrUnreadable) {
		return a, false
	}
	a = answerOf(l, err, src.Name)
	a.Glance = err == nil
	return a, true
}

func answerOf(l job.Look, err error, name string) lookAnswer {
	a := lookAnswer{Title: l.Title, Readable: !errors.Is(err, job.ErrUnreadable), Drawing: l.Drawing, Scale: scales{l.Scales.Worn, l.Scales.Pieces, l.Letters}, Sizes: l.Sizes.Names, Groups: l.Sizes.Groups,
		Units: l.Units.String(), Pages: []string{}, Table: tableOf(l.Table), Findings: foundOf(l.Findings, name), Names: l.Names}
	if l.Sample >= 0 && l.Sample < len(a.Sizes) {
		a.Sample = a.Sizes[l.Sample]
	}
	for _, p := range l.Pages {
		a.Pages = append(a.Pages, string(p))
	}
	if err != nil && a.Readable {
		a.Why = err.Error()
	}
	return a
}

func foundOf(list finding.List, name string) []found {
	out := []found{}
	for _, f := range list {
		file := f.Pos.File
		if file == name {
			file = ""
		}
		out = append(out, found{f.Kind, file, f.Severity.String(), f.Pos.Line, f.Pos.Col, f.Pos.EndCol, f.Piece, f.Section, f.Sizes, f.Message, f.Have, f.Want, f.Fix})
	}
	return out
}

func tableOf(t table.Table) []tableGroup {
	out := []tableGroup{}
	for _, g := range t.Groups {
		h := tableGroup{Name: g.Name}
		for _, row := range g.Rows {
			k := tableRow{Name: row.Name}
			for _, c := range row.Cells {
				k.CM, k.In = append(k.CM, c.Text(units.CM, t.Steps)), append(k.In, c.Text(units.Inch, t.Steps))
			}
			h.Rows = append(h.Rows, k)
		}
		out = append(out, h)
	}
	return out
}

type chartAnswer struct {
	Pages []string `json:"pages"`
	Why   string   `json:"why,omitempty"` // there is none
}

// chart draws the stitch charts of the size, each page an svg element.
func (s *Server) chart(_ http.ResponseWriter, r *http.Request, q choices) any {
	a := chartAnswer{Pages: []string{}}
	src := s.source(q.Text)
	o := chartOptions(q)
	o.Format, o.Trim = "svg", true
	pattern, text := &src, s.rowsOf(r.Context(), src)
	if q.Rows != "" {
		pattern, text, o.Section = nil, &job.Source{Name: "rows.txt", Text: []byte(q.Rows)}, q.Section
	}
	res, err := job.Chart(r.Context(), pattern, text, o)
	var option *job.OptionError
	if q.Rows != "" && errors.As(err, &option) && q.Size != "" { // the rows have other sizes than the pattern
		o.Size = ""
		res, err = job.Chart(r.Context(), nil, text, o)
	}
	if err != nil {
		a.Why = err.Error()
	}
	for _, f := range res.Files {
		if at := bytes.Index(f.Body, []byte("<svg")); at >= 0 {
			a.Pages = append(a.Pages, string(f.Body[at:]))
		}
	}
	return a
}

func chartOptions(c choices) job.ChartOptions {
	d := c.draw()
	o := job.ChartOptions{Size: c.Size, Paper: d.Paper, Text: d.Text, Creator: d.Creator, LeftHanded: c.LeftHanded, Gauge: c.Squares, Whole: c.Whole}
	if c.Large {
		o.Scale = 1.6
	}
	return o
}

// faceOf is the file of the face that a pattern names for its drawings, or nil.
func (s *Server) faceOf(ctx context.Context, src job.Source) *job.Source {
	name := job.FaceFile(src)
	if name == "" {
		return nil
	}
	return s.doc.besideMost(ctx, name, job.MostFace)
}

// rowsOf is the file of written rows that a pattern names, or nil.
func (s *Server) rowsOf(ctx context.Context, src job.Source) *job.Source {
	if name := job.RowsFile(src); name != "" {
		return s.doc.beside(ctx, name)
	}
	return nil
}
