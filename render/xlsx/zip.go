package xlsx

import (
	"archive/zip"
	"bytes"
	"io"
	"slices"
	"strings"
)

// undated packs the parts of a workbook anew, in order and without dates, so that the same
// parts are the same bytes.
func undated(data []byte) ([]byte, error) {
	in, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, err
	}
	parts := slices.Clone(in.File)
	// The list of types comes first in every workbook; then by name.
	slices.SortFunc(parts, func(a, b *zip.File) int {
		return strings.Compare(strings.Replace(a.Name, "[Content_Types]", "", 1), strings.Replace(b.Name, "[Content_Types]", "", 1))
	})
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, p := range parts {
		r, err := p.Open()
		if err != nil {
			return nil, err
		}
		body, err := io.ReadAll(r)
		if err != nil {
			return nil, err
		}
		if err := r.Close(); err != nil {
			return nil, err
		}
		to, err := w.CreateHeader(&zip.FileHeader{Name: p.Name, Method: zip.Deflate})
		if err != nil {
			return nil, err
		}
		if _, err := to.Write(body); err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}
