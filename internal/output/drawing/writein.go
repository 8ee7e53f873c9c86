package drawing

import (
	"slices"

	"scantling/internal/font"
	"scantling/internal/message"
	"scantling/internal/output/naming"
	"scantling/internal/page"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// Sizes of a form on paper, in millimetres.
const (
	formName = 42.0 // the column of names
	formHead = 10.0
	formRow  = 12.0
)

// Form draws the boxes to write the readings of a measure into: a row for each
// thing, a column for each reading; what is expected stands small in the corner
// of its box, what was found is filled in.
func Form(p *plan.Plan, m plan.Measure, width float64, speech Speech, expected func(plan.Reading) string) page.Drawing {
	names := naming.Of(p, speech)
	var rows, columns []string
	for _, r := range m.Readings {
		if !slices.Contains(rows, string(r.Of)) {
			rows = append(rows, string(r.Of))
		}
		if !slices.Contains(columns, r.What) {
			columns = append(columns, r.What)
		}
	}
	out := page.Drawing{Name: m.Label, Alt: word(speech, "drawing.form-alt", message.Text("label", m.Label), message.Count("boxes", len(m.Readings)))}
	wide := min((width-formName)/float64(len(columns)), 40)
	text := func(at page.Point, em, room float64, w font.Weight, c page.Colour, s string) {
		out.Add("", page.Text{At: at, Size: fit(w, em, s, room), Weight: w, Colour: c, String: s})
	}
	for i, c := range columns {
		text(page.Point{X: formName + float64(float64(i)*wide) + 1, Y: formHead - 2}, 2.8, wide-2, font.Regular, page.InkSoft, word(speech, "reading."+c))
	}
	for i, name := range rows {
		y := formHead + float64(float64(i)*formRow)
		for _, r := range m.Readings {
			if string(r.Of) != name {
				continue
			}
			if i := slices.IndexFunc(p.Piece.Parts, func(q piece.Part) bool { return q.Address == r.Of }); i >= 0 {
				text(page.Point{X: 0, Y: y + 10}, 2.8, formName-2, font.Bold, page.Ink, speech.Own(names.Mark(r.Of)))
			}
			text(page.Point{X: 0, Y: y + 6}, 3, formName-2, font.Regular, page.Ink, names.Address(r.Of))
			break
		}
		for _, r := range m.Readings {
			k := slices.Index(columns, r.What)
			if string(r.Of) != name {
				continue
			}
			box := page.NewBox(formName+float64(float64(k)*wide), y, wide-2, formRow-2)
			out.Add(string(r.Of), page.Stroke{Path: page.Rectangle(box), Width: page.W025, Colour: page.Ink})
			text(page.Point{X: box.Min.X + 0.9, Y: box.Min.Y + 2.9}, 2.3, box.Width()-2, font.Regular, page.InkSoft, expected(r))
			if r.Found != nil {
				text(page.Point{X: box.Min.X + 3, Y: box.Max.Y - 1.4}, 4.4, box.Width()-5, font.Bold, page.Ink, speech.Figure(r.Found.Nm))
			}
		}
	}
	out.Box = page.NewBox(0, 0, formName+float64(wide*float64(len(columns))), formHead+float64(formRow*float64(len(rows))))
	return out
}
