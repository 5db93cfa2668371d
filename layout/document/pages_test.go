package document_test

import (
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/fonts"
	"flatwright/layout/document"
	"flatwright/layout/place"
	"flatwright/layout/sheet"
	"flatwright/layout/table"
	"flatwright/schematic"
	"flatwright/schematic/long"
	"flatwright/schematic/random"
	"flatwright/schematic/read"
	"flatwright/schematic/rows"
	"flatwright/schematic/stitch"
)

// wren is a pattern that says everything that a page can show.
const wren = "../../cmd/internal/job/testdata/wren.yaml"

func worked(t testing.TB, path string) ([]*schematic.Garment, *document.Content) {
	t.Helper()
	src, err := os.ReadFile(filepath.FromSlash(path))
	require.NoError(t, err)
	p, found := read.Pattern(path, src)
	require.False(t, found.Errors(), "%v", found)
	return of(p)
}

func of(p *schematic.Pattern) ([]*schematic.Garment, *document.Content) {
	var gs []*schematic.Garment
	for i := range p.Sizes.Len() {
		gs = append(gs, schematic.Work(p, i))
	}
	text := p.Rows
	if text == "" {
		text = rows.Print(p, gs, rows.PrintOptions{Terms: stitch.Terms(p.Terms), Size: -1})
	}
	sections, short := document.Written(p, text)
	return gs, document.Of(gs, sections, short)
}

// kinds are all kinds of document, in all their forms.
func kinds(gs []*schematic.Garment, c *document.Content, o document.Options) map[string]func() ([]*sheet.Sheet, error) {
	one := o
	one.Size = len(gs) / 2
	alone := one
	alone.Alone = true
	return map[string]func() ([]*sheet.Sheet, error){
		"all":       func() ([]*sheet.Sheet, error) { return document.Handout(gs, c, o) },
		"size":      func() ([]*sheet.Sheet, error) { return document.Handout(gs, c, one) },
		"alone":     func() ([]*sheet.Sheet, error) { return document.Handout(gs, c, alone) },
		"worksheet": func() ([]*sheet.Sheet, error) { return document.Worksheet(gs, c, one, false) },
		"answers":   func() ([]*sheet.Sheet, error) { return document.Worksheet(gs, c, one, true) },
		"life size": func() ([]*sheet.Sheet, error) { return document.LifeSize(gs[one.Size], c, one) },
	}
}

// holds asserts what is true of every page of every document.
func holds(t require.TestingT, name string, sheets []*sheet.Sheet, o document.Options) {
	for i, s := range sheets {
		require.NoError(t, s.Finite(), name)
		for _, p := range sheet.Overlaps(s, 9) {
			assert.Fail(t, "overlap", "%s, page %d: %s", name, i+1, p)
		}
		want := fmt.Sprintf("page %d of %d", i+1, len(sheets))
		found, low, lowest := 0, 0.0, (*sheet.Text)(nil)
		sheet.Walk(&s.Root, func(it sheet.Item) {
			tx, ok := it.(*sheet.Text)
			if !ok {
				if _, hi, any := sheet.Bounds(it); any && hi.Y > low {
					if _, group := it.(*sheet.Group); !group {
						low, lowest = hi.Y, nil
					}
				}
				return
			}
			if tx.S == want {
				found++
			}
			if tx.Class != "page" && tx.At.Y > low {
				low, lowest = tx.At.Y, tx
			}
			if o.Large {
				assert.GreaterOrEqual(t, tx.Size, place.Large-0.01, "%s: %q is smaller than 18 point", name, tx.S)
			}
		})
		assert.Equal(t, 1, found, "%s: %s", name, want)
		if lowest != nil && lowest.Class == "heading" && lowest.Size > 4.2 && lowest.Face == fonts.Bold {
			assert.Fail(t, "a heading ends the page", "%s, page %d: %q", name, i+1, lowest.S)
		}
	}
}

