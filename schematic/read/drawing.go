package read

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"gopkg.in/yaml.v3"

	"flatwright/schematic"
	"flatwright/schematic/finding"
)

var drawingKeys = &table{
	name: "drawing", title: "the drawing",
	keys: []key{
		{name: "views", form: words, what: "as worn, back, pieces: which, and in which order"},
		{name: "front and back", form: phrase, what: "one outline draws a front and a back that differ in their necks alone as one piece, with both necks; apart draws both"},
		{name: "show", form: words, what: "the measurements that are drawn, and no others; a piece's name is all of its measurements"},
		{name: "hide", form: words, what: "measurements that are not drawn"},
		{name: "order", form: words, what: "measurements in the order of their letters"},
		{name: "names", form: named, of: "name", what: "what the drawing calls a measurement instead of its name"},
		{name: "letters", form: phrase, what: "from A (or another letter): letters and a table; values: the values of the size that is drawn"},
		{name: "heading", form: yesNo, what: "no leaves the heading off"},
		{name: "key", form: yesNo, what: "no leaves the key of signs off"},
		{name: "scale bar", form: yesNo, what: "no leaves the scale bar off"},
		{name: "arrows", form: yesNo, what: "no leaves the arrows of the direction of work off"},
		{name: "joins", form: yesNo, what: "no leaves the marks of joined edges off"},
		{name: "width", form: phrase, what: "width of a picture cut to its ink, to be set into a page, such as 160 mm; in a handout no outline is wider"},
		{name: "size", form: phrase, what: "size of the words, such as 9 pt or 3 mm"},
		{name: "face", form: text, what: "file of a TrueType or OpenType face for the words, beside this one"},
		{name: "colours", also: []string{"colors"}, form: one, of: "colours", what: "colours of lines, ground and measurements"},
	},
	hints: map[string]string{
		"only": "show", "leave out": "hide", "leave off": "hide", "without": "hide", "title": "heading", "legend": "key", "scale": "scale bar",
		"bar": "scale bar", "font": "face", "font size": "size", "text": "size", "labels": "letters", "seams": "joins", "notches": "joins",
		"rename": "names", "call": "names", "colour": "colours", "color": "colours",
	},
}

var colourKeys = &table{
	name: "colours", title: "the colours of the drawing",
	keys: []key{
		{name: "line", form: phrase, what: "outlines and folds, in quotes: \"#26323f\""},
		{name: "fill", form: phrase, what: "the ground of the pieces"},
		{name: "measure", form: phrase, what: "measurements, words and the key"},
	},
	hints: map[string]string{"lines": "line", "outline": "line", "ground": "fill", "background": "fill", "text": "measure", "words": "measure", "labels": "measure"},
}

// Bounds of a picture and of its words, mm.
const (
	leastWidth, mostWidth = 40, 1000
	leastText, mostText   = 1.5, 12
)

// drawing reads how the designer wants her pattern drawn.
func (r *reader) drawing(n *yaml.Node) schematic.Drawing {
	var d schematic.Drawing
	m := r.mapping(n, drawingKeys)
	if m == nil {
		return d
	}
	for _, v := range r.namesOf(m, "views") {
		switch finding.PlainName(v.Name) {
		case "as worn":
			d.Views = append(d.Views, schematic.AsWorn)
		case "back", "back as worn", "as worn from the back":
			d.Views = append(d.Views, schematic.BackAsWorn)
		case "pieces":
			d.Views = append(d.Views, schematic.InPieces)
		default:
			f := r.fail(v.Pos, "file/choice", "there is no view %q", finding.Clip(v.Name))
			f.Want, f.Fix = "as worn, back, pieces, or some of them", "write views: as worn, pieces"
		}
	}
	if n := m.get("front and back"); n != nil {
		p := r.phrase(n, `"front and back"`, "one outline, or apart")
		d.OneOutline = p.take("one outline", "one")
		if !d.OneOutline {
			p.must("apart")
		}
		p.done()
	}
	d.Show, d.Hide, d.Order = r.namesOf(m, "show"), r.namesOf(m, "hide"), r.namesOf(m, "order")
	r.named(m, "names", func(name string, at, v *yaml.Node) {
		if to := r.text(v, quoted(name), longestName); to != "" {
			d.Names = append(d.Names, schematic.Renamed{Called: schematic.Called{Name: name, Pos: r.pos(at)}, To: to})
		}
	})
	if n := m.get("letters"); n != nil {
		d.Lettered, d.Letters = r.lettering(n)
	}
	for name, part := range map[string]schematic.DrawnPart{"heading": schematic.Heading, "key": schematic.Key, "scale bar": schematic.ScaleBar,
		"arrows": schematic.Arrows, "joins": schematic.JoinMarks} {
		if m.get(name) != nil && !m.yes(name) {
			d.Without |= part
		}
	}
	d.Width = r.paperLength(m, "width", leastWidth, mostWidth)
	d.Text = r.paperLength(m, "size", leastText, mostText)
	if n := m.get("face"); n != nil {
		d.Face, d.FacePos = m.text("face"), r.pos(n)
	}
	if n := m.get("colours"); n != nil {
		d.Colours = r.colours(n)
	}
	return d
}

