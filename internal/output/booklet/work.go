package booklet

import (
	"fmt"
	"strings"

	"scantling/internal/message"
	"scantling/internal/output/drawing"
	"scantling/internal/output/table"
	"scantling/internal/page"
	"scantling/internal/plan"
	"scantling/internal/typeset"
)

// drawings sets one drawing and one table of cuts for each unique part.
func (c *composer) drawings() {
	c.heading(1, c.say("booklet.parts"), "parts", true)
	for _, row := range c.plan.Parts {
		name := row.Name
		if row.Label != "" {
			name = row.Label
		}
		title := c.say("booklet.part-title", message.Text("mark", row.Mark), message.Text("name", strings.ReplaceAll(name, "_", " ")), message.Count("quantity", row.Quantity()))
		pic, scale := drawing.Part(c.plan, row, c.solids, drawing.PartOptions{ThirdAngle: c.options.ThirdAngle}, c.room.Width, c.room.Height*0.5, c.speech)
		caption := c.say("booklet.part-caption", message.Text("scale", scale.String()), message.Text("species", row.Species),
			message.Word("basis", "basis."+string(row.Basis)))
		block := []typeset.Block{
			typeset.Heading{Level: 2, Text: title, Anchor: "part-" + row.Mark, Address: string(row.Members[0]), Unlisted: true},
			typeset.Figure{Drawing: pic, Caption: typeset.Plain(caption), Address: string(row.Members[0])},
		}
		if cuts := table.Cuts(c.plan, row, c.speech); len(cuts.Rows) > 0 {
			if len(cuts.Rows) <= 14 {
				block = append(block, setTable(cuts, true))
				c.add(typeset.Together{Blocks: block})
				continue
			}
			c.add(typeset.Together{Blocks: block}, setTable(cuts, true))
			continue
		}
		c.add(typeset.Together{Blocks: block})
	}
}

// cards sets one card for each set-up.
func (c *composer) cards() {
	if len(c.plan.Setups) == 0 {
		return
	}
	c.heading(1, c.say("booklet.setups"), "setups", true)
	c.text("booklet.setups-intro")
	for i, s := range c.plan.Setups {
		c.card(i+1, s)
	}
}

func (c *composer) card(n int, s plan.Setup) {
	title := c.say("booklet.card", message.Count("n", n)) + " " + c.speech.Say(s.Title)
	c.add(typeset.Heading{Level: 2, Text: title, Anchor: "setup-" + s.ID, Unlisted: true})
	var body []typeset.Block
	line := c.say("booklet.card-machine", message.Text("machine", s.MachineLabel))
	if s.CutterLabel != "" {
		line = c.say("booklet.card-cutter", message.Text("machine", s.MachineLabel), message.Text("cutter", s.CutterLabel))
	}
	if s.Speed > 0 {
		line += " " + c.say("booklet.card-speed", message.Speed("rpm", s.Speed))
	}
	body = append(body, typeset.Paragraph{Spans: typeset.Plain(line)})
	if t := c.settings(s.Settings); len(t.Rows) > 0 {
		body = append(body, t)
	}
	for _, m := range []message.Message{s.TestPiece, s.Device} {
		if !m.IsZero() {
			body = append(body, typeset.Paragraph{Spans: typeset.Plain(c.speech.Say(m))})
		}
	}
	c.add(typeset.Box{Frame: true, Blocks: append([]typeset.Block{c.caution(s.Cautions)}, body...)})
	if len(s.Placements) > 0 {
		if pic, ok := drawing.Setup(c.plan, s, s.Placements[0], c.room.Width*0.62, 52, c.speech); ok {
			c.add(typeset.Figure{Drawing: pic, Caption: typeset.Plain(c.say("booklet.setup-caption", message.Text("mark", s.Placements[0].Mark)))})
		}
		c.add(c.placements(s))
	}
	for _, sum := range s.Sums {
		c.add(typeset.Paragraph{Spans: typeset.Plain(c.sum(sum)), Manner: typeset.Small})
	}
}

func (c *composer) settings(list []plan.Setting) typeset.Table {
	t := typeset.Table{Columns: []typeset.Column{{Share: 2}, {Share: 1, Align: page.End}, {Share: 2}}}
	for _, s := range list {
		passes := ""
		if len(s.Passes) > 1 {
			var steps []string
			for _, f := range s.Passes {
				steps = append(steps, c.speech.Length(f.Nm))
			}
			passes = c.say("booklet.passes", message.Count("n", len(s.Passes)), message.Text("depths", strings.Join(steps, " · ")))
		}
		t.Rows = append(t.Rows, typeset.Row{Cells: []typeset.Cell{
			{Spans: typeset.Plain(c.say("setting." + s.Word)), Header: true},
			{Spans: typeset.Strong(c.speech.Length(s.Figure.Nm))}, {Spans: typeset.Plain(passes)},
		}})
	}
	return t
}

