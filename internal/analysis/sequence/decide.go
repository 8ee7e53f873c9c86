package sequence

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis/turns"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// Decide returns the steps, numbered from 1, each after all that it needs.
func Decide(in Input) ([]plan.Step, diag.List) {
	if in.Estimates == (Estimates{}) {
		in.Estimates = Usual()
	}
	s := sequencer{
		Input: in, ofOperation: map[string]string{}, card: map[string]plan.Setup{}, row: map[string]plan.PartRow{},
		rowOf: map[address.Address]string{}, group: map[address.Address]piece.Group{}, part: map[address.Address]piece.Part{},
		operation: map[string]plan.Operation{}, on: map[string][]plan.Operation{}, placed: map[string]bool{},
		stands: map[address.Address]bool{},
	}
	for _, c := range in.Setups {
		s.card[c.ID] = c
	}
	for _, r := range in.Rows {
		s.row[r.Mark] = r
		for _, m := range r.Members {
			s.rowOf[m] = r.Mark
		}
	}
	for _, g := range in.Piece.Groups {
		s.group[g.Address] = g
	}
	for _, p := range in.Piece.Parts {
		s.part[p.Address] = p
	}
	for _, op := range in.Operations {
		s.operation[op.ID] = op
		s.on[op.Workpiece] = append(s.on[op.Workpiece], op)
	}
	s.boards()
	s.build()
	s.whole()
	s.finish()
	s.handOver()
	s.authors()
	return s.numbered(), s.diags
}

// build walks through the turns of the building, with the cards of each stage
// where they belong.
func (s *sequencer) build() {
	events := turns.Order(s.Piece)
	first := s.firstStages()
	for _, id := range first {
		s.cards(id, true)
	}
	i := 0
	var opened []opening
	for i < len(events) && events[i].Measure != "" && s.ofBoards(events[i].Measure) {
		opened = append(opened, s.read(events[i].Measure))
		i++
	}
	for _, id := range first {
		s.cards(id, false)
	}
	for _, o := range opened {
		s.open(o)
	}
	for i < len(events) {
		e := events[i]
		switch {
		case e.Measure != "":
			s.open(s.read(e.Measure))
			i++
		case e.Late != "":
			n := s.run(events[i:], func(f turns.Event) string { return s.rowOf[f.Late] })
			s.late(events[i : i+n])
			i += n
		default:
			n := s.run(events[i:], func(f turns.Event) string { return s.group[f.Group].Name })
			s.assemble(events[i : i+n])
			for _, f := range events[i : i+n] {
				s.stands[f.Group] = true
			}
			i += n
		}
	}
	for _, c := range s.Setups { // of stages that no measure opens
		if !s.placed[c.ID] && len(c.Operations) > 0 {
			s.cardStep(c)
		}
	}
}

// run counts how many events at the start belong together: the same name.
func (s *sequencer) run(events []turns.Event, name func(turns.Event) string) int {
	n := 1
	for n < len(events) && name(events[n]) != "" && name(events[n]) == name(events[0]) {
		n++
	}
	return n
}

// firstStages lists the stages that wait for nothing.
func (s *sequencer) firstStages() []string {
	if len(s.Stages) == 0 {
		return []string{""}
	}
	var out []string
	for _, stage := range s.Stages {
		if len(stage.Needs) == 0 {
			out = append(out, stage.ID)
		}
	}
	return out
}

// ofBoards reports whether a measure is taken from loose parts, so that it can
// follow the planing.
func (s *sequencer) ofBoards(a address.Address) bool {
	return slices.ContainsFunc(s.Piece.Measures, func(m piece.Measure) bool {
		return m.Address == a && m.Stage == "" && len(s.Piece.Partners(&m)) == 0
	})
}

// opening is a measure with the stages that wait for it.
type opening struct {
	measure address.Address
	stages  []string
}

// read takes the readings of a measure. The boards of the stages that wait for
// it, and for no other any more, are planed before, while the glue sets.
func (s *sequencer) read(a address.Address) opening {
	o := opening{measure: a}
	s.taken = append(s.taken, a)
	for _, stage := range s.Stages {
		if slices.Contains(stage.Needs, a) && !slices.ContainsFunc(stage.Needs, func(n address.Address) bool { return !slices.Contains(s.taken, n) }) {
			o.stages = append(o.stages, stage.ID)
			s.cards(stage.ID, true)
		}
	}
	s.trial(a)
	s.measureStep(a)
	return o
}

