package job_test

import (
	"bytes"
	"context"
	"image"
	"image/png"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/cmd/internal/job"
	"flatwright/examples"
)

func pngOf(t *testing.T, w, h int) []byte {
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, image.NewGray(image.Rect(0, 0, w, h))))
	return b.Bytes()
}

func TestAPhotographStandsOnThePageOrIsRefused(t *testing.T) {
	text := strings.Replace(string(examples.Text("pebble-hat")), "\npieces:", "\nphotographs:\n  front.png: 'the hat <b onclick=\"x()\">worn</b>, from the front'\npieces:", 1)
	require.Contains(t, text, "photographs:")
	src := job.Source{Name: "hat.yaml", Text: []byte(text)}
	assert.Equal(t, []string{"front.png"}, job.PhotoFiles(src))
	svg := []byte(`<svg xmlns="http://www.w3.org/2000/svg"><script>x()</script></svg>`)
	wide := pngOf(t, 1, 1)
	copy(wide[16:], []byte{0, 0, 0x40, 0, 0, 0, 0x40, 0}) // 16,384 × 16,384 says its head; then its sum is wrong too
	for name, c := range map[string]struct {
		data    []byte
		refused string
	}{
		"an image":     {pngOf(t, 30, 20), ""},
		"no file":      {nil, "cannot be read"},
		"too large":    {make([]byte, job.MostPhoto+1), "larger than 4 MB"},
		"a drawing":    {svg, "not a JPEG, PNG or WebP image"},
		"wrong inside": {wide, "not a JPEG, PNG or WebP image"},
	} {
		var given []job.Source
		if c.data != nil {
			given = []job.Source{{Name: "front.png", Text: c.data}}
		}
		r, err := job.Page(context.Background(), src, job.PageOptions{Photos: given})
		if c.refused != "" {
			assert.ErrorContains(t, err, c.refused, name)
			assert.ErrorContains(t, err, "front.png", name)
			assert.Empty(t, r.Files, name)
			continue
		}
		require.NoError(t, err, name)
		page := string(r.Files[0].Body)
		assert.Contains(t, page, `<img src="data:image/png;base64,iVBORw0KGgo`, name)
		assert.Contains(t, page, `alt="the hat &lt;b onclick=&#34;x()&#34;&gt;worn&lt;/b&gt;, from the front" width="30" height="20"`, name)
		assert.NotContains(t, page, "<b onclick")
	}
}

func TestAPhotographLiesBesideThePattern(t *testing.T) {
	for _, name := range []string{"../front.png", "/etc/front.png", `..\front.png`, "https://example.org/front.png"} {
		text := strings.Replace(string(examples.Text("pebble-hat")), "\npieces:", "\nphotographs:\n  "+name+": the hat\npieces:", 1)
		r, err := job.Page(context.Background(), job.Source{Name: "hat.yaml", Text: []byte(text)}, job.PageOptions{})
		assert.ErrorIs(t, err, job.ErrUnreadable, name)
		require.NotEmpty(t, r.Findings, name)
		assert.Contains(t, r.Findings[0].Message, "must lie beside the pattern", name)
	}
}
