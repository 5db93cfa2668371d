package schematic_test

import (
	"math"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/given"
)

// byHand is a measurement of a garment of testdata/garments, in mm, in its first and its last size.
type byHand struct {
	id          string
	first, last float64
}

// per is how large one of k stitches or rows over 10 cm is, in mm.
func per(k float64) float64 { return 100 / k }

const inch = 25.4

// Every measurement of the garments below, worked by hand out of the counts in their files: stitches x 10 cm / gauge,
// rows x 10 cm / gauge, each sum as it would be written in the margin.
func TestGarmentsComeOutAsWorkedByHand(t *testing.T) {
	for name, list := range garments() {
		t.Run(name, func(t *testing.T) {
			first, last := sizesOf(t, name)
			for _, w := range list { // roots are kept to a micrometre
				assert.InDelta(t, w.first, first[w.id], 6e-4, "%s in the first size", w.id)
				assert.InDelta(t, w.last, last[w.id], 6e-4, "%s in the last size", w.id)
			}
		})
	}
}

func sizesOf(t *testing.T, name string) (first, last map[string]float64) {
	t.Helper()
	p := given.File(t, filepath.Join("..", "testdata", "garments", name+".yaml"))
	of := func(g *schematic.Garment) map[string]float64 {
		out := map[string]float64{}
		for _, m := range g.Pieces {
			for _, s := range m.Measures {
				out[s.ID] = s.Length.Float()
			}
		}
		return out
	}
	all := bysize.WorkAll(p)
	return of(all[0]), of(all[len(all)-1])
}

func garments() map[string][]byHand {
	return map[string][]byHand{
		"divided-round": divided(), "gores": gores(), "hat-from-the-crown": crown(), "mirror-and-band": mirrored(), "mitre-and-motifs": motifs(),
		"mitten": mitten(), "panels": panels(), "raglan-with-neckline": neckline(), "raglan": raglan(), "round-yoke": yoke(),
		"short-rows": shortRows(), "sock": sock(), "tee": tee(),
	}
}

func divided() []byHand {
	st, row, ribSt, ribRow := per(22), per(30), per(26), per(32)
	armhole := 50 * row // the back; the front has 30 and 12 + 8 of its neck
	return []byHand{
		{"body.front.width-at-hem", 192 * ribSt, 232 * ribSt},
		{"body.front.waist", (192 - 3*2*2) * st, (232 - 3*2*2) * st},
		{"body.front.width-at-underarm", 192 * st, 232 * st},
		{"body.front.length", 20*ribRow + (3*8+10+3*10+16+50)*row, 20*ribRow + (24+10+30+16+50)*row},
		{"body.front.depth-of-rib", 20 * ribRow, 20 * ribRow},
		{"body.front.underarm.left", 4 * st, 4 * st},
		{"body.front.underarm.right", 4 * st, 4 * st},
		{"body.front.armhole-depth.left", armhole, armhole},
		{"body.front.armhole-depth.right", armhole, armhole},
		{"body.front.front-left.shoulder.right", (26 - 6) * st, (34 - 6) * st},
		{"body.front.front-right.shoulder.left", (26 - 6) * st, (34 - 6) * st},
		{"body.front.front-neck-depth", (6*2 + 8) * row, (6*2 + 8) * row},
		{"body.front.front-neck-width", (36 + 2*6) * st, (40 + 2*6) * st},
		{"body.back.length", 20*ribRow + 130*row, 20*ribRow + 130*row},
		{"body.back.armhole-depth.left", armhole, armhole},
		{"body.back.shoulder.left", 20 * st, 28 * st},
		{"body.back.shoulder.right", 20 * st, 28 * st},
		{"body.back.neck-width", 48 * st, 52 * st},
	}
}

