package serve

import (
	"encoding/json"
	"errors"
	"net/http"
	"strings"
	"time"

	"flatwright/cmd/internal/job"
	"flatwright/cmd/internal/starter"
	"flatwright/examples"
	"flatwright/schematic/finding"
	"flatwright/schematic/read"
)

func (s *Server) routes() http.Handler {
	m := http.NewServeMux()
	m.HandleFunc("GET /{$}", asset("index.html"))
	m.HandleFunc("GET /assets/{file}", asset(""))
	m.HandleFunc("GET /faces/{face}", face)
	m.HandleFunc("POST /api/open", post(s, s.open))
	m.HandleFunc("GET /api/start", s.start)
	m.HandleFunc("GET /api/file", s.file)
	m.HandleFunc("GET /api/picture/{name}", s.picture)
	m.HandleFunc("GET /api/events", s.events)
	m.HandleFunc("GET /api/model/{name}", s.model)
	m.HandleFunc("POST /api/look", now(s.look))
	m.HandleFunc("POST /api/chart", post(s, s.chart))
	m.HandleFunc("POST /api/alter", post(s, s.alter))
	m.HandleFunc("POST /api/rows", post(s, s.rows))
	m.HandleFunc("POST /api/explain", post(s, s.explain))
	m.HandleFunc("POST /api/words", now(s.words))
	m.HandleFunc("POST /api/kind", now(s.kind))
	m.HandleFunc("POST /api/form", now(s.form))
	m.HandleFunc("POST /api/edit", now(s.edit))
	m.HandleFunc("GET /api/unsaved", s.drafts)
	m.HandleFunc("POST /api/unsaved", now(s.forget))
	m.HandleFunc("POST /api/save", now(s.save))
	m.HandleFunc("POST /api/download", post(s, s.download))
	m.HandleFunc("/", func(w http.ResponseWriter, _ *http.Request) { refuse(w, http.StatusNotFound, "There is no such page.") })
	return m
}

// post reads what is asked, waits for its turn and answers. An answer of nil has
// been given already.
func post[Q any](s *Server, answer func(http.ResponseWriter, *http.Request, Q) any) http.HandlerFunc {
	return now(func(w http.ResponseWriter, r *http.Request, q Q) any {
		release, ok := s.turn(w, r)
		if !ok {
			return nil
		}
		defer release()
		return answer(w, r, q)
	})
}

// turn waits for a turn among what takes long; without one it has answered.
func (s *Server) turn(w http.ResponseWriter, r *http.Request) (release func(), ok bool) {
	if release, ok = s.work(r.Context()); !ok {
		fail(w, http.StatusServiceUnavailable, "no one waits for this any more")
	}
	return release, ok
}

// now is post for what may not wait behind drawings.
func now[Q any](answer func(http.ResponseWriter, *http.Request, Q) any) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		var q Q
		if err := json.NewDecoder(r.Body).Decode(&q); err != nil {
			var large *http.MaxBytesError
			if errors.As(err, &large) {
				fail(w, http.StatusRequestEntityTooLarge, "a pattern file is at most 1 MiB")
				return
			}
			fail(w, http.StatusBadRequest, "the request cannot be read")
			return
		}
		if a := answer(w, r, q); a != nil {
			give(w, http.StatusOK, a)
		}
	}
}

func give(w http.ResponseWriter, code int, a any) {
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	w.WriteHeader(code)
	to := json.NewEncoder(w)
	to.SetEscapeHTML(false) // it is never read as HTML, and a drawing would be half as long again
	_ = to.Encode(a)        // an error is that of a browser that has gone
}

func fail(w http.ResponseWriter, code int, why string) {
	give(w, code, map[string]string{"error": why})
}

type modelInfo struct {
	Name  string `json:"name"`
	Title string `json:"title"`
}

type startAnswer struct {
	State     state                 `json:"state"`
	Text      string                `json:"text"`
	Model     string                `json:"model"` // opened, if there is no file
	Examples  []modelInfo           `json:"examples"`
	Starters  []modelInfo           `json:"starters"`
	Entries   map[string][]read.Key `json:"entries"` // kinds of entry that the form can add, by list
	Downloads []downloadGroup       `json:"downloads"`
	Folder    string                `json:"folder"`
	Version   string                `json:"version"`
}

