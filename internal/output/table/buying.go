package table

import (
	"scantling/internal/message"
	"scantling/internal/output/naming"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Buying lists what must be got, as the merchant sells it, with what the plan
// needs and the rack holds. Boards are counted in cubic metres for metric
// readers, in board feet for those who read inches.
func Buying(p *plan.Plan, s Speech) Table {
	names := naming.Of(p, s)
	b := newTable(p, s, "table.buying").
		column("column.stock", text, 1.5).column("column.need", number, 0.5).column("column.have", number, 0.6).
		column("column.get", number, 0.6).column("column.measure", text, 3.4).column("column.price", number, 0.8).
		column("column.sum", number, 0.8).column("column.marks", text, 1.3)
	for _, l := range p.Buying {
		b.row(own(s, l.Label), b.count(l.Need), b.count(l.Have), b.count(l.Get), b.measure(p, l), b.money(l.Price), b.money(l.Sum), b.marks(names, l.For))
	}
	return b.table
}

// measure says what to ask the merchant for.
func (b *builder) measure(p *plan.Plan, l plan.Buy) string {
	if l.Get == 0 {
		return b.say("buying.none")
	}
	dims := [3]string{}
	for i, name := range [3]string{"length", "width", "thickness"} {
		arg, ok := l.Measure.Arg(name)
		if !ok {
			return b.say("buying.pieces", message.Count("n", l.Get))
		}
		dims[i] = b.speech.Figure(arg.Nm)
	}
	size := message.Text("size", dims[0]+" × "+dims[1]+" × "+dims[2])
	cubic, isBoard := l.Measure.Arg("cubic")
	feet, _ := l.Measure.Arg("boardfeet")
	share := float64(l.Get) / float64(max(l.Need, 1))
	switch {
	case !isBoard:
		return b.say("buying.sheets-of", message.Count("n", l.Get), size)
	case p.Units() == unit.Inches:
		return b.say("buying.boards-feet", message.Count("n", l.Get), size, message.Ratio("feet", feet.X*share))
	}
	return b.say("buying.boards-cubic", message.Count("n", l.Get), size, message.Ratio("cubic", cubic.X*share))
}

// Tools lists the machines and cutters that the set-up cards ask for, with the
// numbers of the cards.
func Tools(p *plan.Plan, s Speech) Table {
	b := newTable(p, s, "table.tools").column("column.machine", text, 1.2).column("column.with", text, 1.2).column("column.cards", text, 3)
	type key struct{ machine, cutter string }
	var order []key
	cards := map[key][]message.Arg{}
	for i, card := range p.Setups {
		k := key{card.MachineLabel, card.CutterLabel}
		if cards[k] == nil {
			order = append(order, k)
		}
		cards[k] = append(cards[k], message.Count("", i+1))
	}
	for _, k := range order {
		machine := own(s, k.machine)
		if k.machine == "hand" {
			machine = b.say("tools.hand")
		}
		b.row(machine, own(s, k.cutter), b.say("list.plain", message.List("items", cards[k]...)))
	}
	return b.table
}
