package text

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestKeysBeforeAColon(t *testing.T) {
	for line, want := range map[string]string{
		"Sizes: S (M, L)": "sizes| S (M, L)|8", "  Gauge: 20 sts": "gauge| 20 sts|10", "**Notes:** ch 3": "notes| ch 3|12", "Materials.—Four ounces": "materials|Four ounces|12", "Tension:-8 sts": "tension|8 sts|10", "TENSION 30 sts and 38 rows": "tension|30 sts and 38 rows|9",
		"Tension 22 sts and 30 rows to 10 cm": "tension|22 sts and 30 rows to 10 cm|9", "Check your tension: 22 sts": "", "SIZES XS (S, M, 1X)": "sizes|XS (S, M, 1X)|7", "SIZE Medium only": "", "Abbreviations (US terms): sc": "abbreviations| sc|27", "Row 3: knit": "", "Knit": "", "": "",
		"A very long line of words that goes on and on: gauge": "", "YARN 4 balls": "yarn|4 balls|6", "COLOUR red": "",
	} {
		key, rest, col := KeyOf(line)
		got := ""
		if key != "" {
			got = fmt.Sprint(key, "|", rest, "|", col)
		}
		assert.Equal(t, want, got, line)
	}
	for line, want := range map[string]string{"Notes": "notes", "ABBREVIATIONS": "names", "Stitches/Abbreviations used": "names", "*Special Stitches*": "stitches", "Gauge (blocked)": "gauge", "Sleeve": "", "All the many abbreviations used here": "", "sc: abbreviations": ""} {
		assert.Equal(t, want, KeyLine(line), line)
	}
	head := "Materials.—Four ounces of wool. Tension.—8 sts to an inch. BACK.—Cast on 90 sts."
	var parts []string
	for _, at := range Cuts(head) {
		parts = append(parts, head[at:at+4])
	}
	assert.Equal(t, []string{"Tens", "BACK"}, parts)
	assert.Nil(t, Cuts("Row 3.—Knit to the end. Row 4.—Purl."))
	assert.Equal(t, []int{len("With wool. ")}, Cuts("With wool. Tension.—8 sts to an inch"))
	for line, want := range map[string]bool{"Directions: Cast on": true, "To begin - ch 4": true, "Pattern for the back: K": true, "Knit: 4": false, "My pattern: K": false} {
		assert.Equal(t, want, Begins(line), line)
	}
}

func TestWhatIsAHeading(t *testing.T) {
	for line, want := range map[string]string{
		"# Back": "Back marked", "## Left Front (make 2)": "Left Front marked", "#": "", "Back": "Back", "BACK": "BACK marked", "**Sleeve**": "Sleeve marked", "Sleeves (make 2)": "Sleeves", "Arms x2": "Arms", "Ears - make 2": "Ears", "Leg 1": "Leg 1", "COAT: BACK": "COAT: BACK marked", "Back:": "Back",
		"Front, Back": "Front, Back", "5 Decrease Rows For Neck": "5 Decrease Rows For Neck marked", "back": "", "Then": "", "This is it": "", "These rows form": "", "This way": "This way", "In each space": "", "Knit 5 rows": "", "Work to the": "", "Then work on": "", "Back (see page 4 of this book)": "", "One two three four five six seven eight": "",
		"Row 2.": "", "Body (worked in one)": "Body", "Hat (slouchy)": "", "Ok": "", "Leg 123": "", "TOP": "TOP", "": "", "Next to Neck": "Next to Neck", "Back to": "Back to", "In": "In", "# A (make 2)": "A marked", "In Every": "",
	} {
		name, marked, ok := Heading(line)
		got := name
		if marked && ok {
			got += " marked"
		}
		assert.Equal(t, want, got, line)
		assert.Equal(t, want != "", ok, line)
	}
	for line, want := range map[string]int{"Ears (make 2)": 2, "Arms x4": 4, "Legs - make two": 2, "Paws (work four alike)": 4, "Sleeve (knit one)": 1, "Wing (make 12)": 12, "Back": 0, "Back (make)": 0, "Ears 3x": 3, "Tail (sew 2)": 0, "Dots (make 12a)": 0, "Leaf ×9": 9, "Leaf ×1": 0} {
		assert.Equal(t, want, MakeOf(line), line)
	}
	for line, want := range map[string]string{
		"Back: With 5 mm needles": "Back|With 5 mm needles", "SLEEVES-Commence": "SLEEVES|Commence", "Left Front (make 2): K": "Left Front|K", "Back. With white, cast on": "Back|With white, cast on", "Knit. With white": "", "Note: K": "", "Sew up. Now": "", "One two three four five: K": "", "Back—Cast on": "Back|Cast on", "Join-up": "", "Anything: K": "Anything|K", "back: K": "",
	} {
		name, rest, ok := Inline(line)
		got := ""
		if ok {
			got = name + "|" + rest
		}
		assert.Equal(t, want, got, line)
	}
	for name, want := range map[string]bool{"Left Front": true, "second sleeve": true, "the hood": true, "Left": false, "red sleeve": false, "Pockets": true, "": false} {
		assert.Equal(t, want, NamesPiece(name), name)
	}
}

