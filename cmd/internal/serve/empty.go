package serve

// emptyPattern is what a person begins with who wants nothing of a garment given: one size, one gauge and
// one piece, so that there is something to see, to copy and to change.
const emptyPattern = `version: 1
pattern: New pattern
terms: US
units: cm
sizes: M
gauges:
  fabric: 20 sts and 28 rows over 10 cm in stockinette stitch
pieces:
  - piece: Back
    sections:
      - cast on: 90
      - even: 90 rows
      - bind off: all
`
