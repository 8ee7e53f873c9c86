package operations

import (
	"slices"

	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// rough adds the saw cuts of the cutting diagrams, in their order, and notes for
// each workpiece the last cut that frees it.
func (d *deriver) rough() {
	for _, g := range d.Diagrams {
		var needs []string
		for _, c := range g.Cuts {
			kind := plan.RoughCrosscut
			switch {
			case g.Sheet:
				kind = plan.SheetCut
			case c.Kind == "rip":
				kind = plan.RoughRip
			}
			needs = []string{d.add(plan.Operation{
				ID: opID(g.ID, "saw cut", numbered("", c.N)[1:]), Kind: kind, Workpiece: g.ID,
				Machine: d.roughSaw(kind, c.In), Needs: needs,
				Before: [3]piece.Figure{c.In.Length, c.In.Width, g.Thickness},
				After:  [3]piece.Figure{c.In.Length, c.In.Width, g.Thickness},
			})}
		}
		for _, p := range g.Pieces {
			for _, w := range p.Workpieces() {
				d.last[w] = append(d.last[w], needs...)
			}
		}
	}
}

// roughSaw chooses who cuts up the stock: the table saw for sheets that it
// takes, the band saw or table saw for rips, the mitre saw or a hand saw for
// long boards.
func (d *deriver) roughSaw(kind plan.OperationKind, in plan.Rect) string {
	order := []tool.Kind{tool.TableSaw}
	switch kind {
	case plan.RoughRip:
		order = []tool.Kind{tool.BandSaw, tool.TableSaw}
	case plan.RoughCrosscut:
		order = []tool.Kind{tool.MitreSaw}
	}
	for _, k := range order {
		for _, m := range d.Shop.Of(k) {
			if len(m.Check(tool.Size{Length: max(in.Length.Nm, in.Width.Nm)})) == 0 {
				return m.Name
			}
		}
	}
	return Hand
}

// prepare adds what brings a row's blanks to thickness and width.
func (d *deriver) prepare(row plan.PartRow) {
	done := map[string]bool{}
	for _, member := range row.Members {
		blank, ok := d.blankOf(member)
		if !ok || done[blank.ID] || blank.Mark != row.Mark {
			continue
		}
		done[blank.ID] = true
		if row.Sheet {
			d.last[partID(row)] = append(d.last[partID(row)], d.last[blank.ID]...)
			continue
		}
		if blank.Kind == plan.PanelPiece {
			d.glueUp(row, blank)
		} else {
			d.plane(row, blank, d.thicknessOf(blank), blank.Thickness)
		}
		d.toWidth(row, blank)
		for _, p := range blank.Parts { // a gang serves several rows
			key := "part." + d.rowOf[p]
			d.last[key] = append(d.last[key], d.last[blank.ID]...)
		}
	}
}

// thicknessOf is the thickness of the board that a workpiece was cut from: as
// the diagram says, else its own.
func (d *deriver) thicknessOf(w plan.Workpiece) piece.Figure {
	if d.thick == nil {
		d.thick = map[string]piece.Figure{}
		for _, g := range d.Diagrams {
			for _, p := range g.Pieces {
				for _, w := range p.Workpieces() {
					d.thick[w] = g.Thickness
				}
			}
		}
	}
	if t, ok := d.thick[w.ID]; ok {
		return t
	}
	return w.Thickness
}

// plane joints a face and an edge and planes to a thickness.
func (d *deriver) plane(row plan.PartRow, w plan.Workpiece, from, to piece.Figure) {
	size := sized(w)
	size[2] = from
	thick := size
	thick[2] = to
	if from.Nm > to.Nm {
		d.after(d.op(row, w, plan.FaceJoint, d.byMachine(tool.Jointer, size), size, size), w.ID)
		d.after(d.op(row, w, plan.EdgeJoint, d.edgeJointer(size), size, size), w.ID)
		d.after(d.op(row, w, plan.PlaneToThick, d.byMachine(tool.ThicknessPlaner, thick), size, thick), w.ID)
		return
	}
	d.after(d.op(row, w, plan.EdgeJoint, d.edgeJointer(size), size, size), w.ID)
}

func (d *deriver) op(row plan.PartRow, w plan.Workpiece, kind plan.OperationKind, machine string, before, after [3]piece.Figure) plan.Operation {
	return plan.Operation{
		ID: opID(w.ID, string(kind)), Kind: kind, Workpiece: w.ID, Mark: row.Mark, Members: w.Parts,
		Machine: machine, Before: before, After: after,
	}
}

// byMachine returns the shop's machine of the kind that takes the work, or the
// hand.
func (d *deriver) byMachine(kind tool.Kind, size [3]piece.Figure) string {
	for _, m := range d.Shop.Of(kind) {
		if len(m.Check(tool.Size{Length: size[0].Nm, Width: size[1].Nm, Thickness: size[2].Nm})) == 0 {
			return m.Name
		}
	}
	return Hand
}

// edgeJointer takes the jointer where the work is long enough; on its edge its
// width is not what the knives meet.
func (d *deriver) edgeJointer(size [3]piece.Figure) string {
	for _, m := range d.Shop.Of(tool.Jointer) {
		if len(m.Check(tool.Size{Length: size[0].Nm})) == 0 {
			return m.Name
		}
	}
	return Hand
}

// Extra thickness of strips before they are glued up, and of what is planed before the
// last joints of a panel that is wider than the thicknesser are glued. Common practice,
// no source: 1.5 mm and 0.5 mm in all, taken from both faces alike.
const (
	glueExtra  = 1500 * unit.Micrometre
	levelExtra = 500 * unit.Micrometre
)

// glueUp planes the strips a little over, glues them and planes the panel. A panel that
// is wider than the thicknesser is planed in narrow ones; what its last joints stand
// proud is levelled by hand.
func (d *deriver) glueUp(row plan.PartRow, panel plan.Workpiece) {
	if !panel.InWidths {
		d.narrow(row, panel, panel.Thickness)
		return
	}
	strips := plan.StripsOf(d.Workpieces, panel)
	proud := d.over(panel, "level", d.spare(strips, panel.Thickness), levelExtra)
	for _, id := range panel.From {
		if w, ok := d.workpiece(id); ok && w.Kind == plan.NarrowPanel {
			d.narrow(row, w, proud)
		} else if ok {
			d.plane(row, w, d.thicknessOf(w), proud)
		}
	}
	raw, size := d.glued(row, panel, proud)
	d.after(d.op(row, panel, plan.LevelJoints, Hand, raw, size), panel.ID)
}

// narrow glues up a panel that the thicknesser takes and planes it to a thickness.
func (d *deriver) narrow(row plan.PartRow, panel plan.Workpiece, to piece.Figure) {
	strips := plan.StripsOf(d.Workpieces, panel)
	panel.Thickness = to
	over := d.over(panel, "over", d.spare(strips, to), glueExtra)
	for _, strip := range strips {
		d.plane(row, strip, d.thicknessOf(strip), over)
	}
	raw, size := d.glued(row, panel, over)
	if raw[2].Nm == size[2].Nm { // of boards used as bought: only the joints are levelled
		d.after(d.op(row, panel, plan.LevelJoints, Hand, raw, size), panel.ID)
		return
	}
	d.after(d.op(row, panel, plan.PlaneToThick, d.byMachine(tool.ThicknessPlaner, size), raw, size), panel.ID)
}

// glued glues a panel up from what it is made from, as thick as that is. It returns the
// panel's size then, and when it is planed or levelled.
func (d *deriver) glued(row plan.PartRow, panel plan.Workpiece, thick piece.Figure) (raw, size [3]piece.Figure) {
	size = sized(panel)
	raw = size
	raw[2] = thick
	op := d.op(row, panel, plan.GlueUp, Hand, raw, raw)
	op.Makes = panel.ID
	d.after(op, append(slices.Clone(panel.From), panel.ID)...)
	return raw, size
}

// spare is what the thinnest of the boards that strips are cut from has over a thickness.
func (d *deriver) spare(strips []plan.Workpiece, to piece.Figure) unit.Length {
	spare := unit.Length(0)
	for i, s := range strips {
		if over := d.thicknessOf(s).Nm - to.Nm; i == 0 || over < spare {
			spare = over
		}
	}
	return spare
}

// over is a panel's thickness and what is left on until its joints are glued: at most
// half of what the boards have to spare.
func (d *deriver) over(panel plan.Workpiece, word string, spare, most unit.Length) piece.Figure {
	extra := min(most, spare/2).Round(unit.Millimetre/10, unit.Down)
	if extra <= 0 {
		return panel.Thickness
	}
	return d.Ledger.Sum(panel.ID+"."+word, panel.Thickness, d.Ledger.Leaf("rule.glue-extra", extra, ledger.HouseRule, "common practice, no source"))
}

func (d *deriver) workpiece(id string) (plan.Workpiece, bool) {
	for _, w := range d.Workpieces {
		if w.ID == id {
			return w, true
		}
	}
	return plan.Workpiece{}, false
}

// toWidth rips to the finished width, jointed edge against the fence.
func (d *deriver) toWidth(row plan.PartRow, w plan.Workpiece) {
	before := sized(w)
	after := before
	after[1] = row.Width
	if before[1].Nm == after[1].Nm {
		return
	}
	d.after(d.op(row, w, plan.RipToWidth, d.saw(before), before, after), w.ID)
}

// saw returns the table saw, else the band saw, that may be fed with the work.
func (d *deriver) saw(size [3]piece.Figure) string {
	for _, kind := range []tool.Kind{tool.TableSaw, tool.BandSaw} {
		for _, m := range d.Shop.Of(kind) {
			if len(m.Check(tool.Size{Length: max(size[0].Nm, size[1].Nm), Thickness: size[2].Nm})) == 0 {
				return m.Name
			}
		}
	}
	return Hand
}

// toLength cuts the row's parts to length from their blanks: by hand where what
// is left in the hand at the last cut is shorter than the saw allows.
func (d *deriver) toLength(row plan.PartRow, key string) {
	blank, ok := d.blankOf(row.Members[0])
	if !ok || blank.Length.Nm <= row.Length.Nm {
		return
	}
	before := [3]piece.Figure{blank.Length, row.Width, row.Thickness}
	after := [3]piece.Figure{row.Length, row.Width, row.Thickness}
	machine := Hand
	for _, kind := range []tool.Kind{tool.TableSaw, tool.MitreSaw} {
		for _, m := range d.Shop.Of(kind) {
			if machine == Hand && len(m.Check(tool.Size{Length: max(row.Length.Nm, row.Width.Nm), Thickness: row.Thickness.Nm})) == 0 {
				machine = m.Name
			}
		}
	}
	op := d.op(row, blank, plan.CutToLength, machine, before, after)
	op.ID, op.Makes, op.Members = opID(row.Mark, string(plan.CutToLength)), partID(row), row.Members
	d.after(op, key)
}