func TestInWhatSizesLinesAre(t *testing.T) {
	line := func(s string, n int) (out []string) {
		for range n {
			out = append(out, s)
		}
		return out
	}
	three, two, glued := "Cast on 62 (66, 70) sts.", "K 4 (6) sts", "K28[34]"
	for _, c := range []struct {
		lines []string
		want  int
	}{
		{line(three, 3), 3}, {line(three, 2), 0}, {append(line(three, 2), "To fit bust"), 3}, {line("Work 62:66:70:74 sts", 3), 4}, {line("83 (89) 95 (101) 107 sts", 3), 5}, {line(two, 3), 0}, {append(line(two, 3), "Sizes"), 2}, {line(glued, 3), 2}, {line(glued, 2), 0},
		{[]string{"Cast on 40 (44) sts"}, 2}, {append(line(three, 3), line("K 1 (2, 3, 4)", 4)...), 4}, {append(line(three, 4), line("K 1 (2, 3, 4)", 4)...), 3}, {[]string{"Cast on 62 (66,", "70) sts", three, three}, 3}, {nil, 0}, {line("K2 (p2)", 5), 0}, {append(line(three, 3), append(line("K 1 (2, 3, 4)", 2), line("K 1 (2, 3, 4, 5)", 2)...)...), 0},
	} {
		assert.Equal(t, c.want, Sizes(c.lines), "%v", c.lines)
	}
	assert.True(t, InSizes([]string{"a", three}, 3))
	assert.False(t, InSizes([]string{"a", three}, 4))
	assert.False(t, InSizes([]string{"a", three}, 1))
	assert.Equal(t, []string{"2-4", "5-7", "8-10"}, ToFit([]string{"x", "To fit age 2-4 (5-7, 8-10)"}))
	assert.Nil(t, ToFit([]string{"To fit age two (5-7, 8-10)"}))
	assert.Nil(t, ToFit([]string{"To fit 32 (34 or 36, 38)"}))
	assert.Nil(t, ToFit([]string{"To fit 32 (123456789)"}))
	assert.Equal(t, []string{"Small", "Medium", "Large"}, Told([]string{"Directions are for Small; changes for Medium and", "Large are in parentheses.", three}))
	assert.Nil(t, Told([]string{"Directions are for Small; changes for Medium and Large are in parentheses."}))
	assert.Equal(t, "38 (40, 42)", Hyphened("38 (40 - 42)", line("136 (144-152) sts", 3)))
	assert.Equal(t, "38 (40 - 42)", Hyphened("38 (40 - 42)", line("136 (144) sts", 3)))
	assert.Equal(t, "2-4 (5-7)", Hyphened("2-4 (5-7)", line(three, 3)))
	for words, want := range map[string]string{"S/M/L": "S, M, L", "32-34 (36-38) 40-42": "32-34 (36-38); 32-34 (36-38, 40-42)", "XS (S-M-L)": "XS (S-M-L); XS (S-M-L); XS (S, M, L)", "S (M, L) to fit": "S (M, L)", "S – M": "S, M"} {
		assert.Equal(t, want, strings.Join(OtherSizes(words), "; "), words)
	}
	for words, want := range map[string]string{"To fit age 0-3 (3-6) months": "0-3 (3-6)", "small, medium and large": "small, medium, large", "XS (32 inch bust), S (34 inch bust)": "XS, S", "S (M, L) (shown in M).": "S (M, L)", "32 (34) in": "32 (34)"} {
		assert.Equal(t, want, SizesAlone(words), words)
	}
	for rest, want := range map[string]bool{"12 cm (4.5 in)": true, "about 5 in (12 cm)": true, "12 cm (14 cm)": false, "S (M)": false} {
		assert.Equal(t, want, InTwoUnits(rest), rest)
	}
	for text, want := range map[string][2]string{"Sizes S and M only: Row 1": {"Sizes S and M only", "Row 1"}, "All sizes continue here": {"All sizes", ""}, "First size only: K2": {"First size only", "K2"}, "K2": {"", "K2"}, "one size fits": {"", "one size fits"}, "For all sizes: K2": {"For all sizes", "K2"}} {
		said, rest := ForSizes(text)
		assert.Equal(t, want, [2]string{said, rest}, text)
	}
	assert.True(t, SomeSizes("For the two largest sizes only"))
	assert.False(t, SomeSizes("All sizes"))
	assert.True(t, AllSizes("all the Sizes"))
	assert.False(t, AllSizes("all"))
}

