package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"flatwright/layout/place"
	"flatwright/schematic/units"
)

// choice is a flag with a few words to choose from; each stands for a T.
type choice[T any] struct {
	text  string
	to    *T
	words []word[T]
}

type word[T any] struct {
	name string
	is   T
}

func (c *choice[T]) String() string { return c.text }

func (c *choice[T]) Type() string { return c.names("|") }

func (c *choice[T]) names(between string) string {
	var all []string
	for _, w := range c.words {
		all = append(all, w.name)
	}
	return strings.Join(all, between)
}

func (c *choice[T]) Set(s string) error {
	for _, w := range c.words {
		if strings.EqualFold(s, w.name) {
			c.text, *c.to = w.name, w.is
			return nil
		}
	}
	return fmt.Errorf("there are %s", c.names(", "))
}

// choose adds a choice to cmd, with its words for completion. The first word is what *to is
// if first is empty.
func choose[T any](cmd *cobra.Command, to *T, name, shown, usage string, words ...word[T]) {
	c := &choice[T]{text: shown, to: to, words: words}
	cmd.Flags().Var(c, name, usage)
	var names []string
	for _, w := range words {
		names = append(names, w.name)
	}
	// the flag was made on the line above, so this cannot fail
	_ = cmd.RegisterFlagCompletionFunc(name, cobra.FixedCompletions(names, cobra.ShellCompDirectiveNoFileComp))
}

func chooseUnits(cmd *cobra.Command, to *[]units.Unit, usage string) {
	choose(cmd, to, "units", "", usage,
		word[[]units.Unit]{"cm", []units.Unit{units.CM}}, word[[]units.Unit]{"in", []units.Unit{units.Inch}},
		word[[]units.Unit]{"both", []units.Unit{units.CM, units.Inch}})
}

func choosePaper(cmd *cobra.Command, paper *place.Paper, orientation *place.Orientation) {
	var papers []word[place.Paper]
	for _, p := range place.Papers() {
		papers = append(papers, word[place.Paper]{p.Word(), p})
	}
	choose(cmd, paper, "paper", papers[0].name, "paper", papers...)
	choose(cmd, orientation, "orientation", "auto", "which way up; auto takes the fewest pages, then the largest scale",
		word[place.Orientation]{"auto", place.Auto}, word[place.Orientation]{"portrait", place.Portrait},
		word[place.Orientation]{"landscape", place.Landscape})
}

// scale is a flag such as 1:8 or 8.
type scale float64

func (s *scale) String() string {
	if *s == 0 {
		return ""
	}
	return fmt.Sprintf("1:%g", float64(*s))
}

func (s *scale) Type() string { return "1:N" }

func (s *scale) Set(text string) error {
	n, ok := units.ParseNum(strings.TrimPrefix(strings.ReplaceAll(text, " ", ""), "1:"))
	if !ok || n.Less(units.Int(1)) || units.Int(1000).Less(n) {
		return fmt.Errorf("write a scale as 1:8, between 1:1 and 1:1000")
	}
	*s = scale(n.Float())
	return nil
}
