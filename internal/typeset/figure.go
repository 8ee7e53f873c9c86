package typeset

import (
	"math"

	"scantling/internal/page"
)

// figure places a drawing with its caption below.
func (c *composer) figure(f Figure, parent page.NodeID, width float64) []slab {
	area := f.Drawing.Area()
	if !(area.Width() > 0 && area.Height() > 0) || math.IsInf(area.Width()*area.Height(), 0) {
		c.note(Note{Kind: BadDrawing, Name: f.Drawing.Name, Wanted: area.Width(), Got: area.Height()})
		return nil
	}
	alt := f.Drawing.Alt
	if alt == "" {
		alt = f.Drawing.Name
	}
	node := c.tree.Add(page.Node{Role: page.RoleFigure, Parent: parent, Alt: alt})
	caption := c.caption(f.Caption, node, width)
	// A caption as long as a page goes on to the next.
	room := max(c.column-stacked(caption)-captionGap, min(20, c.column))
	k := min(1, width/area.Width(), room/area.Height())
	if k < 1 {
		c.note(Note{Kind: Shrunk, Name: f.Drawing.Name, Wanted: area.Width(), Got: float64(k * area.Width())})
	}
	x := 0.0
	switch f.Align {
	case page.Middle:
		x = (width - float64(k*area.Width())) / 2
	case page.End:
		x = width - float64(k*area.Width())
	}
	placed := f.Drawing.Placed(k, page.Point{X: x - float64(k*area.Min.X), Y: -float64(k * area.Min.Y)})
	s := slab{before: c.settings.Size, height: float64(k * area.Height()), blocks: placed.Blocks}
	for _, it := range placed.Items {
		it.Node = node
		if it.Address == "" {
			it.Address = f.Address
		}
		s.items = append(s.items, it)
	}
	if len(s.blocks) == 0 {
		s.blocks = []page.Block{{Name: "figure " + f.Drawing.Name, Box: page.NewBox(x, 0, float64(k*area.Width()), s.height)}}
	}
	if f.Anchor != "" {
		s.anchors = []string{f.Anchor}
	}
	s.keep = len(caption) > 0
	if len(caption) > 0 {
		caption[0].before = captionGap
	}
	return append([]slab{s}, keepAll(caption)...)
}

func (c *composer) caption(spans []Span, parent page.NodeID, width float64) []slab {
	if len(spans) == 0 {
		return nil
	}
	st := c.settings.manner(Small)
	st.colour = page.InkSoft
	st.node = c.tree.Add(page.Node{Role: page.RoleCaption, Parent: parent})
	return c.lines(breakLines(spans, st, width), st.size, width, page.Start)
}
