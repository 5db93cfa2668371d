package serve

import (
	"net/http"

	"flatwright/cmd/internal/job"
)

type rowsQuestion struct {
	Rows    string `json:"rows"`
	Name    string `json:"name"`
	Text    string `json:"text"`    // of the pattern
	Against bool   `json:"against"` // the rows are that pattern's
	To      string `json:"to"`      // the terms that the rows are turned into
	Line    int    `json:"line"`    // that is explained
}

type rowsAnswer struct {
	Terms    string     `json:"terms"`
	Title    string     `json:"title"`
	Sizes    []string   `json:"sizes"`
	Count    int        `json:"count"` // lines of instructions
	Whole    int        `json:"whole"` // that were read whole
	Lines    []readLine `json:"lines"`
	Findings []found    `json:"findings"`
	Why      string     `json:"why,omitempty"` // they are not held against the pattern
}

type readLine struct {
	Line     int      `json:"line"`
	Section  string   `json:"section"`
	Unread   []string `json:"unread,omitempty"`
	Stitches []int    `json:"stitches"`
}

// rows reads a text of written rows.
func (s *Server) rows(_ http.ResponseWriter, r *http.Request, q rowsQuestion) any {
	if q.Name == "" {
		q.Name = "rows.txt"
	}
	text := job.Source{Name: q.Name, Text: []byte(q.Rows)}
	var a rowsAnswer
	var src *job.Source
	if q.Against {
		p := s.source(q.Text)
		src = &p
	}
	read, err := job.ReadingOf(r.Context(), src, text)
	if err != nil && src != nil {
		a.Why = "The pattern can’t be read just now: the rows are read alone."
		read, err = job.ReadingOf(r.Context(), nil, text)
	}
	if err != nil {
		a.Why = err.Error()
	}
	a.Terms, a.Title, a.Sizes, a.Count, a.Whole = read.Terms, read.Title, read.Sizes, read.Read.Lines, read.Read.Whole
	a.Lines, a.Findings = []readLine{}, []found{}
	for _, l := range read.Lines {
		a.Lines = append(a.Lines, readLine(l))
	}
	for _, f := range foundOf(read.Findings, "") {
		if f.File == q.Name {
			a.Findings = append(a.Findings, f)
		}
	}
	return a
}

// explain tells how a line was read, stitch by stitch: nothing, where no instructions stand.
func (s *Server) explain(_ http.ResponseWriter, r *http.Request, q rowsQuestion) any {
	var src *job.Source
	if q.Against {
		p := s.source(q.Text)
		src = &p
	}
	text := job.Source{Name: q.Name, Text: []byte(q.Rows)}
	told, err := job.ExplainRows(r.Context(), src, text, q.Line)
	if err != nil && src != nil {
		told, err = job.ExplainRows(r.Context(), nil, text, q.Line) // as the reading does
	}
	if err != nil || told == nil {
		told = []string{}
	}
	return map[string][]string{"told": told}
}

// words turns written rows into other terms: out of those that they say or show that they are in, if they do.
func (s *Server) words(w http.ResponseWriter, _ *http.Request, q rowsQuestion) any {
	text := job.Source{Name: q.Name, Text: []byte(q.Rows)}
	b, err := job.Words(text, "", q.To)
	if err != nil {
		b, err = job.Words(text, map[string]string{"US": "UK", "UK": "US"}[q.To], q.To)
	}
	if err != nil {
		fail(w, http.StatusUnprocessableEntity, err.Error())
		return nil
	}
	return map[string]string{"rows": string(b)}
}

// kind tells a text from elsewhere: a pattern, or written rows.
func (s *Server) kind(_ http.ResponseWriter, _ *http.Request, q rowsQuestion) any {
	return map[string]bool{"rows": !job.IsPattern(job.Source{Name: q.Name, Text: []byte(q.Rows)})}
}
