package cost_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/cost"
	"scantling/internal/analysis/cutting"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
	"scantling/internal/words"
)

// used is a stock of boards: length, width and thickness in millimetres.
func used(id string, rack, buy int, price int64, length, width, thickness unit.Length) cutting.Used {
	l := ledger.New(nil)
	fig := func(nm unit.Length) ledger.Figure { return l.Leaf("given", nm, ledger.Bought, "") }
	return cutting.Used{Stock: cutting.Stock{ID: id, Label: id, Length: fig(length), Width: fig(width), Thickness: fig(thickness), Have: rack, Price: price, Buyable: true},
		Rack: rack, Buy: buy, Marks: []string{"A1"}}
}

func board(id string, rack, buy int, price int64) cutting.Used {
	return used(id, rack, buy, price, unit.MM(2400), unit.MM(165), unit.MM(27))
}

func sheet(id string, rack, buy int, price int64) cutting.Used {
	u := used(id, rack, buy, price, unit.MM(610), unit.MM(1220), 5600*unit.Micrometre)
	u.Stock.Sheet, u.Stock.Sold = true, [3]unit.Length{unit.MM(1220), unit.MM(610), unit.MM(6)}
	return u
}

// derive derives, and holds what is law for every list.
func derive(t testing.TB, list []cutting.Used, p *piece.Piece, fittings map[string]cost.Fitting) ([]plan.Buy, plan.Cost) {
	t.Helper()
	lines, sum := cost.Derive(list, p, fittings)
	kinds := map[string]int64{}
	for _, l := range lines {
		kinds[l.Kind] += l.Sum
		if l.Get < 0 || l.Get > l.Need || l.Sum != int64(l.Get)*l.Price {
			t.Errorf("%+v", l)
		}
		for _, missing := range words.Missing(l.Measure) {
			t.Errorf("%s: %v", l.Label, missing)
		}
	}
	if kinds["board"] != sum.Timber || kinds["sheet"] != sum.Sheet || kinds["hardware"] != sum.Hardware || sum.Total != sum.Timber+sum.Sheet+sum.Hardware {
		t.Errorf("%v, %+v", kinds, sum)
	}
	return lines, sum
}

// TestCost: boards are bought whole, what is in the rack is not bought, and what
// has no price is named.
func TestCost(t *testing.T) {
	for _, c := range []struct {
		name string
		list []cutting.Used
		want plan.Cost
	}{
		{"nothing", nil, plan.Cost{}},
		{"all in the rack", []cutting.Used{board("A", 3, 0, 3800)}, plan.Cost{FromRack: 11400}},
		{"two to buy", []cutting.Used{board("A", 1, 2, 3800)}, plan.Cost{Timber: 7600, Total: 7600, FromRack: 3800}},
		{"boards and sheets", []cutting.Used{board("A", 0, 1, 3800), sheet("ply", 0, 2, 1700)}, plan.Cost{Timber: 3800, Sheet: 3400, Total: 7200}},
		{"one without a price", []cutting.Used{board("A", 0, 1, 0), board("B", 0, 1, 100)}, plan.Cost{Timber: 100, Total: 100, Unpriced: []string{"A"}}},
		{"without a price and in the rack", []cutting.Used{board("A", 1, 0, 0)}, plan.Cost{}},
	} {
		lines, sum := derive(t, c.list, &piece.Piece{}, nil)
		if fmt.Sprint(sum) != fmt.Sprint(c.want) || len(lines) != len(c.list) {
			t.Errorf("%s: %+v, want %+v", c.name, sum, c.want)
		}
	}
}

// TestPins: every pin of every joint, every fitting, and what the shop has of them.
// The chest has 16 rebates (8 of the case, 4 of each drawer) with 2 pins each, and
// two turn buttons.
func TestPins(t *testing.T) {
	b := checktest.Chest()
	for _, c := range []struct {
		pins     cost.Fitting
		get      int
		sum      int64
		unpriced int
	}{
		{cost.Fitting{Price: 3, Have: 200}, 0, 0, 0},
		{cost.Fitting{Price: 3, Have: 32}, 0, 0, 0},
		{cost.Fitting{Price: 3, Have: 31}, 1, 3, 0},
		{cost.Fitting{Price: 3}, 32, 96, 0},
		{cost.Fitting{}, 32, 0, 1},
	} {
		lines, sum := derive(t, nil, &b.Piece, map[string]cost.Fitting{"panel pin 20": c.pins, "turn button": {Price: 80}})
		if len(lines) != 2 || lines[0].Stock != "panel pin 20" || lines[0].Need != 32 || lines[0].Get != c.get || lines[0].Sum != c.sum {
			t.Errorf("%+v: %+v", c.pins, lines[0])
		}
		if lines[1].Need != 2 || lines[1].Sum != 160 || sum.Hardware != c.sum+160 || len(sum.Unpriced) != c.unpriced {
			t.Errorf("%+v: %+v, %+v", c.pins, lines[1], sum)
		}
	}
}

// TestDowels: dowels of two diameters are two lines.
func TestDowels(t *testing.T) {
	b := trial.New()
	for i, d := range []int64{80, 80, 65} {
		b.Joint(fmt.Sprintf("joint[%d]", i+1), piece.DowelJoint, "a", "b", 0, func(j *piece.Joint) { j.Dowels = &piece.Dowels{Diameter: b.Fig("d", d), Count: 3} })
	}
	lines, sum := derive(t, nil, &b.Piece, map[string]cost.Fitting{"dowel 8": {Price: 10, Have: 1}})
	if len(lines) != 2 || lines[0].Stock != "dowel 6.5" || lines[0].Get != 3 || lines[1].Stock != "dowel 8" || lines[1].Get != 5 || sum.Hardware != 50 || fmt.Sprint(sum.Unpriced) != "[dowel 6.5]" {
		t.Errorf("%+v, %+v", lines, sum)
	}
}

