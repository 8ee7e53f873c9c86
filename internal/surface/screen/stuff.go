package screen

import (
	"slices"
	"strings"

	"scantling/internal/message"
	"scantling/internal/output/drawing"
	"scantling/internal/output/table"
	"scantling/internal/page"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/write/svg"
)

// Rooms for drawings, in millimetres of paper: what a screen of ordinary width
// shows at about its natural size.
const (
	wholeWidth, wholeHeight     = 120.0, 100.0
	partWidth, partHeight       = 100.0, 100.0
	diagramWidth, diagramHeight = 170.0, 70.0
	setupWidth, setupHeight     = 110.0, 56.0
)

// element writes a drawing for a page that brings the style sheet ([StyleSheet]).
func element(d page.Drawing) string {
	text := string(svg.Drawing(d, svg.Options{Looks: true}))
	before, rest, found := strings.Cut(text, "<style>")
	if !found {
		return text
	}
	_, after, _ := strings.Cut(rest, "</style>\n")
	return before + after
}

func (b *builder) whole(look drawing.Look) string {
	return element(drawing.Whole(b.Plan, b.Solids, drawing.WholeOptions{Look: look, Marks: true}, wholeWidth, wholeHeight, bare{b.say}))
}

func (b *builder) stages() []Stage {
	out := []Stage{}
	for _, s := range b.Plan.Stages {
		out = append(out, Stage{
			ID: s.ID, Title: b.names.Phrase(s.Title),
			Parts: show(table.Parts(b.Plan, s.ID, bare{b.say})), Blanks: show(table.Blanks(b.Plan, s.ID, bare{b.say})),
		})
	}
	return out
}

// second lists the parts in the other system of an edition in both.
func (b *builder) second() Table {
	system, ok := b.Plan.Second()
	if !ok || b.Second == nil {
		return show(table.Table{})
	}
	return show(table.Second(b.Plan, system, bare{b.Second}))
}

func (b *builder) parts() []Part {
	out := []Part{}
	own := b.tape
	for _, r := range b.Plan.Parts {
		shown := own.Sizes(r)
		pic, scale := drawing.Part(b.Plan, r, b.Solids, drawing.PartOptions{ThirdAngle: b.Plan.Shop.Region == "en-US"}, partWidth, partHeight, bare{b.say})
		part := Part{
			Mark: r.Mark, Name: partName(r), Quantity: r.Quantity(), Members: []string{}, Material: r.Species, Stage: r.Stage,
			Length: b.say.Length(shown[0]), Width: b.say.Length(shown[1]), Thickness: b.say.Length(shown[2]),
			Basis: b.known("basis.", string(r.Basis)), SVG: element(pic), Cuts: show(table.Cuts(b.Plan, r, bare{b.say})),
			Caption: b.say.Label("screen.part-caption", message.Text("scale", scale.String()), message.Text("species", r.Species),
				message.Word("basis", "basis."+string(r.Basis))),
		}
		for _, m := range r.Members {
			part.Members = append(part.Members, string(m))
		}
		out = append(out, part)
	}
	return out
}

func partName(r plan.PartRow) string {
	if r.Label != "" {
		return r.Label
	}
	return strings.ReplaceAll(r.Name, "_", " ")
}

// objects lists the parts as they stand, with how far each is drawn out: one
// step for each group that it moves in.
func (b *builder) objects() []Object {
	out := []Object{}
	for _, p := range b.Plan.Piece.Parts {
		o := Object{Address: string(p.Address)}
		for _, g := range b.Plan.Piece.Groups {
			if g.Inside != "" && g.Address.Has(p.Address) {
				o.Pull++
			}
		}
		for _, r := range b.Plan.Parts {
			if slices.Contains(r.Members, p.Address) {
				o.Mark, o.Name = r.Mark, partName(r)
			}
		}
		out = append(out, o)
	}
	return out
}

func (b *builder) diagrams() []Diagram {
	out := []Diagram{}
	stock := ""
	for _, d := range b.Plan.Diagrams {
		w := d.Waste
		share := func(part float64) float64 {
			if w.Whole == 0 {
				return 0
			}
			return 100 * part / w.Whole
		}
		key := "screen.diagram-caption"
		if w.Defects > 0 {
			key = "screen.diagram-caption-defects"
		}
		diagram := Diagram{
			ID: d.ID, Label: d.Label, Count: d.Count, SVG: element(drawing.Diagram(d, diagramWidth, diagramHeight, bare{b.say})), Marks: []string{},
			Caption: b.say.Label(key, message.Length("thickness", d.Thickness.Nm),
				message.Percent("parts", share(w.Parts)), message.Percent("kerf", share(w.Kerf)), message.Percent("trim", share(w.Trim)),
				message.Percent("remnant", share(w.Remnant)), message.Percent("rest", share(w.Rest)),
				message.Percent("defects", share(w.Defects))),
		}
		if d.Stock != stock && !d.Bound.IsZero() {
			stock, diagram.Bound = d.Stock, b.names.Phrase(d.Bound)
		}
		for _, p := range d.Pieces {
			if !slices.Contains(diagram.Marks, p.Mark) {
				diagram.Marks = append(diagram.Marks, p.Mark)
			}
		}
		out = append(out, diagram)
	}
	return out
}

// rows says the sums that close through the finished piece; equal terms stand
// together with their count. Figures are those that add up as they are printed.
func (b *builder) rows() []Sum {
	out, own := []Sum{}, b.tape
	for _, r := range b.Plan.Rows {
		if len(r.Terms) < 2 {
			continue // nothing to add up
		}
		shown, total, takes := own.Row(r)
		sum := Sum{Title: b.names.Phrase(r.Title), Total: b.say.Length(total), Terms: []Term{}, Alike: []string{}}
		for i, nm := range shown {
			word, figure := b.term(r.Terms[i]), b.say.Length(nm)
			if i == takes {
				word += " " + b.say.Label("term.takes-the-rest")
			}
			at := slices.IndexFunc(sum.Terms, func(t Term) bool { return t.Word == word && t.Figure == figure })
			if at < 0 {
				sum.Terms = append(sum.Terms, Term{Word: word, Figure: figure, Count: 1})
				continue
			}
			sum.Terms[at].Count++
		}
		same := slices.IndexFunc(out, func(s Sum) bool { return s.Total == sum.Total && slices.Equal(s.Terms, sum.Terms) })
		if same >= 0 {
			out[same].Alike = append(out[same].Alike, sum.Title)
			continue
		}
		out = append(out, sum)
	}
	return out
}

// term names a stretch of a row: by the mark of its part, else by its word.
func (b *builder) term(t piece.Term) string {
	for _, r := range b.Plan.Parts {
		if slices.Contains(r.Members, t.Of) {
			return r.Mark + " " + partName(r)
		}
	}
	if t.Word != "" {
		return b.known("term.", t.Word)
	}
	if t.Of != "" {
		return string(t.Of)
	}
	if t.Air {
		return b.say.Label("screen.air")
	}
	return b.say.Label("screen.wood")
}
