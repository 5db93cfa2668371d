package fonts_test

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"io"
	"os"
	"testing"

	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/harfbuzz"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"flatwright/fonts"
)

const some = "AVATAR 11 103 (111, –) 14¼ Łódź □"

// The subset is read by two parsers from outside: HarfBuzz's and x/image's.
func TestASubsetIsAsWideAndHighAsItsFace(t *testing.T) {
	for name, f := range all {
		sub := fonts.SubsetOf(f, some)
		face, err := font.ParseTTF(bytes.NewReader(sub.TTF))
		require.NoError(t, err, name)
		s := &shaper{harfbuzz.NewFont(face), harfbuzz.NewBuffer()}
		assert.Equal(t, fonts.Width(f, 2048, some), float64(s.units([]rune(some))), name)
		assert.Less(t, len(sub.TTF), 16_000, name)
		assert.Less(t, len(sub.WOFF()), len(sub.TTF), name)

		whole, err := sfnt.Parse(fonts.TTF(f))
		require.NoError(t, err)
		part, err := sfnt.Parse(sub.TTF)
		require.NoError(t, err)
		for _, r := range some {
			assert.Equal(t, outline(t, whole, r), outline(t, part, r), "%s %q", name, r)
		}
	}
}

func outline(t *testing.T, f *sfnt.Font, r rune) []sfnt.Segment {
	var buf sfnt.Buffer
	g, err := f.GlyphIndex(&buf, r)
	require.NoError(t, err)
	require.NotZero(t, g, "%q", r)
	segs, err := f.LoadGlyph(&buf, g, fixed.Int26_6(2048), nil)
	require.NoError(t, err)
	for i := range segs { // what a segment has no use for is left over from others
		used := map[sfnt.SegmentOp]int{sfnt.SegmentOpQuadTo: 2, sfnt.SegmentOpCubeTo: 3}[segs[i].Op]
		clear(segs[i].Args[max(used, 1):])
	}
	return segs
}

func TestASubsetIsMadeOnce(t *testing.T) {
	a, b := fonts.SubsetOf(fonts.Regular, "10 cm", "in"), fonts.SubsetOf(fonts.Regular, "cm in 01")
	assert.Same(t, a, b, "the same characters")
	assert.NotEqual(t, a.Name, fonts.SubsetOf(fonts.Bold, "10 cm in").Name)
	assert.Regexp(t, `^fw-[0-9a-f]{10}$`, a.Name)
	assert.NotEmpty(t, fonts.SubsetOf(fonts.Italic).TTF, "of no text at all")
}

// The sum of all words of a face is 0xB1B0AFBA, by the definition of its head table (OpenType 1.9).
func TestTheFilesSumIsAsOpenTypeAsks(t *testing.T) {
	ttf := fonts.SubsetOf(fonts.Regular, some).TTF
	var n uint32
	for i := 0; i < len(ttf); i += 4 {
		n += binary.BigEndian.Uint32(ttf[i:])
	}
	assert.Equal(t, uint32(0xB1B0AFBA), n)
}

// Unpacked by the description of WOFF 1.0 (W3C): each table as it was.
func TestThePackedSubsetHoldsTheSameTables(t *testing.T) {
	sub := fonts.SubsetOf(fonts.Regular, some)
	woff := sub.WOFF()
	u32 := func(at int) int { return int(binary.BigEndian.Uint32(woff[at:])) }
	require.Equal(t, "wOFF", string(woff[:4]))
	require.Equal(t, len(woff), u32(8))
	require.Equal(t, len(sub.TTF), u32(16))
	n := int(binary.BigEndian.Uint16(woff[12:]))
	require.Equal(t, int(binary.BigEndian.Uint16(sub.TTF[4:])), n)
	for i := range n {
		at := 44 + 20*i
		body := woff[u32(at+4) : u32(at+4)+u32(at+8)]
		if u32(at+8) < u32(at+12) {
			z, err := zlib.NewReader(bytes.NewReader(body))
			require.NoError(t, err)
			body, err = io.ReadAll(z)
			require.NoError(t, err)
		}
		from := int(binary.BigEndian.Uint32(sub.TTF[12+16*i+8:]))
		assert.Equal(t, sub.TTF[from:from+len(body)], body, string(woff[at:at+4]))
	}
}

