package rehearsal

import (
	"slices"
	"testing"

	"scantling/internal/analysis/operations"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestChest: a piece with every kind of cut is planned and carried out.
func TestChest(t *testing.T) {
	b := chest()
	p := b.plan(t)
	findings, report := b.rehearse(p)
	if !passed(findings) {
		t.Fatalf("%s", say(findings))
	}
	t.Logf("%+v", report)
	if report.Cuts != len(b.cuts) {
		t.Errorf("%d cuts carried out, the design has %d", report.Cuts, len(b.cuts))
	}
	for _, d := range b.l.Verify() {
		t.Errorf("ledger: %+v", d)
	}
}

// figures visits every figure of the cards that a person sets or checks.
func figures(p *plan.Plan, visit func(where string, f *plan.Figure)) {
	settings := func(card string, list []plan.Setting) {
		for i := range list {
			visit(card+": "+list[i].Word, &list[i].Figure)
			for k := range list[i].Passes {
				visit(card+": pass of "+list[i].Word, &list[i].Passes[k])
			}
		}
	}
	sums := func(card string, list []plan.Sum) {
		for i := range list {
			visit(card+": total", &list[i].Total)
			for k := range list[i].Terms {
				visit(card+": term "+list[i].Terms[k].Word, &list[i].Terms[k].Figure)
			}
		}
	}
	for i := range p.Setups {
		c := &p.Setups[i]
		if c.CutterSize.Nm != 0 {
			visit(c.ID+": cutter", &c.CutterSize)
		}
		settings(c.ID, c.Settings)
		sums(c.ID, c.Sums)
		for k := range c.Placements {
			settings(c.ID, c.Placements[k].Settings)
			sums(c.ID, c.Placements[k].Sums)
		}
	}
}

// TestMutants: one figure of one card is changed by a tenth of a millimetre; the
// rehearsal must fail.
func TestMutants(t *testing.T) {
	b := chest()
	p := b.plan(t)
	all, survivors := 0, 0
	for _, by := range []unit.Length{100 * um, -100 * um} {
		figures(p, func(where string, f *plan.Figure) {
			was := f.Nm
			f.Nm += by
			all++
			if findings, _ := b.rehearse(p); passed(findings) {
				survivors++
				t.Errorf("survives: %s changed by %d", where, by)
			}
			f.Nm = was
		})
	}
	t.Logf("%d mutants of figures, %d survive", all, survivors)
	if findings, _ := b.rehearse(p); !passed(findings) {
		t.Error("the plan was not put back")
	}
}

// TestSizeMutants: a size that an operation starts from or ends with is changed,
// or a figure of the graph of workpieces.
func TestSizeMutants(t *testing.T) {
	b := chest()
	p := b.plan(t)
	all := 0
	try := func(where string, f *plan.Figure) {
		if f.Nm == 0 {
			return
		}
		f.Nm += 100 * um
		all++
		if findings, _ := b.rehearse(p); passed(findings) {
			t.Errorf("survives: %s", where)
		}
		f.Nm -= 100 * um
	}
	for i := range p.Operations {
		op := &p.Operations[i]
		if op.Kind == plan.MakeCut && op.Machine == operations.Hand {
			continue // the hand measures nothing from the size of the work
		}
		for axis := range 3 {
			if op.Kind == plan.FaceJoint || op.Kind == plan.EdgeJoint || op.Kind == plan.PlaneToThick || op.Kind == plan.RipToWidth || op.Kind == plan.CutToLength {
				try(op.ID+" before", &op.Before[axis])
				try(op.ID+" after", &op.After[axis])
			}
		}
	}
	for i := range p.Parts {
		row := &p.Parts[i]
		try(row.Mark+" length", &row.Length)
		try(row.Mark+" width", &row.Width)
		try(row.Mark+" thickness", &row.Thickness)
	}
	t.Logf("%d mutants of sizes", all)
}

// TestSlips: what a person may get wrong in a plan besides a figure.
func TestSlips(t *testing.T) {
	b := chest()
	p := b.plan(t)
	mustFail := func(what string, code diag.Code) {
		t.Helper()
		findings, _ := b.rehearse(p)
		if !slices.ContainsFunc(findings, func(f plan.Finding) bool { return f.Code == code && f.Status == plan.Fail }) {
			t.Errorf("%s: no %s, but %s", what, code, say(findings))
		}
	}
	for i := range p.Setups {
		for k := range p.Setups[i].Placements {
			m := &p.Setups[i].Placements[k]
			if !isMachined(*m) || len(m.Cuts) == 0 {
				continue
			}
			was := *m
			m.Fence = was.Fence.Opposite()
			mustFail(p.Setups[i].ID+": other side against the fence", CodeCut)
			*m = was
			m.Down = was.Down.Opposite()
			mustFail(p.Setups[i].ID+": other side down", CodeCut)
			*m = was
		}
	}
	drop := p.Setups[len(p.Setups)-1]
	p.Setups = p.Setups[:len(p.Setups)-1]
	mustFail("a card is lost", CodeMissing)
	p.Setups = append(p.Setups, drop)
	p.Setups = append(p.Setups, drop)
	mustFail("a card stands twice", CodeTwice)
	p.Setups = p.Setups[:len(p.Setups)-1]

	last := len(p.Steps) - 1
	p.Steps[0], p.Steps[last-2] = p.Steps[last-2], p.Steps[0]
	mustFail("steps in another order", CodeOrder)
	p.Steps[0], p.Steps[last-2] = p.Steps[last-2], p.Steps[0]

	for i := range p.Operations {
		was := p.Operations[i].Machine
		if op := p.Operations[i]; op.Kind == plan.PlaneToThick && op.Mark == "D1" {
			p.Operations[i].Before[0].Nm, p.Operations[i].After[0].Nm = unit.MM(200), unit.MM(200)
			mustFail("a blank of 200 through a thicknesser that wants 305", CodeMachine)
			p.Operations[i].Before[0], p.Operations[i].After[0] = op.Before[0], op.After[0]
		}
		p.Operations[i].Machine = was
	}
	p.Parts[0].Length.Nm += unit.MM(1)
	mustFail("a part is longer in the list", CodeSize)
	p.Parts[0].Length.Nm -= unit.MM(1)
	for i := range p.Setups {
		for k := range p.Setups[i].Placements {
			for n := range p.Setups[i].Placements[k].Sums {
				total := &p.Setups[i].Placements[k].Sums[n].Total
				total.Nm += unit.MM(1)
				mustFail(p.Setups[i].ID+": a sum does not add up", CodeSum)
				total.Nm -= unit.MM(1)
			}
		}
	}
	if findings, _ := b.rehearse(p); !passed(findings) {
		t.Error("the plan was not put back")
	}
}

// TestUnsafe: a plan whose figures are right and whose order would hurt.
func TestUnsafe(t *testing.T) {
	code := func(b *bench, change func(c *plan.Setup)) diag.Code {
		p := b.plan(t)
		if findings, _ := b.rehearse(p); !passed(findings) {
			t.Fatalf("before: %s", say(findings))
		}
		for i := range p.Setups {
			if p.Setups[i].Machine == "router table" {
				change(&p.Setups[i])
			}
		}
		findings, _ := b.rehearse(p)
		return findings[0].Code
	}
	// Two grooves that overlap from 26 to 30: the farther one first, and the nearer
	// one has a wall only towards the fence.
	b := newBench()
	part := b.part("A1", 1, unit.MM(400), unit.MM(120), unit.MM(20))
	b.slot(part, piece.Groove, piece.FaceHigh, piece.AlongLength, unit.MM(20), unit.MM(20)+6350*um, unit.MM(3), 0)
	b.slot(part, piece.Groove, piece.FaceHigh, piece.AlongLength, unit.MM(25), unit.MM(25)+6350*um, unit.MM(3), 0)
	if got := code(b, func(c *plan.Setup) { slices.Reverse(c.Placements) }); got != CodeTrapped {
		t.Errorf("the farther groove first: %s", got)
	}
	// A rebate that leaves 2 of the edge: the groove must not bear on that edge.
	b = newBench()
	part = b.part("A1", 1, unit.MM(400), unit.MM(120), unit.MM(20))
	b.slot(part, piece.Rebate, piece.FaceHigh, piece.AlongLength, 0, unit.MM(10), unit.MM(18), 0)
	b.slot(part, piece.Groove, piece.FaceHigh, piece.AlongLength, unit.MM(50), unit.MM(50)+6350*um, unit.MM(18), 0)
	got := code(b, func(c *plan.Setup) {
		for i := range c.Placements {
			m := &c.Placements[i]
			if m.Cuts[0] != "part-A1[1].groove[2]" {
				continue
			}
			if m.Fence != piece.EdgeHigh {
				t.Fatalf("the groove bears on %s, where no wood is left", m.Fence)
			}
			m.Fence, m.Leads = m.Fence.Opposite(), m.Leads.Opposite()
			for k := range m.Settings { // the same place, measured from the other edge
				switch s := &m.Settings[k]; s.Word {
				case "fence to cutter edge":
					s.Figure.Nm = unit.MM(50)
				case "fence to cutter centre":
					s.Figure.Nm = unit.MM(50) + 3175*um
				}
			}
			m.Sums = nil
		}
	})
	if got != CodeHold {
		t.Errorf("the groove from the edge that is gone: %s", got)
	}
}
