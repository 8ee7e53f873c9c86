package evaluate

import (
	"scantling/internal/formula"
	"scantling/internal/piece"
)

// Reading is one thing that the as-built record says.
type Reading struct {
	// Of is what was measured or cut, as an address: case.opening[2],
	// case.side.left, material.case.
	Of string
}

type readings struct{}

func (w *world) openRecord() { w.record = &readings{} }

func (r *readings) rest() ([]Reading, int) { return nil, 0 }

func (r *readings) thickness(w *world, of, name string) (formula.Value, bool) {
	return formula.Value{}, false
}

func (s *space) measured(axis piece.Axis) (formula.Value, bool) { return formula.Value{}, false }

func (p *part) frozenEnd(axis piece.Axis, high bool, name string) (formula.Value, bool) {
	return formula.Value{}, false
}
