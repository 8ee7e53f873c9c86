package booklet

import (
	"scantling/internal/message"
	"scantling/internal/output/drawing"
	"scantling/internal/output/naming"
	"scantling/internal/output/table"
	"scantling/internal/output/tape"
	"scantling/internal/page"
	"scantling/internal/plan"
	"scantling/internal/typeset"
	"scantling/internal/unit"
)

// Speech puts messages, lengths and names into the reader's words and units.
type Speech interface {
	Say(message.Message) string
	Length(unit.Length) string
	Figure(unit.Length) string
	Own(text string) string
}

// Options choose the paper and the manner of drawing.
type Options struct {
	Paper      page.Paper
	Language   string
	ThirdAngle bool
	// Show is how lengths are shown, so that printed sums add up as printed.
	Show unit.Show
	// Second speaks the second system of an edition in both; nil without one.
	Second Speech
	// Revision is the letter of this issue; empty is the first, "A".
	Revision string
}

// Compose makes the booklet of a plan.
func Compose(p *plan.Plan, solids drawing.Solids, speech Speech, o Options) (page.Document, []typeset.Note) {
	if o.Revision == "" {
		o.Revision = "A"
	}
	settings := Settings(o.Paper)
	settings.Title = p.Piece.Name
	settings.Language = o.Language
	c := composer{plan: p, solids: solids, speech: speech, options: o, room: settings.Column(), names: naming.Of(p, speech), tape: tape.Of(p, p.Units())}
	settings.Running = typeset.Running{
		HeadLeft: speech.Own(p.Piece.Name), HeadRight: "{part}",
		FootLeft: c.say("booklet.foot", message.Text("shop", p.Shop.Name), message.Word("units", c.units()), message.Text("revision", o.Revision)), FootRight: "{page} / {pages}",
		Skip: 1,
	}
	for _, chapter := range []func(){
		c.cover, c.before, c.views, c.buying, c.list, c.sums, c.second, c.diagrams, c.drawings, c.cards, c.steps, c.measures, c.findings, c.handOver,
	} {
		chapter()
	}
	doc, notes := typeset.Set(settings, c.blocks)
	doc.Subject = p.Piece.About
	return doc, notes
}

// Settings are the margins and type that the booklet is set in.
func Settings(p page.Paper) typeset.Settings {
	s := typeset.Default(p)
	s.Size = page.Pt(9.6)
	s.Margins = page.Margins{Left: 18, Top: 19, Right: 16, Bottom: 18}
	return s
}

type composer struct {
	plan    *plan.Plan
	solids  drawing.Solids
	speech  Speech
	options Options
	names   *naming.Names
	tape    *tape.Tape
	room    page.Size
	blocks  []typeset.Block
	// cautioned gives the step at which a caution was printed in full.
	cautioned map[string]int
}

func (c *composer) add(blocks ...typeset.Block) { c.blocks = append(c.blocks, blocks...) }

func (c *composer) say(key string, args ...message.Arg) string {
	return c.speech.Say(message.New(key, args...))
}

// units is the key of the unit that figures are in.
func (c *composer) units() string {
	return "units." + string(c.plan.Units())
}

func heading(level int, text, anchor string, newPage bool) typeset.Heading {
	return typeset.Heading{Level: level, Text: text, Anchor: anchor, NewPage: newPage}
}

func (c *composer) heading(level int, key, anchor string, newPage bool) {
	c.add(heading(level, c.say(key), anchor, newPage))
}

func (c *composer) paragraph(key string, args ...message.Arg) typeset.Block {
	return typeset.Paragraph{Spans: typeset.Plain(c.say(key, args...))}
}

func (c *composer) text(key string, args ...message.Arg) { c.add(c.paragraph(key, args...)) }

func (c *composer) small(text string) typeset.Block {
	return typeset.Paragraph{Spans: typeset.Plain(text), Manner: c.fine()}
}

// fine is the manner of what is set smaller; the digits of fractions of an inch
// are small already, so there it is that of the body.
func (c *composer) fine() typeset.Manner {
	if c.plan.Units() == unit.Inches {
		return typeset.Body
	}
	return typeset.Small
}

// table sets a table; an empty one says nothing.
func (c *composer) table(t table.Table) {
	if len(t.Rows) > 0 {
		c.add(c.setTable(t))
	}
}

// setWidths sets a table in a narrow room, the widths of its columns fixed by
// their weights.
func (c *composer) setWidths(t table.Table, room float64) typeset.Table {
	out := c.setTable(t)
	out.Manner = typeset.Small
	sum := 0.0
	for _, col := range t.Columns {
		sum += col.Weight
	}
	for i, col := range t.Columns {
		out.Columns[i].Share, out.Columns[i].Width = 0, float64((room-0.01)*(col.Weight/sum))
	}
	return out
}

// setTable sets a table over the whole width, its groups as rows of their own.
func (c *composer) setTable(t table.Table) typeset.Table {
	out := typeset.Table{Full: true, Manner: c.fine()}
	for _, col := range t.Columns {
		align := page.Start
		if col.Number {
			align = page.End
		}
		out.Columns = append(out.Columns, typeset.Column{Share: col.Weight, Align: align})
		out.Header = append(out.Header, typeset.Cell{Spans: typeset.Strong(col.Heading)})
	}
	for i, row := range t.Rows {
		if title, ok := t.Groups[i]; ok {
			out.Rows = append(out.Rows, typeset.Row{Group: true, Cells: []typeset.Cell{{Spans: typeset.Plain(title), Columns: len(t.Columns)}}})
		}
		cells := typeset.Cells(row...)
		if len(cells) > 0 {
			cells[0].Header = true
			cells[0].Spans = typeset.Strong(row[0])
		}
		out.Rows = append(out.Rows, typeset.Row{Cells: cells})
	}
	return out
}

func texts(list []string) []message.Arg {
	var out []message.Arg
	for _, s := range list {
		out = append(out, message.Text("", s))
	}
	return out
}
