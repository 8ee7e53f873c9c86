package sequence

import (
	"reflect"
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis/supplies"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/share"
	"scantling/internal/unit"
)

// cardStep adds the step that works through one set-up card.
func (s *sequencer) cardStep(c plan.Setup, after ...string) {
	s.placed[c.ID] = true
	if len(c.Operations) == 0 {
		return // nothing is done with it
	}
	marks := []string{}
	pieces := 0
	for _, p := range c.Placements {
		marks = append(marks, p.Mark)
	}
	if op := s.operation[c.Operations[0]]; op.Kind != plan.MakeCut {
		for _, id := range c.Operations {
			marks = append(marks, s.marksOf(s.operation[id].Workpiece)...)
		}
	}
	marks = unique(marks)
	slices.SortStableFunc(marks, func(a, b string) int { return s.row[a].Order - s.row[b].Order })
	for _, m := range marks {
		pieces += s.row[m].Quantity()
	}
	first := s.operation[c.Operations[0]]
	if first.Kind == plan.MakeCut && s.joins(c, first) {
		return
	}
	st := step{Step: plan.Step{
		ID: "card: " + c.ID, Setups: []string{c.ID}, Operations: slices.Clone(c.Operations), Marks: marks, Hands: s.hands(c),
	}, after: slices.Clone(after)}
	args := []message.Arg{message.Text("machine", c.MachineLabel), list("marks", marks), message.Count("pieces", pieces)}
	s.tell(&st, c, first, args)
	st.Cautions = special(c.Cautions)
	for _, m := range marks {
		st.about = append(st.about, s.row[m].Members...)
	}
	s.add(st)
}

// tell says what is done at a card, under which heading, and how to check it.
func (s *sequencer) tell(st *step, c plan.Setup, first plan.Operation, args []message.Arg) {
	lid := s.sawsLid(c)
	switch {
	case lid != nil:
		s.lidStep(st, c, lid)
	case first.Kind == plan.MakeCut:
		st.Chapter = s.makeChapter(first.Mark)
		kinds := s.kinds(c)
		args = append(args, wordList("cuts", "cuts.", kinds))
		key := "steps.cut"
		if c.Machine == "hand" {
			key = "steps.cut-by-hand"
		}
		st.Text = message.New(key, args...)
		st.More = s.checks(c)
	default:
		st.Chapter = chapter("plane")
		if first.Kind == plan.RipToWidth || first.Kind == plan.CutToLength {
			st.Chapter = s.makeChapter(first.Mark)
		}
		key := "steps."
		if c.Machine == "hand" {
			key = "steps.by-hand."
		}
		st.Text = message.New(key+slug(string(first.Kind)), args...)
		if first.Kind == plan.CutToLength {
			st.More = append(st.More, s.commonBlanks(c)...)
		}
		st.More = append(st.More, message.New("steps.check."+slug(string(first.Kind))))
	}
}

// commonBlanks says in which order the parts come out of a blank that holds
// several; each such order once.
func (s *sequencer) commonBlanks(c plan.Setup) []message.Message {
	on := map[string]bool{}
	for _, id := range c.Operations {
		on[s.operation[id].Mark] = true
	}
	var out []message.Message
	for _, w := range s.Workpieces {
		if w.Kind != plan.BlankPiece && w.Kind != plan.PanelPiece || len(w.Parts) < 2 {
			continue
		}
		var order []string
		here := false
		for _, p := range w.Parts {
			mark := s.rowOf[p]
			order = append(order, mark)
			here = here || on[mark]
		}
		m := message.New("steps.common-blank", list("marks", order))
		if here && !slices.ContainsFunc(out, func(n message.Message) bool { return sameMessage(m, n) }) {
			out = append(out, m)
		}
	}
	return out
}

