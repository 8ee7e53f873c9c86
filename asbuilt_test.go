package scantling_test

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	"scantling"
	"scantling/internal/address"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
	"scantling/internal/world"
)

// note writes into the record of the demonstration piece.
func note(t *testing.T, w world.World, n scantling.Note) {
	t.Helper()
	if _, err := scantling.Record(context.Background(), w, demo, n); err != nil {
		t.Fatalf("record %+v: %v", n, err)
	}
}

func planIn(t *testing.T, w world.World, inputs map[string]string) *scantling.Result {
	t.Helper()
	r, err := scantling.Plan(context.Background(), w, demo, scantling.Options{Inputs: inputs})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func partIn(t *testing.T, r *scantling.Result, a address.Address) piece.Part {
	t.Helper()
	i := slices.IndexFunc(r.Plan.Piece.Parts, func(p piece.Part) bool { return p.Address == a })
	if i < 0 {
		t.Fatalf("there is no part %s", a)
	}
	return r.Plan.Piece.Parts[i]
}

const millimetre = unit.Millimetre

// TestThicknessAsDressed records a side that came out thicker than planned: what
// rests on it follows, the case keeps its width, and figures say so.
func TestThicknessAsDressed(t *testing.T) {
	w := exampleWorld(t, "needle-chest")
	before := planIn(t, w, nil)
	note(t, w, scantling.Note{Of: "case.side.left", What: "thickness", Value: "17.6"})
	after := planIn(t, w, nil)
	if got := partIn(t, after, "case.side.left").Thickness; got.Nm != 17600*unit.Micrometre {
		t.Errorf("the side is %v thick, recorded 17.6", got.Nm)
	}
	if e, _ := after.Plan.Ledger.Entry(partIn(t, after, "case.side.left").Thickness.Entry); e.Origin != ledger.Measured && e.Origin != ledger.FromMeasured {
		t.Errorf("the side's thickness has origin %s", e.Origin)
	}
	if after.Plan.Overall() != before.Plan.Overall() {
		t.Errorf("the case is %v as built, %v as planned", after.Plan.Overall(), before.Plan.Overall())
	}
	was, is := space(t, before, "case.opening[1]"), space(t, after, "case.opening[1]")
	if got, want := is.Clear[piece.Right].Nm, was.Clear[piece.Right].Nm-3600*unit.Micrometre; got != want {
		t.Errorf("the opening is %v wide, want %v: 3.6 less", got, want)
	}
	if len(after.Plan.Unsound()) > 0 {
		t.Errorf("unsound: %s", after.Plan.Unsound()[0])
	}
}

func space(t *testing.T, r *scantling.Result, a address.Address) piece.Space {
	t.Helper()
	i := slices.IndexFunc(r.Plan.Piece.Spaces, func(s piece.Space) bool { return s.Address == a })
	if i < 0 {
		t.Fatalf("there is no space %s", a)
	}
	return r.Plan.Piece.Spaces[i]
}

// TestOpeningAsMeasured records the width of one opening: its drawer follows and
// becomes a row of its own, the others stay as they were.
func TestOpeningAsMeasured(t *testing.T) {
	w := exampleWorld(t, "needle-chest")
	inputs := map[string]string{"least_width": "411"} // an opening of about 381
	before := planIn(t, w, inputs)
	text, err := w.Read(demo)
	if err != nil {
		t.Fatal(err)
	}
	wide := strings.Replace(string(text), "length = 220", "length = 411", 1)
	if err := w.Write(demo, []byte(wide)); err != nil {
		t.Fatal(err)
	}
	note(t, w, scantling.Note{Of: "case.opening[2]", What: "width front", Value: "381.4"})
	after := planIn(t, w, nil)
	if got, want := partIn(t, after, "drawer[1].front").Length.Nm, partIn(t, before, "drawer[1].front").Length.Nm; got != want {
		t.Errorf("drawer 1 is %v wide, was %v: it was not measured", got, want)
	}
	// The front is the opening less the clearance at both sides, 0.8 in all.
	if got := partIn(t, after, "drawer[2].front").Length.Nm; got != 3806*millimetre/10 {
		t.Errorf("drawer 2's front is %v long, want 380.6", got.Millimetres())
	}
	rows := slices.DeleteFunc(slices.Clone(after.Plan.Parts), func(r plan.PartRow) bool { return r.Name != "front" })
	if len(rows) != 2 {
		t.Errorf("fronts stand in %d rows, want 2: two as planned, one as measured", len(rows))
	}
}

// TestCutPartsAreFrozen records a part as cut and then changes the design: the
// part keeps its sizes, and the conflict is told.
func TestCutPartsAreFrozen(t *testing.T) {
	w := exampleWorld(t, "needle-chest")
	before := planIn(t, w, nil)
	was := partIn(t, before, "case.top")
	note(t, w, scantling.Note{Of: "case.top", Cut: true})
	after := planIn(t, w, map[string]string{"least_width": "300"})
	is := partIn(t, after, "case.top")
	if is.Length.Nm != was.Length.Nm || is.Width.Nm != was.Width.Nm {
		t.Errorf("the top was cut at %v × %v and is now %v × %v", was.Length.Nm, was.Width.Nm, is.Length.Nm, is.Width.Nm)
	}
	if len(after.Plan.Diagnostics) == 0 {
		t.Error("the case is wider than the top that was cut for it, and nothing is said")
	}
}

// TestDrawersAndBack goes from 3 to 4 drawers and back: no reading is lost, none
// is applied to another thing silently.
func TestDrawersAndBack(t *testing.T) {
	w := exampleWorld(t, "needle-chest")
	note(t, w, scantling.Note{Of: "case.opening[2]", What: "width front", Value: "189"})
	three := planIn(t, w, nil)
	if len(three.Plan.Unplaced) != 0 {
		t.Fatalf("unplaced with 3 drawers: %v", three.Plan.Unplaced)
	}
	four := planIn(t, w, map[string]string{"drawers": "4"})
	applied := partIn(t, four, "drawer[2].front").Length.Nm == partIn(t, three, "drawer[2].front").Length.Nm
	told := len(four.Plan.Unplaced) > 0
	if applied == told {
		t.Errorf("with 4 drawers the reading is applied: %v, told as unplaced: %v (%v)", applied, told, four.Plan.Unplaced)
	}
	again := planIn(t, w, nil)
	if got, want := partIn(t, again, "drawer[2].front").Length.Nm, partIn(t, three, "drawer[2].front").Length.Nm; got != want || len(again.Plan.Unplaced) != 0 {
		t.Errorf("back at 3 drawers: front %v, want %v; unplaced %v", got, want, again.Plan.Unplaced)
	}
}

// TestRecordRefuses holds what the record does not take.
func TestRecordRefuses(t *testing.T) {
	w := exampleWorld(t, "needle-chest")
	for _, c := range []struct {
		note scantling.Note
		want error
	}{
		{scantling.Note{Of: "case.lid", What: "thickness", Value: "14"}, scantling.ErrNoSuchThing},
		{scantling.Note{Of: "case.top"}, scantling.ErrNothingSaid},
		{scantling.Note{Of: "case.lid", Cut: true}, scantling.ErrNoSuchThing},
	} {
		if _, err := scantling.Record(context.Background(), w, demo, c.note); !errors.Is(err, c.want) {
			t.Errorf("%+v: %v, want %v", c.note, err, c.want)
		}
	}
	for _, bad := range []string{"case..top", "17 x", "-"} {
		if _, err := scantling.Record(context.Background(), w, demo, scantling.Note{Of: "case.top", What: "thickness", Value: bad}); err == nil {
			t.Errorf("the value %q was taken", bad)
		}
	}
	if _, err := w.Read(scantling.RecordName(demo)); err == nil {
		t.Error("a refused note left a record")
	}
}

// TestCutPartsAreMarked records a part as cut: the list says so of it and
// of no other.
func TestCutPartsAreMarked(t *testing.T) {
	w := exampleWorld(t, "needle-chest")
	note(t, w, scantling.Note{Of: "case.top", Cut: true})
	for _, row := range planIn(t, w, nil).Plan.Parts {
		if cut, want := row.Basis == plan.AsCut, slices.Contains(row.Members, "case.top"); cut != want {
			t.Errorf("row %s says %q", row.Mark, row.Basis)
		}
	}
}
