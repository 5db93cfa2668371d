package job

import (
	"archive/zip"
	"bytes"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// hostileInput is a file that someone means harm with, or has by mischance. Its name's
// ending says what reads it: .yaml a pattern, .rows.txt written rows, .bodies.csv a table
// of bodies, .csv and .xlsx a sheet of graded values.
type hostileInput struct {
	name string
	body []byte
}

// mostKept is the size of the largest that lie in testdata; larger ones are made anew for
// each run.
const mostKept = 48 << 10

// hostileTexts are what may be put where a person writes words.
var hostileTexts = []struct{ name, text string }{
	{"script", `<script>alert(1)</script>`}, {"quote-out", `"><script>alert(1)</script>`}, {"event", `" onload="alert(1)" x="`},
	{"event-single", `' onclick='alert(1)`}, {"cdata", `]]><script/><![CDATA[`}, {"comment", `--><x/><!--`}, {"instruction", `?><?xml version="9"?>`},
	{"entity", `&lt;script&gt; &#60;b&#62; &unknown; &#0;`}, {"svg-out", `</text></svg><svg onload=alert(1)>`}, {"style-out", `</style><style>*{background:url(//x.example)}`},
	{"title-out", `</title><img src=x onerror=alert(1)>`}, {"link", `<a href="javascript:alert(1)">x</a>`}, {"address", `javascript:alert(1)`},
	{"foreign", `<foreignObject><iframe src="//x.example"/></foreignObject>`}, {"template", `{{.}} {{template "x"}} ${7*7} <%= 1 %>`},
	{"markdown-link", `[x](javascript:alert(1)) ![y](//x.example/z.png) <//x.example>`}, {"markdown-table", `| a | b |`}, {"markdown-code", "``` `x` ```"},
	{"markdown-html", "# <b onmouseover=alert(1)>x</b>"}, {"pdf-string", `) Tj ET Q (\`}, {"pdf-brackets", `((((\))\\((`}, {"pdf-object", `endstream endobj 1 0 obj << /JS (app.alert(1)) >>`},
	{"pdf-octal", `\050\051\000 \d800`}, {"formula", `=cmd|' /C calc'!A0`}, {"formula-plus", `+1+HYPERLINK("http://x.example")`}, {"formula-minus", `-2+3`},
	{"formula-at", `@SUM(1:9)`}, {"formula-tab", "\t=1+1"}, {"formula-wide", "＝1+1"}, {"right-to-left", "\u202egnp.exe\u202c \u2066x\u2069"},
	{"hebrew-arabic", "סריגה كروشيه ١٢٣"}, {"zero-width", "B\u200ba\u200cc\u200dk\u2060"}, {"marks", "Z" + strings.Repeat("\u0300\u0323", 120)},
	{"wide", "﷽𒐫𒈙⸻"}, {"emoji", "🧶👩‍👩‍👧‍👦🏴‍☠️e\u0301"}, {"noncharacter", "a\ufffeb\uffffc"}, {"private", "\ue000\U000f0000\U0010ffff"},
	{"nul", "a\x00b"}, {"escape", "\x1b[2J\x1b]0;x\x07"}, {"controls", "\x01\x08\x0b\x0c\x7f\u0085\u009b"}, {"separators", "a\u2028b\u2029c"},
	{"order-mark", "\ufeffx\ufeff"}, {"lines", "a\nb\r\nc\rd"}, {"spaces", " \u00a0\u3000 "}, {"long-word", strings.Repeat("W", 9000)},
	{"long-text", strings.Repeat("wool and more wool, ", 400)}, {"format", `%s%n%d%!v(PANIC=x)`}, {"climb", `../../../etc/passwd`}, {"climb-back", `..\..\x`},
	{"drive", `C:\Windows\x`}, {"device", `CON`}, {"device-ending", `NUL.txt`}, {"points", `..`}, {"ends-with-point", `x. . .`}, {"nothing-to-spell", `///***`},
}

const hostileWords = `version: 1
pattern: T
designer: T
note: T
terms: US
units: cm
sizes: S (M, L)
gauges:
  fabric: 14 sts and 10 rows over 10 cm in hdc
yarn: [T, {text: T, amount: 5 (6, 7)}]
tools: T
notions: T
notes: [T, T]
special stitches: T
finishing: T
care: T
edition: T
corrections: T
pieces:
  - piece: Back
    sections:
      - cast on: 60 (66, 74)
        stitch: T
      - mark: T
        count: 2
        at: right edge
      - even: 20 rows
      - bind off: all
finished:
  bust: 86 (95, 104)
`

const hostileNames = `pattern: T
terms: UK
units: in
sizes: [T, M, L]
sample: T
gauges:
  T: 14 sts and 10 rows over 10 cm
pieces:
  - piece: T
    gauge: T
    sections:
      - cast on: 60 (66, 74)
        edge: T
      - even: 20 rows
        name: T
        left edge: T
        width: T
      - divide:
          - part: T
            stitches: 20 (22, 24)
            sections: [{even: 4 rows}]
          - leave: 40 (44, 50)
            edge: T
  - piece: Collar
    mirror of: T
finished:
  T: 5 (6, 7)
`

// quoted is s as YAML writes it between double quotes.
func quoted(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteString(`\` + string(r))
		case r < 0x20 || r >= 0x7f && r < 0xa0 || r == 0x2028 || r == 0x2029 || r == 0xfeff || r == 0xfffe || r == 0xffff:
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String() + `"`
}

// plainPattern is a small pattern with a count, its sections and what stands behind the pieces.
func plainPattern(count, sections, after string) string {
	return "pattern: Plain\nterms: US\nunits: cm\nsizes: S (M, L)\ngauges:\n  fabric: 14 sts and 10 rows over 10 cm in hdc\npieces:\n  - piece: Back\n    sections:\n      - cast on: " +
		count + "\n" + sections + after
}

// hostileInputs are all of them, the same on every machine.
func hostileInputs(t testing.TB) []hostileInput {
	var all []hostileInput
	add := func(kind, name, ending, body string) {
		all = append(all, hostileInput{fmt.Sprintf("%s-%s%s", kind, name, ending), []byte(body)})
	}
	for _, c := range hostileTexts {
		add("words", c.name, ".yaml", fillWords(hostileWords, c.text))
		add("names", c.name, ".yaml", fillWords(hostileNames, c.text))
	}
	for i, n := range hostileNumbers {
		add("number", fmt.Sprintf("%02d", i+1), ".yaml", plainPattern(n, "      - even: 10 rows\n", ""))
	}
	for _, c := range hostileCounts() {
		add("count", c[0], ".yaml", c[1])
	}
	for _, c := range hostileForms() {
		add("form", c[0], ".yaml", c[1])
	}
	for _, c := range hostileRows() {
		add("rows", c[0], ".rows.txt", c[1])
	}
	for _, c := range hostileSheets() {
		add("sheet", c[0], ".csv", c[1])
	}
	for _, c := range hostileBodies() {
		add("table", c[0], ".bodies.csv", c[1])
	}
	for _, c := range hostileWorkbooks {
		all = append(all, hostileInput{"book-" + c.name + ".xlsx", hostileBook(t, c.sheet, c.words, c.extra)})
	}
	all = append(all, hostileInput{"book-cut-short.xlsx", hostileBook(t, "", "", "")[:300]},
		hostileInput{"book-no-zip.xlsx", []byte("PK\x03\x04" + strings.Repeat("\xff", 200))})
	return all
}

// fillWords puts a text wherever the template has a T that stands alone; where names have a
// bound, the beginning of a long one.
func fillWords(template, text string) string {
	lines := strings.Split(template, "\n")
	for i, l := range lines {
		q := quoted(text)
		if w := []rune(text); len(w) > 30 && (strings.HasPrefix(l, "sizes") || strings.HasPrefix(l, "sample")) {
			q = quoted(strings.TrimSpace(string(w[:30])))
		} else if len(w) > 150 && (strings.HasPrefix(l, "pattern") || strings.Contains(template, "mirror of")) {
			q = quoted(string(w[:150]))
		}
		l = strings.ReplaceAll(l, "[T", "["+q)
		l = strings.ReplaceAll(l, ": T", ": "+q)
		l = strings.ReplaceAll(l, ", T", ", "+q)
		if strings.HasPrefix(strings.TrimSpace(l), "T:") {
			l = strings.Replace(l, "T:", q+":", 1)
		}
		lines[i] = l
	}
	return strings.Join(lines, "\n")
}

// hostileNumbers stand where a count of stitches is needed.
var hostileNumbers = []string{"1e999", "1e5", "NaN", "nan sts", ".nan", "inf", "-inf", ".inf", "Infinity rows", "-1", "-0", "0", "20000", "20001", "99999999999999999999",
	strings.Repeat("9", 400), "0." + strings.Repeat("0", 300) + "1", "1/0", "0/0", "1 1/0", "1/99999999999999999999", "15 999999/1000000", "½½", "½ (½, ½)", "0x10", "0b1", "0o17",
	"1_000", "1'000", "10^9", "1,5", "1.5", "+5", "--5", "１２", "٣", "Ⅻ", "²", "1 (2, 3", "1 (2, 3))", "((((1))))", "1 (2, 3) (4)", "–", "none", "– (–, –)", "60 <b>", "60 sts sts",
	"true", "no", "~", "2024-01-01", "", "\"\"", "[]", "{}", "[1, [2, 3]]", "{S: 1, S: 2, M: 3, L: 4}", "{XL: 1}", strings.Repeat("(", 2000), strings.Repeat("1 (", 900), strings.Repeat("1, ", 3000)}

// hostileCounts are numbers and references that could make the work run away.
func hostileCounts() [][2]string {
	p := func(sections string) string { return plainPattern("60 (66, 74)", sections, "") }
	many := func(n int, f func(i int) string) string {
		var b strings.Builder
		for i := range n {
			b.WriteString(f(i))
		}
		return b.String()
	}
	sizes := func(n int) string {
		return "pattern: Sizes\nterms: US\nunits: cm\nsizes: [" + strings.TrimSuffix(many(n, func(i int) string { return fmt.Sprintf("s%d, ", i) }), ", ") +
			"]\ngauges:\n  g: 14 sts and 10 rows over 10 cm\npieces:\n  - piece: Back\n    sections:\n      - cast on: 60\n      - even: 10 rows\n"
	}
	pieces := func(n int) string {
		return "pattern: Pieces\nterms: US\nunits: cm\nsizes: S\ngauges:\n  g: 14 sts and 10 rows over 10 cm\npieces:\n" +
			many(n, func(i int) string {
				return fmt.Sprintf("  - piece: P%d\n    sections:\n      - cast on: 8\n      - even: 4 rows\n", i)
			})
	}
	gauge := func(g string) string {
		return strings.Replace(p("      - even: 10 rows\n"), "14 sts and 10 rows over 10 cm in hdc", g, 1)
	}
	grading := func(lines, count string) string {
		return strings.Replace(plainPattern(count, "      - even: 10 rows\n", ""), "pieces:", "grading:\n"+lines+"pieces:", 1)
	}
	nested := "      - divide:\n"
	for i := range 14 {
		in := strings.Repeat(" ", 10+8*i)
		nested += fmt.Sprintf("%s- part: A%d\n%s  stitches: 10\n%s  sections:\n%s    - %s\n", in, i, in, in, in, map[bool]string{true: "divide:", false: "even: 2 rows"}[i < 13])
	}
	motifs := func(text string) string {
		return "pattern: Motifs\nterms: US\nunits: cm\nsizes: S\ngauges:\n  g: 14 sts and 10 rows over 10 cm\npieces:\n  - piece: Lap\n    motifs: " + text + "\n"
	}
	two := func(a, b string) string {
		return "pattern: Two\nterms: US\nunits: cm\nsizes: S\ngauges:\n  g: 14 sts and 10 rows over 10 cm\npieces:\n  - piece: A\n" + a + "  - piece: B\n" + b
	}
	return [][2]string{
		{"rows-most", p("      - even: 20000 rows\n      - even: 20000 rows\n      - even: 10000 rows\n")},
		{"rows-too-many", p("      - even: 20000 rows\n      - even: 20000 rows\n      - even: 20000 rows\n")},
		{"length-endless", p("      - even: 99999999999 cm\n")}, {"length-huge", p("      - even: 1000000 cm\n")}, {"length-nothing", p("      - even: 0 cm\n")},
		{"times-most", p("      - decrease: 1\n        at: both edges\n        every: 4 rows\n        times: 5000\n")},
		{"times-of-times", p("      - increase: 20000\n        at: across\n        every: 20000 rows\n        times: 5000\n")},
		{"increase-most", p("      - increase: 4\n        at: both edges\n        times: 2400\n")}, {"increase-doubling", p(many(40, func(int) string { return "      - repeat row: 20000 in 1\n" }))},
		{"shapings-many", p("      - shape:\n" + many(400, func(int) string {
			return "          - decrease: 1\n            at: left edge\n            every: 2 rows\n            times: 3\n"
		}))},
		{"sections-500", p(many(499, func(int) string { return "      - even: 2 rows\n" }))}, {"sections-501", p(many(501, func(int) string { return "      - even: 2 rows\n" }))},
		{"sizes-60", sizes(60)}, {"sizes-61", sizes(61)}, {"sizes-9000", sizes(9000)}, {"pieces-300", pieces(300)}, {"pieces-2000", pieces(2000)}, {"pieces-2001", pieces(2001)},
		{"gauge-nothing", gauge("0 sts and 0 rows over 10 cm")}, {"gauge-huge", gauge("1e999 sts and 99999999999999999999 rows over 10 cm")}, {"gauge-tiny", gauge("1 sts and 1 rows over 99999999 cm")},
		{"gauge-fine", gauge("20000 sts and 20000 rows over 0.001 cm")}, {"gauge-no-length", gauge("14 sts and 10 rows over 0 cm")}, {"gauge-not-even", gauge("13 1/3 sts and 7 11/13 rows over 9 17/19 cm")},
		{"parts-many", p("      - divide:\n" + many(60, func(i int) string {
			return fmt.Sprintf("          - part: P%d\n            stitches: 1\n            sections: [{even: 2 rows}]\n", i)
		}))},
		{"parts-deep", p(nested)}, {"panels-many", p("      - panels:\n" + many(74, func(i int) string { return fmt.Sprintf("          - {panel: P%d, stitches: 1}\n", i) }))},
		{"marks-many", p("      - even: 40 rows\n      - mark: buttonhole\n        count: 999999999\n        at: right edge\n        along: yes\n")},
		{"marks-200", p("      - even: 400 rows\n      - mark: buttonhole\n        count: 200\n        at: right edge\n        along: yes\n")},
		{"mitre-round", p("      - mitre: 180 degrees\n        decrease: 2\n        times: 20\n")}, {"mitre-huge", p("      - mitre: 999999999 degrees\n        decrease: 2\n")},
		{"mitre-nothing", p("      - mitre: 0 degrees\n        decrease: 0\n        times: 0\n")}, {"short-rows", p("      - short rows: 20000 rows\n        over: 60\n        at: left edge\n        step: 0\n")},
		{"short-rows-wide", p("      - short rows: 6 rows\n        over: 20000\n        at: middle\n        step: 20000\n")},
		{"bind-off-all-and-more", p("      - bind off: all\n      - bind off: 20000\n        at: left edge\n        times: 5000\n      - even: 4 rows\n")},
		{"motifs-huge", motifs("{shape: square, across: 12 cm, columns: 1000000, rows: 1000000}")}, {"motifs-most", motifs("{shape: hexagon, across: 1 cm, columns: 100, rows: 100}")},
		{"motifs-wide", motifs("{shape: triangle, across: 99999999 cm, joining: 99999999 cm, columns: 2, rows: 2}")}, {"motifs-none", motifs("{shape: square, across: 0 cm, columns: 0, rows: 0}")},
		{"motifs-markup", motifs(`{shape: "<b>", across: 1 cm, columns: 1, rows: 1, filled: ["<x>", "\0"]}`)},
		{"mirror-of-itself", two("    mirror of: A\n", "    mirror of: A\n")}, {"mirror-circle", two("    mirror of: B\n", "    mirror of: A\n")},
		{"start-circle", two("    sections:\n      - start from: [{piece: B}]\n      - even: 2 rows\n", "    sections:\n      - start from: [{piece: A}]\n      - even: 2 rows\n")},
		{"onto-circle", two("    onto: B side, 1 in each row\n    sections:\n      - even: 2 rows\n", "    onto: A side, 1 in each row\n    sections:\n      - even: 2 rows\n")},
		{"onto-itself", two("    onto: A side, 1 in each row\n    sections:\n      - even: 2 rows\n", "    sections:\n      - cast on: 5\n      - even: 2 rows\n")},
		{"join-circle", p("      - join parts: [Back, Back, Back]\n      - join parts: [Back]\n        round: yes\n")},
		{"grading-circle", grading("  a: b\n  b: c\n  c: a\n", "a")}, {"grading-itself", grading("  a: a + 1\n", "a")},
		{"grading-doubling", grading("  a0: 3\n"+many(70, func(i int) string { return fmt.Sprintf("  a%d: a%d x a%d\n", i+1, i, i) }), "a70")},
		{"grading-thirds", grading("  a0: 1\n"+many(90, func(i int) string { return fmt.Sprintf("  a%d: a%d / 3 + 1 / %d\n", i+1, i, i+7) }), "a90")},
		{"grading-brackets", grading("  a: "+strings.Repeat("(", 900)+"1"+strings.Repeat(")", 900)+"\n", "a")}, {"grading-minus", grading("  a: "+strings.Repeat("- ", 2000)+"1\n", "a")},
		{"grading-long", grading("  a: 1"+strings.Repeat(" + 1", 5000)+"\n", "a")}, {"grading-nothing", grading("  a: 1 / (2 - 2)\n", "a")},
		{"grading-spread", grading("  a: {spread: 20000, over: 1}\n", "a every")}, {"grading-cap", grading("  a: {cap: 20000, armhole: 0.001 cm, first: 20000}\n", "a top")},
		{"grading-cap-huge", grading("  a: {cap: 20000, armhole: 99999 cm, first: 1}\n", "a top")},
		{"grading-caps", strings.Replace(grading(many(400, func(i int) string {
			return fmt.Sprintf("  a%d: {cap: 19000, armhole: 99000 cm, first: %d}\n", i, i+1)
		}), "60"), "S (M, L)", "["+strings.TrimSuffix(many(60, func(i int) string { return fmt.Sprintf("s%d, ", i) }), ", ")+"]", 1)},
		{"grading-raglan", grading("  a: {raglan: 20000, sleeve: 1, neck: 19999, sleeve neck: 20000, underarm: 0, over: 1}\n", "a neck")},
		{"grading-yoke", grading("  a: {yoke: 20000, neck: 1, over: 20000, rounds: 20000, multiple: 19999}\n", "a neck")}, {"grading-multiple", grading("  a: {stitches: 99999 cm, multiple: 19999 + 19998, odd: yes}\n", "a")},
		{"finished-circle", plainPattern("60 (66, 74)", "      - even: 10 rows\n", "finished:\n  bust: {is: 1, of: bust + bust}\n  waist: {is: 1e999, of: waist}\n")},
		{"finished-sum", plainPattern("60 (66, 74)", "      - even: 10 rows\n", "finished:\n  bust: {is: 1, of: "+strings.Repeat("Back bust + ", 900)+"Back bust}\n")},
		{"seam-huge", plainPattern("60 (66, 74)", "      - even: 10 rows\n", "joins:\n  - {sew: Back side, to: Back side, seam: 99999999 cm, how: eased by 99999999 cm}\n")},
		{"edges-many", plainPattern("60 (66, 74)", "      - even: 10 rows\n", "joins:\n  - sew: ["+strings.Repeat("Back side, ", 1500)+"Back side]\n    to: Back side\n")},
		{"yarn-nothing", plainPattern("60 (66, 74)", "      - even: 10 rows\n", "swatches:\n  fabric: 0 g over 0 x 0 cm\nball: 0 g, 0 m\nallowance: 99999999999 %\n")},
		{"yarn-huge", plainPattern("60 (66, 74)", "      - even: 10 rows\n", "swatches:\n  fabric: 99999999999 g over 0.0001 x 0.0001 cm\nball: 0.0001 g, 99999999 m\nallowance: -100 %\n")},
		{"rounding-nothing", strings.Replace(p("      - even: 10 rows\n"), "units: cm", "units: cm\nrounding: 0 cm and 0 in", 1)},
		{"rounding-tiny", strings.Replace(p("      - even: 10 rows\n"), "units: cm", "units: cm\nrounding: 0.0001 cm and 1/999999 in", 1)},
		{"rows-file-climbs", strings.Replace(p("      - even: 10 rows\n"), "units: cm", "units: cm\nrows file: ../../../../etc/passwd", 1)},
		{"rows-file-drive", strings.Replace(p("      - even: 10 rows\n"), "units: cm", `units: cm`+"\n"+`rows file: C:\Windows\win.ini`, 1)},
		{"rows-within", strings.Replace(p("      - even: 10 rows\n"), "units: cm", "units: cm\nrows: |\n  Ch 99999.\n  Rows 1-99999: (((sc in next st) 9999 times) 9999 times) 9999 times.\n  <script>alert(1)</script> Row 3: =1+1", 1)},
		{"ring-most", "pattern: Ring\nterms: US\nunits: cm\nsizes: S\ngauges:\n  g: 14 sts and 10 rows over 10 cm\npieces:\n  - piece: Hat\n    worked: in the round, from the centre\n    sections:\n      - ring: 1\n" +
			many(14, func(int) string { return "      - repeat row: 2 in 1\n" }) + "      - gather\n"},
	}
}

func hostileForms() [][2]string {
	good := plainPattern("60 (66, 74)", "      - even: 10 rows\n", "")
	laughs := "a: &a [x, x, x, x, x, x, x, x, x]\n"
	for c := 'b'; c < 'l'; c++ {
		laughs += fmt.Sprintf("%c: &%c [*%c, *%c, *%c, *%c, *%c, *%c, *%c, *%c, *%c]\n", c, c, c-1, c-1, c-1, c-1, c-1, c-1, c-1, c-1, c-1)
	}
	utf16 := func(big bool) string {
		var b strings.Builder
		for _, c := range []byte(good) {
			if big {
				b.Write([]byte{0, c})
			} else {
				b.Write([]byte{c, 0})
			}
		}
		return b.String()
	}
	return [][2]string{
		{"empty", ""}, {"spaces", "   \n\t\n  "}, {"comments", "# a\n# b\n"}, {"document-marks", "---\n---\n---\n"}, {"two-documents", good + "---\n" + good}, {"directive", "%YAML 9.9\n---\n" + good},
		{"order-mark", "\ufeff" + good}, {"order-mark-twice", "\ufeff\ufeff" + good}, {"utf16-small", "\xff\xfe" + utf16(false)}, {"utf16-big", "\xfe\xff" + utf16(true)}, {"utf16-bare", utf16(false)},
		{"windows-1252", strings.Replace(good, "Plain", "Pl\xe4in \xbd", 1)}, {"broken-utf8", strings.Replace(good, "Plain", "\xc0\xaf\xed\xa0\x80\xf8", 1)}, {"nul", strings.Replace(good, "Plain", "Pl\x00ain", 1)},
		{"binary", "\x7fELF\x02\x01\x01\x00\x00\x00" + strings.Repeat("\xde\xad\xbe\xef", 50)}, {"zip", "PK\x03\x04\x14\x00"}, {"png", "\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR"}, {"html", "<!doctype html><script>alert(1)</script>"}, {"json-deep", strings.Repeat(`{"a":`, 3000) + "1" + strings.Repeat("}", 3000)},
		{"carriage-returns", strings.ReplaceAll(good, "\n", "\r")}, {"line-ends-mixed", strings.Replace(strings.Replace(good, "\n", "\r\n", 3), "\n", "\n\r", 1)}, {"separators", strings.Replace(good, "\n", "\u2028", 2)},
		{"laughs", laughs + good}, {"alias-to-itself", "a: &a [*a]\n" + good}, {"anchor", strings.Replace(good, "Plain", "&x Plain", 1)}, {"alias", strings.Replace(good, "Plain", "*x", 1)}, {"merge", "base: &b {terms: US}\n<<: *b\n" + good},
		{"tag-binary", strings.Replace(good, "Plain", "!!binary aGVsbG8=", 1)}, {"tag-code", strings.Replace(good, "Plain", "!!python/object/apply:os.system [id]", 1)}, {"tag-set", "!!set {a, b}\n"},
		{"lists-deep", "pieces: " + strings.Repeat("[", 5000) + strings.Repeat("]", 5000)}, {"lists-open", "pieces: " + strings.Repeat("[", 9000)}, {"maps-deep", deep(300)}, {"dashes-deep", strings.Repeat("- ", 4000) + "x"}, {"keys-asked", strings.Repeat("? ", 3000) + "x"},
		{"keys-twice", good + good}, {"keys-many", good + manyKeys(3000)}, {"key-long", good + strings.Repeat("k", 30000) + ": x\n"}, {"key-empty", good + "\"\": x\n: y\n"}, {"key-a-list", good + "[a, b]: x\n{c: d}: y\n"},
		{"tabs", strings.ReplaceAll(good, "      -", "\t\t\t-")}, {"quote-open", good + "note: \"never closed\n"}, {"escapes", good + `note: "\u202e \uD800 \uDFFF \xff \U0010FFFF \e \0 \N"` + "\n"}, {"escape-wrong", good + `note: "\q \U99999999 \x0"` + "\n"},
		{"surrogates", good + `note: "\uD83D\uDE00"` + "\n"}, {"right-to-left-keys", good + "\u202eeton: x\n"}, {"look-alike-key", strings.Replace(good, "sizes", "sіzes", 1)}, {"invisible-key", strings.Replace(good, "sizes", "si\u200bzes", 1)},
		{"block-huge", good + "note: |999999999999\n  x\n"}, {"block-indent", good + "note: |9\n  x\n"}, {"folded", good + "note: >-\n" + strings.Repeat("  word\n\n", 2000)}, {"line-long", good + "note: " + strings.Repeat("a ", 20000) + "\n"},
		{"types-wrong", "pattern: [a]\nterms: {a: b}\nunits: 5\nsizes: {a: b}\ngauges: x\npieces: 7\njoins: {a: b}\nfinished: [1]\nrows: [x]\nyarn: {a: {b: {c: d}}}\ngrading: 1\nbodies: [x]\n"},
		{"all-empty", "pattern:\nterms:\nunits:\nsizes:\ngauges:\npieces:\njoins:\nfinished:\nrows:\n"}, {"version-future", "version: 99999999999999999999\n" + good},
		{"bytes-most", good + "# " + strings.Repeat("x", 1<<20-len(good)-2)}, {"bytes-too-many", good + "# " + strings.Repeat("x", 1<<20)}, {"brackets-mebibyte", strings.Repeat("[", 1<<20-10)}, {"asterisks-mebibyte", strings.Repeat("- *a\n", 200_000)},
		{"quotes-mebibyte", strings.Repeat("\"", 1<<20-10)}, {"errors-mebibyte", good + strings.Repeat("x: ((((\n", 120_000)}, {"sections-mebibyte", good + strings.Repeat("      - even: 1 (2, 3) rows\n", 37_000)}, {"title-mebibyte", strings.Replace(good, "Plain", strings.Repeat("Plain ", 170_000), 1)},
	}
}

func deep(n int) string {
	var b strings.Builder
	for i := range n {
		b.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return b.String()
}

func manyKeys(n int) string {
	var b strings.Builder
	for i := range n {
		b.WriteString("k" + strconv.Itoa(i) + ": x\n")
	}
	return b.String()
}

func hostileRows() [][2]string {
	c := [][2]string{
		{"empty", ""}, {"spaces", " \n\t\n"}, {"chain-huge", "Ch 999999999999999999999.\nRow 1: Sc in each ch across.\n"}, {"chain-nothing", "Ch 0.\nRow 1: Sc in 2nd ch from hook.\n"},
		{"repeats-deep", "Ch 100.\nRow 1: " + strings.Repeat("(", 3000) + "sc" + strings.Repeat(") 9 times", 3000) + ".\n"}, {"repeats-huge", "Ch 99999.\nRow 1: (((((sc in next ch) 9999 times) 9999 times) 9999 times) 9999 times) 9999 times.\n"},
		{"stars", "Ch 20.\nRow 1: " + strings.Repeat("*sc; rep from ", 2000) + "\n"}, {"star-nothing", "Ch 20.\nRow 1: *; rep from * across.\n"}, {"rows-huge", "Ch 20.\nRows 1-999999999: Sc in each st across.\n"}, {"rows-backwards", "Ch 20.\nRows 99-1: Sc in each st.\n"},
		{"rows-of-rows", "Ch 9.\nRow 1: Sc in each ch.\nRows 2-20000: Rep Row 1.\nRep Rows 1-20000 9999 times.\n"}, {"row-of-itself", "Ch 9.\nRow 1: Rep Row 1.\nRow 2: Rep Row 3.\nRow 3: Rep Row 2.\n"}, {"work-as-itself", "Back\nWork as for Back to end of row 99999.\n"},
		{"work-as-circle", "Back\nWork as for Front.\n\nFront\nWork as for Back.\n"}, {"one-stitch-many", "Ch 9.\nRow 1: 99999 sc in next ch.\nRow 2: (sc, ch 99999, sc) in each st.\n"}, {"together-many", "Ch 9.\nRow 1: sc99999tog, k99999tog, sc-1tog.\n"},
		{"doubling", "Ch 9.\nRow 1: Sc in each ch.\n" + strings.Repeat("Next row: 2 sc in each st across.\n", 60)}, {"work-even-huge", "Ch 9.\nWork even until piece measures 99999999 cm.\nWork 99999999 rows even.\n"}, {"every-nothing", "Ch 9.\nDec 1 st at each end of every 0th row 99999 times.\n"},
		{"sizes-many", "Sizes: A (" + strings.Repeat("B, ", 3000) + "C)\nRow 1: Ch 9 (10, 11).\n"}, {"sizes-twice", "Sizes: A (A, A)\nSizes: B\nCh 9 (10, 11).\n"}, {"sizes-nan", "Sizes: S (M)\nCh NaN (inf).\nRow 1: Sc in next -1 (1e999) ch.\n"},
		{"stitch-of-itself", "Special stitches: Shell = (shell, ch 1, shell) in st indicated.\nCh 9.\nRow 1: Shell in each ch.\n"}, {"stitch-circle", "Special stitches: A = (b, b) in st. B = (a, a) in st.\nCh 9.\nRow 1: a in each ch.\n"},
		{"stitch-laughs", "Special stitches: Aa = (9 sc) in st. Bb = (aa, aa, aa, aa, aa, aa, aa, aa, aa) in st. Cc = (bb, bb, bb, bb, bb, bb, bb, bb) in st. Dd = (cc, cc, cc, cc, cc, cc, cc, cc) in st.\nCh 99.\nRow 1: Dd in each ch.\n"},
		{"brackets-open", "Ch 9.\nRow 1: ((((([[[[[*****\n"}, {"brackets-anyhow", "Row 55: 2 dc sc (*(; rep from * )2 dc **]*([*]; rep from * [*[)[sc ]*sc [2 dc )\n"}, {"brackets-crossed", "Ch 9.\nRow 1: (sc, [dc) 3 times] twice.\n"}, {"line-long", "Ch 9.\nRow 1: " + strings.Repeat("sc, ", 8000) + "sc.\n"}, {"lines-many", "Ch 9.\n" + strings.Repeat("Row 1: sc.\n", 4000)}, {"words-many", strings.Repeat("pineapple ", 4000)},
		{"carriage-returns", "Ch 9.\rRow 1: Sc in each ch.\r"}, {"order-mark", "\ufeffCh 9.\nRow 1: Sc in each ch.\n"}, {"utf16", "\xff\xfeC\x00h\x00 \x009\x00"}, {"broken-utf8", "Ch 9\xff\xc0.\nRow 1: \xed\xa0\x80 sc.\n"}, {"nul", "Ch\x009.\n\x00Row 1: sc.\n"},
		{"binary", "\x7fELF" + strings.Repeat("\xde\xad", 300)}, {"zero-width", "C\u200bh 9.\nRow\u00a01: S\u200dc in each ch.\n"}, {"right-to-left", "\u202eCh 9.\nRow 1: \u2066sc\u2069 in each ch.\n"}, {"digits-elsewhere", "Ch １２.\nRow ٣: Sc in each ch.\n"},
		{"divide-wrong", "Ch 20.\nRow 1: Sc in each ch.\nDivide the row: 99999 sts, -5 sts, 0 sts.\nLeave 99999 sts unworked.\nAdd 99999 sts at each end.\n"}, {"ring-endless", "99999 sc in magic ring.\nRnd 2: 2 sc in each st around, 99999 times.\n"}, {"edge-endless", "Pick up and knit 99999 sts.\nRow 1: *k1, p1; rep from * 99999 times.\n"},
		{"same-time", strings.Repeat("At the same time ", 900) + "dec 1 st.\n"}, {"headings", strings.Repeat("# Back\n", 3000)}, {"rows-mebibyte", "Ch 9.\n" + strings.Repeat("Row 2: (sc, ch 1) 3 times.\n", 38_000)}, {"stars-mebibyte", strings.Repeat("*", 1<<20-10)}, {"brackets-mebibyte", "Row 1: " + strings.Repeat("(", 1<<20-20)},
	}
	for _, x := range hostileTexts {
		c = append(c, [2]string{"words-" + x.name, fmt.Sprintf("# %[1]s\nNotes: %[1]s\nSpecial stitches: %[1]s = (sc, ch 3) in st.\nCh 9.\nRow 1 (RS): Sc in 2nd ch, %[1]s in each ch. (8 %[1]s)\nRow 2: (sc, %[1]s) 3 times, sc in next st %[1]s.\nWork as for %[1]s.\n%[1]s\n", x.text)})
	}
	return c
}

func hostileSheets() [][2]string {
	head := "what,S,M,L,unit\n"
	c := [][2]string{
		{"empty", ""}, {"no-sizes", "a,b,c\n1,2,3\n"}, {"formulas", head + "=cmd|' /C calc'!A0,=1+1,+2,-3,=x\n@SUM,1,2,3,cm\n"}, {"not-numbers", head + "a,NaN,inf,-inf,cm\nb,1e999,0x10,½½,cm\nc,1/0,0/0,١,cm\n"},
		{"huge", head + "a," + strings.Repeat("9", 4000) + ",1e308,99999999999999999999,sts\n"}, {"tiny", head + "a,0." + strings.Repeat("0", 4000) + "1,0.000000000000000000001,0,cm\n"}, {"minus", head + "a,-1,-20000,-0,sts\n"},
		{"quotes", head + "\"a,1,2,3\n"}, {"quotes-many", strings.Repeat("\"", 40000)}, {"separators", "what;S,M\tL\n;;;,,,\t\t\t\n"}, {"columns-many", "what,S,M,L" + strings.Repeat(",x", 20000) + "\na,1,2,3\n"}, {"rows-many", head + strings.Repeat("a,1,2,3,cm\n", 4000)},
		{"rows-too-many", head + strings.Repeat("a,1,2,3,cm\n", 9000)}, {"sizes-twice", "what,S,S,M,L\na,1,2,3,4\n"}, {"nul", head + "a\x00,1\x00,2,3,cm\n"}, {"utf16", "\xff\xfew\x00h\x00"}, {"order-marks", "\ufeff\ufeff" + head + "a,1,2,3,cm\n"},
		{"right-to-left", head + "\u202ea,1,2,3,\u202emc\n"}, {"markup", head + "<script>alert(1)</script>,<b>,\"\"\">,</x>,\"&lt;\"\n"}, {"name-long", head + strings.Repeat("n", 30000) + ",x,2,3,cm\n"}, {"units-wrong", head + "a,1,2,3,=1\nb,1,2,3,parsec\n"}, {"carriage-returns", "what,S,M,L\ra,1,2,3\r"},
		{"back,sts,into a count", head + "back,61,67,75,sts\n"}, {"mebibyte", head + strings.Repeat(strings.Repeat("9", 99)+",1,2,3,cm\n", 9000)},
	}
	for i := range c {
		c[i][0] = strings.NewReplacer(",", "", " ", "-").Replace(c[i][0])
	}
	return c
}

func hostileBodies() [][2]string {
	head := "unit: cm\nmeasurement,S,M,L\n"
	return [][2]string{
		{"empty", ""}, {"comments", "# a\n# b\n"}, {"no-unit", "measurement,S,M,L\nbust,1,2,3\n"}, {"formula", head + "=1+1,1,2,3\nbust,=1,+2,@3\n"}, {"not-numbers", head + "bust,NaN,inf,1e999\nwaist,1/0,0/0,-1\n"}, {"ranges", head + "bust,9-1,1-2-3,--\n"},
		{"huge", head + "bust,99999999999999999999,1e308," + strings.Repeat("9", 900) + "\n"}, {"quotes", head + "\"bust,1,2,3\n"}, {"sizes-many", "unit: cm\nmeasurement" + strings.Repeat(",x", 9000) + "\nbust,1\n"}, {"rows-many", head + strings.Repeat("bust,1,2,3\n", 4000)},
		{"markup", "title: <script>\nsource: ]]></svg>\n" + head + "<b>,1,2,3\n"}, {"headings", strings.Repeat("title: x\n", 4000)}, {"utf16", "\xff\xfeu\x00"}, {"nul", head + "bu\x00st,1,2,3\n"}, {"source-of-lines", "source: a\r# b: c\n" + head + "bust,1,2,3\n"}, {"too-large", head + strings.Repeat("# x\n", 200_000)},
	}
}

const sheetHead = `<?xml version="1.0"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>`

func sheetRow(cells ...string) string {
	var b strings.Builder
	b.WriteString("<row>")
	for _, c := range cells {
		b.WriteString(`<c t="inlineStr"><is><t>` + c + `</t></is></c>`)
	}
	return b.String() + "</row>"
}

var hostileWorkbooks = []struct{ name, sheet, words, extra string }{
	{"plain", "", "", ""},
	{"entities", `<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;">]>` + sheetHead + sheetRow("what", "S", "M", "L") + sheetRow("&c;", "1", "2", "3") + `</sheetData></worksheet>`, "", ""},
	{"outside-entity", `<!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/passwd">]>` + sheetHead + sheetRow("what", "S", "M", "L") + sheetRow("&a;", "1", "2", "3") + `</sheetData></worksheet>`, "", ""},
	{"formula", sheetHead + sheetRow("what", "S", "M", "L") + `<row><c t="inlineStr"><is><t>a</t></is></c><c><f>WEBSERVICE("http://x.example")</f><v>1</v></c><c><f>1+1</f></c><c t="str"><v>=1+1</v></c></row></sheetData></worksheet>`, "", ""},
	{"row-far", sheetHead + `<row r="1048576"><c r="XFD1048576"><v>1</v></c></row></sheetData></worksheet>`, "", ""},
	{"row-huge", sheetHead + `<row r="99999999999"><c r="A99999999999"><v>1</v></c></row></sheetData></worksheet>`, "", ""},
	{"row-minus", sheetHead + `<row r="-1"><c r="-1"><v>NaN</v></c></row></sheetData></worksheet>`, "", ""},
	{"cell-wrong", sheetHead + `<row r="1"><c r="ZZZZZZ1"><v>1</v></c><c r=""><v>1e999</v></c></row></sheetData></worksheet>`, "", ""},
	{"words-missing", sheetHead + `<row r="1"><c r="A1" t="s"><v>99999999999</v></c><c r="B1" t="s"><v>-5</v></c></row></sheetData></worksheet>`, `<sst count="-1"><si/></sst>`, ""},
	{"not-finite", sheetHead + sheetRow("what", "S", "M", "L") + `<row><c t="inlineStr"><is><t>a</t></is></c><c><v>NaN</v></c><c><v>INF</v></c><c><v>1e999</v></c></row></sheetData></worksheet>`, "", ""},
	{"markup", sheetHead + sheetRow("what", "S", "M", "L") + sheetRow("&lt;script&gt;", "&lt;b&gt;", "2", "3") + `</sheetData></worksheet>`, "", ""},
	{"open-ended", sheetHead + sheetRow("what", "S"), "", ""}, {"no-xml", "not XML at all", "<", ""},
	{"climbs", "", "", "../../../../tmp/climbed.xml"}, {"climbs-back", "", "", `..\..\climbed.xml`}, {"part-twice", "", "", "xl/workbook.xml"},
	{"bomb", sheetHead + strings.Repeat(" ", 40<<20) + `</sheetData></worksheet>`, "", ""},
}

// hostileBook is a small workbook with a sheet, a table of texts and one part more, packed
// the same way every time.
func hostileBook(t testing.TB, sheet, words, extra string) []byte {
	t.Helper()
	if sheet == "" {
		sheet = sheetHead + sheetRow("what", "S", "M", "L") + sheetRow("ease, cm", "1", "2", "3") + `</sheetData></worksheet>`
	}
	parts := [][2]string{
		{"[Content_Types].xml", `<?xml version="1.0"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>`},
		{"_rels/.rels", `<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>`},
		{"xl/workbook.xml", `<?xml version="1.0"?><workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="One" sheetId="1" r:id="rId1"/></sheets></workbook>`},
		{"xl/_rels/workbook.xml.rels", `<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`},
		{"xl/worksheets/sheet1.xml", sheet},
	}
	if words != "" {
		parts = append(parts, [2]string{"xl/sharedStrings.xml", words})
	}
	if extra != "" {
		parts = append(parts, [2]string{extra, "<x/>"})
	}
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, p := range parts {
		w, err := z.Create(p[0])
		require.NoError(t, err)
		_, err = w.Write([]byte(p[1]))
		require.NoError(t, err)
	}
	require.NoError(t, z.Close())
	return b.Bytes()
}
