package typeset

import (
	"strconv"

	"scantling/internal/page"
)

// headingAnchor is the name of the n-th heading, counted from 1.
func headingAnchor(n int) string { return "heading " + strconv.Itoa(n) }

// findHeadings lists the headings in the order in which they are composed.
func findHeadings(blocks []Block, depth int, out []Heading) []Heading {
	if depth > mostDepth {
		return out
	}
	for _, b := range blocks {
		switch b := b.(type) {
		case Heading:
			out = append(out, b)
		case Together:
			out = findHeadings(b.Blocks, depth+1, out)
		case Box:
			out = findHeadings(b.Blocks, depth+1, out)
		case Beside:
			out = findHeadings(b.Right, depth+1, findHeadings(b.Left, depth+1, out))
		case List:
			for _, e := range b.Entries {
				out = findHeadings(e.Blocks, depth+1, out)
			}
		}
	}
	return out
}

func hasContents(blocks []Block, depth int) bool {
	if depth > mostDepth {
		return false
	}
	for _, b := range blocks {
		switch b := b.(type) {
		case Contents:
			return true
		case Together:
			if hasContents(b.Blocks, depth+1) {
				return true
			}
		case Box:
			if hasContents(b.Blocks, depth+1) {
				return true
			}
		case Beside:
			if hasContents(b.Left, depth+1) || hasContents(b.Right, depth+1) {
				return true
			}
		}
	}
	return false
}

// contents lists the headings as a list of links, each with its page.
func (c *composer) contents(b Contents, parent page.NodeID, width float64) (out []slab) {
	levels := b.Levels
	if levels < 1 {
		levels = 2
	}
	list := c.tree.Add(page.Node{Role: page.RoleList, Parent: parent})
	for i, h := range c.headings {
		level := min(max(h.Level, 1), 3)
		if level > levels || h.Text == "" || h.Unlisted {
			continue
		}
		name := headingAnchor(i + 1)
		st := c.settings.manner(Body)
		item := c.tree.Add(page.Node{Role: page.RoleListItem, Parent: list})
		st.node = c.tree.Add(page.Node{Role: page.RoleListBody, Parent: item})
		number := "0"
		if p, ok := c.pages[name]; ok {
			number = strconv.Itoa(p + 1)
		}
		indent := min(float64(level-1)*5, width/4)
		span := Span{Text: h.Text, Bold: level == 1, Link: name}
		lines := breakLines([]Span{span}, st, width-indent-14)
		if len(lines) == 0 {
			continue // a title of spaces
		}
		slabs := c.lines(lines, st.size, width-indent-14, page.Start)
		for k := range slabs {
			slabs[k].shift(indent, 0)
		}
		last := &slabs[len(slabs)-1]
		last.setLine(&c.tree, breakLines(Plain(number), st, 14)[0], width-14, 14, page.End, st.size)
		switch {
		case len(out) == 0:
			slabs[0].before = st.size * 1.6
		case level == 1:
			slabs[0].before = st.size * 0.5
		}
		out = append(out, keepAll(slabs)...)
	}
	return out
}
