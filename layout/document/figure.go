package document

import (
	"cmp"
	"errors"
	"math"
	"slices"
	"strings"

	"flatwright/fonts"
	"flatwright/layout/place"
	"flatwright/layout/sheet"
	"flatwright/schematic"
)

// Figure is one drawing cut out of its sheet: a piece with all that measures it.
// Sheet is as large as the drawing and holds nothing else.
type Figure struct {
	Name      string
	Sheet     *sheet.Sheet
	Letters   map[string]string // by the measurement's ID: letters that stand for values
	FromRight bool              // a chart whose first row begins at its right side
}

// Drawing is the figures of one drawing of a garment and its key, to one scale.
type Drawing struct {
	Size    int // whose shape and values they have; -1: the values of all sizes, by letter
	Scale   string
	Figures []Figure
	Key     []*sheet.Sheet // each sign with what it means
	Note    string         // what else the drawing says of itself
}

// figureGap is the room around a figure, mm.
const figureGap = 1.5

// Drawings draws every size with its own values in both units, and the sample's or
// middle size with letters for all of them, each at the largest scales at which
// none of its figures is wider, in mm: letters need less room than values. Words are in the face f.
func Drawings(gs []*schematic.Garment, f fonts.Face, letters, values float64) ([]Drawing, error) {
	o := designed(gs, place.Options{Face: f, Units: place.Both})
	if w := gs[0].Pattern.Drawing.Width; w > 0 {
		letters, values = min(letters, w), min(values, w)
	}
	lettered := o
	lettered.Size, lettered.Labels = shapeOf(gs), place.Letters
	all := []place.Options{lettered}
	if len(gs) > 1 {
		for i := range gs {
			o.Size, o.Labels = i, place.OneSize
			all = append(all, o)
		}
	} else {
		all[0].Labels = place.OneSize
	}
	var out []Drawing
	for _, o := range all {
		widest := values
		if o.Labels == place.Letters {
			widest = letters
		}
		d, err := drawing(gs, o, widest)
		if err != nil {
			return nil, err
		}
		out = append(out, *d)
	}
	return out, nil
}

// designed are options with what the pattern says of its drawing; a page has a heading of its own.
func designed(gs []*schematic.Garment, o place.Options) place.Options {
	d := &gs[0].Pattern.Drawing
	o.Without, o.Text = d.Without&^schematic.Heading, cmp.Or(o.Text, d.Text)
	return o
}

// drawing is one drawing at the scales that suit it: one of the garment as it is worn, and one of its pieces.
func drawing(gs []*schematic.Garment, o place.Options, widest float64) (*Drawing, error) {
	pieces, worn := outlinesNoWider(gs[o.Size], widest)
	for {
		o.Scale, o.WornScale = pieces.scale(), worn.scale()
		sheets, err := place.Schematic(gs, o)
		var large *place.TooLarge
		var smaller bool
		switch {
		case errors.As(err, &large):
			smaller = pieces.next()
			smaller = worn.next() || smaller
		case err != nil:
			return nil, err
		default:
			d := drawingOf(sheets, o)
			wide, wideWorn := d.widest(worn.made)
			smaller = pieces.narrower(wide, widest)
			smaller = worn.narrower(wideWorn, widest) || smaller
			if !smaller {
				return d, nil
			}
		}
		if !smaller {
			return nil, err
		}
	}
}

// outlinesNoWider are the largest scales of the pieces, and of the garment as it is worn, at which no outline alone is wider.
func outlinesNoWider(g *schematic.Garment, widest float64) (pieces, worn scaling) {
	pieces = scaling{from: place.UsualScales, made: g.Pieces}
	worn = scaling{from: place.WornScales, made: g.AsWorn()}
	for _, s := range []*scaling{&pieces, &worn} {
		for s.longest()/s.scale() > widest && s.next() {
			continue
		}
	}
	return pieces, worn
}

// scaling is the way through the scales of one view, from large to small.
type scaling struct {
	from []float64
	at   int
	made []*schematic.Made
}

func (s *scaling) scale() float64 { return s.from[s.at] }

// next takes the next smaller scale; false if there is none.
func (s *scaling) next() bool {
	if s.at == len(s.from)-1 {
		return false
	}
	s.at++
	return true
}

// narrower takes, where a figure was so wide, the largest scale at which it would be no wider than widest if all of it shrank with the
// scale: what stands beside its outline keeps its size on paper, so that this is never too small. False if the figure is narrow enough, or
// there is no smaller scale.
func (s *scaling) narrower(wide, widest float64) bool {
	if wide <= widest {
		return false
	}
	least := s.scale() * wide / widest
	smaller := s.next()
	for smaller && s.scale() < least && s.at+1 < len(s.from) && s.from[s.at+1] <= least {
		s.at++
	}
	return smaller
}

// longest is the width of the widest view, mm.
func (s *scaling) longest() float64 {
	w := 0.0
	for _, m := range s.made {
		for _, v := range m.Views {
			lo, hi := math.Inf(1), math.Inf(-1)
			for _, p := range slices.Concat(v.Outline...) {
				lo, hi = min(lo, p.X), max(hi, p.X)
			}
			w = max(w, hi-lo)
		}
	}
	return w
}

// widest is how wide the widest figure of a piece is, and that of the garment as it is worn.
func (d *Drawing) widest(worn []*schematic.Made) (pieces, asWorn float64) {
	for _, f := range d.Figures {
		if slices.ContainsFunc(worn, func(m *schematic.Made) bool { return m.Name == f.Name }) {
			asWorn = max(asWorn, f.Sheet.W)
		} else {
			pieces = max(pieces, f.Sheet.W)
		}
	}
	return pieces, asWorn
}

