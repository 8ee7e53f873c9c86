package sequence

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/sundries"
)

// fits adds the step that fits moving groups into their spaces, all of a repeat
// together.
func (s *sequencer) fits(groups []address.Address) {
	var fits []piece.Fit
	for _, f := range s.Piece.Fits {
		if slices.Contains(groups, f.Moves) {
			fits = append(fits, f)
		}
	}
	if len(fits) == 0 {
		return
	}
	name := s.group[fits[0].Moves].Name
	st := step{Step: plan.Step{
		ID: "fit: " + string(fits[0].Moves), Chapter: chapter("fit"), Hands: s.Estimates.Clean * len(fits),
		Text: message.New("steps.fit", message.Text("group", name), message.Count("groups", len(fits)),
			message.Length("sides", fits[0].Sides.Nm), message.Length("above", fits[0].Above.Nm), message.Length("behind", fits[0].Behind.Nm)),
		More: []message.Message{message.New("steps.fit-how"), message.New("steps.fit-same-day")},
	}}
	for _, f := range fits {
		st.about = append(st.about, f.Moves, f.Inside)
		for _, op := range s.on[string(f.Moves)] {
			if op.Kind == plan.FitPart {
				st.Operations = append(st.Operations, op.ID)
			}
		}
	}
	s.add(st)
}

func (s *sequencer) insert(at int, st step) {
	s.steps = slices.Insert(s.steps, at, st)
	for _, id := range st.Operations {
		s.ofOperation[id] = st.ID
	}
}

// finish adds fitting, hardware, sanding and the finish.
func (s *sequencer) finish() {
	s.hardware()
	if len(s.Piece.Finishes) == 0 {
		return
	}
	s.add(step{Step: plan.Step{
		ID: "sand", Chapter: chapter("finish"), Text: message.New("steps.sand"), Hands: 2 * s.Estimates.Clean,
		More:     []message.Message{s.grits()},
		Cautions: []message.Message{message.New("caution.dust")},
	}, after: s.lastStep()})
	for _, f := range s.Piece.Finishes {
		s.finishStep(f)
	}
}

// grits says what to sand with: the usual four, or of those that the shop has what
// leads in small enough steps to what the finishes want.
func (s *sequencer) grits() message.Message {
	if s.Shop == nil || len(s.Shop.Grits) == 0 {
		return message.New("steps.sand-grits")
	}
	last := 0
	for _, f := range s.Piece.Finishes {
		if known, err := s.Shop.Finish(f.Kind); err == nil {
			last = max(last, sundries.LastGrit(known))
		}
	}
	if last == 0 {
		last = 220
	}
	grits, _ := sundries.Ladder(120, last, s.Shop.Grits)
	all := make([]message.Arg, len(grits))
	for i, g := range grits {
		all[i] = message.Count("", g)
	}
	return message.New("steps.sand-own-grits", message.List("grits", all...))
}

func (s *sequencer) lastStep() []string {
	if len(s.steps) == 0 {
		return nil
	}
	return []string{s.steps[len(s.steps)-1].ID}
}

func (s *sequencer) finishStep(f piece.Finish) {
	times := s.finishOf(f.Kind)
	coats := max(1, f.Coats)
	st := step{Step: plan.Step{
		ID: "finish: " + string(f.Address), Chapter: chapter("finish"), Marks: s.marks(f.On),
		Text:  message.New("steps.finish", message.Text("finish", f.Kind), message.Count("coats", coats), list("marks", s.marks(f.On))),
		Hands: s.Estimates.Coat * coats, Wait: times.cure,
	}, about: append([]address.Address{f.Address}, f.On...)}
	if coats > 1 {
		st.More = append(st.More, message.New("steps.recoat", message.Minutes("recoat", times.recoat)))
	}
	if times.rags {
		st.Cautions = append(st.Cautions, message.New("caution.rags"))
	}
	st.Cautions = append(st.Cautions, message.New("caution.vapour"))
	if f.When != "before assembly" {
		st.after = append(st.after, "sand")
	}
	for _, op := range s.on[string(f.Address)] {
		if op.Kind == plan.FinishPart {
			st.Operations = append(st.Operations, op.ID)
		}
	}
	if f.When == "before assembly" {
		if i := slices.IndexFunc(s.steps, func(o step) bool {
			return slices.ContainsFunc(f.On, func(a address.Address) bool { return o.concerns(a) }) &&
				slices.ContainsFunc(o.Operations, func(id string) bool { return s.operation[id].Kind == plan.Assemble })
		}); i >= 0 {
			s.insert(i, st)
			return
		}
	}
	s.add(st)
}

