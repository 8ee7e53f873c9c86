package scantling_test

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"scantling"
	"scantling/internal/outside"
	"scantling/internal/plan"
	"scantling/internal/unit"
	"scantling/internal/world"
)

// planShelves plans four shelves 1100 long out of ash 2400 × 200 × 27.
func planShelves(t *testing.T, deep string) *scantling.Result {
	t.Helper()
	files := map[string][]byte{}
	for _, name := range []string{"shelves.piece.hcl", "shop.hcl"} {
		text, err := os.ReadFile(filepath.Join(outside.Root(), "testdata", "strips", name))
		if err != nil {
			t.Fatal(err)
		}
		files[name] = text
	}
	w, err := world.NewMemory(files, world.Date{Year: 2026, Month: 3, Day: 1}, 0)
	if err != nil {
		t.Fatal(err)
	}
	r, err := scantling.Plan(context.Background(), w, "shelves.piece.hcl", scantling.Options{Inputs: map[string]string{"deep": deep}})
	if err != nil {
		t.Fatal(err)
	}
	if faults := r.Plan.Unsound(); len(faults) > 0 || r.HasErrors() {
		t.Fatalf("%v, %v", faults, r.Plan.Diagnostics)
	}
	return r
}

// TestStripsSaveABoard: shelves of 280 need blanks of 285 × 1112, and a board gives
// 195 × 2380. Two equal strips of 142.5 and twice 1 to be jointed are 144.5, one abreast
// and two after another: eight strips are four boards, whoever lays them out. Strips of
// 195 and 94 are two boards and one: 94, a kerf of 3 and 94 are 191. With one board in
// the rack two are bought instead of three. Shelves of 300 leave 114 of which two do not
// lie abreast: equal strips stay, and four boards are cut.
func TestStripsSaveABoard(t *testing.T) {
	for _, c := range []struct {
		deep   string
		strips []int64 // tenths of a millimetre
		boards int
		buy    int
		why    bool
	}{
		{"280", []int64{1950, 940}, 3, 2, true},
		{"300", []int64{1545, 1545}, 4, 3, false},
	} {
		p := planShelves(t, c.deep).Plan
		boards, buy := 0, 0
		for _, d := range p.Diagrams {
			boards += d.Count
		}
		for _, b := range p.Buying {
			buy += b.Get
		}
		if boards != c.boards || buy != c.buy {
			t.Errorf("%s deep: %d boards are cut and %d bought, want %d and %d", c.deep, boards, buy, c.boards, c.buy)
		}
		panels := 0
		for _, w := range p.Workpieces {
			if w.Kind != plan.PanelPiece {
				continue
			}
			panels++
			var strips []int64
			for _, s := range p.StripsOf(w) {
				strips = append(strips, int64(s.Width.Nm/(unit.Millimetre/10)))
			}
			if !slices.Equal(strips, c.strips) {
				t.Errorf("%s deep: %s is of %v, want %v", c.deep, w.ID, strips, c.strips)
			}
			told := false
			for _, m := range w.Why {
				told = told || m.Key == "strips.fewer-bought"
				if n, ok := m.Arg("boards"); m.Key == "strips.fewer-bought" && (!ok || n.N != 1) {
					t.Errorf("%s: says that %d boards are saved", w.ID, n.N)
				}
			}
			if told != c.why {
				t.Errorf("%s deep: %s says why: %v", c.deep, w.ID, told)
			}
		}
		if panels != 4 {
			t.Errorf("%s deep: %d panels", c.deep, panels)
		}
	}
}
