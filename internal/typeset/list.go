package typeset

import (
	"scantling/internal/font"
	"scantling/internal/page"
)

// labelGap is the space between a label and its entry.
const labelGap = 2.5

// list sets entries with their labels in a hanging column.
func (c *composer) list(l List, parent page.NodeID, width float64, depth int) (out []slab) {
	st := c.settings.manner(Body)
	st.weight = font.Bold
	indent := l.Indent
	if !(indent > 0) {
		indent = 5
		for _, e := range l.Entries {
			indent = max(indent, page.TextWidth(st.weight, st.size, e.Label)+labelGap)
		}
	}
	indent = min(indent, max(0, width-narrowest))
	node := c.tree.Add(page.Node{Role: page.RoleList, Parent: parent})
	for _, e := range l.Entries {
		out = append(out, c.entry(e, st, node, indent, width, depth)...)
	}
	return out
}

func (c *composer) entry(e Entry, st style, list page.NodeID, indent, width float64, depth int) []slab {
	item := c.tree.Add(page.Node{Role: page.RoleListItem, Parent: list})
	st.node = c.tree.Add(page.Node{Role: page.RoleLabel, Parent: item})
	st.address = e.Address
	body := c.tree.Add(page.Node{Role: page.RoleListBody, Parent: item})
	slabs := c.blocks(e.Blocks, body, width-indent, depth+1)
	if len(slabs) == 0 || len(slabs[0].items) == 0 {
		slabs = append([]slab{{before: st.size * 0.55, height: leading * st.size}}, slabs...)
	}
	for i := range slabs {
		slabs[i].shift(indent, 0)
		if head := slabs[i].head; head != nil && (i == 0 || slabs[i-1].head != head) {
			head.shift(indent, 0)
		}
	}
	labels := breakLines(Plain(e.Label), st, max(indent-labelGap, 1))
	if indent == 0 || len(labels) > 1 {
		// No room beside: the label stands above.
		labels = breakLines(Plain(e.Label), st, width)
		above := c.lines(labels, st.size, width, page.Start)
		slabs = append(keepNext(above), slabs...)
	} else if len(labels) > 0 {
		first := slab{}
		first.setLine(&c.tree, labels[0], 0, indent, page.Start, st.size)
		slabs[0].items = append(first.items, slabs[0].items...)
		slabs[0].height = max(slabs[0].height, leading*st.size)
	}
	if e.Anchor != "" {
		slabs[0].anchors = append(slabs[0].anchors, e.Anchor)
	}
	if e.Together {
		keepAll(slabs)
	}
	return slabs
}

func keepNext(slabs []slab) []slab {
	for i := range slabs {
		slabs[i].keep = true
	}
	return slabs
}
