package booklet

import (
	"scantling/internal/message"
	"scantling/internal/output/drawing"
	"scantling/internal/output/table"
	"scantling/internal/page"
	"scantling/internal/plan"
	"scantling/internal/typeset"
	"scantling/internal/unit"
)

// Speech puts messages and lengths into the reader's words and units.
type Speech interface {
	Say(message.Message) string
	Length(unit.Length) string
}

// Options choose the paper and the manner of drawing.
type Options struct {
	Paper      page.Paper
	Language   string
	ThirdAngle bool
}

// Compose makes the booklet of a plan.
func Compose(p *plan.Plan, solids drawing.Solids, speech Speech, o Options) (page.Document, []typeset.Note) {
	settings := typeset.Default(o.Paper)
	settings.Title = p.Piece.Name
	settings.Language = o.Language
	c := composer{plan: p, solids: solids, speech: speech, options: o, room: settings.Column()}
	settings.Running = typeset.Running{
		HeadLeft: p.Piece.Name, HeadRight: "{part}",
		FootLeft: c.say("booklet.foot", message.Text("shop", p.Shop.Name), message.Word("units", "units."+p.Piece.Edition)), FootRight: "{page} / {pages}",
		Skip: 1,
	}
	c.cover()
	c.cautions()
	c.buying()
	c.list()
	c.diagrams()
	c.drawings()
	c.cards()
	c.steps()
	c.measures()
	c.findings()
	doc, notes := typeset.Set(settings, c.blocks)
	doc.Subject = p.Piece.About
	return doc, notes
}

type composer struct {
	plan    *plan.Plan
	solids  drawing.Solids
	speech  Speech
	options Options
	room    page.Size
	blocks  []typeset.Block
}

func (c *composer) add(blocks ...typeset.Block) { c.blocks = append(c.blocks, blocks...) }

func (c *composer) say(key string, args ...message.Arg) string {
	return c.speech.Say(message.New(key, args...))
}

func (c *composer) heading(level int, text, anchor string, newPage bool) {
	c.add(typeset.Heading{Level: level, Text: text, Anchor: anchor, NewPage: newPage})
}

func (c *composer) text(key string, args ...message.Arg) {
	c.add(typeset.Paragraph{Spans: typeset.Plain(c.say(key, args...))})
}

// table sets a table; an empty one says nothing.
func (c *composer) table(t table.Table, full bool) {
	if len(t.Rows) > 0 {
		c.add(setTable(t, full))
	}
}

func setTable(t table.Table, full bool) typeset.Table {
	out := typeset.Table{Full: full, Manner: typeset.Small}
	for _, col := range t.Columns {
		align := page.Start
		if col.Number {
			align = page.End
		}
		out.Columns = append(out.Columns, typeset.Column{Share: col.Weight, Align: align})
		out.Header = append(out.Header, typeset.Cell{Spans: typeset.Strong(col.Heading)})
	}
	for _, row := range t.Rows {
		cells := typeset.Cells(row...)
		if len(cells) > 0 {
			cells[0].Header = true
		}
		out.Rows = append(out.Rows, typeset.Row{Cells: cells})
	}
	return out
}

// cover shows the piece, its size, and what the booklet holds.
func (c *composer) cover() {
	p := c.plan
	c.heading(1, p.Piece.Name, "cover", false)
	if p.Piece.About != "" {
		c.add(typeset.Paragraph{Spans: typeset.Plain(p.Piece.About), Manner: typeset.Lead})
	}
	view := drawing.Whole(p, c.solids, drawing.WholeOptions{Look: drawing.LookIsometric, Marks: true}, c.room.Width, c.room.Height*0.55, c.speech)
	c.add(typeset.Figure{Drawing: view, Caption: typeset.Plain(c.say("booklet.cover-caption")), Align: page.Middle})
	size := p.Overall()
	c.add(typeset.Paragraph{Spans: typeset.Strong(c.say("booklet.overall",
		message.Length("wide", size[0]), message.Length("deep", size[1]), message.Length("high", size[2])))})
	var chosen []string
	for _, in := range p.Piece.Inputs {
		chosen = append(chosen, in.Label+": "+c.value(in.Value))
	}
	if len(chosen) > 0 {
		c.text("booklet.inputs", message.List("inputs", texts(chosen)...))
	}
	c.text("booklet.units", message.Word("units", "units."+p.Piece.Edition))
	c.add(typeset.Contents{Levels: 1})
}