func gores() []byHand {
	st, row, ribSt, ribRow := per(20), per(28), per(22), per(30)

	return []byHand{
		{"skirt.gore-1.width-at-lower-edge", 36 * st, 44 * st},
		{"skirt.gore-4.width-at-upper-edge", (36 - 9*2) * st, (44 - 9*2) * st},
		{"skirt.gore-6.length", 9 * 14 * row, 9 * 14 * row},
		{"skirt.width-at-hem", 216 * st, 264 * st},
		{"skirt.width-at-top", (216 - 6*18) * st, (264 - 6*18) * st},
		{"hat.first-rows.brim", 96 * ribSt, 120 * ribSt},
		{"hat.first-rows.width-around", 96 * st, 120 * st},
		{"hat.first-rows.depth-of-rib", 10 * ribRow, 10 * ribRow},
		{"hat.first-rows.depth-of-sides", 10*ribRow + 34*row, 10*ribRow + 34*row}, // 12 cm are 33.6 rows
		{"hat.wedge-c.width-at-lower-edge", 16 * st, 20 * st},
		{"hat.wedge-c.width-at-upper-edge", (16 - 7*2) * st, (20 - 9*2) * st},
		{"hat.wedge-f.crown-depth", 7 * 2 * row, 9 * 2 * row},
		{"hat.width-at-top", 6 * 2 * st, 6 * 2 * st},
		{"cape.first-half.width-at-upper-edge", 36 * st, 44 * st},
		{"cape.second-half.width-at-lower-edge", (36 + 40) * st, (44 + 48) * st},
		{"cape.first-half.length", 80 * row, 96 * row},
		{"cape.first-half.neck-width.left", 36 * st, 44 * st},
		{"cape.second-half.side-length.right", 80 * row, 96 * row},
		{"cape.width-at-upper-edge", 72 * st, 88 * st},
		{"cape.width-at-lower-edge", 152 * st, 184 * st},
	}
}

// crown: a disc of n rounds has a diameter of 2n of them; the sides hang on its last round.
func crown() []byHand {
	st, round := 4*inch/14, 4*inch/16
	return []byHand{
		{"hat.crown.diameter", 2 * 12 * round, 2 * 14 * round}, // the ring is a round
		{"hat.sides.brim", (6 + 6*11) * st, (6 + 6*13) * st},
		{"hat.sides.depth-of-sides", (22 + 4) * round, (26 + 4) * round},
		{"hat.sides.depth-of-rib", 4 * round, 4 * round},
		{"mat.diameter", 2 * 16 * round, 2 * 16 * round},
	}
}

func mirrored() []byHand {
	st, row, bandRow := 4*inch/18, 4*inch/16, 4*inch/20
	side, neck := 64*row, 34*row
	shoulder := [2]float64{(44 - 4 - 4 - 12) * st, (52 - 4 - 4 - 14) * st}
	var list []byHand
	for _, p := range [][3]string{{"right-front", "right", "left"}, {"left-front", "left", "right"}} {
		front, arm := "."+p[1], "."+p[2]
		list = append(list,
			byHand{p[0] + ".width-at-hem", 44 * st, 52 * st}, byHand{p[0] + ".width-at-top", shoulder[0], shoulder[1]},
			byHand{p[0] + ".length", side + neck, side + neck}, byHand{p[0] + ".front-edge" + front, side, side},
			byHand{p[0] + ".front-neck-depth" + front, neck, neck}, byHand{p[0] + ".front-neck-width" + front, 12 * st, 14 * st},
			byHand{p[0] + ".shoulder" + arm, shoulder[0], shoulder[1]}, byHand{p[0] + ".armhole-depth" + arm, neck, neck},
			byHand{p[0] + ".side-length" + arm, side, side})
	}
	// 9 in every 8 of 64 rows, then 1 in each row of two necks of 34.
	picked := 72 + 34 + 34.0
	return append(list, byHand{"band.length-of-band", picked * st, picked * st},
		byHand{"band.depth-of-band", 7 * bandRow, 7 * bandRow}, // the row that is picked up is one
		byHand{"band.depth-of-rib", 6 * bandRow, 6 * bandRow})
}

