package read

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"
)

type object = map[string]any

func ref(name string) object { return object{"$ref": "#/$defs/" + strings.ReplaceAll(name, " ", "-")} }

func either(all ...any) object { return object{"anyOf": all} }

func isSection(t *table) bool {
	return slices.ContainsFunc(sectionKinds(), func(k *sectionKind) bool { return k.table == t })
}

func defName(t *table) string {
	if isSection(t) {
		return "section-" + t.name
	}
	return t.name
}

// schemaOfTables makes the schema of the reader's tables.
func schemaOfTables() []byte {
	plain := object{"type": []string{"string", "number", "boolean"}}
	number := object{"type": []string{"number", "string"}}
	defs := object{
		"text":  plain,
		"flag":  object{"enum": []any{true, false, "yes", "no"}},
		"texts": either(ref("text"), object{"type": "array", "items": ref("text")}),
		"graded": object{
			"description": "one number for all sizes, the trade's line such as 103 (111, 119) (127, 135), a list, a mapping by size, or a sum of names of the grading",
			"anyOf": []any{number, object{"type": "array", "items": number},
				object{"type": "object", "additionalProperties": number}},
		},
		"count": object{"allOf": []any{ref("graded"), object{"if": object{"type": "number"}, "then": object{"type": "integer", "minimum": 0, "maximum": 1_000_000}}}},
	}
	var sections []any
	for _, t := range allTables() {
		defs[strings.ReplaceAll(defName(t), " ", "-")] = defOf(t)
		if isSection(t) {
			sections = append(sections, ref(defName(t)))
		}
	}
	defs["section"] = either(append(sections, object{"enum": []any{"fold", "gather"}})...)
	root := object{
		"$schema": "https://json-schema.org/draft/2020-12/schema",
		"title":   "Flatwright pattern file",
		"$ref":    "#/$defs/pattern",
		"$defs":   defs,
	}
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(root); err != nil {
		panic(err)
	}
	return out.Bytes()
}

func defOf(t *table) object {
	props := object{}
	var required []string
	var all []any
	for _, k := range t.keys {
		names := append([]string{k.name}, k.also...)
		for _, n := range names {
			v := object{"description": k.what}
			for key, val := range valueOf(t, k) {
				v[key] = val
			}
			props[n] = v
		}
		switch {
		case k.need && len(k.also) > 0:
			var any []any
			for _, n := range names {
				any = append(any, object{"required": []string{n}})
			}
			all = append(all, either(any...))
		case k.need:
			required = append(required, k.name)
		}
	}
	d := object{
		"type": "object", "title": t.title, "properties": props, "additionalProperties": false,
		// Inside braces YAML cuts 26 (29, 31) at its comma and makes the key 31) of the rest; the reader mends that.
		"patternProperties": object{"^[0-9–-]": object{"type": "null"}},
	}
	if len(required) > 0 {
		d["required"] = required
	}
	if len(all) > 0 {
		d["allOf"] = all
	}
	return d
}

func valueOf(t *table, k key) object {
	of := ref(k.of)
	for _, u := range allTables() {
		if u.name == k.of && u.bare != "" {
			of = either(ref("text"), ref(k.of))
		}
	}
	switch k.form {
	case choice:
		var pick []any
		for _, p := range k.pick {
			pick = append(pick, p)
			if p == "1" {
				pick = append(pick, 1)
			}
		}
		return object{"enum": pick}
	case yesNo:
		return ref("flag")
	case counts:
		if k.name == "amount" {
			return ref("graded")
		}
		return ref("count")
	case lengths, amounts, spans:
		return ref("graded")
	case sizes, words:
		return ref("texts")
	case one:
		return of
	case list:
		l := object{"type": "array", "items": of}
		if k.of == "material" {
			return either(l, ref("text"))
		}
		return l
	case named:
		val := object{"spans": ref("graded"), "finished": either(ref("graded"), ref("finished")),
			"grading": either(ref("graded"), ref("grading"))}[k.of]
		if val == nil {
			val = ref("text")
		}
		return object{"type": "object", "additionalProperties": val}
	case nothing:
		return object{"enum": []any{nil, true, false, "yes", "no"}}
	case phrase:
		if t == gradingKeys || t == shapingTable {
			return ref("graded")
		}
	}
	return ref("text")
}

// asJSON is a file as an editor's YAML reads it.
func asJSON(src string) (any, bool) {
	var v any
	if yaml.Unmarshal([]byte(src), &v) != nil {
		s := scan("", src) // a dash alone for a size that has none
		if len(s.findings) > 0 || yaml.Unmarshal([]byte(s.text), &v) != nil {
			return nil, false
		}
	}
	return plainJSON(v), true
}

func plainJSON(v any) any {
	switch v := v.(type) {
	case map[string]any:
		for k := range v {
			v[k] = plainJSON(v[k])
		}
		return v
	case map[any]any:
		out := object{}
		for k, w := range v {
			out[fmt.Sprint(k)] = plainJSON(w)
		}
		return out
	case []any:
		for i := range v {
			v[i] = plainJSON(v[i])
		}
		return v
	case time.Time:
		return v.String()
	}
	return v
}

func compiled(t *testing.T) *jsonschema.Schema {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("pattern.schema.json", doc))
	s, err := c.Compile("pattern.schema.json")
	require.NoError(t, err)
	return s
}

func TestSchemaIsMadeOfTheReadersTables(t *testing.T) {
	want := schemaOfTables()
	if *update {
		require.NoError(t, os.WriteFile("pattern.schema.json", want, 0o644))
		Schema = want
	}
	require.Equal(t, string(want), string(Schema), "run with -update")
}

func TestSchemaTakesWhatTheReaderTakes(t *testing.T) {
	s := compiled(t)
	files, err := filepath.Glob("../../examples/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, f := range append(files, filepath.Join(testdata, "full.yaml"), filepath.Join(testdata, "base.yaml")) {
		src, err := os.ReadFile(f)
		require.NoError(t, err)
		_, list := Pattern(f, src)
		require.False(t, list.Errors(), "%s: %v", f, list)
		v, ok := asJSON(string(src))
		require.True(t, ok)
		assert.NoError(t, s.Validate(v), f)
	}
}

func TestSchemaRefusesUnknownKeysAndWords(t *testing.T) {
	s := compiled(t)
	refused := 0
	for _, cases := range families {
		for _, c := range cases {
			src := c.source(t)
			v, ok := asJSON(src)
			if !ok {
				continue
			}
			_, list := Pattern("vest.yaml", []byte(src))
			bad := false
			for _, f := range list {
				sideways := strings.Contains(f.Message, "of a piece worked") // depends on another key
				bad = bad || f.Kind == "file/unknown-key" || f.Kind == "file/choice" && !sideways
			}
			switch err := s.Validate(v); {
			case bad:
				refused++
				assert.Error(t, err, c.name)
			case !list.Errors():
				assert.NoError(t, err, c.name)
			}
		}
	}
	require.Greater(t, refused, 8)
}