// namesOf are measurements: a list, or a line with commas between them.
func (r *reader) namesOf(m *mapped, key string) []schematic.Called {
	n := m.get(key)
	if n == nil {
		return nil
	}
	var all []schematic.Called
	take := func(n *yaml.Node) {
		text, ok := r.scalar(n, quoted(key))
		if !ok {
			return
		}
		for name := range strings.SplitSeq(text, ",") {
			if name = spaced(name); name != "" {
				all = append(all, schematic.Called{Name: name, Pos: r.pos(n)})
			}
		}
	}
	if n.Kind == yaml.ScalarNode {
		take(n)
		return all
	}
	for _, c := range r.list(n, quoted(key), mostEntries) {
		take(c)
	}
	return all
}

func (r *reader) lettering(n *yaml.Node) (schematic.Lettering, int) {
	text, ok := r.scalar(n, `"letters"`)
	if !ok {
		return schematic.AsAsked, 0
	}
	switch w := plainKey(text); {
	case w == "values" || w == "no":
		return schematic.ByValue, 0
	case w == "yes":
		return schematic.ByLetter, 0
	case len(w) == len("from a") && strings.HasPrefix(w, "from ") && w[5] >= 'a' && w[5] <= 'z':
		return schematic.ByLetter, int(w[5] - 'a')
	}
	f := r.fail(r.pos(n), "file/choice", `"letters" can't be %q`, finding.Clip(text))
	f.Want, f.Fix = "from A, another letter to begin with, or values", "write letters: from A"
	return schematic.AsAsked, 0
}

// paperLengths are the units of what is measured on paper, in mm; a point is 1/72 in.
var paperLengths = map[string]float64{"mm": 1, "cm": 10, "in": 25.4, "pt": 25.4 / 72}

var paperLength = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^([0-9]+(?:\.[0-9]+)?) ?(mm|cm|in|pt)$`) })

// paperLength is a length on paper in mm, or 0.
func (r *reader) paperLength(m *mapped, key string, least, most float64) float64 {
	n := m.get(key)
	if n == nil {
		return 0
	}
	text, ok := r.scalar(n, quoted(key))
	if !ok {
		return 0
	}
	found := paperLength().FindStringSubmatch(spaced(strings.ToLower(text)))
	if found == nil {
		f := r.fail(r.pos(n), "file/form", "%q can't be read as a length on paper", finding.Clip(text))
		f.Want, f.Fix = "a number and mm, cm, in or pt", map[string]string{"width": "write width: 160 mm", "size": "write size: 9 pt"}[key]
		return 0
	}
	v, _ := strconv.ParseFloat(found[1], 64)
	if v *= paperLengths[found[2]]; v < least || v > most {
		f := r.fail(r.pos(n), "file/bounds", "a %s of %s is out of bounds", key, finding.Clip(text))
		f.Want = fmt.Sprintf("from %g to %g mm", least, most)
		return 0
	}
	return math.Round(v*100) / 100
}

var hexColour = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^#?([0-9a-fA-F]{6})$`) })

// colours reads the colours, and holds them to a contrast at which they can be seen: WCAG 2.2,
// 1.4.3 (words, 4.5 to 1) and 1.4.11 (lines, 3 to 1), against paper and ground.
func (r *reader) colours(n *yaml.Node) schematic.Colours {
	var c schematic.Colours
	m := r.mapping(n, colourKeys)
	if m == nil {
		return c
	}
	c.Fill = r.colour(m, "fill")
	white := schematic.Colour{R: 255, G: 255, B: 255}
	grounds := []schematic.Colour{white}
	if c.Fill.Set {
		grounds = append(grounds, c.Fill)
	}
	for _, k := range []struct {
		key   string
		to    *schematic.Colour
		least float64
	}{{"line", &c.Line, 3}, {"measure", &c.Measure, 4.5}} {
		*k.to = r.colour(m, k.key)
		at := m.get(k.key)
		if at == nil {
			at = m.get("fill") // black on it
		}
		for i, ground := range grounds {
			ratio := k.to.Contrast(ground)
			if at == nil || ratio >= k.least {
				continue
			}
			f := r.note(finding.Warning, r.pos(at), "drawing/contrast", "%s can hardly be seen on %s", map[string]string{"line": "a line", "measure": "a word"}[k.key]+" of "+k.to.String(), []string{"white paper", "the ground " + ground.String()}[i])
			f.Have, f.Want = fmt.Sprintf("a contrast of %.1f to 1", ratio), fmt.Sprintf("at least %g to 1", k.least)
			f.Fix = "take a darker colour, or a lighter ground"
			if dark, ok := k.to.Darker(k.least, grounds...); ok {
				f.Fix = fmt.Sprintf("write %s: %q, the same colour darker", k.key, dark)
			}
			break
		}
	}
	return c
}

func (r *reader) colour(m *mapped, key string) schematic.Colour {
	n := m.get(key)
	if n == nil {
		return schematic.Colour{}
	}
	text, ok := r.scalar(n, quoted(key))
	if !ok {
		return schematic.Colour{}
	}
	found := hexColour().FindStringSubmatch(strings.TrimSpace(text))
	if found == nil {
		f := r.fail(r.pos(n), "file/form", "%q can't be read as a colour", finding.Clip(text))
		f.Want, f.Fix = "six digits of 0 to 9 and a to f after #", `write it as "#26323f", with its quotes`
		return schematic.Colour{}
	}
	v, _ := strconv.ParseUint(found[1], 16, 32)
	return schematic.Colour{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v), Set: true}
}
