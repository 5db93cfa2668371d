package files

import (
	"errors"
	"fmt"
	"strings"
	"unicode"
)

// errName is in the error of a name that is no plain file name on every system.
var errName = errors.New("not a plain file name")

const maxName = 200 // bytes; file systems allow 255, temporary names and long paths want some of it

// reserved are the device names that Windows keeps, with or without an ending
// (Microsoft, Naming Files, Paths, and Namespaces).
var reserved = map[string]bool{
	"con": true, "prn": true, "aux": true, "nul": true,
	"com1": true, "com2": true, "com3": true, "com4": true, "com5": true, "com6": true, "com7": true, "com8": true, "com9": true,
	"lpt1": true, "lpt2": true, "lpt3": true, "lpt4": true, "lpt5": true, "lpt6": true, "lpt7": true, "lpt8": true, "lpt9": true,
}

// Reserved reports whether Windows keeps name, or what stands before its
// first point, for a device.
func Reserved(name string) bool {
	stem, _, _ := strings.Cut(strings.ToLower(name), ".")
	return reserved[strings.TrimRight(stem, " ")]
}

// CheckName says why name cannot be a file in the folder on Windows, macOS and
// Linux alike, or gives nil. A name that climbs out of the folder cannot.
func CheckName(name string) error {
	bad := func(why string) error { return fmt.Errorf("%q is %w: %s", name, errName, why) }
	switch {
	case name == "" || name == "." || name == "..":
		return bad("it names no file")
	case len(name) > maxName:
		return bad(fmt.Sprintf("it is longer than %d bytes", maxName))
	case strings.ContainsAny(name, `/\:`):
		return bad("it leads to another folder")
	case strings.ContainsAny(name, `<>"|?*`) || strings.ContainsFunc(name, unicode.IsControl):
		return bad("it has a character that Windows refuses")
	case strings.HasSuffix(name, ".") || strings.HasSuffix(name, " "):
		return bad("it ends with a point or a space")
	case Reserved(name):
		return bad("Windows keeps it for a device")
	}
	return nil
}

func checkNames(all []File) error {
	seen := map[string]string{}
	for _, f := range all {
		if err := CheckName(f.Name); err != nil {
			return err
		}
		key := strings.ToLower(f.Name)
		if other, ok := seen[key]; ok {
			return fmt.Errorf("two files would be called %q and %q, which are one on some systems", other, f.Name)
		}
		seen[key] = f.Name
	}
	return nil
}