// placements lists how the work is offered, one row for each fence setting.
func (c *composer) placements(s plan.Setup) typeset.Table {
	t := typeset.Table{Full: true, Manner: typeset.Small, Columns: []typeset.Column{{Share: 0.5}, {Share: 0.8}, {Share: 2.2}, {Share: 2.6}, {Share: 2.6}}}
	for _, key := range []string{"column.n", "column.mark", "column.set", "column.offer", "column.note"} {
		t.Header = append(t.Header, typeset.Cell{Spans: typeset.Strong(c.say(key))})
	}
	for _, pm := range s.Placements {
		var set []string
		for _, st := range pm.Settings {
			set = append(set, c.say("setting."+st.Word)+" "+c.speech.Length(st.Figure.Nm))
		}
		offer := ""
		if pm.Down != "" && pm.Fence != "" {
			offer = c.say("booklet.offer", message.Word("down", "side."+string(pm.Down)), message.Word("fence", "side."+string(pm.Fence)))
		}
		if pm.Turn {
			offer += " " + c.say("booklet.turn")
		}
		var notes []string
		for _, m := range []message.Message{pm.Feed, pm.Note} {
			if !m.IsZero() {
				notes = append(notes, c.speech.Say(m))
			}
		}
		t.Rows = append(t.Rows, typeset.Row{Cells: typeset.Cells(fmt.Sprint(pm.N), fmt.Sprintf("%s × %d", pm.Mark, pm.Pieces), strings.Join(set, "\n"), strings.TrimSpace(offer), strings.Join(notes, " "))})
	}
	return t
}

func (c *composer) sum(s plan.Sum) string {
	var terms []string
	for _, t := range s.Terms {
		sign := "+ "
		nm := t.Figure.Nm
		if nm < 0 {
			sign, nm = "− ", -nm
		}
		if len(terms) == 0 && sign == "+ " {
			sign = ""
		}
		terms = append(terms, sign+c.say("term."+t.Word)+" "+c.speech.Length(nm))
	}
	return c.speech.Say(s.Title) + ": " + strings.Join(terms, " ") + " = " + c.speech.Length(s.Total.Nm)
}

// steps sets the numbered sequence, chapter by chapter.
func (c *composer) steps() {
	if len(c.plan.Steps) == 0 {
		return
	}
	c.heading(1, c.say("booklet.steps"), "steps", true)
	chapter := ""
	var entries []typeset.Entry
	flush := func() {
		if len(entries) > 0 {
			c.add(typeset.List{Entries: entries})
			entries = nil
		}
	}
	for _, s := range c.plan.Steps {
		if title := c.speech.Say(s.Chapter); title != chapter {
			flush()
			chapter = title
			c.heading(2, title, "", false)
		}
		entries = append(entries, c.step(s))
	}
	flush()
}

func (c *composer) step(s plan.Step) typeset.Entry {
	text := s.Author
	if text == "" {
		text = c.speech.Say(s.Text)
	}
	spans := typeset.Plain("☐ " + text)
	for _, id := range s.Setups {
		for i, card := range c.plan.Setups {
			if card.ID == id {
				spans = append(spans, typeset.Span{Text: " " + c.say("booklet.see-card", message.Count("n", i+1)), Bold: true, Link: "setup-" + id})
			}
		}
	}
	e := typeset.Entry{Label: fmt.Sprintf("%d", s.N), Address: s.ID, Anchor: "step-" + s.ID, Together: true}
	e.Blocks = append(e.Blocks, typeset.Paragraph{Spans: spans})
	for _, m := range s.More {
		e.Blocks = append(e.Blocks, typeset.Paragraph{Spans: typeset.Plain(c.speech.Say(m))})
	}
	if s.Wait > 0 {
		e.Blocks = append(e.Blocks, typeset.Paragraph{Spans: typeset.Strong(c.say("booklet.wait", message.Minutes("time", s.Wait)))})
	}
	if len(s.Cautions) > 0 {
		e.Blocks = append(e.Blocks, c.caution(s.Cautions))
	}
	return e
}

func (c *composer) measures() {
	if len(c.plan.Measures) == 0 {
		return
	}
	c.heading(1, c.say("booklet.measures"), "measures", true)
	c.text("booklet.measures-intro")
	for _, m := range c.plan.Measures {
		c.heading(2, m.Label, "measure-"+string(m.Address), false)
		if len(m.Marks) > 0 {
			c.text("booklet.measure-before", message.List("marks", texts(m.Marks)...))
		}
		c.table(table.Readings(m, c.speech), true)
	}
}

// findings lists what the checks found, errors first; passes are counted only.
func (c *composer) findings() {
	c.heading(1, c.say("booklet.findings"), "findings", true)
	passed := 0
	for _, status := range []plan.Status{plan.Fail, plan.Errored, plan.Unknown} {
		for _, f := range c.plan.Findings {
			if f.Status != status {
				continue
			}
			sign := map[plan.Status]string{plan.Fail: "▲", plan.Errored: "■", plan.Unknown: "●"}[status]
			spans := typeset.Strong(sign + " " + c.say("status."+string(status)) + ": ")
			spans = append(spans, typeset.Plain(c.speech.Say(f.Text))...)
			c.add(typeset.Paragraph{Spans: spans})
		}
	}
	for _, f := range c.plan.Findings {
		if f.Status == plan.Pass {
			passed++
		}
	}
	c.text("booklet.passed", message.Count("checks", passed))
	if len(c.plan.Clearances) > 0 {
		c.heading(2, c.say("booklet.seasons"), "seasons", false)
		c.table(table.Seasons(c.plan, c.speech), true)
	}
}
