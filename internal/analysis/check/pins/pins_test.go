package pins_test

import (
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/pins"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
)

// corner is the end of a board in the rebate of another.
func corner(change func(*piece.Joint)) *trial.Builder {
	b := trial.New()
	b.Part("side", trial.LeftSide, 0, 140, 0, 2000, 0, 4000)
	b.Part("top", trial.GrainRight, 70, 3000, 0, 2000, 3860, 4000)
	b.Joint("corner", piece.RebateJoint, "top", "side", 70, change)
	checktest.Materials(b)
	return b
}

func TestPins(t *testing.T) {
	pinned := func(n int) func(*piece.Joint) {
		return func(j *piece.Joint) {
			j.Fasteners = &piece.Fasteners{Kind: "panel pin 20", Count: n, Margin: piece.Figure{Nm: 20 * trial.Tenth}}
		}
	}
	for _, c := range []struct {
		name   string
		b      *trial.Builder
		status plan.Status
		code   diag.Code
	}{
		{"glue alone", corner(nil), plan.Fail, pins.CodeEndGrain},
		{"one pin", corner(pinned(1)), plan.Pass, pins.CodeHeld},
		{"no pins of a kind", corner(pinned(0)), plan.Fail, pins.CodeEndGrain},
	} {
		t.Log(c.name)
		checktest.Want(t, checktest.Run(t, c.b, checktest.Shop(), pins.Analysis), c.status, c.code)
	}
	sheet := corner(nil)
	sheet.Find("top").Material = "panel"
	checktest.Want(t, checktest.Run(t, sheet, checktest.Shop(), pins.Analysis), plan.Pass, pins.CodeHeld)
	// The long edge of a board in a rebate is no end grain.
	long := corner(nil)
	p := long.Find("top")
	p.Frame = piece.Frame{Length: piece.ToBack, Width: piece.ToLeft, Thickness: piece.ToUp}
	p.Length, p.Width = p.Width, p.Length
	checktest.Want(t, checktest.Run(t, long, checktest.Shop(), pins.Analysis), plan.Pass, pins.CodeHeld)
}

// Dowels through another joint of the two parts do as well.
func TestDowels(t *testing.T) {
	b := corner(nil)
	b.Joint("dowels", piece.DowelJoint, "top", "side", 0, func(j *piece.Joint) {
		j.Dowels = &piece.Dowels{Diameter: b.Fig("d", 60), Count: 2, Margin: b.Fig("m", 300), InA: b.Fig("a", 200), InB: b.Fig("b", 40)}
	})
	checktest.Want(t, checktest.RunFaulty(t, b, checktest.Shop(), pins.Analysis), plan.Pass, pins.CodeHeld)
}

func TestUnknown(t *testing.T) {
	b := corner(nil)
	b.Piece.Joints[0].B = "gone"
	checktest.Want(t, checktest.RunFaulty(t, b, checktest.Shop(), pins.Analysis), plan.Unknown, pins.CodeNotMade)
}

func TestGoodChest(t *testing.T) {
	checktest.Want(t, checktest.Run(t, checktest.Chest(), checktest.Shop(), pins.Analysis), plan.Pass, pins.CodeHeld)
}
