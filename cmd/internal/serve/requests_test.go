package serve

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"net/http"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/long"
)

// Requests at random, whole ones with values of every kind and size and ones that are broken: each is answered
// or refused, none writes but what it was told to save. A failure repeats with its seed.
func TestRequestsAtRandomAreAnsweredOrRefused(t *testing.T) {
	m := requests{rand.New(rand.NewPCG(long.Seed(t), 2))}
	a := asking(t)
	codes := map[int]int{}
	for i := range 600 {
		if !long.Some(i, 4) {
			continue
		}
		path, body := m.path(), m.body()
		origin := ""
		if m.IntN(12) == 0 {
			origin = "http://elsewhere.example"
		}
		t.Run(fmt.Sprintf("%d %s", i, path), func(t *testing.T) { // the name tells which
			codes[a.ask(t, m.method(path), path, body, origin, m.IntN(8) > 0)]++
		})
	}
	t.Log(codes)
	assert.NotZero(t, codes[http.StatusOK], "some are answered")
	assert.NotZero(t, codes[http.StatusBadRequest], "some are refused")
}

// requests makes requests.
type requests struct{ *rand.Rand }

func (m requests) one(of ...string) string { return of[m.IntN(len(of))] }

func (m requests) path() string {
	if m.IntN(10) == 0 {
		return "/" + m.one("", "api/", "assets/", "faces/", "api/picture/", "api/model/") + m.text()
	}
	return "/api/" + m.one("look", "look", "chart", "rows", "words", "kind", "form", "edit", "edit", "edit", "unsaved", "save", "save", "download", "open", "start", "file")
}

// method is the one that answers there, most times.
func (m requests) method(path string) string {
	if m.IntN(8) == 0 {
		return m.one("GET", "POST", "PUT", "DELETE", "HEAD", "OPTIONS", "QUERY")
	}
	if strings.HasPrefix(path, "/api/") && path != "/api/start" && path != "/api/file" {
		return http.MethodPost
	}
	return http.MethodGet
}

// questionKeys are those of every question that there is, and some of none.
var questionKeys = strings.Fields("text mark path name over like both act path key value name cell what once size labels units paper large little mistake rows section draft saved against to nothing __proto__")

// wellKnown are values that questions have.
var wellKnown = []struct {
	key    string
	values []string
}{
	{"act", []string{"set", "put", "take", "insert", "begin", "copy", "widen", "narrow", "rename"}}, {"units", []string{"cm", "in", "both"}}, {"labels", []string{"one", "all", "letters", "blank"}},
	{"path", []string{"sizes", "pieces", "", "pieces/0", "pieces/0/sections/0", "pieces/0/sections/1", "pieces/0/sections/1/even", "pieces/99", "gauges", "grading", "notes/0"}}, {"paper", []string{"a4", "letter"}}, {"size", []string{"", "Baby", "Youth"}},
	{"what", []string{"drawing-pdf", "all-svg", "page", "worksheet", "chart-pdf", "grading", "rows"}}, {"value", []string{"3", "Newborn", "12 rows", ""}}, {"key", []string{"even", "note", "increase"}},
}

// body is a question with a pattern and a few keys; one in six is broken somewhere.
func (m requests) body() string {
	q := map[string]any{"text": m.pattern(), "rows": m.one("", "Ch 12.\nRow 1: Sc in 2nd ch from hook and in each ch across. (11 sc)")}
	for range m.IntN(4) {
		q[m.one(questionKeys...)] = m.value(0)
	}
	for _, w := range wellKnown {
		if m.IntN(4) > 0 {
			q[w.key] = m.one(w.values...)
		}
	}
	b, err := json.Marshal(q)
	if err != nil {
		panic(err)
	}
	if m.IntN(6) == 0 && len(b) > 2 {
		at := m.IntN(len(b))
		return string(slices.Insert(b, at, []byte(m.one("\x00", "[", "{", "\"", "\\u", "1e999", "\xff"))...)[:m.IntN(len(b))])
	}
	return string(b)
}

// pattern is the example with one line taken out, doubled or written over.
func (m requests) pattern() string {
	lines := strings.Split(string(modelText("example-pebble-hat")), "\n")
	at := m.IntN(len(lines))
	switch m.IntN(4) {
	case 0:
		lines = slices.Delete(lines, at, at+1)
	case 1:
		lines = slices.Insert(lines, at, lines[m.IntN(len(lines))])
	case 2:
		key, _, _ := strings.Cut(lines[at], ":")
		lines[at] = key + ": " + m.text()
	}
	return strings.Join(lines, "\n")
}

func (m requests) text() string {
	return m.one("", "M", "Newborn", "../../up", "C:\\CON", "<script>alert(1)</script>", "]]>", "\u202egnp", "\x1b[2J", "{{.}}", "a\x00b", "..%2f", "S (M, L)", "-1", "1e999", "99999999999999999999", "é́",
		strings.Repeat("x", 1+m.IntN(5000)), strings.Repeat("[", 1+m.IntN(3000)), strings.Repeat("S, ", 1+m.IntN(100)))
}

func (m requests) value(deep int) any {
	switch n := m.IntN(9); {
	case n < 4:
		return m.text()
	case n == 4:
		return m.IntN(2) == 0
	case n == 5:
		return []any{-1, 0, 3, 1e300, -0.5}[m.IntN(5)]
	case n == 6 || deep > 3:
		return nil
	case n == 7:
		return []any{m.value(deep + 1), m.value(deep + 1)}
	}
	return map[string]any{m.one(questionKeys...): m.value(deep + 1)}
}
