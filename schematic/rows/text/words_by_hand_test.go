package text

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	ins "flatwright/schematic/rows/instructions"
)

// cut is a line cut into words, each between bars: a number with its values, one a size; ' behind what is glued to the word before it; : and its place behind an ordinal.
func cut(line string, sizes int) string {
	var out []string
	for _, k := range Lex(line, sizes) {
		s := k.S
		switch {
		case k.Kind == 'n' && k.Num.By != nil:
			s = ""
			for i, v := range k.Num.By {
				if i > 0 {
					s += ","
				}
				if v == ins.None {
					s += "–"
					continue
				}
				s += fmt.Sprint(v)
			}
		case k.Kind == 'n':
			s = fmt.Sprint(k.Num.All)
		case k.Kind == 'f':
			s = "f" + s
		}
		if k.Ord > 0 {
			s += fmt.Sprint(":", k.Ord)
		}
		if k.Short > 0 {
			s += fmt.Sprint("!", k.Short)
		}
		if k.List {
			s += "()"
		}
		if k.Glued {
			s += "'"
		}
		out = append(out, s)
	}
	return strings.Join(out, " ")
}

func TestHowALineIsCutIntoWords(t *testing.T) {
	for line, want := range map[string]string{
		"Sc in 2nd ch from hook":   "sc in 2nd:2 ch from hook",
		"K2tog, yo":                "k 2' tog' ,' yo",
		"ch-3 sp":                  "ch 3' sp",
		"3-dc shell":               "3 dc' shell",
		"2 - 3":                    "2 - 3",
		"2-3":                      "2 -' 3'",
		"Row 1 — knit":             "row 1 -- knit",
		"Row 1 -- knit":            "row 1 -- knit",
		"k1—p1":                    "k 1' --' p' 1'",
		"R5-R8":                    "r 5' -' r' 8'",
		"5th-7th rows":             "5th:5 -' 7th:7' rows",
		"21st, 11st, 22nd, 12nd":   "21st:21 ,' 11 st' ,' 22nd:22 ,' 12 nd'",
		"23rd 13rd 2d 3d 4d 4th":   "23rd:23 13 rd' 2d:2 3d:3 4 d' 4th:4",
		"2ndch from hook":          "2nd:2 ch' from hook",
		"second and twentieth":     "second:2 and twentieth:20",
		"7½ cm":                    "f7½ cm",
		"7.5 cm":                   "f7.5 cm",
		"7 1/2 cm":                 "f7 1/2 cm",
		"1/2 in":                   "f1/2 in",
		"½ in":                     "f½ in",
		"2/1/2 RPC":                "f2/1/2 rpc",
		"11.8 sc, inc":             "11 .' 8' sc ,' inc",
		"rep. from *":              "rep from *",
		"2 ch. 3 sc":               "2 ch .' 3 sc",
		"ch. 3, turn":              "ch 3 ,' turn",
		"in top of ch. 48 sts":     "in top of ch .' 48 sts",
		"work 2 sts. Turn":         "work 2 sts .' turn",
		"2 sts. turn":              "2 sts turn",
		"s.c. in D.C.":             "s c' in d c' .'",
		"k1.p1 rib":                "k 1' ,' p' 1' rib",
		"b.l.o. and R.S. facing":   "blo and rs facing",
		"F.O.":                     "fo",
		"diagram A.1":              "diagram a 1'",
		"2 dc's in it's place":     "2 dc in it's place",
		"ea st, nxt ch":            "each st ,' next ch",
		"s/s into s/sp":            "ss into s /' sp'",
		"rep fr *":                 "rep from *",
		"k 2 & p 2":                "k 2 and p 2",
		"k1f&b":                    "k 1' f' &' b'",
		"sc × 6…":                  "sc x 6 .'",
		"done :) now":              "done now",
		"(k1 :) p1":                "( k' 1' : )' p 1'",
		"size #10 needles":         "size 10 needles",
		"† k2 ††":                  "† k 2' ††",
		"sc -> 6":                  "sc = 6",
		"sc → 6":                   "sc = 6",
		"21 hdc|20 ch":             "21 hdc ,' 20' ch",
		"'sc, hdc' across":         "( sc' ,' hdc )' across",
		"“sc, hdc” 3 times":        "( sc' ,' hdc )' 3 times",
		"'sc, hdc' and":            "sc ,' hdc and",
		"rep from '*' twice":       "rep from * twice",
		"sc around |12|":           "sc around ( 12' )'",
		"sc around <18 sts>":       "sc around ( 18' sts )'",
		"sc <in it> on":            "sc < in' it >' on",
		"99999999999999999999 sts": fmt.Sprint(ins.Most+1, " sts"),
		"dоuble":                   "double",
		"it_is":                    "it is'",
		"K":                        "k",
		"* * *":                    "* * *",
		"++ k1 ++":                 "++ k 1' ++",
		"+ k1":                     "+ k 1'",
		"1. s.c. in next 3. s.c.":  "1 .' s c' in next 3 s c' .'",
		"1.d.c. in next":           "1 d' c' in next",
		"leaving rem. 5 sts":       "leaving rem 5 sts",
		"the sts rem. 5 sts":       "the sts rem .' 5 sts",
		"in each. of 3":            "in each of 3",
		"in each. turn":            "in each .' turn",
		"work patt. 2nd row":       "work patt .' 2nd:2 row",
		"D. C. in next":            "d c in next",
		"k. Turn":                  "k .' turn",
		"s. A":                     "s .' a",
		"in next 3 dc. s.c. on":    "in next 3 dc s c' on",
		"2 d.c. in 1. d.c. of":     "2 d c' in 1 d c' of",
		"k2 [p2] 4-8":              "k 2' [ p' 2' ]' 4 -' 8'",
		"x2, 2x, x 2":              "x 2' ,' 2 x' ,' x 2",
		"1st-2nd":                  "1st:1 -' 2nd:2'",
		"k s/":                     "k s /'",
		"k s/spot":                 "k s /' spot'",
		"k s/s":                    "k ss",
		"S/S.":                     "ss .'",
		"5⁄8 in":                   "f5⁄8 in",
		"5/":                       "5 /'",
		"5/x":                      "5 /' x'",
		"dogs' bed":                "dogs bed",
		"1.dc in":                  "1 .' dc' in",
		"2 d.c. of 3. d.c.":        "2 d c' of 3 .' d c' .'",
		"1.5":                      "f1.5",
		"3½":                       "f3½",
		"sl. st.":                  "sl st .'",
		"sl. st. to next":          "sl st to next",
		"sl.st.1 more":             "sl st' 1' more",
	} {
		assert.Equal(t, want, cut(line, 1), line)
	}
}

