package sequence

import (
	"fmt"
	"testing"

	"scantling/internal/address"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// table is a frame of four legs with rails from side to side and from front to back, of
// these lengths, a tenon at each end, and a block glued to a rail.
func table(right, back int64) *sequencer {
	s := &sequencer{Input: Input{Piece: &piece.Piece{}}, part: map[address.Address]piece.Part{}}
	part := func(name string, runs piece.Direction, long int64) address.Address {
		p := piece.Part{Address: address.Address(name), Frame: piece.Frame{Length: runs}}
		p.Length.Nm, p.Width.Nm, p.Thickness.Nm = unit.MM(long), unit.MM(40), unit.MM(40)
		s.part[p.Address] = p
		s.Piece.Parts = append(s.Piece.Parts, p)
		return p.Address
	}
	join := func(kind piece.JointKind, a, b address.Address) {
		s.Piece.Joints = append(s.Piece.Joints, piece.Joint{Kind: kind, A: a, B: b, Glue: "pva"})
	}
	var legs [4]address.Address // front left, front right, back left, back right
	for i := range legs {
		legs[i] = part(fmt.Sprintf("leg[%d]", i+1), piece.ToUp, 600)
	}
	var rails []address.Address
	for i, ends := range [][2]int{{0, 1}, {2, 3}, {0, 2}, {1, 3}} {
		runs, long := piece.ToRight, right
		if i > 1 {
			runs, long = piece.ToBack, back
		}
		rail := part(fmt.Sprintf("rail[%d]", i+1), runs, long)
		rails = append(rails, rail)
		join(piece.TenonJoint, rail, legs[ends[0]])
		join(piece.TenonJoint, rail, legs[ends[1]])
	}
	join(piece.ButtJoint, part("block", piece.ToRight, 60), rails[0])
	return s
}

func (s *sequencer) members() []address.Address {
	var out []address.Address
	for _, p := range s.Piece.Parts {
		out = append(out, p.Address)
	}
	return out
}

// TestTurns: the shorter rails first, each with its two legs. Common practice, no source.
func TestTurns(t *testing.T) {
	for _, c := range []struct {
		right, back int64
		frames      string
	}{
		{310, 260, "[[rail[3] leg[1] leg[3]] [rail[4] leg[2] leg[4]]]"},
		{260, 310, "[[rail[1] leg[1] leg[2]] [rail[2] leg[3] leg[4]]]"},
		{300, 300, "[[rail[3] leg[1] leg[3]] [rail[4] leg[2] leg[4]]]"},
	} {
		s := table(c.right, c.back)
		turns := s.turns(s.members(), s.Piece.Joints)
		if len(turns) != 3 || fmt.Sprint(turns[0].frames) != c.frames || len(turns[0].joints) != 4 || len(turns[1].joints) != 4 || len(turns[2].joints) != 1 {
			t.Errorf("%d by %d: %+v", c.right, c.back, turns)
		}
	}
}

// TestNoTurns: three legs, rails one way only, a rail that is not glued, boards for legs.
func TestNoTurns(t *testing.T) {
	for name, change := range map[string]func(*sequencer){
		"three legs":   func(s *sequencer) { s.Piece.Joints = s.Piece.Joints[:6] },
		"one way":      func(s *sequencer) { s.Piece.Joints = s.Piece.Joints[:4] },
		"not glued":    func(s *sequencer) { s.Piece.Joints[1].Glue = "" },
		"boards":       func(s *sequencer) { widen(s, "leg[1]") },
		"what is gone": func(s *sequencer) { delete(s.part, "rail[1]"); delete(s.part, "rail[2]") },
	} {
		s := table(310, 260)
		change(s)
		if turns := s.turns(s.members(), s.Piece.Joints); turns != nil {
			t.Errorf("%s: %+v", name, turns)
		}
	}
}

func widen(s *sequencer, a address.Address) {
	p := s.part[a]
	p.Width.Nm = unit.MM(80)
	s.part[a] = p
}
