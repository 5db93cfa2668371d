package read

import "flatwright/schematic/finding"

// like is the key that someone who wrote name most likely meant, or empty.
func (t *table) like(name string) string {
	n := plainKey(name)
	if h, ok := t.hints[n]; ok && t.find(h) != nil {
		return h
	}
	all := make([]string, 0, len(t.keys))
	for _, k := range t.keys {
		all = append(append(all, k.name), k.also...)
	}
	if k := t.find(finding.Nearest(n, all)); k != nil {
		return k.name
	}
	return ""
}

func plainKey(s string) string { return finding.PlainName(s) }
