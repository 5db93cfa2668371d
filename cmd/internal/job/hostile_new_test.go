package job

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"flatwright/schematic/long"
)

// New hostile inputs of every kind, at random: patterns, texts, tables and workbooks that are
// much too much of something. They are held to what the kept ones are held to. A failure repeats with
// its seed.
func TestNewHostileInputsAreRefusedOrHarmless(t *testing.T) {
	long.Test(t)
	m := maker{rand.New(rand.NewPCG(long.Seed(t), 1))}
	var most heaviest
	made := 0
	for i := range 40 {
		in := m.input(t, i)
		h := &hostileRun{t: t, in: in, most: &most}
		h.within(func() { h.outcome = h.run() })
		if !strings.HasPrefix(h.outcome, "refused") {
			made++
		}
	}
	t.Logf("%d of 40 made into files; %s", made, &most)
}

// maker makes inputs that are too much of something.
type maker struct{ *rand.Rand }

// some is a number up to most, small ones as likely as large ones.
func (m maker) some(most int) int {
	return int(math.Exp(m.Float64()*math.Log(float64(most)+1))) - 1 + m.IntN(2)
}

func (m maker) word() string {
	if m.IntN(6) > 0 {
		return fmt.Sprintf("w%d", m.IntN(1000))
	}
	return hostileTexts[m.IntN(len(hostileTexts))].text
}

func (m maker) many(most int, f func(i int) string) string {
	var b strings.Builder
	for i := range m.some(most) {
		if b.WriteString(f(i)); b.Len() > 900_000 {
			break
		}
	}
	return b.String()
}

func (m maker) input(t *testing.T, i int) hostileInput {
	switch i % 5 {
	case 0, 1:
		return hostileInput{fmt.Sprintf("new-%d.yaml", i), []byte(m.pattern())}
	case 2:
		return hostileInput{fmt.Sprintf("new-%d.rows.txt", i), []byte(m.text())}
	case 3:
		return hostileInput{fmt.Sprintf("new-%d.csv", i), []byte(m.sheet())}
	}
	return hostileInput{fmt.Sprintf("new-%d.xlsx", i), m.book(t)}
}

// pattern is a pattern with one or two things of which there are many, all else being as people write it.
func (m maker) pattern() string {
	of := map[string]int{"sizes": 60, "pieces": 2000, "mirrors": 2000, "sections": 500, "panels": 200, "marks": 200, "shapings": 50, "times": 2000,
		"motifs": 100, "joins": 2000, "finished": 490, "sums": 490, "terms": 300, "words": 490}
	all := slices.Sorted(maps.Keys(of))
	chosen := map[string]bool{}
	for range 1 + m.IntN(3) {
		chosen[all[m.IntN(len(all))]] = true
	}
	n := func(what string) int {
		if chosen[what] {
			return max(1, min(of[what], m.some(of[what]+5)))
		}
		return 1 + m.IntN(3)
	}
	var b strings.Builder
	fmt.Fprintf(&b, "pattern: %s\nterms: US\nunits: cm\nsizes: [", quoted(m.word()))
	for i := range n("sizes") {
		fmt.Fprintf(&b, "s%d,", i)
	}
	b.WriteString("]\ngauges:\n  g: 14 sts and 10 rows over 10 cm\ngrading:\n  a0: 1\n")
	for i := range n("sums") {
		fmt.Fprintf(&b, "  a%d: a%d", i+1, i)
		for range n("terms") {
			fmt.Fprintf(&b, " %s a%d", []string{"+", "-", "x"}[m.IntN(3)], m.IntN(i+1))
		}
		b.WriteString("\n")
	}
	b.WriteString("special stitches: [")
	for range n("words") {
		b.WriteString(quoted(m.word()) + ",")
	}
	b.WriteString("]\npieces:\n")
	if chosen["motifs"] {
		fmt.Fprintf(&b, "  - piece: Lap\n    motifs: {shape: hexagon, across: 9 cm, columns: %d, rows: %d}\n", n("motifs"), n("motifs"))
	}
	pieces := n("pieces")
	for i := range pieces {
		fmt.Fprintf(&b, "  - piece: P%d\n    sections:\n      - cast on: 400\n        edge: hem\n", i)
		for range n("sections") {
			b.WriteString(m.section(n))
		}
		if b.Len() > 900_000 {
			pieces = i + 1
			break
		}
	}
	for i := range n("mirrors") {
		fmt.Fprintf(&b, "  - piece: M%d\n    mirror of: P0\n", i)
	}
	b.WriteString("joins:\n")
	for range n("joins") {
		fmt.Fprintf(&b, "  - {sew: P%d hem, into: P%d hem}\n", m.IntN(pieces), m.IntN(pieces))
	}
	b.WriteString("finished:\n")
	for i := range n("finished") {
		fmt.Fprintf(&b, "  b%d: {of: P0 length x %d, is: %d}\n", i, i+1, i+5)
	}
	return b.String()
}

