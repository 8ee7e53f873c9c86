package rows_test

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/rows"
	"scantling/internal/geom/vec"
	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shape"
	"scantling/internal/unit"
)

// chest is the trial chest with its joints' cuts and rows.
func chest(t *testing.T) (*trial.Builder, []piece.Cut, []plan.Row) {
	t.Helper()
	b := trial.Chest()
	cuts, _, faults := joinery.Lower(&b.Piece, b.Ledger)
	for _, f := range faults {
		t.Fatalf("%s %s %v", f.Address, f.Code, f.Text)
	}
	list, notes := rows.Derive(&b.Piece, cuts, b.Ledger)
	if len(notes) > 0 {
		t.Errorf("%+v", notes)
	}
	return b, cuts, list
}

// TestRowsClose: terms add up to the total, the ledger's sums hold, and every
// space, drawer and series has its rows.
func TestRowsClose(t *testing.T) {
	b, _, list := chest(t)
	have := map[address.Address]bool{}
	for _, r := range list {
		have[r.Address] = true
		var sum unit.Length
		for i, x := range r.Terms {
			sum += x.Figure.Nm
			if x.Figure.Nm <= 0 {
				t.Errorf("%s: term %d is %v", r.Address, i+1, x.Figure.Nm)
			}
		}
		if sum != r.Total.Nm || len(r.Terms) == 0 {
			t.Errorf("%s: %d terms add up to %v, total %v", r.Address, len(r.Terms), sum, r.Total.Nm)
		}
		for k, e := range r.Band {
			if e.Size() <= 0 {
				t.Errorf("%s: band %d is empty", r.Address, k)
			}
		}
	}
	inside := slices.ContainsFunc(list, func(r plan.Row) bool {
		return slices.ContainsFunc(r.Terms, func(x piece.Term) bool { return x.Word == "inside" && x.Figure.Nm > unit.MM(100) })
	})
	if !inside {
		t.Error("no row goes through the inside of a drawer")
	}
	// Upwards one line serves both openings and both drawers.
	for _, a := range []address.Address{
		`case.opening[1].row["right"]`, `case.opening[2].row["right"]`, `case.opening[1].row["back"]`, `case.opening[2].row["back"]`,
		`case.opening[1].row["up"]`, `drawer[1].row["right"]`, `drawer[2].row["right"]`, `drawer[1].row["back"]`, `drawer[2].row["back"]`,
		`drawer[1].row["up"]`, `drawer[1].tray.channel.row["right"]`, `drawer[2].tray.channel.row["right"]`,
	} {
		if !have[a] {
			t.Errorf("no row %s", a)
		}
	}
	if len(list) != 12 {
		t.Errorf("%d rows", len(list))
	}
	for _, d := range b.Ledger.Verify() {
		t.Error(d)
	}
}

// shown prints a row's terms.
func shown(r plan.Row) (out []string) {
	for _, x := range r.Terms {
		sign := ""
		if x.Air {
			sign = "~"
		}
		out = append(out, fmt.Sprintf("%s%v %s", sign, x.Figure.Nm.Millimetres(), x.Of))
	}
	return out
}

// TestDepthOfTheChest: the sum from front to back that a maker would write down.
func TestDepthOfTheChest(t *testing.T) {
	_, _, list := chest(t)
	i := slices.IndexFunc(list, func(r plan.Row) bool { return r.Address == `drawer[1].row["back"]` })
	var words []string
	for _, x := range list[i].Terms {
		words = append(words, x.Word)
	}
	if w := []string{"part", "clearance", "part", "clearance", "part", "clearance", "part"}; !slices.Equal(words, w) {
		t.Errorf("%v", words)
	}
	var of []address.Address
	for _, x := range list[i].Terms {
		if !x.Air {
			of = append(of, x.Of)
		}
	}
	want := []address.Address{"drawer[1].front", "drawer[1].tray", "drawer[1].back", "case.panel"}
	if of = slices.Compact(of); !slices.Equal(of, want) {
		t.Errorf("wood along the drawer: %v", of)
	}
	if got := list[i].Total.Nm; got != unit.MM(394) {
		t.Errorf("depth in all %v", got.Millimetres())
	}
}

// run is a stretch of wood along a line, in millimetres.
type run struct {
	from, to float64
	of       address.Address
}

