package serve

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
	"io"
	"mime"
	"net/http"
	"path"
	"strconv"
	"strings"

	"flatwright/cmd/internal/files"
	"flatwright/cmd/internal/job"
	"flatwright/schematic/finding"
)

// download is something that the page gives to keep.
type download struct {
	Name  string `json:"name"`
	Title string `json:"title"`
	What  string `json:"what"`
	make  made
}

type downloadGroup struct {
	Title string     `json:"title"`
	All   []download `json:"all"`
}

// downloadGroups are what there is to download, in the order in which people ask for it.
func downloadGroups() []downloadGroup {
	return []downloadGroup{
		{"For people who work the pattern", []download{
			{"page", "Web page", "sizes and units to choose from, in one file", webPage(false)},
			{"snippet", "Snippet for a blog", "the same to put into a page of your own", webPage(true)},
			{"handout", "Handout, PDF", "all sizes, with the chosen one standing out", handout(job.HandoutOptions{})},
			{"handout-size", "Handout of this size, PDF", "the chosen size alone", handout(job.HandoutOptions{Alone: true})},
			{"worksheet", "Worksheet, PDF", "measurements to fill in, and the answers", handout(job.HandoutOptions{Kind: job.ForClass})},
			{"mistake", "Find the mistake, PDF", "all sizes with one measurement wrong, and the answer; its number says which", handout(job.HandoutOptions{Kind: job.WithMistake})},
			{"life-size", "Life size, PDF", "the pieces at 1:1, to block on", handout(job.HandoutOptions{Kind: job.AtLifeSize})},
		}},
		{"For one person", []download{
			{"altered", "Altered", "this size with the alterations of “Alter”: drawing, counts and yarn, packed", altered},
		}},
		{"Drawing", []download{
			{"drawing-svg", "This drawing, SVG", "as shown, for a web page or a drawing program", drawing("svg")},
			{"drawing-pdf", "This drawing, PDF", "as shown, to print", drawing("pdf")},
			{"all-pdf", "All sizes, PDF", "a page for each size and one with all", everySize("pdf")},
			{"all-svg", "All sizes, SVG", "a file for each size and one with all, packed", everySize("svg")},
			{"nested-pdf", "Sizes compared, PDF", "all sizes one inside the other, to print", nested("pdf")},
			{"nested-svg", "Sizes compared, SVG", "a file for each page, packed", nested("svg")},
		}},
		{"Chart", []download{
			{"chart-pdf", "Charts of this size, PDF", "of every stretch of rows, to print", charts("pdf")},
			{"chart-svg", "Charts of this size, SVG", "a file for each, packed", charts("svg")},
		}},
		{"Numbers and words", []download{
			{"table-csv", "Measurements, CSV", "for a spreadsheet", measurements("csv")},
			{"table-markdown", "Measurements, Markdown", "for a web page", measurements("markdown")},
			{"table-text", "Measurements, text", "for an e-mail", measurements("text")},
			{"grading", "Grading, XLSX", "a workbook with live formulas", grading},
			{"yarn", "Yarn, text", "what each size takes", yarnOf},
			{"rows", "Rows, text", "of every section, all sizes", rowsOf(false)},
			{"rows-size", "Rows of this size, text", "with every even change spelled out", rowsOf(true)},
		}},
		{"Pattern", []download{
			{"pattern", "The pattern file", "the text as it is now, saved or not", pattern},
			{"filled", "The pattern file, filled in", "with every sum of the grading worked out beside it", filled},
		}},
	}
}

// made makes a download. Rows is the file of written rows beside the pattern, if it
// names one.
type made = func(ctx context.Context, src job.Source, c choices, rows *job.Source) (job.Result, error)

func webPage(snippet bool) made {
	return func(ctx context.Context, src job.Source, c choices, rows *job.Source) (job.Result, error) {
		return job.Page(ctx, src, job.PageOptions{Snippet: snippet, Rows: rows, Photos: c.photos, Face: c.face})
	}
}

func handout(o job.HandoutOptions) made {
	return func(ctx context.Context, src job.Source, c choices, rows *job.Source) (job.Result, error) {
		d := c.draw()
		o := o
		o.Size, o.Units, o.Paper, o.Large, o.Little, o.Rows, o.Creator = c.Size, d.Units, d.Paper, c.Large, c.Little, rows, d.Creator
		o.Face, o.Photos, o.Seed = c.face, c.photos, c.mistake()
		return job.Handout(ctx, src, o)
	}
}

func charts(format string) made {
	return func(ctx context.Context, src job.Source, c choices, rows *job.Source) (job.Result, error) {
		o := chartOptions(c)
		o.Format = format
		return job.Chart(ctx, &src, rows, o)
	}
}

func grading(ctx context.Context, src job.Source, _ choices, _ *job.Source) (job.Result, error) {
	return job.Grade(ctx, src, job.GradeOptions{Format: "xlsx"})
}

func yarnOf(ctx context.Context, src job.Source, _ choices, _ *job.Source) (job.Result, error) {
	return job.Yarn(ctx, src, job.YarnOptions{Explain: true})
}

func rowsOf(one bool) made {
	return func(ctx context.Context, src job.Source, c choices, _ *job.Source) (job.Result, error) {
		if !one {
			return job.Rows(ctx, src, job.RowsOptions{})
		}
		return job.Rows(ctx, src, job.RowsOptions{Size: c.Size, Evenly: true})
	}
}

