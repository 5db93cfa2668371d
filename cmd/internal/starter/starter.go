// Package starter holds a commented pattern to begin with for each kind of
// garment. Every one of them is read and checked without a finding.
package starter

import "embed"

//go:embed kinds/*.yaml
var files embed.FS

// Kind is a kind of garment: its name, and what the pattern is in a few words.
type Kind struct{ Name, What string }

// Kinds are the kinds of garment that there are patterns for, in the order in which
// people see them.
func Kinds() []Kind {
	return []Kind{
		{"cardigan", "Cardigan with a V neck"},
		{"jumper", "Jumper with straight armholes"},
		{"set-in", "Jumper with set-in sleeves, graded from the body"},
		{"raglan", "Raglan jumper from the neck"},
		{"yoke", "Jumper with a round yoke from the hem, graded from the body"},
		{"wrap", "Wrap jacket with unlike fronts"},
		{"top", "Sleeveless top"},
		{"motifs", "Boxy top of motifs"},
		{"skirt", "A-line skirt, graded from the body"},
		{"shawl", "Triangular shawl"},
		{"scarf", "Scarf in one piece"},
		{"hat", "Hat in the round"},
		{"hood", "Cowl with a hood"},
		{"mitten", "Mittens with a thumb"},
		{"sock", "Socks with a heel flap"},
	}
}

// Text is the pattern for the kind called name, or nil.
func Text(name string) []byte {
	b, err := files.ReadFile("kinds/" + name + ".yaml")
	if err != nil {
		return nil
	}
	return b
}
