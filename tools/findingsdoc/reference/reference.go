package reference

import (
	"bytes"
	"cmp"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"scantling/internal/diag"
)

// Code is one code of the analyses.
type Code struct {
	Code diag.Code
	// Package is the folder below internal/analysis, Name the constant.
	Package, Name string
	// Meaning is the sentence of its comment, Example what follows "Example:".
	Meaning, Example string
}

// from holds a package's codes and the rules of the house that it asks for.
type from struct {
	codes []Code
	rules []string
}

// Codes returns the codes by package and in the order of the sources.
func Codes(root string) ([]Code, error) {
	all, order, err := read(root)
	var out []Code
	for _, pkg := range order {
		out = append(out, all[pkg].codes...)
	}
	return out, err
}

func read(root string) (map[string]*from, []string, error) {
	all := map[string]*from{}
	top := filepath.Join(root, "internal", "analysis")
	err := filepath.WalkDir(top, func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(p, ".go") || strings.HasSuffix(p, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), p, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		below, err := filepath.Rel(top, filepath.Dir(p))
		if err != nil {
			return err
		}
		pkg := filepath.ToSlash(below)
		if all[pkg] == nil {
			all[pkg] = &from{}
		}
		all[pkg].take(pkg, f)
		return nil
	})
	var order []string
	for pkg, x := range all {
		slices.Sort(x.rules)
		x.rules = slices.Compact(x.rules)
		if len(x.codes) > 0 {
			order = append(order, pkg)
		}
	}
	slices.SortFunc(order, func(a, b string) int {
		return cmp.Or(cmp.Compare(checks(b), checks(a)), cmp.Compare(a, b))
	})
	return all, order, err
}

// checks is 1 for a check, 0 for another analysis.
func checks(pkg string) int {
	if strings.HasPrefix(pkg, "check/") {
		return 1
	}
	return 0
}

// take collects the codes and the rules of one source.
func (x *from) take(pkg string, f *ast.File) {
	names := map[string]string{} // constants that are texts
	for _, d := range f.Decls {
		g, ok := d.(*ast.GenDecl)
		if !ok || g.Tok != token.CONST {
			continue
		}
		for _, s := range g.Specs {
			v := s.(*ast.ValueSpec)
			if len(v.Names) != 1 || len(v.Values) != 1 {
				continue
			}
			text, ok := literal(v.Values[0])
			if !ok {
				continue
			}
			names[v.Names[0].Name] = text
			if t, ok := v.Type.(*ast.SelectorExpr); ok && t.Sel.Name == "Code" {
				doc := v.Doc
				if doc == nil {
					doc = g.Doc
				}
				meaning, example := comment(v.Names[0].Name, doc.Text())
				x.codes = append(x.codes, Code{diag.Code(text), pkg, v.Names[0].Name, meaning, example})
			}
		}
	}
	ast.Inspect(f, func(n ast.Node) bool {
		c, ok := n.(*ast.CallExpr)
		if !ok || len(c.Args) == 0 {
			return true
		}
		s, ok := c.Fun.(*ast.SelectorExpr)
		if !ok || !slices.Contains([]string{"Limit", "Rule", "LengthRule"}, s.Sel.Name) {
			return true
		}
		text, ok := literal(c.Args[0])
		if id, is := c.Args[0].(*ast.Ident); is && !ok {
			text, ok = names[id.Name], names[id.Name] != ""
		}
		if ok {
			x.rules = append(x.rules, text)
		}
		return true
	})
}

func literal(e ast.Expr) (string, bool) {
	l, ok := e.(*ast.BasicLit)
	if !ok || l.Kind != token.STRING {
		return "", false
	}
	s, err := strconv.Unquote(l.Value)
	return s, err == nil
}

// comment splits a constant's comment into its sentence and its example.
func comment(name, text string) (meaning, example string) {
	text = strings.Join(strings.Fields(text), " ")
	meaning, example, _ = strings.Cut(text, "Example: ")
	meaning = strings.TrimSpace(meaning)
	for _, word := range []string{name + ": ", name + " says that ", name + " is "} {
		meaning = strings.TrimPrefix(meaning, word)
	}
	return strings.TrimSpace(meaning), example
}

// Page returns docs/FINDINGS.md.
func Page(root string) ([]byte, error) {
	all, order, err := read(root)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	b.WriteString(head)
	for _, pkg := range order {
		x := all[pkg]
		fmt.Fprintf(&b, "\n### %s\n", path.Base(pkg))
		if len(x.rules) > 0 {
			fmt.Fprintf(&b, "Rules of the house: %s.\n", strings.Join(quoted(x.rules), ", "))
		}
		b.WriteString("\n| code | what it says | example |\n| --- | --- | --- |\n")
		for _, c := range x.codes {
			fmt.Fprintf(&b, "| `%s` | %s | %s |\n", c.Code, cell(c.Meaning), cell(c.Example))
		}
	}
	return b.Bytes(), nil
}

const head = `# What is told
Every code that the checks and the other analyses tell, made from the comments of the sources (` + "`go run ./tools/findingsdoc`" + `); a test holds it up to date, and
another wants a document or a test that raises each of them. Where a limit is a habit, a ` + "`rule`" + ` of that name in the shop document changes it; the limits of machines,
cutters and sheets stand with them in the shop document, clearances in the design, and those of standards nobody changes. Errors of the language itself are in
[the language](LANGUAGE.md).
`

func quoted(list []string) []string {
	var out []string
	for _, s := range list {
		out = append(out, "`"+s+"`")
	}
	return out
}

func cell(s string) string { return strings.ReplaceAll(s, "|", `\|`) }