func filled(ctx context.Context, src job.Source, _ choices, _ *job.Source) (job.Result, error) {
	return job.Grade(ctx, src, job.GradeOptions{Fill: true})
}

func nested(format string) made {
	return func(ctx context.Context, src job.Source, c choices, _ *job.Source) (job.Result, error) {
		o := c.draw()
		o.Format = format
		return job.Grade(ctx, src, job.GradeOptions{Nested: true, Draw: o})
	}
}

func drawing(format string) made {
	return func(ctx context.Context, src job.Source, c choices, _ *job.Source) (job.Result, error) {
		o := c.draw()
		if o.Labels == job.Nested {
			return nested(format)(ctx, src, c, nil)
		}
		if o.Labels == job.Every {
			o.Labels = job.One
		}
		o.Format = format
		return job.Draw(ctx, src, o)
	}
}

func everySize(format string) made {
	return func(ctx context.Context, src job.Source, c choices, _ *job.Source) (job.Result, error) {
		o := c.draw()
		o.Size, o.Labels, o.Format = "", job.Every, format
		return job.Draw(ctx, src, o)
	}
}

func measurements(format string) made {
	return func(ctx context.Context, src job.Source, c choices, _ *job.Source) (job.Result, error) {
		return job.Table(ctx, src, job.TableOptions{Format: format, Units: unitsOf[c.Units]})
	}
}

func pattern(ctx context.Context, src job.Source, _ choices, _ *job.Source) (job.Result, error) {
	r, err := job.Check(ctx, src)
	if errors.Is(err, job.ErrUnreadable) {
		err = nil // the text is hers, broken or not
	}
	r.Files = []files.File{{Name: src.Name, Body: src.Text}}
	return r, err
}

func (s *Server) download(w http.ResponseWriter, r *http.Request, q struct {
	choices
	What string `json:"what"`
}) any {
	d, ok := downloadOf(q.What)
	if !ok {
		fail(w, http.StatusNotFound, "there is no such download")
		return nil
	}
	src := s.source(q.Text)
	q.face = s.faceOf(r.Context(), src)
	for _, name := range job.PhotoFiles(src) {
		if f := s.doc.besideMost(r.Context(), name, job.MostPhoto); f != nil {
			q.photos = append(q.photos, *f)
		}
	}
	res, err := d.make(r.Context(), src, q.choices, s.rowsOf(r.Context(), src))
	switch {
	case errors.Is(err, job.ErrUnreadable):
		fail(w, http.StatusUnprocessableEntity, "the pattern cannot be read: correct its errors first")
	case err != nil:
		fail(w, http.StatusUnprocessableEntity, err.Error())
	default:
		s.hand(w, res, d.Name, q.choices)
	}
	return nil
}

// downloadOf is the download of a name.
func downloadOf(name string) (download, bool) {
	for _, g := range downloadGroups() {
		for _, d := range g.All {
			if d.Name == name {
				return d, true
			}
		}
	}
	return download{}, false
}

var kinds = map[string]string{".svg": "image/svg+xml", ".pdf": "application/pdf", ".csv": "text/csv; charset=utf-8", ".zip": "application/zip",
	".html": "text/html; charset=utf-8", ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"}

// errorsHeader is the header in which a download tells how many errors its pattern has.
const errorsHeader = "Flatwright-Errors"

func errorsIn(found finding.List) (out []string) {
	for _, f := range found {
		if f.Severity == finding.Error {
			out = append(out, f.Message)
		}
	}
	return out
}

// hand gives the files: one as it is, several packed under the name of the download and the size.
func (s *Server) hand(w http.ResponseWriter, r job.Result, what string, c choices) {
	f, err := packed(r, packName(r.Slug, what, c))
	if err != nil {
		fail(w, http.StatusInternalServerError, err.Error())
		return
	}
	kind := kinds[path.Ext(f.Name)]
	if kind == "" {
		kind = "text/plain; charset=utf-8"
	}
	w.Header().Set("Content-Type", kind)
	if n := len(errorsIn(r.Findings)); n > 0 {
		w.Header().Set(errorsHeader, strconv.Itoa(n))
	}
	w.Header().Set("Content-Disposition", mime.FormatMediaType("attachment", map[string]string{"filename": f.Name}))
	_, _ = w.Write(f.Body)
}

// packName tells what is in a pack: that of every size has none in its name.
func packName(slug, what string, c choices) string {
	name := slug
	if name == "" {
		name = "pattern"
	}
	name += "-" + strings.TrimSuffix(strings.TrimSuffix(what, "-svg"), "-pdf")
	switch {
	case what == "mistake":
		name += "-" + strconv.FormatUint(c.mistake(), 10)
	case c.Size != "" && !strings.HasPrefix(what, "all-"):
		name += "-" + job.Slug(c.Size)
		if c.Labels != "" && c.Labels != "one" {
			name += "-" + job.Slug(c.Labels)
		}
	}
	return name + ".zip"
}

// packed is the one file of r, or a ZIP of all, the same bytes for the same files.
func packed(r job.Result, name string) (files.File, error) {
	if len(r.Files) == 1 {
		return r.Files[0], nil
	}
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, f := range r.Files {
		out, err := z.Create(f.Name)
		if err != nil {
			return files.File{}, err
		}
		if _, err := io.Copy(out, bytes.NewReader(f.Body)); err != nil {
			return files.File{}, err
		}
	}
	if err := z.Close(); err != nil {
		return files.File{}, err
	}
	return files.File{Name: name, Body: b.Bytes()}, nil
}
