package analysis

import (
	"fmt"
	"slices"

	"scantling/internal/geom/solid"
	"scantling/internal/joinery"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/shape"
	"scantling/internal/shop"
)

// Context is what analyses read. It is for one run, by one goroutine.
type Context struct {
	Piece *piece.Piece
	// Cuts are those of the piece's joints; the parts' own are in Piece.Cuts.
	Cuts []piece.Cut
	// Joints are what the joints come to by their own formulas.
	Joints []joinery.Lowered
	Shop   *shop.Shop
	Ledger *ledger.Ledger
	// Broken says that the documents have errors: analyses that cannot work on
	// such a piece are left out.
	Broken bool
	// Facets are those of round shapes, to a half circle; 0 is for drawings.
	Facets int
	// Solids keeps solids from one run to the next; nil keeps none. Workers may
	// work at solids at once; the number makes no difference to any result.
	Solids  *solid.Cache
	Workers int

	shapes  *shape.Shapes
	results map[Analysis]any
	running Analysis
}

// Shapes returns the shapes of the parts. Only an analysis that declares Solids
// may ask for them.
func (c *Context) Shapes() *shape.Shapes {
	if c.running != nil && !c.running.Info().Solids {
		panic(fmt.Sprintf("analysis: %q reads solids and does not declare it", c.running.Info().Name))
	}
	if c.shapes == nil {
		facets := c.Facets
		if facets == 0 {
			facets = shape.DrawingFacets
		}
		cache := c.Solids
		if cache == nil {
			cache = new(solid.Cache)
		}
		c.shapes = shape.NewIn(cache, c.Piece, c.Cuts, facets)
	}
	return c.shapes
}

// SetShapes gives the context shapes that have been prepared elsewhere, from the
// same piece and cuts.
func (c *Context) SetShapes(s *shape.Shapes) { c.shapes = s }

// AllCuts returns the cuts of every part, its own before those of joints.
func (c *Context) AllCuts() []piece.Cut {
	return append(slices.Clone(c.Piece.Cuts), c.Cuts...)
}

// mayRead panics where the running analysis does not require a.
func (c *Context) mayRead(a Analysis) {
	if c.running == nil || slices.Contains(c.running.Info().Requires, a) {
		return
	}
	panic(fmt.Sprintf("analysis: %q reads %q and does not require it", c.running.Info().Name, a.Info().Name))
}
