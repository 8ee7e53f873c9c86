package assembly_test

import (
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/apart"
	"scantling/internal/analysis/check/assembly"
	"scantling/internal/analysis/marks"
	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

func findings(t *testing.T, b *trial.Builder) []plan.Finding {
	t.Helper()
	cuts, _, _ := joinery.Lower(&b.Piece, b.Ledger)
	c := analysis.Context{Piece: &b.Piece, Cuts: cuts, Ledger: b.Ledger}
	r, err := analysis.Run(&c, []analysis.Analysis{marks.Analysis, apart.Analysis, assembly.Analysis})
	if err != nil {
		t.Fatal(err)
	}
	return r.Findings
}

func one(t *testing.T, list []plan.Finding) plan.Finding {
	t.Helper()
	if len(list) != 1 {
		t.Fatalf("%d findings: %+v", len(list), list)
	}
	return list[0]
}

// names returns the parts that a finding says are locked.
func names(f plan.Finding) []address.Address {
	a, _ := f.Text.Arg("parts")
	var out []address.Address
	for _, x := range a.List {
		out = append(out, address.Address(x.S))
	}
	return out
}

// TestPieces: a drawer whose bottom is captured by four sides, a carcase with
// stopped housings, and a chest with its drawers in place can all be put together.
func TestPieces(t *testing.T) {
	for name, b := range map[string]*trial.Builder{
		"drawer": trial.Drawer(80, 50, 40), "carcase": trial.Carcase(70, 70, 47), "chest": trial.Chest(),
	} {
		if f := one(t, findings(t, b)); f.Status != plan.Pass {
			t.Errorf("%s: %+v", name, f.Text)
		}
	}
}

// lidded is a tray of one block with a hollow, and a lid let into it that stands
// under lips by the given nanometres on all four sides.
func lidded(under unit.Length) *trial.Builder {
	b := trial.New()
	b.Part("block", trial.GrainRight, 0, 1000, 0, 500, 0, 400)
	b.Slot("block", "hollow", piece.Recess, piece.FaceHigh, piece.AlongLength, 100, 900, 100, 400, 300, 0)
	b.Part("lid", trial.GrainRight, 100, 900, 100, 400, 100, 200)
	// The lips are part of a second block that is one with the first: a ring.
	b.Part("ring", trial.GrainRight, 0, 1000, 0, 500, 400, 500)
	c := b.Slot("ring", "mouth", piece.Recess, piece.FaceHigh, piece.AlongLength, 100, 900, 100, 400, 100, 0)
	c.Slot.From.Nm += under
	return b
}

// TestFailsAndPassesByAHair: a lid in a hollow comes out of an opening of its own
// size, and not out of one that is a nanometre narrower, when block and ring are
// one group.
func TestFailsAndPassesByAHair(t *testing.T) {
	for under, want := range map[unit.Length]plan.Status{0: plan.Pass, 1: plan.Fail} {
		b := lidded(under)
		b.Group("box", "")
		b.Group("lids", "")
		for i := range b.Piece.Parts {
			p := &b.Piece.Parts[i]
			if p.Group = "box"; p.Address == "lid" {
				p.Group = "lids"
			}
		}
		f := one(t, findings(t, b))
		if f.Status != want {
			t.Errorf("under by %d nm: %s %v", under, f.Status, f.Text)
		}
		if want != plan.Fail {
			continue
		}
		if got := names(f); !slices.Equal(got, []address.Address{"box", "lids"}) {
			t.Errorf("locked: %v", got)
		}
	}
}

// TestNamesWhatBlocks: a drawer with a full back behind a stop that stands on the
// board that it slides on.
func TestNamesWhatBlocks(t *testing.T) {
	b := trial.Chest()
	x, z := int64(600), int64(140)
	b.Part("case.stop", trial.GrainRight, x, x+300, 145, 285, z, z+50)
	b.Joint("case.joint.stop", piece.ButtJoint, "case.stop", "case.bottom", 0, nil)
	f := one(t, findings(t, b))
	if f.Status != plan.Fail || f.Code != assembly.Locked || !slices.Equal(names(f), []address.Address{"case", "drawer[1]"}) {
		t.Fatalf("%+v", f)
	}
	front, _ := f.Text.Arg("back")
	if front.S != "drawer[1].front" && front.S != "drawer[1].back" && front.S != "drawer[1].bottom" {
		t.Errorf("the case is blocked towards the back by %q: %+v", front.S, f.Text)
	}
}

// TestLockedParts: a plate with a hole, and a bar through it that is thicker at
// both ends.
func TestLockedParts(t *testing.T) {
	b := trial.New()
	b.Part("plate", trial.GrainRight, 0, 1000, 0, 1000, 400, 600)
	b.Slot("plate", "hole", piece.Recess, piece.FaceHigh, piece.AlongLength, 400, 600, 400, 600, 200, 0)
	b.Part("bar", trial.BackPanel, 300, 700, 300, 700, 0, 1000)
	for i, s := range []piece.Side{piece.EdgeLow, piece.EdgeHigh, piece.FaceLow, piece.FaceHigh} {
		b.Slot("bar", string(rune('a'+i)), piece.Notch, s, piece.AlongLength, 400, 600, 0, 400, 100, 0)
	}
	f := one(t, findings(t, b))
	if f.Status != plan.Fail || !slices.Equal(names(f), []address.Address{"plate", "bar"}) || len(f.Marks) != 2 {
		t.Errorf("%+v", f)
	}
	// As an outlined part its box is not its shape: unknown.
	b.Piece.Parts[0].Form = piece.Outline
	if f := one(t, findings(t, b)); f.Status != plan.Unknown {
		t.Errorf("%+v", f)
	}
}

// TestSilent: one part is no assembly.
func TestSilent(t *testing.T) {
	b := trial.New()
	b.Part("lid", trial.GrainRight, 0, 1000, 0, 500, 0, 200)
	if list := findings(t, b); len(list) != 0 {
		t.Errorf("%+v", list)
	}
}
