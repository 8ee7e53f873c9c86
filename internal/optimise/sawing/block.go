package sawing

import (
	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// Block is a rectangle that is divided in one direction, or a part.
type Block struct {
	Length, Width int64 // kerf included
	// Direction of the cuts between Kids; Any for a part.
	Direction problem.Direction
	Kids      []Kid
	Part      int
	Turned    bool
}

// Kid is a block at a distance from its parent's near side. It is as large as
// the parent in the other direction.
type Kid struct {
	At    int64
	Block *Block
}

// Part returns the block of a part.
func Part(i int, turned bool, length, width int64) *Block {
	return &Block{Length: length, Width: width, Part: i, Turned: turned}
}

// Place returns a block of the given size that holds b at its near corner,
// dividing first in direction d where both sizes differ.
func Place(b *Block, length, width int64, d problem.Direction) *Block {
	switch {
	case b.Length == length && b.Width == width:
		return b
	case b.Length == length:
		return &Block{Length: length, Width: width, Direction: problem.Rip, Kids: []Kid{{0, b}}}
	case b.Width == width:
		return &Block{Length: length, Width: width, Direction: problem.Crosscut, Kids: []Kid{{0, b}}}
	case d == problem.Rip:
		inner := Place(b, length, b.Width, d)
		return Place(inner, length, width, d)
	default:
		inner := Place(b, b.Length, width, d)
		return Place(inner, length, width, d)
	}
}

// Frame says where a block lies and what its units mean.
type Frame struct {
	Origin problem.Point
	Scale  unit.Length // one engine unit
	Kerf   unit.Length
	Useful problem.Size
	Form   problem.Form
}

// Tree returns the cuts of a block that fills the frame's usable size.
func (f Frame) Tree(b *Block, usable problem.Size) *problem.Node {
	return f.node(problem.Box{Point: f.Origin, Size: usable}, b)
}

func (f Frame) node(box problem.Box, b *Block) *problem.Node {
	if b == nil {
		return f.rest(box)
	}
	if b.Direction == problem.Any {
		return &problem.Node{Box: box, Kind: problem.Finished, Part: b.Part, Turned: b.Turned}
	}
	return f.row(box, b.Direction, b.Kids, 0)
}

// row cuts the kids from box one after the other; at is where box begins.
func (f Frame) row(box problem.Box, d problem.Direction, kids []Kid, at int64) *problem.Node {
	if len(kids) == 0 {
		return f.rest(box)
	}
	size := box.Length
	if d == problem.Rip {
		size = box.Width
	}
	kid := kids[0]
	if kid.At > at {
		gap := unit.Length(kid.At-at) * f.Scale
		return f.cut(box, d, gap-f.Kerf, nil, kids, kid.At)
	}
	own := kid.Block.Length
	if d == problem.Rip {
		own = kid.Block.Width
	}
	real := unit.Length(own)*f.Scale - f.Kerf
	if real >= size {
		return f.node(box, kid.Block)
	}
	return f.cut(box, d, real, kid.Block, kids[1:], at+own)
}

func (f Frame) cut(box problem.Box, d problem.Direction, at unit.Length, near *Block, rest []Kid, restAt int64) *problem.Node {
	n := &problem.Node{Box: box, Kind: problem.Sawn, Direction: d, At: at}
	a, b := box, box
	if d == problem.Crosscut {
		a.Length = at
		b.Along += at + f.Kerf
		b.Length -= at + f.Kerf
	} else {
		a.Width = at
		b.Across += at + f.Kerf
		b.Width -= at + f.Kerf
	}
	if at > 0 {
		n.Near = f.node(a, near)
	}
	if b.Length > 0 && (b.Width > 0 || f.Form == problem.Boards) {
		n.Far = f.row(b, d, rest, restAt)
	}
	return n
}

func (f Frame) rest(box problem.Box) *problem.Node {
	n := &problem.Node{Box: box, Kind: problem.Waste}
	u := f.Useful
	if u == (problem.Size{}) {
		return n
	}
	fits := box.Length >= u.Length && (f.Form == problem.Boards || box.Width >= u.Width)
	if fits {
		n.Kind = problem.Remnant
	}
	return n
}
