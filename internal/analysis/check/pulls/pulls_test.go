package pulls_test

import (
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/pulls"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// stack is two drawers, the fronts 1000 high and 10 apart, with a knob 250 across on
// the upper one, so high over its front's lower edge and so far off, in tenths.
func stack(over, off int64) *trial.Builder {
	b := trial.New()
	for n, g := range []string{"drawer[1]", "drawer[2]"} {
		z := int64(n) * 1010
		b.Group(g, "opening")
		b.Part(g+".side", trial.LeftSide, 200, 300, 0, 3000, z, z+900)
		b.Part(g+".front", trial.GrainRight, 0, 4000, -140, 0, z, z+1000).Show = piece.ToFront
	}
	b.Space("opening", 0, 4000, 0, 3000, 0, 4000)
	knob(b, "knob", 1010+over, 1000, off)
	checktest.Materials(b)
	return b
}

// knob adds a knob to the upper front: its lower edge, its left edge, how far it stands off.
func knob(b *trial.Builder, name string, z, x, off int64) {
	e := [3]piece.Extent{}
	for i, at := range [3][2]int64{{x, x + 250}, {-140 - off, -140}, {z, z + 250}} {
		e[i] = piece.Extent{Low: b.Fig("low", at[0]), High: b.Fig("high", at[1])}
	}
	b.Piece.Hardware = append(b.Piece.Hardware, piece.Hardware{Address: b.Find("drawer[2].front").Address.Child(name), Kind: "knob 25", Count: 1, On: "drawer[2].front", Side: piece.ToFront,
		Bodies: []piece.Body{{Of: 1, Word: "knob", Round: true, Axis: piece.Back, Extent: e}}})
}

// TestPulls: a knob hangs over the drawer below by the tenth of a millimetre, stands off
// too little, or is hemmed in.
func TestPulls(t *testing.T) {
	for _, c := range []struct {
		over, off int64
		status    plan.Status
		code      diag.Code
	}{{375, 220, plan.Pass, pulls.CodeRight}, {-10, 220, plan.Pass, pulls.CodeRight}, {-11, 220, plan.Fail, pulls.CodeBlocks}, {375, 150, plan.Pass, pulls.CodeRight}, {375, 149, plan.Fail, pulls.CodeFlat}} {
		checktest.Want(t, checktest.Run(t, stack(c.over, c.off), checktest.Shop(), pulls.Analysis), c.status, c.code)
	}
	s := checktest.Shop()
	checktest.Rule(s, "pull stands off", unit.MM(12))
	checktest.Want(t, checktest.Run(t, stack(375, 149), s, pulls.Analysis), plan.Pass, pulls.CodeRight)
}

// TestRoom: battens above and below, knobs left and right; one free pair of sides is enough.
func TestRoom(t *testing.T) {
	b := stack(375, 220)
	knob(b, "left", 1385, 621, 220)
	knob(b, "right", 1385, 1380, 220)
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), pulls.Analysis), plan.Pass, pulls.CodeRight)
	b.Part("drawer[2].above", trial.GrainRight, 1000, 1250, -340, -140, 1764, 1900)
	b.Part("drawer[2].below", trial.GrainRight, 1000, 1250, -340, -140, 1100, 1200)
	checktest.Materials(b)
	got := checktest.Run(t, b, checktest.Shop(), pulls.Analysis)
	if len(got) != 1 || got[0].Code != pulls.CodeNoRoom || got[0].Is.Nm != 12_900_000 {
		t.Errorf("%+v", got)
	}
}

// TestCaught: a rail before the knob keeps its own drawer shut.
func TestCaught(t *testing.T) {
	b := stack(375, 220)
	b.Part("rail", trial.GrainRight, 0, 4000, -600, -500, 1500, 1600)
	checktest.Materials(b)
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), pulls.Analysis), plan.Fail, pulls.CodeBlocks)
}

// TestNowhere: a knob without a side is asked about; what is no knob is not.
func TestNowhere(t *testing.T) {
	b := stack(375, 220)
	b.Piece.Hardware[0].Bodies, b.Piece.Hardware[0].Side = nil, ""
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), pulls.Analysis), plan.Unknown, pulls.CodeUnknown)
	b.Piece.Hardware[0].Kind = "spring 25"
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), pulls.Analysis), plan.Pass, pulls.CodeRight)
}
