// Mutate changes a package at random in many small ways, one at a time (a sign, a bound, a condition, a number by
// one), and counts how many of them the package's own quick tests notice.
//
//	go run ./.ci/mutate [-n 60] [-seed 1] PACKAGE...
//
// All of them are compiled into one test program, each behind its number, and the program is run once for each: no file
// of the project is touched. A change that makes no program is none, and so is one of a constant. One that the tests do not
// even reach is not noticed, without a run. Those that were not noticed are printed with their place, for a person to judge
// whether a caller could see them; those that stand in .ci/mutate/same.txt were judged to change nothing.
package main

import (
	"bytes"
	"cmp"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"
)

// change is one small change of the text between two places of a file: of gives the text with both ways in it, out of
// the texts of its parts.
type change struct {
	file     *source
	from, to token.Pos
	at       token.Pos // where it is told
	what     string
	of       func(on string, part func(ast.Node) string) string
}

// turned is the change of a whole condition.
const turned = "a condition turned round"

// kind puts a whole condition before the changes within it that are as long.
func (c change) kind() string {
	if c.what == turned {
		return ""
	}
	return c.what
}

var swapped = map[token.Token]token.Token{
	token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL, token.REM: token.MUL,
	token.LSS: token.LEQ, token.LEQ: token.LSS, token.GTR: token.GEQ, token.GEQ: token.GTR,
	token.EQL: token.NEQ, token.NEQ: token.EQL, token.LAND: token.LOR, token.LOR: token.LAND,
	token.ADD_ASSIGN: token.SUB_ASSIGN, token.SUB_ASSIGN: token.ADD_ASSIGN, token.INC: token.DEC, token.DEC: token.INC,
}

// source is a file of a package.
type source struct {
	path string
	text []byte
	tree *ast.File
}

// pack is a package with the types of its expressions.
type pack struct {
	dir   string
	set   *token.FileSet
	files []*source
	conf  types.Config
	info  types.Info
}

