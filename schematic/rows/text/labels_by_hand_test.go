package text

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// labelRead is what the beginning of a line says its row is, and the rest of the line; roundR is whether R stands for a round.
func labelRead(line string, roundR bool) string {
	t := Lex(line, 1)
	l, n, count := Label(t, roundR)
	if l == nil {
		return "none"
	}
	out := []string{"row"}
	if l.Round {
		out[0] = "round"
	}
	if l.Next {
		out = append(out, "next")
	}
	switch {
	case l.To.All > l.From.All:
		out = append(out, fmt.Sprint(l.From.All, "-", l.To.All))
	case l.From.All > 0:
		out = append(out, fmt.Sprint(l.From.All))
	}
	for _, k := range l.Listed {
		out = append(out, fmt.Sprint("+", k.All))
	}
	if l.Odd {
		out = append(out, "odd")
	}
	if l.Even {
		out = append(out, "even")
	}
	out = append(out, []string{"", "RS", "WS"}[l.Side])
	if l.Name != "" {
		out = append(out, "'"+l.Name+"'")
	}
	if count != nil {
		out = append(out, "count "+count[0].S)
	}
	rest := ""
	if n < len(t) {
		rest = string([]rune(line)[t[n].Col-1:])
	}
	return strings.Join(strings.Fields(strings.Join(out, " ")), " ") + " | " + rest
}

