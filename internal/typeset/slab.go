package typeset

import (
	"scantling/internal/font"
	"scantling/internal/page"
)

// slab is what no page break cuts. Its items lie in a frame with the origin at
// its top left corner.
type slab struct {
	before, height float64 // before is left out at the top of a column
	items          []page.Item
	blocks         []page.Block
	anchors        []string
	heading        *Heading
	keep           bool  // with the next slab
	head           *slab // stands again above this slab at the top of a column
	newPage        bool
}

// shift moves all that the slab holds.
func (s *slab) shift(dx, dy float64) {
	d := page.Drawing{Items: s.items, Blocks: s.blocks}.Placed(1, page.Point{X: dx, Y: dy})
	s.items, s.blocks = d.Items, d.Blocks
}

// settle turns the space before the slab into a part of it.
func (s *slab) settle() {
	if s.before != 0 {
		s.shift(0, s.before)
		s.height += s.before
		s.before = 0
	}
}

func (s *slab) add(node page.NodeID, address string, shape page.Shape) {
	s.items = append(s.items, page.Item{Address: address, Node: node, Shape: shape})
}

// under puts an item below all others.
func (s *slab) under(shape page.Shape) {
	s.items = append([]page.Item{{Node: page.Artifact, Shape: shape}}, s.items...)
}

// height of slabs one below the other, without the space before the first.
func stacked(slabs []slab) (h float64) {
	for i, s := range slabs {
		if i > 0 {
			h += s.before
		}
		h += s.height
	}
	return h
}

// keepAll ties slabs together.
func keepAll(slabs []slab) []slab {
	for i := range slabs {
		slabs[i].keep = i < len(slabs)-1 || slabs[i].keep
	}
	return slabs
}

// merge stacks slabs into one.
func merge(slabs []slab) (out slab) {
	for i, s := range slabs {
		if i == 0 {
			out.before = s.before
			s.before = 0
		}
		s.settle()
		s.shift(0, out.height)
		out.items = append(out.items, s.items...)
		out.blocks = append(out.blocks, s.blocks...)
		out.anchors = append(out.anchors, s.anchors...)
		if out.heading == nil {
			out.heading = s.heading
		}
		out.height += s.height
	}
	return out
}

// composer turns blocks into slabs and grows the structure tree on the way.
type composer struct {
	settings Settings
	column   float64 // height of a column
	tree     page.Tree
	notes    []Note
	pages    map[string]int // page of each heading, from the pass before
	headings []Heading      // of all the blocks, for the contents
	seen     int            // headings met so far
}

// mostDepth is how deep blocks may be nested; deeper ones are set without indent.
const mostDepth = 6

// narrowest is the least width that an indent may leave.
const narrowest = 30

// blocks composes a list of blocks.
func (c *composer) blocks(blocks []Block, parent page.NodeID, width float64, depth int) (out []slab) {
	for _, b := range blocks {
		out = append(out, c.block(b, parent, width, depth)...)
	}
	return out
}

func (c *composer) block(b Block, parent page.NodeID, width float64, depth int) []slab {
	if depth > mostDepth {
		c.note(Note{Kind: TooDeep})
		return nil
	}
	switch b := b.(type) {
	case Heading:
		return c.heading(b, parent, width)
	case Paragraph:
		return c.paragraph(b, parent, width)
	case List:
		return c.list(b, parent, width, depth)
	case Table:
		return c.table(b, parent, width)
	case Figure:
		return c.figure(b, parent, width)
	case Box:
		return c.box(b, parent, width, depth)
	case Beside:
		return c.beside(b, parent, width, depth)
	case Together:
		return keepAll(c.blocks(b.Blocks, parent, width, depth+1))
	case Contents:
		return c.contents(b, parent, width)
	case Space:
		if !(b.Height > 0) {
			return nil
		}
		return []slab{{before: min(b.Height, c.column)}}
	case NewPage:
		return []slab{{newPage: true}}
	}
	return nil
}

// lines turns finished lines into slabs, aligned in a width.
func (c *composer) lines(lines []line, size, width float64, align page.Align) (out []slab) {
	for _, l := range lines {
		s := slab{height: leading * max(size, l.size)}
		s.setLine(&c.tree, l, 0, width, align, size)
		out = append(out, s)
	}
	for i := range out {
		// No first or last line of a paragraph stands alone.
		out[i].keep = (i == 0 || i == len(out)-2) && i < len(out)-1
	}
	return out
}

// setLine adds a line's texts and links to the slab: its top at y from 0.
func (s *slab) setLine(tree *page.Tree, l line, x, width float64, align page.Align, size float64) {
	size = max(size, l.size)
	switch align {
	case page.Middle:
		x += float64((width - l.width) / 2)
	case page.End:
		x += width - l.width
	}
	base := baseline(size)
	for _, r := range l.runs {
		node := r.style.node
		if r.style.link != "" && node != page.Artifact {
			node = tree.Add(page.Node{Role: page.RoleLink, Parent: node})
		}
		s.add(node, r.style.address, page.Text{
			At: page.Point{X: x + r.x, Y: base}, Size: r.style.size,
			Weight: r.style.weight, Colour: r.style.colour, String: r.text,
		})
		if r.style.link != "" {
			s.add(node, r.style.address, page.Link{
				Area: page.NewBox(x+r.x, 0, r.width, leading*size), To: r.style.link, Says: r.text,
			})
		}
	}
}

// baseline is where a line of that size stands below the top of its slab.
func baseline(size float64) float64 {
	f := font.Of(font.Regular)
	return float64(size*(leading-f.Ascent-f.Descent)/2) + float64(size*f.Ascent)
}
