package booklet

import (
	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/output/drawing"
	"scantling/internal/output/table"
	"scantling/internal/page"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/typeset"
	"scantling/internal/unit"
)

// cover shows the piece, its size, and what the booklet holds.
func (c *composer) cover() {
	p := c.plan
	c.add(typeset.Heading{Level: 1, Text: c.speech.Own(p.Piece.Name), Anchor: "cover", Unlisted: true})
	if p.Piece.About != "" {
		c.add(typeset.Paragraph{Spans: typeset.Plain(c.speech.Own(p.Piece.About)), Manner: typeset.Lead})
	}
	deep := p.Overall()[piece.Back].Millimetres()
	view := drawing.Whole(p, c.solids, drawing.WholeOptions{Look: drawing.LookIsometric, Spread: deep * 0.85, Stairs: true},
		c.room.Width*0.92, c.room.Height*0.5, c.speech)
	c.add(typeset.Space{Height: 4}, typeset.Figure{Drawing: view, Align: page.Middle}, typeset.Space{Height: 6})
	size := p.Overall()
	left := []typeset.Block{typeset.Paragraph{Spans: typeset.Strong(c.say("booklet.overall",
		message.Length("wide", size[piece.Right]), message.Length("deep", size[piece.Back]), message.Length("high", size[piece.Up])))}}
	if len(p.Piece.Inputs) > 0 {
		left = append(left, c.choices())
	}
	left = append(left, c.small(c.say("booklet.units", message.Word("units", c.units()))))
	c.add(typeset.Beside{Share: 0.52, Left: left, Right: []typeset.Block{typeset.Contents{Levels: 1}}})
}

// choices lists the inputs that the plan was made for.
func (c *composer) choices() typeset.Block {
	t := typeset.Table{Manner: c.fine(), Full: true, Columns: []typeset.Column{{Share: 2}, {Share: 1, Align: page.End}},
		Header: []typeset.Cell{{Spans: typeset.Strong(c.say("booklet.made-for")), Columns: 2}}}
	for _, in := range c.plan.Piece.Inputs {
		t.Rows = append(t.Rows, typeset.Row{Cells: []typeset.Cell{
			{Spans: typeset.Plain(c.speech.Own(in.Label)), Header: true}, {Spans: typeset.Strong(c.value(in.Value))},
		}})
	}
	return t
}

// value says an input's value.
func (c *composer) value(v unit.Value) string {
	if l, ok := v.Length(); ok {
		return c.speech.Length(l)
	}
	if n, ok := v.Int(); ok {
		return c.say("number.whole", message.Count("n", int(n)))
	}
	return c.speech.Own(v.Text())
}

// handsClear is how far hands stay from a cutter: 3 in (common practice, no source),
// for readers of millimetres the next round figure.
func (c *composer) handsClear() unit.Length {
	if c.options.Show.System == unit.Metric {
		return 80 * unit.Millimetre
	}
	return 3 * unit.Inch
}

// before sets the general cautions, once, and how to read what follows.
func (c *composer) before() {
	c.heading(1, "booklet.before-you-start", "cautions", true)
	box := typeset.Box{Title: "▲ " + c.say("booklet.caution"), Bar: page.Warn}
	for _, key := range []string{"caution.machine", "caution.person", "caution.hands", "caution.dust", "caution.screen", "caution.manual"} {
		box.Blocks = append(box.Blocks, c.paragraph(key, message.LengthRounded("clear", c.handsClear(), unit.Up)))
	}
	c.add(box)
	c.stillOpen()
	c.heading(2, "booklet.how-to-read", "how", false)
	var entries []typeset.Entry
	for _, key := range []string{"marks", "families", "sides", "signs", "stages", "cards", "sums", "fit"} {
		var args []message.Arg
		if key == "families" {
			if args = c.familyExample(); args == nil {
				continue
			}
		}
		entries = append(entries, typeset.Entry{Label: "–", Blocks: []typeset.Block{typeset.Paragraph{Spans: append(
			typeset.Strong(c.say("booklet.read-"+key+"-head")+" "), typeset.Plain(c.say("booklet.read-"+key, args...))...)}}})
	}
	c.add(typeset.List{Entries: entries})
}

// mostOpen is how many findings stand in front; the rest is for the chapter.
const mostOpen = 6

// stillOpen repeats in front what was found not right or could not be judged, for who
// reads of it after the last step has cut already.
func (c *composer) stillOpen() {
	var entries []typeset.Entry
	more := 0
	for _, f := range c.plan.Findings {
		if f.Status == plan.Pass || f.Word() == "status.note" {
			continue
		}
		if len(entries) == mostOpen {
			more++
			continue
		}
		entries = append(entries, typeset.Entry{Label: signs[f.Status], Blocks: []typeset.Block{typeset.Paragraph{Spans: c.finding(f)}}, Together: true})
	}
	if len(entries) == 0 {
		return
	}
	c.heading(2, "booklet.still-open", "still-open", false)
	c.text("booklet.still-open-text")
	c.add(typeset.List{Entries: entries})
	if more > 0 {
		c.text("booklet.still-open-more", message.Count("n", more))
	}
}

