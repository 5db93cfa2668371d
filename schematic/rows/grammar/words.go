package grammar

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

// thing is what is worked: a stitch, an increase or decrease of the row's own stitch, or
// a group that the text defines.
type thing struct {
	Kind     *stitch.Stitch
	Inc, Dec bool
	Call     *ins.Group
	Each     int // stitches of the kind in one place: scinc is 2 sc in one
}

// also are further spellings of stitches, run together: those of old books, and what
// people write beside the lists of the standard. Common practice.
var also = map[string]string{
	"knit2together": "k2tog", "knit2tog": "k2tog", "k2t": "k2tog", "k2tg": "k2tog", "p2tg": "p2tog", "ktg": "k2tog", "ktog": "k2tog", "ptog": "p2tog", "k2together": "k2tog", "knittwotogether": "k2tog", "knit2togethertbl": "k2togtbl", "k2togtbl": "k2togtbl", "k2togb": "k2togtbl", "narrow": "k2tog", "nar": "k2tog", "n": "k2tog",
	"p2together": "p2tog", "purl2together": "p2tog", "purl2tog": "p2tog", "purltwotogether": "p2tog", "p2togtbl": "p2togtbl", "p2togb": "p2togtbl", "p2t": "p2tog", "k3togtbl": "k3togtbl", "knit3together": "k3tog", "k3together": "k3tog", "purl3together": "p3tog", "p3together": "p3tog", "p3togtbl": "p3togtbl",
	"sssk": "sk2p", "slipslipknitdecrease": "ssk", "sskdecrease": "ssk", "k2togdecrease": "k2tog", "decreasek2tog": "k2tog", "sl1k1psso": "skpo", "skpsso": "skpo", "sl1k2togpsso": "sk2p", "sk2togpo": "sk2p", "dd": "s2kp", "s2k1p": "s2kp", "s2kp2": "s2kp", "s1k1psso": "skpo", "slk1psso": "skpo", "slipandbind": "skpo", "slbind": "skpo", "skpo2": "sk2p", "sl1k2togp": "sk2p", "sk2psso": "sk2p", "ssskpo": "sk2p",
	"mk1": "m1", "mk": "m1", "make1": "m1", "inc1m1": "m1", "m1k": "m1", "m1b": "m1", "m1f": "m1", "m1a": "m1", "m1st": "m1", "m1z": "m1", "m": "m1", "ml": "m1", "kll": "m1l", "lli": "m1l", "rli": "m1r", "linc": "m1l", "rinc": "m1r", "m1lp": "m1l", "m1rp": "m1r", "m1pl": "m1l", "m1pr": "m1r", "m1left": "m1l", "m1right": "m1r", "make1left": "m1l", "make1right": "m1r", "bli": "m1", "kfbl": "kfb",
	"wyif": "", "o": "yo", "yarnforward": "yo", "yfon": "yo", "yfrn": "yo", "yrn": "yo", "yarnroundneedle": "yo", "yarnover": "yo", "yarnovers": "yo", "yos": "yo", "wfwd": "yo", "wfd": "yo", "wlfwd": "yo", "wlfd": "yo", "woolforward": "yo", "woolfwd": "yo", "threadforward": "yo", "tyo": "yo", "makeone": "m1", "takein": "k2tog", "wrn": "yo", "wlrn": "yo", "won": "yo", "wlon": "yo", "woolroundneedle": "yo", "wool over": "yo", "threadover": "yo", "tho": "yo", "over": "yo", "wo": "yo", "woolover": "yo", "cottonforward": "yo", "ytf": "", "fwd": "yo",
	"kf&b": "kfb", "kfandb": "kfb", "k1fandb": "kfb", "knitfrontandback": "kfb", "kbf": "kfb", "incinnextst": "", "pfandb": "pfb", "pf&b": "pfb", "p1f&b": "pfb", "k1f&b": "kfb", "k1fb": "kfb", "kifb": "kfb", "k1f1b": "kfb", "p1f1b": "pfb", "kfpb": "kfb", "pfkb": "pfb", "krl": "m1r", "rlinc": "m1r", "llinc": "m1l", "rlpi": "m1r", "llpi": "m1l", "lri": "m1r",
	"ktbl": "ktbl", "k1tbl": "ktbl", "ktb": "ktbl", "k1b": "ktbl", "kb1": "ktbl", "kb": "ktbl", "kib": "ktbl", "knittbl": "ktbl", "ptbl": "ptbl", "p1tbl": "ptbl", "p1b": "ptbl", "pb1": "ptbl", "pb": "ptbl",
	"s": "sl", "slip": "sl", "slp": "sl", "sl1p": "sl", "sl1k": "sl", "slk": "sl", "s1p": "sl", "slwyif": "slwyif", "slwyib": "slwyib", "sl1wyif": "slwyif", "sl1wyib": "slwyib", "slpwise": "sl", "slpurlwise": "sl", "slkwise": "sl", "plain": "k", "kl": "k", "seam": "p", "kn": "k", "pl": "p", "pu": "p", "kk": "k", "pearl": "p", "perl": "p", "pw": "p", "kw": "k",
	"slst": "slst", "ss": "slst", "sltst": "slst", "slipst": "slst", "slipstitch": "slst", "slipstitches": "slst", "slsts": "slst", "singlest": "slst", "sstitch": "slst", "slpst": "slst", "ssts": "slst", "slsttog": "slst", "slststog": "slst", "slipstitchtog": "slst", "slipstitchtogether": "slst",
	"stackedsc": "dc", "stackedsinglecrochet": "dc", "csdc": "dc", "chainlessstartingdc": "dc", "chainlessdc": "dc", "chainlessstartingdoublecrochet": "dc",
	"invdec": "sc2tog", "invisibledec": "sc2tog", "invisibledecrease": "sc2tog", "invsc2tog": "sc2tog", "invsc2t": "sc2tog", "idec": "sc2tog", "scdec": "sc2tog", "decsc": "sc2tog", "singlecrochetdecrease": "sc2tog", "hdcdec": "hdc2tog", "dcdec": "dc2tog", "trdec": "tr2tog", "sctog": "sc2tog", "scdecrease": "sc2tog", "hdcdecrease": "hdc2tog", "dcdecrease": "dc2tog", "sc2together": "sc2tog",
	"frontpost": "FPdc", "frontpoststitch": "FPdc", "frontpostst": "FPdc", "fps": "FPdc", "bps": "BPdc", "fpst": "FPdc", "bpst": "BPdc", "backpost": "BPdc", "backpoststitch": "BPdc", "backpostst": "BPdc",
	"sdc": "hdc", "shortdc": "hdc", "shortdoublecrochet": "hdc", "popcornst": "pc", "pop": "pc", "popcornstitch": "pc", "pcst": "pc", "pcs": "pc", "puffst": "puff", "ps": "puff", "puffstitch": "puff", "makebobble": "bobble", "mb": "bobble", "bobblest": "bobble", "bobblestitch": "bobble", "bob": "bobble", "bbl": "bobble", "bo": "bobble", "begcl": "cl", "beginningcluster": "cl", "beginningcl": "cl", "begpc": "pc", "begpopcorn": "pc", "beginningpopcorn": "pc", "begpuff": "puff", "begbobble": "bobble", "startingcluster": "cl", "clusterst": "cl", "clusterstitch": "cl", "clst": "cl",
}

