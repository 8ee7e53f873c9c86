package sequence

import (
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// sawsLid returns the lid that a card saws off, nil where it does something else.
func (s *sequencer) sawsLid(c plan.Setup) *piece.Sawn {
	for _, id := range c.Operations {
		op := s.operation[id]
		if op.Kind != plan.MakeCut || len(op.Cuts) == 0 {
			continue
		}
		if cut, ok := s.cut(op.Cuts[0]); ok {
			if l := s.Piece.SawnBy(&cut); l != nil {
				return l
			}
		}
	}
	return nil
}

// lidStep tells how a lid is sawn off the box that stands glued up: what is done before
// the saw, side by side at the saw or the bench, and what makes the edges meet again.
func (s *sequencer) lidStep(st *step, c plan.Setup, l *piece.Sawn) {
	group := message.Text("group", s.group[l.Group].Name)
	st.Chapter = chapter("lid", message.Text("name", l.Name))
	high, whole := message.Length("lid", l.Lid.Nm), message.Length("whole", l.Whole.Nm)
	st.about = append(st.about, l.Group)
	mark := message.New("steps.lid-mark")
	if c.Machine == "hand" {
		st.Text = message.New("steps.lid-by-hand", group, high, whole)
		st.More = []message.Message{mark, message.New("steps.lid-hand-lines", message.Length("base", l.Base.Nm), message.Length("takes", l.Takes.Nm)), message.New("steps.lid-hand-saw")}
	} else {
		st.Text = message.New("steps.lid", message.Text("machine", c.MachineLabel), group, high, whole)
		st.More = []message.Message{mark, message.New("steps.lid-sides", message.Length("kerf", l.Kerf.Nm))}
		if left := s.leftForKnife(c); left > 0 {
			st.More = append(st.More, message.New("steps.lid-knife", message.Length("left", left)))
		}
	}
	if l.Clean.Nm > 0 {
		st.More = append(st.More, message.New("steps.lid-clean", message.Length("clean", l.Clean.Nm)))
	} else {
		st.More = append(st.More, message.New("steps.lid-sand"))
	}
	st.More = append(st.More, message.New("steps.lid-shut", message.Length("base", l.Base.Nm), high, message.Length("shut", l.Base.Nm+l.Lid.Nm)))
}

// leftForKnife is what a card's blade leaves of the walls.
func (s *sequencer) leftForKnife(c plan.Setup) unit.Length {
	for _, sum := range c.Sums {
		for _, t := range sum.Terms {
			if t.Word == "left for the knife" {
				return t.Figure.Nm
			}
		}
	}
	return 0
}
