package sequence

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis/turns"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// measureStep adds the step that takes a measure: every reading with what is
// planned, and which marks wait for it.
func (s *sequencer) measureStep(a address.Address) {
	for _, m := range s.Measures {
		if m.Address != a {
			continue
		}
		st := step{Step: plan.Step{
			ID: measureID(a), Chapter: chapter("measure"), Measures: []address.Address{a},
			Text:  message.New("steps.measure", message.Text("label", m.Label), message.Count("readings", len(m.Readings))),
			Hands: s.Estimates.Reading * len(m.Readings), Marks: unique(m.Marks),
		}}
		between := s.between(a)
		for _, r := range m.Readings {
			st.about = append(st.about, r.Of)
			switch {
			case slices.Contains(between, r.Of) && (r.What == "length" || r.What == "width"):
				st.More = append(st.More, message.New("steps.reading-between", message.Address("of", r.Of), message.Word("what", "reading."+r.What), message.Length("planned", r.Planned.Nm)))
				continue
			case r.What == "diagonals":
				st.More = append(st.More, message.New("steps.reading-even", message.Address("of", r.Of), message.Word("what", "reading."+r.What)))
				continue
			case r.Planned.Nm == 0:
				st.More = append(st.More, message.New("steps.reading-open", message.Address("of", r.Of), message.Word("what", "reading."+r.What)))
				continue
			}
			st.More = append(st.More, message.New("steps.reading", message.Address("of", r.Of), message.Word("what", "reading."+r.What), message.Length("planned", r.Planned.Nm)))
		}
		if len(between) > 0 {
			st.More = append(st.More, message.New("steps.read-between"))
		}
		st.More = append(st.More, message.New("steps.record-readings"))
		if len(m.Marks) > 0 {
			st.More = append(st.More, message.New("steps.not-before", list("marks", unique(m.Marks))))
		}
		if n := len(s.steps); n > 0 {
			st.after = append(st.after, s.measured(a)...)
		}
		if len(between) > 0 {
			st.after = s.lastStep()
		}
		s.add(st)
		return
	}
}

func measureID(a address.Address) string { return "measure: " + string(a) }

// measured lists the steps that make what a measure reads: the assembly of its
// stage, or the last step on each part.
func (s *sequencer) measured(a address.Address) []string {
	var out []string
	for _, m := range s.Piece.Measures {
		if m.Address != a {
			continue
		}
		for _, st := range s.steps {
			for _, of := range append(slices.Clone(m.Of), m.Stage) {
				if of != "" && st.concerns(of) && !slices.Contains(out, st.ID) {
					out = append(out, st.ID)
				}
			}
		}
	}
	if len(out) > 1 {
		out = out[len(out)-1:]
	}
	return out
}

// concerns reports whether the step is about the thing, all of a repeat where no
// index is given.
func (st step) concerns(a address.Address) bool {
	return slices.ContainsFunc(st.about, func(b address.Address) bool { return a.Covers(b) })
}

// assemble adds dry fit and glue-up of one group, or of all of a repeat.
func (s *sequencer) assemble(events []turns.Event) {
	var groups []address.Address
	var members []address.Address
	var ops []string
	for _, e := range events {
		groups = append(groups, e.Group)
		for _, op := range s.on[string(e.Group)] {
			if op.Kind == plan.Assemble {
				members = append(members, op.Members...)
			}
			if op.Kind == plan.Assemble || op.Kind == plan.MakeCut && op.Setup == "" {
				ops = append(ops, op.ID)
			}
		}
	}
	marks := s.marks(members)
	name := s.group[groups[0]].Name
	ch := chapter("assemble", message.Text("group", name))
	joints := s.joints(members)
	dry := step{Step: plan.Step{
		ID: "dry-fit: " + string(groups[0]), Chapter: ch, Marks: marks, Hands: s.Estimates.Joint * len(joints),
		Text: message.New("steps.dry-fit", message.Text("group", name), message.Count("groups", len(groups)), list("marks", marks)),
		More: []message.Message{message.New("steps.dry-fit-checks"), message.New("steps.sand-inside")},
	}, about: members}
	for _, m := range marks {
		dry.after = append(dry.after, s.lastOn(m)...)
	}
	s.add(dry)
	turns := s.glueTurns(groups, name, ch, members, joints)
	last := dry.ID
	for _, st := range turns[:len(turns)-1] {
		st.after = []string{last}
		s.add(st)
		last = st.ID
	}
	glue := turns[len(turns)-1]
	if len(turns) == 1 {
		glue.Marks = marks
	}
	glue.Operations, glue.about, glue.after = ops, append(slices.Clone(groups), members...), []string{last}
	s.add(glue)
	for _, c := range s.Setups { // what is cut on the group as it stands
		if a, ok := s.onGroup(c); ok && slices.Contains(groups, a) && !s.placed[c.ID] {
			s.cardStep(c, glue.ID)
		}
	}
	s.fits(groups)
}

// onGroup returns the group that a card works on, if it is not on parts alone.
func (s *sequencer) onGroup(c plan.Setup) (address.Address, bool) {
	for _, id := range c.Operations {
		a := address.Address(s.operation[id].Workpiece)
		if _, ok := s.group[a]; ok {
			return a, true
		}
	}
	return "", false
}

// lastOn lists the step that last worked on a row.
func (s *sequencer) lastOn(mark string) []string {
	for i := len(s.steps) - 1; i >= 0; i-- {
		if slices.Contains(s.steps[i].Marks, mark) && len(s.steps[i].Setups) > 0 {
			return []string{s.steps[i].ID}
		}
	}
	return nil
}