// olden are abbreviations that mean what the other does in the same terms: treble crochet, half treble crochet.
// Common practice.
var olden = map[string]string{"tc": "tr", "htc": "htr", "dtc": "dtr", "ltr": "tr", "trb": "tr", "longtreble": "dtr", "longtr": "dtr", "shorttreble": "htr"}

// counted are stitches that the standard's list does not hold: how many stitches they use
// and make, and of what they are. Common practice.
var counted = sync.OnceValue(func() map[string]*stitch.Stitch {
	m := map[string]*stitch.Stitch{}
	add := func(base, key string, craft stitch.Craft, uses, makes int, names string) {
		for n := range strings.FieldsSeq(names) {
			id := strings.Fields(names)[0]
			if m[id] == nil {
				m[id] = &stitch.Stitch{ID: id, US: id, UK: id, USAbbr: id, UKAbbr: id, Craft: craft, Uses: uses, Makes: makes, Height: 1, Base: base, Legs: max(uses, makes), Key: key, Together: uses > makes}
			}
			m[n] = m[id]
		}
	}
	for n := 4; n <= 9; n++ {
		d := strconv.Itoa(n)
		add("k", "right-leaning double decrease", stitch.Knitting, n, 1, "k"+d+"tog knit"+d+"together k"+d+"together")
		add("k", "left-leaning double decrease tbl", stitch.Knitting, n, 1, "k"+d+"togtbl")
		add("p", "purl double decrease", stitch.Knitting, n, 1, "p"+d+"tog purl"+d+"together p"+d+"together")
	}
	add("p", "left-leaning purl double decrease", stitch.Knitting, 3, 1, "sssp slipslipslippurl")
	add("k", "centred double decrease", stitch.Knitting, 3, 1, "cdd sl2k1p2sso s2togkp sl2togk1p2sso sl2togk1psso sl2tkp sl2k1psso")
	add("k", "knit front and back", stitch.Knitting, 1, 3, "kfbf k1fbf kfbandf kyok k1yok1 kbfb")
	add("k", "knit front and back", stitch.Knitting, 1, 3, "kpk pkp brkyobrk br2stinc")
	add("k", "knit front and back", stitch.Knitting, 1, 5, "brkyobrkyobrk br4stinc")
	add("yo", "yarn over", stitch.Knitting, 0, 2, "y2rn doubleyo doubleyarnover doubleyfwd")
	add("k", "brioche knit", stitch.Knitting, 1, 1, "brk briocheknit")
	add("p", "brioche purl", stitch.Knitting, 1, 1, "brp briochepurl")
	add("sl", "brioche slip", stitch.Knitting, 1, 1, "sl1yo sl1yof yfsl1yo yfsl1yof sl1yb slyo")
	add("k", "right-leaning decrease", stitch.Knitting, 2, 1, "brk2tog")
	add("p", "purl decrease", stitch.Knitting, 2, 1, "brp2tog")
	add("k", "left-leaning decrease", stitch.Knitting, 2, 1, "brssk brskp")
	add("k", "left-leaning double decrease", stitch.Knitting, 3, 1, "brlsl brlsldec br2stdec")
	add("k", "right-leaning double decrease", stitch.Knitting, 3, 1, "brrsl brrsldec")
	add("k", "centred double decrease", stitch.Knitting, 5, 1, "br4stdec brcdd")
	add("sc", "sc", stitch.Crochet, 1, 1, "rsc revsc reversesc crabst crabstitch reversesinglecrochet corded shrimpst")
	add("sc", "sc", stitch.Crochet, 1, 1, "spikest spikesc spike longsc lsc")
	add("hdc", "hdc", stitch.Crochet, 1, 1, "esc exsc extendedsc extendedsinglecrochet scext")
	add("dc", "dc", stitch.Crochet, 1, 1, "edc exdc extendeddc ldc longdc lgdc spikedc")
	add("dc", "dc", stitch.Crochet, 1, 1, "ehdc exhdc extendedhdc")
	add("sc", "sc", stitch.Crochet, 0, 1, "fsc foundationsinglecrochet foundationsc")
	add("hdc", "hdc", stitch.Crochet, 0, 1, "fhdc foundationhalfdoublecrochet foundationhdc")
	add("dc", "dc", stitch.Crochet, 0, 1, "fdc foundationdoublecrochet foundationdc")
	add("sc", "sc", stitch.Crochet, 1, 1, "tss tunisiansimplestitch tunisiansimplest")
	add("sc", "sc", stitch.Crochet, 1, 1, "tks tunisianknitstitch")
	add("sc", "sc", stitch.Crochet, 1, 1, "tps tunisianpurlstitch")
	add("sc", "sc", stitch.Crochet, 1, 1, "trs tfs tunisianreversestitch")
	add("sc", "sc", stitch.Crochet, 2, 1, "tss2tog tks2tog tps2tog")
	return m
})

