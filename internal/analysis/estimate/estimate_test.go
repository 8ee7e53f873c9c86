package estimate_test

import (
	"errors"
	"testing"

	"scantling/internal/analysis/estimate"
	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

var funcs = ledger.Functions{"quotient": func(a []unit.Value) (unit.Value, error) {
	if a[1].Sign() == 0 {
		return unit.Value{}, errors.New("by nought")
	}
	return estimate.Value(unit.DimUntyped, a[0].Float()/a[1].Float()), nil
}}

func source(s figure.Status) figure.Source { return figure.Source{Key: "k", Title: "t", Status: s} }

// TestRange: 12 (10 to 14) over 4 (2 to 5) is 3, from 10/5 to 14/2, and no better than
// its weakest source.
func TestRange(t *testing.T) {
	m := estimate.New(ledger.New(nil), funcs)
	a := estimate.Number(m, "a", figure.Between(12.0, 10, 14, source(figure.Read)), plan.NoWood)
	b := estimate.Number(m, "b", figure.Between(4.0, 2, 5, source(figure.Memory)), plan.NoWood)
	e := m.Estimate("q", "quotient", "x", source(figure.Computed), plan.NoLoad, a, b)
	if e.Value.Float() != 3 || e.Low.Float() != 2 || e.High.Float() != 7 || e.Source.Status != figure.Memory || e.Unit != "x" {
		t.Errorf("%+v", e)
	}
	if twice := m.Estimate("r", "quotient", "", e.Source, "", estimate.Again(e), b); twice.Low.Float() != 0.4 || twice.High.Float() != 3.5 {
		t.Errorf("%v to %v", twice.Low, twice.High)
	}
	for _, d := range m.Ledger.Verify() {
		t.Error(d)
	}
}

// TestMissing: what lacks a datum has no value and says which; so does a refusal.
func TestMissing(t *testing.T) {
	m := estimate.New(ledger.New(nil), funcs)
	one := estimate.Number(m, "a", figure.Exactly(1.0, source(figure.Read)), plan.NoWood)
	none := estimate.Number(m, "b", figure.Of[float64]{}, plan.NoWood)
	e := m.Estimate("q", "quotient", "", source(figure.Read), plan.NoLoad, one, none)
	if e.Known() || len(e.Missing) != 1 || e.Missing[0] != plan.NoWood {
		t.Errorf("%+v", e)
	}
	if again := estimate.Again(e); again.Missing != plan.NoWood {
		t.Errorf("%+v", again)
	}
	nought := estimate.Number(m, "c", figure.Exactly(0.0, source(figure.Read)), plan.NoWood)
	if e = m.Estimate("q", "quotient", "", source(figure.Read), plan.NoLoad, one, nought); e.Known() || e.Missing[0] != plan.NoLoad {
		t.Errorf("%+v", e)
	}
}

// TestValue: six digits, of any size.
func TestValue(t *testing.T) {
	for x, want := range map[float64]float64{1.23456789: 1.23457, 123456.789: 123457, 0.000123456789: 0.000123457, 0: 0, -2.5: -2.5} {
		if got := estimate.Value(unit.DimUntyped, x).Float(); got != want {
			t.Errorf("%g: %g", x, got)
		}
	}
}
