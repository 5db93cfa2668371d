// Mutate changes a package at random in many small ways, one at a time (a sign, a bound, a condition, a number by
// one), and counts how many of them the package's own quick tests notice.
//
//	go run ./.ci/mutate [-n 60] [-seed 1] PACKAGE...
//
// A change that makes no program is none. Each is written into a copy that only the compiler sees (go test -overlay):
// no file of the project is touched. Those that were not noticed are printed with their place, for a person to judge
// whether a caller could see them; those that stand in .ci/mutate/same.txt were judged to change nothing.
package main

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/printer"
	"go/token"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// change is one small change: do makes it in the tree, undo takes it back.
type change struct {
	pos      token.Pos
	what     string
	do, undo func()
}

var swapped = map[token.Token]token.Token{
	token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL, token.REM: token.MUL,
	token.LSS: token.LEQ, token.LEQ: token.LSS, token.GTR: token.GEQ, token.GEQ: token.GTR,
	token.EQL: token.NEQ, token.NEQ: token.EQL, token.LAND: token.LOR, token.LOR: token.LAND,
	token.ADD_ASSIGN: token.SUB_ASSIGN, token.SUB_ASSIGN: token.ADD_ASSIGN, token.INC: token.DEC, token.DEC: token.INC,
}

// changes are all that can be made in a file.
func changes(f *ast.File) []change {
	var all []change
	swap := func(pos token.Pos, t *token.Token) {
		if to, ok := swapped[*t]; ok {
			from := *t
			all = append(all, change{pos, fmt.Sprintf("%s is %s", from, to), func() { *t = to }, func() { *t = from }})
		}
	}
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.BinaryExpr:
			if lit, ok := n.X.(*ast.BasicLit); !ok || lit.Kind != token.STRING {
				swap(n.OpPos, &n.Op)
			}
		case *ast.AssignStmt:
			swap(n.TokPos, &n.Tok)
		case *ast.IncDecStmt:
			swap(n.TokPos, &n.Tok)
		case *ast.IfStmt:
			cond := n.Cond
			all = append(all, change{n.Cond.Pos(), "a condition turned round", func() { n.Cond = &ast.UnaryExpr{Op: token.NOT, X: &ast.ParenExpr{X: cond}} }, func() { n.Cond = cond }})
		case *ast.BasicLit:
			if v, err := strconv.Atoi(n.Value); n.Kind == token.INT && err == nil {
				was := n.Value
				all = append(all, change{n.Pos(), fmt.Sprintf("%d is %d", v, v+1), func() { n.Value = strconv.Itoa(v + 1) }, func() { n.Value = was }})
			}
		}
		return true
	})
	return all
}

// trial is a change of a file of the package.
type trial struct {
	path string
	set  *token.FileSet
	file *ast.File
	change
}

func trials(pkg string) ([]trial, error) {
	paths, err := filepath.Glob(filepath.Join(pkg, "*.go"))
	if err != nil {
		return nil, err
	}
	var all []trial
	for _, p := range paths {
		if strings.HasSuffix(p, "_test.go") {
			continue
		}
		set := token.NewFileSet()
		f, err := parser.ParseFile(set, p, nil, parser.ParseComments)
		if err != nil {
			return nil, err
		}
		for _, c := range changes(f) {
			all = append(all, trial{p, set, f, c})
		}
	}
	return all, nil
}

// test runs the quick tests of the package with the change in it.
func (t trial) test(dir, pkg string) (built, noticed bool, err error) {
	t.do()
	defer t.undo()
	var b bytes.Buffer
	if err := printer.Fprint(&b, t.set, t.file); err != nil {
		return false, false, err
	}
	copied := filepath.Join(dir, "changed.go")
	abs, err := filepath.Abs(t.path)
	if err != nil {
		return false, false, err
	}
	overlay, err := json.Marshal(map[string]map[string]string{"Replace": {abs: copied}})
	if err != nil {
		return false, false, err
	}
	if err := os.WriteFile(copied, b.Bytes(), 0o600); err != nil {
		return false, false, err
	}
	list := filepath.Join(dir, "overlay.json")
	if err := os.WriteFile(list, overlay, 0o600); err != nil {
		return false, false, err
	}
	program := filepath.Join(dir, "changed.test")
	if exec.Command("go", "test", "-c", "-vet=off", "-overlay", list, "-o", program, "./"+pkg).Run() != nil {
		return false, false, nil
	}
	ctx, cancel := context.WithTimeout(context.Background(), 60*time.Second) // one that never ends is noticed
	defer cancel()
	c := exec.CommandContext(ctx, program, "-test.short", "-test.failfast")
	c.Dir = pkg
	return true, c.Run() != nil, nil
}

func main() {
	n := flag.Int("n", 60, "changes a package")
	seed := flag.Uint64("seed", 1, "of their choice")
	flag.Parse()
	same, _ := os.ReadFile(".ci/mutate/same.txt") // there may be none
	dir, err := os.MkdirTemp("", "mutate-")
	exitOn(err)
	defer os.RemoveAll(dir)
	for _, pkg := range flag.Args() {
		pkg = filepath.Clean(pkg)
		all, err := trials(pkg)
		exitOn(err)
		rng := rand.New(rand.NewPCG(*seed, 2))
		rng.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
		made, noticed, alike := 0, 0, 0
		for _, t := range all {
			if made == *n {
				break
			}
			at := t.set.Position(t.pos)
			line := fmt.Sprintf("%s: %s: %s", t.path, source(t.path, at.Line), t.what)
			if bytes.Contains(same, []byte(line+"\n")) {
				alike++
				continue
			}
			built, seen, err := t.test(dir, pkg)
			exitOn(err)
			switch {
			case !built:
				continue
			case seen:
				noticed++
			default:
				fmt.Printf("%s:%d: %s\n", t.path, at.Line, line)
			}
			made++
		}
		fmt.Printf("| `%s` | %d | %d | %d %% | %d |\n", pkg, made, noticed, 100*noticed/max(made, 1), alike)
	}
}

// source is a line of a file, without its indentation.
func source(path string, line int) string {
	b, err := os.ReadFile(path)
	exitOn(err)
	return strings.TrimSpace(strings.Split(string(b), "\n")[line-1])
}

func exitOn(err error) {
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
