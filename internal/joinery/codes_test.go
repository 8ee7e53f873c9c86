package joinery_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/evaluate"
	"scantling/internal/joinery"
)

// codes reads the codes and the text above each.
func codes(t *testing.T) map[diag.Code]string {
	t.Helper()
	out := map[diag.Code]string{}
	files, err := filepath.Glob("codes*.go")
	if err != nil {
		t.Fatal(err)
	}
	var decls []ast.Decl
	for _, file := range files {
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		decls = append(decls, f.Decls...)
	}
	for _, d := range decls {
		g, ok := d.(*ast.GenDecl)
		if !ok || g.Tok != token.CONST {
			continue
		}
		for _, s := range g.Specs {
			v := s.(*ast.ValueSpec)
			if len(v.Values) != 1 {
				continue
			}
			code, _ := strconv.Unquote(v.Values[0].(*ast.BasicLit).Value)
			out[diag.Code(code)] = v.Doc.Text()
		}
	}
	return out
}

// TestExamples evaluates the example of every code: it yields that code and
// nothing else. A code without an example says why no document yields it.
func TestExamples(t *testing.T) {
	seen := 0
	for code, text := range codes(t) {
		_, example, ok := strings.Cut(text, "Example:\n")
		if !ok {
			if !strings.Contains(strings.Join(strings.Fields(text), " "), "t comes from") {
				t.Errorf("%s has no example and does not say why", code)
			}
			continue
		}
		seen++
		var doc strings.Builder
		for line := range strings.SplitSeq(example, "\n") {
			doc.WriteString(strings.TrimPrefix(line, "\t") + "\n")
		}
		r := evaluate.Piece(evaluate.Sources{Document: document.Source{Name: "example.piece.hcl", Text: []byte(doc.String())}})
		_, _, faults := joinery.Lower(r.Piece, r.Ledger)
		all := append(r.Diagnostics, faults...)
		if len(all) != 1 || all[0].Code != code || all[0].Where.IsZero() {
			t.Errorf("%s yields %+v", code, all)
		}
	}
	if seen < 8 {
		t.Errorf("only %d examples", seen)
	}
}
