package stitch

import (
	"slices"
	"strings"
	"sync"
)

// index holds every word and phrase of one set of terms, in lower case; it is put together when a word is first looked up.
var index = [2]func() map[string]*Stitch{
	US: sync.OnceValue(func() map[string]*Stitch { return phrases(US) }),
	UK: sync.OnceValue(func() map[string]*Stitch { return phrases(UK) }),
}

func phrases(t Terms) map[string]*Stitch {
	m := map[string]*Stitch{}
	put := func(w string, s *Stitch) {
		if w = strings.ToLower(w); m[w] == nil && w != "" {
			m[w] = s
		}
	}
	for _, s := range All() {
		put(s.Abbr(t), s)
		put(s.Name(t), s)
		for _, w := range s.Also {
			put(w, s)
		}
		if s.Craft == Crochet && s.ID != "ch" {
			put(s.Abbr(t)+"s", s)
			put(s.Name(t)+"s", s)
			if short, ok := strings.CutSuffix(s.Name(t), " crochet"); ok && s.ID != "sc" && s.ID != "slst" {
				put(short, s)
				put(short+"s", s)
			}
		}
		switch s.Post {
		case FrontPost, BackPost:
			side := "front post "
			if s.Post == BackPost {
				side = "back post "
			}
			b := byIDIn(t, s.Base)
			put(side+b, s)
			put("raised "+side[:len(side)-6]+" "+b, s)
			name, end := s.Plain().Name(t), " "+strings.Fields(side)[0]
			put("raised "+name+end, s)
			put("raised "+strings.TrimSuffix(name, " crochet")+end, s)
			put("r"+side[:1]+b, s) // rftr and the like, and rtrf as UK lists have it (from memory)
			put("r"+b+side[:1], s)
		}
	}
	if t == US {
		put("triple crochet", byID()["tr"])
		put("trc", byID()["tr"])
		put("d tr c", byID()["dtr"])
		put("tr tr", byID()["trtr"])
		put("ttr", byID()["trtr"])
		put("hdc dec", byID()["hdc2tog"])
		put("sc dec", byID()["sc2tog"])
		put("dc dec", byID()["dc2tog"])
	} else {
		put("sl st", byID()["slst"]) // used in both
		put("half treble", byID()["hdc"])
		put("ttr", byID()["dtr"])
		put("tr tr", byID()["dtr"])
		put("dbl tr", byID()["tr"])
		put("dble tr", byID()["tr"])
		put("quad tr", byID()["trtr"])
		put("quadtr", byID()["trtr"])
	}
	put("ss", byID()["slst"])
	return m
}

// byIDIn is the abbreviation of the stitch id in the terms t.
func byIDIn(t Terms, id string) string {
	for i := range plain {
		if plain[i].ID == id {
			return plain[i].Abbr(t)
		}
	}
	return id
}

// Lookup finds the stitch that a word or phrase (lower case) means in the terms t.
func Lookup(phrase string, t Terms) (*Stitch, bool) {
	s, ok := index[t]()[phrase]
	return s, ok
}

// Worked finds the crochet stitch in which a text, such as the words of a gauge, says
// that a fabric is worked: the first plain stitch that it names, in the terms t.
func Worked(text string, t Terms) (*Stitch, bool) {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return strings.ContainsRune(" ,-()", r) })
	for i := range words {
		for k := min(len(words), i+3); k > i; k-- {
			if s, ok := Lookup(strings.Join(words[i:k], " "), t); ok && s.Craft == Crochet && s.Uses == 1 && s.Makes == 1 && s.Base == s.ID && s.ID != "slst" && s.Legs == 1 {
				return s, true
			}
		}
	}
	return nil, false
}

// Longest is how many words the longest phrase of the list has.
const Longest = 6

