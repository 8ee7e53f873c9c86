package page

// Drawing is a display list with no paper yet: a view, a diagram, a detail.
// It is placed on a page, or written by itself, cropped to its box.
type Drawing struct {
	// Name is its title in words; Alt says what it shows to one who cannot see it.
	Name, Alt string
	// Box is the area it takes, margins for dimensions included. If it is empty
	// the bounds of the items are taken ([Drawing.Area]).
	Box   Box
	Items []Item
	// Blocks are areas that nothing outside the block may enter.
	Blocks []Block
}

// Area returns the area that the drawing takes.
func (d Drawing) Area() Box {
	if !d.Box.Empty() {
		return d.Box
	}
	return BoundsOf(d.Items)
}

// Add appends a shape that shows what lies at the address.
func (d *Drawing) Add(address string, s Shape) {
	d.Items = append(d.Items, Item{Address: address, Shape: s})
}

// Placed returns the drawing scaled by k and then moved by offset. Type is
// scaled with it, widths of lines are not; so choose the scale when drawing,
// and place with k = 1.
func (d Drawing) Placed(k float64, offset Point) Drawing {
	f := scaleMove(k, offset)
	out := d
	out.Items = make([]Item, len(d.Items))
	for i, it := range d.Items {
		it.Shape = it.Shape.moved(k, offset)
		out.Items[i] = it
	}
	if !d.Box.Empty() {
		out.Box = Box{f(d.Box.Min), f(d.Box.Max)}
	}
	out.Blocks = make([]Block, len(d.Blocks))
	for i, b := range d.Blocks {
		out.Blocks[i] = Block{b.Name, Box{f(b.Box.Min), f(b.Box.Max)}}
	}
	return out
}

// BoundsOf returns the least box around the items' ink.
func BoundsOf(items []Item) Box {
	var b Box
	for _, it := range items {
		b = b.Union(it.Shape.Bounds())
	}
	return b
}

// Block is an area declared as taken: a table, a figure, a card.
type Block struct {
	Name string
	Box  Box
}

// Page is one page: its size and what stands on it, in the order of drawing,
// which is also the order of reading.
type Page struct {
	Size   Size
	Items  []Item
	Blocks []Block
}

// Add appends an item.
func (p *Page) Add(address string, node NodeID, s Shape) {
	p.Items = append(p.Items, Item{Address: address, Node: node, Shape: s})
}

// Anchor is a place in a document that links lead to.
type Anchor struct {
	Name string
	Page int // counted from 0
	Y    float64
}

// Heading is a line of the outline that a reader opens beside the pages.
type Heading struct {
	Title string
	Level int // 1 for the highest
	Page  int // counted from 0
	Y     float64
}

// Document is a whole paper: pages, and what holds them together.
type Document struct {
	Title string
	// Language is a BCP 47 tag, "en-GB".
	Language string
	// Author, Subject and Revision stand in the file's properties; empty ones do not.
	Author, Subject string
	Pages           []Page
	Tree            Tree
	Outline         []Heading
	Anchors         []Anchor
}