// motifs: a hexagon 9 cm across its flats is 9 x 2/sqrt 3 across its corners, its rows stand three quarters of that apart; a triangle with
// sides of 11 cm is 11 x sqrt 3 / 2 high.
func motifs() []byHand {
	across, joining := 90.0, 4.0
	corners := across * 2 / math.Sqrt(3)
	apart := (across + joining) * math.Sqrt(3) / 2
	return []byHand{
		{"mitred-square.arm-of-the-mitre", 20.5 * per(20), 30.5 * per(20)}, // 41 and 61 stitches, the middle one in the corner
		{"mitred-square.depth-of-the-mitre", 20 * 2 * per(40), 30 * 2 * per(40)},
		{"squares.width", 4*120 + 3*5, 5*120 + 4*5},
		{"squares.length", 3*120 + 2*5, 3*120 + 2*5},
		{"squares.motif", 120, 120},
		{"stepped-squares.width", 400, 400},
		{"stepped-squares.length", 300, 300},
		{"stepped-squares.neck-width", 2 * 100, 2 * 100},
		{"stepped-squares.neck-depth", 100, 100},
		{"hexagons.width", 4.5*(across+joining) - joining, 4.5*(across+joining) - joining}, // a half is as wide as half its pitch
		{"hexagons.length", 2*apart + corners, 2*apart + corners},
		{"triangles.width", 4 * 110, 4 * 110}, // seven, every other one upside down
		{"triangles.length", 2 * 110 * math.Sqrt(3) / 2, 2 * 110 * math.Sqrt(3) / 2},
	}
}

func mitten() []byHand {
	st, row, ribRow := per(24), per(32), per(34)
	return []byHand{
		{"mitten.cuff", 40 * st, 48 * st},
		{"mitten.tip", (40 - 4*8) * st, (48 - 4*10) * st},
		{"mitten.length", 20*ribRow + (18+1+30+8)*row, 20*ribRow + (22+1+36+10)*row},
		{"mitten.depth-of-rib", 20 * ribRow, 20 * ribRow},
		{"mitten.width-of-thumb", 7 * st, 9 * st},
		{"mitten.length-to-thumb", 20*ribRow + 18.5*row, 20*ribRow + 22.5*row}, // to the middle of the row that it leaves open
		{"thumb.width-at-lower-edge", (7 + 9) * st, (9 + 11) * st},
		{"thumb.length", 16 * row, 20 * row},
		{"half-mitten.width-at-lower-edge", 40 * st, 48 * st},
		{"half-mitten.length", 37 * row, 37 * row},
		{"half-mitten.width-of-thumb", 7 * st, 9 * st},
		{"half-mitten.length-to-thumb", 24.5 * row, 24.5 * row},
	}
}

func panels() []byHand {
	plain, cable, rib, row := per(20), per(26), per(24), per(28)
	return []byHand{
		{"cushion-front.width-at-hem", 80 * plain, 90 * plain},
		{"cushion-front.cross-front", 48*plain + 32*cable, 56*plain + 34*cable},
		{"cushion-front.length", 72 * row, 72 * row},
		{"cushion-front.side-length.left", 72 * row, 72 * row},
		{"pouch.width-at-lower-edge", 50 * plain, 56 * plain},
		{"pouch.width-at-upper-edge", 50 * plain, 56 * plain},
		{"pouch.length", (20 + 16 + 8 + 30) * row, 74 * row},
		{"pouch.height-of-slot", 16 * row, 16 * row},
		{"pouch.width-of-slot", 14 * plain, 16 * plain},
		{"shrug.length-at-left-edge", 60 * rib, 66 * rib},
		{"shrug.length", 70 * plain, 76 * plain},
		{"shrug.width-from-side-to-side", (20 + 1 + 112 + 1 + 20) * row, 154 * row}, // 40 cm are 112 rows
		{"shrug.depth-of-rib", 20 * row, 20 * row},
		{"shrug.height-of-lower-edge", (70*plain - 60*rib) / 2, (76*plain - 66*rib) / 2},
		{"shrug.width-of-lower-edge", 154 * row, 154 * row},
	}
}

