package stock

import (
	"encoding/json"
	"errors"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"scantling/internal/figure"
	"scantling/internal/unit"
)

const um = unit.Micrometre

func wantKey(t *testing.T, err error, key string) {
	t.Helper()
	var r *figure.Refusal
	if !errors.As(err, &r) || r.Text.Key != key {
		t.Errorf("error %v, want %s", err, key)
	}
}

func second[T any](_ T, err error) error { return err }

// TestWorkedExamples: the published NHLA examples and a plywood maker's table.
func TestWorkedExamples(t *testing.T) {
	text, err := os.ReadFile("testdata/worked_examples.csv")
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for _, row := range figure.MustTable("worked_examples.csv", string(text)).Rows() {
		var in map[string]float64
		want, _ := row.Number("expected")
		if err := json.Unmarshal([]byte(row.Text("inputs_json")), &in); err != nil || row.Err() != nil {
			t.Fatal(err, row.Err())
		}
		inches := func(name string) unit.Length { return unit.FromMillimetres(in[name] * 25.4) }
		var got float64
		switch id := row.Text("id"); {
		case strings.HasPrefix(id, "bf-"):
			feet, err := BoardFeetOf(inches("w_in"), unit.FromMillimetres(in["l_ft"]*304.8), inches("t_in"))
			if err != nil {
				t.Fatal(err)
			}
			got = float64(feet) / float64(BoardFoot)
		case id == "ply-18-plus":
			f := UsualThickness("birch plywood", unit.MM(18))
			got = (f.High - f.Value).Millimetres()
		case id == "ply-18-minus":
			f := UsualThickness("birch plywood", unit.MM(18))
			got = (f.Value - f.Low).Millimetres()
		default:
			t.Errorf("%s: no test knows this row", id)
			continue
		}
		rows++
		if off := got - want; off > 0.001 || off < -0.001 {
			t.Errorf("%s: %g, want %g (%s, %s)", row.Text("id"), got, want, row.Text("source"), row.Text("status"))
		}
	}
	if rows != 6 {
		t.Errorf("%d rows, want 6", rows)
	}
}

// TestBoardFeet: NHLA rules beyond the published examples.
func TestBoardFeet(t *testing.T) {
	for _, c := range []struct {
		width, length, thick unit.Length
		measure              SquareFeet
		feet                 BoardFeet
	}{
		{unit.Inch * 25 / 4, 8 * unit.Foot, 2 * unit.Inch, 4, 8 * BoardFoot},
		{10 * unit.Inch, 13 * unit.Foot, unit.Inch, 11, 11 * BoardFoot},
		{10 * unit.Inch, 13*unit.Foot + 11*unit.Inch, unit.Inch, 11, 11 * BoardFoot}, // odd inches fall away
		{6 * unit.Inch, 8 * unit.Foot, unit.Inch / 2, 4, 4 * BoardFoot},              // thin counts as an inch
		{6 * unit.Inch, 8 * unit.Foot, unit.Inch * 5 / 4, 4, 5 * BoardFoot},          // 5/4
		{6 * unit.Inch, 8 * unit.Foot, unit.Inch * 9 / 8, 4, 4*BoardFoot + 32},       // 1-1/8
		{6 * unit.Inch, 9 * unit.Foot, unit.Inch, 5, 5 * BoardFoot},                  // 4.5 goes up
		{unit.Inch, unit.Foot - 1, unit.Inch, 0, 0},
	} {
		measure, err := SurfaceMeasure(c.width, c.length)
		feet, err2 := BoardFeetOf(c.width, c.length, c.thick)
		if err != nil || err2 != nil || measure != c.measure || feet != c.feet {
			t.Errorf("%v x %v x %v: SM %d BF %d (%v %v), want %d and %d", c.width, c.length, c.thick, measure, feet, err, err2, c.measure, c.feet)
		}
	}
	wantKey(t, second(BoardFeetOf(unit.MM(100), unit.Metre, unit.MM(27))), "stock.no-inch-thickness")
	wantKey(t, second(BoardFeetOf(-1, unit.Metre, unit.Inch)), "figure.length-range")
	wantKey(t, second(BoardFeetOf(unit.MM(100), 30*unit.Metre, unit.Inch)), "figure.length-range")
}

