// Package chart draws stitch charts: crochet in rows and in rounds, each stitch
// over the place that it is worked into, and knitting on a grid. It takes rows
// as worked and gives sheets; it knows nothing of files or formats.
//
// The symbols are drawn from the published descriptions of the international
// crochet symbols and of the knit chart symbols as the Craft Yarn Council lists
// them: Standards & Guidelines for Knitting and Crochet, edition of 5 February 2018, pages 3
// (crochet), 6 (knitting) and 8 (cables). Their shapes here are from memory.
package chart

import (
	"errors"
	"fmt"
	"slices"

	"flatwright/schematic/stitch"
)

// Loop is the loop into which a stitch is worked.
type Loop int

// The loops.
const (
	BothLoops Loop = iota
	BackLoop
	FrontLoop
	LowerDown
)

// Work is a stretch of rows as worked, in the order of working.
type Work struct {
	Title   string // its name: a piece, a motif
	Terms   stitch.Terms
	Rows    []Row
	Note    string // a line for the heading; may be empty
	More    int    // rows left out of the chart at its end
	Same    string // what those are like
	Again   [2]int // the first and the last row that are repeated, the text does not say how often; 0: none
	Faced   bool   // the rows that are shaped are taken for right-side rows: the text does not tell the sides
	Assumed int    // stitches or chains on which it is drawn, the text does not say how many; 0: it does
	From    string // out of what it is worked, if it begins with held stitches
	kept    *Repeat

	missing []Missing // rows that can't be drawn at its end
	astray  bool      // the last row of its graph stands on places that are not there

	hooked   int  // its first round is worked into that one of its chains, counted from the hook: that is drawn for the ring
	chains   int  // how many these are
	stoodOn  bool // its first round is worked into the chains of its ring, one by one
	unrolled bool // its rounds are drawn as rows
}

// Row is one row or round.
type Row struct {
	Number  int // 0: a foundation, -1: without a number
	Line    int // of the text
	Name    string
	Wrong   bool // a wrong-side row
	Sided   bool // the text tells which side
	fabric  bool // of a knitted fabric
	taken   bool // as a wrong-side row
	Round   bool
	Base    bool      // a foundation: chains, a ring, cast-on stitches
	Held    bool      // a foundation of stitches that stood before
	Joined  bool      // closed with a slip stitch into its first stitch
	Spiral  bool      // a round that goes on into the next
	Behind  bool      // worked behind the round before, into the one below that
	Unread  string    // the words in it that were not read: its stitches are of no known kind
	Amiss   string    // what it and its text have apart; empty: nothing
	Missing []Missing // rows before it that can't be drawn
	Edge    bool      // worked along the ends of the rows before: feet are indices of rows
	ring    bool      // worked into a ring
	Left    int       // stitches left out of it at its break
	Star    int       // its first stitch that the text repeats across it, counted from 1; 0: none
	Gap     int       // rows left out of the chart before it
	Same    string
	St      []St // in the order of working
}

// St is one stitch, chain arch, turning chain or picot.
type St struct {
	Kind   *stitch.Stitch // nil: an arch, or a turning chain that does not count
	Chain  int            // chains of an arch or a turning chain
	Feet   []int          // places of the row before; none for an arch, or in a ring
	Loop   Loop
	Turn   bool           // a chain at the beginning of the row
	Counts bool           // in the count of its row
	Break  bool           // not a stitch: here stitches are left out of a chart
	Gap    bool           // it stands in the gap behind its foot, between two groups
	Under  bool           // worked into the other side of its foundation chain
	Wrap   bool           // idle, and wrapped before the turn
	Idle   bool           // not worked in this row: it waits on the needle
	Side   bool           // chains that stand upright at the side of a petal, and begin no row
	Travel bool           // a slip stitch that leads to where a round begins
	Colour string         // the yarn's name; empty: none is named
	Cross  *stitch.Cross  // the crossing of a cable that it is a part of
	At     int            // of a crossing: which of its stitches it is, as worked
	Close  *stitch.Stitch // of an arch: the stitch into the first of its round that closes it, in place of its last chains
	tall   float64        // of a line behind a round, mm
}

// Missing is rows that can't be drawn, as a line of them was not read.
type Missing struct {
	Number, To int // the first and the last; To 0: one alone
	Name       string
	Words      string // what was not read
	Round      bool
	Line       int // of the text
}

// off reports whether s is bound off.
func (s *St) off() bool { return s.Kind != nil && s.Kind.Key == "bound off" }

// arch reports whether s is a chain arch.
func (s *St) arch() bool { return s.Kind == nil && !s.Turn && !s.Break }

// span is how many chains an arch is long, with the stitch that closes it.
func (s *St) span() int {
	if s.Close != nil {
		return s.Chain + s.Close.Turn
	}
	return s.Chain
}

// counted is how many stitches the row has, without arches and picots.
func (r *Row) counted() int {
	n := 0
	for i := range r.St {
		if s := &r.St[i]; s.Counts && s.Kind != nil {
			n++
		}
	}
	return n + r.Left
}

// craft is what most of the work is worked in.
func (w *Work) craft() stitch.Craft {
	knit, all := 0, 0
	for i := range w.Rows {
		for _, s := range w.Rows[i].St {
			if s.Kind != nil && s.Kind.ID != "ch" && s.Kind != unread {
				all++
				if s.Kind.Craft == stitch.Knitting {
					knit++
				}
			}
		}
	}
	if 2*knit > all {
		return stitch.Knitting
	}
	return stitch.Crochet
}