// incOf is an increase or a decrease run together with its stitch: scinc, singlecrochetdecrease. The stitch is in the text's terms.
func incOf(w string, t stitch.Terms) (thing, bool) {
	w = strings.TrimSuffix(w, "rease")
	if b, ok := strings.CutSuffix(w, "inc"); ok {
		if k := squeezed()[t][b]; k != nil && k.Craft == stitch.Crochet && k.Uses == 1 {
			return thing{Kind: k, Each: 2}, true
		}
	}
	if b, ok := strings.CutSuffix(w, "dec"); ok {
		if k := squeezed()[t][b]; k != nil && k.Craft == stitch.Crochet {
			if d := stitch.ByID(k.ID + "2tog"); d != nil {
				return thing{Kind: d}, true
			}
		}
	}
	return thing{}, false
}

// squeezed are the names of all stitches run together, without blanks and hyphens.
var squeezed = sync.OnceValue(func() [2]map[string]*stitch.Stitch {
	return [2]map[string]*stitch.Stitch{squeeze(stitch.US), squeeze(stitch.UK)}
})

// nameTable are stitches by their names run together; what was put first stays.
type nameTable map[string]*stitch.Stitch

func (m nameTable) put(s *stitch.Stitch, names ...string) {
	for _, n := range names {
		if m[n] == nil {
			m[n] = s
		}
	}
}

// besideUK are the UK names of stitches that the standard's list has not, by their US names.
var besideUK = map[string]string{
	"rsc": "rdc revdc reversedc reversedoublecrochet", "spikesc": "spikedc longdc",
	"esc": "edc exdc extendeddc extendeddoublecrochet", "ehdc": "ehtr exhtr extendedhtr extendedhalftreble extendedhalftreblecrochet",
	"edc": "etr extr extendedtr extendedtreble extendedtreblecrochet",
	"fsc": "fdc foundationdc foundationdoublecrochet", "fhdc": "fhtr foundationhtr foundationhalftreble foundationhalftreblecrochet",
	"fdc": "ftr foundationtr foundationtreble foundationtreblecrochet",
}

func squeeze(t stitch.Terms) map[string]*stitch.Stitch {
	m := nameTable{}
	run := strings.NewReplacer(" ", "", "-", "", ".", "", ",", "")
	stitch.Names(t, func(name string, s *stitch.Stitch) { m[run.Replace(name)] = s })
	for w, id := range also {
		if s := stitch.ByID(id); s != nil {
			m.put(s, w)
		}
	}
	if t == stitch.UK {
		m.put(stitch.ByID("sc"), "double", "doubles")
		for us, uk := range besideUK {
			m.put(counted()[us], strings.Fields(uk)...)
		}
	}
	for w, abbr := range olden {
		if s := m[abbr]; s != nil {
			m.put(s, w)
		}
	}
	for w, s := range counted() {
		m.put(s, w)
	}
	for _, id := range []string{"sc", "hdc", "dc", "tr", "dtr", "trtr"} {
		m.decreases(id, t)
		m.posts(id, t)
	}
	for _, id := range []string{"hdc", "dc", "tr"} {
		m.clusters(id, t)
	}
	return m
}

// decreases puts in those of a stitch: 2 dc together, dc 2 together.
func (m nameTable) decreases(id string, t stitch.Terms) {
	a := stitch.ByID(id).Abbr(t)
	for n := 2; n <= 6; n++ {
		d := strconv.Itoa(n)
		m.put(stitch.ByID(id+d+"tog"), d+a+"tog", d+a+"together", a+d+"together", "dec"+d+a, a+d+"t")
	}
	m.put(stitch.ByID(id+"2tog"), "dec"+a)
}

// posts puts in the stitches round the post of one.
func (m nameTable) posts(id string, t stitch.Terms) {
	a := stitch.ByID(id).Abbr(t)
	for short, side := range map[string]string{"fp": "front", "bp": "back"} {
		one := stitch.ByID(strings.ToUpper(short) + id)
		m.put(one, short+a, a+short, a+short[:1], side+"post"+a, a+side+"post", "raised"+a+side, "r"+short[:1]+a)
		for _, d := range []string{"2", "3"} {
			if tog := stitch.ByID(id + d + "tog"); one != nil && tog != nil {
				both := *tog
				both.ID, both.Post = one.ID+d+"tog", one.Post
				both.US, both.UK, both.USAbbr, both.UKAbbr = both.ID, both.ID, both.ID, both.ID
				m.put(&both, short+a+d+"tog", short+a+d+"together", side+"post"+a+d+"tog", short+d+a+"tog")
			}
		}
	}
}

