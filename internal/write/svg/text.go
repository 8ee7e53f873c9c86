package svg

import (
	"fmt"
	"strings"

	"scantling/internal/font"
	"scantling/internal/page"
)

// writeText writes a line of text: one text element if the face has all of it,
// else a group with the glyphs and the drawn bars and signs in their places.
func (w *writer) writeText(t page.Text, address string) {
	line := t.Line()
	if len(line.Pieces) == 0 {
		return
	}
	w.text = true
	class := "t " + w.fill(t.Colour)
	if t.Weight == font.Bold {
		class += " b"
	}
	if len(line.Pieces) == 1 && line.Pieces[0].Kind == font.Glyphs {
		anchor := [...]string{"", ` text-anchor="middle"`, ` text-anchor="end"`}[min(t.Align, page.End)]
		turn := ""
		if t.Turn != 0 {
			turn = fmt.Sprintf(` transform="rotate(%s %s %s)"`, number(t.Turn), number(t.At.X), number(t.At.Y))
		}
		fmt.Fprintf(&w.body, `<text x="%s" y="%s" font-size="%s" class="%s"%s%s%s>%s</text>`+"\n",
			number(t.At.X), number(t.At.Y), number(t.Size), class, anchor, turn, address, escape(line.Pieces[0].Text))
		return
	}
	fmt.Fprintf(&w.body, `<g role="img" aria-label="%s"%s>`, escape(reading(line)), address)
	o := t.Origin(line.Width)
	for _, p := range line.Pieces {
		if p.Kind != font.Glyphs || strings.TrimSpace(p.Text) == "" {
			continue
		}
		at := o.Add(page.Point{X: float64(p.X * t.Size), Y: float64(p.Y * t.Size)}.Turn(t.Turn))
		turn := ""
		if t.Turn != 0 {
			turn = fmt.Sprintf(` transform="rotate(%s %s %s)"`, number(t.Turn), number(at.X), number(at.Y))
		}
		// The length keeps the pieces apart also where another font stands in.
		fmt.Fprintf(&w.body, `<text x="%s" y="%s" font-size="%s" class="%s" textLength="%s" lengthAdjust="spacingAndGlyphs"%s>%s</text>`,
			number(at.X), number(at.Y), number(t.Size*p.Scale), class, number(p.Width*t.Size), turn, escape(p.Text))
	}
	for _, m := range t.Marks(line) {
		if m.Pen > 0 {
			fmt.Fprintf(&w.body, `<path class="%s" stroke-width="%s" stroke-linecap="round" stroke-linejoin="round" d="%s"/>`, w.line(t.Colour), number(m.Pen), pathData(m.Path))
		} else {
			fmt.Fprintf(&w.body, `<path class="%s" d="%s"/>`, w.fill(t.Colour), pathData(m.Path))
		}
	}
	w.body.WriteString("</g>\n")
}

// reading returns the line as it is read aloud.
func reading(line font.Line) string {
	var b strings.Builder
	for _, p := range line.Pieces {
		if p.Cluster != 0 {
			b.WriteString(p.Reading)
		} else {
			b.WriteString(p.Text)
		}
	}
	return b.String()
}