// onlyBase reports whether nothing of the work but its foundation is known.
func (w *Work) onlyBase() bool {
	for r := range w.Rows {
		if !w.Rows[r].Base && w.Rows[r].Unread == "" {
			return false
		}
	}
	return true
}

// gridded reports whether the work is drawn on a grid: knitting, and crochet in more than
// one yarn whose stitches stand one on one.
func (w *Work) gridded() bool {
	if w.craft() == stitch.Knitting {
		return true
	}
	if len(w.yarns().list) < 2 {
		return false
	}
	for r := range w.Rows {
		row := &w.Rows[r]
		if row.Edge {
			return false
		}
		for i := range row.St {
			s := &row.St[i]
			if row.Base || s.Turn || s.Break {
				continue
			}
			if s.Kind == nil || s.Kind.Uses != 1 || s.Kind.Makes != 1 || s.Kind.Plain() != s.Kind || r > 0 && len(s.Feet) != 1 {
				return false
			}
		}
	}
	return true
}

// squared is a work on a grid without the chains at the beginning of rows that count for no stitch: they take no square.
func (w *Work) squared() *Work {
	if w.craft() == stitch.Knitting {
		return w
	}
	out := *w
	out.Rows = slices.Clone(w.Rows)
	var below []int // where the places of the row below are now
	for r := range out.Rows {
		row := &out.Rows[r]
		now, st := make([]int, len(row.St)), make([]St, 0, len(row.St))
		for i, s := range row.St {
			if now[i] = len(st); s.Turn && s.Kind == nil {
				continue
			}
			s.Feet = slices.Clone(s.Feet)
			for k, f := range s.Feet {
				if f < len(below) {
					s.Feet[k] = below[f]
				}
			}
			st = append(st, s)
		}
		row.St, below = st, now
	}
	return &out
}

// overRingOf reports whether the round on a foundation is worked into it as a ring.
func (w *Work) overRingOf(r int) bool {
	return w.Rows[r].Base && r+1 < len(w.Rows) && w.Rows[r+1].Round && w.Rows[r+1].ring && w.Rows[r+1].loose()
}

// flatNote says how rounds lie that are drawn as rows.
func (w *Work) flatNote() string {
	note := "Rounds are drawn flat, as rows, each from its beginning"
	if w.Rows[0].ring && w.Rows[0].Round || w.overRingOf(0) {
		note += " · the first is worked into a ring"
	}
	return note
}

// hasRounds reports whether any of it is worked in the round.
func (w *Work) hasRounds() bool {
	for r := range w.Rows {
		if w.Rows[r].Round && !w.Rows[r].Base {
			return true
		}
	}
	return false
}

// spiralNote says which rounds go on into one another; nothing where all are joined but the last, which the work ends with.
func (w *Work) spiralNote() []string {
	var runs [][]Row
	joined, last := 0, 0
	for r, row := range w.Rows {
		switch {
		case row.Base:
			continue
		case !row.Spiral:
			joined++
			continue
		case len(runs) == 0 || last < r-1:
			runs = append(runs, nil)
		}
		runs[len(runs)-1], last = append(runs[len(runs)-1], row), r
	}
	if joined == 0 && len(runs) > 0 {
		return []string{"they go on in a spiral and are not joined"}
	}
	var out []string
	for _, run := range runs {
		if len(run) > 1 {
			out = append(out, rowsNamed(run)+" go on in a spiral and are not joined")
		} else if r := run[0]; last < len(w.Rows)-1 || r.Number != w.Rows[last].Number {
			out = append(out, rowsNamed(run)+" is not joined")
		}
	}
	return out
}

// Check says what makes the work impossible to draw.
func (w *Work) Check() error {
	made := 0
	for r := range w.Rows {
		row, below := &w.Rows[r], 0
		switch {
		case row.Edge:
			below = r
		case r > 0:
			below = len(w.Rows[r-1].St)
		}
		for i := range row.St {
			if err := row.St[i].check(below); err != nil {
				return fmt.Errorf("row %d, stitch %d: %w", r+1, i+1, err)
			}
			if !row.Base {
				made++
			}
		}
	}
	if gaps := w.Gaps(); len(gaps) > 0 && w.onlyBase() {
		return fmt.Errorf("no row can be drawn: %s", gaps[0].Words)
	}
	if made == 0 {
		return errors.New("there is no row to chart")
	}
	return nil
}

// check says what makes a stitch over so many places impossible to draw.
func (s *St) check(below int) error {
	if s.Kind == nil && s.Chain < 1 {
		return errors.New("neither a stitch nor a chain")
	}
	for _, f := range s.Feet {
		if f < 0 || f >= below {
			return fmt.Errorf("it is worked into place %d, and the row below has %d", f+1, below)
		}
	}
	return nil
}

// runsRight reports whether the places of a row run from left to right, as the right
// side shows it: those of a wrong-side row do, and those of a foundation that the
// first row meets from its end.
func (w *Work) runsRight(r int) bool {
	row := &w.Rows[r]
	if !row.Base || r+1 == len(w.Rows) {
		return row.Wrong != row.Base
	}
	next := &w.Rows[r+1]
	if next.Round {
		return false
	}
	if next.forwards() {
		return next.Wrong
	}
	return !next.Wrong
}
