package sequence

import (
	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// whole adds dry fit and glue-up of what no group puts together: joints of parts
// that stand in no group, and of parts of different groups. It comes when all
// groups stand.
func (s *sequencer) whole() {
	var joints []piece.Joint
	var members []address.Address
	for _, j := range s.Piece.Joints {
		g := s.part[j.A].Group
		if _, built := s.group[g]; built && g == s.part[j.B].Group {
			continue
		}
		joints = append(joints, j)
		members = append(members, j.A, j.B)
	}
	if len(joints) == 0 {
		return
	}
	marks := s.marks(members)
	ch := chapter("assemble-whole")
	dry := step{Step: plan.Step{
		ID: "dry-fit: whole", Chapter: ch, Marks: marks, Hands: s.Estimates.Joint * len(joints),
		Text: message.New("steps.dry-fit-whole", list("marks", marks)),
		More: []message.Message{message.New("steps.dry-fit-checks"), message.New("steps.sand-inside")},
	}, about: members, after: s.lastStep()}
	for _, m := range marks {
		dry.after = unique(append(dry.after, s.lastOn(m)...))
	}
	s.add(dry)
	glue := s.glueStep([]address.Address{"whole"}, "", ch, joints)
	if g, glued := glue.Text.Arg("glue"); glued {
		glue.Text = message.New("steps.glue-whole", g)
	} else {
		glue.Text = message.New("steps.assemble-whole")
	}
	glue.Marks, glue.about, glue.after = marks, members, []string{dry.ID}
	s.add(glue)
}