func TestNothingOverlapsOnAnyPage(t *testing.T) {
	for _, path := range []string{wren, "../../examples/saltmarsh-cardigan.yaml", "../../examples/fellside-jumper.yaml", "../../examples/pebble-hat.yaml"} {
		gs, c := worked(t, path)
		for _, o := range []document.Options{
			{Size: -1}, {Size: -1, Paper: place.Letter, Little: true}, {Size: -1, Large: true}, {Size: -1, Large: true, Paper: place.Letter},
		} {
			for name, make := range kinds(gs, c, o) {
				sheets, err := make()
				require.NoError(t, err, "%s %s", path, name)
				holds(t, fmt.Sprintf("%s %s %+v", filepath.Base(path), name, o), sheets, o)
			}
		}
	}
}

func TestNothingOverlapsOnPagesOfRandomGarments(t *testing.T) {
	long.Test(t)
	seen := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		p := random.Pattern(random.Options{}).Draw(t, "pattern")
		p.Children = rapid.Bool().Draw(t, "children")
		p.Making = rapid.SliceOfN(rapid.SampledFrom([]string{"Block.", strings.Repeat("words that go on ", 40), "averyveryverylongword" + strings.Repeat("xyz", 90), "日本 🧶"}), 0, 4).Draw(t, "finishing")
		gs, c := of(p)
		o := document.Options{Size: -1, Paper: rapid.SampledFrom([]place.Paper{place.A4, place.Letter}).Draw(t, "paper"), Large: rapid.IntRange(0, 3).Draw(t, "large") == 0}
		all := kinds(gs, c, o)
		name := rapid.SampledFrom([]string{"all", "size", "alone", "worksheet", "answers", "life size"}).Draw(t, "kind")
		sheets, err := all[name]()
		var large *place.TooLarge
		var many *document.TooMany
		if errors.As(err, &large) || errors.As(err, &many) {
			seen["does not fit"]++
			return
		}
		require.NoError(t, err)
		seen[name]++
		holds(t, name, sheets, o)
	})
	t.Log(seen)
}

// said is all the text of sheets in the order of setting, without spaces, running heads
// and page numbers.
func said(sheets []*sheet.Sheet) string {
	var b strings.Builder
	for _, s := range sheets {
		sheet.Walk(&s.Root, func(it sheet.Item) {
			if tx, ok := it.(*sheet.Text); ok && tx.Class != "page" {
				b.WriteString(strings.ReplaceAll(tx.S, " ", ""))
			}
		})
	}
	return b.String()
}

func TestEveryNumberOfAHandoutFollowsTheSize(t *testing.T) {
	for _, path := range []string{wren, "../../examples/saltmarsh-cardigan.yaml", "../../examples/windlass-raglan.yaml", "../../examples/fellside-jumper.yaml", "../../examples/pebble-hat.yaml"} {
		gs, c := worked(t, path)
		us := c.Units()
		for i := range gs {
			sheets, err := document.Handout(gs, c, document.Options{Size: i, Alone: true})
			require.NoError(t, err)
			text := said(sheets)
			hold := func(all ...document.Text) {
				for _, l := range all {
					want := fonts.Shown(fonts.Regular, l.Said(c.Sizes, i, us, c.Steps))
					assert.Contains(t, text, strings.ReplaceAll(want, " ", ""), "size %s", gs[i].Size)
				}
			}
			for _, f := range slices.Concat(c.Fit, c.Facts) {
				hold(f.Lines...)
			}
			for _, s := range c.RowsFor(i) { // 1 row, and no step that the size does not take
				hold(s.Lines...)
			}
			hold(c.Finishing...)
			hold(c.Care...)
			hold(c.Notes...)
			held := 0
			for _, g := range c.Table.Groups {
				if g.Name == table.ToFit || g.Name == table.Written {
					continue // facts, at the head of the handout
				}
				for _, r := range g.Rows {
					want := ""
					for _, u := range us {
						want += u.String() + r.Cells[i].Text(u, c.Steps)
					}
					words := strings.Fields(r.Name) // a long name wraps; its last word stands before the value
					assert.Regexp(t, regexp.QuoteMeta(words[len(words)-1])+`[^.0-9]*`+regexp.QuoteMeta(strings.ReplaceAll(want, " ", "")), text, "%s, size %s", r.Name, gs[i].Size)
					held++
				}
			}
			assert.GreaterOrEqual(t, held, 3)
			drawn(t, sheets, c, i)
			reread(t, c, i)
		}
	}
}

