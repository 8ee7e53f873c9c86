package blanks_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"scantling/internal/analysis/blanks"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestGougeTray: a tray of 278 with seven channels at a pitch of 38 and mouths of
// 23.6, out of a board of 1100 × 150 × 27 with a jointer of 150: three strips of 82,
// 114 and 82 finished, their joints at 82 and 196, the middles of lands. Two strips
// would do by width, but no land lies where they would meet. Common practice, no
// source.
func TestGougeTray(t *testing.T) {
	b := newBench()
	b.in.Stock = []blanks.Stock{board("cherry 27", 11000, 1500, 270, 1)}
	b.row("A1", 1, 3200, 2780, 200)
	b.channels(7, 250, 380, 236)
	out, diags := b.derive(t)
	panel := find(out, plan.PanelPiece)
	if len(diags) != 0 || len(panel) != 1 {
		t.Fatalf("%v %+v", diags, out)
	}
	var joints, strips []int64
	for _, j := range panel[0].Joints {
		joints = append(joints, tenths(j))
	}
	for _, s := range find(out, plan.StripPiece) {
		strips = append(strips, tenths(s.Width))
	}
	// The outer strips have the panel's 2.5 at one edge, all have 1 at each edge that is jointed.
	if fmt.Sprint(joints) != "[820 1960]" || fmt.Sprint(strips) != "[865 1160 865]" {
		t.Errorf("joints %v, strips %v", joints, strips)
	}
	if keys(panel[0].Why) != "[blanks.glued-up]" {
		t.Errorf("%s", keys(panel[0].Why))
	}
}

// TestTable: a top of 400 out of boards of 180 with a jointer of 200 and a
// thicknesser of 300: three strips of at least 137, and wider than the
// thicknesser. Common practice, no source.
func TestTableTop(t *testing.T) {
	b := newBench()
	b.in.Stock = []blanks.Stock{board("ash 27", 24000, 1800, 270, 2)}
	b.in.Limits.Joint = unit.MM(200)
	b.row("A1", 1, 4500, 4000, 200)
	out, _ := b.derive(t)
	strips, panel := find(out, plan.StripPiece), find(out, plan.PanelPiece)[0]
	if len(strips) != 3 || keys(panel.Why) != "[blanks.glued-up blanks.wider-than-planer]" {
		t.Fatalf("%d strips, %s", len(strips), keys(panel.Why))
	}
	// Two of them are 274 rough and go through a thicknesser of 300, three do not.
	narrow := find(out, plan.NarrowPanel)
	if len(narrow) != 1 || !panel.InWidths || fmt.Sprint(narrow[0].From, panel.From) != "[strip.A1.1.1 strip.A1.1.2] [narrow.A1.1.1 strip.A1.1.3]" || narrow[0].Width.Nm > unit.MM(274) {
		t.Errorf("%+v, %v", narrow, panel.From)
	}
	for _, s := range strips {
		if s.Width.Nm < unit.MM(137) || s.Stock != "ash 27" {
			t.Errorf("%+v", s)
		}
	}
	if panel.Stock != "" {
		t.Error("a panel comes off no board")
	}
}

// TestOneSetting: strips of a width that three do not share are ripped at one
// setting, to a tenth, and the last is the rest: 392.6 + 5 in three is 132.53.
func TestOneSetting(t *testing.T) {
	b := newBench()
	b.row("A1", 1, 4000, 3926, 180)
	out, _ := b.derive(t)
	var strips []int64
	for _, s := range find(out, plan.StripPiece) {
		strips = append(strips, int64(s.Width.Nm/unit.Micrometre))
	}
	// All have 1 at each edge over.
	if fmt.Sprint(strips) != "[134600 134600 134400]" {
		t.Errorf("%v", strips)
	}
	// Where a tenth more is too much they are as equal as can be.
	b = newBench()
	b.in.Limits.Joint = unit.Length(132533334 + 2_000_000)
	b.row("A1", 1, 4000, 3926, 180)
	out, _ = b.derive(t)
	for _, w := range find(out, plan.StripPiece) {
		if w.Width.Nm != 134533333 && w.Width.Nm != 134533334 {
			t.Errorf("%s is %v wide", w.ID, w.Width.Nm)
		}
	}
	if n := len(find(out, plan.StripPiece)); n != 3 {
		t.Errorf("%d strips", n)
	}
}

