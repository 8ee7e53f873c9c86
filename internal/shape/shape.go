package shape

import (
	"slices"
	"sync"

	"scantling/internal/address"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/piece"
)

// Shape is a finished part as a solid.
type Shape struct {
	Part *piece.Part
	// Cuts are the part's cuts in the order that its tags number them.
	Cuts []*piece.Cut
	// Solid is in the part's local axes; equal parts share it.
	Solid *solid.Solid
	// Frame is the part's pose in the piece.
	Frame vec.Frame
}

// Placed returns the solid where it stands in the piece.
func (s *Shape) Placed() solid.Placed { return solid.Placed{Solid: s.Solid, Frame: s.Frame} }

// Verified reports whether the solid may be trusted, and if not, why.
func (s *Shape) Verified() (bool, string) {
	status, why := s.Solid.Status()
	return status == solid.Verified, why
}

// Facets to a half circle: enough for a screen, and for drawings.
const (
	ScreenFacets  = 8
	DrawingFacets = 16
)

// Shapes are the shapes of a piece's parts, worked out when they are asked for.
// It may be used from several goroutines.
type Shapes struct {
	facets int
	parts  []*piece.Part
	index  map[address.Address]int
	cuts   map[address.Address][]*piece.Cut

	mu     sync.Mutex
	shapes []*Shape
	solved map[string]*solid.Solid
}

// New prepares the shapes of a piece: its parts with its own cuts and those that
// joints make. Neither may be changed afterwards. facets is the number of facets
// to a half circle.
func New(p *piece.Piece, joints []piece.Cut, facets int) *Shapes {
	s := &Shapes{
		facets: facets, index: make(map[address.Address]int, len(p.Parts)),
		cuts: map[address.Address][]*piece.Cut{}, shapes: make([]*Shape, len(p.Parts)),
		solved: map[string]*solid.Solid{},
	}
	for i := range p.Parts {
		s.parts = append(s.parts, &p.Parts[i])
		s.index[p.Parts[i].Address] = i
	}
	for _, list := range [2][]piece.Cut{p.Cuts, joints} {
		for i := range list {
			s.cuts[list[i].Part] = append(s.cuts[list[i].Part], &list[i])
		}
	}
	return s
}

// Len returns the number of parts.
func (s *Shapes) Len() int { return len(s.parts) }

// CutsOf returns all cuts of a part: its own, then those of joints.
func (s *Shapes) CutsOf(a address.Address) []*piece.Cut { return s.cuts[a] }

// Of returns the shape of a part, or false if the piece has none of that address.
func (s *Shapes) Of(a address.Address) (*Shape, bool) {
	i, ok := s.index[a]
	if !ok {
		return nil, false
	}
	return s.At(i), true
}

// At returns the shape of part number i of the piece.
func (s *Shapes) At(i int) *Shape {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.shapes[i] == nil {
		s.shapes[i] = s.solve(s.parts[i])
	}
	return s.shapes[i]
}

// All returns the shapes of all parts in the order of the piece.
func (s *Shapes) All() []*Shape {
	out := make([]*Shape, len(s.parts))
	for i := range out {
		out[i] = s.At(i)
	}
	return out
}

// Solids returns how many different solids have been worked out.
func (s *Shapes) Solids() int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return len(s.solved)
}

// solve makes a part's shape, or finds an equal one.
func (s *Shapes) solve(p *piece.Part) *Shape {
	cuts := slices.Clone(s.cuts[p.Address])
	key := inOrder(p, cuts)
	out := &Shape{Part: p, Cuts: cuts, Frame: p.Placed()}
	if done, ok := s.solved[key]; ok {
		out.Solid = done
		return out
	}
	bodies := []solid.Primitive{body(p)}
	var cutters []solid.Primitive
	for i, c := range cuts {
		cutters = append(cutters, cutter(p, c, i)...)
	}
	out.Solid = solid.Build(bodies, cutters, solid.Options{Facets: s.facets})
	s.solved[key] = out.Solid
	return out
}
