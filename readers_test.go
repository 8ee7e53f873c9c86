package scantling_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var readerName = regexp.MustCompile(`^(Read|Parse|Unmarshal)([A-Z]\w*)?$`)

// noReaders are functions of such a name that read nothing from outside, and why, and
// readers whose fuzz target stands in the package named.
var noReaders = map[string]string{
	"internal/output/table.Readings": "lists what is to be measured",
	"internal/stow.Read":             "reads a parsed block: internal/evaluate.FuzzContents",
	"internal/figure.ParseStatus":    "one word of a table: internal/figure.FuzzReadTable",
}

// TestEveryReaderIsFuzzed: every package with an exported function that reads text or
// bytes has a fuzz target that names one, or a reason stands in the table above.
func TestEveryReaderIsFuzzed(t *testing.T) {
	readers := map[string][]string{}
	folders := map[string]bool{}
	walkSources(t, func(pkg, path string, _ []string) { folders[filepath.Dir(path)] = true })
	for folder := range folders {
		names, _ := filepath.Glob(filepath.Join(folder, "*.go"))
		fuzzed := false
		for _, name := range names {
			f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			for _, d := range f.Decls {
				fn, ok := d.(*ast.FuncDecl)
				if !ok {
					continue
				}
				if strings.HasSuffix(name, "_test.go") {
					fuzzed = fuzzed || strings.HasPrefix(fn.Name.Name, "Fuzz")
				} else if readerName.MatchString(fn.Name.Name) && (fn.Recv == nil || strings.HasPrefix(fn.Name.Name, "Unmarshal")) && fn.Type.Params.NumFields() > 0 {
					readers[folder] = append(readers[folder], fn.Name.Name)
				}
			}
		}
		if fuzzed {
			delete(readers, folder)
		}
	}
	for folder, names := range readers {
		pkg := filepath.ToSlash(folder)
		names = slices.DeleteFunc(names, func(n string) bool {
			return noReaders[pkg+"."+n] != ""
		})
		if len(names) > 0 {
			t.Errorf("%s: %v and no fuzz target", pkg, names)
		}
	}
	for entry := range noReaders {
		pkg, name, _ := strings.Cut(entry, ".")
		if !folders[filepath.FromSlash(pkg)] || name == "" {
			t.Errorf("%s: no such package", entry)
		}
	}
}
