package shortgrain

import (
	"math"
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/diag"
	"scantling/internal/geom/polygon"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// board is 600 along the grain, 200 wide and 20 thick, with one slot: its run, then
// from, to, near, far, depth in tenths.
func board(kind piece.CutKind, run piece.Local, at ...int64) *trial.Builder {
	b := trial.New()
	b.Part("board", trial.GrainRight, 0, 6000, 0, 2000, 0, 200)
	b.Slot("board", "cut", kind, piece.FaceHigh, run, append(at, 0)...)
	checktest.Materials(b)
	return b
}

func TestEnds(t *testing.T) {
	across := func(near, far, depth int64) *trial.Builder {
		return board(piece.Housing, piece.AlongWidth, 0, 2000, near, far, depth)
	}
	for _, c := range []struct {
		name   string
		b      *trial.Builder
		status plan.Status
		code   diag.Code
	}{
		{"as far in as it is deep", across(60, 180, 60), plan.Pass, CodeLong},
		{"a hair less", across(59, 180, 60), plan.Fail, CodeEnd},
		{"shallow: 3 at least", across(30, 180, 10), plan.Pass, CodeLong},
		{"shallow and a hair less", across(29, 180, 10), plan.Fail, CodeEnd},
		{"at the other end", across(5800, 5941, 60), plan.Fail, CodeEnd},
		{"open to the end is a rebate", across(0, 180, 60), plan.Pass, CodeLong},
		{"along the grain near an end", board(piece.Groove, piece.AlongLength, 10, 5990, 500, 627, 60), plan.Pass, CodeLong},
		{"a mortise with its horn", board(piece.Mortise, piece.AlongLength, 80, 480, 900, 980, 120), plan.Pass, CodeLong},
		{"a mortise without", board(piece.Mortise, piece.AlongLength, 79, 480, 900, 980, 120), plan.Fail, CodeEnd},
	} {
		t.Log(c.name)
		checktest.Want(t, checktest.Run(t, c.b, checktest.Shop(), Analysis), c.status, c.code)
	}
	sheet := across(10, 180, 60)
	sheet.Find("board").Material = "panel"
	checktest.Want(t, checktest.Run(t, sheet, checktest.Shop(), Analysis), plan.Pass, CodeLong)
	shop := checktest.Shop()
	checktest.Rule(shop, "short grain", unit.MM(8))
	checktest.Want(t, checktest.Run(t, across(79, 180, 60), shop, Analysis), plan.Fail, CodeEnd)
	// The foot of an undercut wall is nearer to the end than its mouth.
	socket := across(80, 180, 60)
	socket.Piece.Cuts[0].Slot.LeanNear, socket.Piece.Cuts[0].Slot.LeanFar = socket.Fig("lean", -21), socket.Fig("lean", -21)
	checktest.Want(t, checktest.Run(t, socket, checktest.Shop(), Analysis), plan.Fail, CodeEnd)
}

// loop is an outline of straight sides: along the grain, across it.
func loop(at ...float64) polygon.Loop {
	var out polygon.Loop
	for i := 0; i < len(at); i += 2 {
		out = append(out, polygon.Vertex{P2: polygon.P2{X: at[i], Y: at[i+1]}})
	}
	return out
}

// TestWeakest: by hand, what hangs on the narrowest wood. A hook 60 out of a board is
// all that hangs on its root; a neck carries the lesser of two masses; a disc carries
// half of itself on its diameter; the sides of a frame hang on both ends.
func TestWeakest(t *testing.T) {
	disc := polygon.Loop{{P2: polygon.P2{X: 100}, Bulge: 1}, {P2: polygon.P2{X: -100}, Bulge: 1}}
	for _, c := range []struct {
		name        string
		p           polygon.Profile
		wide, hangs float64
	}{
		{"a hook", polygon.Profile{Outer: loop(0, 0, 300, 0, 300, 100, 120, 100, 120, 160, 100, 160, 100, 100, 0, 100)}, 20, 60},
		{"a neck", polygon.Profile{Outer: loop(0, 0, 200, 0, 200, 100, 105, 100, 105, 110, 200, 110, 200, 190, 0, 190, 0, 110, 95, 110, 95, 100, 0, 100)}, 10, 90},
		{"a board", polygon.Profile{Outer: loop(0, 0, 300, 0, 300, 80, 0, 80)}, 300, 40},
		{"a disc", polygon.Profile{Outer: disc}, 200, 100},
	} {
		s := weakest(c.p)
		if math.Abs(s.wide-c.wide) > 2 || math.Abs(s.hangs-c.hangs) > 2 {
			t.Errorf("%s: %.1f hangs on %.1f, by hand %.0f on %.0f", c.name, s.hangs, s.wide, c.hangs, c.wide)
		}
	}
	frame := polygon.Profile{Outer: loop(0, 0, 300, 0, 300, 200, 0, 200), Holes: []polygon.Loop{loop(20, 20, 20, 180, 280, 180, 280, 20)}}
	if s := weakest(frame); s.wide < 250 {
		t.Errorf("a side of a frame is judged: %.1f hangs on %.1f", s.hangs, s.wide)
	}
}

// TestNeck: a board whose grain runs the short way, and a hook, by a hair.
func TestNeck(t *testing.T) {
	wide := func(length, width int64) *trial.Builder {
		b := trial.New()
		b.Part("board", trial.GrainRight, 0, length, 0, width, 0, 200)
		checktest.Materials(b)
		return b
	}
	checktest.Want(t, checktest.Run(t, wide(500, 2000), checktest.Shop(), Analysis), plan.Pass, CodeLong)
	checktest.Want(t, checktest.Run(t, wide(499, 2000), checktest.Shop(), Analysis), plan.Fail, CodeNeck)
	hook := func(out int64) *trial.Builder {
		b := wide(3000, 1000+out)
		p := b.Find("board")
		p.Form = piece.Outline
		for _, q := range [][2]int64{{0, 0}, {3000, 0}, {3000, 1000}, {1200, 1000}, {1200, 1000 + out}, {1000, 1000 + out}, {1000, 1000}, {0, 1000}} {
			p.Outline = append(p.Outline, piece.OutlinePoint{Along: b.Fig("along", q[0]), Across: b.Fig("across", q[1])})
		}
		return b
	}
	checktest.Want(t, checktest.Run(t, hook(390), checktest.Shop(), Analysis), plan.Pass, CodeLong)
	checktest.Want(t, checktest.Run(t, hook(420), checktest.Shop(), Analysis), plan.Fail, CodeNeck)
	long := hook(420)
	p := long.Find("board")
	for len(p.Outline) <= polygon.MaxVertices {
		p.Outline = append(p.Outline, p.Outline...)
	}
	checktest.Want(t, checktest.Run(t, long, checktest.Shop(), Analysis), plan.Unknown, CodeNeckUnknown)
}

func TestGoodChest(t *testing.T) {
	checktest.Want(t, checktest.Run(t, checktest.Chest(), checktest.Shop(), Analysis), plan.Pass, CodeLong)
}
