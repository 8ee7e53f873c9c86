package scantling_test

import (
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/plan"
)

// TestDrawerInsert: the smallest of what was measured counts.
//
//	444.5 - 2.5 = 442; 477 - 2 = 475; walls 62 - 4 = 58
//	442 - 2 × 8 - 3 × 8 = 402; needs 70 + 75 + 85 + 130 = 360; 42 / 4 = 10.5 each: 80.5 85.5 95.5 140.5
//	8 + 270 + 8 + 181 + 8 = 475: the teaspoons of 140 have 181
//	housings from the outside left 8 + 80.5 = 88.5, 88.5 + 8 + 85.5 = 182, 182 + 8 + 95.5 = 285.5;
//	the last from the right: 442 - 285.5 - 8 = 148.5
//	on the cross wall 8 - 2.7 = 5.3 less: 83.2, 176.7, 280.2, from the right 143.2
//	cross wall 442 - 16 + 2 × 2.7 = 431.4; dividers 270 + 2 × 2.7 = 275.4
//	sides: the cross wall's housing is 475 - 278 - 8 = 189 from the back
func TestDrawerInsert(t *testing.T) {
	r := planExample(t, "drawer-insert", nil)
	want(t, "side", sizesOf(t, r, "insert.side.left"), "475 58 8")
	want(t, "front", sizesOf(t, r, "insert.end[1]"), "442 58 8")
	want(t, "cross wall", sizesOf(t, r, "insert.cross"), "431.4 58 8")
	want(t, "divider", sizesOf(t, r, "insert.divider[2]"), "275.4 58 8")
	all := r.Plan.Overall()
	want(t, "in all", mm(all[:]...), "442 475 62")
	want(t, "fence to the cutter's edge", settingsOf(r, "straight 8", "fence to cutter edge"), "83.2 88.5 143.2 148.5 176.7 182 189")
	for _, s := range r.Plan.Setups {
		if s.Cutter == "straight 8" {
			want(t, "height", mm(s.Settings[0].Figure.Nm), "2.7")
		}
		if s.Cutter == "straight 6.35" {
			t.Error("the cutter of 6.35 is narrower than the wall, one of 8 is there")
		}
	}
}

// TestDrawerInsertBlanks: a divider of 275.4 is under the 300 of the jointer and the 305 of
// the thicknesser, so three are planed in one length of 3 × 275.4 + 2 × 3 and what the
// allowance takes, and docked later.
func TestDrawerInsertBlanks(t *testing.T) {
	r := planExample(t, "drawer-insert", nil)
	found := false
	for _, w := range r.Plan.Workpieces {
		if w.Kind == plan.BlankPiece && w.Mark == "A4" {
			found = true
			if len(w.Parts) != 3 || w.Length.Nm.Millimetres() < 3*275.4+2*3 {
				t.Errorf("%d dividers on one blank of %s", len(w.Parts), mm(w.Length.Nm))
			}
		}
	}
	if !found {
		t.Error("no blank of the dividers")
	}
}

// TestDrawerInsertUnknown: neither the diagonals nor the ply were measured. Both are asked
// for, and neither is an error: the frame can be drawn, not yet cut.
func TestDrawerInsertUnknown(t *testing.T) {
	r := planExample(t, "drawer-insert", nil)
	if got := codes(r); !slices.Contains(got, "sheet-not-measured") || !slices.Contains(got, "rule-broken") {
		t.Errorf("%v: diagonals and base were not measured", got)
	}
	for _, f := range r.Plan.Findings {
		if f.Status != plan.Pass && f.Severity == diag.Error {
			t.Errorf("%s is an error", f.Code)
		}
	}
	square := map[string]string{"diagonal_left": "652", "diagonal_right": "651"}
	if got := codes(planExample(t, "drawer-insert", square)); slices.Contains(got, "rule-broken") {
		t.Error("with both diagonals the drawer is known to be square")
	}
	if got := codes(planExample(t, "drawer-insert", map[string]string{"diagonal_left": "652", "diagonal_right": "646"})); !slices.Contains(got, "rule-broken") {
		t.Error("6 out of square is more than the insert has room for")
	}
	if got := codes(planExample(t, "drawer-insert", map[string]string{"diagonal_left": "652"})); !slices.Contains(got, "rule-broken") {
		t.Error("one diagonal tells nothing")
	}
}

// TestDrawerInsertSmallest: whichever end of the drawer is the smaller counts, and a low
// back lowers the walls: 60 - 3 - 4 = 53 with the base under them.
func TestDrawerInsertSmallest(t *testing.T) {
	for _, x := range []struct {
		input, value string
		part         address.Address
		sizes        string
	}{
		{"width_back", "440", "insert.end[1]", "437.5 58 8"},
		{"width_front", "441", "insert.end[1]", "438.5 58 8"},
		{"depth_left", "470", "insert.side.left", "468 58 8"},
		{"back_high", "60", "insert.side.left", "475 53 8"},
	} {
		r := planExample(t, "drawer-insert", map[string]string{x.input: x.value})
		want(t, x.input, sizesOf(t, r, x.part), x.sizes)
	}
}

// staggered puts teaspoon dividers behind the cross wall, each behind a long one.
const staggered = `  part "short" {
    of     = material.wall
    repeat = 3
    grain  = "back"
    front  = part.cross.back
    back   = part.end[2].front
    left   = part.divider[nth].left
    bottom = material.base.thickness
    high   = sizes.walls
  }

  joint "short" {
    kind  = "housing"
    of    = part.short
    into  = [part.cross, part.end[2]]
    depth = 2.7
    meets = 6
  }

  part "base" {`

func TestDrawerInsertTraps(t *testing.T) {
	spring(t, "drawer-insert", []trap{
		// 8 - 2 × 2.7 = 2.6 of wood between.
		{name: "dividers back to back at the cross wall", old: `  part "base" {`, new: staggered, code: "wood-between-too-thin"},
	})
}