// neckline: each panel takes one at either line in every second row; the fronts take one at the neck as well, and the
// front is joined over the stitches that are added between them.
func neckline() []byHand {
	st, row := per(18), per(24)
	deep := [2]float64{(12 + 2*18) * row, (12 + 2*22) * row}
	var list []byHand
	for _, side := range []string{"left", "right"} {
		list = append(list, byHand{"yoke." + side + "-sleeve.width-at-neck-edge", 10 * st, 12 * st},
			byHand{"yoke." + side + "-sleeve.width-at-base", (10 + 2*24) * st, (12 + 2*28) * st},
			byHand{"yoke." + side + "-sleeve.yoke-depth", deep[0], deep[1]},
			byHand{"yoke.back.raglan-depth." + side, deep[0], deep[1]}, byHand{"yoke.front.raglan-depth." + side, deep[0], deep[1]})
	}
	return append(list,
		byHand{"yoke.back.width-at-neck-edge", 32 * st, 36 * st},
		byHand{"yoke.back.width-at-base", (32 + 2*24) * st, (36 + 2*28) * st},
		byHand{"yoke.front.width-below-neck", (2*(1+6+6) + 6) * st, (2*(1+6+6) + 10) * st},
		byHand{"yoke.front.width-at-base", (32 + 2*18) * st, (36 + 2*22) * st},
		byHand{"yoke.front.front-neck-depth", 12 * row, 12 * row},
		byHand{"yoke.front.front-neck-width", (2*(1+6) + 6) * st, (2*(1+6) + 10) * st},
		byHand{"yoke.neck-edge", 54 * st, 62 * st},
		byHand{"yoke.base-of-yoke", 264 * st, 308 * st},
		byHand{"body.width-at-hem", (80 + 68 + 12) * st, (92 + 80 + 12) * st},
		byHand{"body.length", 77 * row, 77 * row}) // 32 cm are 76.8 rows
}

func raglan() []byHand {
	st, row, ribRow := per(20), per(26), per(28)
	deep := [2]float64{50 * row, 68 * row}
	var list []byHand
	for _, p := range []string{"back", "front"} {
		list = append(list, byHand{"yoke." + p + ".width-at-neck-edge", 34 * st, 40 * st}, byHand{"yoke." + p + ".width-at-base", (34 + 50) * st, (40 + 68) * st},
			byHand{"yoke." + p + ".yoke-depth", deep[0], deep[1]}, byHand{"yoke." + p + ".raglan-depth.left", deep[0], deep[1]})
	}
	for _, p := range []string{"left-arm", "right-arm"} {
		list = append(list, byHand{"yoke." + p + ".width-at-neck-edge", 12 * st, 14 * st}, byHand{"yoke." + p + ".width-at-base", (12 + 50) * st, (14 + 68) * st})
	}
	return append(list,
		byHand{"yoke.neckband.width-of-neckband", 92 * st, 108 * st},
		byHand{"yoke.neckband.depth-of-neckband", 6 * ribRow, 6 * ribRow},
		byHand{"yoke.base-of-yoke", (92 + 8*25) * st, (108 + 8*34) * st},
		byHand{"body.width-at-hem", 184 * st, 232 * st},
		byHand{"body.length", 78*row + 14*ribRow, 78*row + 14*ribRow}, // 30 cm are 78 rows, 5 cm are 14 of rib
		byHand{"body.depth-of-rib", 14 * ribRow, 14 * ribRow},
		byHand{"sleeve.upper-arm", 70 * st, 90 * st},
		byHand{"sleeve.cuff", (70 - 2*10) * st, (90 - 2*16) * st},
		byHand{"sleeve.sleeve-length", 100*row + 11*ribRow, 96*row + 11*ribRow}, // 4 cm are 11.2 rows of rib
		byHand{"sleeve.depth-of-rib", 11 * ribRow, 11 * ribRow})
}

