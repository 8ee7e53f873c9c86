package table

import (
	"slices"
	"strconv"
	"strings"

	"scantling/internal/message"
	"scantling/internal/output/naming"
	"scantling/internal/output/tape"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Parts lists the parts of one stage, or of all for an empty stage, with their
// finished sizes, under the groups that they belong to. A sign says what the
// sizes rest on; [Signs] explains it.
//
// In inches, what goes into something is rounded down and what takes something up; the
// exact sizes stand beside.
func Parts(p *plan.Plan, stage string, s Speech) Table {
	return parts(p, stage, p.Units(), "table.parts", s)
}

// Second lists all parts in the second system of an edition in both.
func Second(p *plan.Plan, system unit.System, s Speech) Table {
	return parts(p, "", system, "table.second-"+string(system), s)
}

func parts(p *plan.Plan, stage string, system unit.System, title string, s Speech) Table {
	names, sizes := naming.Of(p, s), tape.Of(p, system)
	b := newTableIn(system, s, title).
		column("column.mark", text, 0.7).column("column.part", text, 1.3).column("column.quantity", number, 0.5).
		column("column.length", length, 0.9).column("column.width", length, 0.9).column("column.thickness", length, 0.8).
		column("column.material", text, 1.5)
	if sizes.Inches() {
		b.column("column.exact", text, 2.5)
	}
	b.column("column.basis", text, 0.5)
	last := "-"
	for _, r := range p.Parts {
		if stage != "" && r.Stage != stage {
			continue
		}
		if key, title := names.Group(r); key != last {
			last = key
			b.group(title)
		}
		shown := sizes.Sizes(r)
		cells := []string{s.Own(r.Mark), names.Row(r), b.count(r.Quantity()), s.Figure(shown[0]), s.Figure(shown[1]), s.Figure(shown[2]), s.Own(r.Species)}
		if sizes.Inches() {
			cells = append(cells, b.exact(r))
		}
		b.row(append(cells, b.say("basis-sign."+string(r.Basis)))...)
	}
	return b.table
}

// exact is what the sizes of a row are before they are rounded to a tape, in decimals
// of an inch.
func (b *builder) exact(r plan.PartRow) string {
	var all []string
	for _, f := range r.Sizes() {
		all = append(all, strconv.FormatFloat(float64(f.Nm)/float64(unit.Inch), 'f', 3, 64))
	}
	return b.speech.Own(strings.Join(all, " × "))
}

// Signs explains the signs of the list that it uses: "○ planned, ● measured".
func Signs(p *plan.Plan, s Speech) string {
	var out []string
	for _, basis := range []plan.Basis{plan.Planned, plan.AsMeasured, plan.FromMeasured, plan.AsCut} {
		if slices.ContainsFunc(p.Parts, func(r plan.PartRow) bool { return r.Basis == basis }) {
			out = append(out, s.Say(message.New("basis-sign."+string(basis)))+" "+s.Say(message.New("basis."+string(basis))))
		}
	}
	return strings.Join(out, ", ")
}

// Blanks lists what the parts of a stage are made from, with allowances; equal
// blanks of several marks stand in one row.
func Blanks(p *plan.Plan, stage string, s Speech) Table {
	stageOf := map[string]string{}
	for _, r := range p.Parts {
		stageOf[r.Mark] = r.Stage
	}
	names := naming.Of(p, s)
	b := newTable(p, s, "table.blanks").
		column("column.mark", text, 0.9).column("column.kind", text, 0.6).column("column.quantity", number, 0.4).
		column("column.length", length, 0.7).column("column.width", length, 0.7).column("column.stock", text, 1.4).column("column.why", text, 5)
	type key struct {
		kind, stock, why string
		length, width    unit.Length
		mark             string // of panels and strips, which belong to one mark
	}
	var order []key
	count, marks := map[key]int{}, map[key][]string{}
	for _, w := range p.Workpieces {
		k := key{kind: string(w.Kind), stock: w.Stock, length: w.Length.Nm, width: w.Width.Nm}
		switch w.Kind {
		case plan.BlankPiece:
		case plan.StripPiece, plan.NarrowPanel, plan.PanelPiece:
			// Strips that the remainder of a division parted by a nanometre are alike.
			k.mark, k.width = w.Mark, k.width.Round(unit.Micrometre, unit.Nearest)
		default:
			continue
		}
		if stage != "" && stageOf[w.Mark] != stage {
			continue
		}
		var reasons []string
		for _, m := range w.Why {
			reasons = append(reasons, names.Phrase(m))
		}
		k.why = strings.Join(reasons, " ")
		if count[k] == 0 {
			order = append(order, k)
		}
		count[k] += max(1, w.Count)
		for _, mark := range append([]string{w.Mark}, b.marksOf(names, w)...) {
			if !slices.Contains(marks[k], mark) {
				marks[k] = append(marks[k], mark)
			}
		}
	}
	for _, k := range order {
		b.row(b.marks(names, marks[k]), b.say("workpiece."+k.kind), b.count(count[k]), s.Figure(k.length), s.Figure(k.width), own(s, k.stock), k.why)
	}
	return b.table
}

// marksOf lists the marks of the parts that come out of a workpiece.
func (b *builder) marksOf(names *naming.Names, w plan.Workpiece) []string {
	var out []string
	for _, a := range w.Parts {
		out = append(out, names.Mark(a))
	}
	return out
}

// marks shows a list of marks, shortened.
func (b *builder) marks(names *naming.Names, list []string) string {
	short := names.Marks(list)
	if len(short) == 0 {
		return ""
	}
	return b.speech.Own(strings.Join(short, " "))
}

// own marks a text as the author's or the shop's, unless there is none.
func own(s Speech, text string) string {
	if text == "" {
		return ""
	}
	return s.Own(text)
}