// clusters puts in those of a stitch: 3-dc cluster, dc cl, beg three dc cl.
func (m nameTable) clusters(id string, t stitch.Terms) {
	a := stitch.ByID(id).Abbr(t)
	for w, one := range map[string]string{"cluster": "cl", "cl": "cl", "popcorn": "pc", "pc": "pc", "bobble": "bobble", "puff": "puff", "puffst": "puff", "puffstitch": "puff", "bob": "bobble", "popcornst": "pc"} {
		s := stitch.ByID(one)
		for n, word := range [...]string{2: "two", 3: "three", 4: "four", 5: "five", 6: "six", 7: "seven"} {
			if n < 2 {
				continue
			}
			d, of := strconv.Itoa(n), s.Of(n, id)
			m[d+a+w], m["beg"+d+a+w], m[word+a+w] = of, of, of
		}
		m.put(s.Of(s.Legs, id), a+w, "beg"+a+w)
	}
}

// longestName is how many tokens the longest name of a stitch has.
const longestName = 9

// kind reads what is worked: the longest name that stands at i.
func kind(p *parser, i int) (any, int) {
	w := p.at(i)
	if !inName(w) || w.Ord > 0 {
		return nil, -1
	}
	if g, to := p.anyGroup(i); g != nil {
		return thing{Call: g}, to
	}
	best, to := longest(p, i)
	if to < 0 || w.Kind == 'n' && (to == i+1 || best.Kind != nil && !ofLegs(best.Kind) && best.Kind.Legs < 2 && !(best.Kind.Key == "cable" && p.at(i+1).Glued)) {
		return nil, -1
	}
	if best.Kind != nil {
		p.r.x.Used[best.Kind.ID] = best.Kind
	}
	if no := noStitch[w.S]; to == i+1 && best.Kind != nil && no != nil && no(p, i) {
		return nil, -1
	}
	if w.S == "dec" && p.at(i+1).Kind == 'n' && p.at(to).Is("evenly", "at") || w.Glued && p.at(i-1).Kind == 'n' && w.S == "sctog" { // dec 3 sc evenly; 2sctog
		return nil, -1
	}
	if best.Kind != nil && best.Kind.ID == "yo" && p.r.crochet && p.roundHook(to) {
		return nil, -1
	}
	if w.S == "p" && to == i+1 && p.r.crochet && p.at(to).Kind != 'n' {
		best.Kind = stitch.ByID("picot")
	}
	return best, to
}

// anyGroup is a group that the text defines or only makes, and where its name ends.
func (p *parser) anyGroup(i int) (*ins.Group, int) {
	g, to := p.group(i)
	if g == nil {
		return p.undefined(i)
	}
	if p.at(to).Is("st", "sts", "stitch", "stitches") && !p.at(to-1).Is("st", "stitch") { // cluster st
		to++
	}
	return g, to
}

// roundHook reports whether a thread that is brought over, up to i, goes round the hook and makes no stitch of itself: yo and
// draw through 2 loops.
func (p *parser) roundHook(i int) bool {
	for p.at(i).Is(",", "and", "then") {
		i++
	}
	return p.at(i).Is("draw", "pull", "insert", "hook", "through", "drawing", "pulling")
}

// ofLegs reports whether a stitch is of several legs that are one, whose number its name tells: 5-dc popcorn.
func ofLegs(k *stitch.Stitch) bool {
	return k.Key == "cluster" || k.Key == "popcorn" || k.Key == "bobble" || k.Key == "puff"
}

// legsAt reports whether the number at i tells the legs of one stitch, to whose name a hyphen ties it: a 3-tr cluster made.
func (p *parser) legsAt(i int) bool {
	if p.at(i).Kind != 'n' || !p.at(i+1).Glued {
		return false
	}
	k, to := longest(p, i)
	return to > i+2 && k.Kind != nil && ofLegs(k.Kind)
}

// inName reports whether a token may be part of a stitch's name.
func inName(t *text.Token) bool { return t.Kind == 'w' || t.Kind == 'n' || t.Kind == 'f' }

// makeBefore reports whether a stitch of its own stands behind a make one, without a comma: m1 k to end.
func makeBefore(b []byte, t *text.Token) bool {
	return len(b) > 0 && b[0] == 'm' && t.Is("k", "p") && !t.Glued
}

// longest is what the longest name at i means, and where it ends; -1 if none stands there.
func longest(p *parser, i int) (best thing, to int) {
	var buf [64]byte
	b := buf[:0]
	to = -1
	for k := 0; k < longestName && i+k < len(p.t); k++ {
		t := &p.t[i+k]
		if !inName(t) || makeBefore(b, t) || len(b)+len(t.S) > 60 || t.Num.By != nil || k > 0 && p.namesAnew(i, k) {
			break
		}
		b = append(b, t.S...)
		if t.Kind == 'n' && k == 0 && !p.joins(i) {
			continue
		}
		v := p.r.lookUp(b)
		if v.any && p.isNamed(v.Kind, i, k) {
			best, to = v.thing, i+k+1
		}
		if !v.more {
			break
		}
	}
	return best, to
}

