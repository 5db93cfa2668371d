package job

import (
	"bytes"
	"fmt"
	"image"
	_ "image/jpeg" // what a photograph may be
	_ "image/png"
	"slices"

	_ "golang.org/x/image/webp"

	"flatwright/render/html"
	"flatwright/schematic"
	"flatwright/schematic/read"
)

// MostPhoto is how large the file of a photograph may be, in bytes.
const MostPhoto = 4 << 20

// mostPixels is how large a photograph may be, in pixels: a page that unfolds to more than some
// hundred megabytes ends the browser of a telephone.
const mostPixels = 40e6

// PhotoFiles are the files of the photographs that a pattern names, relative to its own; none if
// it can't be read.
func PhotoFiles(src Source) []string {
	p, _ := read.Pattern(src.Name, src.Text)
	if p == nil {
		return nil
	}
	var out []string
	for _, f := range p.Photos {
		out = append(out, f.File)
	}
	return out
}

// photos are the photographs of a pattern out of the files given, by name. The error is an
// OptionError that says which one can't stand on a page, and why.
func photos(p *schematic.Pattern, given []Source) ([]html.Photo, error) {
	var out []html.Photo
	for _, f := range p.Photos {
		refused := func(why string, a ...any) error {
			return &OptionError{fmt.Sprintf("%s:%d: the photograph %s %s", f.Pos.File, f.Pos.Line, f.File, fmt.Sprintf(why, a...))}
		}
		i := slices.IndexFunc(given, func(s Source) bool { return s.Name == f.File })
		if i < 0 {
			return nil, refused("cannot be read; it must be in the pattern's folder or below it")
		}
		data := given[i].Text
		if len(data) > MostPhoto {
			return nil, refused("is larger than 4 MB; 1600 pixels along its longer side are enough")
		}
		c, kind, err := image.DecodeConfig(bytes.NewReader(data))
		if err != nil {
			return nil, refused("is not a JPEG, PNG or WebP image")
		}
		if float64(c.Width)*float64(c.Height) > mostPixels || c.Width < 1 || c.Height < 1 {
			return nil, refused("is %d × %d pixels; 1600 along its longer side are enough", c.Width, c.Height)
		}
		out = append(out, html.Photo{Shows: f.Shows, Kind: "image/" + kind, W: c.Width, H: c.Height, Data: data})
	}
	return out, nil
}
