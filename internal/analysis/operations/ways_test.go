package operations

import (
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

const um = unit.Micrometre

func workshop() Workshop {
	least := func(l int64) tool.Limits { return tool.Limits{Length: tool.Stated("least_length", unit.MM(l))} }
	return Workshop{
		Machines: []tool.Machine{
			{Name: "saw", Kind: tool.TableSaw, Least: least(150), Kerf: tool.Stated("kerf", unit.MM(3))},
			{Name: "router", Kind: tool.RouterTable, Least: least(305)},
			{Name: "band saw", Kind: tool.BandSaw, Least: least(150)},
			{Name: "drill", Kind: tool.DrillPress},
		},
		Cutters: []tool.Cutter{
			{Name: "straight 6.35", Shape: tool.Straight, Diameter: 6350 * um, CuttingLength: unit.MM(19)},
			{Name: "straight 12.7", Shape: tool.Straight, Diameter: 12700 * um, CuttingLength: unit.MM(25)},
			{Name: "straight 8", Shape: tool.Straight, Diameter: unit.MM(8), CuttingLength: unit.MM(25)},
			{Name: "nose 6.35", Shape: tool.RoundNose, Diameter: 6350 * um},
			{Name: "round 2", Shape: tool.RoundOver, Radius: unit.MM(2)},
			{Name: "drill 5", Shape: tool.Drill, Diameter: unit.MM(5)},
		},
		Reach: map[string]unit.Length{"router": unit.MM(320), "drill": unit.MM(100)},
	}
}

// one derives the operations of a single part with one cut.
func one(t *testing.T, length, width, thickness unit.Length, blank unit.Length, cut func(fig func(unit.Length) piece.Figure) piece.Cut) (Job, []string, Result) {
	t.Helper()
	l := ledger.New(nil)
	fig := func(n unit.Length) piece.Figure { return l.Leaf("given", n, ledger.Document, "") }
	a := address.Address("side")
	c := cut(fig)
	c.Address, c.Part = "side.cut", a
	row := plan.PartRow{Mark: "A1", Members: []address.Address{a}, Length: fig(length), Width: fig(width), Thickness: fig(thickness), Stage: "1"}
	in := Input{
		Piece: &piece.Piece{Parts: []piece.Part{{Address: a, Name: "side", Length: row.Length, Width: row.Width, Thickness: row.Thickness}}},
		Cuts:  []piece.Cut{c}, Rows: []plan.PartRow{row}, Shop: workshop(), Ledger: l,
	}
	if blank > 0 {
		in.Workpieces = []plan.Workpiece{{ID: "blank.A1.1", Kind: plan.BlankPiece, Mark: "A1", Parts: row.Members, Count: 1, Length: fig(blank), Width: fig(width + unit.MM(5)), Thickness: fig(thickness)}}
	}
	res, list := Derive(in)
	var codes []string
	for _, d := range list {
		codes = append(codes, string(d.Code))
	}
	if len(res.Jobs) != 1 {
		t.Fatalf("%d jobs, want one", len(res.Jobs))
	}
	return res.Jobs[0], codes, res
}

// slotOf makes a slot that runs through.
func slotOf(kind piece.CutKind, open piece.Side, run piece.Local, length, near, far, depth, corner unit.Length) func(func(unit.Length) piece.Figure) piece.Cut {
	return func(fig func(unit.Length) piece.Figure) piece.Cut {
		return piece.Cut{Kind: kind, Slot: &piece.Slot{
			Open: open, Run: run, From: fig(0), To: fig(length), StartOpen: true, EndOpen: true,
			Near: fig(near), Far: fig(far), Depth: fig(depth), Corner: fig(corner),
		}}
	}
}

// TestWays: which machine makes what. Common practice, no source.
func TestWays(t *testing.T) {
	mm := unit.MM
	for _, c := range []struct {
		name                     string
		length, width, thickness unit.Length
		blank                    unit.Length
		cut                      func(func(unit.Length) piece.Figure) piece.Cut
		machine, cutter          string
		guide                    Guide
		down                     piece.Side
		long                     bool
		codes                    []string
	}{
		{
			"a housing across a long side: square by the gauge", mm(600), mm(250), mm(14), 0,
			slotOf(piece.Housing, piece.FaceHigh, piece.AlongWidth, mm(250), mm(100), 112700*um, mm(5), 0),
			"router", "straight 12.7", ByGauge, piece.FaceHigh, false, nil,
		},
		{
			"a rebate along an edge, given as open to the edge: laid flat, the fence covers the cutter", mm(600), mm(250), mm(14), 0,
			slotOf(piece.Rebate, piece.EdgeHigh, piece.AlongLength, mm(600), 0, mm(6), mm(9), 0),
			"router", "straight 12.7", ByFence, piece.FaceLow, false, nil,
		},
		{
			"a channel in a tray too short for the router table: on the longer blank", mm(253), mm(120), mm(15), mm(320),
			slotOf(piece.Channel, piece.FaceHigh, piece.AlongLength, mm(253), mm(20), mm(20)+6350*um, mm(3), 3175*um),
			"router", "nose 6.35", ByFence, piece.FaceHigh, true, nil,
		},
		{
			"the same with no longer blank: by hand, and said so", mm(253), mm(120), mm(15), 0,
			slotOf(piece.Channel, piece.FaceHigh, piece.AlongLength, mm(253), mm(20), mm(20)+6350*um, mm(3), 3175*um),
			Hand, "", ByHand, piece.FaceHigh, false, []string{string(CodeByHand)},
		},
		{
			"a rebate across a short front: at the saw", mm(192), mm(52), mm(14), 0,
			slotOf(piece.Rebate, piece.FaceHigh, piece.AlongWidth, mm(52), 0, mm(10), mm(7), 0),
			"saw", "", ByGauge, piece.FaceHigh, false, nil,
		},
		{
			"a groove in an end of a long part stands upright: refused", mm(600), mm(60), mm(20), 0,
			slotOf(piece.Groove, piece.EndHigh, piece.AlongWidth, mm(60), mm(6), mm(14), mm(10), 0),
			Hand, "", ByHand, piece.EndHigh, false, []string{string(CodeByHand)},
		},
		{
			"a socket of a box joint: on the sled", mm(310), mm(60), mm(10), 0,
			slotOf(piece.Socket, piece.EndHigh, piece.AlongThickness, mm(10), mm(8), mm(16), mm(10), 0),
			"router", "straight 8", BySled, piece.EndHigh, false, nil,
		},
		{
			"a groove far from both edges, beyond the fence: at the saw", mm(900), mm(700), mm(18), 0,
			slotOf(piece.Groove, piece.FaceHigh, piece.AlongLength, mm(900), mm(345), mm(355), mm(6), 0),
			"saw", "", ByFence, piece.FaceHigh, false, nil,
		},
		{
			"a channel of no cutter's radius: by hand", mm(400), mm(120), mm(15), 0,
			slotOf(piece.Channel, piece.FaceHigh, piece.AlongLength, mm(400), mm(20), mm(28), mm(4), mm(4)),
			Hand, "", ByHand, piece.FaceHigh, false, []string{string(CodeByHand)},
		},
		{
			"a notch: by hand to the knife line", mm(400), mm(120), mm(15), 0,
			slotOf(piece.Notch, piece.EdgeLow, piece.AlongThickness, mm(15), 0, mm(5), mm(8), 0),
			Hand, "", ByHand, piece.EdgeLow, false, nil,
		},
		{
			"a hole near an edge: at the drill press", mm(400), mm(300), mm(15), 0,
			func(fig func(unit.Length) piece.Figure) piece.Cut {
				return piece.Cut{Kind: piece.Hole, Bore: &piece.Bore{Open: piece.FaceHigh, At: [2]piece.Figure{fig(mm(200)), fig(mm(30))}, Diameter: fig(mm(5)), Depth: fig(mm(8))}}
			},
			"drill", "drill 5", ByTable, piece.FaceLow, false, nil,
		},
		{
			"a hole beyond the throat: by hand", mm(400), mm(300), mm(15), 0,
			func(fig func(unit.Length) piece.Figure) piece.Cut {
				return piece.Cut{Kind: piece.Hole, Bore: &piece.Bore{Open: piece.FaceHigh, At: [2]piece.Figure{fig(mm(200)), fig(mm(150))}, Diameter: fig(mm(5)), Depth: fig(mm(8))}}
			},
			Hand, "drill 5", ByHand, piece.FaceLow, false, nil,
		},
		{
			"an edge eased by the shop's own radius: at the router table", mm(400), mm(50), mm(15), 0,
			func(fig func(unit.Length) piece.Figure) piece.Cut {
				return piece.Cut{Kind: piece.Eased, Ease: &piece.Ease{Sides: [2]piece.Side{piece.EdgeHigh, piece.FaceHigh}, Radius: fig(mm(2))}}
			},
			"router", "round 2", ByRounds, piece.FaceHigh, false, nil,
		},
	} {
		job, codes, _ := one(t, c.length, c.width, c.thickness, c.blank, c.cut)
		w := job.Way
		if w.Machine != c.machine || w.Cutter.Name != c.cutter || w.Guide != c.guide || w.Down != c.down || w.Long != c.long || !slices.Equal(codes, c.codes) {
			t.Errorf("%s: %s, %q, %s, %s down, long %v, %v", c.name, w.Machine, w.Cutter.Name, w.Guide, w.Down, w.Long, codes)
		}
	}
}

// TestStoppedCuts: a cut stopped at one end is entered from the other, so only
// one side may be against the fence; one stopped at both ends is cut by raising
// the cutter.
func TestStoppedCuts(t *testing.T) {
	for _, c := range []struct {
		name       string
		start, end bool
		fences     []piece.Side
		raise      bool
	}{
		{"through", true, true, []piece.Side{piece.EndLow, piece.EndHigh}, false},
		{"open at edge 2", false, true, []piece.Side{piece.EndLow}, false},
		{"open at edge 1", true, false, []piece.Side{piece.EndHigh}, false},
		{"blind", false, false, []piece.Side{piece.EndLow, piece.EndHigh}, true},
		{"blind in work that is too short to be held between stops", false, false, nil, false},
	} {
		width := unit.MM(305)
		if !c.raise {
			width = unit.MM(250)
		}
		job, _, _ := one(t, unit.MM(400), width, unit.MM(14), 0, func(fig func(unit.Length) piece.Figure) piece.Cut {
			cut := slotOf(piece.Housing, piece.FaceHigh, piece.AlongWidth, width, unit.MM(100), unit.MM(114), unit.MM(5), 0)(fig)
			cut.Slot.StartOpen, cut.Slot.EndOpen = c.start, c.end
			if !c.start {
				cut.Slot.From = fig(unit.MM(8))
			}
			if !c.end {
				cut.Slot.To = fig(unit.MM(242))
			}
			return cut
		})
		if !slices.Equal(job.Way.Fences, c.fences) || job.Way.Raise != c.raise {
			t.Errorf("%s: fences %v, raised %v", c.name, job.Way.Fences, job.Way.Raise)
		}
	}
}

// TestNoStopOnAnUntrimmedEnd: on the longer blank end 1 is square and end 2 is not, so a
// stop may bear on end 1 alone: that is the end that leads where the channel is entered
// at end 1 and stopped before end 2. With a plunge router the finished part is clamped.
func TestNoStopOnAnUntrimmedEnd(t *testing.T) {
	for _, c := range []struct {
		name       string
		start, end bool
		long       bool
	}{
		{"runs through", true, true, true},
		{"stopped before end 2", true, false, true},
		{"stopped before end 1", false, true, false},
		{"stopped at both ends", false, false, false},
	} {
		job, _, _ := one(t, unit.MM(253), unit.MM(120), unit.MM(15), unit.MM(320), func(fig func(unit.Length) piece.Figure) piece.Cut {
			cut := slotOf(piece.Channel, piece.FaceHigh, piece.AlongLength, unit.MM(253), unit.MM(20), unit.MM(20)+6350*um, unit.MM(3), 3175*um)(fig)
			if cut.Slot.StartOpen, cut.Slot.EndOpen = c.start, c.end; !c.start {
				cut.Slot.From = fig(unit.MM(12))
			}
			if !c.end {
				cut.Slot.To = fig(unit.MM(241))
			}
			return cut
		})
		if job.Way.Long != c.long {
			t.Errorf("%s: on the longer blank %v, by %s", c.name, job.Way.Long, job.Way.Machine)
		}
		if lead := Leads(job.Way.Down, append(job.Way.Fences, piece.EdgeLow)[0]); c.long && !c.end && lead != piece.EndLow {
			t.Errorf("%s: %s goes first, and the stop bears on it", c.name, lead)
		}
	}
}

// TestPlunge: a plunge router takes cuts that begin inside the work, on faces, at the
// finished part; one that nobody said plunges, and one that does not, are left.
func TestPlunge(t *testing.T) {
	for _, c := range []struct {
		plunges tool.Plunges
		reach   int64
		machine string
	}{
		{tool.PlungesYes, 0, "plunge"}, {tool.PlungesYes, 200, "plunge"}, {tool.PlungesYes, 19, "router"},
		{tool.PlungesNo, 0, "router"}, {tool.PlungesUnsaid, 0, "router"},
	} {
		shop := workshop()
		shop.Machines = append(shop.Machines, tool.Machine{Name: "plunge", Kind: tool.Router, Plunges: c.plunges})
		shop.Reach["plunge"] = unit.MM(c.reach)
		l := ledger.New(nil)
		fig := func(n unit.Length) piece.Figure { return l.Leaf("given", n, ledger.Document, "") }
		cut := slotOf(piece.Channel, piece.FaceHigh, piece.AlongLength, unit.MM(400), unit.MM(20), unit.MM(20)+6350*um, unit.MM(3), 3175*um)(fig)
		cut.Slot.StartOpen, cut.Slot.EndOpen, cut.Slot.From, cut.Slot.To = false, false, fig(unit.MM(12)), fig(unit.MM(388))
		ways, _ := slotWays(shop, l, cut, &work{size: [3]piece.Figure{fig(unit.MM(400)), fig(unit.MM(120)), fig(unit.MM(15))}}, nil)
		if len(ways) == 0 || ways[0].Machine != c.machine || !ways[0].Raise {
			t.Errorf("plunges %d, guide to %d: %+v", c.plunges, c.reach, ways)
		}
	}
}

// TestBeyondTheFence: a cut that could only be entered with the far end against
// the fence, farther than the fence goes, begins at its stopped end.
func TestBeyondTheFence(t *testing.T) {
	job, codes, _ := one(t, unit.MM(700), unit.MM(320), unit.MM(14), 0, func(fig func(unit.Length) piece.Figure) piece.Cut {
		cut := slotOf(piece.Housing, piece.FaceHigh, piece.AlongWidth, unit.MM(320), unit.MM(100), unit.MM(114), unit.MM(5), 0)(fig)
		cut.Slot.EndOpen, cut.Slot.To = false, fig(unit.MM(242))
		return cut
	})
	if w := job.Way; w.Machine != "router" || !w.Raise || !slices.Equal(w.Fences, []piece.Side{piece.EndLow}) || len(codes) != 0 {
		t.Errorf("%s, raised %v, fences %v, %v", w.Machine, w.Raise, w.Fences, codes)
	}
}

// TestLongBlank: what is cut on the longer blank comes before the part is cut to
// length, and that after the rip.
func TestLongBlank(t *testing.T) {
	_, _, res := one(t, unit.MM(253), unit.MM(120), unit.MM(15), unit.MM(320),
		slotOf(piece.Channel, piece.FaceHigh, piece.AlongLength, unit.MM(253), unit.MM(20), unit.MM(20)+6350*um, unit.MM(3), 3175*um))
	at := map[plan.OperationKind]int{}
	id := map[string]int{}
	for i, op := range res.Operations {
		at[op.Kind], id[op.ID] = i, i
		for _, n := range op.Needs {
			if j, ok := id[n]; !ok || j >= i {
				t.Errorf("%s needs %s, which is not there yet", op.ID, n)
			}
		}
	}
	if !(at[plan.RipToWidth] < at[plan.MakeCut] && at[plan.MakeCut] < at[plan.CutToLength]) {
		t.Errorf("order %v", at)
	}
	cut := res.Operations[at[plan.MakeCut]]
	if cut.Workpiece != "blank.A1.1" || cut.Before[0].Nm != unit.MM(320) {
		t.Errorf("cut on %s of %v", cut.Workpiece, cut.Before[0].Nm)
	}
}

// TestCutOrder: across before along, a trough before the channels that say so,
// and a circle of waiting cuts is reported.
func TestCutOrder(t *testing.T) {
	d := deriver{}
	cut := func(name string, kind piece.CutKind, run piece.Local, after ...address.Address) piece.Cut {
		return piece.Cut{Address: address.Address(name), Kind: kind, Slot: &piece.Slot{Open: piece.FaceHigh, Run: run}, After: after}
	}
	names := func(cuts []piece.Cut) []string {
		var out []string
		for _, c := range cuts {
			out = append(out, string(c.Address))
		}
		return out
	}
	got := names(d.inOrder([]piece.Cut{
		cut("channel", piece.Channel, piece.AlongLength, "heads", "hollow"),
		cut("groove", piece.Groove, piece.AlongLength),
		cut("hollow", piece.Trough, piece.AlongWidth), cut("heads", piece.Trough, piece.AlongWidth, "hollow"),
	}))
	if !slices.Equal(got, []string{"hollow", "heads", "groove", "channel"}) || len(d.diags) != 0 {
		t.Errorf("%v, %v", got, d.diags)
	}
	got = names(d.inOrder([]piece.Cut{cut("a", piece.Groove, piece.AlongLength, "b"), cut("b", piece.Groove, piece.AlongLength, "a")}))
	if len(got) != 2 || len(d.diags) != 1 || d.diags[0].Code != CodeCutCycle {
		t.Errorf("a circle: %v, %v", got, d.diags)
	}
}
