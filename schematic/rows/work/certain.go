package work

// doubt is why what does not fit may be read otherwise than it is meant.
type doubt uint8

const (
	none    doubt = iota
	held          // the row makes what it states all the same
	once          // a row that is repeated fits, but not every time
	bare          // the row below has hardly a stitch: what was begun in other words
	loosely       // where a stitch of the row is worked is not sure
	far           // it is off by more than half: by far, and not by a slip
	said          // how many there are is only said, by a line that was not read or does not follow
	unknown       // nothing tells how many there are
)

// certainty is how sure the stitches of a row are, and why not. What makes a finding of them asks it.
type certainty struct {
	why     doubt // none: they were counted, or stated and hold
	since   int   // rows since a count was stated that held, or since the stitches were cast on
	suspect int   // rows that may not fit because of one before
	amiss   bool  // a row before is missing, or called otherwise, which is told
	guess   bool  // it goes on with a stated count that does not follow
	apart   misfit
}

// misfit is a repeat before that did not fit: what it left over, and what it uses; none if that is 0.
type misfit struct{ left, uses int }

// explains reports whether a count that is off by so many stitches is off for the same slip.
func (m misfit) explains(off int) bool {
	return m.uses > 0 && abs(off) < m.uses && off != 0 && (off-m.left)%m.uses == 0
}

// mostSince is how many rows that state no count may lie between a row and the last count
// that held, for what the row uses to be told.
const mostSince = 4

// suspectRows is how many rows after one that does not fit are not told of: their
// counts follow from it, as long as none of them fits.
const suspectRows = 3

// fewest is how many stitches a row below has at most for something to be missing before it:
// a ring that is begun in words of its own, stitches taken up from another piece.
const fewest = 2

// known reports whether it is known how many stitches there are.
func (c *certainty) known() bool { return c.why != unknown }

// lose is that they are not known any more.
func (c *certainty) lose() { c.why = unknown }

// find is that they are known, if they were not.
func (c *certainty) find() {
	if !c.known() {
		c.why = none
	}
}

// confirm is whether a row names just as many stitches as are thought to be there: however that number came about, it holds then.
func (c *certainty) confirm(exact bool) {
	if exact {
		c.suspect = 0
		if c.why < far || c.why == said {
			c.why = none
		}
	}
}

// forget is that nothing of what the next rows use is sure, until a count holds.
func (c *certainty) forget() { c.since = 2 * mostSince }

// long reports whether no count that held is near, so that what a row uses is not told.
func (c *certainty) long() bool { return c.since > mostSince }

// judged are findings of a row over these stitches, each with what is in doubt about it. Behind one that is, the
// stitches are no surer than it.
func (c *certainty) judged(fs []raw) []raw {
	out := make([]raw, len(fs))
	for i, f := range fs {
		switch {
		case f.why != none:
		case f.gross():
			f.why = far
		default:
			f.why = c.why
		}
		if f.why > once && resting[f.kind] && c.why == none {
			c.why = said
		}
		out[i] = f
	}
	return out
}

// gross reports whether it does not fit by more than half of the stitches.
func (f *raw) gross() bool { return f.of > 4 && (2*f.gap > f.of || -2*f.gap > f.of) }