// TestMeasure: the quantity in the merchant's terms. Board feet of single boards are
// published examples (NHLA rules, an export council's and an importer's page); cubic
// metres are arithmetic.
func TestMeasure(t *testing.T) {
	inch, foot := unit.Inch, unit.Foot
	for _, c := range []struct {
		name                     string
		length, width, thickness unit.Length
		n                        int
		feet, cubic              float64
	}{
		{"6 1/4 in × 8 ft of 8/4: 8", 8 * foot, 25 * inch / 4, 2 * inch, 1, 8, 2.4384 * 0.15875 * 0.0508},
		{"6 1/2 in × 8 ft of 4/4: 4", 8 * foot, 13 * inch / 2, inch, 1, 4, 2.4384 * 0.1651 * 0.0254},
		{"8 in × 12 ft of 4/4: 8", 12 * foot, 8 * inch, inch, 1, 8, 3.6576 * 0.2032 * 0.0254},
		{"10 in × 13 ft of 4/4: 11", 13 * foot, 10 * inch, inch, 1, 11, 3.9624 * 0.254 * 0.0254},
		{"three of them", 13 * foot, 10 * inch, inch, 3, 33, 3 * 3.9624 * 0.254 * 0.0254},
		{"27 mm counts as 4/4: 165 wide and 7 whole feet, 3.79, is 4", unit.MM(2400), unit.MM(165), unit.MM(27), 2, 8, 2 * 2.4 * 0.165 * 0.027},
		{"52 mm counts as 8/4", unit.MM(2400), unit.MM(165), unit.MM(52), 1, 8, 2.4 * 0.165 * 0.052},
		{"thinner than an inch counts as one", unit.MM(2400), unit.MM(165), unit.MM(13), 1, 4, 2.4 * 0.165 * 0.013},
	} {
		lines, _ := derive(t, []cutting.Used{used("A", 0, c.n, 100, c.length, c.width, c.thickness)}, &piece.Piece{}, nil)
		feet, _ := lines[0].Measure.Arg("boardfeet")
		cubic, _ := lines[0].Measure.Arg("cubic")
		if feet.X != c.feet || cubic.X < c.cubic-1e-9 || cubic.X > c.cubic+1e-9 {
			t.Errorf("%s: %v board feet, %v m³, want %v and %v", c.name, feet.X, cubic.X, c.feet, c.cubic)
		}
	}
}

// TestSoldAs: the merchant reckons with the size that is sold, and a sheet is named
// as it is sold, whichever way it lies for cutting.
func TestSoldAs(t *testing.T) {
	u := board("A", 0, 1, 100)
	u.Stock.Sold = [3]unit.Length{0, unit.MM(170), unit.MM(32)}
	lines, _ := derive(t, []cutting.Used{u, sheet("ply", 1, 1, 100)}, &piece.Piece{}, nil)
	if w, _ := lines[0].Measure.Arg("width"); w.Nm != unit.MM(170) {
		t.Errorf("%v wide", w.Nm)
	}
	if c, _ := lines[0].Measure.Arg("cubic"); c.X < 2.4*0.17*0.032-1e-9 || c.X > 2.4*0.17*0.032+1e-9 {
		t.Errorf("%v m³", c.X)
	}
	l, _ := lines[1].Measure.Arg("length")
	n, _ := lines[1].Measure.Arg("n")
	x, _ := lines[1].Measure.Arg("thickness")
	if l.Nm != unit.MM(1220) || x.Nm != unit.MM(6) || n.N != 2 || lines[1].Measure.Key != "buying.sheets" {
		t.Errorf("%+v", lines[1].Measure)
	}
}

// TestLaws, over random lists: the sums are those of the lines, more in the rack
// never costs more.
func TestLaws(t *testing.T) {
	b := checktest.Chest()
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 12))
		var list []cutting.Used
		for i := range r.IntN(5) {
			u := board(fmt.Sprint("A", i), r.IntN(3), r.IntN(4), r.Int64N(3)*1000)
			if r.IntN(2) == 0 {
				u = sheet(fmt.Sprint("S", i), r.IntN(3), r.IntN(4), r.Int64N(3)*1000)
			}
			list = append(list, u)
		}
		have := r.IntN(40)
		pins := func(n int) map[string]cost.Fitting {
			return map[string]cost.Fitting{"panel pin 20": {Price: 3, Have: n}}
		}
		_, less := derive(t, list, &b.Piece, pins(have))
		_, more := derive(t, list, &b.Piece, pins(have+1+r.IntN(10)))
		if more.Total > less.Total {
			t.Errorf("seed %d: %d with more pins, %d with fewer", seed, more.Total, less.Total)
		}
	}
}

func BenchmarkDerive(b *testing.B) {
	x := trial.Rack(50, 60)
	for i := range x.Piece.Joints {
		x.Piece.Joints[i].Fasteners = &piece.Fasteners{Kind: "panel pin 25", Count: 4}
	}
	list := []cutting.Used{board("A", 10, 400, 3800), sheet("ply", 3, 200, 1700)}
	for b.Loop() {
		cost.Derive(list, &x.Piece, map[string]cost.Fitting{"panel pin 25": {Price: 3, Have: 200}})
	}
	b.ReportMetric(float64(len(x.Piece.Joints)), "joints")
}
