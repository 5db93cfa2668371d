// Package files is the only place that reads from and writes to the disk. It
// reads with a bound and writes all or nothing. It knows nothing of what is in
// a file.
package files

// File is a named file in memory. Name is a plain file name without a folder.
type File struct {
	Name string
	Body []byte
}

// Stdio is the name that means standard input or standard output.
const Stdio = "-"
