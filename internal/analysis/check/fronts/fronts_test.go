package fronts_test

import (
	"strings"
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/fronts"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// doors are two doors, so wide and so far apart in tenths, hinged at their outer edges.
func doors(wide, gap int64, frame piece.Frame) *trial.Builder {
	b := trial.New()
	b.Part("case.side", trial.LeftSide, 0, 140, 0, 3000, 0, 4000)
	for i, name := range []string{"left", "right"} {
		x := int64(i) * (wide + gap)
		b.Part("door."+name, frame, x, x+wide, -140, 0, 0, 4000)
		edge := x + int64(i)*wide
		b.Piece.Hardware = append(b.Piece.Hardware, piece.Hardware{Address: "hardware.hinge", Kind: "butt hinge 50", Count: 1, On: "case.side", With: b.Find("door." + name).Address,
			Bodies: []piece.Body{{Of: 1, Word: "knuckle", Round: true, Axis: piece.Up, Extent: box(b, edge-20, edge+20, -20, 20, 500, 1000)}}})
	}
	checktest.Materials(b)
	return b
}

func box(b *trial.Builder, at ...int64) [3]piece.Extent {
	var e [3]piece.Extent
	for i := range e {
		e[i] = piece.Extent{Low: b.Fig("low", at[2*i]), High: b.Fig("high", at[2*i+1])}
	}
	return e
}

var upright = piece.Frame{Length: piece.ToUp, Width: piece.ToRight, Thickness: piece.ToFront}

// TestDoors: two doors of flat-sawn cherry 200 wide grow 2.5 % x 0.248 x 200 = 1.24 each
// from their hinges (Wood Handbook, Table 13-5, by hand), so that 2.98 is wanted.
func TestDoors(t *testing.T) {
	for _, c := range []struct {
		gap    int64
		status plan.Status
		code   diag.Code
		severe diag.Severity
	}{{30, plan.Pass, fronts.CodeClear, diag.Note}, {29, plan.Fail, fronts.CodeTouch, diag.Warning}, {24, plan.Fail, fronts.CodeTouch, diag.Error}} {
		f := checktest.Want(t, checktest.Run(t, doors(2000, c.gap, upright), checktest.Shop(), fronts.Analysis), c.status, c.code)[0]
		if f.Severity != c.severe || c.status == plan.Fail && (f.Limit.Nm != 2_980_000 || f.Is.Nm != unit.Length(c.gap)*trial.Tenth || !strings.Contains(f.Source, "Wood Handbook")) {
			t.Errorf("%d: %+v", c.gap, f)
		}
	}
	s := checktest.Shop()
	checktest.Rule(s, "between fronts", unit.MM(1))
	checktest.Want(t, checktest.Run(t, doors(2000, 30, upright), s, fronts.Analysis), plan.Fail, fronts.CodeTouch)
}

// TestLengthKeepsStill: with the grain across, and of ply, doors want half a millimetre.
func TestLengthKeepsStill(t *testing.T) {
	across := piece.Frame{Length: piece.ToRight, Width: piece.ToUp, Thickness: piece.ToFront}
	checktest.Want(t, checktest.Run(t, doors(2000, 5, across), checktest.Shop(), fronts.Analysis), plan.Pass, fronts.CodeClear)
	b := doors(2000, 4, upright)
	b.Find("door.left").Material, b.Find("door.right").Material = "panel", "panel"
	f := checktest.Want(t, checktest.Run(t, b, checktest.Shop(), fronts.Analysis), plan.Fail, fronts.CodeTouch)[0]
	if f.Limit.Nm != unit.Millimetre/2 || strings.Contains(f.Source, "Wood Handbook") {
		t.Errorf("%+v", f)
	}
}

// stack is two drawers over each other with overlay fronts; the gap between the fronts,
// and how far the lower front reaches below its drawer, in tenths.
func stack(gap int64) *trial.Builder {
	b := trial.New()
	z := int64(0)
	for _, n := range []string{"[1]", "[2]"} {
		g := "drawer" + n
		b.Group(g, "")
		b.Part(g+".side", trial.LeftSide, 200, 300, 0, 3000, z+100, z+900)
		b.Part(g+".front", trial.GrainRight, 0, 4000, -140, 0, z, z+1000).Show = piece.ToFront
		p := b.Find(g + ".front")
		p.Frame = piece.Frame{Length: piece.ToRight, Width: piece.ToUp, Thickness: piece.ToFront}
		p.Width, p.Thickness = b.Fig("width", 1000), b.Fig("thickness", 140)
		z += 1000 + gap
		b.Space("opening"+n, 150, 3850, 0, 3000, 0, 4000)
		b.Piece.Groups[len(b.Piece.Groups)-1].Inside = b.Piece.Spaces[len(b.Piece.Spaces)-1].Address
	}
	checktest.Materials(b)
	return b
}

// TestOverlay: the lower front grows from where its drawer stands, 90 up, the upper one
// its 10 down: 100 x 0.0062 = 0.62, and half a millimetre.
func TestOverlay(t *testing.T) {
	checktest.Want(t, checktest.Run(t, stack(12), checktest.Shop(), fronts.Analysis), plan.Pass, fronts.CodeClear)
	f := checktest.Want(t, checktest.Run(t, stack(11), checktest.Shop(), fronts.Analysis), plan.Fail, fronts.CodeTouch)[0]
	if f.Limit.Nm != 1_120_000 {
		t.Errorf("%v", f.Limit.Nm)
	}
}

// TestInTheWay: a front that reaches before the drawer below keeps it shut; a door does
// not, for it is opened first.
func TestInTheWay(t *testing.T) {
	b := stack(12)
	p := b.Find("drawer[2].front")
	e := box(b, 0, 4000, -290, -150, 950, 2012)
	p.Extent, p.Width = e, b.Fig("width", 1062)
	f := checktest.Want(t, checktest.Run(t, b, checktest.Shop(), fronts.Analysis), plan.Fail, fronts.CodeInWay)[0]
	if f.Is.Nm != 5*unit.Millimetre {
		t.Errorf("%v", f.Is.Nm)
	}
}

// TestUnknownWood: nobody knows how far a wood grows that no catalogue has.
func TestUnknownWood(t *testing.T) {
	b := doors(2000, 20, upright)
	b.Piece.Materials[0].Species = "moonwood"
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), fronts.Analysis), plan.Unknown, fronts.CodeUnknown)
}

// TestChest: a chest whose drawers have openings of their own is left to its fits.
func TestChest(t *testing.T) {
	checktest.Want(t, checktest.Run(t, checktest.Chest(), checktest.Shop(), fronts.Analysis), plan.Pass, fronts.CodeClear)
}
