package random

import (
	"fmt"

	"pgregory.net/rapid"
)

// Bonded gives the text of a pattern file, in one size, of pieces that are bound together: a jumper with a shaped cap or a dropped shoulder,
// a sock with a flap or with short rows, a mitten with a thumb, or a bag with handles, of any usual proportions and gauge.
func Bonded() *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string {
		n := func(name string, lo, hi int) int { return rapid.IntRange(lo, hi).Draw(t, name) }
		head := fmt.Sprintf("version: 1\npattern: Bonded\nterms: UK\nunits: cm\nsizes: One\ngauges:\n  fabric: %d sts and %d rows over 10 cm in stocking stitch\npieces:\n",
			n("stitches", 12, 32), n("rows", 14, 44))
		return head + []func(func(string, int, int) int) string{jumper, flapSock, rowSock, mitten, bag}[n("kind", 0, 4)](n)
	})
}

func jumper(n func(string, int, int) int) string {
	neck, shoulder, off := 2*n("neck", 8, 20), n("shoulder", 8, 30), n("bind off", 0, 6)
	rows, armhole, narrow := n("body", 20, 120), n("armhole", 30, 60), 0
	shaped := ""
	if off > 0 {
		narrow = n("decreases", 1, 8)
		shaped = fmt.Sprintf("      - {bind off: %d, at: both edges, edge: armhole}\n      - {decrease: 1, at: both edges, every: 2 rows, times: %d, edge: armhole}\n", off, narrow)
	}
	body := ""
	for _, name := range []string{"Back", "Front"} {
		body += fmt.Sprintf("  - piece: %s\n    sections:\n      - {cast on: %d, edge: hem}\n      - even: %d rows\n%s      - {even: %d rows, left edge: armhole, right edge: armhole}\n", name,
			neck+2*(shoulder+off+narrow), rows, shaped, armhole)
		body += fmt.Sprintf("      - divide:\n          - {bind off: %d, name: right shoulder, edge: shoulder}\n          - {bind off: %d, name: neck, edge: neck}\n          - {bind off: %[1]d, name: left shoulder, edge: shoulder}\n", shoulder, neck)
	}
	cuff, up := 2*n("cuff", 10, 20), n("increases", 5, 15)
	body += fmt.Sprintf("  - piece: Sleeve\n    make: 2\n    left edge: seam\n    right edge: seam\n    sections:\n      - {cast on: %d, edge: cuff}\n      - {increase: 1, at: both edges, every: %d rows, times: %d}\n", cuff, n("every", 2, 8), up)
	if off > 0 {
		body += fmt.Sprintf("      - {bind off: %d, at: both edges, edge: cap}\n      - {decrease: 1, at: both edges, every: 2 rows, times: %d, edge: cap}\n", min(off, 4), n("cap", 2, min(20, cuff/2+up-6)))
	}
	return body + "      - {bind off: all, edge: cap}\njoins:\n  - {sew: Back shoulder, to: Front shoulder}\n  - {sew: Sleeve cap, into: [Back armhole, Front armhole]}\n  - {sew: Back side, to: Front side}\n"
}

func flapSock(n func(string, int, int) int) string {
	half, turn := n("half of the leg", 14, 40), n("heel turn", 2, 6)
	pick := n("picked up", 8, 20)
	return fmt.Sprintf(`  - piece: Sock
    make: 2
    worked: in the round, from the neck
    sections:
      - {cast on: %d, edge: cuff}
      - even: %d rows
      - divide:
          - part: Heel
            stitches: %d
            sections:
              - even: %d rows
              - {decrease: 1, at: both edges, every: 1 row, times: %d}
          - {hold: %[3]d, name: instep}
      - join parts: [Heel, {add: %[6]d, edge: gusset}, instep, {add: %[6]d, edge: gusset}]
        round: yes
        as: Foot
      - even: %[7]d rows
      - gather
`, 2*half, n("leg", 20, 80), half, n("flap", 10, 36), turn, pick, n("foot", 30, 80))
}

func rowSock(n func(string, int, int) int) string {
	half := 2 * n("quarter of the leg", 8, 20)
	return fmt.Sprintf("  - piece: Sock\n    make: 2\n    worked: in the round, from the neck\n    sections:\n      - {cast on: %d, edge: cuff}\n      - even: %d rows\n      - {short rows: %d rows, over: %d, at: middle, step: 1}\n      - even: %d rows\n      - gather\n",
		2*half, n("leg", 20, 80), 2*n("heel", 4, half/2), half, n("foot", 30, 80))
}

func mitten(n func(string, int, int) int) string {
	hand, thumb := n("hand", 30, 50), n("thumb", 5, 9)
	return fmt.Sprintf(`  - piece: Mitten
    make: 2
    worked: in the round, from the hem
    sections:
      - {cast on: %d, edge: cuff}
      - even: %d rows
      - divide:
          - {hold: %d, name: thumb}
          - part: Hand
            stitches: %d
            sections: [{even: 1 row}]
      - join parts: [Hand, {add: %[3]d, edge: upper thumb edge}]
        round: yes
      - even: %[5]d rows
      - gather
  - piece: Thumb
    make: 2
    worked: in the round, from the hem
    sections:
      - start from: [{piece: Mitten, part: thumb, stitches: %[3]d}, {add: %[6]d}]
      - even: %[7]d rows
      - gather
`, hand, n("wrist", 10, 40), thumb, hand-thumb, n("fingers", 20, 40), thumb+n("more", 0, 3), n("thumb rows", 8, 20))
}

func bag(n func(string, int, int) int) string {
	return fmt.Sprintf(`  - piece: Bag
    worked: in the round, from the hem
    sections: [{cast on: %d, edge: base}, {even: %d rows}, {bind off: all, edge: rim}]
  - piece: Handle
    make: 2
    sections: [{cast on: %d, edge: handle end}, {even: %d rows}, {bind off: all, edge: handle end}]
joins:
  - {sew: Bag base, how: at a fold}
  - {sew: Handle handle end, into: Bag rim, how: in 4 places}
`, 2*n("half of the bag", 30, 80), n("height", 20, 80), n("width", 2, 8), n("handle", 60, 200))
}
