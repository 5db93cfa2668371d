package fonts_test

import (
	"bytes"
	"strings"
	"sync"
	"testing"

	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/harfbuzz"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/fonts"
)

var house = []fonts.Face{fonts.Regular, fonts.Bold, fonts.Italic}

var all = map[string]fonts.Face{"regular": fonts.Regular, "bold": fonts.Bold, "italic": fonts.Italic}

// shaper is the measure from outside: a port of HarfBuzz, the shaper of browsers
// and of librsvg.
type shaper struct {
	font *harfbuzz.Font
	buf  *harfbuzz.Buffer
}

func newShaper(t *testing.T, f fonts.Face) *shaper {
	face, err := font.ParseTTF(bytes.NewReader(fonts.TTF(f)))
	require.NoError(t, err)
	return &shaper{harfbuzz.NewFont(face), harfbuzz.NewBuffer()}
}

// units is the advance of the text in 1/2048 em.
func (s *shaper) units(text []rune) (sum int) {
	s.buf.Clear()
	s.buf.AddRunes(text, 0, -1)
	s.buf.GuessSegmentProperties()
	s.buf.Shape(s.font, nil)
	for _, p := range s.buf.Pos {
		sum += int(p.XAdvance)
	}
	return sum
}

// repertoire is every character of the face that a pattern is likely to hold:
// Latin, general punctuation, number forms, arrows, operators.
func repertoire(f fonts.Face) (rs []rune) {
	for _, span := range [][2]rune{{0x20, 0x24f}, {0x2000, 0x2265}, {0x25a0, 0x25ff}} {
		for r := span[0]; r <= span[1]; r++ {
			if fonts.Has(f, r) {
				rs = append(rs, r)
			}
		}
	}
	return rs
}

func TestEveryPairIsAsWideAsHarfBuzzMakesIt(t *testing.T) {
	for name, f := range all {
		t.Run(name, func(t *testing.T) {
			s, rs := newShaper(t, f), repertoire(f)
			require.Greater(t, len(rs), 600)
			wrong := 0
			for _, a := range rs {
				for _, b := range rs {
					// What is drawn: of the ohm sign, say, the Greek letter.
					pair := fonts.Shown(f, string([]rune{a, b}))
					got, want := fonts.Width(f, 2048, pair), float64(s.units([]rune(pair)))
					if got != want && wrong < 10 {
						wrong++
						t.Errorf("%q: %v units, HarfBuzz %v", pair, got, want)
					}
				}
			}
		})
	}
}

func TestAnyLineIsAsWideAsHarfBuzzMakesIt(t *testing.T) {
	for name, f := range all {
		t.Run(name, func(t *testing.T) {
			s := newShaper(t, f)
			letters := append(repertoire(f), []rune("ΑΒΓαβγάώ АБВЖабвж 0123456789()¼½¾")...)
			rapid.Check(t, func(t *rapid.T) {
				text := rapid.SliceOfN(rapid.SampledFrom(letters), 1, 40).Draw(t, "text")
				assert.Equal(t, float64(s.units([]rune(fonts.Shown(f, string(text))))), fonts.Width(f, 2048, string(text)))
			})
		})
	}
}

// Widths in 1/1000 em from the AFM files of Helvetica and Helvetica-Bold, whose
// widths Arial shares (from memory). Liberation Sans was drawn to them; its grid
// of 2048 rounds each by less than half a unit.
func TestWidthsAreThoseOfHelvetica(t *testing.T) {
	afm := map[fonts.Face]map[string]float64{
		fonts.Regular: {" ": 278, "0": 556, "A": 667, "W": 944, "a": 556, "i": 222, "m": 833, "(": 333, "-": 333, "–": 556, "½": 834, "×": 584, "@": 1015},
		fonts.Bold:    {" ": 278, "0": 556, "A": 722, "W": 944, "a": 556, "i": 278, "m": 889, "(": 333, "½": 834, "@": 975},
		fonts.Italic:  {" ": 278, "0": 556, "A": 667, "W": 944, "a": 556, "i": 222, "m": 833, "½": 834},
	}
	for f, widths := range afm {
		for s, want := range widths {
			assert.InDelta(t, want, fonts.Width(f, 1000, s), 0.5, "%v %q", f, s)
		}
	}
}

func TestElevenIsPulledTogether(t *testing.T) {
	one := fonts.Width(fonts.Regular, 2048, "1")
	assert.Equal(t, 2*one-152, fonts.Width(fonts.Regular, 2048, "11"))
	assert.Equal(t, []fonts.Run{{Text: "1", Offset: 0}, {Text: "1", Offset: (one - 152) / 2048}}, fonts.Runs(fonts.Regular, "11"))
}