// drawn holds that each measurement on the schematics has the value of the size, in both
// units, or a letter that the table beside it has.
func drawn(t *testing.T, sheets []*sheet.Sheet, c *document.Content, size int) {
	t.Helper()
	values := map[string]string{}
	for _, g := range c.Table.Groups {
		for _, r := range g.Rows {
			for _, id := range append([]string{r.ID}, r.Also...) {
				for _, u := range c.Units() {
					values[id] += r.Cells[size].Text(u, c.Steps) + u.String() + "/"
				}
			}
		}
	}
	found := 0
	for _, s := range sheets {
		letters := map[string]string{}
		sheet.Walk(&s.Root, func(it sheet.Item) {
			g, ok := it.(*sheet.Group)
			if !ok || g.Class != "measure" {
				return
			}
			text := ""
			sheet.Walk(g, func(it sheet.Item) {
				if tx, ok := it.(*sheet.Text); ok {
					text += strings.ReplaceAll(tx.S, " ", "")
				}
			})
			want, ok := values[g.ID]
			require.True(t, ok, "%s is in no table", g.ID)
			if len(text) == 1 {
				letters[text] = want
				return
			}
			text = strings.TrimSuffix(strings.TrimSuffix(text, "around"), ",")
			assert.Equal(t, strings.ReplaceAll(want, "/", ""), strings.ReplaceAll(text, "/", ""), "%s, size %d", g.ID, size)
			found++
		})
		if len(letters) > 0 {
			page := strings.ReplaceAll(said([]*sheet.Sheet{s}), " ", "")
			for l, v := range letters {
				cm, in, _ := strings.Cut(v, "cm/")
				assert.Contains(t, page, "cm"+cm+"in"+strings.TrimSuffix(in, "in"), "letter %s", l)
			}
		}
	}
	assert.GreaterOrEqual(t, found, 3)
}

// reread reads the rows of one size as a text of their own: every line makes as many
// stitches as the line for all sizes does in that size.
func reread(t *testing.T, c *document.Content, size int) {
	t.Helper()
	text := func(size int) string {
		var b strings.Builder
		for _, s := range c.Rows {
			fmt.Fprintf(&b, "\n# %s\n", s.Name)
			for _, l := range s.Lines {
				b.WriteString(l.Said(c.Sizes, size, c.Units(), c.Steps) + "\n")
			}
		}
		return b.String()
	}
	terms := stitch.US
	if c.Terms == "UK" {
		terms = stitch.UK
	}
	stitches := func(text string, o rows.Options, i int) (out []int) {
		o.Terms, o.TermsSet = terms, true
		x := rows.Read("rows", []byte(text), o)
		rep := rows.Check(x, o)
		for _, s := range x.Sections {
			for _, l := range s.Lines {
				n := rep.Stitches[l][i]
				if strings.Contains(l.Src, "–") { // the size leaves a part of it out
					n = -1
				}
				out = append(out, n)
			}
		}
		return out
	}
	all, one := stitches(text(-1), rows.Options{Sizes: c.Sizes}, size), stitches(text(size), rows.Options{}, 0)
	require.Len(t, one, len(all))
	for i := range one {
		if all[i] >= 0 && one[i] >= 0 {
			assert.Equal(t, all[i], one[i], "line %d, size %d", i+1, size)
		}
	}
	known := 0
	for _, n := range one {
		if n > 0 {
			known++
		}
	}
	assert.Greater(t, known, len(one)/2)
}

