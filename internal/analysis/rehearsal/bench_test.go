package rehearsal

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis/blanks"
	"scantling/internal/analysis/operations"
	"scantling/internal/analysis/sequence"
	"scantling/internal/analysis/setups"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

const um = unit.Micrometre

// bench plans a piece that is made of cut boards, with the planners, so that
// their plan can be carried out.
type bench struct {
	l    *ledger.Ledger
	p    *piece.Piece
	rows []plan.PartRow
	cuts []piece.Cut
	shop operations.Workshop
}

func newBench() *bench {
	limits := func(least int64) tool.Limits {
		return tool.Limits{Length: tool.Stated("least_length", unit.MM(least))}
	}
	b := &bench{l: ledger.New(nil), p: &piece.Piece{Name: "test"}}
	b.shop = operations.Workshop{
		Machines: []tool.Machine{
			{Name: "table saw", Kind: tool.TableSaw, Least: limits(150), Kerf: tool.Stated("kerf", unit.MM(3)), Accuracy: tool.Stated("accuracy", 200*um)},
			{Name: "router table", Kind: tool.RouterTable, Least: limits(305), Accuracy: tool.Stated("accuracy", 100*um)},
			{Name: "jointer", Kind: tool.Jointer, Least: limits(300), Greatest: tool.Limits{Width: tool.Stated("most", unit.MM(150))}},
			{Name: "thicknesser", Kind: tool.ThicknessPlaner, Least: limits(305), Greatest: tool.Limits{Width: tool.Stated("most", unit.MM(300))}},
			{Name: "band saw", Kind: tool.BandSaw, Least: limits(150)},
			{Name: "drill press", Kind: tool.DrillPress},
		},
		Cutters: []tool.Cutter{
			{Name: "straight 3.2", Shape: tool.Straight, Diameter: 3200 * um, CuttingLength: unit.MM(10)},
			{Name: "straight 6.35", Shape: tool.Straight, Diameter: 6350 * um, CuttingLength: unit.MM(19)},
			{Name: "straight 12.7", Shape: tool.Straight, Diameter: 12700 * um, CuttingLength: unit.MM(25)},
			{Name: "round-nose 6.35", Shape: tool.RoundNose, Diameter: 6350 * um},
			{Name: "round-nose 12.7", Shape: tool.RoundNose, Diameter: 12700 * um},
			{Name: "rounding-over 1", Shape: tool.RoundOver, Radius: unit.MM(1)},
			{Name: "drill 5", Shape: tool.Drill, Diameter: unit.MM(5)},
		},
		Reach: map[string]unit.Length{"router table": unit.MM(320), "drill press": unit.MM(160)},
	}
	return b
}

func (b *bench) fig(l unit.Length) piece.Figure { return b.l.Leaf("given", l, ledger.Document, "") }

// part adds a row of equal parts.
func (b *bench) part(mark string, n int, length, width, thickness unit.Length) address.Address {
	row := plan.PartRow{
		Mark: mark, Name: mark, Species: "cherry", Stage: "1", Material: "case", Order: len(b.rows) + 1,
		Length: b.fig(length), Width: b.fig(width), Thickness: b.fig(thickness),
	}
	for i := range n {
		a := address.Address("").Nth("part-"+mark, i+1)
		row.Members = append(row.Members, a)
		b.p.Parts = append(b.p.Parts, piece.Part{
			Address: a, Name: mark, Group: "box", Material: "case",
			Frame:  piece.Frame{Length: piece.ToRight, Width: piece.ToBack, Thickness: piece.ToUp},
			Length: row.Length, Width: row.Width, Thickness: row.Thickness,
		})
	}
	b.rows = append(b.rows, row)
	return row.Members[0]
}

func (b *bench) row(a address.Address) plan.PartRow {
	i := slices.IndexFunc(b.rows, func(r plan.PartRow) bool { return r.Members[0] == a })
	return b.rows[i]
}

func (b *bench) add(on address.Address, c piece.Cut) *piece.Cut {
	c.Part, c.Address = on, on.Nth(string(c.Kind), len(b.cuts)+1)
	b.cuts = append(b.cuts, c)
	return &b.cuts[len(b.cuts)-1]
}

// slot adds a slot that runs through.
func (b *bench) slot(on address.Address, kind piece.CutKind, open piece.Side, run piece.Local, near, far, depth, corner unit.Length) *piece.Cut {
	r := b.row(on)
	size := state{r.Length.Nm, r.Width.Nm, r.Thickness.Nm}
	return b.add(on, piece.Cut{Kind: kind, Slot: &piece.Slot{
		Open: open, Run: run, From: b.fig(0), To: b.fig(size[run]), StartOpen: true, EndOpen: true,
		Near: b.fig(near), Far: b.fig(far), Depth: b.fig(depth), Corner: b.fig(corner),
	}})
}