// drawingOf cuts the figures out of their sheets.
func drawingOf(sheets []*sheet.Sheet, o place.Options) *Drawing {
	d := &Drawing{Size: o.Size}
	if o.Labels == place.Letters {
		d.Size = -1
	}
	for _, s := range sheets {
		for _, it := range s.Root.Items {
			g, ok := it.(*sheet.Group)
			if !ok {
				continue
			}
			switch g.Class {
			case "piece":
				d.Figures = append(d.Figures, Figure{Name: g.Title, Sheet: cut(s, g), Letters: letters(g)})
			case "scalebar":
				d.Scale = strings.TrimPrefix(g.Title, "Scale ")
			case "key":
				d.learn(entries(s, g))
			}
		}
	}
	return d
}

// learn adds the signs to the key that it has not yet: the garment as it is worn has fewer than its pieces.
func (d *Drawing) learn(key []*sheet.Sheet) {
	for _, e := range key {
		if !slices.ContainsFunc(d.Key, func(k *sheet.Sheet) bool { return k.Title == e.Title }) {
			d.Key = append(d.Key, e)
		}
	}
}

// shapeOf is the size that gives the shape to a drawing of all sizes.
func shapeOf(gs []*schematic.Garment) int {
	if s := gs[0].Pattern.Sample; s >= 0 && s < len(gs) {
		return s
	}
	return len(gs) / 2
}

// Chart is the figures of a chart's sheets in one size, or for all sizes if size is -1.
func Chart(name string, size int, sheets []*sheet.Sheet) Drawing {
	d := Drawing{Size: size}
	for _, s := range sheets {
		rows := &sheet.Group{Title: name}
		note := name + "."
		for _, g := range groupsOf(&s.Root) {
			switch g.Class {
			case "key":
				if d.Key == nil {
					d.Key = entries(s, g)
				}
			case "heading":
				note += remarks(g)
			default:
				rows.Items = append(rows.Items, g)
			}
		}
		if d.Note == "" {
			d.Note = note
		}
		one := cut(s, rows)
		d.Figures = append(d.Figures, Figure{Name: name, Sheet: one, FromRight: beginsRight(one)})
	}
	return d
}

// beginsRight reports whether the number of the lowest row of a chart stands in its right half.
func beginsRight(s *sheet.Sheet) bool {
	low, right := -1.0, false
	sheet.Walk(&s.Root, func(it sheet.Item) {
		if t, ok := it.(*sheet.Text); ok && t.Class == "number" && t.At.Y > low {
			low, right = t.At.Y, t.At.X > 0.5*s.W
		}
	})
	return right
}

func groupsOf(g *sheet.Group) []*sheet.Group {
	var out []*sheet.Group
	for _, it := range g.Items {
		if sub, ok := it.(*sheet.Group); ok {
			out = append(out, sub)
		}
	}
	return out
}

// remarks are the words in italics of a heading, each behind a space.
func remarks(heading *sheet.Group) string {
	out := ""
	for _, it := range heading.Items {
		if t, ok := it.(*sheet.Text); ok && remark(t) {
			out += " " + t.S
		}
	}
	return out
}

// remark reports whether a line of a heading says how the drawing is read: it is in italics, or a note in a face that has none.
func remark(t *sheet.Text) bool {
	return t.Face == fonts.Italic || !t.Face.House() && t.Class == "note"
}

// cut is a sheet of g alone.
func cut(s *sheet.Sheet, g *sheet.Group) *sheet.Sheet {
	lo, hi, ok := sheet.Bounds(g)
	if !ok {
		return &sheet.Sheet{W: 1, H: 1, Title: g.Title, Lang: s.Lang}
	}
	dx, dy := figureGap-lo.X, figureGap-lo.Y
	return &sheet.Sheet{W: hi.X - lo.X + 2*figureGap, H: hi.Y - lo.Y + 2*figureGap, Title: g.Title, Desc: g.Desc, Lang: s.Lang,
		Root: *sheet.Moved(g, dx, dy)}
}

// entries cuts a key into its entries: each is a sign and the words behind it.
func entries(s *sheet.Sheet, key *sheet.Group) []*sheet.Sheet {
	var out []*sheet.Sheet
	g := &sheet.Group{}
	for _, it := range key.Items {
		g.Items = append(g.Items, it)
		if words := wordsIn(it); words != "" {
			g.Title = words
			out = append(out, cut(s, g))
			g = &sheet.Group{}
		}
	}
	return out
}

// wordsIn is the text in an item.
func wordsIn(it sheet.Item) string {
	switch it := it.(type) {
	case *sheet.Text:
		return it.S
	case *sheet.Group:
		var all []string
		for _, sub := range it.Items {
			if s := wordsIn(sub); s != "" {
				all = append(all, s)
			}
		}
		return strings.Join(all, " ")
	}
	return ""
}

// letters are the measurements of g whose label is a letter.
func letters(g *sheet.Group) map[string]string {
	out := map[string]string{}
	for _, it := range g.Items {
		m, ok := it.(*sheet.Group)
		if !ok || m.Class != "measure" {
			continue
		}
		for _, it := range m.Items {
			if t, ok := it.(*sheet.Text); ok && t.Class == "label" && strings.HasPrefix(m.Title, t.S+": ") {
				out[m.ID] = t.S
			}
		}
	}
	return out
}
