package evaluate

import (
	"os"
	"regexp"
	"testing"

	"scantling/internal/document"
)

// TestLanguage evaluates every example of docs/LANGUAGE.md.
func TestLanguage(t *testing.T) {
	page, err := os.ReadFile("../../docs/LANGUAGE.md")
	if err != nil {
		t.Fatal(err)
	}
	found := regexp.MustCompile("(?s)```hcl\n(.*?)```").FindAllSubmatch(page, -1)
	if len(found) < 4 {
		t.Fatalf("%d examples", len(found))
	}
	for _, m := range found {
		src := Sources{Document: document.Source{Name: "LANGUAGE.md", Text: m[1]}}
		f, _ := document.Read(src.Document, document.Limits{})
		if f.Kind == document.Shop {
			src.Document, src.Shop = text("empty", empty), src.Document
		}
		r := Piece(src)
		if len(r.Diagnostics) > 0 || f.Kind == document.Piece && len(r.Piece.Parts) == 0 || f.Kind == document.Shop && len(r.Shop.Machines) == 0 {
			t.Errorf("%s: %d parts", r.Piece.Name, len(r.Piece.Parts))
			tell(t, r.Diagnostics)
		}
		verify(t, r)
		for _, q := range r.Piece.Requires {
			if !q.Holds {
				t.Errorf("%s: %s", r.Piece.Name, q.Text)
			}
		}
	}
}