func TestOrdinalWords(t *testing.T) {
	for i, w := range strings.Fields("first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth") {
		k := Lex(w, 1)[0]
		assert.Equal(t, i+1, k.Ord)
		assert.Equal(t, i == 0, k.Is("first"))
	}
	assert.True(t, (&Token{Word: ins.Word{Kind: 'w', S: "1st"}, Ord: 1}).Is("next", "first"))
	assert.False(t, (&Token{Word: ins.Word{Kind: 'n', S: "1"}}).Is("1"))
}

// Lines of numbers, one a size; – is a size that has none, and ! tells how many there are where they are not one a size.
func TestLinesOfNumbers(t *testing.T) {
	for _, c := range []struct {
		line  string
		sizes int
		want  string
	}{
		{"10 (12, 14) sts", 3, "10,12,14 sts"}, {"10 [12: 14] sts", 3, "10,12,14 sts"}, {"10{12;14} sts", 3, "10,12,14 sts"}, {"10 (12) (14) sts", 3, "10,12,14 sts"}, {"10 (–, 14) sts", 3, "10,–,14 sts"}, {"– (12, 14) sts", 3, "–,12,14 sts"},
		{"10 (12, 14, 16) sts", 3, "10,12,14!4 sts"}, {"10 (12, 14) sts", 4, "10,12,14,–!3 sts"}, {"(10, 12, 14) sts", 3, "10,12,14() sts"}, {"(10, 12) sts", 3, "( 10' ,' 12 )' sts"}, {"(10, 12) sts", 2, "10,12() sts"},
		{"62:66:70 sts", 3, "62,66,70 sts"}, {"62-66-70 sts", 3, "62,66,70 sts"}, {"62/66/70 sts", 3, "62,66,70 sts"}, {"62-66 (70-74) sts", 4, "62,66,70,74 sts"}, {"rows 3-5-7", 3, "rows 3 -' 5' -' 7'"}, {"62-66 sts", 3, "62 -' 66' sts"}, {"62-66 sts", 2, "62 -' 66' sts"},
		{"{62, 66, 70 sts}", 3, "{ 62,66,70' sts }'"}, {"14, (18, 20) sts", 3, "14,18,20 sts"}, {"14, (18 sc, 20)", 3, "14 ,' ( 18' sc ,' 20 )'"}, {"83 (89) 95 (101) 107 sts", 5, "83,89,95,101,107 sts"}, {"83 (89) 95 sts", 3, "83,89,95 sts"},
		{"8 (8 1/2, 9 1/2) cm", 3, "f8 (8 1/2, 9 1/2) cm"}, {"8 (8 1/2, 9-1/2)", 3, "f8 (8 1/2, 9-1/2)"}, {"2nd (4th, 6th) 8", 3, "2nd:2 8"}, {"7½ (8, 8)", 3, "f7½ (8, 8)"}, {"7½ (8)", 3, "f7½ ( 8' )'"}, {"83 (89) 95, k2", 3, "83,89,–!2 95 ,' k 2'"}, {"83 (89) 95 (101), k2", 4, "83,89,95,101 ,' k 2'"}, {"83 (89) 95 (101) 107, k2", 5, "83,89,95,101,107 ,' k 2'"}, {"83 (89) 95 x", 3, "83,89,–!2 95 x"}, {"7.5 (8, 8.5) cm", 3, "f7.5 (8, 8.5) cm"}, {"8 (8½, 9) cm", 3, "f8 (8½, 9) cm"}, {"8 (8-1/2, 9) cm", 3, "f8 (8-1/2, 9) cm"}, {"27 (29 women's, 35 men's) sts", 3, "27,29,35 sts"},
		{"10 (12, 14) sts", 1, "10 ( 12' ,' 14 )' sts"}, {"3 (k2, p2)", 3, "3 ( k' 2' ,' p 2' )'"}, {"k10 (12, 14)", 3, "k 10,12,14'"},
	} {
		assert.Equal(t, c.want, cut(c.line, c.sizes), "%s in %d sizes", c.line, c.sizes)
	}
	nth := Lex("12th (10th, 8th) row", 3)[0]
	assert.Equal(t, []int{12, 10, 8}, nth.Num.By)
	assert.Equal(t, 12, nth.Ord)
	assert.Nil(t, Lex("2nd row", 1)[0].Num.By)
	assert.Nil(t, Lex("2nd (3rd) row", 3)[0].Num.By, "not one a size")
	k := Lex("Ch 10 (12, 14) sts", 3)
	assert.Equal(t, []int{4, 15, 16, 19}, []int{k[1].Col, k[1].End, k[2].Col, k[2].End})
}

