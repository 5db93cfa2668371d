package place

import (
	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// caption is a piece's name and what stands under it, with the widths that they take
// unbroken.
type caption struct {
	name  string
	info  []string
	width float64
}

func newCaption(name string, info []string, size float64) caption {
	c := caption{name: fonts.Shown(fonts.Bold, name)}
	c.width = fonts.Width(fonts.Bold, size, c.name)
	for _, s := range info {
		s = fonts.Shown(fonts.Regular, s)
		c.info = append(c.info, s)
		c.width = max(c.width, fonts.Width(fonts.Regular, size, s))
	}
	return c
}

// at breaks the caption into lines no wider than limit, and says how wide they are.
func (c *caption) at(limit, size float64) (name, info []string, width float64) {
	if c.width <= limit && c.name != "" {
		return []string{c.name}, c.info, c.width
	}
	name = sheet.Wrap(c.name, limit, size, fonts.Bold)
	for _, s := range c.info {
		info = append(info, sheet.Wrap(s, limit, size, fonts.Regular)...)
	}
	for _, s := range name {
		width = max(width, fonts.Width(fonts.Bold, size, s))
	}
	for _, s := range info {
		width = max(width, fonts.Width(fonts.Regular, size, s))
	}
	return name, info, width
}
