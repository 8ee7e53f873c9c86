package table

import (
	"strconv"
	"strings"

	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Speech puts messages and lengths into the reader's words and units.
type Speech interface {
	Say(message.Message) string
	Length(unit.Length) string
}

// Table is a list with a title.
type Table struct {
	Title   string
	Columns []Column
	Rows    [][]string
}

// Column is a heading and how its cells stand.
type Column struct {
	Heading string
	Number  bool // figures stand at the right
	// Weight shares out the width; 1 is usual.
	Weight float64
}

type builder struct {
	speech Speech
	table  Table
}

func newTable(s Speech, title string) *builder {
	return &builder{speech: s, table: Table{Title: s.Say(message.New(title))}}
}

func (b *builder) column(key string, number bool, weight float64) *builder {
	b.table.Columns = append(b.table.Columns, Column{b.speech.Say(message.New(key)), number, weight})
	return b
}

func (b *builder) row(cells ...string) { b.table.Rows = append(b.table.Rows, cells) }

func (b *builder) length(f plan.Figure) string { return b.speech.Length(f.Nm) }

func (b *builder) say(key string, args ...message.Arg) string {
	return b.speech.Say(message.New(key, args...))
}

// Parts lists the parts of one stage, or of all for an empty stage, with their
// finished sizes.
func Parts(p *plan.Plan, stage string, s Speech) Table {
	b := newTable(s, "table.parts").
		column("column.mark", false, 0.6).column("column.part", false, 1.6).column("column.quantity", true, 0.6).
		column("column.length", true, 1).column("column.width", true, 1).column("column.thickness", true, 0.9).
		column("column.material", false, 1.6).column("column.basis", false, 1)
	for _, r := range p.Parts {
		if stage != "" && r.Stage != stage {
			continue
		}
		b.row(r.Mark, name(r), strconv.Itoa(r.Quantity()), b.length(r.Length), b.length(r.Width), b.length(r.Thickness),
			material(r), b.say("basis."+string(r.Basis)))
	}
	return b.table
}

func name(r plan.PartRow) string {
	if r.Label != "" {
		return r.Label
	}
	return strings.ReplaceAll(r.Name, "_", " ")
}

func material(r plan.PartRow) string { return r.Species }

// Buying lists what the plan uses, what the rack has and what must be got.
func Buying(p *plan.Plan, s Speech) Table {
	b := newTable(s, "table.buying").
		column("column.stock", false, 1.8).column("column.measure", false, 2).column("column.need", true, 0.7).
		column("column.have", true, 0.7).column("column.get", true, 0.7).column("column.price", true, 0.9).column("column.sum", true, 0.9)
	for _, l := range p.Buying {
		measure := ""
		if !l.Measure.IsZero() {
			measure = s.Say(l.Measure)
		}
		b.row(l.Label, measure, strconv.Itoa(l.Need), strconv.Itoa(l.Have), strconv.Itoa(l.Get), b.money(l.Price), b.money(l.Sum))
	}
	return b.table
}

func (b *builder) money(hundredths int64) string {
	if hundredths == 0 {
		return "–"
	}
	return b.say("money.plain", message.Money("amount", hundredths))
}

// Blanks lists what the parts of a stage are made from, with allowances.
func Blanks(p *plan.Plan, stage string, s Speech) Table {
	stageOf := map[string]string{}
	for _, r := range p.Parts {
		stageOf[r.Mark] = r.Stage
	}
	b := newTable(s, "table.blanks").
		column("column.mark", false, 0.7).column("column.kind", false, 0.9).column("column.quantity", true, 0.6).
		column("column.length", true, 1).column("column.width", true, 1).column("column.stock", false, 1.4).column("column.why", false, 2.6)
	type key struct {
		mark, kind, stock string
		length, width     unit.Length
	}
	var order []key
	count, why := map[key]int{}, map[key]string{}
	for _, w := range p.Workpieces {
		switch w.Kind {
		case plan.BlankPiece, plan.StripPiece, plan.PanelPiece:
		default:
			continue
		}
		if stage != "" && stageOf[w.Mark] != stage {
			continue
		}
		k := key{w.Mark, string(w.Kind), w.Stock, w.Length.Nm, w.Width.Nm}
		if count[k] == 0 {
			order = append(order, k)
			var reasons []string
			for _, m := range w.Why {
				reasons = append(reasons, s.Say(m))
			}
			why[k] = strings.Join(reasons, " ")
		}
		count[k] += max(1, w.Count)
	}
	for _, k := range order {
		b.row(k.mark, b.say("workpiece."+k.kind), strconv.Itoa(count[k]), s.Length(k.length), s.Length(k.width), k.stock, why[k])
	}
	return b.table
}

// Held lists how each thing lies.
func Held(p *plan.Plan, s Speech) Table {
	b := newTable(s, "table.held").
		column("column.thing", false, 0.8).column("column.in", false, 1.8).column("column.cutter", false, 1.4).
		column("column.depth", true, 0.8).column("column.sinks", true, 0.8).column("column.proud", true, 0.8).column("column.land", true, 0.8)
	for _, h := range p.Held {
		b.row(h.Thing, string(h.In), h.Cutter, b.length(h.Depth), b.length(h.Sinks), b.length(h.Proud), b.length(h.Land))
	}
	return b.table
}

// Readings lists what to take for one measure, with room to write.
func Readings(m plan.Measure, s Speech) Table {
	b := newTable(s, "table.readings").
		column("column.where", false, 2).column("column.what", false, 1.4).column("column.planned", true, 1).column("column.found", true, 1)
	for _, r := range m.Readings {
		found := ""
		if r.Found != nil {
			found = b.length(*r.Found)
		}
		planned := b.length(r.Planned)
		if r.Planned.Nm == 0 {
			planned = b.say("reading.even")
		}
		b.row(string(r.Of), b.say("reading."+r.What), planned, found)
	}
	return b.table
}

// Seasons lists what the year does to every fit.
func Seasons(p *plan.Plan, s Speech) Table {
	b := newTable(s, "table.seasons").
		column("column.moves", false, 2).column("column.species", false, 1.2).column("column.size", true, 1).
		column("column.leave", true, 1).column("column.at-wet", true, 1).column("column.at-dry", true, 1)
	for _, c := range p.Clearances {
		b.row(string(c.Moves), c.Species, b.length(c.Size), b.length(c.Leave), b.length(c.AtWet), b.length(c.AtDry))
	}
	return b.table
}
