package supplies_test

import (
	"math"
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/supplies"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// TestDerive: every figure of the chest's glue has a value, a status and a line in
// the ledger; a shop of 12.78 °C doubles the hour in clamps. By hand, two coats of
// danish oil on a board of 500 by 400 by 20 (0.436 m²) at 13 m² to the litre want
// 0.067 l, from 0.058 at 15 to 0.073 at 12.
func TestDerive(t *testing.T) {
	b := checktest.Chest()
	b.Piece.Parts = append(b.Piece.Parts, piece.Part{Address: "board", Length: b.Fig("l", 5000), Width: b.Fig("w", 4000), Thickness: b.Fig("t", 200)})
	b.Piece.Finishes = []piece.Finish{{Address: "finish.oil", Kind: "danish oil", Coats: 2, On: []address.Address{"board"}}}
	s := checktest.Shop()
	s.Climate.Now = timber.Air{Temperature: 115.0 / 9, Humidity: 50}
	all := supplies.Derive(&b.Piece, s, nil, b.Ledger)
	words := map[string]plan.SupplyFigure{}
	for _, x := range all {
		for _, f := range x.Figures {
			words[x.Name+" "+f.Word] = f
			if !f.Known() || f.Source.Status == "" || f.Unit == "" && f.Word != "coats" || b.Ledger.Value(f.Entry).Float() != f.Value.Float() {
				t.Errorf("%s %s: %+v", x.Name, f.Word, f)
			}
		}
	}
	for name, want := range map[string][3]float64{
		"pva clamp": {120, 120, 120}, "pva open": {5, 5, 5}, "pva coldest": {7, 4, 7}, "danish oil recoat": {720, 360, 720}, "danish oil litres": {2 * 0.436 / 13, 2 * 0.436 / 15, 2 * 0.436 / 12},
	} {
		f := words[name]
		for i, got := range [3]float64{f.Value.Float(), f.Low.Float(), f.High.Float()} {
			if math.Abs(got-want[i]) > 1e-4*want[i] {
				t.Errorf("%s: %v, want %v", name, got, want[i])
			}
		}
	}
	if words["danish oil litres"].Source.Status != "memory" {
		t.Errorf("%+v", words["danish oil litres"].Source)
	}
	for _, d := range b.Ledger.Verify() {
		t.Error(d)
	}
}

// TestUnknown: what nobody knows has no figures; without a shop nothing is asked of it.
func TestUnknown(t *testing.T) {
	b := checktest.Chest()
	b.Piece.Joints[0].Glue = "fish"
	b.Piece.Finishes = []piece.Finish{{Address: "finish.soap", Kind: "soap", Coats: 1}}
	all := supplies.Derive(&b.Piece, nil, nil, b.Ledger)
	if len(all) < 2 || all[0].Name != "fish" || len(all[0].Figures) != 0 || len(all[len(all)-1].Figures) != 0 {
		t.Errorf("%+v", all)
	}
	if _, err := supplies.Functions()["litres of finish"](nil); err == nil {
		t.Error("litres of nothing")
	}
}

// TestPanels: what panels are glued up with is listed, though no joint of the piece is
// glued: the house's, or the piece's only glue, or PVA.
func TestPanels(t *testing.T) {
	panel := []plan.Workpiece{{Kind: plan.PanelPiece, From: []string{"a", "b"}}}
	for _, c := range []struct {
		name, rule string
		glues      []string
		from       []plan.Workpiece
		want       []string // with a star, panels are glued up with it
	}{
		{"no joint glued", "", nil, panel, []string{"pva*"}},
		{"one strip", "", nil, []plan.Workpiece{{Kind: plan.PanelPiece, From: []string{"a"}}, {Kind: plan.StripPiece}}, nil},
		{"one glue", "", []string{"hide", "", "hide"}, panel, []string{"hide*"}},
		{"two glues", "", []string{"hide", "epoxy"}, panel, []string{"hide", "epoxy", "pva*"}},
		{"the house's", "epoxy", []string{"hide"}, panel, []string{"hide", "epoxy*"}},
		{"two widths", "", nil, []plan.Workpiece{{Kind: plan.NarrowPanel, From: []string{"a", "b"}}}, []string{"pva*"}},
	} {
		b := trial.New()
		for _, g := range c.glues {
			b.Piece.Joints = append(b.Piece.Joints, piece.Joint{Glue: g})
		}
		s := checktest.Shop()
		if c.rule != "" {
			s.Rules = append(s.Rules, shop.Rule{Name: supplies.RulePanelGlue, Value: unit.OfText(c.rule)})
		}
		var got []string
		for _, x := range supplies.Derive(&b.Piece, s, c.from, b.Ledger) {
			star := map[bool]string{true: "*"}[x.Panels]
			if got = append(got, x.Name+star); x.Panels && len(x.Figures) == 0 {
				t.Errorf("%s: nothing is known of %s", c.name, x.Name)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}
