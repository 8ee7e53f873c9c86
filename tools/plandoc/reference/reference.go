// Package reference reads the comments of Go types and writes them as a
// reference of the JSON that the types are stored as.
package reference

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/doc"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// packages are documented in this order.
var packages = []string{"internal/plan", "internal/piece", "internal/ledger", "internal/message", "internal/diag"}

const head = `# The stored plan
` + "`plan.json`" + ` is the whole plan as plain data. This page is made from the comments of the Go types (` + "`go run ./tools/plandoc`" + `); a test holds
that it is current. Lengths are whole nanometres; a figure is ` + "`{\"nm\": 14000000, \"entry\": 12}`" + `, where ` + "`entry`" + ` numbers a line of the ledger.
Keys that are empty are left out. A reader must refuse a ` + "`schema`" + ` that it does not know.

`

// Plan returns the reference of the stored plan; root is the project's folder.
func Plan(root string) ([]byte, error) {
	var out bytes.Buffer
	out.WriteString(head)
	for _, p := range packages {
		if err := describe(&out, filepath.Join(root, filepath.FromSlash(p)), p); err != nil {
			return nil, err
		}
	}
	return out.Bytes(), nil
}

func describe(out *bytes.Buffer, dir, name string) error {
	set := token.NewFileSet()
	entries, err := os.ReadDir(dir)
	if err != nil {
		return err
	}
	var files []*ast.File
	for _, e := range entries {
		if !isSource(e) {
			continue
		}
		f, err := parser.ParseFile(set, filepath.Join(dir, e.Name()), nil, parser.ParseComments)
		if err != nil {
			return err
		}
		files = append(files, f)
	}
	p, err := doc.NewFromFiles(set, files, name)
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "## %s\n%s\n\n", name[strings.LastIndex(name, "/")+1:], oneLine(firstParagraph(p.Doc)))
	types := slices.Clone(p.Types)
	slices.SortFunc(types, func(a, b *doc.Type) int { return int(a.Decl.Pos()) - int(b.Decl.Pos()) })
	for _, t := range types {
		describeType(out, t)
	}
	return nil
}

func isSource(e fs.DirEntry) bool {
	return !e.IsDir() && strings.HasSuffix(e.Name(), ".go") && !strings.HasSuffix(e.Name(), "_test.go")
}

func describeType(out *bytes.Buffer, t *doc.Type) {
	for _, spec := range t.Decl.Specs {
		ts, ok := spec.(*ast.TypeSpec)
		if !ok || ts.Name.Name != t.Name {
			continue
		}
		switch st := ts.Type.(type) {
		case *ast.StructType:
			rows := fields(st)
			if len(rows) == 0 {
				return
			}
			fmt.Fprintf(out, "### %s\n%s\n\n| key | is | |\n| --- | --- | --- |\n%s\n", t.Name, oneLine(t.Doc), strings.Join(rows, ""))
		case *ast.Ident:
			if values := constants(t); len(values) > 0 {
				fmt.Fprintf(out, "### %s\n%s One of: %s.\n\n", t.Name, oneLine(t.Doc), strings.Join(values, ", "))
			}
		}
	}
}

// fields lists the stored fields of a struct.
func fields(st *ast.StructType) []string {
	var rows []string
	for _, f := range st.Fields.List {
		if f.Tag == nil {
			continue
		}
		tag, err := strconv.Unquote(f.Tag.Value)
		if err != nil {
			continue
		}
		key, _, _ := strings.Cut(reflect.StructTag(tag).Get("json"), ",")
		if key == "" || key == "-" {
			continue
		}
		text := oneLine(f.Doc.Text() + " " + f.Comment.Text())
		rows = append(rows, fmt.Sprintf("| `%s` | %s | %s |\n", key, typeName(f.Type), strings.ReplaceAll(text, "|", "\\|")))
	}
	return rows
}

func typeName(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.SelectorExpr:
		return e.Sel.Name
	case *ast.StarExpr:
		return typeName(e.X)
	case *ast.ArrayType:
		return "list of " + typeName(e.Elt)
	case *ast.MapType:
		return "map to " + typeName(e.Value)
	}
	return "value"
}

// constants lists the string constants of a type.
func constants(t *doc.Type) []string {
	var out []string
	for _, group := range t.Consts {
		for _, spec := range group.Decl.Specs {
			vs, ok := spec.(*ast.ValueSpec)
			if !ok {
				continue
			}
			for _, v := range vs.Values {
				if lit, ok := v.(*ast.BasicLit); ok && lit.Kind == token.STRING {
					out = append(out, "`"+strings.Trim(lit.Value, `"`)+"`")
				}
			}
		}
	}
	return out
}

func firstParagraph(s string) string {
	p, _, _ := strings.Cut(s, "\n\n")
	return p
}

func oneLine(s string) string {
	s = strings.NewReplacer("[", "", "]", "").Replace(s)
	return strings.Join(strings.Fields(s), " ")
}