// TestJoints: where strips meet that are at most 148 wide.
func TestJoints(t *testing.T) {
	for _, c := range []struct {
		name   string
		width  int64
		make   func(b *bench)
		joints string
	}{
		{"equal strips", 2000, func(*bench) {}, "[1000]"},
		{"a groove that the joint is clear of by 5", 2000, func(b *bench) { b.slot(1050, 1110) }, "[1000]"},
		{"a groove in the middle: just clear of it", 2000, func(b *bench) { b.slot(980, 1040) }, "[930]"},
		{"a rebate along the edge is not near", 2000, func(b *bench) { b.slot(1900, 2000) }, "[1000]"},
		{"two grooves in one place", 2000, func(b *bench) { b.slot(900, 1100); b.slot(950, 1050) }, "[850]"},
		{"cut all over but for one place", 2000, func(b *bench) { b.slot(0, 980); b.slot(1200, 2000) }, "[1030]"},
		{"a row: the middle of a land", 2000, func(b *bench) { b.channels(4, 250, 500, 300) }, "[1000]"},
		{"a land with a groove in it is none", 2000, func(b *bench) { b.channels(4, 250, 500, 300); b.slot(980, 1020) }, "[500 1500]"},
	} {
		b := newBench()
		b.row("A1", 1, 4000, c.width, 180)
		c.make(b)
		out, diags := b.derive(t)
		panel := find(out, plan.PanelPiece)
		if len(panel) == 0 {
			t.Errorf("%s: no panel (%v)", c.name, diags)
			continue
		}
		var joints []int64
		for _, j := range panel[0].Joints {
			joints = append(joints, tenths(j))
		}
		if fmt.Sprint(joints) != c.joints {
			t.Errorf("%s: %v, want %s", c.name, joints, c.joints)
		}
	}
}

// TestNoStrips: where every place is cut away nothing can be glued up, and the two
// figures are told.
func TestNoStrips(t *testing.T) {
	b := newBench()
	b.row("A1", 1, 4000, 2000, 180)
	b.slot(0, 2000)
	_, diags := b.derive(t)
	if len(diags) != 1 || diags[0].Text.Key != "blanks.no-strips" {
		t.Fatalf("%v", diags)
	}
	if w, _ := diags[0].Text.Arg("width"); w.Nm != unit.MM(205) {
		t.Errorf("width %v", w.Nm)
	}
	if r, _ := diags[0].Text.Arg("room"); r.Nm != unit.MM(148) {
		t.Errorf("room %v", r.Nm)
	}
}

// TestPanelLaws, over random panels: the laws of derive, and that no joint falls in
// a cut and no strip is wider than it may be.
func TestPanelLaws(t *testing.T) {
	panels := 0
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 5))
		b := newBench()
		b.in.Stock[0].Width = unit.MM(80 + r.Int64N(150))
		width := 1000 + r.Int64N(5000)
		b.row("A1", 1+r.IntN(2), 1500+r.Int64N(8000), width, 100+r.Int64N(110))
		if r.IntN(2) == 0 {
			pitch := 150 + r.Int64N(500)
			n := (width - 200) / pitch
			b.channels(n, (width-(n-1)*pitch)/2, pitch, pitch/4*2)
		}
		for range r.IntN(3) {
			at := r.Int64N(width - 60)
			b.slot(at, at+20+r.Int64N(40))
		}
		out, diags := blanks.Derive(b.in)
		for _, f := range b.laws(out, diags) {
			t.Errorf("seed %d: %s", seed, f)
		}
		for _, p := range find(out, plan.PanelPiece) {
			panels++
			for _, j := range p.Joints {
				for _, c := range b.in.Cuts {
					if c.Part == p.Parts[0] && j.Nm > c.Slot.Near.Nm && j.Nm < c.Slot.Far.Nm {
						t.Errorf("seed %d: a joint at %v in a cut from %v to %v", seed, j.Nm, c.Slot.Near.Nm, c.Slot.Far.Nm)
					}
				}
			}
		}
	}
	if panels < 100 {
		t.Errorf("only %d panels", panels)
	}
}
