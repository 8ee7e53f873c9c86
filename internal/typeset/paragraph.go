package typeset

import "scantling/internal/page"

// paragraph sets running text.
func (c *composer) paragraph(p Paragraph, parent page.NodeID, width float64) []slab {
	st := c.settings.manner(p.Manner)
	st.node = c.tree.Add(page.Node{Role: page.RoleParagraph, Parent: parent})
	out := c.lines(breakLines(p.Spans, st, width), st.size, width, p.Align)
	if len(out) > 0 {
		out[0].before = st.size * 0.55
	}
	return out
}

// heading sets a heading and ties it to what follows.
func (c *composer) heading(h Heading, parent page.NodeID, width float64) []slab {
	h.Level = min(max(h.Level, 1), 3)
	st, before, after := c.settings.heading(h.Level)
	role := [...]page.Role{page.RoleH1, page.RoleH2, page.RoleH3}[h.Level-1]
	st.node = c.tree.Add(page.Node{Role: role, Parent: parent})
	st.address = h.Address
	c.seen++
	name := headingAnchor(c.seen)
	out := c.lines(breakLines(Plain(h.Text), st, width), st.size, width, page.Start)
	for i := range out {
		out[i].keep = true
		out[i].height = st.size * 1.2
	}
	if len(out) == 0 {
		return nil
	}
	out[0].before, out[0].newPage = before, h.NewPage
	out[0].heading = &h
	out[0].anchors = append(out[0].anchors, name)
	if h.Anchor != "" {
		out[0].anchors = append(out[0].anchors, h.Anchor)
	}
	out[len(out)-1].height += after
	return out
}
