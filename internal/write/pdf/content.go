package pdf

import (
	"strconv"
	"strings"

	"scantling/internal/page"
)

// points turns millimetres into points of 1/72 in.
func points(mm float64) float64 { return mm * 72 / 25.4 }

// number prints to a thousandth without trailing zeros.
func number(v float64) string { return string(appendNumber(nil, v)) }

func appendNumber(b []byte, v float64) []byte {
	b = strconv.AppendFloat(b, v, 'f', 3, 64)
	for b[len(b)-1] == '0' {
		b = b[:len(b)-1]
	}
	if b[len(b)-1] == '.' {
		b = b[:len(b)-1]
	}
	if n := len(b); n >= 2 && b[n-1] == '0' && b[n-2] == '-' {
		b = append(b[:n-2], '0')
	}
	return b
}

// content writes the operators of one page.
type content struct {
	w      *writer
	page   int
	height float64
	buf    []byte
	links  []ref
	open   page.NodeID // node of the marked content that is open
	isOpen bool
	state  state
}

// state is what the operators have set, so that nothing is set twice.
type state struct {
	fill, line page.Colour
	width      float64
	dash       string
	round      bool
	set        bool
}

func newContent(w *writer, n int) *content {
	return &content{w: w, page: n, height: w.doc.Pages[n].Size.Height}
}

// op writes numbers and an operator.
func (c *content) op(operator string, values ...float64) {
	for _, v := range values {
		c.buf = append(appendNumber(c.buf, v), ' ')
	}
	c.buf = append(append(c.buf, operator...), '\n')
}

// at turns a place into points with Y up.
func (c *content) at(p page.Point) (x, y float64) { return points(p.X), points(c.height - p.Y) }

func (c *content) items(items []page.Item) {
	for i, it := range items {
		if link, ok := it.Shape.(page.Link); ok {
			c.link(link, it.Node)
			continue
		}
		c.mark(it.Node)
		switch s := it.Shape.(type) {
		case page.Stroke:
			c.stroke(s)
		case page.Fill:
			c.fillColour(s.Colour)
			c.paint(s.Path, "f*")
		case page.Hatch:
			c.hatch(s)
		case page.Text:
			c.text(s, needsSpace(s, items[i+1:]))
		}
	}
	c.close()
}

// needsSpace reports whether a space must part the text from the next for those
// who hear or copy them: it does unless the next goes on where this one ends.
func needsSpace(t page.Text, rest []page.Item) bool {
	if strings.HasSuffix(t.String, " ") || strings.HasSuffix(t.String, "-") {
		return false
	}
	for _, it := range rest {
		next, ok := it.Shape.(page.Text)
		if !ok {
			if _, link := it.Shape.(page.Link); link {
				continue
			}
			return false
		}
		width := t.Line().Width
		end := t.Origin(width).Add(page.Point{X: float64(width * t.Size)}.Turn(t.Turn))
		return next.Align != page.Start || next.At.Sub(end).Norm() > 0.2
	}
	return false
}

// mark opens marked content for a node, unless it is open already.
func (c *content) mark(node page.NodeID) {
	if c.isOpen && c.open == node {
		return
	}
	c.close()
	c.open, c.isOpen = node, true
	if node == page.Artifact {
		c.op("/Artifact BMC")
		return
	}
	id := c.w.tree.content(node, c.page)
	c.op("/" + c.w.tree.name(node) + " <</MCID " + strconv.Itoa(id) + ">> BDC")
}

func (c *content) close() {
	if c.isOpen {
		c.op("EMC")
		c.isOpen = false
	}
}

// reading opens marked content that is read as the given text: a span of its own
// in the structure, as some readers lose their place in nested marked content.
func (c *content) reading(s string) {
	if c.open == page.Artifact {
		c.op("/Span <</ActualText " + text(s) + ">> BDC")
		return
	}
	c.close()
	id := c.w.tree.reading(c.open, c.page, s)
	c.op("/Span <</MCID " + strconv.Itoa(id) + " /ActualText " + text(s) + ">> BDC")
}

// endReading closes it; what follows must [content.mark] its node again.
func (c *content) endReading() {
	c.op("EMC")
}

func (c *content) fillColour(col page.Colour) {
	if c.state.set && c.state.fill == col {
		return
	}
	c.start()
	c.state.fill = col
	c.rgb(col, "rg")
}

func (c *content) lineColour(col page.Colour) {
	if c.state.set && c.state.line == col {
		return
	}
	c.start()
	c.state.line = col
	c.rgb(col, "RG")
}

// start sets both colours once, as the defaults are not those of ink.
func (c *content) start() {
	if !c.state.set {
		c.state = state{set: true, width: -1}
		c.rgb(page.Ink, "rg")
		c.rgb(page.Ink, "RG")
	}
}

func (c *content) rgb(col page.Colour, operator string) {
	r, g, b := col.RGB()
	c.op(operator, float64(r)/255, float64(g)/255, float64(b)/255)
}

// pen sets width, dash and ends of lines, in points.
func (c *content) pen(width float64, pattern []float64, round bool) {
	c.start()
	if width != c.state.width {
		c.op("w", width)
		c.state.width = width
	}
	dash := "["
	for _, v := range pattern {
		dash += number(points(v)) + " "
	}
	dash += "] 0"
	if dash != c.state.dash {
		c.op(dash + " d")
		c.state.dash = dash
	}
	if round != c.state.round {
		ends := 0.0
		if round {
			ends = 1
		}
		c.op("J", ends)
		c.op("j", ends)
		c.state.round = round
	}
}

func (c *content) stroke(s page.Stroke) {
	c.lineColour(s.Colour)
	c.pen(points(s.Width.Millimetres()), s.Dash.Pattern(s.Width), s.Round)
	c.paint(s.Path, "S")
}

func (c *content) hatch(h page.Hatch) {
	lines := h.Lines()
	if len(lines) == 0 {
		return
	}
	c.lineColour(h.Colour)
	c.pen(points(h.Width.Millimetres()), nil, false)
	for _, l := range lines {
		x, y := c.at(l[0])
		c.op("m", x, y)
		x, y = c.at(l[1])
		c.op("l", x, y)
	}
	c.op("S")
}

// paint writes the path's construction and the operator that paints it; nothing
// for a path that starts nowhere.
func (c *content) paint(p page.Path, operator string) {
	begun := false
	for _, g := range p.Curves() {
		x, y := c.at(g.To)
		if !begun && g.Verb != page.MoveTo {
			continue // nothing to start from
		}
		switch g.Verb {
		case page.MoveTo:
			c.op("m", x, y)
			begun = true
		case page.LineTo:
			c.op("l", x, y)
		case page.CurveTo:
			x1, y1 := c.at(g.C1)
			x2, y2 := c.at(g.C2)
			c.op("c", x1, y1, x2, y2, x, y)
		case page.Close:
			c.op("h")
		}
	}
	if begun {
		c.op(operator)
	}
}
