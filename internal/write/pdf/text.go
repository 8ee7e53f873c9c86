package pdf

import (
	"strings"

	"scantling/internal/font"
	"scantling/internal/page"
)

// text writes one line of text: glyphs, and the bars and signs that are drawn.
// A space is added at its end if more text follows elsewhere.
func (c *content) text(t page.Text, more bool) {
	line := t.Line()
	if len(line.Pieces) == 0 {
		return
	}
	marks := t.Marks(line)
	origin := t.Origin(line.Width)
	c.fillColour(t.Colour)
	cluster := 0
	endCluster := func() {
		if cluster != 0 {
			c.endReading()
		}
		cluster = 0
	}
	for i, p := range line.Pieces {
		if p.Cluster != cluster {
			endCluster()
			if cluster = p.Cluster; cluster != 0 {
				says, apart := strings.CutPrefix(p.Reading, " ")
				if apart {
					c.mark(c.open)
					c.ghost(t, p.X, ' ', origin)
				}
				c.reading(says)
			}
		}
		if cluster == 0 {
			c.mark(c.open)
		}
		if p.Kind == font.Glyphs {
			at := origin.Add(page.Point{X: float64(p.X * t.Size), Y: float64(p.Y * t.Size)}.Turn(t.Turn))
			c.glyphs(t, p, at, false)
		}
		for len(marks) > 0 && marks[0].Piece == i {
			c.markOf(t, marks[0])
			marks = marks[1:]
		}
		switch p.Kind {
		case font.Drawn:
			c.ghost(t, p.X, ' ', origin)
		case font.Bar:
			c.ghost(t, p.X, '/', origin)
		}
	}
	endCluster()
	if more {
		c.mark(c.open)
		at := origin.Add(page.Point{X: float64(line.Width * t.Size)}.Turn(t.Turn))
		c.blank(t, ' ', at)
	}
}

// markOf draws a bar or a sign.
func (c *content) markOf(t page.Text, m page.Mark) {
	if m.Pen > 0 {
		c.lineColour(t.Colour)
		c.pen(points(m.Pen), nil, true)
		c.paint(m.Path, "S")
		return
	}
	c.paint(m.Path, "f")
}

// ghost sets an invisible character where something is drawn, so that there is
// a glyph that stands for it when text is searched or copied: a space for a sign,
// a slash for the bar of a fraction.
func (c *content) ghost(t page.Text, x float64, r rune, origin page.Point) {
	c.blank(t, r, origin.Add(page.Point{X: float64(x * t.Size)}.Turn(t.Turn)))
}

func (c *content) blank(t page.Text, r rune, at page.Point) {
	if g, ok := font.Of(t.Weight).Glyph(r); ok {
		c.glyphs(t, font.Piece{Scale: 1, Text: string(r), Glyphs: []font.Placed{{GID: g}}}, at, true)
	}
}

const hexDigits = "0123456789ABCDEF"

// glyphs shows a run of glyphs, each where the line put it.
func (c *content) glyphs(t page.Text, p font.Piece, at page.Point, invisible bool) {
	face := font.Of(t.Weight)
	c.w.faces.use(t.Weight, p)
	x, y := c.at(at)
	c.op("BT")
	c.op(c.w.faces.name(t.Weight) + " " + number(points(float64(t.Size*p.Scale))) + " Tf")
	if invisible {
		c.op("3 Tr")
	}
	if t.Turn == 0 {
		c.op("Td", x, y)
	} else {
		// The page's clockwise is anticlockwise with Y up.
		dir := page.Point{X: 1}.Turn(-t.Turn)
		c.op("Tm", dir.X, dir.Y, -dir.Y, dir.X, x, y)
	}
	c.buf = append(c.buf, "[<"...)
	pen := 0.0
	for i, g := range p.Glyphs {
		if i > 0 {
			// What the line wants beyond the advance, in thousandths of an em.
			if off := (g.X - pen) / p.Scale * 1000; off > 0.5 || off < -0.5 {
				c.buf = append(c.buf, '>')
				c.buf = appendNumber(c.buf, -off)
				c.buf = append(c.buf, '<')
			}
		}
		for shift := 12; shift >= 0; shift -= 4 {
			c.buf = append(c.buf, hexDigits[g.GID>>shift&15])
		}
		pen = g.X + float64(p.Scale*face.Advance(g.GID))
	}
	c.buf = append(c.buf, ">] TJ\n"...)
	if invisible {
		c.op("0 Tr")
	}
	c.op("ET")
}
