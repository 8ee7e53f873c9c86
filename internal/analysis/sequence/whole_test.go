package sequence

import (
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/piece"
)

// What no group holds is glued up too, after the last card and before the author's
// own last step; parts of one group are not told twice.
func TestWhole(t *testing.T) {
	in := box()
	steps, _ := Decide(in)
	for _, st := range steps {
		if st.ID == "assemble: whole" {
			t.Fatal("every joint is within a group, yet the whole is put together")
		}
	}
	in.Piece.Parts = append(in.Piece.Parts,
		piece.Part{Address: "plinth", Name: "plinth"}, piece.Part{Address: "foot", Name: "foot"})
	in.Piece.Joints = append(in.Piece.Joints,
		piece.Joint{Kind: piece.HousingJoint, A: "plinth", B: "foot", Glue: "pva", Fasteners: &piece.Fasteners{Kind: "screw 40", Count: 3}},
		piece.Joint{Kind: piece.ButtJoint, A: "case.side", B: "plinth"})
	in.Piece.Steps = append(in.Piece.Steps, piece.Step{Address: "step.wall", Text: "Fix it to the wall."})
	row := in.Rows[0]
	row.Mark, row.Name, row.Members = "1", "plinth", []address.Address{"plinth"}
	in.Rows = append(in.Rows, row)
	row.Mark, row.Name, row.Members = "2", "foot", []address.Address{"foot"}
	in.Rows = append(in.Rows, row)
	steps, _ = Decide(in)
	order := []string{"assemble: case", "dry-fit: whole", "assemble: whole", "author: step.wall", "hand over"}
	last := -1
	for _, id := range order {
		at := place(t, steps, id)
		if at <= last {
			t.Errorf("%s is step %d, not after step %d", id, at, last)
		}
		last = at
	}
	glue := steps[place(t, steps, "assemble: whole")]
	if glue.Text.Key != "steps.glue-whole" {
		t.Errorf("two parts with glue between them: %s", glue.Text.Key)
	}
	if want := []string{"1", "2", "A1"}; !slices.Equal(slices.Sorted(slices.Values(glue.Marks)), want) {
		t.Errorf("the whole is of %v, want %v", glue.Marks, want)
	}
}
