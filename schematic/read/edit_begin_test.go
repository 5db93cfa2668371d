package read

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"
)

const begun = `version: 1
pattern: T
terms: UK
units: cm
sizes: S (M, L)
gauges:
  a: 20 sts and 20 rows over 10 cm in dc
pieces:
  - piece: A
    sections:
      - cast on: 41 (44, 48) # as drawn
      - even: 10 rows
      # the last
      - bind off: all
  - piece: B
    sections:
      - cast on: 30
      - decrease: 1
        at: both edges
        every: 4 rows
        times: 2
`

// Every kind of entry, in every list that can have it, is read without an error and
// leaves the comments; what must be asked for is a name that is there.
func TestEveryKindOfEntryThatAListCanHaveIsRead(t *testing.T) {
	lists := map[string]string{
		"section": "pieces/0/sections/1", "first section": "pieces/0/sections/0", "piece": "pieces/1",
		"part": "pieces/0/sections/2/divide/0", "panel": "pieces/0/sections/2/panels/0", "shaping": "pieces/0/sections/2/shape/0",
		"spacing": "pieces/1/sections/1/then/0", "join": "joins/0", "line": "notes/0", "material": "yarn/0",
		"join part": "pieces/0/sections/2/join parts/0", "start": "pieces/1/sections/0/start from/0",
	}
	asked := map[string]string{"mirror of": "A", "band": "A side", "sew": "A side", "part": "Second part", "piece": "A"}
	for list, path := range lists {
		src := []byte(begun)
		change := func(c Change) {
			t.Helper()
			out, err := Edit(src, c)
			require.NoError(t, err, "%s: %+v", list, c)
			src = out
		}
		switch list {
		case "part", "panel", "shaping", "join part": // the section that has such a list
			kind := map[string]string{"part": "divide", "panel": "panels", "shaping": "shape", "join part": "divide"}[list]
			change(Change{Act: Insert, Path: "pieces/0/sections/1", Key: kind})
			if list == "join part" {
				change(Change{Act: Insert, Path: "pieces/0/sections/2", Key: "join parts"})
				path = "pieces/0/sections/3/join parts/0"
			}
		case "spacing":
			change(Change{Act: Put, Path: "pieces/1/sections/1", Key: "then"})
		case "start":
			change(Change{Act: Begin, Path: "pieces/1/sections/0", Key: "start from"})
		case "join":
			change(Change{Act: Put, Key: "joins", Value: "A side"})
		case "material":
			change(Change{Act: Put, Key: "yarn", Value: "wool: any"})
		case "line":
			src = []byte(strings.Replace(begun, "sizes: S (M, L)\n", "sizes: S (M, L)\nnotes:\n  - One.\n", 1))
		}
		require.NotEmpty(t, entries()[list], list)
		for _, e := range entries()[list] {
			c := Change{Act: Insert, Path: path, Key: e.name}
			if list == "first section" {
				c.Act = Begin
				if e.name == "start from" {
					c.Path = "pieces/1/sections/0"
				}
			}
			if e.ask != "" {
				_, err := Edit(src, c)
				assert.ErrorContains(t, err, e.ask, "%s %s", list, e.name)
				c.Value = "a line: \"so\""
				if v := asked[e.name]; v != "" {
					c.Value = v
				}
			}
			out, err := Edit(src, c)
			if !assert.NoError(t, err, "%s %s", list, e.name) {
				continue
			}
			_, found := Pattern("t", out)
			assert.Empty(t, found, "%s %s:\n%s", list, e.name, out)
			assert.Contains(t, string(out), "# the last")
			if list == "material" || list == "line" {
				assert.Contains(t, string(out), `"a line: \"so\""`)
			}
		}
	}
	for list := range entries() {
		assert.NotEmpty(t, lists[list], list)
	}
	for _, kind := range leads() {
		named := func(list string) bool {
			return slices.ContainsFunc(entries()[list], func(e entry) bool { return e.name == kind })
		}
		assert.True(t, named("section") || named("first section") || kind == "pick up", "the form can't begin a section %q", kind) // a pick-up comes with its band
	}
}

