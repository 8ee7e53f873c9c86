package angle

import (
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Half is half an angle.
func Half(m *formula.Maker, a formula.Value) formula.Value {
	two := m.Ledger.Given(ledger.Entry{Value: unit.OfInt(unit.DimUntyped, 2), Origin: ledger.Derived})
	id, err := m.Ledger.Make("", ledger.OpDiv, "", a.Entry, two)
	if err != nil {
		return a
	}
	a.Entry, a.Is = id, m.Ledger.Value(id)
	return a
}

// Rise is how far a slope at an angle comes in over a distance: the distance times
// the tangent. False where the angle has no tangent, which is reported.
func Rise(m *formula.Maker, name string, over piece.Figure, a formula.Value) (piece.Figure, bool) {
	return scaled(m, name, over, ledger.OpMul, a)
}

// Run is the distance over which a slope at an angle comes in by rise: the rise by
// the tangent.
func Run(m *formula.Maker, name string, rise piece.Figure, a formula.Value) (piece.Figure, bool) {
	return scaled(m, name, rise, ledger.OpDiv, a)
}

func scaled(m *formula.Maker, name string, f piece.Figure, op ledger.Op, a formula.Value) (piece.Figure, bool) {
	t, ok := m.Tangent(a)
	if !ok {
		return piece.Figure{}, false
	}
	id, err := m.Ledger.Make("", op, "", f.Entry, t)
	if err != nil {
		return piece.Figure{}, false
	}
	return m.Ledger.Round(name, m.Ledger.Figure(id), unit.Nanometre, unit.Nearest), true
}