// folded is a line folded into its brackets, the loose ones behind a stroke.
func folded(line string) string {
	tree, loose, deep := Tree(Lex(line, 1))
	if deep {
		return "too deep"
	}
	var text func([]Token) string
	text = func(list []Token) string {
		var out []string
		for _, k := range list {
			if k.Kind == 'g' {
				out = append(out, k.S+text(k.Sub)+shuts[k.S])
				continue
			}
			out = append(out, k.S)
		}
		return strings.Join(out, " ")
	}
	got := text(tree)
	for _, k := range loose {
		got += " / " + k.S
	}
	return got
}

func TestBracketsAreFolded(t *testing.T) {
	deepest := func(n int) string { return strings.Repeat("(", n) + "x" + strings.Repeat(")", n) }
	for line, want := range map[string]string{
		"k [p (yo) sl] p": "k [p (yo) sl] p", "(k) (p)": "(k) (p)", "(k]": "(k)", "k)": "k", "k) p": "k p / )", "(k, p": "k , p / (", "sc (34": "sc (34)", "sc (34 sts": "sc (34 sts)", "k": "k", "": "",
		deepest(MaxDepth): deepest(MaxDepth), deepest(MaxDepth + 1): "too deep",
	} {
		assert.Equal(t, want, folded(line), line)
	}
	g, _, _ := Tree(Lex("k (p yo) k", 1))
	assert.Equal(t, []int{3, 9}, []int{g[1].Col, g[1].End})
}

func TestTermsThatALineSays(t *testing.T) {
	for line, want := range map[string]string{
		"Written in US crochet terms": "US", "uses uk terms": "UK", "British terminology": "UK", "Little Flower (UK)": "UK", "Little Flower (U.S.)": "US", "American abbreviations": "US", "Tell us the terms": "", "UK - Aus etc. Format": "UK", "US size 8 hook": "", "little flower (UK)": "",
	} {
		terms, ok := TermsSaid(line)
		got := ""
		if ok {
			got = terms.String()
		}
		assert.Equal(t, want, got, line)
	}
	for s, want := range map[string][3]string{"US terms": {"US", "2", "true"}, "us": {}, "us terms": {"US", "2", "true"}, "UK.": {"UK", "2", "false"}, "U.K. names": {"UK", "4", "true"}, "British wool": {"UK", "7", "false"}, "american": {"US", "8", "false"}, "use": {}, "": {}, "Usa": {"US", "3", "false"}, "the UK": {}} {
		terms, n, said := Nation(s)
		got := [3]string{}
		if n > 0 {
			got = [3]string{terms.String(), fmt.Sprint(n), fmt.Sprint(said)}
		}
		assert.Equal(t, want, got, s)
	}
	for name, want := range map[string]string{"us": "uk", "US": "UK", "U.K.": "U.S.", "usa": "uk", "American": "British", "british": "american", "u.s.a": "u.k"} {
		assert.Equal(t, want, OtherNation(name))
	}
	assert.True(t, TitleTerms("Little Flower (UK)"))
	assert.False(t, TitleTerms("UK"))
}