func (m maker) section(n func(string) int) string {
	switch m.IntN(8) {
	case 0:
		return fmt.Sprintf("      - decrease: 1\n        at: left edge\n        every: %d rows\n        times: %d\n", 1+m.IntN(4), min(n("times"), 20))
	case 1:
		return fmt.Sprintf("      - increase: 1\n        at: both edges\n        every: 1 rows\n        times: %d\n", n("times"))
	case 2:
		return fmt.Sprintf("      - even: 900 rows\n      - mark: %s\n        count: %d\n        at: right edge\n        along: yes\n", quoted(m.word()), n("marks"))
	case 3:
		shapings := "      - shape:\n          - {decrease: 1, at: left edge, every: 2 rows, times: 2}\n"
		for range n("shapings") - 1 {
			shapings += fmt.Sprintf("          - {increase: 1, at: right edge, every: %d rows, times: %d}\n", 1+m.IntN(9), min(n("times"), 90))
		}
		return shapings
	case 4:
		panels := "      - panels: ["
		k := n("panels")
		for i := range k {
			panels += fmt.Sprintf("{panel: Q%d, stitches: %d},", i, 1+(399-k)/max(k, 1))
		}
		return panels + "]\n"
	}
	return fmt.Sprintf("      - even: %d rows\n", 1+m.IntN(40))
}

func (m maker) text() string {
	tokens := []string{"sc ", "2 dc ", "(", ")", "[", "]", "*", "; rep from * ", "ch 3, ", "in next st ", "9 times, ", "across. ", "\n", "Row 2: ", "sk 2 ", "to last 3 sts ", "\n\nBack\n", "99999 ", m.word()}
	var b strings.Builder
	if n := m.some(90); m.IntN(2) == 0 {
		b.WriteString("Sizes: A (" + strings.Repeat("B, ", n) + "C)\n")
	}
	b.WriteString("Ch 61.\n")
	kinds := 1 + m.IntN(len(tokens))
	for range m.some(200_000) {
		if b.WriteString(tokens[m.IntN(kinds)%len(tokens)]); b.Len() > 900_000 {
			break
		}
		if m.IntN(40) == 0 {
			fmt.Fprintf(&b, "\nRow %d: ", m.IntN(500))
		}
	}
	return b.String()
}

func (m maker) sheet() string {
	comma := ",;\t"[m.IntN(3)]
	return fmt.Sprintf("what%[1]cS%[1]cM%[1]cL\n", comma) + m.many(9000, func(i int) string {
		return fmt.Sprintf("a%[1]d%[2]c%[3]d%[2]c%[4]s%[2]c3%[5]s\n", i, comma, m.some(1e9), quoted(m.word()), m.many(500, func(int) string { return string(comma) }))
	})
}

func (m maker) book(t *testing.T) []byte {
	rows := m.many(9000, func(i int) string {
		at := ""
		if m.IntN(3) == 0 {
			at = fmt.Sprintf(` r="%d"`, m.some(1_100_000))
		}
		return "<row" + at + ">" + m.many(40, func(int) string {
			return fmt.Sprintf(`<c t="s"><v>%d</v></c><c><v>%d</v></c>`, m.some(9000), m.some(1e9))
		}) + "</row>"
	})
	words := "<sst>" + m.many(200_000, func(int) string { return "<si><t>" + strings.Repeat("w", m.some(9)) + "</t></si>" }) + "</sst>"
	return hostileBook(t, sheetHead+sheetRow("what", "S", "M", "L")+rows+strings.Repeat(" ", m.some(30<<20))+`</sheetData></worksheet>`, words, "")
}