// familyExample finds a mark with points to explain such marks by: the last of
// the first family that has them; nil if there are none.
func (c *composer) familyExample() []message.Arg {
	var found *plan.PartRow
	for i := range c.plan.Parts {
		r := &c.plan.Parts[i]
		f := c.names.Family(r.Mark)
		if f == r.Mark || len(r.Members) == 0 || found != nil && c.names.Family(found.Mark) != f {
			continue
		}
		found = r
	}
	if found == nil {
		return nil
	}
	return []message.Arg{message.Text("mark", found.Mark), message.Text("family", c.names.Family(found.Mark)), message.Text("place", c.names.Address(found.Members[0]))}
}

// views shows the piece from its sides, cut through, and taken apart.
func (c *composer) views() {
	p := c.plan
	if len(p.Piece.Parts) == 0 {
		return
	}
	c.heading(1, "booklet.views", "views", true)
	c.add(c.threeViews())
	if at, ok := c.sectionPlace(); ok {
		pic, scale := drawing.Section(p, c.solids, at, c.room.Width, c.room.Height*0.4, c.speech)
		c.add(typeset.Figure{Drawing: pic, Caption: typeset.Plain(c.say("booklet.section-caption", message.Length("at", at), message.Text("scale", scale.String())))})
	}
	if joints := table.Joints(p, c.speech); len(joints.Rows) > 0 {
		c.add(typeset.Together{Blocks: []typeset.Block{heading(2, c.say("booklet.joints"), "joints", false), c.setTable(joints)}})
	}
	for _, g := range c.groupsApart() {
		pic := drawing.Whole(p, c.solids, drawing.WholeOptions{Look: drawing.LookIsometric, Group: g, Gap: pulledApart, Apart: 0.7, Marks: true}, c.room.Width*0.9, c.room.Height*0.45, c.speech)
		c.add(typeset.Figure{Drawing: pic, Align: page.Middle, Anchor: "apart-" + string(g), Caption: typeset.Plain(c.say("booklet.apart-caption", message.Text("group", c.names.Address(g))))})
	}
}

// threeViews sets front and side, at one scale, side by side.
func (c *composer) threeViews() typeset.Block {
	size := c.plan.Overall()
	both := size[piece.Right].Millimetres() + size[piece.Back].Millimetres()
	share := size[piece.Right].Millimetres() / both
	share = min(max(share, 0.2), 0.8)
	room := c.room.Width - 6
	views := [2]typeset.Figure{}
	for i, v := range []struct {
		look    drawing.Look
		caption string
		share   float64
		across  unit.Length
	}{{drawing.LookFront, "booklet.view-front", share, size[piece.Right]}, {drawing.LookRight, "booklet.view-right", 1 - share, size[piece.Back]}} {
		// Overall sizes stand beside the views; 18 mm are kept for them.
		f := min((room-42)/both, (float64(c.room.Height*0.36)-12)/size[piece.Up].Millimetres())
		pic := drawing.Elevation(c.plan, c.solids, v.look, f, c.speech)
		views[i] = typeset.Figure{Drawing: pic, Caption: typeset.Plain(c.say(v.caption))}
	}
	return typeset.Beside{Share: share, Left: []typeset.Block{views[0]}, Right: []typeset.Block{views[1]}}
}

// sectionPlace finds where a section shows most: through the middle of the first
// part that carries a series of cuts, else through the middle of the piece.
func (c *composer) sectionPlace() (unit.Length, bool) {
	p := c.plan.Piece
	for _, s := range p.Series {
		for _, part := range p.Parts {
			if part.Address == s.Part {
				e := part.Extent[piece.Right]
				return (e.Low.Nm + e.High.Nm) / 2, true
			}
		}
	}
	return c.plan.Overall()[piece.Right] / 2, len(p.Parts) > 0
}

// pulledApart is how far parts are drawn from each other in views of a group taken
// apart, in shares of its greatest size.
const pulledApart = 0.12

// groupsApart lists one group of each declaration that is put together from
// several parts, with what stands in it.
func (c *composer) groupsApart() []address.Address {
	var out []address.Address
	seen := map[string]bool{}
	for _, g := range c.plan.Piece.Groups {
		parts, key := 0, ""
		for _, r := range c.plan.Parts {
			for _, m := range r.Members {
				if part, ok := c.part(m); ok && part.Group == g.Address {
					parts++
					key, _ = c.names.Group(r)
				}
			}
		}
		if parts > 1 && !seen[key] {
			seen[key] = true
			out = append(out, g.Address)
		}
	}
	return out
}

func (c *composer) part(a address.Address) (piece.Part, bool) {
	for _, p := range c.plan.Piece.Parts {
		if p.Address == a {
			return p, true
		}
	}
	return piece.Part{}, false
}
