package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"flatwright/cmd/internal/files"
	"flatwright/cmd/internal/job"
	"flatwright/schematic"
)

// paperWidth is a flag such as 160mm, in mm.
type paperWidth float64

func (w *paperWidth) String() string {
	if *w == 0 {
		return ""
	}
	return fmt.Sprintf("%gmm", float64(*w))
}

func (w *paperWidth) Type() string { return "160mm" }

func (w *paperWidth) Set(text string) error {
	text = strings.ToLower(strings.ReplaceAll(text, " ", ""))
	factor := 1.0
	for _, u := range []struct {
		name string
		mm   float64
	}{{"mm", 1}, {"cm", 10}, {"in", 25.4}} {
		if cut, ok := strings.CutSuffix(text, u.name); ok {
			text, factor = cut, u.mm
			break
		}
	}
	v, err := strconv.ParseFloat(text, 64)
	if v *= factor; err != nil || !(v >= 40 && v <= 1000) {
		return fmt.Errorf("write a width as 160mm, between 40 and 1000 mm")
	}
	*w = paperWidth(v)
	return nil
}

// without is a flag of parts that are left off.
type without schematic.DrawnPart

var drawnParts = []word[schematic.DrawnPart]{{"heading", schematic.Heading}, {"key", schematic.Key}, {"scale-bar", schematic.ScaleBar},
	{"arrows", schematic.Arrows}, {"joins", schematic.JoinMarks}}

func (w *without) String() string {
	var names []string
	for _, p := range drawnParts {
		if schematic.DrawnPart(*w).Has(p.is) {
			names = append(names, p.name)
		}
	}
	return strings.Join(names, ",")
}

func (w *without) Type() string { return partNames("|") }

func partNames(between string) string {
	var names []string
	for _, p := range drawnParts {
		names = append(names, p.name)
	}
	return strings.Join(names, between)
}

func (w *without) Set(text string) error {
	for name := range strings.SplitSeq(text, ",") {
		name = strings.ReplaceAll(strings.TrimSpace(strings.ToLower(name)), " ", "-")
		i := slices.IndexFunc(drawnParts, func(p word[schematic.DrawnPart]) bool { return p.name == name })
		if i < 0 {
			return fmt.Errorf("there are %s", partNames(", "))
		}
		*w |= without(drawnParts[i].is)
	}
	return nil
}

// chooseFace is the flag for a face of the designer's own.
func chooseFace(cmd *cobra.Command, own *string) {
	cmd.Flags().StringVar(own, "face", "", "TrueType or OpenType `FILE` of a face for the words")
}

// faceOf is the face at path own, or else the one that the pattern names, beside it.
func (d *delivery) faceOf(pattern, own string, src job.Source) (*job.Source, error) {
	if own == "" {
		if own = job.FaceFile(src); own == "" {
			return nil, nil
		}
		if pattern != files.Stdio {
			own = filepath.Join(filepath.Dir(pattern), filepath.FromSlash(own))
		}
	}
	f, err := os.Open(own)
	if err != nil {
		return nil, &exit{exitUsage, fmt.Errorf("cannot read the face: %w", err)}
	}
	defer f.Close() //nolint:errcheck // it was read only
	ttf, err := io.ReadAll(io.LimitReader(f, job.MostFace+1))
	if err != nil {
		return nil, &exit{exitUsage, fmt.Errorf("cannot read the face: %w", err)}
	}
	d.inputs = append(d.inputs, own)
	return &job.Source{Name: own, Text: ttf}, nil
}
