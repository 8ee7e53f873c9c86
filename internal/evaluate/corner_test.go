package evaluate

import (
	"fmt"
	"strings"
	"testing"

	"scantling/internal/piece"
)

const cornerBox = `scantling = 1
piece "Box" {
  units = "mm"
}
material "wood" {
  asks      = "WOOD"
  thickness = 12
}
part "front" {
  of     = material.wood
  grain  = "right"
  left   = 0
  right  = 300
  front  = 0
  bottom = 0
  high   = 100
}
part "side" {
  of     = material.wood
  grain  = "back"
  left   = 0
  front  = FRONT
  back   = 350
  bottom = 0
  high   = 100
  mirror = 300
}
joint "corner" {
  of    = part.side
  into  = part.front
  meets = 2
  SAYS
}
`

const pineShop = `scantling = 1
shop "Pine" {
  units = "mm"
}
board "pine 20" {
  species   = "eastern white pine"
  state     = "planed"
  length    = 2400
  width     = 200
  thickness = 20
  count     = 4
  sawn      = "flat"
}
`

// cornerOf evaluates the box with a joint and returns the first pair.
func cornerOf(t *testing.T, wood, front, says string) (piece.Joint, *piece.Piece) {
	t.Helper()
	doc := strings.NewReplacer("WOOD", wood, "FRONT", front, "SAYS", says).Replace(cornerBox)
	src := Sources{Document: text("box", doc)}
	if wood == "pine board" {
		src.Shop = text("shop", pineShop)
	}
	r := Piece(src)
	if len(r.Diagnostics) > 0 || len(r.Piece.Joints) != 2 {
		tell(t, r.Diagnostics)
		t.Fatalf("%d joints", len(r.Piece.Joints))
	}
	verify(t, r)
	return r.Piece.Joints[0], r.Piece
}

func sizes(fs []piece.Figure) string {
	var out []float64
	for _, f := range fs {
		out = append(out, f.Nm.Millimetres())
	}
	return fmt.Sprint(out)
}

// TestDovetailByRule: what the trade's rules give for a drawer's corner, worked out by
// hand: a tail for every two thicknesses of 100, pins of half of 12, tails that share
// 100 - 5 x 6 = 70; one in eight of 12 in hardwood; a fifth of 12, at least 3, for the lap.
func TestDovetailByRule(t *testing.T) {
	j, p := cornerOf(t, "hard maple board", "part.front.back", `kind = "dovetail"`)
	if got := sizes(j.Tails.Tails) + sizes(j.Tails.Pins); got != "[17.5 17.5 17.5 17.5][6 6 6 6 6]" {
		t.Error(got)
	}
	if j.Tails.Lean.Nm.Millimetres() != 1.5 || j.Tails.Lap.Nm != 0 || j.Depth.Nm.Millimetres() != 12 {
		t.Errorf("%+v", *j.Tails)
	}
	for _, part := range p.Parts {
		if part.Name == "side" && part.Extent[piece.Back].Low.Nm != 0 {
			t.Errorf("%s begins at %v", part.Address, part.Extent[piece.Back].Low.Nm)
		}
	}
	// One in six of 12 in softwood.
	if j, _ := cornerOf(t, "pine board", "part.front.back", `kind = "dovetail"`); j.Tails.Lean.Nm.Millimetres() != 2 {
		t.Errorf("%+v", *j.Tails)
	}
	j, p = cornerOf(t, "hard maple board", "part.front.back", `kind = "dovetail"
  lap   = true
  tails = { count = 3, pin = 5, half_pin = 8, slope = 6 }`)
	if got := sizes(j.Tails.Tails) + sizes(j.Tails.Pins); got != "[24.666666 24.666667 24.666667][8 5 5 8]" {
		t.Error(got)
	}
	// 12 - 3 long, so that a sixth of it is 1.5.
	if j.Tails.Lean.Nm.Millimetres() != 1.5 || j.Tails.Lap.Nm.Millimetres() != 3 || j.Depth.Nm.Millimetres() != 9 {
		t.Errorf("%+v", *j.Tails)
	}
	for _, part := range p.Parts {
		if part.Name == "side" && part.Extent[piece.Back].Low.Nm.Millimetres() != 3 {
			t.Errorf("%s begins at %v", part.Address, part.Extent[piece.Back].Low.Nm)
		}
	}
}

// TestMitreByRule: by the rules of the trade for 12 and 12: a spline of 4, 6 deep, a
// sixth of 16.97 from the heel; keys of 3, two thirds of 16.97 deep, one every 50.
func TestMitreByRule(t *testing.T) {
	j, p := cornerOf(t, "hard maple board", "0", "kind = \"mitre\"\n  spline = true\n  keys = true")
	if s := j.Spline; sizes([]piece.Figure{s.Thickness, s.Depth, s.Heel}) != "[4 6 3]" {
		t.Errorf("%+v", *s)
	}
	if k := j.Keys; sizes([]piece.Figure{k.Thickness, k.Depth}) != "[3 11.5]" || sizes(k.At) != "[25 75]" {
		t.Errorf("%+v", *k)
	}
	// A side that stops at the front goes on to the outer corner.
	_, q := cornerOf(t, "hard maple board", "part.front.back", `kind = "mitre"`)
	for i := range p.Parts {
		if p.Parts[i].Extent != q.Parts[i].Extent && p.Parts[i].Extent[piece.Back].Low.Nm != q.Parts[i].Extent[piece.Back].Low.Nm {
			t.Errorf("%s: %v and %v", p.Parts[i].Address, p.Parts[i].Extent, q.Parts[i].Extent)
		}
	}
	j, _ = cornerOf(t, "hard maple board", "0", "kind = \"mitre\"\n  keys = { count = 3, thickness = 2, depth = 8, margin = 20 }")
	if sizes(j.Keys.At) != "[20 50 80]" || j.Spline != nil {
		t.Errorf("%+v", *j.Keys)
	}
}

// TestTongueByRule: a third of 12, in the middle; and what the maker says instead.
func TestTongueByRule(t *testing.T) {
	j, _ := cornerOf(t, "hard maple board", "part.front.back", `kind = "tongue"`)
	if j.Depth.Nm.Millimetres() != 4 || sizes([]piece.Figure{j.Tongue.Thickness, j.Tongue.From, j.Tongue.Gap}) != "[4 4 0]" {
		t.Errorf("%+v", *j.Tongue)
	}
	j, _ = cornerOf(t, "hard maple board", "part.front.back", "kind = \"tongue\"\n  depth = 5\n  tongue = { thickness = 3, from = 2, gap = 1 }")
	if j.Depth.Nm.Millimetres() != 5 || sizes([]piece.Figure{j.Tongue.Thickness, j.Tongue.From, j.Tongue.Gap}) != "[3 2 1]" {
		t.Errorf("%+v", *j.Tongue)
	}
	j, _ = cornerOf(t, "hard maple board", "part.front.back", "kind = \"sliding dovetail\"\n  slide = { one_side = true }")
	// A third of 12 deep, two thirds of 12 at the neck, leaning an eighth of 4.
	if j.Depth.Nm.Millimetres() != 4 || sizes([]piece.Figure{j.Slide.Neck, j.Slide.Lean}) != "[8 0.5]" || !j.Slide.OneSide {
		t.Errorf("%+v", *j.Slide)
	}
}
