package sheet

import (
	"net/url"
	"strings"
)

// SafeLink is the address as a writer may put it down: http, https, mailto, or a
// place in the same document (#id). Anything else, a script above all, is no
// link, and ok is false.
func SafeLink(address string) (safe string, ok bool) {
	u, err := url.Parse(address)
	if err != nil {
		return "", false
	}
	switch strings.ToLower(u.Scheme) {
	case "http", "https":
		ok = u.Host != ""
	case "mailto":
		ok = u.Opaque != ""
	case "":
		ok = u.Host == "" && u.Path == "" && u.RawQuery == "" && !u.ForceQuery && u.Fragment != ""
	}
	safe = u.String()
	if !ok || strings.ContainsFunc(safe, func(r rune) bool { return r <= ' ' || r == 0x7f || strings.ContainsRune(`"<>\`, r) }) {
		return "", false
	}
	return safe, true
}
