package rows_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"testing"

	"scantling/internal/analysis"
	"scantling/internal/analysis/apart"
	"scantling/internal/analysis/check/assembly"
	"scantling/internal/analysis/check/collision"
	"scantling/internal/analysis/marks"
	"scantling/internal/analysis/rows"
	"scantling/internal/document"
	"scantling/internal/evaluate"
	"scantling/internal/joinery"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shape"
)

// needleChest is the demonstration piece from its documents.
func needleChest(t testing.TB, inputs map[string]string) evaluate.Result {
	t.Helper()
	return evaluate.Piece(sources(t, inputs))
}

// sources are the documents of the demonstration piece.
func sources(t testing.TB, inputs map[string]string) evaluate.Sources {
	t.Helper()
	read := func(name string) document.Source {
		text, err := os.ReadFile("../../../examples/needle-chest/" + name)
		if err != nil {
			t.Fatal(err)
		}
		return document.Source{Name: name, Text: text}
	}
	return evaluate.Sources{Document: read("needle-chest.piece.hcl"), Shop: read("shop.hcl"), Inputs: inputs}
}

// found runs the analyses up to rows on a result and wants nothing but passes.
func found(t *testing.T, r evaluate.Result) *analysis.Context {
	t.Helper()
	cuts, low, faults := joinery.Lower(r.Piece, r.Ledger)
	for _, d := range append(r.Diagnostics, faults...) {
		t.Errorf("%s %s %v", d.Address, d.Code, d.Text)
	}
	if len(low) != len(r.Piece.Joints) {
		t.Errorf("%d joints, %d of them lowered", len(r.Piece.Joints), len(low))
	}
	c := &analysis.Context{Piece: r.Piece, Cuts: cuts, Joints: low, Shop: r.Shop, Ledger: r.Ledger, Facets: shape.ScreenFacets}
	report, err := analysis.Run(c, []analysis.Analysis{marks.Analysis, rows.Analysis, apart.Analysis, collision.Analysis, assembly.Analysis})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range report.Findings {
		if f.Status != plan.Pass {
			t.Errorf("%s %s %s %v", f.Status, f.Code, f.Address, f.Text)
		}
	}
	return c
}

// holdRows compares lines through the solids with the rows.
func holdRows(t *testing.T, c *analysis.Context, lines int, seed uint64) {
	t.Helper()
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	list := rows.Analysis.Get(c)
	s := c.Shapes()
	for n := range lines {
		row := list[n%len(list)]
		at := lineIn(row, rnd)
		if wood := along(s, at, row.Axis); !agrees(row, wood) {
			t.Errorf("%s at %v:\nrow   %v\nsolid %v", row.Address, at, shown(row), wood)
		}
	}
}

// TestNeedleChest: no fault, no collision, nothing locked; 200 lines through the
// solids agree with the rows; every figure can be worked out again.
func TestNeedleChest(t *testing.T) {
	r := needleChest(t, nil)
	c := found(t, r)
	holdRows(t, c, 200, 20261126)
	drawn := map[string]int{}
	for _, row := range rows.Analysis.Get(c) {
		drawn[row.Title.Key]++
	}
	// Three openings: each across and deep, all upwards as one. The two trays of a
	// drawer lie in one row. The drawers' own rows may be those of their openings.
	t.Logf("rows: %v", drawn)
	if drawn["row.space"] != 7 || drawn["row.group"] == 0 || drawn["row.series"] != len(r.Piece.Series)/2 {
		t.Errorf("rows: %v, %d series", drawn, len(r.Piece.Series))
	}
	for _, d := range r.Ledger.Verify() {
		t.Error(d)
	}
}

// TestNeedleChestGrid: the same over what the maker may change.
func TestNeedleChestGrid(t *testing.T) {
	for _, drawers := range []int{2, 5} {
		for _, length := range []int{250, 400} {
			for _, side := range []int{12, 18} {
				in := map[string]string{"drawers": fmt.Sprint(drawers), "needle_length": fmt.Sprint(length), "side_thickness": fmt.Sprint(side)}
				t.Run(fmt.Sprint(drawers, length, side), func(t *testing.T) {
					c := found(t, needleChest(t, in))
					holdRows(t, c, 60, uint64(drawers*1000+length+side))
				})
			}
		}
	}
}

// BenchmarkNeedleChest measures joinery, marks, rows and solids with both checks.
func BenchmarkNeedleChest(b *testing.B) {
	for _, workers := range []int{1, 2} {
		b.Run(fmt.Sprint("workers ", workers), func(b *testing.B) {
			for b.Loop() {
				b.StopTimer()
				r := needleChest(b, nil)
				b.StartTimer()
				cuts, low, _ := joinery.Lower(r.Piece, r.Ledger)
				c := &analysis.Context{Piece: r.Piece, Cuts: cuts, Joints: low, Ledger: r.Ledger, Workers: workers}
				if _, err := analysis.Run(c, []analysis.Analysis{marks.Analysis, rows.Analysis, apart.Analysis, collision.Analysis, assembly.Analysis}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkRack measures each of them on pieces of about 300 and 3 000 parts.
func BenchmarkRack(b *testing.B) {
	all := []analysis.Analysis{marks.Analysis, rows.Analysis, apart.Analysis, collision.Analysis, assembly.Analysis}
	for _, size := range [][2]int64{{10, 28}, {100, 29}} {
		w := trial.Rack(size[0], size[1])
		cuts, _, _ := joinery.Lower(&w.Piece, w.Ledger)
		for _, a := range all[1:] {
			b.Run(fmt.Sprint(len(w.Piece.Parts), " parts ", a.Info().Name), func(b *testing.B) {
				for b.Loop() {
					c := &analysis.Context{Piece: &w.Piece, Cuts: cuts, Ledger: w.Ledger, Workers: 2}
					list := []analysis.Analysis{marks.Analysis}
					if a.Info().Name == assembly.Analysis.Info().Name {
						list = append(list, apart.Analysis)
					}
					if _, err := analysis.Run(c, append(list, a)); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
