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
		{"raglan", "Raglan jumper from the neck"},
		{"top", "Sleeveless top"},
		{"hat", "Hat in the round"},
		{"scarf", "Scarf in one piece"},
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
