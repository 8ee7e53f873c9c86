package table

import (
	"strconv"

	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Supplies lists what is known of the glues and finishes that the piece is made
// with: every figure with the range that sources give, its source and its status.
func Supplies(p *plan.Plan, s Speech) Table {
	b := newTable(p, s, "table.supplies").
		column("column.figure", text, 1.3).column("column.value", text, 0.9).column("column.range", text, 1.2).
		column("column.source", text, 2.4).column("column.status", text, 1.2)
	b.table.Note = ""
	for _, x := range p.Supplies {
		title := b.say("supply."+x.Kind, message.Text("name", x.Name))
		if x.Water != "" {
			title += " · " + b.say("supply.water", message.Text("class", x.Water))
		}
		if x.Panels {
			title += " · " + b.say("supply.panels")
		}
		b.group(title)
		if len(x.Figures) == 0 {
			b.row(b.say("supply.unknown"), "–", "–", "–", "–")
		}
		for _, f := range x.Figures {
			span := "–"
			if low, high := b.bare(f, f.Low), b.bare(f, f.High); low != high {
				span = b.say("supply.range", message.Text("low", low), message.Text("high", b.quantity(f, f.High)))
			}
			source := f.Source.Title
			if source == "" {
				source = "–"
			}
			b.row(b.say("supply.word."+f.Word), b.quantity(f, f.Value), span, s.Own(source), b.say("figure-status."+string(f.Source.Status)))
		}
	}
	return b.table
}

// quantity writes a value of a supply in its unit.
func (b *builder) quantity(f plan.SupplyFigure, v unit.Value) string {
	if f.Unit == "min" {
		return b.bare(f, v)
	}
	_, in := inUnit(f, v)
	return b.say("supply.value", message.Text("value", b.bare(f, v)), message.Text("unit", in))
}

// bare writes it without its unit; a time has its own.
func (b *builder) bare(f plan.SupplyFigure, v unit.Value) string {
	if f.Unit == "min" {
		return b.say("supply.time", message.Minutes("time", int(v.Float())))
	}
	x, _ := inUnit(f, v)
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// inUnit rounds a value to what can be said of it, and gives its unit: less than a
// litre in millilitres; estimates of how much to two figures, all else to three.
func inUnit(f plan.SupplyFigure, v unit.Value) (float64, string) {
	x, in, figures := v.Float(), f.Unit, 3
	if in == "l" {
		figures = 2
		if f.High.Float() < 1 {
			x, in = x*1000, "ml"
		}
	}
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', figures, 64), 64)
	if err != nil {
		rounded = x
	}
	return rounded, in
}