// joins adds a card to the step before where the same cutter stays in and only
// its height changes: one step, several cards.
func (s *sequencer) joins(c plan.Setup, first plan.Operation) bool {
	if len(s.steps) == 0 || c.Cutter == "" {
		return false
	}
	st := &s.steps[len(s.steps)-1]
	if len(st.Setups) == 0 {
		return false
	}
	last := s.card[st.Setups[len(st.Setups)-1]]
	chapter := s.makeChapter(first.Mark)
	if last.Machine != c.Machine || last.Cutter != c.Cutter || !sameMessage(st.Chapter, chapter) || s.row[first.Mark].Stage != s.row[st.Marks[0]].Stage {
		return false
	}
	for _, p := range c.Placements {
		if !slices.Contains(st.Marks, p.Mark) {
			st.Marks = append(st.Marks, p.Mark)
			st.about = append(st.about, s.row[p.Mark].Members...)
		}
	}
	st.Setups = append(st.Setups, c.ID)
	st.Operations = append(st.Operations, c.Operations...)
	for _, id := range c.Operations {
		s.ofOperation[id] = st.ID
	}
	st.Hands += s.hands(c)
	pieces := 0
	for _, m := range st.Marks {
		pieces += s.row[m].Quantity()
	}
	kinds := s.kinds(c)
	for _, id := range st.Setups {
		kinds = append(kinds, s.kinds(s.card[id])...)
	}
	st.Text = message.New("steps.cut-at-heights", message.Text("machine", c.MachineLabel), message.Text("cutter", c.CutterLabel),
		list("marks", st.Marks), message.Count("pieces", pieces), message.Count("cards", len(st.Setups)), wordList("cuts", "cuts.", unique(kinds)))
	for _, m := range s.checks(c) {
		if !slices.ContainsFunc(st.More, func(n message.Message) bool { return sameMessage(m, n) }) {
			st.More = append(st.More, m)
		}
	}
	for _, m := range special(c.Cautions) {
		if !slices.ContainsFunc(st.Cautions, func(n message.Message) bool { return sameMessage(m, n) }) {
			st.Cautions = append(st.Cautions, m)
		}
	}
	return true
}

func sameMessage(a, b message.Message) bool { return reflect.DeepEqual(a, b) }

// kinds lists the kinds of cut on a card, once each.
func (s *sequencer) kinds(c plan.Setup) []string {
	on := map[address.Address]bool{}
	for _, p := range c.Placements {
		for _, a := range p.Cuts {
			on[a] = true
		}
	}
	var out []string
	for _, cut := range s.Cuts {
		if on[cut.Address] {
			out = append(out, string(cut.Kind))
		}
	}
	return unique(out)
}

// checks says what to measure on the test piece and on the work.
func (s *sequencer) checks(c plan.Setup) []message.Message {
	var out []message.Message
	if !c.TestPiece.IsZero() {
		out = append(out, message.New("steps.check.test-piece"))
	}
	widths := map[unit.Length]bool{}
	round := unit.Length(0)
	for _, p := range c.Placements {
		for _, a := range p.Cuts {
			cut, ok := s.cut(a)
			if !ok || cut.Slot == nil {
				continue
			}
			w := cut.Slot.Far.Nm - cut.Slot.Near.Nm
			round = max(round, cut.Slot.Corner.Nm)
			if widths[w] || len(widths) >= 4 || c.Machine == "hand" {
				continue
			}
			widths[w] = true
			key := "steps.check.slot"
			if cut.Slot.Corner.Nm > 0 && w == 2*cut.Slot.Corner.Nm { // one path of a round-nose
				key = "steps.check.channel"
				w = share.Groove{Radius: cut.Slot.Corner.Nm, Depth: cut.Slot.Depth.Nm}.Mouth()
			}
			out = append(out, message.New(key, message.Word("cut", "cut."+string(cut.Kind)), message.Length("width", w), message.Length("depth", cut.Slot.Depth.Nm)))
		}
	}
	if round > 0 {
		out = append(out, message.New("steps.sand-round", message.Length("radius", round)))
	}
	return out
}

// cut finds a cut by its address.
func (s *sequencer) cut(a address.Address) (piece.Cut, bool) {
	if s.cutAt == nil {
		s.cutAt = map[address.Address]int{}
		for i, c := range s.Cuts {
			s.cutAt[c.Address] = i
		}
	}
	i, ok := s.cutAt[a]
	if !ok {
		return piece.Cut{}, false
	}
	return s.Cuts[i], true
}

// glueUp adds the steps that glue all panels whose strips are ready, and then those
// whose widths are.
func (s *sequencer) glueUp() {
	for _, inWidths := range []bool{false, true} {
		s.gluePanels(inWidths)
	}
}

