package evaluate

import (
	"testing"

	"scantling/internal/unit"
)

// TestShopFitting: sizes that the shop states of the one in hand go before the
// catalogue's, and a fitting on both of a pair is laid against each.
func TestShopFitting(t *testing.T) {
	doc := `scantling = 1
piece "Trial" {
  units = "mm"
}
material "case" {
  asks      = "cherry board"
  thickness = 18
}
part "side" {
  of     = material.case
  grain  = "up"
  left   = 0
  front  = 0
  deep   = 200
  bottom = 0
  high   = 400
  mirror = 300
}
hardware "stop" {
  kind   = "knob 25"
  on     = part.side
  side   = "inside"
  centre = part.side.left.back - 30
}
`
	shop := `scantling = 1
shop "Ours" {
  units = "mm"
}
board "cherry 27" {
  species   = "black cherry"
  state     = "rough"
  length    = 2400
  width     = 165
  thickness = 27
  count     = 4
}
fitting "knob 25" {
  kind         = "knob"
  diameter     = 26
  projection   = 19
  screws       = 1
  screw        = "4.0"
  screw_length = 25
}
`
	r := Piece(Sources{Document: text("trial", doc), Shop: text("shop", shop)})
	tell(t, r.Diagnostics)
	verify(t, r)
	if len(r.Piece.Hardware) != 2 || len(r.Piece.Cuts) != 2 {
		t.Fatalf("%d fittings, %d cuts", len(r.Piece.Hardware), len(r.Piece.Cuts))
	}
	for i, want := range [2][2]unit.Length{{unit.MM(18), unit.MM(37)}, {unit.MM(263), unit.MM(282)}} {
		h := r.Piece.Hardware[i]
		b := h.Bodies[0].Extent
		if b[0].Low.Nm != want[0] || b[0].High.Nm != want[1] || b[1].Low.Nm != unit.MM(157) || b[1].High.Nm != unit.MM(183) {
			t.Errorf("%s: %+v", h.Address, b)
		}
	}
	shop = shop[:len(shop)-len("  screw_length = 25\n}\n")] + "  screw_length = 2\n}\n"
	r = Piece(Sources{Document: text("trial", doc), Shop: text("shop", shop)})
	if len(r.Diagnostics) != 1 || r.Diagnostics[0].Text.Key != "hardware.no-length" {
		t.Errorf("%+v", r.Diagnostics)
	}
}
