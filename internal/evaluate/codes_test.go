package evaluate

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"scantling/internal/diag"
	"scantling/internal/document"
)

// coded is one constant of a diagnostic code with the example in its comment.
type coded struct {
	name    string
	code    diag.Code
	how     string // what stands between "Example" and the colon
	example string
	made    bool // a test makes it
}

// codesOf reads the constants of the packages whose codes documents can yield.
func codesOf(t testing.TB) []coded {
	t.Helper()
	var out []coded
	for _, folder := range []string{"../document", "../formula", "../equip", "../carve/fault", "../fitting", "../stow", "."} {
		files, err := filepath.Glob(filepath.Join(folder, "codes*.go"))
		if err != nil {
			t.Fatal(err)
		}
		for _, file := range files {
			if strings.HasSuffix(file, "_test.go") {
				continue
			}
			f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ParseComments)
			if err != nil {
				t.Fatal(err)
			}
			ast.Inspect(f, func(n ast.Node) bool {
				if v, ok := n.(*ast.ValueSpec); ok && len(v.Values) == 1 {
					out = append(out, readCode(t, v))
				}
				return true
			})
		}
	}
	return out
}

func readCode(t testing.TB, v *ast.ValueSpec) coded {
	t.Helper()
	text, err := strconv.Unquote(v.Values[0].(*ast.BasicLit).Value)
	if err != nil {
		t.Fatal(err)
	}
	out := coded{name: v.Names[0].Name, code: diag.Code(text)}
	comment := v.Doc.Text()
	if !strings.HasPrefix(comment, out.name+":") {
		t.Errorf("%s: its comment does not begin with its name", out.name)
	}
	_, rest, found := strings.Cut(comment, "\nExample")
	if !found {
		out.made = strings.Contains(comment, "No document is known")
		if !out.made {
			t.Errorf("%s has no example", out.name)
		}
		return out
	}
	if strings.HasPrefix(rest, " is made by the test") {
		out.made = true
		return out
	}
	how, body, _ := strings.Cut(rest, ":\n")
	out.how = strings.TrimPrefix(how, ", ")
	for line := range strings.Lines(body) {
		out.example += strings.TrimPrefix(line, "\t")
	}
	return out
}

// sourcesOf completes an example to a set of documents.
func (c coded) sourcesOf(t testing.TB) Sources {
	t.Helper()
	base := func(name string) string {
		text, err := os.ReadFile(filepath.Join("testdata", name))
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	box := document.Source{Name: "box.piece.hcl", Text: []byte(base("box.piece.hcl"))}
	empty := document.Source{Name: "empty.piece.hcl", Text: []byte("scantling = 1\n\npiece \"Empty\" {\n}\n")}
	switch c.how {
	case "":
		return Sources{Document: document.Source{Name: "example.hcl", Text: []byte(c.example)}}
	case "added to evaluate/testdata/box.piece.hcl":
		box.Text = append(box.Text, "\n"+c.example...)
		return Sources{Document: box}
	case "added to evaluate/testdata/chest.piece.hcl":
		return Sources{Document: document.Source{Name: "chest.piece.hcl", Text: []byte(base("chest.piece.hcl") + "\n" + c.example)}}
	case "added to evaluate/testdata/small.shop.hcl":
		return Sources{Document: empty, Shop: document.Source{Name: "small.shop.hcl", Text: []byte(base("small.shop.hcl") + "\n" + c.example)}}
	case "alone as a shop":
		return Sources{Document: empty, Shop: document.Source{Name: "example.shop.hcl", Text: []byte(c.example)}}
	}
	t.Fatalf("%s: an example %q is not known", c.name, c.how)
	return Sources{}
}

// TestExamples runs the example of every code: it yields that code and no other.
func TestExamples(t *testing.T) {
	seen := map[diag.Code]string{}
	ran := 0
	for _, c := range codesOf(t) {
		if was := seen[c.code]; was != "" {
			t.Errorf("%s and %s are one code", was, c.name)
		}
		seen[c.code] = c.name
		if c.made {
			continue
		}
		ran++
		r := Piece(c.sourcesOf(t))
		if len(r.Diagnostics) != 1 || r.Diagnostics[0].Code != c.code {
			t.Errorf("%s: want %s alone", c.name, c.code)
			tell(t, r.Diagnostics)
			continue
		}
		if d := r.Diagnostics[0]; d.Where.IsZero() || d.Where.Line == 0 {
			t.Errorf("%s has no place", c.name)
		}
		applyRemedies(t, c.name, c.sourcesOf(t), r.Diagnostics[0])
	}
	t.Logf("%d examples", ran)
}

// applyRemedies applies the first remedy that has edits: the code is gone then.
func applyRemedies(t *testing.T, name string, src Sources, d diag.Diagnostic) {
	t.Helper()
	for _, remedy := range d.Remedies {
		if len(remedy.Edits) == 0 {
			continue
		}
		for _, doc := range []*document.Source{&src.Document, &src.Shop} {
			for _, e := range remedy.Edits {
				if e.File != doc.Name {
					continue
				}
				if string(doc.Text[e.Start:e.End]) != e.Old {
					t.Fatalf("%s: %q stands where %q should", name, doc.Text[e.Start:e.End], e.Old)
				}
				doc.Text = append(append(append([]byte{}, doc.Text[:e.Start]...), e.New...), doc.Text[e.End:]...)
			}
		}
		if r := Piece(src); len(r.Diagnostics) > 0 {
			t.Errorf("%s: after its remedy there is still:", name)
			tell(t, r.Diagnostics)
		}
		return
	}
}