// along returns the wood of all finished solids along a line.
func along(s *shape.Shapes, at vec.V3, axis piece.Axis) []run {
	dir := [3]vec.V3{{X: 1}, {Y: 1}, {Z: 1}}[axis]
	var out []run
	for _, x := range s.All() {
		for _, i := range x.Placed().Intervals(at, dir) {
			out = append(out, run{i.Enter + at.At(int(axis)), i.Leave + at.At(int(axis)), x.Part.Address})
		}
	}
	slices.SortFunc(out, func(a, b run) int { return cmp.Compare(a.from, b.from) })
	return out
}

// within is how near a row's limits must be to the solids', in millimetres.
const within = 1e-4

// agrees compares a row with the wood along a line, term by term.
func agrees(r plan.Row, wood []run) bool {
	at := r.Start.Nm.Millimetres()
	k := 0
	for _, x := range r.Terms {
		next := at + x.Figure.Nm.Millimetres()
		if !x.Air {
			if k >= len(wood) || wood[k].of != x.Of || math.Abs(wood[k].from-at) > within || math.Abs(wood[k].to-next) > within {
				return false
			}
			k++
		}
		at = next
	}
	return k == len(wood)
}

// lineIn picks a line inside a row's band.
func lineIn(r plan.Row, rnd *rand.Rand) vec.V3 {
	var at [3]float64
	k := 0
	for a := range at {
		if piece.Axis(a) == r.Axis {
			continue
		}
		lo, hi := r.Band[k].Low.Nm.Millimetres(), r.Band[k].High.Nm.Millimetres()
		at[a] = lo + (hi-lo)*(0.001+0.998*rnd.Float64())
		k++
	}
	return vec.V3{X: at[0], Y: at[1], Z: at[2]}
}

// TestAgainstSolids: 200 seeded lines inside the bands, through the finished
// solids, give the rows' terms one by one.
func TestAgainstSolids(t *testing.T) {
	const seed = 20261125
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	b, cuts, list := chest(t)
	s := shape.New(&b.Piece, cuts, shape.ScreenFacets)
	for _, x := range s.All() {
		if ok, why := x.Verified(); !ok {
			t.Fatalf("%s: %s", x.Part.Address, why)
		}
	}
	for n := range 200 {
		r := list[n%len(list)]
		at := lineIn(r, rnd)
		if wood := along(s, at, r.Axis); !agrees(r, wood) {
			t.Errorf("%s at %v, band %v:\nrow   %v\nsolid %v", r.Address, at, r.Band, shown(r), wood)
		}
	}
}

// TestOneFigureChanged: a row with any one term changed by 0.1 mm no longer
// agrees with the solids.
func TestOneFigureChanged(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 0))
	b, cuts, list := chest(t)
	s := shape.New(&b.Piece, cuts, shape.ScreenFacets)
	tried, survived := 0, 0
	for _, r := range list {
		wood := along(s, lineIn(r, rnd), r.Axis)
		for i := range r.Terms {
			m := r
			m.Terms = slices.Clone(r.Terms)
			m.Terms[i].Figure.Nm += unit.Millimetre / 10
			if tried++; agrees(m, wood) {
				survived++
				t.Errorf("%s: term %d", r.Address, i+1)
			}
		}
	}
	t.Logf("%d figures changed, %d not noticed", tried, survived)
}

// TestDeclared runs the declared analysis.
func TestDeclared(t *testing.T) {
	b, cuts, list := chest(t)
	c := analysis.Context{Piece: &b.Piece, Cuts: cuts, Ledger: b.Ledger}
	if _, err := analysis.Run(&c, []analysis.Analysis{rows.Analysis}); err != nil || len(rows.Analysis.Get(&c)) != len(list) {
		t.Errorf("%v, %d rows of %d", err, len(rows.Analysis.Get(&c)), len(list))
	}
}

// TestBound: with too little work allowed some rows are left out, and it is said.
func TestBound(t *testing.T) {
	b, cuts, list := chest(t)
	defer rows.Limit(2000)()
	some, notes := rows.Derive(&b.Piece, cuts, b.Ledger)
	if len(some) == 0 || len(some) >= len(list) || len(notes) != 1 || notes[0].Code != rows.CodeLeftOut {
		t.Errorf("%d rows of %d, %+v", len(some), len(list), notes)
	}
}
