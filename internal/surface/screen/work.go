package screen

import (
	"slices"

	"scantling/internal/message"
	"scantling/internal/output/drawing"
	"scantling/internal/plan"
)

func (b *builder) setups() []Setup {
	out := []Setup{}
	for i, s := range b.Plan.Setups {
		card := Setup{
			N: i + 1, ID: s.ID, Title: b.names.Phrase(s.Title), Machine: b.machine(s), Settings: b.settings(s.Settings),
			Placements: []Placement{}, Cautions: b.messages(s.Cautions...), Sums: b.sums(s.Sums, "", s.Settings),
			TestPiece: b.names.Phrase(s.TestPiece), Device: b.names.Phrase(s.Device),
			Shared: b.names.Phrase(s.Shared),
		}
		if s.Speed > 0 {
			card.Speed = b.say.Label("booklet.card-speed", message.Speed("rpm", s.Speed))
		}
		for _, pm := range s.Placements {
			card.Placements = together(card.Placements, b.placement(pm))
		}
		if len(s.Placements) > 0 {
			if pic, ok := drawing.Setup(b.Plan, s, s.Placements[0], setupWidth, setupHeight, bare{b.say}); ok {
				card.SVG = element(pic)
				card.Caption = b.say.Label("screen.setup-caption", message.Text("mark", s.Placements[0].Mark))
			}
		}
		if len(s.Placements) > 0 {
			if pic, ok := drawing.SetupAbove(b.Plan, s, s.Placements[0], setupWidth, b.say); ok {
				card.Above = element(pic)
			}
		}
		out = append(out, card)
	}
	return out
}

func (b *builder) machine(s plan.Setup) string {
	if s.Machine == "hand" {
		return b.say.Label("tools.hand")
	}
	if s.CutterLabel == "" {
		return b.say.Own(s.MachineLabel)
	}
	return b.say.Label("screen.machine-cutter", message.Text("machine", s.MachineLabel), message.Text("cutter", s.CutterLabel))
}

func (b *builder) settings(in []plan.Setting) []Setting {
	out := []Setting{}
	for _, s := range in {
		shown, passes := b.tape.Setting(s)
		set := Setting{Word: b.known("setting.", s.Word), Figure: b.say.Length(shown), Passes: []string{}}
		if len(s.Passes) > 1 {
			for _, l := range passes {
				set.Passes = append(set.Passes, b.say.Length(l))
			}
		}
		out = append(out, set)
	}
	return out
}

func (b *builder) placement(pm plan.Placement) Placement {
	out := Placement{
		N: pm.N, Marks: []string{pm.Mark}, Pieces: pm.Pieces, Settings: b.settings(pm.Settings),
		Notes: b.messages(pm.Feed, pm.Note), Sums: b.sums(pm.Sums, pm.Mark, pm.Settings),
	}
	// The feed says it in the maker's words, if there is one.
	if pm.Feed.IsZero() && pm.Down != "" && pm.Fence != "" {
		out.Offer = b.say.Label("booklet.offer", message.Word("down", "side."+string(pm.Down)), message.Word("fence", "side."+string(pm.Fence)))
	}
	if pm.Turn {
		out.Notes = append(out.Notes, b.say.Label("booklet.turn"))
	}
	return out
}

// together adds a placement to the one before it if the work is offered alike.
func together(all []Placement, p Placement) []Placement {
	if n := len(all); n > 0 {
		last := &all[n-1]
		alike := last.Offer == p.Offer && slices.Equal(last.Notes, p.Notes) &&
			slices.EqualFunc(last.Settings, p.Settings, func(x, y Setting) bool {
				return x.Word == y.Word && x.Figure == y.Figure && slices.Equal(x.Passes, y.Passes)
			})
		if alike {
			if !slices.Contains(last.Marks, p.Marks[0]) {
				last.Marks = append(last.Marks, p.Marks...)
			}
			last.Pieces += p.Pieces
			for _, s := range p.Sums {
				if !slices.ContainsFunc(last.Sums, s.equal) {
					last.Sums = append(last.Sums, s)
				}
			}
			return all
		}
	}
	p.N = len(all) + 1
	return append(all, p)
}

func (s Sum) equal(o Sum) bool {
	return s.Title == o.Title && s.Total == o.Total && slices.Equal(s.Terms, o.Terms)
}

// sums says the sums of a card, their figures as they are printed for its settings.
func (b *builder) sums(in []plan.Sum, mark string, settings []plan.Setting) []Sum {
	out := []Sum{}
	for _, s := range in {
		shown, total := b.tape.Sum(s, mark, settings)
		sum := Sum{Title: b.names.Phrase(s.Title), Terms: []Term{}, Total: b.say.Length(total), Alike: []string{}}
		for i, t := range s.Terms {
			sum.Terms = append(sum.Terms, Term{Word: b.known("term.", t.Word), Figure: b.say.Length(shown[i].Abs()), Minus: shown[i] < 0, Count: 1})
		}
		out = append(out, sum)
	}
	return out
}

func (b *builder) steps() []Step {
	out := []Step{}
	for _, s := range b.Plan.Steps {
		step := Step{
			N: s.N, ID: s.ID, Chapter: b.names.Phrase(s.Chapter), Text: s.Author, More: b.messages(s.More...),
			Cautions: b.messages(s.Cautions...), Setups: list(s.Setups), Marks: list(s.Marks), Measures: []string{},
		}
		if s.Author == "" {
			step.Text = b.names.Phrase(s.Text)
		}
		if s.Wait > 0 {
			step.Wait = b.say.Label("booklet.wait", message.Minutes("time", s.Wait))
		}
		if s.Hands > 0 {
			step.Hands = b.say.Minutes(int64(s.Hands))
		}
		for _, m := range s.Measures {
			step.Measures = append(step.Measures, string(m))
		}
		out = append(out, step)
	}
	return out
}

func (b *builder) measures() []Measure {
	out := []Measure{}
	for _, m := range b.Plan.Measures {
		measure := Measure{Address: string(m.Address), Label: m.Label, Marks: list(m.Marks), Readings: []Reading{}}
		for _, r := range m.Readings {
			reading := Reading{Of: string(r.Of), What: r.What, Word: b.known("reading.", r.What), Planned: b.length(r.Planned)}
			if r.Planned.Nm == 0 {
				reading.Planned = b.say.Label("reading.even")
			}
			if r.Found != nil {
				reading.Found = b.length(*r.Found)
			} else if l, ok := b.Found[[2]string{reading.Of, r.What}]; ok {
				reading.Found = b.say.Length(l)
			}
			measure.Readings = append(measure.Readings, reading)
		}
		out = append(out, measure)
	}
	return out
}
