package job

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/read"
)

// MostFace is how large the file of a face may be, bytes.
const MostFace = 32 << 20

// FaceFile is the file beside the pattern that holds the face of its drawings, or "" if it
// names none.
func FaceFile(src Source) string {
	if !bytes.Contains(src.Text, []byte("face")) {
		return "" // without reading it
	}
	p, _ := read.Pattern(src.Name, src.Text)
	if p == nil {
		return ""
	}
	return p.Drawing.Face
}

// ownFace is the designer's own face, or the house's with a finding if hers can't be had.
func ownFace(at finding.Pos, own *Source, found *finding.List) fonts.Face {
	if own == nil {
		return fonts.Regular
	}
	f, err := fonts.Parse(own.Text)
	if err != nil {
		*found = append(*found, finding.Finding{Kind: "drawing/face", Severity: finding.Warning, Pos: at,
			Message: fmt.Sprintf("%s can't be used: %v", own.Name, err), Fix: "name the TTF or OTF file of another face"})
		return fonts.Regular
	}
	return f
}

func facePos(p *schematic.Pattern) finding.Pos {
	if p.Drawing.FacePos.Line > 0 {
		return p.Drawing.FacePos
	}
	return finding.Pos{File: p.File, Line: 1, Col: 1}
}

// sheetsOf are all the sheets of drawings.
func sheetsOf(all []*drawing) []*sheet.Sheet {
	var out []*sheet.Sheet
	for _, d := range all {
		out = append(out, d.sheets...)
	}
	return out
}

// lacking tells the characters of sheets that their own face lacks.
func lacking(at finding.Pos, all ...*sheet.Sheet) finding.List {
	var missing []rune
	for _, s := range all {
		sheet.Walk(&s.Root, func(it sheet.Item) {
			if t, ok := it.(*sheet.Text); ok && !t.Face.House() {
				missing = append(missing, fonts.Lacking(t.Face, t.S)...)
			}
		})
	}
	if len(missing) == 0 {
		return nil
	}
	slices.Sort(missing)
	missing = slices.Compact(missing)
	const most = 20
	told := strings.Split(string(missing[:min(len(missing), most)]), "")
	if len(missing) > most {
		told = append(told, "…")
	}
	return finding.List{{Kind: "drawing/face", Severity: finding.Warning, Pos: at,
		Message: fmt.Sprintf("%s missing from the face: %s; each is drawn as a box", counted(len(missing), "character"), strings.Join(told, " ")),
		Fix:     "use a face that has them, or units and steps that need none of them"}}
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
