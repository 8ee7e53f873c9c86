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
	sawn   []piece.Sawn
	index  map[address.Address]int
	cuts   map[address.Address][]*piece.Cut
	cache  *solid.Cache

	mu     sync.Mutex
	shapes []*Shape
}

// New prepares the shapes of a piece: its parts with its own cuts and those that
// joints make. Neither may be changed afterwards. facets is the number of facets
// to a half circle.
func New(p *piece.Piece, joints []piece.Cut, facets int) *Shapes {
	return NewIn(new(solid.Cache), p, joints, facets)
}

// NewIn is New with a cache that keeps solids from one piece to the next, so that
// after an edit only what has changed is solved anew.
func NewIn(cache *solid.Cache, p *piece.Piece, joints []piece.Cut, facets int) *Shapes {
	s := &Shapes{
		facets: facets, sawn: p.Sawn, index: make(map[address.Address]int, len(p.Parts)),
		cuts: map[address.Address][]*piece.Cut{}, shapes: make([]*Shape, len(p.Parts)), cache: cache,
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
	done := s.shapes[i]
	s.mu.Unlock()
	if done != nil {
		return done
	}
	return s.keep(i, s.cache.Build(s.job(i)))
}

// All returns the shapes of all parts in the order of the piece.
func (s *Shapes) All() []*Shape { return s.Solve(1) }

// Solve returns the shapes of all parts in the order of the piece, worked out by
// a number of workers; the number makes no difference to the result.
func (s *Shapes) Solve(workers int) []*Shape {
	var open []int
	var jobs []solid.Job
	s.mu.Lock()
	for i, done := range s.shapes {
		if done == nil {
			open, jobs = append(open, i), append(jobs, s.job(i))
		}
	}
	s.mu.Unlock()
	for k, built := range s.cache.BuildAll(jobs, workers) {
		s.keep(open[k], built)
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	return slices.Clone(s.shapes)
}

// keep files the solid of part number i, unless another goroutine was first.
func (s *Shapes) keep(i int, built *solid.Solid) *Shape {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.shapes[i] == nil {
		p := s.parts[i]
		s.shapes[i] = &Shape{Part: p, Cuts: s.cuts[p.Address], Solid: built, Frame: p.Placed()}
	}
	return s.shapes[i]
}

// job is what part number i is made from.
func (s *Shapes) job(i int) solid.Job {
	p := s.parts[i]
	j := solid.Job{Bodies: []solid.Primitive{body(p)}, Options: solid.Options{Facets: s.facets}}
	for n, c := range s.cuts[p.Address] {
		j.Cutters = append(j.Cutters, cutters(p, c, n)...)
	}
	return j
}