// plan runs the planners.
func (b *bench) plan(t testing.TB) *plan.Plan {
	t.Helper()
	b.p.Groups = []piece.Group{{Address: "box", Name: "box"}}
	for i := 1; i < len(b.p.Parts); i++ {
		b.p.Joints = append(b.p.Joints, piece.Joint{
			Address: address.Address("").Nth("joint", i), Kind: piece.ButtJoint, A: b.p.Parts[i].Address, B: b.p.Parts[0].Address, Glue: "pva",
		})
	}
	return b.planned(t)
}

// planned runs the planners on the piece as it stands.
func (b *bench) planned(t testing.TB) *plan.Plan {
	t.Helper()
	workpieces, faults := blanks.Derive(blanks.Input{
		Piece: b.p, Rows: b.rows, Ledger: b.l, Allowances: blanks.Usual(b.l),
		Stock:  []blanks.Stock{{ID: "cherry 27", Species: "cherry", Length: unit.MM(2400), Width: unit.MM(165), Thickness: unit.MM(27), Have: 9}},
		Limits: blanks.Limits{LeastPlane: unit.MM(305), LeastRout: unit.MM(305), Joint: unit.MM(150), Plane: unit.MM(300)},
	})
	complain(t, faults)
	diagrams := b.diagrams(workpieces)
	stages := []plan.Stage{{ID: "1"}}
	for _, r := range b.rows {
		stages[0].Marks = append(stages[0].Marks, r.Mark)
	}
	in := operations.Input{Piece: b.p, Cuts: b.cuts, Rows: b.rows, Workpieces: workpieces, Diagrams: diagrams, Stages: stages, Shop: b.shop, Ledger: b.l}
	derived, _ := operations.Derive(in)
	cards, _ := setups.Decide(setups.Input{Piece: b.p, Rows: b.rows, Workpieces: workpieces, Derived: derived, Shop: b.shop, Ledger: b.l})
	steps, faults := sequence.Decide(sequence.Input{
		Piece: b.p, Cuts: b.cuts, Rows: b.rows, Workpieces: workpieces, Diagrams: diagrams, Stages: stages, Operations: cards.Operations, Setups: cards.Setups,
	})
	complain(t, faults)
	return &plan.Plan{
		Schema: plan.Schema, Piece: b.p, Parts: b.rows, Workpieces: workpieces, Diagrams: diagrams, Stages: stages,
		Operations: cards.Operations, Setups: cards.Setups, Steps: steps, Ledger: b.l,
	}
}

// diagrams saws each blank and strip out of a board of its own.
func (b *bench) diagrams(workpieces []plan.Workpiece) []plan.Diagram {
	var out []plan.Diagram
	zero := b.fig(0)
	for _, w := range workpieces {
		if w.Kind != plan.BlankPiece && w.Kind != plan.StripPiece {
			continue
		}
		g := plan.Diagram{
			ID: fmt.Sprintf("board %d", len(out)+1), Stock: "cherry 27", Label: "cherry 27", Count: 1,
			Length: b.fig(unit.MM(2400)), Width: b.fig(max(unit.MM(165), w.Width.Nm)), Thickness: b.fig(unit.MM(27)), Kerf: b.fig(unit.MM(3)),
		}
		whole := plan.Rect{Along: zero, Across: zero, Length: g.Length, Width: g.Width}
		strip := whole
		strip.Length = w.Length
		g.Cuts = []plan.SawCut{{N: 1, Kind: "crosscut", In: whole, At: w.Length}, {N: 2, Kind: "rip", In: strip, At: w.Width}}
		strip.Width = w.Width
		g.Pieces = []plan.Placed{{Workpiece: w.ID, Mark: w.Mark, Rect: strip}}
		out = append(out, g)
	}
	return out
}

func complain(t testing.TB, list diag.List) {
	t.Helper()
	for _, d := range list {
		t.Errorf("%s: %v", d.Code, d.Text)
	}
}

func (b *bench) rehearse(p *plan.Plan) ([]plan.Finding, Report) {
	return Check(Input{Plan: p, Cuts: b.cuts, Machines: b.shop.Machines, Cutters: b.shop.Cutters})
}

func passed(findings []plan.Finding) bool {
	return len(findings) == 1 && findings[0].Status == plan.Pass
}

func say(findings []plan.Finding) string {
	out := ""
	for i, f := range findings {
		if i == 6 {
			return out + fmt.Sprintf("\n ... %d in all", len(findings))
		}
		out += fmt.Sprintf("\n %s %s %v", f.Code, f.Address, f.Text)
	}
	return out
}

