package work

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// crossedLines are the lines with a crossing of which the text does not say what it is.
func crossedLines(x *ins.Text) map[int]bool {
	out := map[int]bool{}
	var look func(list []ins.Item)
	look = func(list []ins.Item) {
		for _, n := range list {
			switch n := n.(type) {
			case *ins.Repeat:
				look(n.Body)
			case *ins.Stitch:
				if n.Kind != nil && n.Kind.Key == "cable" && n.Kind.Cross == nil {
					out[n.At.Line] = true
				}
			}
		}
	}
	for _, s := range x.Sections {
		for _, l := range s.Lines {
			look(l.Body)
		}
	}
	return out
}

// calledInRow reports whether a row tells a crossing where it is worked first, and calls it so: this is called cable 8.
func calledInRow(x *ins.Text, name string) bool {
	called := "called " + strings.ToLower(name)
	return slices.ContainsFunc(x.Src, func(s string) bool { return strings.Contains(strings.ToLower(s), called) })
}

// notDescribed tells what is made of a crossing that the text only names.
func notDescribed(name string, k *stitch.Stitch) string {
	if k.Cross != nil {
		return fmt.Sprintf("the text does not say how %s is worked; it is taken as its name says, %s", name, k.Cross)
	}
	return fmt.Sprintf("the text does not say how %s is crossed; its %d stitches are counted", name, k.Uses)
}

// onlyNamed reports whether a stitch is a crossing that no words describe.
func onlyNamed(k *stitch.Stitch) bool {
	return k != nil && (k.Key == "cable" || k.Key == stitch.NamedCross)
}

// untoldGroup is the message for a group that the text does not explain, with how it is read, and a line that would explain it.
func untoldGroup(g *ins.Group, t stitch.Terms) (msg, how string) {
	msg = fmt.Sprintf("the text does not say which stitches make a %s; ", g.Name)
	m := g.Mesh
	if m == nil {
		return msg + "it is not counted", g.Name + ": (2 dc, ch 2, 2 dc) in the place named"
	}
	post := m.Post.Abbr(t)
	if m.Solid {
		return msg + fmt.Sprintf("it is read as %d %s", m.Wide+1, post), g.Name + ": 3 " + post
	}
	return msg + fmt.Sprintf("it is read as ch %d, skip %d, %s", m.Wide, m.Wide, post), g.Name + ": ch 2, skip 2 sts, " + post + " in next st"
}

// unexplained asks, once for each, what the groups and the cables are that the text names and does not explain. The cables'
// names say how many stitches they take, so that these are counted.
func unexplained(x *ins.Text) finding.List {
	var out finding.List
	seen := map[string]bool{}
	var look func(section string, list []ins.Item)
	look = func(section string, list []ins.Item) {
		for _, n := range list {
			switch n := n.(type) {
			case *ins.Repeat:
				look(section, n.Body)
			case *ins.Stitch:
				if g := n.Call; g != nil && len(g.Body) == 0 && !seen[g.Name] {
					seen[g.Name] = true
					msg, how := untoldGroup(g, x.Terms)
					out = append(out, finding.Finding{Kind: "rows/meaning", Severity: finding.Note, Section: section, Pos: x.Pos(n.At), Message: msg, Fix: "add it to the special stitches: " + how})
				}
				k := n.Kind
				if !onlyNamed(k) || seen[k.ID] || calledInRow(x, x.Quote(n.At)) {
					continue
				}
				seen[k.ID] = true
				name := finding.Clip(x.Quote(n.At))
				out = append(out, finding.Finding{Kind: "rows/meaning", Severity: finding.Note, Section: section, Pos: x.Pos(n.At),
					Message: notDescribed(name, k),
					Fix:     "say it among the abbreviations: what is held on the cable needle, at the back or in front, and what is worked from it"})
			}
		}
	}
	for _, s := range x.Sections {
		for _, l := range s.Lines {
			look(s.Name, l.Body)
		}
	}
	return out
}
