package corner

import "scantling/internal/optimise/ceiling"

// Question is what is asked.
type Question struct {
	X, Y   int64
	Pieces []ceiling.Piece // in all ways that they may lie
	Left   []int           // by kind
	Value  []int64         // by kind
	Floor  int64           // a filling is to be worth more
	Width  int             // of the beam
	Most   int             // fillings
}
