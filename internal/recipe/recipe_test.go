package recipe_test

import (
	"strings"
	"testing"

	"scantling/internal/document"
	"scantling/internal/evaluate"
	"scantling/internal/recipe"
)

// TestAll reads every built-in recipe, and uses it with nothing but its timber
// and things to hold.
func TestAll(t *testing.T) {
	all := recipe.All()
	if len(all) < 2 {
		t.Fatalf("%d recipes", len(all))
	}
	for _, r := range all {
		if r.Name == "" || r.About == "" || !strings.HasSuffix(r.File, ".recipe.hcl") {
			t.Errorf("%q (%s): %q", r.Name, r.File, r.About)
		}
		if found, ok := recipe.Find(r.Name); !ok || found.File != r.File {
			t.Errorf("%s is not found", r.Name)
		}
		f, ds := document.Read(document.Source{Name: r.File, Text: r.Text}, document.Limits{})
		if len(ds) > 0 || f.Kind != document.Recipe || f.Head.Label() != r.Name {
			t.Errorf("%s: %v", r.Name, ds)
		}
		text := `scantling = 1

piece "Trial" {
}

contents "rods" {
  rod    = [4]
  each   = 3
  length = 300
}

material "front" {
  asks      = "cherry board"
  thickness = 14
}

material "drawer" {
  asks      = "hard maple board"
  thickness = 10
}

material "tray" {
  asks      = "cherry board"
  thickness = 15
}

material "bottom" {
  asks = "birch plywood 4"
}

use "` + r.Name + `" {
  as = "it"
`
		if f.Input("holds") != nil {
			text += "  holds = contents.rods\n"
		}
		got := evaluate.Piece(evaluate.Sources{Document: document.Source{Name: "trial", Text: []byte(text + "}\n")}})
		for _, d := range got.Diagnostics {
			t.Errorf("%s: %s at %s:%d", r.Name, d.Code, d.Where.File, d.Where.Line)
		}
		if len(got.Piece.Parts) == 0 {
			t.Errorf("%s makes no parts", r.Name)
		}
	}
	if _, ok := recipe.Find("no such recipe"); ok {
		t.Error("a recipe that there is not is found")
	}
}
