package svg

import (
	"fmt"
	"strings"

	"scantling/internal/font"
	"scantling/internal/page"
)

// Options change how the element is written.
type Options struct {
	// Looks takes colours and font from the variables of the style sheet of the
	// page that the element is put into, and leaves its size to that page.
	Looks bool
}

// Drawing writes a drawing, cropped to its area.
func Drawing(d page.Drawing, o Options) []byte {
	w := &writer{looks: o.Looks}
	w.open(d.Area(), d.Name, d.Alt)
	w.items(d.Items)
	return w.close()
}

// Page writes a whole page on its paper.
func Page(p page.Page, title string, o Options) []byte {
	w := &writer{looks: o.Looks}
	area := page.NewBox(0, 0, p.Size.Width, p.Size.Height)
	w.open(area, title, "")
	w.items(append([]page.Item{{Shape: page.Fill{Path: page.Rectangle(area), Colour: page.Ground}}}, p.Items...))
	return w.close()
}

// writer gathers the body and notes which classes it uses.
type writer struct {
	looks  bool
	area   page.Box
	head   strings.Builder
	body   strings.Builder
	fills  [64]bool
	lines  [64]bool
	widths [256]bool
	text   bool
}

func (w *writer) open(area page.Box, title, alt string) {
	w.area = area
	size := ""
	if !w.looks {
		size = fmt.Sprintf(` width="%smm" height="%smm"`, number(area.Width()), number(area.Height()))
	}
	fmt.Fprintf(&w.head, `<svg xmlns="http://www.w3.org/2000/svg"%s viewBox="%s %s %s %s" role="img">`,
		size, number(area.Min.X), number(area.Min.Y), number(area.Width()), number(area.Height()))
	w.head.WriteByte('\n')
	if title != "" {
		fmt.Fprintf(&w.head, "<title>%s</title>\n", escape(title))
	}
	if alt != "" {
		fmt.Fprintf(&w.head, "<desc>%s</desc>\n", escape(alt))
	}
}

// close writes the style sheet of the classes in use and returns the element.
func (w *writer) close() []byte {
	w.head.WriteString("<style>\n")
	for _, c := range page.Colours() {
		if w.fills[c] {
			fmt.Fprintf(&w.head, ".f-%s{fill:%s}\n", c.Name(), w.colour(c))
		}
		if w.lines[c] {
			fmt.Fprintf(&w.head, ".s-%s{fill:none;stroke:%s}\n", c.Name(), w.colour(c))
		}
	}
	for i, used := range w.widths {
		if used {
			fmt.Fprintf(&w.head, ".w%d{stroke-width:%s}\n", i, number(page.Width(i).Millimetres()))
		}
	}
	if w.text {
		family := "'" + font.Family + "','" + font.Family + " Variable',system-ui,sans-serif"
		if w.looks {
			family = "var(--sans," + family + ")"
		}
		fmt.Fprintf(&w.head, ".t{font-family:%s;font-variant-numeric:tabular-nums;white-space:pre}\n.b{font-weight:700}\n", family)
	}
	w.head.WriteString("</style>\n")
	return []byte(w.head.String() + w.body.String() + "</svg>\n")
}

func (w *writer) colour(c page.Colour) string {
	r, g, b := c.RGB()
	shade := fmt.Sprintf("#%02X%02X%02X", r, g, b)
	if w.looks {
		return "var(--" + c.Name() + "," + shade + ")"
	}
	return shade
}

func (w *writer) fill(c page.Colour) string {
	w.fills[c%64] = true
	return "f-" + c.Name()
}

func (w *writer) line(c page.Colour) string {
	w.lines[c%64] = true
	return "s-" + c.Name()
}

func (w *writer) width(v page.Width) string {
	w.widths[v] = true
	return fmt.Sprintf("w%d", v)
}

func (w *writer) items(items []page.Item) {
	for _, it := range items {
		address := ""
		if it.Address != "" {
			address = ` data-address="` + escape(it.Address) + `"`
		}
		switch s := it.Shape.(type) {
		case page.Stroke:
			w.stroke(s, address)
		case page.Fill:
			if d := pathData(s.Path); d != "" {
				fmt.Fprintf(&w.body, `<path class="%s" fill-rule="evenodd" d="%s"%s/>`+"\n", w.fill(s.Colour), d, address)
			}
		case page.Hatch:
			var d strings.Builder
			for _, l := range s.Lines() {
				fmt.Fprintf(&d, "M%s %sL%s %s", number(l[0].X), number(l[0].Y), number(l[1].X), number(l[1].Y))
			}
			if d.Len() > 0 {
				fmt.Fprintf(&w.body, `<path class="%s %s" d="%s"%s/>`+"\n", w.line(s.Colour), w.width(s.Width), d.String(), address)
			}
		case page.Text:
			w.writeText(s, address)
		case page.Link:
			w.link(s)
		}
	}
}

func (w *writer) stroke(s page.Stroke, address string) {
	d := pathData(s.Path)
	if d == "" {
		return
	}
	extra := ""
	if pattern := s.Dash.Pattern(s.Width); pattern != nil {
		var marks []string
		for _, v := range pattern {
			marks = append(marks, number(v))
		}
		extra = ` stroke-dasharray="` + strings.Join(marks, " ") + `"`
	}
	if s.Round {
		extra += ` stroke-linecap="round" stroke-linejoin="round"`
	}
	fmt.Fprintf(&w.body, `<path class="%s %s" d="%s"%s%s/>`+"\n", w.line(s.Colour), w.width(s.Width), d, extra, address)
}

// link writes a link out of the drawing as a clear area; links inside a document
// mean nothing here.
func (w *writer) link(l page.Link) {
	if !strings.HasPrefix(l.To, "https:") && !strings.HasPrefix(l.To, "http:") && !strings.HasPrefix(l.To, "#") {
		return
	}
	fmt.Fprintf(&w.body, `<a href="%s" aria-label="%s"><rect x="%s" y="%s" width="%s" height="%s" fill-opacity="0"/></a>`+"\n",
		escape(l.To), escape(l.Says), number(l.Area.Min.X), number(l.Area.Min.Y), number(l.Area.Width()), number(l.Area.Height()))
}
