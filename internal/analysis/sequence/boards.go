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
		if !g.Sheet || s.sheetStage(g) == s.firstStages()[0] {
			s.rough(g, chapter("rough"))
		}
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

// sheetStage is the first stage that wants anything of a sheet: it is cut up
// then, not before.
func (s *sequencer) sheetStage(g plan.Diagram) string {
	marks := s.marksOn(g)
	for _, stage := range s.Stages {
		if slices.ContainsFunc(marks, func(m string) bool { return slices.Contains(stage.Marks, m) }) {
			return stage.ID
		}
	}
	return s.firstStages()[0]
}

// sheets cuts up the sheets that a stage opens with.
func (s *sequencer) sheets(stage string, after ...string) {
	for _, g := range s.Diagrams {
		if g.Sheet && s.sheetStage(g) == stage && stage != s.firstStages()[0] {
			s.rough(g, s.makeChapter(s.marksOn(g)[0]), after...)
		}
	}
}

func (s *sequencer) rough(g plan.Diagram, ch message.Message, after ...string) {
	key := "rough-board"
	if g.Sheet {
		key = "rough-sheet"
	}
	st := step{Step: plan.Step{
		ID: "rough " + g.ID, Chapter: ch, Marks: unique(s.marksOn(g)),
		Text:     message.New("steps."+key, message.Text("diagram", g.ID), message.Text("stock", g.Label), message.Count("count", max(1, g.Count))),
		More:     []message.Message{message.New("steps.rough-order"), message.New("steps.write-marks", list("marks", unique(s.marksOn(g))))},
		Hands:    s.Estimates.SawCut * max(1, g.Count) * len(g.Cuts),
		Cautions: []message.Message{message.New("caution.machine"), message.New("caution.saw")},
	}, after: append([]string{"choose boards"}, after...)}
	for _, op := range s.on[g.ID] {
		if op.Kind == plan.RoughCrosscut || op.Kind == plan.RoughRip || op.Kind == plan.SheetCut {
			st.Operations = append(st.Operations, op.ID)
		}
	}
	if later := s.later(g); len(later) > 0 {
		st.More = append(st.More, message.New("steps.sheet-waits", list("marks", later)))
	}
	s.add(st)
}

// later lists the marks on a sheet that belong to a later stage than its first.
func (s *sequencer) later(g plan.Diagram) []string {
	if !g.Sheet {
		return nil
	}
	var out []string
	first := s.sheetStage(g)
	for _, m := range s.marksOn(g) {
		if s.row[m].Stage != first {
			out = append(out, m)
		}
	}
	return out
}

// marksOn lists the rows whose parts come out of a diagram.
func (s *sequencer) marksOn(g plan.Diagram) []string {
	var out []string
	for _, p := range g.Pieces {
		out = append(out, p.Mark)
		for _, w := range p.Workpieces() {
			out = append(out, s.marksOf(w)...)
		}
	}
	return unique(out)
}

// marksOf lists the rows whose parts come out of a blank, or out of the panel
// that a strip goes into.
func (s *sequencer) marksOf(workpiece string) []string {
	if s.cameOf == nil {
		s.cameOf = map[string][]string{}
		for _, w := range s.Workpieces {
			if w.Kind != plan.BlankPiece && w.Kind != plan.PanelPiece {
				continue
			}
			marks := s.marks(w.Parts)
			s.cameOf[w.ID] = marks
			for _, from := range w.From {
				s.cameOf[from] = marks
			}
			for _, strip := range plan.StripsOf(s.Workpieces, w) {
				s.cameOf[strip.ID] = marks
			}
		}
	}
	return s.cameOf[workpiece]
}

// unique returns the words once each, in order.
func unique(words []string) []string {
	var out []string
	seen := make(map[string]bool, len(words))
	for _, w := range words {
		if w != "" && !seen[w] {
			seen[w] = true
			out = append(out, w)
		}
	}
	return out
}