// Only says that a word belongs to one set of terms alone: it has no meaning
// in the other, so that its presence tells which terms a text is in.
func Only(word string) (Terms, bool) {
	switch w := strings.ToLower(word); w {
	case "miss", "tension", "missed":
		return UK, true
	case "ss", "sl st":
		return US, false
	default:
		us, inUS := index[US]()[w]
		uk, inUK := index[UK]()[w]
		if inUS != inUK {
			if s := us; inUS && s.Craft == Crochet {
				return US, true
			}
			if s := uk; inUK && s.Craft == Crochet {
				return UK, true
			}
		}
	}
	return US, false
}

// Abbreviation is a word that is not a stitch, with what it stands for.
type Abbreviation struct{ Short, US, UK string }

// Abbreviations are those of the published lists that rows use beside stitches.
var Abbreviations = []Abbreviation{
	{"alt", "alternate", "alternate"}, {"approx", "approximately", "approximately"}, {"beg", "beginning", "beginning"},
	{"bet", "between", "between"}, {"BLO", "back loop only", "back loop only"}, {"BO", "bind off", "cast off"},
	{"BP", "back post", "raised back"}, {"ch", "chain", "chain"}, {"ch-sp", "chain space", "chain space"}, {"CO", "cast on", "cast on"},
	{"cont", "continue", "continue"}, {"dec", "decrease", "decrease"}, {"FLO", "front loop only", "front loop only"},
	{"foll", "following", "following"}, {"FP", "front post", "raised front"}, {"inc", "increase", "increase"}, {"lp", "loop", "loop"},
	{"patt", "pattern", "pattern"}, {"pm", "place marker", "place marker"}, {"prev", "previous", "previous"},
	{"psso", "pass slipped stitch over", "pass slipped stitch over"}, {"rem", "remaining", "remaining"}, {"rep", "repeat", "repeat"},
	{"rnd", "round", "round"}, {"RS", "right side", "right side"}, {"sk", "skip", "miss"}, {"sp", "space", "space"}, {"st", "stitch", "stitch"},
	{"tbl", "through the back loop", "through the back loop"}, {"tch", "turning chain", "turning chain"}, {"tog", "together", "together"},
	{"WS", "wrong side", "wrong side"}, {"yo", "yarn over", "yarn over"}, {"CC", "contrasting color", "contrasting colour"}, {"MC", "main color", "main colour"},
	{"cn", "cable needle", "cable needle"}, {"dpn", "double-pointed needle", "double-pointed needle"}, {"sm", "slip marker", "slip marker"},
	{"kwise", "knitwise", "knitwise"}, {"pwise", "purlwise", "purlwise"}, {"LH", "left hand", "left hand"}, {"RH", "right hand", "right hand"},
	{"wyib", "with yarn in back", "with yarn at back"}, {"wyif", "with yarn in front", "with yarn at front"},
	{"St st", "stockinette stitch", "stocking stitch"}, {"rev St st", "reverse stockinette stitch", "reverse stocking stitch"}, {"g st", "garter stitch", "garter stitch"},
}

// Abbreviates reports whether the published lists have a word beside the stitches: BO is bind off, and no bobble.
func Abbreviates(word string) bool {
	return slices.ContainsFunc(Abbreviations, func(a Abbreviation) bool { return strings.EqualFold(a.Short, word) })
}

// LookupBytes is Lookup for a phrase held as bytes.
func LookupBytes(phrase []byte, t Terms) (*Stitch, bool) {
	s, ok := index[t]()[string(phrase)]
	return s, ok
}

// Names gives every word and phrase of one set of terms, in lower case, with its stitch.
func Names(t Terms, each func(name string, s *Stitch)) {
	for name, s := range index[t]() {
		each(name, s)
	}
}

// LoopApart parts a word in which a stitch is run together with the loop that it is worked into, before or behind it: blsc,
// dcflo. Known reports whether a name is that of a stitch. Both parts are empty if the word is none.
func LoopApart(word string, known func(name string) bool) (loop, name string) {
	for _, loop := range [...]string{"blo", "flo", "bl", "fl", "tbl"} {
		for _, cut := range [...]func(s, part string) (string, bool){strings.CutPrefix, strings.CutSuffix} {
			if name, ok := cut(word, loop); ok && len(name) > 1 && known(name) {
				return loop, name
			}
		}
	}
	return "", ""
}