func TestWhatSaysWhatShortNamesMean(t *testing.T) {
	for line, want := range map[string]bool{"sc = single crochet, dc = double crochet": true, "sc = single crochet": false, "dec – decrease; inc – increase": true, "dec – decrease; and so on; and more": false, "k - 4; p - 5": false, "dec – reduce; inc – grow": false, "dec – decrease; inc – increase; and": true, "dec – decrease; inc – increase; so; on": false, "knit": false, "dec – decrease": false, "k = 4, p = 5": false} {
		assert.Equal(t, want, Glossary(line), line)
	}
	for line, want := range map[string]bool{"C4B = slip next 2 sts": true, "C4B = 4": false, "a = b = c": false, "sc = single": true, "Knit to the end of it = done": false} {
		assert.Equal(t, want, Means(line), line)
	}
	assert.True(t, Has("of the SIZE", "size"))
	assert.True(t, Has("size", "size"))
	assert.False(t, Has("siz", "size"))
}

// Print wraps rows where the column ends.
func TestWhichLineGoesOnWithTheOneBefore(t *testing.T) {
	for _, c := range []struct {
		last, line string
		want       bool
	}{
		{"Row 1: Knit to", "the end.", true}, {"Row 1: Knit (k2,", "P2) to end", true}, {"Row 1: Knit.", "Row 2: Purl.", false}, {"Row 1: sc, dc,", "Hdc in next", true}, {"Row 1: sc in next", "St", true}, {"Row 1: sc across", "turn", true}, {"Row 1: sc across", "Turn", false},
		{"Row 1: sc across.", "turn", false}, {"Row 1: sc across (12)", "*sc in next", false}, {"Row 1: sc across", "*sc in next", true}, {"Row 1: sc (p2, k2)", "6 times", true}, {"Row 1: sc (p2, k2)", "6 (7, 8) times", true}, {"Row 1: 12 sc (34", "Row 2: sc", false}, {"Row 1: 12 sc (34", "Sts) and", true},
		{"Sizes", "", false}, {"", "Knit", false}, {"", "  Knit", true}, {"Row 1: sc (12)", "  Knit", false}, {"Row 1: sc (12)", "  knit", true}, {"Knit 4 rows", "these 4 rows form the pattern", false}, {"Row 1: sc;", "Row 2: sc", false}, {"Row 1: sc;", "Dc", true}, {"Row", "3: Knit", true}, {"Knit. Row", "3: Purl", true},
		{"Knit. Row 3:", "Purl 2", true}, {"Knit. Row 3:", "Row 4: k", false}, {"Then k", "3, p2", true}, {"Then k", "3. sc", false}, {"To fit bust 32 in", "blue", true}, {"To fit bust 32 in", "Blue", false}, {"join. 96 sc", "work on", false}, {"join. 96 sc", "(p2) on", false}, {"join. 96 sc", "and so on", true}, {"= 20 sts", "and on", false},
		{"Knit 2 rounds", "cont in rib", false}, {"Knit 2 rounds", "of these", true}, {"Work until it meas", "20 cm", true}, {"Row 1: sc -", "Dc", true}, {"done. [20]", "and on", false},
	} {
		assert.Equal(t, c.want, GoesOn(c.last, c.line), "%q %q", c.last, c.line)
	}
	for line, want := range map[string]bool{"(a": true, "a)": false, ") (a": true, "((a)": true, "(a)": false, "[a": true} {
		assert.Equal(t, want, Open(line), line)
	}
	assert.True(t, CountOpen("19 sc (34"))
	assert.False(t, CountOpen("19 sc (34)"))
	var bullets []bool
	for _, s := range []string{"-", "•", "¶", "*", "k", "☐"} {
		bullets = append(bullets, Bullet(&Lex(s, 1)[0]))
	}
	assert.Equal(t, []bool{true, true, true, false, false, true}, bullets)
}
