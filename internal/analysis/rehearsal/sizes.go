package rehearsal

import (
	"cmp"
	"slices"

	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// state is the size of a workpiece on its way, along length, width, thickness.
type state [3]unit.Length

func stateOf(f [3]piece.Figure) state { return state{f[0].Nm, f[1].Nm, f[2].Nm} }

// sizes carries every workpiece from its sawn size to its part: each operation
// must find the size that it starts from, on a machine that may be fed with it,
// and the last must leave the finished size.
func (r *rehearsal) sizes() {
	ops := slices.Clone(r.Plan.Operations)
	slices.SortStableFunc(ops, func(a, b plan.Operation) int { return cmp.Compare(r.at[a.ID], r.at[b.ID]) })
	now := r.sawn()
	for _, op := range ops {
		switch op.Kind {
		case plan.FaceJoint, plan.EdgeJoint, plan.PlaneToThick, plan.LevelJoints, plan.RipToWidth:
			r.resize(op, now)
		case plan.GlueUp:
			now[op.Makes] = stateOf(op.After)
			r.glued(op, now)
		case plan.CutToLength:
			r.toLength(op, now)
		case plan.MakeCut:
			r.fed(op, stateOf(op.Before), op.Machine)
		}
	}
	r.finished(now)
}

// sawn returns the workpieces as they leave the cutting diagrams.
func (r *rehearsal) sawn() map[string]state {
	now := map[string]state{}
	for _, g := range r.Plan.Diagrams {
		for _, p := range g.Pieces {
			is := state{p.Rect.Length.Nm, p.Rect.Width.Nm, g.Thickness.Nm}
			if p.Turned {
				is[0], is[1] = is[1], is[0]
			}
			for _, id := range p.Workpieces() {
				now[id] = is
			}
		}
	}
	return now
}

func (r *rehearsal) resize(op plan.Operation, now map[string]state) {
	before, after := stateOf(op.Before), stateOf(op.After)
	if is, ok := now[op.Workpiece]; ok && is != before {
		r.wrongSize(op, is, before)
	}
	for axis := range after {
		if after[axis] > before[axis] {
			r.wrongSize(op, before, after)
		}
	}
	r.fed(op, before, op.Machine)
	now[op.Workpiece] = after
	switch op.Kind {
	case plan.RipToWidth:
		r.setTo(op, "blade to fence", after[1])
	case plan.PlaneToThick, plan.LevelJoints:
		if c, ok := r.card[op.Setup]; ok {
			if s, found := setting(c.Settings, "thickness"); found && !same(s.Figure.Nm, after[2]) {
				r.differs(op, "setting.thickness", s.Figure.Nm, after[2])
			}
		}
	}
}

// setTo checks that the card's placement for the row says the size.
func (r *rehearsal) setTo(op plan.Operation, word string, want unit.Length) {
	c, ok := r.card[op.Setup]
	if !ok {
		r.fail(CodeMissing, "rehearsal.no-card", "", message.Text("id", op.ID))
		return
	}
	for _, p := range c.Placements {
		if p.Mark != op.Mark {
			continue
		}
		if s, found := setting(p.Settings, word); found {
			if !same(s.Figure.Nm, want) {
				r.differs(op, "setting."+word, s.Figure.Nm, want)
			}
			return
		}
	}
	r.fail(CodeMissing, "rehearsal.no-setting", "", message.Text("id", op.ID), message.Word("word", "setting."+word))
}

// toLength cuts the parts of a row off their blanks.
func (r *rehearsal) toLength(op plan.Operation, now map[string]state) {
	before, after := stateOf(op.Before), stateOf(op.After)
	if after[0] > before[0] || after[1] != before[1] || after[2] != before[2] {
		r.wrongSize(op, before, after)
	}
	row := r.row[op.Mark]
	for _, m := range row.Members {
		blank, ok := r.blankOf[m]
		if !ok {
			continue
		}
		is, found := now[blank.ID]
		if !found {
			continue
		}
		want := before
		if blank.ID != op.Workpiece { // another blank of the row may be shorter
			want[0] = is[0]
		}
		if is != want || is[0] < after[0] {
			r.wrongSize(op, is, want)
			break
		}
	}
	r.fed(op, before, op.Machine)
	word := "stop to blade"
	if op.Machine == "hand" {
		word = "length"
	}
	r.setTo(op, word, after[0])
	now["part."+op.Mark] = after
}

// glued checks that a panel's strips are as wide together as the panel.
func (r *rehearsal) glued(op plan.Operation, now map[string]state) {
	panel := r.work[op.Makes]
	width := unit.Length(0)
	for _, id := range panel.From {
		s, ok := now[id]
		if !ok {
			s = state{r.work[id].Length.Nm, r.work[id].Width.Nm, op.Before[2].Nm}
		}
		if s[0] < op.After[0].Nm || s[2] != op.Before[2].Nm {
			r.wrongSize(op, s, stateOf(op.Before))
		}
		width += s[1]
	}
	if width < op.After[1].Nm {
		r.differs(op, "size.panel width", width, op.After[1].Nm)
	}
}

// finished checks that every part row ends at its finished size.
func (r *rehearsal) finished(now map[string]state) {
	for _, row := range r.Plan.Parts {
		is, ok := now["part."+row.Mark]
		if !ok { // never cut to length: it leaves the saw or the blank at its size
			blank, found := r.blankOf[first(row)]
			if !found {
				if len(r.Plan.Workpieces) > 0 {
					r.fail(CodeMissing, "rehearsal.part-not-made", first(row), message.Text("mark", row.Mark))
				}
				continue
			}
			if is, ok = now[blank.ID]; !ok {
				is = state{blank.Length.Nm, blank.Width.Nm, blank.Thickness.Nm}
			}
		}
		if want := (state{row.Length.Nm, row.Width.Nm, row.Thickness.Nm}); is != want {
			r.fail(CodeSize, "rehearsal.part-size", first(row), message.Text("mark", row.Mark),
				message.Length("length", is[0]), message.Length("width", is[1]), message.Length("thickness", is[2]))
		}
	}
}

// fed checks the work against the limits of the machine. At a saw, a router
// table, a drill press or a band saw the longer side of the work counts; at
// jointer and thicknesser the length along the grain, which is the feed.
func (r *rehearsal) fed(op plan.Operation, s state, name string) {
	m, ok := r.machine[name]
	if !ok {
		if name != "hand" && name != "" {
			r.fail(CodeMachine, "rehearsal.no-machine", "", message.Text("id", op.ID), message.Text("machine", name))
		}
		return
	}
	size := tool.Size{Length: max(s[0], s[1])}
	switch m.Kind {
	case tool.Jointer:
		size = tool.Size{Length: s[0], Thickness: s[2]}
		if op.Kind == plan.FaceJoint {
			size.Width = s[1]
		}
		if op.Kind == plan.EdgeJoint {
			size.Thickness = 0
		}
	case tool.ThicknessPlaner:
		size = tool.Size{Length: s[0], Width: s[1], Thickness: op.After[2].Nm}
	}
	for _, e := range m.Check(size) {
		if op.Kind == plan.CutToLength && !e.Short {
			continue // a long blank hangs over
		}
		f := plan.Finding{Check: Name, Status: plan.Fail, Severity: diag.Error, Code: CodeMachine, Text: e.Message()}
		f.Marks = []string{op.Mark}
		f.Near = []string{op.Setup}
		r.findings = append(r.findings, f)
	}
}

func (r *rehearsal) wrongSize(op plan.Operation, is, want state) {
	for axis := range is {
		if is[axis] != want[axis] {
			r.differs(op, [3]string{"size.length", "size.width", "size.thickness"}[axis], is[axis], want[axis])
			return
		}
	}
}

func (r *rehearsal) differs(op plan.Operation, what string, is, want unit.Length) {
	r.fail(CodeSize, "rehearsal.size", "", message.Text("id", op.ID), message.Word("what", what), message.Length("is", is), message.Length("want", want))
}
