package turns

import (
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/piece"
)

// TestOrder: the case stands before its openings are measured, drawers follow,
// stops come last though they belong to the case.
func TestOrder(t *testing.T) {
	part := func(name, group string, after ...address.Address) piece.Part {
		return piece.Part{Address: address.Address(name), Group: address.Address(group), CutAfter: after}
	}
	p := &piece.Piece{
		Groups: []piece.Group{{Address: "case", Name: "case"}, {Address: "drawer[1]", Name: "drawer"}, {Address: "drawer[2]", Name: "drawer"}},
		Parts: []piece.Part{
			part("case.side", "case"), part("case.top", "case"), part("case.back", "case", "measure.boards"), part("case.stop", "case", "measure.drawers"),
			part("drawer[1].front", "drawer[1]", "measure.openings"), part("drawer[1].side", "drawer[1]", "measure.openings"),
			part("drawer[2].front", "drawer[2]", "measure.openings"), part("drawer[2].side", "drawer[2]", "measure.openings"),
			part("drawer[2].tray", "drawer[2]", "measure.openings"),
		},
		Joints: []piece.Joint{
			{A: "case.top", B: "case.side"}, {A: "case.back", B: "case.side"}, {A: "case.stop", B: "case.top"},
			{A: "drawer[1].side", B: "drawer[1].front"}, {A: "drawer[2].side", B: "drawer[2].front"},
		},
		Measures: []piece.Measure{
			{Address: "measure.drawers", Stage: "drawer"}, {Address: "measure.openings", Stage: "case"},
			{Address: "measure.boards", Of: []address.Address{"case.side"}}, {Address: "measure.never", Stage: "lid"},
		},
	}
	want := []Event{
		{Measure: "measure.boards"}, {Group: "case"}, {Measure: "measure.openings"}, {Group: "drawer[1]"}, {Group: "drawer[2]"},
		{Measure: "measure.drawers"}, {Late: "case.stop"},
	}
	if got := Order(p); !slices.Equal(got, want) {
		t.Errorf("%+v", got)
	}
	if late := Late(want); len(late) != 1 || !late["case.stop"] {
		t.Errorf("late %v", late)
	}
}
