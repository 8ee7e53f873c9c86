package booklet

import (
	"slices"
	"strconv"
	"strings"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/output/drawing"
	"scantling/internal/page"
	"scantling/internal/plan"
	"scantling/internal/typeset"
)

// steps sets the numbered sequence, chapter by chapter.
func (c *composer) steps() {
	if len(c.plan.Steps) == 0 {
		return
	}
	c.heading(1, "booklet.steps", "steps", true)
	c.text("booklet.steps-intro")
	chapter := ""
	var entries []typeset.Entry
	flush := func() {
		if len(entries) > 0 {
			c.add(typeset.List{Entries: entries, Indent: 9})
			entries = nil
		}
	}
	c.cautioned = map[string]int{}
	pictured := map[address.Address]bool{}
	for i, s := range c.plan.Steps {
		if title := c.names.Phrase(s.Chapter); title != chapter {
			flush()
			chapter = title
			c.add(heading(2, title, "", false))
			if g := c.assembles(i); g != "" && !pictured[g] {
				pictured[g] = true
				pic := drawing.Whole(c.plan, c.solids, drawing.WholeOptions{Look: drawing.LookIsometric, Group: g, Gap: pulledApart, Apart: 0.6, Marks: true}, c.room.Width*0.6, c.room.Height*0.28, c.speech)
				c.add(typeset.Figure{Drawing: pic, Align: page.Middle})
			}
		}
		entries = append(entries, c.step(s))
	}
	flush()
}

// assembles returns the group that the steps of this chapter, from i on, put
// together; "" if they do something else.
func (c *composer) assembles(i int) address.Address {
	chapter := c.names.Phrase(c.plan.Steps[i].Chapter)
	for _, s := range c.plan.Steps[i:] {
		if c.names.Phrase(s.Chapter) != chapter {
			return ""
		}
		for _, id := range s.Operations {
			k := slices.IndexFunc(c.plan.Operations, func(o plan.Operation) bool { return o.ID == id && o.Kind == plan.Assemble })
			if k < 0 {
				continue
			}
			for _, w := range c.plan.Workpieces {
				if w.ID == c.plan.Operations[k].Makes && w.Group != "" {
					return c.sameGroup(w.Group)
				}
			}
		}
	}
	return ""
}

// sameGroup returns the group of that declaration that is shown taken apart.
func (c *composer) sameGroup(g address.Address) address.Address {
	for _, shown := range c.groupsApart() {
		if shown == g || shown.Last().Name == g.Last().Name && shown.Parent() == g.Parent() {
			return shown
		}
	}
	return g
}

func (c *composer) step(s plan.Step) typeset.Entry {
	text := c.speech.Own(s.Author)
	if s.Author == "" {
		text = c.names.Phrase(s.Text)
	}
	spans := []typeset.Span{{Text: "☐ " + text, Bold: true}}
	if len(s.Setups) > 0 && c.ownCautions(s.Cautions) != "" {
		spans = append(spans, typeset.Span{Text: " ▲", Bold: true, Colour: page.Warn})
	}
	for _, id := range s.Setups {
		if i := slices.IndexFunc(c.plan.Setups, func(card plan.Setup) bool { return card.ID == id }); i >= 0 {
			spans = append(spans, typeset.Span{Text: " " + c.say("booklet.see-card", message.Count("n", i+1)), Bold: true, Link: "setup-" + id})
		}
	}
	var more []string
	for _, m := range s.More {
		if len(s.Measures) > 0 && strings.HasPrefix(m.Key, "steps.reading") {
			continue // they stand on the form
		}
		more = append(more, c.names.Phrase(m))
	}
	e := typeset.Entry{Label: strconv.Itoa(s.N), Address: s.ID, Anchor: "step-" + s.ID, Together: true}
	e.Blocks = append(e.Blocks, typeset.Paragraph{Spans: spans})
	rest := typeset.Plain(strings.Join(more, " "))
	for _, a := range s.Measures {
		rest = append(rest, typeset.Span{Text: " " + c.say("booklet.see-form"), Bold: true, Link: "measure-" + string(a)})
	}
	if s.Wait > 0 {
		rest = append(rest, typeset.Span{Text: " " + c.say("booklet.wait", message.Minutes("time", s.Wait)), Bold: true})
	}
	if len(rest) > 1 || rest[0].Text != "" {
		e.Blocks = append(e.Blocks, typeset.Paragraph{Spans: rest, Manner: c.fine()})
	}
	if len(s.Setups) > 0 {
		return e // its cautions stand on the card, the sign leads to them
	}
	if line := c.cautionLine(s.Cautions); line != nil {
		text := c.ownCautions(s.Cautions)
		if n, ok := c.cautioned[text]; ok {
			line = typeset.Paragraph{Manner: c.fine(), Spans: []typeset.Span{{Text: "▲ ", Bold: true, Colour: page.Warn}, {Text: c.say("booklet.cautions-as", message.Count("n", n))}}}
		} else {
			c.cautioned[text] = s.N
		}
		e.Blocks = append(e.Blocks, line)
	}
	return e
}