// isNamed reports whether the tokens from i to the k-th behind it are the name of a stitch, and no part of another or several: 3 sc tog
// are three, c6q is not c6, sl1yo is one word.
func (p *parser) isNamed(kind *stitch.Stitch, i, k int) bool {
	t, next := p.at(i+k), p.at(i+k+1)
	switch {
	case k > 0 && t.Is("tog", "together") && p.at(i+k-1).Kind == 'w' && p.at(i-1).Kind == 'n':
		return false
	case kind == nil:
		return true
	case kind.Key == "brioche slip":
		return p.glued(i, i+k)
	}
	return kind.Key != "cable" || t.Kind != 'n' || next.Kind != 'w' || !next.Glued
}

// namesAnew reports whether the k-th token behind i begins a name of its own: 5th, the yarn B in p1 B, 2 sc Dec.
func (p *parser) namesAnew(i, k int) bool {
	t, last := &p.t[i+k], p.at(i+k-1)
	switch {
	case k == 1 && t.Is("c") && last.Is("in") && !t.Glued: // in the yarn C
		return true
	case t.Glued && len(t.S) == 1 && last.Kind == 'n' && p.r.colourNamed(t.S[0]) && (t.Cap && (!p.at(i).Cap || p.r.stuckYarns) || p.r.smallYarns): // k1B; K10A, K1B
		return true
	case t.Glued || t.Ord > 0:
		return t.Ord > 0 && !t.Glued
	case last.Is("in") && t.Is("c") && t.Cap: // worked in C
		return true
	case k > 0 && t.Is("k", "p") && p.at(i+k+1).Kind == 'n' && p.at(i+k+1).Glued: // C6F P1
		return true
	case !t.Cap:
		return false
	case t.Is("dec", "inc"):
		return !last.Cap && last.Kind == 'w'
	}
	return len(t.S) == 1 && (k > 1 && last.Kind == 'n' || last.Kind == 'w' && p.at(i-1).Kind == 'n') && p.r.colourNamed(t.S[0]) // 7 sc B
}

// glued reports whether the tokens from i to the one at k are written as one word: sl1yo, and not sl1 yo.
func (p *parser) glued(i, k int) bool {
	for ; k > i; k-- {
		if !p.at(k).Glued {
			return false
		}
	}
	return true
}

// letters are the words that make a letter the name of a yarn.
var letters = text.Once(`\b([A-H]) ?(?:=|:|- )|(?i:\b([a-h]) ?[=:] ?(?:(?:main|contrast\w*|first|second|third) )?colou?r\b)|\b(?:[Ww]ith|[Ii]n|[Uu]sing|[Cc]olou?r|[Yy]arn) ([A-H])\b|\b[KkPp]\d+([AC-H])\b|\b\d{1,2} ?([A-HLNRWY])\b, ?\d{1,2} ?([A-HLNRWY])\b`)

// otherThing is a letter that stands for something that is no yarn: B = border stitch.
var otherThing = text.Once(`\b[A-H] ?[=:] ?(?i:borders?|bobbles?|beads?|back|beginning|cable|decrease|edge|front)\b`)

// colourNamed reports whether the text calls a yarn by that letter, in lower case.
func (r *Reader) colourNamed(letter byte) bool {
	if r.colours == nil {
		r.colours = map[byte]bool{}
		for _, line := range r.x.Src {
			if otherThing().MatchString(line) {
				continue
			}
			for _, m := range letters().FindAllStringSubmatch(line, -1) {
				r.callsYarns(m)
			}
		}
		if r.colours['a'] { // the one that is called so is not alone
			r.colours['b'] = true
		}
	}
	return r.colours[letter]
}

// callsYarns notes the letter by which a match of letters calls a yarn.
func (r *Reader) callsYarns(m []string) {
	for _, name := range m[1:] {
		if name != "" {
			r.colours[name[0]|0x20] = true
		}
	}
	r.smallYarns = r.smallYarns || m[2] > "Z"
	r.stuckYarns = r.stuckYarns || m[4] != ""
}

// declared are short names that a text gives yarns: Main colour (M), contrast 1 (C1); Colours: W = white, R = red.
var declared = text.Once(`(?i:\b(?:main|contrast\w*|background|pattern|colou?r|yarn|shade|dark|light|pale|bright|` + colourWords + `)\b[ \w]{0,14}) ?\((?i:referred to as )?([A-Z]{1,2}\d?)\)|\b([A-Z]{1,2}\d?) ?[=:-] ?(?i:dark|light|pale|bright|(?:dark |light |pale |bright )?(?:` + colourWords + `))\b|\b(?i:yarn|shade) ([I-Z])\b|\b(?i:using|with|join) (C[A-H])\b`)

// colourWords are what yarns are called that have short names of their own.
const colourWords = "white|black|red|blue|green|yellow|pink|brown|gr[ea]y|orange|purple|cream|beige|navy|natural|gold|ecru|ivory|teal|turquoise|lilac|silver|mustard|rust|charcoal"

// noYarns are short names that patterns give otherwise: of stitches, and of the sides of the work.
var noYarns = map[string]bool{"K": true, "P": true, "RS": true, "WS": true}

// yarnNamed reports whether the text declares a short name of a yarn, in capitals.
func (r *Reader) yarnNamed(name string) bool {
	if r.yarnNames == nil {
		r.yarnNames = map[string]bool{}
		for _, line := range r.x.Src {
			for _, m := range declared().FindAllStringSubmatch(line, -1) {
				if name := m[1] + m[2] + m[3] + m[4]; !noYarns[name] {
					r.yarnNames[name] = true
				}
			}
		}
	}
	return r.yarnNames[name]
}

var shortYarn = text.Once(`(?i)\b([a-h]|[mc]c) ?[=:] ?(main|contrast)`)