// 41 (44, 48) stitches: 20 and 21, 22 and 22, 24 and 24; a sideways rib of as many rows.
func TestWhatBeginsTakesTheStitchesThatThereAre(t *testing.T) {
	after := func(first, last int) []int {
		assert.LessOrEqual(t, first, last)
		return []int{41, 44, 48}
	}
	out, err := Edit([]byte(begun), Change{Act: Insert, Path: "pieces/0/sections/1", Key: "divide", After: after})
	require.NoError(t, err)
	assert.Contains(t, string(out), "part: First part\n            stitches: 20 (22, 24)\n")
	assert.Contains(t, string(out), "part: Second part\n            stitches: 21 (22, 24)\n")
	again, err := Edit(out, Change{Act: Insert, Path: "pieces/0/sections/2", Key: "join parts"})
	require.NoError(t, err)
	assert.Contains(t, string(again), "      - join parts:\n          - First part\n          - Second part\n      # the last\n")
	other, err := Edit(again, Change{Act: Insert, Path: "pieces/0/sections/3", Key: "divide"})
	require.NoError(t, err)
	assert.Contains(t, string(other), "part: First part 2\n", "names are new")

	for kind, want := range map[string]string{
		"chain":    "- chain: 42 (45, 49)\n        stitches: 41 (44, 48)\n      - even",
		"sideways": "- sideways: rib\n        stitches: 8\n        rows: 41 (44, 48)\n      - pick up: 1 in each row\n      - even",
		"ring":     "- ring: 41 (44, 48)\n      - even",
	} {
		out, err := Edit([]byte(begun), Change{Act: Begin, Path: "pieces/0/sections/0", Key: kind, After: after})
		require.NoError(t, err)
		assert.Contains(t, string(out), want)
		back, err := Edit(out, Change{Act: Begin, Path: "pieces/0/sections/0", Key: "cast on", After: after})
		require.NoError(t, err)
		assert.Equal(t, strings.Replace(begun, " # as drawn", "", 1), string(back), "a rib goes with what is picked up along it")
	}
	_, err = Edit([]byte(begun), Change{Act: Begin, Path: "pieces/0/sections/1", Key: "chain"})
	assert.ErrorContains(t, err, "first section")
	_, err = Edit([]byte(begun), Change{Act: Begin, Path: "pieces/0/sections/0", Key: "start from"})
	assert.ErrorContains(t, err, "no piece before it")
}

func TestANameCanBeAddedToAMappingOfNames(t *testing.T) {
	out, err := Edit([]byte(begun), Change{Act: Put, Path: "gauges", Key: "rib", Value: "22 sts and 30 rows over 10 cm"})
	require.NoError(t, err)
	assert.Contains(t, string(out), "in dc\n  rib: 22 sts and 30 rows over 10 cm\npieces:")
	out, err = Edit(out, Change{Act: Put, Key: "finished", Name: "bust", Value: "80 (88, 96) cm"})
	require.NoError(t, err)
	assert.Contains(t, string(out), "finished:\n  bust: 80 (88, 96) cm\n")
	out, err = Edit(out, Change{Act: Put, Key: "bodies", Name: "bust: high", Value: "76 (82, 90) cm"})
	require.NoError(t, err)
	assert.Contains(t, string(out), "bodies:\n  \"bust: high\": 76 (82, 90) cm\n")
	_, err = Edit([]byte(begun), Change{Act: Put, Key: "bodies", Name: "bust", Value: "a: [b"})
	assert.Error(t, err)
	_, err = Edit([]byte(begun), Change{Act: Put, Key: "bodies", Name: "a\nb", Value: "1"})
	assert.Error(t, err)
}

// full.yaml has every key and every kind of section: each value that stands in it, but
// for the block of rows, is a field of the form, and one that can be changed there.
func TestTheFormHasAFieldForEveryValueOfEverySection(t *testing.T) {
	src := patterns(t)["full.yaml"]
	fields, groups := allFields(t, src)
	has := map[string]Field{}
	for _, f := range fields {
		has[f.Path] = f
	}
	for _, g := range groups { // a section that is a word alone
		has[g.Path] = Field{}
	}
	r, root := whole(src)
	kinds, values := map[string]bool{}, 0
	var walk func(n *yaml.Node, path string)
	walk = func(n *yaml.Node, path string) {
		switch n.Kind {
		case yaml.MappingNode:
			if k := r.kind(n); k != nil && strings.Contains(path, "sections/") {
				kinds[k.name] = true
			}
			for _, p := range pairs(n, r) {
				if k := spaced(p.at.Value); k != "fold" && k != "gather" && k != "rows" || p.val.Kind == yaml.ScalarNode && p.val.Style&yaml.LiteralStyle == 0 && k == "rows" {
					walk(p.val, under(path, k))
				}
			}
		case yaml.SequenceNode:
			for i, c := range elements(n, r) {
				walk(c, under(path, strconv.Itoa(i)))
			}
		default:
			f, ok := has[path]
			assert.True(t, ok, "%s: %s has no field", path, n.Value)
			assert.False(t, f.Fixed, path)
			values++
		}
	}
	walk(root, "")
	t.Logf("%d values, %d fields", values, len(fields))
	assert.Greater(t, values, 200)
	for _, k := range leads() {
		assert.True(t, kinds[k] || k == "fold" || k == "gather", "%s is not in full.yaml", k)
	}
}

