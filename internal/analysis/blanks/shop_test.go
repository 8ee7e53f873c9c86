package blanks_test

import (
	"testing"

	"scantling/internal/analysis/blanks"
	"scantling/internal/analysis/check/checktest"
	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/shop"
	"scantling/internal/stock"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// TestShop: what a shop's rack, machines and rules come to.
func TestShop(t *testing.T) {
	s := checktest.Shop()
	s.TrimEnds, s.TrimEdges = unit.MM(10), unit.MM(5)
	s.Rules = []shop.Rule{
		{Name: "allowance end", Value: unit.OfLength(unit.MM(20)), Why: "snipe"},
		{Name: "gang length", Value: unit.OfLength(unit.MM(700))},
		{Name: "allowance edge", Value: unit.OfCount(3)},
	}
	s.Machines = append(s.Machines, shop.Machine{ID: "band saw", Tool: tool.Machine{Name: "band saw", Kind: tool.BandSaw,
		Kerf: stated(1200 * unit.Micrometre), Greatest: tool.Limits{Thickness: stated(unit.MM(150))}}})
	s.Sheets[0].Stock.Grain, s.Sheets[1].Stock.Grain = stock.AlongWidth, stock.NoGrain
	l := ledger.New(nil)
	rack, limits, allow := blanks.Of(s, l)
	if want := (blanks.Limits{LeastPlane: unit.MM(305), LeastRout: unit.MM(305), Joint: unit.MM(150), Plane: unit.MM(410), Resaw: unit.MM(150), ResawKerf: 1200 * unit.Micrometre}); limits != want {
		t.Errorf("%+v", limits)
	}
	if allow.End.Nm != unit.MM(20) || allow.Gang != unit.MM(700) || allow.Edge.Nm != 2500*unit.Micrometre || allow.Kerf.Nm != unit.MM(3) {
		t.Errorf("%+v", allow)
	}
	if e, _ := l.Entry(allow.End.Entry); e.Origin != ledger.HouseRule || e.Source != "snipe" {
		t.Errorf("%+v", e)
	}
	if len(rack) != 3 || rack[0].Sheet || rack[0].Planed || rack[0].End != unit.MM(10) || rack[0].Have != 8 {
		t.Errorf("%+v", rack)
	}
	// A sheet whose grain runs across its width lies turned.
	if rack[1].Length != unit.MM(610) || rack[1].Width != unit.MM(1220) || rack[1].Turns || rack[1].Edge != unit.MM(5) {
		t.Errorf("%+v", rack[1])
	}
	if rack[2].Length != unit.MM(1220) || !rack[2].Turns {
		t.Errorf("%+v", rack[2])
	}
}

// TestBestMachine: of two of a kind the one that takes the shorter or the wider
// work, and the longer of jointer and thicknesser.
func TestBestMachine(t *testing.T) {
	s := &shop.Shop{}
	for _, m := range []struct {
		kind        tool.Kind
		least, wide int64
	}{{tool.Jointer, 300, 150}, {tool.Jointer, 250, 100}, {tool.ThicknessPlaner, 280, 300}, {tool.RouterTable, 400, 0}} {
		s.Machines = append(s.Machines, shop.Machine{Tool: tool.Machine{Kind: m.kind,
			Least: tool.Limits{Length: stated(unit.MM(m.least))}, Greatest: tool.Limits{Width: stated(unit.MM(m.wide))}}})
	}
	_, limits, _ := blanks.Of(s, ledger.New(nil))
	if limits.LeastPlane != unit.MM(280) || limits.Joint != unit.MM(150) || limits.LeastRout != unit.MM(400) || limits.Resaw != 0 {
		t.Errorf("%+v", limits)
	}
	if blanks.Kerf(s) != 0 {
		t.Error("a kerf without a saw")
	}
}

func stated(l unit.Length) figure.Of[unit.Length] { return tool.Stated("limit", l) }
