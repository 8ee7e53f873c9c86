package checktest

import (
	"scantling/internal/figure"
	"scantling/internal/shop"
	"scantling/internal/stock"
	"scantling/internal/timber"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// Shop is a small metric shop with what the chest needs.
func Shop() *shop.Shop {
	mm := unit.MM
	s := &shop.Shop{
		Name: "Trial", Region: "en-GB", Currency: "EUR", Units: unit.Metric, Resolution: unit.Millimetre / 10, Denominator: 32,
		Climate: shop.Climate{Season: timber.Season{Now: 8.5, Dry: 7, Wet: 11}},
	}
	machine := func(id string, kind tool.Kind, change func(*tool.Machine)) {
		m := tool.Machine{Name: id, Kind: kind}
		change(&m)
		s.Machines = append(s.Machines, shop.Machine{ID: id, Tool: m})
	}
	stated := func(l unit.Length) figure.Of[unit.Length] { return tool.Stated("limit", l) }
	machine("table saw", tool.TableSaw, func(m *tool.Machine) {
		m.Least.Length, m.Kerf, m.Greatest.Width = stated(mm(150)), stated(mm(3)), stated(mm(610))
	})
	machine("jointer", tool.Jointer, func(m *tool.Machine) {
		m.Least.Length, m.Greatest.Width, m.Least.Thickness = stated(mm(300)), stated(mm(150)), stated(mm(10))
	})
	machine("thicknesser", tool.ThicknessPlaner, func(m *tool.Machine) {
		m.Least.Length, m.Greatest.Width, m.Least.Thickness = stated(mm(305)), stated(mm(410)), stated(mm(4))
	})
	machine("router table", tool.RouterTable, func(m *tool.Machine) { m.Least.Length = stated(mm(305)) })
	cutter := func(id string, shape tool.Shape, diameter, reach unit.Length) {
		s.Cutters = append(s.Cutters, shop.Cutter{ID: id, Tool: tool.Cutter{Name: id, Shape: shape, Diameter: diameter, CuttingLength: reach}})
	}
	cutter("straight 3.2", tool.Straight, 3200*unit.Micrometre, mm(10))
	cutter("straight 6.35", tool.Straight, 6350*unit.Micrometre, mm(19))
	cutter("straight 12.7", tool.Straight, 12700*unit.Micrometre, mm(25))
	cutter("round-nose 6.4", tool.RoundNose, 6400*unit.Micrometre, mm(8))
	cutter("round-nose 12.6", tool.RoundNose, 12600*unit.Micrometre, mm(12))
	cutter("round-nose 12.8", tool.RoundNose, 12800*unit.Micrometre, mm(12))
	price := stock.Price{Amount: 3800, Per: stock.PerPiece}
	s.Boards = append(s.Boards, shop.Board{ID: "cherry 27", Species: Cherry, Sawn: timber.FlatSawn, Have: 8,
		Stock: stock.Board{Name: "cherry 27", Wood: Cherry, Length: mm(2400), Width: mm(165), Thickness: mm(27), Surface: stock.Sawn, Price: price}})
	sheet := func(id string, nominal, measured unit.Length) {
		s.Sheets = append(s.Sheets, shop.Sheet{ID: id, Have: 2, Stock: stock.Sheet{
			Name: id, Material: Ply, Nominal: nominal, Measured: measured, Length: mm(1220), Width: mm(610), Grain: stock.AlongLength, Price: price}})
	}
	sheet("ply 4", mm(4), 3800*unit.Micrometre)
	sheet("ply 6", mm(6), mm(6))
	s.Fittings = []shop.Fitting{{ID: "panel pin 20", Have: 500}, {ID: "turn button", Have: 10}}
	return s
}

// The materials of the chest, by the catalogue's names.
const (
	Cherry = "Cherry, black"
	Ply    = "birch plywood"
)
