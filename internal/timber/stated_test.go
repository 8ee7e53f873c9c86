package timber

import (
	"testing"

	"scantling/internal/figure"
	"scantling/internal/unit"
)

// TestStatedWood: a shop's own pear, by its shrinkages and otherwise like cherry, moves
// by the coefficient that follows from them, and comes back out of a ledger's value as
// it went in.
func TestStatedWood(t *testing.T) {
	cherry := wood(t, "black cherry")
	s, err := Statement{Name: "pear from the garden", Like: cherry, ShrinkRadial: 3.9, ShrinkTangential: 11.3, MOE: 7.8}.Species()
	if err != nil {
		t.Fatal(err)
	}
	if want, _ := CoefficientOf(11.3, 30); s.Tangential.Value != millionths(want) || s.Tangential.Source.Status != figure.Stated || s.MOE.Value != 7.8 || s.Gravity != cherry.Gravity {
		t.Errorf("%+v", s)
	}
	c, err := Default().With(s)
	if err != nil {
		t.Fatal(err)
	}
	found, err := c.Find("Pear from the garden")
	if err != nil || found.Name != s.Name {
		t.Fatal(found.Name, err)
	}
	back, err := FromValue(found.Value())
	if err != nil || back.Radial.Value != s.Radial.Value || back.Tangential.Value != s.Tangential.Value || back.FibreSaturation.Value != 30 {
		t.Errorf("%+v, %v", back, err)
	}
	for _, a := range Default().All() {
		if v := a.Value(); v.Dim() != unit.DimText {
			t.Errorf("%s goes as %v", a.Name, v)
		}
	}
	if _, err := (Statement{Name: "unknown"}).Species(); err == nil {
		t.Error("a wood of which nothing is known")
	}
	for _, v := range []unit.Value{{}, unit.OfList(), unit.OfInt(unit.DimUntyped, 3), unit.OfText("no such wood"), unit.OfList(unit.OfText("x"), unit.OfText("y"), unit.OfText("z"), unit.OfText("w"))} {
		if s, err := FromValue(v); err == nil {
			t.Errorf("%v is %s", v, s.Name)
		}
	}
}
