package scantling_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"scantling"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/outside"
	"scantling/internal/plan"
	"scantling/internal/world"
)

const demo = "needle-chest.piece.hcl"

// exampleWorld holds the files of an example, in memory.
func exampleWorld(t testing.TB, name string) *world.Memory {
	t.Helper()
	return folderWorld(t, "examples/"+name)
}

// folderWorld holds the files of a folder of the project, in memory.
func folderWorld(t testing.TB, path string) *world.Memory {
	t.Helper()
	dir := filepath.Join(outside.Root(), filepath.FromSlash(path))
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	files := map[string][]byte{}
	for _, e := range entries {
		if files[e.Name()], err = os.ReadFile(filepath.Join(dir, e.Name())); err != nil {
			t.Fatal(err)
		}
	}
	w, err := world.NewMemory(files, world.Date{Year: 2026, Month: 3, Day: 1}, 0)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// planDemo plans the demonstration piece with some inputs set.
func planDemo(t testing.TB, inputs map[string]string) *scantling.Result {
	t.Helper()
	r, err := scantling.Plan(context.Background(), exampleWorld(t, "needle-chest"), demo, scantling.Options{Inputs: inputs})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestPlanIsSound holds the ledger's law for every figure, and that rows, series,
// sums and diagrams close, over the corners of the inputs.
func TestPlanIsSound(t *testing.T) {
	for _, inputs := range []map[string]string{
		nil,
		{"drawers": "2"}, {"drawers": "5"}, {"needle_length": "250"}, {"needle_length": "400"},
		{"side_thickness": "12"}, {"side_thickness": "18"}, {"head_diameter": "8"}, {"head_diameter": "16"},
		{"least_width": "160"}, {"least_width": "420"}, {"edition": `"in"`}, {"timber": `"black walnut"`},
	} {
		t.Run(fmt.Sprint(inputs), func(t *testing.T) {
			r := planDemo(t, inputs)
			for i, fault := range r.Plan.Unsound() {
				if i == 10 {
					t.Fatal("and more")
				}
				t.Error(fault)
			}
		})
	}
}

// TestRowsMeetTheSolids runs 200 seeded lines through the finished solids: wood
// and air must follow each other as the plan's rows say, term by term.
func TestRowsMeetTheSolids(t *testing.T) {
	r := planDemo(t, nil)
	const seed = 20260301
	random := rand.New(rand.NewPCG(seed, 1))
	if len(r.Plan.Rows) == 0 {
		t.Fatal("the plan has no rows")
	}
	for i := range 200 {
		row := r.Plan.Rows[random.IntN(len(r.Plan.Rows))]
		if fault := holdRow(r, row, random); fault != "" {
			t.Errorf("seed %d, line %d, row %s along %d: %s", seed, i, row.Address, row.Axis, fault)
		}
	}
}

// tolerance for a term, in millimetres: figures are whole nanometres and band
// limits at curves allow a tenth of a micrometre.
const termTolerance = 1e-4

// holdRow runs one random line inside the row's band through all solids.
func holdRow(r *scantling.Result, row plan.Row, random *rand.Rand) string {
	var at, dir [3]float64
	dir[row.Axis] = 1
	k := 0
	for axis := range at {
		if axis == int(row.Axis) {
			at[axis] = -1000
			continue
		}
		low, high := row.Band[k].Low.Nm.Millimetres(), row.Band[k].High.Nm.Millimetres()
		at[axis] = low + (0.02+0.96*random.Float64())*(high-low)
		k++
	}
	wood := stretches(r, vec.V3{X: at[0], Y: at[1], Z: at[2]}, vec.V3{X: dir[0], Y: dir[1], Z: dir[2]})
	pos := row.Start.Nm.Millimetres() + 1000
	next := 0
	for i, t := range row.Terms {
		end := pos + t.Figure.Nm.Millimetres()
		if !t.Air {
			if next >= len(wood) {
				return fmt.Sprintf("term %d (%s) has no wood", i+1, t.Of)
			}
			w := wood[next]
			next++
			if math.Abs(w.Enter-pos) > termTolerance || math.Abs(w.Leave-end) > termTolerance {
				return fmt.Sprintf("term %d (%s) runs from %.4f to %.4f, the wood from %.4f to %.4f", i+1, t.Of, pos, end, w.Enter, w.Leave)
			}
		}
		pos = end
	}
	if next != len(wood) {
		return fmt.Sprintf("the line meets wood %d times, the row has %d", len(wood), next)
	}
	return ""
}

// stretches returns where a line runs in wood, part by part, in order.
func stretches(r *scantling.Result, at, dir vec.V3) []solid.Interval {
	var all []solid.Interval
	for _, s := range r.Shapes.All() {
		for _, i := range s.Placed().Intervals(at, dir) {
			if i.Leave-i.Enter > termTolerance {
				all = append(all, i)
			}
		}
	}
	sortIntervals(all)
	return all
}