// gluePanels adds one step for the panels that are glued from strips, or for those that
// are glued from what is planed already.
func (s *sequencer) gluePanels(inWidths bool) {
	name, word := supplies.PanelGlue(s.Piece, s.Shop), "panels"
	glue := s.gluing(name)
	if inWidths {
		word = "widths"
	}
	st := step{Step: plan.Step{
		Chapter: chapter("panels"), Wait: glue.cure,
		More:     append(append([]message.Message{message.New("steps.glue-" + word + "-order")}, glue.clamps()...), message.New("steps.panels-on-edge")),
		Cautions: glue.cautions(),
	}}
	for _, op := range s.Operations {
		if op.Kind != plan.GlueUp || s.inWidths(op.Makes) != inWidths || s.ofOperation[op.ID] != "" || !s.ready(op) {
			continue
		}
		st.Operations = append(st.Operations, op.ID)
		st.Marks = append(st.Marks, s.marksOf(op.Workpiece)...)
		st.Hands += s.Estimates.Clean
		st.More = append(append(s.narrowOf(op), s.stripOrder(op)...), st.More...)
	}
	if len(st.Operations) == 0 {
		return
	}
	st.ID, st.Marks = st.Operations[0], unique(st.Marks)
	slices.SortStableFunc(st.Marks, func(a, b string) int { return s.row[a].Order - s.row[b].Order })
	st.Text = message.New("steps.glue-"+word, list("marks", st.Marks), message.Count("panels", len(st.Operations)), glue.name())
	s.add(st)
}

// stripOrder says how strips that are not all of one width lie in their panel: joints were
// planned clear of its cuts for this order alone.
func (s *sequencer) stripOrder(op plan.Operation) []message.Message {
	at := slices.IndexFunc(s.Workpieces, func(w plan.Workpiece) bool { return w.ID == op.Makes })
	if at < 0 {
		return nil
	}
	var widths []message.Arg
	uneven := false
	for _, from := range s.Workpieces[at].From {
		for _, w := range s.Workpieces {
			if w.ID == from {
				widths = append(widths, message.Length("", w.Width.Nm))
				uneven = uneven || w.Width.Nm != widths[0].Nm
			}
		}
	}
	if !uneven {
		return nil
	}
	return []message.Message{message.New("steps.strip-order", message.Text("mark", op.Mark), message.List("widths", widths...))}
}

// narrowOf says which strips of a panel are glued up by themselves, counted from its
// first.
func (s *sequencer) narrowOf(op plan.Operation) []message.Message {
	for _, w := range s.Workpieces {
		if !w.InWidths || !slices.Contains(w.From, op.Makes) {
			continue
		}
		first := 1
		for _, from := range w.From {
			n := 1
			for _, x := range s.Workpieces {
				if x.ID == from && x.Kind == plan.NarrowPanel {
					n = len(x.From)
				}
			}
			if from == op.Makes {
				return []message.Message{message.New("steps.glue-narrow", message.Text("mark", op.Mark), message.Count("from", first), message.Count("to", first+n-1))}
			}
			first += n
		}
	}
	return nil
}

// inWidths reports whether a panel is glued up from what is planed already.
func (s *sequencer) inWidths(panel string) bool {
	return slices.ContainsFunc(s.Workpieces, func(w plan.Workpiece) bool { return w.ID == panel && w.InWidths })
}

// ready reports whether all that an operation needs is done by a step that is
// there already.
func (s *sequencer) ready(op plan.Operation) bool {
	for _, n := range op.Needs {
		if _, known := s.operation[n]; known && s.ofOperation[n] == "" {
			return false
		}
	}
	return true
}

// makeChapter is the heading under which a row is made: its group's, or its own
// name where nothing joins it to the group.
func (s *sequencer) makeChapter(mark string) message.Message {
	r := s.row[mark]
	if len(r.Members) == 0 {
		return chapter("make-parts")
	}
	if s.joined == nil {
		s.joined = map[address.Address]bool{}
		for _, j := range s.Piece.Joints {
			s.joined[j.A], s.joined[j.B] = true, true
		}
	}
	name := s.group[s.part[r.Members[0]].Group].Name
	if !s.joined[r.Members[0]] || name == "" {
		name = r.Name
	}
	return chapter("make", message.Text("group", name))
}

// special leaves out the cautions that every card opens with; they stand on the
// card.
func special(all []message.Message) []message.Message {
	var out []message.Message
	for _, m := range all {
		switch m.Key {
		case "caution.machine", "caution.person", "caution.guards":
		default:
			out = append(out, m)
		}
	}
	return out
}

// hands estimates the minutes at a card: setting up, and each pass of each piece.
func (s *sequencer) hands(c plan.Setup) int {
	if c.Machine == "hand" {
		n := 0
		for _, p := range c.Placements {
			n += max(1, len(p.Cuts)) * max(1, p.Pieces)
		}
		return n * s.Estimates.HandCut
	}
	passes := 0
	for _, p := range c.Placements {
		n := max(1, p.Pieces)
		for _, list := range [][]plan.Setting{c.Settings, p.Settings} {
			for _, set := range list {
				n *= max(1, len(set.Passes))
			}
		}
		if p.Turn {
			n *= 2
		}
		passes += n
	}
	return s.Estimates.SetUp + passes*s.Estimates.Pass
}