// open works through the cards of the stages that a measure opened.
func (s *sequencer) open(o opening) {
	for _, id := range o.stages {
		s.sheets(id, measureID(o.measure))
		s.cards(id, false, measureID(o.measure))
	}
}

// cards adds the cards of a stage that are not yet there: those that plane
// boards, or all others; after are steps that they wait for.
func (s *sequencer) cards(stage string, planing bool, after ...string) {
	for _, c := range s.Setups {
		if s.placed[c.ID] || len(c.Operations) == 0 || s.stageOf(c) != stage || planes(s.operation[c.Operations[0]]) != planing {
			continue
		}
		if _, late := s.onGroup(c); late {
			continue
		}
		if planing && !s.onStrips(c) {
			s.glueUp()
		}
		s.cardStep(c, after...)
	}
	if planing {
		s.glueUp()
	}
}

// onStrips reports whether a card planes strips or joints, before panels are
// glued up.
func (s *sequencer) onStrips(c plan.Setup) bool {
	if s.strips == nil {
		s.strips = map[string]bool{}
		for _, w := range s.Workpieces {
			s.strips[w.ID] = w.Kind == plan.StripPiece
		}
		for _, w := range s.Workpieces {
			for _, from := range w.From {
				if w.InWidths {
					s.strips[from] = false
				}
			}
		}
	}
	return slices.ContainsFunc(c.Operations, func(id string) bool {
		op := s.operation[id]
		return op.Kind != plan.PlaneToThick && op.Kind != plan.LevelJoints || s.strips[op.Workpiece]
	})
}

func planes(op plan.Operation) bool {
	return op.Kind == plan.FaceJoint || op.Kind == plan.EdgeJoint || op.Kind == plan.PlaneToThick || op.Kind == plan.LevelJoints
}

// stageOf is the stage of a card: for planing the earliest of its rows' groups,
// as the cards were made.
func (s *sequencer) stageOf(c plan.Setup) string {
	op := s.operation[c.Operations[0]]
	if planes(op) {
		return s.firstStage(op.Mark)
	}
	return s.row[op.Mark].Stage
}

func (s *sequencer) firstStage(mark string) string {
	name := func(m string) string {
		r := s.row[m]
		if len(r.Members) == 0 {
			return ""
		}
		return s.group[s.part[r.Members[0]].Group].Name
	}
	for _, stage := range s.Stages { // in order
		for _, m := range stage.Marks {
			if name(m) == name(mark) {
				return stage.ID
			}
		}
	}
	return s.row[mark].Stage
}

// add appends a step.
func (s *sequencer) add(st step) {
	s.steps = append(s.steps, st)
	for _, id := range st.Operations {
		s.ofOperation[id] = st.ID
	}
}

// numbered gives the steps their numbers and what each comes after.
func (s *sequencer) numbered() []plan.Step {
	at := map[string]int{}
	before := make([][]bool, len(s.steps)) // what must have been done, step by step
	out := make([]plan.Step, len(s.steps))
	for i, st := range s.steps {
		at[st.ID] = i
		st.N = i + 1
		after := slices.Clone(st.after)
		for _, id := range st.Operations {
			for _, need := range s.operation[id].Needs {
				if before := s.ofOperation[need]; before != "" && before != st.ID {
					after = append(after, before)
				}
			}
		}
		st.After = s.nearest(after, at, before, i)
		out[i] = st.Step
	}
	return out
}

// nearest sorts the ids of earlier steps and leaves out those that another one
// of them comes after anyway.
func (s *sequencer) nearest(after []string, at map[string]int, before [][]bool, i int) []string {
	before[i] = make([]bool, i)
	slices.SortFunc(after, func(a, b string) int { return at[b] - at[a] })
	var out []string
	for _, id := range slices.Compact(after) {
		n, ok := at[id]
		if !ok || n >= i || before[i][n] {
			if ok && n >= i {
				out = append(out, id) // an order that cannot be: the rehearsal will say so
			}
			continue
		}
		out = append(out, id)
		before[i][n] = true
		for k, done := range before[n] {
			before[i][k] = before[i][k] || done
		}
	}
	slices.SortFunc(out, func(a, b string) int { return at[a] - at[b] })
	return out
}

func chapter(key string, args ...message.Arg) message.Message {
	return message.New("steps.chapter."+key, args...)
}