func load(dir string) (*pack, error) {
	list := exec.Command("go", "list", "-export", "-deps", "-json=Dir,ImportPath,Export,GoFiles", "./"+dir)
	out, err := list.Output()
	if err != nil {
		return nil, err
	}
	p := &pack{dir: dir, set: token.NewFileSet(), info: types.Info{Types: map[ast.Expr]types.TypeAndValue{}}}
	exports := map[string]string{}
	var last struct {
		Dir, ImportPath, Export string
		GoFiles                 []string
	}
	for d := json.NewDecoder(bytes.NewReader(out)); d.More(); {
		last.GoFiles = nil
		if err := d.Decode(&last); err != nil {
			return nil, err
		}
		exports[last.ImportPath] = last.Export
	}
	for _, name := range last.GoFiles { // the package itself comes behind all that it imports
		text, err := os.ReadFile(filepath.Join(last.Dir, name))
		if err != nil {
			return nil, err
		}
		path := filepath.Join(dir, name)
		tree, err := parser.ParseFile(p.set, path, text, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		p.files = append(p.files, &source{path, text, tree})
	}
	p.conf = types.Config{Importer: importer.ForCompiler(p.set, "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })}
	return p, p.check(func(f *source) *ast.File { return f.tree }, &p.info)
}

func (p *pack) check(tree func(*source) *ast.File, info *types.Info) error {
	var trees []*ast.File
	for _, f := range p.files {
		trees = append(trees, tree(f))
	}
	_, err := p.conf.Check("flatwright/"+filepath.ToSlash(p.dir), p.set, trees, info)
	return err
}

// changes are all that can be made in a file.
func (p *pack) changes(f *source) []change {
	var all []change
	add := func(n ast.Node, at token.Pos, what string, of func(on string, part func(ast.Node) string) string) {
		all = append(all, change{f, n.Pos(), n.End(), at, what, of})
	}
	typed := func(e ast.Expr) string {
		return types.TypeString(p.info.TypeOf(e), func(q *types.Package) string {
			if q.Path() == "flatwright/"+filepath.ToSlash(p.dir) {
				return ""
			}
			return q.Name()
		})
	}
	swap := func(n ast.Node, at token.Pos, from token.Token, of func(on, from, to string, part func(ast.Node) string) string) {
		if to, ok := swapped[from]; ok {
			add(n, at, fmt.Sprintf("%s is %s", from, to), func(on string, part func(ast.Node) string) string {
				return of(on, from.String(), to.String(), part)
			})
		}
	}
	ast.Inspect(f.tree, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.GenDecl:
			return n.Tok != token.CONST
		case *ast.BinaryExpr:
			if lit, ok := n.X.(*ast.BasicLit); ok && lit.Kind == token.STRING {
				break
			}
			swap(n, n.OpPos, n.Op, func(on, from, to string, part func(ast.Node) string) string {
				x, y := part(n.X), part(n.Y)
				return fmt.Sprintf("func() %s { if %s { return %s %s %s }; return %s %s %s }()", typed(n), on, x, to, y, x, from, y)
			})
		case *ast.AssignStmt:
			if len(n.Lhs) != 1 || len(n.Rhs) != 1 {
				break
			}
			swap(n, n.TokPos, n.Tok, func(on, from, to string, part func(ast.Node) string) string {
				x, y := part(n.Lhs[0]), part(n.Rhs[0])
				return fmt.Sprintf("func() { if %s { %s %s %s } else { %s %s %s } }()", on, x, to, y, x, from, y)
			})
		case *ast.IncDecStmt:
			swap(n, n.TokPos, n.Tok, func(on, from, to string, part func(ast.Node) string) string {
				return fmt.Sprintf("func() { if %s { %s%s } else { %s%s } }()", on, part(n.X), to, part(n.X), from)
			})
		case *ast.IfStmt:
			add(n.Cond, n.Cond.Pos(), turned, func(on string, part func(ast.Node) string) string {
				return fmt.Sprintf("%s != bool(%s)", on, part(n.Cond))
			})
		case *ast.BasicLit:
			if v, err := strconv.Atoi(n.Value); n.Kind == token.INT && err == nil {
				add(n, n.Pos(), fmt.Sprintf("%d is %d", v, v+1), func(on string, _ func(ast.Node) string) string {
					return fmt.Sprintf("func() %s { if %s { return %d }; return %s }()", typed(n), on, v+1, n.Value)
				})
			}
		}
		return true
	})
	return all
}

// numbered is a change behind its number.
type numbered struct {
	change
	number int
}

// written is a file with changes in it, each behind its number.
func (p *pack) written(f *source, all []numbered) string {
	all = slices.DeleteFunc(slices.Clone(all), func(c numbered) bool { return c.file != f })
	slices.SortStableFunc(all, func(a, b numbered) int { // outer ones first, and a condition before what it says
		return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(b.to, a.to), strings.Compare(a.kind(), b.kind()))
	})
	at := func(q token.Pos) int { return p.set.Position(q).Offset }
	var text func(from, to, next int) string
	text = func(from, to, next int) string {
		var b strings.Builder
		for i := next; i < len(all); i++ {
			c := all[i]
			if at(c.from) < from || at(c.to) > to {
				continue
			}
			b.Write(f.text[from:at(c.from)])
			b.WriteString(c.of(fmt.Sprintf("mutant(%d)", c.number), func(n ast.Node) string { return text(at(n.Pos()), at(n.End()), i+1) }))
			from = at(c.to)
		}
		b.Write(f.text[from:to])
		return b.String()
	}
	return text(0, len(f.text), 0)
}

// switches tells which change is in force, and writes down which of them the tests come by.
const switches = `package %s

import ("os"; "strconv"; "sync/atomic")

var mutantOn = func() int { n, _ := strconv.Atoi(os.Getenv("MUTANT")); return n }()
var mutantsMet [%d]atomic.Bool

func mutant(n int) bool {
	if mutantOn == 0 && !mutantsMet[n].Swap(true) {
		f, _ := os.OpenFile(os.Getenv("MUTANTS_MET"), os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o600)
		f.WriteString(strconv.Itoa(n) + "\n")
		f.Close()
	}
	return mutantOn == n
}
`

// makes reports whether a change alone makes a program.
func (p *pack) makes(c change) bool {
	all := []numbered{{c, 1}}
	tree, err := parser.ParseFile(p.set, c.file.path, p.written(c.file, all), 0)
	if err != nil {
		return false
	}
	more, err := parser.ParseFile(p.set, "mutant.go", "package "+c.file.tree.Name.Name+"\nfunc mutant(int) bool { return true }\n", 0)
	if err != nil {
		return false
	}
	extra := &source{tree: more}
	q := *p
	q.files = append(slices.Clone(p.files), extra)
	return q.check(func(f *source) *ast.File {
		if f == c.file {
			return tree
		}
		return f.tree
	}, nil) == nil
}

// trial is the test program of a package with all changes in it.
type trial struct {
	dir, program string
	took         time.Duration // of the tests when nothing is changed
	met          map[int]bool
}