// How rows are called in print (common practice), what is meant, and where the row itself begins.
func TestWhatARowIsCalled(t *testing.T) {
	for line, want := range map[string]string{
		"Row 3: K2":                                "row 3 | K2",
		"Rows 4-20: K2":                            "row 4-20 | K2",
		"Rnd 5. Sc around":                         "round 5 | Sc around",
		"Round No. 7: sc":                          "round 7 | sc",
		"Rounds 5 to 8 inclusive: sc":              "round 5-8 | sc",
		"Rows 3, 5 and 7: knit":                    "row 3 +5 +7 | knit",
		"Rows 1-4 and 9-12: knit":                  "row 1-4 +9 +10 +11 +12 | knit",
		"Rows 3-5-7: knit":                         "row 3 +5 +7 | knit",
		"Row 2 and all even rows: purl":            "row 2 even | purl",
		"Row 1 and all odd rows: knit":             "row 1 odd | knit",
		"Row 3 and every alt row: knit":            "row 3 odd | knit",
		"Row 2 and every following WS row: purl":   "row 2 even WS | purl",
		"Row 2 (and all WS rows): purl":            "row 2 even WS | purl",
		"Row 2 (and all of them): purl":            "row 2 | purl",
		"Row 4: And every other row knit":          "row 4 even | knit",
		"2nd and all even rounds: knit":            "round 2 even | knit",
		"1st row: knit":                            "row 1 | knit",
		"1st and 2nd rows: knit":                   "row 1 +2 | knit",
		"7th to 10th rounds: knit":                 "round 7-10 | knit",
		"1st row to 4th row: knit":                 "row 1-4 | knit",
		"5th-7th rows: knit":                       "row 5-7 | knit",
		"1st wrong-side row: purl":                 "row 1 WS | purl",
		"Third row - K":                            "row 3 | K",
		"Row 3 (RS): K2":                           "row 3 RS | K2",
		"Row 3 (right side): K2":                   "row 3 RS | K2",
		"Row 4 [WS facing]: P":                     "row 4 WS | P",
		"Row 4 (wrong side of work) P":             "row 4 WS | P",
		"Row 4 (WS - dec row): P":                  "row 4 WS 'dec' | P",
		"Row 5 (inc row): K":                       "row 5 'inc' | K",
		"Row 5 (buttonhole row) K":                 "row 5 'buttonhole' | K",
		"Row 5 (decrease): K":                      "row 5 'dec' | K",
		"Row 6 (24 sts): K":                        "row 6 count 24 | K",
		"Row 6 (24): K":                            "row 6 count 24 | K",
		"Row 6 (24 sts) K":                         "row 6 | (24 sts) K",
		"Row 6 (k2, p2) to end":                    "row 6 | (k2, p2) to end",
		"Row 6, RS: K":                             "row 6 RS | K",
		"Row 6 - WS. K":                            "row 6 WS | K",
		"RS Row 1: K":                              "row 1 RS | K",
		"(WS) Row 2: P":                            "row 2 WS | P",
		"WS: Row 2 P":                              "row 2 WS | P",
		"Right side: Knit":                         "none",
		"Row 1 is a wrong-side row: P":             "row 1 WS | P",
		"Row 2 is purl":                            "none",
		"Row 3 for all sizes: K":                   "row 3 | K",
		"Row 3 across all sts: K":                  "row 3 | K",
		"Row 3 over all of the stitches - K":       "row 3 | K",
		"1st row of lace pattern: K":               "row 1 | K",
		"1st row of the sleeve is K":               "none",
		"Row 2a: K":                                "row 2 | K",
		"Row 4n - 2: K":                            "none",
		"Row #3 K":                                 "row 3 | K",
		"Row 3 sc in each st":                      "row 3 | sc in each st",
		"Row 3 was hard":                           "none",
		"Row 3 of the chart":                       "none",
		"Rows 3 and 4 form the pattern":            "none",
		"Row 3, sc in each st":                     "row 3 | sc in each st",
		"Row 3 Make 4 sc":                          "row 3 | Make 4 sc",
		"Row 3 make it fit":                        "none",
		"Row 3":                                    "row 3 | ",
		"row 3":                                    "none",
		"Round 2 (12 sts)":                         "round 2 count 12 | ",
		"R5: sc":                                   "row 5 | sc",
		"R5-R8: sc":                                "row 5-8 | sc",
		"R5-8 sc":                                  "row 5-8 | sc",
		"3. sc":                                    "row 3 | sc",
		"6-7. sc":                                  "row 6-7 | sc",
		"4. - 5. sc":                               "row 4-5 | sc",
		"11, 12, 13. sc":                           "row 11 +12 +13 | sc",
		"3) sc":                                    "row 3 | sc",
		"1.) sc":                                   "row 1 | sc",
		"3 sc in ring":                             "none",
		"3-sc cluster":                             "none",
		"3 rows: sc":                               "row 3 | sc",
		"4th.-- K2":                                "row 4 | K2",
		"2-ch1, sc in each st":                     "row 2 | ch1, sc in each st",
		"7-12 rows / 6 rows /: sc around":          "row 7-12 | sc around",
		"3.":                                       "none",
		"Rounds 15+ sc around":                     "round 15 | sc around",
		"Round 1 - 6sc into ring":                  "round 1 | 6sc into ring",
		"Row 2 - 2 sc in each st":                  "row 2 | 2 sc in each st",
		"Rounds 6 - 10 sc":                         "round 6-10 | sc",
		"Round 4–1 sc in each of next 2 sc":        "round 4 | 1 sc in each of next 2 sc",
		"Row 7- 1 sc in each st":                   "row 7 | 1 sc in each st",
		"Row 45- 5-dc shell in next st":            "row 45 | 5-dc shell in next st",
		"Row 5 – 7 knit":                           "row 5-7 | knit",
		"Row 11 - 1, dec, 9, dec":                  "row 11 | 1, dec, 9, dec",
		"ROUND 6 - 1 CH, turn":                     "round 6 | 1 CH, turn",
		"1 row - 4 rows: sc":                       "row 1-4 | sc",
		"Next row: K":                              "row next 1 | K",
		"Next row (RS): K":                         "row next 1 RS | K",
		"Next 3 rows: K":                           "row next 3 | K",
		"First 2 rows: K":                          "row next 2 | K",
		"Foundation row: ch 21":                    "row next 1 'foundation' | ch 21",
		"Set-up round 2: K":                        "round next 1 'set up 2' | K",
		"Brim rounds 1-12: sc":                     "round next 12 'brim' | sc",
		"Brim rounds 3 to 7: sc":                   "round next 5 'brim' | sc",
		"Dividing row K12":                         "row next 1 'dividing' | K12",
		"Increase row: K":                          "row next 1 'inc' | K",
		"Decrease row, K1":                         "none",
		"Eyelet row (RS): K":                       "row next 1 RS 'eyelet' | K",
		"Last row: K":                              "row next 1 | K",
		"Last row, ch 1":                           "row next 1 | ch 1",
		"Last dec row: K":                          "row next 1 'last dec' | K",
		"2nd inc row: K":                           "row next 1 'inc' | K",
		"Fold last row in half":                    "none",
		"Knit next row":                            "none",
		"Work in rows: sc":                         "none",
		"On the next round, k12, pm":               "round next 1 | k12, pm",
		"On the next round k12":                    "none",
		"For the next 2 rows: K":                   "row next 2 | K",
		"For the next 2 rows, K":                   "none",
		"Set-Up Body Patterns (RS): K":             "row next 1 RS 'set up' | K",
		"Set Up Pattern (K2)":                      "none",
		"All RS rows: K":                           "row odd RS 'every' | K",
		"All wrong-side rows: P":                   "row even WS 'every' | P",
		"Every even row: P":                        "row even 'every' | P",
		"Even-numbered rounds 2-8: K":              "round 2-8 even 'every' | K",
		"Odd rows: K":                              "row odd 'every' | K",
		"Following RS row: K":                      "row next 1 RS | K",
		"Pattern row 1: K":                         "row 1 | K",
		"Turn 1: Sl 1, p14, p2tog":                 "row 1 | Sl 1, p14, p2tog",
		"Turn 1 over":                              "none",
		"Round (left hand) 15: K":                  "round 15 | K",
		"The 6th round is worked in treble":        "round 6 | is worked in treble",
		"The 2nd and 3rd rows consist of dc":       "row 2 +3 | consist of dc",
		"The 6th round is long":                    "none",
		"The border is worked in treble":           "none",
		"* K2, p2; rep from * to end":              "none",
		"":                                         "none",
		"Row three":                                "none",
		"Row 10 RS K":                              "row 10 RS | K",
		"Row 10 = K":                               "row 10 | K",
		"Rows 2 & 4: K":                            "row 2 +4 | K",
		"Rnd 2 then every other rnd: K":            "round 2 even | K",
		"Rnd 1 and every foll alt rnd: K":          "round 1 odd | K",
		"Row 3 (RS)":                               "row 3 RS | ",
		"Next row":                                 "none",
		"Row (left) 15, K":                         "none",
		"Row (left) 15. K":                         "row 15 | K",
		"Row () 15: K":                             "none",
		"1st row of pattern: K":                    "row 1 | K",
		"1st row of: K":                            "none",
		"3 row: K":                                 "row 3 | K",
		"3.row: K":                                 "row 3 | K",
		"3 row = K":                                "row 3 | K",
		"3 = K":                                    "none",
		"2- sc in each":                            "row 2 | sc in each",
		"2 - sc in each":                           "row 2 | sc in each",
		"3 | sc":                                   "row 3 | sc",
		"Row 3 (k2":                                "row 3 | (k2",
		"The first and second rows are made of dc": "row 1 +2 | are made of dc",
		"The 6th round here is worked in dc":       "none",
		"Rows 5 thru 8 sc":                         "row 5-8 | sc",
		"Rows 5 ~ 8: sc":                           "row 5-8 | sc",
		"Rows 4 or 5: sc":                          "row 4 +5 | sc",
		"Round 3 (and every following round): K":   "round 3 | K",
		"Row 2 and every subsequent alt row: P":    "row 2 even | P",
		"Rows 1, 3 & 5 (RS): K":                    "row 1 +3 +5 RS | K",
		"Inc row (RS): K":                          "row next 1 RS 'inc' | K",
		"Inc row K1":                               "row next 1 'inc' | K1",
		"Inc row k1":                               "none",
		"Edging row 3: K":                          "row next 1 'edging 3' | K",
		"Ridge rows 3 and 4: K":                    "row next 2 'ridge' | K",
		"Row 7- 9 sc":                              "row 7-9 | sc",
		"Setup (RS): K":                            "row next 1 RS 'set up' | K",
		"Set Body (RS): K":                         "none",
		"1st row of old lace yoke pattern: K":      "row 1 | K",
		"1st row of the old lace yoke pattern: K":  "none",
		"Row 3 across all the sts. K":              "row 3 | K",
		"Row 3 across all sts K":                   "row 3 | across all sts K",
		"Row 3 on the sts: K":                      "row 3 | on the sts: K",
		"Rows 1-3, 5: K":                           "row 1-3 +5 | K",
		"Row 3 (12 sc, 3 dc): K":                   "row 3 count 12 | K",
		"Row 3 (): K":                              "row 3 | (): K",
		"Row 3 (dec row) K":                        "row 3 'dec' | K",
		"Row 3 (dec it) K":                         "row 3 | (dec it) K",
		"On next row, k3":                          "row next 1 | k3",
		"On this row, k3":                          "none",
		"Next 2 rnds: K":                           "round next 2 | K",
		"Last 2 rows: K":                           "row next 2 | K",
		"Row 12; K":                                "row 12 | K",
		"Row 12 > K":                               "row 12 | K",
	} {
		assert.Equal(t, want, labelRead(line, false), line)
	}
	assert.Equal(t, "round 5 | sc", labelRead("R5: sc", true))
	assert.Equal(t, "round 5 | sc", labelRead("5. sc", true))
	l, n, _ := Label(Lex("Row 3 (RS): K2", 1), false)
	assert.Equal(t, []int{1, 12, 6}, []int{l.At.Col, l.At.End, n})
}

