package typeset

import (
	"scantling/internal/font"
	"scantling/internal/page"
)

// Measures of a box.
const (
	barWide = 1.6
	boxPad  = 3.0
)

// box sets blocks apart by a bar, a frame or a tint.
func (c *composer) box(b Box, parent page.NodeID, width float64, depth int) []slab {
	bar := 0.0
	if b.Bar != page.Ink || !b.Frame {
		bar = barWide
	}
	left := bar + boxPad
	inner := width - left - boxPad
	if inner < narrowest/2 {
		return append(c.boxTitle(b, parent, width), c.blocks(b.Blocks, parent, width, depth+1)...)
	}
	node := c.tree.Add(page.Node{Role: page.RoleSection, Parent: parent})
	// What cannot be cut must fit together with the padding above and below.
	whole := c.column
	c.column -= 2 * boxPad
	defer func() { c.column = whole }()
	slabs := append(c.boxTitle(b, node, inner), c.blocks(b.Blocks, node, inner, depth+1)...)
	if len(slabs) == 0 {
		return nil
	}
	before := c.settings.Size * 0.9
	slabs[0].before = 0
	slabs[0].shift(0, boxPad*0.7)
	slabs[0].height += boxPad * 0.7
	slabs[len(slabs)-1].height += boxPad * 0.8
	for i := range slabs {
		s := &slabs[i]
		s.settle()
		s.newPage = false
		s.shift(left, 0)
		if s.head != nil && (i == 0 || slabs[i-1].head != s.head) {
			s.head.shift(left, 0)
			c.boxSides(s.head, b, bar, width, false, false)
		}
		c.boxSides(s, b, bar, width, i == 0, i == len(slabs)-1)
	}
	slabs[0].before = before
	return keepAll(slabs)
}

// boxSides draws the parts of bar, frame and tint that lie beside a slab.
func (c *composer) boxSides(s *slab, b Box, bar, width float64, first, last bool) {
	area := page.NewBox(0, 0, width, s.height)
	if b.Frame {
		side := func(p, q page.Point) {
			s.under(page.Stroke{Path: page.Line(p, q), Width: page.W025, Colour: page.Rule})
		}
		side(page.Point{X: area.Max.X}, area.Max)
		if bar == 0 {
			side(page.Point{}, page.Point{Y: area.Max.Y})
		}
		if first {
			side(page.Point{}, page.Point{X: area.Max.X})
		}
		if last {
			side(page.Point{Y: area.Max.Y}, area.Max)
		}
	}
	if bar > 0 {
		s.under(page.Fill{Path: page.Rectangle(page.NewBox(0, 0, bar, s.height)), Colour: b.Bar})
	}
	if b.Tint {
		s.under(page.Fill{Path: page.Rectangle(area), Colour: page.Bench})
	}
}

func (c *composer) boxTitle(b Box, node page.NodeID, width float64) []slab {
	if b.Title == "" {
		return nil
	}
	st := c.settings.manner(Body)
	st.weight, st.colour, st.address = font.Bold, b.Bar, b.Address
	st.node = c.tree.Add(page.Node{Role: page.RoleParagraph, Parent: node})
	return keepNext(c.lines(breakLines(Plain(b.Title), st, width), st.size, width, page.Start))
}

// besideGap is the space between two sides.
const besideGap = 6

// beside sets two lists of blocks side by side.
func (c *composer) beside(b Beside, parent page.NodeID, width float64, depth int) []slab {
	share := b.Share
	if !(share >= 0.1 && share <= 0.9) {
		share = 0.5
	}
	left := float64((width - besideGap) * share)
	right := width - besideGap - left
	if min(left, right) < narrowest/2 {
		return append(c.blocks(b.Left, parent, width, depth+1), c.blocks(b.Right, parent, width, depth+1)...)
	}
	l := c.blocks(b.Left, parent, left, depth+1)
	r := c.blocks(b.Right, parent, right, depth+1)
	if stacked(l) > c.column || stacked(r) > c.column {
		// Too tall to stay whole: one after the other, each in its own width.
		return append(l, r...)
	}
	a, z := merge(l), merge(r)
	before := max(a.before, z.before)
	z.shift(left+besideGap, 0)
	out := slab{before: before, height: max(a.height, z.height)}
	out.items = append(a.items, z.items...)
	out.blocks = append(a.blocks, z.blocks...)
	out.anchors = append(a.anchors, z.anchors...)
	if out.heading = a.heading; out.heading == nil {
		out.heading = z.heading
	}
	return []slab{out}
}