// overlay writes the files as changed, and which of the package's they stand for.
func (p *pack) overlay(tmp string, all []numbered) (string, error) {
	replace := map[string]string{}
	put := func(path, text string) error {
		abs, err := filepath.Abs(path)
		if err != nil {
			return err
		}
		replace[abs] = filepath.Join(tmp, filepath.Base(path))
		return os.WriteFile(replace[abs], []byte(text), 0o600)
	}
	for _, f := range p.files {
		if slices.ContainsFunc(all, func(c numbered) bool { return c.file == f }) {
			if err := put(f.path, p.written(f, all)); err != nil {
				return "", err
			}
		}
	}
	if err := put(filepath.Join(p.dir, "mutant_switches.go"), fmt.Sprintf(switches, p.files[0].tree.Name.Name, len(all)+1)); err != nil {
		return "", err
	}
	overlay, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return "", err
	}
	list := filepath.Join(tmp, "overlay.json")
	return list, os.WriteFile(list, overlay, 0o600)
}

// build makes the program, and runs it once with nothing changed.
func (p *pack) build(tmp string, all []numbered) (*trial, error) {
	list, err := p.overlay(tmp, all)
	if err != nil {
		return nil, err
	}
	t := &trial{dir: p.dir, program: filepath.Join(tmp, "changed.test"), took: time.Hour, met: map[int]bool{}}
	if out, err := exec.Command("go", "test", "-c", "-vet=off", "-overlay", list, "-o", t.program, "./"+p.dir).CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%w: %s", err, out)
	}
	met := filepath.Join(tmp, "met")
	started := time.Now()
	if t.notices(0, "MUTANTS_MET="+met) {
		return nil, fmt.Errorf("the tests of %s fail as they are", p.dir)
	}
	t.took = time.Since(started)
	numbers, _ := os.ReadFile(met) // there may be none
	for _, n := range strings.Fields(string(numbers)) {
		k, err := strconv.Atoi(n)
		if err != nil {
			return nil, err
		}
		t.met[k] = true
	}
	return t, nil
}

// notices reports whether the quick tests fail with a change in force. One that never ends is noticed.
func (t *trial) notices(number int, env ...string) bool {
	ctx, cancel := context.WithTimeout(context.Background(), 10*time.Second+6*t.took)
	defer cancel()
	c := exec.CommandContext(ctx, t.program, "-test.short", "-test.failfast")
	c.Dir, c.Env = t.dir, append(append(os.Environ(), env...), "MUTANT="+strconv.Itoa(number))
	return c.Run() != nil
}

func main() {
	n := flag.Int("n", 60, "changes a package")
	seed := flag.Uint64("seed", 1, "of their choice")
	flag.Parse()
	same, _ := os.ReadFile(".ci/mutate/same.txt") // there may be none
	for _, dir := range flag.Args() {
		exitOn(measure(filepath.Clean(dir), *n, *seed, same))
	}
}

func measure(dir string, n int, seed uint64, same []byte) error {
	tmp, err := os.MkdirTemp("", "mutate-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(tmp)
	p, err := load(dir)
	if err != nil {
		return err
	}
	var every []change
	for _, f := range p.files {
		every = append(every, p.changes(f)...)
	}
	rng := rand.New(rand.NewPCG(seed, 2))
	rng.Shuffle(len(every), func(i, j int) { every[i], every[j] = every[j], every[i] })
	var chosen []numbered
	alike := 0
	for _, c := range every {
		switch {
		case len(chosen) == n:
		case bytes.Contains(same, []byte(p.line(c)+"\n")):
			alike++
		case p.makes(c):
			chosen = append(chosen, numbered{c, len(chosen) + 1})
		}
	}
	t, err := p.build(tmp, chosen)
	if err != nil {
		return err
	}
	noticed := 0
	for _, c := range chosen {
		if t.met[c.number] && t.notices(c.number) {
			noticed++
			continue
		}
		reached := ""
		if !t.met[c.number] {
			reached = " (not reached)"
		}
		fmt.Printf("%s:%d: %s%s\n", c.file.path, p.set.Position(c.at).Line, p.line(c.change), reached)
	}
	fmt.Printf("| `%s` | %d | %d %% | %d |\n", dir, len(chosen), 100*noticed/max(len(chosen), 1), alike)
	return nil
}

// line is a change as it stands in same.txt: its file, the line of the file without its indentation, and what is changed.
func (p *pack) line(c change) string {
	lines := strings.Split(string(c.file.text), "\n")
	return fmt.Sprintf("%s: %s: %s", c.file.path, strings.TrimSpace(lines[p.set.Position(c.at).Line-1]), c.what)
}

func exitOn(err error) {
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
