package scantling_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// Sizes beyond which a file, a function or a package is looked at again. What
// stays larger stands in testdata/house.txt with the reason.
const (
	fileLines     = 400
	functionLines = 60
	packageLines  = 2500
)

// A source is one parsed file of the product, tests apart.
type source struct {
	pkg, path string
	text      string
	fset      *token.FileSet
	file      *ast.File
}

func (s source) at(n ast.Node) string {
	return fmt.Sprintf("%s:%d", s.path, s.fset.Position(n.Pos()).Line)
}

// lines returns how many lines the node takes.
func (s source) lines(n ast.Node) int {
	return s.fset.Position(n.End()).Line - s.fset.Position(n.Pos()).Line + 1
}

// readHouse parses every source of the product.
func readHouse(t *testing.T) []source {
	t.Helper()
	var all []source
	walkSources(t, func(pkg, path string, _ []string) {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		fset := token.NewFileSet()
		f, err := parser.ParseFile(fset, path, text, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, source{pkg, filepath.ToSlash(path), string(text), fset, f})
	})
	if len(all) == 0 {
		t.Fatal("no sources read")
	}
	return all
}

// TestPackagesSayWhatTheyAre checks that every package has a doc.go with a
// package comment and a name that says what it is for.
func TestPackagesSayWhatTheyAre(t *testing.T) {
	said := map[string]bool{}
	nothing := []string{"util", "utils", "common", "helper", "helpers", "manager", "base", "misc", "shared", "lib"}
	for _, s := range readHouse(t) {
		said[s.pkg] = said[s.pkg] || path.Base(s.path) == "doc.go" && s.file.Doc != nil
		if slices.Contains(nothing, s.file.Name.Name) || slices.Contains(nothing, path.Base(s.pkg)) {
			t.Errorf("%s: a package called %s says nothing; name it for what it holds", s.path, s.file.Name.Name)
		}
	}
	for _, pkg := range slices.Sorted(maps.Keys(said)) {
		if !said[pkg] {
			t.Errorf("%s: no doc.go with a package comment", pkg)
		}
	}
}

// TestExportedNamesAreDocumented checks types, functions, methods of exported
// types, constants and variables. A comment on a group serves all in it.
func TestExportedNamesAreDocumented(t *testing.T) {
	for _, s := range readHouse(t) {
		for _, d := range s.file.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if d.Name.IsExported() && d.Doc == nil && ast.IsExported(receiver(d)) {
					t.Errorf("%s: %s is not documented", s.at(d), d.Name.Name)
				}
			case *ast.GenDecl:
				for _, spec := range d.Specs {
					for _, name := range undocumented(d, spec) {
						t.Errorf("%s: %s is not documented", s.at(spec), name)
					}
				}
			}
		}
	}
}

// undocumented returns the exported names of a declaration that neither it nor
// its group explains.
func undocumented(d *ast.GenDecl, spec ast.Spec) []string {
	var names []string
	switch spec := spec.(type) {
	case *ast.TypeSpec:
		if spec.Name.IsExported() && spec.Doc == nil && d.Doc == nil {
			names = append(names, spec.Name.Name)
		}
	case *ast.ValueSpec:
		for _, n := range spec.Names {
			if n.IsExported() && spec.Doc == nil && spec.Comment == nil && d.Doc == nil {
				names = append(names, n.Name)
			}
		}
	}
	return names
}

// receiver returns the name of a method's type, and of a function an exported
// name, so that it counts as seen.
func receiver(d *ast.FuncDecl) string {
	if d.Recv == nil {
		return d.Name.Name
	}
	x := d.Recv.List[0].Type
	for {
		switch y := x.(type) {
		case *ast.StarExpr:
			x = y.X
		case *ast.IndexExpr:
			x = y.X
		case *ast.IndexListExpr:
			x = y.X
		case *ast.Ident:
			return y.Name
		default:
			return ""
		}
	}
}

// TestLargeThingsHaveAReason checks that what is larger than the guide stands in
// testdata/house.txt with a reason, and that nothing else does.
func TestLargeThingsHaveAReason(t *testing.T) {
	large := map[string]int{}
	size := map[string]int{}
	for _, s := range readHouse(t) {
		n := strings.Count(s.text, "\n")
		size["package "+s.pkg] += n
		if n > fileLines {
			large["file "+s.path] = n
		}
		for _, d := range s.file.Decls {
			if f, ok := d.(*ast.FuncDecl); ok && s.lines(f) > functionLines {
				name := f.Name.Name
				if f.Recv != nil {
					name = receiver(f) + "." + name
				}
				large["function "+s.path+" "+name] = s.lines(f)
			}
		}
	}
	for pkg, n := range size {
		if n > packageLines {
			large[pkg] = n
		}
	}
	reasons := readReasons(t)
	for _, what := range slices.Sorted(maps.Keys(large)) {
		if reasons[what] == "" {
			t.Errorf("%s: %d lines; look again, or give testdata/house.txt a line %q", what, large[what], what+": reason")
		}
	}
	for _, what := range slices.Sorted(maps.Keys(reasons)) {
		if large[what] == 0 {
			t.Errorf("testdata/house.txt: %s is no longer large; strike the line", what)
		}
	}
}