// chest is a piece with every kind of cut.
func chest() *bench {
	b := newBench()
	side := b.part("A1", 2, unit.MM(410), unit.MM(260), unit.MM(14))
	b.slot(side, piece.Rebate, piece.FaceHigh, piece.AlongWidth, 0, unit.MM(14), unit.MM(9), 0)
	b.slot(side, piece.Rebate, piece.FaceHigh, piece.AlongWidth, unit.MM(396), unit.MM(410), unit.MM(9), 0)
	b.slot(side, piece.Rebate, piece.FaceHigh, piece.AlongLength, 254400*um, unit.MM(260), unit.MM(9), 0)
	h := b.slot(side, piece.Housing, piece.FaceHigh, piece.AlongWidth, unit.MM(130), unit.MM(144), 4700*um, 0)
	h.Slot.EndOpen, h.Slot.StartOpen, h.Slot.From = true, false, b.fig(unit.MM(8))
	h = b.slot(side, piece.Housing, piece.FaceHigh, piece.AlongWidth, unit.MM(266), unit.MM(280), 4700*um, 0)
	h.Slot.EndOpen, h.Slot.StartOpen, h.Slot.From = true, false, b.fig(unit.MM(8))

	divider := b.part("A2", 2, unit.MM(206), unit.MM(250), unit.MM(14))
	n := b.slot(divider, piece.Notch, piece.EdgeLow, piece.AlongThickness, 0, 4700*um, unit.MM(8), 0)
	n.Slot.Near, n.Slot.Far = b.fig(0), b.fig(4700*um)

	front := b.part("B1", 1, unit.MM(192), unit.MM(52), unit.MM(14))
	b.slot(front, piece.Rebate, piece.FaceHigh, piece.AlongWidth, 0, unit.MM(10), unit.MM(7), 0)
	b.slot(front, piece.Rebate, piece.FaceHigh, piece.AlongWidth, unit.MM(182), unit.MM(192), unit.MM(7), 0)
	g := b.slot(front, piece.Groove, piece.FaceHigh, piece.AlongLength, unit.MM(8), unit.MM(12), unit.MM(5), 0)
	g.After = []address.Address{b.cuts[len(b.cuts)-2].Address}
	b.add(front, piece.Cut{Kind: piece.Scoop, Dip: &piece.Dip{Open: piece.EdgeHigh, Centre: b.fig(unit.MM(96)), Chord: b.fig(unit.MM(64)), Depth: b.fig(unit.MM(16))}})
	b.add(front, piece.Cut{Kind: piece.Eased, Ease: &piece.Ease{Sides: [2]piece.Side{piece.EdgeHigh, piece.FaceLow}, Radius: b.fig(unit.MM(1))}})

	long := b.part("B2", 2, unit.MM(377), unit.MM(52), unit.MM(10))
	b.slot(long, piece.Groove, piece.FaceHigh, piece.AlongLength, unit.MM(8), unit.MM(12), unit.MM(5), 0)
	b.slot(long, piece.Rebate, piece.FaceHigh, piece.AlongWidth, unit.MM(367), unit.MM(377), unit.MM(5), 0)
	for i := range 2 {
		b.add(long, piece.Cut{Kind: piece.Hole, Bore: &piece.Bore{Open: piece.FaceLow, At: [2]piece.Figure{b.fig(unit.MM(20 + 40*int64(i))), b.fig(unit.MM(26))}, Diameter: b.fig(unit.MM(5)), Depth: b.fig(unit.MM(6))}})
	}
	b.add(long, piece.Cut{Kind: piece.Eased, Ease: &piece.Ease{Sides: [2]piece.Side{piece.EdgeHigh, piece.FaceLow}, Radius: b.fig(unit.MM(1))}})

	tray := b.part("C1", 1, unit.MM(283), unit.MM(120), unit.MM(15))
	b.channels(tray, 8, unit.MM(4), unit.MM(14), 2*unit.Millimetre)
	b.slot(tray, piece.Trough, piece.FaceHigh, piece.AlongWidth, 0, unit.MM(13), 6500*um, 0)
	b.slot(tray, piece.Trough, piece.FaceHigh, piece.AlongWidth, unit.MM(120), unit.MM(160), unit.MM(7), 6350*um)

	b.part("D1", 4, unit.MM(30), unit.MM(14), unit.MM(5))

	wide := b.part("E1", 1, unit.MM(320), unit.MM(278), unit.MM(20))
	for i := range 5 {
		c := b.slot(wide, piece.Channel, piece.FaceHigh, piece.AlongLength, unit.MM(30+50*int64(i)), unit.MM(30+50*int64(i))+12700*um, unit.MM(8), 6350*um)
		c.Slot.StartOpen, c.Slot.EndOpen = false, false
		c.Slot.From, c.Slot.To = b.fig(unit.MM(15)), b.fig(unit.MM(305))
	}
	finger := b.part("F1", 2, unit.MM(180), unit.MM(60), unit.MM(12))
	for i := range 3 {
		b.slot(finger, piece.Socket, piece.EndHigh, piece.AlongThickness, unit.MM(10+20*int64(i)), unit.MM(20+20*int64(i)), unit.MM(12), 0)
	}
	return b
}

// channels adds a row of channels of the 6.35 round-nose at a depth.
func (b *bench) channels(on address.Address, n int, first, pitch, depth unit.Length) {
	for i := range n {
		near := first + unit.Length(i)*pitch
		b.slot(on, piece.Channel, piece.FaceHigh, piece.AlongLength, near, near+6350*um, depth, 3175*um)
	}
}

func rng(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 3)) }