func TestWhichSideWordsSay(t *testing.T) {
	for words, want := range map[string]int{
		"rs": 1, "WS facing": 2, "this is a right side row": 1, "this is the wrong side of the scarf": 2, "this is the wrong side of the red scarf": 0, "you work on the reverse side": 2, "k2 on rs": 0, "side": 0, "": 0, "right": 0, "rsf": 1,
	} {
		assert.Equal(t, want, SideNamed(Lex(words, 1)), words)
	}
}

func TestWhichNeedlesWordsName(t *testing.T) {
	for line, want := range map[string]string{
		"Needle 1: k": "[1] 3 true", "N2: k": "[2] 3 true", "Needles 2 and 3: k": "[2 3] 5 true", "on 1st needle, k": "[1] 4 true", "First and 3rd needles k": "[1 3] 4 false", "Needle 1, k3": "[1] 3 false", "With needle 2, k": "[2] 4 true",
		"Needle #4 - k": "[4] 3 true", "Needle 1 (heel): k": "[1] 6 true", "Needles 1, 2 and 3: k": "[1 2 3] 7 true", "N1 and N2: k": "[1 2] 6 true", "Needles 3 and 2: k": "[3] 2 false", "Needle 7: k": "[] 0 false", "Needle 6: k": "[6] 3 true", "needle 0: k": "[] 0 false",
		"n 2: k": "[] 0 false", "Knit 2": "[] 0 false", "1st row: k": "[] 0 false", "Needle 1, 2 sts": "[1] 3 false",
	} {
		on, to, signed := NeedleHead(Lex(line, 1))
		assert.Equal(t, want, fmt.Sprint(on, " ", to, " ", signed), line)
	}
}