const bare = `version: 1
pattern: Sorrel
terms: US
units: cm
sizes: S (M)
gauges:
  fabric: 20 sts and 28 rows over 10 cm
pieces:
  - piece: Back
    sections:
      - cast on: 90 (100)
      - even: 80 rows
      - bind off: all
  - piece: Front
    sections:
      - cast on: 90 (100)
      - even: 80 rows
      - bind off: all
`

// What a form shows before it is there begins with any of its keys, at any depth, and goes with the last of them.
func TestAMappingThatIsNotThereBeginsWithAnyOfItsKeys(t *testing.T) {
	_, groups := allFields(t, []byte(bare))
	can := map[string]int{}
	for _, g := range groups {
		can[g.Path] = len(g.Can)
	}
	assert.Equal(t, len(drawingKeys.keys)-1, can["drawing"], "every key but the colours, which are a group")
	assert.Equal(t, len(colourKeys.keys), can["drawing/colours"])
	for _, c := range []struct {
		change Change
		want   string
	}{
		{Change{Path: "drawing", Key: "hide", Value: "cross back, neck width"}, "drawing:\n  hide: cross back, neck width\n"},
		{Change{Path: "drawing", Key: "names", Name: "neck width", Value: "Neck"}, "drawing:\n  names:\n    neck width: Neck\n"},
		{Change{Path: "drawing/colours", Key: "line", Value: "#26323f"}, "drawing:\n  colours:\n    line: \"#26323f\"\n"},
	} {
		c.change.Act = Put
		out, err := Edit([]byte(bare), c.change)
		require.NoError(t, err)
		assert.Contains(t, string(out), c.want)
		p, found := Pattern("sorrel.yaml", out)
		require.NotNil(t, p, "%v", found)
		path := under(c.change.Path, c.change.Key)
		if c.change.Name != "" {
			path = under(path, c.change.Name)
		}
		back, err := Edit(out, Change{Act: Set, Path: path, Cell: -1})
		require.NoError(t, err, path)
		assert.Equal(t, bare, string(back))
	}
	for _, c := range []Change{
		{Act: Put, Path: "drawing", Key: "no such key", Value: "x"}, {Act: Put, Path: "drawing", Key: "hide"}, {Act: Put, Path: "pieces/0/motifs", Key: "across", Value: "10 cm"},
		{Act: Put, Path: "nothing/colours", Key: "line", Value: "x"}, {Act: Set, Path: "drawing", Cell: -1},
	} {
		_, err := Edit([]byte(bare), c)
		assert.Error(t, err, "%+v", c)
	}
}

// Notes are lines from the first one on, and the last of them goes with their key; what is needed stays.
func TestTheLastLineOfAListGoesWithIt(t *testing.T) {
	out, err := Edit([]byte(bare), Change{Act: Put, Key: "notes", Value: "Wash before use: it felts."})
	require.NoError(t, err)
	assert.Contains(t, string(out), "notes:\n  - \"Wash before use: it felts.\"\n")
	more, err := Edit(out, Change{Act: Insert, Path: "notes/0", Key: "line", Value: "Dry flat."})
	require.NoError(t, err)
	less, err := Edit(more, Change{Act: Take, Path: "notes/1"})
	require.NoError(t, err)
	assert.Equal(t, string(out), string(less))
	none, err := Edit(out, Change{Act: Take, Path: "notes/0"})
	require.NoError(t, err)
	assert.Equal(t, bare, string(none))
	for _, c := range []Change{{Act: Take, Path: "pieces/0/sections/0"}, {Act: Set, Path: "gauges/fabric", Cell: -1}} {
		one, err := Edit([]byte(strings.Replace(bare, "      - even: 80 rows\n      - bind off: all\n", "", 1)), c)
		assert.ErrorContains(t, err, "needed", "%s", one)
	}
}

