package evaluate

import (
	"testing"

	"scantling/internal/unit"
)

const mm = unit.Millimetre

// TestFrames checks that every part's axes are right-handed, length along the
// grain, thickness towards what shows.
func TestFrames(t *testing.T) {
	r := Piece(example(t))
	for _, p := range r.Piece.Parts {
		f := p.Placed()
		if cross := f.U.Cross(f.V); cross != f.W {
			t.Errorf("%s: %v is not right-handed", p.Address, p.Frame)
		}
		for local, size := range p.Sizes() {
			axis, _ := p.Frame.Directions()[local].Axis()
			if p.Extent[axis].Size() != size.Nm {
				t.Errorf("%s: size %d is not its extent", p.Address, local)
			}
		}
		if axis, _ := p.Show.Axis(); p.Show != "" {
			if a, _ := p.Frame.Thickness.Axis(); a == axis && p.Frame.Thickness != p.Show {
				t.Errorf("%s: face 2 does not show", p.Address)
			}
		}
	}
}

// TestJointKinds resolves the joints that the demonstration piece does not have.
func TestJointKinds(t *testing.T) {
	r := Piece(Sources{Document: text("x", `scantling = 1

piece "Joints" {
}

material "m" {
  asks      = "cherry board"
  thickness = 20
}

part "rail" {
  of     = material.m
  grain  = "right"
  left   = 0
  wide   = 400
  front  = 0
  bottom = 0
  high   = 60
}

part "cross" {
  of     = material.m
  grain  = "up"
  left   = 100
  wide   = 60
  front  = 0
  bottom = 0 - 100
  high   = 300
}

part "leg" {
  of     = material.m
  grain  = "up"
  left   = part.rail.right
  wide   = 60
  front  = 0
  bottom = 0
  high   = 200
}

part "end" {
  of     = material.m
  grain  = "back"
  left   = part.rail.left
  front  = part.rail.front
  deep   = 150
  bottom = 0
  high   = 60
}

joint "cross" {
  kind  = "halving"
  of    = part.cross
  into  = part.rail
  meets = 1
}

joint "leg" {
  kind   = "dowel"
  of     = part.rail
  into   = part.leg
  meets  = 1
  dowels = { diameter = 8, count = 2, margin = 15 }
}

joint "end" {
  kind    = "box"
  of      = part.end
  into    = part.rail
  meets   = 1
  fingers = 5
  first   = "into"
}
`)})
	tell(t, r.Diagnostics)
	if len(r.Diagnostics) > 0 || len(r.Piece.Joints) != 3 {
		t.Fatalf("%d joints", len(r.Piece.Joints))
	}
	dowels, box := r.Piece.Joints[1].Dowels, r.Piece.Joints[2]
	if dowels == nil || dowels.Count != 2 || dowels.Diameter.Nm != 8*mm || dowels.InA.Nm <= 0 || dowels.InB.Nm <= 0 {
		t.Errorf("dowels %+v", dowels)
	}
	sum := unit.Length(0)
	for _, f := range box.Fingers {
		sum += f.Nm
	}
	if len(box.Fingers) != 5 || sum != 60*mm || box.First != "b" || box.Depth.Nm != 20*mm {
		t.Errorf("box joint %+v", box)
	}
	verify(t, r)
}
