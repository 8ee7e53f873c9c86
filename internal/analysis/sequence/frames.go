package sequence

import (
	"cmp"
	"slices"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// turn is one glue-up of several that a group takes.
type turn struct {
	frames [][]address.Address // of the first turn: what stands in each frame
	joints []piece.Joint
}

// turns shares the joints of a group on legs among three glue-ups: frames of two legs and
// the rails between them, lying flat, first; then the rails that join the frames; then
// whatever is glued to these, such as runners and blocks. Each is one that a maker gets
// square within the open time of the glue. Common practice, no source. It returns nil
// for what is no such group.
func (s *sequencer) turns(members []address.Address, joints []piece.Joint) []turn {
	legs, rails := s.legsAndRails(members, joints)
	along := s.firstRails(legs, rails)
	if along < 0 {
		return nil
	}
	var out [3]turn
	for _, j := range joints {
		axis, isRail := rails[j.A]
		switch {
		case !isRail || !legs[j.B]:
			out[2].joints = append(out[2].joints, j)
		case axis == along:
			out[0].joints = append(out[0].joints, j)
		default:
			out[1].joints = append(out[1].joints, j)
		}
	}
	out[0].frames = frames(out[0].joints)
	for _, f := range out[0].frames {
		n := 0
		for _, a := range f {
			if legs[a] {
				n++
			}
		}
		if n < 2 {
			return nil
		}
	}
	if len(out[0].frames) < 2 || len(out[1].joints) == 0 || !s.allGlued(out[0].joints) || !s.allGlued(out[1].joints) {
		return nil
	}
	return slices.DeleteFunc(out[:], func(t turn) bool { return len(t.joints) == 0 })
}

// legsAndRails finds the parts that stand upright with the ends of others let into them,
// and those others, each with the axis that it runs along.
func (s *sequencer) legsAndRails(members []address.Address, joints []piece.Joint) (map[address.Address]bool, map[address.Address]piece.Axis) {
	legs, rails := map[address.Address]bool{}, map[address.Address]piece.Axis{}
	for _, j := range joints {
		a, okA := s.part[j.A]
		b, okB := s.part[j.B]
		if !okA || !okB || a.Frame.Length == "" || b.Frame.Length == "" {
			continue
		}
		axis, _ := a.Frame.Length.Axis()
		stands, _ := b.Frame.Length.Axis()
		switch j.Kind {
		case piece.TenonJoint, piece.DowelJoint, piece.LooseJoint:
		default:
			continue
		}
		if stands == piece.Up && axis != piece.Up && upright(b) {
			legs[j.B] = true
			rails[j.A] = axis
		}
	}
	return legs, rails
}

// upright reports whether a part is a post rather than a board: not twice as wide as it
// is thick. Common practice, no source.
func upright(p piece.Part) bool { return p.Width.Nm < 2*p.Thickness.Nm }

// firstRails is the axis of the rails that are glued first, the shorter ones; less than
// nought where there are not four legs with rails both ways.
func (s *sequencer) firstRails(legs map[address.Address]bool, rails map[address.Address]piece.Axis) piece.Axis {
	var longest [3]piece.Figure
	for a, axis := range rails {
		if l := s.part[a].Length; l.Nm > longest[axis].Nm {
			longest[axis] = l
		}
	}
	if len(legs) < 4 || longest[piece.Right].Nm == 0 || longest[piece.Back].Nm == 0 {
		return -1
	}
	if longest[piece.Right].Nm < longest[piece.Back].Nm {
		return piece.Right
	}
	return piece.Back
}

// frames gathers the parts that joints hold together, in the order of the joints.
func frames(joints []piece.Joint) [][]address.Address {
	var out [][]address.Address
	of := func(a address.Address) int {
		return slices.IndexFunc(out, func(f []address.Address) bool { return slices.Contains(f, a) })
	}
	for _, j := range joints {
		m, n := of(j.A), of(j.B)
		switch {
		case m < 0 && n < 0:
			out = append(out, []address.Address{j.A, j.B})
		case m < 0:
			out[n] = append(out[n], j.A)
		case n < 0:
			out[m] = append(out[m], j.B)
		case m != n:
			m, n = min(m, n), max(m, n)
			out[m] = append(out[m], out[n]...)
			out = slices.Delete(out, n, n+1)
		}
	}
	return out
}

func (s *sequencer) allGlued(joints []piece.Joint) bool {
	return !slices.ContainsFunc(joints, func(j piece.Joint) bool { return j.Glue == "" })
}

// glueTurns returns the glue-ups of groups in their order; the last stands for the group.
func (s *sequencer) glueTurns(groups []address.Address, name string, ch message.Message, members []address.Address, joints []piece.Joint) []step {
	turns := s.turns(members, joints)
	if turns == nil {
		return []step{s.glueStep(groups, name, ch, joints)}
	}
	var out []step
	for i, t := range turns {
		st := s.glueStep(groups, name, ch, t.joints)
		glue := s.gluingOf(t.joints)
		switch {
		case t.frames != nil:
			st.Text = message.New("steps.glue-frames", message.Text("group", name), message.Count("frames", len(t.frames)), glue.name())
			var each []message.Message
			for _, f := range t.frames {
				each = append(each, message.New("steps.one-frame", list("marks", s.inOrder(f))))
			}
			st.More = append(append(each, st.More...), message.New("steps.frames-flat"))
		case i == 1:
			st.Text = message.New("steps.glue-between-frames", message.Text("group", name), glue.name())
		default:
			st.Text = message.New("steps.glue-to-frames", message.Text("group", name))
		}
		if i == len(turns)-1 && i > 1 {
			st.More = slices.DeleteFunc(st.More, func(m message.Message) bool { return m.Key == "steps.check-square" })
		}
		if i < len(turns)-1 { // out of the clamps, it may be handled for the next
			st.Wait = glue.clamp
			st.ID += ", " + [2]string{"frames", "rails"}[i]
		}
		st.Marks = s.inOrder(ofJoints(t.joints))
		out = append(out, st)
	}
	return out
}

// inOrder lists the marks of parts as the list of parts does.
func (s *sequencer) inOrder(parts []address.Address) []string {
	marks := s.marks(parts)
	slices.SortStableFunc(marks, func(a, b string) int { return cmp.Compare(s.row[a].Order, s.row[b].Order) })
	return marks
}

func ofJoints(joints []piece.Joint) []address.Address {
	var out []address.Address
	for _, j := range joints {
		out = append(out, j.A, j.B)
	}
	return out
}
