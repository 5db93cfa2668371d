package text

import "strings"

// called is how a row is called that stands in a column of its own, and counted what it comes to.
const (
	called  = `((?:row|rnd|round|r)?s? ?#?\d{1,3}(?:(?: ?[-–] ?| (?:and|to|&) )\d{1,3})?(?: ?\((?:rs|ws)\))?)`
	counted = `\(?(\d+(?: ?(?:sts?|stitches|sc|dc|hdc|htr|tr))?)\)?`
)

var (
	tableRow = Once(`(?i)^(\s*)\|( *)` + called + `( *)\|(.*[a-z].*)\|( *)` + counted + `( *)\|\s*$`)
	tabRow   = Once(`(?i)^(\s*)` + called + `[.:)]?\t(.*[a-z].*)\t` + counted + `\s*$`)
	countBar = Once(`(?i)^(\s*(?:row|rnd|round|r) ?\d[^|]*[a-z)\]*\d] *)(\||//)( *\d+ *(?:sts?|stitches|sc|dc|hdc|htr|tr)?\.?\s*)$`)
	slanted  = Once(`(?i)^(\s*)([*_])((?:row|rnd|round)s? ?\d[^*_:]{0,20}:)([*_])( .*)$`)
	slantedN = Once(`^(.*[^*_ ] +)([*_])(\([^()*_]*\d[^()*_]*\))([*_])(\.?\s*)$`)
	nextNo   = Once(`(?i)^(\s*next (?:row|rnd|round) )\d( ?:)`)
	colonNo  = Once(`(?i)^(\s*r)( ?):( ?\d+ ?)[-–:]( )`)
	inQuotes = Once(`(?i)^(\s*)[“"]((?:row|rnd|round)s? ?\d.*)[”"]\s*$`)
)

// Pasted is a line of rows as a hand types it, of one that was a row of a table, had marks for slanted letters, or stood in
// quotes. Every word stays in its column.
func Pasted(line string) string {
	line = colonNo().ReplaceAllString(nextNo().ReplaceAllString(line, "${1} ${2}"), "${1}${2} ${3}:${4}")
	if !strings.ContainsAny(line, "|\t/*_“\"") {
		return line
	}
	line = slanted().ReplaceAllString(line, "${1} ${3} ${5}")
	if slanted().MatchString(line) || !strings.Contains(line, "rep from *") {
		line = slantedN().ReplaceAllString(line, "${1} ${3} ${5}")
	}
	line = inQuotes().ReplaceAllString(line, "${1} ${2}")
	line = tableRow().ReplaceAllString(line, "${1} ${2}${3}${4}:${5}(${6}${7}${8})")
	line = tabRow().ReplaceAllString(line, "${1}${2}:${3}(${4})")
	return countBar().ReplaceAllString(line, "${1}=${3}")
}