// shortFor is the short name that the text gives its main or contrast colour; else that word.
func (r *Reader) shortFor(name string) string {
	for _, line := range r.x.Src {
		if m := shortYarn().FindStringSubmatch(line); m != nil && strings.EqualFold(m[2], name) {
			return strings.ToUpper(m[1])
		}
	}
	return name
}

var contrast = text.Once(`\bCC\d?\b|\b(?:[Ww]ith|[Uu]sing|[Cc]olou?r|[Yy]arn) MC\b|\(MC\)|\bMC ?= ?[Mm]ain|[Mm]ain colou?r`)

// mainYarn reports whether MC is the main colour in the text, and no magic circle.
func (r *Reader) mainYarn() bool {
	return slices.ContainsFunc(r.x.Src, func(line string) bool { return contrast().MatchString(line) })
}

// popcorns is a line that speaks of popcorns.
var popcorns = text.Once(`(?i)popcorn|\bpc(?: in\b|[,:=])`)

// speaksOfPopcorns reports whether a line of the text does; all of them are looked through once.
func (r *Reader) speaksOfPopcorns() bool {
	if !r.popcorns.asked {
		r.popcorns.asked = true
		r.popcorns.are = slices.ContainsFunc(r.x.Src, func(line string) bool { return popcorns().MatchString(line) })
	}
	return r.popcorns.are
}

// noStitch are short words that name a stitch, and where they name none.
var noStitch = map[string]func(p *parser, i int) bool{
	"p":    func(p *parser, i int) bool { return p.at(i + 2).Is("sso") },
	"m":    func(p *parser, i int) bool { return p.at(i+1).Kind != 'n' },
	"o":    func(p *parser, i int) bool { return p.at(i).Cap && p.r.crochet },
	"s":    func(p *parser, _ int) bool { return p.r.crochet },
	"n":    func(p *parser, _ int) bool { return p.r.crochet },
	"slip": (*parser).beforeStrange, "sl": (*parser).beforeStrange,
	"seam": func(p *parser, i int) bool {
		return p.at(i-1).Is("shoulder", "side", "raglan", "sleeve", "underarm")
	},
	"over": func(p *parser, i int) bool {
		next := p.at(i + 1)
		return p.r.crochet || next.Kind == 'n' && !p.at(i+2).Is("times") || next.Is("next", "each", "first", "last", "same", "from", "all", "your", "two", "three", "four", "both") || needled(p, i)
	},
	"double": func(p *parser, i int) bool {
		return p.at(i+1).Is("pointed", "point", "points", "strand", "thread", "yarn", "knitting")
	},
	"bo": func(p *parser, _ int) bool { return !p.r.crochet },
	"pcs": func(p *parser, _ int) bool { // pieces
		return !p.r.speaksOfPopcorns()
	},
	"plain": func(p *parser, i int) bool { return p.r.crochet || p.at(i-1).Is("k", "knit", "kn", "around", "across") },
}

func (p *parser) beforeStrange(i int) bool { return p.strangerAt(i + 1) }

// needled reports whether needles are named right behind the word at i: over your circular needles.
func needled(p *parser, i int) bool {
	for k := i + 1; k < i+5; k++ {
		if t := p.at(k); t.Is("needle", "needles", "dpn", "dpns") {
			return true
		} else if t.Kind != 'w' {
			return false
		}
	}
	return false
}

// joins reports whether the number at i may belong to a name: 3-dc cluster, 2 sc tog.
func (p *parser) joins(i int) bool {
	return p.at(i+1).Kind == 'w'
}

// thing finds what a name run together means.
func (r *Reader) thing(b []byte) (thing, bool) {
	c := r.lookUp(b)
	return c.thing, c.any
}

// called is what a name run together means in the terms of a text, if it means anything, and whether a longer one may begin so.
type called struct {
	thing
	any, more bool
}

func (r *Reader) lookUp(b []byte) called {
	if r.looked == nil || r.lookedIn != (inTerms{r.x.Terms, r.x.TermsSet}) {
		r.looked, r.lookedIn = map[string]called{}, inTerms{r.x.Terms, r.x.TermsSet}
	}
	c, met := r.looked[string(b)]
	if !met {
		w := string(b)
		if c.thing, c.any = r.own[w]; !c.any {
			c.thing, c.any = r.usual(w)
		}
		if r.crochet && c.Kind != nil && c.Kind.ID == "sl" && (w == "sl" || w == "slip") { // sl in first dc
			c.Kind = stitch.ByID("slst")
		}
		c.more = c.any || beginsName(w) || beginsCable(w)
		for name := range r.own {
			c.more = c.more || strings.HasPrefix(name, w)
		}
		r.looked[w] = c
	}
	return c
}

// call gives a name of the text's own.
func (r *Reader) call(name string, v thing) {
	r.own[name] = v
	r.looked = nil
}

// beginsName reports whether a name of a stitch in either terms begins with w, or an increase or a decrease.
func beginsName(w string) bool {
	names := sortedNames()
	i, _ := slices.BinarySearch(names, w)
	return i < len(names) && strings.HasPrefix(names[i], w) || strings.HasPrefix("increases1", w) || strings.HasPrefix("decreases1", w) || strings.HasPrefix("widen", w)
}

var sortedNames = sync.OnceValue(func() []string {
	var names []string
	for _, of := range squeezed() {
		for n := range of {
			names = append(names, n)
		}
	}
	slices.Sort(names)
	return names
})

