package document

import (
	"os"
	"testing"
)

func TestReadsTheExample(t *testing.T) {
	for _, name := range []string{"../../examples/needle-chest/needle-chest.piece.hcl", "../../examples/needle-chest/shop.hcl", "../recipe/library/drawer.recipe.hcl", "../recipe/library/needle-tray.recipe.hcl"} {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		f, ds := Read(Source{name, text}, Limits{})
		for _, d := range ds {
			t.Errorf("%s:%d:%d: %s %v", name, d.Where.Line, d.Where.Column, d.Code, d.Text.Args)
		}
		t.Log(f.Kind, len(f.Blocks), f.Work)
	}
}
