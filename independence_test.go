package scantling_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// sources parses the files of a folder that are not tests.
func sources(t *testing.T, folder string) []*ast.File {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil || len(names) == 0 {
		t.Fatal(folder, err)
	}
	var out []*ast.File
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, f)
	}
	return out
}

// TestCheckerSharesNoCode: the checker of cutting diagrams (package conform) sees the
// package of the problem for its plain types alone. Of the code there it calls the walk
// over a diagram's pieces and nothing else, and every other package below optimise is
// on the forbid list, so that one that is added must be put there.
func TestCheckerSharesNoCode(t *testing.T) {
	functions, methods := map[string]bool{}, map[string]bool{}
	for _, f := range sources(t, "internal/optimise/problem") {
		for _, d := range f.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Recv == nil {
				functions[fn.Name.Name] = true
			} else if ok {
				methods[fn.Name.Name] = true
			}
		}
	}
	if !functions["name"] || !methods["Check"] {
		t.Fatal("the sources were not read")
	}
	checked := 0
	for _, f := range sources(t, "internal/optimise/conform") {
		if slices.ContainsFunc(f.Imports, func(i *ast.ImportSpec) bool { return i.Path.Value == `"testing"` }) {
			continue // the suite, which drives solvers
		}
		checked++
		for _, d := range f.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok {
				delete(methods, fn.Name.Name) // its own of the same name
			}
		}
		ast.Inspect(f, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			if s, ok := call.Fun.(*ast.SelectorExpr); ok && s.Sel.Name != "Nodes" {
				x, _ := s.X.(*ast.Ident)
				if x != nil && x.Name == "problem" && functions[s.Sel.Name] || methods[s.Sel.Name] {
					t.Errorf("the checker calls %s of the problem's package", s.Sel.Name)
				}
			}
			return true
		})
	}
	if checked < 2 {
		t.Errorf("%d files of the checker were read", checked)
	}
	forbidden := readPairs(forbid)["internal/optimise/conform"]
	entries, err := os.ReadDir("internal/optimise")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		own := []string{"conform", "problem", "problems"}
		if e.IsDir() && !slices.Contains(own, e.Name()) && !anyCovers(forbidden, "internal/optimise/"+e.Name()) {
			t.Errorf("internal/optimise/%s may be imported by the checker: put it on the forbid list", e.Name())
		}
	}
	if !anyCovers(forbidden, "internal/optimise") {
		t.Error("the engine itself is not forbidden")
	}
}