// An edge is begun sewn to the edge of its name on the next piece.
func TestAJoinBeginsWithTheEdgeOfTheNextPiece(t *testing.T) {
	for edge, mate := range map[string]string{"Back shoulder": "Front shoulder", "Front side": "Back side", "Hood": "Hood"} {
		out, err := Edit([]byte(bare), Change{Act: Put, Key: "joins", Value: edge})
		require.NoError(t, err)
		assert.Contains(t, string(out), "joins:\n  - sew: "+edge+"\n    to: "+mate+"\n")
		_, groups := allFields(t, out)
		assert.True(t, slices.ContainsFunc(groups, func(g Group) bool { return g.Path == "joins/0" && g.Title == edge }), "it is called by its edge")
	}
}

// Where the edges are known, a join begins with one that there is: the top of a sleeve goes into an armhole.
func TestAJoinBeginsWithAnEdgeThatThereIs(t *testing.T) {
	edges := []string{"Back cast-on edge", "Back side", "Back armhole", "Back shoulder", "Front cast-on edge", "Front side", "Front top"}
	for edge, mate := range map[string]string{"Back shoulder": "Front cast-on edge", "Back side": "Front side", "Front top": "Back armhole", "Hood": "Hood"} {
		out, err := Edit([]byte(bare), Change{Act: Put, Key: "joins", Value: edge, Edges: func() []string {
			if edge == "Back shoulder" {
				return []string{"Back shoulder", "Front cast-on edge"}
			}
			return edges
		}})
		require.NoError(t, err)
		assert.Contains(t, string(out), "joins:\n  - sew: "+edge+"\n    to: "+mate+"\n")
	}
}

// A shaped armhole is a twelfth bound off and as much decreased at each edge, and one edge all the way.
func TestAShapedArmholeIsOneEdge(t *testing.T) {
	out, err := Edit([]byte(bare), Change{Act: Insert, Path: "pieces/0/sections/1", Key: "shaped armhole", After: func(int, int) []int { return []int{96, 108} }})
	require.NoError(t, err)
	assert.Contains(t, string(out), "      - bind off: 8 (9)\n        at: both edges\n        edge: armhole\n      - decrease: 1\n")
	assert.Contains(t, string(out), "        times: 8 (9)\n        edge: armhole\n      - even: 40 rows\n        left edge: armhole\n        right edge: armhole\n      - bind off: all\n")
	p, found := Pattern("sorrel.yaml", out)
	require.NotNil(t, p)
	assert.False(t, found.Errors(), "%v", found)
}

// A shaped neck ends in its shoulders, which take the place of what bound off all; of other rows nothing goes.
func TestAShapedNeckTakesThePlaceOfTheLastBindOff(t *testing.T) {
	out, err := Edit([]byte(bare), Change{Act: Insert, Path: "pieces/0/sections/1", Key: "shaped neck"})
	require.NoError(t, err)
	assert.Equal(t, strings.Count(bare, "      - bind off: all")-1, strings.Count(string(out), "\n      - bind off: all"))
	p, found := Pattern("sorrel.yaml", out)
	require.NotNil(t, p, "%v", found)
	out, err = Edit([]byte(bare), Change{Act: Insert, Path: "pieces/0/sections/0", Key: "shaped neck"})
	require.NoError(t, err)
	assert.Contains(t, string(out), "      - even: 80 rows\n      - bind off: all\n  - piece: Front")
}

// What takes the name of something says of what, so that a form can offer those that there are.
func TestAFieldSaysWhatItsValueIsTheNameOf(t *testing.T) {
	out, err := Edit([]byte(bare), Change{Act: Put, Key: "joins", Value: "Back shoulder"})
	require.NoError(t, err)
	fields, groups := allFields(t, out)
	called := map[string]Called{}
	for _, f := range fields {
		called[f.Path] = f.Names
	}
	assert.Equal(t, edgeName, called["joins/0/sew"])
	assert.Equal(t, edgeName, called["joins/0/to"])
	assert.Empty(t, called["pieces/0/piece"], "a new name")
	can := map[string]Called{}
	for _, g := range groups {
		for _, k := range g.Can {
			can[g.Path+" "+k.Name] = k.Names
		}
	}
	assert.Equal(t, gaugeName, can["pieces/0 gauge"])
	assert.Equal(t, pieceName, can["pieces/0 mirror of"])
	assert.Equal(t, measureName, can[" finished"])
	for _, k := range Entries()["join"] {
		assert.Equal(t, edgeName, k.Names)
	}
}
