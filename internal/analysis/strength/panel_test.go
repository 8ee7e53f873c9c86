package strength_test

import (
	"slices"
	"testing"

	"scantling/internal/piece"
	"scantling/internal/piece/trial"
)

// framed is a shelf of 900 by 300 by 19 with a loose board on it, in grooves of 6 before and
// behind, and in housings of 6 at its ends or free there.
func framed(ends bool) *trial.Builder {
	b := bookcase()
	b.Part("loose", trial.GrainRight, 1000, 8000, 500, 2500, 4190, 4390)
	b.Part("before", trial.Front, 190, 9190, -190, 60, 3500, 4700)
	b.Part("behind", trial.Front, 190, 9190, 2940, 3190, 3500, 4700)
	for _, name := range []string{"before", "behind"} {
		b.Joint("joint."+name, piece.GrooveJoint, "shelf", name, 60, nil)
	}
	if !ends {
		b.Piece.Joints = slices.DeleteFunc(b.Piece.Joints, func(j piece.Joint) bool { return j.A == "shelf" && (j.B == "left" || j.B == "right") })
	}
	materials(b, oak)
	return b
}

// TestPanelHeldAllRound: held at four edges a shelf sags by what its strip across the grain
// bears of the load. Red oak is 0.082 as stiff along the rings as along the grain (Wood
// Handbook FPL-GTR-190, 2010, Table 5-1); 288 across and 900 along give
// 0.082 / 288^4 of 0.082 / 288^4 + 1 / 900^4: 0.887.
func TestPanelHeldAllRound(t *testing.T) {
	two, four := load(shelfOf(t, derive(t, framed(false), nil), "shelf"), "contents"), load(shelfOf(t, derive(t, framed(true), nil), "shelf"), "contents")
	a, _ := two.AtOnce.Value.Length()
	b, _ := four.AtOnce.Value.Length()
	if share := b.Millimetres() / a.Millimetres(); !four.AtOnce.Known() || share < 0.86 || share > 0.91 {
		t.Errorf("held at two edges it sags %v, at four %v: %.3f of it, by hand 0.887", a, b, share)
	}
	if w, v := two.Load.Value.Float(), four.Load.Value.Float(); w != v {
		t.Errorf("its load is %g and %g", w, v)
	}
}