func TestTheChosenSizeStandsOutInBlackAndWhite(t *testing.T) {
	gs, c := worked(t, wren)
	sheets, err := document.Handout(gs, c, document.Options{Size: 1})
	require.NoError(t, err)
	bold, quiet := "", ""
	for _, s := range sheets {
		sheet.Walk(&s.Root, func(it sheet.Item) {
			if tx, ok := it.(*sheet.Text); ok && tx.Face == fonts.Bold {
				bold += " " + tx.S
			} else if ok && tx.Ink == sheet.Grey {
				quiet += " " + tx.S
			}
		})
	}
	for _, n := range []string{"102", "100", "77", "62.5", "24½"} {
		assert.Contains(t, bold, n)
	}
	for _, n := range []string{"94", "110", "83"} {
		assert.Contains(t, quiet, n)
		assert.NotContains(t, bold, " "+n)
	}
	assert.Contains(t, bold, "► 4 yrs", "the column of the table has a sign, besides its rules")
}

func TestAWorksheetAndItsAnswersAreOneSheet(t *testing.T) {
	for n, path := range []string{wren, "../../examples/saltmarsh-cardigan.yaml", "../../examples/pebble-hat.yaml", "../../examples/saltmarsh-cardigan.yaml"} {
		gs, c := worked(t, path)
		o := document.Options{Size: 1, Large: n == 3}
		work, err := document.Worksheet(gs, c, o, false)
		require.NoError(t, err)
		answers, err := document.Worksheet(gs, c, o, true)
		require.NoError(t, err)
		require.Equal(t, len(work), len(answers))
		places := func(s *sheet.Sheet) (texts map[string]int, blanks int) {
			texts = map[string]int{}
			sheet.Walk(&s.Root, func(it sheet.Item) {
				switch it := it.(type) {
				case *sheet.Text:
					if it.Class != "page" && it.Class != "heading" && it.S != "Name" && it.S != "Date" { // answers are no one's
						texts[fmt.Sprint(it.S, it.At)]++
					}
				case *sheet.Path:
					if it.Class == "blank" {
						blanks++
					}
				}
			})
			return
		}
		blank, filled := 0, 0
		for i := range work {
			a, here := places(work[i])
			b, m := places(answers[i])
			assert.Zero(t, m, "a rule without its answer")
			for k, n := range b {
				filled += n - a[k]
			}
			for k := range a {
				assert.Equal(t, a[k], b[k], "%q moved", k)
			}
			blank += here
		}
		assert.Greater(t, blank, 4)
		assert.Equal(t, blank, filled, "each blank has its answer")
	}
}

// A worked answer: 100 stitches at 16 over 10 cm are 62.5 cm, and 62.5 / 2.54 is 24.6,
// so 24½ in.
func TestAnAnswerWorkedByHand(t *testing.T) {
	gs, c := worked(t, wren)
	answers, err := document.Worksheet(gs, c, document.Options{Size: 1}, true)
	require.NoError(t, err)
	assert.Contains(t, said(answers), "Widthathem100stitches62.524½")
}

func TestLifeSizeSheetsPutTogetherAreThePiece(t *testing.T) {
	for _, path := range []string{wren, "../../examples/saltmarsh-cardigan.yaml", "../../examples/pebble-hat.yaml"} {
		gs, c := worked(t, path)
		g := gs[1]
		sheets, err := document.LifeSize(g, c, document.Options{Size: 1})
		require.NoError(t, err)
		drawn, twice, overlap := 0.0, 0.0, document.Overlap
		for _, s := range sheets {
			sheet.Walk(&s.Root, func(it sheet.Item) {
				if p, ok := it.(*sheet.Path); ok && p.Class == "outline" && p.Style.Width == 0.5 {
					for _, run := range p.Polyline() {
						for i := 1; i < len(run); i++ {
							drawn += math.Hypot(run[i].X-run[i-1].X, run[i].Y-run[i-1].Y)
						}
					}
				}
			})
		}
		whole := 0.0
		for _, m := range g.Pieces {
			for _, v := range m.Views {
				for _, l := range v.Outline {
					for i := range l {
						j := (i + 1) % len(l)
						whole += math.Hypot(l[j].X-l[i].X, l[j].Y-l[i].Y)
					}
				}
			}
		}
		// every line is drawn once, and what lies in an overlap twice or at a corner four times
		twice = drawn - whole
		assert.GreaterOrEqual(t, twice, -0.5, path)
		assert.Less(t, twice, whole*4*overlap/180, path)
	}
}
