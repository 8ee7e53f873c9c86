package joinery_test

import (
	"go/ast"
	"go/parser"
	"go/token"
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
	f, err := parser.ParseFile(token.NewFileSet(), "codes.go", nil, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	out := map[diag.Code]string{}
	for _, d := range f.Decls {
		g, ok := d.(*ast.GenDecl)
		if !ok || g.Tok != token.CONST {
			continue
		}
		for _, s := range g.Specs {
			v := s.(*ast.ValueSpec)
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
