package sequence

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

func trialID(measure address.Address) string { return "try: " + string(measure) }

// measure finds a measure of the document.
func (s *sequencer) measure(a address.Address) *piece.Measure {
	i := slices.IndexFunc(s.Piece.Measures, func(m piece.Measure) bool { return m.Address == a })
	if i < 0 {
		return nil
	}
	return &s.Piece.Measures[i]
}

// between lists the parts whose length or width a measure reads between those that
// they go into, before they are cut.
func (s *sequencer) between(a address.Address) []address.Address {
	m := s.measure(a)
	if m == nil {
		return nil
	}
	return s.Piece.Between(m)
}

// trial adds the step that puts together dry what a measure reads between: the
// partners of the parts that wait for it, and what holds them apart. Where they are
// glued together already, nothing is put together.
func (s *sequencer) trial(a address.Address) {
	awaiting := s.between(a)
	if len(awaiting) == 0 {
		return
	}
	members := s.dry(s.Piece.Partners(s.measure(a)), awaiting)
	if s.standing(members) {
		return
	}
	marks := s.inOrder(members)
	st := step{Step: plan.Step{
		ID: trialID(a), Chapter: chapter("measure"), Marks: marks, Hands: s.Estimates.Joint * len(s.joints(members)),
		Text: message.New("steps.try", list("marks", marks), list("without", s.inOrder(awaiting))),
		More: []message.Message{message.New("steps.try-how")},
	}, about: members}
	for _, m := range marks {
		st.after = append(st.after, s.lastOn(m)...)
	}
	st.after = unique(st.after)
	s.add(st)
}

// standing reports whether the parts are in groups that are together already.
func (s *sequencer) standing(parts []address.Address) bool {
	return !slices.ContainsFunc(parts, func(a address.Address) bool { return !s.stands[s.part[a].Group] })
}

// dry returns the partners and all that joints hold to them in their groups, as far as
// it may be cut by now and does not itself go into what is still missing.
func (s *sequencer) dry(partners, missing []address.Address) []address.Address {
	group := map[address.Address]bool{}
	for _, a := range partners {
		group[s.part[a].Group] = true
	}
	left := map[address.Address]bool{} // out of it
	for _, a := range missing {
		left[a] = true
	}
	for _, j := range s.Piece.Joints {
		if slices.Contains(missing, j.B) {
			left[j.A] = true
		}
	}
	out := map[address.Address]bool{}
	for _, p := range s.Piece.Parts {
		waits := slices.ContainsFunc(p.CutAfter, func(m address.Address) bool { return !slices.Contains(s.taken, m) })
		if group[p.Group] && !waits && !left[p.Address] {
			out[p.Address] = false
		}
	}
	for _, a := range partners {
		out[a] = true
	}
	for more := true; more; {
		more = false
		for _, j := range s.Piece.Joints {
			inA, okA := out[j.A]
			inB, okB := out[j.B]
			if okA && okB && inA != inB {
				out[j.A], out[j.B], more = true, true, true
			}
		}
	}
	var in []address.Address
	for _, p := range s.Piece.Parts {
		if out[p.Address] {
			in = append(in, p.Address)
		}
	}
	return in
}
