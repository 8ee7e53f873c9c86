package sequence

import (
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// withShelf is [box] with a shelf in the case that is cut to what is read between the side
// and the top, a batten that goes onto the shelf, and a leg that nothing joins.
func withShelf() Input {
	in := box()
	in.Piece.Parts = append(in.Piece.Parts,
		piece.Part{Address: "case.shelf", Name: "shelf", Group: "case", CutAfter: []address.Address{"measure.shelf"}},
		piece.Part{Address: "case.batten", Name: "batten", Group: "case"}, piece.Part{Address: "case.leg", Name: "leg", Group: "case"})
	in.Piece.Joints = append(in.Piece.Joints, piece.Joint{Kind: piece.HousingJoint, A: "case.shelf", B: "case.side"}, piece.Joint{Kind: piece.ButtJoint, A: "case.batten", B: "case.shelf"})
	in.Piece.Measures = append(in.Piece.Measures, piece.Measure{Address: "measure.shelf", Of: []address.Address{"case.shelf"}, Take: []string{"length"}})
	for _, r := range []struct {
		mark, stage string
		of          address.Address
	}{{"A4", "4", "case.shelf"}, {"A5", "1", "case.batten"}, {"A6", "1", "case.leg"}} {
		in.Rows = append(in.Rows, plan.PartRow{Mark: r.mark, Members: []address.Address{r.of}, Stage: r.stage, Order: len(in.Rows) + 1})
		id := r.mark + ": cut to length"
		in.Operations = append(in.Operations, plan.Operation{ID: id, Kind: plan.CutToLength, Mark: r.mark, Setup: "card " + id, Machine: "saw"})
		in.Setups = append(in.Setups, plan.Setup{ID: "card " + id, Machine: "saw", Operations: []string{id}, Placements: []plan.Placement{{Mark: r.mark, Pieces: 1}}})
	}
	for i := range in.Operations {
		if op := &in.Operations[i]; op.ID == "case: assemble" {
			op.Members = append(op.Members, "case.shelf", "case.batten")
			op.Needs = append(op.Needs, "A4: cut to length")
		}
	}
	in.Stages[0].Marks = append(in.Stages[0].Marks, "A5", "A6")
	in.Stages = append(in.Stages, plan.Stage{ID: "4", Marks: []string{"A4"}, Needs: []address.Address{"measure.shelf"}})
	in.Measures = append(in.Measures, plan.Measure{Address: "measure.shelf", Marks: []string{"A4"},
		Readings: []plan.Reading{{Of: "case.shelf", What: "length", Planned: plan.Figure{Nm: unit.MM(180)}}}})
	return in
}

// TestTriedBeforeRead: the case is put together dry without the shelf when its parts are
// cut, the shelf's place is read, the shelf is cut, and only then is the case glued. What
// goes onto the shelf, and what nothing joins, is not in the trial.
func TestTriedBeforeRead(t *testing.T) {
	steps, _ := Decide(withShelf())
	chain := []string{"card: card A2: cut to length", "try: measure.shelf", "measure: measure.shelf", "card: card A4: cut to length", "dry-fit: case", "assemble: case"}
	for i := 1; i < len(chain); i++ {
		if place(t, steps, chain[i-1]) >= place(t, steps, chain[i]) {
			t.Errorf("%q does not come before %q", chain[i-1], chain[i])
		}
	}
	try, read := steps[place(t, steps, "try: measure.shelf")], steps[place(t, steps, "measure: measure.shelf")]
	if !slices.Equal(try.Marks, []string{"A1", "A2"}) || try.Text.Key != "steps.try" {
		t.Errorf("tried: %v, %s", try.Marks, try.Text.Key)
	}
	if !slices.Equal(read.After, []string{"try: measure.shelf"}) {
		t.Errorf("the reading comes after %v", read.After)
	}
	if has := func(key string) bool {
		return slices.ContainsFunc(read.More, func(m message.Message) bool { return m.Key == key })
	}; !has("steps.reading-between") || !has("steps.read-between") || has("steps.reading") {
		t.Errorf("%+v", read.More)
	}
	in := withShelf()
	in.Piece.Measures[2].Take = []string{"thickness"}
	in.Measures[2].Readings[0].What = "thickness"
	steps, _ = Decide(in)
	if slices.ContainsFunc(steps, func(s plan.Step) bool { return s.ID == "try: measure.shelf" }) {
		t.Error("a thickness is read from the planed board: nothing is put together for it")
	}
	if place(t, steps, "measure: measure.shelf") >= place(t, steps, "assemble: case") {
		t.Error("the thickness is read when the case stands")
	}
}