func TestTextWithoutSuchAPairIsOneRun(t *testing.T) {
	assert.Equal(t, []fonts.Run{{Text: "103 (2", Offset: 0}}, fonts.Runs(fonts.Regular, "103 (2"))
	assert.Empty(t, fonts.Runs(fonts.Regular, ""))
	assert.Zero(t, fonts.Width(fonts.Regular, 3, ""))
}

func TestRunsPutTogetherAreTheText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := house[rapid.IntRange(0, 2).Draw(t, "face")]
		s := rapid.OneOf(rapid.String(), rapid.StringMatching(`[AVTLYWPaeo1 .,ÄÁ]{0,30}`)).Draw(t, "text")
		shown := fonts.Shown(f, s)
		joined, last := "", 0.0
		for _, run := range fonts.Runs(f, s) {
			assert.NotEmpty(t, run.Text)
			assert.InDelta(t, fonts.Width(f, 1, joined+run.Text)-fonts.Width(f, 1, run.Text), run.Offset, 1e-12)
			joined += run.Text
			last = run.Offset + fonts.Width(f, 1, run.Text)
		}
		assert.Equal(t, shown, joined)
		assert.InDelta(t, fonts.Width(f, 1, s), last, 1e-12)
	})
}

func TestShownIsWhatTheFaceHas(t *testing.T) {
	for in, want := range map[string]string{
		"abc":                       "abc",
		"103 (111, –) ¼½¾⅛ × −1":    "103 (111, –) ¼½¾⅛ × −1",
		"e\u0301":                   "é",
		"e\u200d\u0301":             "é",
		"soft\u00adhyphen":          "softhyphen",
		"one\r\ntwo\tthree":         "one two three",
		"thin\u2009space":           "thin\u2009space",
		"broad\u3000space":          "broad space",
		"bell\a":                    "bell□",
		"turn\u202eround":           "turn□round",
		"isolate\u2067x\u2069":      "isolate□x□",
		"編物 🧶":                      "□□ □",
		"שלום":                      "□□□□",
		"x\u0332":                   "x□",
		"bad\xffbytes":              "bad□bytes",
		"\ufeffmark":                "mark",
		"private \ue000 \U0010ffff": "private □ □",
	} {
		for name, f := range all {
			assert.Equal(t, want, strings.ReplaceAll(fonts.Shown(f, in), "\ufffd", "□"), "%s %q", name, in)
		}
	}
}

func TestShownOfShownIsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := house[rapid.IntRange(0, 2).Draw(t, "face")]
		s := rapid.String().Draw(t, "text")
		shown := fonts.Shown(f, s)
		assert.Equal(t, shown, fonts.Shown(f, shown))
		for _, r := range shown {
			assert.True(t, fonts.Has(f, r))
		}
	})
}

func TestEveryFaceHasTheStandIn(t *testing.T) {
	for name, f := range all {
		assert.True(t, fonts.Has(f, fonts.StandIn), name)
	}
}

// The heights stand in the faces' hhea tables; Arial's are the same (from memory): 1854 and -434 of 2048.
func TestHeightsAreThoseOfTheFaces(t *testing.T) {
	for name, f := range all {
		assert.InDelta(t, 0.905, fonts.Ascent(f), 0.001, name)
		assert.InDelta(t, 0.212, fonts.Descent(f), 0.001, name)
	}
}

func TestAFaceThatIsNoneIsRegular(t *testing.T) {
	assert.Equal(t, fonts.Regular, fonts.Face{})
}

func TestManyMayMeasureAtOnce(t *testing.T) {
	want := fonts.Width(fonts.Italic, 4, "AV 11 é")
	var wg sync.WaitGroup
	for range 16 {
		wg.Go(func() {
			for range 100 {
				assert.Equal(t, want, fonts.Width(fonts.Italic, 4, "AV 11 é"))
				assert.Len(t, fonts.Runs(fonts.Bold, "11"), 2)
			}
		})
	}
	wg.Wait()
}

func BenchmarkWidth(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		fonts.Width(fonts.Regular, 3, "103 (111, 119, 127) (135, 143)")
	}
}

func BenchmarkWidthBeyondASCII(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		fonts.Width(fonts.Regular, 3, "14¼ (15½, 16¾) – 43 cm")
	}
}

func BenchmarkRuns(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		fonts.Runs(fonts.Regular, "103 (111, 119, 127) (135, 143)")
	}
}

func TestTheLicenceComesWithTheFaces(t *testing.T) {
	assert.Contains(t, fonts.Licence, "SIL OPEN FONT LICENSE Version 1.1")
	assert.Contains(t, fonts.Licence, "Liberation")
}
