package strength_test

import (
	"slices"
	"testing"

	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestUpright: an upright of 20 in the middle of a shelf of 900 leaves two spans of 440.
// It holds nothing up if it hangs from the shelf. A bottom that lies on the floor bridges
// nothing.
func TestUpright(t *testing.T) {
	b := bookcase()
	b.Part("post", trial.LeftSide, 4590, 4790, 0, 3000, 690, 4000)
	b.Joint("joint.post", piece.ButtJoint, "post", "bottom", 0, nil)
	if got := shelfOf(t, derive(t, b, nil), "shelf"); got.Span.Nm != unit.MM(440) {
		t.Errorf("span %v over a post", got.Span.Nm)
	}
	hanging := bookcase()
	hanging.Part("post", trial.LeftSide, 4590, 4790, 0, 3000, 3000, 4000)
	hanging.Joint("joint.post", piece.ButtJoint, "post", "shelf", 0, nil)
	if got := shelfOf(t, derive(t, hanging, nil), "shelf"); got.Span.Nm != unit.MM(900) {
		t.Errorf("span %v over what hangs from it", got.Span.Nm)
	}
	floor := bookcase()
	p := floor.Find("bottom")
	p.Extent[piece.Up].Low, p.Extent[piece.Up].High = floor.Fig("low", 0), floor.Fig("high", 190)
	if s := derive(t, floor, nil); slices.ContainsFunc(s.Shelves, func(x plan.Shelf) bool { return x.Part == "bottom" }) {
		t.Error("a bottom on the floor sags")
	}
}
