package piece

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/unit"
)

// LidKerf is what a saw takes of a wall as a lid is sawn off its closed box: the kerf
// and what is planed off both edges.
const LidKerf CutKind = "lid kerf"

// Sawn is a lid that is sawn off a closed group when that is glued up. Parts stand as
// they are glued; the lid then comes down by what was lost.
type Sawn struct {
	Address address.Address `json:"address"`
	Name    string          `json:"name"`
	// Group is what is sawn.
	Group address.Address `json:"group"`
	// Base is how high the base stands and Lid how high the lid is, both with clean
	// edges. Base, Takes and Lid add up to Whole, the height as it is glued up.
	Base  Figure `json:"base"`
	Takes Figure `json:"takes"`
	Lid   Figure `json:"lid"`
	Whole Figure `json:"whole"`
	// Takes is the kerf and twice Clean, what is planed off each edge. Kerf begins
	// Clean over Base.
	Kerf  Figure `json:"kerf"`
	Clean Figure `json:"clean"`
	// Lost is where what is taken lay, along up.
	Lost Extent `json:"lost"`
	// Extent is where the closed group stands and Size its size, along right, back
	// and up.
	Extent [3]Extent `json:"extent"`
	Size   [3]Figure `json:"size"`
	// Walls are the parts that are sawn through, Over those that go off with the lid.
	Walls []address.Address `json:"walls"`
	Over  []address.Address `json:"over,omitempty"`
	// ByHand says that the document wants it sawn by hand.
	ByHand bool       `json:"byHand,omitempty"`
	Where  diag.Place `json:"where"`
}

// Wall reports whether a part is sawn through.
func (s *Sawn) Wall(part address.Address) bool { return slices.Contains(s.Walls, part) }

// Lifts reports whether a part, or some of it, goes off with the lid.
func (s *Sawn) Lifts(part address.Address) bool {
	return s.Wall(part) || slices.Contains(s.Over, part)
}

// Saws reports whether a cut is what this lid's saw takes of a wall.
func (s *Sawn) Saws(c *Cut) bool {
	return c.Kind == LidKerf && c.AfterGlueUp == s.Group && c.Where == s.Where
}

// SawnBy returns the lid of which a cut is what its saw takes of a wall, nil if there is
// none.
func (p *Piece) SawnBy(c *Cut) *Sawn {
	for i := range p.Sawn {
		if s := &p.Sawn[i]; s.Saws(c) {
			return s
		}
	}
	return nil
}

// Shut returns where a high end of a part, along an axis, is when every lid that was
// sawn off lies on its base again.
func (p *Piece) Shut(part address.Address, along Axis, high unit.Length) unit.Length {
	for i := range p.Sawn {
		if s := &p.Sawn[i]; along == Up && s.Lifts(part) {
			high -= s.Takes.Nm
		}
	}
	return high
}