func yoke() []byHand {
	st, row := 4*inch/18, 4*inch/24
	return []byHand{
		{"body.width-at-hem", 160 * st, 192 * st},
		{"body.length", (8 + 84) * row, (8 + 84) * row}, // 14 in are 84 rows
		{"body.depth-of-rib", 8 * row, 8 * row},
		{"sleeve.cuff", 40 * st, 46 * st},
		{"sleeve.upper-arm", (40 + 20) * st, (46 + 24) * st},
		{"sleeve.sleeve-length", (8 + 80) * row, (8 + 96) * row},
		{"yoke.base-of-yoke", 248 * st, 300 * st},
		{"yoke.neck-edge", (248 - 2*62 - 40) * st, (300 - 2*75 - 52) * st},
		{"yoke.yoke-depth", (12 + 20 + 6) * row, 38 * row},
	}
}

// shortRows: the front is longest at its middle, by the rows that do not reach its sides.
func shortRows() []byHand {
	st, row := per(16), per(18)
	return []byHand{
		{"front.width-at-hem", 72 * st, 80 * st},
		{"front.width-at-top", (64 - 4*6) * st, (72 - 4*6) * st}, // over which the last of six rows goes; two more ends left in each pair
		{"front.length", (30 + 8 + 20 + 2 + 24 + 6) * row, 90 * row},
		{"front.short-rows", 8 * row, 8 * row},
		{"front.short-rows.2", 6 * row, 6 * row},
		{"front.lower-side-length.left", 30 * row, 30 * row},
		{"front.upper-side-length.right", 20 * row, 20 * row},
		{"front.armhole-depth.left", 26 * row, 26 * row},
		{"front.shoulder-slope", 6 * row, 6 * row},
		{"front.shoulder", (72 - 8) * st, (80 - 8) * st},
		{"half-front.width-at-hem", 36 * st, 40 * st},
		{"half-front.length", (30 + 6 + 10) * row, 46 * row},
		{"half-front.lower-side-length.right", 30 * row, 30 * row},
		{"half-front.upper-side-length.right", 10 * row, 10 * row},
		{"half-front.side-length.left", 46 * row, 46 * row},
	}
}

func sock() []byHand {
	st, row := per(28), per(36)
	return []byHand{
		{"sock.heel.upper-edge", 56 * st, 64 * st},
		{"sock.heel.width-of-heel", (28 - 12) * st, (32 - 14) * st},
		{"sock.heel.length", (40 + 26 + 6) * row, (40 + 30 + 7) * row},
		{"sock.heel.height-of-flap-edge.left", 32 * row, 37 * row},
		{"sock.heel.width-of-flap-edge.left", 6 * st, 7 * st},
		{"sock.second-half-of-the-round.length", 40 * row, 40 * row},
		{"sock.foot.upper-edge", (16 + 26 + 28) * st, (18 + 30 + 32) * st},
		{"sock.foot.lower-edge", (56 - 36) * st, (64 - 44) * st},
		{"sock.foot.length", (14 + 30 + 18) * row, (16 + 38 + 22) * row},
	}
}

func tee() []byHand {
	st, row := per(15), per(12)
	return []byHand{
		{"back-and-front.width-at-hem", 72 * st, 96 * st},
		{"back-and-front.cuff-to-cuff", 112 * st, 132 * st},
		{"back-and-front.centre-back-to-cuff", 56 * st, 66 * st},
		{"back-and-front.length", (32 + 20) * row, (34 + 25) * row},
		{"back-and-front.side-length.left", 32 * row, 34 * row},
		{"back-and-front.underarm.right", 20 * st, 18 * st},
		{"back-and-front.sleeve-opening.left", 20 * row, 25 * row},
		{"back-and-front.shoulder.right", 42 * st, 50 * st},
		{"back-and-front.neck-width", 28 * st, 32 * st},
	}
}
