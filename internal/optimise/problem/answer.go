package problem

import (
	"iter"

	"scantling/internal/unit"
)

// Status says how an answer came to an end.
type Status int

// The ways to end.
const (
	// Proved: the cost equals the bound, nothing cheaper exists.
	Proved Status = iota + 1
	// Gap: the engine has done all it knows; a cheaper answer is not excluded.
	Gap
	// Spent: the budget ended the search.
	Spent
	// Stopped: the context ended the search. The answer is sound, but another
	// run may be stopped elsewhere and differ: it belongs in no stored plan.
	Stopped
)

// String returns the status as a plain word.
func (s Status) String() string {
	switch s {
	case Proved:
		return "proved"
	case Gap:
		return "gap"
	case Spent:
		return "budget"
	case Stopped:
		return "stopped"
	}
	return "none"
}

// Proof names what proves a bound.
type Proof int

// The proofs, weakest first.
const (
	// ByMaterial: the parts' length or area against that of the stock.
	ByMaterial Proof = iota + 1
	// ByConflict: parts too large to lie together (dual feasible functions).
	ByConflict
	// ByColumns: the linear relaxation over all cutting diagrams, its prices
	// checked in whole numbers.
	ByColumns
	// BySearch: every other possibility was excluded.
	BySearch
)

// String returns the proof as a plain word.
func (p Proof) String() string {
	switch p {
	case ByMaterial:
		return "material"
	case ByConflict:
		return "conflict"
	case ByColumns:
		return "columns"
	case BySearch:
		return "search"
	}
	return "none"
}

// Budget bounds the work of a run. It never looks at a clock.
type Budget struct {
	// Work is the most work units that may be spent after the first method,
	// which always runs; zero means [DefaultWork]. One unit is about one step
	// of an inner loop.
	Work int64
	// Workers is how many may run at once, 1 or 2; the answer is the same.
	Workers int
}

// DefaultWork is the budget that a zero [Budget] stands for: about two seconds
// on a machine of 2020.
const DefaultWork = 1_000_000_000

// Answer is what the engine found and what it proved.
type Answer struct {
	Diagrams []Diagram
	// Cost of all used stock; under [MostValue] the value of all parts.
	Cost Cost
	// Bound is a proven limit: no answer costs less (is worth more).
	Bound  Cost
	Proof  Proof
	Status Status
	// Work is the number of units spent, the first method included.
	Work int64
}

// Diagram is how one piece of stock is cut up, or several alike.
type Diagram struct {
	Stock  int // index in Problem.Stock
	Copies int // pieces of stock that are cut like this
	// Root covers what is left of the stock when it is trimmed.
	Root *Node
}

// Kind says what becomes of a piece.
type Kind int

// What becomes of a piece.
const (
	Sawn     Kind = iota + 1 // it is cut in two
	Finished                 // it is a part
	Remnant                  // it is worth keeping
	Waste                    // it is not
)

// Node is a piece at some time of the cutting.
type Node struct {
	Box
	Kind Kind

	// Of a Sawn piece. The blade takes [At, At+Kerf) off its length (Crosscut)
	// or width (Rip), measured from the side nearer the origin. At lies between
	// -Kerf and the size: where the blade hangs over, the child there is nil.
	Direction Direction
	At        unit.Length
	Near, Far *Node

	// Of a Finished piece.
	Part   int  // index in Problem.Parts
	Turned bool // its length lies across
}

// Nodes walks the pieces in the order of sawing: a piece, then everything that
// comes of its near child, then of its far child.
func (n *Node) Nodes() iter.Seq[*Node] {
	return func(yield func(*Node) bool) { n.walk(yield) }
}

func (n *Node) walk(yield func(*Node) bool) bool {
	if n == nil {
		return true
	}
	return yield(n) && n.Near.walk(yield) && n.Far.walk(yield)
}

// Cuts walks the Sawn pieces in the order of sawing.
func (d Diagram) Cuts() iter.Seq[*Node] {
	return func(yield func(*Node) bool) {
		for n := range d.Root.Nodes() {
			if n.Kind == Sawn && !yield(n) {
				return
			}
		}
	}
}

// Leaves walks the parts, remnants and waste in the order in which they come
// off.
func (d Diagram) Leaves() iter.Seq[*Node] {
	return func(yield func(*Node) bool) {
		for n := range d.Root.Nodes() {
			if n.Kind != Sawn && !yield(n) {
				return
			}
		}
	}
}