func (s *sequencer) glueStep(groups []address.Address, name string, ch message.Message, joints []piece.Joint) step {
	st := step{Step: plan.Step{
		ID: "assemble: " + string(groups[0]), Chapter: ch, Hands: s.Estimates.Clean + s.Estimates.Joint*len(joints),
	}}
	var pins, free []string
	for _, j := range joints {
		if j.Glue == "" {
			free = append(free, s.rowOf[j.A])
		}
		if j.Fasteners != nil {
			pins = append(pins, j.Fasteners.Kind)
		}
	}
	st.Text = message.New("steps.assemble", message.Text("group", name), message.Count("groups", len(groups)))
	st.More = append(s.goInto(joints), s.placing(joints)...)
	if glue := s.gluingOf(joints); len(glue.names) > 0 {
		st.Wait = glue.cure
		st.Text = message.New("steps.glue", message.Text("group", name), message.Count("groups", len(groups)), glue.name())
		st.More = append(append(st.More, glue.clamps()...), message.New("steps.check-square"))
		st.Cautions = append(st.Cautions, glue.cautions()...)
	}
	if len(free) > 0 {
		st.More = append(st.More, message.New("steps.not-glued", list("marks", unique(free))))
	}
	for _, p := range unique(pins) {
		n, pilot := countPins(joints, p)
		key := "steps.fasten"
		if pilot {
			key = "steps.fasten-in-holes"
		}
		st.More = append(st.More, message.New(key, message.Text("fastener", p), message.Count("count", n)))
	}
	return st
}

// goInto says which marks go into which, joint by joint.
func (s *sequencer) goInto(joints []piece.Joint) []message.Message {
	type meeting struct{ kind, a, b string }
	var order []meeting
	seen := map[meeting]bool{}
	for _, j := range joints {
		m := meeting{string(j.Kind), s.rowOf[j.A], s.rowOf[j.B]}
		if !seen[m] {
			seen[m] = true
			order = append(order, m)
		}
	}
	var out []message.Message
	for _, m := range order {
		out = append(out, message.New("steps.joint", message.Text("a", m.a), message.Text("b", m.b), message.Word("kind", "joint."+m.kind)))
	}
	return out
}

// countPins counts fasteners of a kind and says whether holes are drilled for them.
func countPins(joints []piece.Joint, kind string) (int, bool) {
	n, pilot := 0, false
	for _, j := range joints {
		if j.Fasteners != nil && j.Fasteners.Kind == kind {
			n += j.Fasteners.Count
			pilot = pilot || j.Fasteners.Pilot.Nm > 0
		}
	}
	return n, pilot
}

// joints returns the joints between members.
func (s *sequencer) joints(members []address.Address) []piece.Joint {
	in := map[address.Address]bool{}
	for _, m := range members {
		in[m] = true
	}
	var out []piece.Joint
	for _, j := range s.Piece.Joints {
		if in[j.A] && in[j.B] {
			out = append(out, j)
		}
	}
	return out
}

func (s *sequencer) marks(members []address.Address) []string {
	var out []string
	for _, m := range members {
		out = append(out, s.rowOf[m])
	}
	return unique(out)
}

// late adds parts to a group that already stands.
func (s *sequencer) late(events []turns.Event) {
	var members []address.Address
	var joints []piece.Joint
	for _, e := range events {
		members = append(members, e.Late)
		for _, j := range s.Piece.Joints {
			if j.A == e.Late {
				joints = append(joints, j)
			}
		}
	}
	mark := s.rowOf[members[0]]
	st := step{Step: plan.Step{
		ID: "fit: " + mark + " " + string(members[0]), Chapter: chapter("fit"), Marks: []string{mark}, Hands: s.Estimates.Fitting * len(members),
		Text: message.New("steps.fit-late", message.Text("part", s.row[mark].Name), message.Text("mark", mark), message.Count("pieces", len(members))),
		More: []message.Message{s.latePlace(members), message.New("steps.fit-late-check")},
	}, about: members}
	glue := s.gluingOf(joints)
	st.Wait, st.More = glue.cure, append(st.More, glue.clamps()...)
	for _, op := range s.Operations {
		if op.Kind == plan.FitPart && op.Mark == mark && s.ofOperation[op.ID] == "" {
			st.Operations = append(st.Operations, op.ID)
		}
	}
	s.add(st)
}

// latePlace says where late parts stand in their group as it is drawn: how far
// behind its front, and from its left, outside to outside.
func (s *sequencer) latePlace(members []address.Address) message.Message {
	first := s.part[members[0]]
	var low [3]unit.Length
	found := false
	for _, p := range s.Piece.Parts {
		if p.Group != first.Group || slices.Contains(members, p.Address) {
			continue
		}
		for axis, e := range p.Extent {
			if !found || e.Low.Nm < low[axis] {
				low[axis] = e.Low.Nm
			}
		}
		found = true
	}
	var lefts []unit.Length
	for _, m := range members {
		if left := s.part[m].Extent[piece.Right].Low.Nm - low[piece.Right]; !slices.Contains(lefts, left) {
			lefts = append(lefts, left)
		}
	}
	slices.Sort(lefts)
	var args []message.Arg
	for _, l := range lefts {
		args = append(args, message.Length("", l))
	}
	return message.New("steps.fit-late-place", message.Length("front", first.Extent[piece.Back].Low.Nm-low[piece.Back]), message.List("left", args...))
}