// TestPS20 and the other systems: dressed sizes as the tables give them.
func TestPS20(t *testing.T) {
	for _, c := range []struct {
		system    System
		dimension Dimension
		nominal   unit.Length
		want      unit.Length
	}{
		{PS20, Thickness, unit.Inch, 19050 * um},
		{PS20, Thickness, unit.Inch * 5 / 4, 25400 * um},
		{PS20, Thickness, 2 * unit.Inch, 38100 * um},
		{PS20, Width, 4 * unit.Inch, 88900 * um},
		{PS20, Width, 6 * unit.Inch, 139700 * um},
		{PS20, Width, 8 * unit.Inch, 184150 * um},
		{PS20, Width, 10 * unit.Inch, 234950 * um},
		{PS20, Width, 12 * unit.Inch, 285750 * um},
		{NHLA, Thickness, unit.Inch, unit.Inch * 13 / 16},
		{NHLA, Thickness, unit.Inch * 5 / 4, unit.Inch * 17 / 16},
		{NHLA, Thickness, unit.Inch * 6 / 4, unit.Inch * 21 / 16},
		{NHLA, Thickness, 2 * unit.Inch, unit.Inch * 7 / 4},
		{NHLA, Thickness, 3 * unit.Inch, unit.Inch * 11 / 4},
		{EN1313_2, Thickness, unit.MM(27), unit.MM(27)},
	} {
		got, err := ActualOf(c.system, c.dimension, c.nominal)
		if err != nil || got.Value != c.want || !got.Source.Published() {
			t.Errorf("%s %s %v: %+v %v, want %v", c.system, c.dimension, c.nominal.Millimetres(), got, err, c.want.Millimetres())
		}
	}
	wantKey(t, second(ActualOf(PS20, Width, 7*unit.Inch)), "stock.no-such-size")
	if d, err := ToBuy(EN1313_2, Thickness, unit.MM(25)); err != nil || d.Name != "27" {
		t.Errorf("25 is cut from %+v %v", d, err)
	}
	if d, err := ToBuy(NHLA, Thickness, unit.MM(22)); err != nil || d.Name != "5/4" {
		t.Errorf("22 is cut from %+v %v", d, err)
	}
	wantKey(t, second(ToBuy(NHLA, Thickness, unit.MM(200))), "stock.no-such-size")
	n := 0
	for _, s := range []System{PS20, NHLA, EN1313_1, EN1313_2, AUDressed} {
		for _, d := range []Dimension{Thickness, Width} {
			n += len(Sizes(s, d))
		}
	}
	if n != len(lumberOnce()) || n < 60 {
		t.Errorf("%d sizes of %d have a known system", n, len(lumberOnce()))
	}
	for nominal, want := range map[int64]int64{50: 46, 100: 96, 200: 195} {
		if got, err := PlanedAllRound(unit.MM(nominal)); err != nil || got.Value != unit.MM(want) {
			t.Errorf("%d planed: %+v %v", nominal, got, err)
		}
	}
}

// TestCleansUp: a board bought planed at 3/4 in cleans up to 18; 4/4 sawn to 19
// or 3/4 in; 27 sawn to 20 (common practice, no source).
func TestCleansUp(t *testing.T) {
	for _, c := range []struct {
		rule    Cleaning
		got     unit.Length
		surface Surface
		want    unit.Length
	}{
		{MetricCleaning(), 19050 * um, Planed, unit.MM(18)},
		{MetricCleaning(), unit.Inch, Sawn, unit.MM(19)},
		{InchCleaning(), unit.Inch, Sawn, 19050 * um},
		{InchCleaning(), unit.Inch * 5 / 4, Sawn, unit.Inch},
		{MetricCleaning(), unit.MM(27), Sawn, unit.MM(20)},
		{MetricCleaning(), unit.MM(18), Planed, unit.MM(17)},
	} {
		f, err := c.rule.CleansUp(c.got, c.surface)
		if err != nil || f.Value != c.want || f.Low > f.Value || f.High < f.Value {
			t.Errorf("%v %s cleans up to %+v (%v), want %v", c.got.Millimetres(), c.surface, f, err, c.want.Millimetres())
		}
	}
	wantKey(t, second(MetricCleaning().CleansUp(unit.MM(6), Sawn)), "stock.too-thin")
	const seed = 50
	rng := rand.New(rand.NewPCG(seed, 0))
	for range 500 {
		want := unit.MM(1 + rng.Int64N(60))
		for _, s := range []Surface{Sawn, Planed} {
			buy := MetricCleaning().LeastToBuy(want, s)
			if got, err := MetricCleaning().CleansUp(buy.Value, s); err != nil || got.Value != want {
				t.Fatalf("seed %d: %v bought %s at %v gives %v", seed, want, s, buy.Value, got.Value)
			}
		}
	}
}

