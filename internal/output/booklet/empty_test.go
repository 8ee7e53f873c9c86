package booklet

import (
	"testing"

	"scantling/internal/page"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
	"scantling/internal/words"
)

// TestComposeOfLittle: a plan with nothing in it, as a document with errors
// leaves it, is set all the same.
func TestComposeOfLittle(t *testing.T) {
	show := unit.Show{System: unit.Metric}
	w := words.New(words.English, words.British, show, "")
	for _, p := range []*plan.Plan{
		{Piece: &piece.Piece{Name: "Nothing"}},
		{Piece: &piece.Piece{Name: "A row"}, Parts: []plan.PartRow{{Mark: "A1"}}, Setups: []plan.Setup{{ID: "s", Placements: []plan.Placement{{}}}}, Measures: []plan.Measure{{}}, Diagrams: []plan.Diagram{{}}},
	} {
		doc, _ := Compose(p, nil, w, Options{Paper: page.A4, Show: show})
		if len(doc.Pages) == 0 {
			t.Errorf("%s: no pages", p.Piece.Name)
		}
	}
}