func texts(list []string) []message.Arg {
	var out []message.Arg
	for _, s := range list {
		out = append(out, message.Text("", s))
	}
	return out
}

// value says an input's value.
func (c *composer) value(v unit.Value) string {
	if l, ok := v.Length(); ok {
		return c.speech.Length(l)
	}
	if n, ok := v.Int(); ok {
		return c.say("number.whole", message.Count("n", int(n)))
	}
	return v.Text()
}

func (c *composer) cautions() {
	c.heading(1, c.say("booklet.before-you-start"), "cautions", true)
	c.add(c.caution([]message.Message{
		message.New("caution.machine"), message.New("caution.person"), message.New("caution.guards"),
		message.New("caution.dust"), message.New("caution.screen"), message.New("caution.manual"),
	}))
	c.heading(2, c.say("booklet.how-to-read"), "how", false)
	for _, key := range []string{"booklet.read-marks", "booklet.read-sides", "booklet.read-stages", "booklet.read-cards", "booklet.read-fit"} {
		c.text(key)
	}
}

// caution sets messages apart under the sign of caution.
func (c *composer) caution(list []message.Message) typeset.Block {
	box := typeset.Box{Title: "▲ " + c.say("booklet.caution"), Bar: page.Warn}
	for _, m := range list {
		box.Blocks = append(box.Blocks, typeset.Paragraph{Spans: typeset.Plain(c.speech.Say(m)), Manner: typeset.Small})
	}
	return box
}

func (c *composer) buying() {
	c.heading(1, c.say("booklet.buying"), "buying", true)
	c.table(table.Buying(c.plan, c.speech), true)
	cost := c.plan.Cost
	c.text("booklet.cost", message.Money("total", cost.Total), message.Money("timber", cost.Timber), message.Money("sheet", cost.Sheet), message.Money("hardware", cost.Hardware))
	if len(cost.Unpriced) > 0 {
		c.text("booklet.unpriced", message.List("stock", texts(cost.Unpriced)...))
	}
	if len(c.plan.Held) > 0 {
		c.heading(2, c.say("booklet.holds"), "holds", false)
		c.table(table.Held(c.plan, c.speech), true)
	}
}

// list sets the staged list: finished sizes, and what each is made from.
func (c *composer) list() {
	c.heading(1, c.say("booklet.list"), "list", true)
	c.text("booklet.list-intro")
	for _, s := range c.plan.Stages {
		c.heading(2, c.say("booklet.stage", message.Text("n", s.ID))+" "+c.speech.Say(s.Title), "stage-"+s.ID, false)
		c.table(table.Parts(c.plan, s.ID, c.speech), true)
		c.heading(3, c.say("booklet.made-from"), "", false)
		c.table(table.Blanks(c.plan, s.ID, c.speech), true)
	}
}

func (c *composer) diagrams() {
	if len(c.plan.Diagrams) == 0 {
		return
	}
	c.heading(1, c.say("booklet.diagrams"), "diagrams", true)
	c.text("booklet.diagrams-intro")
	stock := ""
	for _, d := range c.plan.Diagrams {
		if d.Stock != stock && !d.Bound.IsZero() {
			stock = d.Stock
			c.add(typeset.Paragraph{Spans: typeset.Plain(c.speech.Say(d.Bound))})
		}
		pic := drawing.Diagram(d, c.room.Width, c.room.Height*0.42, c.speech)
		w := d.Waste
		caption := c.say("booklet.diagram-caption", message.Text("id", d.ID), message.Length("thickness", d.Thickness.Nm),
			message.Percent("parts", share(w.Parts, w.Whole)), message.Percent("kerf", share(w.Kerf, w.Whole)), message.Percent("trim", share(w.Trim, w.Whole)),
			message.Percent("remnant", share(w.Remnant, w.Whole)), message.Percent("rest", share(w.Rest, w.Whole)))
		c.add(typeset.Figure{Drawing: pic, Caption: typeset.Plain(caption), Address: d.ID})
	}
}

func share(part, whole float64) float64 {
	if whole == 0 {
		return 0
	}
	return 100 * part / whole
}