// beginsCable reports whether the name of a crossing may begin with w: c, 2/2, tw3.
func beginsCable(w string) bool {
	switch w {
	case "c", "ca", "cab", "cabl", "cable", "cr", "t", "tw", "l", "lt", "ltw", "r", "rt", "rtw":
		return true
	}
	return slices.ContainsFunc([]string{"", "cable", "cr", "tw", "t", "c"}, func(lead string) bool {
		rest, ok := strings.CutPrefix(w, lead)
		return ok && rest != "" && rest[0] >= '0' && rest[0] <= '9'
	})
}

// inTerms is in which terms names are looked up.
type inTerms struct {
	terms stitch.Terms
	set   bool
}

// usual is what a name means in every text.
func (r *Reader) usual(w string) (thing, bool) {
	if s, ok := squeezed()[r.x.Terms][w]; ok {
		return thing{Kind: s}, true
	}
	switch w {
	case "inc", "incr", "increase", "incs", "increases", "inc1", "widen", "wid", "increase1", "incx":
		return thing{Inc: true}, true
	case "dec", "decr", "decrease", "decs", "decreases", "dec1", "decrease1", "decx":
		return thing{Dec: true}, true
	}
	if len(w) > 4 {
		if v, ok := incOf(w, r.x.Terms); ok {
			return v, true
		}
	}
	if s := r.otherTerms(w); s != nil {
		return thing{Kind: s}, true
	}
	return r.cable(w)
}

// otherTerms is the stitch of words that only the other terms have: it is read as what it
// means, and told of as a word.
func (r *Reader) otherTerms(w string) *stitch.Stitch {
	if !r.x.TermsSet {
		return nil
	}
	o := r.x.Terms.Other()
	s := squeezed()[o][w]
	if s == nil || s.Craft != stitch.Crochet {
		return nil
	}
	return s
}

// cable is a crossing by its usual name: c6b, 2/2 lc, t3f, cr4r, tw2. Its number tells how many stitches it
// takes and leaves; what it looks like is asked for, unless the text defines it or the name says it.
func (r *Reader) cable(w string) (thing, bool) {
	n := cableStitches(w)
	if n < 2 || n > 24 {
		return thing{}, false
	}
	s := r.cables[w]
	if s == nil {
		name := strings.ToUpper(w)
		s = &stitch.Stitch{ID: w, US: name, UK: name, USAbbr: name, UKAbbr: name, Craft: stitch.Knitting, Uses: n, Makes: n, Height: 1, Base: "k", Legs: 1, Key: "cable"}
		if c, ok := crossNamed(w); ok {
			s.Cross, s.Key, s.USAbbr, s.UKAbbr = &c, stitch.NamedCross, c.Abbr(), c.Abbr()
		}
		r.cables[w] = s
	}
	return thing{Kind: s}, true
}

// crossNamed is the crossing that a name of the yarn standard's list says by itself: so many in front over so many behind, left or
// right, cross, purl cross or twist.
func crossNamed(w string) (stitch.Cross, bool) {
	m := fullName().FindStringSubmatch(w)
	if m == nil {
		return stitch.Cross{}, false
	}
	front, back := max(smallNumber(m[1]), 1), max(smallNumber(m[3]), 1)
	c := stitch.Cross{Held: back, Over: front, Left: m[4] == "l", Purl: m[5] == "p", Mid: smallNumber(m[2])}
	if c.Left {
		c.Held, c.Over = front, back
	}
	return c, m[1] != "" || m[6] == "t"
}

var fullName = text.Once(`^(?:([1-9])/(?:([1-9])/)?([1-9]))?([lr])(p?)([ct])$`)

// crossings are the usual names: 2/2lc, 3/3rpc, 1/2/1rpc; c6b, t3f, cr4r, tw2, cable6.
var crossings = sync.OnceValue(func() [2]*regexp.Regexp {
	return [2]*regexp.Regexp{
		regexp.MustCompile(`^([0-9/]*)(?:lc|rc|lpc|rpc|lcp|rcp|l|r|f|b|c|lt|rt|lkpc|rkpc|cf|cb)$`),
		regexp.MustCompile(`^(?:cable|cr|tw|t|c)([0-9]+)(?:|f|b|l|r|fw|bw|lp|rp|bp|fp|k|p|rev)$`),
	}
})

// cableStitches is how many stitches the crossing called w takes; 0 if it is none.
func cableStitches(w string) int {
	switch w {
	case "lt", "rt", "ltw", "rtw", "tw", "lt2", "rt2":
		return 2
	}
	if side := strings.TrimLeft(w, "0123456789"); side != w && (side == "lc" || side == "rc" || side == "lpc" || side == "rpc" || side == "lt" || side == "rt") { // 4LC
		n, _ := strconv.Atoi(w[:len(w)-len(side)])
		return n
	}
	if len(w) < 2 || len(w) > 8 || !strings.ContainsAny(w, "123456789") {
		return 0
	}
	if w[1] == '/' || len(w) > 4 && w[2] == '/' {
		return parted(w)
	}
	m := crossings()[1].FindStringSubmatch(w)
	if m == nil {
		return 0
	}
	n, _ := strconv.Atoi(m[1])
	if w == "c"+m[1] && (n < 4 || n%2 != 0) { // c2 may be a colour
		return 0
	}
	return n
}

// parted is how many stitches a crossing takes whose name tells them by its parts: 2/2 lc.
func parted(w string) (sum int) {
	if m := crossings()[0].FindStringSubmatch(w); m != nil {
		for _, c := range strings.ReplaceAll(m[1], "/", "") {
			sum += int(c - '0')
		}
	}
	return sum
}

