package equip

import (
	"testing"

	"scantling/internal/figure"
	"scantling/internal/unit"
)

// TestTimber: a wood of the shop's own, which a board before it in the document is of,
// and one of a known name with another figure; what cannot be is told.
func TestTimber(t *testing.T) {
	s, _, ds := opened(t, "shop.hcl", []byte(`scantling = 1
shop "S" {}

board "pear" {
  species   = "garden pear"
  moisture  = 11
  length    = 2000
  width     = 200
  thickness = 27
}

timber "garden pear" {
  like              = "black cherry"
  shrink_radial     = 3.9
  shrink_tangential = 11.3
}

timber "Cherry, black" {
  like      = "black cherry"
  stiffness = 9.5
}
`), unit.Millimetre)
	for _, d := range *ds {
		t.Error(d.Code, d.Where.Line)
	}
	if len(s.Boards) != 1 || s.Boards[0].Species != "garden pear" || s.Boards[0].Moisture != 11 {
		t.Fatalf("%+v", s.Boards)
	}
	pear, err := s.Wood("garden pear")
	// 1/(100 30/11.3 - 30 + 10), the Wood Handbook's coefficient of a shrinkage.
	if err != nil || pear.Tangential.Value != 0.004074 || pear.Tangential.Source.Status != figure.Stated || pear.MOE.Value == 0 {
		t.Errorf("%+v %v", pear.Tangential, err)
	}
	if cherry, err := s.Wood("black cherry"); err != nil || cherry.MOE.Value != 9.5 || cherry.Tangential.Value != 0.00248 {
		t.Errorf("%+v %v", cherry.MOE, err)
	}
	for _, bad := range []string{`timber "x" {}`, "board \"b\" {\n species = \"black cherry\"\n moisture = -3\n length = 2000\n width = 200\n thickness = 27\n}", `timber "x" { like = "no such wood" }`, "timber \"x\" {\n kind = \"stone\"\n like = \"black cherry\"\n}", `timber "x" { shrink_radial = 90 }`} {
		if _, _, ds := opened(t, "shop.hcl", []byte("scantling = 1\nshop \"S\" {}\n"+bad+"\n"), unit.Millimetre); !ds.HasErrors() {
			t.Errorf("%s is taken: %v", bad, *ds)
		}
	}
}