// Steps of which three work stitches are rows, each word in its own column; numbers of what is done in order are taken off from three on.
func TestNumbersBeforeLines(t *testing.T) {
	steps := []string{"Step 1: 6 sc in ring", "Step 2: 2 sc in each st", "  Step 3: sc2tog 3 times, sc", "Fasten off."}
	assert.Equal(t, []string{"1.      6 sc in ring", "2.      2 sc in each st", "  3.      sc2tog 3 times, sc", "Fasten off."}, Steps(steps))
	assert.Equal(t, steps[:2], Steps(steps[:2]), "too few")
	withRow := append([]string{"Row 1: sc"}, steps...)
	assert.Equal(t, withRow, Steps(withRow))
	items := []string{"1 Cast on 9", "words", "2 Knit", "3 Sew up", "5 Done"}
	assert.Equal(t, []string{"  Cast on 9", "words", "  Knit", "  Sew up", "5 Done"}, Steps(items))
	assert.Equal(t, items[:3], Steps(items[:3]))
	assert.Equal(t, []string{"2 Knit", "3 Sew", "4 Do"}, Steps([]string{"2 Knit", "3 Sew", "4 Do"}), "not from 1")
}

// Every word stays in its column.
func TestLinesPastedFromATable(t *testing.T) {
	for line, want := range map[string]string{
		"| Row 1 | 6 sc in ring | 6 sts |": "  Row 1 : 6 sc in ring ( 6 sts )", "Row 1\t6 sc in ring\t6": "Row 1:6 sc in ring(6)", "Row 3 2 sc in each st | 12 sts": "Row 3 2 sc in each st = 12 sts", "*Row 3:* sc around": " Row 3:  sc around",
		"“Row 3 sc around”": " Row 3 sc around", "next row 4 : sc": "next row   : sc", "R: 4 - sc": "R  4 : sc", "Row 3: sc in each st _(12)_": "Row 3: sc in each st  (12) ", "K2, p2": "K2, p2",
	} {
		assert.Equal(t, want, Pasted(line), line)
	}
}
