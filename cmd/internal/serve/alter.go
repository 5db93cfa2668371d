package serve

import (
	"context"
	"errors"
	"net/http"
	"slices"
	"strings"

	"flatwright/cmd/internal/job"
)

// alterAnswer is what an alteration makes of a size: pictures of both and of the altered one, and every number that changes.
type alterAnswer struct {
	Both    []string  `json:"both"`
	Now     []string  `json:"now"`
	Changes []changed `json:"changes"`
	Told    []found   `json:"told"`          // of the alteration
	Why     string    `json:"why,omitempty"` // there is none
}

type changed struct {
	Piece string `json:"piece"`
	What  string `json:"what"`
	Was   string `json:"was"`
	Now   string `json:"now"`
	Unit  string `json:"unit"`
}

func alterOptions(c choices) job.AlterOptions {
	o := job.AlterOptions{Size: c.Size, Body: c.Body, Sleeve: c.Sleeve, Draw: c.draw()}
	if c.Gauge != "" {
		o.Gauges = []string{c.Gauge}
	}
	for name, length := range c.Own {
		o.Own = append(o.Own, name+": "+length)
	}
	for piece, size := range c.Parts {
		o.Parts = append(o.Parts, piece+": "+size)
	}
	slices.Sort(o.Own)
	slices.Sort(o.Parts)
	return o
}

// alter draws an alteration.
func (s *Server) alter(_ http.ResponseWriter, r *http.Request, q choices) any {
	src := s.source(q.Text)
	l, err := job.Altered(r.Context(), src, alterOptions(q))
	a := alterAnswer{Both: texts(l.Both), Now: texts(l.Now), Changes: []changed{}, Told: foundOf(l.Findings, src.Name), Why: whyNot(l.Result, err)}
	for _, c := range l.Changes {
		a.Changes = append(a.Changes, changed(c))
	}
	return a
}

// whyNot is why there is no alteration; nothing if there is one. What can't be altered so is told in its words.
func whyNot(r job.Result, err error) string {
	switch {
	case err == nil:
		return ""
	case errors.Is(err, job.ErrUnreadable) && r.Title != "":
		return strings.Join(errorsIn(r.Findings), "; ")
	case errors.Is(err, job.ErrUnreadable):
		return "the pattern cannot be read: correct its errors first"
	}
	return err.Error()
}

// altered is one size worked out for one person.
func altered(ctx context.Context, src job.Source, c choices, _ *job.Source) (job.Result, error) {
	r, err := job.Alter(ctx, src, alterOptions(c))
	if err != nil {
		err = errors.New(whyNot(r, err))
	}
	return r, err
}

func texts(svgs [][]byte) []string {
	out := []string{}
	for _, b := range svgs {
		out = append(out, string(b))
	}
	return out
}
