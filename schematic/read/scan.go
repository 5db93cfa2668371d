package read

import "flatwright/schematic/finding"

type scanned struct {
	text     string
	shift    map[int]int
	findings finding.List
	fatal    *finding.Finding
}

func scan(file, text string) scanned { return scanned{text: text} }
func (r *reader) reword(err error) finding.Finding {
	return finding.Finding{Kind: "file/syntax", Pos: finding.Pos{File: r.file}, Message: err.Error()}
}
