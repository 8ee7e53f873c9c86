package sequence

import (
	"slices"

	"scantling/internal/message"
	"scantling/internal/plan"
)

// boards adds the first steps: choosing and marking the wood, cutting it up
// roughly, letting it rest.
func (s *sequencer) boards() {
	var labels []string
	var marks []string
	for _, g := range s.Diagrams {
		if !g.Sheet {
			labels = append(labels, g.ID)
			marks = append(marks, s.marksOn(g)...)
		}
	}
	if len(s.Diagrams) == 0 {
		return
	}
	s.add(step{Step: plan.Step{
		ID: "choose boards", Chapter: chapter("boards"), Text: message.New("steps.choose-boards"),
		More:  []message.Message{message.New("steps.mark-boards"), message.New("steps.keep-offcuts")},
		Hands: s.Estimates.Clean,
	}})
	for _, g := range s.Diagrams {
		s.rough(g)
	}
	if len(labels) > 0 {
		s.add(step{Step: plan.Step{
			ID: "rest blanks", Chapter: chapter("rough"), Text: message.New("steps.rest-blanks"), Marks: unique(marks),
			Wait: overnight, Hands: s.Estimates.Reading * 5,
		}, after: []string{"rough " + labels[len(labels)-1]}})
	}
}

// overnight is how long panels and blanks rest. Common practice, no source.
const overnight = 12 * 60

func (s *sequencer) rough(g plan.Diagram) {
	key := "rough-board"
	if g.Sheet {
		key = "rough-sheet"
	}
	st := step{Step: plan.Step{
		ID: "rough " + g.ID, Chapter: chapter("rough"), Marks: unique(s.marksOn(g)),
		Text:  message.New("steps."+key, message.Text("diagram", g.ID), message.Text("stock", g.Label), message.Count("count", max(1, g.Count))),
		More:  []message.Message{message.New("steps.rough-order"), message.New("steps.write-marks", list("marks", unique(s.marksOn(g))))},
		After: nil, Hands: s.Estimates.SawCut * max(1, g.Count) * len(g.Cuts),
		Cautions: []message.Message{message.New("caution.machine"), message.New("caution.saw")},
	}, after: []string{"choose boards"}}
	for _, op := range s.Operations {
		if op.Workpiece == g.ID && (op.Kind == plan.RoughCrosscut || op.Kind == plan.RoughRip || op.Kind == plan.SheetCut) {
			st.Operations = append(st.Operations, op.ID)
		}
	}
	if g.Sheet && s.waits(g) {
		st.More = append(st.More, message.New("steps.sheet-waits", list("marks", s.waiting(g))))
	}
	s.add(st)
}

// waits reports whether parts on the sheet wait for a measure.
func (s *sequencer) waits(g plan.Diagram) bool { return len(s.waiting(g)) > 0 }

func (s *sequencer) waiting(g plan.Diagram) []string {
	var out []string
	for _, m := range unique(s.marksOn(g)) {
		for _, stage := range s.Stages {
			if len(stage.Needs) > 0 && slices.Contains(stage.Marks, m) {
				out = append(out, m)
			}
		}
	}
	return out
}

// marksOn lists the rows whose parts come out of a diagram: of a blank or of the
// panel that a strip goes into.
func (s *sequencer) marksOn(g plan.Diagram) []string {
	var out []string
	for _, p := range g.Pieces {
		out = append(out, p.Mark)
		for _, w := range s.Workpieces {
			if w.ID == p.Workpiece || slices.Contains(w.From, p.Workpiece) && w.Kind == plan.PanelPiece {
				out = append(out, s.marks(w.Parts)...)
			}
		}
	}
	return unique(out)
}

// unique returns the words once each, in order.
func unique(words []string) []string {
	var out []string
	for _, w := range words {
		if w != "" && !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}