// A square stands on the baseline and is as wide as its face says; a letter O has two contours.
func TestOutlinesStandWhereTheTextIs(t *testing.T) {
	curves := fonts.Outline(fonts.Regular, "1O")
	starts, right := 0, 0.0
	for i := range curves {
		if curves[i].Verb == 'M' {
			starts++
		}
		for _, p := range curves[i].Points() {
			assert.Less(t, p[1], 0.03)
			assert.Greater(t, p[1], -0.8)
			right = max(right, p[0])
		}
	}
	assert.Equal(t, 3, starts)
	assert.InDelta(t, fonts.Width(fonts.Regular, 1, "1O"), right, 0.06)
	assert.Greater(t, right, fonts.Width(fonts.Regular, 1, "1")+0.5)
}

// faceOnDisk is a face of another maker, if the system has one.
func faceOnDisk(t *testing.T, paths ...string) []byte {
	for _, p := range paths {
		if b, err := os.ReadFile(p); err == nil {
			return b
		}
	}
	t.Skip("no such face on this system")
	return nil
}

func TestAFaceOfOnesOwnIsMeasuredAsHarfBuzzDoes(t *testing.T) {
	f, err := fonts.Parse(faceOnDisk(t, "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf"))
	require.NoError(t, err)
	s := newShaper(t, f)
	sub, err := font.ParseTTF(bytes.NewReader(fonts.SubsetOf(f, some).TTF))
	require.NoError(t, err)
	part := &shaper{harfbuzz.NewFont(sub), harfbuzz.NewBuffer()}
	for _, text := range []string{"10 cm", "103 (111, –)", "AVATAR", "14¼ in"} {
		assert.Equal(t, float64(s.units([]rune(text))), fonts.Width(f, 2048, text), text)
	}
	assert.Equal(t, fonts.Width(f, 2048, some), float64(part.units([]rune(some))))
	assert.False(t, f.House())
}

func TestWhatIsNoFaceIsRefusedWithItsReason(t *testing.T) {
	for text, want := range map[string]string{
		"":                         "not a TrueType or OpenType face",
		"wOF2xxxxxxxxxxxx":         "web font",
		"ttcf\x00\x01\x00\x00":     "collection",
		"\x00\x01\x00\x00\x00\x63": "not a TrueType or OpenType face",
	} {
		_, err := fonts.Parse([]byte(text))
		assert.ErrorContains(t, err, want, "%q", text)
	}
	ttf := bytes.Clone(fonts.TTF(fonts.Regular))
	for i := 12; ; i += 16 {
		if string(ttf[i:i+4]) == "OS/2" {
			at := binary.BigEndian.Uint32(ttf[i+8:])
			binary.BigEndian.PutUint16(ttf[at+8:], 2)
			break
		}
	}
	_, err := fonts.Parse(ttf)
	assert.ErrorContains(t, err, "licence does not allow")
}

// A subset of ASCII letters alone, taken as a face, lacks fractions and the box itself.
func TestAFaceThatLacksGlyphsShowsAStandIn(t *testing.T) {
	f, err := fonts.Parse(fonts.SubsetOf(fonts.Regular, "0123456789 cmin").TTF)
	require.NoError(t, err)
	assert.Equal(t, "14□ in", fonts.Shown(f, "14¼ in"))
	assert.False(t, fonts.Has(f, '¼'))
	assert.NotEmpty(t, fonts.Outline(f, "¼"))
	again, err := sfnt.Parse(fonts.SubsetOf(f, "14¼").TTF)
	require.NoError(t, err)
	assert.NotEmpty(t, outline(t, again, '□'))
}

func BenchmarkSubset(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		f, err := fonts.Parse(fonts.TTF(fonts.Regular))
		if err != nil {
			b.Fatal(err)
		}
		fonts.SubsetOf(f, some)
	}
}
