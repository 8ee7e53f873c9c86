package booklet

import (
	"fmt"
	"strings"

	"scantling/internal/message"
	"scantling/internal/output/drawing"
	"scantling/internal/output/table"
	"scantling/internal/plan"
	"scantling/internal/typeset"
)

// diagrams sets the cutting diagrams; equal ones once, with their count.
func (c *composer) diagrams() {
	if len(c.plan.Diagrams) == 0 {
		return
	}
	// The first diagram stays with the chapter's title.
	blocks := []typeset.Block{heading(1, c.say("booklet.diagrams"), "diagrams", false), c.paragraph("booklet.diagrams-intro")}
	stock := ""
	for _, g := range equalDiagrams(c.plan.Diagrams) {
		d := g[0]
		if d.Stock != stock {
			stock = d.Stock
			blocks = append(blocks, heading(2, c.say("booklet.diagram-head", message.Text("stock", d.Label), message.Text("thickness", c.speech.Figure(d.Thickness.Nm))), "", false))
			if !d.Bound.IsZero() {
				blocks = append(blocks, c.small(c.names.Phrase(d.Bound)))
			}
		}
		pic := drawing.Diagram(d, c.room.Width, c.room.Height*0.34, c.speech)
		var ids []string
		count := 0
		for _, same := range g {
			ids = append(ids, same.ID)
			count += max(1, same.Count)
		}
		w := d.Waste
		key := "booklet.diagram-caption"
		if w.Defects > 0 {
			key = "booklet.diagram-caption-defects"
		}
		caption := c.say(key, message.Text("id", strings.Join(ids, ", ")), message.Count("n", count),
			message.Percent("parts", share(w.Parts, w.Whole)), message.Percent("kerf", share(w.Kerf, w.Whole)), message.Percent("trim", share(w.Trim, w.Whole)),
			message.Percent("remnant", share(w.Remnant, w.Whole)), message.Percent("rest", share(w.Rest, w.Whole)),
			message.Percent("defects", share(w.Defects, w.Whole)))
		c.add(typeset.Together{Blocks: append(blocks, typeset.Figure{Drawing: pic, Caption: typeset.Plain(caption), Address: d.ID, Anchor: "diagram-" + d.ID})})
		blocks = nil
	}
}

// equalDiagrams gathers diagrams that are cut alike: the same stock, the same
// cuts, the same marks at the same places.
func equalDiagrams(list []plan.Diagram) [][]plan.Diagram {
	var out [][]plan.Diagram
	at := map[string]int{}
	for _, d := range list {
		key := d.Stock
		for _, p := range d.Pieces {
			key += fmt.Sprint("\n", p.Mark, p.Rect.Along.Nm, p.Rect.Across.Nm, p.Rect.Length.Nm, p.Rect.Width.Nm)
		}
		for _, cut := range d.Cuts {
			key += fmt.Sprint("\n", cut.Kind, cut.In.Along.Nm, cut.In.Across.Nm, cut.At.Nm)
		}
		if i, ok := at[key]; ok {
			out[i] = append(out[i], d)
			continue
		}
		at[key] = len(out)
		out = append(out, []plan.Diagram{d})
	}
	return out
}

func share(part, whole float64) float64 {
	if whole == 0 {
		return 0
	}
	return 100 * part / whole
}

// Shares of a page that a part takes at most: with its table, drawing and title.
const (
	rowHigh      = 5.6 // of a table, about
	titleHigh    = 36  // heading, title block, the line of sides and the table's head
	introHigh    = 26  // what stands over the first part: the chapter's heading and its introduction
	leastFigured = 4   // the smallest scale for half a page is 1 : 4
	leastPlain   = 5   // and of a part with a cut or two 1 : 5
)

// drawings sets one drawing and one table of cuts for each unique part, two to a
// page where the scale allows it.
func (c *composer) drawings() {
	c.heading(1, "booklet.parts", "parts", true)
	c.text("booklet.parts-intro")
	over := introHigh
	for _, row := range c.plan.Parts {
		if len(row.Members) == 0 {
			continue
		}
		cuts := table.Cuts(c.plan, row, c.speech)
		below := titleHigh + over
		over = 0
		if len(cuts.Rows) > 0 {
			below += int(rowHigh * float64(len(cuts.Rows)))
		}
		o := drawing.PartOptions{ThirdAngle: c.options.ThirdAngle}
		half := float64(c.room.Height*0.5) - float64(below)
		pic, scale := drawing.Part(c.plan, row, c.solids, o, c.room.Width, max(half, 45), c.speech)
		least := leastFigured
		if len(cuts.Rows) <= 2 {
			least = leastPlain
		}
		if scale.Down > least || half < 45 {
			pic, scale = drawing.Part(c.plan, row, c.solids, o, c.room.Width, float64(c.room.Height*0.94)-float64(below), c.speech)
		}
		name := c.say("booklet.part-title", message.Text("mark", row.Mark), message.Text("name", c.names.Row(row)), message.Count("quantity", row.Quantity()))
		blocks := []typeset.Block{
			typeset.Heading{Level: 2, Text: name, Anchor: "part-" + row.Mark, Address: string(row.Members[0]), Unlisted: true},
			typeset.Figure{Drawing: pic, Address: string(row.Members[0])},
			c.small(c.sides(row)),
			typeset.Figure{Drawing: drawing.TitleBlock(c.plan, row, scale, c.options.ThirdAngle, c.options.Revision, c.room.Width, c.speech), Address: string(row.Members[0])},
		}
		if len(cuts.Rows) > 0 {
			blocks = append(blocks, c.setTable(cuts))
		}
		c.add(typeset.Together{Blocks: blocks})
	}
}