func (s *Server) start(w http.ResponseWriter, r *http.Request) {
	a := startAnswer{Entries: read.Entries(), Downloads: downloadGroups(), Version: s.o.Version, Folder: s.doc.where()}
	for _, n := range examples.Names() {
		a.Examples = append(a.Examples, modelInfo{"example-" + n, spoken(n)})
	}
	a.Starters = append(a.Starters, modelInfo{"new-empty", "Empty: one piece in one size"})
	for _, n := range starter.Kinds() {
		a.Starters = append(a.Starters, modelInfo{"new-" + n.Name, n.What})
	}
	var err error
	if a.State, a.Text, err = s.doc.read(r.Context()); err != nil {
		fail(w, http.StatusNotFound, err.Error())
		return
	}
	if a.State.Name == "" {
		if a.Model = s.o.Example; a.Model == "" || modelText(a.Model) == nil {
			a.Model = firstExample
		}
		a.Text = string(modelText(a.Model))
	}
	give(w, http.StatusOK, a)
}

// firstExample is shown to a person who has no pattern of her own yet.
const firstExample = "example-saltmarsh-cardigan"

// spoken is the name of a file as a person says it.
func spoken(name string) string {
	words := strings.Split(name, "-")
	for i, w := range words {
		words[i] = finding.Capital(w)
	}
	return strings.Join(words, " ")
}

// modelText is an example or a starter.
func modelText(name string) []byte {
	if n, ok := strings.CutPrefix(name, "example-"); ok {
		return examples.Text(n)
	}
	if name == "new-empty" {
		return []byte(emptyPattern)
	}
	if n, ok := strings.CutPrefix(name, "new-"); ok {
		return starter.Text(n)
	}
	return nil
}

func (s *Server) model(w http.ResponseWriter, r *http.Request) {
	text := modelText(r.PathValue("name"))
	if text == nil {
		fail(w, http.StatusNotFound, "there is no such example")
		return
	}
	give(w, http.StatusOK, map[string]string{"text": string(text)})
}

// picture is the first page of a model's drawing, without a number: what kind of garment it is.
func (s *Server) picture(w http.ResponseWriter, r *http.Request) {
	text := modelText(r.PathValue("name"))
	if text == nil {
		fail(w, http.StatusNotFound, "there is no such picture")
		return
	}
	release, ok := s.turn(w, r)
	if !ok {
		return
	}
	defer release()
	l, err := job.Live(r.Context(), job.Source{Name: "model.yaml", Text: text}, job.DrawOptions{Labels: job.Letters}, nil)
	if err != nil || len(l.Pages) == 0 {
		fail(w, http.StatusNotFound, "there is no such picture")
		return
	}
	give(w, http.StatusOK, map[string]string{"svg": string(l.Pages[0])})
}

func (s *Server) file(w http.ResponseWriter, r *http.Request) {
	st, text, err := s.doc.read(r.Context())
	if err != nil {
		fail(w, http.StatusNotFound, err.Error())
		return
	}
	give(w, http.StatusOK, map[string]any{"state": st, "text": text})
}

// events tells the page whenever the file has changed on the disk.
func (s *Server) events(w http.ResponseWriter, r *http.Request) {
	out := http.NewResponseController(w)
	if err := out.SetWriteDeadline(time.Time{}); err != nil {
		fail(w, http.StatusInternalServerError, "no events can be sent")
		return
	}
	w.Header().Set("Content-Type", "text/event-stream")
	beat := time.NewTicker(15 * time.Second)
	defer beat.Stop()
	for {
		st, change := s.doc.now()
		b, err := json.Marshal(st)
		if err != nil {
			return
		}
		if _, err := w.Write([]byte("data: " + string(b) + "\n\n")); err != nil || out.Flush() != nil {
			return
		}
		for waiting := true; waiting; {
			select {
			case <-r.Context().Done():
				return
			case <-change:
				waiting = false
			case <-beat.C:
				if _, err := w.Write([]byte(": \n\n")); err != nil || out.Flush() != nil {
					return
				}
			}
		}
	}
}

type saveQuestion struct {
	Text string `json:"text"`
	Mark string `json:"mark"` // of the content that was read last
	Path string `json:"path"` // of the file that was read
	Name string `json:"name"` // another file
	Over bool   `json:"over"` // that has this name already
	Like string `json:"like"` // begins as the file from elsewhere does: its byte-order mark and first line end
	Both bool   `json:"both"` // keep what is on the disk as a copy
}

