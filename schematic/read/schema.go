package read

import _ "embed"

// Schema is the JSON Schema (draft 2020-12) of a pattern file, by which editors
// complete and check while a person types. It is made of the reader's own tables of
// keys; what depends on two places at once (names, sizes, which keys go together) only the reader knows.
//
//go:embed pattern.schema.json
var Schema []byte