// readReasons reads the list of large things: "kind place: reason", one a line.
func readReasons(t *testing.T) map[string]string {
	t.Helper()
	text, err := os.ReadFile("testdata/house.txt")
	if err != nil {
		t.Fatal(err)
	}
	reasons := map[string]string{}
	for line := range strings.Lines(string(text)) {
		if line = strings.TrimSpace(line); line == "" || line[0] == '#' {
			continue
		}
		what, why, _ := strings.Cut(line, ": ")
		if why == "" || reasons[what] != "" {
			t.Errorf("testdata/house.txt: %q has no reason or stands twice", what)
		}
		reasons[what] = why
	}
	return reasons
}

// Words that a finished source does not hold: marks of unfinished work, and
// folders of one machine. They are written apart, so that this file is clean.
var (
	unfinished = regexp.MustCompile(`\b(TO` + `DO|FIX` + `ME|X` + `XX)\b|(?i)not (yet )?impl` + `emented`)
	machine    = regexp.MustCompile(`["' ` + "`" + `(]/(work|tmp|home|root|Users)/`)
)

// TestSourcesAreFinished reads every source of every language, tests included.
func TestSourcesAreFinished(t *testing.T) {
	kinds := []string{".go", ".ts", ".js", ".mjs", ".svelte", ".css", ".sh", ".py", ".hcl", ".md", ".txt", ".json"}
	read := 0
	err := filepath.WalkDir(".", func(name string, d os.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() {
			if base := d.Name(); base == "node_modules" || base == "dist" || base == "out" || len(base) > 1 && base[0] == '.' {
				return filepath.SkipDir
			}
			return nil
		}
		if !slices.Contains(kinds, filepath.Ext(name)) {
			return nil
		}
		text, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		read++
		n := 0
		for line := range strings.Lines(string(text)) {
			n++
			for _, bad := range []*regexp.Regexp{unfinished, machine} {
				if found := bad.FindString(line); found != "" {
					t.Errorf("%s:%d: %q", name, n, found)
				}
			}
		}
		return nil
	})
	if err != nil || read == 0 {
		t.Fatalf("%d files read: %v", read, err)
	}
}

// away lists calls that answer differently by machine or by hour, or that write
// where nobody asked, and the packages that may make them ("" for none).
var away = map[string]string{
	"math.Exp": "", "math.Exp2": "", "math.Expm1": "", "math.Pow": "", "math.Log1p": "",
	"math.Tanh": "", "math.Sinh": "", "math.Cosh": "", "math.Hypot": "", "math.FMA": "",
	"time.Now": "internal/surface/ cmd/", "time.Since": "internal/surface/ cmd/",
	"fmt.Print": "internal/surface/ cmd/", "fmt.Printf": "internal/surface/ cmd/", "fmt.Println": "internal/surface/ cmd/",
	"rand.Int": "", "rand.IntN": "", "rand.Float64": "", "rand.Perm": "", "rand.Shuffle": "",
	"os.Getenv": "internal/outside internal/surface/ cmd/",
}

// TestCallsThatDifferByMachine checks that nothing which reaches bytes is read
// off a clock, a seedless source or a function that differs between platforms.
// Exp and its kin are assembly on some machines only, and so is Hypot.
func TestCallsThatDifferByMachine(t *testing.T) {
	for _, s := range readHouse(t) {
		homes := importNames(s.file)
		ast.Inspect(s.file, func(n ast.Node) bool {
			sel, ok := n.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			x, ok := sel.X.(*ast.Ident)
			if !ok || homes[x.Name] == "" {
				return true
			}
			call := path.Base(strings.TrimSuffix(homes[x.Name], "/v2")) + "." + sel.Sel.Name
			if allowed, listed := away[call]; listed && !anyCovers(strings.Fields(allowed), s.pkg) {
				t.Errorf("%s: %s is not to be called in %s", s.at(sel), call, s.pkg)
			}
			return true
		})
	}
}

// importNames maps the names that a file calls its imports by to their paths.
func importNames(f *ast.File) map[string]string {
	names := map[string]string{}
	for _, spec := range f.Imports {
		p, _ := strconv.Unquote(spec.Path.Value)
		name := path.Base(strings.TrimSuffix(p, "/v2"))
		if spec.Name != nil {
			name = spec.Name.Name
		}
		names[name] = p
	}
	return names
}