func TestSheets(t *testing.T) {
	s := Sheet{Name: "ply", Material: "birch plywood", Nominal: unit.MM(6), Measured: 5600 * um, Length: 1525 * unit.Millimetre, Width: 1525 * unit.Millimetre, Grain: AlongLength, Price: Price{4200, PerPiece}}
	if f := s.Thickness(); f.Value != 5600*um || f.Source.Status != figure.Stated || f.Low != f.High {
		t.Errorf("measured: %+v", f)
	}
	s.Measured = 0
	if f := s.Thickness(); f.Value != unit.MM(6) || f.Low > 5600*um || f.Source.Status != figure.Read {
		t.Errorf("nominal: %+v, want a range that reaches 5.6", f)
	}
	if err := s.Check(); err != nil {
		t.Error(err)
	}
	for material, want := range map[string]figure.Status{"MDF": figure.Memory, "ply": figure.Read, "birch ply": figure.Read, "hardwood plywood": figure.Memory, "cork": figure.Memory} {
		if f := UsualThickness(material, unit.MM(12)); f.Source.Status != want || (material == "cork") != (f.Low == f.High) {
			t.Errorf("%s: %+v", material, f)
		}
	}
	for _, c := range []struct {
		name, material string
		nominal        unit.Length
	}{
		{"birch plywood 6", "birch plywood", unit.MM(6)}, {"18 mm MDF", "MDF", unit.MM(18)}, {"18mm MDF", "MDF", unit.MM(18)},
		{"3/4 in plywood", "plywood", 19050 * um}, {`plywood 23/32"`, "plywood", unit.Inch * 23 / 32}, {"1/4 plywood", "plywood", unit.Inch / 4},
		{"6.5 mm birch plywood", "birch plywood", 6500 * um}, {"plywood 1 1/8 in", "plywood", unit.Inch * 9 / 8},
	} {
		m, n, err := ParseSheetName(c.name)
		if err != nil || m != c.material || n != c.nominal {
			t.Errorf("%q: %q %v %v, want %q %v", c.name, m, n.Millimetres(), err, c.material, c.nominal.Millimetres())
		}
	}
	for _, bad := range []string{"", "plywood", "6", "6 plywood 9", "plywood 0", "plywood 400", "in plywood", strings.Repeat("x", 90) + " 6"} {
		if m, n, err := ParseSheetName(bad); err == nil {
			t.Errorf("%q was read as %q %v", bad, m, n.Millimetres())
		}
	}
	sizes := SheetSizes()
	if len(sizes) != 10 || sizes[0].Length != 2440*unit.Millimetre || sizes[0].Source.Status != figure.Read {
		t.Errorf("%d sheet sizes, first %+v", len(sizes), sizes[0])
	}
}

func TestBoardFaults(t *testing.T) {
	good := Board{Name: "A", Wood: "black cherry", Length: unit.MM(1100), Width: unit.MM(150), Thickness: unit.MM(27), Surface: Sawn,
		Defects: []Defect{{Check, 0, unit.MM(40), 0, unit.MM(150)}}, Price: Price{1250, PerBoardFoot}}
	if err := good.Check(); err != nil || good.Count() != 1 {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func(*Board){
		"figure.length-range":   func(b *Board) { b.Width = 0 },
		"stock.unknown-surface": func(b *Board) { b.Surface = "polished" },
		"stock.too-many":        func(b *Board) { b.Quantity = -1 },
		"stock.defect-outside":  func(b *Board) { b.Defects = []Defect{{Knot, unit.MM(1090), unit.MM(1101), 0, 1}} },
		"stock.price-range":     func(b *Board) { b.Price.Amount = -1 },
		"stock.unknown-unit":    func(b *Board) { b.Price.Per = "bushel" },
	} {
		b := good
		spoil(&b)
		wantKey(t, b.Check(), name)
	}
	s := Sheet{Length: unit.Metre, Width: unit.Metre, Nominal: unit.MM(6), Grain: "round"}
	wantKey(t, s.Check(), "stock.unknown-grain")
	s.Grain, s.Trim = NoGrain, unit.Metre
	wantKey(t, s.Check(), "figure.length-range")
}

func TestPrices(t *testing.T) {
	board := Board{Length: 8 * unit.Foot, Width: unit.Inch * 25 / 4, Thickness: unit.Inch * 7 / 4, SoldThickness: 2 * unit.Inch}
	for _, c := range []struct {
		price Price
		want  Money
	}{
		{Price{1250, PerBoardFoot}, 10000},       // 8 BF at 12.50
		{Price{3000, PerPiece}, 3000},            //
		{Price{500, PerFoot}, 4000},              // 8 ft
		{Price{100, PerSquareFoot}, 417},         // 4.1667 sq ft
		{Price{1200, PerCubicFoot}, 833},         // 0.69444 cu ft
		{Price{100_000, PerMetre}, 243_840},      // 2.4384 m
		{Price{1_000_000, PerCubicMetre}, 19664}, // 2.4384 x 0.15875 x 0.0508
	} {
		board.Price = c.price
		if got, err := board.Cost(); err != nil || got != c.want {
			t.Errorf("%+v: %d %v, want %d", c.price, got, err, c.want)
		}
	}
	board.Price = Price{}
	wantKey(t, second(board.Cost()), "stock.no-price")
	sheet := Sheet{Length: 2 * unit.Metre, Width: unit.Metre, Nominal: unit.MM(6), Price: Price{1000, PerSquareMetre}}
	if got, err := sheet.Cost(); err != nil || got != 2000 {
		t.Errorf("sheet: %d %v", got, err)
	}
	sheet.Price.Per = PerBoardFoot
	wantKey(t, second(sheet.Cost()), "stock.unit-does-not-fit")
}

func FuzzParseSheetName(f *testing.F) {
	f.Add("birch plywood 6")
	f.Add(`plywood 23/32"`)
	f.Fuzz(func(t *testing.T, name string) {
		m, n, err := ParseSheetName(name)
		if err == nil && (m == "" || n <= 0 || n > unit.MM(100)) {
			t.Errorf("%q: %q %v", name, m, n)
		}
	})
}