func (s *Server) save(w http.ResponseWriter, r *http.Request, q saveQuestion) any {
	if len(q.Text) > 1<<20 {
		fail(w, http.StatusRequestEntityTooLarge, "a pattern file is at most 1 MiB")
		return nil
	}
	if q.Name != "" {
		st, copied, err := s.doc.saveAs(r.Context(), q.Text, q.Name, q.Over, []byte(q.Like))
		var taken *Taken
		switch {
		case errors.As(err, &taken):
			give(w, http.StatusConflict, map[string]any{"error": err.Error(), "taken": taken.Name})
			return nil
		case err != nil:
			fail(w, http.StatusUnprocessableEntity, err.Error())
			return nil
		}
		return map[string]any{"state": st, "copied": copied}
	}
	st, copied, err := s.doc.save(r.Context(), q.Text, q.Path, q.Mark, q.Both)
	var c *Conflict
	switch {
	case errors.As(err, &c):
		give(w, http.StatusConflict, map[string]any{"error": c.Error(), "state": c.State, "text": c.Text})
		return nil
	case err != nil:
		fail(w, http.StatusUnprocessableEntity, err.Error())
		return nil
	}
	return map[string]any{"state": st, "copied": copied}
}

type editQuestion struct {
	Text  string `json:"text"`
	Act   string `json:"act"` // set, put, take, insert, begin, copy, widen, narrow or rename
	Path  string `json:"path"`
	Key   string `json:"key"`
	Value string `json:"value"`
	Name  string `json:"name"`
	Cell  *int   `json:"cell"`

	Look *choices `json:"look"` // how the changed pattern is looked at, if its drawing is wanted with it
}

var acts = map[string]read.Act{"set": read.Set, "put": read.Put, "take": read.Take, "insert": read.Insert, "begin": read.Begin,
	"copy": read.Copy, "widen": read.Widen, "narrow": read.Narrow, "rename": read.Rename}

func (s *Server) edit(w http.ResponseWriter, r *http.Request, q editQuestion) any {
	act, ok := acts[q.Act]
	if !ok {
		fail(w, http.StatusBadRequest, "there is no such change")
		return nil
	}
	c := read.Change{Act: act, Path: q.Path, Key: q.Key, Value: q.Value, Name: q.Name, Cell: -1}
	c.After = func(first, last int) []int { return job.StitchesAfter(r.Context(), s.source(q.Text), first, last) }
	c.Edges = func() []string { return job.EdgesOf(r.Context(), s.source(q.Text)) }
	if q.Cell != nil {
		c.Cell = *q.Cell
	}
	text, err := read.Edit([]byte(q.Text), c)
	if err != nil {
		fail(w, http.StatusUnprocessableEntity, err.Error())
		return nil
	}
	a := editAnswer{Text: string(text)}
	if q.Look != nil && q.Look.Glance.told() {
		q.Look.Text = a.Text
		if look, ok := s.glance(r.Context(), *q.Look); ok {
			a.Look = &look
		}
	}
	return a
}

type editAnswer struct {
	Text string      `json:"text"`
	Look *lookAnswer `json:"look,omitempty"`
}

type formAnswer struct {
	Readable bool       `json:"readable"`
	Form     read.Group `json:"form"`
	Sizes    []string   `json:"sizes"`
	Groups   []int      `json:"groups"`
}

func (s *Server) form(_ http.ResponseWriter, _ *http.Request, q struct {
	Text string `json:"text"`
}) any {
	g, sizes, ok := read.Fields([]byte(q.Text))
	return formAnswer{ok, g, sizes.Names, sizes.Groups}
}

// source is the text of a question as a job takes it.
func (s *Server) source(text string) job.Source { return s.doc.source(text) }

// drafts are what was not saved of a pattern.
func (s *Server) drafts(w http.ResponseWriter, r *http.Request) {
	give(w, http.StatusOK, map[string]any{"drafts": s.unsaved.of(r.Context(), r.URL.Query().Get("id"))})
}

// forget takes a draft away, or keeps another text of it.
func (s *Server) forget(_ http.ResponseWriter, _ *http.Request, q choices) any {
	s.keep(q)
	return map[string]string{}
}
