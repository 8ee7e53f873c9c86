package rehearsal

import (
	"slices"
	"testing"

	"scantling/internal/analysis/operations"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// shaped is a piece of cuts that want a cutter of their shape.
func shaped(t *testing.T, cutters ...tool.Cutter) (*bench, *plan.Plan) {
	t.Helper()
	b := newBench()
	b.shop.Cutters = append(b.shop.Cutters, cutters...)
	b.part("Z", 1, unit.MM(400), unit.MM(60), unit.MM(20))
	a := b.part("A", 2, unit.MM(400), unit.MM(90), unit.MM(20))
	v := b.slot(a, piece.VChannel, piece.FaceHigh, piece.AlongLength, unit.MM(40), unit.MM(50), unit.MM(5), 0)
	v.Slot.LeanNear, v.Slot.LeanFar = b.fig(unit.MM(5)), b.fig(unit.MM(5))
	for i, e := range []piece.Ease{
		{Sides: [2]piece.Side{piece.FaceHigh, piece.EdgeLow}, Radius: b.fig(unit.MM(4)), Chamfer: true},
		{Sides: [2]piece.Side{piece.FaceHigh, piece.EdgeHigh}, Radius: b.fig(unit.MM(6)), Cove: true},
		{Sides: [2]piece.Side{piece.FaceLow, piece.EdgeHigh}, Radius: b.fig(unit.MM(3)), Chamfer: true, From: b.fig(unit.MM(50)), To: b.fig(unit.MM(350))},
	} {
		if b.add(a, piece.Cut{Kind: piece.Eased, Ease: &e}).Ease == nil {
			t.Fatal(i)
		}
	}
	m := b.slot(a, piece.Mortise, piece.FaceHigh, piece.AlongLength, unit.MM(64), unit.MM(72), unit.MM(12), 0)
	m.Slot.StartOpen, m.Slot.EndOpen, m.Slot.From, m.Slot.To = false, false, b.fig(unit.MM(100)), b.fig(unit.MM(150))
	b.add(a, piece.Cut{Kind: piece.Hole, Bore: &piece.Bore{
		Open: piece.FaceHigh, At: [2]piece.Figure{b.fig(unit.MM(300)), b.fig(unit.MM(20))}, Diameter: b.fig(unit.MM(5)), Through: true, Depth: b.fig(unit.MM(20)),
		Sink: &piece.Sink{Diameter: b.fig(unit.MM(10)), Depth: b.fig(2500 * um)},
	}})
	return b, b.plan(t)
}

// machines tells which machine and cutter makes each kind of cut.
func machines(b *bench, p *plan.Plan) map[piece.CutKind][]string {
	out := map[piece.CutKind][]string{}
	for _, op := range p.Operations {
		for _, a := range op.Cuts {
			for _, c := range b.cuts {
				if c.Address == a {
					out[c.Kind] = append(out[c.Kind], op.Machine+" "+op.Cutter)
				}
			}
		}
	}
	for _, list := range out {
		slices.Sort(list)
	}
	return out
}

// TestShapedCutters: each shape is cut with its cutter where the shop has it; else by
// hand; a cutter of another angle or radius is not taken, a drill less than six tenths
// of a mortise's width neither.
func TestShapedCutters(t *testing.T) {
	right := []tool.Cutter{
		{Name: "v 90", Shape: tool.VGroove, Diameter: 12700 * um, CuttingLength: 6350 * um},
		{Name: "chamfer", Shape: tool.Chamfer, Diameter: unit.MM(30), CuttingLength: unit.MM(10)},
		{Name: "cove 6", Shape: tool.Cove, Diameter: unit.MM(25), Radius: unit.MM(6)},
		{Name: "drill 7", Shape: tool.Drill, Diameter: unit.MM(7)},
	}
	b, p := shaped(t, right...)
	got := machines(b, p)
	for kind, want := range map[piece.CutKind][]string{
		piece.VChannel: {"router table v 90"}, piece.Eased: {"hand ", "router table chamfer", "router table cove 6"},
		piece.Mortise: {"drill press drill 7"}, piece.Hole: {"drill press drill 5"},
	} {
		if !slices.Equal(got[kind], want) {
			t.Errorf("%s: by %q, want %q", kind, got[kind], want)
		}
	}
	if findings, _ := b.rehearse(p); !passed(findings) {
		t.Fatal(say(findings))
	}
	for i := range p.Setups {
		c := &p.Setups[i]
		try := func(what string, f *plan.Figure) {
			f.Nm += 100 * um
			if findings, _ := b.rehearse(p); passed(findings) && c.Machine != operations.Hand {
				t.Errorf("%s: %s may be wrong by 0.1", c.ID, what)
			}
			f.Nm -= 100 * um
		}
		for k := range c.Placements {
			for n := range c.Placements[k].Settings {
				if len(c.Placements[k].Cuts) > 0 {
					try(c.Placements[k].Settings[n].Word, &c.Placements[k].Settings[n].Figure)
				}
			}
		}
		if c.Cutter != "" {
			try("cutter", &c.CutterSize)
		}
	}

	wrong := slices.Clone(right)
	wrong[0].CuttingLength = unit.MM(11) // 60 degrees
	wrong[1].CuttingLength = unit.MM(3)
	wrong[2].Radius = unit.MM(5)
	wrong[3].Diameter = unit.MM(4)
	b, p = shaped(t, wrong...)
	got = machines(b, p)
	if !slices.Equal(got[piece.VChannel], []string{"hand "}) || !slices.Equal(got[piece.Mortise], []string{"drill press drill 5"}) || !slices.Equal(got[piece.Eased], []string{"hand ", "hand ", "hand "}) {
		t.Errorf("with cutters that do not fit: %v", got)
	}
	if findings, _ := b.rehearse(p); !passed(findings) {
		t.Error(say(findings))
	}
}

// TestChannelsTakeRoundNose: a channel as wide as twice its corner is cut by the
// round-nose of that radius, though a straight cutter of that width is there; where
// none has the radius, by hand.
func TestChannelsTakeRoundNose(t *testing.T) {
	for radius, want := range map[unit.Length]string{6350 * um: "router table round-nose 12.7", unit.MM(5): "hand "} {
		b := newBench()
		b.part("Z", 1, unit.MM(400), unit.MM(60), unit.MM(20))
		a := b.part("A", 1, unit.MM(400), unit.MM(90), unit.MM(20))
		c := b.slot(a, piece.Channel, piece.FaceHigh, piece.AlongLength, unit.MM(30), unit.MM(30)+2*radius, unit.MM(4), radius)
		c.Cutter = "straight 12.7"
		p := b.plan(t)
		if got := machines(b, p)[piece.Channel]; !slices.Equal(got, []string{want}) {
			t.Errorf("radius %d: by %q, want %q", radius, got, want)
		}
		if findings, _ := b.rehearse(p); !passed(findings) {
			t.Error(say(findings))
		}
	}
}

// TestPockets: a recess of any shape says how deep it is, wrong by a tenth it fails; an
// outline right through goes to the band saw.
func TestPockets(t *testing.T) {
	b := newBench()
	b.part("Z", 1, unit.MM(400), unit.MM(60), unit.MM(20))
	a := b.part("A", 1, unit.MM(400), unit.MM(90), unit.MM(20))
	b.add(a, piece.Cut{Kind: piece.Recess, Pocket: &piece.Pocket{Open: piece.FaceHigh, Depth: b.fig(unit.MM(6))}})
	b.add(a, piece.Cut{Kind: piece.Curve, Pocket: &piece.Pocket{Open: piece.FaceHigh, Depth: b.fig(unit.MM(20)), Through: true}})
	p := b.plan(t)
	if findings, _ := b.rehearse(p); !passed(findings) {
		t.Fatal(say(findings))
	}
	if got := machines(b, p); got[piece.Curve][0] != "band saw " || got[piece.Recess][0] != "hand " {
		t.Errorf("%v", got)
	}
	n := 0
	for _, c := range p.Setups {
		for _, q := range c.Placements {
			if len(q.Cuts) == 0 || len(q.Settings) == 0 {
				continue
			}
			q.Settings[0].Figure.Nm += 100 * um
			if findings, _ := b.rehearse(p); passed(findings) {
				t.Errorf("%s may be wrong by 0.1", q.Settings[0].Word)
			}
			q.Settings[0].Figure.Nm -= 100 * um
			n++
		}
	}
	if n != 1 {
		t.Errorf("%d figures, want 1", n)
	}
}