// group finds the name of a group that the text defines.
func (p *parser) group(i int) (*ins.Group, int) {
	if p.at(i).Kind != 'w' && p.at(i).Kind != 'n' {
		return nil, -1
	}
	for _, g := range p.r.groups {
		k := 0
		for k < len(g.words) && i+k < len(p.t) {
			w := p.t[i+k].S
			if w != g.words[k] && !(k == len(g.words)-1 && plural(w, g.words[k])) {
				break
			}
			k++
		}
		if k == len(g.words) {
			return g.group, i + k
		}
	}
	return nil, -1
}

// undefined is a group that the text makes and does not define, and where its name ends: shell in next st.
func (p *parser) undefined(i int) (*ins.Group, int) {
	t, to := p.at(i), i+1
	if !p.r.crochet || !t.Is("shell", "shells", "fan", "fans", "v", "vs", "vst", "vsts", "scallop", "petal", "x", "xst") {
		return nil, -1
	}
	for p.at(to).Is("st", "sts", "stitch", "stitches") {
		to++
	}
	if to == i+1 && t.Is("v", "vs", "x") || !p.at(to).Is("in", "into") || p.at(i-1).Is("next", "first", "last", "each", "same", "of", "in", "into", "over", "every", "between", "skip", "sk", "st") {
		return nil, -1
	}
	name := strings.TrimSuffix(t.S, "s")
	if name == "v" || name == "vst" {
		name = "V-stitch"
	}
	g := p.r.unknown[name]
	if g == nil {
		if g = (&ins.Group{Name: name}); p.r.unknown == nil {
			p.r.unknown = map[string]*ins.Group{}
		}
		p.r.unknown[name] = g
	}
	return g, to
}

func plural(w, one string) bool {
	return strings.HasPrefix(w, one) && (w == one+"s" || w == one+"es")
}

// numerals are numbers in words.
var numerals = map[string]int{"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
	"ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19, "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90}

// spelledOut makes numbers of those in several words: twenty-three, one hundred and forty.
func spelledOut(t []text.Token) []text.Token {
	for i := len(t) - 2; i >= 0; i-- {
		tens, v, to := numerals[t[i].S], 0, i+1
		switch next := &t[i+1]; {
		case t[i].Kind != 'w':
		case (tens > 0 && tens < 10 || t[i].Is("a")) && next.Is("hundred"):
			v, to = 100*max(tens, 1), i+2
			if near(t, to).Is("and") {
				to++
			}
			if more := near(t, to); more.Kind == 'n' && more.Num.By == nil && more.Num.All < 100 {
				v, to = v+more.Num.All, to+1
			} else if more.Kind == 'w' && numerals[more.S] > 0 {
				v, to = v+numerals[more.S], to+1
			} else {
				to = i + 2
			}
		case tens >= 20 && next.Kind == 'w' && numerals[next.S] > 0 && numerals[next.S] < 10:
			v, to = tens+numerals[next.S], i+2
		}
		if v == 0 {
			continue
		}
		one := t[i]
		one.Kind, one.Num, one.S, one.End, one.Ord = 'n', ins.N(v), strconv.Itoa(v), t[to-1].End, 0
		t = slices.Delete(slices.Clone(t), i+1, to)
		t[i] = one
	}
	return t
}

// sizesSpelt makes one number a size of words: three (four, five) times.
func sizesSpelt(t []text.Token) []text.Token {
	for i := len(t) - 4; i >= 0; i-- {
		if !t[i+1].Is("(") || !spelt1(&t[i]) {
			continue
		}
		by := []int{numerals[t[i].S]}
		k := i + 2
		for ; k+1 < len(t) && spelt1(&t[k]) && t[k+1].Is(",", ":", "-", ")"); k += 2 {
			by = append(by, numerals[t[k].S])
		}
		if len(by) > 1 && t[k-1].Is(")") {
			one := t[i]
			one.Kind, one.Num, one.End = 'n', ins.Num{By: by}, t[k-1].End
			t = slices.Delete(slices.Clone(t), i+1, k)
			t[i] = one
		}
	}
	return t
}

func spelt1(t *text.Token) bool { return t.Kind == 'w' && numerals[t.S] > 0 }

func number(p *parser, i int) (any, int) {
	t := p.at(i)
	if t.Kind == 'n' {
		if g, _ := p.group(i); g != nil { // the 2 of a 2V-st that the text defines
			return nil, -1
		}
		return t.Num, i + 1
	}
	if t.Kind == 'w' {
		if v, ok := numerals[t.S]; ok {
			return ins.N(v), i + 1
		}
	}
	if t.Kind == 'g' && len(t.Sub) == 1 && t.Sub[0].Kind == 'n' && t.Sub[0].List {
		return t.Sub[0].Num, i + 1
	}
	return nil, -1
}

func ordinal(p *parser, i int) (any, int) {
	if t := p.at(i); t.Ord > 0 {
		return t.Ord, i + 1
	}
	return nil, -1
}

// nths reads ordinals of several places: 3rd, 8th and 12th; its value is how many there are.
func nths(p *parser, i int) (any, int) {
	k, to := 0, -1
	for p.at(i).Ord > 0 {
		k, to = k+1, i+1
		for i++; p.at(i).Is(",", "and", "&"); i++ {
		}
	}
	if k < 2 {
		return nil, -1
	}
	return k, to
}

// rowWord reads row, rows, rnd, round; its value tells whether it is a round.
func rowWord(p *parser, i int) (any, int) {
	if t := p.at(i); t.Kind == 'w' {
		if round, ok := text.RowWord(t.S); ok {
			return round, i + 1
		}
	}
	return nil, -1
}

// defined is a group with the words of its name.
type defined struct {
	words []string
	group *ins.Group
}
