package contents_test

import (
	"math"
	"testing"

	"scantling/internal/analysis/contents"
	"scantling/internal/document"
	"scantling/internal/evaluate"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestFlatsAndLinings: by hand, as in package share. A handle of 25 across corners
// in a channel of 12.7 radius and 8 deep: a corner down 8 and 17 proud, on a flat
// 16.03 proud. With 1 of felt it sinks 6.627 with a corner down, a round one 6.062.
func TestFlatsAndLinings(t *testing.T) {
	for _, c := range []struct {
		sides, lining               int64
		sinks, proud, onFlat, bared float64
	}{
		{8, 0, 8, 17, 16.032, 0},
		{8, 10, 6.627, 18.373, 17.167, 8},
		{0, 10, 6.062, 18.938, 0, 8},
	} {
		b := tray(1270, 800, 2500)
		thing := &b.Piece.Contents[0].Things[0]
		if c.sides > 0 {
			thing.Sides = int(c.sides)
			thing.Flats = b.Ledger.Leaf("flats", 23_096_988, "document", "")
		}
		if c.lining > 0 {
			b.Piece.Contents[0].Lining = b.Fig("lining", c.lining)
		}
		held := derive(t, b)
		if len(held) != 1 {
			t.Fatalf("%+v: %d held", c, len(held))
		}
		for what, is := range map[string][2]float64{
			"sinks": {held[0].Sinks.Nm.Millimetres(), c.sinks}, "proud": {held[0].Proud.Nm.Millimetres(), c.proud},
			"on a flat": {held[0].OnFlat.Nm.Millimetres(), c.onFlat}, "bare": {held[0].Bare.Nm.Millimetres(), c.bared},
		} {
			if math.Abs(is[0]-is[1]) > 0.001 {
				t.Errorf("%d sides, lining %d: %s %.4f, want %.3f", c.sides, c.lining, what, is[0], is[1])
			}
		}
	}
}

// TestFillingLining: a lining as thick as the channel is deep leaves no channel.
func TestFillingLining(t *testing.T) {
	b := tray(300, 300, 600)
	b.Piece.Contents[0].Lining = b.Fig("lining", 30)
	if held := contents.Derive(&b.Piece, b.Ledger); len(held) != 0 {
		t.Errorf("%+v", held)
	}
}

func stowed(t *testing.T, text string) []plan.Stowed {
	t.Helper()
	r := evaluate.Piece(evaluate.Sources{Document: document.Source{Name: "p", Text: []byte("scantling = 1\n\npiece \"P\" {\n}\n" + text)}})
	for _, d := range r.Diagnostics {
		t.Fatalf("line %d: %s %v", d.Where.Line, d.Code, d.Text)
	}
	out := contents.Stow(r.Piece, r.Ledger)
	for _, s := range out {
		for _, f := range append(append(s.Needs[:], s.Has[:]...), s.Spare[:]...) {
			if err := r.Ledger.VerifyFigure(f); err != nil {
				t.Errorf("%s: %v", s.Of, err)
			}
		}
		for axis := range 3 {
			sum := unit.Length(0)
			for _, a := range s.Sums[axis] {
				sum += a.Figure.Nm
			}
			if sum != s.Needs[axis].Nm {
				t.Errorf("%s: the terms are %v, their sum %v", s.Of, sum, s.Needs[axis].Nm)
			}
		}
	}
	for _, d := range r.Ledger.Verify() {
		t.Error(d)
	}
	return out
}

func space(name, wide, deep, high string) string {
	return "\nspace \"" + name + "\" {\n  left = 0\n  wide = " + wide + "\n  front = 0\n  deep = " + deep + "\n  bottom = 0\n  high = " + high + "\n}\n"
}

// TestStow: 50 jars of 44 among three spaces of 300 by 240 by 110: 17, 17 and 16.
// By hand, cells of 46: four columns and five rows, 184 and 230, so that 116, 10
// and 14 are spare, and two columns more stand in each: 10 more.
func TestStow(t *testing.T) {
	jars := "\ncontents \"jars\" {\n  kind = \"jar\"\n  count = 50\n  among = 3\n  diameter = 44\n  tall = 96\n  play = 2\n  columns = 4\n  mass = \"160 g\"\n  in = [space.a, space.b, space.c]\n}\n"
	all := stowed(t, space("a", "300", "240", "110")+space("b", "300", "240", "110")+space("c", "300", "240", "110")+jars)
	if len(all) != 3 {
		t.Fatalf("%d", len(all))
	}
	for i, s := range all {
		count := []int{17, 17, 16}[i]
		if s.Count != count || s.Places != 20 || s.More != 10 || s.Grams != float64(160*count) {
			t.Errorf("%+v", s)
		}
		for axis, want := range []int64{116, 10, 14} {
			if s.Spare[axis].Nm != unit.MM(want) {
				t.Errorf("spare %v, want %d", s.Spare[axis].Nm, want)
			}
		}
	}
}

// TestBeside: a tablet and a case share a drawer of 288 by 270 by 67: by hand
// 270 - 180 - 65 = 25 are left behind them.
func TestBeside(t *testing.T) {
	all := stowed(t, space("drawer", "288", "270", "67")+`
contents "tablet" {
  kind  = "box"
  count = 1
  size  = [250, 180, 8]
  in    = space.drawer
}

contents "spectacles" {
  kind  = "box"
  count = 1
  size  = [165, 65, 45]
  in    = space.drawer
}
`)
	if len(all) != 2 || all[0].Along != "back" || all[0].Spare[1].Nm != unit.MM(25) || all[1].Spare[1].Nm != unit.MM(25) || len(all[0].Beside) != 1 || all[0].Spare[2].Nm != unit.MM(59) {
		t.Errorf("%+v", all)
	}
}

// TestNoSpace: contents that name no space still tell what they need.
func TestNoSpace(t *testing.T) {
	all := stowed(t, "\ncontents \"coins\" {\n  kind = \"coin\"\n  count = 6\n  diameter = 20\n  thick = 2\n}\n")
	if len(all) != 1 || all[0].In != "" || all[0].Needs[0].Nm != unit.MM(60) || all[0].Has != [3]piece.Figure{} {
		t.Errorf("%+v", all)
	}
}

// TestGrowth: 20 jars, half as many again in time and 2 spare places are 32 for which room
// is made and which the shelves bear: 16 of 160 g in each of two spaces, by hand 2560 g.
func TestGrowth(t *testing.T) {
	all := stowed(t, space("a", "300", "240", "110")+space("b", "300", "240", "110")+
		"\ncontents \"jars\" {\n  kind = \"jar\"\n  count = 20\n  growth = 0.5\n  spare = 2\n  among = 2\n  diameter = 44\n  tall = 96\n  columns = 4\n  mass = \"160 g\"\n  in = [space.a, space.b]\n}\n")
	for _, s := range all {
		if s.Count != 16 || s.Grams != 2560 || s.Places != 16 {
			t.Errorf("%d of %v g in %d places", s.Count, s.Grams, s.Places)
		}
	}
	if len(all) != 2 {
		t.Errorf("%d spaces", len(all))
	}
}
