package sequence

import (
	"slices"
	"strings"
	"testing"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// box is a case of two parts and a drawer of two that waits for its opening, a
// stop that is fitted last, a loose tray.
func box() Input {
	part := func(name, group string, after ...address.Address) piece.Part {
		return piece.Part{Address: address.Address(name), Name: name[strings.LastIndexByte(name, '.')+1:], Group: address.Address(group), CutAfter: after}
	}
	in := Input{Piece: &piece.Piece{
		Groups: []piece.Group{{Address: "case", Name: "case"}, {Address: "drawer[1]", Name: "drawer", Nth: 1, Of: 2}, {Address: "drawer[2]", Name: "drawer", Nth: 2, Of: 2}},
		Parts: []piece.Part{
			part("case.side", "case"), part("case.top", "case"), part("case.stop", "case", "measure.run"),
			part("drawer[1].front", "drawer[1]", "measure.opening"), part("drawer[1].side", "drawer[1]", "measure.opening"),
			part("drawer[2].front", "drawer[2]", "measure.opening"), part("drawer[2].side", "drawer[2]", "measure.opening"),
			part("drawer[1].tray", "drawer[1]", "measure.opening"),
		},
		Joints: []piece.Joint{
			{Kind: piece.RebateJoint, A: "case.top", B: "case.side", Glue: "pva", Fasteners: &piece.Fasteners{Kind: "panel pin 25", Count: 4}},
			{Kind: piece.ButtJoint, A: "case.stop", B: "case.top", Glue: "hide"},
			{Kind: piece.RebateJoint, A: "drawer[1].side", B: "drawer[1].front", Glue: "pva"},
			{Kind: piece.RebateJoint, A: "drawer[2].side", B: "drawer[2].front", Glue: "pva"},
		},
		Measures: []piece.Measure{{Address: "measure.opening", Stage: "case", Of: []address.Address{"case.opening"}}, {Address: "measure.run", Stage: "drawer"}},
		Fits:     []piece.Fit{{Address: "fit.drawer[1]", Moves: "drawer[1]"}, {Address: "fit.drawer[2]", Moves: "drawer[2]"}},
		Finishes: []piece.Finish{
			{Address: "finish.outside", Kind: "danish oil", Coats: 2, On: []address.Address{"case.side", "case.top"}},
			{Address: "finish.fronts", Kind: "shellac", Coats: 1, On: []address.Address{"drawer[1].front"}, When: "before assembly"},
		},
		Hardware: []piece.Hardware{{Address: "drawer[1].hardware.knob", Kind: "knob", Count: 1, On: "drawer[1].front"}, {Address: "drawer[2].hardware.knob", Kind: "knob", Count: 1, On: "drawer[2].front"}},
		Steps: []piece.Step{
			{Address: "step.try", Text: "Try the tray.", After: []address.Address{"drawer.tray"}},
			{Address: "step.sign", Text: "Sign the bottom.", Before: []address.Address{"finish.outside"}, Caution: "Ink stains."},
			{Address: "step.lost", Text: "Hang it.", After: []address.Address{"lid"}},
		},
	}}
	row := func(mark, stage string, members ...address.Address) {
		in.Rows = append(in.Rows, plan.PartRow{Mark: mark, Name: strings.ToLower(mark), Members: members, Stage: stage, Order: len(in.Rows) + 1})
	}
	row("A1", "1", "case.side")
	row("A2", "1", "case.top")
	row("A3", "3", "case.stop")
	row("B1", "2", "drawer[1].front", "drawer[2].front")
	row("B2", "2", "drawer[1].side", "drawer[2].side")
	row("C1", "2", "drawer[1].tray")
	in.Stages = []plan.Stage{
		{ID: "1", Marks: []string{"A1", "A2"}},
		{ID: "2", Marks: []string{"B1", "B2", "C1"}, Needs: []address.Address{"measure.opening"}},
		{ID: "3", Marks: []string{"A3"}, Needs: []address.Address{"measure.run"}},
	}
	in.Measures = []plan.Measure{
		{Address: "measure.opening", Label: "opening", Marks: []string{"B1", "B2", "C1"}, Readings: []plan.Reading{{Of: "case.opening", What: "width", Planned: plan.Figure{Nm: unit.MM(200)}}, {Of: "case.opening", What: "diagonals"}}},
		{Address: "measure.run", Label: "run", Marks: []string{"A3"}},
	}
	card := func(mark string, kind plan.OperationKind) {
		id := mark + ": " + string(kind)
		in.Operations = append(in.Operations, plan.Operation{ID: id, Kind: kind, Mark: mark, Setup: "card " + id, Machine: "saw"})
		in.Setups = append(in.Setups, plan.Setup{ID: "card " + id, Machine: "saw", MachineLabel: "saw", Operations: []string{id}, Placements: []plan.Placement{{Mark: mark, Pieces: 1}}})
	}
	for _, r := range in.Rows {
		card(r.Mark, plan.PlaneToThick)
		card(r.Mark, plan.CutToLength)
		in.Operations[len(in.Operations)-1].Needs = []string{r.Mark + ": plane to thickness"}
	}
	assemble := func(group string, marks ...string) {
		op := plan.Operation{ID: group + ": assemble", Kind: plan.Assemble, Workpiece: group}
		for _, p := range in.Piece.Parts {
			if string(p.Group) == group && p.Address != "case.stop" && p.Name != "tray" {
				op.Members = append(op.Members, p.Address)
			}
		}
		for _, m := range marks {
			op.Needs = append(op.Needs, m+": cut to length")
		}
		in.Operations = append(in.Operations, op)
	}
	assemble("case", "A1", "A2")
	assemble("drawer[1]", "B1", "B2")
	assemble("drawer[2]", "B1", "B2")
	in.Operations = append(in.Operations, plan.Operation{ID: "A3: fit", Kind: plan.FitPart, Mark: "A3", Needs: []string{"A3: cut to length", "case: assemble"}})
	return in
}

func place(t *testing.T, steps []plan.Step, id string) int {
	t.Helper()
	i := slices.IndexFunc(steps, func(s plan.Step) bool { return s.ID == id })
	if i < 0 {
		t.Errorf("no step %q", id)
	}
	return i
}

// TestOrder: what comes before what, with drawers planed while the case's glue
// sets.
func TestOrder(t *testing.T) {
	steps, diags := Decide(box())
	at := func(id string) int { return place(t, steps, id) }
	for _, chain := range [][]string{
		{"card: card A1: plane to thickness", "card: card A1: cut to length", "dry-fit: case", "assemble: case", "card: card B1: plane to thickness", "measure: measure.opening", "card: card B1: cut to length"},
		{"card: card B2: cut to length", "dry-fit: drawer[1]", "finish: finish.fronts", "assemble: drawer[1]", "fit: drawer[1]", "measure: measure.run", "card: card A3: cut to length", "fit: A3 case.stop"},
		{"card: card C1: cut to length", "author: step.try"},
		{"fit: A3 case.stop", "hardware: drawer[1].hardware.knob", "sand", "author: step.sign", "finish: finish.outside", "author: step.lost", "hand over"},
		{"card: card A1: plane to thickness", "card: card A3: plane to thickness", "dry-fit: case"}, // all boards of the case together
	} {
		for i := 1; i < len(chain); i++ {
			if at(chain[i-1]) >= at(chain[i]) {
				t.Errorf("%q does not come before %q", chain[i-1], chain[i])
			}
		}
	}
	if len(diags) != 1 || diags[0].Code != CodeNotPlaced || diags[0].Address != "step.lost" {
		t.Errorf("diagnostics %v", diags)
	}
	for i, s := range steps {
		if s.N != i+1 {
			t.Errorf("step %d is numbered %d", i+1, s.N)
		}
		for _, a := range s.After {
			if at(a) >= i {
				t.Errorf("%q comes after %q, which is later", s.ID, a)
			}
		}
	}
}

// TestWaits: waits, cautions and counts come from the tables and the piece.
// Times: data/glues.csv and data/finishes.csv, with their sources.
func TestWaits(t *testing.T) {
	steps, _ := Decide(box())
	get := func(id string) plan.Step { return steps[place(t, steps, id)] }
	has := func(list []message.Message, key string) bool {
		return slices.ContainsFunc(list, func(m message.Message) bool { return m.Key == key })
	}
	glue := get("assemble: case")
	if glue.Wait != 1440 || !has(glue.More, "steps.fasten") || !has(glue.Cautions, "caution.glue-open-time") {
		t.Errorf("gluing the case: %+v", glue)
	}
	if late := get("fit: A3 case.stop"); late.Wait != 1440 {
		t.Errorf("the stop: waits %d", late.Wait)
	}
	oil := get("finish: finish.outside")
	if oil.Wait != 10080 || !has(oil.Cautions, "caution.rags") || !has(oil.More, "steps.recoat") {
		t.Errorf("oil: %+v", oil)
	}
	if shellac := get("finish: finish.fronts"); has(shellac.Cautions, "caution.rags") || has(shellac.More, "steps.recoat") {
		t.Errorf("one coat of shellac: %+v", shellac)
	}
	m := get("measure: measure.opening")
	if !slices.Equal(m.Measures, []address.Address{"measure.opening"}) || !has(m.More, "steps.reading") || !has(m.More, "steps.reading-even") || !has(m.More, "steps.not-before") {
		t.Errorf("the measure: %+v", m)
	}
	if k := get("hardware: drawer[1].hardware.knob"); k.Text.Args[1].N != 2 {
		t.Errorf("knobs: %+v", k.Text)
	}
	if a := get("author: step.sign"); a.Author != "Sign the bottom." || !has(a.Cautions, "steps.author-caution") {
		t.Errorf("the author's step: %+v", a)
	}
	var any sequencer
	if any.finishOf("soap").recoat != 24*60 {
		t.Error("an unknown finish has no cautious times")
	}
}

// TestClampInTheCold: by hand, at 55 °F (12.78 °C) an hour in clamps becomes two,
// at 18 °C (64.4 °F) 60 · 2^(5.6 / 15) = 77.7 minutes, 80 to the next five; below
// what it sets at the usual hour is told, and a check says that it is too cold.
func TestClampInTheCold(t *testing.T) {
	for degrees, want := range map[timber.Temperature]int{21.2: 60, 30: 60, 18: 80, 115.0 / 9: 120, 2: 60} {
		s := sequencer{Input: Input{Shop: &shop.Shop{Climate: shop.Climate{Now: timber.Air{Temperature: degrees, Humidity: 50}}}}}
		if got := s.gluing("pva").clamp; got != want {
			t.Errorf("at %.2f °C: %d minutes, want %d", float64(degrees), got, want)
		}
	}
}

// TestEmpty: a piece without anything gives no steps.
func TestEmpty(t *testing.T) {
	if steps, diags := Decide(Input{Piece: &piece.Piece{}}); len(steps) != 0 || len(diags) != 0 {
		t.Errorf("%v %v", steps, diags)
	}
}

// TestSame: the same input gives the same steps.
func TestSame(t *testing.T) {
	first, _ := Decide(box())
	for range 20 {
		again, _ := Decide(box())
		if !slices.EqualFunc(first, again, func(a, b plan.Step) bool {
			return a.ID == b.ID && slices.Equal(a.After, b.After) && a.Hands == b.Hands
		}) {
			t.Fatal("steps differ between runs")
		}
	}
}

// TestCardWithoutOperations: a card that nothing is done with gives no step.
func TestCardWithoutOperations(t *testing.T) {
	in := box()
	want, _ := Decide(in)
	in.Setups = append([]plan.Setup{{ID: "idle", Machine: "saw"}}, in.Setups...)
	got, _ := Decide(in)
	if len(got) != len(want) {
		t.Errorf("%d steps, want %d", len(got), len(want))
	}
	s := sequencer{Input: in, placed: map[string]bool{}}
	s.cardStep(in.Setups[0])
	if len(s.steps) != 0 {
		t.Errorf("a step: %+v", s.steps[0])
	}
}

// TestUnknownGlue: a glue that neither the shop nor the trade knows has no times, not
// those of another; beside one that is known, the known one's are told and the other's
// asked for. Contact glue is rolled, not clamped (data/glues.csv).
func TestUnknownGlue(t *testing.T) {
	for _, c := range []struct {
		glues            []string
		wait             int
		clamps, open, by bool // steps say how long in clamps, to put together, and to go by the tin
	}{
		{[]string{"pva", "pva"}, 1440, true, true, false},
		{[]string{"fish", "fish"}, 0, false, false, true},
		{[]string{"fish", "pva"}, 1440, true, true, true},
		{[]string{"contact", "contact"}, 1440, false, true, false},
	} {
		in := box()
		for i := range in.Piece.Joints {
			if j := &in.Piece.Joints[i]; j.Glue != "" {
				j.Glue = c.glues[0]
			}
		}
		other := in.Piece.Joints[0] // of the case
		other.Address, other.Glue = "case.joint.other", c.glues[1]
		in.Piece.Joints = append(in.Piece.Joints, other)
		steps, _ := Decide(in)
		s := steps[place(t, steps, "assemble: case")]
		has := func(list []message.Message, key string) bool {
			return slices.ContainsFunc(list, func(m message.Message) bool { return m.Key == key })
		}
		if s.Wait != c.wait || has(s.More, "steps.clamp-for") != c.clamps || has(s.Cautions, "caution.glue-open-time") != c.open || has(s.More, "steps.glue-not-known") != c.by {
			t.Errorf("%v: waits %d, %+v, %+v", c.glues, s.Wait, s.More, s.Cautions)
		}
	}
}