// lastAbout is the last step so far that concerns a thing.
func (s *sequencer) lastAbout(a address.Address) []string {
	for i := len(s.steps) - 1; i >= 0; i-- {
		if s.steps[i].concerns(a) {
			return []string{s.steps[i].ID}
		}
	}
	return nil
}

// hardware adds one step for each fitting, all of a repeat together.
func (s *sequencer) hardware() {
	type fitting struct{ kind, note string }
	var order []fitting
	all := map[fitting][]piece.Hardware{}
	for _, h := range s.Piece.Hardware {
		k := fitting{h.Kind, h.Note}
		if _, ok := all[k]; !ok {
			order = append(order, k)
		}
		all[k] = append(all[k], h)
	}
	for _, k := range order {
		hs := all[k]
		n := 0
		st := step{}
		for _, h := range hs {
			n += h.Count
			st.about = append(st.about, h.Address)
			st.after = append(st.after, s.lastAbout(h.On)...)
			if m := s.rowOf[h.On]; m != "" {
				st.Marks = append(st.Marks, m)
			}
		}
		st.ID, st.Chapter, st.Marks = "hardware: "+string(hs[0].Address), chapter("fit"), unique(st.Marks)
		st.Text = message.New("steps.hardware", message.Text("fitting", k.kind), message.Count("count", n), list("marks", st.Marks))
		if k.note != "" {
			st.More = append(st.More, message.New("steps.note", message.Text("note", k.note)))
		}
		st.Hands = s.Estimates.Fitting * n
		s.add(st)
	}
}

// handOver ends the building.
func (s *sequencer) handOver() {
	if len(s.steps) == 0 {
		return
	}
	st := step{Step: plan.Step{
		ID: "hand over", Chapter: chapter("hand-over"), Text: message.New("steps.hand-over"),
		More: []message.Message{message.New("steps.hand-over-record")}, Hands: s.Estimates.Clean,
	}, after: s.lastStep()}
	for _, c := range s.Piece.Contents {
		if c.Sharp {
			st.Cautions = append(st.Cautions, message.New("caution.edges", message.Text("contents", c.Label)))
		}
	}
	s.add(st)
}

// authors places the author's own steps: behind the last step about what they
// come after, or before the first about what they come before.
func (s *sequencer) authors() {
	for _, a := range s.Piece.Steps {
		st := step{Step: plan.Step{
			ID: "author: " + string(a.Address), Author: a.Text, Chapter: chapter("author"),
			Text: message.New("steps.author", message.Text("text", a.Text)),
		}, about: []address.Address{a.Address}}
		if a.Caution != "" {
			st.Cautions = append(st.Cautions, message.New("steps.author-caution", message.Text("text", a.Caution)))
		}
		low, found := 0, false
		for i, other := range s.steps {
			if slices.ContainsFunc(a.After, other.concerns) {
				low, found = i+1, true
			}
		}
		at := low
		if len(a.Before) > 0 {
			if i := slices.IndexFunc(s.steps, func(o step) bool { return slices.ContainsFunc(a.Before, o.concerns) }); i >= 0 {
				at, found = max(low, i), true
			}
		}
		if !found {
			at = max(0, len(s.steps)-1) // before the hand-over
			if len(a.After)+len(a.Before) > 0 {
				s.diags = append(s.diags, diag.Diagnostic{Severity: diag.Warning, Code: CodeNotPlaced, Where: a.Where, Address: a.Address, Text: message.New("steps.not-placed")})
			}
		}
		if at > 0 {
			st.after, st.Chapter = []string{s.steps[at-1].ID}, s.steps[at-1].Chapter
		}
		s.insert(at, st)
	}
}
