package setups

import (
	"testing"

	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestSevenChannels: seven channels of a 25.4 round-nose, 8 deep, at centres
// 25 to 253 in 278, travel 270 in 320. Four settings serve
// them, each but the middle one from both edges. Common practice, no source.
func TestSevenChannels(t *testing.T) {
	b := newBench()
	tray := b.part("A1", unit.MM(320), unit.MM(278), unit.MM(20))
	for i := range 7 {
		centre := unit.MM(25 + 38*int64(i))
		half := 12700 * um // the cutter's path; the mouth at 8 deep is 23.6
		c := b.slot(tray, piece.Channel, piece.FaceHigh, piece.AlongLength, centre-half, centre+half, unit.MM(8), 12700*um)
		c.Slot.From, c.Slot.To = b.fig(unit.MM(25)-half), b.fig(unit.MM(295)+half)
		c.Slot.StartOpen, c.Slot.EndOpen = false, false
	}
	res := b.decide(t)
	if len(res.Setups) != 1 {
		t.Fatalf("%d cards, want one", len(res.Setups))
	}
	c := res.Setups[0]
	closed(t, c)
	if got := values(c, wordFenceCentre); !equal(got, []float64{25, 63, 101, 139}) {
		t.Errorf("centres %v", got)
	}
	if got := values(c, wordFenceEdge); !equal(got, []float64{12.3, 50.3, 88.3, 126.3}) {
		t.Errorf("edges %v", got)
	}
	for _, w := range []string{wordStopLeft, wordStopRight} {
		if got := values(c, w); !equal(got, []float64{295, 295, 295, 295}) {
			t.Errorf("%s %v", w, got)
		}
	}
	if got := values(c, wordStopLeftAt); got[0] != 282.3 {
		t.Errorf("stop to the cutter's edge %v, want 282.3", got)
	}
	var passes []float64
	for _, f := range c.Settings[0].Passes {
		passes = append(passes, f.Nm.Millimetres())
	}
	if !equal(passes, []float64{3, 6, 8}) {
		t.Errorf("heights %v, want 3 + 3 + 2", passes)
	}
	if c.Speed != 16000 {
		t.Errorf("%d rpm, want 16 000", c.Speed)
	}
	runs := 0
	for _, p := range c.Placements {
		n := len(c.Settings[0].Passes)
		if p.Turn {
			n *= 2
		}
		runs += n
	}
	if runs != 21 {
		t.Errorf("%d passes over the cutter, want 7 x 3 = 21", runs)
	}
}

// TestFiveSlots: dividers of an egg-crate, slots of 5.2 at 29.5, 61.5, 93.5 and
// again from the other end, by a 3 mm kerf. Three settings of the stop serve
// five slots, two cuts each. Common practice, no source.
func TestFiveSlots(t *testing.T) {
	b := newBench()
	b.shop.Machines = b.shop.Machines[:1]
	divider := b.part("A1", unit.MM(187), unit.MM(38), unit.MM(5))
	for i := range 5 {
		centre := 29500*um + unit.MM(32*int64(i))
		b.slot(divider, piece.Halving, piece.EdgeHigh, piece.AlongThickness, centre-2600*um, centre+2600*um, 19500*um, 0)
	}
	res := b.decide(t)
	if len(res.Setups) != 1 {
		t.Fatalf("%d cards, want one", len(res.Setups))
	}
	c := res.Setups[0]
	closed(t, c)
	var near, far []float64
	for _, p := range c.Placements {
		for _, s := range p.Settings {
			if s.Word == wordBlade {
				near = append(near, s.Passes[0].Nm.Millimetres())
				far = append(far, s.Figure.Nm.Millimetres())
			}
		}
	}
	if !equal(near, []float64{26.9, 58.9, 90.9}) || !equal(far, []float64{29.1, 61.1, 93.1}) {
		t.Errorf("blade to stop %v then %v, want 26.9, 58.9, 90.9 and a shim of 2.2", near, far)
	}
	if len(c.Placements) != 3 || !c.Placements[0].Turn || !c.Placements[1].Turn || c.Placements[2].Turn {
		t.Errorf("placements %+v", c.Placements)
	}
}

// TestWideHousing: a housing of 17.7 with a 12.7 cutter is two paths 5.0 apart,
// the fence moved away, so that the second is not trapped. Common practice, no
// source.
func TestWideHousing(t *testing.T) {
	b := newBench()
	side := b.part("A1", unit.MM(712), unit.MM(330), 17600*um)
	b.slot(side, piece.Housing, piece.FaceHigh, piece.AlongWidth, unit.MM(300), 317700*um, unit.MM(6), 0)
	res := b.decide(t)
	if len(res.Setups) != 1 || len(res.Setups[0].Placements) != 1 {
		t.Fatalf("%+v", res.Setups)
	}
	c := res.Setups[0]
	closed(t, c)
	s, ok := find(c.Placements[0].Settings, wordFenceEdge)
	if !ok || len(s.Passes) != 2 || s.Passes[1].Nm-s.Passes[0].Nm != unit.MM(5) || s.Passes[0].Nm != unit.MM(300) {
		t.Errorf("paths %+v", c.Placements[0].Settings)
	}
	if c.Cutter != "straight 12.7" {
		t.Errorf("cutter %q", c.Cutter)
	}
}

func find(settings []plan.Setting, word string) (plan.Setting, bool) {
	for _, s := range settings {
		if s.Word == word {
			return s, true
		}
	}
	return plan.Setting{}, false
}
